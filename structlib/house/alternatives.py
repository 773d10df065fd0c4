"""The same opening in sawn lumber, LVL, flitch and steel, within the depth that each end leaves."""

from dataclasses import dataclass, replace
from types import SimpleNamespace
from typing import Any

from structlib.ground.records import measured
from structlib.ground.refusals import OutsideRule
from structlib.ground.showing import show
from structlib.ground.units import ft, inch  # noqa: F401  the examples use them
from structlib.house.beam import TypedLoad, check_job, demands_on
from structlib.house.inputs import check_list, check_one_number, check_record
from structlib.house.sizing import build_rack, size_beams
from structlib.mechanics.beams import LineLoad
from structlib.rules.check import BeamMember, governing
from structlib.rules.us.book import sag_divisors
from structlib.rules.us.flitch import Flitch, plate_check
from structlib.rules.us.steel_beams import steel_beam_checks
from structlib.rules.us.steel_sections import SteelSection


@dataclass(frozen=True, kw_only=True)
class Space:
    """Greatest depth that fits in the middle and at each end, and greatest width.

    Parameters
    ----------
    middle : float
        Greatest depth between the seats [mm].
    left : float
        Greatest depth over the left seat; as in the middle when None [mm].
    right : float
        Greatest depth over the right seat; as in the middle when None [mm].
    width : float
        Greatest width; any when None [mm].

    Raises
    ------
    BadInput
        When a size makes no sense.

    Examples
    --------
    >>> round(Space(middle=11.25 * inch, right=7.25 * inch).depth / inch, 2)
    7.25
    """

    middle: float
    left: float | None = None
    right: float | None = None
    width: float | None = None

    def __post_init__(self):
        for name in ("middle", "left", "right", "width"):
            value = getattr(self, name)
            if value is not None or name == "middle":
                check_one_number(
                    f"space, {name}",
                    value,
                    low=1 * inch,
                    high=48 * inch,
                    shown=lambda size: show(size, "section length"),
                    hint="for example 11.25*inch",
                )

    @property
    def depth(self):
        """Greatest depth of a beam that is not notched [mm]."""
        return min(size for size in (self.middle, self.left, self.right) if size is not None)


@dataclass(frozen=True, kw_only=True)
class Alternative:
    """One way to span an opening: what it is, how much of it is used, what governs, and its weight.

    Parameters
    ----------
    family : str
        ``sawn``, ``LVL``, ``flitch`` or ``steel`` [-].
    name : str
        What to ask for [-].
    depth : float
        Depth [mm].
    width : float
        Width [mm].
    share : float
        Greatest share used, among the checks that decide [-].
    governs : str
        The check that governs [-].
    weight : float
        Weight over the whole length [N].
    piece_weight : float
        Weight of the heaviest piece that is carried in [N].
    verified : str
        How the numbers are known [-].
    beam : object
        The rack's choice, the flitch beam or the steel section itself [-].

    Examples
    --------
    >>> Alternative(family="steel", name="W8x18", depth=206.8, width=133.4, share=0.7, governs="sag",
    ...     weight=900.0,
    ...             piece_weight=900.0, verified="recalled", beam=None).carries
    True
    """

    family: str = measured("text", "kind")
    name: str = measured("text", "beam")
    depth: float = measured("section length", "depth")
    width: float = measured("section length", "width")
    share: float = measured("ratio", "share used")
    governs: str = measured("text", "what governs")
    weight: float = measured("force", "weight")
    piece_weight: float = measured("force", "heaviest piece")
    verified: str = measured("text", "how it is known")
    beam: Any = None

    @property
    def carries(self):
        """Whether no check that decides is over [-]."""
        return self.share <= 1


