"""Every candidate beam at once: what each one uses, what governs it, what it weighs.

Demand is worked out once, strength once, and the two are compared as columns of numbers. The beam
that is finally shown is then checked again in full by `structlib.house.beam.check_beam`.
"""

from dataclasses import dataclass, replace
from typing import Any

import numpy

from structlib.ground.refusals import BadInput, OutsideRule
from structlib.ground.units import ft, inch
from structlib.house.beam import BeamChoice, as_put_in, check_job, evenly_loaded
from structlib.house.factored import factored_loads
from structlib.house.inputs import (
    check_list,
    check_material,
    check_one_number,
    check_record,
    check_whole_number,
)
from structlib.house.plies import ply_layout
from structlib.mechanics.beams import Beam, LineLoad, PointLoad, Support, solve
from structlib.mechanics.formulas import rectangle_shear_stiffness
from structlib.mechanics.resultants import load_between
from structlib.rules.check import Combination


@dataclass(frozen=True)
class Rack:
    """The candidates as columns. Rows of one material stand together.

    ``materials`` are the woods, ``starts`` the first row of each. Lengths in mm. ``shear_spread`` is EI over
    the shear stiffness, mm2: what shear adds to a sag; zero where E holds that part.
    """

    materials: tuple
    starts: tuple[int, ...]
    ply_width: Any
    depth: Any
    plies: Any
    width: Any
    area: Any
    section_modulus: Any
    inertia: Any
    stiffness: Any
    weight: Any
    depth_values: Any
    depth_index: Any
    shear_spread: Any

    def rows_of(self, number):
        """Return the rows of one material.

        Parameters
        ----------
        number : int
            Place of the material in ``materials`` [-].

        Returns
        -------
        slice
            Its rows [-].
        """
        check_whole_number("material number", number, low=0, high=len(self.materials) - 1, hint="for example 0")
        ends = self.starts[1:] + (len(self.depth),)
        return slice(self.starts[number], ends[number])

    def material_of(self, row):
        """Return the material of one row.

        Parameters
        ----------
        row : int
            Row of the rack [-].

        Returns
        -------
        structlib.ground.lumber.Material
            The wood [-].
        """
        check_whole_number("row", row, low=0, high=len(self.depth) - 1, hint="for example 0")
        return self.materials[int(numpy.searchsorted(self.starts, row, side="right")) - 1]

    def choice(self, row):
        """Return one candidate as a beam that can be checked in full.

        Parameters
        ----------
        row : int
            Row of the rack [-].

        Returns
        -------
        structlib.house.beam.BeamChoice
            The beam [-].
        """
        return BeamChoice(
            self.material_of(row), float(self.ply_width[row]), float(self.depth[row]), int(self.plies[row])
        )


@dataclass(frozen=True)
class RackDemand:
    """What one combination asks of every candidate of a rack; columns, one value a candidate.

    Deflections are those in service: with the modulus of elasticity as the rulebook lowers it for wet wood.
    ``evenly_loaded`` tells that nothing but even load is on the beam, all along its span.
    """

    combination: Combination
    moment: Any
    shear: Any
    left_reaction: Any
    right_reaction: Any
    variable_deflection: Any
    total_deflection: Any
    lasting_deflection: Any
    span: float
    unbraced_length: float
    left: Any
    right: Any
    wet: bool
    evenly_loaded: bool


@dataclass(frozen=True)
class Sizing:
    """The share used by every candidate, what governs it, and its weight; columns, one value a candidate.

    ``gates`` withdraw every candidate. ``withheld`` tells by candidate why it has no verdict; empty where it has.
    """

    rack: Rack
    share: Any
    governs: Any
    names: tuple[str, ...]
    piece_weight: Any
    volume: Any
    gates: tuple[str, ...] = ()
    withheld: tuple[str, ...] = ()

    def passing(self):
        """Return the rows with a verdict whose greatest share is at most one, least wood first.

        Returns
        -------
        numpy.ndarray
            Row numbers; none where a gate stands [-].
        """
        below = self.share <= 1.0
        if self.withheld:
            below &= numpy.array([not reason for reason in self.withheld])
        rows = numpy.flatnonzero(below & (not self.gates))
        return rows[numpy.lexsort((self.share[rows], self.volume[rows]))]


