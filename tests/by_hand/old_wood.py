"""Answers of notebook 12 by hand arithmetic in feet, pounds and inches."""

from fractions import Fraction

from structlib.ground.units import ft, inch, lb, plf, psi


def _left(n):
    depth, notch = (Fraction(round(n[name] / inch * 8), 8) for name in ("depth", "notch"))
    return (depth - notch) ** 2 / depth**2


def _push(n):
    depth, left = n["depth"] / inch, (n["depth"] - n["notch"]) / inch
    whole = n["value"] / psi * n["width"] / inch * left / 1.5
    return whole * (left * left) / (depth * depth) * lb


BY_HAND = {
    "strength_left_at_a_notch": _left,
    "deepest_notch": lambda n: n["depth"] / inch * (0.25 if n["at_end"] else 1 / 6) * inch,
    "sag_after_years": lambda n: n["lasting"] * (2 if n["wet"] else 1.5) + n["passing"],
    "slower_when_longer": lambda n: Fraction(n["short"] ** 2, n["long"] ** 2),
    "push_on_a_notched_end": _push,
    "beam_under_the_middle": lambda n: Fraction(5, 8) * round(n["span"] / ft) * round(n["load"] / plf) * lb,
}
