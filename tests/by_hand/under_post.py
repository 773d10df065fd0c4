"""Answers of notebook 07 by hand arithmetic, in inches, feet and pounds."""

from math import sqrt

from structlib.ground.units import ft, inch, lb, psf

BY_HAND = {
    "pad_side_asked": lambda n: sqrt(n["load"] / lb / (n["soil"] / psf)) * 12 * inch,
    "pad_presses": lambda n: (n["load"] / lb / (n["side"] / ft) ** 2 + 150 * n["thick"] / ft) * psf,
}
