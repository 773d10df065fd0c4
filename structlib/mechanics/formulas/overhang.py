"""A simple span with an overhang past its right support, a uniform load all along."""

from structlib.mechanics.formulas.inputs import _check_load, _check_not_negative


def overhang_uniform_support_moment(*, line_load, overhang):
    """Moment over the right support of a span with an overhang.

    Parameters
    ----------
    line_load : float or numpy.ndarray or sympy.Expr
        Load spread along the member, downward positive [N/mm].
    overhang : float or numpy.ndarray or sympy.Expr
        Distance from the right support to the free tip, may be 0 [mm].

    Returns
    -------
    float or numpy.ndarray or sympy.Expr
        Moment, sagging positive (so a downward load gives a negative one) [N*mm].

    Examples
    --------
    >>> overhang_uniform_support_moment(line_load=2.0, overhang=2.0)
    -4.0
    """
    _check_load(line_load=line_load)
    _check_not_negative(overhang=overhang)
    return -line_load * overhang**2 / 2
