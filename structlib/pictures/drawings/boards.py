"""Why depth beats width: two sections to one scale, and how far each one sags over the same span.

Every text has its own place; only thin leaders and the sections themselves move with a slider.
"""

from dataclasses import dataclass

from structlib.ground.refusals import BadInput, check_choice, check_number
from structlib.pictures.drawings import parts
from structlib.pictures.labels import Label, text_width, wrap
from structlib.pictures.scene import Curve, Dimension, Line, Polygon, Scene
from structlib.pictures.style import NOTE_SIZE

PLY_GAP = 3.0
# sag may take this share of the drawn span, the same in every frame, so that all print one factor
SAG_ROOM = 0.19


@dataclass(frozen=True)
class Board:
    """A section of one or more plies.

    ``ply_width``, ``depth`` [mm].
    """

    name: str
    plies: int
    ply_width: float
    depth: float
    width_text: str
    depth_text: str
    material_kind: str = "sawn"


@dataclass(frozen=True)
class BoardsView:
    """All that the drawing of two boards shows; texts are ready to print.

    ``span``, ``x``, ``reference_sag``, ``current_sag``, ``previous_sag``, ``camera_depth``, ``camera_sag`` [mm].
    """

    title: str
    reference: Board
    current: Board
    wood_text: str
    strength_text: str
    stiffness_text: str
    span: float
    span_text: str
    x: tuple
    reference_sag: tuple
    current_sag: tuple
    reference_sag_text: str
    current_sag_text: str
    exaggeration: float = 40.0
    previous: Board | None = None
    previous_sag: tuple = ()
    note: str = ""
    camera_depth: float = 0.0
    camera_sag: float = 0.0


@dataclass(frozen=True)
class _Places:
    """Where things stand in one frame, in viewBox units."""

    reference: tuple  # middle and room of the reference section
    current: tuple  # middle and room of the current section
    past: float  # how far the depth of the current section may reach
    top: float  # top and bottom of the deepest section
    base: float
    name: float  # baseline of the names
    ratios: tuple  # for each ratio: middle, baseline of its word, baseline of its number
    ratio_size: tuple
    span: tuple  # left and right end of the drawn span, its height
    factor: tuple  # where the factor is printed: x, baseline, anchor
    sags: tuple  # for each sag, current first: x, baseline of its first line, anchor, room
    size: float
    named: tuple  # where on the span the sags are named, current first
    captions: int


_PLACES = {
    "page": _Places(
        reference=(160, 84),
        current=(474, 266),
        past=716,
        top=78,
        base=342,
        name=402,
        ratios=((268, 136, 160), (268, 214, 238), (268, 292, 316)),
        ratio_size=(18, 22),
        span=(60, 660, 462),
        factor=(360, 446, "middle"),
        named=(0.34, 0.66),
        sags=((20, 622, "start", 400), (700, 622, "end", 280)),
        size=20,
        captions=3,
    ),
    "wide": _Places(
        reference=(126, 30),
        current=(332, 124),
        past=504,
        top=84,
        base=262,
        name=322,
        ratios=((208, 104, 126), (208, 166, 188), (208, 228, 250)),
        ratio_size=(18, 20),
        span=(524, 688, 118),
        factor=(606, 100, "middle"),
        named=(0.2, 0.9),
        sags=((506, 198, "start", 200), (706, 262, "end", 200)),
        size=20,
        captions=2,
    ),
    "tall": _Places(
        reference=(164, 84),
        current=(452, 312),
        past=716,
        top=140,
        base=470,
        name=546,
        ratios=((130, 612, 656), (360, 612, 656), (590, 612, 656)),
        ratio_size=(24, 40),
        span=(60, 660, 780),
        factor=(360, 752, "middle"),
        named=(0.34, 0.66),
        sags=((20, 960, "start", 340), (700, 960, "end", 320)),
        size=26,
        captions=4,
    ),
}


