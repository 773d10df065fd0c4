"""Values shown in the reader's own system, rounded as a person on site would say them."""

import math
from dataclasses import dataclass
from fractions import Fraction

from structlib.ground import units as u
from structlib.ground.refusals import BadInput, check_choice, check_number


@dataclass(frozen=True)
class _Form:
    """How one dimension is written: the unit, its text, decimals, and from what size none are needed."""

    unit: float
    text: str
    decimals: int
    whole_from: float = math.inf
    grouped: bool = False
    trimmed: bool = False


_SYSTEMS = ("us", "metric")

# dimension: (US, metric). Lengths in feet and inches are written by their own functions below.
_FORMS = {
    "length": (None, _Form(u.m, "m", 3)),
    "section length": (None, _Form(u.mm, "mm", 0)),
    "small length": (_Form(u.inch, "in", 2), _Form(u.mm, "mm", 1)),
    "force": (_Form(u.lb, "lb", 0, grouped=True), _Form(u.kN, "kN", 2)),
    "weight": (_Form(u.lb, "lb", 0, grouped=True), _Form(u.kg, "kg", 0)),  # of what people carry
    "line load": (_Form(u.plf, "plf", 1, 100, grouped=True, trimmed=True), _Form(u.kN_per_m, "kN/m", 2)),
    "area load": (_Form(u.psf, "psf", 1, 100, grouped=True, trimmed=True), _Form(u.kPa, "kPa", 2)),
    "stress": (_Form(u.psi, "psi", 0, grouped=True), _Form(u.MPa, "MPa", 2, 1000)),
    "moment": (_Form(u.lb * u.ft, "lb-ft", 0, grouped=True), _Form(u.kN * u.m, "kN-m", 2)),
    "area": (_Form(u.inch**2, "in²", 2, 1000, grouped=True), _Form(1.0, "mm²", 0)),
    "section modulus": (_Form(u.inch**3, "in³", 2, 1000, grouped=True), _Form(1e3, "cm³", 1, 10000)),
    "inertia": (_Form(u.inch**4, "in⁴", 2, 1000, grouped=True), _Form(1e4, "cm⁴", 1, 10000)),
    "stiffness": (
        _Form(1e6 * u.lb * u.inch**2, "million lb-in²", 1, 10000, grouped=True),
        _Form(u.kN * u.m**2, "kN-m²", 1, 10000),
    ),
    "weight density": (_Form(u.pcf, "pcf", 1, trimmed=True), _Form(u.kN_per_m3, "kN/m³", 2)),
    "angle": (_Form(u.deg, "deg", 1, trimmed=True),) * 2,
    "frequency": (_Form(1.0, "Hz", 1),) * 2,
    "acceleration": (_Form(u.ft, "ft/s²", 1), _Form(u.m, "m/s²", 2)),
    "ratio": (_Form(0.01, "%", 0),) * 2,
    "count": (_Form(1.0, "", 0),) * 2,
}

DIMENSIONS = tuple(_FORMS)


def show(value, dimension, system="us", precision=None):
    """Write a value with its unit, in the reader's system.

    Parameters
    ----------
    value : float
        The value in the library's own units (mm, N, MPa, radians) [by dimension].
    dimension : str
        What it is: ``length``, ``section length``, ``small length``, ``force`` ... [-].
    system : str
        ``us`` or ``metric`` [-].
    precision : int
        Decimals, or for feet and inches the denominator of the fraction; None for the usual [-].

    Returns
    -------
    str
        The text, with its unit [-].

    Examples
    --------
    >>> show(12.5 * 304.8 + 0.5 * 25.4, "length")
    '12 ft 6 1/2 in'
    >>> show(6672.33, "force"), show(6672.33, "force", "metric")
    ('1,500 lb', '6.67 kN')
    >>> show(0.83, "ratio")
    '83 %'
    """
    if not (isinstance(dimension, str) and dimension in _FORMS and isinstance(system, str) and system in _SYSTEMS):
        check_choice("dimension", dimension, _FORMS)
        check_choice("system", system, _SYSTEMS)
    form = _FORMS[dimension][system != "us"]
    if not (type(value) is float and -1e30 <= value <= 1e30):
        value = _plain(value, dimension)
    if form is None or precision is not None:
        _check_precision(precision, fraction=form is None)
    if form is None:
        return _inches(value, precision or 16, feet=dimension == "length")
    if dimension == "length" and precision is None and abs(value) < u.m:
        form = _Form(u.mm, "mm", 0)
    if dimension == "count" and value != round(value):
        raise BadInput(f"a count must be a whole number, got {value!r}; for example 3")
    if dimension == "ratio" and precision is None:
        precision = _percent_decimals(value)
    return _decimal(value / form.unit, form, precision)


def _plain(value, dimension):
    if hasattr(value, "free_symbols"):
        raise BadInput(f"a {dimension} must be a number to be shown, got the symbol {value}")
    check_number(dimension, value, low=-1e30, high=1e30)
    try:
        return float(value)
    except TypeError:
        raise BadInput(f"a {dimension} must be one number to be shown, got a list of numbers") from None


def _check_precision(precision, *, fraction):
    allowed = (1, 2, 4, 8, 16, 32, 64) if fraction else tuple(range(10))
    if precision is not None and (type(precision) is not int or precision not in allowed):
        raise BadInput(f"precision must be one of {', '.join(map(str, allowed))}, got {precision!r}")


def _decimal(number, form, precision):
    decimals = form.decimals if precision is None else precision
    if precision is None and round(abs(number), decimals) >= form.whole_from:
        decimals = 0
    text = f"{number:,.{decimals}f}" if form.grouped else f"{number:.{decimals}f}"
    if form.trimmed and "." in text and precision is None:
        text = text.rstrip("0").rstrip(".")
    if text[0] == "-" and float(text.replace(",", "")) == 0:
        text = text.lstrip("-")
    return f"{text} {form.text}".rstrip()


def _percent_decimals(ratio):
    """Enough decimals that a share just off 1 is not shown as 100 %, which would hide who is over."""
    percent = 100 * ratio
    if abs(percent - 100) < 5e-4:
        return 0
    if abs(percent - 100) > 0.5:
        return 0
    return next((d for d in range(3) if round(percent, d) != 100), 3)


def _inches(value, denominator, *, feet):
    sign = "-" if value < 0 else ""
    parts = round(abs(value) / u.inch * denominator)
    whole, part = divmod(parts, denominator)
    foot, inch = divmod(whole, 12) if feet else (0, whole)
    fraction = str(Fraction(part, denominator)) if part else ""
    inches = " ".join(word for word in (str(inch) if inch or not fraction else "", fraction) if word)
    if foot and inches == "0":
        return f"{sign}{foot} ft"
    text = f"{foot} ft {inches} in" if foot else f"{inches} in"
    return sign + text if parts else "0 in"
