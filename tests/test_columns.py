"""Posts: records, directions, plies, loads off the middle, steel, and formulas that print themselves."""

from dataclasses import replace

import numpy
import pytest
import sympy

from structlib.ground.engineered import user_lvl
from structlib.ground.lumber import find_material, lvl
from structlib.ground.refusals import BadInput, OutsideRule
from structlib.ground.units import ft, inch, kip, ksi, lb, psi
from structlib.mechanics import columns as mechanics
from structlib.rules.check import Combination, governing
from structlib.rules.choice import RULEBOOK
from structlib.rules.us import columns, steel_columns
from structlib.rules.us.column_stability import (
    bent_column_share,
    column_stability_factor,
    critical_column_value,
    ratio_for_factor,
)
from structlib.rules.us.columns import Column, ColumnDemand, column_checks

FIR = find_material("Douglas Fir-Larch", "No.2")
POST = Column(FIR, 1.5 * inch, 5.5 * inch, 8 * ft, plies=3)
SQUARE = Column(FIR, 3.5 * inch, 3.5 * inch, 8 * ft)
DEAD, LIVE = RULEBOOK.combinations({"live"})
SNOW = RULEBOOK.combinations({"snow"})[1]


def named(checks):
    return {check.name: check for check in checks}


# ---- formulas print themselves ----


def test_formulas_of_mechanics_print_themselves():
    P, e, Pe, E, I, L, K, A, d = sympy.symbols("P e P_e E I L K A d", positive=True)  # noqa: E741
    assert mechanics.euler_load(bending_stiffness=E * I, effective_length=L) == sympy.pi**2 * E * I / L**2
    assert mechanics.euler_stress(modulus=E, slenderness=L / d) == sympy.pi**2 * E * d**2 / L**2
    assert mechanics.effective_length(length=L, end_factor=K) == K * L
    assert mechanics.slenderness(effective_length=L, across=d) == L / d
    assert mechanics.radius_of_gyration(inertia=I, area=A) == sympy.sqrt(I / A)


def test_formulas_of_the_code_print_themselves():
    a, c, E, s, x = sympy.symbols("a c E s x", positive=True)
    factor = column_stability_factor(ratio=a, shape=c)
    assert sympy.simplify(c * factor**2 - (1 + a) * factor + a) == 0
    assert sympy.simplify(ratio_for_factor(factor=x, shape=c) - x * (1 - c * x) / (1 - x)) == 0
    assert critical_column_value(modulus_stability=E, slenderness=s) == 0.822 * E / s**2
    share = bent_column_share(
        compression_stress=a, compression_value=2, bending_stress=x, bending_value=3, critical_value=4
    )
    assert sympy.simplify(share - (a**2 / 4 + x / (3 * (1 - a / 4)))) == 0


def test_arrays_give_what_single_numbers_give():
    heights, plies = numpy.array([[6.0], [8.0], [10.0]]) * ft, numpy.array([2, 3, 4])
    grid = columns.column_capacity(
        FIR, ply_width=1.5 * inch, depth=5.5 * inch, height=heights, plies=plies, time_factor=1.0
    )
    assert grid.load.shape == grid.governs.shape == grid.factor_width.shape == (3, 3)
    for row, height in enumerate((6, 8, 10)):
        for column, count in enumerate((2, 3, 4)):
            one = columns.capacity_of(replace(POST, height=height * ft, plies=count), time_factor=1.0)
            assert one.load == pytest.approx(grid.load[row, column]) and one.governs == grid.governs[row, column]


# ---- what holds a post ----


def test_a_wall_that_holds_the_plies_leaves_the_depth_to_decide():
    free, held = (columns.capacity_of(replace(POST, held_width=way), time_factor=1.0) for way in (None, 0.0))
    assert free.governs == "width" and held.governs == "depth"
    assert held.load / lb == pytest.approx(26050, abs=1)  # 3-2x6, 8 ft, wide face alone (computed table)
    assert held.critical_width == numpy.inf and held.factor_width == 1.0 and held.slenderness_width == 0


