"""A jack's force against its lift: formulas, kinks found by bisection, equilibrium, scaling, refusals."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from structlib.ground.refusals import BadInput
from structlib.ground.units import ft, inch, lb, plf, psi
from structlib.mechanics import formulas, jacking
from structlib.mechanics.beams import Beam, LineLoad, PointLoad, Support, solve

BEAM = dict(line_load=3.0, span=4000.0, bending_stiffness=1e12)


def one_span(load=3.0, span=4000.0, stiffness=1e12):
    return Beam(span, stiffness, [Support(0.0), Support(span)], [LineLoad(0.0, span, load)])


def two_spans(load=5.0, span=4000.0, stiffness=1e12):
    supports = [Support(0.0), Support(span), Support(2 * span)]
    return Beam(2 * span, stiffness, supports, [LineLoad(0.0, 2 * span, load)])


def test_a_jack_that_lifts_the_middle_level_carries_five_eighths():
    springs = formulas.simple_uniform_deflection(**BEAM)
    force = jacking.midspan_jack_force(lift=springs, span=4000.0, bending_stiffness=1e12)
    assert force == pytest.approx(5 / 8 * 3.0 * 4000.0, rel=1e-12)
    assert jacking.midspan_jack_moment(lift=springs, **BEAM) == pytest.approx(-3.0 * 4000.0**2 / 32, rel=1e-12)


def test_the_ends_let_go_at_eight_fifths_of_the_springing_sag():
    off = jacking.midspan_lift_off(**BEAM)
    assert off / formulas.simple_uniform_deflection(**BEAM) == pytest.approx(8 / 5, rel=1e-12)
    # there the beam is two cantilevers that meet on the jack
    moment = jacking.midspan_jack_moment(lift=off, **BEAM)
    assert moment == pytest.approx(-3.0 * 2000.0**2 / 2, rel=1e-12)


def test_a_beam_worked_by_hand_in_pounds_and_inches():
    # three 2x10: I = 3 x 1.5 x 9.25^3 / 12 = 296.79 in4; 300 plf over 14 ft; E = 1,600,000 psi
    inertia = 3 * 1.5 * 9.25**3 / 12
    stiffness = 1.6e6 * psi * inertia * inch**4
    off = jacking.midspan_lift_off(line_load=300 * plf, span=14 * ft, bending_stiffness=stiffness)
    assert off / inch == pytest.approx(25 * 168**4 / (48 * 1.6e6 * inertia), rel=1e-9)
    moment = jacking.midspan_jack_moment(lift=off, line_load=300 * plf, span=14 * ft, bending_stiffness=stiffness)
    assert moment / (lb * ft) == pytest.approx(-300 * 14**2 / 8, rel=1e-9)


def test_the_curve_of_one_span_is_the_formula():
    curve = jacking.jack_curve(one_span(), jack_position=2000.0, most_lift=50.0)
    off = jacking.midspan_lift_off(**BEAM)
    assert curve.hangs and [step.lift for step in curve.steps] == pytest.approx([0.0, off])
    assert curve.steps[-1].lifted == (0, 1) and curve.force(40.0) == pytest.approx(12000.0)
    for lift in (0.0, 3.0, 9.0, 15.0):
        formula = jacking.midspan_jack_force(lift=lift, span=4000.0, bending_stiffness=1e12)
        assert curve.force(lift) == pytest.approx(formula, abs=1e-6)
    assert curve.lift_off(0) == curve.lift_off(1) == pytest.approx(off)


def test_off_the_middle_the_nearer_end_lets_go_and_then_nothing_more_is_needed():
    curve = jacking.jack_curve(one_span(), jack_position=2500.0, most_lift=100.0)
    # about the left end: W L / 2 = F a once the right end is off
    assert curve.steps[-1].force == pytest.approx(12000.0 * 2000.0 / 2500.0, rel=1e-9)
    assert curve.lift_off(1) < 100.0 and curve.lift_off(0) is None and not curve.hangs
    assert curve.force(100.0) == pytest.approx(curve.force(curve.lift_off(1)), rel=1e-9)


@settings(max_examples=40, deadline=None)
@given(
    place=st.floats(0.05, 0.95),
    load=st.floats(0.5, 20.0),
    post=st.floats(0.3, 0.7),
    point=st.floats(0.0, 2e4),
)
def test_the_curve_is_what_the_solver_says_at_every_lift(place, load, post, point):
    supports = [Support(0.0), Support(post * 8000.0), Support(8000.0)]
    jack = place * 8000.0
    if min(abs(jack - support.position) for support in supports) < 50.0:
        return
    beam = Beam(8000.0, 2e12, supports, [LineLoad(0.0, 8000.0, load), PointLoad(2600.0, point)])
    curve = jacking.jack_curve(beam, jack_position=jack, most_lift=60.0)
    whole = load * 8000.0 + point
    before = 0.0
    for lift in (0.0, 0.4, 1.7, 6.0, 21.0, 59.0):
        if curve.hangs and lift >= curve.steps[-1].lift:
            assert curve.force(lift) == pytest.approx(whole, rel=1e-9)
            continue
        reactions = jacking.jacked(beam, jack_position=jack, lift=lift).reactions
        force = curve.force(lift)
        assert force == pytest.approx(reactions[-1].force, rel=1e-6, abs=1e-6 * whole)
        pushes = [curve.reaction(i, lift) for i in range(3)]
        assert pushes == pytest.approx([r.force for r in reactions[:-1]], rel=1e-6, abs=1e-6 * whole)
        assert sum(pushes) + force == pytest.approx(whole, rel=1e-8)
        assert force >= before - 1e-6 * whole, "more lift never asks less force"
        assert min(pushes) >= -1e-8 * whole, "nothing pulls"
        before = force


@pytest.mark.parametrize("jack", [3300.0, 4400.0, 5200.0])
def test_the_lift_at_which_the_old_post_lets_go_is_what_bisection_finds(jack):
    beam = two_spans()
    found = jacking.jack_curve(beam, jack_position=jack, most_lift=80.0).lift_off(1)
    low, high = 0.0, 80.0
    for _ in range(60):
        middle = (low + high) / 2
        resting = jacking.jacked(beam, jack_position=jack, lift=middle).reactions[1].force > 0
        low, high = (middle, high) if resting else (low, middle)
    assert found == pytest.approx(low, rel=1e-6)


def test_a_sunken_post_that_carries_nothing_is_off_from_the_start():
    supports = [Support(0.0), Support(4000.0, settlement=60.0), Support(8000.0)]
    beam = Beam(8000.0, 1e13, supports, [LineLoad(0.0, 8000.0, 2.0)])
    curve = jacking.jack_curve(beam, jack_position=4500.0, most_lift=5.0)
    assert curve.steps[0].lifted == (1,) and curve.steps[0].reactions[1] == 0.0
    assert curve.lift_off(1) == 0.0


def test_scaling_twice_the_span_asks_an_eighth_for_the_same_lift():
    # moment grows with L^2 and sag with L^4 under the same load per foot; force for one lift falls with L^3
    short, long = dict(BEAM), dict(BEAM, span=8000.0)
    ratio = formulas.simple_uniform_deflection(**long) / formulas.simple_uniform_deflection(**short)
    assert ratio == pytest.approx(16.0) and jacking.midspan_lift_off(**long) / jacking.midspan_lift_off(
        **short
    ) == pytest.approx(16.0)
    force = [jacking.midspan_jack_force(lift=1.0, span=span, bending_stiffness=1e12) for span in (4000.0, 8000.0)]
    assert force[1] / force[0] == pytest.approx(1 / 8)


def test_scaling_a_full_2x8_asks_more_than_a_full_4x6():
    # b d^3: 2 x 8^3 = 1024 against 4 x 6^3 = 864
    force = [
        jacking.midspan_jack_force(lift=1.0, span=4000.0, bending_stiffness=1e4 * b * d**3 / 12)
        for b, d in ((2.0, 8.0), (4.0, 6.0))
    ]
    assert force[0] / force[1] == pytest.approx(1024 / 864, rel=1e-12)


def test_what_crept_is_what_does_not_spring():
    assert jacking.crept_part(measured_sag=38.0, springing_sag=14.0) == 24.0
    assert jacking.crept_part(measured_sag=5.0, springing_sag=14.0) == 0.0


@pytest.mark.parametrize(
    ("change", "message"),
    [
        ({"jack_position": 0.0}, "stands on a support"),
        ({"jack_position": 9000.0}, "place of the jack"),
        ({"jack_position": "mid"}, "not a number"),
        ({"most_lift": 0.0}, "most lift"),
        ({"most_lift": float("nan")}, "nan"),
    ],
)
def test_what_makes_no_sense_is_refused(change, message):
    with pytest.raises(BadInput, match=message):
        jacking.jack_curve(one_span(), **{"jack_position": 2000.0, "most_lift": 50.0, **change})


def test_only_a_beam_that_can_rise_is_jacked():
    built_in = Beam(4000.0, 1e12, [Support(0.0, kind="fixed"), Support(4000.0)], [LineLoad(0.0, 4000.0, 3.0)])
    with pytest.raises(BadInput, match="built in"):
        jacking.jack_curve(built_in, jack_position=2000.0, most_lift=50.0)
    with pytest.raises(BadInput, match="takes a Beam"):
        jacking.jack_curve("beam", jack_position=2000.0, most_lift=50.0)
    with pytest.raises(BadInput, match="lift"):
        jacking.midspan_jack_force(lift=-1.0, span=4000.0, bending_stiffness=1e12)
    curve = jacking.jack_curve(two_spans(), jack_position=4400.0, most_lift=20.0)
    with pytest.raises(BadInput, match="curve ends"):
        curve.force(30.0)


def test_the_state_today_is_that_of_the_member_without_a_jack():
    beam = two_spans()
    first = jacking.jack_curve(beam, jack_position=4400.0, most_lift=20.0).steps[0]
    assert first.force == pytest.approx(0.0, abs=1e-6)
    assert first.reactions == pytest.approx([reaction.force for reaction in solve(beam).reactions], rel=1e-9)
