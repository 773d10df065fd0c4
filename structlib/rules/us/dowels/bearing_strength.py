"""What wood and steel bear under a fastener (NDS 2018 12.3.3)."""

import numpy

from structlib.ground.refusals import check_choice
from structlib.ground.roots import square_root
from structlib.ground.units import inch
from structlib.rules.us.bearing import bearing_value_at_angle
from structlib.rules.us.dowels.pieces import _STEELS, _check_gravity
from structlib.rules.us.dowels.records import _check_piece
from structlib.rules.us.dowels.words import _SIZE_SLACK, _one_number, _scalar
from structlib.rules.us.inputs import check_amount, check_size


def bearing_strength_small(*, specific_gravity):
    """Return the dowel bearing strength of wood under a fastener thinner than 1/4 in, at any grain angle.

    Parameters
    ----------
    specific_gravity : float, numpy.ndarray or sympy expression
        Specific gravity of the wood [-].

    Returns
    -------
    float, numpy.ndarray or sympy expression
        Dowel bearing strength, not rounded [MPa].

    Raises
    ------
    OutsideRule
        When it is outside the table.

    Notes
    -----
    NDS 2018 Table 12.3.3 footnote 2.

    Examples
    --------
    >>> from structlib.ground.units import psi
    >>> round(bearing_strength_small(specific_gravity=0.5) / psi)
    4637
    """
    _check_gravity(specific_gravity)
    return _scalar("bearing_small_coefficient") * specific_gravity ** _scalar("bearing_small_power")


def bearing_strength_along(*, specific_gravity):
    """Return the dowel bearing strength of wood along the grain, under a fastener of 1/4 in or more.

    Parameters
    ----------
    specific_gravity : float, numpy.ndarray or sympy expression
        Specific gravity of the wood [-].

    Returns
    -------
    float, numpy.ndarray or sympy expression
        Dowel bearing strength, not rounded [MPa].

    Raises
    ------
    OutsideRule
        When it is outside the table.

    Notes
    -----
    NDS 2018 Table 12.3.3 footnote 2.

    Examples
    --------
    >>> from structlib.ground.units import psi
    >>> round(bearing_strength_along(specific_gravity=0.5) / psi)
    5600
    """
    _check_gravity(specific_gravity)
    return _scalar("bearing_along_coefficient") * specific_gravity


def bearing_strength_across(*, specific_gravity, diameter):
    """Return the dowel bearing strength of wood across the grain, under a fastener of 1/4 in or more.

    Parameters
    ----------
    specific_gravity : float, numpy.ndarray or sympy expression
        Specific gravity of the wood [-].
    diameter : float, numpy.ndarray or sympy expression
        Nominal diameter [mm].

    Returns
    -------
    float, numpy.ndarray or sympy expression
        Dowel bearing strength, not rounded [MPa].

    Raises
    ------
    OutsideRule
        When the specific gravity is outside the table.

    Notes
    -----
    NDS 2018 Table 12.3.3 footnote 2. The diameter in the formula is in inches.

    Examples
    --------
    >>> from structlib.ground.units import psi
    >>> round(bearing_strength_across(specific_gravity=0.5, diameter=0.5 * inch) / psi)
    3158
    """
    _check_gravity(specific_gravity)
    check_size("diameter", diameter)
    coefficient, power = _scalar("bearing_across_coefficient"), _scalar("bearing_across_power")
    return coefficient * specific_gravity**power / square_root(diameter / inch)


def bearing_strength_steel(*, tensile_strength, made):
    """Return the dowel bearing strength of steel.

    Parameters
    ----------
    tensile_strength : float, numpy.ndarray or sympy expression
        Least tensile strength F_u [MPa].
    made : str
        ``hot rolled`` or ``cold formed`` [-].

    Returns
    -------
    float, numpy.ndarray or sympy expression
        Dowel bearing strength [MPa].

    Notes
    -----
    NDS 2018 Appendix I.2.

    Examples
    --------
    >>> from structlib.ground.units import psi
    >>> round(bearing_strength_steel(tensile_strength=58000 * psi, made="hot rolled") / psi)
    87000
    """
    check_amount("tensile strength", tensile_strength, hint="for example 58000*psi")
    check_choice("made", made, ("hot rolled", "cold formed"))
    return _scalar(f"bearing_steel_{made.replace(' ', '_')}") * tensile_strength


def as_tabulated(strength):
    """Round a dowel bearing strength of wood as the table does, to 50 psi.

    Parameters
    ----------
    strength : float or numpy.ndarray
        Dowel bearing strength [MPa].

    Returns
    -------
    float or numpy.ndarray
        The same, rounded [MPa].

    Examples
    --------
    >>> from structlib.ground.units import psi
    >>> round(as_tabulated(3158 * psi) / psi)
    3150
    """
    check_amount("dowel bearing strength", strength, hint="for example 5600*psi")
    step = _scalar("bearing_rounding")
    return numpy.floor(strength / step + 0.5) * step


def piece_bearing_strength(piece, *, diameter):
    """Return the dowel bearing strength of one member, as the standard's table has it.

    Parameters
    ----------
    piece : JoinedPiece
        The member [-].
    diameter : float
        Nominal diameter of the fastener [mm].

    Returns
    -------
    float
        Dowel bearing strength; wood rounded to 50 psi along and across the grain [MPa].

    Raises
    ------
    OutsideRule
        When the wood is outside the table.

    Notes
    -----
    NDS 2018 Table 12.3.3 and 12.3.4; under 1/4 in the angle does not count.

    Examples
    --------
    >>> from structlib.ground.units import deg
    >>> from structlib.pages.topics.post.cases import post
    >>> from structlib.rules.us.dowels.pieces import wood_piece
    >>> from structlib.ground.units import psi
    >>> post = wood_piece(thickness=3.5 * inch, specific_gravity=0.5, angle=90 * deg)
    >>> round(piece_bearing_strength(post, diameter=0.5 * inch) / psi)
    3150
    """
    _check_piece(piece)
    check_size("diameter", diameter)
    if piece.steel:
        strength, made = _STEELS[piece.steel]
        return bearing_strength_steel(tensile_strength=_scalar(strength), made=made)
    if is_thin(diameter):
        return float(as_tabulated(bearing_strength_small(specific_gravity=piece.specific_gravity)))
    along = float(as_tabulated(bearing_strength_along(specific_gravity=piece.specific_gravity)))
    across = float(as_tabulated(bearing_strength_across(specific_gravity=piece.specific_gravity, diameter=diameter)))
    return bearing_value_at_angle(
        along=along, across=across, sine=float(numpy.sin(piece.angle)), cosine=float(numpy.cos(piece.angle))
    )


def is_thin(diameter):
    """Tell whether a fastener is thinner than 1/4 in, so that the rules for nails hold.

    Parameters
    ----------
    diameter : float
        Diameter [mm].

    Returns
    -------
    bool
        True under 1/4 in [-].

    Examples
    --------
    >>> is_thin(0.162 * inch), is_thin(0.25 * inch)
    (True, False)
    """
    _one_number("diameter", diameter)
    return diameter < _scalar("small_diameter") * (1 - _SIZE_SLACK)
