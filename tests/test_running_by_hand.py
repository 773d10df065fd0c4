"""Beams and joists that run on, worked by hand in feet and pounds: what a rulebook must say of them through the path."""

import dataclasses

import numpy
import pytest
from dummy_rulebook import DUMMY
from test_path_by_hand import FIR, LONG, floor, force, house, opening, post, tip_house, wall

from structlib.ground.refusals import BadInput
from structlib.ground.units import ft, inch, lb, plf, psi
from structlib.house.inside import inside
from structlib.house.judging import judge, judge_element
from structlib.house.path import follow
from structlib.house.pieces import piece_of
from structlib.house.plan import Beam, Joists, Load
from structlib.rules.check import BeamMember
from structlib.rules.choice import RULEBOOK
from structlib.rules.members import ContinuousMember

SECTION, AREA, INERTIA = 4.5 * 11.25**2 / 6, 4.5 * 11.25, 4.5 * 11.25**3 / 12  # of 3-2x12, in inches
JOIST = Joists(species="Hem-Fir", grade="No.2", size="2x10", spacing=16 * inch)
OWN = piece_of(FIR).material.weight_density * AREA * inch**2 / plf
E_FIR, E_JOIST = (piece_of(FIR).material.modulus / psi, 1.3e6)


def checks(path, name, kind, rulebook=RULEBOOK):
    return [one for one in judge_element(path, name, rulebook).checks if one.kind == kind]


def two_spans(live):
    """A beam in one piece over posts at 0, 10 and 20 ft, with 12 ft of floor: 120 plf dead and its own weight."""
    return follow(
        house(
            floor("west beam east", live=live),
            wall("west", 0),
            wall("east", 24),
            Beam(name="beam", on=("a", "b", "c"), at=12 * ft, start=0.0, end=LONG * ft, joints="continuous", wood=FIR),
            *(post(name, 12, y) for name, y in (("a", 0), ("b", 10), ("c", 20))),
        )
    )


def test_a_beam_in_one_piece_over_two_spans():
    path, span = two_spans(30), 10
    dead, live = 120 + OWN, 360
    judged = judge_element(path, "beam", RULEBOOK)
    (member,), (demands,) = judged.members, (judged.answers[0].demands,)
    assert (
        isinstance(member, ContinuousMember)
        and member.supports == pytest.approx((0, 10 * ft, 20 * ft))
        and not judged.gates
    )
    both = next(one for one in demands if one.combination.name == "D + L").all_load
    assert both.greatest_reaction(1).value / lb == pytest.approx(1.25 * (dead + live) * span)
    end = 3 / 8 * dead * span + 7 / 16 * live * span  # its own span alone: 1/2 less the 1/16 that bends over the post
    assert both.greatest_reaction(0).value / lb == pytest.approx(end)
    assert both.least_reaction(0).value / lb == pytest.approx(3 / 8 * dead * span - live * span / 16)
    sagging, other = checks(path, "beam", "bending")
    assert other.asked / psi == pytest.approx((dead + live) * span**2 / 8 * 12 / SECTION) and other.on == (True, True)
    assert sagging.asked / psi == pytest.approx(end**2 / (2 * (dead + live)) * 12 / SECTION) and sum(sagging.on) == 1
    (shear,) = checks(path, "beam", "shear")
    assert shear.asked / psi == pytest.approx(1.5 * 5 / 8 * (dead + live) * span / AREA)
    x = numpy.linspace(0, span * 12, 4001)  # a simple span less what its end moment w L2 / 16 lifts
    w, long = live / 12, span * 12
    shape = w * x * (long**3 - 2 * long * x**2 + x**3) / 24 - w * long**2 / 16 * x * (long**2 - x**2) / (6 * long)
    sag = next(one for one in checks(path, "beam", "sag") if one.on == (True, False) and "live" in one.name)
    assert sag.asked / inch == pytest.approx(shape.max() / (E_FIR * INERTIA), rel=1e-6)
    assert sag.given / inch == pytest.approx(120 / 360)
    middle = [one for one in checks(path, "beam", "bearing") if "second" in one.name]
    assert middle[0].asked / psi == pytest.approx(1.25 * (dead + live) * span / (4.5 * 3))
    assert middle[0].given / psi == pytest.approx(625 * (3 + 3 / 8) / 3)  # a short seat away from the end counts longer


