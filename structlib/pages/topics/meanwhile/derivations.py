"""Derivations of notebook 14: the lever over a temporary wall, and a jack until the ends let go."""

from structlib.mechanics import formulas, jacking, shoring
from structlib.pages.kit.proofs import Step, derivation


def temporary_wall():
    """Derive the push of a temporary wall from the turning about the far wall.

    Examples
    --------
    >>> temporary_wall().proved
    True
    """
    from sympy import Eq, solve, symbols

    w, L, a, P = symbols("w L a P", positive=True)
    had, push, far, ratio = symbols(r"R_{\text{wall}} R_{\text{temp}} R_{\text{far}} \lambda", positive=True)
    found_had = solve(Eq(had * L, w * L * L / 2 + P * L), had)[0]
    found_push = solve(Eq(push * (L - a), w * L * L / 2 + P * L), push)[0]
    found_far = solve(Eq(far + found_push, w * L + P), far)[0]
    steps = (
        Step(
            "Take the turning about the far wall. The load on the joist acts at half the span. P stands at the end.",
            Eq(had * L, w * L * (L / 2) + P * L, evaluate=False),
        ),
        Step("So this is what the wall had from this side.", Eq(had, found_had.expand())),
        Step(
            "The wall goes. A temporary wall stands nearer, by the distance a. Its lever is shorter.",
            Eq(push * (L - a), w * L * (L / 2) + P * L, evaluate=False),
        ),
        Step(
            "The same turning with a shorter lever needs more push.",
            Eq(push, (w * L / 2 + P) * (L / (L - a))),
        ),
        Step(
            "Divide the one by the other. The loads cancel, and a plain ratio of lengths is left.",
            Eq(ratio, (found_push / found_had).simplify()),
        ),
        Step(
            "Up and down must balance. What the temporary wall has more, the far wall has less.",
            Eq(far, w * L + P - push),
        ),
    )
    given = {"line_load": w, "span": L, "offset": a, "tip_load": P}
    inputs = {
        "line_load": (w, "line load"),
        "span": (L, "length"),
        "offset": (a, "length"),
        "tip_load": (P, "force"),
    }
    return derivation(
        "Why does the temporary wall carry more than the wall did?",
        steps,
        (shoring.temporary_wall_reaction, given, found_push, push, "force", inputs),
        (shoring.far_wall_reaction, given, found_far, far, "force", inputs),
    )


def jack_until_the_ends_let_go():
    """Derive how far a jack at mid-span lifts before the whole load hangs on it.

    Examples
    --------
    >>> jack_until_the_ends_let_go().proved
    True
    """
    from sympy import Eq, solve, symbols

    w, L, EI, u = symbols("w L EI u", positive=True)
    force, end, let_go, sag, ratio = symbols(
        r"F R_{\text{end}} u_{\text{off}} y_{\text{springs}} \frac{u_{\text{off}}}{y_{\text{springs}}}",
        positive=True,
    )
    found_force = solve(Eq(u, force * L**3 / (48 * EI)), force)[0]
    found_end = w * L / 2 - found_force / 2
    found_off = solve(found_end, u)[0]
    springs = formulas.simple_uniform_deflection(line_load=w, span=L, bending_stiffness=EI)
    steps = (
        Step(
            "A jack pushes up in the middle. The beam answers as to any load there, only upward.",
            Eq(u, force * L**3 / (48 * EI)),
        ),
        Step("Turn it round. The force grows in step with the lift.", Eq(force, found_force)),
        Step("Each end loses half of what the jack takes.", Eq(end, found_end)),
        Step("The ends let go when nothing is left on them.", Eq(found_end, 0)),
        Step("That gives the lift at which the whole load hangs on the jack.", Eq(let_go, found_off)),
        Step("The load alone makes the beam spring down by this much.", Eq(sag, springs)),
        Step(
            "Compare the two. Only 1.6 times the springing sag, and the ends are in the air.",
            Eq(ratio, found_off / springs),
        ),
    )
    inputs = {"lift": (u, "small length"), "span": (L, "length"), "bending_stiffness": (EI, "stiffness")}
    loads = {"line_load": (w, "line load"), "span": (L, "length"), "bending_stiffness": (EI, "stiffness")}
    return derivation(
        "How far can a jack lift a sagging beam before its ends let go?",
        steps,
        (
            jacking.midspan_jack_force,
            {"lift": u, "span": L, "bending_stiffness": EI},
            found_force,
            force,
            "force",
            inputs,
        ),
        (
            jacking.midspan_lift_off,
            {"line_load": w, "span": L, "bending_stiffness": EI},
            found_off,
            let_go,
            "small length",
            loads,
        ),
    )
