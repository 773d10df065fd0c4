"""A beam over an opening: what presses on it, how it moves, and where it comes nearest its limit."""

from bisect import bisect_right
from dataclasses import dataclass

from structlib.ground.refusals import BadInput, check_choice, check_number
from structlib.pictures.drawings import parts
from structlib.pictures.labels import Callout, Label, place_callouts, spread, text_width, wrap
from structlib.pictures.scene import Arrow, Curve, Dimension, Line, Polygon, Scene, hatch, rectangle, thin
from structlib.pictures.style import NOTE_SIZE

KINDS = ("bending", "shear", "bearing", "sag", "stability")

COLUMN = 176.0
DECK = 172.0
LOAD_ROOM = 64.0
WALL = 30.0
BEAM_ROOM = 84.0
WIDE_BEAM_ROOM = 60.0


@dataclass(frozen=True)
class LoadBand:
    """A load spread along the beam, drawn as a band of arrows.

    Parameters
    ----------
    label : str
        Name and size in the reader's units, for example ``"snow 300 lb/ft"`` [-].
    intensity : float or tuple of tuple
        Load per length, or pairs of place [mm] and load per length along the beam [N/mm].
    """

    label: str
    intensity: object


@dataclass(frozen=True)
class PointLoad:
    """A load at one place of the beam.

    Parameters
    ----------
    label : str
        Name and size in the reader's units, for example ``"post 3,200 lb"`` [-].
    x : float
        Its place along the beam [mm].
    """

    label: str
    x: float


@dataclass(frozen=True)
class Mark:
    """One check, drawn on the member where it comes nearest its limit.

    Parameters
    ----------
    kind : str
        ``"bending"``, ``"shear"``, ``"bearing"``, ``"sag"`` or ``"stability"`` [-].
    x : float
        Its place along the beam [mm].
    share : float
        The share of what may be asked that is used, 1 = all of it [-].
    sentence : str
        What happens there, in the words of the trade [-].
    governs : bool
        Whether this check governs [-].
    """

    kind: str
    x: float
    share: float
    sentence: str = ""
    governs: bool = False


@dataclass(frozen=True)
class PreviousBeam:
    """The beam before the last change, drawn as a ghost.

    Parameters
    ----------
    beam_depth : float
        Its depth [mm].
    sag_x : tuple of float
        Places along it [mm].
    sag_y : tuple of float
        Its sag, positive down [mm].
    """

    beam_depth: float
    sag_x: tuple
    sag_y: tuple


