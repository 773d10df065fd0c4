"""What a jack is asked for: the member it lifts on top, and below its force against the lift.

The height of the chart is the whole load of the member, its width a fixed lift, so nothing jumps.
"""

from dataclasses import dataclass

from structlib.ground.refusals import BadInput, check_choice, check_number
from structlib.pictures.drawings import parts
from structlib.pictures.labels import Label, text_width
from structlib.pictures.scene import Arrow, Curve, Line, Polygon, Scene, rectangle

SHAPE_ROOM = 34.0


@dataclass(frozen=True)
class JackView:
    """All that the drawing shows; texts are ready to print.

    ``length``, ``supports``, ``jack``, ``x``, ``shape``, ``shape_before``, ``lifts``, ``widest``, ``lift``,
    ``springing``, ``measured``, ``drops`` [mm]; ``forces``, ``whole``, ``force`` [N]; ``ticks`` [mm, -]; ``previous``
    [mm, N].
    """

    title: str
    length: float
    supports: tuple
    lifted: tuple
    jack: float
    x: tuple
    shape: tuple
    shape_before: tuple
    lifts: tuple
    forces: tuple
    whole: float
    whole_text: str
    widest: float
    ticks: tuple
    lift: float
    force: float
    force_text: str
    springing: float
    springing_text: str
    measured: float
    measured_text: str
    kink_text: str
    full_text: str
    exaggeration: float = 10.0
    previous: tuple = ()
    drops: tuple = ()


@dataclass(frozen=True)
class _Places:
    """Where things stand in one frame, in viewBox units."""

    member: tuple  # left, right, height of the level line
    jack: float  # bottom of the jack's arrow
    marks: tuple  # baselines of the springing and the measured text
    chart: tuple  # left, top, right, bottom
    lanes: tuple  # baselines: lift and force, where it lets go, the whole measured sag
    middle: float  # middle of those texts, and their room
    room: float
    size: float
    captions: int


_PLACES = {
    "page": _Places((80, 640, 118), 188, (222, 246), (70, 256, 660, 500), (562, 594, 626), 360, 680, 20, 3),
    "wide": _Places((30, 300, 122), 182, (92, 114), (400, 122, 690, 300), (236, 266, 294), 165, 310, 18, 2),
    "tall": _Places((80, 640, 210), 320, (392, 428), (80, 444, 650, 880), (974, 1030, 1086), 360, 680, 26, 5),
}


def draw_jack(view, frame="page"):
    """Draw the member on its jack, and the jack's force against its lift.

    Examples
    --------
    >>> view = JackView(
    ...     "It lets go", 4000.0, (0.0, 4000.0), (), 2000.0, (0.0, 4000.0), (0.0, 0.0), (0.0, 0.0),
    ...     (0.0, 20.0), (0.0, 9000.0), 9000.0, "9 kN", 75.0, ((0.0, "0"),), 10.0, 4500.0, "half", 12.0, "a",
    ...     30.0, "measured", "lets go at 20 mm", "hangs")
    >>> draw_jack(view).title
    'It lets go'
    """
    check_choice("frame", frame, parts.FRAMES)
    _check(view)
    (width, height), at = parts.FRAMES[frame], _PLACES[frame]
    member, factor = _member(view, at)
    captions = _captions(view, factor, frame)
    items = (
        parts.still_group("paper", [parts.paper(width, height)]),
        *member,
        *_chart(view, at, frame),
        *_texts(view, at),
        *parts.caption_labels(captions, frame, at.captions),
        *parts.title_labels(view.title, frame),
    )
    return Scene(width, height, items, view.title, " ".join(captions), _alt(view, factor))


def _check(view):
    parts.check_length("length of the member", view.length)
    parts.check_pairs("shape", view.x, view.shape)
    parts.check_pairs("shape before", view.x, view.shape_before)
    parts.check_pairs("force against lift", view.lifts, view.forces)
    check_number("whole load", view.whole, low=0, high=1e9, low_allowed=False, hint="in N")
    check_number("greatest lift of the chart", view.widest, low=0, high=1e4, low_allowed=False, hint="in mm")
    for name in ("lift", "springing", "measured"):
        check_number(name, getattr(view, name), low=0, high=1e5, hint="in mm")
    check_number("force", view.force, low=-1.0, high=1e9, hint="in N")


def _member(view, at):
    left, right, level = at.member
    scale = (right - left) / view.length
    to_x = lambda place: left + place * scale  # noqa: E731
    largest = max(map(abs, (*view.shape, *view.shape_before))) * scale
    factor = parts.fitting_factor(view.exaggeration, largest, SHAPE_ROOM)
    xs = [to_x(place) for place in view.x]
    items = [Line(((left - 16, level), (right + 16, level)), "guide")]
    for number, place in enumerate(view.supports):
        x, y = to_x(place), level + (view.drops[number] * factor * scale if view.drops else 0.0)
        items.append(Polygon(((x, y + 3), (x - 11, y + 23), (x + 11, y + 23)), "wood_cut"))
        items.append(Line(((x - 18, y + 23), (x + 18, y + 23)), "ground"))
        if number in view.lifted:
            items.append(parts.ring((x - 12, y + 2, x + 12, y + 24), 5, "governs_thin"))
    items.append(Curve(xs, [level + sag * factor * scale for sag in view.shape_before], "ghost"))
    ys = [level + sag * factor * scale for sag in view.shape]
    items.append(Curve(xs, ys, "moved"))
    x = to_x(view.jack)
    k = min(range(len(xs)), key=lambda i: abs(xs[i] - x))
    items.append(Arrow((x, at.jack), (x, ys[k] + 3), "force_big", 13))
    items.append(Line(((x - 16, at.jack), (x + 16, at.jack)), "ground"))
    return items, factor


