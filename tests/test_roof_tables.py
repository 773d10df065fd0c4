"""Tables and pictures beside the bench of the roof: numbers by hand, and refusals that stay sentences."""

import pytest
from label_boxes import label_overlaps

from structlib.ground.reading import read
from structlib.ground.refusals import BadInput, OutsideRule
from structlib.ground.units import ft, inch, psf
from structlib.pages.topics.ridge import myths as ridge_myths
from structlib.pages.topics.ridge import predictions as ridge_predictions
from structlib.pages.topics.ridge import snow as roof_snow
from structlib.pages.topics.ridge import tables as ridge_tables
from structlib.pages.topics.ridge import work as ridge_work
from structlib.pages.topics.roof import example as roof_example
from structlib.pages.topics.roof import myths, predictions
from structlib.pages.topics.roof import tables as roof_tables
from structlib.pages.topics.roof import work as roof_work
from structlib.pictures.drawings import parts
from structlib.pictures.drawings.headroom import HeadroomCurve, HeadroomView, draw_headroom
from structlib.pictures.scene import outside
from structlib.rules.us import roof_ties

TABLES = [
    roof_snow.snow_steps,
    roof_snow.colder_roof,
    roof_snow.one_side_snow,
    roof_snow.blown_from_above,
    roof_tables.collar_tie,
    roof_tables.what_ties_are_called,
    ridge_tables.board_or_beam,
    ridge_tables.stiff_peak,
    ridge_work.dormer,
    roof_work.heel_nails,
    roof_work.slipping_joints,
    roof_work.bolted_joint,
    roof_tables.formula_beside_frame,
]


def _by_name(table):
    return {row[0]: row[1:] for row in table.rows}


def _pounds(text):
    return float(text.split()[0].replace(",", ""))


@pytest.mark.parametrize("system", ["us", "metric"])
@pytest.mark.parametrize("table", TABLES, ids=lambda table: table.__name__)
def test_every_table_is_told_in_both_systems_and_fills_its_columns(table, system):
    found = table(system=system)
    assert found.rows and all(len(row) == len(found.head) for row in found.rows)
    assert all(isinstance(cell, str) and "nan" not in cell for row in found.rows for cell in row)
    if system == "metric":
        units = [word for row in found.rows for cell in row[1:] for word in cell.split()]
        assert not {"psf", "plf", "lb", "lb-ft"} & set(units)


def test_collar_tie_balances_about_the_ridge():
    """45 psf on 16 in of a 24 ft roof: turned about the ridge, 60 x 12 x 6 = 4,320 lb-ft."""
    for _, low, high, _, _ in roof_tables.collar_tie().rows:
        turning = 6 * (_pounds(low) if low != "none" else 0.0)
        if high != "none":
            way = -1 if high.startswith("pressed") else 1
            turning += way * 0.3 * 6 * _pounds(high.removeprefix("pressed with ").removeprefix("pulled with "))
        assert turning == pytest.approx(4320, abs=6)


def test_snow_steps_by_hand():
    loads = [row[2] for row in roof_snow.snow_steps(ground=50 * psf, rise=4, thermal="heated").rows]
    assert "Eq. 7.3-1, seen" in roof_snow.snow_steps().rows[1][3]  # as the 0.7 in the data
    assert roof_snow.snow_steps().rows[3][3] == "Fig. 7.4-1; transcribed"
    assert loads[:3] == ["50 psf", "35 psf", "35 psf"] and loads[-1] == "50 psf and 0 psf"
    steep = roof_snow.snow_steps(rise=12).rows[-1]
    assert steep[2] == "not asked" and len(steep[3]) > 20


def test_snow_on_one_side_by_hand():
    rows = _by_name(roof_snow.one_side_snow())
    # balanced 30.8 + 15 psf both sides; blown 40 + 15 and 0 + 15; a strip 16 in wide, 24 ft and 6 ft
    strip = 16 / 12
    assert rows["pull in the tie"] == (
        f"{45.8 * strip * 24**2 / 48:.0f} lb",
        f"{(55 + 15) / 2 * strip * 24**2 / 48:.0f} lb",
    )
    assert rows["upright force across the ridge joint"] == ("0 lb", f"{strip * 24 * 40 / 8:.0f} lb")
    assert rows["load on the wall of the loaded side"][1] == f"{strip * 24 * (3 * 55 + 15) / 8:.0f} lb"


