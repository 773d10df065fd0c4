"""Closed forms: proved from the differential equation, equal to the solver, right in their dimensions."""

import inspect
import random
import re

import numpy as np
import pytest
import sympy
from sympy.physics import units

from structlib.ground.refusals import BadInput
from structlib.mechanics import formulas
from structlib.mechanics.beams import Beam, LineLoad, Support, solve

PUBLIC = {
    name: function
    for name, function in inspect.getmembers(formulas, inspect.isfunction)
    if function.__module__.startswith(formulas.__name__) and not name.startswith("_")
}

# ---- proved from EI y'''' = w ----

w, L, EI, P, x, a, b = sympy.symbols("w L EI P x a b", positive=True)


def _curve(load, number):
    """General solution of EI y'''' = load, with its four free constants."""
    free = sympy.symbols(f"c{number}_0:4")
    return load * x**4 / 24 + sum(c * x**i for i, c in enumerate(free)), free


def _solve_curves(curves, conditions):
    free = [c for _, constants in curves for c in constants]
    found = sympy.solve(conditions, free, dict=True)[0]
    return [sympy.expand(curve.subs(found)) / EI for curve, _ in curves]


def _at(curve, place, order=0):
    return sympy.diff(curve, x, order).subs(x, place)


def _one_span(load, conditions):
    curve = _curve(load, 0)
    return _solve_curves([curve], [_at(curve[0], place, order) for place, order in conditions])[0]


def _moment(y):
    return -EI * sympy.diff(y, x, 2)


def _shear(y):
    return -EI * sympy.diff(y, x, 3)


def _assert_same(formula, derived):
    assert sympy.simplify(formula - derived) == 0


def test_simple_span_under_uniform_load_is_proved():
    y = _one_span(w, [(0, 0), (0, 2), (L, 0), (L, 2)])
    load = {"line_load": w, "span": L}
    _assert_same(formulas.simple_uniform_deflection_at(**load, bending_stiffness=EI, position=x), y)
    _assert_same(formulas.simple_uniform_slope_at(**load, bending_stiffness=EI, position=x), y.diff(x))
    _assert_same(formulas.simple_uniform_moment_at(**load, position=x), _moment(y))
    _assert_same(formulas.simple_uniform_shear_at(**load, position=x), _shear(y))
    _assert_same(formulas.simple_uniform_deflection(**load, bending_stiffness=EI), y.subs(x, L / 2))
    _assert_same(formulas.simple_uniform_moment(**load), _moment(y).subs(x, L / 2))
    _assert_same(formulas.simple_uniform_reaction(**load), _shear(y).subs(x, 0))


def test_shear_deflection_of_a_rectangle_is_proved():
    shear_modulus, area, width, depth, z = sympy.symbols("G A b h z", positive=True)
    # 6/5 is the mean square of the parabola of shear stress over a rectangle, beside an even spread
    parabola = sympy.Rational(3, 2) * (1 - (2 * z / depth) ** 2) / (width * depth)
    factor = width * depth * sympy.integrate(width * parabola**2, (z, -depth / 2, depth / 2))
    assert sympy.simplify(factor - sympy.Rational(6, 5)) == 0
    strain = factor * w * (L / 2 - x) / (shear_modulus * area)
    derived = sympy.integrate(strain, (x, 0, L / 2))
    stiffness = formulas.rectangle_shear_stiffness(shear_modulus=shear_modulus, area=area)
    _assert_same(formulas.simple_uniform_moment(line_load=w, span=L) / stiffness, derived)


def test_simple_span_under_a_point_load_is_proved():
    left, right = _curve(0, 0), _curve(0, 1)
    meet = [_at(left[0], a, order) - _at(right[0], a, order) for order in (0, 1, 2)]
    jump = _at(right[0], a, 3) - _at(left[0], a, 3) - P
    ends = [_at(left[0], 0), _at(left[0], 0, 2), _at(right[0], L), _at(right[0], L, 2)]
    y_left, y_right = _solve_curves([left, right], [*ends, *meet, jump])
    load = {"point_load": P, "span": L, "load_position": a}
    full = {**load, "bending_stiffness": EI, "position": x}
    _assert_same(formulas.simple_point_deflection_left_of_load(**full), y_left)
    _assert_same(formulas.simple_point_left_reaction(**load), _shear(y_left))
    _assert_same(formulas.simple_point_right_reaction(**load), -_shear(y_right))
    _assert_same(formulas.simple_point_moment(**load), _moment(y_left).subs(x, a))
    middle = {"point_load": P, "span": L}
    _assert_same(formulas.simple_midspan_point_moment(**middle), _moment(y_left).subs({x: L / 2, a: L / 2}))
    sag = y_left.subs({x: L / 2, a: L / 2})
    _assert_same(formulas.simple_midspan_point_deflection(**middle, bending_stiffness=EI), sag)


