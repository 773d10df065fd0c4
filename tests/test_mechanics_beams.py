"""Beam records and their solution: signs, sides of jumps, drawing points, lift-off, what is refused."""

import random
from dataclasses import replace

import numpy as np
import pytest

from structlib.ground.refusals import BadInput
from structlib.ground.units import ft, lb, plf
from structlib.mechanics.beams import (
    Beam,
    Couple,
    Extreme,
    LineLoad,
    PointLoad,
    Support,
    combined,
    most,
    solve,
    solve_each,
)

ENDS = [Support(0.0), Support(4000.0)]
UNIFORM = [LineLoad(0.0, 4000.0, 5.0)]


def simple(loads=UNIFORM, supports=ENDS, length=4000.0, **more):
    return Beam(length, 2e12, supports, loads, **more)


# ---- what the answers mean ----


def test_feet_and_pounds_read_as_they_are_spoken():
    beam = simple([LineLoad(0.0, 16 * ft, 40 * plf)], [Support(0.0), Support(16 * ft)], 16 * ft)
    solution = solve(beam)
    assert solution.reactions[0].force / lb == pytest.approx(320.0, rel=1e-13)
    assert solution.moment(8 * ft) / (lb * ft) == pytest.approx(40 * 16**2 / 8, rel=1e-13)


def test_signs_of_a_simple_span():
    solution = solve(simple([PointLoad(1000.0, 8000.0)]))
    assert [r.force for r in solution.reactions] == [6000.0, 2000.0]
    assert solution.shear(500.0) == 6000.0 and solution.shear(3000.0) == -2000.0
    assert solution.moment(1000.0) == 6e6
    assert solution.deflection(2000.0) > 0 and solution.slope(0.0) > 0 > solution.slope(4000.0)


def test_a_wall_on_either_side_steps_the_moment_as_its_couple_says():
    left = solve(Beam(2000.0, 2e12, [Support(0.0, "fixed")], [PointLoad(2000.0, 1000.0)]))
    assert left.reactions[0].moment == pytest.approx(-2e6) == left.moment(0.0)
    right = solve(Beam(2000.0, 2e12, [Support(2000.0, "fixed")], [PointLoad(0.0, 1000.0)]))
    assert right.reactions[0].moment == pytest.approx(2e6) == -right.moment(2000.0)


def test_a_couple_steps_the_moment_up():
    solution = solve(simple([Couple(1000.0, 4e6)]))
    step = solution.moment(1000.0) - solution.moment(1000.0, side="left")
    assert step == pytest.approx(4e6)
    assert solution.shear(2000.0) == pytest.approx(-1000.0)


def test_a_jump_has_two_sides():
    solution = solve(simple([PointLoad(1000.0, 8000.0)]))
    assert solution.shear(1000.0) == -2000.0
    assert solution.shear(1000.0, side="left") == 6000.0
    both = np.array([1000.0, 1000.0])
    assert solution.shear(both).tolist() == [-2000.0, -2000.0]
    assert solution.shear(both, side="left").tolist() == [6000.0, 6000.0]
    assert solution.shear(4000.0) == solution.shear(4000.0, side="left") == -2000.0
    assert solution.shear(0.0) == solution.shear(0.0, side="left") == 6000.0


def test_arrays_of_any_shape_give_what_floats_give():
    loads = [LineLoad(500.0, 3000.0, 1.0, 9.0), PointLoad(1000.0, 8000.0)]
    solution = solve(simple(loads))
    x = np.array([[0.0, 250.0, 1000.0], [1999.0, 3000.0, 4000.0]])
    for name in ("shear", "moment", "slope", "deflection"):
        quantity = getattr(solution, name)
        for side in ("left", "right"):
            expected = [[quantity(float(v), side=side) for v in row] for row in x]
            np.testing.assert_allclose(quantity(x, side=side), expected, rtol=1e-13, atol=1e-9)
    assert solution.moment(1000) == solution.moment(1000.0) == solution.moment(np.float64(1000.0))
    assert solution.moment([1000.0, 1000.0]).shape == (2,)


