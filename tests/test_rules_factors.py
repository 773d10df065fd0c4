"""Every factor of the United States rules at its table values, at its edges, and where it is refused."""

import math

import numpy
import pytest
import sympy

from structlib.ground.engineered import user_lvl
from structlib.ground.lumber import find_material, lvl, materials
from structlib.ground.refusals import BadInput, OutsideRule
from structlib.ground.units import ft, inch, psi
from structlib.rules.check import BeamUse
from structlib.rules.choice import RULEBOOK
from structlib.rules.us import bearing, bending, deflection, factors, shear, stability
from structlib.rules.us.column_strength import compression_wet_factor
from structlib.rules.us.deflection import sag_divisors

FIR = find_material("Douglas Fir-Larch", "No.2")
HEM = find_material("Hem-Fir", "No.2")


def size(material, width, depth):
    return float(bending.size_factor(material, width=width * inch, depth=depth * inch)[0])


# NDS Supplement 2018 Table 4A, select and numbered grades: depth, C_F of 2 in and 3 in thick, of 4 in thick
TABLE_4A = [
    (1.5, 1.5, 1.5),
    (2.5, 1.5, 1.5),
    (3.5, 1.5, 1.5),
    (4.5, 1.4, 1.4),
    (5.5, 1.3, 1.3),
    (7.25, 1.2, 1.3),
    (9.25, 1.1, 1.2),
    (11.25, 1.0, 1.1),
    (13.25, 0.9, 1.0),
    (15.25, 0.9, 1.0),
]


@pytest.mark.parametrize("depth, thin, thick", TABLE_4A)
def test_size_factor_of_dimension_lumber(depth, thin, thick):
    assert size(FIR, 1.5, depth) == thin
    if depth >= 2.5:
        assert size(FIR, 2.5, depth) == thin
    if depth >= 3.5:
        assert size(FIR, 3.5, depth) == thick


@pytest.mark.parametrize("depth, factor", [(1.5, 1.1), (3.5, 1.1), (4.5, 1.0), (5.5, 1.0)])
def test_size_factor_of_studs_by_table_4a(depth, factor):
    assert size(find_material("Hem-Fir", "Stud"), 1.5, depth) == factor


@pytest.mark.parametrize(
    "grade, depth, factor",
    [("Construction", 3.5, 1.0), ("Standard", 2.5, 1.0), ("Utility", 3.5, 1.0), ("Utility", 2.5, 0.4)],
)
def test_size_factor_of_light_framing_by_table_4a(grade, depth, factor):
    assert size(find_material("Hem-Fir", grade), 1.5, depth) == factor


@pytest.mark.parametrize(
    "grade, depth",
    [("Stud", 7.25), ("Stud", 9.25), ("Construction", 5.5), ("Standard", 9.25), ("Utility", 5.5)],
)
def test_grades_deeper_than_their_table_are_refused_with_a_size_that_fits(grade, depth):
    with pytest.raises(OutsideRule, match=f"{grade}.*at most .* in wide, for example a 2x"):
        size(find_material("Hem-Fir", grade), 1.5, depth)


def test_an_old_board_between_two_sizes_takes_the_smaller_factor():
    assert size(FIR, 1.5, 8.0) == 1.1  # between 2x8 (1.2) and 2x10 (1.1)
    assert size(FIR, 1.75, 9.25) == 1.1  # 1 3/4 in thick counts as 3 in nominal
    assert size(FIR, 3.0, 9.25) == 1.2  # 3 in thick counts as 4 in nominal


@pytest.mark.parametrize("width, depth", [(0.75, 9.25), (1.4, 9.25), (4.5, 9.25), (5.5, 11.25), (1.0, 1.25)])
def test_dimension_lumber_thinner_than_2x_or_thicker_than_4x_is_refused(width, depth):
    with pytest.raises(OutsideRule, match="2 in to 4 in thick"):
        size(FIR, width, depth)


