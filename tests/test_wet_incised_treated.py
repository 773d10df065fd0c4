"""Wet service, incising and treatment: three separate choices, each with its own factors, on posts and beams."""

import numpy
import pytest

from structlib.ground.lumber import find_material, lvl
from structlib.ground.refusals import BadInput, OutsideRule
from structlib.ground.units import ft, inch, plf, psi
from structlib.house.alternatives import Space, alternatives
from structlib.house.beam import BeamChoice, BeamJob, TypedLoad, check_beam
from structlib.house.sizing import build_rack, limit_widths, size_beams
from structlib.mechanics.beams import LineLoad
from structlib.pages.kit.show import start_values
from structlib.pages.topics.beam.choices import below_full, giving_way
from structlib.pages.topics.beam.page import BeamPage
from structlib.pages.topics.post.page import PostPage
from structlib.rules.check import Seat
from structlib.rules.choice import RULEBOOK
from structlib.rules.us.bending import bending_value
from structlib.rules.us.columns import Column, column_capacity, crushing_value
from structlib.rules.us.service import in_service, service_sentences

HEM = find_material("Hem-Fir", "No.2")  # F_b 850, F_v 150, F_c-perp 405, F_c 1300 psi, E 1.3e6, E_min 470,000
LOADS = (
    TypedLoad("dead", LineLoad(0.0, 123 * inch, 100 * plf)),
    TypedLoad("live", LineLoad(0.0, 123 * inch, 300 * plf)),
)


def job(**facts):
    return BeamJob(10 * ft, Seat(3 * inch, "post"), Seat(3 * inch, "post"), LOADS, unbraced_length=0.0, **facts)


@pytest.mark.parametrize("facts, bending, shear, bearing, modulus", [
    ({}, 1.0, 1.0, 1.0, 1.0),
    ({"wet": True}, 0.85, 0.97, 0.67, 0.9),
    ({"incised": True}, 0.8, 0.8, 1.0, 0.95),
    ({"treatment": "preservative"}, 1.0, 1.0, 1.0, 1.0),
    ({"wet": True, "incised": True, "treatment": "preservative"}, 0.68, 0.776, 0.67, 0.855),
])  # fmt: skip
def test_a_beam_by_hand(facts, bending, shear, bearing, modulus):
    """3-2x10 Hem-Fir No.2: F_b' = 850 x 1.1 x 1.15 times the factors; sag 5 w L4 / 384 E I with E lowered."""
    found = check_beam(job(**facts), BeamChoice(HEM, 1.5 * inch, 9.25 * inch, 3), RULEBOOK)
    assert found.check("bending").given / psi == pytest.approx(850 * 1.1 * 1.15 * bending)
    assert found.check("shear, left end").given / psi == pytest.approx(150 * shear)
    assert found.check("bearing, left seat, beam").given / psi == pytest.approx(405 * bearing)
    sag = 5 * 25 * 123**4 / (384 * 1.3e6 * modulus * 4.5 * 9.25**3 / 12)
    assert found.check("sag under live load").asked / inch == pytest.approx(sag)
    creep = 2.0 if facts.get("wet") else 1.5  # a wet beam creeps more (NDS 2018 3.5.2)
    lasting = found.demands[-1].lasting.extremes.deflection.value
    years = found.check("sag under all load").asked + (creep - 1) * lasting
    assert found.check("sag after years").asked == pytest.approx(years)


def test_a_post_by_hand():
    """3-2x6 Hem-Fir No.2: F_c* = 1300 x 1.1 x 0.8 wet x 0.8 incised; F_cE with E_min x 0.9 x 0.95."""
    wood = in_service(HEM, incised=True)
    value, _ = crushing_value(wood, width=1.5 * inch, depth=5.5 * inch, time_factor=1.0, wet=True)
    assert value / psi == pytest.approx(1300 * 1.1 * 0.8 * 0.8)
    found = column_capacity(
        wood, ply_width=1.5 * inch, depth=5.5 * inch, height=8 * ft, plies=3, time_factor=1.0, wet=True
    )
    assert found.critical_depth / psi == pytest.approx(0.822 * 470_000 * 0.9 * 0.95 / (96 / 5.5) ** 2)


@pytest.mark.parametrize("facts", [
    {"incised": True}, {"wet": True, "incised": True}, {"treatment": "preservative"},
])  # fmt: skip
def test_rack_and_full_check_agree_and_lvl_is_never_offered_so(facts):
    fir = find_material("Douglas Fir-Larch", "No.2")
    stock = [(wood, 1.5 * inch, deep * inch) for wood in (HEM, fir) for deep in (7.25, 11.25)]
    rack = build_rack([*stock, (lvl("2.0E-2900Fb"), 1.75 * inch, 14 * inch)], plies=(2, 3, 4))
    sized = size_beams(job(**facts), rack, RULEBOOK, RULEBOOK.prepare(rack))
    for row in range(len(rack.depth)):
        if rack.material_of(row).kind == "lvl":
            assert sized.share[row] == numpy.inf
            with pytest.raises(OutsideRule):
                check_beam(job(**facts), rack.choice(row), RULEBOOK)
            continue
        assert sized.share[row] == pytest.approx(check_beam(job(**facts), rack.choice(row), RULEBOOK).share, rel=1e-9)
    limit, _, _ = limit_widths(
        lambda width: BeamJob(10 * ft, Seat(3 * inch, "post"), Seat(3 * inch, "post"),
                              (TypedLoad("live", LineLoad(0.0, 123 * inch, 0.04 * width * psi)),), unbraced_length=0.0, **facts),
        rack, RULEBOOK,
    )  # fmt: skip
    assert not limit[-3:].any() and limit[:-3].all()
    assert not alternatives(job(**facts), space=Space(middle=15 * inch), rulebook=RULEBOOK,
                            lvl=[(lvl("2.0E-2900Fb"), 1.75 * inch, 14 * inch)])[0].below_full  # fmt: skip


