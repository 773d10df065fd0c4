"""Every printed header cell at hand against the table made again, and what the tables leave out."""

from collections import Counter

import numpy
import pytest
import sympy
from tests_tally import record_published

from structlib.ground.refusals import BadInput, OutsideRule
from structlib.ground.tables import table_rows
from structlib.ground.units import ft, inch, plf, psf, psi
from structlib.rules.us import header_tables as headers
from structlib.rules.us.span_tables import as_printed, printed_length

CELLS = table_rows("us_header_spans")
HALF = 0.5  # in, the rounding of the tables
BASES = headers.header_bases()
ROOF = headers.find_header_basis("R602.7(1) roof")
FLOOR = headers.find_header_basis("R602.7(2) one floor")
OLD = headers.find_header_basis("R502.5(1) roof")


def name_of(cell):
    return " ".join(str(cell[word]) for word in ("basis", "ground_snow_psf", "building_width_ft", "size"))


def place(cell):
    snow = cell["ground_snow_psf"]
    return headers.find_header_basis(cell["basis"]), {
        "building_width": cell["building_width_ft"] * ft,
        "ground_snow": None if snow is None else snow * psf,
    }


def model(cell):
    basis, where = place(cell)
    return headers.header_span(basis, cell["size"], **where)


def inches_off(cell):
    return abs(model(cell).span - printed_length(cell["printed"])) / inch


@pytest.mark.parametrize("cell", [cell for cell in CELLS if not cell["odd"]], ids=name_of)
def test_printed_span_comes_out_within_the_rounding(cell):
    off = inches_off(cell)
    assert off <= HALF, f"{name_of(cell)}: {off:.3f} in from {cell['printed']}"
    assert as_printed(model(cell).span) == cell["printed"]
    record_published(f"span {cell['basis'].split(' ')[0]}", cell["verified"], off / HALF, name_of(cell))


def studs_by_hand(cell):
    """Pounds and inches: the most of all loads, over 405 psi of plies 1.5 in thick, in studs of 1.5 in."""
    basis, where = place(cell)
    load = max(one.line_load for one in headers.header_loads(basis, **where)) / plf
    push = load * printed_length(cell["printed"]) / ft / 2
    return numpy.ceil(push / (405 * 1.5 * int(cell["size"][0])) / 1.5 - 1e-9)


@pytest.mark.parametrize("cell", [cell for cell in CELLS if cell["jack_studs"] is not None], ids=name_of)
def test_printed_jack_studs_come_out_and_are_never_undercut(cell):
    assert model(cell).jack_studs >= cell["jack_studs"]
    if not cell["odd_studs"]:
        assert model(cell).jack_studs == studs_by_hand(cell) == cell["jack_studs"]
        record_published(f"jack studs {cell['basis'].split(' ')[0]}", cell["verified"], 0.0, name_of(cell))


def test_odd_counts_of_jack_studs_differ_by_one_and_are_explained():
    odd = {name_of(cell): studs_by_hand(cell) - cell["jack_studs"] for cell in CELLS if cell["odd_studs"]}
    assert odd == {
        "R502.5(1) roof 30.0 36.0 4-2x8": -1,  # printed, and kept
        "R502.5(1) center-bearing floor 30.0 28.0 2-2x6": 1,
        "R502.5(1) center-bearing floor 30.0 36.0 2-2x12": 1,
    }
    widths = numpy.array([30.0, 36.0]) * ft
    cell = headers.header_span(OLD, "4-2x8", building_width=widths, ground_snow=30 * psf)
    assert cell.jack_studs.tolist() == [1, 2]


@pytest.mark.parametrize("cell", [cell for cell in CELLS if cell["odd"]], ids=name_of)
def test_odd_cells_differ_are_explained_and_were_never_seen(cell):
    assert inches_off(cell) > HALF and as_printed(model(cell).span) == cell["model"] != cell["printed"]
    assert cell["verified"] in ("recalled", "recalled-agrees")


