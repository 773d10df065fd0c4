"""What holds for every overhang and every arrangement: balance of every piece, and adding up of loads."""

import numpy
from hypothesis import given, settings
from hypothesis import strategies as st

from structlib.mechanics.beams import Beam, LineLoad, PointLoad, Support, solve
from structlib.mechanics.overhang import (
    overhang_tip_back_reaction,
    overhang_tip_moment,
    overhang_tip_near_reaction,
)
from structlib.mechanics.patterns import solve_arrangements, span_loads, stretches
from structlib.mechanics.splices import plies_at, zero_moment_places
from structlib.mechanics.tapered import TaperedMember, tapered_simple, tapered_uniform_stress_place

spans = st.floats(1000.0, 6000.0)
loads = st.floats(0.0, 20.0)
forces = st.floats(1.0, 50_000.0)


@st.composite
def beams(draw):
    """Supports of one to three spans, perhaps with an overhang, dead and live load and a post on the tip."""
    lengths = draw(st.lists(spans, min_size=1, max_size=3))
    past = draw(st.sampled_from([0.0, 600.0, 1500.0]))
    places = [0.0, *numpy.cumsum(lengths).tolist()]
    supports = tuple(Support(place) for place in places)
    length = places[-1] + past
    always = [LineLoad(0.0, length, draw(loads))]
    if past:
        always.append(PointLoad(length, draw(forces)))
    return Beam(length, 2e12, supports, tuple(always)), span_loads(supports, length, draw(loads))


def _load_left_of(beam, x):
    """Load left of a section and its turning about the section, by plain addition."""
    force = turning = 0.0
    for load in beam.loads:
        if isinstance(load, PointLoad):
            if load.position < x:
                force, turning = force + load.force, turning + load.force * (x - load.position)
        else:
            end = min(load.end, x)
            if end > load.start:
                part = load.intensity * (end - load.start)
                force, turning = force + part, turning + part * (x - (load.start + end) / 2)
    return force, turning


@settings(max_examples=40, deadline=None)
@given(beams(), st.floats(0.02, 0.98))
def test_every_piece_of_every_arrangement_is_in_balance(made, share):
    beam, groups = made
    x = share * beam.length
    for _on, solution in solve_arrangements(beam, groups).cases:
        total = sum(_load_left_of(solution.beam, beam.length + 1.0)[:1])
        size = max(total, 1.0)
        assert abs(sum(r.force for r in solution.reactions) - total) <= 1e-8 * size
        force, turning = _load_left_of(solution.beam, x)
        pushed = [(r.force, r.position) for r in solution.reactions if r.position < x]
        assert abs(sum(f for f, _ in pushed) - force - solution.shear(x)) <= 1e-7 * size
        lever = sum(f * (x - p) for f, p in pushed) - turning
        assert abs(lever - solution.moment(x)) <= 1e-7 * size * beam.length


@settings(max_examples=30, deadline=None)
@given(beams())
def test_arrangements_add_up(made):
    beam, groups = made
    found = solve_arrangements(beam, groups)
    x = numpy.linspace(0.0, beam.length, 9)
    size = max(abs(found.sagging.value), abs(found.hogging.value), 1.0)
    for _on, solution in found.cases:
        alone = solve(solution.beam)
        assert numpy.allclose(alone.moment(x), solution.moment(x), rtol=0, atol=1e-7 * size)
        push = max(abs(reaction.force) for reaction in alone.reactions)
        assert numpy.allclose(
            [one.force for one in alone.reactions], [one.force for one in solution.reactions], atol=1e-7 * push + 1e-9
        )


@settings(max_examples=60, deadline=None)
@given(beams())
def test_the_worst_of_what_is_looked_at_is_the_worst_of_every_arrangement(made):
    """Each arrangement solved by itself, all of them, beside the few that the signs of the groups tell."""
    beam, groups = made
    found = solve_arrangements(beam, groups)
    each = [solve(solution.beam) for _, solution in found.cases]
    for name, all_of_them in (
        ("sagging", [one.extremes.greatest_moment.value for one in each]),
        ("hogging", [-one.extremes.least_moment.value for one in each]),
        ("drop", [one.extremes.greatest_deflection.value for one in each]),
        ("rise", [-one.extremes.least_deflection.value for one in each]),
        ("shear", [abs(one.extremes.shear.value) for one in each]),
    ):
        worst = max(all_of_them)
        assert abs(abs(getattr(found, name).value) - worst) <= 1e-9 * max(abs(worst), 1e-6), name
    for start, end in stretches(beam.supports, beam.length):
        x = numpy.linspace(start, end, 41)
        most = max(numpy.abs(one.deflection(x)).max() for one in each)
        asked = abs(found.deflection_between(start, end).value)
        assert asked >= most * (1 - 1e-9) - 1e-12 and asked <= 1.02 * most + 1e-9