@dataclass(frozen=True)
class OpeningView:
    """All that the drawing of an opening shows; texts are ready to print.

    Places along the beam count from ``x_start`` right of the beam's outer left end.

    Parameters
    ----------
    title : str
        The message, about 80 letters at most [-].
    clear_width : float
        Clear width between the jacks [mm].
    left_seat : float
        Length of the beam on its left support [mm].
    right_seat : float
        Length of the beam on its right support [mm].
    beam_depth : float
        Depth of the beam [mm].
    opening_height : float
        Height from the floor to the underside of the beam [mm].
    plies : int
        Number of plies [-].
    ply_width : float
        Width of one ply [mm].
    material_kind : str
        ``"sawn"``, ``"lvl"``, ``"timber"`` or ``"steel"`` [-].
    section_name : str
        Name of the section, for example ``"2-2x10"`` [-].
    width_text : str
        Total width, for example ``"3 in"`` [-].
    depth_text : str
        Depth, for example ``"9 1/4 in"`` [-].
    clear_width_text : str
        Clear width, for example ``"8'-0\\" clear"`` [-].
    flush : bool
        True: joists hang on the sides of the beam; False: joists sit on top [-].
    left_jacks : int
        Number of jack studs on the left [-].
    right_jacks : int
        Number of jack studs on the right [-].
    jack_thickness : float
        Thickness of one jack stud [mm].
    joist_depth : float
        Depth of the joists, 0 for none drawn [mm].
    joist_spacing : float
        Spacing of the joists [mm].
    loads : tuple of LoadBand
        Spread loads, the topmost first [-].
    point_loads : tuple of PointLoad
        Loads at one place [-].
    load_full : float or None
        Load that a full-length arrow stands for; None lets the total fill it [N/mm].
    load_full_text : str
        What a full arrow stands for, for example ``"full arrow 800 lb/ft"`` [-].
    sag_x : tuple of float
        Places of the deflected shape [mm].
    sag_y : tuple of float
        Sag, positive down [mm].
    exaggeration : float
        Factor by which sag is drawn; a smaller round one is used and printed if it does not fit [-].
    sag_text : str
        True sag, for example ``"true sag 0.32 in = L/450"`` [-].
    sag_limit : float
        Accepted sag, 0 for no limit line [mm].
    sag_limit_text : str
        Name of the limit, for example ``"limit L/360"`` [-].
    previous : PreviousBeam or None
        The state before the last change [-].
    marks : tuple of Mark
        Checks, each drawn where it is nearest its limit [-].
    shear_x : tuple of float
        Places of the shear diagram [mm].
    shear_y : tuple of float
        Shear [N].
    shear_text : str
        Its peak, for example ``"1,840 lb"`` [-].
    moment_x : tuple of float
        Places of the moment diagram [mm].
    moment_y : tuple of float
        Moment, positive sagging [N*mm].
    moment_text : str
        Its peak, for example ``"3,680 lb-ft"`` [-].
    shear_full : float
        Shear that fills the diagram, 0 lets the peak fill it [N].
    moment_full : float
        Moment that fills the diagram, 0 lets the peak fill it [N*mm].
    camera_width : float
        Length that the picture always has room for, so that the scale stays fixed [mm].
    camera_depth : float
        Beam depth that the picture always has room for [mm].
    x_start : float or None
        Where x = 0 lies from the outer left end; None is the middle of the left seat [mm].
    """

    title: str
    clear_width: float
    left_seat: float
    right_seat: float
    beam_depth: float
    opening_height: float
    plies: int
    ply_width: float
    material_kind: str
    section_name: str
    width_text: str
    depth_text: str
    clear_width_text: str
    flush: bool = False
    left_jacks: int = 1
    right_jacks: int = 1
    jack_thickness: float = 38.1
    joist_depth: float = 0.0
    joist_spacing: float = 406.4
    loads: tuple = ()
    point_loads: tuple = ()
    load_full: float | None = None
    load_full_text: str = ""
    sag_x: tuple = ()
    sag_y: tuple = ()
    exaggeration: float = 40.0
    sag_text: str = ""
    sag_limit: float = 0.0
    sag_limit_text: str = ""
    previous: PreviousBeam | None = None
    marks: tuple = ()
    shear_x: tuple = ()
    shear_y: tuple = ()
    shear_text: str = ""
    moment_x: tuple = ()
    moment_y: tuple = ()
    moment_text: str = ""
    shear_full: float = 0.0
    moment_full: float = 0.0
    camera_width: float = 0.0
    camera_depth: float = 0.0
    x_start: float | None = None


class _Frame:
    """Where everything goes: the scale and the heights of one opening drawing."""

    def __init__(self, view, width, height):
        self.width, self.height = width, height
        self.left, self.right = parts.MARGIN, width - COLUMN - 18
        self.column = width - COLUMN
        total = view.left_seat + view.clear_width + view.right_seat
        deepest = max(view.beam_depth, view.camera_depth, view.previous.beam_depth if view.previous else 0)
        self.scale = min(
            (self.right - self.left - 2 * WALL) / max(total, view.camera_width),
            (WIDE_BEAM_ROOM if width > 2 * height / 1.5 else BEAM_ROOM) / deepest,
        )
        middle = (self.left + self.right) / 2
        self.beam_left, self.beam_right = middle - total * self.scale / 2, middle + total * self.scale / 2
        self.seat_left = self.beam_left + view.left_seat * self.scale
        self.seat_right = self.beam_right - view.right_seat * self.scale
        start = view.left_seat / 2 if view.x_start is None else view.x_start
        self.zero = self.beam_left + start * self.scale
        self.joist = 0.0 if view.flush else min(40.0, view.joist_depth * self.scale)
        self.beam_top = DECK + self.joist
        self.beam_bottom = self.beam_top + view.beam_depth * self.scale
        self.dimension_y = height - 274
        self.room_bottom = self.dimension_y - 24
        self.floor = min(self.room_bottom, self.beam_bottom + view.opening_height * self.scale)
        if height > 1.5 * width:
            # upright film: the diagrams follow the floor and take the room below it
            self.dimension_y = min(self.dimension_y, max(self.floor + 40, 446.0))
        self.posts_cut = self.floor < self.beam_bottom + view.opening_height * self.scale - 0.5
        self.factor = self._factor(view)

    def _factor(self, view):
        sags = list(view.sag_y) + (list(view.previous.sag_y) if view.previous else [])
        if view.sag_limit:
            sags.append(view.sag_limit)
        largest = max([abs(sag) for sag in sags], default=0.0) * self.scale
        return parts.fitting_factor(
            view.exaggeration, largest, min(100.0, max(44.0, self.room_bottom - self.beam_bottom - 90))
        )

    def x(self, place):
        return self.zero + place * self.scale

    def sag(self, y):
        return self.beam_bottom + y * self.scale * self.factor


