"""Sections of logs and hewn timber against integrals over polygons, thin slices and sympy."""

import math

import numpy
import pytest
import sympy

from structlib.ground import measured_sections as shapes
from structlib.ground.refusals import BadInput
from structlib.ground.units import inch


def polygon(corners):
    """Area, height of its middle and inertia about that, by Green's theorem."""
    area = first = second = 0.0
    for (x0, y0), (x1, y1) in zip(corners, corners[1:] + corners[:1]):
        cross = x0 * y1 - x1 * y0
        area += cross / 2
        first += cross * (y0 + y1) / 6
        second += cross * (y0**2 + y0 * y1 + y1**2) / 12
    middle = first / area
    return area, middle, second - area * middle**2


def arc(middle, radius, start, end, steps=4000):
    turns = numpy.linspace(start, end, steps)
    return [(middle[0] + radius * math.cos(t), middle[1] + radius * math.sin(t)) for t in turns]


def half_round(radius):
    """Flat face at the top, at y = 0."""
    return arc((0.0, 0.0), radius, math.pi, 2 * math.pi)


def flat_sided(diameter, width):
    lift = math.acos(width / diameter)  # from level to where a flat side meets the round
    return arc((0.0, 0.0), diameter / 2, lift, math.pi - lift) + arc(
        (0.0, 0.0), diameter / 2, math.pi + lift, 2 * math.pi - lift
    )


def hewn(width, depth, leg):
    b, d = width / 2, depth / 2
    return [
        (b - leg, -d),
        (b, leg - d),
        (b, d - leg),
        (b - leg, d),
        (leg - b, d),
        (-b, d - leg),
        (-b, leg - d),
        (leg - b, -d),
    ]


@pytest.mark.parametrize("radius", [2.0, 5.0, 7.25])
def test_half_round_against_polygon(radius):
    area, middle, inertia = polygon(half_round(radius))
    size = dict(diameter=2 * radius)
    assert shapes.half_round_area(**size) == pytest.approx(area, rel=1e-6)
    assert shapes.half_round_centroid(**size) == pytest.approx(-middle, rel=1e-6)
    assert shapes.half_round_inertia(**size) == pytest.approx(inertia, rel=1e-6)


@pytest.mark.parametrize("diameter, width", [(8.0, 5.0), (8.0, 7.9), (10.0, 2.0), (6.0, 6.0)])
def test_flat_sided_log_against_polygon(diameter, width):
    area, _, inertia = polygon(flat_sided(diameter, width))
    assert shapes.flat_sided_area(diameter=diameter, width=width) == pytest.approx(area, rel=1e-6)
    assert shapes.flat_sided_inertia(diameter=diameter, width=width) == pytest.approx(inertia, rel=1e-6)


@pytest.mark.parametrize("width, depth, leg", [(6.0, 8.0, 1.0), (7.0, 7.0, 3.5), (4.0, 9.0, 0.25), (5.0, 6.0, 0.0)])
def test_hewn_against_polygon(width, depth, leg):
    area, _, inertia = polygon(hewn(width, depth, leg))
    assert shapes.hewn_area(width=width, depth=depth, wane=leg) == pytest.approx(area)
    assert shapes.hewn_inertia(width=width, depth=depth, wane=leg) == pytest.approx(inertia)


def sliced_shear_ratio(width_at, low, high, slices=200_000):
    """Greatest shear stress over the average, V Q / (I b) with every sum taken slice by slice."""
    y = low + (numpy.arange(slices) + 0.5) * (high - low) / slices
    strip = width_at(y) * (high - low) / slices
    area = strip.sum()
    middle = (strip * y).sum() / area
    inertia = (strip * (y - middle) ** 2).sum()
    above = y >= middle
    return area * (strip * (y - middle))[above].sum() / (inertia * float(width_at(numpy.array([middle]))[0]))


