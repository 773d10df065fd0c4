"""Answers of notebook 12 by hand arithmetic in feet, pounds and inches."""

from fractions import Fraction

from structlib.ground.units import inch, lb, psi


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
    "push_on_a_notched_end": _push,
}
