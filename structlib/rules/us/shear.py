"""Shear in wood beams (NDS 2018 3.4): checked near the ends, where the beam pushes on its seats."""

from structlib.ground.refusals import check_choice
from structlib.mechanics.resultants import load_between
from structlib.rules.check import LOADED_ON, NOT_WRITTEN, SEATS, Factor
from structlib.rules.us import factors
from structlib.rules.us.bending import check_time_factor, wet_factor, wet_verified


def shear_value(material, *, time_factor, wet=False):
    """Return the adjusted shear value of a wood and the factors that made it.

    Parameters
    ----------
    material : structlib.ground.lumber.Material
        The wood [-].
    time_factor : float
        Load duration factor C_D of the combination [-].
    wet : bool
        Wet service [-].

    Returns
    -------
    tuple of (float, tuple of Factor)
        Adjusted shear value and its factors [MPa, -].

    Raises
    ------
    OutsideRule
        When a factor is asked outside its rule.

    Notes
    -----
    NDS 2018 Table 4.3.1 and 8.3.1: F_v' = F_v C_D C_M. Size, plies and bracing do not touch it. What incising takes
    is in the wood itself (`RULEBOOK.in_service`).

    Examples
    --------
    >>> from structlib.ground.lumber import find_material
    >>> from structlib.ground.units import psi
    >>> value, used = shear_value(find_material("Hem-Fir", "No.2"), time_factor=1.15)
    >>> round(value / psi, 1), [factor.symbol for factor in used]
    (172.5, ['C_D', 'C_M'])
    """
    check_time_factor(material, time_factor)
    moist = wet_factor(material, value="shear", wet=wet)
    known = wet_verified(material, value="shear", wet=wet)
    lasts = ("C_D", time_factor, "how long the load lasts", "NDS 2018 Table 2.3.2")
    used = (
        Factor(*lasts, factors.verified("load_duration_live")),
        Factor("C_M", moist, "wet or dry in use", "NDS Supplement 2018", known),
    )
    return material.shear * time_factor * moist, used


def loads_near_support_may_be_left_out(*, below, loaded_on):
    """Tell whether load within a depth of the support may be left out of the shear.

    Parameters
    ----------
    below : str
        What the end rests on: 'plate', 'post', 'steel', 'masonry', 'hanger' or 'not written' [-].
    loaded_on : str
        Where the load comes in: 'top' or 'side' [-].

    Returns
    -------
    bool
        True only for a beam with full bearing below and the load on its top [-].

    Notes
    -----
    NDS 2018 3.4.3.1. A beam hung from its side, or loaded through hangers on its side, gets no reduction.

    Examples
    --------
    >>> loads_near_support_may_be_left_out(below="plate", loaded_on="top")
    True
    >>> loads_near_support_may_be_left_out(below="plate", loaded_on="side")
    False
    """
    check_choice("what the end rests on", below, (*SEATS, NOT_WRITTEN.below))
    check_choice("where the load comes in", loaded_on, LOADED_ON)
    return below not in ("hanger", NOT_WRITTEN.below) and loaded_on == "top"


def design_shear(demand, member):
    """Return the shear to check at each end of a beam, after the reduction where it is allowed.

    Parameters
    ----------
    demand : structlib.rules.check.BeamDemand
        Solved beam for one combination [-].
    member : structlib.rules.check.BeamMember
        The beam [-].

    Returns
    -------
    tuple of tuple
        For each end: (shear, position of that shear, whether load was left out) [N, mm, -].

    Notes
    -----
    Where nothing may be left out, the whole push of the seat counts, at the end of the design span, but for a load
    right over the seat, which goes straight down.

    NDS 2018 3.4.3.1(a): distributed load from the support to a depth beyond its face is left out. Point
    loads close to a support are kept whole: the rule lets them be reduced; keeping them is on the careful side.

    Examples
    --------
    >>> from structlib.mechanics.beams import Beam, LineLoad, Support, solve
    >>> from structlib.rules.check import BeamDemand, BeamMember, Seat
    >>> even = solve(Beam(3000.0, 1e12, [Support(0.0), Support(3000.0)], [LineLoad(0.0, 3000.0, 10.0)]))
    >>> demand = BeamDemand(None, even, None, None, 3000.0, 50.0, 2950.0, ((0.0, 3000.0, 10.0, 10.0),))
    >>> member = BeamMember(None, 38.0, 200.0, 2, Seat(100.0), Seat(100.0), unbraced_length=0.0)
    >>> [round(shear) for shear, _, _ in design_shear(demand, member)]
    [12500, 12500]
    """
    solution, span = demand.solution, demand.span
    ends = []
    left_out_left = loads_near_support_may_be_left_out(below=member.left.below, loaded_on=member.loaded_on)
    left_out_right = loads_near_support_may_be_left_out(below=member.right.below, loaded_on=member.loaded_on)
    near = min(demand.left_face + member.depth, span / 2)
    far = max(demand.right_face - member.depth, span / 2)
    # what stands right over a seat presses it and shears nothing
    reaction_left, reaction_right = solution.shear(0.0), -solution.shear(float(span), side="left")
    dropped = load_between(demand.top_loads, start=0.0, end=near) if left_out_left else 0.0
    ends.append((reaction_left - dropped, near if left_out_left else 0.0, left_out_left))
    dropped = load_between(demand.top_loads, start=far, end=span) if left_out_right else 0.0
    ends.append((reaction_right - dropped, far if left_out_right else span, left_out_right))
    return tuple(ends)
