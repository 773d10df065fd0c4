"""Rafter pairs and plane frames: values by hand, by sympy and by exact reasoning; bad input; mechanisms."""

from fractions import Fraction

import numpy
import pytest
import sympy
from frames_by_hand import compression_below_tie, free_bodies, moment_above_tie, three_hinged_reactions

from structlib.ground.refusals import BadInput
from structlib.ground.units import ft, inch, lb, plf, psf, psi
from structlib.mechanics import frames, frames_along, frames_spread, frames_uneven
from structlib.mechanics.plane_frame import Bar, Joint, JointLoad, PlaneFrame, solve_frame
from structlib.mechanics.rafter_pair import rafter_pair

W, L, H, A, X, Z, EI, EA = sympy.symbols("w L h a x z EI EA", positive=True)


def test_thrust_of_the_24_ft_house_by_hand():
    for rise_in_12, by_hand in ((3, 1200), (6, 600), (12, 300)):
        thrust = frames.rafter_thrust(line_load=50 * psf, building_span=24 * ft, rise=rise_in_12 * ft)
        assert thrust / plf == pytest.approx(by_hand, rel=1e-12)


def test_thrust_from_the_free_body_of_one_rafter():
    thrust = sympy.Symbol("T")
    about_ridge = W * L / 2 * L / 2 - W * (L / 2) * (L / 4) - thrust * H * (1 - A)
    (found,) = sympy.solve(about_ridge, thrust)
    asked = frames.tie_force(line_load=W, building_span=L, rise=H, height_fraction=A)
    assert sympy.simplify(found - asked) == 0
    asked = frames.rafter_thrust(line_load=W, building_span=L, rise=H) * frames.raised_tie_factor(height_fraction=A)
    assert sympy.simplify(found - asked) == 0


def test_moment_along_the_rafter_is_one_curve_with_a_kink_at_the_tie():
    below = frames_along.moment_below_tie(line_load=W, building_span=L, distance=X)
    above = moment_above_tie(line_load=W, building_span=L, height_fraction=A, distance_from_ridge=Z)
    assert sympy.simplify(below.subs(X, A * L / 2) - above.subs(Z, (1 - A) * L / 2)) == 0
    assert above.subs(Z, 0) == 0 and below.subs(X, 0) == 0
    simple = frames.simple_rafter_moment(line_load=W, building_span=L)
    at_tie = frames.raised_tie_bending_factor(height_fraction=A)
    assert sympy.simplify(below.subs(X, A * L / 2) - at_tie * simple) == 0
    # the kink is what the tie's pull does across the rafter
    pull = frames.tie_force(line_load=W, building_span=L, rise=H, height_fraction=A)
    kink = sympy.diff(below, X).subs(X, A * L / 2) + sympy.diff(above, Z).subs(Z, (1 - A) * L / 2)
    assert sympy.simplify(kink - pull * H / (L / 2)) == 0
    for curve, place in ((below, X), (above, Z)):
        assert sympy.diff(curve, place, 2) == -W


def test_greatest_moment_above_the_tie_by_calculus():
    above = moment_above_tie(line_load=W, building_span=L, height_fraction=A, distance_from_ridge=Z)
    (place,) = sympy.solve(sympy.diff(above, Z), Z)
    simple = frames.simple_rafter_moment(line_load=W, building_span=L)
    share = sympy.simplify(above.subs(Z, place) / simple)
    for height in (0.0, 0.1, 0.29):
        found = frames.raised_tie_greatest_factor(height_fraction=height)
        assert float(share.subs(A, height)) == pytest.approx(found, rel=1e-12)
    # it lies above the tie only up to 1 - 1/sqrt(2)
    inside = sympy.solve(sympy.Eq(place, (1 - A) * L / 2), A)
    assert float(min(inside)) == pytest.approx(frames.TIE_GOVERNS_FROM, rel=1e-12)


