"""Seats: the code's least, joists over a beam, jack studs, pockets, and beams that must be swung in."""

import numpy
import pytest
import sympy
from tests_tally import record_published

from structlib.ground.refusals import BadInput, OutsideRule
from structlib.ground.units import ft, inch, lb, psi
from structlib.rules.us import seats


@pytest.mark.parametrize("below, inches", [("plate", 1.5), ("post", 1.5), ("steel", 1.5), ("masonry", 3.0)])
def test_least_seats_of_the_code_with_common_practice_marked_beside(below, inches):
    """IRC 2018 R502.6, seen: 1 1/2 in on wood or metal, 3 in on masonry or concrete."""
    found = seats.seat_minimum(below)
    assert found.length / inch == pytest.approx(inches)
    assert found.verified == "seen" and found.practice_verified == "common practice" and found.practice
    if below in ("plate", "masonry"):  # the two published numbers
        record_published("least seats", found.verified, 0.0, below)


def test_lap_of_joists_is_three_inches():
    assert seats.table_lap() / inch == pytest.approx(3.0)


@pytest.mark.parametrize(
    "ply, plies, meeting, gap, each, enough, needed",
    [
        (1.5, 2, "butted", 0, 1.5, True, 2),
        (1.5, 1, "butted", 0, 0.75, False, 2),
        (1.5, 3, "butted", 0, 2.25, True, 2),
        (1.5, 4, "butted", 0, 3.0, True, 2),
        (1.5, 2, "butted", 0.25, 1.375, False, 3),
        (1.75, 2, "butted", 0.25, 1.625, True, 2),
        (1.5, 2, "lapped", 0, 3.0, True, 1),
        (1.5, 3, "lapped", 0, 4.5, True, 1),
        (3.5, 1, "butted", 0, 1.75, True, 1),
    ],
)
def test_joists_that_meet_over_a_beam(ply, plies, meeting, gap, each, enough, needed):
    found = seats.joists_over_beam(ply_width=ply * inch, plies=plies, meeting=meeting, gap=gap * inch)
    assert found.each / inch == pytest.approx(each) and found.enough is enough and found.plies_needed == needed


def test_joists_over_two_three_and_four_plies_at_once():
    found = seats.joists_over_beam(ply_width=1.5 * inch, plies=numpy.array([2, 3, 4]), meeting="butted")
    assert found.each / inch == pytest.approx([1.5, 2.25, 3.0]) and found.enough.all()
    with pytest.raises(OutsideRule, match="not even six plies"):
        seats.joists_over_beam(ply_width=0.5 * inch, plies=2, meeting="butted", gap=0.5 * inch)


def test_jack_studs_of_the_header_worked_by_hand():
    """4,000 lb on 3 in at 425 psi: 3.137 in, three studs; exactly three inches takes two."""
    found = seats.jack_studs(reaction=4000 * lb, width=3 * inch, bearing_value=425 * psi)
    assert found.seat_needed / inch == pytest.approx(4000 / (3 * 425)) and found.count == 3
    assert found.seat_given / inch == pytest.approx(4.5) and found.share == pytest.approx(4000 / (3 * 425) / 4.5)
    assert seats.jack_studs(reaction=3 * 425 * 3 * lb, width=3 * inch, bearing_value=425 * psi).count == 2
    assert seats.jack_studs(reaction=0.0, width=3 * inch, bearing_value=425 * psi).count == 1
    many = seats.jack_studs(reaction=numpy.array([1000.0, 4000.0]) * lb, width=3 * inch, bearing_value=425 * psi)
    assert many.count.tolist() == [1, 3]


def test_a_pocket_in_an_eight_inch_wall():
    good = seats.masonry_pocket(wall_thickness=8 * inch, left_behind=4 * inch)
    assert good.seat / inch == pytest.approx(3.5) and good.check.share == pytest.approx(3 / 3.5)
    short = seats.masonry_pocket(wall_thickness=8 * inch, left_behind=5 * inch)
    assert short.seat / inch == pytest.approx(2.5) and short.check.share > 1
    tight = seats.masonry_pocket(wall_thickness=8 * inch, left_behind=4 * inch, end_clearance=0.0)
    assert "treated or durable" in tight.conditions[-1]
    assert "for an engineer" in good.gate and "verdict" in good.gate
    with pytest.raises(OutsideRule, match="nothing is left"):
        seats.masonry_pocket(wall_thickness=4 * inch, left_behind=4 * inch)


def test_length_that_clears_the_diagonal_prints_itself():
    W, d = sympy.symbols("W d", positive=True)
    assert seats.tilted_length(room=W, across=d) == sympy.sqrt(W**2 - d**2)
    assert seats.tilted_length(room=numpy.array([5.0, 13.0]), across=numpy.array([3.0, 5.0])) == pytest.approx(
        [4.0, 12.0]
    )


def test_a_beam_between_two_walls_loses_seat_on_its_jacks():
    found = seats.swing_in(clear_width=13 * ft, across=5 * ft / 5, near_ledge=3 * inch, far_ledge=1.5 * inch)
    short = 13 * 12 - (13**2 - 1) ** 0.5 * 12
    assert found.length / inch == pytest.approx(13 * 12 - short)
    assert found.near_seat / inch == pytest.approx(3 - short / 2) and found.far_seat / inch == pytest.approx(
        1.5 - short / 2
    )
    assert found.near_overlap == found.far_overlap < 0 and found.near_opening == 0
    assert "short of" in found.sentence


