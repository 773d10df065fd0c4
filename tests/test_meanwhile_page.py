"""The pages of notebook 14: drawings over a sweep, a gate that always stands, rows from the library."""

import itertools
import re

import pytest
from label_boxes import label_overlaps, labels_of

from structlib.ground.units import ft, inch, plf, psf
from structlib.mechanics import formulas, jacking, shoring
from structlib.pages.kit.show import published, start_values
from structlib.pages.topics.meanwhile import tables as meanwhile_tables
from structlib.pages.topics.meanwhile.jack import JackPage, lifted_level
from structlib.pages.topics.meanwhile.page import MeanwhilePage
from structlib.pictures.scene import outside

MEANWHILE = [
    dict(way=way, below=below, span=span, offset=offset, above=above, depth=depth)
    for (way, below), (span, depth), (offset, above) in itertools.product(
        [
            ("cut", "across"),
            ("continuous", "along"),
            ("outside", "slab"),
            ("cut", "slab"),
            ("outside", "along"),
        ],
        [(6 * ft, 11.25 * inch), (12 * ft, 9.25 * inch), (20 * ft, 3.5 * inch)],
        [(1 * ft, 0.0), (2 * ft, 600 * plf), (5 * ft, 5000 * plf)],
    )
]
JACK = [
    dict(kind=kind, span=span, depth=depth, lift=lift, sag=sag, aside=aside, plies=plies)
    for kind, (span, depth, plies), (lift, sag), aside in itertools.product(
        ["one", "two"],
        [(6 * ft, 11.25 * inch, 5), (14 * ft, 9.25 * inch, 3), (20 * ft, 3.5 * inch, 1)],
        [(0.0, 0.0), (0.5 * inch, 1.5 * inch), (3 * inch, 6 * inch)],
        [0.0, 2 * ft],
    )
]


@pytest.mark.parametrize("frame", ["page", "wide", "tall"])
@pytest.mark.parametrize("system", ["us", "metric"])
@pytest.mark.parametrize(("kind", "sweep"), [(MeanwhilePage, MEANWHILE), (JackPage, JACK)], ids=["walls", "jack"])
def test_no_text_overlaps_and_nothing_leaves_the_picture(kind, sweep, system, frame):
    page = kind(system)
    for changes in sweep:
        scene = page.compute(start_values(page, **changes), start_values(page), frame).scene
        assert label_overlaps(scene) == [], (changes, label_overlaps(scene))
        assert outside(scene) == [], (changes, outside(scene))
        assert scene.title and scene.title in scene.alt


@pytest.mark.parametrize("frame", ["page", "wide", "tall"])
def test_texts_stay_in_their_lanes_while_the_temporary_wall_moves(frame):
    page = MeanwhilePage()
    heights = set()
    for feet in (1, 2, 3):
        scene = page.compute(start_values(page, offset=feet * ft), frame=frame).scene
        heights.add(tuple(label.y for label in labels_of(scene) if "plf" in label.text))
    assert len(heights) == 1


@pytest.mark.parametrize("kind", [MeanwhilePage, JackPage])
def test_a_gate_always_stands_and_no_row_passes_a_verdict(kind):
    page = kind()
    for changes in MEANWHILE if kind is MeanwhilePage else JACK:
        shown = page.compute(start_values(page, **changes))
        assert shown.gates and "engineer" in shown.gates[0]
        texts = " ".join(cell for row in shown.rows for cell in row) + " ".join(shown.notes)
        assert not re.search(r"\b(safe|OK|passes|fails|governs|can give)\b", texts)
        assert shown.notes[-1].startswith("This page teaches")


def rows_of(page, **changes):
    return {row[0]: row[1:] for row in page.compute(start_values(page, **changes)).rows}


