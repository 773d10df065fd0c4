"""What a wall carries: a section through a house, with what lands on the wall at every level."""

from dataclasses import dataclass

from structlib.ground.refusals import BadInput, check_choice, check_number
from structlib.pictures.drawings import parts
from structlib.pictures.labels import (
    Callout,
    Label,
    boxes_meet,
    place_callouts,
    plate_box,
    spread,
    text_width,
    wrap,
)
from structlib.pictures.scene import Arrow, Line, Polygon, Scene, rectangle
from structlib.pictures.style import NOTE_SIZE

KINDS = ("roof", "attic", "ceiling", "floor")
PLACES = ("inside", "left", "right")

TOP = 84.0
JOIST = 13.0
WALL = 12.0
NAMES = 128.0
TOTALS = 150.0


@dataclass(frozen=True)
class HouseLevel:
    """One level of the house: what spans there, and what of it lands on the wall.

    Parameters
    ----------
    name : str
        What it is called, for example ``"attic floor"`` [-].
    kind : str
        ``"roof"``, ``"attic"``, ``"ceiling"`` or ``"floor"`` [-].
    height : float
        Its height above the bottom of the wall; of a roof, the height of its eaves [mm].
    left_span : float
        Span on the left of the wall, 0 for none [mm].
    right_span : float
        Span on the right of the wall, 0 for none [mm].
    continuous : bool
        True: one piece over the wall; False: cut or lapped there [-].
    left_tributary : float
        The width on the left that lands on the wall, 0 for none [mm].
    right_tributary : float
        The width on the right that lands on the wall, 0 for none [mm].
    left_text : str
        What lands from the left, for example ``"7 ft x 50 psf = 350 lb/ft"`` [-].
    right_text : str
        What lands from the right [-].
    total_text : str
        Running total in the wall below this level, for example ``"1,240 lb/ft"`` [-].
    """

    name: str
    kind: str
    height: float
    left_span: float
    right_span: float
    continuous: bool
    left_tributary: float = 0.0
    right_tributary: float = 0.0
    left_text: str = ""
    right_text: str = ""
    total_text: str = ""


@dataclass(frozen=True)
class HouseSectionView:
    """All that the section through a house shows; texts are ready to print.

    Parameters
    ----------
    title : str
        The message, about 80 letters at most [-].
    levels : tuple of HouseLevel
        The levels from the top down; at most one roof, and it comes first [-].
    house_left : float
        From the wall to the left outside wall, 0 when the wall is the left one [mm].
    house_right : float
        From the wall to the right outside wall, 0 when the wall is the right one [mm].
    roof_rise : float
        Height of the ridge above the eaves [mm].
    overhang : float
        How far the roof reaches past an outside wall [mm].
    wall_name : str
        What the wall is called, for example ``"the middle wall"`` [-].
    note : str
        A sentence for below the picture [-].
    scale_text : str
        Scale or size in the reader's units, for example ``"House 28 ft wide"`` [-].
    """

    title: str
    levels: tuple
    house_left: float
    house_right: float
    roof_rise: float
    overhang: float = 400.0
    wall_name: str = "this wall"
    note: str = ""
    scale_text: str = ""


class _Frame:
    """Where everything goes in one house section."""

    def __init__(self, view, width, height):
        self.width, self.height = width, height
        roof = view.levels[0].kind == "roof"
        total = view.house_left + view.house_right
        tall = view.levels[0].height + (view.roof_rise if roof else 0)
        hang = view.overhang if roof else 0.0
        self.bottom = height - 100
        # an outside wall has its totals outside the house, so the names change sides
        self.place = "left" if view.house_left == 0 else ("right" if view.house_right == 0 else "inside")
        before, after = {"inside": (NAMES, 0.0), "left": (TOTALS, NAMES), "right": (NAMES, TOTALS)}[
            self.place
        ]
        room = width - before - after - 2 * parts.MARGIN
        self.scale = min(room / (total + 2 * hang), (self.bottom - TOP) / tall)
        self.bottom = (TOP + self.bottom + tall * self.scale) / 2
        drawn = (total + 2 * hang) * self.scale
        start = before + parts.MARGIN + (room - drawn) / 2 + hang * self.scale
        self.wall = start + view.house_left * self.scale
        self.left, self.right = start, start + total * self.scale
        self.hang = hang * self.scale

    def x(self, from_wall):
        return self.wall + from_wall * self.scale

    def y(self, height):
        return self.bottom - height * self.scale


