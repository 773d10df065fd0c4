"""What keeps a roof from spreading: a section through a pair of rafters, what holds it, and how it bends.

The scale never changes while sliders move, and every text has its own place. The left half shows how the
rafter bends, the right half the same with the bending drawn along it.
"""

import math
from dataclasses import dataclass, replace

from structlib.ground.refusals import BadInput, check_choice, check_number
from structlib.ground.units import ft, inch
from structlib.pictures.drawings import parts
from structlib.pictures.labels import Label, text_width
from structlib.pictures.scene import Arrow, Curve, Dimension, Line, Polygon, Scene, rectangle
from structlib.pictures.style import NOTE_SIZE

HOLDS = ("tie", "raised tie", "ridge beam", "nothing")
WALL, WALL_HEIGHT, TIE_DEPTH = 5.5 * inch, 5 * ft, 5.5 * inch
#: How far a drawn movement may go, in viewBox units; the same in every frame, so that all print one factor.
MOVE_ROOM = 24.0


@dataclass(frozen=True)
class RoofPair:
    """The outline of a rafter pair: what the ghost is drawn from.

    ``half_span``, ``rise`` [mm].
    """

    half_span: float
    rise: float
    hold: str
    height_fraction: float = 0.0


@dataclass(frozen=True)
class RoofStat:
    """One number below the picture."""

    word: str
    number: str
    role: str = "ink"


@dataclass(frozen=True)
class RoofView:
    """All that the section through the roof shows; texts are ready to print.

    ``rafter_depth``, ``ridge_width``, ``ridge_depth``, ``shape``, ``right_shape``, ``camera`` [mm].
    """

    title: str
    pair: RoofPair
    rafter_depth: float
    ridge_width: float
    ridge_depth: float
    load_text: str
    push: float
    stats: tuple
    width_text: str
    shape: tuple = ()
    moment: tuple = ()
    mark: tuple | None = None
    exaggeration: float = 40.0
    note: str = ""
    previous: RoofPair | None = None
    loaded: str = "both"
    right_shape: tuple = ()
    post: bool = False
    camera: float = 16 * ft


@dataclass(frozen=True)
class _Places:
    """Where things stand in one frame, in viewBox units."""

    middle: float  # line of the ridge
    reach: float  # half of the widest house
    eave: float  # height of the eaves
    load: tuple  # baseline of the load text, its x
    mark: tuple  # where the governing check is named: x, baseline
    stats: tuple  # for each number: x, baseline of its word, room
    sizes: tuple  # type of word and number
    captions: int
    shows_width: bool = True


_PLACES = {
    "page": _Places(
        360,
        270,
        384,
        (20, 92),
        (700, 92),
        ((20, 534, 330), (372, 534, 330), (20, 592, 330), (372, 592, 330)),
        (18, 22),
        3,
    ),
    "wide": _Places(
        222,
        160,
        272,
        (20, 84),
        (474, 108),
        ((486, 118, 220), (486, 178, 220), (486, 238, 220), (486, 298, 220)),
        (18, 20),
        1,
    ),
    "tall": _Places(
        360,
        270,
        540,
        (20, 156),
        (700, 196),
        ((20, 800, 330), (372, 800, 330), (20, 960, 330), (372, 960, 330)),
        (24, 40),
        4,
    ),
}


class _At:
    """Turns lengths of the house into places of one frame."""

    def __init__(self, view, frame):
        self.places = _PLACES[frame]
        self.scale = self.places.reach / view.camera
        self.middle, self.eave = self.places.middle, self.places.eave

    def point(self, half, x, y):
        return self.middle + (x - half) * self.scale, self.eave - y * self.scale


