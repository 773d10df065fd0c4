"""The plane-frame solver and the closed forms of rafter pairs against a general finite-element library
(PyNite)."""

import numpy
import pytest

from structlib.ground.units import ft, inch, psf, psi
from structlib.mechanics.plane_frame import Bar, Joint, JointLoad, PlaneFrame, solve_frame
from structlib.mechanics.rafter_pair import rafter_pair

Pynite = pytest.importorskip("Pynite")

CLOSE = 1e-9  # of the largest value of each quantity
MODULUS = 1.6e6 * psi
RAFTER = dict(axial_stiffness=MODULUS * 10.875 * inch**2, bending_stiffness=MODULUS * 47.63 * inch**4)
PAIR = dict(building_span=24 * ft, rise=6 * ft)
SNOW, LIGHT = 50 * psf * 16 * inch, 20 * psf * 16 * inch


def _finite_elements(frame):
    """The same frame there; a joint that slips becomes a short spring between two nodes in one place."""
    model = Pynite.FEModel3D()
    model.add_material("unit", 1.0, 0.4, 0.3, 0.0)
    for name, joint in frame.joints.items():
        model.add_node(name, joint.x, joint.y, 0)
        used = {end for bar in frame.bars.values() for end in (bar.start, bar.end) if not _hinged(bar, end)}
        turn_held = "t" in joint.held or name not in used
        model.def_support(name, "x" in joint.held, "y" in joint.held, True, True, True, turn_held)
        if joint.spring_x:
            model.def_support_spring(name, "DX", joint.spring_x)
        if joint.spring_y:
            model.def_support_spring(name, "DY", joint.spring_y)
    for name, bar in frame.bars.items():
        length = frame.length(name)
        yielding = 1 / bar.slip_start + length / bar.axial_stiffness + 1 / bar.slip_end
        model.add_section(name, length / yielding, 1.0, bar.bending_stiffness, 1.0)  # bars with slip carry no load
        model.add_member(name, bar.start, bar.end, "unit", name)
        start, end = bar.hinges in ("start", "both"), bar.hinges in ("end", "both")
        model.def_releases(name, Rzi=start, Rzj=end)
        down = bar.plan_load * abs(frame.run(name)[0]) / length + bar.along_load
        if down:
            model.add_member_dist_load(name, "FY", -down, -down)
    for load in frame.loads:
        model.add_node_load(load.joint, "FX", load.right)
        model.add_node_load(load.joint, "FY", -load.down)
        model.add_node_load(load.joint, "MZ", load.turn)
    model.analyze(check_statics=False)
    return model


def _hinged(bar, joint):
    return (joint == bar.start and bar.hinges in ("start", "both")) or (
        joint == bar.end and bar.hinges in ("end", "both")
    )


def _braced_shed():
    """A lean-to with a knee brace, a spring footing and a fixed foot."""
    stiff = dict(axial_stiffness=2e7, bending_stiffness=3e11)
    joints = {
        "foot": Joint(0.0, 0.0, "xyt"),
        "head": Joint(0.0, 2400.0),
        "knee": Joint(0.0, 1500.0),
        "meet": Joint(900.0, 2700.0),
        "low": Joint(4000.0, 0.0, "x", spring_y=900.0),
        "far": Joint(4000.0, 3600.0),
    }
    bars = {
        "post 1": Bar("foot", "knee", **stiff, along_load=0.1),
        "post 2": Bar("knee", "head", **stiff, along_load=0.1),
        "beam 1": Bar("head", "meet", **stiff, plan_load=1.3, hinges="start"),
        "beam 2": Bar("meet", "far", **stiff, plan_load=2.1),
        "brace": Bar("knee", "meet", **stiff, hinges="both"),
        "leg": Bar("far", "low", **stiff, hinges="end", along_load=0.2),
    }
    return PlaneFrame(joints, bars, [JointLoad("far", right=700.0, down=300.0), JointLoad("meet", turn=2e5)])


