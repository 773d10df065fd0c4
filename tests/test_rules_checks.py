"""What the United States rulebook asks of one beam: which load, factor, face and place, by which clause."""

import dataclasses

import numpy
import pytest

from structlib.ground.lumber import find_material, lvl
from structlib.ground.refusals import BadInput, OutsideRule
from structlib.ground.units import ft, inch, lb, plf, psi
from structlib.house.beam import BeamChoice, BeamJob, TypedLoad, check_beam, demands_on
from structlib.house.with_steel import check_steel
from structlib.mechanics.beams import LineLoad, PointLoad
from structlib.rules.check import (
    VERIFIED_ORDER,
    BeamMember,
    BeamUse,
    Check,
    Combination,
    Factor,
    Seat,
    governing,
    least_verified,
    uses_more,
)
from structlib.rules.choice import RULEBOOK
from structlib.rules.us.bearing import PLATE_NOT_NAMED
from structlib.rules.us.steel_sections import steel_shape

WOOD = find_material("Hem-Fir", "No.2")
SPAN = 12 * ft
SEAT = Seat(3 * inch)


def job(loads=None, left=SEAT, right=SEAT, clear=SPAN - 3 * inch, **changes):
    if loads is None:
        loads = (
            TypedLoad("dead", LineLoad(0.0, SPAN, 100 * plf)),
            TypedLoad("live", LineLoad(0.0, SPAN, 200 * plf)),
        )
    return BeamJob(
        clear, left, right, loads, **{"unbraced_length": 0.0, **changes}
    )  # held all along where nothing is said


def check(a_job, material=WOOD, ply_width=1.5, depth=9.25, plies=2):
    return check_beam(a_job, BeamChoice(material, ply_width * inch, depth * inch, plies), RULEBOOK)


def factor(check_record, symbol):
    return next(float(one.value) for one in check_record.factors if one.symbol == symbol)


@pytest.mark.parametrize("plies, expected", [(1, 1.0), (2, 1.0), (3, 1.15), (4, 1.15)])
def test_repetitive_factor_counts_the_plies(plies, expected):
    assert factor(check(job(), plies=plies).check("bending"), "C_r") == expected


@pytest.mark.parametrize("repetitive, plies, expected", [(True, 1, 1.15), (False, 3, 1.0), (None, 3, 1.15)])
def test_repetitive_can_be_told_for_joists_that_share_a_floor(repetitive, plies, expected):
    member = BeamMember(WOOD, 1.5 * inch, 9.25 * inch, plies, SEAT, SEAT, unbraced_length=0.0, repetitive=repetitive)
    checks = RULEBOOK.beam_checks(member, demands_on(job(), member, RULEBOOK), BeamUse())
    assert factor(checks[0], "C_r") == expected


def test_bracing_is_judged_by_the_width_of_all_plies():
    unbraced = {"unbraced_length": 8 * ft}
    two = factor(check(job(**unbraced)).check("bending"), "C_L")
    one_wide = factor(check(job(**unbraced), material=WOOD, ply_width=3.0, plies=1).check("bending"), "C_L")
    one = factor(check(job(**unbraced), plies=1).check("bending"), "C_L")
    assert one < two < 1
    # 3 in counts as 4 in nominal, whose size factor and so F_b* is higher: bracing then matters a little more
    assert one_wide == pytest.approx(two, rel=0.02)


def test_time_factor_is_on_bending_and_shear_but_not_on_bearing_or_modulus():
    snow = job((TypedLoad("snow", LineLoad(0.0, SPAN, 200 * plf)),))
    live = job((TypedLoad("live", LineLoad(0.0, SPAN, 200 * plf)),))
    by_snow, by_live = check(snow), check(live)
    for name in ("bending", "shear, left end", "shear, right end"):
        assert by_snow.check(name).given == pytest.approx(1.15 * by_live.check(name).given)
        assert factor(by_snow.check(name), "C_D") == 1.15
    for name in ("bearing, left seat, beam", "sag under live load", "sag under all load"):
        assert by_snow.check(name).given == by_live.check(name).given
        assert by_snow.check(name).asked == pytest.approx(by_live.check(name).asked)
        assert "C_D" not in [one.symbol for one in by_snow.check(name).factors]


def test_dead_load_alone_can_govern_with_its_time_factor():
    heavy = job((TypedLoad("dead", LineLoad(0.0, SPAN, 300 * plf)), TypedLoad("live", LineLoad(0.0, SPAN, 10 * plf))))
    bend = check(heavy).check("bending")
    assert bend.combination == "D" and factor(bend, "C_D") == 0.9