@pytest.mark.parametrize("height", [0.0, 0.05, 0.1, 0.2, 0.29, 0.2929, 0.2930, 1 / 3, 0.5, 0.8])
def test_greatest_moment_equals_the_greatest_of_many_places(height):
    simple = frames.simple_rafter_moment(line_load=1.0, building_span=2.0)
    below = frames_along.moment_below_tie(line_load=1.0, building_span=2.0, distance=numpy.linspace(0, height, 20001))
    above = moment_above_tie(
        line_load=1.0,
        building_span=2.0,
        height_fraction=height,
        distance_from_ridge=numpy.linspace(0, 1 - height, 20001),
    )
    searched = max(below.max(), above.max()) / simple
    assert frames.raised_tie_greatest_factor(height_fraction=height) == pytest.approx(searched, rel=1e-7)


def test_greatest_factor_in_arrays_and_symbols():
    heights = numpy.array([0.0, 0.2, 0.29289, 0.3, 0.5])
    one_by_one = [frames.raised_tie_greatest_factor(height_fraction=float(h)) for h in heights]
    assert frames.raised_tie_greatest_factor(height_fraction=heights) == pytest.approx(one_by_one, rel=1e-14)
    symbolic = frames.raised_tie_greatest_factor(height_fraction=A)
    assert [float(symbolic.subs(A, h)) for h in heights] == pytest.approx(one_by_one, rel=1e-12)


def test_push_along_the_rafter_by_hand():
    """5-12-13 triangle: half span 12, rise 5, w 52: wall 624, thrust 748.8."""
    pair = dict(line_load=52.0, building_span=24.0, rise=5.0)
    along = frames_along.compression_above_tie
    heel = along(**pair, height_fraction=0.0, distance_from_ridge=12.0)
    assert heel == pytest.approx(float(Fraction(7488, 10) * Fraction(12, 13) + 624 * Fraction(5, 13)), rel=1e-12)
    ridge = along(**pair, height_fraction=0.0, distance_from_ridge=0.0)
    assert ridge == pytest.approx(float(Fraction(7488, 10) * Fraction(12, 13)), rel=1e-12)
    foot = compression_below_tie(**pair, distance=0.0)
    assert foot == pytest.approx(240.0, rel=1e-12)
    # the tie adds T cos(slope) in one step
    step = along(**pair, height_fraction=0.5, distance_from_ridge=6.0) - compression_below_tie(**pair, distance=6.0)
    assert step == pytest.approx(2 * 748.8 * 12 / 13, rel=1e-12)


def test_spread_by_bending_from_virtual_work():
    half, slope = L / 2, sympy.sqrt((L / 2) ** 2 + H**2) / (L / 2)
    below = frames_along.moment_below_tie(line_load=W, building_span=L, distance=X)
    above = moment_above_tie(line_load=W, building_span=L, height_fraction=A, distance_from_ridge=Z)
    unit_below, unit_above = H * X / half, A * H * Z / (half * (1 - A))
    work = sympy.integrate(below * unit_below, (X, 0, A * half))
    work += sympy.integrate(above * unit_above, (Z, 0, (1 - A) * half))
    expected = 2 * slope * work / EI
    found = frames_spread.spread_by_bending(
        line_load=W, building_span=L, rise=H, height_fraction=A, bending_stiffness=EI
    )
    assert sympy.simplify(expected - found) == 0
    work = sympy.integrate(below * unit_below, (X, 0, half))
    peak = frames_spread.stiff_peak_spread(line_load=W, building_span=L, rise=H, bending_stiffness=EI)
    assert sympy.simplify(2 * slope * work / EI - peak) == 0
    assert sympy.simplify(below.subs(X, half) - frames_spread.stiff_peak_moment(line_load=W, building_span=L)) == 0


def test_uneven_pair_from_its_free_bodies():
    near, far = sympy.symbols("w_l w_r", positive=True)
    left, right, pull, shear = sympy.symbols("R_l R_r T V")
    half = L / 2
    found = sympy.solve(
        [
            left + right - (near + far) * half,
            right * L - near * half * half / 2 - far * half * (half + half / 2),
            left * half - near * half * half / 2 - pull * H * (1 - A),
            near * half - left - shear,
        ],
        [left, right, pull, shear],
    )
    asked = frames_uneven.uneven_eave_reaction(near_load=near, far_load=far, building_span=L)
    assert sympy.simplify(found[left] - asked) == 0
    asked = frames_uneven.uneven_tie_force(left_load=near, right_load=far, building_span=L, rise=H, height_fraction=A)
    assert sympy.simplify(found[pull] - asked) == 0
    asked = frames_uneven.ridge_shear(left_load=near, right_load=far, building_span=L)
    assert sympy.simplify(found[shear] - asked) == 0


