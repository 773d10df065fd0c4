"""Columns as mechanics sees them: slender ones bow out, and a load off the middle bends from the start.

Like the beam formulas: one function, one formula, in arithmetic that floats, numpy arrays and sympy symbols
all pass through. Every formula is true in any consistent system of units. The column is straight, elastic
and free to turn at both ends; other ends come in through the effective length.
"""

from structlib.ground.refusals import BadInput, check_number, is_symbolic
from structlib.ground.roots import pi_for, square_root

_MOST = 1e20  # only a guard against nonsense


def _positive(name, value, hint):
    _refuse_list(name, value)
    return check_number(name, value, low=0, high=_MOST, low_allowed=False, hint=hint)


def _not_negative(name, value, hint):
    _refuse_list(name, value)
    return check_number(name, value, low=0, high=_MOST, hint=hint)


def _refuse_list(name, value):
    if isinstance(value, (list, tuple)):
        raise BadInput(
            f"{name} must be a number or a numpy array, got {type(value).__name__}; "
            "for example numpy.array([2400.0, 3000.0])"
        )


def radius_of_gyration(*, inertia, area):
    """Return how far from its axis the area of a section stands, as buckling counts it.

    Parameters
    ----------
    inertia : float, numpy.ndarray or sympy expression
        Moment of inertia about the axis of bowing [mm4].
    area : float, numpy.ndarray or sympy expression
        Area of the section [mm2].

    Returns
    -------
    float, numpy.ndarray or sympy expression
        Radius of gyration [mm].

    Examples
    --------
    >>> radius_of_gyration(inertia=36.0, area=4.0)
    3.0
    """
    _positive("inertia", inertia, "for example 12.5*inch**4")
    _positive("area", area, "for example 12.25*inch**2")
    return square_root(inertia / area)


def effective_length(*, length, end_factor=1):
    """Return the length of the half wave in which a column bows.

    Parameters
    ----------
    length : float, numpy.ndarray or sympy expression
        Distance between the points that hold the column [mm].
    end_factor : float, numpy.ndarray or sympy expression
        K: 1 for ends free to turn, 0.5 for ends that cannot, 2 for a flagpole [-].

    Returns
    -------
    float, numpy.ndarray or sympy expression
        Effective length [mm].

    Examples
    --------
    >>> effective_length(length=96.0, end_factor=2)
    192.0
    """
    _not_negative("length", length, "for example 8*ft; 0 where it is held all along")
    _refuse_list("end factor", end_factor)
    check_number("end factor", end_factor, low=0.5, high=4, hint="1 for ends free to turn")
    return end_factor * length


def slenderness(*, effective_length, across):
    """Return how slender a column is: length over a size of its section.

    Parameters
    ----------
    effective_length : float, numpy.ndarray or sympy expression
        Effective length [mm].
    across : float, numpy.ndarray or sympy expression
        Size in the direction of bowing (wood), or radius of gyration (steel) [mm].

    Returns
    -------
    float, numpy.ndarray or sympy expression
        Slenderness ratio [-].

    Examples
    --------
    >>> slenderness(effective_length=96.0, across=3.0)
    32.0
    """
    _not_negative("effective length", effective_length, "for example 8*ft")
    _positive("size across", across, "for example 3.5*inch")
    return effective_length / across


def euler_load(*, bending_stiffness, effective_length):
    """Return the load under which a perfect elastic column bows out: pi^2 EI / L^2.

    Parameters
    ----------
    bending_stiffness : float, numpy.ndarray or sympy expression
        Modulus of elasticity times moment of inertia [N*mm2].
    effective_length : float, numpy.ndarray or sympy expression
        Effective length [mm].

    Returns
    -------
    float, numpy.ndarray or sympy expression
        Euler load [N].

    Examples
    --------
    >>> round(euler_load(bending_stiffness=9.0, effective_length=3.0), 4)
    9.8696
    """
    _positive("bending stiffness", bending_stiffness, "for example 20e6*psi*inch**4")
    _positive("effective length", effective_length, "for example 8*ft")
    pi = pi_for(_symbol_of(bending_stiffness, effective_length))
    return pi**2 * bending_stiffness / effective_length**2


def euler_stress(*, modulus, slenderness):
    """Return the stress under which a perfect elastic column bows out: pi^2 E / (L/r)^2.

    Parameters
    ----------
    modulus : float, numpy.ndarray or sympy expression
        Modulus of elasticity [MPa].
    slenderness : float, numpy.ndarray or sympy expression
        Effective length over radius of gyration [-].

    Returns
    -------
    float, numpy.ndarray or sympy expression
        Euler stress [MPa].

    Examples
    --------
    >>> round(euler_stress(modulus=29000.0, slenderness=100.0), 2)
    28.62
    """
    _positive("modulus", modulus, "for example 29e6*psi")
    _positive("slenderness", slenderness, "for example 80")
    return pi_for(_symbol_of(modulus, slenderness)) ** 2 * modulus / slenderness**2


def eccentric_moment(*, load, eccentricity):
    """Return the moment of a load that presses off the middle of the column.

    Parameters
    ----------
    load : float, numpy.ndarray or sympy expression
        Load along the column [N].
    eccentricity : float, numpy.ndarray or sympy expression
        Distance of the load from the middle of the section [mm].

    Returns
    -------
    float, numpy.ndarray or sympy expression
        Moment at the ends, before the column bows [N*mm].

    Examples
    --------
    >>> eccentric_moment(load=4000.0, eccentricity=1.5)
    6000.0
    """
    _not_negative("load", load, "for example 4000*lb; a column is pushed, never pulled")
    _not_negative("eccentricity", eccentricity, "for example 1*inch")
    return load * eccentricity


def _symbol_of(*values):
    return next((value for value in values if is_symbolic(value)), values[0])
