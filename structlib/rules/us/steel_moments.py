"""What a steel beam carries in bending by allowable strength (AISC 360-16 F2, F3, F11), and what ends it.

What a pushed flange does between its braces decides more than the section: the unbraced length goes in first.
"""

from dataclasses import dataclass, field
from math import pi, sqrt

from structlib.ground.records import measured
from structlib.ground.units import ft, inch, kip  # noqa: F401  the examples use them
from structlib.rules.check import least_verified
from structlib.rules.us.inputs import check_member_length
from structlib.rules.us.one_number import check_one_number
from structlib.rules.us.steel_sections import (
    check_not_slender,
    check_steel_section,
    lean_parts,
    steel_fact,
    steel_fact_known,
    steel_factor,
    steel_known,
    steel_shape,  # noqa: F401  the examples use it
)

_KEYS = {
    "shape": ("brace_plastic", "brace_elastic", "brace_elastic_inner", "residual_share", "twist_share"),
    "plate": ("plate_plastic", "plate_elastic", "plate_constant", "plate_slope", "plate_shape_limit"),
}
_CAPPED = "yields: the shape of the moment diagram would lift rolling over past it, and it is capped there"


@dataclass(frozen=True, kw_only=True)
class SteelMoment:
    """What a steel beam carries in bending, and why.

    Parameters
    ----------
    allowed : float
        Allowable moment, the nominal one over 1.67 [N*mm].
    nominal : float
        Nominal moment [N*mm].
    state : str
        What ends it: ``yields``, ``rolls over after yield began``, ``rolls over``, ``buckles in its flange``;
        a moment that C_b would lift past the plastic one says that it is capped [-].
    plastic_length : float
        Unbraced length up to which it yields first, L_p [mm].
    elastic_length : float
        Unbraced length from which it rolls over while still elastic, L_r [mm].
    clause : str
        Clause [-].
    formula : str
        Formula that governs [-].
    verified : str
        How the numbers are known [-].

    Examples
    --------
    >>> steel_moment(steel_shape("W8x18"), unbraced_length=0.0).state
    'yields'
    """

    allowed: float = measured("moment", "allowable moment")
    nominal: float = measured("moment", "nominal moment")
    state: str = measured("text", "what ends it")
    plastic_length: float = measured("length", "unbraced length L_p")
    elastic_length: float = measured("length", "unbraced length L_r")
    clause: str = measured("text", "clause")
    formula: str = measured("text", "formula")
    verified: str = field(default="recalled")


def brace_lengths(section):
    """Return the unbraced lengths at which a steel beam changes the way it ends.

    Parameters
    ----------
    section : SteelSection
        A rolled shape or a plate [-].

    Returns
    -------
    tuple of float
        L_p, up to which it yields first, and L_r, from which it rolls over elastic [mm, mm].

    Notes
    -----
    AISC 360-16 Eq F2-5, F2-6 for shapes, with J and C_w as the shapes database lists them; F11 for plates.

    Examples
    --------
    >>> [round(length / ft, 1) for length in brace_lengths(steel_shape("W8x18"))]
    [4.3, 13.5]
    """
    check_steel_section(section)
    modulus, strength = steel_fact("modulus"), section.yield_strength
    if section.kind == "plate":
        one = modulus / strength * section.web**2 / section.depth
        return steel_factor("plate_plastic") * one, steel_factor("plate_elastic") * one
    low = steel_factor("residual_share") * strength
    plastic = steel_factor("brace_plastic") * section.weak_radius * sqrt(modulus / strength)
    twist = _twist(section)
    inner = sqrt(twist**2 + steel_factor("brace_elastic_inner") * (low / modulus) ** 2)
    elastic = steel_factor("brace_elastic") * _flange_radius(section) * modulus / low * sqrt(twist + inner)
    return plastic, elastic


def steel_moment(section, *, unbraced_length, moment_shape=1.0):
    """Return the allowable moment of a steel beam about its strong axis.

    Parameters
    ----------
    section : SteelSection
        A rolled shape, or a plate on edge [-].
    unbraced_length : float
        Greatest distance between braces of the pushed edge; zero when it is held all along [mm].
    moment_shape : float
        C_b, 1 to 3; 1 is on the careful side for any diagram [-].

    Returns
    -------
    SteelMoment
        The moment and what ends it [-].

    Raises
    ------
    OutsideRule
        When a flange or the web is slender.

    Notes
    -----
    AISC 360-16 F2 and F11; F3 where the flange is not compact.

    Examples
    --------
    >>> held = steel_moment(steel_shape("W8x18"), unbraced_length=0.0)
    >>> round(held.allowed / (kip * ft), 1)
    42.4
    >>> round(steel_moment(steel_shape("W8x18"), unbraced_length=16 * ft).allowed / (kip * ft), 1)
    21.0
    """
    check_not_slender(section)
    check_member_length("unbraced length", unbraced_length)
    check_one_number("moment shape C_b", moment_shape, low=1.0, high=3.0, hint="1 is on the careful side")
    plastic_length, elastic_length = brace_lengths(section)
    case = _plate_moment if section.kind == "plate" else _shape_moment
    nominal, state, clause, formula = case(section, unbraced_length, moment_shape, plastic_length, elastic_length)
    return SteelMoment(
        allowed=nominal / steel_factor("bending_safety"),
        nominal=nominal,
        state=state,
        plastic_length=plastic_length,
        elastic_length=elastic_length,
        clause=clause,
        formula=formula,
        verified=least_verified(
            [section.verified, steel_fact_known("modulus"), steel_known("bending_safety", *_KEYS[section.kind])]
        ),
    )


