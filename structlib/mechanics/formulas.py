"""Beams that have a formula: one function, one formula, in arithmetic that anything passes through.

Called with floats a function answers one beam; called with numpy arrays it answers a whole rack of
lumber; called with sympy symbols it prints itself. The units named are those used inside this
library; every formula here is true in any consistent system (pounds and inches, newtons and metres).

Downward loads, upward reactions, sagging moments and downward deflections are positive.
Positions run from the left, unless a function says otherwise. All members here are uniform,
straight and elastic, and only bending is counted unless a function says otherwise.
"""

import numpy as np

from structlib.ground import roots
from structlib.ground.refusals import BadInput, check_number, is_symbolic

LIMIT = 1e20  # only a guard against nonsense: no unit in use gives a larger number here


def square_root(value):
    """Square root of a float, an array or a sympy expression.

    Parameters
    ----------
    value : float or numpy.ndarray or sympy.Expr
        What to take the root of, not negative [any].

    Returns
    -------
    float or numpy.ndarray or sympy.Expr
        The root [root of the unit of value].

    Raises
    ------
    BadInput
        When the value is negative or not a number.

    Examples
    --------
    >>> square_root(9.0)
    3.0
    """
    if not is_symbolic(value):
        check_number("the number under the root", value, low=0, high=LIMIT**2, hint="for example 9")
    return roots.square_root(value)


def _check_positive(**numbers):
    for name, value in numbers.items():
        _check_kind(name, value)
        hint = "lengths and stiffnesses are positive"
        check_number(name, value, low=0, high=LIMIT, low_allowed=False, hint=hint)


def _check_not_negative(**numbers):
    for name, value in numbers.items():
        _check_kind(name, value)
        check_number(name, value, low=0, high=LIMIT, hint="0 where there is none")


def _check_load(**numbers):
    for name, value in numbers.items():
        _check_kind(name, value)
        check_number(name, value, low=-LIMIT, high=LIMIT, hint="downward is positive, uplift negative")


def _check_kind(name, value):
    """Refuse lists, and numpy whole numbers, whose fourth power can overflow without a word."""
    whole = isinstance(value, (np.ndarray, np.integer)) and value.dtype.kind in "iu"
    if whole or isinstance(value, (list, tuple)):
        accepted = f"{name} must be a number or a numpy array of decimals"
        raise BadInput(f"{accepted}, got {type(value).__name__}; for example numpy.array([3600.0])")


def _check_between(name, value, low, high):
    """Refuse a place outside its stretch; a symbol anywhere leaves the question open."""
    if is_symbolic(value) or is_symbolic(low) or is_symbolic(high):
        return
    _check_kind(name, value)
    check_number(name, value, low=-LIMIT, high=LIMIT, hint="measured along the member")
    slack = 1e-9 * np.asarray(high)  # positions computed in feet and inches miss by a rounding
    if np.any(np.asarray(value) < low - slack) or np.any(np.asarray(value) > high + slack):
        accepted = f"{name} must be between {np.max(low):g} and {np.min(high):g}"
        raise BadInput(f"{accepted}, got {value}; it is measured along the member")


# A simple span under a uniform load

def simple_uniform_reaction(*, line_load, span):
    """Push of each support of a simple span under a uniform load: half the load.

    Parameters
    ----------
    line_load : float or numpy.ndarray or sympy.Expr
        Load spread along the member, downward positive [N/mm].
    span : float or numpy.ndarray or sympy.Expr
        Distance between the supports [mm].

    Returns
    -------
    float or numpy.ndarray or sympy.Expr
        Reaction, upward positive [N].

    Raises
    ------
    BadInput
        When a value is not a number, or a length or stiffness is not positive.

    Examples
    --------
    >>> simple_uniform_reaction(line_load=2.0, span=6.0)
    6.0
    """
    _check_positive(span=span)
    _check_load(line_load=line_load)
    return line_load * span / 2


def simple_uniform_moment(*, line_load, span):
    """Moment at the middle of a simple span under a uniform load, the greatest.

    Parameters
    ----------
    line_load : float or numpy.ndarray or sympy.Expr
        Load spread along the member, downward positive [N/mm].
    span : float or numpy.ndarray or sympy.Expr
        Distance between the supports [mm].

    Returns
    -------
    float or numpy.ndarray or sympy.Expr
        Moment, sagging positive [N*mm].

    Raises
    ------
    BadInput
        When a value is not a number, or a length or stiffness is not positive.

    Examples
    --------
    >>> simple_uniform_moment(line_load=2.0, span=6.0)
    9.0
    """
    _check_positive(span=span)
    _check_load(line_load=line_load)
    return line_load * span**2 / 8


def simple_uniform_moment_at(*, line_load, span, position):
    """Moment anywhere along a simple span under a uniform load.

    Parameters
    ----------
    line_load : float or numpy.ndarray or sympy.Expr
        Load spread along the member, downward positive [N/mm].
    span : float or numpy.ndarray or sympy.Expr
        Distance between the supports [mm].
    position : float or numpy.ndarray or sympy.Expr
        Distance from the left support [mm].

    Returns
    -------
    float or numpy.ndarray or sympy.Expr
        Moment, sagging positive [N*mm].

    Raises
    ------
    BadInput
        When a value is not a number, a length or stiffness is not positive, or a place is off the member.

    Examples
    --------
    >>> simple_uniform_moment_at(line_load=2.0, span=6.0, position=1.0)
    5.0
    """
    _check_positive(span=span)
    _check_load(line_load=line_load)
    _check_between("position", position, 0, span)
    return line_load * position * (span - position) / 2


def simple_uniform_shear_at(*, line_load, span, position):
    """Shear anywhere along a simple span under a uniform load.

    Parameters
    ----------
    line_load : float or numpy.ndarray or sympy.Expr
        Load spread along the member, downward positive [N/mm].
    span : float or numpy.ndarray or sympy.Expr
        Distance between the supports [mm].
    position : float or numpy.ndarray or sympy.Expr
        Distance from the left support [mm].

    Returns
    -------
    float or numpy.ndarray or sympy.Expr
        Shear, positive when the left part is pushed up [N].

    Raises
    ------
    BadInput
        When a value is not a number, a length or stiffness is not positive, or a place is off the member.

    Examples
    --------
    >>> simple_uniform_shear_at(line_load=2.0, span=6.0, position=1.0)
    4.0
    """
    _check_positive(span=span)
    _check_load(line_load=line_load)
    _check_between("position", position, 0, span)
    return line_load * (span / 2 - position)


