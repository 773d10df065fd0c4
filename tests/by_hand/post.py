"""Answers of notebook 06 by hand arithmetic, in inches, feet and pounds."""

from fractions import Fraction
from math import ceil, sqrt

from structlib.ground.units import ft, inch, lb, psf, psi

BY_HAND = {
    "taller_post": lambda n: Fraction(n["before"], n["after"]) ** 2,
    "weak_way": lambda n: n["height"] / inch / (2 if n["held"] else 1) / (n["plies"] * 1.5),
    "pad_side_asked": lambda n: sqrt(n["load"] / lb / (n["soil"] / psf)) * 12 * inch,
    "pad_presses": lambda n: (n["load"] / lb / (n["side"] / ft) ** 2 + 150 * n["thick"] / ft) * psf,
    "plies_on_a_plate": lambda n: ceil(n["load"] / lb / (1.5 * n["depth"] / inch * n["value"] / psi) - 1e-9),
    "two_on_a_beam": lambda n: (
        (n["loads"][0] * (n["span"] - n["first"]) + n["loads"][1] * (n["span"] - n["second"])) / n["span"]
    ),
}
