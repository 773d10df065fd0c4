"""An old joist with its cut: the whole joist with the stretch where no notch may be, and the cut enlarged.

Both views have a fixed scale. The enlarged one keeps the cut in its middle, so that the joist slides past;
every text has a lane of its own.
"""

import math
from dataclasses import dataclass

from structlib.ground.refusals import BadInput, check_choice
from structlib.ground.units import ft, inch
from structlib.pictures.drawings import parts
from structlib.pictures.labels import Label, text_width, wrap
from structlib.pictures.scene import Arrow, Dimension, Grain, Line, Polygon, Scene, hatch, rectangle

SHAPES = ("sawn", "round", "flat sides", "half round", "hewn")
CUTS = ("none", "notch", "hole")
LONGEST = 20 * ft
DEEPEST = 14 * inch


@dataclass(frozen=True)
class Cut:
    """A cut as it is drawn: its kind, where it begins and ends, and from which height to which [mm].

    Heights are above the bottom edge. A hole fills its box as a circle.
    """

    kind: str = "none"
    start: float = 0.0
    end: float = 0.0
    low: float = 0.0
    high: float = 0.0


@dataclass(frozen=True)
class Reason:
    """One limit on the cut in words, in a long and a short form, and whether the cut is beyond it."""

    text: str
    short: str
    beyond: bool = False


@dataclass(frozen=True)
class OldWoodView:
    """All that the drawing shows; texts are ready to print, lengths in mm.

    ``right_depth`` is the depth at the right end, for a log that gets thinner. ``place`` is where the
    enlarged view looks. ``allowed`` are boxes (start, end, low, high), along and up, in which a cut may lie;
    ``limit`` is the longest and deepest notch around this one, as such a box. ``greatest_hole`` is the widest
    hole allowed, zero where none is asked about.
    """

    title: str
    span: float
    span_text: str
    depth: float
    right_depth: float
    width: float
    wane: float
    shape: str
    size_text: str
    place: float
    cut: Cut
    heading: str
    reasons: tuple
    ranges: tuple
    short_ranges: tuple
    allowed: tuple = ()
    limit: tuple | None = None
    greatest_hole: float = 0.0
    refused: bool = False
    middle_third: bool = True
    note: str = ""
    previous: tuple | None = None


@dataclass(frozen=True)
class _Places:
    """Where things stand in one frame, in viewBox units."""

    left: float
    long: float  # drawn length of the longest joist
    base: float  # bottom edge of the whole joist
    span: float  # how far below it the span is dimensioned; 0 for not at all
    legend: float  # baseline of the words for the hatching; 0 for none
    heading: float
    window: tuple  # left and right edge of the enlarged view
    bottom: float  # bottom edge of the enlarged joist
    scale: float  # units on an inch there
    section: tuple  # middle, bottom edge, units on an inch, baseline of the size; empty for none
    reasons: tuple  # left edge, first baseline, step, room
    ranges: tuple  # left edge, first baseline, step, room, lines of each
    size: float
    captions: int


_PLACES = {
    "page": _Places(
        left=40, long=640, base=124, span=38, legend=196, heading=234,
        window=(20, 470), bottom=432, scale=12.0, section=(594, 432, 5.0, 462),
        reasons=(20, 492, 25, 680), ranges=(20, 608, 26, 680, 1), size=18, captions=3,
    ),
    "wide": _Places(
        left=40, long=640, base=126, span=0, legend=0, heading=178,
        window=(20, 344), bottom=316, scale=8.6, section=(),
        reasons=(364, 206, 24, 340), ranges=(364, 310, 24, 340, 1), size=18, captions=2,
    ),
    "tall": _Places(
        left=40, long=640, base=206, span=50, legend=306, heading=362,
        window=(20, 700), bottom=606, scale=15.0, section=(360, 776, 8.0, 818),
        reasons=(20, 872, 34, 680), ranges=(20, 1022, 31, 680, 2), size=24, captions=4,
    ),
}  # fmt: skip


