"""Answers of notebook 09 by hand, in feet, pounds and inches."""

from structlib.ground.units import ft, lb, psf


def _line(n):
    """Pounds on a foot of ridge: half of the width lands there."""
    return (n["load"] / psf) * (n["width"] / ft / 2)


BY_HAND = {
    "ridge_end_post": lambda n: _line(n) * (n["ends"] * n["span"] / ft / 2) * lb,
    "peak_without_tie": lambda n: (n["load"] / psf) * (n["spacing"] / ft) * (n["width"] / ft) ** 2 / 8 * lb * ft,
    "ridge_bends": lambda n: _line(n) * (n["span"] / ft) ** 2 / 8 * lb * ft,
    "snow_comes_up": lambda n: 0.7 * n["exposure"] * n["thermal"] * (n["ground"] / psf) * psf,
}
