"""The start page and the README tell a newcomer the same: which notebook answers which question."""

import re
from pathlib import Path

import nbformat

ROOT = Path(__file__).resolve().parents[1]
NOTEBOOKS = sorted((ROOT / "notebooks").glob("*.ipynb"))


def _question(path):
    first = nbformat.read(path, as_version=4).cells[0].source.splitlines()[0]
    number, question = re.fullmatch(r"# (\d\d) · (.+)", first).groups()
    assert path.name.startswith(f"{number}-")
    return number, path.name, question


def _start_page():
    cells = nbformat.read(NOTEBOOKS[0], as_version=4).cells
    return "\n\n".join(cell.source for cell in cells if cell.cell_type == "markdown")


def test_the_start_page_lists_every_notebook_by_its_question():
    listed = re.findall(r"^- \*\*(\d\d)\*\* \[(.+?)\]\((.+?\.ipynb)\)", _start_page(), flags=re.M)
    assert [(number, name, question) for number, question, name in listed] == [
        _question(path) for path in NOTEBOOKS[1:]
    ]


def test_the_readme_lists_every_notebook_by_its_question():
    readme = (ROOT / "README.md").read_text("utf-8")
    listed = re.findall(r"^\| \[(\d\d)\]\(notebooks/(.+?\.ipynb)\) \| (.+?) \|", readme, flags=re.M)
    assert listed == [_question(path) for path in NOTEBOOKS]


def test_each_reader_has_a_way_in_and_no_link_leads_nowhere():
    text = _start_page()
    ways = text.split("## Three ways in")[1].split("\n## ")[0]
    for reader in ("You make videos.", "You learn the trade.", "You own an old house."):
        assert f"**{reader}**" in ways
    links = re.findall(r"\]\(([^)]+\.ipynb)\)", text)
    assert links and set(links) <= {path.name for path in NOTEBOOKS}
    # every notebook stands on one of the ways: the trade's runs from the first to the last
    assert {path.name for path in NOTEBOOKS[1:]} == set(re.findall(r"\]\(([^)]+\.ipynb)\)", ways))


def test_the_minutes_told_hold_for_every_notebook():
    low, high = map(int, re.search(r"Each takes (\d+) to (\d+) minutes", _start_page()).groups())
    assert f"Each takes {low} to {high} minutes" in (ROOT / "README.md").read_text("utf-8")
    for path in NOTEBOOKS[1:]:
        first = nbformat.read(path, as_version=4).cells[0].source
        assert low <= int(re.search(r"It takes (\d+) minutes", first)[1]) <= high, path.name