def draw_opening(view, frame="page"):
    """Draw a beam over an opening, to scale, with its loads, its sag and its checks.

    Parameters
    ----------
    view : OpeningView
        What is shown [-].
    frame : str
        ``"page"`` (beside sliders), ``"wide"`` (16:9) or ``"tall"`` (9:16) [-].

    Returns
    -------
    Scene
        The picture [-].

    Raises
    ------
    BadInput
        When a length, count or word makes no sense, or a text is too long to be shown.

    Examples
    --------
    >>> view = OpeningView(title="The beam carries the floor", clear_width=2438.4, left_seat=76.2,
    ...                    right_seat=76.2, beam_depth=235.0, opening_height=2057.4, plies=2,
    ...                    ply_width=38.1, material_kind="sawn", section_name="2-2x10",
    ...                    width_text="3 in", depth_text="9 1/4 in", clear_width_text="8'-0\\"")
    >>> draw_opening(view).width
    720.0
    """
    check_choice("frame", frame, parts.FRAMES)
    _check(view)
    width, height = parts.FRAMES[frame]
    at = _Frame(view, width, height)
    captions, caption, scale = _captions(view, at)
    labels, leaders, marks = _marks(view, at)
    items = (
        parts.still_group("paper", [parts.paper(width, height), *_axes(at)]),
        *_wall(view, at),
        *_beam(view, at),
        *_loads(view, at),
        *_sag(view, at),
        *marks,
        *_diagrams(view, at),
        *leaders,
        *_section(view, at),
        Dimension(
            (at.seat_left, at.floor),
            (at.seat_right, at.floor),
            at.dimension_y - at.floor,
            view.clear_width_text,
        ),
        *labels,
        *_load_labels(view, at),
        *captions,
        *parts.title_labels(view.title, width),
    )
    return Scene(width, height, items, view.title, caption, _alt(view, scale))


def _check(view):
    for name in (
        "clear_width",
        "left_seat",
        "right_seat",
        "beam_depth",
        "opening_height",
        "ply_width",
        "jack_thickness",
        "joist_spacing",
    ):
        parts.check_length(name.replace("_", " "), getattr(view, name))
    for name in ("joist_depth", "sag_limit", "camera_width", "camera_depth"):
        parts.check_length(name.replace("_", " "), getattr(view, name), low_allowed=True)
    check_number("plies", view.plies, low=1, high=8, hint="for example 2")
    for side in ("left", "right"):
        check_number(f"{side} jacks", getattr(view, f"{side}_jacks"), low=0, high=8, hint="for example 2")
    check_number(
        "exaggeration", view.exaggeration, low=0, high=1000, low_allowed=False, hint="for example 40"
    )
    check_choice("material kind", view.material_kind, parts.MATERIALS)
    for name in ("sag", "shear", "moment"):
        xs, ys = getattr(view, f"{name}_x"), getattr(view, f"{name}_y")
        if len(xs) or len(ys):
            parts.check_pairs(name, xs, ys)
    if view.previous:
        parts.check_length("depth of the previous beam", view.previous.beam_depth)
        parts.check_pairs("previous sag", view.previous.sag_x, view.previous.sag_y)
    for mark in view.marks:
        check_choice("mark", mark.kind, KINDS)
        check_number(f"share of {mark.kind}", mark.share, low=0, high=1e4, hint="1 means all of it is used")
    for load in view.loads:
        for _, intensity in _profile(load, 0, 1):
            check_number(f"load {load.label!r}", intensity, low=0, high=1e5, hint="loads press down, in N/mm")


# --- the wall and the beam ------------------------------------------------------------------


def _axes(at):
    top, middle, _ = _diagram_rows(at)
    return [
        Label("shear", at.column, top + 12, "shear", 20, bold=True),
        Label("moment", at.column, middle + 22, "moment", 20, bold=True),
    ]


