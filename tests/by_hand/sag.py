"""Answers of notebook 13 by hand arithmetic in feet, pounds and inches."""

from fractions import Fraction

from structlib.ground.units import ft, lb, plf

BY_HAND = {
    "sag_after_years": lambda n: n["lasting"] * (2 if n["wet"] else 1.5) + n["passing"],
    "slower_when_longer": lambda n: Fraction(n["short"] ** 2, n["long"] ** 2),
    "beam_under_the_middle": lambda n: Fraction(5, 8) * round(n["span"] / ft) * round(n["load"] / plf) * lb,
}
