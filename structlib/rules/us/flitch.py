"""Flitch beams: a steel plate between wood plies, from its share of the load to the holes that are drilled.

Wood and plate sag alike, so each takes load by its E I. Bolts bring the plate its share along the beam, and
at the ends either give it back to the wood or the plate stands on the seat itself.
"""

from dataclasses import dataclass
from functools import lru_cache
from math import ceil, floor

from structlib.ground.cut_sections import drilled_section_modulus
from structlib.ground.records import measured
from structlib.ground.refusals import BadInput, OutsideRule, check_choice
from structlib.ground.sections import rectangle_section_modulus
from structlib.ground.units import deg, ft, inch, lb, plf  # noqa: F401  the examples use them
from structlib.ground.steel import steel_fact_known
from structlib.mechanics.composite import own_stress
from structlib.mechanics.fastener_groups import fastener_spacing
from structlib.rules.check import Check, least_verified
from structlib.rules.keyed import KeyedNumbers
from structlib.rules.members.plies import Flitch
from structlib.rules.us.dowels import (
    adjusted_value,
    bolt,
    geometry_factor,
    lateral_value,
    least_distances,
    steel_plate,
    wood_piece,
)
from structlib.rules.us.inputs import check_amount, check_yes_or_no
from structlib.rules.us.notches import tension_notch_shear
from structlib.rules.us.one_number import check_one_count, check_one_number
from structlib.rules.us.steel_beams import steel_moment
from structlib.rules.us.steel_sections import steel_factor, steel_known

STRESS_LIMITS = ("0.60 Fy", "0.66 Fy", "F11")
_STEP = inch  # bolts are set out in whole inches
_NEAR_END = 5  # shear at bolts: "near an end" is within five depths of it (NDS 3.4.3.3)
_LEAN_ROW = 4  # staggered bolts closer than a quarter of the gap between lines count as one row (NDS 11.3.6)


@dataclass(frozen=True, kw_only=True)
class Hole:
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
    >>> Hole(along=50.0, up=60.0, group="along").up
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
    holes : tuple of Hole
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


@dataclass(frozen=True, kw_only=True)
class PlatePiece:
    """One piece of a plate that is brought in pieces.

    Parameters
    ----------
    start : float
        Where it begins, from the left end of the plate [mm].
    end : float
        Where it ends [mm].
    weight : float
        Weight [N].

    Examples
    --------
    >>> PlatePiece(start=0.0, end=1000.0, weight=500.0).weight
    500.0
    """

    start: float = measured("length", "from")
    end: float = measured("length", "to")
    weight: float = measured("force", "weight")


def plate_stress_limit(beam, *, limit="0.60 Fy"):
    """Return the bending stress that is allowed in the plate of a flitch beam.

    Parameters
    ----------
    beam : Flitch
        The beam [-].
    limit : str
        ``0.60 Fy``, ``0.66 Fy``, or ``F11`` (plastic moment of a bar held all along, over 1.67) [-].

    Returns
    -------
    tuple of (float, str, str)
        Allowed stress on the elastic section, its clause, and how it is known [MPa, -, -].

    Raises
    ------
    BadInput
        When an input is no such thing.

    Notes
    -----
    AISC 1989 ASD F1.3 and F1.1, AISC 360-16 F11, all recalled. The plate counts as held all along because the
    bolts clamp it between the plies.

    Examples
    --------
    >>> from structlib.ground.lumber import find_material
    >>> from structlib.ground.units import ksi
    >>> beam = Flitch(wood=find_material("Hem-Fir", "No.2"), ply_width=1.5 * inch, depth=9.25 * inch,
    ...               plies=2, plate_thickness=0.5 * inch, plate_depth=9 * inch)
    >>> [round(plate_stress_limit(beam, limit=name)[0] / ksi, 2) for name in STRESS_LIMITS]
    [21.6, 23.76, 32.34]
    """
    _check_beam(beam)
    check_choice("stress limit", limit, STRESS_LIMITS)
    if limit == "F11":
        found = steel_moment(beam.plate, unbraced_length=0.0)
        return found.allowed / beam.plate.section_modulus, found.clause, found.verified
    key = "stress_share_060" if limit == "0.60 Fy" else "stress_share_066"
    clause = "AISC 1989 ASD F1.3" if limit == "0.60 Fy" else "AISC 1989 ASD F1.1"
    return steel_factor(key) * beam.plate.yield_strength, clause, least_verified([steel_known(key), steel_fact_known("yield_A36")])


