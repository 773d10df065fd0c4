"""Racks of candidates: the full check's answers, refusals as zero strength, exact limit widths."""

import numpy
import pytest

from structlib.ground.engineered import user_lvl
from structlib.ground.lumber import find_material, lvl
from structlib.ground.refusals import BadInput, OutsideRule
from structlib.ground.sizes import stock_sizes
from structlib.ground.units import ft, inch, lb, plf, psf, psi
from structlib.house.beam import BeamJob, TypedLoad, check_beam, evenly_loaded
from structlib.house.sizing import build_rack, give_way, limit_widths, rack_demand, size_beams
from structlib.mechanics.beams import LineLoad, PointLoad
from structlib.rules.check import BeamUse, Seat
from structlib.rules.choice import RULEBOOK
from structlib.rules.us.bearing import PLATE_NOT_NAMED

SPAN = 12 * ft
SEAT = Seat(3 * inch, "plate", 425 * psi, "plate", "seen")
STUD, NO3 = find_material("Hem-Fir", "Stud"), find_material("Hem-Fir", "No.3")
FIR, LVL = find_material("Douglas Fir-Larch", "No.2"), lvl("2.0E-2900Fb")
TIMBER = find_material("Douglas Fir-Larch", "No.1", "6x12")
MADE = user_lvl(
    bending=2800 * psi,
    shear=285 * psi,
    bearing=750 * psi,
    modulus=2.0e6 * psi,
    depth_exponent=0.136,
    name="LVL of an invented report",
    source="an example",
)

#: How the rack's columns are named in the full check.
FULL_NAMES = {
    "bending": ["bending"],
    "shear": ["shear, left end", "shear, right end"],
    "bearing": [
        f"bearing, {end} seat, {face}" for end in ("left", "right") for face in ("beam", "plate", PLATE_NOT_NAMED)
    ],
    "seat length": ["seat length, left", "seat length, right"],
    "sag under live load": ["sag under live load"],
    "sag under all load": ["sag under all load"],
    "sag after years": ["sag after years"],
}


def even(load_type, line):
    return TypedLoad(load_type, LineLoad(0.0, SPAN, line))


def job(left=SEAT, right=SEAT, loads=None, **changes):
    loads = (even("dead", 120 * plf), even("live", 240 * plf), even("snow", 90 * plf)) if loads is None else loads
    return BeamJob(SPAN - left.length / 2 - right.length / 2, left, right, loads, **{"unbraced_length": 0.0, **changes})


def rack():
    stock = [(wood, 1.5 * inch, depth * inch) for wood in (STUD, NO3, FIR) for depth in (3.5, 5.5, 7.25, 9.25, 11.25)]
    stock += [(wood, 1.75 * inch, depth * inch) for wood in (LVL, MADE) for depth in (7.25, 9.5, 14.0, 18.0)]
    stock += [(TIMBER, 5.5 * inch, depth * inch) for depth in (9.5, 11.5, 13.5)] + [(FIR, 0.75 * inch, 9.25 * inch)]
    return build_rack(stock, plies=(1, 2, 3))


RACK = rack()


def full_shares(result):
    by_name = {check.name: check.share for check in result.checks if check.decides}
    return {
        column: max(by_name[name] for name in names if name in by_name)
        for column, names in FULL_NAMES.items()
        if any(name in by_name for name in names)
    }


JOBS = {
    "plain": job(),
    "wet": job(wet=True),
    "unbraced": job(unbraced_length=8 * ft),
    "unbraced and wet": job(unbraced_length=SPAN, wet=True),
    "side": job(loaded_on="side"),
    "hung": job(left=Seat(2 * inch, "hanger"), right=Seat(2 * inch, "hanger")),
    "short seat": job(right=Seat(1.25 * inch, "plate")),
    "masonry": job(left=Seat(2.5 * inch, "masonry")),
    "veneer": job(use=BeamUse("lintel under masonry veneer")),
    "stricter": job(use=BeamUse("floor", 480, 360)),
    "years": job(use=BeamUse("floor", creep_decides=True)),
    "years, wet": job(use=BeamUse(creep_decides=True), wet=True),
    "dead only": job(loads=(even("dead", 300 * plf),)),
    "nothing but itself": job(loads=()),
    "all types": job(loads=tuple(even(word, 70 * plf) for word in ("dead", "live", "roof live", "snow"))),
}


