"""Nonsense put to every door of the house room is answered with one sentence, never otherwise."""

import dataclasses

import numpy
import pytest
import sympy

from structlib.ground.lumber import find_material
from structlib.ground.refusals import BadInput, OutsideRule
from structlib.ground.sizes import dressed_size
from structlib.ground.units import ft, inch, plf, psf
from structlib.house import inputs
from structlib.house.beam import (
    BeamChoice,
    BeamJob,
    TypedLoad,
    check_beam,
    check_choice_of_beam,
    check_job,
    design_span,
)
from structlib.house.file import demo_house
from structlib.house.path import follow
from structlib.house.plan import Joists, check_house, stretched, with_changes
from structlib.house.sizing import build_rack, give_way, limit_widths, size_beams
from structlib.mechanics.beams import Couple, LineLoad, PointLoad
from structlib.rules.check import BeamUse, Seat
from structlib.rules.choice import RULEBOOK

WOOD = find_material("Hem-Fir", "No.2")
SEAT = Seat(3 * inch)
LOADS = (TypedLoad("live", LineLoad(0.0, 12 * ft, 200 * plf)),)
JOB = BeamJob(12 * ft - 3 * inch, SEAT, SEAT, LOADS)
CHOICE = BeamChoice(WOOD, 1.5 * inch, 9.25 * inch, 2)
RACK = build_rack([(WOOD, 1.5 * inch, 9.25 * inch)], plies=(2, 3))
HOUSE = demo_house()

NO_NUMBER = {
    "nan": float("nan"),
    "inf": float("inf"),
    "minus inf": float("-inf"),
    "text": "12 ft",
    "nothing": None,
    "yes": True,
    "a group": {"a": 1},
    "a list": [3.0],
    "an array": numpy.array([3.0]),
    "a symbol": sympy.Symbol("x"),
    "negative": -1.0,
}


def one_sentence(error):
    text = str(error.value)
    assert text and "\n" not in text and len(text) < 700, text
    assert "Error" not in text and "Traceback" not in text and not text.endswith("."), text


def refused(call):
    with pytest.raises((BadInput, OutsideRule)) as error:
        call()
    one_sentence(error)


JOB_NUMBERS = [
    ("opening width", lambda v: dataclasses.replace(JOB, clear_width=v), [0.0, 400 * ft, 6 * inch]),
    ("left seat", lambda v: dataclasses.replace(JOB, left=Seat(v)), [0.0, 400 * ft]),
    ("right seat", lambda v: dataclasses.replace(JOB, right=Seat(v)), [0.0, 400 * ft]),
    ("braces", lambda v: dataclasses.replace(JOB, unbraced_length=v), [400 * ft]),
    (
        "divisor",
        lambda v: dataclasses.replace(JOB, use=BeamUse("floor", live_divisor=v)),
        [0.0, 100.0, 5000.0],
    ),
    (
        "divisor of all load",
        lambda v: dataclasses.replace(JOB, use=BeamUse("floor", total_divisor=v)),
        [0.0, 100.0],
    ),
    ("plate", lambda v: dataclasses.replace(JOB, left=Seat(3 * inch, "plate", v)), [0.0, 1e6]),
]


@pytest.mark.parametrize("name, spoil, more", JOB_NUMBERS, ids=[row[0] for row in JOB_NUMBERS])
def test_numbers_of_a_job(name, spoil, more):
    may_be_nothing = name.startswith("divisor") or name in ("plate", "braces")
    for value in [v for k, v in NO_NUMBER.items() if not (may_be_nothing and k == "nothing")] + more:
        refused(lambda: check_beam(spoil(value), CHOICE, RULEBOOK))
        refused(lambda: size_beams(spoil(value), RACK, RULEBOOK))


@pytest.mark.parametrize(
    "changes",
    [
        {"left": None},
        {"right": "3 in"},
        {"left": Seat(3 * inch, "sand")},
        {"left": Seat(3 * inch, ["plate"])},
        {"loaded_on": "bottom"},
        {"loaded_on": None},
        {"wet": "yes"},
        {"wet": 1},
        {"use": "floor"},
        {"use": None},
        {"use": BeamUse("flooor")},
        {"use": BeamUse(["floor"])},
        {"use": BeamUse("floor", creep_decides="no")},
        {"loads": None},
        {"loads": 5},
        {"loads": "live"},
        {"loads": (None,)},
        {"loads": (LineLoad(0.0, 99.0, 1.0),)},
        {"loads": (TypedLoad("wind", LineLoad(0.0, 99.0, 1.0)),)},
        {"loads": (TypedLoad("live", Couple(9.0, 1.0)),)},
        {"loads": (TypedLoad("live", 40.0),)},
        {"loads": (TypedLoad(["live"], LineLoad(0.0, 99.0, 1.0)),)},
        {"loads": (TypedLoad("live", LineLoad(0.0, 40 * ft, 1.0)),)},
        {"loads": (TypedLoad("snow", PointLoad(30 * ft, 1.0)),)},
        {"loads": (TypedLoad("dead", PointLoad(3 * ft, -1.0)),)},
    ],
    ids=str,
)
def test_words_and_records_of_a_job(changes):
    spoiled = dataclasses.replace(JOB, **changes)
    refused(lambda: check_beam(spoiled, CHOICE, RULEBOOK))
    refused(lambda: size_beams(spoiled, RACK, RULEBOOK))
    refused(lambda: limit_widths(lambda width: spoiled, RACK, RULEBOOK))


