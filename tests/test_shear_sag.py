"""The part of a sag that comes from shear: in the solver, in a full check, in the rack and in the pictures."""

import numpy
import pytest
import sympy

from structlib.ground.engineered import user_lvl
from structlib.ground.lumber import find_material, lvl
from structlib.ground.units import ft, inch, lb, plf, psi
from structlib.house.beam import BeamChoice, BeamJob, TypedLoad, check_beam
from structlib.house.sizing import build_rack, size_beams
from structlib.mechanics import formulas
from structlib.mechanics.beams import Beam, Couple, LineLoad, PointLoad, Support, solve
from structlib.pages.kit.show import start_values
from structlib.pages.topics.beam.page import BeamPage
from structlib.pages.topics.beam.words import ghost
from structlib.pages.topics.past_post.page import PastPostPage
from structlib.pages.topics.shared_plies.page import UnlikePliesPage
from structlib.rules.check import Seat
from structlib.rules.choice import RULEBOOK

EI, GA = 9.0e11, 2.4e6


def _by_virtual_work(length, supports, loads, place):
    """Deflection of a beam on two supports by a unit load: the integral of M m / EI + V v / GA."""
    x = numpy.linspace(0, length, 40_001)
    left, right = supports

    def inner_forces(loads):
        V, M = numpy.zeros_like(x), numpy.zeros_like(x)
        turning = force = 0.0
        for at, push, couple in loads:
            V -= push * (x > at)
            M += (couple - push * (x - at)) * (x > at)
            force += push
            turning += push * (at - left) + couple
        pushes = {right: turning / (right - left)}
        pushes[left] = force - pushes[right]
        for at, push in pushes.items():
            V += push * (x > at)
            M += push * (x - at) * (x > at)
        return V, M

    lumps = []
    for load in loads:
        if isinstance(load, LineLoad):
            steps = 800
            middles = load.start + (numpy.arange(steps) + 0.5) * (load.end - load.start) / steps
            last = load.intensity if load.end_intensity is None else load.end_intensity
            share = (middles - load.start) / (load.end - load.start)
            step = (load.end - load.start) / steps
            lumps += [(at, (load.intensity + (last - load.intensity) * s) * step, 0.0)
                      for at, s in zip(middles, share)]  # fmt: skip
        elif isinstance(load, Couple):
            lumps.append((load.position, 0.0, load.moment))
        else:
            lumps.append((load.position, load.force, 0.0))
    V, M = inner_forces(lumps)
    v, m = inner_forces([(place, 1.0, 0.0)])
    return numpy.trapezoid(M * m / EI + V * v / GA, x)


@pytest.mark.parametrize("place", [600.0, 1500.0, 2900.0, 4000.0])
def test_the_solver_adds_what_virtual_work_says(place):
    supports, length = (300.0, 3300.0), 4000.0
    loads = (
        LineLoad(300.0, 2500.0, 4.0, 9.0), PointLoad(1200.0, 6000.0), Couple(2100.0, 5e6), PointLoad(4000.0, 900.0),
    )  # fmt: skip
    beam = Beam(length, EI, [Support(at) for at in supports], loads, shear_stiffness=GA)
    assert solve(beam).deflection(place) == pytest.approx(_by_virtual_work(length, supports, loads, place), rel=2e-4)


def test_an_even_load_on_a_simple_span_has_the_closed_form():
    w, L = 8.0, 2400.0
    beam = Beam(L, EI, [Support(0.0), Support(L)], [LineLoad(0.0, L, w)], shear_stiffness=GA)
    by_hand = 5 * w * L**4 / (384 * EI) + w * L**2 / (8 * GA)
    peak = solve(beam).extremes.deflection
    assert (peak.value, peak.position) == (pytest.approx(by_hand), pytest.approx(L / 2))


def test_a_prop_takes_what_both_ways_of_giving_leave_it():
    """The free end under w sinks w L4 / 8 EI + w L2 / 2 GA, and comes back R (L3 / 3 EI + L / GA)."""
    w, L = 8.0, 1800.0
    supports = [Support(0.0, kind="fixed"), Support(L)]
    found = solve(Beam(L, EI, supports, [LineLoad(0.0, L, w)], shear_stiffness=GA))
    prop = (w * L**4 / (8 * EI) + w * L**2 / (2 * GA)) / (L**3 / (3 * EI) + L / GA)
    assert found.reactions[1].force == pytest.approx(prop, rel=1e-12)
    stiff = solve(Beam(L, EI, supports, [LineLoad(0.0, L, w)])).reactions[1].force
    assert prop > 1.01 * stiff


