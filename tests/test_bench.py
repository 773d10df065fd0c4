"""The benches of the pages without a browser: every control moved to its ends, and what is read then."""

import html
import importlib
import inspect
import random
import re
from collections import defaultdict
from functools import cache
from pathlib import Path

import pytest

from structlib.ground.refusals import BadInput
from structlib.ground.units import ft, inch
from structlib.pages.kit import questions as exercises
from structlib.pages.kit.bench import Bench, Practice, Predict, picture_html
from structlib.pages.kit.controls import Box, Pick, Slide, Steps, Switch
from structlib.pages.kit.prediction import Prediction
from structlib.pages.kit.questions.wording import say
from structlib.pages.kit.show import start_values
from structlib.pages.topics import every
from structlib.pages.topics.beam.page import BeamPage
from structlib.pages.topics.boards.page import BoardsPage

PAGES = Path(__file__).resolve().parents[1] / "structlib" / "pages"


def _page_classes():
    found = {}
    for path in sorted(PAGES.glob("topics/*/*.py")):
        module = importlib.import_module(f"structlib.pages.topics.{path.parent.name}.{path.stem}")
        for name, kind in inspect.getmembers(module, inspect.isclass):
            if kind.__module__ == module.__name__ and hasattr(kind, "controls"):
                found[name] = kind
    return found


PAGE_CLASSES = _page_classes()
every_page = pytest.mark.parametrize("kind", PAGE_CLASSES.values(), ids=PAGE_CLASSES)
both_systems = pytest.mark.parametrize("system", ["us", "metric"])


# ---- reading a bench as the page does: by the class names of its widgets ----


def _all_widgets(widget):
    yield widget
    for child in getattr(widget, "children", ()):
        yield from _all_widgets(child)


def _widget(bench, css):
    found = [widget for widget in _all_widgets(bench) if css in getattr(widget, "_dom_classes", ())]
    assert len(found) == 1, f"{len(found)} widgets have the class {css}"
    return found[0]


def _by_class(bench):
    """All widgets by each of their class names, in one walk."""
    found = defaultdict(list)
    for widget in _all_widgets(bench):
        for css in getattr(widget, "_dom_classes", ()):
            found[css].append(widget)
    return found


def _button(bench, description):
    named = [widget for widget in _all_widgets(bench) if getattr(widget, "description", "") == description]
    return next(widget for widget in named if hasattr(widget, "click"))


def _status(bench):
    return html.unescape(re.sub("<.*?>", "", _widget(bench, "sl-status").value))


def _picture(bench):
    return _widget(bench, "sl-picture").value


def _alt(bench):
    return html.unescape(re.search(r'aria-label="(.*?)"', _picture(bench)).group(1))


def _size(bench):
    return re.search(r'viewBox="(.*?)"', _picture(bench)).group(1)


def _table(bench):
    """The rows of the table as text, without its head."""
    body = re.search("<tbody>(.*?)</tbody>", _picture(bench), re.S).group(1)
    return tuple(
        tuple(html.unescape(cell) for cell in re.findall("<td>(.*?)</td>", row, re.S))
        for row in re.findall("<tr>(.*?)</tr>", body, re.S)
    )


def _controls(bench):
    return {control.name: control for control in bench.page.controls(bench.values)}


def _moved_by(control):
    """Class name of the widget that moves a control."""
    if isinstance(control, (Slide, Steps)):
        return f"sl-slider-{control.name}"
    return f"sl-box-{control.name}" if isinstance(control, Box) else f"sl-pick-{control.name}"


def _corners(control):
    """The values at which a control is tried: both ends and where it starts; every choice of a list."""
    if isinstance(control, Pick):
        return [value for _, value in control.options]
    if isinstance(control, Switch):
        return [False, True]
    if isinstance(control, Steps):
        return [control.values[0], control.default, control.values[-1]]
    return [control.low, control.default, control.high]


def _move(bench, name, value):
    """Move one control as the reader does: a slider or a list by its value, a box by typing."""
    control = _controls(bench)[name]
    if isinstance(control, Steps):
        value = control.nearest(value)
    if isinstance(control, Box):
        value = control.text(value, bench.system)
    _widget(bench, _moved_by(control)).value = value


