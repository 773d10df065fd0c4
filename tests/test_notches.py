"""Notches and holes: every limit at its boundary, refusals, and what the wood left gives."""

import csv
import math
from pathlib import Path

import numpy
import pytest

from structlib.ground import cut_sections
from structlib.ground.refusals import BadInput, OutsideRule
from structlib.ground.tables import data_folder
from structlib.ground.units import ft, inch, psi
from structlib.rules.us import notched_ends, notches
from structlib.rules.us.notches import Hole, Joist, Notch, hole_checks, notch_checks

JOIST = Joist(12 * ft, 1.5 * inch, 9.0 * inch)
BEAM = Joist(12 * ft, 3.5 * inch, 9.0 * inch)


def shares(checks):
    return {check.name: check.share for check in checks}


@pytest.mark.parametrize(
    "depth, length, place, name",
    [
        (1.5, 3.0, 24.0, None),  # at every limit, within them
        (1.51, 3.0, 24.0, "depth of the notch"),
        (1.5, 3.01, 24.0, "length of the notch"),
        (1.5, 3.0, 45.01, "outside the middle third"),  # ends 0.01 in past L/3 = 48 in
        (1.5, 3.0, 95.99, "outside the middle third"),
    ],
)
def test_notch_at_and_past_each_limit(depth, length, place, name):
    found = shares(notch_checks(JOIST, Notch(place * inch, (place + length) * inch, depth * inch)))
    over = {key for key, share in found.items() if share > 1 + 1e-9}
    assert over == ({name} if name else set())


def test_notch_that_just_touches_the_middle_third_is_outside_it():
    for start in (45.0, 96.0):
        found = shares(notch_checks(JOIST, Notch(start * inch, (start + 3) * inch, 1 * inch)))
        assert found["outside the middle third"] == 0.0


@pytest.mark.parametrize("depth, over", [(2.25, False), (2.26, True)])
def test_end_notch_is_asked_for_a_quarter_of_the_depth_and_to_end_before_the_middle_third(depth, over):
    for start, end in ((0.0, 6.0), (140.0, 144.0)):
        found = notch_checks(JOIST, Notch(start * inch, end * inch, depth * inch, "bottom"))
        assert [check.name for check in found] == ["depth of the notch", "outside the middle third"]
        assert found[1].share == 0.0
        assert (found[0].share > 1 + 1e-9) is over


def test_an_end_notch_that_runs_into_the_middle_third_is_refused():
    for start, end in ((0.0, 48.5), (95.5, 144.0), (0.0, 144.0)):
        found = notch_checks(JOIST, Notch(start * inch, end * inch, inch, "top"))
        assert next(one.share for one in found if one.name == "outside the middle third") > 1
    assert notch_checks(JOIST, Notch(0.0, 48 * inch, inch, "top"))[1].share == 0.0


@pytest.mark.parametrize(
    "joist, face, refused",
    [
        (BEAM, "bottom", True),
        (BEAM, "top", False),
        (JOIST, "bottom", False),
        (Joist(12 * ft, 2.5 * inch, 9 * inch), "bottom", False),
    ],
)
def test_thick_members_take_no_notch_on_the_tension_side(joist, face, refused):
    found = shares(notch_checks(joist, Notch(24 * inch, 26 * inch, 0.5 * inch, face)))
    assert (found.get("tension side", 0.0) > 1) is refused


@pytest.mark.parametrize(
    "diameter, height, name",
    [
        (3.0, 4.5, None),
        (3.01, 4.5, "diameter of the hole"),
        (3.0, 3.49, "wood above and below"),
        (3.0, 5.51, "wood above and below"),
        (2.0, 3.0, None),
    ],
)
def test_hole_at_and_past_each_limit(diameter, height, name):
    found = shares(hole_checks(JOIST, Hole(6 * ft, height * inch, diameter * inch)))
    assert {key for key, share in found.items() if share > 1 + 1e-9} == ({name} if name else set())


def test_holes_keep_two_inches_from_other_cuts():
    hole = Hole(72 * inch, 4.5 * inch, 2 * inch)

    def gap(other):
        return shares(hole_checks(JOIST, hole, [other]))["wood to the next cut"]

    assert gap(Hole(76 * inch, 4.5 * inch, 2 * inch)) == pytest.approx(1.0)
    assert gap(Hole(75.9 * inch, 4.5 * inch, 2 * inch)) > 1
    assert gap(Hole(72 * inch, 4.5 * inch, 2 * inch)) == math.inf
    # a notch 1 in deep from the top: its nearest corner is 3 in along and 3.5 in up
    corner = gap(Notch(75 * inch, 77 * inch, 1 * inch, "top"))
    assert corner == pytest.approx(2 / (math.hypot(3, 3.5) - 1))
    assert gap(Notch(60 * inch, 80 * inch, 2.5 * inch, "bottom")) == pytest.approx(2 / (4.5 - 2.5 - 1))


