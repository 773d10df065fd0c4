"""Overhangs, arrangements of live load, three spans, joints, tapered members: fixed cases and refusals."""

import math
from fractions import Fraction

import numpy
import pytest

from structlib.ground.refusals import BadInput, OutsideRule
from structlib.ground.units import ft, inch, lb
from structlib.mechanics import continuous, overhang, tapered
from structlib.mechanics.beams import Beam, LineLoad, PointLoad, Support, solve
from structlib.mechanics.patterns import (
    arrangements,
    solve_arrangements,
    span_loads,
    stretches,
)
from structlib.mechanics.splices import plies_at, zero_moment_places
from structlib.rules.us.uplift import hold_down_demand


def _spans(count, span=1000.0):
    return tuple(Support(number * span) for number in range(count + 1))


# ---- overhang ----


def test_a_tip_load_of_a_joist_by_hand():
    given = dict(point_load=800 * lb, span=12 * ft, overhang=2 * ft)
    # turning about the near support: R * 12 = 800 * 2
    assert -overhang.overhang_tip_back_reaction(**given) / lb == pytest.approx(float(Fraction(800 * 2, 12)))
    assert overhang.overhang_tip_near_reaction(**given) / lb == pytest.approx(float(800 + Fraction(800 * 2, 12)))
    assert -overhang.overhang_tip_moment(point_load=800 * lb, overhang=2 * ft) / (lb * ft) == pytest.approx(1600)


def test_formulas_of_an_overhang_take_arrays():
    lifts = overhang.overhang_tip_back_reaction(point_load=800.0, span=12.0, overhang=numpy.array([1.0, 2.0, 3.0]))
    assert lifts.tolist() == pytest.approx([-800 / 12, -1600 / 12, -200.0])


@pytest.mark.parametrize("bad", [float("nan"), float("inf"), 0.0, -1.0, "12 ft", None])
def test_a_span_that_makes_no_sense_is_refused(bad):
    for function in (overhang.overhang_tip_back_reaction, overhang.overhang_tip_near_reaction):
        with pytest.raises(BadInput, match="span"):
            function(point_load=1.0, span=bad, overhang=1.0)
    for function in (continuous.two_span_inflection_places, continuous.three_span_inflection_places):
        with pytest.raises(BadInput, match="span"):
            function(span=bad)


def test_hold_down_counts_six_tenths_of_what_helps_and_all_of_what_lifts():
    assert hold_down_demand(dead_push=1000.0, passing_push=-900.0) == pytest.approx(300.0)
    assert hold_down_demand(dead_push=1000.0, passing_push=-500.0) == 0.0
    assert hold_down_demand(dead_push=-200.0, passing_push=-500.0) == pytest.approx(700.0)
    assert hold_down_demand(dead_push=-200.0, passing_push=500.0) == pytest.approx(200.0)
    both = hold_down_demand(dead_push=numpy.array([1000.0, -200.0]), passing_push=numpy.array([-900.0, -500.0]))
    assert both.tolist() == pytest.approx([300.0, 700.0])


@pytest.mark.parametrize("bad", [float("nan"), "100 lb", None])
def test_a_push_that_is_no_number_is_refused(bad):
    with pytest.raises(BadInput, match="push"):
        hold_down_demand(dead_push=bad, passing_push=0.0)


# ---- three spans ----


@pytest.mark.parametrize("spans", [2, 3])
def test_the_solver_finds_the_places_of_no_moment(spans):
    supports = _spans(spans)
    found = zero_moment_places(solve(Beam(1000.0 * spans, 1e12, supports, (LineLoad(0.0, 1000.0 * spans, 2.0),))))
    place = {2: continuous.two_span_inflection_places, 3: continuous.three_span_inflection_places}[spans]
    assert found == pytest.approx(place(span=1000.0), abs=1e-6)


def test_a_simple_span_changes_nowhere():
    assert zero_moment_places(solve(Beam(1000.0, 1e12, _spans(1), (LineLoad(0.0, 1000.0, 2.0),)))) == ()
    assert zero_moment_places(solve(Beam(1000.0, 1e12, _spans(1)))) == ()


def test_zero_moment_places_of_an_overhang_with_a_tip_load():
    # w = 2 on the span, P = 100 at the tip: R = 1000 - 20, zero where 980 x = x^2
    beam = Beam(1200.0, 1e12, (Support(0.0), Support(1000.0)), (LineLoad(0.0, 1000.0, 2.0), PointLoad(1200.0, 100.0)))
    assert zero_moment_places(solve(beam)) == pytest.approx((980.0,), abs=1e-6)


# ---- arrangements ----


def test_stretches_are_spans_and_overhangs_on_both_sides():
    supports = (Support(500.0), Support(2000.0))
    assert stretches(supports, 2600.0) == ((0.0, 500.0), (500.0, 2000.0), (2000.0, 2600.0))


