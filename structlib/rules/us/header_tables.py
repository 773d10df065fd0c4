"""The code's tables of headers and girders, made again on their own assumptions, and what they leave out.

A table is not an engineered check: it takes its own factor for two plies, its own snow, and asks bending
and the jack studs only. The bases say so, and were found by working back from printed cells.
"""

import re
from dataclasses import dataclass
from typing import Any

import numpy

from structlib.ground.lumber import find_material
from structlib.ground.refusals import BadInput, OutsideRule, check_choice, check_number, is_symbolic
from structlib.ground.sections import plies_width, rectangle_inertia, rectangle_section_modulus
from structlib.ground.tables import table_row
from structlib.ground.units import ft, psf
from structlib.mechanics import formulas
from structlib.rules.check import Check, Factor, least_verified
from structlib.rules.us import factors
from structlib.rules.us.bending import bending_value
from structlib.rules.us.header_bases import (  # noqa: F401  for callers
    HeaderBasis,
    check_basis,
    find_header_basis,
    header_bases,
    header_cells,
)
from structlib.rules.us.one_number import check_one_number, length_text, psf_text
from structlib.rules.us.seats import jack_studs
from structlib.rules.us.span_table_lumber import table_size

# as_printed: for callers
from structlib.rules.us.span_tables import as_printed, bending_span, deflection_span  # noqa: F401

_EVEN = 1e-9


@dataclass(frozen=True)
class HeaderLoad:
    """One combination on a header: line load [N/mm], load duration factor, what comes and goes [N/mm].

    ``bends`` tells whether the table asks bending and sag of it; the jack studs are counted for each."""

    name: str
    line_load: Any
    time_factor: float
    passing: Any
    bends: bool = True


@dataclass(frozen=True)
class HeaderSpan:
    """One cell of a header table, not rounded. Lengths in mm; arrays where the building width was one.

    ``governs`` names the combination that sets bending, or 'sag'. ``line_load`` is the greatest of the
    combinations, which the jack studs are counted for."""

    span: Any
    governs: Any
    jack_studs: Any
    line_load: Any
    bending_span: Any
    sag_span: Any
    factors: tuple[Factor, ...]
    verified: str


def header_loads(basis, *, building_width, ground_snow=None):
    """Return the combinations of a header table for one building.

    Parameters
    ----------
    basis : HeaderBasis
        The table [-].
    building_width : float or numpy.ndarray
        Width of the building across the ridge, within the table's columns [mm].
    ground_snow : float or None
        Ground snow of one of the table's columns; None where the header carries no roof [MPa].

    Returns
    -------
    tuple of HeaderLoad
        Dead load with floor load, with snow, and with three quarters of both; only those that add
        something [N/mm].

    Raises
    ------
    OutsideRule
        When the building is wider or narrower than the table, or the snow is not one of its columns.

    Examples
    --------
    >>> from structlib.ground.units import plf
    >>> roof = find_header_basis("R602.7(1) roof")
    >>> loads = header_loads(roof, building_width=24*ft, ground_snow=30*psf)
    >>> [(one.name, round(float(one.line_load) / plf)) for one in loads]
    [('D + S', 612)]
    """
    check_basis(basis)
    width = _checked_width(basis, building_width)
    dead = basis.roof_dead * (width / 2 + basis.overhang) + basis.floors * basis.floor_dead * basis.floor_share * width
    dead = dead + basis.wall
    live = basis.floors * basis.floor_live * basis.floor_share * width
    snow = _checked_snow(basis, ground_snow) * (
        basis.snow_per_width * width + basis.snow_constant + basis.snow_over_width / width
    )
    on_live, on_snow = factors.scalar("load_duration_live"), factors.scalar("load_duration_snow")
    found = []
    if basis.floors:
        found.append(HeaderLoad("D + L", dead + live, on_live, live))
    if basis.snows:
        found.append(HeaderLoad("D + S", dead + snow, on_snow, snow))
    if basis.floors and basis.snows:
        both = table_row("us_load_combinations", name="D + 0.75 L + 0.75 S")
        passing = both["live"] * live + both["snow"] * snow
        found.append(HeaderLoad(both["name"], dead + passing, on_snow, passing, basis.combined))
    return tuple(found)


