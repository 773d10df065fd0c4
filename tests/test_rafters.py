"""One rafter of a pair, and how the pair moves: against the frame solver, which knows neither, and by hand."""

import math
import random

import pytest
from frames_by_hand import three_hinged_reactions

from structlib.ground.refusals import BadInput
from structlib.mechanics import frames_uneven
from structlib.mechanics.plane_frame import solve_frame
from structlib.mechanics.rafter_pair import rafter_pair
from structlib.mechanics.rafters import pair_moves, solve_rafter

EA, EI, TIE = 7e7, 9e11, 3e7


def both(span, rise, left, right, height, held_by="tie"):
    """Both rafters of a pair with its ridge in the middle, from loads on plan; statics by the closed forms."""
    half = span / 2
    pull = 0.0
    if held_by == "tie":
        pull = frames_uneven.uneven_tie_force(
            left_load=left, right_load=right, building_span=span, rise=rise, height_fraction=height
        )
    found = []
    for near, far in ((left, right), (right, left)):
        lift = near * half / 2
        if held_by == "tie":
            lift = frames_uneven.uneven_eave_reaction(near_load=near, far_load=far, building_span=span)
        found.append(
            solve_rafter(run=half, rise=rise, loads=((0.0, half, near),), lift=lift, pull=pull, height_fraction=height)
        )
    return found


@pytest.mark.parametrize("seed", range(60))
def test_a_pair_is_that_of_the_frame_solver(seed):
    draw = random.Random(seed)
    span, slope = draw.uniform(4000, 11000), draw.uniform(2, 12) / 12
    rise, held_by = span / 2 * slope, draw.choice(("tie", "tie", "ridge beam"))
    height = draw.choice((0.0, draw.uniform(0.05, 0.8))) if held_by == "tie" else 0.0
    left, right = draw.uniform(0.5, 3), draw.choice((0.0, draw.uniform(0.5, 3)))
    frame = solve_frame(
        rafter_pair(
            building_span=span,
            rise=rise,
            left_load=left,
            right_load=right,
            axial_stiffness=EA,
            bending_stiffness=EI,
            held_by=held_by,
            height_fraction=height,
            tie_axial_stiffness=TIE,
        )
    )
    pair = both(span, rise, left, right, height, held_by)
    moved = pair_moves(
        *pair, axial_stiffness=EA, bending_stiffness=EI, tie_axial_stiffness=TIE if held_by == "tie" else None
    )
    for side, one in zip(("left", "right"), pair):
        bars = [name for name in frame.frame.bars if name.startswith(f"{side} rafter")]
        close = lambda value, other: value == pytest.approx(other, rel=1e-6, abs=1e-6 * span)  # noqa: E731
        assert close(one.greatest_moment[0], max(abs(frame.greatest_moment(name)[0]) for name in bars))
        assert close(one.greatest_shear[0], max(abs(frame.shear(name, end)) for name in bars for end in (0.0, 1.0)))
        assert close(one.greatest_push, max(-frame.axial(name, end) for name in bars for end in (0.0, 1.0)))
        joint = frame.move(side)[0] - (0 if held_by == "ridge beam" else frame.move("left")[0])
        assert (moved.left, moved.right)[side == "right"] == pytest.approx(joint, rel=1e-6, abs=1e-6)
        # the greatest sag square to the rafter, beside many points of the frame
        ends = (frame.shape(bars[0], 0.0), frame.shape(bars[-1], 1.0))
        sags = []
        for name in bars:
            start, (_across, up) = frame.frame.joints[frame.frame.bars[name].start], frame.frame.run(name)
            for i in range(201):
                at = (start.y + i / 200 * up) / rise
                moved_x, moved_y = (
                    point - (1 - at) * low - at * high for point, low, high in zip(frame.shape(name, i / 200), *ends)
                )
                sags.append(abs(moved_x * one.rise * (1 if side == "left" else -1) - moved_y * one.run) / one.length)
        assert one.greatest_sag[0] / EI == pytest.approx(max(sags), rel=2e-4)
        assert one.on_ridge == pytest.approx((left if side == "left" else right) * span / 2 - one.lift)
        for name in bars:
            bar = frame.frame.bars[name]
            start, (_across, up) = frame.frame.joints[bar.start], frame.frame.run(name)
            for share in (0.0, 0.3, 0.7, 1.0):
                x, y = frame.shape(name, share)
                at = (start.y + share * up) / rise
                _, _, right_move, up_move = moved.points(side == "right", [at])[0]
                middle = (frame.move("left")[0] + frame.move("right")[0]) / 2  # which is kept in its place
                assert (right_move if side == "left" else -right_move) == pytest.approx(x - middle, rel=1e-6, abs=1e-5)
                assert up_move == pytest.approx(y, rel=1e-6, abs=1e-5)
    assert moved.ridge[0] == pytest.approx(frame.move("ridge")[0], rel=1e-6, abs=1e-6)


