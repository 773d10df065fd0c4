"""Beams with steel in them in one opening: a flitch between wood plies, or a rolled shape."""

from structlib.ground.lumber import find_material
from structlib.ground.steel import SteelSection
from structlib.ground.units import ft, inch, plf
from structlib.house.beam import BeamJob, TypedLoad, check_job, demands_on
from structlib.house.inputs import check_record
from structlib.mechanics.beams import LineLoad
from structlib.rules.check import Seat, governing  # noqa: F401  the examples use it
from structlib.rules.members import Flitch, FlitchMember, Partly, SteelBeamMember, ask

#: Diameters of the bolts of a flitch beam that are tried, the thinnest first.
BOLTS = (0.5 * inch, 0.625 * inch, 0.75 * inch)

_FIR = ("Douglas Fir-Larch", "No.2")

FLITCH_FROM_THE_SIDE = (
    "A flitch beam loaded from one side: half of the wood gets its load through the "
    "plate's bolts. That is for an engineer; only what is asked is shown."
)


def example_flitch(plate_thickness=0.5 * inch):
    """Return the flitch beam of the lessons: two old 2x10 and a plate. It is invented.

    Parameters
    ----------
    plate_thickness : float
        Thickness of the plate [mm].

    Returns
    -------
    structlib.rules.members.Flitch
        The beam [-].

    Examples
    --------
    >>> round(example_flitch().steel_share, 2)
    0.74
    """
    return Flitch(
        wood=find_material(*_FIR, "2x10"),
        ply_width=1.5 * inch,
        depth=9.25 * inch,
        plies=2,
        plate_thickness=plate_thickness,
        plate_depth=9 * inch,
    )


def example_job(width=12 * ft, live=400 * plf, dead=150 * plf, **changes):
    """Return the opening of the lessons. It is invented.

    Parameters
    ----------
    width : float
        Clear width [mm].
    live : float
        Live load [N/mm].
    dead : float
        Dead load [N/mm].
    **changes : any
        More fields of the job, such as unbraced_length; the edge is held all along where that is not said [any].

    Returns
    -------
    structlib.house.beam.BeamJob
        The opening and its loads [-].

    Examples
    --------
    >>> round(example_job().span / ft, 2)
    12.25
    """
    fir = find_material(*_FIR)
    seat = Seat(3 * inch, "plate", fir.bearing, "plate of Douglas Fir-Larch", fir.verified)
    span = width + 3 * inch
    loads = (
        TypedLoad("live", LineLoad(0.0, span, live)),
        TypedLoad("dead", LineLoad(0.0, span, dead)),
    )
    return BeamJob(width, seat, seat, loads, **{"unbraced_length": 0.0, **changes})


def flitch_member(job, beam, *, plate_bears=False, bolt_diameter=BOLTS[0]):
    """Return a flitch beam in one opening as a rulebook is asked about it.

    Parameters
    ----------
    job : structlib.house.beam.BeamJob
        The opening and its loads [-].
    beam : structlib.rules.members.Flitch
        The beam [-].
    plate_bears : bool
        Whether the plate stands on a steel seat of its own, so that the wood carries its own share of the shear only
        [-].
    bolt_diameter : float
        Diameter of the bolts [mm].

    Returns
    -------
    structlib.rules.members.FlitchMember
        The member [-].

    Examples
    --------
    >>> flitch_member(example_job(), example_flitch()).plate_bears
    False
    """
    check_job(job)
    check_record("flitch beam", beam, Flitch, "Flitch(wood=..., plies=2, ...)")
    wet = job.wet or job.incised or job.treatment != "none"  # wood that swells beside a plate
    return FlitchMember(
        beam, job.left, job.right, bolt_diameter, plate_bears, job.unbraced, job.loaded_on, job.use, wet
    )


def check_flitch(job, beam, rulebook, **how):
    """Check a flitch beam in one opening, without its bolts: those are laid out so that they hold.

    Parameters
    ----------
    job : structlib.house.beam.BeamJob
        The opening and its loads [-].
    beam : structlib.rules.members.Flitch
        The beam [-].
    rulebook : structlib.rules.check.Rulebook
        The rules [-].
    **how : any
        ``plate_bears`` and ``bolt_diameter``, as in `flitch_member` [any].

    Returns
    -------
    tuple of Check
        Wood and plate at a bolt hole, sag, shear, seats, and shear at the end bolts unless the plate stands on its own
        seat; where the bolts are refused, no check of shear decides [-].

    Raises
    ------
    OutsideRule
        When the rulebook does not cover it.

    Examples
    --------
    >>> from structlib.rules.choice import RULEBOOK
    >>> found = check_flitch(example_job(), example_flitch(), RULEBOOK)
    >>> governing(found).name, len([check for check in found if check.kind == "bending"])
    ('shear at the end bolts', 2)
    """
    member = flitch_member(job, beam, **how)
    try:
        checks = rulebook.checks(member, demands_on(job, member, rulebook))
    except Partly as some:
        checks = some.checks
    return without_bolts(checks)


def lay_out_flitch(job, beam, rulebook, **how):
    """Lay out the bolts of a flitch beam for every load combination of one opening.

    Parameters
    ----------
    job : structlib.house.beam.BeamJob
        The opening and its loads [-].
    beam : structlib.rules.members.Flitch
        The beam [-].
    rulebook : structlib.rules.check.Rulebook
        The rules [-].
    **how : any
        ``plate_bears`` and ``bolt_diameter``, as in `flitch_member` [any].

    Returns
    -------
    object
        The rulebook's layout for the combination that asks for most bolts [-].

    Raises
    ------
    OutsideRule
        When the bolts do not fit, or a post or beam lands on it, which needs a group of its own.

    Examples
    --------
    >>> from structlib.rules.choice import RULEBOOK
    >>> lay_out_flitch(example_job(), example_flitch(), RULEBOOK).end_bolts
    3
    """
    member = flitch_member(job, beam, **how)
    return ask(rulebook, "plate_bolts", member, demands_on(job, member, rulebook))


def check_steel(job, section, rulebook):
    """Check a steel beam in one opening.

    Parameters
    ----------
    job : structlib.house.beam.BeamJob
        The opening and its loads; its unbraced length counts [-].
    section : structlib.ground.steel.SteelSection
        The steel beam [-].
    rulebook : structlib.rules.check.Rulebook
        The rules [-].

    Returns
    -------
    tuple of Check
        Bending, shear, seats of wood below, sag [-].

    Raises
    ------
    OutsideRule
        When the section is outside the rules.

    Examples
    --------
    >>> from structlib.ground.steel import steel_shape
    >>> from structlib.rules.choice import RULEBOOK
    >>> governing(check_steel(example_job(), steel_shape("W8x18"), RULEBOOK)).name
    'bearing, left seat, plate of Douglas Fir-Larch'
    """
    check_job(job)
    check_record("steel beam", section, SteelSection, "steel_shape('W8x18')")
    member = SteelBeamMember(section, job.left, job.right, job.unbraced, job.use)
    return rulebook.checks(member, demands_on(job, member, rulebook))


def without_bolts(checks):
    """Return the checks of a flitch beam without those of its bolts, which are laid out so that they hold.

    Parameters
    ----------
    checks : iterable of structlib.rules.check.Check
        The checks [-].

    Returns
    -------
    tuple of structlib.rules.check.Check
        The others [-].

    Examples
    --------
    >>> without_bolts(())
    ()
    """
    return tuple(one for one in checks if one.kind not in ("bolts", "distance"))
