"""Derivations of the page of boards."""

from structlib.ground import sections
from structlib.pages.kit.proofs import Step, derivation


def section_of_a_rectangle():
    """Derive moment of inertia and section modulus of a rectangle from thin layers.

    Examples
    --------
    >>> section_of_a_rectangle().proved
    True
    """
    from sympy import Eq, Integral, Symbol, integrate, symbols

    b, d, y = symbols("b d y", positive=True)
    inertia, modulus, twice = Symbol("I"), Symbol("S"), Symbol(r"\frac{I_{2d}}{I_d}")
    derived_inertia = integrate(b * y**2, (y, -d / 2, d / 2))
    derived_modulus = derived_inertia / (d / 2)
    steps = (
        Step(
            "Think of the board as thin layers. A layer at height y has the area b times dy.",
            Eq(Symbol("dA"), b * Symbol("dy")),
        ),
        Step(
            "A layer far from the middle resists bending more. It counts with the square of its height.",
            Eq(inertia, Integral(b * y**2, (y, -d / 2, d / 2))),
        ),
        Step("Add up all the layers, from the bottom edge to the top edge.", Eq(inertia, derived_inertia)),
        Step(
            "Twice the depth, same width: eight times as stiff.",
            Eq(twice, derived_inertia.subs(d, 2 * d) / derived_inertia),
        ),
        Step(
            "The outer edge is stressed most. It lies half the depth from the middle. Divide by that distance.",
            Eq(modulus, derived_modulus),
        ),
    )
    found = {"width": b, "depth": d}
    inputs = {"width": (b, "section length"), "depth": (d, "section length")}
    return derivation(
        "Why does depth count more than width?",
        steps,
        (sections.rectangle_inertia, found, derived_inertia, inertia, "inertia", inputs),
        (sections.rectangle_section_modulus, found, derived_modulus, modulus, "section modulus", inputs),
    )
