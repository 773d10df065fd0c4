"""The path of a load through a house: from the snow on the ridge, station by station, to the soil."""

from dataclasses import dataclass

from structlib.ground.refusals import BadInput, check_choice, check_number
from structlib.pictures.drawings import parts
from structlib.pictures.labels import Label, spread, text_width, wrap
from structlib.pictures.scene import Arrow, Line, Polygon, Scene, hatch, rectangle
from structlib.pictures.style import NOTE_SIZE

# The house is invented and drawn in its own units: x from the left wall (0) to the right one (10),
# heights from the cellar floor (0). Each place of the path has a height on the middle line.
PLACES = {
    "roof": 11.0,
    "ridge": 10.1,
    "attic floor": 7.4,
    "upper wall": 6.3,
    "upper floor": 4.9,
    "lower wall": 3.9,
    "ground floor": 2.5,
    "beam": 2.0,
    "post": 1.0,
    "footing": -0.35,
    "soil": -1.2,
}
_RIDGE, _EAVES, _GRADE, _LOWEST = 10.2, 7.4, 1.7, -1.6
_FLOORS = (7.4, 4.9, 2.5)


@dataclass(frozen=True)
class Station:
    """One station of the path."""

    place: str
    name: str
    text: str


@dataclass(frozen=True)
class LoadPathView:
    """All that the picture of a load path shows; texts are ready to print.

    ``beam_span``, ``beam_depth``, ``beam_ply_width`` [mm].
    """

    title: str
    stations: tuple
    beam_name: str
    beam_span: float
    beam_depth: float
    beam_plies: int
    beam_ply_width: float
    span_text: str
    size_text: str
    material_kind: str = "sawn"
    note: str = ""


@dataclass(frozen=True)
class _Places:
    """Where things stand in one frame, in viewBox units."""

    house: tuple  # left, top, right, bottom
    rows: tuple  # left, top, right, bottom
    inset: tuple  # left, top, right, bottom
    size: float
    two_lines: bool
    captions: int


_FRAMES = {
    "page": _Places(
        house=(20, 76, 408, 628),
        rows=(424, 208, 704, 632),
        inset=(452, 66, 704, 192),
        size=18,
        two_lines=True,
        captions=3,
    ),
    "wide": _Places(
        house=(20, 70, 300, 340),
        rows=(334, 148, 704, 346),
        inset=(334, 70, 704, 138),
        size=18,
        two_lines=False,
        captions=2,
    ),
    "tall": _Places(
        house=(20, 124, 700, 640),
        rows=(40, 664, 690, 1010),
        inset=(40, 1030, 690, 1150),
        size=26,
        two_lines=False,
        captions=3,
    ),
}


def draw_load_path(view, frame="page"):
    """Draw an invented house in section with the path of its load from ridge to soil.

    Examples
    --------
    >>> stations = (Station("roof", "snow on the roof", "30 psf"), Station("soil", "soil", "1,500 psf"))
    >>> view = LoadPathView("Everything ends in the soil", stations, "main beam 3-2x12", 2438.4, 285.75, 3,
    ...                     38.1, "8 ft span", "4 1/2 x 11 1/4 in")
    >>> draw_load_path(view).title
    'Everything ends in the soil'
    """
    check_choice("frame", frame, parts.FRAMES)
    _check(view)
    at = _House(frame)
    texts = [
        view.note,
        "An invented house, not to scale; its outside walls carry the rest. Main beam to scale.",
    ]
    caption = " ".join(text for text in texts if text)
    shown = texts[1:] if frame == "wide" else texts
    items = (
        parts.still_group("house", [parts.paper(*parts.FRAMES[frame]), *_ground(at), *_shell(view, at)]),
        *(_snow(at) if _has(view, "roof") else []),
        *_path(view, at),
        *_cut_beam(view, at),
        *_stations(view, at),
        *_inset(view, at),
        *parts.caption_labels(shown, frame, at.places.captions),
        *parts.title_labels(view.title, frame),
    )
    return Scene(*parts.FRAMES[frame], items, view.title, caption, _alt(view, caption))


def _check(view):
    if not 1 <= len(view.stations) <= 9:
        raise BadInput(f"a load path has between 1 and 9 stations, got {len(view.stations)}")
    order, above = list(PLACES), None
    for station in view.stations:
        check_choice("place of the station", station.place, PLACES)
        if above and order.index(station.place) <= order.index(above):
            raise BadInput(f"stations go from the top down, each once, but {station.place!r} comes after {above!r}")
        above = station.place
    parts.check_length("span of the main beam", view.beam_span)
    parts.check_length("depth of the main beam", view.beam_depth, high=3000.0)
    parts.check_length("ply width of the main beam", view.beam_ply_width, high=1000.0)
    check_number("plies of the main beam", view.beam_plies, low=1, high=8, hint="for example 3")
    check_choice("material kind", view.material_kind, parts.MATERIALS)