def simple_uniform_slope_at(*, line_load, span, bending_stiffness, position):
    """Slope anywhere along a simple span under a uniform load.

    Parameters
    ----------
    line_load : float or numpy.ndarray or sympy.Expr
        Load spread along the member, downward positive [N/mm].
    span : float or numpy.ndarray or sympy.Expr
        Distance between the supports [mm].
    bending_stiffness : float or numpy.ndarray or sympy.Expr
        Modulus of elasticity times moment of inertia, EI [N*mm^2].
    position : float or numpy.ndarray or sympy.Expr
        Distance from the left support [mm].

    Returns
    -------
    float or numpy.ndarray or sympy.Expr
        Slope, positive where the beam goes down to the right [-].

    Raises
    ------
    BadInput
        When a value is not a number, a length or stiffness is not positive, or a place is off the member.

    Examples
    --------
    >>> simple_uniform_slope_at(line_load=2.0, span=6.0, bending_stiffness=9.0, position=0.0)
    2.0
    """
    _check_positive(span=span, bending_stiffness=bending_stiffness)
    _check_load(line_load=line_load)
    _check_between("position", position, 0, span)
    return line_load * (span**3 - 6 * span * position**2 + 4 * position**3) / (24 * bending_stiffness)


def simple_uniform_deflection(*, line_load, span, bending_stiffness):
    """Deflection at the middle of a simple span under a uniform load, the greatest.

    Parameters
    ----------
    line_load : float or numpy.ndarray or sympy.Expr
        Load spread along the member, downward positive [N/mm].
    span : float or numpy.ndarray or sympy.Expr
        Distance between the supports [mm].
    bending_stiffness : float or numpy.ndarray or sympy.Expr
        Modulus of elasticity times moment of inertia, EI [N*mm^2].

    Returns
    -------
    float or numpy.ndarray or sympy.Expr
        Deflection, downward positive [mm].

    Raises
    ------
    BadInput
        When a value is not a number, or a length or stiffness is not positive.

    Examples
    --------
    >>> simple_uniform_deflection(line_load=2.0, span=6.0, bending_stiffness=3.375)
    10.0
    """
    _check_positive(span=span, bending_stiffness=bending_stiffness)
    _check_load(line_load=line_load)
    return 5 * line_load * span**4 / (384 * bending_stiffness)


def simple_uniform_deflection_at(*, line_load, span, bending_stiffness, position):
    """Deflection anywhere along a simple span under a uniform load.

    Parameters
    ----------
    line_load : float or numpy.ndarray or sympy.Expr
        Load spread along the member, downward positive [N/mm].
    span : float or numpy.ndarray or sympy.Expr
        Distance between the supports [mm].
    bending_stiffness : float or numpy.ndarray or sympy.Expr
        Modulus of elasticity times moment of inertia, EI [N*mm^2].
    position : float or numpy.ndarray or sympy.Expr
        Distance from the left support [mm].

    Returns
    -------
    float or numpy.ndarray or sympy.Expr
        Deflection, downward positive [mm].

    Raises
    ------
    BadInput
        When a value is not a number, a length or stiffness is not positive, or a place is off the member.

    Examples
    --------
    >>> simple_uniform_deflection_at(line_load=2.0, span=6.0, bending_stiffness=3.375, position=3.0)
    10.0
    """
    _check_positive(span=span, bending_stiffness=bending_stiffness)
    _check_load(line_load=line_load)
    _check_between("position", position, 0, span)
    return (
        line_load * position * (span**3 - 2 * span * position**2 + position**3) / (24 * bending_stiffness)
    )


def simple_uniform_shear_deflection(*, line_load, span, shear_modulus, area):
    """Extra deflection at the middle of a simple span that comes from shear, solid rectangle.

    Shear spreads unevenly over a rectangle, which counts as 6/5 of an even spread:
    6/5 times moment over (shear modulus times area). Add it to the deflection from bending.

    Parameters
    ----------
    line_load : float or numpy.ndarray or sympy.Expr
        Load spread along the member, downward positive [N/mm].
    span : float or numpy.ndarray or sympy.Expr
        Distance between the supports [mm].
    shear_modulus : float or numpy.ndarray or sympy.Expr
        Shear modulus, G [MPa].
    area : float or numpy.ndarray or sympy.Expr
        Area of the section [mm^2].

    Returns
    -------
    float or numpy.ndarray or sympy.Expr
        Deflection from shear alone, downward positive [mm].

    Raises
    ------
    BadInput
        When a value is not a number, or a length or stiffness is not positive.

    Examples
    --------
    >>> simple_uniform_shear_deflection(line_load=10.0, span=4.0, shear_modulus=2.0, area=3.0)
    4.0
    """
    _check_positive(span=span, shear_modulus=shear_modulus, area=area)
    _check_load(line_load=line_load)
    return 3 * line_load * span**2 / (20 * shear_modulus * area)


# A simple span under one point load

def simple_point_left_reaction(*, point_load, span, load_position):
    """Push of the left support of a simple span under one point load.

    Parameters
    ----------
    point_load : float or numpy.ndarray or sympy.Expr
        Load at one place, downward positive [N].
    span : float or numpy.ndarray or sympy.Expr
        Distance between the supports [mm].
    load_position : float or numpy.ndarray or sympy.Expr
        Distance from the left support to the load [mm].

    Returns
    -------
    float or numpy.ndarray or sympy.Expr
        Reaction, upward positive [N].

    Raises
    ------
    BadInput
        When a value is not a number, a length or stiffness is not positive, or a place is off the member.

    Examples
    --------
    >>> simple_point_left_reaction(point_load=9.0, span=6.0, load_position=2.0)
    6.0
    """
    _check_positive(span=span)
    _check_load(point_load=point_load)
    _check_between("load_position", load_position, 0, span)
    return point_load * (span - load_position) / span


def simple_point_right_reaction(*, point_load, span, load_position):
    """Push of the right support of a simple span under one point load.

    Parameters
    ----------
    point_load : float or numpy.ndarray or sympy.Expr
        Load at one place, downward positive [N].
    span : float or numpy.ndarray or sympy.Expr
        Distance between the supports [mm].
    load_position : float or numpy.ndarray or sympy.Expr
        Distance from the left support to the load [mm].

    Returns
    -------
    float or numpy.ndarray or sympy.Expr
        Reaction, upward positive [N].

    Raises
    ------
    BadInput
        When a value is not a number, a length or stiffness is not positive, or a place is off the member.

    Examples
    --------
    >>> simple_point_right_reaction(point_load=9.0, span=6.0, load_position=2.0)
    3.0
    """
    _check_positive(span=span)
    _check_load(point_load=point_load)
    _check_between("load_position", load_position, 0, span)
    return point_load * load_position / span


