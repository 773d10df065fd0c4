"""A pair of rafters as mechanics sees it: two leaning beams that hold each other up and push outward.

One function, one formula, in arithmetic that floats, numpy arrays and sympy symbols all pass through, true in
any consistent system of units. The pair is the same left and right, hinged at the ridge, and stands on walls
that carry weight but give no sideways hold; one straight tie holds the two sides together. The load stands on
the plan: so much per horizontal length of the pair, the same on both sides.

Measures of the pair: ``building_span`` from eave to eave, ``rise`` from eave to ridge, ``height_fraction`` of
the tie: 0 at the eave, 1 at the ridge. A load per pair gives forces per pair; a load per area gives forces
per length of roof. What happens along a rafter is in ``frames_along``, loads that differ from
side to side in ``frames_uneven``, spreading in ``frames_spread``, any other frame in ``plane_frame``.
Compression in a rafter is positive here.
"""

import numpy

from structlib.ground.refusals import check_number, is_symbolic, refuse_list
from structlib.ground.roots import square_root

_MOST = 1e20  # only a guard against nonsense
_SPAN, _RISE = "for example 24*ft", "for example 6*ft"
_LOAD, _TIE = "for example 100*plf", "0 at the eave, 1/3 for a third of the rise"

#: Above this height fraction the greatest moment stands at the tie, below it between tie and ridge.
TIE_GOVERNS_FROM = 1 - 0.5**0.5


def positive(name, value, hint):
    """Refuse anything but a finite number above zero (or an array of such numbers).

    Parameters
    ----------
    name : str
        What the number is, in the reader's words [-].
    value : float, numpy.ndarray or sympy expression
        The number to check [any].
    hint : str
        An example for the message [-].

    Returns
    -------
    float, numpy.ndarray or sympy expression
        The value, unchanged [same unit as value].

    Examples
    --------
    >>> positive("rise", 6.0, "for example 6*ft")
    6.0
    """
    refuse_list(name, value)
    return check_number(name, value, low=0, high=_MOST, low_allowed=False, hint=hint)


def not_negative(name, value, hint):
    """Refuse anything but a finite number of zero or more (or an array of such numbers).

    Parameters
    ----------
    name : str
        What the number is, in the reader's words [-].
    value : float, numpy.ndarray or sympy expression
        The number to check [any].
    hint : str
        An example for the message [-].

    Returns
    -------
    float, numpy.ndarray or sympy expression
        The value, unchanged [same unit as value].

    Examples
    --------
    >>> not_negative("line load", 0.0, "for example 100*plf")
    0.0
    """
    refuse_list(name, value)
    return check_number(name, value, low=0, high=_MOST, hint=hint)


def below_ridge(height_fraction):
    """Refuse a tie height that is not from the eave up to just below the ridge.

    Parameters
    ----------
    height_fraction : float, numpy.ndarray or sympy expression
        Height of the tie above the eave as a share of the rise [-].

    Returns
    -------
    float, numpy.ndarray or sympy expression
        The value, unchanged [-].

    Examples
    --------
    >>> below_ridge(0.25)
    0.25
    """
    refuse_list("height fraction of the tie", height_fraction)
    return check_number("height fraction of the tie", height_fraction, low=0, high=0.95, hint=_TIE)


def pair_checked(*, line_load, building_span, rise=1.0, height_fraction=0.0):
    """Refuse measures of a rafter pair that cannot be.

    Parameters
    ----------
    line_load : float, numpy.ndarray or sympy expression
        Load on the plan, per horizontal length of a pair [N/mm].
    building_span : float, numpy.ndarray or sympy expression
        Distance between the two eave supports [mm].
    rise : float, numpy.ndarray or sympy expression
        Height of the ridge above the eave supports [mm].
    height_fraction : float, numpy.ndarray or sympy expression
        Height of the tie above the eave as a share of the rise [-].

    Examples
    --------
    >>> pair_checked(line_load=50.0, building_span=24.0, rise=6.0)
    """
    not_negative("line load", line_load, _LOAD)
    positive("building span", building_span, _SPAN)
    positive("rise", rise, _RISE)
    below_ridge(height_fraction)


