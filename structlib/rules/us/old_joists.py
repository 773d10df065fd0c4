"""Today's design values for a joist as measured: which woods it may be of, and what each gives a piece of its size.

Published design values belong to graded lumber of today's sizes. An old joist has no stamp. So a value here
is a comparison with a grade, for planning; which grade the old wood would be, a grader or an engineer says.
"""

from dataclasses import dataclass
from functools import cache, cached_property, lru_cache
from math import prod
from typing import Any

import numpy

from structlib.ground.lumber import find_material, materials
from structlib.ground.refusals import OutsideRule, check_choice
from structlib.ground.showing import show
from structlib.ground.units import ft, inch  # noqa: F401 (ft: in examples)
from structlib.rules.check import least_verified
from structlib.rules.us import factors
from structlib.rules.us.bending import bending_value
from structlib.rules.us.one_number import check_one_number

GRADES = ("Select Structural", "No.1", "No.1/No.2", "No.2", "No.3")


@dataclass(frozen=True)
class WoodValues:
    """The woods that a joist may be of, and what each gives for ten years of load, as arrays [MPa]; how each is known."""

    woods: tuple
    bending: Any
    shear: Any
    modulus: Any
    verified: tuple

    @cached_property
    def least_known(self):
        """The least well known of all values."""
        return least_verified(self.verified)

    @cached_property
    def lowest_grade(self):
        """The lowest grade listed: wood below it has no published values."""
        return max((wood.grade for wood in self.woods), key=GRADES.index)


def candidate_woods(*, width, depth):
    """List the woods with published values for a member of a size: every species, joist grades only.

    Parameters
    ----------
    width : float
        Width of one piece, 1.5 in or more [mm].
    depth : float
        Depth, at least the width [mm].

    Returns
    -------
    tuple of structlib.ground.material.Material
        Dimension lumber up to 4 in thick, timbers from there; Southern Pine for the size [-].

    Notes
    -----
    A piece of 3 1/2 to 4 1/2 in, full-sawn 4 in for example, is counted as 4 in nominal.

    Examples
    --------
    >>> len({wood.species for wood in candidate_woods(width=2*inch, depth=8*inch)})
    9
    """
    check_one_number(
        "width",
        width,
        low=1.5 * inch * (1 - 1e-9),
        high=24 * inch,
        shown=lambda mm: show(mm, "section length"),
        hint="for example 2*inch",
    )
    check_one_number(
        "depth",
        depth,
        low=1.5 * inch * (1 - 1e-9),
        high=48 * inch,
        shown=lambda mm: show(mm, "section length"),
        hint="for example 8*inch",
    )
    if min(width, depth) >= factors.dressed_of(5) * (1 - 1e-9):
        return _timbers("Beams & Stringers" if max(width, depth) - min(width, depth) > 2 * inch else "Posts & Timbers")
    return _dimension(int(factors.nominal_of(max(width, depth))))


@cache
def _timbers(words):
    return tuple(wood for wood in materials("timber") if wood.name.endswith(words) or wood.species == "Southern Pine")


@cache
def _dimension(nominal):
    sawn = [wood for wood in materials("dimension") if wood.grade in GRADES]
    graded = dict.fromkeys(wood.grade for wood in materials("southern pine") if wood.grade in GRADES)
    return tuple(sawn + [find_material("Southern Pine", grade, f"2x{nominal}") for grade in graded])


def size_jumps():
    """List the sizes past which the size factor of sawn lumber jumps.

    Returns
    -------
    tuple of float
        The dressed sizes of today's lumber, rising [mm].

    Notes
    -----
    A piece a hair deeper than a dressed size counts as the next nominal one, with its smaller factor.

    Examples
    --------
    >>> 7.25 in [round(size / inch, 4) for size in size_jumps()]
    True
    """
    return factors.dressed_sizes()


