"""A dormer planned now and built later: the rafters of one slope seen from above, with the opening."""

from dataclasses import dataclass

from structlib.ground.refusals import BadInput, check_choice, check_number
from structlib.ground.units import ft, inch
from structlib.pictures.drawings import parts
from structlib.pictures.labels import Label, text_width
from structlib.pictures.scene import Line, Scene, rectangle
from structlib.pictures.style import NOTE_SIZE

#: Rafters drawn beside the trimmers, on either side.
BESIDE = 2


@dataclass(frozen=True)
class DormerView:
    """All that the plan of the opening shows; texts are ready to print.

    ``half_span``, ``spacing``, ``below``, ``above`` [mm].
    """

    title: str
    half_span: float
    spacing: float
    rafters_cut: int
    below: float
    above: float
    width_text: str
    lower_text: str
    upper_text: str
    trimmer_text: str
    note: str = ""


# left, right, ridge and wall of the plan; where the words stand; lines of caption
_PLACES = {
    "page": ((40, 440, 118, 560), 462, 3),
    "wide": ((40, 400, 92, 316), 420, 1),
    "tall": ((40, 420, 200, 640), 440, 5),
}


def draw_dormer(view, frame="page"):
    """Draw the rafters of one slope from above, with the opening, its headers and its trimmers.

    Examples
    --------
    >>> view = DormerView("Two trimmers carry what three rafters did", 3657.6, 406.4, 3, 600.0, 1200.0,
    ...                   "5 ft 4 in", "45 plf", "90 plf", "122 % single, 48 % doubled")
    >>> draw_dormer(view).height
    720.0
    """
    check_choice("frame", frame, parts.FRAMES)
    _check(view)
    (width, height), (box, words, captions) = parts.FRAMES[frame], _PLACES[frame]
    left, right, ridge, wall = box
    count = view.rafters_cut + 2 + 2 * BESIDE
    # the same scale in both directions, fixed by the widest opening and the longest rafter of the page
    scale = min((right - left) / ((5 + 1 + 2 * BESIDE) * view.spacing), (wall - ridge) / view.half_span)
    middle = (left + right) / 2
    thick = max(7.0, 1.5 * inch * scale)
    xs = [middle + (k - (count - 1) / 2) * view.spacing * scale for k in range(count)]
    top = wall - view.half_span * scale
    lower, upper = wall - view.below * scale, top + view.above * scale
    first, last = BESIDE, count - 1 - BESIDE
    boards = []
    for k, x in enumerate(xs):
        strip = (x - thick / 2, x + thick / 2)
        if first < k < last:
            boards += [(strip[0], top, strip[1], upper), (strip[0], lower, strip[1], wall)]
        else:
            boards.append((strip[0], top, strip[1], wall))
    added = [
        (xs[first] - 1.5 * thick, top, xs[first] - 0.5 * thick, wall),
        (xs[last] + 0.5 * thick, top, xs[last] + 1.5 * thick, wall),
    ]
    inside = (xs[first] + thick / 2, xs[last] - thick / 2)
    headers = [
        (inside[0], y - way * 2 * thick, inside[1], y) if way > 0 else (inside[0], y, inside[1], y + 2 * thick)
        for y, way in ((upper, 1), (lower, -1))
    ]
    edge = (left - 10, right + 10)
    items = [
        parts.still_group("paper", [parts.paper(width, height)]),
        Line(((edge[0], top - 5), (edge[1], top - 5)), "ground"),
        rectangle(edge[0], wall, edge[1], wall + 12, "wall"),
        Line(((edge[0], wall), (edge[1], wall)), "ground"),
        *parts.wood_row(boards, "sawn"),
        *[rectangle(*one, "wood_cut") for one in (*added, *headers)],
        *[
            Line(
                ((one[0], one[1]), (one[2], one[1]), (one[2], one[3]), (one[0], one[3]), (one[0], one[1])),
                "moved",
            )
            for one in added
        ],
        Line(
            (
                (inside[0], upper),
                (inside[1], upper),
                (inside[1], lower),
                (inside[0], lower),
                (inside[0], upper),
            ),
            "ghost",
        ),
        *[
            Label(text, middle, (upper + lower) / 2 + drop, "ink", NOTE_SIZE, "middle", bold, plate="plate")
            for text, drop, bold in (("opening", -4, False), (view.width_text, 20, True))
        ],
    ]
    in_header = inside[1] - 2 * thick
    points = (
        (edge[1] - 4, top - 5),
        (in_header, upper - thick),
        (xs[last] + thick, (upper + lower) / 2),
        (in_header, lower + thick),
        (edge[1] - 4, wall + 6),
    )
    items += _words(view, words, (top, wall), points, width)
    shown = view.note if frame != "wide" else ""
    items += parts.caption_labels([shown], frame, captions)
    items += parts.title_labels(view.title, frame)
    alt = (
        f"{view.title}. Rafters of one slope from above, ridge at the top, wall below. "
        f"{view.rafters_cut} rafters are cut for an opening {view.width_text} wide between two trimmers. "
        f"Upper header {view.upper_text}, lower header {view.lower_text}. Trimmers: {view.trimmer_text}. {view.note}"
    )
    return Scene(width, height, tuple(items), view.title, view.note, alt)


def _words(view, x, heights, points, width):
    """Names of the parts in one column, each with a leader; they keep their order and their places."""
    top, wall = heights
    step = (wall - top) / 5
    lines = (
        (("ridge", "quiet"),),
        ((f"upper header {view.upper_text}", "force"),),
        (("trimmers: second ply,", "moved"), ("put in now", "moved")),
        ((f"lower header {view.lower_text}", "force"),),
        (("wall", "quiet"),),
    )
    items = []
    for k, (texts, point) in enumerate(zip(lines, points)):
        baseline = top + 14 + k * step
        for row, (text, role) in enumerate(texts):
            if text_width(text, NOTE_SIZE) > width - x - 10:
                raise BadInput(f"the text {text!r} is too long to stand beside the plan; shorten it")
            items.append(Label(text, x, baseline + row * 22, role, NOTE_SIZE))
        items += [Line(((x - 6, baseline - 6), point), "leader"), parts.dot(*point, "ink_dot", 4)]
    return items


def _check(view):
    parts.check_length("half of the house width", view.half_span, low=300.0)
    parts.check_length("spacing", view.spacing, low=100.0)
    check_number("rafters cut", view.rafters_cut, low=1, high=5, hint="for example 3")
    for name, length in (("below", view.below), ("above", view.above)):
        parts.check_length(f"length {name} the opening", length, low=0.5 * ft, low_allowed=True)
    if view.below + view.above > view.half_span - 1 * ft:
        raise BadInput("no opening is left between the headers; move them apart by a foot at least")
