"""Seats: what a beam or joist needs to sit on, what it gets, and whether the beam can be got in at all."""

from dataclasses import dataclass

import numpy

from structlib.ground.refusals import BadInput, OutsideRule, check_choice, check_number, is_symbolic
from structlib.ground.roots import square_root
from structlib.ground.tables import table_row
from structlib.ground.units import ft, inch, lb, psi  # noqa: F401 (lb, psi: used in the examples)
from structlib.rules.check import Check
from structlib.rules.us import factors
from structlib.rules.us.bearing import bearing_length_needed
from structlib.rules.us.inputs import check_member_length, check_size
from structlib.rules.us.one_number import check_one_number, inches_text, length_text

MEETINGS = ("butted", "lapped")
GATE = (
    "what masonry may carry under a beam goes by its mortar, its voids and its age, and is for an "
    "engineer; the "
    "seat here is the code's least, not a verdict on the wall"
)
#: Where the code asks for clear space around the end of a beam in a wall of masonry.
CLEARANCE_CLAUSE = "IRC R317.1"
_STUD = 1.5 * inch


@dataclass(frozen=True)
class SeatMinimum:
    """The least seat of the code beside what the trade does, which is no rule. Lengths in mm."""

    below: str
    length: float
    clause: str
    verified: str
    practice: str
    practice_verified: str = "common practice"


@dataclass(frozen=True)
class JoistSeats:
    """What each joist gets where two meet over a beam. Lengths in mm; arrays where the plies were.

    ``plies_needed`` is the fewest plies of that width with which each gets the seat that the code asks.
    """

    meeting: str
    beam_width: float
    each: float
    needed: float
    enough: bool
    plies_needed: int
    sentence: str
    clause: str
    verified: str


@dataclass(frozen=True)
class JackStuds:
    """Jack studs under one end of a beam: seat needed, count, and the seat they give. Lengths in mm."""

    count: int
    seat_needed: float
    seat_given: float
    share: float
    clause: str


@dataclass(frozen=True)
class Pocket:
    """A beam pocket in a masonry wall: how deep it is cut and what seat is left in it. Lengths in mm."""

    depth: float
    seat: float
    check: Check
    conditions: tuple[str, ...]
    gate: str


@dataclass(frozen=True)
class SwingIn:
    """The longest beam that can be swung in between two walls, and the seats it is left with.

    Lengths in mm. ``near`` is the end that goes in first. A negative overlap is a gap between the end of the
    beam and the face of the wall. ``near_opening`` is how tall the near pocket must be for the beam to tilt
    in it (how wide, when it is swung level)."""

    length: float
    diagonal: float
    near_seat: float
    far_seat: float
    near_overlap: float
    far_overlap: float
    near_opening: float
    sentence: str


_PRACTICE = {
    "plate": "3 in (two jack studs) under a beam that carries a floor, whatever the sum says",
    "post": "the beam over the whole post, so that no edge of it is left out",
    "steel": "the beam over the whole cap plate, fastened through it",
    "masonry": "4 in in a pocket, on a steel plate or treated shim, never on loose stone",
}


def seat_minimum(below):
    """Return the least seat of the code for one kind of support, with common practice beside it.

    Parameters
    ----------
    below : str
        'plate', 'post', 'steel' or 'masonry' [-].

    Returns
    -------
    SeatMinimum
        The least seat and what the trade does [mm, -].

    Notes
    -----
    IRC R502.6. The common practice is no rule and is marked so.

    Examples
    --------
    >>> round(seat_minimum("plate").length / inch, 6), seat_minimum("plate").practice_verified
    (1.5, 'common practice')
    """
    length, clause, verified = factors.least_seat(below)
    return SeatMinimum(below, length, clause, verified, _PRACTICE[below])