def draw_house_section(view, frame="page"):
    """Draw a section through a house with the load that gathers in one wall.

    Parameters
    ----------
    view : HouseSectionView
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
        When a length or word makes no sense, levels are out of order, or a text is too long.

    Examples
    --------
    >>> floor = HouseLevel("upper floor", "floor", 2500.0, 4000.0, 4000.0, False, 2000.0, 2000.0,
    ...                    "350 lb/ft", "350 lb/ft", "700 lb/ft")
    >>> view = HouseSectionView("The wall carries 700 lb per foot", (floor,), 4000.0, 4000.0, 0.0)
    >>> draw_house_section(view).height
    720.0
    """
    check_choice("frame", frame, parts.FRAMES)
    _check(view)
    width, height = parts.FRAMES[frame]
    at = _Frame(view, width, height)
    labels = _labels(view, at)
    texts = [view.note, _caption(view)]
    items = (
        parts.still_group("paper", [parts.paper(width, height)]),
        *_tributaries(view, at),
        *_shell(view, at),
        *_joists(view, at),
        *_falling(view, at),
        *_wall_arrows(view, at),
        *labels,
        *parts.caption_labels(texts, width, height, 3),
        *parts.title_labels(view.title, width),
    )
    caption = " ".join(text for text in texts if text)
    return Scene(width, height, items, view.title, caption, _alt(view, caption))


def _check(view):
    if not view.levels:
        raise BadInput(
            "a house section needs at least one level, for example a floor 2,500 mm above the base"
        )
    for name in ("house_left", "house_right", "roof_rise", "overhang"):
        parts.check_length(name.replace("_", " "), getattr(view, name), low_allowed=True)
    if view.house_left + view.house_right == 0:
        raise BadInput("the house has no width: give the distance to the outside wall on one side at least")
    above = None
    for k, level in enumerate(view.levels):
        check_choice(f"kind of {level.name!r}", level.kind, KINDS)
        parts.check_length(f"height of {level.name!r}", level.height)
        for side in ("left", "right"):
            span, share = getattr(level, f"{side}_span"), getattr(level, f"{side}_tributary")
            house = getattr(view, f"house_{side}")
            reach = house + (view.overhang if level.kind == "roof" else 0)
            parts.check_length(f"{side} span of {level.name!r}", span, low_allowed=True)
            check_number(
                f"{side} tributary width of {level.name!r}",
                share,
                low=0,
                high=max(span, reach) + 1e-6,
                shown=lambda length: f"{length:g} mm",
            )
            if span > house + 1e-6 and level.kind != "roof":
                raise BadInput(
                    f"{side} span of {level.name!r} is {span:g} mm, longer than the {house:g} mm "
                    "to the outside wall"
                )
        if level.kind == "roof" and k:
            raise BadInput("the roof must be the first level; levels are listed from the top down")
        if above is not None and level.height > above:
            raise BadInput(
                f"levels are listed from the top down, but {level.name!r} lies above the one before it"
            )
        above = level.height


# --- the house ------------------------------------------------------------------------------


def _roof_y(view, at, x):
    # height of the roof's underside at a place of the picture
    eaves, ridge = at.y(view.levels[0].height), at.y(view.levels[0].height + view.roof_rise)
    middle = (at.left + at.right) / 2
    reach = (at.right - at.left) / 2
    return ridge + (eaves - ridge) * abs(x - middle) / reach


def _shell(view, at):
    roof = view.levels[0].kind == "roof"
    top = at.y(view.levels[0].height)
    reach = at.hang + 8
    items = parts.ground_line(at.left - reach, at.right + reach, at.bottom)
    walls = []
    for x, here in ((at.left, at.place == "left"), (at.right, at.place == "right")):
        if not here:
            walls.append((x - WALL / 2, top, x + WALL / 2, at.bottom))
    items += [rectangle(*box, "wall") for box in walls]
    items += [Line(((box[k], box[1]), (box[k], box[3])), "quiet") for box in walls for k in (0, 2)]
    items += _other_supports(view, at)
    items.append(rectangle(at.wall - WALL / 2, _wall_top(view, at), at.wall + WALL / 2, at.bottom, "wood"))
    if roof:
        items += _rafters(view, at)
    return items


def _wall_top(view, at):
    landing = [level for level in view.levels if level.left_tributary or level.right_tributary]
    return at.y((landing or view.levels)[0].height) + (
        0 if (landing or view.levels)[0].kind == "roof" else JOIST
    )


def _other_supports(view, at):
    # where a span ends before the outside wall, something holds it up: a thin wall
    items = []
    for level in view.levels:
        for way, span, house in (
            (-1, level.left_span, view.house_left),
            (1, level.right_span, view.house_right),
        ):
            if span and span < house - 1 and level.kind != "roof":
                x = at.x(way * span)
                below = [other.height for other in view.levels if other.height < level.height]
                top, bottom = at.y(level.height) + JOIST, at.y(max(below, default=0))
                items.append(rectangle(x - 4, top, x + 4, bottom, "wall"))
                items += [Line(((edge, top), (edge, bottom)), "quiet") for edge in (x - 4, x + 4)]
    return items


