"""Answers of notebook 10 by plain arithmetic in pounds, feet and inches."""

from structlib.ground.units import ft, inch, lb, plf


def _hold_down(n):
    load, span, past, dead = n["load"] / lb, n["span"] / ft, n["overhang"] / ft, n["dead"] / plf
    return (load * past / span - 0.6 * dead * span / 2) * lb


BY_HAND = {
    "far_end_lifts": lambda n: n["load"] / lb * (n["overhang"] / ft) / (n["span"] / ft) * lb,
    "near_post": lambda n: n["load"] / lb * (1 + n["overhang"] / n["span"]) * lb,
    "hold_down_against_dead": _hold_down,
    "moment_past_the_post": lambda n: (
        (n["load"] / lb * n["overhang"] / ft + n["even"] / plf * (n["overhang"] / ft) ** 2 / 2) * lb * ft
    ),
    "post_taken_out_moment": lambda n: n["load"] / plf * (n["span"] / ft) ** 2 / 2 * lb * ft,
    "plies_that_run_through": lambda n: n["plies"] - n["at"],
    "zero_moment_place": lambda n: 0.75 * (n["span"] / ft) * ft,
    "taper_weak_spot": lambda n: n["span"] / ft * (n["shallow"] / inch) / (n["shallow"] / inch + n["deep"] / inch) * ft,
}
