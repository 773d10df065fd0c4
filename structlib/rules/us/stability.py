"""Beam stability: a deep, thin, long beam rolls sideways before its fibres give out (NDS 2018 3.3.3)."""

import numpy

from structlib.ground.refusals import OutsideRule
from structlib.ground.roots import square_root
from structlib.rules.us import factors
from structlib.rules.us.inputs import at_most, check_amount, check_member_length, check_size


def root(value):
    """Return the square root of a float, an array or a sympy expression.

    Parameters
    ----------
    value : float, numpy.ndarray or sympy expression
        Number or numbers, zero or more [any].

    Returns
    -------
    float, numpy.ndarray or sympy expression
        The square root [any].

    Examples
    --------
    >>> float(root(9.0))
    3.0
    """
    check_amount("number under the root", value, zero=True, hint="for example 9.0")
    return square_root(value)


def slenderness_ratio(*, effective_length, depth, width):
    """Return the slenderness ratio R_B of a bending member.

    Parameters
    ----------
    effective_length : float, numpy.ndarray or sympy expression
        Effective length between braces [mm].
    depth : float, numpy.ndarray or sympy expression
        Depth of the beam [mm].
    width : float, numpy.ndarray or sympy expression
        Width of all plies acting together [mm].

    Returns
    -------
    float, numpy.ndarray or sympy expression
        Slenderness ratio [-].

    Notes
    -----
    NDS 2018 3.3.3.6, Eq. 3.3-5. Values over 50 are outside the rule; `beam_stability_factor` refuses them.

    Examples
    --------
    >>> round(float(slenderness_ratio(effective_length=247.2, depth=19.25, width=5.0)), 1)
    13.8
    """
    check_member_length("effective length", effective_length)
    check_size("depth", depth)
    check_size("width", width)
    return root(effective_length * depth / width**2)


def critical_buckling_value(*, modulus_stability, slenderness):
    """Return the critical buckling design value F_bE for bending.

    Parameters
    ----------
    modulus_stability : float, numpy.ndarray or sympy expression
        Modulus for stability, E_min with its factors [MPa].
    slenderness : float, numpy.ndarray or sympy expression
        Slenderness ratio R_B [-].

    Returns
    -------
    float, numpy.ndarray or sympy expression
        Critical buckling value [MPa].

    Notes
    -----
    NDS 2018 3.3.3.8.

    Examples
    --------
    >>> round(critical_buckling_value(modulus_stability=690000.0, slenderness=17.8))
    2613
    """
    check_amount("modulus for stability", modulus_stability)
    check_amount("slenderness ratio", slenderness, hint="for example 12")
    return factors.scalar("beam_stability_coefficient") * modulus_stability / slenderness**2


def stability_factor_from_ratio(*, ratio):
    """Return the beam stability factor C_L from the ratio of buckling to bending value.

    Parameters
    ----------
    ratio : float, numpy.ndarray or sympy expression
        Critical buckling value over the bending value with all other factors [-].

    Returns
    -------
    float, numpy.ndarray or sympy expression
        Beam stability factor, at most 1 [-].

    Notes
    -----
    NDS 2018 3.3.3.8, Eq. 3.3-6.

    Examples
    --------
    >>> round(float(stability_factor_from_ratio(ratio=2.83)), 3)
    0.974
    """
    check_amount("ratio of buckling to bending value", ratio, zero=True, hint="for example 2.83")
    half = (1 + ratio) / factors.scalar("beam_stability_sum_divisor")
    return half - root(half**2 - ratio / factors.scalar("beam_stability_ratio_divisor"))


