"""Lengths, loads and stresses read as people write them; ambiguous text is asked about, never guessed."""

import math
import re
from functools import lru_cache

from structlib.ground import units as u
from structlib.ground.refusals import BadInput, check_choice

# How each unit may be written, by dimension; the first one named is used in questions.
_FEET = dict.fromkeys(("ft", "'"), u.ft)
_INCHES = dict.fromkeys(("in", '"'), u.inch)
_LENGTH = {**_FEET, **_INCHES, "mm": u.mm, "cm": u.cm, "m": u.m}

_FORCE = {
    **dict.fromkeys(("lb", "lbf"), u.lb),
    "kip": u.kip,
    "kn": u.kN,
    "n": u.N,
}

SPELLINGS = {
    "length": _LENGTH,
    "section length": _LENGTH,
    "small length": _LENGTH,
    "force": _FORCE,
    "weight": {**_FORCE, "kg": u.kg},  # of what people carry: a kilogram is what it weighs
    "line load": {
        **dict.fromkeys(("plf", "lb/ft", "lb/lin ft"), u.plf),
        **dict.fromkeys(("klf", "kip/ft"), u.kip / u.ft),
        **dict.fromkeys(("lb/in", "pli"), u.lb / u.inch),
        "kn/m": u.kN_per_m,
        "n/m": u.N / u.m,
        "n/mm": u.kN_per_m,
    },
    "area load": {
        **dict.fromkeys(("psf", "lb/ft2", "lb/sq ft"), u.psf),
        "ksf": 1000 * u.psf,
        **dict.fromkeys(("kpa", "kn/m2"), u.kPa),
        **dict.fromkeys(("pa", "n/m2"), u.kPa / 1000),
    },
    "stress": {
        **dict.fromkeys(("psi", "lb/in2", "lb/sq in"), u.psi),
        "ksi": u.ksi,
        **dict.fromkeys(("mpa", "n/mm2"), u.MPa),
        "gpa": u.GPa,
    },
    "moment": {
        **dict.fromkeys(("lb-ft", "ft-lb", "lb ft", "ft lb"), u.lb * u.ft),
        **dict.fromkeys(("kip-ft", "ft-kip", "kip ft", "ft kip"), u.kip * u.ft),
        **dict.fromkeys(("lb-in", "in-lb", "lb in", "in lb"), u.lb * u.inch),
        **dict.fromkeys(("kn-m", "kn m", "knm"), u.kN * u.m),
        **dict.fromkeys(("n-m", "n m"), u.N * u.m),
    },
    "area": {
        **dict.fromkeys(("in2", "sq in"), u.inch**2),
        **dict.fromkeys(("ft2", "sq ft"), u.ft**2),
        "mm2": 1.0,
        "cm2": 1e2,
        "m2": 1e6,
    },
    "section modulus": {
        **dict.fromkeys(("in3", "cu in"), u.inch**3),
        **dict.fromkeys(("mm3", "cu mm"), 1.0),
        **dict.fromkeys(("cm3", "cu cm"), 1e3),
    },
    "inertia": {"in4": u.inch**4, "mm4": 1.0, "cm4": 1e4},
    "stiffness": {
        "lb-in2": u.lb * u.inch**2,
        "million lb-in2": 1e6 * u.lb * u.inch**2,
        "kn-m2": u.kN * u.m**2,
        "n-mm2": 1.0,
    },
    "weight density": {**dict.fromkeys(("pcf", "lb/ft3", "lb/cu ft"), u.pcf), "kn/m3": u.kN_per_m3},
    "angle": dict.fromkeys(("deg", "degree", "degrees", "°"), u.deg),
    "frequency": dict.fromkeys(("hz", "hertz", "/s", "1/s"), 1.0),
    "acceleration": {"ft/s2": u.ft, "m/s2": u.m, "mm/s2": 1.0},
    "ratio": {"%": 0.01, "percent": 0.01, "": 1.0},
    "count": {"": 1.0},
}

