"""Limits asked back, extremes of one span, the adjusted shear value, kilograms, and joists that swing on a beam."""

import dataclasses
import math

import numpy
import pytest
import scipy.linalg
import scipy.optimize
from dummy_rulebook import DUMMY

from structlib.ground.asked_back import asked_back, first_listed
from structlib.ground.engineered import lvl
from structlib.ground.lumber import find_material
from structlib.ground.reading import read
from structlib.ground.refusals import BadInput, OutsideRule
from structlib.ground.showing import show
from structlib.ground.units import ft, inch, lb, plf, psi
from structlib.house.asked_back import (
    at_span,
    governs,
    heaviest_load,
    least_depth,
    longest_span,
    times_loaded,
    widest_spacing,
)  # fmt: skip
from structlib.house.beam import BeamJob, TypedLoad
from structlib.mechanics.beams import Beam, LineLoad, PointLoad, Support, solve
from structlib.mechanics.vibration import frequency_in_series, simple_span_frequency
from structlib.pages.kit.controls import start_values
from structlib.pages.topics.beam import tables as beam_tables
from structlib.pages.topics.beam.page import BeamPage
from structlib.rules.check import BeamMember, Seat
from structlib.rules.choice import RULEBOOK
from structlib.rules.us.shear import shear_value

# ---- the solver ----


@pytest.mark.parametrize("share, low, high, limit", [
    (lambda x: x**4 / 7, 0.1, 20.0, 1.0), (lambda x: 5 / x**2, 0.5, 90.0, 0.8), (lambda x: math.exp(x) / 3, -2.0, 9.0, 1.0),
    (lambda x: max(x / 3, x**3 / 90), 0.0, 10.0, 1.0), (lambda x: 2 - x, -5.0, 5.0, 2.0),
])  # fmt: skip
def test_the_value_is_the_root_that_another_routine_finds_on_the_side_that_keeps(share, low, high, limit):
    found = asked_back(share, low=low, high=high, limit=limit)
    assert found == pytest.approx(scipy.optimize.brentq(lambda x: share(x) - limit, low, high), abs=2e-9 * (high - low))
    assert share(found) <= limit


def test_a_limit_that_nothing_meets_or_that_nothing_passes_is_said():
    with pytest.raises(OutsideRule, match="no value from 1 to 2 keeps to the limit"):
        asked_back(lambda x: x, low=1.0, high=2.0, limit=0.5)
    with pytest.raises(OutsideRule, match="every value from 1 to 2 keeps to the limit, so it sets none"):
        asked_back(lambda x: x, low=1.0, high=2.0, limit=3.0)
    with pytest.raises(OutsideRule, match="take steel"):
        first_listed(lambda x: x, (3, 2), never="take steel")
    for bad in (dict(low=2.0, high=2.0), dict(low=0.0, high=math.inf), dict(low=0.0, high=1.0, limit=0.0)):
        with pytest.raises(BadInput):
            asked_back(lambda x: x, **bad)
    with pytest.raises(BadInput, match="not a number"):
        asked_back(lambda x: math.nan, low=0.0, high=1.0)


def test_a_jump_and_a_share_without_end_are_met_from_below():
    assert asked_back(lambda x: math.inf if x > 4 else 0.2, low=0.0, high=10.0) == pytest.approx(4.0, abs=1e-7)
    assert first_listed(lambda plies: 3.1 / plies, range(1, 6)) == 4


# ---- beams and joists ----

SEAT = Seat(3 * inch)
JOB = BeamJob(11 * ft, SEAT, SEAT, (TypedLoad("live", LineLoad(0.0, 135 * inch, 100 * plf)),), 0.0)
TWO = BeamMember(find_material("Hem-Fir", "No.2"), 1.5 * inch, 9.25 * inch, 2, SEAT, SEAT, unbraced_length=0.0)


def test_span_and_load_by_hand():
    """2-2x10 Hem-Fir No.2, 100 plf live: F_b' = 850 * 1.1 = 935 psi, S = 2 * 21.39 = 42.78 in3, M = 3,333 lb-ft."""
    own = TWO.weight_per_length / plf  # from its specific gravity, tested elsewhere
    moment = 935 * 2 * 1.5 * 9.25**2 / 6 / 12
    span = math.sqrt(8 * moment / (100 + own))
    assert longest_span(JOB, TWO, RULEBOOK, kind="bending") / ft == pytest.approx(span - 0.25, rel=1e-6)
    assert heaviest_load(JOB, TWO, RULEBOOK, kind="bending") == pytest.approx(
        (8 * moment / 11.25**2 - own) / 100, rel=1e-5
    )
    half = longest_span(JOB, TWO, RULEBOOK, kind="bending", limit=0.5) / ft
    assert half == pytest.approx(span / math.sqrt(2) - 0.25, rel=1e-6)
    # joists at 16 in under 75 psf: their spacing grows as their load
    assert widest_spacing(JOB, TWO, RULEBOOK, spacing=16 * inch, kind="bending") / inch == pytest.approx(
        16 * (8 * moment / 11.25**2 - own) / 100, rel=1e-5)  # fmt: skip