def test_an_overhang_and_a_point_load_by_hand():
    """2 ft of overhang, 12 ft of run, 60 plf, and 100 lb in the middle, beside a ridge beam at 3 in 4."""
    lift = (60 * 14 * 7 + 100 * 6) / 12  # turned about the ridge
    one = solve_rafter(run=12.0, rise=9.0, loads=((-2.0, 12.0, 60.0), (6.0, 6.0, 100.0)), lift=lift)
    in_the_middle = lift * 6 - 60 * 8 * 4
    assert one.moment_at(0.5) == pytest.approx(in_the_middle)
    assert one.moment_at(0.0) == pytest.approx(-60 * 2 * 1)
    assert one.greatest_moment == pytest.approx((in_the_middle, 0.5))
    assert one.push_at(0.0) == pytest.approx((lift - 120) * 0.6)
    assert one.greatest_shear == pytest.approx(((lift - 120) * 0.8, 0.0))  # at the wall; 400 lb at the ridge
    # shortening: the push is (lift - 60 (x + 2)) 0.6, less 60 beyond the middle, along 15 ft
    whole = sum(one.push_at((i + 0.5) / 1000) for i in range(1000)) * 15 / 1000
    assert one.shortening_to(1.0) == pytest.approx(whole, rel=1e-6)


def test_a_load_line_of_a_pair_with_its_ridge_off_the_middle():
    """Three-hinged with 60 on plan, ridge at a third of 24, rise 4: both rafters are simple beams bent by their load."""
    push = 60 * 24 * frames_uneven.thrust_of_force(span=24.0, crown=8.0, rise=4.0, place=4.0) * 8 / 24
    push += 60 * 16 * frames_uneven.thrust_of_force(span=24.0, crown=8.0, rise=4.0, place=16.0)
    found = three_hinged_reactions(
        span=24.0, crown=8.0, rise=4.0, left_force=480.0, left_place=4.0, right_force=960.0, right_place=8.0
    )
    assert push == pytest.approx(found["thrust"])
    left = solve_rafter(run=8.0, rise=4.0, loads=((0.0, 8.0, 60.0),), lift=found["left"], pull=push)
    right = solve_rafter(run=16.0, rise=4.0, loads=((0.0, 16.0, 60.0),), lift=found["right"], pull=push)
    assert left.greatest_moment[0] == pytest.approx(60 * 8**2 / 8) and right.greatest_moment[0] == pytest.approx(
        60 * 16**2 / 8
    )
    # at the ridge both press each other with one push: what they pass on along and square to them adds up to it
    for one in (left, right):
        slope = math.atan2(one.rise, one.run)
        square = one.moment_at(1 - 1e-6) / (-1e-6 * one.length)  # the moment falls to nothing at the ridge
        assert one.push_at(1.0) * math.cos(slope) - square * math.sin(slope) == pytest.approx(push, rel=1e-5)


@pytest.mark.parametrize("seed", range(30))
def test_the_influence_line_of_the_push_is_that_of_a_three_hinged_frame(seed):
    draw = random.Random(seed)
    span, rise = draw.uniform(4, 30), draw.uniform(1, 9)
    crown = span * draw.uniform(0.1, 0.9)
    for _ in range(10):
        place = draw.uniform(0, span)
        on_left = place <= crown
        found = three_hinged_reactions(
            span=span,
            crown=crown,
            rise=rise,
            left_force=1.0 if on_left else 0.0,
            left_place=min(place, crown),
            right_force=0.0 if on_left else 1.0,
            right_place=min(span - place, span - crown),
        )
        assert frames_uneven.thrust_of_force(span=span, crown=crown, rise=rise, place=place) == pytest.approx(
            found["thrust"], abs=1e-12
        )


@pytest.mark.parametrize("bad", [dict(run=0.0), dict(rise=-1.0), dict(rise=math.nan), dict(height_fraction=1.0)])
def test_bad_rafters_are_refused(bad):
    with pytest.raises(BadInput):
        solve_rafter(**{**dict(run=12.0, rise=6.0, loads=((0.0, 12.0, 1.0),), lift=6.0), **bad})


def test_many_places_at_once():
    one = solve_rafter(run=12.0, rise=6.0, loads=((0.0, 12.0, 60.0),), lift=720.0, pull=720.0)
    assert one.moment_at((0.25, 0.5)) == pytest.approx([810.0, 1080.0])
