"""The solver against exact fractions: hand-made beams and random ones, at every kind of place."""

import random

import pytest
from exact_beam import ExactBeam, worst_differences

from structlib.mechanics.beams import Beam, Couple, LineLoad, PointLoad, Support, solve

ROUNDING = 1e-9  # of the largest value of each quantity

EI = 2.0e12
CASES = {
    "uniform on a simple span": Beam(4000.0, EI, [Support(0.0), Support(4000.0)], [LineLoad(0.0, 4000.0, 5.0)]),
    "mixed loads with a ramp and a couple": Beam(
        5000.0,
        EI,
        [Support(0.0), Support(5000.0)],
        [
            LineLoad(0.0, 5000.0, 3.0),
            PointLoad(1500.0, 6000.0),
            LineLoad(2000.0, 4000.0, 2.0, 6.0),
            Couple(3500.0, 4e6),
        ],
    ),
    "ramp that changes sign": Beam(4000.0, EI, [Support(0.0), Support(4000.0)], [LineLoad(0.0, 4000.0, -6.0, 9.0)]),
    "two spans with a patch load": Beam(
        8000.0,
        EI,
        [Support(0.0), Support(4000.0), Support(8000.0)],
        [LineLoad(0.0, 8000.0, 3.0), LineLoad(1000.0, 3000.0, 5.0)],
    ),
    "overhangs with tip loads and end couples": Beam(
        6000.0,
        EI,
        [Support(800.0), Support(4800.0)],
        [
            LineLoad(0.0, 6000.0, 3.0),
            PointLoad(0.0, 1500.0),
            PointLoad(6000.0, 2000.0),
            Couple(0.0, 3e5),
            Couple(6000.0, -7e5),
        ],
    ),
    "fixed in the middle, loads on supports": Beam(
        7000.0,
        EI,
        [Support(0.0), Support(3000.0, kind="fixed", settlement=2.0), Support(7000.0)],
        [
            LineLoad(0.0, 7000.0, 3.0),
            PointLoad(3000.0, 9000.0),
            Couple(3000.0, 2e6),
            PointLoad(0.0, 500.0),
            PointLoad(7000.0, 700.0),
            Couple(7000.0, 1e6),
        ],
    ),
    "cantilever with a couple at the wall": Beam(
        1500.0,
        EI,
        [Support(0.0, kind="fixed")],
        [PointLoad(1500.0, 2000.0), Couple(0.0, 1e6), LineLoad(500.0, 1200.0, 0.0, 8.0)],
    ),
    "cantilever held on the right": Beam(
        1500.0, EI, [Support(1500.0, kind="fixed")], [PointLoad(0.0, 2000.0), Couple(1500.0, 1e6)]
    ),
    "splice in a beam of two spans": Beam(
        8000.0,
        EI,
        [Support(0.0), Support(4000.0), Support(8000.0)],
        [LineLoad(0.0, 8000.0, 3.0), PointLoad(5000.0, 4000.0)],
        hinges=[5000.0],
    ),
    "hinge over a support": Beam(
        8000.0,
        EI,
        [Support(0.0), Support(4000.0, settlement=3.0), Support(8000.0)],
        [LineLoad(0.0, 8000.0, 3.0)],
        hinges=[4000.0],
    ),
    "drop-in span on two hinges": Beam(
        12000.0,
        EI,
        [Support(0.0), Support(4000.0), Support(8000.0), Support(12000.0)],
        [LineLoad(0.0, 12000.0, 3.0)],
        hinges=[5000.0, 7000.0],
    ),
    "springs of very unlike stiffness": Beam(
        9000.0,
        EI,
        [
            Support(0.0, kind="spring", stiffness=3.0),
            Support(3000.0, kind="spring", stiffness=4e7, settlement=-1.0),
            Support(9000.0, kind="spring", stiffness=900.0, settlement=4.0),
        ],
        [LineLoad(0.0, 9000.0, 3.0), PointLoad(6000.0, 8000.0)],
    ),
    "steps in stiffness": Beam(
        8000.0,
        [(1000.0, 1e12), (2500.0, 5e12), (4000.0, 1e10), (8000.0, 3e12)],
        [Support(0.0), Support(4000.0), Support(8000.0, kind="fixed")],
        [LineLoad(0.0, 8000.0, 3.0, 1.0), PointLoad(2500.0, 4000.0)],
    ),
    "a millimetre beside ten metres": Beam(
        10001.0,
        EI,
        [Support(0.0), Support(1.0), Support(10001.0)],
        [LineLoad(0.0, 10001.0, 3.0), PointLoad(0.5, 400.0)],
    ),
    "settlement only": Beam(8000.0, EI, [Support(0.0), Support(4000.0, settlement=10.0), Support(8000.0)]),
}


def _places(solution, count=5):
    chance = random.Random(7)
    length = solution.beam.length
    breaks = [piece.start for piece in solution.pieces] + [length]
    return breaks + [chance.uniform(0, length) for _ in range(count)]


