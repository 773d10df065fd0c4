"""A beam over posts and past them: where the live load stands, how the beam bends, what each support gets.

Every text has a lane of its own. The scale hangs on the camera alone, so nothing jumps while a slider moves.
"""

from dataclasses import dataclass, replace

from structlib.ground.refusals import BadInput, check_choice, check_number
from structlib.pictures.drawings import parts
from structlib.pictures.labels import Label, text_width, wrap
from structlib.pictures.scene import Arrow, Curve, Dimension, Line, Scene, rectangle
from structlib.pictures.style import NOTE_SIZE

BELOW = ("post", "wall", "gone")
POST_WIDTH = 5.5 * 25.4  # mm
WALL_WIDTH = 8 * 25.4  # mm


@dataclass(frozen=True)
class PostBelow:
    """What holds the beam at one place, or held it once.

    ``x`` [mm].
    """

    x: float
    name: str
    kind: str = "post"
    most_text: str = ""
    least_text: str = ""
    lifts: bool = False


@dataclass(frozen=True)
class PastPostView:
    """All that the picture shows; texts are ready to print.

    ``length``, ``depth``, ``x``, ``sag``, ``camera_length`` [mm]; ``measures``, ``stretches`` [mm, mm, -];
    ``moment``, ``most``, ``least``, ``moment_full`` [N*mm]; ``previous`` [mm, mm, N*mm].
    """

    title: str
    length: float
    depth: float
    material_kind: str
    supports: tuple
    measures: tuple
    stretches: tuple
    load_text: str
    tip_text: str
    x: tuple
    sag: tuple
    sag_text: str
    moment: tuple
    most: tuple
    least: tuple
    moment_text: str
    moment_full: float
    moment_full_text: str
    camera_length: float
    exaggeration: float = 50.0
    previous: tuple | None = None
    note: str = ""


@dataclass(frozen=True)
class _Places:
    """Where things stand in one frame, in viewBox units."""

    width: float  # of the longest beam
    load: tuple  # baseline of the load line, most lines
    tip: float  # baseline of the text of the post on the tip
    live: tuple  # top and bottom of the live band
    dead: tuple
    beam: float  # top of the beam
    axis: float  # where the deflected shape starts from
    room: tuple  # how far it may go down and up
    ground: float
    rows: tuple  # baselines of most and least
    measure: float  # height of the dimension line; 0 for none
    moment: tuple  # baseline of its text, most lines
    diagram: tuple  # middle and half height
    size: float
    captions: int


_PLACES = {
    "page": _Places(
        640,
        (88, 1),
        112,
        (120, 140),
        (142, 152),
        154,
        242,
        (42, 26),
        296,
        (346, 370),
        388,
        (446, 1),
        (540, 84),
        18,
        3,
    ),
    "wide": _Places(
        560,
        (84, 1),
        84,
        (90, 100),
        (102, 107),
        108,
        174,
        (20, 12),
        198,
        (232, 252),
        0,
        (274, 1),
        (314, 32),
        18,
        2,
    ),
    "tall": _Places(
        640,
        (148, 2),
        212,
        (224, 252),
        (255, 271),
        274,
        404,
        (76, 50),
        500,
        (566, 600),
        624,
        (718, 2),
        (930, 150),
        22,
        4,
    ),
}


def draw_past_post(view, frame="page"):
    """Draw the beam, its loads, its deflected shape, what each support gets and its moments."""
    check_choice("frame", frame, _PLACES)
    _check(view)
    places, (width, height) = _PLACES[frame], parts.FRAMES[frame]
    scale = places.width / view.camera_length
    left = (width - places.width) / 2  # the left end never moves

    def at(x):
        return left + x * scale

    factor = _sag_factor(view, scale, places)
    bottom = places.beam + max(2.0, view.depth * scale)
    items = [
        parts.still_group("paper", [parts.paper(width, height)]),
        parts.still_group("title", parts.title_labels(view.title, frame)),
        *_loads(view, places, at, width),
        *parts.wood((at(0.0), places.beam, at(view.length), bottom), view.material_kind),
        *_below(view, places, at, scale, bottom, width),
        *_deflected(view, places, at, scale, factor),
        *_reactions(view, places, at),
        *_measures(view, places, at),
        *_moments(view, places, at, width),
        *parts.caption_labels(_captions(view, factor, frame), frame, places.captions),
    ]
    caption = " ".join(_captions(view, factor, frame))
    return Scene(width, height, tuple(items), view.title, caption, _alt(view, factor))


