"""How pieces share one load: the section, the stress over the height of each piece, the shares, the sag.

Section and stress diagrams have one height scale, so that an edge and its stress stand at the same level.
Every text has its own place; only the shapes and thin leaders move with a slider.
"""

from dataclasses import dataclass

from structlib.ground.refusals import BadInput, check_choice, check_number
from structlib.pictures.drawings import parts
from structlib.pictures.labels import Label, text_width
from structlib.pictures.scene import Arrow, Curve, Line, Polygon, Scene, rectangle
from structlib.pictures.style import NOTE_SIZE

SAG_ROOM = 0.085  # of the drawn span, in every frame, so that all print one factor
BAND = 11.0  # half the thickness of a beam in the drawing of the sag
ROLES = ("force_band", "moment")  # stress of the first piece, of the second
SLIP_ROOM = 22.0


@dataclass(frozen=True)
class Piece:
    """One of the pieces that share: like plies of one material.

    ``boxes`` [mm]; ``stress`` [mm, -].
    """

    name: str
    tag: str
    boxes: tuple
    material_kind: str
    stress: tuple
    stress_text: str


@dataclass(frozen=True)
class SharedPliesView:
    """All that the drawing of shared plies shows; texts are ready to print.

    ``span``, ``x``, ``sag``, ``camera_depth``, ``camera_width``, ``slip``, ``helped``, ``groups``, ``previous_sag``
    [mm].
    """

    title: str
    pieces: tuple
    shares: tuple
    span: float
    x: tuple
    sag: tuple
    sag_text: str
    camera_depth: float
    camera_width: float
    stress_scale_text: str
    note: str = ""
    lands: str = ""
    stacked: bool = False
    slip: float = 0.0
    end_text: str = ""
    helped: tuple = ()
    groups: tuple = ()
    previous_sag: tuple = ()
    previous_share: float | None = None
    exaggeration: float = 20.0


@dataclass(frozen=True)
class _Places:
    """Where things stand in one frame, in viewBox units."""

    section: tuple  # left and right of the room
    height: tuple  # top and bottom of section and diagrams
    tags: float  # baseline of the words below the section
    diagrams: tuple  # axis of each diagram
    half: float  # half width of a diagram
    heads: tuple  # baselines of name and of push | pull
    values: float  # baseline of the stresses
    edges_apart: bool  # whether unlike stresses of two edges stand in two lines
    bar: tuple  # left, top, right, bottom
    bar_head: float
    bar_texts: tuple  # baselines of its texts: one row, or a row each
    beam: tuple  # left, right, height
    factor: float  # baseline of the factor
    ends: tuple  # (x, baseline, anchor) of sag text and end text
    size: float
    captions: int


_PLACES = {
    "page": _Places(
        section=(24, 250),
        height=(124, 356),
        tags=386,
        diagrams=(384, 592),
        half=88,
        heads=(90, 114),
        values=386,
        edges_apart=False,
        bar=(20, 428, 700, 452),
        bar_head=418,
        bar_texts=(476,),
        beam=(60, 660, 528),
        factor=508,
        ends=((20, 628, "start"), (700, 628, "end")),
        size=18,
        captions=3,
    ),
    "wide": _Places(
        section=(16, 138),
        height=(126, 286),
        tags=316,
        diagrams=(222, 380),
        half=60,
        heads=(94, 116),
        values=312,
        edges_apart=True,
        bar=(470, 106, 704, 128),
        bar_head=94,
        bar_texts=(150, 172, 194),
        beam=(486, 690, 240),
        factor=224,
        ends=((470, 302, "start"), (470, 326, "start")),
        size=18,
        captions=2,
    ),
    "tall": _Places(
        section=(24, 250),
        height=(204, 560),
        tags=604,
        diagrams=(384, 592),
        half=88,
        heads=(150, 188),
        values=604,
        edges_apart=False,
        bar=(20, 690, 700, 726),
        bar_head=670,
        bar_texts=(764, 796, 828),
        beam=(60, 660, 910),
        factor=880,
        ends=((20, 1034, "start"), (20, 1070, "start")),
        size=24,
        captions=5,
    ),
}


