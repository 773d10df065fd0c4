"""Section formulas against integrals over polygons, exact fractions and sympy."""

import math

import numpy
import pytest
import sympy

from structlib.ground import sections
from structlib.ground.refusals import BadInput
from structlib.ground.roots import pi_for, square_root
from structlib.ground.units import ft, inch, pcf, plf


def polygon(corners):
    """Area, centroid height and inertia about the centroid of a polygon, by Green's theorem."""
    area = first = second = 0.0
    for (x0, y0), (x1, y1) in zip(corners, corners[1:] + corners[:1]):
        cross = x0 * y1 - x1 * y0
        area += cross / 2
        first += cross * (y0 + y1) / 6
        second += cross * (y0**2 + y0 * y1 + y1**2) / 12
    height = first / area
    return area, height, second - area * height**2


def rectangle(width, depth):
    return [(0, 0), (width, 0), (width, depth), (0, depth)]


@pytest.mark.parametrize("width, depth", [(1.5, 9.25), (3.5, 3.5), (5.5, 11.5), (9.25, 1.5)])
def test_rectangle_against_polygon(width, depth):
    area, height, inertia = polygon(rectangle(width * inch, depth * inch))
    size = dict(width=width * inch, depth=depth * inch)
    assert sections.rectangle_area(**size) == pytest.approx(area)
    assert sections.rectangle_inertia(**size) == pytest.approx(inertia)
    assert sections.rectangle_section_modulus(**size) == pytest.approx(inertia / height)


def test_round_against_a_polygon_of_many_sides():
    sides, radius = 20000, 4 * inch
    turns = [2 * math.pi * side / sides for side in range(sides)]
    corners = [(radius * math.cos(turn), radius * math.sin(turn)) for turn in turns]
    area, _, inertia = polygon(corners)
    assert sections.round_area(diameter=2 * radius) == pytest.approx(area, rel=1e-6)
    assert sections.round_inertia(diameter=2 * radius) == pytest.approx(inertia, rel=1e-6)
    assert sections.round_section_modulus(diameter=2 * radius) == pytest.approx(inertia / radius, rel=1e-6)


def test_on_edge_against_flat_by_symbols():
    width, depth = sympy.symbols("b d", positive=True)
    strength = sections.edge_to_flat_strength(width=width, depth=depth)
    stiffness = sections.edge_to_flat_stiffness(width=width, depth=depth)
    assert sympy.simplify(strength - depth / width) == 0
    assert sympy.simplify(stiffness - (depth / width) ** 2) == 0


def test_symbols_give_the_integrals():
    width, depth, y = sympy.symbols("b d y", positive=True)
    inertia = sympy.integrate(width * y**2, (y, -depth / 2, depth / 2))
    assert sympy.simplify(sections.rectangle_inertia(width=width, depth=depth) - inertia) == 0
    modulus = sections.rectangle_section_modulus(width=width, depth=depth)
    assert sympy.simplify(modulus - inertia / (depth / 2)) == 0
    radius = sympy.Symbol("r", positive=True)
    rho, turn = sympy.symbols("rho t", positive=True)
    disc = sympy.integrate((rho * sympy.sin(turn)) ** 2 * rho, (rho, 0, radius), (turn, 0, 2 * sympy.pi))
    assert sympy.simplify(sections.round_inertia(diameter=2 * radius) - disc) == 0
    assert sections.round_area(diameter=2 * radius) == sympy.pi * radius**2
    assert sympy.simplify(sections.round_section_modulus(diameter=2 * radius) - disc / radius) == 0


def test_arrays_answer_as_the_numbers_do():
    depths = numpy.array([3.5, 5.5, 7.25, 9.25, 11.25]) * inch
    rack = sections.Section(ply_width=1.5 * inch, depth=depths, plies=numpy.array([1, 2, 3, 2, 1]))
    one_by_one = [
        sections.Section(ply_width=1.5 * inch, depth=float(depth), plies=plies)
        for depth, plies in zip(depths, (1, 2, 3, 2, 1))
    ]
    for what in ("width", "area", "section_modulus", "inertia"):
        assert list(getattr(rack, what)) == pytest.approx([getattr(one, what) for one in one_by_one])


def test_section_of_plies_is_the_sum_of_its_plies():
    one, three = (sections.Section(ply_width=1.75 * inch, depth=9.25 * inch, plies=n) for n in (1, 3))
    for what in ("width", "area", "section_modulus", "inertia"):
        assert getattr(three, what) == pytest.approx(3 * getattr(one, what))
    # 1.75 x 9.25 in at 42 lb/ft3: 16.1875 in2 / 144 x 42 = 4.721 lb/ft, three times
    assert three.weight_per_length(42 * pcf) / plf == pytest.approx(3 * 16.1875 / 144 * 42)


def test_roots_and_pi_follow_their_input():
    x = sympy.Symbol("x", positive=True)
    assert square_root(x**2) == x and pi_for(x) is sympy.pi
    assert square_root(numpy.array([4.0, 9.0])).tolist() == [2.0, 3.0]
    assert square_root(9) == 3.0 and pi_for(2.0) == math.pi


SIZE = dict(width=38.0, depth=235.0)
CALLS = [
    (sections.rectangle_area, SIZE),
    (sections.rectangle_section_modulus, SIZE),
    (sections.rectangle_inertia, SIZE),
    (sections.edge_to_flat_strength, SIZE),
    (sections.edge_to_flat_stiffness, SIZE),
    (sections.plies_width, dict(ply_width=38.0, plies=2)),
    (sections.round_area, dict(diameter=200.0)),
    (sections.round_section_modulus, dict(diameter=200.0)),
    (sections.round_inertia, dict(diameter=200.0)),
    (sections.Section, dict(ply_width=38.0, depth=235.0, plies=2)),
]
BAD_SIZES = [0, -38.0, math.nan, math.inf, "2 in", None, True, [], [38.0, math.nan], 400 * ft]
BAD_COUNTS = [0, -1, 2.5, 11, math.nan, "two", None, [], [1, 1.5]]


@pytest.mark.parametrize("function, good", CALLS, ids=lambda value: getattr(value, "__name__", ""))
def test_bad_sizes_and_counts_are_refused(function, good):
    function(**good)
    for name in good:
        for bad in BAD_COUNTS if name in ("plies", "boards") else BAD_SIZES:
            with pytest.raises(BadInput) as refusal:
                function(**{**good, name: bad})
            assert name.replace("_", " ") in str(refusal.value)


@pytest.mark.parametrize("bad", [-1.0, 33.6, math.nan, "34 pcf", None, []])
def test_bad_weight_is_refused(bad):
    with pytest.raises(BadInput, match="weight density"):
        sections.Section(ply_width=38.0, depth=235.0).weight_per_length(bad)
