"""What temporary walls are asked to carry: worked values, the house with its wall out beside the formula, refusals."""

from dataclasses import replace
from fractions import Fraction

import numpy as np
import pytest
import sympy
from hypothesis import given, settings
from hypothesis import strategies as st
from small_houses import joist_out

from structlib.ground.refusals import BadInput
from structlib.ground.units import ft
from structlib.mechanics import shoring
from structlib.mechanics.beams import LineLoad

lengths = st.floats(2000.0, 7000.0)
shares = st.floats(0.05, 0.9)
line_loads = st.floats(0.1, 20.0)
tip_loads = st.floats(0.0, 30_000.0)
offsets = st.floats(160.0, 1500.0)  # a temporary wall stands at most 5 ft away


def test_the_worked_case_of_a_wall_with_joists_on_both_sides():
    # 12 ft joists at 50 psf, 2 ft away: 50 x 12 x 6 / 10 = 360 plf
    case = dict(line_load=50.0, span=12.0, tip_load=0.0)
    assert shoring.wall_share(**case) == 300.0
    assert shoring.temporary_wall_reaction(**case, offset=2.0) == pytest.approx(360.0, rel=1e-12)


def test_exact_fractions_go_round_the_far_wall():
    w, span, offset, tip = Fraction(7, 2), Fraction(31, 3), Fraction(9, 4), Fraction(55, 7)
    push = (w * span * span / 2 + tip * span) / (span - offset)
    found = shoring.temporary_wall_reaction(
        line_load=float(w), span=float(span), offset=float(offset), tip_load=float(tip)
    )
    assert found == pytest.approx(float(push), rel=1e-14)


@settings(max_examples=50, deadline=None)
@given(way=st.sampled_from(("cut", "outside")), span=lengths, offset=offsets, load=line_loads, tip=tip_loads)
def test_cut_joists_by_formula_and_by_the_house(way, span, offset, load, tip):
    given_ = dict(line_load=load, span=span, offset=offset, tip_load=tip)
    out = joist_out(way=way, span=span, offset=offset, lasting=load, end_load=tip)
    far, push = out.full
    size = load * span + tip + push
    assert shoring.temporary_wall_reaction(**given_) == pytest.approx(push, rel=1e-9)
    assert shoring.far_wall_reaction(**given_) == pytest.approx(far, abs=1e-9 * size)
    over = -load * offset**2 / 2 - tip * offset
    assert over == pytest.approx(out.joist.full.moment(span - offset), rel=1e-8)
    sides = 2 if way == "cut" else 1
    assert out.wall == pytest.approx(sides * shoring.wall_share(line_load=load, span=span, tip_load=tip), rel=1e-9)


@settings(max_examples=50, deadline=None)
@given(span=lengths, share=shares, load=line_loads, tip=tip_loads)
def test_up_and_down_balance_and_the_lever_never_helps(span, share, load, tip):
    case = dict(line_load=load, span=span, offset=share * span, tip_load=tip)
    push, far = shoring.temporary_wall_reaction(**case), shoring.far_wall_reaction(**case)
    assert push + far == pytest.approx(load * span + tip, rel=1e-12)
    share_before = shoring.wall_share(line_load=load, span=span, tip_load=tip)
    assert push > share_before
    assert push / share_before == pytest.approx(1 / (1 - share), rel=1e-9)


@settings(max_examples=50, deadline=None)
@given(span=lengths, share=st.floats(0.05, 0.45), load=line_loads)
def test_at_the_limit_the_far_wall_carries_nothing(span, share, load):
    case = dict(line_load=load, span=span, offset=share * span)
    limit = shoring.tip_load_that_lifts_the_far_end(**case)
    assert shoring.far_wall_reaction(**case, tip_load=limit) == pytest.approx(0.0, abs=1e-9 * (limit + load * span))
    assert (
        shoring.far_wall_reaction(**case, tip_load=1.01 * limit)
        < 0
        < shoring.far_wall_reaction(**case, tip_load=0.99 * limit)
    )


def test_a_temporary_wall_where_the_wall_was_carries_what_the_wall_carried():
    case = dict(line_load=3.0, span=4000.0, offset=0.0)
    assert shoring.temporary_wall_reaction(**case, tip_load=500.0) == 6500.0


def test_the_three_moments_of_the_continuous_case_come_out_of_the_slopes():
    # the slopes from both sides over a temporary wall, by integration with sympy, must meet
    w, a, b, P, M = sympy.symbols("w a b P M")
    outer = w * a**3 / 24 + M * a / 3  # slope of a simple span at its end, load and end moment, over EI
    inner = w * b**3 / 24 + P * b**2 / 16 + M * b / 2
    found = sympy.solve(sympy.Eq(outer, -inner), M)[0]
    numbers = {w: 2.5, a: 3100.0, b: 1400.0, P: 6000.0}
    out = joist_out(way="continuous", span=3800.0, offset=700.0, lasting=2.5, end_load=6000.0)
    assert out.joist.full.moment(3100.0) == pytest.approx(float(found.subs(numbers)), rel=1e-7)


