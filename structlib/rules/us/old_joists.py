"""A joist as measured, put to today's design values: what share of bending, shear and sag it uses.

Published design values belong to graded lumber of today's sizes. An old joist has no stamp. So a value here
is a comparison with a grade, for planning; which grade the old wood would be, a grader or an engineer says.
"""

from dataclasses import dataclass

from structlib.ground.lumber import find_material, materials
from structlib.ground.measured_sections import MeasuredSection
from structlib.ground.refusals import BadInput, OutsideRule
from structlib.ground.showing import show
from structlib.ground.units import ft, inch
from structlib.mechanics import formulas
from structlib.rules.check import least_verified
from structlib.rules.us import factors
from structlib.rules.us.bending import bending_value
from structlib.rules.us.deflection import limit_divisor
from structlib.rules.us.one_number import check_one_number

GRADES = ("Select Structural", "No.1", "No.1/No.2", "No.2", "No.3")


@dataclass(frozen=True)
class OldJoistShares:
    """Shares of what one wood gives: ``bending``, ``shear``, and live ``sag`` against its limit [-], with the
    values
    behind them: bending stress and value, shear stress and value [MPa], live sag [mm] and n of L/n."""

    wood: object
    bending: float
    shear: float
    sag: float
    bending_stress: float
    bending_value: float
    shear_stress: float
    shear_value: float
    live_sag: float
    ratio: float
    verified: str

    @property
    def greatest(self):
        """The greatest of the three shares [-]."""
        return max(self.bending, self.shear, self.sag)

    @property
    def governs(self):
        """Which of the three it is [-]."""
        return max(("bending", "shear", "sag"), key=lambda name: getattr(self, name))


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

    Raises
    ------
    BadInput
        When a size is not in its range.

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
        words = "Beams & Stringers" if max(width, depth) - min(width, depth) > 2 * inch else "Posts & Timbers"
        return tuple(
            wood
            for wood in materials("timber")
            if wood.name.endswith(words) or wood.species == "Southern Pine"
        )
    sawn = [wood for wood in materials("dimension") if wood.grade in GRADES]
    nominal = float(factors.nominal_of(max(width, depth)))
    graded = dict.fromkeys(wood.grade for wood in materials("southern pine") if wood.grade in GRADES)
    pine = [find_material("Southern Pine", grade, f"2x{int(nominal)}") for grade in graded]
    return tuple(sawn + pine)


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


def old_joist_shares(wood, section, *, span, spacing, dead, live, divisor=None, plies=1):
    """Shares of bending, shear and live sag that an old joist uses, if it is of the wood and grade given.

    Parameters
    ----------
    wood : structlib.ground.material.Material
        The wood and grade that it is compared with [-].
    section : structlib.ground.measured_sections.MeasuredSection
        One piece as measured [-].
    span : float
        Simple span, 2 to 40 ft [mm].
    spacing : float
        Spacing on center, 4 to 96 in [mm].
    dead : float
        Weight of the floor, its joists with it [MPa].
    live : float
        Live load [MPa].
    divisor : float
        n of the sag limit L/n; None for the code's for floors [-].
    plies : int
        Like pieces side by side, 1 to 4 [-].

    Returns
    -------
    OldJoistShares
        Shares and the values behind them [-].

    Raises
    ------
    BadInput
        When an input is not a number in its range.
    OutsideRule
        When the wood has no values for a piece of this size.

    Notes
    -----
    NDS 2018 4.3 with size factor, repetitive factor for joists 24 in or closer, and ten years of load. For
    round and hewn shapes the values of sawn lumber of the same overall size are a comparison only: logs have
    rules of their own. Shear is V Q / (I b) (NDS 2018 3.4.2), over the whole span.

    Examples
    --------
    >>> from structlib.ground.measured_sections import measured_section
    >>> from structlib.ground.units import psf
    >>> joist = measured_section("sawn", width=2*inch, depth=8*inch)
    >>> found = old_joist_shares(find_material("Eastern White Pine", "No.2"), joist,
    ...     span=13*ft, spacing=16*inch, dead=10*psf, live=30*psf)
    >>> found.governs, round(found.greatest, 2)
    ('bending', 0.87)
    """
    if not isinstance(section, MeasuredSection):
        raise BadInput(f"a section must come from measured_section, got {type(section).__name__}")
    check_one_number("span", span, low=2 * ft, high=40 * ft, shown=lambda mm: show(mm, "length"))
    check_one_number(
        "spacing", spacing, low=4 * inch, high=96 * inch, shown=lambda mm: show(mm, "section length")
    )
    check_one_number("dead load", dead, low=0.0, high=0.1)
    check_one_number("live load", live, low=0.0, high=0.1, low_allowed=False)
    check_one_number("pieces side by side", plies, low=1, high=4)
    if divisor is None:
        divisor = limit_divisor("floor")[0]
    check_one_number("sag limit n of L/n", divisor, low=60, high=2000, hint="for example 360")
    value, known = _bending_value(wood, section, spacing, plies)
    passing, whole = live * spacing, (dead + live) * spacing
    modulus = section.section_modulus * plies
    stress = formulas.bending_stress(
        moment=formulas.simple_uniform_moment(line_load=whole, span=span), section_modulus=modulus
    )
    shear = (
        formulas.simple_uniform_reaction(line_load=whole, span=span)
        / (section.area * plies)
        * (section.shear_ratio)
    )
    sag = formulas.simple_uniform_deflection(
        line_load=passing, span=span, bending_stiffness=wood.modulus * section.inertia * plies
    )
    return OldJoistShares(
        wood=wood,
        bending=stress / value,
        shear=shear / wood.shear,
        sag=sag * divisor / span,
        bending_stress=stress,
        bending_value=value,
        shear_stress=shear,
        shear_value=wood.shear,
        live_sag=sag,
        ratio=span / sag,
        verified=known,
    )


