"""The page of old wood without a browser: its picture over a sweep, its rows, its gates."""

import random
import re

import pytest
from label_boxes import label_overlaps

from structlib.ground.measured_sections import measured_section
from structlib.ground.units import ft, inch, lb, psf, psi
from structlib.house.old_floor import compared
from structlib.pages.kit.controls import Pick, Slide
from structlib.pages.kit.show import start_values
from structlib.pages.topics.old_wood import tables
from structlib.pages.topics.old_wood.page import OldWoodPage
from structlib.pages.topics.sag import floors
from structlib.pictures.scene import Polygon, flat, outside
from structlib.rules.choice import RULEBOOK
from structlib.rules.members import MeasuredJoist
from structlib.rules.us import notched_ends

FRAMES = ("page", "wide", "tall")
PAGE = OldWoodPage()


def joist(species="", grade="", *, width=2 * inch, depth=7.5 * inch, span=13 * ft, live=30 * psf):
    """A sawn joist 16 in apart under 10 psf of weight beside every wood that it may be of, without page or house."""
    one = MeasuredJoist(measured_section("sawn", width=width, depth=depth), 16 * inch, 1, species, grade)
    return compared(one, span=span, dead=10 * psf, live=live, rulebook=RULEBOOK)


def compared_by(**changes):
    return PAGE.result(tuple(start_values(PAGE, **changes).items())).compared


def drawn(number, system="us"):
    """One of many sets of values: ends, starts and places between, the same ones every time."""
    draw, page = random.Random(number), OldWoodPage(system=system)
    values = start_values(page)
    for control in page.controls({}):
        if isinstance(control, Pick):
            values[control.name] = draw.choice(control.options)[1]
            continue
        value = draw.choice((control.low, control.high, control.default, draw.uniform(control.low, control.high)))
        if isinstance(control, Slide):
            value = control.low + round((value - control.low) / control.step) * control.step
        values[control.name] = int(value) if control.dimension == "count" else value
    return values


@pytest.mark.parametrize("frame", FRAMES)
@pytest.mark.parametrize("system", ["us", "metric"])
def test_no_label_meets_another_and_nothing_leaves_the_picture(frame, system):
    page = OldWoodPage(system=system)
    for number in range(120):
        values = drawn(number, system)
        scene = page.compute(values, start_values(page) if number % 2 else None, frame).scene
        assert label_overlaps(scene) == [] and outside(scene) == [], values
        assert not re.search(r"\bnan\b|\binf\b|None", scene.alt), scene.alt


@pytest.mark.parametrize("frame", FRAMES)
def test_the_camera_stays(frame):
    """An inch of depth is as tall at every span, and a foot of span as long at every depth."""

    def whole(**changes):
        scene = PAGE.compute(start_values(PAGE, cut="none", **changes), frame=frame).scene
        body = next(item for item in flat(scene.items) if isinstance(item, Polygon) and item.role == "wood")
        xs, ys = [x for x, _ in body.points], [y for _, y in body.points]
        return max(xs) - min(xs), max(ys) - min(ys), min(xs), max(ys)

    long, tall, left, base = whole(span=16 * ft, depth=12 * inch)
    for span, depth in ((6 * ft, 3 * inch), (20 * ft, 14 * inch), (13 * ft, 7.5 * inch)):
        found = whole(span=span, depth=depth)
        assert found[0] / span == pytest.approx(long / (16 * ft)) and found[1] / depth == pytest.approx(
            tall / (12 * inch)
        )
        assert found[2:] == pytest.approx((left, base))
        assert found[0] / span == pytest.approx(found[1] / depth), "one scale both ways"


def test_the_words_of_the_picture_say_what_it_shows():
    alt = PAGE.compute(start_values(PAGE)).scene.alt
    for words in (
        "13 ft",
        "2 in x 7 1/2 in",
        "Enlarged: a notch in the top, 3 ft from the left",
        "a sixth of the depth",
        "Best:",
        "Worst graded:",
    ):
        assert words in alt
    refused = PAGE.compute(start_values(PAGE, size=2 * inch)).scene
    assert "refused" in refused.alt and "crossed out" in refused.alt and "refuses" in refused.title


def test_a_ghost_is_drawn_and_changes_no_row():
    values, before = start_values(PAGE, depth=9 * inch), start_values(PAGE)
    with_ghost, without = PAGE.compute(values, before), PAGE.compute(values)
    assert with_ghost.rows == without.rows
    roles = {item.role for item in flat(with_ghost.scene.items) if hasattr(item, "role")}
    assert "ghost" in roles


