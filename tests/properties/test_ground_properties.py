"""What holds for every input: round trips, fuzzed text, monotonic sections, sums of loads."""

import math

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from structlib.ground import loads, reading
from structlib.ground.refusals import BadInput
from structlib.ground.sections import Section
from structlib.ground.showing import DIMENSIONS, show
from structlib.ground.units import deg, ft, inch, kN, kPa, lb, m, pcf, plf, psf, psi

# By dimension: greatest ordinary size, and half the last place shown (US, metric), in library units.
ROUNDING = {
    "length": (100 * ft, inch / 32, 0.5),
    "section length": (60 * inch, inch / 32, 0.5),
    "small length": (4 * inch, inch * 0.005, 0.05),
    "force": (1e5 * lb, lb / 2, 5.0),
    "weight": (1e5 * lb, lb / 2, 9.80665 / 2),
    "line load": (1e4 * plf, plf / 2, 0.005),
    "area load": (1000 * psf, psf / 2, kPa * 0.005),
    "stress": (3e6 * psi, psi / 2, 0.5),
    "moment": (1e5 * lb * ft, lb * ft / 2, kN * m * 0.005),
    "area": (999 * inch**2, inch**2 * 0.005, 0.5),
    "section modulus": (999 * inch**3, inch**3 * 0.005, 500.0),
    "inertia": (999 * inch**4, inch**4 * 0.005, 5000.0),
    "stiffness": (9999e6 * lb * inch**2, 0.05e6 * lb * inch**2, 0.5 * kN * m**2),
    "weight density": (500 * pcf, pcf / 20, 0.005e-6),
    "angle": (90 * deg, deg / 20, deg / 20),
    "frequency": (500.0, 0.05, 0.05),
    "acceleration": (30000.0, ft / 20, 5.0),
    "ratio": (5.0, 0.005, 0.005),
}


def test_every_measured_dimension_has_a_round_trip():
    assert set(ROUNDING) | {"count"} == set(DIMENSIONS) == set(reading.SPELLINGS)


@pytest.mark.parametrize("dimension", ROUNDING)
@settings(max_examples=40, deadline=None)
@given(share=st.floats(-1, 1))
def test_what_is_shown_is_read_back_within_the_rounding(dimension, share):
    greatest, *half_places = ROUNDING[dimension]
    value = share * greatest
    for system, half_place in zip(("us", "metric"), half_places):
        text = show(value, dimension, system)
        back = reading.read(text, dimension, allow_negative=True)
        assert abs(back - value) <= half_place * (1 + 1e-9) + 1e-12 * abs(value), text
        assert "e" not in text.removesuffix("deg")


@settings(max_examples=60, deadline=None)
@given(number=st.integers(0, 10**6))
def test_counts_are_read_back_as_shown(number):
    assert reading.read(show(number, "count"), "count") == number


@settings(max_examples=60, deadline=None)
@given(
    feet=st.integers(0, 200),
    sixteenths=st.integers(0, 191),
    form=st.sampled_from(("{f}'-{i}\"", "{f}' {i}\"", "{f} ft {i} in", "{f} feet {i} inches", "{f}\u2032 {i}\u2033")),
)
def test_feet_and_inches_in_every_form(feet, sixteenths, form):
    whole, part = divmod(sixteenths, 16)
    inches = f"{whole} {part}/16" if part else f"{whole}"
    text = form.format(f=feet, i=inches)
    assert reading.read(text, "length") == pytest.approx(feet * 304.8 + sixteenths * 25.4 / 16, abs=1e-9)


@settings(max_examples=60, deadline=None)
@given(ratio=st.floats(0.98, 1.02))
def test_a_share_over_one_is_never_shown_as_100_percent_or_less(ratio):
    percent = float(show(ratio, "ratio").removesuffix(" %"))
    if abs(ratio - 1) > 1e-5:
        assert (percent > 100) == (ratio > 1)


