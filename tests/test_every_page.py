"""What holds for every page: its title, its gates, and how well what it used is known."""

import inspect
import pkgutil
import random
import re
from importlib import import_module

import pytest

import structlib.pages
from structlib.ground.refusals import BadInput, OutsideRule
from structlib.pages.kit import verdict
from structlib.pages.kit.bench import picture_html
from structlib.pages.kit.controls import Box, Page, Pick, Slide, Steps, Switch
from structlib.pages.kit.show import start_values
from structlib.rules.check import VERIFIED_ORDER, Check, Factor

STATES = 16


def _pages():
    """Every page that there is, found and not listed."""
    found = set()
    for one in pkgutil.walk_packages(structlib.pages.__path__, "structlib.pages."):
        if not one.ispkg:
            for _, kind in inspect.getmembers(import_module(one.name), inspect.isclass):
                if issubclass(kind, Page) and kind is not Page:
                    found.add(kind)
    return sorted(found, key=lambda kind: kind.__name__)


PAGES = _pages()


def _drawn(page, dice):
    """Values of every control, anywhere in its range; a third of them stay where they start."""
    values = start_values(page)
    for _ in range(2):  # what is offered may follow the values
        for control in page.controls(values):
            if dice.random() < 0.35:
                continue
            if isinstance(control, Pick):
                values[control.name] = dice.choice([value for _, value in control.options])
            elif isinstance(control, Steps):
                values[control.name] = dice.choice(control.values)
            elif isinstance(control, Switch):
                values[control.name] = dice.random() < 0.5
            elif isinstance(control, (Slide, Box)):
                value = dice.uniform(control.low, control.high)
                values[control.name] = round(value) if control.dimension == "count" else value
    return values


def _shown(kind, count=STATES):
    """States without a gate, as many as asked, and those with one that were met on the way."""
    pages, dice, free, tries = [kind(), kind(system="metric")], random.Random(kind.__name__), 0, 0
    while free < count and tries < 6 * count:
        tries += 1
        page = dice.choice(pages)
        try:
            shown = page.compute(_drawn(page, dice), frame=dice.choice(("page", "wide", "tall")))
        except (BadInput, OutsideRule) as refused:
            assert "title" not in str(refused), refused  # a title that names its share must still fit
            continue
        free += not shown.gates
        yield shown


def _per_cent(text):
    return [float(number.replace(",", "")) for number in re.findall(r"(\d[\d,]*) %", text)]


def _said(title):
    """The greatest share that a title says, in per cent; without end where it says that nothing would do."""
    if re.search("refuses|bows? out|beyond any limit", title):
        return float("inf")
    used = re.findall(r"[\d,]+ % used", title) + re.findall("left out: .*", title)
    times = re.findall(r"ask(?:s|ed)? ([\d.]+) times", title)
    # two decimals of a multiple and whole per cent may round apart
    return max([*(n for text in used for n in _per_cent(text)), *(100 * float(n) + 0.5 for n in times)], default=0.0)


def test_every_page_is_found():
    assert len(PAGES) >= 13


@pytest.mark.parametrize("kind", PAGES, ids=lambda kind: kind.__name__)
def test_a_title_never_says_less_than_the_worst_check_and_names_what_it_leaves_out(kind):
    told = 0
    for shown in _shown(kind):
        title = shown.scene.title
        cells = [(row[0], row[3]) for row in shown.rows if len(row) == 5] or [
            (row[0], row[2]) for row in shown.rows if "share used" in row[0]
        ]
        if shown.gates:
            assert not any(_per_cent(cell) for _, cell in cells)
            continue
        for name, cell in cells:
            if "%" not in cell:
                continue
            told += 1
            assert max(_per_cent(cell)) <= _said(title), f"{title!r} says less than {name}: {cell}"
    if kind.__name__ in ("BeamPage", "PostPage", "SeatPage", "RoofPage", "PathPage", "OldWoodPage"):
        assert told >= STATES // 2


@pytest.mark.parametrize("kind", PAGES, ids=lambda kind: kind.__name__)
def test_no_page_words_its_verdict_anywhere_but_in_one_place(kind):
    source = inspect.getsource(import_module(kind.__module__))
    if "share" in " ".join(kind().compute(start_values(kind())).head) or "share used" in source:
        assert "verdict.headline(" in source or "words.title(" in source


@pytest.mark.parametrize("kind", PAGES, ids=lambda kind: kind.__name__)
def test_every_page_shows_the_weakest_evidence_of_all_that_it_used(kind):
    for shown in _shown(kind, 6):
        words = [word for _, word in shown.known if word != verdict.ENTERED]
        assert words and set(words) <= set(VERIFIED_ORDER)
        weakest = max(words, key=VERIFIED_ORDER.index)
        assert f"The weakest evidence here is {weakest}" in picture_html(shown)
        told = " ".join((*shown.notes, *(cell for row in shown.rows for cell in row)))
        assert "Nothing here is better known" not in told
        # no row names a weaker word than the page does; common practice is a trade's habit, and said as such
        said = [word for word in VERIFIED_ORDER[:-1] if re.search(rf"(?<![\w-]){word}(?![\w-])", told)]
        assert all(VERIFIED_ORDER.index(word) <= VERIFIED_ORDER.index(weakest) for word in said)


def _check(name, share, decides=True, verified="seen", factors=()):
    return Check(name, name, "", share, 1.0, share, "stress", 0.0, "", "", "", "", (), factors, verified, decides)


def test_a_title_takes_in_what_its_page_forgets():
    checks = [_check("bending", 0.42), _check("seat length", 2.0), _check("sag after years", 2.5, decides=False)]
    title = verdict.headline(checks, (), lambda first: "The post carries 900 lb")
    assert title == "The post carries 900 lb; seat length 200 % used; left out: sag after years, 250 %"
    asks = verdict.headline(checks[:2], (), lambda first: f"Seat length asks {first.share:.2f} times what it gives")
    assert asks == "Seat length asks 2.00 times what it gives"
    # a number that is not the share does not pass for it
    other = verdict.headline(checks[:1], (), lambda first: "The plate takes 142 % used")
    assert other.endswith("; bending 42 % used")
    assert verdict.headline(checks, ("soil",), lambda first: "never") == verdict.STOP
    refused = verdict.headline(checks[:1], (), lambda first: "Used", unjudged=("the load off the middle",))
    assert refused == "Used; bending 42 % used; not judged: the load off the middle"


def test_evidence_counts_the_factors_inside_a_check():
    factor = Factor("C_r", 1.15, "", "", "recalled")
    known = verdict.evidence([_check("bending", 0.4, factors=(factor,))], ("Hem-Fir", "seen"))
    assert verdict.weakest(known).startswith("The weakest evidence here is recalled: C_r.")