def simple_point_moment(*, point_load, span, load_position):
    """Moment under the point load on a simple span, the greatest.

    Parameters
    ----------
    point_load : float or numpy.ndarray or sympy.Expr
        Load at one place, downward positive [N].
    span : float or numpy.ndarray or sympy.Expr
        Distance between the supports [mm].
    load_position : float or numpy.ndarray or sympy.Expr
        Distance from the left support to the load [mm].

    Returns
    -------
    float or numpy.ndarray or sympy.Expr
        Moment, sagging positive [N*mm].

    Raises
    ------
    BadInput
        When a value is not a number, a length or stiffness is not positive, or a place is off the member.

    Examples
    --------
    >>> simple_point_moment(point_load=9.0, span=6.0, load_position=2.0)
    12.0
    """
    _check_positive(span=span)
    _check_load(point_load=point_load)
    _check_between("load_position", load_position, 0, span)
    return point_load * load_position * (span - load_position) / span


def simple_point_deflection_left_of_load(*, point_load, span, load_position, bending_stiffness, position):
    """Deflection between the left support and the point load on a simple span.

    Parameters
    ----------
    point_load : float or numpy.ndarray or sympy.Expr
        Load at one place, downward positive [N].
    span : float or numpy.ndarray or sympy.Expr
        Distance between the supports [mm].
    load_position : float or numpy.ndarray or sympy.Expr
        Distance from the left support to the load [mm].
    bending_stiffness : float or numpy.ndarray or sympy.Expr
        Modulus of elasticity times moment of inertia, EI [N*mm^2].
    position : float or numpy.ndarray or sympy.Expr
        Distance from the left support, at most the load's [mm].

    Returns
    -------
    float or numpy.ndarray or sympy.Expr
        Deflection, downward positive [mm].

    Raises
    ------
    BadInput
        When a value is not a number, a length or stiffness is not positive, or a place is off the member.

    Examples
    --------
    >>> simple_point_deflection_left_of_load(
    ...     point_load=9.0, span=6.0, load_position=2.0, bending_stiffness=2.0, position=2.0
    ... )
    16.0
    """
    _check_positive(span=span, bending_stiffness=bending_stiffness)
    _check_load(point_load=point_load)
    _check_between("load_position", load_position, 0, span)
    _check_between("position", position, 0, load_position)
    beyond = span - load_position
    shape = beyond * position * (span**2 - beyond**2 - position**2)
    return point_load * shape / (6 * span * bending_stiffness)


def simple_point_deflection_right_of_load(*, point_load, span, load_position, bending_stiffness, position):
    """Deflection between the point load and the right support of a simple span.

    Parameters
    ----------
    point_load : float or numpy.ndarray or sympy.Expr
        Load at one place, downward positive [N].
    span : float or numpy.ndarray or sympy.Expr
        Distance between the supports [mm].
    load_position : float or numpy.ndarray or sympy.Expr
        Distance from the left support to the load [mm].
    bending_stiffness : float or numpy.ndarray or sympy.Expr
        Modulus of elasticity times moment of inertia, EI [N*mm^2].
    position : float or numpy.ndarray or sympy.Expr
        Distance from the left support, at least the load's [mm].

    Returns
    -------
    float or numpy.ndarray or sympy.Expr
        Deflection, downward positive [mm].

    Raises
    ------
    BadInput
        When a value is not a number, a length or stiffness is not positive, or a place is off the member.

    Examples
    --------
    >>> simple_point_deflection_right_of_load(
    ...     point_load=9.0, span=6.0, load_position=2.0, bending_stiffness=2.0, position=2.0
    ... )
    16.0
    """
    _check_positive(span=span, bending_stiffness=bending_stiffness)
    _check_load(point_load=point_load)
    _check_between("load_position", load_position, 0, span)
    _check_between("position", position, load_position, span)
    back = span - position
    shape = load_position * back * (span**2 - load_position**2 - back**2)
    return point_load * shape / (6 * span * bending_stiffness)


def simple_point_greatest_deflection_place(*, span, nearer_distance):
    """Where a simple span under one point load sags most, from the support farther from the load.

    It is never far from the middle: at most 0.0774 of the span away, wherever the load stands.

    Parameters
    ----------
    span : float or numpy.ndarray or sympy.Expr
        Distance between the supports [mm].
    nearer_distance : float or numpy.ndarray or sympy.Expr
        Distance from the load to the support nearer to it, at most half the span [mm].

    Returns
    -------
    float or numpy.ndarray or sympy.Expr
        Distance from the farther support [mm].

    Raises
    ------
    BadInput
        When a value is not a number, a length or stiffness is not positive, or a place is off the member.

    Examples
    --------
    >>> simple_point_greatest_deflection_place(span=6.0, nearer_distance=3.0)
    3.0
    """
    _check_positive(span=span)
    _check_between("nearer_distance", nearer_distance, 0, span / 2)
    return square_root((span**2 - nearer_distance**2) / 3)


def simple_point_greatest_deflection(*, point_load, span, nearer_distance, bending_stiffness):
    """Greatest deflection of a simple span under one point load.

    Parameters
    ----------
    point_load : float or numpy.ndarray or sympy.Expr
        Load at one place, downward positive [N].
    span : float or numpy.ndarray or sympy.Expr
        Distance between the supports [mm].
    nearer_distance : float or numpy.ndarray or sympy.Expr
        Distance from the load to the support nearer to it, at most half the span [mm].
    bending_stiffness : float or numpy.ndarray or sympy.Expr
        Modulus of elasticity times moment of inertia, EI [N*mm^2].

    Returns
    -------
    float or numpy.ndarray or sympy.Expr
        Deflection, downward positive [mm].

    Raises
    ------
    BadInput
        When a value is not a number, a length or stiffness is not positive, or a place is off the member.

    Examples
    --------
    >>> simple_point_greatest_deflection(
    ...     point_load=8.0, span=6.0, nearer_distance=3.0, bending_stiffness=4.0
    ... )
    9.0
    """
    _check_positive(span=span, bending_stiffness=bending_stiffness)
    _check_load(point_load=point_load)
    _check_between("nearer_distance", nearer_distance, 0, span / 2)
    rest = span**2 - nearer_distance**2
    shape = nearer_distance * rest * square_root(rest / 3)
    return point_load * shape / (9 * span * bending_stiffness)


