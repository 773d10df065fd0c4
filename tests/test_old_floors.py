"""Sag grids, unknown wood, a new beam under an old floor, heavy things, and signs sorted."""

import math

import numpy
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from structlib.ground.measured_sections import measured_section
from structlib.ground.refusals import BadInput, OutsideRule
from structlib.ground.units import ft, inch, lb, plf, psf, psi
from structlib.house.measured import MeasuredJoists
from structlib.house.mid_beam import beam_line_load, with_mid_beam
from structlib.house.old_floor import compared
from structlib.house.patch_loads import (
    HeavyThing,
    feet_on_two_joists,
    find_heavy_thing,
    heavy_things,
    patch_on_joists,
    tile_load,
)
from structlib.house.sag import SagPart, read_sag, sag_parts
from structlib.house.triage import signs, triage
from structlib.house.unknown_wood import Unknown, measured_unknowns, unknown_range
from structlib.mechanics import vibration
from structlib.mechanics.round_taper import tapered_diameter, tapered_log
from structlib.rules.ca.vibration import bare_span, point_load_limit, vibration_span
from structlib.rules.choice import RULEBOOK
from structlib.rules.members import MeasuredJoist
from structlib.rules.us.old_joists import candidate_woods, size_jumps

# ---- sag ----


def test_sag_of_a_known_surface_whatever_its_tilt():
    """A parabola of 3/4 in on 16 ft is L/256; a tilt put on top changes the tilt only."""
    places = numpy.linspace(0, 16 * ft, 9)
    bowl = -4 * 0.75 * inch * places * (16 * ft - places) / (16 * ft) ** 2
    for along, across in ((0.0, 0.0), (0.01, -0.02), (-0.03, 0.005)):
        grid = [bowl + along * places + across * 16 * inch * line for line in range(4)]
        found = read_sag(places, grid, line_spacing=16 * inch)
        assert found.worst.sag == pytest.approx(0.75 * inch)
        assert found.worst.ratio == pytest.approx(256)
        assert found.worst.place == pytest.approx(8 * ft)
        assert found.tilt_along == pytest.approx(-along, abs=1e-9)
        assert found.tilt_across == pytest.approx(-across, abs=1e-9)
        level = bowl.mean()
        assert found.out_of_plane == pytest.approx(level - bowl.min())


def test_worst_line_is_the_least_ratio_and_a_crown_is_no_sag():
    found = read_sag([0.0, 1000.0, 2000.0], [[0, -5, 0], [0, -9, 0], [0, 4, 0]])
    assert found.worst.number == 2 and found.lines[2].ratio == math.inf and found.lines[2].sag == 0.0
    assert found.lines[2].sags[1] == -4.0


@given(st.lists(st.floats(-20, 20), min_size=5, max_size=5), st.floats(-0.02, 0.02), st.floats(-100, 100))
@settings(max_examples=50)
def test_sag_of_a_line_does_not_see_level_or_tilt(heights, tilt, level):
    places = numpy.arange(5) * 900.0
    plain = read_sag(places, [heights]).worst
    tilted = read_sag(places, [numpy.array(heights) + tilt * places + level]).worst
    assert tilted.sag == pytest.approx(plain.sag, abs=1e-9)


def test_parts_of_a_sag_add_up_at_both_ends():
    parts = sag_parts(measured=25.0, stiff_sag=5.0, soft_sag=8.0, least_creep=1.5, most_creep=2.0)
    assert parts.elastic == SagPart(5.0, 8.0) and parts.creep == SagPart(2.5, 8.0)
    assert parts.unexplained == SagPart(25.0 - 16.0, 25.0 - 7.5)
    assert parts.comes_back == SagPart(5.0, 8.0) and parts.stays == SagPart(17.0, 20.0)
    stiff = sag_parts(measured=3.0, stiff_sag=5.0, soft_sag=8.0, least_creep=1.5, most_creep=2.0)
    assert stiff.comes_back == SagPart(3.0, 3.0) and stiff.stays == SagPart(0.0, 0.0) and stiff.unexplained.most < 0


