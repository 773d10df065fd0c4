"""Two joists in line that meet over a beam, for several numbers of plies beside each other."""

from dataclasses import dataclass

from structlib.ground.refusals import BadInput, check_number
from structlib.ground.units import inch
from structlib.pictures.drawings import parts
from structlib.pictures.labels import Label, text_width
from structlib.pictures.scene import Dimension, Line, Scene, hatch

SCALE = 15 / inch
_JOIST_TOP, _LEVEL, _BEAM, _POST = 78.0, 138.0, 232.0, 282.0
_ROOM = 228.0


@dataclass(frozen=True)
class Meeting:
    """A beam of some plies and what each joist gets on it.

    ``seat`` [mm].
    """

    plies: int
    seat: float
    seat_text: str
    enough: bool


@dataclass(frozen=True)
class MeetingsView:
    """All that the drawing shows; texts are ready to print.

    ``ply_width``, ``gap`` [mm].
    """

    title: str
    meetings: tuple
    ply_width: float
    gap: float
    gap_text: str
    least_text: str


def draw_joists_on_beam(view):
    """Draw beams seen from their end, with two joists in line on each and the post below.

    Examples
    --------
    >>> two = Meeting(2, 34.925, "1 3/8 in", False)
    >>> draw_joists_on_beam(MeetingsView("Too short", (two,), 38.1, 6.35, "1/4 in", "1 1/2 in")).title
    'Too short'
    """
    if not 1 <= len(view.meetings) <= 3:
        raise BadInput(f"one to three beams fit beside each other, got {len(view.meetings)}")
    check_number("gap", view.gap, low=0, high=2 * inch, shown=lambda mm: f"{mm:g} mm")
    width, height = parts.FRAMES["wide"]
    caption = "Beams seen from the end, to scale. The post takes every ply."
    items, told = [parts.still_group("paper", [parts.paper(width, height)])], []
    for place, meeting in enumerate(view.meetings):
        middle = width / 2 + (place - (len(view.meetings) - 1) / 2) * 236
        items += _meeting(view, meeting, middle)
        told.append(f"On {_plies(meeting)} each joist gets {meeting.seat_text}, {_verdict(view, meeting)}.")
    items += [*parts.caption_labels([caption], "wide", 1), *parts.title_labels(view.title, "wide")]
    return Scene(width, height, tuple(items), view.title, caption, " ".join([f"{view.title}.", *told, caption]))


def _plies(meeting):
    return "one ply" if meeting.plies == 1 else f"{meeting.plies} plies"


def _verdict(view, meeting):
    return f"reaches {view.least_text}" if meeting.enough else f"short of {view.least_text}"


def _meeting(view, meeting, middle):
    wide, half = view.ply_width * SCALE, meeting.plies * view.ply_width * SCALE / 2
    if 2 * half > _ROOM - 60:
        raise BadInput(f"a beam of {_plies(meeting)} is too wide for its place")
    end = view.gap * SCALE / 2
    boxes = [(middle - half + k * wide, _LEVEL, middle - half + (k + 1) * wide, _BEAM) for k in range(meeting.plies)]
    posts = [(left, _BEAM, right, _POST) for left, _, right, _ in boxes]
    joists = [
        (middle - _ROOM / 2, _JOIST_TOP, middle - end, _LEVEL),
        (middle + end, _JOIST_TOP, middle + _ROOM / 2, _LEVEL),
    ]
    items = [
        *parts.wood_row(posts, "sawn"),
        *parts.wood_row(boxes, "sawn", rings=True),
        *parts.wood_row(joists, "sawn"),
    ]
    role = "bearing" if meeting.enough else "governs_thin"
    for left, right in ((middle - half, middle - end), (middle + end, middle + half)):
        box = (left, _LEVEL - 13, right, _LEVEL)
        items += hatch(box, spacing=7, role=role)
        items.append(Line(((left, box[1]), (right, box[1]), (right, box[3]), (left, box[3]), box[:2]), role))
    items.append(Dimension((middle + end, _LEVEL - 22), (middle + half, _LEVEL - 22), -4, "", beside=True))
    strong = not meeting.enough
    lines = (
        (f"{_plies(meeting)}: {meeting.seat_text}", "ink", True),
        (_verdict(view, meeting), "governs" if strong else "ink", strong),
    )
    for (text, colour, bold), y in zip(lines, (314, 342)):
        if text_width(text, 20, bold) > _ROOM:
            raise BadInput(f"the text {text!r} is too long; for example '2 plies: 1 3/8 in'")
        items.append(Label(text, middle, y, colour, 20, "middle", bold=bold))
    return items