def test_shear_leaves_out_load_within_a_depth_of_the_face_where_allowed():
    result = check(job())
    shear = result.check("shear, left end")
    total = 300 * plf + result.member.weight_per_length
    place = 1.5 * inch + 9.25 * inch
    assert shear.position == pytest.approx(place)
    assert shear.asked == pytest.approx(1.5 * total * (SPAN / 2 - place) / (3 * inch * 9.25 * inch))
    right = result.check("shear, right end")
    assert right.position == pytest.approx(SPAN - place) and right.asked == pytest.approx(shear.asked)


@pytest.mark.parametrize(
    "changes", [{"loaded_on": "side"}, {"left": Seat(3 * inch, "hanger"), "right": Seat(3 * inch, "hanger")}]
)
def test_a_beam_hung_or_loaded_from_its_side_keeps_its_whole_shear(changes):
    result = check(job(**changes))
    total = 300 * plf + result.member.weight_per_length
    for end, place in (("left", 0.0), ("right", SPAN)):
        shear = result.check(f"shear, {end} end")
        assert shear.asked == pytest.approx(1.5 * total * SPAN / 2 / (3 * inch * 9.25 * inch))
        assert shear.position == pytest.approx(place)
        # the place named is where the beam has that shear
        force = shear.asked * result.member.area / 1.5
        demand = next(d for d in result.demands if d.combination.name == "D + L")
        assert abs(demand.solution.shear(place, side="right" if end == "left" else "left")) == pytest.approx(force)


def test_a_point_load_close_to_a_seat_is_kept_whole():
    near = job((TypedLoad("live", PointLoad(2 * inch, 2000 * lb)),))
    shear = check(near).check("shear, left end")
    push = 2000 * lb * (1 - 2 * inch / SPAN)
    assert shear.asked >= 1.5 * push / (3 * inch * 9.25 * inch)


def test_both_faces_of_a_seat_are_checked_and_the_weaker_governs():
    plate = find_material("Spruce-Pine-Fir", "No.1/No.2")
    strong = find_material("Douglas Fir-Larch", "No.2")
    seat = Seat(3 * inch, "plate", plate.bearing, "plate of Spruce-Pine-Fir", plate.verified)
    result = check(job(left=seat, right=seat), material=strong)
    for end in ("left", "right"):
        beam = result.check(f"bearing, {end} seat, beam")
        below = result.check(f"bearing, {end} seat, plate of Spruce-Pine-Fir")
        assert beam.given == pytest.approx(625 * psi) and below.given == pytest.approx(425 * psi)
        assert below.share == pytest.approx(beam.share * 625 / 425)
        push = (300 * plf + result.member.weight_per_length) * SPAN / 2
        assert beam.asked == pytest.approx(push / (3 * inch * 3 * inch))
        assert factor(beam, "C_b") == 1.0  # at a beam's end
    assert result.check("bearing, left seat, beam").position == 0.0
    assert result.check("bearing, right seat, beam").position == pytest.approx(SPAN)


@pytest.mark.parametrize("end", ["left", "right"])
def test_a_plate_that_is_not_named_counts_as_the_weakest_one_listed(end):
    """Across the grain the weakest wood of NDS Supplement Table 4A is Spruce-Pine-Fir (South), 335 psi."""
    named = Seat(3 * inch, "plate", 425 * psi, "plate of Spruce-Pine-Fir", "recalled")
    for below in (Seat(3 * inch), Seat(3 * inch, "plate")):
        result = check(job(**{"left": named, "right": named, end: below}))
        plate = result.check(f"bearing, {end} seat, {PLATE_NOT_NAMED}")
        push = (300 * plf + result.member.weight_per_length) * SPAN / 2
        assert plate.given == pytest.approx(335 * psi)
        assert plate.share == pytest.approx(push / (3 * inch * 3 * inch) / (335 * psi))
    under_steel = check_steel(job(left=Seat(3 * inch), right=Seat(3 * inch)), steel_shape("W8x18"), RULEBOOK)
    assert [one.given for one in under_steel if one.kind == "bearing"] == pytest.approx([335 * psi] * 2)


def test_what_nobody_vouched_for_is_known_least():
    """A seat, a factor or a check without a word for how it is known must not borrow one."""
    last = VERIFIED_ORDER[-1]
    seat = Seat(3 * inch, "plate", 425 * psi, "plate of a friend")
    assert least_verified([]) == least_verified(["", ""]) == last
    plate = check(job(left=seat)).check("bearing, left seat, plate of a friend")
    assert seat.below_verified == plate.verified == last
    assert {
        field.default
        for kind in (Check, Factor, Seat)
        for field in dataclasses.fields(kind)
        if "verified" in field.name
    } == {last}