def test_cells_at_hand_are_counted_by_how_they_are_known():
    found = Counter((cell["basis"].split(" ")[0], cell["verified"]) for cell in CELLS)
    assert found == {
        ("R602.7(1)", "recalled-agrees"): 34,
        ("R602.7(1)", "seen"): 31,
        ("R602.7(1)", "recalled"): 2,
        ("R602.7(2)", "recalled-agrees"): 10,
        ("R602.7(2)", "seen"): 2,
        ("R502.5(1)", "seen"): 59,
        ("R502.5(1)", "recalled"): 2,
    }
    assert sum(bool(cell["odd"]) for cell in CELLS) == 3
    assert sum(len(headers.header_cells(basis)) for basis in BASES) == len(CELLS) == 140


def test_a_header_by_hand_in_pounds_and_feet():
    """3-2x10 under a roof, 24 ft, 50 psf: bending of the lowest No.2 with the table's 1.15, snow at 1.15."""
    cell = headers.header_span(ROOF, "3-2x10", building_width=24 * ft, ground_snow=50 * psf)
    load = 20 * (12 + 2) + 50 * (0.375 * 24 + 2 + 2 / 24)
    moment = 800 * 1.15 * 1.15 * 4.5 * 9.25**2 / 6
    assert cell.line_load / plf == pytest.approx(load, rel=1e-9)
    assert cell.span / inch == pytest.approx((8 * moment / (load / 12)) ** 0.5, rel=1e-9)
    assert cell.governs == "D + S" and cell.sag_span == numpy.inf
    assert cell.jack_studs == numpy.ceil(load / 12 * (cell.span / inch) / 2 / (4.5 * 405) / 1.5)


def test_the_older_table_asks_sag_of_all_load():
    cell = headers.header_span(OLD, "4-2x8", building_width=20 * ft, ground_snow=30 * psf)
    load = (20 + 2 / 3 * 30) * (10 + 2)
    sag = (384 * 1.3e6 * 6 * 7.25**3 / 12 / (5 * load / 12 * 360)) ** (1 / 3)
    assert cell.governs == "sag" and cell.span / inch == pytest.approx(sag, rel=1e-6)
    assert cell.bending_span > cell.span


def test_combinations_of_a_floor_and_a_roof_by_hand():
    basis = headers.find_header_basis("R602.7(1) center-bearing floor")
    loads = {
        one.name: one.line_load / plf
        for one in headers.header_loads(basis, building_width=24 * ft, ground_snow=30 * psf)
    }
    dead, live, snow = 20 * 14 + 10 * 6 + 121, 40 * 6, 30 * (9 + 2 + 2 / 24)
    assert loads == pytest.approx(
        {"D + L": dead + live, "D + S": dead + snow, "D + 0.75 L + 0.75 S": dead + 0.75 * (live + snow)}
    )
    two = headers.find_header_basis("R602.7(2) two floors")
    [only] = headers.header_loads(two, building_width=24 * ft)
    assert only.line_load / plf == pytest.approx(2 * 50 * 12 + 121)


def test_the_older_table_counts_jack_studs_for_floor_and_snow_together():
    """3-2x8, 28 ft, 30 psf: bending by floor load, studs by three quarters of both; two are printed."""
    basis = headers.find_header_basis("R502.5(1) center-bearing floor")
    cell = headers.header_span(basis, "3-2x8", building_width=28 * ft, ground_snow=30 * psf)
    dead, live, snow = 20 * 16 + 10 * 7 + 110, 40 * 7, 20 * 16
    assert cell.governs == "D + L" and cell.jack_studs == 2
    assert cell.line_load / plf == pytest.approx(dead + 0.75 * (live + snow), rel=1e-5)
    assert cell.span / inch == pytest.approx(
        (8 * 850 * 1.2 * 1.15 * 4.5 * 7.25**2 / 6 * 12 / (dead + live)) ** 0.5, rel=1e-5
    )


def test_a_second_floor_was_not_fitted_and_comes_out():
    """Two center-bearing floors: the loads of one with a second floor and a second wall; 11 cells seen."""
    one = headers.find_header_basis("R602.7(1) center-bearing floor")
    two = headers.find_header_basis("R602.7(1) two center-bearing floors")
    assert (two.floors, two.wall) == (2 * one.floors, pytest.approx(2 * one.wall))
    cells = headers.header_cells(two)
    assert len(cells) == 11 and {cell["verified"] for cell in cells} == {"seen"}


