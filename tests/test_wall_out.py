"""A wall of a house is out: loads by hand, houses of every kind, and what is refused."""

from dataclasses import replace

import pytest
from small_houses import LENGTH, around_a_wall, level, wall

from structlib.ground.refusals import BadInput
from structlib.ground.units import ft, kip, lb, plf, psf
from structlib.house.file import demo_house
from structlib.house.meanwhile import joists_at, wall_out
from structlib.house.path import follow
from structlib.house.plan import Beam, House, Load, Opening, Post

AT = 1 * ft


def lines(path, name, at=AT):
    found = path.line_on(name, at)
    return found["dead"] / plf, found["live"] / plf


def test_the_demo_house_by_hand():
    found = wall_out(demo_house(), "middle wall", 2 * ft)
    left, right = (found.out.line_on(name, 5 * ft)["live"] / plf for name in found.temporary)
    # 30 psf on the floor, and half of the attic's 240 plf on each joist's end; levers of 11 on 9 and of 13 on 11 ft
    assert left == pytest.approx((30 * 5.5 + 120) * 11 / 9)
    assert right == pytest.approx((30 * 6.5 + 120) * 13 / 11)
    # both stand on the ground floor now, whose beam and foundations get what they bring
    assert {one.part.name for one in found.out.elements if one.name in found.temporary} == set(found.temporary)
    on_floor = [one.source for one in found.out.element("ground floor").received if one.source in found.temporary]
    assert sorted(set(on_floor)) == sorted(found.temporary)
    assert found.before.house.part("middle wall").height > 0 and not found.out.house.openings
    # the lever's far end keeps (30 x 11 x 4.5 - 120 x 2) / 9 of live load
    far = found.out.element("upper floor, left part").gives[0]
    assert far.to == "west lower wall" and far.amount[1] / plf == pytest.approx((30 * 11 * 3.5 - 120 * 2) / 9)


def test_a_stretch_of_the_demo_wall_by_hand():
    """From 12 ft to 24 ft along it: there it is as if all were out, and beside it nothing changed."""
    found = wall_out(demo_house(), "middle wall", 2 * ft, start=12 * ft, end=24 * ft)
    left, right = found.temporary
    assert found.out.line_on(left, 18 * ft)["live"] / plf == pytest.approx((30 * 5.5 + 120) * 11 / 9)
    assert found.out.line_on(right, 18 * ft)["live"] / plf == pytest.approx((30 * 6.5 + 120) * 13 / 11)
    assert [(found.out.house.part(one).start / ft, found.out.house.part(one).end / ft) for one in (left, right)] == (
        [(pytest.approx(12), pytest.approx(24))] * 2
    )
    before = follow(demo_house())
    for name, at in (("middle wall, before", 6 * ft), ("middle wall, beyond", 26 * ft)):
        assert lines(found.out, name, at) == pytest.approx(lines(before, "middle wall", at))
    # the stretch beside the opening alone leaves the opening in its wall
    kept = wall_out(demo_house(), "middle wall", 2 * ft, end=12 * ft)
    assert kept.out.house.openings[0].wall == "middle wall, beyond" and kept.out.house.posts == demo_house().posts
    load = kept.out.element("kitchen opening").total()["live"]
    assert load == pytest.approx(before.element("kitchen opening").total()["live"])


@pytest.mark.parametrize(
    ("stretch", "message"),
    [
        ({"start": 20 * ft}, "kitchen opening reaches from 13 ft 9 3/4 in to 22 ft 6 3/4 in along middle wall"),
        ({"start": 8 * ft, "end": 8 * ft}, "ends where it starts"),
        ({"start": -1 * ft}, "start"),
        ({"end": 29 * ft}, "end"),
        ({"end": "12 ft"}, "not a number"),
    ],
)
def test_a_stretch_that_cannot_come_out_is_refused(stretch, message):
    with pytest.raises(BadInput, match=message):
        wall_out(demo_house(), "middle wall", 2 * ft, **stretch)


def test_what_stands_along_the_wall_goes_with_the_piece_under_it():
    """A tank over 4 ft of a masonry wall, a beam end and a post on it: each finds its piece, or is refused over an end."""
    house = around_a_wall(12 * ft, 12 * ft)
    tank = Load(name="tank", on="middle", x=0.0, y=1 * ft, dead=4000 * lb, length=2 * ft)
    found = wall_out(_with(house, loads=(tank,)), "middle", 2 * ft, start=4 * ft)
    assert found.out.house.loads[0].on == "middle, before"
    assert lines(found.out, "middle, before", 2 * ft)[0] == pytest.approx(
        lines(found.out, "middle, before", 3.5 * ft)[0] + 2000)  # fmt: skip
    with pytest.raises(BadInput, match="tank reaches from 1 ft to 3 ft along middle, over an end of what comes out"):
        wall_out(_with(house, loads=(tank,)), "middle", 2 * ft, start=2 * ft)


