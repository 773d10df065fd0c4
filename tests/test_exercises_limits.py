"""Limits asked in exercises: nothing on the unsafe side counts, the next stock size does."""

import math
import re

import pytest

from structlib.ground.units import inch
from structlib.pages.kit import questions as exercises
from structlib.pages.topics import every  # noqa: F401 - registers the questions

ALL_KINDS = [kind for found in exercises.kinds().values() for kind in found]
SEEDS = range(200)
LIMITS = {kind: exercises.make_question(kind, 0).side for kind in ALL_KINDS}
LIMITS = {kind: side for kind, side in LIMITS.items() if side != "value"}
ASKED_AS_LIMIT = re.compile(
    r"how (long|deep) (must|may|a)|at least|must hold|may (that|stand|it)|how much section|needed\?"
    r"|how many (jack|joists|plies keep)",
    re.IGNORECASE,
)
STOCK = {  # how such sizes are made: the steps in inches
    "seat_length": (1 / 8, 1 / 4, 1 / 2, 3 / 2),
    "bearing_length": (1 / 8, 1 / 4, 1 / 2, 3 / 2),
    "pad_side_asked": (1, 2, 6),
    "deepest_notch": (1 / 16, 1 / 8),
}


def right(question, number, unit):
    return exercises.judge(question, f"{number!r} {unit}").right


def shown(question):
    """The answer as it is shown, and to three figures: number and unit."""
    number, _, unit = re.search(r"\*\*([\d,.]+) (\S+)", question.solution)[0].strip("*").partition(" ")
    return float(number.replace(",", "")), unit.strip("*.,")


@pytest.mark.parametrize(
    ("kind", "seed", "counts", "refused"),
    [  # 5 in / 4 = 1.25 in at most; root of 20,000 lb / 1,500 psf = 3.651 ft = 43.818 in at least
        ("deepest_notch", 1, ("1.25 in", "1 1/4 in", "1.24 in", "31.75 mm"), ("1.27 in", "1.26 in", "32 mm")),
        ("pad_side_asked", 1, ("43.8 in", "44 in", "48 in", "4 ft"), ("43 in", "43.7 in", "47 in", "111 cm")),
    ],
)
def test_the_cases_that_were_called_right_on_the_unsafe_side(kind, seed, counts, refused):
    question = exercises.make_question(kind, seed)
    assert [text for text in counts if not exercises.judge(question, text).right] == []
    assert [text for text in refused if exercises.judge(question, text).right] == []
    assert exercises.judge(question, refused[0]).mistake == "rounded past the limit"


@pytest.mark.parametrize("kind", ALL_KINDS)
def test_what_a_prompt_asks_as_a_limit_is_recorded_as_one(kind):
    for seed in range(20):
        question = exercises.make_question(kind, seed)
        asked = re.split(r"(?<=[.?])\s", question.prompt.rpartition("? ")[0] + "?")[-1]
        if question.dimension in ("word", "ratio"):
            assert question.side == "value"
            continue
        assert bool(ASKED_AS_LIMIT.search(asked)) is (question.side != "value"), asked
        if question.tolerance:
            way = {"at least": "round up", "at most": "round down", "value": "within 2 %"}[question.side]
            assert way in question.prompt
            assert ("stock size" in question.prompt) is bool(question.stock)


@pytest.mark.parametrize("kind", LIMITS)
def test_nothing_beyond_rounding_on_the_unsafe_side_is_right(kind):
    unsafe = -1 if LIMITS[kind] == "at least" else 1
    for seed in SEEDS:
        question = exercises.make_question(kind, seed)
        if question.dimension == "count":
            assert not exercises.judge(question, str(question.answer - 1)).right
            continue
        number, unit = shown(question)
        three = 10.0 ** (math.floor(math.log10(number)) - 2)  # one in the third figure
        for off in (0.51 * three, three, 0.01 * number, 0.019 * number, 0.05 * number):
            if off > 0.5 * three:
                assert not right(question, number + unsafe * off, unit), (seed, number, off)
        for share in (0.0, 0.01, 0.014):
            assert right(question, number * (1 - unsafe * share), unit), (seed, share)


@pytest.mark.parametrize("kind", STOCK)
def test_the_next_stock_size_on_the_careful_side_is_right(kind):
    least = LIMITS[kind] == "at least"
    for seed in SEEDS:
        question = exercises.make_question(kind, seed)
        for step in STOCK[kind]:
            count = question.answer / inch / step
            count = math.ceil(count - 1e-9) if least else math.floor(count + 1e-9)
            if count:
                assert right(question, count * step, "in"), (seed, step)
                past = (count - 1 if least else count + 1) * step
                assert not right(question, past, "in") or abs(past - question.answer / inch) < 0.005 * past


def test_a_share_near_the_whole_is_not_asked_for():
    # 99 % counts for 100.9 % as a number, and turns the verdict
    for seed in SEEDS:
        assert abs(exercises.make_question("crushing_share", seed).answer - 1) > 0.02
