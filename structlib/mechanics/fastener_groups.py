"""Statics of fasteners: shares of a force and a moment in a group, and the shear along a nailed seam.

In the plane of a group x runs to the right, y up, and a moment is positive counterclockwise.
Every formula is true in any consistent system, and numbers, arrays and sympy symbols pass through.
"""

from structlib.ground.refusals import BadInput, check_number, is_symbolic
from structlib.ground.roots import square_root

_MOST = 1e15


def group_centre(points):
    """Return the centre of a group of like fasteners: the mean of their places.

    Parameters
    ----------
    points : iterable of tuple
        Place (x, y) of each fastener [mm].

    Returns
    -------
    tuple of float
        The centre (x, y) [mm].

    Examples
    --------
    >>> group_centre([(0.0, 0.0), (4.0, 2.0)])
    (2.0, 1.0)
    """
    places = _checked_points(points)
    count = len(places)
    return sum(x for x, _ in places) / count, sum(y for _, y in places) / count


def polar_moment(points):
    """Return the sum of the squared distances of like fasteners from their centre.

    Parameters
    ----------
    points : iterable of tuple
        Place (x, y) of each fastener [mm].

    Returns
    -------
    float
        Polar moment of the group, with each fastener counted as 1 [mm2].

    Examples
    --------
    >>> polar_moment([(-3.0, 0.0), (3.0, 0.0)])
    18.0
    """
    places = _checked_points(points)
    middle_x, middle_y = group_centre(places)
    return sum((x - middle_x) ** 2 + (y - middle_y) ** 2 for x, y in places)


def fastener_forces(points, *, force_x=0.0, force_y=0.0, at=None, moment=0.0):
    """Share a force and a moment among like fasteners, all elastic and the pieces rigid (the vector method).

    Each fastener takes the same part of the force. The moment about the centre turns the pieces: each
    fastener resists across its own radius, in proportion to that radius.

    Parameters
    ----------
    points : iterable of tuple
        Place (x, y) of each fastener [mm].
    force_x : float or sympy expression
        Force on the group to the right [N].
    force_y : float or sympy expression
        Force on the group upward [N].
    at : tuple of float
        Where that force acts, (x, y); None for the centre of the group [mm].
    moment : float or sympy expression
        Moment on the group besides, counterclockwise [N*mm].

    Returns
    -------
    tuple of tuple
        Force (x, y) that each fastener takes; together they are the load itself [N].

    Examples
    --------
    >>> fastener_forces([(-50.0, 0.0), (50.0, 0.0)], force_y=-1000.0, at=(200.0, 0.0))
    ((0.0, 1500.0), (0.0, -2500.0))
    """
    places = _checked_points(points)
    for name, value in (("force to the right", force_x), ("force upward", force_y), ("moment", moment)):
        _check_one(name, value, hint="for example 1500*lb")
    middle_x, middle_y = group_centre(places)
    load_x, load_y = (middle_x, middle_y) if at is None else _checked_points([at])[0]
    turning = moment + (load_x - middle_x) * force_y - (load_y - middle_y) * force_x
    stiffness, count = polar_moment(places), len(places)
    spread = max((abs(x) + abs(y) for x, y in places), default=0.0) if not _any_symbol(places) else None
    if spread is not None and stiffness <= 1e-18 * spread**2:
        if is_symbolic(turning) or turning != 0:
            raise BadInput(
                "fasteners that all sit in one spot cannot resist a moment; give at least two places, "
                "for example [(0, 0), (100, 0)]"
            )
        return tuple((force_x / count, force_y / count) for _ in places)
    return tuple(
        (
            force_x / count - turning * (y - middle_y) / stiffness,
            force_y / count + turning * (x - middle_x) / stiffness,
        )
        for x, y in places
    )


def greatest_fastener_force(forces):
    """Return the greatest force on any fastener and which one takes it.

    Parameters
    ----------
    forces : iterable of tuple
        Force (x, y) on each fastener, numbers only [N].

    Returns
    -------
    tuple of (float, int)
        Size of the greatest force, and its place in the list counted from 0 [N, -].

    Examples
    --------
    >>> greatest_fastener_force([(3.0, 4.0), (0.0, -1.0)])
    (5.0, 0)
    """
    pairs = _checked_points(forces)
    if _any_symbol(pairs):
        raise BadInput("the greatest force is found among numbers only; put numbers in for the symbols first")
    sizes = [square_root(float(x) ** 2 + float(y) ** 2) for x, y in pairs]
    return max(sizes), sizes.index(max(sizes))


