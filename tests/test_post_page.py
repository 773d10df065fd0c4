"""The page of the post: what it draws over its controls, and that its rows are the library's own answers."""

import math

import pytest
from label_boxes import label_overlaps, labels_of

from structlib.ground.lumber import find_material
from structlib.ground.showing import show
from structlib.ground.units import ft, inch, plf
from structlib.pages.kit.show import start_values
from structlib.pages.topics.post.page import UNKNOWN, PostPage
from structlib.pictures.drawings import parts
from structlib.pictures.scene import Line, flat, outside
from structlib.rules.choice import RULEBOOK
from structlib.rules.us import columns, footings

PAGE = PostPage()
SWEEP = [
    {},
    {"height": 12 * ft},
    {"height": 4 * ft, "pad": 12 * inch},
    {"height": 12 * ft, "post_plies": 1},
    {"post_plies": 1, "held": "all"},
    {"post_plies": 5, "held": "all", "pad": 48 * inch, "span": 16 * ft, "snow": 900 * plf},
    {"held": "middle", "height": 12 * ft, "plate": "hem-fir"},
    {"made": "solid", "size": "4", "post_wood": "fir"},
    {"made": "solid", "size": "8", "eccentricity": 3 * inch},
    {"made": "bolted", "size": "8", "post_plies": 5, "eccentricity": 1 * inch},
    {"size": "4", "post_plies": 2, "ends": 1, "dead": 0.0, "live": 0.0, "depth": 3.5 * inch, "plies": 1},
    {"dead": 3000 * plf, "live": 3000 * plf, "snow": 3000 * plf, "span": 16 * ft, "plies": 5},
    {"soil": UNKNOWN},
    {"soil": "solid rock", "plate": "spf", "ends": 1},
    {"plate": "spf", "blocks": "joists"},
    {"plate": "fir", "blocks": "blocks", "above": "none"},
    {"size": "6"},
    {"above": "chimney"},
]


@pytest.mark.parametrize("system", ["us", "metric"])
@pytest.mark.parametrize("frame", parts.FRAMES)
@pytest.mark.parametrize("changes", SWEEP, ids=str)
def test_no_label_meets_another_and_nothing_leaves_the_picture(changes, frame, system):
    page = PostPage(system=system)
    values = start_values(page, **changes)
    scene = page.compute(values, start_values(page), frame).scene
    assert label_overlaps(scene) == [] and outside(scene) == []
    assert scene.title and scene.title in scene.alt


def _axes(scene):
    return [item.points for item in flat(scene.items) if type(item) is Line and item.role in ("axis", "ground")]


@pytest.mark.parametrize("frame", parts.FRAMES)
def test_axes_floor_and_places_of_texts_stay_while_sliders_move(frame):
    start = PAGE.compute(start_values(PAGE), frame=frame).scene
    places = {(label.x, label.y) for label in labels_of(start) if label.plate == "" and label.size >= 20}
    for changes in ({"height": 11 * ft}, {"pad": 20 * inch}, {"span": 5 * ft}, {"post_plies": 4}):
        scene = PAGE.compute(start_values(PAGE, **changes), frame=frame).scene
        assert _axes(scene) == _axes(start)
        moved = {(label.x, label.y) for label in labels_of(scene) if label.plate == "" and label.size >= 20}
        assert moved <= places | {(x, y) for x, y in moved if y < 70}  # the title may take one line or two


def _rows(**changes):
    shown = PAGE.compute(start_values(PAGE, **changes))
    return {row[0]: row for row in shown.rows}


def test_rows_are_what_the_rules_answer_when_asked_directly():
    values = start_values(PAGE, height=9 * ft, post_plies=4, made="bolted", plate="hem-fir", pad=30 * inch)
    rows = _rows(**{k: values[k] for k in ("height", "post_plies", "made", "plate", "pad")})
    beam_load = sum(values[k] for k in ("dead", "live", "snow")) * values["span"]
    beam_own = PAGE.result(tuple(values.items())).beam.member.weight_per_length * values["span"]
    wood = find_material("Hem-Fir", "No.2", "2x8")
    post = columns.Column(wood, 1.5 * inch, 7.25 * inch, 9 * ft, plies=4, fastening="bolted")
    own = wood.weight_density * 6 * inch * 7.25 * inch * 9 * ft
    load = beam_load + beam_own + own
    live = RULEBOOK.combinations({"live"})[1]
    demand = [columns.ColumnDemand(live, load)]
    assert rows["load on the post"][1] == show(load, "force")
    for check in columns.column_checks(post, demand):
        assert rows[check.name][1] == show(check.asked, check.dimension)
        assert rows[check.name][3].split(" %")[0] == show(check.share, "ratio").split(" %")[0]
    plate = columns.plate_check(post, demand, find_material("Hem-Fir", "No.2"))
    assert rows["plate under the post"][3].startswith(show(plate.share, "ratio"))
    soil = footings.find_soil("clay or silt")
    thick = footings.pad_thickness(side=30 * inch, base=6 * inch)
    side = footings.pad_side(load=load, soil_pressure=soil.pressure, thickness=thick)
    up = math.ceil(side / inch * 2) / 2 * inch  # what is asked for is never rounded down
    assert rows["pad side asked, this soil"][1] == show(up, "section length", precision=2)