def test_depth_by_hand():
    """Shear of LVL: 1.5 V / (b d) = 285 psi with all load kept on hangers; V = (w + own) L / 2, own = gamma b d."""
    wood, hung = lvl("2.0E-2900Fb"), Seat(3 * inch, "hanger")
    job = times_loaded(dataclasses.replace(JOB, left=hung, right=hung), 4.0)
    piece = BeamMember(wood, 1.75 * inch, 9.25 * inch, 1, hung, hung, unbraced_length=0.0)
    gamma, push = wood.weight_density / (lb / inch**3), 400 * 11.25 / 2
    depth = push / 1.75 / (wood.shear / psi / 1.5 - gamma * 135 / 2)
    assert least_depth(job, piece, RULEBOOK, kind="shear") / inch == pytest.approx(depth, rel=1e-6)


@pytest.mark.parametrize("rulebook", [RULEBOOK, DUMMY], ids=lambda one: one.name)
def test_what_is_asked_back_just_uses_the_limit_under_any_rulebook(rulebook):
    span = longest_span(JOB, TWO, rulebook)
    assert governs(at_span(JOB, span), TWO, rulebook).share == pytest.approx(1.0, abs=1e-6)
    times = heaviest_load(JOB, TWO, rulebook, limit=0.7)
    assert governs(times_loaded(JOB, times), TWO, rulebook).share == pytest.approx(0.7, abs=1e-6)


def test_a_check_that_is_not_there_and_a_limit_that_is_not_met_are_said():
    with pytest.raises(OutsideRule, match="has no check of mood here; its checks are bending"):
        longest_span(JOB, TWO, RULEBOOK, kind="mood")
    with pytest.raises(OutsideRule, match="no clear width from 1 ft to 40 ft keeps to the limit of the checks"):
        longest_span(times_loaded(JOB, 500.0), TWO, RULEBOOK)
    with pytest.raises(OutsideRule, match="so it sets none"):
        longest_span(times_loaded(JOB, 0.01), TWO, RULEBOOK, kind="bearing")


def test_loads_keep_their_share_of_the_span_and_their_type():
    job = dataclasses.replace(JOB, loads=(TypedLoad("snow", PointLoad(45 * inch, 900 * lb)),
                                          TypedLoad("dead", LineLoad(0.0, 90 * inch, 10 * plf, 30 * plf))))  # fmt: skip
    point, line = (one.load for one in at_span(job, 22.25 * ft).loads)  # 11.25 ft becomes 22.5 ft
    assert (point.position, line.end) == (pytest.approx(90 * inch), pytest.approx(180 * inch))
    point, line = (one.load for one in times_loaded(job, 3.0).loads)
    assert (point.force, line.intensity, line.end_intensity) == (
        pytest.approx(2700 * lb), pytest.approx(30 * plf), pytest.approx(90 * plf))  # fmt: skip


def test_joists_help_each_other_only_as_far_apart_as_the_rulebook_says():
    """One 2x10 Hem-Fir No.2 over 11.25 ft: 935 psi alone, 15 % more with neighbours, which count up to 24 in apart."""
    one = dataclasses.replace(TWO, plies=1, repetitive=True)
    own, moment = one.weight_per_length / plf, 935 * 1.5 * 9.25**2 / 6 / 12
    alone = 8 * moment / 11.25**2 - own
    for by_hand, found in ((18.0, None), (23.0, 24.0), (30.0, 30.0)):
        load = alone * 16 / by_hand  # at 16 in, so that one alone just takes this spacing
        job = times_loaded(JOB, load / 100)
        apart = widest_spacing(job, one, RULEBOOK, spacing=16 * inch, kind="bending") / inch
        shared = 16 * (1.15 * (alone + own) - own) / load
        assert apart == pytest.approx(shared if found is None else found, rel=1e-5)
    assert "24 in" in beam_tables.joists_by_size().caption
    assert beam_tables.joists_by_size().rows[-1][-1] == "24 in"


def test_the_page_lists_no_limit_while_a_gate_stands():
    shown = beam_tables.limits_of(BeamPage(), below="masonry")
    assert shown.head[0] == "asked" and "engineer" in shown.caption
    assert "longest" not in repr(shown)


# ---- extremes of one span ----


