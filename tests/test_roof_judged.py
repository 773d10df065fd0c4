"""A roof of a house under a rulebook: rafters, tie, joint, ridge board and ridge beam, by hand in pounds, feet and inches."""

import math

import pytest
from dummy_rulebook import DUMMY

from structlib.ground.refusals import BadInput
from structlib.ground.units import ft, inch, lb, psf, psi
from structlib.house.asked_roof import one_slope_snow
from structlib.house.file import demo_house
from structlib.house.judging import judge_element
from structlib.house.path import follow
from structlib.house.plan import Beam, Board, House, Joists, Layer, Level, Post, Tie, Wall, Wood, with_changes
from structlib.rules.choice import RULEBOOK
from structlib.rules.members import RafterMember, RidgeBoardMember, TieJointMember, TieMember

FIR = dict(species="Douglas Fir-Larch", grade="No.2")
SLOPE = math.hypot(12, 6)


def house(**changes):
    """24 ft wide, 6 in 12, 2x8 rafters every 16 in with their weight in 15 psf on plan, 30 psf of snow, a 2x6 tie."""
    roof = dict(
        name="roof",
        kind="roof",
        on=("west", "east"),
        start=0.0,
        end=12 * ft,
        slope=(6.0, 12.0),
        snow=30 * psf,
        roof_live=0.0,
        ground_snow=40 * psf,
        tie=Tie(**FIR, size="2x6"),
        tie_nails=9,
        layers=(Layer(name="all of it", weight=15 * psf * 12 / SLOPE),),
        joist=Joists(**FIR, size="2x8", spacing=16 * inch, weighed=False),
    )
    walls = tuple(
        Wall(name=name, on=("soil",), at=at * ft, start=0.0, end=12 * ft, height=8 * ft, weight=0.0)
        for name, at in (("west", 0), ("east", 24))
    )
    return House(name="roof", levels=(Level(**{**roof, **changes}),), walls=walls)


def judged(rulebook=RULEBOOK, **changes):
    return judge_element(follow(house(**changes)), "roof", rulebook)


def answers(found, kind):
    return [one for one in found.answers if isinstance(one.member, kind)]


def strength(line, push, moment, length=SLOPE):
    """NDS 2018 3.9.2 of a 2x8 under snow, pounds and feet: the share by hand."""
    pressed, bent = push / (1.5 * 7.25), moment * 12 / (1.5 * 7.25**2 / 6)
    crush, buckle = 1350 * 1.05 * 1.15, 0.822 * 580e3 / (length * 12 / 7.25) ** 2
    middle = (1 + buckle / crush) / 1.6
    allowed = crush * (middle - math.sqrt(middle**2 - buckle / crush / 0.8))
    return (pressed / allowed) ** 2 + bent / (900 * 1.2 * 1.15 * 1.15 * (1 - pressed / buckle))


def test_a_tied_pair_by_hand():
    found = judged()
    line = 45 * 16 / 12
    pull = line * 24**2 / (8 * 6)
    (rafter,) = answers(found, RafterMember)  # both are asked the same, so they are one member
    checks = {check.kind: check for check in rafter.checks}
    push = pull * 12 / SLOPE + line * 12 * 6 / SLOPE
    assert checks["bending"].share == pytest.approx(strength(line, push, line * 12**2 / 8), rel=1e-6)
    assert checks["shear"].asked / psi == pytest.approx(1.5 * line * 6 * 12 / SLOPE / (1.5 * 7.25))
    across = 30 * 16 / 12 / 12 * (12 / SLOPE) ** 2
    sag = 5 * across * (SLOPE * 12) ** 4 / (384 * 1.6e6 * 1.5 * 7.25**3 / 12)
    assert checks["sag"].asked / inch == pytest.approx(sag) and checks["sag"].combination == "snow"
    (tie,) = answers(found, TieMember)
    assert tie.checks[0].asked / psi == pytest.approx(pull / (1.5 * 5.5))
    assert tie.checks[0].given / psi == pytest.approx(575 * 1.3 * 1.15)
    (joint,) = answers(found, TieJointMember)
    assert joint.demands[-1].force / lb == pytest.approx(pull) and joint.checks[0].given == 9.0
    assert not found.gates and any("40 psf on one slope and 0 psf on the other" in note for note in found.notes)


