"""Every candidate beam at once: what each one uses, what governs it, what it weighs.

Demand is worked out once, strength once, and the two are compared as columns of numbers. The beam
that is finally shown is then checked again in full by `structlib.house.beam.check_beam`.
"""

from dataclasses import dataclass
from typing import Any

import numpy

from structlib.ground.refusals import BadInput, check_number
from structlib.ground.units import ft, inch
from structlib.house.beam import BeamChoice, check_job, factored_loads
from structlib.mechanics.beams import Beam, LineLoad, Support, solve
from structlib.mechanics.resultants import load_between
from structlib.rules.check import Combination


@dataclass(frozen=True)
class Rack:
    """The candidates as columns. Rows of one material stand together.

    ``materials`` are the woods, ``starts`` the first row of each. Lengths in mm.
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
        return BeamChoice(self.material_of(row), float(self.ply_width[row]), float(self.depth[row]),
                          int(self.plies[row]))


@dataclass(frozen=True)
class RackDemand:
    """What one combination asks of every candidate of a rack; columns, one value a candidate."""

    combination: Combination
    moment: Any
    shear: Any
    left_reaction: Any
    right_reaction: Any
    variable_deflection: Any
    total_deflection: Any
    span: float
    unbraced_length: float
    left: Any
    right: Any


@dataclass(frozen=True)
class Sizing:
    """The share used by every candidate, what governs it, and its weight; columns, one value a candidate."""

    rack: Rack
    share: Any
    governs: Any
    names: tuple[str, ...]
    piece_weight: Any
    volume: Any

    def passing(self):
        """Return the rows whose greatest share is at most one, least wood first.

        Returns
        -------
        numpy.ndarray
            Row numbers [-].
        """
        rows = numpy.flatnonzero(self.share <= 1.0)
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

    Raises
    ------
    BadInput
        When nothing fits, or a limit makes no sense.

    Examples
    --------
    >>> from structlib.ground.lumber import find_material
    >>> rack = build_rack([(find_material("Hem-Fir", "No.2"), 1.5 * inch, 9.25 * inch)], plies=(2, 3))
    >>> [int(count) for count in rack.plies]
    [2, 3]
    """
    stock, plies = list(stock), list(plies)
    if not stock:
        raise BadInput("there is nothing to choose from; name at least one material and size, for example "
                       "Hem-Fir No.2 in 2x10")
    for limit, name in ((greatest_depth, "greatest depth"), (greatest_width, "greatest width")):
        if limit is not None:
            check_number(name, limit, low=1 * inch, high=48 * inch, shown=lambda mm: f"{mm / inch:g} in",
                         hint="for example 12 in")
    if not plies:
        raise BadInput("plies must hold at least one whole number between 1 and 6, got none; for example (1, 2, 3)")
    for count in plies:
        check_number("plies", count, low=1, high=6, hint="for example 2")
    groups = {}
    for material, ply_width, depth in stock:
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
        raise BadInput("no piece fits the space given; allow more depth or width, for example a greatest depth of 12 in")
    ply_width, depth, count = (numpy.concatenate(column) for column in zip(*columns))
    modulus, density = numpy.empty(total), numpy.empty(total)
    for number, material in enumerate(materials):
        rows = slice(starts[number], (starts + [total])[number + 1])
        modulus[rows], density[rows] = material.modulus, material.weight_density
    from structlib.ground.sections import rectangle_area, rectangle_inertia, rectangle_section_modulus

    width = ply_width * count
    area, inertia = rectangle_area(width=width, depth=depth), rectangle_inertia(width=width, depth=depth)
    depth_values, depth_index = numpy.unique(depth, return_inverse=True)
    return Rack(tuple(materials), tuple(starts), ply_width, depth, count, width, area,
                rectangle_section_modulus(width=width, depth=depth), inertia, modulus * inertia, density * area,
                depth_values, depth_index)


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

    Raises
    ------
    BadInput
        When the job makes no sense.

    Notes
    -----
    The peak of the loads and the peak of the own weight are added as if they stood at the same place:
    exact for even loads, a little on the careful side for others.

    Examples
    --------
    >>> size_beams.__name__
    'size_beams'
    """
    check_job(job)
    if strengths is None:
        strengths = rulebook.prepare(rack)
    names, worst, which = None, None, None
    for combination in rulebook.combinations({typed.load_type for typed in job.loads}):
        shares = rulebook.beam_shares(rack, strengths, rack_demand(job, rack, combination, rulebook), job.use)
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
    return Sizing(rack, worst, which, names, piece_weight, rack.area * length)


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
    tuple of (numpy.ndarray, numpy.ndarray, tuple of str)
        Greatest tributary width, the check that sets it, and the names of the checks [mm, -, -].

    Notes
    -----
    Every share grows in a straight line with the load, so two widths tell the whole line; the place where
    it reaches one is exact, not searched for. A candidate that is too weak for its own weight gets zero.

    Examples
    --------
    >>> limit_widths.__name__
    'limit_widths'
    """
    strengths = rulebook.prepare(rack)
    narrow, wide = 1 * ft, 11 * ft
    names, limit, which = None, numpy.full(len(rack.depth), numpy.inf), numpy.zeros(len(rack.depth), dtype=int)
    types = {typed.load_type for typed in job_at(wide).loads}
    for combination in rulebook.combinations(types):
        ends = [rulebook.beam_shares(rack, strengths, rack_demand(job_at(width), rack, combination, rulebook),
                                     job_at(width).use) for width in (narrow, wide)]
        names = tuple(ends[0])
        for number, name in enumerate(names):
            slope = (ends[1][name] - ends[0][name]) / (wide - narrow)
            with numpy.errstate(divide="ignore", invalid="ignore"):
                reached = numpy.where(slope > 0, narrow + (1 - ends[0][name]) / slope, numpy.inf)
            reached = numpy.where(numpy.isnan(reached), 0.0, numpy.maximum(reached, 0.0))
            tighter = reached < limit
            limit, which = numpy.where(tighter, reached, limit), numpy.where(tighter, number, which)
    return limit, which, names


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
    steps, reached = [], 0.0
    for row in numpy.lexsort((-limit, preference)):
        if limit[row] > reached:
            steps.append((int(row), reached, float(limit[row])))
            reached = float(limit[row])
    return steps