def test_three_hinged_frame_equals_the_pair_and_an_uneven_one_by_hand():
    found = three_hinged_reactions(
        span=L,
        crown=L / 2,
        rise=H,
        left_force=W * L / 2,
        left_place=L / 4,
        right_force=W * L / 2,
        right_place=L / 4,
    )
    assert sympy.simplify(found["thrust"] - frames.rafter_thrust(line_load=W, building_span=L, rise=H)) == 0
    # feet 10 apart, crown 4 from the left and 5 up, 100 at 1 from the left foot, 60 at 2 from the right foot
    found = three_hinged_reactions(
        span=10.0, crown=4.0, rise=5.0, left_force=100.0, left_place=1.0, right_force=60.0, right_place=2.0
    )
    assert found == pytest.approx({"left": 102.0, "right": 58.0, "thrust": 21.6, "crown_shear": -2.0}, rel=1e-12)


# ---- the solver ----

STIFF = dict(axial_stiffness=1e11, bending_stiffness=1.6e6 * psi * 47.6 * inch**4)
PAIR = dict(building_span=24 * ft, rise=6 * ft)
WEIGHT = 50 * psf * 16 * inch


@pytest.mark.parametrize("height", [0.0, 0.2, 1 / 3, 0.5])
def test_solver_equals_the_closed_forms_of_a_tied_pair(height):
    frame = rafter_pair(**PAIR, left_load=WEIGHT, right_load=WEIGHT, height_fraction=height, **STIFF)
    solved = solve_frame(frame)
    pull = frames.tie_force(line_load=WEIGHT, **PAIR, height_fraction=height)
    assert solved.axial("tie", 0.5) == pytest.approx(pull, rel=1e-9)
    bars = [name for name in frame.bars if name.startswith("left rafter")]
    simple = frames.simple_rafter_moment(line_load=WEIGHT, building_span=PAIR["building_span"])
    greatest = max(abs(solved.greatest_moment(name)[0]) for name in bars) / simple
    assert greatest == pytest.approx(frames.raised_tie_greatest_factor(height_fraction=height), rel=1e-8)
    spread = frames_spread.spread_by_bending(
        line_load=WEIGHT, **PAIR, height_fraction=height, bending_stiffness=STIFF["bending_stiffness"]
    )
    assert solved.move("right")[0] - solved.move("left")[0] == pytest.approx(spread, rel=1e-4, abs=1e-3)
    heel = -solved.axial("left rafter 1", 0.0)
    if height:
        expected = compression_below_tie(line_load=WEIGHT, **PAIR, distance=0.0)
    else:
        expected = frames_along.compression_above_tie(
            line_load=WEIGHT, **PAIR, height_fraction=0.0, distance_from_ridge=12 * ft
        )
    assert heel == pytest.approx(expected, rel=1e-8)
    ridge = -solved.axial(bars[-1], 1.0)
    expected = frames_along.compression_above_tie(
        line_load=WEIGHT, **PAIR, height_fraction=height, distance_from_ridge=0.0
    )
    assert ridge == pytest.approx(expected, rel=1e-8)


def test_slip_and_stretch_of_the_tie_open_the_eaves_as_the_closed_form_says():
    slip, stretchy = 4000.0, 3e6
    for height in (0.0, 0.25):
        frame = rafter_pair(
            **PAIR,
            left_load=WEIGHT,
            right_load=WEIGHT,
            height_fraction=height,
            **STIFF,
            tie_axial_stiffness=stretchy,
            tie_slip_stiffness=slip,
        )
        pull = frames.tie_force(line_load=WEIGHT, **PAIR, height_fraction=height)
        expected = frames_spread.spread_by_tie(
            line_load=WEIGHT, **PAIR, height_fraction=height, axial_stiffness=stretchy, joint_slip=pull / slip
        )
        expected += frames_spread.spread_by_bending(
            line_load=WEIGHT, **PAIR, height_fraction=height, bending_stiffness=STIFF["bending_stiffness"]
        )
        solved = solve_frame(frame)
        assert solved.move("right")[0] - solved.move("left")[0] == pytest.approx(expected, rel=1e-5)