CASES = {
    "tie at the eave": rafter_pair(**PAIR, left_load=SNOW, right_load=SNOW, **RAFTER),
    "tie a third up": rafter_pair(**PAIR, left_load=SNOW, right_load=SNOW, height_fraction=1 / 3, **RAFTER),
    "tie a quarter up, snow on one side": rafter_pair(
        **PAIR, left_load=SNOW, right_load=LIGHT, height_fraction=0.25, **RAFTER
    ),
    "tie with slipping joints": rafter_pair(
        **PAIR, left_load=SNOW, right_load=SNOW, height_fraction=0.2, tie_slip_stiffness=3500.0, **RAFTER
    ),
    "tie and collar tie": rafter_pair(
        **PAIR, left_load=SNOW, right_load=LIGHT, collar_fraction=0.7, tie_slip_stiffness=3500.0, **RAFTER
    ),
    "ridge beam": rafter_pair(**PAIR, left_load=SNOW, right_load=LIGHT, held_by="ridge beam", **RAFTER),
    "stiff peak": rafter_pair(**PAIR, left_load=SNOW, right_load=LIGHT, held_by="stiff peak", **RAFTER),
    "walls that hold": rafter_pair(**PAIR, left_load=SNOW, right_load=LIGHT, held_by="walls", **RAFTER),
    "braced shed": _braced_shed(),
}


@pytest.mark.parametrize("name", CASES)
def test_frame_equals_finite_elements(name):
    frame = CASES[name]
    solved, model = solve_frame(frame), _finite_elements(frame)
    pairs = {"axial": [], "shear": [], "moment": [], "move": [], "turn": [], "reaction": []}
    for bar in frame.bars:
        member, length = model.members[bar], frame.length(bar)
        cosine, sine = frame.direction(bar)
        left = float(numpy.dot(member.T()[1, :2], (-sine, cosine)))  # its own y always leans up; -1 if that is right
        assert abs(left) == pytest.approx(1.0)
        for share in (0.013, 0.31, 0.5, 0.77, 0.985):
            place = share * length
            pairs["axial"].append((solved.axial(bar, share), -member.axial(place)))  # there, tension is negative
            pairs["shear"].append((solved.shear(bar, share), left * member.shear("Fy", place)))
            pairs["moment"].append((solved.moment(bar, share), -left * member.moment("Mz", place)))
    for joint in frame.joints:
        node = model.nodes[joint]
        right, up, turn = solved.move(joint)
        pairs["move"] += [(right, node.DX["Combo 1"]), (up, node.DY["Combo 1"])]
        if any(not _hinged(bar, joint) for bar in frame.bars.values() if joint in (bar.start, bar.end)):
            pairs["turn"].append((turn, node.RZ["Combo 1"]))
        if joint in solved.reactions:
            given = solved.reactions[joint]
            pairs["reaction"] += [(given.right, node.RxnFX["Combo 1"]), (given.up, node.RxnFY["Combo 1"])]
    for quantity, found in pairs.items():
        ours, theirs = numpy.array(found).T
        assert ours == pytest.approx(theirs, rel=CLOSE, abs=CLOSE * abs(theirs).max() + 1e-9), quantity


def test_shape_between_joints_equals_finite_elements_cut_in_pieces():
    """The bent line of a rafter with a tie a third up, against a model with the rafter cut into twelve."""
    frame = CASES["tie a third up"]
    solved = solve_frame(frame)
    bar, pieces = frame.bars["left rafter 2"], 12
    start, end = frame.joints[bar.start], frame.joints[bar.end]
    joints, bars = dict(frame.joints), {n: b for n, b in frame.bars.items() if n != "left rafter 2"}
    names = [bar.start, *(f"cut {i}" for i in range(1, pieces)), bar.end]
    for i in range(1, pieces):
        share = i / pieces
        joints[f"cut {i}"] = Joint(start.x + share * (end.x - start.x), start.y + share * (end.y - start.y))
    for i in range(pieces):
        bars[f"piece {i}"] = Bar(
            names[i],
            names[i + 1],
            axial_stiffness=bar.axial_stiffness,
            bending_stiffness=bar.bending_stiffness,
            plan_load=bar.plan_load,
        )
    model = _finite_elements(PlaneFrame(joints, bars))
    for i in range(1, pieces):
        node = model.nodes[f"cut {i}"]
        expected = (node.DX["Combo 1"], node.DY["Combo 1"])
        assert solved.shape("left rafter 2", i / pieces) == pytest.approx(expected, rel=1e-6, abs=1e-6)
