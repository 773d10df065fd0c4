"""Worked solutions and hints add up as printed: each equation is worked again from its printed numbers."""

import re

import pytest

from structlib.pages.kit import questions as exercises
from structlib.pages.kit.questions.wording import say
from structlib.pages.topics import every  # noqa: F401 - registers the questions

ALL_KINDS = [kind for found in exercises.kinds().values() for kind in found]
SEEDS = range(110)  # of each kind: some 7,000 worked solutions

UNITS = {  # in inches and pounds
    "lb-ft": 12, "lb-in": 1, "lb/in": 1, "lb/ft³": 1 / 1728, "lb": 1, "plf": 1 / 12, "psf": 1 / 144, "psi": 1,
    "in⁴": 1, "in³": 1, "in²": 1, "ft²": 144, "ft": 12, "in": 1, "%": 0.01,
}  # fmt: skip
NUMBER = r"(?:\d+ )?\d+/\d+(?! ?\d)|\d[\d,]*(?:\.\d+)?"
TOKEN = re.compile(
    rf"(?P<feet>\d+) ft (?P<inches>{NUMBER}) in(?![\w²³⁴])"
    rf"|(?P<number>{NUMBER})(?: ?(?P<unit>{'|'.join(UNITS)})(?![\w²³⁴/-]))?"
    r"|(?P<sign>[-+×−/()√]|root of)|(?P<power>[²³⁴])"
)
SIGNS = {"×": "*", "−": "-", "√": "_root", "root of": "_root"}


def plain(text):
    whole, _, part = text.replace(",", "").rpartition(" ")
    top, _, bottom = part.partition("/")
    return float(whole or 0) + float(top) / float(bottom or 1)


def tokens(text):
    """The tokens of a text that is numbers and signs throughout, else nothing."""
    found, place = [], 0
    while place < len(text):
        match = TOKEN.match(text, place)
        if match:
            found.append(match)
            place = match.end()
        elif text[place] == " ":
            place += 1
        else:
            return []
    return found


def worth(found):
    """The value of a printed expression, from its printed numbers alone."""
    code = ""
    for token in found:
        part = token.groupdict()
        if part["feet"]:
            code += f"({12 * int(part['feet']) + plain(part['inches'])!r})"
        elif part["number"]:
            code += f"({plain(part['number']) * UNITS.get(part['unit'], 1)!r})"
        elif part["power"]:
            code += f"**{'⁰¹²³⁴'.index(part['power'])}"
        else:
            code += SIGNS.get(part["sign"], part["sign"])
    return eval(code, {"_root": lambda value: value**0.5})  # built above from numbers and signs alone


def half_a_digit(found):
    """Half of the last digit that a single printed number shows."""
    part = found[0].groupdict()
    number, scale = part["inches"] or part["number"], UNITS.get(part["unit"], 1)
    if "/" in number or part["feet"]:
        return 1 / 32
    return 0.5 * 10.0 ** -len(number.partition(".")[2]) * scale


def numeric_tail(text):
    """The numbers and signs at the end of a text, if what stands before them is no formula."""
    starts = [at for at in range(len(text)) if at == 0 or text[at - 1] in " ("]
    at = next((at for at in starts if tokens(text[at:].strip())), None)
    if at is None or not re.search(r"(^|[:.?!,]|\bby|\bhad|\bis|\bwith|\bcarries) *$", text[:at]):
        return []
    return tokens(text[at:].strip())


def numeric_head(text):
    ends = [at for at in range(len(text), 0, -1) if at == len(text) or text[at] in " ,."]
    at = next((at for at in ends if tokens(text[:at].strip())), None)
    if at is None or re.match(r" *[×+−/*(]", text[at:]):
        return []
    return tokens(text[:at].strip())


def equations(text):
    """Each printed `numbers = number`, as left and right tokens with the sentence."""
    for sentence in re.split(r"\n+|(?<=[.;?])\s", text.replace("**", "")):
        sides = sentence.rstrip(".").split("=")
        for left, right in zip(sides, sides[1:], strict=False):
            left, right = numeric_tail(left.strip()), numeric_head(right.strip())
            if left and right:
                yield left, right, sentence


def off(left, right):
    """How far a printed equation is off, in half digits of its right side."""
    allowed = half_a_digit(right) if len(right) == 1 else 1e-6 * abs(worth(right))
    return abs(worth(left) - worth(right)) / allowed


def test_the_reader_of_equations_finds_what_does_not_add_up():
    def all_off(text):
        return [off(left, right) > 1 - 1e-6 for left, right, _ in equations(text)]

    assert all_off("Together: 46 plf + 173 plf = **218 plf**.") == [True]
    assert all_off("Together: 46 plf + 172.5 plf = **218.5 plf**.") == [False]
    assert all_off("M = w × L² / 8 = 290 plf × (10 ft 6 in)² / 8 = **3,997 lb-ft**.") == [False]
    assert all_off("S = 3 in × (9 1/4 in)² / 6 = 42.78 in³. It is 84 in / 4.5 in = 18.6.") == [False, True]
    assert all_off("Area = 20,000 lb / 1,500 psf = 13.333 ft².\n\n(9 / 16)² = **31.6 %**.") == [False, False]


@pytest.mark.parametrize("kind", ALL_KINDS)
def test_printed_sums_and_products_add_up(kind):
    for seed in SEEDS:
        question = exercises.make_question(kind, seed)
        for text in (question.solution, *question.hints):
            for left, right, sentence in equations(text):
                assert off(left, right) <= 1 - 1e-6, (seed, sentence, worth(left), worth(right))


@pytest.mark.parametrize("kind", ALL_KINDS)
def test_a_printed_step_leads_to_the_answer_that_is_shown_everywhere(kind):
    if exercises.make_question(kind, 0).dimension in ("word", "count"):
        return
    for seed in SEEDS:
        question = exercises.make_question(kind, seed)
        bold = re.search(r"\*\*(.+?)\*\*", question.solution)[1]
        found = [right[0][0] for _, right, _ in equations(question.solution)]
        assert any(bold.startswith(number) for number in found), (seed, question.solution)
        assert bold == say(question.answer, "share" if kind == "crushing_share" else question.dimension)


@pytest.mark.parametrize("kind", ALL_KINDS)
def test_the_last_hint_comes_out_as_the_answer(kind):
    # these say a step on the way, or a power in words
    if kind in ("many_or_deep", "load_that_tips", "ends_let_go"):
        return
    for seed in range(30):
        question = exercises.make_question(kind, seed)
        hint = numeric_head(question.hints[2].rstrip(".").split("=")[-1].strip())
        if question.dimension in ("word", "count") or len(hint) < 3:
            return
        bold = re.search(r"\*\*(.+?)\*\*", question.solution)[1].removesuffix(" times")
        assert off(hint, tokens(bold)) <= 1 - 1e-6, (seed, question.hints[2], bold)
