"""Steel posts: pipe and square tube pressed in the middle, by today's formula and by that of older tables."""

from dataclasses import dataclass
from functools import cache

import numpy

from structlib.ground.refusals import BadInput, OutsideRule, check_choice, check_number
from structlib.ground.sections import round_area, round_inertia
from structlib.ground.tables import in_library_units, table_rows
from structlib.ground.units import ft, inch, ksi, psi
from structlib.mechanics.columns import effective_length, euler_stress, radius_of_gyration, slenderness
from structlib.rules.check import Check, Combination, least_verified
from structlib.rules.us import factors
from structlib.rules.us.inputs import at_most, check_amount
from structlib.rules.us.one_number import check_one_count, check_one_number, inches_text, length_text
from structlib.rules.us.stability import root
from structlib.rules.us.steel_sections import shape_names

METHODS = ("AISC 360-16", "AISC 1989")
_TALLEST = 60 * ft


@dataclass(frozen=True)
class SteelPost:
    """A steel section: outside size [mm], area [mm2], radius of gyration [mm], yield strength [MPa]."""

    section: str
    kind: str
    outside: float
    area: float
    radius: float
    yield_strength: float
    verified: str
    note: str = ""


@dataclass(frozen=True)
class SteelCapacity:
    """What a steel post carries: load [N], allowable stress [MPa], slenderness [-], method."""

    load: float
    stress: float
    slenderness: float
    method: str
    verified: str


@cache
def steel_sections():
    """List the sections for steel posts.

    Returns
    -------
    tuple of str
        Names [-].

    Examples
    --------
    >>> steel_sections()[:2]
    ('NPS 3 std', 'NPS 3-1/2 std')
    """
    return tuple(row["section"] for row in table_rows("us_steel_columns"))


def steel_post(section, *, nominal_wall=False, yield_strength=None):
    """Return a steel section by name.

    Parameters
    ----------
    section : str
        Name in the data file, for example ``NPS 3 std`` [-].
    nominal_wall : bool
        True for a pipe with its full nominal wall, as older tables took it; else the design wall, 0.93 of
        it [-].
    yield_strength : float or None
        Yield strength where it is known; None for the usual one of the kind [MPa].

    Returns
    -------
    SteelPost
        The section [-].

    Raises
    ------
    OutsideRule
        When the nominal wall is asked of a tube, or a W or S shape as a post.

    Examples
    --------
    >>> post = steel_post("NPS 3 std")
    >>> round(post.area / inch**2, 2), round(post.yield_strength / ksi)
    (2.07, 35)
    """
    if section in shape_names():
        raise OutsideRule(f"{section} is a beam here; posts are pipe and square tube, for example NPS 3 std")
    check_choice("steel section", section, steel_sections())
    row = next(row for row in table_rows("us_steel_columns") if row["section"] == section)
    value = lambda column: in_library_units(row, column)  # noqa: E731
    area, radius, verified = value("area_in2"), value("radius_in"), row["verified"]
    if nominal_wall is True:
        if row["kind"] != "pipe":
            raise OutsideRule(f"{section} is no pipe; only the older pipe tables went by the nominal wall")
        area, radius = _ring(value("outside_in"), value("nominal_wall_in"))
    elif nominal_wall is not False:
        raise BadInput(f"nominal_wall must be True or False, got {nominal_wall!r}")
    if yield_strength is None:
        yield_strength, verified = value("yield_psi"), least_verified([verified, "recalled"])
    check_one_number(
        "yield strength",
        yield_strength,
        low=20 * ksi,
        high=80 * ksi,
        hint="for example 36*ksi",
        shown=lambda stress: f"{stress / ksi:g} ksi",
    )
    return SteelPost(section, row["kind"], value("outside_in"), area, radius, yield_strength, verified, row["note"])