def simple_midspan_point_moment(*, point_load, span):
    """Moment under a point load at the middle of a simple span, the greatest.

    Parameters
    ----------
    point_load : float or numpy.ndarray or sympy.Expr
        Load at one place, downward positive [N].
    span : float or numpy.ndarray or sympy.Expr
        Distance between the supports [mm].

    Returns
    -------
    float or numpy.ndarray or sympy.Expr
        Moment, sagging positive [N*mm].

    Raises
    ------
    BadInput
        When a value is not a number, or a length or stiffness is not positive.

    Examples
    --------
    >>> simple_midspan_point_moment(point_load=8.0, span=6.0)
    12.0
    """
    _check_positive(span=span)
    _check_load(point_load=point_load)
    return point_load * span / 4


def simple_midspan_point_deflection(*, point_load, span, bending_stiffness):
    """Deflection under a point load at the middle of a simple span, the greatest.

    Parameters
    ----------
    point_load : float or numpy.ndarray or sympy.Expr
        Load at one place, downward positive [N].
    span : float or numpy.ndarray or sympy.Expr
        Distance between the supports [mm].
    bending_stiffness : float or numpy.ndarray or sympy.Expr
        Modulus of elasticity times moment of inertia, EI [N*mm^2].

    Returns
    -------
    float or numpy.ndarray or sympy.Expr
        Deflection, downward positive [mm].

    Raises
    ------
    BadInput
        When a value is not a number, or a length or stiffness is not positive.

    Examples
    --------
    >>> simple_midspan_point_deflection(point_load=8.0, span=6.0, bending_stiffness=4.0)
    9.0
    """
    _check_positive(span=span, bending_stiffness=bending_stiffness)
    _check_load(point_load=point_load)
    return point_load * span**3 / (48 * bending_stiffness)


# A cantilever: held by a wall, free at its tip

def cantilever_uniform_moment(*, line_load, length):
    """Moment at the wall of a cantilever under a uniform load, the greatest in size.

    Parameters
    ----------
    line_load : float or numpy.ndarray or sympy.Expr
        Load spread along the member, downward positive [N/mm].
    length : float or numpy.ndarray or sympy.Expr
        Distance from the wall to the free tip [mm].

    Returns
    -------
    float or numpy.ndarray or sympy.Expr
        Moment, sagging positive (so a downward load gives a negative one) [N*mm].

    Raises
    ------
    BadInput
        When a value is not a number, or a length or stiffness is not positive.

    Examples
    --------
    >>> cantilever_uniform_moment(line_load=2.0, length=3.0)
    -9.0
    """
    _check_positive(length=length)
    _check_load(line_load=line_load)
    return -line_load * length**2 / 2


def cantilever_uniform_tip_slope(*, line_load, length, bending_stiffness):
    """Slope at the tip of a cantilever under a uniform load.

    Parameters
    ----------
    line_load : float or numpy.ndarray or sympy.Expr
        Load spread along the member, downward positive [N/mm].
    length : float or numpy.ndarray or sympy.Expr
        Distance from the wall to the free tip [mm].
    bending_stiffness : float or numpy.ndarray or sympy.Expr
        Modulus of elasticity times moment of inertia, EI [N*mm^2].

    Returns
    -------
    float or numpy.ndarray or sympy.Expr
        Slope, positive where the beam goes down away from the wall [-].

    Raises
    ------
    BadInput
        When a value is not a number, or a length or stiffness is not positive.

    Examples
    --------
    >>> cantilever_uniform_tip_slope(line_load=2.0, length=3.0, bending_stiffness=4.5)
    2.0
    """
    _check_positive(length=length, bending_stiffness=bending_stiffness)
    _check_load(line_load=line_load)
    return line_load * length**3 / (6 * bending_stiffness)


def cantilever_uniform_deflection(*, line_load, length, bending_stiffness):
    """Deflection at the tip of a cantilever under a uniform load, the greatest.

    Parameters
    ----------
    line_load : float or numpy.ndarray or sympy.Expr
        Load spread along the member, downward positive [N/mm].
    length : float or numpy.ndarray or sympy.Expr
        Distance from the wall to the free tip [mm].
    bending_stiffness : float or numpy.ndarray or sympy.Expr
        Modulus of elasticity times moment of inertia, EI [N*mm^2].

    Returns
    -------
    float or numpy.ndarray or sympy.Expr
        Deflection, downward positive [mm].

    Raises
    ------
    BadInput
        When a value is not a number, or a length or stiffness is not positive.

    Examples
    --------
    >>> cantilever_uniform_deflection(line_load=2.0, length=3.0, bending_stiffness=2.25)
    9.0
    """
    _check_positive(length=length, bending_stiffness=bending_stiffness)
    _check_load(line_load=line_load)
    return line_load * length**4 / (8 * bending_stiffness)


def cantilever_uniform_deflection_at(*, line_load, length, bending_stiffness, position):
    """Deflection anywhere along a cantilever under a uniform load.

    Parameters
    ----------
    line_load : float or numpy.ndarray or sympy.Expr
        Load spread along the member, downward positive [N/mm].
    length : float or numpy.ndarray or sympy.Expr
        Distance from the wall to the free tip [mm].
    bending_stiffness : float or numpy.ndarray or sympy.Expr
        Modulus of elasticity times moment of inertia, EI [N*mm^2].
    position : float or numpy.ndarray or sympy.Expr
        Distance from the wall [mm].

    Returns
    -------
    float or numpy.ndarray or sympy.Expr
        Deflection, downward positive [mm].

    Raises
    ------
    BadInput
        When a value is not a number, a length or stiffness is not positive, or a place is off the member.

    Examples
    --------
    >>> cantilever_uniform_deflection_at(line_load=2.0, length=3.0, bending_stiffness=2.25, position=3.0)
    9.0
    """
    _check_positive(length=length, bending_stiffness=bending_stiffness)
    _check_load(line_load=line_load)
    _check_between("position", position, 0, length)
    shape = position**2 * (6 * length**2 - 4 * length * position + position**2)
    return line_load * shape / (24 * bending_stiffness)


def cantilever_point_moment(*, point_load, length):
    """Moment at the wall of a cantilever with a point load at its tip.

    Parameters
    ----------
    point_load : float or numpy.ndarray or sympy.Expr
        Load at one place, downward positive [N].
    length : float or numpy.ndarray or sympy.Expr
        Distance from the wall to the free tip [mm].

    Returns
    -------
    float or numpy.ndarray or sympy.Expr
        Moment, sagging positive (so a downward load gives a negative one) [N*mm].

    Raises
    ------
    BadInput
        When a value is not a number, or a length or stiffness is not positive.

    Examples
    --------
    >>> cantilever_point_moment(point_load=4.0, length=3.0)
    -12.0
    """
    _check_positive(length=length)
    _check_load(point_load=point_load)
    return -point_load * length