def cost_of(rack, length, prices):
    """Return the cost of every candidate from prices that the reader enters.

    Parameters
    ----------
    rack : Rack
        The candidates [-].
    length : float
        Length of the beam [mm].
    prices : dict
        Price per length of one ply, by (material name, depth in mm) [1/mm].

    Returns
    -------
    numpy.ndarray
        Cost, in the reader's own money; infinite where no price was entered [-].

    Raises
    ------
    BadInput
        When a price is not a number above zero.

    Examples
    --------
    >>> from structlib.ground.lumber import find_material
    >>> wood = find_material("Hem-Fir", "No.2")
    >>> rack = build_rack([(wood, 1.5 * inch, 9.25 * inch)], plies=(2,))
    >>> round(float(cost_of(rack, 10 * ft, {(wood.name, 9.25 * inch): 2.0 / ft})[0]), 6)
    40.0
    """
    for key, price in prices.items():
        check_number(f"price of {key}", price, low=0.0, high=1e6, low_allowed=False, hint="for example 1.80/ft")
    cost = numpy.full(len(rack.depth), numpy.inf)
    for number, material in enumerate(rack.materials):
        for row in range(rack.rows_of(number).start, rack.rows_of(number).stop):
            price = prices.get((material.name, float(rack.depth[row])))
            if price is not None:
                cost[row] = price * length * rack.plies[row]
    return cost


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
    >>> rack_demand.__name__
    'rack_demand'
    """
    span, supports = job.span, (Support(0.0), Support(job.span))

    def solved(loads):
        return solve(Beam(span, 1.0, supports, tuple(loads)))

    loads = factored_loads(job, combination, own_weight=0.0, keep=lambda load_type: True)
    passing = factored_loads(job, combination, own_weight=0.0, keep=lambda load_type: load_type != "dead")
    all_of_it, come_and_go = solved(loads), solved(passing)
    one = solved([LineLoad(0.0, span, 1.0)])
    own = rack.weight * combination.factor("dead")
    left = all_of_it.reactions[0].force + own * one.reactions[0].force
    right = all_of_it.reactions[-1].force + own * one.reactions[-1].force
    spread = [(load.start, load.end, load.intensity,
               load.intensity if load.end_intensity is None else load.end_intensity)
              for load in loads if isinstance(load, LineLoad)]
    left_part = _part_left_out(job, rack, rulebook, spread, own, end="left")
    right_part = _part_left_out(job, rack, rulebook, spread, own, end="right")
    moment = abs(all_of_it.extremes.moment.value) + own * abs(one.extremes.moment.value)
    total = abs(all_of_it.extremes.deflection.value) + own * abs(one.extremes.deflection.value)
    variable = abs(come_and_go.extremes.deflection.value)
    return RackDemand(combination, moment, numpy.maximum(left - left_part, right - right_part), left, right,
                      variable / rack.stiffness, total / rack.stiffness, span, job.unbraced_length,
                      job.left, job.right)


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
