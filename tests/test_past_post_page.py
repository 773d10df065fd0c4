"""The page of notebook 10: drawing, camera, gates, rows beside direct calls of the library, tables."""

import re
from itertools import product

import pytest
from label_boxes import label_overlaps, labels_of

from structlib.ground.lumber import find_material
from structlib.ground.refusals import BadInput
from structlib.ground.showing import show
from structlib.ground.tables import table_rows
from structlib.ground.units import ft, inch, kip, lb, plf, psi
from structlib.mechanics.beams import Beam, LineLoad, PointLoad, Support, solve
from structlib.pages.kit.show import published, start_values
from structlib.pages.kit.verdict import CAUTION
from structlib.pages.topics.meanwhile.page import GATE as MEANWHILE
from structlib.pages.topics.past_post import tables
from structlib.pages.topics.past_post.page import BEYOND_THE_POST, BEYOND_THE_WALL, LONG_PIECES, PastPostPage
from structlib.pictures.drawings.past_post import PastPostView, PostBelow, draw_past_post
from structlib.pictures.scene import Line, flat, outside

KINDS = ("over", "wall", "two", "three", "out")
FRAMES = ("page", "wide", "tall")
NO_POST = {"post_dead": 0.0, "post_live": 0.0}


def _shown(system="us", frame="page", before=None, **changes):
    page = PastPostPage(system)
    return page.compute(start_values(page, **changes), before, frame)


def _row(shown, name):
    return next(row for row in shown.rows if row[0] == name)


@pytest.mark.parametrize("frame", FRAMES)
@pytest.mark.parametrize("kind", KINDS)
@pytest.mark.parametrize("system", ["us", "metric"])
def test_no_label_overlaps_or_leaves_the_picture(kind, frame, system):
    page = PastPostPage(system)
    for span, past, post, live, drawn, wood in product(
        (6 * ft, 11.75 * ft, 16 * ft),
        (0.5 * ft, 6 * ft),
        (0.0, 20 * kip),
        (0.0, 2000 * plf),
        ("most", "lift"),
        ("fir", "lvl 2.0"),
    ):
        if kind not in ("over", "wall") and (past > ft or post):
            continue
        values = start_values(
            page,
            kind=kind,
            span=span,
            overhang=past,
            post_live=post,
            live=live,
            drawn=drawn,
            wood=wood,
        ) | {"depth": 24 * inch}  # deeper than any piece listed
        scene = page.compute(values, {**values, "span": 9 * ft, "kind": "over"}, frame).scene
        assert label_overlaps(scene) == [] and outside(scene) == [], values


@pytest.mark.parametrize("kind", KINDS)
def test_the_camera_stays_while_span_and_overhang_move(kind):
    """The left support keeps its place, and the drawn length of the beam grows in step with the true one."""
    drawn = []
    for span in (8 * ft, 12 * ft, 16 * ft):
        scene = _shown(kind=kind, span=span, overhang=2 * ft).scene
        wood = next(item for item in flat(scene.items) if getattr(item, "role", "") == "wood")
        xs = [x for x, _ in wood.points]
        spans = {"two": 2, "three": 3, "out": 2}.get(kind, 1)
        drawn.append((min(xs), (max(xs) - min(xs)) / (spans * span + (2 * ft if kind in ("over", "wall") else 0))))
    assert len({round(left, 6) for left, _ in drawn}) == 1
    assert max(scale for _, scale in drawn) == pytest.approx(min(scale for _, scale in drawn))


def test_text_lanes_do_not_move_with_the_sliders():
    def heights(**changes):
        labels = labels_of(_shown(kind="two", **changes).scene)
        return sorted({round(label.y, 3) for label in labels if label.y > 66})  # below the title

    assert heights(span=6 * ft) == heights(span=16 * ft) == heights(plies=1)


def test_what_lifts_is_said_in_its_own_word_and_drawn_in_its_own_line():
    scene = _shown().scene
    label = next(label for label in labels_of(scene) if label.text.startswith("hold down"))
    assert label.role == "governs" and label.bold
    assert any(getattr(item, "role", "") == "governs" and not isinstance(item, Line) for item in flat(scene.items))
    calm = _shown(post_dead=0.0, post_live=0.0, overhang=0.5 * ft).scene
    assert not any(label.text.startswith("hold") for label in labels_of(calm))


def test_the_picture_says_which_stretches_are_loaded():
    scene = _shown(drawn="lift").scene
    assert "live 240 plf: past B" in " ".join(label.text for label in labels_of(scene))
    assert "live 240 plf: everywhere" in " ".join(label.text for label in labels_of(_shown(drawn="all").scene))