def test_a_piece_on_its_flat_is_refused():
    for material in (FIR, lvl("2.0E-2900Fb"), find_material("Douglas Fir-Larch", "No.1", "6x12")):
        with pytest.raises(OutsideRule, match="flat"):
            size(material, 11.25, 5.5)


def test_southern_pine_values_hold_for_their_own_width_and_the_table_goes_on_at_nine_tenths():
    ten = find_material("Southern Pine", "No.2", "2x10")
    assert size(ten, 1.5, 9.25) == 1.0
    assert size(ten, 3.5, 9.25) == 1.1  # Table 4B: 4 in thick, 8 in and wider
    assert size(find_material("Southern Pine", "No.2", "2x12"), 1.5, 11.25) == 1.0
    assert size(find_material("Southern Pine", "No.2", "2x14"), 1.5, 13.25) == 0.9
    assert size(find_material("Southern Pine", "No.2", "2x4"), 1.5, 3.5) == 1.0
    for nominal, depth in (("2x4", 5.5), ("2x6", 7.25), ("2x8", 9.25), ("2x10", 11.25)):
        with pytest.raises(OutsideRule, match="that width only"):  # the values of narrow boards are higher
            size(find_material("Southern Pine", "No.2", nominal), 1.5, depth)


def test_timber_size_factor_by_4_3_6():
    timber = find_material("Douglas Fir-Larch", "No.1", "6x12")
    for depth in (7.5, 9.5, 11.5, 12.0):
        assert size(timber, 5.5, depth) == 1.0
    for depth, printed in (
        (14.0, 0.9830),
        (16.0, 0.9685),
        (18.0, 0.9559),
        (20.0, 0.9448),
    ):  # printed values of 4.3.6
        assert size(timber, 5.5, depth) == pytest.approx(printed, abs=5e-5)
    with pytest.raises(OutsideRule, match="5 in nominal and thicker"):
        size(timber, 3.5, 11.25)


def test_lvl_depth_factor_is_the_makers_and_generic_grades_gain_nothing():
    generic = lvl("2.0E-2900Fb")
    assert size(generic, 1.75, 9.25) == 1.0
    assert size(generic, 1.75, 18.0) == pytest.approx((12 / 18) ** 0.18, rel=1e-12)
    mine = user_lvl(
        bending=2800 * psi,
        shear=285 * psi,
        bearing=750 * psi,
        modulus=2.0e6 * psi,
        depth_exponent=0.136,
        name="mine",
        source="an example",
    )
    assert size(mine, 1.75, 7.25) == pytest.approx((12 / 7.25) ** 0.136, rel=1e-12)
    assert size(mine, 1.75, 2.0) == pytest.approx((12 / 3.5) ** 0.136, rel=1e-12)  # no further gain below 3 1/2 in


def test_repetitive_factor_from_three_members_on():
    expected = {"dimension": 1.15, "southern pine": 1.15, "timber": 1.0, "lvl": 1.04}  # NDS 4.3.9, 8.3.7
    for kind, factor in expected.items():
        for material in materials(kind):
            found = bending.repetitive_factor(material, sharing_members=numpy.array([1, 2, 3, 4, 6]))
            assert found.tolist() == [1.0, 1.0, factor, factor, factor]


# NDS Supplement 2018 Tables 4A and 4D, wet service
@pytest.mark.parametrize(
    "value, lumber, timber",
    [("bending", 0.85, 1.0), ("shear", 0.97, 1.0), ("bearing", 0.67, 0.67), ("modulus", 0.9, 1.0)],
)
def test_wet_factors(value, lumber, timber):
    beam = find_material("Douglas Fir-Larch", "No.1", "6x12")
    pine = find_material("Southern Pine", "No.2", "2x10")
    assert bending.wet_factor(FIR, value=value, wet=True) == lumber
    assert bending.wet_factor(pine, value=value, wet=True) == lumber
    assert bending.wet_factor(beam, value=value, wet=True) == timber
    assert bending.wet_factor(lvl("1.9E-2600Fb"), value=value, wet=False) == 1.0
    with pytest.raises(OutsideRule, match="dry use only"):
        bending.wet_factor(lvl("1.9E-2600Fb"), value=value, wet=True)