def _is_sentence(text):
    """Whether a message reads as one; what it quotes of the reader's own text does not count."""
    own_words = re.sub(r"'.*?'|got \S+", "", text, flags=re.S)
    broken = re.search(r"Traceback|Error\b|<|\bNone\b|\bnan\b|object at", own_words)
    return len(text) > 15 and " " in text and not broken


def _assert_sound(bench, size, what):
    """What holds after every move: same height, a clean status line, and the numbers of the values set."""
    assert _size(bench) == size, f"{what}: the picture changed its size"
    assert _status(bench) == "" or _is_sentence(_status(bench)), f"{what}: {_status(bench)!r}"
    assert not re.search(r"\bnan\b|\binf\b|Traceback", _alt(bench)), f"{what}: {_alt(bench)}"
    by_class = _by_class(bench)
    for control in _controls(bench).values():
        value, (widget,) = bench.values[control.name], by_class[_moved_by(control)]
        shown = control.text(value, bench.system) if isinstance(control, Box) else value
        assert widget.value == shown, f"{what}: {control.name} shows {widget.value!r}, not {shown!r}"
        if isinstance(control, (Slide, Steps)):
            (box,) = by_class[f"sl-box-{control.name}"]
            assert box.value == control.text(value, bench.system), what
    before = None if bench.before is None else tuple(bench.before.items())
    fresh = _rows_of_a_fresh_page(type(bench.page), bench.page.system, tuple(bench.values.items()), before)
    assert _table(bench) == fresh, f"{what}: the table is not that of the values shown"


@cache
def _rows_of_a_fresh_page(kind, system, values, before):
    """What a page that was never asked anything else answers; many ways lead to the same values."""
    return kind(system=system).compute(dict(values), None if before is None else dict(before)).rows


# ---- every page, every control ----

#: All corners of three sliders, so that from each to the next one slider moves.
AROUND = [(0, 0, 0), (0, 0, 1), (0, 1, 1), (0, 1, 0), (1, 1, 0), (1, 1, 1), (1, 0, 1), (1, 0, 0)]


@every_page
def test_the_first_three_controls_are_span_depth_and_plies(kind):
    first = kind().controls({})[:3]
    assert [control.name for control in first] == ["span", "depth", "plies"]
    assert all(isinstance(control, (Slide, Steps)) for control in first)


@every_page
@both_systems
def test_every_control_alone_at_its_ends(kind, system):
    bench = Bench(kind(system=system))
    size = _size(bench)
    for name, control in _controls(bench).items():
        for value in _corners(control):
            _move(bench, name, value)
            _assert_sound(bench, size, f"{name} at {value}")
        _button(bench, "Start again").click()


@every_page
def test_the_three_sliders_at_all_corners_with_every_choice(kind):
    bench = Bench(kind())
    size, controls = _size(bench), _controls(bench)
    lists = [control for control in controls.values() if isinstance(control, (Pick, Switch))]
    as_it_starts = 0
    for control in lists:
        for choice in _corners(control):
            if choice == control.default:  # for every list these are the corners of the page as it starts
                as_it_starts += 1
                if as_it_starts > 1:
                    continue
            _button(bench, "Start again").click()
            _move(bench, control.name, choice)
            # the depths on offer may have changed with the choice
            corners = {name: _corners(_controls(bench)[name])[::2] for name in ("span", "depth", "plies")}
            for ends in AROUND:
                values = {name: corners[name][end] for name, end in zip(corners, ends)}
                for name, value in values.items():
                    _move(bench, name, value)
                _assert_sound(bench, size, f"{control.name} {choice} with {values}")


@every_page
@pytest.mark.parametrize("end", [0, -1], ids=["least", "greatest"])
def test_every_control_at_one_end_together(kind, end):
    bench = Bench(kind())
    size = _size(bench)
    for name, control in _controls(bench).items():
        _move(bench, name, _corners(control)[end])
        _assert_sound(bench, size, f"{name} and all before it")