def cantilever_point_tip_slope(*, point_load, length, bending_stiffness):
    """Slope at the tip of a cantilever with a point load at its tip.

    Parameters
    ----------
    point_load : float or numpy.ndarray or sympy.Expr
        Load at one place, downward positive [N].
    length : float or numpy.ndarray or sympy.Expr
        Distance from the wall to the free tip [mm].
    bending_stiffness : float or numpy.ndarray or sympy.Expr
        Modulus of elasticity times moment of inertia, EI [N*mm^2].

    Returns
    -------
    float or numpy.ndarray or sympy.Expr
        Slope, positive where the beam goes down away from the wall [-].

    Raises
    ------
    BadInput
        When a value is not a number, or a length or stiffness is not positive.

    Examples
    --------
    >>> cantilever_point_tip_slope(point_load=4.0, length=3.0, bending_stiffness=9.0)
    2.0
    """
    _check_positive(length=length, bending_stiffness=bending_stiffness)
    _check_load(point_load=point_load)
    return point_load * length**2 / (2 * bending_stiffness)


def cantilever_point_deflection(*, point_load, length, bending_stiffness):
    """Deflection at the tip of a cantilever with a point load at its tip.

    Parameters
    ----------
    point_load : float or numpy.ndarray or sympy.Expr
        Load at one place, downward positive [N].
    length : float or numpy.ndarray or sympy.Expr
        Distance from the wall to the free tip [mm].
    bending_stiffness : float or numpy.ndarray or sympy.Expr
        Modulus of elasticity times moment of inertia, EI [N*mm^2].

    Returns
    -------
    float or numpy.ndarray or sympy.Expr
        Deflection, downward positive [mm].

    Raises
    ------
    BadInput
        When a value is not a number, or a length or stiffness is not positive.

    Examples
    --------
    >>> cantilever_point_deflection(point_load=4.0, length=3.0, bending_stiffness=4.0)
    9.0
    """
    _check_positive(length=length, bending_stiffness=bending_stiffness)
    _check_load(point_load=point_load)
    return point_load * length**3 / (3 * bending_stiffness)


def cantilever_point_deflection_at(*, point_load, length, bending_stiffness, position):
    """Deflection anywhere along a cantilever with a point load at its tip.

    Parameters
    ----------
    point_load : float or numpy.ndarray or sympy.Expr
        Load at one place, downward positive [N].
    length : float or numpy.ndarray or sympy.Expr
        Distance from the wall to the free tip [mm].
    bending_stiffness : float or numpy.ndarray or sympy.Expr
        Modulus of elasticity times moment of inertia, EI [N*mm^2].
    position : float or numpy.ndarray or sympy.Expr
        Distance from the wall [mm].

    Returns
    -------
    float or numpy.ndarray or sympy.Expr
        Deflection, downward positive [mm].

    Raises
    ------
    BadInput
        When a value is not a number, a length or stiffness is not positive, or a place is off the member.

    Examples
    --------
    >>> cantilever_point_deflection_at(point_load=4.0, length=3.0, bending_stiffness=4.0, position=3.0)
    9.0
    """
    _check_positive(length=length, bending_stiffness=bending_stiffness)
    _check_load(point_load=point_load)
    _check_between("position", position, 0, length)
    return point_load * position**2 * (3 * length - position) / (6 * bending_stiffness)


# One span with an overhang to the right, the uniform load over both

def overhang_uniform_left_reaction(*, line_load, span, overhang):
    """Push of the left support of a span with an overhang; negative where the overhang lifts it.

    Parameters
    ----------
    line_load : float or numpy.ndarray or sympy.Expr
        Load spread along the member, downward positive [N/mm].
    span : float or numpy.ndarray or sympy.Expr
        Distance between the supports [mm].
    overhang : float or numpy.ndarray or sympy.Expr
        Distance from the right support to the free tip, may be 0 [mm].

    Returns
    -------
    float or numpy.ndarray or sympy.Expr
        Reaction, upward positive [N].

    Raises
    ------
    BadInput
        When a value is not a number, or a length or stiffness is not positive.

    Examples
    --------
    >>> overhang_uniform_left_reaction(line_load=2.0, span=4.0, overhang=2.0)
    3.0
    """
    _check_positive(span=span)
    _check_load(line_load=line_load)
    _check_not_negative(overhang=overhang)
    return line_load * (span**2 - overhang**2) / (2 * span)


def overhang_uniform_right_reaction(*, line_load, span, overhang):
    """Push of the right support of a span with an overhang, the one next to it.

    Parameters
    ----------
    line_load : float or numpy.ndarray or sympy.Expr
        Load spread along the member, downward positive [N/mm].
    span : float or numpy.ndarray or sympy.Expr
        Distance between the supports [mm].
    overhang : float or numpy.ndarray or sympy.Expr
        Distance from the right support to the free tip, may be 0 [mm].

    Returns
    -------
    float or numpy.ndarray or sympy.Expr
        Reaction, upward positive [N].

    Raises
    ------
    BadInput
        When a value is not a number, or a length or stiffness is not positive.

    Examples
    --------
    >>> overhang_uniform_right_reaction(line_load=2.0, span=4.0, overhang=2.0)
    9.0
    """
    _check_positive(span=span)
    _check_load(line_load=line_load)
    _check_not_negative(overhang=overhang)
    return line_load * (span + overhang) ** 2 / (2 * span)


def overhang_uniform_support_moment(*, line_load, overhang):
    """Moment over the right support of a span with an overhang.

    Parameters
    ----------
    line_load : float or numpy.ndarray or sympy.Expr
        Load spread along the member, downward positive [N/mm].
    overhang : float or numpy.ndarray or sympy.Expr
        Distance from the right support to the free tip, may be 0 [mm].

    Returns
    -------
    float or numpy.ndarray or sympy.Expr
        Moment, sagging positive (so a downward load gives a negative one) [N*mm].

    Raises
    ------
    BadInput
        When a value is not a number, or a length or stiffness is not positive.

    Examples
    --------
    >>> overhang_uniform_support_moment(line_load=2.0, overhang=2.0)
    -4.0
    """
    _check_load(line_load=line_load)
    _check_not_negative(overhang=overhang)
    return -line_load * overhang**2 / 2