def slope_length(*, building_span, rise):
    """Return how long one rafter is along its slope, from eave to ridge.

    Parameters
    ----------
    building_span : float, numpy.ndarray or sympy expression
        Distance between the two eave supports [mm].
    rise : float, numpy.ndarray or sympy expression
        Height of the ridge above the eave supports [mm].

    Returns
    -------
    float, numpy.ndarray or sympy expression
        Length along the slope [mm].

    Examples
    --------
    >>> slope_length(building_span=24.0, rise=5.0)
    13.0
    """
    pair_checked(line_load=0.0, building_span=building_span, rise=rise)
    return square_root((building_span / 2) ** 2 + rise**2)


def rafter_thrust(*, line_load, building_span, rise):
    """Return the outward push of a rafter pair at each eave: w L^2 / (8 h).

    The free body is one rafter. At the eave the wall holds it up with w L/2; about the ridge hinge the weight
    on the rafter turns it one way by half of what the wall does, and the thrust with the lever h does the
    rest.
    A tie at the eave carries just this force, and the two rafters push on each other with it at the ridge.

    Parameters
    ----------
    line_load : float, numpy.ndarray or sympy expression
        Load on the plan, per horizontal length of a pair, the same on both sides [N/mm].
    building_span : float, numpy.ndarray or sympy expression
        Distance between the two eave supports [mm].
    rise : float, numpy.ndarray or sympy expression
        Height of the ridge above the eave supports [mm].

    Returns
    -------
    float, numpy.ndarray or sympy expression
        Thrust of one pair; of one length of roof when the load is per area [N].

    Examples
    --------
    >>> rafter_thrust(line_load=50.0, building_span=24.0, rise=6.0)
    600.0
    """
    pair_checked(line_load=line_load, building_span=building_span, rise=rise)
    return line_load * building_span**2 / (8 * rise)


def raised_tie_factor(*, height_fraction):
    """Return how many times the thrust at the eave a raised tie has to carry: 1 / (1 - a).

    The moment about the ridge is the same as before, but the lever of the tie is only (1 - a) h.

    Parameters
    ----------
    height_fraction : float, numpy.ndarray or sympy expression
        Height a of the tie above the eave as a share of the rise [-].

    Returns
    -------
    float, numpy.ndarray or sympy expression
        Multiple of the thrust [-].

    Examples
    --------
    >>> round(raised_tie_factor(height_fraction=1/3), 4)
    1.5
    """
    below_ridge(height_fraction)
    return 1 / (1 - height_fraction)


def tie_force(*, line_load, building_span, rise, height_fraction=0.0):
    """Return the pull in the tie of a rafter pair: w L^2 / (8 h (1 - a)).

    Parameters
    ----------
    line_load : float, numpy.ndarray or sympy expression
        Load on the plan, per horizontal length of a pair, the same on both sides [N/mm].
    building_span : float, numpy.ndarray or sympy expression
        Distance between the two eave supports [mm].
    rise : float, numpy.ndarray or sympy expression
        Height of the ridge above the eave supports [mm].
    height_fraction : float, numpy.ndarray or sympy expression
        Height a of the tie above the eave as a share of the rise [-].

    Returns
    -------
    float, numpy.ndarray or sympy expression
        Pull in the tie of one pair; the rafters push on each other at the ridge with the same force [N].

    Examples
    --------
    >>> round(tie_force(line_load=50.0, building_span=24.0, rise=6.0, height_fraction=1/3), 6)
    900.0
    """
    thrust = rafter_thrust(line_load=line_load, building_span=building_span, rise=rise)
    return thrust * raised_tie_factor(height_fraction=height_fraction)


def simple_rafter_moment(*, line_load, building_span):
    """Return the greatest moment of a rafter held at its two ends only: w (L/2)^2 / 8.

    This is the rafter with its tie at the eave, and the rafter on a ridge beam. Only the plan counts: the
    slope makes the rafter longer and turns the load, and the two cancel.

    Parameters
    ----------
    line_load : float, numpy.ndarray or sympy expression
        Load on the plan, per horizontal length of a pair [N/mm].
    building_span : float, numpy.ndarray or sympy expression
        Distance between the two eave supports [mm].

    Returns
    -------
    float, numpy.ndarray or sympy expression
        Moment at the middle of the rafter [N*mm].

    Examples
    --------
    >>> simple_rafter_moment(line_load=50.0, building_span=24.0)
    900.0
    """
    pair_checked(line_load=line_load, building_span=building_span)
    return line_load * (building_span / 2) ** 2 / 8