def draw_shared_plies(view, frame="page"):
    """Draw the section, the stress of each piece, the shares of the load and the sag.

    Examples
    --------
    >>> old = Piece("old: 2x10", "old", ((0, 0, 38.1, 235.0),), "sawn", ((0, -0.4), (235.0, 0.4)), "900 psi")
    >>> view = SharedPliesView("The old joist is alone", (old,), (("old 100 %", 1.0),), 3657.6,
    ...                        (0, 1828.8, 3657.6), (0, 8.0, 0), "sag 0.31 in", 305.0, 200.0,
    ...     "wood 3,000 psi")
    >>> draw_shared_plies(view).title
    'The old joist is alone'
    """
    check_choice("frame", frame, parts.FRAMES)
    _check(view)
    (width, height), at = parts.FRAMES[frame], _PLACES[frame]
    beam, factor, slip_factor = _beam(view, at)
    texts = [view.note, _scale_text(view, factor, slip_factor)]
    shown = texts[1:] if frame == "wide" else texts
    items = (
        parts.still_group("paper", [parts.paper(width, height)]),
        *_section(view, at, frame),
        *_diagrams(view, at),
        *_bar(view, at),
        *beam,
        *parts.caption_labels(shown, frame, at.captions),
        *parts.title_labels(view.title, frame),
    )
    caption = " ".join(text for text in texts if text)
    return Scene(width, height, items, view.title, caption, _alt(view, factor))


def _check(view):
    if not 1 <= len(view.pieces) <= 2:
        raise BadInput(f"the picture shows one or two pieces, got {len(view.pieces)}; join like plies in one")
    for piece in view.pieces:
        check_choice("material kind", piece.material_kind, parts.MATERIALS)
        for _, share in piece.stress:
            check_number("share of the full stress", share, low=-1.0, high=1.0, hint="take a larger scale")
    if abs(sum(share for _, share in view.shares) - 1) > 1e-6:
        raise BadInput("the shares must add up to 1, for example (('old', 0.4), ('new', 0.6))")
    check_choice("where the load lands", view.lands, ("top", "side", ""))
    parts.check_length("span", view.span)
    parts.check_length("camera depth", view.camera_depth)
    parts.check_length("camera width", view.camera_width)
    parts.check_pairs("sag", view.x, view.sag)
    if len(view.previous_sag):
        parts.check_pairs("previous sag", view.x, view.previous_sag)


def _scale(view, at):
    """Units by mm of section and diagrams: the camera decides, until something is larger than it."""
    deep = max(view.camera_depth, *(box[3] for piece in view.pieces for box in piece.boxes))
    wide = max(view.camera_width, *(box[2] for piece in view.pieces for box in piece.boxes))
    return min((at.height[1] - at.height[0]) / deep, (at.section[1] - at.section[0]) / wide)


def _section(view, at, frame):
    scale, top = _scale(view, at), at.height[0]
    wide = max(box[2] for piece in view.pieces for box in piece.boxes) * scale
    middle = (at.section[0] + at.section[1]) / 2
    left, items, labels = middle - wide / 2, [], []
    for number, piece in enumerate(view.pieces):
        boxes = [(left + a * scale, top + b * scale, left + c * scale, top + d * scale) for a, b, c, d in piece.boxes]
        items += (
            [parts.rectangle(*box, "steel") for box in boxes]
            if piece.material_kind == "steel"
            else parts.wood_row(boxes, piece.material_kind, rings=True)
        )
        if len(view.pieces) > 1:
            x = middle + (2 * number - 1) * {"wide": 36, "page": 44, "tall": 52}[frame]
            target = boxes[0] if number == 0 else boxes[-1]
            # of stacked pieces the lower one is met from below, the upper one at its side
            foot = (
                (target[2], (target[1] + target[3]) / 2)
                if view.stacked and number
                else ((target[0] + target[2]) / 2, target[3])
            )
            items.append(Line(((x, at.tags - at.size), foot), "leader"))
            items.append(parts.dot(*foot, "ink_dot", 4))
            labels.append(Label(piece.tag, x, at.tags, "ink", at.size, "middle", bold=True))
    return items + _landing(view, at, left, scale, frame) + labels


def _landing(view, at, left, scale, frame):
    """Arrows where the load comes in: on every ply, or on a ledger at the side of the first one."""
    if not view.lands:
        return []
    top, long = at.height[0], {"page": 22, "wide": 14, "tall": 34}[frame]
    boxes = [box for piece in view.pieces if piece.material_kind != "steel" for box in piece.boxes]
    highest = min(box[1] for box in boxes)
    words = Label(
        {"top": "load on top", "side": "load on one side"}[view.lands],
        (at.section[0] + at.section[1]) / 2,
        at.heads[0],
        "force",
        at.size,
        "middle",
    )
    if view.lands == "side":
        ledger = (left - 15, top + 8, left - 1, top + 34)
        middle = (ledger[0] + ledger[2]) / 2
        return [
            parts.rectangle(*ledger, "wood"),
            Arrow((middle, top + 8 - long), (middle, top + 7), "force"),
            words,
        ]
    middles = [left + (box[0] + box[2]) / 2 * scale for box in boxes if box[1] <= highest + 1e-6]
    return [Arrow((x, top - long), (x, top - 1), "force", 8) for x in middles] + [words]


