"""The part of a sag that comes from shear: in the solver, in a full check, in the rack and in the pictures."""

import numpy
import pytest
import sympy

from structlib.mechanics import formulas
from structlib.mechanics.beams import Beam, Couple, LineLoad, PointLoad, Support, solve

EI, GA = 9.0e11, 2.4e6


def _by_virtual_work(length, supports, loads, place):
    """Deflection of a beam on two supports by a unit load: the integral of M m / EI + V v / GA."""
    x = numpy.linspace(0, length, 40_001)
    left, right = supports

    def inner_forces(loads):
        V, M = numpy.zeros_like(x), numpy.zeros_like(x)
        turning = force = 0.0
        for at, push, couple in loads:
            V -= push * (x > at)
            M += (couple - push * (x - at)) * (x > at)
            force += push
            turning += push * (at - left) + couple
        pushes = {right: turning / (right - left)}
        pushes[left] = force - pushes[right]
        for at, push in pushes.items():
            V += push * (x > at)
            M += push * (x - at) * (x > at)
        return V, M

    lumps = []
    for load in loads:
        if isinstance(load, LineLoad):
            steps = 800
            middles = load.start + (numpy.arange(steps) + 0.5) * (load.end - load.start) / steps
            last = load.intensity if load.end_intensity is None else load.end_intensity
            share = (middles - load.start) / (load.end - load.start)
            step = (load.end - load.start) / steps
            lumps += [(at, (load.intensity + (last - load.intensity) * s) * step, 0.0)
                      for at, s in zip(middles, share)]  # fmt: skip
        elif isinstance(load, Couple):
            lumps.append((load.position, 0.0, load.moment))
        else:
            lumps.append((load.position, load.force, 0.0))
    V, M = inner_forces(lumps)
    v, m = inner_forces([(place, 1.0, 0.0)])
    return numpy.trapezoid(M * m / EI + V * v / GA, x)


@pytest.mark.parametrize("place", [600.0, 1500.0, 2900.0, 4000.0])
def test_the_solver_adds_what_virtual_work_says(place):
    supports, length = (300.0, 3300.0), 4000.0
    loads = (
        LineLoad(300.0, 2500.0, 4.0, 9.0), PointLoad(1200.0, 6000.0), Couple(2100.0, 5e6), PointLoad(4000.0, 900.0),
    )  # fmt: skip
    beam = Beam(length, EI, [Support(at) for at in supports], loads, shear_stiffness=GA)
    assert solve(beam).deflection(place) == pytest.approx(
        _by_virtual_work(length, supports, loads, place), rel=2e-4
    )


def test_an_even_load_on_a_simple_span_has_the_closed_form():
    w, L = 8.0, 2400.0
    beam = Beam(L, EI, [Support(0.0), Support(L)], [LineLoad(0.0, L, w)], shear_stiffness=GA)
    by_hand = 5 * w * L**4 / (384 * EI) + w * L**2 / (8 * GA)
    peak = solve(beam).extremes.deflection
    assert (peak.value, peak.position) == (pytest.approx(by_hand), pytest.approx(L / 2))


def test_a_prop_takes_what_both_ways_of_giving_leave_it():
    """The free end under w sinks w L4 / 8 EI + w L2 / 2 GA, and comes back R (L3 / 3 EI + L / GA)."""
    w, L = 8.0, 1800.0
    supports = [Support(0.0, kind="fixed"), Support(L)]
    found = solve(Beam(L, EI, supports, [LineLoad(0.0, L, w)], shear_stiffness=GA))
    prop = (w * L**4 / (8 * EI) + w * L**2 / (2 * GA)) / (L**3 / (3 * EI) + L / GA)
    assert found.reactions[1].force == pytest.approx(prop, rel=1e-12)
    stiff = solve(Beam(L, EI, supports, [LineLoad(0.0, L, w)])).reactions[1].force
    assert prop > 1.01 * stiff


def test_extremes_and_points_have_the_shear_in_them():
    loads = (LineLoad(0.0, 1500.0, 2.0, 11.0), PointLoad(700.0, 9000.0))
    found = solve(Beam(2600.0, EI, [Support(0.0), Support(2200.0)], loads, shear_stiffness=GA))
    x = numpy.linspace(0.0, 2600.0, 200_001)
    assert found.extremes.greatest_deflection.value == pytest.approx(found.deflection(x).max(), rel=1e-9)
    assert found.extremes.least_deflection.value == pytest.approx(found.deflection(x).min(), rel=1e-9)
    assert found.extremes.least_slope.value == pytest.approx(found.slope(x).min(), rel=1e-4)
    between = (found.deflection(x[1:]) - found.deflection(x[:-1])) / (x[1] - x[0])
    # the axis kinks under a point push: the two steps over the load and the support have no one slope
    smooth = [not any(a <= at <= b for at in (700.0, 2200.0)) for a, b in zip(x, x[1:])]
    assert between[smooth] == pytest.approx(found.slope((x[1:] + x[:-1]) / 2)[smooth], abs=2e-6)
    assert found.slope(700.0, side="left") - found.slope(700.0) == pytest.approx(9000.0 / GA)
    points = found.points(50)
    assert points.deflection == pytest.approx(found.deflection(points.x))
    # no shear: nothing changes
    plain = solve(Beam(2600.0, EI, [Support(0.0), Support(2200.0)], loads, shear_stiffness=1e19))
    assert plain.extremes.deflection.value == pytest.approx(
        solve(Beam(2600.0, EI, [Support(0.0), Support(2200.0)], loads)).extremes.deflection.value, rel=1e-9
    )


def test_the_shear_stiffness_of_a_rectangle_is_one_formula_for_numbers_arrays_and_symbols():
    G, A, w, L = sympy.symbols("G A w L", positive=True)
    stiffness = formulas.rectangle_shear_stiffness(shear_modulus=G, area=A)
    by_moment = formulas.simple_uniform_moment(line_load=w, span=L) / stiffness
    closed = formulas.simple_uniform_shear_deflection(line_load=w, span=L, shear_modulus=G, area=A)
    assert sympy.simplify(by_moment - closed) == 0
    assert formulas.rectangle_shear_stiffness(shear_modulus=6.0, area=numpy.array([2.0, 4.0])).tolist() == [10.0, 20.0]