def test_a_brace_at_mid_height_halves_the_length_that_way_only():
    found = columns.capacity_of(replace(SQUARE, held_width=4 * ft), time_factor=1.0)
    assert found.slenderness_width == pytest.approx(48 / 3.5) and found.slenderness_depth == pytest.approx(96 / 3.5)
    taller_brace = columns.capacity_of(replace(SQUARE, held_width=20 * ft), time_factor=1.0)
    assert taller_brace.slenderness_width == pytest.approx(96 / 3.5)


def test_fixed_ends_help_the_whole_height_and_never_a_piece_between_braces():
    stiff = columns.capacity_of(replace(SQUARE, end_factor=0.65, held_width=4 * ft), time_factor=1.0)
    assert stiff.slenderness_depth == pytest.approx(0.65 * 96 / 3.5)
    assert stiff.slenderness_width == pytest.approx(48 / 3.5)
    flagpole = columns.capacity_of(replace(SQUARE, end_factor=1.5, held_width=4 * ft), time_factor=1.0)
    assert flagpole.slenderness_width == pytest.approx(1.5 * 48 / 3.5)


def test_short_plies_each_for_themselves_carry_more_than_nailed_together():
    found = columns.capacity_of(replace(POST, height=2 * ft), time_factor=1.0)
    assert found.governs == "separate plies" and found.load == found.separate
    alone = columns.capacity_of(Column(FIR, 1.5 * inch, 5.5 * inch, 2 * ft), time_factor=1.0).load
    assert found.load == pytest.approx(3 * alone)
    assert columns.capacity_of(POST, time_factor=1.0).separate == 0  # 96 / 1.5 is over 50


def test_factors_of_time_size_and_water():
    dry, snow = (columns.capacity_of(SQUARE, time_factor=time) for time in (1.0, 1.15))
    assert snow.crushing_value == pytest.approx(1.15 * dry.crushing_value) and dry.load < snow.load < 1.15 * dry.load
    wet = columns.capacity_of(replace(SQUARE, wet=True), time_factor=1.0)
    assert wet.crushing_value / psi == pytest.approx(1350 * 1.15 * 0.8)
    assert wet.critical_depth == pytest.approx(0.9 * dry.critical_depth)
    timber = find_material("Douglas Fir-Larch", "No.1", "6x6")
    assert columns.crushing_value(timber, width=5.5 * inch, depth=5.5 * inch, time_factor=1.0, wet=True)[0] / psi == (
        pytest.approx(1000 * 0.91)
    )
    assert columns.compression_size_factor(FIR, width=1.5 * inch, depth=13.25 * inch)[0] == 0.9
    assert columns.shape_constant(lvl("2.0E-2900Fb"))[0] == 0.9


# ---- records ----


def test_checks_of_one_post_by_hand():
    found = named(column_checks(POST, [ColumnDemand(LIVE, 9000 * lb)]))
    stress = 9000 / 24.75
    assert found["compression"].asked / psi == pytest.approx(stress)
    assert found["compression"].share == pytest.approx(9000 / 12384, abs=1e-4)
    assert found["bowing along the depth"].share == pytest.approx(9000 / 26050, abs=1e-4)
    assert found["bowing across the plies"].share == pytest.approx(9000 / 12384, abs=1e-4)
    assert found["end grain"].given / psi == pytest.approx(1350 * 1.1)
    assert found["metal plate at the ends"].given / psi == pytest.approx(0.75 * 1350 * 1.1)
    assert found["slenderness across the width"].share == pytest.approx(96 / (50 * 4.5))
    assert governing(found.values()).name == "compression"
    assert [name for name, check in found.items() if not check.decides] == [
        "bowing along the depth",
        "bowing across the plies",
        "metal plate at the ends",
    ]
    assert found["bowing across the plies"].factors[-1].symbol == "K_f"
    assert found["compression"].verified == "transcribed"


def test_the_combination_that_asks_most_is_shown_not_the_greatest_load():
    found = named(column_checks(SQUARE, [ColumnDemand(DEAD, 1990 * lb), ColumnDemand(SNOW, 2000 * lb)]))
    assert found["compression"].combination == DEAD.name  # 0.9 against 1.15: the lesser load asks more
    assert (
        named(column_checks(SQUARE, [ColumnDemand(DEAD, 500 * lb), ColumnDemand(SNOW, 2000 * lb)]))[
            "compression"
        ].combination
        == SNOW.name
    )


