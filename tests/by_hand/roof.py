"""Answers of notebook 08 by hand, in feet, pounds and inches."""

from structlib.ground.units import ft, lb, plf, psf


def _push(n):
    """Pounds on a foot of wall: the turning of one rafter about the ridge, over the rise."""
    half, load = n["width"] / ft / 2, n["load"] / psf
    lift = load * half
    return (lift * half - load * half * half / 2) / (half * n["rise"] / 12)


def _which(n):
    part = n["inches"] / n["rise"] / 12
    return "rafter tie" if part <= 1 / 3 else "collar tie" if part >= 2 / 3 else "between"


BY_HAND = {
    "eave_push": lambda n: _push(n) * plf,
    "raised_tie_pull": lambda n: _push(n) * (n["spacing"] / ft) * n["part"] / (n["part"] - 1) * lb,
    "steeper_push": lambda n: n["before"] / n["after"],
    "name_of_the_tie": _which,
}
