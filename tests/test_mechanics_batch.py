"""Many beams at once against the solver for one beam, which takes another road; and what is refused."""

import numpy as np
import pytest

from structlib.ground.refusals import BadInput
from structlib.mechanics import batch
from structlib.mechanics.batch import Overhang, SpanPoint, solve_many
from structlib.mechanics.beams import Beam, LineLoad, PointLoad, Support, solve

CLOSE = 1e-10  # of the largest value in the beam


def _one(i, spans, stiffness, loads, points, left, right):
    """The i-th beam of the batch as a single beam."""
    start = 0.0 if left is None else left.length[i]
    x = start + np.concatenate([[0.0], np.cumsum(spans[i])])
    items, pieces = [], []
    for s in range(spans.shape[1]):
        items.append(LineLoad(x[s], x[s + 1], loads[i, s]))
        pieces.append((x[s + 1], stiffness[i, s]))
    items += [PointLoad(x[p.span] + p.position[i], p.force[i]) for p in points]
    length = x[-1]
    if left is not None:
        items += [LineLoad(0.0, x[0], left.line_load[i]), PointLoad(0.0, left.tip_load[i])]
    if right is not None:
        length = x[-1] + right.length[i]
        items += [LineLoad(x[-1], length, right.line_load[i]), PointLoad(length, right.tip_load[i])]
        pieces[-1] = (length, pieces[-1][1])
    return solve(Beam(length, pieces, [Support(place) for place in x], items))


@pytest.mark.parametrize("spans", [1, 2, 3, 6])
@pytest.mark.parametrize("overhangs", ["none", "left", "right", "both"])
def test_batch_equals_the_single_solver(spans, overhangs):
    chance = np.random.default_rng(spans)
    beams = 12
    lengths = chance.uniform(800, 6000, (beams, spans))
    stiffness = 10 ** chance.uniform(11.5, 13, (beams, spans))
    loads = chance.uniform(-5, 15, (beams, spans))
    points = [
        SpanPoint(s, chance.uniform(0, 1, beams) * lengths[:, s], chance.uniform(-5e3, 2e4, beams))
        for s in (0, 0, spans - 1)
    ]

    def overhang(name):
        if overhangs not in (name, "both"):
            return None
        load, tip = chance.uniform(-5, 15, beams), chance.uniform(-2e3, 9e3, beams)
        return Overhang(chance.uniform(50, 1500, beams), load, tip)

    left, right = overhang("left"), overhang("right")
    many = solve_many(
        spans=lengths,
        bending_stiffness=stiffness,
        line_loads=loads,
        point_loads=points,
        left_overhang=left,
        right_overhang=right,
    )
    for i in range(beams):
        single = _one(i, lengths, stiffness, loads, points, left, right)
        extremes = single.extremes
        forces = [reaction.force for reaction in single.reactions]
        np.testing.assert_allclose(many.reactions[i], forces, rtol=0, atol=CLOSE * max(map(abs, forces)))
        assert many.greatest_shear[i] == pytest.approx(abs(extremes.shear.value), rel=CLOSE)
        for name in ("moment", "deflection"):
            size = abs(getattr(extremes, name).value)
            for which in ("greatest", "least"):
                expected = getattr(extremes, f"{which}_{name}")
                field = f"{which}_{name}"
                value, place = getattr(many, field)[i], getattr(many, f"{field}_position")[i]
                assert value == pytest.approx(expected.value, abs=CLOSE * size)
                at_place = getattr(single, name)(float(min(place, single.beam.length)))
                assert at_place == pytest.approx(expected.value, abs=CLOSE * size)


def test_chunks_do_not_show(monkeypatch):
    chance = np.random.default_rng(3)
    spans = chance.uniform(1000, 6000, (50, 2))
    given = {"spans": spans, "bending_stiffness": 2e12, "line_loads": chance.uniform(1, 9, 50)}
    given["point_loads"] = [SpanPoint(1, 500.0, chance.uniform(0, 9000, 50))]
    given["right_overhang"] = Overhang(chance.uniform(0, 900, 50), 4.0, 800.0)
    whole = solve_many(**given)
    monkeypatch.setattr(batch, "CHUNK", 28)  # 7 beams of 4 pieces
    for one, other in zip(whole, solve_many(**given)):
        np.testing.assert_allclose(one, other, rtol=1e-13)  # the search for zeros stops a step apart