@pytest.mark.parametrize("changes", [{"kind": "engineered"}, {"state": "crack"}, {"state": "rot"}])
def test_a_gate_withdraws_every_verdict_and_leaves_what_is_asked(changes):
    shown = PAGE.compute(start_values(PAGE, **changes))
    assert len(shown.gates) == 1 and "Stop and call" in shown.scene.title
    assert all(row[2] == "" and row[3] == "" for row in shown.rows)
    asked = PAGE.compute(start_values(PAGE)).rows
    assert [row[1] for row in shown.rows[:3]] == [row[1] for row in asked[:3]]
    assert "Best" not in shown.scene.alt and "%" not in shown.scene.alt


def test_rows_are_those_of_the_rules():
    """Numbers of a single wood and size, asked directly."""
    values = start_values(PAGE, wood="Hem-Fir", cut="none", span=12 * ft, depth=9.25 * inch, width=1.5 * inch)
    rows = {row[0]: row for row in PAGE.compute(values).rows}
    found = joist("Hem-Fir", width=1.5 * inch, depth=9.25 * inch, span=12 * ft)
    assert [wood.grade for wood in found.woods] == ["Select Structural", "No.1", "No.2", "No.3"]
    bending, sag = found.question("bending"), found.question("sag")
    # 53.33 plf on 12 ft: 960 lb-ft on 1.5 x 9.25^2 / 6
    assert rows["bending"][1] == f"{960 * 12 / (1.5 * 9.25**2 / 6):.0f} psi" == f"{bending.asked / psi:.0f} psi"
    assert rows["bending"][3] == f"{100 * min(bending.shares):.0f} % to {100 * max(bending.shares):.0f} %"
    assert rows["sag under live load"][3] == f"{100 * min(sag.shares):.0f} % to {100 * max(sag.shares):.0f} %"


def test_the_notched_end_and_the_wood_left_are_worked_out():
    values = start_values(PAGE, wood="No.2", cut="notch bottom", place=0.0, size=1.5 * inch, length=6 * inch)
    rows = {row[0]: row for row in PAGE.compute(values).rows}
    push = 40 * 16 / 12 * 13 / 2
    assert rows["push on the notched end"][1] == f"{push:.0f} lb"
    can = [
        notched_ends.tension_notch_shear(shear_value=wood.shear, width=2 * inch, depth=7.5 * inch, remaining=6 * inch)
        for wood in joist(grade="No.2").woods
    ]
    assert rows["push on the notched end"][2] == f"{min(can) / lb:.0f} lb to {max(can) / lb:.0f} lb"
    assert rows["depth of the notch"][3] == "80 %" and "length of the notch" not in rows


def test_a_refused_cut_is_refused_by_every_reason():
    rows = PAGE.compute(
        start_values(
            PAGE,
            width=4 * inch,
            depth=9 * inch,
            cut="notch bottom",
            place=6.5 * ft,
            size=2 * inch,
            length=6 * inch,
        )
    ).rows
    refused = [row[0] for row in rows if "refused" in row[3]]
    assert refused == [
        "depth of the notch",
        "length of the notch",
        "notch in the middle third",
        "notch on the tension side",
    ]


def test_a_thin_end_asks_more_and_a_known_wood_shrinks_the_range():
    def used(**changes):
        shares = compared_by(cut="none", shape="round", depth=8 * inch, **changes).greatest
        return min(shares), max(shares)

    even, thin = used(), used(taper=2 * inch)
    assert thin[0] > even[0] and thin[1] > even[1]
    known = used(wood="Hem-Fir")
    assert even[0] <= known[0] <= known[1] <= even[1]


def test_every_page_carries_its_caution_and_how_well_its_values_are_known():
    for number in range(30):
        shown = PAGE.compute(drawn(number))
        assert "licensed engineer" in shown.notes[-1]
        assert any("Design values" in note for note in shown.notes)


def test_sag_after_years_is_for_information():
    """1.5 times the dead sag and the live sag, beside span/240; hand arithmetic on 13 ft of Hem-Fir No.2."""
    shown = PAGE.compute(start_values(PAGE, wood="Hem-Fir", dead=20 * psf, live=30 * psf))
    row = {row[0]: row for row in shown.rows}["sag after years"]
    ei = [e * 1e6 * 2 * 7.5**3 / 12 for e in (1.6, 1.2)]  # Select Structural and No.3
    sags = [5 * (1.5 * 20 + 30) * 16 / 144 * 156**4 / (384 * one) for one in ei]
    assert row[1] == f"{sags[0]:.2f} in to {sags[1]:.2f} in" and row[2] == f"{156 / 240:.2f} in"
    assert row[3].endswith("(for information)") and f"{100 * sags[1] / (156 / 240):.0f} %" in row[3]
    gated = PAGE.compute(start_values(PAGE, state="crack")).rows
    assert {row[0]: row[2:4] for row in gated}["sag after years"] == ("", "")


