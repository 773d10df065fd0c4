"""Forces on fasteners against statics: what they take together is the load, in force and in moment."""

from fractions import Fraction

import numpy
import pytest
import sympy
from hypothesis import given, settings
from hypothesis import strategies as st

from structlib.ground.refusals import BadInput
from structlib.mechanics import fastener_groups as groups

PLACE = st.integers(min_value=-400, max_value=400)
FORCE = st.integers(min_value=-5000, max_value=5000)


@settings(max_examples=60, deadline=None)
@given(
    st.lists(st.tuples(PLACE, PLACE), min_size=2, max_size=9, unique=True),
    FORCE,
    FORCE,
    st.tuples(PLACE, PLACE),
    FORCE,
)
def test_forces_and_moments_of_the_fasteners_add_up_to_the_load(points, right, up, at, moment):
    forces = groups.fastener_forces(points, force_x=right, force_y=up, at=at, moment=moment)
    assert sum(x for x, _ in forces) == pytest.approx(right, abs=1e-6)
    assert sum(y for _, y in forces) == pytest.approx(up, abs=1e-6)
    turned = sum(px * fy - py * fx for (px, py), (fx, fy) in zip(points, forces))
    assert turned == pytest.approx(moment + at[0] * up - at[1] * right, rel=1e-9, abs=1e-3)


@settings(max_examples=40, deadline=None)
@given(st.lists(st.tuples(PLACE, PLACE), min_size=2, max_size=7, unique=True), FORCE, FORCE, FORCE)
def test_a_rigid_plate_on_equal_springs_gives_the_same_forces(points, right, up, moment):
    """The displacement method: unknown slide and turn of the plate, springs of stiffness 1 at each place."""
    xs, ys = numpy.array(points, dtype=float).T
    xs, ys = xs - xs.mean(), ys - ys.mean()
    stiffness = numpy.array(
        [[len(xs), 0, -ys.sum()], [0, len(xs), xs.sum()], [-ys.sum(), xs.sum(), (xs**2 + ys**2).sum()]]
    )
    slide_x, slide_y, turn = numpy.linalg.solve(stiffness, [right, up, moment])
    forces = groups.fastener_forces(points, force_x=right, force_y=up, moment=moment)
    numpy.testing.assert_allclose(
        numpy.array(forces),
        numpy.column_stack([slide_x - turn * ys, slide_y + turn * xs]),
        rtol=1e-9,
        atol=1e-6,
    )


def test_a_bracket_worked_by_hand():
    """Four fasteners on a 60 by 80 rectangle, each 50 from the centre; 1000 down, 250 to the right."""
    corners = [(-30, -40), (30, -40), (30, 40), (-30, 40)]
    forces = groups.fastener_forces(corners, force_y=-1000, at=(250, 0))
    # polar moment 4 x 2500; turning -250,000: at each corner 25 y to the right and -25 x upward
    assert forces == ((-1000, 500), (-1000, -1000), (1000, -1000), (1000, 500))
    assert groups.greatest_fastener_force(forces) == (pytest.approx(2000000**0.5), 1)


def test_symbols_pass_through():
    force, arm = sympy.symbols("F a", positive=True)
    forces = groups.fastener_forces([(-50, 0), (50, 0)], force_y=-force, at=(arm, 0))
    assert sympy.simplify(forces[1][1] - (-force / 2 - force * arm / 100)) == 0
    shear, first, inertia = sympy.symbols("V Q I", positive=True)
    assert groups.shear_flow(shear=shear, first_moment=first, inertia=inertia) == shear * first / inertia


def test_one_spot_takes_a_force_but_no_moment():
    assert groups.fastener_forces([(5.0, 5.0)], force_y=-8.0) == ((0.0, -8.0),)
    with pytest.raises(BadInput, match="one spot"):
        groups.fastener_forces([(5.0, 5.0), (5.0, 5.0)], force_y=-8.0, at=(6.0, 5.0))


@settings(max_examples=30, deadline=None)
@given(st.integers(2, 60), st.integers(2, 60), st.integers(2, 60), st.integers(1, 999))
def test_shear_flow_is_the_change_of_the_bending_force_in_the_part(width, flange, web, shear):
    """Exact: along one unit the moment grows by V, and with it the push in the top part, M Q / I."""
    depth = web + flange
    inertia = Fraction(width * depth**3, 12)
    # push in the top strip: stress M y / I added up in closed form from y1 to y2
    top, bottom = Fraction(depth, 2), Fraction(depth, 2) - flange
    push_per_moment = Fraction(width) * (top**2 - bottom**2) / 2 / inertia
    first = width * flange * (top + bottom) / 2
    if first > 0:
        flow = groups.shear_flow(shear=shear, first_moment=float(first), inertia=float(inertia))
        assert flow == pytest.approx(float(shear * push_per_moment), rel=1e-12)
        spacing = groups.fastener_spacing(value=500.0, flow=flow, lines=2)
        assert groups.fastener_flow(value=500.0, spacing=spacing, lines=2) == pytest.approx(flow)


@pytest.mark.parametrize(
    "points",
    [
        [],
        None,
        5,
        [(1.0,)],
        [("a", 0.0)],
        [(float("nan"), 0.0)],
        [(1.0, 2.0, 3.0)],
        [(numpy.array([1.0, 2.0]), 0.0)],
        [([1.0], 0.0)],
        "ab",
        [None],
    ],
)
def test_places_that_make_no_sense_are_refused(points):
    for ask in (
        groups.group_centre,
        groups.polar_moment,
        groups.fastener_forces,
        groups.greatest_fastener_force,
    ):
        with pytest.raises(BadInput):
            ask(points)


@pytest.mark.parametrize("value", [float("nan"), float("inf"), "5", None, True, [], -1.0])
@pytest.mark.parametrize(
    "ask, name",
    [
        (groups.shear_flow, "shear"),
        (groups.shear_flow, "first_moment"),
        (groups.shear_flow, "inertia"),
        (groups.fastener_spacing, "value"),
        (groups.fastener_spacing, "flow"),
        (groups.fastener_flow, "spacing"),
        (groups.fastener_flow, "lines"),
    ],
)
def test_numbers_that_make_no_sense_are_refused(ask, name, value):
    good = {
        groups.shear_flow: {"shear": 1.0, "first_moment": 2.0, "inertia": 3.0},
        groups.fastener_spacing: {"value": 1.0, "flow": 2.0, "lines": 1},
        groups.fastener_flow: {"value": 1.0, "spacing": 2.0, "lines": 1},
    }[ask]
    with pytest.raises(BadInput):
        ask(**{**good, name: value})
