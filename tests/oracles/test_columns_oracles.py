"""Columns and footings against other methods: differences, bisection, brute force, fractions."""

from fractions import Fraction
from math import cos, hypot, pi, sin

import numpy
import pytest

from structlib.ground.lumber import find_material, lvl
from structlib.ground.units import ft, inch, ksi, lb, psf, psi
from structlib.mechanics import columns as mechanics
from structlib.rules.us import factors, footings, seats, steel_columns
from structlib.rules.us.column_stability import (
    bent_column_share,
    column_stability_factor,
    critical_column_value,
    ratio_for_factor,
)
from structlib.rules.us.columns import column_capacity, fewest_plies


def test_euler_load_is_the_least_load_under_which_differences_find_a_bow():
    size = 400
    step = 1 / (size + 1)
    matrix = (
        numpy.diag([2.0] * size) - numpy.diag([1.0] * (size - 1), 1) - numpy.diag([1.0] * (size - 1), -1)
    ) / step**2
    least = numpy.linalg.eigvalsh(matrix)[0]
    assert mechanics.euler_load(bending_stiffness=3.0, effective_length=2.0) == pytest.approx(3 * least / 4, rel=1e-4)


def test_euler_stress_and_load_are_one_formula():
    width, depth, length, modulus = 38.0, 140.0, 2400.0, 9000.0
    inertia, area = depth * width**3 / 12, width * depth
    radius = mechanics.radius_of_gyration(inertia=inertia, area=area)
    stress = mechanics.euler_stress(
        modulus=modulus, slenderness=mechanics.slenderness(effective_length=length, across=radius)
    )
    load = mechanics.euler_load(bending_stiffness=modulus * inertia, effective_length=length)
    assert stress * area == pytest.approx(load, rel=1e-12)
    # the code's 0.822 is pi^2/12 to the digits printed
    code = critical_column_value(modulus_stability=modulus, slenderness=length / width)
    assert code == pytest.approx(stress, rel=6e-4)


def tangent_stress(buckling, crushing, shape):
    """Stress at which a column bows when its stiffness falls with stress as Ylinen takes it, by bisection.

    The tangent modulus is E (crushing - stress) / (crushing - shape stress); it bows where the stress equals
    the Euler stress with that modulus.
    """
    low, high = 0.0, crushing
    for _ in range(200):
        middle = (low + high) / 2
        bows_at = buckling * (crushing - middle) / (crushing - shape * middle)
        low, high = (middle, high) if bows_at > middle else (low, middle)
    return low


@pytest.mark.parametrize("shape", [0.8, 0.85, 0.9])
@pytest.mark.parametrize("ratio", [0.02, 0.3, 1.0, 1.2, 3.0, 40.0])
def test_column_factor_is_where_ylinen_s_tangent_column_bows(ratio, shape):
    found = float(column_stability_factor(ratio=ratio, shape=shape))
    assert found == pytest.approx(tangent_stress(ratio * 10.0, 10.0, shape) / 10.0, rel=1e-9)
    assert float(ratio_for_factor(factor=found, shape=shape)) == pytest.approx(ratio, rel=1e-6)


def by_hand(wood, ply, depth, height, plies, kf, shape=0.8):
    """Load in pounds from inches, by the tangent column, each way; and the plies each for itself."""
    crushing = wood["Fc"] * wood["CF"]

    def factor(across):
        if height / across > 50:
            return None
        return tangent_stress(0.822 * wood["Emin"] / (height / across) ** 2, crushing, shape) / crushing

    deep, thick, alone = factor(depth), factor(ply * plies), factor(ply)
    area = ply * plies * depth
    together = min(deep, (kf if plies > 1 else 1) * thick) * crushing * area
    return max(together, min(deep, alone) * crushing * area if alone and plies > 1 else 0.0)


FIR_2X6 = {"Fc": 1350, "CF": 1.1, "Emin": 580000}