def overhang_uniform_span_moment(*, line_load, span, overhang):
    """Greatest sagging moment between the supports of a span with an overhang.

    It holds for an overhang shorter than the span.

    Parameters
    ----------
    line_load : float or numpy.ndarray or sympy.Expr
        Load spread along the member, downward positive [N/mm].
    span : float or numpy.ndarray or sympy.Expr
        Distance between the supports [mm].
    overhang : float or numpy.ndarray or sympy.Expr
        Distance from the right support to the free tip, may be 0 [mm].

    Returns
    -------
    float or numpy.ndarray or sympy.Expr
        Moment, sagging positive [N*mm].

    Raises
    ------
    BadInput
        When a value is not a number, a length or stiffness is not positive, or a place is off the member.

    Examples
    --------
    >>> overhang_uniform_span_moment(line_load=2.0, span=4.0, overhang=2.0)
    2.25
    """
    _check_positive(span=span)
    _check_load(line_load=line_load)
    _check_between("overhang", overhang, 0, span)
    return line_load * (span**2 - overhang**2) ** 2 / (8 * span**2)


def overhang_uniform_span_moment_place(*, span, overhang):
    """Where the sagging moment of a span with an overhang is greatest.

    It holds for an overhang shorter than the span.

    Parameters
    ----------
    span : float or numpy.ndarray or sympy.Expr
        Distance between the supports [mm].
    overhang : float or numpy.ndarray or sympy.Expr
        Distance from the right support to the free tip, may be 0 [mm].

    Returns
    -------
    float or numpy.ndarray or sympy.Expr
        Distance from the left support [mm].

    Raises
    ------
    BadInput
        When a value is not a number, a length or stiffness is not positive, or a place is off the member.

    Examples
    --------
    >>> overhang_uniform_span_moment_place(span=4.0, overhang=2.0)
    1.5
    """
    _check_positive(span=span)
    _check_between("overhang", overhang, 0, span)
    return (span**2 - overhang**2) / (2 * span)


def overhang_uniform_inflection_place(*, span, overhang):
    """Where a span with an overhang changes from sagging to hogging (the moment is zero).

    It holds for an overhang shorter than the span.

    Parameters
    ----------
    span : float or numpy.ndarray or sympy.Expr
        Distance between the supports [mm].
    overhang : float or numpy.ndarray or sympy.Expr
        Distance from the right support to the free tip, may be 0 [mm].

    Returns
    -------
    float or numpy.ndarray or sympy.Expr
        Distance from the left support [mm].

    Raises
    ------
    BadInput
        When a value is not a number, a length or stiffness is not positive, or a place is off the member.

    Examples
    --------
    >>> overhang_uniform_inflection_place(span=4.0, overhang=2.0)
    3.0
    """
    _check_positive(span=span)
    _check_between("overhang", overhang, 0, span)
    return (span**2 - overhang**2) / span


def overhang_uniform_tip_deflection(*, line_load, span, overhang, bending_stiffness):
    """Deflection of the tip of a span with an overhang; negative where the tip rises.

    Parameters
    ----------
    line_load : float or numpy.ndarray or sympy.Expr
        Load spread along the member, downward positive [N/mm].
    span : float or numpy.ndarray or sympy.Expr
        Distance between the supports [mm].
    overhang : float or numpy.ndarray or sympy.Expr
        Distance from the right support to the free tip, may be 0 [mm].
    bending_stiffness : float or numpy.ndarray or sympy.Expr
        Modulus of elasticity times moment of inertia, EI [N*mm^2].

    Returns
    -------
    float or numpy.ndarray or sympy.Expr
        Deflection, downward positive [mm].

    Raises
    ------
    BadInput
        When a value is not a number, or a length or stiffness is not positive.

    Examples
    --------
    >>> overhang_uniform_tip_deflection(line_load=2.0, span=4.0, overhang=2.0, bending_stiffness=2.0)
    2.0
    """
    _check_positive(span=span, bending_stiffness=bending_stiffness)
    _check_load(line_load=line_load)
    _check_not_negative(overhang=overhang)
    shape = overhang * (4 * overhang**2 * span - span**3 + 3 * overhang**3)
    return line_load * shape / (24 * bending_stiffness)


# A propped cantilever: a wall at one end, a simple support (the prop) at the other

def propped_uniform_prop_reaction(*, line_load, span):
    """Push of the prop of a propped cantilever under a uniform load.

    Parameters
    ----------
    line_load : float or numpy.ndarray or sympy.Expr
        Load spread along the member, downward positive [N/mm].
    span : float or numpy.ndarray or sympy.Expr
        Distance between the supports [mm].

    Returns
    -------
    float or numpy.ndarray or sympy.Expr
        Reaction, upward positive [N].

    Raises
    ------
    BadInput
        When a value is not a number, or a length or stiffness is not positive.

    Examples
    --------
    >>> propped_uniform_prop_reaction(line_load=8.0, span=4.0)
    12.0
    """
    _check_positive(span=span)
    _check_load(line_load=line_load)
    return 3 * line_load * span / 8


def propped_uniform_wall_reaction(*, line_load, span):
    """Push of the wall of a propped cantilever under a uniform load.

    Parameters
    ----------
    line_load : float or numpy.ndarray or sympy.Expr
        Load spread along the member, downward positive [N/mm].
    span : float or numpy.ndarray or sympy.Expr
        Distance between the supports [mm].

    Returns
    -------
    float or numpy.ndarray or sympy.Expr
        Reaction, upward positive [N].

    Raises
    ------
    BadInput
        When a value is not a number, or a length or stiffness is not positive.

    Examples
    --------
    >>> propped_uniform_wall_reaction(line_load=8.0, span=4.0)
    20.0
    """
    _check_positive(span=span)
    _check_load(line_load=line_load)
    return 5 * line_load * span / 8


def propped_uniform_wall_moment(*, line_load, span):
    """Moment at the wall of a propped cantilever under a uniform load.

    Parameters
    ----------
    line_load : float or numpy.ndarray or sympy.Expr
        Load spread along the member, downward positive [N/mm].
    span : float or numpy.ndarray or sympy.Expr
        Distance between the supports [mm].

    Returns
    -------
    float or numpy.ndarray or sympy.Expr
        Moment, sagging positive (so a downward load gives a negative one) [N*mm].

    Raises
    ------
    BadInput
        When a value is not a number, or a length or stiffness is not positive.

    Examples
    --------
    >>> propped_uniform_wall_moment(line_load=8.0, span=4.0)
    -16.0
    """
    _check_positive(span=span)
    _check_load(line_load=line_load)
    return -line_load * span**2 / 8


