"""Where the moment of two and of three equal spans in one piece is zero.

All spans carry one even load, and every support is level. Positions run from the left end.
"""

from structlib.ground.refusals import check_number
from structlib.ground.roots import square_root

_LIMIT = 1e20  # only a guard against nonsense: no unit in use gives a larger number here


def _check(span):
    check_number("span", span, low=0, high=_LIMIT, low_allowed=False, hint="lengths are positive")


def two_span_inflection_places(*, span):
    """Where the moment of two equal spans under one even load is zero, the ends left out.

    Parameters
    ----------
    span : float or numpy.ndarray or sympy.Expr
        Length of one span [mm].

    Returns
    -------
    tuple
        Places from the left end, one in each span [mm].

    Examples
    --------
    >>> two_span_inflection_places(span=12.0)
    (9.0, 15.0)
    """
    _check(span)
    return 3 * span / 4, 5 * span / 4


def three_span_inflection_places(*, span):
    """Where the moment of three equal spans under one even load is zero, the ends left out.

    Parameters
    ----------
    span : float or numpy.ndarray or sympy.Expr
        Length of one span [mm].

    Returns
    -------
    tuple
        Places from the left end: one in each outer span, two in the middle one [mm].

    Examples
    --------
    >>> [round(place, 3) for place in three_span_inflection_places(span=10.0)]
    [8.0, 12.764, 17.236, 22.0]
    """
    _check(span)
    # in the middle span w L^2 / 10 = w s (L - s) / 2, so that s = L (1 -+ root(1/5)) / 2
    half_between = square_root(span**2 / 20)
    return 4 * span / 5, 3 * span / 2 - half_between, 3 * span / 2 + half_between, 11 * span / 5
