"""The bolts of a flitch beam: what they pass, how they stand, every hole that is drilled, and the wood past the end bolts.

Bolts bring the plate its share along the beam, and at the ends either give it back to the wood or the plate stands on
the seat itself.
"""

from dataclasses import dataclass
from functools import lru_cache
from math import ceil, floor

from structlib.ground.records import measured
from structlib.ground.refusals import BadInput, OutsideRule
from structlib.ground.units import deg, ft, inch, lb, plf  # noqa: F401  the examples use them
from structlib.mechanics.fastener_groups import fastener_spacing
from structlib.rules.check import Check, least_verified
from structlib.rules.members.plies import Flitch  # noqa: F401  the examples use it
from structlib.rules.us.dowels import (
    adjusted_value,
    bolt,
    geometry_factor,
    lateral_value,
    least_distances,
    steel_plate,
    wood_piece,
)
from structlib.rules.us.flitch import hole_loss, refuse_no_flitch
from structlib.rules.us.inputs import check_amount, check_yes_or_no
from structlib.rules.us.notched_ends import tension_notch_shear
from structlib.rules.us.one_number import check_one_number
from structlib.rules.us.steel_sections import steel_factor

_STEP = inch  # bolts are set out in whole inches
_NEAR_END = 5  # shear at bolts: "near an end" is within five depths of it (NDS 3.4.3.3)
_LEAN_ROW = 4  # staggered bolts closer than a quarter of the gap between lines count as one row (NDS 11.3.6)


@dataclass(frozen=True, kw_only=True)
class BoltHole:
    """One hole of a drilling template.

    Parameters
    ----------
    along : float
        Distance of its centre from the left end of the plate [mm].
    up : float
        Distance of its centre above the lower edge of the wood [mm].
    group : str
        ``left end``, ``along`` or ``right end`` [-].

    Examples
    --------
    >>> BoltHole(along=50.0, up=60.0, group="along").up
    60.0
    """

    along: float = measured("length", "from the left end")
    up: float = measured("section length", "above the lower edge")
    group: str = measured("text", "group")


@dataclass(frozen=True, kw_only=True)
class FlitchBolts:
    """The bolts of a flitch beam: how many, how far apart, where, and what they pass on.

    Parameters
    ----------
    line_load : float
        Load that passes into the plate along the beam [N/mm].
    reaction : float
        Load that the plate gives up at each end [N].
    value : float
        What one bolt carries, wood on both sides [N].
    mode : str
        Yield mode that governs [-].
    spacing_needed : float
        Spacing at which the bolts along the beam just carry it [mm].
    spacing : float
        Spacing along the beam, one bolt at a time, lines in turn [mm].
    end_bolts : int
        Bolts in each end group [-].
    end_step : float
        Spacing in the end groups [mm].
    edge_distance : float
        Lines from the edges of the wood [mm].
    lines : int
        Lines of bolts [-].
    holes : tuple of BoltHole
        Every hole, from left to right [-].
    checks : tuple of Check
        Load along the beam, load at the ends, distances [-].
    conditions : tuple of str
        What must hold on site [-].
    verified : str
        How the numbers are known [-].

    Examples
    --------
    >>> FlitchBolts.__name__
    'FlitchBolts'
    """

    line_load: float = measured("line load", "load into the plate")
    reaction: float = measured("force", "load given up at each end")
    value: float = measured("force", "one bolt")
    mode: str = measured("text", "yield mode")
    spacing_needed: float = measured("small length", "spacing needed")
    spacing: float = measured("section length", "spacing along the beam")
    end_bolts: int = measured("count", "bolts in each end group")
    end_step: float = measured("section length", "spacing in the end groups")
    edge_distance: float = measured("small length", "lines from the edges")
    lines: int = measured("count", "lines of bolts")
    holes: tuple = ()
    checks: tuple = ()
    conditions: tuple = ()
    verified: str = measured("text", "how it is known", default="recalled")