def test_rows_of_the_worked_wall_are_hand_arithmetic():
    rows = rows_of(MeanwhilePage())
    assert rows["the wall that is out had"][0] == "600 plf"
    assert rows["each temporary wall"][:2] == ("360 plf", "1.20 x its side's share")
    assert rows["all temporary walls"][:2] == ("720 plf", "1.20 x the wall's")
    assert rows["each outside wall keeps"][0] == "240 plf"
    assert rows["each outside wall keeps, floor empty"][0] == "48 plf"
    # 16 in of floor, 100 lb-ft on each foot
    assert rows["moment in a joist over it"][0] == "133 lb-ft"
    # 480 lb and 13.33 plf on a 12 ft joist, 2 ft from its end: 480 x 2 x 10 / 12 + 13.33 x 2 x 10 / 2
    assert rows["moment in a joist below"][0] == "933 lb-ft"
    assert "nobody on that floor" in rows["moment in a joist below"][1]
    assert rows["on 4 ft of temporary wall"][0] == "1,440 lb"


def test_rows_of_an_outside_wall_show_the_uplift():
    page = MeanwhilePage()
    changes = dict(way="outside", above=600 * plf, offset=3 * ft, live=0.0)
    far = shoring.far_wall_reaction(line_load=10 * psf, span=12 * ft, offset=3 * ft, tip_load=600 * plf)
    assert far / plf == pytest.approx(-160.0)
    rows = rows_of(page, **changes)
    assert rows["far wall keeps"][:2] == ("-160 plf", "uplift: it must be held down")
    shown = page.compute(start_values(page, **changes))
    assert any("rise" in gate for gate in shown.gates) and "160 plf" in shown.scene.title
    assert "rise at the ringed walls" in shown.scene.alt


def test_uplift_of_an_empty_floor_is_shown_under_a_full_one_too():
    page = MeanwhilePage()
    rows = rows_of(page, above=600 * plf)
    assert rows["each outside wall keeps"][1] == ""
    assert rows["each outside wall keeps, floor empty"][1].startswith("uplift")


def test_people_on_the_lever_alone_bring_the_uplift_gate():
    page = MeanwhilePage()
    for way in ("cut", "outside"):
        shown = page.compute(start_values(page, way=way, offset=5 * ft))
        rows = {row[0]: row[1:] for row in shown.rows}
        who = "each outside wall" if way == "cut" else "far wall"
        # (120 - 500) / 7 = -54.3 plf, though the empty floor keeps 17.1 plf
        assert rows[f"{who} keeps, floor empty"] == ("17.1 plf", "")
        assert rows[f"{who} keeps, people at the worst places"][0] == "-54.3 plf"
        assert any("rise" in gate for gate in shown.gates) and "54.3 plf" in shown.scene.title
    default = rows_of(page)
    assert default["each outside wall keeps, people at the worst places"] == ("40 plf", "")


def test_joists_in_one_piece_ask_more_of_a_wall_with_people_on_its_side_only():
    rows = rows_of(MeanwhilePage(), way="continuous")
    # 391.6 plf with people everywhere; three moments with 40 psf on two of the three stretches: 500.9 plf
    assert rows["each temporary wall"][0] == "392 plf"
    assert rows["one of them, people at the worst places"][0] == "501 plf"
    assert rows["the same, people on the other side only"] == ("-31.1 plf", "the joists rise off it")
    assert rows["on 4 ft of temporary wall"][0] == "2,004 lb"


def _three_moments(pushes, offset=2.0, span=12.0):
    """Push of the left of two temporary walls by three moments; pushes are lb/ft on left, middle, right."""
    side, gap = span - offset, 2 * offset
    left, middle, right = pushes
    # 2 (a + b) M1 + b M2 = -(w1 a^3 + w2 b^3) / 4, and the mirror of it
    one = -(left * side**3 + middle * gap**3) / 4
    two = -(middle * gap**3 + right * side**3) / 4
    own, other = 2 * (side + gap), gap
    first = (own * one - other * two) / (own**2 - other**2)
    second = (own * two - other * one) / (own**2 - other**2)
    return left * side / 2 - first / side + middle * gap / 2 + (second - first) / gap


