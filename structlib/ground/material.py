"""What is known of a wood: its design values, its weight, and the two published formulas for them."""

import math
from dataclasses import dataclass

from structlib.ground.records import measured
from structlib.ground.refusals import check_number
from structlib.ground.showing import show
from structlib.ground.tables import table_value
from structlib.ground.units import psi


@dataclass(frozen=True, kw_only=True)
class Material:
    """A species and grade (or an engineered grade) with its reference design values.

    Parameters
    ----------
    kind : str
        ``dimension``, ``southern pine``, ``timber`` or ``lvl`` [-].
    species : str
        Species or species group; ``LVL`` for laminated veneer lumber [-].
    grade : str
        Grade [-].
    name : str
        Name to show [-].
    bending : float
        Bending design value Fb [MPa].
    tension : float
        Tension design value Ft; None where not given [MPa].
    shear : float
        Shear design value Fv [MPa].
    bearing : float
        Bearing (compression across the grain) design value Fc-perp [MPa].
    compression : float
        Compression along the grain Fc; None where not given [MPa].
    modulus : float
        Modulus of elasticity E, for deflection; shear-free where a shear modulus stands beside it [MPa].
    modulus_stability : float
        Lower modulus Emin, for buckling [MPa].
    specific_gravity : float
        Specific gravity; None where it is the maker's [-].
    weight_density : float
        Weight of the wood as it stands in the house [N/mm3].
    source : str
        Where the values come from [-].
    verified : str
        How they are known [-].
    size_note : str
        What the values say about size [-].
    size_factor_group : str
        Rows of the size-factor table that apply; empty for none [-].
    depth_exponent : float
        Exponent of the depth factor of engineered lumber; None for sawn [-].
    reference_depth : float
        Depth at which that factor is 1; None for sawn [mm].
    tabulated_depth : float
        Nominal depth class the values are for, where they are by size; None otherwise [nominal inches].
    greatest_depth_factor : float
        Most that the depth factor may be; None for no limit [-].
    note : str
        What else the data file says about the values, for example low confidence [-].
    shear_modulus : float
        Shear modulus G, with which shear adds to a sag; None where E holds that part already [MPa].
    stability_verified : str
        How Emin is known; empty where it is known as the other values are [-].
    incised : bool
        Whether the values are those that incising leaves [-].
    treatment : str
        ``none``, ``preservative`` or ``fire retardant`` [-].

    Examples
    --------
    >>> from structlib.ground.lumber import find_material
    >>> round(find_material("Hem-Fir", "No.2").bending / psi)
    850
    """

    kind: str = measured("text", "kind of material")
    species: str = measured("text", "species")
    grade: str = measured("text", "grade")
    name: str = measured("text", "name")
    bending: float = measured("stress", "bending design value Fb")
    tension: float | None = measured("stress", "tension design value Ft")
    shear: float = measured("stress", "shear design value Fv")
    bearing: float = measured("stress", "bearing design value Fc-perp")
    compression: float | None = measured("stress", "compression design value Fc")
    modulus: float = measured("stress", "modulus of elasticity E")
    modulus_stability: float = measured("stress", "modulus for stability Emin")
    specific_gravity: float | None = measured("text", "specific gravity")
    weight_density: float = measured("weight density", "weight")
    source: str = measured("text", "source")
    verified: str = measured("text", "how it is known")
    size_note: str = measured("text", "size")
    size_factor_group: str = measured("text", "size factor rows", default="")
    depth_exponent: float | None = measured("text", "depth factor exponent", default=None)
    reference_depth: float | None = measured("section length", "depth at which the depth factor is 1", default=None)
    tabulated_depth: float | None = measured("text", "nominal depth of the values", default=None)
    greatest_depth_factor: float | None = measured("text", "most that the depth factor may be", default=None)
    note: str = measured("text", "note", default="")
    shear_modulus: float | None = measured("stress", "shear modulus G", default=None)
    stability_verified: str = measured("text", "how Emin is known", default="")
    incised: bool = measured("text", "incised", default=False)
    treatment: str = measured("text", "treatment", default="none")