def build_rack(stock, *, plies=(1, 2, 3, 4), greatest_depth=None, greatest_width=None):
    """Lay out every candidate: each material in each size and number of plies, within the space there is.

    Parameters
    ----------
    stock : iterable of tuple
        (material, ply width, depth) of each piece that can be bought; same materials together [mm].
    plies : iterable of int
        Numbers of plies to try [-].
    greatest_depth : float or None
        Greatest depth that fits; any when None [mm].
    greatest_width : float or None
        Greatest width of all plies together that fits; any when None [mm].

    Returns
    -------
    Rack
        The candidates as columns [-].

    Examples
    --------
    >>> from structlib.ground.lumber import find_material
    >>> rack = build_rack([(find_material("Hem-Fir", "No.2"), 1.5 * inch, 9.25 * inch)], plies=(2, 3))
    >>> [int(count) for count in rack.plies]
    [2, 3]
    """
    stock, plies = _checked_choice(stock, plies, greatest_depth, greatest_width)
    groups = {}
    for piece in stock:
        material, ply_width, depth = _checked_piece(piece)
        groups.setdefault(id(material), (material, []))[1].append((ply_width, depth))
    materials, starts, columns, total = [], [], [], 0
    for material, sizes in groups.values():
        size = numpy.array(sizes, dtype=float)
        ply_width = numpy.repeat(size[:, 0], len(plies))
        depth = numpy.repeat(size[:, 1], len(plies))
        count = numpy.tile(numpy.array(plies), len(sizes))
        # the small allowance lets a piece in that is exactly as large as the space
        fits = numpy.ones(len(depth), dtype=bool)
        if greatest_depth is not None:
            fits &= depth <= greatest_depth * (1 + 1e-9)
        if greatest_width is not None:
            fits &= ply_width * count <= greatest_width * (1 + 1e-9)
        if fits.any():
            materials.append(material)
            starts.append(total)
            columns.append((ply_width[fits], depth[fits], count[fits]))
            total += int(fits.sum())
    if not materials:
        raise BadInput(
            "no piece fits the space given; allow more depth or width, for example a greatest depth of 12 in"
        )
    ply_width, depth, count = (numpy.concatenate(column) for column in zip(*columns))
    modulus, density, give = numpy.empty(total), numpy.empty(total), numpy.zeros(total)
    for number, material in enumerate(materials):
        rows = slice(starts[number], (starts + [total])[number + 1])
        modulus[rows], density[rows] = material.modulus, material.weight_density
        if material.shear_modulus is not None:
            give[rows] = 1 / rectangle_shear_stiffness(shear_modulus=material.shear_modulus, area=1.0)
    from structlib.ground.sections import rectangle_area, rectangle_inertia, rectangle_section_modulus

    width = ply_width * count
    area, inertia = rectangle_area(width=width, depth=depth), rectangle_inertia(width=width, depth=depth)
    depth_values, depth_index = numpy.unique(depth, return_inverse=True)
    return Rack(
        tuple(materials),
        tuple(starts),
        ply_width,
        depth,
        count,
        width,
        area,
        rectangle_section_modulus(width=width, depth=depth),
        inertia,
        modulus * inertia,
        density * area,
        depth_values,
        depth_index,
        modulus * inertia / area * give,
    )


def _checked_choice(stock, plies, greatest_depth, greatest_width):
    stock = check_list("stock", stock, "[(wood, 1.5*inch, 9.25*inch)]")
    plies = check_list("plies", plies, "(1, 2, 3)")
    if not stock:
        raise BadInput(
            "there is nothing to choose from; name at least one material and size, for example Hem-Fir No.2 in 2x10"
        )
    for limit, name in ((greatest_depth, "greatest depth"), (greatest_width, "greatest width")):
        if limit is not None:
            check_one_number(name, limit, low=1 * inch, high=48 * inch, shown=_inches, hint="for example 12 in")
    if not plies:
        raise BadInput("plies must hold at least one whole number between 1 and 6, got none; for example (1, 2, 3)")
    for count in plies:
        check_whole_number("plies", count, low=1, high=6, hint="for example 2")
    return stock, plies