def pipe_of_size(*, outside, wall, yield_strength, name="pipe as measured"):
    """Return a round pipe of a measured outside diameter and wall.

    Parameters
    ----------
    outside : float
        Outside diameter, 2 in to 12 in [mm].
    wall : float
        Thickness of the wall [mm].
    yield_strength : float
        Yield strength, 20 to 80 ksi [MPa].
    name : str
        Name to show [-].

    Returns
    -------
    SteelPost
        The section [-].

    Raises
    ------
    OutsideRule
        When the wall is so thin that it would buckle by itself.

    Notes
    -----
    AISC 360-16 Table B4.1a.

    Examples
    --------
    >>> round(pipe_of_size(outside=4.5*inch, wall=0.237*inch, yield_strength=36*ksi).area / inch**2, 3)
    3.174
    """
    check_one_number(
        "outside diameter",
        outside,
        low=2 * inch,
        high=12 * inch,
        shown=inches_text,
        hint="for example 3.5*inch",
    )
    check_one_number(
        "wall",
        wall,
        low=0.0,
        high=0.499 * outside,
        low_allowed=False,
        shown=inches_text,
        hint="for example 0.216*inch",
    )
    check_one_number(
        "yield strength",
        yield_strength,
        low=20 * ksi,
        high=80 * ksi,
        hint="for example 36*ksi",
        shown=lambda stress: f"{stress / ksi:g} ksi",
    )
    thinnest = outside * yield_strength / (factors.scalar("steel_pipe_slender") * _modulus())
    if wall < thinnest:
        raise OutsideRule(
            f"a wall of {wall / inch:.3g} in buckles by itself in a pipe {outside / inch:g} in wide; these "
            "rules "
            f"cover walls of {thinnest / inch:.3g} in and more"
        )
    area, radius = _ring(outside, wall)
    return SteelPost(name, "pipe", outside, area, radius, yield_strength, "computed")


def _ring(outside, wall):
    inside = outside - 2 * wall
    area = round_area(diameter=outside) - round_area(diameter=inside)
    inertia = round_inertia(diameter=outside) - round_inertia(diameter=inside)
    return area, radius_of_gyration(inertia=inertia, area=area)


def _modulus():
    return factors.scalar("steel_modulus") * psi


def allowable_stress_2016(*, slenderness, yield_strength):
    """Return the allowable compression of today's formula.

    Parameters
    ----------
    slenderness : float or numpy.ndarray
        Effective length over radius of gyration, KL/r [-].
    yield_strength : float or numpy.ndarray
        Yield strength [MPa].

    Returns
    -------
    float or numpy.ndarray
        Allowable stress [MPa].

    Notes
    -----
    AISC 360-16 Eqs. E3-2 to E3-4, divided by 1.67.

    Examples
    --------
    >>> round(1.67 * allowable_stress_2016(slenderness=82.1, yield_strength=35*ksi) / ksi, 1)
    24.8
    """
    check_amount("slenderness", slenderness, hint="for example 82")
    check_amount("yield strength", yield_strength, hint="for example 36*ksi")
    elastic = euler_stress(modulus=_modulus(), slenderness=slenderness)
    turn = factors.scalar("steel_column_turn") * root(_modulus() / yield_strength)
    inelastic = factors.scalar("steel_column_base") ** (yield_strength / elastic) * yield_strength
    critical = numpy.where(slenderness <= turn, inelastic, factors.scalar("steel_column_elastic") * elastic)
    return _plain(critical / factors.scalar("steel_column_safety"))