def test_ties_too_thin_or_too_far_apart_are_over_the_code_s_limit_and_those_within_it_are_asked_for_their_pull_alone():
    kinds = lambda tie: [check.kind for check in answers(judged(tie=tie), TieMember)[0].checks]  # noqa: E731
    assert kinds(Tie(**FIR, size="2x4", spacing=24 * inch)) == ["tie"]
    far = answers(judged(tie=Tie(**FIR, size="2x6", spacing=32 * inch)), TieMember)[0].checks
    assert [check.kind for check in far] == ["size", "tie"]
    assert far[0].share == pytest.approx(32 / 24) and "spacing" in far[0].name  # IRC R802.5.2.2: 24 in
    low = answers(judged(tie=Tie(**FIR, size="2x3")), TieMember)[0].checks[0]
    assert low.share == pytest.approx(3.5 / 2.5) and "depth" in low.name  # 2x4 at least


def test_a_raised_tie_bends_the_rafter_more_and_is_pulled_more():
    (rafter,) = answers(judged(tie=Tie(**FIR, size="2x6", height=0.25)), RafterMember)
    most = next(one for one in rafter.demands if one.combination.name == "D + S")
    assert most.moment / (lb * ft) == pytest.approx(60 * 12**2 / 8 / 0.75**2)


def test_an_uneven_roof_has_two_rafters_and_no_count_of_nails():
    found = judged(ridge_at=8 * ft)
    left, right = answers(found, RafterMember)
    # 4 ft of rise: the layers weigh 15 psf x 12 / 13.4 on each slope
    for one, run in ((left, 8), (right, 16)):
        length = math.hypot(run, 4)
        dead = 15 * 12 / SLOPE * length / run
        assert one.member.length / ft == pytest.approx(length) and one.member.rise == pytest.approx(48 / run)
        asked = next(each for each in one.demands if each.combination.name == "D + S")
        assert asked.moment / (lb * ft) == pytest.approx((dead + 30) * 16 / 12 * run**2 / 8)
    assert not answers(found, TieJointMember) and any("not in the middle" in note for note in found.notes)


def test_snow_on_one_slope_is_the_house_followed_again():
    path = follow(house())
    (left, right), blown = one_slope_snow(path.element("roof"), RULEBOOK)
    assert (blown.leeward / psf, blown.windward) == (pytest.approx(40), 0.0)
    for fields in (left, right):
        again = follow(with_changes(house(), {"roof": fields}))
        found = judge_element(again, "roof", RULEBOOK)
        loaded = max(
            (one for one in answers(found, RafterMember)), key=lambda one: max(each.moment for each in one.demands)
        )
        most = max(loaded.demands, key=lambda each: each.moment)
        assert (
            most.moment / (lb * ft) == pytest.approx(55 * 16 / 12 * 12**2 / 8)
            and len(answers(found, RafterMember)) == 2
        )
        assert answers(found, TieMember)[0].demands[-1].force / lb == pytest.approx(560)


def lean_to(**changes):
    """12 ft between a wall and a higher one under the ridge end, all else as the pair."""
    return judged(on=("west", "east"), ridge="beam", tie=None, tie_nails=None, **changes)


def test_the_rafters_of_one_slope_by_hand():
    """24 ft, 3 in 12 under the same loads: a simple beam on its slope, pressed at its eave by w L / 2 x sin."""
    slant = math.hypot(12, 3) / 12
    found = lean_to(slope=(3.0, 12.0), layers=(Layer(name="all of it", weight=15 * psf / slant),))
    (rafter,) = answers(found, RafterMember)
    line, most = 45 * 16 / 12, next(one for one in rafter.demands if one.combination.name == "D + S")
    assert rafter.member.length / ft == pytest.approx(24 * slant) and rafter.member.rise == pytest.approx(3.0)
    assert most.moment / (lb * ft) == pytest.approx(line * 24**2 / 8) and most.moment_at == pytest.approx(0.5)
    assert most.shear / lb == pytest.approx(line * 12 / slant)
    assert most.axial / lb == pytest.approx(line * 12 * 0.25 / slant)
    sag = 5 * (30 * 16 / 12 / 12 / slant**2) * (24 * 12 * slant) ** 4 / (384 * 1.6e6 * 1.5 * 7.25**3 / 12)
    assert most.sag / inch == pytest.approx(sag)
    assert {one.kind for one in rafter.checks} == {"bending", "shear", "sag"} and not found.gates
    assert found.refused == (
        "roof has one slope or none: its rafters are judged as simple beams, and their seats are not judged",
    )


