"""Houses worked by hand from ridge to soil, in feet and pounds: what every page that reads the path must show.

Expected numbers come from moments about axes and the three-moment equation, written out beside each house.
"""

import dataclasses

import pytest
from dummy_rulebook import DUMMY

from structlib.ground.refusals import BadInput
from structlib.ground.units import ft, inch, lb, plf, psf, psi
from structlib.house.file import demo_house, house_from_text
from structlib.house.judging import judge, judge_element
from structlib.house.path import follow
from structlib.house.pieces import piece_of
from structlib.house.plan import (
    Beam,
    FlitchBeam,
    House,
    Joists,
    Layer,
    Level,
    Load,
    Opening,
    Pad,
    Post,
    SteelBeam,
    Wall,
    Wood,
)
from structlib.house.takedown import take_down
from structlib.rules.choice import RULEBOOK
from structlib.rules.members import BEAM_FACE, LEAST_SEAT, SEAT_KINDS
from structlib.rules.us import columns, footings

LONG = 20
FIR = Wood(species="Douglas Fir-Larch", grade="No.2", size="2x12", plies=3)


def wall(name, at, on="soil", face=0.0, height=8, **more):
    return Wall(
        name=name,
        on=(on,) if isinstance(on, str) else on,
        height=height * ft,
        weight=face * psf,
        **{"at": at * ft, "start": 0.0, "end": LONG * ft, **more},
    )


def floor(on, name="floor", dead=10, live=40, **more):
    return Level(
        name=name,
        kind="floor",
        on=tuple(on.split()),
        start=0.0,
        end=LONG * ft,
        live=live * psf,
        layers=(Layer(name="all of it", weight=dead * psf),),
        **more,
    )


def roof(on, dead=10, snow=30, roof_live=0, **more):
    return Level(
        name="roof",
        kind="roof",
        on=tuple(on.split()),
        start=0.0,
        end=LONG * ft,
        snow=snow * psf,
        roof_live=roof_live * psf,
        layers=(Layer(name="all of it", weight=dead * psf),),
        **more,
    )


def post(name, x, y, on="soil", **more):
    return Post(name=name, on=on, x=x * ft, y=y * ft, height=8 * ft, **more)


def opening(name, wall, start, clear, **more):
    """Seats of 3 in: from middle to middle it is 3 in more than the clear width."""
    return Opening(
        name=name,
        wall=wall,
        start=start * ft,
        clear_width=clear * ft,
        height=6 * ft,
        **{"left_seat": 3 * inch, "right_seat": 3 * inch, "wall_above": 0.0, **more},
    )


def house(*parts):
    lists = dict(levels=Level, walls=Wall, openings=Opening, beams=Beam, posts=Post, pads=Pad, loads=Load)
    return House(
        name="by hand", **{name: tuple(one for one in parts if isinstance(one, kind)) for name, kind in lists.items()}
    )


def three(a, b, c, **more):
    return [wall(name, at, **more) for name, at in zip(("west", "middle", "east"), (a, b, c))]


def line(path, name, at, kind):
    return path.line_on(name, at * ft)[kind] / plf


def force(path, name, kind):
    return path.element(name).total()[kind] / lb


# ---- the houses ----


def test_every_level_has_its_own_spans_and_joints():
    # attic in one piece over 10 and 16 ft: M = w (1000 + 4096) / (8 x 26) = 24.5 w, so the middle wall gets
    # 13 + 2.45 + 1.53125 = 16.98125 ft of it, the west wall 2.55 and the east wall 6.46875; the floor is cut: 13 ft
    path = follow(
        house(
            floor("west.up mid.up east.up", "attic", dead=10, live=20, joists="continuous"),
            floor("west middle east", dead=12),
            *three(0, 10, 26, face=10),
            *(
                wall(f"{n}.up", at, on, 10)
                for n, at, on in (("west", 0, "west"), ("mid", 10, "middle"), ("east", 26, "east"))
            ),
            opening("door", "middle", 6, 7.5, wall_above=1 * ft),
        )
    )
    assert line(path, "middle", 2, "live") == pytest.approx(20 * 16.98125 + 40 * 13)
    assert line(path, "middle", 2, "dead") == pytest.approx(10 * 16.98125 + 12 * 13 + 80)
    assert line(path, "west", 2, "live") == pytest.approx(20 * 2.55 + 40 * 5)
    assert line(path, "east", 2, "live") == pytest.approx(20 * 6.46875 + 40 * 8)
    assert force(path, "door, left post", "live") == pytest.approx(859.625 * 7.75 / 2)
    assert force(path, "door, right post", "dead") == pytest.approx((405.8125 + 10) * 7.75 / 2)  # 1 ft of wall above it


@pytest.mark.parametrize(
    "joints, west, middle, east",
    [
        ("cut", 0.25, 0.75, 0.0),  # 9 ft from the west wall, of 12
        # two equal spans in one piece: b (4 L2 - a (L + a)) / 4 L3 = 3 x 387 / 6912, and -a (L2 - a2) / 4 L3 = -567 / 6912
        ("continuous", 0.16796875, 0.9140625, -0.08203125),
    ],
)
def test_a_wall_out_of_line_stands_on_the_floor(joints, west, middle, east):
    path = follow(
        house(
            floor("west.up partition east.up", "attic", live=20),
            floor("west middle east", joists=joints),
            *three(0, 12, 24),
            wall("west.up", 0, "west"),
            wall("east.up", 24, "east"),
            wall("partition", 9, "floor", face=8),
        )
    )
    # attic: 12 ft on the partition, 240 plf live, 120 + 8 x 8 dead; 4.5 and 7.5 ft on the outside walls
    outer, inner = (0.5, 1.0) if joints == "cut" else (0.375, 1.25)
    assert line(path, "middle", 3, "live") == pytest.approx(40 * 12 * inner + 240 * middle)
    assert line(path, "middle", 3, "dead") == pytest.approx(10 * 12 * inner + 184 * middle)
    assert line(path, "west", 3, "live") == pytest.approx(40 * 12 * outer + 240 * west + 20 * 4.5)
    assert line(path, "east", 3, "live") == pytest.approx(40 * 12 * outer + 240 * east + 20 * 7.5)