def test_ends_are_known_without_rounding():
    solution = solve(simple([LineLoad(0.0, 4000.0, 0.1, 7.3), PointLoad(1234.5, 678.9)]))
    assert solution.moment(4000.0) == 0.0 and solution.deflection(4000.0) == 0.0
    assert solution.extremes.least_moment == Extreme(0.0, 0.0)
    assert solution.extremes.least_deflection == Extreme(0.0, 0.0)


def test_extremes_name_the_place():
    extremes = solve(simple()).extremes
    assert extremes.greatest_moment == Extreme(1e7, 2000.0)
    assert extremes.greatest_shear == Extreme(10000.0, 0.0)
    assert extremes.least_shear == Extreme(-10000.0, 4000.0)
    assert extremes.deflection.position == pytest.approx(2000.0)
    assert extremes.deflection.value == pytest.approx(5 * 5.0 * 4000.0**4 / (384 * 2e12))
    assert extremes.moment.value == 1e7 and extremes.shear.value == 10000.0


def test_most_keeps_the_sign():
    assert most(Extreme(9.0, 1.0), Extreme(-16.0, 8.0), Extreme(3.0, 2.0)) == Extreme(-16.0, 8.0)
    for wrong in ((), (3.0,)):
        with pytest.raises(BadInput, match="Extreme"):
            most(*wrong)


def test_drawing_points_hold_every_jump_and_peak():
    solution = solve(simple([*UNIFORM, PointLoad(1000.0, 8000.0)]))
    points = solution.points(50)
    assert points.x[0] == 0.0 and points.x[-1] == 4000.0 and np.all(np.diff(points.x) >= 0)
    at_load = points.shear[points.x == 1000.0]
    assert at_load[0] - at_load[-1] == pytest.approx(8000.0)
    assert points.deflection.max() == pytest.approx(solution.extremes.deflection.value, rel=1e-14)
    assert points.moment.max() == pytest.approx(solution.extremes.moment.value, rel=1e-14)
    assert 45 <= len(points.x) <= 70


def test_a_load_a_rounding_away_from_a_support_stands_on_it():
    near = 4000.0 + 4e-12
    supports = [Support(0.0), Support(4000.0), Support(8000.0)]
    solution = solve(Beam(8000.0, 2e12, supports, [PointLoad(near, 5000.0), PointLoad(8000.0 + 1e-9, 300.0)]))
    assert solution.reactions[1].force == pytest.approx(5000.0)
    assert abs(solution.extremes.shear.value) <= 300.0 + 1e-9
    assert len(solution.pieces) == 2


def test_reactions_keep_the_order_of_the_supports():
    supports = [Support(4000.0), Support(0.0)]
    solution = solve(simple([PointLoad(1000.0, 8000.0)], supports))
    assert [(r.position, r.force) for r in solution.reactions] == [(4000.0, 2000.0), (0.0, 6000.0)]


def test_a_beam_without_loads_rests():
    solution = solve(simple([]))
    assert solution.extremes.moment.value == 0.0 and solution.extremes.deflection.value == 0.0


# ---- lift-off ----


def test_a_beam_lifts_off_a_support_that_cannot_pull():
    supports = [Support(0.0, can_lift=True), Support(3000.0, can_lift=True), Support(6000.0, can_lift=True)]
    solution = solve(Beam(6000.0, 2e12, supports, [PointLoad(4500.0, 20000.0)]))
    assert [r.lifted for r in solution.reactions] == [True, False, False]
    assert solution.reactions[0].force == 0.0
    assert solution.reactions[1].force == pytest.approx(10000.0)
    assert solution.deflection(0.0) < 0


def test_a_beam_that_would_tip_over_is_refused():
    supports = [Support(0.0, can_lift=True), Support(3000.0, can_lift=True)]
    with pytest.raises(BadInput, match="tips over"):
        solve(Beam(5000.0, 2e12, supports, [PointLoad(5000.0, 2000.0)]))


def test_many_resting_supports_settle():
    supports = [Support(500.0 * i, can_lift=True, settlement=(0.0, 3.0, 0.5)[i % 3]) for i in range(13)]
    loads = [PointLoad(700.0, 9000.0), PointLoad(4000.0, 15000.0), PointLoad(5900.0, 500.0)]
    solution = solve(Beam(6000.0, 2e12, supports, loads))
    assert any(r.lifted for r in solution.reactions)
    assert sum(r.force for r in solution.reactions) == pytest.approx(24500.0)
    for support, reaction in zip(supports, solution.reactions):
        if reaction.lifted:
            assert solution.deflection(support.position) <= support.settlement + 1e-9
        else:
            assert reaction.force >= 0


