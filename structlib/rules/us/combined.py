"""A member that is bent and pulled, or bent and pressed, along the grain (NDS 2018 3.8, 3.9): rafters "
"and ties."""

from functools import lru_cache

import numpy

from structlib.ground.refusals import BadInput, OutsideRule
from structlib.ground.sections import rectangle_area, rectangle_section_modulus
from structlib.ground.tables import table_rows
from structlib.ground.units import ft, inch
from structlib.mechanics.formulas import bending_stress
from structlib.rules.check import Check, Factor, least_verified
from structlib.rules.us import bending, factors
from structlib.rules.us.column_stability import bent_column_share
from structlib.rules.us.column_strength import column_capacity
from structlib.rules.us.inputs import check_amount, check_yes_or_no
from structlib.rules.us.one_number import check_one_count, check_one_number, inches_text, length_text

_SIZE = {
    "low": 0.0,
    "high": 3000.0,
    "low_allowed": False,
    "shown": inches_text,
    "hint": "for example 1.5*inch",
}
_FORCE = {"high": 1e9, "hint": "for example 900*lb"}
_HUGE = 1e12  # MPa: a buckling value without end, where the member is held all along


def tension_value(material, *, width, depth, time_factor, wet=False):
    """Return the adjusted tension value along the grain F_t' and the factors that made it.

    Parameters
    ----------
    material : structlib.ground.lumber.Material
        The wood [-].
    width : float
        Smaller size of one piece [mm].
    depth : float
        Larger size of the piece [mm].
    time_factor : float
        Load duration factor C_D of the combination [-].
    wet : bool
        Wet service [-].

    Returns
    -------
    tuple of (float, tuple of structlib.rules.check.Factor)
        The value and its factors [MPa, -].

    Raises
    ------
    OutsideRule
        When the piece is of no size that the values cover, or LVL is wet.

    Notes
    -----
    NDS 2018 3.8.1, Table 4.3.1; NDS Supplement 2018 Tables 4A, 4B. Tension across the grain is not to be
    relied on (3.8.2) and has no value here.

    Examples
    --------
    >>> from structlib.ground.lumber import find_material
    >>> from structlib.ground.units import psi
    >>> fir = find_material("Douglas Fir-Larch", "No.2")
    >>> round(tension_value(fir, width=1.5*inch, depth=5.5*inch, time_factor=1.15)[0] / psi)
    860
    """
    bending.refuse_unknown_material(material)
    if material.tension is None:
        raise BadInput(f"{material.name} has no tension value along the grain; take it from the maker's report")
    check_one_number("smaller size", width, **_SIZE)
    check_one_number("larger size", depth, **_SIZE)
    check_one_number("load duration factor", time_factor, low=0.5, high=2.0, hint="for example 1.15 for snow")
    size, clause, size_known = _tension_size_factor(material, width, depth)
    wet_value, wet_known = _tension_wet_factor(material, wet)
    used = (
        Factor(
            "C_D",
            time_factor,
            "how long the load lasts",
            "NDS 2018 Table 2.3.2",
            factors.verified("load_duration_live"),
        ),
        Factor("C_M", wet_value, "wet or dry in use", "NDS Supplement 2018", wet_known),
        Factor("C_F", size, "size of the piece", clause, size_known),
    )
    return material.tension * time_factor * wet_value * size, used


def _tension_size_factor(material, width, depth):
    bending.size_factor(material, width=width, depth=depth)  # refuses the sizes that the values do not cover
    if material.kind in ("timber", "lvl"):
        return 1.0, "none on tension (NDS 2018 4.3.6, 8.3)", "recalled"
    wide, thick = float(factors.nominal_of(depth)), float(factors.nominal_of(width))
    for row in table_rows("us_size_factor"):
        named = (row["factor"], row["property"], row["size_factor_group"])
        if named == ("size", "Ft", material.size_factor_group):
            widest = numpy.inf if row["width_max"] is None else row["width_max"]
            if row["width_min"] <= wide <= widest and row["thickness_min"] <= thick <= row["thickness_max"]:
                return row["value"], row["source"], row["verified"]
    raise OutsideRule(
        f"{material.name} has no size factor on tension for a piece {width / inch:g} in by "
        f"{depth / inch:g} in; its values hold for lumber 2 in to 4 in thick, for example a 2x6"
    )


def _tension_wet_factor(material, wet):
    bending.wet_factor(material, value="modulus", wet=wet)  # refuses wet LVL and what is no yes or no
    if not wet:
        return 1.0, "seen"
    key = bending.wet_key(material, "tension")
    return factors.scalar(key), factors.verified(key)


