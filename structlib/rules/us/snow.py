"""Snow on a roof (ASCE 7-16 chapter 7), and roof live load (IRC R301.6), on plan.

A ground snow load counts for nothing without its edition and basis, so every rule here takes a
``GroundSnow``. Not here: snow that slides from a higher roof, drifts at parapets and in valleys, ice at
eaves, curved and sawtooth roofs.
"""

from dataclasses import dataclass
from functools import lru_cache
from typing import Any

import numpy

from structlib.ground.refusals import BadInput, OutsideRule, check_choice, check_number, is_symbolic
from structlib.ground.showing import show
from structlib.ground.tables import in_library_units, table_row, table_rows
from structlib.ground.units import deg, ft, inch, pcf, psf
from structlib.rules.check import Factor, least_verified
from structlib.rules.us import factors
from structlib.rules.us.inputs import check_amount, check_yes_or_no
from structlib.rules.us.one_number import check_one_number

EDITION = "ASCE 7-16"
BASIS = "allowable-stress ground snow of ASCE 7-16"
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

_GREATEST_GROUND_SNOW = 400 * psf
_GREATEST_RISE = 60
_TABLE = "us_snow_numbers"
_SLACK = 1e-9  # a slope or length computed from feet and inches must not miss a limit by rounding


@dataclass(frozen=True)
class GroundSnow:
    """Ground snow load p_g with the edition and the basis it belongs to; made by ``ground_snow``.

    ``value`` is in MPa: a number, an array or a symbol. ``edition`` and ``basis`` are as accepted by
    ``ground_snow``, ``source`` says where the number comes from.
    """

    value: Any
    edition: str
    basis: str
    source: str = ""


@dataclass(frozen=True)
class GableSnow:
    """Unbalanced snow on a gable roof, as loads on plan.

    ``windward`` and ``leeward`` [MPa] lie over the whole of each slope; ``surcharge`` [MPa] comes on top of
    the leeward one, from the ridge down over ``surcharge_length`` [mm] on plan. ``rule`` says which part
    of the clause gave them.
    """

    windward: float
    leeward: float
    surcharge: float
    surcharge_length: float
    rule: str
    clause: str
    verified: str


@dataclass(frozen=True)
class StepDrift:
    """A drift on a lower roof against the wall of a higher one: a triangle on top of the balanced snow.

    ``height`` [mm], ``density`` [N/mm3], ``greatest_load`` [MPa] at the wall, ``width`` [mm] to where
    it ends.
    """

    height: float
    density: float
    greatest_load: float
    width: float
    verified: str


@dataclass(frozen=True)
class RoofLoadChoice:
    """Roof live load beside snow: which is larger, and which asks more of wood.

    ``roof_live`` and ``snow`` [MPa] on plan; ``larger`` names the larger; ``asks_more`` names the one whose
    sum with the dead load, over its load duration factor, is larger. ``live_over_time`` and
    ``snow_over_time`` [MPa] are those two sums.
    """

    roof_live: float
    snow: float
    larger: str
    asks_more: str
    live_over_time: float
    snow_over_time: float


@lru_cache(maxsize=None)
def _row(key):
    return table_row(_TABLE, key=key)


def _number(key):
    return in_library_units(_row(key), "value")


def _verified(*keys):
    return least_verified(_row(key)["verified"] for key in keys)


# ---- ground snow and the factors --------------------------------------------------------------------------


