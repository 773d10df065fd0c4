"""Loads brought down to a wall: by hand, level by level, with nothing lost."""

import dataclasses

import pytest
from small_houses import around_a_wall, level, wall

from structlib.ground.lumber import find_material
from structlib.ground.units import ft, inch, plf, psf
from structlib.house.file import demo_house
from structlib.house.path import follow
from structlib.house.pieces import area_load, joist_weight
from structlib.house.plan import Joists
from structlib.house.takedown import take_down, widths_on


def widths(house):
    return widths_on(follow(house).element(house.levels[0].name), 0.0)


@pytest.mark.parametrize(
    "house, by_hand",
    [
        (around_a_wall(12 * ft, 14 * ft), (6, 7)),
        (around_a_wall(12 * ft, 0.0), (6, 0)),
        (around_a_wall(0.0, 14 * ft), (0, 7)),
        (around_a_wall(12 * ft, 12 * ft, joists="continuous"), (7.5, 7.5)),  # every beam table: 1.25 w L in the middle
        (around_a_wall(24 * ft, 0.0, kind="roof"), (12, 0)),  # a pair on two walls: half of the house each
        # moments about the far wall: 2 ft beyond each wall, 25/24 of it here and 1/24 of the other taken away
        (
            around_a_wall(24 * ft, 0.0, kind="roof", left_overhang=2 * ft, right_overhang=2 * ft),
            (12 - 1 / 12, 2 + 1 / 12),
        ),
        (around_a_wall(12 * ft, 0.0, kind="roof", ridge="beam"), (6, 0)),
        # moments about the ridge: 14 ft of load at 7 ft, over 12 ft of leverage, is 98/12 ft
        (
            around_a_wall(12 * ft, 0.0, kind="roof", ridge="beam", right_overhang=2 * ft),
            (98 / 12 - 2 - 1 / 6, 2 + 1 / 6),
        ),
    ],
)
def test_widths_on_the_wall_by_hand(house, by_hand):
    assert [width / ft for width in widths(house)] == pytest.approx(by_hand, abs=1e-9)


def test_unequal_continuous_spans_by_the_three_moment_equation():
    for left, right in ((8.0, 16.0), (10.0, 13.0), (12.0, 12.0)):
        # one load on both spans: M = w (L1^3 + L2^3) / 8 (L1 + L2) over the wall
        over = (left**3 + right**3) / (8 * (left + right))
        on_wall = (left + right) / 2 + over / left + over / right
        found = sum(widths(around_a_wall(left * ft, right * ft, joists="continuous"))) / ft
        assert found == pytest.approx(on_wall, rel=1e-12)


def test_what_lies_on_a_slope_is_brought_to_plan_and_snow_is_on_plan_already():
    roof = level("roof", ("a", "b"), kind="roof")
    dead, _, _, snow = area_load(roof, (9, 12))  # a 3-4-5 triangle: 5/4
    assert dead / psf == pytest.approx(12.5) and snow / psf == pytest.approx(30)


def test_a_ridge_off_the_middle_makes_the_short_side_steeper():
    # 6 ft of rise over 8 ft (5/4) and over 16 ft (sqrt(73)/8) of run; a simple span of 24 ft, moments about the left
    house = around_a_wall(24 * ft, 0.0, kind="roof", slope=(9, 12), ridge_at=-16 * ft)
    steep, flat = 10 * 1.25, 10 * 73**0.5 / 8
    right = (steep * 8 * 4 + flat * 16 * 16) / 24
    assert follow(house).line_on("middle", ft)["dead"] / plf == pytest.approx(right)


def test_joists_weigh_in_by_their_spacing():
    joist = Joists(species="Hem-Fir", grade="No.2", size="2x10", spacing=16 * inch)
    wood = find_material("Hem-Fir", "No.2")
    assert joist_weight(joist) == pytest.approx(wood.weight_density * 1.5 * inch * 9.25 * inch / (16 * inch))
    loads = area_load(level("floor", ("a", "b"), joist=joist), (0, 12))
    assert loads[0] == pytest.approx(10 * psf + joist_weight(joist))
    assert joist_weight(dataclasses.replace(joist, plies=2)) == pytest.approx(2 * joist_weight(joist))


def test_a_two_level_house_by_hand():
    house = around_a_wall(12 * ft, 14 * ft)
    roof = level("roof", ("upper left", "upper middle", "upper right"), kind="roof", ridge="beam")
    more = [
        wall(f"upper {name}", at, on=(name,), weight=8 * psf)
        for name, at in (("left", -12 * ft), ("middle", 0.0), ("right", 14 * ft))
    ]
    house = dataclasses.replace(house, levels=(roof, *house.levels), walls=house.walls + tuple(more))
    found = take_down(follow(house), "middle", 5 * ft)
    assert found.total["snow"] / plf == pytest.approx(30 * 13)
    assert found.total["live"] / plf == pytest.approx(40 * 13)
    assert found.total["dead"] / plf == pytest.approx(10 * 13 + 10 * 13 + 64)
    assert found.shares[0].running["live"] == 0.0 and found.shares[1].running["dead"] == found.total["dead"]
    assert abs(found.left_over) < 1e-9
    assert found.shares[0].wall / plf == pytest.approx(64)


def test_load_types_are_never_summed_on_the_way():
    found = take_down(follow(demo_house()), "kitchen opening", 18 * ft)
    assert found.total["roof live"] == 0.0  # the roof passes over the wall
    assert found.total["live"] / plf == pytest.approx((20 + 30) * 12)  # 24 ft of floor, cut: 12 ft to the wall
    assert found.total["dead"] > 0


def test_what_the_take_down_says_is_what_the_path_says():
    path = follow(demo_house())
    for name, at in (
        ("middle wall", 3 * ft),
        ("main beam", 3 * ft),
        ("kitchen opening", 18 * ft),
        ("west foundation", ft),
    ):
        assert dict(take_down(path, name, at).total) == pytest.approx(dict(path.line_on(name, at)))
