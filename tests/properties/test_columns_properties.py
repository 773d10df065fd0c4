"""Posts, pads and seats of any size: what must hold whatever the numbers are."""

import numpy
import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from structlib.ground.lumber import find_material
from structlib.ground.refusals import OutsideRule
from structlib.ground.units import ft, inch, lb, psf, psi
from structlib.rules.us import footings, seats
from structlib.rules.us.column_stability import column_stability_factor
from structlib.rules.us.columns import column_capacity, crushing_value
from structlib.rules.us.header_tables import find_header_basis, header_span
from structlib.rules.us.steel_columns import steel_capacity, steel_post, steel_sections

WOODS = st.sampled_from(
    [
        find_material("Douglas Fir-Larch", "No.2"),
        find_material("Hem-Fir", "Select Structural"),
        find_material("Spruce-Pine-Fir", "No.1/No.2"),
    ]
)
DEPTHS = st.sampled_from([3.5, 5.5, 7.25])
HEIGHTS = st.floats(1.0, 14.0)
FASTENINGS = st.sampled_from(["nailed", "bolted"])


def carried(wood, depth, heights, plies=3, **more):
    return column_capacity(
        wood,
        ply_width=1.5 * inch,
        depth=depth * inch,
        height=numpy.atleast_1d(heights) * ft,
        plies=plies,
        time_factor=1.0,
        **more,
    ).load


@settings(max_examples=50, deadline=None)
@given(WOODS, DEPTHS, HEIGHTS, HEIGHTS, st.integers(1, 5), FASTENINGS)
def test_a_taller_post_never_carries_more(wood, depth, one, other, plies, fastening):
    low, high = sorted((one, other))
    short, tall = carried(wood, depth, [low, high], plies, fastening=fastening)
    assert tall <= short * (1 + 1e-12)


@settings(max_examples=50, deadline=None)
@given(WOODS, DEPTHS, HEIGHTS, FASTENINGS)
def test_one_more_ply_never_carries_less(wood, depth, height, fastening):
    loads = carried(wood, depth, height, numpy.arange(1, 6), fastening=fastening)
    assert numpy.all(numpy.diff(loads) >= -1e-9)


@settings(max_examples=50, deadline=None)
@given(WOODS, DEPTHS, HEIGHTS, st.integers(1, 5), FASTENINGS)
def test_no_post_carries_more_than_it_is_crushed_by(wood, depth, height, plies, fastening):
    value, _ = crushing_value(wood, width=1.5 * inch, depth=depth * inch, time_factor=1.0)
    [load] = carried(wood, depth, height, plies, fastening=fastening)
    assert 0 <= load <= value * 1.5 * plies * depth * inch**2 * (1 + 1e-12)


@settings(max_examples=40, deadline=None)
@given(WOODS, DEPTHS, HEIGHTS, st.integers(1, 5), st.floats(0.0, 14.0))
def test_a_brace_never_takes_strength_away(wood, depth, height, plies, held):
    [free] = carried(wood, depth, height, plies)
    [across] = carried(wood, depth, height, plies, held_width=held * ft)
    [along] = carried(wood, depth, height, plies, held_depth=held * ft)
    assert across >= free * (1 - 1e-12) and along >= free * (1 - 1e-12)


@settings(max_examples=40, deadline=None)
@given(WOODS, DEPTHS, HEIGHTS, st.integers(2, 5))
def test_bolted_is_never_less_than_nailed(wood, depth, height, plies):
    assert carried(wood, depth, height, plies, fastening="bolted") >= carried(wood, depth, height, plies)


@settings(max_examples=40, deadline=None)
@given(WOODS, st.sampled_from([3.5]), st.floats(1.0, 14.0), st.floats(0.5, 14.0), st.floats(0.5, 14.0))
def test_a_square_post_is_the_same_from_either_side(wood, side, height, one, other):
    def load(first, second):
        return column_capacity(
            wood,
            ply_width=side * inch,
            depth=side * inch,
            height=numpy.array([height]) * ft,
            time_factor=1.15,
            held_depth=first * ft,
            held_width=second * ft,
        ).load[0]

    assert load(one, other) == pytest.approx(load(other, one), rel=1e-12)


