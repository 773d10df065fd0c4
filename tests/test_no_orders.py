"""No text tells anyone to cut, jack, lift, drill or take out: such work is a question to the engineer."""

import ast
import csv
import json
import re
import tomllib
from pathlib import Path

import pytest

ROOT = Path(__file__).resolve().parents[1]

#: Verbs of work on what carries; "take", "pull" and "knock" are such work with a word that says where to.
VERBS = (
    "cut|saw|notch|bore|drill|chisel|rip|tear|break|demolish|remove|strip|jack|lift|raise|lower|hoist|prop|"
    "shore|dig|undermine|loosen|undo|unscrew|pry"
)
AWAY = r"(?:take|pull|knock|get)\s+(?:\w+\s+){1,4}?(?:out|off|down|away)"
#: What such a verb does its work on: "Cut the beam" is an order, "Cut joists end over the wall" is none.
OBJECT = (
    "(?:it|them|that|this|those|these|the|an?|one|two|your|each|every|all|both|any|old|out|up|back|off|through|right)"
)
#: Where an order begins: a text, a line, a sentence, an item of a list, after a colon, a semicolon or "then".
BEGINS = r"(?:\A|[.!?:;…,]\s|\n|\bthen\s|\band so\s|[-*•]\s|\d[.)]\s)"
LEADS = r"[\s*_>\"'“(]*(?:(?:then|now|first|next|just|so|please|always|and|or)\s+)*"
THEN = rf"(?:{OBJECT}|\w+\s+(?:out|off|down|away|back))"
ORDER = re.compile(rf"{BEGINS}{LEADS}(?:(?:{VERBS})\s+{THEN}|{AWAY})\b", re.I)


def _strings(source):
    """Every text of a piece of Python: constants, and f-strings with their gaps as one letter.

    Docstrings are left out: theirs is the mood of what a function does, and a reader of pages meets none.
    """
    tree = ast.parse(source)
    inside = set()
    for node in ast.walk(tree):
        if isinstance(node, (ast.Module, ast.ClassDef, ast.FunctionDef)):
            if ast.get_docstring(node) is not None:
                inside.add(id(node.body[0].value))
        elif isinstance(node, ast.JoinedStr):
            inside.update(map(id, node.values))
    for node in ast.walk(tree):
        if isinstance(node, ast.JoinedStr):
            yield "".join(part.value if isinstance(part, ast.Constant) else "X" for part in node.values)
        elif isinstance(node, ast.Constant) and isinstance(node.value, str) and id(node) not in inside:
            yield node.value


def _leaves(data):
    if isinstance(data, dict):
        for value in data.values():
            yield from _leaves(value)
    elif isinstance(data, list):
        for value in data:
            yield from _leaves(value)
    elif isinstance(data, str):
        yield data


def texts():
    """Every text that a reader may meet, with its file."""
    for path in sorted((ROOT / "structlib").rglob("*.py")):
        yield from ((path, text) for text in _strings(path.read_text(encoding="utf-8")))
    for path in sorted((ROOT / "notebooks").glob("*.ipynb")):
        for cell in json.loads(path.read_text(encoding="utf-8"))["cells"]:
            source = "".join(cell["source"])
            told = [source] if cell["cell_type"] == "markdown" else _strings(source)
            yield from ((path, text) for text in told)
    for path in sorted((ROOT / "data").rglob("*.csv")):
        with path.open(encoding="utf-8", newline="") as file:
            yield from ((path, cell) for row in csv.reader(file) for cell in row)
    for path in sorted((ROOT / "data").rglob("*.toml")):
        yield from ((path, text) for text in _leaves(tomllib.loads(path.read_text(encoding="utf-8"))))
    yield ROOT / "README.md", (ROOT / "README.md").read_text(encoding="utf-8")


def orders(text):
    """What in a text reads as an order to work on what carries. No text needs an exception: reword it."""
    return [match.group(0).strip() for match in ORDER.finditer(text)]


@pytest.mark.parametrize(
    "text",
    [
        "- Lift the old joist back before the sister goes on, or it carries only what comes afterwards.",
        "a slab is a floor; cut it out and cast a pad",
        "Take the wall out, bit by bit, and watch",
        "Call first. Then remove the post.",
        "3. Jack it level.",
        "Measure twice, then drill two holes",
        "**Now cut joists back** to the line",
    ],
)
def test_an_order_is_found(text):
    assert orders(text)


@pytest.mark.parametrize(
    "text",
    [
        "Do not cut, jack or remove anything on the strength of a slider.",
        "Never take a tie out before something else holds the rafters.",
        "Cut joists end or lap over the wall.",
        "Lift of the middle from where it hangs",
        "Ask the engineer: does the old joist come back level before the sister goes on?",
        "**Notch**: a cut into the edge.",
    ],
)
def test_a_question_a_warning_and_a_name_are_none(text):
    assert not orders(text)


def test_no_text_orders_anyone_to_cut_jack_lift_or_take_out():
    read, complaints = 0, []
    for path, text in texts():
        read += 1
        where = f"{path.relative_to(ROOT)}: {' '.join(text.split())[:80]!r}"
        complaints += [f"{one!r} in {where}" for one in orders(text)]
    assert read > 10_000 and not complaints, "\n".join(complaints)
