"""Flitch beams: a steel plate between wood plies, its share of the load, its stress, its holes and its pieces.

Wood and plate sag alike, so each takes load by its E I. The bolts are in `structlib.rules.us.flitch_bolts`.
"""

from dataclasses import dataclass

from structlib.ground.cut_sections import drilled_section_modulus
from structlib.ground.records import measured
from structlib.ground.refusals import BadInput, check_choice
from structlib.ground.sections import rectangle_section_modulus
from structlib.ground.steel import steel_fact_known
from structlib.ground.units import ft, inch, lb  # noqa: F401  the examples use them
from structlib.mechanics.composite import own_stress
from structlib.rules.check import Check, least_verified
from structlib.rules.keyed import KeyedNumbers
from structlib.rules.members.plies import Flitch
from structlib.rules.us.inputs import check_amount
from structlib.rules.us.one_number import check_one_count, check_one_number
from structlib.rules.us.steel_beams import steel_moment
from structlib.rules.us.steel_sections import steel_factor, steel_known

STRESS_LIMITS = ("0.60 Fy", "0.66 Fy", "F11")


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
    refuse_no_flitch(beam)
    check_choice("stress limit", limit, STRESS_LIMITS)
    if limit == "F11":
        found = steel_moment(beam.plate, unbraced_length=0.0)
        return found.allowed / beam.plate.section_modulus, found.clause, found.verified
    key = "stress_share_060" if limit == "0.60 Fy" else "stress_share_066"
    clause = "AISC 1989 ASD F1.3" if limit == "0.60 Fy" else "AISC 1989 ASD F1.1"
    return (
        steel_factor(key) * beam.plate.yield_strength,
        clause,
        least_verified([steel_known(key), steel_fact_known("yield_A36")]),
    )


def steel_plate_check(beam, *, moment, combination="", position=0.0, limit="0.60 Fy", lost=0.0, growth=1.0, when=""):
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

    Examples
    --------
    >>> from structlib.ground.lumber import find_material
    >>> beam = Flitch(wood=find_material("Douglas Fir-Larch", "No.2"), ply_width=1.5 * inch,
    ...     depth=9.25 * inch,
    ...               plies=2, plate_thickness=0.5 * inch, plate_depth=9.25 * inch)
    >>> round(steel_plate_check(beam, moment=12000 * lb * ft).share, 2)
    0.7
    """
    refuse_no_flitch(beam)
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
    refuse_no_flitch(beam)
    check_one_number("creep factor", creep_factor, low=1.0, high=3.0, hint="for example 1.5")
    wood, steel = (part.bending_stiffness for part in beam.parts)
    return (wood + steel) / (wood / creep_factor + steel)


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
    refuse_no_flitch(beam)
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
    refuse_no_flitch(beam)
    size = dict(width=beam.plate_thickness, depth=beam.plate_depth)
    left = drilled_section_modulus(
        diameter=_hole_diameter(bolt_diameter), offset=abs(beam.depth / 2 - edge_distance), **size
    )
    return 1 - left / rectangle_section_modulus(**size)


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
    refuse_no_flitch(beam)
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


def refuse_no_flitch(beam):
    """Refuse anything but a flitch beam.

    Parameters
    ----------
    beam : Flitch
        What `Flitch` made [-].

    Examples
    --------
    >>> refuse_no_flitch("2x10")
    Traceback (most recent call last):
    ...
    structlib.ground.refusals.BadInput: a flitch beam is made by Flitch, got str
    """
    if not isinstance(beam, Flitch):
        raise BadInput(f"a flitch beam is made by Flitch, got {type(beam).__name__}")
