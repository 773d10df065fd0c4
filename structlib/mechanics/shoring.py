"""What temporary walls are asked to carry while a wall is out: statics only, demands only.

Joists rest on the wall that comes out. Before that, a temporary wall is put beside it, at a distance.
The joists then reach past the temporary wall to where the wall was: they have become levers, and the
temporary wall carries more than the wall did. Nothing here sizes or chooses what holds it.

Three ways the joists may run: ``cut`` (each side ends on the wall), ``continuous`` (in one piece over the
wall), ``outside`` (an outside wall, with the temporary wall inside). Loads may be those on one joist (N/mm
and N) or those on each millimetre of wall; the answers are then for one joist or for each millimetre too.
"""

from typing import NamedTuple

from structlib.ground.refusals import check_number, is_symbolic, refuse_list
from structlib.mechanics import formulas


def _check_place(span, offset):
    """Refuse a temporary wall that does not stand between the wall and the far end of the joists."""
    hint = "for example 12*ft for the joists and 2*ft for the distance"
    refuse_list("span", span)
    refuse_list("offset", offset)
    check_number("span", span, low=0, high=formulas.LIMIT, low_allowed=False, hint=hint)
    check_number("offset", offset, low=0, high=formulas.LIMIT, hint=hint)
    if not is_symbolic(span) and not is_symbolic(offset):
        room = span - offset
        check_number("span less offset", room, low=0, high=formulas.LIMIT, low_allowed=False, hint=hint)


def _check_loads(**loads):
    for name, load in loads.items():
        refuse_list(name, load)
        check_number(name, load, low=0, high=formulas.LIMIT, hint="loads act downward here; 0 where there is none")


def lever_factor(*, span, offset):
    """How many times what the wall took from this side lands on a temporary wall beside it.

    Parameters
    ----------
    span : float or numpy.ndarray or sympy.Expr
        Span of the joists, from the far wall to the wall that comes out [any].
    offset : float or numpy.ndarray or sympy.Expr
        Distance of the temporary wall from that wall [same unit as span].

    Returns
    -------
    float or numpy.ndarray or sympy.Expr
        The factor, 1 or more [-].

    Notes
    -----
    Turning about the far wall: the same load, caught with a shorter lever. It holds for an even load
    and for a
    load at the tip alike, because the wall would have caught both at the tip.

    Examples
    --------
    >>> lever_factor(span=12.0, offset=2.0)
    1.2
    """
    _check_place(span, offset)
    return span / (span - offset)


def wall_share(*, line_load, span, tip_load):
    """What the wall takes from one side before it comes out: half the span and what stands on the ends.

    Parameters
    ----------
    line_load : float or numpy.ndarray or sympy.Expr
        Even load along the joist [N/mm].
    span : float or numpy.ndarray or sympy.Expr
        Span of the joists [mm].
    tip_load : float or numpy.ndarray or sympy.Expr
        Load that stands on the end of the joist over the wall; 0 where it is held separately [N].

    Returns
    -------
    float or numpy.ndarray or sympy.Expr
        Push of the wall [N].

    Examples
    --------
    >>> wall_share(line_load=50.0, span=12.0, tip_load=100.0)
    400.0
    """
    _check_loads(line_load=line_load, tip_load=tip_load)
    return formulas.simple_uniform_reaction(line_load=line_load, span=span) + tip_load


def temporary_wall_reaction(*, line_load, span, offset, tip_load):
    """What a temporary wall carries from joists that end where the wall was.

    Parameters
    ----------
    line_load : float or numpy.ndarray or sympy.Expr
        Even load along the joist [N/mm].
    span : float or numpy.ndarray or sympy.Expr
        Span of the joists, from the far wall to the wall that is out [mm].
    offset : float or numpy.ndarray or sympy.Expr
        Distance of the temporary wall from the wall that is out [mm].
    tip_load : float or numpy.ndarray or sympy.Expr
        Load that stands on the end of the joist where the wall was; 0 where it is held separately [N].

    Returns
    -------
    float or numpy.ndarray or sympy.Expr
        Push of the temporary wall [N].

    Examples
    --------
    12 ft joists at 50 psf, the temporary wall 2 ft from the wall: 360 plf where the wall had 300 plf.

    >>> temporary_wall_reaction(line_load=50.0, span=12.0, offset=2.0, tip_load=0.0)
    360.0
    """
    share = wall_share(line_load=line_load, span=span, tip_load=tip_load)
    return share * lever_factor(span=span, offset=offset)


def far_wall_reaction(*, line_load, span, offset, tip_load):
    """What is left on the far wall; negative where the joists want to rise off it.

    Parameters
    ----------
    line_load : float or numpy.ndarray or sympy.Expr
        Even load along the joist [N/mm].
    span : float or numpy.ndarray or sympy.Expr
        Span of the joists, from the far wall to the wall that is out [mm].
    offset : float or numpy.ndarray or sympy.Expr
        Distance of the temporary wall from the wall that is out [mm].
    tip_load : float or numpy.ndarray or sympy.Expr
        Load that stands on the end of the joist where the wall was [N].

    Returns
    -------
    float or numpy.ndarray or sympy.Expr
        Push of the far wall; negative means that something must hold the joists down there [N].

    Examples
    --------
    >>> far_wall_reaction(line_load=50.0, span=12.0, offset=2.0, tip_load=0.0)
    240.0
    >>> far_wall_reaction(line_load=50.0, span=12.0, offset=2.0, tip_load=1500.0)
    -60.0
    """
    push = temporary_wall_reaction(line_load=line_load, span=span, offset=offset, tip_load=tip_load)
    return line_load * span + tip_load - push


def tip_load_that_lifts_the_far_end(*, line_load, span, offset):
    """The load on the joist ends at which the far end of the joists carries nothing more.

    Parameters
    ----------
    line_load : float or numpy.ndarray or sympy.Expr
        Even load along the joist; take the least there can be, dead load alone [N/mm].
    span : float or numpy.ndarray or sympy.Expr
        Span of the joists, from the far wall to the wall that is out [mm].
    offset : float or numpy.ndarray or sympy.Expr
        Distance of the temporary wall from the wall that is out, more than 0 [mm].

    Returns
    -------
    float or numpy.ndarray or sympy.Expr
        The load; more than this lifts the far end, and 0 or less says that it lifts by itself [N].

    Examples
    --------
    >>> tip_load_that_lifts_the_far_end(line_load=50.0, span=12.0, offset=2.0)
    1200.0
    """
    _check_place(span, offset)
    _check_loads(line_load=line_load)
    check_number("offset", offset, low=0, high=formulas.LIMIT, low_allowed=False, hint="for example 2*ft")
    return line_load * span * (span - 2 * offset) / (2 * offset)


# Joists in one piece over the wall that is out, with a temporary wall on either side at the same distance


class Landed(NamedTuple):
    """What a temporary wall asks of one joist of the floor it stands on.

    Parameters
    ----------
    moment : float
        Greatest moment with the temporary wall on it [N*mm].
    shear : float
        Greatest shear with it [N].
    own_moment : float
        Greatest moment that the floor was laid out for: its design load alone [N*mm].
    own_shear : float
        Greatest shear from its design load alone [N].

    Examples
    --------
    >>> Landed(3.0, 2.0, 1.5, 1.0).moment_share
    2.0
    """

    moment: float
    shear: float
    own_moment: float
    own_shear: float

    @property
    def moment_share(self):
        """Moment asked, over that of the design load alone."""
        return self.moment / self.own_moment

    @property
    def shear_share(self):
        """Shear asked, over that of the design load alone."""
        return self.shear / self.own_shear
