"""A post with the beam end above it and the pad below: its two faces to scale, and what it carries by height.

Every text has its own place. The scale and the axes stay while a slider moves; only the post does.
"""

from dataclasses import dataclass
from functools import lru_cache
from math import pi, sin

import numpy

from structlib.ground.refusals import check_choice, check_number
from structlib.pictures.drawings import parts
from structlib.pictures.labels import Label
from structlib.pictures.scene import Arrow, Curve, Dimension, Line, Polygon, Scene, hatch, rectangle

PLACES = ("top", "middle", "plate", "soil")
HELD = ("none", "middle", "all")
BOWS = ("depth", "width", "none")


@dataclass(frozen=True)
class PostMark:
    """One check, written beside the place where it comes nearest its limit."""

    place: str
    text: str
    governs: bool = False


@dataclass(frozen=True)
class PostCurve:
    """What a post carries against its height.

    ``heights`` [mm]; ``loads`` [N].
    """

    name: str
    heights: tuple
    loads: tuple
    current: bool = False


@dataclass(frozen=True)
class PreviousPost:
    """The post before the last change.

    ``width``, ``height`` [mm]; ``load`` [N].
    """

    width: float
    height: float
    load: float


@dataclass(frozen=True)
class PostView:
    """All that the drawing shows; texts are ready to print.

    ``ply_width``, ``post_depth``, ``height``, ``beam_ply_width``, ``beam_depth``, ``plate_thickness``, ``pad_side``,
    ``pad_thickness``, ``eccentricity``, ``greatest_height`` [mm]; ``load``, ``greatest_load`` [N]; ``load_ticks`` [N,
    -]; ``height_ticks`` [mm, -].
    """

    title: str
    plies: int
    ply_width: float
    post_depth: float
    height: float
    height_text: str
    beam_plies: int
    beam_ply_width: float
    beam_depth: float
    ends: int
    plate_thickness: float
    pad_side: float
    pad_thickness: float
    held: str
    bows: str
    eccentricity: float
    load_text: str
    pressure_text: str
    marks: tuple
    curves: tuple
    load: float
    carried_text: str
    asked_text: str
    greatest_load: float
    greatest_height: float
    load_ticks: tuple
    height_ticks: tuple
    load_unit: str
    material_kind: str = "sawn"
    note: str = ""
    previous: PreviousPost | None = None


@dataclass(frozen=True)
class _Frame:
    """Where things stand in one frame, in viewBox units."""

    scale: float  # units a millimetre
    side: float  # middle of the side face
    front: float  # middle of the front face
    foot: float  # top of the pad
    beam: tuple  # how far the beam is drawn, left and right
    lane: float  # where the texts beside the post begin
    heights: dict  # their baselines by name
    named: tuple  # x and baseline of the height of the post
    chart: tuple  # left, top, right, bottom
    heads: tuple  # x and baselines of the two lines above the curves
    axis_name: float | None
    size: int
    captions: int


_INCH = 25.4
_FRAMES = {
    "page": _Frame(
        scale=2.6 / _INCH, side=62, front=164, foot=520, beam=(100, 228), lane=246,
        heights={"load": 106, "word": 130, "top": 190, "middle": 330, "plate": 500, "soil": 574,
                 "pressure": 600},
        named=(20, 622), chart=(474, 164, 688, 560), heads=(418, 102, 128), axis_name=612, size=20,
        captions=3,
    ),
    "wide": _Frame(
        scale=1.34 / _INCH, side=44, front=134, foot=314, beam=(92, 176), lane=204,
        heights={"load": 96, "word": None, "top": 142, "middle": 210, "plate": 302, "soil": 340,
                 "pressure": None},
        named=(204, 366), chart=(460, 150, 688, 326), heads=(404, 92, 116), axis_name=None, size=20,
        captions=1,
    ),
    "tall": _Frame(
        scale=3.4 / _INCH, side=110, front=300, foot=690, beam=(210, 390), lane=430,
        heights={"load": 180, "word": 210, "top": 280, "middle": 430, "plate": 666, "soil": 760,
                 "pressure": 792},
        named=(24, 812), chart=(130, 920, 684, 1096), heads=(24, 852, 884), axis_name=None, size=26,
        captions=4,
    ),
}  # fmt: skip


