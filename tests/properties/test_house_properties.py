"""What holds for every house: nothing is lost on the way down or in a file, racks agree with full checks."""

import dataclasses
import random
import tomllib

import numpy
import pytest
import tomlkit
from hypothesis import given, settings
from hypothesis import strategies as st

from structlib.ground.lumber import find_material, lvl
from structlib.ground.refusals import BadInput
from structlib.ground.units import ft, inch, kPa, plf, psf, psi
from structlib.house.beam import BeamChoice, BeamJob, TypedLoad, check_beam, design_span
from structlib.house.fields import read_record, write_record
from structlib.house.file import demo_house, read_house, write_house
from structlib.house.influence import influence
from structlib.house.path import follow
from structlib.house.plan import House, Level, with_changes
from structlib.house.sizing import build_rack, give_way, limit_widths, size_beams
from structlib.mechanics.beams import LineLoad
from structlib.rules.check import BeamUse, Seat
from structlib.rules.choice import RULEBOOK

WORDS = ("a", "Grüne Gasse", 'quotes " and \\', "two\nlines", "# no comment", "\x7f", "\u2028", "12 ft")


def any_value(about, draw):
    """Any value that a field accepts, drawn from what is said of the field."""
    kind, low, high = about["kind"], about["low"], about["high"]
    makers = {
        "yes or no": lambda: draw.random() < 0.5,
        "slope": lambda: (draw.uniform(0.0, 12.0), 12.0),
        "names": lambda: tuple(draw.sample(WORDS, draw.randint(0, 3))),
        "text": lambda: draw.choice(WORDS),
        "choice": lambda: draw.choice(about["choices"]),
        "count": lambda: draw.randint(low, high),
        "record": lambda: any_record(about["record"], draw),
        "records": lambda: tuple(any_record(about["record"], draw) for _ in range(draw.randint(0, 2))),
    }
    return makers.get(kind, lambda: draw.choice((low, high, draw.uniform(low, high))))()


def any_record(kind, draw):
    return kind(
        **{
            one.name: None if one.default is None and draw.random() < 0.3 else any_value(one.metadata, draw)
            for one in dataclasses.fields(kind)
        }
    )


text = st.text(max_size=12)


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


@pytest.mark.parametrize("seed", range(60))
def test_every_part_of_a_house_is_read_back_as_it_was_written(seed):
    draw = random.Random(seed)
    for one in dataclasses.fields(House):
        if one.metadata["kind"] == "records":
            part = any_record(one.metadata["record"], draw)
            text = tomlkit.dumps(write_record(part))
            assert closely(read_record(type(part), tomllib.loads(text), "it"), part)


@pytest.mark.parametrize("name", WORDS)
def test_a_house_is_read_back_from_its_file(tmp_path, name):
    house = dataclasses.replace(demo_house(), name=name, note=name, invented=False)
    assert read_house(write_house(house, tmp_path / "house.toml")) == house


@settings(max_examples=40, deadline=None)
@given(left=st.floats(4.0, 20.0), right=st.floats(4.0, 20.0))
def test_continuous_spans_bring_more_to_the_middle_and_a_quarter_more_where_they_are_equal(left, right):
    def middle(places, joints):
        return influence(places, joints, places[0], places[-1])[1]

    for places in ((0.0, left, left + right), (0.0, left, 2 * left)):
        cut, whole = middle(places, "cut"), middle(places, "continuous")
        assert whole > cut
    assert whole == pytest.approx(1.25 * cut, rel=1e-12)


@settings(max_examples=50, deadline=None)
@given(pairs=st.lists(st.tuples(st.floats(0, 100), st.floats(0, 100)), max_size=12))
def test_give_way_steps_ascend_without_gaps_and_each_is_the_cheapest_that_still_holds(pairs):
    limit, price = numpy.array([p for p, _ in pairs]), numpy.array([p for _, p in pairs])
    steps = give_way(limit, price)
    assert [start for _, start, _ in steps] == [0.0, *[end for _, _, end in steps[:-1]]][: len(steps)]
    assert all(start < end for _, start, end in steps)
    assert (steps[-1][2] if steps else 0.0) == (limit.max() if len(limit) else 0.0)
    for row, _start, end in steps:
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
        if job.gates or (job.loaded_on == "side" and RACK.plies[row] > 1):  # a gate, or plies that nobody has joined
            assert limit[row] == 0 and row not in size_beams(at(1.0), RACK, RULEBOOK).passing()
        elif limit[row] > 0:
            assert check_beam(at(float(limit[row])), RACK.choice(row), RULEBOOK).share == pytest.approx(1.0, abs=1e-9)
        else:
            assert size_beams(at(1e-9), RACK, RULEBOOK).share[row] >= 1 - 1e-9


broken = st.recursive(
    st.one_of(st.none(), st.booleans(), st.integers(), st.floats(), text),
    lambda inner: st.one_of(st.lists(inner, max_size=3), st.dictionaries(text, inner, max_size=3)),
    max_leaves=5,
)


@settings(max_examples=80, deadline=None)
@given(field=st.sampled_from([f.name for f in dataclasses.fields(Level)]), value=broken)
def test_any_value_in_any_field_of_a_level_is_read_or_answered_with_a_sentence(field, value):
    row = {"name": "floor", "kind": "floor", "on": ["a", "b"], "start": "0 ft", "end": "9 ft", "live": "40 psf"}
    for call in (
        lambda: read_record(Level, {**row, field: value}, "the level"),
        lambda: follow(with_changes(demo_house(), {"upper floor": {field: value}})),
    ):
        try:
            call()
        except BadInput as error:
            assert str(error) and len(str(error)) < 5000


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
