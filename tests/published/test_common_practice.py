"""Facts of the trade put to the library. They have no publication, so the tally keeps them apart."""

from pathlib import Path

import pytest

from structlib.ground.lumber import find_material, lvl
from structlib.ground.sections import rectangle_inertia, rectangle_section_modulus
from structlib.ground.sizes import stock_sizes
from structlib.ground.tables import read_table
from structlib.ground.units import ft, inch, lb
from structlib.house.beam import BeamJob
from structlib.house.sizing import build_rack, size_beams
from structlib.rules.check import Seat
from structlib.rules.choice import RULEBOOK
from structlib.rules.us.factors import least_seat

FACTS = {row["fact"]: row for row in read_table(Path(__file__).parent / "common_practice.csv")}


def agrees(fact, found):
    """Compare with the fact's value within its tolerance, and note it in the tally."""
    row = FACTS[fact]
    off = abs(found - row["value"])
    assert off <= row["tolerance"] + 1e-12 * abs(row["value"]), (fact, found)
    record_used(fact, off / row["tolerance"] if row["tolerance"] else 0.0)


def record_used(fact, used):
    from tests_tally import record_published

    record_published("common practice", FACTS[fact]["verified"], used, fact)


def test_a_joist_wants_an_inch_and_a_half_of_seat():
    agrees("joist_seat", least_seat("plate")[0] / inch)


def test_lvl_in_stock_runs_to_18_in_deep():
    agrees("lvl_deepest_stock", max(piece.depth for piece in stock_sizes("lvl")) / inch)


def test_deeper_pays_far_more_than_wider():
    one = {"width": 1.5 * inch, "depth": 7.25 * inch}
    deep, wide = {**one, "depth": 2 * one["depth"]}, {**one, "width": 2 * one["width"]}
    agrees("deeper_strength", rectangle_section_modulus(**deep) / rectangle_section_modulus(**one))
    agrees("deeper_stiffness", rectangle_inertia(**deep) / rectangle_inertia(**one))
    agrees("wider_strength", rectangle_section_modulus(**wide) / rectangle_section_modulus(**one))
    agrees("wider_stiffness", rectangle_inertia(**wide) / rectangle_inertia(**one))


def piece_weight(material, ply_width, depth, length, plies=1):
    """Weight of one piece of a beam that is as long as asked, as the sizing states it, in lb."""
    seat = Seat(3 * inch)
    job = BeamJob(length - 2 * seat.length, seat, seat)
    rack = build_rack([(material, ply_width * inch, depth * inch)], plies=(plies,))
    return float(size_beams(job, rack, RULEBOOK).piece_weight[0]) / lb


def test_what_two_people_carry():
    limit = FACTS["two_person_lift"]["value"]
    ply = piece_weight(lvl("2.0E-2900Fb"), 1.75, 14.0, 16 * ft)
    joist = piece_weight(find_material("Hem-Fir", "No.2"), 1.5, 11.25, 16 * ft)
    timber = piece_weight(find_material("Douglas Fir-Larch", "No.1", "6x12"), 5.5, 11.25, 20 * ft)
    assert ply < limit and joist < limit < timber
    # a beam is carried in ply by ply: the weight of a piece does not grow with the number of plies
    assert piece_weight(lvl("2.0E-2900Fb"), 1.75, 14.0, 16 * ft, plies=3) == pytest.approx(ply)
    record_used("two_person_lift", ply / limit)


def test_every_fact_is_marked_as_common_practice_and_put_to_the_library():
    assert all(row["verified"] == "common practice" for row in FACTS.values())
    source = Path(__file__).read_text(encoding="utf-8")
    assert all(source.count(f'"{fact}"') for fact in FACTS)
