"""Derivation of notebook 06: why a slender post bows out."""

from structlib.mechanics import columns
from structlib.pages.kit.proofs import Step, derivation


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
