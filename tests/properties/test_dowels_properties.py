"""What must hold of fastener values whatever the sizes."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from structlib.ground.units import deg, inch
from structlib.rules.us import dowels, fastening

DIAMETER = st.sampled_from([0.25, 0.375, 0.5, 0.625, 0.75, 1.0])
THICKNESS = st.floats(0.5, 8.0)
GRAVITY = st.floats(0.31, 0.73)
ANGLE = st.floats(0.0, 90.0)
MORE = st.floats(0.01, 5.0)


def value(D, main_thick, side_thick, gravity, main_angle, side_angle):
    main = dowels.wood_piece(thickness=main_thick * inch, specific_gravity=gravity, angle=main_angle * deg)
    side = dowels.wood_piece(thickness=side_thick * inch, specific_gravity=gravity, angle=side_angle * deg)
    return dowels.lateral_value(dowels.bolt(D * inch), main=main, side=side)


@settings(max_examples=50, deadline=None)
@given(DIAMETER, THICKNESS, THICKNESS, GRAVITY, ANGLE, ANGLE, MORE)
def test_thicker_members_never_carry_less_and_mode_IV_does_not_care(D, main, side, gravity, along, across, more):
    thin = value(D, main, side, gravity, along, across)
    for thick in (
        value(D, main + more, side, gravity, along, across),
        value(D, main, side + more, gravity, along, across),
    ):
        assert thick.value >= thin.value * (1 - 1e-9)
        assert dict(thick.modes)["IV"] == dict(thin.modes)["IV"]


@settings(max_examples=50, deadline=None)
@given(DIAMETER, THICKNESS, THICKNESS, st.floats(0.31, 0.6), st.floats(0.0, 0.13), ANGLE, ANGLE)
def test_denser_wood_is_never_weaker(D, main, side, gravity, denser, along, across):
    light = value(D, main, side, gravity, along, across)
    assert value(D, main, side, gravity + denser, along, across).value >= light.value * (1 - 1e-9)


@settings(max_examples=40, deadline=None)
@given(DIAMETER, THICKNESS, THICKNESS, GRAVITY, ANGLE, ANGLE)
def test_two_members_may_change_places(D, one, other, gravity, first, second):
    there = dict(value(D, one, other, gravity, first, second).modes)
    back = dict(value(D, other, one, gravity, second, first).modes)
    for mode, twin in (
        ("Im", "Is"),
        ("Is", "Im"),
        ("II", "II"),
        ("IIIm", "IIIs"),
        ("IIIs", "IIIm"),
        ("IV", "IV"),
    ):
        assert there[mode] == pytest.approx(back[twin], rel=1e-9)


@settings(max_examples=40, deadline=None)
@given(DIAMETER, GRAVITY, ANGLE)
def test_bearing_at_an_angle_lies_between_along_and_across(D, gravity, angle):
    def strength(turn):
        piece = dowels.wood_piece(thickness=38.0, specific_gravity=gravity, angle=turn * deg)
        return dowels.piece_bearing_strength(piece, diameter=D * inch)

    low, high = sorted((strength(0.0), strength(90.0)))
    assert low * (1 - 1e-9) <= strength(angle) <= high * (1 + 1e-9)


@settings(max_examples=40, deadline=None)
@given(st.floats(0.099, 0.249), GRAVITY, ANGLE, ANGLE)
def test_nails_do_not_care_about_the_grain(D, gravity, first, second):
    def nailed(angle):
        piece = dowels.wood_piece(thickness=3 * inch, specific_gravity=gravity, angle=angle * deg)
        return dowels.lateral_value(dowels.nail_of_size(diameter=D * inch, length=6 * inch), main=piece, side=piece)

    assert nailed(first) == nailed(second)


@settings(max_examples=40, deadline=None)
@given(st.lists(st.floats(0.0, 50.0), min_size=2, max_size=5))
def test_after_the_fasteners_every_ply_keeps_an_equal_part(loads):
    between = (0.0, *fastening.loads_between_plies(loads), 0.0)
    part = sum(loads) / len(loads)
    for ply, load in enumerate(loads):
        assert load + between[ply] - between[ply + 1] == pytest.approx(part, abs=1e-9)


@settings(max_examples=30, deadline=None)
@given(st.integers(2, 4), st.floats(50.0, 350.0), st.integers(2, 4))
def test_a_layout_carries_what_must_pass(plies, load, rows):
    from structlib.ground.units import plf

    found = fastening.ply_fastening(
        plies=plies,
        ply_width=1.5 * inch,
        depth=11.25 * inch,
        side_load=load * plf,
        specific_gravity=0.5,
        fastener=dowels.nail("10d common"),
        rows=rows,
    )
    assert found.rows * found.value >= found.load_between * found.spacing * (1 - 1e-9)
    assert all(check.share <= 1 + 1e-9 for check in found.checks)
    assert 2 * found.edge_distance + (rows - 1) * found.line_gap == pytest.approx(11.25 * inch)
