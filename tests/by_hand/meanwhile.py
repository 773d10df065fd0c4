"""Answers of notebook 14 by hand arithmetic in feet, pounds and inches."""

from fractions import Fraction

from structlib.ground.units import ft, inch, plf, psf


def _whole(n):
    """Span and distance in feet, load in pounds on each foot, as exact fractions."""
    return (
        Fraction(round(n["span"] / ft)),
        Fraction(round(n["offset"] / ft)),
        Fraction(round(n["load"] / psf)),
    )


def _temporary(n):
    span, offset, load = _whole(n)
    return load * span * (span / 2) / (span - offset)


def _tips(n):
    span, offset, load = _whole(n)
    return load * span * (span / 2 - offset) / offset


BY_HAND = {
    "temporary_wall": lambda n: _temporary(n) * plf,
    "what_stays_on_the_outside_wall": lambda n: (_whole(n)[2] * _whole(n)[0] - _temporary(n)) * plf,
    "load_that_tips": lambda n: _tips(n) * plf,
    "does_it_rise": lambda n: "rises" if round(n["tip"] / plf) > _tips(n) else "stays",
    "ends_let_go": lambda n: n["sag"] / inch * (1 / 48) / (5 / 384) * inch,
    "jack_share": lambda n: (n["lift"] / inch) / ((n["sag"] / inch) * (1 / 48) / (5 / 384)),
}
