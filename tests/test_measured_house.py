"""Old joists as measured in a house file: every field has an effect, what contradicts itself is refused, hand arithmetic."""

import dataclasses

import pytest

from structlib.ground.refusals import BadInput
from structlib.ground.units import ft, inch, plf, psf, psi
from structlib.house.file import read_house, write_house
from structlib.house.judging import judge
from structlib.house.measured import Cut, MeasuredJoists
from structlib.house.old_floor import one_floor
from structlib.house.path import follow
from structlib.house.plan import Wall
from structlib.rules.choice import RULEBOOK

NOTCH = Cut(what="notch in the bottom", place=1 * inch, size=1.5 * inch, length=6 * inch)
SAWN = MeasuredJoists(width=2 * inch, depth=7.5 * inch, spacing=16 * inch, weight=0.0, cut=NOTCH)
HOLE = dataclasses.replace(SAWN, cut=Cut(what="hole", place=5 * ft, size=2 * inch, below=2 * inch))
ROUND = MeasuredJoists(width=8 * inch, depth=8 * inch, spacing=16 * inch, weight=0.0, shape="round", taper=1 * inch)
HEWN = MeasuredJoists(width=6 * inch, depth=8 * inch, spacing=16 * inch, weight=0.0, shape="hewn", wane=1 * inch)
ANOTHER = {
    "species": "Hem-Fir",
    "grade": "No.2",
    "shape": "flat sides",
    "what": "notch in the top",
    "made": "engineered",
    "state": "rot",
    "weight": 2 * psf,
}


def house(joists, **more):
    return dataclasses.replace(one_floor(joists, span=13 * ft, dead=10 * psf, live=30 * psf), **more)


def told(joists):
    """All that is said of a floor, or the sentence that refuses it."""
    try:
        floor = judge(follow(house(joists)), RULEBOOK)["floor"]
    except BadInput as error:
        return str(error)
    return repr([(one.member, one.demands, one.checks, one.refused) for one in floor.answers]) + repr(floor.gates)


def other(one, value):
    if one.name in ANOTHER:
        return ANOTHER[one.name]
    return value + 1 if one.metadata["kind"] == "count" else 0.9 * value


@pytest.mark.parametrize("joists, wanted", [
    (SAWN, ("width", "depth", "spacing", "weight", "plies", "shape", "species", "grade", "made", "state")),
    (ROUND, ("depth", "spacing", "taper", "plies")),
    (HEWN, ("width", "depth", "wane")),
])  # fmt: skip
def test_every_field_of_measured_joists_has_an_effect(joists, wanted):
    fields = {one.name: one for one in dataclasses.fields(joists)}
    assert set(fields) == {
        "width",
        "depth",
        "spacing",
        "weight",
        "plies",
        "shape",
        "wane",
        "taper",
        "species",
        "grade",
        "made",
        "state",
        "cut",
    }
    for name in wanted:
        assert told(dataclasses.replace(joists, **{name: other(fields[name], getattr(joists, name))})) != told(
            joists
        ), name


@pytest.mark.parametrize(
    "joists, wanted", [(SAWN, ("what", "place", "size", "length")), (HOLE, ("place", "size", "below"))]
)
def test_every_field_of_a_cut_has_an_effect(joists, wanted):
    fields = {one.name: one for one in dataclasses.fields(joists.cut)}
    assert set(fields) == {"what", "place", "size", "length", "below"}
    for name in wanted:
        value = 8 * inch if name == "place" else other(fields[name], getattr(joists.cut, name))
        assert told(dataclasses.replace(joists, cut=dataclasses.replace(joists.cut, **{name: value}))) != told(
            joists
        ), name


def test_a_house_with_old_joists_comes_back_from_its_file(tmp_path):
    for joists in (SAWN, HOLE, ROUND, HEWN):
        once = house(joists, name=joists.shape)
        path = write_house(once, tmp_path / f"{joists.shape} {joists.cut and joists.cut.what}.toml")
        assert read_house(path) == once