def plate_check(
    beam, *, moment, combination="", position=0.0, limit="0.60 Fy", lost=0.0, growth=1.0, when=""
):
    """Check the bending stress in the plate: it bends with the wood, and takes its share of the moment.

    Parameters
    ----------
    beam : Flitch
        The beam [-].
    moment : float
        Moment on wood and plate together; the part that stays is multiplied by the growth already [N*mm].
    combination : str
        Name of the load combination [-].
    position : float
        Where the moment peaks [mm].
    limit : str
        One of STRESS_LIMITS [-].
    lost : float
        Share of the plate's section modulus that a bolt hole takes, see `plate_hole_loss` [-].
    growth : float
        What the plate's part of the load that stays was multiplied by, see `creep_growth` [-].
    when : str
        Words for the name of the check, such as ``after years`` [-].

    Returns
    -------
    Check
        Stress in the plate against what is allowed [-].

    Raises
    ------
    BadInput
        When an input is not in its range.

    Examples
    --------
    >>> from structlib.ground.lumber import find_material
    >>> beam = Flitch(wood=find_material("Douglas Fir-Larch", "No.2"), ply_width=1.5 * inch,
    ...     depth=9.25 * inch,
    ...               plies=2, plate_thickness=0.5 * inch, plate_depth=9.25 * inch)
    >>> round(plate_check(beam, moment=12000 * lb * ft).share, 2)
    0.7
    """
    _check_beam(beam)
    check_amount("moment", moment, zero=True, hint="its size, for example 12000*lb*ft")
    check_one_number("share lost at a hole", lost, low=0.0, high=0.9, hint="for example 0.08")
    check_one_number("growth by creep", growth, low=1.0, high=3.0, hint="1 on the first day")
    allowed, clause, known = plate_stress_limit(beam, limit=limit)
    stress = own_stress(beam.parts[1], moment=moment, stiffness=beam.bending_stiffness) / (1 - lost)
    name = "bending, plate at a bolt hole" if lost else "bending, steel plate"
    return Check(
        name=f"{name}, {when}" if when else name,
        kind="bending",
        sentence="the edge of the plate is stretched and squeezed as it bends with the wood",
        asked=stress,
        given=allowed,
        share=stress / allowed,
        dimension="stress",
        position=position,
        where="where the moment peaks",
        combination=combination,
        clause=clause,
        formula=f"E_s (d_s / 2) M / (sum of E I) / (1 - lost) <= {limit}; g in M of what stays",
        substitute=(
            ("M", moment, "moment"),
            ("d_s", beam.plate_depth, "section length"),
            ("sum of E I", beam.bending_stiffness, "stiffness"),
            ("lost", lost, "ratio"),
            ("g", growth, "ratio"),
        ),
        verified=least_verified([known, beam.wood.verified] + (["recalled"] if lost or growth > 1 else [])),
    )


