"""Fastening of plies, and the demands on hangers, posts and ends, worked by hand or by another method."""

from fractions import Fraction

import numpy
import pytest
import sympy

from structlib.ground.lumber import find_material
from structlib.ground.refusals import BadInput, OutsideRule
from structlib.ground.units import ft, inch, lb, plf, psi
from structlib.rules.choice import RULEBOOK
from structlib.rules.members import (
    Crossing,
    Fasteners,
    JointMember,
    PlyJointMember,
    SharedBeamMember,
    SharedDemand,
    SharedPiece,
    ask,
)
from structlib.rules.us import dowels, fastening, nailing_patterns

BEAM = {
    "plies": 2,
    "ply_width": 1.5 * inch,
    "depth": 9.25 * inch,
    "side_load": 400 * plf,
    "specific_gravity": 0.5,
    "fastener": dowels.nail("10d common"),
    "rows": 2,
}


@pytest.mark.parametrize("plies", [2, 3, 4, 5])
def test_load_from_one_side_falls_by_one_part_at_each_seam(plies):
    between = fastening.loads_between_plies([Fraction(1)] + [Fraction(0)] * (plies - 1))
    assert between == tuple(Fraction(plies - k, plies) for k in range(1, plies))
    assert fastening.load_to_pass(side_load=1.0, plies=plies) == pytest.approx(float(between[0]))


@pytest.mark.parametrize("loads", [[6.0, 0.0], [6.0, 0.0, 0.0], [4.0, 0.0, 1.0], [2.0, 0.0, 0.0, 5.0]])
def test_stiff_seams_between_beams_pass_the_same_load(loads):
    """Another method: plies as beams under a sine load, each tied to the next by springs that grow stiff."""
    count, tie = len(loads), 1e7
    stiffness = numpy.eye(count)
    for k in range(count - 1):
        stiffness[k : k + 2, k : k + 2] += tie * numpy.array([[1, -1], [-1, 1]])
    sag = numpy.linalg.solve(stiffness, loads)
    passed = tie * (sag[:-1] - sag[1:])
    assert fastening.loads_between_plies(loads) == pytest.approx(passed, rel=1e-5, abs=1e-5)


def test_load_to_pass_prints_itself():
    w, n = sympy.symbols("w n", positive=True)
    assert sympy.simplify(fastening.load_to_pass(side_load=w, plies=n) - w * (n - 1) / n) == 0


def test_a_two_ply_beam_worked_by_hand():
    """400 lb/ft on one side: 200 passes; 10d common in fir carries 118 lb (printed): two lines at 14 in."""
    found = fastening.ply_fastening(**BEAM)
    assert found.load_between == pytest.approx(200 * plf)
    assert found.value / lb == pytest.approx(118, abs=0.5)
    assert found.spacing_needed / inch == pytest.approx(12 * 2 * 118 / 200, abs=0.07)
    assert found.spacing == pytest.approx(14 * inch)
    assert found.line_gap == pytest.approx(9.25 / 2 * inch) and found.edge_distance == pytest.approx(9.25 / 4 * inch)
    assert found.checks[0].share == pytest.approx(14 / (12 * 2 * 118 / 200), abs=0.005)


def test_load_from_both_sides_passes_only_the_difference():
    both = fastening.ply_fastening(**{**BEAM, "plies": 3, "side_load": 500 * plf, "other_side_load": 200 * plf})
    # parts of 700/3 each: 500 - 233.3 passes in from the near side, 233.3 - 200 from the far side
    assert both.load_between == pytest.approx((500 - 700 / 3) * plf)
    with pytest.raises(BadInput, match="no load has to pass"):
        fastening.ply_fastening(**{**BEAM, "other_side_load": 400 * plf})


def test_snow_lets_the_nails_stand_wider_and_wet_wood_closer():
    heavy = {**BEAM, "side_load": 800 * plf}
    dry = fastening.ply_fastening(**heavy).spacing_needed
    assert fastening.ply_fastening(**heavy, time_factor=1.15).spacing_needed == pytest.approx(1.15 * dry)
    assert fastening.ply_fastening(**heavy, moisture="wet in service").spacing_needed == pytest.approx(0.7 * dry)


def test_light_load_stops_at_the_greatest_spacing_and_says_so():
    light = fastening.ply_fastening(**{**BEAM, "side_load": 40 * plf})
    assert light.spacing == pytest.approx(24 * inch) and light.verified == "common practice"


def test_a_spacing_is_never_wider_than_practice():
    """2 lines of 118 lb under 200 plf: 14.16 in by hand; under next to nothing, and nothing: 24 in."""
    found = [
        fastening.spacing_in_practice(value=118 * lb, load=load, lines=2) / inch
        for load in (200 * plf, 1 * plf, 1e-17, 0.0)
    ]
    assert found == pytest.approx([14.16, 24, 24, 24])
    with pytest.raises(BadInput):
        fastening.spacing_in_practice(value=118 * lb, load=-1.0)


