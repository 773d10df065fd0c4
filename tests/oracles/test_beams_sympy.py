"""The solver against sympy's own beam module, with rational inputs."""

import pytest
import sympy
from sympy.physics.continuum_mechanics.beam import Beam as SympyBeam

from structlib.mechanics.beams import Beam, LineLoad, PointLoad, Support, solve

CLOSE = 1e-11  # of the largest value of each quantity


def _compare(beam, theirs, places, reactions):
    solution = solve(beam)
    for ours, symbol in zip(solution.reactions, reactions):
        assert ours.force == pytest.approx(-float(theirs.reaction_loads[symbol]), rel=CLOSE)
    x = theirs.variable
    rows = (
        ("shear", solution.shear, theirs.shear_force()),
        ("moment", solution.moment, theirs.bending_moment()),
        ("deflection", solution.deflection, theirs.deflection()),
    )
    for name, ours, expression in rows:
        expected = [float(expression.subs(x, place)) for place in places]
        found = [ours(float(place)) for place in places]
        assert found == pytest.approx(expected, rel=CLOSE, abs=CLOSE * max(map(abs, expected))), name


def _start(length, ei):
    return SympyBeam(sympy.Integer(length), sympy.Integer(ei), sympy.Integer(1))


def test_simple_span_with_mixed_loads():
    r1, r2 = sympy.symbols("r1 r2")
    theirs = _start(12, 200)
    theirs.apply_load(r1, 0, -1)
    theirs.apply_load(r2, 12, -1)
    theirs.apply_load(sympy.Integer(3), 0, 0, end=12)
    theirs.apply_load(sympy.Integer(7), 4, -1)
    theirs.bc_deflection = [(0, 0), (12, 0)]
    theirs.solve_for_reaction_loads(r1, r2)
    loads = [LineLoad(0.0, 12.0, 3.0), PointLoad(4.0, 7.0)]
    beam = Beam(12.0, 200.0, [Support(0.0), Support(12.0)], loads)
    _compare(beam, theirs, [1, 3, 5, 7, sympy.Rational(19, 2)], (r1, r2))


def test_two_spans_with_an_overhang_and_a_ramp():
    r1, r2, r3 = sympy.symbols("r1 r2 r3")
    theirs = _start(14, 300)
    for symbol, place in ((r1, 0), (r2, 5), (r3, 11)):
        theirs.apply_load(symbol, place, -1)
    theirs.apply_load(sympy.Integer(2), 6, 1, end=9)  # grows by 2 for each unit of length, from 0
    theirs.apply_load(sympy.Integer(4), 14, -1)
    theirs.bc_deflection = [(0, 0), (5, 0), (11, 0)]
    theirs.solve_for_reaction_loads(r1, r2, r3)
    loads = [LineLoad(6.0, 9.0, 0.0, 6.0), PointLoad(14.0, 4.0)]
    beam = Beam(14.0, 300.0, [Support(0.0), Support(5.0), Support(11.0)], loads)
    _compare(beam, theirs, [2, 4, 7, 8, 10, 12, 13], (r1, r2, r3))