def draw_post(view, frame="page"):
    """Draw a post from two sides with beam and pad, and the curves of what it carries by its height.

    Examples
    --------
    >>> curve = PostCurve("2", (600.0, 3600.0), (40000.0, 9000.0), current=True)
    >>> view = PostView("2 plies carry 6,300 lb", 2, 38.1, 139.7, 2438.4, "8 ft", 3, 38.1, 285.75, 1, 38.1,
    ...     700.0, 330.0, "none", "width", 0.0, "6,300 lb", "1,400 psf", (), (curve,), 28000.0,
    ...     "2 plies carry 7,500 lb", "asked 6,300 lb", 90000.0, 3657.6, (), (), "lb")
    >>> draw_post(view).title
    '2 plies carry 6,300 lb'
    """
    check_choice("frame", frame, parts.FRAMES)
    _check(view)
    (width, height), at = parts.FRAMES[frame], _FRAMES[frame]
    texts = [view.note, _scale_text(view)]
    shown = texts[1:] if frame == "wide" else texts
    if frame == "wide":
        shown = ["Left: to scale. Dashed bow: its shape only."]
    items = (
        parts.still_group("paper", [parts.paper(width, height)]),
        *_ground(view, at),
        *_side(view, at),
        *_front(view, at),
        *_marks(view, at),
        *_chart(view, at),
        Label(view.height_text, *at.named, "ink", at.size - 2),
        *parts.caption_labels(shown, frame, at.captions),
        *parts.title_labels(view.title, frame),
    )
    return Scene(width, height, items, view.title, " ".join(text for text in texts if text), _alt(view))


def _check(view):
    for name, value in (
        ("ply width", view.ply_width),
        ("post depth", view.post_depth),
        ("height", view.height),
        ("beam depth", view.beam_depth),
        ("pad", view.pad_side),
        ("pad thickness", view.pad_thickness),
        ("greatest height", view.greatest_height),
    ):
        parts.check_length(name, value)
    parts.check_length("plate thickness", view.plate_thickness, low_allowed=True)
    parts.check_length("eccentricity", view.eccentricity, low_allowed=True)
    check_number("plies", view.plies, low=1, high=5, hint="for example 2")
    check_number("beam plies", view.beam_plies, low=1, high=6, hint="for example 2")
    check_number("beam ends", view.ends, low=1, high=2, hint="1 or 2")
    check_number("load", view.load, low=0.0, high=1e9, hint="loads are handed over in N")
    check_number("greatest load", view.greatest_load, low=0.0, high=1e9, low_allowed=False)
    check_choice("what holds it", view.held, HELD)
    check_choice("way of bowing", view.bows, BOWS)
    check_choice("material kind", view.material_kind, parts.MATERIALS)
    for mark in view.marks:
        check_choice("place of a mark", mark.place, PLACES)
    for curve in view.curves:
        parts.check_pairs(f"curve {curve.name}", curve.heights, curve.loads)


def _levels(view, at):
    """Underside of the post, its top, and the top of the beam."""
    bottom = at.foot - view.plate_thickness * at.scale
    top = bottom - view.height * at.scale
    return bottom, top, top - view.beam_depth * at.scale