def ridge_house():
    """A ridge beam over 20 ft on posts at 2 and 17 ft; one comes down on a post in the wall, one on a header."""
    return house(
        roof("west ridge east", ridge="beam", slope=(6.0, 12.0)),
        floor("west middle east"),
        *three(0, 13, 26),
        Beam(name="ridge", on=("king 1", "king 2"), at=13 * ft, start=0.0, end=LONG * ft),
        post("king 1", 13, 2, "wall post"),
        post("king 2", 13, 17, "door"),
        post("wall post", 13, 2, "pad"),
        Pad(name="pad", x=13 * ft, y=2 * ft, side=30 * inch),
        opening("door", "middle", 14, 5.5),
    )


def test_a_ridge_beam_comes_down_by_posts():
    # 13 ft of roof: 390 plf of snow, 7,800 lb about 10 ft, posts at 2 and 17 ft: 8/15 of it on the second
    path = follow(ridge_house())
    assert line(path, "ridge", 9, "snow") == pytest.approx(390)
    assert line(path, "ridge", 9, "dead") == pytest.approx(130 * 1.25**0.5)
    assert [force(path, name, "snow") for name in ("pad", "king 2")] == pytest.approx([3640, 4160])
    assert force(path, "pad", "dead") == pytest.approx(130 * 1.25**0.5 * 20 * 7 / 15)
    # the header runs from 13.875 to 19.625 ft: king 2 stands 3.125 ft from its left end, of 5.75
    assert force(path, "door, left post", "snow") == pytest.approx(4160 * 2.625 / 5.75)
    assert force(path, "door, right post", "snow") == pytest.approx(4160 * 3.125 / 5.75)
    assert force(path, "door, right post", "live") == pytest.approx(40 * 13 * 5.75 / 2)


def tip_house(joints):
    """Posts at 0, 8 and 16 ft; the beam goes on to 19 ft, with a post of 1,500 lb dead and 2,000 lb snow on its tip."""
    return house(
        floor("west beam east"),
        wall("west", 0),
        wall("east", 26),
        Beam(name="beam", on=("a", "b", "c"), at=12 * ft, start=0.0, end=19 * ft, joints=joints),
        *(post(name, 12, y, "soil") for name, y in (("a", 0), ("b", 8), ("c", 16))),
        post("tip", 12, 19, "beam"),
        Load(name="roof", on="tip", x=12 * ft, y=19 * ft, dead=1500 * lb, snow=2000 * lb),
    )


@pytest.mark.parametrize(
    "joints, live, snow",
    [
        # cut, about 8 ft: 11 ft x 5.5 / 8 of 520 plf at c; the tip gives c 11/8 and takes 3/8 from b
        ("cut", (2080, 2080 + 1787.5, 3932.5), (0, -750, 2750)),
        # one piece: M(16) = -520 x 9/2 = -2,340, 32 M(8) = -2 x 520 x 512/4 + 8 x 2,340, M(8) = -3,575 lb-ft;
        # the tip's 2,000 lb: M(16) = -6,000, M(8) = 1,500
        (
            "continuous",
            (2080 - 446.875, 4160 + 446.875 + 154.375, 3640 - 154.375),
            (187.5, -187.5 - 937.5, 2000 + 937.5),
        ),
    ],
)
def test_an_overhang_with_a_post_on_its_tip(joints, live, snow):
    tip = tip_house(joints)
    whole = dataclasses.replace(tip, levels=(dataclasses.replace(tip.levels[0], end=19 * ft),))
    path = follow(whole)
    assert [force(path, name, "live") for name in "abc"] == pytest.approx(live)
    assert [force(path, name, "snow") for name in "abc"] == pytest.approx(snow, abs=1e-9)
    gates = judge_element(path, "beam", RULEBOOK).gates
    assert any("beam lifts off b under D + S" in gate for gate in gates)


def test_beams_in_a_row_and_a_tub_across_the_joists():
    # 13 ft of floor: 520 plf; beams of 9 and 11 ft; the tub, 2,000 lb over 5 ft at 9 ft of 12: 300 plf on the beam
    path = follow(row_house())
    assert [line(path, "north beam", y, "live") for y in (0, 2, 3, 5, 8, 9)] == pytest.approx(
        [520, 520, 820, 820, 520, 520]
    )
    assert line(path, "west", 5, "live") == pytest.approx(40 * 6 + 100)
    assert force(path, "north", "live") == pytest.approx(520 * 4.5 + 1500 * 3.5 / 9)
    assert force(path, "pad", "live") == pytest.approx(520 * 10 + 1500 * 5.5 / 9)
    assert force(path, "south", "live") == pytest.approx(520 * 5.5)


