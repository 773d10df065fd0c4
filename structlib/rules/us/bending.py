"""Bending value of sawn lumber and LVL with every adjustment factor (NDS 2018 Table 4.3.1 and 8.3.1)."""

from functools import lru_cache

import numpy

from structlib.ground.material import Material
from structlib.ground.refusals import BadInput, OutsideRule, check_choice, check_number
from structlib.rules.check import Factor, least_verified
from structlib.rules.us import factors
from structlib.rules.us.inputs import anywhere, check_amount, check_size, check_yes_or_no
from structlib.rules.us.stability import beam_stability_factor


def depth_factor(*, depth, reference_depth, exponent):
    """Return the depth factor of a material whose strength falls as pieces get deeper.

    Parameters
    ----------
    depth : float, numpy.ndarray or sympy expression
        Depth of the piece [mm].
    reference_depth : float, numpy.ndarray or sympy expression
        Depth at which the factor is one [mm].
    exponent : float or sympy expression
        Exponent given with the material [-].

    Returns
    -------
    float, numpy.ndarray or sympy expression
        Depth factor [-].

    Notes
    -----
    NDS 2018 4.3.6 for timbers (12 in, 1/9); for LVL the maker's own exponent (NDS 2018 8.3.6).

    Examples
    --------
    >>> round(depth_factor(depth=13.5, reference_depth=12.0, exponent=1/9), 3)
    0.987
    """
    check_amount("depth", depth, hint="for example 9.25*inch")
    check_amount("reference depth", reference_depth, hint="for example 12*inch")
    check_number("depth exponent", exponent, low=0, high=1, hint="for example 1/9")
    return (reference_depth / depth) ** exponent


def size_factor(material, *, width, depth):
    """Return the size factor on bending of sawn lumber, or the depth (volume) factor of LVL.

    Parameters
    ----------
    material : structlib.ground.lumber.Material
        The wood [-].
    width : float or numpy.ndarray
        Width of one piece [mm].
    depth : float or numpy.ndarray
        Depth of the piece [mm].

    Returns
    -------
    tuple of (float or numpy.ndarray, str, str)
        The factor, its clause, and how it is known [-].

    Raises
    ------
    OutsideRule
        When the piece is not of a size that the material's values cover, or lies on its flat.

    Notes
    -----
    NDS Supplement 2018 Table 4A (dimension lumber), 4B (Southern Pine: values by size, factor 1.0 up to
    12 in), 4D and NDS 2018 4.3.6 (timbers, 5 in and thicker; deeper than 12 in), 8.3.6 (LVL).

    Examples
    --------
    >>> from structlib.ground.lumber import find_material
    >>> from structlib.ground.units import inch
    >>> factor, clause, verified = size_factor(find_material("Hem-Fir", "No.2"), width=1.5*inch, depth=9.25*inch)
    >>> float(factor)
    1.1
    """
    refuse_unknown_material(material)
    _refuse_size(material, check_size("width of one piece", width), check_size("depth", depth))
    if material.kind == "lvl":
        floor = factors.length("lvl_depth_factor_least_depth")
        factor = depth_factor(
            depth=numpy.maximum(depth, floor),
            reference_depth=material.reference_depth,
            exponent=material.depth_exponent,
        )
        if material.greatest_depth_factor is not None:
            factor = numpy.minimum(factor, material.greatest_depth_factor)
        return factor, "NDS 2018 8.3.6 with the maker's exponent", material.verified
    if material.kind == "timber":
        reference = factors.length("timber_size_factor_depth")
        factor = depth_factor(
            depth=numpy.maximum(depth, reference),
            reference_depth=reference,
            exponent=1 / factors.scalar("timber_size_factor_root"),
        )
        return factor, "NDS 2018 4.3.6", factors.verified("timber_size_factor_root")
    return factors.tabulated_size_factor(material, width=width, depth=depth)