# ---- what cannot stand ----

UNSTABLE = {
    "no support": (simple(supports=[]), "no support"),
    "one pinned support": (simple(supports=[Support(2000.0)]), "one place only"),
    "one spring": (simple(supports=[Support(0.0, "spring", 50.0)]), "one place only"),
    "a hinge in a simple span": (simple(hinges=[1500.0]), "from 0 mm to 1.5 m"),
    "a loose part between hinges": (
        Beam(
            6000.0,
            2e12,
            [Support(0.0, "fixed"), Support(6000.0, "fixed")],
            hinges=[1500.0, 3000.0, 4500.0],
        ),
        "from 1.5 m",
    ),
    "a support on the hinge of a loose end": (
        Beam(6000.0, 2e12, [Support(0.0), Support(3000.0), Support(4000.0)], hinges=[4000.0]),
        "from 4 m",
    ),
}


@pytest.mark.parametrize("name", UNSTABLE)
def test_a_beam_that_cannot_stand_is_refused_and_told_what_is_missing(name):
    beam, words = UNSTABLE[name]
    with pytest.raises(BadInput, match="cannot stand") as refusal:
        solve(beam)
    assert words in str(refusal.value) and "add" in str(refusal.value)


def test_beams_that_only_just_stand():
    solve(Beam(6000.0, 2e12, [Support(0.0, "fixed"), Support(6000.0)], UNIFORM, hinges=[3000.0]))
    chain = [Support(0.0), Support(2000.0), Support(4000.0), Support(6000.0)]
    solve(Beam(6000.0, 2e12, chain, UNIFORM, hinges=[2500.0, 4500.0]))
    solve(Beam(6000.0, 2e12, [Support(0.0), Support(3000.0), Support(6000.0)], UNIFORM, hinges=[3000.0]))


# ---- bad input ----

NOT_NUMBERS = ["12 ft", None, float("nan"), float("inf"), True, [1.0], np.array([1.0, 2.0]), {}]

RECORDS = {
    "support position": lambda bad: Support(bad),
    "settlement": lambda bad: Support(0.0, settlement=bad),
    "spring stiffness": lambda bad: Support(0.0, "spring", bad),
    "load position": lambda bad: PointLoad(bad, 5.0),
    "force": lambda bad: PointLoad(0.0, bad),
    "couple position": lambda bad: Couple(bad, 5.0),
    "moment": lambda bad: Couple(0.0, bad),
    "start of the load": lambda bad: LineLoad(bad, 10.0, 5.0),
    "end of the load": lambda bad: LineLoad(0.0, bad, 5.0),
    "intensity": lambda bad: LineLoad(0.0, 10.0, bad),
    "end intensity": lambda bad: LineLoad(0.0, 10.0, 5.0, bad),
    "beam length": lambda bad: Beam(bad, 2e12, ENDS),
    "bending stiffness": lambda bad: Beam(4000.0, bad, ENDS),
    "end of a stiffness piece": lambda bad: Beam(4000.0, [(bad, 1e12), (4000.0, 1e12)], ENDS),
    "hinge position": lambda bad: Beam(4000.0, 2e12, ENDS, hinges=[bad]),
    "x": lambda bad: solve(simple()).moment(bad),
    "number of points": lambda bad: solve(simple()).points(bad),
}


@pytest.mark.parametrize("name", RECORDS)
@pytest.mark.parametrize("bad", NOT_NUMBERS, ids=repr)
def test_what_is_not_a_number_is_refused(name, bad):
    if name == "end intensity" and bad is None:
        assert RECORDS[name](bad).end_intensity is None  # None means: the same at both ends
        return
    if name == "x" and isinstance(bad, (list, np.ndarray)):
        assert len(RECORDS[name](bad)) == len(bad)  # many positions at once are fine
        return
    if name == "bending stiffness" and isinstance(bad, list):
        with pytest.raises(BadInput, match="stiffness pieces"):
            RECORDS[name](bad)
        return
    with pytest.raises(BadInput) as refusal:
        RECORDS[name](bad)
    assert name in str(refusal.value) and "\n" not in str(refusal.value)


