"""Derivations of the page of wall."""

from structlib.ground import loads
from structlib.mechanics import formulas
from structlib.pages.kit.proofs import Step, derivation


def tributary_line_load():
    """Derive the load on a foot of wall from the balance of one joist."""
    from sympy import Eq, solve, symbols

    p, s, L = symbols("p s L", positive=True)
    on_joist, push, on_wall, width = symbols(r"w R w_{\text{wall}} B", positive=True)
    found_push = solve(Eq(push * L, on_joist * L * L / 2), push)[0]
    found_wall = found_push.subs(on_joist, p * s) / s
    steps = (
        Step(
            "One joist carries a strip of floor. The strip is as wide as the joist spacing.",
            Eq(on_joist, p * s),
        ),
        Step(
            "Take the turning about one end. The whole load acts at the middle of the span. The far wall pushes back.",
            Eq(push * L, on_joist * L * (L / 2), evaluate=False),
        ),
        Step("So each end carries half.", Eq(push, found_push)),
        Step("The wall gets one such push every joist spacing. Divide by the spacing.", Eq(on_wall, push / s)),
        Step(
            "The spacing cancels. The wall carries the area load times half the span.",
            Eq(on_wall, found_wall),
        ),
        Step("So the wall carries a strip of floor, half a span wide.", Eq(width, found_wall / p)),
    )
    return derivation(
        "Why does a wall carry half the span?",
        steps,
        (
            formulas.simple_uniform_reaction,
            {"line_load": p, "span": L},
            found_wall,
            on_wall,
            "line load",
            {"area_load": (p, "area load"), "span": (L, "length")},
        ),
        (
            loads.tributary_width_cut,
            {"left_span": L},
            found_wall / p,
            width,
            "length",
            {"span": (L, "length")},
        ),
    )


def middle_support():
    """Derive the push of the middle support of two equal spans by taking it away and back."""
    from sympy import Eq, Symbol, solve, symbols

    w, L, EI = symbols("w L EI", positive=True)
    middle, width = symbols(r"R_{\text{middle}} B", positive=True)
    sag = formulas.simple_uniform_deflection(line_load=w, span=2 * L, bending_stiffness=EI)
    lift = formulas.simple_midspan_point_deflection(point_load=middle, span=2 * L, bending_stiffness=EI)
    push = solve(Eq(sag, lift), middle)[0]
    share = 2 * formulas.simple_uniform_reaction(line_load=w, span=L)
    steps = (
        Step(
            "Without the middle support one long span is left, and it sags.",
            Eq(Symbol(r"y_{\text{down}}"), sag),
        ),
        Step("Push it up again at the middle, with one force.", Eq(Symbol(r"y_{\text{up}}"), lift)),
        Step("A support does not give way. The two must cancel.", Eq(sag, lift)),
        Step("The stiffness drops out. This is the push of the middle support.", Eq(middle, push)),
        Step(
            "Cut over the support, the joists would bring half of each span, one span in all.",
            Eq(Symbol(r"R_{\text{cut}}"), share),
        ),
        Step("Run through, they bring a quarter more.", Eq(middle / Symbol(r"R_{\text{cut}}"), push / share)),
        Step("So the middle wall carries a strip of floor, one span and a quarter wide.", Eq(width, push / w)),
    )
    return derivation(
        "Why does a middle support carry a quarter more?",
        steps,
        (
            formulas.two_span_uniform_middle_reaction,
            {"line_load": w, "span": L},
            push,
            middle,
            "force",
            {"line_load": (w, "line load"), "span": (L, "length")},
        ),
        (
            loads.middle_width_two_equal_spans,
            {"span": L},
            push / w,
            width,
            "length",
            {"span": (L, "length")},
        ),
    )