def draw_boards(view, frame="page"):
    r"""Draw two sections side by side and their sag over the same span, all to one scale.

    Examples
    --------
    >>> pair = Board("2-2x6", 2, 38.1, 139.7, "3 in", "5 1/2 in")
    >>> one = Board("2x12", 1, 38.1, 285.75, "1 1/2 in", "11 1/4 in")
    >>> view = BoardsView("Same wood, 4.3 times as stiff", pair, one, "wood 1.02 x", "strength 2.1 x",
    ...                   "stiffness 4.3 x", 3657.6, "12'-0\"", (0, 1828.8, 3657.6), (0, 16.0, 0),
    ...                   (0, 3.74, 0), "0.63 in", "0.15 in")
    >>> draw_boards(view).title
    'Same wood, 4.3 times as stiff'
    """
    check_choice("frame", frame, parts.FRAMES)
    _check(view)
    (width, height), at = parts.FRAMES[frame], _PLACES[frame]
    shapes, factor = _shapes(view, at)
    texts = [view.note, _scale_text(view, factor)]
    # a film in wide says with its picture what the note says in words
    shown = texts[1:] if frame == "wide" else texts
    items = (
        parts.still_group("paper", [parts.paper(width, height)]),
        *_sections(view, at, frame),
        *shapes,
        *parts.caption_labels(shown, frame, at.captions),
        *parts.title_labels(view.title, frame),
    )
    caption = " ".join(text for text in texts if text)
    return Scene(width, height, items, view.title, caption, _alt(view, factor))


def _check(view):
    boards = [("reference", view.reference), ("current", view.current)]
    if view.previous:
        boards.append(("previous", view.previous))
    for name, board in boards:
        parts.check_length(f"depth of the {name} section", board.depth)
        parts.check_length(f"ply width of the {name} section", board.ply_width)
        check_number(f"plies of the {name} section", board.plies, low=1, high=8, hint="for example 2")
        check_choice("material kind", board.material_kind, parts.MATERIALS)
    parts.check_length("span", view.span)
    parts.check_length("camera depth", view.camera_depth, low_allowed=True)
    parts.check_length("camera sag", view.camera_sag, low_allowed=True)
    check_number("exaggeration", view.exaggeration, low=0, high=1000, low_allowed=False, hint="for example 40")
    parts.check_pairs("reference sag", view.x, view.reference_sag)
    parts.check_pairs("current sag", view.x, view.current_sag)
    if len(view.previous_sag):
        parts.check_pairs("previous sag", view.x, view.previous_sag)


def _boxes(board, middle, base, scale):
    wide = board.ply_width * scale
    left = middle - (board.plies * wide + (board.plies - 1) * PLY_GAP) / 2
    return [
        (left + k * (wide + PLY_GAP), base - board.depth * scale, left + k * (wide + PLY_GAP) + wide, base)
        for k in range(board.plies)
    ]


def _scale(view, at):
    """The scale of both sections: the camera decides, until a section is too large for its place."""
    rights = [view.current] + ([view.previous] if view.previous else [])
    scales = [(at.base - at.top) / max(view.camera_depth, *(b.depth for b in (view.reference, *rights)))]
    for boards, (_, room) in (([view.reference], at.reference), (rights, at.current)):
        scales += [(room - PLY_GAP * (board.plies - 1)) / (board.plies * board.ply_width) for board in boards]
    return min(scales)


def _sections(view, at, frame):
    scale, base = _scale(view, at), at.base
    items, labels = [], []
    for board, (middle, _), way in ((view.reference, at.reference, -1), (view.current, at.current, 1)):
        boxes = _boxes(board, middle, base, scale)
        left, top, right = boxes[0][0], boxes[0][1], boxes[-1][2]
        items += (
            [parts.rectangle(*box, "steel") for box in boxes]
            if board.material_kind == "steel"
            else parts.wood_row(boxes, board.material_kind, rings=True)
        )
        edge = left if way < 0 else right
        past = edge + 26 * way + text_width(board.depth_text, NOTE_SIZE) * way
        if not 4 <= past <= at.past:
            raise BadInput(f"the depth text {board.depth_text!r} is too long; shorten it, for example '9 1/4 in'")
        items += [
            Line(((left - 20, base), (right + 20, base)), "ink"),
            Dimension((edge, top), (edge, base), 18 * way, board.depth_text, NOTE_SIZE, beside=True),
            Dimension((left, base), (right, base), 14, board.width_text, NOTE_SIZE, beside=True),
        ]
        labels += _name(board.name, middle, at.name, 26 if frame == "tall" else 20, at.reference[0] - 10)
    if view.previous and view.previous != view.current:
        items += [
            Line(((a, b), (c, b), (c, d), (a, d), (a, b)), "ghost")
            for a, b, c, d in _boxes(view.previous, at.current[0], base, scale)
        ]
    return [*items, *_ratios(view, at, _boxes(view.current, at.current[0], base, scale), frame), *labels]


def _name(name, middle, y, size, half):
    if text_width(name, size, bold=True) > 2 * half:
        size = 18
    if text_width(name, size, bold=True) > 2 * half:
        raise BadInput(f"the name {name!r} is too long; shorten it, for example '2-2x6'")
    return [Label(name, middle, y, "ink", size, "middle", bold=True)]


