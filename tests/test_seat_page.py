"""The page of the seat: its picture over a sweep, its gate, and its rows against the rules themselves."""

import random

import pytest
from label_boxes import label_overlaps, labels_of

from structlib.ground.units import ft, inch, lb, plf, psi
from structlib.pages.kit.controls import Box, Pick, Slide
from structlib.pages.kit.show import start_values
from structlib.pages.topics.seat import tables as seat_tables
from structlib.pages.topics.seat.page import SeatPage
from structlib.pictures.drawings.seat import STUD, Face, SeatView, draw_seat
from structlib.pictures.scene import Line, Polygon, flat, outside
from structlib.rules.members import BEAM_FACE, LEAST_SEAT, PLATE_FACE

PAGE = SeatPage()
FRAMES = ("page", "wide", "tall")

SWEEP = [
    {},
    {"span": 3 * ft, "dead": 0.0, "live": 0.0, "seat": 12 * inch, "plies": 5},
    {
        "span": 20 * ft,
        "dead": 3000 * plf,
        "live": 3000 * plf,
        "snow": 3000 * plf,
        "plies": 1,
        "depth": 3.5 * inch,
        "seat": 0.5 * inch,
    },
    {"wood": "lvl 2.0", "depth": 18 * inch, "plies": 5, "seat": 12 * inch, "span": 20 * ft},
    {"wood": "hem-fir", "below": "hem-fir"},
    {"seat": 1 * inch, "live": 0.0},
    {"below": "post"},
    {"below": "masonry"},
    {"below": "masonry", "seat": 0.5 * inch, "plies": 1, "snow": 1234 * plf},
    {"below": "post", "seat": 4.5 * inch, "wood": "lvl 2.0", "depth": 5.5 * inch},
]


def drawn(frame, before=None, page=PAGE, **changes):
    values = start_values(page, **changes)
    return page.compute(values, start_values(page, **before) if before is not None else None, frame).scene


@pytest.mark.parametrize("frame", FRAMES)
@pytest.mark.parametrize("system", ["us", "metric"])
def test_no_label_meets_another_and_none_leaves_the_picture(frame, system):
    page = SeatPage(system)
    for changes in SWEEP:
        for before in (None, {"seat": 6 * inch, "plies": 2, "span": 8 * ft}):
            scene = drawn(frame, before, page, **changes)
            assert label_overlaps(scene) == [] and outside(scene) == [], changes


@pytest.mark.parametrize("frame", FRAMES)
def test_any_position_of_the_controls_has_a_picture(frame):
    chance = random.Random(5)
    for _ in range(60):
        values = start_values(PAGE)
        for name in ("wood", "span", "depth", "plies", "dead", "live", "snow", "seat", "below"):
            control = next(one for one in PAGE.controls(values) if one.name == name)
            if isinstance(control, Pick):
                values[name] = chance.choice(control.options)[1]
            elif isinstance(control, (Slide, Box)):
                values[name] = control.low + chance.random() * (control.high - control.low)
            else:
                values[name] = chance.choice(control.values)
        values["plies"] = int(values["plies"])
        scene = PAGE.compute(values, frame=frame).scene
        assert label_overlaps(scene) == [] and outside(scene) == [], values


@pytest.mark.parametrize("frame", FRAMES)
def test_words_and_the_end_of_the_beam_stay_where_they_are(frame):
    """Only numbers, the inner edge and the heights move with a slider; every text keeps its line."""
    places, ends = set(), set()
    for seat in (1.5, 3, 6, 12):
        for plies in (1, 3, 5):
            scene = drawn(frame, seat=seat * inch, plies=plies)
            fixed = ("push", "crushing the beam", "crushing the plate", "from above")
            places.add(tuple((one.text, one.x, one.y) for one in labels_of(scene) if one.text in fixed))
            beam = max(
                (one for one in flat(scene.items) if isinstance(one, Polygon) and one.role == "wood"),
                key=lambda one: len(one.points),
            )
            ends.add(beam.points[0])
    assert len(places) == 1 and len(next(iter(places))) == 4 and len(ends) == 1


@pytest.mark.parametrize("frame", FRAMES)
def test_the_contact_area_is_drawn_to_scale(frame):
    """Twice the seat is twice as long, and as wide as the plies are thick, at one scale."""
    lengths = []
    for seat in (3 * inch, 6 * inch):
        scene = drawn(frame, seat=seat, plies=2)
        boxes = [one for one in flat(scene.items) if isinstance(one, Line) and one.role == "governs_thin"]
        # the outline from above is the tallest closed one
        outline = max(
            (one for one in boxes if one.points[0] == one.points[-1]),
            key=lambda one: max(y for _, y in one.points) - min(y for _, y in one.points),
        )
        xs, ys = zip(*outline.points)
        lengths.append((max(xs) - min(xs), max(ys) - min(ys)))
    (short, width), (long, same) = lengths
    assert long == pytest.approx(2 * short) and same == pytest.approx(width)
    assert width == pytest.approx(short)  # 3 in of seat, 3 in of plies