def test_stiff_peak_carries_w_L2_over_8_and_spreads_as_the_closed_form_says():
    solved = solve_frame(rafter_pair(**PAIR, left_load=WEIGHT, right_load=WEIGHT, held_by="stiff peak", **STIFF))
    moment = frames_spread.stiff_peak_moment(line_load=WEIGHT, building_span=PAIR["building_span"])
    assert solved.moment("left rafter 1", 1.0) == pytest.approx(moment, rel=1e-8)
    spread = frames_spread.stiff_peak_spread(line_load=WEIGHT, **PAIR, bending_stiffness=STIFF["bending_stiffness"])
    assert solved.move("right")[0] - solved.move("left")[0] == pytest.approx(spread, rel=1e-5)


def test_ridge_beam_takes_half_and_nothing_pushes():
    solved = solve_frame(rafter_pair(**PAIR, left_load=WEIGHT, right_load=WEIGHT, held_by="ridge beam", **STIFF))
    half = frames.ridge_beam_load(line_load=WEIGHT, building_span=PAIR["building_span"])
    assert solved.reactions["ridge"].up == pytest.approx(half, rel=1e-8)
    assert solved.reactions["left"].up == pytest.approx(half / 2, rel=1e-8)
    assert abs(solved.reactions["ridge"].right) < 1e-6 * half


def test_walls_that_hold_take_the_thrust():
    solved = solve_frame(rafter_pair(**PAIR, left_load=WEIGHT, right_load=WEIGHT, held_by="walls", **STIFF))
    thrust = frames.rafter_thrust(line_load=WEIGHT, **PAIR)
    assert solved.reactions["left"].right == pytest.approx(thrust, rel=1e-8)
    assert solved.reactions["right"].right == pytest.approx(-thrust, rel=1e-8)


def test_one_side_loaded_equals_the_closed_forms():
    solved = solve_frame(rafter_pair(**PAIR, left_load=WEIGHT, right_load=0.0, height_fraction=0.25, **STIFF))
    asked = dict(left_load=WEIGHT, right_load=0.0, building_span=PAIR["building_span"])
    pull = frames_uneven.uneven_tie_force(**asked, rise=PAIR["rise"], height_fraction=0.25)
    assert solved.axial("tie", 0.5) == pytest.approx(pull, rel=1e-8)
    left = frames_uneven.uneven_eave_reaction(near_load=WEIGHT, far_load=0.0, building_span=PAIR["building_span"])
    assert solved.reactions["left"].up == pytest.approx(left, rel=1e-8)
    right = frames_uneven.uneven_eave_reaction(near_load=0.0, far_load=WEIGHT, building_span=PAIR["building_span"])
    moment = right * 0.25 * PAIR["building_span"] / 2
    assert abs(solved.moment("right rafter 1", 1.0)) == pytest.approx(moment, rel=1e-8)


def test_a_collar_tie_above_a_tie_at_the_eave_is_pressed_not_pulled():
    """Under weight a collar between sagging rafters is in compression: it ties nothing."""
    frame = rafter_pair(
        **PAIR,
        left_load=WEIGHT,
        right_load=WEIGHT,
        collar_fraction=2 / 3,
        axial_stiffness=1.6e6 * psi * 10.9 * inch**2,
        bending_stiffness=STIFF["bending_stiffness"],
    )
    solved = solve_frame(frame)
    assert solved.axial("collar", 0.5) < 0
    assert solved.axial("tie", 0.5) > frames.rafter_thrust(line_load=WEIGHT, **PAIR)


def test_nothing_that_holds_is_refused_even_where_the_load_would_balance():
    with pytest.raises(BadInput, match="mechanism: joint 'right' can move sideways"):
        solve_frame(rafter_pair(**PAIR, left_load=WEIGHT, right_load=WEIGHT, held_by="nothing", **STIFF))


def _bar(start, end, **more):
    return Bar(start, end, axial_stiffness=1e8, bending_stiffness=1e12, **more)


