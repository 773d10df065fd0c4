"""Derivations of notebook 12: what a notch leaves."""

from structlib.ground.cut_sections import notched_section_modulus
from structlib.pages.kit.proofs import Step, derivation


def what_a_notch_leaves():
    """Derive the section modulus left at a notch, and the share of strength.

    Examples
    --------
    >>> what_a_notch_leaves().proved
    True
    """
    from sympy import Eq, Symbol, simplify, symbols

    b, d, n = symbols("b d n", positive=True)
    S, left, share = Symbol("S"), Symbol(r"S_{\text{left}}"), Symbol(r"\frac{S_{\text{left}}}{S}")
    whole, cut = b * d**2 / 6, b * (d - n) ** 2 / 6
    sixth = simplify((cut / whole).subs(n, d / 6))
    steps = (
        Step("A board's strength in bending goes with its width and its depth squared.", Eq(S, whole)),
        Step(
            "A notch takes its own depth off. What is left is shallower.",
            Eq(Symbol(r"d_{\text{left}}"), d - n),
        ),
        Step("The wood left bends like a board of that depth.", Eq(left, cut)),
        Step("Compare it with the whole. The width falls out.", Eq(share, (cut / whole).cancel().factor())),
        Step("A notch of one sixth leaves 25 parts of 36.", Eq(share, sixth)),
        Step("So the stress there is 1.44 times as great.", Eq(Symbol(r"\frac{f_{\text{left}}}{f}"), 1 / sixth)),
    )
    inputs = {"width": (b, "section length"), "depth": (d, "section length"), "notch": (n, "section length")}
    return derivation(
        "What does a notch leave?",
        steps,
        (
            notched_section_modulus,
            {"width": b, "depth": d, "notch": n},
            cut,
            left,
            "section modulus",
            inputs,
        ),
    )