def _wall(view, at):
    left, right = (at.left, DECK, at.beam_left, at.floor), (at.beam_right, DECK, at.right, at.floor)
    items = [rectangle(*left, "wall"), rectangle(*right, "wall"), *hatch(left, 22), *hatch(right, 22)]
    items += parts.ground_line(at.left, at.right, at.floor)
    jack = view.jack_thickness * at.scale
    studs = [
        (at.beam_left - jack, DECK, at.beam_left, at.floor),
        (at.beam_right, DECK, at.beam_right + jack, at.floor),
    ]
    studs += [
        (at.beam_left + k * jack, at.beam_bottom, at.beam_left + (k + 1) * jack, at.floor)
        for k in range(view.left_jacks)
    ]
    studs += [
        (at.beam_right - (k + 1) * jack, at.beam_bottom, at.beam_right - k * jack, at.floor)
        for k in range(view.right_jacks)
    ]
    items += parts.wood_row(studs, "sawn")
    if at.posts_cut:
        items += _break_marks(at)
    return items


def _break_marks(at):
    # a paper-coloured strip with two jagged edges across wall and studs: the posts go on
    y, items, edges = at.floor - 16, [], []
    for a, b in ((at.left - 2, at.seat_left + 4), (at.seat_right - 4, at.right + 2)):
        steps = max(2, round((b - a) / 12))
        upper = [(a + (b - a) * k / steps, y - (4 if k % 2 else 0)) for k in range(steps + 1)]
        lower = [(x, above + 6) for x, above in upper]
        items.append(Polygon(tuple(upper + lower[::-1]), "paper"))
        edges += [Line(tuple(upper), "quiet"), Line(tuple(lower), "quiet")]
    return items + edges


def _beam(view, at):
    items = []
    if view.previous:
        bottom = at.beam_top + view.previous.beam_depth * at.scale
        ghost = [
            (at.beam_left, at.beam_top),
            (at.beam_right, at.beam_top),
            (at.beam_right, bottom),
            (at.beam_left, bottom),
            (at.beam_left, at.beam_top),
        ]
    box = (at.beam_left, at.beam_top, at.beam_right, at.beam_bottom)
    items += parts.wood(box, view.material_kind)
    if view.material_kind == "steel":
        flange = max(2.0, 0.06 * (box[3] - box[1]))
        items += [
            Line(((box[0], box[1] + flange), (box[2], box[1] + flange)), "steel_line"),
            Line(((box[0], box[3] - flange), (box[2], box[3] - flange)), "steel_line"),
        ]
    if view.joist_depth:
        items += _joists(view, at)
    items.append(Line(((at.left, DECK), (at.right, DECK)), "ground"))
    if view.previous and abs(bottom - at.beam_bottom) > 0.5:
        items.append(Line(tuple(ghost), "ghost"))
    return items


def _joists(view, at):
    spacing = max(view.joist_spacing * at.scale, 12.0)
    count = int((at.beam_right - at.beam_left) / spacing)
    wide = max(3.0, 38.1 * at.scale)
    first = (at.beam_left + at.beam_right) / 2 - spacing * (count - 1) / 2
    middles = [first + spacing * k for k in range(count)]
    if view.flush:
        # hangers on the face of the beam, open at the top
        depth = min(view.joist_depth * at.scale, at.beam_bottom - at.beam_top - 2)
        return [
            Line(
                (
                    (x - wide, at.beam_top),
                    (x - wide, at.beam_top + depth),
                    (x + wide, at.beam_top + depth),
                    (x + wide, at.beam_top),
                ),
                "steel_line",
            )
            for x in middles
        ]
    return [rectangle(x - wide / 2, DECK, x + wide / 2, at.beam_top, "wood_cut") for x in middles]


# --- loads ----------------------------------------------------------------------------------


def _profile(load, start, end):
    if isinstance(load.intensity, (int, float)):
        return ((start, load.intensity), (end, load.intensity))
    pairs = tuple((float(x), float(w)) for x, w in load.intensity)
    if len(pairs) < 2 or any(b[0] < a[0] for a, b in zip(pairs, pairs[1:])):
        raise BadInput(
            f"load {load.label!r} needs at least two pairs of place and load per length, "
            "from left to right"
        )
    return pairs


def _value(profile, x):
    if x < profile[0][0] or x > profile[-1][0]:
        return 0.0
    for (x0, w0), (x1, w1) in zip(profile, profile[1:]):
        if x0 <= x <= x1 and x1 > x0:
            return w0 + (w1 - w0) * (x - x0) / (x1 - x0)
    return profile[-1][1]