def _diagrams(view, at):
    scale, top, bottom = _scale(view, at), *at.height
    items, labels = [], []
    for piece, axis, role in zip(view.pieces, at.diagrams, ROLES):
        heights = [top + y * scale for y, _ in piece.stress]
        tips = [axis + share * at.half for _, share in piece.stress]
        outline = [(axis, heights[0]), *zip(tips, heights), (axis, heights[-1])]
        items += [
            Line(((axis - at.half, heights[0]), (axis + at.half, heights[0])), "guide"),
            Line(((axis - at.half, heights[-1]), (axis + at.half, heights[-1])), "guide"),
            Polygon(tuple(outline), role),
            Line(((axis, top - 4), (axis, bottom)), "axis"),
        ]
        labels += [
            _fitting(_ways(piece.name, ": "), axis, at.heads[0], 2 * at.half + 22, at.size, bold=True),
            Label("push", axis - 8, at.heads[1], "quiet", NOTE_SIZE, "end"),
            Label("pull", axis + 8, at.heads[1], "quiet", NOTE_SIZE, "start"),
        ]
        # two edges: one line where there is room for any number, else a line each
        split = at.edges_apart and " / " in piece.stress_text
        for row, text in enumerate(piece.stress_text.split(" / ") if split else [piece.stress_text]):
            y, room = at.values + 20 * row, 2 * at.half + 24
            labels.append(_fitting(_ways(text, " psi"), axis, y, room, at.size, bold=False))
    return items + labels


def _ways(text, less):
    """A text, and a shorter one: a name without its word, a stress without its unit (the caption has it)."""
    if less == ": ":
        return text, text.partition(less)[2] or text
    bare = text.removeprefix("edges ")
    return text, bare, bare.rpartition(" ")[0] or bare


def _fitting(texts, x, y, room, size, bold):
    """The first of several ways to say it that fits, in the largest type that does."""
    for text in texts:
        for smaller in (size, 20, NOTE_SIZE):
            if text_width(text, smaller, bold) <= room:
                return Label(text, x, y, "ink", min(size, smaller), "middle", bold)
    raise BadInput(f"the text {texts[-1]!r} is too long; shorten it, for example 'old: 2-2x10'")


def _bar(view, at):
    left, top, right, bottom = at.bar
    items, labels, x = [], [], left
    kinds = [piece.material_kind for piece in view.pieces]
    for number, (_, share) in enumerate(view.shares):
        wide = share * (right - left)
        role = {0: "force_band", 1: "moment"}.get(number, "wall") if number < len(kinds) else "wall"
        if wide > 0.5:
            items.append(rectangle(x, top, x + wide, bottom, role))
        x += wide
    items.append(Line(((left, top), (right, top), (right, bottom), (left, bottom), (left, top)), "ink"))
    if view.previous_share is not None:
        mark = left + view.previous_share * (right - left)
        items.append(Line(((mark, top - 5), (mark, bottom + 5)), "ghost"))
    labels.append(Label("share of the bending", left, at.bar_head, "quiet", NOTE_SIZE))
    rows = at.bar_texts
    at_end = 0.0
    for number, (text, share) in enumerate(view.shares):
        at_end += share
        if len(rows) == 1:
            last = number == len(view.shares) - 1 and number > 0
            # a middle text stands under its own part of the bar, as far as its neighbours let it
            under = left + (at_end - share / 2) * (right - left)
            half, first = text_width(text, at.size, True) / 2, text_width(view.shares[0][0], at.size, True)
            after = text_width(view.shares[-1][0], at.size, True)
            under = min(max(under, left + first + half + 14), right - after - half - 14)
            place = (left, "start") if number == 0 else (right, "end") if last else (under, "middle")
            labels.append(Label(text, place[0], rows[0], "ink", at.size, place[1], bold=True))
        else:
            labels.append(Label(text, left, rows[number], "ink", at.size, bold=True))
    return items + labels