def draw_old_wood(view, frame="page"):
    """Draw an old joist, its cut, and what the wood may be.

    Examples
    --------
    >>> view = OldWoodView("An old joist", 3900.0, "13 ft", 190.0, 190.0, 50.0, 0.0, "sawn",
    ...     "2 in x 7 1/2 in", 900.0, Cut(), "At 3 ft", (), (), ())
    >>> draw_old_wood(view).title
    'An old joist'
    """
    check_choice("frame", frame, parts.FRAMES)
    _check(view)
    (width, height), at = parts.FRAMES[frame], _PLACES[frame]
    texts = [view.note, _scale_text(view, frame)]
    items = (
        parts.still_group("paper", [parts.paper(width, height)]),
        *_whole(view, at),
        *_enlarged(view, at),
        *_section(view, at),
        *_words(view, at, frame),
        *parts.caption_labels(texts[1:] if frame == "wide" else texts, frame, at.captions),
        *parts.title_labels(view.title, frame),
    )
    return Scene(width, height, items, view.title, " ".join(text for text in texts if text), _alt(view))


def _check(view):
    check_choice("shape", view.shape, SHAPES)
    check_choice("cut", view.cut.kind, CUTS)
    parts.check_length("span", view.span, high=LONGEST * (1 + 1e-9))
    for name, value in (("depth", view.depth), ("depth at the right end", view.right_depth)):
        parts.check_length(name, value, high=DEEPEST * (1 + 1e-9))
    parts.check_length("width", view.width, high=2 * DEEPEST * (1 + 1e-9))
    parts.check_length("place", view.place, high=view.span * (1 + 1e-9), low_allowed=True)
    if len(view.reasons) > 4 or len(view.ranges) > 2:
        raise BadInput("there is room for four reasons and two lines of range")


# ---- the whole joist ----


def _outline(left, base, scale, span, depth, right_depth):
    right = left + span * scale
    return ((left, base), (right, base), (right, base - right_depth * scale), (left, base - depth * scale))


def _whole(view, at):
    scale, left, base = at.long / LONGEST, at.left, at.base
    right = left + view.span * scale
    body = _outline(left, base, scale, view.span, view.depth, view.right_depth)
    items = [Polygon(body, "wood")]
    if view.middle_third:
        third = view.span * scale / 3
        items += hatch(
            (left + third, base - min(view.depth, view.right_depth) * scale, right - third, base),
            spacing=9,
            role="bearing",
        )
    items += _cut_shape(view.cut, lambda x: left + x * scale, lambda y: base - y * scale)
    if view.previous:
        span, depth, right_depth, _ = view.previous
        ghost = _outline(left, base, scale, span, depth, right_depth)
        items.append(Line((*ghost, ghost[0]), "ghost"))
    for x, place in ((left, 0.0), (right, view.span)):
        y = base - _seat_height(view.cut, place) * scale
        items.append(Polygon(((x, y), (x - 10, base + 17), (x + 10, base + 17)), "wood_cut"))
    if at.span:
        items.append(Dimension((left, base), (right, base), at.span, view.span_text, at.size))
    # an arrow shows the place that is enlarged below
    x = left + view.place * scale
    if view.cut.kind != "none":
        items.append(Arrow((x, base + 24), (x, base + 3), "mark", 9))
    return items


def _seat_height(cut, place):
    """How far above the bottom edge the joist sits at an end: a notched end sits on its notch."""
    notched = cut.kind == "notch" and cut.low == 0 and cut.start - 1e-6 <= place <= cut.end + 1e-6
    return cut.high if notched else 0.0


def _cut_shape(cut, across, up):
    if cut.kind == "none":
        return []
    left, top, right, bottom = across(cut.start), up(cut.high), across(cut.end), up(cut.low)
    if cut.kind == "hole":
        radius = min((right - left), (bottom - top)) / 2
        return [Polygon(_circle((left + right) / 2, (top + bottom) / 2, radius), "badge")]
    # the open side of a notch is wiped clean of the edge of the wood
    if cut.low > 0:
        return [
            rectangle(left, top - 2, right, bottom, "paper"),
            Line(((left, top), (left, bottom), (right, bottom), (right, top)), "ink"),
        ]
    return [
        rectangle(left, top, right, bottom + 2, "paper"),
        Line(((left, bottom), (left, top), (right, top), (right, bottom)), "ink"),
    ]


def _ring(left, top, right, bottom, role):
    return Line(((left, top), (right, top), (right, bottom), (left, bottom), (left, top)), role)


def _circle(x, y, radius, sides=36):
    return tuple(
        (x + radius * math.cos(2 * math.pi * k / sides), y + radius * math.sin(2 * math.pi * k / sides))
        for k in range(sides)
    )


# ---- the cut enlarged ----