def ground_snow(value, *, edition, basis, source=""):
    """Return a ground snow load, or refuse one that belongs to another edition or basis.

    Parameters
    ----------
    value : float, numpy.ndarray or sympy expression
        Ground snow load p_g, 0 to 400 psf [MPa].
    edition : str
        Edition of the standard that the number belongs to: ``ASCE 7-16`` [-].
    basis : str
        Basis of the number: ``allowable-stress ground snow of ASCE 7-16`` [-].
    source : str
        Where the number comes from, such as the building department [-].

    Returns
    -------
    GroundSnow
        The load with its edition and basis [MPa].

    Raises
    ------
    BadInput
        When the value is not a number in its range, or edition and basis are not words that are known.
    OutsideRule
        When the edition or the basis is another one: its numbers must not go into these formulas.

    Notes
    -----
    The 2022 edition maps a ground snow for each risk category, aimed at a reliability, at the level of
    strength design (load factor 1.0); that of 2016 is a 50-year value for the load factors 1.0 of
    allowable stress and 1.6 of strength. The two differ by place, so no one factor turns one into the other.

    Examples
    --------
    >>> ground_snow(40*psf, edition="ASCE 7-16", basis="allowable-stress ground snow of ASCE 7-16").edition
    'ASCE 7-16'
    >>> ground_snow(64*psf, edition="ASCE 7-22", basis="reliability-targeted")
    Traceback (most recent call last):
    ...
    structlib.ground.refusals.OutsideRule: a ground snow load of ASCE 7-22 is on another basis \
(reliability-targeted, strength level) and must not go into the formulas of ASCE 7-16; ask the building \
department for the ground snow load of ASCE 7-16
    """
    check_number(
        "ground snow load", value, low=0.0, high=_GREATEST_GROUND_SNOW, shown=_psf, hint="for example 40*psf"
    )
    for name, word, example in (("edition", edition, EDITION), ("basis", basis, BASIS)):
        if not isinstance(word, str) or not word.strip():
            raise BadInput(
                f"the {name} of the ground snow load must be given, got {word!r}; for example {example!r}"
            )
    if "7-22" in edition or "2022" in edition:
        raise OutsideRule(
            f"a ground snow load of {edition} is on another basis (reliability-targeted, strength level) "
            f"and must not go into the formulas of {EDITION}; ask the building department for the ground "
            f"snow load of {EDITION}"
        )
    if edition != EDITION:
        raise OutsideRule(
            f"the formulas here are those of {EDITION}, got a ground snow load of {edition!r}; ask the "
            f"building department which edition is in force, for example edition={EDITION!r}"
        )
    if basis != BASIS:
        raise OutsideRule(
            f"the basis {basis!r} does not fit the formulas of {EDITION}, whose ground snow is the "
            f"50-year value of allowable-stress design; accepted is {BASIS!r}"
        )
    if not isinstance(source, str):
        raise BadInput(f"the source must be words, got {type(source).__name__}; for example 'county list'")
    if not is_symbolic(value) and numpy.ndim(value):
        value = numpy.asarray(value, dtype=float)
    return GroundSnow(value, edition, basis, source)


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

    Raises
    ------
    BadInput
        When a word is not known; the nearest are named.

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

    Raises
    ------
    BadInput
        When the word is not known; the nearest are named.

    Notes
    -----
    ASCE 7-16 Table 7.3-2, recalled.

    Examples
    --------
    >>> thermal_factor("cold ventilated roof").value
    1.1
    """
    check_choice("thermal condition", condition, THERMAL_CONDITIONS)
    return _factor("C_t", "Ct", THERMAL_CONDITIONS[condition])


def importance_factor(category="II"):
    """Return the importance factor I_s by risk category; a house is II.

    Parameters
    ----------
    category : str
        ``I``, ``II``, ``III`` or ``IV`` [-].

    Returns
    -------
    structlib.rules.check.Factor
        I_s with its clause and how it is known [-].

    Raises
    ------
    BadInput
        When the category is not known.

    Notes
    -----
    ASCE 7-16 Table 1.5-2, recalled.

    Examples
    --------
    >>> importance_factor("II").value
    1.0
    """
    check_choice("risk category", category, RISK_CATEGORIES)
    name = f"Risk Category {category}" + (" (houses)" if category == "II" else "")
    return _factor("I_s", "Is", name)


def _factor(symbol, kind, case):
    row = table_row("us_snow_factors", factor=kind, case=case)
    return Factor(symbol, row["value"], case, row["source"], row["verified"])


# ---- balanced snow ----------------------------------------------------------------------------------------


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

    Raises
    ------
    BadInput
        When the ground snow has no basis, or a factor is not a number in its range.

    Notes
    -----
    ASCE 7-16 Eq. 7.3-1: p_f = 0.7 C_e C_t I_s p_g. The least low-slope snow is a case of its own.

    Examples
    --------
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
    BadInput
        When an input is not a number in its range, or a warm slippery roof lacks its R-value.
    OutsideRule
        When the thermal factor lies between those that the curves are for.

    Notes
    -----
    ASCE 7-16 Figure 7.4-1, recalled. Asphalt shingles are not slippery. A warm slippery roof takes the
    slippery curve only with R 30 and more (R 20 where ventilated); else the other curve holds.

    Examples
    --------
    >>> round(slope_factor(rise=12, thermal=1.0, surface="other"), 3)
    0.625
    """
    return _on_curve(_slope_angle(rise, run), _curve(thermal, surface, r_value, vented))


