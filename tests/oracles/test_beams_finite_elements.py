"""The solver against a general finite-element library (PyNite), point by point."""

import pytest

from structlib.mechanics.beams import Beam, Couple, LineLoad, PointLoad, Support, solve

Pynite = pytest.importorskip("Pynite")

CLOSE = 1e-8  # of the largest value of each quantity
MODULUS, INERTIA = 10_000.0, 2.0e8


def _finite_elements(beam):
    model = Pynite.FEModel3D()
    places = sorted({0.0, beam.length, *(support.position for support in beam.supports)})
    for place in places:
        model.add_node(f"at {place}", place, 0, 0)
    model.add_material("wood", MODULUS, MODULUS / 16, 0.3, 0.0)
    model.add_section("section", 1e4, 1e8, INERTIA, 1e8)
    model.add_member("beam", f"at {places[0]}", f"at {places[-1]}", "wood", "section")
    for place in places:
        support = next((s for s in beam.supports if s.position == place), None)
        held, built_in = support is not None, support is not None and support.kind == "fixed"
        stops = held and support.kind != "spring"
        first = place == places[0]
        model.def_support(f"at {place}", first, stops, True, first, True, built_in)
        if held and support.kind == "spring":
            model.def_support_spring(f"at {place}", "DY", support.stiffness)
        if held and support.settlement:
            model.def_node_disp(f"at {place}", "DY", -support.settlement)
    for load in beam.loads:
        if isinstance(load, PointLoad):
            model.add_member_pt_load("beam", "Fy", -load.force, load.position)
        elif isinstance(load, Couple):
            model.add_member_pt_load("beam", "Mz", -load.moment, load.position)
        else:
            final = load.intensity if load.end_intensity is None else load.end_intensity
            model.add_member_dist_load("beam", "Fy", -load.intensity, -final, load.start, load.end)
    model.analyze(check_statics=False)
    return model


CASES = {
    "two spans with a patch load": Beam(
        8000.0,
        MODULUS * INERTIA,
        [Support(0.0), Support(4000.0), Support(8000.0)],
        [LineLoad(0.0, 8000.0, 3.0), LineLoad(1000.0, 3000.0, 5.0)],
    ),
    "three spans, a settlement and an overhang": Beam(
        12000.0,
        MODULUS * INERTIA,
        [Support(0.0), Support(4000.0, settlement=5.0), Support(7000.0), Support(11000.0)],
        [LineLoad(0.0, 12000.0, 3.0), PointLoad(12000.0, 2000.0), LineLoad(1000.0, 3000.0, 2.0, 6.0)],
    ),
    "a wall, a spring and a couple": Beam(
        6000.0,
        MODULUS * INERTIA,
        [Support(0.0, kind="fixed"), Support(4000.0, kind="spring", stiffness=700.0)],
        [PointLoad(2500.0, 9000.0), Couple(5000.0, 3e6), LineLoad(0.0, 6000.0, 1.5)],
    ),
}


@pytest.mark.parametrize("name", CASES)
def test_solver_equals_finite_elements(name):
    beam = CASES[name]
    solution, model = solve(beam), _finite_elements(beam)
    member = model.members["beam"]
    places = [beam.length * (i + 0.37) / 23 for i in range(23)]
    quantities = {
        "shear": [member.shear("Fy", x) for x in places],
        "moment": [-member.moment("Mz", x) for x in places],  # there, sagging is negative
        "deflection": [-member.deflection("dy", x) for x in places],
    }
    for quantity, expected in quantities.items():
        found = [getattr(solution, quantity)(x) for x in places]
        size = max(map(abs, expected))
        assert found == pytest.approx(expected, rel=CLOSE, abs=CLOSE * size), quantity
    for reaction in solution.reactions:
        node = model.nodes[f"at {reaction.position}"]
        assert reaction.force == pytest.approx(node.RxnFY["Combo 1"], rel=CLOSE, abs=1e-6)