def bolt_through_plate(beam, *, bolt_diameter, time_factor=1.0, moisture="dry"):
    """Return what one bolt passes between the wood on both sides and the plate in the middle.

    Parameters
    ----------
    beam : Flitch
        The beam [-].
    bolt_diameter : float
        Diameter of the bolt [mm].
    time_factor : float
        Load duration factor [-].
    moisture : str
        ``dry``, ``wet in service`` or ``wet when built`` [-].

    Returns
    -------
    tuple
        Adjusted value, the reference value with its modes, and the factors used [N, -, -].

    Raises
    ------
    OutsideRule
        When the bolt or the wood is outside the rule.

    Notes
    -----
    NDS 2018 12.3.1, double shear, load across the grain of the wood; steel side or middle by 1.5 F_u.

    Examples
    --------
    >>> from structlib.ground.lumber import find_material
    >>> beam = Flitch(wood=find_material("Douglas Fir-Larch", "No.2"), ply_width=1.5 * inch,
    ...     depth=9.25 * inch,
    ...               plies=2, plate_thickness=0.5 * inch, plate_depth=9.25 * inch)
    >>> value, found, _ = bolt_through_plate(beam, bolt_diameter=0.5 * inch)
    >>> round(value / lb, -1), found.mode
    (870.0, 'IIIs')
    """
    refuse_no_flitch(beam)
    return _passed_by(beam, bolt(bolt_diameter), time_factor, moisture)


@lru_cache(maxsize=64)
def _passed_by(beam, one, time_factor, moisture):
    found = lateral_value(
        one,
        main=steel_plate(thickness=beam.plate_thickness),
        side=wood_piece(
            thickness=beam.ply_width * beam.plies / 2,
            specific_gravity=beam.wood.specific_gravity,
            angle=90 * deg,
        ),
        shear="double",
    )
    value, used = adjusted_value(found, one, time_factor=time_factor, moisture=moisture)
    return value, found, used


def bolts_for_force(force, *, value):
    """Return how many bolts a force needs.

    Parameters
    ----------
    force : float
        Force to pass [N].
    value : float
        What one bolt carries [N].

    Returns
    -------
    int
        Number of bolts [-].

    Examples
    --------
    >>> bolts_for_force(2500 * lb, value=1000 * lb)
    3
    """
    check_amount("force", force, zero=True, hint="for example 2000*lb")
    check_amount("value of a bolt", value, hint="for example 1000*lb")
    return int(ceil(force / value - 1e-9))


def flitch_bolts(
    beam, *, length, line_load, reaction, bolt_diameter, plate_bears=False, time_factor=1.0, moisture="dry"
):
    """Lay out the bolts of a flitch beam from what they must pass, or refuse what does not fit.

    Parameters
    ----------
    beam : Flitch
        The beam [-].
    length : float
        Length of the plate [mm].
    line_load : float
        Greatest load by length on the beam, which lands on the wood [N/mm].
    reaction : float
        Greater of the two end reactions of the whole beam [N].
    bolt_diameter : float
        Diameter of the bolts [mm].
    plate_bears : bool
        Whether the plate itself stands on a steel seat, so that it keeps its share of the reaction [-].
    time_factor : float
        Load duration factor [-].
    moisture : str
        ``dry``, ``wet in service`` or ``wet when built`` [-].

    Returns
    -------
    FlitchBolts
        Spacing, end groups, every hole, checks and conditions [-].

    Raises
    ------
    OutsideRule
        When the bolts do not fit; a thicker bolt, more depth or a steel seat is named.

    Notes
    -----
    NDS 2018 12.5.1 for distances, 11.3.6 for staggered bolts. The greatest spacing is common practice. A
    post or beam that lands on the flitch beam needs a group of its own: see ``bolts_for_force``.

    Examples
    --------
    >>> from structlib.ground.lumber import find_material
    >>> beam = Flitch(wood=find_material("Douglas Fir-Larch", "No.2"), ply_width=1.5 * inch,
    ...     depth=9.25 * inch,
    ...               plies=2, plate_thickness=0.5 * inch, plate_depth=9.25 * inch)
    >>> found = flitch_bolts(beam, length=12 * ft, line_load=500 * plf, reaction=3000 * lb,
    ...     bolt_diameter=0.5 * inch)
    >>> found.end_bolts, round(found.spacing / inch), len(found.holes)
    (3, 16, 14)
    """
    refuse_no_flitch(beam)
    check_one_number("length of the plate", length, low=2 * ft, high=40 * ft, hint="for example 12*ft")
    check_amount("line load", line_load, hint="for example 500*plf")
    check_amount("reaction", reaction, hint="for example 3000*lb")
    check_yes_or_no("plate bears", plate_bears)
    value, found, used = bolt_through_plate(
        beam, bolt_diameter=bolt_diameter, time_factor=time_factor, moisture=moisture
    )
    share = beam.steel_share
    along, end = share * line_load, share * reaction
    wants, slender = _wants(beam, bolt_diameter, found)
    edge, lines = _edge(beam, bolt_diameter, wants)
    gap = beam.depth - 2 * edge
    least = max(wants["between rows"][0], gap / _LEAN_ROW)
    needed = fastener_spacing(value=value, flow=along)
    spacing = min(floor(needed / _STEP + 1e-9) * _STEP, steel_factor("greatest_bolt_spacing"))
    if spacing < least:
        raise OutsideRule(
            f"{bolt_diameter / inch:g} in bolts would have to stand {needed / inch:.1f} in apart, closer "
            f"than the {least / inch:.1f} in that the wood asks for; take thicker bolts, more plies or a "
            "thinner plate"
        )
    step = ceil(least / _STEP - 1e-9) * _STEP
    # Two bolts at each end hold a plate that stands on its own seat.
    end_bolts = 2 if plate_bears else max(2, bolts_for_force(end, value=value))
    first = ceil(wants["end"][0] / _STEP - 1e-9) * _STEP
    holes = _holes(beam, length, first, step, end_bolts, spacing, edge, lines, bolt_diameter)
    one = bolt(bolt_diameter)
    checks = (
        _bolt_check("load into the plate along the beam", along, value / spacing, "line load", found, used),
        # a plate on a seat of its own gives nothing back through bolts
        *(
            ()
            if plate_bears
            else (_bolt_check("load out of the plate at an end", end, end_bolts * value, "force", found, used),)
        ),
    ) + geometry_factor(
        one,
        {"edge": edge, "end": first, "between rows": step},
        load="perpendicular",
        slenderness=slender,
        staggered=lines > 1,
    )[1]
    return FlitchBolts(
        line_load=along,
        reaction=end,
        value=value,
        mode=found.mode,
        spacing_needed=needed,
        spacing=spacing,
        end_bolts=end_bolts,
        end_step=step,
        edge_distance=edge,
        lines=lines,
        holes=holes,
        checks=checks,
        conditions=_conditions(end, plate_bears, hole_loss(beam, edge_distance=edge, bolt_diameter=bolt_diameter)),
        verified=least_verified([check.verified for check in checks]),
    )