@pytest.mark.parametrize("kind", ["lvl", "glulam", "i-joist", "truss"])
def test_engineered_members_are_refused(kind):
    member = Joist(12 * ft, 1.75 * inch, 9.5 * inch, kind=kind)
    with pytest.raises(OutsideRule, match="maker"):
        notch_checks(member, Notch(24 * inch, 26 * inch, 0.5 * inch))
    with pytest.raises(OutsideRule, match="maker"):
        hole_checks(member, Hole(6 * ft, 4.75 * inch, 1 * inch))


def test_limits_are_those_of_the_publication_read():
    """The numbers of the data file, in exact shares of a 9 in joist."""
    with (data_folder() / "us_cuts.csv").open(encoding="utf-8") as file:
        rows = list(csv.DictReader(line for line in file if not line.startswith("#")))
    values = {row["key"]: float(row["value"]) for row in rows if row["verified"] == "seen"}
    assert values["notch_depth_divisor"] == 6 and values["notch_length_divisor"] == 3
    assert values["end_notch_depth_divisor"] == 4 and values["hole_diameter_divisor"] == 3
    assert values["hole_edge_distance"] == 2 and values["tension_notch_nominal_thickness"] == 4
    assert Path(notches.__file__).name == "notches.py"


@pytest.mark.parametrize(
    "ask",
    [
        lambda: notch_checks(JOIST, Notch(0.0, 0.0, 20.0)),
        lambda: notch_checks(JOIST, Notch(100.0, 50.0, 20.0)),
        lambda: notch_checks(JOIST, Notch(100.0, 150.0, 9 * inch)),
        lambda: notch_checks(JOIST, Notch(100.0, 13 * ft, 20.0)),
        lambda: notch_checks(JOIST, Notch(100.0, 150.0, 20.0, "side")),
        lambda: notch_checks(JOIST, Notch(math.nan, 150.0, 20.0)),
        lambda: notch_checks(JOIST, (100.0, 150.0, 20.0)),
        lambda: notch_checks((12, 2, 9), Notch(100.0, 150.0, 20.0)),
        lambda: notch_checks(Joist(400 * ft, 38.0, 235.0), Notch(100.0, 150.0, 20.0)),
        lambda: notch_checks(Joist(12 * ft, 38.0, 235.0, kind="LVL"), Notch(100.0, 150.0, 20.0)),
        lambda: hole_checks(JOIST, Hole(6 * ft, 100.0, 0.0)),
        lambda: hole_checks(JOIST, Hole(6 * ft, -1.0, 20.0)),
        lambda: hole_checks(JOIST, Notch(100.0, 150.0, 20.0)),
        lambda: cut_sections.notched_inertia(width=38.0, depth=200.0, notch=201.0),
        lambda: cut_sections.drilled_inertia(width=38.0, depth=200.0, diameter=100.0, offset=51.0),
        lambda: notched_ends.tension_notch_shear(shear_value=1.2, width=38.0, depth=200.0, remaining=210.0),
        lambda: notched_ends.tension_notch_shear(shear_value=1.2, width=38.0, depth=200.0, remaining=150.0, power=3),
        lambda: notches.cut_limit("notch"),
    ],
)
def test_nonsense_is_refused(ask):
    with pytest.raises(BadInput):
        ask()


def test_no_depth_is_enough_for_too_much_shear():
    with pytest.raises(OutsideRule):
        notched_ends.remaining_depth_for(shear=1e6, shear_value=180 * psi, width=38.0, depth=200.0)
    found = notched_ends.remaining_depth_for(shear=4000.0, shear_value=180 * psi, width=38.0, depth=235.0)
    back = notched_ends.tension_notch_shear(shear_value=180 * psi, width=38.0, depth=235.0, remaining=found)
    assert back == pytest.approx(4000.0)


def test_arrays_pass_through_what_cuts_leave():
    cut = numpy.array([10.0, 20.0, 30.0])
    left = cut_sections.notched_section_modulus(width=38.0, depth=235.0, notch=cut)
    assert left.shape == (3,) and numpy.all(numpy.diff(left) < 0)
    assert cut_sections.drilled_section_modulus(width=38.0, depth=235.0, diameter=cut, offset=5.0).shape == (3,)
