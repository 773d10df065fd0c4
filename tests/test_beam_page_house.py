"""What a house says of its opening reaches the page of the beam: both seats, the plate, the wall, the other rulebook's room."""

import pytest

from structlib.ground.units import ft, inch
from structlib.house.file import demo_house
from structlib.house.plan import Plate, with_changes
from structlib.pages import choices
from structlib.pages.beam_page import BeamPage
from structlib.pages.show import start_values


def page(**changes):
    return BeamPage(with_changes(demo_house(), changes))


def shares(one, **values):
    """Name and share of every check at the start."""
    values = {**start_values(one), **values}
    return {check.name: check.share for check in one.result(tuple(values.items())).checks}


def test_each_seat_has_its_own_length():
    long = page()
    short = page(**{"kitchen opening": {"right_seat": 1.5 * inch, "start": 14 * ft}})
    # a third of the length presses three times as hard, but for the span that is 1 1/2 in shorter of 8 ft 4 1/2 in
    before, after = shares(long)["bearing, left seat, beam"], shares(short)["bearing, right seat, beam"]
    assert after == pytest.approx(before * 3 * (100.5 - 1.5) / 100.5, rel=1e-6)
    assert shares(short)["bearing, left seat, beam"] == pytest.approx(before * (100.5 - 1.5) / 100.5, rel=1e-6)


def test_the_plate_is_that_of_the_wall():
    fir = page(**{"middle wall": {"plate": Plate(species="Douglas Fir-Larch", grade="No.2")}})
    assert start_values(fir)["below"] == "fir" and start_values(page())["below"] == "spf"
    assert start_values(page(**{"middle wall": {"plate": None}}))["below"] == "plate"  # the weakest one listed counts
    assert start_values(page(**{"middle wall": {"made_of": "masonry"}}))["below"] == "masonry"


def test_a_beam_wider_than_its_wall_is_a_gate_and_is_never_offered():
    thin = page(**{"middle wall": {"thickness": 4.5 * inch}})
    told = thin.compute(start_values(thin))  # four plies of 1 1/2 in
    assert any("wider than what it sits on" in gate for gate in told.gates)
    assert not any("wider than" in gate for gate in thin.compute({**start_values(thin), "plies": 3}).gates)
    offered = choices.below_full(thin, count=50).rows
    assert offered and all(int(row[0].split("-")[0]) <= 3 for row in offered)


def test_the_line_load_at_the_opening_is_that_of_the_path():
    one = page(**{"upper floor": {"joists": "continuous"}})
    values = start_values(one)
    # 11 and 13 ft in one piece: M over the wall is w (11^3 + 13^3) / (8 x 24); 30 psf on it, and 20 psf cut above
    over = 30 * (11**3 + 13**3) / (8 * 24)
    asked = 30 * 12 + over / 11 + over / 13 + 20 * 12
    assert values["live"] / (47.88025898e-6 * 304.8) == pytest.approx(asked, rel=1e-6)