# ---- unknown wood ----


def joist(species="", grade="", *, width=2 * inch, depth=8 * inch, span=13 * ft, spacing=16 * inch, live=30 * psf):
    """A sawn joist under 10 psf of weight, beside every wood that it may be of."""
    one = MeasuredJoist(measured_section("sawn", width=width, depth=depth), spacing, 1, species, grade)
    return compared(one, span=span, dead=10 * psf, live=live, rulebook=RULEBOOK)


def test_share_of_a_measured_joist_by_hand():
    """2x8 full size, Eastern White Pine No.2, 13 ft at 16 in, 30 + 10 psf, in pounds and inches."""
    found = joist("Eastern White Pine", "No.2")
    bending, shear, sag = (found.question(kind) for kind in ("bending", "shear", "sag"))
    per_inch, span = 40 * (16 / 12) / 12, 156.0  # lb/in: 40 psf on 16 in
    stress = per_inch * span**2 / 8 / (2 * 8**2 / 6)
    value = 575 * 1.1 * 1.15  # size factor of the next nominal depth, 10 in
    assert len(found.woods) == 1 and bending.asked / psi == pytest.approx(stress)
    assert bending.shares[0] == pytest.approx(stress / value)
    deflection = 5 * per_inch * 30 / 40 * span**4 / (384 * 1.1e6 * 2 * 8**3 / 12)
    assert sag.shares[0] == pytest.approx(deflection / (span / 360))
    assert shear.asked / psi == pytest.approx(1.5 * per_inch * span / 2 / 16)
    assert found.greatest[0] == max(one.shares[0] for one in (bending, shear, sag))


def test_weight_that_stays_counts_by_its_own_time_factor():
    """100 psf of weight and 1 psf of people: dead load alone asks more, since wood gives 0.9 of its ten-year value for it."""
    one = MeasuredJoist(
        measured_section("sawn", width=2 * inch, depth=8 * inch), 16 * inch, 1, "Eastern White Pine", "No.2"
    )
    found = compared(one, span=8 * ft, dead=100 * psf, live=1 * psf, rulebook=RULEBOOK).question("bending")
    stress = 100 * 16 / 144 * 96**2 / 8 / (2 * 8**2 / 6)
    assert found.combination == "D" and found.asked / psi == pytest.approx(stress)
    assert found.given[0] / psi == pytest.approx(0.9 * 575 * 1.1 * 1.15)


def test_no_repetitive_factor_beyond_two_feet():
    near, far = (
        joist("Hem-Fir", "No.2", span=10 * ft, spacing=gap).question("bending") for gap in (24 * inch, 24.1 * inch)
    )
    assert near.given[0] / far.given[0] == pytest.approx(1.15)


@given(st.floats(12, 16), st.floats(7, 8.5), st.floats(1.6, 2.2), st.floats(30, 40), st.integers(0, 30))
@settings(max_examples=60)
def test_any_joist_between_lies_inside_the_range(span, depth, width, live, wood_number):
    """Both ends bracket every wood and every size in between: the share rises or falls with each."""
    woods = candidate_woods(width=1.6 * inch, depth=7.5 * inch)

    def share(span, depth, width, live, wood):
        sizes = dict(width=width * inch, depth=depth * inch, span=span * ft, live=live * psf)
        return joist(wood.species, wood.grade.split("/")[0], **sizes).greatest[0]

    ends = (
        Unknown("span", (12.0, 16.0)),
        Unknown("depth", (7.5, 8.5)),
        Unknown("width", (1.6, 2.2)),
        Unknown("live", (30.0, 40.0)),
        Unknown("wood", (woods[0], woods[wood_number % len(woods)])),
    )
    if woods[0] is ends[-1].values[1]:
        ends = ends[:-1] + (Unknown("wood", (woods[0], woods[1])),)
    found = unknown_range(share, ends)
    inside = share(span, max(7.5, depth), width, live, ends[-1].values[1])
    assert found.least.answer * (1 - 1e-9) <= inside <= found.greatest.answer * (1 + 1e-9)