def check_flitch(job, beam, rulebook, *, limit="0.60 Fy", plate_bears=False):
    """Check a flitch beam in one opening: wood by the rulebook, plate by its stress, sag of both together.

    Parameters
    ----------
    job : structlib.house.beam.BeamJob
        The opening and its loads [-].
    beam : structlib.rules.us.flitch.Flitch
        The beam [-].
    rulebook : structlib.rules.check.Rulebook
        The rules for the wood [-].
    limit : str
        Allowable stress of the plate: ``0.60 Fy``, ``0.66 Fy`` or ``F11`` [-].
    plate_bears : bool
        Whether the plate stands on a steel seat, so that the wood carries its own share of the shear only
        [-].

    Returns
    -------
    tuple of Check
        Bending and sag with each part's share of the load; shear and seats with the whole of it unless the
        plate stands on its own seat [-].

    Raises
    ------
    BadInput
        When the job or the beam makes no sense.
    OutsideRule
        When the wood stays wet, or the rulebook does not cover it.

    Notes
    -----
    Wood and plate have the same curved shape, so the wood under its share of the load sags as both do under
    all.

    Examples
    --------
    >>> from structlib.ground.lumber import find_material
    >>> from structlib.ground.units import plf
    >>> from structlib.house.beam import BeamJob
    >>> from structlib.rules.check import Seat
    >>> from structlib.rules.us.book import RULEBOOK
    >>> job = BeamJob(12 * ft, Seat(3 * inch), Seat(3 * inch), (
    ...     TypedLoad("live", LineLoad(0.0, 147 * inch, 400 * plf)),))
    >>> beam = Flitch(wood=find_material("Douglas Fir-Larch", "No.2"), ply_width=1.5 * inch,
    ...     depth=9.25 * inch,
    ...               plies=2, plate_thickness=0.5 * inch, plate_depth=9 * inch)
    >>> from structlib.rules.check import governing
    >>> governing(check_flitch(job, beam, RULEBOOK)).name
    'shear, left end'
    """
    check_job(job)
    check_record("flitch beam", beam, Flitch, "Flitch(wood=..., plies=2, ...)")
    if job.wet:
        raise OutsideRule(
            "a flitch beam that stays wet is not in this library: wood swells, and the plate rusts"
        )
    plate = TypedLoad("dead", LineLoad(0.0, job.span, beam.plate.weight))
    whole = replace(job, loads=(*job.loads, plate))
    together, demands = _wood_checks(job, whole, beam, rulebook, 1.0)
    apart, _ = _wood_checks(job, whole, beam, rulebook, 1 - beam.steel_share)
    with_share = ("bending", "sag")
    taken = [check for check in apart if plate_bears or check.kind in with_share]
    if not plate_bears:
        taken += [check for check in together if check.kind not in with_share]
    worst = max(demands, key=lambda one: abs(one.solution.extremes.moment.value))
    peak = worst.solution.extremes.moment
    steel = plate_check(
        beam,
        moment=abs(peak.value),
        combination=worst.combination.name,
        position=peak.position,
        limit=limit,
    )
    return tuple(taken) + (steel,)


def check_steel(job, section, rulebook):
    """Check a steel beam in one opening.

    Parameters
    ----------
    job : structlib.house.beam.BeamJob
        The opening and its loads; its unbraced length counts [-].
    section : structlib.rules.us.steel_beams.SteelSection
        The steel beam [-].
    rulebook : structlib.rules.check.Rulebook
        The rules that combine the loads [-].

    Returns
    -------
    tuple of Check
        Bending, shear, seats of wood below, sag [-].

    Raises
    ------
    BadInput
        When the job or the beam makes no sense.
    OutsideRule
        When the section is outside the rules.

    Examples
    --------
    >>> from structlib.ground.units import plf
    >>> from structlib.house.beam import BeamJob
    >>> from structlib.rules.check import Seat, governing
    >>> from structlib.rules.us.book import RULEBOOK
    >>> from structlib.rules.us.steel_sections import steel_shape
    >>> job = BeamJob(12 * ft, Seat(3 * inch), Seat(3 * inch), (
    ...     TypedLoad("live", LineLoad(0.0, 147 * inch, 800 * plf)),))
    >>> governing(check_steel(job, steel_shape("W8x18"), RULEBOOK)).name
    'sag under live load'
    """
    check_job(job)
    check_record("steel beam", section, SteelSection, "steel_shape('W8x18')")
    member = SimpleNamespace(
        weight_per_length=section.weight,
        bending_stiffness=section.bending_stiffness,
        material=None,
        wet=False,
    )
    live, total, _ = sag_divisors(job.use)
    return steel_beam_checks(
        section,
        demands_on(job, member, _SteelUnder(rulebook)),
        unbraced_length=job.unbraced_length,
        left=job.left,
        right=job.right,
        divisors=(live, total),
    )


