"""Loads carried down to a wall: by hand, level by level, with nothing lost."""

import pytest

from structlib.ground.lumber import find_material
from structlib.ground.units import ft, inch, plf, psf
from structlib.house.model import Joists, Layer, Level, WallUnder, demo_house
from structlib.house.takedown import area_loads, joist_weight, take_down, widths_on_wall


def floor(left, right, **changes):
    changes = {"layers": (Layer("all of it", 10 * psf),), "live": 40 * psf, **changes}
    return Level("floor", "floor", left, right, **changes)


def roof(left, right, **changes):
    changes = {"layers": (Layer("all of it", 10 * psf),), "snow": 30 * psf, **changes}
    return Level("roof", "roof", left, right, **changes)


@pytest.mark.parametrize(
    "level, widths",
    [
        (floor(12 * ft, 14 * ft), (6, 7)),
        (floor(12 * ft, 0.0), (6, 0)),
        (floor(0.0, 14 * ft), (0, 7)),
        (
            floor(12 * ft, 12 * ft, joists="continuous"),
            (7.5, 7.5),
        ),  # 10/8 of one span, NDS and every beam table: 1.25 w L
        (floor(12 * ft, 14 * ft, lands=False), (0, 0)),
        (roof(12 * ft, 0.0), (12, 0)),
        (roof(12 * ft, 12 * ft), (12, 12)),
        (roof(12 * ft, 0.0, ridge="beam"), (6, 0)),
        (roof(12 * ft, 0.0, overhang=2 * ft), (12, 2)),
        (roof(0.0, 12 * ft, overhang=2 * ft), (2, 12)),
        # moments about the ridge: 14 ft of load at 7 ft, over 12 ft of leverage, is 98/12 ft
        (roof(12 * ft, 0.0, overhang=2 * ft, ridge="beam"), (98 / 12 - 2, 2)),
    ],
)
def test_widths_on_the_wall_by_hand(level, widths):
    assert [width / ft for width in widths_on_wall(level)] == pytest.approx(widths, abs=1e-9)


def test_unequal_continuous_spans_by_the_three_moment_equation():
    for left, right in ((8.0, 16.0), (10.0, 13.0), (12.0, 12.0)):
        # one load on both spans: M = w (L1^3 + L2^3) / 8 (L1 + L2) over the wall
        over = (left**3 + right**3) / (8 * (left + right))
        on_wall = (left + right) / 2 + over / left + over / right
        found = sum(widths_on_wall(floor(left * ft, right * ft, joists="continuous"))) / ft
        assert found == pytest.approx(on_wall, rel=1e-12)


def test_what_lies_on_a_slope_is_brought_to_plan_and_snow_is_on_plan_already():
    loads = area_loads(roof(12 * ft, 0.0, slope=(9, 12)))  # a 3-4-5 triangle: 5/4
    assert loads["dead"] / psf == pytest.approx(12.5) and loads["snow"] / psf == pytest.approx(30)


def test_joists_weigh_in_by_their_spacing():
    joist = Joists("Hem-Fir", "No.2", "2x10", 16 * inch)
    wood = find_material("Hem-Fir", "No.2")
    assert joist_weight(joist) == pytest.approx(wood.weight_density * 1.5 * inch * 9.25 * inch / (16 * inch))
    assert area_loads(floor(12 * ft, 0.0, joist=joist))["dead"] == pytest.approx(
        10 * psf + joist_weight(joist)
    )
    doubled = Joists("Hem-Fir", "No.2", "2x10", 16 * inch, 2)
    assert joist_weight(doubled) == pytest.approx(2 * joist_weight(joist))


def test_a_two_level_house_by_hand():
    found = take_down(
        [roof(12 * ft, 12 * ft, ridge="beam"), floor(12 * ft, 14 * ft, wall_under=WallUnder(8 * ft, 8 * psf))]
    )
    assert found.total["snow"] / plf == pytest.approx(30 * 12)
    assert found.total["live"] / plf == pytest.approx(40 * 13)
    assert found.total["dead"] / plf == pytest.approx(10 * 12 + 10 * 13 + 64)
    assert found.shares[0].running["live"] == 0.0 and found.shares[1].running["dead"] == found.total["dead"]
    assert abs(found.left_over) < 1e-9
    assert found.shares[1].wall / plf == pytest.approx(64)


def test_load_types_are_never_summed_on_the_way():
    found = take_down(demo_house().levels)
    assert found.total["roof live"] == 0.0  # the roof passes over the wall
    assert found.total["live"] / plf == pytest.approx(
        (20 + 30) * 12
    )  # 24 ft of floor, cut: 12 ft to the wall
    assert found.total["dead"] > 0


def test_nothing_to_carry_down_is_nothing():
    found = take_down([])
    assert (
        found.shares == () and dict(found.total) == dict.fromkeys(found.total, 0.0) and found.left_over == 0.0
    )
