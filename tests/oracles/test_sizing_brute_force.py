"""The sizing against brute force: every candidate one by one, and again in plain Python from the rules.

The second computation shares nothing with the library but the design values of the wood, its weight and the
units. Statics are the closed forms of a simple beam; the factors are typed here with their clause.
"""

import math
import random

import numpy
import pytest

from structlib.ground.lumber import find_material, lvl
from structlib.ground.refusals import OutsideRule
from structlib.ground.units import ft, inch, lb, plf, psi
from structlib.house.beam import BeamJob, TypedLoad, check_beam
from structlib.house.sizing import build_rack, size_beams
from structlib.mechanics.beams import LineLoad, PointLoad
from structlib.rules.check import BeamUse, Seat
from structlib.rules.choice import RULEBOOK

# ---- the rules, typed again ----

COMBINATIONS = [  # ASCE 7-16 2.4.1 (gravity loads), with the load duration factor of NDS 2018 Table 2.3.2
    ({"dead": 1.0}, 0.9),
    ({"dead": 1.0, "live": 1.0}, 1.0),
    ({"dead": 1.0, "roof live": 1.0}, 1.25),
    ({"dead": 1.0, "snow": 1.0}, 1.15),
    ({"dead": 1.0, "live": 0.75, "roof live": 0.75}, 1.25),
    ({"dead": 1.0, "live": 0.75, "snow": 0.75}, 1.15),
]
SIZE_FACTOR = {
    3.5: 1.5,
    5.5: 1.3,
    7.25: 1.2,
    9.25: 1.1,
    11.25: 1.0,
    13.25: 0.9,
}  # NDS Supplement 2018 Table 4A, 2x
WET_LUMBER = {"bending": 0.85, "shear": 0.97, "bearing": 0.67, "modulus": 0.9}  # NDS Supplement 2018 Table 4A
WET_TIMBER = {"bending": 1.0, "shear": 1.0, "bearing": 0.67, "modulus": 1.0}  # NDS Supplement 2018 Table 4D
LIVE_LIMIT = {
    "floor": 360,
    "any other structural member": 240,
    "lintel under masonry veneer": 600,
}  # IRC Table R301.7
TOTAL_LIMIT = {
    "floor": 240,
    "any other structural member": 240,
    "lintel under masonry veneer": 600,
}  # IBC 1604.3, R703.8.2


class Outside(Exception):
    """The rules do not cover the beam."""


def size_factor(wood, depth):
    if wood.kind == "dimension":
        return SIZE_FACTOR[round(depth / inch, 2)]
    if wood.kind == "timber":
        return min(1.0, (12 * inch / depth) ** (1 / 9))  # NDS 2018 4.3.6
    return min(1.0, (12 * inch / depth) ** 0.18)  # the generic grades' own exponent; no gain below 12 in


def bending_value(wood, ply_width, depth, plies, braces, time, wet, even):
    repeats = {"dimension": 1.15, "timber": 1.0, "lvl": 1.04}[wood.kind] if plies >= 3 else 1.0  # NDS 2018 4.3.9, 8.3.7
    size = size_factor(wood, depth)
    starred = wood.bending * time * repeats * wet["bending"] * (1.0 if wood.kind == "lvl" else size)
    width = ply_width * plies
    stability = 1.0
    if braces > 0 and depth > width:  # NDS 2018 3.3.3.1
        ratio = braces / depth
        if ratio < 7:  # NDS 2018 Table 3.3.3
            effective = 2.06 * braces
        elif even or ratio <= 14.3:
            effective = 1.63 * braces + 3 * depth
        else:
            effective = 1.84 * braces
        squared = effective * depth / width**2  # R_B squared, 3.3.3.6
        if squared > 50**2:  # 3.3.3.7
            raise Outside
        a = 1.20 * wood.modulus_stability * wet["modulus"] / squared / starred  # 3.3.3.8
        stability = (1 + a) / 1.9 - math.sqrt(((1 + a) / 1.9) ** 2 - a / 0.95)
    if wood.kind == "lvl":  # 8.3.6: the lesser of volume and stability factor
        return starred * min(size, stability)
    return starred * stability


def simple_beam(span, evens, points):
    """Both reactions, and moment and sag (times EI) at any place, by the closed forms of a simple beam."""
    left = sum(w * span / 2 for w in evens) + sum(p * (span - a) / span for p, a in points)
    right = sum(w * span / 2 for w in evens) + sum(p * a / span for p, a in points)
    w = sum(evens)

    def moment(x):
        return w * x * (span - x) / 2 + sum(p * min(x, a) * (span - max(x, a)) / span for p, a in points)

    def sag(x):  # times EI
        total = w * x * (span**3 - 2 * span * x**2 + x**3) / 24
        for p, a in points:
            b, y = span - a, x
            if x > a:
                a, b, y = b, a, span - x
            total += p * b * y * (span**2 - b**2 - y**2) / (6 * span)
        return total

    return left, right, moment, sag


