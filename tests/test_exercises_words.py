"""The words and units of a question are understood in its answer; a decimal comma is asked about."""

import re

import pytest

from structlib.ground.reading import read
from structlib.ground.refusals import BadInput
from structlib.ground.units import inch
from structlib.pages.kit import questions as exercises
from structlib.pages.topics import every  # noqa: F401 - registers the questions

ALL_KINDS = [kind for found in exercises.kinds().values() for kind in found]
DIMENSIONS = {kind: exercises.make_question(kind, 0).dimension for kind in ALL_KINDS}
PLAIN = ("ratio", "count", "word")


def asked_of(question):
    """The sentence that asks, without the line on how to answer."""
    return re.split(r"(?<=[.?])\s", question.prompt.rpartition("? ")[0] + "?")[-1]


@pytest.mark.parametrize("kind", [kind for kind in ALL_KINDS if DIMENSIONS[kind] not in PLAIN])
def test_every_unit_word_of_a_question_is_read(kind):
    question = exercises.make_question(kind, 1)
    word, short = re.search(r"Give it in (.+?) \((.+?)\) or", question.prompt).groups()
    value = read(f"12 {short}", question.dimension)
    for unit in (word, word.upper(), word.replace("-", " "), short):
        assert read(f"12 {unit}", question.dimension) == value, unit


@pytest.mark.parametrize("kind", [kind for kind in ALL_KINDS if DIMENSIONS[kind] == "ratio"])
def test_a_ratio_may_be_said_in_the_words_of_the_question(kind):
    for seed in range(40):
        question = exercises.make_question(kind, seed)
        number = f"{question.answer:.4g}"
        told = re.search(r"(times .+?)(?: is| does|\?)", asked_of(question))
        for text in (f"{number} times", f"{number} {told[1] if told else 'times'}"):
            assert exercises.judge(question, text).right, text
    assert exercises.judge(question, f"{number} in").asks


@pytest.mark.parametrize("kind", [kind for kind in ALL_KINDS if DIMENSIONS[kind] == "count"])
def test_a_count_may_be_followed_by_what_is_counted(kind):
    question = exercises.make_question(kind, 1)
    things = re.search(r"Give a whole number of (.+?), without", question.prompt)[1]
    assert exercises.judge(question, f"{question.answer} {things}").right
    for unit in ("in", "ft", "inches", "pounds", "per cent", "and a half"):
        assert exercises.judge(question, f"{question.answer} {unit}").asks, unit


@pytest.mark.parametrize("kind", [kind for kind in ALL_KINDS if DIMENSIONS[kind] == "word"])
def test_every_choice_is_read_as_the_question_says_it(kind):
    for seed in range(40):
        question = exercises.make_question(kind, seed)
        for choice in question.choices:
            last = choice.split()[-1]
            said = re.findall(rf"\b(?:{choice}|{last.removesuffix('s')}s?)(?:'s)?\b", question.prompt)
            said = {text for text in said if text.removesuffix("'s") not in ("tie", "ties")}
            assert said, (choice, question.prompt)
            for text in (choice, f"the {choice}", choice.upper(), f"{choice}.", *said):
                verdict = exercises.judge(question, text)
                assert not verdict.asks and verdict.read_as == choice, text


@pytest.mark.parametrize(
    ("kind", "text"),
    [
        ("edge_or_flat", "{:.4g} times stiffer"),
        ("stiffer_by_depth", "{:.4g} times stiffer"),
        ("longer_span", "{:.4g} times as much"),
        ("jack_stud_count", "{} jack studs"),
    ],
)
def test_the_answers_that_were_refused(kind, text):
    question = exercises.make_question(kind, 1)
    assert exercises.judge(question, text.format(question.answer)).right


def test_a_tie_alone_is_asked_back_and_pound_feet_and_cubic_inches_are_read():
    assert exercises.judge(exercises.make_question("name_of_the_tie", 1), "tie").asks
    assert read("5,000 pound-feet", "moment") == read("5,000 lb-ft", "moment")
    assert read("60 pound-inches", "moment") == pytest.approx(read("5 lb-ft", "moment"))
    assert read("21.4 cubic inches", "section modulus") == read("21.4 in³", "section modulus")
    assert read("900 pounds per square inch", "stress") == read("900 psi", "stress")
    assert read("34 pounds per cubic foot", "weight density") == read("34 pcf", "weight density")
    assert read("1,200 feet 6 inches", "length") == 14406 * inch


@pytest.mark.parametrize("text", ["0,694", "00,694", "-0,694", "1,694", "0,5", "33,209"])
def test_a_decimal_comma_in_a_ratio_is_asked_about(text):
    verdict = exercises.judge(exercises.make_question("plate_share", 1), text)
    assert verdict.asks and "decimals with a point" in verdict.message


@pytest.mark.parametrize("text", ["0,694 in", "43,818 in", "3,651 ft", "1,113 mm", "43,8 in"])
def test_a_decimal_comma_in_a_length_is_asked_about(text):
    verdict = exercises.judge(exercises.make_question("pad_side_asked", 1), text)
    assert verdict.asks and "point" in verdict.message


@pytest.mark.parametrize(("text", "dimension"), [("0,694 in", "length"), ("0,120 lb", "force"), ("0,694", "ratio")])
def test_no_thousands_begin_with_a_zero(text, dimension):
    with pytest.raises(BadInput, match="comma that can be read in two ways"):
        read(text, dimension)


def test_twelve_thousand_stays_twelve_thousand():
    assert read("12,000 lb", "force") == read("12000 lb", "force")
    assert read("1,200 ft", "length") == read("1200 ft", "length")
    assert read("12,000", "count") == 12000
    question = exercises.make_question("end_reaction", 1)
    assert exercises.judge(question, "12,000 lb").read_as == "12,000 lb"
    assert exercises.judge(exercises.make_question("joist_count", 1), "12,000").read_as == "12,000"