def test_the_range_is_the_brute_force_of_its_unknowns():
    """The least and greatest of the table against every corner, worked out without the range."""
    from itertools import product

    rows = {row[0]: row for row in tables.unknowns().rows}
    answers = []
    species = ("Douglas Fir-Larch", "Hem-Fir", "Spruce-Pine-Fir", "Northern Species", "Eastern White Pine")
    for name, width, depth, span, live in product(
        species, (1.875, 2.125), (7.25, 7.2501, 7.5, 7.75), (12.75, 13.25), (30, 40)
    ):
        for grade in ("Select Structural", "No.1", "No.2"):
            found = joist(name, grade, width=width * inch, depth=depth * inch, span=span * ft, live=live * psf)
            answers.append(found.greatest[0])
    least, most = (float(text.split()[0]) / 100 for text in rows["all of them"][2:])
    assert least == pytest.approx(min(answers), abs=0.006) and most == pytest.approx(max(answers), abs=0.006)


@pytest.mark.parametrize("frame", FRAMES)
def test_the_picture_of_sag_is_clear(frame):
    scene = floors.sag_picture(frame).scene
    assert label_overlaps(scene) == [] and outside(scene) == [] and "L/178" in scene.alt


def test_tables_say_what_is_well_known():
    """Shares that follow from geometry alone, by exact arithmetic."""
    import math

    logs = {row[0]: row[1:] for row in tables.log_shapes().rows}
    assert logs["8 in round log"][1] == f"{100 * math.pi / 32 * 6:.0f} %"
    assert logs["the square sawn out of it"][1:] == ("35 %", "25 %")
    cuts = {row[0]: row[1:] for row in tables.cuts().rows}
    assert cuts["notch, a sixth of the depth"][0] == "69 %" and cuts["hole, a third, at mid-depth"] == (
        "96 %",
        "96 %",
    )
    beams = {row[0]: row for row in floors.new_beam().rows}
    assert beams["beam, joists run through"][4] == "325 plf" and beams["beam, joists cut on it"][4] == "260 plf"
    # 10 psf on both halves and 30 psf on one, 16 in on 6.5 ft: 1.25 and 0.625 of a half's load
    half = beams["the same, people on one half only"]
    assert half[4] == f"{(1.25 * 10 + 0.625 * 30) * 6.5:.0f} plf"
    push = (3 / 8 * 10 + 7 / 16 * 30) * 16 / 12 * 6.5
    assert half[1] == f"{push**2 / (2 * 40 * 16 / 12):.0f} lb-ft"
    feet = {row[0].split(",")[0]: row for row in floors.heavy_load().rows}["cast-iron tub on four feet"]
    # 325 lb, 45 gal and 180 lb on four feet, two on one joist, 9 in either side of the middle of 13 ft
    tub, joist = 325 + 180 + 45 * 231 / 1728 * 62.4, 16 / 12 * 13**2 / 8
    assert feet[2] == f"{tub / 2:.0f} lb" == "440 lb"
    assert feet[3] == f"{100 * (tub / 4 * (6.5 - 0.75) + 10 * joist) / (40 * joist):.0f} %" == "137 %"
    assert tables.tapered_logs().rows[0][1:] == ("6 ft 6 in", "1.00", "8.00 in")


@pytest.mark.parametrize("shape", ["round", "flat sides", "half round", "hewn"])
@pytest.mark.parametrize("cut", ["notch top", "notch bottom", "hole middle"])
def test_a_cut_log_gets_no_verdict_and_a_whole_one_no_place_to_cut(shape, cut):
    shown = PAGE.compute(start_values(PAGE, shape=shape, cut=cut, width=8 * inch, depth=8 * inch))
    assert any("log" in gate for gate in shown.gates)
    assert all(row[2] == "" and row[3] == "" for row in shown.rows)
    whole = PAGE.compute(start_values(PAGE, shape=shape, cut="none", width=8 * inch, depth=8 * inch))
    assert whole.gates == () and "may be" not in whole.scene.alt


