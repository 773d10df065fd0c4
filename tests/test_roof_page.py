"""The page of the roof: what it draws over its controls, and that its rows are the library's own answers."""

from dataclasses import replace

import pytest

from structlib.ground.lumber import find_material
from structlib.ground.refusals import BadInput
from structlib.ground.showing import show
from structlib.ground.units import ft, inch, lb, plf, psf
from structlib.mechanics import frames, frames_spread
from structlib.pages.roof_page import RIDGE, RoofPage
from structlib.pages.show import start_values
from structlib.pictures.drawings import parts
from structlib.pictures.drawings.roof import RoofPair, RoofStat, RoofView, draw_roof
from structlib.pictures.scene import Line, Polygon, flat, label_overlaps, labels_of, outside
from structlib.rules.us import combined, dowels, roof_ties

PAGE = RoofPage()
SWEEP = [
    {},
    {"span": 6 * ft, "rise": 2, "holds": "tie"},
    {"span": 16 * ft, "rise": 12, "holds": "tie", "depth": 11.25 * inch},
    {"span": 16 * ft, "rise": 12, "holds": "raised tie", "height": 0.33, "depth": 3.5 * inch},
    {"span": 16 * ft, "rise": 2, "holds": "raised tie", "height": 0.2},
    {"span": 6 * ft, "rise": 12, "holds": "raised tie", "height": 0.8, "plies": 4, "depth": 11.25 * inch},
    {"holds": "raised tie", "height": 0.05},
    {"holds": "ridge beam"},
    {"holds": "ridge beam", "rise": 2, "span": 6 * ft, "snow": 0.0, "dead": 0.0, "roof_live": 0.0},
    {"holds": "nothing", "rise": 12, "span": 16 * ft, "snow": 120 * psf, "dead": 60 * psf},
    {"holds": "nothing", "rise": 2, "span": 6 * ft},
    {"sets": RIDGE, "holds": "ridge beam", "depth": 11.25 * inch, "plies": 4, "width": 32 * ft, "rise": 12},
    {"sets": RIDGE, "holds": "ridge beam", "depth": 3.5 * inch, "span": 16 * ft, "width": 12 * ft},
    {"sets": RIDGE, "holds": "tie", "depth": 3.5 * inch},
    {"sets": RIDGE, "holds": "nothing"},
    {
        "snow": 120 * psf,
        "dead": 60 * psf,
        "spacing": 24 * inch,
        "span": 16 * ft,
        "rise": 2,
        "depth": 3.5 * inch,
    },
    {"snow": 0.0, "roof_live": 0.0},
    {"wood": "lvl 2.0", "depth": 11.875 * inch, "sets": RIDGE, "holds": "ridge beam"},
    {"wood": "lvl 2.0", "depth": 9.5 * inch},
]


@pytest.mark.parametrize("system", ["us", "metric"])
@pytest.mark.parametrize("frame", parts.FRAMES)
@pytest.mark.parametrize("changes", SWEEP, ids=str)
def test_no_label_meets_another_and_nothing_leaves_the_picture(changes, frame, system):
    page = RoofPage(system=system)
    shown = page.compute(start_values(page, **changes), start_values(page), frame)
    scene = shown.scene
    assert label_overlaps(scene) == [] and outside(scene) == []
    assert scene.title and scene.title in scene.alt
    assert all("nan" not in cell and "inf" not in cell.split() for row in shown.rows for cell in row)


@pytest.mark.parametrize("frame", parts.FRAMES)
def test_camera_and_places_of_texts_stay_while_sliders_move(frame):
    def still(scene):
        ground = [item.points for item in flat(scene.items) if type(item) is Line and item.role == "ground"]
        texts = {
            (label.x, label.y) for label in labels_of(scene) if label.text[:1].isalpha() and label.y > 80
        }
        return ground, texts

    def rafter_depth(scene):
        wood = next(item for item in flat(scene.items) if isinstance(item, Polygon) and item.role == "wood")
        return max(y for _, y in wood.points)

    start = PAGE.compute(start_values(PAGE), frame=frame).scene
    for changes in ({"span": 8 * ft}, {"rise": 12}, {"depth": 11.25 * inch}, {"snow": 40 * psf}):
        scene = PAGE.compute(start_values(PAGE, **changes), frame=frame).scene
        assert still(scene)[0] == still(start)[0] and still(scene)[1] == still(start)[1]
    # to one scale: a house twice as wide is drawn twice as wide
    widths = []
    for span in (8 * ft, 16 * ft):
        walls = [
            item
            for item in flat(PAGE.compute(start_values(PAGE, span=span), frame=frame).scene.items)
            if isinstance(item, Polygon) and item.role == "wall"
        ]
        widths.append(max(x for w in walls for x, _ in w.points) - min(x for w in walls for x, _ in w.points))
    assert widths[1] == pytest.approx(2 * widths[0], rel=1e-9)


