"""Snow on the ground, with its edition and basis, and what every snow rule shares."""

from dataclasses import dataclass
from typing import Any

import numpy

from structlib.ground.refusals import BadInput, OutsideRule, check_number, is_symbolic
from structlib.ground.units import ft, inch, pcf, psf
from structlib.rules.keyed import KeyedNumbers
from structlib.rules.us.inputs import check_amount
from structlib.rules.us.one_number import check_one_number, length_text, psf_text

EDITION = "ASCE 7-16"
BASIS = "allowable-stress ground snow of ASCE 7-16"
_GREATEST_GROUND_SNOW = 400 * psf
_GREATEST_RISE = 60
_NUMBERS = KeyedNumbers("us_snow_numbers")
_row, _number, _verified = _NUMBERS.row, _NUMBERS.number, _NUMBERS.verified
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
        "ground snow load", value, low=0.0, high=_GREATEST_GROUND_SNOW, shown=psf_text, hint="for example 40*psf"
    )
    for name, word, example in (("edition", edition, EDITION), ("basis", basis, BASIS)):
        if not isinstance(word, str) or not word.strip():
            raise BadInput(f"the {name} of the ground snow load must be given, got {word!r}; for example {example!r}")
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

    Notes
    -----
    ASCE 7-16 Eq. 7.7-1: gamma = 0.13 p_g + 14, in pcf and psf.

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

    Notes
    -----
    No rule: what lies on a roof today, not what the roof is designed for. Weigh a core to know the density.

    Examples
    --------
    >>> round(snow_depth_load(depth=24*inch, density=19.2*pcf) / psf, 1)
    38.4
    """
    check_number("depth", depth, low=0.0, high=30 * ft, shown=lambda d: f"{d / inch:g} in", hint="for example 24*inch")
    check_number(
        "density",
        density,
        low=0.0,
        high=62.5 * pcf,
        shown=lambda d: f"{d / pcf:g} pcf",
        hint="for example 20*pcf",
    )
    return depth * density


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
        shown=psf_text,
        hint="for example 40*psf",
    )


def _numbers_of(ground):
    value = _check_ground(ground)
    _refuse_symbol("ground snow load", value)
    return numpy.asarray(value, dtype=float)


def _one_of(ground):
    return float(check_one_number("ground snow load", _check_ground(ground), low=0.0, high=1.0, shown=psf_text))


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
        shown=length_text,
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