def _curve(thermal, surface, r_value, vented):
    check_choice("surface", surface, SURFACES)
    check_one_number("thermal factor", thermal, low=0.85, high=1.3, hint="for example 1.1")
    if thermal <= 1.0:
        if surface == "slippery" and not _insulated_for_sliding(r_value, vented):
            surface = "other"
        return table_row("us_snow_slope_curves", roof="warm", surface=surface)
    if abs(thermal - 1.1) < _SLACK:
        return table_row("us_snow_slope_curves", roof="cold ventilated", surface=surface)
    if thermal >= 1.2 - _SLACK:
        return table_row("us_snow_slope_curves", roof="cold", surface=surface)
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

    Raises
    ------
    BadInput
        When an input is not a number in its range.

    Notes
    -----
    ASCE 7-16 Eq. 7.4-1.

    Examples
    --------
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
    BadInput
        When an input is not a number in its range.
    OutsideRule
        When the slope is 15 deg or more, where no least is asked.

    Notes
    -----
    ASCE 7-16 7.3.4 for gable, hip and single-slope roofs, recalled.

    Examples
    --------
    >>> snow = ground_snow(15*psf, edition="ASCE 7-16", basis="allowable-stress ground snow of ASCE 7-16")
    >>> round(minimum_low_slope_snow(snow, rise=0, importance=0.8) / psf, 6)
    12.0
    """
    pg = _numbers_of(ground)
    _check_importance(importance)
    angle = _one_slope(rise, run)
    if angle >= _number("low_slope_below") * (1 - _SLACK):
        raise OutsideRule(
            f"the least snow is asked on slopes under {_row('low_slope_below')['value']:g} deg, got "
            f"{angle / deg:.1f} deg; there the balanced and unbalanced snow decide"
        )
    least = importance * numpy.minimum(pg, _number("low_slope_pg"))
    return float(least) if numpy.ndim(least) == 0 else least


def rain_on_snow(ground, *, rise, eave_to_ridge, run=12):
    """Return the rain-on-snow surcharge on a nearly flat roof; it goes with balanced snow only.

    Parameters
    ----------
    ground : GroundSnow
        Ground snow load [MPa].
    rise : float
        Rise of the roof in ``run`` [same unit as run].
    eave_to_ridge : float
        Horizontal distance from eave to ridge W [mm].
    run : float
        Run of the roof [same unit as rise].

    Returns
    -------
    float
        5 psf, or zero where the rule asks for none [MPa].

    Raises
    ------
    BadInput
        When an input is not a number in its range.

    Notes
    -----
    ASCE 7-16 7.10, recalled: where 0 < p_g <= 20 psf and the slope in degrees is under W / 50, W in feet.

    Examples
    --------
    >>> snow = ground_snow(20*psf, edition="ASCE 7-16", basis="allowable-stress ground snow of ASCE 7-16")
    >>> round(rain_on_snow(snow, rise=0.1, eave_to_ridge=40*ft) / psf, 6)
    5.0
    """
    pg = _one_of(ground)
    angle = _one_slope(rise, run)
    _check_width(eave_to_ridge)
    flat = angle / deg < (eave_to_ridge / ft) / _number("rain_width")
    return _number("rain_on_snow") if 0 < pg <= _number("rain_pg") * (1 + _SLACK) and flat else 0.0


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

    Raises
    ------
    BadInput
        When an input is no such thing.

    Notes
    -----
    ASCE 7-16 Table 7.3-2, Eq. 7.3-1. Less heat leaks out, less snow melts: insulating an old roof adds load.

    Examples
    --------
    >>> snow = ground_snow(40*psf, edition="ASCE 7-16", basis="allowable-stress ground snow of ASCE 7-16")
    >>> found = thermal_change(snow, before="heated", after="cold ventilated roof", exposure=1.0)
    >>> [round(number, 3) for number in (found[0] / psf, found[1] / psf, found[2])]
    [28.0, 30.8, 0.1]
    """
    _one_of(ground)
    first, second = thermal_factor(before).value, thermal_factor(after).value
    loads = [
        flat_roof_snow(ground, exposure=exposure, thermal=thermal, importance=importance)
        for thermal in (first, second)
    ]
    return loads[0], loads[1], second / first - 1


