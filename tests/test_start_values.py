"""Where a page starts: one check of every control for each way in (the bench, a still, a saved picture, a table)."""

import inspect
import math
import re
from dataclasses import replace
from decimal import Decimal

import numpy as np
import pytest
from test_bench import _is_sentence, _moved_by, _widget, both_systems, every_page

from structlib.ground.refusals import BadInput
from structlib.ground.units import ft, inch, psf
from structlib.house.file import demo_house
from structlib.house.plan import stretched, with_changes
from structlib.pages.kit import show
from structlib.pages.kit.bench import Bench
from structlib.pages.kit.controls import Pick, Steps, Switch, start_values
from structlib.pages.topics.beam import choices
from structlib.pages.topics.beam.page import BeamPage
from structlib.pages.topics.post.page import PostPage
from structlib.pages.topics.wall.page import WallPage

NOT_A_NUMBER = [
    math.nan,
    math.inf,
    -math.inf,
    -1.0,
    1e300,
    "3",
    "",
    None,
    True,
    [1, 2],
    (),
    {},
    b"2",
    3j,
    np.array([1.0, 2.0]),
    np.array([]),
    np.bool_(True),
    np.nan,
    np.float32("inf"),
    Decimal("nan"),
]


def _unfit(control):
    """Values that a control must refuse."""
    if isinstance(control, Switch):
        return ["yes", None, 2, math.nan, "", [True]]
    if isinstance(control, Pick):
        return ["spam", "", None, math.nan, True, 99, 2.5, -1, [], {}, np.array([1, 2]), np.float64(99), b"x"]
    if isinstance(control, Steps):
        # halfway to the next stock size: nobody is shown another size than the one asked for
        between = (control.values[0] + control.values[-1]) / 2 + 0.37
        return [*NOT_A_NUMBER, 0.0, 10 * control.values[-1], between]
    beyond = [control.high * 1.001 + 1]
    if control.dimension == "count":
        beyond += [control.low + 0.7, np.float64(control.low + 0.5)]
    return NOT_A_NUMBER[:3] + ([-1.0] if control.low >= 0 else []) + NOT_A_NUMBER[4:] + beyond


def _listed_numbers(pick):
    return [one for _, one in pick.options if not isinstance(one, str)]


def _fit(control):
    """Values that a control takes, as plain numbers and as numpy's, with what it starts at then."""
    if isinstance(control, Switch):
        return [(True, True), (False, False)]
    if isinstance(control, Pick):
        return [(one, one) for _, one in control.options] + [(np.float64(one), one) for one in _listed_numbers(control)]
    if isinstance(control, Steps):
        return [(one, one) for one in control.values] + [(np.float64(control.values[0]), control.values[0])]
    ends = [control.low, control.high]
    if control.dimension == "count":
        return [(kind(one), int(one)) for one in ends for kind in (int, float, np.int64, np.float32)]
    return [(kind(one), float(one)) for one in ends for kind in (float, np.float64, np.array)]


@every_page
@both_systems
def test_every_control_refuses_what_it_cannot_show_in_every_way_in(kind, system, tmp_path):
    page, ways = (
        kind(system=system),
        (start_values, Bench, show.still, lambda page, **start: show.save(page, tmp_path / "x.svg", **start)),
    )
    for control in page.controls({}):
        for value in _unfit(control):
            told = set()
            for way in ways:
                with pytest.raises(BadInput) as refusal:
                    way(page, **{control.name: value})
                told.add(str(refusal.value).replace(repr(value), "that"))
            assert len(told) == 1 and _is_sentence(told.pop()), (control.name, value)
    assert not list(tmp_path.iterdir())


@every_page
def test_every_control_starts_at_what_it_can_show(kind):
    page = kind()
    for control in page.controls({}):
        for given, started in _fit(control):
            value = start_values(page, **{control.name: given})[control.name]
            assert value == started and type(value) in (type(started), int, float), (control.name, given)


