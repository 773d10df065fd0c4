"""A beam over an opening: what presses on it, how it moves, and where it comes nearest its limit.

Every text has its own place. Loads, limit, section and peaks stand in a column on the right, the
checks in a strip below the floor; only thin leaders follow what moves while a slider is dragged.
"""

from dataclasses import dataclass

from structlib.ground.refusals import BadInput, check_choice
from structlib.pictures.drawings import parts
from structlib.pictures.drawings.opening_marks import leaders, strip, symbols
from structlib.pictures.drawings.opening_view import (
    LoadBand,
    Mark,
    OpeningView,
    PointLoad,
    PreviousBeam,
    check_view,
    profile,
)
from structlib.pictures.labels import Label, spread, text_width, wrap
from structlib.pictures.scene import Arrow, Curve, Dimension, Line, Polygon, Scene, hatch, rectangle
from structlib.pictures.style import NOTE_SIZE

__all__ = ["LoadBand", "Mark", "OpeningView", "PointLoad", "PreviousBeam", "draw_opening"]

COLUMN = 176.0
WALL = 30.0
BEAM_ROOM = 84.0
# beam and drawn sag share this height, the sag alone never takes more than SAG_ROOM
BEAM_AND_SAG = 142.0
SAG_ROOM = 100.0


@dataclass(frozen=True)
class _Rows:
    """Heights in one frame, from the top edge; None for what the frame has no room for."""

    deck: float  # underside of the loads
    load_room: float
    joist: float  # greatest height of the joists
    floor: float  # lowest place of the floor
    strip: tuple  # top of the readings; baselines of name, share and "governs" below it
    load_names: tuple
    factor: float
    limit: float
    name: float
    captions: int
    section: tuple | None = None
    dimension: float | None = None
    shear: tuple | None = None
    moment: tuple | None = None


_ROWS = {
    "page": _Rows(
        deck=150,
        load_room=56,
        joist=38,
        floor=336,
        strip=(346, 17, 40, 60),
        load_names=(70, 164),
        factor=184,
        limit=240,
        name=312,
        section=(346, 416),
        dimension=454,
        shear=(470, 530),
        moment=(542, 614),
        captions=4,
    ),
    "wide": _Rows(
        deck=118,
        load_room=40,
        joist=22,
        floor=284,
        strip=(288, 15, 37, 57),
        load_names=(68, 158),
        factor=176,
        limit=208,
        name=258,
        captions=2,
    ),
    "tall": _Rows(
        deck=226,
        load_room=86,
        joist=38,
        floor=504,
        strip=(516, 24, 56, 82),
        load_names=(126, 236),
        factor=262,
        limit=330,
        name=458,
        section=(490, 590),
        dimension=640,
        shear=(662, 830),
        moment=(850, 1090),
        captions=5,
    ),
}


class _Frame:
    """Where everything goes: the scale and the heights of one opening drawing."""

    def __init__(self, view, frame):
        self.frame, self.rows = frame, _ROWS[frame]
        self.width, self.height = parts.FRAMES[frame]
        self.column = self.width - COLUMN
        self.left, self.right = parts.MARGIN, self.column - 18
        total = view.left_seat + view.clear_width + view.right_seat
        self.scale = min(
            (self.right - self.left - 2 * WALL) / max(total, view.camera_width),
            BEAM_ROOM / max(view.beam_depth, view.camera_depth),
        )
        self.middle = (self.left + self.right) / 2
        self.beam_left = self.middle - total * self.scale / 2
        self.beam_right = self.middle + total * self.scale / 2
        self.seat_left = self.beam_left + view.left_seat * self.scale
        self.seat_right = self.beam_right - view.right_seat * self.scale
        start = view.left_seat / 2 if view.x_start is None else view.x_start
        self.zero = self.beam_left + start * self.scale
        self.deck, self.load_room = self.rows.deck, self.rows.load_room
        if view.point_loads:
            # their names stand between the title and the loads
            self.load_room = min(self.load_room, self.deck - 5 - parts.TITLE_ROOM[frame] - 20)
        self.beam_top = self.deck + (0.0 if view.flush else min(self.rows.joist, view.joist_depth * self.scale))
        self.beam_bottom = self.beam_top + view.beam_depth * self.scale
        whole = self.beam_bottom + view.opening_height * self.scale
        self.floor = min(self.rows.floor, whole)
        self.posts_cut = self.floor < whole - 0.5
        # the state before the change has no say here: going back and forth gives the same picture
        largest = max([view.sag_limit, *map(abs, _floats(view.sag_y))]) * self.scale
        self.sag_room = min(SAG_ROOM, BEAM_AND_SAG - view.beam_depth * self.scale)
        self.factor = parts.fitting_factor(view.exaggeration, largest, self.sag_room)
        self.limit_y = self.sag(view.sag_limit)
        self.limit_end = self.middle_of_opening + 0.3 * (self.seat_right - self.seat_left)

    @property
    def middle_of_opening(self):
        return (self.seat_left + self.seat_right) / 2

    def x(self, place):
        return self.zero + place * self.scale

    def xs(self, places):
        zero, scale = self.zero, self.scale
        return [zero + place * scale for place in _floats(places)]

    def sag(self, y):
        return self.beam_bottom + y * self.scale * self.factor

    def shape(self, xs, ys):
        step = self.scale * self.factor
        bottom = self.beam_bottom
        return self.xs(xs), [bottom + y * step for y in _floats(ys)]