def test_the_picture_says_in_words_what_it_shows():
    alt = drawn("page").alt
    for part in (
        "The plate would be crushed first",
        "3 plies",
        "9 1/4 in deep",
        "4 1/2 in wide",
        "which governs",
        "13.50 in²",
        "Seat needed",
        "least: 1 1/2 in",
    ):
        assert part in alt
    assert drawn("page", depth=11.25 * inch).alt != alt


def test_the_ghost_is_dashed_and_changes_no_row():
    values, before = start_values(PAGE), start_values(PAGE, seat=6 * inch, plies=2)
    plain, ghosted = PAGE.compute(values), PAGE.compute(values, before)
    assert plain.rows == ghosted.rows
    ghosts = [one for one in flat(ghosted.scene.items) if getattr(one, "role", "") == "ghost"]
    assert ghosts and not [one for one in flat(plain.scene.items) if getattr(one, "role", "") == "ghost"]


def test_a_hand_worked_seat_comes_out():
    """6 ft clear, 3 in seats, 400 plf: the push is 400 x 6.25 / 2 lb and the beam's own weight on top."""
    values = start_values(PAGE, span=6 * ft, dead=0.0, live=400 * plf, plies=2)
    now = PAGE.result(tuple(values.items()))
    own = now.beam.member.weight_per_length / plf
    push = (400 + own) * 6.25 / 2
    beam, plate = now.check(BEAM_FACE), now.check(PLATE_FACE)
    assert now.push.axial / lb == pytest.approx(push, rel=1e-9)
    assert beam.asked / psi == pytest.approx(push / 9, rel=1e-9)
    assert beam.share == pytest.approx(push / 9 / 625, rel=1e-9)
    assert plate.share == pytest.approx(push / 9 / 425, rel=1e-9)
    assert [length / inch for length in now.lengths] == pytest.approx([push / 3 / 625, push / 3 / 425])
    assert now.jacks.count == 1 and now.governs is now.check(LEAST_SEAT)
    rows = {row[0]: row for row in PAGE.compute(values).rows}
    assert rows["push on the seat"][1] == f"{push:,.0f} lb"
    assert rows["crushing the plate"][3] == f"{100 * push / 9 / 425:.0f} %"
    assert rows["least seat of the code here"][1:4] == ("1 1/2 in", "3 in", "50 % governs")
    assert rows["bearing area factor"][1] == "1.00"


@pytest.mark.parametrize(
    ("changes", "title"),
    [
        ({}, "The plate would be crushed first"),
        ({"below": "post"}, "The beam would be crushed first"),
        ({"wood": "hem-fir", "below": "hem-fir"}, "Beam and plate are used alike"),
        ({"seat": 1 * inch, "dead": 100 * plf, "live": 0.0}, "Too short: the code asks for 1 1/2 in"),
        ({"dead": 100 * plf, "live": 0.0}, "The code's least seat governs: 50 % used"),
        ({"span": 20 * ft}, "The plate is asked 1."),
        ({"below": "masonry"}, "Stop and call first"),
    ],
)
def test_the_title_is_the_message(changes, title):
    assert drawn("page", **changes).title.startswith(title)


def test_masonry_is_a_gate_that_withdraws_every_verdict_and_keeps_the_demand():
    shown = PAGE.compute(start_values(PAGE, below="masonry"))
    assert len(shown.gates) == 1 and "engineer" in shown.gates[0]
    assert all(row[2] == "" and row[3] == "" for row in shown.rows)
    rows = {row[0]: row for row in shown.rows}
    assert "jack studs for the beam's face" not in rows  # no count is given for a beam on masonry
    assert rows["push on the seat"][1].endswith("lb") and rows["crushing the beam"][1].endswith("psi")
    assert rows["least seat of the code here"][1] == "3 in"
    assert "%" not in shown.scene.alt and not [one for one in labels_of(shown.scene) if "%" in one.text]


def test_end_grain_has_no_plate_to_crush():
    shown = PAGE.compute(start_values(PAGE, below="post"))
    assert not [row for row in shown.rows if "plate" in row[0]]
    assert any("columns" in note for note in shown.notes)