def _checked_piece(piece):
    if not isinstance(piece, (tuple, list)) or len(piece) != 3:
        raise BadInput(
            f"a piece of stock is (material, ply width, depth), got {type(piece).__name__}; for example "
            "(wood, 1.5*inch, 9.25*inch)"
        )
    material, ply_width, depth = piece
    check_material(material)
    check_one_number(
        "width of one ply",
        ply_width,
        low=0.5 * inch,
        high=24 * inch,
        shown=_inches,
        hint="for example 1.5 in",
    )
    check_one_number("depth", depth, low=1.0 * inch, high=48 * inch, shown=_inches, hint="for example 9.25 in")
    return material, ply_width, depth


def _inches(value):
    return f"{value / inch:g} in"


def size_beams(job, rack, rulebook, strengths=None):
    """Work out the share used by every candidate of a rack for one opening.

    Parameters
    ----------
    job : structlib.house.beam.BeamJob
        The opening and its loads [-].
    rack : Rack
        The candidates [-].
    rulebook : structlib.rules.check.Rulebook
        The rules to judge by [-].
    strengths : dict or None
        What ``rulebook.prepare(rack)`` returned; worked out here when None [-].

    Returns
    -------
    Sizing
        Share, governing check, weight and volume of every candidate [-].

    Notes
    -----
    The peak of the loads and the peak of the own weight are added as if they stood at the same place:
    exact for even loads, a little on the careful side for others. A candidate that the rulebook does not
    cover has no strength, so that it uses an infinite share; `check_beam` says why.

    Examples
    --------
    >>> from structlib.ground.lumber import find_material
    >>> from structlib.ground.units import plf
    >>> from structlib.house.beam import BeamJob, TypedLoad
    >>> from structlib.rules.check import Seat
    >>> from structlib.rules.choice import RULEBOOK
    >>> rack = build_rack([(find_material("Hem-Fir", "No.2"), 1.5 * inch, 9.25 * inch)], plies=(2, 3))
    >>> job = BeamJob(11 * ft, Seat(3 * inch), Seat(3 * inch), (
    ...     TypedLoad("live", LineLoad(0.0, 135 * inch, 100 * plf)),), unbraced_length=0.0)
    >>> [int(row) for row in size_beams(job, rack, RULEBOOK).passing()]
    [0, 1]
    """
    check_job(job)
    check_record("rack", rack, Rack, "build_rack([(wood, 1.5*inch, 9.25*inch)])")
    worked = _as_put_in(rack, job, rulebook)
    if strengths is None or worked is not rack:
        strengths = rulebook.prepare(worked)
    names, worst, which = None, None, None
    for combination in rulebook.combinations({typed.load_type for typed in job.loads}):
        demand = rack_demand(job, worked, combination, rulebook)
        shares = rulebook.beam_shares(worked, strengths, demand, job.use)
        if names is None:
            names = tuple(shares)
            worst, which = numpy.full(len(rack.depth), -1.0), numpy.zeros(len(rack.depth), dtype=int)
        for number, name in enumerate(names):
            column = shares[name]
            better = column > worst
            worst = numpy.where(better, column, worst)
            which = numpy.where(better, number, which)
    length = job.clear_width + job.left.length + job.right.length
    piece_weight = rack.weight / rack.plies * length
    held_back = _withheld(job, rack, rulebook)
    return Sizing(rack, worst, which, names, piece_weight, rack.area * length, job.gates, held_back)


def _withheld(job, rack, rulebook):
    """Why each candidate has no verdict; nothing at all for a beam loaded on top of a seat as wide as it is."""
    if job.loaded_on != "side" and job.seat_width is None:
        return ()
    return tuple(ply_layout(job, rack.choice(row), rulebook)[0] for row in range(len(rack.depth)))