def _ground(view, at):
    half, deep = view.pad_side * at.scale / 2, view.pad_thickness * at.scale
    left, right, low = at.front - half, at.front + half, at.foot + deep
    reach = 15 if at.axis_name is None and at.captions == 1 else 26
    spread = reach / 2
    arrows = [
        Arrow((x, low + reach), (x, low + 3), "force", 7)
        for x in _evenly(left + 4, right - 4, max(2, min(5, int((right - left) / 22))))
    ]
    return [
        *parts.ground_line(20, at.beam[1] + 2, at.foot),
        rectangle(left, at.foot, right, low, "masonry"),
        *hatch((left, at.foot, right, low), 12, "quiet"),
        Line(((left, low), (left - spread, low + reach)), "guide"),
        Line(((right, low), (right + spread, low + reach)), "guide"),
        *arrows,
    ]


def _evenly(first, last, count):
    return [first + (last - first) * k / (count - 1) for k in range(count)]


def _side(view, at):
    """The side face: the depth of the post, with the beam's plies cut through above it."""
    s, x = at.scale, at.side
    bottom, top, beam_top = _levels(view, at)
    half = view.post_depth * s / 2
    items = _plate(view, at, x, view.post_depth)
    items += parts.wood((x - half, top, x + half, bottom), view.material_kind)
    left = x - view.beam_plies * view.beam_ply_width * s / 2
    wide = view.beam_ply_width * s
    items += [
        rectangle(left + k * wide, beam_top, left + (k + 1) * wide, top, "wood_cut") for k in range(view.beam_plies)
    ]
    line = x + max(30.0, half + 14)
    items.append(Dimension((line, top), (line, bottom), 0.0, ""))
    push = x + view.eccentricity * s
    items.append(Arrow((push, beam_top - 26), (push, beam_top - 2), "force_big", 12))
    if view.eccentricity:
        items += [
            Line(((push, top), (push, top + 34)), "force"),
            Line(((x, top - 2), (x, top + 34)), "guide"),
        ]
    if view.bows == "depth":
        items.append(_bow(x, top, bottom, 1))
    return items


def _plate(view, at, x, wide):
    if not view.plate_thickness:
        return []
    half, high = wide * at.scale / 2 + 9, view.plate_thickness * at.scale
    return [rectangle(x - half, at.foot - high, x + half, at.foot, "wood")]


def _front(view, at):
    """The front face: plies side by side along the beam, what holds them, and the way they would bow."""
    s, x = at.scale, at.front
    bottom, top, beam_top = _levels(view, at)
    wide = view.ply_width * s
    left = x - view.plies * wide / 2
    right = x + view.plies * wide / 2
    items = _held(view, left, right, top, bottom)
    items += _plate(view, at, x, view.plies * view.ply_width)
    items += parts.wood_row(
        [(left + k * wide, top, left + (k + 1) * wide, bottom) for k in range(view.plies)],
        view.material_kind,
    )
    ends = ((at.beam[0], right),) if view.ends == 1 else ((at.beam[0], x), (x, at.beam[1]))
    items += parts.wood_row([(a, beam_top, b, top) for a, b in ends], "sawn")
    items.append(Arrow((x, beam_top - 26), (x, beam_top - 2), "force_big", 12))
    if view.previous:
        old = view.previous
        half, high = old.width * s / 2, bottom - old.height * s
        items.append(
            Line(
                (
                    (x - half, bottom),
                    (x - half, high),
                    (x + half, high),
                    (x + half, bottom),
                    (x - half, bottom),
                ),
                "ghost",
            )
        )
    if view.bows == "width":
        items.append(_bow(x, top, bottom, 2 if view.held == "middle" else 1))
    return items


def _held(view, left, right, top, bottom):
    if view.held == "all":
        walls = [(left - 13, top, left - 1, bottom), (right + 1, top, right + 13, bottom)]
        return [
            item
            for box in walls
            for item in (rectangle(*box, "wall"), *hatch(box, 9, "quiet"), Line(_outline(box), "quiet"))
        ]
    if view.held == "middle":
        y = (top + bottom) / 2
        return [
            Polygon(((edge, y), (edge + 15 * way, y - 9), (edge + 15 * way, y + 9)), "ink_dot")
            for edge, way in ((left - 1, -1), (right + 1, 1))
        ]
    return []


