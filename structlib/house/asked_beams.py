"""A beam of wood, a flitch or steel as a rulebook is asked about it, and what stands beside its checks."""

from structlib.house.plan import FlitchBeam, SteelBeam
from structlib.house.with_steel import FLITCH_FROM_THE_SIDE
from structlib.rules.check import BeamMember
from structlib.rules.members import FlitchMember, SteelBeamMember


def beam_member(made_of, piece, job):
    """Return one single span of a beam as a rulebook is asked about it.

    Parameters
    ----------
    made_of : structlib.house.plan.Wood, FlitchBeam or SteelBeam
        What it is made of, in the words of the house [-].
    piece : object
        The piece that is meant, as `structlib.house.pieces.piece_of` answers [-].
    job : structlib.house.beam.BeamJob
        The span, its seats, and how its edge is held [-].

    Returns
    -------
    structlib.rules.check.BeamMember, structlib.rules.members.FlitchMember or SteelBeamMember
        The member [-].

    Examples
    --------
    >>> from structlib.house.with_steel import example_job
    >>> from structlib.house.pieces import piece_of
    >>> steel = SteelBeam(shape="W8x18", braced=1200.0)
    >>> beam_member(steel, piece_of(steel), example_job()).unbraced_length
    1200.0
    """
    if isinstance(made_of, SteelBeam):
        return SteelBeamMember(piece, job.left, job.right, made_of.braced, job.use)
    if isinstance(made_of, FlitchBeam):
        return FlitchMember(
            piece, job.left, job.right, made_of.bolts, made_of.plate_bears, job.unbraced, job.loaded_on, job.use
        )
    return BeamMember(
        piece.material, piece.ply_width, piece.depth, piece.plies, job.left, job.right, unbraced_length=job.unbraced,
        loaded_on=job.loaded_on, wet=made_of.wet, use=job.use,
    )  # fmt: skip


def told_of(part):
    """Return what a beam of steel, or with steel in it, always has beside its checks.

    Parameters
    ----------
    part : structlib.house.plan.Beam or structlib.house.plan.Opening
        The beam [-].

    Returns
    -------
    tuple of (list of str, list of str)
        Gates, and notes on what is not judged [-].

    Examples
    --------
    >>> from structlib.house.plan import Beam
    >>> beam = Beam(name="b", on=("a",), at=0.0, start=0.0, end=900.0, steel=SteelBeam(shape="W8x18", braced=0.0))
    >>> [len(told) for told in told_of(beam)]
    [0, 1]
    """
    if isinstance(part.chosen, FlitchBeam) and part.position == "flush":
        return [FLITCH_FROM_THE_SIDE], []
    if isinstance(part.chosen, SteelBeam):
        return [], [
            f"the web of {part.name} over its seats and under a post, and which steel an old beam is of, are for an "
            "engineer; it is judged as new steel"
        ]
    return [], []
