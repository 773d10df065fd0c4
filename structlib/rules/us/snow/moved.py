"""Snow that wind has moved: the unbalanced gable, and drifts at a step (ASCE 7-16 7.6, 7.7)."""

from dataclasses import dataclass

import numpy

from structlib.ground.refusals import BadInput, NotAsked, OutsideRule, check_number
from structlib.ground.units import ft, psf
from structlib.rules.us.inputs import check_yes_or_no
from structlib.rules.us.one_number import check_one_number, length_text, psf_text
from structlib.rules.us.snow.ground_loads import (
    _GREATEST_GROUND_SNOW,
    _SLACK,
    _check_importance,
    _check_width,
    _number,
    _numbers_of,
    _one_of,
    _one_slope,
    _refuse_symbol,
    _row,
    _verified,
    snow_density,
    snow_depth_load,
)


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


def drift_height(ground, *, fetch, importance=1.0):
    """Return the height of a drift h_d from the length of roof that the wind sweeps.

    Parameters
    ----------
    ground : GroundSnow
        Ground snow load, more than zero [MPa].
    fetch : float or numpy.ndarray
        Length of roof upwind l_u, up to 600 ft; under 20 ft it counts as 20 ft [mm].
    importance : float
        Importance factor I_s [-].

    Returns
    -------
    float or numpy.ndarray
        Height of the drift above the balanced snow [mm].

    Notes
    -----
    ASCE 7-16 Fig. 7.6-1 with its note on short fetches: in ft and psf,
    h_d = sqrt(I_s) (0.43 l_u^(1/3) (p_g + 10)^(1/4) - 1.5).

    Examples
    --------
    >>> from structlib.rules.us.snow.ground_loads import ground_snow
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
        "fetch", fetch, low=0.0, high=600 * ft, low_allowed=False, shown=length_text, hint="for example 100*ft"
    )
    counted = numpy.maximum(fetch, _number("drift_fetch_least"))
    feet = (
        _number("drift_coefficient") * numpy.cbrt(counted / ft) * ((pg + _number("drift_pg")) / psf) ** 0.25
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
        Length of the higher roof along the wind, up to 600 ft; under 20 ft it counts as 20 ft [mm].
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
    OutsideRule
        When the wall is lower than the drift would be, which this function does not cover.

    Notes
    -----
    ASCE 7-16 7.7.1. The drift blown against the wall from below, and snow that slides down, are not
    here.

    Examples
    --------
    >>> from structlib.rules.us.snow.ground_loads import ground_snow
    >>> snow = ground_snow(40*psf, edition="ASCE 7-16", basis="allowable-stress ground snow of ASCE 7-16")
    >>> found = step_drift(snow, upper_length=100*ft, clear_height=9*ft)
    >>> round(found.greatest_load / psf, 1), round(found.width / ft, 2)
    (73.1, 15.23)
    """
    _one_of(ground)
    check_one_number("upper length", upper_length, low=0.0, high=600 * ft, shown=length_text)
    check_one_number("clear height", clear_height, low=0.0, high=200 * ft, shown=length_text, hint="for example 9*ft")
    height = drift_height(ground, fetch=upper_length, importance=importance)
    if clear_height < height:
        raise OutsideRule(
            f"the drift would be {length_text(height)} high and the wall stands {length_text(clear_height)} "
            "above the snow; the wider drift of a low wall is not in this library, ask the engineer"
        )
    density = snow_density(ground)
    return StepDrift(
        height=height,
        density=density,
        greatest_load=snow_depth_load(depth=height, density=density),
        width=_number("drift_reach") * height,
        verified=_verified("drift_coefficient", "drift_fetch_least", "density_slope", "drift_reach"),
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
    NotAsked
        When the slope is outside 1/2:12 to 7:12, where the rule asks for no unbalanced snow.

    Notes
    -----
    ASCE 7-16 7.6.1 and Fig. 7.6-2. Without simple rafters a W under 20 ft counts as 20 ft for the drift.

    Examples
    --------
    >>> from structlib.rules.us.snow.ground_loads import ground_snow
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
    check_one_number("balanced snow", balanced, low=0.0, high=_GREATEST_GROUND_SNOW, shown=psf_text)
    height = drift_height(ground, fetch=eave_to_ridge, importance=importance)
    root = (run / rise) ** 0.5
    return GableSnow(
        windward=_number("windward_share") * balanced,
        leeward=balanced,
        surcharge=snow_depth_load(depth=height, density=snow_density(ground)) / root,
        surcharge_length=_number("surcharge_length") * height * root / _number("surcharge_length_divisor"),
        rule="a drift behind the ridge on top of the balanced snow, little on the other slope",
        clause=clause,
        verified=_verified(
            "windward_share", "surcharge_length", "drift_coefficient", "drift_fetch_least", "density_slope"
        ),
    )


def _refuse_slope(rise_in_12):
    low, high = _number("unbalanced_rise_least"), _number("unbalanced_rise_greatest")
    if not low * (1 - _SLACK) <= rise_in_12 <= high * (1 + _SLACK):
        raise NotAsked(
            f"unbalanced snow is asked on slopes of {low:g} in 12 to {high:g} in 12, got "
            f"{rise_in_12:.3g} in 12; outside that the standard asks for none"
        )
