"""Derivations of notebook 05: how long a seat must be."""

from structlib.mechanics import formulas
from structlib.pages.kit.proofs import Step, derivation, same_as
from structlib.rules.choice import RULEBOOK

bearing = RULEBOOK.room("bearing")


def seat_length():
    """Derive the seat length of a simple beam from its load, its span, its width and its wood.

    Examples
    --------
    >>> seat_length().proved
    True
    """
    from sympy import Eq, solve, symbols

    w, L, b, F = symbols("w L b F", positive=True)
    push, stress, length = symbols("R f l", positive=True)
    found_push = solve(Eq(push * L, w * L * L / 2), push)[0]
    found_stress = same_as(
        push / (b * length),
        bearing.bearing_stress,
        {"reaction": push, "width": b, "bearing_length": length},
    )
    from_push = solve(Eq(found_stress, F), length)[0]
    found_length = from_push.subs(push, found_push)
    steps = (
        Step(
            "Turn about one end. The whole load acts at the middle of the span.",
            Eq(push * L, w * L * (L / 2), evaluate=False),
        ),
        Step("So each end pushes on its seat with half of the load.", Eq(push, found_push)),
        Step("The push spreads over the area in contact: width times seat.", Eq(stress, found_stress)),
        Step("At the limit the wood is pressed to its value, and no more.", Eq(F, found_stress)),
        Step("Turn it round. Push over width and value is the seat.", Eq(length, from_push)),
        Step("Put the push in. Depth does not occur at all.", Eq(length, found_length)),
        Step(
            "Half the width asks for twice the seat.",
            Eq(symbols(r"\frac{l_{b/2}}{l_b}"), found_length.subs(b, b / 2) / found_length),
        ),
    )
    loaded = {"line_load": (w, "line load"), "span": (L, "length")}
    return derivation(
        "How long must the seat be?",
        steps,
        (
            formulas.simple_uniform_reaction,
            {"line_load": w, "span": L},
            found_push,
            push,
            "force",
            loaded,
        ),
        (
            bearing.bearing_length_needed,
            {
                "reaction": formulas.simple_uniform_reaction(line_load=w, span=L),
                "width": b,
                "bearing_value": F,
            },
            found_length,
            length,
            "small length",
            loaded | {"width": (b, "section length"), "bearing_value": (F, "stress")},
        ),
    )
