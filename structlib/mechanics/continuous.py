"""Three equal spans in one piece, and where the moment of two and of three equal spans is zero.

All spans carry one even load, and every support is level. Positions run from the left end.
"""

from structlib.ground.refusals import check_number
from structlib.mechanics.formulas import square_root

_LIMIT = 1e20  # only a guard against nonsense: no unit in use gives a larger number here


def _check(span, line_load=0.0):
    check_number("span", span, low=0, high=_LIMIT, low_allowed=False, hint="lengths are positive")
    check_number("line load", line_load, low=-_LIMIT, high=_LIMIT, hint="downward is positive")


def three_span_uniform_end_reaction(*, line_load, span):
    """Push of an end support of three equal spans.

    Parameters
    ----------
    line_load : float or numpy.ndarray or sympy.Expr
        Even load on all three spans, downward positive [N/mm].
    span : float or numpy.ndarray or sympy.Expr
        Length of one span [mm].

    Returns
    -------
    float or numpy.ndarray or sympy.Expr
        Reaction, upward positive [N].

    Examples
    --------
    >>> three_span_uniform_end_reaction(line_load=2.0, span=10.0)
    8.0
    """
    _check(span, line_load)
    return 2 * line_load * span / 5


def three_span_uniform_inner_reaction(*, line_load, span):
    """Push of an inner support of three equal spans.

    Parameters
    ----------
    line_load : float or numpy.ndarray or sympy.Expr
        Even load on all three spans, downward positive [N/mm].
    span : float or numpy.ndarray or sympy.Expr
        Length of one span [mm].

    Returns
    -------
    float or numpy.ndarray or sympy.Expr
        Reaction, upward positive [N].

    Examples
    --------
    >>> three_span_uniform_inner_reaction(line_load=2.0, span=10.0)
    22.0
    """
    _check(span, line_load)
    return 11 * line_load * span / 10


def three_span_uniform_support_moment(*, line_load, span):
    """Moment over an inner support of three equal spans.

    Parameters
    ----------
    line_load : float or numpy.ndarray or sympy.Expr
        Even load on all three spans, downward positive [N/mm].
    span : float or numpy.ndarray or sympy.Expr
        Length of one span [mm].

    Returns
    -------
    float or numpy.ndarray or sympy.Expr
        Moment, sagging positive (so a downward load gives a negative one) [N*mm].

    Examples
    --------
    >>> three_span_uniform_support_moment(line_load=2.0, span=10.0)
    -20.0
    """
    _check(span, line_load)
    return -line_load * span**2 / 10


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
