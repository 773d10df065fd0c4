"""Span tables of joists and rafters, made as the published ones are: bending and live-load deflection only.

No formula is written here. A simple span under an even load has a moment that grows with the square of the
span and a deflection that grows with its fourth power, so what one millimetre of span gives tells the span at
which a limit is reached.
"""

import math
from dataclasses import dataclass
from itertools import product

import numpy

from structlib.ground.loads import line_load
from structlib.ground.refusals import BadInput, check_number, is_symbolic
from structlib.ground.roots import square_root
from structlib.ground.sections import rectangle_inertia, rectangle_section_modulus
from structlib.ground.showing import show
from structlib.ground.units import inch
from structlib.mechanics.formulas import bending_stiffness, simple_uniform_deflection, simple_uniform_moment
from structlib.rules.check import Factor, least_verified
from structlib.rules.us.bending import bending_value
from structlib.rules.us.inputs import check_amount, check_member_length, check_words

# One room for its callers: the bases and the printed cells are found here too.
from structlib.rules.us.span_table_bases import (  # noqa: F401
    TableBasis,
    find_basis,
    printed_cells,
    printed_length,
    refuse_no_basis,
    table_bases,
)
from structlib.rules.us.span_table_lumber import sharing_members, table_material, table_size


@dataclass(frozen=True)
class TableSpan:
    """One cell of a span table, not rounded. Lengths in mm, ``bending_value`` in MPa.

    ``span`` is the shorter of the two spans and ``governs`` says which, 'bending' or 'deflection'; arrays
    where the spacing was one. ``factors`` made the bending value, ``verified`` is how well the design values
    and factors are known.
    """

    span: float
    governs: str
    bending_span: float
    deflection_span: float
    bending_value: float
    factors: tuple[Factor, ...]
    verified: str


def bending_span(*, load, moment_capacity):
    """Return the simple span at which an even load uses a member's whole bending strength.

    Parameters
    ----------
    load : float, numpy.ndarray or sympy expression
        Line load, dead and live [N/mm].
    moment_capacity : float, numpy.ndarray or sympy expression
        Bending value times section modulus [N*mm].

    Returns
    -------
    float, numpy.ndarray or sympy expression
        Span [mm].

    Examples
    --------
    >>> bending_span(load=2.0, moment_capacity=9.0)
    6.0
    """
    check_amount("line load", load, hint="for example 50*plf")
    check_amount("moment capacity", moment_capacity, hint="for example 2000*lb*ft")
    return square_root(moment_capacity / simple_uniform_moment(line_load=load, span=1))


def deflection_span(*, load, stiffness, divisor):
    """Return the simple span at which an even load deflects a member by span/divisor.

    Parameters
    ----------
    load : float, numpy.ndarray or sympy expression
        Line load that the limit is on [N/mm].
    stiffness : float, numpy.ndarray or sympy expression
        Bending stiffness, EI [N*mm^2].
    divisor : float or sympy expression
        n of the limit span/n [-].

    Returns
    -------
    float, numpy.ndarray or sympy expression
        Span [mm].

    Examples
    --------
    >>> round(deflection_span(load=2.0, stiffness=3.375, divisor=0.6), 9)
    6.0
    """
    check_amount("line load", load, hint="for example 40*plf")
    check_amount("bending stiffness", stiffness, hint="for example 158e6*psi*inch**4")
    check_amount("deflection divisor", divisor, hint="for example 360")
    # deflection(span) = of_one * span^4 = span / divisor
    of_one = simple_uniform_deflection(line_load=load, span=1, bending_stiffness=stiffness)
    return _cube_root(1 / (divisor * of_one))


def _cube_root(value):
    if is_symbolic(value):
        import sympy

        return sympy.cbrt(value)
    root = numpy.cbrt(value)
    return root if numpy.ndim(root) else float(root)


def span_limit(basis, species, grade, nominal, spacing):
    """Return the clear span that a span table allows, not rounded, and what governs it.

    Parameters
    ----------
    basis : structlib.rules.us.span_table_bases.TableBasis
        The table [-].
    species : str
        A species of the table [-].
    grade : str
        A grade of the table [-].
    nominal : str
        A size of the table [-].
    spacing : float or numpy.ndarray
        Spacing center to center, from the thickness of a joist to the widest of the table [mm].

    Returns
    -------
    TableSpan
        The span from bending under dead and live load, from deflection under live load alone, and the
        shorter of the two; horizontal for a rafter, and with no length of bearing added [mm].

    Notes
    -----
    The limit of 26 ft that some tables print is not applied here but by `as_printed`.

    Examples
    --------
    >>> cell = span_limit(find_basis("R502.3.1(2) dead 10"), "Spruce-Pine-Fir", "No.2", "2x10", 16 * inch)
    >>> as_printed(cell.span), cell.governs
    ('15-5', 'bending')
    """
    material, size = table_material(basis, species, grade, nominal), table_size(nominal)
    _check_spacing(basis, spacing, size.width)
    spacing = numpy.asarray(spacing, dtype=float) if numpy.ndim(spacing) else float(spacing)
    value, used = bending_value(
        material,
        width=size.width,
        depth=size.depth,
        plies=1,
        ply_width=size.width,
        unbraced_length=0.0,
        time_factor=basis.time_factor,
        sharing_members=sharing_members(basis),
    )
    value = float(value)
    by_bending = bending_span(
        load=line_load(basis.dead + basis.live, tributary_width=spacing),
        moment_capacity=value * rectangle_section_modulus(width=size.width, depth=size.depth),
    )
    by_deflection = deflection_span(
        load=line_load(basis.live, tributary_width=spacing),
        divisor=basis.deflection_divisor,
        stiffness=bending_stiffness(
            modulus=material.modulus, inertia=rectangle_inertia(width=size.width, depth=size.depth)
        ),
    )
    governs = numpy.where(by_bending <= by_deflection, "bending", "deflection")
    span = numpy.minimum(by_bending, by_deflection)
    if numpy.ndim(spacing) == 0:
        governs, span = str(governs), float(span)
    return TableSpan(
        span,
        governs,
        by_bending,
        by_deflection,
        value,
        used,
        least_verified([material.verified] + [factor.verified for factor in used]),
    )