@pytest.mark.parametrize("low, high", [(5.0, 6.0), (7.0, 7.75), (7.25, 7.75), (9.0, 9.25), (5.25, 9.5)])
def test_the_range_brackets_brute_force_across_the_steps_of_the_size_factor(low, high):
    """A hair above 7 1/4 in a joist counts as a 2x10: hundreds of depths, none outside the range."""

    def bending(depth):
        return joist("Hem-Fir", "No.2", depth=depth).question("bending").shares[0]

    def stress_over_value(depth):
        """The same by hand, with the factors of NDS Table 4A: 6 in 1.3, 8 in 1.2, 10 in 1.1 (nominal)."""
        factor = 1.3 if depth <= 5.5 else 1.2 if depth <= 7.25 else 1.1 if depth <= 9.25 else 1.0
        return 40 * 16 / 144 * 156**2 / 8 * 6 / (2 * depth**2) / (850 * factor * 1.15)

    ends = measured_unknowns(jumps={"depth": size_jumps()}, depth=(low * inch, high * inch))
    found = unknown_range(bending, ends)
    places = {low + (high - low) * k / 400 for k in range(401)}
    places |= {step + more for step in (5.5, 7.25, 9.25) for more in (0.0, 1e-4) if low <= step + more <= high}
    every = [stress_over_value(depth) for depth in places]
    assert found.least.answer <= min(every) * (1 + 1e-9)
    # just past a step, the range looks a millionth of the depth further and not a ten-thousandth of an inch
    assert max(every) * (1 - 1e-9) <= found.greatest.answer <= max(every) * (1 + 5e-5)
    if (low, high) == (7.25, 7.75):  # ends and middle alone would miss the worst: a 2x8 looks better there
        plain = unknown_range(bending, measured_unknowns(depth=(low * inch, high * inch)))
        assert plain.greatest.answer < max(every) * 0.98


def test_both_ends_are_the_corners_and_the_widest_swing_comes_first():
    found = unknown_range(lambda a, b: 10 * a + b, [Unknown("a", (1, 2, 3), 1), Unknown("b", (1, 2, 3), 1)])
    assert (found.least.answer, found.greatest.answer, found.middle) == (11, 33, 22)
    assert found.least.values == {"a": 1, "b": 1} and [one.name for one in found.swings] == ["a", "b"]
    assert found.swings[0].size == 20 and measured_unknowns(x=(1, 3))[0].values == (1.0, 2.0, 3.0)


def test_every_candidate_answers_from_the_best_to_the_worst():
    for shape, width, depth in (
        ("sawn", 1.5, 7.25),
        ("sawn", 4.0, 8.0),
        ("round", 8.0, 8.0),
        ("half round", 10, 5),
    ):
        section = measured_section(shape, width=width * inch, depth=depth * inch)
        loads = dict(span=12 * ft, dead=10 * psf, live=30 * psf, rulebook=RULEBOOK)
        found = compared(MeasuredJoist(section, 16 * inch), **loads)
        in_order = [found.greatest[one] for one in found.best_first()]
        assert len(found.woods) >= 12 and in_order == sorted(in_order)
        assert found.known[found.best_first()[0]] == "transcribed"  # as the values of the wood


# ---- a beam under the middle ----


def test_mid_beam_in_exact_shares():
    found = with_mid_beam(span=16 * ft, lasting=13 * plf, passing=53 * plf, bending_stiffness=4.5e11)
    w, L = 66 * plf, 16 * ft
    assert found.before.sagging == pytest.approx(w * L**2 / 8)
    assert found.after.hogging == pytest.approx(w * (L / 2) ** 2 / 8)
    assert found.after.sagging == pytest.approx(9 / 128 * w * (L / 2) ** 2)
    assert found.after.middle == pytest.approx(1.25 * w * L / 2) and found.after.end == pytest.approx(0.375 * w * L / 2)
    cut = with_mid_beam(span=L, lasting=13 * plf, passing=53 * plf, bending_stiffness=4.5e11, joists="cut")
    assert cut.after.middle == pytest.approx(w * L / 2) and cut.after.hogging == pytest.approx(0, abs=1e-3)
    assert cut.after.sag == pytest.approx(cut.before.sag / 16)
    assert found.after.middle / cut.after.middle == pytest.approx(1.25)
    assert beam_line_load(found.after.middle, spacing=16 * inch) == pytest.approx(found.after.middle / 406.4)