def test_cantilever_is_proved():
    y = _one_span(w, [(0, 0), (0, 1), (L, 2), (L, 3)])
    load = {"line_load": w, "length": L}
    _assert_same(formulas.cantilever_uniform_moment(**load), _moment(y).subs(x, 0))


def test_overhang_is_proved():
    span, tip = _curve(w, 0), _curve(w, 1)
    end = L + a
    conditions = [_at(span[0], 0), _at(span[0], 0, 2), _at(span[0], L), _at(tip[0], L)]
    conditions += [_at(span[0], L, order) - _at(tip[0], L, order) for order in (1, 2)]
    conditions += [_at(tip[0], end, 2), _at(tip[0], end, 3)]
    y, y_tip = _solve_curves([span, tip], conditions)
    _assert_same(formulas.overhang_uniform_support_moment(line_load=w, overhang=a), _moment(y).subs(x, L))


def test_propped_cantilever_and_two_equal_spans_are_proved():
    y = _one_span(w, [(0, 0), (0, 2), (L, 0), (L, 1)])  # the prop at 0, the wall at L
    load = {"line_load": w, "span": L}
    full = {**load, "bending_stiffness": EI}
    _assert_same(formulas.propped_uniform_deflection_at(**full, position=x), y)
    _assert_same(formulas.propped_uniform_prop_reaction(**load), _shear(y).subs(x, 0))
    _assert_same(formulas.propped_uniform_wall_reaction(**load), -_shear(y).subs(x, L))
    _assert_same(formulas.propped_uniform_wall_moment(**load), _moment(y).subs(x, L))
    place = 3 * L / 8
    _assert_same(_shear(y).subs(x, place), 0)
    _assert_same(formulas.propped_uniform_span_moment(**load), _moment(y).subs(x, place))
    low = formulas.propped_uniform_greatest_deflection_place(span=L)
    _assert_same(y.diff(x).subs(x, low), 0)
    assert 0 < low.subs(L, 1) < 1
    _assert_same(formulas.propped_uniform_deflection(**full), y.subs(x, low))
    # by symmetry the beam of two equal spans is level over the middle support, as at a wall
    _assert_same(formulas.two_span_uniform_end_reaction(**load), _shear(y).subs(x, 0))
    _assert_same(formulas.two_span_uniform_middle_reaction(**load), -2 * _shear(y).subs(x, L))
    _assert_same(formulas.two_span_uniform_support_moment(**load), _moment(y).subs(x, L))
    _assert_same(formulas.two_span_uniform_span_moment(**load), _moment(y).subs(x, place))
    _assert_same(formulas.two_span_uniform_deflection(**full), y.subs(x, low))


def test_span_between_two_walls_is_proved():
    y = _one_span(w, [(0, 0), (0, 1), (L, 0), (L, 1)])
    load = {"line_load": w, "span": L}
    _assert_same(formulas.fixed_uniform_wall_moment(**load), _moment(y).subs(x, 0))


def test_stress_formulas_are_proved_from_equilibrium():
    width, depth, z, shear, moment = sympy.symbols("b d z V M", positive=True)
    inertia = sympy.integrate(width * z**2, (z, -depth / 2, depth / 2))
    modulus = inertia / (depth / 2)
    edge = formulas.bending_stress(moment=moment, section_modulus=modulus)
    stress = edge * z / (depth / 2)  # a straight line through the middle carries the whole moment
    _assert_same(sympy.integrate(width * stress * z, (z, -depth / 2, depth / 2)), moment)
    sliding = sympy.integrate(width * z, (z, 0, depth / 2)) * shear / (inertia * width)
    _assert_same(formulas.rectangle_shear_stress(shear=shear, width=width, depth=depth), sliding)


# ---- equal to the solver ----


def _numbers(seed):
    chance = random.Random(seed)
    line, span, ei = chance.uniform(1, 20), chance.uniform(1000, 8000), 10 ** chance.uniform(11, 13)
    return line, span, ei, chance.uniform(0.05, 0.95) * span, chance.uniform(500, 20000)


@pytest.mark.parametrize("seed", range(5))
def test_simple_span_equals_the_solver(seed):
    line, span, ei, place, force = _numbers(seed)
    supports = [Support(0.0), Support(span)]
    found = solve(Beam(span, ei, supports, [LineLoad(0.0, span, line)]))
    load = {"line_load": line, "span": span}
    full = {**load, "bending_stiffness": ei}
    assert formulas.simple_uniform_reaction(**load) == pytest.approx(found.reactions[1].force)
    assert formulas.simple_uniform_moment(**load) == pytest.approx(found.extremes.moment.value)
    assert formulas.simple_uniform_deflection(**full) == pytest.approx(found.extremes.deflection.value)
    assert formulas.simple_uniform_slope_at(**full, position=place) == pytest.approx(found.slope(place))


