"""Any frame in one upright plane: bars that stretch and bend, joints, hinges, supports, springs.

The exact direct stiffness method: the movements of the joints are the unknowns, every bar answers with the
forces its ends would need, and the joints balance. Straight bars of one section each, loads spread evenly
over a whole bar, forces and couples at joints; put a joint where a load changes. Small movements: the
geometry is that of the unloaded frame. A frame that can move without resistance is refused.

Axes: x to the right, y UP, turning counterclockwise. Loads are entered positive downward; forces on a joint
to the right. In a bar, seen along its direction from start to end: ``axial`` is positive in tension,
``shear``
positive when its start is pushed to the left of that direction (up, for a bar that runs to the right),
``moment`` positive when it sags, that is bows to the right of its direction.
"""

from dataclasses import dataclass, field

import numpy

from structlib.ground.refusals import BadInput, check_choice, check_number
from structlib.mechanics.frame_solution import FrameReaction, FrameSolution, in_plane

_MOST = 1e20
_MECHANISM = 1e-13  # smallest stiffness over the largest, of the scaled matrix
_SHORTEST = 1e-5  # bar over the longest bar
_STRAY = 1e-6  # forces left over at the joints, as a share of the loads


@dataclass(frozen=True)
class Joint:
    """A place where bars meet, and what holds it.

    Parameters
    ----------
    x : float
        Horizontal place, to the right [mm].
    y : float
        Height, upward [mm].
    held : str
        Letters of what is held: ``x`` sideways, ``y`` up and down, ``t`` turning; ``"xy"`` is a pin,
        ``"y"`` a roller, ``""`` nothing [-].
    spring_x : float
        Stiffness of a spring that holds the joint sideways; 0 for none [N/mm].
    spring_y : float
        Stiffness of a spring that holds the joint up and down; 0 for none [N/mm].

    Examples
    --------
    >>> Joint(0.0, 0.0, "xy").held
    'xy'
    """

    x: float
    y: float
    held: str = ""
    spring_x: float = 0.0
    spring_y: float = 0.0

    def __post_init__(self):
        for name, value in (("x of a joint", self.x), ("y of a joint", self.y)):
            check_number(name, value, low=-_MOST, high=_MOST, hint="for example 12*ft")
        for name, value in (("spring_x", self.spring_x), ("spring_y", self.spring_y)):
            check_number(name, value, low=0, high=_MOST, hint="in N/mm, 0 for no spring")
        if not isinstance(self.held, str) or set(self.held) - set("xyt"):
            raise BadInput(f"held is written with the letters x, y and t, got {self.held!r}; 'xy' is a pin")


@dataclass(frozen=True)
class Bar:
    """A straight piece between two joints.

    Parameters
    ----------
    start : str
        Name of the joint where it starts [-].
    end : str
        Name of the joint where it ends [-].
    axial_stiffness : float
        E A [N].
    bending_stiffness : float
        E I [N*mm2].
    hinges : str
        ``""`` rigid at both joints, ``"start"``, ``"end"`` or ``"both"`` [-].
    plan_load : float
        Downward load per horizontal length [N/mm].
    along_load : float
        Downward load per length of the bar, such as its own weight [N/mm].
    slip_start : float
        Stiffness along the bar of the connection at its start; infinite for none [N/mm].
    slip_end : float
        Stiffness along the bar of the connection at its end; infinite for none [N/mm].

    Examples
    --------
    >>> Bar("eave", "ridge", axial_stiffness=1e8, bending_stiffness=1e11, plan_load=1.0).hinges
    ''
    """

    start: str
    end: str
    axial_stiffness: float = field(kw_only=True)
    bending_stiffness: float = field(kw_only=True)
    hinges: str = field(default="", kw_only=True)
    plan_load: float = field(default=0.0, kw_only=True)
    along_load: float = field(default=0.0, kw_only=True)
    slip_start: float = field(default=numpy.inf, kw_only=True)
    slip_end: float = field(default=numpy.inf, kw_only=True)

    def __post_init__(self):
        check_choice("hinges", self.hinges, ["", "start", "end", "both"])
        for name in ("axial_stiffness", "bending_stiffness"):
            check_number(
                name.replace("_", " "),
                getattr(self, name),
                low=0,
                high=_MOST,
                low_allowed=False,
                hint="modulus times area, or times moment of inertia",
            )
        for name in ("plan_load", "along_load"):
            check_number(
                name.replace("_", " "),
                getattr(self, name),
                low=-_MOST,
                high=_MOST,
                hint="downward, for example 1.5 N/mm",
            )
        for name in ("slip_start", "slip_end"):
            value = getattr(self, name)
            if value != numpy.inf:
                check_number(
                    name.replace("_", " "),
                    value,
                    low=0,
                    high=_MOST,
                    low_allowed=False,
                    hint="stiffness of the joint in N/mm; leave it out for a joint that holds",
                )