def joists_over_beam(*, ply_width, plies, meeting, gap=0.0, below="plate"):
    """Return the seat that each joist gets where two meet over a beam.

    Parameters
    ----------
    ply_width : float
        Width of one ply of the beam [mm].
    plies : int or numpy.ndarray
        Plies of the beam, 1 to 6 [-].
    meeting : str
        'butted': the joists stand in line, end to end over the middle, each on half of the beam. 'lapped':
        they stand beside each other, each on its whole width [-].
    gap : float
        Gap between the ends of butted joists [mm].
    below : str
        What the joists sit on: 'plate' for wood, 'steel' [-].

    Returns
    -------
    JoistSeats
        Seat of each joist, and the plies that would give enough [mm, -].

    Raises
    ------
    OutsideRule
        When not even six plies would do.

    Notes
    -----
    IRC R502.6; joists that lap do so by 3 in at least, or are tied across the joint (R502.6.1).

    Examples
    --------
    >>> seats = joists_over_beam(ply_width=1.5*inch, plies=2, meeting="butted")
    >>> round(seats.each / inch, 6), seats.enough
    (1.5, True)
    >>> joists_over_beam(ply_width=1.5*inch, plies=2, meeting="butted", gap=0.25*inch).plies_needed
    3
    """
    check_choice("meeting of the joists", meeting, MEETINGS)
    check_choice("what the joists sit on", below, ("plate", "steel"))
    check_one_number(
        "ply width", ply_width, low=0.5 * inch, high=24 * inch, shown=inches_text, hint="for example 1.5*inch"
    )
    check_one_number("gap", gap, low=0.0, high=2 * inch, shown=inches_text, hint="0 where they touch")
    plies = _checked_plies(plies)
    needed, clause, verified = factors.least_seat(below)
    butted = meeting == "butted"

    def seat(count):
        return (ply_width * count - gap) / 2 if butted else ply_width * count

    each = numpy.maximum(seat(plies), 0.0)
    doing = [count for count in range(1, 7) if seat(count) >= needed * (1 - 1e-9)]
    if not doing:
        raise OutsideRule(
            f"not even six plies {inches_text(ply_width)} wide give each joist {inches_text(needed)}; lap "
            "the joists "
            "or hang them on the side"
        )
    lap = table_lap()
    sentence = (
        "each of two joists in line gets half of the beam, less half of the gap between them; tie them across the joint"
        if butted
        else f"joists beside each other get the whole beam; they lap by {inches_text(lap)} at least"
    )
    enough = each >= needed * (1 - 1e-9)
    if numpy.ndim(plies) == 0:
        each, enough = float(each), bool(enough)
    return JoistSeats(
        meeting, ply_width * plies, each, needed, enough, doing[0], sentence, f"{clause}, R502.6.1", verified
    )


def table_lap():
    """Return how far joists from opposite sides lap over a support.

    Returns
    -------
    float
        Length of the lap [mm].

    Notes
    -----
    IRC R502.6.1.

    Examples
    --------
    >>> round(table_lap() / inch, 6)
    3.0
    """
    return table_row("us_bearing_minimums", key="joist_lap")["value"] * inch


def jack_studs(*, reaction, width, bearing_value, stud_width=_STUD):
    """Return how many jack studs an end of a beam needs so that the beam is not crushed on them.

    Parameters
    ----------
    reaction : float or numpy.ndarray
        Push of that end [N].
    width : float or numpy.ndarray
        Width of all plies of the beam [mm].
    bearing_value : float or numpy.ndarray
        Crushing value across the grain of the beam, F_perp' [MPa].
    stud_width : float
        Thickness of one jack stud along the beam [mm].

    Returns
    -------
    JackStuds
        Count, the seat needed and the seat given; arrays where the inputs were [-, mm].

    Notes
    -----
    NDS 2018 3.10.2 and IRC R502.6: at least one stud, 1.5 in. Only the crushing of the beam is asked here;
    the studs themselves are a column.

    Examples
    --------
    >>> studs = jack_studs(reaction=4000*lb, width=3*inch, bearing_value=425*psi)
    >>> studs.count, round(studs.seat_needed / inch, 2)
    (3, 3.14)
    """
    check_one_number(
        "thickness of a jack stud",
        stud_width,
        low=0.5 * inch,
        high=12 * inch,
        shown=inches_text,
        hint="for example 1.5*inch",
    )
    for value in (reaction, width, bearing_value):
        if is_symbolic(value):
            raise BadInput(f"studs are counted with numbers, got the symbol {value}; for example 4000*lb")
    reaction, width, bearing_value = (
        numpy.asarray(value, dtype=float) if isinstance(value, (list, tuple)) else value
        for value in (reaction, width, bearing_value)
    )
    needed = bearing_length_needed(reaction=reaction, width=width, bearing_value=bearing_value)
    least = factors.least_seat("plate")[0]
    # a seat that is met exactly does not want one more stud for the last digit of a float
    count = numpy.ceil(numpy.maximum(needed, least) / stud_width - 1e-9)
    if numpy.ndim(count) == 0:
        count, needed = int(count), float(needed)
    return JackStuds(count, needed, count * stud_width, needed / (count * stud_width), "NDS 2018 3.10.2, IRC R502.6")