def bending_and_tension_share(*, tension_stress, tension_value, bending_stress, bending_value):
    """Return the share used on the pulled edge of a member that is bent and pulled: the two shares added.

    Parameters
    ----------
    tension_stress : float, numpy.ndarray or sympy expression
        Pull over net area, f_t [MPa].
    tension_value : float, numpy.ndarray or sympy expression
        Adjusted tension value F_t' [MPa].
    bending_stress : float, numpy.ndarray or sympy expression
        Bending stress f_b [MPa].
    bending_value : float, numpy.ndarray or sympy expression
        Bending value with every factor but the stability factor, F_b* [MPa].

    Returns
    -------
    float, numpy.ndarray or sympy expression
        Share used; 1 is the limit [-].

    Notes
    -----
    NDS 2018 Eq. 3.9-1, recalled.

    Examples
    --------
    >>> round(bending_and_tension_share(tension_stress=1.0, tension_value=5.0, bending_stress=4.0,
    ...     bending_value=8.0), 6)
    0.7
    """
    _check_stresses(tension_stress, bending_stress)
    check_amount("tension value", tension_value)
    check_amount("bending value", bending_value)
    return tension_stress / tension_value + bending_stress / bending_value


def relieved_edge_share(*, tension_stress, bending_stress, bending_value):
    """Return the share used on the pressed edge of a member that is bent and pulled: the pull relieves it.

    Parameters
    ----------
    tension_stress : float, numpy.ndarray or sympy expression
        Pull over net area, f_t [MPa].
    bending_stress : float, numpy.ndarray or sympy expression
        Bending stress f_b [MPa].
    bending_value : float, numpy.ndarray or sympy expression
        Bending value with every factor but the volume factor, F_b** [MPa].

    Returns
    -------
    float, numpy.ndarray or sympy expression
        Share used; negative where the pull leaves no edge pressed [-].

    Notes
    -----
    NDS 2018 Eq. 3.9-2, recalled.

    Examples
    --------
    >>> relieved_edge_share(tension_stress=1.0, bending_stress=4.0, bending_value=6.0)
    0.5
    """
    _check_stresses(tension_stress, bending_stress)
    check_amount("bending value", bending_value)
    return (bending_stress - tension_stress) / bending_value


def _check_stresses(tension_stress, bent):
    check_amount("tension stress", tension_stress, zero=True, hint="for example 300*psi")
    check_amount("bending stress", bent, zero=True, hint="for example 600*psi")


def rafter_checks(
    material,
    *,
    width,
    depth,
    length,
    axial,
    moment,
    combination,
    time_factor,
    unbraced_length=0.0,
    held_width=0.0,
    plies=1,
    sharing_members=1,
    hole_area=0.0,
    wet=False,
):
    """Check a rafter or a tie that is bent about its strong axis and pressed or pulled along its length.

    Parameters
    ----------
    material : structlib.ground.lumber.Material
        The wood [-].
    width : float
        Width of the piece, or of all plies together [mm].
    depth : float
        Depth of the piece [mm].
    length : float
        Length along the slope between the points that hold it in its plane [mm].
    axial : float
        Force along it: positive where it is pressed, negative where it is pulled [N].
    moment : float
        Greatest moment, its size [N*mm].
    combination : str
        Name of the load combination [-].
    time_factor : float
        Load duration factor C_D [-].
    unbraced_length : float
        Greatest distance between braces of the pressed edge; 0 under sheathing [mm].
    held_width : float
        Distance between points that keep it from bowing sideways; 0 under sheathing [mm].
    plies : int
        Plies side by side; each takes the size factor of its own thickness [-].
    sharing_members : int
        Members that share the load; 3 and more with sheathing at 24 in or less [-].
    hole_area : float
        Area lost to holes and cuts in the pulled section [mm2].
    wet : bool
        Wet service [-].

    Returns
    -------
    tuple of structlib.rules.check.Check
        One check when it is pressed, two when it is pulled [-].

    Raises
    ------
    OutsideRule
        When the piece is too slender or of a size that the values do not cover.

    Notes
    -----
    NDS 2018 3.9.1 (pulled: both equations), 3.9.2 (pressed: the moment grows as the member nears buckling).

    Examples
    --------
    >>> from structlib.ground.lumber import find_material
    >>> from structlib.ground.units import lb
    >>> fir = find_material("Douglas Fir-Larch", "No.2")
    >>> pressed, = rafter_checks(fir, width=1.5*inch, depth=7.25*inch, length=13*ft, axial=900*lb,
    ...     moment=1000*lb*ft, combination="D + S", time_factor=1.15, sharing_members=3)
    >>> pressed.name, round(pressed.share, 3)
    ('bending and compression', 0.705)
    """
    check_one_number(
        "length",
        length,
        low=0.0,
        high=60 * ft,
        low_allowed=False,
        shown=length_text,
        hint="for example 13*ft",
    )
    check_one_number("axial force", axial, low=-1e9, **_FORCE)
    check_one_number("moment", moment, low=0.0, high=1e12, hint="for example 1000*lb*ft")
    check_one_number("area of holes", hole_area, low=0.0, high=1e6, hint="for example 0")
    check_one_number("unbraced length", unbraced_length, low=0.0, high=60 * ft, shown=length_text)
    check_one_count("plies", plies, low=1, high=5, hint="1 for one piece, 2 where it is doubled")
    check_one_number("width", width, **_SIZE)
    check_one_number("depth", depth, **_SIZE)
    check_one_number("members that share", sharing_members, low=1, high=1000, hint="for example 3")
    check_one_number("time factor", time_factor, low=0.0, high=10.0, low_allowed=False, hint="for example 1.15")
    check_yes_or_no("wet", wet)
    if not isinstance(combination, str):
        raise BadInput(f"the combination must be a name, got {combination!r}; for example 'D + S'")
    member = {
        "width": width,
        "depth": depth,
        "plies": plies,
        "ply_width": width / plies,
        "time_factor": time_factor,
        "wet": wet,
        "sharing_members": sharing_members,
        "case": "not listed",
    }
    value, used = _bending_value(material, unbraced_length=unbraced_length, **member)
    bent = bending_stress(moment=moment, section_modulus=rectangle_section_modulus(width=width, depth=depth))
    area = rectangle_area(width=width, depth=depth)
    if axial < 0:
        free, _ = _bending_value(material, unbraced_length=0.0, **member)
        return _pulled(material, member, -axial, area, hole_area, bent, float(value), float(free), used, combination)
    return (_pressed(material, member, axial, area, length, held_width, bent, float(value), used, combination),)


