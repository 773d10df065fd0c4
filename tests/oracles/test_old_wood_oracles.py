"""Frequencies against eigenvalues, tapered logs against quadrature, cuts against rectangles."""

import math

import numpy
import pytest
import sympy
from scipy.integrate import quad
from scipy.linalg import eigh

from structlib.ground import cut_sections
from structlib.mechanics import vibration
from structlib.mechanics.round_taper import tapered_log
from structlib.rules.us import notched_ends


def first_frequency(stiffness, line_weight, span, point_weight=0.0, elements=40):
    """First frequency of a simple span by beam elements with consistent mass."""
    g, h, nodes = vibration.GRAVITY, span / elements, elements + 1
    k = (
        stiffness
        / h**3
        * numpy.array(
            [
                [12, 6 * h, -12, 6 * h],
                [6 * h, 4 * h**2, -6 * h, 2 * h**2],
                [-12, -6 * h, 12, -6 * h],
                [6 * h, 2 * h**2, -6 * h, 4 * h**2],
            ]
        )
    )
    m = (
        line_weight
        / g
        * h
        / 420
        * numpy.array(
            [
                [156, 22 * h, 54, -13 * h],
                [22 * h, 4 * h**2, 13 * h, -3 * h**2],
                [54, 13 * h, 156, -22 * h],
                [-13 * h, -3 * h**2, -22 * h, 4 * h**2],
            ]
        )
    )
    K, M = numpy.zeros((2 * nodes, 2 * nodes)), numpy.zeros((2 * nodes, 2 * nodes))
    for e in range(elements):
        K[2 * e : 2 * e + 4, 2 * e : 2 * e + 4] += k
        M[2 * e : 2 * e + 4, 2 * e : 2 * e + 4] += m
    M[elements, elements] += point_weight / g  # sinking of the middle node
    free = [i for i in range(2 * nodes) if i not in (0, 2 * (nodes - 1))]
    lowest = eigh(K[numpy.ix_(free, free)], M[numpy.ix_(free, free)], subset_by_index=[0, 0], eigvals_only=True)
    return math.sqrt(lowest[0]) / (2 * math.pi)


@pytest.mark.parametrize(
    "stiffness, weight, span", [(4.5e11, 0.2, 4572.0), (1.2e11, 0.05, 2400.0), (9e12, 3.0, 9000.0)]
)
def test_even_weight_against_eigenvalue(stiffness, weight, span):
    ours = vibration.simple_span_frequency(bending_stiffness=stiffness, line_weight=weight, span=span)
    assert ours == pytest.approx(first_frequency(stiffness, weight, span), rel=1e-6)


@pytest.mark.parametrize("times", [0.0, 0.1, 0.5, 1.0, 5.0, 100.0])
def test_point_weight_is_never_low_and_at_most_eight_in_a_thousand_high(times):
    stiffness, weight, span = 4.5e11, 0.2, 4572.0
    point = times * weight * span
    ours = vibration.midspan_weight_frequency(
        bending_stiffness=stiffness, line_weight=weight, point_weight=point, span=span
    )
    exact = first_frequency(stiffness, weight, span, point)
    assert exact * (1 - 1e-6) <= ours <= exact * 1.008


def test_frequency_and_sag_say_the_same():
    E, w, L, g = sympy.symbols("E w L g", positive=True)
    sag = 5 * w * L**4 / (384 * E)
    from_sag = vibration.frequency_from_sag(sag=sag, gravity=g)
    direct = vibration.simple_span_frequency(bending_stiffness=E, line_weight=w, span=L, gravity=g)
    assert sympy.simplify(from_sag / direct) == 1
    none = vibration.midspan_weight_frequency(
        bending_stiffness=E, line_weight=w, point_weight=sympy.Integer(0), span=L, gravity=g
    )
    assert sympy.simplify(none / direct) == 1
    assert math.pi / 2 * math.sqrt(5 / 384) == pytest.approx(0.18, abs=0.001)


@pytest.mark.parametrize("start, end", [(200.0, 160.0), (150.0, 250.0), (180.0, 180.0), (300.0, 120.0)])
def test_tapered_log_against_quadrature(start, end):
    span, load, modulus = 4000.0, 1.5, 9000.0
    found = tapered_log(start_diameter=start, end_diameter=end, span=span, line_load=load, modulus=modulus)

    def diameter(x):
        return start + (end - start) * x / span

    def moment(x):
        return load * x * (span - x) / 2

    def sag_at(place):
        def worked(x):  # moment of a unit load at the place, times curvature
            unit = x * (span - place) / span if x <= place else place * (span - x) / span
            return unit * moment(x) / (modulus * math.pi * diameter(x) ** 4 / 64)

        return quad(worked, 0, place, epsabs=1e-12)[0] + quad(worked, place, span, epsabs=1e-12)[0]

    assert found.deflection == pytest.approx(sag_at(found.deflection_place), rel=1e-7)
    for nearby in (-60.0, 60.0):
        assert sag_at(found.deflection_place + nearby) < found.deflection
    places = numpy.linspace(1.0, span - 1, 80_001)
    stress = moment(places) * 32 / (math.pi * diameter(places) ** 3)
    assert found.stress == pytest.approx(stress.max(), rel=1e-6)
    assert found.stress_place == pytest.approx(places[stress.argmax()], abs=span / 1000)
    even = 5 * load * span**4 / (384 * modulus * math.pi * found.same_as**4 / 64)
    assert even == pytest.approx(found.deflection, rel=1e-9)
    assert min(start, end) <= found.same_as * (1 + 1e-6) and found.same_as <= max(start, end) * (1 + 1e-6)


@pytest.mark.parametrize("offset", [0.0, 10.0, 45.0])
def test_hole_against_two_rectangles(offset):
    width, depth, diameter = 38.0, 235.0, 70.0
    low, high = depth / 2 + offset - diameter / 2, depth / 2 + offset + diameter / 2
    parts = [(0.0, low), (high, depth)]
    area = sum(width * (b - a) for a, b in parts)
    middle = sum(width * (b - a) * (a + b) / 2 for a, b in parts) / area
    inertia = sum(width * ((b - middle) ** 3 - (a - middle) ** 3) / 3 for a, b in parts)
    size = dict(width=width, depth=depth, diameter=diameter, offset=offset)
    assert cut_sections.drilled_inertia(**size) == pytest.approx(inertia)
    assert cut_sections.drilled_section_modulus(**size) == pytest.approx(inertia / max(middle, depth - middle))


def test_what_cuts_leave_in_exact_shares():
    d, b = sympy.symbols("d b", positive=True)
    whole_modulus, whole_inertia = b * d**2 / 6, b * d**3 / 12
    sixth = cut_sections.notched_section_modulus(width=b, depth=d, notch=d / 6) / whole_modulus
    third = cut_sections.drilled_inertia(width=b, depth=d, diameter=d / 3, offset=sympy.Integer(0)) / whole_inertia
    assert sympy.simplify(sixth) == sympy.Rational(25, 36)
    assert sympy.simplify(third) == sympy.Rational(26, 27)
    F = sympy.symbols("F", positive=True)
    full = sympy.Rational(2, 3) * F * b * d
    cut = notched_ends.tension_notch_shear(shear_value=F, width=b, depth=d, remaining=3 * d / 4)
    assert sympy.simplify(cut / full) == sympy.Rational(27, 64)