def masonry_pocket(*, wall_thickness, left_behind, end_clearance=None):
    """Return the seat that a beam gets in a pocket of a masonry wall.

    Parameters
    ----------
    wall_thickness : float
        Thickness of the wall [mm].
    left_behind : float
        Masonry (and mortar bed) left between the pocket and the other face [mm].
    end_clearance : float or None
        Clear space at the end of the beam; None for the code's 1/2 in [mm].

    Returns
    -------
    Pocket
        Depth of the pocket, seat, its check against 3 in, conditions and the gate sentence [mm, -].

    Raises
    ------
    OutsideRule
        When nothing is left to sit on.

    Notes
    -----
    IRC R502.6 (3 in on masonry or concrete), R317.1 (clear space around wood girder ends).

    Examples
    --------
    >>> pocket = masonry_pocket(wall_thickness=8*inch, left_behind=4*inch)
    >>> round(pocket.seat / inch, 6), round(pocket.check.share, 3)
    (3.5, 0.857)
    """
    own = factors.length("masonry_pocket_clearance")
    check_one_number(
        "wall thickness",
        wall_thickness,
        low=3 * inch,
        high=4 * ft,
        shown=inches_text,
        hint="for example 8*inch",
    )
    check_one_number(
        "masonry left behind", left_behind, low=0.0, high=4 * ft, shown=inches_text, hint="for example 4*inch"
    )
    if end_clearance is None:
        end_clearance = own
    check_one_number("clearance", end_clearance, low=0.0, high=6 * inch, shown=inches_text, hint="for example 0.5*inch")
    depth = wall_thickness - left_behind
    seat = depth - end_clearance
    if seat <= 0:
        raise OutsideRule(
            f"nothing is left to sit on: a pocket {inches_text(max(depth, 0.0))} deep with "
            f"{inches_text(end_clearance)} "
            "of clearance; use a post or a pilaster in front of the wall"
        )
    least, clause, verified = factors.least_seat("masonry")
    check = Check(
        name="seat in the pocket",
        kind="seat",
        sentence="the code asks for this much seat on masonry whatever the load",
        asked=least,
        given=seat,
        share=least / seat,
        dimension="section length",
        position=0.0,
        where="in the pocket",
        combination="any",
        clause=clause,
        formula="least seat <= wall - left behind - clearance",
        substitute=(
            ("least seat", least, "section length"),
            ("wall", wall_thickness, "section length"),
            ("left behind", left_behind, "section length"),
            ("clearance", end_clearance, "section length"),
        ),
        verified=verified,
    )
    conditions = [
        f"a clear space of {inches_text(own)} at the end, the sides and the top, or treated or durable wood",
        "something between wood and masonry that keeps water out of the wood",
        "a seat of sound, level masonry, filled solid under it, over the whole width of the beam",
    ]
    if end_clearance < own * (1 - 1e-9):
        conditions.append("with so little clear space the end must be of treated or durable wood")
    return Pocket(depth, seat, check, tuple(conditions), GATE)


def tilted_length(*, room, across):
    """Return the longest rectangle that turns from a slant to level within a room: its diagonal just clears.

    Parameters
    ----------
    room : float, numpy.ndarray or sympy expression
        Clear distance that the diagonal has [mm].
    across : float, numpy.ndarray or sympy expression
        Size of the beam in the plane of turning: its depth when lifted, its width when swung level [mm].

    Returns
    -------
    float, numpy.ndarray or sympy expression
        Length of the beam [mm].

    Notes
    -----
    Geometry: a rectangle that turns is longest, wall to wall, when its diagonal is level.

    Examples
    --------
    >>> tilted_length(room=5.0, across=3.0)
    4.0
    """
    check_member_length("room", room, zero=False)
    check_size("size across", across)
    if not (is_symbolic(room) or is_symbolic(across)) and numpy.any(numpy.asarray(across) >= numpy.asarray(room)):
        raise BadInput(
            "the beam is as deep as the opening is wide; for example a room of 12*ft and a depth of 9.25*inch"
        )
    return square_root(room**2 - across**2)