def _rows(**changes):
    return {row[0]: row for row in PAGE.compute(start_values(PAGE, **changes)).rows}


def test_rows_of_a_tied_pair_are_hand_arithmetic_and_the_rules_own_answers():
    rows = _rows(span=14 * ft, rise=6, snow=35 * psf, dead=15 * psf, depth=9.25 * inch)
    # 50 psf, 28 ft, 7 ft of rise: 50 x 28^2 / 56 = 700 plf; times 16/12 a pair
    assert rows["the same, by length of wall"][1] == "700 plf"
    assert (
        rows["push at each eave, a pair"][1]
        == show(700 * 16 / 12 * lb, "force")
        == rows["pull in the tie"][1]
    )
    assert rows["greatest bending in a rafter"][1] == show(50 * 16 / 12 * 14**2 / 8 * lb * ft, "moment")
    wood = find_material("Douglas Fir-Larch", "No.2", "2x10")
    load = 50 * psf * 16 * inch
    pull, slope = 700 * 16 / 12 * lb, (14**2 + 7**2) ** 0.5
    (direct,) = combined.rafter_checks(
        wood,
        width=1.5 * inch,
        depth=9.25 * inch,
        length=slope * ft,
        axial=pull * 14 / slope + load * 14 * ft * 7 / slope,
        moment=load * (14 * ft) ** 2 / 8,
        combination="D + S",
        time_factor=1.15,
        sharing_members=3,
    )
    assert rows["bending and compression"][3].split(" %")[0] == show(direct.share, "ratio").split(" %")[0]
    stress = pull / (1.5 * inch * 5.5 * inch)
    assert rows["pull in a 2x6 tie"][1] == show(stress, "stress")


def test_rows_of_a_raised_tie_and_its_spread():
    values = {"holds": "raised tie", "height": 0.25, "span": 12 * ft, "rise": 6, "depth": 7.25 * inch}
    rows, level = _rows(**values), _rows(**{**values, "holds": "tie"})
    thrust = 45 * 24**2 / 48 * 16 / 12
    assert level["pull in the tie"][1] == show(thrust * lb, "force")
    assert rows["pull in the tie"][1] == show(thrust / 0.75 * lb, "force")
    assert rows["greatest bending in a rafter"][1] == show(1080 / 0.75**2 * lb * ft, "moment")
    code = roof_ties.raised_tie_adjustment(height_fraction=0.25)
    assert rows["code: span of the rafter table, times"][1] == f"{code.span_factor:g}" == "0.76"
    wood = find_material("Douglas Fir-Larch", "No.2", "2x8")
    bending = frames_spread.spread_by_bending(
        line_load=45 * psf * 16 * inch,
        building_span=24 * ft,
        rise=6 * ft,
        height_fraction=0.25,
        bending_stiffness=wood.modulus * 1.5 * 7.25**3 / 12 * inch**4,
    )
    # the row also has the stretch of tie and rafters in it, a few hundredths
    assert bending / inch < float(rows["eaves part by"][1].split()[0]) < bending / inch + 0.06


def test_a_ridge_beam_carries_half_and_its_sag_lets_the_eaves_part():
    changes = {"sets": RIDGE, "holds": "ridge beam", "depth": 11.25 * inch, "plies": 3, "span": 12 * ft}
    rows = _rows(**changes)
    assert rows["push at each eave"][1] == "0 lb" and rows["load along the ridge"][1] == "540 plf"
    own = find_material("Douglas Fir-Larch", "No.2", "2x12").weight_density * 4.5 * 11.25 * inch**2
    end = (540 * plf + own) * (12 * ft) / 2
    assert rows["load on an end post"][1] == show(end, "force")
    sag = (
        PAGE.numbers(tuple(start_values(PAGE, **changes).items()))["ridge"].check("sag under all load").asked
    )
    assert float(rows["eaves part by"][1].split()[0]) == pytest.approx(2 * sag * 0.5 / inch, abs=0.02)
    assert "bending" in rows and "tie" not in " ".join(rows)


def test_without_a_beam_the_sliders_set_a_ridge_board():
    rows = _rows(sets=RIDGE, holds="tie", depth=7.25 * inch)
    direct = roof_ties.ridge_board_checks(
        board_width=1.5 * inch, board_depth=7.25 * inch, rafter_depth=7.25 * inch, rise=6
    )
    for check in direct:
        assert rows[check.name][3].startswith(show(check.share, "ratio"))


GATES = {
    "nothing": {"holds": "nothing"},
    "above a third": {"holds": "raised tie", "height": 0.5},
    "low slope": {"holds": "tie", "rise": 2},
}


