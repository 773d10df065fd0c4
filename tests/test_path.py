"""The way of the load: known houses by hand, faults named where they are, and no field without an effect."""

import dataclasses

import pytest

from structlib.ground.refusals import BadInput
from structlib.ground.units import ft, inch, lb, plf, psf
from structlib.house.file import demo_house, house_from_text, read_house, write_house
from structlib.house.judging import judge
from structlib.house.path import follow
from structlib.house.plan import (
    Beam,
    Board,
    FlitchBeam,
    House,
    Joists,
    Level,
    Load,
    Opening,
    Pad,
    Plate,
    Post,
    SteelBeam,
    Tie,
    Wall,
    Wood,
    with_changes,
)
from structlib.rules.choice import RULEBOOK


def small_house(**changes):
    """A floor on three walls, 12 ft and 14 ft apart, 20 ft long; 10 psf dead by hand, 40 psf live."""
    walls = [
        Wall(name=name, on=("soil",), at=at * ft, start=0.0, end=20 * ft, height=8 * ft, weight=0.0)
        for name, at in (("west", 0), ("middle", 12), ("east", 26))
    ]
    from structlib.house.plan import Layer

    floor = Level(
        name="floor",
        kind="floor",
        on=("west", "middle", "east"),
        start=0.0,
        end=20 * ft,
        layers=(Layer(name="all of it", weight=10 * psf),),
        live=40 * psf,
    )
    return dataclasses.replace(House(name="small", levels=(floor,), walls=tuple(walls)), **changes)


def test_half_of_each_span_comes_down_on_the_wall_between():
    path = follow(small_house())
    assert path.line_on("middle", 5 * ft)["live"] / plf == pytest.approx(40 * (6 + 7))
    assert path.line_on("west", 5 * ft)["dead"] / plf == pytest.approx(10 * 6)


def test_continuous_joists_bring_more_than_half():
    house = small_house()
    house = with_changes(house, {"middle": {"at": 13 * ft}, "floor": {"joists": "continuous"}})
    # two equal spans in one piece: 1.25 w L in the middle, 0.375 w L at each end (beam formulas of any handbook)
    path = follow(house)
    assert path.line_on("middle", ft)["live"] / plf == pytest.approx(1.25 * 40 * 13)
    assert path.line_on("east", ft)["live"] / plf == pytest.approx(0.375 * 40 * 13)


def test_every_level_keeps_its_own_spans():
    house = small_house()
    attic = Level(
        name="attic", kind="floor", on=("attic wall west", "attic wall"), start=0.0, end=20 * ft, live=20 * psf
    )
    more = (
        Wall(name="attic wall west", on=("soil",), at=4 * ft, start=0.0, end=20 * ft, height=0.0, weight=0.0),
        Wall(name="attic wall", on=("middle",), at=12 * ft, start=0.0, end=20 * ft, height=8 * ft, weight=8 * psf),
    )
    path = follow(dataclasses.replace(house, levels=(attic, *house.levels), walls=house.walls + more))
    assert path.line_on("middle", ft)["live"] / plf == pytest.approx(20 * 4 + 40 * 13)
    assert path.line_on("middle", ft)["dead"] / plf == pytest.approx(64 + 10 * 13)


def test_an_overhang_lifts_the_far_end():
    house = small_house(
        beams=(Beam(name="beam", on=("a", "b"), at=12 * ft, start=0.0, end=20 * ft),),
        posts=(
            Post(name="a", on="pad a", x=12 * ft, y=0.0, height=8 * ft),
            Post(name="b", on="pad b", x=12 * ft, y=15 * ft, height=8 * ft),
        ),
        pads=(
            Pad(name="pad a", x=12 * ft, y=0.0, side=30 * inch),
            Pad(name="pad b", x=12 * ft, y=15 * ft, side=30 * inch),
        ),
        loads=(Load(name="tip", on="beam", x=12 * ft, y=20 * ft, dead=3000 * lb),),
    )
    path = follow(house)
    assert path.element("pad a").total()["dead"] / lb == pytest.approx(-1000.0)
    assert path.element("pad b").total()["dead"] / lb == pytest.approx(4000.0)


def test_a_ridge_off_the_middle_shares_by_statics():
    roof = Level(name="roof", kind="roof", on=("west", "east"), start=0.0, end=20 * ft, snow=30 * psf, roof_live=0.0)
    path = follow(small_house(levels=(roof,)))
    assert path.line_on("west", ft)["snow"] / plf == pytest.approx(30 * 13)
    beam = dataclasses.replace(roof, on=("west", "middle", "east"), ridge="beam")
    path = follow(small_house(levels=(beam,)))
    assert path.line_on("middle", ft)["snow"] / plf == pytest.approx(30 * 13)
    assert path.line_on("west", ft)["snow"] / plf == pytest.approx(30 * 6)