def peak(function, span):
    """Greatest value of a smooth hump: golden section between samples."""
    xs = [span * i / 400 for i in range(401)]
    best = max(range(1, 400), key=lambda i: function(xs[i]))
    low, high = xs[best - 1], xs[best + 1]
    golden = (math.sqrt(5) - 1) / 2
    for _ in range(100):
        c, d = high - golden * (high - low), low + golden * (high - low)
        low, high = (low, d) if function(c) >= function(d) else (c, high)
    return function((low + high) / 2), (low + high) / 2


def by_hand(job, choice):
    """Every share of one beam from first principles: a dict by the name of the library's check."""
    wood, depth, width = choice.material, choice.depth, choice.ply_width * choice.plies
    if wood.kind == "lvl" and job.wet:
        raise Outside
    wet = {"bending": 1.0, "shear": 1.0, "bearing": 1.0, "modulus": 1.0}
    if job.wet:
        wet = WET_TIMBER if wood.kind == "timber" else WET_LUMBER
    span = job.clear_width + (job.left.length + job.right.length) / 2
    own = wood.weight_density * width * depth
    ei = wood.modulus * wet["modulus"] * width * depth**3 / 12
    # LVL: E is shear-free, so 6/5 M / (G A) comes on top, with G of E/16; sawn lumber's E holds that part
    slides = 1.2 * 16 * ei / (wood.modulus * width * depth) if wood.kind == "lvl" else 0.0

    def sagging(moment, bent):  # times EI
        return lambda x: bent(x) + slides * moment(x)

    even = all(isinstance(one.load, LineLoad) for one in job.loads)
    present = {one.load_type for one in job.loads} | {"dead"}
    found = {}

    def keep(name, share):
        found[name] = max(found.get(name, 0.0), share)

    for factors, time in COMBINATIONS:
        if not set(factors) <= present:
            continue

        def loads(types):
            mine = [
                (one.load, factors[one.load_type])
                for one in job.loads
                if one.load_type in factors and one.load_type in types
            ]
            evens = [load.intensity * factor for load, factor in mine if isinstance(load, LineLoad)]
            return (
                evens + ([own] if "dead" in types else []),
                [(load.force * factor, load.position) for load, factor in mine if isinstance(load, PointLoad)],
            )

        evens, points = loads(present)
        left, right, moment, bent = simple_beam(span, evens, points)
        # bending: f_b = M / S against F_b with its factors (NDS 2018 3.3.1)
        allowed = bending_value(wood, choice.ply_width, depth, choice.plies, job.unbraced_length, time, wet, even)
        keep("bending", peak(moment, span)[0] / (width * depth**2 / 6) / allowed)
        # shear: f_v = 3 V / 2 b d (3.4.2); even load within a depth of the face is left out (3.4.3.1)
        for name, push, seat in (("left", left, job.left), ("right", right, job.right)):
            near = min(seat.length / 2 + depth, span / 2)
            if seat.below != "hanger" and job.loaded_on == "top":
                push_there = push - sum(evens) * near
            else:
                push_there = push
            keep(
                f"shear, {name} end",
                1.5 * abs(push_there) / (width * depth) / (wood.shear * time * wet["shear"]),
            )
            # bearing: both faces, without the time factor (3.10.2, 4.3.1); C_b is 1 at an end (3.10.4)
            if seat.below != "hanger":
                stress = push / (width * seat.length)
                keep(f"bearing, {name} seat, beam", stress / (wood.bearing * wet["bearing"]))
                if seat.below == "plate":
                    keep(f"bearing, {name} seat, plate", stress / (seat.below_bearing * wet["bearing"]))
                # least seat: IRC R502.6
                keep(f"seat length, {name}", (3 if seat.below == "masonry" else 1.5) * inch / seat.length)
        total, low = peak(sagging(moment, bent), span)
        keep("sag under all load", total / ei / (span / TOTAL_LIMIT[job.use.supports]))
        variable = sagging(*simple_beam(span, *loads(present - {"dead"}))[2:])
        if set(factors) - {"dead"}:
            keep("sag under live load", peak(variable, span)[0] / ei / (span / LIVE_LIMIT[job.use.supports]))
        # creep: NDS 2018 3.5.2, read where all load sags most
        staying = sagging(*simple_beam(span, *loads({"dead"}))[2:])(low)
        years = total + ((2.0 if job.wet else 1.5) - 1) * staying
        keep("sag after years", years / ei / (span / TOTAL_LIMIT[job.use.supports]))
    return found