def hole_line(beam, *, bolt_diameter):
    """Return how far the lines of bolts stand from the edges of the wood.

    Parameters
    ----------
    beam : Flitch
        The beam [-].
    bolt_diameter : float
        Diameter of the bolts [mm].

    Returns
    -------
    float
        From the edge of the wood to the middle of the holes; half of the depth where only one line fits [mm].

    Raises
    ------
    OutsideRule
        When no line fits.

    Examples
    --------
    >>> from structlib.ground.lumber import find_material
    >>> beam = Flitch(wood=find_material("Hem-Fir", "No.2"), ply_width=1.5 * inch, depth=9.25 * inch,
    ...               plies=2, plate_thickness=0.5 * inch, plate_depth=9 * inch)
    >>> hole_line(beam, bolt_diameter=0.5 * inch) / inch
    2.3125
    """
    refuse_no_flitch(beam)
    _, found, _ = bolt_through_plate(beam, bolt_diameter=bolt_diameter)
    return _edge(beam, bolt_diameter, _wants(beam, bolt_diameter, found)[0])[0]


def end_bolt_shear(beam, bolts, *, shear_value):
    """Return the end reaction that the wood can bring past its end bolts, where the plate does not bear.

    Parameters
    ----------
    beam : Flitch
        The beam [-].
    bolts : FlitchBolts
        Its bolts [-].
    shear_value : float
        Shear value of the wood with its factors [MPa].

    Returns
    -------
    tuple of float
        The reaction, and the depth that counts: from the lower edge, which the bolts push towards, to the
        bolt farthest from it [N, mm].

    Raises
    ------
    OutsideRule
        When the bolts of the end group reach farther than five depths from the end.

    Notes
    -----
    NDS 2018 3.4.3.3(a), recalled: f_v = (3 V / (2 b d_e)) (d / d_e)^2 within five depths of the end. It is
    the rule of a notched end with the depth to the far bolt in the place of the depth left, and no load near
    the seat is left out of V.

    Examples
    --------
    >>> from structlib.ground.lumber import find_material
    >>> from structlib.ground.units import psi
    >>> beam = Flitch(wood=find_material("Douglas Fir-Larch", "No.2"), ply_width=1.5 * inch,
    ...     depth=9.25 * inch,
    ...               plies=2, plate_thickness=0.5 * inch, plate_depth=9 * inch)
    >>> bolts = flitch_bolts(beam, length=12 * ft, line_load=500 * plf, reaction=3000 * lb,
    ...     bolt_diameter=0.5 * inch)
    >>> [round(one, 1) for one in (end_bolt_shear(beam, bolts, shear_value=180 * psi)[0] / lb,
    ...     end_bolt_shear(beam, bolts, shear_value=180 * psi)[1])]
    [1404.8, 176.2]
    """
    refuse_no_flitch(beam)
    if not isinstance(bolts, FlitchBolts):
        raise BadInput(f"bolts are what flitch_bolts lays out, got {type(bolts).__name__}")
    group = [hole for hole in bolts.holes if hole.group == "left end"]
    reach = max(hole.along for hole in group)
    if reach > _NEAR_END * beam.depth:
        raise OutsideRule(
            f"the end bolts reach {reach / inch:.0f} in from the end, farther than five depths; the rule for "
            "shear at bolts near an end is not for that"
        )
    counts = max(hole.up for hole in group)
    given = tension_notch_shear(
        shear_value=shear_value, width=beam.ply_width * beam.plies, depth=beam.depth, remaining=counts
    )
    return given, counts


