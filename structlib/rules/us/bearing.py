"""Bearing across the grain (NDS 2018 3.10): the seat crushes, the beam's face or the plate below it."""

from functools import cache

import numpy

from structlib.ground.lumber import materials
from structlib.ground.refusals import check_number, refuse_list
from structlib.rules.check import NOT_WRITTEN, Check, Factor, least_verified
from structlib.rules.members import BEAM_FACE, LEAST_SEAT, PLATE_FACE
from structlib.rules.us import bending, factors
from structlib.rules.us.inputs import check_amount, check_member_length, check_size, check_unit_circle


def plate_below(seat):
    """Return the crushing value of the wood plate below a seat, its name, and how it is known.

    Parameters
    ----------
    seat : structlib.rules.check.Seat
        The seat [-].

    Returns
    -------
    tuple of (float, str, str) or None
        Value across the grain, name and verified word; None where no plate is below [MPa, -, -].

    Notes
    -----
    A plate that is not named is taken as the weakest wood of NDS Supplement 2018 Table 4A and 4B.

    Examples
    --------
    >>> from structlib.ground.units import inch, psi
    >>> from structlib.rules.check import Seat
    >>> value, name, _ = plate_below(Seat(3 * inch))
    >>> round(value / psi), name
    (335, 'plate not named, weakest wood listed')
    """
    if seat.below != "plate":
        return None
    if seat.below_bearing is None:
        weakest = _weakest_plate()
        return weakest.bearing, PLATE_NOT_NAMED, weakest.verified
    return seat.below_bearing, seat.below_name or "plate below", seat.below_verified


#: Where bearing at an angle to the grain is ruled.
AT_AN_ANGLE_CLAUSE = "NDS 2018 Eq. 3.10-1"

#: Name of a plate whose wood nobody told.
PLATE_NOT_NAMED = "plate not named, weakest wood listed"


@cache
def _weakest_plate():
    return min(materials("dimension") + materials("southern pine"), key=lambda wood: wood.bearing)


def bearing_stress(*, reaction, width, bearing_length):
    """Return the stress across the grain where a beam sits.

    Parameters
    ----------
    reaction : float, numpy.ndarray or sympy expression
        Push of the beam on its seat [N].
    width : float, numpy.ndarray or sympy expression
        Width in contact [mm].
    bearing_length : float, numpy.ndarray or sympy expression
        Length in contact, along the beam [mm].

    Returns
    -------
    float, numpy.ndarray or sympy expression
        Bearing stress [MPa].

    Examples
    --------
    >>> bearing_stress(reaction=4000.0, width=3.0, bearing_length=2.0)
    666.6666666666666
    """
    check_amount("reaction", reaction, zero=True, hint="for example 1500*lb; a seat can push, never pull")
    check_size("width", width)
    check_member_length("bearing length", bearing_length, zero=False)
    return reaction / (width * bearing_length)


def bearing_length_needed(*, reaction, width, bearing_value):
    """Return the seat length at which the wood is crushed exactly to its design value.

    Parameters
    ----------
    reaction : float, numpy.ndarray or sympy expression
        Push of the beam on its seat [N].
    width : float, numpy.ndarray or sympy expression
        Width in contact [mm].
    bearing_value : float, numpy.ndarray or sympy expression
        Design value across the grain of the weaker face [MPa].

    Returns
    -------
    float, numpy.ndarray or sympy expression
        Seat length [mm].

    Examples
    --------
    >>> round(bearing_length_needed(reaction=4000.0, width=3.0, bearing_value=425.0), 2)
    3.14
    """
    for name, value in (("reaction", reaction), ("width", width), ("bearing value", bearing_value)):
        refuse_list(name, value)
    check_amount("reaction", reaction, zero=True, hint="for example 1500*lb; a seat can push, never pull")
    check_size("width", width)
    check_amount("bearing value", bearing_value)
    return reaction / (width * bearing_value)


