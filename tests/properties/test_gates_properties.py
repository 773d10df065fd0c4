"""Knowing less never gives a lighter beam, and a gate leaves none."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from structlib.ground.units import ft, inch, plf
from structlib.house.alternatives import Space, alternatives
from structlib.house.beam import ON_MASONRY, check_beam
from structlib.house.plies import PLY_JOINTS
from structlib.house.sizing import build_rack, limit_widths, size_beams
from structlib.pages.kit.comes_down import comes_down_pick
from structlib.pages.kit.show import start_values
from structlib.pages.kit.woods import WOODS
from structlib.pages.topics.beam import choices
from structlib.pages.topics.beam.page import BeamPage
from structlib.rules.us.steel_sections import steel_shape

PAGE = BeamPage()
PLATES = ("spf", "hem-fir", "fir", "southern pine")
SAWN = tuple(one.key for one in WOODS if one.kind == "dimension")
SEATS = (*PLATES, "plate", "post", "masonry")
#: A control, its option that knows less, and each option that knows more.
KNOWS_LESS = [
    *(("below", "plate", one) for one in PLATES),
    *(("below", "unknown", one) for one in SEATS),
    *(("braced", "unknown", one) for one in ("joists", "middle", "ends", "all")),
    *(("joined", "unknown", one) for one in PLY_JOINTS),
    *(("wood", "unknown", one) for one in SAWN),
]


def openings():
    line = st.floats(0.0, 1500.0).map(lambda load: load * plf)
    return st.fixed_dictionaries(
        {
            "span": st.floats(3.0, 20.0).map(lambda feet: feet * ft),
            "dead": line,
            "live": line,
            "snow": line,
            "seat": st.floats(0.5, 8.0).map(lambda inches: inches * inch),
            "position": st.sampled_from(("dropped", "flush")),
            "braced": st.sampled_from(("joists", "middle", "ends", "all", "unknown")),
            "below": st.sampled_from(SEATS),
            "joined": st.sampled_from(("unknown", *PLY_JOINTS)),
            "wood": st.sampled_from((*SAWN, "unknown")),
        }
    )


def sized(values):
    stock, _ = choices.stock_of(PAGE, (values["wood"],))
    rack = build_rack(stock, plies=(1, 2, 3, 4, 5))
    return size_beams(PAGE.job(values), rack, PAGE.rulebook)


def lightest(values):
    sizing = sized(values)
    rows = sizing.passing()
    return float(sizing.rack.area[rows].min()) if len(rows) else float("inf")


def test_every_option_that_knows_less_is_tried():
    listed = {
        control.name: {value for _, value in control.options}
        for control in PAGE.controls({})
        if hasattr(control, "options")
    }
    assert {"unknown"} <= listed["below"] & listed["braced"] & listed["joined"] & listed["wood"]
    assert listed["below"] == {*SEATS, "unknown"}
    assert listed["braced"] == {one for name, _, one in KNOWS_LESS if name == "braced"} | {"unknown"}


@pytest.mark.parametrize("name, less, more", KNOWS_LESS)
@settings(max_examples=15, deadline=None)
@given(opening=openings())
def test_knowing_less_never_gives_a_lighter_beam(name, less, more, opening):
    values = start_values(PAGE, **opening)
    assert lightest({**values, name: less}) >= lightest({**values, name: more})


@settings(max_examples=25, deadline=None)
@given(opening=openings(), stop=st.sampled_from(("masonry", "unknown", "truss", "chimney", "tub", "post", "bracing")))
def test_a_gate_leaves_no_candidate_whatever_asks(opening, stop):
    name = "below" if stop in ("masonry", "unknown") else "above"
    values = start_values(PAGE, **{**opening, name: stop})
    job, sizing = PAGE.job(values), sized(values)
    assert job.gates and len(sizing.passing()) == 0
    assert set(limit_widths(lambda width: job, sizing.rack, PAGE.rulebook)[0]) == {0.0}
    assert alternatives(job, space=Space(middle=12 * inch), steel=[steel_shape("W8x18")], rulebook=PAGE.rulebook) == ()
    assert check_beam(job, sizing.rack.choice(0), PAGE.rulebook).gates[: len(job.gates)] == job.gates


@pytest.mark.parametrize("ask", [choices.below_full, choices.dropped_or_flush, choices.giving_way])
@pytest.mark.parametrize("changes", [{"below": "masonry"}, {"below": "unknown"}, {"above": "tub"}], ids=str)
def test_a_table_of_choices_says_why_it_lists_no_beam_and_keeps_what_is_asked(ask, changes):
    table = ask(PAGE, **changes)
    gates = PAGE.compute(start_values(PAGE, **changes)).gates
    assert gates and all(gate in table.caption for gate in gates)
    asked = dict(table.rows)
    assert "push on each seat" in asked and not any("%" in text for text in asked.values())
    if changes == {"below": "masonry"}:
        assert ON_MASONRY in table.caption


@pytest.mark.parametrize("ask", [choices.below_full, choices.dropped_or_flush, choices.giving_way])
def test_a_table_of_choices_lists_its_checks_and_what_nobody_looked_at(ask):
    table = ask(PAGE)
    for word in ("bending", "shear", "bearing", "seat length", "sag under live load"):
        assert word in table.caption
    assert "What else comes down here: not looked yet" in table.caption
    assert "not looked" not in ask(PAGE, above="none").caption
    assert "carr" not in table.caption and not any("carr" in cell for row in table.rows for cell in row)


def test_the_wood_told_is_the_only_one_offered():
    assert {row[1].split(",")[0] for row in choices.below_full(PAGE, wood="unknown", live=100 * plf).rows} == {
        "wood not known"
    }


def test_every_kind_of_what_comes_down_is_on_the_pick():
    assert [value for _, value in comes_down_pick().options] == [
        "not looked yet",
        "none",
        "truss",
        "chimney",
        "tub",
        "post",
        "bracing",
    ]
