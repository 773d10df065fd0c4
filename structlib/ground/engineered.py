"""Laminated veneer lumber: generic planning values, and the values a user reads in the maker's report."""

from functools import partial

from structlib.ground.material import Material, check_design_stress, stability_modulus
from structlib.ground.refusals import BadInput, check_choice, check_number
from structlib.ground.showing import show
from structlib.ground.tables import in_library_units, table_row, table_value
from structlib.ground.units import ft, inch, pcf

#: What a modulus of elasticity counts: bending alone, or with the shear of a slender test beam in it.
MODULUS_KINDS = ("shear-free", "apparent")


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

    Examples
    --------
    >>> lvl("2.0E-2900Fb").verified
    'recalled'
    """
    row = table_row("lvl_grades", grade=grade)
    value = partial(in_library_units, row)
    return Material(
        kind="lvl",
        species="LVL",
        grade=grade,
        name=f"LVL {grade} (generic)",
        bending=value("Fb_psi"),
        tension=value("Ft_psi"),
        shear=value("Fv_psi"),
        bearing=value("Fcperp_psi"),
        compression=value("Fc_psi"),
        modulus=value("E_psi"),
        modulus_stability=stability_modulus(value("E_psi"), engineered=True),
        specific_gravity=None,
        weight_density=value("weight_pcf"),
        source=row["source"],
        verified=row["verified"],
        size_note="generic planning values; the maker's evaluation report governs; E is taken as shear-free, "
        "G and Emin are computed from it (recalled)",
        shear_modulus=_shear_modulus(value("E_psi")),
        stability_verified="recalled",
        depth_exponent=row["depth_exponent"],
        reference_depth=value("reference_depth_in"),
        greatest_depth_factor=row["greatest_depth_factor"],
        note=row["note"],
    )


def user_lvl(
    *,
    bending,
    shear,
    bearing,
    modulus,
    depth_exponent,
    name,
    source,
    compression=None,
    tension=None,
    reference_depth=12 * inch,
    weight_density=None,
    greatest_depth_factor=None,
    modulus_kind="shear-free",
    modulus_stability=None,
):
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
        Weight, more than 0 to 100 lb/ft3; None for the usual 42 lb/ft3 [N/mm3].
    greatest_depth_factor : float
        Most that the depth factor may be, 1 to 2; None where the report sets no limit [-].
    modulus_kind : str
        What the report's E is: 'shear-free' (true), also where not told, or 'apparent' [-].
    modulus_stability : float
        Emin of the report, less than E; None where it gives none: then it is computed from E [MPa].

    Returns
    -------
    Material
        The values, marked as seen in that report; G, and Emin where not given, are recalled [-].

    Notes
    -----
    An apparent E holds the shear of a slender beam, so 1.03 of it counts as shear-free (row
    stability_modulus_shear_free of data/us_factors.csv);
    shear-free is the careful guess. Shear then adds to every sag, with G of E/16.

    Examples
    --------
    >>> from structlib.ground.units import psi
    >>> mine = user_lvl(bending=2800*psi, shear=280*psi, bearing=750*psi, modulus=2.0e6*psi,
    ...                 depth_exponent=0.12, name="LVL on my delivery note",
    ...                 source="report no. 0000 (an example)")
    >>> mine.verified
    'seen'
    """
    for word, text in (("name", name), ("source", source)):
        if not isinstance(text, str) or not text.strip():
            raise BadInput(
                f"the {word} of the LVL values is missing, got {text!r}; "
                "write the evaluation report's name and number as the source"
            )
    for word, stress in (
        ("bending", bending),
        ("shear", shear),
        ("bearing", bearing),
        ("compression", compression),
        ("tension", tension),
    ):
        if stress is not None or word in ("bending", "shear", "bearing"):
            check_design_stress(word, stress)
    check_number("depth exponent", depth_exponent, low=0, high=0.5, hint="for example 0.136")
    check_number(
        "reference depth",
        reference_depth,
        low=0,
        high=10 * ft,
        low_allowed=False,
        shown=lambda length: show(length, "section length"),
        hint="for example 12*inch",
    )
    if weight_density is None:
        weight_density = in_library_units(table_row("dead_loads", category="density", item="LVL"), "value")
    check_number(
        "weight density",
        weight_density,
        low=0,
        high=100 * pcf,
        low_allowed=False,
        shown=lambda weight: show(weight, "weight density"),
        hint="for example 42*pcf",
    )
    if check_choice("modulus kind", modulus_kind, MODULUS_KINDS) == "apparent":
        modulus = modulus * table_value("us_factors", "stability_modulus_shear_free")
    from_report = modulus_stability is not None
    if from_report:
        check_number(
            "Emin",
            modulus_stability,
            low=0,
            high=modulus,
            low_allowed=False,
            shown=lambda stress: show(stress, "stress"),
            hint="for example 1.0e6*psi",
        )
    if greatest_depth_factor is not None:
        check_number("greatest depth factor", greatest_depth_factor, low=1, high=2, hint="for example 1.1")
    return Material(
        kind="lvl",
        species="LVL",
        grade=name,
        name=name,
        bending=bending,
        tension=tension,
        shear=shear,
        bearing=bearing,
        compression=compression,
        modulus=modulus,
        modulus_stability=modulus_stability if from_report else stability_modulus(modulus, engineered=True),
        stability_verified="seen" if from_report else "recalled",
        shear_modulus=_shear_modulus(modulus),
        specific_gravity=None,
        weight_density=weight_density,
        source=source,
        verified="seen",
        size_note=f"values entered from the evaluation report, E as {modulus_kind}; "
        f"G {'is' if from_report else 'and Emin are'} computed from E (recalled)",
        depth_exponent=depth_exponent,
        reference_depth=reference_depth,
        greatest_depth_factor=greatest_depth_factor,
    )


def _shear_modulus(modulus):
    return modulus / table_value("us_factors", "lvl_modulus_over_shear_modulus")