def test_every_arrangement_is_there_once():
    assert len(arrangements(4)) == 16 == len(set(arrangements(4)))
    assert arrangements(0) == ((),)
    for bad in (-1, 9, 2.0, True, "3", None):
        with pytest.raises(BadInput, match="whole number"):
            arrangements(bad)


def test_two_spans_by_known_coefficients():
    """Pattern load on two equal spans, no dead load: coefficients by the three-moment equation in fractions."""
    w, span = 1.0, 1000.0
    found = solve_arrangements(Beam(2 * span, 1e12, _spans(2)), span_loads(_spans(2), 2 * span, w))
    # one span loaded: 4 M = -w L^2 / 4
    moment = Fraction(-1, 16)
    near_end, far_end = Fraction(1, 2) + moment, moment
    assert found.least_reaction(0).value == pytest.approx(float(far_end) * span)
    assert found.least_reaction(0).on == (False, True)
    assert found.greatest_reaction(0).value == pytest.approx(float(near_end) * span)
    assert found.greatest_reaction(1).value == pytest.approx(1.25 * span)
    assert found.sagging.value == pytest.approx(float(near_end**2 / 2) * span**2)
    assert found.hogging.value == pytest.approx(-(span**2) / 8)
    assert found.hogging.on == (True, True)


def test_three_spans_worst_patterns_are_the_known_ones():
    span = 1000.0
    found = solve_arrangements(Beam(3 * span, 1e12, _spans(3)), span_loads(_spans(3), 3 * span, 1.0))
    # outer spans loaded: 5 M = -w L^2 / 4, so M = -1/20; the end pushes 9/20, and the moment is 81/800
    assert found.sagging.on == (True, False, True)
    assert found.sagging.value == pytest.approx(float(Fraction(81, 800)) * span**2)
    # two neighbours loaded: over the support between them -7/60
    assert found.hogging.value == pytest.approx(-float(Fraction(7, 60)) * span**2)
    assert sum(found.hogging.on) == 2
    # middle span loaded alone bends the outer supports down: end push is -1/20
    assert found.least_reaction(0).value == pytest.approx(-float(Fraction(1, 20)) * span)
    assert found.least_reaction(0).on == (False, True, False)


def test_dead_load_is_always_there():
    dead = LineLoad(0.0, 2000.0, 1.0)
    found = solve_arrangements(Beam(2000.0, 1e12, _spans(2), (dead,)), span_loads(_spans(2), 2000.0, 1.0))
    assert found.least_reaction(0).value == pytest.approx(1000 * (0.375 - 1 / 16))
    assert found.case((False, False)).reactions[1].force == pytest.approx(1250.0)


def test_a_support_that_cannot_pull_is_left():
    supports = (Support(0.0, can_lift=True), Support(1000.0), Support(2000.0))
    found = solve_arrangements(Beam(2000.0, 1e12, supports), span_loads(supports, 2000.0, 1.0))
    lifted = found.case((False, True)).reactions[0]
    assert lifted.lifted and lifted.force == 0.0


def test_supports_count_from_the_left_however_they_are_listed():
    supports = (Support(1000.0), Support(0.0), Support(2000.0))
    found = solve_arrangements(Beam(2000.0, 1e12, supports), span_loads(supports, 2000.0, 1.0))
    assert found.greatest_reaction(1).position == 1000.0


def test_deflection_of_one_stretch_only():
    supports = (Support(0.0), Support(1000.0))
    loads = (PointLoad(1400.0, 500.0),)
    found = solve_arrangements(Beam(1400.0, 1e9, supports), (loads,))
    # behind: P a L^2 / (9 sqrt 3 EI), upward; tip: P a^2 (L + a) / (3 EI)
    behind, tip = found.deflection_between(0.0, 1000.0), found.deflection_between(1000.0, 1400.0)
    assert behind.value == pytest.approx(-500 * 400 * 1000**2 / (9 * math.sqrt(3) * 1e9))
    assert tip.value == pytest.approx(500 * 400**2 * 1400 / 3e9) and tip.position == 1400.0
    with pytest.raises(BadInput, match="no stretch"):
        found.deflection_between(100.0, 200.0)


def test_envelopes_hold_every_arrangement_between_them():
    found = solve_arrangements(Beam(3000.0, 1e12, _spans(3)), span_loads(_spans(3), 3000.0, 1.0))
    x = numpy.linspace(0.0, 3000.0, 61)
    least, most = found.moments(x)
    for _on, solution in found.cases:
        assert numpy.all(solution.moment(x) <= most + 1e-6) and numpy.all(solution.moment(x) >= least - 1e-6)
        assert solution.moment(x) == pytest.approx(solve(solution.beam).moment(x), abs=1e-3)