def propped_uniform_span_moment(*, line_load, span):
    """Greatest sagging moment of a propped cantilever under a uniform load.

    It stands at 3/8 of the span from the prop.

    Parameters
    ----------
    line_load : float or numpy.ndarray or sympy.Expr
        Load spread along the member, downward positive [N/mm].
    span : float or numpy.ndarray or sympy.Expr
        Distance between the supports [mm].

    Returns
    -------
    float or numpy.ndarray or sympy.Expr
        Moment, sagging positive [N*mm].

    Raises
    ------
    BadInput
        When a value is not a number, or a length or stiffness is not positive.

    Examples
    --------
    >>> propped_uniform_span_moment(line_load=8.0, span=4.0)
    9.0
    """
    _check_positive(span=span)
    _check_load(line_load=line_load)
    return 9 * line_load * span**2 / 128


def propped_uniform_deflection_at(*, line_load, span, bending_stiffness, position):
    """Deflection anywhere along a propped cantilever under a uniform load.

    Parameters
    ----------
    line_load : float or numpy.ndarray or sympy.Expr
        Load spread along the member, downward positive [N/mm].
    span : float or numpy.ndarray or sympy.Expr
        Distance between the supports [mm].
    bending_stiffness : float or numpy.ndarray or sympy.Expr
        Modulus of elasticity times moment of inertia, EI [N*mm^2].
    position : float or numpy.ndarray or sympy.Expr
        Distance from the prop [mm].

    Returns
    -------
    float or numpy.ndarray or sympy.Expr
        Deflection, downward positive [mm].

    Raises
    ------
    BadInput
        When a value is not a number, a length or stiffness is not positive, or a place is off the member.

    Examples
    --------
    >>> propped_uniform_deflection_at(line_load=6.0, span=4.0, bending_stiffness=4.0, position=2.0)
    2.0
    """
    _check_positive(span=span, bending_stiffness=bending_stiffness)
    _check_load(line_load=line_load)
    _check_between("position", position, 0, span)
    shape = position * (span**3 - 3 * span * position**2 + 2 * position**3)
    return line_load * shape / (48 * bending_stiffness)


def propped_uniform_greatest_deflection_place(*, span):
    """Where a propped cantilever under a uniform load sags most, from the prop.

    Parameters
    ----------
    span : float or numpy.ndarray or sympy.Expr
        Distance between the supports [mm].

    Returns
    -------
    float or numpy.ndarray or sympy.Expr
        Distance from the prop [mm].

    Raises
    ------
    BadInput
        When a value is not a number, or a length or stiffness is not positive.

    Examples
    --------
    >>> round(propped_uniform_greatest_deflection_place(span=16.0), 4)
    6.7446
    """
    _check_positive(span=span)
    return (span + square_root(33 * span**2)) / 16


def propped_uniform_deflection(*, line_load, span, bending_stiffness):
    """Greatest deflection of a propped cantilever under a uniform load.

    Parameters
    ----------
    line_load : float or numpy.ndarray or sympy.Expr
        Load spread along the member, downward positive [N/mm].
    span : float or numpy.ndarray or sympy.Expr
        Distance between the supports [mm].
    bending_stiffness : float or numpy.ndarray or sympy.Expr
        Modulus of elasticity times moment of inertia, EI [N*mm^2].

    Returns
    -------
    float or numpy.ndarray or sympy.Expr
        Deflection, downward positive [mm].

    Raises
    ------
    BadInput
        When a value is not a number, or a length or stiffness is not positive.

    Examples
    --------
    >>> round(propped_uniform_deflection(line_load=1.0, span=16.0, bending_stiffness=100.0), 4)
    3.5495
    """
    place = propped_uniform_greatest_deflection_place(span=span)
    return propped_uniform_deflection_at(
        line_load=line_load, span=span, bending_stiffness=bending_stiffness, position=place
    )


# Two equal spans under a uniform load: each half is a propped cantilever, the middle post its wall

def two_span_uniform_end_reaction(*, line_load, span):
    """Push of each end support of two equal spans under a uniform load: 0.375 of one span's load.

    Parameters
    ----------
    line_load : float or numpy.ndarray or sympy.Expr
        Load spread along the member, downward positive [N/mm].
    span : float or numpy.ndarray or sympy.Expr
        Distance between the supports [mm].

    Returns
    -------
    float or numpy.ndarray or sympy.Expr
        Reaction, upward positive [N].

    Raises
    ------
    BadInput
        When a value is not a number, or a length or stiffness is not positive.

    Examples
    --------
    >>> two_span_uniform_end_reaction(line_load=8.0, span=4.0)
    12.0
    """
    return propped_uniform_prop_reaction(line_load=line_load, span=span)


def two_span_uniform_middle_reaction(*, line_load, span):
    """Push of the middle support of two equal spans under a uniform load: 1.25 of one span's load.

    A quarter more than the load of the two half spans beside it.

    Parameters
    ----------
    line_load : float or numpy.ndarray or sympy.Expr
        Load spread along the member, downward positive [N/mm].
    span : float or numpy.ndarray or sympy.Expr
        Distance between the supports [mm].

    Returns
    -------
    float or numpy.ndarray or sympy.Expr
        Reaction, upward positive [N].

    Raises
    ------
    BadInput
        When a value is not a number, or a length or stiffness is not positive.

    Examples
    --------
    >>> two_span_uniform_middle_reaction(line_load=8.0, span=4.0)
    40.0
    """
    return 2 * propped_uniform_wall_reaction(line_load=line_load, span=span)


def two_span_uniform_support_moment(*, line_load, span):
    """Moment over the middle support of two equal spans under a uniform load.

    Parameters
    ----------
    line_load : float or numpy.ndarray or sympy.Expr
        Load spread along the member, downward positive [N/mm].
    span : float or numpy.ndarray or sympy.Expr
        Distance between the supports [mm].

    Returns
    -------
    float or numpy.ndarray or sympy.Expr
        Moment, sagging positive (so a downward load gives a negative one) [N*mm].

    Raises
    ------
    BadInput
        When a value is not a number, or a length or stiffness is not positive.

    Examples
    --------
    >>> two_span_uniform_support_moment(line_load=8.0, span=4.0)
    -16.0
    """
    return propped_uniform_wall_moment(line_load=line_load, span=span)


def two_span_uniform_span_moment(*, line_load, span):
    """Greatest sagging moment of two equal spans under a uniform load.

    Parameters
    ----------
    line_load : float or numpy.ndarray or sympy.Expr
        Load spread along the member, downward positive [N/mm].
    span : float or numpy.ndarray or sympy.Expr
        Distance between the supports [mm].

    Returns
    -------
    float or numpy.ndarray or sympy.Expr
        Moment, sagging positive [N*mm].

    Raises
    ------
    BadInput
        When a value is not a number, or a length or stiffness is not positive.

    Examples
    --------
    >>> two_span_uniform_span_moment(line_load=8.0, span=4.0)
    9.0
    """
    return propped_uniform_span_moment(line_load=line_load, span=span)


