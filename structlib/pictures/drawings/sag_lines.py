"""Heights measured along several joists, each as a line below its own straight edge, with its L/n."""

from dataclasses import dataclass

from structlib.ground.refusals import BadInput, check_choice
from structlib.pictures.drawings import parts
from structlib.pictures.labels import Label, text_width
from structlib.pictures.scene import Curve, Line, Scene


@dataclass(frozen=True)
class SagLinesView:
    """What the drawing shows: places along the lines, the sag of each line there [mm], and its words.

    ``worst`` is the number of the line with the least L/n, counted from 1.
    """

    title: str
    places: tuple
    sags: tuple
    words: tuple
    worst: int
    note: str = ""


_FRAMES = {  # left, right, first line, lowest sag, size of type, lines of caption
    "page": (40, 460, 120, 620, 20, 3),
    "wide": (40, 440, 90, 346, 18, 2),
    "tall": (40, 680, 210, 1110, 26, 4),
}


def draw_sag_lines(view, frame="page"):
    """Draw the sag of several lines, all to one printed exaggeration.

    Examples
    --------
    >>> view = SagLinesView("Line 1 sags most", (0.0, 1800.0, 3600.0), ((0.0, 9.0, 0.0),),
    ...     ("1: 3/8 in, L/400",), 1)
    >>> draw_sag_lines(view).title
    'Line 1 sags most'
    """
    check_choice("frame", frame, parts.FRAMES)
    if not 1 <= len(view.sags) <= 5 or len(view.words) != len(view.sags):
        raise BadInput(f"there is room for one to five lines with a text each, got {len(view.sags)}")
    for sag in view.sags:
        parts.check_pairs("sag", view.places, sag)
    width, height = parts.FRAMES[frame]
    left, right, first, lowest, size, captions = _FRAMES[frame]
    step = (lowest - first) / len(view.sags)
    scale = (right - left) / (view.places[-1] - view.places[0])
    most = max(max(map(abs, sag)) for sag in view.sags)
    factor = parts.fitting_factor(50, most * scale, step - (60 if frame == "tall" else 12))
    items = [parts.still_group("paper", [parts.paper(width, height)])]
    for number, (sag, words) in enumerate(zip(view.sags, view.words), start=1):
        y, worst = first + step * (number - 1), number == view.worst
        xs = [left + (place - view.places[0]) * scale for place in view.places]
        items += [
            Line(((left, y), (right, y)), "guide"),
            Curve(xs, [y + one * scale * factor for one in sag], "governs" if worst else "moved"),
        ]
        items += [parts.dot(x, y + one * scale * factor, "ink_dot", 4) for x, one in zip(xs, sag)]
        items.append(_words(words, worst, frame, left, right, y, size))
    captions_text = [
        view.note,
        f"Sag drawn {parts.factor_text(factor)}; dots are measured. The thick line sags most.",
    ]
    items += [
        *parts.caption_labels(captions_text[1:] if frame == "wide" else captions_text, frame, captions),
        *parts.title_labels(view.title, frame),
    ]
    alt = f"{view.title}. " + " ".join(f"Line {words}." for words in view.words) + f" {view.note}"
    return Scene(width, height, tuple(items), view.title, " ".join(captions_text).strip(), alt.strip())


def _words(words, worst, frame, left, right, y, size):
    x, baseline = (left, y - 14) if frame == "tall" else (right + 18, y + 6)
    if text_width(words, size, worst) > 706 - x:
        raise BadInput(f"the text {words!r} is too long; for example '1: 3/8 in, L/400'")
    return Label(words, x, baseline, "governs" if worst else "ink", size, bold=worst)