@pytest.mark.parametrize("shear_stiffness", [None, 4e7])
def test_extremes_of_a_part_are_those_of_dense_points(shear_stiffness):
    supports = [Support(600.0), Support(4000.0), Support(9000.0), Support(12000.0)]
    loads = [
        LineLoad(0.0, 5000.0, 3.0, 11.0),
        PointLoad(7000.0, 9000.0),
        LineLoad(9500.0, 12500.0, 8.0, 0.0),
        PointLoad(200.0, 2500.0),
    ]
    solution = solve(Beam(12500.0, 3e12, supports, loads, shear_stiffness=shear_stiffness))
    for start, end in (
        (600.0, 4000.0),
        (4000.0, 9000.0),
        (9000.0, 12000.0),
        (0.0, 600.0),
        (1234.5, 8765.4),
        (6999.0, 7000.0),
    ):
        one = solution.extremes_between(start, end)
        x = numpy.concatenate([numpy.linspace(start, end, 60_001)[1:-1], numpy.array([start + 1e-9, end - 1e-9])])
        for name in ("shear", "moment", "slope", "deflection"):
            values = getattr(solution, name)(x)
            scale = max(abs(values))
            for found, expected, sign in (
                (getattr(one, f"greatest_{name}"), values.max(), 1),
                (getattr(one, f"least_{name}"), values.min(), -1),
            ):
                assert found.value == pytest.approx(expected, abs=2e-4 * scale)
                assert start <= found.position <= end
                assert sign * (found.value - expected) >= -1e-9 * scale  # no sample beats it
    assert solution.extremes_between(0.0, 12500.0) == solution.extremes


def test_two_equal_spans_by_hand():
    """w L^2 / 8 hogs over the middle, 9 w L^2 / 128 sags at 3/8; in the unloaded span of one loaded, w L^2 / 16 hogs."""
    both = solve(Beam(8000.0, 2e12, [Support(x) for x in (0.0, 4000.0, 8000.0)], [LineLoad(0.0, 8000.0, 5.0)]))
    right = both.extremes_between(4000.0, 8000.0)
    assert right.greatest_moment.value == pytest.approx(9 / 128 * 5 * 4000**2)
    assert right.greatest_moment.position == pytest.approx(8000 - 1500)
    assert right.greatest_shear.value == pytest.approx(5 / 8 * 5 * 4000) and right.least_shear.value == pytest.approx(
        -3 / 8 * 5 * 4000
    )
    one = solve(Beam(8000.0, 2e12, [Support(x) for x in (0.0, 4000.0, 8000.0)], [LineLoad(0.0, 4000.0, 5.0)]))
    idle = one.extremes_between(4000.0, 8000.0)
    assert idle.least_moment.value == pytest.approx(-5 * 4000**2 / 16) and idle.greatest_moment.value == pytest.approx(
        0, abs=1e-3
    )
    # an end moment M0 = w L^2 / 16 on a simple span lifts it by M0 L^2 / (9 sqrt(3) EI)
    lift = 5 * 4000**2 / 16 * 4000**2 / (9 * math.sqrt(3) * 2e12)
    assert idle.least_deflection.value == pytest.approx(-lift)


@pytest.mark.parametrize(
    "ends", [(5.0, 5.0), (7.0, 3.0), (-1.0, 5.0), (0.0, 9000.0), ("a", 5.0), (0.0, math.nan)], ids=repr
)
def test_a_part_that_is_none_is_refused(ends):
    with pytest.raises(BadInput):
        solve(Beam(8000.0, 2e12, [Support(0.0), Support(8000.0)])).extremes_between(*ends)


# ---- the adjusted shear value ----


def test_adjusted_shear_value_by_hand():
    """F_v' = F_v C_D C_M: Hem-Fir 150 psi under snow 1.15; wet dimension lumber 0.97; size and plies do not touch it."""
    wood = find_material("Hem-Fir", "No.2")
    value, used = shear_value(wood, time_factor=1.15)
    assert value / psi == pytest.approx(172.5) and [one.value for one in used] == [1.15, 1.0]
    assert shear_value(wood, time_factor=1.15, wet=True)[0] / psi == pytest.approx(150 * 1.15 * 0.97)
    assert all("NDS" in one.clause for one in used)
    check = governs(JOB, TWO, RULEBOOK, "shear")
    assert check.given == shear_value(wood, time_factor=1.0)[0] and check.factors[0].symbol == "C_D"


# ---- kilograms ----


