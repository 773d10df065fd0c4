"""The span-table model: by hand, with one assumption changed, on arrays, on symbols, and refused."""

from dataclasses import FrozenInstanceError, replace

import numpy
import pytest
import sympy
from hypothesis import given, settings
from hypothesis import strategies as st

from structlib.ground.refusals import BadInput, OutsideRule
from structlib.ground.units import ft, inch, psf, psi
from structlib.rules.us.span_table_left_out import left_out
from structlib.rules.us.span_table_lumber import table_material, table_size
from structlib.rules.us.span_tables import (
    TableBasis,
    as_printed,
    bending_span,
    deflection_span,
    find_basis,
    make_table,
    printed_cells,
    printed_length,
    span_limit,
    table_bases,
)

BASES = table_bases()
FLOOR = find_basis("R502.3.1(2) dead 10")
CEILING = find_basis("R802.5.1(1)")
IBC = find_basis("IBC 2308.7.2(2) dead 20")
FIR_2X10 = ("Douglas Fir-Larch", "No.2", "2x10", 16 * inch)


# by hand


def test_a_floor_joist_by_hand_in_pounds_and_inches():
    cell = span_limit(FLOOR, *FIR_2X10)
    section, inertia = 1.5 * 9.25**2 / 6, 1.5 * 9.25**3 / 12
    assert cell.bending_value / psi == pytest.approx(900 * 1.1 * 1.15)
    bending = (8 * 900 * 1.1 * 1.15 * section / (50 * 16 / 144)) ** 0.5
    deflection = (384 * 1.6e6 * inertia / (5 * (40 * 16 / 144) * 360)) ** (1 / 3)
    assert cell.bending_span / inch == pytest.approx(bending, rel=1e-12)
    assert cell.deflection_span / inch == pytest.approx(deflection, rel=1e-12)
    assert cell.span == cell.bending_span and cell.governs == "bending"
    assert {factor.symbol: float(factor.value) for factor in cell.factors} == {
        "C_D": 1.0,
        "C_M": 1.0,
        "C_F": 1.1,
        "C_r": 1.15,
        "C_L": 1.0,
    }


def test_southern_pine_takes_no_size_factor():
    cell = span_limit(FLOOR, "Southern Pine", "No.2", "2x10", 16 * inch)
    assert cell.bending_value / psi == pytest.approx(800 * 1.15)


def test_snow_and_roof_live_take_their_load_duration():
    times = {basis.name: basis.time_factor for basis in BASES}
    assert times["R802.4.1(1) dead 10"] == 1.25 and times["R802.4.1(3) dead 10"] == 1.15
    assert times["R502.3.1(1) dead 10"] == times["R802.5.1(2)"] == 1.0


def test_symbols_pass_through_and_give_the_textbook_spans():
    w, m, ei, n = sympy.symbols("w M EI n", positive=True)
    assert sympy.simplify(bending_span(load=w, moment_capacity=m) - sympy.sqrt(8 * m / w)) == 0
    span = deflection_span(load=w, stiffness=ei, divisor=n)
    assert sympy.simplify(span**3 - sympy.Rational(384, 5) * ei / (w * n)) == 0


def test_an_array_of_spacings_gives_what_single_spacings_give():
    spacings = numpy.array([12.0, 16.0, 19.2, 24.0]) * inch
    together = span_limit(FLOOR, "Hem-Fir", "Select Structural", "2x8", spacings)
    for place, spacing in enumerate(spacings):
        alone = span_limit(FLOOR, "Hem-Fir", "Select Structural", "2x8", float(spacing))
        assert together.span[place] == pytest.approx(alone.span, rel=1e-14)
        assert together.governs[place] == alone.governs
    assert set(together.governs) == {"deflection"}


# one assumption changed


