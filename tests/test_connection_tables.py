"""Connections as tables: the values by the yield equations written out here, and the distances by the rule."""

import pytest

from structlib.pages.topics.seat import connections as connection_tables


def _pounds(text):
    return float(text.split()[0].replace(",", ""))


def _lowest(d, long_main, long_side, bearing, bend, reductions):
    """NDS 2018 Table 12.3.1A, single shear, members of the same wood (pounds and inches)."""
    t = long_main / long_side
    k1 = ((1 + 2 * (1 + t + t**2) + t**2) ** 0.5 - (1 + t)) / 2
    k2 = -1 + (4 + 6 * bend * d**2 / (3 * bearing * long_main**2)) ** 0.5
    k3 = -1 + (4 + 6 * bend * d**2 / (3 * bearing * long_side**2)) ** 0.5
    first, second, third = reductions
    return min(
        d * long_main * bearing / first,
        d * long_side * bearing / first,
        k1 * d * long_side * bearing / second,
        k2 * d * long_main * bearing / (3 * third),
        k3 * d * long_side * bearing / (3 * third),
        d**2 * (bearing * bend / 3) ** 0.5 / third,
    )


def test_bolt_and_nail_pass_what_the_yield_equations_give():
    rows = {row[0]: row for row in connection_tables.ways_to_give_way().rows}
    across = round(6100 * 0.5**1.45 / 0.5**0.5 / 50) * 50  # as the standard's table rounds it
    bolt = _lowest(0.5, 3.0, 1.5, across, 45_000, (5.0, 4.5, 4.0))
    assert _pounds(rows["1/2 in bolt"][1]) == pytest.approx(bolt, rel=0.01)
    nail_bearing = round(16_600 * 0.5**1.84 / 50) * 50
    # a 16d common nail is 3 1/2 in long: 2 in reach into the plies behind, less half of its tip
    nail = _lowest(0.162, 2.0 - 0.162, 1.5, nail_bearing, 90_000, (2.2, 2.2, 2.2))
    assert _pounds(rows["16d common nail"][1]) == pytest.approx(nail, rel=0.01)


def test_every_way_is_told_in_words_and_a_harder_way_would_take_more():
    for row in connection_tables.ways_to_give_way().rows:
        assert "bends" in row[2] or "crush" in row[2]
        assert _pounds(row[3]) > _pounds(row[1])


def test_distances_are_those_of_the_rule():
    rows = {row[0]: row for row in connection_tables.distances_wanted().rows}
    # across the grain: four diameters to the end and to the loaded edge
    assert rows["1/2 in bolt"][1:3] == ("2 in", "2 in")
    assert rows["3/8 in lag screw"][1:3] == ("1 1/2 in", "1 1/2 in")
    assert "guidance" in rows["16d common nail"][5]