def roof_house(on=("west", "east"), **changes):
    """Rafters 6 in 12 over 24 ft, every 16 in without a weight of their own in it, 30 psf of snow, nothing dead."""
    roof = Level(
        name="roof", kind="roof", on=on, start=0.0, end=20 * ft, snow=30 * psf, roof_live=0.0, slope=(6.0, 12.0)
    )
    walls = tuple(
        Wall(name=name, on=("soil",), at=at * ft, start=0.0, end=20 * ft, height=8 * ft, weight=0.0)
        for name, at in (("west", 0), ("middle", 12), ("east", 24))
    )
    return House(name="roof", levels=(dataclasses.replace(roof, **changes),), walls=walls)


TIED = Tie(species="Hem-Fir", grade="No.2", size="2x6", height=0.25)
#: snow 30 psf: half the load comes down at each eave; turned about the ridge, in feet and pounds a foot
THRUSTS = {
    "even": ({}, (360 * 12 - 30 * 12 * 6) / 6),
    "one side": ({"right_snow": 0.0}, (270 * 12 - 30 * 12 * 6) / 6),
    "ridge at a third": ({"ridge_at": 8 * ft}, (360 * 8 - 30 * 8 * 4) / 4),
    "ridge at a third, seen from the other eave": ({"ridge_at": 8 * ft}, (360 * 16 - 30 * 16 * 8) / 4),
    "overhangs of 2 ft": ({"left_overhang": 2 * ft, "right_overhang": 2 * ft}, (420 * 12 - 30 * 14 * 7) / 6),
    "tie a quarter up": ({"tie": TIED}, (360 * 12 - 30 * 12 * 6) / 6),
    "a ridge beam": ({"on": ("west", "middle", "east"), "ridge": "beam"}, 0.0),
    "flat": ({"slope": (0.0, 12.0)}, 0.0),
    "one slope": ({"on": ("west", "middle"), "ridge": "beam"}, 0.0),
}  # fmt: skip


@pytest.mark.parametrize("case", THRUSTS)
def test_the_thrust_of_a_roof_by_hand(case):
    changes, push = THRUSTS[case]
    found = follow(roof_house(**changes)).thrust("roof")
    assert found.line["snow"] / plf == pytest.approx(push) and found.line["dead"] == 0.0
    # a tie a quarter up has three quarters of the lever; without a spacing nobody knows what a pair is
    assert found.pull["snow"] / plf == pytest.approx(push / 0.75 if case == "tie a quarter up" else 0.0)
    assert found.per_pair is None and found.per_tie is None


def test_the_thrust_of_one_pair_and_of_one_tie():
    wood = dict(species="Hem-Fir", grade="No.2", size="2x8")
    roof = {"joist": Joists(**wood, spacing=16 * inch), "tie": dataclasses.replace(TIED, spacing=32 * inch)}
    found = follow(roof_house(**roof)).thrust("roof", 5 * ft)
    assert found.per_pair["snow"] / lb == pytest.approx(360 * 16 / 12)
    assert found.per_tie["snow"] / lb == pytest.approx(360 / 0.75 * 32 / 12)
    # the demo: 20 psf over 24 ft at 8 in 12; its attic joists, every 16 in, are the ties
    demo = follow(demo_house()).thrust("roof")
    assert (demo.held_by, demo.height) == ("joists", 0.0)
    assert demo.per_tie["roof live"] / lb == pytest.approx(20 * 24**2 / (8 * 8) * 16 / 12)
    with pytest.raises(BadInput, match="only a roof pushes"):
        follow(demo_house()).thrust("upper floor")
    with pytest.raises(BadInput, match="reaches from 0 in to 28 ft along the house, got 29 ft"):
        follow(demo_house()).thrust("roof", 29 * ft)


def test_a_heavy_thing_across_the_rafters_pushes_where_it_stands():
    house = dataclasses.replace(
        roof_house(), loads=(Load(name="panels", on="roof", x=6 * ft, y=5 * ft, dead=1000 * lb, length=10 * ft),)
    )
    path = follow(house)
    # 100 plf at 6 ft of 24: 25 plf at the far eave, turned about the ridge over 12 ft and 6 ft of rise
    assert [path.thrust("roof", at * ft).line["dead"] / plf for at in (3, 10, 17)] == pytest.approx([0.0, 50.0, 0.0])
    assert path.thrust("roof").line["dead"] / plf == pytest.approx(50.0)