def bearing_area_factor(*, bearing_length, distance_to_end):
    """Return the bearing area factor C_b of a short seat away from the end of a member.

    Parameters
    ----------
    bearing_length : float or numpy.ndarray
        Length of the seat along the grain [mm].
    distance_to_end : float or numpy.ndarray
        Distance from the seat to the nearer end of the member [mm].

    Returns
    -------
    float or numpy.ndarray
        Bearing area factor; 1.0 at a beam's end [-].

    Notes
    -----
    NDS 2018 3.10.4: more than 1 only under 6 in of seat and not nearer than 3 in to the end.

    Examples
    --------
    >>> from structlib.ground.units import inch
    >>> float(bearing_area_factor(bearing_length=1.5 * inch, distance_to_end=12 * inch))
    1.25
    >>> float(bearing_area_factor(bearing_length=1.5 * inch, distance_to_end=0.0))
    1.0
    """
    check_number(
        "bearing length",
        bearing_length,
        low=0.0,
        high=10000.0,
        low_allowed=False,
        shown=lambda mm: f"{mm:g} mm",
        hint="a beam wants at least 1 1/2 in of seat",
    )
    check_member_length("distance to the end", distance_to_end)
    added = factors.length("bearing_area_added_length")
    longest = factors.length("bearing_area_greatest_length")
    nearest = factors.length("bearing_area_least_end_distance")
    if isinstance(bearing_length, float) and isinstance(distance_to_end, float):
        return (
            (bearing_length + added) / bearing_length
            if bearing_length < longest and distance_to_end >= nearest
            else 1.0
        )
    applies = (numpy.asarray(bearing_length) < longest) & (numpy.asarray(distance_to_end) >= nearest)
    return numpy.where(applies, (bearing_length + added) / bearing_length, 1.0)


def seat_checks(member, pushes):
    """Return the checks of one end of a beam on its seat: the beam's face, the plate's face, the code's least seat.

    Parameters
    ----------
    member : structlib.rules.members.SeatMember
        The seat; one in a hanger is its maker's question, and has no checks here, nor one that is not written [-].
    pushes : iterable of (structlib.rules.check.Combination, float)
        What each combination presses on it with [-, N].

    Returns
    -------
    list of structlib.rules.check.Check
        The checks, for the greatest push [-].

    Notes
    -----
    NDS 2018 3.10.2, IRC R502.6. A short seat away from the beam's end counts longer for its own face (3.10.4).

    Examples
    --------
    >>> from structlib.ground.lumber import find_material
    >>> from structlib.ground.units import inch, lb
    >>> from structlib.rules.check import Combination, Seat
    >>> from structlib.rules.members import SeatMember
    >>> fir = SeatMember(find_material("Douglas Fir-Larch", "No.2"), 3 * inch, Seat(3 * inch, "post"))
    >>> [round(one.share, 3) for one in seat_checks(fir, [(Combination("D", (), 0.9, "", "", ""), 4500 * lb)])]
    [0.8, 0.5]
    """
    seat = member.seat
    if seat.below in ("hanger", NOT_WRITTEN.below):
        return []
    combination, push = max(pushes, key=lambda one: one[1])
    wet = bending.wet_factor(member.material, value="bearing", wet=member.wet)
    known = bending.wet_verified(member.material, value="bearing", wet=member.wet)
    width = member.width if seat.width is None else min(member.width, seat.width)
    stress = bearing_stress(reaction=push, width=width, bearing_length=seat.length)
    area = area_factor(member)
    faces = [
        (
            BEAM_FACE,
            "beam",
            member.material.bearing * area.value,
            member.material.verified,
            "the underside of the beam is crushed on its seat",
            area,
        )
    ]
    plate = plate_below(seat)
    if plate is not None:
        value, name, known_plate = plate
        faces.append((PLATE_FACE, name, value, known_plate, "the plate below is crushed by the beam", at_the_end()))
    moist = Factor("C_M", wet, "wet or dry in use", "NDS Supplement 2018", known)
    checks = [
        Check(
            name=f"bearing, {member.end} seat, {face}", kind=kind, sentence=sentence, asked=stress, given=value * wet,
            share=stress / (value * wet), dimension="stress", position=member.position,
            where=f"at the {member.end} seat, {face}", combination=combination.name, clause="NDS 2018 3.10.2, 4.3.1",
            formula=f"f = R / (b * seat) <= F_perp' = F_perp {'* C_b ' if area.value != 1.0 else ''}* C_M",
            substitute=(("R", push, "force"), ("b", width, "section length"), ("seat", seat.length, "section length"),
                        ("f", stress, "stress"), ("F_perp'", value * wet, "stress")),
            factors=(area, moist), verified=least_verified([verified, known]),
        )
        for kind, face, value, verified, sentence, area in faces
    ]  # fmt: skip
    return [*checks, _least_seat(member)]