def test_shear_in_the_wood_left_at_a_cut_is_hand_arithmetic():
    """40 psf every 16 in on 13 ft: 53.33 plf, 346.7 lb at each end; the joist is 2 in wide."""
    rows = {row[0]: row for row in PAGE.compute(start_values(PAGE, cut="notch top", place=0.0)).rows}
    assert rows["shear in the wood left at the cut"][1] == f"{1.5 * 346.67 / (2 * 6.25):.0f} psi"
    hole = start_values(PAGE, cut="hole middle", place=1 * ft, size=2.5 * inch)
    rows = {row[0]: row for row in PAGE.compute(hole).rows}
    push = 40 * 16 / 12 * (6.5 - (12 - 1.25) / 12)
    assert rows["shear in the wood left at the cut"][1] == f"{1.5 * push / (2 * 5):.0f} psi"
    # at a notch in the bottom of an end the rule of notched ends stands instead
    rows = {row[0]: row for row in PAGE.compute(start_values(PAGE, cut="notch bottom", place=0.0)).rows}
    assert "shear in the wood left at the cut" not in rows and "push on the notched end" in rows


def test_a_live_load_of_bedrooms_is_said_to_be_that():
    told = lambda **changes: any(  # noqa: E731
        "sleeping rooms" in note for note in PAGE.compute(start_values(PAGE, **changes)).notes
    )
    assert told() and not told(live=40 * psf)


def test_help_of_the_neighbours_and_of_more_pieces_is_said_where_it_is_counted():
    def notes(**changes):
        return " ".join(PAGE.compute(start_values(PAGE, **changes)).notes)

    assert "15 % more" in notes() and "15 % more" not in notes(spacing=32 * inch)
    assert "15 % more" not in notes(width=8 * inch, depth=10 * inch, cut="none")
    assert "fastened to one another" in notes(plies=2) and "fastened to one another" not in notes()
    # 775 psi x 1.1 for the depth, with and without the 15 %
    near, far = (
        next(value for wood, value in zip(found.woods, found.question("bending").given)
             if (wood.species, wood.grade) == ("Eastern White Pine", "No.1"))
        for found in (compared_by(spacing=gap * inch) for gap in (24, 24.5))
    )  # fmt: skip
    assert near / psi == pytest.approx(775 * 1.1 * 1.15)
    assert far / psi == pytest.approx(775 * 1.1)


def test_a_log_of_white_pine_is_never_shown_as_another_wood():
    """No timber values are listed for it: then no number of Douglas Fir stands in its place, not even a sag."""
    log = dict(shape="round", cut="none", depth=8 * inch, width=8 * inch)
    for system in ("us", "metric"):
        page = OldWoodPage(system=system)
        shown = page.compute(start_values(page, wood="Eastern White Pine", **log))
        said = " ".join((shown.scene.alt, shown.scene.title, *shown.notes, *shown.gates, *map(" ".join, shown.rows)))
        assert "Douglas" not in said and "%" not in shown.scene.alt and "Eastern White Pine" in shown.gates[0]
        rows = {row[0]: row for row in shown.rows}
        assert all(row[2] == row[3] == "" for row in shown.rows)
        assert (
            rows["sag under live load"][1] == rows["first frequency, empty floor"][1] == "not known: the wood decides"
        )
        assert rows["bending"][1] == page.compute(start_values(page, wood="any", **log)).rows[0][1]
        assert not page.compute(start_values(page, wood="Douglas Fir-Larch", **log)).gates


def test_the_range_of_unknown_wood_ends_at_the_lowest_grade_and_says_so():
    shown = PAGE.compute(start_values(PAGE, cut="none"))
    assert "down to No.3" in shown.scene.title and "Worst graded" in shown.scene.alt
    assert any("ends at No.3" in note and "only a grader can tell" in note for note in shown.notes)
    assert "Below No.3 only a grader can tell" in shown.scene.alt
    timber = PAGE.compute(start_values(PAGE, cut="none", width=8 * inch, depth=10 * inch))
    assert "down to No.2" in timber.scene.title  # no timber grade below No.2 is listed
    assert any(note.startswith("Not in the range") and "Eastern White Pine" in note for note in timber.notes)
    assert not any(note.startswith("Not in the range") for note in shown.notes)
    below = PAGE.compute(start_values(PAGE, cut="none", state="no grade"))
    assert "only a grader can tell" in below.gates[0] and "%" not in below.scene.alt
    assert all(row[2] == row[3] == "" for row in below.rows)
    assert not any(re.search(r"\d+ in|Hz", row[1]) for row in below.rows if "sag" in row[0] or "freq" in row[0])
