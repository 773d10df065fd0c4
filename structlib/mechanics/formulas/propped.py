"""A span fixed at one end and supported at the other; two equal spans; a span fixed at both ends."""

from structlib.ground.roots import square_root
from structlib.mechanics.formulas.inputs import _check_between, _check_load, _check_positive


def propped_uniform_prop_reaction(*, line_load, span):
    """Push of the prop of a propped cantilever under a uniform load.

    Parameters
    ----------
    line_load : float or numpy.ndarray or sympy.Expr
        Load spread along the member, downward positive [N/mm].
    span : float or numpy.ndarray or sympy.Expr
        Distance between the supports [mm].

    Returns
    -------
    float or numpy.ndarray or sympy.Expr
        Reaction, upward positive [N].

    Examples
    --------
    >>> propped_uniform_prop_reaction(line_load=8.0, span=4.0)
    12.0
    """
    _check_positive(span=span)
    _check_load(line_load=line_load)
    return 3 * line_load * span / 8


def propped_uniform_wall_reaction(*, line_load, span):
    """Push of the wall of a propped cantilever under a uniform load.

    Parameters
    ----------
    line_load : float or numpy.ndarray or sympy.Expr
        Load spread along the member, downward positive [N/mm].
    span : float or numpy.ndarray or sympy.Expr
        Distance between the supports [mm].

    Returns
    -------
    float or numpy.ndarray or sympy.Expr
        Reaction, upward positive [N].

    Examples
    --------
    >>> propped_uniform_wall_reaction(line_load=8.0, span=4.0)
    20.0
    """
    _check_positive(span=span)
    _check_load(line_load=line_load)
    return 5 * line_load * span / 8


def propped_uniform_wall_moment(*, line_load, span):
    """Moment at the wall of a propped cantilever under a uniform load.

    Parameters
    ----------
    line_load : float or numpy.ndarray or sympy.Expr
        Load spread along the member, downward positive [N/mm].
    span : float or numpy.ndarray or sympy.Expr
        Distance between the supports [mm].

    Returns
    -------
    float or numpy.ndarray or sympy.Expr
        Moment, sagging positive (so a downward load gives a negative one) [N*mm].

    Examples
    --------
    >>> propped_uniform_wall_moment(line_load=8.0, span=4.0)
    -16.0
    """
    _check_positive(span=span)
    _check_load(line_load=line_load)
    return -line_load * span**2 / 8


def propped_uniform_span_moment(*, line_load, span):
    """Greatest sagging moment of a propped cantilever under a uniform load.

    It stands at 3/8 of the span from the prop.

    Parameters
    ----------
    line_load : float or numpy.ndarray or sympy.Expr
        Load spread along the member, downward positive [N/mm].
    span : float or numpy.ndarray or sympy.Expr
        Distance between the supports [mm].

    Returns
    -------
    float or numpy.ndarray or sympy.Expr
        Moment, sagging positive [N*mm].

    Examples
    --------
    >>> propped_uniform_span_moment(line_load=8.0, span=4.0)
    9.0
    """
    _check_positive(span=span)
    _check_load(line_load=line_load)
    return 9 * line_load * span**2 / 128


def propped_uniform_deflection_at(*, line_load, span, bending_stiffness, position):
    """Deflection anywhere along a propped cantilever under a uniform load.

    Parameters
    ----------
    line_load : float or numpy.ndarray or sympy.Expr
        Load spread along the member, downward positive [N/mm].
    span : float or numpy.ndarray or sympy.Expr
        Distance between the supports [mm].
    bending_stiffness : float or numpy.ndarray or sympy.Expr
        Modulus of elasticity times moment of inertia, EI [N*mm^2].
    position : float or numpy.ndarray or sympy.Expr
        Distance from the prop [mm].

    Returns
    -------
    float or numpy.ndarray or sympy.Expr
        Deflection, downward positive [mm].

    Examples
    --------
    >>> propped_uniform_deflection_at(line_load=6.0, span=4.0, bending_stiffness=4.0, position=2.0)
    2.0
    """
    _check_positive(span=span, bending_stiffness=bending_stiffness)
    _check_load(line_load=line_load)
    _check_between("position", position, 0, span)
    shape = position * (span**3 - 3 * span * position**2 + 2 * position**3)
    return line_load * shape / (48 * bending_stiffness)


def propped_uniform_greatest_deflection_place(*, span):
    """Where a propped cantilever under a uniform load sags most, from the prop.

    Parameters
    ----------
    span : float or numpy.ndarray or sympy.Expr
        Distance between the supports [mm].

    Returns
    -------
    float or numpy.ndarray or sympy.Expr
        Distance from the prop [mm].

    Examples
    --------
    >>> round(propped_uniform_greatest_deflection_place(span=16.0), 4)
    6.7446
    """
    _check_positive(span=span)
    return (span + square_root(33 * span**2)) / 16


