"""How a beam pushes back: loads and supports, and below them shear, moment, slope and deflection."""

from dataclasses import dataclass

from structlib.ground.refusals import BadInput, check_choice, check_number
from structlib.pictures.drawings import parts
from structlib.pictures.labels import Label, spread, text_width, wrap
from structlib.pictures.scene import Arrow, Curve, Line, Polygon, Scene, hatch, rectangle
from structlib.pictures.style import NOTE_SIZE

SUPPORTS = ("pinned", "roller", "fixed", "free")
# the diagrams in their order: role of the line or area, role of the text
ROLES = (("shear", "shear"), ("moment", "moment"), ("slope", "ink"), ("deflection", "moved"))

COLUMN = 176.0


@dataclass(frozen=True)
class BeamSupport:
    """What holds the beam at one place.

    ``x`` [mm].
    """

    x: float
    kind: str
    text: str = ""


@dataclass(frozen=True)
class CurvePoint:
    """A load at one place.

    ``x`` [mm].
    """

    x: float
    text: str


@dataclass(frozen=True)
class CurveSpread:
    """A load spread over a length.

    ``start``, ``end`` [mm]; ``at_start``, ``at_end`` [N/mm].
    """

    start: float
    end: float
    at_start: float
    at_end: float
    text: str


@dataclass(frozen=True)
class BeamCurve:
    """One of the four diagrams.

    ``x`` [mm].
    """

    name: str
    x: tuple
    y: tuple
    unit: str
    peak_text: str
    full: float = 0.0
    positive_down: bool = False


@dataclass(frozen=True)
class BeamCurvesView:
    """All that the picture of a beam and its four diagrams shows; texts are ready to print.

    ``length`` [mm]; ``load_full`` [N/mm].
    """

    title: str
    length: float
    length_text: str
    supports: tuple
    curves: tuple
    point_loads: tuple = ()
    spread_loads: tuple = ()
    load_full: float = 0.0
    previous: tuple = ()
    note: str = ""


@dataclass(frozen=True)
class _Places:
    """Heights in one frame, in viewBox units."""

    labels: float  # baseline of the names of the loads
    beam: float
    load_room: float
    pushes: float  # baseline of the pushes of the supports
    rows: tuple  # top of the first diagram, pitch
    size: float
    captions: int


_FRAMES = {
    "page": _Places(
        labels=86,
        beam=152,
        load_room=50,
        pushes=204,
        rows=(216, 103),
        size=18,
        captions=3,
    ),
    "wide": _Places(
        labels=80,
        beam=124,
        load_room=32,
        pushes=162,
        rows=(168, 47),
        size=18,
        captions=1,
    ),
    "tall": _Places(
        labels=150,
        beam=248,
        load_room=76,
        pushes=318,
        rows=(338, 198),
        size=22,
        captions=3,
    ),
}


def draw_beam_curves(view, frame="page"):
    """Draw a beam with its loads, supports and four diagrams, all above each other at one scale in x.

    Examples
    --------
    >>> flat = tuple(BeamCurve(name, (0, 3000), (0, 0), "", "0") for name, _ in ROLES)
    >>> view = BeamCurvesView("No load, no push", 3000.0, "3 m", (BeamSupport(0, "pinned"),), flat)
    >>> draw_beam_curves(view).height
    720.0
    """
    check_choice("frame", frame, parts.FRAMES)
    _check(view)
    at = _Frame(view, frame)
    texts = [view.note, _caption(view)]
    caption = " ".join(text for text in texts if text)
    shown = texts[1:] if frame == "wide" else texts
    items = (
        parts.still_group("paper", [parts.paper(at.width, at.height)]),
        *[Line(((x, at.beam_y), (x, at.bottom)), "guide") for x in at.lines],
        *_beam(view, at),
        *_supports(view, at),
        *_loads(view, at),
        *[item for k, curve in enumerate(view.curves) for item in _diagram(view, at, k, curve)],
        *parts.caption_labels(shown, frame, at.places.captions),
        *parts.title_labels(view.title, frame),
    )
    return Scene(at.width, at.height, items, view.title, caption, _alt(view, caption))


