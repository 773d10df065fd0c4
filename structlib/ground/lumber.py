"""Species, grades and sizes: rows of the data files as typed records, in the library's own units."""

import re
from dataclasses import dataclass, replace
from functools import lru_cache

from .records import measured
from .refusals import BadInput, check_choice, check_number
from .showing import show
from .tables import in_library_units, table_row, table_rows, table_value
from .units import MPa, ft, inch, pcf, psi

KINDS = ("dimension", "southern pine", "timber", "lvl")

_TABLES = {"dimension": "lumber_dimension", "southern pine": "lumber_southern_pine", "timber": "lumber_timbers"}
_SOUTHERN_PINE = "Southern Pine"


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
        Modulus of elasticity E, for deflection [MPa].
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

    Examples
    --------
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
    reference_depth: float | None = measured("section length", "depth at which the depth factor is 1",
                                             default=None)
    tabulated_depth: float | None = measured("text", "nominal depth of the values", default=None)
    greatest_depth_factor: float | None = measured("text", "most that the depth factor may be", default=None)


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

    Raises
    ------
    BadInput
        When an input is not a number in its range.

    Notes
    -----
    Source: NDS Supplement 2018, 3.1.3: 62.4 (G / (1 + 0.009 G mc)) (1 + mc / 100) lb/ft3.

    Examples
    --------
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
        True for structural composite lumber (variation 0.10), False for sawn lumber (0.25) [-].

    Returns
    -------
    float
        Emin, not rounded [MPa].

    Raises
    ------
    BadInput
        When the modulus is not a number in its range.

    Notes
    -----
    Source: NDS 2018 Appendix D: 1.03 E (1 - 1.645 COVE) / 1.66.

    Examples
    --------
    >>> round(stability_modulus(1.6e6*psi) / psi, -4)
    580000.0
    """
    _stress("modulus", modulus, greatest=5e6 * psi)
    variation = table_value("us_factors", f"modulus_variation_{'engineered' if engineered else 'sawn'}")
    quantile = table_value("us_factors", "stability_modulus_quantile")
    shear_free = table_value("us_factors", "stability_modulus_shear_free")
    return shear_free * modulus * (1 - quantile * variation) / table_value("us_factors", "stability_modulus_safety")


def _stress(name, value, *, greatest=10000 * psi):
    return check_number(name, value, low=0, high=greatest, low_allowed=False,
                        shown=lambda stress: show(stress, "stress"), hint="for example 900*psi")


@lru_cache(maxsize=None)
def materials(kind=None):
    """List every sawn and generic engineered material of the data files.

    Parameters
    ----------
    kind : str
        ``dimension``, ``southern pine``, ``timber``, ``lvl``, or None for all [-].

    Returns
    -------
    tuple of Material
        The materials in the order of the publications [-].

    Raises
    ------
    BadInput
        When the kind is not known.

    Examples
    --------
    >>> len(materials("timber"))
    33
    """
    if kind is None:
        return tuple(material for each in KINDS for material in materials(each))
    check_choice("kind", kind, KINDS)
    if kind == "lvl":
        return tuple(lvl(row["grade"]) for row in table_rows("lvl_grades"))
    return tuple(_sawn(kind, row) for row in table_rows(_TABLES[kind]))


def _sawn(kind, row):
    value = lambda column: in_library_units(row, column)  # noqa: E731
    label, note, depth = _size_words(kind, row)
    return Material(
        kind=kind, species=row["species"], grade=row["grade"], name=f"{row['species']} {row['grade']}{label}",
        bending=value("Fb_psi"), tension=value("Ft_psi"), shear=value("Fv_psi"), bearing=value("Fcperp_psi"),
        compression=value("Fc_psi"), modulus=value("E_psi"), modulus_stability=value("Emin_psi"),
        specific_gravity=row["G"], weight_density=wood_weight_density(row["G"]), source=row["source"],
        verified=row["verified"], size_note=note, size_factor_group=row["size_factor_group"], tabulated_depth=depth)


def _size_words(kind, row):
    if kind == "dimension":
        return "", "the size factor still applies", None
    if kind == "timber":
        use = "" if row["use"] == "any" else f", {row['use']}"
        return use, "5x5 and larger; the size factor applies over 12 in deep", None
    low, high = int(row["width_min"]), int(row["width_max"])
    wide = f"{high} in wide" if low == high else f"{low} to {high} in wide"
    return f", {wide}", f"values for {wide}; the size is already in them", high


def nominal_size(text):
    """Read a nominal lumber size.

    Parameters
    ----------
    text : str
        For example ``2x10`` [-].

    Returns
    -------
    tuple of int
        Nominal thickness and nominal depth [nominal inches].

    Raises
    ------
    BadInput
        When the text is not a size.

    Examples
    --------
    >>> nominal_size("2x10")
    (2, 10)
    """
    match = re.fullmatch(r"\s*([1-9][0-9]?)\s*[xX\u00d7]\s*([1-9][0-9]?)\s*", text) if isinstance(text, str) else None
    if not match:
        raise BadInput(f"{text!r} is not a nominal size; write for example 2x10")
    return int(match[1]), int(match[2])


def find_material(species, grade, nominal=None):
    """Find the design values of a species and grade, for a size where they depend on it.

    Parameters
    ----------
    species : str
        Species group as published, for example ``Douglas Fir-Larch`` [-].
    grade : str
        Grade as published, for example ``No.2`` [-].
    nominal : str
        Nominal size, for example ``2x10``; needed for Southern Pine and for timbers [-].

    Returns
    -------
    Material
        The design values [-].

    Raises
    ------
    BadInput
        When the species or grade is not known (the nearest are named) or the size is needed or missing.

    Examples
    --------
    >>> round(find_material("Southern Pine", "No.2", "2x10").bending / psi)
    800
    >>> find_material("Douglas Fir-Larch", "No.1", "6x12").name
    'Douglas Fir-Larch No.1, Beams & Stringers'
    """
    thickness, depth = nominal_size(nominal) if nominal is not None else (None, None)
    kind = "timber" if nominal is not None and min(thickness, depth) >= 5 else (
        "southern pine" if species == _SOUTHERN_PINE else "dimension")
    rows = materials(kind)
    if kind == "dimension":
        check_choice("species", species, dict.fromkeys((*(one.species for one in rows), _SOUTHERN_PINE)))
    else:
        check_choice("species", species, dict.fromkeys(one.species for one in rows))
    check_choice(f"grade of {species}", grade, dict.fromkeys(one.grade for one in rows if one.species == species))
    found = [one for one in rows if (one.species, one.grade) == (species, grade)]
    if kind == "timber":
        return _timber_of_size(found, thickness, depth)
    if nominal is not None and not 2 <= min(thickness, depth) <= 4:
        raise BadInput(f"{nominal} is no dimension lumber, which is 2 to 4 in thick; for example 2x10")
    if kind == "southern pine":
        return _southern_pine_of_size(found, None if nominal is None else max(thickness, depth))
    return found[0]


def _timber_of_size(found, thickness, depth):
    use = "Beams & Stringers" if abs(depth - thickness) > 2 else "Posts & Timbers"
    by_use = [one for one in found if one.name.endswith(use)]
    return (by_use or found)[0]


def _southern_pine_of_size(found, width):
    if width is None:
        raise BadInput(f"the values of {found[0].species} {found[0].grade} go by size; give it, for example 2x10")
    widest = max(one.tabulated_depth for one in found)
    for one in found:
        low = next(row["width_min"] for row in table_rows("lumber_southern_pine")
                   if row["grade"] == one.grade and row["width_max"] == one.tabulated_depth)
        if low <= width <= one.tabulated_depth:
            return one
    if width > widest == 12:
        one = next(one for one in found if one.tabulated_depth == widest)
        return replace(one, name=f"{one.species} {one.grade}, over 12 in wide",
                       size_note="values for 12 in wide; the size factor applies over 12 in")
    raise BadInput(f"{found[0].species} {found[0].grade} has no values for {width} in wide; "
                   f"published are widths up to {widest} in")


def lvl(grade):
    """Give the generic planning values of a laminated veneer lumber grade, loaded on edge.

    The values are recalled, not any maker's: enter those of the piece in hand with ``user_lvl``.

    Parameters
    ----------
    grade : str
        Stress class, for example ``2.0E-2900Fb`` [-].

    Returns
    -------
    Material
        The generic values, marked as recalled [-].

    Raises
    ------
    BadInput
        When the grade is not known; the nearest are named.

    Examples
    --------
    >>> lvl("2.0E-2900Fb").verified
    'recalled'
    """
    row = table_row("lvl_grades", grade=grade)
    value = lambda column: in_library_units(row, column)  # noqa: E731
    return Material(
        kind="lvl", species="LVL", grade=grade, name=f"LVL {grade} (generic)", bending=value("Fb_psi"),
        tension=value("Ft_psi"), shear=value("Fv_psi"), bearing=value("Fcperp_psi"), compression=value("Fc_psi"),
        modulus=value("E_psi"), modulus_stability=stability_modulus(value("E_psi"), engineered=True),
        specific_gravity=None, weight_density=value("weight_pcf"), source=row["source"], verified=row["verified"],
        size_note="generic planning values; the maker's evaluation report governs; Emin is computed from E",
        depth_exponent=row["depth_exponent"], reference_depth=value("reference_depth_in"),
        greatest_depth_factor=row["greatest_depth_factor"])


def user_lvl(*, bending, shear, bearing, modulus, depth_exponent, name, source, compression=None, tension=None,
             reference_depth=12 * inch, weight_density=42 * pcf, greatest_depth_factor=None):
    """Take laminated veneer lumber values that the user reads from the maker's evaluation report.

    Parameters
    ----------
    bending : float
        Bending design value Fb on edge, more than 0 to 10,000 psi [MPa].
    shear : float
        Shear design value Fv on edge, more than 0 to 10,000 psi [MPa].
    bearing : float
        Bearing design value Fc-perp on edge, more than 0 to 10,000 psi [MPa].
    modulus : float
        Modulus of elasticity E, more than 0 to 5,000,000 psi [MPa].
    depth_exponent : float
        Exponent of the report's depth factor, 0 to 0.5 [-].
    name : str
        Name to show [-].
    source : str
        Name and number of the evaluation report that the values were read in [-].
    compression : float
        Compression along the grain Fc; None where not read [MPa].
    tension : float
        Tension design value Ft; None where not read [MPa].
    reference_depth : float
        Depth at which the depth factor is 1, more than 0 to 10 ft [mm].
    weight_density : float
        Weight, more than 0 to 100 lb/ft3 [N/mm3].
    greatest_depth_factor : float
        Most that the depth factor may be, 1 to 2; None where the report sets no limit [-].

    Returns
    -------
    Material
        The values, marked as seen in that report; Emin is computed from E [-].

    Raises
    ------
    BadInput
        When the report is not named or a value is not a number in its range.

    Examples
    --------
    >>> mine = user_lvl(bending=2800*psi, shear=280*psi, bearing=750*psi, modulus=2.0e6*psi,
    ...                 depth_exponent=0.12, name="LVL on my delivery note", source="report no. 0000 (example)")
    >>> mine.verified
    'seen'
    """
    for word, text in (("name", name), ("source", source)):
        if not isinstance(text, str) or not text.strip():
            raise BadInput(f"the {word} of the LVL values is missing, got {text!r}; "
                           "write the evaluation report's name and number as the source")
    for word, stress in (("bending", bending), ("shear", shear), ("bearing", bearing),
                         ("compression", compression), ("tension", tension)):
        if stress is not None or word in ("bending", "shear", "bearing"):
            _stress(word, stress)
    check_number("depth exponent", depth_exponent, low=0, high=0.5, hint="for example 0.136")
    check_number("reference depth", reference_depth, low=0, high=10 * ft, low_allowed=False,
                 shown=lambda length: show(length, "section length"), hint="for example 12*inch")
    check_number("weight density", weight_density, low=0, high=100 * pcf, low_allowed=False,
                 shown=lambda weight: show(weight, "weight density"), hint="for example 42*pcf")
    if greatest_depth_factor is not None:
        check_number("greatest depth factor", greatest_depth_factor, low=1, high=2, hint="for example 1.1")
    return Material(
        kind="lvl", species="LVL", grade=name, name=name, bending=bending, tension=tension, shear=shear,
        bearing=bearing, compression=compression, modulus=modulus,
        modulus_stability=stability_modulus(modulus, engineered=True), specific_gravity=None,
        weight_density=weight_density, source=source, verified="seen",
        size_note="values entered from the evaluation report; Emin is computed from E",
        depth_exponent=depth_exponent, reference_depth=reference_depth,
        greatest_depth_factor=greatest_depth_factor)


@dataclass(frozen=True, kw_only=True)
class Stock:
    """A size that can be bought, or that was measured.

    Parameters
    ----------
    nominal : str
        Name of the size [-].
    width : float
        True width of one ply [mm].
    depth : float
        True depth [mm].
    kind : str
        ``dimension``, ``timber``, ``lvl`` or ``measured`` [-].
    source : str
        Where the size comes from [-].
    verified : str
        How it is known [-].
    availability : str
        ``stock``, ``special order`` or ``in place`` [-].

    Examples
    --------
    >>> [one.nominal for one in stock_sizes("dimension", thickness=2)]
    ['2x4', '2x6', '2x8', '2x10', '2x12']
    """

    nominal: str = measured("text", "size")
    width: float = measured("section length", "width")
    depth: float = measured("section length", "depth")
    kind: str = measured("text", "kind of size")
    source: str = measured("text", "source")
    verified: str = measured("text", "how it is known")
    availability: str = measured("text", "availability")


def stock_sizes(kind, thickness=None, *, special_order=False):
    """List the sizes of a kind of material, shallow ones first.

    Parameters
    ----------
    kind : str
        ``dimension``, ``southern pine``, ``timber`` or ``lvl`` [-].
    thickness : int
        Nominal thickness, for example 2; None for all; not for LVL, which comes in 1 3/4 in plies
        [nominal inches].
    special_order : bool
        Whether to list sizes too that a yard does not keep [-].

    Returns
    -------
    tuple of Stock
        The sizes; timbers with their green size [-].

    Raises
    ------
    BadInput
        When the kind is not known or has no such thickness.

    Examples
    --------
    >>> [one.nominal for one in stock_sizes("lvl")][-2:]
    ['1 3/4 x 16 LVL', '1 3/4 x 18 LVL']
    """
    check_choice("kind", kind, KINDS)
    sizes = _lvl_sizes() if kind == "lvl" else _sawn_sizes("timber" if kind == "timber" else "dimension")
    if thickness is not None:
        known = dict.fromkeys(number for number, _ in sizes)
        if isinstance(thickness, bool) or thickness not in known:
            raise BadInput(f"{kind} has no thickness {thickness!r}; published are "
                           f"{', '.join(f'{number:g}' for number in known)} in")
    wanted = [one for number, one in sizes if thickness is None or number == thickness]
    return tuple(one for one in wanted if special_order or one.availability == "stock")


@lru_cache(maxsize=None)
def _sawn_sizes(kind):
    return [(row["nominal_thickness"], Stock(
        nominal=row["nominal"], width=in_library_units(row, f"{row['design_basis']}_thickness_in"),
        depth=in_library_units(row, f"{row['design_basis']}_width_in"), kind=kind, source=row["source"],
        verified=row["verified"], availability=row["availability"]))
        for row in table_rows("sizes_ps20") if row["kind"] == kind]


@lru_cache(maxsize=None)
def _lvl_sizes():
    return [(row["ply_width_in"], Stock(
        nominal=f"{_inch_name(row['ply_width_in'])} x {_inch_name(row['depth_in'])} LVL",
        width=in_library_units(row, "ply_width_in"), depth=in_library_units(row, "depth_in"), kind="lvl",
        source=row["source"], verified=row["verified"], availability=row["availability"]))
        for row in table_rows("lvl_depths")]


def _inch_name(inches):
    return show(inches * inch, "section length").removesuffix(" in")


def measured_size(*, width, depth):
    """Take a size measured on site, for old lumber that follows no table.

    Parameters
    ----------
    width : float
        Measured width of one piece, 1/2 in to 24 in [mm].
    depth : float
        Measured depth, 1/2 in to 40 in [mm].

    Returns
    -------
    Stock
        The size, under its measurements [-].

    Raises
    ------
    BadInput
        When a size is not a number in its range.

    Examples
    --------
    >>> measured_size(width=1.75*inch, depth=7.625*inch).nominal
    '1 3/4 in x 7 5/8 in, measured'
    """
    shown = lambda length: show(length, "section length")  # noqa: E731
    check_number("width", width, low=0.5 * inch, high=24 * inch, shown=shown, hint="for example 1.75*inch")
    check_number("depth", depth, low=0.5 * inch, high=40 * inch, shown=shown, hint="for example 7.625*inch")
    return Stock(nominal=f"{shown(width)} x {shown(depth)}, measured", width=width, depth=depth, kind="measured",
                 source="measured on site", verified="measured on site", availability="in place")
