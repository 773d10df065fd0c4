"""Properties of rafter pairs over measures nobody would write down: every free body balances."""

import pytest
from frames_by_hand import free_bodies
from hypothesis import given, settings
from hypothesis import strategies as st

from structlib.mechanics import frames, frames_spread, frames_uneven
from structlib.mechanics.plane_frame import solve_frame
from structlib.mechanics.rafter_pair import rafter_pair

SPANS, RISES = st.floats(2000.0, 16000.0), st.floats(400.0, 9000.0)
LOADS, HEIGHTS = st.floats(0.0, 8.0), st.one_of(st.just(0.0), st.floats(0.002, 0.9))
HOLDS = st.sampled_from(["tie", "ridge beam", "stiff peak", "walls"])
SLIPS = st.sampled_from([float("inf"), 20000.0, 1000.0, 50.0])
STIFF = dict(axial_stiffness=8e7, bending_stiffness=3e11)


@settings(max_examples=60)
@given(
    span=SPANS,
    rise=RISES,
    left=LOADS,
    right=LOADS,
    height=HEIGHTS,
    held_by=HOLDS,
    slip=SLIPS,
    collar=st.booleans(),
)
def test_every_free_body_balances(span, rise, left, right, height, held_by, slip, collar):
    solved = solve_frame(
        rafter_pair(
            building_span=span,
            rise=rise,
            left_load=left,
            right_load=right,
            held_by=held_by,
            height_fraction=height,
            tie_slip_stiffness=slip,
            collar_fraction=0.95 if collar else None,
            **STIFF,
        )
    )
    force = (left + right) * span * (1 + span / rise) / (1 - height) + 1.0
    for body in free_bodies(solved):
        assert abs(body.right) < 1e-7 * force and abs(body.up) < 1e-7 * force, body
        assert abs(body.turn) < 1e-7 * force * max(span, rise), body


@settings(max_examples=40)
@given(span=SPANS, rise=RISES, left=LOADS, right=LOADS, height=HEIGHTS)
def test_tie_force_ridge_shear_and_thrust_agree_with_the_solver(span, rise, left, right, height):
    solved = solve_frame(
        rafter_pair(building_span=span, rise=rise, left_load=left, right_load=right, height_fraction=height, **STIFF)
    )
    pull = frames_uneven.uneven_tie_force(
        left_load=left, right_load=right, building_span=span, rise=rise, height_fraction=height
    )
    scale = (left + right) * span * (1 + span / rise) / (1 - height) + 1.0
    assert solved.axial("tie", 0.5) == pytest.approx(pull, rel=1e-7, abs=1e-7 * scale)
    even = frames.tie_force(line_load=(left + right) / 2, building_span=span, rise=rise, height_fraction=height)
    assert pull == pytest.approx(even, rel=1e-12, abs=1e-12)


@settings(max_examples=40)
@given(span=SPANS, rise=RISES, load=st.floats(0.1, 8.0), low=HEIGHTS, more=st.floats(0.001, 0.05))
def test_a_higher_tie_costs_more_of_everything(span, rise, load, low, more):
    pair = dict(line_load=load, building_span=span, rise=rise)
    asked = [
        (
            frames.tie_force(**pair, height_fraction=height),
            frames.raised_tie_greatest_factor(height_fraction=height),
            frames_spread.spread_by_bending(**pair, height_fraction=height, bending_stiffness=3e11),
        )
        for height in (low, low + more)
    ]
    assert all(high > lower for lower, high in zip(*asked, strict=True))


@settings(max_examples=40)
@given(span=SPANS, rise=RISES, load=st.floats(0.1, 8.0), times=st.floats(1.1, 5.0))
def test_steeper_pushes_less_and_twice_the_load_pushes_twice(span, rise, load, times):
    push = frames.rafter_thrust(line_load=load, building_span=span, rise=rise)
    steeper = frames.rafter_thrust(line_load=load, building_span=span, rise=times * rise)
    heavier = frames.rafter_thrust(line_load=times * load, building_span=span, rise=rise)
    assert steeper == pytest.approx(push / times, rel=1e-12) and heavier == pytest.approx(push * times, rel=1e-12)