def test_people_on_one_half_only_by_superposition():
    """Two equal spans l, one loaded: R = 7/16 w l at its end, 10/16 w l in the middle, M = w l^2 / 16."""
    dead, live, l = 13 * plf, 53 * plf, 8 * ft
    common = dict(span=16 * ft, lasting=dead, passing=live, bending_stiffness=4.5e11)
    found = with_mid_beam(**common, live_on="one half")
    end = (3 / 8 * dead + 7 / 16 * live) * l
    assert found.after.end == pytest.approx(end)
    assert found.after.sagging == pytest.approx(end**2 / (2 * (dead + live)))
    assert found.after.hogging == pytest.approx((dead / 8 + live / 16) * l**2)
    assert found.after.middle == pytest.approx((10 / 8 * dead + 10 / 16 * live) * l)
    assert found.before.sagging == pytest.approx((dead + live) * (2 * l) ** 2 / 8)
    assert found.after.sagging > with_mid_beam(**common).after.sagging
    cut = with_mid_beam(**common, joists="cut", live_on="one half")
    assert cut.after.sagging == pytest.approx((dead + live) * l**2 / 8)
    assert cut.after.middle == pytest.approx((dead + live / 2) * l)
    with pytest.raises(BadInput, match="one half"):
        with_mid_beam(**common, live_on="half")


def test_a_snug_beam_takes_only_what_comes_later():
    """By superposition: the lasting load stays on the long span, the passing load goes on two."""
    found = with_mid_beam(span=16 * ft, lasting=13 * plf, passing=53 * plf, bending_stiffness=4.5e11, snug=True)
    assert found.after.middle == pytest.approx(1.25 * 53 * plf * 8 * ft)
    none = with_mid_beam(span=16 * ft, lasting=13 * plf, passing=0.0, bending_stiffness=4.5e11, snug=True)
    assert none.after.middle == pytest.approx(0, abs=1e-6 * 13 * plf * 16 * ft)
    assert none.after.sagging == pytest.approx(none.before.sagging)


# ---- heavy things ----


def test_tub_by_hand():
    tub = find_heavy_thing("cast-iron tub")
    assert tub.weight / lb == pytest.approx(325 + 180 + 45 * 62.4 * 231 / 1728)
    assert tile_load() / psf == pytest.approx(16) and tile_load(mortar="1 in mortar") / psf == pytest.approx(23)


@pytest.mark.parametrize("direction, joists", [("across the joists", 5), ("along the joists", 3)])
@pytest.mark.parametrize("offset", [0.0, 100.0, -200.0])
def test_joists_under_a_patch_take_all_of_it(direction, joists, offset):
    tub = find_heavy_thing("cast-iron tub")
    under = patch_on_joists(
        tub,
        span=12 * ft,
        spacing=16 * inch,
        lasting=10 * psf,
        design=50 * psf,
        place=6 * ft,
        direction=direction,
        offset=offset,
    )
    assert sum(one.weight for one in under) == pytest.approx(tub.weight)
    assert abs(len(under) - joists) <= 1
    along = tub.length if direction.startswith("along") else tub.width
    for one in under:  # an even patch in the middle: P L / 4 less P c / 8
        assert one.patch_moment == pytest.approx(one.weight * (12 * ft / 4 - along / 8))
        floor = 10 * psf * 16 * inch * (12 * ft) ** 2 / 8
        assert one.moment == pytest.approx(one.patch_moment + floor)
        assert one.share == pytest.approx(one.moment / (5 * floor))


