"""What is asked meanwhile: a floor whose wall is out, with what a temporary wall takes as bare arrows.

No shoring is drawn, only its demand: an arrow where it pushes up, and one where it lands below. Every
text has
a lane of its own; only arrows, leaders and the joists' shape move with a slider.
"""

from dataclasses import dataclass

from structlib.ground.refusals import BadInput, check_choice, check_number
from structlib.pictures.drawings import parts
from structlib.pictures.labels import Label, text_width
from structlib.pictures.scene import Arrow, Curve, Line, Polygon, Scene, rectangle

SHAPE_ROOM = 44.0  # units that the drawn shape may move up or down
GROUNDS = ("across", "along", "slab")


@dataclass(frozen=True)
class TemporaryWall:
    """Where a temporary wall pushes, and how it is named.

    ``position`` [mm].
    """

    position: float
    text: str


@dataclass(frozen=True)
class MeanwhileView:
    """All that the drawing shows; texts are ready to print.

    ``length``, ``out``, ``depth``, ``far``, ``x``, ``sag``, ``previous``, ``previous_sag`` [mm].
    """

    title: str
    length: float
    out: float
    depth: float
    cut: bool
    far: tuple
    walls: tuple
    far_text: str
    uplift: bool
    floor_text: str
    above_text: str
    before_text: str
    together_text: str
    below: str
    below_text: str
    x: tuple
    sag: tuple
    sag_text: str
    exaggeration: float = 20.0
    previous: tuple = ()
    previous_sag: tuple = ()
    note: str = ""


@dataclass(frozen=True)
class _Places:
    """Heights in one frame, in viewBox units: what is drawn from top to bottom, then the lanes of texts."""

    loads: float  # baseline of the load texts
    band: tuple  # top and bottom of the load band
    deepest: float  # how deep the joists may be drawn
    floor: float  # the floor below
    ground: float  # bottom of what is drawn
    lanes: tuple  # baselines: temporary walls, walls that stay, before, together, below
    size: float
    big: float
    ends: tuple  # left and right end of the drawn floor
    one_side: tuple  # the same where only one side is drawn
    captions: int


_PLACES = {
    "page": _Places(88, (104, 130), 70, 402, 424, (470, 508, 548, 582, 620), 20, 24, (64, 656), (150, 560), 3),
    "wide": _Places(84, (94, 108), 40, 236, 250, (276, 276, 304, 329, 354), 18, 20, (64, 656), (190, 530), 1),
    "tall": _Places(156, (180, 222), 80, 640, 670, (740, 800, 872, 930, 1000), 26, 32, (64, 656), (150, 560), 6),
}


def draw_meanwhile(view, frame="page"):
    """Draw the floor while its wall is out, and what is asked of what holds it.

    Examples
    --------
    >>> view = MeanwhileView("Each temporary wall takes 360 plf", 7315.2, 3657.6, 235.0, True, (0.0, 7315.2),
    ...     (TemporaryWall(3048.0, "360 plf"), TemporaryWall(4267.2, "360 plf")), "240 plf",
    ...     False, "floor 50 psf", "", "the wall had 600 plf", "together 720 plf", "across", "joist below",
    ...     (0.0, 7315.2), (0.0, 0.0), "0.01 in")
    >>> draw_meanwhile(view).title
    'Each temporary wall takes 360 plf'
    """
    check_choice("frame", frame, parts.FRAMES)
    _check(view)
    (width, height), at = parts.FRAMES[frame], _PLACES[frame]
    left, right = at.ends if len(view.walls) == 2 else at.one_side
    scale = (right - left) / view.length
    factor = parts.fitting_factor(view.exaggeration, max(map(abs, view.sag)) * scale, SHAPE_ROOM)
    to_x = lambda place: left + place * scale  # noqa: E731
    top = at.band[1] + 6
    bottom = top + max(6.0, min(view.depth * scale, at.deepest))
    items = (
        parts.still_group("paper", [parts.paper(width, height)]),
        *_below(view, at, to_x),
        *_standing(view, at, to_x, bottom),
        *_joists(view, at, to_x, top, bottom),
        *_shape(view, to_x, (top + bottom) / 2, factor * scale),
        *_forces(view, at, to_x, top, bottom),
        *_texts(view, at, to_x, factor, frame),
        *parts.caption_labels(_captions(view, factor, frame), frame, at.captions),
        *parts.title_labels(view.title, frame),
    )
    caption = " ".join(_captions(view, factor, "page"))
    return Scene(width, height, items, view.title, caption, _alt(view, factor))


