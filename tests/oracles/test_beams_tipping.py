"""Whether a beam tips over, against a linear programme: can supports that only push balance the loads?"""

import random

import pytest

from structlib.ground.refusals import BadInput
from structlib.mechanics.beams import Beam, LineLoad, PointLoad, Support, solve

optimize = pytest.importorskip("scipy.optimize")

LENGTH = 9000.0


def _beam(seed):
    chance = random.Random(seed)
    supports = []
    for x in sorted(chance.uniform(0, LENGTH) for _ in range(chance.randint(2, 7))):
        kind = chance.choice(["pinned", "spring"])
        stiffness = 1e3 if kind == "spring" else None
        settlement = chance.choice([0.0, chance.uniform(-5, 5)])
        supports.append(Support(x, kind, stiffness, settlement, can_lift=chance.random() < 0.9))
    loads = [PointLoad(chance.uniform(0, LENGTH), chance.uniform(-2000, 20000)) for _ in range(3)]
    return Beam(LENGTH, 2e12, supports, loads + [LineLoad(0.0, LENGTH, 1.0)])


def _can_balance(beam):
    *points, line = beam.loads
    total = sum(p.force for p in points) + line.intensity * LENGTH
    turning = sum(p.force * p.position for p in points) + line.intensity * LENGTH**2 / 2
    rows = [[1.0] * len(beam.supports), [s.position / LENGTH for s in beam.supports]]
    bounds = [(0 if s.can_lift else None, None) for s in beam.supports]
    costs = [0.0] * len(bounds)
    answer = optimize.linprog(costs, A_eq=rows, b_eq=[total, turning / LENGTH], bounds=bounds)
    return answer.status == 0


def test_a_beam_tips_over_exactly_when_no_pushing_supports_can_balance_it():
    standing = []
    for seed in range(120):
        beam = _beam(seed)
        try:
            solve(beam)
            stands = True
        except BadInput as refusal:
            assert "tips over" in str(refusal)
            stands = False
        assert stands == _can_balance(beam), seed
        standing.append(stands)
    assert 10 < standing.count(False) < 110  # both kinds were met