@pytest.mark.parametrize("changes", GATES.values(), ids=GATES)
def test_a_gate_withdraws_every_verdict_and_keeps_what_is_asked(changes):
    shown = PAGE.compute(start_values(PAGE, **changes))
    assert shown.gates and shown.scene.title.startswith("Stop and call")
    assert all(row[2] == "" and row[3] == "" for row in shown.rows)
    assert "%" not in shown.scene.alt.replace("% of the way up", "")
    assert not any("nails" in row[0] or row[0].startswith("code") for row in shown.rows)
    assert any(row[0].startswith("push") for row in shown.rows)


def test_a_rafter_too_slender_is_told_and_no_share_governs():
    shown = PAGE.compute(start_values(PAGE, span=16 * ft, depth=3.5 * inch))
    rows = {row[0]: row for row in shown.rows}
    assert shown.scene.title.startswith("A rule does not cover")
    assert rows["bending and compression"][1:4] == ("", "", "no answer")
    assert not any("governs" in row[3] for row in shown.rows) and "Marked" not in shown.scene.alt
    assert any("too slender" in note for note in shown.notes)


def test_nails_are_counted_for_the_combination_that_needs_most():
    """60 psf that stays lasts longer than 2 psf of snow on top of it: 60 / 0.9 is more than 62 / 1.15."""
    values = {"dead": 60 * psf, "snow": 2 * psf, "roof_live": 0.0}
    thrust = 60 * psf * 16 * inch * (24 * ft) ** 2 / (48 * ft)
    piece = dowels.wood_piece(thickness=1.5 * inch, specific_gravity=0.5)
    asked = {"fastener": dowels.nail("16d common"), "rafter": piece, "tie": piece}
    alone = roof_ties.heel_joint_nails(thrust=thrust, time_factor=0.9, **asked).nails
    snow = roof_ties.heel_joint_nails(thrust=thrust * 62 / 60, time_factor=1.15, **asked).nails
    assert alone > snow
    assert _rows(**values)["16d common nails, each joint of the tie"][1] == str(alone)


def test_beyond_a_third_the_demand_goes_on_rising():
    pulls = [
        float(_rows(holds="raised tie", height=h)["pull in the tie"][1].split()[0].replace(",", ""))
        for h in (0.3, 0.4, 0.6, 0.8)
    ]
    assert pulls == pytest.approx([720 / (1 - h) for h in (0.3, 0.4, 0.6, 0.8)], abs=0.5)


def test_the_ghost_changes_the_picture_and_never_the_numbers():
    values, before = start_values(PAGE, span=10 * ft), start_values(PAGE)
    alone, beside = PAGE.compute(values), PAGE.compute(values, before)
    assert alone.rows == beside.rows and alone.notes == beside.notes
    ghosts = [item for item in flat(beside.scene.items) if getattr(item, "role", "") == "ghost"]
    assert ghosts and not [item for item in flat(alone.scene.items) if getattr(item, "role", "") == "ghost"]


@pytest.mark.parametrize(
    ("holds", "words"),
    [
        ("tie", "a tie at the eaves"),
        ("raised tie", "a tie 25 % of the way up"),
        ("ridge beam", "a ridge beam on a post"),
        ("nothing", "held by nothing"),
    ],
)
def test_the_alternative_text_says_what_holds_the_roof_and_every_number(holds, words):
    scene = PAGE.compute(start_values(PAGE, holds=holds)).scene
    assert words in scene.alt and "24 ft wide" in scene.alt
    for label in labels_of(scene):
        if label.bold and label.y > 500:
            assert label.text in scene.alt


VIEW = RoofView(
    "A title",
    RoofPair(3600.0, 1800.0, "tie"),
    184.0,
    38.0,
    184.0,
    "50 psf on plan",
    0.5,
    (RoofStat("pull", "600 lb"),),
    "24 ft",
)


@pytest.mark.parametrize(
    ("change", "word"),
    [
        ({"pair": RoofPair(-1.0, 1800.0, "tie")}, "half of the house width"),
        ({"pair": RoofPair(3600.0, float("nan"), "tie")}, "rise"),
        ({"pair": RoofPair(3600.0, 1800.0, "ties")}, "did you mean 'tie'"),
        ({"pair": RoofPair(9000.0, 1800.0, "tie")}, "wider than the picture"),
        ({"push": 2.0}, "push arrow"),
        ({"stats": (RoofStat("a", "b"),) * 5}, "room for four"),
        ({"stats": (RoofStat("a" * 80, "b"),)}, "too long"),
    ],
)
def test_a_view_that_cannot_be_drawn_is_refused(change, word):
    with pytest.raises(BadInput, match=word):
        draw_roof(replace(VIEW, **change))


def test_push_is_that_of_the_closed_form():
    now = PAGE.numbers(tuple(start_values(PAGE, rise=9, span=13 * ft).items()))
    assert now["thrust"] == pytest.approx(
        frames.rafter_thrust(line_load=45 * psf * 16 * inch, building_span=26 * ft, rise=9.75 * ft), rel=1e-12
    )