# ---- density, depth, drifts -------------------------------------------------------------------------------


def snow_density(ground):
    """Return the weight density of drifted snow gamma, as the standard takes it.

    Parameters
    ----------
    ground : GroundSnow
        Ground snow load [MPa].

    Returns
    -------
    float or numpy.ndarray
        Weight density, at most 30 pcf [N/mm3].

    Raises
    ------
    BadInput
        When the ground snow has no basis.

    Notes
    -----
    ASCE 7-16 Eq. 7.7-1, recalled: gamma = 0.13 p_g + 14, in pcf and psf.

    Examples
    --------
    >>> snow = ground_snow(40*psf, edition="ASCE 7-16", basis="allowable-stress ground snow of ASCE 7-16")
    >>> round(snow_density(snow) / pcf, 1)
    19.2
    """
    pg = _numbers_of(ground)
    density = numpy.minimum(
        (_number("density_slope") * pg / psf) * pcf + _number("density_constant"), _number("density_greatest")
    )
    return float(density) if numpy.ndim(density) == 0 else density


def snow_depth_load(*, depth, density):
    """Return the weight of snow lying on a surface: depth times weight density, a plain estimate.

    Parameters
    ----------
    depth : float, numpy.ndarray or sympy expression
        Depth of the snow, up to 30 ft [mm].
    density : float, numpy.ndarray or sympy expression
        Weight density, up to that of ice and water: 62.4 pcf [N/mm3].

    Returns
    -------
    float, numpy.ndarray or sympy expression
        Load on plan [MPa].

    Raises
    ------
    BadInput
        When an input is not a number in its range.

    Notes
    -----
    No rule: what lies on a roof today, not what the roof is designed for. Weigh a core to know the density.

    Examples
    --------
    >>> round(snow_depth_load(depth=24*inch, density=19.2*pcf) / psf, 1)
    38.4
    """
    check_number(
        "depth", depth, low=0.0, high=30 * ft, shown=lambda d: f"{d / inch:g} in", hint="for example 24*inch"
    )
    check_number(
        "density",
        density,
        low=0.0,
        high=62.5 * pcf,
        shown=lambda d: f"{d / pcf:g} pcf",
        hint="for example 20*pcf",
    )
    return depth * density


def drift_height(ground, *, fetch, importance=1.0):
    """Return the height of a drift h_d from the length of roof that the wind sweeps.

    Parameters
    ----------
    ground : GroundSnow
        Ground snow load, more than zero [MPa].
    fetch : float or numpy.ndarray
        Length of roof upwind l_u, 20 ft to 600 ft [mm].
    importance : float
        Importance factor I_s [-].

    Returns
    -------
    float or numpy.ndarray
        Height of the drift above the balanced snow [mm].

    Raises
    ------
    BadInput
        When an input is not a number in its range.
    OutsideRule
        When the fetch is under 20 ft, which the editions treat in different ways.

    Notes
    -----
    ASCE 7-16 Fig. 7.6-1, recalled: h_d = sqrt(I_s) (0.43 l_u^(1/3) (p_g + 10)^(1/4) - 1.5), in ft and psf.

    Examples
    --------
    >>> snow = ground_snow(40*psf, edition="ASCE 7-16", basis="allowable-stress ground snow of ASCE 7-16")
    >>> round(drift_height(snow, fetch=100*ft) / ft, 3)
    3.807
    """
    pg = _numbers_of(ground)
    if numpy.any(pg <= 0):
        raise BadInput("a drift needs a ground snow load above zero, for example 40*psf")
    _check_importance(importance)
    _refuse_symbol("fetch", fetch)
    check_number(
        "fetch", fetch, low=0.0, high=600 * ft, low_allowed=False, shown=_length, hint="for example 100*ft"
    )
    shortest = _number("drift_fetch_least")
    if numpy.any(numpy.asarray(fetch) < shortest * (1 - _SLACK)):
        raise OutsideRule(
            f"the drift height is here for a fetch of {_length(shortest)} and more, got "
            f"{_length(float(numpy.min(fetch)))}; for shorter ones the editions of the standard differ, "
            "ask the engineer"
        )
    feet = (
        _number("drift_coefficient")
        * numpy.cbrt(numpy.asarray(fetch) / ft)
        * ((pg + _number("drift_pg")) / psf) ** 0.25
        - _number("drift_less") / ft
    )
    height = feet * ft * numpy.sqrt(importance)
    return float(height) if numpy.ndim(height) == 0 else height