def beam_effective_length(*, unbraced_length, depth, case="single span, uniform"):
    """Return the effective length of a beam between points where its compressed edge is held.

    Parameters
    ----------
    unbraced_length : float or numpy.ndarray
        Greatest distance between braces of the compressed edge [mm].
    depth : float or numpy.ndarray
        Depth of the beam [mm].
    case : str
        Span and load, a row of the effective length table [-].

    Returns
    -------
    float or numpy.ndarray
        Effective length [mm].

    Notes
    -----
    NDS 2018 Table 3.3.3 with its note for cases not listed. Where two pieces of that note meet, at 14.3, the
    longer of the two (by 0.01 %) is taken.

    Examples
    --------
    >>> round(float(beam_effective_length(unbraced_length=120.0, depth=19.25)), 1)
    247.2
    >>> round(float(beam_effective_length(unbraced_length=240.0, depth=30.0)), 1)
    481.2
    """
    check_member_length("distance between braces", unbraced_length)
    check_size("depth", depth)
    total = 0.0
    reached = unbraced_length / depth
    for row in factors.effective_length_rows(case):
        inside = (reached >= row["from_ratio"]) & (reached < row["to_ratio"])
        total = total + numpy.where(inside, row["length_factor"] * unbraced_length + row["depth_factor"] * depth, 0.0)
    return total


def beam_stability_factor(
    *, unbraced_length, depth, width, bending_value, modulus_stability, case="single span, uniform"
):
    """Return the beam stability factor C_L of a beam by its real bracing.

    Parameters
    ----------
    unbraced_length : float or numpy.ndarray
        Greatest distance between braces of the compressed edge; zero when held all along [mm].
    depth : float or numpy.ndarray
        Depth of the beam [mm].
    width : float or numpy.ndarray
        Width of all plies acting together [mm].
    bending_value : float or numpy.ndarray
        Bending value with every factor but flat use, stability, and a volume factor below 1 [MPa].
    modulus_stability : float or numpy.ndarray
        Modulus for stability with its factors [MPa].
    case : str
        Span and load, a row of the effective length table [-].

    Returns
    -------
    float or numpy.ndarray
        Beam stability factor, at most 1 [-].

    Raises
    ------
    OutsideRule
        When the slenderness ratio of a single beam is over 50.

    Notes
    -----
    NDS 2018 3.3.3. One beam too slender is refused; in an array it gets zero, so that no
    candidate outside the rule is ever chosen.

    Examples
    --------
    >>> round(float(beam_stability_factor(unbraced_length=120.0, depth=19.25, width=5.0,
    ...     bending_value=2760.0, modulus_stability=670000.0)), 4)
    0.9284
    """
    check_member_length("distance between braces", unbraced_length)
    check_size("depth", depth)
    check_size("width", width)
    check_amount("bending value", bending_value)
    check_amount("modulus for stability", modulus_stability)
    if numpy.ndim(unbraced_length) == 0 and unbraced_length == 0:
        return 1.0 if numpy.ndim(depth) == 0 else numpy.ones(numpy.shape(depth))
    slenderness = slenderness_ratio(
        effective_length=beam_effective_length(unbraced_length=unbraced_length, depth=depth, case=case),
        depth=depth,
        width=width,
    )
    limit = factors.scalar("beam_slenderness_greatest")
    if numpy.ndim(slenderness) == 0 and not at_most(slenderness, limit):
        raise OutsideRule(
            f"the beam is too slender to be judged: its slenderness ratio is {float(slenderness):.0f} and the rule "
            f"(NDS 2018 3.3.3.7) stops at {limit:.0f}; brace it closer, or use a wider or shallower beam"
        )
    buckling = critical_buckling_value(
        modulus_stability=modulus_stability, slenderness=numpy.maximum(slenderness, 1e-3)
    )
    # a beam braced at almost every point gives a huge ratio, where the formula loses its digits; it is 1 there
    factor = stability_factor_from_ratio(ratio=numpy.minimum(buckling / bending_value, 1e6))
    held = numpy.asarray(depth) <= numpy.asarray(width)
    factor = numpy.where(held, 1.0, numpy.where(at_most(slenderness, limit), factor, 0.0))
    return float(factor) if numpy.ndim(factor) == 0 else factor
