"""From forces to stresses, and stiffness from material and shape."""

from structlib.mechanics.formulas.inputs import _check_load, _check_positive


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

    Examples
    --------
    >>> rectangle_shear_stress(shear=40.0, width=3.0, depth=10.0)
    2.0
    """
    _check_positive(width=width, depth=depth)
    _check_load(shear=shear)
    return 3 * shear / (2 * width * depth)


def rectangle_shear_stiffness(*, shear_modulus, area):
    """Resistance of a solid rectangle to being slid: shear modulus times five sixths of the area.

    Parameters
    ----------
    shear_modulus : float or numpy.ndarray or sympy.Expr
        Shear modulus, G [MPa].
    area : float or numpy.ndarray or sympy.Expr
        Area of the section [mm^2].

    Returns
    -------
    float or numpy.ndarray or sympy.Expr
        Shear stiffness, G A_s [N].

    Examples
    --------
    >>> rectangle_shear_stiffness(shear_modulus=4.0, area=3.0)
    10.0
    """
    _check_positive(shear_modulus=shear_modulus, area=area)
    return 5 * shear_modulus * area / 6


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

    Examples
    --------
    >>> bending_stiffness(modulus=12.0, inertia=5.0)
    60.0
    """
    _check_positive(modulus=modulus, inertia=inertia)
    return modulus * inertia
