"""Dowel rules against independent statics, and their refusals."""

import pytest
import sympy

from structlib.ground.refusals import BadInput, OutsideRule
from structlib.ground.tables import read_table, table_rows
from structlib.ground.units import deg, inch, lb, psi
from structlib.rules.us import dowels

FIR = dowels.wood_piece(thickness=1.5 * inch, specific_gravity=0.5)
ACROSS = dowels.wood_piece(thickness=1.5 * inch, specific_gravity=0.5, angle=90 * deg)


def general_dowel_values(*, qm, qs, lm, ls, moment):
    """Yield force of one plane from statics alone, by where the bearing turns over or the fastener hinges.

    The fastener pushes on each member with q by length. Equal pushes P at the joint face and equal moments
    there give a quadratic A P^2 + B P = C for each way to yield.
    """
    ways = {
        "II": (1 / (4 * qs) + 1 / (4 * qm), (ls + lm) / 2, qs * ls**2 / 4 + qm * lm**2 / 4),
        "IIIm": (1 / (2 * qs) + 1 / (4 * qm), lm / 2, moment + qm * lm**2 / 4),
        "IIIs": (1 / (4 * qs) + 1 / (2 * qm), ls / 2, moment + qs * ls**2 / 4),
        "IV": (1 / (2 * qs) + 1 / (2 * qm), 0, 2 * moment),
    }
    found = {"Im": qm * lm, "Is": qs * ls}
    for mode, (a, b, c) in ways.items():
        found[mode] = (-b + sympy.sqrt(b**2 + 4 * a * c)) / (2 * a)
    return found


def test_every_mode_is_the_root_of_its_statics():
    """With a plastic moment of F_yb D^3 / 6, at exact rational inputs of many shapes."""
    half = sympy.Rational
    for lm, ls, fem, fes, fyb, d in (
        (half(3, 2), half(3, 2), 5600, 5600, 45000, half(1, 2)),
        (half(7, 2), half(3, 2), 3150, 5600, 45000, half(3, 4)),
        (half(3), half(1, 4), 2450, 87000, 70000, half(1, 4)),
        (half(7, 4), half(5), 6150, 2000, 100000, half(1, 8)),
    ):
        statics = general_dowel_values(qm=fem * d, qs=fes * d, lm=lm, ls=ls, moment=fyb * d**3 / 6)
        ours = dowels.yield_modes(
            diameter=d,
            main_length=lm,
            side_length=ls,
            main_bearing=half(fem),
            side_bearing=half(fes),
            bending_yield=half(fyb),
            reductions=dict.fromkeys(dowels.MODES["single"], 1),
        )
        for mode, value in statics.items():
            assert sympy.simplify(ours[mode] - value) == 0, mode


def test_double_shear_counts_two_planes_but_the_middle_member_once():
    shared = dict(
        diameter=12.0,
        main_length=40.0,
        side_length=30.0,
        main_bearing=20.0,
        side_bearing=25.0,
        bending_yield=300.0,
        reductions=dict.fromkeys(dowels.MODES["single"], 2.0),
    )
    one = dowels.yield_modes(**shared)
    two = dowels.yield_modes(**shared, shear="double")
    assert set(two) == {"Im", "Is", "IIIs", "IV"}
    assert two["Im"] == one["Im"]
    assert [two[mode] / one[mode] for mode in ("Is", "IIIs", "IV")] == [2.0, 2.0, 2.0]


def test_formulas_print_themselves():
    d, fe, fyb = sympy.symbols("D F_e F_yb", positive=True)
    value = dowels.mode_IV(diameter=d, main_bearing=fe, side_bearing=fe, bending_yield=fyb, reduction=sympy.Integer(1))
    assert sympy.simplify(value - d**2 * sympy.sqrt(fe * fyb / 3)) == 0
    gravity = sympy.Symbol("G", positive=True)
    assert dowels.bearing_strength_along(specific_gravity=gravity).free_symbols == {gravity}
    assert dowels.bearing_strength_across(specific_gravity=gravity, diameter=d).free_symbols == {gravity, d}
    angle = sympy.Symbol("theta")
    assert sympy.simplify(dowels.reduction_by_angle(angle=angle).subs(angle, sympy.pi / 2) - sympy.Rational(5, 4)) == 0