@pytest.mark.parametrize("frame", FRAMES)
def test_the_alternative_text_says_what_the_picture_says(frame):
    scene = _shown(frame=frame).scene
    for words in (
        "A beam on 2 supports",
        "12 ft from A to B",
        "3 ft from B to the tip",
        "hold down 298 lb",
        "post 2,000 lb",
        "times true size",
        "Moment: sags it",
    ):
        assert words in scene.alt, scene.alt
    assert "taken out" in _shown(kind="out").scene.alt and "foundation wall" in _shown(kind="wall").scene.alt


def test_a_ghost_changes_the_picture_and_no_row():
    page = PastPostPage()
    values, before = start_values(page), start_values(page, depth=9.25 * inch)
    plain, ghosted = page.compute(values), page.compute(values, before)
    assert plain.rows == ghosted.rows and plain.scene.items != ghosted.scene.items
    assert sum(getattr(item, "role", "") == "ghost" for item in flat(ghosted.scene.items)) == 2


def test_a_post_past_a_foundation_wall_stops_and_withdraws_every_verdict():
    shown = _shown(kind="wall")
    assert shown.gates[1:] == (BEYOND_THE_WALL,) and "A lifts" in shown.gates[0]
    assert all(row[2] == row[3] == "" for row in shown.rows)
    # past the wall 240 plf on 3 ft and 1500 lb lift A by 90 + 375 lb; dead presses 71.82 plf (11.82 its own
    # weight) on 12 ft and 3 ft, less 500 lb at the tip: all of it counts in D + L, 0.6 of it in the gate
    lift, dead = 240 * 3**2 / 24 + 1500 * 3 / 12, 71.82 * (12**2 - 3**2) / 24 - 500 * 3 / 12
    assert (f"{lift - dead:.0f}", f"{lift - 0.6 * dead:.0f}") == ("186", "298")
    assert _row(shown, "hold down A, D + L")[1] == "186 lb"
    assert shown.scene.title == "Stop and call first: A lifts, and 298 lb must hold it down"
    assert _shown(kind="wall", **NO_POST).gates == ()


def test_a_post_on_the_tip_stops_also_where_nothing_lifts():
    """700 lb on a 1 ft tip: A keeps its push, and the post above still withdraws every verdict."""
    shown = _shown(overhang=1 * ft, post_dead=200 * lb, post_live=500 * lb)
    assert shown.gates == (BEYOND_THE_POST,) and not any("hold down" in row[0] for row in shown.rows)
    assert all(row[2] == row[3] == "" for row in shown.rows)
    assert shown.scene.title == "Stop and call first: only what is asked is shown"


@pytest.mark.parametrize(
    ("changes", "lifting", "most"),
    [
        # 71.7 plf x 15 ft x 4.5 ft / 12 ft less 500 lb x 3 / 12, 0.6 of it, against 90 and 375 lb
        ({}, "Support A lifts", "298 lb"),
        # no dead load but the beam's own: the live load of one span lifts the other end with w L / 16
        ({"kind": "two", "dead": 0.0}, "Supports A and C lift", None),
        # D + L leaves a push on A, and 0.6 D + L does not: that is enough
        ({"kind": "two", "dead": 50 * plf}, "Supports A and C lift", None),
    ],
)
def test_a_support_that_lifts_stops_and_withdraws_every_verdict(changes, lifting, most):
    shown = _shown(**changes)
    assert shown.gates[0].startswith(lifting) and (most is None or most in shown.gates[0])
    assert all(row[2] == row[3] == "" for row in shown.rows)
    assert any(row[0].startswith("hold down A") for row in shown.rows)
    assert "%" not in shown.scene.alt and "Stop and call first" in shown.scene.alt


def test_lift_under_the_careful_combination_alone_is_a_gate_too():
    wood = find_material("Douglas Fir-Larch", "No.2", "2x12")
    dead = _dead(wood, 3, 11.25 * inch) - 10 * plf
    press, lift = 3 / 8 * dead * 12 * ft, 240 * plf * 12 * ft / 16
    assert press > lift > 0.6 * press
    shown = _shown(kind="two", dead=50 * plf)
    assert _row(shown, "hold down A, D + L")[1] == "0 lb"
    assert show(lift - 0.6 * press, "force") in shown.gates[0] and "0.6 of the dead load" in shown.gates[0]


