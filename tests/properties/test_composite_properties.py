"""What must hold for any composite section."""

import sympy
from hypothesis import given, settings
from hypothesis import strategies as st
from pytest import approx

from structlib.mechanics.composite import (
    Part,
    fastener_efficiency,
    joined_share,
    joined_stiffness,
    joined_stress,
    loose_stiffness,
    own_stress,
    partly_joined_stiffness,
    partly_joined_stress,
    shares_by_stiffness,
    stack,
)

moduli = st.floats(1_000.0, 210_000.0)
widths = st.floats(5.0, 200.0)
depths = st.floats(10.0, 400.0)
layer = st.tuples(moduli, widths, depths)
some = settings(max_examples=50, deadline=None)


@some
@given(st.lists(layer, min_size=1, max_size=5))
def test_shares_add_up_and_order_by_stiffness(layers):
    parts = [Part(modulus=m, width=w, depth=d) for m, w, d in layers]
    shares = shares_by_stiffness(parts)
    assert sum(shares) == approx(1.0)
    by_share = sorted(range(len(parts)), key=lambda k: shares[k])
    stiffness = [parts[k].bending_stiffness for k in by_share]
    assert all(low <= high * (1 + 1e-12) for low, high in zip(stiffness, stiffness[1:]))


@some
@given(st.lists(layer, min_size=2, max_size=5), st.floats(0.0, 1.0))
def test_slip_lies_between_its_two_limits(layers, joined):
    parts = stack(layers)
    low, high = loose_stiffness(parts), joined_stiffness(parts)
    assert low < high
    found = partly_joined_stiffness(parts, joined=joined)
    assert low * (1 - 1e-12) <= found <= high * (1 + 1e-12)
    assert partly_joined_stiffness(parts, joined=0.0) == approx(low)
    assert partly_joined_stiffness(parts, joined=1.0) == approx(high)


@some
@given(layer, layer, st.floats(1.0, 1e5))
def test_stresses_of_half_joined_layers_meet_both_limits(first, second, moment):
    top, bottom = stack([first, second])
    loose = partly_joined_stress(top, bottom, moment=moment, joined=0.0)
    own = own_stress(top, moment=moment, stiffness=loose_stiffness([top, bottom]))
    assert loose[0] == approx((-own, own))
    joined = partly_joined_stress(top, bottom, moment=moment, joined=1.0)
    for (upper, lower), part in zip(joined, (top, bottom)):
        for found, height in ((upper, part.centre - part.depth / 2), (lower, part.centre + part.depth / 2)):
            expected = joined_stress([top, bottom], modulus=part.modulus, height=height, moment=moment)
            assert found == approx(expected, rel=1e-6, abs=1e-9 * max(abs(one) for one in joined[0] + joined[1]))


@some
@given(layer, layer, st.floats(10.0, 600.0), st.floats(1e2, 1e5), st.floats(1500.0, 9000.0))
def test_fasteners_closer_together_join_better(first, second, spacing, slip_modulus, span):
    top, bottom = stack([first, second])
    found = []
    for factor in (1.0, 0.5):
        efficiency = fastener_efficiency(
            axial_stiffness=top.axial_stiffness,
            spacing=factor * spacing,
            slip_modulus=slip_modulus,
            span=span,
        )
        share = joined_share(top, bottom, efficiency=efficiency)
        assert 0 < efficiency < 1 and efficiency <= share * (1 + 1e-12) < 1 + 1e-9
        found.append(share)
    assert found[1] > found[0]


@some
@given(moduli, widths, depths, st.integers(2, 5))
def test_like_layers_joined_are_one_deep_board(modulus, width, depth, count):
    parts = stack([(modulus, width, depth)] * count)
    ratio = joined_stiffness(parts) / loose_stiffness(parts)
    assert ratio == approx(count**2)


def test_symbols_pass_through_and_joined_layers_are_one_rectangle():
    e, b, h, m = sympy.symbols("E b h M", positive=True)
    parts = stack([(e, b, h), (e, b, h)])
    assert sympy.simplify(joined_stiffness(parts) - e * b * (2 * h) ** 3 / 12) == 0
    assert sympy.simplify(loose_stiffness(parts) - e * b * h**3 / 6) == 0
    stress = joined_stress(parts, modulus=e, height=2 * h, moment=m)
    assert sympy.simplify(stress - m / (b * (2 * h) ** 2 / 6)) == 0


def test_efficiency_by_symbols_is_the_published_form_of_the_stiffness():
    """EN 1995-1-1 (B.1), (B.6): own stiffness, and gamma1 E1 A1 a1^2 + E2 A2 a2^2 about the shifted axis."""
    e1, e2, b, h1, h2, gamma = sympy.symbols("E1 E2 b h1 h2 gamma", positive=True)
    top, bottom = stack([(e1, b, h1), (e2, b, h2)])
    first, second, gap = e1 * b * h1, e2 * b * h2, (h1 + h2) / 2
    a2 = gamma * first * gap / (gamma * first + second)
    a1 = gap - a2
    published = loose_stiffness([top, bottom]) + gamma * first * a1**2 + second * a2**2
    ours = partly_joined_stiffness([top, bottom], joined=joined_share(top, bottom, efficiency=gamma))
    assert sympy.simplify(published - ours) == 0
