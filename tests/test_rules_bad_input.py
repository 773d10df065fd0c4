"""Nonsense put to every function of the rules room is answered with one sentence, never otherwise."""

import numpy
import pytest

from structlib.ground.lumber import find_material
from structlib.ground.refusals import BadInput, OutsideRule
from structlib.ground.units import ft
from structlib.rules.check import BeamUse, least_verified
from structlib.rules.choice import RULEBOOK
from structlib.rules.us import bearing, bending, deflection, factors, shear, stability
from structlib.rules.us.deflection import sag_divisors

WOOD = find_material("Hem-Fir", "No.2")

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
BELOW_ZERO = {"negative": -1.0}
ZERO = {"zero": 0.0}
TOO_LONG = {"400 ft": 400 * ft}

STABILITY = {
    "unbraced_length": 2400.0,
    "depth": 235.0,
    "width": 76.0,
    "bending_value": 8.0,
    "modulus_stability": 3200.0,
}
BENDING = {
    "width": 76.0,
    "depth": 235.0,
    "plies": 2,
    "ply_width": 38.1,
    "unbraced_length": 0.0,
    "time_factor": 1.0,
}

# function, good arguments, the argument to spoil, the spoilers besides those that are no number
NUMBERS = [
    (bearing.bearing_stress, {"reaction": 9.0, "width": 3.0, "bearing_length": 2.0}, "reaction", BELOW_ZERO),
    (
        bearing.bearing_stress,
        {"reaction": 9.0, "width": 3.0, "bearing_length": 2.0},
        "width",
        {**BELOW_ZERO, **ZERO},
    ),
    (
        bearing.bearing_stress,
        {"reaction": 9.0, "width": 3.0, "bearing_length": 2.0},
        "bearing_length",
        {**BELOW_ZERO, **ZERO, **TOO_LONG},
    ),
    (
        bearing.bearing_length_needed,
        {"reaction": 9.0, "width": 3.0, "bearing_value": 2.0},
        "reaction",
        BELOW_ZERO,
    ),
    (
        bearing.bearing_length_needed,
        {"reaction": 9.0, "width": 3.0, "bearing_value": 2.0},
        "bearing_value",
        {**BELOW_ZERO, **ZERO},
    ),
    (
        bearing.bearing_area_factor,
        {"bearing_length": 38.0, "distance_to_end": 100.0},
        "bearing_length",
        {**BELOW_ZERO, **ZERO, **TOO_LONG},
    ),
    (
        bearing.bearing_area_factor,
        {"bearing_length": 38.0, "distance_to_end": 100.0},
        "distance_to_end",
        {**BELOW_ZERO, **TOO_LONG},
    ),
    (
        bearing.bearing_value_at_angle,
        {"along": 9.0, "across": 3.0, "sine": 0.6, "cosine": 0.8},
        "along",
        {**BELOW_ZERO, **ZERO},
    ),
    (
        bearing.bearing_value_at_angle,
        {"along": 9.0, "across": 3.0, "sine": 0.6, "cosine": 0.8},
        "across",
        {**BELOW_ZERO, **ZERO},
    ),
    (
        bearing.bearing_value_at_angle,
        {"along": 9.0, "across": 3.0, "sine": 0.6, "cosine": 0.8},
        "sine",
        {"another angle": 0.1, "too much": 2.0},
    ),
    (
        bearing.bearing_value_at_angle,
        {"along": 9.0, "across": 3.0, "sine": 0.6, "cosine": 0.8},
        "cosine",
        {"another angle": 0.1, "too much": -2.0},
    ),
    (
        deflection.long_term_deflection,
        {"lasting": 4.0, "passing": 6.0, "creep_factor": 1.5},
        "lasting",
        TOO_LONG,
    ),
    (
        deflection.long_term_deflection,
        {"lasting": 4.0, "passing": 6.0, "creep_factor": 1.5},
        "passing",
        TOO_LONG,
    ),
    (
        deflection.long_term_deflection,
        {"lasting": 4.0, "passing": 6.0, "creep_factor": 1.5},
        "creep_factor",
        {**BELOW_ZERO, **ZERO},
    ),
    (stability.root, {"value": 9.0}, "value", BELOW_ZERO),
    (
        stability.slenderness_ratio,
        {"effective_length": 900.0, "depth": 235.0, "width": 76.0},
        "effective_length",
        {**BELOW_ZERO, **TOO_LONG},
    ),
    (
        stability.slenderness_ratio,
        {"effective_length": 900.0, "depth": 235.0, "width": 76.0},
        "depth",
        {**BELOW_ZERO, **ZERO},
    ),
    (
        stability.slenderness_ratio,
        {"effective_length": 900.0, "depth": 235.0, "width": 76.0},
        "width",
        {**BELOW_ZERO, **ZERO},
    ),
    (
        stability.critical_buckling_value,
        {"modulus_stability": 3200.0, "slenderness": 12.0},
        "modulus_stability",
        {**BELOW_ZERO, **ZERO},
    ),
    (
        stability.critical_buckling_value,
        {"modulus_stability": 3200.0, "slenderness": 12.0},
        "slenderness",
        {**BELOW_ZERO, **ZERO},
    ),
    (stability.stability_factor_from_ratio, {"ratio": 2.83}, "ratio", BELOW_ZERO),
    (
        stability.beam_effective_length,
        {"unbraced_length": 2400.0, "depth": 235.0},
        "unbraced_length",
        {**BELOW_ZERO, **TOO_LONG},
    ),
    (
        stability.beam_effective_length,
        {"unbraced_length": 2400.0, "depth": 235.0},
        "depth",
        {**BELOW_ZERO, **ZERO},
    ),
    *[
        (
            stability.beam_stability_factor,
            STABILITY,
            name,
            BELOW_ZERO if name == "unbraced_length" else {**BELOW_ZERO, **ZERO},
        )
        for name in STABILITY
    ],
    (
        bending.depth_factor,
        {"depth": 235.0, "reference_depth": 305.0, "exponent": 0.1},
        "depth",
        {**BELOW_ZERO, **ZERO},
    ),
    (
        bending.depth_factor,
        {"depth": 235.0, "reference_depth": 305.0, "exponent": 0.1},
        "reference_depth",
        {**BELOW_ZERO, **ZERO},
    ),
    (
        bending.depth_factor,
        {"depth": 235.0, "reference_depth": 305.0, "exponent": 0.1},
        "exponent",
        {**BELOW_ZERO, "too much": 2.0},
    ),
    *[
        (bending.bending_value, {"material": WOOD, **BENDING}, name, {**BELOW_ZERO, **ZERO, **TOO_LONG})
        for name in ("width", "depth", "ply_width")
    ],
    (bending.bending_value, {"material": WOOD, **BENDING}, "plies", {**BELOW_ZERO, **ZERO}),
    (bending.bending_value, {"material": WOOD, **BENDING}, "unbraced_length", {**BELOW_ZERO, **TOO_LONG}),
    (bending.bending_value, {"material": WOOD, **BENDING}, "time_factor", {**BELOW_ZERO, **ZERO}),
    (
        bending.size_factor,
        {"material": WOOD, "width": 38.1, "depth": 234.95},
        "width",
        {**BELOW_ZERO, **ZERO},
    ),
    (
        bending.size_factor,
        {"material": WOOD, "width": 38.1, "depth": 234.95},
        "depth",
        {**BELOW_ZERO, **ZERO, **TOO_LONG},
    ),
    (
        bending.repetitive_factor,
        {"material": WOOD, "sharing_members": 3},
        "sharing_members",
        {**BELOW_ZERO, **ZERO},
    ),
    (
        factors.tabulated_size_factor,
        {"material": WOOD, "width": 38.1, "depth": 234.95},
        "width",
        {**BELOW_ZERO, **ZERO},
    ),
    (
        factors.tabulated_size_factor,
        {"material": WOOD, "width": 38.1, "depth": 234.95},
        "depth",
        {**BELOW_ZERO, **ZERO},
    ),
    (factors.nominal_of, {"dressed": 38.1}, "dressed", {**BELOW_ZERO, **ZERO}),
]

