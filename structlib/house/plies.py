"""Plies of one beam: whether they share a load from the side, and why one slender ply alone is doubtful."""

from dataclasses import dataclass
from typing import Any

from structlib.ground.refusals import BadInput, OutsideRule
from structlib.ground.units import inch
from structlib.mechanics.beams import LineLoad
from structlib.rules.us.dowels import bolt, nail
from structlib.rules.us.factors import scalar, verified
from structlib.rules.us.fastening import ply_fastening

NOT_CHOSEN = (
    "plies loaded from the side share nothing before fasteners pass the load on: choose how they are joined"
)


@dataclass(frozen=True)
class PlyJoint:
    """Fasteners that somebody chose to pass a load from ply to ply: name, fastener, lines along the beam."""

    name: str
    fastener: Any
    rows: int
    staggered: bool = False


#: What a page offers, by key.
PLY_JOINTS = {
    "10d": PlyJoint("10d common nails, 3 lines", nail("10d common"), 3),
    "16d": PlyJoint("16d common nails, 3 lines", nail("16d common"), 3),
    "bolts": PlyJoint("1/2 in bolts, 2 lines", bolt(0.5 * inch), 2, staggered=True),
}


def ply_layout(job, choice, rulebook):
    """Lay out the fasteners between the plies of a beam loaded from its side, for the worst combination.

    Parameters
    ----------
    job : structlib.house.beam.BeamJob
        The opening, its loads, and how the plies are joined; all load counts as hung on one side [-].
    choice : structlib.house.beam.BeamChoice
        The beam [-].
    rulebook : structlib.rules.check.Rulebook
        The rules that combine the loads [-].

    Returns
    -------
    tuple of (str, structlib.rules.us.fastening.PlyFastening or None)
        Why the beam has no verdict, empty when it may have one; the layout, None where nothing has to pass [-].

    Examples
    --------
    >>> from structlib.ground.lumber import find_material
    >>> from structlib.ground.units import ft, plf
    >>> from structlib.house.beam import BeamChoice, BeamJob, TypedLoad
    >>> from structlib.rules.check import Seat
    >>> from structlib.rules.choice import RULEBOOK
    >>> job = BeamJob(11 * ft, Seat(3 * inch), Seat(3 * inch), (
    ...     TypedLoad("live", LineLoad(0.0, 135 * inch, 600 * plf)),), loaded_on="side",
    ...     ply_joint=PLY_JOINTS["10d"])
    >>> beam = BeamChoice(find_material("Douglas Fir-Larch", "No.2"), 1.5 * inch, 11.25 * inch, 3)
    >>> round(ply_layout(job, beam, RULEBOOK)[1].spacing / inch)
    10
    """
    if job.seat_width is not None and choice.plies * choice.ply_width > job.seat_width + 1e-6:
        return "the beam is wider than what it sits on, and how its outer plies come down is for an engineer", None
    if job.loaded_on != "side" or choice.plies < 2 or not job.loads:
        return "", None
    if job.ply_joint is None:
        return NOT_CHOSEN, None
    if any(not isinstance(typed.load, LineLoad) for typed in job.loads):
        return "a post or beam on plies loaded from the side needs fasteners of its own there", None
    if choice.material.specific_gravity is None:
        return "how the plies of this wood are fastened is in its maker's report", None
    try:
        combinations = rulebook.combinations({typed.load_type for typed in job.loads})
        found = [_fastened(job, choice, one) for one in combinations]
    except (BadInput, OutsideRule) as refusal:
        return f"{job.ply_joint.name}: {refusal}", None
    return "", min((one for one in found if one), key=lambda one: one.spacing_needed, default=None)


def _fastened(job, choice, combination):
    from structlib.house.beam import factored_loads

    loads = factored_loads(job, combination, own_weight=0.0, keep=lambda load_type: True)
    most = greatest_line_load(
        (one.start, one.end, one.intensity, one.intensity if one.end_intensity is None else one.end_intensity)
        for one in loads
    )
    if not most:
        return None
    return ply_fastening(
        plies=int(choice.plies),
        ply_width=choice.ply_width,
        depth=choice.depth,
        side_load=most,
        specific_gravity=choice.material.specific_gravity,
        fastener=job.ply_joint.fastener,
        rows=job.ply_joint.rows,
        staggered=job.ply_joint.staggered,
        time_factor=combination.time_factor,
        moisture="wet in service" if job.wet else "dry",
        combination=combination.name,
    )


def doubt(choice):
    """Tell why one slender ply alone is doubtful; empty for any other beam.

    Parameters
    ----------
    choice : structlib.house.beam.BeamChoice
        The beam [-].

    Returns
    -------
    str
        The reason [-].

    Notes
    -----
    NDS 2018 4.4.1.2: over twice as deep as wide the ends are held, over four times the edge in compression too.

    Examples
    --------
    >>> from structlib.house.beam import BeamChoice
    >>> doubt(BeamChoice(None, 38.1, 235.0, 1))[:34], doubt(BeamChoice(None, 38.1, 235.0, 2))
    ('one ply alone, 6.2 times as deep a', '')
    """
    slender = choice.depth / choice.ply_width
    if choice.plies > 1 or slender <= scalar("depth_to_breadth_2"):
        return ""
    held = "ends and top edge are" if slender > scalar("depth_to_breadth_4") else "ends are"
    known = verified("depth_to_breadth_4")
    return (
        f"one ply alone, {slender:.1f} times as deep as wide: it rolls over unless its {held} held "
        f"(NDS 4.4.1.2, {known}), and no second ply helps at a knot"
    )


def greatest_line_load(loads):
    """Return the greatest sum of line loads anywhere on a beam.

    Parameters
    ----------
    loads : iterable of tuple
        (start, end, intensity, end intensity) of each load [mm, mm, N/mm, N/mm].

    Returns
    -------
    float
        The greatest sum; between ends of loads it is straight, so the ends are enough [N/mm].

    Examples
    --------
    >>> greatest_line_load([(0.0, 1000.0, 2.0, 2.0), (500.0, 1000.0, 0.0, 3.0)])
    5.0
    """
    loads, greatest = tuple(loads), 0.0
    places = sorted({place for start, end, _, _ in loads for place in (start, end)})
    for left, right in zip(places, places[1:]):
        over = [one for one in loads if one[0] <= left and one[1] >= right]
        for place in (left, right):
            total = sum(
                low + (high - low) * (place - start) / (end - start) for start, end, low, high in over
            )
            greatest = max(greatest, total)
    return greatest