def draw_roof(view, frame="page"):
    """Draw a section through a roof, what holds it, how it spreads and bends.

    Examples
    --------
    >>> view = RoofView("The tie is pulled with 600 lb", RoofPair(3657.6, 1828.8, "tie"), 184.15, 19.05,
    ...     184.15,
    ...                 "50 psf on plan", 0.3, (RoofStat("pull in the tie", "600 lb", "force"),), "24 ft")
    >>> draw_roof(view).title
    'The tie is pulled with 600 lb'
    """
    check_choice("frame", frame, parts.FRAMES)
    _check(view)
    width, height = parts.FRAMES[frame]
    at = _At(view, frame)
    moved, factor = _moved(view, at)
    texts = [view.note, _scale_text(view, factor)]
    shown = texts[1:] if frame == "wide" else texts
    items = (
        parts.still_group("paper", [parts.paper(width, height)]),
        *_ghost(view, at),
        *_walls(view, at),
        *_bending(view, at),
        *_hold(view, at),
        *_rafters(view, at),
        *_ridge(view, at),
        *_loads(view, at),
        *_pushes(view, at),
        *moved,
        *_mark(view, at),
        *_stats(view, at),
        *parts.caption_labels(shown, frame, at.places.captions),
        *parts.title_labels(view.title, frame),
    )
    caption = " ".join(text for text in texts if text)
    return Scene(width, height, items, view.title, caption, _alt(view, caption))


def _check(view):
    for pair in (view.pair, view.previous):
        if pair is None:
            continue
        parts.check_length("half of the house width", pair.half_span, low=300.0)
        parts.check_length("rise", pair.rise, low=100.0)
        check_choice("what holds the roof", pair.hold, HOLDS)
        check_number("height of the tie", pair.height_fraction, low=0, high=0.95, hint="a share of the rise")
    for name in ("rafter_depth", "ridge_width", "ridge_depth", "camera"):
        parts.check_length(name.replace("_", " "), getattr(view, name))
    check_choice("loaded side", view.loaded, ("both", "right"))
    check_number("share of the push arrow", view.push, low=0, high=1)
    check_number("exaggeration", view.exaggeration, low=0, high=1000, low_allowed=False, hint="for example 40")
    if len(view.stats) > 4:
        raise BadInput(f"there is room for four numbers below the roof, got {len(view.stats)}")
    if view.pair.half_span > view.camera * (1 + 1e-9):
        raise BadInput("the house is wider than the picture has room for; set a larger camera")


def _heights(view, at):
    """Depth of a rafter measured plumb, as it stands in the section."""
    pair = view.pair
    return view.rafter_depth * math.hypot(pair.half_span, pair.rise) / pair.half_span * at.scale


def _mirrored(points, at):
    return tuple((2 * at.middle - x, y) for x, y in points)


def _eaves(view, at, overhang=1 * ft):
    """The left rafter's lower edge: tail, eave, ridge."""
    pair = view.pair
    drop = overhang * pair.rise / pair.half_span
    return [
        at.point(pair.half_span, -overhang, -drop),
        at.point(pair.half_span, 0.0, 0.0),
        at.point(pair.half_span, pair.half_span, pair.rise),
    ]


def _rafters(view, at):
    tail, _, ridge = _eaves(view, at)
    thick = _heights(view, at)
    left = (tail, ridge, (ridge[0], ridge[1] - thick), (tail[0], tail[1] - thick))
    return [Polygon(left, "wood"), Polygon(_mirrored(left, at), "wood")]


def _walls(view, at):
    half = view.pair.half_span
    left, top = at.point(half, 0.0, 0.0)
    ground = at.eave + WALL_HEIGHT * at.scale
    wide = WALL * at.scale
    right = 2 * at.middle - left
    items = [
        rectangle(left, top, left + wide, ground, "wall"),
        rectangle(right - wide, top, right, ground, "wall"),
    ]
    items += [Line(((x, top), (x, ground)), "quiet") for x in (left, left + wide, right - wide, right)]
    reach = at.places.reach + 24
    items += parts.ground_line(at.middle - reach, at.middle + reach, ground)
    if at.places.shows_width:
        items.append(Dimension((left, ground), (right, ground), 20, view.width_text, NOTE_SIZE, beside=True))
    return items