def _assert_exact(beam, lifted=()):
    solution = solve(beam)
    exact = ExactBeam(beam, lifted)
    worst = worst_differences(solution, exact, _places(solution))
    assert max(worst.values()) < ROUNDING, worst
    return solution, exact


@pytest.mark.parametrize("name", CASES)
def test_solver_equals_exact_fractions(name):
    _assert_exact(CASES[name])


@pytest.mark.parametrize("name", CASES)
def test_extremes_are_true_values_and_none_is_greater(name):
    solution, exact = _assert_exact(CASES[name])
    extremes = solution.extremes
    length = solution.beam.length
    breaks = [piece.start for piece in solution.pieces] + [length]
    samples = [length * i / 200 for i in range(201)] + breaks
    for row, quantity in enumerate(("shear", "moment", "slope", "deflection")):
        true = [float(exact.at(x, side)[row]) for x in samples for side in ("left", "right")]
        size = max(map(abs, true)) or 1.0
        greatest = getattr(extremes, f"greatest_{quantity}")
        least = getattr(extremes, f"least_{quantity}")
        assert greatest.value >= max(true) - ROUNDING * size
        assert least.value <= min(true) + ROUNDING * size
        for extreme in (greatest, least):
            here = [float(exact.at(extreme.position, side)[row]) for side in ("left", "right")]
            assert min(abs(extreme.value - value) for value in here) < ROUNDING * size


def _random_beam(chance, spans):
    """Any mixture of supports, steps, hinges and loads; spans from 30 mm to 6 m side by side."""
    lengths = [chance.choice([30.0, 500.0, chance.uniform(1000, 6000)]) for _ in range(spans)]
    x = [chance.choice([0.0, chance.uniform(50, 1500)])]
    for length in lengths:
        x.append(x[-1] + length)
    whole = x[-1] + chance.choice([0.0, chance.uniform(50, 1500)])
    supports = []
    for position in x:
        kind = chance.choice(["pinned", "pinned", "spring", "fixed"])
        stiffness = 10 ** chance.uniform(1, 6) if kind == "spring" else None
        settlement = chance.choice([0.0, chance.uniform(-3, 3)])
        supports.append(Support(position, kind, stiffness, settlement))
    loads = [LineLoad(0.0, whole, chance.uniform(1, 8))]
    for _ in range(4):
        a, b = sorted((chance.uniform(0, whole), chance.uniform(0, whole)))
        final = chance.choice([None, chance.uniform(-8, 8)])
        loads.append(
            chance.choice(
                [
                    PointLoad(a, chance.uniform(-5e3, 2e4)),
                    Couple(a, chance.uniform(-5e6, 5e6)),
                    LineLoad(a, b, chance.uniform(-8, 8), final),
                ]
            )
        )
    cuts = sorted(chance.uniform(1, whole - 1) for _ in range(2))
    stiffness = [(end, 10 ** chance.uniform(11, 13)) for end in (*cuts, whole)]
    hinges = [x[1] + 0.3 * lengths[1]] if spans > 2 and chance.random() < 0.5 else []
    return Beam(whole, stiffness, supports, loads, hinges)


@pytest.mark.parametrize("spans", [1, 2, 3, 5, 10])
@pytest.mark.parametrize("seed", range(4))
def test_solver_equals_exact_fractions_on_random_beams(spans, seed):
    _assert_exact(_random_beam(random.Random(100 * spans + seed), spans))


def test_ten_spans_keep_their_digits():
    supports = [Support(1200.0 * i + 37.0 * i * i) for i in range(11)]
    length = supports[-1].position
    beam = Beam(length, EI, supports, [LineLoad(0.0, length, 4.0), PointLoad(300.0, 9000.0)])
    worst = worst_differences(solve(beam), ExactBeam(beam), [s.position for s in supports])
    assert max(worst.values()) < 1e-12, worst


def test_lifted_end_equals_the_beam_without_it():
    supports = [Support(0.0, can_lift=True), Support(3000.0), Support(6000.0)]
    beam = Beam(6000.0, EI, supports, [PointLoad(4500.0, 20000.0)])
    solution, _ = _assert_exact(beam, lifted=(0,))
    assert [r.lifted for r in solution.reactions] == [True, False, False]
    assert solution.deflection(0.0) < 0  # it rises


def test_a_gap_below_a_support_closes_only_under_enough_load():
    supports = [Support(0.0), Support(2000.0, settlement=4.0, can_lift=True), Support(4000.0)]
    light = Beam(4000.0, EI, supports, [LineLoad(0.0, 4000.0, 2.0)])  # sags 3.33 mm: the gap stays open
    heavy = Beam(4000.0, EI, supports, [LineLoad(0.0, 4000.0, 4.0)])
    assert _assert_exact(light, lifted=(1,))[0].reactions[1].lifted
    assert _assert_exact(heavy)[0].reactions[1].force > 0