def test_reduction_terms_by_size():
    assert set(dowels.reduction_terms(dowels.nail("16d common"), angle=90 * deg).values()) == {2.2}
    thick = dowels.nail("20d common")
    assert dowels.reduction_terms(thick, angle=0.0)["IV"] == pytest.approx(10 * 0.192 + 0.5)
    bolt = dowels.reduction_terms(dowels.bolt(0.5 * inch), angle=90 * deg)
    assert [bolt[mode] for mode in ("Im", "II", "IV")] == pytest.approx([5.0, 4.5, 4.0])
    small_lag = dowels.reduction_terms(dowels.lag_screw(0.25 * inch, length=3 * inch), angle=90 * deg)
    assert small_lag["IV"] == pytest.approx((10 * 0.173 + 0.5) * 1.25)


def test_penetration_counts_as_the_rule_says():
    post = dowels.wood_piece(thickness=3.5 * inch, specific_gravity=0.5)
    spike = dowels.nail_of_size(diameter=0.162 * inch, length=3.5 * inch)
    assert dowels.penetration(spike, main=post, side=FIR) == pytest.approx(2.0 * inch)
    # NDS 2018 12.3.5.3: p - E / 2, the tip E of a nail 2 diameters long, however deep it goes
    assert dowels.bearing_length_in_main(spike, main=post, side=FIR) == pytest.approx((2.0 - 0.162) * inch)
    short = dowels.nail_of_size(diameter=0.162 * inch, length=2.75 * inch)
    assert dowels.bearing_length_in_main(short, main=post, side=FIR) == pytest.approx((1.25 - 0.162) * inch)
    through = dowels.nail_of_size(diameter=0.162 * inch, length=3.1 * inch)  # 0.1 in of its tip is outside
    assert dowels.bearing_length_in_main(through, main=FIR, side=FIR) == pytest.approx((1.5 - (0.324 - 0.1) / 2) * inch)
    with pytest.raises(OutsideRule, match="6 diameters"):
        dowels.lateral_value(dowels.nail_of_size(diameter=0.162 * inch, length=2.4 * inch), main=post, side=FIR)
    with pytest.raises(BadInput, match="does not reach through"):
        dowels.lateral_value(dowels.nail_of_size(diameter=0.148 * inch, length=1.4 * inch), main=post, side=FIR)
    lag = dowels.lag_screw(0.5 * inch, length=4 * inch)
    assert dowels.penetration(lag, main=post, side=FIR) == pytest.approx((4 - 1.5 - 0.3125) * inch)
    assert dowels.bearing_length_in_main(lag, main=post, side=FIR) == pytest.approx((2.5 - 0.3125 / 2) * inch)
    with pytest.raises(OutsideRule, match="4 diameters"):
        dowels.lateral_value(dowels.lag_screw(0.5 * inch, length=3 * inch), main=post, side=FIR)
    assert dowels.table_penetration_factor(spike, 3 * inch) == 1.0
    assert dowels.table_penetration_factor(lag, 3 * inch) == pytest.approx(0.75)
    assert dowels.table_penetration_factor(dowels.bolt(0.5 * inch), 1 * inch) == 1.0


def test_time_and_moisture_act_on_the_value():
    spike = dowels.nail("16d common")
    found = dowels.lateral_value(spike, main=FIR, side=FIR)
    value, used = dowels.adjusted_value(found, spike, time_factor=1.6, moisture="wet in service")
    assert value == pytest.approx(found.value * 1.6 * 0.7)
    assert [factor.symbol for factor in used] == ["C_D", "C_M", "C_g", "C_delta"]
    assert dowels.moisture_factor(spike, moisture="wet when built")[0] == 0.7
    with pytest.raises(BadInput, match="load duration"):
        dowels.adjusted_value(found, spike, time_factor=2.0)


def test_bolts_in_line_with_the_load_are_refused():
    half = dowels.bolt(0.5 * inch)
    with pytest.raises(OutsideRule, match="group action"):
        dowels.group_action_factor(half, in_line=2)
    assert dowels.group_action_factor(half, in_line=1) == 1.0
    assert dowels.group_action_factor(dowels.nail("10d common"), in_line=5) == 1.0