def test_timbers_of_southern_pine_are_listed_wet_already():
    """NDS Supplement Table 4D: no further factor; 375 psi is two thirds of the lumber's 565, rounded."""
    timber = find_material("Southern Pine", "No.2", "6x12")
    assert timber.bearing / psi == 375 == round(565 * 0.67 / 25) * 25
    for value in ("bending", "shear", "bearing", "modulus"):
        assert bending.wet_factor(timber, value=value, wet=True) == 1.0
    assert compression_wet_factor(timber, wet=True)[0] == 1.0


# NDS 2018 Table 2.3.2: the shortest-lasting load present
@pytest.mark.parametrize(
    "types, factor",
    [
        (["dead"], 0.9),
        (["dead", "live"], 1.0),
        (["dead", "snow"], 1.15),
        (["dead", "live", "snow"], 1.15),
        (["dead", "roof live"], 1.25),
        (["dead", "live", "roof live"], 1.25),
        (["snow"], 1.15),
    ],
)
def test_time_factor_of_the_shortest_load(types, factor):
    assert factors.time_factor(types)[0] == factor


def test_combinations_by_asce_7_16_2_4_1():
    found = {
        c.name: (dict(c.factors), c.time_factor) for c in RULEBOOK.combinations(["dead", "live", "roof live", "snow"])
    }
    assert found == {
        "D": ({"dead": 1.0}, 0.9),
        "D + L": ({"dead": 1.0, "live": 1.0}, 1.0),
        "D + Lr": ({"dead": 1.0, "roof live": 1.0}, 1.25),
        "D + S": ({"dead": 1.0, "snow": 1.0}, 1.15),
        "D + 0.75 L + 0.75 Lr": ({"dead": 1.0, "live": 0.75, "roof live": 0.75}, 1.25),
        "D + 0.75 L + 0.75 S": ({"dead": 1.0, "live": 0.75, "snow": 0.75}, 1.15),
    }
    assert [c.name for c in RULEBOOK.combinations([])] == ["D"]
    assert [c.name for c in RULEBOOK.combinations(["snow"])] == ["D", "D + S"]


# NDS 2018 Table 3.3.3, single span under even load, and the note for loads not listed
@pytest.mark.parametrize(
    "case, ratio, expected",
    [
        ("single span, uniform", 6.999, 2.06 * 6.999),
        ("single span, uniform", 7.0, 1.63 * 7 + 3),
        ("single span, uniform", 20.0, 1.63 * 20 + 3),
        ("not listed", 6.999, 2.06 * 6.999),
        ("not listed", 7.0, 1.63 * 7 + 3),
        ("not listed", 14.2, 1.63 * 14.2 + 3),
        ("not listed", 14.4, 1.84 * 14.4),
        ("not listed", 30.0, 1.84 * 30),
        ("single span, point load at midspan", 3.0, 1.80 * 3.0),
        ("single span, point load at midspan, held there", 9.0, 1.11 * 9.0),
    ],
)
def test_effective_length(case, ratio, expected):
    found = stability.beam_effective_length(unbraced_length=ratio * 200.0, depth=200.0, case=case)
    assert float(found) == pytest.approx(expected * 200.0, rel=1e-12)


@pytest.mark.parametrize("unbraced", [1e-9, 1.0, 600.0, 2400.0, 6000.0])
def test_stability_factor_solves_its_own_equation(unbraced):
    """NDS Eq. 3.3-6 is a root of 0.95 C^2 - (1 + a) C + a = 0, which is (C - a)(C - 1) = 0.05 C^2."""
    depth, width, starred, emin = 235.0, 76.0, 8.0, 3200.0
    ratio = unbraced / depth
    le = 2.06 * unbraced if ratio < 7 else 1.63 * unbraced + 3 * depth
    a = 1.2 * emin / (le * depth / width**2) / starred
    found = stability.beam_stability_factor(
        unbraced_length=unbraced, depth=depth, width=width, bending_value=starred, modulus_stability=emin
    )
    assert 0 < found <= 1
    if a < 1e6:
        assert (found - a) * (found - 1) == pytest.approx(0.05 * found**2, rel=1e-6)
    else:
        assert found == pytest.approx(1.0, abs=1e-6)