@pytest.mark.parametrize("name", JOBS)
def test_a_rack_says_what_the_full_check_says_or_gives_no_strength_where_that_refuses(name):
    one_job = JOBS[name]
    sizing = size_beams(one_job, RACK, RULEBOOK)
    refused = 0
    for row in range(len(RACK.depth)):
        try:
            result = check_beam(one_job, RACK.choice(row), RULEBOOK)
        except OutsideRule:
            refused += 1
            assert numpy.isinf(sizing.share[row]), RACK.choice(row)
            continue
        expected = full_shares(result)
        assert sizing.share[row] == pytest.approx(max(expected.values()), rel=1e-12)
        assert expected[sizing.names[sizing.governs[row]]] == pytest.approx(max(expected.values()), rel=1e-12)
    assert 0 < refused < len(RACK.depth)
    assert not numpy.isnan(sizing.share).any()
    assert numpy.isfinite(sizing.share[sizing.passing()]).all()


@pytest.mark.parametrize(
    "loads",
    [
        (TypedLoad("live", PointLoad(4 * ft, 1500 * lb)), even("dead", 60 * plf)),
        (
            TypedLoad("live", LineLoad(0.0, 5 * ft, 300 * plf)),
            TypedLoad("snow", LineLoad(6 * ft, SPAN, 50 * plf, 200 * plf)),
        ),
    ],
    ids=["point", "parts"],
)
def test_under_uneven_load_a_rack_is_on_the_careful_side_and_close(loads):
    one_job = job(loads=loads, unbraced_length=6 * ft, use=BeamUse(creep_decides=True))
    assert not evenly_loaded(one_job)
    sizing = size_beams(one_job, RACK, RULEBOOK)
    compared = 0
    for row in range(len(RACK.depth)):
        try:
            full = check_beam(one_job, RACK.choice(row), RULEBOOK).share
        except OutsideRule:
            assert numpy.isinf(sizing.share[row])
            continue
        compared += 1
        assert full * (1 - 1e-12) <= sizing.share[row] <= 1.02 * full
    assert compared > 50


def test_a_post_right_over_a_seat_shears_nothing_on_a_rack_either():
    one_job = job(loads=(TypedLoad("live", PointLoad(0.0, 5000 * lb)), even("dead", 20 * plf), even("live", 40 * plf)))
    row, both = 0, RULEBOOK.combinations({"dead", "live"})[-1]
    shares = RULEBOOK.beam_shares(RACK, RULEBOOK.prepare(RACK), rack_demand(one_job, RACK, both, RULEBOOK), one_job.use)
    full = [check for check in check_beam(one_job, RACK.choice(row), RULEBOOK).checks if check.kind == "shear"]
    assert shares["shear"][row] == pytest.approx(max(check.share for check in full if check.combination == both.name))
    assert full[0].asked < 0.1 * 1.5 * 5000 * lb / check_beam(one_job, RACK.choice(row), RULEBOOK).member.area


def test_a_stud_beside_a_no3_does_not_bring_the_rack_down():
    both = build_rack([(NO3, 1.5 * inch, 9.25 * inch), (STUD, 1.5 * inch, 9.25 * inch)], plies=(3,))
    sizing = size_beams(job(loads=(even("live", 100 * plf),)), both, RULEBOOK)
    assert numpy.isfinite(sizing.share[0]) and numpy.isinf(sizing.share[1])
    assert sizing.passing().tolist() == [0]


def test_strengths_worked_out_once_serve_dry_and_wet():
    strengths = RULEBOOK.prepare(RACK)
    for one_job in (job(), job(wet=True), job()):
        assert (size_beams(one_job, RACK, RULEBOOK, strengths).share == size_beams(one_job, RACK, RULEBOOK).share).all()


def test_passing_rows_come_with_least_wood_first():
    sizing = size_beams(job(), RACK, RULEBOOK)
    rows = sizing.passing()
    assert len(rows) and (sizing.share[rows] <= 1).all()
    assert (numpy.diff(sizing.volume[rows]) >= 0).all()
    assert set(rows) == set(numpy.flatnonzero(sizing.share <= 1))


def test_piece_weight_and_volume_by_hand():
    sizing = size_beams(job(), RACK, RULEBOOK)
    for row in (0, 20, len(RACK.depth) - 1):
        choice, length = RACK.choice(row), SPAN + 3 * inch  # half a seat more at each end
        assert sizing.volume[row] == pytest.approx(choice.ply_width * choice.plies * choice.depth * length)
        assert sizing.piece_weight[row] == pytest.approx(
            choice.material.weight_density * choice.ply_width * choice.depth * length
        )