@settings(max_examples=30, deadline=None)
@given(beams())
def test_the_greatest_push_is_where_every_helping_group_is_on(made):
    """Loads add up, so the worst arrangement is found by the sign of each group alone: another way to it."""
    beam, groups = made
    found = solve_arrangements(beam, groups)
    nothing = (False,) * len(groups)
    for number in range(len(beam.supports)):
        base = found.case(nothing).reactions[number].force
        alone = [
            found.case(nothing[:k] + (True,) + nothing[k + 1 :]).reactions[number].force - base
            for k in range(len(groups))
        ]
        size = max(1.0, abs(base), *(abs(part) for part in alone))
        most, least = base + sum(max(0.0, a) for a in alone), base + sum(min(0.0, a) for a in alone)
        assert abs(found.greatest_reaction(number).value - most) <= 1e-7 * size
        assert abs(found.least_reaction(number).value - least) <= 1e-7 * size


@settings(max_examples=40, deadline=None)
@given(forces, spans, st.floats(200.0, 3000.0))
def test_an_overhang_is_in_balance_and_as_the_solver_finds_it(force, span, past):
    shared = dict(point_load=force, span=span, overhang=past)
    back, near = overhang_tip_back_reaction(**shared), overhang_tip_near_reaction(**shared)
    assert abs(back + near - force) <= 1e-9 * near
    assert abs(near * span - force * (span + past)) <= 1e-9 * near * span
    solution = solve(Beam(span + past, 1e12, (Support(0.0), Support(span)), (PointLoad(span + past, force),)))
    assert abs(solution.reactions[0].force - back) <= 1e-8 * force
    assert abs(solution.moment(span) - overhang_tip_moment(point_load=force, overhang=past)) <= 1e-8 * force * past


@settings(max_examples=30, deadline=None)
@given(beams())
def test_the_moment_is_zero_where_it_is_said_to_be(made):
    beam, groups = made
    solution = solve_arrangements(beam, groups).cases[-1][1]
    size = max(abs(solution.extremes.moment.value), 1e-6)
    for place in zero_moment_places(solution):
        assert abs(solution.moment(place)) <= 1e-6 * size


@settings(max_examples=30, deadline=None)
@given(
    st.lists(st.lists(st.integers(0, 40).map(lambda n: 100.0 * n), max_size=3).map(tuple), min_size=1, max_size=5),
    st.floats(0.0, 300.0),
)
def test_leaving_out_more_length_never_gives_more_plies(splices, near):
    splices = tuple(splices)
    for place in (0.0, 500.0, 1234.5):
        count = plies_at(place, splices, near=near)
        assert 0 <= count <= plies_at(place, splices) <= len(splices)


@settings(max_examples=25, deadline=None)
@given(st.floats(100.0, 300.0), st.floats(100.0, 300.0), st.floats(0.5, 20.0))
def test_a_tapered_beam_turned_round_is_the_same_beam(one, other, load):
    there = tapered_simple(TaperedMember(4000.0, 76.0, one, other, 10_000.0), line_load=load)
    back = tapered_simple(TaperedMember(4000.0, 76.0, other, one, 10_000.0), line_load=load)
    assert abs(there.stress - back.stress) <= 1e-9 * there.stress
    assert abs(there.deflection - back.deflection) <= 1e-9 * there.deflection
    assert abs(there.stress_place + back.stress_place - 4000.0) <= 1e-6
    assert abs(there.stress_place - tapered_uniform_stress_place(span=4000.0, start_depth=one, end_depth=other)) <= 1e-6
    # no stiffer than its deep end everywhere, no softer than its shallow end
    for depth, more in ((min(one, other), True), (max(one, other), False)):
        even = 5 * load * 4000.0**4 / (384 * 10_000.0 * 76.0 * depth**3 / 12)
        assert (there.deflection <= even * (1 + 1e-9)) if more else (there.deflection >= even * (1 - 1e-9))
