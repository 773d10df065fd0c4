"""Arrangements of live load and tapered members by other libraries: PyNite and scipy."""

from itertools import product

import numpy
import pytest

from structlib.mechanics.beams import Beam, LineLoad, PointLoad, Support
from structlib.mechanics.patterns import solve_arrangements, span_loads, stretches
from structlib.mechanics.tapered import TaperedMember, tapered_simple

MODULUS, INERTIA = 10_000.0, 2.0e8


def _finite_elements(length, places, line_loads, tip_load):
    Pynite = pytest.importorskip("Pynite")
    model = Pynite.FEModel3D()
    nodes = sorted({*places, length})
    for place in nodes:
        model.add_node(f"at {place}", place, 0, 0)
        first = place == nodes[0]
        model.def_support(f"at {place}", first, place in places, True, first, True, False)
    model.add_material("wood", MODULUS, MODULUS / 16, 0.3, 0.0)
    model.add_section("section", 1e4, 1e8, INERTIA, 1e8)
    model.add_member("beam", f"at {nodes[0]}", f"at {nodes[-1]}", "wood", "section")
    for start, end, load in line_loads:
        model.add_member_dist_load("beam", "Fy", -load, -load, start, end)
    if tip_load:
        model.add_member_pt_load("beam", "Fy", -tip_load, length)
    model.analyze(check_statics=False)
    return model


@pytest.mark.parametrize(
    ("places", "length"),
    [((0.0, 3600.0), 4500.0), ((0.0, 3600.0, 7200.0), 7200.0), ((0.0, 3000.0, 7000.0, 10_000.0), 10_900.0)],
)
def test_every_arrangement_as_finite_elements_find_it(places, length):
    dead, live, tip = 2.0, 5.0, 3000.0 if length > places[-1] else 0.0
    supports = tuple(Support(place) for place in places)
    beam = Beam(length, MODULUS * INERTIA, supports, (LineLoad(0.0, length, dead), PointLoad(length, tip)))
    found = solve_arrangements(beam, span_loads(supports, length, live))
    parts = stretches(supports, length)
    pushes, moments = [], []
    for on in product((False, True), repeat=len(parts)):
        loads = [(start, end, dead + (live if there else 0.0)) for (start, end), there in zip(parts, on)]
        model = _finite_elements(length, places, loads, tip)
        pushes.append([model.nodes[f"at {place}"].RxnFY["Combo 1"] for place in places])
        ours = [reaction.force for reaction in found.case(on).reactions]
        assert ours == pytest.approx(pushes[-1], rel=1e-8, abs=1e-4)
        member = model.members["beam"]
        moments.append([member.moment("Mz", x) for x in numpy.linspace(1.0, length - 1.0, 23)])
    pushes = numpy.array(pushes)
    for number in range(len(places)):
        assert found.greatest_reaction(number).value == pytest.approx(pushes[:, number].max(), rel=1e-8)
        assert found.least_reaction(number).value == pytest.approx(pushes[:, number].min(), rel=1e-8, abs=1e-4)
    least, most = found.moments(numpy.linspace(1.0, length - 1.0, 23))
    moments = numpy.array(moments)
    sign = numpy.sign(
        moments[-1][11] * found.case((True,) * len(parts)).moment(float(numpy.linspace(1.0, length - 1.0, 23)[11]))
    )
    low, high = (moments.min(axis=0), moments.max(axis=0)) if sign > 0 else (-moments.max(axis=0), -moments.min(axis=0))
    scale = abs(moments).max()
    assert least == pytest.approx(low, abs=1e-7 * scale) and most == pytest.approx(high, abs=1e-7 * scale)


TAPERS = [(140.0, 235.0), (235.0, 140.0), (60.0, 600.0), (200.0, 200.0)]


@pytest.mark.parametrize(("start", "end"), TAPERS)
@pytest.mark.parametrize(
    "loads",
    [
        dict(line_load=3.0),
        dict(point_load=2000.0, load_position=1300.0),
        dict(line_load=1.5, point_load=900.0, load_position=3000.0),
    ],
)
def test_a_tapered_span_as_scipy_integrates_and_searches(start, end, loads):
    scipy_integrate = pytest.importorskip("scipy.integrate")
    scipy_optimize = pytest.importorskip("scipy.optimize")
    length, width, modulus = 4000.0, 76.0, 11_000.0
    w, force, place = (
        loads.get("line_load", 0.0),
        loads.get("point_load", 0.0),
        loads.get("load_position", 0.0),
    )
    found = tapered_simple(TaperedMember(length, width, start, end, modulus), **loads)

    def moment(x):
        left = w * length / 2 + force * (length - place) / length
        return left * x - w * x**2 / 2 - force * max(0.0, x - place)

    def depth(x):
        return start + (end - start) * x / length

    def stress(x):
        return moment(x) * 6 / (width * depth(x) ** 2)

    def right_side(x, y):
        return [y[1], -moment(x) / (modulus * width * depth(x) ** 3 / 12)]

    def shoot(slope, at=None):
        cuts = [0.0, *([place] if force else []), length]
        state, kept = [0.0, slope], []
        for a, b in zip(cuts, cuts[1:]):
            run = scipy_integrate.solve_ivp(
                right_side, (a, b), state, rtol=1e-11, atol=1e-13, method="DOP853", dense_output=True
            )
            state = run.y[:, -1]
            kept.append((a, b, run.sol))
        return state[0], kept

    # the end deflection is linear in the starting slope
    zero, one = shoot(0.0)[0], shoot(1.0)[0]
    _, kept = shoot(-zero / (one - zero))
    lowest = max(
        -scipy_optimize.minimize_scalar(
            lambda x: -float(sol(x)[0]), bounds=(a, b), method="bounded", options={"xatol": 1e-9}
        ).fun
        for a, b, sol in kept
    )
    assert found.deflection == pytest.approx(lowest, rel=2e-8)
    cuts = [0.0, *([place] if force else []), length]
    worst = max(
        -scipy_optimize.minimize_scalar(
            lambda x: -stress(x), bounds=(a, b), method="bounded", options={"xatol": 1e-9}
        ).fun
        for a, b in zip(cuts, cuts[1:])
    )
    assert found.stress == pytest.approx(worst, rel=1e-6)
    assert found.stress == pytest.approx(stress(found.stress_place), rel=1e-12)