@dataclass(frozen=True)
class JointLoad:
    """A force, or a couple, on a joint.

    Parameters
    ----------
    joint : str
        Name of the joint [-].
    down : float
        Downward force [N].
    right : float
        Force to the right [N].
    turn : float
        Couple, counterclockwise [N*mm].

    Examples
    --------
    >>> JointLoad("ridge", down=500.0).down
    500.0
    """

    joint: str
    down: float = field(default=0.0, kw_only=True)
    right: float = field(default=0.0, kw_only=True)
    turn: float = field(default=0.0, kw_only=True)

    def __post_init__(self):
        for name in ("down", "right", "turn"):
            check_number(f"{name} on a joint", getattr(self, name), low=-_MOST, high=_MOST, hint="for example 500*lb")


@dataclass(frozen=True)
class PlaneFrame:
    """A frame: joints by name, bars by name, loads on joints.

    Parameters
    ----------
    joints : dict
        A :class:`Joint` by its name [-].
    bars : dict
        A :class:`Bar` by its name [-].
    loads : tuple
        Any number of :class:`JointLoad` [-].

    Examples
    --------
    >>> post = PlaneFrame({"foot": Joint(0.0, 0.0, "xyt"), "head": Joint(0.0, 3000.0)},
    ...                   {"post": Bar("foot", "head", axial_stiffness=1e8, bending_stiffness=1e12)},
    ...                   [JointLoad("head", down=1000.0)])
    >>> round(solve_frame(post).reactions["foot"].up, 6)
    1000.0
    """

    joints: dict
    bars: dict
    loads: tuple = ()

    def __post_init__(self):
        if not self.joints or not self.bars:
            raise BadInput("a frame needs joints and bars, for example {'foot': Joint(0, 0, 'xyt')} and one Bar")
        for bar in self.bars.values():
            for name in (bar.start, bar.end):
                check_choice("joint", name, self.joints)
        for load in self.loads:
            check_choice("joint", load.joint, self.joints)
        longest = max(self.length(name) for name in self.bars)
        for name in self.bars:
            if not self.length(name) > _SHORTEST * longest:
                raise BadInput(f"bar {name!r} has no length: its two joints stand in one place")

    def length(self, bar):
        """Return the length of a bar.

        Parameters
        ----------
        bar : str
            Name of the bar [-].

        Returns
        -------
        float
            Its length [mm].

        Examples
        --------
        >>> PlaneFrame({"a": Joint(0, 0, "xy"), "b": Joint(3, 4, "y")},
        ...            {"ab": Bar("a", "b", axial_stiffness=1.0, bending_stiffness=1.0)}).length("ab")
        5.0
        """
        return float(numpy.hypot(*self.run(bar)))

    def run(self, bar):
        """Return how far a bar goes to the right and up.

        Parameters
        ----------
        bar : str
            Name of the bar [-].

        Returns
        -------
        tuple of float
            To the right, and up [mm].

        Examples
        --------
        >>> PlaneFrame({"a": Joint(0, 0, "xy"), "b": Joint(3, 4, "y")},
        ...            {"ab": Bar("a", "b", axial_stiffness=1.0, bending_stiffness=1.0)}).run("ab")
        (3, 4)
        """
        start, end = self.joints[self.bars[bar].start], self.joints[self.bars[bar].end]
        return end.x - start.x, end.y - start.y

    def direction(self, bar):
        """Return the direction of a bar, as a step of length one.

        Parameters
        ----------
        bar : str
            Name of the bar [-].

        Returns
        -------
        tuple of float
            To the right, and up [-].

        Examples
        --------
        >>> PlaneFrame({"a": Joint(0, 0, "xy"), "b": Joint(3, 4, "y")},
        ...            {"ab": Bar("a", "b", axial_stiffness=1.0, bending_stiffness=1.0)}).direction("ab")
        (0.6, 0.8)
        """
        right, up = self.run(bar)
        length = self.length(bar)
        return right / length, up / length

    def load_on(self, bar):
        """Return the load on a bar per length of it, taken apart along the bar and to its left.

        Parameters
        ----------
        bar : str
            Name of the bar [-].

        Returns
        -------
        tuple of float
            Along the bar, toward its end, and across it, to its left [N/mm].

        Examples
        --------
        >>> PlaneFrame({"a": Joint(0, 0, "xy"), "b": Joint(3, 4, "y")},
        ...            {"ab": Bar("a", "b", axial_stiffness=1.0, bending_stiffness=1.0,
        ...                       along_load=10.0)}).load_on("ab")
        (-8.0, -6.0)
        """
        piece, (cosine, sine) = self.bars[bar], self.direction(bar)
        down = piece.plan_load * abs(cosine) + piece.along_load
        return -down * sine, -down * cosine


