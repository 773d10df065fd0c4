"""What all drawings share: paper, title, caption, scales, wood and supports."""

from structlib.ground.refusals import BadInput, check_number
from structlib.pictures.labels import Label, wrap
from structlib.pictures.scene import Grain, Group, Line, Polygon, rectangle
from structlib.pictures.style import NOTE_SIZE, TITLE_SIZE, TITLE_SIZE_LONG

MARGIN = 20.0
STEPS = (1, 2, 5)

# page: beside sliders; wide: 16:9 film; tall: 9:16 film
FRAMES = {"page": (720.0, 720.0), "wide": (1280.0, 720.0), "tall": (720.0, 1280.0)}

MATERIALS = ("sawn", "lvl", "timber", "steel")


def title_labels(title, width):
    """Lay the title out in at most two lines.

    Parameters
    ----------
    title : str
        The message [-].
    width : float
        Width of the picture in viewBox units [-].

    Returns
    -------
    list of Label
        One or two bold labels at the top [-].

    Raises
    ------
    BadInput
        When the title is empty or needs more than two lines.

    Examples
    --------
    >>> [label.text for label in title_labels("Twice the depth: 8 times as stiff", 720)]
    ['Twice the depth: 8 times as stiff']
    """
    if not title.strip():
        raise BadInput(
            "a picture needs a title that says its message, for example "
            "'Twice the depth: 8 times as stiff'"
        )
    for size in (TITLE_SIZE, TITLE_SIZE_LONG):
        lines = wrap(title, width - 2 * MARGIN, size, bold=True)
        if len(lines) <= 2:
            return [Label(line, MARGIN, 34 + 30 * k, "ink", size, bold=True) for k, line in enumerate(lines)]
    raise BadInput(f"a title must fit in two lines, about 80 letters, got {len(title)} letters: {title!r}")


def caption_labels(texts, width, height, most):
    """Lay caption texts out in lines that end at the bottom of the picture.

    Parameters
    ----------
    texts : list of str
        Paragraphs; the first one is printed in ink, the others quietly [-].
    width : float
        Width of the picture in viewBox units [-].
    height : float
        Height of the picture in viewBox units [-].
    most : int
        Greatest number of lines [-].

    Returns
    -------
    list of Label
        The lines from top to bottom [-].

    Raises
    ------
    BadInput
        When there are too many lines.

    Examples
    --------
    >>> [label.y for label in caption_labels(["one", "two"], 720, 720, 3)]
    [684.0, 706.0]
    """
    rows = []
    for k, text in enumerate(texts):
        rows += [(line, "quiet" if k else "ink") for line in wrap(text, width - 2 * MARGIN, NOTE_SIZE)]
    if len(rows) > most:
        raise BadInput(
            f"the caption needs {len(rows)} lines and {most} fit; shorten the sentence or the scale texts"
        )
    first = height - 14.0 - 22.0 * (len(rows) - 1)
    return [Label(line, MARGIN, first + 22.0 * k, role, NOTE_SIZE) for k, (line, role) in enumerate(rows)]


def paper(width, height):
    """Make the paper that a picture lies on.

    Parameters
    ----------
    width : float
        Width in viewBox units [-].
    height : float
        Height in viewBox units [-].

    Returns
    -------
    Polygon
        The paper [-].

    Examples
    --------
    >>> paper(10, 10).role
    'paper'
    """
    return rectangle(0, 0, width, height, "paper")


def wood(box, material, *, rings=False):
    """Draw one board, beam or ply as what it is.

    Parameters
    ----------
    box : tuple of float
        Left, top, right and bottom in viewBox units [-].
    material : str
        ``"sawn"``, ``"lvl"``, ``"timber"`` or ``"steel"`` [-].
    rings : bool
        True for a cut end, False for the face [-].

    Returns
    -------
    list
        The outline and its grain [-].

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

    Parameters
    ----------
    boxes : list of tuple
        Boxes in viewBox units [-].
    material : str
        ``"sawn"``, ``"lvl"``, ``"timber"`` or ``"steel"`` [-].
    rings : bool
        True for cut ends [-].

    Returns
    -------
    list
        Outlines, then grain [-].

    Examples
    --------
    >>> [type(item).__name__ for item in wood_row([(0, 0, 20, 90), (30, 0, 50, 90)], "sawn")]
    ['Polygon', 'Polygon', 'Grain', 'Grain']
    """
    drawn = [wood(box, material, rings=rings) for box in boxes]
    return [parts[0] for parts in drawn] + [part for parts in drawn for part in parts[1:]]


