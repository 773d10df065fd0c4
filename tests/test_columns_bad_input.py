"""Nonsense put to every function of posts is answered with one sentence, never with another exception."""

from dataclasses import replace

import numpy
import pytest
import sympy

from structlib.ground.lumber import find_material
from structlib.ground.refusals import BadInput, OutsideRule
from structlib.ground.units import ft, inch, ksi, lb
from structlib.mechanics import columns as mechanics
from structlib.rules.choice import RULEBOOK
from structlib.rules.us import column_stability, columns, one_number, steel_columns
from structlib.rules.us.columns import Column, ColumnDemand

WOOD = find_material("Hem-Fir", "No.2")
LIVE = RULEBOOK.combinations({"live"})[1]
POST = Column(WOOD, 1.5 * inch, 3.5 * inch, 6 * ft, plies=3)
PIPE = steel_columns.steel_post("NPS 3 std")

NO_NUMBER = {
    "nan": float("nan"),
    "inf": float("inf"),
    "minus inf": float("-inf"),
    "text": "12 ft",
    "nothing": None,
    "yes": True,
    "a group": {"a": 1},
    "an empty list": [],
    "a bad array": numpy.array([1.0, float("nan")]),
}
BELOW = {"negative": -1.0}
ZERO = {"zero": 0.0}
LONG = {"400 ft": 400 * ft}
LISTS = {"a list": [6.0, 8.0], "a symbol": sympy.Symbol("x")}

CAPACITY = {
    "material": WOOD,
    "ply_width": 1.5 * inch,
    "depth": 3.5 * inch,
    "height": 6 * ft,
    "time_factor": 1.0,
    "plies": 3,
    "end_factor": 1.0,
}
HELD = {**CAPACITY, "held_depth": 3 * ft, "held_width": 3 * ft}
LONGEST = {
    "material": WOOD,
    "load": 1000 * lb,
    "time_factor": 1.0,
    "ply_width": 1.5 * inch,
    "depth": 3.5 * inch,
    "plies": 3,
}
FEWEST = {
    "material": WOOD,
    "load": 1000 * lb,
    "time_factor": 1.0,
    "ply_width": 1.5 * inch,
    "depth": 3.5 * inch,
    "height": 6 * ft,
}
BENT = {
    "compression_stress": 1.0,
    "compression_value": 5.0,
    "bending_stress": 1.0,
    "bending_value": 9.0,
    "critical_value": 4.0,
    "off_center_stress": 1.0,
}

