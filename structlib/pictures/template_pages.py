"""A drilling template cut into pages of letter paper: where every line, hole and word stands, in millimetres.

A page shows a window of the beam. Windows overlap a little, and both pages draw the same cross in the
overlap: lay cross on cross, and the holes stand where they belong.
"""

import textwrap
from dataclasses import dataclass, replace

from structlib.ground.refusals import BadInput
from structlib.ground.showing import show
from structlib.ground.units import inch
from structlib.pictures.template import NOT_FOR_DRILLING, RULER, check_stretch, from_end, sheet_words

LONG, SHORT = 11 * inch, 8.5 * inch  # letter paper
OVERLAP = 0.5 * inch  # of beam, on both of two pages

_MOST_ALONG = 10 * inch  # of beam on a page that lies, 7 1/2 in on one that stands
_HEAD, _FOOT, _EDGE = 0.75 * inch, 1.0 * inch, 0.5 * inch
_LYING_HIGH = SHORT - _HEAD - _FOOT
_STANDING_HIGH = LONG - _HEAD - _FOOT
_TEXT = 3.4  # height of the letters
_SMALL = 2.3  # of what stands beside the ruler
_BESIDE = _EDGE + RULER + 6.0  # where that begins
_LINES = 6


@dataclass(frozen=True)
class Stroke:
    """One line of a page: its points, its width, and whether it is dashed."""

    points: tuple
    width: float = 0.3
    dashed: bool = False


@dataclass(frozen=True)
class Words:
    """One text of a page: where it begins (or ends, or its middle), how tall its letters are, grey or black."""

    x: float
    y: float
    text: str
    size: float = _TEXT
    anchor: str = "left"
    grey: bool = False


@dataclass(frozen=True)
class TemplatePage:
    """One page: width and height, lines, holes as (x, y, radius), words, and the window of the beam on it.

    Everything is in millimetres from the lower left corner of the paper.
    """

    width: float
    height: float
    strokes: tuple
    holes: tuple
    words: tuple
    window: tuple  # along from, to; up from, to


def drilling_pages(
    holes, *, diameter, depth, start, end, title, shares, gates, drawing="", plate_depth=None, system="us"
):
    """Lay a stretch of a drilling template out on pages of letter paper, in true size.

    ``holes``, ``diameter``, ``depth``, ``start``, ``end``, ``plate_depth`` [mm].

    Examples
    --------
    >>> sizes = dict(diameter=12.7, depth=9.25 * 25.4, start=0.0, end=24 * 25.4, shares=[("bolts", 0.64)], gates=())
    >>> pages = drilling_pages([(50.0, 60.0)], title="left end", **sizes)
    >>> len(pages), pages[0].width / 25.4, pages[0].height / 25.4
    (4, 8.5, 11.0)
    """
    check_stretch(diameter, depth, start, end)
    told = sheet_words(shares, gates, drawing)
    numbered = [(number, x, up) for number, (x, up) in enumerate(holes, 1)]
    here = [hole for hole in numbered if start - 1e-6 <= hole[1] <= end + 1e-6]
    if not here:
        raise BadInput(
            f"no hole lies between {show(start, 'length', system)} and {show(end, 'length', system)}; "
            "take another stretch of the plate"
        )
    # the page stands when that takes the whole depth, and lies when it must be taken in pieces anyway
    stands = _LYING_HIGH < depth <= _STANDING_HIGH + 1e-6
    width, height = (SHORT, LONG) if stands else (LONG, SHORT)
    along = _windows(start, end, min(_MOST_ALONG, width - 2 * _EDGE))
    upward = _windows(0.0, depth, _STANDING_HIGH if stands else _LYING_HIGH)
    windows = [(*x, *y) for y in upward for x in along]
    beam = (start, end, depth, plate_depth, diameter / 2)
    headed = [f"{title}. Page {number} of {len(windows)}" for number in range(1, len(windows) + 1)]
    return tuple(
        _with_its_words(_page((width, height), window, beam, here, head, windows, system), told, bool(drawing))
        for head, window in zip(headed, windows)
    )


def _with_its_words(page, told, drawn):
    """The page with the line for the drawing in its head, shares and caution beside its ruler."""
    line, shares, caution = told
    words = [Words(_EDGE, page.height - 0.54 * inch, line, _TEXT)]
    room = int((page.width - _EDGE - _BESIDE) / (0.5 * _SMALL))
    below = textwrap.wrap(caution, room)
    listed = textwrap.wrap(shares, room, max_lines=_LINES - len(below), placeholder=" and others, each of less.")
    for row, text in enumerate((*listed, *below)):
        words.append(Words(_BESIDE, 0.86 * inch - 1.3 * _SMALL * row, text, _SMALL))
    if not drawn:
        low, far, down, up = page.window
        across, middle = page.width / 2, _FOOT + (up - down) / 2
        size = min((far - low) / (0.72 * len(NOT_FOR_DRILLING)), 0.4 * (up - down))
        words.append(Words(across, middle - 0.35 * size, NOT_FOR_DRILLING, size, "center", True))
    return replace(page, words=(*page.words, *words))