def _bands(view, at):
    """Heights of the stacked bands at the arrow places: (xs, per band lower and upper edges)."""
    count = 24 // max(1, len(view.loads)) if len(view.loads) > 1 else 23
    start, end = at.beam_left + 5, at.beam_right - 5
    xs = [start + (end - start) * k / (count - 1) for k in range(count)]
    ends = ((at.beam_left - at.zero) / at.scale, (at.beam_right - at.zero) / at.scale)
    profiles = [_profile(load, *ends) for load in view.loads]
    sizes = [[_value(profile, (x - at.zero) / at.scale) for x in xs] for profile in profiles]
    total = max([sum(column) for column in zip(*sizes)], default=0.0)
    full = max(view.load_full or total, total)
    edges, below = [], [DECK - 5.0] * count
    for size in reversed(sizes):
        above = [b - LOAD_ROOM * s / full if full else b for b, s in zip(below, size)]
        edges.append((below, above))
        below = above
    return xs, edges[::-1]


def _loads(view, at):
    xs, edges = _bands(view, at)
    areas, arrows = [], []
    for below, above in edges:
        areas.append(Polygon((*thin(xs, above, 0.2), *thin(xs, below, 0.2)[::-1]), "force_band"))
        arrows += [
            Arrow((x, a), (x, b), "force", min(9.0, 0.7 * (b - a)))
            for x, a, b in zip(xs, above, below)
            if b - a > 4
        ]
    points = [
        Arrow((at.x(load.x), DECK - LOAD_ROOM - 10), (at.x(load.x), DECK - 2), "force_big", 16)
        for load in view.point_loads
    ]
    return areas + arrows + points


def _load_labels(view, at):
    labels, leaders = [], []
    xs, edges = _bands(view, at)
    blocks = []
    for load, (below, above) in zip(view.loads, edges):
        k = max((i for i in range(len(xs)) if below[i] - above[i] > 0.5), default=len(xs) - 1)
        y = (below[k] + above[k]) / 2
        blocks.append((_column_lines(load.label, 3), xs[k], y))
    rows = sum(len(lines) for lines, _, _ in blocks)
    if rows > 8:
        raise BadInput(
            f"the load labels need {rows} lines and 8 fit; shorten them, for example 'snow 300 lb/ft'"
        )
    top, bottom = 76.0, 76.0 + max(4, rows) * 22 + 10
    column = [
        Label(line, at.column, y + 6 + 21 * k - 10 * (len(lines) - 1), "force", NOTE_SIZE)
        for lines, _, y in blocks
        for k, line in enumerate(lines)
    ]
    column = spread(column, top=top, bottom=bottom, gap=2)
    k = 0
    for lines, x, y in blocks:
        leaders.append(Line(((x + 8, y), (at.column - 6, column[k].y - 6)), "leader"))
        k += len(lines)
    row = [Label(load.label, at.x(load.x), 90, "force", NOTE_SIZE, "middle") for load in view.point_loads]
    return leaders + column + _row_apart(row, at)


def _row_apart(row, at):
    # labels of point loads share one row above the arrows
    row = sorted(row, key=lambda label: label.x)
    need = sum(text_width(label.text, label.size) + 12 for label in row)
    if need > at.right - at.left:
        raise BadInput(
            "the labels of the point loads do not fit beside each other; shorten them or give fewer"
        )
    halves = [text_width(label.text, label.size) / 2 + 6 for label in row]
    xs, edge = [], at.left
    for label, half in zip(row, halves):
        xs.append(max(edge + half, label.x))
        edge = xs[-1] + half
    edge = at.right
    for k in reversed(range(len(xs))):
        xs[k] = min(xs[k], edge - halves[k])
        edge = xs[k] - halves[k]
    return [Label(label.text, x, label.y, label.role, label.size, "middle") for label, x in zip(row, xs)]


# --- sag and checks -------------------------------------------------------------------------


def _sag(view, at):
    items = []
    if view.previous:
        items.append(
            Curve([at.x(x) for x in view.previous.sag_x], [at.sag(y) for y in view.previous.sag_y], "ghost")
        )
    if view.sag_limit:
        y, reach = at.sag(view.sag_limit), 0.3 * (at.seat_right - at.seat_left)
        middle = (at.seat_left + at.seat_right) / 2
        items.append(Line(((middle - reach, y), (middle + reach, y)), "limit"))
    if len(view.sag_x):
        items.append(Curve([at.x(x) for x in view.sag_x], [at.sag(y) for y in view.sag_y], "moved"))
    return items


def _low_point(view, at):
    if not len(view.sag_x):
        return (at.beam_left + at.beam_right) / 2, at.beam_bottom
    k = max(range(len(view.sag_y)), key=lambda i: view.sag_y[i])
    return at.x(view.sag_x[k]), at.sag(view.sag_y[k])