@pytest.mark.parametrize("below, count", [("plate", 1), ("post", 1), ("steel", 1), ("masonry", 1), ("hanger", 0)])
def test_seats_of_each_kind(below, count):
    seat = Seat(4 * inch, below)
    checks = check(job(left=seat, right=seat, clear=SPAN - 4 * inch)).checks
    assert len([c for c in checks if c.name == "bearing, left seat, beam"]) == count
    assert len([c for c in checks if c.name == "seat length, left"]) == count


def test_a_seat_shorter_than_the_code_asks_fails_whatever_the_load():
    for below, least in (("plate", 1.5), ("masonry", 3.0)):
        short = Seat((least - 0.25) * inch, below)
        light = job((TypedLoad("live", LineLoad(0.0, 1 * ft, 1 * plf)),), left=short, right=short)
        result = check(light)
        assert result.governs.name == "seat length, left"
        assert result.share == pytest.approx(least / (least - 0.25))
        exact = Seat(least * inch, below)
        assert check(job(left=exact, right=exact, clear=10 * ft, loads=())).check("seat length, left").share <= 1.0


def test_wet_service_lowers_every_value_and_the_stiffness():
    dry, wet = check(job(unbraced_length=8 * ft)), check(job(unbraced_length=8 * ft, wet=True))
    assert wet.check("shear, left end").given == pytest.approx(0.97 * dry.check("shear, left end").given)
    assert wet.check("bearing, left seat, beam").given == pytest.approx(
        0.67 * dry.check("bearing, left seat, beam").given
    )
    for name in ("sag under live load", "sag under all load"):
        assert wet.check(name).asked == pytest.approx(dry.check(name).asked / 0.9)
    low = wet.demands[-1].solution.extremes.deflection.value
    assert low == pytest.approx(dry.demands[-1].solution.extremes.deflection.value / 0.9)  # the curve that is drawn
    dead = next(d for d in wet.demands if d.combination.name == "D").solution.extremes.deflection.value
    years = wet.check("sag after years")
    assert years.asked == pytest.approx(2.0 * dead + wet.check("sag under live load").asked)
    assert factor(wet.check("bending"), "C_M") == 0.85
    assert wet.check("sag under all load").verified == "transcribed"
    # E_min is lowered too: F_bE / F_b* changes by 0.9 / 0.85, so that bracing matters a little less
    assert factor(dry.check("bending"), "C_L") < factor(wet.check("bending"), "C_L") < 1.0


def test_bracing_of_wet_lumber_by_hand():
    """F_b* takes the wet factor on bending, F_bE that on E_min (NDS 2018 Table 4.3.1)."""
    bend = check(job(unbraced_length=8 * ft, wet=True)).check("bending")
    width, depth = 3 * inch, 9.25 * inch
    starred = 850 * psi * 1.1 * 0.85
    le = 1.63 * 8 * ft + 3 * depth  # 8 ft over 9.25 in is 10.4
    a = 1.2 * 470_000 * psi * 0.9 / (le * depth / width**2) / starred
    cl = (1 + a) / 1.9 - (((1 + a) / 1.9) ** 2 - a / 0.95) ** 0.5
    assert bend.given == pytest.approx(starred * cl, rel=1e-9)


def test_uneven_load_is_braced_by_the_note_for_loads_not_listed():
    deep = {"depth": 7.25}
    even = job(unbraced_length=SPAN)
    partial = job((TypedLoad("live", LineLoad(0.0, SPAN / 2, 300 * plf)),), unbraced_length=SPAN)
    point = job((TypedLoad("live", PointLoad(SPAN / 2, 500 * lb)),), unbraced_length=SPAN)
    shares = [factor(check(one, **deep).check("bending"), "C_L") for one in (even, partial, point)]
    assert shares[0] > shares[1] == shares[2]  # 1.63 lu + 3 d against 1.84 lu, over 14.3 depths


def test_masonry_veneer_is_judged_by_all_load():
    result = check(job(use=BeamUse("lintel under masonry veneer")))
    assert result.check("sag under live load").given == pytest.approx(SPAN / 600)
    assert result.check("sag under all load").given == pytest.approx(SPAN / 600)
    assert "R703.8.2" in result.check("sag under all load").clause