# function, good arguments, the argument to spoil, the spoilers besides those that are no number
NUMBERS = [
    (
        mechanics.radius_of_gyration,
        {"inertia": 36.0, "area": 4.0},
        "inertia",
        {**BELOW, **ZERO, "list": [1.0]},
    ),
    (mechanics.radius_of_gyration, {"inertia": 36.0, "area": 4.0}, "area", {**BELOW, **ZERO}),
    (mechanics.effective_length, {"length": 96.0, "end_factor": 1.0}, "length", {**BELOW, "list": [1.0]}),
    (
        mechanics.effective_length,
        {"length": 96.0, "end_factor": 1.0},
        "end_factor",
        {**BELOW, **ZERO, "list": [1.0], "too much": 9.0},
    ),
    (mechanics.slenderness, {"effective_length": 96.0, "across": 3.5}, "effective_length", BELOW),
    (mechanics.slenderness, {"effective_length": 96.0, "across": 3.5}, "across", {**BELOW, **ZERO}),
    (
        mechanics.euler_load,
        {"bending_stiffness": 9.0, "effective_length": 3.0},
        "bending_stiffness",
        {**BELOW, **ZERO},
    ),
    (
        mechanics.euler_load,
        {"bending_stiffness": 9.0, "effective_length": 3.0},
        "effective_length",
        {**BELOW, **ZERO},
    ),
    (mechanics.euler_stress, {"modulus": 9.0, "slenderness": 3.0}, "modulus", {**BELOW, **ZERO}),
    (mechanics.euler_stress, {"modulus": 9.0, "slenderness": 3.0}, "slenderness", {**BELOW, **ZERO}),
    (mechanics.eccentric_moment, {"load": 9.0, "eccentricity": 3.0}, "load", BELOW),
    (mechanics.eccentric_moment, {"load": 9.0, "eccentricity": 3.0}, "eccentricity", BELOW),
    (
        column_stability.critical_column_value,
        {"modulus_stability": 9.0, "slenderness": 3.0},
        "modulus_stability",
        {**BELOW, **ZERO},
    ),
    (
        column_stability.critical_column_value,
        {"modulus_stability": 9.0, "slenderness": 3.0},
        "slenderness",
        {**BELOW, **ZERO},
    ),
    (column_stability.column_stability_factor, {"ratio": 0.5, "shape": 0.8}, "ratio", BELOW),
    (
        column_stability.column_stability_factor,
        {"ratio": 0.5, "shape": 0.8},
        "shape",
        {**BELOW, **ZERO, "one": 1.0},
    ),
    (column_stability.ratio_for_factor, {"factor": 0.5, "shape": 0.8}, "factor", {**BELOW, "one": 1.0}),
    (
        column_stability.ratio_for_factor,
        {"factor": 0.5, "shape": 0.8},
        "shape",
        {**BELOW, **ZERO, "one": 1.0},
    ),
    *[
        (column_stability.bent_column_share, BENT, name, BELOW if "stress" in name else {**BELOW, **ZERO})
        for name in BENT
    ],
    *[(columns.column_capacity, CAPACITY, name, {**BELOW, **ZERO, **LONG, **LISTS}) for name in ("ply_width", "depth")],
    (columns.column_capacity, CAPACITY, "height", {**BELOW, **ZERO, **LONG, "a symbol": sympy.Symbol("x")}),
    (columns.column_capacity, CAPACITY, "time_factor", {**BELOW, **ZERO, "too much": 3.0}),
    (
        columns.column_capacity,
        CAPACITY,
        "plies",
        {**BELOW, **ZERO, "six": 6, "and a half": 2.5, "other shape": numpy.array([1.0, 2.0, 3.5])},
    ),
    (columns.column_capacity, CAPACITY, "end_factor", {**BELOW, **ZERO, "too much": 3.0, **LISTS}),
    *[(columns.column_capacity, HELD, name, {**BELOW, **LONG, **LISTS}) for name in ("held_depth", "held_width")],
    (columns.fewest_plies, FEWEST, "load", {**BELOW, **LISTS}),
    (columns.fewest_plies, FEWEST, "height", {**BELOW, **ZERO, **LONG, **LISTS}),
    *[
        (
            columns.crushing_value,
            {"material": WOOD, "width": 38.1, "depth": 88.9, "time_factor": 1.0},
            name,
            {**BELOW, **ZERO},
        )
        for name in ("width", "depth", "time_factor")
    ],
    *[
        (
            columns.compression_size_factor,
            {"material": WOOD, "width": 38.1, "depth": 88.9},
            name,
            {**BELOW, **ZERO, **LISTS},
        )
        for name in ("width", "depth")
    ],
    (
        steel_columns.steel_capacity,
        {"post": PIPE, "height": 8 * ft},
        "height",
        {**BELOW, **ZERO, **LONG, "a symbol": sympy.Symbol("x")},
    ),
    (
        steel_columns.steel_capacity,
        {"post": PIPE, "height": 8 * ft, "end_factor": 1.0},
        "end_factor",
        {**BELOW, **ZERO, **LISTS},
    ),
    (
        steel_columns.steel_post,
        {"section": "NPS 3 std", "yield_strength": 35 * ksi},
        "yield_strength",
        {**BELOW, **ZERO, "stone": 1.0},
    ),
    *[
        (
            steel_columns.pipe_of_size,
            {"outside": 3.5 * inch, "wall": 0.2 * inch, "yield_strength": 36 * ksi},
            name,
            {**BELOW, **ZERO, **LONG, **LISTS},
        )
        for name in ("outside", "wall", "yield_strength")
    ],
    *[
        (function, {"slenderness": 80.0, "yield_strength": 250.0}, name, {**BELOW, **ZERO})
        for function in (steel_columns.allowable_stress_1989, steel_columns.allowable_stress_2016)
        for name in ("slenderness", "yield_strength")
    ],
    *[
        (
            steel_columns.steel_check,
            {"post": PIPE, "axial": 9.0, "height": 8 * ft, "combination": LIVE},
            name,
            {**BELOW, **LISTS},
        )
        for name in ("axial", "height")
    ],
    (
        steel_columns.permanent_post_conditions,
        {"pieces": 1, "outside": 3.5 * inch},
        "pieces",
        {**BELOW, **ZERO, "half": 1.5},
    ),
    (
        steel_columns.permanent_post_conditions,
        {"pieces": 1, "outside": 3.5 * inch},
        "outside",
        {**BELOW, **ZERO, **LONG},
    ),
    (
        one_number.check_one_number,
        {"name": "x", "value": 1.0, "low": 0.0, "high": 9.0},
        "value",
        {**BELOW, **LISTS},
    ),
    (
        one_number.check_one_count,
        {"name": "x", "value": 1, "low": 0, "high": 9},
        "value",
        {**BELOW, **LISTS, "half": 0.5},
    ),
    (
        columns.plate_check,
        {"column": POST, "demands": [ColumnDemand(LIVE, 9.0)], "plate": WOOD, "distance_to_end": 0.0},
        "distance_to_end",
        {**BELOW, **LONG},
    ),
    (
        columns.held_length,
        {"name": "held", "held": 9.0, "height": 99.0, "end_factor": 1.0},
        "end_factor",
        {**BELOW, **ZERO},
    ),
]