def _sag_at(xs, ys, at, x):
    # height of a drawn deflected shape at a place of the picture
    place = (x - at.zero) / at.scale
    if not len(xs) or not xs[0] <= place <= xs[-1]:
        return at.beam_bottom
    k = min(max(bisect_right(xs, place), 1), len(xs) - 1)
    run = xs[k] - xs[k - 1]
    return at.sag(ys[k - 1] + (ys[k] - ys[k - 1]) * ((place - xs[k - 1]) / run if run else 0.0))


def _marks(view, at):
    """Symbols on the member, and their labels in the opening below: (labels, leaders, symbols)."""
    symbols, callouts = [], []
    for mark in sorted(view.marks, key=lambda mark: (not mark.governs, KINDS.index(mark.kind), mark.x)):
        lines, box = _SYMBOLS[mark.kind](view, at, mark)
        role = "governs_thin" if mark.governs else ("bearing" if mark.kind == "bearing" else "mark")
        symbols += [Line(points, role) for points in lines]
        if mark.governs:
            symbols.append(parts.ring(box))
        text = f"{mark.kind} {100 * mark.share:.0f} %"
        grown = 6 if mark.governs else 0
        callouts.append(
            Callout(
                f"governs: {text}" if mark.governs else text,
                (box[0] + box[2]) / 2,
                box[3] + grown,
                "governs" if mark.governs else "ink",
                20,
                mark.governs,
                "governs_plate" if mark.governs else "plate",
                _lean(mark, at),
            )
        )
    if view.sag_limit and view.sag_limit_text:
        middle, reach = (at.seat_left + at.seat_right) / 2, 0.3 * (at.seat_right - at.seat_left)
        callouts.append(
            Callout(view.sag_limit_text, middle + reach, at.sag(view.sag_limit), "quiet", NOTE_SIZE)
        )
    bounds = (at.left, at.beam_bottom + 6, at.right, at.dimension_y - 14)
    placed = place_callouts(callouts, bounds=bounds, avoid=_shape_boxes(view, at))
    labels = [label for label, _ in placed]
    return labels, [Line(leader, "leader") for _, leader in placed], symbols


def _lean(mark, at):
    # names of checks at the ends stand inside the opening; at mid-span bending left, sag right
    if mark.governs and mark.kind in ("bending", "sag", "stability"):
        return 0.0
    if mark.kind in ("shear", "bearing"):
        return 0.9 if at.x(mark.x) <= (at.beam_left + at.beam_right) / 2 else -0.9
    return {"bending": -0.85, "sag": 0.85}.get(mark.kind, 0.0)


def _shape_boxes(view, at):
    # what labels had better leave free: the deflected shape, the walls (unless the opening is
    # drawn too narrow to hold them) and what lies below the floor
    wall = 220 if at.seat_right - at.seat_left > 320 else 30
    boxes = [
        ((at.left, DECK, at.seat_left, at.floor), wall),
        ((at.seat_right, DECK, at.right, at.floor), wall),
        ((at.left, at.floor - 2, at.right, at.height), 200),
    ]
    shapes = [(view.sag_x, view.sag_y, 150)]
    if view.previous:
        shapes.append((view.previous.sag_x, view.previous.sag_y, 60))
    wide = (at.beam_right - at.beam_left) / 12
    for xs, ys, cost in shapes:
        heights = [_sag_at(xs, ys, at, at.beam_left + wide * k) for k in range(13)]
        for k, (one, other) in enumerate(zip(heights, heights[1:])):
            x = at.beam_left + wide * k
            boxes.append(((x, min(one, other) - 3, x + wide, max(one, other) + 4), cost))
    if view.sag_limit:
        middle, reach = (at.seat_left + at.seat_right) / 2, 0.3 * (at.seat_right - at.seat_left)
        y = at.sag(view.sag_limit)
        boxes.append(((middle - reach, y - 2, middle + reach, y + 2), 90))
    return boxes


def _bending(view, at, mark):
    # fibres pulled open at the bottom edge
    x, y, high = at.x(mark.x), at.beam_bottom, min(16.0, 0.45 * (at.beam_bottom - at.beam_top))
    lines = [
        ((x + d - 3, y), (x + d, y - high * s), (x + d + 3, y))
        for d, s in ((-18, 0.5), (-9, 0.8), (0, 1.0), (9, 0.8), (18, 0.5))
    ]
    return lines, (x - 22, y - high, x + 22, y)


