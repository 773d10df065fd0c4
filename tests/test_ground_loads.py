"""Layers, slope, tributary width and loads by type."""

import copy
import math
import pickle

import numpy
import pytest
import sympy

from structlib.ground import loads
from structlib.ground.refusals import BadInput
from structlib.ground.units import ft, inch, pcf, plf, psf


def test_layers_add_up():
    roof = loads.Layers(
        [
            loads.Layer("concrete tile", 9.5 * psf),
            loads.Layer("sheathing", 1.4 * psf),
            loads.Layer("framing", 1.9 * psf),
        ]
    )
    assert roof.area_load / psf == pytest.approx(12.8)
    assert [layer.name for layer in roof] == ["concrete tile", "sheathing", "framing"]


def test_slope_by_the_three_four_five_triangle():
    assert loads.slope_to_plan(12 * psf, rise=3, run=4) / psf == pytest.approx(15)
    assert loads.slope_parts(10 * psf, rise=3, run=4) == pytest.approx((6 * psf, 8 * psf))
    assert loads.slope_to_plan(12 * psf, rise=0) == pytest.approx(12 * psf)


def test_slope_by_symbols():
    load, rise, run = sympy.symbols("q a b", positive=True)
    angle = sympy.atan(rise / run)
    assert sympy.simplify(loads.slope_to_plan(load, rise=rise, run=run) - load / sympy.cos(angle)) == 0
    along, square = loads.slope_parts(load, rise=rise, run=run)
    assert sympy.simplify(along - load * sympy.sin(angle)) == 0
    assert sympy.simplify(square - load * sympy.cos(angle)) == 0


def test_wall_share_by_moments_about_the_far_support():
    span, near, far, x = sympy.symbols("L a c x", positive=True)
    # a uniform load 1 from -near to span + far, moments about the far support at span
    reaction = sympy.integrate(span - x, (x, -near, span + far)) / span
    ours = loads.tributary_width_wall(span=span, overhang=near, far_overhang=far)
    assert sympy.simplify(ours - reaction) == 0
    even = loads.tributary_width_wall(span=span, overhang=near)
    assert sympy.simplify(even - (span / 2 + near)) == 0


def test_two_equal_spans_by_the_force_method():
    span = sympy.Symbol("L", positive=True)
    # without its middle support the beam over both spans sags 5 w (2L)^4 / 384 EI there;
    # a force R there lifts it R (2L)^3 / 48 EI
    middle = sympy.Rational(5, 384) * (2 * span) ** 4 / (sympy.Rational(1, 48) * (2 * span) ** 3)
    assert sympy.simplify(loads.middle_width_two_equal_spans(span=span) - middle) == 0
    assert loads.middle_width_two_equal_spans(span=12 * ft) == pytest.approx(
        1.25 * loads.tributary_width_cut(left_span=12 * ft, right_span=12 * ft)
    )


def test_area_to_line_and_arrays():
    widths = numpy.array([1.0, 2.0, 9.0]) * ft
    assert loads.line_load(50 * psf, tributary_width=widths) / plf == pytest.approx([50, 100, 450])
    assert loads.tributary_area(length=20 * ft, width=6.67 * ft) / ft**2 == pytest.approx(133.4)
    assert loads.sheet_load(thickness=1.5 * inch, weight_density=50 * pcf) / psf == pytest.approx(6.25)


def test_loads_by_type_stay_apart():
    floor = loads.LoadsByType({"dead": 10.0, "live": 40.0})
    roof = loads.LoadsByType({"dead": 15.0, "roof live": 20.0, "snow": 30.0})
    both = floor + roof
    assert dict(both) == {"dead": 25.0, "live": 40.0, "roof live": 20.0, "snow": 30.0}
    assert sum([floor, roof]) == both
    assert dict(both.scale(0.5)) == {"dead": 12.5, "live": 20.0, "roof live": 10.0, "snow": 15.0}
    assert both.sum_for_equilibrium_only() == 115.0
    assert dict(floor.map(abs)) == dict(floor)
    assert copy.deepcopy(both) == both and pickle.loads(pickle.dumps(both)) == both