def _tie_line(pair, at):
    """Left end, right end and height of the tie of a pair."""
    share = pair.height_fraction if pair.hold == "raised tie" else 0.0
    left, y = at.point(pair.half_span, share * pair.half_span, share * pair.rise)
    return left, 2 * at.middle - left, y


def _hold(view, at):
    pair = view.pair
    if pair.hold in ("tie", "raised tie"):
        left, right, y = _tie_line(pair, at)
        deep = TIE_DEPTH * at.scale
        items = [rectangle(left, y - deep, right, y, "wood")]
        length = min(46.0, 0.3 * (right - left))
        for start, way in ((left + 6, 1), (right - 6, -1)):
            items.append(Arrow((start, y + 11), (start + way * length, y + 11), "force_big", 12))
        return items
    if pair.hold == "ridge beam" and view.post:
        x, top = at.point(pair.half_span, pair.half_span, pair.rise)
        ground = at.eave + WALL_HEIGHT * at.scale
        top += view.ridge_depth * at.scale
        half = 0.5 * 5.5 * inch * at.scale
        return [
            rectangle(x - half, top, x + half, ground, "wood_cut"),
            Arrow((x, ground - 54), (x, ground - 6), "force_big", 13),
        ]
    return []


def _ridge(view, at):
    pair = view.pair
    x, y = at.point(pair.half_span, pair.half_span, pair.rise)
    half, top = view.ridge_width * at.scale / 2, y - _heights(view, at)
    deep = view.ridge_depth * at.scale
    box = (x - half, y, x + half, y + deep) if pair.hold == "ridge beam" else (x - half, top, x + half, top + deep)
    return [rectangle(*box, "wood_cut")]


def _loads(view, at):
    pair, thick = view.pair, _heights(view, at)
    count = max(2, round(pair.half_span * at.scale / 30))
    arrows = []
    for k in range(count):
        share = (k + 0.5) / count
        x, y = at.point(pair.half_span, share * pair.half_span, share * pair.rise)
        for place in (x, 2 * at.middle - x) if view.loaded == "both" else (2 * at.middle - x,):
            arrows.append(Arrow((place, y - thick - 17), (place, y - thick - 2), "force", 6))
    x, y = at.places.load
    return [*arrows, Label(view.load_text, x, y, "force", at.places.sizes[0])]


def _pushes(view, at):
    if view.pair.hold not in ("tie", "nothing") or view.push <= 0:
        return []
    left, y = at.point(view.pair.half_span, 0.0, 0.0)
    length = 14 + 34 * view.push
    start, role = left - 5, "governs" if view.pair.hold == "nothing" else "force_big"
    out = Arrow((start, y + 12), (start - length, y + 12), "force_big", 13)
    arrows = [
        out,
        Arrow((2 * at.middle - start, y + 12), (2 * at.middle - start + length, y + 12), "force_big", 13),
    ]
    if role == "governs":
        arrows += [
            parts.ring((min(x, x2), y + 2, max(x, x2), y + 22), 4)
            for x, x2 in ((start, start - length), (2 * at.middle - start, 2 * at.middle - start + length))
        ]
    return arrows


def _moved(view, at):
    """Both rafters as they bend and spread, and the leaning walls; and the factor that is printed."""
    if not view.shape:
        return [], view.exaggeration
    other = view.right_shape or view.shape
    largest = max(math.hypot(right, up) for _, _, right, up in (*view.shape, *other))
    page = _PLACES["page"].reach / view.camera
    factor = parts.fitting_factor(view.exaggeration, largest * page, MOVE_ROOM)
    half, lift = view.pair.half_span, _heights(view, at) / 2
    base = at.point(half, 0.0, -WALL_HEIGHT)
    items = []
    for shape, placed in ((view.shape, tuple), (other, lambda points: _mirrored(points, at))):
        points = []
        for x, y, right, up in shape:
            px, py = at.point(half, x + factor * right, y + factor * up)
            points.append((px, py - lift))
        items.append(Curve(*zip(*placed(points)), "moved"))
        x, y, right, up = shape[0]
        if factor * abs(right) * at.scale > 2:
            top = at.point(half, x + factor * right, y + factor * up)
            items.append(Line(placed((base, top)), "moved"))
    return items, factor