def propped_uniform_deflection(*, line_load, span, bending_stiffness):
    """Greatest deflection of a propped cantilever under a uniform load.

    Parameters
    ----------
    line_load : float or numpy.ndarray or sympy.Expr
        Load spread along the member, downward positive [N/mm].
    span : float or numpy.ndarray or sympy.Expr
        Distance between the supports [mm].
    bending_stiffness : float or numpy.ndarray or sympy.Expr
        Modulus of elasticity times moment of inertia, EI [N*mm^2].

    Returns
    -------
    float or numpy.ndarray or sympy.Expr
        Deflection, downward positive [mm].

    Examples
    --------
    >>> round(propped_uniform_deflection(line_load=1.0, span=16.0, bending_stiffness=100.0), 4)
    3.5495
    """
    place = propped_uniform_greatest_deflection_place(span=span)
    return propped_uniform_deflection_at(
        line_load=line_load, span=span, bending_stiffness=bending_stiffness, position=place
    )


def two_span_uniform_end_reaction(*, line_load, span):
    """Push of each end support of two equal spans under a uniform load: 0.375 of one span's load.

    Parameters
    ----------
    line_load : float or numpy.ndarray or sympy.Expr
        Load spread along the member, downward positive [N/mm].
    span : float or numpy.ndarray or sympy.Expr
        Distance between the supports [mm].

    Returns
    -------
    float or numpy.ndarray or sympy.Expr
        Reaction, upward positive [N].

    Examples
    --------
    >>> two_span_uniform_end_reaction(line_load=8.0, span=4.0)
    12.0
    """
    return propped_uniform_prop_reaction(line_load=line_load, span=span)


def two_span_uniform_middle_reaction(*, line_load, span):
    """Push of the middle support of two equal spans under a uniform load: 1.25 of one span's load.

    A quarter more than the load of the two half spans beside it.

    Parameters
    ----------
    line_load : float or numpy.ndarray or sympy.Expr
        Load spread along the member, downward positive [N/mm].
    span : float or numpy.ndarray or sympy.Expr
        Distance between the supports [mm].

    Returns
    -------
    float or numpy.ndarray or sympy.Expr
        Reaction, upward positive [N].

    Examples
    --------
    >>> two_span_uniform_middle_reaction(line_load=8.0, span=4.0)
    40.0
    """
    return 2 * propped_uniform_wall_reaction(line_load=line_load, span=span)


def two_span_uniform_support_moment(*, line_load, span):
    """Moment over the middle support of two equal spans under a uniform load.

    Parameters
    ----------
    line_load : float or numpy.ndarray or sympy.Expr
        Load spread along the member, downward positive [N/mm].
    span : float or numpy.ndarray or sympy.Expr
        Distance between the supports [mm].

    Returns
    -------
    float or numpy.ndarray or sympy.Expr
        Moment, sagging positive (so a downward load gives a negative one) [N*mm].

    Examples
    --------
    >>> two_span_uniform_support_moment(line_load=8.0, span=4.0)
    -16.0
    """
    return propped_uniform_wall_moment(line_load=line_load, span=span)


def two_span_uniform_span_moment(*, line_load, span):
    """Greatest sagging moment of two equal spans under a uniform load.

    Parameters
    ----------
    line_load : float or numpy.ndarray or sympy.Expr
        Load spread along the member, downward positive [N/mm].
    span : float or numpy.ndarray or sympy.Expr
        Distance between the supports [mm].

    Returns
    -------
    float or numpy.ndarray or sympy.Expr
        Moment, sagging positive [N*mm].

    Examples
    --------
    >>> two_span_uniform_span_moment(line_load=8.0, span=4.0)
    9.0
    """
    return propped_uniform_span_moment(line_load=line_load, span=span)


def two_span_uniform_deflection(*, line_load, span, bending_stiffness):
    """Greatest deflection of two equal spans under a uniform load.

    Parameters
    ----------
    line_load : float or numpy.ndarray or sympy.Expr
        Load spread along the member, downward positive [N/mm].
    span : float or numpy.ndarray or sympy.Expr
        Distance between the supports [mm].
    bending_stiffness : float or numpy.ndarray or sympy.Expr
        Modulus of elasticity times moment of inertia, EI [N*mm^2].

    Returns
    -------
    float or numpy.ndarray or sympy.Expr
        Deflection, downward positive [mm].

    Examples
    --------
    >>> round(two_span_uniform_deflection(line_load=1.0, span=16.0, bending_stiffness=100.0), 4)
    3.5495
    """
    return propped_uniform_deflection(line_load=line_load, span=span, bending_stiffness=bending_stiffness)


def fixed_uniform_wall_moment(*, line_load, span):
    """Moment at each wall of a span held by two walls under a uniform load.

    Parameters
    ----------
    line_load : float or numpy.ndarray or sympy.Expr
        Load spread along the member, downward positive [N/mm].
    span : float or numpy.ndarray or sympy.Expr
        Distance between the supports [mm].

    Returns
    -------
    float or numpy.ndarray or sympy.Expr
        Moment, sagging positive (so a downward load gives a negative one) [N*mm].

    Examples
    --------
    >>> fixed_uniform_wall_moment(line_load=2.0, span=6.0)
    -6.0
    """
    _check_positive(span=span)
    _check_load(line_load=line_load)
    return -line_load * span**2 / 12
