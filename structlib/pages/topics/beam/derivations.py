"""Derivations of the page of beam."""

from structlib.ground import sections
from structlib.mechanics import formulas
from structlib.pages.kit.proofs import Derivation, Ending, Step, name_of, prove


def required_section():
    """Derive the section modulus and the depth that a load and a span ask for."""
    from sympy import Eq, UnevaluatedExpr, solve, sqrt, symbols

    w, L, f, b, d = symbols("w L f b d", positive=True)
    M, S = symbols("M S", positive=True)
    moment = formulas.simple_uniform_moment(line_load=w, span=L)
    found_modulus = moment / f
    modulus = sections.rectangle_section_modulus(width=b, depth=d)
    found_depth = solve(Eq(modulus, found_modulus), d)[0]
    square = found_depth**2
    root = sqrt(UnevaluatedExpr(square))  # unevaluated, so that it prints as one root
    steps = (
        Step("The load bends the beam most at the middle.", Eq(M, moment)),
        Step(
            "The stress at the edge is moment over section modulus.",
            Eq(f, formulas.bending_stress(moment=M, section_modulus=S)),
        ),
        Step("Turn it round. This much section modulus is needed.", Eq(S, M / f)),
        Step("Put the moment in. Twice the span asks for four times the section.", Eq(S, found_modulus)),
        Step("A rectangle gives this much.", Eq(S, modulus)),
        Step("Set the two equal and ask for the depth, squared.", Eq(d**2, square)),
        Step("Take the root. Twice the span asks for twice the depth.", Eq(d, root)),
    )
    stress = {
        "modulus": formulas.bending_stress(moment=moment, section_modulus=found_modulus),
        "depth": formulas.bending_stress(
            moment=moment, section_modulus=sections.rectangle_section_modulus(width=b, depth=root.doit())
        ),
    }
    for found in stress.values():
        prove(f, found, "bending_stress")
    name = name_of(formulas.bending_stress)
    inputs = {"line_load": (w, "line load"), "span": (L, "length"), "stress": (f, "stress")}
    endings = (
        Ending(name, Eq(S, found_modulus), "section modulus", inputs),
        Ending(name, Eq(d, root), "section length", inputs | {"width": (b, "section length")}),
    )
    return Derivation("How deep must the beam be?", steps, endings, True)