def solve_frame(frame):
    """Solve a frame, or refuse one that can move without resistance.

    Parameters
    ----------
    frame : PlaneFrame
        The frame with its loads [-].

    Returns
    -------
    FrameSolution
        Movements, reactions and the forces in the bars [-].

    Examples
    --------
    >>> bar = {"axial_stiffness": 1e8, "bending_stiffness": 1e12, "hinges": "both"}
    >>> square = PlaneFrame({"a": Joint(0, 0, "xy"), "b": Joint(0, 3000), "c": Joint(3000, 3000),
    ...                      "d": Joint(3000, 0, "xy")},
    ...                     {"left": Bar("a", "b", **bar), "top": Bar("b", "c", **bar),
    ...                      "right": Bar("c", "d", **bar)})
    >>> try:
    ...     solve_frame(square)
    ... except BadInput as refused:
    ...     print(str(refused).split(";")[0])
    this frame is a mechanism: joint 'b' can move sideways with nothing to resist it
    """
    names = list(frame.joints)
    stiffness, loads = numpy.zeros((3 * len(names),) * 2), numpy.zeros(3 * len(names))
    for place, joint in enumerate(frame.joints.values()):
        stiffness[3 * place, 3 * place] += joint.spring_x
        stiffness[3 * place + 1, 3 * place + 1] += joint.spring_y
    for load in frame.loads:
        first = 3 * names.index(load.joint)
        loads[first : first + 3] += (load.right, -load.down, load.turn)
    pieces = {name: _piece(frame, name) for name in frame.bars}
    for name, piece in pieces.items():
        places = _unknowns_of(frame, name, names)
        stiffness[numpy.ix_(places, places)] += piece.turned.T @ piece.stiffness @ piece.turned
        loads[places] -= piece.turned.T @ piece.held
    free = _free_unknowns(frame, names, stiffness, loads)
    _refuse_mechanism(names, free, stiffness)
    moved = numpy.zeros(3 * len(names))
    moved[free] = _balanced(stiffness[numpy.ix_(free, free)], loads[free], _sizes(stiffness, free))
    return _solution(frame, names, pieces, moved)