@pytest.mark.parametrize("live, lifts", [(30, False), (40, True)])
def test_a_support_that_lifts_when_less_of_the_dead_load_counts_is_a_gate(live, lifts):
    # the far span alone lifts w L / 16; 0.6 of 3/8 w L holds it down
    judged = judge_element(two_spans(live), "beam", RULEBOOK)
    left = live * 12 * 10 / 16 - 0.6 * 3 / 8 * (120 + OWN) * 10
    assert (left > 0) == lifts == bool(judged.gates) and judged.checks
    if lifts:
        assert f"with up to {left:.0f} lb" in judged.gates[0] and "0.6 of the dead load" in judged.gates[0]


def test_a_post_over_the_middle_support_presses_its_seat_and_bends_nothing():
    plain = two_spans(30)
    parts = dataclasses.replace(
        plain.house,
        posts=(*plain.house.posts, post("above", 12, 10, "beam")),
        loads=(Load(name="push", on="above", x=12 * ft, y=10 * ft, live=6000 * lb),),
    )
    path = follow(parts)
    assert [one.asked for one in checks(path, "beam", "bending")] == pytest.approx(
        [one.asked for one in checks(plain, "beam", "bending")]
    )
    more = [
        max(one.asked for one in checks(which, "beam", "bearing") if "second" in one.name) for which in (path, plain)
    ]
    assert (more[0] - more[1]) / psi == pytest.approx(6000 / (4.5 * 3))
    assert force(path, "b", "live") - force(plain, "b", "live") == pytest.approx(6000)


@pytest.mark.parametrize("joints", ["cut", "continuous"])
def test_an_overhang_with_a_post_on_its_tip_is_judged_and_gated(joints):
    tip = tip_house(joints)
    beams = (dataclasses.replace(tip.beams[0], wood=FIR),)
    path = follow(dataclasses.replace(tip, beams=beams, levels=(dataclasses.replace(tip.levels[0], end=19 * ft),)))
    judged = judge_element(path, "beam", RULEBOOK)
    assert [type(one) for one in judged.members] == (
        [BeamMember, ContinuousMember] if joints == "cut" else [ContinuousMember]
    )
    assert (
        "lifts off b under D + S" in judged.gates[0] and "tip stands on beam past its last support" in judged.gates[1]
    )
    # over c: 3 ft of 130 plf dead, its own weight, three quarters of 520 plf live and of 2,000 lb snow
    moment = (1500 + 0.75 * 2000) * 3 + (130 + OWN + 0.75 * 520) * 3**2 / 2
    (other,) = [one for one in judged.checks if one.name == "bending, the other way"]
    assert other.asked / psi == pytest.approx(moment * 12 / SECTION) and other.combination == "D + 0.75 L + 0.75 S"
    if joints == "cut":  # the tip alone: P a2 (L + a) / 3 EI, and w a3 (4 L + 3 a) / 24 EI of what is spread there
        three, eight = 36, 96
        sag = 1500 * three**2 * (eight + three) / 3 + 0.75 * 520 / 12 * three**3 * (4 * eight + 3 * three) / 24
        (found,) = [one for one in judged.checks if one.name == "sag of the tip, live load"]
        snow = 2000 * three**2 * (eight + three) / 3  # D + S, with no live load
        assert found.asked / inch == pytest.approx(max(sag, snow) / (E_FIR * INERTIA))
        assert found.given / inch == pytest.approx(2 * 36 / 360) and found.verified == "recalled"


def test_joists_in_one_piece_over_a_middle_wall():
    # 12 ft spans, (10 + 40) psf x 4/3 ft and their own weight
    path = follow(
        house(
            floor("west middle east", joist=JOIST, joists="continuous", seat=1.5 * inch),
            *(wall(n, at) for n, at in (("west", 0), ("middle", 12), ("east", 24))),
        )
    )
    own = path.element("floor").own[0].amount[0] / (lb / ft**2) - 10
    load = (50 + own) * 4 / 3
    judged = judge(path, RULEBOOK)["floor"]
    other = next(one for one in judged.checks if one.name == "bending, the other way")
    section = 1.5 * 9.25**2 / 6
    assert other.asked / psi == pytest.approx(load * 12**2 / 8 * 12 / section) and not judged.gates
    assert next(one.value for one in other.factors if one.symbol == "C_r") == 1.15
    seat = next(one for one in judged.checks if one.name == "bearing, second seat, beam")
    assert seat.asked / psi == pytest.approx(1.25 * load * 12 / (1.5 * 1.5))
    assert seat.given / psi == pytest.approx(405 * 1.25)  # (1.5 + 3/8) / 1.5


