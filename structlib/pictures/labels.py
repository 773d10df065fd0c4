"""Text before it is rendered: how wide it will be, which box it fills, how it is kept apart.

Widths are those of a wide sans-serif face, so the boxes are a little larger than what most
screens show; a label that is clear of its neighbours here is clear of them everywhere.
"""

from dataclasses import dataclass, replace
from functools import lru_cache

from structlib.ground.refusals import BadInput
from structlib.pictures.style import LABEL_SIZE, LEAST_SIZE, TEXT_ROLES

# widths in thousandths of the type size; a letter that is missing counts as a wide one
_GROUPS = {
    280: "ijl'",
    320: " ,.·IJ",
    340: "/:;|\\",
    365: "-f",
    400: "!()[]t²³",
    415: "r",
    460: '"°',
    525: "sz*?_–",
    595: "cvxyk",
    640: "0123456789aeoubdghnpq$",
    690: "ABCEFKLPRSTUVXYZ",
    790: "DGHNOQ&",
    840: "+<=>~#×≈≤≥−w",
    870: "M",
    990: "m%W@½¼¾",
}
_WIDTH = {letter: width for width, letters in _GROUPS.items() for letter in letters}
_WIDE = 990
_BOLD = 1.12

ASCENT = 0.78
DESCENT = 0.24


def text_width(text, size, bold=False):
    """Estimate how wide a text will be.

    Examples
    --------
    >>> round(text_width("100 lb", 20), 1)
    63.2
    """
    return _in_units(_thousandths(text), size, bold)


def _in_units(thousandths, size, bold):
    return thousandths * size * (_BOLD if bold else 1.0) / 1000


@lru_cache(maxsize=4096)
def _thousandths(text):
    return sum([_WIDTH.get(letter, _WIDE) for letter in text])


@dataclass(frozen=True)
class Label:
    """A line of text at a place."""

    text: str
    x: float
    y: float
    role: str = "ink"
    size: float = LABEL_SIZE
    anchor: str = "start"
    bold: bool = False
    plate: str = ""

    def __post_init__(self):
        if self.role not in TEXT_ROLES:
            raise BadInput(f"label role {self.role!r} is not known; accepted are {', '.join(TEXT_ROLES)}")
        if self.size < LEAST_SIZE:
            raise BadInput(
                f"a label must be at least {LEAST_SIZE} units high to be read on a phone, "
                f"got {self.size:g} for {self.text!r}"
            )

    def box(self):
        """Give the box that the text fills.

        Examples
        --------
        >>> Label("lb", 10, 100, size=20).box()[0]
        10
        """
        width = text_width(self.text, self.size, self.bold)
        left = self.x - {"start": 0, "middle": width / 2, "end": width}[self.anchor]
        return (left, self.y - ASCENT * self.size, left + width, self.y + DESCENT * self.size)


def plate_box(label):
    """Give the box of the plate behind a label.

    Examples
    --------
    >>> plate_box(Label("lb", 10, 100, size=20))[0]
    5
    """
    left, top, right, bottom = label.box()
    return (left - 5, top - 2, right + 5, bottom + 1)


def wrap(text, width, size, bold=False):
    """Break a text into lines that fit a width; a word is never broken.

    Examples
    --------
    >>> wrap("the load goes down", 120, 20)
    ['the load', 'goes down']
    """
    return list(_wrapped(text, width, size, bold))


@lru_cache(maxsize=256)
def _measured(text):
    return [(word, _thousandths(word)) for word in _glued(text.split())]


@lru_cache(maxsize=1024)
def _wrapped(text, width, size, bold):
    lines, used = [], 0
    for word, wide in _measured(text):
        longer = used + _WIDTH[" "] + wide
        if lines and _in_units(longer, size, bold) <= width:
            lines[-1] += f" {word}"
            used = longer
        else:
            lines.append(word)
            used = wide
    return lines


def spread(labels, *, top, bottom, gap=3.0):
    """Move labels of one column up or down until none overlaps another.

    The order from top to bottom is kept and the moves are small: first each label is pushed
    below the one above it, then, if the last one left the column, all are pushed up again.

    Examples
    --------
    >>> both = [Label("a", 0, 50), Label("b", 0, 51)]
    >>> [round(label.y) for label in spread(both, top=0, bottom=200)]
    [50, 75]
    """
    order = sorted(range(len(labels)), key=lambda i: (labels[i].y, i))
    heights = [(ASCENT + DESCENT) * labels[i].size for i in order]
    if sum(heights) + gap * (len(labels) - 1) > bottom - top + 1e-9:
        raise BadInput(f"{len(labels)} labels do not fit in a column {bottom - top:g} units high; give fewer")
    tops, edge = [], top
    for i, height in zip(order, heights):
        tops.append(max(edge, labels[i].y - ASCENT * labels[i].size))
        edge = tops[-1] + height + gap
    edge = bottom
    for k in reversed(range(len(tops))):
        tops[k] = min(tops[k], edge - heights[k])
        edge = tops[k] - gap
    moved = list(labels)
    for i, y in zip(order, tops):
        moved[i] = replace(labels[i], y=y + ASCENT * labels[i].size)
    return moved


def _glued(words):
    # a number stays with the short word or sign behind it: "820 lb/ft" and "94 %" are never torn
    glued = []
    for word in words:
        if (
            glued
            and glued[-1][0].isdigit()
            and " " not in glued[-1]
            and len(word) <= 6
            and (word[0].isalpha() or word == "%")
        ):
            glued[-1] += " " + word
        else:
            glued.append(word)
    return glued