def creep_growth(beam, *, creep_factor):
    """Return how much more of a load that stays the plate carries once the wood has crept.

    Parameters
    ----------
    beam : Flitch
        The beam [-].
    creep_factor : float
        Creep factor of the wood: its E is divided by it for load that stays [-].

    Returns
    -------
    float
        The plate's share after years over its share on the first day [-].

    Raises
    ------
    BadInput
        When an input is not in its range.

    Notes
    -----
    NDS 2018 3.5.2 for the factor, recalled. Wood creeps and steel does not, so load moves to the plate.

    Examples
    --------
    >>> from structlib.ground.lumber import find_material
    >>> beam = Flitch(wood=find_material("Douglas Fir-Larch", "No.2"), ply_width=1.5 * inch,
    ...     depth=9.25 * inch,
    ...               plies=2, plate_thickness=0.5 * inch, plate_depth=9.25 * inch)
    >>> round(creep_growth(beam, creep_factor=1.5), 4)
    1.0904
    """
    _check_beam(beam)
    check_one_number("creep factor", creep_factor, low=1.0, high=3.0, hint="for example 1.5")
    wood, steel = (part.bending_stiffness for part in beam.parts)
    return (wood + steel) / (wood / creep_factor + steel)


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
    BadInput
        When an input is not in its range.
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
    _check_beam(beam)
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

    Raises
    ------
    BadInput
        When a number is not in its range.

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
    BadInput
        When an input is not in its range.
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
    _check_beam(beam)
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
        *(() if plate_bears else (_bolt_check("load out of the plate at an end", end, end_bolts * value, "force", found, used),)),
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
        conditions=_conditions(
            end, plate_bears, hole_loss(beam, edge_distance=edge, bolt_diameter=bolt_diameter)
        ),
        verified=least_verified([check.verified for check in checks]),
    )


def hole_loss(beam, *, edge_distance, bolt_diameter):
    """Return what one bolt hole takes off the bending strength of the wood where it stands.

    Parameters
    ----------
    beam : Flitch
        The beam [-].
    edge_distance : float
        From the middle of the hole to the nearer edge of the wood [mm].
    bolt_diameter : float
        Diameter of the bolt; the hole is 1/16 in larger [mm].

    Returns
    -------
    float
        Share of the section modulus that is lost [-].

    Raises
    ------
    BadInput
        When an input is not in its range, or the hole reaches an edge.

    Notes
    -----
    NDS 2018 3.1.2, net section, recalled. Holes stand one at a time, lines in turn.

    Examples
    --------
    >>> from structlib.ground.lumber import find_material
    >>> beam = Flitch(wood=find_material("Hem-Fir", "No.2"), ply_width=1.5 * inch, depth=9.25 * inch,
    ...               plies=2, plate_thickness=0.5 * inch, plate_depth=9 * inch)
    >>> round(hole_loss(beam, edge_distance=9.25 / 4 * inch, bolt_diameter=0.5 * inch), 3)
    0.079
    """
    _check_beam(beam)
    size = dict(width=beam.ply_width * beam.plies, depth=beam.depth)
    left = drilled_section_modulus(
        diameter=_hole_diameter(bolt_diameter), offset=abs(beam.depth / 2 - edge_distance), **size
    )
    return 1 - left / rectangle_section_modulus(**size)


def _hole_diameter(bolt_diameter):
    return bolt_diameter + KeyedNumbers("us_roof_tie_rules").number("bolt_hole_over")


def plate_hole_loss(beam, *, edge_distance, bolt_diameter):
    """Return what one bolt hole takes off the bending strength of the plate where it stands.

    Parameters
    ----------
    beam : Flitch
        The beam [-].
    edge_distance : float
        From the middle of the hole to the nearer edge of the wood [mm].
    bolt_diameter : float
        Diameter of the bolt; the hole is 1/16 in larger [mm].

    Returns
    -------
    float
        Share of the section modulus that is lost [-].

    Raises
    ------
    BadInput
        When an input is not in its range, or the hole reaches an edge.

    Notes
    -----
    The net section of the plate by itself. A drilled hole, so nothing more is taken off for a torn edge.

    Examples
    --------
    >>> from structlib.ground.lumber import find_material
    >>> beam = Flitch(wood=find_material("Hem-Fir", "No.2"), ply_width=1.5 * inch, depth=9.25 * inch,
    ...               plies=2, plate_thickness=0.5 * inch, plate_depth=9 * inch)
    >>> round(plate_hole_loss(beam, edge_distance=9.25 / 4 * inch, bolt_diameter=0.5 * inch), 3)
    0.084
    """
    _check_beam(beam)
    size = dict(width=beam.plate_thickness, depth=beam.plate_depth)
    left = drilled_section_modulus(
        diameter=_hole_diameter(bolt_diameter), offset=abs(beam.depth / 2 - edge_distance), **size
    )
    return 1 - left / rectangle_section_modulus(**size)


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
    BadInput
        When an input is not in its range.
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
    _check_beam(beam)
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
    BadInput
        When an input is not in its range.
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
    _check_beam(beam)
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