# ---- the jobs ----

STOCK = [
    (find_material("Hem-Fir", "No.2"), 1.5, (3.5, 5.5, 7.25, 9.25, 11.25, 13.25)),
    (find_material("Douglas Fir-Larch", "No.1"), 1.5, (5.5, 9.25, 11.25)),
    (find_material("Douglas Fir-Larch", "No.1", "6x12"), 5.5, (7.5, 11.5, 15.5)),
    (lvl("2.0E-2900Fb"), 1.75, (5.5, 9.5, 11.875, 16.0, 18.0)),
]
RACK = build_rack(
    [(wood, ply * inch, depth * inch) for wood, ply, depths in STOCK for depth in depths], plies=(1, 2, 3, 4)
)
BELOW = ("plate", "post", "steel", "masonry", "hanger")
TYPES = ("dead", "live", "roof live", "snow")


def random_job(seed, points):
    dice = random.Random(seed)

    def seat():
        below = dice.choice(BELOW)
        return Seat(
            dice.uniform(1.0, 6.0) * inch,
            below,
            dice.choice((335, 425, 625)) * psi if below == "plate" else None,
            "plate",
        )

    left, right = seat(), seat()
    clear = dice.uniform(4.0, 20.0) * ft
    span = clear + left.length / 2 + right.length / 2
    loads = [
        TypedLoad(dice.choice(TYPES), LineLoad(0.0, span, dice.uniform(10, 500) * plf))
        for _ in range(dice.randint(0, 4))
    ]
    if points:
        loads += [
            TypedLoad(dice.choice(TYPES), PointLoad(dice.uniform(0.05, 0.95) * span, dice.uniform(100, 3000) * lb))
            for _ in range(dice.randint(1, 2))
        ]
    return BeamJob(
        clear,
        left,
        right,
        tuple(loads),
        unbraced_length=dice.choice((0.0, 2 * ft, 6 * ft, clear)),
        loaded_on=dice.choice(("top", "side")),
        wet=dice.random() < 0.3,
        use=BeamUse(dice.choice(sorted(LIVE_LIMIT)), creep_decides=dice.random() < 0.5),
    )


def full(job, choice):
    try:
        return check_beam(job, choice, RULEBOOK)
    except OutsideRule:
        return None


@pytest.mark.parametrize("seed", range(15))
def test_a_rack_is_every_candidate_one_by_one(seed):
    job = random_job(seed, points=False)
    sizing = size_beams(job, RACK, RULEBOOK)
    one_by_one = []
    for row in range(len(RACK.depth)):
        result = full(job, RACK.choice(row))
        one_by_one.append(math.inf if result is None else result.share)
    assert sizing.share == pytest.approx(numpy.array(one_by_one), rel=1e-9)
    # nothing passes on masonry, and no plies that are loaded from their side before they are joined
    stopped = "masonry" in (job.left.below, job.right.below)
    apart = job.loaded_on == "side"
    passing = [
        row
        for row, share in enumerate(one_by_one)
        if share <= 1.0 and not stopped and not (apart and RACK.plies[row] > 1)
    ]
    assert sorted(sizing.passing()) == passing
    if passing:
        cheapest = min(passing, key=lambda row: (RACK.area[row], one_by_one[row]))
        assert RACK.area[sizing.passing()[0]] == RACK.area[cheapest]


@pytest.mark.parametrize("seed", range(15))
def test_under_point_loads_a_rack_never_flatters(seed):
    job = random_job(1000 + seed, points=True)
    sizing = size_beams(job, RACK, RULEBOOK)
    for row in range(len(RACK.depth)):
        result = full(job, RACK.choice(row))
        if result is None:
            assert math.isinf(sizing.share[row])
        else:
            assert sizing.share[row] >= result.share * (1 - 1e-9)


@pytest.mark.parametrize("points", [False, True], ids=["even loads", "point loads"])
@pytest.mark.parametrize("seed", range(12))
def test_every_check_equals_plain_python_from_the_rules(seed, points):
    job = random_job(2000 + seed, points)
    compared = refused = 0
    for row in range(0, len(RACK.depth), 3):
        choice = RACK.choice(row)
        result = full(job, choice)
        try:
            expected = by_hand(job, choice)
        except Outside:
            assert result is None
            refused += 1
            continue
        found = {check.name: check.share for check in result.checks}
        assert set(found) == set(expected)
        for name, share in expected.items():
            assert found[name] == pytest.approx(share, rel=1e-7), name
            compared += 1
    assert compared + refused > 0
