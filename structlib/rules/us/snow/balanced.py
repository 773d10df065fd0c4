"""Balanced snow: exposure, warmth, slope, low slopes, rain on snow (ASCE 7-16 7.3, 7.4, 7.10)."""

import numpy

from structlib.ground.refusals import BadInput, NotAsked, OutsideRule, check_choice, check_number
from structlib.ground.tables import in_library_units, table_row, table_rows
from structlib.ground.units import deg
from structlib.rules.check import Factor, least_verified
from structlib.rules.us.inputs import check_yes_or_no
from structlib.rules.us.one_number import check_one_number
from structlib.rules.us.snow.ground_loads import (
    _SLACK,
    _check_ground,
    _check_importance,
    _check_load,
    _check_thermal,
    _number,
    _numbers_of,
    _one_of,
    _one_slope,
    _row,
    _slope_angle,
    _verified,
)

ROUGHNESSES = ("B", "C", "D")
EXPOSURES = ("fully exposed", "partially exposed", "sheltered")
SURFACES = ("slippery", "other")
RISK_CATEGORIES = ("I", "II", "III", "IV")
#: Short names for the thermal conditions of the table, coldest last.
THERMAL_CONDITIONS = {
    "heated": "heated structures, all not listed below",
    "cold ventilated roof": "kept just above freezing; cold ventilated roof with R >= 25 h ft2 F/Btu between "
    "vented and heated space",
    "unheated": "unheated and open-air structures",
    "kept below freezing": "kept below freezing",
}


def exposure_factor(*, roughness, exposure):
    """Return the exposure factor C_e: wind blows snow from an open roof.

    Parameters
    ----------
    roughness : str
        Surface around: ``B`` (suburb, woods), ``C`` (open, scattered), ``D`` (flat, over water) [-].
    exposure : str
        Roof: ``fully exposed``, ``partially exposed`` or ``sheltered`` [-].

    Returns
    -------
    structlib.rules.check.Factor
        C_e with its clause and how it is known [-].

    Notes
    -----
    ASCE 7-16 Table 7.3-1.

    Examples
    --------
    >>> exposure_factor(roughness="C", exposure="sheltered").value
    1.1
    """
    check_choice("roughness", roughness, ROUGHNESSES)
    check_choice("exposure", exposure, EXPOSURES)
    return _factor("C_e", "Ce", f"roughness {roughness}, {exposure}")


def thermal_factor(condition):
    """Return the thermal factor C_t: what leaks out of the house melts snow, and a cold roof keeps it.

    Parameters
    ----------
    condition : str
        ``heated``, ``cold ventilated roof`` (R 25 or more below it), ``unheated`` or ``kept below
        freezing`` [-].

    Returns
    -------
    structlib.rules.check.Factor
        C_t with its clause and how it is known [-].

    Notes
    -----
    ASCE 7-16 Table 7.3-2. The table says above R 25, another source R 25 at least; R 25 itself counts as
    cold here, the careful side of the two: more snow stays.

    Examples
    --------
    >>> thermal_factor("cold ventilated roof").value
    1.1
    """
    check_choice("thermal condition", condition, THERMAL_CONDITIONS)
    return _factor("C_t", "Ct", THERMAL_CONDITIONS[condition])


def _factor(symbol, kind, case):
    row = table_row("us_snow_factors", factor=kind, case=case)
    return Factor(symbol, row["value"], case, row["source"], row["verified"])


def flat_roof_snow(ground, *, exposure, thermal, importance=1.0):
    """Return the flat roof snow load p_f on plan.

    Parameters
    ----------
    ground : GroundSnow
        Ground snow load [MPa].
    exposure : float, numpy.ndarray or sympy expression
        Exposure factor C_e, 0.7 to 1.2 [-].
    thermal : float, numpy.ndarray or sympy expression
        Thermal factor C_t, 0.85 to 1.3 [-].
    importance : float, numpy.ndarray or sympy expression
        Importance factor I_s, 0.8 to 1.2 [-].

    Returns
    -------
    float, numpy.ndarray or sympy expression
        Flat roof snow load [MPa].

    Notes
    -----
    ASCE 7-16 Eq. 7.3-1: p_f = 0.7 C_e C_t I_s p_g. The least low-slope snow is a case of its own.

    Examples
    --------
    >>> from structlib.ground.units import psf
    >>> from structlib.rules.us.snow.ground_loads import ground_snow
    >>> snow = ground_snow(40*psf, edition="ASCE 7-16", basis="allowable-stress ground snow of ASCE 7-16")
    >>> round(flat_roof_snow(snow, exposure=1.0, thermal=1.1) / psf, 1)
    30.8
    """
    _check_ground(ground)
    check_number("exposure factor", exposure, low=0.7, high=1.2, hint="for example 1.0")
    _check_thermal(thermal)
    _check_importance(importance)
    return _number("flat_roof_share") * exposure * thermal * importance * ground.value


