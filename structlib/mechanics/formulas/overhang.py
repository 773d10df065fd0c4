"""A simple span with an overhang past its right support, a uniform load all along."""

from structlib.mechanics.formulas.inputs import _check_between, _check_load, _check_not_negative, _check_positive


def overhang_uniform_left_reaction(*, line_load, span, overhang):
    """Push of the left support of a span with an overhang; negative where the overhang lifts it.

    Parameters
    ----------
    line_load : float or numpy.ndarray or sympy.Expr
        Load spread along the member, downward positive [N/mm].
    span : float or numpy.ndarray or sympy.Expr
        Distance between the supports [mm].
    overhang : float or numpy.ndarray or sympy.Expr
        Distance from the right support to the free tip, may be 0 [mm].

    Returns
    -------
    float or numpy.ndarray or sympy.Expr
        Reaction, upward positive [N].

    Examples
    --------
    >>> overhang_uniform_left_reaction(line_load=2.0, span=4.0, overhang=2.0)
    3.0
    """
    _check_positive(span=span)
    _check_load(line_load=line_load)
    _check_not_negative(overhang=overhang)
    return line_load * (span**2 - overhang**2) / (2 * span)


def overhang_uniform_right_reaction(*, line_load, span, overhang):
    """Push of the right support of a span with an overhang, the one next to it.

    Parameters
    ----------
    line_load : float or numpy.ndarray or sympy.Expr
        Load spread along the member, downward positive [N/mm].
    span : float or numpy.ndarray or sympy.Expr
        Distance between the supports [mm].
    overhang : float or numpy.ndarray or sympy.Expr
        Distance from the right support to the free tip, may be 0 [mm].

    Returns
    -------
    float or numpy.ndarray or sympy.Expr
        Reaction, upward positive [N].

    Examples
    --------
    >>> overhang_uniform_right_reaction(line_load=2.0, span=4.0, overhang=2.0)
    9.0
    """
    _check_positive(span=span)
    _check_load(line_load=line_load)
    _check_not_negative(overhang=overhang)
    return line_load * (span + overhang) ** 2 / (2 * span)


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


def overhang_uniform_span_moment(*, line_load, span, overhang):
    """Greatest sagging moment between the supports of a span with an overhang.

    It holds for an overhang shorter than the span.

    Parameters
    ----------
    line_load : float or numpy.ndarray or sympy.Expr
        Load spread along the member, downward positive [N/mm].
    span : float or numpy.ndarray or sympy.Expr
        Distance between the supports [mm].
    overhang : float or numpy.ndarray or sympy.Expr
        Distance from the right support to the free tip, may be 0 [mm].

    Returns
    -------
    float or numpy.ndarray or sympy.Expr
        Moment, sagging positive [N*mm].

    Examples
    --------
    >>> overhang_uniform_span_moment(line_load=2.0, span=4.0, overhang=2.0)
    2.25
    """
    _check_positive(span=span)
    _check_load(line_load=line_load)
    _check_between("overhang", overhang, 0, span)
    return line_load * (span**2 - overhang**2) ** 2 / (8 * span**2)


def overhang_uniform_span_moment_place(*, span, overhang):
    """Where the sagging moment of a span with an overhang is greatest.

    It holds for an overhang shorter than the span.

    Parameters
    ----------
    span : float or numpy.ndarray or sympy.Expr
        Distance between the supports [mm].
    overhang : float or numpy.ndarray or sympy.Expr
        Distance from the right support to the free tip, may be 0 [mm].

    Returns
    -------
    float or numpy.ndarray or sympy.Expr
        Distance from the left support [mm].

    Examples
    --------
    >>> overhang_uniform_span_moment_place(span=4.0, overhang=2.0)
    1.5
    """
    _check_positive(span=span)
    _check_between("overhang", overhang, 0, span)
    return (span**2 - overhang**2) / (2 * span)


def overhang_uniform_inflection_place(*, span, overhang):
    """Where a span with an overhang changes from sagging to hogging (the moment is zero).

    It holds for an overhang shorter than the span.

    Parameters
    ----------
    span : float or numpy.ndarray or sympy.Expr
        Distance between the supports [mm].
    overhang : float or numpy.ndarray or sympy.Expr
        Distance from the right support to the free tip, may be 0 [mm].

    Returns
    -------
    float or numpy.ndarray or sympy.Expr
        Distance from the left support [mm].

    Examples
    --------
    >>> overhang_uniform_inflection_place(span=4.0, overhang=2.0)
    3.0
    """
    _check_positive(span=span)
    _check_between("overhang", overhang, 0, span)
    return (span**2 - overhang**2) / span


def overhang_uniform_tip_deflection(*, line_load, span, overhang, bending_stiffness):
    """Deflection of the tip of a span with an overhang; negative where the tip rises.

    Parameters
    ----------
    line_load : float or numpy.ndarray or sympy.Expr
        Load spread along the member, downward positive [N/mm].
    span : float or numpy.ndarray or sympy.Expr
        Distance between the supports [mm].
    overhang : float or numpy.ndarray or sympy.Expr
        Distance from the right support to the free tip, may be 0 [mm].
    bending_stiffness : float or numpy.ndarray or sympy.Expr
        Modulus of elasticity times moment of inertia, EI [N*mm^2].

    Returns
    -------
    float or numpy.ndarray or sympy.Expr
        Deflection, downward positive [mm].

    Examples
    --------
    >>> overhang_uniform_tip_deflection(line_load=2.0, span=4.0, overhang=2.0, bending_stiffness=2.0)
    2.0
    """
    _check_positive(span=span, bending_stiffness=bending_stiffness)
    _check_load(line_load=line_load)
    _check_not_negative(overhang=overhang)
    shape = overhang * (4 * overhang**2 * span - span**3 + 3 * overhang**3)
    return line_load * shape / (24 * bending_stiffness)