def test_a_rack_keeps_what_fits_and_refuses_when_nothing_does():
    fits = build_rack(
        [(FIR, 1.5 * inch, d * inch) for d in (7.25, 9.25)],
        plies=(1, 2, 3),
        greatest_depth=9.25 * inch,
        greatest_width=3 * inch,
    )
    assert sorted({(round(float(d / inch), 6), int(n)) for d, n in zip(fits.depth, fits.plies)}) == [
        (7.25, 1),
        (7.25, 2),
        (9.25, 1),
        (9.25, 2),
    ]
    with pytest.raises(BadInput, match="no piece fits"):
        build_rack([(FIR, 1.5 * inch, 9.25 * inch)], greatest_depth=9 * inch)


def floor_job(width, **changes):
    return job(loads=(even("dead", width * 12 * psf + 64 * plf), even("live", width * 40 * psf)), **changes)


def test_limit_widths_stand_where_the_full_check_is_one():
    limit, which, names = limit_widths(floor_job, RACK, RULEBOOK)
    assert numpy.isfinite(limit).any() and not numpy.isnan(limit).any()
    for row, width in enumerate(limit):
        if width > 0:
            result = check_beam(floor_job(float(width)), RACK.choice(row), RULEBOOK)
            assert result.share == pytest.approx(1.0, abs=1e-9)
            assert full_shares(result)[names[which[row]]] == pytest.approx(1.0, abs=1e-9)
        else:
            share = size_beams(floor_job(1e-6), RACK, RULEBOOK).share[row]
            assert share > 1 - 1e-6


@pytest.mark.parametrize("changes", [{"wet": True}, {"unbraced_length": SPAN}])
def test_a_candidate_outside_the_rules_has_no_limit_width(changes):
    limit, _, _ = limit_widths(lambda width: floor_job(width, **changes), RACK, RULEBOOK)
    zeros = 0
    for row in range(len(RACK.depth)):
        try:
            check_beam(floor_job(5 * ft, **changes), RACK.choice(row), RULEBOOK)
        except OutsideRule:
            zeros += 1
            assert limit[row] == 0.0
    assert zeros


def test_a_seat_too_short_for_the_code_has_no_limit_width():
    limit, which, names = limit_widths(lambda width: floor_job(width, left=Seat(1.25 * inch, "plate")), RACK, RULEBOOK)
    assert (limit == 0.0).all() and {names[i] for i in which} <= {"seat length", "bending"}
    exact, _, _ = limit_widths(lambda width: floor_job(width, left=Seat(1.5 * inch, "plate")), RACK, RULEBOOK)
    assert (exact > 0).any()


def test_limit_widths_off_a_bent_line_are_refused():
    def with_a_post(width):
        return job(loads=(even("live", width * 40 * psf), TypedLoad("snow", PointLoad(2 * ft, 3000 * lb))))

    with pytest.raises(OutsideRule, match="straight line"):
        limit_widths(with_a_post, RACK, RULEBOOK)


def test_give_way_by_hand():
    assert give_way([4.0, 9.0, 7.0], [1.0, 3.0, 2.0]) == [(0, 0.0, 4.0), (2, 4.0, 7.0), (1, 7.0, 9.0)]
    assert give_way([5.0, 5.0, 0.0], [2.0, 1.0, 0.5]) == [(1, 0.0, 5.0)]
    assert give_way([], []) == []


def test_every_stock_size_of_every_kind_can_stand_on_one_rack():
    stock = [(FIR, piece.width, piece.depth) for piece in stock_sizes("dimension", special_order=True)]
    stock += [(TIMBER, piece.width, piece.depth) for piece in stock_sizes("timber", special_order=True)]
    stock += [(LVL, piece.width, piece.depth) for piece in stock_sizes("lvl", special_order=True)]
    sizing = size_beams(job(), build_rack(stock), RULEBOOK)
    assert numpy.isfinite(sizing.share).all()


def test_of_unlike_ends_the_one_that_keeps_its_whole_shear_counts():
    hung = job(left=Seat(3 * inch, "hanger"), right=SEAT)
    strengths = RULEBOOK.prepare(RACK)

    def shear_of(one_job, combination):
        return RULEBOOK.beam_shares(RACK, strengths, rack_demand(one_job, RACK, combination, RULEBOOK), one_job.use)[
            "shear"
        ]

    for combination in RULEBOOK.combinations(["dead", "live", "snow"]):
        assert shear_of(hung, combination) == pytest.approx(shear_of(job(loaded_on="side"), combination))
        assert (shear_of(job(), combination) < shear_of(hung, combination)).all()