def test_a_load_off_the_middle_by_hand():
    demand = ColumnDemand(LIVE, 3000 * lb, eccentricity=1 * inch)
    check = named(column_checks(SQUARE, [demand]))["bending and compression"]
    # 4x4 fir No.2: f_c 244.9 psi, F_cE = 0.822 * 580000 / (96/3.5)^2, F_b' = 900 * 1.5 (square: no rolling)
    pressed, critical = 3000 / 12.25, 0.822 * 580000 / (96 / 3.5) ** 2
    crushing = 1350 * 1.15
    a = critical / crushing
    value = crushing * ((1 + a) / 1.6 - (((1 + a) / 1.6) ** 2 - a / 0.8) ** 0.5)
    bent = 3000 / (3.5**3 / 6)
    share = (pressed / value) ** 2 + bent * (1 + 0.234 * pressed / critical) / (1350 * (1 - pressed / critical))
    assert check.share == pytest.approx(share, rel=1e-9) and check.decides
    across = named(column_checks(SQUARE, [replace(demand, way="width")]))["bending and compression"]
    assert across.share == pytest.approx(check.share, rel=1e-9)


def test_eccentricity_asks_more_and_a_bowing_post_asks_without_end():
    shares = [
        column_checks(SQUARE, [ColumnDemand(LIVE, 3000 * lb, eccentricity=e * inch)])[-1].share
        for e in (0.25, 0.5, 1.0)
    ]
    assert shares == sorted(shares)
    over = column_checks(SQUARE, [ColumnDemand(LIVE, 9000 * lb, eccentricity=1 * inch)])[-1]
    assert over.share == numpy.inf and governing([over]).share == numpy.inf


def test_a_post_rolls_between_what_holds_its_width():
    deep = Column(FIR, 1.5 * inch, 11.25 * inch, 6 * ft, plies=2)
    demand = ColumnDemand(LIVE, 2000 * lb, eccentricity=2 * inch)
    free, held = (column_checks(replace(deep, held_width=way), [demand])[-1].share for way in (None, 0.0))
    assert held < free


@pytest.mark.parametrize(
    "post, words",
    [
        (POST, "across the plies"),
        (Column(lvl("2.0E-2900Fb"), 3.5 * inch, 5.5 * inch, 8 * ft), "on its flat"),
        (
            Column(find_material("Douglas Fir-Larch", "No.1", "6x8"), 5.5 * inch, 7.25 * inch, 8 * ft),
            "on its flat",
        ),
    ],
)
def test_load_off_the_middle_where_the_rules_do_not_reach(post, words):
    with pytest.raises(OutsideRule, match=words):
        column_checks(post, [ColumnDemand(LIVE, 2000 * lb, eccentricity=1 * inch, way="width")])


def test_slenderness_in_service_and_while_building():
    stud = Column(FIR, 1.5 * inch, 3.5 * inch, 8 * ft)
    with pytest.raises(OutsideRule, match="its slenderness across its width is 64 .* stops at 50"):
        columns.capacity_of(stud, time_factor=1.0)
    service, building = (columns.slenderness_check(stud, way="width", stage=stage) for stage in columns.STAGES)
    assert service.share == pytest.approx(64 / 50) and building.share == pytest.approx(64 / 75)
    assert service.decides and not building.decides
    assert columns.capacity_of(replace(stud, held_width=16 * inch), time_factor=1.0).governs == "depth"


def test_plate_under_a_post_is_crushed_before_the_post():
    demand = ColumnDemand(LIVE, 9000 * lb)
    hem = find_material("Hem-Fir", "No.2")
    at_end = columns.plate_check(POST, [demand], hem)
    inside = columns.plate_check(POST, [demand], hem, distance_to_end=2 * ft)
    assert at_end.share == pytest.approx(9000 / 24.75 / 405)
    assert at_end.share / inside.share == pytest.approx((4.5 + 0.375) / 4.5)
    assert columns.plate_check(POST, [demand], hem, wet=True).share == pytest.approx(at_end.share / 0.67)