def plate_pieces(beam, *, length, pieces):
    """Cut a plate into like pieces that can be carried, and weigh each.

    Parameters
    ----------
    beam : Flitch
        The beam [-].
    length : float
        Length of the plate [mm].
    pieces : int
        Number of pieces, 1 to 6 [-].

    Returns
    -------
    tuple of PlatePiece
        The pieces from left to right [-].

    Raises
    ------
    BadInput
        When a number is not in its range.

    Notes
    -----
    Steel weighs 490 lb/ft3.

    Examples
    --------
    >>> from structlib.ground.lumber import find_material
    >>> beam = Flitch(wood=find_material("Hem-Fir", "No.2"), ply_width=1.5 * inch, depth=9.25 * inch,
    ...               plies=2, plate_thickness=0.5 * inch, plate_depth=9 * inch)
    >>> [round(piece.weight / lb) for piece in plate_pieces(beam, length=12 * ft, pieces=2)]
    [92, 92]
    """
    _check_beam(beam)
    check_one_number("length of the plate", length, low=2 * ft, high=40 * ft, hint="for example 12*ft")
    check_one_count("pieces", pieces, low=1, high=6, hint="for example 2")
    one = length / pieces
    return tuple(
        PlatePiece(start=number * one, end=(number + 1) * one, weight=beam.plate.weight * one)
        for number in range(int(pieces))
    )


def splice_note(pieces):
    """Say what a cut in the plate does to the beam.

    Parameters
    ----------
    pieces : int
        Number of pieces [-].

    Returns
    -------
    str
        One or two sentences [-].

    Raises
    ------
    BadInput
        When the number is not in its range.

    Examples
    --------
    >>> splice_note(1)
    'the plate runs from end to end in one piece'
    """
    check_one_count("pieces", pieces, low=1, high=6, hint="for example 2")
    if pieces == 1:
        return "the plate runs from end to end in one piece"
    return (
        "a butt joint passes no bending: at the cut the wood is alone; the pieces are welded or spliced to "
        "an engineer's drawing, or two thinner plates with cuts far apart are used"
    )


def wood_alone_share(beam, *, moment, allowed_stress):
    """Return how much of the wood's own bending strength a moment uses at a butt joint of the plate.

    Parameters
    ----------
    beam : Flitch
        The beam [-].
    moment : float
        Moment on the whole beam at the joint [N*mm].
    allowed_stress : float
        Allowable bending stress of the wood, with its factors [MPa].

    Returns
    -------
    float
        Share used by the wood alone [-].

    Raises
    ------
    BadInput
        When a number is not in its range.

    Examples
    --------
    >>> from structlib.ground.lumber import find_material
    >>> from structlib.ground.units import psi
    >>> beam = Flitch(wood=find_material("Hem-Fir", "No.2"), ply_width=1.5 * inch, depth=9.25 * inch,
    ...               plies=2, plate_thickness=0.5 * inch, plate_depth=9 * inch)
    >>> round(wood_alone_share(beam, moment=6000 * lb * ft, allowed_stress=935 * psi), 2)
    1.8
    """
    _check_beam(beam)
    check_amount("moment", moment, zero=True, hint="for example 6000*lb*ft")
    check_amount("allowed stress of the wood", allowed_stress, hint="for example 900*psi")
    wood = rectangle_section_modulus(width=beam.ply_width * beam.plies, depth=beam.depth)
    return moment / (wood * allowed_stress)


# ---- parts of the layout ----------------------------------------------------------------------------------


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
    return tuple(
        Hole(along=x, up=heights[number % lines], group=name) for number, (x, name) in enumerate(places)
    )


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
        "the plate is flush with, or a little short of, the edges of the wood, which shrinks and steel "
        "does not",
    )


def _check_beam(beam):
    if not isinstance(beam, Flitch):
        raise BadInput(f"a flitch beam is made by Flitch, got {type(beam).__name__}")