def test_extremes_and_points_have_the_shear_in_them():
    loads = (LineLoad(0.0, 1500.0, 2.0, 11.0), PointLoad(700.0, 9000.0))
    found = solve(Beam(2600.0, EI, [Support(0.0), Support(2200.0)], loads, shear_stiffness=GA))
    x = numpy.linspace(0.0, 2600.0, 200_001)
    assert found.extremes.greatest_deflection.value == pytest.approx(found.deflection(x).max(), rel=1e-9)
    assert found.extremes.least_deflection.value == pytest.approx(found.deflection(x).min(), rel=1e-9)
    assert found.extremes.least_slope.value == pytest.approx(found.slope(x).min(), rel=1e-4)
    between = (found.deflection(x[1:]) - found.deflection(x[:-1])) / (x[1] - x[0])
    # the axis kinks under a point push: the two steps over the load and the support have no one slope
    smooth = [not any(a <= at <= b for at in (700.0, 2200.0)) for a, b in zip(x, x[1:])]
    assert between[smooth] == pytest.approx(found.slope((x[1:] + x[:-1]) / 2)[smooth], abs=2e-6)
    assert found.slope(700.0, side="left") - found.slope(700.0) == pytest.approx(9000.0 / GA)
    points = found.points(50)
    assert points.deflection == pytest.approx(found.deflection(points.x))
    # no shear: nothing changes
    plain = solve(Beam(2600.0, EI, [Support(0.0), Support(2200.0)], loads, shear_stiffness=1e19))
    assert plain.extremes.deflection.value == pytest.approx(
        solve(Beam(2600.0, EI, [Support(0.0), Support(2200.0)], loads)).extremes.deflection.value, rel=1e-9
    )


def test_the_shear_stiffness_of_a_rectangle_is_one_formula_for_numbers_arrays_and_symbols():
    G, A, w, L = sympy.symbols("G A w L", positive=True)
    stiffness = formulas.rectangle_shear_stiffness(shear_modulus=G, area=A)
    by_moment = formulas.simple_uniform_moment(line_load=w, span=L) / stiffness
    assert sympy.simplify(by_moment - sympy.Rational(6, 5) * w * L**2 / (8 * G * A)) == 0
    assert formulas.rectangle_shear_stiffness(shear_modulus=6.0, area=numpy.array([2.0, 4.0])).tolist() == [10.0, 20.0]


def _job(clear, loads):
    return BeamJob(clear, Seat(3 * inch, "hanger"), Seat(3 * inch, "hanger"), loads)


def test_a_short_deep_beam_of_lvl_sags_by_shear_too():
    """By hand: 2 plies 1.75 x 11 7/8, E 2.0e6, 1000 plf over 8 ft: 0.0943 in bent and 0.0222 in slid."""
    w, L, b, d, E = 1000 / 12, 96.0, 3.5, 11.875, 2.0e6  # lb/in, in, psi
    bent = 5 * w * L**4 / (384 * E * b * d**3 / 12)
    slid = 6 / 5 * w * L**2 / 8 / (E / 16 * b * d)
    assert slid / bent == pytest.approx(0.235, abs=0.001)
    job = _job(93 * inch, (TypedLoad("live", LineLoad(0.0, 96 * inch, 1000 * plf)),))
    found = check_beam(job, BeamChoice(lvl("2.0E-2900Fb"), 1.75 * inch, 11.875 * inch, 2), RULEBOOK)
    check = found.check("sag under live load")
    assert check.asked / inch == pytest.approx(bent + slid, rel=1e-6)
    assert check.verified == "recalled" and any(symbol == "G" for symbol, _, _ in check.substitute)


