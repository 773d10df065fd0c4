"""A picture as a list of simple shapes, every coordinate computed here.

Lengths are viewBox units, x to the right, y down. A renderer lays out nothing: ``runs(scene)``
hands it finished outlines and texts, in painting order, and both renderers draw the same ones.
"""

import math
from dataclasses import dataclass

from structlib.ground.refusals import BadInput
from structlib.pictures.labels import Label, plate_box, text_width
from structlib.pictures.style import NOTE_SIZE


@dataclass(frozen=True)
class Polygon:
    """A closed area."""

    points: tuple
    role: str


@dataclass(frozen=True)
class Line:
    """An open line through points."""

    points: tuple
    role: str


@dataclass(frozen=True)
class Arrow:
    """A straight arrow with a filled head."""

    tail: tuple
    tip: tuple
    role: str = "force"
    head: float = 9.0

    def outlines(self):
        """Give shaft and head as points.

        Examples
        --------
        >>> Arrow((0, 0), (0, 20), head=10).outlines()
        (((0, 0), (0.0, 10.0)), ((0, 20), (-4.0, 10.0), (4.0, 10.0)))
        """
        (x0, y0), (x1, y1) = self.tail, self.tip
        length = math.hypot(x1 - x0, y1 - y0)
        if length == 0:
            return ((self.tail, self.tip), (self.tip, self.tip, self.tip))
        head = min(self.head, length)
        ux, uy = (x1 - x0) / length, (y1 - y0) / length
        nx, ny = x1 - head * ux, y1 - head * uy
        half = 0.4 * head
        return (
            (self.tail, (nx, ny)),
            (self.tip, (nx - half * uy, ny + half * ux), (nx + half * uy, ny - half * ux)),
        )


@dataclass(frozen=True)
class Dimension:
    """A dimension line with slanted ticks, witness lines and its text on a plate."""

    start: tuple
    end: tuple
    offset: float
    text: str
    size: float = NOTE_SIZE
    beside: bool = False

    def parts(self):
        """Give the lines and the label that it is made of.

        Examples
        --------
        >>> [type(part).__name__ for part in Dimension((0, 0), (90, 0), 20, "12 ft").parts()]
        ['Line', 'Line', 'Line', 'Line', 'Line', 'Label']
        """
        level = abs(self.end[0] - self.start[0]) >= abs(self.end[1] - self.start[1])
        way = math.copysign(1.0, self.offset)
        ends, lines = [], []
        for x, y in (self.start, self.end):
            at = (x, self.start[1] + self.offset) if level else (self.start[0] + self.offset, y)
            near = (x, at[1] - way * min(8, abs(self.offset))) if level else (at[0] - way * min(8, abs(self.offset)), y)
            past = (at[0], at[1] + 4 * way) if level else (at[0] + 4 * way, at[1])
            lines.append(Line((near, past), "dimension"))
            ends.append(at)
        ticks = [Line(((x - 4, y + 4), (x + 4, y - 4)), "dimension") for x, y in ends]
        middle = ((ends[0][0] + ends[1][0]) / 2, (ends[0][1] + ends[1][1]) / 2)
        text = [self._label(middle, level, way)] if self.text else []
        return [Line(tuple(ends), "dimension"), *lines, *ticks, *text]

    def _label(self, middle, level, way):
        x, y = middle
        drop = 0.27 * self.size
        length = abs(self.end[0] - self.start[0]) if level else 0.0
        if level and not self.beside and text_width(self.text, self.size) + 30 > length:
            # too long for its line: it stands behind the right end
            return Label(self.text, x + length / 2 + 14, y + drop, "ink", self.size)
        if not self.beside:
            return Label(self.text, x, y + drop, "ink", self.size, "middle", plate="plate")
        if level:
            y = y + 1.0 * self.size + 2 if way > 0 else y - 0.45 * self.size
            return Label(self.text, x, y, "ink", self.size, "middle")
        return Label(self.text, x + 8 * way, y + drop, "ink", self.size, "start" if way > 0 else "end")