def test_two_staggered_lines_of_bolts():
    half = {
        **BEAM,
        "plies": 3,
        "ply_width": 1.75 * inch,
        "depth": 11.875 * inch,
        "fastener": dowels.bolt(0.5 * inch),
        "side_load": 600 * plf,
    }
    found = fastening.ply_fastening(**half, staggered=True)
    # plies across the grain, 1 3/4 in each: mode II by hand, k1 = 2^0.5 - 1 (Fe 3150, R_d 4.5)
    assert found.value / lb == pytest.approx((2**0.5 - 1) * 0.5 * 1.75 * 3150 / 4.5, rel=1e-9)
    assert found.edge_distance >= 4 * 0.5 * inch
    with pytest.raises(OutsideRule, match="in line with the load"):
        fastening.ply_fastening(**half)
    with pytest.raises(OutsideRule, match="in line with the load"):
        fastening.ply_fastening(**{**half, "rows": 3}, staggered=True)
    # neighbours are half a spacing apart: (5 l + 10 D) / 8 = 1.72 in, so 3.44 in along one line
    with pytest.raises(OutsideRule, match="closer than the 3.44 in"):
        fastening.ply_fastening(**{**half, "side_load": 2800 * plf}, staggered=True)
    with pytest.raises(OutsideRule, match="count as one row"):
        fastening.ply_fastening(**{**half, "side_load": 1800 * plf, "depth": 24 * inch}, staggered=True)


def test_what_does_not_fit_the_depth_is_refused():
    with pytest.raises(OutsideRule, match="2 would fit"):
        fastening.ply_fastening(**{**BEAM, "depth": 3.5 * inch, "rows": 4, "side_load": 100 * plf})
    with pytest.raises(OutsideRule, match="of depth"):
        fastening.ply_fastening(**{**BEAM, "depth": 5.5 * inch, "fastener": dowels.bolt(0.75 * inch), "rows": 1})


def test_nails_that_would_split_the_wood_are_refused():
    with pytest.raises(OutsideRule, match="may split"):
        fastening.ply_fastening(**{**BEAM, "side_load": 4000 * plf})


def test_patterns_only_for_load_on_top():
    for one in nailing_patterns.top_loaded_patterns():
        assert one.nail in dowels.nail_names() and one.spacing > 0 and one.source


def test_ends_of_built_up_beams_by_the_fastening_schedule():
    """WAC 246-359-340 row 24: two 20d at the ends and splices; the thinner 10d box asks three (recalled)."""
    ends = {one.nail: one.pattern for one in nailing_patterns.top_loaded_patterns() if one.name.startswith("code")}
    assert "two nails at the ends" in ends["20d common"] and "three nails at the ends" in ends["10d box"]


def test_demands_take_the_greatest_push_and_pull():
    demand = fastening.connection_demand("strap", {"D": 500 * lb, "D + L": 1800 * lb, "0.6 D + 0.6 W": -700 * lb})
    assert (demand.down, demand.down_combination) == (1800 * lb, "D + L")
    assert (demand.up, demand.up_combination) == (700 * lb, "0.6 D + 0.6 W")
    assert "1,800 lb down and 700 lb up" in demand.sentence
    assert fastening.connection_demand("clip", {"D": 0.0}).sentence.startswith("no force")


def test_ends_and_post_tops_are_held():
    held = fastening.beam_end_restraint(depth=12 * inch, width=3 * inch, moment=8000 * lb * ft)
    # the upper half of a rectangle is pushed with 3 M / (2 d) = 12,000 lb; 2 percent of that
    assert held.force / lb == pytest.approx(240) and held.needed
    assert not fastening.beam_end_restraint(depth=3 * inch, width=3 * inch, moment=1.0).needed
    top = fastening.post_top_restraint(axial=6000 * lb)
    assert top.force / lb == pytest.approx(120) and top.verified == "common practice"


BAD_LAYOUTS = {
    "plies": [0, 1, 6, 2.5, "2", None, float("nan")],
    "ply_width": [0.0, -1.0, "1.5", float("inf")],
    "depth": [0.0, -5.0, 400 * ft, None],
    "side_load": [-1.0, float("nan"), "400 plf", []],
    "specific_gravity": [None, "fir", 0.0],
    "fastener": ["10d common", None, 3.8],
    "rows": [0, -1, 1.5, 9, "2", []],
    "other_side_load": [-1.0, None],
    "staggered": ["yes", 1],
    "time_factor": [0.0, 2.0, None],
    "moisture": ["damp", None],
}


@pytest.mark.parametrize("name, value", [(name, value) for name, values in BAD_LAYOUTS.items() for value in values])
def test_nonsense_in_a_layout_is_answered_with_one_sentence(name, value):
    with pytest.raises(BadInput) as caught:
        fastening.ply_fastening(**{**BEAM, name: value})
    assert "\n" not in str(caught.value)