def test_sawn_lumber_keeps_its_apparent_modulus():
    job = _job(93 * inch, (TypedLoad("live", LineLoad(0.0, 96 * inch, 1000 * plf)),))
    wood = find_material("Douglas Fir-Larch", "No.2")
    found = check_beam(job, BeamChoice(wood, 1.5 * inch, 11.25 * inch, 2), RULEBOOK)
    bent = 5 * 1000 / 12 * 96**4 / (384 * 1.6e6 * 3.0 * 11.25**3 / 12)
    assert found.check("sag under live load").asked / inch == pytest.approx(bent, rel=1e-6)


@pytest.mark.parametrize("place", [0.5, 0.3])
def test_page_and_rack_say_the_same_of_a_post_that_lands_on_lvl(place):
    loads = (
        TypedLoad("dead", LineLoad(0.0, 99 * inch, 300 * plf)),
        TypedLoad("live", PointLoad(place * 99 * inch, 9000 * lb)),
    )
    job = _job(96 * inch, loads)
    mine = user_lvl(
        bending=9000 * psi, shear=9000 * psi, bearing=9000 * psi, modulus=1.6e6 * psi, depth_exponent=0.1,
        name="mine", source="a report", modulus_kind="apparent",
    )  # fmt: skip
    rack = build_rack([(mine, 1.75 * inch, depth * inch) for depth in (9.5, 14.0)], plies=(2, 3))
    shares = size_beams(job, rack, RULEBOOK)
    for row in range(4):
        full = check_beam(job, rack.choice(row), RULEBOOK)
        assert full.governs.kind == "sag"
        # the own weight's peak is added at the same place, a little on the careful side
        assert full.share <= shares.share[row] * (1 + 1e-9) and shares.share[row] < 1.002 * full.share


def test_every_page_with_lvl_has_its_shear_in_the_sag():
    """Each drawn sag of LVL is greater than bending alone gives, by the share that span and depth say."""
    page = BeamPage()
    values = start_values(page, wood="lvl 2.0", span=8 * ft, depth=14 * inch, plies=2)
    result = page.result(tuple(values.items()))
    more = 1 + 0.96 * 16 * (14 * inch / result.job.span) ** 2
    live = sum(values[name] for name in ("live", "roof_live", "snow"))
    assert live and more > 1.29
    demand = result.demands[-1]
    plain = solve(Beam(result.job.span, result.member.bending_stiffness, demand.solution.beam.supports,
                       demand.solution.beam.loads))  # fmt: skip
    assert demand.solution.extremes.deflection.value == pytest.approx(more * plain.extremes.deflection.value, rel=1e-9)
    past = PastPostPage()
    running = past.result(tuple(start_values(past, wood="lvl 2.0").items()))
    assert running.most.dead.beam.shear_stiffness == pytest.approx(
        5 / 6 * running.member.material.modulus / 16 * running.member.area
    )
    shared = UnlikePliesPage()
    one = start_values(shared)
    case = shared.case(tuple(one.items()))
    new = case.parts[1]
    bent = 5 * one["load"] * one["span"] ** 4 / (384 * case.stiffness)
    slid = case.shares[1][1] * 1.2 * one["load"] * one["span"] ** 2 / 8 / (new.modulus / 16 * new.width * new.depth)
    assert max(case.sag) == pytest.approx(bent + slid)


@pytest.mark.parametrize("dead, name, n", [(60, "sag under live load", 360), (900, "sag under all load", 240)])
def test_the_picture_draws_the_sag_that_governs_beside_its_own_limit(dead, name, n):
    page = BeamPage()
    values = start_values(
        page, dead=dead * plf, live=600 * plf, roof_live=0.0, snow=0.0, span=12 * ft, depth=9.25 * inch, plies=3
    )
    result = page.result(tuple(values.items()))
    ruled = max((check for check in result.checks if check.kind == "sag" and check.decides), key=lambda c: c.share)
    assert ruled.name == name
    texts = str(page.compute(values).scene.alt)
    load = name.removeprefix("sag under ")
    assert f"sag under {load} {ruled.asked / inch:.2f} in = span/{result.job.span / ruled.asked:.0f}" in texts
    assert f"imit span/{n}, {load}" in texts
    # the ghost hangs under the same load as the beam drawn over it
    lighter = values | {"plies": 4}
    before = next(one.asked for one in page.result(tuple(lighter.items())).checks if one.name == name)
    assert max(ghost(page.result(tuple(lighter.items())), name).sag_y) == pytest.approx(before)