@every_page
@both_systems
def test_any_value_in_range_is_drawn(kind, system):
    """A reader types what was measured on site, not what a slider steps to."""
    bench, chance = Bench(kind(system=system)), random.Random(7)
    controls = [control for control in _controls(bench).values() if isinstance(control, (Slide, Box))]
    refused = []
    for _ in range(40):
        for control in controls:
            if control.dimension == "count":
                continue
            text = control.text(control.low + (control.high - control.low) * chance.random() ** 2, system)
            _widget(bench, f"sl-box-{control.name}").value = text
            if "too long" in _status(bench) or "drawing" in _status(bench):
                refused.append(f"{control.name} {text}: {_status(bench)}")
    assert not refused, f"{len(refused)} values have no picture, such as {refused[0]}"


@every_page
@pytest.mark.parametrize("name", ["span", "depth", "plies"])
def test_a_slider_changes_the_alternative_text(kind, name):
    bench = Bench(kind())
    before = _alt(bench)
    for value in _corners(_controls(bench)[name])[::2]:
        if value != bench.values[name]:
            _move(bench, name, value)
            assert _alt(bench) != before
            before = _alt(bench)


def test_twice_the_depth_with_the_same_wood_reads_four_times_as_stiff():
    bench = Bench(BoardsPage())
    _widget(bench, "sl-box-depth").value = "14 1/2 in"
    rows = {row[0].split(":")[0]: row[-1] for row in _table(bench)}
    # width b/2, depth 2d: stiffness (b/2)(2d)^3 = 4 b d^3, strength (b/2)(2d)^2 = 2 b d^2
    assert (rows["stiffness"], rows["strength"], rows["wood"]) == ("4.00 x", "2.00 x", "1.00 x")


# ---- what is typed ----

NONSENSE = [
    "banana",
    "",
    "   ",
    "nan",
    "inf",
    "-inf",
    "-3",
    "-3 ft",
    "1e400",
    "9" * 400,
    "12 parsecs",
    "12",
    "400 ft",
    "0",
    "2 1/0 in",
    "<script>alert(1)</script>",
    "1.5",
    "99",
    "\x00",
]


@every_page
@pytest.mark.parametrize("text", NONSENSE, ids=lambda text: repr(text)[:14])
def test_bad_text_changes_nothing_and_is_answered_with_a_sentence(kind, text):
    bench = Bench(kind())
    for name, control in _controls(bench).items():
        if isinstance(control, (Pick, Switch)):
            continue
        field = _widget(bench, f"sl-box-{name}")
        try:
            control.value(text, "us")
        except BadInput:
            pass
        else:
            continue  # this control takes it
        values, shown, picture = dict(bench.values), field.value, _picture(bench)
        _button(bench, "Start again").click()
        field.value = text
        assert bench.values == values and _picture(bench) == picture
        assert field.value == shown, "the box keeps what cannot be read"
        assert _is_sentence(_status(bench)), _status(bench)
        assert "<script" not in _widget(bench, "sl-status").value


def test_plies_are_whole_and_said_so():
    bench = Bench(BeamPage())
    before = bench.values["plies"]
    for text in ("2.5", "nan", "inf", "1e400", "9" * 400, "two"):
        _widget(bench, "sl-box-plies").value = text
        assert "must be a whole number" in _status(bench) and len(_status(bench)) < 100
        assert bench.values["plies"] == before


def test_a_good_value_clears_the_complaint():
    bench = Bench(BeamPage())
    _widget(bench, "sl-box-span").value = "banana"
    _widget(bench, "sl-box-span").value = "10 ft 3 in"
    assert _status(bench) == "" and bench.values["span"] == pytest.approx(10.25 * ft)


def test_a_depth_that_is_not_sold_is_taken_to_the_nearest_and_said_so():
    bench = Bench(BeamPage())
    _widget(bench, "sl-box-depth").value = "9 in"
    assert bench.values["depth"] == pytest.approx(9.25 * inch)
    assert "9 1/4 in" in _status(bench)