def test_stability_factor_edges():
    given = {"depth": 235.0, "width": 38.0, "bending_value": 8.0, "modulus_stability": 3200.0}
    assert stability.beam_stability_factor(unbraced_length=0.0, **given) == 1.0
    square = {**given, "width": 235.0}
    assert stability.beam_stability_factor(unbraced_length=6000.0, **square) == 1.0  # 3.3.3.1: not deeper than wide
    # R_B = 50 exactly: le = 2500 b^2 / d, and lu from le = 1.63 lu + 3 d
    le = 2500 * 38.0**2 / 235.0
    edge = (le - 3 * 235.0) / 1.63
    assert stability.beam_stability_factor(unbraced_length=edge * 0.999, **given) > 0
    with pytest.raises(OutsideRule, match="slenderness ratio is 50.*brace it closer"):
        stability.beam_stability_factor(unbraced_length=edge * 1.001, **given)
    many = {**given, "depth": numpy.array([235.0, 140.0]), "width": numpy.array([38.0, 38.0])}
    found = stability.beam_stability_factor(unbraced_length=edge * 1.001, **many)
    assert found[0] == 0.0 and found[1] > 0.0  # on a rack the slender one gets no strength


def test_volume_factor_over_one_raises_the_value_that_bracing_is_judged_by():
    """NDS 2018 3.3.3.8, 8.3.6: F_b* takes C_V in when it is over 1; else the lesser of C_V and C_L holds."""
    mine = user_lvl(
        bending=2800 * psi,
        shear=285 * psi,
        bearing=750 * psi,
        modulus=2.0e6 * psi,
        depth_exponent=0.136,
        name="mine",
        source="an example",
    )
    emin = mine.modulus_stability
    for depth in (7.25 * inch, 16 * inch):
        width, unbraced = 3.5 * inch, 8 * ft
        value, used = bending.bending_value(
            mine,
            width=width,
            depth=depth,
            plies=2,
            ply_width=1.75 * inch,
            unbraced_length=unbraced,
            time_factor=1.0,
        )
        cv = (12 * inch / depth) ** 0.136
        starred = mine.bending * max(cv, 1.0)
        le = 2.06 * unbraced if unbraced / depth < 7 else 1.63 * unbraced + 3 * depth
        a = 1.2 * emin / (le * depth / width**2) / starred
        cl = (1 + a) / 1.9 - math.sqrt(((1 + a) / 1.9) ** 2 - a / 0.95)
        assert float(value) == pytest.approx(starred * min(cl, cv), rel=1e-12)
        assert {factor.symbol: float(factor.value) for factor in used}["C_V"] == pytest.approx(cv)


def test_bearing_area_factor_by_table_3_10_4():
    printed = {0.5: 1.75, 1.0: 1.38, 1.5: 1.25, 2.0: 1.19, 3.0: 1.13, 4.0: 1.10, 6.0: 1.00}
    for seat, factor in printed.items():
        found = float(bearing.bearing_area_factor(bearing_length=seat * inch, distance_to_end=3 * inch))
        assert found == pytest.approx(factor, abs=0.0075)
    for near in (0.0, 2.99 * inch):
        assert float(bearing.bearing_area_factor(bearing_length=1.5 * inch, distance_to_end=near)) == 1.0


def test_least_seats_by_r502_6():
    for below in ("plate", "post", "steel"):
        assert factors.least_seat(below)[0] == pytest.approx(1.5 * inch)
    assert factors.least_seat("masonry")[0] == pytest.approx(3 * inch)