def _outline(box):
    a, b, c, d = box
    return ((a, b), (c, b), (c, d), (a, d), (a, b))


_FORTIETHS = tuple(map(float, numpy.linspace(0.0, 1.0, 41)))


def _bow(x, top, bottom, waves):
    """The shape in which a post bows: half a sine wave between the points that hold it."""
    size = 26.0 if waves == 1 else 15.0
    return Curve(
        tuple([x + size * sin(pi * waves * along) for along in _FORTIETHS]),
        tuple([top + (bottom - top) * along for along in _FORTIETHS]),
        "reference",
    )


def _marks(view, at):
    bottom, top, beam_top = _levels(view, at)
    half = view.plies * view.ply_width * at.scale / 2
    pad, low = view.pad_side * at.scale / 2, at.foot + view.pad_thickness * at.scale
    x, places = at.front, {}
    places["top"] = (x - half, top - 3, x + half, top + 3)
    places["middle"] = (x - half, (top + bottom) / 2 - 14, x + half, (top + bottom) / 2 + 14)
    places["plate"] = (x - half, bottom - 3, x + half, at.foot)
    places["soil"] = (x - pad, low - 3, x + pad, low + 3)
    where, size = at.heights, at.size
    labels = [Label(view.load_text, at.lane, where["load"], "force", size + 2, bold=True)]
    if where["word"]:
        labels.append(Label("comes down", at.lane, where["word"], "ink", size - 2))
    if where["pressure"]:
        labels.append(Label(view.pressure_text, at.lane, where["pressure"], "force", size - 2))
    items = []
    for mark in view.marks:
        box, y = places[mark.place], where[mark.place]
        role = "governs" if mark.governs else "ink"
        labels.append(Label(mark.text, at.lane, y, role, size, bold=mark.governs))
        edge = box[2] + (6 if mark.governs else 0)
        middle = (box[1] + box[3]) / 2
        items.append(Line(((edge, middle), (at.lane - 5, y - 0.3 * size)), "leader"))
        items.append(parts.ring(box) if mark.governs else parts.dot(box[2], middle, "ink_dot", 4))
    return items + labels


def _chart(view, at):
    left, _, right, bottom = at.chart
    across = lambda height: left + (right - left) * height / view.greatest_height  # noqa: E731
    up = lambda load: bottom - (bottom - at.chart[1]) * load / view.greatest_load  # noqa: E731
    size = at.size - 2
    lines, named = _axes(
        at.chart,
        at.axis_name,
        view.load_unit,
        view.load_ticks,
        view.height_ticks,
        view.greatest_load,
        view.greatest_height,
    )
    items = [*lines]
    labels = [
        Label(view.carried_text, at.heads[0], at.heads[1], "moved", size, bold=True),
        Label(view.asked_text, at.heads[0], at.heads[2], "force", size),
        *named,
    ]
    for curve in sorted(view.curves, key=lambda one: one.current):
        items += _curve(curve, at.chart, view.greatest_load, view.greatest_height)
    labels += _names(view, across, up)
    items += _point(view, across, up)
    return items + labels


@lru_cache(maxsize=16)
def _axes(chart, name, unit, load_ticks, height_ticks, greatest_load, greatest_height):
    """Lines and texts of both axes, which stay while a slider moves."""
    left, top, right, bottom = chart
    items, labels = (
        [Line(((left, top), (left, bottom), (right, bottom)), "axis")],
        [Label(unit, left + 6, top - 8, "quiet", 18)],
    )
    for value, text in load_ticks:
        y = bottom - (bottom - top) * value / greatest_load
        items.append(Line(((left, y), (right, y)), "guide"))
        labels.append(Label(text, left - 8, y + 6, "quiet", 18, "end"))
    for value, text in height_ticks:
        x = left + (right - left) * value / greatest_height
        items.append(Line(((x, bottom), (x, bottom + 5)), "axis"))
        labels.append(Label(text, x, bottom + 24, "quiet", 18, "middle"))
    if name:
        labels.append(Label("height of the post", (left + right) / 2, name, "quiet", 18, "middle"))
    return tuple(items), tuple(labels)