@dataclass(frozen=True)
class Grain:
    """Grain of wood inside an upright box: along its length, or the rings of a cut end."""

    box: tuple
    kind: str = "along"
    count: int = 4
    role: str = "wood_grain"

    def lines(self):
        """Give the grain lines, all inside the box.

        Examples
        --------
        >>> len(Grain((0, 0, 100, 20), "layers", 3).lines())
        3
        """
        if self.kind == "rings":
            return self._rings()
        left, top, right, bottom = self.box
        upright = bottom - top > right - left
        if upright:
            left, top, right, bottom = top, left, bottom, right
        wave = 0.0 if self.kind == "layers" else 0.16 * (bottom - top) / (self.count + 1)
        steps = 1 if not wave else max(2, min(10, round((right - left) / 55)))
        lines = []
        for i in range(1, self.count + 1):
            y = top + (bottom - top) * i / (self.count + 1)
            inset = 0.0 if not wave else (right - left) * (0.02 + 0.05 * ((i * 7) % 3))
            length = right - left - 2 * inset
            points = tuple(
                (left + inset + length * k / steps, y + wave * math.sin(1.7 * k + 2.4 * i)) for k in range(steps + 1)
            )
            lines.append(Line(tuple((b, a) for a, b in points) if upright else points, self.role))
        return lines

    def _rings(self):
        # arcs around a pith that lies beside the long face of the board, cut off at its edges
        left, top, right, bottom = self.box
        upright = bottom - top >= right - left
        if not upright:
            left, top, right, bottom = top, left, bottom, right
        long, middle = bottom - top, (top + bottom) / 2
        pith = left - 0.35 * long
        near, far = left - pith, math.hypot(right - pith, long / 2)
        lines = []
        for i in range(1, self.count + 1):
            radius = near + (far - near) * i / (self.count + 1)
            inside = []
            for k in range(17):
                y = top + 1 + (long - 2) * k / 16
                x = pith + math.sqrt(max(0.0, radius**2 - (y - middle) ** 2))
                if left + 1 <= x <= right - 1:
                    inside.append((x, y))
                elif inside:
                    lines.append(inside)
                    inside = []
            lines.append(inside)
        return [
            Line(tuple(line if upright else [(y, x) for x, y in line]), self.role) for line in lines if len(line) > 1
        ]


@dataclass(frozen=True)
class Curve:
    """A curve through arrays; an area when it is closed along a baseline."""

    xs: tuple
    ys: tuple
    role: str
    baseline: float | None = None
    tolerance: float = 0.2

    def parts(self):
        """Give the line, or the area when there is a baseline.

        Examples
        --------
        >>> Curve((0, 5, 10), (0, 5, 10), "shear").parts()[0].points
        ((0.0, 0.0), (10.0, 10.0))
        """
        points = thin(self.xs, self.ys, self.tolerance)
        if self.baseline is None:
            return [Line(points, self.role)]
        closed = ((points[0][0], self.baseline), *points, (points[-1][0], self.baseline))
        return [Polygon(closed, self.role)]


@dataclass(frozen=True)
class Group:
    """Shapes that belong together, and whether they stay while a slider moves."""

    name: str
    items: tuple
    still: bool = False


@dataclass(frozen=True)
class Scene:
    """A whole picture: shapes, the message, the scale and the text for who cannot see it."""

    width: float
    height: float
    items: tuple
    title: str
    caption: str
    alt: str


def thin(xs, ys, tolerance):
    """Leave out the points of a curve that a straight line would meet anyway.

    Examples
    --------
    >>> thin([0, 1, 2, 3], [0, 0, 0, 3], 0.1)
    ((0.0, 0.0), (2.0, 0.0), (3.0, 3.0))
    """
    xs, ys = [float(x) for x in xs], [float(y) for y in ys]
    if len(xs) != len(ys) or len(xs) < 2:
        raise BadInput(f"a curve needs at least two points and as many x as y, got {len(xs)} and {len(ys)}")
    if not all(map(math.isfinite, xs)) or not all(map(math.isfinite, ys)):
        raise BadInput("a curve must be made of finite numbers, got nan or inf")
    keep, stack = {0, len(xs) - 1}, [(0, len(xs) - 1)]
    while stack:
        first, last = stack.pop()
        if last - first < 2:
            continue
        x0, y0, run, rise = xs[first], ys[first], xs[last] - xs[first], ys[last] - ys[first]
        slope = rise / run if run else 0.0
        off = [abs(ys[k] - y0 - slope * (xs[k] - x0)) for k in range(first + 1, last)]
        worst = max(off)
        if worst > tolerance:
            k = first + 1 + off.index(worst)
            keep.add(k)
            stack += [(first, k), (k, last)]
    return tuple((xs[k], ys[k]) for k in sorted(keep))


