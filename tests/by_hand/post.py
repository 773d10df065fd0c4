"""Answers of notebook 06 by hand arithmetic, in inches, feet and pounds."""

from fractions import Fraction
from math import ceil

from structlib.ground.units import inch, lb, psi

BY_HAND = {
    "taller_post": lambda n: Fraction(n["before"], n["after"]) ** 2,
    "weak_way": lambda n: n["height"] / inch / (2 if n["held"] else 1) / (n["plies"] * 1.5),
    "plies_on_a_plate": lambda n: ceil(n["load"] / lb / (1.5 * n["depth"] / inch * n["value"] / psi) - 1e-9),
    "two_on_a_beam": lambda n: (
        (n["loads"][0] * (n["span"] - n["first"]) + n["loads"][1] * (n["span"] - n["second"])) / n["span"]
    ),
}