def header_span(basis, size, *, building_width, ground_snow=None):
    """Return the span of one header of a table, not rounded, and its jack studs.

    Parameters
    ----------
    basis : HeaderBasis
        The table [-].
    size : str
        Plies and size, for example ``2-2x10`` [-].
    building_width : float or numpy.ndarray
        Width of the building across the ridge [mm].
    ground_snow : float or None
        Ground snow of one of the table's columns; None where the header carries no roof [MPa].

    Returns
    -------
    HeaderSpan
        Span, what governs it, and jack studs at each end [mm, -].

    Raises
    ------
    OutsideRule
        When the building or its snow is outside the table.

    Notes
    -----
    The table's top edge is held sideways; where it is not, see `unheld_header_span`.

    Examples
    --------
    >>> roof = find_header_basis("R602.7(1) roof")
    >>> cell = header_span(roof, "2-2x6", building_width=36*ft, ground_snow=30*psf)
    >>> as_printed(cell.span), cell.jack_studs
    ('3-10', 1)
    """
    plies, piece, material = _header(basis, size)
    loads = header_loads(basis, building_width=building_width, ground_snow=ground_snow)
    width = plies_width(ply_width=piece.width, plies=plies)
    modulus = rectangle_section_modulus(width=width, depth=piece.depth)
    spans, used, asked = [], (), [load for load in loads if load.bends]
    for load in asked:
        value, used = bending_value(
            material,
            width=width,
            depth=piece.depth,
            plies=plies,
            ply_width=piece.width,
            unbraced_length=0.0,
            time_factor=load.time_factor,
            sharing_members=1,
        )
        value = float(value) * basis.shares[plies - 1]
        spans.append(bending_span(load=load.line_load, moment_capacity=value * modulus))
    names = numpy.array([load.name for load in asked])
    spans = numpy.array([numpy.asarray(span, dtype=float) for span in spans])
    first = numpy.argmin(spans, axis=0)
    by_bending, governs = numpy.min(spans, axis=0), names[first]
    greatest = _greatest(loads)
    by_sag = numpy.full(numpy.shape(by_bending), numpy.inf)
    if basis.total_divisor:
        stiffness = formulas.bending_stiffness(
            modulus=material.modulus, inertia=rectangle_inertia(width=width, depth=piece.depth)
        )
        by_sag = numpy.asarray(deflection_span(load=_greatest(asked), stiffness=stiffness, divisor=basis.total_divisor))
    span, governs = numpy.minimum(by_bending, by_sag), numpy.where(by_sag < by_bending, "sag", governs)
    studs = jack_studs(
        reaction=formulas.simple_uniform_reaction(line_load=greatest, span=span),
        width=width,
        bearing_value=basis.bearing,
    )
    out = (lambda number: number.item()) if numpy.ndim(span) == 0 else (lambda number: number)
    own = Factor("C_r", basis.shares[plies - 1], "the table's own factor for its plies", basis.table, basis.verified)
    used = tuple(factor for factor in used if factor.symbol not in ("C_D", "C_r")) + (own,)
    return HeaderSpan(
        out(span),
        out(numpy.asarray(governs)),
        _at_least_printed(studs.count, basis, size, building_width, ground_snow),
        out(greatest),
        out(by_bending),
        out(by_sag),
        used,
        least_verified([basis.verified, material.verified, *(factor.verified for factor in used)]),
    )


def _greatest(loads):
    return numpy.max(numpy.array([numpy.asarray(load.line_load, dtype=float) for load in loads]), axis=0)


def _at_least_printed(count, basis, size, width, snow):
    """A count is never below a printed one of the same header in a building that is no wider."""
    for cell in header_cells(basis):
        same = cell["size"] == size and cell["jack_studs"] is not None
        if same and (snow is None or abs(cell["ground_snow_psf"] * psf - snow) <= 1e-6 * snow):
            reached = numpy.asarray(width) >= cell["building_width_ft"] * ft * (1 - _EVEN)
            count = numpy.where(reached, numpy.maximum(count, int(cell["jack_studs"])), count)
    return count if numpy.ndim(count) else int(count)