def raised_tie_bending_factor(*, height_fraction):
    """Return the moment in the rafter AT a raised tie, as a multiple of w (L/2)^2 / 8: 8 (a - a^2/2).

    Below the tie the rafter is pushed up by the wall alone, w L/2, and carries no thrust yet. A plan distance
    a L/2 up, where the tie takes hold, this leaves the moment w (L/2)^2 (a - a^2/2). It is 0 for a tie at the
    eave, where the rafter bends most in its middle and the whole factor is 1. The formula is the moment at
    the tie for every a from 0 up; it is the GREATEST moment of the rafter only from a = 1 - 1/sqrt(2) = 0.293
    upward (see ``raised_tie_greatest_factor``). The reductions of rafter spans that the residential code
    prints for raised ties equal 1 / sqrt of this factor.

    Parameters
    ----------
    height_fraction : float, numpy.ndarray or sympy expression
        Height a of the tie above the eave as a share of the rise [-].

    Returns
    -------
    float, numpy.ndarray or sympy expression
        Moment at the tie over the moment of the simple rafter [-].

    Examples
    --------
    >>> factor = raised_tie_bending_factor(height_fraction=1/3)
    >>> round(factor, 4), round(factor**-0.5, 2)
    (2.2222, 0.67)
    """
    below_ridge(height_fraction)
    return 8 * (height_fraction - height_fraction**2 / 2)


def raised_tie_greatest_factor(*, height_fraction):
    """Return the greatest moment anywhere in the rafter, as a multiple of w (L/2)^2 / 8.

    It is 1 / (1 - a)^2, between tie and ridge, up to a = 0.293, and 8 (a - a^2/2), at the tie, above. The
    larger of the two would be wrong above 0.293: there the first is never reached inside the rafter.

    Parameters
    ----------
    height_fraction : float, numpy.ndarray or sympy expression
        Height a of the tie above the eave as a share of the rise [-].

    Returns
    -------
    float, numpy.ndarray or sympy expression
        Greatest moment over the moment of the simple rafter [-].

    Examples
    --------
    >>> [round(raised_tie_greatest_factor(height_fraction=a), 3) for a in (0.0, 0.2, 1/3, 0.5)]
    [1.0, 1.562, 2.222, 3.0]
    """
    at_tie = raised_tie_bending_factor(height_fraction=height_fraction)
    above = 1 / (1 - height_fraction) ** 2
    if is_symbolic(height_fraction):
        import sympy

        return sympy.Piecewise((above, height_fraction <= 1 - sympy.sqrt(2) / 2), (at_tie, True))
    if numpy.ndim(height_fraction):
        return numpy.where(numpy.asarray(height_fraction) <= TIE_GOVERNS_FROM, above, at_tie)
    return above if height_fraction <= TIE_GOVERNS_FROM else at_tie


def ridge_beam_load(*, line_load, building_span):
    """Return what a ridge BEAM carries of a rafter pair: w L / 2; each wall keeps w L / 4, and nothing
    pushes.

    Parameters
    ----------
    line_load : float, numpy.ndarray or sympy expression
        Load on the plan, per horizontal length of a pair; or a load per area [N/mm].
    building_span : float, numpy.ndarray or sympy expression
        Distance between the two eave supports [mm].

    Returns
    -------
    float, numpy.ndarray or sympy expression
        Load on the ridge of one pair; per length of ridge when the load is per area [N].

    Examples
    --------
    >>> ridge_beam_load(line_load=45.0, building_span=24.0)
    540.0
    """
    pair_checked(line_load=line_load, building_span=building_span)
    return line_load * building_span / 2


def ridge_post_load(*, ridge_load, spans):
    """Return what a post under a ridge beam carries: half of each span that ends on it.

    The spans are taken as simple ones; a beam that runs through over a middle post gives it more.

    Parameters
    ----------
    ridge_load : float, numpy.ndarray or sympy expression
        Load per length of ridge [N/mm].
    spans : float, numpy.ndarray or sympy expression
        Sum of the ridge-beam spans that end on the post: one for an end post, two for a middle one [mm].

    Returns
    -------
    float, numpy.ndarray or sympy expression
        Load on the post [N].

    Examples
    --------
    >>> ridge_post_load(ridge_load=540.0, spans=16.0)
    4320.0
    """
    not_negative("ridge load", ridge_load, _LOAD)
    positive("spans", spans, "for example 16*ft")
    return ridge_load * spans / 2