def _least_seat(member):
    seat = member.seat
    least, clause, verified = factors.least_seat(seat.below)
    return Check(
        name=f"seat length, {member.end}", kind=LEAST_SEAT, sentence="the code asks for this much seat whatever the load",
        asked=least, given=seat.length, share=least / seat.length, dimension="section length", position=member.position,
        where=f"at the {member.end} seat", combination="any", clause=clause, formula="least seat <= seat",
        substitute=(("least seat", least, "section length"), ("seat", seat.length, "section length")), verified=verified,
    )  # fmt: skip


def area_factor(member):
    """Return the bearing area factor of one end of a beam on its seat (NDS 2018 3.10.4).

    Parameters
    ----------
    member : structlib.rules.members.SeatMember
        The seat [-].

    Returns
    -------
    structlib.rules.check.Factor
        The factor; more than 1 for a short seat away from the beam's end [-].

    Examples
    --------
    >>> from structlib.ground.units import inch
    >>> from structlib.rules.check import Seat
    >>> from structlib.rules.members import SeatMember
    >>> area_factor(SeatMember(None, 76.2, Seat(3 * inch), to_end=12 * inch)).value
    1.125
    """
    longer = float(bearing_area_factor(bearing_length=member.seat.length, distance_to_end=member.to_end))
    if longer == 1.0:
        return at_the_end()
    return Factor("C_b", longer, "a short seat away from the beam's end", "NDS 2018 3.10.4", "seen")


def at_the_end():
    """Return the bearing area factor of a seat at a beam's end: no wood beyond it helps (NDS 2018 3.10.4).

    Returns
    -------
    structlib.rules.check.Factor
        The factor, 1 [-].

    Examples
    --------
    >>> at_the_end().value
    1.0
    """
    return Factor("C_b", 1.0, "seat at the beam's end", "NDS 2018 3.10.4", "seen")


def bearing_value_at_angle(*, along, across, sine, cosine):
    """Return the bearing value when the load meets the grain at an angle (Hankinson's formula).

    Parameters
    ----------
    along : float, numpy.ndarray or sympy expression
        Bearing value along the grain [MPa].
    across : float, numpy.ndarray or sympy expression
        Bearing value across the grain [MPa].
    sine : float, numpy.ndarray or sympy expression
        Sine of the angle between load and grain [-].
    cosine : float, numpy.ndarray or sympy expression
        Cosine of the angle between load and grain [-].

    Returns
    -------
    float, numpy.ndarray or sympy expression
        Bearing value at that angle [MPa].

    Notes
    -----
    NDS 2018 Eq. 3.10-1.

    Examples
    --------
    >>> bearing_value_at_angle(along=1200.0, across=400.0, sine=0.5, cosine=0.75**0.5)
    800.0
    """
    check_amount("bearing value along the grain", along)
    check_amount("bearing value across the grain", across)
    check_unit_circle(sine=sine, cosine=cosine)
    return along * across / (along * sine**2 + across * cosine**2)