@pytest.mark.parametrize("changes, said", [
    (dict(taper=1 * inch), "taper belongs"),
    (dict(wane=1 * inch), "wane belongs"),
    (dict(cut=dataclasses.replace(NOTCH, length=None)), "a notch has a length"),
    (dict(cut=dataclasses.replace(HOLE.cut, length=2 * inch)), "a hole has none"),
    (dict(cut=dataclasses.replace(NOTCH, below=2 * inch)), "belongs to a hole"),
    (dict(cut=dataclasses.replace(NOTCH, size=7.4 * inch)), "as deep as the joist"),
    (dict(shape="round", taper=7 * inch), "three quarters"),
])  # fmt: skip
def test_joists_that_contradict_themselves_are_refused_in_a_sentence(changes, said):
    with pytest.raises(BadInput, match=said):
        follow(house(dataclasses.replace(SAWN, **changes)))


def test_a_wall_on_old_joists_is_a_point_load_on_each_by_hand():
    """Hem-Fir No.2 of 2 x 7 1/2 in on 13 ft: 40 psf every 16 in, and a wall of 64 plf in the middle of the span."""
    known = dataclasses.replace(SAWN, species="Hem-Fir", grade="No.2", cut=None)
    one = house(known)
    wall = Wall(name="wall", on=("floor",), at=6.5 * ft, start=0.0, end=8 * ft, height=8 * ft, weight=8 * psf)
    floor = judge(follow(dataclasses.replace(one, walls=(*one.walls, wall))), RULEBOOK)["floor"]
    bending = next(check for check in floor.checks if check.kind == "bending")
    moment = 40 * 16 / 12 * 13**2 / 8 + 64 * 16 / 12 * 13 / 4  # lb-ft
    assert bending.asked / psi == pytest.approx(moment * 12 / (2 * 7.5**2 / 6))
    assert bending.given / psi == pytest.approx(850 * 1.1 * 1.15)
    share = floor.element.gives[0].amount[0] / plf  # the left wall: half of 13 ft of 10 psf, and of the wall
    assert share == pytest.approx(10 * 6.5 + 32)
    log = dataclasses.replace(ROUND, species="Hem-Fir")
    told = judge(follow(dataclasses.replace(house(log), walls=(*house(log).walls, wall))), RULEBOOK)["floor"]
    assert not told.answers and "even load only" in told.refused[0]


def test_the_weight_of_joists_comes_down_with_the_floor_and_has_to_be_said():
    """2 psf of joists on 10 psf of floor, half of 13 ft on each wall."""
    floor = follow(house(dataclasses.replace(SAWN, weight=2 * psf))).element("floor")
    assert floor.gives[0].amount[0] / plf == pytest.approx(12 * 6.5)
    with pytest.raises(TypeError, match="weight"):
        MeasuredJoists(width=2 * inch, depth=8 * inch, spacing=16 * inch)


def test_what_is_not_known_counts_as_the_weakest_that_it_may_be():
    shares = {}
    worst = dict(species="Northern Species", grade="No.3")
    for name, changes in (("any", {}), ("fir", dict(species="Douglas Fir-Larch")), ("worst", worst)):
        floor = judge(follow(house(dataclasses.replace(SAWN, cut=None, **changes))), RULEBOOK)["floor"]
        shares[name] = floor.governs.share
    assert shares["any"] == pytest.approx(shares["worst"]) and shares["fir"] < shares["any"]


@pytest.mark.parametrize("changes", [dict(species="Hemfir"), dict(grade="No 2")])
def test_a_wood_that_is_written_wrong_is_asked_about_and_not_taken_for_any(changes):
    floor = judge(follow(house(dataclasses.replace(SAWN, **changes))), RULEBOOK)["floor"]
    assert floor.governs is None or all(check.kind.startswith("notch") for check in floor.checks)
    assert "did you mean" in floor.refused[0] and "floor cannot be judged" in floor.refused[0]