PIECES = st.sampled_from(
    [
        "12",
        "6",
        "1/2",
        "0",
        ".",
        ",",
        "-",
        "'",
        '"',
        " ",
        "ft",
        "in",
        "psf",
        "lb",
        "m",
        "e5",
        "\u2032",
        "\u00bd",
        "/",
        "%",
        "\n",
        "\u0663",
        "nan",
        "x",
    ]
)


@settings(max_examples=300, deadline=None)
@given(
    text=st.one_of(st.text(max_size=20), st.lists(PIECES, max_size=8).map("".join)),
    dimension=st.sampled_from(DIMENSIONS),
)
def test_any_text_is_read_or_refused_in_one_sentence(text, dimension):
    try:
        value = reading.read(text, dimension)
    except BadInput as refusal:
        assert str(refusal)
    else:
        assert math.isfinite(value) and value >= 0


@settings(max_examples=60, deadline=None)
@given(st.one_of(st.none(), st.booleans(), st.floats(), st.integers(), st.binary(max_size=5), st.lists(st.text())))
def test_anything_but_text_with_a_unit_is_refused_as_a_length(thing):
    with pytest.raises(BadInput):
        reading.read(thing, "length")


WIDTHS = st.floats(0.5, 6).map(lambda inches: inches * inch)


@settings(max_examples=50, deadline=None)
@given(width=WIDTHS, depth=WIDTHS, more=st.floats(1.01, 3), plies=st.integers(1, 6))
def test_deeper_wider_or_more_plies_never_gives_less(width, depth, more, plies):
    base = Section(ply_width=width, depth=depth, plies=plies)
    for bigger in (
        Section(ply_width=width * more, depth=depth, plies=plies),
        Section(ply_width=width, depth=depth * more, plies=plies),
        Section(ply_width=width, depth=depth, plies=plies + 1),
    ):
        for what in ("area", "section_modulus", "inertia"):
            assert getattr(bigger, what) > getattr(base, what)
    twice = Section(ply_width=width, depth=2 * depth, plies=plies)
    assert twice.inertia == pytest.approx(8 * base.inertia)
    assert twice.section_modulus == pytest.approx(4 * base.section_modulus)
    assert base.inertia == pytest.approx(base.section_modulus * depth / 2)


SPANS = st.floats(1, 60).map(lambda feet: feet * ft)


@settings(max_examples=50, deadline=None)
@given(span=SPANS, near=st.floats(0, 8), far=st.floats(0, 8))
def test_the_two_walls_together_carry_the_whole_width(span, near, far):
    here = loads.tributary_width_wall(span=span, overhang=near * ft, far_overhang=far * ft)
    there = loads.tributary_width_wall(span=span, overhang=far * ft, far_overhang=near * ft)
    assert here + there == pytest.approx(span + near * ft + far * ft)


@settings(max_examples=50, deadline=None)
@given(load=st.floats(0, 100), rise=st.floats(0, 24))
def test_slope_parts_put_together_are_the_whole_and_plan_is_never_less(load, rise):
    along, square = loads.slope_parts(load * psf, rise=rise)
    assert math.hypot(along, square) == pytest.approx(load * psf)
    assert loads.slope_to_plan(load * psf, rise=rise) >= load * psf * (1 - 1e-12)


VALUES = st.dictionaries(st.sampled_from(loads.LOAD_TYPES), st.floats(-1e6, 1e6))


@settings(max_examples=50, deadline=None)
@given(one=VALUES, other=VALUES, factor=st.floats(-10, 10))
def test_adding_and_scaling_keep_the_types_apart(one, other, factor):
    first, second = loads.LoadsByType(one), loads.LoadsByType(other)
    both = (first + second).scale(factor)
    for kind in loads.LOAD_TYPES:
        assert both[kind] == pytest.approx(factor * (one.get(kind, 0) + other.get(kind, 0)), abs=1e-6)
    assert first + second == second + first
    assert (first + second).sum_for_equilibrium_only() == pytest.approx(
        first.sum_for_equilibrium_only() + second.sum_for_equilibrium_only(), abs=1e-6
    )