class _House:
    """Scale and place of the invented house in one frame."""

    def __init__(self, frame):
        self.frame, self.places = frame, _FRAMES[frame]
        left, top, right, bottom = self.places.house
        # room above the roof for the snow
        self.scale = min((right - left) / 12.0, (bottom - top) / (_RIDGE + 1.2 - _LOWEST))
        self.middle = (left + right) / 2
        self.zero = (top + bottom) / 2 + self.scale * (_RIDGE + 1.2 + _LOWEST) / 2

    def x(self, place):
        return self.middle + (place - 5.0) * self.scale

    def y(self, height):
        return self.zero - height * self.scale

    def box(self, left, low, right, high, role):
        return rectangle(self.x(left), self.y(high), self.x(right), self.y(low), role)


def _ground(at):
    """Soil beside and below the cellar, its floor and its outside walls."""
    items = []
    for a, b, low, high in (
        (-1, -0.2, _LOWEST, _GRADE),
        (10.2, 11, _LOWEST, _GRADE),
        (-0.2, 10.2, _LOWEST, 0),
    ):
        box = (at.x(a), at.y(high), at.x(b), at.y(low))
        items += [rectangle(*box, "wall"), *hatch(box, 14)]
    for a, b in ((-0.2, 0.2), (9.8, 10.2)):
        items += [at.box(a, 0, b, 2.3, "masonry"), at.box(a - 0.25, -0.4, b + 0.25, 0, "masonry")]
    items.append(
        Polygon(
            tuple((at.x(x), at.y(y)) for x, y in ((4.55, 0), (5.45, 0), (5.8, -0.75), (4.2, -0.75))),
            "masonry",
        )
    )
    edges = ((-1, _GRADE, -0.2, _GRADE), (10.2, _GRADE, 11, _GRADE), (0.2, 0, 9.8, 0))
    return items + [Line(((at.x(a), at.y(b)), (at.x(c), at.y(d))), "ground") for a, b, c, d in edges]


def _shell(view, at):
    items = []
    for a, b in ((-0.12, 0.12), (9.88, 10.12)):
        items.append(at.box(a, 2.3, b, _EAVES, "wall"))
        items += [Line(((at.x(x), at.y(2.3)), (at.x(x), at.y(_EAVES))), "quiet") for x in (a, b)]
    studs = [(4.8, 4.9, 5.2, 7.15), (4.8, 2.5, 5.2, 4.65)]
    if _has(view, "ridge"):
        # without a post under the ridge the rafters bring the roof to the outside walls
        studs.append((4.8, _FLOORS[0], 5.2, _RIDGE - 0.3))
    items += [at.box(*box, "wood") for box in studs]
    for height in _FLOORS:
        items += [at.box(a, height - 0.26, b, height, "wood") for a, b in ((-0.1, 4.96), (5.04, 10.1))]
    for eave in (-0.7, 10.7):
        # a rafter falls as steeply outside the wall as inside
        low = _EAVES - 0.7 * (_RIDGE - _EAVES) / 5
        corners = ((eave, low), (5, _RIDGE), (5, _RIDGE + 0.28), (eave, low + 0.28))
        items.append(Polygon(tuple((at.x(x), at.y(y)) for x, y in corners), "wood"))
    items.append(at.box(4.7, -0.02, 5.3, 0.06, "steel"))
    items.append(at.box(4.8, 0.06, 5.2, 1.66, "wood"))
    return items


def _has(view, place):
    return any(station.place == place for station in view.stations)


def _snow(at):
    arrows = []
    for k in range(15):
        x = -0.4 + 10.8 * k / 14
        roof = _RIDGE + 0.34 - abs(x - 5) * (_RIDGE - _EAVES) / 5
        arrows.append(Arrow((at.x(x), at.y(roof + 0.6)), (at.x(x), at.y(roof)), "force", 7))
    return arrows


def _cut_beam(view, at):
    # only the number of plies is told here; the inset shows the beam to scale
    wide, gap = 0.16, 0.03
    left = 5 - (view.beam_plies * (wide + gap) - gap) / 2
    boxes = [
        (at.x(left + k * (wide + gap)), at.y(2.24), at.x(left + k * (wide + gap) + wide), at.y(1.66))
        for k in range(view.beam_plies)
    ]
    return parts.wood_row(boxes, view.material_kind, rings=True)


def _path(view, at):
    """Arrows down the middle line, from station to station, growing on the way."""
    heights = [PLACES[station.place] for station in view.stations]
    stops = [min(height, _RIDGE - 0.1) for height in heights]
    items = []
    for k, (top, low) in enumerate(zip(stops, stops[1:])):
        a, b = at.y(top) + 1, at.y(low) - 1
        half, x = 1.5 + 3.0 * (k + 1) / len(stops), at.middle
        neck = b - min(12.0, (b - a) / 2)
        if b - a < 5:
            continue
        items.append(
            Polygon(
                (
                    (x - half, a),
                    (x + half, a),
                    (x + half, neck),
                    (x + half + 4, neck),
                    (x, b),
                    (x - half - 4, neck),
                    (x - half, neck),
                ),
                "force",
            )
        )
    return items


