"""Whatever is typed, the judge answers with a sentence; whatever seed, the question is fair."""

import re

from hypothesis import given, settings
from hypothesis import strategies as st

from structlib.pages.kit import questions as exercises
from structlib.pages.topics import every  # noqa: F401 - registers the questions

KINDS = [kind for found in exercises.kinds().values() for kind in found]
PIECES = st.sampled_from(
    ["12", "1/2", "-", "'", '"', " ", "ft", "in", "psf", ",", ".", "e9", "%", "x", "lb", "³", "not"]
)
JUNK = st.one_of(st.text(max_size=80), st.lists(PIECES, max_size=8).map("".join), st.none(), st.integers(), st.floats())


@settings(max_examples=200, deadline=None)
@given(kind=st.sampled_from(KINDS), seed=st.integers(0, 999_999), text=JUNK)
def test_the_judge_answers_anything_with_words(kind, seed, text):
    verdict = exercises.judge(exercises.make_question(kind, seed), text)
    assert verdict.message and not (verdict.right and verdict.asks)
    assert bool(verdict.read_as) is not verdict.asks
    assert not re.search(r"\b(safe|approved)\b", verdict.message.replace(repr(text), ""))


@settings(max_examples=60, deadline=None)
@given(kind=st.sampled_from(KINDS), seed=st.integers(0, 999_999))
def test_every_seed_gives_a_question_that_can_be_answered(kind, seed):
    question = exercises.make_question(kind, seed)
    assert question == exercises.make_question(kind, seed)
    bold = re.findall(r"\*\*(.+?)\*\*", question.solution)
    assert exercises.judge(question, bold[0]).right


@settings(max_examples=60, deadline=None)
@given(
    kind=st.sampled_from([kind for kind in KINDS if exercises.make_question(kind, 0).dimension == "ratio"]),
    seed=st.integers(0, 999_999),
    off=st.floats(-0.0199, 0.0199),
)
def test_within_two_per_cent_is_right_and_well_beyond_is_not(kind, seed, off):
    question = exercises.make_question(kind, seed)
    assert exercises.judge(question, repr(question.answer * (1 + off))).right
    assert not exercises.judge(question, repr(question.answer * (1.0201 + abs(off)))).right