def unheld_header_span(span, size):
    """Return the span of a header whose top edge nothing holds sideways.

    Parameters
    ----------
    span : float or numpy.ndarray
        Span from the table [mm].
    size : str
        Plies and size, for example ``2-2x10`` [-].

    Returns
    -------
    float or numpy.ndarray
        Span; 0.70 of the table's for 2x8 and deeper, all of it for 2x4 and 2x6 [mm].

    Notes
    -----
    IRC 2018/2021 Table R602.7(1) footnote f.

    Examples
    --------
    >>> round(unheld_header_span(10 * ft, "2-2x10") / ft, 6), unheld_header_span(5 * ft, "2-2x6") / ft
    (7.0, 5.0)
    """
    check_number("span", span, low=0.0, high=60 * ft, low_allowed=False, shown=length_text, hint="for example 6*ft")
    _, piece = _split(size)
    share = factors.scalar("header_unbraced_share") if piece.depth > factors.dressed_of(6) * (1 + _EVEN) else 1.0
    return numpy.asarray(span) * share if numpy.ndim(span) else span * share


def left_out_of_header(basis, size, *, building_width, ground_snow=None):
    """Return the checks that a header table leaves out, at the span it gives, not rounded.

    Parameters
    ----------
    basis : HeaderBasis
        The table [-].
    size : str
        Plies and size [-].
    building_width : float
        Width of the building across the ridge [mm].
    ground_snow : float or None
        Ground snow of one of the table's columns [MPa].

    Returns
    -------
    tuple of structlib.rules.check.Check
        Shear near the end, bending with the ordinary factor for plies, sag under what comes and goes, and sag
        under all load; none decides [-].

    Raises
    ------
    OutsideRule
        When the building or its snow is outside the table.

    Notes
    -----
    NDS 2018 3.4.2 (the whole push of the jack studs counts), 4.3.9 (1.0 for two plies, where the table
    takes 1.1);
    IRC Table R301.7 and IBC Table 1604.3 as for a floor.

    Examples
    --------
    >>> roof = find_header_basis("R602.7(1) roof")
    >>> found = left_out_of_header(roof, "2-2x12", building_width=24*ft, ground_snow=70*psf)
    >>> [(one.name, round(one.share, 2)) for one in found][:2]
    [('shear', 0.72), ('bending, ordinary factors', 1.1)]
    """
    check_one_number(
        "building width", building_width, low=0.0, high=200 * ft, shown=length_text, hint="for example 24*ft"
    )
    cell = header_span(basis, size, building_width=building_width, ground_snow=ground_snow)
    plies, piece, material = _header(basis, size)
    loads = header_loads(basis, building_width=building_width, ground_snow=ground_snow)
    width = plies_width(ply_width=piece.width, plies=plies)
    shared = {"span": cell.span, "table": basis.table}

    shear = max((_shear(load, material, width, piece.depth, shared) for load in loads), key=lambda one: one.share)
    bent = max((_bending(load, material, width, piece, plies, shared) for load in loads), key=lambda one: one.share)
    stiffness = formulas.bending_stiffness(
        modulus=material.modulus, inertia=rectangle_inertia(width=width, depth=piece.depth)
    )
    live = factors.deflection_rows()["floor"]
    total, clause, verified = factors.total_limit()
    passing = max(loads, key=lambda load: load.passing)
    most = max(loads, key=lambda load: load.line_load)
    return (
        shear,
        bent,
        _sag(
            "sag under live or snow",
            passing.name,
            passing.passing,
            stiffness,
            live["divisor"],
            live["clause"],
            live["verified"],
            material,
            shared,
        ),
        _sag(
            "sag under all load",
            most.name,
            most.line_load,
            stiffness,
            total,
            clause,
            verified,
            material,
            shared,
        ),
    )


def _shear(load, material, width, depth, shared):
    push = formulas.simple_uniform_reaction(line_load=load.line_load, span=shared["span"])
    stress = formulas.rectangle_shear_stress(shear=push, width=width, depth=depth)
    given = material.shear * load.time_factor
    return _record(
        "shear",
        "shear",
        "the fibres slide along each other near the jack studs",
        stress,
        given,
        "stress",
        0.0,
        load.name,
        "NDS 2018 3.4.2",
        "f_v = 3 V / (2 b d) <= F_v' = F_v C_D",
        (
            ("V", push, "force"),
            ("b", width, "section length"),
            ("d", depth, "section length"),
            ("F_v'", given, "stress"),
        ),
        [material.verified],
    )


