"""What all drawings share: paper, title, caption, scales, wood and supports."""

import math
from dataclasses import replace

from structlib.ground.refusals import BadInput, check_number
from structlib.pictures.labels import Label, text_width, wrap
from structlib.pictures.scene import Grain, Group, Line, Polygon, rectangle
from structlib.pictures.style import NOTE_SIZE, TITLE_SIZES

MARGIN = 20.0

# page: beside sliders; wide: 16:9 film; tall: 9:16 film. All are equally wide, so that type of one
# size reads equally well wherever a picture is shown 360 pixels wide.
FRAMES = {"page": (720.0, 720.0), "wide": (720.0, 405.0), "tall": (720.0, 1280.0)}

# where the title ends: room for all of its lines is kept even when one is enough
TITLE_ROOM = {"page": 66.0, "wide": 66.0, "tall": 116.0}
# type of an upright film is larger: it has the room
TYPE = {"page": NOTE_SIZE, "wide": NOTE_SIZE, "tall": 22}

MATERIALS = ("sawn", "lvl", "timber", "steel")


def title_labels(title, frame="page"):
    """Lay the title out: in one line if it fits, in two or three otherwise, in the same band.

    Examples
    --------
    >>> [label.text for label in title_labels("Twice the depth: 8 times as stiff")]
    ['Twice the depth: 8 times as stiff']
    """
    if not title.strip():
        raise BadInput("a picture needs a title that says its message, for example 'Twice the depth: 8 times as stiff'")
    room, band = FRAMES[frame][0] - 2 * MARGIN, TITLE_ROOM[frame]
    for most, sizes in TITLE_SIZES["tall" if frame == "tall" else "page"]:
        for size in sizes:
            lines = wrap(title, room, size, bold=True)
            if len(lines) <= most and text_width(max(lines, key=len), size, bold=True) <= room:
                # the lines stand in the middle of the band
                first = band / 2 + 0.36 * size - 0.6 * size * (len(lines) - 1)
                return [
                    Label(line, MARGIN, first + 1.2 * size * k, "ink", size, bold=True) for k, line in enumerate(lines)
                ]
    raise BadInput(f"a title must fit in three lines, about 110 letters, got {len(title)} letters: {title!r}")


def caption_labels(texts, frame, most):
    """Lay caption texts out in lines that begin at a fixed height, so that none moves.

    Examples
    --------
    >>> [label.y for label in caption_labels(["one", "two"], "page", 3)]
    [662.0, 684.0]
    """
    width, size = FRAMES[frame][0], TYPE[frame]
    rows = []
    for k, text in enumerate(texts):
        # an empty paragraph keeps its line, so that the others stay where they are
        rows += [(line, "quiet" if k else "ink") for line in wrap(text, width - 2 * MARGIN, size) or [""]]
    if len(rows) > most:
        raise BadInput(f"the caption needs {len(rows)} lines and {most} fit; shorten the sentence or the scale texts")
    first = caption_top(frame, most) + size
    return [Label(line, MARGIN, first + (size + 4) * k, role, size) for k, (line, role) in enumerate(rows) if line]


def caption_top(frame, most):
    """Give the height at which the captions begin.

    Examples
    --------
    >>> caption_top("page", 3)
    644.0
    """
    size = TYPE[frame]
    return FRAMES[frame][1] - (12.0 if frame != "tall" else 36.0) - (size + 4) * most + 2


def row_apart(row, left, right):
    """Push texts of one row aside until none overlaps; their order and nearly their places are kept.

    Examples
    --------
    >>> pair = [Label("900 lb", 50, 20, size=20), Label("700 lb", 60, 20, size=20)]
    >>> [round(label.x) for label in row_apart(pair, 0, 400)]
    [50, 123]
    """
    row = sorted(row, key=lambda label: label.x)
    halves = [text_width(label.text, label.size, label.bold) / 2 + 5 for label in row]
    if 2 * sum(halves) > right - left:
        raise BadInput("the texts of the point loads or supports do not fit in one row; shorten them or give fewer")
    xs, edge = [], left
    for label, half in zip(row, halves):
        xs.append(max(edge + half, label.x))
        edge = xs[-1] + half
    edge = right
    for k in reversed(range(len(xs))):
        xs[k] = min(xs[k], edge - halves[k])
        edge = xs[k] - halves[k]
    return [replace(label, x=x, anchor="middle") for label, x in zip(row, xs)]


def paper(width, height):
    """Make the paper that a picture lies on.

    Examples
    --------
    >>> paper(10, 10).role
    'paper'
    """
    return rectangle(0, 0, width, height, "paper")


def wood(box, material, *, rings=False):
    """Draw one board, beam or ply as what it is.

    Examples
    --------
    >>> wood((0, 0, 100, 20), "lvl")[1].kind
    'layers'
    """
    left, top, right, bottom = box
    thin_side = min(right - left, bottom - top)
    if material == "steel":
        return [rectangle(*box, "steel")]
    body = rectangle(*box, "wood_cut" if rings else "wood")
    if thin_side < 9:
        return [body]
    if material == "lvl":
        return [body, Grain(box, "layers", max(2, min(9, int(thin_side / (4 if rings else 7)))))]
    return [
        body,
        Grain(box, "rings", 5) if rings else Grain(box, "along", max(1, min(5, int(thin_side / 8)))),
    ]