# ---- parts ------------------------------------------------------------------------------------------------


def _twist(section):
    """J / (S h_o)."""
    return section.torsion_constant / (section.section_modulus * (section.depth - section.flange))


def _flange_radius(section):
    """r_ts (AISC 360-16 Eq F2-7)."""
    return sqrt(sqrt(section.weak_inertia * section.warping_constant) / section.section_modulus)


def _capped(found, plastic, state, clause, formula):
    """Nothing carries more than its plastic moment; one that is held there says so."""
    if found <= plastic * (1 + 1e-12):
        return found, state, clause, formula
    return plastic, _CAPPED, clause, f"{formula}, at most M_p = F_y Z"


def _shape_moment(section, unbraced, shape, plastic_length, elastic_length):
    rolling = _rolling_over(section, unbraced, shape, plastic_length, elastic_length)
    ratio, compact = lean_parts(section)["flange"]
    if ratio <= compact:
        return rolling
    strength = section.yield_strength
    plastic = strength * section.plastic_modulus
    low = steel_factor("residual_share") * strength * section.section_modulus
    most = steel_factor("flange_noncompact") * sqrt(steel_fact("modulus") / strength)
    found = plastic - (plastic - low) * (ratio - compact) / (most - compact)
    if found >= rolling[0]:
        return rolling
    text = "M_n = M_p - (M_p - 0.7 F_y S)(b/2t - b/2t_p) / (b/2t_r - b/2t_p)"
    return found, "buckles in its flange", "AISC 360-16 F3.2(a)", text


def _rolling_over(section, unbraced, shape, plastic_length, elastic_length):
    strength, modulus = section.yield_strength, steel_fact("modulus")
    plastic = strength * section.plastic_modulus
    if unbraced <= plastic_length:
        return plastic, "yields", "AISC 360-16 F2.1", "M_n = F_y Z"
    low = steel_factor("residual_share") * strength * section.section_modulus
    if unbraced <= elastic_length:
        along = (unbraced - plastic_length) / (elastic_length - plastic_length)
        found = shape * (plastic - (plastic - low) * along)
        text = "M_n = C_b (M_p - (M_p - 0.7 F_y S)(L_b - L_p) / (L_r - L_p))"
        return _capped(found, plastic, "rolls over after yield began", "AISC 360-16 F2.2(b)", text)
    lean = unbraced / _flange_radius(section)
    stress = shape * pi**2 * modulus / lean**2 * sqrt(1 + steel_factor("twist_share") * _twist(section) * lean**2)
    text = "M_n = F_cr S, F_cr = C_b pi^2 E / (L_b / r_ts)^2 sqrt(1 + 0.078 J / (S h_o) (L_b / r_ts)^2)"
    return _capped(stress * section.section_modulus, plastic, "rolls over", "AISC 360-16 F2.2(c)", text)


def _plate_moment(section, unbraced, shape, plastic_length, elastic_length):
    strength, modulus = section.yield_strength, steel_fact("modulus")
    first = strength * section.section_modulus
    plastic = min(strength * section.plastic_modulus, steel_factor("plate_shape_limit") * first)
    if unbraced <= plastic_length:
        return plastic, "yields", "AISC 360-16 F11.1", "M_n = F_y Z <= 1.5 M_y"
    lean = unbraced * section.depth / section.web**2
    if unbraced <= elastic_length:
        found = shape * (
            (steel_factor("plate_constant") - steel_factor("plate_slope") * lean * strength / modulus) * first
        )
        text = "M_n = C_b (1.52 - 0.274 (L_b d / t^2) F_y / E) M_y"
        return _capped(found, plastic, "rolls over after yield began", "AISC 360-16 F11.2(a)", text)
    stress = steel_factor("plate_elastic") * modulus * shape / lean
    text = "M_n = F_cr S, F_cr = 1.9 E C_b / (L_b d / t^2)"
    return _capped(stress * section.section_modulus, plastic, "rolls over", "AISC 360-16 F11.2(b)", text)