REFUSED = {
    "feet for inches": (lambda: Beam(400 * ft, 2e12, ENDS), "400 ft.*did you mean inches"),
    "metres for millimetres": (lambda: Beam(0.4, 2e12, ENDS), "between 1 mm and 60 m"),
    "negative length": (lambda: Beam(-4000.0, 2e12, ENDS), "beam length"),
    "no stiffness": (lambda: Beam(4000.0, 0.0, ENDS), "bending stiffness must be more than 0"),
    "negative position": (lambda: Support(-1.0), "support position"),
    "unknown support": (lambda: Support(0.0, "pined"), "did you mean 'pinned'"),
    "a support kind that is no word": (lambda: Support(0.0, 3), "support kind 3"),
    "an array of support kinds": (lambda: Support(0.0, np.array(["pinned", "fixed"])), "support kind"),
    "an array of hinges": (lambda: simple(hinges=np.array([1000.0])), "must be a list"),
    "an array of loads": (lambda: simple(np.array([1000.0])), "must be a list"),
    "spring without stiffness": (lambda: Support(0.0, "spring"), "needs its stiffness"),
    "spring of no stiffness": (lambda: Support(0.0, "spring", 0.0), "needs its stiffness"),
    "stiffness without spring": (lambda: Support(0.0, stiffness=5.0), "only a spring"),
    "fixed that lifts": (lambda: Support(0.0, "fixed", can_lift=True), "cannot lift"),
    "can_lift that is no answer": (lambda: Support(0.0, can_lift="yes"), "True or False"),
    "load from right to left": (lambda: LineLoad(3000.0, 1000.0, 5.0), "to the right of its start"),
    "load of no length": (lambda: LineLoad(1000.0, 1000.0, 5.0), "PointLoad"),
    "load beyond the end": (lambda: simple([PointLoad(4100.0, 5.0)]), "PointLoad reaches 4.1 m"),
    "line load beyond the end": (lambda: simple([LineLoad(0.0, 4100.0, 5.0)]), "LineLoad reaches"),
    "support beyond the end": (lambda: simple(supports=[Support(4001.0)]), "Support reaches"),
    "two supports at one spot": (lambda: simple(supports=[*ENDS, Support(0.0)]), "same spot"),
    "two hinges at one spot": (lambda: simple(hinges=[1000.0, 1000.0]), "same spot"),
    "hinge at the end": (lambda: simple(hinges=[4000.0]), "between the ends"),
    "couple on a hinge": (lambda: simple([Couple(1000.0, 5.0)], hinges=[1000.0]), "one side"),
    "hinge at a wall": (
        lambda: simple(supports=[Support(1000.0, "fixed")], hinges=[1000.0]),
        "undoes the fixed support",
    ),
    "supports without a list": (lambda: simple(supports=Support(0.0)), "must be a list"),
    "loads of another kind": (lambda: simple([5.0]), "got float"),
    "support among the loads": (lambda: simple([Support(0.0)]), "got Support"),
    "hinges without a list": (lambda: simple(hinges=1000.0), "must be a list"),
    "stiffness pieces too short": (lambda: Beam(4000.0, [(3000.0, 1e12)], ENDS), "must end where"),
    "stiffness pieces backwards": (
        lambda: Beam(4000.0, [(3000.0, 1e12), (2000.0, 1e12)], ENDS),
        "left to right",
    ),
    "no stiffness pieces": (lambda: Beam(4000.0, [], ENDS), "must end where"),
    "stiffness pieces not in pairs": (lambda: Beam(4000.0, [1e12], ENDS), "pairs"),
    "solving a length": (lambda: solve(4000.0), "takes a Beam"),
    "reading off the beam": (lambda: solve(simple()).moment(4100.0), "x must be between"),
    "reading left of the beam": (lambda: solve(simple()).moment(np.array([-1.0])), "x must be between"),
    "reading nowhere": (lambda: solve(simple()).moment(np.array([])), "empty"),
    "an unknown side": (lambda: solve(simple()).moment(0.0, side="rigth"), "did you mean 'right'"),
    "one drawing point": (lambda: solve(simple()).points(1), "number of points"),
}