@pytest.mark.parametrize("changes, sentence", [
    ({"tied_by": "loft"}, "no floor or ceiling is called that"),
    ({"tie": TIED, "tied_by": "loft"}, "leave tie out"),
    ({"tie": TIED, "ridge": "beam"}, "held by its ridge beam; leave tie out"),
    ({"slope": (0.0, 12.0), "tie": TIED}, "does not push"),
    ({"slope": (0.0, 12.0), "right_snow": 0.0}, "leave right_snow out"),
])  # fmt: skip
def test_what_cannot_tie_a_roof_is_named(changes, sentence):
    with pytest.raises(BadInput, match=sentence):
        follow(roof_house(**changes))


def test_joists_tie_the_rafters_only_from_wall_to_wall_and_all_along():
    for changes, sentence in (
        ({"roof": {"tied_by": "upper floor"}}, "whose joists do not lie on"),
        ({"attic floor": {"start": 5 * ft}}, "which reaches from 5 ft to 28 ft along the house"),
    ):
        with pytest.raises(BadInput, match=sentence):
            follow(demo_house(), changes)


def test_nothing_written_that_holds_the_rafters_is_a_gate_and_the_push_stands():
    house = with_changes(demo_house(), {"roof": {"tied_by": ""}})
    assert [gate for gate in judge(follow(house), RULEBOOK)["roof"].gates if "holds the rafters" in gate]
    assert follow(house).thrust("roof").line == follow(demo_house()).thrust("roof").line
    assert not judge(follow(demo_house()), RULEBOOK)["roof"].gates


def test_the_demo_house_comes_down_by_hand():
    # attic 12 ft wide: 20 psf; upper floor 12 ft: 30 psf; ground floor 12 ft: 40 psf of live load
    path = follow(demo_house())
    assert path.line_on("middle wall", 3 * ft)["live"] / plf == pytest.approx(12 * (20 + 30))
    assert path.line_on("main beam", 3 * ft)["live"] / plf == pytest.approx(12 * (20 + 30 + 40))
    # the opening's beam from seat middle to seat middle: 8 ft 4 1/2 in
    assert path.element("kitchen opening, left post").total()["live"] / lb == pytest.approx(600 * 8.375 / 2)
    # its left post stands over the cellar's middle post, which so gets all of that and 7 ft less the gap of main beam
    assert path.element("middle pad").total()["live"] / lb > 1080 * 7


HOUSE = small_house()
FAULTS = {
    "a loop": (dict(walls=tuple(dataclasses.replace(w, on=("west",)) if w.name == "middle" else
                                dataclasses.replace(w, on=("middle",)) if w.name == "west" else w for w in HOUSE.walls)),
               "rests on itself"),
    "on nothing": (dict(walls=tuple(dataclasses.replace(w, end=10 * ft) if w.name == "middle" else w for w in HOUSE.walls)),
                   "floor has nothing under it at 12 ft across the house, from 10 ft to 20 ft along it"),
    "on a name that is not there": (dict(levels=(dataclasses.replace(HOUSE.levels[0], on=("west", "nowhere")),)), "'nowhere'"),
    "a post that stops at a floor": (dict(posts=(Post(name="p", on="floor", x=3 * ft, y=3 * ft, height=8 * ft),)),
                                     "p stops at floor"),
    "a load on studs": (dict(loads=(Load(name="tub", on="middle", x=12 * ft, y=3 * ft, live=500 * lb),)),
                        "tub comes down on middle at 3 ft along it, where no post takes it on"),
    "a load beside its beam": (dict(loads=(Load(name="tub", on="middle", x=13 * ft, y=3 * ft, live=500 * lb),)),
                               "does not stand over it"),
    "one name twice": (dict(walls=(*HOUSE.walls, HOUSE.walls[0])), "used twice"),
    "no live load written": (dict(levels=(dataclasses.replace(HOUSE.levels[0], live=None),)), 'live = "0 psf"'),
    "an opening past its wall": (dict(openings=(Opening(name="door", wall="middle", start=15 * ft, clear_width=8 * ft,
                                                        height=6 * ft, wall_above=0.0, left_seat=3 * inch,
                                                        right_seat=3 * inch),)), "there is room"),
}  # fmt: skip


@pytest.mark.parametrize("fault", FAULTS)
def test_a_load_without_a_way_down_is_named_where_it_is(fault):
    changes, sentence = FAULTS[fault]
    with pytest.raises(BadInput, match=".") as refused:
        follow(dataclasses.replace(HOUSE, **changes))
    assert sentence in str(refused.value) and "\n" not in str(refused.value)