def test_the_rafters_of_a_flat_roof_by_hand_with_a_tail():
    """24 ft flat and a tail of 4 ft: snow everywhere bends it over the wall, snow without the tail bends its span."""
    found = lean_to(slope=(0.0, 12.0), right_overhang=4 * ft, layers=())
    (rafter,) = answers(found, RafterMember)
    most = next(one for one in rafter.demands if one.combination.name == "D + S")
    assert most.moment / (lb * ft) == pytest.approx(40 * 24**2 / 8) and most.axial == 0.0
    assert most.shear / lb == pytest.approx(40 * 12 + 40 * 4 * 2 / 24)
    # nothing presses it along: what is left of 3.9.2 is bending alone
    (bent,) = (check for check in rafter.checks if check.kind == "bending")
    stress = 40 * 24**2 / 8 * 12 / (1.5 * 7.25**2 / 6)
    assert bent.share == pytest.approx(stress / (900 * 1.2 * 1.15 * 1.15), rel=1e-6)
    # a floor of snow on 6 ft of tail against 7 ft of span: 40 x 6 x 6 / 2 is more than 40 x 7 x 7 / 8
    near = with_changes(house(on=("west", "east"), ridge="beam", tie=None, tie_nails=None, slope=(0.0, 12.0), layers=(),
                              right_overhang=6 * ft), {"east": {"at": 7 * ft}})  # fmt: skip
    found = judge_element(follow(near), "roof", RULEBOOK)
    assert not found.answers and "a tail bends the rafters more over what holds them" in found.refused[0]


def test_gates_of_a_roof_come_from_the_rulebook():
    assert "above the lowest third" in judged(tie=Tie(**FIR, size="2x6", height=0.5)).gates[0]
    assert "The ridge must be a beam" in judged(slope=(2.0, 12.0)).gates[0]
    assert not judged(DUMMY, slope=(2.0, 12.0)).gates


def test_a_ridge_board_is_as_deep_as_the_cut_end_of_the_rafter():
    (board,) = answers(judged(ridge_board=Board(thickness=0.75 * inch, depth=7.25 * inch)), RidgeBoardMember)
    assert [check.share for check in board.checks] == pytest.approx([1.0, SLOPE / 12])


def test_a_ridge_beam_is_a_beam_without_a_floor_and_the_rafters_lean_on_it():
    beam = Beam(name="ridge", on=("a", "b"), at=12 * ft, start=0.0, end=12 * ft, wood=Wood(**FIR, size="2x12", plies=3))
    posts = tuple(
        Post(name=name, on="soil", x=12 * ft, y=y, height=14 * ft) for name, y in (("a", 0.0), ("b", 12 * ft))
    )
    roof = dict(on=("west", "ridge", "east"), ridge="beam", tie=None, tie_nails=None)
    whole = house(**roof)
    path = follow(House(name="r", levels=whole.levels, walls=whole.walls, beams=(beam,), posts=posts))
    (found,) = judge_element(path, "ridge", RULEBOOK).answers
    own = 62.4 * 0.5 * 1.15 / (1 + 0.009 * 15 * 0.5) * 4.5 * 11.25 / 144
    bending = next(check for check in found.checks if check.kind == "bending")
    assert bending.asked / psi == pytest.approx((540 + own) * 12**2 / 8 * 12 / (4.5 * 11.25**2 / 6), rel=2e-3)
    assert (found.member.loaded_on, found.member.use.supports) == ("side", "any other structural member")
    (rafter,) = answers(judge_element(path, "roof", RULEBOOK), RafterMember)
    most = max(rafter.demands, key=lambda one: one.axial)
    assert most.axial / lb == pytest.approx(60 * 12 / 2 * 6 / SLOPE)
    with pytest.raises(BadInput, match="leave tie_nails out"):
        follow(
            House(
                name="r",
                levels=(house(**{**roof, "tie_nails": 5}).levels[0],),
                walls=whole.walls,
                beams=(beam,),
                posts=posts,
            )
        )


def test_the_joists_of_the_demo_tie_its_rafters():
    """20 psf of roof live load over 24 ft, 8 in 12; what stays is 7 psf on the slope."""
    found = judge_element(follow(demo_house()), "roof", RULEBOOK)
    (tie,) = answers(found, TieMember)
    line = (7 * math.hypot(12, 8) / 12 + 20) * 16 / 12
    assert tie.demands[-1].force / lb == pytest.approx(line * 24**2 / (8 * 8)) and tie.member.nominal == "2x8"
    assert any("their own load bends them too" in note for note in found.notes)
    assert any("how many nails hold each joint" in one for one in found.refused)


def test_without_a_rule_every_demand_of_a_roof_stays():
    found = judged(DUMMY, ridge_board=Board(thickness=0.75 * inch, depth=7.25 * inch))
    assert (
        not found.checks and len(found.answers) == 4 and all("has no rule for" in one.refused for one in found.answers)
    )
    strong = answers(found, RafterMember)[0].demands[0]
    assert strong.moment / (lb * ft) == pytest.approx((1.25 * 15 + 1.5 * 30) * 16 / 12 * 12**2 / 8)