def row_house(**of_beams):
    return house(
        dataclasses.replace(floor("west east"), on=("west", "north beam", "south beam", "east")),
        wall("west", 0),
        wall("east", 26),
        Beam(name="north beam", on=("north", "shared"), at=12 * ft, start=0.0, end=9 * ft, **of_beams),
        Beam(name="south beam", on=("shared", "south"), at=12 * ft, start=9 * ft, end=LONG * ft, **of_beams),
        post("north", 12, 0),
        post("south", 12, 20),
        post("shared", 12, 9, "pad", wood=dataclasses.replace(FIR, size="2x6")),
        Pad(name="pad", x=12 * ft, y=9 * ft, side=36 * inch, soil="clay or silt"),
        Load(name="tub", on="floor", x=9 * ft, y=3 * ft, length=5 * ft, live=2000 * lb),
    )


def test_two_openings_in_one_wall_and_a_post_on_a_header():
    # upper opening from 3.875 to 7.875 ft, 240 plf: 480 lb an end; one on a post, one on the header below.
    # that header, 5.875 to 11.875 ft: 2,880 lb of floor, 960 lb of attic about 4 ft, 480 lb at 2 ft
    path = follow(
        house(
            floor("west.up up east.up", "attic", live=20),
            floor("west middle east"),
            *three(0, 12, 24),
            wall("west.up", 0, "west"),
            wall("up", 12, "middle"),
            wall("east.up", 24, "east"),
            opening("hatch", "up", 4, 3.75, left_on="stud post", right_on="door"),
            post("stud post", 12, 3.875),
            opening("door", "middle", 6, 5.75),
            opening("window", "middle", 14, 3.75),
        )
    )
    assert force(path, "stud post", "live") == pytest.approx(480)
    assert force(path, "door, left post", "live") == pytest.approx(1440 + 960 * 2 / 6 + 480 * 4 / 6)
    assert force(path, "door, right post", "live") == pytest.approx(1440 + 960 * 4 / 6 + 480 * 2 / 6)
    assert force(path, "window, left post", "live") == pytest.approx((480 + 240) * 4 / 2)
    assert line(path, "middle", 5, "live") == pytest.approx(480)  # under the hatch nothing comes down
    assert line(path, "middle", 20, "live") == pytest.approx(720)  # the end of the wall is still the wall
    assert sum(s.sum_and_moments[0][1] for s in path.into_the_soil) / lb == pytest.approx((20 + 40) * 24 * 20)


def test_a_transfer_beam_across():
    # girder with 2.5 + 4.5 ft of 50 psf: 350 plf, 3,500 lb on its middle post, 5 ft along a transfer beam of 12 ft
    path = follow(
        house(
            floor("west girder east", live=50),
            wall("west", 0, made_of="masonry"),
            wall("east", 14),
            Beam(name="girder", on=("g1", "g2", "g3"), at=5 * ft, start=0.0, end=LONG * ft),
            Beam(name="transfer", on=("west", "far post"), runs="across", at=10 * ft, start=0.0, end=12 * ft),
            post("g1", 5, 0),
            post("g2", 5, 10, "transfer"),
            post("g3", 5, 20),
            post("far post", 12, 10),
        )
    )
    assert force(path, "g2", "live") == pytest.approx(3500)
    assert force(path, "far post", "live") == pytest.approx(3500 * 5 / 12)
    assert force(path, "west", "live") == pytest.approx(50 * 2.5 * 20 + 3500 * 7 / 12)
    assert any("sits on masonry" in gate for gate in judge_element(path, "transfer", RULEBOOK).gates)


def test_an_uneven_roof_with_eaves():
    # from -1 to 26 ft on walls at 0 and 24 ft: 27 ft about 12.5; ridge at 9 ft, 6 ft up, so 6 in 15 on the long side
    path = follow(
        house(
            roof(
                "west east",
                roof_live=20,
                slope=(8.0, 12.0),
                ridge_at=9 * ft,
                left_overhang=1 * ft,
                right_overhang=2 * ft,
            ),
            wall("west", 0),
            wall("east", 24),
        )
    )
    assert line(path, "east", 3, "snow") == pytest.approx(30 * 27 * 12.5 / 24)
    assert line(path, "west", 3, "roof live") == pytest.approx(20 * 27 * 11.5 / 24)
    steep, flat = 10 * (1 + 4 / 9) ** 0.5 * 10, 10 * 1.16**0.5 * 17
    assert line(path, "east", 3, "dead") == pytest.approx((steep * 4 + flat * 17.5) / 24)


def balcony(live, parapet):
    walls = [wall("west", 0), wall("east", 9)] + [wall("parapet", 13, "floor", face=12.5)] * parapet
    return house(floor("west east", live=live, right_overhang=4 * ft), *walls)


def test_a_balcony_lifts_its_far_end_by_type():
    # 13 ft about 6.5, walls 9 ft apart: 130 x 2.5 / 9 = 36.1 plf dead at the west wall; a parapet of 100 plf takes 44.4
    path = follow(balcony(40, parapet=True))
    assert line(path, "west", 3, "dead") == pytest.approx(130 * 2.5 / 9 - 400 / 9)
    assert line(path, "west", 3, "live") == pytest.approx(520 * 2.5 / 9)
    assert "lifts off west under D:" in judge(path, RULEBOOK)["floor"].gates[0]  # D + L alone would not show it