#: One piece is asked under many loads: what it can give is found once.
_bending_value = lru_cache(maxsize=256)(bending.bending_value)
_column_capacity = lru_cache(maxsize=256)(column_capacity)


def _pressed(material, member, axial, area, length, held_width, bent, value, used, combination):
    found = _column_capacity(
        material,
        ply_width=member["ply_width"],
        plies=member["plies"],
        depth=member["depth"],
        height=length,
        time_factor=member["time_factor"],
        held_width=held_width,
        wet=member["wet"],
    )
    stress, critical = axial / area, min(found.critical_depth, _HUGE)
    share = bent_column_share(
        compression_stress=stress,
        compression_value=found.value,
        bending_stress=bent,
        bending_value=value,
        critical_value=critical,
    )
    return _check(
        "bending and compression",
        "the load bends it, and the push along it makes the bend grow",
        share,
        "NDS 2018 3.9.2",
        "(f_c / F_c')^2 + f_b / (F_b' (1 - f_c / F_cE)) <= 1",
        combination,
        (
            ("f_c", stress, "stress"),
            ("F_c'", found.value, "stress"),
            ("f_b", bent, "stress"),
            ("F_b'", value, "stress"),
            ("F_cE", critical, "stress"),
        ),
        used,
        [found.verified, material.verified],
    )


def _pulled(material, member, pull, area, hole_area, bent, value, free, used, combination):
    if hole_area >= area:
        raise BadInput(f"the holes take {hole_area:g} mm2 of a section of {area:g} mm2; nothing is left")
    allowed, pulled_by = tension_value(
        material,
        width=member["ply_width"],
        **{name: member[name] for name in ("depth", "time_factor", "wet")},
    )
    stress = pull / (area - hole_area)
    # The volume factor of LVL stays in both values: leaving it out of F_b** could only help the pressed edge.
    return (
        _check(
            "bending and tension",
            "the pulled edge is pulled by the bend and by the tie force",
            bending_and_tension_share(
                tension_stress=stress, tension_value=allowed, bending_stress=bent, bending_value=free
            ),
            "NDS 2018 3.9.1, Eq. 3.9-1",
            "f_t / F_t' + f_b / F_b* <= 1",
            combination,
            (
                ("f_t", stress, "stress"),
                ("F_t'", allowed, "stress"),
                ("f_b", bent, "stress"),
                ("F_b*", free, "stress"),
            ),
            (*pulled_by, *used),
            [material.verified],
        ),
        _check(
            "bending less tension",
            "the pressed edge is relieved by the pull",
            max(relieved_edge_share(tension_stress=stress, bending_stress=bent, bending_value=value), 0.0),
            "NDS 2018 3.9.1, Eq. 3.9-2",
            "(f_b - f_t) / F_b** <= 1",
            combination,
            (("f_b", bent, "stress"), ("f_t", stress, "stress"), ("F_b**", value, "stress")),
            used,
            [material.verified],
        ),
    )


def _check(name, sentence, share, clause, formula, combination, substitute, used, known):
    share = float(share)
    return Check(
        name=name,
        kind="combined",
        sentence=sentence,
        asked=share,
        given=1.0,
        share=share,
        dimension="ratio",
        position=0.0,
        where="where the moment is greatest",
        combination=combination,
        clause=clause,
        formula=formula,
        substitute=substitute,
        factors=used,
        verified=least_verified(["recalled", *known, *(factor.verified for factor in used)]),
    )