def test_a_file_names_the_line_of_its_fault():
    text = (
        'version = 2\nname = "x"\n\n[[levels]]\nname = "floor"\nkind = "floor"\non = ["a", "b"]\nstart = "0 ft"\n'
        'end = "20 ft"\nlive = "40"\n'
    )
    with pytest.raises(BadInput, match="^line 10 of the text: live of level 'floor'"):
        house_from_text(text)


def test_files_of_version_1_still_open_with_the_same_loads(request):
    # by hand: attic 12 ft wide at 13.31 psf, upper floor 12 ft at 17.11 psf, wall 64 plf (joists about 1.65 and 2.11 psf)
    house = read_house(request.path.parent / "houses" / "version_1.toml")
    found = follow(house).line_on("the wall", 8 * ft)
    assert found["live"] / plf == pytest.approx(600)
    assert found["dead"] / plf == pytest.approx(12 * (11.3 + 1.65) + 64 + 12 * (15 + 2.11), abs=0.5)


def test_a_house_comes_back_from_its_file_as_it_was(tmp_path):
    house = with_changes(demo_house(), {"main beam": {"end": 28 * ft, "seat": 3.123456789 * inch}})
    assert read_house(write_house(house, tmp_path / "mine.toml")) == house
    assert read_house(write_house(rich_house(), tmp_path / "rich.toml")) == rich_house()
    with pytest.raises(BadInput, match="left as it is"):
        write_house(house, tmp_path / "mine.toml")


# ---- no field without an effect ----

#: fields that are words for the reader alone
WORDS_ALONE = {("House", "note"), ("House", "invented"), ("Layer", "name"), ("House", "name")}


def rich_house():
    """The demo house with everything in it that a file can say."""
    beam = Wood(species="Douglas Fir-Larch", grade="No.2", size="2x12", plies=3)
    house = with_changes(
        demo_house(),
        {
            "roof": {
                "left_overhang": 1 * ft,
                "right_overhang": 1 * ft,
                "snow": 20 * psf,
                "ridge_at": 12 * ft,
                "ground_snow": 25 * psf,
                "tie_nails": 9,
                "ridge_board": Board(thickness=0.75 * inch, depth=9.25 * inch),
                "joist": Joists(species="Hem-Fir", grade="No.2", size="2x8", spacing=16 * inch),
            },
            "kitchen opening": {
                "beam": beam,
                "position": "flush",
                "wall_above": 3 * inch,
                "greatest_depth": 11 * inch,
                "greatest_width": 4 * inch,
            },
            "main beam": {"greatest_depth": 11 * inch, "greatest_width": 5 * inch, "position": "flush"},
            "north pad": {"soil": "clay or silt"},
            "middle wall": {"thickness": 4.7 * inch},
            "upper floor": {"seat": 3 * inch},
            "north post": {"plate": Plate(species="Hem-Fir", grade="No.2")},
        },
    )
    flitch = FlitchBeam(
        species="Hem-Fir", grade="No.2", size="2x10", thickness=0.5 * inch, depth=9 * inch, bolts=0.5 * inch
    )
    steel = SteelBeam(shape="W8x18", braced=12 * ft)
    more = [
        Beam(
            name=name,
            on=("south post", "middle post"),
            at=house.part("main beam").at,
            start=house.part("middle post").y,
            end=house.part("south post").y,
            **{name: made_of},
        )
        for name, made_of in (("flitch", flitch), ("steel", steel))
    ]
    tub = Load(
        name="tub", on="main beam", x=11 * ft, y=3 * ft, dead=400 * lb, live=300 * lb, roof_live=10 * lb, snow=10 * lb
    )
    porch = Level(
        name="porch roof",
        kind="roof",
        on=("west foundation", "east foundation"),
        start=0.0,
        end=28 * ft,
        slope=(3.0, 12.0),
        snow=25 * psf,
        right_snow=10 * psf,
        roof_live=20 * psf,
        joist=Joists(species="Hem-Fir", grade="No.2", size="2x10", spacing=16 * inch),
        tie=Tie(species="Hem-Fir", grade="No.2", size="2x6", height=0.2, spacing=16 * inch),
    )
    return dataclasses.replace(house, beams=(*house.beams, *more), loads=(tub,), levels=(*house.levels, porch))