def test_what_a_lever_keeps_at_worst_by_hand():
    # 10 psf always, 40 psf that comes and goes: people on the 2 ft past the temporary wall alone
    joist = wall_out(around_a_wall(12 * ft, 0.0), "middle", 2 * ft).joists(AT)[0]
    assert joist.holders == ("left", "temporary wall left of middle")
    assert joist.push("left", joist.empty) / plf == pytest.approx(10 * 12 * 4 / 10)
    assert joist.push("left", joist.full) / plf == pytest.approx(50 * 12 * 4 / 10)
    assert joist.least("left") / plf == pytest.approx(10 * 12 * 4 / 10 - 40 * 2 * 1 / 10)
    assert joist.most("left") / plf == pytest.approx(50 * 12 * 4 / 10 + 40 * 2 * 1 / 10)
    assert joist.most("temporary wall left of middle") / plf == pytest.approx(50 * 12 * 6 / 10)
    # people between both walls only: 50 x 10 / 2 - 10 x 2 x 1 / 10 = 248 at the far end, 248 x 248 / (2 x 50) in the span
    assert joist.greatest_moment / lb == pytest.approx(248**2 / 100)


@pytest.mark.parametrize("joists", ["cut", "continuous"])
def test_the_house_with_the_wall_out_and_one_joist_of_it_agree(joists):
    house = around_a_wall(13 * ft, 11 * ft, joists=joists, left_overhang=1 * ft)
    found = wall_out(house, "middle", 1.5 * ft)
    for joist in found.joists(AT):
        for holder in joist.holders:
            assert joist.push(holder, joist.full) / plf == pytest.approx(sum(lines(found.out, holder)), rel=1e-9)
            assert joist.push(holder, joist.empty) / plf == pytest.approx(lines(found.out, holder)[0], rel=1e-9)
            assert (
                joist.least(holder) <= joist.push(holder, joist.full) * (1 + 1e-12) <= joist.most(holder) * (1 + 1e-9)
            )
    assert len(found.joists(AT)) == (2 if joists == "cut" else 1) and len(found.temporary) == 2


def test_something_on_the_wall_stands_on_the_ends_of_the_joists():
    house = around_a_wall(12 * ft, 12 * ft)
    above = Load(name="wall above", on="middle", x=0.0, y=0.0, dead=300 * plf * LENGTH, length=LENGTH)
    found = wall_out(replace(house, loads=(above,)), "middle", 2 * ft)
    # half of 300 plf on each end, 2 ft past a support 10 ft from the other
    assert lines(found.out, "left")[0] == pytest.approx(10 * 12 * 4 / 10 - 150 * 2 / 10)
    assert lines(found.out, found.temporary[0])[0] == pytest.approx(10 * 12 * 6 / 10 + 150 * 12 / 10)
    joist = found.joists(AT)[0]
    assert joist.least("left") / plf == pytest.approx(48 - 30 - 8)


def test_what_stands_on_the_floor_goes_along_with_its_piece():
    house = around_a_wall(12 * ft, 12 * ft)
    partition = wall("partition", 6 * ft, on=("floor",), weight=5 * psf)
    tub = Load(name="tub", on="floor", x=-3 * ft, y=4 * ft, live=400 * plf * ft, length=3 * ft)
    house = replace(house, walls=(*house.walls, partition), loads=(tub,))
    found = wall_out(house, "middle", 2 * ft)
    assert found.out.house.part("partition").on == ("floor, right part",)
    assert found.out.house.part("tub").on == "floor, left part"
    # 40 plf of partition at 6 of 12 ft, on supports 2 and 12 ft from the wall
    assert lines(found.out, "right")[0] == pytest.approx(10 * 12 * 4 / 10 + 40 * 4 / 10)
    # the tub's 133 plf from y = 4 to 7 ft, 3 ft left of the wall: 9 of 10 ft from the far end
    assert lines(found.out, found.temporary[0], 5 * ft)[1] == pytest.approx(40 * 12 * 6 / 10 + 400 / 3 * 9 / 10)