# What to suggest for each dimension: units to put after a bare number, and a metric example.
_SUGGESTED = {
    "length": (("ft", "in"), "3.8 m"),
    "section length": (("in", "mm"), "9 1/4 in"),
    "small length": (("in", "mm"), "3/8 in"),
    "force": (("lb", "kN"), "1,500 lb"),
    "weight": (("lb", "kg"), "200 lb"),
    "line load": (("plf", "kN/m"), "600 plf"),
    "area load": (("psf", "kPa"), "40 psf"),
    "stress": (("psi", "MPa"), "900 psi"),
    "moment": (("lb-ft", "kN-m"), "5,000 lb-ft"),
    "area": (("in2", "mm2"), "13.9 in2"),
    "section modulus": (("in3", "mm3"), "21.4 in3"),
    "inertia": (("in4", "mm4"), "98.9 in4"),
    "stiffness": (("million lb-in2", "kN-m2"), "158 million lb-in2"),
    "weight density": (("pcf", "kN/m3"), "34 pcf"),
    "angle": (("deg",), "26.6 deg"),
    "frequency": (("Hz",), "9.5 Hz"),
    "acceleration": (("ft/s2", "m/s2"), "32.2 ft/s2"),
    "ratio": (("%",), "83 %"),
    "count": ((), "3"),
}

# US units, where a comma parts thousands; with any other it may be a decimal comma and is asked about.
_COMMA_UNITS = {
    "lb",
    "lbf",
    "plf",
    "lb/ft",
    "psf",
    "lb/ft2",
    "lb/sq ft",
    "psi",
    "lb/in2",
    "lb/sq in",
    "lb-ft",
    "ft-lb",
    "lb ft",
    "ft lb",
    "lb-in",
    "in-lb",
    "lb in",
    "in lb",
    "in2",
    "in3",
    "in4",
    "ft2",
    "sq ft",
    "sq in",
    "cu in",
    "lb-in2",
    "million lb-in2",
    "ft",
    "in",
    "pcf",
    "lb/ft3",
    "lb/cu ft",
    "",
}

# Units written out, and what stands for them in SPELLINGS.
WRITTEN_OUT = {
    **dict.fromkeys(("pound", "pounds", "lbs"), "lb"), **dict.fromkeys(("foot", "feet"), "ft"),
    **dict.fromkeys(("inch", "inches"), "in"), "kips": "kip", "square": "sq", "cubic": "cu", "per": "/",
    **dict.fromkeys(("newton", "newtons"), "n"), **dict.fromkeys(("kilonewton", "kilonewtons"), "kn"),
    **dict.fromkeys(("kilogram", "kilograms", "kilo", "kilos"), "kg"),
    **dict.fromkeys(("meter", "meters", "metre", "metres"), "m"),
    **dict.fromkeys(("centimeter", "centimeters", "centimetre", "centimetres"), "cm"),
    **dict.fromkeys(("millimeter", "millimeters", "millimetre", "millimetres"), "mm"),
}  # fmt: skip

# Thousands have no zero in front: 0,694 is a decimal comma.
THOUSANDS = r"[1-9][0-9]{0,2}(?:,[0-9]{3})+"