@pytest.mark.parametrize(
    "ask",
    [
        lambda: fastening.loads_between_plies("ab"),
        lambda: fastening.loads_between_plies(5),
        lambda: fastening.loads_between_plies([]),
        lambda: fastening.loads_between_plies([1.0]),
        lambda: fastening.loads_between_plies([1.0] * 6),
        lambda: fastening.loads_between_plies([1.0, None]),
        lambda: fastening.load_to_pass(side_load=-1.0, plies=2),
        lambda: fastening.load_to_pass(side_load=1.0, plies=1),
        lambda: fastening.load_to_pass(side_load=1.0, plies=2.5),
        lambda: fastening.connection_demand("nail plate", {"D": 1.0}),
        lambda: fastening.connection_demand("hanger", {}),
        lambda: fastening.connection_demand("hanger", [1.0]),
        lambda: fastening.connection_demand("hanger", {1: 1.0}),
        lambda: fastening.connection_demand("hanger", {"D": "2000 lb"}),
        lambda: fastening.connection_demand("hanger", {"D": float("nan")}),
        lambda: fastening.beam_end_restraint(depth=0.0, width=1.0, moment=1.0),
        lambda: fastening.beam_end_restraint(depth=9.0, width=1.0, moment=-1.0),
        lambda: fastening.post_top_restraint(axial=float("inf")),
        lambda: fastening.post_top_restraint(axial=-5.0),
    ],
)
def test_other_nonsense_is_answered_with_one_sentence(ask):
    with pytest.raises(BadInput) as caught:
        ask()
    assert "\n" not in str(caught.value)


# ---- the same by kind of member ----

LIVE, SNOW = (next(one for one in RULEBOOK.combinations({kind}) if one.factor(kind)) for kind in ("live", "snow"))


def test_a_joint_is_judged_by_its_spacing_along_it_and_by_its_count_for_a_force():
    """One 16d common nail in 1 1/2 in of Douglas Fir-Larch: mode IV of the yield equations, d2 / K_D sqrt(2 F_e F_yb / (3 x 2)), in pounds."""
    bearing = round(16_600 * 0.5**1.84 / 50) * 50
    nail = 0.162**2 / 2.2 * (2 * bearing * 90_000 / (3 * 2)) ** 0.5
    stands = Fasteners("nail", "16d common", lines=2, spacing=6 * inch, count=8)
    joint = JointMember(stands, 5.5 * inch, 1.5 * inch, 0.5, 0.5)
    asked = tuple(Crossing(one, line_load=load * plf, force=4 * load * lb) for one, load in ((LIVE, 300), (SNOW, 320)))
    along, force = RULEBOOK.checks(joint, asked)
    # snow lasts two months: the nail is worth 1.15 of that, and 300 under live load asks more
    assert along.given / plf == pytest.approx(nail * 2 * 2, rel=1e-3) and along.asked / plf == pytest.approx(300)
    assert force.given / lb == pytest.approx(8 * nail, rel=1e-3) and force.combination == LIVE.name
    found = ask(RULEBOOK, "fastening", joint, asked[0])
    assert found.spacing / inch == pytest.approx(2 * nail / 300 * 12, rel=1e-3) and found.mode == "IV"


def test_plies_by_kind_are_laid_out_for_the_combination_that_asks_most():
    wood = find_material("Douglas Fir-Larch", "No.2")
    joint = PlyJointMember(wood, 1.5 * inch, 9.25 * inch, 2, Fasteners("nail", "10d common", 2))
    asked = (Crossing(LIVE, line_load=400 * plf), Crossing(SNOW, line_load=440 * plf))
    assert ask(RULEBOOK, "joined_plies", joint, asked) == fastening.ply_fastening(**BEAM, combination=LIVE.name)
    assert RULEBOOK.checks(joint, asked)[0].asked / plf == pytest.approx(200)
    assert ask(RULEBOOK, "joined_plies", joint, ()) is None and RULEBOOK.checks(joint, ()) == ()


def test_each_piece_of_a_shared_beam_has_its_own_stress_and_all_have_one_sag():
    """Douglas Fir-Larch No.2, 2x10: 900 psi x 1.1 for its size; snow counts 1.15 of it. Sag of a floor: span over 360."""
    wood = find_material("Douglas Fir-Larch", "No.2", "2x10")
    pieces = (
        SharedPiece("old plies", wood, 1.5 * inch, 9.25 * inch, 2),
        SharedPiece("a sister's end", wood, 1.5 * inch, 9.25 * inch),
    )
    asked = [
        SharedDemand(one, (stress * psi, None), 12 * ft, 6 * ft, 0.3 * inch, (None, 90 * psi))
        for one, stress in ((LIVE, 880), (SNOW, 940))
    ]
    bent, sheared, sag = RULEBOOK.checks(SharedBeamMember(pieces), tuple(asked))
    assert bent.share == pytest.approx(880 / 990) and bent.combination == LIVE.name
    assert sheared.share == pytest.approx(90 / 180) and sheared.kind == "shear"
    assert sag.share == pytest.approx(0.3 / (144 / 360))
