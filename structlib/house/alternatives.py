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
from structlib.house.plies import greatest_line_load
from structlib.house.sizing import build_rack, size_beams
from structlib.mechanics.beams import LineLoad
from structlib.rules.check import BeamMember, Check, governing, least_verified
from structlib.rules.us.book import sag_divisors
from structlib.rules.us.deflection import creep_factor
from structlib.rules.us.flitch import (
    Flitch,
    creep_growth,
    end_bolt_shear,
    flitch_bolts,
    hole_line,
    hole_loss,
    plate_check,
    plate_hole_loss,
)
from structlib.rules.us.steel_beams import steel_beam_checks
from structlib.rules.us.steel_sections import SteelSection

#: Diameters of the bolts of a flitch beam that are tried, the thinnest first.
BOLTS = (0.5 * inch, 0.625 * inch, 0.75 * inch)

FLITCH_FROM_THE_SIDE = (
    "A flitch beam loaded from one side: half of the wood gets its load through the "
    "plate's bolts. That is for an engineer; only what is asked is shown."
)


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
    plate_bears : bool
        Whether the plate of a flitch beam stands on a steel seat of its own [-].
    bolt_diameter : float
        Diameter of the bolts of a flitch beam [mm].
    withheld : str
        Why it has no verdict though no share is over; empty when nothing is missing [-].

    Examples
    --------
    >>> Alternative(family="steel", name="W8x18", depth=206.8, width=133.4, share=0.7, governs="sag",
    ...     weight=900.0,
    ...             piece_weight=900.0, verified="recalled", beam=None).below_full
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
    plate_bears: bool = False
    bolt_diameter: float = 0.0
    withheld: str = ""

    @property
    def below_full(self):
        """Whether every check that decides is below 100 %, and nothing is missing [-]."""
        return self.share <= 1 and not self.withheld