def test_the_factor_for_three_plies_is_said_where_it_is_taken():
    """NDS 4.3.9: 1.15 for three or more; 2-ply beams and timbers have none."""

    def told(**changes):
        page = BeamPage()
        return [note for note in page.compute(start_values(page, **changes)).notes if "repetitive" in note]

    assert told(plies=2) == [] and told(plies=3, wood="fir timber") == []
    assert len(told(plies=3)) == 1 and "1.15" in told(plies=3)[0] and "NDS 2018 4.3.9" in told(plies=3)[0]


def test_depths_follow_the_wood():
    bench = Bench(BeamPage())
    _move(bench, "wood", "fir timber")
    assert bench.values["depth"] == pytest.approx(11.5 * inch)
    assert _widget(bench, "sl-slider-depth").value == bench.values["depth"]
    assert "11 1/2 in" in _status(bench)


class RefusingPage(BoardsPage):
    """A page whose rule does not cover the longest spans."""

    def compute(self, values, before=None):
        if values["span"] > 15 * ft:
            raise BadInput("the span must be at most 15 ft here; for example 12 ft")
        return super().compute(values, before)


def test_a_refusal_of_the_page_moves_the_slider_back():
    bench = Bench(RefusingPage())
    picture = _picture(bench)
    _move(bench, "span", 20 * ft)
    assert _status(bench) == "the span must be at most 15 ft here; for example 12 ft"
    assert bench.values["span"] == _widget(bench, "sl-slider-span").value == 12 * ft
    assert _widget(bench, "sl-box-span").value == "12 ft" and _picture(bench) == picture


@every_page
def test_the_picture_compares_with_what_was_before_this_control_moved(kind):
    bench = Bench(kind())
    start = dict(bench.values)

    def drawn(before):
        return picture_html(kind().compute(dict(bench.values), before))

    span, plies = _controls(bench)["span"], _controls(bench)["plies"]
    for value in (span.low + 2 * span.step, span.low + 9 * span.step):
        _move(bench, "span", value)
        assert _picture(bench) == drawn(start)
    held = dict(bench.values)
    _move(bench, "plies", plies.high)
    assert _picture(bench) == drawn(held)


def test_a_refused_move_leaves_the_comparison_alone():
    bench = Bench(RefusingPage())
    _move(bench, "depth", 9 * inch)
    before = dict(bench.before)
    _move(bench, "span", 20 * ft)
    _move(bench, "depth", 10 * inch)
    assert bench.before == before


# ---- starting, and starting again ----


@every_page
def test_start_again_restores_everything(kind):
    bench = Bench(kind())
    values, picture = dict(bench.values), _picture(bench)
    shown = {css: _widget(bench, css).value for css in map(_moved_by, _controls(bench).values())}
    for name, control in _controls(bench).items():
        _move(bench, name, _corners(control)[-1])
    assert _picture(bench) != picture
    _button(bench, "Start again").click()
    assert bench.values == values and _picture(bench) == picture
    assert {css: _widget(bench, css).value for css in shown} == shown


def test_start_again_returns_to_the_values_the_bench_was_given():
    bench = Bench(BeamPage(), wood="lvl 2.0", span=10 * ft)
    first = dict(bench.values)
    _move(bench, "wood", "hem-fir")
    _move(bench, "span", 5 * ft)
    _button(bench, "Start again").click()
    assert bench.values == first and first["wood"] == "lvl 2.0"


@pytest.mark.parametrize("wood", ["fir timber", "lvl 1.9", "hem-fir"])
def test_a_starting_wood_brings_its_own_depths(wood):
    bench = Bench(BeamPage(), wood=wood)
    _assert_sound(bench, _size(bench), wood)


@pytest.mark.parametrize(
    "start",
    [
        {"spam": 1.0},
        {"span": 400 * ft},
        {"span": -1.0},
        {"span": "12 ft"},
        {"span": float("nan")},
        {"span": 12},
        {"plies": 0},
        {"plies": 2.5},
        {"depth": 2000.0},
        {"wood": "oak"},
        {"below": "sand"},
        {"dead": -1.0},
        {"braced": ""},
    ],
    ids=str,
)
def test_a_bad_start_is_refused_with_a_sentence(start):
    with pytest.raises(BadInput) as refusal:
        Bench(BeamPage(), **start)
    assert _is_sentence(str(refusal.value)), str(refusal.value)