def _floats(values):
    return list(map(float, values))


def draw_opening(view, frame="page"):
    r"""Draw a beam over an opening, to scale, with its loads, its sag and its checks.

    The wide frame has no room for the diagrams and the cut section; their texts stay.

    Examples
    --------
    >>> view = OpeningView(title="The beam carries the floor", clear_width=2438.4, left_seat=76.2,
    ...                    right_seat=76.2, beam_depth=235.0, opening_height=2057.4, plies=2,
    ...                    ply_width=38.1, material_kind="sawn", section_name="2-2x10",
    ...                    width_text="3 in", depth_text="9 1/4 in", clear_width_text="8'-0\"")
    >>> draw_opening(view).width
    720.0
    """
    check_choice("frame", frame, parts.FRAMES)
    check_view(view)
    at = _Frame(view, frame)
    captions, caption, scale = _captions(view, at)
    load_items, load_labels = _loads(view, at)
    drawn_marks, low = symbols(view, at)
    items = (
        parts.still_group("paper", [parts.paper(at.width, at.height), *_fixed_names(at)]),
        *_wall(view, at),
        *leaders(drawn_marks, at),
        *_limit(view, at),
        *_beam(view, at),
        *load_items,
        *_sag(view, at),
        *low,
        *_diagrams(view, at),
        *_section(view, at),
        *strip(view, at),
        *load_labels,
        *captions,
        *parts.title_labels(view.title, frame),
    )
    return Scene(at.width, at.height, items, view.title, caption, _alt(view, scale))


# --- the wall and the beam ------------------------------------------------------------------


