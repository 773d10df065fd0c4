"""Shares of load on their way, and the elements that receive them and hand them on."""

from dataclasses import dataclass
from typing import Any

import numpy

from structlib.ground.loads import LOAD_TYPES, LoadsByType
from structlib.ground.showing import show

SAME = 1e-3  # mm; two places closer than this are one


@dataclass(frozen=True)
class Share:
    """A load on its way, by type: on a point [N], along a line [N/mm] or over a rectangle [MPa] of the plan [mm]."""

    source: str
    to: str
    amount: tuple[float, float, float, float]
    x: float
    y: float
    x_end: float
    y_end: float

    @property
    def loads(self):
        """The load by type, as dense as the share is: N, N/mm or MPa."""
        return LoadsByType(dict(zip(LOAD_TYPES, self.amount)))

    @property
    def extent(self):
        """What the amount is multiplied by for its sum: 1, mm or mm2."""
        return ((self.x_end - self.x) or 1.0) * ((self.y_end - self.y) or 1.0)

    @property
    def sum_and_moments(self):
        """By type: the sum [N] and its moments about both axes of the plan [N*mm]; an array of 3 by 4."""
        total = numpy.array(self.amount) * self.extent
        return numpy.array([total, total * (self.x + self.x_end) / 2, total * (self.y + self.y_end) / 2])


@dataclass(frozen=True)
class Element:
    """One part on the load's way: the part, what it receives, what begins in it, and what it hands on.

    ``spans`` are the places of its supports along its own axis [mm], span by span; empty where it does not span.
    ``pair`` is a `structlib.house.roofs.Pair` where it is a roof of rafters that lean on each other or on a ridge beam.
    """

    part: object
    kind: str
    received: tuple[Share, ...]
    own: tuple[Share, ...]
    gives: tuple[Share, ...]
    spans: tuple[tuple[float, ...], ...] = ()
    pair: Any = None

    @property
    def name(self):
        """The name of the part."""
        return self.part.name

    def total(self):
        """Return everything that it hands on, by type.

        Returns
        -------
        structlib.ground.loads.LoadsByType
            The sums [N].
        """
        total = [0.0] * len(LOAD_TYPES)
        for share in self.gives:
            extent = share.extent
            total = [one + amount * extent for one, amount in zip(total, share.amount)]
        return LoadsByType(dict(zip(LOAD_TYPES, total)))


def along(axis, share):
    """Tell where a share begins and ends along a wall or a beam.

    Parameters
    ----------
    axis : structlib.house.plan.Wall or structlib.house.plan.Beam
        On whose line it lies [-].
    share : Share
        The share [-].

    Returns
    -------
    tuple of (float, float)
        Start and end [mm].

    Examples
    --------
    >>> from structlib.house.file import demo_house
    >>> along(demo_house().part("main beam"), Share("a", "b", (1.0, 0.0, 0.0, 0.0), 0.0, 5.0, 0.0, 9.0))
    (5.0, 9.0)
    """
    return (share.y, share.y_end) if axis.runs == "along" else (share.x, share.x_end)


def on_axis(axis, source, to, amount, start, end):
    """Return a share on the line of a wall or a beam.

    Parameters
    ----------
    axis : structlib.house.plan.Wall or structlib.house.plan.Beam
        On whose line it lies [-].
    source, to : str
        What it comes from, and what it goes to [-].
    amount : iterable of float
        Dead, live, roof live and snow [N/mm, or N at a place].
    start, end : float
        Along the line; a place where both are the same [mm].

    Returns
    -------
    Share
        The share [-].

    Examples
    --------
    >>> from structlib.house.file import demo_house
    >>> on_axis(demo_house().part("main beam"), "a", "b", (1, 0, 0, 0), 5.0, 9.0).y_end
    9.0
    """
    if axis.runs == "along":
        return Share(source, to, tuple(map(float, amount)), axis.at, start, axis.at, end)
    return Share(source, to, tuple(map(float, amount)), start, axis.at, end, axis.at)


def in_line(one, other):
    """Tell whether two walls or beams lie on one line.

    Parameters
    ----------
    one, other : structlib.house.plan.Wall or structlib.house.plan.Beam
        The two [-].

    Returns
    -------
    bool
        True where they do [-].

    Examples
    --------
    >>> from structlib.house.file import demo_house
    >>> in_line(demo_house().part("middle wall"), demo_house().part("main beam"))
    True
    """
    return one.runs == other.runs and abs(one.at - other.at) < SAME


def text_of(length):
    """Write a place or a length as people write it, for a refusal.

    Parameters
    ----------
    length : float
        The length [mm].

    Returns
    -------
    str
        Its text [-].

    Examples
    --------
    >>> text_of(3048.0)
    '10 ft'
    """
    return show(length, "length")