def test_twice_the_load_shortens_bending_by_the_root_of_two_and_leaves_deflection():
    before, after = span_limit(FLOOR, *FIR_2X10), span_limit(replace(FLOOR, dead=60 * psf), *FIR_2X10)
    assert after.bending_span == pytest.approx(before.bending_span / 2**0.5, rel=1e-12)
    assert after.deflection_span == before.deflection_span


def test_half_the_deflection_limit_shortens_deflection_by_the_cube_root_of_two_and_leaves_bending():
    before = span_limit(FLOOR, *FIR_2X10)
    after = span_limit(replace(FLOOR, deflection_divisor=720), *FIR_2X10)
    assert after.deflection_span == pytest.approx(before.deflection_span / 2 ** (1 / 3), rel=1e-12)
    assert after.bending_span == before.bending_span


def test_without_the_repetitive_factor_bending_falls_by_its_root():
    before, after = span_limit(FLOOR, *FIR_2X10), span_limit(replace(FLOOR, repetitive=False), *FIR_2X10)
    assert after.bending_span == pytest.approx(before.bending_span / 1.15**0.5, rel=1e-12)


def test_joists_wider_apart_than_24_in_need_a_basis_without_the_repetitive_factor():
    wide = (16 * inch, 32 * inch)
    with pytest.raises(OutsideRule, match="repetitive member factor holds for spacings up to 24 in"):
        replace(FLOOR, spacings=wide)
    alone = replace(FLOOR, spacings=wide, repetitive=False)
    cell = span_limit(alone, "Hem-Fir", "No.2", "2x10", 32 * inch)
    assert cell.bending_value / psi == pytest.approx(850 * 1.1)


OLDER = {
    ("Douglas Fir-Larch", "Select Structural"): 1450,
    ("Douglas Fir-Larch", "No.2"): 875,
    ("Douglas Fir-Larch", "No.3"): 500,
    ("Hem-Fir", "No.1"): 950,
}


def test_older_design_values_change_only_the_rows_that_have_them():
    older = replace(FLOOR, design_values="older")
    for species in FLOOR.species:
        for grade in FLOOR.grades:
            was, now = (table_material(basis, species, grade, "2x8") for basis in (older, FLOOR))
            assert was.modulus == now.modulus
            changed = (species, grade) in OLDER
            assert (was.bending != now.bending) == changed, (species, grade)
            assert round(was.bending / psi, 6) == OLDER.get((species, grade), round(now.bending / psi, 6))


def test_a_row_takes_the_values_published_for_two_grades_at_once():
    assert table_material(FLOOR, "Spruce-Pine-Fir", "No.1", "2x8").grade == "No.1/No.2"
    assert table_material(FLOOR, "Spruce-Pine-Fir", "No.2", "2x8").grade == "No.1/No.2"
    assert table_material(FLOOR, "Southern Pine", "No.3", "2x8").grade == "No.3 and Stud"
    assert table_material(FLOOR, "Hem-Fir", "No.1", "2x8").grade == "No.1"


def test_a_basis_cannot_be_changed_in_place():
    with pytest.raises(FrozenInstanceError):
        FLOOR.dead = 0.0


# properties

rows = st.sampled_from(
    [(basis, species, grade) for basis in BASES for species in basis.species for grade in basis.grades]
)
a_spacing = st.floats(1.5 * inch, 24 * inch)


@settings(max_examples=60, deadline=None)
@given(rows, st.data(), a_spacing, a_spacing)
def test_closer_spacing_never_shortens(row, data, one, other):
    nominal = data.draw(st.sampled_from(row[0].sizes))
    close, wide = sorted((one, other))
    assert span_limit(*row, nominal, close).span >= span_limit(*row, nominal, wide).span


@settings(max_examples=60, deadline=None)
@given(rows, a_spacing)
def test_deeper_never_shortens(row, spacing):
    spans = [span_limit(*row, nominal, spacing).span for nominal in row[0].sizes]
    assert spans == sorted(spans)


