"""What a solved plane frame answers, and the proof by statics alone that it is in balance.

Signs as in ``plane_frame``: in a bar seen from its start to its end, ``axial`` is positive in tension,
``shear``
when its start is pushed to the left (up, for a bar that runs to the right), ``moment`` when it sags.
"""

from dataclasses import dataclass

import numpy

from structlib.ground.refusals import check_choice, check_number


@dataclass(frozen=True)
class FrameReaction:
    """What a support gives to its joint.

    Parameters
    ----------
    right : float
        Force to the right [N].
    up : float
        Upward force [N].
    turn : float
        Couple, counterclockwise [N*mm].

    Examples
    --------
    >>> FrameReaction(0.0, 1200.0, 0.0).up
    1200.0
    """

    right: float
    up: float
    turn: float


class FrameSolution:
    """A solved frame: how its joints move, what its supports give, what is in its bars.

    Parameters
    ----------
    frame : PlaneFrame
        The frame [-].
    moves : dict
        Movement of each joint: right, up, turn [mm; mm; rad].
    reactions : dict
        A :class:`FrameReaction` of each held joint [-].
    end_forces : dict
        What its joints do to each bar, in the bar's own directions: along, across (to the left), turn, at its
        start and then at its end [N; N; N*mm].
    starts : dict
        Movements of the bar itself at its start, past hinge and slip: along, across, turn [mm; mm; rad].

    Examples
    --------
    >>> from structlib.mechanics.plane_frame import Bar, Joint, PlaneFrame, solve_frame
    >>> beam = PlaneFrame({"a": Joint(0, 0, "xy"), "b": Joint(4000, 0, "y")},
    ...                   {"ab": Bar("a", "b", axial_stiffness=1e8, bending_stiffness=1e12, plan_load=3.0)})
    >>> round(solve_frame(beam).moment("ab", 0.5) / 1e6, 6)
    6.0
    """

    def __init__(self, frame, moves, reactions, end_forces, starts):
        self.frame, self.moves, self.reactions = frame, moves, reactions
        self.end_forces, self._moved = end_forces, starts
        self._starts = {bar: (-forces[0], forces[1], -forces[2]) for bar, forces in end_forces.items()}

    def move(self, joint):
        """Return how a joint moves.

        Parameters
        ----------
        joint : str
            Name of the joint [-].

        Returns
        -------
        tuple of float
            To the right, up, and turning counterclockwise [mm; mm; rad].
        """
        return self.moves[check_choice("joint", joint, self.moves)]

    def axial(self, bar, share):
        """Return the force along a bar, tension positive.

        Parameters
        ----------
        bar : str
            Name of the bar [-].
        share : float or numpy.ndarray
            Place, 0 at its start and 1 at its end [-].

        Returns
        -------
        float or numpy.ndarray
            Axial force [N].
        """
        place, (along, _) = self._place(bar, share)
        return self._starts[bar][0] - along * place

    def shear(self, bar, share):
        """Return the shear in a bar.

        Parameters
        ----------
        bar : str
            Name of the bar [-].
        share : float or numpy.ndarray
            Place, 0 at its start and 1 at its end [-].

        Returns
        -------
        float or numpy.ndarray
            Shear, positive when the start side is pushed to the left of the bar's direction [N].
        """
        place, (_, across) = self._place(bar, share)
        return self._starts[bar][1] + across * place

    def moment(self, bar, share):
        """Return the moment in a bar.

        Parameters
        ----------
        bar : str
            Name of the bar [-].
        share : float or numpy.ndarray
            Place, 0 at its start and 1 at its end [-].

        Returns
        -------
        float or numpy.ndarray
            Moment, positive when the bar bows to the right of its direction [N*mm].
        """
        place, (_, across) = self._place(bar, share)
        _, shear, moment = self._starts[bar]
        return moment + shear * place + across * place**2 / 2

    def shape(self, bar, share):
        """Return how far a point of a bar has moved.

        Parameters
        ----------
        bar : str
            Name of the bar [-].
        share : float or numpy.ndarray
            Place, 0 at its start and 1 at its end [-].

        Returns
        -------
        tuple
            Movement to the right and up [mm; mm].
        """
        place, (along, across) = self._place(bar, share)
        piece = self.frame.bars[bar]
        axial, shear, moment = self._starts[bar]
        slide, rise, turn = self._moved[bar]
        slide = slide + (axial * place - along * place**2 / 2) / piece.axial_stiffness
        bent = moment * place**2 / 2 + shear * place**3 / 6 + across * place**4 / 24
        rise = rise + turn * place + bent / piece.bending_stiffness
        cosine, sine = self.frame.direction(bar)
        return slide * cosine - rise * sine, slide * sine + rise * cosine

    def greatest_moment(self, bar):
        """Return the moment of greatest size in a bar, and where.

        Parameters
        ----------
        bar : str
            Name of the bar [-].

        Returns
        -------
        tuple of float
            The moment with its sign, and its place as a share of the length [N*mm; -].

        Examples
        --------
        >>> from structlib.mechanics.plane_frame import Bar, Joint, PlaneFrame, solve_frame
        >>> beam = PlaneFrame({"a": Joint(0, 0, "xy"), "b": Joint(4000, 0, "y")},
        ...                   {"ab": Bar("a", "b", axial_stiffness=1e8, bending_stiffness=1e12,
        ...                             plan_load=3.0)})
        >>> [round(value, 6) for value in solve_frame(beam).greatest_moment("ab")]
        [6000000.0, 0.5]
        """
        length, (_, across) = self.frame.length(bar), self.frame.load_on(bar)
        places = [0.0, 1.0]
        if across:
            places += [place for place in (-self._starts[bar][1] / across / length,) if 0 < place < 1]
        return max(((float(self.moment(bar, place)), place) for place in places), key=lambda pair: abs(pair[0]))

    def _place(self, bar, share):
        check_choice("bar", bar, self.frame.bars)
        check_number("share of the length", share, low=0, high=1, hint="0.5 is the middle")
        length = self.frame.length(bar)
        place = float(share) * length if numpy.ndim(share) == 0 else numpy.asarray(share) * length
        return place, self.frame.load_on(bar)


def in_plane(frame, bar, forces):
    """Turn forces given in a bar's own directions into the directions of the frame.

    Parameters
    ----------
    frame : PlaneFrame
        The frame [-].
    bar : str
        Name of the bar [-].
    forces : tuple of float
        Along the bar, across it to its left, and a couple [N; N; N*mm].

    Returns
    -------
    numpy.ndarray
        To the right, up, and the couple [N; N; N*mm].

    Examples
    --------
    >>> from structlib.mechanics.plane_frame import Bar, Joint, PlaneFrame
    >>> frame = PlaneFrame({"a": Joint(0, 0, "xy"), "b": Joint(3, 4, "y")},
    ...                    {"ab": Bar("a", "b", axial_stiffness=1.0, bending_stiffness=1.0)})
    >>> in_plane(frame, "ab", (10.0, 0.0, 0.0)).tolist()
    [6.0, 8.0, 0.0]
    """
    cosine, sine = frame.direction(bar)
    along, across, turn = forces
    return numpy.array([along * cosine - across * sine, along * sine + across * cosine, turn])