@pytest.mark.parametrize("direction, apart", [("across the joists", 18), ("along the joists", 48)])
def test_a_tub_on_four_feet_is_two_point_loads_on_each_of_two_joists(direction, apart):
    """880 lb: 220 lb on each foot, 6 in inside an outline of 60 x 30 in; pounds and inches."""
    tub = find_heavy_thing("cast-iron tub")
    floor = dict(span=13 * ft, spacing=16 * inch, lasting=10 * psf, design=40 * psf, place=6.5 * ft)
    one = feet_on_two_joists(tub, direction=direction, **floor)
    foot = (325 + 180 + 45 * 62.4 * 231 / 1728) / 4
    moment = foot * (156 - apart) / 2
    assert one.weight / lb == pytest.approx(2 * foot)
    assert one.patch_moment / (lb * inch) == pytest.approx(moment)
    own = 10 * 16 / 144 * 156**2 / 8
    assert one.share == pytest.approx((moment + own) / (4 * own))
    if direction.startswith("across"):  # two joists and not five
        assert one.moment > max(under.moment for under in patch_on_joists(tub, direction=direction, **floor))
    for bad in ({"inset": 16 * inch}, {"inset": -1.0}, {"place": 0.0}, {"direction": "up"}):
        with pytest.raises(BadInput):
            feet_on_two_joists(tub, **(floor | {"direction": direction} | bad))


def test_every_heavy_thing_has_a_weight_and_fits_a_long_floor():
    for name in heavy_things():
        thing = find_heavy_thing(name)
        assert thing.weight > 0 and thing.verified == "common practice"
        assert patch_on_joists(thing, span=16 * ft, spacing=16 * inch, lasting=0.0, design=50 * psf, place=8 * ft)


# ---- signs ----


def test_outside_causes_come_first_and_gates_are_kept():
    found = triage(signs())
    sides = [lead.side for lead in found.leads]
    assert sides == sorted(sides, key=["outside", "inside"].index)
    assert len(found.gates) == 4 and all("call" in gate or "looked at" in gate for gate in found.gates)
    assert triage(["bouncy floor"]).gates == () and triage([]).leads == ()
    for sign in signs():
        assert triage([sign]).leads
    assert all(lead.verified == "common practice" and lead.look_next for lead in found.leads)


# ---- refusals ----