def test_one_side_loaded_stands_off_the_middle_of_the_post():
    """Two ends on 4 1/2 in, each on half: by hand, 1697 plf on 7 ft one side and 617 plf on the other."""
    own_dead = 602.0 + 33.6 * 6 * 11.25 / 144
    full, empty = (own_dead + 1080) * 3.5, own_dead * 3.5
    note = next(note for note in PAGE.compute(start_values(PAGE)).notes if "Both beam ends" in note)
    push, off = (float(note.split(word)[0].split()[-1].replace(",", "")) for word in (" lb stand", " in off"))
    assert push == pytest.approx(full + empty, rel=1e-3)
    assert off == pytest.approx((full - empty) * (4.5 / 4) / (full + empty), abs=0.006)
    assert not any("Both beam ends" in note for note in PAGE.compute(start_values(PAGE, ends=1)).notes)


def test_a_post_too_slender_is_told_and_the_rest_is_still_shown():
    values = start_values(PAGE, post_plies=1, height=8 * ft)
    shown = PAGE.compute(values)
    names = [row[0] for row in shown.rows]
    assert "too slender" in shown.scene.title
    assert "compression" not in names and "soil under the pad" in names
    assert any("too slender" in note for note in shown.notes)


def test_unknown_soil_withdraws_every_verdict_and_keeps_what_is_asked():
    shown = PAGE.compute(start_values(PAGE, soil=UNKNOWN))
    assert shown.gates and shown.scene.title.startswith("Stop and call")
    assert all(row[2] == "" and row[3] == "" for row in shown.rows)
    assert "%" not in shown.scene.alt
    off = PAGE.compute(start_values(PAGE, soil=UNKNOWN, eccentricity=1 * inch))
    assert not any("%" in row[1] for row in off.rows)  # a sum of shares is a verdict, wherever it stands
    assert _rows(soil=UNKNOWN)["compression"][1] == _rows()["compression"][1]


def test_the_beam_above_feeds_the_post():
    one, two = _rows(ends=1), _rows(ends=2)
    assert one["load on the post"] != two["load on the post"]
    longer = _rows(span=8 * ft)
    number = lambda row: float(row[1].split()[0].replace(",", ""))  # noqa: E731
    own = 3.5  # pounds a foot and more of the beam, and the post's own 40 lb, stay
    assert number(longer["load on the post"]) / number(two["load on the post"]) == pytest.approx(8 / 7, rel=own / 1000)


@pytest.mark.parametrize(("held", "bows"), [("none", "sideways"), ("all", "along its depth")])
def test_the_alternative_text_says_which_way_it_bows_and_what_holds_it(held, bows):
    alt = PAGE.compute(start_values(PAGE, held=held)).scene.alt
    assert bows in alt
    assert ("a wall holds it all along" in alt) == (held == "all")


@pytest.mark.parametrize("size, gates", [("8", 0), ("6", 1), ("4", 1)])
def test_plies_that_hang_past_a_narrower_post_are_a_gate(size, gates):
    """Four plies are 6 in wide; a 2x8 is 7 1/4 in, a 2x6 5 1/2 in, a 2x4 3 1/2 in."""
    shown = PAGE.compute(start_values(PAGE, size=size, above="none"))
    assert len(shown.gates) == gates and all("hangs past the post" in gate for gate in shown.gates)
    assert any("%" in row[3] for row in shown.rows) == (not gates)
    assert shown.scene.title.startswith("Stop and call") == bool(gates)


def test_blocks_below_a_floor_s_plate_are_asked_for():
    start = {"plate": "spf", "above": "none"}
    unlooked, none, solid = (
        PAGE.compute(start_values(PAGE, **start, blocks=one)) for one in (UNKNOWN, "joists", "blocks")
    )
    assert unlooked.scene.title.endswith("blocks below: not looked yet") and not unlooked.gates
    assert "no solid blocks below" in none.gates[0] and not any("%" in row[3] for row in none.rows)
    assert not solid.gates and "not looked" not in solid.scene.title
    for shown in (unlooked, none, solid):
        rows = {row[0]: row for row in shown.rows}
        assert rows["solid blocks below that plate"][1] == rows["load on the post"][1]
    on_steel = PAGE.compute(start_values(PAGE, above="none"))
    assert "not looked" not in on_steel.scene.title
    assert not any("blocks" in row[0] for row in on_steel.rows)