@pytest.mark.parametrize("seed", range(5))
def test_indeterminate_spans_equal_the_solver(seed):
    line, span, ei, place, _ = _numbers(seed)
    load = {"line_load": line, "span": span}
    full = {**load, "bending_stiffness": ei}
    uniform = [LineLoad(0.0, span, line)]
    propped = solve(Beam(span, ei, [Support(0.0), Support(span, "fixed")], uniform))
    assert formulas.propped_uniform_deflection(**full) == pytest.approx(propped.extremes.deflection.value)
    here = formulas.propped_uniform_deflection_at(**full, position=place)
    assert here == pytest.approx(propped.deflection(place))
    built_in = solve(Beam(span, ei, [Support(0.0, "fixed"), Support(span, "fixed")], uniform))
    assert formulas.fixed_uniform_wall_moment(**load) == pytest.approx(built_in.extremes.moment.value)
    supports = [Support(0.0), Support(span), Support(2 * span)]
    two = solve(Beam(2 * span, ei, supports, [LineLoad(0.0, 2 * span, line)]))
    assert two.reactions[0].force == pytest.approx(0.375 * line * span)
    assert formulas.two_span_uniform_middle_reaction(**load) == pytest.approx(two.reactions[1].force)
    assert formulas.two_span_uniform_span_moment(**load) == pytest.approx(two.extremes.greatest_moment.value)
    assert formulas.two_span_uniform_deflection(**full) == pytest.approx(two.extremes.deflection.value)


# ---- dimensions, arrays ----

UNITS = {
    "N": units.newton,
    "mm": units.millimeter,
    "MPa": units.newton / units.millimeter**2,
    "-": sympy.Integer(1),
}


def _described_units(function):
    """Units in brackets of each parameter and of the answer, as sympy units."""
    text = inspect.getdoc(function)
    parameters, answer = text.split("Returns\n-------")
    names = re.findall(r"^(\w+) : ", parameters, flags=re.M)
    found = re.findall(r"\[([^\]]+)\]\.$", parameters, flags=re.M)
    result = re.search(r"\[([^\]]+)\]\.$", answer, flags=re.M).group(1)
    assert names == list(inspect.signature(function).parameters)
    parse = {text: sympy.sympify(text.replace("^", "**"), locals=UNITS) for text in {*found, result} - {"-"}}
    parse["-"] = UNITS["-"]
    return dict(zip(names, (parse[unit] for unit in found), strict=True)), parse[result]


@pytest.mark.parametrize("name", PUBLIC)
def test_dimensions_come_out_as_described(name):
    described, result = _described_units(PUBLIC[name])
    sizes = sympy.Rational(7, 3), sympy.Rational(5, 2), sympy.Rational(11, 7), sympy.Rational(1, 2), 13
    given = {key: size * unit for size, (key, unit) in zip(sizes, described.items())}
    pure = sympy.simplify(PUBLIC[name](**given) / result)
    assert not pure.has(units.Quantity), pure
    assert pure != 0


def _arguments(function):
    sizes = {"position": 1200.0, "load_position": 1500.0, "overhang": 700.0}
    return {key: sizes.get(key, 3000.0) for key in inspect.signature(function).parameters}


@pytest.mark.parametrize("name", PUBLIC)
def test_arrays_give_what_floats_give(name):
    function = PUBLIC[name]
    given = _arguments(function)
    arrays = {key: value * np.array([1.0, 1.05]) for key, value in given.items()}
    answer = function(**arrays)
    assert answer.shape == (2,)
    assert answer[0] == pytest.approx(function(**given), rel=1e-14)


BAD = ["12 ft", None, float("nan"), float("inf"), True, [1.0, 2.0], np.array([]), np.array([1, 2]), 1e300]
MAY_BE_NEGATIVE = ("line_load", "point_load", "moment", "shear")
MAY_BE_ZERO = ("position", "load_position", "overhang")


@pytest.mark.parametrize("name", PUBLIC)
def test_bad_numbers_are_refused_in_one_sentence(name):
    function = PUBLIC[name]
    given = _arguments(function)
    for key in given:
        wrong = list(BAD)
        if key not in MAY_BE_NEGATIVE:
            wrong.append(-5.0)
        if key not in (*MAY_BE_NEGATIVE, *MAY_BE_ZERO):
            wrong.append(0.0)
        for value in wrong:
            with pytest.raises(BadInput) as refusal:
                function(**{**given, key: value})
            assert "\n" not in str(refusal.value)
            assert key in str(refusal.value)


def test_places_off_the_member_are_refused():
    with pytest.raises(BadInput, match="position must be between 0 and 3000"):
        formulas.simple_uniform_moment_at(line_load=5.0, span=3000.0, position=3100.0)
    with pytest.raises(BadInput, match="position"):
        formulas.simple_point_deflection_left_of_load(
            point_load=1.0, span=3000.0, load_position=1000.0, bending_stiffness=1e12, position=1500.0
        )