def slope_factor(*, rise, thermal, surface, r_value=None, vented=None, run=12):
    """Return the roof slope factor C_s: a steep, warm or slippery roof sheds snow.

    Parameters
    ----------
    rise : float or numpy.ndarray
        Rise of the roof in ``run``, 0 to 60 [same unit as run].
    thermal : float
        Thermal factor C_t: up to 1.0, 1.1, or 1.2 and more [-].
    surface : str
        ``slippery`` (metal, slate, glass; nothing holds snow back, room below the eaves) or ``other`` [-].
    r_value : float or None
        R-value of a warm slippery roof, in h ft2 F/Btu; asked for only there [-].
    vented : bool or None
        Whether that roof is ventilated; asked for only there [-].
    run : float
        Run of the roof, more than 0 to 60 [same unit as rise].

    Returns
    -------
    float or numpy.ndarray
        Slope factor, 1 down to 0 at 70 deg [-].

    Raises
    ------
    OutsideRule
        When the thermal factor lies between those that the curves are for.

    Notes
    -----
    ASCE 7-16 Figure 7.4-1. Asphalt shingles are not slippery. A warm slippery roof takes the
    slippery curve only with R 30 and more (R 20 where ventilated); else the other curve holds.

    Examples
    --------
    >>> round(slope_factor(rise=12, thermal=1.0, surface="other"), 3)
    0.625
    """
    return _on_curve(_slope_angle(rise, run), _curve(thermal, surface, r_value, vented))


def _curve(thermal, surface, r_value, vented):
    check_choice("surface", surface, SURFACES)
    rows = [row for row in table_rows("us_snow_slope_curves") if row["surface"] == surface]
    check_one_number(
        "thermal factor",
        thermal,
        low=min(row["thermal_from"] for row in rows),
        high=max(row["thermal_to"] for row in rows),
        hint="for example 1.1",
    )
    for row in rows:
        if row["thermal_from"] - _SLACK <= thermal <= row["thermal_to"] + _SLACK:
            if (row["roof"], surface) == ("warm", "slippery") and not _insulated_for_sliding(r_value, vented):
                return table_row("us_snow_slope_curves", roof="warm", surface="other")
            return row
    raise OutsideRule(
        "the curves of the slope factor are for a thermal factor of 1.0 and less, of 1.1, and of 1.2 "
        f"and more, got {thermal:g}; take the factor of the table, for example 1.1"
    )


def _insulated_for_sliding(r_value, vented):
    if r_value is None or vented is None:
        raise BadInput(
            "a warm slippery roof sheds snow as such only when well insulated; give r_value and vented, "
            "for example r_value=38, vented=True"
        )
    check_yes_or_no("vented", vented)
    check_one_number("R-value", r_value, low=0.0, high=200.0, hint="for example 38")
    return r_value >= _number("slippery_R_vented" if vented else "slippery_R_unvented")


def _on_curve(angle, row):
    start, end = in_library_units(row, "start_deg"), in_library_units(row, "end_deg")
    factor = numpy.clip((end - angle) / (end - start), 0.0, 1.0)
    return float(factor) if numpy.ndim(factor) == 0 else factor


def sloped_roof_snow(*, flat_snow, slope_factor):
    """Return the sloped roof snow load p_s, the balanced load, on plan.

    Parameters
    ----------
    flat_snow : float, numpy.ndarray or sympy expression
        Flat roof snow load p_f [MPa].
    slope_factor : float, numpy.ndarray or sympy expression
        Slope factor C_s, 0 to 1 [-].

    Returns
    -------
    float, numpy.ndarray or sympy expression
        Balanced snow on the horizontal projection [MPa].

    Notes
    -----
    ASCE 7-16 Eq. 7.4-1.

    Examples
    --------
    >>> from structlib.ground.units import psf
    >>> round(sloped_roof_snow(flat_snow=30.8*psf, slope_factor=0.5) / psf, 2)
    15.4
    """
    _check_load("flat roof snow load", flat_snow)
    check_number("slope factor", slope_factor, low=0.0, high=1.0, hint="for example 0.9")
    return slope_factor * flat_snow