def test_loads_by_type_cannot_be_summed_by_accident_or_changed():
    floor = loads.LoadsByType({"dead": 10.0})
    for slip in (lambda: float(floor), lambda: floor + 5.0, lambda: 5.0 + floor, lambda: floor * 2):
        with pytest.raises(TypeError):
            slip()
    with pytest.raises(TypeError):
        floor["dead"] = 20.0
    with pytest.raises(AttributeError):
        floor.dead = 20.0
    assert not hasattr(floor, "total")


def test_loads_by_type_take_symbols_and_arrays():
    dead = sympy.Symbol("D")
    assert loads.LoadsByType({"dead": dead}).scale(2)["dead"] == 2 * dead
    rack = loads.LoadsByType({"live": numpy.array([1.0, 2.0])}).scale(3)
    assert rack["live"].tolist() == [3.0, 6.0]


BAD_NUMBERS = [-1.0, math.nan, math.inf, "40 psf", None, True, []]
CALLS = [
    (loads.sheet_load, dict(thickness=38.0, weight_density=34 * pcf)),
    (loads.slope_to_plan, dict(area_load=10 * psf, rise=6, run=12)),
    (loads.slope_parts, dict(area_load=10 * psf, rise=6, run=12)),
    (loads.tributary_width_cut, dict(left_span=12 * ft, right_span=10 * ft)),
    (loads.tributary_width_wall, dict(span=12 * ft, overhang=1 * ft, far_overhang=1 * ft)),
    (loads.middle_width_two_equal_spans, dict(span=12 * ft)),
    (loads.tributary_area, dict(length=12 * ft, width=6 * ft)),
    (loads.line_load, dict(area_load=10 * psf, tributary_width=6 * ft)),
    (loads.Layer, dict(name="plaster", area_load=8 * psf)),
]


@pytest.mark.parametrize("function, good", CALLS, ids=lambda value: getattr(value, "__name__", ""))
def test_bad_numbers_are_refused(function, good):
    function(**good)
    for name in good:
        if name == "name":
            continue
        for bad in BAD_NUMBERS:
            if name == "far_overhang" and bad is None:
                continue  # None there means the same as on this side
            with pytest.raises(BadInput):
                function(**{**good, name: bad})


@pytest.mark.parametrize(
    "call, words",
    [
        (lambda: loads.slope_to_plan(10 * psf, rise=6, run=0), "run must be more than 0"),
        (lambda: loads.slope_to_plan(40, rise=6), "area load must be between 0 psf and 5,000 psf"),
        (lambda: loads.tributary_width_wall(span=0), "span must be more than 0 in"),
        (lambda: loads.tributary_width_cut(left_span=400 * ft), "at most|between 0 in and 200 ft, got 400 ft"),
        (lambda: loads.Layer("", 8 * psf), "needs a name"),
        (lambda: loads.Layer(None, 8 * psf), "needs a name"),
        (lambda: loads.Layers([]), "empty list"),
        (lambda: loads.Layers(8 * psf), "must be a list of Layer"),
        (lambda: loads.Layers([8 * psf]), "must be a list of Layer"),
        (lambda: loads.LoadsByType({"snows": 30}), "did you mean 'snow'"),
        (lambda: loads.LoadsByType({"snow": "30 psf"}), "not a number"),
        (lambda: loads.LoadsByType({"snow": math.nan}), "snow load must be"),
        (lambda: loads.LoadsByType(40), "must be a mapping"),
        (lambda: loads.LoadsByType({"live": 40})["dad"], "did you mean 'dead'"),
        (lambda: loads.LoadsByType({"live": 40}).scale("2"), "not a number"),
        (lambda: loads.LoadsByType({"live": 40}).scale(math.inf), "factor must be"),
        (lambda: loads.LoadsByType({"live": 40}).map(lambda value: "more"), "not a number"),
    ],
)
def test_what_makes_no_sense_is_refused(call, words):
    with pytest.raises(BadInput, match=words):
        call()