def step_drift(ground, *, upper_length, clear_height, importance=1.0):
    """Return the drift on a lower roof, blown from a higher one beside it.

    Parameters
    ----------
    ground : GroundSnow
        Ground snow load [MPa].
    upper_length : float
        Length of the higher roof along the wind, 20 ft to 600 ft [mm].
    clear_height : float
        Height of the wall above the balanced snow of the lower roof [mm].
    importance : float
        Importance factor I_s [-].

    Returns
    -------
    StepDrift
        Height, density, greatest load, width [mm, N/mm3, MPa, mm].

    Raises
    ------
    BadInput
        When an input is not a number in its range.
    OutsideRule
        When the wall is lower than the drift would be, which this function does not cover.

    Notes
    -----
    ASCE 7-16 7.7.1, recalled. The drift blown against the wall from below, and snow that slides down, are not
    here.

    Examples
    --------
    >>> snow = ground_snow(40*psf, edition="ASCE 7-16", basis="allowable-stress ground snow of ASCE 7-16")
    >>> found = step_drift(snow, upper_length=100*ft, clear_height=9*ft)
    >>> round(found.greatest_load / psf, 1), round(found.width / ft, 2)
    (73.1, 15.23)
    """
    _one_of(ground)
    check_one_number("upper length", upper_length, low=0.0, high=600 * ft, shown=_length)
    check_one_number(
        "clear height", clear_height, low=0.0, high=200 * ft, shown=_length, hint="for example 9*ft"
    )
    height = drift_height(ground, fetch=upper_length, importance=importance)
    if clear_height < height:
        raise OutsideRule(
            f"the drift would be {_length(height)} high and the wall stands {_length(clear_height)} "
            "above the snow; the wider drift of a low wall is not in this library, ask the engineer"
        )
    density = snow_density(ground)
    return StepDrift(
        height=height,
        density=density,
        greatest_load=snow_depth_load(depth=height, density=density),
        width=_number("drift_reach") * height,
        verified=_verified("drift_coefficient", "density_slope", "drift_reach"),
    )


