"""Where a rule begins and ends: defaults, both sides of each end, and which way a rounding error is let go.

The ends are the publication's (NDS 2018 3.3.3, 3.7.1, 15.3, Appendix G, Tables 3.3.3 and 4A, each cited in
data/us_factors.csv and data/us_effective_length.csv); expected values are hand arithmetic in inches and pounds.
"""

import importlib
import inspect
import pkgutil
from math import pi, sqrt

import numpy
import pytest

import structlib.mechanics
import structlib.rules.us
from structlib.ground.lumber import find_material
from structlib.ground.refusals import BadInput, OutsideRule
from structlib.ground.units import ft, inch, lb, psi
from structlib.rules.choice import RULEBOOK
from structlib.rules.us import column_stability, columns, factors, stability, steel_columns
from structlib.rules.us.column_strength import column_capacity, fewest_plies, held_length
from structlib.rules.us.inputs import at_most

FIR = find_material("Douglas Fir-Larch", "No.1")  # F_c 1,500 psi, E_min 620,000 psi, F_b C_F 1.15 at 4x4
HAIR = 1e-11  # a rounding error, relative: far below any tape
SQUARE = {"ply_width": 3.5 * inch, "depth": 3.5 * inch, "time_factor": 1.0}


def capacity(**changed):
    return column_capacity(FIR, **{**SQUARE, "height": 8 * ft, **changed})


# The default of K: ends free to turn (Appendix G recommends 1.0)


def _takers():
    """Every function and record that takes K, wherever it stands."""
    for package in (structlib.mechanics, structlib.rules.us):
        for found in pkgutil.walk_packages(package.__path__, package.__name__ + "."):
            module = importlib.import_module(found.name)
            for name, thing in vars(module).items():
                if getattr(thing, "__module__", "") == module.__name__ and callable(thing):
                    if "end_factor" in inspect.signature(thing).parameters:
                        yield f"{module.__name__}.{name}", inspect.signature(thing).parameters["end_factor"]


def test_whoever_takes_k_takes_1_when_nothing_is_said():
    given = {name: taken.default for name, taken in _takers()}
    assert len(given) >= 7
    for name, default in given.items():
        assert default in (1.0, inspect.Parameter.empty), name


def _by_hand(height, size=3.5, crushing=1500 * 1.15, modulus=620000.0, c=0.8):
    """A square post by NDS 2018 Eq. 3.7-1, K = 1, in pounds."""
    buckling = 0.822 * modulus / (height / size) ** 2
    half = (1 + buckling / crushing) / (2 * c)
    return crushing * size**2 * (half - sqrt(half**2 - buckling / crushing / c))


def test_without_k_a_post_is_as_long_as_it_stands():
    assert capacity().load / lb == pytest.approx(_by_hand(96.0), rel=1e-6)
    post = columns.Column(FIR, 3.5 * inch, 3.5 * inch, 8 * ft)
    assert columns.capacity_of(post, time_factor=1.0).load / lb == pytest.approx(_by_hand(96.0), rel=1e-6)
    assert capacity(end_factor=0.65).load / lb == pytest.approx(_by_hand(0.65 * 96), rel=1e-6)
    load = _by_hand(120.0) * lb
    plies = {"time_factor": 1.0, "ply_width": 3.5 * inch, "depth": 3.5 * inch, "height": 10 * ft}
    assert fewest_plies(FIR, load=0.999 * load, **plies) == 1
    assert fewest_plies(FIR, load=1.001 * load, **plies) == 2
    pipe = steel_columns.steel_post("NPS 3 std")
    bare, said = (steel_columns.steel_capacity(pipe, height=8 * ft, **k) for k in ({}, {"end_factor": 1.0}))
    assert bare == said and bare != steel_columns.steel_capacity(pipe, height=8 * ft, end_factor=0.9)


def test_the_length_shown_with_bowing_is_the_length_that_may_bow():
    demand = columns.ColumnDemand(RULEBOOK.combinations({"live"})[1], 5000 * lb)
    post = columns.Column(FIR, 1.5 * inch, 5.5 * inch, 8 * ft, plies=3, held_depth=4 * ft)
    shown = {
        check.name: {symbol: value for symbol, value, _ in check.substitute}.get("l_e")
        for check in columns.column_checks(post, [demand])
    }
    assert shown["bowing along the depth"] / inch == pytest.approx(48)
    assert shown["bowing across the plies"] / inch == pytest.approx(96)