def allowable_stress_1989(*, slenderness, yield_strength):
    """Return the allowable compression of the formula behind older pipe tables.

    Parameters
    ----------
    slenderness : float or numpy.ndarray
        Effective length over radius of gyration, KL/r [-].
    yield_strength : float or numpy.ndarray
        Yield strength [MPa].

    Returns
    -------
    float or numpy.ndarray
        Allowable stress [MPa].

    Notes
    -----
    AISC 1989 (9th ed.) Eqs. E2-1 and E2-2. The second is Euler's stress over the safety factor that the first
    has reached where they meet (23/12).

    Examples
    --------
    >>> round(allowable_stress_1989(slenderness=82.5, yield_strength=36*ksi) / ksi, 2)
    15.07
    """
    check_amount("slenderness", slenderness, hint="for example 82")
    check_amount("yield strength", yield_strength, hint="for example 36*ksi")
    elastic = euler_stress(modulus=_modulus(), slenderness=slenderness)
    # at the meeting place the elastic stress is half of the yield strength
    reached = numpy.minimum(root(yield_strength / (2 * elastic)), 1.0)
    number = lambda part: factors.scalar(f"steel_1989_safety_{part}")  # noqa: E731
    safety = (number("constant") + number("slope") * reached - number("cube") * reached**3) / number("divisor")
    return _plain(numpy.where(reached < 1, (1 - reached**2 / 2) * yield_strength, elastic) / safety)


def steel_capacity(post, *, height, end_factor=1.0, method="AISC 360-16"):
    """Return what a steel post carries, pressed in its middle, for one height or an array of heights.

    Parameters
    ----------
    post : SteelPost
        The section [-].
    height : float or numpy.ndarray
        Height, up to 60 ft [mm].
    end_factor : float
        K of the effective length, 0.65 to 2.4; 1 for ends free to turn [-].
    method : str
        'AISC 360-16', or 'AISC 1989' to read older tables; take the nominal wall with that [-].

    Returns
    -------
    SteelCapacity
        Load, stress and slenderness [N, MPa, -].

    Raises
    ------
    OutsideRule
        When a single post is more slender than 200; in an array such a post carries zero.

    Notes
    -----
    The cap, the base and what they press on are checked apart.

    Examples
    --------
    >>> from structlib.ground.units import kip
    >>> round(steel_capacity(steel_post("NPS 3 std"), height=8*ft).load / kip, 1)
    30.7
    """
    if not isinstance(post, SteelPost):
        raise BadInput(
            f"a steel post must come from steel_post, got {type(post).__name__}; for example steel_post('NPS 3 std')"
        )
    check_choice("method", method, METHODS)
    check_number(
        "height",
        height,
        low=0.0,
        high=_TALLEST,
        low_allowed=False,
        shown=length_text,
        hint="for example 8*ft",
    )
    if hasattr(height, "free_symbols"):
        raise BadInput("height must be a number, got a symbol; for example 8*ft")
    check_one_number(
        "end factor",
        end_factor,
        low=factors.scalar("column_end_factor_least"),
        high=factors.scalar("column_end_factor_greatest"),
        hint="1 for ends free to turn",
    )
    height = numpy.asarray(height, dtype=float)
    ratio = slenderness(effective_length=effective_length(length=height, end_factor=end_factor), across=post.radius)
    limit = factors.scalar("steel_slenderness_greatest")
    if numpy.ndim(ratio) == 0 and not at_most(ratio, limit):
        raise OutsideRule(
            f"the post is too slender to be judged: KL/r is {float(ratio):.0f} and the rule stops at "
            f"{limit:.0f} "
            "(AISC 360-16 E2); take a thicker one, or hold it"
        )
    formula = allowable_stress_2016 if method == "AISC 360-16" else allowable_stress_1989
    stress = _plain(
        numpy.where(at_most(ratio, limit), formula(slenderness=ratio, yield_strength=post.yield_strength), 0.0)
    )
    known = "recalled" if method == "AISC 360-16" else "recalled-agrees"
    return SteelCapacity(stress * post.area, stress, _plain(ratio), method, least_verified([post.verified, known]))