def unbalanced_gable(ground, *, rise, eave_to_ridge, simple_rafters, balanced=None, importance=1.0, run=12):
    """Return the unbalanced snow on a gable roof: the wind clears one slope and loads the other.

    Parameters
    ----------
    ground : GroundSnow
        Ground snow load [MPa].
    rise : float
        Rise of the roof in ``run``: 1/2 in 12 to 7 in 12 [same unit as run].
    eave_to_ridge : float
        Horizontal distance from eave to ridge W [mm].
    simple_rafters : bool
        Whether rafters of one section span from eave to ridge and rest there, the common house [-].
    balanced : float or None
        Balanced snow p_s; needed where the roof is wider, or its rafters are not simple [MPa].
    importance : float
        Importance factor I_s [-].
    run : float
        Run of the roof [same unit as rise].

    Returns
    -------
    GableSnow
        Loads on plan on either slope [MPa, mm].

    Raises
    ------
    BadInput
        When an input is not a number in its range, or the balanced snow is missing where it is needed.
    OutsideRule
        When the slope is outside 1/2:12 to 7:12, where the rule asks for no unbalanced snow; or the roof is
        under 20 ft from eave to ridge without simple rafters.

    Notes
    -----
    ASCE 7-16 7.6.1 and Fig. 7.6-2, recalled.

    Examples
    --------
    >>> snow = ground_snow(40*psf, edition="ASCE 7-16", basis="allowable-stress ground snow of ASCE 7-16")
    >>> narrow = unbalanced_gable(snow, rise=6, eave_to_ridge=16*ft, simple_rafters=True)
    >>> round(narrow.leeward / psf, 6), narrow.windward
    (40.0, 0.0)
    """
    pg = _one_of(ground)
    _one_slope(rise, run)
    _check_width(eave_to_ridge)
    check_yes_or_no("simple_rafters", simple_rafters)
    _check_importance(importance)
    _refuse_slope(12.0 * rise / run)
    clause = _row("narrow_roof")["source"]
    if simple_rafters and eave_to_ridge <= _number("narrow_roof") * (1 + _SLACK):
        return GableSnow(
            windward=0.0,
            leeward=importance * pg,
            surcharge=0.0,
            surcharge_length=0.0,
            rule="20 ft or less from eave to ridge, simple rafters: the whole ground snow on one slope",
            clause=clause,
            verified=_verified("narrow_roof", "unbalanced_rise_greatest"),
        )
    if balanced is None:
        raise BadInput(
            "more than 20 ft from eave to ridge, or without simple rafters, the unbalanced snow goes by "
            "the balanced one; give balanced, for example balanced=30.8*psf"
        )
    check_one_number("balanced snow", balanced, low=0.0, high=_GREATEST_GROUND_SNOW, shown=_psf)
    height = drift_height(ground, fetch=eave_to_ridge, importance=importance)
    root = (run / rise) ** 0.5
    return GableSnow(
        windward=_number("windward_share") * balanced,
        leeward=balanced,
        surcharge=snow_depth_load(depth=height, density=snow_density(ground)) / root,
        surcharge_length=_number("surcharge_length") * height * root / _number("surcharge_length_divisor"),
        rule="a drift behind the ridge on top of the balanced snow, little on the other slope",
        clause=clause,
        verified=_verified("windward_share", "surcharge_length", "drift_coefficient", "density_slope"),
    )


def _refuse_slope(rise_in_12):
    low, high = _number("unbalanced_rise_least"), _number("unbalanced_rise_greatest")
    if not low * (1 - _SLACK) <= rise_in_12 <= high * (1 + _SLACK):
        raise OutsideRule(
            f"unbalanced snow is asked on slopes of {low:g} in 12 to {high:g} in 12, got "
            f"{rise_in_12:.3g} in 12; outside that the standard asks for none, and this rule has no "
            "number"
        )


# ---- roof live load ---------------------------------------------------------------------------------------


def roof_live_load(*, rise, tributary_area, run=12):
    """Return the least roof live load on plan: people and material during work on the roof.

    Parameters
    ----------
    rise : float
        Rise of the roof in ``run`` [same unit as run].
    tributary_area : float
        Area in plan that the member carries [mm2].
    run : float
        Run of the roof [same unit as rise].

    Returns
    -------
    tuple of (float, str, str)
        Load on plan, its clause, and how it is known [MPa, -, -].

    Raises
    ------
    BadInput
        When an input is not a number in its range.

    Notes
    -----
    IRC 2021 Table R301.6. It acts in place of snow, not with it.

    Examples
    --------
    >>> round(roof_live_load(rise=3, tributary_area=16*ft**2)[0] / psf, 6)
    20.0
    """
    _one_slope(rise, run)
    check_one_number(
        "tributary area",
        tributary_area,
        low=0.0,
        high=1e6 * ft**2,
        low_allowed=False,
        shown=lambda a: f"{a / ft**2:g} ft2",
        hint="for example 32*ft**2",
    )
    steep, area = 12.0 * rise / run, tributary_area / ft**2
    for row in table_rows("us_roof_live_loads"):  # the rows leave no gap: every slope and area has one
        flat_enough = row["rise_max"] is None or steep < row["rise_max"] * (1 - _SLACK)
        small_enough = row["area_max_ft2"] is None or area <= row["area_max_ft2"] * (1 + _SLACK)
        if flat_enough and small_enough:
            break
    return in_library_units(row, "area_load_psf"), row["source"], row["verified"]


