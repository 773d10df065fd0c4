"""Quantities as people write them: what is read, and what is asked about instead of guessed."""

import math
from fractions import Fraction

import pytest

from structlib.ground import reading
from structlib.ground.refusals import BadInput

# Expected values in millimetres, newtons or megapascals, from the exact definitions of the units.
INCH, FOOT = Fraction(254, 10), Fraction(3048, 10)
POUND = Fraction(45359237, 10**8) * Fraction(980665, 10**5)

GOOD_LENGTHS = [
    ("12'-6 1/2\"", 12 * FOOT + Fraction(13, 2) * INCH),
    ("12' 6\"", 12 * FOOT + 6 * INCH),
    ("12'6\"", 12 * FOOT + 6 * INCH),
    ("12'-6\"", 12 * FOOT + 6 * INCH),
    ("12 ft 6 in", 12 * FOOT + 6 * INCH),
    ("12 ft, 6 in", 12 * FOOT + 6 * INCH),
    ("12 ft. 6 in.", 12 * FOOT + 6 * INCH),
    ("12 feet 6 1/2 inches", 12 * FOOT + Fraction(13, 2) * INCH),
    ("12ft6in", 12 * FOOT + 6 * INCH),
    ("12\u2032 6\u00bd\u2033", 12 * FOOT + Fraction(13, 2) * INCH),
    ("12\u2019 6\u201d", 12 * FOOT + 6 * INCH),
    ("12' 6''", 12 * FOOT + 6 * INCH),
    ("0'-6\"", 6 * INCH),
    ("0 ft", 0),
    ("12'", 12 * FOOT),
    ("12.5 ft", Fraction(25, 2) * FOOT),
    ("12 1/2 ft", Fraction(25, 2) * FOOT),
    ("150 1/2 in", Fraction(301, 2) * INCH),
    ("9 1/4 in", Fraction(37, 4) * INCH),
    ('9-1/4"', Fraction(37, 4) * INCH),
    ("9\u00bc in", Fraction(37, 4) * INCH),
    ("5/8 in", Fraction(5, 8) * INCH),
    (".5 in", Fraction(1, 2) * INCH),
    ("1,200 ft", 1200 * FOOT),
    ("3.8 m", 3800),
    ("3800 mm", 3800),
    ("380 cm", 3800),
    ("3.8 metres", 3800),
    (" 3.8  m ", 3800),
    ("12 FT 6 IN", 12 * FOOT + 6 * INCH),
]

GOOD_OTHERS = [
    ("40 psf", "area load", 40 * POUND / FOOT**2),
    ("40 lb/sq ft", "area load", 40 * POUND / FOOT**2),
    ("40 pounds per square foot", "area load", 40 * POUND / FOOT**2),
    ("1.9 kPa", "area load", Fraction(19, 10000)),
    ("1.9 kN/m\u00b2", "area load", Fraction(19, 10000)),
    ("600 plf", "line load", 600 * POUND / FOOT),
    ("600 lb/ft", "line load", 600 * POUND / FOOT),
    ("600 lb per ft", "line load", 600 * POUND / FOOT),
    ("600 pounds per foot", "line load", 600 * POUND / FOOT),
    ("8.8 kN/m", "line load", Fraction(88, 10)),
    ("1,500 lb", "force", 1500 * POUND),
    ("1500 lbs", "force", 1500 * POUND),
    ("1.5 kip", "force", 1500 * POUND),
    ("6.7 kN", "force", 6700),
    ("900 psi", "stress", 900 * POUND / INCH**2),
    ("1.6e6 psi", "stress", 1600000 * POUND / INCH**2),
    ("1,600,000 psi", "stress", 1600000 * POUND / INCH**2),
    ("11 GPa", "stress", 11000),
    ("6.2 MPa", "stress", Fraction(62, 10)),
    ("5,000 lb-ft", "moment", 5000 * POUND * FOOT),
    ("34 pcf", "weight density", 34 * POUND / FOOT**3),
    ("83 %", "ratio", Fraction(83, 100)),
    ("0.83", "ratio", Fraction(83, 100)),
    ("3", "count", 3),
    ("180 deg", "angle", Fraction(math.pi)),
    ("9.5 Hz", "frequency", Fraction(19, 2)),
    ("9.81 m/s2", "acceleration", Fraction(9810)),
]