@dataclass(frozen=True)
class Run:
    """Neighbouring shapes of one role, ready to be drawn as one path."""

    kind: str
    role: str
    outlines: list


def flat(items):
    """List simple shapes: groups opened, dimensions, grain and curves taken apart.

    Examples
    --------
    >>> len(flat([Group("grain", (Grain((0, 0, 90, 20), count=2),))]))
    2
    """
    simple = []
    for item in items:
        kind = type(item)
        if kind in (Polygon, Line, Arrow, Label):
            simple.append(item)
        elif kind is Group:
            simple += flat(item.items)
        elif kind is Grain:
            simple += item.lines()
        elif kind in (Dimension, Curve):
            simple += item.parts()
        else:
            raise BadInput(f"a scene is made of shapes and groups, got {kind.__name__}")
    return simple


def runs(scene):
    """Give what a renderer draws: runs of outlines, and labels, in painting order.

    Examples
    --------
    >>> pair = (Line(((0, 0), (1, 1)), "ink"), Line(((2, 0), (3, 1)), "ink"))
    >>> len(runs(Scene(10, 10, pair, "two lines", "", "two lines")))
    1
    """
    result, labels, last = [], [], None

    def add(kind, role, outlines):
        nonlocal last
        if last is None or last.kind != kind or last.role != role:
            last = Run(kind, role, [])
            result.append(last)
        last.outlines.extend(outlines)

    def settle():
        # labels never overlap, so all their plates may be painted first, as one path each role
        nonlocal last
        for label in sorted(labels, key=lambda label: label.plate):
            if label.plate:
                add("area", label.plate, [(_corners(plate_box(label)), True)])
        result.extend(labels)
        if labels:
            last = None
        labels.clear()

    for item in flat(scene.items):
        kind = type(item)
        if kind is Label:
            labels.append(item)
            continue
        if labels:
            settle()
        if kind is Polygon:
            add("area", item.role, [(item.points, True)])
        elif kind is Line:
            add("line", item.role, [(item.points, False)])
        else:
            shaft, head = item.outlines()
            add("arrow", item.role, [(shaft, False), (head, True)])
    settle()
    return result


def _corners(box):
    left, top, right, bottom = box
    return ((left, top), (right, top), (right, bottom), (left, bottom))


def rectangle(left, top, right, bottom, role):
    """Make an upright rectangle.

    Examples
    --------
    >>> rectangle(0, 0, 2, 1, "wood").points[2]
    (2, 1)
    """
    return Polygon(((left, top), (right, top), (right, bottom), (left, bottom)), role)


def hatch(box, spacing=15.0, role="hatch"):
    """Make slanted hatch lines that end on the edges of a box.

    Examples
    --------
    >>> hatch((0, 0, 10, 10), spacing=10)[0].points
    ((0, 10), (10, 0))
    """
    left, top, right, bottom = box
    width, height = right - left, bottom - top
    lines, reach = [], spacing
    while reach < width + height - 1e-9:
        # the line x + y = reach, measured from the upper left corner
        start = (left, top + reach) if reach <= height else (left + reach - height, bottom)
        end = (left + reach, top) if reach <= width else (right, top + reach - width)
        lines.append(Line((start, end), role))
        reach += spacing
    return lines


def outside(scene):
    """List what lies outside the viewBox.

    Examples
    --------
    >>> outside(Scene(9, 9, (Line(((0, 0), (10, 0)), "ink"),), "too long", "", "too long"))
    ['ink']
    """
    found = []
    for item in runs(scene):
        if type(item) is Label:
            left, top, right, bottom = item.box()
            points, name = ((left, top), (right, bottom)), item.text
        else:
            points, name = [p for outline, _ in item.outlines for p in outline], item.role
        if any(not (-0.05 <= x <= scene.width + 0.05 and -0.05 <= y <= scene.height + 0.05) for x, y in points):
            found.append(name)
    return found