@pytest.mark.parametrize("live, lifts", [(40, False), (60, True)])
def test_live_load_on_the_overhang_alone_is_looked_at(live, lifts):
    # on 4 ft about 2 ft beyond the wall: 40 psf takes 35.6 plf off 36.1, and 60 psf takes 53.3
    found = judge(follow(balcony(live, parapet=False)), RULEBOOK)["floor"].gates
    assert (
        any("lifts off west under D + L, with what comes and goes only where it lifts" in one for one in found) == lifts
    )


V1 = """name = "old"
[[levels]]
name = "roof"
kind = "roof"
left_span = "12 ft"
overhang = "2 ft"
ridge = "{ridge}"
snow = "30 psf"
wall_under = {{ height = "8 ft", weight = "10 psf" }}
[[levels]]
name = "loft"
kind = "floor"
left_span = "9 ft"
right_span = "9 ft"
live = "20 psf"
lands = false
wall_under = {{ height = "3 ft", weight = "10 psf" }}
[[levels]]
name = "attic"
kind = "floor"
left_span = "10 ft"
right_span = "16 ft"
joists = "continuous"
live = "20 psf"
[[levels]]
name = "floor"
kind = "floor"
right_span = "14 ft"
live = "40 psf"
wall_under = {{ height = "2 ft", weight = "10 psf" }}
[opening]
clear_width = "8 ft"
"""


@pytest.mark.parametrize(
    "ridge, width", [("board", 14), ("beam", 14 * 7 / 12)]
)  # all of it, or by leverage about the ridge
def test_a_file_of_version_1_brings_what_version_1_brought(ridge, width):
    path = follow(house_from_text(V1.format(ridge=ridge)))
    assert line(path, "the wall", 6, "snow") == pytest.approx(30 * width)
    assert line(path, "the wall", 6, "live") == pytest.approx(20 * 16.98125 + 40 * 7)
    assert line(path, "the wall", 6, "dead") == pytest.approx(
        80 + 30 + 20
    )  # every wall between, also under the last level
    down = take_down(path, "the wall", 6 * ft)
    assert dict(down.total) == pytest.approx(dict(path.line_on("the wall", 6 * ft)))
    assert down.left_over == pytest.approx(0, abs=1e-9)


@pytest.mark.parametrize(
    "old, new, sentence",
    [
        ('snow = "30 psf"', 'snow = "30 psf"\nlive = "20 psf"', "roof is a roof; live does not belong to it"),
        (
            'right_span = "14 ft"',
            'right_span = "14 ft"\nsnow = "20 psf"',
            "floor is a floor; snow does not belong to it",
        ),
        (
            'right_span = "14 ft"',
            'right_span = "14 ft"\noverhang = "2 ft"',
            "floor is a floor; overhang does not belong to it",
        ),
    ],
)
def test_what_version_1_refused_is_refused(old, new, sentence):
    with pytest.raises(BadInput, match=sentence):
        house_from_text(V1.format(ridge="board").replace(old, new))


# ---- no load vanishes ----


def plain(*more):
    return house(floor("west middle east"), *three(0, 12, 26), opening("door", "middle", 5, 6), *more)


def spread(on, x, y, length=5):
    return Load(name="tub", on=on, x=x * ft, y=y * ft, length=length * ft, live=1000 * lb)


@pytest.mark.parametrize(
    "parts, sentence",
    [
        ([spread("middle", 12, 18)], "tub rests on middle by name, and does not stand over it"),  # 3 ft beyond its end
        ([spread("middle", 13, 3)], "tub rests on middle by name, and does not stand over it"),
        ([spread("door", 13, 6, 3)], "tub rests on door by name, and does not stand over it"),
        ([spread("floor", 40, 3)], "tub stands on floor by name, at 40 ft across the house, and its joists reach from"),
        ([wall("stray", -2, "floor")], "stray stands on floor by name"),
        ([post("p", 3, 7, "door")], "p rests on door by name, and does not stand over it"),
        ([post("door, left post", 12, 4.875)], "'door, left post' is what the studs under door are called"),
    ],
)
def test_what_does_not_stand_over_its_support_is_refused(parts, sentence):
    with pytest.raises(BadInput, match=sentence):
        follow(plain(*parts))


def test_posts_of_an_opening_rest_on_the_beam_before_the_soil():
    under = Beam(name="under", on=("a", "b"), at=12 * ft, start=0.0, end=LONG * ft)
    parts = [
        one if one.name != "middle" else dataclasses.replace(one, on=("soil", "under")) for one in three(0, 12, 26)
    ]
    path = follow(
        house(
            floor("west middle east"),
            *parts,
            under,
            post("a", 12, 0),
            post("b", 12, 20),
            opening("door", "middle", 5, 6),
        )
    )
    assert force(path, "a", "live") + force(path, "b", "live") == pytest.approx(520 * 20)


def test_a_ridge_stands_where_one_thing_says():
    on = [*three(0, 13, 26), wall("purlin", 6)]
    with pytest.raises(BadInput, match="must rest on a ridge beam and one wall or two"):
        follow(house(roof("west purlin middle east", ridge="beam", slope=(6.0, 12.0)), *on))
    with pytest.raises(BadInput, match="leave ridge_at out"):
        follow(house(roof("west middle east", ridge="beam", ridge_at=5 * ft), *on))


def test_a_place_beyond_a_wall_is_refused_not_empty():
    path = follow(plain())
    with pytest.raises(BadInput, match="middle reaches from 0 in to 20 ft along it, got 21 ft"):
        path.line_on("middle", 21 * ft)
    assert take_down(path, "middle", 20 * ft).total["live"] / plf == pytest.approx(520)
    with pytest.raises(BadInput, match="has no beam"):
        path.first_bay()


