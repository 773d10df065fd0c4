"""Derivations of notebook 06: why a slender post bows out, and how wide its pad must be."""

from structlib.mechanics import columns
from structlib.pages.kit.proofs import Step, derivation
from structlib.rules.choice import RULEBOOK

footings = RULEBOOK.room("footings")


def euler_column():
    """Derive the load under which a slender post bows out, from its bent shape.

    Examples
    --------
    >>> euler_column().proved
    True
    """
    from sympy import Eq, Function, Symbol, cos, dsolve, pi, sin, solve, symbols

    P, L, EI, x, k = symbols("P L EI x b", positive=True)
    A, B = symbols("C_1 C_2")
    M, y = Function("M")(x), Function("y")(x)
    # the general bow, from the equation itself; its two constants are then named as people write them
    bow = dsolve(Eq(y.diff(x, 2) + k**2 * y, 0), y).rhs
    bow = bow.coeff(sin(k * x)) * sin(k * x) + bow.coeff(cos(k * x)) * cos(k * x)
    constants = sorted(bow.free_symbols - {k, x}, key=str)
    bow = bow.subs({bow.coeff(sin(k * x)): A, bow.coeff(cos(k * x)): B}, simultaneous=True)
    if len(constants) != 2 or (bow.diff(x, 2) + k**2 * bow).simplify() != 0:
        raise ArithmeticError("the bow does not satisfy its own equation")
    foot = solve(Eq(bow.subs(x, 0), 0), B)[0]
    bow_from_foot = bow.subs(B, foot)
    first = pi / L  # the sine is zero at its ends for the first time after half a turn
    if bow_from_foot.subs(k, first).subs(x, L).simplify() != 0:
        raise ArithmeticError("the bow does not come back to the line at the top")
    load = solve(Eq(P / EI, first**2), P)[0]
    steps = (
        Step("The post has bowed a little. At the height x it stands off the line by y.", Eq(M, P * y)),
        Step("Moment bends the post. A stiff post bends less.", Eq(EI * y.diff(x, 2), -M)),
        Step("Put the moment in. What is constant gets one letter, b.", Eq(k**2, P / EI)),
        Step("Now the bend is as great as the bow itself, times a constant.", Eq(y.diff(x, 2) + k**2 * y, 0)),
        Step("Only waves do that.", Eq(y, bow)),
        Step("The foot stays on the line. That takes the second wave away.", Eq(B, foot)),
        Step("The top stays on the line, too.", Eq(bow_from_foot.subs(x, L), 0)),
        Step("Straight is one answer. The other is half a wave over the whole height.", Eq(k * L, pi)),
        Step("That fixes the load. It is the first one at which the post can stay bowed.", Eq(P / EI, first**2)),
        Step("Twice the height leaves a quarter of it.", Eq(Symbol(r"P_{\text{buckling}}"), load)),
    )
    return derivation(
        "When does a slender post bow out?",
        steps,
        (
            columns.euler_load,
            {"bending_stiffness": EI, "effective_length": L},
            load,
            Symbol(r"P_{\text{buckling}}"),
            "force",
            {"bending_stiffness": (EI, "stiffness"), "effective_length": (L, "length")},
        ),
    )


def pad_side():
    """Derive the side of a square pad from what the soil bears.

    Examples
    --------
    >>> pad_side().ends_in[0].rpartition(".")[2]
    'pad_side'
    """
    from sympy import Eq, UnevaluatedExpr, solve, sqrt, symbols

    P, W, q, a, t, u = symbols("P W q a t u", positive=True)
    weight = u * a**2 * t
    pressed = ((P + weight) / a**2).expand()
    area = solve(Eq(q, pressed), a**2)[0]
    side = sqrt(UnevaluatedExpr(area))  # unevaluated, so that it prints as one root
    steps = (
        Step("The load and the pad itself press on the soil, all over the pad.", Eq(q, (P + W) / a**2)),
        Step("The pad weighs its area times its thickness times the weight of concrete.", Eq(W, weight)),
        Step("Put it in. The area cancels for the pad: only its thickness counts.", Eq(q, pressed)),
        Step(
            "So the pad uses some of the soil up by itself. The rest is for the load.",
            Eq(q - u * t, P / a**2),
        ),
        Step("This much area is needed.", Eq(a**2, area)),
        Step("Take the root. Four times the load asks for twice the side.", Eq(a, side)),
    )
    inputs = {
        "load": (P, "force"),
        "soil_pressure": (q, "area load"),
        "thickness": (t, "section length"),
        "weight_density": (u, "weight density"),
    }
    return derivation(
        "How wide must the pad be?",
        steps,
        (
            footings.pad_side,
            {"load": P, "soil_pressure": q, "thickness": t, "weight_density": u},
            side,
            a,
            "section length",
            inputs,
        ),
    )
