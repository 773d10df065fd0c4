"""The square root and pi for formulas that numbers, arrays and sympy symbols all pass through."""

import math

import numpy

from structlib.ground.refusals import is_symbolic


def square_root(value):
    """Square root of a number, an array or a symbol.

    Parameters
    ----------
    value : float or numpy.ndarray or sympy.Expr
        What to take the root of [any].

    Returns
    -------
    float or numpy.ndarray or sympy.Expr
        The root, exact when symbolic [root of the unit of value].

    Examples
    --------
    >>> square_root(2.25)
    1.5
    """
    if is_symbolic(value):
        import sympy

        return sympy.sqrt(value)
    return math.sqrt(value) if isinstance(value, (int, float)) else numpy.sqrt(value)


def pi_for(value):
    """Give pi in the kind of number that a formula is working in.

    Parameters
    ----------
    value : float or numpy.ndarray or sympy.Expr
        Any input of the formula [any].

    Returns
    -------
    float or sympy.Expr
        A float, or sympy's exact pi when the input is symbolic [-].

    Examples
    --------
    >>> round(pi_for(1.0), 4)
    3.1416
    """
    if is_symbolic(value):
        import sympy

        return sympy.pi
    return math.pi