_NUMBER = re.compile(
    r"(?P<whole>[0-9]+)(?:\s+|-)(?P<top>[0-9]+)/(?P<bottom>[0-9]+)"
    r"|(?P<over>[0-9]+)/(?P<under>[0-9]+)"
    rf"|(?P<plain>(?:{THOUSANDS}(?![0-9])|[0-9]+)(?:\.[0-9]*)?(?:e[+-]?[0-9]+)?"
    r"|\.[0-9]+(?:e[+-]?[0-9]+)?)"
)
_FEET_THEN_MORE = re.compile(r"(?:feet|foot|ft\.?|')\s*[-,]?\s*(?P<rest>[0-9.].*)$")
_SAME = str.maketrans(
    {
        "\u2032": "'",
        "\u2019": "'",
        "\u2018": "'",
        "\u00b4": "'",
        "`": "'",
        "\u02b9": "'",
        "\u2033": '"',
        "\u201c": '"',
        "\u201d": '"',
        "\u02ba": '"',
        "\u2212": "-",
        "\u2013": "-",
        "\u2011": "-",
        "\u00b7": "-",
        "\u22c5": "-",
        "*": "-",
        "\u00b2": "2",
        "\u00b3": "3",
        "\u2074": "4",
        "\u00a0": " ",
        "\u202f": " ",
        "\u2044": "/",
        "\u00bd": " 1/2",
        "\u00bc": " 1/4",
        "\u00be": " 3/4",
        "\u215b": " 1/8",
        "\u215c": " 3/8",
        "\u215d": " 5/8",
        "\u215e": " 7/8",
    }
)
_LONGEST_TEXT = 60


def read(text, dimension, *, allow_negative=False):
    """Read one quantity that a person wrote with its unit.

    Parameters
    ----------
    text : str
        What was written, for example ``12'-6 1/2"`` or ``40 psf`` [-].
    dimension : str
        What is asked for: ``length``, ``force``, ``line load``, ``area load``, ``stress`` ... [-].
    allow_negative : bool
        Whether a minus sign is accepted [-].

    Returns
    -------
    float
        The value in the library's own units (mm, N, MPa, radians) [by dimension].

    Examples
    --------
    >>> round(read("12 ft 6 1/2 in", "length") / 25.4, 3)
    150.5
    >>> read("3.8 m", "length")
    3800.0
    >>> read("12", "length")
    Traceback (most recent call last):
    ...
    structlib.ground.refusals.BadInput: '12' has no unit: 12 what? write 12 ft, 12 in or 3.8 m
    """
    check_choice("dimension", dimension, SPELLINGS)
    shown = _as_text(text, dimension)
    cleaned = " ".join(shown.translate(_SAME).replace("''", '"').lower().split())
    sign = -1.0 if cleaned.startswith("-") else 1.0
    body = cleaned[1:].lstrip() if cleaned[:1] in ("-", "+") else cleaned
    number, rest = _number_first(body, shown, dimension)
    more = _FEET_THEN_MORE.match(rest) if SPELLINGS[dimension] is _LENGTH else None
    if more:
        value = _feet_and_inches(number, more["rest"], shown)
    else:
        value = _scaled(number, rest, shown, dimension)
    if not math.isfinite(value):
        raise BadInput(f"{shown!r} is too large to be a {dimension}; {_example(dimension)}")
    if sign < 0 and value > 0 and not allow_negative:
        raise BadInput(
            f"{shown!r} is negative, but {_article(dimension)} of zero or more is asked for; {_example(dimension)}"
        )
    return sign * value if value else 0.0


def _as_text(text, dimension):
    if text is None or (isinstance(text, str) and not text.strip()):
        raise BadInput(f"nothing was written, but {_article(dimension)} is asked for; {_example(dimension)}")
    if isinstance(text, bool) or not isinstance(text, (str, int, float)):
        raise BadInput(
            f"{_article(dimension)} must be written as text, got {type(text).__name__}; {_example(dimension)}"
        )
    shown = text.strip() if isinstance(text, str) else f"{text:g}"
    if len(shown) > _LONGEST_TEXT:
        raise BadInput(f"{shown[:20] + '...'!r} is too long to be {_article(dimension)}; {_example(dimension)}")
    return shown


def _number_first(body, shown, dimension):
    match = _NUMBER.match(body)
    if not match:
        raise BadInput(f"{shown!r} does not start with a number; {_example(dimension)}")
    rest = body[match.end() :].strip()
    if rest[:1] == ",":
        raise BadInput(
            f"{shown!r} has a comma that can be read in two ways; write a decimal point, "
            f"for example 1.5 m, or leave thousands commas out"
        )
    if rest[:1] in ("-", ".", "/", "+") or rest[:1].isdigit():
        raise BadInput(f"{shown!r} can be read in more than one way; {_example(dimension)}")
    return match, rest