@pytest.mark.parametrize("fastening, kf", [("nailed", 0.6), ("bolted", 0.75)])
@pytest.mark.parametrize("plies", [1, 2, 3, 4, 5])
@pytest.mark.parametrize("height", [12, 48, 72, 74.9])
def test_post_of_plies_by_bisection(height, plies, fastening, kf):
    found = column_capacity(
        find_material("Douglas Fir-Larch", "No.2"),
        ply_width=1.5 * inch,
        depth=5.5 * inch,
        height=height * inch,
        plies=plies,
        time_factor=1.0,
        fastening=fastening,
    )
    assert found.load / lb == pytest.approx(by_hand(FIR_2X6, 1.5, 5.5, height, plies, kf), rel=1e-9)


def test_lvl_post_takes_its_own_c():
    # shear-free E, so no 1.03 (a maker prints 1,056,958 psi for 2,100,000)
    post = {"Fc": 2750, "CF": 1.0, "Emin": 2e6 * (1 - 1.645 * 0.1) / 1.66}
    found = column_capacity(
        lvl("2.0E-2900Fb"),
        ply_width=1.75 * inch,
        depth=3.5 * inch,
        height=96 * inch,
        plies=2,
        time_factor=1.0,
    )
    assert found.load / lb == pytest.approx(by_hand(post, 1.75, 3.5, 96, 2, 0.6, shape=0.9), rel=1e-9)


@pytest.mark.parametrize("load", [1000, 5000, 9000, 15000, 30000])
def test_fewest_plies_by_trying_each(load):
    wood = find_material("Douglas Fir-Larch", "No.2")
    enough = [
        plies for plies in range(1, 6) if plies * 1.5 * 50 >= 96 and by_hand(FIR_2X6, 1.5, 5.5, 96, plies, 0.6) >= load
    ]
    found = fewest_plies(wood, load=load * lb, time_factor=1.0, ply_width=1.5 * inch, depth=5.5 * inch, height=8 * ft)
    assert found == enough[0]


@pytest.mark.parametrize("share", [0.05, 0.2, 0.4])
def test_growth_in_the_code_stays_near_the_secant_of_mechanics(share):
    """Crushing left out, the code's bending term grows as the secant does, within two percent up to 0.4."""
    found = bent_column_share(
        compression_stress=share,
        compression_value=1e9,
        bending_stress=0.0,
        bending_value=1.0,
        critical_value=1.0,
        off_center_stress=1.0,
    )
    assert found == pytest.approx(1 / cos(pi / 2 * share**0.5), rel=0.02)


@pytest.mark.parametrize("Fy", [35, 36, 46])
def test_older_steel_formula_as_printed_in_its_two_pieces(Fy):
    turn = (2 * pi**2 * 29000 / Fy) ** 0.5
    for slender in (10.0, 60.0, turn - 1e-9, turn + 1e-9, 150.0, 199.0):
        s = slender / turn
        stress = (
            (1 - s**2 / 2) * Fy / (5 / 3 + 3 * s / 8 - s**3 / 8) if s <= 1 else 12 * pi**2 * 29000 / (23 * slender**2)
        )
        found = steel_columns.allowable_stress_1989(slenderness=slender, yield_strength=Fy * ksi)
        assert found / ksi == pytest.approx(stress, rel=1e-9)


@pytest.mark.parametrize("Fy", [35, 46])
def test_today_s_steel_formula_meets_itself_where_it_turns(Fy):
    turn = 4.71 * (29000 / Fy) ** 0.5
    ends = [
        steel_columns.allowable_stress_2016(slenderness=turn * side, yield_strength=Fy * ksi) / ksi
        for side in (1 - 1e-9, 1 + 1e-9)
    ]
    assert ends[0] == pytest.approx(ends[1], rel=2e-3)  # the two pieces are published rounded
    elastic = pi**2 * 29000 / turn**2
    assert ends[1] == pytest.approx(0.877 * elastic / 1.67, rel=1e-6)


def test_pad_in_whole_numbers_by_statics():
    """15,000 lb, a pad 1 ft thick: side^2 (2000 - 150) = 15000, and the soil gets just 2000 psf."""
    area = Fraction(15000, 2000 - 150)
    side = footings.pad_side(load=15000 * lb, soil_pressure=2000 * psf, thickness=1 * ft)
    assert (side / ft) ** 2 == pytest.approx(float(area), rel=1e-12)
    [soil, *_] = footings.pad_checks(
        load=15000 * lb,
        side=side,
        thickness=1 * ft,
        base=4 * inch,
        soil=footings.find_soil("sand or sand with silt or clay"),
    )
    assert soil.share == pytest.approx(1.0, rel=1e-12)


