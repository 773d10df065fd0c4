"""The end of a beam on its seat: the two faces that press on each other, from the side and from above.

The beam's end and the level of the seat never move, and the scale is fixed: what moves with a slider is
the inner edge of the support, the depth of the beam and the height of the hatched zones.
"""

from dataclasses import dataclass

from structlib.ground.refusals import BadInput, check_choice, check_number
from structlib.ground.units import inch
from structlib.pictures.drawings import parts
from structlib.pictures.labels import Label, text_width
from structlib.pictures.scene import Arrow, Dimension, Grain, Line, Polygon, Scene, hatch, rectangle

BELOW = ("plate", "post", "masonry")
STUD = 1.5 * inch
# length of the line that shows how a fact is drawn
SAMPLE = 19.0
# the support is drawn this far out past the beam's end
PAST_END = 2.0 * inch
# the longest seat that the picture has room for
LONGEST_SEAT = 12.0 * inch


@dataclass(frozen=True)
class Face:
    """One of the two faces that press on each other."""

    word: str
    text: str
    share: float
    governs: bool


@dataclass(frozen=True)
class PreviousSeat:
    """The seat before the last change.

    ``seat``, ``depth``, ``width`` [mm].
    """

    seat: float
    depth: float
    width: float


@dataclass(frozen=True)
class SeatView:
    """All that the drawing of a seat shows; texts are ready to print.

    ``seat``, ``depth``, ``ply_width``, ``needed``, ``least`` [mm].
    """

    title: str
    seat: float
    depth: float
    plies: int
    ply_width: float
    material_kind: str
    below: str
    push: float
    push_text: str
    seat_text: str
    width_text: str
    area_text: str
    depth_text: str
    faces: tuple
    needed: float | None
    needed_text: str
    least: float | None
    least_text: str
    full_text: str
    stopped: bool = False
    previous: PreviousSeat | None = None


@dataclass(frozen=True)
class _Places:
    """Where things stand in one frame, in viewBox units."""

    scale: float  # units by mm
    end: float  # the beam's end
    level: float  # where beam and support meet
    top: float  # how far up the beam is drawn
    reach: float  # how far right the beam is drawn
    bottom: float  # lower end of the support
    drop: float  # from there to the dimension line
    plan: float  # middle of the view from above
    plan_word: float  # baseline of its name
    push: tuple  # left edge, baselines of word and number
    faces: tuple  # for each face: left edge, baselines of word and number
    facts: tuple  # left edge and baselines of what is needed, least and in contact
    sizes: tuple  # words, numbers
    captions: int


_PLACES = {
    "page": _Places(
        scale=16 / inch,
        end=170,
        level=318,
        top=92,
        reach=700,
        bottom=410,
        drop=18,
        plan=556,
        plan_word=506,
        push=(20, 246, 272),
        faces=((404, 358, 386), (404, 422, 450)),
        facts=(404, (510, 546, 582)),
        sizes=(20, 26),
        captions=2,
    ),
    "wide": _Places(
        scale=9 / inch,
        end=150,
        level=190,
        top=76,
        reach=700,
        bottom=232,
        drop=10,
        plan=312,
        plan_word=356,
        push=(20, 132, 156),
        faces=((296, 222, 247), (296, 280, 305)),
        facts=(492, (228, 262, 296)),
        sizes=(18, 22),
        captions=1,
    ),
    "tall": _Places(
        scale=22 / inch,
        end=160,
        level=470,
        top=136,
        reach=700,
        bottom=600,
        drop=24,
        plan=786,
        plan_word=700,
        push=(20, 372, 410),
        faces=((438, 528, 570), (438, 628, 670)),
        facts=(60, (958, 1008, 1058)),
        sizes=(22, 38),
        captions=4,
    ),
}


def draw_seat(view, frame="page"):
    """Draw the end of a beam on its seat from the side, and the area in contact from above.

    Examples
    --------
    >>> face = Face("crushing the plate", "92 %", 0.92, True)
    >>> view = SeatView("The plate below is crushed first: 92 % used", 76.2, 234.95, 2, 38.1, "sawn", "plate",
    ...                 0.3, "3,520 lb", "3 in", "3 in", "9.00 in²", "9 1/4 in", (face,), 70.1, "2.76 in",
    ...                 38.1, "1 1/2 in", "1 1/2 in")
    >>> draw_seat(view).title
    'The plate below is crushed first: 92 % used'
    """
    check_choice("frame", frame, parts.FRAMES)
    _check(view)
    (width, height), at = parts.FRAMES[frame], _PLACES[frame]
    caption = _caption(view, frame)
    items = (
        parts.still_group("paper", [parts.paper(width, height)]),
        *_side(view, at),
        *_above(view, at),
        *_push(view, at),
        *_faces(view, at),
        *_facts(view, at, frame),
        *parts.caption_labels([caption], frame, at.captions),
        *parts.title_labels(view.title, frame),
    )
    return Scene(width, height, items, view.title, caption, _alt(view))


