"""Derivations of notebook 08: what a pair of rafters pushes with, and what a raised tie costs."""

from structlib.mechanics import frames, frames_along
from structlib.pages.kit.proofs import Step, derivation, prove, same_as


def rafter_thrust():
    """Derive the push of a pair of rafters at the eaves from the balance of one rafter.

    Examples
    --------
    >>> rafter_thrust().proved
    True
    """
    from sympy import Eq, solve, symbols

    w, L, h = symbols("w L h", positive=True)
    lift, push, twice = symbols(r"R H \frac{H_{2h}}{H_h}", positive=True)
    found_lift = solve(Eq(2 * lift, w * L), lift)[0]
    weight = w * (L / 2)
    about_ridge = Eq(lift * (L / 2), weight * (L / 4) + push * h, evaluate=False)
    with_lift = about_ridge.subs(lift, found_lift)
    found_push = solve(with_lift, push)[0]
    steps = (
        Step("Both sides are the same. So each wall lifts half of the whole load.", Eq(lift, found_lift)),
        Step(
            "Look at one rafter alone. Turn about the ridge: the wall's lift turns it one way.",
            Eq(symbols("M"), lift * (L / 2), evaluate=False),
        ),
        Step(
            "Its own load turns it back, at half the way. The push at the eave does the rest.",
            about_ridge,
        ),
        Step("Put in the lift of the wall.", Eq(w * L**2 / 4, w * L**2 / 8 + push * h, evaluate=False)),
        Step("Half is left over. The push carries it, with the rise as its lever.", Eq(push, found_push)),
        Step(
            "Twice the rise, same load on plan: half the push.",
            Eq(twice, found_push.subs(h, 2 * h) / found_push),
        ),
    )
    return derivation(
        "Why do rafters push outward?",
        steps,
        (
            frames.rafter_thrust,
            {"line_load": w, "building_span": L, "rise": h},
            found_push,
            push,
            "force",
            {"line_load": (w, "line load"), "building_span": (L, "length"), "rise": (h, "length")},
        ),
    )


def raised_tie():
    """Derive what a raised tie is pulled with, and how it bends the rafters, from the same free body.

    Examples
    --------
    >>> raised_tie().proved
    True
    """
    from sympy import Eq, Rational, cancel, simplify, solve, sqrt, symbols

    w, L, h, a = symbols("w L h a", positive=True)
    pull, bend, simple, times, code = symbols(r"T M M_0 \frac{M}{M_0} \text{span}", positive=True)
    found_pull = same_as(
        solve(Eq(w * L**2 / 4, w * L**2 / 8 + pull * (h - a * h)), pull)[0],
        frames.tie_force,
        {"line_load": w, "building_span": L, "rise": h, "height_fraction": a},
    )
    place = a * (L / 2)
    along = {"line_load": w, "building_span": L, "distance": place}
    found_bend = w * L**2 * a * (2 - a) / 8  # the same, written shorter
    prove(found_bend, frames_along.moment_below_tie(**along), "moment_below_tie")
    prove(found_bend, w * L / 2 * place - w * place**2 / 2, "its free body")
    found_simple = same_as(w * (L / 2) ** 2 / 8, frames.simple_rafter_moment, {"line_load": w, "building_span": L})
    found_times = simplify(cancel(found_bend / found_simple))
    at_third = found_times.subs(a, Rational(1, 3))
    steps = (
        Step(
            "The tie stands a part a of the rise up. Its lever about the ridge is shorter.",
            Eq(w * L**2 / 4, w * L**2 / 8 + pull * h * (1 - a), evaluate=False),
        ),
        Step("The turning is the same. So a shorter lever asks for more pull.", Eq(pull, found_pull)),
        Step(
            "Below the tie only the wall's lift and the load there act. They bend the rafter up to the tie.",
            Eq(bend, found_bend),
        ),
        Step("A rafter with its tie at the eave bends in its middle.", Eq(simple, found_simple)),
        Step("Divide. This is the bending at the tie, in times of that.", Eq(times, found_times)),
        Step("A third of the way up it is more than twice as much.", Eq(times, at_third, evaluate=False)),
        Step(
            "Bending grows with the span squared. The code shortens the span by the root, 0.67.",
            Eq(code, 1 / sqrt(at_third)),
        ),
    )
    return derivation(
        "What does a raised tie cost?",
        steps,
        (
            frames.tie_force,
            {"line_load": w, "building_span": L, "rise": h, "height_fraction": a},
            found_pull,
            pull,
            "force",
            {
                "line_load": (w, "line load"),
                "building_span": (L, "length"),
                "rise": (h, "length"),
                "height_fraction": (a, "ratio"),
            },
        ),
        (
            frames.raised_tie_bending_factor,
            {"height_fraction": a},
            found_times,
            times,
            "ratio",
            {"height_fraction": (a, "ratio")},
        ),
    )