def repetitive_factor(material, *, sharing_members):
    """Return the repetitive member factor: three or more that share the load back each other up.

    Parameters
    ----------
    material : structlib.ground.lumber.Material
        The wood [-].
    sharing_members : int or numpy.ndarray
        Members in contact, or joists spaced 24 in or less and tied by a floor [-].

    Returns
    -------
    float or numpy.ndarray
        1.0 below three members; then 1.15 for sawn dimension lumber, LVL's own for LVL [-].

    Notes
    -----
    NDS 2018 4.3.9 (2 in to 4 in lumber), 8.3.7 (structural composite lumber). Timbers get none.

    Examples
    --------
    >>> from structlib.ground.lumber import find_material
    >>> fir = find_material("Douglas Fir-Larch", "No.2")
    >>> float(repetitive_factor(fir, sharing_members=2)), float(repetitive_factor(fir, sharing_members=3))
    (1.0, 1.15)
    """
    refuse_unknown_material(material)
    check_number("members that share", sharing_members, low=1, high=1000, hint="for example 3")
    key = {"lvl": "repetitive_member_factor_lvl", "timber": None}.get(material.kind, "repetitive_member_factor")
    if key is None:
        return numpy.ones(numpy.shape(sharing_members))
    least, more = factors.scalar("repetitive_member_least_count"), factors.scalar(key)
    if isinstance(sharing_members, int):
        return more if sharing_members >= least else 1.0
    return numpy.where(numpy.asarray(sharing_members) >= least, more, 1.0)


def wet_factor(material, *, value, wet):
    """Return the wet service factor on one design value.

    Parameters
    ----------
    material : structlib.ground.lumber.Material
        The wood [-].
    value : str
        'bending', 'shear', 'bearing', 'modulus' [-].
    wet : bool
        True where the wood stays above 19 % moisture in use [-].

    Returns
    -------
    float
        Wet service factor; 1.0 when dry [-].

    Raises
    ------
    OutsideRule
        For LVL in wet service: its values hold dry only, unless the maker's report says otherwise.

    Notes
    -----
    NDS Supplement 2018 Tables 4A, 4B, 4D. The relief for low bending values (1150 psi) is not taken here;
    leaving it out is on the careful side.

    Examples
    --------
    >>> from structlib.ground.lumber import find_material
    >>> wet_factor(find_material("Douglas Fir-Larch", "No.1"), value="bending", wet=True)
    0.85
    """
    refuse_unknown_material(material)
    check_choice("design value", value, ("bending", "shear", "bearing", "modulus"))
    if not check_yes_or_no("wet", wet):
        return 1.0
    if material.kind == "lvl":
        raise OutsideRule("LVL values hold for dry use only (NDS 2018 8.1.4); for wet service ask the maker")
    return factors.scalar(wet_key(material, value))


def wet_verified(material, *, value, wet):
    """Return how well the wet service factor on one design value is known.

    Parameters
    ----------
    material : structlib.ground.lumber.Material
        The wood [-].
    value : str
        'bending', 'shear', 'bearing', 'modulus' [-].
    wet : bool
        True where the wood stays above 19 % moisture in use [-].

    Returns
    -------
    str
        The ``verified`` word of the factor; 'seen' when dry, where nothing is looked up [-].

    Examples
    --------
    >>> from structlib.ground.lumber import find_material
    >>> wet_verified(find_material("Hem-Fir", "No.2"), value="modulus", wet=True)
    'transcribed'
    """
    return factors.verified(wet_key(material, value)) if wet else "seen"


def wet_key(material, value):
    """Return the key of the wet service factor: timbers of Southern Pine are listed wet already (4D).

    Parameters
    ----------
    material : structlib.ground.lumber.Material
        The wood [-].
    value : str
        'bending', 'shear', 'bearing', 'modulus', 'compression', 'tension' [-].

    Returns
    -------
    str
        Key in the table of factors [-].

    Examples
    --------
    >>> from structlib.ground.lumber import find_material
    >>> factors.scalar(wet_key(find_material("Hem-Fir", "No.2"), "compression"))
    0.8
    """
    if material.kind == "timber" and material.species == "Southern Pine":
        return "wet_service_timber_southern_pine"
    return f"wet_service_{'timber' if material.kind == 'timber' else 'dimension'}_{value}"


