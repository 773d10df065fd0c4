"""Derivations: proved against the function that runs, printable, and the same every time."""

import importlib
import re
import subprocess
import sys
from types import SimpleNamespace

import pytest
import sympy

from structlib.ground.refusals import BadInput
from structlib.ground.units import ft, inch, lb, plf, psf, psi
from structlib.mechanics import formulas
from structlib.pages.kit import proofs
from structlib.pages.topics import every

derivations = SimpleNamespace(**every.all_of("derivations"))
ALL = tuple(vars(derivations))


@pytest.fixture(params=ALL)
def derivation(request):
    return getattr(derivations, request.param)()


def test_every_derivation_is_proved_and_ends_in_a_function_that_exists(derivation):
    assert derivation.proved is True and derivation.ends_in
    for name in derivation.ends_in:
        room, _, function = name.rpartition(".")
        assert callable(getattr(importlib.import_module(f"structlib.{room}"), function))


def test_a_step_is_a_short_sentence_and_a_formula(derivation):
    assert len(derivation.steps) >= 5
    for sentence, formula in proofs.steps_as_latex(derivation):
        assert sentence.endswith(".") and all(len(part.split()) <= 18 for part in sentence.split(". "))
        assert formula.count("{") == formula.count("}")
        assert formula.count(r"\left") == formula.count(r"\right")
        assert not re.search(r"a\d\d", formula), "a name that only sorts must not be printed"
        assert not re.search(r"\b(safe|approved)\b", sentence)


@pytest.mark.parametrize(
    ("name", "formulas_shown"),
    [
        (
            "section_of_a_rectangle",
            [r"I = \frac{b d^{3}}{12}", r"S = \frac{b d^{2}}{6}", r"\frac{I_{2d}}{I_d} = 8"],
        ),
        (
            "tributary_line_load",
            [r"R = \frac{w L}{2}", r"w_{\text{wall}} = \frac{p L}{2}", r"B = \frac{L}{2}"],
        ),
        ("simple_beam", [r"M = \frac{w L^{2}}{8}", r"y = \frac{5 w L^{4}}{384 EI}"]),
        ("required_section", [r"S = \frac{w L^{2}}{8 f}", r"d = \sqrt{\frac{3 w L^{2}}{4 b f}}"]),
        ("middle_support", [r"R_{\text{middle}} = \frac{5 w L}{4}", r"B = \frac{5 L}{4}"]),
    ],
)
def test_formulas_print_as_people_write_them(name, formulas_shown):
    found = [formula for _, formula in proofs.steps_as_latex(getattr(derivations, name)())]
    for formula in formulas_shown:
        assert formula in found


def test_the_moment_and_the_sag_satisfy_the_beam_equation():
    w, length, stiffness, x = sympy.symbols("w L EI x", positive=True)
    steps = derivations.simple_beam().steps
    sag = next(step.equation.rhs for step in steps if step.sentence.startswith("The line that"))
    renamed = {symbol: sympy.Symbol(symbol.name, positive=True) for symbol in sag.free_symbols}
    sag = sag.subs(renamed)
    assert sympy.simplify(stiffness * sag.diff(x, 4) - w) == 0
    assert sag.subs(x, 0) == 0 and sympy.simplify(sag.subs(x, length)) == 0
    assert sag.diff(x, 2).subs(x, 0) == 0 and sympy.simplify(sag.diff(x, 2).subs(x, length)) == 0


def test_a_derivation_that_misses_its_function_is_refused():
    w, length = sympy.symbols("w L", positive=True)
    with pytest.raises(proofs.NotProved, match="simple_uniform_moment"):
        proofs.prove(
            w * length**2 / 12,
            formulas.simple_uniform_moment(line_load=w, span=length),
            "simple_uniform_moment",
        )


def test_a_changed_formula_stops_the_derivation(monkeypatch):
    monkeypatch.setattr(
        formulas,
        "simple_uniform_deflection",
        lambda *, line_load, span, bending_stiffness: line_load * span**4,
    )
    with pytest.raises(proofs.NotProved):
        derivations.simple_beam()


def test_markdown_has_every_step_and_names_the_function(derivation):
    text = proofs.to_markdown(derivation)
    assert text.count("$$") == 2 * len(derivation.steps)
    assert all(f"`{name}`" in text for name in derivation.ends_in)
    assert text == proofs.to_markdown(derivation)


