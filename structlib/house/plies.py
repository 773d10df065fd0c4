"""Plies of one beam: whether they share a load from the side, and why one slender ply alone is doubtful."""

from dataclasses import dataclass

from structlib.ground.refusals import BadInput, OutsideRule
from structlib.ground.units import inch
from structlib.house.factored import factored_loads
from structlib.mechanics.beams import LineLoad
from structlib.mechanics.line_loads import greatest_line_load
from structlib.rules.members import Crossing, Fasteners, NotCovered, PlyJointMember, ask

NOT_CHOSEN = "plies loaded from the side share nothing before fasteners pass the load on: choose how they are joined"


@dataclass(frozen=True)
class PlyJoint:
    """Fasteners that somebody chose to pass a load from ply to ply, and their name."""

    name: str
    fasteners: Fasteners


#: What a page offers, by key.
PLY_JOINTS = {
    "10d": PlyJoint("10d common nails, 3 lines", Fasteners("nail", "10d common", 3)),
    "16d": PlyJoint("16d common nails, 3 lines", Fasteners("nail", "16d common", 3)),
    "bolts": PlyJoint("1/2 in bolts, 2 lines", Fasteners("bolt", 0.5 * inch, 2, staggered=True)),
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
    tuple of (str, object or None)
        Why the beam has no verdict, empty when it may have one; the rulebook's layout, None where nothing has to pass
        [-].

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
    joint = PlyJointMember(
        choice.material, choice.ply_width, choice.depth, choice.plies, job.ply_joint.fasteners, job.wet
    )
    try:
        combinations = rulebook.combinations({typed.load_type for typed in job.loads})
        return "", ask(
            rulebook, "joined_plies", joint, tuple(Crossing(one, _from_the_side(job, one)) for one in combinations)
        )
    except (BadInput, OutsideRule) as refusal:
        return f"{job.ply_joint.name}: {refusal}", None


def _from_the_side(job, combination):
    """The greatest load by length of one combination; the beam's own weight is in every ply already."""
    loads = factored_loads(job, combination, own_weight=0.0, keep=lambda load_type: True)
    ends = ((one.start, one.end, one.intensity, one.end_intensity) for one in loads)
    return greatest_line_load((start, end, low, low if high is None else high) for start, end, low, high in ends)


def doubt(choice, rulebook):
    """Tell why one slender ply alone is doubtful; empty for any other beam.

    Parameters
    ----------
    choice : structlib.house.beam.BeamChoice
        The beam [-].
    rulebook : structlib.rules.check.Rulebook
        The rules, which say when it has to be held [-].

    Returns
    -------
    str
        The reason [-].

    Examples
    --------
    >>> from structlib.house.beam import BeamChoice
    >>> from structlib.rules.choice import RULEBOOK
    >>> one, two = (BeamChoice(None, 38.1, 235.0, plies) for plies in (1, 2))
    >>> doubt(one, RULEBOOK)[:34], doubt(two, RULEBOOK)
    ('one ply alone, 6.2 times as deep a', '')
    """
    if choice.plies > 1:
        return ""
    slender = choice.depth / choice.ply_width
    try:
        held = ask(rulebook, "slender_ply", choice.ply_width, choice.depth)
    except NotCovered:
        held = "it is held sideways" if slender > 1 else ""
    if not held:
        return ""
    return f"one ply alone, {slender:.1f} times as deep as wide: it rolls over unless {held}, and no second ply helps at a knot"