def _rafters(view, at):
    middle, thick = (at.left + at.right) / 2, 11.0
    items = []
    for eave in (at.left - at.hang, at.right + at.hang):
        low, high = _roof_y(view, at, eave), _roof_y(view, at, middle)
        items.append(
            Polygon(((eave, low), (middle, high), (middle, high - thick), (eave, low - thick)), "wood")
        )
    return items


def _joists(view, at):
    boards = []
    for level in view.levels:
        if level.kind == "roof":
            continue
        y = at.y(level.height)
        left, right = at.x(-level.left_span), at.x(level.right_span)
        if level.continuous or not (level.left_span and level.right_span):
            boards.append((left, y, right, y + JOIST))
        else:
            boards += [(left, y, at.wall - 2.5, y + JOIST), (at.wall + 2.5, y, right, y + JOIST)]
    return parts.wood_row(boards, "sawn")


# --- what lands on the wall -----------------------------------------------------------------


def _tributaries(view, at):
    items = []
    for level in view.levels:
        for way, share in ((-1, level.left_tributary), (1, level.right_tributary)):
            if not share:
                continue
            a, b = sorted((at.wall, at.x(way * share)))
            if level.kind == "roof":
                points = [a, *([(at.left + at.right) / 2] if a < (at.left + at.right) / 2 < b else []), b]
                edge = [(x, _roof_y(view, at, x) - 11) for x in points]
                items.append(Polygon((*edge, *[(x, y - 22) for x, y in edge[::-1]]), "tributary"))
            else:
                y = at.y(level.height)
                items.append(rectangle(a, y - 20, b, y, "tributary"))
    return items


def _falling(view, at):
    arrows = []
    for level in view.levels:
        for way, share in ((-1, level.left_tributary), (1, level.right_tributary)):
            if not share:
                continue
            a, b = sorted((at.wall, at.x(way * share)))
            count = max(1, round((b - a) / 22))
            for k in range(count):
                x = a + (b - a) * (k + 0.5) / count
                y = _roof_y(view, at, x) - 12 if level.kind == "roof" else at.y(level.height) - 1
                arrows.append(Arrow((x, y - 18), (x, y), "force", 7))
    return arrows


def _storeys(view, at):
    """Levels that send load into the wall, each with the top and bottom of the wall below it."""
    found = []
    for k, level in enumerate(view.levels):
        if not level.total_text:
            continue
        lower = view.levels[k + 1].height if k + 1 < len(view.levels) else 0.0
        top = at.y(level.height) + (4 if level.kind == "roof" else JOIST + 3)
        found.append((level, top, at.y(lower) - (3 if lower else 2)))
    return found


def _wall_arrows(view, at):
    items = []
    storeys = _storeys(view, at)
    for k, (_, top, bottom) in enumerate(storeys):
        # the shaft grows with every level that has landed
        if bottom - top < 10:
            continue
        half = 1.5 + 3.5 * (k + 1) / len(storeys)
        head = min(14.0, (bottom - top) / 2)
        neck = bottom - head
        items.append(
            Polygon(
                (
                    (at.wall - half, top),
                    (at.wall + half, top),
                    (at.wall + half, neck),
                    (at.wall + half + 5, neck),
                    (at.wall, bottom),
                    (at.wall - half - 5, neck),
                    (at.wall - half, neck),
                ),
                "force",
            )
        )
    return items


def _labels(view, at):
    x, anchor = (at.width - parts.MARGIN, "end") if at.place == "left" else (parts.MARGIN, "start")
    names = [
        Label(
            level.name,
            x,
            at.y(level.height) + (0 if level.kind == "roof" else JOIST),
            "quiet",
            NOTE_SIZE,
            anchor,
        )
        for level in view.levels
    ]
    for label in names:
        if text_width(label.text, label.size) > NAMES:
            raise BadInput(f"the name {label.text!r} is too long; shorten it, for example 'upper floor'")
    labels = spread(names, top=TOP, bottom=at.bottom + 10, gap=1)
    leaders, avoid = [], _drawn(view, at)
    if at.place == "inside":
        for level, top, bottom in _storeys(view, at):
            _add(_total_places(level, at, top, bottom), (at.wall, top), at, labels, leaders, avoid)
    else:
        _totals_outside(view, at, labels, leaders)
    for level in view.levels:
        for way, share, text in (
            (-1, level.left_tributary, level.left_text),
            (1, level.right_tributary, level.right_text),
        ):
            if text:
                landing = (at.x(way * share / 2), at.y(level.height) - 10)
                _add(_landing_places(level, view, at, way, share, text), landing, at, labels, leaders, avoid)
    return [*leaders, *labels]


