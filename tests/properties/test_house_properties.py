"""What holds for every house: nothing is lost on the way down or in a file, racks agree with full checks."""

import dataclasses
import tempfile
from pathlib import Path

import numpy
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from structlib.ground.lumber import find_material, lvl
from structlib.ground.refusals import BadInput
from structlib.ground.units import ft, inch, kPa, plf, psf, psi
from structlib.house.beam import BeamChoice, BeamJob, TypedLoad, check_beam, design_span
from structlib.house.model import (
    House,
    Joists,
    Layer,
    Level,
    Opening,
    WallUnder,
    demo_house,
    house_from_data,
    read_house,
    with_level,
    write_house,
)
from structlib.house.sizing import build_rack, give_way, limit_widths, size_beams
from structlib.house.takedown import area_loads, take_down, widths_on_wall
from structlib.mechanics.beams import LineLoad
from structlib.rules.check import BeamUse, Seat
from structlib.rules.us.book import RULEBOOK

text = st.text(st.characters(exclude_categories=("Cs",)), max_size=12)
area_load = st.floats(0.0, 60.0).map(lambda value: value * psf)
span = st.one_of(
    st.floats(2.0, 20.0).map(lambda value: value * ft), st.integers(24, 240).map(lambda value: value * inch)
)
layers = st.lists(st.builds(Layer, text, area_load), max_size=3).map(tuple)
joists = st.one_of(
    st.none(),
    st.builds(
        Joists,
        st.just("Hem-Fir"),
        st.sampled_from(("No.1", "No.2")),
        st.sampled_from(("2x6", "2x8", "2x10", "2x12")),
        st.sampled_from((12 * inch, 16 * inch, 24 * inch, 407.3)),
        st.integers(1, 2),
    ),
)
walls = st.one_of(st.none(), st.builds(WallUnder, st.floats(0, 10).map(lambda v: v * ft), area_load))


@st.composite
def levels(draw):
    shared = {
        "name": draw(text),
        "joist": draw(joists),
        "layers": draw(layers),
        "wall_under": draw(walls),
        "lands": draw(st.booleans()),
    }
    kind = draw(st.sampled_from(("floor", "ceiling", "roof")))
    left, right = draw(span), draw(span)
    one_side = draw(st.sampled_from(("both", "left", "right")))
    if one_side == "left":
        right = 0.0
    elif one_side == "right":
        left = 0.0
    if kind == "roof":
        over = draw(st.floats(0.0, 3.0)) * ft if one_side != "both" else 0.0
        return Level(
            kind=kind,
            left_span=left,
            right_span=right,
            overhang=over,
            snow=draw(area_load),
            roof_live=draw(area_load),
            ridge=draw(st.sampled_from(("board", "beam"))),
            slope=(draw(st.floats(0.0, 12.0)), 12.0),
            **shared,
        )
    both = draw(st.sampled_from(("cut", "continuous"))) if one_side == "both" else "cut"
    return Level(kind=kind, left_span=left, right_span=right, joists=both, live=draw(area_load), **shared)


openings = st.builds(
    Opening,
    clear_width=st.floats(1.0, 20.0).map(lambda v: v * ft),
    height=st.floats(3.0, 9.0).map(lambda v: v * ft),
    wall_thickness=st.floats(2.0, 12.0).map(lambda v: v * inch),
    greatest_depth=st.floats(3, 24).map(lambda v: v * inch),
    greatest_width=st.floats(1.5, 12).map(lambda v: v * inch),
    position=st.sampled_from(("dropped", "flush")),
    left_seat=st.floats(0.5, 12).map(lambda v: v * inch),
    right_seat=st.floats(0.5, 12).map(lambda v: v * inch),
    plate_species=text,
    plate_grade=text,
)
houses = st.builds(
    House,
    name=text,
    levels=st.lists(levels(), min_size=1, max_size=3).map(tuple),
    opening=openings,
    invented=st.booleans(),
    note=text,
)


def closely(one, other):
    """Equal words and flags, and numbers within 1e-12 of themselves."""
    if isinstance(one, float) and isinstance(other, float):
        return one == pytest.approx(other, rel=1e-12, abs=0.0)
    if dataclasses.is_dataclass(one):
        return type(one) is type(other) and all(
            closely(getattr(one, f.name), getattr(other, f.name)) for f in dataclasses.fields(one)
        )
    if isinstance(one, tuple):
        return len(one) == len(other) and all(map(closely, one, other))
    return one == other


