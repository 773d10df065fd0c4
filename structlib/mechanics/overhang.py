"""A span with an overhang and one load on its tip: a post from above that stands past the post below.

The back support is the far one, at the left end. The near support is the one beside the overhang.
Downward loads, upward reactions, sagging moments and downward deflections are positive.
"""

from structlib.ground.refusals import check_number, refuse_list

_LIMIT = 1e20  # only a guard against nonsense: no unit in use gives a larger number here


def _check(positive, load=0.0, overhang=0.0):
    for name, value in (positive | {"point load": load, "overhang": overhang}).items():
        refuse_list(name, value)
    for name, value in positive.items():
        check_number(name, value, low=0, high=_LIMIT, low_allowed=False, hint="lengths are positive")
    check_number("point load", load, low=-_LIMIT, high=_LIMIT, hint="downward is positive")
    check_number("overhang", overhang, low=0, high=_LIMIT, hint="0 where there is none")


def overhang_tip_back_reaction(*, point_load, span, overhang):
    """Push of the back support under one load on the tip; negative, because the beam lifts there.

    Parameters
    ----------
    point_load : float or numpy.ndarray or sympy.Expr
        Load on the tip, downward positive [N].
    span : float or numpy.ndarray or sympy.Expr
        Distance between the supports [mm].
    overhang : float or numpy.ndarray or sympy.Expr
        Distance from the near support to the tip [mm].

    Returns
    -------
    float or numpy.ndarray or sympy.Expr
        Reaction, upward positive [N].

    Examples
    --------
    >>> overhang_tip_back_reaction(point_load=800.0, span=12.0, overhang=3.0)
    -200.0
    """
    _check({"span": span}, point_load, overhang)
    return -point_load * overhang / span


def overhang_tip_near_reaction(*, point_load, span, overhang):
    """Push of the support beside the overhang under one load on the tip; more than the load itself.

    Parameters
    ----------
    point_load : float or numpy.ndarray or sympy.Expr
        Load on the tip, downward positive [N].
    span : float or numpy.ndarray or sympy.Expr
        Distance between the supports [mm].
    overhang : float or numpy.ndarray or sympy.Expr
        Distance from the near support to the tip [mm].

    Returns
    -------
    float or numpy.ndarray or sympy.Expr
        Reaction, upward positive [N].

    Examples
    --------
    >>> overhang_tip_near_reaction(point_load=800.0, span=12.0, overhang=3.0)
    1000.0
    """
    _check({"span": span}, point_load, overhang)
    return point_load * (span + overhang) / span


def overhang_tip_moment(*, point_load, overhang):
    """Moment over the near support under one load on the tip.

    Parameters
    ----------
    point_load : float or numpy.ndarray or sympy.Expr
        Load on the tip, downward positive [N].
    overhang : float or numpy.ndarray or sympy.Expr
        Distance from the near support to the tip [mm].

    Returns
    -------
    float or numpy.ndarray or sympy.Expr
        Moment, sagging positive (so a downward load gives a negative one) [N*mm].

    Examples
    --------
    >>> overhang_tip_moment(point_load=800.0, overhang=3.0)
    -2400.0
    """
    _check({}, point_load, overhang)
    return -point_load * overhang