def test_what_people_carry_is_shown_and_read_in_kilograms():
    # 80 lb are 36.29 kg by the definition of the pound
    assert show(80 * lb, "weight") == "80 lb" and show(80 * lb, "weight", "metric") == "36 kg"
    assert read("36.28739 kg", "weight") == pytest.approx(80 * lb, rel=1e-7)
    assert read("2 kilograms", "weight") == pytest.approx(2 * 9.80665)
    row = next(
        row for row in BeamPage(system="metric").compute(start_values(BeamPage())).rows if row[0] == "weight of one ply"
    )
    assert row[1].endswith(" kg") and "91 kg" in row[4]
    pounds = float(
        next(row for row in BeamPage().compute(start_values(BeamPage())).rows if row[0] == "weight of one ply")[
            1
        ].split()[0]
    )
    assert float(row[1].split()[0]) == pytest.approx(pounds * 0.45359237, abs=0.75)


# ---- joists on a beam ----


def test_one_weight_on_two_springs_in_series_is_exact():
    first, second, weight = 900.0, 300.0, 2.5  # N/mm, N/mm, N s2/mm
    alone = [math.sqrt(spring / weight) / (2 * math.pi) for spring in (first, second)]
    together = math.sqrt(1 / (1 / first + 1 / second) / weight) / (2 * math.pi)
    assert frequency_in_series(upper=alone[0], lower=alone[1]) == pytest.approx(together)
    for bad in (0.0, -1.0, math.nan, "fast"):
        with pytest.raises(BadInput):
            frequency_in_series(upper=bad, lower=1.0)


def _grid_frequency(joist, beam, count):
    """First frequency of joists between two walls and a beam in their middle, cut over it: beam elements, solved by eigenvalues.

    ``joist`` and ``beam`` are (EI, span, weight a length). Joists stand at even places of the beam; the one at its middle is a
    pair on both sides, as all are.
    """
    parts, names, stiff, mass = 6, {}, {}, {}

    def freedom(*name):
        return names.setdefault(name, len(names))

    def element(ei, length, line, ends):
        k = ei / length**3 * numpy.array([[12, 6 * length, -12, 6 * length], [6 * length, 4 * length**2, -6 * length, 2 * length**2],
                                          [-12, -6 * length, 12, -6 * length], [6 * length, 2 * length**2, -6 * length, 4 * length**2]])  # fmt: skip
        m = line * length / 9806.65 / 420 * numpy.array([[156, 22 * length, 54, -13 * length], [22 * length, 4 * length**2, 13 * length, -3 * length**2],
                                                         [54, 13 * length, 156, -22 * length], [-13 * length, -3 * length**2, -22 * length, 4 * length**2]])  # fmt: skip
        for i, row in enumerate(ends):
            for j, column in enumerate(ends):
                if row is not None and column is not None:
                    stiff[row, column] = stiff.get((row, column), 0.0) + k[i, j]
                    mass[row, column] = mass.get((row, column), 0.0) + m[i, j]

    step = beam[1] / count
    place = lambda i: None if i in (0, count) else freedom("beam", i)  # noqa: E731
    for i in range(count):
        element(beam[0], step, beam[2], (place(i), freedom("turn", i), place(i + 1), freedom("turn", i + 1)))
    for i in range(1, count):
        for side in "lr":
            down = lambda j: None if j == 0 else place(i) if j == parts else freedom(side, i, j)  # noqa: B023, E731
            for j in range(parts):
                element(joist[0], joist[1] / parts, joist[2],
                        (down(j), freedom(side, i, j, "turn"), down(j + 1), freedom(side, i, j + 1, "turn")))  # fmt: skip
    size = len(names)
    k, m = numpy.zeros((size, size)), numpy.zeros((size, size))
    for (row, column), value in stiff.items():
        k[row, column], m[row, column] = value, mass[row, column]
    return math.sqrt(scipy.linalg.eigh(k, m, eigvals_only=True, subset_by_index=(0, 0))[0]) / (2 * math.pi)


@pytest.mark.parametrize("beam_span", [8 * ft, 12 * ft, 16 * ft])
def test_joists_on_a_beam_against_eigenvalues_of_a_grid(beam_span):
    ei, floor, span = 1.3e6 * psi * 98.93 * inch**4, 10 * 47.880259e-6, 13 * ft
    count = round(beam_span / (16 * inch))
    joist = (ei, span, floor * 16 * inch)
    lower = simple_span_frequency(bending_stiffness=3 * ei, line_weight=floor * span, span=beam_span)
    upper = simple_span_frequency(bending_stiffness=ei, line_weight=joist[2], span=span)
    exact = _grid_frequency(joist, (3 * ei, beam_span, 1e-6), count)
    assert 0.8 * exact < frequency_in_series(upper=upper, lower=lower) < exact
    # a stiff joist that tips about its wall moves a third of its weight with the beam, not a half: then Dunkerley's bound is near
    assert 0.93 * exact < frequency_in_series(upper=upper, lower=lower * math.sqrt(1.5)) < exact