def test_geometry_factor_falls_in_proportion_and_then_refuses():
    half = dowels.bolt(0.5 * inch)
    for there, expected in ((3.5, 1.0), (2.625, 0.75), (1.75, 0.5), (9.0, 1.0)):
        factor, checks = dowels.geometry_factor(half, {"end": there * inch}, load="parallel, tension")
        assert factor == pytest.approx(expected)
        assert checks[0].share == pytest.approx(1.75 / there)
    assert dowels.geometry_factor(half, {"end": 2.5 * inch}, load="parallel, tension", softwood=False)[0] == 1.0
    assert dowels.geometry_factor(half, {"in a row": 1.5 * inch, "end": 4 * inch}, load="parallel, compression")[
        0
    ] == pytest.approx(0.75)
    for distances, load in (
        ({"end": 1.7 * inch}, "parallel, tension"),
        ({"in a row": 1.4 * inch}, "perpendicular"),
        ({"edge": 1.9 * inch}, "perpendicular"),
        ({"edge": 0.7 * inch}, "parallel, tension"),
    ):
        with pytest.raises(OutsideRule, match="must be at least"):
            dowels.geometry_factor(half, distances, load=load)


@pytest.mark.parametrize(
    "slenderness, diameters", [(1.0, 2.5), (2.0, 2.5), (3.0, 3.125), (4.0, 3.75), (6.0, 5.0), (9, 5.0)]
)
def test_rows_of_bolts_across_the_grain_spread_with_slenderness(slenderness, diameters):
    """(5 l + 10 D) / 8 between 2 and 6, worked by hand in diameters."""
    wants = dowels.least_distances(dowels.bolt(1 * inch), load="perpendicular", slenderness=slenderness)
    assert wants["between rows"][0] == pytest.approx(diameters * inch)
    with pytest.raises(BadInput, match="slenderness"):
        dowels.geometry_factor(dowels.bolt(1 * inch), {"between rows": 6 * inch}, load="perpendicular")


@pytest.mark.parametrize(
    "load, staggered, prebored, between",
    [
        ("parallel, tension", False, False, 5.0),
        ("parallel, tension", False, True, 3.0),
        ("parallel, compression", True, False, 2.5),
        ("perpendicular", False, False, 10.0),
        ("perpendicular", False, True, 5.0),
        ("perpendicular", True, False, 5.0),
    ],
)
def test_nail_distances_follow_the_commentary(load, staggered, prebored, between):
    spike = dowels.nail_of_size(diameter=0.1 * inch, length=3 * inch)
    wants = dowels.least_distances(spike, load=load, staggered=staggered, prebored=prebored)
    away = {True: (5.0, 10.0), False: (10.0, 15.0)}[prebored]
    along = away[0] if load.endswith("compression") else away[1]
    found = [wants[name][0] / (0.1 * inch) for name in ("end", "edge", "in a row", "between rows")]
    assert found == pytest.approx([along, 2.5, away[1], between])


def test_nails_keep_their_whole_value_at_the_least_distance():
    spike = dowels.nail_of_size(diameter=0.1 * inch, length=3 * inch)
    assert dowels.geometry_factor(spike, {"end": 1.5 * inch}, load="perpendicular")[0] == 1.0
    with pytest.raises(OutsideRule, match="at least 1.50 in"):
        dowels.geometry_factor(spike, {"end": 1.4 * inch}, load="perpendicular")


def test_withdrawal_by_exact_powers():
    """G of 0.64 has a whole root: 0.64^2.5 = 0.8^5."""
    by_inch = lb / inch
    nail = dowels.nail_withdrawal(specific_gravity=0.64, diameter=0.162 * inch) / by_inch
    assert nail == pytest.approx(1380 * 0.32768 * 0.162, rel=1e-12)