def _check(view):
    told = [name for name in ("needed", "least") if getattr(view, name) is not None]
    for name in ("seat", "depth", "ply_width", *told):
        # a seat that is needed may be longer than any house has; it is told and not drawn
        parts.check_length(name.replace("_", " "), getattr(view, name), high=1e7, low_allowed=name == "needed")
    parts.check_length("seat", view.seat, high=LONGEST_SEAT * (1 + 1e-6))
    check_number("plies", view.plies, low=1, high=8, hint="for example 2")
    check_number("length of the arrow", view.push, low=0, high=1, hint="for example 0.5")
    check_choice("material kind", view.material_kind, ("sawn", "lvl"))
    check_choice("what the beam sits on", view.below, BELOW)
    if len(view.faces) > 2:
        raise BadInput(f"a seat has at most two faces to tell about, got {len(view.faces)}")


def _inner(view, at):
    return at.end + view.seat * at.scale


def _jagged(at, top, cut_top):
    """Outline of the beam: jagged where it runs on out of the picture."""
    steps = 8
    right = [(at.reach - (6 if k % 2 else 0), at.level + (top - at.level) * k / steps) for k in range(steps + 1)]
    upper = []
    if cut_top:
        upper = [(at.reach + (at.end - at.reach) * k / 20, top + (6 if k % 2 else 0)) for k in range(1, 20)]
    return ((at.end, at.level), *right, *upper, (at.end, top))


def _side(view, at):
    """Beam and support from the side."""
    wanted = at.level - view.depth * at.scale
    cut, top = wanted < at.top, max(wanted, at.top)
    box = (at.end, top, at.reach, at.level)
    grain = (
        Grain(box, "layers", max(2, min(12, int((at.level - top) / 9))))
        if view.material_kind == "lvl"
        else Grain(box, "along", max(1, min(6, int((at.level - top) / 24))))
    )
    items = [*_support(view, at), Polygon(_jagged(at, top, cut), "wood"), grain]
    if view.previous:
        inner = at.end + view.previous.seat * at.scale
        old = max(at.level - view.previous.depth * at.scale, at.top)
        if abs(view.previous.depth - view.depth) > 0.5:
            items.append(Line(((at.end, old), (at.reach, old)), "ghost"))
        if abs(view.previous.seat - view.seat) > 0.1:
            items.append(Line(((inner, at.level), (inner, at.bottom + 8)), "ghost"))
    inner = _inner(view, at)
    items.append(Dimension((at.end, at.bottom), (inner, at.bottom), at.drop, f"seat {view.seat_text}", beside=True))
    return items


def _support(view, at):
    inner, left = _inner(view, at), at.end - PAST_END * at.scale
    if view.below == "masonry":
        items = [rectangle(left, at.level, inner, at.bottom, "masonry")]
        count = 3
        for k in range(1, count):
            y = at.level + (at.bottom - at.level) * k / count
            items.append(Line(((left, y), (inner, y)), "quiet"))
        return items
    top = at.level + (STUD * at.scale if view.below == "plate" else 0)
    wide, boxes, right = STUD * at.scale, [], inner
    farthest = left if view.below == "plate" else at.end
    while right > farthest + 0.5:
        start = max(right - wide, left)
        boxes.append((start, top, right, at.bottom))
        right = start
    items = parts.wood_row(boxes, "sawn")
    if view.below == "plate":
        items += parts.wood((left, at.level, inner, top), "sawn")
    return items


def _zones(view, at):
    """The hatched zone of each face: as high as its share, the thickness of a plate when used up."""
    inner, full = _inner(view, at), STUD * at.scale
    found = []
    for face, way in zip(view.faces, (-1, 1)):
        share = 0.5 if view.stopped else min(max(face.share, 0.12), 1.0)
        reach = at.level + way * full * share
        found.append((at.end, min(at.level, reach), inner, max(at.level, reach)))
    return found


def _faces(view, at):
    items, labels = [], []
    zones = _zones(view, at)
    for face, box, (x, word_y, number_y) in zip(view.faces, zones, at.faces):
        strong = face.governs and not view.stopped
        role = "governs_thin" if strong else "bearing"
        items += hatch(box, spacing=7 if strong else 9, role=role)
        items.append(Line(((box[0], box[1]), (box[2], box[1]), (box[2], box[3]), (box[0], box[3]), box[:2]), role))
        middle = (box[1] + box[3]) / 2
        items.append(Line(((box[2] - 2, middle), (x - 6, word_y - 6)), "leader"))
        small, large = at.sizes
        colour = "governs" if strong else "ink"
        labels += [
            Label(face.word, x, word_y, colour, small, bold=strong),
            Label(face.text, x, number_y, colour, large, bold=True),
        ]
        if text_width(face.word, small, bold=strong) > 700 - x:
            raise BadInput(f"the text {face.word!r} is too long; for example 'crushing the plate'")
    strong = [box for face, box in zip(view.faces, zones) if face.governs and not view.stopped]
    for box in strong:
        items.append(parts.ring(box, grow=2.0))
    return [*items, *labels]