def _check_spacing(basis, spacing, joist_width):
    """Joists stand at least side by side, and at most as far apart as the widest spacing of the table."""
    _refuse_symbol("spacing", spacing)
    check_number(
        "spacing",
        spacing,
        low=joist_width,
        high=max(basis.spacings) * (1 + 1e-9),
        shown=lambda length: show(length, "section length"),
        hint="for example 16*inch",
    )


def _refuse_symbol(name, value):
    if is_symbolic(value):
        raise BadInput(f"{name} must be a number to make a table, got the symbol {value}; for example 16*inch")


def as_printed(span, *, greatest_span=None):
    """Write a span as the tables print it: feet and inches, to the nearest inch.

    Parameters
    ----------
    span : float or numpy.ndarray
        Span, not rounded [mm].
    greatest_span : float
        Longest span that the table prints; None for no limit [mm].

    Returns
    -------
    str or list of str
        For example ``13-9``, or ``>26-0`` for a span over the greatest; a list for an array [-].

    Notes
    -----
    An exact half inch is written as the lower inch, the careful one. Publications go both ways there, so no
    rule of theirs is claimed.

    Examples
    --------
    >>> from structlib.ground.units import ft
    >>> as_printed(164.6 * inch), as_printed(165.4 * inch), as_printed(28 * ft, greatest_span=26 * ft)
    ('13-9', '13-9', '>26-0')
    """
    _refuse_symbol("span", span)
    check_member_length("span", span)
    if greatest_span is not None:
        check_member_length("greatest span", greatest_span, zero=False)
    texts = [_feet_inches(one, greatest_span) for one in numpy.ravel(span).astype(float).tolist()]
    return texts if numpy.ndim(span) else texts[0]


def _feet_inches(span, greatest_span):
    over = greatest_span is not None and span > greatest_span * (1 + 1e-9)
    # at an exact half the careful side, give or take the last digits of a float
    feet, inches = divmod(max(0, math.ceil((greatest_span if over else span) / inch - 0.5 - 1e-9)), 12)
    return f"{'>' if over else ''}{feet}-{inches}"


def make_table(basis, *, species=None, grades=None, sizes=None, spacings=None):
    """Make a whole span table, or a part of it, as rows of text.

    Parameters
    ----------
    basis : structlib.rules.us.span_table_bases.TableBasis
        The assumptions [-].
    species : iterable of str
        Species of the table; all of them when None [-].
    grades : iterable of str
        Grades of the table; all when None [-].
    sizes : iterable of str
        Sizes of the table; all when None [-].
    spacings : iterable of float
        Spacings; those of the table when None [mm].

    Returns
    -------
    tuple of tuple of str
        A row of headings, then one row for each spacing, species and grade [ft-in].

    Examples
    --------
    >>> for row in make_table(find_basis("R502.3.1(2) dead 10"), species=["Spruce-Pine-Fir"],
    ...                       grades=["No.2", "No.3"], sizes=["2x8", "2x10"], spacings=[16 * inch]):
    ...     print(row)
    ('spacing, in', 'species', 'grade', '2x8', '2x10')
    ('16', 'Spruce-Pine-Fir', 'No.2', '12-3', '15-5')
    ('16', 'Spruce-Pine-Fir', 'No.3', '9-6', '11-8')
    """
    refuse_no_basis(basis)
    species = _wanted("species", species, basis.species)
    grades = _wanted("grades", grades, basis.grades)
    sizes = _wanted("sizes", sizes, basis.sizes)
    spacings = basis.spacings if spacings is None else spacings
    _check_spacing(basis, spacings, max(table_size(size).width for size in sizes))
    spacings = numpy.ravel(numpy.asarray(spacings, dtype=float))
    texts = {
        row: as_printed(span_limit(basis, *row, spacings).span, greatest_span=basis.greatest_span)
        for row in product(species, grades, sizes)
    }
    rows = [("spacing, in", "species", "grade", *sizes)]
    for place, spacing in enumerate(spacings):
        for kind, grade in product(species, grades):
            cells = (texts[kind, grade, size][place] for size in sizes)
            rows.append((f"{spacing / inch:g}", kind, grade, *cells))
    return tuple(rows)


def _wanted(name, words, listed):
    words = list(listed if words is None else check_words(name, words))
    if not words:
        raise BadInput(f"{name} must not be empty; this table lists {', '.join(listed)}")
    return words
