"""The exercise room: every seed gives a fair question, every known slip is named, nothing crashes."""

import json
import math
import re
import runpy
import subprocess
import sys
from dataclasses import replace
from fractions import Fraction
from functools import cache
from pathlib import Path

import pytest

from structlib.ground.refusals import BadInput
from structlib.ground.units import ft, inch, kPa, lb, plf, psf, psi
from structlib.pages.kit import questions as exercises
from structlib.pages.kit.questions.question import settle
from structlib.pages.topics import every  # noqa: F401 - registers the questions

ALL_KINDS = [kind for found in exercises.kinds().values() for kind in found]
SEEDS = range(500)


@cache
def made(kind):
    """The questions of all seeds, made once."""
    return [exercises.make_question(kind, seed) for seed in SEEDS]


# How an answer may be typed: unit text and its size in internal units.
TYPED = {
    "length": {"ft": ft, "in": inch, "mm": 1.0, "m": 1000.0},
    "small length": {"in": inch, "mm": 1.0, "cm": 10.0},
    "section modulus": {"in3": inch**3, "mm3": 1.0, "cm^3": 1000.0, "in³": inch**3},
    "force": {"lb": lb, "kip": 1000 * lb, "kN": 1000.0},
    "line load": {"plf": plf, "lb/ft": plf, "kN/m": 1.0},
    "area load": {"psf": psf, "lb/ft2": psf, "kPa": kPa},
    "moment": {"lb-ft": lb * ft, "lb-in": lb * inch, "kN-m": 1e6},
    "ratio": {"": 1.0, "x": 1.0, " times": 1.0, "%": 0.01},
    "count": {"": 1},
}


def typed(value, question):
    """Every way to type a value as an answer to a question."""
    if question.dimension == "word":
        return [value, f" {value.upper()}.", f"It is {value}"]
    if question.dimension == "count":
        return [str(value), f"{value} pieces", f" {value}.0 "]
    return [f"{value / size!r} {unit}" for unit, size in TYPED[question.dimension].items()]


@pytest.mark.parametrize("kind", ALL_KINDS)
def test_a_right_answer_counts_in_every_unit_and_every_slip_gets_its_own_name(kind):
    for seed, question in enumerate(made(kind)):
        for text in typed(question.answer, question):
            verdict = exercises.judge(question, text)
            assert verdict.right and not verdict.asks, (seed, text, verdict)
        for mistake in question.mistakes:
            for text in typed(mistake.value, question):
                verdict = exercises.judge(question, text)
                assert not verdict.right and verdict.mistake == mistake.name, (seed, text, verdict)
                assert mistake.message in verdict.message


@pytest.mark.parametrize("kind", ALL_KINDS)
def test_no_two_mistakes_collide_and_an_answer_within_the_tolerance_is_never_turned_away(kind):
    for seed, question in enumerate(made(kind)):
        messages = [mistake.message for mistake in question.mistakes]
        assert len(set(messages)) == len(messages)
        assert len(question.mistakes) >= 1
        if question.tolerance == 0:
            values = [question.answer, *(mistake.value for mistake in question.mistakes)]
            assert len(set(values)) == len(values)
            continue
        for mistake in question.mistakes:
            assert abs(mistake.value / question.answer - 1) > 2 * question.tolerance
        for one in question.mistakes:
            for other in question.mistakes:
                assert one is other or abs(one.value / other.value - 1) > question.tolerance / 1.1
        on_the_side = {"at least": (1.01, 1.0199), "at most": (0.9801, 0.99)}
        for share in on_the_side.get(question.side, (0.9801, 0.99, 1.01, 1.0199)):
            text = typed(share * question.answer, question)[0]
            assert exercises.judge(question, text).right, (seed, text)


@pytest.mark.parametrize("kind", ALL_KINDS)
def test_a_rounded_right_answer_counts(kind):
    for seed, question in enumerate(made(kind)):
        if question.tolerance == 0:
            continue
        for unit, size in TYPED[question.dimension].items():
            number = question.answer / size
            if question.side != "value":  # a limit is rounded to its careful side
                three = 10.0 ** (math.floor(math.log10(number)) - 2)
                way = math.ceil if question.side == "at least" else math.floor
                number = way(round(number / three, 6)) * three
            text = f"{number:.3g}".replace("e+0", "e") + f" {unit}"
            assert exercises.judge(question, text).right, (seed, text)