def test_snow_blown_from_a_higher_roof_by_hand():
    """Height by the formula of the figure in feet and psf; 30 lb a cubic foot at most; four heights wide."""
    for feet, row in zip((20, 40, 100), roof_snow.blown_from_above(ground=50 * psf).rows, strict=True):
        height = 0.43 * feet ** (1 / 3) * (50 + 10) ** 0.25 - 1.5
        assert row[0] == f"{feet} ft"
        assert _pounds(row[2]) == pytest.approx(height * (0.13 * 50 + 14), abs=0.06)
        assert read(row[1], "length") / ft == pytest.approx(height, abs=1 / 12 / 16)
        assert read(row[3], "length") / ft == pytest.approx(4 * height, abs=1 / 12 / 2)
    with pytest.raises(OutsideRule):
        roof_snow.blown_from_above(clear_height=1 * ft)


def test_ridge_board_and_beam_by_hand():
    rows = _by_name(ridge_tables.board_or_beam(ridge_span=10 * ft))
    assert rows["load along it"] == ("none", "540 plf")
    assert rows["bending in it"][1] == f"{540 * 100 / 8:,.0f} lb-ft"
    assert rows["under it"][1] == "end posts 2,700 lb, middle post 5,400 lb"


def test_stiff_peak_shows_the_demand_and_the_gate_only():
    table = ridge_tables.stiff_peak()
    assert table.caption.startswith("Stop and call first") and "engineered" in table.caption
    assert table.rows[0][1] == f"{60 * 24**2 / 8:,.0f} lb-ft" and table.rows[1][1] == "1,080 lb-ft"
    assert not any("%" in cell for row in table.rows for cell in row)


def test_dormer_headers_by_hand():
    rows = _by_name(ridge_work.dormer(rafters_cut=2, below=3 * ft, above=5 * ft))
    assert rows["opening between trimmers"][1] == "4 ft"
    assert rows["load along the headers"][1] == "lower 67.5 plf, upper 113 plf"  # 112.5, whole from 100 on
    assert rows["each header hangs on each trimmer with"][1] == "135 lb and 225 lb"
    # a trimmer over 12 ft: 30 plf of its own, 135 lb at 3 ft, 225 lb at 7 ft; shear 30 lb just before 7 ft
    left = 30 * 6 + 135 * 9 / 12 + 225 * 5 / 12
    assert left - 30 * 7 - 135 > 0 > left - 30 * 7 - 135 - 225
    moment = left * 7 - 135 * 4 - 15 * 7**2
    assert rows["bending in a rafter or trimmer"][1] == f"{moment:,.0f} lb-ft"


@pytest.mark.parametrize("system", ["us", "metric"])
@pytest.mark.parametrize("frame", parts.FRAMES)
@pytest.mark.parametrize(
    "changes",
    [
        {},
        {"rafters_cut": 1},
        {"rafters_cut": 5, "below": 0.5 * ft, "above": 0.5 * ft},
        {"below": 5 * ft, "above": 6 * ft},
    ],
    ids=str,
)
def test_dormer_plan_is_drawn_in_every_frame(changes, frame, system):
    scene = ridge_work.dormer_plan(frame=frame, system=system, **changes).scene
    assert label_overlaps(scene) == [] and outside(scene) == []
    assert scene.title in scene.alt and "cut for an opening" in scene.alt


def test_dormer_plan_refuses_what_is_no_opening():
    for bad in ({"rafters_cut": 6}, {"below": 6 * ft, "above": 6 * ft}):
        with pytest.raises(BadInput):
            ridge_work.dormer_plan(**bad)


def test_slipping_joints_by_hand():
    """A tie at the eaves: twice the slip, and the stretch; a third up: half as much again."""
    rows = _by_name(roof_work.slipping_joints())
    inches = {name: [float(cell.split()[0]) for cell in row] for name, row in rows.items()}
    for name, times in (("at the eaves", 1.0), ("a quarter up", 4 / 3), ("a third up", 1.5)):
        bent, less, more = inches[name]
        assert more - less == pytest.approx(times * 2 / 16, abs=0.011)
    assert inches["at the eaves"][0] == 0.0 and inches["a third up"][0] > inches["a quarter up"][0] > 0.5