def _shear(view, at, mark):
    # a slanted crack near the end, rising towards the middle of the beam
    x, top, bottom = at.x(mark.x), at.beam_top + 3, at.beam_bottom - 3
    middle = (at.beam_left + at.beam_right) / 2
    lean = min(14.0, (bottom - top) / 2) * (1 if x <= middle else -1)
    x = min(max(x, at.beam_left + 18), at.beam_right - 18)
    third = (bottom - top) / 3
    crack = (
        (x - lean, bottom),
        (x - 0.1 * lean, bottom - third),
        (x + 0.1 * lean, bottom - 2 * third),
        (x + lean, top),
    )
    return [crack], (x - abs(lean) - 2, top, x + abs(lean) + 2, bottom + 3)


def _bearing(view, at, mark):
    # crushed wood over the seat
    on_left = at.x(mark.x) <= (at.beam_left + at.beam_right) / 2
    a, b = (at.beam_left, at.seat_left) if on_left else (at.seat_right, at.beam_right)
    high = min(12.0, 0.5 * (at.beam_bottom - at.beam_top))
    top, bottom = at.beam_bottom - high, at.beam_bottom
    lines = [((a, top), (b, top)), ((a, bottom), (b, bottom))]
    lines += [line.points for line in hatch((a, top, b, bottom), 4.0)]
    return lines, (a, top, b, bottom)


def _sag_mark(view, at, mark):
    # how far the low point went, from the straight edge to the shape
    x, y = _low_point(view, at)
    return [
        ((x - 7, at.beam_bottom), (x + 7, at.beam_bottom)),
        ((x, at.beam_bottom), (x, y)),
        ((x - 7, y), (x + 7, y)),
    ], (x - 8, max(at.beam_bottom, y - 6), x + 8, y)


def _stability(view, at, mark):
    # the pressed edge swings sideways
    x, y = at.x(mark.x), at.beam_top + min(8.0, 0.25 * (at.beam_bottom - at.beam_top))
    wave = tuple((x - 40 + 8 * k, y + (0, 3.5, 0, -3.5)[k % 4]) for k in range(11))
    return [wave], (x - 42, y - 5, x + 42, y + 5)


_SYMBOLS = {
    "bending": _bending,
    "shear": _shear,
    "bearing": _bearing,
    "sag": _sag_mark,
    "stability": _stability,
}


# --- diagrams, section, words ---------------------------------------------------------------


def _diagram_rows(at):
    """Top of shear, top of moment, bottom of moment."""
    top, bottom = at.dimension_y + 22, at.height - 110
    return top, top + 0.55 * (bottom - top), bottom


def _diagrams(view, at):
    top, middle, bottom = _diagram_rows(at)
    return [
        *_diagram(
            at,
            "shear",
            view.shear_x,
            view.shear_y,
            view.shear_full,
            view.shear_text,
            (top + 2, middle - 12),
            top + 34,
        ),
        *_diagram(
            at,
            "moment",
            view.moment_x,
            view.moment_y,
            view.moment_full,
            view.moment_text,
            (middle + 4, bottom),
            middle + 44,
        ),
    ]


def _diagram(at, name, xs, ys, full, text, rows, text_y):
    if not len(xs):
        return []
    top, bottom = rows
    high, low = max(0.0, *map(float, ys)), min(0.0, *map(float, ys))
    if full:
        high, low = max(high, full), min(low, -full if low < 0 and name == "shear" else 0.0)
    # a diagram of nothing but rounding dust is a straight line
    reach = high - low if high - low > 1e-9 else 1.0
    scale = (bottom - top) / reach
    axis = top + high * scale
    places, heights = [at.x(float(x)) for x in xs], [axis - float(y) * scale for y in ys]
    k = max(range(len(ys)), key=lambda i: abs(ys[i]))
    items = [
        Curve(tuple(places), tuple(heights), name, axis),
        Line(((at.beam_left, axis), (at.beam_right, axis)), "axis"),
        Line(((places[k], heights[k]), (at.column - 8, heights[k])), "guide"),
        parts.dot(places[k], heights[k], f"{name}_dot"),
    ]
    return items + [
        Label(line, at.column, text_y + 20 * i, name, NOTE_SIZE)
        for i, line in enumerate(_column_lines(text, 2))
    ]


def _column_lines(text, most):
    """Lines of a text in the right-hand column."""
    lines = wrap(text, COLUMN - 12, NOTE_SIZE)
    if len(lines) > most or any(text_width(line, NOTE_SIZE) > COLUMN - 8 for line in lines):
        raise BadInput(
            f"the text {text!r} is too long for the column beside the drawing; shorten it, "
            "for example '3,680 lb-ft'"
        )
    return lines