def test_markdown_is_the_same_in_another_process():
    """Here the names are hashed with a seed that is another in every run, elsewhere with two that are known."""
    here = f"{[proofs.to_markdown(getattr(derivations, name)()) for name in ALL]}\n"
    code = (
        "from structlib.pages.kit.proofs import to_markdown\nfrom structlib.pages.topics.every import all_of\n"
        f"print([to_markdown(all_of('derivations')[name]()) for name in {ALL!r}])"
    )
    texts = {
        subprocess.run(
            [sys.executable, "-c", code],
            capture_output=True,
            text=True,
            check=True,
            env={"PYTHONHASHSEED": seed, "PYTHONPATH": ":".join(sys.path), "PYTHONIOENCODING": "utf-8"},
        ).stdout
        for seed in ("1", "2")
    }
    assert texts == {here}


@pytest.mark.parametrize(
    ("name", "values", "expected"),
    [  # worked by hand
        ("section_of_a_rectangle", {"width": 1.5 * inch, "depth": 9.25 * inch}, ["98.93 in⁴", "21.39 in³"]),
        ("tributary_line_load", {"area_load": 50 * psf, "span": 12 * ft}, ["300 plf", "6 ft"]),
        ("simple_beam", {"line_load": 500 * plf, "span": 12 * ft}, ["9,000 lb-ft"]),
        (
            "simple_beam",
            {"line_load": 500 * plf, "span": 12 * ft, "bending_stiffness": 337.5e6 * lb * inch**2},
            ["9,000 lb-ft", "0.69 in"],
        ),
        (
            "required_section",
            {"line_load": 500 * plf, "span": 12 * ft, "stress": 1000 * psi},
            ["108.00 in³"],
        ),
        (
            "required_section",
            {"line_load": 500 * plf, "span": 12 * ft, "stress": 1000 * psi, "width": 4.5 * inch},
            ["108.00 in³", "12 in"],
        ),
        ("middle_support", {"line_load": 100 * plf, "span": 12 * ft}, ["1,500 lb", "15 ft"]),
        (
            "floor_to_post",
            {"area_load": 50 * psf, "left_span": 14 * ft, "right_span": 10 * ft, "span": 8 * ft},
            ["12 ft", "600 plf", "2,400 lb"],
        ),
    ],
)
def test_the_last_line_takes_the_readers_numbers(name, values, expected):
    text = proofs.with_numbers(getattr(derivations, name)(), values)
    assert re.findall(r"\*\*(.+?)\*\*", text) == expected


def test_the_last_line_speaks_metric_too():
    values = {"line_load": 8.0, "span": 4000.0}
    text = proofs.with_numbers(derivations.simple_beam(), values, "metric")
    assert "8.00 kN/m" in text and "4.000 m" in text and "**16.00 kN-m**" in text


@pytest.mark.parametrize(
    ("values", "message"),
    [
        ({}, "numbers are needed"),
        ({"line_load": 1.0}, "numbers are needed"),
        ({"line_load": 1.0, "height": 2.0}, "height"),
        ({"line_load": "a", "span": 1.0}, "not a number"),
        ({"line_load": 1.0, "span": 0.0}, "span"),
        ({"line_load": float("nan"), "span": 1.0}, "nan"),
        ({"line_load": 1.0, "span": -5.0}, "span"),
    ],
)
def test_numbers_that_make_no_sense_are_refused(values, message):
    with pytest.raises(BadInput, match=message):
        proofs.with_numbers(derivations.simple_beam(), values)


def test_sympy_loads_only_when_a_derivation_is_asked_for():
    code = "import sys; import structlib.pages.topics.every; print('sympy' in sys.modules)"
    answer = subprocess.run(
        [sys.executable, "-c", code],
        capture_output=True,
        text=True,
        check=True,
        env={"PYTHONPATH": ":".join(sys.path)},
    )
    assert answer.stdout.strip() == "False"


SAMPLE = {
    "length": 12 * ft, "section length": 9.25 * inch, "small length": 0.4 * inch, "force": 1000 * lb,
    "line load": 50 * plf, "area load": 3000 * psf, "stress": 900 * psi, "moment": 1e6, "inertia": 4e7,
    "stiffness": 4e11, "ratio": 0.25, "count": 3, "acceleration": 9806.65, "area": 8000.0,
    "offset": 2 * ft, "overhang": 3 * ft, "weight density": 23.6e-6,
}  # fmt: skip


def test_every_last_line_takes_numbers(derivation):
    for ending in derivation.endings:
        values = {name: SAMPLE.get(name, SAMPLE.get(dimension)) for name, (_, dimension) in ending.inputs.items()}
        assert "**" in proofs.with_numbers(derivation, values)