@pytest.mark.parametrize("kind", ALL_KINDS)
def test_the_same_seed_gives_the_same_question_and_seeds_differ(kind):
    questions = [exercises.make_question(kind, seed) for seed in range(60)]
    assert questions == [exercises.make_question(kind, seed) for seed in range(60)]
    assert len({question.prompt for question in questions}) >= 7


def test_a_seed_means_the_same_in_another_process():
    code = (
        "from structlib.pages.kit import questions as e\nfrom structlib.pages.topics import every\n"
        "print([e.make_question(k, 7).prompt for ks in e.kinds().values() for k in ks])"
    )
    prompts = {
        subprocess.run(
            [sys.executable, "-c", code],
            capture_output=True,
            text=True,
            check=True,
            env={"PYTHONHASHSEED": seed, "PYTHONPATH": ":".join(sys.path), "PYTHONIOENCODING": "utf-8"},
        ).stdout
        for seed in ("1", "2")
    }
    assert len(prompts) == 1


def test_every_notebook_has_questions_enough():
    assert set(exercises.kinds()) >= {"01", "02", "04"}
    assert all(len(found) >= 3 for found in exercises.kinds().values())
    with pytest.raises(BadInput, match="01"):
        exercises.kinds("1")


# The answers once more, by arithmetic written here from the numbers of the question in
# inches, feet and pounds, with none of the library's formulas.
def _i(width, depth, plies=1):
    return plies * width * depth**3 / 12


def _s(width, depth, plies=1):
    return plies * width * depth**2 / 6