def limit_widths(job_at, rack, rulebook):
    """Return, for every candidate, the width of floor at which it has nothing left to give.

    Parameters
    ----------
    job_at : callable
        Gives the job (structlib.house.beam.BeamJob) for one tributary width [mm].
    rack : Rack
        The candidates [-].
    rulebook : structlib.rules.check.Rulebook
        The rules to judge by [-].

    Returns
    -------
    tuple of (numpy.ndarray, numpy.ndarray, tuple)
        Width of each candidate, which check stops it there, and the names of the checks; no width where a gate
        stands, or where plies are loaded from the side: their fasteners hold for one load only [mm, -, -].

    Raises
    ------
    OutsideRule
        When the shares do not grow in a straight line with the width, so that two do not tell the rest.

    Notes
    -----
    A share that grows in a straight line with the load needs two widths only; the place where it reaches one
    is exact, not searched for. A third width, beyond all others, proves that the line is straight: shares can
    only bend upward. A candidate that is too weak for its own weight, or not covered by the rulebook, gets zero.

    Examples
    --------
    >>> from structlib.ground.lumber import find_material
    >>> from structlib.ground.units import psf
    >>> from structlib.house.beam import BeamJob, TypedLoad
    >>> from structlib.rules.check import Seat
    >>> from structlib.rules.choice import RULEBOOK
    >>> rack = build_rack([(find_material("Hem-Fir", "No.2"), 1.5 * inch, 9.25 * inch)], plies=(2, 3))
    >>> def job_at(width):
    ...     return BeamJob(11 * ft, Seat(3 * inch), Seat(3 * inch), (
    ...         TypedLoad("live", LineLoad(0.0, 135 * inch, 40 * psf * width)),), unbraced_length=0.0)
    >>> limit, which, names = limit_widths(job_at, rack, RULEBOOK)
    >>> bool(limit[1] > 1.5 * limit[0])
    True
    """
    check_record("rack", rack, Rack, "build_rack([(wood, 1.5*inch, 9.25*inch)])")
    if not callable(job_at):
        raise BadInput(
            f"job_at must give the job for a width, got {type(job_at).__name__}; for example lambda width: "
            "BeamJob(12*ft, Seat(3*inch), Seat(3*inch), loads_of(width))"
        )
    narrow, wide = 1 * ft, 11 * ft
    rack = _as_put_in(rack, check_job(job_at(wide)), rulebook)
    strengths = rulebook.prepare(rack)
    combinations = rulebook.combinations({typed.load_type for typed in check_job(job_at(wide)).loads})
    at_narrow, at_wide = (
        _shares_at(job_at(width), rack, rulebook, strengths, combinations) for width in (narrow, wide)
    )
    names, limit, which = (
        None,
        numpy.full(len(rack.depth), numpy.inf),
        numpy.zeros(len(rack.depth), dtype=int),
    )
    for first, second in zip(at_narrow, at_wide):
        names = tuple(first)
        for number, name in enumerate(names):
            reached = _width_where_full(first[name], second[name], narrow, wide)
            tighter = reached < limit
            limit, which = numpy.where(tighter, reached, limit), numpy.where(tighter, number, which)
    reached = limit[numpy.isfinite(limit)]
    tried = [min(max([2 * wide, *reached]), _WIDEST)] + ([narrow / 10] if numpy.any(reached < narrow) else [])
    for width in tried:
        _refuse_bent(
            at_narrow,
            at_wide,
            (width - narrow) / (wide - narrow),
            _shares_at(job_at(width), rack, rulebook, strengths, combinations),
        )
    stopped = bool(job_at(wide).gates)
    plies_apart = (rack.plies > 1) & (job_at(wide).loaded_on == "side")
    room = job_at(wide).seat_width
    hangs_past = rack.width > (numpy.inf if room is None else room + 1e-6)
    return numpy.where(stopped | plies_apart | hangs_past, 0.0, limit), which, names


def _as_put_in(rack, job, rulebook):
    """The rack with the woods as this job has them; one that the rulebook refuses so keeps no bending value."""
    if not job.incised and job.treatment == "none":
        return rack
    woods, stiffness = [], rack.stiffness.copy()
    for number, material in enumerate(rack.materials):
        try:
            woods.append(as_put_in(job, material, rulebook))
        except OutsideRule:
            woods.append(replace(material, bending=0.0))
        rows = rack.rows_of(number)
        stiffness[rows] = woods[-1].modulus * rack.inertia[rows]
    return replace(rack, materials=tuple(woods), stiffness=stiffness)


def _shares_at(job, rack, rulebook, strengths, combinations):
    check_job(job)
    return [
        rulebook.beam_shares(rack, strengths, rack_demand(job, rack, combination, rulebook), job.use)
        for combination in combinations
    ]