def _wall(view, at):
    left, right = (at.left, at.deck, at.beam_left, at.floor), (at.beam_right, at.deck, at.right, at.floor)
    items = [rectangle(*left, "wall"), rectangle(*right, "wall"), *hatch(left, 22), *hatch(right, 22)]
    items += parts.ground_line(at.left, at.right, at.floor)
    jack = view.jack_thickness * at.scale
    studs = [
        (at.beam_left - jack, at.deck, at.beam_left, at.floor),
        (at.beam_right, at.deck, at.beam_right + jack, at.floor),
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
    left, top, right, bottom = at.beam_left, at.beam_top, at.beam_right, at.beam_bottom
    items = parts.wood((left, top, right, bottom), view.material_kind)
    if view.material_kind == "steel":
        flange = max(2.0, 0.06 * (bottom - top))
        items += [Line(((left, y), (right, y)), "steel_line") for y in (top + flange, bottom - flange)]
    if view.joist_depth:
        items += _joists(view, at)
    items.append(Line(((at.left, at.deck), (at.right, at.deck)), "ground"))
    if view.previous:
        before = min(top + view.previous.beam_depth * at.scale, at.floor)
        if abs(before - bottom) > 0.5:
            corners = ((left, top), (right, top), (right, before), (left, before), (left, top))
            items.append(Line(corners, "ghost"))
    return items


def _joists(view, at):
    spacing = max(view.joist_spacing * at.scale, 12.0)
    count = int((at.beam_right - at.beam_left) / spacing)
    wide = max(3.0, 38.1 * at.scale)
    first = (at.beam_left + at.beam_right) / 2 - spacing * (count - 1) / 2
    middles = [first + spacing * k for k in range(count)]
    if view.flush:
        # hangers on the face of the beam, open at the top
        top, low = at.beam_top, at.beam_top + min(view.joist_depth * at.scale, at.beam_bottom - at.beam_top - 2)
        return [
            Line(((x - wide, top), (x - wide, low), (x + wide, low), (x + wide, top)), "steel_line") for x in middles
        ]
    return [rectangle(x - wide / 2, at.deck, x + wide / 2, at.beam_top, "wood_cut") for x in middles]


# --- loads ----------------------------------------------------------------------------------


def _value(pairs, x):
    if x < pairs[0][0] or x > pairs[-1][0]:
        return 0.0
    for (x0, w0), (x1, w1) in zip(pairs, pairs[1:]):
        if x0 <= x <= x1 and x1 > x0:
            return w0 + (w1 - w0) * (x - x0) / (x1 - x0)
    return pairs[-1][1]


def _bands(view, at):
    """Heights of the stacked bands at the arrow places: (xs, per band lower and upper edges)."""
    count = 24 // max(1, len(view.loads)) if len(view.loads) > 1 else 23
    start, end = at.beam_left + 5, at.beam_right - 5
    xs = [start + (end - start) * k / (count - 1) for k in range(count)]
    places = [(x - at.zero) / at.scale for x in xs]
    sizes = []
    for load in view.loads:
        if isinstance(load.intensity, (int, float)):
            sizes.append([load.intensity] * count)
        else:
            pairs = profile(load, 0.0, 0.0)
            sizes.append([_value(pairs, place) for place in places])
    total = max(map(sum, zip(*sizes)), default=0.0)
    full = max(view.load_full or total, total)
    edges, below = [], [at.deck - 5.0] * count
    for size in reversed(sizes):
        above = [b - at.load_room * s / full if full else b for b, s in zip(below, size)]
        edges.append((below, above))
        below = above
    return xs, edges[::-1]


def _loads(view, at):
    """Bands with their arrows, and their labels in the column."""
    xs, edges = _bands(view, at)
    areas, arrows = [], []
    for below, above in edges:
        areas.append(Polygon((*zip(xs, above), *zip(xs[::-1], below[::-1])), "force_band"))
        arrows += [
            Arrow((x, a), (x, b), "force", min(9.0, 0.7 * (b - a))) for x, a, b in zip(xs, above, below) if b - a > 4
        ]
    first = at.deck - at.load_room - 4
    points = [Arrow((at.x(load.x), first), (at.x(load.x), at.deck - 2), "force_big", 16) for load in view.point_loads]
    return areas + arrows + points, _load_labels(view, at, xs, edges)


def _load_labels(view, at, xs, edges):
    blocks = []
    for load, (below, above) in zip(view.loads, edges):
        k = max((i for i in range(len(xs)) if below[i] - above[i] > 0.5), default=len(xs) - 1)
        blocks.append((_column_lines(load.label, 3), xs[k], (below[k] + above[k]) / 2))
    top, bottom = at.rows.load_names
    column = [
        Label(line, at.column, y + 6 + 21 * k - 10 * (len(lines) - 1), "force", NOTE_SIZE)
        for lines, _, y in blocks
        for k, line in enumerate(lines)
    ]
    if len(column) > 4 + (at.frame == "tall"):
        raise BadInput(
            f"the load labels need {len(column)} lines and 4 fit; shorten them, for example 'snow 300 lb/ft'"
        )
    column = spread(column, top=top, bottom=bottom, gap=2)
    lines, k = [], 0
    for texts, x, y in blocks:
        lines.append(Line(((x + 8, y), (at.column - 6, column[k].y - 6)), "leader"))
        k += len(texts)
    row = parts.TITLE_ROOM[at.frame] + 14
    points = [Label(load.label, at.x(load.x), row, "force", NOTE_SIZE, "middle") for load in view.point_loads]
    return lines + column + parts.row_apart(points, at.left, at.right)


# --- sag and its limit ----------------------------------------------------------------------


def _sag(view, at):
    items = []
    if view.previous:
        # at the factor of the new shape; where the old one does not fit for that, it is cut off
        floor = at.beam_bottom + at.sag_room
        pieces, piece = [], []
        for x, y in zip(*at.shape(view.previous.sag_x, view.previous.sag_y)):
            if y <= floor and at.left <= x <= at.right:
                piece.append((x, y))
            elif piece:
                pieces.append(piece)
                piece = []
        items += [Curve(*zip(*piece), "ghost") for piece in (*pieces, piece) if len(piece) > 1]
    if len(view.sag_x):
        items.append(Curve(*at.shape(view.sag_x, view.sag_y), "moved"))
    return items


def _limit(view, at):
    items = []
    if len(view.sag_x):
        text = f"sag × {at.factor:g}"
        items.append(Label(text, at.column, at.rows.factor, "moved", 20, bold=True))
    if not view.sag_limit:
        return items
    y, start = at.limit_y, 2 * at.middle_of_opening - at.limit_end
    items.append(Line(((start, y), (at.limit_end, y)), "limit"))
    if view.sag_limit_text:
        first = at.rows.limit
        items.append(Line(((at.limit_end + 4, y), (at.column - 6, first - 6)), "guide"))
        items += [
            Label(line, at.column, first + 21 * k, "quiet", NOTE_SIZE)
            for k, line in enumerate(_column_lines(view.sag_limit_text, 2))
        ]
    return items


# --- diagrams, section, words ---------------------------------------------------------------


def _fixed_names(at):
    if at.rows.shear is None:
        return []
    return [
        Label("shear", at.column, at.rows.shear[0] + 16, "shear", 20, bold=True),
        Label("moment", at.column, at.rows.moment[0] + 16, "moment", 20, bold=True),
    ]


def _diagrams(view, at):
    if at.rows.shear is None:
        return []
    y = at.rows.dimension
    (text,) = _column_lines(view.clear_width_text, 1)
    return [
        Dimension((at.seat_left, y - 8), (at.seat_right, y - 8), 8, ""),
        Line(((at.seat_right + 8, y), (at.column - 8, y)), "guide"),
        Label(text, at.column, y + 6, "ink", NOTE_SIZE),
        *_diagram(at, "shear", view.shear_x, view.shear_y, view.shear_full, view.shear_text),
        *_diagram(at, "moment", view.moment_x, view.moment_y, view.moment_full, view.moment_text),
    ]


def _diagram(at, name, xs, ys, full, text):
    if not len(xs):
        return []
    top, bottom = getattr(at.rows, name)
    ys = _floats(ys)
    high, low = max(0.0, *ys), min(0.0, *ys)
    if full:
        high, low = max(high, full), min(low, -full if low < 0 and name == "shear" else 0.0)
    # a diagram of nothing but rounding dust is a straight line
    reach = high - low if high - low > 1e-9 else 1.0
    scale = (bottom - top) / reach
    axis = top + high * scale
    places, heights = at.xs(xs), [axis - y * scale for y in ys]
    k = parts.peak_index(ys)
    return [
        Curve(places, heights, name, axis),
        Line(((at.beam_left, axis), (at.beam_right, axis)), "axis"),
        Line(((places[k] + 8, heights[k]), (at.column - 8, top + 10)), "guide"),
        parts.dot(places[k], heights[k], f"{name}_dot"),
        *[Label(line, at.column, top + 38 + 20 * i, name, NOTE_SIZE) for i, line in enumerate(_column_lines(text, 2))],
    ]


def _column_lines(text, most):
    """Lines of a text in the right-hand column."""
    lines = wrap(text, COLUMN - 12, NOTE_SIZE)
    if len(lines) > most or any(text_width(line, NOTE_SIZE) > COLUMN - 8 for line in lines):
        raise BadInput(
            f"the text {text!r} is too long for the column beside the drawing; shorten it, for example '3,680 lb-ft'"
        )
    return lines


def _section(view, at):
    """The section in the column: its name, and its cut to scale where the frame has room."""
    names = wrap(view.section_name, COLUMN - 12, 20, bold=True)
    if not 1 <= len(names) <= 2 or any(text_width(line, 20, bold=True) > COLUMN - 8 for line in names):
        raise BadInput(
            f"the section name must fill one or two short lines, got {view.section_name!r}; for example '3-ply LVL'"
        )
    first = at.rows.name + (22 * (2 - len(names)) if at.rows.section else 0)
    labels = [Label(line, at.column, first + 22 * k, "ink", 20, bold=True) for k, line in enumerate(names)]
    if at.rows.section is None:
        texts = [f"{view.depth_text} deep", f"{view.width_text} wide", view.clear_width_text]
        under = first + 22 * (len(names) - 1)
        return labels + [
            Label(*_column_lines(text, 1), at.column, under + 21 * (k + 1), "ink", NOTE_SIZE)
            for k, text in enumerate(texts)
        ]
    return _cut(view, at) + labels


def _cut(view, at):
    top, bottom = at.rows.section
    gap, left = 2.0, at.column + 6
    room = COLUMN - 48 - text_width(view.depth_text, NOTE_SIZE) - gap * (view.plies - 1)
    if room < 20:
        raise BadInput(f"the depth text {view.depth_text!r} is too long; shorten it, for example '9 1/4 in'")
    scale = min((bottom - top) / max(view.beam_depth, view.camera_depth), room / (view.plies * view.ply_width))
    low, wide = top + view.beam_depth * scale, view.ply_width * scale
    boxes = [(left + k * (wide + gap), top, left + k * (wide + gap) + wide, low) for k in range(view.plies)]
    right = boxes[-1][2]
    items = (
        [_steel_shape(left, top, right, low)]
        if view.material_kind == "steel"
        else parts.wood_row(boxes, view.material_kind, rings=True)
    )
    (width_text,) = _column_lines(view.width_text, 1)
    return [
        *items,
        Dimension((right, top), (right, low), 14, "", beside=True),
        # a very shallow section keeps its texts off the name above and off each other
        Label(view.depth_text, right + 22, max((top + low) / 2 + 5, top + 10), "ink", NOTE_SIZE),
        Label(width_text, left, max(low + 20, top + 31), "ink", NOTE_SIZE),
    ]


def _steel_shape(left, top, right, bottom):
    flange, web = 0.1 * (bottom - top), 0.12 * (right - left)
    middle = (left + right) / 2
    half = (
        (middle, top),
        (right, top),
        (right, top + flange),
        (middle + web, top + flange),
        (middle + web, bottom - flange),
        (right, bottom - flange),
        (right, bottom),
        (middle, bottom),
    )
    return Polygon((*half, *[(2 * middle - x, y) for x, y in half[-2:0:-1]]), "steel")


def _captions(view, at):
    sentence = next((mark.sentence for mark in view.marks if mark.governs), "")
    scale = []
    if len(view.sag_x):
        drawn = f"Sag drawn {parts.factor_text(at.factor)}"
        scale.append(f"{drawn}; {view.sag_text}." if view.sag_text else f"{drawn}.")
    if view.previous:
        scale.append("Dashed: before the change.")
    if at.posts_cut:
        scale.append("Posts cut short.")
    full = f"{view.load_full_text[0].upper()}{view.load_full_text[1:]}." if view.load_full_text else ""
    whole = " ".join([*scale, full] if full else scale)
    # the title of a film says what governs; its caption keeps to the scale
    texts = [" ".join(scale)] if at.frame == "wide" else [sentence, whole]
    caption = " ".join(text for text in (sentence, whole) if text)
    return parts.caption_labels(texts, at.frame, at.rows.captions), caption, whole


def _alt(view, scale):
    words = [
        f"{view.title}.",
        f"A beam {view.section_name}, {view.width_text} wide and {view.depth_text} deep, over "
        f"an opening {view.clear_width_text}.",
    ]
    words += [f"Load: {load.label}." for load in (*view.loads, *view.point_loads)]
    for mark in view.marks:
        governs = ", which governs" if mark.governs else ""
        words.append(f"{mark.kind.capitalize()} uses {100 * mark.share:.0f} %{governs}. {mark.sentence}".strip())
    if view.sag_limit_text:
        words.append(f"{view.sag_limit_text[0].upper()}{view.sag_limit_text[1:]}.")
    if view.shear_text:
        words.append(f"Greatest shear {view.shear_text}.")
    if view.moment_text:
        words.append(f"Greatest moment {view.moment_text}.")
    return " ".join([*words, scale])