def _push(view, at):
    x, word_y, number_y = at.push
    middle = (at.end + _inner(view, at)) / 2
    tip = at.level - STUD * at.scale - 10
    tail = tip - (0.3 + 0.7 * view.push) * (at.level - at.top) * 0.42
    small, large = at.sizes[0], min(at.sizes[1], 22)
    return [
        Arrow((middle, tail), (middle, tip), "force_big", 16),
        Label("push", x, word_y, "force", small),
        Label(view.push_text, x, number_y, "force", large, bold=True),
    ]


def _above(view, at):
    """The plies from above, with the area in contact and what is needed of it."""
    wide = view.ply_width * at.scale
    top = at.plan - view.plies * wide / 2
    bottom, inner = at.plan + view.plies * wide / 2, _inner(view, at)
    reach = at.end + (LONGEST_SEAT + 1 * inch) * at.scale
    boxes = [(at.end, top + k * wide, reach, top + (k + 1) * wide) for k in range(view.plies)]
    items = parts.wood_row(boxes, view.material_kind)
    strong = any(face.governs for face in view.faces) and not view.stopped
    role = "governs_thin" if strong else "bearing"
    items += hatch((at.end, top, inner, bottom), spacing=9, role=role)
    items.append(Line(((at.end, top), (inner, top), (inner, bottom), (at.end, bottom), (at.end, top)), role))
    if view.previous and _moved(view):
        old, half = at.end + view.previous.seat * at.scale, view.previous.width * at.scale / 2
        # the old edge reaches past the plies, so that it is seen beside the hatching
        past = max(half, at.plan - top) + 12
        items.append(Line(((old, at.plan - past), (old, at.plan + past)), "ghost"))
        items.append(
            Line(
                (
                    (at.end, at.plan - half),
                    (old, at.plan - half),
                    (old, at.plan + half),
                    (at.end, at.plan + half),
                    (at.end, at.plan - half),
                ),
                "ghost",
            )
        )
    if _needed_fits(view) and not view.stopped:
        x = at.end + view.needed * at.scale
        items.append(Line(((x, top - 8), (x, bottom + 8)), "moved"))
    if view.least is not None:
        x = at.end + view.least * at.scale
        items.append(Line(((x, top - 14), (x, bottom + 14)), "limit"))
    return [
        *items,
        Dimension((at.end, top), (at.end, bottom), -16, view.width_text, beside=True),
        Label("from above", 20, at.plan_word - 10, "quiet", max(18, at.sizes[0] - 2)),
    ]


def _moved(view):
    before = view.previous
    return abs(before.seat - view.seat) > 0.1 or abs(before.width - view.plies * view.ply_width) > 0.1


def _needed_fits(view):
    return view.needed is not None and view.needed <= LONGEST_SEAT


def _facts(view, at, frame):
    x, baselines = at.facts
    size = 26 if frame == "tall" else at.sizes[0]
    rows = [(f"contact {view.area_text}", "")]
    if view.least is not None:
        rows.insert(0, (f"code's least {view.least_text}", "limit"))
    if not view.stopped and view.needed is not None:
        rows.insert(0, (f"needed {view.needed_text}", "moved" if _needed_fits(view) else ""))
    items = []
    for (text, role), y in zip(rows, baselines):
        if role:
            items.append(Line(((x, y - 0.33 * size), (x + SAMPLE, y - 0.33 * size)), role))
        items.append(Label(text, x + SAMPLE + 7, y, "ink", size))
        if text_width(text, size) > 708 - x - SAMPLE - 7:
            raise BadInput(f"the text {text!r} is too long; for example '2.76 in'")
    return items


def _caption(view, frame):
    ghost = " Dashed grey: before." if view.previous else ""
    if frame == "wide":
        return f"To scale, {view.depth_text} deep.{ghost}"
    if view.stopped:
        return f"To scale. The beam is {view.depth_text} deep. Hatched: where it presses.{ghost}"
    return (
        f"To scale. The beam is {view.depth_text} deep. A face is used up when its hatching is "
        f"{view.full_text} high."
        f"{ghost}"
    )


_BELOW_WORDS = {
    "plate": "a wood plate",
    "post": "the end grain of jack studs",
    "masonry": "masonry",
}


def _alt(view):
    plies = "one ply" if view.plies == 1 else f"{view.plies} plies"
    words = [
        f"{view.title}.",
        (
            f"The end of a beam of {plies}, {view.depth_text} deep and {view.width_text} wide, sits on"
            f" {_BELOW_WORDS[view.below]} over {view.seat_text}."
        ),
        f"It pushes down with {view.push_text} on {view.area_text} in contact.",
        *(
            f"{face.word[0].upper()}{face.word[1:]} {face.text}{', which governs' if face.governs else ''}."
            for face in view.faces
        ),
    ]
    if not view.stopped and view.needed is not None:
        words.append(f"Seat needed: {view.needed_text}.")
    if view.least is not None:
        words.append(f"The code's least: {view.least_text}.")
    return " ".join(words)