def _beam(view, at):
    left, right, top = at.beam
    scale = (right - left) / view.span
    sags = [*map(float, view.sag)]
    factor = parts.fitting_factor(view.exaggeration, max(map(abs, sags)) / view.span, SAG_ROOM)
    xs = [left + float(x) * scale for x in view.x]
    curve = [top + s * scale * factor for s in sags]
    slip_factor, slip = 0.0, 0.0
    if view.slip > 0:
        # drawn with a factor of its own: a slip is small beside a span
        slip_factor = parts.fitting_factor(100.0, view.slip * scale, SLIP_ROOM)
        slip = view.slip * scale * slip_factor
    items = []
    for x in (left, right):
        foot = top + (2 * BAND if view.stacked else BAND)
        items += [
            Polygon(((x, foot), (x - 9, foot + 15), (x + 9, foot + 15)), "wood_cut"),
            Line(((x - 16, foot + 15), (x + 16, foot + 15)), "ground"),
        ]
    if view.stacked:
        upper = _band(xs, curve, -BAND, 0.0, slip / 2)
        lower = _band(xs, curve, 0.0, BAND, -slip / 2)
        items += [Polygon(lower, "wood"), Polygon(upper, "wood_cut")]
        # the lower board hangs a band lower than the supports' points expect
        items[:4] = _supports(left, right, top + BAND)
    else:
        items += [Polygon(_band(xs, curve, -BAND, BAND, 0.0), "wood")]
        if view.helped:
            items += _helper(view, left, scale, xs, curve)
    if len(view.previous_sag):
        before = [top + float(s) * scale * factor for s in view.previous_sag]
        if max(before) <= top + SAG_ROOM * (right - left) + 1:
            items.append(Curve(xs, before, "ghost"))
    labels = [
        Label(f"sag × {factor:g}", (left + right) / 2, at.factor, "moved", at.size, "middle", bold=True),
        Label(view.sag_text, *at.ends[0][:2], "moved", at.size, at.ends[0][2], bold=True),
    ]
    if view.end_text:
        labels.append(Label(view.end_text, *at.ends[1][:2], "ink", at.size, at.ends[1][2]))
    return items + labels, factor, slip_factor


def _supports(left, right, foot):
    items = []
    for x in (left, right):
        items += [
            Polygon(((x, foot), (x - 9, foot + 15), (x + 9, foot + 15)), "wood_cut"),
            Line(((x - 16, foot + 15), (x + 16, foot + 15)), "ground"),
        ]
    return items


def _band(xs, curve, above, below, longer):
    """A band along a curve; its ends stand out, or back, by a length."""
    xs = [xs[0] - longer, *xs[1:-1], xs[-1] + longer]
    there = [(x, y + above) for x, y in zip(xs, curve)]
    back = [(x, y + below) for x, y in zip(reversed(xs), reversed(curve))]
    return tuple(there + back)


def _helper(view, left, scale, xs, curve):
    start, end = (left + place * scale for place in view.helped)

    def at(x):
        for (x0, y0), (x1, y1) in zip(zip(xs, curve), zip(xs[1:], curve[1:])):
            if x0 <= x <= x1:
                return y0 + (y1 - y0) * (x - x0) / (x1 - x0)
        return curve[-1]

    inside = [x for x in xs if start < x < end]
    places = [start, *inside, end]
    outline = _band(places, [at(x) for x in places], -0.55 * BAND, 0.55 * BAND, 0.0)
    items = [Polygon(outline, "wood_cut")]
    return items + [parts.dot(left + x * scale, at(left + x * scale), "moved_dot", 5) for x in view.groups]


def _scale_text(view, factor, slip_factor):
    ghost = " Dashed: before." if len(view.previous_sag) or view.previous_share is not None else ""
    slip = f", slip {slip_factor:g} times" if slip_factor else ""
    return (
        f"A dotted arm is as long as a stress of {view.stress_scale_text}. "
        f"Sag drawn {parts.factor_text(factor)}{slip}.{ghost}"
    )


def _alt(view, factor):
    lands = {"top": " The load lands on top.", "side": " The load hangs on one side.", "": ""}[view.lands]
    words = [f"{view.title}.{lands}", "A section, and beside it the stress over the height of each piece:"]
    words += [f"{piece.name}, {piece.stress_text};" for piece in view.pieces]
    words += ["shares of the bending:", ", ".join(text for text, _ in view.shares) + "."]
    words += [f"Below, the beam as it sags: {view.sag_text}, drawn {parts.factor_text(factor)}."]
    if view.end_text:
        words.append(f"{view.end_text}.")
    words.append(view.note)
    return " ".join(words).strip()