def test_k_runs_from_0_65_to_2_4():
    assert held_length("held_width", None, 8 * ft, 0.65) / inch == pytest.approx(0.65 * 96)
    assert held_length("held_width", None, 8 * ft, 2.4) / inch == pytest.approx(2.4 * 96)
    for outside in (0.649, 2.401):
        with pytest.raises(BadInput, match="end factor"):
            held_length("held_width", None, 8 * ft, outside)
        with pytest.raises(BadInput, match="end factor"):
            steel_columns.steel_capacity(steel_columns.steel_post("NPS 3 std"), height=8 * ft, end_factor=outside)


# Slenderness


def test_a_column_of_slenderness_50_is_judged_and_one_above_it_is_refused():
    assert capacity(height=175 * inch).load / lb == pytest.approx(_by_hand(175.0), rel=1e-6)  # 50 x 3.5 in
    with pytest.raises(OutsideRule, match="stops at 50"):
        capacity(height=175.1 * inch)
    thin = {"ply_width": 1.5 * inch, "depth": 5.5 * inch}
    assert capacity(**thin, height=75 * inch).slenderness_width == pytest.approx(50)
    with pytest.raises(OutsideRule, match="across its width"):
        capacity(**thin, height=75.1 * inch)
    with pytest.raises(OutsideRule, match="along its depth"):
        capacity(**thin, height=276 * inch, held_width=0.0)  # 276 / 5.5 = 50.2


def test_a_steel_post_of_slenderness_200_is_judged_and_one_above_it_is_refused():
    pipe = steel_columns.steel_post("NPS 3 std")
    found = steel_columns.steel_capacity(pipe, height=200 * pipe.radius)
    # elastic from 4.71 root(E / F_y) on: 0.877 pi^2 E / 200^2 / 1.67
    assert found.stress / psi == pytest.approx(0.877 * pi**2 * 29e6 / 200**2 / 1.67, rel=1e-9)
    with pytest.raises(OutsideRule, match="stops at 200"):
        steel_columns.steel_capacity(pipe, height=200.1 * pipe.radius)
    both = steel_columns.steel_capacity(pipe, height=numpy.array([200, 200.1]) * pipe.radius)
    assert [load > 0 for load in both.load] == [True, False]


def test_an_end_lets_a_rounding_error_go_toward_the_value_and_no_more():
    assert at_most(50.0 * (1 + HAIR), 50) and not at_most(50.0 * (1 + 1e-7), 50)
    assert at_most(50.0 * (1 - 1e-7), 50)


def test_plies_each_for_itself_count_up_to_50_only():
    both = {"ply_width": 1.5 * inch, "depth": 5.5 * inch, "plies": 2, "held_depth": 0.0}
    alone = column_capacity(FIR, **both, height=75 * inch, time_factor=1.0)  # 75 / 1.5 = 50
    assert alone.separate > 0
    assert column_capacity(FIR, **both, height=75.1 * inch, time_factor=1.0).separate == 0


def test_a_beam_of_slenderness_50_is_judged_and_one_above_it_is_refused():
    # R_B = 50: l_e = 2,500 x 1.5^2 / 11.25 = 500 in, so l_u = (500 - 3 x 11.25) / 1.63 = 286.04 in
    given = dict(depth=11.25 * inch, width=1.5 * inch, bending_value=900 * psi, modulus_stability=580000 * psi)
    found = stability.beam_stability_factor(unbraced_length=286.0 * inch, **given)
    ratio = 1.2 * 580000 / (11.25 * (1.63 * 286 + 33.75) / 1.5**2) / 900
    half = (1 + ratio) / 1.9
    assert found == pytest.approx(half - sqrt(half**2 - ratio / 0.95), rel=1e-6)
    with pytest.raises(OutsideRule, match="stops at 50"):
        stability.beam_stability_factor(unbraced_length=286.1 * inch, **given)
    pair = numpy.array([286.0, 286.1]) * inch
    assert [value > 0 for value in stability.beam_stability_factor(unbraced_length=pair, **given)] == [1, 0]