@dataclass(frozen=True)
class _Piece:
    stiffness: numpy.ndarray  # 6 x 6, in the bar's own directions, hinges and slips already in it
    held: numpy.ndarray  # what the joints do to the loaded bar when they do not move
    turned: numpy.ndarray  # from the directions of the frame to those of the bar


def _bending(frame, bar):
    """Stiffness and held forces of a bar that turns with its joints: across, turn, across, turn."""
    length, (_, across) = frame.length(bar), frame.load_on(bar)
    unit = numpy.array([[12.0, 6, -12, 6], [6, 4, -6, 2], [-12, -6, 12, -6], [6, 2, -6, 4]])
    scale = numpy.array([1.0, length, 1.0, length])
    stiffness = unit * numpy.outer(scale, scale) * frame.bars[bar].bending_stiffness / length**3
    held = -across * length * numpy.array([1 / 2, length / 12, 1 / 2, -length / 12])
    return stiffness, held


def _hinged(bar):
    return {"": [], "start": [1], "end": [3], "both": [1, 3]}[bar.hinges]


def _piece(frame, bar):
    piece, length, (along, _) = frame.bars[bar], frame.length(bar), frame.load_on(bar)
    bending, held_bending = _bending(frame, bar)
    loose = _hinged(piece)
    if len(loose) == 2:  # hinged at both ends it does not resist sideways at all, to the last digit
        bending = numpy.zeros((4, 4))
        held_bending = held_bending * numpy.array([1, 0, 1, 0])
    elif loose:  # the hinged end turns as it likes: no couple there
        tight = [place for place in range(4) if place not in loose]
        carry = bending[numpy.ix_(tight, loose)] @ numpy.linalg.inv(bending[numpy.ix_(loose, loose)])
        less, held_less = numpy.zeros((4, 4)), numpy.zeros(4)
        less[numpy.ix_(tight, tight)] = bending[numpy.ix_(tight, tight)] - carry @ bending[numpy.ix_(loose, tight)]
        held_less[tight] = held_bending[tight] - carry @ held_bending[loose]
        bending, held_bending = less, held_less
    yield_start, yield_end = 1 / piece.slip_start, 1 / piece.slip_end
    yielding = yield_start + length / piece.axial_stiffness + yield_end
    pull = along * (length**2 / 2 / piece.axial_stiffness + length * yield_end) / yielding
    stiffness, held = numpy.zeros((6, 6)), numpy.zeros(6)
    across = [1, 2, 4, 5]
    stiffness[numpy.ix_(across, across)], held[across] = bending, held_bending
    stiffness[numpy.ix_([0, 3], [0, 3])] = numpy.array([[1, -1], [-1, 1]]) / yielding
    held[[0, 3]] = -pull, pull - along * length
    cosine, sine = frame.direction(bar)
    turned = numpy.zeros((6, 6))
    for first in (0, 3):
        turned[first : first + 3, first : first + 3] = [[cosine, sine, 0], [-sine, cosine, 0], [0, 0, 1]]
    return _Piece(stiffness, held, turned)


def _unknowns_of(frame, bar, names):
    piece = frame.bars[bar]
    return [3 * names.index(joint) + way for joint in (piece.start, piece.end) for way in range(3)]


def _free_unknowns(frame, names, stiffness, loads):
    free = []
    for place, name in enumerate(names):
        for way, letter in enumerate("xyt"):
            unknown = 3 * place + way
            if letter in frame.joints[name].held:
                continue
            if letter == "t" and stiffness[unknown, unknown] == 0:  # all bars hinged here: nothing turns
                if loads[unknown] != 0:
                    raise BadInput(
                        f"a couple stands on joint {name!r}, where every bar is hinged, so nothing can "
                        f"resist "
                        "it; put the couple on a rigid joint"
                    )
                continue
            free.append(unknown)
    return free


