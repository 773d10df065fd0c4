"""Derivations of the start page."""

from structlib.ground import loads
from structlib.mechanics import formulas
from structlib.pages.kit.proofs import Step, derivation


def floor_to_post():
    """Derive how a load on an area becomes a load on a line, and then a load at one point."""
    from sympy import Eq, expand, factor, symbols

    p, b, one, two, S = symbols("p b L_1 L_2 S", positive=True)
    left, right, width, line, end, post = symbols(
        r"R_{\text{left}} R_{\text{right}} B w R_{\text{end}} P", positive=True
    )
    ends = {left: p * b * one / 2, right: p * b * two / 2}
    on_line = factor(expand((left + right).subs(ends) / b))
    push = on_line * S / 2
    steps = (
        Step(
            "Think of one strip of the floor, across the beam. Half of its left span leans on it.", Eq(left, ends[left])
        ),
        Step("Half of its right span does the same.", Eq(right, ends[right])),
        Step("The beam gets both, on the width of the strip. Divide by it.", Eq(line, (left + right) / b)),
        Step("The width of the strip cancels. An area load has become a line load.", Eq(line, on_line)),
        Step("So the beam carries a strip of floor, half a span to each side.", Eq(width, on_line / p)),
        Step("The line load lies on the beam, from post to post. Each end gets half.", Eq(end, line * S / 2)),
        Step("Put the line load in.", Eq(end, push)),
        Step("A middle post has such an end on both sides. The line is a point now.", Eq(post, 2 * push)),
    )
    area = {"area_load": (p, "area load"), "left_span": (one, "length"), "right_span": (two, "length")}
    return derivation(
        "How does a floor become the load of one post?",
        steps,
        (
            loads.tributary_width_cut, {"left_span": one, "right_span": two}, on_line / p, width, "length",
            {key: area[key] for key in ("left_span", "right_span")},
        ),
        (loads.line_load, {"area_load": p, "tributary_width": on_line / p}, on_line, line, "line load", area),
        (
            formulas.simple_uniform_reaction, {"line_load": on_line, "span": S}, push, end, "force",
            {**area, "span": (S, "length")},
        ),
    )  # fmt: skip