def test_an_arrangement_that_is_not_there_and_groups_that_are_none_are_refused():
    found = solve_arrangements(Beam(2000.0, 1e12, _spans(2)), span_loads(_spans(2), 2000.0, 1.0))
    with pytest.raises(BadInput, match="no arrangement"):
        found.case((True,))
    for bad in (None, 3, [LineLoad(0.0, 10.0, 1.0)], "all"):
        with pytest.raises(BadInput, match="groups"):
            solve_arrangements(Beam(2000.0, 1e12, _spans(2)), bad)


# ---- joints ----


def test_plies_are_counted_out_at_their_joints_only():
    splices = ((3600.0,), (3600.0, 1200.0), ())
    assert [plies_at(x, splices) for x in (3600.0, 1200.0, 2400.0)] == [1, 2, 3]
    assert plies_at(3500.0, splices, near=150.0) == 1


def test_two_joints_near_each_other_count_out_together_between_them():
    splices = ((1000.0,), (1200.0,))
    assert plies_at(1000.0, splices) == plies_at(1200.0, splices) == 1
    assert plies_at(1100.0, splices, near=100.0) == 0


@pytest.mark.parametrize("bad", [(), None, ("a",), ((float("nan"),),), (3600.0,), (("x",),), ((-5.0,),)])
def test_joints_that_make_no_sense_are_refused(bad):
    with pytest.raises(BadInput):
        plies_at(100.0, bad)


# ---- tapered ----


def test_a_taper_of_nothing_is_an_even_beam():
    member = tapered.TaperedMember(3600.0, 76.0, 235.0, 235.0, 11_000.0)
    ei = 11_000 * 76 * 235**3 / 12
    found = tapered.tapered_simple(member, line_load=5.0)
    assert found.deflection == pytest.approx(5 * 5 * 3600**4 / (384 * ei), rel=1e-9)
    assert found.deflection_place == pytest.approx(1800.0, abs=1e-3) and found.stress_place == 1800.0


def test_the_worst_place_is_not_that_of_the_greatest_moment():
    member = tapered.TaperedMember(3600.0, 76.0, 120.0, 240.0, 11_000.0)
    found = tapered.tapered_simple(member, line_load=5.0)
    assert found.moment_place == 1800.0 and found.stress_place == pytest.approx(1200.0)
    x = numpy.linspace(0, 3600, 20001)
    stress = 5 * x * (3600 - x) / 2 / (76 * (120 + x / 30) ** 2 / 6)
    assert found.stress == pytest.approx(stress.max(), rel=1e-7)


@pytest.mark.parametrize("sizes", [(0.0, 200.0), (-5.0, 200.0), (200.0, float("nan")), (200.0, "9 in"), (200.0, None)])
def test_a_depth_of_nothing_is_refused(sizes):
    with pytest.raises(BadInput, match="depth"):
        tapered.TaperedMember(3600.0, 38.0, *sizes, 10_000.0)


def test_a_taper_that_is_too_strong_is_refused():
    with pytest.raises(OutsideRule, match="too strong"):
        tapered.TaperedMember(600.0, 38.0, 100.0, 300.0, 10_000.0)
    with pytest.raises(OutsideRule, match="too strong"):
        tapered.TaperedMember(12_000.0, 38.0, 50.0, 600.0, 10_000.0)


def test_loads_on_a_tapered_member_must_make_sense():
    member = tapered.TaperedMember(3600.0, 38.0, 140.0, 235.0, 10_000.0)
    for loads in (
        {},
        {"line_load": -1.0},
        {"point_load": 5.0},
        {"point_load": 5.0, "load_position": 4000.0},
        {"line_load": float("nan")},
    ):
        with pytest.raises(BadInput):
            tapered.tapered_simple(member, **loads)
    with pytest.raises(BadInput, match="TaperedMember"):
        tapered.tapered_simple("beam", line_load=1.0)


def test_a_step_is_stressed_more_than_the_middle_when_the_ply_stops_too_soon():
    # two plies at a quarter of the span: 3/4 of the moment on 2/3 of the section, 9/8 of the even beam's stress
    span, one = 4000.0, 38 * 235**2 / 6
    beam = Beam(
        span,
        ((1000.0, 2e12), (3000.0, 3e12), (4000.0, 2e12)),
        (Support(0.0), Support(span)),
        (LineLoad(0.0, span, 3.0),),
    )
    solution = solve(beam)
    ratio = (solution.moment(1000.0) / (2 * one)) / (solution.moment(2000.0) / (3 * one))
    assert ratio == pytest.approx(float(Fraction(9, 8)))


def test_nothing_here_depends_on_inches():
    assert tapered.tapered_uniform_stress_place(span=12 * ft, start_depth=6 * inch, end_depth=12 * inch) == (
        pytest.approx(4 * ft)
    )
