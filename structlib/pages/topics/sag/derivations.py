"""Derivations of notebook 13: how fast a floor swings, and sag after years."""

from structlib.mechanics import formulas, vibration
from structlib.pages.kit.proofs import Step, derivation, prove, same_as
from structlib.rules.choice import RULEBOOK

deflection = RULEBOOK.room("deflection")


def first_frequency():
    """Derive the first frequency of a simple span from its energy, and from its sag.

    Examples
    --------
    >>> first_frequency().proved
    True
    """
    from sympy import Eq, Function, Integral, Rational, integrate, pi, sin, solve, sqrt, symbols
    from sympy import UnevaluatedExpr as kept  # printed as people write it

    w, L, EI, g, a, x, omega, sag = symbols("w L EI g a x omega delta", positive=True)
    U, T, f = symbols("U T f")
    shape = a * sin(pi * x / L)
    bent = EI / 2 * integrate(shape.diff(x, 2) ** 2, (x, 0, L))
    moving = w / (2 * g) * omega**2 * integrate(shape**2, (x, 0, L))
    turns = solve(Eq(bent, moving), omega)[0]
    found = turns / (2 * pi)
    from_load = solve(Eq(sag, 5 * w * L**4 / (384 * EI)), w)[0]
    by_sag = same_as(found.subs(w, from_load), vibration.frequency_from_sag, {"sag": sag, "gravity": g})
    # the same, under one root as people write it
    one_root = pi / (2 * L**2) * sqrt(kept(EI * g / w))
    sag_root = pi / 2 * sqrt(kept(5 * g / (384 * sag)))
    prove(one_root.doit(), found, "first_frequency")
    prove(sag_root.doit(), by_sag, "first_frequency")
    y = Function("y")(x)
    steps = (
        Step("A floor that bounces swings in half a wave between its supports.", Eq(y, shape)),
        Step(
            "At its lowest it stands still. All the energy is in the bending.",
            Eq(U, EI / 2 * Integral(y.diff(x, 2) ** 2, (x, 0, L))),
        ),
        Step("Add up along the span.", Eq(U, bent)),
        Step(
            "Passing level, it is fastest. All the energy is in the motion. Mass is weight over gravity.",
            Eq(T, w / (2 * g) * omega**2 * Integral(y**2, (x, 0, L))),
        ),
        Step("Add up again.", Eq(T, moving)),
        Step(
            "It is the same energy, there and back. How far it swings falls out.",
            Eq(omega, 2 * pi * one_root),
        ),
        Step("One swing is a full turn. This is the number of swings in a second.", Eq(f, one_root)),
        Step("The same weight makes the floor sag.", Eq(sag, Rational(5, 384) * w * L**4 / EI)),
        Step("So the sag alone tells the frequency: about 0.18 times the root.", Eq(f, sag_root)),
    )
    loaded = {
        "line_weight": (w, "line load"),
        "span": (L, "length"),
        "bending_stiffness": (EI, "stiffness"),
        "gravity": (g, "acceleration"),
    }
    direct = {"bending_stiffness": EI, "line_weight": w, "span": L, "gravity": g}
    return derivation(
        "How fast does a floor swing?",
        steps,
        (vibration.simple_span_frequency, direct, found, f, "frequency", loaded),
        (
            vibration.frequency_from_sag,
            {"sag": sag, "gravity": g},
            by_sag,
            f,
            "frequency",
            {"sag": (sag, "small length"), "gravity": (g, "acceleration")},
        ),
    )


def sag_after_years():
    """Derive the sag after years from what bends at once and what creep adds.

    Examples
    --------
    >>> sag_after_years().proved
    True
    """
    from sympy import Eq, Rational, Symbol, symbols

    stays, passes, L, EI, K = symbols("w_D w_L L EI K", positive=True)
    lasting, creep, passing, total = symbols("y_D y_c y_L y")

    def sag(load):
        return formulas.simple_uniform_deflection(line_load=load, span=L, bending_stiffness=EI)

    found = K * sag(stays) + sag(passes)
    steps = (
        Step("The weight that stays bends the joist at once.", Eq(lasting, sag(stays))),
        Step("Years under it add to that. The factor says how much.", Eq(creep, (K - 1) * lasting)),
        Step("So the lasting part has grown.", Eq(lasting + creep, K * lasting)),
        Step("People come and go. Their part springs, and does not creep.", Eq(passing, sag(passes))),
        Step("Together, after years, with people on it.", Eq(total, K * lasting + passing)),
        Step(
            "Dry wood has a factor of three halves. Creep is half of the first sag.",
            Eq(creep, lasting * Rational(1, 2)),
        ),
        Step("Wood laid green has a factor of two. Then creep is as much again.", Eq(creep, 1 * lasting)),
    )
    inputs = {
        "dead": (stays, "line load"), "live": (passes, "line load"), "span": (L, "length"),
        "bending_stiffness": (EI, "stiffness"), "creep_factor": (K, "ratio"),
    }  # fmt: skip
    return derivation(
        "How far is it down after years?",
        steps,
        (
            deflection.long_term_deflection,
            {"lasting": sag(stays), "passing": sag(passes), "creep_factor": K},
            found,
            Symbol("y"),
            "small length",
            inputs,
        ),
    )