def test_the_take_down_holds_what_no_level_brings():
    loft = dataclasses.replace(floor("west up east", "loft"), end=10 * ft)
    parts = plain(wall("up", 12, "middle", face=10), spread("middle", 12, 12))
    path = follow(dataclasses.replace(parts, levels=(loft, *parts.levels)))
    for y in (1, 13, 19):
        down = take_down(path, "middle", y * ft)
        assert dict(down.total) == pytest.approx(dict(path.line_on("middle", y * ft)))
    assert [name for name, _ in take_down(path, "middle", 13 * ft).others] == ["tub", "up"]


# ---- judged, by hand ----


def test_a_post_and_its_pad_are_judged_for_what_comes_down():
    path = follow(row_house(wood=FIR))
    found = judge(path, RULEBOOK)
    dead = path.element("shared").total()["dead"]
    beam, stud = piece_of(FIR), piece_of(dataclasses.replace(FIR, size="2x6"))
    weight = beam.material.weight_density * 3 * 1.5 * inch * 11.25 * inch
    own = stud.material.weight_density * 3 * 1.5 * inch * 5.5 * inch * 8 * ft
    assert dead / lb == pytest.approx(130 * 10 + (weight * 10 * ft + own) / lb)
    live = (520 * 10 + 1500 * 5.5 / 9) * lb
    both = next(one for one in RULEBOOK.combinations({"dead", "live"}) if one.name == "D + L")
    column = columns.Column(stud.material, 1.5 * inch, 5.5 * inch, 8 * ft, plies=3)
    by_hand = columns.column_checks(column, (columns.ColumnDemand(both, dead + live),))
    *of_load, least = found["shared"].checks
    assert max(one.share for one in of_load) == pytest.approx(max(one.share for one in by_hand))
    # it stands free, so it is no thinner than a 4x4 (IRC R407.3): 3 1/2 in of its 4 1/2 in
    assert found["shared"].governs is least and least.share == pytest.approx(3.5 / 4.5)
    pad = footings.pad_checks(
        load=dead + live,
        side=36 * inch,
        base=4.5 * inch,
        soil=footings.find_soil("clay or silt"),
        thickness=15.75 * inch,
    )
    assert found["pad"].checks[0].share == pytest.approx(pad[0].share)


def test_joists_are_judged_with_the_wall_that_stands_on_them():
    # 12 ft, 2x10 at 16 in: (10 + 40) psf x 4/3 ft = 66.67 plf and own weight; 160 plf of wall x 4/3 ft = 213.3 lb at 6 ft
    joist = Joists(species="Hem-Fir", grade="No.2", size="2x10", spacing=16 * inch)
    path = follow(house(floor("west middle east", joist=joist), *three(0, 12, 24), wall("on it", 6, "floor", face=20)))
    checks = [one for one in judge(path, RULEBOOK)["floor"].checks if one.name == "bending"]
    own = path.element("floor").own[0].amount[0] / psf - 10
    moment = (50 + own) * 4 / 3 * 12**2 / 8 + 160 * 4 / 3 * 12 / 4
    section = 1.5 * 9.25**2 / 6
    assert max(one.asked for one in checks) == pytest.approx(moment * lb * ft / (section * inch**3))


def test_joists_too_far_apart_do_not_share():
    """2x10 Hem-Fir No.2: 850 psi x 1.1, and 15 % more only up to 24 in apart, cut or in one piece."""
    for spacing, times in ((24, 1.15), (24.1, 1.0)):
        joist = Joists(species="Hem-Fir", grade="No.2", size="2x10", spacing=spacing * inch)
        for joints, name in (("cut", "bending"), ("continuous", "bending, sagging")):
            path = follow(house(floor("west middle east", joist=joist, joists=joints), *three(0, 12, 24)))
            bent = next(one for one in judge(path, RULEBOOK)["floor"].checks if one.name == name)
            assert bent.given / psi == pytest.approx(850 * 1.1 * times)


@pytest.mark.parametrize("joints", ["cut", "continuous"])
def test_a_seat_of_joists_is_judged_where_it_is_written_and_nowhere_else(joints):
    """12 ft and 12 ft, 2x10 at 16 in: each cut joist presses its seat of 2 in with half of its load."""
    joist = Joists(species="Hem-Fir", grade="No.2", size="2x10", spacing=16 * inch)
    parts = three(0, 12, 24)
    silent = judge(follow(house(floor("west middle east", joist=joist, joists=joints), *parts)), RULEBOOK)["floor"]
    assert not {one.kind for one in silent.checks} & set(SEAT_KINDS) and len(silent.checks) > 2
    assert silent.refused == (
        "the seat of the joists of floor is not written, so no seat of theirs is judged; they span between the middles of "
        "what they sit on",
    )
    path = follow(house(floor("west middle east", joist=joist, joists=joints, seat=2 * inch), *parts))
    judged, own = judge(path, RULEBOOK)["floor"], path.element("floor").own[0].amount[0] / psf - 10
    first = next(one for one in judged.checks if one.kind == BEAM_FACE)
    # two equal spans in one piece: 3/8 of the dead load of one, and 7/16 of its live load with the other one empty
    dead = (10 + own) * 4 / 3 * 12 * (0.5 if joints == "cut" else 0.375)
    live = 40 * 4 / 3 * 12 * (0.5 if joints == "cut" else 0.4375)
    assert first.asked / psi == pytest.approx((dead + live) / (1.5 * 2)) and not judged.refused
    assert any(one.kind == LEAST_SEAT and one.given == 2 * inch for one in judged.checks)