@settings(max_examples=60, deadline=None)
@given(rows, st.data(), a_spacing)
def test_better_grade_never_shortens(row, data, spacing):
    basis, species, _ = row
    nominal = data.draw(st.sampled_from(basis.sizes))
    spans = [span_limit(basis, species, grade, nominal, spacing).span for grade in basis.grades]
    assert spans == sorted(spans, reverse=True)


@settings(max_examples=60, deadline=None)
@given(st.integers(0, 99), st.integers(0, 11), st.floats(-0.499, 0.499))
def test_a_span_within_half_an_inch_is_printed_as_the_inch(feet, inches, off):
    span = feet * ft + inches * inch + off * inch
    if span >= 0:
        assert as_printed(span) == f"{feet}-{inches}"
        assert printed_length(as_printed(span)) == pytest.approx(feet * ft + inches * inch)


# printing


def test_printing_goes_to_the_nearest_inch_and_stops_at_the_greatest_span():
    assert as_printed(11.5 * inch) == "0-11" and as_printed(0.0) == "0-0"
    assert as_printed((11.5 + 1e-12) * inch) == "0-11"  # the last digits of a float do not decide
    assert as_printed(11.6 * inch) == "1-0" and as_printed(0.4 * inch) == "0-0"
    assert as_printed(26 * ft, greatest_span=26 * ft) == "26-0"
    assert as_printed(26 * ft + 0.1 * inch, greatest_span=26 * ft) == ">26-0"
    assert as_printed(26 * ft + 0.1 * inch) == "26-0"
    assert as_printed(numpy.array([10 * ft, 27 * ft]), greatest_span=26 * ft) == ["10-0", ">26-0"]


@pytest.mark.parametrize("basis", BASES, ids=lambda basis: basis.name)
def test_a_made_table_has_every_cell_where_it_belongs(basis):
    heading, *made = make_table(basis)
    assert heading == ("spacing, in", "species", "grade", *basis.sizes)
    assert len(made) == len(basis.spacings) * len(basis.species) * len(basis.grades)
    by_row = {row[:3]: dict(zip(basis.sizes, row[3:])) for row in made}
    assert len(by_row) == len(made)
    for cell in printed_cells(basis):
        if not (cell["misprint"] or cell["design_values"] or cell["note"].startswith("the span is over")):
            row = by_row[f"{cell['spacing_in']:g}", cell["species"], cell["grade"]]
            assert row[cell["size"]] == cell["printed"]


def test_part_of_a_table_can_be_made():
    made = make_table(CEILING, species=["Hem-Fir"], grades=["No.2"], sizes=["2x8"], spacings=[12 * inch, 16 * inch])
    assert made == (
        ("spacing, in", "species", "grade", "2x8"),
        ("12", "Hem-Fir", "No.2", "24-0"),
        ("16", "Hem-Fir", "No.2", "21-9"),
    )  # both printed in R802.5.1(1)


# what the tables leave out


def test_shear_and_total_sag_of_a_floor_joist_by_hand():
    shear, sag, bracing = left_out(FLOOR, *FIR_2X10)
    span = (8 * 900 * 1.1 * 1.15 * 1.5 * 9.25**2 / 6 / (50 * 16 / 144)) ** 0.5
    load, inertia = 50 * 16 / 144, 1.5 * 9.25**3 / 12
    assert shear.share == pytest.approx(1.5 * load * span / 2 / (1.5 * 9.25) / 180, rel=1e-12)
    assert sag.share == pytest.approx(5 * load * span**4 / (384 * 1.6e6 * inertia) * 240 / span, rel=1e-12)
    # bending governs this cell, so that nothing is left for a free top edge
    assert bracing.name == "bending, top edge free" and bracing.share > 1
    assert not any(check.decides for check in (shear, sag, bracing))