def test_least_size_of_a_free_standing_column_decides_as_every_limit_of_the_code_does():
    check = columns.least_size_check(Column(FIR, 1.5 * inch, 3.5 * inch, 8 * ft, plies=2))
    assert check.share == pytest.approx(3.5 / 3.0) and check.decides and check.verified == "transcribed"


# ---- fastening of plies ----


def test_nailing_of_three_2x6_by_hand():
    found = columns.built_up_fastening(POST, diameter=0.207 * inch)
    as_inches = lambda pair: tuple(one / inch for one in pair)  # noqa: E731
    assert found.length / inch == pytest.approx(2 * 1.5 + 0.75 * 1.5)
    assert as_inches(found.end_distance) == pytest.approx((15 * 0.207, 18 * 0.207))
    assert as_inches(found.along_row) == pytest.approx((20 * 0.207, 9.0))
    assert as_inches(found.between_rows) == pytest.approx((2.07, 4.14))
    assert as_inches(found.edge_distance) == pytest.approx((1.035, 4.14))
    assert found.rows == (2, 2)  # 5.5 in deep: over 3 x 1.5, and a third row would not fit
    assert any("opposite sides" in one for one in found.conditions)


def test_narrow_plies_take_one_row_and_bolts_their_own_distances():
    one = columns.built_up_fastening(replace(POST, depth=3.5 * inch, plies=2))
    assert one.rows[0] == 1 and any("either side" in text for text in one.conditions)
    bolts = columns.built_up_fastening(replace(POST, fastening="bolted"), diameter=0.5 * inch)
    assert bolts.end_distance[0] / inch == pytest.approx(3.5) and bolts.along_row[0] / inch == pytest.approx(2.0)
    assert bolts.length / inch == pytest.approx(4.5)


@pytest.mark.parametrize(
    "post, diameter, words",
    [
        (replace(POST, plies=1), None, "no plies to fasten"),
        (replace(POST, plies=5), None, "no common nail"),
        (replace(POST, depth=3.5 * inch), 0.5 * inch, "no room"),
    ],
)
def test_fastening_that_cannot_be(post, diameter, words):
    with pytest.raises(OutsideRule, match=words):
        columns.built_up_fastening(post, diameter=diameter)


def test_bolts_want_a_diameter():
    with pytest.raises(BadInput, match="diameter of the bolts"):
        columns.built_up_fastening(replace(POST, fastening="bolted"))


# ---- refusals of size and material ----


@pytest.mark.parametrize(
    "ask, words",
    [
        (dict(material=FIR, ply_width=1.0 * inch, depth=3.5 * inch), "2 in to 4 in thick|no size factor"),
        (
            dict(material=lvl("2.0E-2900Fb"), ply_width=1.25 * inch, depth=5.5 * inch, plies=2),
            "1.5 in thick or more",
        ),
        (
            dict(material=lvl("2.0E-2900Fb"), ply_width=1.75 * inch, depth=5.5 * inch, wet=True),
            "dry use only",
        ),
        (dict(material=FIR, ply_width=5.5 * inch, depth=3.5 * inch), "wider than deep"),
        (
            dict(material=find_material("Hem-Fir", "Stud"), ply_width=1.5 * inch, depth=7.25 * inch),
            "no size factor",
        ),
        (
            dict(material=find_material("Southern Pine", "No.2", "2x4"), ply_width=1.5 * inch, depth=5.5 * inch),
            "that width only",
        ),
    ],
)
def test_sizes_that_the_values_do_not_cover(ask, words):
    with pytest.raises(OutsideRule, match=words):
        columns.column_capacity(height=6 * ft, time_factor=1.0, **ask)


def test_lvl_without_a_compression_value_is_refused():
    mine = user_lvl(
        bending=2800 * psi,
        shear=280 * psi,
        bearing=750 * psi,
        modulus=2e6 * psi,
        depth_exponent=0.12,
        name="a maker's",
        source="a report (an example)",
    )
    with pytest.raises(BadInput, match="no compression value"):
        columns.column_capacity(mine, ply_width=3.5 * inch, depth=3.5 * inch, height=8 * ft, time_factor=1.0)


def test_a_load_for_which_no_number_of_plies_is_enough():
    with pytest.raises(OutsideRule, match="not even 5 plies"):
        columns.fewest_plies(
            FIR, load=90000 * lb, time_factor=1.0, ply_width=1.5 * inch, depth=5.5 * inch, height=8 * ft
        )