def _enlarged(view, at):
    scale, (left, right), base = at.scale / inch, at.window, at.bottom
    middle = (left + right) / 2

    def across(x):
        return min(right, max(left, middle + (x - view.place) * scale))

    def up(y):
        return base - y * scale

    def depth_at(x):
        return view.depth + (view.right_depth - view.depth) * x / view.span

    first = max(0.0, view.place - (middle - left) / scale)
    last = min(view.span, view.place + (right - middle) / scale)
    body = (
        (across(first), base),
        (across(last), base),
        (across(last), up(depth_at(last))),
        (across(first), up(depth_at(first))),
    )
    lowest = min(depth_at(first), depth_at(last))
    items = [
        Polygon(body, "wood"),
        Grain((across(first), up(lowest), across(last), base), "along", max(1, int(lowest / inch / 2))),
    ]
    for start, end, low, high in view.allowed:
        box = (across(start), up(min(high, lowest)), across(end), up(low))
        if box[2] - box[0] > 2 and box[3] - box[1] > 2:
            items += [*hatch(box, spacing=13, role="force"), _ring(*box, "limit")]
    items += _cut_shape(view.cut, across, up)
    if view.limit:
        start, end, low, high = view.limit
        items.append(_ring(across(start), up(high), across(end), up(low), "limit"))
    if view.greatest_hole and view.cut.kind == "hole":
        ring = _circle(
            across((view.cut.start + view.cut.end) / 2),
            up((view.cut.low + view.cut.high) / 2),
            view.greatest_hole * scale / 2,
        )
        items.append(Line((*ring, ring[0]), "limit"))
    for place in (0.0, view.span):
        if first - 1e-6 <= place <= last + 1e-6:
            x, y = across(place), up(_seat_height(view.cut, place))
            items.append(Polygon(((x, y), (x - 10, base + 17), (x + 10, base + 17)), "wood_cut"))
    if view.previous:
        items += _before(view, across, up, first, last)
    if view.refused and view.cut.kind != "none":
        items += _crossed(view.cut, across, up)
    return items


def _before(view, across, up, first, last):
    _, depth, _, cut = view.previous
    items = []
    if abs(depth - view.depth) > 0.5:
        items.append(Line(((across(first), up(depth)), (across(last), up(depth))), "ghost"))
    if cut.kind != "none" and cut != view.cut and cut.end > first and cut.start < last:
        box = (across(cut.start), up(cut.high), across(cut.end), up(cut.low))
        if cut.kind == "notch":
            items.append(_ring(*box, "ghost"))
        elif cut.start >= first and cut.end <= last:
            ring = _circle((box[0] + box[2]) / 2, (box[1] + box[3]) / 2, (box[2] - box[0]) / 2)
            items.append(Line((*ring, ring[0]), "ghost"))
    return items


def _crossed(cut, across, up):
    left, right, top, bottom = across(cut.start), across(cut.end), up(cut.high), up(cut.low)
    x, y = (left + right) / 2, (top + bottom) / 2
    reach = max(12.0, min(30.0, (right - left) / 2 + 4))
    x = max(reach + 2, x)
    return [
        Line(((x - reach, y - reach), (x + reach, y + reach)), "governs"),
        Line(((x - reach, y + reach), (x + reach, y - reach)), "governs"),
    ]


# ---- the section ----


def _section(view, at):
    if not at.section:
        return []
    middle, base, inch_units, baseline = at.section
    scale = inch_units / inch
    w, d = view.width * scale, view.depth * scale
    if view.shape == "half round":
        w = 2 * d
    top = base - d
    body = {
        "sawn": lambda: _box(middle, top, w, d),
        "hewn": lambda: _hewn(middle, top, w, d, view.wane * scale),
        "round": lambda: _circle(middle, base - d / 2, d / 2, 60),
        "half round": lambda: _half_round(middle, top, d),
        "flat sides": lambda: _flat_sides(middle, base - d / 2, d / 2, w / 2),
    }[view.shape]()
    items = [Polygon(body, "wood_cut")]
    if view.shape == "sawn":
        items.append(Grain((middle - w / 2, top, middle + w / 2, base), "rings", 5))
    else:
        centre = top if view.shape == "half round" else base - d / 2
        most = min(d, w / 2) if view.shape == "half round" else min(w, d) / 2
        for k in (0.3, 0.6, 0.85):
            ring = _circle(middle, centre, most * k, 40)
            if view.shape == "half round":
                ring = tuple(
                    (
                        middle + most * k * math.cos(math.pi * i / 20),
                        top + most * k * math.sin(math.pi * i / 20),
                    )
                    for i in range(21)
                )
                items.append(Line(ring, "wood_grain"))
            else:
                items.append(Line((*ring, ring[0]), "wood_grain"))
    room = 2 * min(middle - at.window[1] - 4 if at.section[0] > at.window[1] else middle - 20, 704 - middle)
    if text_width(view.size_text, at.size) > room:
        raise BadInput(f"the text {view.size_text!r} is too long; for example '2 in x 7 1/2 in'")
    return [*items, Label(view.size_text, middle, baseline, "ink", at.size, "middle")]


