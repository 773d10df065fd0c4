"""Sentences and sizes that all questions share."""

import math
from dataclasses import dataclass
from functools import cache

from structlib.ground.lumber import nominal_size
from structlib.ground.reading import read
from structlib.ground.refusals import check_choice
from structlib.ground.sections import Section
from structlib.ground.showing import show
from structlib.ground.sizes import stock_sizes
from structlib.ground.units import inch

SEAT_STEPS = (inch / 8, inch / 4, inch / 2, 1.5 * inch)
"""Seats are cut to eighths, quarters or halves of an inch, or counted in studs of 1 1/2 in."""

STOCK = ("2x4", "2x6", "2x8", "2x10", "2x12")
"""Dimension lumber that every yard carries, shallowest first."""


@dataclass(frozen=True)
class Board:
    """A dry board of dimension lumber, standing on edge.

    ``width``, ``depth`` [mm].
    """

    name: str
    width: float
    depth: float

    def plies(self, count=1):
        """Stand like boards side by side."""
        return Section(ply_width=self.width, depth=self.depth, plies=count)

    def as_named(self, count=1):
        """Take the size that the name seems to promise, as beginners do."""
        width, depth = (inches * inch for inches in nominal_size(self.name))
        return Section(ply_width=width, depth=depth, plies=count)


def board(name):
    """Find the dressed size of a board that a yard keeps.

    Examples
    --------
    >>> round(board("2x10").depth / inch, 2)
    9.25
    """
    sizes = {size.nominal: size for size in stock_sizes("dimension", 2)}
    size = sizes[check_choice("size", name, sizes)]
    return Board(name, size.width, size.depth)


def say(value, dimension):
    """Write a value of a question with its unit.

    Examples
    --------
    >>> say(234.95, "section length"), say(2.5, "ratio"), say(3, "count"), say(2.0625 * 25.4, "small length")
    ('9 1/4 in', '2.50 times', '3', '2.0625 in')
    """
    if dimension == "word":
        return value
    if dimension == "count":
        return f"{value:,}"
    if dimension in ("length", "section length"):
        return show(value, dimension, "us")
    return _shown(value, dimension)[0]


def _shown(value, dimension, more=0):
    """Write a decimal value, with more decimals than usual if asked; and give what the text says."""
    if dimension == "number":
        scale, unit, usual = 1.0, "", 3
    elif dimension == "share":
        scale, unit, usual = 0.01, "%", 1
    elif dimension == "ratio":
        # a part of something is said in per cent, a multiple in times
        times = abs(value) >= 1
        usual = 2 if times else -math.floor(math.log10(abs(value) or 1))
        scale, unit = (1.0, "times") if times else (0.01, "%")
    else:
        # a sag or a seat is asked to three figures, so it is shown with them
        told = show(value, dimension, "us", precision=3 if dimension == "small length" else None)
        number, _, unit = told.partition(" ")
        scale, usual = _unit(unit, dimension), len(number.partition(".")[2])
    number, decimals = value / scale, usual + more
    if abs(abs(number) * 10**decimals % 1 - 0.5) < 1e-6:  # halfway: no one can round it the other way
        decimals += 1
    text = f"{number:,.{decimals}f}"
    while text[-1] == "0" and len(text.partition(".")[2]) > (0 if unit == "%" else usual):
        text = text[:-1]
    text = text.rstrip(".")
    return f"{text} {unit}".strip(), float(text.replace(",", "")) * scale


@cache
def _unit(text, dimension):
    return read(f"1 {text}", dimension)


def carried(parts, then, dimension):
    """Write values between two steps with as few decimals as let the next step come out as printed.

    Examples
    --------
    >>> carried([(2 / 3, "number"), (1 / 3, "number")], lambda one, two: 100 * one + two, "number")
    ['0.66667', '0.33333']
    """
    wanted = say(then(*(value for value, _ in parts)), dimension)
    for more in range(9):
        texts, values = zip(*(_shown(*part, more) for part in parts), strict=True)
        if say(then(*values), dimension) == wanted:
            break
    return list(texts)


def say_length(value):
    """Write a span, a height or a distance of a question with its unit.

    ``value`` [mm].

    Examples
    --------
    >>> say_length(3048.0)
    '10 ft'
    """
    return say(value, "length")


def say_size(value):
    """Write a size of a section of a question with its unit.

    ``value`` [mm].

    Examples
    --------
    >>> say_size(234.95)
    '9 1/4 in'
    """
    return say(value, "section length")


def say_line_load(value):
    """Write a load by length of a question with its unit.

    ``value`` [N/mm].

    Examples
    --------
    >>> say_line_load(5.8375)
    '400 plf'
    """
    return say(value, "line load")


_COUNTS = {
    "value": "Three figures are enough: within 2 % counts",
    "at least": "It is a least value, so round up: three figures; up to 2 % more counts",
    "at most": "It is a greatest value, so round down: three figures; up to 2 % less counts",
}


def any_unit(unit, side="value", stock=()):
    """Say how to answer with a unit."""
    more = ", and so does the next stock size." if stock else "."
    return f"Give it in {unit} or in another unit, and write the unit. {_COUNTS[side]}{more}"


def times():
    """Say how to answer with a ratio."""
    return "Give a plain number such as 1.50, or per cent such as 150 %, to three figures: within 2 % counts."


def whole(things):
    """Say how to answer with a count."""
    return f"Give a whole number of {things}, without a unit. It must be exact."


def one_word(choices):
    """Say how to answer with a word."""
    return f"Answer with one of these, without unit or rounding: {', '.join(choices[:-1])} or {choices[-1]}."