def told(house):
    """Everything that is worked out about a house, as text; or the sentence that refuses it."""
    try:
        path = follow(house)
        pushes = [path.thrust(one.name) for one in house.levels if one.kind == "roof"]
        return (
            repr(pushes)
            + repr([(one.name, one.gives) for one in path.elements])
            + repr([(name, one.checks, one.gates, one.refused) for name, one in judge(path, RULEBOOK).items()])
        )
    except BadInput as error:
        return str(error)


OTHER = {
    "size": ("2x6", "2x8"),
    "species": ("Hem-Fir", "Douglas Fir-Larch"),
    "grade": ("No.1", "No.2"),
    "soil": ("gravel or sandy gravel",),
    "shape": ("W8x24",),
    "on": ("soil",),
    "wall": ("east lower wall",),
    "left_on": ("north post",),
    "right_on": ("south post",),
    "name": ("another name",),
    "tied_by": ("upper floor",),
}


def another(one, value):
    """Another value of a field."""
    about = one.metadata
    if about["kind"] == "choice":
        return next(word for word in reversed(about["choices"]) if word != value)
    if about["kind"] == "yes or no":
        return not value
    if about["kind"] in ("length", "section length", "area load", "force", "weight", "ratio"):
        return 0.93 * value if value else 0.01 * about["high"]
    if about["kind"] == "count":
        return value + 1
    if about["kind"] == "slope":
        return (value[0] + 1.0, value[1])
    if about["kind"] == "names":
        return value[:-1]
    words = OTHER.get(one.name, ())
    return next((word for word in words if word != value), None)


def every_field(record, rebuilt):
    """Each field of a record and of the records in it, with what makes the house anew around another value of it."""
    for one in dataclasses.fields(record):
        value, about = getattr(record, one.name), one.metadata
        again = lambda new, name=one.name: rebuilt(dataclasses.replace(record, **{name: new}))  # noqa: E731
        if about["kind"] == "record" and value is not None:
            yield from every_field(value, again)
        elif about["kind"] == "records":
            for _number, part in enumerate(value[:1]):
                put = lambda new, again=again, value=value: again((new, *value[1:]))  # noqa: E731
                yield from every_field(part, put)
        elif (type(record).__name__, one.name) not in WORDS_ALONE and not (value is None and about["kind"] != "length"):
            new = another(one, value)
            yield (
                f"{type(record).__name__}.{one.name}",
                None if new is None else (lambda again=again, new=new: again(new)),
            )


def fields_of_every_kind():
    house = rich_house()
    first = {}
    for part in house.parts():
        first.setdefault((type(part).__name__, part.name), part)
    wanted = (
        "flitch",
        "steel",
        "roof",
        "porch roof",
        "upper floor",
        "middle wall",
        "kitchen opening",
        "main beam",
        "north post",
        "north pad",
        "tub",
    )
    for (_kind, name), part in first.items():
        if name in wanted:

            def rebuilt(new, part=part):
                lists = {
                    one.name: getattr(house, one.name)
                    for one in dataclasses.fields(house)
                    if one.metadata["kind"] == "records"
                }
                return dataclasses.replace(
                    house, **{key: tuple(new if row is part else row for row in rows) for key, rows in lists.items()}
                )

            for field, change in every_field(part, rebuilt):
                if name not in ("flitch", "steel") or not field.startswith(
                    "Beam."
                ):  # those of a beam are tried on the main beam
                    yield f"{name}: {field}", change


FIELDS = dict(fields_of_every_kind())


def test_no_field_of_the_file_is_without_an_effect():
    plain, silent = told(rich_house()), []
    for name, change in FIELDS.items():
        assert change is not None, f"no other value is given for {name}"
        if told(change()) == plain:
            silent.append(name)
    # a ridge belongs to a roof alone
    assert silent == ["upper floor: Level.ridge"]


def test_a_ply_that_hangs_past_a_post_is_a_gate_and_presses_on_the_rest_alone():
    """The demo's main beam is 6 in wide with seats of 5 1/2 in; three 2x6 give it 5 1/2 in, three 2x4 3 1/2 in."""
    wood = demo_house().part("north post").wood
    before, after = (
        judge(follow(demo_house(), {"north post": {"wood": dataclasses.replace(wood, size=size)}}), RULEBOOK)[
            "main beam"
        ]
        for size in ("2x6", "2x4")
    )
    assert [gate for gate in after.gates if "hangs past the post" in gate and "north post" in gate]
    pressed = [
        next(check for check in one.checks if check.name == "bearing, right seat, beam") for one in (before, after)
    ]
    # three 2x4 are 4 1/2 in by 3 1/2 in, and no seat is longer than what it is on
    assert pressed[1].asked / pressed[0].asked == pytest.approx(5.5 * 5.5 / (4.5 * 3.5))