def test_a_beam_no_deeper_than_wide_does_not_roll():
    given = dict(width=3.5 * inch, bending_value=900 * psi, modulus_stability=580000 * psi)
    square, deeper = (
        stability.beam_stability_factor(unbraced_length=16 * ft, depth=depth * inch, **given) for depth in (3.5, 3.6)
    )
    assert square == 1.0 and deeper < 1.0


@pytest.mark.parametrize(
    ("case", "end", "below", "above"),
    [  # Table 3.3.3: coefficient on l_u below the end; on l_u and d from it on
        ("single span, uniform", 7, (2.06, 0), (1.63, 3)),
        ("single span, point load at midspan", 7, (1.8, 0), (1.37, 3)),
        ("cantilever, uniform", 7, (1.33, 0), (0.9, 3)),
        ("cantilever, point load at the end", 7, (1.87, 0), (1.44, 3)),
        ("not listed", 7, (2.06, 0), (1.63, 3)),
        ("not listed", 14.3, (1.63, 3), (1.84, 0)),
    ],
)
def test_the_effective_length_changes_its_formula_where_the_table_does(case, end, below, above):
    depth = 10 * inch
    for ratio, (length_part, depth_part) in ((end - 0.01, below), (end, above), (end + 0.01, above)):
        found = stability.beam_effective_length(unbraced_length=ratio * depth, depth=depth, case=case)
        assert float(found) / depth == pytest.approx(length_part * ratio + depth_part, rel=1e-9), ratio


def test_a_beam_braced_nowhere_said_otherwise_carries_an_even_load():
    given = dict(unbraced_length=120 * inch, depth=10 * inch)
    assert float(stability.beam_effective_length(**given)) / inch == pytest.approx(1.63 * 120 + 3 * 10)


def test_the_stability_factors_are_1_at_no_load_and_never_above():
    assert float(stability.stability_factor_from_ratio(ratio=1e6)) == pytest.approx(1, abs=1e-5)
    assert float(column_stability.column_stability_factor(ratio=1e9, shape=0.9)) == pytest.approx(1, abs=1e-6)
    assert float(column_stability.column_stability_factor(ratio=0.0, shape=0.8)) == 0


@pytest.mark.parametrize("shape", [0.8, 0.85, 0.9])  # NDS 2018 3.7.1.5: sawn, round, engineered
def test_every_published_c_is_taken_both_ways(shape):
    # Eq. 3.7-1 is the smaller root of c x^2 - (1 + r) x + r = 0; at x = 1/2, r = 1 - c/2
    ratio = 1 - shape / 2
    assert column_stability.ratio_for_factor(factor=0.5, shape=shape) == pytest.approx(ratio)
    assert column_stability.column_stability_factor(ratio=ratio, shape=shape) == pytest.approx(0.5)


def test_a_bent_column_at_its_buckling_value_has_nothing_left():
    given = dict(compression_value=5.0, bending_stress=1.0, bending_value=10.0, critical_value=8.0)
    near = column_stability.bent_column_share(compression_stress=7.2, **given)
    assert near == pytest.approx((7.2 / 5) ** 2 + 1 / (10 * 0.1))
    for at in (8.0, 8.1):
        assert column_stability.bent_column_share(compression_stress=at, **given) == float("inf")


# Plies and their fasteners


def test_a_built_up_column_has_two_to_five_plies_of_an_inch_and_a_half():
    plies = {"ply_width": 1.5 * inch, "depth": 5.5 * inch}
    assert capacity(**plies, plies=5).load > capacity(**plies, plies=4).load
    for wrong in (0, 6):
        with pytest.raises((BadInput, OutsideRule)):
            capacity(**plies, plies=wrong)
    assert capacity(ply_width=1.5 * inch * (1 - HAIR), depth=5.5 * inch, plies=3).load > 0
    with pytest.raises(OutsideRule, match="1.49 in"):
        capacity(ply_width=1.49 * inch, depth=5.5 * inch, plies=3)


