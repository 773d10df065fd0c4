"""Column formulas of NDS 2018 3.7 and 15.4: where a post stops being crushed and starts to bow."""

import numpy

from structlib.ground.refusals import check_number, is_symbolic
from structlib.rules.us import factors
from structlib.rules.us.inputs import check_amount
from structlib.rules.us.stability import root

#: A column held all along gives a huge ratio, in which Ylinen's formula loses its digits; it is 1 there.
_GREATEST_RATIO = 1e6


def critical_column_value(*, modulus_stability, slenderness):
    """Return the critical buckling design value F_cE of a column.

    Parameters
    ----------
    modulus_stability : float, numpy.ndarray or sympy expression
        Modulus for stability, E_min with its factors [MPa].
    slenderness : float, numpy.ndarray or sympy expression
        Slenderness ratio l_e/d [-].

    Returns
    -------
    float, numpy.ndarray or sympy expression
        Critical buckling value [MPa].

    Notes
    -----
    NDS 2018 3.7.1.5. The number 0.822 is pi^2/12, Euler's formula for a rectangle.

    Examples
    --------
    >>> round(critical_column_value(modulus_stability=510000.0, slenderness=32.0), 1)
    409.4
    """
    check_amount("modulus for stability", modulus_stability, hint="for example 510000*psi")
    check_amount("slenderness ratio", slenderness, hint="for example 32")
    return factors.scalar("column_stability_coefficient") * modulus_stability / slenderness**2


def column_stability_factor(*, ratio, shape):
    """Return the column stability factor C_P from the ratio of buckling to crushing value.

    Parameters
    ----------
    ratio : float, numpy.ndarray or sympy expression
        Critical buckling value over the compression value with all factors but C_P [-].
    shape : float or sympy expression
        c: 0.8 sawn lumber, 0.9 structural composite lumber [-].

    Returns
    -------
    float, numpy.ndarray or sympy expression
        Column stability factor, at most 1 [-].

    Notes
    -----
    NDS 2018 Eq. 3.7-1.

    Examples
    --------
    >>> round(float(column_stability_factor(ratio=557.2 / 1322.5, shape=0.8)), 3)
    0.376
    """
    check_amount("ratio of buckling to crushing value", ratio, zero=True, hint="for example 0.42")
    check_number("c", shape, low=0.5, high=0.999, hint="0.8 for sawn lumber")
    if not is_symbolic(ratio):
        ratio = numpy.minimum(ratio, _GREATEST_RATIO)
    half = (1 + ratio) / (2 * shape)
    return half - root(half**2 - ratio / shape)


def ratio_for_factor(*, factor, shape):
    """Return the ratio of buckling to crushing value at which the column stability factor is as asked.

    Parameters
    ----------
    factor : float, numpy.ndarray or sympy expression
        Column stability factor C_P, under 1 [-].
    shape : float or sympy expression
        c: 0.8 sawn lumber, 0.9 structural composite lumber [-].

    Returns
    -------
    float, numpy.ndarray or sympy expression
        Critical buckling value over the compression value [-].

    Notes
    -----
    NDS 2018 Eq. 3.7-1 solved for the ratio: c C_P^2 - (1 + ratio) C_P + ratio = 0.

    Examples
    --------
    >>> round(ratio_for_factor(factor=0.75, shape=0.8), 6)
    1.2
    """
    check_number("column stability factor", factor, low=0, high=1 - 1e-12, hint="for example 0.75")
    check_number("c", shape, low=0.5, high=0.999, hint="0.8 for sawn lumber")
    return factor * (1 - shape * factor) / (1 - factor)


def bent_column_share(
    *,
    compression_stress,
    compression_value,
    bending_stress,
    bending_value,
    critical_value,
    off_center_stress=0,
):
    """Return the share used by a column that is pressed and bent at once, about one axis.

    Parameters
    ----------
    compression_stress : float, numpy.ndarray or sympy expression
        Load over area, f_c [MPa].
    compression_value : float, numpy.ndarray or sympy expression
        Adjusted compression value F_c' [MPa].
    bending_stress : float, numpy.ndarray or sympy expression
        Stress from side loads, f_b [MPa].
    bending_value : float, numpy.ndarray or sympy expression
        Adjusted bending value F_b' [MPa].
    critical_value : float, numpy.ndarray or sympy expression
        Critical buckling value F_cE in the plane of bending; more than f_c [MPa].
    off_center_stress : float, numpy.ndarray or sympy expression
        Stress from the load off the middle, f_c (6 e / d) for a rectangle [MPa].

    Returns
    -------
    float, numpy.ndarray or sympy expression
        Share used; 1 is the limit. Infinite where the column would bow out already [-].

    Notes
    -----
    NDS 2018 Eq. 3.9-3 for side loads, 15.4-1 with a load off the middle.

    Examples
    --------
    >>> round(bent_column_share(compression_stress=2.0, compression_value=5.0, bending_stress=3.0,
    ...     bending_value=10.0, critical_value=8.0), 4)
    0.56
    """
    for name, value in (
        ("compression stress", compression_stress),
        ("bending stress", bending_stress),
        ("off-center stress", off_center_stress),
    ):
        check_amount(name, value, zero=True, hint="for example 300*psi")
    for name, value in (
        ("compression value", compression_value),
        ("bending value", bending_value),
        ("critical value", critical_value),
    ):
        check_amount(name, value)
    bowed = compression_stress / critical_value
    grown = off_center_stress * (1 + factors.scalar("column_eccentric_growth") * bowed)
    pressed = (compression_stress / compression_value) ** 2
    if is_symbolic(bowed):
        return pressed + (bending_stress + grown) / (bending_value * (1 - bowed))
    room = numpy.maximum(1 - bowed, 0.0)
    share = numpy.where(
        room > 0,
        pressed + (bending_stress + grown) / (bending_value * numpy.where(room > 0, room, 1)),
        numpy.inf,
    )
    return float(share) if numpy.ndim(share) == 0 else share