# ---- steel ----


def test_steel_post_as_a_record():
    check = steel_columns.steel_check(
        steel_columns.steel_post("NPS 3 std"), axial=15 * kip, height=8 * ft, combination=LIVE
    )
    assert check.share == pytest.approx(15 / 30.7, abs=1e-3) and check.clause == "AISC 360-16 E3"
    many = steel_columns.steel_capacity(
        steel_columns.steel_post("HSS 4x4x1/4"), height=numpy.array([6.0, 8.0, 10.0]) * ft
    )
    assert many.load / kip == pytest.approx([79.8, 71.0, 61.0], abs=0.05)


def test_steel_outside_its_range():
    thin = steel_columns.steel_post("NPS 3 std")
    with pytest.raises(OutsideRule, match="too slender"):
        steel_columns.steel_capacity(thin, height=20 * ft)
    assert steel_columns.steel_capacity(thin, height=numpy.array([8.0, 20.0]) * ft).load[1] == 0
    with pytest.raises(OutsideRule, match="no pipe"):
        steel_columns.steel_post("HSS 3x3x1/4", nominal_wall=True)
    with pytest.raises(OutsideRule, match="buckles by itself"):
        steel_columns.pipe_of_size(outside=6 * inch, wall=0.03 * inch, yield_strength=36 * ksi)
    with pytest.raises(BadInput, match="did you mean 'NPS 3 std'"):
        steel_columns.steel_post("NPS 3 sdt")


def test_telescoping_posts_are_for_the_time_of_the_work():
    with pytest.raises(OutsideRule, match="not to stay"):
        steel_columns.permanent_post_conditions(pieces=2, outside=3.5 * inch)
    with pytest.raises(OutsideRule, match="at least 3 in"):
        steel_columns.permanent_post_conditions(pieces=1, outside=2.375 * inch)
    assert len(steel_columns.permanent_post_conditions(pieces=1, outside=3.0 * inch)) >= 4


def test_nothing_is_called_safe():
    texts = [check.sentence + check.where for check in column_checks(POST, [ColumnDemand(LIVE, 9000 * lb)])]
    assert not any(word in text.lower() for text in texts for word in ("safe", "approved"))


def test_a_rulebook_made_elsewhere_is_taken():
    mine = Combination("D + W", (("dead", 1.0),), 1.6, "ten minutes", "2.4.1", "recalled")
    assert column_checks(SQUARE, [ColumnDemand(mine, 2000 * lb)])[0].combination == "D + W"


def test_off_the_middle_each_ply_rolls_by_itself():
    """Worked by hand in pounds and inches: three 2x6 of Hem-Fir No.2, 8 ft, 6,000 lb one inch off."""
    post = Column(find_material("Hem-Fir", "No.2"), 1.5 * inch, 5.5 * inch, 8 * ft, plies=3)
    live = RULEBOOK.combinations({"live"})[1]
    checks = column_checks(post, [ColumnDemand(live, 6000 * lb, eccentricity=1 * inch)])
    share = next(check.share for check in checks if check.name == "bending and compression")
    f_c, f_e = 6000 / (4.5 * 5.5), 6000 * 1 / (4.5 * 5.5**2 / 6)

    def root(ratio, c):  # the shape that C_P and C_L share
        return (1 + ratio) / (2 * c) - (((1 + ratio) / (2 * c)) ** 2 - ratio / c) ** 0.5

    crushing = 1300 * 1.1
    across = 0.822 * 470_000 / (96 / 4.5) ** 2
    value = crushing * 0.6 * root(across / crushing, 0.8)
    single = 850 * 1.3
    rolling = 1.2 * 470_000 / (1.84 * 96 * 5.5 / 1.5**2)
    bending = single * root(rolling / single, 0.95)
    depth = 0.822 * 470_000 / (96 / 5.5) ** 2
    expected = (f_c / value) ** 2 + f_e * (1 + 0.234 * f_c / depth) / (bending * (1 - f_c / depth))
    assert share == pytest.approx(expected, rel=1e-6) and 0.67 < expected < 0.69