@pytest.mark.parametrize(
    "below, loaded_on, allowed",
    [
        ("plate", "top", True),
        ("post", "top", True),
        ("steel", "top", True),
        ("masonry", "top", True),
        ("hanger", "top", False),
        ("plate", "side", False),
        ("hanger", "side", False),
    ],
)
def test_load_near_a_seat_is_left_out_only_with_full_bearing_below_and_load_on_top(below, loaded_on, allowed):
    assert shear.loads_near_support_may_be_left_out(below=below, loaded_on=loaded_on) is allowed
    assert RULEBOOK.leaves_out_load_near_seat(below=below, loaded_on=loaded_on) is allowed


# IRC 2021 Table R301.7
@pytest.mark.parametrize(
    "use, live, total",
    [
        ("floor", 360, 240),
        ("ceiling with plaster or stucco", 360, 240),
        ("any other structural member", 240, 240),
        ("lintel under masonry veneer", 600, 600),
        ("rafter steeper than 3:12, no finished ceiling", 180, 240),
    ],
)
def test_sag_divisors(use, live, total):
    assert sag_divisors(BeamUse(use))[:2] == (live, total)


def test_a_stricter_sag_divisor_is_taken_and_a_looser_one_refused():
    assert sag_divisors(BeamUse("floor", live_divisor=480, total_divisor=360))[:2] == (480.0, 360.0)
    assert "asked by the reader" in sag_divisors(BeamUse("floor", live_divisor=480))[2]["live"][0]
    assert "asked by the reader" not in sag_divisors(BeamUse("floor", live_divisor=360))[2]["live"][0]
    for wrong in ({"live_divisor": 240}, {"total_divisor": 180}, {"live_divisor": 360.0 - 1e-9}):
        with pytest.raises(BadInput, match="only a stricter one"):
            sag_divisors(BeamUse("floor", **wrong))


def test_creep_by_3_5_2():
    assert deflection.creep_factor(wet=False) == 1.5
    assert deflection.creep_factor(wet=True) == 2.0
    assert deflection.long_term_deflection(lasting=4.0, passing=6.0, creep_factor=2.0) == 14.0


def test_hankinson_at_its_ends_and_by_symbols():
    given = {"along": 10.0, "across": 3.0}
    assert bearing.bearing_value_at_angle(**given, sine=0.0, cosine=1.0) == 10.0
    assert bearing.bearing_value_at_angle(**given, sine=1.0, cosine=0.0) == 3.0
    t = sympy.Symbol("t", positive=True)
    shown = bearing.bearing_value_at_angle(**given, sine=sympy.sin(t), cosine=sympy.cos(t))
    assert float(shown.subs(t, sympy.pi / 6)) == pytest.approx(
        bearing.bearing_value_at_angle(**given, sine=0.5, cosine=math.sqrt(0.75))
    )


def test_formulas_pass_symbols_through():
    R, b, s, d, le, E = sympy.symbols("R b s d l_e E", positive=True)
    assert bearing.bearing_stress(reaction=R, width=b, bearing_length=s) == R / (b * s)
    assert bearing.bearing_length_needed(reaction=R, width=b, bearing_value=s) == R / (b * s)
    assert (
        sympy.simplify(stability.slenderness_ratio(effective_length=le, depth=d, width=b) - sympy.sqrt(le * d) / b) == 0
    )
    assert stability.critical_buckling_value(modulus_stability=E, slenderness=s) == 1.2 * E / s**2
    assert float(stability.stability_factor_from_ratio(ratio=s).subs(s, 2.83)) == pytest.approx(0.974, abs=5e-4)


def test_unknown_names_are_answered_with_the_nearest():
    with pytest.raises(BadInput, match="did you mean 'Hem-Fir'"):
        find_material("Hem Fir", "No.2")
    with pytest.raises(BadInput, match="did you mean .*'single span, uniform'"):
        stability.beam_effective_length(unbraced_length=600.0, depth=235.0, case="single span uniform")
    with pytest.raises(BadInput, match="did you mean 'floor'"):
        sag_divisors(BeamUse("flor"))
    with pytest.raises(BadInput, match="did you mean 'creep_dry'"):
        factors.scalar("creep dry")
    with pytest.raises(BadInput, match="did you mean 'masonry'"):
        factors.least_seat("mason")