def _check(view):
    parts.check_length("length of the floor", view.length)
    parts.check_length("depth of the joists", view.depth)
    check_choice("what is below", view.below, GROUNDS)
    if len(view.walls) not in (1, 2):
        raise BadInput(f"one or two temporary walls can be drawn, got {len(view.walls)}")
    for place in (view.out, *view.far, *(wall.position for wall in view.walls), *view.previous):
        check_number("place on the floor", place, low=0, high=view.length * (1 + 1e-9), hint="in mm from its left")
    check_number("exaggeration", view.exaggeration, low=0, high=1000, low_allowed=False, hint="for example 20")
    parts.check_pairs("shape", view.x, view.sag)
    if view.previous_sag:
        parts.check_pairs("shape before", view.x, view.previous_sag)


def _standing(view, at, to_x, bottom):
    """Walls that stay, and the wall that is out as a dashed outline."""
    items = []
    for place in view.far:
        x = to_x(place)
        items.append(rectangle(x - 9, bottom, x + 9, at.floor, "wall"))
        items.append(Line(((x - 9, bottom), (x - 9, at.floor)), "ink"))
        items.append(Line(((x + 9, bottom), (x + 9, at.floor)), "ink"))
    x = to_x(view.out)
    items.append(
        Line(
            (
                (x - 9, bottom + 4),
                (x + 9, bottom + 4),
                (x + 9, at.floor - 2),
                (x - 9, at.floor - 2),
                (x - 9, bottom + 4),
            ),
            "guide",
        )
    )
    items += [
        Line(((x - 9, bottom + 30), (x + 9, bottom + 48)), "quiet"),
        Line(((x + 9, bottom + 30), (x - 9, bottom + 48)), "quiet"),
    ]
    for place in view.previous:
        items.append(Line(((to_x(place), bottom + 4), (to_x(place), at.floor - 4)), "ghost"))
    return items


def _joists(view, at, to_x, top, bottom):
    out = to_x(view.out)
    left, right = to_x(0.0) - 9, to_x(view.length) + 9
    if not view.cut:
        boxes = [(left, top, right, bottom)]
    elif len(view.walls) == 2:
        boxes = [(left, top, out - 1.5, bottom), (out + 1.5, top, right, bottom)]
    else:
        boxes = [(left, top, out + 9, bottom)]
    return parts.wood_row(boxes, "sawn")


def _shape(view, to_x, middle, step):
    xs = [to_x(place) for place in view.x]
    items = []
    if view.previous_sag:
        ys = [middle + max(-SHAPE_ROOM, min(SHAPE_ROOM, sag * step)) for sag in view.previous_sag]
        items.append(Curve(xs, ys, "ghost"))
    items.append(Curve(xs, [middle + sag * step for sag in view.sag], "moved"))
    return items


def _forces(view, at, to_x, top, bottom):
    """The load band, the load on the ends, the pushes of the temporary walls, and where they land."""
    first, last = at.band
    left, right = to_x(0.0), to_x(view.length)
    items = [rectangle(left, first, right, first + (last - first) * 0.45, "force_band")]
    count = 12 if len(view.walls) == 2 else 8
    for k in range(count + 1):
        x = left + (right - left) * k / count
        items.append(Arrow((x, first + (last - first) * 0.45), (x, top - 1), "force", 5))
    if view.above_text:
        x = to_x(view.out)
        items.append(Arrow((x, first - 4), (x, top - 1), "force_big", 12))
    half = (at.floor - bottom) / 2
    for wall in view.walls:
        x = to_x(wall.position)
        items.append(Arrow((x, bottom + half - 8), (x, bottom + 3), "force_big", 14))
        items.append(Arrow((x, bottom + half + 8), (x, at.floor - 3), "force_big", 14))
        items.append(Line(((x - 7, bottom + half), (x + 7, bottom + half)), "leader"))
    for place in view.far:
        x = to_x(place)
        if view.uplift:
            items.append(Arrow((x, first - 2), (x, top - 2), "governs_thin", 11))
            items.append(parts.ring((x - 12, top, x + 12, bottom), 5, "governs"))
        else:
            items.append(Arrow((x, bottom + 34), (x, bottom + 3), "force", 8))
    return items