def test_joists_past_the_wall():
    # 9 ft and 4 ft past: over the wall w 4^2 / 2; the tip under live load alone w a3 (4 L + 3 a) / 24 EI
    path = follow(
        house(
            floor("west middle east", joist=JOIST, right_overhang=4 * ft),
            *(wall(n, at) for n, at in (("west", 0), ("middle", 9), ("east", 18))),
        )
    )
    judged = judge(path, RULEBOOK)["floor"]
    inner, outer = judged.members
    assert isinstance(inner, BeamMember) and isinstance(outer, ContinuousMember)
    own = path.element("floor").own[0].amount[0] / (lb / ft**2) - 10
    other = next(one for one in judged.checks if one.name == "bending, the other way")
    assert other.asked / psi == pytest.approx((50 + own) * 4 / 3 * 8 * 12 / (1.5 * 9.25**2 / 6))
    tip = next(one for one in judged.checks if one.name == "sag of the tip, live load")
    live, past, span = 40 * 4 / 3 / 12, 48, 108
    assert tip.asked / inch == pytest.approx(
        live * past**3 * (4 * span + 3 * past) / 24 / (E_JOIST * 1.5 * 9.25**3 / 12), rel=1e-6
    )
    assert tip.given / inch == pytest.approx(2 * 48 / 360)
    # 0.6 of 69.5 plf x (9^2 - 4^2) / 18 a foot of dead load holds down what 16 / 18 of the live load of the tip lifts
    press, lift = (10 + own) * 4 / 3 * (81 - 16) / 18, 40 * 4 / 3 * 16 / 18
    assert (lift > 0.6 * press) == bool(judged.gates)


def test_the_joists_of_a_ceiling_are_judged_by_the_stricter_limit_where_its_finish_is_not_told():
    attic = dataclasses.replace(
        floor("west east", "attic", dead=5, live=10, joist=JOIST, seat=2 * inch), kind="ceiling"
    )
    judged = judge(follow(house(attic, wall("west", 0), wall("east", 12))), RULEBOOK)["attic"]
    assert not judged.refused
    sag = next(one for one in judged.checks if one.kind == "sag" and "live" in one.name)
    assert sag.given / inch == pytest.approx(144 / 360)  # 240 under gypsum board, 360 under plaster
    assert sag.asked / inch == pytest.approx(
        5 / 384 * 10 * 4 / 3 / 12 * 144**4 / (E_JOIST * 1.5 * 9.25**3 / 12), rel=1e-6
    )


def test_a_wall_on_joists_past_their_last_wall_is_a_gate():
    path = follow(
        house(
            floor("west east", joist=JOIST, right_overhang=2 * ft),
            wall("west", 0),
            wall("east", 12),
            wall("parapet", 14, "floor", face=10),
        )
    )
    assert any("parapet stands on floor past its last support" in one for one in judge(path, RULEBOOK)["floor"].gates)


def test_another_rulebook_says_in_one_sentence_that_it_has_no_rule_and_the_demands_stay():
    (answer,) = judge_element(two_spans(30), "beam", DUMMY).answers
    assert answer.refused == (
        "the rulebook of Dummy (invented) has no rule for a beam or joist that runs on here; what is asked of it stays"
    )
    strong = answer.demands[0]
    assert strong.all_load.greatest_reaction(1).value / lb == pytest.approx(
        1.25 * (1.25 * (120 + OWN) + 1.5 * 360) * 10
    )


# ---- transfer beams ----


def girder_on_a_transfer_beam():
    """Girder with 7 ft of (10 + 50) psf, cut over its middle post, which lands 5 ft along a transfer beam of 12 ft."""
    return follow(
        house(
            floor("west girder east", live=50),
            wall("west", 0, made_of="masonry"),
            wall("east", 14),
            Beam(name="girder", on=("g1", "g2", "g3"), at=5 * ft, start=0.0, end=LONG * ft),
            Beam(name="transfer", on=("west", "far post"), runs="across", at=10 * ft, start=0.0, end=12 * ft, wood=FIR),
            post("g1", 5, 0),
            post("g2", 5, 10, "transfer"),
            post("g3", 5, 20),
            post("far post", 12, 10),
        )
    )


