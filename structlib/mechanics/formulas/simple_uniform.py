"""A simple span under a uniform load."""

from structlib.mechanics.formulas.inputs import _check_between, _check_load, _check_positive


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

    Examples
    --------
    >>> simple_uniform_deflection_at(line_load=2.0, span=6.0, bending_stiffness=3.375, position=3.0)
    10.0
    """
    _check_positive(span=span, bending_stiffness=bending_stiffness)
    _check_load(line_load=line_load)
    _check_between("position", position, 0, span)
    return line_load * position * (span**3 - 2 * span * position**2 + position**3) / (24 * bending_stiffness)
