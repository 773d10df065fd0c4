"""Laws that every solved beam obeys, whatever its supports and loads."""

import numpy as np
import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from structlib.mechanics.beams import Beam, Couple, LineLoad, PointLoad, Support, solve

MANY = settings(max_examples=50, deadline=None)
FEW = settings(max_examples=25, deadline=None)
ROUNDING = 1e-9

shares = st.floats(0.0, 1.0)


@st.composite
def loads_on(draw, length, downward=False):
    """One to four loads of any kind."""
    found = []
    sizes = st.integers(0 if downward else -100, 100).map(lambda percent: percent / 100)
    for _ in range(draw(st.integers(1, 4))):
        a, b = sorted((draw(shares) * length, draw(shares) * length))
        size = draw(sizes)
        kind = draw(st.sampled_from("point line ramp couple".split()))
        if kind == "point" or b - a < 1.0:
            found.append(PointLoad(a, 2e4 * size))
        elif kind == "couple" and not downward:
            found.append(Couple(a, 4e6 * size))
        elif kind == "ramp":
            found.append(LineLoad(a, b, 15 * size, 15 * draw(sizes)))
        else:
            found.append(LineLoad(a, b, 15 * size))
    return found


@st.composite
def support_rows(draw, kinds=("pinned", "spring", "fixed"), least=2):
    """Positions of two to five supports on a beam with free ends, and the beam's length."""
    gaps = draw(st.lists(st.floats(200.0, 6000.0), min_size=least - 1, max_size=4))
    x = [draw(st.sampled_from([0.0, 0.0, 700.0]))]
    for gap in gaps:
        x.append(x[-1] + gap)
    supports = []
    for position in x:
        kind = draw(st.sampled_from(kinds))
        stiffness = 10 ** draw(st.floats(1.0, 6.0)) if kind == "spring" else None
        supports.append(Support(position, kind, stiffness, draw(st.sampled_from([0.0, 0.0, 2.5, -1.0]))))
    return supports, x[-1] + draw(st.sampled_from([0.0, 0.0, 900.0]))


@st.composite
def beams(draw, **kinds):
    supports, length = draw(support_rows(**kinds))
    stiffness = 10 ** draw(st.floats(11.0, 13.5))
    if draw(st.booleans()):
        stiffness = [(0.4 * length, stiffness), (length, 3 * stiffness)]
    return Beam(length, stiffness, supports, draw(loads_on(length)))


def _resultant(loads):
    """Sum of the loads, and sum of their moments about the left end (a couple turns the other way)."""
    total = turning = 0.0
    for load in loads:
        if isinstance(load, PointLoad):
            total += load.force
            turning += load.force * load.position
        elif isinstance(load, Couple):
            turning += load.moment
        else:
            a, h = load.start, load.end - load.start
            first = load.intensity
            rise = (first if load.end_intensity is None else load.end_intensity) - first
            total += first * h + rise * h / 2
            turning += first * h * (a + h / 2) + rise * h / 2 * (a + 2 * h / 3)
    return total, turning


def _size(solution):
    forces = max(abs(r.force) for r in solution.reactions)
    loads = max(abs(_resultant([load])[0]) for load in solution.beam.loads)
    return max(forces, loads, 1.0)


def _values(solution, x):
    return [getattr(solution, name)(x) for name in ("shear", "moment", "slope", "deflection")]


def _slight(beam):
    """Rounding that loads leave even where they bend nothing, and sunk supports where nothing resists."""
    length, stiffness = beam.length, [ei for _, ei in beam.stiffness_pieces()]
    force = sum(abs(_resultant([load])[0]) for load in beam.loads)
    couples = sum(abs(load.moment) for load in beam.loads if isinstance(load, Couple))
    x = sorted(s.position for s in beam.supports)
    shortest = min((b - a for a, b in zip(x, x[1:])), default=length)
    force += max(stiffness) * max(abs(s.settlement) for s in beam.supports) / shortest**3
    moment = force * length + couples
    slope = moment * length / min(stiffness)
    return [1e-14 * size for size in (force + couples / shortest, moment, slope, slope * length)]