def test_an_array_of_building_widths_gives_what_single_widths_give():
    widths = numpy.array([12.0, 20.0, 36.0]) * ft
    many = headers.header_span(ROOF, "2-2x8", building_width=widths, ground_snow=30 * psf)
    ones = [headers.header_span(ROOF, "2-2x8", building_width=width, ground_snow=30 * psf) for width in widths]
    assert many.span == pytest.approx([one.span for one in ones])
    assert many.jack_studs.tolist() == [one.jack_studs for one in ones] and many.governs.tolist() == ["D + S"] * 3


def test_what_the_table_leaves_out_by_hand():
    cell = headers.header_span(ROOF, "2-2x12", building_width=24 * ft, ground_snow=70 * psf)
    found = {
        one.name: one
        for one in headers.left_out_of_header(ROOF, "2-2x12", building_width=24 * ft, ground_snow=70 * psf)
    }
    load, span = 280 + 70 * (9 + 2 + 2 / 24), cell.span / inch
    assert found["shear"].share == pytest.approx(1.5 * load / 12 * span / 2 / (3 * 11.25) / (175 * 1.15))
    assert found["bending, ordinary factors"].share == pytest.approx(1.1)  # the table's 1.1 for two plies
    stiffness = 1.4e6 * 3 * 11.25**3 / 12
    sag = 5 * load / 12 * span**4 / (384 * stiffness)
    assert found["sag under all load"].share == pytest.approx(sag / (span / 240))
    assert found["sag under live or snow"].share == pytest.approx(sag * (load - 280) / load / (span / 360))
    assert not any(one.decides for one in found.values())


def test_four_plies_leave_nothing_out_in_bending():
    found = headers.left_out_of_header(FLOOR, "4-2x10", building_width=24 * ft)
    assert {one.name: one.share for one in found}["bending, ordinary factors"] == pytest.approx(1.0)


def test_a_header_whose_top_edge_is_free_spans_less():
    assert headers.unheld_header_span(10 * ft, "2-2x8") / ft == pytest.approx(7.0)
    assert headers.unheld_header_span(10 * ft, "2-2x6") / ft == pytest.approx(10.0)
    assert headers.unheld_header_span(numpy.array([10.0, 20.0]) * ft, "3-2x12") / ft == pytest.approx([7.0, 14.0])


@pytest.mark.parametrize("basis", BASES, ids=lambda basis: basis.name)
def test_every_basis_makes_its_whole_table(basis):
    for size in basis.sizes:
        for snow in basis.snows or (None,):
            cell = headers.header_span(basis, size, building_width=numpy.array(basis.widths), ground_snow=snow)
            assert (cell.span > 1 * ft).all() and (numpy.diff(cell.span) < 0).all() and (cell.jack_studs >= 1).all()
    assert basis.bearing / psi == pytest.approx(405)
    known = {
        "R502.5(1) clear-span floor": "recalled",
        "R602.7(1) two center-bearing floors": "recalled-agrees",
    }
    assert basis.verified == known.get(basis.name, "back-solved")


@pytest.mark.parametrize(
    "ask, words",
    [
        (dict(basis=ROOF, size="2-2x8", building_width=40 * ft, ground_snow=30 * psf), "12 ft to 36 ft"),
        (dict(basis=ROOF, size="2-2x8", building_width=10 * ft, ground_snow=30 * psf), "12 ft to 36 ft"),
        (dict(basis=OLD, size="2-2x8", building_width=12 * ft, ground_snow=30 * psf), "20 ft to 36 ft"),
        (
            dict(basis=ROOF, size="2-2x8", building_width=24 * ft, ground_snow=40 * psf),
            "columns for 30 psf, 50 psf, 70 psf",
        ),
        (dict(basis=ROOF, size="2-2x8", building_width=24 * ft, ground_snow=100 * psf), "ask the engineer"),
    ],
)
def test_outside_the_table_is_refused(ask, words):
    with pytest.raises(OutsideRule, match=words):
        headers.header_span(**ask)


