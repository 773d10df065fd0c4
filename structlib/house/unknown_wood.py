"""What is not known gives a range, and one of the unknowns makes most of it.

An unknown has several values that it may have, or a least and a greatest one. The answer is worked out for
every combination of them, so both ends of the range are seen and none is guessed. Then each unknown is moved
alone, with the others in the middle: the widest swing is what to find out first.
"""

from dataclasses import dataclass
from itertools import product
from typing import Any

from structlib.ground.refusals import BadInput

_MOST_COMBINATIONS = 20_000
_JUST_PAST = 1e-6  # far enough past a jump to be on its other side, and too little to be seen


@dataclass(frozen=True)
class Unknown:
    """Something not known: its name, the values that it may have, and which of them is the middle.

    ``names`` are the words for the values, where they are not numbers.
    """

    name: str
    values: tuple
    middle: int = 0
    names: tuple = ()


@dataclass(frozen=True)
class End:
    """One end of a range: the answer, and the value of each unknown that gives it."""

    answer: float
    values: dict


@dataclass(frozen=True)
class Swing:
    """How far the answer moves when one unknown alone moves: least and greatest answer."""

    name: str
    least: float
    greatest: float

    @property
    def size(self):
        """Greatest less least [unit of the answer]."""
        return self.greatest - self.least


@dataclass(frozen=True)
class UnknownRange:
    """The answer's range over all unknowns, its middle, and the swing of each, widest first."""

    least: End
    greatest: End
    middle: float
    swings: tuple


def unknown_range(answer, unknowns):
    """Work out an answer for every combination of unknowns, and how much each of them matters.

    Parameters
    ----------
    answer : callable
        Takes each unknown by its name and gives one number [-].
    unknowns : sequence of Unknown
        What is not known, each with at least two values [-].

    Returns
    -------
    UnknownRange
        Both ends, the middle, and the swings [unit of the answer].

    Notes
    -----
    The ends are exact for the values given. Between a least and a greatest value they hold as long as the
    answer only rises or only falls with the unknown, as a share does with span and load. Where it jumps, as a
    share does with depth at each nominal size, both sides of each jump must be among the values: see
    `measured_unknowns`.

    Examples
    --------
    >>> found = unknown_range(lambda span, load: load * span**2 / 8,
    ...     [Unknown("span", (10.0, 12.0, 14.0), 1), Unknown("load", (2.0, 3.0))])
    >>> found.least.answer, found.greatest.answer, found.swings[0].name
    (25.0, 73.5, 'span')
    """
    unknowns = tuple(unknowns)
    _check(unknowns)
    names = [one.name for one in unknowns]
    least = greatest = None
    for values in product(*(one.values for one in unknowns)):
        given = dict(zip(names, values))
        found = answer(**given)
        if least is None or found < least.answer:
            least = End(found, given)
        if greatest is None or found > greatest.answer:
            greatest = End(found, given)
    middle = {one.name: one.values[one.middle] for one in unknowns}
    swings = [_swing(answer, one, middle) for one in unknowns]
    return UnknownRange(least, greatest, answer(**middle), tuple(sorted(swings, key=lambda one: -one.size)))


def _swing(answer, unknown, middle):
    found = [answer(**(middle | {unknown.name: value})) for value in unknown.values]
    return Swing(unknown.name, min(found), max(found))


def _check(unknowns: tuple[Any, ...]):
    if not unknowns or not all(isinstance(one, Unknown) for one in unknowns):
        raise BadInput("unknowns must be a list of Unknown, for example [Unknown('span', (3600.0, 3900.0))]")
    if len({one.name for one in unknowns}) != len(unknowns):
        raise BadInput("two unknowns have the same name; give each its own")
    combinations = 1
    for one in unknowns:
        if len(one.values) < 2:
            raise BadInput(f"{one.name} has {len(one.values)} value, so it is known; leave it out or give two")
        if not 0 <= one.middle < len(one.values):
            raise BadInput(
                f"the middle of {one.name} must be one of its {len(one.values)} values, got number {one.middle}"
            )
        combinations *= len(one.values)
    if combinations > _MOST_COMBINATIONS:
        raise BadInput(f"{combinations:,} combinations are too many; at most {_MOST_COMBINATIONS:,}: give fewer values")


def measured_unknowns(*, jumps=None, **ranges):
    """Make an unknown with a middle from a least and a greatest value of each measure.

    Parameters
    ----------
    jumps : dict
        By name, the values past which the answer jumps, such as the nominal sizes for a depth. Each that
        lies in the range is tried itself, and just past it [any].
    **ranges : tuple of (float, float)
        Least and greatest value by name [any].

    Returns
    -------
    tuple of Unknown
        Each with least, middle and greatest, and both sides of its jumps; rising [-].

    Examples
    --------
    >>> measured_unknowns(depth=(7.0, 8.0))[0].values
    (7.0, 7.5, 8.0)
    >>> stepped = measured_unknowns(jumps={"depth": (7.25, 9.25)}, depth=(7.0, 8.0))[0]
    >>> [round(value, 6) for value in stepped.values], stepped.middle
    ([7.0, 7.25, 7.250007, 7.5, 8.0], 3)
    """
    found, jumps = [], jumps or {}
    stray = [name for name in jumps if name not in ranges]
    if stray:
        raise BadInput(f"jumps are given for {stray[0]}, which has no range; give {stray[0]}=(least, greatest)")
    for name, ends in ranges.items():
        try:
            low, high = (float(end) for end in ends)
        except (TypeError, ValueError):
            raise BadInput(f"{name} must have a least and a greatest value, got {ends!r}") from None
        if not low < high:
            raise BadInput(f"{name} must run from least to greatest, got {low:g} to {high:g}")
        middle = (low + high) / 2
        values = {low, middle, high}
        for jump in jumps.get(name, ()):
            values |= {value for value in (jump, jump * (1 + _JUST_PAST)) if low <= value <= high}
        values = tuple(sorted(values))
        found.append(Unknown(name, values, values.index(middle)))
    return tuple(found)
