"""Derivation of notebook 09: what a ridge beam carries of a pair of rafters, and of a span."""

from structlib.mechanics import frames
from structlib.mechanics.formulas import simple_uniform_moment
from structlib.pages.kit.proofs import Step, derivation, same_as


def ridge_beam():
    """Derive what a ridge beam carries along its length, and its posts, from the balance of one rafter.

    Examples
    --------
    >>> ridge_beam().proved
    True
    """
    from sympy import Eq, solve, symbols

    p, L, h, s, w = symbols("p L h s w", positive=True)
    wall, push, moment, post = symbols("R H M P")
    weight = p * (L / 2)
    found_wall = solve(Eq(wall * (L / 2), weight * (L / 4)), wall)[0]
    found_line = 2 * (weight - found_wall)
    found_push = solve(Eq(found_wall * (L / 2), weight * (L / 4) + push * h), push)[0]
    found_moment = same_as(found_line * s**2 / 8, simple_uniform_moment, {"line_load": found_line, "span": s})
    steps = (
        Step(
            "One rafter rests on the wall and on the ridge beam. Turn about the ridge: two things turn it.",
            Eq(wall * (L / 2), p * L**2 / 8, evaluate=False),
        ),
        Step("So the wall lifts half of one rafter's load.", Eq(wall, found_wall)),
        Step("The other half hangs on the ridge. Two rafters meet there.", Eq(w, found_line)),
        Step("Nothing is left to turn the rafter. So it needs no push at the eave.", Eq(push, found_push)),
        Step("From post to post the ridge is a beam with an even load.", Eq(moment, found_moment)),
        Step("Half of each span that ends on a post comes down there.", Eq(post, w * s / 2)),
    )
    return derivation(
        "What does a ridge beam carry?",
        steps,
        (
            frames.ridge_beam_load,
            {"line_load": p, "building_span": L},
            found_line,
            w,
            "line load",
            {"line_load": (p, "area load"), "building_span": (L, "length")},
        ),
        (
            frames.ridge_post_load,
            {"ridge_load": w, "spans": s},
            w * s - w * s / 2,
            post,
            "force",
            {"ridge_load": (w, "line load"), "spans": (s, "length")},
        ),
    )