def roof_live_or_snow(*, roof_live, snow, dead=0.0):
    """Set roof live load beside snow: they do not add, and wood bears the short one better.

    Parameters
    ----------
    roof_live : float
        Roof live load on plan [MPa].
    snow : float
        Roof snow on plan [MPa].
    dead : float
        Dead load on plan [MPa].

    Returns
    -------
    RoofLoadChoice
        Both, which is larger, and which asks more of wood [MPa, -].

    Raises
    ------
    BadInput
        When an input is not a number in its range.

    Notes
    -----
    ASCE 7-16 2.4.1: D + L_r or D + S. NDS 2018 Table 2.3.2: load duration 1.25 and 1.15. A sag goes by the
    larger load, whatever its duration.

    Examples
    --------
    >>> found = roof_live_or_snow(roof_live=20*psf, snow=19*psf, dead=10*psf)
    >>> found.larger, found.asks_more
    ('roof live', 'snow')
    """
    for name, load in (("roof live load", roof_live), ("roof snow", snow), ("dead load", dead)):
        check_one_number(name, load, low=0.0, high=_GREATEST_GROUND_SNOW, shown=_psf)
    live_time, snow_time = (factors.time_factor(["dead", word])[0] for word in ("roof live", "snow"))
    live_over, snow_over = (dead + roof_live) / live_time, (dead + snow) / snow_time
    return RoofLoadChoice(
        roof_live=roof_live,
        snow=snow,
        larger="roof live" if roof_live > snow else "snow",
        asks_more="roof live" if live_over > snow_over else "snow",
        live_over_time=live_over,
        snow_over_time=snow_over,
    )


# ---- refusals ---------------------------------------------------------------------------------------------


def _check_ground(ground):
    if not isinstance(ground, GroundSnow):
        raise BadInput(
            f"a ground snow load needs its edition and basis, got {type(ground).__name__}; for example "
            f"ground_snow(40*psf, edition={EDITION!r}, basis={BASIS!r})"
        )
    if ground.edition != EDITION or ground.basis != BASIS:
        raise OutsideRule(f"the ground snow load is not on the basis of {EDITION}; make it with ground_snow")
    return check_number(
        "ground snow load",
        ground.value,
        low=0.0,
        high=_GREATEST_GROUND_SNOW,
        shown=_psf,
        hint="for example 40*psf",
    )


def _numbers_of(ground):
    value = _check_ground(ground)
    _refuse_symbol("ground snow load", value)
    return numpy.asarray(value, dtype=float)


def _one_of(ground):
    return float(check_one_number("ground snow load", _check_ground(ground), low=0.0, high=1.0, shown=_psf))


def _refuse_symbol(name, value):
    if is_symbolic(value):
        raise BadInput(f"{name} must be a number here, got the symbol {value}; for example 40*psf or 20*ft")


def _check_thermal(value):
    check_number("thermal factor", value, low=0.85, high=1.3, hint="for example 1.1")


def _check_importance(value):
    check_number("importance factor", value, low=0.8, high=1.2, hint="1.0 for a house")


def _check_load(name, value):
    check_amount(name, value, zero=True, hint="for example 30*psf")


def _check_width(value):
    check_one_number(
        "distance from eave to ridge",
        value,
        low=0.0,
        high=600 * ft,
        low_allowed=False,
        shown=_length,
        hint="for example 14*ft",
    )


def _slope_angle(rise, run):
    """Angle of the roof, rad; refuses what is no slope."""
    _refuse_symbol("rise", rise)
    check_number("rise", rise, low=0.0, high=_GREATEST_RISE, hint="for example rise 6 in run 12")
    check_one_number("run", run, low=0.0, high=60, low_allowed=False, hint="for example rise 6 in run 12")
    return numpy.arctan(numpy.asarray(rise, dtype=float) / run)


def _one_slope(rise, run):
    check_one_number("rise", rise, low=0.0, high=_GREATEST_RISE, hint="for example rise 6 in run 12")
    return float(_slope_angle(rise, run))


def _psf(load):
    return f"{load / psf:g} psf"


def _length(value):
    return show(value, "length")