def bending_value(
    material,
    *,
    width,
    depth,
    plies,
    ply_width,
    unbraced_length,
    time_factor,
    wet=False,
    sharing_members=None,
    case="single span, uniform",
):
    """Return the adjusted bending value of a beam and the factors that made it.

    Parameters
    ----------
    material : structlib.ground.lumber.Material
        The wood [-].
    width : float or numpy.ndarray
        Width of all plies together [mm].
    depth : float or numpy.ndarray
        Depth [mm].
    plies : int or numpy.ndarray
        Number of plies side by side [-].
    ply_width : float or numpy.ndarray
        Width of one ply [mm].
    unbraced_length : float or numpy.ndarray
        Greatest distance between braces of the compressed edge; zero when held all along [mm].
    time_factor : float
        Load duration factor C_D of the combination [-].
    wet : bool
        Wet service [-].
    sharing_members : int or numpy.ndarray or None
        Members that share load; the plies themselves when None [-].
    case : str
        Span and load, a row of the effective length table; 'not listed' for any load that is not even [-].

    Returns
    -------
    tuple of (float or numpy.ndarray, tuple of Factor)
        Adjusted bending value and its factors [MPa, -].

    Raises
    ------
    OutsideRule
        When a factor is asked outside its rule.

    Notes
    -----
    NDS 2018 4.3.1 and 8.3.1. For LVL the lesser of volume and stability factor holds when the volume
    factor is below 1; above 1 both hold (8.3.6), and the stability factor is worked out from the bending
    value already raised by it (3.3.3.8).

    Examples
    --------
    >>> from structlib.ground.lumber import find_material
    >>> from structlib.ground.units import inch, psi
    >>> value, used = bending_value(find_material("Hem-Fir", "No.2"), width=4.5*inch, depth=9.25*inch, plies=3,
    ...     ply_width=1.5*inch, unbraced_length=0.0, time_factor=1.15)
    >>> round(float(value) / psi)
    1237
    """
    refuse_unknown_material(material)
    sharing = plies if sharing_members is None else sharing_members
    asked = (width, depth, ply_width, unbraced_length, time_factor, wet, sharing, case)
    plain = all(isinstance(one, (float, int, str)) for one in asked)  # an array has no key
    return (_bending_value if plain else _bending_value.__wrapped__)(material, *asked)


@lru_cache(maxsize=1024, typed=True)
def _bending_value(material, width, depth, ply_width, unbraced_length, time_factor, wet, sharing, case):
    wet_on_bending = wet_factor(material, value="bending", wet=wet)
    wet_on_modulus = wet_factor(material, value="modulus", wet=wet)
    size, size_clause, size_verified = size_factor(material, width=ply_width, depth=depth)
    repeats = repetitive_factor(material, sharing_members=sharing)
    is_lvl = material.kind == "lvl"
    check_time_factor(material, time_factor)
    starred = material.bending * time_factor * wet_on_bending * repeats * (numpy.maximum(size, 1.0) if is_lvl else size)
    stability = beam_stability_factor(
        unbraced_length=unbraced_length,
        depth=depth,
        width=width,
        bending_value=starred,
        modulus_stability=material.modulus_stability * wet_on_modulus,
        case=case,
    )
    adjusted = starred * (numpy.minimum(size, stability) if is_lvl else stability)
    used = (
        Factor(
            "C_D",
            time_factor,
            "how long the load lasts",
            "NDS 2018 Table 2.3.2",
            factors.verified("load_duration_live"),
        ),
        Factor(
            "C_M",
            wet_on_bending,
            "wet or dry in use",
            "NDS Supplement 2018",
            wet_verified(material, value="bending", wet=wet),
        ),
        Factor("C_V" if is_lvl else "C_F", size, "depth of the piece", size_clause, size_verified),
        Factor(
            "C_r",
            repeats,
            "three or more sharing",
            "NDS 2018 8.3.7" if is_lvl else "NDS 2018 4.3.9",
            factors.verified("repetitive_member_factor_lvl" if is_lvl else "repetitive_member_factor"),
        ),
        Factor(
            "C_L",
            stability,
            "braced against rolling",
            "NDS 2018 3.3.3",
            least_verified([factors.verified("beam_stability_sum_divisor"), material.stability_verified]),
        ),
    )
    return adjusted, used