def _chart(view, at, frame):
    left, top, right, bottom = at.chart
    to_x = lambda lift: left + min(lift, view.widest) / view.widest * (right - left)  # noqa: E731
    to_y = lambda force: bottom - max(0.0, force) / view.whole * (bottom - top)  # noqa: E731
    size = 22 if frame == "tall" else 18
    items = [
        rectangle(left, top, right, bottom, "wall"),
        Line(((left, bottom), (right, bottom)), "axis"),
        Line(((left, top), (left, bottom)), "axis"),
        Line(((left, top), (right, top)), "guide"),
    ]
    for lift, text in view.ticks:
        x = to_x(lift)
        items.append(Line(((x, bottom), (x, bottom + 6)), "axis"))
        items.append(Label(text, x, bottom + 8 + size, "quiet", size, "middle"))
    if view.previous:
        items.append(_polyline(*view.previous, view, to_x, to_y, "ghost"))
    for value, text, y, role, line in (
        (view.springing, view.springing_text, at.marks[0], "moment", "reference"),
        (view.measured, view.measured_text, at.marks[1], "ink", "limit"),
    ):
        if value <= view.widest:
            x = to_x(value)
            # the line of the upper text starts below the lower one where it would strike it through
            near = abs(x - to_x(view.measured)) < text_width(view.measured_text, size) / 2 + 4
            start = at.marks[1] if near else y
            items.append(Line(((x, start + 5), (x, bottom)), line))
        else:
            x = right
        half = text_width(text, size) / 2 + 2
        low, high = (4 if frame != "wide" else 330), 716
        if 2 * half > high - low:
            raise BadInput(f"the text {text!r} is too long; shorten it, for example 'springs 0.55 in'")
        items.append(Label(text, min(max(x, low + half), high - half), y, role, size, "middle"))
    items.append(_polyline(view.lifts, view.forces, view, to_x, to_y, "moved"))
    for lift, force in list(zip(view.lifts, view.forces))[1:]:
        if lift < view.widest * (1 - 1e-9):
            items.append(parts.dot(to_x(lift), to_y(force), "ink_dot", 7))
    x, y = to_x(view.lift), to_y(view.force)
    items.append(Line(((x, y), (x, bottom)), "force"))
    items.append(parts.dot(x, y, "force", 8))
    return items


def _polyline(lifts, forces, view, to_x, to_y, role):
    """The curve up to the edge of the chart; after its last kink it runs on level."""
    points = []
    for k, (lift, force) in enumerate(zip(lifts, forces)):
        if lift > view.widest:
            before, at_before = lifts[k - 1], forces[k - 1]
            force = at_before + (force - at_before) * (view.widest - before) / (lift - before)
            points.append((view.widest, force))
            break
        points.append((lift, force))
    if points[-1][0] < view.widest:
        points.append((view.widest, points[-1][1]))
    return Line(tuple((to_x(lift), to_y(force)) for lift, force in points), role)


def _texts(view, at):
    labels = []
    lanes = zip((view.force_text, view.kink_text, view.full_text), at.lanes, ("force", "ink", "governs"))
    for text, y, role in lanes:
        size, bold = at.size, role != "ink"
        while text_width(text, size, bold) > at.room and size > 18:
            size -= 1
        if text_width(text, size, bold) > at.room:
            raise BadInput(f"the text {text!r} is too long for its place; shorten it")
        labels.append(Label(text, at.middle, y, role, size, "middle", bold))
    return labels


def _captions(view, factor, frame):
    ghost = " Dashed grey curve: before the change." if view.previous else ""
    scale = f"Shape {parts.factor_text(factor)}; dashed: as it hangs today. Ring: off its support."
    top = f"Top of the chart: the whole load, {view.whole_text}."
    if frame == "wide":
        return [top, f"Shape {parts.factor_text(factor)}; dashed: today; ring: off its support."]
    return [top, scale + ghost]


def _alt(view, factor):
    off = ", ".join(str(number + 1) for number in view.lifted)
    words = [
        f"{view.title}.",
        f"A sagging member on {len(view.supports)} old supports with a jack under it, its shape drawn"
        f" {parts.factor_text(factor)}.",
        f"It has risen off support {off}." if off else "It rests on all its supports.",
        f"Below, the jack's force against its lift, up to the whole load of {view.whole_text}:",
        f"{view.springing_text}; {view.measured_text}; {view.force_text}; {view.kink_text}; {view.full_text}.",
    ]
    return " ".join(word for word in words if word).strip()