@pytest.mark.parametrize(
    ("joints", "bars", "word"),
    [
        ({"a": Joint(0, 0, "xy"), "b": Joint(1000, 0)}, {"ab": _bar("a", "b")}, "mechanism"),
        ({"a": Joint(0, 0), "b": Joint(1000, 0)}, {"ab": _bar("a", "b")}, "mechanism"),
        (
            {"a": Joint(0, 0, "xy"), "b": Joint(1000, 0), "c": Joint(2000, 0, "xy")},
            {"ab": _bar("a", "b", hinges="both"), "bc": _bar("b", "c", hinges="both")},
            "'b' can move up and down",
        ),
        ({"a": Joint(0, 0, "y"), "b": Joint(1000, 0, "y")}, {"ab": _bar("a", "b")}, "sideways"),
        (
            {"a": Joint(0, 0, "xy"), "b": Joint(1000, 0, "xy"), "lost": Joint(5, 5)},
            {"ab": _bar("a", "b")},
            "lost",
        ),
    ],
)
def test_mechanisms_are_refused_in_one_sentence(joints, bars, word):
    with pytest.raises(BadInput, match=word) as refused:
        solve_frame(PlaneFrame(joints, bars))
    assert "\n" not in str(refused.value) and "add a support" in str(refused.value)


def test_a_couple_on_a_joint_of_hinges_is_refused():
    frame = PlaneFrame(
        {"a": Joint(0, 0, "xy"), "b": Joint(1000, 0, "xy")},
        {"ab": _bar("a", "b", hinges="both")},
        [JointLoad("b", turn=5.0)],
    )
    with pytest.raises(BadInput, match="couple stands on joint 'b'"):
        solve_frame(frame)


def test_settled_values_of_common_beams():
    """A fixed beam, a cantilever and a propped cantilever: w L2/12, w L4/8EI, 3/8 and 5/8 of the load."""
    load, length, stiffness = 3.0, 4000.0, 1e12
    fixed = PlaneFrame({"a": Joint(0, 0, "xyt"), "b": Joint(length, 0, "xyt")}, {"ab": _bar("a", "b", plan_load=load)})
    assert solve_frame(fixed).moment("ab", 0.0) == pytest.approx(-load * length**2 / 12, rel=1e-12)
    assert solve_frame(fixed).moment("ab", 0.5) == pytest.approx(load * length**2 / 24, rel=1e-12)
    free = PlaneFrame({"a": Joint(0, 0, "xyt"), "b": Joint(length, 0)}, {"ab": _bar("a", "b", plan_load=load)})
    assert solve_frame(free).move("b")[1] == pytest.approx(-load * length**4 / 8 / stiffness, rel=1e-10)
    propped = PlaneFrame({"a": Joint(0, 0, "xyt"), "b": Joint(length, 0, "y")}, {"ab": _bar("a", "b", plan_load=load)})
    solved = solve_frame(propped)
    assert solved.reactions["a"].up == pytest.approx(5 / 8 * load * length, rel=1e-12)
    assert solved.reactions["a"].turn == pytest.approx(load * length**2 / 8, rel=1e-12)
    middle = solve_frame(
        PlaneFrame({"a": Joint(0, 0, "xy"), "b": Joint(length, 0, "y")}, {"ab": _bar("a", "b", plan_load=load)})
    ).shape("ab", 0.5)
    assert middle[1] == pytest.approx(-5 * load * length**4 / 384 / stiffness, rel=1e-10)


def test_springs_and_hanging_bars_give_as_hand_arithmetic_says():
    hung = PlaneFrame(
        {"top": Joint(0, 0, "xyt"), "low": Joint(0, -2000, "")},
        {"rod": _bar("top", "low", along_load=0.5, slip_start=1000.0)},
        [JointLoad("low", down=300.0)],
    )
    stretch = 300 * 2000 / 1e8 + 0.5 * 2000**2 / 2 / 1e8 + (300 + 0.5 * 2000) / 1000
    assert solve_frame(hung).move("low")[1] == pytest.approx(-stretch, rel=1e-12)
    assert solve_frame(hung).shape("rod", 1.0)[1] == pytest.approx(-stretch, rel=1e-12)
    sprung = PlaneFrame(
        {"a": Joint(0, 0, "xy"), "b": Joint(4000, 0, "", spring_y=250.0)},
        {"ab": _bar("a", "b", plan_load=3.0)},
    )
    solved = solve_frame(sprung)
    assert solved.reactions["b"].up == pytest.approx(6000.0, rel=1e-12)
    assert solved.move("b")[1] == pytest.approx(-24.0, rel=1e-12)