BY_HAND = {
    "section_modulus": lambda n: _s(n["width"] / inch, n["depth"] / inch, n["plies"]) * inch**3,
    "stiffer_by_depth": lambda n: n["deep"] ** 3 / n["shallow"] ** 3,
    "tributary_width": lambda n: n["left"] / 2 + n["right"] / 2,
    "line_load": lambda n: (n["dead"] / psf + n["live"] / psf) * (n["span"] / ft / 2) * plf,
    "slope_to_plan": lambda n: n["on_slope"] / math.cos(math.atan(n["rise"] / 12)),
    "middle_wall": lambda n: Fraction(10, 8) * Fraction((n["dead"] + n["live"]) * n["span"]),
    "joist_count": lambda n: -(-round(n["length"] / inch) // round(n["spacing"] / inch)) + 1,
    "end_reaction": lambda n: n["load"] / plf * n["span"] / ft / 2 * lb,
    "greatest_moment": lambda n: n["load"] / plf * (n["span"] / ft) ** 2 / 8 * lb * ft,
    "required_modulus": lambda n: n["load"] / plf * (n["span"] / ft) ** 2 / 8 * 12 / (n["stress"] / psi) * inch**3,
    "bearing_length": lambda n: n["load"] / plf * n["span"] / ft / 2 / (n["plies"] * 1.5 * n["crushing"] / psi) * inch,
    "live_sag": lambda n: (
        5
        * (n["live"] / plf / 12)
        * (n["span"] / inch) ** 4
        / (384 * n["modulus"] / psi * _i(1.5, n["depth"] / inch, n["plies"]))
        * inch
    ),
    "level_by_level": (
        lambda n: (
            (
                (n["roof_dead"] + n["snow"]) / psf * n["house"] / ft / 2
                + (n["attic_dead"] + n["attic_live"] + n["floor_dead"] + n["floor_live"]) / psf * n["house"] / ft / 4
                + n["wall"] / psf * n["height"] / ft
            )
            * plf
        )
    ),
    "what_governs": lambda n: max(
        ("bending", "shear", "bearing", "sag"), key=lambda c: n[f"{c} asked"] / n[f"{c} given"]
    ),
    "nearer_support": lambda n: n["load"] * (n["span"] - n["place"]) / n["span"],
    "moment_under_load": lambda n: n["load"] * n["place"] * (n["span"] - n["place"]) / n["span"],
    "shear_on_the_way": lambda n: n["load"] * (n["span"] / 2 - n["place"]),
    "over_the_support": lambda n: n["load"] * n["span"] ** 2 / 8,
    "longer_span": lambda n: Fraction(n["after"], n["before"]) ** 4,
    "plies_to_match": lambda n: math.ceil(
        Fraction(n["plies"])
        * Fraction(n["deep"] / inch).limit_denominator(16) ** 3
        / Fraction(n["shallow"] / inch).limit_denominator(16) ** 3
    ),
}
# The other notebooks' answers by hand stand in files of their own.
for _path in sorted((Path(__file__).parent / "by_hand").glob("*.py")):
    BY_HAND |= runpy.run_path(str(_path))["BY_HAND"]


def test_every_kind_is_worked_by_hand_here():
    compared_below = {"many_or_deep", "edge_or_flat"}
    assert set(BY_HAND) | compared_below == set(ALL_KINDS)


@pytest.mark.parametrize("kind", BY_HAND)
def test_the_answer_is_what_hand_arithmetic_gives(kind):
    for seed, question in enumerate(made(kind)):
        expected = BY_HAND[kind](question.numbers)
        if question.tolerance == 0:
            assert question.answer == expected, seed
        else:
            assert question.answer == pytest.approx(float(expected), rel=1e-9), seed


def asked(kind, fits):
    """The first question of a kind whose prompt fits a pattern."""
    questions = (exercises.make_question(kind, seed) for seed in range(2000))
    return next(question for question in questions if re.search(fits, question.prompt))


@pytest.mark.parametrize(
    ("kind", "fits", "expected"),
    [  # exact fractions of the dressed sizes 5 1/2, 7 1/4, 9 1/4 and 11 1/4 in by 1 1/2 in
        ("many_or_deep", r"^2 dry 2x8s .* one dry 2x10\. .* bending strength", 2 * Fraction(29, 37) ** 2),
        ("many_or_deep", r"^2 dry 2x8s .* one dry 2x10\. .* stiffness", 2 * Fraction(29, 37) ** 3),
        ("many_or_deep", r"^2 dry 2x6s .* one dry 2x12\. .* bending strength", 2 * Fraction(22, 45) ** 2),
        ("many_or_deep", r"^2 dry 2x6s .* one dry 2x12\. .* stiffness", 2 * Fraction(22, 45) ** 3),
        ("edge_or_flat", r"dry 2x10 .* stiffer", Fraction(37, 6) ** 2),
        ("edge_or_flat", r"dry 2x10 .* stronger", Fraction(37, 6)),
        ("plies_to_match", r"many dry 2x6s.* as one dry 2x12", 9),
    ],
)
def test_well_known_comparisons_come_out(kind, fits, expected):
    assert asked(kind, fits).answer == pytest.approx(float(expected), rel=1e-9)


def test_twenty_feet_eight_at_sixteen_inches_takes_seventeen_joists():
    question = asked("joist_count", r"20 ft 8 in long.* 16 in\.")
    assert question.answer == 17
    assert "+1 forgotten" in exercises.judge(question, "16 joists").mistake
    assert "rounded down" in exercises.judge(question, "15").mistake


@pytest.mark.parametrize(
    ("kind", "slip"),
    [
        ("section_modulus", "nominal size"),
        ("section_modulus", "width and depth swapped"),
        ("section_modulus", "one ply only"),
        ("tributary_width", "half span forgotten"),
        ("line_load", "live load only"),
        ("line_load", "half span forgotten"),
        ("middle_wall", "taken as cut joists"),
        ("slope_to_plan", "slope forgotten"),
        ("level_by_level", "upper wall forgotten"),
        ("greatest_moment", "the 8 forgotten"),
        ("greatest_moment", "half the span"),
        ("greatest_moment", "(x12)"),
        ("end_reaction", "half span forgotten"),
        ("required_modulus", "feet and inches mixed (x12)"),
        ("live_sag", "total load instead of live"),
        ("live_sag", "the 1728 forgotten"),
        ("bearing_length", "(x144)"),
        ("bearing_length", "one ply only"),
        ("plies_to_match", "rounded down"),
        ("joist_count", "the +1 forgotten"),
        ("what_governs", "greatest number"),
    ],
)
def test_the_slips_that_students_make_have_a_name(kind, slip):
    names = [m.name for question in made(kind)[:100] for m in question.mistakes]
    assert sum(slip in name for name in names) >= 10


@pytest.mark.parametrize("kind", ALL_KINDS)
def test_words_are_short_and_claim_nothing(kind):
    for _seed, question in enumerate(made(kind)[:100]):
        texts = [question.prompt, question.solution, *question.hints]
        texts += [text for m in question.mistakes for text in (m.name, m.message)]
        texts += [exercises.judge(question, text).message for text in typed(question.answer, question)]
        for text in texts:
            assert not re.search(r"\b(safe|safely|approved|approve)\b", text, re.IGNORECASE), text
            assert text.count("{") == text.count("}") and text.count("(") == text.count(")"), text
            assert "nan" not in re.findall(r"\w+", text.lower())
        for sentence in re.split(r"[.?:]\s", question.prompt):
            assert len(sentence.split()) <= 26, sentence


@pytest.mark.parametrize("kind", ALL_KINDS)
def test_a_prompt_says_what_is_asked_with_unit_and_rounding(kind):
    unit = {
        "length": "feet (ft)",
        "small length": "inches (in)",
        "section modulus": "cubic inches (in³)",
        "force": "pounds (lb)",
        "line load": "pounds per foot (plf)",
        "moment": "pound-feet (lb-ft)",
        "area load": "pounds per square foot (psf)",
        "ratio": "plain number",
        "count": "whole number",
        "word": "one of these, without unit",
    }
    for _seed, question in enumerate(made(kind)[:100]):
        asks, _, how = question.prompt.rpartition("? ")
        assert asks and unit[question.dimension] in how
        assert ("exact" in how) if question.dimension == "count" else ("2 %" in how or "rounding" in how)
        assert len(question.hints) == 3
        assert "____" in question.hints[1] and "____" not in question.hints[2]
        assert "**" in question.solution


@pytest.mark.parametrize("kind", ALL_KINDS)
def test_the_bold_answer_of_the_solution_would_be_judged_right(kind):
    for seed, question in enumerate(made(kind)[:100]):
        bold = re.findall(r"\*\*(.+?)\*\*", question.solution)
        assert len(bold) == 1
        assert exercises.judge(question, bold[0]).right, (seed, bold)


@pytest.mark.parametrize(
    "text",
    [
        None,
        "",
        "   ",
        "twelve-ish",
        "12",
        "nan ft",
        "inf ft",
        "-",
        "1/0 ft",
        "1e400 ft",
        "1e99 ft",
        "1e99 lb-ft",
        "١٢ ft",
        "12 bananas",
        "9" * 500,
        "ft 12",
        "12 ft 6 ft",
        b"12 ft",
        [],
        {},
        True,
        12.5,
        object,
        "\x00",
        "{",
        "12 ft²",
        "12 lb",
    ],
)
@pytest.mark.parametrize("kind", ["tributary_width", "greatest_moment"])
def test_what_cannot_be_read_is_asked_about_in_one_sentence(kind, text):
    verdict = exercises.judge(exercises.make_question(kind, 3), text)
    assert verdict.asks and not verdict.right and not verdict.mistake
    assert verdict.message[0].isupper() or not verdict.message[0].isalpha()
    assert verdict.message.endswith((".", "?")) and "\n" not in verdict.message


@pytest.mark.parametrize("text", ["2.5", "3 ft", "many", "", None, "1/2", "-", "3 in", "1e400", "two and a half"])
def test_a_count_must_be_a_count(text):
    assert exercises.judge(exercises.make_question("plies_to_match", 3), text).asks


def test_a_count_may_be_typed_in_many_ways():
    question = replace(exercises.make_question("plies_to_match", 3), answer=3, mistakes=())
    for text in ("3", " 3 plies", "3-ply", "Three", "three boards", "3.0", 3):
        assert exercises.judge(question, text).right, text


def test_a_ratio_may_be_typed_in_many_ways():
    question = replace(exercises.make_question("stiffer_by_depth", 3), answer=1.5, mistakes=())
    for text in (
        "1.5",
        "1.5x",
        "x1.5",
        "1.5 times",
        "1.5-fold",
        "150 %",
        "150%",
        "150 per cent",
        "3:2",
        "3 to 2",
        "3/2",
        "1.50×",
        1.5,
    ):
        assert exercises.judge(question, text).right, text
    for text in ("1.5 in", "1,5", "3:0", "x", "1.5 2", "three halves"):
        assert exercises.judge(question, text).asks, text
    assert exercises.judge(question, "150").mistake == "per cent sign missing"


def test_a_word_may_be_typed_in_many_ways_but_not_denied():
    question = replace(exercises.make_question("what_governs", 3), answer="sag", mistakes=())
    for text in ("sag", "SAG!", "the sag governs", "deflection"):
        assert exercises.judge(question, text).right, text
    for text in ("not sag", "sag or shear", "it isn't sag", "strength", "", None, "12 in", "sagging?"):
        assert exercises.judge(question, text).asks, text
    assert not exercises.judge(question, "bending moment").right


def test_a_wrong_dimension_and_a_missing_unit_are_told_apart():
    question = exercises.make_question("end_reaction", 1)
    assert "length" in exercises.judge(question, "12 ft").message
    assert "no unit" in exercises.judge(question, "1500").message


@pytest.mark.parametrize(
    ("factor", "name"),
    [
        (12, "factor 12"),
        (1 / 12, "factor 12"),
        (144, "factor 144"),
        (1728, "factor 1728"),
        (-1, "sign slip"),
        (10, "power of ten"),
        (0.001, "power of ten"),
        (2, "factor 2"),
        (0.5, "factor 2"),
        (3.3, ""),
    ],
)
def test_a_slip_without_its_own_name_is_still_recognised(factor, name):
    question = replace(exercises.make_question("end_reaction", 1), mistakes=())
    verdict = exercises.judge(question, f"{factor * question.answer / lb} lb")
    assert verdict.mistake == name and not verdict.right


def test_the_deviation_is_told_in_per_cent():
    question = replace(exercises.make_question("end_reaction", 1), mistakes=())
    verdict = exercises.judge(question, f"{1.25 * question.answer / lb} lb")
    assert "25 % too high" in verdict.message
    verdict = exercises.judge(question, f"{0.97 * question.answer / lb} lb")
    assert "3.0 % too low" in verdict.message and "close" in verdict.message
    assert "1.0 % apart" in exercises.judge(question, f"{1.01 * question.answer / lb} lb").message


def test_mistakes_near_the_answer_go_and_twins_are_merged():
    question = replace(
        exercises.make_question("end_reaction", 1),
        answer=100.0,
        mistakes=(
            exercises.Mistake(103.9, "near", "Near."),
            exercises.Mistake(50.0, "first", "One."),
            exercises.Mistake(50.5, "second", "Two."),
            exercises.Mistake(60.0, "third", "Three."),
        ),
    )
    kept = settle(question)
    assert [m.name for m in kept] == ["first, or second", "third"]
    assert kept[0].message == "One. Or else: Two."


@pytest.mark.parametrize("seed", [-1, 1_000_000, 1.0, "3", None, True, math.nan, [1]])
def test_a_seed_that_is_no_seed_is_refused(seed):
    with pytest.raises(BadInput, match="whole number"):
        exercises.make_question("line_load", seed)


def test_an_unknown_kind_is_refused_with_the_nearest():
    with pytest.raises(BadInput, match="line_load"):
        exercises.make_question("line_lod", 1)


@pytest.mark.parametrize("kind", ALL_KINDS)
def test_sheet_and_key_come_from_the_same_seeds(kind):
    sheet, key = exercises.answer_sheet(kind, [3, 14]), exercises.answer_key(kind, [3, 14])
    for seed in (3, 14):
        question = exercises.make_question(kind, seed)
        assert question.prompt in sheet and question.solution in key
        assert question.solution not in sheet
        assert f"Seed {seed}" in sheet and f"Seed {seed}" in key
        assert all(mistake.name in key for mistake in question.mistakes)
    assert sheet == exercises.answer_sheet(kind, (3, 14))


@pytest.mark.parametrize("seeds", [[], 3, None, ["a"], [1, -1]])
def test_a_sheet_without_seeds_is_refused(seeds):
    with pytest.raises(BadInput):
        exercises.answer_sheet("line_load", seeds)


# What a learner has done


def _progress():
    question = exercises.make_question("end_reaction", 1)
    text = f"{question.answer / lb} lb"
    progress = exercises.Progress().with_hint(question)
    progress = progress.with_answer(question, "what?", exercises.judge(question, "what?"))
    progress = progress.with_answer(question, "1 lb", exercises.judge(question, "1 lb"))
    return progress.with_answer(question, text, exercises.judge(question, text))


def test_progress_counts_tries_and_hints_but_not_what_was_asked_back():
    progress = _progress()
    record = progress.of("end_reaction", 1)
    assert (record.tries, record.hints, record.right) == (2, 1, True)
    assert progress.right_in("end_reaction") == 1 and progress.right_in("line_load") == 0
    assert progress.of("end_reaction", 2) == exercises.Try()


def test_progress_survives_the_file(tmp_path):
    path = tmp_path / "progress.json"
    assert exercises.load_progress(path) == exercises.Progress()
    exercises.save_progress(_progress(), path)
    assert exercises.load_progress(path) == _progress()
    assert [file.name for file in tmp_path.iterdir()] == ["progress.json"]


def test_two_pages_that_save_do_not_wipe_each_other(tmp_path):
    path = tmp_path / "progress.json"
    exercises.save_progress(_progress(), path)
    other = exercises.make_question("line_load", 9)
    exercises.save_progress(exercises.Progress().with_hint(other), path)
    found = exercises.load_progress(path)
    assert found.of("end_reaction", 1).right and found.of("line_load", 9).hints == 1


BROKEN = [
    b"",
    b"{",
    b"[]",
    b"null",
    b"\xff\xfe\x00",
    b'{"version": 2, "done": {}}',
    b'{"version": 1}',
    b'{"version": 1, "done": {"a-1": {"tries": "x"}}}',
    b'{"version": 1, "done": {"a-1": {"other": 1}}}',
    b'{"version": 1, "done": []}',
    b'{"version": 1, "done": {"a-1": {"tries": -1}}}',
    b"[" * 100_000,
]


@pytest.mark.parametrize("content", BROKEN, ids=lambda content: repr(content[:24]))
def test_a_broken_file_is_kept_aside_and_never_overwritten(tmp_path, content):
    path = tmp_path / "progress.json"
    path.write_bytes(content)
    saved = exercises.save_progress(_progress(), path)
    assert "progress.json.unreadable-1" in saved.note
    assert (tmp_path / "progress.json.unreadable-1").read_bytes() == content
    assert exercises.load_progress(path).of("end_reaction", 1).right
    path.write_bytes(content)
    assert "unreadable-2" in exercises.load_progress(path).note
    assert (tmp_path / "progress.json.unreadable-1").read_bytes() == content


def test_a_failed_write_leaves_the_old_file_whole(tmp_path, monkeypatch):
    path = tmp_path / "progress.json"
    exercises.save_progress(_progress(), path)
    before = path.read_bytes()

    def full(*_):
        raise OSError(28, "No space left on device")

    monkeypatch.setattr("os.fsync", full)
    with pytest.raises(BadInput, match="No space left"):
        exercises.save_progress(_progress(), path)
    assert path.read_bytes() == before
    assert [file.name for file in tmp_path.iterdir()] == ["progress.json"]


def test_a_folder_that_is_not_there_is_told(tmp_path):
    with pytest.raises(BadInput, match="could not be written"):
        exercises.save_progress(_progress(), tmp_path / "nowhere" / "progress.json")
    with pytest.raises(BadInput, match="may not be opened"):
        exercises.load_progress(tmp_path)


def test_the_progress_file_is_small_and_readable(tmp_path):
    path = tmp_path / "progress.json"
    exercises.save_progress(_progress(), path)
    record = json.loads(path.read_text(encoding="utf-8"))
    assert record["version"] == 1
    assert set(record["done"]["end_reaction-1"]) == {"tries", "hints", "right", "last"}