def test_the_opening_in_inches_by_mistake_is_asked_about():
    with pytest.raises(BadInput, match="did you mean inches"):
        check_job(dataclasses.replace(JOB, clear_width=144 * ft))


@pytest.mark.parametrize(
    "field, more",
    [("ply_width", [0.0, 400 * ft]), ("depth", [0.0, 400 * ft]), ("plies", [0, 2.5, 7, 400, "2"])],
)
def test_numbers_of_a_beam(field, more):
    for value in [*NO_NUMBER.values(), *more]:
        refused(lambda: check_beam(JOB, dataclasses.replace(CHOICE, **{field: value}), RULEBOOK))
        refused(lambda: check_choice_of_beam(dataclasses.replace(CHOICE, **{field: value})))


@pytest.mark.parametrize(
    "material",
    [
        None,
        "Hem-Fir",
        3.0,
        dataclasses.replace(WOOD, bending=float("nan")),
        dataclasses.replace(WOOD, modulus=0.0),
        dataclasses.replace(WOOD, shear=-1.0),
        dataclasses.replace(WOOD, weight_density=float("inf")),
        dataclasses.replace(WOOD, bearing="425 psi"),
        dataclasses.replace(WOOD, kind="steel"),
    ],
    ids=repr,
)
def test_a_wood_that_is_none(material):
    refused(lambda: check_beam(JOB, dataclasses.replace(CHOICE, material=material), RULEBOOK))
    if getattr(material, "kind", "") == "steel":  # a rack is only worked out under a rulebook
        refused(lambda: size_beams(JOB, build_rack([(material, 1.5 * inch, 9.25 * inch)]), RULEBOOK))
    else:
        refused(lambda: build_rack([(material, 1.5 * inch, 9.25 * inch)]))


@pytest.mark.parametrize("other", [None, "a job", 5, RACK, (1, 2)], ids=type)
def test_another_record_where_a_job_a_beam_a_rack_a_level_or_a_house_is_asked(other):
    calls = [
        lambda: check_job(other),
        lambda: check_beam(other, CHOICE, RULEBOOK),
        lambda: check_beam(JOB, other, RULEBOOK),
        lambda: check_choice_of_beam(other),
        lambda: size_beams(other, RACK, RULEBOOK),
        lambda: limit_widths(other, RACK, RULEBOOK),
        lambda: limit_widths(lambda width: other, RACK, RULEBOOK),
        lambda: check_house(other),
        lambda: follow(other),
        lambda: with_changes(HOUSE, {"main beam": {"wood": other or "fir"}}),
        lambda: with_changes(HOUSE, {"upper floor": {"layers": (other,)}}),
        lambda: dressed_size(other),
    ]
    if other is not RACK:
        calls += [
            lambda: size_beams(JOB, other, RULEBOOK),
            lambda: limit_widths(lambda width: JOB, other, RULEBOOK),
        ]
    for call in calls:
        refused(call)


@pytest.mark.parametrize(
    "stock",
    [
        None,
        5,
        "2x10",
        [],
        [WOOD],
        [(WOOD, 38.1)],
        [(WOOD, 38.1, 235.0, 2)],
        *[[(WOOD, v, 235.0)] for v in NO_NUMBER.values()],
        *[[(WOOD, 38.1, v)] for v in NO_NUMBER.values()],
        [(WOOD, 0.0, 235.0)],
        [(WOOD, 38.1, 400 * ft)],
    ],
    ids=repr,
)
def test_stock_of_a_rack(stock):
    refused(lambda: build_rack(stock))


@pytest.mark.parametrize(
    "changes",
    [{"plies": plies} for plies in (None, 2, "2", [], [0], [2.5], [7], [None], [[2]])]
    + [
        {name: value}
        for name in ("greatest_depth", "greatest_width")
        for key, value in NO_NUMBER.items()
        if key != "nothing"
    ]
    + [{"greatest_depth": 0.0}, {"greatest_depth": 400 * ft}, {"greatest_width": 1.25 * inch}],
    ids=str,
)
def test_limits_of_a_rack(changes):
    refused(lambda: build_rack([(WOOD, 1.5 * inch, 9.25 * inch)], **changes))


def test_rows_of_a_rack():
    for row in (-1, 2, 1.5, "0", None, [0]):
        refused(lambda: RACK.choice(row))
        refused(lambda: RACK.material_of(row))
        refused(lambda: RACK.rows_of(row))