def _stations(view, at):
    """A numbered plate at every place and its row of text, both in the order of the path."""
    left, top, right, bottom = at.places.rows
    size, count = at.places.size, len(view.stations)
    plates = [
        Label(str(k + 1), at.middle + 30, at.y(PLACES[s.place]) + 6, "ink", NOTE_SIZE, "middle", True, "badge")
        for k, s in enumerate(view.stations)
    ]
    plates = spread(plates, top=at.places.house[1] - 4, bottom=at.places.house[3], gap=5)
    pitch = min((bottom - top) / count, 3.2 * size)
    first = top + (bottom - top - pitch * count) / 2 + 0.5 * pitch
    lines, labels = [], []
    for k, (station, plate) in enumerate(zip(view.stations, plates)):
        y = first + pitch * k + 0.3 * size
        up = 0.56 * size if at.places.two_lines else 0.0
        if at.frame != "tall":
            lines.append(Line(((plate.x + 12, plate.y - 6), (left - 6, y - 0.33 * size)), "leader"))
        labels.append(Label(str(k + 1), left + 6, y, "ink", size, "middle", True, "badge"))
        room = right - left - 2 * size
        name = Label(station.name, left + 1.5 * size, y - up, "ink", size)
        if at.places.two_lines:
            text = Label(station.text, left + 1.5 * size, y + up, "force", size, bold=True)
            need = max(text_width(station.name, size), text_width(station.text, size, bold=True))
        else:
            text = Label(station.text, right, y, "force", size, "end", bold=True)
            need = text_width(station.name, size) + text_width(station.text, size, bold=True) + size
        if need > room or pitch < (2.2 if at.places.two_lines else 1.2) * size:
            raise BadInput(
                f"station {station.name!r} with {station.text!r} does not fit in its row; shorten it, "
                "for example 'upper floor' and '640 lb/ft'"
            )
        labels += [name, text]
    return [*lines, *plates, *labels]


def _inset(view, at):
    """The main beam from the side, on its posts, and its section; each to one scale in both directions."""
    left, top, right, bottom = at.places.inset
    size = at.places.size
    # the narrow column of the page keeps two lines for the name; in wide the texts stand beside the beam
    rows, share, below = {"page": (2, 0.62, 4.5), "wide": (1, 0.34, 1.9), "tall": (1, 0.52, 2.6)}[at.frame]
    half = left + share * (right - left)
    room = (half - left - 28, bottom - top - below * size)
    names = wrap(view.beam_name, right - left, size, bold=True)
    if not 1 <= len(names) <= rows:
        raise BadInput(f"the name {view.beam_name!r} is too long; shorten it, for example 'main beam 3-2x12'")
    scale = min(room[0] / view.beam_span, 0.6 * room[1] / view.beam_depth)
    x0, x1 = left, left + view.beam_span * scale
    y0 = top + (1.3 + 1.15 * (rows - 1)) * size
    y1, post = y0 + view.beam_depth * scale, 5.0
    floor = y0 + room[1]
    items = parts.wood_row([(x0, y1, x0 + post, floor), (x1 - post, y1, x1, floor)], "sawn") + parts.wood(
        (x0, y0, x1, y1), view.material_kind
    )
    cut = min(
        room[1] / view.beam_depth,
        (0.16 * (right - left) - 2 * view.beam_plies) / (view.beam_plies * view.beam_ply_width),
    )
    wide = view.beam_ply_width * cut
    items += parts.wood_row(
        [
            (half + k * (wide + 2), floor - view.beam_depth * cut, half + k * (wide + 2) + wide, floor)
            for k in range(view.beam_plies)
        ],
        view.material_kind,
        rings=True,
    )
    beside = half + 0.16 * (right - left) + 10
    span_place, size_place = {
        "page": ((left, floor + size), (left, floor + 2.15 * size)),
        "wide": ((beside, floor - 1 - 1.15 * size), (beside, floor - 1)),
        "tall": ((left, floor + 1.1 * size), (half, floor + 1.1 * size)),
    }[at.frame]
    texts = [
        *((name, left, y0 - (0.5 + 1.15 * k) * size, True) for k, name in enumerate(names[::-1])),
        (view.span_text, *span_place, False),
        (view.size_text, *size_place, False),
    ]
    for text, x, _, bold in texts:
        if x + text_width(text, size, bold) > right + 4:
            raise BadInput(f"the text {text!r} of the beam is too long; shorten it, for example '8 ft span'")
    return items + [Label(text, x, y, "ink", size, bold=bold) for text, x, y, bold in texts]


def _alt(view, caption):
    stations = " ".join(f"{k + 1}: {s.name}, {s.text}." for k, s in enumerate(view.stations))
    return (
        f"{view.title}. Section through a house with the path of the load from the top down. {stations} "
        f"{view.beam_name[0].upper()}{view.beam_name[1:]}: {view.span_text}, {view.size_text}. {caption}"
    )
