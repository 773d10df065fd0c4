"""The same opening in sawn lumber, LVL, flitch and steel, within the depth that each end leaves."""

from dataclasses import dataclass, replace
from typing import Any

from structlib.ground.records import measured
from structlib.ground.refusals import OutsideRule, check_one_number
from structlib.ground.showing import show
from structlib.ground.units import inch
from structlib.house.beam import check_job, demands_on
from structlib.house.inputs import check_list, check_record
from structlib.house.sizing import build_rack, size_beams
from structlib.house.with_steel import BOLTS, FLITCH_FROM_THE_SIDE, check_steel, flitch_member, without_bolts
from structlib.rules.check import governing
from structlib.rules.members import Partly


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

    Notes
    -----
    Nothing is notched: a beam is not deeper than the shallowest place. Sections outside a rule are left out.
    A flitch beam is tried with the wood alone on its seats, and with its plate on a steel seat of its own,
    which is not sized here. It has a verdict only where `lay_out_flitch` finds its bolts.

    Examples
    --------
    >>> from structlib.ground.steel import steel_shape
    >>> from structlib.house.with_steel import example_job
    >>> from structlib.rules.choice import RULEBOOK
    >>> job = example_job(dead=0.0)
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
    found.append(_best(_flitch_family(job, check_list("flitches", flitches, "[Flitch(...)]"), space, rulebook)))
    found.append(_best(_steel_family(job, check_list("steel", steel, "[steel_shape('W8x18')]"), space, rulebook)))
    return tuple(one for one in found if one is not None)


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
    member = flitch_member(job, beam, plate_bears=plate_bears)
    demands = demands_on(job, member, rulebook)
    try:
        diameter, checks, withheld = BOLTS[0], rulebook.checks(member, demands), ""
    except Partly as some:
        diameter, checks, withheld = _thicker_bolts(member, demands, rulebook, some)
    withheld = FLITCH_FROM_THE_SIDE if job.loaded_on == "side" else withheld
    worst, length = governing(without_bolts(checks)), _length(job)
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


def _thicker_bolts(member, demands, rulebook, first):
    """The next bolts that fit, with their checks; the thinnest and why they do not where none fit."""
    for diameter in BOLTS[1:]:
        try:
            return diameter, rulebook.checks(replace(member, bolt_diameter=diameter), demands), ""
        except OutsideRule:
            continue
    return BOLTS[0], first.checks, f"no bolts found: {first}"


def _steel_family(job, sections, space, rulebook):
    for section in sections:
        if section.depth > space.depth * (1 + 1e-9) or section.flange_width > (space.width or 1e9) * (1 + 1e-9):
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