def _drawn(view, at):
    """What a text that looks for room had better not cover, with its price."""
    drawn = [((at.wall - 12, TOP, at.wall + 12, at.bottom), 300)]
    drawn += [
        (
            (
                at.x(-level.left_span),
                at.y(level.height) - 20,
                at.x(level.right_span),
                at.y(level.height) + JOIST,
            ),
            200,
        )
        for level in view.levels
        if level.kind != "roof"
    ]
    return drawn


def _add(places, thing, at, labels, leaders, avoid):
    """Take the first free one of the usual places; else any free place, with a leader."""
    taken = [plate_box(label) for label in labels]
    for block in places:
        boxes = [plate_box(label) for label in block]
        inside = all(
            box[0] >= 4 and box[2] <= at.width - 4 and box[1] >= TOP - 12 and box[3] <= at.bottom
            for box in boxes
        )
        if inside and not any(boxes_meet(box, other) for box in boxes for other in taken):
            labels += block
            return
    first = places[0][0]
    text = " ".join(label.text for label in places[0])
    callout = Callout(text, *thing, first.role, first.size, first.bold)
    bounds = (NAMES + parts.MARGIN + 4, TOP - 10, at.width - 6, at.bottom - 4)
    label, leader = place_callouts([callout], bounds=bounds, taken=taken, avoid=avoid)[0]
    labels.append(label)
    leaders.append(Line(leader, "leader"))


def _totals_outside(view, at, labels, leaders):
    way, anchor = (-1, "end") if at.place == "left" else (1, "start")
    x = at.wall + way * (at.hang + 16)
    storeys = _storeys(view, at)
    for level, _, _ in storeys:
        if text_width(level.total_text, 22, bold=True) > TOTALS:
            raise BadInput(
                f"the total {level.total_text!r} is too long; shorten it, for example '1,240 lb/ft'"
            )
    column = [
        Label(level.total_text, x, top + 24, "force", 22, anchor, bold=True) for level, top, _ in storeys
    ]
    column = spread(column, top=TOP, bottom=at.bottom, gap=4)
    labels += column
    leaders += [
        Line(((x - way * 5, label.y - 8), (at.wall - way * -8, top + 4)), "leader")
        for label, (_, top, _) in zip(column, storeys)
    ]


def _total_places(level, at, top, bottom):
    sides = (("start", 20), ("end", -20)) if bottom - top >= 26 else (("end", -20), ("start", 20))
    return [
        [Label(level.total_text, at.wall + shift, top + 22, "force", 22, side, bold=True, plate="plate")]
        for side, shift in sides
    ]


def _landing_places(level, view, at, way, share, text):
    edge = at.left if way < 0 else at.right
    lines = wrap(text, max(120.0, abs(edge - at.wall) - 24), NOTE_SIZE)
    anchor, x, y = ("end" if way < 0 else "start"), at.wall + way * 14, at.y(level.height) - 26
    if level.kind == "roof":
        blocks = [
            _block(lines, at.x(way * share * part), y - rise, "middle")
            for rise in (0, 20, 40)
            for part in (0.5, 0.6, 0.7, 0.8, 0.9, 1.0)
        ]
        return [block for block in blocks if _under_roof(block, view, at)] or blocks[:1]
    below = y + 26 + JOIST + 20 + 21 * (len(lines) - 1)
    return [_block(lines, x, place, anchor) for place in ((y,) if at.place == "inside" else (below, y))]


def _under_roof(block, view, at):
    left, top, right, _ = plate_box(max(block, key=lambda label: text_width(label.text, label.size)))
    top = min(plate_box(label)[1] for label in block)
    return all(_roof_y(view, at, x) + 6 <= top for x in (left, right))


def _block(lines, x, y, anchor):
    return [
        Label(line, x, y - 21 * i, "ink", NOTE_SIZE, anchor, plate="plate")
        for i, line in enumerate(reversed(lines))
    ][::-1]


def _caption(view):
    kinds = {
        level.continuous
        for level in view.levels
        if level.kind != "roof" and level.left_span and level.right_span
    }
    texts = [
        f"{view.scale_text}." if view.scale_text else "",
        "Shaded: what lands on " + view.wall_name + ".",
    ]
    if kinds == {True}:
        texts.append("Joists in one piece over the wall.")
    elif kinds == {False}:
        texts.append("Joists cut over the wall.")
    elif kinds:
        texts.append("A gap over the wall: joists cut there.")
    return " ".join(text for text in texts if text)


def _alt(view, caption):
    words = [f"{view.title}. Section through a house, from the top down."]
    for level in view.levels:
        landing = [
            text
            for text in (
                level.left_text and f"from the left {level.left_text}",
                level.right_text and f"from the right {level.right_text}",
            )
            if text
        ]
        total = f"; total in {view.wall_name} below it {level.total_text}" if level.total_text else ""
        words.append(
            f"{level.name.capitalize()}: {', '.join(landing) if landing else 'nothing lands on it'}{total}."
        )
    return " ".join([*words, caption])
