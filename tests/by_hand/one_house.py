"""Answers of the problem from plan to pad in notebook 07, by hand arithmetic in feet and pounds."""

from math import sqrt

from structlib.ground.units import ft, inch, lb, plf, psf


def line(n):
    """Line load on the beam [lb/ft]."""
    return (n["upper"] + n["lower"]) / psf * (n["left"] + n["right"]) / 2 / ft + n["wall"] / plf


def push(n):
    """What each post gets [lb]."""
    return (line(n) + n["beam"] / plf) * n["span"] / ft / 2


BY_HAND = {
    "house_width": lambda n: (n["left"] + n["right"]) / 2,
    "house_line": lambda n: line(n) * plf,
    "house_push": lambda n: push(n) * lb,
    "house_pad": lambda n: sqrt(push(n) / (n["soil"] / psf)) * 12 * inch,
}
