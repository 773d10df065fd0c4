"""Wet, incised and treated wood: three separate facts about a piece, each with its own factors.

Wet service is where the piece stands, and its factors are in `bending.wet_factor`. Incising (small cuts that
let preservative in) and treatment are facts about the piece itself: `in_service` gives the wood its values as
it is put in, so that no rule that takes the wood can forget them.
"""

from dataclasses import replace

from structlib.ground.refusals import OutsideRule, check_choice
from structlib.rules.check import TREATMENTS, least_verified
from structlib.rules.us import factors
from structlib.rules.us.bending import refuse_unknown_material, wet_factor, wet_verified
from structlib.rules.us.column_strength import compression_wet_factor
from structlib.rules.us.inputs import check_yes_or_no

#: Design values as the incising table groups them, with the fields of a material that each row is for.
_INCISED = {
    "bending, tension, compression and shear": ("strength", ("bending", "tension", "compression", "shear")),
    "E and E_min": ("modulus", ("modulus", "modulus_stability")),
    "bearing across the grain": ("bearing", ("bearing",)),
}
_CLAUSE = "NDS 2018 4.3.8"


def in_service(material, *, incised=False, treatment="none"):
    """Return a wood as it is put in: with the values that incising leaves, and its treatment noted.

    Parameters
    ----------
    material : structlib.ground.lumber.Material
        The wood [-].
    incised : bool
        True where small cuts were made into it to let preservative in [-].
    treatment : str
        'none', 'preservative' (under pressure) or 'fire retardant' [-].

    Returns
    -------
    structlib.ground.lumber.Material
        The wood; unchanged where it is neither, or has this already [-].

    Raises
    ------
    OutsideRule
        For fire retardant, for incised timbers, and for LVL that is either.

    Notes
    -----
    NDS 2018 4.3.8 (incised dimension lumber), 4.3.13 and 2.3.2 (preservative under pressure lowers no value, but
    no load duration factor over 1.6 holds), 2.3.4 (fire retardant). All recalled.

    Examples
    --------
    >>> from structlib.ground.lumber import find_material
    >>> from structlib.ground.units import psi
    >>> wood = in_service(find_material("Hem-Fir", "No.2"), incised=True, treatment="preservative")
    >>> [round(value / psi) for value in (wood.bending, wood.modulus, wood.bearing)]  # of 850, 1.3e6, 405
    [680, 1235000, 405]
    """
    refuse_unknown_material(material)
    check_yes_or_no("incised", incised)
    check_choice("treatment", treatment, TREATMENTS)
    if treatment == "fire retardant":
        raise OutsideRule(
            "wood treated with fire retardant has the values of the company that treated it (NDS 2018 2.3.4); ask "
            "for its report"
        )
    if material.kind == "lvl" and (incised or treatment != "none"):
        raise OutsideRule(
            "LVL values hold for plain LVL; treated or incised, it has the values of its maker or treater: ask there"
        )
    if material.kind == "timber" and incised:
        raise OutsideRule(
            "the incising factors are for lumber 2 in to 4 in thick (NDS 2018 4.3.8); for an incised timber ask the "
            "engineer"
        )
    if treatment != material.treatment and treatment != "none":
        material = replace(material, treatment=treatment, name=f"{material.name}, treated")
    if not incised or material.incised:
        return material
    lowered = {}
    for row, fields in _INCISED.values():
        for field in fields:
            value = getattr(material, field)
            lowered[field] = None if value is None else value * factors.scalar(f"incised_{row}")
    known = least_verified([material.verified, *(factors.verified(f"incised_{row}") for row, _ in _INCISED.values())])
    return replace(material, incised=True, name=f"{material.name}, incised", verified=known, **lowered)


def service_sentences(material, *, wet):
    """Say what wet service, incising and treatment do to a wood, by property and with the source.

    Parameters
    ----------
    material : structlib.ground.lumber.Material
        The wood as it is put in [-].
    wet : bool
        True where it stays above 19 % moisture [-].

    Returns
    -------
    tuple of str
        One sentence for each that holds; empty for dry, plain wood [-].

    Raises
    ------
    OutsideRule
        For LVL in wet service.

    Examples
    --------
    >>> from structlib.ground.lumber import find_material
    >>> service_sentences(in_service(find_material("Hem-Fir", "No.2"), incised=True), wet=False)[0]
    'Incised: C_i 0.8 on bending, tension, compression and shear, 0.95 on E and E_min, 1 on bearing across the grain (NDS 2018 4.3.8, transcribed).'
    """
    said = []
    if check_yes_or_no("wet", wet):
        values = {value: wet_factor(material, value=value, wet=True) for value in _WET}
        values["compression"], compressed = compression_wet_factor(material, wet=True)
        known = least_verified([compressed, *(wet_verified(material, value=value, wet=True) for value in _WET)])
        listed = ", ".join(f"{factor:g} on {_WET.get(value, value)}" for value, factor in values.items())
        said.append(f"Wet in use: C_M {listed} (NDS Supplement 2018 Tables 4A to 4D, {known}).")
    if material.incised:
        rows = [(name, f"incised_{row}") for name, (row, _) in _INCISED.items()]
        listed = ", ".join(f"{factors.scalar(key):g} on {name}" for name, key in rows)
        known = least_verified(factors.verified(key) for _, key in rows)
        said.append(f"Incised: C_i {listed} ({_CLAUSE}, {known}).")
    if material.treatment == "preservative":
        most = factors.scalar("treated_time_factor_greatest")
        said.append(
            f"Treated with preservative under pressure: no value is lowered for that alone, and no load duration "
            f"factor over {most:g} holds, so none for impact (NDS 2018 4.3.13 and 2.3.2, "
            f"{factors.verified('treated_time_factor_greatest')})."
        )
    return tuple(said)


_WET = {"bending": "bending", "shear": "shear", "bearing": "bearing across the grain", "modulus": "E and E_min"}