def wood_row(boxes, material, *, rings=False):
    """Draw several boards, all outlines first, so that they become one path.

    Examples
    --------
    >>> [type(item).__name__ for item in wood_row([(0, 0, 20, 90), (30, 0, 50, 90)], "sawn")]
    ['Polygon', 'Polygon', 'Grain', 'Grain']
    """
    drawn = [wood(box, material, rings=rings) for box in boxes]
    return [parts[0] for parts in drawn] + [part for parts in drawn for part in parts[1:]]


def fitting_factor(wanted, largest, room):
    """Choose the factor by which sag is drawn: the wanted one, or the next round one that fits.

    Examples
    --------
    >>> fitting_factor(40, 1.0, 100), fitting_factor(40, 4.0, 100)
    (40, 20.0)
    """
    if largest <= 0 or wanted * largest <= room:
        return wanted
    tens = 1e6
    while tens > 1e-9:
        for step in (5, 2, 1):
            factor = step * tens
            if factor < wanted and factor * largest <= room:
                return factor
        tens /= 10
    raise BadInput("the deflected shape is too large to be drawn; check the sag that was handed over")


def check_length(name, value, *, low=0.0, high=60_000.0, low_allowed=False):
    """Refuse a length that a house does not have.

    ``value``, ``low``, ``high`` [mm]; gives [mm].

    Examples
    --------
    >>> check_length("clear width", 2400.0)
    2400.0
    """
    if type(value) is float and low < value <= high:
        return value  # the usual case, before anything else is asked
    return check_number(
        name,
        value,
        low=low,
        high=high,
        low_allowed=low_allowed,
        shown=lambda length: f"{length:g} mm",
        hint="lengths are handed over in mm",
    )


def check_pairs(name, xs, ys):
    """Refuse two arrays that do not make a curve.

    ``xs`` [mm].

    Examples
    --------
    >>> check_pairs("sag", [0, 1], [0, 0])
    """
    for word, numbers, most in (("places", xs, 1e7), ("values", ys, 1e15)):
        if len(numbers) and not (
            all([issubclass(kind, float) for kind in set(map(type, numbers))])
            and -most <= min(numbers)
            and max(numbers) <= most
            and all(map(math.isfinite, numbers))
        ):
            check_number(f"{word} of the {name}", numbers, low=-most, high=most)
    if len(xs) != len(ys) or len(xs) < 2:
        raise BadInput(
            f"the {name} needs at least two points and as many places as values, "
            f"got {len(xs)} places and {len(ys)} values"
        )


def peak_index(values):
    """Find the greatest value of a diagram; of equal ones the leftmost, so that dust moves nothing.

    Examples
    --------
    >>> peak_index([5.0, 0.0, -5.0000000001])
    0
    """
    sizes = list(map(abs, values))
    enough = max(sizes) * (1 - 1e-6)
    return next(k for k, size in enumerate(sizes) if size >= enough)


def ground_line(left, right, y, depth=9.0):
    """Draw a floor or soil line with short slanted strokes below it.

    Examples
    --------
    >>> ground_line(0, 100, 50)[-1].role
    'ground'
    """
    count = int((right - left) // 24)
    strokes = [Line(((left + 24 * k + depth + 6, y), (left + 24 * k + 6, y + depth)), "hatch") for k in range(count)]
    return [*strokes, Line(((left, y), (right, y)), "ground")]


def ring(box, grow=6.0, role="governs"):
    """Draw an outline with cut corners around a place, to single it out by shape and weight.

    Examples
    --------
    >>> len(ring((0, 0, 10, 10)).points)
    9
    """
    left, top, right, bottom = box[0] - grow, box[1] - grow, box[2] + grow, box[3] + grow
    c = min(6.0, (right - left) / 3, (bottom - top) / 3)
    return Line(
        (
            (left + c, top),
            (right - c, top),
            (right, top + c),
            (right, bottom - c),
            (right - c, bottom),
            (left + c, bottom),
            (left, bottom - c),
            (left, top + c),
            (left + c, top),
        ),
        role,
    )


def dot(x, y, role, radius=5.0):
    """Draw a small diamond that marks a value on a curve.

    Examples
    --------
    >>> len(dot(0, 0, "shear_dot").points)
    4
    """
    return Polygon(((x - radius, y), (x, y - radius), (x + radius, y), (x, y + radius)), role)


def still_group(name, items):
    """Make a group that seldom changes.

    Examples
    --------
    >>> still_group("frame", []).still
    True
    """
    return Group(name, tuple(items), still=True)


def factor_text(factor):
    """Print a drawing factor.

    Examples
    --------
    >>> factor_text(40), factor_text(1)
    ('40 times true size', 'at true size')
    """
    return "at true size" if factor == 1 else f"{factor:g} times true size"