@pytest.mark.parametrize("name", REFUSED)
def test_bad_beams_are_refused_in_one_sentence(name):
    make, words = REFUSED[name]
    with pytest.raises(BadInput, match=words) as refusal:
        make()
    assert "\n" not in str(refusal.value)


def test_symbols_are_sent_to_the_formulas():
    sympy = pytest.importorskip("sympy")
    with pytest.raises(BadInput, match="the symbol L; mechanics.formulas takes symbols"):
        Beam(sympy.Symbol("L"), 2e12, ENDS)
    assert Beam(sympy.Integer(4000), 2e12, ENDS).length == 4000.0


def test_records_cannot_be_changed():
    beam = simple()
    with pytest.raises(AttributeError):
        beam.length = 5000.0
    with pytest.raises(AttributeError):
        solve(beam).reactions = ()


def _some_beam(rng):
    """A continuous beam with three sets of loads, steps in stiffness and a spring."""
    spans = [rng.uniform(800.0, 5000.0) for _ in range(rng.randint(1, 3))]
    at, supports = 0.0, [Support(0.0)]
    for span in spans:
        at += span
        kind = rng.choice(("pinned", "pinned", "spring"))
        supports.append(Support(at, kind, 900.0 if kind == "spring" else None))
    length = at + rng.choice((0.0, 700.0))
    cases = []
    for _ in range(3):
        start = rng.uniform(0.0, 0.5) * length
        cases.append(
            rng.choice(
                (
                    (LineLoad(start, length, rng.uniform(1.0, 9.0), rng.uniform(1.0, 9.0)), PointLoad(start, 900.0)),
                    (LineLoad(0.0, length, rng.uniform(1.0, 9.0)),),
                    (Couple(start, 4e5), PointLoad(rng.uniform(0.0, 1.0) * length, rng.uniform(-900.0, 5000.0))),
                )
            )
        )
    return Beam(
        length, ((length / 3, 1e12), (length, 2e12)), supports, [load for case in cases for load in case]
    ), cases


def test_loads_solved_apart_and_added_up_are_the_loads_solved_together():
    rng = random.Random(20)
    for _ in range(60):
        beam, cases = _some_beam(rng)
        factors = [rng.choice((1.0, 0.75, 1.6)) for _ in cases]
        together = Beam(
            beam.length,
            beam.bending_stiffness,
            beam.supports,
            [load if factor == 1.0 else _grown(load, factor) for case, factor in zip(cases, factors) for load in case],
        )
        one, other = combined(zip(solve_each(beam, cases), factors)), solve(together)
        greatest = max(abs(reaction.force) for reaction in other.reactions)
        for a, b in zip(one.reactions, other.reactions, strict=True):
            assert a.force == pytest.approx(b.force, abs=1e-9 * greatest)
        for a, b in zip(one.extremes, other.extremes, strict=True):
            assert a.value == pytest.approx(b.value, rel=1e-8, abs=1e-9 * greatest)
        assert one.beam.loads == other.beam.loads


def _grown(load, factor):
    names = {LineLoad: ("intensity", "end_intensity"), PointLoad: ("force",), Couple: ("moment",)}[type(load)]
    return replace(load, **{name: getattr(load, name) * factor for name in names if getattr(load, name) is not None})


def test_what_does_not_add_up_is_refused():
    resting = Beam(4000.0, 1e12, [Support(0.0), Support(4000.0, can_lift=True)], [PointLoad(900.0, 100.0)])
    with pytest.raises(BadInput, match="lift or sink"):
        combined([(solve(resting), 1.0)])
    one, other = (
        solve(Beam(4000.0, stiffness, [Support(0.0), Support(4000.0)], [PointLoad(900.0, 100.0)]))
        for stiffness in (1e12, 2e12)
    )
    with pytest.raises(BadInput, match="of one beam"):
        combined([(one, 1.0), (other, 1.0)])
    with pytest.raises(BadInput, match="of one beam"):
        combined([])
