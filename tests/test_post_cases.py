"""The tables of the notebooks on posts and on what is under them against hand arithmetic in inches, feet and pounds."""

import math
from fractions import Fraction

import pytest

from structlib.ground.refusals import BadInput
from structlib.ground.units import ft, inch, lb, plf
from structlib.pages.kit import show
from structlib.pages.topics.post import cases as post_cases
from structlib.pages.topics.post import transfer as transfer_cases
from structlib.pages.topics.under_post import myths, steel
from structlib.pages.topics.under_post import pads as pad_cases


def _number(text):
    return float(text.split()[0].replace(",", ""))


def _factor(ratio, c=0.8):
    half = (1 + ratio) / (2 * c)
    return half - math.sqrt(half**2 - ratio / c)


@pytest.mark.parametrize("feet", [6, 8, 10, 12])
def test_posts_of_plies_by_the_formula_worked_here(feet):
    # Hem-Fir No.2, 2x6: F_c 1300 psi, C_F 1.1, E_min 470,000 psi; nailed plies K_f 0.6
    rows = {row[0]: row[1:] for row in post_cases.plies_by_height().rows}
    strength = 1300 * 1.1
    for plies, cell in zip((2, 3), rows[f"{feet} ft"]):
        across = _factor(0.822 * 470_000 / (12 * feet / (1.5 * plies)) ** 2 / strength)
        assert _number(cell) == pytest.approx(0.6 * across * strength * 1.5 * plies * 5.5, abs=0.6)
        assert cell.endswith("across")


def test_bolts_carry_more_than_nails_and_a_wall_more_than_both():
    for _, nailed, bolted, walled in post_cases.nailed_or_bolted().rows:
        assert _number(bolted) == pytest.approx(_number(nailed) * 0.75 / 0.6, abs=1.5)
        assert _number(walled) > _number(bolted)


def test_a_tall_wall_without_its_floor():
    rows = {row[0]: row for row in post_cases.balloon_wall().rows}
    assert 18 * 12 / 3.5 > 50 and rows["2 plies 2x4"][2] == "too slender"
    value = 1300 * 1.1 * _factor(0.822 * 470_000 / (18 * 12 / 5.5) ** 2 / (1300 * 1.1))
    assert _number(rows["2 plies 2x6"][2]) == pytest.approx(value * 3 * 5.5, abs=0.6)


@pytest.mark.parametrize("place", [1, 3, 7.5])
def test_both_posts_below_a_transfer_beam_carry_the_load(place):
    rows = [row[1] for row in transfer_cases.transfer_beam(12_000 * lb, 10 * ft, place * ft).rows]
    left = 12_000 * (10 - place) / 10
    assert [_number(text) for text in rows[:5]] == [left, 12_000 - left, 12_000, 0, left * place]


def test_a_post_that_stands_off_the_transfer_beam_is_refused():
    with pytest.raises(BadInput):
        transfer_cases.transfer_beam(12_000 * lb, 10 * ft, 11 * ft)


def test_a_new_post_on_an_old_header():
    rows = {row[0]: row[1:] for row in transfer_cases.post_on_a_header(dead=2000 * lb, live=4000 * lb).rows}
    before, after = (_number(text) for text in rows["push on each side"])
    assert after - before == 3000
    # Hem-Fir gives 405 psi across its grain; the header is 3 in wide
    assert rows["jack studs each end"] == (
        str(math.ceil(before / 3 / 405 / 1.5)),
        str(math.ceil(after / 3 / 405 / 1.5)),
    )


def test_the_load_goes_all_around_the_stair_opening():
    rows = {row[0]: row[1] for row in transfer_cases.stair_opening().rows}
    # tail joists 4 ft long bring half their span; 52 psf in all
    assert _number(rows["tail joists bring to the header"]) == 52 * 2
    own = 1.5 * 2 * 9.25 / 144  # square feet of a 2-2x10
    # specific gravity 0.43 when dry, and 15 % of water in it
    pounds = 62.4 * 0.43 * 1.15 / (1 + 0.009 * 15 * 0.43)
    push = (52 * 2 + pounds * own) * 3.5 / 2
    assert _number(rows["header brings to each trimmer, its own weight too"]) == round(push) == 192
    walls = [_number(rows[f"trimmer to the wall at the {where}"]) for where in ("tail joists", "stair")]
    brought = 52 * (8 / 12) * 14 + push
    assert sum(walls) == pytest.approx(brought + pounds * own * 14, abs=1.5)  # each shown to a pound