# None stands for "the whole height" and for "the usual one": no nonsense there
MAY_BE_NONE = {"held_depth", "held_width", "yield_strength"}
CASES = [
    pytest.param(function, {**good, name: spoiler}, id=f"{function.__name__} {name} {word}")
    for function, good, name, more in NUMBERS
    for word, spoiler in {**NO_NUMBER, **more}.items()
    if not (spoiler is None and name in MAY_BE_NONE and function in (columns.column_capacity, steel_columns.steel_post))
]


def one_sentence(error):
    text = str(error.value)
    assert text and "\n" not in text and len(text) < 700, text  # a list of choices may be long
    assert "Error" not in text and "Traceback" not in text and not text.endswith("."), text


@pytest.mark.parametrize("function, good, name", [(f, g, n) for f, g, n, _ in NUMBERS])
def test_the_good_arguments_are_good(function, good, name):
    assert function(**good) is not None


@pytest.mark.parametrize("function, arguments", CASES)
def test_a_number_that_is_none_is_refused(function, arguments):
    with pytest.raises((BadInput, OutsideRule)) as error:
        function(**arguments)
    one_sentence(error)


DEMAND = ColumnDemand(LIVE, 9.0)
WORDS = [
    lambda word: columns.column_capacity(**{**CAPACITY, "material": word}),
    lambda word: columns.column_capacity(**CAPACITY, fastening=word),
    lambda word: columns.column_capacity(**CAPACITY, wet=word),
    lambda word: columns.column_checks(word, [DEMAND]),
    lambda word: columns.column_checks(POST, word),
    lambda word: columns.column_checks(POST, [word]),
    lambda word: columns.column_checks(POST, [ColumnDemand(word, 9.0)]),
    lambda word: columns.column_checks(POST, [replace(DEMAND, way=word)]),
    lambda word: columns.column_checks(POST, [replace(DEMAND, axial="x" if word == 7.5 else word)]),
    lambda word: columns.column_checks(POST, [replace(DEMAND, eccentricity="x" if word == 7.5 else word)]),
    lambda word: columns.slenderness_check(word, way="depth"),
    lambda word: columns.slenderness_check(POST, way=word),
    lambda word: columns.slenderness_check(POST, way="depth", stage=word),
    lambda word: columns.check_column(word),
    lambda word: columns.check_column(replace(POST, material=word)),
    lambda word: columns.check_column(replace(POST, fastening=word)),
    lambda word: columns.check_column(replace(POST, wet=word)),
    lambda word: columns.capacity_of(word, time_factor=1.0),
    lambda word: columns.plate_check(word, [DEMAND], WOOD),
    lambda word: columns.plate_check(POST, word, WOOD),
    lambda word: columns.plate_check(POST, [DEMAND], word),
    lambda word: columns.plate_check(POST, [DEMAND], WOOD, wet=word),
    lambda word: columns.least_size_check(word),
    lambda word: columns.built_up_fastening(word),
    lambda word: columns.shortest_common_nail(word),
    lambda word: columns.shape_constant(word),
    lambda word: columns.compression_size_factor(word, width=38.1, depth=88.9),
    lambda word: columns.crushing_value(word, width=38.1, depth=88.9, time_factor=1.0),
    lambda word: columns.fewest_plies(**FEWEST, fastening=word),
    lambda word: steel_columns.steel_post(word),
    lambda word: steel_columns.steel_post("NPS 3 std", nominal_wall=word),
    lambda word: steel_columns.steel_capacity(word, height=8 * ft),
    lambda word: steel_columns.steel_capacity(PIPE, height=8 * ft, method=word),
    lambda word: steel_columns.steel_check(PIPE, axial=9.0, height=8 * ft, combination=word),
    lambda word: steel_columns.steel_check(word, axial=9.0, height=8 * ft, combination=LIVE),
]


@pytest.mark.parametrize("word", ["quux", 7.5, ["floor"], {"a": 1}, -3, float("nan"), (1, 2)], ids=repr)
@pytest.mark.parametrize("ask", WORDS, ids=range(len(WORDS)))
def test_an_unknown_word_or_a_thing_of_another_kind_is_refused(ask, word):
    with pytest.raises((BadInput, OutsideRule)) as error:
        ask(word)
    one_sentence(error)
