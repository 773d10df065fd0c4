"""A member fixed at one end and free at the other."""

from structlib.mechanics.formulas.inputs import _check_load, _check_positive


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