def test_columns_that_give_way():
    good = numpy.array([4.0, 9.0])
    for bad in (None, "4", 5.0, [[1.0, 2.0]], [1.0], ["a", "b"], [float("nan"), 1.0]):
        refused(lambda: give_way(bad, good))
        refused(lambda: give_way(good, bad))


def test_design_span():
    good = {"clear_width": 12 * ft, "left_seat": 3 * inch, "right_seat": 3 * inch}
    for name in good:
        for key, value in NO_NUMBER.items():
            if key not in ("a list", "an array", "a symbol"):  # the formula takes arrays and symbols
                refused(lambda: design_span(**{**good, name: value}))
        refused(lambda: design_span(**{**good, name: 400 * ft}))


NUMBERS = [(part.name, one.name, one.metadata)
           for part in {type(part): part for part in HOUSE.parts()}.values() for one in dataclasses.fields(part)
           if one.metadata["kind"] in ("length", "section length", "area load", "force", "weight", "count")]  # fmt: skip


@pytest.mark.parametrize("part, field, about", NUMBERS, ids=lambda value: value if isinstance(value, str) else "")
def test_every_number_of_every_part_has_two_ends(part, field, about):
    spoiled = [value for key, value in NO_NUMBER.items() if key not in ("nothing", "negative")]
    for value in [*spoiled, about["low"] - 1e-6, about["high"] * (1 + 1e-9) + 1e-6]:
        refused(lambda: with_changes(HOUSE, {part: {field: value}}))
    default = next(one.default for one in dataclasses.fields(HOUSE.part(part)) if one.name == field)
    if default is not None:
        refused(lambda: with_changes(HOUSE, {part: {field: None}}))
    for value in (about["low"], about["high"]):  # both ends are accepted
        with_changes(HOUSE, {part: {field: value}})


@pytest.mark.parametrize(
    "part, changes",
    [
        ("upper floor", {"kind": "flor"}),
        ("upper floor", {"kind": None}),
        ("upper floor", {"joists": "glued"}),
        ("roof", {"ridge": ["board"]}),
        ("upper floor", {"layers": None}),
        ("upper floor", {"layers": ("planks",)}),
        ("upper floor", {"joist": "2x10"}),
        ("upper floor", {"on": None}),
        ("upper floor", {"on": "middle wall"}),
        ("upper floor", {"on": (5,)}),
        ("roof", {"slope": None}),
        ("roof", {"slope": (1,)}),
        ("roof", {"slope": (1, 0)}),
        ("roof", {"slope": (-1, 12)}),
        ("roof", {"slope": ("6", 12)}),
        ("roof", {"slope": (99, 12)}),
        ("roof", {"live": 30 * psf}),
        ("roof", {"joists": "continuous"}),
        ("roof", {"ridge_at": 30 * ft, "slope": (6, 12)}),
        ("upper floor", {"snow": 30 * psf}),
        ("upper floor", {"slope": (3, 12)}),
        ("upper floor", {"live": None}),
        ("upper floor", {"end": 0.0}),
        ("middle wall", {"plate": "pine"}),
        ("middle wall", {"runs": "up"}),
        ("middle wall", {"at": 12 * ft}),
        ("north post", {"on": 5}),
        ("north post", {"on": "ground floor"}),
        ("main beam", {"on": ()}),
        ("kitchen opening", {"wall": "roof"}),
        ("nobody", {"at": 0.0}),
        ("middle wall", {"att": 0.0}),
    ],
    ids=str,
)
def test_words_and_records_of_a_house(part, changes):
    refused(lambda: follow(HOUSE, {part: changes}))


@pytest.mark.parametrize(
    "joist",
    [
        dict(species="Hem Fir"),
        dict(grade="No.9"),
        dict(size="2x11"),
        dict(size="big"),
        dict(species=None),
        dict(size=None),
        dict(plies=0),
        dict(plies=1.5),
        dict(spacing=0.0),
    ],
    ids=repr,
)
def test_joists_that_nobody_sells(joist):
    good = dict(species="Hem-Fir", grade="No.2", size="2x10", spacing=16 * inch)
    refused(lambda: follow(HOUSE, {"upper floor": {"joist": Joists(**{**good, **joist})}}))


def test_stretching_a_house():
    for left in (-1.0, 0.0, float("nan"), 1e9):
        refused(lambda: follow(stretched(HOUSE, 11 * ft, left=left)))


def test_demo_houses_by_name():
    for name in ("alder lane", "", None, 5, ["alder_lane"], "../alder_lane"):
        refused(lambda: demo_house(name))


def test_the_room_s_own_refusals():
    refused(lambda: inputs.check_whole_number("plies", 2.5, low=1, high=6))
    refused(lambda: inputs.check_yes_or_no("wet", 1))
    refused(lambda: inputs.check_list("plies", 5, "(2, 3)"))
    refused(lambda: inputs.check_record("name", 5, (str, bytes), "'a'"))
    assert inputs.check_whole_number("plies", numpy.int64(3), low=1, high=6) == 3