def _wants(beam, diameter, found):
    """Bolts loaded across the grain, as slender as the thinner of wood and plate along them: the wood "
    "decides."""
    slender = found.side_length / diameter
    return least_distances(bolt(diameter), load="perpendicular", slenderness=slender), slender


def _edge(beam, diameter, wants):
    """Lines at a quarter of the depth, or as the edges of wood and plate ask; one line where two do not "
    "fit."""
    inside = (beam.depth - beam.plate_depth) / 2 + steel_factor("least_plate_edge") * diameter
    least = max(wants["edge"][0], inside)
    if least > beam.depth / 2 * (1 + 1e-9):
        raise OutsideRule(
            f"{diameter / inch:g} in bolts want {least / inch:.2f} in to each edge, the beam is "
            f"{beam.depth / inch:.2f} in deep; take thinner bolts"
        )
    edge = max(least, beam.depth / 4)
    lines = 2 if beam.depth - 2 * edge > diameter else 1
    return (edge if lines == 2 else beam.depth / 2), lines


def _holes(beam, length, first, step, end_bolts, spacing, edge, lines, diameter):
    group = [first + number * step for number in range(end_bolts)]
    if group[-1] + step > length / 2:
        raise OutsideRule(
            f"{end_bolts} bolts at each end, {step / inch:g} in apart, do not fit a plate "
            f"{length / ft:.1f} ft long; take thicker bolts than {diameter / inch:g} in, or let the plate "
            "stand on a steel seat"
        )
    left, right = group[-1], length - group[-1]
    gaps = max(1, ceil((right - left) / spacing - 1e-9))
    between = [left + (right - left) * number / gaps for number in range(1, gaps)]
    places = [(x, "left end") for x in group] + [(x, "along") for x in between]
    places += [(length - x, "right end") for x in reversed(group)]
    heights = (edge, beam.depth - edge) if lines == 2 else (beam.depth / 2,)
    return tuple(BoltHole(along=x, up=heights[number % lines], group=name) for number, (x, name) in enumerate(places))


def _bolt_check(name, asked, given, dimension, found, used):
    return Check(
        name=name,
        kind="bolts",
        sentence="load lands on the wood, and the bolts carry the plate's share across",
        asked=asked,
        given=given,
        share=asked / given,
        dimension=dimension,
        position=0.0,
        where=f"between wood and plate, mode {found.mode}",
        combination="the one that asks most",
        clause="NDS 2018 12.3.1, Table 11.3.1",
        formula="share * w <= Z' / s" if dimension == "line load" else "share * R <= n Z'",
        factors=used,
        verified=least_verified([found.verified] + [factor.verified for factor in used]),
    )


def _conditions(end, plate_bears, lost):
    first = (
        f"plate and wood both stand on one flat steel seat, which takes {end / lb:,.0f} lb from the plate"
        if plate_bears
        else f"the end bolts give the wood back {end / lb:,.0f} lb, and the wood alone bears on the seat"
    )
    return (
        first,
        "where the plate does not bear, shear of the wood at the end bolts is checked with the beam (NDS "
        "2018 3.4.3.3, recalled); splitting across the grain there is for the engineer",
        f"a hole takes {100 * lost:.0f} % off the bending strength of the wood where it stands, and about as "
        "much off the plate (NDS 2018 3.1.2, recalled); the bending checks of the beam count it",
        "as the wood creeps, more of the load that stays goes through the bolts; they are laid out for the "
        "first day, and the engineer judges that",
        "holes drilled through wood and steel together, 1/32 to 1/16 in larger than the bolt",
        "washers under head and nut; nuts tightened again after the wood has dried",
        "the load lands on all wood plies, half on each side of the plate",
        "the plate is flush with, or a little short of, the edges of the wood, which shrinks and steel does not",
    )