def test_joists_on_the_side_of_a_beam_hang_there_and_none_lies_longer_than_its_wall():
    joist = Joists(species="Hem-Fir", grade="No.2", size="2x10", spacing=16 * inch)
    wood = Wood(species="Hem-Fir", grade="No.2", size="2x12", plies=3)
    beam = Beam(name="middle", on=("a", "b"), at=12 * ft, start=0.0, end=LONG * ft, wood=wood, position="flush")
    walls = [wall("west", 0), wall("east", 24), post("a", 12, 0), post("b", 12, LONG)]
    path = follow(house(floor("west middle east", joist=joist, seat=6 * inch), *walls, beam))
    seats = [one.given / inch for one in judge(path, RULEBOOK)["floor"].checks if one.kind == LEAST_SEAT]
    assert seats == pytest.approx([4.5, 4.5])  # the outer ends alone, as long as their walls are thick


def test_a_seat_carries_the_gates_of_its_own_place():
    """Masonry stands under both far ends of the demo's main beam; its posts in between are no masonry."""
    found = judge(follow(demo_house()), RULEBOOK)
    of = {name: [word for word in ("north", "south") if any(f"{word} foundation" in gate for gate in one.gates)]
          for name, one in found.items() if name.startswith("main beam")}  # fmt: skip
    assert of.pop("main beam") == ["north", "south"] and len(of) == 8
    assert of.pop("main beam, left seat of span 1") == ["north"]
    assert of.pop("main beam, right seat of span 4") == ["south"]
    assert set(map(len, of.values())) == {0}
    # a ply without a seat on one post is told at both seats on that post alone
    wood = dataclasses.replace(demo_house().part("north post").wood, size="2x4")
    found = judge(follow(demo_house(), {"north post": {"wood": wood}}), RULEBOOK)
    hangs = [name for name, one in found.items() if any("hangs past the post" in gate for gate in one.gates)]
    assert hangs == ["main beam", "main beam, right seat of span 1", "main beam, left seat of span 2"]


def test_a_post_right_over_a_seat_presses_that_seat():
    # 10 ft spans, no floor: 20,000 lb come down on the beam right over its middle post, half on each seat of 1 1/2 in
    path = follow(
        house(
            wall("west", 0),
            Beam(name="beam", on=("a", "b", "c"), at=12 * ft, start=0.0, end=LONG * ft, wood=FIR),
            *(post(name, 12, y) for name, y in (("a", 0), ("b", 10), ("c", 20))),
            post("top", 12, 10, "beam"),
            Load(name="above", on="top", x=12 * ft, y=10 * ft, dead=20_000 * lb),
        )
    )
    pressed = [one.asked for one in judge(path, RULEBOOK)["beam"].checks if one.name.startswith("bearing, right seat")]
    own = path.element("a").total()["dead"] / lb  # half a span of the beam
    assert max(pressed) == pytest.approx((10_000 + own) * lb / (4.5 * inch * 1.5 * inch))


def test_a_lifted_beam_is_gated_and_not_judged():
    house_ = house(
        floor("beam east", right_overhang=4 * ft),
        wall("east", 15, made_of="masonry"),
        wall("parapet", 19, "floor", face=100),
        Beam(name="beam", on=("a", "b"), at=12 * ft, start=0.0, end=LONG * ft, wood=FIR),
        post("a", 12, 0),
        post("b", 12, 20),
    )
    found = judge(follow(house_), RULEBOOK)
    assert not found["beam"].checks and any("lifts off a" in one for one in found["beam"].gates)
    assert any("pressed down" in one for one in found["beam"].refused)


def test_a_header_too_deep_for_its_wall_is_told():
    tall = plain()
    door = dataclasses.replace(tall.openings[0], beam=FIR, height=7.5 * ft)
    found = judge_element(follow(dataclasses.replace(tall, openings=(door,))), "door", RULEBOOK)
    assert any("8 ft 5 1/4 in high, and middle is 8 ft high: it does not fit" in one for one in found.refused)


def test_a_pad_knows_the_studs_of_an_opening_on_it():
    tall = plain(Pad(name="pad", x=12 * ft, y=4.875 * ft, side=36 * inch, soil="clay or silt"))
    door = dataclasses.replace(tall.openings[0], left_on="pad", posts=dataclasses.replace(FIR, size="2x4"))
    path = follow(dataclasses.replace(tall, openings=(door,)))
    assert judge(path, RULEBOOK)["pad"].members[0].base == pytest.approx(3.5 * inch)
    door = dataclasses.replace(door, posts=None)
    path = follow(dataclasses.replace(tall, openings=(door,)))
    assert "not a post of known size" in judge(path, RULEBOOK)["pad"].refused[0]


@pytest.mark.parametrize(
    "changes, sentence",
    [
        (
            dict(posts=Wood(species="Hem-Fir", grade="No.2", size="2x4", plies=6)),
            "cannot be judged: plies must be between 1 and 5",
        ),
        (dict(left_seat=9 * inch), "the seat of door is written as 9 in, and door, left post has 4 1/2 in"),
    ],
)
def test_one_part_that_cannot_be_judged_leaves_the_others(changes, sentence):
    tall = plain()
    studs = dataclasses.replace(FIR, size="2x4")
    door = dataclasses.replace(tall.openings[0], **{"beam": FIR, "posts": studs, "right_seat": 4.5 * inch, **changes})
    found = judge(follow(dataclasses.replace(tall, openings=(door,))), RULEBOOK)
    assert any(sentence in one for part in found.values() for one in part.refused)
    assert found["door"].checks and found["door"].members[0].left.length <= 4.5 * inch


