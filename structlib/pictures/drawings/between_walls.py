"""A beam that is tilted up between two walls, and the seats that it is left with when it is level."""

from dataclasses import dataclass
from math import atan2, cos, hypot, sin

from structlib.pictures.drawings import parts
from structlib.pictures.labels import Label
from structlib.pictures.scene import Dimension, Grain, Line, Polygon, Scene, hatch, rectangle

_LEFT, _RIGHT, _WALL = 76.0, 644.0, 22.0
_TOP, _FLOOR = 80.0, 352.0
_TILTED, _LEVEL = 142.0, 226.0


@dataclass(frozen=True)
class BetweenWallsView:
    """All that the drawing shows; texts are ready to print.

    ``clear_width``, ``depth``, ``length``, ``ledge``, ``seat`` [mm].
    """

    title: str
    clear_width: float
    depth: float
    length: float
    ledge: float
    seat: float
    clear_width_text: str
    length_text: str
    seat_text: str
    ledge_text: str


def draw_between_walls(view):
    """Draw the beam on its way in, its diagonal level, and below it the beam at rest on what was put under.

    Examples
    --------
    >>> view = BetweenWallsView("Cut it short", 3657.6, 234.95, 3650.0, 76.2, 72.4, "12 ft",
    ...                         "11 ft 11 11/16 in", "2 7/8 in", "3 in of jacks")
    >>> draw_between_walls(view).title
    'Cut it short'
    """
    for name in ("clear_width", "depth", "length", "ledge", "seat"):
        parts.check_length(name.replace("_", " "), getattr(view, name))
    width, height = parts.FRAMES["wide"]
    scale, middle = (_RIGHT - _LEFT) / view.clear_width, (_LEFT + _RIGHT) / 2
    caption = f"To scale. Above: on its way in. Below: on {view.ledge_text}."
    items = (
        parts.still_group("paper", [parts.paper(width, height)]),
        *_walls(),
        *_tilted(view, scale, middle),
        *_at_rest(view, scale, middle),
        *parts.caption_labels([caption], "wide", 1),
        *parts.title_labels(view.title, "wide"),
    )
    alt = (
        f"{view.title}. Two walls stand {view.clear_width_text} apart. A beam {view.length_text} long is "
        "tilted in: "
        f"its diagonal just clears both walls. Turned level it sits on {view.ledge_text} at each wall, with "
        f"{view.seat_text} of seat."
    )
    return Scene(width, height, items, view.title, caption, alt)


def _walls():
    items = []
    for left in (_LEFT - _WALL, _RIGHT):
        items += [
            rectangle(left, _TOP, left + _WALL, _FLOOR, "wall"),
            *hatch((left, _TOP, left + _WALL, _FLOOR), 12),
        ]
    for x in (_LEFT, _RIGHT):
        items.append(Line(((x, _TOP), (x, _FLOOR)), "ground"))
    return items


def _tilted(view, scale, middle):
    """The beam at the moment in which its diagonal is level: it is longest from wall to wall then."""
    half_long, half_deep = view.length * scale / 2, view.depth * scale / 2
    angle = atan2(view.depth, view.length)

    def turned(x, y):
        return (middle + x * cos(angle) - y * sin(angle), _TILTED + x * sin(angle) + y * cos(angle))

    corners = tuple(
        turned(x, y)
        for x, y in (
            (-half_long, -half_deep),
            (half_long, -half_deep),
            (half_long, half_deep),
            (-half_long, half_deep),
        )
    )
    half = hypot(view.length, view.depth) * scale / 2
    return [
        Polygon(corners, "wood"),
        Line(((middle - half, _TILTED), (middle + half, _TILTED)), "reference"),
        Label(f"diagonal {view.clear_width_text}", middle, _TILTED - 50, "ink", 18, "middle"),
        Line(((middle, _TILTED - 44), (middle, _TILTED)), "leader"),
        parts.dot(middle, _TILTED, "ink_dot", 4),
    ]


def _at_rest(view, scale, middle):
    left, right = middle - view.length * scale / 2, middle + view.length * scale / 2
    bottom = _LEVEL + view.depth * scale
    items = []
    for start, end in ((_LEFT, _LEFT + view.ledge * scale), (_RIGHT - view.ledge * scale, _RIGHT)):
        items += parts.wood((start, bottom, end, _FLOOR), "sawn")
    box = (left, _LEVEL, right, bottom)
    items += [rectangle(*box, "wood"), Grain(box, "along", 3)]
    seat = view.seat * scale
    for start, end in ((left, left + seat), (right - seat, right)):
        items += hatch((start, bottom - 9, end, bottom + 9), 6, "governs_thin")
    items.append(parts.ring((left, bottom - 9, left + seat, bottom + 9), grow=4))
    items.append(parts.ring((right - seat, bottom - 9, right, bottom + 9), grow=4))
    y = bottom + 40
    items += [
        Line(((left + seat + 6, bottom + 10), (left + 40, y - 8)), "leader"),
        Line(((right - seat - 6, bottom + 10), (right - 40, y - 8)), "leader"),
        Label(f"seat {view.seat_text}", left + 44, y, "governs", 20, bold=True),
        Label(f"seat {view.seat_text}", right - 44, y, "governs", 20, "end", bold=True),
        Dimension((left, y + 14), (right, y + 14), 18, view.length_text),
    ]
    return items