def _bending(view, at):
    """The bending drawn on the inner side of the right rafter, to fit."""
    if not view.moment:
        return []
    pair = view.pair
    run, rise = pair.half_span * at.scale, pair.rise * at.scale
    length = math.hypot(run, rise)
    full = 0.16 * length
    inner = (-rise / length, run / length)  # square to the right rafter, into the room
    outline, foot = [], []
    for share, size in view.moment:
        x, y = at.point(pair.half_span, share * pair.half_span, share * pair.rise)
        x = 2 * at.middle - x
        foot.append((x, y))
        outline.append((x + inner[0] * full * size, y + inner[1] * full * size))
    return [Polygon((*foot, *outline[::-1]), "moment")]


def _mark(view, at):
    if view.mark is None:
        return []
    share, text = view.mark
    pair = view.pair
    x, y = at.point(pair.half_span, share * pair.half_span, share * pair.rise)
    x, y = 2 * at.middle - x, y - _heights(view, at) / 2
    place, baseline = at.places.mark
    room = 330
    if text_width(text, 20, bold=True) > room:
        raise BadInput(f"the text {text!r} is too long to stand at its place; shorten it")
    box = (x - 9, y - 9, x + 9, y + 9)
    elbow = (max(x, place - 40), baseline + 8)
    return [
        parts.ring(box, 3),
        Line(((x + 6, y - 12), elbow), "leader"),
        Label(text, place, baseline, "governs", 26 if at.places.sizes[1] > 30 else 20, "end", bold=True),
    ]


def _stats(view, at):
    labels = []
    small, large = at.places.sizes
    for stat, (x, y, room) in zip(view.stats, at.places.stats):
        for text, size, bold in ((stat.word, small, False), (stat.number, large, True)):
            if text_width(text, size, bold) > room:
                raise BadInput(f"the text {text!r} is too long to stand below the roof; shorten it")
        labels += [
            Label(stat.word, x, y, "quiet", small),
            Label(stat.number, x, y + 1.25 * large, stat.role, large, bold=True),
        ]
    return labels


def _ghost(view, at):
    before = view.previous
    if before is None or before == view.pair or before.half_span > view.camera * (1 + 1e-9):
        return []
    old = replace(view, pair=before)
    tail, _, ridge = _eaves(old, at)
    thick = _heights(old, at)
    left = ((tail[0], tail[1] - thick), (ridge[0], ridge[1] - thick), ridge, tail)
    items = [Line(left, "ghost"), Line(_mirrored(left, at), "ghost")]
    if before.hold in ("tie", "raised tie"):
        x, right, y = _tie_line(before, at)
        items.append(Line(((x, y), (right, y)), "ghost"))
    return items


def _scale_text(view, factor):
    if not view.shape and view.pair.hold != "nothing":
        return "To scale. Nothing weighs on it, so nothing moves."
    if not view.shape:
        return "To scale. No movement is drawn: it would not stop."
    if view.loaded == "right":
        return f"To scale, movement × {factor:g}. Arrows: snow, right side only. Bending to fit."
    return f"To scale, movement × {factor:g}. Right half: bending along the rafter, to fit."


def _alt(view, caption):
    pair = view.pair
    held = {
        "tie": "a tie at the eaves",
        "raised tie": f"a tie {100 * pair.height_fraction:.0f} % of the way up",
        "ridge beam": "a ridge beam" + (" on a post" if view.post else ""),
        "nothing": "nothing",
    }[pair.hold]
    words = [f"{view.title}. Section through a pair of rafters, {view.width_text} wide, held by {held}."]
    words.append(f"Load: {view.load_text}.")
    words += [f"{stat.word}: {stat.number}." for stat in view.stats]
    if view.mark:
        words.append(f"Marked on the rafter: {view.mark[1]}.")
    return " ".join([*words, caption])