def test_an_unknown_control_is_told_which_there_are():
    with pytest.raises(BadInput, match="no control 'spam'; it has span, depth, plies"):
        Bench(BoardsPage(), spam=1.0)


def test_the_bench_speaks_the_units_of_its_page():
    bench = Bench(BeamPage(system="metric"))
    assert _widget(bench, "sl-box-depth").value.endswith("mm")
    assert "kN/m" in _widget(bench, "sl-box-dead").value


# ---- predicting and practising ----

PREDICTIONS = {
    name: make for name, make in every.all_of("predictions").items() if not inspect.signature(make).parameters
}


@pytest.mark.parametrize("name", PREDICTIONS)
def test_a_prediction_is_answered_only_after_a_choice(name):
    question = PREDICTIONS[name]()
    wrong = next(choice for choice in question.choices if choice != question.right)
    for choice, word in ((question.right, "Yes."), (wrong, f"Not quite: {question.right}.")):
        asked = Predict(question)
        button = _button(asked, "Show me")
        choices = next(w for w in _all_widgets(asked) if hasattr(w, "options"))
        answer = list(_all_widgets(asked))[-1]
        assert button.disabled and choices.value is None and answer.value == ""
        button.click()
        assert answer.value == "", "the answer shows before a choice"
        choices.value = choice
        assert not button.disabled and answer.value == ""
        button.click()
        told = html.unescape(re.sub("<.*?>", "", answer.value))
        assert told.startswith(word) and question.because in told


def test_a_prediction_without_its_right_answer_is_refused():
    with pytest.raises(BadInput, match="must be one of the choices"):
        Predict(Prediction("How much?", ("one", "two"), "three", "because"))


def _practice_parts(practice):
    widgets = list(_all_widgets(practice))
    field = next(w for w in widgets if getattr(w, "placeholder", "") == "number and unit")
    prompt, verdict, helped = [w for w in practice.children if type(w).__name__ == "HTML"][-3:]
    return field, prompt, verdict, helped


@pytest.mark.parametrize("notebook", exercises.kinds())
def test_practice_judges_every_kind_of_question(notebook):
    practice = Practice(notebook)
    pick = next(w for w in _all_widgets(practice) if getattr(w, "description", "") == "Question")
    field, prompt, verdict, helped = _practice_parts(practice)
    for kind in exercises.kinds(notebook):
        pick.value = kind
        assert practice.question.kind == kind and len(prompt.value) > 50
        field.value = "banana"
        assert len(verdict.value) > 20 and "Right" not in verdict.value and "Traceback" not in verdict.value
        question = practice.question
        field.value = say(question.answer, question.dimension)
        assert "Right" in verdict.value, f"{kind}: {field.value}: {verdict.value}"
        if question.dimension != "word":
            field.value = say(3 * question.answer + 1, question.dimension)
            assert "Not yet" in verdict.value, f"{kind}: {field.value}: {verdict.value}"
        _button(practice, "Hint").click()
        _button(practice, "Hint").click()
        assert helped.value.count("Hint ") == 2
        _button(practice, "Worked solution").click()
        assert len(helped.value) > 50 and "Hint 1" not in helped.value


def test_fresh_numbers_ask_anew_and_clear_what_was_said():
    practice = Practice("01")
    field, prompt, verdict, _ = _practice_parts(practice)
    first = prompt.value
    field.value = "1 in3"
    assert verdict.value
    _button(practice, "Fresh numbers").click()
    assert prompt.value != first and field.value == "" and verdict.value == ""


def test_practice_keeps_tries_in_a_file_only_when_asked(tmp_path):
    kept = tmp_path / "progress.json"
    field, *_ = _practice_parts(Practice("01"))
    field.value = "1 in3"
    assert not list(tmp_path.iterdir())
    field, *_ = _practice_parts(Practice("01", progress=str(kept)))
    field.value = "1 in3"
    assert [one.tries for one in exercises.load_progress(str(kept)).done.values()] == [1]


def test_an_unknown_notebook_has_no_practice():
    with pytest.raises(BadInput, match="notebook"):
        Practice("99")