def _bending_value(wood, section, spacing, plies):
    """Bending value of the wood for a piece of this overall size, laid on edge in the tables."""
    thin, deep = sorted((section.width, section.depth))
    thick = factors.dressed_of(4)
    if thick < thin < factors.dressed_of(5) * (1 - 1e-9):
        thin = thick
    together = spacing <= factors.length("repetitive_member_greatest_spacing") * (1 + 1e-9)
    sharing = int(factors.scalar("repetitive_member_least_count")) if together else plies
    value, used = bending_value(
        wood,
        width=thin * plies,
        depth=deep,
        plies=plies,
        ply_width=thin,
        unbraced_length=0.0,
        time_factor=1.0,
        sharing_members=sharing,
    )
    return float(value), least_verified([wood.verified, *(one.verified for one in used)])


def compared_woods(section, *, span, spacing, dead, live, divisor=None, plies=1, woods=None):
    """Shares of one joist for every candidate wood and grade, the best first.

    Parameters
    ----------
    section : structlib.ground.measured_sections.MeasuredSection
        One piece as measured [-].
    span : float
        Simple span [mm].
    spacing : float
        Spacing on center [mm].
    dead : float
        Weight of the floor [MPa].
    live : float
        Live load [MPa].
    divisor : float
        n of the sag limit L/n; None for the code's for floors [-].
    plies : int
        Like pieces side by side [-].
    woods : iterable of structlib.ground.material.Material
        Woods to compare; None for every candidate of the size [-].

    Returns
    -------
    tuple of OldJoistShares
        By greatest share, least first [-].

    Raises
    ------
    BadInput
        When an input is not a number in its range.
    OutsideRule
        When no wood has values for a piece of this size.

    Examples
    --------
    >>> from structlib.ground.measured_sections import measured_section
    >>> from structlib.ground.units import psf
    >>> joist = measured_section("sawn", width=2*inch, depth=8*inch)
    >>> found = compared_woods(joist, span=13*ft, spacing=16*inch, dead=10*psf, live=30*psf)
    >>> found[0].wood.name, round(found[0].greatest, 2), found[-1].wood.name, round(found[-1].greatest, 2)
    ('Douglas Fir-Larch Select Structural', 0.37, 'Northern Species No.3', 1.43)
    """
    if woods is None:
        woods = candidate_woods(
            width=min(section.width, section.depth), depth=max(section.width, section.depth)
        )
    found, refused = [], None
    for wood in woods:
        try:
            found.append(
                old_joist_shares(
                    wood,
                    section,
                    span=span,
                    spacing=spacing,
                    dead=dead,
                    live=live,
                    divisor=divisor,
                    plies=plies,
                )
            )
        except OutsideRule as trouble:
            refused = trouble
    if not found:
        raise refused or OutsideRule("no wood has published values for a piece of this size")
    return tuple(sorted(found, key=lambda one: one.greatest))