@pytest.mark.parametrize(
    "ask",
    [
        lambda: read_sag([0.0, 1.0], [[0.0, 1.0]]),
        lambda: read_sag([0.0, 2.0, 1.0], [[0.0, 1.0, 0.0]]),
        lambda: read_sag([0.0, 1.0, 2.0], [[0.0, 1.0]]),
        lambda: read_sag([0.0, 1.0, 2.0], [[0.0, math.nan, 0.0]]),
        lambda: read_sag([0.0, 1.0, 2.0], []),
        lambda: read_sag([0.0, 1.0, 2.0], [[0.0, "low", 0.0]]),
        lambda: read_sag([0.0, 1.0, 400 * ft], [[0.0, 1.0, 0.0]]),
        lambda: read_sag([0.0, 1.0, 2.0], [[0.0, 1.0, 0.0]], line_spacing=0),
        lambda: sag_parts(measured=1.0, stiff_sag=3.0, soft_sag=2.0, least_creep=1.5, most_creep=2.0),
        lambda: sag_parts(measured=-1.0, stiff_sag=1.0, soft_sag=2.0, least_creep=1.5, most_creep=2.0),
        lambda: unknown_range(lambda a: a, [Unknown("a", (1,))]),
        lambda: unknown_range(lambda a: a, []),
        lambda: unknown_range(lambda a: a, [Unknown("a", (1, 2)), Unknown("a", (1, 2))]),
        lambda: unknown_range(lambda a: a, [Unknown("a", (1, 2), 5)]),
        lambda: unknown_range(lambda **a: 1, [Unknown(str(i), tuple(range(50))) for i in range(4)]),
        lambda: measured_unknowns(depth=(8.0, 7.0)),
        lambda: measured_unknowns(depth=8.0),
        lambda: measured_unknowns(jumps={"width": (1.5,)}, depth=(7.0, 8.0)),
        lambda: with_mid_beam(span=400 * ft, lasting=1.0, passing=1.0, bending_stiffness=1e12),
        lambda: with_mid_beam(span=5000.0, lasting=0.0, passing=0.0, bending_stiffness=1e12),
        lambda: with_mid_beam(span=5000.0, lasting=1.0, passing=1.0, bending_stiffness=1e12, joists="hinged"),
        lambda: with_mid_beam(span=5000.0, lasting=1.0, passing=1.0, bending_stiffness=1e12, joists="cut", snug=True),
        lambda: beam_line_load(100.0, spacing=0.0),
        lambda: find_heavy_thing("bath"),
        lambda: tile_load(mortar="thin"),
        lambda: patch_on_joists("tub", span=3600.0, spacing=400.0, lasting=0.0, design=0.002, place=1800.0),
        lambda: patch_on_joists(
            HeavyThing("box", 1.0, 900.0, 900.0, "seen"),
            span=3600.0,
            spacing=400.0,
            lasting=0.0,
            design=0.002,
            place=100.0,
        ),
        lambda: triage("sagging floor"),
        lambda: triage(["saggy floor"]),
        lambda: candidate_woods(width=1 * inch, depth=8 * inch),
        lambda: MeasuredJoists(width=2.0, depth=8.0, spacing=400.0, weight=0.0),
        lambda: MeasuredJoists(width=2 * inch, depth=8 * inch, spacing=math.nan, weight=0.0),
        lambda: vibration.simple_span_frequency(bending_stiffness=0.0, line_weight=1.0, span=1.0),
        lambda: vibration.frequency_from_sag(sag=-1.0),
        lambda: vibration.midspan_weight_frequency(bending_stiffness=1.0, line_weight=1.0, span=1.0, point_weight=-1.0),
        lambda: tapered_log(start_diameter=0.0, end_diameter=1.0, span=1.0, line_load=1.0, modulus=1.0),
        lambda: tapered_log(start_diameter=[1.0], end_diameter=1.0, span=1.0, line_load=1.0, modulus=1.0),
        lambda: tapered_diameter(start_diameter=1.0, end_diameter=1.0, span=1.0, position=2.0),
        lambda: bare_span(bending_stiffness=math.inf),
        lambda: point_load_limit(span=100.0),
        lambda: vibration_span(modulus=1e4, width=38, depth=235, spacing=400, subfloor=15.5, tied="straps"),
        lambda: vibration_span(modulus=[1e4], width=38, depth=235, spacing=400, subfloor=15.5, tied="strapping"),
    ],
)
def test_nonsense_is_refused(ask):
    with pytest.raises(BadInput):
        ask()


@pytest.mark.parametrize("changed", [dict(width=45.0), dict(depth=300.0), dict(spacing=500.0), dict(subfloor=18.0)])
def test_vibration_rule_is_refused_outside_its_table(changed):
    size = dict(modulus=1e4, width=38, depth=235, spacing=400, subfloor=15.5, tied="strapping") | changed
    with pytest.raises(OutsideRule):
        vibration_span(**size)


def test_glue_and_thicker_subfloor_let_joists_span_farther():
    size = dict(modulus=11000, width=38, depth=235, spacing=400, tied="bridging")
    plain = vibration_span(subfloor=15.5, **size).span
    assert vibration_span(subfloor=19.0, **size).span / plain == pytest.approx(math.exp(0.37 - 0.31))
    assert vibration_span(subfloor=15.5, fixing="glued", **size).span / plain == pytest.approx(math.exp(0.1))


def test_short_spans_join_long_ones_at_three_metres():
    """K and its limit K3 meet where the span is exactly 3 m, and below it the help stands still."""
    for depth in range(90, 287, 7):
        found = vibration_span(modulus=11000, width=38, depth=depth, spacing=400, subfloor=15.5, tied="strapping")
        assert found.short == (found.bare_span * math.exp(0.25 - 0.33 * math.log(depth / 184)) <= 3000)
        assert found.short == (found.span <= 3000)