def _windows(start, end, most):
    """Stretches of at most ``most`` that overlap and fill the way from start to end."""
    found = [(start, min(end, start + most))]
    while found[-1][1] < end - 1e-6:
        begin = found[-1][1] - OVERLAP
        found.append((begin, min(end, begin + most)))
    return found


def _page(size, window, beam, holes, title, windows, system):
    width, height = size
    low, high, down, up = window
    start, end, depth, plate_depth, radius = beam
    left, bottom = (width - (high - low)) / 2, _FOOT
    at = lambda along, rise: (left + along - low, bottom + rise - down)  # noqa: E731
    strokes, words = [], [Words(_EDGE, height - 0.37 * inch, title, 1.2 * _TEXT)]
    # edges of the beam are drawn full where they are, and left open where the next page goes on
    for rise in (0.0, depth):
        if down - 1e-6 <= rise <= up + 1e-6:
            strokes.append(Stroke((at(low, rise), at(high, rise)), 0.5))
    for along in (start, end):
        if low - 1e-6 <= along <= high + 1e-6:
            strokes.append(Stroke((at(along, down), at(along, up)), 0.5))
    for rise in _plate_edges(depth, plate_depth):
        if down <= rise <= up:
            strokes.append(Stroke((at(low, rise), at(high, rise)), 0.3, True))
    drawn = []
    for number, along, rise in holes:
        if low - radius <= along <= high + radius and down - radius <= rise <= up + radius:
            x, y = at(along, rise)
            drawn.append((x, y, radius))
            strokes += [Stroke(((x - 6, y), (x + 6, y))), Stroke(((x, y - 6), (x, y + 6)))]
            told = f"{number}: {from_end(along, system)}, {show(rise, 'section length', system)} up"
            on_right = x + 7.5 + 0.62 * _TEXT * len(told) < width - 3
            aside, anchor = (7.5, "left") if on_right else (-7.5, "right")
            words.append(Words(x + aside, y + 2.0, told, _TEXT, anchor))
    for along, rise in _crosses(windows, window):
        x, y = at(along, rise)
        strokes += [Stroke(((x - 4, y - 4), (x + 4, y + 4))), Stroke(((x - 4, y + 4), (x + 4, y - 4)))]
    marks, told = _overlap_words(windows, window, system)
    strokes += [Stroke(tuple(at(*point) for point in line), 0.2, True) for line in marks]
    ruler, ruler_words = _ruler(width)
    told = (Words(_EDGE, height - 0.7 * inch, told),) if told else ()
    return TemplatePage(width, height, tuple(strokes + ruler), tuple(drawn), (*words, *told, *ruler_words), window)


def _plate_edges(depth, plate_depth):
    if plate_depth is None or plate_depth >= depth:
        return ()
    return (depth - plate_depth) / 2, (depth + plate_depth) / 2


def _seams(windows, first):
    """Middles of the overlaps along (first = 0) or upward (first = 2)."""
    ends = sorted({(one[first], one[first + 1]) for one in windows})
    return [(one[1] + two[0]) / 2 for one, two in zip(ends, ends[1:])]


def _crosses(windows, window):
    """Places of the crosses on this page: two in each overlap, a quarter in from the window's sides."""
    low, high, down, up = window
    found = []
    for seam in _seams(windows, 0):
        if low < seam < high:
            found += [(seam, down + part * (up - down)) for part in (0.1, 0.9)]
    for seam in _seams(windows, 2):
        if down < seam < up:
            found += [(low + part * (high - low), seam) for part in (0.25, 0.75)]
    return found


def _overlap_words(windows, window, system):
    """The dashed middle lines of the overlaps on this page, and one sentence that tells what they are for."""
    low, high, down, up = window
    marks = [((seam, down), (seam, up)) for seam in _seams(windows, 0) if low < seam < high]
    places = [from_end(mark[0][0], system) for mark in marks]
    marks += [((low, seam), (high, seam)) for seam in _seams(windows, 2) if down < seam < up]
    if not marks:
        return (), ""
    where = f" Dashed line across: {' and '.join(places)} from the left end." if places else ""
    return marks, f"Next page: lay x on x.{where}"


def _ruler(width):
    left, y = _EDGE, 0.62 * inch
    strokes = [Stroke(((left, y), (left + RULER, y)), 0.5)]
    for half in range(9):
        x = left + half * inch / 2
        strokes.append(Stroke(((x, y), (x, y + (4 if half % 2 == 0 else 2.5)))))
    words = (
        Words(left, y - 4.0, "This ruler is 4 in (101.6 mm) long. If it is not, the print is scaled:", 2.6),
        Words(left, y - 7.6, "print again at 100 %, without fitting to the page.", 2.6),
    )
    return strokes, words