def _below(view, at, to_x):
    """The floor that the temporary walls stand on."""
    left, right = to_x(0.0) - 26, to_x(view.length) + 26
    if view.below == "slab":
        return [
            rectangle(left, at.floor, right, at.floor + 12, "masonry"),
            *parts.ground_line(left, right, at.floor + 13, 8),
        ]
    items = []
    if view.below == "across":
        items += parts.wood_row([(left, at.floor, right, at.ground - 8)], "sawn")
    else:
        # joists seen from their ends; the nearest one takes it all
        count = 16 if len(view.walls) == 2 else 11
        step = (right - left - 20) / count
        boxes = [(left + 6 + step * k, at.floor + 3, left + 14 + step * k, at.ground) for k in range(count + 1)]
        items += [rectangle(left, at.floor, right, at.floor + 3, "wood")]
        items += [rectangle(*box, "wood_cut") for box in boxes]
    for place in (*view.far, view.out):
        x = to_x(place)
        y = at.ground if view.below == "along" else at.ground - 8
        items.append(Polygon(((x, y), (x - 9, y + 13), (x + 9, y + 13)), "wall"))
        items.append(Line(((x, y), (x - 9, y + 13), (x + 9, y + 13), (x, y)), "ink"))
    return items


def _fitted(text, x, y, role, size, anchor, bold, room):
    """A label in its lane; its type shrinks to the least size before it is refused."""
    while text_width(text, size, bold) > room and size > 18:
        size -= 1
    if text_width(text, size, bold) > room:
        raise BadInput(f"the text {text!r} is too long for its place; shorten it, for example '360 plf'")
    return Label(text, x, y, role, size, anchor, bold)


def _texts(view, at, to_x, factor, frame):
    size, big = at.size, at.big
    width = parts.FRAMES[frame][0] - 2 * parts.MARGIN
    walls, far, before, together, below = at.lanes
    labels = [_fitted(view.floor_text, parts.MARGIN, at.loads, "force", size, "start", False, width / 2 - 8)]
    if view.above_text:
        labels.append(
            _fitted(view.above_text, 720 - parts.MARGIN, at.loads, "force", size, "end", False, width / 2 - 8)
        )
    items = []
    both = frame != "wide"  # in wide, what stays stands beside what was
    middles = (360,) if len(view.walls) == 1 else (190, 530)
    foot = {"across": at.ground - 8, "along": at.ground, "slab": at.floor + 12}[view.below]
    for wall, middle in zip(view.walls, middles):
        x = to_x(wall.position)
        labels.append(_fitted(wall.text, middle, walls, "force", big, "middle", True, 320))
        items.append(Line(((x, foot), (middle, walls - 0.8 * big - 3)), "leader"))
        items.append(parts.dot(x, foot, "ink_dot", 4))
    role = "governs" if view.uplift else "ink"
    if both:
        labels.append(_fitted(view.far_text, 360, far, role, size, "middle", view.uplift, width))
    else:
        labels.append(_fitted(view.far_text, 700, before, role, size, "end", view.uplift, 330))
    if both:
        labels.append(_fitted(view.before_text, 360, before, "ink", size, "middle", False, width))
    else:
        labels.append(_fitted(view.before_text, 20, before, "ink", size, "start", False, 330))
    labels += [
        _fitted(view.together_text, 360, together, "force", size, "middle", True, width),
        _fitted(view.below_text, 360, below, "ink", size, "middle", False, width),
    ]
    return items + labels


def _captions(view, factor, frame):
    scale = f"To one scale. Thick line: the joists' shape, {parts.factor_text(factor)}; {view.sag_text}."
    if frame == "wide":
        return [f"Joists' shape {parts.factor_text(factor)}: {view.sag_text}."]
    ghost = " Dashed grey: before." if view.previous or view.previous_sag else ""
    return [view.note, scale + ghost]


def _alt(view, factor):
    stands = {"across": "joists that run across it", "along": "joists that run along it", "slab": "a slab"}
    walls = " and ".join(wall.text for wall in view.walls)
    words = [
        f"{view.title}.",
        f"A floor in section with one wall out; {view.floor_text}"
        + (f", {view.above_text}" if view.above_text else ""),
        f". Temporary walls are shown as arrows only: {walls}, standing on {stands[view.below]}.",
        f"Then: {view.far_text}; {view.before_text}; {view.together_text}; {view.below_text}.",
        f"The joists' shape is drawn {parts.factor_text(factor)}: {view.sag_text}.",
        "The joists want to rise at the ringed walls." if view.uplift else "",
        view.note,
    ]
    return " ".join(word for word in words if word).replace(" .", ".").strip()