def swing_in(*, clear_width, across, near_pocket=0.0, far_pocket=0.0, near_ledge=0.0, far_ledge=0.0, play=0.0):
    """Return the longest beam that can be swung in between two walls, and the seats it is left with.

    Parameters
    ----------
    clear_width : float
        Distance between the faces of the walls [mm].
    across : float
        Size of the beam in the plane of turning: its depth when one end is lifted, its width when it is swung
        level [mm].
    near_pocket : float
        Depth of the pocket into which the first end goes; zero for none [mm].
    far_pocket : float
        Depth of the pocket at the other end [mm].
    near_ledge : float
        Seat that stands in front of the near wall, such as jack studs [mm].
    far_ledge : float
        Seat that stands in front of the far wall [mm].
    play : float
        Room to leave on the diagonal, so that it can be done by hand [mm].

    Returns
    -------
    SwingIn
        Length, diagonal and seats [mm].

    Notes
    -----
    Geometry only. One end goes to the back of the near pocket on a slant, the beam is turned level, then slid
    into the far pocket until both ends overlap alike, as far as that pocket is deep. The ledges must not be
    in the way of the slant: they are put under when the beam is up. Floor, ceiling and what hangs in the room
    are not looked at.

    Examples
    --------
    >>> beam = swing_in(clear_width=144*inch, across=9.25*inch, near_pocket=8*inch, far_pocket=4*inch)
    >>> round(beam.length / inch, 2), round(beam.near_seat / inch, 2), round(beam.far_seat / inch, 2)
    (151.72, 3.86, 3.86)
    >>> short = swing_in(clear_width=144*inch, across=9.25*inch, near_ledge=3*inch, far_ledge=3*inch)
    >>> round(short.length / inch, 2), round(short.near_seat / inch, 2)
    (143.7, 2.85)
    """
    check_one_number("clear width", clear_width, low=1 * ft, high=60 * ft, shown=length_text, hint="for example 12*ft")
    check_one_number(
        "size across", across, low=0.5 * inch, high=4 * ft, shown=inches_text, hint="for example 9.25*inch"
    )
    for name, value in (
        ("near pocket", near_pocket),
        ("far pocket", far_pocket),
        ("near ledge", near_ledge),
        ("far ledge", far_ledge),
        ("play", play),
    ):
        check_one_number(name, value, low=0.0, high=2 * ft, shown=inches_text, hint="0 for none")
    room = clear_width + near_pocket - play
    if room <= across:
        raise BadInput(f"the beam is as deep ({inches_text(across)}) as there is room to turn it ({inches_text(room)})")
    length = min(tilted_length(room=room, across=across), clear_width + near_pocket + far_pocket)
    over = length - clear_width
    far = min(far_pocket, over / 2)
    near = over - far
    opening = _opening(length, across, clear_width) if near_pocket and over > 0 else 0.0
    sentence = (
        "the beam lands in both pockets"
        if near > 0 and far > 0
        else "the beam ends short of at least one wall and sits on what stands in front of it"
    )
    return SwingIn(
        length,
        (length**2 + across**2) ** 0.5,
        max(near + near_ledge, 0.0),
        max(far + far_ledge, 0.0),
        near,
        far,
        opening,
        sentence,
    )


def _opening(length, across, clear_width):
    """Tallest that the slanted beam stands in the pocket, from first entering until its diagonal is level.

    A strip of the beam's depth, cut off at the wall's face and at its own far corner: a little more than the
    beam itself takes.
    """
    diagonal = (length**2 + across**2) ** 0.5
    level = numpy.arctan2(across, length)
    angle = numpy.linspace(level, level + numpy.arccos(min(clear_width / diagonal, 1.0)), 2001)
    inside = numpy.maximum(length * numpy.cos(angle) + across * numpy.sin(angle) - clear_width, 0.0)
    return float(numpy.max(across / numpy.cos(angle) + inside * numpy.tan(angle)))


def _checked_plies(plies):
    if is_symbolic(plies):
        raise BadInput(f"plies must be a number, got the symbol {plies}; for example 2")
    check_number("plies", plies, low=1, high=6, hint="for example 2")
    counts = numpy.asarray(plies, dtype=float)
    if numpy.any(counts % 1):
        raise BadInput(f"plies must be whole, got {plies!r}; for example 2")
    return counts if counts.ndim else int(counts)