def test_what_no_factor_is_published_for_is_refused_in_one_sentence():
    timber = find_material("Douglas Fir-Larch", "No.1", "6x10")
    for wood, facts in ((lvl("2.0E-2900Fb"), {"incised": True}), (lvl("2.0E-2900Fb"), {"treatment": "preservative"}),
                        (timber, {"incised": True}), (HEM, {"treatment": "fire retardant"})):  # fmt: skip
        with pytest.raises(OutsideRule) as refusal:
            in_service(wood, **facts)
        assert str(refusal.value).count(". ") == 0
    assert in_service(timber, treatment="preservative").bending == timber.bending
    with pytest.raises(BadInput):
        in_service(HEM, treatment="painted")
    with pytest.raises(BadInput):
        in_service(HEM, incised="yes")
    once = in_service(HEM, incised=True, treatment="preservative")
    assert in_service(once, incised=True, treatment="preservative") is once  # not lowered twice


def test_treated_wood_takes_no_impact_factor():
    beam = dict(width=3 * inch, depth=9.25 * inch, plies=2, ply_width=1.5 * inch, unbraced_length=0.0)
    treated = in_service(HEM, treatment="preservative")
    assert bending_value(treated, time_factor=1.6, **beam)[0] == bending_value(HEM, time_factor=1.6, **beam)[0]
    with pytest.raises(OutsideRule, match="1.6"):
        bending_value(treated, time_factor=2.0, **beam)
    with pytest.raises(OutsideRule, match="1.6"):
        crushing_value(treated, width=1.5 * inch, depth=5.5 * inch, time_factor=2.0)


def test_each_fact_says_its_factors_by_property_with_source():
    said = service_sentences(in_service(HEM, incised=True, treatment="preservative"), wet=True)
    assert len(said) == 3
    assert "0.85 on bending" in said[0] and "0.67 on bearing" in said[0] and "0.8 on compression" in said[0]
    assert "0.8 on bending, tension, compression and shear" in said[1] and "0.95 on E" in said[1]
    assert "no load duration factor over 1.6" in said[2]
    for one, known in zip(said, ("transcribed", "transcribed", "recalled"), strict=True):
        assert "NDS" in one and known in one


@pytest.mark.parametrize("page, asks", [(PostPage(), {}), (BeamPage(), {"below": "masonry"})])
def test_the_page_asks_near_soil_and_counts_nothing_until_it_is_chosen(page, asks):
    plain = start_values(page, **asks)
    assert [plain[name] for name in ("moisture", "incised", "treatment")] == ["dry", "no", "none"]
    asked = [note for note in page.compute(plain).notes if "near soil" in note]
    assert len(asked) == 1 and asked[0].count("?") == 3
    chosen = page.compute({**plain, "moisture": "wet", "incised": "yes", "treatment": "preservative"}).notes
    assert not any("near soil" in note for note in chosen)
    assert all(any(note.startswith(word) for note in chosen) for word in ("Wet in use", "Incised", "Treated"))


@pytest.mark.parametrize("fact", [{"moisture": "wet"}, {"incised": "yes"}, {"moisture": "wet", "incised": "yes"}])
def test_no_choice_of_a_page_gets_lighter_by_it(fact):
    beam = BeamPage()
    plain, told = start_values(beam), start_values(beam, **fact)
    assert beam.result(tuple(told.items())).governs.share > beam.result(tuple(plain.items())).governs.share
    assert len(below_full(beam, count=99, **fact).rows) < len(below_full(beam, count=99).rows)
    offered = (*below_full(beam, count=99, **fact).rows, *giving_way(beam, **fact).rows)
    assert offered and not any("LVL" in str(cell) for row in offered for cell in row)
    post = PostPage()
    before, after = (post.result(tuple(start_values(post, plate="hem-fir", **more).items())) for more in ({}, fact))
    share = {one.name: one.share for one in before.post}
    assert all(one.share > share[one.name] for one in after.post if one.name == "compression")
    assert after.column.wet == ("moisture" in fact) and (after.plate.share > before.plate.share) == after.column.wet
    curves = [post.curves((*(start_values(post, **more)[name] for name in
              ("post_wood", "size", "made", "held", "moisture", "incised", "treatment")), 1.0)) for more in ({}, fact)]  # fmt: skip
    assert all(after[2][9] < before[2][9] for before, after in zip(*curves))


def test_the_page_without_the_question_has_no_note_of_it():
    page = BeamPage()
    assert not any("near soil" in note for note in page.compute(start_values(page)).notes)
    assert Column(HEM, 1.5 * inch, 5.5 * inch, 8 * ft).wet is False