def _check(view):
    parts.check_length("length of the beam", view.length)
    parts.check_length("depth", view.depth, high=2000.0)
    parts.check_length("camera length", view.camera_length)
    check_choice("material", view.material_kind, parts.MATERIALS)
    check_number("full moment", view.moment_full, low=0, high=1e15, low_allowed=False)
    if view.length > view.camera_length * (1 + 1e-9):
        raise BadInput("the beam is longer than the picture has room for; give a longer camera_length")
    for name, values in (
        ("sag", view.sag),
        ("moment", view.moment),
        ("most", view.most),
        ("least", view.least),
    ):
        parts.check_pairs(name, view.x, values)
    if not view.supports:
        raise BadInput("a beam needs at least one support to be drawn")
    for support in view.supports:
        check_choice("what holds the beam", support.kind, BELOW)


def _sag_factor(view, scale, places):
    down, up = places.room
    shapes = [view.sag] + ([view.previous[1]] if view.previous else [])
    drop = max(0.0, *(max(shape) for shape in shapes)) * scale
    rise = max(0.0, *(-min(shape) for shape in shapes)) * scale
    # one room for both ways: the rise is counted larger where it has less room
    return parts.fitting_factor(view.exaggeration, max(drop, rise * down / up), down)


def _loads(view, places, at, width):
    size, items = places.size, []
    own_line = places.tip != places.load[0]
    text = view.load_text if own_line or not view.tip_text else f"{view.load_text}; {view.tip_text}"
    rows = wrap(text, width - 2 * parts.MARGIN, size)
    items += [
        Label(row, parts.MARGIN, places.load[0] + (size + 5) * k, "force", size)
        for k, row in enumerate(rows[: places.load[1]])
    ]
    top, base = places.live
    for start, end, loaded in view.stretches:
        box = (at(start) + 1.5, top, at(end) - 1.5, base)
        if not loaded:
            items.append(Line(((box[0], top), (box[2], top), (box[2], base), (box[0], base), (box[0], top)), "guide"))
            continue
        items.append(rectangle(*box, "force_band"))
        count = max(1, int((box[2] - box[0]) // 46))
        items += [
            Arrow(
                (box[0] + (box[2] - box[0]) * (k + 0.5) / count, top + 1),
                (box[0] + (box[2] - box[0]) * (k + 0.5) / count, base - 1),
                "force",
                7.0,
            )
            for k in range(count)
        ]
    items.append(rectangle(at(0.0), places.dead[0], at(view.length), places.dead[1], "wall"))
    items.append(Line(((at(0.0), places.dead[0]), (at(view.length), places.dead[0])), "quiet"))
    if view.tip_text:
        x, half = at(view.length), 6.0
        text = text_width(view.tip_text, size)
        middle = min(x, width - parts.MARGIN - text / 2)
        items.append(rectangle(x - 2 * half, places.live[0] - 2, x, places.beam, "wood_cut"))
        items.append(Arrow((x - half, places.live[0] + 2), (x - half, places.beam - 1), "force", 10.0))
        if own_line:
            items.append(Label(view.tip_text, middle, places.tip, "force", size, "middle"))
    return items


def _below(view, places, at, scale, bottom, width):
    items = parts.ground_line(parts.MARGIN, width - parts.MARGIN, places.ground, 7.0)
    for support in view.supports:
        x = at(support.x)
        half = max(5.0, (WALL_WIDTH if support.kind == "wall" else POST_WIDTH) * scale / 2)
        box = (x - half, bottom, x + half, places.ground)
        if support.kind == "gone":
            items.append(
                Line(
                    (
                        (box[0], bottom),
                        (box[2], bottom),
                        (box[2], places.ground),
                        (box[0], places.ground),
                        (box[0], bottom),
                    ),
                    "reference",
                )
            )
        elif support.kind == "wall":
            items.append(rectangle(*box, "masonry"))
            items += [Line(((box[0], y), (box[2], y)), "quiet") for y in _between(bottom, places.ground, 14.0)]
        else:
            items.append(rectangle(*box, "wood_cut"))
        items.append(Label(support.name, box[2] + 4, places.ground - 6, "ink", NOTE_SIZE, bold=True))
    return items


def _between(top, base, step):
    return [top + step * k for k in range(1, int((base - top - 1) // step) + 1)]


def _deflected(view, places, at, scale, factor):
    def shape(x, y, role):
        return Curve(
            tuple(map(at, map(float, x))),
            tuple([places.axis + value * scale * factor for value in map(float, y)]),
            role,
        )

    items = [Line(((at(0.0), places.axis), (at(view.length), places.axis)), "guide")]
    if view.previous:
        items.append(shape(view.previous[0], view.previous[1], "ghost"))
    items.append(shape(view.x, view.sag, "moved"))
    items += [parts.dot(at(support.x), places.axis, "moved_dot") for support in view.supports if support.kind != "gone"]
    return items


def _reactions(view, places, at):
    items, base = [], places.rows[0] - places.size
    top = places.ground + 9
    size = places.size if len(view.supports) < 4 else NOTE_SIZE  # four texts need the row for themselves
    pairs = []
    for support in view.supports:
        if support.kind == "gone":
            continue
        x = at(support.x)
        shift = 9.0 if support.lifts else 0.0
        items.append(Arrow((x - shift, base - 2), (x - shift, top), "force_big", 11.0))
        if support.lifts:
            items.append(Arrow((x + shift, top), (x + shift, base - 2), "governs", 11.0))
        role = "governs" if support.lifts else "quiet"
        pairs.append(
            (
                Label(f"{support.name} {support.most_text}", x, places.rows[0], "force", size, "middle"),
                Label(support.least_text, x, places.rows[1], role, size, "middle", bold=support.lifts),
            )
        )
    # both lines of a support stay below each other: the wider one is pushed aside, the other follows
    wider = [max(pair, key=lambda label: text_width(label.text, size, label.bold)) for pair in pairs]
    for pair, placed in zip(pairs, parts.row_apart(wider, 8.0, 712.0)):
        items += [replace(label, x=placed.x) for label in pair if label.text]
    return items


def _measures(view, places, at):
    if not places.measure:
        return []
    return [
        Dimension((at(start), places.measure), (at(end), places.measure), 8.0, text, places.size, beside=True)
        for start, end, text in view.measures
    ]


def _moments(view, places, at, width):
    middle, half = places.diagram
    size = places.size

    def up(values):
        shares = [float(value) / view.moment_full for value in values]
        return tuple([middle - half * (-1.0 if share < -1.0 else 1.0 if share > 1.0 else share) for share in shares])

    xs, most, least = tuple(map(at, map(float, view.x))), up(view.most), up(view.least)
    rows = wrap(view.moment_text, width - 2 * parts.MARGIN, size)
    items = [
        Label(row, parts.MARGIN, places.moment[0] + (size + 5) * k, "moment", size)
        for k, row in enumerate(rows[: places.moment[1]])
    ]
    items.append(Curve(xs, up(view.moment), "moment", baseline=middle))
    items += [Curve(xs, values, "quiet") for values in (most, least)]
    if view.previous:
        items.append(Curve(tuple(map(at, map(float, view.previous[0]))), up(view.previous[2]), "ghost"))
    items.append(Line(((at(0.0) - 6, middle), (at(view.length) + 6, middle)), "axis"))
    peaks = [
        (view.most, most, parts.peak_index([max(value, 0.0) for value in map(float, view.most)])),
        (view.least, least, parts.peak_index([min(value, 0.0) for value in map(float, view.least)])),
    ]
    for values, heights, k in peaks:
        if abs(values[k]) > 0.01 * view.moment_full:
            items.append(parts.dot(xs[k], heights[k], "moment_dot"))
    return items


def _captions(view, factor, frame):
    first = f"Sag {parts.factor_text(factor)}, at most {view.sag_text}. Moment full height {view.moment_full_text}."
    ghost = " Dashed: before." if view.previous else ""
    if frame == "wide":  # no room for a line that is not full
        return [f"{first} Thin: every arrangement.{ghost} {view.note}".strip()]
    return [first, f"Thin lines: the most over every arrangement.{ghost} {view.note}".strip()]


def _alt(view, factor):
    words = [view.title + ".", f"A beam on {sum(s.kind != 'gone' for s in view.supports)} supports."]
    words += [f"{text} from {_name_at(view, start)} to {_name_at(view, end)}." for start, end, text in view.measures]
    words.append(f"Loads: {view.load_text}.")
    if view.tip_text:
        words.append(f"On its tip stands a {view.tip_text}.")
    for support in view.supports:
        if support.kind == "gone":
            words.append(f"The post {support.name} in the middle is taken out.")
        else:
            least = f", {support.least_text}" if support.least_text else ""
            words.append(
                f"Support {support.name}{' (foundation wall)' if support.kind == 'wall' else ''}: "
                f"{support.most_text} at most{least}."
            )
    words.append(f"{view.moment_text}. It bends {view.sag_text} at most, drawn {parts.factor_text(factor)}.")
    words.append(view.note)
    return " ".join(words).strip()


def _name_at(view, x):
    return next((support.name for support in view.supports if abs(support.x - x) < 1.0), "the tip")