def test_heel_nails_are_those_of_the_table_and_of_the_thrust():
    for slope, thrust, table, computed, plan, _ in roof_work.heel_nails().rows:
        rise = int(slope.split()[0])
        assert thrust == f"{31 * 16 / 12 * 24**2 / (8 * rise):,.0f} lb"
        assert int(table) >= 3 and int(computed) >= 1 and int(computed) <= int(table)
        assert plan == table


def test_bolts_share_the_pull():
    one, two = (roof_work.bolted_joint(bolts=count).rows[0] for count in (1, 2))
    assert one[1] == "960 lb" and two[1] == "480 lb" and one[2] == two[2]


def test_layers_need_a_trigger_and_where_it_comes_from():
    rows = _by_name(ridge_work.layers_added(trigger=0.15, trigger_source="an example"))
    # 45 psf before; 2.2 psf more dead and a tenth more snow after
    change = f"{100 * (2.2 + 3) / 45:+.1f} %"
    assert all(row[2] == change and row[3] == "below the trigger" for row in rows.values())
    with pytest.raises(BadInput):
        ridge_work.layers_added(trigger=0.05, trigger_source="")
    with pytest.raises(TypeError):
        ridge_work.layers_added()


def test_names_of_ties_and_their_demands():
    rows = _by_name(roof_tables.what_ties_are_called())
    assert rows["50 %"][2:] == ("2.00×", "3.00×")
    assert all(row[1] == roof_ties.TIE_WORDS[row[0]] for row in rows.values())


@pytest.mark.parametrize("system", ["us", "metric"])
@pytest.mark.parametrize("frame", parts.FRAMES)
@pytest.mark.parametrize(
    "changes",
    [
        {},
        {"building_span": 32 * ft, "rise": 16 * ft, "load": 150 * psf},
        {"building_span": 12 * ft, "rise": 2 * ft},
    ],
)
def test_headroom_is_drawn_in_every_frame(changes, frame, system):
    scene = roof_tables.headroom(frame=frame, system=system, **changes).scene
    assert label_overlaps(scene) == [] and outside(scene) == []
    assert "engineered" in scene.alt and scene.title in scene.alt


def test_headroom_refuses_what_is_no_curve():
    curve = HeadroomCurve("pull", "force", (1.0, 2.0), "1.5 times")
    view = HeadroomView("A title", (0.0, 0.5), (curve,), 1 / 3, ((0.0, "0 in"),))
    assert draw_headroom(view).title == "A title"
    for bad in ((0.0, 0.25, 0.5), (0.0, float("nan"))):
        with pytest.raises(BadInput):
            draw_headroom(HeadroomView("A title", bad, (curve,), 0.1, ()))


def test_myths_and_predictions_by_hand():
    steep = myths.steep_roofs_push_more()
    for rise in (3, 6, 12):
        assert f"{50 * 24**2 / (8 * rise):,.0f} plf" in steep
    assert "2,880 lb" in myths.collar_ties_stop_spreading()  # 720 lb over a quarter of the lever
    assert "540 plf" in ridge_myths.a_bigger_ridge_board_carries()  # 45 psf on half of 24 ft
    assert ridge_predictions.share_of_the_ridge().right == "half of it"
    assert ridge_predictions.colder_roof().right == "it carries more snow"
    for ask in (predictions.tie_a_third_up, predictions.collar_under_weight):
        found = ask()
        assert found.right in found.choices and found.because.endswith(".")


def test_size_of_the_demo_roof_is_that_of_the_page():
    from structlib.pages.kit.show import start_values
    from structlib.pages.topics.roof.page import RoofPage

    values = start_values(RoofPage())
    assert (2 * values["span"], values["rise"] * 2 * ft / 2, values["spacing"]) == (
        roof_example.SPAN,
        roof_example.RISE,
        roof_example.SPACING,
    )
    assert (values["dead"], values["snow"]) == (roof_example.DEAD, roof_example.SNOW)
    assert roof_example.SPACING == 16 * inch