@settings(max_examples=40, deadline=None)
@given(WOODS, DEPTHS, HEIGHTS, st.integers(1, 5))
def test_one_post_and_an_array_of_one_agree_or_the_one_is_refused(wood, depth, height, plies):
    [load] = carried(wood, depth, height, plies)
    ask = dict(ply_width=1.5 * inch, depth=depth * inch, height=height * ft, plies=plies, time_factor=1.0)
    if load == 0:
        with pytest.raises(OutsideRule, match="too slender"):
            column_capacity(wood, **ask)
    else:
        assert column_capacity(wood, **ask).load == pytest.approx(load, rel=1e-12)


@settings(max_examples=40, deadline=None)
@given(st.floats(1e-6, 1e12), st.sampled_from([0.8, 0.85, 0.9]))
def test_column_factor_lies_under_crushing_and_under_euler(ratio, shape):
    factor = float(column_stability_factor(ratio=ratio, shape=shape))
    assert 0 <= factor <= min(1.0, ratio) * (1 + 1e-6)


@settings(max_examples=30, deadline=None)
@given(st.sampled_from(steel_sections()), st.floats(1.0, 14.0), st.floats(1.0, 14.0))
def test_steel_falls_with_height_and_never_beats_its_yield(name, one, other):
    low, high = sorted((one, other))
    post = steel_post(name)
    loads = steel_capacity(post, height=numpy.array([low, high]) * ft).load
    assert loads[1] <= loads[0] <= post.yield_strength * post.area / 1.67 * (1 + 1e-12)


@settings(max_examples=40, deadline=None)
@given(st.floats(500, 30000), st.sampled_from(footings.soil_names()), st.floats(2.0, 12.0))
def test_a_plain_pad_keeps_to_the_soil_and_to_its_own_thickness(load, name, base):
    soil = footings.find_soil(name)
    try:
        side, thickness = footings.plain_pad(load=load * lb, soil=soil, base=base * inch)
    except OutsideRule:
        assume(False)
    for check in footings.pad_checks(load=load * lb, side=side, thickness=thickness, soil=soil, base=base * inch):
        assert check.share <= 1 + 1e-9, check.name


@settings(max_examples=40, deadline=None)
@given(st.floats(100, 20000), st.sampled_from([1.5, 3.0, 3.5, 4.5, 5.25]), st.floats(300, 900))
def test_jack_studs_are_enough_and_not_one_too_many(reaction, width, value):
    studs = seats.jack_studs(reaction=reaction * lb, width=width * inch, bearing_value=value * psi)
    assert studs.share <= 1 + 1e-8
    assert studs.count == 1 or studs.seat_needed > (studs.count - 1) * 1.5 * inch * (1 - 1e-9)


@settings(max_examples=40, deadline=None)
@given(st.floats(4, 40), st.floats(3, 24), st.floats(0, 12), st.floats(0, 12))
def test_a_beam_that_swings_in_fits_and_its_seats_add_up(clear, across, near, far):
    found = seats.swing_in(clear_width=clear * ft, across=across * inch, near_pocket=near * inch, far_pocket=far * inch)
    assert found.near_overlap <= near * inch + 1e-6 and found.far_overlap <= far * inch + 1e-6
    assert found.length == pytest.approx(clear * ft + found.near_overlap + found.far_overlap)


@settings(max_examples=30, deadline=None)
@given(
    st.floats(12, 36),
    st.floats(12, 36),
    st.sampled_from(["2-2x8", "3-2x10", "4-2x12"]),
    st.sampled_from([30, 50, 70]),
)
def test_a_wider_building_never_lengthens_a_header(one, other, size, snow):
    basis = find_header_basis("R602.7(1) center-bearing floor")
    low, high = sorted((one, other))
    cell = header_span(basis, size, building_width=numpy.array([low, high]) * ft, ground_snow=snow * psf)
    assert cell.span[1] <= cell.span[0] * (1 + 1e-12)
