"""The seat of a beam's end: its rule by kind, and the answers given beside the checks."""

from structlib.rules.members import SeatMember
from structlib.rules.us import bearing, bending, seats


class Seats:
    """Answers about the seat of a beam's end."""

    def bearing_lengths(self, member, push):
        """Return the seat at which each face is pressed just to its value (NDS 2018 3.10.2).

        Parameters
        ----------
        member : structlib.rules.members.SeatMember
            The seat [-].
        push : structlib.rules.members.Push
            What presses on it [N].

        Returns
        -------
        tuple of float
            Length for the beam's face, and for that of the plate where there is one [mm].

        Examples
        --------
        >>> from structlib.ground.lumber import find_material
        >>> from structlib.ground.units import inch, lb
        >>> from structlib.rules.check import Combination, Seat
        >>> from structlib.rules.members import Push
        >>> fir = SeatMember(find_material("Douglas Fir-Larch", "No.2"), 3 * inch, Seat(3 * inch, "post"))
        >>> push = Push(Combination("D + L", (), 1.0, "", "", ""), 3750 * lb)
        >>> [round(length / inch, 3) for length in Seats().bearing_lengths(fir, push)]
        [2.0]
        """
        faces = [one for one in _seat(member, (push,)) if one.dimension == "stress"]
        helped = [
            check.factors[0].value for check in faces
        ]  # the help of neighbouring fibres shrinks with the length: none here
        return tuple(check.asked / check.given * part * member.seat.length for check, part in zip(faces, helped))

    def jack_studs(self, member, push):
        """Return the jack studs with which the beam's own face is not crushed (NDS 2018 3.10.2, IRC R502.6).

        Parameters
        ----------
        member : structlib.rules.members.SeatMember
            The seat [-].
        push : structlib.rules.members.Push
            What presses on it [N].

        Returns
        -------
        structlib.rules.us.seats.JackStuds
            How many, and the seat that they give [-, mm].

        Examples
        --------
        >>> from structlib.ground.lumber import find_material
        >>> from structlib.ground.units import inch, lb
        >>> from structlib.rules.check import Combination, Seat
        >>> from structlib.rules.members import Push
        >>> fir = SeatMember(find_material("Douglas Fir-Larch", "No.2"), 3 * inch, Seat(3 * inch, "post"))
        >>> Seats().jack_studs(fir, Push(Combination("D + L", (), 1.0, "", "", ""), 3750 * lb)).count  # 2 in
        2
        """
        value = member.material.bearing * bending.wet_factor(member.material, value="bearing", wet=member.wet)
        return seats.jack_studs(reaction=push.axial, width=member.width, bearing_value=value)

    def area_factor(self, member):
        """Return the bearing area factor of a seat (NDS 2018 3.10.4).

        Parameters
        ----------
        member : structlib.rules.members.SeatMember
            The seat [-].

        Returns
        -------
        structlib.rules.check.Factor
            The factor [-].

        Examples
        --------
        >>> from structlib.rules.check import Seat
        >>> Seats().area_factor(SeatMember(None, 76.2, Seat(76.2))).value
        1.0
        """
        return bearing.area_factor(member)


def _seat(member, demands):
    return tuple(bearing.seat_checks(member, [(one.combination, one.axial) for one in demands]))


#: By kind of member.
RULES = {SeatMember: _seat}