def _check(view):
    parts.check_length("length of the beam", view.length)

    def on_beam(name, x):
        check_number(
            name,
            x,
            low=0,
            high=view.length * (1 + 1e-9),
            shown=lambda place: f"{place:g} mm",
            hint="places count from the left end",
        )

    if not view.supports:
        raise BadInput("a beam needs a support, for example BeamSupport(0, 'pinned')")
    for support in view.supports:
        check_choice("support", support.kind, SUPPORTS)
        on_beam(f"place of the {support.kind} support", support.x)
    for load in view.point_loads:
        on_beam(f"place of the load {load.text!r}", load.x)
    for load in view.spread_loads:
        on_beam(f"start of the load {load.text!r}", load.start)
        on_beam(f"end of the load {load.text!r}", load.end)
        if load.end <= load.start:
            raise BadInput(f"the load {load.text!r} must end right of its start, got {load.start:g} and {load.end:g}")
        for value in (load.at_start, load.at_end):
            check_number(f"load {load.text!r}", value, low=0, high=1e5, hint="loads press down, in N/mm")
    names = [curve.name for curve in view.curves]
    if names != [role for role, _ in ROLES]:
        raise BadInput(f"the diagrams are shear, moment, slope and deflection, in this order; got {', '.join(names)}")
    for curve in view.curves:
        parts.check_pairs(curve.name, curve.x, curve.y)
        check_number(f"full {curve.name}", curve.full, low=0, high=1e15)
    if view.previous and len(view.previous) != len(view.curves):
        raise BadInput(f"give the state before for all four diagrams or for none, got {len(view.previous)}")
    for curve, before in zip(view.curves, view.previous):
        parts.check_pairs(f"previous {curve.name}", *before)


class _Frame:
    """Scale and heights of one picture."""

    def __init__(self, view, frame):
        self.frame, self.places = frame, _FRAMES[frame]
        self.width, self.height = parts.FRAMES[frame]
        self.column = self.width - COLUMN
        self.left, self.right = 60.0, self.column - 34
        self.scale = (self.right - self.left) / view.length
        self.beam_y = self.places.beam
        self.bottom = self.places.rows[0] + 4 * self.places.rows[1] - 8
        # units stand behind all four names or behind none; every peak has its unit anyway
        self.with_units = frame != "wide" and all(
            curve.unit and text_width(f"{curve.name}, {curve.unit}", self.places.size, bold=True) < COLUMN - 10
            for curve in view.curves
        )
        # thin lines tie every support and every load at a place to the diagrams below
        self.lines = sorted({self.x(s.x) for s in (*view.supports, *view.point_loads)})

    def x(self, place):
        return self.left + float(place) * self.scale

    def xs(self, places):
        left, scale = self.left, self.scale
        return [left + place * scale for place in map(float, places)]


def _beam(view, at):
    half = 5.0 if at.frame != "tall" else 8.0
    y = at.beam_y
    length = Label(_fits(view.length_text, COLUMN - 14, at), at.column, y + 6, "ink", at.places.size)
    return [rectangle(at.left, y - half, at.right, y + half, "wood"), length]


def _fits(text, room, at, bold=False, size=None):
    if text_width(text, size or at.places.size, bold) > room:
        raise BadInput(f"the text {text!r} is too long for its place; shorten it, for example '1,240 lb'")
    return text


def _supports(view, at):
    items, pushes = [], []
    under = at.beam_y + (5.0 if at.frame != "tall" else 8.0)
    for support in view.supports:
        x, y = at.x(support.x), under
        if support.kind == "pinned":
            items += [
                Polygon(((x, y), (x - 11, y + 15), (x + 11, y + 15)), "steel"),
                Line(((x - 18, y + 15), (x + 18, y + 15)), "ground"),
            ]
        elif support.kind == "roller":
            # eight corners make a wheel
            wheel = [(x + 7 * c, y + 7.5 + 7 * s) for c, s in _CIRCLE]
            items += [
                Polygon(tuple(wheel), "steel"),
                Line(((x - 18, y + 15.5), (x + 18, y + 15.5)), "ground"),
            ]
        elif support.kind == "fixed":
            way = -1 if support.x < view.length / 2 else 1
            a, b = sorted((x, x + 16 * way))
            box = (a, at.beam_y - 22, b, at.beam_y + 22)
            items += [rectangle(*box, "wall"), *hatch(box, 8), Line(((x, box[1]), (x, box[3])), "ground")]
        if support.text:
            pushes.append(Label(support.text, x, at.places.pushes, "ink", at.places.size, "middle", plate="plate"))
    return items + parts.row_apart(pushes, 8.0, at.column - 6.0)


_CIRCLE = ((1, 0), (0.71, 0.71), (0, 1), (-0.71, 0.71), (-1, 0), (-0.71, -0.71), (0, -1), (0.71, -0.71))