def _assert_close(found, expected, slight):
    for ours, theirs, rounding in zip(found, expected, slight):
        size = max(np.max(np.abs(ours)), np.max(np.abs(theirs)))
        np.testing.assert_allclose(ours, theirs, rtol=0, atol=ROUNDING * size + rounding)


@MANY
@given(beams())
def test_reactions_balance_the_loads(beam):
    solution = solve(beam)
    total, turning = _resultant(beam.loads)
    pushes = sum(r.force for r in solution.reactions)
    arms = sum(r.force * r.position - r.moment for r in solution.reactions)
    couples = max(abs(r.moment) for r in solution.reactions)
    assert abs(pushes - total) < ROUNDING * _size(solution)
    assert abs(arms - turning) < ROUNDING * (_size(solution) * beam.length + couples)


@MANY
@given(beams())
def test_shear_is_the_sum_of_forces_to_the_left(beam):
    solution = solve(beam)
    cut = 0.37 * beam.length
    left = []
    for load in beam.loads:
        if isinstance(load, LineLoad) and load.start < cut < load.end:
            final = load.intensity if load.end_intensity is None else load.end_intensity
            at_cut = load.intensity + (final - load.intensity) * (cut - load.start) / (load.end - load.start)
            if cut - load.start > 1e-6:
                left.append(LineLoad(load.start, cut, load.intensity, at_cut))
        elif (load.end if isinstance(load, LineLoad) else load.position) <= cut:
            left.append(load)
    total, turning = _resultant(left)
    here = [r for r in solution.reactions if r.position <= cut]
    shear = sum(r.force for r in here) - total
    moment = sum(r.force * (cut - r.position) + r.moment for r in here) - total * cut + turning
    assert abs(solution.shear(cut) - shear) < ROUNDING * _size(solution)
    couples = sum(abs(r.moment) for r in here)
    assert abs(solution.moment(cut) - moment) < ROUNDING * (_size(solution) * beam.length + couples)


@MANY
@given(beams())
def test_each_quantity_is_the_slope_of_the_next(beam):
    solution = solve(beam)
    for piece in solution.pieces:
        middle, h = (piece.start + piece.end) / 2, (piece.end - piece.start) / 8
        if h < 1e-3:
            continue
        x = middle + h * np.array([-2.0, -1.0, 1.0, 2.0])
        weights = np.array([1.0, -8.0, 8.0, -1.0]) / (12 * h)  # exact for polynomials up to degree four
        place_rounding = 1e-15 * beam.length / h
        load = piece.load + piece.load_rate * (middle - piece.start)
        pairs = (
            (solution.shear, -load),
            (solution.moment, solution.shear(middle)),
            (solution.slope, -solution.moment(middle) / piece.bending_stiffness),
        )
        for quantity, expected in pairs:
            values = quantity(x)
            noise = 1e-12 * np.max(np.abs(values)) / h + place_rounding * abs(expected) + 1e-15
            assert abs(values @ weights - expected) <= noise
        # a deflection of degree five leaves the error of these weights, which is known
        left_over = h**4 / 30 * piece.load_rate / piece.bending_stiffness
        values = solution.deflection(x)
        expected = solution.slope(middle)
        noise = 1e-12 * np.max(np.abs(values)) / h + place_rounding * abs(expected) + 1e-15
        assert abs(values @ weights + left_over - expected) <= noise