def test_a_stair_across_the_joists_asks_more_of_the_same_trimmers():
    rows = {row[0]: row[1] for row in transfer_cases.stair_opening(wide=4 * ft, long=8 * ft).rows}
    push = _number(rows["header brings to each trimmer, its own weight too"])
    assert _number(rows["tail joists bring to the header"]) == 52 * 5 and push > 260 * 8 / 2
    # at the header, 10 ft from one wall and 4 ft from the other: 5.5 plf is the weight of two 2x10
    moment = push * 10 * 4 / 14 + (52 * 8 / 12 + 5.5) * 10 * 4 / 2
    share = moment * 12 / (2 * 1.5 * 9.25**2 / 6) / (850 * 1.1)  # Hem-Fir No.2, a 2x10
    assert share > 1.1 and rows["trimmer 2-2x10, share"] == f"{100 * share:.0f} % (bending)"


def test_the_stair_itself_is_told_to_be_left_out():
    told = transfer_cases.stair_opening().caption
    assert "Not in: the stair that hangs on the header" in told and "their weight is in" in told


def test_pads_press_no_harder_than_their_soil():
    for _, bearing, side, thick, weighs in pad_cases.pads_by_soil(12_000 * lb).rows[:4]:
        feet = [sum(float(Fraction(part)) for part in text.split()[:-1]) / 12 for text in (side, thick)]
        pressed = 12_000 / feet[0] ** 2 + 150 * feet[1]
        smaller = feet[0] - 0.5 / 12  # sides are shown to the next half inch up
        assert pressed <= _number(bearing) < 12_000 / smaller**2 + 150 * (smaller - 5.5 / 12) / 2
        assert (feet[0] - 5.5 / 12) / 2 <= feet[1] + 1e-9  # no wider past the post than thick
        assert _number(weighs) == pytest.approx(150 * feet[0] ** 2 * feet[1], abs=0.6)


def test_footing_widths_by_hand():
    rows = pad_cases.wall_footings(2000 * plf).rows
    assert rows[0][1] == "17 1/4 in"  # 2000 / (1500 - 150 * 8 / 12) ft = 17.14 in
    assert rows[2][1] == "12 in"  # 8.3 in, and the code asks 12


def test_the_slab_is_refused_for_good_and_only_asked_for_a_while():
    rows = pad_cases.slab_under_a_post(12_000 * lb, plate=6 * inch, slab=4 * inch).rows
    assert rows[0][1].startswith("refused: a post that stays needs a footing")
    pressure, shear = 12_000 / (14 / 12) ** 2, 12_000 / (4 * 10 * 4)
    assert rows[1][1].startswith(f"{pressure:,.0f} psf") and f"{shear:.0f} psi" in rows[1][1]
    assert "engineer" in rows[2][1]


def test_the_stone_wall_has_no_verdict():
    table = pad_cases.stone_wall(10_000 * lb)
    assert "without a verdict" in table.caption and "%" not in repr(table)
    assert _number(table.rows[3][1]) == pytest.approx(10_000 / (7 * 1.5), abs=0.5)
    # an opening 6 in away leaves 6 in on either side of the 12 in plate, however far down
    for row in table.rows[1:]:
        assert _number(row[3]) == pytest.approx(10_000 / (2 * 1.5), abs=0.5)


def test_telescoping_and_thin_posts_do_not_stay():
    told = [row[1].split(":")[0] for row in steel.adjustable_posts().rows]
    assert told == ["refused", "refused", "may stay if"]
    assert "Schedule 40" in steel.adjustable_posts().rows[2][1]  # 3 in alone is not what IRC R407.3 asks


def test_the_printed_columns_come_out():
    lines = [show.published(key, value) for key, value in post_cases.printed_columns().items()]
    assert len(lines) == 5 and all("seen in" in line for line in lines)


def test_the_printed_steel_pipes_come_out():
    lines = [show.published(key, value) for key, value in steel.printed_pipes().items()]
    assert len(lines) == 3 and all("seen in" in line for line in lines)


def test_the_slab_myth_is_answered_by_hand_numbers():
    text = myths.the_slab_will_do()
    assert f"{math.sqrt(10_000 / 1500) * 12:.0f} in square" in text
    assert f"{2000 * math.pi / 4 * (8 / 12) ** 2:.0f} lb" in text