@pytest.mark.parametrize(
    "shape, width, depth, wane",
    [
        ("sawn", 1.5, 9.25, 0.0),
        ("round", 8.0, 8.0, 0.0),
        ("flat sides", 5.0, 8.0, 0.0),
        ("half round", 10.0, 5.0, 0.0),
        ("hewn", 6.0, 8.0, 1.0),
    ],
)
def test_measured_section_against_slices(shape, width, depth, wane):
    def width_at(y):
        if shape == "sawn":
            return numpy.full_like(y, width)
        if shape == "round":
            return 2 * numpy.sqrt(numpy.maximum(depth**2 / 4 - y**2, 0))
        if shape == "flat sides":
            return numpy.minimum(width, 2 * numpy.sqrt(numpy.maximum(depth**2 / 4 - y**2, 0)))
        if shape == "half round":
            return 2 * numpy.sqrt(numpy.maximum(depth**2 - y**2, 0))
        return width - 2 * numpy.maximum(numpy.abs(y) - (depth / 2 - wane), 0)

    low, high = (-depth, 0.0) if shape == "half round" else (-depth / 2, depth / 2)
    found = shapes.measured_section(shape, width=width, depth=depth, wane=wane)
    assert found.shear_ratio == pytest.approx(sliced_shear_ratio(width_at, low, high), rel=1e-4)
    y = numpy.linspace(low, high, 400_001)
    strip = width_at(y) * (y[1] - y[0])
    area = strip.sum() - strip[0] / 2 - strip[-1] / 2
    middle = (strip * y).sum() / area
    assert found.area == pytest.approx(area, rel=1e-4)
    assert found.inertia == pytest.approx((strip * (y - middle) ** 2).sum(), rel=1e-4)
    assert found.to_bottom == pytest.approx(middle - low, rel=1e-4)
    assert found.to_top == pytest.approx(high - middle, rel=1e-4, abs=1e-9)
    assert found.section_modulus == found.inertia / max(found.to_bottom, found.to_top)


def test_limits_meet_each_other():
    """A log whose flat sides are its diameter apart is round; corners of no size leave a rectangle."""
    whole = shapes.measured_section("round", width=1.0, depth=8.0)
    barely = shapes.measured_section("flat sides", width=8.0, depth=8.0)
    for name in ("area", "inertia", "section_modulus", "shear_ratio"):
        assert getattr(whole, name) == pytest.approx(getattr(barely, name))
    assert shapes.measured_section("hewn", width=3, depth=7).inertia == pytest.approx(3 * 7**3 / 12)


def test_formulas_print_themselves():
    D, b, d, c = sympy.symbols("D b d c", positive=True)
    r = D / 2
    half = shapes.half_round_inertia(diameter=D)
    assert sympy.simplify(half - r**4 * (sympy.pi / 8 - sympy.Rational(8, 9) / sympy.pi)) == 0
    y = sympy.symbols("y")
    whole = sympy.integrate(b * y**2, (y, -d / 2, d / 2))
    corner = sympy.integrate((y - (d / 2 - c)) * y**2, (y, d / 2 - c, d / 2))
    assert sympy.simplify(shapes.hewn_inertia(width=b, depth=d, wane=c) - (whole - 4 * corner)) == 0
    assert shapes.flat_sided_area(diameter=D, width=b).free_symbols == {D, b}
    assert shapes.arc_sine(sympy.Rational(1, 2)) == sympy.pi / 6


def test_arrays_pass_through():
    sizes = numpy.array([5.0, 6.0, 7.0])
    assert shapes.flat_sided_inertia(diameter=sizes, width=4.0).shape == (3,)


@pytest.mark.parametrize(
    "ask",
    [
        lambda: shapes.half_round_area(diameter=0.0),
        lambda: shapes.flat_sided_area(diameter=8 * inch, width=9 * inch),
        lambda: shapes.hewn_inertia(width=100.0, depth=200.0, wane=51.0),
        lambda: shapes.hewn_area(width=100.0, depth=200.0, wane=-1.0),
        lambda: shapes.measured_section("square", width=100.0, depth=100.0),
        lambda: shapes.measured_section("sawn", width="2 in", depth=100.0),
        lambda: shapes.measured_section("round", width=100.0, depth=math.nan),
        lambda: shapes.measured_section("half round", width=100.0, depth=400 * 304.8),
        lambda: shapes.arc_sine(1.5),
        lambda: shapes.flat_sided_area(diameter=numpy.array([]), width=1.0),
    ],
)
def test_sections_refuse_nonsense(ask):
    with pytest.raises(BadInput):
        ask()
