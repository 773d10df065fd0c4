"""With a wall out, what reaches the soil is what reached it before, less the wall itself: forces and both moments, by type."""

import random
from dataclasses import replace

import numpy
import pytest
from test_path_balance import random_house

from structlib.ground.units import ft
from structlib.house.meanwhile import wall_out
from structlib.house.path import follow


def into_the_soil(path):
    return sum(share.sum_and_moments for share in path.into_the_soil)


@pytest.mark.parametrize("whole", [True, False], ids=["all of it", "a stretch"])
@pytest.mark.parametrize("seed", range(100))
def test_balance_with_a_wall_out(seed, whole):
    house, dice = random_house(seed), random.Random(seed)
    house = replace(
        house,
        openings=(),
        posts=tuple(one for one in house.posts if one.name != "post on the opening"),
        loads=tuple(one for one in house.loads if one.on != "post on the opening"),
    )
    wall = house.part("middle lower")
    # the ground floor: temporary walls stand on it, out of line with what is below
    floor = replace(house.part("upper floor"), name="ground floor", on=("west base", "middle base", "east base"))
    distance, house = dice.uniform(0.5, 5) * ft, replace(house, levels=(*house.levels, floor))
    start, end = wall.start, wall.end
    if not whole:
        parts = sorted(dice.uniform(0, 1) for _ in range(2))
        start, end = (wall.start + part * (wall.end - wall.start) for part in parts)
    found = wall_out(house, wall.name, distance, **({} if whole else {"start": start, "end": end}))
    gone = numpy.zeros((3, 4))
    gone[:, 0] = wall.weight * wall.height * (end - start) * numpy.array([1.0, wall.at, (start + end) / 2])
    assert into_the_soil(found.before) == pytest.approx(into_the_soil(follow(house)), rel=1e-9, abs=1e-3)
    before, out = into_the_soil(found.before), into_the_soil(found.out)
    assert out == pytest.approx(before - gone, rel=1e-9, abs=1e-9 * numpy.abs(before).max())
    y = (start + end) / 2 + 1e-3 * (end - start)
    for joist in found.joists(y):
        for holder in set(joist.holders) & set(found.temporary):
            full = found.out.line_on(holder, y).sum_for_equilibrium_only()
            assert joist.push(holder, joist.full) == pytest.approx(full, rel=1e-9)
            assert joist.least(holder) - 1e-9 * abs(full) <= full <= joist.most(holder) + 1e-9 * abs(full)