def test_a_transfer_beam_of_one_span_by_hand():
    path = girder_on_a_transfer_beam()
    dead, live = 700, 3500  # pounds of the post, 10 ft of girder
    (moment,), shear, sag = (
        checks(path, "transfer", "bending"),
        checks(path, "transfer", "shear"),
        checks(path, "transfer", "sag"),
    )
    assert moment.asked / psi == pytest.approx(((dead + live) * 5 * 7 / 12 + OWN * 5 * 7 / 2) * 12 / SECTION)
    near = (dead + live) * 7 / 12 + OWN * (6 - (1.5 + 11.25) / 12)  # to a depth beyond the face of the 3 in seat
    assert shear[0].asked / psi == pytest.approx(1.5 * near / AREA)
    tip = live * 60 * (144**2 - 60**2) ** 1.5 / (9 * 3**0.5 * 144 * E_FIR * INERTIA)  # P b (L2 - b2)^1.5 / 9 sqrt3 L EI
    assert sag[0].asked / inch == pytest.approx(tip, rel=1e-6) and sag[0].given / inch == pytest.approx(144 / 360)


def transfer_of_two_spans(**load):
    return follow(
        house(
            wall("west", 0),
            Beam(name="beam", on=("a", "b", "c"), at=12 * ft, start=0.0, end=LONG * ft, joints="continuous", wood=FIR),
            *(post(name, 12, y) for name, y in (("a", 0), ("b", 10), ("c", 20))),
            post("above", 12, 5, "beam"),
            Load(name="push", on="above", x=12 * ft, y=5 * ft, **load),
        )
    )


def test_a_transfer_beam_in_one_piece_over_two_spans_by_hand():
    # P in the middle of one of two equal spans: 3 PL/32 over the post, 13 PL/64 under P, 19 P/32 beside the post
    path, push, span = transfer_of_two_spans(live=3000 * lb), 3000, 10
    sagging, other = checks(path, "beam", "bending")
    assert sagging.asked / psi == pytest.approx((13 / 64 * push * span + OWN * span**2 / 16) * 12 / SECTION)
    assert other.asked / psi == pytest.approx((3 / 32 * push * span + OWN * span**2 / 8) * 12 / SECTION)
    (shear,) = checks(path, "beam", "shear")
    assert shear.asked / psi == pytest.approx(1.5 * (19 / 32 * push + 5 / 8 * OWN * span) / AREA)
    long = span * 12
    x = numpy.linspace(
        0, long / 2, 6001
    )  # a simple span less what its end moment lifts; P from the other side mirrored
    shape = push * x * (3 * long**2 - 4 * x**2) / 48 - 3 / 32 * push * x * (long**2 - x**2) / 6
    (sag,) = [one for one in checks(path, "beam", "sag") if "live" in one.name]
    assert sag.asked / inch == pytest.approx(shape.max() / (E_FIR * INERTIA), rel=1e-6)
    assert any("lifts off c" in one for one in judge_element(path, "beam", RULEBOOK).gates) == (
        3 / 32 * push > 3 / 8 * OWN * span
    )


def test_a_beam_on_a_beam_by_hand():
    # 12 ft of cross beam, 200 plf live on 4 ft from its start: 800 lb about 2 ft, 133.3 lb on the main beam, 4 ft of 10
    path = follow(
        house(
            Beam(name="cross", on=("p", "main"), runs="across", at=4 * ft, start=0.0, end=12 * ft, wood=FIR),
            Beam(name="main", on=("a", "b"), at=12 * ft, start=0.0, end=10 * ft, wood=FIR),
            post("p", 0, 4),
            post("a", 12, 0),
            post("b", 12, 10),
            Load(name="bin", on="cross", x=0.0, y=4 * ft, length=4 * ft, live=800 * lb),
        )
    )
    push = 800 * 2 / 12 + OWN * 6
    (moment,) = checks(path, "main", "bending")
    assert moment.asked / psi == pytest.approx((push * 4 * 6 / 10 + OWN * 4 * 6 / 2) * 12 / SECTION)
    pressed = [one for one in judge_element(path, "cross", RULEBOOK).checks if one.kind == "plate bearing"]
    assert pressed[0].asked / psi == pytest.approx(push / (4.5 * 3)) and pressed[0].given / psi == pytest.approx(625)


