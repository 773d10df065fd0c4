"""A simple span under one concentrated load."""

from structlib.mechanics.formulas.inputs import _check_between, _check_load, _check_positive


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

    Examples
    --------
    >>> simple_midspan_point_deflection(point_load=8.0, span=6.0, bending_stiffness=4.0)
    9.0
    """
    _check_positive(span=span, bending_stiffness=bending_stiffness)
    _check_load(point_load=point_load)
    return point_load * span**3 / (48 * bending_stiffness)