@pytest.mark.parametrize("frame", ["page", "wide", "tall"])
def test_the_arrows_of_joists_in_one_piece_are_the_greater_push(frame):
    places = itertools.product((10, 50), repeat=3)
    most = max(_three_moments(one) for one in places)
    page = MeanwhilePage()
    scene = page.compute(start_values(page, way="continuous"), frame=frame).scene
    texts = [label.text for label in labels_of(scene) if label.text.startswith("temporary")]
    assert texts == [f"temporary: up to {most:.0f} plf"] * 2
    assert "people at the worst places" in scene.caption and "people everywhere: both 783 plf" in scene.alt
    # nobody there, or cut joists: one push only
    for changes in ({"way": "continuous", "live": 0.0}, {"way": "cut"}):
        plain = page.compute(start_values(page, **changes), frame=frame).scene
        assert "up to" not in plain.alt and "worst places" not in plain.caption


def test_joists_in_one_piece_are_compared_with_ten_eighths():
    rows = rows_of(MeanwhilePage(), way="continuous")
    wall = formulas.two_span_uniform_middle_reaction(line_load=50 * psf, span=12 * ft)
    # spans of 10, 4 and 10 ft: 32 M = -50 (1000 + 64) / 4, and a far wall keeps 250 + M / 10
    each = (600 - (250 - 50 * 1064 / 4 / 32 / 10)) * plf
    assert wall / plf == pytest.approx(750.0)
    assert rows["all temporary walls"][:2] == (
        f"{2 * each / plf:.0f} plf",
        f"{2 * each / wall:.2f} x the wall's",
    )


def test_rows_do_not_depend_on_the_state_before():
    for page in (MeanwhilePage(), JackPage()):
        values = start_values(page, span=10 * ft)
        assert page.compute(values).rows == page.compute(values, start_values(page)).rows


def test_the_picture_before_is_a_ghost_only_where_it_fits():
    page = MeanwhilePage()
    roles = lambda before: [
        getattr(item, "role", "")
        for item in page.compute(  # noqa: E731
            start_values(page, offset=3 * ft), before
        ).scene.items
    ]
    assert roles(start_values(page)).count("ghost") == 3  # two walls and the shape
    assert "ghost" not in roles(start_values(page, span=10 * ft)) and "ghost" not in roles(None)


def test_rows_of_the_jack_are_direct_calls():
    page = JackPage()
    rows = rows_of(page)
    beam, jack = page.beam(start_values(page))
    assert jack == 7 * ft
    given = dict(line_load=300 * plf, span=14 * ft, bending_stiffness=beam.bending_stiffness)
    springs, off = formulas.simple_uniform_deflection(**given), jacking.midspan_lift_off(**given)
    assert rows["sag that springs, at the jack"][0] == f"{springs / inch:.2f} in"
    assert rows["both ends let go at a lift of"] == (f"{off / inch:.2f} in", "jack 4,200 lb")
    assert rows["jack, lifted by the whole measured sag"] == (
        "4,200 lb",
        "the member hangs on the jack alone",
    )
    assert rows["moment, lifted by the whole measured sag"] == ("-7,350 lb-ft", "bends up, over the jack")


def test_the_jack_page_says_what_else_resists():
    notes = JackPage().compute(start_values(JackPage())).notes
    assert any("resist too, and ask more of the jack" in note for note in notes)


def test_tables_of_the_notebook_say_where_they_come_from():
    cautions = meanwhile_tables.cautions_table().rows
    assert {row[3] for row in cautions} <= {"seen", "recalled", "common practice"}
    rates = next(row for row in cautions if "eighth" in row[2])
    assert rates[1] == "no rule known to us" and rates[3] == "common practice"
    steps = meanwhile_tables.order_table().rows
    assert [row[0] for row in steps] == [str(n) for n in range(1, len(steps) + 1)]
    lands = meanwhile_tables.lands_below().rows
    # 1,440 lb on 6 in of plate spreads over 14 in through a 4 in slab
    assert lands[4][1] == f"{1440 / (14 / 12) ** 2:,.0f} psf under the slab"


def test_worked_case_of_the_check_section():
    for _, by_hand, ours in meanwhile_tables.worked_case().rows:
        assert by_hand.split(" = ")[1] == ours


def test_a_beam_jacked_level_is_two_spans_of_the_printed_table():
    for name, share in lifted_level().items():
        assert "seen in Hicks" in published(name, share)
