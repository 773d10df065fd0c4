"""No notebook takes longer than 40 minutes, by one measure, and each says how long it takes; -s prints them all."""

import ast
import re
from math import ceil
from pathlib import Path

import nbformat
import pytest

NOTEBOOKS = sorted((Path(__file__).resolve().parents[1] / "notebooks").glob("*.ipynb"))
MOST, WORDS_A_MINUTE, A_QUESTION, A_TABLE = 40, 130, 4.0, 1.5
QUESTIONS = {"Predict", "Practice"}
#: What a cell may end in without being read as a table: a bench, a picture, a sheet, the numbers of a derivation.
PICTURES = {"Bench", "still", "Picture", "sag_picture", "dormer_plan", "template_sheet", "template_pdf", "with_numbers"}
#: Notebooks over the bound, and why; a name leaves when its notebook is within it.
LONGER = {}  # a name here says why a notebook is over the bound


def _ends_in(source):
    """What the last line of a cell calls, in parts; empty where it shows nothing."""
    last = ast.parse(source).body[-1]
    while isinstance(last, (ast.For, ast.If, ast.With)):
        last = last.body[-1]
    if not isinstance(last, ast.Expr):
        return []
    return ast.unparse(last.value.func if isinstance(last.value, ast.Call) else last.value).split(".")


def measured(cells):
    """Minutes of reading, of questions, and of tables, folded or not."""
    words = questions = tables = 0
    for cell in cells:
        if cell.cell_type == "markdown":
            words += sum(bool(re.search(r"\w", word)) for word in cell.source.split())
            continue
        parts = _ends_in(cell.source)
        if parts and parts[-1] in QUESTIONS:
            questions += 1
        elif parts and parts[-1] not in PICTURES and "derivations" not in parts[0]:
            tables += 1
    return words / WORDS_A_MINUTE + A_QUESTION * questions + A_TABLE * tables


MINUTES = {path.name[:2]: measured(nbformat.read(path, as_version=4).cells) for path in NOTEBOOKS}


def test_the_measure_by_hand():
    """260 words are 2 minutes; a question 4; a table, cards and a print in a loop 1.5 each; what is drawn, nothing."""
    code, text = nbformat.v4.new_code_cell, nbformat.v4.new_markdown_cell
    drawn = ("import math", "Bench(PathPage())", "derivations.simple_beam()", "show.still(PathPage())", "depth = 3")
    read = ("tables.lands_below()", "show.Cards(myths.one())", "for one in (1, 2):\n    print(one)")
    cells = [text("- word " * 200 + "<details>" + " word" * 59 + "</details>"), code("Predict(predictions.one())")]
    assert measured(cells + [code(one) for one in (*drawn, *read)]) == pytest.approx(2 + 4 + 3 * 1.5)


@pytest.mark.parametrize("name", MINUTES)
def test_no_notebook_takes_longer_than_the_bound(name):
    assert (MINUTES[name] > MOST) == (name in LONGER), f"{name} takes {MINUTES[name]:.1f} minutes"


@pytest.mark.parametrize("path", [path for path in NOTEBOOKS if path.name[:2] not in LONGER], ids=lambda p: p.name[:2])
def test_a_notebook_says_how_long_it_takes(path):
    told = re.search(r"It takes (\d+) minutes", nbformat.read(path, as_version=4).cells[0].source)
    assert told and int(told[1]) == 5 * ceil(MINUTES[path.name[:2]] / 5)


def test_the_minutes_are_printed():
    """With -s: every notebook, by the measure."""
    assert len(MINUTES) == len(NOTEBOOKS)
    for name, minutes in MINUTES.items():
        print(f"\n  notebook {name}: {minutes:.1f} minutes{', ' + LONGER[name] if name in LONGER else ''}", end="")