def alternatives(job, *, space, sawn=(), lvl=(), flitches=(), steel=(), rulebook, plies=(1, 2, 3, 4)):
    """Span the same opening in every family that is offered, within the space there is.

    Parameters
    ----------
    job : structlib.house.beam.BeamJob
        The opening and its loads [-].
    space : Space
        Greatest depths and width [-].
    sawn : iterable of tuple
        (material, ply width, depth) of sawn pieces that can be bought [-].
    lvl : iterable of tuple
        The same of LVL [-].
    flitches : iterable of Flitch
        Flitch beams to try [-].
    steel : iterable of SteelSection
        Steel beams to try [-].
    rulebook : structlib.rules.check.Rulebook
        The rules [-].
    plies : iterable of int
        Numbers of plies to try of sawn and LVL [-].

    Returns
    -------
    tuple of Alternative
        One for each family that has anything that fits: the lightest that carries, else the one least over
        [-].

    Raises
    ------
    BadInput
        When an input makes no sense.

    Notes
    -----
    Nothing is notched: a beam is not deeper than the shallowest place. Sections outside a rule are left out.
    The bolts of a flitch beam are laid out apart, see ``rules.us.flitch.flitch_bolts``.

    Examples
    --------
    >>> from structlib.ground.units import plf
    >>> from structlib.house.beam import BeamJob
    >>> from structlib.rules.check import Seat
    >>> from structlib.rules.us.book import RULEBOOK
    >>> from structlib.rules.us.steel_sections import steel_shape
    >>> job = BeamJob(12 * ft, Seat(3 * inch), Seat(3 * inch), (
    ...     TypedLoad("live", LineLoad(0.0, 147 * inch, 400 * plf)),))
    >>> found = alternatives(job, space=Space(middle=9.25 * inch, right=8 * inch), rulebook=RULEBOOK,
    ...                      steel=[steel_shape("W8x13"), steel_shape("W10x12"), steel_shape("W6x16")])
    >>> [(one.name, one.governs) for one in found]
    [('W8x13', 'sag under live load')]
    """
    check_job(job)
    check_record("space", space, Space, "Space(middle=11.25*inch)")
    found = []
    for family, stock in (("sawn", sawn), ("LVL", lvl)):
        stock = check_list(family, stock, "[(wood, 1.5*inch, 9.25*inch)]")
        if stock:
            found.append(_best(_wood_family(job, family, stock, space, rulebook, plies)))
    found.append(
        _best(_flitch_family(job, check_list("flitches", flitches, "[Flitch(...)]"), space, rulebook))
    )
    found.append(
        _best(_steel_family(job, check_list("steel", steel, "[steel_shape('W8x18')]"), space, rulebook))
    )
    return tuple(one for one in found if one is not None)


class _SteelUnder:
    """The rulebook's combinations for a beam of steel, whose modulus no moisture lowers."""

    def __init__(self, rulebook):
        self.combinations = rulebook.combinations

    def modulus_factor(self, material, *, wet):
        """One: steel has the same stiffness wet or dry."""
        return 1.0


# ---- one family at a time ---------------------------------------------------------------------------------


def _length(job):
    return job.clear_width + job.left.length + job.right.length