CASES = [
    pytest.param(function, {**good, name: spoiler}, id=f"{function.__name__} {name} {word}")
    for function, good, name, more in NUMBERS
    for word, spoiler in {**NO_NUMBER, **more}.items()
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


WORDS = [
    lambda word: factors.scalar(word),
    lambda word: factors.length(word),
    lambda word: factors.verified(word),
    lambda word: factors.least_seat(word),
    lambda word: factors.effective_length_rows(word),
    lambda word: factors.dressed_of(word),
    lambda word: deflection.limit_divisor(word),
    lambda word: deflection.creep_factor(wet=word),
    lambda word: bending.wet_factor(WOOD, value=word, wet=True),
    lambda word: bending.wet_factor(WOOD, value="bending", wet=word),
    lambda word: bending.wet_factor(word, value="bending", wet=True),
    lambda word: bending.refuse_unknown_material(word),
    lambda word: bending.size_factor(word, width=38.1, depth=234.95),
    lambda word: bending.repetitive_factor(word, sharing_members=3),
    lambda word: bending.bending_value(word, **BENDING),
    lambda word: bending.bending_value(WOOD, **BENDING, wet=word),
    lambda word: shear.loads_near_support_may_be_left_out(below=word, loaded_on="top"),
    lambda word: shear.loads_near_support_may_be_left_out(below="plate", loaded_on=word),
    lambda word: stability.beam_effective_length(unbraced_length=900.0, depth=235.0, case=word),
    lambda word: factors.time_factor(word),
    lambda word: factors.time_factor([word]),
    lambda word: RULEBOOK.combinations(word),
    lambda word: RULEBOOK.combinations([word]),
    lambda word: RULEBOOK.leaves_out_load_near_seat(below=word, loaded_on="top"),
    lambda word: RULEBOOK.modulus_factor(word, wet=True),
    lambda word: RULEBOOK.modulus_factor(WOOD, wet=word),
    lambda word: sag_divisors(BeamUse(word)),
    lambda word: sag_divisors(BeamUse(live_divisor=word)),
    lambda word: sag_divisors(BeamUse(total_divisor=word)),
    lambda word: least_verified([word]),
]


@pytest.mark.parametrize("word", ["quux", 7.5, ["floor"], {"a": 1}, -3, float("nan"), (1, 2)], ids=repr)
@pytest.mark.parametrize("ask", WORDS, ids=range(len(WORDS)))
def test_an_unknown_word_or_a_thing_of_another_kind_is_refused(ask, word):
    with pytest.raises((BadInput, OutsideRule)) as error:
        ask(word)
    one_sentence(error)


def test_a_length_is_refused_where_a_plain_number_stands():
    with pytest.raises(BadInput, match="not a length in inches"):
        factors.length("creep_dry")


@pytest.mark.parametrize("name", [None, 5, ["footings"], {"footings": 1}], ids=repr)
def test_a_room_is_named_by_a_word(name):
    with pytest.raises(BadInput, match="named by a word such as 'footings'"):
        RULEBOOK.room(name)