def wood_weight_density(specific_gravity, moisture_percent=15):
    """Weight of wood at a moisture content.

    Parameters
    ----------
    specific_gravity : float
        Specific gravity on oven-dry weight and volume, 0.2 to 1.2 [-].
    moisture_percent : float
        Moisture content, 0 to 30 [percent].

    Returns
    -------
    float
        Weight [N/mm3].

    Notes
    -----
    Source: as the rows wood_weight of data/us_factors.csv name it: 62.4 (G / (1 + 0.009 G mc)) (1 + mc / 100) lb/ft3.

    Examples
    --------
    >>> from structlib.ground.units import pcf
    >>> round(wood_weight_density(0.5) / pcf, 1)
    33.6
    """
    check_number("specific gravity", specific_gravity, low=0.2, high=1.2, hint="for example 0.5")
    check_number("moisture content", moisture_percent, low=0, high=30, hint="for example 15 percent")
    water = table_value("us_factors", "wood_weight_water")
    swelling = 1 + table_value("us_factors", "wood_weight_swelling") * specific_gravity * moisture_percent
    return water * specific_gravity / swelling * (1 + moisture_percent / 100)


def stability_modulus(modulus, *, engineered=False):
    """Lower modulus Emin for beam and column stability, from the mean modulus E.

    Parameters
    ----------
    modulus : float
        Modulus of elasticity, more than 0 to 5,000,000 psi [MPa].
    engineered : bool
        True for structural composite lumber (variation 0.10, E shear-free), False for sawn lumber (0.25) [-].

    Returns
    -------
    float
        Emin, not rounded [MPa].

    Notes
    -----
    Source: as the rows stability_modulus of data/us_factors.csv name it: 1.03 E (1 - 1.645 COVE) / 1.66. The 1.03
    takes the shear part out of an apparent E, so a shear-free E goes without it.

    Examples
    --------
    >>> round(stability_modulus(1.6e6*psi) / psi, -4)
    580000.0
    """
    check_design_stress("modulus", modulus, greatest=5e6 * psi)
    variation = table_value("us_factors", f"modulus_variation_{'engineered' if engineered else 'sawn'}")
    quantile = table_value("us_factors", "stability_modulus_quantile")
    shear_free = 1.0 if engineered else table_value("us_factors", "stability_modulus_shear_free")
    safety = table_value("us_factors", "stability_modulus_safety")
    return shear_free * modulus * (1 - quantile * variation) / safety


def check_design_stress(name, value, *, greatest=10000 * psi):
    """Refuse a design stress that is not a number in its range.

    Parameters
    ----------
    name : str
        What the stress is [-].
    value : float
        The stress, more than 0 [MPa].
    greatest : float
        Greatest accepted [MPa].

    Returns
    -------
    float
        The stress, unchanged [MPa].

    Examples
    --------
    >>> check_design_stress("bending", 6.2)
    6.2
    """
    return check_number(
        name,
        value,
        low=0,
        high=greatest,
        low_allowed=False,
        shown=lambda stress: show(stress, "stress"),
        hint="for example 900*psi",
    )


def check_design_values(material, *fields):
    """Refuse a record of a wood of which a value is no number above zero.

    Parameters
    ----------
    material : Material
        The wood [-].
    *fields : str
        Names of the values that are used; None passes where the record may leave it out [-].

    Returns
    -------
    Material
        The wood, unchanged [-].

    Examples
    --------
    >>> from structlib.ground.lumber import find_material
    >>> check_design_values(find_material("Hem-Fir", "No.2"), "bending").grade
    'No.2'
    """
    for field in fields:
        value = getattr(material, field)
        if not (type(value) is float and 0.0 < value < math.inf or value is None and field == "compression"):
            check_number(
                f"{field.replace('_', ' ')} of {material.name}",
                value,
                low=0.0,
                high=1e9,
                low_allowed=False,
                hint="take the wood from find_material, lvl or user_lvl",
            )
    return material