def shear_flow(*, shear, first_moment, inertia):
    """Return the force by length that wants to slide one part of a beam along the rest: V Q / I.

    Parameters
    ----------
    shear : float, numpy.ndarray or sympy expression
        Shear in the beam there [N].
    first_moment : float, numpy.ndarray or sympy expression
        First moment Q about the neutral axis of the part that is fastened on [mm3].
    inertia : float, numpy.ndarray or sympy expression
        Second moment of area I of the whole section, joined [mm4].

    Returns
    -------
    float, numpy.ndarray or sympy expression
        Force by length along the seam [N/mm].

    Examples
    --------
    >>> shear_flow(shear=1000.0, first_moment=30.0, inertia=600.0)
    50.0
    """
    _check_not_negative("shear", shear, hint="give its size, without a sign")
    _check_positive("first moment", first_moment, hint="area of the part times the distance to its centre")
    _check_positive("second moment of area", inertia, hint="for example 98.9*inch**4")
    return shear * first_moment / inertia


def fastener_spacing(*, value, flow, lines=1):
    """Return the spacing along a seam at which the fasteners just carry a force by length.

    Parameters
    ----------
    value : float, numpy.ndarray or sympy expression
        What one fastener carries [N].
    flow : float, numpy.ndarray or sympy expression
        Force by length across the seam [N/mm].
    lines : int
        Lines of fasteners side by side that share it [-].

    Returns
    -------
    float, numpy.ndarray or sympy expression
        Spacing along each line [mm].

    Examples
    --------
    >>> fastener_spacing(value=500.0, flow=5.0, lines=2)
    200.0
    """
    _check_positive("value of one fastener", value, hint="for example 120*lb")
    _check_positive("force by length", flow, hint="for example 300*plf")
    _check_positive("lines of fasteners", lines, hint="for example 2")
    return lines * value / flow


def fastener_flow(*, value, spacing, lines=1):
    """Return the force by length that fasteners at a spacing carry across a seam.

    Parameters
    ----------
    value : float, numpy.ndarray or sympy expression
        What one fastener carries [N].
    spacing : float, numpy.ndarray or sympy expression
        Spacing along each line [mm].
    lines : int
        Lines of fasteners side by side [-].

    Returns
    -------
    float, numpy.ndarray or sympy expression
        Force by length [N/mm].

    Examples
    --------
    >>> fastener_flow(value=500.0, spacing=200.0, lines=2)
    5.0
    """
    _check_positive("spacing", spacing, hint="for example 6*inch")
    # the same balance, solved for the flow: spacing and flow change places
    return fastener_spacing(value=value, flow=spacing, lines=lines)


def _checked_points(points):
    example = "for example [(0, 0), (100, 0)]"
    try:
        places = [tuple(point) for point in points]
    except TypeError:
        raise BadInput(f"places must be a list of pairs (x, y), got {type(points).__name__}; {example}") from None
    if not places:
        raise BadInput(f"a group needs at least one fastener, got none; {example}")
    for place in places:
        if len(place) != 2:
            raise BadInput(f"each place must be a pair (x, y), got {len(place)} values; {example}")
        for value in place:
            _check_one("place of a fastener", value, hint=example)
    return places


def _check_one(name, value, *, hint):
    check_number(name, value, low=-_MOST, high=_MOST, hint=hint)
    if not is_symbolic(value) and getattr(value, "ndim", 0):
        raise BadInput(f"{name} must be one number, got an array; {hint}")
    if isinstance(value, (list, tuple)):
        raise BadInput(f"{name} must be one number, got a list; {hint}")


def _check_positive(name, value, *, hint):
    check_number(name, value, low=0.0, high=_MOST, low_allowed=False, hint=hint)


def _check_not_negative(name, value, *, hint):
    check_number(name, value, low=0.0, high=_MOST, hint=hint)


def _any_symbol(places):
    return any(is_symbolic(value) for place in places for value in place)