def test_a_post_on_an_existing_header_by_hand():
    # a hatch of 4 ft stands on the header below, 2 ft along it: 600 plf of floor on 6 ft, 360 of attic on 4 ft, 720 lb
    path = follow(
        house(
            floor("west.up up east.up", "attic", live=20),
            floor("west middle east"),
            *(wall(n, at) for n, at in (("west", 0), ("middle", 12), ("east", 24))),
            wall("west.up", 0, "west"),
            wall("up", 12, "middle"),
            wall("east.up", 24, "east"),
            opening("hatch", "up", 4, 3.75, left_on="stud post", right_on="door"),
            post("stud post", 12, 3.875),
            opening("door", "middle", 6, 5.75, beam=FIR),
        )
    )
    even, push = 600 + OWN, 720
    left = even * 3 + 360 * 4 * 2 / 6 + push * 4 / 6
    x = 2 + (left - 2 * even - push) / (even + 360)
    moment = left * x - even * x**2 / 2 - push * (x - 2) - 360 * (x - 2) ** 2 / 2
    (found,) = checks(path, "door", "bending")
    assert found.asked / psi == pytest.approx(moment * 12 / SECTION)
    assert checks(path, "door", "shear")[0].share > 0 and len(checks(path, "door", "sag")) >= 2


def test_a_post_right_over_a_seat_shears_nothing():
    path = follow(
        house(
            wall("west", 0),
            Beam(name="beam", on=("a", "b", "c"), at=12 * ft, start=0.0, end=LONG * ft, wood=FIR),
            *(post(name, 12, y) for name, y in (("a", 0), ("b", 10), ("c", 20))),
            post("top", 12, 10, "beam"),
            Load(name="above", on="top", x=12 * ft, y=10 * ft, dead=20_000 * lb),
        )
    )
    right = checks(path, "beam", "shear")[1]  # of the first span, beside b: its seat is half of 3 in
    assert right.asked / psi == pytest.approx(1.5 * OWN * (5 - (0.75 + 11.25) / 12) / AREA)


# ---- what goes on inside a beam ----


def test_the_moment_in_the_second_span_of_a_beam_is_read_off_the_path():
    # two equal spans in one piece under an even load: 9/128 w L2 at 5/8 of the second span, -w L2 / 8 over the post
    beam, w = inside(two_spans(30), "beam", {"dead": 1.0, "live": 1.0}), 120 + OWN + 360
    second = beam.within(2)
    assert second.greatest_moment.value / (lb * ft) == pytest.approx(9 / 128 * w * 100)
    assert second.greatest_moment.position / ft == pytest.approx(10 + 5 / 8 * 10)
    assert beam.at(10 * ft).moment / (lb * ft) == pytest.approx(-w * 100 / 8) == second.least_moment.value / (lb * ft)
    assert beam.at(10 * ft).shear / lb == pytest.approx(5 / 8 * w * 10)
    x = numpy.linspace(0, 120, 6001)  # from the far end: w x (L3 - 3 L x2 + 2 x3) / 48 EI
    shape = w / 12 * x * (120**3 - 3 * 120 * x**2 + 2 * x**3) / 48 / (E_FIR * INERTIA)
    assert second.greatest_deflection.value / inch == pytest.approx(shape.max(), rel=1e-6)
    assert beam.at(15 * ft).sag / inch == pytest.approx(shape[3000])


def test_a_cut_beam_is_read_span_by_span_and_a_combination_gives_the_factors():
    path = girder_on_a_transfer_beam()
    both = next(one for one in RULEBOOK.combinations({"dead", "live"}) if one.name == "D + L")
    beam = inside(path, "girder", both)  # 7 ft of 60 psf over 10 ft, cut: 420 plf
    assert beam.within(2).greatest_moment.value / (lb * ft) == pytest.approx(420 * 100 / 8)
    assert (
        beam.at(10 * ft).shear / lb == pytest.approx(2100) and beam.at(10 * ft).sag is None
    )  # right of the post; no wood
    under = inside(path, "transfer", both)
    assert under.at(5 * ft).moment / (lb * ft) == pytest.approx(4200 * 5 * 7 / 12 + OWN * 5 * 7 / 2)


@pytest.mark.parametrize(
    "call, sentence",
    [
        (lambda path: inside(path, "g1", {}), "g1 is no beam"),
        (lambda path: inside(path, "girder", {"wind": 1.0}), "type of load"),
        (lambda path: inside(path, "girder", {"live": 1.0}).within(3), "span of girder"),
        (
            lambda path: inside(path, "girder", {"live": 1.0}).at(21 * ft),
            "girder reaches from 0 in to 20 ft along it, got 21 ft",
        ),
    ],
)
def test_what_is_not_inside_a_beam_is_refused(call, sentence):
    with pytest.raises(BadInput, match=sentence):
        call(girder_on_a_transfer_beam())