def test_single_values_serve_every_beam():
    many = solve_many(spans=np.array([3000.0, 4000.0]), bending_stiffness=2e12, line_loads=5.0)
    assert many.reactions.tolist() == [[7500.0, 7500.0], [10000.0, 10000.0]]
    assert many.greatest_moment_position.tolist() == [1500.0, 2000.0]
    assert many.least_moment.tolist() == [0.0, 0.0] and many.least_deflection.tolist() == [0.0, 0.0]
    expected = 5 * 5.0 * np.array([3000.0, 4000.0]) ** 4 / (384 * 2e12)
    np.testing.assert_allclose(many.greatest_deflection, expected, rtol=1e-14)


def test_beams_without_load_rest():
    many = solve_many(spans=np.full((3, 2), 4000.0), bending_stiffness=2e12, line_loads=0.0)
    assert not many.reactions.any() and not many.greatest_moment.any() and not many.greatest_deflection.any()


def test_a_point_load_at_either_end_of_its_span():
    point = SpanPoint(0, np.array([0.0, 4000.0]), 6000.0)
    many = solve_many(spans=np.full(2, 4000.0), bending_stiffness=2e12, line_loads=5.0, point_loads=[point])
    assert many.reactions.tolist() == [[16000.0, 10000.0], [10000.0, 16000.0]]
    np.testing.assert_allclose(many.greatest_moment, 1e7, rtol=1e-14)


GOOD = {"spans": np.full((3, 2), 4000.0), "bending_stiffness": 2e12, "line_loads": 5.0}

REFUSED = {
    "text spans": ({"spans": "12 ft"}, "spans must be"),
    "no spans": ({"spans": np.array([])}, "empty"),
    "one number for spans": ({"spans": 4000.0}, "shape"),
    "spans in three dimensions": ({"spans": np.full((2, 2, 2), 4000.0)}, "3 dimensions"),
    "a span of nothing": ({"spans": np.array([4000.0, 0.0])}, "spans must be between"),
    "a span of 400 ft": ({"spans": np.array([121920.0])}, "400 ft"),
    "a span that is not a number": ({"spans": np.array([np.nan])}, "nan"),
    "no stiffness": ({"bending_stiffness": 0.0}, "bending stiffness must be more than 0"),
    "stiffness of another shape": ({"bending_stiffness": np.full(2, 1e12)}, "got shape"),
    "stiffness in words": ({"bending_stiffness": "stiff"}, "bending stiffness"),
    "infinite load": ({"line_loads": np.inf}, "line loads"),
    "no load": ({"line_loads": None}, "line loads"),
    "loads of another shape": ({"line_loads": np.full((3, 4), 1.0)}, "got shape"),
    "a bare point load": ({"point_loads": SpanPoint(0, 1.0, 1.0)}, "must be a list of SpanPoint"),
    "a point load of another kind": ({"point_loads": [PointLoad(0.0, 5.0)]}, "got PointLoad"),
    "a span that is not there": ({"point_loads": [SpanPoint(2, 5.0, 5.0)]}, "from 0 to 1"),
    "a span with no number": ({"point_loads": [SpanPoint("first", 5.0, 5.0)]}, "'first'"),
    "a point load beyond its span": ({"point_loads": [SpanPoint(0, 4100.0, 5.0)]}, "within its span"),
    "a point load before its span": ({"point_loads": [SpanPoint(0, -1.0, 5.0)]}, "position"),
    "a point load not a number": ({"point_loads": [SpanPoint(0, 1.0, np.nan)]}, "point load"),
    "point loads of another count": ({"point_loads": [SpanPoint(0, 1.0, np.ones(5))]}, "got shape"),
    "an overhang as a number": ({"left_overhang": 600.0}, "must be an Overhang"),
    "a negative overhang": ({"right_overhang": Overhang(-600.0)}, "right overhang length"),
    "an overhang load in words": ({"right_overhang": Overhang(600.0, "5 plf")}, "line load"),
    "an overhang of another count": ({"left_overhang": Overhang(np.ones(7))}, "left overhang"),
}


@pytest.mark.parametrize("name", REFUSED)
def test_bad_batches_are_refused_in_one_sentence(name):
    wrong, words = REFUSED[name]
    with pytest.raises(BadInput, match=words) as refusal:
        solve_many(**{**GOOD, **wrong})
    assert "\n" not in str(refusal.value)