def test_free_bodies_find_a_force_that_was_tampered_with():
    solved = solve_frame(rafter_pair(**PAIR, left_load=WEIGHT, right_load=WEIGHT, **STIFF))
    solved.end_forces["tie"] = (solved.end_forces["tie"][0] * 1.01, *solved.end_forces["tie"][1:])
    assert max(abs(body.right) for body in free_bodies(solved)) > 1.0


BAD = [
    (frames.rafter_thrust, dict(line_load=1.0, building_span=24.0, rise=6.0)),
    (frames.tie_force, dict(line_load=1.0, building_span=24.0, rise=6.0, height_fraction=0.2)),
    (frames.raised_tie_factor, dict(height_fraction=0.2)),
    (frames.raised_tie_bending_factor, dict(height_fraction=0.2)),
    (frames.raised_tie_greatest_factor, dict(height_fraction=0.2)),
    (frames.ridge_beam_load, dict(line_load=1.0, building_span=24.0)),
    (frames.ridge_post_load, dict(ridge_load=1.0, spans=24.0)),
    (frames_along.moment_below_tie, dict(line_load=1.0, building_span=24.0, distance=3.0)),
    (frames_uneven.uneven_tie_force, dict(left_load=1.0, right_load=2.0, building_span=24.0, rise=6.0)),
    (frames_uneven.ridge_shear, dict(left_load=1.0, right_load=2.0, building_span=24.0)),
    (
        frames_spread.spread_by_bending,
        dict(line_load=1.0, building_span=24.0, rise=6.0, height_fraction=0.2, bending_stiffness=1e9),
    ),
    (frames_spread.stiff_peak_moment, dict(line_load=1.0, building_span=24.0)),
]


@pytest.mark.parametrize("bad", [float("nan"), float("inf"), -1.0, "24 ft", None, [24.0], numpy.array([])])
@pytest.mark.parametrize(("function", "good"), BAD)
def test_bad_numbers_are_refused_in_one_sentence(function, good, bad):
    function(**good)
    for name in good:
        with pytest.raises(BadInput) as refused:
            function(**{**good, name: bad})
        assert "\n" not in str(refused.value)


def test_a_tie_at_the_ridge_a_wrong_word_and_a_bar_without_length_are_refused():
    with pytest.raises(BadInput, match="height fraction"):
        frames.tie_force(line_load=1.0, building_span=24.0, rise=6.0, height_fraction=1.0)
    with pytest.raises(BadInput, match="did you mean 'tie'"):
        rafter_pair(**PAIR, left_load=1.0, right_load=1.0, held_by="ties", **STIFF)
    with pytest.raises(BadInput, match="'ab' has no length"):
        PlaneFrame({"a": Joint(0, 0), "b": Joint(0, 0)}, {"ab": _bar("a", "b")})
    with pytest.raises(BadInput, match="did you mean 'a1'"):
        PlaneFrame({"a1": Joint(0, 0), "b": Joint(0, 1)}, {"ab": _bar("a2", "b")})
    with pytest.raises(BadInput, match="letters x, y and t"):
        Joint(0, 0, "pin")
    with pytest.raises(BadInput, match="plan distance"):
        frames_along.moment_below_tie(line_load=1.0, building_span=24.0, distance=13.0)


def test_arrays_answer_as_one_by_one():
    spans = numpy.array([20.0, 24.0, 30.0]) * ft
    found = frames.rafter_thrust(line_load=50 * plf, building_span=spans, rise=6 * ft) / lb
    one_by_one = [50 * feet**2 / 48 for feet in (20, 24, 30)]
    assert found == pytest.approx(one_by_one, rel=1e-12)