def test_without_the_post_above_the_stops_are_gone_and_shares_show():
    """The step of the notebook that types 0 lb into both boxes."""
    shown = _shown(**NO_POST)
    assert shown.gates == () and sum(row[3].endswith("governs") for row in shown.rows) == 1
    assert not any("hold down" in row[0] for row in shown.rows)
    stress = 180 * psi
    assert _row(shown, "shear, the whole push counts")[2] == show(stress, "stress")


def test_long_sawn_pieces_are_told_to_have_joints():
    assert LONG_PIECES in _shown(kind="two").notes and "common practice" in LONG_PIECES
    assert LONG_PIECES in _shown(kind="three").notes and LONG_PIECES in _shown(kind="out").notes
    assert LONG_PIECES not in _shown(kind="two", span=10 * ft).notes  # 20 ft in all
    assert LONG_PIECES not in _shown(kind="two", wood="lvl 2.0").notes
    assert LONG_PIECES not in _shown(kind="over", span=16 * ft, overhang=6 * ft).notes


@pytest.mark.parametrize("kind", KINDS)
def test_the_last_note_is_the_caution_and_nothing_is_called_fine(kind):
    shown = _shown(kind=kind)
    assert shown.notes[-1] == CAUTION and any("ASCE 7-16, transcribed" in note for note in shown.notes)
    text = " ".join([shown.scene.alt, *shown.notes, *shown.gates, *(cell for row in shown.rows for cell in row)])
    assert not re.search(r"\b(safe|approved|OK)\b", text)


def _dead(wood, plies, depth):
    return 60 * plf + wood.weight_density * plies * 1.5 * inch * depth


def test_rows_of_an_overhang_are_those_of_direct_calls():
    """Pushes by turning about the other support, in plain arithmetic."""
    wood = find_material("Douglas Fir-Larch", "No.2", "2x12")
    dead, span, past, length = _dead(wood, 3, 11.25 * inch), 12 * ft, 3 * ft, 15 * ft
    back_dead = dead * length * (span - length / 2) / span - 500 * lb * past / span
    lift = 240 * plf * past**2 / 2 / span + 1500 * lb * past / span
    shown = _shown()
    assert _row(shown, "push of A, least (it lifts)")[1] == show(back_dead - lift, "force")
    downs = [row[1] for row in shown.rows if row[0].startswith("hold down A")]
    assert downs == [show(lift - back_dead, "force"), show(lift - 0.6 * back_dead, "force")]
    near = (dead * length**2 / 2 + 240 * plf * length**2 / 2 + 2000 * lb * length) / span
    assert _row(shown, "push of B, most")[1] == show(near, "force")
    moment = dead * past**2 / 2 + 240 * plf * past**2 / 2 + 2000 * lb * past
    assert _row(shown, "moment the other way")[1] == show(moment, "moment")
    stress = moment / (4.5 * inch * (11.25 * inch) ** 2 / 6)
    assert _row(shown, "bending, the other way")[1] == show(stress, "stress")


def test_rows_of_the_tip_are_those_of_the_solver():
    wood = find_material("Douglas Fir-Larch", "No.2", "2x12")
    stiffness = wood.modulus * 4.5 * inch * (11.25 * inch) ** 3 / 12
    supports = (Support(0.0), Support(12 * ft))
    tip = solve(
        Beam(
            15 * ft,
            stiffness,
            supports,
            (LineLoad(12 * ft, 15 * ft, 240 * plf), PointLoad(15 * ft, 1500 * lb)),
        )
    )
    row = _row(_shown(), "sag of the tip, live load")
    assert row[1] == show(tip.deflection(15 * ft), "small length") and row[2] == ""
    calm = _row(_shown(**NO_POST), "sag of the tip, live load (up)")
    assert calm[2] == show(6 * ft / 360, "small length")


def test_rows_with_the_post_out_are_those_of_one_long_span():
    wood = find_material("Douglas Fir-Larch", "No.2", "2x12")
    load = _dead(wood, 3, 11.25 * inch) + 240 * plf
    shown = _shown(kind="out")
    assert _row(shown, "moment that sags it")[1] == show(load * (24 * ft) ** 2 / 8, "moment")
    assert _row(shown, "push of C, most")[1] == show(load * 12 * ft, "force")
    assert "4 times the moment, 38.5 times the sag" in shown.scene.title


def test_more_depth_never_asks_for_more_share():
    page = PastPostPage()
    shares = []
    for depth in (7.25 * inch, 9.25 * inch, 11.25 * inch):
        row = _row(page.compute(start_values(page, depth=depth, kind="three")), "sag of a span, live load")
        shares.append(float(row[3].split()[0]))
    assert shares == sorted(shares, reverse=True) and shares[0] > shares[-1]