def test_a_free_top_edge_takes_the_stability_factor_by_hand():
    bracing = left_out(FLOOR, *FIR_2X10)[-1]
    span = span_limit(FLOOR, *FIR_2X10).span / inch
    length = 1.63 * span + 3 * 9.25  # a uniform load, span over 7 depths
    ratio = 1.2 * 580000 / (length * 9.25 / 1.5**2) / (900 * 1.1 * 1.15)
    middle = (1 + ratio) / 1.9
    factor = middle - (middle**2 - ratio / 0.95) ** 0.5
    assert bracing.share == pytest.approx(1 / factor, rel=1e-9)


def test_a_joist_too_slender_to_be_judged_free_shows_its_slenderness():
    check = left_out(IBC, "Douglas Fir-Larch", "Select Structural", "2x12", 12 * inch)[-1]
    length = 1.63 * 26 * 12 + 3 * 11.25  # the table stops at 26 ft
    assert check.kind == "stability" and check.asked / inch == pytest.approx(length)
    assert check.share == pytest.approx(length * 11.25 / 1.5**2 / 50**2) and check.share > 1


def test_ceiling_joists_have_no_published_limit_under_all_load():
    assert [check.kind for check in left_out(CEILING, *FIR_2X10)] == ["shear", "bending"]


def test_a_published_rafter_table_lets_sag_under_all_load_past_the_limit_it_leaves_out():
    shares = [left_out(IBC, "Hem-Fir", "Select Structural", nominal, 24 * inch)[1].share for nominal in IBC.sizes]
    assert min(shares) > 1


def test_no_published_cell_is_governed_by_shear():
    for basis in BASES:
        for species in basis.species:
            for nominal in basis.sizes:
                assert left_out(basis, species, basis.grades[0], nominal, basis.spacings[-1])[0].share < 1


# refused

NO_NUMBER = [
    float("nan"),
    float("inf"),
    -1.0,
    0,
    0.0,
    "16 in",
    None,
    True,
    [],
    {"a": 1},
    400 * ft,
    16,
    sympy.Symbol("s"),
    numpy.array([16 * inch, float("nan")]),
]


@pytest.mark.parametrize("spacing", NO_NUMBER, ids=repr)
def test_spacings_out_of_range_are_refused(spacing):
    with pytest.raises(BadInput, match="spacing"):
        span_limit(FLOOR, "Hem-Fir", "No.2", "2x10", spacing)
    if spacing is not None:
        with pytest.raises(BadInput, match="spacing"):
            make_table(FLOOR, spacings=spacing)


def test_unknown_words_are_refused_with_the_nearest():
    with pytest.raises(BadInput, match="species .*'Hem Fir' is not known; did you mean 'Hem-Fir'"):
        span_limit(FLOOR, "Hem Fir", "No.2", "2x10", 16 * inch)
    with pytest.raises(BadInput, match="grade .*'#2' is not known"):
        span_limit(FLOOR, "Hem-Fir", "#2", "2x10", 16 * inch)
    with pytest.raises(BadInput, match="size of IRC Table .*did you mean .*'2x10'"):
        span_limit(FLOOR, "Hem-Fir", "No.2", "2x1O", 16 * inch)
    with pytest.raises(BadInput, match="did you mean .*'R802.5.1"):
        find_basis("R802.5.1(3)")


@pytest.mark.parametrize("nominal", ["2x4", "2x14", "4x10", "6x12", "10", None, 10, ["2x10"]], ids=repr)
def test_sizes_out_of_the_table_are_refused(nominal):
    with pytest.raises(BadInput, match="size of IRC Table"):
        span_limit(FLOOR, "Hem-Fir", "No.2", nominal, 16 * inch)
    with pytest.raises(BadInput, match="size"):
        make_table(FLOOR, sizes=[nominal])


def test_southern_pine_is_refused_where_its_older_values_are_not_at_hand():
    with pytest.raises(BadInput, match="species"):
        span_limit(find_basis("R502.3.1(2) dead 10, 2012"), "Southern Pine", "No.2", "2x10", 16 * inch)