@pytest.mark.parametrize(
    ("depth", "rows"),
    # one row up to 3 plies thick; 2 x edge + spaces of 10 to 20 D, edge 5 to 20 D, D = 0.148 in
    [(4.5, 1), (4.5 * (1 + HAIR), 1), (4.51, 2), (2 * 5 * 0.148, 1), (2 * 5 * 0.148 * (1 - HAIR), 1)],
)
def test_two_rows_begin_past_three_plies_and_a_rounding_error_is_let_go(depth, rows):
    post = columns.Column(FIR, 1.5 * inch, depth * inch, 5 * ft, plies=2)
    assert columns.built_up_fastening(post, diameter=0.148 * inch).rows[0] == rows


def test_a_row_of_nails_fits_to_the_last_hair_and_no_further():
    size = 2 * 5 * 0.148  # the least edge on both sides, one row
    with pytest.raises(OutsideRule, match="no room"):
        columns.built_up_fastening(columns.Column(FIR, 1.5 * inch, 0.99 * size * inch, 4 * ft, plies=2),
                                   diameter=0.148 * inch)  # fmt: skip
    most = 2 * 20 * 0.148  # 5.92 in: the greatest edge on both sides, but two rows from 4.5 in on
    two = columns.built_up_fastening(
        columns.Column(FIR, 2.5 * inch, most * (1 + HAIR) * inch, 4 * ft, plies=2), diameter=0.148 * inch
    )
    assert two.rows[0] == 1  # 5.92 in is under 3 x 2.5 in, and one row reaches both edges
    past = columns.Column(FIR, 2.5 * inch, 1.01 * most * inch, 4 * ft, plies=2)
    assert columns.built_up_fastening(past, diameter=0.148 * inch).rows[0] == 2


def test_nails_along_a_row_fit_between_20_diameters_and_6_plies():
    thick = 6 * 1.5 / 20  # inches: both ends of the range meet
    post = columns.Column(FIR, 1.5 * inch, 11.25 * inch, 8 * ft, plies=2)
    for diameter, fits in ((thick, True), (thick * (1 + HAIR), True), (1.01 * thick, False)):
        if fits:
            assert columns.built_up_fastening(post, diameter=diameter * inch).along_row[0] / inch == (
                pytest.approx(9.0)
            )
        else:
            with pytest.raises(OutsideRule, match="no room"):
                columns.built_up_fastening(post, diameter=diameter * inch)


@pytest.mark.parametrize(("length", "nail"), [(3, "10d"), (3 * (1 + HAIR), "10d"), (3.01, "12d"), (4, "20d")])
def test_the_nail_reaches_three_quarters_into_the_last_ply(length, nail):
    # two plies: (2 - 1/4) t long; common nails are 3 in (10d), 3 1/4 in (12d) and 4 in (20d)
    post = columns.Column(FIR, length / 1.75 * inch, 5.5 * inch, 8 * ft, plies=2)
    assert columns.shortest_common_nail(post).startswith(nail)


# Sizes


@pytest.mark.parametrize(
    ("inches", "nominal"), [(9.25, 10), (9.25 * (1 + HAIR), 10), (9.26, 12), (9.24, 10), (1.5, 2), (1.51, 3)]
)
def test_a_board_is_of_the_next_nominal_size_and_a_rounding_error_is_let_go(inches, nominal):
    assert float(factors.nominal_of(inches * inch)) == nominal


def test_the_size_factor_holds_from_2_to_4_inches_nominal():
    fir = find_material("Douglas Fir-Larch", "No.2")
    for width, depth, value in (  # Table 4A: 2x6 1.3, 2x8 1.2, 4x8 1.3, 2x14 0.9
        (1.5, 5.5, 1.3),
        (1.5 * (1 - HAIR), 5.5, 1.3),
        (1.5, 7.25, 1.2),
        (3.5, 7.25, 1.3),
        (1.5, 13.25, 0.9),
    ):
        found = factors.tabulated_size_factor(fir, width=width * inch, depth=depth * inch)[0]
        assert found == pytest.approx(value), (width, depth)
    for width in (1.49, 4.51):
        with pytest.raises(OutsideRule):
            factors.tabulated_size_factor(fir, width=width * inch, depth=7.25 * inch)
