"""Checks of a beam: a symbol on the member where each comes nearest its limit, a reading in a strip below."""

from structlib.pictures.drawings import parts
from structlib.pictures.drawings.opening_view import KINDS
from structlib.pictures.labels import Label
from structlib.pictures.scene import Line, Polygon, hatch


def symbols(view, at):
    """Draw every check on the member where it comes nearest its limit.

    Examples
    --------
    >>> from structlib.pictures.drawings.opening_view import OpeningView
    >>> bare = OpeningView("Bare", 2438.4, 76.2, 76.2, 235.0, 2057.4, 2, 38.1, "sawn", "2-2x10", "3 in",
    ...                    "9 in", "8 ft")
    >>> symbols(bare, None)
    ([], [])
    """
    boxes, lines = [], []
    for mark in view.marks:
        points, box = _SYMBOLS[mark.kind](view, at, mark)
        role = "governs_thin" if mark.governs else ("bearing" if mark.kind == "bearing" else "mark")
        lines += [Line(each, role) for each in points]
        if mark.governs:
            lines.append(parts.ring(box))
        boxes.append((mark, box))
    return boxes, lines


def leaders(boxes, at):
    """Draw a thin line from each symbol to its reading.

    Examples
    --------
    >>> leaders([], None)
    []
    """
    lines = []
    for mark, (left, _, right, bottom) in boxes:
        # the fibres of bending are named from their left, so that the sag has the middle for itself
        x = left if mark.kind == "bending" else (left + right) / 2
        lines.append(Line(((x, bottom), (_slot(at, mark.kind), at.rows.strip[0] - 2)), "leader"))
    return lines


def strip(view, at):
    """Write the reading of every check in its own place below the floor.

    Examples
    --------
    >>> from structlib.pictures.drawings.opening_view import OpeningView
    >>> bare = OpeningView("Bare", 2438.4, 76.2, 76.2, 235.0, 2057.4, 2, 38.1, "sawn", "2-2x10", "3 in",
    ...                    "9 in", "8 ft")
    >>> strip(bare, None)
    []
    """
    frames, labels = [], []
    for mark in view.marks:
        top, name, value, last = at.rows.strip
        x, role, bold = _slot(at, mark.kind), "governs" if mark.governs else "ink", mark.governs
        small, large = (20, 25) if at.frame == "tall" else (18, 22)
        labels += [
            Label(mark.kind, x, top + name, role, small, "middle", bold),
            Label(_share_text(mark.share), x, top + value, role, large, "middle", bold),
        ]
        if mark.governs:
            labels.append(Label("governs", x, top + last, role, 18, "middle", bold))
            half = _slot_width(at) / 2 - 5
            frame = parts.ring((x - half, top, x + half, top + last + 3), 3)
            frames.append(Polygon(frame.points[:-1], "governs_plate"))
    return frames + labels


def _share_text(share):
    return f"{100 * share:.0f} %" if share < 9.995 else f"{share:.0f} x"


def _slot_width(at):
    return (at.right - at.left) / len(KINDS)


def _slot(at, kind):
    return at.left + (KINDS.index(kind) + 0.5) * _slot_width(at)


# Each symbol gives its lines, as points, and the box it fills.


def _bending(view, at, mark):
    # fibres pulled open at the bottom edge
    x, y, high = at.x(mark.x), at.beam_bottom, min(16.0, 0.45 * (at.beam_bottom - at.beam_top))
    lines = [
        ((x + d - 3, y), (x + d, y - high * s), (x + d + 3, y))
        for d, s in ((-18, 0.5), (-9, 0.8), (0, 1.0), (9, 0.8), (18, 0.5))
    ]
    return lines, (x - 22, y - high, x + 22, y)


def _shear(view, at, mark):
    # a slanted crack near the end, rising towards the middle of the beam
    x, top, bottom = at.x(mark.x), at.beam_top + 3, at.beam_bottom - 3
    middle = (at.beam_left + at.beam_right) / 2
    lean = min(14.0, (bottom - top) / 2) * (1 if x <= middle else -1)
    x = min(max(x, at.beam_left + 18), at.beam_right - 18)
    third = (bottom - top) / 3
    crack = (
        (x - lean, bottom),
        (x - 0.1 * lean, bottom - third),
        (x + 0.1 * lean, bottom - 2 * third),
        (x + lean, top),
    )
    return [crack], (x - abs(lean) - 2, top, x + abs(lean) + 2, bottom + 3)


def _bearing(view, at, mark):
    # crushed wood over the seat
    on_left = at.x(mark.x) <= (at.beam_left + at.beam_right) / 2
    a, b = (at.beam_left, at.seat_left) if on_left else (at.seat_right, at.beam_right)
    high = min(12.0, 0.5 * (at.beam_bottom - at.beam_top))
    top, bottom = at.beam_bottom - high, at.beam_bottom
    lines = [((a, top), (b, top)), ((a, bottom), (b, bottom))]
    lines += [line.points for line in hatch((a, top, b, bottom), 4.0)]
    return lines, (a, top, b, bottom)


def _sag(view, at, mark):
    # how far the low point went, from the straight edge to the shape
    if len(view.sag_x):
        k = max(range(len(view.sag_y)), key=lambda i: view.sag_y[i])
        x, y = at.x(float(view.sag_x[k])), at.sag(float(view.sag_y[k]))
    else:
        x, y = (at.beam_left + at.beam_right) / 2, at.beam_bottom
    top = at.beam_bottom
    return (
        [((x - 7, top), (x + 7, top)), ((x, top), (x, y)), ((x - 7, y), (x + 7, y))],
        (x - 8, max(top, y - 6), x + 8, y),
    )


def _stability(view, at, mark):
    # the pressed edge swings sideways
    x, y = at.x(mark.x), at.beam_top + min(8.0, 0.25 * (at.beam_bottom - at.beam_top))
    wave = tuple((x - 40 + 8 * k, y + (0, 3.5, 0, -3.5)[k % 4]) for k in range(11))
    return [wave], (x - 42, y - 5, x + 42, y + 5)


_SYMBOLS = {
    "bending": _bending,
    "shear": _shear,
    "bearing": _bearing,
    "sag": _sag,
    "stability": _stability,
}
