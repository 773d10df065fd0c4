"""What a wall carries: a section through a house, with what lands on the wall at every level."""

from dataclasses import dataclass, replace

from structlib.ground.refusals import BadInput, check_choice, check_number
from structlib.pictures.drawings import parts
from structlib.pictures.labels import Label, spread, text_width, wrap
from structlib.pictures.scene import Arrow, Line, Polygon, Scene, rectangle
from structlib.pictures.style import NOTE_SIZE

KINDS = ("roof", "attic", "ceiling", "floor")

# the room of the house: left, top, right, bottom
ROOM = {
    "page": (20.0, 76.0, 700.0, 628.0),
    "wide": (20.0, 76.0, 400.0, 336.0),
    "tall": (20.0, 128.0, 700.0, 690.0),
}
# the room of the table beside or below the house, in frames that have one
TABLE = {"wide": (440.0, 70.0, 700.0, 344.0), "tall": (20.0, 730.0, 700.0, 1120.0)}
CAPTIONS = {"page": 3, "wide": 2, "tall": 4}
JOIST = 13.0
WALL = 12.0
NAMES = 128.0
TOTALS = 150.0


@dataclass(frozen=True)
class HouseLevel:
    """One level of the house: what spans there, and what of it lands on the wall.

    ``height``, ``left_span``, ``right_span``, ``left_tributary``, ``right_tributary`` [mm].
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

    ``house_left``, ``house_right``, ``roof_rise``, ``overhang`` [mm].
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

    def __init__(self, view, frame):
        self.frame = frame
        self.width, self.height = parts.FRAMES[frame]
        left, self.top, right, bottom = ROOM[frame]
        roof = view.levels[0].kind == "roof"
        total = view.house_left + view.house_right
        tall = view.levels[0].height + (view.roof_rise if roof else 0)
        hang = view.overhang if roof else 0.0
        # an outside wall has its totals outside the house, so the names change sides
        self.place = "left" if view.house_left == 0 else ("right" if view.house_right == 0 else "inside")
        if frame != "wide":
            # the table of a wide film says the names and totals
            before, after = {"inside": (NAMES, 0.0), "left": (TOTALS, NAMES), "right": (NAMES, TOTALS)}[self.place]
            left, right = left + before, right - after
        self.scale = min((right - left) / (total + 2 * hang), (bottom - self.top) / tall)
        self.bottom = (self.top + bottom + tall * self.scale) / 2
        drawn = (total + 2 * hang) * self.scale
        self.left = left + (right - left - drawn) / 2 + hang * self.scale
        self.right = self.left + total * self.scale
        self.wall = self.left + view.house_left * self.scale
        self.hang = hang * self.scale

    def x(self, from_wall):
        return self.wall + from_wall * self.scale

    def y(self, height):
        return self.bottom - height * self.scale


def draw_house_section(view, frame="page"):
    """Draw a section through a house with the load that gathers in one wall.

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
    at = _Frame(view, frame)
    texts = [view.note, _caption(view)]
    items = (
        parts.still_group("paper", [parts.paper(at.width, at.height)]),
        *_tributaries(view, at),
        *_shell(view, at),
        *_joists(view, at),
        *_falling(view, at),
        *_wall_arrows(view, at),
        *(_labels(view, at) if frame != "wide" else []),
        *(_table(view, at) if frame in TABLE else []),
        *parts.caption_labels(texts[1:] if frame == "wide" else texts, frame, CAPTIONS[frame]),
        *parts.title_labels(view.title, frame),
    )
    caption = " ".join(text for text in texts if text)
    return Scene(at.width, at.height, items, view.title, caption, _alt(view, caption))


def _check(view):
    if not view.levels:
        raise BadInput("a house section needs at least one level, for example a floor 2,500 mm above the base")
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
                    f"{side} span of {level.name!r} is {span:g} mm, longer than the {house:g} mm to the outside wall"
                )
        if level.kind == "roof" and k:
            raise BadInput("the roof must be the first level; levels are listed from the top down")
        if above is not None and level.height > above:
            raise BadInput(f"levels are listed from the top down, but {level.name!r} lies above the one before it")
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
    return at.y((landing or view.levels)[0].height) + (0 if (landing or view.levels)[0].kind == "roof" else JOIST)


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
        items.append(Polygon(((eave, low), (middle, high), (middle, high - thick), (eave, low - thick)), "wood"))
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
    """Names at the edge, what lands beside the wall, running totals in or outside the wall.

    Each stack of texts keeps its order from top to bottom and is spread, never searched.
    """
    x, anchor = (at.width - parts.MARGIN, "end") if at.place == "left" else (parts.MARGIN, "start")
    names = []
    for level in view.levels:
        y = at.y(level.height) + (0 if level.kind == "roof" else JOIST)
        names.append(Label(level.name, x, y, "quiet", NOTE_SIZE, anchor))
        if text_width(level.name, NOTE_SIZE) > NAMES:
            raise BadInput(f"the name {level.name!r} is too long; shorten it, for example 'upper floor'")
    labels = spread(names, top=at.top, bottom=at.bottom + 10, gap=1)
    tops = {level: top for level, top, _ in _storeys(view, at)}
    stacks = {-1: [], 1: []}
    for level in view.levels:
        for way, text in ((-1, level.left_text), (1, level.right_text)):
            stacks[way] += _landing(level, at, way, text) if text else []
        if at.place == "inside" and level in tops:
            stacks[1].append(
                Label(level.total_text, at.wall + 20, tops[level] + 22, "force", 22, bold=True, plate="plate")
            )
    for stack in stacks.values():
        labels += spread(_in_order(stack), top=at.top - 6, bottom=at.bottom - 4, gap=4)
    return labels if at.place == "inside" else labels + _totals_outside(view, at)