@lru_cache(maxsize=64)
def _inside(curve, greatest_load, greatest_height):
    """The part of a curve that the axes have room for: heights and loads."""
    kept = [
        (height, load)
        for height, load in zip(curve.heights, curve.loads)
        if 0 < load <= greatest_load and height <= greatest_height
    ]
    return tuple(zip(*kept)) or ((), ())


@lru_cache(maxsize=64)
def _curve(curve, chart, greatest_load, greatest_height):
    heights, loads = _inside(curve, greatest_load, greatest_height)
    if len(heights) < 2:
        return ()
    left, top, right, bottom = chart
    xs = tuple([left + (right - left) * height / greatest_height for height in heights])
    ys = tuple([bottom - (bottom - top) * load / greatest_load for load in loads])
    items = [Curve(xs, ys, "moved" if curve.current else "quiet")]
    if heights[-1] < greatest_height * 0.999:  # the rule ends here
        items.append(Line(((xs[-1], ys[-1] - 7), (xs[-1], ys[-1] + 7)), "limit"))
    return tuple(items)


def _names(view, across, up):
    """The name of each curve at a place along it that is its own, so that no two names meet."""
    labels, count = [], len(view.curves)
    for k, curve in enumerate(view.curves):
        # shortest curves are named first: few plies reach the limit of slenderness soon
        height = view.greatest_height * (0.09 + 0.14 * k if count > 1 else 0.3)
        heights, loads = _inside(curve, view.greatest_load, view.greatest_height)
        if len(heights) < 2 or not heights[0] <= height <= heights[-1]:
            continue
        load = float(numpy.interp(height, heights, loads))
        role = "moved" if curve.current else "ink"
        labels.append(Label(curve.name, across(height), up(load) + 6, role, 18, "middle", curve.current, plate="plate"))
    return labels


def _point(view, across, up):
    items = []
    if view.previous:
        x, y = across(view.previous.height), up(min(view.previous.load, view.greatest_load))
        r = 7
        items.append(Line(((x - r, y), (x, y - r), (x + r, y), (x, y + r), (x - r, y)), "ghost"))
    x, y = across(view.height), up(min(view.load, view.greatest_load))
    items += [
        Line(((x, y), (x, up(0.0))), "guide"),
        Line(((x, y), (across(0.0), y)), "guide"),
    ]
    if view.load > view.greatest_load:
        items.append(Arrow((x, y + 34), (x, y + 8), "force", 10))
    items.append(parts.dot(x, y, "ink_dot", 8))
    return items


def _scale_text(view):
    ghost = " Grey dashes: before." if view.previous else ""
    return f"Left: to scale. Dashed bow: its shape only.{ghost}"


def _alt(view):
    held = {
        "none": "nothing holds it between its ends",
        "middle": "it is held at mid-height",
        "all": "a wall holds it all along",
    }[view.held]
    made = "a solid post" if view.plies == 1 else f"a post of {view.plies} plies"
    bows = {
        "width": "It would bow sideways, across its width.",
        "depth": "It would bow along its depth.",
        "none": "",
    }[view.bows]
    ends = "one beam end" if view.ends == 1 else "two beam ends"
    words = [
        f"{view.title}.",
        f"Elevation of {made}, {view.height_text}, under {ends}; {held}.",
        f"{view.load_text} comes down and presses {view.pressure_text} on the soil under the pad.",
        bows,
        "Marked: " + "; ".join(m.text + (" (governs)" if m.governs else "") for m in view.marks) + "."
        if view.marks
        else "No share is shown.",
        ("Curves of load against height, one a ply count: " if view.curves else "No curve is shown: ")
        + f"{view.carried_text}, {view.asked_text}.",
        view.note,
    ]
    return " ".join(word for word in words if word).strip()