def test_one_check_governs():
    for kind in KINDS:
        if kind != "out":  # a gate stands there
            assert sum(row[3].endswith("governs") for row in _shown(kind=kind, **NO_POST).rows) == 1


def test_a_post_taken_out_meets_the_gate_of_temporary_walls_and_shows_no_share():
    for changes in ({}, {"span": 6 * ft, "plies": 5, "dead": 10 * plf, "live": 10 * plf}):
        shown = _shown(kind="out", **changes)
        assert MEANWHILE in shown.gates and shown.scene.title.startswith("Stop and call first")
        assert all(row[2:4] == ("", "") for row in shown.rows)
        assert _row(shown, "moment that sags it")[1]


def test_no_load_but_its_own_weight_still_gives_a_picture():
    shown = _shown(dead=0.0, live=0.0, post_dead=0.0, post_live=0.0)
    assert shown.rows and "nowhere" in shown.scene.alt


@pytest.mark.parametrize("name", [key for key in tables.printed_spans()])
def test_the_printed_values_are_met(name):
    assert "published" in published(name, tables.printed_spans()[name])
    assert {row["key"]: row for row in table_rows("published_checks")}[name]["verified"] == "seen"


def test_tables_say_what_the_library_finds():
    table = tables.middle_post_taken_out(line_load=300 * plf, span=12 * ft, bending_stiffness=1e12)
    rows = {row[0]: row for row in table.rows}
    assert rows["greatest moment"][-1] == "4.0 and 4.0 times" and rows["greatest sag"][-1] == "16.0 and 38.5 times"
    assert rows["push of the middle post"][1:3] == ("3,600 lb", "4,500 lb")
    # 0.6 of nothing is nothing: with dead load left out both columns are P a / L
    bare = tables.past_the_wall(span=12 * ft, dead=0.0, live=0.0, post_dead=0.0, post_live=1200 * lb)
    assert [row[3:] for row in bare.rows] == [
        ("100 lb",) * 2,
        ("200 lb",) * 2,
        ("300 lb",) * 2,
        ("400 lb",) * 2,
    ]
    steps = tables.stepped_and_tapered(span=12 * ft, line_load=200 * plf).rows
    assert [float(row[1].split()[0]) / float(steps[0][1].split()[0]) for row in steps] == pytest.approx(
        [1, 9 / 8, 9 / 8], rel=2e-3
    )
    with pytest.raises(BadInput, match="two or three"):
        tables.live_load_arrangements(spans=4, span=12 * ft, dead=1.0, live=1.0)


def _view():
    """Give a small view for examples and tests: a beam past its right post, invented numbers."""
    return PastPostView(
        title="The far end lifts",
        length=4500.0,
        depth=286.0,
        material_kind="sawn",
        supports=(
            PostBelow(0.0, "A", "post", "900 lb", "hold down 300 lb", True),
            PostBelow(3600.0, "B", "post", "4,000 lb", "least 900 lb"),
        ),
        measures=((0.0, 3600.0, "12 ft"), (3600.0, 4500.0, "3 ft")),
        stretches=((0.0, 3600.0, False), (3600.0, 4500.0, True)),
        load_text="live 240 plf past B; dead 60 plf all along",
        tip_text="post 2,000 lb",
        x=(0.0, 1800.0, 3600.0, 4500.0),
        sag=(0.0, -1.0, 0.0, 4.0),
        sag_text="0.16 in",
        moment=(0.0, -4e6, -9e6, 0.0),
        most=(0.0, 5e6, -1e6, 0.0),
        least=(0.0, -4e6, -9e6, 0.0),
        moment_text="Moment: sags it 3,700 lb-ft at most, the other way 6,600 lb-ft",
        moment_full=1e7,
        moment_full_text="7,400 lb-ft",
        camera_length=7000.0,
    )


def test_the_drawing_refuses_what_cannot_be_drawn():
    from dataclasses import replace

    view = _view()
    for change in (
        {"length": float("nan")},
        {"camera_length": 1000.0},
        {"sag": (0.0,)},
        {"supports": ()},
        {"moment_full": 0.0},
        {"title": ""},
        {"material_kind": "oak"},
    ):
        with pytest.raises(BadInput):
            draw_past_post(replace(view, **change))
    with pytest.raises(BadInput, match="frame"):
        draw_past_post(view, "square")