def _bending(load, material, width, piece, plies, shared):
    value, used = bending_value(
        material,
        width=width,
        depth=piece.depth,
        plies=plies,
        ply_width=piece.width,
        unbraced_length=0.0,
        time_factor=load.time_factor,
    )
    moment = formulas.simple_uniform_moment(line_load=load.line_load, span=shared["span"])
    modulus = rectangle_section_modulus(width=width, depth=piece.depth)
    stress = formulas.bending_stress(moment=moment, section_modulus=modulus)
    return _record(
        "bending, ordinary factors",
        "bending",
        "the table takes its own factor for two plies; this is the check without it",
        stress,
        float(value),
        "stress",
        shared["span"] / 2,
        load.name,
        "NDS 2018 3.3.1, 4.3.9",
        "f_b = M / S <= F_b' = F_b * factors",
        (("M", moment, "moment"), ("S", modulus, "section modulus"), ("F_b'", float(value), "stress")),
        [material.verified, *(factor.verified for factor in used)],
        used,
    )


def _sag(name, combination, load, stiffness, divisor, clause, verified, material, shared):
    span = shared["span"]
    sag = formulas.simple_uniform_deflection(line_load=load, span=span, bending_stiffness=stiffness)
    return _record(
        name,
        "sag",
        "the table asks no sag; this is the limit of a floor",
        sag,
        span / divisor,
        "small length",
        span / 2,
        combination,
        clause,
        f"sag <= span / {divisor:.0f}",
        (("sag", sag, "small length"), ("span", span, "length")),
        [verified, material.verified],
    )


def _record(
    name,
    kind,
    sentence,
    asked,
    given,
    dimension,
    position,
    combination,
    clause,
    formula,
    substitute,
    known,
    used=(),
):
    return Check(
        name=name,
        kind=kind,
        sentence=sentence,
        asked=float(asked),
        given=float(given),
        share=float(asked / given),
        dimension=dimension,
        position=float(position),
        where="at the span that the table gives",
        combination=combination,
        clause=clause,
        formula=formula,
        substitute=substitute,
        factors=used,
        verified=least_verified(known),
        decides=False,
    )


def _header(basis, size):
    check_basis(basis)
    check_choice(f"size of {basis.table}", size, basis.sizes)
    plies, piece = _split(size)
    return plies, piece, find_material(basis.species, basis.grade, piece.nominal)


def _split(size):
    match = re.fullmatch(r"([1-4])-(2x\d+)", size) if isinstance(size, str) else None
    if not match:
        raise BadInput(f"{size!r} is not a header size; write plies and size, for example 2-2x10")
    return int(match[1]), table_size(match[2])


def _checked_width(basis, width):
    if is_symbolic(width):
        raise BadInput(f"building width must be a number, got the symbol {width}; for example 24*ft")
    check_number("building width", width, low=1 * ft, high=200 * ft, shown=length_text, hint="for example 24*ft")
    width = numpy.asarray(width, dtype=float) if numpy.ndim(width) else float(width)
    low, high = min(basis.widths), max(basis.widths)
    if numpy.any(width < low * (1 - _EVEN)) or numpy.any(width > high * (1 + _EVEN)):
        raise OutsideRule(
            f"{basis.table} covers buildings {length_text(low)} to {length_text(high)} wide, got "
            f"{length_text(float(numpy.max(width)))}; between its columns it may be interpolated, past them "
            "a header is engineered"
        )
    return width


def _checked_snow(basis, snow):
    if not basis.snows:
        if snow is not None:
            raise BadInput(f"{basis.table} for {basis.supports} takes no snow; leave ground_snow out")
        return 0.0
    if snow is None:
        raise BadInput(f"{basis.table} goes by ground snow; give it, for example ground_snow=30*psf")
    check_one_number("ground snow", snow, low=0.0, high=1000 * psf, shown=psf_text, hint="for example 30*psf")
    for column in basis.snows:
        if abs(snow - column) <= 1e-6 * column:
            return column
    if any(abs(snow - column) <= 1e-6 * column for column in basis.unknown_snows):
        raise OutsideRule(
            f"the {psf_text(snow)} column of {basis.table} for {basis.supports} is not made again here: what "
            "it assumes is not known; read the printed table"
        )
    listed = ", ".join(psf_text(column) for column in sorted((*basis.snows, *basis.unknown_snows)))
    raise OutsideRule(
        f"{basis.table} has columns for {listed} of ground snow, got {psf_text(snow)}; under the first take "
        "the first (where the roof live load is 20 psf or less), between two the heavier one, over the last "
        "ask the engineer"
    )