def _ratios(view, at, boxes, frame):
    """What changed, each ratio in its place: the area at the face, the strength at the outermost fibre."""
    base, left, top = at.base, boxes[0][0], boxes[0][1]
    labels, reach = [], []
    for text, (x, word_y, number_y) in zip((view.wood_text, view.strength_text, view.stiffness_text), at.ratios):
        word, _, number = text.partition(" ")
        small, large = at.ratio_size
        half = max(text_width(word, small), text_width(number, large, bold=True)) / 2
        room = {"page": 60, "wide": 54, "tall": 110}[frame]
        if half > room:
            raise BadInput(f"the text {text!r} is too long; shorten it, for example 'strength 2.1 x'")
        labels += [
            Label(word, x, word_y, "ink", small, "middle"),
            Label(number or "-", x, number_y, "ink", large, "middle", bold=True),
        ]
        reach.append((x + room - 6, (word_y + number_y) / 2 - 6))
    face = ((left + boxes[0][2]) / 2, (top + base) / 2)
    items = [Line(((left, base), (boxes[-1][2], base)), "governs")]
    if frame != "tall":
        items += [
            Line((reach[0], face), "leader"),
            parts.dot(*face, "ink_dot", 4),
            Line((reach[1], (left - 4, base)), "leader"),
        ]
    return items + labels


def _shapes(view, at):
    left, right, top = at.span
    scale = (right - left) / view.span
    sags = [*map(float, view.reference_sag), *map(float, view.current_sag), view.camera_sag]
    factor = parts.fitting_factor(view.exaggeration, max(map(abs, sags)) / view.span, SAG_ROOM)
    xs = [left + float(x) * scale for x in view.x]
    step = scale * factor
    lowest = top + SAG_ROOM * (right - left) + 1
    items = [*_supports(left, right, top), Line(((left, top), (right, top)), "guide")]
    if len(view.previous_sag):
        points = [(x, top + float(s) * step) for x, s in zip(xs, view.previous_sag)]
        if max(y for _, y in points) <= lowest:
            items.append(Curve(*zip(*points), "ghost"))
    x, y, anchor = at.factor
    labels = [Label(f"sag × {factor:g}", x, y, "moved", at.size, anchor, bold=True)]
    for board, sag, text, role, side, place in (
        (view.reference, view.reference_sag, view.reference_sag_text, "ink", at.named[1], at.sags[1]),
        (view.current, view.current_sag, view.current_sag_text, "moved", at.named[0], at.sags[0]),
    ):
        heights = [top + float(s) * step for s in sag]
        items.append(Curve(xs, heights, "reference" if role == "ink" else "moved"))
        block = _sag_lines(f"{board.name} sags {text}", role, place, at.size)
        labels += block
        k = min(range(len(xs)), key=lambda i: abs(xs[i] - left - side * (right - left)))
        box = block[0].box()
        items.append(
            Line(
                ((xs[k], heights[k]), (box[0] + 60 if place[2] == "start" else box[2] - 60, box[1] - 1)),
                "leader",
            )
        )
    return items + labels, factor


def _sag_lines(text, role, place, size):
    x, y, anchor, room = place
    bold = role == "moved"
    lines = wrap(text, room, size, bold)
    if len(lines) > 2 or max(text_width(line, size, bold) for line in lines) > room:
        raise BadInput(f"the text {text!r} is too long; shorten the name of the board, for example '2-2x6'")
    return [Label(line, x, y + 1.15 * size * k, role, size, anchor, bold) for k, line in enumerate(lines)]


def _supports(left, right, top):
    items = []
    for x in (left, right):
        items += [
            Polygon(((x, top), (x - 11, top + 19), (x + 11, top + 19)), "wood_cut"),
            Line(((x - 20, top + 19), (x + 20, top + 19)), "ground"),
        ]
    return items


def _scale_text(view, factor):
    ghost = " Dashed grey: before the change." if view.previous or len(view.previous_sag) else ""
    return f"Sections to one scale. Span {view.span_text}; both sags drawn {parts.factor_text(factor)}.{ghost}"


def _alt(view, factor):
    one, other = view.reference, view.current
    words = [
        f"{view.title}.",
        f"Two sections to one scale: {one.name}, {one.width_text} wide and {one.depth_text} deep;",
        f"{other.name}, {other.width_text} wide and {other.depth_text} deep.",
        f"{other.name} against {one.name}: {view.wood_text}, {view.strength_text}, {view.stiffness_text}.",
        f"Over a span of {view.span_text}, {one.name} sags {view.reference_sag_text}",
        f"and {other.name} {view.current_sag_text}; both drawn {parts.factor_text(factor)}.",
        view.note,
    ]
    return " ".join(words).strip()