@settings(max_examples=50, deadline=None)
@given(house=houses)
def test_a_house_is_read_back_as_it_was_written(house):
    with tempfile.TemporaryDirectory() as folder:
        path = write_house(house, Path(folder) / "house.toml")
        back = read_house(path)
        assert closely(back, house)
        # and what was read once is written the same way again
        assert write_house(back, Path(folder) / "again.toml").read_bytes() and closely(
            read_house(Path(folder) / "again.toml"), back
        )


@settings(max_examples=50, deadline=None)
@given(rows=st.lists(levels(), max_size=4))
def test_nothing_is_lost_on_the_way_down(rows):
    found = take_down(rows)
    entered = sum(share.entered for share in found.shares)
    walls_of = sum(share.wall for share in found.shares)
    # what goes elsewhere is worked out from the far ends on their own, never as the rest
    assert abs(found.left_over) <= 1e-9 * max(entered, 1.0)
    on_wall = found.total.sum_for_equilibrium_only()
    assert on_wall <= entered * (1 + 1e-9) + walls_of or any(
        level.joists == "continuous" or level.overhang for level in rows
    )
    for level, share in zip(rows, found.shares):
        assert share.line["dead"] == pytest.approx(
            area_loads(level)["dead"] * (share.left_width + share.right_width)
        )


@settings(max_examples=40, deadline=None)
@given(length=st.floats(2.0, 20.0))
def test_equal_continuous_spans_bring_exactly_a_quarter_more(length):
    cut = Level("floor", "floor", length * ft, length * ft, live=40 * psf)
    whole = dataclasses.replace(cut, joists="continuous")
    assert sum(widths_on_wall(whole)) == pytest.approx(1.25 * sum(widths_on_wall(cut)), rel=1e-12)
    assert take_down([whole]).total["live"] == pytest.approx(1.25 * take_down([cut]).total["live"], rel=1e-12)


@settings(max_examples=40, deadline=None)
@given(left=st.floats(4.0, 20.0), right=st.floats(4.0, 20.0))
def test_continuous_spans_always_bring_more_than_cut_ones(left, right):
    cut = Level("floor", "floor", left * ft, right * ft)
    assert sum(widths_on_wall(dataclasses.replace(cut, joists="continuous"))) > sum(widths_on_wall(cut))


@settings(max_examples=50, deadline=None)
@given(pairs=st.lists(st.tuples(st.floats(0, 100), st.floats(0, 100)), max_size=12))
def test_give_way_steps_ascend_without_gaps_and_each_is_the_cheapest_that_still_holds(pairs):
    limit, price = numpy.array([p for p, _ in pairs]), numpy.array([p for _, p in pairs])
    steps = give_way(limit, price)
    assert [start for _, start, _ in steps] == [0.0, *[end for _, _, end in steps[:-1]]][: len(steps)]
    assert all(start < end for _, start, end in steps)
    assert (steps[-1][2] if steps else 0.0) == (limit.max() if len(limit) else 0.0)
    for row, start, end in steps:
        assert end == limit[row]
        holds = limit >= end
        assert price[row] == price[holds].min()


RACK = build_rack(
    [
        (find_material("Hem-Fir", grade), 1.5 * inch, depth * inch)
        for grade in ("No.2", "Stud")
        for depth in (5.5, 7.25, 9.25, 11.25)
    ]
    + [(lvl("2.0E-2900Fb"), 1.75 * inch, depth * inch) for depth in (7.25, 9.5, 11.875, 14.0)],
    plies=(1, 2, 3, 4),
)