def test_a_seat_longer_than_its_post_is_cut_to_it():
    # 4 1/2 in of studs, 3 1/2 in deep: the seat's 12 in would tell a third of the pressure
    short = row_house(wood=FIR, seat=12 * inch)
    short = dataclasses.replace(
        short, posts=tuple(dataclasses.replace(one, wood=dataclasses.replace(FIR, size="2x4")) for one in short.posts)
    )
    member = judge(follow(short), RULEBOOK)["north beam"].members[0]
    assert member.right.length == pytest.approx(4.5 * inch)


def test_seats_that_leave_no_span_are_told():
    short = house(
        floor("west beam east"),
        wall("west", 0),
        wall("east", 24),
        post("a", 12, 0),
        post("b", 12, 1),
        post("c", 12, 20),
        Beam(name="beam", on=("a", "b", "c"), at=12 * ft, start=0.0, end=LONG * ft, wood=FIR, seat=24 * inch),
    )
    found = judge(follow(short), RULEBOOK)["beam"]
    assert "the seats of beam leave no clear span between 0 in and 1 ft along it" in found.refused and found.checks


def test_a_point_where_two_walls_meet_goes_down():
    path = follow(
        house(
            floor("west upper east"),
            wall("west", 0),
            wall("east", 24),
            wall("upper", 12, ("l1", "l2"), made_of="masonry"),
            wall("l1", 12, end=10 * ft, made_of="masonry"),
            wall("l2", 12, start=10 * ft, made_of="masonry"),
            post("p", 12, 10, "upper"),
            Load(name="above", on="p", x=12 * ft, y=10 * ft, dead=900 * lb),
        )
    )
    assert force(path, "l1", "dead") + force(path, "l2", "dead") == pytest.approx(120 * 20 + 900)


def test_an_ordinary_floor_in_one_piece_is_no_gate():
    assert not judge(follow(house(floor("west middle east", joists="continuous"), *three(0, 12, 26))), RULEBOOK)[
        "floor"
    ].gates


def test_a_header_under_a_ridge_post_is_judged_with_both():
    # 5.75 ft, king 2 at 3.125 ft: D + 0.75 L + 0.75 S asks most, 8/15 of 2,906.9 lb dead and of 7,800 lb snow in one place
    above = ridge_house()
    door = dataclasses.replace(above.openings[0], beam=FIR)
    path = follow(dataclasses.replace(above, openings=(door,)))
    own = path.element("door").own[0].amount[0] / plf
    push, even = (130 * 1.25**0.5 * 20 + 0.75 * 7800) * 8 / 15, 130 + own + 0.75 * 520
    moment = push * 3.125 * 2.625 / 5.75 + even * 3.125 * 2.625 / 2  # under the post, where the shear changes its sign
    bending = next(one for one in judge(path, RULEBOOK)["door"].checks if one.name == "bending")
    assert bending.combination == "D + 0.75 L + 0.75 S"
    assert bending.asked == pytest.approx(moment * lb * ft / (3 * 1.5 * 11.25**2 / 6 * inch**3))


# ---- beams of steel, and of wood with a plate ----


def steel_house(**of_steel):
    """Two bays of 10 ft under 13 ft of floor on a W10x22: I 118 in4, Z 26.0 in3, 50 ksi."""
    steel = SteelBeam(shape="W10x22", **{"braced": 0.0, **of_steel})
    return house(
        floor("west beam east"),
        wall("west", 0),
        wall("east", 26),
        *(post(name, 13, y) for name, y in zip("abc", (0, 10, 20))),
        Beam(name="beam", on=("a", "b", "c"), at=13 * ft, start=0.0, end=LONG * ft, steel=steel),
    )


def test_a_steel_beam_comes_down_with_its_own_weight_and_is_judged_as_steel():
    path = follow(steel_house())
    assert force(path, "b", "dead") == pytest.approx((130 + 22) * 10) and force(path, "b", "live") == pytest.approx(
        520 * 10
    )
    found = judge_element(path, "beam", RULEBOOK)
    checks = {one.kind: one for one in found.answers[0].checks}
    # 672 plf over 10 ft: 8.4 kip-ft of 26.0 x 50 / 1.67 / 12; 5 w L4 / 384 E I of the live load, of 10 ft / 360
    assert checks["bending"].share == pytest.approx(672 * 100 / 8 / (26.0 * 50_000 / 1.67 / 12), rel=1e-6)
    assert next(one for one in found.answers[0].checks if "live" in one.name).share == pytest.approx(
        5 * (520 / 12) * 120**4 / (384 * 29e6 * 118) / (120 / 360), rel=1e-6
    )
    assert [note for note in found.refused if "the web of beam" in note]
    bare = judge_element(follow(steel_house(braced=10 * ft)), "beam", RULEBOOK)
    assert next(one for one in bare.checks if one.kind == "bending").share > 1.2 * checks["bending"].share


