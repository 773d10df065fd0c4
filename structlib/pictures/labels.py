"""Text before it is rendered: how wide it will be, which box it fills, where it finds room.

Widths are those of a wide sans-serif face, so the boxes are a little larger than what most
screens show; a label that is clear of its neighbours here is clear of them everywhere.
"""

import math
from dataclasses import dataclass, replace

import numpy as np

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

    Parameters
    ----------
    text : str
        One line of text [-].
    size : float
        Type size in viewBox units [-].
    bold : bool
        Whether the type is bold [-].

    Returns
    -------
    float
        Width in viewBox units [-].

    Examples
    --------
    >>> round(text_width("100 lb", 20), 1)
    63.2
    """
    get = _WIDTH.get
    thousandths = sum([get(letter, _WIDE) for letter in text])
    return thousandths * size * (_BOLD if bold else 1.0) / 1000


@dataclass(frozen=True)
class Label:
    """A line of text at a place.

    Parameters
    ----------
    text : str
        What is written, on one line [-].
    x : float
        Where it is anchored, from the left edge, in viewBox units [-].
    y : float
        Its baseline, from the top edge, in viewBox units [-].
    role : str
        One of ``TEXT_ROLES``; it sets the colour [-].
    size : float
        Type size in viewBox units, at least 18 [-].
    anchor : str
        ``"start"``, ``"middle"`` or ``"end"`` of the text lies at ``x`` [-].
    bold : bool
        Whether the type is bold [-].
    plate : str
        Role of the plate behind the text, or an empty text for none [-].
    """

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

        Returns
        -------
        tuple of float
            Left, top, right and bottom in viewBox units [-].

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

    Parameters
    ----------
    label : Label
        The label [-].

    Returns
    -------
    tuple of float
        Left, top, right and bottom in viewBox units [-].

    Examples
    --------
    >>> plate_box(Label("lb", 10, 100, size=20))[0]
    5
    """
    left, top, right, bottom = label.box()
    return (left - 5, top - 2, right + 5, bottom + 1)


def boxes_meet(one, other, gap=0.0):
    """Tell whether two boxes overlap or come nearer than a gap.

    Parameters
    ----------
    one : tuple of float
        Left, top, right, bottom in viewBox units [-].
    other : tuple of float
        Left, top, right, bottom in viewBox units [-].
    gap : float
        Least distance in viewBox units [-].

    Returns
    -------
    bool
        True when they meet [-].

    Examples
    --------
    >>> boxes_meet((0, 0, 10, 10), (11, 0, 20, 10))
    False
    >>> boxes_meet((0, 0, 10, 10), (11, 0, 20, 10), gap=2)
    True
    """
    return (
        one[0] < other[2] + gap
        and other[0] < one[2] + gap
        and one[1] < other[3] + gap
        and other[1] < one[3] + gap
    )


def wrap(text, width, size, bold=False):
    """Break a text into lines that fit a width; a word is never broken.

    Parameters
    ----------
    text : str
        The text [-].
    width : float
        Room for a line, in viewBox units [-].
    size : float
        Type size in viewBox units [-].
    bold : bool
        Whether the type is bold [-].

    Returns
    -------
    list of str
        The lines [-].

    Examples
    --------
    >>> wrap("the load goes down", 120, 20)
    ['the load', 'goes down']
    """
    lines, line = [], ""
    for word in _glued(text.split()):
        longer = f"{line} {word}" if line else word
        if line and text_width(longer, size, bold) > width:
            lines.append(line)
            line = word
        else:
            line = longer
    return lines + [line] if line else lines