def check_flitch(job, beam, rulebook, *, limit="0.60 Fy", plate_bears=False, bolt_diameter=BOLTS[0]):
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
    bolt_diameter : float
        Diameter of the bolts, whose holes count in bending [mm].

    Returns
    -------
    tuple of Check
        Bending at a bolt hole and sag with each part's share of the load; shear and seats with the whole of
        it, and shear at the end bolts, unless the plate stands on its own seat [-].

    Raises
    ------
    BadInput
        When the job or the beam makes no sense.
    OutsideRule
        When the wood stays wet, the rulebook does not cover it, or no line of such bolts fits.

    Notes
    -----
    Wood and plate have the same curved shape, so the wood under its share of the load sags as both do under
    all. A hole counts where the moment peaks. The plate is checked on the first day and after years, when
    the wood has crept under the load that stays and the plate has more of it; the worse of both is named.
    Where the bolts at the ends are outside their rule, no verdict on shear stands. Plies of LVL sag by shear
    as if no plate helped them there.

    Examples
    --------
    >>> from structlib.ground.lumber import find_material
    >>> from structlib.ground.units import plf
    >>> from structlib.house.beam import BeamJob
    >>> from structlib.rules.check import Seat
    >>> from structlib.rules.choice import RULEBOOK
    >>> job = BeamJob(12 * ft, Seat(3 * inch), Seat(3 * inch), (
    ...     TypedLoad("live", LineLoad(0.0, 147 * inch, 400 * plf)),))
    >>> beam = Flitch(wood=find_material("Douglas Fir-Larch", "No.2"), ply_width=1.5 * inch,
    ...     depth=9.25 * inch,
    ...               plies=2, plate_thickness=0.5 * inch, plate_depth=9 * inch)
    >>> from structlib.rules.check import governing
    >>> governing(check_flitch(job, beam, RULEBOOK)).name
    'shear at the end bolts'
    >>> [check.name for check in check_flitch(job, beam, RULEBOOK) if check.kind == "bending"]
    ['bending, wood at a bolt hole', 'bending, plate at a bolt hole, after years']
    """
    _check_flitch_job(job, beam)
    whole = _with_plate(job, beam)
    together, demands = _wood_checks(job, whole, beam, rulebook, 1.0)
    apart, _ = _wood_checks(job, whole, beam, rulebook, 1 - beam.steel_share)
    with_share = ("bending", "sag")
    hole = dict(edge_distance=hole_line(beam, bolt_diameter=bolt_diameter), bolt_diameter=bolt_diameter)
    lost = hole_loss(beam, **hole)
    taken = [
        _at_a_hole(check, lost) if check.kind == "bending" else check
        for check in apart
        if plate_bears or check.kind in with_share
    ]
    if not plate_bears:
        left = [check for check in together if check.kind not in with_share]
        taken += _with_end_bolts(job, beam, left, demands, bolt_diameter)
    return (*taken, _plate_check(whole, beam, rulebook, demands, limit, plate_hole_loss(beam, **hole)))


def lay_out_flitch(job, beam, rulebook, *, bolt_diameter=BOLTS[0], plate_bears=False):
    """Lay out the bolts of a flitch beam for every load combination of one opening.

    Parameters
    ----------
    job : structlib.house.beam.BeamJob
        The opening and its loads [-].
    beam : structlib.rules.us.flitch.Flitch
        The beam [-].
    rulebook : structlib.rules.check.Rulebook
        The rules that combine the loads [-].
    bolt_diameter : float
        Diameter of the bolts [mm].
    plate_bears : bool
        Whether the plate stands on a steel seat of its own [-].

    Returns
    -------
    structlib.rules.us.flitch.FlitchBolts
        The layout of the combination that asks for most bolts [-].

    Raises
    ------
    BadInput
        When the job or the beam makes no sense.
    OutsideRule
        When the bolts do not fit, or a post or beam lands on it, which needs a group of its own.

    Examples
    --------
    >>> from structlib.ground.lumber import find_material
    >>> from structlib.ground.units import plf
    >>> from structlib.house.beam import BeamJob
    >>> from structlib.rules.check import Seat
    >>> from structlib.rules.choice import RULEBOOK
    >>> job = BeamJob(12 * ft, Seat(3 * inch), Seat(3 * inch), (
    ...     TypedLoad("live", LineLoad(0.0, 147 * inch, 400 * plf)),))
    >>> beam = Flitch(wood=find_material("Douglas Fir-Larch", "No.2"), ply_width=1.5 * inch,
    ...     depth=9.25 * inch,
    ...               plies=2, plate_thickness=0.5 * inch, plate_depth=9 * inch)
    >>> lay_out_flitch(job, beam, RULEBOOK).end_bolts
    3
    """
    _check_flitch_job(job, beam)
    _, demands = _wood_checks(job, _with_plate(job, beam), beam, rulebook, 1.0)
    return _layout(job, beam, demands, bolt_diameter, plate_bears)


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
    >>> from structlib.rules.choice import RULEBOOK
    >>> from structlib.rules.us.steel_sections import steel_shape
    >>> job = BeamJob(12 * ft, Seat(3 * inch, "post"), Seat(3 * inch, "post"), (
    ...     TypedLoad("live", LineLoad(0.0, 147 * inch, 800 * plf)),))
    >>> governing(check_steel(job, steel_shape("W8x18"), RULEBOOK)).name
    'sag under live load'
    """
    check_job(job)
    check_record("steel beam", section, SteelSection, "steel_shape('W8x18')")
    member = SimpleNamespace(
        weight_per_length=section.weight,
        bending_stiffness=section.bending_stiffness,
        shear_stiffness=None,
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
        One for each family that has anything that fits: the lightest below 100 % in the checks listed, else
        the one least over; none at all while the job has a gate [-].

    Raises
    ------
    BadInput
        When an input makes no sense.

    Notes
    -----
    Nothing is notched: a beam is not deeper than the shallowest place. Sections outside a rule are left out.
    A flitch beam is tried with the wood alone on its seats, and with its plate on a steel seat of its own,
    which is not sized here. It has a verdict only where `lay_out_flitch` finds its bolts.

    Examples
    --------
    >>> from structlib.ground.units import plf
    >>> from structlib.house.beam import BeamJob
    >>> from structlib.rules.check import Seat
    >>> from structlib.rules.choice import RULEBOOK
    >>> from structlib.rules.us.steel_sections import steel_shape
    >>> job = BeamJob(12 * ft, Seat(3 * inch, "post"), Seat(3 * inch, "post"), (
    ...     TypedLoad("live", LineLoad(0.0, 147 * inch, 400 * plf)),))
    >>> found = alternatives(job, space=Space(middle=9.25 * inch, right=8 * inch), rulebook=RULEBOOK,
    ...                      steel=[steel_shape("W8x13"), steel_shape("W10x12"), steel_shape("W6x16")])
    >>> [(one.name, one.governs) for one in found]
    [('W8x13', 'sag under live load')]
    """
    check_job(job)
    check_record("space", space, Space, "Space(middle=11.25*inch)")
    if job.gates:
        return ()
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
            withheld=sizing.withheld[row] if sizing.withheld else "",
        )


def _flitch_family(job, beams, space, rulebook):
    for beam in beams:
        if beam.depth > space.depth * (1 + 1e-9) or beam.width > (space.width or 1e9) * (1 + 1e-9):
            continue
        for plate_bears in (False, True):
            try:
                yield _one_flitch(job, beam, rulebook, plate_bears)
            except OutsideRule:
                continue


def _one_flitch(job, beam, rulebook, plate_bears):
    """A flitch beam with the thinnest bolts that fit; without such bolts it has no verdict."""
    diameter, withheld = BOLTS[0], ""
    for diameter in BOLTS:
        try:
            lay_out_flitch(job, beam, rulebook, bolt_diameter=diameter, plate_bears=plate_bears)
        except OutsideRule as refusal:
            withheld = withheld or f"no bolts found: {refusal}"
            continue
        withheld = ""
        break
    else:
        diameter = BOLTS[0]
    withheld = FLITCH_FROM_THE_SIDE if job.loaded_on == "side" else withheld
    checks = check_flitch(job, beam, rulebook, plate_bears=plate_bears, bolt_diameter=diameter)
    worst, length = governing(checks), _length(job)
    wood = beam.wood.weight_density * beam.ply_width * beam.depth * length
    bolts = "" if withheld else f", {_inches(diameter)} bolts"
    return Alternative(
        family="flitch",
        name=f"{beam.plies} x {_inches(beam.ply_width)} x {_inches(beam.depth)} {beam.wood.name}, "
        f"{beam.plate.name}{bolts}" + (", plate on a steel seat of its own" if plate_bears else ""),
        depth=beam.depth,
        width=beam.width,
        share=worst.share,
        governs=worst.name,
        weight=beam.weight * length,
        piece_weight=max(wood, beam.plate.weight * length),
        verified=worst.verified,
        beam=beam,
        plate_bears=plate_bears,
        bolt_diameter=diameter,
        withheld=withheld,
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
    below = [one for one in listed if one.below_full]
    if below:
        return min(below, key=lambda one: (one.weight, one.depth))
    # one whose bolts are missing is no better for its low share
    return min(listed, key=lambda one: (bool(one.withheld), one.share), default=None)


def _check_flitch_job(job, beam):
    check_job(job)
    check_record("flitch beam", beam, Flitch, "Flitch(wood=..., plies=2, ...)")
    if job.wet or job.incised or job.treatment != "none":
        raise OutsideRule(
            "a flitch beam that stays wet, or of treated or incised wood, is not in this library: wood swells, "
            "and the plate rusts"
        )


def _with_plate(job, beam):
    """The job with the plate's own weight on it; the wood adds its own."""
    plate = TypedLoad("dead", LineLoad(0.0, job.span, beam.plate.weight))
    return replace(job, loads=(*job.loads, plate))


def _at_a_hole(check, lost):
    """The wood's bending on the section that a bolt hole leaves."""
    return replace(
        check,
        name="bending, wood at a bolt hole",
        sentence="the wood is stretched most where a bolt hole stands at the peak",
        asked=check.asked / (1 - lost),
        share=check.share / (1 - lost),
        clause=f"{check.clause}, 3.1.2",
        formula="f_b = M / S / (1 - lost) <= F_b' = F_b * factors",
        substitute=(*check.substitute, ("lost", lost, "ratio")),
        verified=least_verified([check.verified, "recalled"]),
    )


def _plate_check(whole, beam, rulebook, demands, limit, lost):
    """The plate at a bolt hole on the first day and after years: the worse of both."""
    growth = creep_growth(beam, creep_factor=creep_factor(wet=False))
    loads = tuple(
        TypedLoad(typed.load_type, _scaled(typed.load, growth if typed.load_type == "dead" else 1.0))
        for typed in whole.loads
    )
    years = demands_on(replace(whole, loads=loads), _member(whole, beam, growth), rulebook)
    found = []
    for when, solved, grown in (("first day", demands, 1.0), ("after years", years, growth)):
        worst = max(solved, key=lambda one: abs(one.solution.extremes.moment.value))
        peak = worst.solution.extremes.moment
        found.append(
            plate_check(
                beam,
                moment=abs(peak.value),
                combination=worst.combination.name,
                position=peak.position,
                limit=limit,
                lost=lost,
                growth=grown,
                when=when,
            )
        )
    return max(found, key=lambda one: one.share)


def _layout(job, beam, demands, bolt_diameter, plate_bears):
    if any(not isinstance(typed.load, LineLoad) for typed in job.loads):
        raise OutsideRule(
            "a post or beam that lands on a flitch beam needs a group of bolts of its own, which an engineer "
            "lays out"
        )
    found = [
        flitch_bolts(
            beam,
            length=_length(job),
            line_load=greatest_line_load(demand.top_loads),
            reaction=max(one.force for one in demand.solution.reactions),
            bolt_diameter=bolt_diameter,
            plate_bears=plate_bears,
            time_factor=demand.combination.time_factor,
        )
        for demand in demands
    ]
    return max(found, key=lambda one: (len(one.holes), one.end_bolts, one.line_load))


def _with_end_bolts(job, beam, checks, demands, bolt_diameter):
    """Shear at the end bolts beside the other checks; where it has no answer, no verdict on shear stands."""
    try:
        bolts = _layout(job, beam, demands, bolt_diameter, False)
        end_bolt_shear(beam, bolts, shear_value=beam.wood.shear)
    except OutsideRule as refusal:
        why = f"no verdict on shear: {refusal}"
        return [
            replace(check, decides=False, sentence=why) if check.kind == "shear" else check
            for check in checks
        ]

    def at(demand):
        push = max(demand.solution.reactions, key=lambda one: one.force)
        time = demand.combination.time_factor
        given, counts = end_bolt_shear(beam, bolts, shear_value=beam.wood.shear * time)
        return push, given, counts, time

    worst = max(demands, key=lambda demand: at(demand)[0].force / at(demand)[1])
    push, given, counts, time = at(worst)
    return [
        *checks,
        Check(
            name="shear at the end bolts",
            kind="shear",
            sentence="the end bolts push the wood down on its seat, and only the wood below the highest of "
            "them carries that shear",
            asked=push.force,
            given=given,
            share=push.force / given,
            dimension="force",
            position=push.position,
            where="between the end bolts and the seat",
            combination=worst.combination.name,
            clause="NDS 2018 3.4.3.3",
            formula="R <= (2/3) F_v' b d_e (d_e / d)^2",
            substitute=(
                ("R", push.force, "force"),
                ("F_v'", beam.wood.shear * time, "stress"),
                ("b", beam.ply_width * beam.plies, "section length"),
                ("d", beam.depth, "section length"),
                ("d_e", counts, "section length"),
            ),
            verified=least_verified([beam.wood.verified, "recalled"]),
        ),
    ]


def _member(job, beam, part):
    """The wood as a member with a part of its weight; the plies count as no repeated members."""
    return BeamMember(
        material=replace(beam.wood, weight_density=beam.wood.weight_density * part),
        ply_width=beam.ply_width,
        depth=beam.depth,
        plies=beam.plies,
        left=job.left,
        right=job.right,
        unbraced_length=job.unbraced_length,
        loaded_on=job.loaded_on,
        repetitive=False,
    )


def _wood_checks(job, whole, beam, rulebook, part):
    """The wood under a part of every load, its own weight too."""
    loads = tuple(TypedLoad(typed.load_type, _scaled(typed.load, part)) for typed in whole.loads)
    member = _member(job, beam, part)
    demands = demands_on(replace(whole, loads=loads), member, rulebook)
    return rulebook.beam_checks(member, demands, job.use), demands


def _scaled(load, part):
    if isinstance(load, LineLoad):
        end = load.intensity if load.end_intensity is None else load.end_intensity
        return replace(load, intensity=load.intensity * part, end_intensity=end * part)
    return replace(load, force=load.force * part)