def test_arrays_and_symbols_pass_through():
    offsets = np.array([300.0, 600.0, 900.0])
    many = shoring.temporary_wall_reaction(line_load=2.0, span=3600.0, offset=offsets, tip_load=100.0)
    one = [
        shoring.temporary_wall_reaction(line_load=2.0, span=3600.0, offset=offset, tip_load=100.0) for offset in offsets
    ]
    assert many == pytest.approx(one)
    w, L, a = sympy.symbols("w L a", positive=True)
    shown = shoring.temporary_wall_reaction(line_load=w, span=L, offset=a, tip_load=0)
    assert sympy.simplify(shown - w * L**2 / (2 * (L - a))) == 0


@pytest.mark.parametrize("position", [400.0, 1300.0, 2000.0])
def test_what_lands_below_against_a_sweep(position):
    floor = joist_out(way="outside", span=5000.0, offset=1000.0, lasting=0.4, passing=1.1).joist
    simple = replace(
        floor,
        beam=replace(floor.beam, length=4000.0, loads=(LineLoad(0.0, 4000.0, 0.4),)),
        passing=((LineLoad(0.0, 4000.0, 1.1),),),
    )
    landed = simple.landed(position - 5000.0, 5000.0 / simple.spacing)
    x = np.linspace(0, 4000.0, 40001)
    push = 5000.0 * (4000.0 - position) / 4000.0 + 0.4 * 2000.0
    moment = push * x - 0.4 * x**2 / 2 - 5000.0 * np.clip(x - position, 0, None)
    assert landed.moment == pytest.approx(moment.max(), rel=1e-6)
    assert landed.shear == pytest.approx(max(push, 5000.0 + 1600.0 - push), rel=1e-9)
    assert (landed.own_moment, landed.own_shear) == (pytest.approx(1.5 * 4000.0**2 / 8), pytest.approx(3000.0))
    assert landed.moment_share == landed.moment / landed.own_moment
    assert landed.shear_share == landed.shear / landed.own_shear


GOOD = dict(line_load=2.0, span=3600.0, offset=600.0, tip_load=0.0)


@pytest.mark.parametrize(
    ("change", "message"),
    [
        ({"offset": 3600.0}, "span less offset"),
        ({"offset": 4000.0}, "span less offset"),
        ({"offset": -1.0}, "offset"),
        ({"span": 0.0}, "span"),
        ({"span": float("nan")}, "nan"),
        ({"span": "12 ft"}, "not a number"),
        ({"line_load": -2.0}, "line_load"),
        ({"line_load": float("inf")}, "inf"),
        ({"tip_load": None}, "not a number"),
        ({"tip_load": -5.0}, "tip_load"),
    ],
)
def test_what_makes_no_sense_is_refused(change, message):
    with pytest.raises(BadInput, match=message):
        shoring.temporary_wall_reaction(**{**GOOD, **change})


def test_people_on_some_stretches_only_ask_more_of_joists_in_one_piece():
    """Three moments by hand for spans of 10, 4 and 10 ft, with 40 on one outer span only: 28 M + 4 N = 0 and
    4 M + 28 N = -40 x 1000 / 4, so N = -7 M."""
    inner = Fraction(40 * 1000, 4) / (7 * 28 - 4)  # moment over the temporary wall on the empty side
    outer = -7 * inner
    empty_side = -inner / 10 + (outer - inner) / 4
    loaded = Fraction(40 * 10, 2) - outer / 10 + (inner - outer) / 4
    # 10 everywhere: 32 M = -10 x (1000 + 64) / 4, and the far wall keeps 50 + M / 10
    everywhere = 10 * 12 - (50 - Fraction(10 * 1064, 4) / 32 / 10)
    middle = 4 * everywhere - loaded - empty_side  # 40 on the middle span alone
    found = joist_out(way="continuous", span=12 * ft, offset=2 * ft, lasting=10 / ft, passing=40 / ft)
    assert found.most[1:3] == [pytest.approx(float(everywhere + loaded + middle), rel=1e-9)] * 2
    assert found.least[1:3] == [pytest.approx(float(everywhere + empty_side), rel=1e-9)] * 2
    assert found.least[1] < 0 < found.least[0], "the joists rise off one temporary wall"
    full = joist_out(way="continuous", span=12 * ft, offset=2 * ft, lasting=50 / ft).full[1]
    assert found.most[1] > 1.25 * full


def test_people_on_the_lever_alone_lift_a_far_end_that_an_empty_floor_holds_down():
    # 12 ft joists, 5 ft past the temporary wall: 10 x 12 x 1 / 7 stays, 40 x 5 x 2.5 / 7 is taken away
    found = joist_out(way="outside", span=12 * ft, offset=5 * ft, lasting=10 / ft, passing=40 / ft)
    assert found.least[0] == pytest.approx((120 - 500) / 7)
    assert shoring.far_wall_reaction(line_load=10.0, span=12.0, offset=5.0, tip_load=0.0) > 0
    assert found.most[1] == pytest.approx(50 * 12 * 6 / 7)
    assert found.joist.envelope.hogging.value / ft == pytest.approx(-50 * 5 * 2.5)