def _value_of(match, shown, dimension):
    part = match.groupdict()
    top, bottom = (part["top"], part["bottom"]) if part["whole"] else (part["over"], part["under"])
    if bottom is None:
        return float(part["plain"].replace(",", ""))
    if int(bottom) == 0 or (part["whole"] and int(top) >= int(bottom)):
        raise BadInput(f"{shown!r} has a fraction {top}/{bottom} that cannot be meant; {_example(dimension)}")
    return float(part["whole"] or 0) + float(top) / float(bottom)


def _feet_and_inches(feet, rest, shown):
    inches, unit = _number_first(rest, shown, "length")
    if not unit:
        raise BadInput(f"{shown!r} has no unit after the second number: {rest} what? write {feet[0]} ft {inches[0]} in")
    if _unit_word(unit).rstrip(".") not in _INCHES:
        raise BadInput(f"{shown!r} has {unit!r} after the feet where inches are expected; write 12 ft 6 in")
    if not feet[0].replace(",", "").isdigit():
        raise BadInput(f"{shown!r} has a fraction of a foot and inches besides; write 12.5 ft or 12 ft 6 in")
    whole, part = _value_of(feet, shown, "length"), _value_of(inches, shown, "length")
    if part >= 12:
        raise BadInput(
            f"{shown!r} has {inches[0]} inches after the feet, which is a foot or more; "
            f"write 12 ft 6 in or all of it in inches, for example 150 in"
        )
    return whole * u.ft + part * u.inch


def _scaled(number, rest, shown, dimension):
    unit = _unit_word(rest)
    spellings = SPELLINGS[dimension]
    if unit not in spellings:
        _refuse_unit(number, unit, rest, shown, dimension)
    if "," in number[0] and unit not in _COMMA_UNITS:
        raise BadInput(
            f"{shown!r} has a comma that can be read in two ways with {rest!r}; write a decimal "
            f"point, for example 1.5 m, or leave the comma out"
        )
    value = _value_of(number, shown, dimension)
    if dimension == "count" and value != int(min(value, 1e15)):
        raise BadInput(f"{shown!r} is not a whole number; {_example(dimension)}")
    return value * spellings[unit]


@lru_cache(maxsize=512)
def _unit_word(rest):
    word = re.sub(r"[a-z]+", lambda written: WRITTEN_OUT.get(written[0], written[0]), rest.replace("^", ""))
    word = re.sub(r"\b(ft|in|lb)\.", r"\1", word)
    return re.sub(r"\s*([/-])\s*", r"\1", word).strip()


def _refuse_unit(number, unit, rest, shown, dimension):
    if not unit:
        ways = [f"{number[0]} {name}" for name in _SUGGESTED[dimension][0]] + [_SUGGESTED[dimension][1]]
        ways = list(dict.fromkeys(ways))
        listed = " or ".join(filter(None, (", ".join(ways[:-1]), ways[-1])))
        raise BadInput(f"{shown!r} has no unit: {number[0]} what? write {listed}")
    for other, spellings in SPELLINGS.items():
        if unit in spellings and spellings is not SPELLINGS[dimension]:
            raise BadInput(
                f"{shown!r} is {_article(other)}, but {_article(dimension)} is asked for; {_example(dimension)}"
            )
    raise BadInput(f"{rest!r} in {shown!r} is not a unit of {dimension} that is known here; {_example(dimension)}")


def _article(dimension):
    # how a length is rounded when it is shown is no matter for who writes one
    word = "length" if dimension in ("section length", "small length") else dimension
    return f"{'an' if word[0] in 'aeiou' else 'a'} {word}"


def _example(dimension):
    if dimension == "length":
        return "write 12 ft 6 in or 3.8 m"
    return "write for example " + _SUGGESTED[dimension][1]
