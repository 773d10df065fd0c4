"""Temporary walls and jacks against a general finite-element library (PyNite)."""

import pytest
from small_houses import joist_out

from structlib.mechanics import jacking, shoring
from structlib.mechanics.beams import Beam, LineLoad, Support, solve

Pynite = pytest.importorskip("Pynite")

MODULUS, INERTIA = 10_000.0, 1.2e8
CLOSE = 1e-6


def frame(length, held, even, points=()):
    """Pushes of held places {place: settlement}, of a beam in that library, with an even load and points."""
    model = Pynite.FEModel3D()
    places = sorted({0.0, length, *held})
    for place in places:
        model.add_node(f"at {place}", place, 0, 0)
    model.add_material("wood", MODULUS, MODULUS / 16, 0.3, 0.0)
    model.add_section("section", 1e4, 1e8, INERTIA, 1e8)
    model.add_member("beam", f"at {places[0]}", f"at {places[-1]}", "wood", "section")
    for place in places:
        first = place == places[0]
        model.def_support(f"at {place}", first, place in held, True, first, True, False)
        if held.get(place):
            model.def_node_disp(f"at {place}", "DY", -held[place])
    model.add_member_dist_load("beam", "Fy", -even, -even, 0.0, length)
    for place, force in points:
        model.add_member_pt_load("beam", "Fy", -force, place)
    model.analyze(check_statics=False)
    return model


@pytest.mark.parametrize("offset", [300.0, 700.0, 1500.0])
@pytest.mark.parametrize("end_load", [0.0, 9000.0])
def test_cut_joists_and_an_outside_wall(offset, end_load):
    span, load = 3600.0, 1.8
    model = frame(span, {0.0: 0.0, span - offset: 0.0}, load, [(span, end_load)])
    given = dict(line_load=load, span=span, offset=offset, tip_load=end_load)
    push = model.nodes[f"at {span - offset}"].RxnFY["Combo 1"]
    assert shoring.temporary_wall_reaction(**given) == pytest.approx(push, rel=CLOSE)
    far = model.nodes["at 0.0"].RxnFY["Combo 1"]
    assert shoring.far_wall_reaction(**given) == pytest.approx(far, rel=CLOSE, abs=1e-3)
    tip = -model.nodes[f"at {span}"].DY["Combo 1"]
    out = joist_out(way="cut", span=span, offset=offset, lasting=load, end_load=end_load, stiffness=MODULUS * INERTIA)
    assert out.full == pytest.approx([far, push], rel=CLOSE, abs=1e-3)
    assert out.joist.full.deflection(span) == pytest.approx(tip, rel=CLOSE, abs=1e-9)


@pytest.mark.parametrize("offset", [300.0, 700.0, 1500.0])
@pytest.mark.parametrize("middle_load", [0.0, 9000.0])
def test_joists_in_one_piece(offset, middle_load):
    span, load = 3600.0, 1.8
    held = dict.fromkeys((0.0, span - offset, span + offset, 2 * span), 0.0)
    model = frame(2 * span, held, load, [(span, middle_load)])
    out = joist_out(way="continuous", span=span, offset=offset, lasting=load, end_load=middle_load)
    push = model.nodes[f"at {span - offset}"].RxnFY["Combo 1"]
    far = model.nodes["at 0.0"].RxnFY["Combo 1"]
    assert out.full == pytest.approx([far, push, push, far], rel=CLOSE, abs=1e-3)
    moment = -model.members["beam"].moment("Mz", span - offset)
    assert out.joist.full.moment(span - offset) == pytest.approx(moment, rel=1e-5)


def test_a_jack_beside_an_old_post_before_and_after_it_lets_go():
    supports = [Support(0.0), Support(4000.0), Support(8000.0)]
    beam = Beam(8000.0, MODULUS * INERTIA, supports, [LineLoad(0.0, 8000.0, 5.0)])
    curve = jacking.jack_curve(beam, jack_position=4400.0, most_lift=60.0)
    off = curve.lift_off(1)
    hung = solve(beam).deflection(4400.0)
    for lift in (0.25 * off, 0.9 * off, off, 1.5 * off, 40.0):
        held = {0.0: 0.0, 4400.0: hung - lift, 8000.0: 0.0}
        if lift < off:
            held[4000.0] = 0.0
        model = frame(8000.0, held, 5.0)
        assert curve.force(lift) == pytest.approx(model.nodes["at 4400.0"].RxnFY["Combo 1"], rel=1e-5), lift
        if lift < off:
            left = model.nodes["at 4000.0"].RxnFY["Combo 1"]
            assert curve.reaction(1, lift) == pytest.approx(left, rel=1e-4, abs=0.05)
        else:  # the member must be above its old post
            above = -model.members["beam"].deflection("dy", 4000.0)
            assert above <= 1e-3