@pytest.mark.parametrize("snow", [50, 70])
@pytest.mark.parametrize("floor", ["center-bearing", "clear-span"])
def test_columns_of_the_older_table_that_are_not_understood_are_refused(floor, snow):
    """They came out too long; what is remembered of them comes out of no one set of loads."""
    basis = headers.find_header_basis(f"R502.5(1) {floor} floor")
    assert headers.header_span(basis, "2-2x8", building_width=28 * ft, ground_snow=30 * psf).span > 0
    with pytest.raises(OutsideRule, match=f"the {snow} psf column .* not known; read the printed table"):
        headers.header_span(basis, "2-2x8", building_width=28 * ft, ground_snow=snow * psf)
    with pytest.raises(OutsideRule, match="columns for 30 psf, 50 psf, 70 psf"):
        headers.header_span(basis, "2-2x8", building_width=28 * ft, ground_snow=40 * psf)


@pytest.mark.parametrize(
    "ask, words",
    [
        (dict(basis=ROOF, size="2-2x8", building_width=24 * ft), "goes by ground snow"),
        (dict(basis=FLOOR, size="2-2x8", building_width=24 * ft, ground_snow=30 * psf), "takes no snow"),
        (dict(basis=ROOF, size="2-2x9", building_width=24 * ft, ground_snow=30 * psf), "did you mean"),
        (dict(basis=OLD, size="1-2x8", building_width=24 * ft, ground_snow=30 * psf), "did you mean"),
    ],
)
def test_what_the_table_does_not_have_is_named(ask, words):
    with pytest.raises(BadInput, match=words):
        headers.header_span(**ask)


# ---- nonsense ----

NONSENSE = {
    "nan": float("nan"),
    "inf": float("inf"),
    "text": "24 ft",
    "yes": True,
    "a group": {"a": 1},
    "an empty list": [],
    "negative": -1.0,
    "400 ft": 400 * ft,
    "a symbol": sympy.Symbol("x"),
    "zero": 0.0,
}
GOOD = {"building_width": 24 * ft, "ground_snow": 30 * psf}


def one_sentence(error):
    text = str(error.value)
    assert text and "\n" not in text and len(text) < 700 and "Error" not in text and not text.endswith("."), text


@pytest.mark.parametrize("spoiler", NONSENSE.values(), ids=NONSENSE)
@pytest.mark.parametrize("name", GOOD)
@pytest.mark.parametrize(
    "ask",
    [
        lambda **more: headers.header_span(ROOF, "2-2x8", **more),
        lambda **more: headers.header_loads(ROOF, **more),
        lambda **more: headers.left_out_of_header(ROOF, "2-2x8", **more),
    ],
    ids=["span", "loads", "left out"],
)
def test_a_number_that_is_none_is_refused(ask, name, spoiler):
    assert ask(**GOOD)
    with pytest.raises((BadInput, OutsideRule)) as error:
        ask(**{**GOOD, name: spoiler})
    one_sentence(error)


@pytest.mark.parametrize("word", ["quux", 7.5, ["floor"], {"a": 1}, -3, float("nan"), (1, 2), None], ids=repr)
@pytest.mark.parametrize(
    "ask",
    [
        lambda word: headers.find_header_basis(word),
        lambda word: headers.header_cells(word),
        lambda word: headers.header_loads(word, **GOOD),
        lambda word: headers.header_span(word, "2-2x8", **GOOD),
        lambda word: headers.header_span(ROOF, word, **GOOD),
        lambda word: headers.left_out_of_header(word, "2-2x8", **GOOD),
        lambda word: headers.left_out_of_header(ROOF, word, **GOOD),
        lambda word: headers.unheld_header_span(6 * ft, word),
        lambda word: headers.unheld_header_span("6 ft" if word in (7.5, (1, 2)) else word, "2-2x8"),
    ],
    ids=range(9),
)
def test_an_unknown_word_is_refused(ask, word):
    with pytest.raises((BadInput, OutsideRule)) as error:
        ask(word)
    one_sentence(error)
