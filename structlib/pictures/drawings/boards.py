"""Why depth beats width: two sections to one scale, and how far each one sags over the same span."""

from dataclasses import dataclass

from structlib.ground.refusals import BadInput, check_choice, check_number
from structlib.pictures.drawings import parts
from structlib.pictures.labels import Callout, Label, place_callouts, text_width
from structlib.pictures.scene import Curve, Dimension, Line, Polygon, Scene
from structlib.pictures.style import NOTE_SIZE

SECTION_TOP = 96.0
PLY_GAP = 5.0


@dataclass(frozen=True)
class Board:
    """A section of one or more plies.

    Parameters
    ----------
    name : str
        What it is called, for example ``"2-2x6"`` [-].
    plies : int
        Number of plies [-].
    ply_width : float
        Width of one ply [mm].
    depth : float
        Depth [mm].
    width_text : str
        Total width, for example ``"3 in"`` [-].
    depth_text : str
        Depth, for example ``"5 1/2 in"`` [-].
    material_kind : str
        ``"sawn"``, ``"lvl"``, ``"timber"`` or ``"steel"`` [-].
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

    Parameters
    ----------
    title : str
        The message, about 80 letters at most [-].
    reference : Board
        The section compared with, drawn on the left [-].
    current : Board
        The section chosen, drawn on the right [-].
    wood_text : str
        Ratio of areas, for example ``"wood 1.02 x"`` [-].
    strength_text : str
        Ratio of bending strength, for example ``"strength 2.1 x"`` [-].
    stiffness_text : str
        Ratio of stiffness, for example ``"stiffness 4.3 x"`` [-].
    span : float
        Span that both carry over [mm].
    span_text : str
        Span in the reader's units [-].
    x : tuple of float
        Places along the span, from 0 to the span [mm].
    reference_sag : tuple of float
        Sag of the reference, positive down [mm].
    current_sag : tuple of float
        Sag of the current section, positive down [mm].
    reference_sag_text : str
        Its largest sag, for example ``"0.63 in"`` [-].
    current_sag_text : str
        Its largest sag [-].
    exaggeration : float
        Factor by which both are drawn; a smaller round one is used and printed if it does not fit [-].
    previous : Board or None
        The current section before the last change [-].
    previous_sag : tuple of float
        Its sag, empty for none [mm].
    note : str
        A sentence for below the picture, for example what load it is [-].
    camera_depth : float
        Depth that the picture always has room for, so that the scale stays fixed [mm].
    camera_sag : float
        Sag that the picture always has room for [mm].
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


def draw_boards(view, frame="page"):
    """Draw two sections side by side and their sag over the same span, all to one scale.

    Parameters
    ----------
    view : BoardsView
        What is shown [-].
    frame : str
        ``"page"`` (beside sliders), ``"wide"`` (16:9) or ``"tall"`` (9:16) [-].

    Returns
    -------
    Scene
        The picture [-].

    Raises
    ------
    BadInput
        When a length, count or word makes no sense, or a text is too long to be shown.

    Examples
    --------
    >>> pair = Board("2-2x6", 2, 38.1, 139.7, "3 in", "5 1/2 in")
    >>> one = Board("2x12", 1, 38.1, 285.75, "1 1/2 in", "11 1/4 in")
    >>> view = BoardsView("Same wood, 4.3 times as stiff", pair, one, "wood 1.02 x", "strength 2.1 x",
    ...                   "stiffness 4.3 x", 3657.6, "12'-0\\"", (0, 1828.8, 3657.6), (0, 16.0, 0),
    ...                   (0, 3.74, 0), "0.63 in", "0.15 in")
    >>> draw_boards(view).title
    'Same wood, 4.3 times as stiff'
    """
    check_choice("frame", frame, parts.FRAMES)
    _check(view)
    width, height = parts.FRAMES[frame]
    base = SECTION_TOP + 0.31 * height
    section_labels, section_items = _sections(view, width, base)
    shape_labels, shape_items, factor = _shapes(view, width, height, base + 122)
    texts = [view.note, _scale_text(view, factor)]
    items = (
        parts.still_group("paper", [parts.paper(width, height)]),
        *section_items,
        *shape_items,
        *section_labels,
        *shape_labels,
        *parts.caption_labels(texts, width, height, 3),
        *parts.title_labels(view.title, width),
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
    check_number(
        "exaggeration", view.exaggeration, low=0, high=1000, low_allowed=False, hint="for example 40"
    )
    parts.check_pairs("reference sag", view.x, view.reference_sag)
    parts.check_pairs("current sag", view.x, view.current_sag)
    if len(view.previous_sag):
        parts.check_pairs("previous sag", view.x, view.previous_sag)


def _boxes(board, middle, base, scale):
    wide = board.ply_width * scale
    total = board.plies * wide + (board.plies - 1) * PLY_GAP
    left = middle - total / 2
    return [
        (left + k * (wide + PLY_GAP), base - board.depth * scale, left + k * (wide + PLY_GAP) + wide, base)
        for k in range(board.plies)
    ]


def _sections(view, width, base):
    boards = [view.reference, view.current] + ([view.previous] if view.previous else [])
    deepest = max(view.camera_depth, *(board.depth for board in boards))
    widest = max(board.plies * board.ply_width for board in boards)
    gaps = PLY_GAP * max(board.plies - 1 for board in boards)
    scale = min((base - SECTION_TOP) / deepest, (_section_room(view, width) - gaps) / widest)
    one, other = 0.25 * width, 0.75 * width
    left, right = _boxes(view.reference, one, base, scale), _boxes(view.current, other, base, scale)
    items = []
    for board, boxes in ((view.reference, left), (view.current, right)):
        items += (
            [parts.rectangle(*box, "steel") for box in boxes]
            if board.material_kind == "steel"
            else parts.wood_row(boxes, board.material_kind, rings=True)
        )
    if view.previous and view.previous != view.current:
        items += [
            Line((*_corners(box), _corners(box)[0]), "ghost")
            for box in _boxes(view.previous, other, base, scale)
        ]
    items.append(Line(((left[0][0] - 30, base), (left[-1][2] + 30, base)), "ink"))
    items.append(Line(((right[0][0] - 30, base), (right[-1][2] + 30, base)), "ink"))
    items += [
        Dimension((left[0][0], left[0][1]), (left[0][0], base), -20, view.reference.depth_text, beside=True),
        Dimension(
            (right[-1][2], right[0][1]), (right[-1][2], base), 20, view.current.depth_text, beside=True
        ),
        Dimension((left[0][0], base), (left[-1][2], base), 16, view.reference.width_text, beside=True),
        Dimension((right[0][0], base), (right[-1][2], base), 16, view.current.width_text, beside=True),
    ]
    labels = [
        Label(view.reference.name, one, base + 64, "ink", 22, "middle", bold=True),
        Label(view.current.name, other, base + 64, "ink", 22, "middle", bold=True),
    ]
    return labels + _ratios(view, width, base, right), items + _ratio_leaders(view, width, base, right)


def _corners(box):
    left, top, right, bottom = box
    return [(left, top), (right, top), (right, bottom), (left, bottom)]


def _section_room(view, width):
    # the depth stands beside each section, on the outer side; the ratios stand between the two
    texts = max(text_width(board.depth_text, NOTE_SIZE) for board in (view.reference, view.current))
    room = 2 * (0.25 * width - 36 - texts)
    if room < 60:
        raise BadInput("the depth texts are too long; shorten them, for example '11 1/4 in'")
    ratios = max(text_width(view.wood_text, 20), text_width(view.strength_text, 20, bold=True))
    between = 0.5 * width - ratios - 64
    if between < 60:
        raise BadInput(
            f"the text {view.strength_text!r} or {view.wood_text!r} is too long; shorten it, "
            "for example 'strength 2.1 x'"
        )
    return min(150.0, room, between)


def _ratio_rows(base, boxes):
    # the area is named at the middle of the face, the strength at the outermost fibre
    face = max(boxes[0][1], (boxes[0][1] + base) / 2 - 14)
    return min(face, base - 62), base - 14


def _ratios(view, width, base, boxes):
    wood, fibre = _ratio_rows(base, boxes)
    middle = 0.5 * width
    return [
        Label(view.wood_text, middle, wood + 6, "ink", 20, "middle"),
        Label(view.strength_text, middle, fibre + 6, "ink", 20, "middle", bold=True),
    ]


def _ratio_leaders(view, width, base, boxes):
    wood, fibre = _ratio_rows(base, boxes)
    left, middle = boxes[0][0], 0.5 * width + 8
    face = (left + boxes[0][2]) / 2
    first = middle + text_width(view.wood_text, 20) / 2
    second = middle + text_width(view.strength_text, 20, bold=True) / 2
    return [
        Line(((first, wood), (face, wood)), "leader"),
        parts.dot(face, wood, "ink_dot", 4),
        Line(((second, fibre), (left - 16, fibre), (left, base)), "leader"),
        Line(((left, base), (boxes[-1][2], base)), "governs"),
    ]


def _shapes(view, width, height, top):
    left, right = 76.0, width - 76.0
    scale = (right - left) / view.span
    room = height - 62 - 76 - top
    sags = [*view.reference_sag, *view.current_sag, *view.previous_sag, view.camera_sag]
    factor = parts.fitting_factor(view.exaggeration, max(abs(sag) for sag in sags) * scale, room)
    items = [*_supports(left, right, top), Line(((left, top), (right, top)), "guide")]
    curves = [("reference", view.reference_sag)] + (
        [("ghost", view.previous_sag)] if len(view.previous_sag) else []
    )
    for role, sag in (*curves, ("moved", view.current_sag)):
        items.append(Curve([left + x * scale for x in view.x], [top + s * scale * factor for s in sag], role))
    callouts = []
    for board, sag, text, role, side in (
        (view.current, view.current_sag, view.current_sag_text, "moved", 0.34),
        (view.reference, view.reference_sag, view.reference_sag_text, "ink", 0.66),
    ):
        k = min(range(len(view.x)), key=lambda i: abs(view.x[i] - side * view.span))
        more = f", {view.stiffness_text}" if board is view.current else ""
        callouts.append(
            Callout(
                f"{board.name} sags {text}{more}",
                left + view.x[k] * scale,
                top + sag[k] * scale * factor,
                role,
                20,
                board is view.current,
            )
        )
    avoid = [((left, top - 2, right, top + 2), 60)]
    every = max(1, len(view.x) // 12)
    for sag in (view.reference_sag, view.current_sag):
        xs, ys = [*view.x[::every], view.x[-1]], [*sag[::every], sag[-1]]
        for x0, x1, a, b in zip(xs, xs[1:], ys, ys[1:]):
            y = sorted((top + a * scale * factor, top + b * scale * factor))
            avoid.append(((left + x0 * scale, y[0] - 3, left + x1 * scale, y[1] + 3), 150))
    placed = place_callouts(
        callouts, bounds=(parts.MARGIN, top + 6, width - parts.MARGIN, height - 60), avoid=avoid
    )
    items += [Line(leader, "leader") for _, leader in placed]
    return [label for label, _ in placed], items, factor


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
    return (
        f"Sections to one scale. Span {view.span_text}; both sags drawn {parts.factor_text(factor)}.{ghost}"
    )


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