def _box(middle, top, w, d):
    return (
        (middle - w / 2, top),
        (middle + w / 2, top),
        (middle + w / 2, top + d),
        (middle - w / 2, top + d),
    )


def _hewn(middle, top, w, d, c):
    a, b = middle - w / 2, middle + w / 2
    return (
        (a + c, top),
        (b - c, top),
        (b, top + c),
        (b, top + d - c),
        (b - c, top + d),
        (a + c, top + d),
        (a, top + d - c),
        (a, top + c),
    )


def _half_round(middle, top, radius):
    return tuple(
        (middle + radius * math.cos(math.pi * k / 30), top + radius * math.sin(math.pi * k / 30)) for k in range(31)
    )


def _flat_sides(x, y, radius, half):
    turn = math.acos(min(1.0, half / radius))
    upper = [math.pi + turn + (math.pi - 2 * turn) * k / 20 for k in range(21)]
    lower = [turn + (math.pi - 2 * turn) * k / 20 for k in range(21)]
    return tuple((x + radius * math.cos(t), y + radius * math.sin(t)) for t in (*upper, *lower))


# ---- words ----


def _words(view, at, frame):
    items = [_fitted(view.heading, at.window[0], at.heading, 700 - at.window[0], at.size, "ink")]
    if at.legend and view.middle_third:
        y = at.legend
        box = (at.left, y - 14, at.left + 34, y + 2)
        items += [*hatch(box, spacing=9, role="bearing"), _ring(*box, "quiet")]
        items.append(Label("middle third: no notch", at.left + 44, y, "ink", at.size))
    left, first, step, room = at.reasons
    for k, reason in enumerate(view.reasons):
        y = first + step * k
        if reason.beyond:
            items += [
                Line(((left + 2, y - 13), (left + 14, y - 1)), "governs"),
                Line(((left + 2, y - 1), (left + 14, y - 13)), "governs"),
            ]
        else:
            items.append(parts.dot(left + 8, y - 7, "ink_dot", 5))
        text = reason.text if frame == "page" else reason.short
        items.append(
            _fitted(
                text,
                left + 24,
                y,
                room - 24,
                at.size,
                "governs" if reason.beyond else "ink",
                bold=reason.beyond,
            )
        )
    left, first, step, room, lines = at.ranges
    for k, text in enumerate(view.ranges if frame != "wide" else view.short_ranges):
        rows = wrap(text, room, at.size, True)
        if lines == 1:
            items.append(_fitted(text, left, first + step * k, room, at.size, "ink", bold=True))
            continue
        if len(rows) > lines:
            raise BadInput(f"the text {text!r} is too long for its lane")
        items += [
            Label(row, left, first + step * (lines * k + i) + 3 * k, "ink", at.size, bold=True)
            for i, row in enumerate(rows)
        ]
    return items


def _fitted(text, x, y, room, size, role, bold=True):
    """The text in its size; plain or a little smaller if it would be too wide."""
    for try_size, try_bold in ((size, bold), (size, False), (18, bold), (18, False)):
        if text_width(text, try_size, try_bold) <= room:
            return Label(text, x, y, role, try_size, bold=try_bold)
    raise BadInput(f"the text {text!r} is too long for its lane")


def _scale_text(view, frame):
    ghost = " Dashed grey: before." if view.previous else ""
    if frame == "wide":
        hatched = " Hatched below: where a cut may lie." if view.allowed else ""
        return f"{view.span_text}, {view.size_text}; to scale.{hatched}{ghost}"
    hatched = ", hatched where a cut may lie" if view.allowed else ""
    return f"All to scale; the cut enlarged{hatched}.{ghost}"


def _alt(view):
    words = [f"{view.title}.", f"A joist of {view.span_text} span, {view.size_text}.", f"{view.heading}."]
    words += [f"{reason.text}{' - refused' if reason.beyond else ''}." for reason in view.reasons]
    words += [text for text in view.ranges]
    if view.refused and view.cut.kind != "none":
        words.append("The cut is crossed out.")
    return " ".join([*words, view.note]).strip()
