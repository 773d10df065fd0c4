"""The lumber of a span table: which design values and which dressed size stand behind a row and a column."""

import re
from dataclasses import replace
from functools import cache

from structlib.ground.lumber import find_material, materials
from structlib.ground.refusals import check_choice
from structlib.ground.sizes import stock_sizes
from structlib.ground.tables import in_library_units, table_rows
from structlib.ground.units import inch  # noqa: F401 (used in the examples)
from structlib.rules.us import factors
from structlib.rules.us.span_table_bases import CURRENT, refuse_no_basis


def table_material(basis, species, grade, nominal):
    """Find the design values that a span table uses for one of its rows and sizes.

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

    Returns
    -------
    structlib.ground.lumber.Material
        The design values [-].

    Notes
    -----
    Some values are published for two grades at once ('No.1/No.2', 'No.3 and Stud'); they hold for either.

    Examples
    --------
    >>> from structlib.ground.units import psi
    >>> from structlib.rules.us.span_table_bases import find_basis
    >>> for name in ("R502.3.1(2) dead 10", "R502.3.1(2) dead 10, 2012"):
    ...     print(round(table_material(find_basis(name), "Douglas Fir-Larch", "No.2", "2x8").bending / psi))
    900
    875
    """
    refuse_no_basis(basis)
    check_choice(f"species of {basis.table}", species, basis.species)
    check_choice(f"grade of {basis.table}", grade, basis.grades)
    check_choice(f"size of {basis.table}", nominal, basis.sizes)
    material = find_material(species, _published_grade(species, grade), nominal)
    row = _older_values(basis.design_values).get((species, grade))
    if row is None:
        return material
    return replace(
        material,
        bending=in_library_units(row, "Fb_psi"),
        name=f"{material.name}, {basis.design_values} values",
        source=row["source"],
        verified=row["verified"],
        note=row["note"],
    )


@cache
def _published_grade(species, grade):
    published = dict.fromkeys(
        one.grade for kind in ("dimension", "southern pine") for one in materials(kind) if one.species == species
    )
    shared = (one for one in published if grade in re.split(r"/| and ", one))
    return grade if grade in published else next(shared, grade)


@cache
def _older_values(design_values):
    if design_values == CURRENT:
        return {}
    return {
        (row["species"], row["grade"]): row
        for row in table_rows("us_span_table_design_values")
        if row["design_values"] == design_values
    }


def table_size(nominal):
    """Find the dressed size of a nominal size, as span tables use it.

    Parameters
    ----------
    nominal : str
        Nominal size, 2 in thick, for example ``2x10`` [-].

    Returns
    -------
    structlib.ground.sizes.Stock
        The size [-].

    Examples
    --------
    >>> table_size("2x10").depth / inch
    9.25
    """
    return _sizes()[check_choice("size", nominal, _sizes())]


@cache
def _sizes():
    return {one.nominal: one for one in stock_sizes("dimension", thickness=2, special_order=True)}


def sharing_members(basis):
    """Return the count of members that a basis lets share the load.

    Parameters
    ----------
    basis : structlib.rules.us.span_table_bases.TableBasis
        The table [-].

    Returns
    -------
    int
        The least count that earns the repetitive member factor, or 1 where it is not used [-].

    Examples
    --------
    >>> from structlib.rules.us.span_table_bases import find_basis
    >>> sharing_members(find_basis("R802.5.1(1)"))
    3
    """
    return int(factors.scalar("repetitive_member_least_count")) if refuse_no_basis(basis).repetitive else 1
