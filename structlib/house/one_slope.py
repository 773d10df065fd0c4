"""The rafters of a roof with one slope, or flat: simple beams on the slope between what holds them."""

import math

from structlib.ground.loads import LOAD_TYPES
from structlib.ground.refusals import OutsideRule
from structlib.house.pieces import area_load, piece_of
from structlib.house.running import clipped
from structlib.mechanics.beams import Beam, LineLoad, PointLoad, Support, solve
from structlib.rules.check import VARIABLE_TYPES
from structlib.rules.members import RafterDemand, RafterMember

_SAME = 1e-3  # mm


def slope_rafters(element, rulebook):
    """Return what is asked of the rafters of a roof that has one slope or none; they span between upright pushes.

    Parameters
    ----------
    element : structlib.house.shares.Element
        The roof; its rafters are written [-].
    rulebook : structlib.rules.check.Rulebook
        The rules, which combine the loads [-].

    Returns
    -------
    list of (structlib.rules.members.RafterMember, tuple of structlib.rules.members.RafterDemand)
        Each span, under what stands on each stretch of it; the eave is taken at whichever end asks more. A tail that
        bends them more than their span does raises `OutsideRule` [-].

    Examples
    --------
    >>> from structlib.ground.units import ft, inch, lb, psf
    >>> from structlib.house.path import follow
    >>> from structlib.house.plan import House, Joists, Level, Wall
    >>> from structlib.rules.choice import RULEBOOK
    >>> wood = Joists(species="Hem-Fir", grade="No.2", size="2x8", spacing=16 * inch, weighed=False)
    >>> roof = Level(name="roof", kind="roof", on=("a", "b"), start=0.0, end=9 * ft, snow=30 * psf, roof_live=0.0, joist=wood)
    >>> walls = [Wall(name=name, on=("soil",), at=at, start=0.0, end=9 * ft, height=8 * ft, weight=0.0)
    ...          for name, at in (("a", 0.0), ("b", 12 * ft))]
    >>> path = follow(House(name="flat", levels=(roof,), walls=tuple(walls)))
    >>> [(member, demands)] = slope_rafters(path.element("roof"), RULEBOOK)
    >>> round(demands[-1].moment / (lb * ft))  # 40 plf x 12 ft x 12 ft / 8
    720
    """
    level, slope, last = element.part, element.part.slope[0] / element.part.slope[1], len(element.spans) - 1
    piece, found = piece_of(level.joist), {}
    slant = math.hypot(1.0, slope)
    stands = {tuple(one for one in element.received if one.y < y < one.y_end): None
              for y in ((one.y + one.y_end) / 2 for one in element.gives)}  # fmt: skip
    even = [amount * level.joist.spacing for amount in area_load(level, level.slope)]
    for number, (left, right) in enumerate(element.spans):
        reach = (
            left - (0.0 if number else level.left_overhang),
            right + (0.0 if number < last else level.right_overhang),
        )
        over = (0.5 if number else 1.0, 0.5 if number < last else 1.0)
        member = RafterMember(
            piece.material, piece.ply_width, piece.depth, piece.plies, (right - left) * slant, 12 * slope, level.joist.spacing
        )  # fmt: skip
        for on in stands:
            loads = clipped(level.name, even, reach, reach)
            for one in on:
                amounts = [amount * level.joist.spacing for amount in one.amount]
                loads += clipped(one.source, amounts, (one.x, one.x), reach, over)
            found[member, _demands(member, loads, [at - reach[0] for at in (left, right, reach[1])], rulebook)] = None
    return list(found)


def _demands(member, loads, places, rulebook):
    """What every combination asks of one span, with what comes and goes all over it, and between its supports alone."""
    present = {kind for _, amounts, *_ in loads for kind, amount in zip(LOAD_TYPES, amounts) if amount}
    return tuple(_demand(member, one, loads, places, present) for one in rulebook.combinations(present))


def _demand(member, combination, loads, places, present):
    """The greatest of each that both arrangements ask; a share of the plan says where."""
    passing = tuple(kind for kind in VARIABLE_TYPES if kind in present and combination.factor(kind))
    cases = [_solved(member, loads, places, combination.factor, cut) for cut in (False, True)]
    inside = [one.extremes_between(*_supports(member, places)) for one in cases]
    moment = max((one.extremes.greatest_moment for one in cases), key=lambda one: one.value)
    if max(-one.extremes.least_moment.value for one in cases) > moment.value:
        raise OutsideRule(
            "a tail bends the rafters more over what holds them than their span does, and nothing is known to hold their "
            "lower edge there; what they bring down stands"
        )
    shear = max((one.extremes.shear for one in cases), key=lambda one: abs(one.value))
    alone = _solved(member, loads, places, lambda kind: combination.factor(kind) * (kind in passing), True)
    sag = alone.extremes_between(*_supports(member, places)).greatest_deflection
    first, end = _supports(member, places)
    share = lambda peak: min(max((peak.position - first) / (end - first), 0.0), 1.0)  # noqa: E731
    # both ends push straight up, so the eave is pressed along the rafter by its push there
    axial = max(abs(one.shear.value) for one in inside) * member.rise / 12
    return RafterDemand(combination, axial, moment.value, share(moment), abs(shear.value), share(shear), passing,
                        sag.value, share(sag))  # fmt: skip


def _supports(member, places):
    slant = math.hypot(1.0, member.rise / 12)
    return places[0] * slant, places[1] * slant


def _solved(member, loads, places, factor_of, cut):
    """One span on its slope under the parts of its loads that lie square to it, ``cut`` with nothing passing past its supports."""
    slant, square = math.hypot(1.0, member.rise / 12), []
    for _, amounts, start, end in loads:
        lasting = factor_of("dead") * amounts[0]
        passing = sum(factor_of(kind) * amount for kind, amount in zip(LOAD_TYPES[1:], amounts[1:]))
        for amount, a, b in (
            (lasting, start, end),
            (passing, *(_between(start, end, places) if cut else (start, end))),
        ):
            if not amount or b < a:
                continue
            if end - start <= _SAME:
                square.append(PointLoad(a * slant, amount / slant))
            elif b - a > _SAME:
                square.append(LineLoad(a * slant, b * slant, amount / slant**2))
    return solve(
        Beam(places[2] * slant, member.bending_stiffness, tuple(map(Support, _supports(member, places))), tuple(square))
    )


def _between(start, end, places):
    """What of a load lies between the supports; an end before its start where nothing does."""
    return max(start, places[0]), min(end, places[1])