def check_time_factor(material, time_factor):
    """Refuse a load duration factor that is no amount, or more than treated wood may take.

    Parameters
    ----------
    material : structlib.ground.lumber.Material
        The wood [-].
    time_factor : float
        Load duration factor C_D [-].

    Returns
    -------
    float
        The factor, unchanged [-].

    Raises
    ------
    OutsideRule
        When the wood is treated and the factor is over 1.6 (NDS 2018 2.3.2), as for impact.

    Examples
    --------
    >>> from structlib.ground.lumber import find_material
    >>> check_time_factor(find_material("Hem-Fir", "No.2"), 2.0)
    2.0
    """
    check_amount("load duration factor", time_factor, hint="for example 1.15")
    most = factors.scalar("treated_time_factor_greatest")
    if material.treatment != "none" and numpy.any(numpy.asarray(time_factor) > most):
        raise OutsideRule(
            f"wood treated under pressure takes no load duration factor over {most:g} (NDS 2018 2.3.2), so none for "
            "impact; ask the engineer"
        )
    return time_factor


def refuse_unknown_material(material):
    """Refuse a material that these rules do not cover.

    Parameters
    ----------
    material : structlib.ground.lumber.Material
        The wood [-].

    Returns
    -------
    structlib.ground.lumber.Material
        The material, unchanged [-].

    Raises
    ------
    OutsideRule
        When its kind is not sawn lumber, timber or LVL.

    Examples
    --------
    >>> from structlib.ground.lumber import find_material
    >>> refuse_unknown_material(find_material("Hem-Fir", "No.2")).grade
    'No.2'
    """
    if not isinstance(material, Material):
        raise BadInput(
            f"a material must come from find_material or lvl, got {type(material).__name__}; for example "
            "find_material('Hem-Fir', 'No.2')"
        )
    if material.kind not in ("dimension", "southern pine", "timber", "lvl"):
        raise OutsideRule(
            f"these rules cover sawn dimension lumber, Southern Pine, timbers and LVL, not {material.kind!r}; "
            "for other members ask the engineer"
        )
    return material


def _refuse_size(material, width, depth):
    """Refuse pieces whose size the material's values do not cover, beyond what the size factor table says."""
    if anywhere(numpy.asarray(depth) < numpy.asarray(width) * (1 - 1e-9)):
        raise OutsideRule(
            "a piece that is wider than deep lies on its flat, which these checks do not cover; stand it on "
            "edge, for example 1.5 in wide by 9.25 in deep"
        )
    if material.kind == "timber" and numpy.any(numpy.asarray(width) < factors.dressed_of(5) * (1 - 1e-9)):
        raise OutsideRule(
            f"{material.name} has values for timbers of 5 in nominal and thicker only (NDS Supplement 2018 "
            "Table 4D); for thinner pieces take the grade of dimension lumber, for example No.2"
        )
    widest = material.tabulated_depth
    if material.kind == "southern pine" and widest and widest < 12:  # wider than 12 in takes the 12 in values
        nominal = factors.nominal_of(depth)
        if numpy.any(nominal > widest):
            raise OutsideRule(
                f"{material.name} has values for that width only (NDS Supplement 2018 Table 4B), got a piece "
                f"{float(numpy.max(nominal)):g} in wide; name the size with the species, for example "
                f"find_material('Southern Pine', {material.grade!r}, '2x10')"
            )