REFUSED = [
    ("12", "length", "12 what? write 12 ft, 12 in or 3.8 m"),
    (12, "length", "12 what?"),
    (12.5, "length", "12.5 what?"),
    ("12-6", "length", "more than one way"),
    ("12'6", "length", "6 what?"),
    ("12 ft 6", "length", "6 what?"),
    ("12 6 in", "length", "more than one way"),
    ("12-6 in", "length", "more than one way"),
    ("12 ft 14 in", "length", "a foot or more"),
    ("12 ft 12 in", "length", "a foot or more"),
    ("12.5 ft 6 in", "length", "fraction of a foot"),
    ("12 1/2 ft 6 in", "length", "fraction of a foot"),
    ("12 ft 6 mm", "length", "inches are expected"),
    ("3 m 80 cm", "length", "not a unit"),
    ("1,5 m", "length", "comma"),
    ("1,500 m", "length", "comma"),
    ("1,50 lb", "force", "comma"),
    ("12,34,567 lb", "force", "comma"),
    ("40 psf", "length", "is an area load, but a length is asked for"),
    ("40 plf", "area load", "is a line load, but an area load is asked for"),
    ("40 psi", "area load", "is a stress"),
    ("12 ft", "force", "is a length"),
    ("40 kg", "force", "is a weight, but a force is asked for"),
    ("40 furlongs", "length", "not a unit"),
    ("9 5/4 in", "length", "cannot be meant"),
    ("9 1/0 in", "length", "cannot be meant"),
    ("1/0 in", "length", "cannot be meant"),
    ("", "length", "nothing was written"),
    ("   ", "length", "nothing was written"),
    (None, "length", "nothing was written"),
    (True, "length", "as text"),
    (["12 ft"], "length", "as text"),
    ("ft", "length", "start with a number"),
    ("about 12 ft", "length", "start with a number"),
    ("nan ft", "length", "start with a number"),
    ("inf ft", "length", "start with a number"),
    (math.nan, "length", "start with a number"),
    ("1e999 ft", "length", "too large"),
    ("-12 ft", "length", "negative"),
    ("\u221212 ft", "length", "negative"),
    ("12 ft" * 20, "length", "too long"),
    ("12 ft", "lenght", "did you mean 'length'"),
    ("2.5", "count", "whole number"),
    ("1/8/9 in", "length", "more than one way"),
]


@pytest.mark.parametrize("text, expected", GOOD_LENGTHS)
def test_length_is_read(text, expected):
    assert reading.read(text, "length") == pytest.approx(float(expected), rel=1e-12, abs=1e-12)


@pytest.mark.parametrize("text, dimension, expected", GOOD_OTHERS)
def test_quantity_is_read(text, dimension, expected):
    assert reading.read(text, dimension) == pytest.approx(float(expected), rel=1e-12)


@pytest.mark.parametrize("text, dimension, words", REFUSED)
def test_unclear_text_is_asked_about(text, dimension, words):
    with pytest.raises(BadInput) as refusal:
        reading.read(text, dimension)
    message = str(refusal.value)
    assert words in message
    assert "\n" not in message and len(message) < 250


@pytest.mark.parametrize(
    "dimension, good",
    [
        ("length", "3 ft"),
        ("force", "3 lb"),
        ("line load", "3 plf"),
        ("area load", "3 psf"),
        ("stress", "3 psi"),
    ],
)
def test_negative_is_read_only_where_allowed(dimension, good):
    assert reading.read("-" + good, dimension, allow_negative=True) == -reading.read(good, dimension)
    with pytest.raises(BadInput, match="negative"):
        reading.read("-" + good, dimension)
    with pytest.raises(BadInput, match="what"):
        reading.read("3", dimension)


@pytest.mark.parametrize("dimension", reading.SPELLINGS)
def test_every_example_in_a_question_can_be_read(dimension):
    units, example = reading._SUGGESTED[dimension]
    assert reading.read(example, dimension) > 0
    for unit in units:
        assert reading.read(f"12 {unit}", dimension) > 0
