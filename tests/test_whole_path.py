"""The whole path of a house as a table, and what a finding on site moves: against sums by hand."""

import pytest

from structlib.ground.loads import LOAD_TYPES
from structlib.ground.showing import show
from structlib.ground.units import ft, lb, psf
from structlib.house.changes import differences
from structlib.house.file import demo_house
from structlib.house.path import follow
from structlib.house.plan import Wood
from structlib.pages.topics.path.tables import path_table, what_if
from structlib.rules.choice import RULEBOOK


def test_joists_in_one_piece_move_what_the_three_moment_equation_says_and_lose_nothing():
    house = demo_house()
    before, after = follow(house), follow(house, {"upper floor": {"joists": "continuous"}})
    moved = {one.name: one for one in differences(before, after)}
    # by hand: M = w (11^3 + 13^3) / (8 (11 + 13)) = 18.375 w, and the middle gains M (1/11 + 1/13)
    gain = 30 * psf * ft * 18.375 * (1 / 11 + 1 / 13) * 28 * ft
    wall = moved["middle wall"]
    assert wall.after["live"] - wall.before["live"] == pytest.approx(gain, rel=1e-9)
    west, east = (moved[f"{side} foundation"] for side in ("west", "east"))
    assert west.before["live"] - west.after["live"] == pytest.approx(gain * 13 / 24, rel=1e-9)
    assert east.before["live"] - east.after["live"] == pytest.approx(gain * 11 / 24, rel=1e-9)
    for kind in LOAD_TYPES:
        sums = [
            sum(share.sum_and_moments[0][LOAD_TYPES.index(kind)] for share in path.into_the_soil)
            for path in (before, after)
        ]
        assert sums[0] == pytest.approx(sums[1], rel=1e-9, abs=1e-6)
    assert not {"roof", "attic floor", "ground floor"} & set(moved)


def test_the_table_has_every_part_with_what_it_hands_on_and_a_gate_hides_a_share():
    path, table = follow(demo_house()), path_table()
    rows = {row[0]: row for row in table.rows}
    assert [row[0] for row in table.rows] == [one.name for one in path.elements]
    # by hand: 24 ft x 28 ft of ground floor at 40 psf, half of it on the beam's line
    assert all("% used" in rows[name][-1] for name in ("roof", "attic floor", "upper floor", "ground floor"))
    # 7 psf lie on the slope of 8 in 12, its rafters with them, over 24 ft x 28 ft
    assert rows["roof"][2] == show(7 * psf * (12**2 + 8**2) ** 0.5 / 12 * 24 * 28 * ft**2, "force")
    assert rows["ground floor"][3] == "26,880 lb" == f"{40 * 24 * 28:,} lb"
    assert path.element("north post").total()["live"] / lb == pytest.approx(1080 * 7, rel=1e-3)
    assert rows["north pad"][-1] == "stop and call"  # its soil is not known
    assert "%" in rows["north post"][-1]


def test_a_part_that_is_lighter_or_gone_is_told_and_the_change_is_worded():
    wood = Wood(species="Hem-Fir", grade="No.2", size="2x10", plies=3)
    table = what_if({"kitchen opening": {"beam": wood, "clear_width": 7 * ft}}, rulebook=RULEBOOK)
    assert table.caption == "What if: kitchen opening, beam: Hem-Fir No.2 2x10 3; kitchen opening, clear width: 7 ft."
    assert {"kitchen opening", "kitchen opening, right post"} <= {row[0] for row in table.rows}
