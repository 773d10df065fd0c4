"""Derivation of notebook 07: how wide the pad under a post must be."""

from structlib.pages.kit.proofs import Step, derivation
from structlib.rules.choice import RULEBOOK

footings = RULEBOOK.room("footings")


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
