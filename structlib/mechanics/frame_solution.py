"""What a solved plane frame answers, and the proof by statics alone that it is in balance.

Signs as in ``plane_frame``: in a bar seen from its start to its end, ``axial`` is positive in tension,
``shear``
when its start is pushed to the left (up, for a bar that runs to the right), ``moment`` when it sags.
"""

from dataclasses import dataclass

import numpy

from structlib.ground.refusals import check_choice, check_number


@dataclass(frozen=True)
class Reaction:
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
    >>> Reaction(0.0, 1200.0, 0.0).up
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
        A :class:`Reaction` of each held joint [-].
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


@dataclass(frozen=True)
class FreeBody:
    """One part of a frame cut free, and what is left over when all forces on it are summed.

    Parameters
    ----------
    part : str
        What was cut free [-].
    right : float
        Sum of the forces to the right [N].
    up : float
        Sum of the upward forces [N].
    turn : float
        Sum of the moments about the first joint of the part, counterclockwise [N*mm].

    Examples
    --------
    >>> FreeBody("joint ridge", 0.0, 0.0, 0.0).up
    0.0
    """

    part: str
    right: float
    up: float
    turn: float


def free_bodies(solution):
    """Cut a solved frame into free bodies and sum the forces on each; every sum is zero in a true solution.

    The bodies are the whole frame, every joint, every bar, and the first half of every bar with the axial
    force, shear and moment of the cut on it. Nothing here knows of stiffness: it is statics alone.

    Parameters
    ----------
    solution : FrameSolution
        The solved frame [-].

    Returns
    -------
    list of FreeBody
        What is left over, in each direction, of each body [N; N*mm].

    Examples
    --------
    >>> from structlib.mechanics.plane_frame import Bar, Joint, PlaneFrame, solve_frame
    >>> beam = PlaneFrame({"a": Joint(0, 0, "xy"), "b": Joint(4000, 0, "y")},
    ...                   {"ab": Bar("a", "b", axial_stiffness=1e8, bending_stiffness=1e12, plan_load=3.0)})
    >>> bodies = free_bodies(solve_frame(beam))
    >>> [body.part for body in bodies]
    ['whole frame', 'joint a', 'joint b', 'bar ab', 'first half of ab']
    >>> max(abs(body.up) + abs(body.turn) for body in bodies) < 1e-6
    True
    """
    frame = solution.frame
    first = next(iter(frame.joints.values()))
    outer = [(joint.x - first.x, joint.y - first.y, *_outer(solution, name)) for name, joint in frame.joints.items()]
    outer += [_resultant(frame, bar, 1.0, first) for bar in frame.bars]
    bodies = [_body("whole frame", outer)]
    for name in frame.joints:
        meeting = [
            (0.0, 0.0, *-in_plane(frame, bar, solution.end_forces[bar][3 * end : 3 * end + 3]))
            for bar, piece in frame.bars.items()
            for end, joint in enumerate((piece.start, piece.end))
            if joint == name
        ]
        bodies.append(_body(f"joint {name}", [*meeting, (0.0, 0.0, *_outer(solution, name))]))
    for bar, piece in frame.bars.items():
        right, up = frame.run(bar)
        start = frame.joints[piece.start]
        near = (0.0, 0.0, *in_plane(frame, bar, solution.end_forces[bar][:3]))
        far = (right, up, *in_plane(frame, bar, solution.end_forces[bar][3:]))
        bodies.append(_body(f"bar {bar}", [near, far, _resultant(frame, bar, 1.0, start)]))
        cut = (solution.axial(bar, 0.5), -solution.shear(bar, 0.5), solution.moment(bar, 0.5))
        half = (right / 2, up / 2, *in_plane(frame, bar, cut))
        bodies.append(_body(f"first half of {bar}", [near, half, _resultant(frame, bar, 0.5, start)]))
    return bodies


def _body(part, forces):
    forces = numpy.array(forces)
    turn = forces[:, 4] + forces[:, 0] * forces[:, 3] - forces[:, 1] * forces[:, 2]
    return FreeBody(part, float(forces[:, 2].sum()), float(forces[:, 3].sum()), float(turn.sum()))


def _outer(solution, name):
    """Loads and reactions on one joint: right, up, turn."""
    sums = numpy.zeros(3)
    for load in solution.frame.loads:
        if load.joint == name:
            sums += (load.right, -load.down, load.turn)
    if name in solution.reactions:
        reaction = solution.reactions[name]
        sums += (reaction.right, reaction.up, reaction.turn)
    return sums


def _resultant(frame, bar, share, about):
    """The load on the first share of a bar as one downward force at its middle."""
    piece = frame.bars[bar]
    start, (right, up) = frame.joints[piece.start], frame.run(bar)
    down = (piece.plan_load * abs(right) + piece.along_load * frame.length(bar)) * share
    return (start.x + right * share / 2 - about.x, start.y + up * share / 2 - about.y, 0.0, -down, 0.0)


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