def fitting_factor(wanted, largest, room):
    """Choose the factor by which sag is drawn: the wanted one, or the next round one that fits.

    Parameters
    ----------
    wanted : float
        Factor asked for [-].
    largest : float
        Largest sag at true scale, in viewBox units [-].
    room : float
        Room for the drawn sag, in viewBox units [-].

    Returns
    -------
    float
        The factor to draw with and to print [-].

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

    Parameters
    ----------
    name : str
        What the length is [-].
    value : float
        The length [mm].
    low : float
        Least length [mm].
    high : float
        Greatest length [mm].
    low_allowed : bool
        Whether the least length itself is accepted [-].

    Returns
    -------
    float
        The length [mm].

    Examples
    --------
    >>> check_length("clear width", 2400.0)
    2400.0
    """
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

    Parameters
    ----------
    name : str
        What the curve is [-].
    xs : sequence of float
        Places [mm].
    ys : sequence of float
        Values [any].

    Returns
    -------
    None
        Nothing; it only refuses [-].

    Raises
    ------
    BadInput
        When lengths differ, fewer than two points, or numbers are not finite.

    Examples
    --------
    >>> check_pairs("sag", [0, 1], [0, 0])
    """
    check_number(f"places of the {name}", xs, low=-1e7, high=1e7)
    check_number(f"values of the {name}", ys, low=-1e15, high=1e15)
    if len(xs) != len(ys) or len(xs) < 2:
        raise BadInput(
            f"the {name} needs at least two points and as many places as values, "
            f"got {len(xs)} places and {len(ys)} values"
        )


def ground_line(left, right, y, depth=9.0):
    """Draw a floor or soil line with short slanted strokes below it.

    Parameters
    ----------
    left : float
        Left end in viewBox units [-].
    right : float
        Right end in viewBox units [-].
    y : float
        Its height from the top, in viewBox units [-].
    depth : float
        Length of the strokes down, in viewBox units [-].

    Returns
    -------
    list of Line
        The strokes and the line [-].

    Examples
    --------
    >>> ground_line(0, 100, 50)[-1].role
    'ground'
    """
    count = int((right - left) // 24)
    strokes = [
        Line(((left + 24 * k + depth + 6, y), (left + 24 * k + 6, y + depth)), "hatch") for k in range(count)
    ]
    return [*strokes, Line(((left, y), (right, y)), "ground")]


def ring(box, grow=6.0, role="governs"):
    """Draw an outline with cut corners around a place, to single it out by shape and weight.

    Parameters
    ----------
    box : tuple of float
        Left, top, right and bottom in viewBox units [-].
    grow : float
        How far the outline stands off the box [-].
    role : str
        Role in the style sheet [-].

    Returns
    -------
    Line
        The closed outline [-].

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

    Parameters
    ----------
    x : float
        Its middle from the left edge, in viewBox units [-].
    y : float
        Its middle from the top edge, in viewBox units [-].
    role : str
        Role in the style sheet [-].
    radius : float
        Half its width in viewBox units [-].

    Returns
    -------
    Polygon
        The diamond [-].

    Examples
    --------
    >>> len(dot(0, 0, "shear_dot").points)
    4
    """
    return Polygon(((x - radius, y), (x, y - radius), (x + radius, y), (x, y + radius)), role)


def still_group(name, items):
    """Make a group that seldom changes.

    Parameters
    ----------
    name : str
        What the group is [-].
    items : list
        Its shapes [-].

    Returns
    -------
    Group
        The group, marked still [-].

    Examples
    --------
    >>> still_group("frame", []).still
    True
    """
    return Group(name, tuple(items), still=True)


def factor_text(factor):
    """Print a drawing factor.

    Parameters
    ----------
    factor : float
        The factor [-].

    Returns
    -------
    str
        Text such as ``"40 times true size"`` or ``"at true size"`` [-].

    Examples
    --------
    >>> factor_text(40), factor_text(1)
    ('40 times true size', 'at true size')
    """
    return "at true size" if factor == 1 else f"{factor:g} times true size"