def two_span_uniform_deflection(*, line_load, span, bending_stiffness):
    """Greatest deflection of two equal spans under a uniform load.

    Parameters
    ----------
    line_load : float or numpy.ndarray or sympy.Expr
        Load spread along the member, downward positive [N/mm].
    span : float or numpy.ndarray or sympy.Expr
        Distance between the supports [mm].
    bending_stiffness : float or numpy.ndarray or sympy.Expr
        Modulus of elasticity times moment of inertia, EI [N*mm^2].

    Returns
    -------
    float or numpy.ndarray or sympy.Expr
        Deflection, downward positive [mm].

    Raises
    ------
    BadInput
        When a value is not a number, or a length or stiffness is not positive.

    Examples
    --------
    >>> round(two_span_uniform_deflection(line_load=1.0, span=16.0, bending_stiffness=100.0), 4)
    3.5495
    """
    return propped_uniform_deflection(line_load=line_load, span=span, bending_stiffness=bending_stiffness)


# A span held by a wall at each end

def fixed_uniform_wall_moment(*, line_load, span):
    """Moment at each wall of a span held by two walls under a uniform load.

    Parameters
    ----------
    line_load : float or numpy.ndarray or sympy.Expr
        Load spread along the member, downward positive [N/mm].
    span : float or numpy.ndarray or sympy.Expr
        Distance between the supports [mm].

    Returns
    -------
    float or numpy.ndarray or sympy.Expr
        Moment, sagging positive (so a downward load gives a negative one) [N*mm].

    Raises
    ------
    BadInput
        When a value is not a number, or a length or stiffness is not positive.

    Examples
    --------
    >>> fixed_uniform_wall_moment(line_load=2.0, span=6.0)
    -6.0
    """
    _check_positive(span=span)
    _check_load(line_load=line_load)
    return -line_load * span**2 / 12


def fixed_uniform_span_moment(*, line_load, span):
    """Moment at the middle of a span held by two walls under a uniform load.

    Parameters
    ----------
    line_load : float or numpy.ndarray or sympy.Expr
        Load spread along the member, downward positive [N/mm].
    span : float or numpy.ndarray or sympy.Expr
        Distance between the supports [mm].

    Returns
    -------
    float or numpy.ndarray or sympy.Expr
        Moment, sagging positive [N*mm].

    Raises
    ------
    BadInput
        When a value is not a number, or a length or stiffness is not positive.

    Examples
    --------
    >>> fixed_uniform_span_moment(line_load=2.0, span=6.0)
    3.0
    """
    _check_positive(span=span)
    _check_load(line_load=line_load)
    return line_load * span**2 / 24


def fixed_uniform_deflection(*, line_load, span, bending_stiffness):
    """Deflection at the middle of a span held by two walls under a uniform load, the greatest.

    Parameters
    ----------
    line_load : float or numpy.ndarray or sympy.Expr
        Load spread along the member, downward positive [N/mm].
    span : float or numpy.ndarray or sympy.Expr
        Distance between the supports [mm].
    bending_stiffness : float or numpy.ndarray or sympy.Expr
        Modulus of elasticity times moment of inertia, EI [N*mm^2].

    Returns
    -------
    float or numpy.ndarray or sympy.Expr
        Deflection, downward positive [mm].

    Raises
    ------
    BadInput
        When a value is not a number, or a length or stiffness is not positive.

    Examples
    --------
    >>> fixed_uniform_deflection(line_load=2.0, span=6.0, bending_stiffness=3.375)
    2.0
    """
    _check_positive(span=span, bending_stiffness=bending_stiffness)
    _check_load(line_load=line_load)
    return line_load * span**4 / (384 * bending_stiffness)


# Stress and stiffness of a section

def bending_stress(*, moment, section_modulus):
    """Stress at the outer edge of a section from a bending moment.

    Parameters
    ----------
    moment : float or numpy.ndarray or sympy.Expr
        Bending moment, sagging positive [N*mm].
    section_modulus : float or numpy.ndarray or sympy.Expr
        Section modulus of the section [mm^3].

    Returns
    -------
    float or numpy.ndarray or sympy.Expr
        Bending stress, with the sign of the moment [MPa].

    Raises
    ------
    BadInput
        When a value is not a number, or a length or stiffness is not positive.

    Examples
    --------
    >>> bending_stress(moment=120.0, section_modulus=10.0)
    12.0
    """
    _check_positive(section_modulus=section_modulus)
    _check_load(moment=moment)
    return moment / section_modulus


def rectangle_shear_stress(*, shear, width, depth):
    """Greatest shear stress in a rectangle: half as much again as the average.

    Parameters
    ----------
    shear : float or numpy.ndarray or sympy.Expr
        Shear force on the section [N].
    width : float or numpy.ndarray or sympy.Expr
        Breadth of the rectangle, across the load [mm].
    depth : float or numpy.ndarray or sympy.Expr
        Height of the rectangle, along the load [mm].

    Returns
    -------
    float or numpy.ndarray or sympy.Expr
        Shear stress at mid-depth, with the sign of the shear [MPa].

    Raises
    ------
    BadInput
        When a value is not a number, or a length or stiffness is not positive.

    Examples
    --------
    >>> rectangle_shear_stress(shear=40.0, width=3.0, depth=10.0)
    2.0
    """
    _check_positive(width=width, depth=depth)
    _check_load(shear=shear)
    return 3 * shear / (2 * width * depth)


def bending_stiffness(*, modulus, inertia):
    """Resistance of a member to being curved: modulus of elasticity times moment of inertia.

    Parameters
    ----------
    modulus : float or numpy.ndarray or sympy.Expr
        Modulus of elasticity, E [MPa].
    inertia : float or numpy.ndarray or sympy.Expr
        Moment of inertia about the bending axis, I [mm^4].

    Returns
    -------
    float or numpy.ndarray or sympy.Expr
        Bending stiffness, EI [N*mm^2].

    Raises
    ------
    BadInput
        When a value is not a number, or a length or stiffness is not positive.

    Examples
    --------
    >>> bending_stiffness(modulus=12.0, inertia=5.0)
    60.0
    """
    _check_positive(modulus=modulus, inertia=inertia)
    return modulus * inertia