def test_sag_after_years_informs_and_governs_only_when_asked():
    plain, asked = check(job()), check(job(use=BeamUse("floor", creep_decides=True)))
    assert not plain.check("sag after years").decides and asked.check("sag after years").decides
    share = plain.check("sag after years").share
    assert share == asked.check("sag after years").share > plain.check("sag under all load").share
    assert asked.share >= share


def test_a_job_without_passing_load_has_no_live_sag_check():
    names = [one.name for one in check(job((TypedLoad("dead", LineLoad(0.0, SPAN, 50 * plf)),))).checks]
    assert "sag under live load" not in names and "sag under all load" in names


@pytest.mark.parametrize("grade, depth", [("Stud", 9.25), ("Utility", 5.5), ("Construction", 7.25)])
def test_grades_out_of_their_sizes_are_refused_in_full(grade, depth):
    with pytest.raises(OutsideRule, match="no size factor"):
        check(job(), material=find_material("Hem-Fir", grade), depth=depth)


def test_wet_lvl_and_slender_beams_are_refused_in_full():
    with pytest.raises(OutsideRule, match="dry use only"):
        check(job(wet=True), material=lvl("2.0E-2900Fb"), ply_width=1.75)
    with pytest.raises(OutsideRule, match="too slender"):
        check(job(unbraced_length=24 * ft), depth=11.25, plies=1)


@pytest.mark.parametrize("load", [LineLoad(0.0, SPAN, -1.0), LineLoad(0.0, SPAN, 1.0, -1.0), PointLoad(100.0, -5.0)])
def test_uplift_is_refused(load):
    with pytest.raises(OutsideRule, match="lifts the beam.*engineer"):
        check(job((TypedLoad("live", load),)))


def test_a_material_that_the_rules_do_not_cover_is_refused():
    steel = dataclasses.replace(WOOD, kind="steel", name="a steel")
    with pytest.raises(OutsideRule, match="not 'steel'"):
        check(job(), material=steel)


def test_every_check_carries_its_sentence_clause_and_numbers():
    for one in check(job(unbraced_length=4 * ft, use=BeamUse(creep_decides=True))).checks:
        assert one.sentence and one.clause and one.formula and one.where and one.combination
        assert numpy.isfinite([one.asked, one.given, one.share, one.position]).all()
        assert one.share == pytest.approx(one.asked / one.given)
        assert 0.0 <= one.position <= SPAN
        assert least_verified([one.verified]) == one.verified


def test_governing_is_the_greatest_that_decides_and_never_hides_what_is_not_a_number():
    def one(name, share, decides=True):
        return Check(name, name, "", 1.0, 1.0, share, "stress", 0.0, "", "", "", "", decides=decides)

    assert governing([one("a", 0.5), one("b", 0.9), one("c", 2.0, decides=False)]).name == "b"
    assert governing([one("a", 5.0), one("b", float("nan"))]).name == "b"
    with pytest.raises(BadInput, match="no check decides"):
        governing([one("c", 2.0, decides=False)])
    with pytest.raises(BadInput, match="no check decides"):
        governing([])


def test_a_combination_gives_zero_for_a_type_that_it_leaves_out():
    assert Combination("D", (("dead", 1.0),), 0.9, "permanent", "2.4.1", "recalled").factor("snow") == 0.0
    with pytest.raises(BadInput, match="verified word"):
        least_verified(["certainly"])


def test_where_nobody_says_what_holds_the_edge_nothing_does_between_the_seats():
    unsaid = BeamJob(SPAN - 3 * inch, SEAT, SEAT, job().loads)
    free, held = (check(one, depth=11.25).check("bending") for one in (job(unbraced_length=SPAN), job()))
    assert check(unsaid, depth=11.25).check("bending") == free and factor(free, "C_L") < 1.0 == factor(held, "C_L")


@pytest.mark.parametrize("by, named", [(1e-15, "left"), (-1e-15, "left"), (1e-7, "right")])
def test_of_two_ends_equal_up_to_rounding_the_first_governs(by, named):
    ends = [
        Check(end, "bearing", "", 1.0, 2.0, share, "stress", 0.0, "", "", "", "")
        for end, share in (("left", 0.5), ("right", 0.5 + by))
    ]
    assert governing(ends).name == named and uses_more(0.5 + by, 0.5) == (named == "right")


def test_a_share_that_is_not_a_number_is_beyond_any_other():
    assert uses_more(numpy.nan, 3.0) and not uses_more(3.0, numpy.nan) and not uses_more(numpy.nan, numpy.inf)
