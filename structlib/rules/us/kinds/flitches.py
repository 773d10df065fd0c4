"""Flitch beams: the wood under its share, the plate, the bolts, and what is left at the seats."""

from dataclasses import replace
from functools import lru_cache

from structlib.ground.refusals import OutsideRule
from structlib.mechanics.beams import LineLoad, PointLoad, solve
from structlib.mechanics.line_loads import greatest_line_load
from structlib.rules.check import BeamMember, Check, least_verified
from structlib.rules.members.asking import Partly
from structlib.rules.members.plies import FlitchMember  # noqa: F401  the examples use it
from structlib.rules.us import deflection, flitch, flitch_bolts, shear

_WITH_THE_WOOD = ("bending", "sag")  # the wood has its share of these even where it alone is on the seats
_GROWS = ("M", "f_b", "V", "f_v", "R", "f")  # what of a check grows with the load


class Flitches:
    """Answers about the bolts of a flitch beam."""

    def plate_bolts(self, member, demands):
        """Lay out the bolts of a flitch beam for the combination that asks for most of them (NDS 2018 12.3, 12.5).

        Parameters
        ----------
        member : structlib.rules.members.FlitchMember
            The beam [-].
        demands : tuple of structlib.rules.check.BeamDemand
            What each combination asks of wood and plate together [-].

        Returns
        -------
        structlib.rules.us.flitch_bolts.FlitchBolts
            The layout; among its checks the shear past the end bolts, where the plate has no seat of its own [-].

        Raises
        ------
        OutsideRule
            When the bolts do not fit, or a post or beam lands on it, which needs a group of its own.

        Examples
        --------
        >>> from structlib.ground.lumber import find_material
        >>> from structlib.rules.members import Flitch
        >>> beam = Flitch(wood=find_material("Hem-Fir", "No.2"), ply_width=38.1, depth=235.0, plies=2,
        ...               plate_thickness=12.7, plate_depth=228.0)
        >>> try:
        ...     Flitches().plate_bolts(FlitchMember(beam, None, None, wet=True), ())
        ... except OutsideRule as refusal:
        ...     print(str(refusal)[:37])
        a flitch beam that stays wet, or of t
        """
        _refuse_wet(member)
        bolts = _bolts(member, demands)
        past = () if member.plate_bears else (_past_end_bolts(member, bolts, demands),)
        return replace(bolts, checks=bolts.checks + past)


def _refuse_wet(member):
    if member.wet:
        raise OutsideRule(
            "a flitch beam that stays wet, or of treated or incised wood, is not in this library: wood swells, "
            "and the plate rusts"
        )


def flitch_checks(member, demands, beam_checks):
    """Check a flitch beam: the wood bends under its share of the load, and alone takes the seats where the plate has none.

    Parameters
    ----------
    member : structlib.rules.members.FlitchMember
        The beam [-].
    demands : tuple of structlib.rules.check.BeamDemand
        What each combination asks of wood and plate together [-].
    beam_checks : callable
        The checks of a beam of wood alone, as the rulebook's method takes them [-].

    Returns
    -------
    tuple of structlib.rules.check.Check
        Wood and plate at a bolt hole, shear, seats, sag, and the bolts; `Partly` where the bolts are refused [-].

    Examples
    --------
    >>> from structlib.ground.lumber import find_material
    >>> from structlib.rules.members import Flitch
    >>> beam = Flitch(wood=find_material("Hem-Fir", "No.2"), ply_width=38.1, depth=235.0, plies=2,
    ...               plate_thickness=12.7, plate_depth=228.0)
    >>> try:
    ...     flitch_checks(FlitchMember(beam, None, None, wet=True), (), None)
    ... except OutsideRule as refusal:
    ...     print(str(refusal)[:31])
    a flitch beam that stays wet, o
    """
    _refuse_wet(member)
    beam, wood_share = member.beam, 1 - member.beam.steel_share
    flitch_bolts.hole_line(beam, bolt_diameter=member.bolt_diameter)  # refused where no line fits
    lost, plate_lost = holes_take(beam, member.bolt_diameter)
    wood = BeamMember(
        beam.wood, beam.ply_width, beam.depth, beam.plies, member.left, member.right,
        unbraced_length=member.unbraced_length, loaded_on=member.loaded_on, repetitive=False,
    )  # fmt: skip
    checks = []
    for one in beam_checks(wood, demands, member.use):
        if one.kind == "bending":
            checks.append(_at_a_hole(_of_the_load(one, wood_share), lost))
        else:
            checks.append(
                _of_the_load(one, wood_share) if member.plate_bears and one.kind not in ("sag", "seat") else one
            )
    plate = _plate(member, demands, plate_lost)
    checks.sort(key=lambda one: 0 if member.plate_bears or one.kind in _WITH_THE_WOOD else 1)
    try:
        bolts = Flitches().plate_bolts(member, demands)
    except OutsideRule as refusal:
        if not member.plate_bears:
            why = f"no verdict on shear: {refusal}"
            checks = [replace(one, decides=False, sentence=why) if one.kind == "shear" else one for one in checks]
        raise Partly(str(refusal), (*checks, plate), "bolts") from None
    shear = [one for one in bolts.checks if one.kind == "shear"]
    # distances are laid out as they are wanted: they are held, and nothing is used up
    others = [replace(one, decides=one.kind != "distance") for one in bolts.checks if one.kind != "shear"]
    return (*checks, *shear, plate, *others)