def _section(view, at):
    top = 216.0 + 22 * max(0, _load_rows(view) - 5)
    name = [
        Label(line, at.column, top + 16 + 22 * k, "ink", 20, bold=True)
        for k, line in enumerate(_name_lines(view.section_name))
    ]
    bottom = min(at.height - 306, top + 190)
    top += 22 * (len(name) - 1)
    gap, left = 2.0, at.column + 6
    room = COLUMN - 48 - text_width(view.depth_text, NOTE_SIZE) - gap * (view.plies - 1)
    if room < 20:
        raise BadInput(f"the depth text {view.depth_text!r} is too long; shorten it, for example '9 1/4 in'")
    scale = min(
        (bottom - top - 62) / max(view.beam_depth, view.camera_depth), room / (view.plies * view.ply_width)
    )
    height = view.beam_depth * scale
    y0 = top + 30
    boxes = [
        (
            left + k * (view.ply_width * scale + gap),
            y0,
            left + k * (view.ply_width * scale + gap) + view.ply_width * scale,
            y0 + height,
        )
        for k in range(view.plies)
    ]
    right = boxes[-1][2]
    items = (
        [_steel_shape(boxes[0][0], y0, right, y0 + height)]
        if view.material_kind == "steel"
        else parts.wood_row(boxes, view.material_kind, rings=True)
    )
    return [
        *items,
        Dimension((right, y0), (right, y0 + height), 14, view.depth_text, beside=True),
        Dimension((left, y0 + height), (right, y0 + height), 12, "", beside=True),
        *[
            Label(line, left, y0 + height + 34, "ink", NOTE_SIZE)
            for line in _column_lines(view.width_text, 1)
        ],
        *name,
    ]


def _name_lines(name):
    lines = wrap(name, COLUMN - 12, 20, bold=True)
    if not 1 <= len(lines) <= 2 or any(text_width(line, 20, bold=True) > COLUMN - 8 for line in lines):
        raise BadInput(
            f"the section name must fill one or two short lines, got {name!r}; for example '3-ply LVL'"
        )
    return lines


def _load_rows(view):
    return sum(len(_column_lines(load.label, 3)) for load in view.loads)


def _steel_shape(left, top, right, bottom):
    flange, web = 0.1 * (bottom - top), 0.12 * (right - left)
    middle = (left + right) / 2
    return Polygon(
        (
            (left, top),
            (right, top),
            (right, top + flange),
            (middle + web, top + flange),
            (middle + web, bottom - flange),
            (right, bottom - flange),
            (right, bottom),
            (left, bottom),
            (left, bottom - flange),
            (middle - web, bottom - flange),
            (middle - web, top + flange),
            (left, top + flange),
        ),
        "steel",
    )


def _captions(view, at):
    governing = [mark for mark in view.marks if mark.governs and mark.sentence]
    scale = []
    if len(view.sag_x):
        drawn = f"Sag drawn {parts.factor_text(at.factor)}"
        scale.append(f"{drawn}; {view.sag_text}." if view.sag_text else f"{drawn}.")
    if view.load_full_text:
        scale.append(f"{view.load_full_text[0].upper()}{view.load_full_text[1:]}.")
    if view.previous:
        scale.append("Dashed: before the change.")
    if at.posts_cut:
        scale.append("Posts cut short.")
    texts = [governing[0].sentence] if governing else [""]
    texts.append(" ".join(scale))
    caption = " ".join(text for text in texts if text)
    return parts.caption_labels(texts, at.width, at.height, 4), caption, texts[1]


def _alt(view, scale):
    words = [
        f"{view.title}.",
        f"A beam {view.section_name}, {view.width_text} wide and {view.depth_text} deep, over "
        f"an opening {view.clear_width_text}.",
    ]
    words += [f"Load: {load.label}." for load in (*view.loads, *view.point_loads)]
    for mark in view.marks:
        governs = ", which governs" if mark.governs else ""
        words.append(
            f"{mark.kind.capitalize()} uses {100 * mark.share:.0f} %{governs}. {mark.sentence}".strip()
        )
    if view.sag_limit_text:
        words.append(f"{view.sag_limit_text[0].upper()}{view.sag_limit_text[1:]}.")
    if view.shear_text:
        words.append(f"Greatest shear {view.shear_text}.")
    if view.moment_text:
        words.append(f"Greatest moment {view.moment_text}.")
    return " ".join([*words, scale])