@MANY
@given(st.data())
def test_loads_add_up(data):
    supports, length = data.draw(support_rows())
    level = [Support(s.position, s.kind, s.stiffness) for s in supports]  # settlement is counted once
    one, other = data.draw(loads_on(length)), data.draw(loads_on(length))
    x = np.linspace(0, length, 23)
    first = _values(solve(Beam(length, 2e12, supports, one)), x)
    second = _values(solve(Beam(length, 2e12, level, other)), x)
    together = Beam(length, 2e12, supports, one + other)
    both = _values(solve(together), x)
    _assert_close([a + b for a, b in zip(first, second)], both, _slight(together))


def _mirrored(beam):
    length = beam.length
    supports = [Support(length - s.position, s.kind, s.stiffness, s.settlement) for s in beam.supports]
    loads = []
    for load in beam.loads:
        if isinstance(load, PointLoad):
            loads.append(PointLoad(length - load.position, load.force))
        elif isinstance(load, Couple):
            loads.append(Couple(length - load.position, -load.moment))
        else:
            final = load.intensity if load.end_intensity is None else load.end_intensity
            loads.append(LineLoad(length - load.end, length - load.start, final, load.intensity))
    ends = [0.0] + [end for end, _ in beam.stiffness_pieces()]
    stiffness = [ei for _, ei in beam.stiffness_pieces()]
    pieces = [(length - start, ei) for start, ei in zip(ends, stiffness)][::-1]
    return Beam(length, pieces, supports, loads)


@MANY
@given(beams())
def test_a_mirrored_beam_gives_mirrored_answers(beam):
    solution, mirror = solve(beam), solve(_mirrored(beam))
    x = beam.length * np.linspace(0.0123, 0.9877, 17)
    stations = [load.position for load in beam.loads if not isinstance(load, LineLoad)]
    stations += [s.position for s in beam.supports]
    x = np.array([place for place in x if all(abs(place - s) > 1e-3 for s in stations)])
    assume(len(x) > 0)
    shear, moment, slope, deflection = _values(mirror, beam.length - x)
    _assert_close(_values(solution, x), [-shear, moment, -slope, deflection], _slight(beam))


@MANY
@given(beams(kinds=("pinned", "fixed")))
def test_twice_the_stiffness_halves_the_deflection(beam):
    level = [Support(s.position, s.kind) for s in beam.supports]
    stiff = [(end, 2 * ei) for end, ei in beam.stiffness_pieces()]
    x = np.linspace(0, beam.length, 23)
    shear, moment, slope, deflection = _values(solve(Beam(beam.length, stiff, level, beam.loads)), x)
    expected = _values(solve(Beam(beam.length, beam.bending_stiffness, level, beam.loads)), x)
    _assert_close([shear, moment, 2 * slope, 2 * deflection], expected, _slight(beam))


@FEW
@given(st.floats(500.0, 8000.0), st.floats(1.1, 3.0), st.floats(0.1, 30.0))
def test_deflection_grows_with_the_fourth_power_of_the_span(span, factor, load):
    def sag(length):
        beam = Beam(length, 2e12, [Support(0.0), Support(length)], [LineLoad(0.0, length, load)])
        return solve(beam).extremes.greatest_deflection.value

    assert sag(factor * span) == pytest.approx(factor**4 * sag(span), rel=1e-12)


@FEW
@given(st.data())
def test_more_load_sags_more_on_a_simple_span(data):
    length = data.draw(st.floats(1000.0, 8000.0))
    loads = data.draw(loads_on(length, downward=True))
    more = loads + data.draw(loads_on(length, downward=True))
    supports = [Support(0.0), Support(length)]
    less, heavier = (solve(Beam(length, 2e12, supports, items)).extremes for items in (loads, more))
    assert heavier.greatest_moment.value >= less.greatest_moment.value * (1 - ROUNDING)
    assert heavier.greatest_deflection.value >= less.greatest_deflection.value * (1 - ROUNDING)