def _width_where_full(at_narrow, at_wide, narrow, wide):
    """Width at which a share that grows in a straight line reaches one; infinite when it never does."""
    covered = numpy.isfinite(at_narrow) & numpy.isfinite(at_wide)
    slope = (numpy.where(covered, at_wide, 0.0) - numpy.where(covered, at_narrow, 0.0)) / (wide - narrow)
    grows = slope > 1e-12 / wide  # less is the rounding of a share that does not depend on the width
    reached = narrow + (1 - numpy.where(covered, at_narrow, 0.0)) / numpy.where(grows, slope, 1.0)
    constant = numpy.where(at_narrow <= 1, numpy.inf, 0.0)
    return numpy.where(covered, numpy.maximum(numpy.where(grows, reached, constant), 0.0), 0.0)


#: No floor of a house is wider; limits beyond it are of no use, and their line is not tried further out.
_WIDEST = 1000 * ft


def _refuse_bent(at_narrow, at_wide, along, at_third):
    for first, second, third in zip(at_narrow, at_wide, at_third):
        for name, share in third.items():
            covered = numpy.isfinite(first[name]) & numpy.isfinite(share)
            a, b, c = first[name][covered], second[name][covered], share[covered]
            if numpy.any(numpy.abs(a + along * (b - a) - c) > 1e-9 * (1 + abs(along)) * (1 + numpy.abs(b))):
                raise OutsideRule(
                    "the limit widths are read off a straight line, and with these loads the share used in "
                    f"{name} does not grow in one; let all loads grow with the width or stand evenly on "
                    "the beam, or check the beams one by one"
                )


def give_way(limit, preference):
    """Return which candidate is preferred at which width, and where it gives way to the next.

    Parameters
    ----------
    limit : numpy.ndarray
        Greatest width of each candidate [mm].
    preference : numpy.ndarray
        What is to be small, such as the volume of wood or the cost [any].

    Returns
    -------
    list of tuple
        (row, from width, to width), from narrow to wide [-, mm, mm].

    Examples
    --------
    >>> give_way(numpy.array([4.0, 9.0, 7.0]), numpy.array([1.0, 3.0, 2.0]))
    [(0, 0.0, 4.0), (2, 4.0, 7.0), (1, 7.0, 9.0)]
    """
    limit, preference = _column("limit", limit), _column("preference", preference)
    if len(limit) != len(preference):
        raise BadInput(
            f"limit and preference must have one value a candidate each, got {len(limit)} and {len(preference)}"
        )
    steps, reached = [], 0.0
    for row in numpy.lexsort((-limit, preference)):
        if limit[row] > reached:
            steps.append((int(row), reached, float(limit[row])))
            reached = float(limit[row])
    return steps


def _column(name, values):
    try:
        column = numpy.asarray(values, dtype=float)
    except (TypeError, ValueError):
        raise BadInput(f"{name} must be a column of numbers, got {type(values).__name__}") from None
    if column.ndim != 1 or numpy.isnan(column).any():
        raise BadInput(f"{name} must be one column of numbers, one a candidate, without gaps")
    return column


