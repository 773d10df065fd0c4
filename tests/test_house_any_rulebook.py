"""The house room works with any rulebook: here with an invented one in limit states, by hand arithmetic."""

import numpy
import pytest
from dummy_rulebook import DUMMY

from structlib.ground.lumber import find_material
from structlib.ground.units import ft, inch, plf
from structlib.house.beam import BeamChoice, BeamJob, TypedLoad, check_beam
from structlib.house.sizing import build_rack, limit_widths, size_beams
from structlib.mechanics.beams import LineLoad
from structlib.rules.check import Seat
from structlib.rules.choice import RULEBOOK

WOOD = find_material("Hem-Fir", "No.2")
SPAN = 12 * ft
SEAT = Seat(3 * inch)
DEAD, LIVE = 100 * plf, 300 * plf


def job(dead=DEAD, live=LIVE, **changes):
    loads = (TypedLoad("dead", LineLoad(0.0, SPAN, dead)), TypedLoad("live", LineLoad(0.0, SPAN, live)))
    return BeamJob(SPAN - 3 * inch, SEAT, SEAT, loads, **{"unbraced_length": 0.0, **changes})


def hand(width, depth, dead=DEAD, live=LIVE, wet=False):
    """The dummy's three shares from first principles: wL^2/8, wL/2 and 5wL^4/384EI."""
    dead = dead + WOOD.weight_density * width * depth
    strong, plain = 1.25 * dead + 1.5 * live, dead + live
    bend = 0.9 * 2.0 * WOOD.bending * width * depth**2 / 6
    slide = 0.9 * 2.0 * WOOD.shear * width * depth * 2 / 3
    stiffness = WOOD.modulus * (0.8 if wet else 1.0) * width * depth**3 / 12
    return {
        "bend": strong * SPAN**2 / 8 / bend,
        "slide": strong * SPAN / 2 / slide,
        "droop": 5 * plain * SPAN**4 / (384 * stiffness) * 300 / SPAN,
    }


@pytest.mark.parametrize("wet", [False, True])
@pytest.mark.parametrize("plies", [1, 2, 3])
def test_full_check_equals_hand_arithmetic(plies, wet):
    result = check_beam(job(wet=wet), BeamChoice(WOOD, 1.5 * inch, 9.25 * inch, plies), DUMMY)
    expected = hand(1.5 * inch * plies, 9.25 * inch, wet=wet)
    assert {check.name: check.share for check in result.checks} == pytest.approx(expected, rel=1e-12)
    assert result.governs.name == max(expected, key=expected.get)


def test_rack_equals_hand_arithmetic_and_names_its_own_checks():
    rack = build_rack([(WOOD, 1.5 * inch, depth * inch) for depth in (7.25, 9.25, 11.25)], plies=(1, 2, 3))
    sizing = size_beams(job(), rack, DUMMY)
    assert sizing.names == ("bend", "slide", "droop")
    for row in range(len(rack.depth)):
        expected = hand(float(rack.width[row]), float(rack.depth[row]))
        assert sizing.share[row] == pytest.approx(max(expected.values()), rel=1e-12)
        assert sizing.names[sizing.governs[row]] == max(expected, key=expected.get)


def test_loads_reach_the_rulebook_by_type_and_unsummed():
    result = check_beam(job(), BeamChoice(WOOD, 1.5 * inch, 9.25 * inch, 2), DUMMY)
    own = result.member.weight_per_length
    strong, plain = result.demands
    assert strong.solution.reactions[0].force == pytest.approx((1.25 * (DEAD + own) + 1.5 * LIVE) * SPAN / 2)
    assert strong.variable.reactions[0].force == pytest.approx(1.5 * LIVE * SPAN / 2)
    assert strong.lasting.reactions[0].force == pytest.approx(1.25 * (DEAD + own) * SPAN / 2)
    assert plain.solution.reactions[0].force == pytest.approx((DEAD + own + LIVE) * SPAN / 2)
    # the same sum of loads in other parts asks something else: had the types been summed, it could not
    other = check_beam(job(dead=LIVE, live=DEAD), BeamChoice(WOOD, 1.5 * inch, 9.25 * inch, 2), DUMMY)
    assert other.check("droop").share == pytest.approx(result.check("droop").share, rel=1e-12)
    assert other.check("bend").share < result.check("bend").share


def test_limit_widths_under_the_dummy_are_where_its_full_check_is_one():
    rack = build_rack([(WOOD, 1.5 * inch, depth * inch) for depth in (7.25, 9.25, 11.25)], plies=(2, 3))

    def at(width):
        return job(dead=width * 10 * plf / ft, live=width * 40 * plf / ft)

    limit, which, names = limit_widths(at, rack, DUMMY)
    assert names == ("bend", "slide", "droop")
    for row, width in enumerate(limit):
        result = check_beam(at(float(width)), rack.choice(row), DUMMY)
        assert result.share == pytest.approx(1.0, abs=1e-9)
        assert result.governs.name == names[which[row]]


def test_the_two_rulebooks_disagree_so_that_none_of_them_is_built_in():
    choice = BeamChoice(WOOD, 1.5 * inch, 9.25 * inch, 2)
    dummy, us = check_beam(job(), choice, DUMMY), check_beam(job(), choice, RULEBOOK)
    assert {check.name for check in dummy.checks}.isdisjoint(check.name for check in us.checks)
    assert dummy.share != pytest.approx(us.share, rel=0.01)
    assert numpy.isfinite([dummy.share, us.share]).all()