def minimum_low_slope_snow(ground, *, rise, importance=1.0, run=12):
    """Return the least uniform snow p_m on a roof of low slope: one snowfall on a windless day.

    Parameters
    ----------
    ground : GroundSnow
        Ground snow load [MPa].
    rise : float
        Rise of the roof in ``run``, under 15 deg [same unit as run].
    importance : float
        Importance factor I_s [-].
    run : float
        Run of the roof [same unit as rise].

    Returns
    -------
    float or numpy.ndarray
        Least uniform snow on plan, a case of its own, not with drifts or unbalanced snow [MPa].

    Raises
    ------
    NotAsked
        When the slope is 15 deg or more, where no least is asked.

    Notes
    -----
    ASCE 7-16 7.3.4 for gable, hip and single-slope roofs.

    Examples
    --------
    >>> from structlib.ground.units import psf
    >>> from structlib.rules.us.snow.ground_loads import ground_snow
    >>> snow = ground_snow(15*psf, edition="ASCE 7-16", basis="allowable-stress ground snow of ASCE 7-16")
    >>> round(minimum_low_slope_snow(snow, rise=0, importance=0.8) / psf, 6)
    12.0
    """
    pg = _numbers_of(ground)
    _check_importance(importance)
    angle = _one_slope(rise, run)
    if angle >= _number("low_slope_below") * (1 - _SLACK):
        raise NotAsked(
            f"the least snow is asked on slopes under {_row('low_slope_below')['value']:g} deg, got "
            f"{angle / deg:.1f} deg; there the balanced and unbalanced snow decide"
        )
    least = importance * numpy.minimum(pg, _number("low_slope_pg"))
    return float(least) if numpy.ndim(least) == 0 else least


def roof_snow(ground, *, rise, exposure, thermal, surface="other", importance=1.0, run=12):
    """Return the snow that a roof is asked for, even on both slopes: balanced, or the least of a low slope.

    Parameters
    ----------
    ground : GroundSnow
        Ground snow load [MPa].
    rise : float
        Rise of the roof in ``run`` [same unit as run].
    exposure : float
        Exposure factor C_e [-].
    thermal : float
        Thermal factor C_t of the table [-].
    surface : str
        ``other``, or ``slippery`` on a cold roof [-].
    importance : float
        Importance factor I_s [-].
    run : float
        Run of the roof [same unit as rise].

    Returns
    -------
    tuple of (float, str, str)
        The larger of the two loads on plan, its equation or clause, and how it is known [MPa, -, -].

    Notes
    -----
    ASCE 7-16 Eq. 7.3-1, 7.4-1, 7.3.4. Snow that wind has moved, and rain on snow, come beside it.

    Examples
    --------
    >>> from structlib.ground.units import psf
    >>> from structlib.rules.us.snow.ground_loads import ground_snow
    >>> snow = ground_snow(15*psf, edition="ASCE 7-16", basis="allowable-stress ground snow of ASCE 7-16")
    >>> [round(roof_snow(snow, rise=r, exposure=1.0, thermal=1.0)[0] / psf, 6) for r in (2, 6)]
    [15.0, 10.5]
    """
    flat = flat_roof_snow(ground, exposure=exposure, thermal=thermal, importance=importance)
    sheds = slope_factor(rise=rise, thermal=thermal, surface=surface, run=run)
    sloped = sloped_roof_snow(flat_snow=flat, slope_factor=sheds)
    try:
        least = minimum_low_slope_snow(ground, rise=rise, importance=importance, run=run)
    except NotAsked:
        least = 0.0
    if least > sloped:
        return least, "ASCE 7-16 7.3.4", _verified("low_slope_pg", "low_slope_below")
    known = [_verified("flat_roof_share", "sloped_roof_steepest")]
    known += [row["verified"] for row in table_rows("us_snow_slope_curves") if row["surface"] == surface]
    return sloped, "ASCE 7-16 Eq. 7.3-1, 7.4-1", least_verified(known)


def thermal_change(ground, *, before, after, exposure, importance=1.0):
    """Return the flat roof snow before and after a roof becomes colder, as by more insulation.

    Parameters
    ----------
    ground : GroundSnow
        Ground snow load [MPa].
    before : str
        Thermal condition before, such as ``heated`` [-].
    after : str
        Thermal condition after, such as ``cold ventilated roof`` [-].
    exposure : float
        Exposure factor C_e [-].
    importance : float
        Importance factor I_s [-].

    Returns
    -------
    tuple of (float, float, float)
        Flat roof snow before, after, and the change over the first [MPa, MPa, -].

    Notes
    -----
    ASCE 7-16 Table 7.3-2, Eq. 7.3-1. Less heat leaks out, less snow melts: insulating an old roof adds load.

    Examples
    --------
    >>> from structlib.ground.units import psf
    >>> from structlib.rules.us.snow.ground_loads import ground_snow
    >>> snow = ground_snow(40*psf, edition="ASCE 7-16", basis="allowable-stress ground snow of ASCE 7-16")
    >>> found = thermal_change(snow, before="heated", after="cold ventilated roof", exposure=1.0)
    >>> [round(number, 3) for number in (found[0] / psf, found[1] / psf, found[2])]
    [28.0, 30.8, 0.1]
    """
    _one_of(ground)
    first, second = thermal_factor(before).value, thermal_factor(after).value
    loads = [
        flat_roof_snow(ground, exposure=exposure, thermal=thermal, importance=importance) for thermal in (first, second)
    ]
    return loads[0], loads[1], second / first - 1