@every_page
def test_a_bench_starts_with_what_it_is_given(kind):
    """Each pick of numbers, and the first slider at its end: other ends are tried by moving, in test_bench."""
    controls = kind().controls({})
    given = [(one, value) for one in controls if isinstance(one, Pick) for value in _listed_numbers(one)]
    for control, value in [(controls[0], controls[0].high), *given]:
        bench = Bench(kind(), **{control.name: value})
        assert bench.values[control.name] == value == _widget(bench, _moved_by(control)).value


@every_page
def test_no_control_is_named_as_something_else_is(kind):
    """A control named 'shape' could not be set where the shape of the picture was asked for by that name."""
    taken = {
        name
        for way in (Bench.__init__, start_values, show.still, show.save)
        for name in inspect.signature(way).parameters
    }
    assert not taken & {control.name for control in kind().controls({})}


def test_a_saved_picture_has_whole_plies(tmp_path):
    with pytest.raises(BadInput, match="plies must be a whole number, got 2.7; for example 2"):
        show.save(BeamPage(), tmp_path / "opening.png", plies=2.7)


def test_a_table_asks_the_same_of_its_values_as_the_bench():
    for told in (choices.below_full, choices.giving_way, choices.dropped_or_flush):
        with pytest.raises(BadInput, match="span, clear must be between 3 ft and 20 ft, got 29 ft"):
            told(BeamPage(), span=29 * ft)
    with pytest.raises(BadInput, match="live load must be between 0 psf and 150 psf"):
        WallPage().table(live=math.nan)


def test_a_pick_of_numbers_names_them_as_the_reader_knows_them():
    with pytest.raises(BadInput, match=r"post holds 3 is not known; accepted are 1 \(one beam end\), 2 \(two"):
        Bench(PostPage(), ends=3)
    assert Bench(PostPage(), ends=1).values["ends"] == 1


# ---- a house brings numbers along; what the page cannot show is refused, never shown as another number ----


def _house(level=None, opening=None, **wider):
    changes = {"upper floor": level or {}, "kitchen opening": {"start": 1.5 * ft, **(opening or {})}}
    return stretched(with_changes(demo_house(), changes), 11 * ft, **wider)


JOIST = demo_house().part("upper floor").joist


@pytest.mark.parametrize(
    "page, told",
    [
        (BeamPage(_house(opening={"clear_width": 25 * ft})), "span, clear must be between 3 ft and 20 ft, got 25 ft"),
        (BeamPage(_house(opening={"clear_width": 2 * ft})), "span, clear must be between 3 ft and 20 ft, got 2 ft"),
        (BeamPage(_house(opening={"left_seat": 17 * inch})), "seat, left end must be between 1/2 in and 16 in"),
        (WallPage(_house(left=2.0)), "span, left joists must be between 3 ft and 20 ft"),
        (WallPage(_house(right=2.0)), "span, right joists must be between 3 ft and 20 ft"),
        (WallPage(_house(level={"live": 200 * psf})), "live load must be between 0 psf and 150 psf"),
        (
            WallPage(_house(level={"joist": replace(JOIST, plies=4)})),
            "plies must be between 1 and 3, got 4; for example 3",
        ),
    ],
)
def test_a_house_that_a_page_cannot_show_is_refused_with_its_number(page, told):
    for way in (start_values, Bench, show.still):
        with pytest.raises(BadInput) as refusal:
            way(page)
        assert str(refusal.value).startswith(told)


@pytest.mark.parametrize("size, depth", [("2x4", 3.5), ("2x14", 13.25), ("4x8", 7.25)])
def test_the_wall_page_starts_with_the_joists_of_the_house(size, depth):
    page = WallPage(_house(level={"joist": replace(JOIST, size=size)}))
    values = start_values(page)
    assert values["depth"] == pytest.approx(depth * inch)
    assert page.changed(values).part("upper floor").joist.size == size


@every_page
def test_the_name_of_a_control_is_one_word(kind):
    """The page of a reader carries it as the name of a class, where a space would cut it in two."""
    assert all(re.fullmatch(r"[a-z_]+", control.name) for control in kind().controls({}))