@FEW
@given(st.data())
def test_the_deflection_at_b_from_a_load_at_a_is_that_at_a_from_b(data):
    supports, length = data.draw(support_rows())
    level = [Support(s.position, s.kind, s.stiffness) for s in supports]
    a, b = data.draw(shares) * length, data.draw(shares) * length
    at_b = solve(Beam(length, 2e12, level, [PointLoad(a, 1e4)])).deflection(b)
    at_a = solve(Beam(length, 2e12, level, [PointLoad(b, 1e4)])).deflection(a)
    size = max(abs(solve(Beam(length, 2e12, level, [PointLoad(x, 1e4)])).deflection(x)) for x in (a, b))
    assert abs(at_a - at_b) <= ROUNDING * size + 1e-12


@MANY
@given(st.data())
def test_supports_do_what_they_are(data):
    beam = data.draw(beams())
    solution = solve(beam)
    size = max(abs(solution.extremes.deflection.value), 1e-6)
    for support, reaction in zip(beam.supports, solution.reactions):
        sink = solution.deflection(support.position)
        if support.kind == "spring":
            give = support.stiffness * (sink - support.settlement)
            scale = support.stiffness * size + _size(solution)
            assert abs(reaction.force - give) <= ROUNDING * scale
        else:
            assert abs(sink - support.settlement) <= ROUNDING * size
        if support.kind == "fixed":
            steepest = max(abs(solution.extremes.slope.value), 1e-9)
            assert abs(solution.slope(support.position)) <= ROUNDING * steepest
            assert abs(solution.slope(support.position, side="left")) <= ROUNDING * steepest


@MANY
@given(st.data())
def test_a_hinge_passes_no_moment_and_no_gap(data):
    supports, length = data.draw(support_rows(kinds=("pinned", "spring"), least=3))
    a, b = supports[1].position, supports[2].position
    hinge = a + data.draw(st.floats(0.05, 0.95)) * (b - a)
    loads = [load for load in data.draw(loads_on(length)) if not isinstance(load, Couple)]
    solution = solve(Beam(length, 2e12, supports, loads, hinges=[hinge]))
    assert solution.moment(hinge) == 0.0 and solution.moment(hinge, side="left") == 0.0
    gap = solution.deflection(hinge) - solution.deflection(hinge, side="left")
    assert abs(gap) <= ROUNDING * abs(solution.extremes.deflection.value) + 1e-12


@MANY
@given(st.data())
def test_supports_that_can_lift_never_pull(data):
    supports, length = data.draw(support_rows(kinds=("pinned", "spring"), least=3))
    held = supports[:2] + [Support(s.position, s.kind, s.stiffness, s.settlement, can_lift=True) for s in supports[2:]]
    loads = data.draw(loads_on(length))
    solution = solve(Beam(length, 2e12, held, loads))
    size = max(abs(solution.extremes.deflection.value), 1e-6)
    carrying = []
    for support, reaction in zip(held, solution.reactions):
        if support.can_lift:
            assert reaction.force >= -ROUNDING * _size(solution)
        if reaction.lifted:
            assert reaction.force == 0.0
            assert solution.deflection(support.position) <= support.settlement + ROUNDING * size
        else:
            carrying.append(Support(support.position, support.kind, support.stiffness, support.settlement))
    x = np.linspace(0, length, 23)
    without = solve(Beam(length, 2e12, carrying, loads))
    _assert_close(_values(solution, x), _values(without, x), _slight(solution.beam))


@FEW
@given(beams())
def test_no_point_of_the_diagram_lies_beyond_the_extremes(beam):
    solution = solve(beam)
    points, extremes = solution.points(300), solution.extremes
    for name, slight in zip(("shear", "moment", "slope", "deflection"), _slight(beam)):
        values = getattr(points, name)
        near = 1e-12 * np.max(np.abs(values)) + slight
        greatest, least = getattr(extremes, f"greatest_{name}"), getattr(extremes, f"least_{name}")
        assert values.max() == pytest.approx(greatest.value, abs=near)
        assert values.min() == pytest.approx(least.value, abs=near)