def rack_demand(job, rack, combination, rulebook):
    """Return what one combination asks of every candidate.

    Parameters
    ----------
    job : structlib.house.beam.BeamJob
        The opening and its loads [-].
    rack : Rack
        The candidates [-].
    combination : structlib.rules.check.Combination
        Factors by load type [-].
    rulebook : structlib.rules.check.Rulebook
        The rules, which say whether load near a seat may be left out of the shear [-].

    Returns
    -------
    RackDemand
        Columns of demand [-].

    Examples
    --------
    >>> from structlib.ground.lumber import find_material
    >>> from structlib.ground.units import plf
    >>> from structlib.house.beam import BeamJob, TypedLoad
    >>> from structlib.rules.check import Seat
    >>> from structlib.rules.choice import RULEBOOK
    >>> rack = build_rack([(find_material("Hem-Fir", "No.2"), 1.5 * inch, 9.25 * inch)], plies=(2, 3))
    >>> job = BeamJob(11 * ft, Seat(3 * inch), Seat(3 * inch), (
    ...     TypedLoad("live", LineLoad(0.0, 135 * inch, 100 * plf)),), unbraced_length=0.0)
    >>> both = RULEBOOK.combinations(["live"])[-1]
    >>> demand = rack_demand(job, rack, both, RULEBOOK)
    >>> bool((demand.moment > 100 * plf * (135 * inch) ** 2 / 8).all())
    True
    """
    span, supports = job.span, (Support(0.0), Support(job.span))

    def solved(loads, spread=0.0):
        slides = 1 / spread if spread else None
        return solve(Beam(span, 1.0, supports, tuple(loads), shear_stiffness=slides))

    spreads, spread_index = numpy.unique(rack.shear_spread, return_inverse=True)

    def sag(loads, even):
        """Greatest sag with EI of 1; candidates of one depth and wood have the same part from shear in it."""
        if even:  # bending and shear both sag most in the middle
            peaks = solved(loads).extremes
            return abs(peaks.deflection.value) + rack.shear_spread * abs(peaks.moment.value)
        peaks = [abs(solved(loads, float(spread)).extremes.deflection.value) for spread in spreads]
        return numpy.array(peaks)[spread_index]

    loads = factored_loads(job, combination, own_weight=0.0, keep=lambda load_type: True)
    passing = factored_loads(job, combination, own_weight=0.0, keep=lambda load_type: load_type != "dead")
    all_of_it, unit_load = solved(loads), [LineLoad(0.0, span, 1.0)]
    one, own_sag, even = solved(unit_load), sag(unit_load, True), evenly_loaded(job)
    own = rack.weight * combination.factor("dead")
    staying = factored_loads(job, combination, own_weight=0.0, keep=lambda load_type: load_type == "dead")
    lasting = sag(staying, even) + own * own_sag
    stiffness = rack.stiffness * _modulus_factors(rack, rulebook, job.wet)
    left = all_of_it.reactions[0].force + own * one.reactions[0].force
    right = all_of_it.reactions[-1].force + own * one.reactions[-1].force
    spread = _spread(loads)
    left_part = _part_left_out(job, rack, rulebook, spread, own, end="left")
    right_part = _part_left_out(job, rack, rulebook, spread, own, end="right")
    # what stands right over a seat presses it and shears nothing
    over = [
        sum(load.force for load in loads if isinstance(load, PointLoad) and load.position == at) for at in (0.0, span)
    ]
    moment = abs(all_of_it.extremes.moment.value) + own * abs(one.extremes.moment.value)
    total, variable = sag(loads, even) + own * own_sag, sag(passing, even)
    return RackDemand(
        combination,
        moment,
        numpy.maximum(left - over[0] - left_part, right - over[1] - right_part),
        left,
        right,
        variable / stiffness,
        total / stiffness,
        lasting / stiffness,
        span,
        job.unbraced,
        job.left,
        job.right,
        job.wet,
        even,
    )


def _spread(loads):
    """Start, end, intensity and end intensity of what is no point load."""
    return [
        (one.start, one.end, one.intensity, one.intensity if one.end_intensity is None else one.end_intensity)
        for one in loads
        if isinstance(one, LineLoad)
    ]


def _modulus_factors(rack, rulebook, wet):
    """What the modulus of each candidate is multiplied by in service."""
    factors = numpy.ones(len(rack.depth))
    for number, material in enumerate(rack.materials):
        try:
            factors[rack.rows_of(number)] = rulebook.modulus_factor(material, wet=wet)
        except OutsideRule:
            continue  # a wood that the rulebook refuses has no strength on the rack; its sag does not matter
    return factors


def _part_left_out(job, rack, rulebook, spread, own, end):
    """Load near a seat that the shear rule leaves out, for every depth on the rack."""
    seat = job.left if end == "left" else job.right
    if not rulebook.leaves_out_load_near_seat(below=seat.below, loaded_on=job.loaded_on):
        return 0.0
    reach = numpy.minimum(seat.length / 2 + rack.depth_values, job.span / 2)
    if end == "left":
        parts = [load_between(spread, start=0.0, end=float(r)) for r in reach]
    else:
        parts = [load_between(spread, start=job.span - float(r), end=job.span) for r in reach]
    return (numpy.array(parts) + 0.0)[rack.depth_index] + own * reach[rack.depth_index]