def test_a_face_that_is_used_up_is_hatched_as_high_as_a_plate_is_thick():
    faces = tuple(Face("crushing the plate", f"{share} %", share / 100, True) for share in (50, 100))
    view = SeatView(
        "t",
        76.2,
        234.95,
        2,
        38.1,
        "sawn",
        "plate",
        0.3,
        "1 lb",
        "3 in",
        "3 in",
        "9 in²",
        "9 in",
        faces,
        70.0,
        "2.76 in",
        38.1,
        "1 1/2 in",
        "1 1/2 in",
    )
    scene = draw_seat(view)
    outlines = [
        one
        for one in flat(scene.items)
        if isinstance(one, Line) and one.role == "governs_thin" and len(one.points) == 5
    ]
    heights = sorted(max(y for _, y in one.points) - min(y for _, y in one.points) for one in outlines)
    wide = max(x for x, _ in outlines[0].points) - min(x for x, _ in outlines[0].points)
    assert heights[1] == pytest.approx(wide / 76.2 * STUD) and heights[0] == pytest.approx(heights[1] / 2)


def test_notes_say_how_the_numbers_are_known_and_caution_comes_last():
    shown = PAGE.compute(start_values(PAGE))
    assert "licensed engineer" in shown.notes[-1]
    # the seat's own numbers are transcribed; so is the rest of the beam, whose check is shown beside them
    assert {word for what, word in shown.known if "seat" in what} >= {"transcribed"}
    assert shown.evidence.startswith("The weakest evidence here is transcribed:")


def test_the_picture_of_joists_is_free_of_overlaps():
    for system in ("us", "metric"):
        for gap in (0.0, 0.25 * inch, 1 * inch):
            for ply in (1.5 * inch, 1.75 * inch):
                scene = seat_tables.joist_picture(ply_width=ply, gap=gap, system=system)
                assert label_overlaps(scene) == [] and outside(scene) == []


def test_tables_of_the_notebook_by_hand():
    least = seat_tables.least_seats()
    assert [row[1] for row in least.rows] == ["1 1/2 in", "1 1/2 in", "3 in"]
    assert "common practice" in least.head[3]
    joists = seat_tables.joist_seats().rows
    assert [row[4] for row in joists] == ["1 1/2 in", "3 in", "4 1/2 in", "6 in"]
    assert "too short" in joists[0][2] and "too short" not in joists[1][2]
    assert "too short" in joists[1][3] and "too short" not in joists[2][3]
    # 12 ft of room and 9 1/4 in of depth: the square root of 144² - 9.25² is 143.70 in
    ways = seat_tables.swinging_in().rows
    assert ways[0][1] == "11 ft 11 11/16 in"
    # the root of 144² - 4.5² is 143.93 in: not 143 15/16, which would not go in
    assert ways[1][1] == "11 ft 11 7/8 in"
    # the root of 152² - 9.25² is 151.72 in; the far end keeps 1/2 in of its 4 in, the near one has the rest
    assert ways[3][1:] == ("12 ft 7 11/16 in", "4 3/16 in", "3 1/2 in")
    # the root of 148² - 9.25² is 147.71 in, but only 3 1/2 in of it may stay in the pocket of 4 in
    assert ways[4][1:] == ("12 ft 3 1/2 in", "3 1/2 in", "3 in")
    assert "1/2 in of clear space" in seat_tables.swinging_in().caption
    # half, two thirds and three quarters of 400 plf
    assert [row[1] for row in seat_tables.nailing_from_the_side().rows] == ["200 plf", "267 plf", "300 plf"]
    # 1150 psi x 1.1 along and 425 psi across, at 45 degrees: 2 P Q / (P + Q)
    assert seat_tables.at_an_angle().rows[4][2] == f"{2 * 1265 * 425 / (1265 + 425):.0f} psi"


def test_a_refused_layout_of_nails_is_told_in_its_row():
    rows = seat_tables.nailing_from_the_side(side_load=3000 * plf).rows
    assert rows[0][2] and not rows[2][2] and "closer than" in rows[2][4]


@pytest.mark.parametrize("system", ["us", "metric"])
def test_the_picture_of_the_beam_between_walls_is_to_scale_and_touches_both(system):
    for room, depth in ((8 * ft, 11.25 * inch), (12 * ft, 9.25 * inch), (16 * ft, 5.5 * inch)):
        scene = seat_tables.swing_picture(clear_width=room, depth=depth, system=system)
        assert label_overlaps(scene) == [] and outside(scene) == []
        walls = sorted(one.points[0][0] for one in flat(scene.items) if getattr(one, "role", "") == "ground")
        tilted = next(
            one
            for one in flat(scene.items)
            if isinstance(one, Polygon) and one.role == "wood" and one.points[0][1] != one.points[1][1]
        )
        xs = [x for x, _ in tilted.points]
        # its diagonal is as long as the room is wide, so it touches both walls and leaves neither
        assert min(xs) == pytest.approx(walls[0]) and max(xs) == pytest.approx(walls[1])