@pytest.mark.parametrize("load", [3000, 10000, 18000])
@pytest.mark.parametrize("soil", ["clay or silt", "gravel or sandy gravel"])
def test_plain_pad_by_walking_up_in_hundredths_of_an_inch(load, soil):
    bears = {"clay or silt": 1500, "gravel or sandy gravel": 3000}[soil]
    side = 12.0
    while True:
        thick = max((side - 4) / 2, 6)
        if (bears - 150 * thick / 12) * (side / 12) ** 2 >= load:
            break
        side += 0.01
    found, thickness = footings.plain_pad(load=load * lb, soil=footings.find_soil(soil), base=4 * inch)
    assert found / inch == pytest.approx(side, abs=0.0101) and found / inch <= side + 1e-9
    assert thickness / inch == pytest.approx(max((found / inch - 4) / 2, 6))


def turned(length, across, angle):
    """How wide and how tall a rectangle stands when it is turned."""
    return (length * cos(angle) + across * sin(angle), length * sin(angle) + across * cos(angle))


@pytest.mark.parametrize("near", [0.0, 4.0, 9.0])
def test_beam_clears_the_walls_at_every_angle_and_a_longer_one_does_not(near):
    found = seats.swing_in(clear_width=144 * inch, across=9.25 * inch, near_pocket=near * inch, far_pocket=4 * inch)
    length, angles = found.length / inch, numpy.linspace(0, 1.0, 20001)
    room = 144 + near
    widest = max(turned(length, 9.25, angle)[0] for angle in angles)
    if length < room + 4 - 1e-9:  # not stopped by the pockets
        assert widest == pytest.approx(room, abs=1e-6)
        assert max(turned(length + 0.01, 9.25, angle)[0] for angle in angles) > room
    assert found.diagonal / inch == pytest.approx(hypot(length, 9.25))
    assert found.near_overlap + found.far_overlap == pytest.approx(found.length - 144 * inch)


def test_near_pocket_is_tall_enough_at_every_angle():
    """The part of the turned beam inside the pocket, by the points of its outline, at every angle."""
    found = seats.swing_in(clear_width=144 * inch, across=9.25 * inch, near_pocket=9 * inch, far_pocket=4 * inch)
    length, across = found.length / inch, 9.25
    along = numpy.linspace(0, 1, 4001)
    outline = numpy.concatenate(
        [
            numpy.column_stack([along * length, 0 * along]),
            numpy.column_stack([along * length, 0 * along + across]),
            numpy.column_stack([0 * along, along * across]),
            numpy.column_stack([0 * along + length, along * across]),
        ]
    )
    tallest = 0.0
    for angle in numpy.linspace(0, 0.4, 801):
        turn = numpy.array([[cos(angle), sin(angle)], [-sin(angle), cos(angle)]])
        points = outline @ turn
        points[:, 0] -= points[:, 0].max() - 144  # pushed against the far wall; the pocket is left of zero
        inside = points[points[:, 0] <= 0]
        if len(inside):
            tallest = max(tallest, numpy.ptp(inside[:, 1]))
    assert tallest <= found.near_opening / inch <= 1.06 * tallest


@pytest.mark.parametrize("reaction", [100, 1822.5, 1823, 3645, 4000, 9000])
def test_jack_studs_by_adding_one_at_a_time(reaction):
    count = 1
    while reaction > count * 1.5 * 3.0 * 405 + 1e-6:
        count += 1
    assert seats.jack_studs(reaction=reaction * lb, width=3 * inch, bearing_value=405 * psi).count == count


def test_code_numbers_of_posts_are_those_of_the_clauses():
    assert factors.scalar("column_stability_coefficient") == pytest.approx(pi**2 / 12, rel=1e-3)
    assert factors.scalar("column_eccentric_growth") == pytest.approx(pi**2 / 8 - 1, rel=2e-3)