@lru_cache(maxsize=256)
def wood_values(section, *, spacing, plies=1, species="", grade=""):
    """Return what every wood gives that a joist may be of.

    Parameters
    ----------
    section : structlib.ground.measured_sections.MeasuredSection
        One piece as measured [-].
    spacing : float
        Spacing on center [mm].
    plies : int
        Like pieces side by side [-].
    species, grade : str
        What is known of its wood; empty where nothing is [-].

    Returns
    -------
    WoodValues
        Woods and values; those without values for a piece of this size are left out [MPa].

    Raises
    ------
    OutsideRule
        When none of the woods meant has values for a piece of this size.

    Notes
    -----
    NDS 2018 4.3 with size factor, and repetitive factor for joists 24 in or closer. For round and hewn shapes the
    values of sawn lumber of the same overall size are a comparison only: logs have rules of their own.

    Examples
    --------
    >>> from structlib.ground.measured_sections import measured_section
    >>> from structlib.ground.units import psi
    >>> joist = measured_section("sawn", width=2*inch, depth=8*inch)
    >>> found = wood_values(joist, spacing=16*inch, species="Eastern White Pine", grade="No.2")
    >>> [round(float(one) / psi, 1) for one in found.bending]  # 575 psi, size factor 1.1, 1.15 for its neighbours
    [727.4]
    """
    if species:
        check_choice("species", species, _species())
    if grade:
        check_choice("grade", grade, GRADES)
    thin, deep = sorted((section.width, section.depth))
    woods = [
        wood for wood in candidate_woods(width=thin, depth=deep)
        if species in ("", wood.species) and grade in ("", wood.grade, *wood.grade.split("/"))
    ]  # fmt: skip
    groups, refused = {}, None
    for wood in woods:  # the factors are those of the table, not of the species
        groups.setdefault((wood.kind, wood.size_factor_group, wood.tabulated_depth), wood)
    for key, wood in groups.items():
        try:
            groups[key] = _factors(wood, thin, deep, spacing, plies)
        except OutsideRule as trouble:
            groups[key], refused = None, trouble
    raised = [groups[wood.kind, wood.size_factor_group, wood.tabulated_depth] for wood in woods]
    kept = [(wood, one) for wood, one in zip(woods, raised) if one is not None]
    if not kept:
        raise _nothing_listed(species, grade, refused)
    return WoodValues(
        tuple(wood for wood, _ in kept),
        numpy.array([prod(one, start=wood.bending) for wood, (one, _) in kept]),  # in the order of `bending_value`
        numpy.array([wood.shear for wood, _ in kept]),
        numpy.array([wood.modulus for wood, _ in kept]),
        tuple(_least_known(wood.verified, known) for wood, (_, known) in kept),
    )


@cache
def _species():
    return sorted({wood.species for kind in ("dimension", "southern pine", "timber") for wood in materials(kind)})


@cache
def _least_known(wood, factors_used):
    return least_verified((wood, *factors_used))


def _nothing_listed(species, grade, refused):
    if not (species or grade):
        return refused or OutsideRule("no wood has published values for a piece of this size")
    return OutsideRule(
        f"No values for {species or f'any wood of {grade}'} in this size are in this library, and those of another wood do "
        "not stand in for it. What it can give, a grader or an engineer says."
    )


def _factors(wood, thin, deep, spacing, plies):
    """The factors on bending for a piece of this overall size, laid on edge in the tables; and how they are known."""
    thick = factors.dressed_of(4)
    if thick < thin < factors.dressed_of(5) * (1 - 1e-9):
        thin = thick
    together = spacing <= factors.length("repetitive_member_greatest_spacing") * (1 + 1e-9)
    sharing = int(factors.scalar("repetitive_member_least_count")) if together else plies
    _, used = bending_value(
        wood, width=thin * plies, depth=deep, plies=plies, ply_width=thin, unbraced_length=0.0, time_factor=1.0,
        sharing_members=sharing,
    )  # fmt: skip
    by_symbol = {one.symbol: float(one.value) for one in used}
    return [by_symbol[one] for one in ("C_D", "C_M", "C_r", "C_F", "C_L")], tuple(one.verified for one in used)