def _in_order(stack):
    # texts of a level never pass those of the level above it
    ordered, least = [], -1e9
    for label in stack:
        least = max(least + 0.001, label.y)
        ordered.append(replace(label, y=least))
    return ordered


def _totals_outside(view, at):
    way, anchor = (-1, "end") if at.place == "left" else (1, "start")
    x = at.wall + way * (at.hang + 16)
    storeys = _storeys(view, at)
    for level, _, _ in storeys:
        if text_width(level.total_text, 22, bold=True) > TOTALS:
            raise BadInput(f"the total {level.total_text!r} is too long; shorten it, for example '1,240 lb/ft'")
    column = [Label(level.total_text, x, top + 24, "force", 22, anchor, bold=True) for level, top, _ in storeys]
    column = spread(column, top=at.top, bottom=at.bottom, gap=4)
    leaders = [
        Line(((x - way * 5, label.y - 8), (at.wall + way * 8, top + 4)), "leader")
        for label, (_, top, _) in zip(column, storeys)
    ]
    return [*leaders, *column]


def _landing(level, at, way, text):
    # above the shaded band inside the house; below the joists at an outside wall, where the roof comes down
    edge = at.left if way < 0 else at.right
    lines = wrap(text, max(120.0, abs(edge - at.wall) - 24), NOTE_SIZE)
    x, anchor = at.wall + way * 14, ("end" if way < 0 else "start")
    if at.place == "inside":
        first = at.y(level.height) - (70 if level.kind == "roof" else 26) - 22 * (len(lines) - 1)
    else:
        first = at.y(level.height) + JOIST + 20
    return [Label(line, x, first + 22 * k, "ink", NOTE_SIZE, anchor, plate="plate") for k, line in enumerate(lines)]


def _table(view, at):
    """Level by level in words: what lands, and the running total, in larger type where there is room."""
    left, top, right, bottom = TABLE[at.frame]
    small, large = (18, 20) if at.frame == "wide" else (24, 28)
    rows = []
    for level in view.levels:
        landing = [text for text in (level.left_text, level.right_text) if text]
        lines = wrap(" + ".join(landing) if landing else "nothing lands", right - left, small)
        if text_width(level.name, small) + text_width(level.total_text, large, bold=True) + 16 > right - left:
            raise BadInput(f"the name {level.name!r} and its total are too long to stand in one line")
        rows.append((level, lines))
    step = small + 5.0
    need = sum(step * (1 + len(lines)) for _, lines in rows)
    if need > bottom - top or any(text_width(line, small) > right - left for _, lines in rows for line in lines):
        raise BadInput("what lands on the wall does not fit in the table; give fewer levels or shorter texts")
    gap = min(30.0, (bottom - top - need) / len(rows))
    y, items = top + (bottom - top - need - gap * (len(rows) - 1)) / 2 + small, []
    for level, lines in rows:
        if at.frame == "wide":
            eave = at.right + (at.hang if level.kind == "roof" else 0)
            items.append(Line(((eave + 8, at.y(level.height)), (left - 6, y - 6)), "leader"))
        items += [
            Label(level.name, left, y, "ink", small),
            Label(level.total_text, right, y, "force", large, "end", bold=True),
            *[Label(line, left, y + step * (k + 1), "quiet", small) for k, line in enumerate(lines)],
        ]
        y += step * (1 + len(lines)) + gap
    return items


def _caption(view):
    kinds = {level.continuous for level in view.levels if level.kind != "roof" and level.left_span and level.right_span}
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
        words.append(f"{level.name.capitalize()}: {', '.join(landing) if landing else 'nothing lands on it'}{total}.")
    return " ".join([*words, caption])