def steel_check(post, *, axial, height, combination, end_factor=1.0):
    """Return the check of a steel post, pressed in its middle.

    Parameters
    ----------
    post : SteelPost
        The section [-].
    axial : float
        Load along it [N].
    height : float
        Height [mm].
    combination : structlib.rules.check.Combination
        Combination that gives the load; how long it lasts does not matter to steel [-].
    end_factor : float
        K of the effective length [-].

    Returns
    -------
    structlib.rules.check.Check
        Load over area against the allowable stress [MPa].

    Raises
    ------
    OutsideRule
        When the post is too slender.

    Examples
    --------
    >>> from structlib.ground.units import kip
    >>> from structlib.rules.us.book import RULEBOOK
    >>> live = RULEBOOK.combinations({"live"})[1]
    >>> round(steel_check(steel_post("NPS 3 std"), axial=15*kip, height=8*ft, combination=live).share, 2)
    0.49
    """
    if not isinstance(combination, Combination):
        raise BadInput(
            f"a combination of the rulebook is needed, got {type(combination).__name__}; for example "
            "RULEBOOK.combinations({'live'})[1]"
        )
    check_one_number("load", axial, low=0.0, high=1e9, hint="for example 15*kip")
    check_one_number(
        "height",
        height,
        low=0.0,
        high=_TALLEST,
        low_allowed=False,
        shown=length_text,
        hint="for example 8*ft",
    )
    found = steel_capacity(post, height=height, end_factor=end_factor)
    stress = axial / post.area
    return Check(
        name="compression",
        kind="compression",
        sentence="the steel post is pressed and would bow out",
        asked=stress,
        given=found.stress,
        share=stress / found.stress,
        dimension="stress",
        position=0.0,
        where="all along the post",
        combination=combination.name,
        clause="AISC 360-16 E3",
        formula="P / A <= F_cr / 1.67, F_cr = 0.658^(F_y/F_e) F_y, or 0.877 F_e where slender; "
        "F_e = pi^2 E / (K L / r)^2",
        substitute=(
            ("P", axial, "force"),
            ("A", post.area, "area"),
            ("F_y", post.yield_strength, "stress"),
            ("K L", end_factor * height, "length"),
            ("r", post.radius, "small length"),
            ("E", _modulus(), "stress"),
        ),
        verified=found.verified,
    )


def permanent_post_conditions(*, pieces, outside):
    """Return what a steel or adjustable post must meet to stay; a telescoping one is refused.

    Parameters
    ----------
    pieces : int
        Tubes that slide in one another: 1 for a post in one piece [-].
    outside : float
        Outside diameter [mm].

    Returns
    -------
    tuple of str
        Conditions to verify [-].

    Raises
    ------
    OutsideRule
        When the post telescopes, or is thinner than the code's least.

    Notes
    -----
    IRC R407.3 for the size. That telescoping posts are for the time of the work only is what their makers and
    inspectors say.

    Examples
    --------
    >>> permanent_post_conditions(pieces=1, outside=3.5*inch)[0]
    'one piece of steel, with a load on its label or in an evaluation report'
    """
    check_one_count("pieces", pieces, low=1, high=4, hint="1 for a post in one piece")
    check_one_number(
        "outside diameter",
        outside,
        low=0.0,
        high=24 * inch,
        low_allowed=False,
        shown=inches_text,
        hint="for example 3.5*inch",
    )
    if pieces > 1:
        raise OutsideRule(
            "a telescoping post is for the time of the work, not to stay; take a post in one piece with a "
            "published load"
        )
    least = factors.length("free_post_least_steel")
    if outside < least:
        raise OutsideRule(
            f"a steel column is at least {inches_text(least)} in diameter (IRC R407.3), got {inches_text(outside)}"
        )
    return (
        "one piece of steel, with a load on its label or in an evaluation report",
        "pipe of Schedule 40 or an equal that the code official accepts (IRC R407.3, recalled)",
        "the screw end covered so that it cannot be turned",
        "fastened at the top and at the bottom",
        "a footing under it, not the slab alone",
        "protected from rust, also inside",
    )


def _plain(number):
    return float(number) if numpy.ndim(number) == 0 else number
