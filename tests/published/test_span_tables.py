"""Every printed cell of a span table at hand against the table made again; half an inch is the rounding."""

from collections import defaultdict
from dataclasses import replace
from fractions import Fraction

import pytest
from tests_tally import record_published

from structlib.ground.tables import table_rows
from structlib.ground.units import ft, inch, psi
from structlib.rules.us.span_table_lumber import table_material
from structlib.rules.us.span_tables import (
    as_printed,
    deflection_span,
    find_basis,
    printed_cells,
    printed_length,
    span_limit,
    table_bases,
)

CELLS = table_rows("us_span_table_cells")
HALF = 0.5  # in, the rounding of the tables
LAST_DIGITS = 1e-9  # in, of a float; some cells lie at exactly half an inch


def name_of(cell):
    words = ("basis", "edition", "species", "grade", "size", "spacing_in")
    return " ".join(str(cell[word]) for word in words)


def basis_of(cell, design_values=""):
    basis = find_basis(cell["basis"])
    return replace(basis, design_values=design_values) if design_values else basis


def model(cell, basis):
    return span_limit(basis, cell["species"], cell["grade"], cell["size"], cell["spacing_in"] * inch)


def inches_off(cell, basis):
    return abs(model(cell, basis).span - printed_length(cell["printed"])) / inch


def is_cut_off(cell):
    """The cell says only that the span is over the greatest one printed."""
    return cell["printed"].startswith(">") or cell["note"].startswith("the span is over 26 ft")


PLAIN = [cell for cell in CELLS if not cell["misprint"] and not is_cut_off(cell)]


@pytest.mark.parametrize("cell", PLAIN, ids=name_of)
def test_printed_cell_comes_out_within_the_rounding(cell):
    basis = basis_of(cell, cell["design_values"])
    off = inches_off(cell, basis)
    assert off <= HALF + LAST_DIGITS, f"{name_of(cell)}: {off:.2f} in from {cell['printed']}"
    if off < HALF - LAST_DIGITS:  # at an exact half publications go both ways
        assert as_printed(model(cell, basis).span, greatest_span=basis.greatest_span) == cell["printed"]
    group = f"span {cell['basis'].split(' dead')[0]}"
    words = ", older values" if cell["design_values"] else ""
    record_published(f"{group}{words}", cell["verified"], off / HALF, name_of(cell))


@pytest.mark.parametrize("cell", [cell for cell in CELLS if is_cut_off(cell)], ids=name_of)
def test_cell_cut_off_at_26_ft_is_longer(cell):
    basis = basis_of(cell)
    assert model(cell, basis).span > 26 * ft
    assert as_printed(model(cell, basis).span, greatest_span=basis.greatest_span) == ">26-0"
    record_published("span tables, over 26 ft", cell["verified"], 0.0, name_of(cell))


@pytest.mark.parametrize("cell", [cell for cell in CELLS if cell["misprint"]], ids=name_of)
def test_misprint_differs_and_stays_explained(cell):
    assert inches_off(cell, basis_of(cell)) > 2 * HALF
    assert as_printed(model(cell, basis_of(cell)).span) == cell["model"]
    assert model(cell, basis_of(cell)).governs in cell["misprint"]


@pytest.mark.parametrize(
    "inches, depth", [(12 * 23 + Fraction(3, 2), Fraction(37, 4)), (12 * 18 + Fraction(3, 2), Fraction(29, 4))]
)
def test_at_exactly_half_an_inch_the_careful_side_is_written(inches, depth):
    # deflection of a 2x10 and a 2x8 of 1.5 million psi under 20 psf at 16 in, L/240, without rounding
    inertia = Fraction(3, 2) * depth**3 / 12
    assert 384 * 1500000 * inertia / (5 * Fraction(20 * 16, 144) * 240) == inches**3
    assert printed_length(as_printed(float(inches) * inch)) / inch == pytest.approx(float(inches) - HALF)