def test_anything_but_a_basis_is_refused():
    for wrong in ("R502.3.1(2)", None, 40, {}):
        for ask in (
            lambda: make_table(wrong),
            lambda: span_limit(wrong, *FIR_2X10),
            lambda: printed_cells(wrong),
            lambda: left_out(wrong, *FIR_2X10),
        ):
            with pytest.raises(BadInput, match="basis"):
                ask()


WRONG = {
    "live": [0.0, -1.0, "40 psf", None, float("nan"), numpy.array([0.001, 0.002]), sympy.Symbol("w"), 40.0],
    "dead": [-1.0, float("inf"), True, 10.0],
    "deflection_divisor": [0, 1, "L/360", None, float("nan")],
    "time_factor": [0.0, 0.5, 3.0, None],
    "repetitive": [1, "yes", None],
    "design_values": ["newer", None],
    "species": ["Hem-Fir", (), None],
    "grades": [(), "No.2"],
    "sizes": [(), "2x10", ("ten",), (None,)],
    "spacings": [(), 16 * inch, (0.0,), ("16",), None, (400 * ft,)],
    "greatest_span": [0.0, "26", float("nan")],
}


@pytest.mark.parametrize(
    "field, value", [(field, value) for field, values in WRONG.items() for value in values], ids=repr
)
def test_a_basis_with_a_wrong_assumption_is_refused(field, value):
    with pytest.raises(BadInput):
        replace(FLOOR, **{field: value})


def test_a_basis_for_thick_lumber_is_refused():
    with pytest.raises(OutsideRule, match="2 in thick"):
        replace(FLOOR, sizes=("4x10",))


@pytest.mark.parametrize(
    "ask",
    [
        lambda: as_printed(float("nan")),
        lambda: as_printed(-1.0),
        lambda: as_printed("13-9"),
        lambda: as_printed(None),
        lambda: as_printed([]),
        lambda: as_printed(sympy.Symbol("L")),
        lambda: as_printed(400 * ft),
        lambda: as_printed(1000.0, greatest_span=0.0),
        lambda: printed_length("13-12"),
        lambda: printed_length("13"),
        lambda: printed_length(13.75),
        lambda: printed_length(">26-0"),
        lambda: table_size("3x9"),
        lambda: make_table(FLOOR, species=[]),
        lambda: make_table(FLOOR, grades="No.2"),
        lambda: make_table(FLOOR, sizes=()),
        lambda: make_table(FLOOR, species=7),
        lambda: make_table(FLOOR, spacings=[[16 * inch], [1.0, 2.0]]),
        lambda: bending_span(load=0.0, moment_capacity=1.0),
        lambda: bending_span(load=1.0, moment_capacity=-1.0),
        lambda: deflection_span(load=float("nan"), stiffness=1.0, divisor=360),
        lambda: deflection_span(load=1.0, stiffness=0.0, divisor=360),
        lambda: deflection_span(load=1.0, stiffness=1.0, divisor=0),
        lambda: left_out(FLOOR, "Hem-Fir", "No.2", "2x10", numpy.array([16 * inch, 24 * inch])),
    ],
)
def test_nonsense_is_answered_with_one_sentence(ask):
    with pytest.raises(BadInput) as caught:
        ask()
    assert "\n" not in str(caught.value)


def test_a_basis_of_the_readers_own_has_no_printed_cells():
    own = TableBasis(
        name="my attic",
        table="my table",
        edition="today",
        member="ceiling joist",
        live=20 * psf,
        dead=10 * psf,
        deflection_divisor=240,
        time_factor=1.0,
        repetitive=True,
        design_values="current",
        species=("Hem-Fir",),
        grades=("No.2",),
        sizes=("2x8",),
        spacings=(16 * inch,),
    )
    assert printed_cells(own) == () and own.verified == "common practice"
    assert (
        make_table(own)[1]
        == make_table(
            find_basis("R802.5.1(2)"), species=["Hem-Fir"], grades=["No.2"], sizes=["2x8"], spacings=[16 * inch]
        )[1]
    )
