"""Values as they are shown: units, rounding, and nothing that misleads."""

import math

import numpy
import pytest
import sympy

from structlib.ground.records import measured
from structlib.ground.refusals import BadInput
from structlib.ground.showing import DIMENSIONS, show
from structlib.ground.units import deg, ft, inch, kip, kN, kN_per_m, kPa, lb, m, pcf, plf, psf, psi

SHOWN = [
    (12 * ft + 6.5 * inch, "length", "us", "12 ft 6 1/2 in"),
    (12 * ft, "length", "us", "12 ft"),
    (0, "length", "us", "0 in"),
    (6.5 * inch, "length", "us", "6 1/2 in"),
    (12 * ft - inch / 64, "length", "us", "12 ft"),
    (12 * ft + inch / 16, "length", "us", "12 ft 1/16 in"),
    (-(2 * ft + 6 * inch), "length", "us", "-2 ft 6 in"),
    (3.81 * m, "length", "metric", "3.810 m"),
    (285, "length", "metric", "285 mm"),
    (9.25 * inch, "section length", "us", "9 1/4 in"),
    (9.25 * inch, "section length", "metric", "235 mm"),
    (150.5 * inch, "section length", "us", "150 1/2 in"),
    (0.32 * inch, "small length", "us", "0.32 in"),
    (8.1, "small length", "metric", "8.1 mm"),
    (1500 * lb, "force", "us", "1,500 lb"),
    (20 * kip, "force", "us", "20,000 lb"),
    (12.34 * kN, "force", "metric", "12.34 kN"),
    (600 * plf, "line load", "us", "600 plf"),
    (2.8 * plf, "line load", "us", "2.8 plf"),
    (8.76 * kN_per_m, "line load", "metric", "8.76 kN/m"),
    (40 * psf, "area load", "us", "40 psf"),
    (12.8 * psf, "area load", "us", "12.8 psf"),
    (1.9 * kPa, "area load", "metric", "1.90 kPa"),
    (900 * psi, "stress", "us", "900 psi"),
    (1.6e6 * psi, "stress", "us", "1,600,000 psi"),
    (11000, "stress", "metric", "11000 MPa"),
    (5000 * lb * ft, "moment", "us", "5,000 lb-ft"),
    (6.78e6, "moment", "metric", "6.78 kN-m"),
    (13.875 * inch**2, "area", "us", "13.88 in\u00b2"),
    (8952, "area", "metric", "8952 mm\u00b2"),
    (21.391 * inch**3, "section modulus", "us", "21.39 in\u00b3"),
    (98.932 * inch**4, "inertia", "us", "98.93 in\u2074"),
    (158.29e6 * lb * inch**2, "stiffness", "us", "158.3 million lb-in\u00b2"),
    (33.6 * pcf, "weight density", "us", "33.6 pcf"),
    (0.83, "ratio", "us", "83 %"),
    (1.0, "ratio", "us", "100 %"),
    (1.004, "ratio", "us", "100.4 %"),
    (0.9996, "ratio", "us", "99.96 %"),
    (3, "count", "us", "3"),
    (99.44 * psf, "area load", "us", "99.4 psf"),
    (518.4 * psf, "area load", "us", "518 psf"),
    (26.565 * deg, "angle", "us", "26.6 deg"),
    (9.47, "frequency", "us", "9.5 Hz"),
    (9806.65, "acceleration", "us", "32.2 ft/s\u00b2"),
    (9806.65, "acceleration", "metric", "9.81 m/s\u00b2"),
    (-0.001 * lb, "force", "us", "0 lb"),
]


@pytest.mark.parametrize("value, dimension, system, text", SHOWN)
def test_value_is_shown(value, dimension, system, text):
    assert show(value, dimension, system) == text


def test_precision_can_be_asked_for():
    assert show(10 * ft + 0.3 * inch, "length", precision=4) == "10 ft 1/4 in"
    assert show(1500 * lb, "force", precision=1) == "1,500.0 lb"
    assert show(numpy.float64(1500 * lb), "force") == "1,500 lb"


@pytest.mark.parametrize("dimension", DIMENSIONS)
@pytest.mark.parametrize("bad", [math.nan, math.inf, "12 ft", None, True, [1.0, 2.0], [], sympy.Symbol("x")])
def test_what_is_not_one_number_is_refused(dimension, bad):
    with pytest.raises(BadInput):
        show(bad, dimension)


@pytest.mark.parametrize(
    "arguments, words",
    [
        (dict(value=1.0, dimension="lenght"), "did you mean"),
        (dict(value=1.0, dimension="length", system="imperial"), "system 'imperial' is not known"),
        (dict(value=1.0, dimension="length", precision=3), "precision must be one of"),
        (dict(value=1.0, dimension="force", precision=-1), "precision must be one of"),
        (dict(value=1.0, dimension="force", precision=2.0), "precision must be one of"),
        (dict(value=1.5, dimension="count"), "whole number"),
    ],
)
def test_wrong_way_of_showing_is_refused(arguments, words):
    with pytest.raises(BadInput, match=words):
        show(**arguments)


def test_unknown_dimension_of_a_field_is_refused():
    with pytest.raises(BadInput, match="did you mean 'force'"):
        measured("froce", "reaction")