def _of_the_load(check, part):
    """A check of the whole load on the wood, for its part of that load."""
    put_in = tuple((name, value * part if name in _GROWS else value, what) for name, value, what in check.substitute)
    return replace(check, asked=check.asked * part, share=check.share * part, substitute=put_in)


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


def _plate(member, demands, lost):
    """The plate at a bolt hole on the first day and after years, when the load that stays has moved to it: the worse."""
    growth = flitch.creep_growth(member.beam, creep_factor=deflection.creep_factor(wet=False))
    found = []
    for when, grown in (("first day", 1.0), ("after years", growth)):
        peaks = [(_with_grown(one, grown).extremes.moment, one.combination.name) for one in demands]
        peak, combination = max(peaks, key=lambda one: abs(one[0].value))
        found.append(
            flitch.steel_plate_check(
                member.beam,
                moment=abs(peak.value),
                combination=combination,
                position=peak.position,
                lost=lost,
                growth=grown,
                when=when,
            )
        )
    return max(found, key=lambda one: one.share)


def _with_grown(demand, growth):
    """The solved beam with its lasting load multiplied."""
    if growth == 1.0 or demand.lasting is None:
        return demand.solution
    passing = demand.variable.beam.loads if demand.variable else ()
    loads = (*(_scaled(one, growth) for one in demand.lasting.beam.loads), *passing)
    return solve(replace(demand.solution.beam, loads=loads))


def _scaled(load, part):
    if isinstance(load, PointLoad):
        return replace(load, force=load.force * part)
    end = load.intensity if load.end_intensity is None else load.end_intensity
    return replace(load, intensity=load.intensity * part, end_intensity=end * part)


def _bolts(member, demands):
    if any(not isinstance(load, LineLoad) for one in demands for load in one.solution.beam.loads):
        raise OutsideRule(
            "a post or beam that lands on a flitch beam needs a group of bolts of its own, which an engineer lays out"
        )
    seats = sum(seat.length / 2 for seat in (member.left, member.right) if seat is not None)
    found = [
        flitch_bolts.flitch_bolts(
            member.beam,
            length=demand.span + seats,
            line_load=greatest_line_load(demand.top_loads),
            reaction=_push(demand).force,
            bolt_diameter=member.bolt_diameter,
            plate_bears=member.plate_bears,
            time_factor=demand.combination.time_factor,
        )
        for demand in demands
        if demand.top_loads
    ]
    return max(found, key=lambda one: (len(one.holes), one.end_bolts, one.line_load))


def _push(demand):
    return max(demand.solution.reactions, key=lambda one: one.force)


def _past_end_bolts(member, bolts, demands):
    """Shear of the wood below the highest end bolt, which brings all of the push down."""
    beam, wood = member.beam, member.beam.wood

    def value(demand):
        return shear.shear_value(wood, time_factor=demand.combination.time_factor)[0]

    def given(demand):
        return flitch_bolts.end_bolt_shear(beam, bolts, shear_value=value(demand))

    worst = max(demands, key=lambda demand: _push(demand).force / given(demand)[0])
    push, (most, counts) = _push(worst), given(worst)
    return Check(
        name="shear at the end bolts",
        kind="shear",
        sentence="the end bolts push the wood down on its seat, and only the wood below the highest of "
        "them carries that shear",
        asked=push.force,
        given=most,
        share=push.force / most,
        dimension="force",
        position=push.position,
        where="between the end bolts and the seat",
        combination=worst.combination.name,
        clause="NDS 2018 3.4.3.3",
        formula="R <= (2/3) F_v' b d_e (d_e / d)^2",
        substitute=(
            ("R", push.force, "force"),
            ("F_v'", value(worst), "stress"),
            ("b", beam.ply_width * beam.plies, "section length"),
            ("d", beam.depth, "section length"),
            ("d_e", counts, "section length"),
        ),
        verified=least_verified([wood.verified, "recalled"]),
    )


@lru_cache(maxsize=64)
def holes_take(beam, diameter):
    """Return what a bolt hole takes off the bending strength of wood and plate; nothing where none is laid out.

    Parameters
    ----------
    beam : structlib.rules.members.Flitch or None
        The beam [-].
    diameter : float or None
        Diameter of its bolts [mm].

    Returns
    -------
    tuple of float
        Share lost by the wood and by the plate [-].

    Examples
    --------
    >>> holes_take(None, None)
    (0.0, 0.0)
    """
    if beam is None or diameter is None:
        return 0.0, 0.0
    try:
        hole = dict(edge_distance=flitch_bolts.hole_line(beam, bolt_diameter=diameter), bolt_diameter=diameter)
    except OutsideRule:
        return 0.0, 0.0
    return flitch.hole_loss(beam, **hole), flitch.plate_hole_loss(beam, **hole)