def spread(labels, *, top, bottom, gap=3.0):
    """Move labels of one column up or down until none overlaps another.

    The order from top to bottom is kept and the moves are small: first each label is pushed
    below the one above it, then, if the last one left the column, all are pushed up again.

    Parameters
    ----------
    labels : list of Label
        Labels that share a column [-].
    top : float
        Highest place of a box, in viewBox units [-].
    bottom : float
        Lowest place of a box, in viewBox units [-].
    gap : float
        Least distance between boxes, in viewBox units [-].

    Returns
    -------
    list of Label
        The labels in the order given, at their new baselines [-].

    Raises
    ------
    BadInput
        When the column is too short for the labels.

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
    # a number stays with the short word behind it: "820 lb/ft" is never torn
    glued = []
    for word in words:
        if glued and glued[-1][0].isdigit() and " " not in glued[-1] and len(word) <= 6 and word[0].isalpha():
            glued[-1] += " " + word
        else:
            glued.append(word)
    return glued


@dataclass(frozen=True)
class Callout:
    """A label that wants a place near the thing it names, with a thin leader to it.

    Parameters
    ----------
    text : str
        What is written [-].
    x : float
        The thing it names, from the left edge, in viewBox units [-].
    y : float
        The thing it names, from the top edge, in viewBox units [-].
    role : str
        Role of the text [-].
    size : float
        Type size in viewBox units [-].
    bold : bool
        Whether the type is bold [-].
    plate : str
        Role of the plate behind the text [-].
    lean : float
        How far the text would rather stand aside, in halves of its width, positive right [-].
    """

    text: str
    x: float
    y: float
    role: str = "ink"
    size: float = 20
    bold: bool = False
    plate: str = "plate"
    lean: float = 0.0


# sideways moves to try, in widths of the label
_SHIFTS = np.array([0.0, 0.25, -0.25, 0.42, -0.42, 0.6, -0.6, 0.8, -0.8, 1.2, -1.2, 1.7, -1.7, 2.3, -2.3])


def place_callouts(callouts, *, bounds, taken=(), avoid=(), row=9.0):
    """Find a free place below its thing for each callout, and a leader that crosses no text.

    The first callouts choose first. A place costs its distance; places that touch another
    text are never used while a free one exists.

    Parameters
    ----------
    callouts : list of Callout
        The labels to place, the most important first [-].
    bounds : tuple of float
        Left, top, right and bottom of the room, in viewBox units [-].
    taken : iterable of tuple
        Boxes of texts already placed [-].
    avoid : iterable of tuple
        Drawn things that a text had better not cover: pairs of a box and its cost [-].
    row : float
        Step between rows of places, in viewBox units [-].

    Returns
    -------
    list of tuple
        For each callout its Label and its leader, two points [-].

    Examples
    --------
    >>> placed = place_callouts([Callout("sag", 50, 10)], bounds=(0, 20, 100, 100))
    >>> placed[0][0].text, placed[0][0].anchor
    ('sag', 'middle')
    """
    boxes, leaders, result = list(taken), [], []
    avoid = list(avoid)
    for callout in callouts:
        label, leader = _best_place(callout, bounds, boxes, leaders, avoid, row)
        boxes.append(plate_box(label))
        leaders.append(leader)
        result.append((label, leader))
    return result


def _best_place(callout, bounds, boxes, leaders, avoid, row):
    costs, xs, ys, reach = _candidates(callout, bounds, row)
    half, up, down = reach
    places = np.column_stack((xs - half, ys - up, xs + half, ys + down))
    costs = costs + 1e6 * _meets(places, boxes, 2).sum(axis=1)
    if avoid:
        costs = costs + _meets(places, [box for box, _ in avoid], 0) @ np.array([price for _, price in avoid])
    best, least = None, math.inf
    # only now the dear questions about leaders, and only while a place can still win
    for k in np.argsort(costs, kind="stable"):
        cost = float(costs[k])
        if cost >= least:
            break
        box = tuple(places[k].tolist())
        leader = _leader(callout, box)
        cost += 900 * sum([_segment_meets(leader, other) for other in boxes])
        cost += 700 * sum([_segment_meets(other, box) for other in leaders])
        cost += 400 * sum([_segments_cross(leader, other) for other in leaders])
        if cost < least:
            best, least = (float(xs[k]), float(ys[k]), leader), cost
    x, y, leader = best
    return (
        Label(callout.text, x, y, callout.role, callout.size, "middle", callout.bold, callout.plate),
        leader,
    )


def _meets(places, boxes, gap):
    # which place (row) comes nearer than the gap to which box (column)
    b = np.array(boxes, dtype=float).reshape(-1, 4)
    p = places[:, None, :]
    return (
        (p[..., 0] < b[:, 2] + gap)
        & (b[:, 0] < p[..., 2] + gap)
        & (p[..., 1] < b[:, 3] + gap)
        & (b[:, 1] < p[..., 3] + gap)
    )


def _candidates(callout, bounds, row):
    left, top, right, bottom = bounds
    # how far the plate reaches from the middle of the baseline: to a side, up and down
    half = text_width(callout.text, callout.size, callout.bold) / 2 + 5
    up, down = ASCENT * callout.size + 2, DESCENT * callout.size + 1
    low, high = left + half, max(left + half, right - half)
    first = max(top, callout.y + 8) + up
    wish = min(max(callout.x + callout.lean * half, low), high)
    xs = np.clip(wish + _SHIFTS * 2 * half, low, high)
    ys = np.arange(first, bottom - down + 1e-9, row) if bottom - down >= first else np.array([bottom - down])
    # sideways beyond the label's own half is dear: a steep leader reads better than a flat one
    aside = np.abs(xs - wish)
    costs = (0.5 * aside + np.maximum(0.0, aside - half))[None, :] + 0.8 * (ys - first)[:, None]
    xs, ys = np.meshgrid(xs, ys)
    return costs.ravel(), xs.ravel(), ys.ravel(), (half, up, down)


def _leader(callout, box):
    # the leader ends on the nearest point of the top edge (or the bottom edge, if the thing is below)
    x = min(max(callout.x, box[0] + 8), box[2] - 8)
    y = box[1] if callout.y <= box[1] else (box[3] if callout.y >= box[3] else callout.y)
    return ((callout.x, callout.y), (x, y))


def _segment_meets(segment, box):
    # clip the segment to the box by its parameter (slabs)
    (x0, y0), (x1, y1) = segment
    enter, leave = 0.0, 1.0
    for start, step, low, high in ((x0, x1 - x0, box[0], box[2]), (y0, y1 - y0, box[1], box[3])):
        if abs(step) < 1e-9:
            if start <= low or start >= high:
                return False
            continue
        a, b = (low - start) / step, (high - start) / step
        enter, leave = max(enter, min(a, b)), min(leave, max(a, b))
    return leave - enter > 1e-6


def _segments_cross(one, other):
    def side(a, b, c):
        return (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0])

    return side(*one, other[0]) * side(*one, other[1]) < 0 and side(*other, one[0]) * side(*other, one[1]) < 0