@pytest.mark.parametrize(
    "ask, sort",
    [
        (lambda: dowels.nail("16d comon"), BadInput),
        (lambda: dowels.nail("6d sinker"), OutsideRule),
        (lambda: dowels.nail_of_size(diameter=0.3 * inch, length=3 * inch), OutsideRule),
        (lambda: dowels.nail_of_size(diameter=0.05 * inch, length=3 * inch), OutsideRule),
        (lambda: dowels.nail_of_size(diameter=-1, length=3 * inch), BadInput),
        (lambda: dowels.nail_of_size(diameter=float("nan"), length=3 * inch), BadInput),
        (lambda: dowels.nail_of_size(diameter=4.0, length="3 in"), BadInput),
        (lambda: dowels.bolt(1.25 * inch), OutsideRule),
        (lambda: dowels.bolt(0.2 * inch), OutsideRule),
        (lambda: dowels.bolt([]), BadInput),
        (lambda: dowels.bolt(sympy.Symbol("D")), BadInput),
        (lambda: dowels.lag_screw(0.45 * inch, length=4 * inch), OutsideRule),
        (lambda: dowels.wood_piece(thickness=0.0, specific_gravity=0.5), BadInput),
        (lambda: dowels.wood_piece(thickness=38.0, specific_gravity=None), BadInput),
        (lambda: dowels.wood_piece(thickness=38.0, specific_gravity=0.9), OutsideRule),
        (lambda: dowels.wood_piece(thickness=38.0, specific_gravity=0.2), OutsideRule),
        (lambda: dowels.wood_piece(thickness=38.0, specific_gravity=0.5, angle=90), BadInput),
        (lambda: dowels.wood_piece(thickness=400 * 12 * inch, specific_gravity=0.5), BadInput),
        (lambda: dowels.steel_plate(thickness=6.0, steel="A63"), BadInput),
        (lambda: dowels.lateral_value("16d", main=FIR, side=FIR), BadInput),
        (lambda: dowels.lateral_value(dowels.nail("16d common"), main=FIR, side=38.0), BadInput),
        (
            lambda: dowels.lateral_value(dowels.nail("16d common"), main=FIR, side=FIR, shear="double"),
            OutsideRule,
        ),
        (lambda: dowels.lateral_value(dowels.bolt(12.7), main=FIR, side=FIR, shear="triple"), BadInput),
        (
            lambda: dowels.lateral_value(
                dowels.bolt(12.7),
                main=dowels.steel_plate(thickness=6.0),
                side=dowels.steel_plate(thickness=6.0),
            ),
            OutsideRule,
        ),
        (
            lambda: dowels.lateral_value(dowels.bolt(12.7), main=dowels.steel_plate(thickness=6.0), side=FIR),
            OutsideRule,
        ),
        (lambda: dowels.reduction_small(diameter=12.7), OutsideRule),
        (lambda: dowels.adjusted_value(5.0, dowels.bolt(12.7)), BadInput),
        (lambda: dowels.moisture_factor(dowels.bolt(12.7), moisture="damp"), BadInput),
        (lambda: dowels.group_action_factor(dowels.bolt(12.7), in_line=0), BadInput),
        (lambda: dowels.group_action_factor(dowels.bolt(12.7), in_line=1.5), BadInput),
        (lambda: dowels.least_distances(dowels.bolt(12.7), load="sideways"), BadInput),
        (lambda: dowels.geometry_factor(dowels.bolt(12.7), {}, load="perpendicular"), BadInput),
        (lambda: dowels.geometry_factor(dowels.bolt(12.7), {"corner": 50.0}, load="perpendicular"), BadInput),
        (lambda: dowels.as_tabulated(-5.0), BadInput),
        (lambda: dowels.bearing_strength_steel(tensile_strength=400.0, made="cast"), BadInput),
    ],
)
def test_nonsense_is_answered_with_one_sentence(ask, sort):
    with pytest.raises(sort) as caught:
        ask()
    assert "\n" not in str(caught.value) and len(str(caught.value)) > 20


def test_every_nail_of_the_file_has_a_yield_strength_or_a_clear_refusal():
    refused = []
    for name in dowels.nail_names():
        try:
            assert 70000 <= round(dowels.nail(name).bending_yield / psi) <= 100000
        except OutsideRule:
            refused.append(name)
    assert refused == ["6d sinker"]  # 0.092 in, under the first band


def test_a_bad_row_of_a_fastener_table_is_refused_by_file_and_line(tmp_path):
    good = "# key: nail\n# numbers: diameter_in, length_in\n"
    good += "nail,kind,diameter_in,length_in,source,verified,note\n"
    for row, said in (
        ("8d,common,thick,2.5,x,seen,\n", "not a number"),
        ("8d,common,0.131,2.5,,seen,\n", "source"),
        ("8d,common,0.131,2.5,x,sure,\n", "verified"),
        ("8d,a,0.1,2,x,seen,\n8d,b,0.2,3,x,seen,\n", "already on line 4"),
    ):
        path = tmp_path / "nails.csv"
        path.write_text(good + row, encoding="utf-8")
        with pytest.raises(BadInput, match=said):
            read_table(path)


def test_the_fastener_tables_can_all_be_read():
    for name in ("nails", "yield", "lags", "factors", "spacing", "schedules"):
        assert table_rows(f"us_fasteners_{name}"), name