def test_a_beam_in_line_beyond_the_wall_holds_its_part_of_the_floor():
    walls = (wall("left", -12 * ft), wall("middle", 0.0, end=8 * ft), wall("right", 12 * ft))
    ends = (
        Post(name="a", on="soil", x=0.0, y=8 * ft, height=7 * ft),
        Post(name="b", on="soil", x=0.0, y=LENGTH, height=7 * ft),
    )
    beam = Beam(name="beam", on=("a", "b"), at=0.0, start=8 * ft, end=LENGTH)
    house = House(
        name="small",
        levels=(level("floor", ("left", "middle", "beam", "right")),),
        walls=walls,
        beams=(beam,),
        posts=ends,
    )
    found = wall_out(house, "middle", 2 * ft)
    assert (
        lines(found.out, "beam", 10 * ft)
        == lines(found.before, "beam", 10 * ft)
        == (pytest.approx(120), pytest.approx(480))
    )
    assert lines(found.out, found.temporary[0], AT) == (pytest.approx(72), pytest.approx(288))
    assert lines(found.out, "left", AT)[1] < lines(found.out, "left", 10 * ft)[1]
    with pytest.raises(BadInput, match="reaches from"):
        found.out.line_on(found.temporary[0], 10 * ft)


def test_what_lands_on_a_joist_below_by_hand():
    # 667 lb 2 ft from an end of 11 ft, and 12.15 plf: 667 x 2 x 9 / 11 + 12.15 x 2 x 9 / 2 of 65.5 x 11 x 11 / 8
    joist = joists_at(follow(demo_house()), "ground floor", 3 * ft)[0]
    own = joist.empty.reactions[0].force / lb * 2 / 11
    landed = joist.landed(9 * ft, 500 * plf)
    by_hand = 500 * 16 / 12 * 18 / 11 + own * 18 / 2
    assert landed.moment / lb / ft == pytest.approx(by_hand, rel=1e-9)
    assert landed.moment_share == pytest.approx(by_hand / ((own + 40 * 16 / 12) * 121 / 8), rel=1e-9)
    with pytest.raises(BadInput, match="does not reach"):
        joist.landed(12 * ft, 500 * plf)


def _with(house, **more):
    return replace(house, **{name: (*getattr(house, name), *parts) for name, parts in more.items()})


POST = Post(name="upper post", on="opening", x=0.0, y=9 * ft, height=8 * ft)
OPENING = Opening(
    name="opening",
    wall="middle",
    start=8 * ft,
    clear_width=4 * ft,
    height=6 * ft,
    wall_above=0.0,
    left_seat=38.0,
    right_seat=38.0,
)


@pytest.mark.parametrize(
    ("house", "name", "distance", "message"),
    [
        (around_a_wall(12 * ft, 0.0), "floor", 2 * ft, "no wall along the house"),
        (around_a_wall(12 * ft, 0.0), "midle", 2 * ft, "middle"),
        (around_a_wall(12 * ft, 0.0), "middle", 6 * ft, "distance"),
        (around_a_wall(12 * ft, 0.0), "middle", "2 ft", "not a number"),
        (around_a_wall(3 * ft, 0.0), "middle", 3 * ft, "does not stand between the two"),
        (around_a_wall(12 * ft, 0.0, kind="roof"), "middle", 2 * ft, "only rafters rest on middle"),
        (_with(around_a_wall(12 * ft, 0.0), walls=(wall("partition", 6 * ft),)), "partition", 2 * ft, "no joists rest on"),
        (_with(around_a_wall(12 * ft, 0.0), openings=(OPENING,), posts=(POST,),
               loads=(Load(name="ridge", on="upper post", x=0.0, y=9 * ft, dead=1 * kip),)), "middle", 2 * ft,
         "upper post presses on opening at one place"),
        (_with(around_a_wall(12 * ft, 12 * ft), walls=(wall("below", 0.0),)), "below", 2 * ft, "no joists rest on"),
    ],
)  # fmt: skip
def test_what_cannot_be_worked_out_is_refused_in_a_sentence(house, name, distance, message):
    with pytest.raises(BadInput, match=message):
        wall_out(house, name, distance)


def test_a_wall_on_a_wall_asks_for_the_floor_below():
    house = around_a_wall(12 * ft, 0.0)
    below = wall("cellar wall", 0.0)
    walls = tuple(replace(one, on=("cellar wall",)) if one.name == "middle" else one for one in house.walls)
    with pytest.raises(BadInput, match="no floor is written under middle"):
        wall_out(replace(house, walls=(*walls, below)), "middle", 2 * ft)