def _wood_family(job, family, stock, space, rulebook, plies):
    fitting = [
        piece
        for piece in stock
        if piece[2] <= space.depth * (1 + 1e-9) and piece[1] * min(plies) <= (space.width or 1e9) * (1 + 1e-9)
    ]
    if not fitting:
        return
    rack = build_rack(fitting, plies=plies, greatest_depth=space.depth, greatest_width=space.width)
    sizing = size_beams(job, rack, rulebook)
    for row in range(len(rack.depth)):
        choice = rack.choice(row)
        weight = float(rack.weight[row]) * _length(job)
        yield Alternative(
            family=family,
            name=f"{choice.plies} x {show(choice.ply_width, 'section length')} x "
            f"{show(choice.depth, 'section length')} {choice.material.name}",
            depth=choice.depth,
            width=float(rack.width[row]),
            share=float(sizing.share[row]),
            governs=sizing.names[int(sizing.governs[row])],
            weight=weight,
            piece_weight=weight / choice.plies,
            verified=choice.material.verified,
            beam=choice,
        )


def _flitch_family(job, beams, space, rulebook):
    for beam in beams:
        if beam.depth > space.depth * (1 + 1e-9) or beam.width > (space.width or 1e9) * (1 + 1e-9):
            continue
        try:
            checks = check_flitch(job, beam, rulebook)
        except OutsideRule:
            continue
        worst, length = governing(checks), _length(job)
        wood = beam.wood.weight_density * beam.ply_width * beam.depth * length
        yield Alternative(
            family="flitch",
            name=f"{beam.plies} x {_inches(beam.ply_width)} x {_inches(beam.depth)} {beam.wood.name}, "
            f"{beam.plate.name}",
            depth=beam.depth,
            width=beam.width,
            share=worst.share,
            governs=worst.name,
            weight=beam.weight * length,
            piece_weight=max(wood, beam.plate.weight * length),
            verified=worst.verified,
            beam=beam,
        )


def _steel_family(job, sections, space, rulebook):
    for section in sections:
        if section.depth > space.depth * (1 + 1e-9) or section.flange_width > (space.width or 1e9) * (
            1 + 1e-9
        ):
            continue
        try:
            checks = check_steel(job, section, rulebook)
        except OutsideRule:
            continue
        worst, weight = governing(checks), section.weight * _length(job)
        yield Alternative(
            family="steel",
            name=section.name,
            depth=section.depth,
            width=section.flange_width,
            share=worst.share,
            governs=worst.name,
            weight=weight,
            piece_weight=weight,
            verified=worst.verified,
            beam=section,
        )


def _inches(size):
    return show(size, "section length")


def _best(candidates):
    listed = list(candidates)
    carrying = [one for one in listed if one.carries]
    if carrying:
        return min(carrying, key=lambda one: (one.weight, one.depth))
    return min(listed, key=lambda one: one.share, default=None)


def _wood_checks(job, whole, beam, rulebook, part):
    """The wood under a part of every load, its own weight too; the plies count as no repeated members."""
    wood = replace(beam.wood, weight_density=beam.wood.weight_density * part)
    loads = tuple(TypedLoad(typed.load_type, _scaled(typed.load, part)) for typed in whole.loads)
    member = BeamMember(
        material=wood,
        ply_width=beam.ply_width,
        depth=beam.depth,
        plies=beam.plies,
        left=job.left,
        right=job.right,
        unbraced_length=job.unbraced_length,
        loaded_on=job.loaded_on,
        repetitive=False,
    )
    demands = demands_on(replace(whole, loads=loads), member, rulebook)
    return rulebook.beam_checks(member, demands, job.use), demands


def _scaled(load, part):
    if isinstance(load, LineLoad):
        end = load.intensity if load.end_intensity is None else load.end_intensity
        return replace(load, intensity=load.intensity * part, end_intensity=end * part)
    return replace(load, force=load.force * part)