def test_a_beam_into_two_pockets_ends_in_the_middle_or_at_the_back():
    even = seats.swing_in(clear_width=144 * inch, across=9.25 * inch, near_pocket=8 * inch, far_pocket=4 * inch)
    assert even.near_seat == pytest.approx(even.far_seat) and "both pockets" in even.sentence
    shallow = seats.swing_in(clear_width=144 * inch, across=9.25 * inch, near_pocket=8 * inch, far_pocket=2 * inch)
    assert shallow.far_seat / inch == pytest.approx(2.0) and shallow.near_seat > shallow.far_seat
    easy = seats.swing_in(
        clear_width=144 * inch, across=9.25 * inch, near_pocket=8 * inch, far_pocket=4 * inch, play=1 * inch
    )
    assert easy.length < even.length
    flat = seats.swing_in(clear_width=144 * inch, across=3.5 * inch, near_pocket=8 * inch, far_pocket=4 * inch)
    assert flat.length > even.length  # swung level, only its width is in the way


def test_pockets_stop_a_thin_beam():
    found = seats.swing_in(clear_width=40 * ft, across=1 * inch, near_pocket=6 * inch, far_pocket=0.0)
    assert found.length <= 40 * ft + 6 * inch and found.far_overlap == 0


# ---- nonsense ----

NO_NUMBER = {
    "nan": float("nan"),
    "inf": float("inf"),
    "text": "3 in",
    "nothing": None,
    "yes": True,
    "a group": {"a": 1},
    "an empty list": [],
    "negative": -1.0,
}
ONE = {"a list": [6.0, 8.0], "a symbol": sympy.Symbol("x"), "400 ft": 400 * ft}
JOISTS = {"ply_width": 1.5 * inch, "plies": 2, "meeting": "butted", "gap": 0.0}
STUDS = {"reaction": 4000 * lb, "width": 3 * inch, "bearing_value": 425 * psi, "stud_width": 1.5 * inch}
POCKET = {"wall_thickness": 8 * inch, "left_behind": 4 * inch, "end_clearance": 0.5 * inch}
SWING = {
    "clear_width": 12 * ft,
    "across": 9.25 * inch,
    "near_pocket": 8 * inch,
    "far_pocket": 4 * inch,
    "near_ledge": 0.0,
    "far_ledge": 0.0,
    "play": 0.0,
}
NUMBERS = [
    *[(seats.joists_over_beam, JOISTS, name, ONE) for name in ("ply_width", "gap")],
    (
        seats.joists_over_beam,
        JOISTS,
        "plies",
        {"zero": 0, "seven": 7, "half": 1.5, "a symbol": sympy.Symbol("x")},
    ),
    *[(seats.jack_studs, STUDS, name, {"a symbol": sympy.Symbol("x")}) for name in STUDS],
    *[(seats.jack_studs, STUDS, name, {"zero": 0.0}) for name in ("width", "bearing_value", "stud_width")],
    *[(seats.masonry_pocket, POCKET, name, ONE) for name in POCKET],
    *[(seats.tilted_length, {"room": 5.0, "across": 3.0}, name, {"zero": 0.0}) for name in ("room", "across")],
    (seats.tilted_length, {"room": 5.0, "across": 3.0}, "across", {"too deep": 5.0}),
    *[(seats.swing_in, SWING, name, ONE) for name in SWING],
    (seats.swing_in, {**SWING, "clear_width": 1 * ft, "near_pocket": 0.0}, "across", {"too deep": 13 * inch}),
]
CASES = [
    pytest.param(function, {**good, name: spoiler}, id=f"{function.__name__} {name} {word}")
    for function, good, name, more in NUMBERS
    for word, spoiler in {**NO_NUMBER, **more}.items()
    if not (spoiler is None and name == "end_clearance")
]


def one_sentence(error):
    text = str(error.value)
    assert text and "\n" not in text and len(text) < 700 and "Error" not in text and not text.endswith("."), text


@pytest.mark.parametrize("function, good, name", [(f, g, n) for f, g, n, _ in NUMBERS])
def test_the_good_arguments_are_good(function, good, name):
    assert function(**good) is not None


@pytest.mark.parametrize("function, arguments", CASES)
def test_a_number_that_is_none_is_refused(function, arguments):
    with pytest.raises((BadInput, OutsideRule)) as error:
        function(**arguments)
    one_sentence(error)


@pytest.mark.parametrize("word", ["quux", 7.5, ["floor"], {"a": 1}, -3, float("nan"), (1, 2)], ids=repr)
@pytest.mark.parametrize(
    "ask",
    [
        lambda word: seats.seat_minimum(word),
        lambda word: seats.joists_over_beam(**{**JOISTS, "meeting": word}),
        lambda word: seats.joists_over_beam(**JOISTS, below=word),
    ],
    ids=range(3),
)
def test_an_unknown_word_is_refused(ask, word):
    with pytest.raises(BadInput) as error:
        ask(word)
    one_sentence(error)
