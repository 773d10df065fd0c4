"""A member fixed at one end and free at the other."""

from structlib.mechanics.formulas.inputs import _check_between, _check_load, _check_positive


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

    Examples
    --------
    >>> cantilever_point_deflection_at(point_load=4.0, length=3.0, bending_stiffness=4.0, position=3.0)
    9.0
    """
    _check_positive(length=length, bending_stiffness=bending_stiffness)
    _check_load(point_load=point_load)
    _check_between("position", position, 0, length)
    return point_load * position**2 * (3 * length - position) / (6 * bending_stiffness)