@st.composite
def even_jobs(draw, most=600):
    clear = draw(st.floats(3.0, 20.0)) * ft

    def seat():
        return Seat(
            draw(st.floats(1.0, 6.0)) * inch,
            draw(st.sampled_from(("plate", "post", "masonry", "hanger"))),
            425 * psi,
            "plate",
        )

    left, right = seat(), seat()
    length = design_span(clear_width=clear, left_seat=left.length, right_seat=right.length)
    loads = tuple(
        TypedLoad(word, LineLoad(0.0, length, draw(st.floats(0.0, most)) * plf))
        for word in draw(st.lists(st.sampled_from(("dead", "live", "roof live", "snow")), max_size=4))
    )
    return BeamJob(
        clear,
        left,
        right,
        loads,
        unbraced_length=draw(st.sampled_from((0.0, 2 * ft, clear))),
        loaded_on=draw(st.sampled_from(("top", "side"))),
        wet=draw(st.booleans()),
        use=draw(
            st.sampled_from(
                (
                    BeamUse(),
                    BeamUse("any other structural member", creep_decides=True),
                    BeamUse("lintel under masonry veneer"),
                )
            )
        ),
    )


@settings(max_examples=40, deadline=None)
@given(job=even_jobs(), row=st.integers(0, len(RACK.depth) - 1))
def test_a_row_of_a_rack_is_the_full_check_of_that_beam(job, row):
    share = size_beams(job, RACK, RULEBOOK).share[row]
    try:
        full = check_beam(job, RACK.choice(row), RULEBOOK).share
    except ValueError:
        assert numpy.isinf(share)
        return
    assert share == pytest.approx(full, rel=1e-9)


@settings(max_examples=30, deadline=None)
@given(job=even_jobs(most=30), live=st.floats(5, 60), dead=st.floats(0, 30))
def test_limit_widths_stand_where_the_full_check_is_one(job, live, dead):
    length = job.span

    def at(width):
        loads = (
            TypedLoad("live", LineLoad(0.0, length, width * live * psf)),
            TypedLoad("dead", LineLoad(0.0, length, width * dead * psf)),
        )
        return dataclasses.replace(job, loads=job.loads + loads)

    limit, which, names = limit_widths(at, RACK, RULEBOOK)
    for row in range(0, len(RACK.depth), 7):
        if limit[row] > 0:
            assert check_beam(at(float(limit[row])), RACK.choice(row), RULEBOOK).share == pytest.approx(
                1.0, abs=1e-9
            )
        else:
            assert size_beams(at(1e-9), RACK, RULEBOOK).share[row] >= 1 - 1e-9


broken = st.recursive(
    st.one_of(st.none(), st.booleans(), st.integers(), st.floats(), text),
    lambda inner: st.one_of(st.lists(inner, max_size=3), st.dictionaries(text, inner, max_size=3)),
    max_leaves=5,
)


@settings(max_examples=60, deadline=None)
@given(
    field=st.sampled_from(
        (
            "name",
            "kind",
            "left_span",
            "right_span",
            "joists",
            "joist",
            "layers",
            "live",
            "slope",
            "ridge",
            "wall_under",
            "lands",
            "overhang",
        )
    ),
    value=broken,
)
def test_any_value_in_any_field_of_a_level_is_read_or_answered_with_a_sentence(field, value):
    level = {"name": "floor", "kind": "floor", "left_span": "12 ft", "live": "40 psf", field: value}
    data = {"name": "A house", "levels": [level], "opening": {"clear_width": "12 ft"}}
    try:
        house_from_data(data)
    except BadInput as error:
        assert str(error) and len(str(error)) < 5000


@settings(max_examples=60, deadline=None)
@given(field=st.sampled_from([f.name for f in dataclasses.fields(Level)]), value=broken)
def test_any_value_set_on_a_level_is_taken_or_answered_with_a_sentence(field, value):
    try:
        changed = with_level(demo_house(), 1, **{field: value})
        take_down(changed.levels)
    except BadInput as error:
        assert str(error)


@settings(max_examples=60, deadline=None)
@given(field=st.sampled_from([f.name for f in dataclasses.fields(BeamJob)]), value=broken)
def test_any_value_in_a_job_is_taken_or_answered_with_a_sentence(field, value):
    seat = Seat(3 * inch)
    job = BeamJob(12 * ft, seat, seat, (TypedLoad("live", LineLoad(0.0, 8 * ft, 2 * kPa * ft)),))
    try:
        result = check_beam(
            dataclasses.replace(job, **{field: value}),
            BeamChoice(find_material("Hem-Fir", "No.2"), 1.5 * inch, 9.25 * inch, 2),
            RULEBOOK,
        )
        assert numpy.isfinite(result.share)
    except ValueError as error:
        assert type(error).__name__ in ("BadInput", "OutsideRule")