def flitch_house(*more, **of_flitch):
    """A door of 12 ft in the middle wall under 13 ft of floor; two 2x10 of E 1.6e6 psi and a plate of 1/2 x 9 in."""
    made = dict(
        species="Douglas Fir-Larch", grade="No.2", size="2x10", thickness=0.5 * inch, depth=9 * inch, bolts=0.5 * inch
    )
    flitch = FlitchBeam(**{**made, **of_flitch})
    door = opening("door", "middle", 2, 12, flitch=flitch)
    return house(floor("west middle east"), *three(0, 13, 26), door, *more)


def test_a_flitch_over_a_door_shares_its_load_by_stiffness():
    path = follow(flitch_house())
    own = 2 * 1.5 * 9.25 / 144 * piece_of(FIR).material.weight_density / (lb / ft**3) + 0.5 * 9 / 144 * 490
    assert force(path, "door, left post", "dead") == pytest.approx((130 + own) * 12.25 / 2)
    found = judge_element(path, "door", RULEBOOK)
    # a 9/16 in hole 2 5/16 in from the edge takes 7.9 % off the wood
    whole = 1.6e6 * 3 * 9.25**3 / 12 + 29e6 * 0.5 * 9**3 / 12
    wood = 1.6e6 * 4.625 * (650 + own) * 12.25**2 / 8 * 12 / whole / 0.921
    [bent] = [one for one in found.checks if one.kind == "bending" and "wood" in one.name]
    assert bent.asked / psi == pytest.approx(wood, rel=2e-3)
    sag = 5 * ((650 + own) / 12) * 147**4 / (384 * whole)
    assert next(
        one for one in found.checks if one.kind == "sag" and "all load" in one.name
    ).asked / inch == pytest.approx(sag)
    end = [one for one in found.checks if one.kind == "shear" and "bolts" in one.name]
    assert end[0].asked / lb == pytest.approx((650 + own) * 12.25 / 2) and end[0].share > 1 and not found.refused
    on_steel = judge_element(follow(flitch_house(plate_bears=True)), "door", RULEBOOK)
    assert not [one for one in on_steel.checks if one.name == end[0].name]
    # nothing leaves a plate on a seat of its own through bolts, and a distance that is kept uses nothing up
    assert not [one for one in on_steel.checks if one.kind == "bolts" and one.dimension == "force"]
    assert on_steel.governs == next(one for one in on_steel.checks if one.kind == "bending" and "wood" in one.name)


def test_a_flitch_has_no_verdict_on_bolts_under_a_post_nor_any_from_the_side():
    posted = flitch_house(
        post("above", 13, 8, "door"), Load(name="chimney", on="above", x=13 * ft, y=8 * ft, dead=500 * lb)
    )
    found = judge_element(follow(posted), "door", RULEBOOK)
    assert [one for one in found.refused if "group of bolts of its own" in one]
    assert not [one for one in found.checks if one.kind == "shear" and one.decides]
    flush = flitch_house()
    flush = dataclasses.replace(flush, openings=(dataclasses.replace(flush.openings[0], position="flush"),))
    assert [gate for gate in judge_element(follow(flush), "door", RULEBOOK).gates if "loaded from one side" in gate]


def test_one_beam_is_of_one_thing_and_old_words_of_a_flitch_are_refused_in_a_sentence():
    both = flitch_house()
    both = dataclasses.replace(both, openings=(dataclasses.replace(both.openings[0], beam=FIR),))
    with pytest.raises(BadInput, match="door is written as beam and as flitch; leave one of them"):
        follow(both)
    for changes, why in (({"plies": 3}, "half on each side"), ({"depth": 10 * inch}, "not deeper than the wood")):
        with pytest.raises(BadInput, match=why):
            follow(flitch_house(**changes))


def test_a_beam_across_a_steel_beam_has_its_flange_for_a_seat():
    """A W10x22 is 5 3/4 in wide; 1,000 lb in the middle of 13 ft come down half and half."""
    steel = steel_house()
    cross = Beam(
        name="cross", on=("prop", "beam"), at=5 * ft, start=0.0, end=13 * ft, runs="across", wood=FIR, seat=6 * inch
    )
    load = Load(name="stove", on="cross", x=6.5 * ft, y=5 * ft, dead=1000 * lb)
    path = follow(
        dataclasses.replace(steel, beams=(*steel.beams, cross), loads=(load,), posts=(*steel.posts, post("prop", 0, 5)))
    )
    found = judge_element(path, "cross", RULEBOOK)
    assert found.members[0].right.below == "steel" and found.members[0].right.length / inch == pytest.approx(5.75)
    own = piece_of(FIR).weight / plf
    assert max(one.solution.reactions[1].force for one in found.answers[0].demands) / lb == pytest.approx(
        500 + own * 6.5
    )


@pytest.mark.parametrize("made, name, kind", [(steel_house, "beam", "steel beam"), (flitch_house, "door", "flitch")])
def test_another_rulebook_keeps_what_is_asked_of_a_beam_with_steel_and_judges_nothing(made, name, kind):
    found = judge_element(follow(made()), name, DUMMY)
    assert not found.checks and [one for one in found.refused if f"no rule for a {kind} here" in one]
    own, span = (22, 10) if kind == "steel beam" else (piece_of(made().openings[0].flitch).weight / plf, 12.25)
    strong = found.answers[0].demands[0].solution
    # its strength combination counts 1.25 of 130 plf and its own weight, and 1.5 of 520 plf
    assert strong.reactions[0].force / lb == pytest.approx((1.25 * (130 + own) + 1.5 * 520) * span / 2)