def _loads(view, at):
    top = at.beam_y - (5.0 if at.frame != "tall" else 8.0) - 2
    largest = max([view.load_full, *(max(load.at_start, load.at_end) for load in view.spread_loads)], default=0.0)
    areas, arrows, labels, beside = [], [], [], []
    for load in view.spread_loads:
        a, b = at.x(load.start), at.x(load.end)
        rise = [0.72 * at.places.load_room * w / largest if largest else 0.0 for w in (load.at_start, load.at_end)]
        areas.append(Polygon(((a, top), (a, top - rise[0]), (b, top - rise[1]), (b, top)), "force_band"))
        count = max(2, round((b - a) / 24) + 1)
        for k in range(count):
            part = k / (count - 1)
            high = rise[0] + (rise[1] - rise[0]) * part
            if high > 4:
                x = a + (b - a) * part
                arrows.append(Arrow((x, top - high), (x, top), "force", min(8.0, 0.7 * high)))
        beside.append((_fits(load.text, COLUMN - 8, at), b, top - rise[1] / 2))
    for load in view.point_loads:
        x = at.x(load.x)
        arrows.append(Arrow((x, top - at.places.load_room), (x, top), "force_big", 14))
        labels.append(Label(load.text, x, at.places.labels, "force", at.places.size, "middle"))
    # a spread load is named in the column, level by level, so that a moving load never meets its name
    size = at.places.size
    names = [Label(text, at.column, y + 0.35 * size, "force", size) for text, _, y in beside]
    lowest = at.beam_y - 0.9 * size
    names = spread(names, top=parts.TITLE_ROOM[at.frame], bottom=lowest, gap=2)
    leaders = [
        Line(((x + 4, y), (at.column - 6, name.y - 0.33 * size)), "leader") for name, (_, x, y) in zip(names, beside)
    ]
    return leaders + areas + arrows + names + parts.row_apart(labels, 8.0, at.column - 6.0)


def _diagram(view, at, k, curve):
    role, text_role = ROLES[k]
    first, pitch = at.places.rows
    top, bottom = first + k * pitch + 4, first + (k + 1) * pitch - 6
    axis, half = (top + bottom) / 2, (bottom - top) / 2
    before = view.previous[k] if view.previous else ((), ())
    ys, was = list(map(float, curve.y)), list(map(float, before[1]))
    peak = parts.peak_index(ys)
    full = max(curve.full, abs(ys[peak]), max(map(abs, was), default=0.0), 1e-12)
    # rounding dust is drawn as a straight line
    step = (half / full if full > 1e-9 else 0.0) * (1 if curve.positive_down else -1)
    xs, heights = at.xs(curve.x), [axis + y * step for y in ys]
    px, py = xs[peak], heights[peak]
    items = [Curve(xs, heights, role, axis if role != "deflection" else None)]
    if was:
        items.append(Curve(at.xs(before[0]), [axis + y * step for y in was], "ghost"))
    sign = -1 if not curve.positive_down else 1
    plus = axis + 7 + sign * min(0.55 * half, 22)
    size = at.places.size
    peak_lines = wrap(curve.peak_text, COLUMN - 14, size)
    rows = 1 if at.frame == "wide" else 2
    if len(peak_lines) > rows:
        raise BadInput(f"the peak {curve.peak_text!r} is too long; shorten it, for example '1,240 lb'")
    name = f"{curve.name}, {curve.unit}" if at.with_units else curve.name
    block = axis + 0.35 * size - 0.6 * size * len(peak_lines)
    return items + [
        Line(((at.left, axis), (at.right, axis)), "axis"),
        Line(((px + 8, py), (at.column - 8, py)), "guide"),
        parts.dot(px, py, _DOTS[role]),
        Label("+", at.left - 22, plus, "quiet", NOTE_SIZE, "middle"),
        Label(_fits(name, COLUMN - 8, at, bold=True), at.column, block, text_role, size, bold=True),
        *[
            Label(_fits(line, COLUMN - 8, at), at.column, block + 1.2 * size * (i + 1), text_role, size)
            for i, line in enumerate(peak_lines)
        ],
    ]


_DOTS = {"shear": "shear_dot", "moment": "moment_dot", "slope": "ink_dot", "deflection": "moved_dot"}


def _caption(view):
    texts = ["Positive is towards the +."]
    if view.previous:
        texts.append("Dashed: before the change.")
    return " ".join(texts)


def _alt(view, caption):
    words = [f"{view.title}. A beam {view.length_text} long."]
    words += [
        f"{s.kind.capitalize()} {'end' if s.kind == 'free' else 'support'}" + (f" pushes {s.text}." if s.text else ".")
        for s in view.supports
    ]
    words += [f"Load: {load.text}." for load in (*view.point_loads, *view.spread_loads)]
    words += [f"Greatest {curve.name} {curve.peak_text}." for curve in view.curves]
    return " ".join([*words, view.note, caption] if view.note else [*words, caption])