def test_a_modulus_of_1_7_million_psi_gives_the_misprinted_ceiling_joist():
    [cell] = [cell for cell in CELLS if cell["misprint"] and cell["basis"] == "R802.5.1(1)"]
    # 10 psf at 16 in on a 2x8, L/240, in pounds and inches
    inertia = 1.5 * 7.25**3 / 12
    span = deflection_span(load=10 / 144 * 16, stiffness=1.7e6 * inertia, divisor=240)
    assert abs(span - 12 * 23 - 10) <= HALF and cell["printed"] == "23-10"


def test_the_other_misprint_contradicts_a_cell_of_the_same_row():
    [cell] = [cell for cell in CELLS if cell["misprint"] and cell["edition"] == "IRC 2012"]
    same = {word: cell[word] for word in ("species", "grade", "size", "spacing_in")}
    [other] = [
        one
        for one in CELLS
        if one["basis"] == "R502.3.1(2) dead 10" and all(one[word] == value for word, value in same.items())
    ]
    assert other["printed"] == cell["model"]
    needed = 850 * (printed_length(cell["printed"]) / model(cell, basis_of(cell)).bending_span) ** 2
    assert round(needed, -1) == 930


@pytest.mark.parametrize("cell", [cell for cell in CELLS if cell["design_values"]], ids=name_of)
def test_cell_that_follows_other_values_does_not_follow_those_of_its_table(cell):
    assert cell["verified"] == "recalled" and cell["note"]
    assert inches_off(cell, basis_of(cell)) > HALF + LAST_DIGITS


def test_every_cell_has_a_basis_and_every_basis_a_cell():
    assert {cell["basis"] for cell in CELLS} == {basis.name for basis in table_bases()}
    assert sum(len(printed_cells(basis)) for basis in table_bases()) == len(CELLS)
    for cell in CELLS:
        assert cell["source"].strip() and bool(cell["misprint"]) == bool(cell["model"]), name_of(cell)


# older design values: what the cells seen allow, worked back in pounds and inches

SIZE_FACTOR = {"2x4": 1.5, "2x6": 1.3, "2x8": 1.2, "2x10": 1.1, "2x12": 1.0}
DEPTH = {"2x4": 3.5, "2x6": 5.5, "2x8": 7.25, "2x10": 9.25, "2x12": 11.25}
LOAD = {
    "R502.3.1(2) dead 10, 2012": (40, 10, 1.0),
    "IBC 2308.7.2(2) dead 10": (20, 10, 1.25),
    "IBC 2308.7.2(2) dead 20": (20, 20, 1.25),
}


def allowed_bending_values():
    """Between which bending values (psi) the seen cells put each species and grade."""
    least, most = defaultdict(float), defaultdict(lambda: float("inf"))
    for cell in PLAIN:
        basis = basis_of(cell)
        by_size = cell["species"] == "Southern Pine"
        if cell["verified"] != "seen" or by_size or basis.design_values == "current":
            continue
        live, dead, time = LOAD[cell["basis"]]
        section = 1.5 * DEPTH[cell["size"]] ** 2 / 6
        printed = printed_length(cell["printed"]) / inch
        factors = SIZE_FACTOR[cell["size"]] * 1.15 * time
        per_inch = (live + dead) / 144 * cell["spacing_in"] / 8 / (section * factors)
        row = cell["species"], cell["grade"]
        least[row] = max(least[row], per_inch * (printed - HALF) ** 2)
        # where deflection cannot have cut it shorter
        if printed + HALF + LAST_DIGITS < model(cell, basis).deflection_span / inch:
            most[row] = min(most[row], per_inch * (printed + HALF) ** 2)
    return {row: (least[row], most[row]) for row in least}


def test_older_values_lie_between_what_the_seen_cells_allow():
    allowed = allowed_bending_values()
    for row in table_rows("us_span_table_design_values"):
        low, high = allowed[row["species"], row["grade"]]
        current = table_material(find_basis("R802.5.1(1)"), row["species"], row["grade"], "2x8").bending / psi
        assert low <= row["Fb_psi"] <= high, row
        told_apart = not low <= current <= high
        assert told_apart == (row["verified"] == "back-solved"), (row["species"], row["grade"], low, high)