def _refuse_mechanism(names, free, stiffness):
    if not free:
        return
    part, size = stiffness[numpy.ix_(free, free)], _sizes(stiffness, free)
    values, vectors = numpy.linalg.eigh(part / numpy.outer(size, size))
    if values[0] > _MECHANISM * values[-1]:
        return
    way = vectors[:, 0] / size
    straight = [place for place, unknown in enumerate(free) if unknown % 3 < 2]
    most = max(straight or range(len(free)), key=lambda place: abs(way[place]))
    turns = [place for place in range(len(free)) if place not in straight]
    if straight and turns and abs(vectors[straight, 0]).max() < 1e-6:
        most = max(turns, key=lambda place: abs(way[place]))
    does = ("move sideways", "move up and down", "turn")[free[most] % 3]
    raise BadInput(
        f"this frame is a mechanism: joint {names[free[most] // 3]!r} can {does} with nothing to resist it; "
        "add a support, a brace or a tie, or take out a hinge"
    )


def _sizes(stiffness, free):
    """A measure for each unknown, the same for both ways a joint can move: no rounding is taken as stiff."""
    own = numpy.diag(stiffness).reshape(-1, 3)
    measure = numpy.column_stack([own[:, :2].max(axis=1), own[:, :2].max(axis=1), own[:, 2]]).ravel()[free]
    return numpy.sqrt(numpy.where(measure > 0, measure, 1.0))


def _balanced(stiffness, loads, size):
    """Movements under the loads, with one round of correction for what the first round leaves over."""
    if not len(loads):
        return loads
    scaled, wanted = stiffness / numpy.outer(size, size), loads / size
    found = numpy.linalg.solve(scaled, wanted)
    found += numpy.linalg.solve(scaled, wanted - scaled @ found)
    stray = abs(wanted - scaled @ found).max()
    if not stray <= _STRAY * abs(wanted).max():
        raise BadInput(
            "this frame cannot be solved to six digits: its stiffnesses lie too far apart; "
            "for example E A above 1e6 times that of the other bars"
        )
    return found / size


def _solution(frame, names, pieces, moved):
    moves = {name: tuple(map(float, moved[3 * i : 3 * i + 3])) for i, name in enumerate(names)}
    end_forces, starts = {}, {}
    pushed = {name: numpy.zeros(3) for name in names}
    for name, piece in pieces.items():
        bar = frame.bars[name]
        own = piece.turned @ moved[_unknowns_of(frame, name, names)]
        forces = piece.stiffness @ own + piece.held
        end_forces[name] = tuple(map(float, forces))
        pushed[bar.start] += in_plane(frame, name, forces[:3])
        pushed[bar.end] += in_plane(frame, name, forces[3:])
        bending, held = _bending(frame, name)
        loose = _hinged(bar)
        across = own[[1, 2, 4, 5]]
        if loose:
            tight = [place for place in range(4) if place not in loose]
            across[loose] = -numpy.linalg.solve(
                bending[numpy.ix_(loose, loose)],
                bending[numpy.ix_(loose, tight)] @ across[tight] + held[loose],
            )
        starts[name] = (float(own[0] - forces[0] / bar.slip_start), float(across[0]), float(across[1]))
    reactions = {}
    for name, joint in frame.joints.items():
        springs = numpy.array([joint.spring_x, joint.spring_y, 0.0])
        if not joint.held and not springs.any():
            continue
        loads = sum(
            (numpy.array([load.right, -load.down, load.turn]) for load in frame.loads if load.joint == name),
            numpy.zeros(3),
        )
        given = numpy.array([float(letter in joint.held) for letter in "xyt"]) * (pushed[name] - loads)
        given -= numpy.array([letter not in joint.held for letter in "xyt"]) * springs * numpy.array(moves[name])
        reactions[name] = FrameReaction(*map(float, given))
    return FrameSolution(frame, moves, reactions, end_forces, starts)
