"""One rafter of a pair under any loads: bending, shear and sag square to it, the push along it; and how the pair moves.

A pair with one tie, or on a ridge beam, is statically determinate: moment, shear and push need no stiffness. A rafter
is a simple beam on its slope from eave to ridge, bent by the parts of its loads and of its tie's pull that lie square
to it. Places are plan distances from the eave; below 0 they lie on the overhang. Compression is positive here.
"""

import math
from dataclasses import dataclass
from functools import cached_property, lru_cache
from typing import Any

import numpy

from structlib.mechanics.beam_extremes import find_extremes
from structlib.mechanics.beams import Beam, LineLoad, PointLoad, Support, solve
from structlib.mechanics.frames import below_ridge, positive

_SAME = 1e-6  # mm; a load shorter than this stands at one place
_DIGITS, _PLACES = 12, 9  # loads and places in proportion are told apart to so many digits
_RUN = 1000.0  # mm; the run of a rafter that stands for all of its slope


@dataclass(frozen=True)
class Rafter:
    """A rafter from its eave up to the ridge, solved.

    ``run`` on plan and ``rise`` [mm], ``unit`` its solution for a run of 1000 mm and ``scale`` times less; ``loads`` are (start, end, amount) on plan [mm, N/mm, or N at one place]; ``lift``
    is what the wall gives [N], ``pull`` that of the tie at the share ``height`` of the rise [N].
    """

    run: float
    rise: float
    loads: tuple
    lift: float
    pull: float
    height: float
    scale: float
    unit: Any

    @cached_property
    def length(self):
        """Length along the slope from eave to ridge [mm]."""
        return math.hypot(self.run, self.rise)

    @property
    def greatest_moment(self):
        """Size of the greatest moment, and its place as a share of the run [N*mm, -]."""
        return self._greatest("moment", 2)

    @property
    def greatest_shear(self):
        """Size of the greatest force square to it, and its place as a share of the run [N, -]."""
        return self._greatest("shear", 1)

    @property
    def greatest_sag(self):
        """Size of the greatest sag between eave and ridge times its bending stiffness, and its place [N*mm3, -]."""
        return self._greatest("deflection", 4)

    @property
    def on_ridge(self):
        """Upright force with which it leans on what stands at the ridge, or on the other rafter [N]."""
        return sum(_carried(load, self.run) for load in self.loads) - self.lift

    def _greatest(self, what, power):
        value, place = self.unit.greatest(what)
        return value * self.scale * (self.run / _RUN) ** power, place

    @property
    def greatest_push(self):
        """Greatest compression along it, at the eave or just above the tie [N]."""
        return max(self.push_at(0.0), self.push_at(self.height))

    def push_at(self, share):
        """Return the compression along it just above a place.

        Parameters
        ----------
        share : float
            Share of the run from the eave [-].

        Returns
        -------
        float
            Compression [N].
        """
        place = share * self.run
        carried = sum(_carried(load, place) for load in self.loads)
        tied = self.pull if share >= self.height else 0.0
        return ((self.lift - carried) * self.rise + tied * self.run) / self.length

    def moment_at(self, share):
        """Return the moment at one or many places.

        Parameters
        ----------
        share : float or tuple of float
            Share of the run from the eave [-].

        Returns
        -------
        float or numpy.ndarray
            Moment, sagging positive [N*mm].
        """
        return self.unit.at("moment", share) * self.scale * (self.run / _RUN) ** 2

    def sag_at(self, share):
        """Return the sag square to the line from eave to ridge, times the bending stiffness.

        Parameters
        ----------
        share : float or tuple of float
            Share of the run from the eave [-].

        Returns
        -------
        float or numpy.ndarray
            Sag times EI, downward positive [N*mm3].
        """
        return self.unit.at("deflection", share) * self.scale * (self.run / _RUN) ** 4

    def shortening_to(self, share):
        """Return by how much the piece from the eave up to a place becomes shorter, times the axial stiffness.

        Parameters
        ----------
        share : float or numpy.ndarray
            Share of the run from the eave [-].

        Returns
        -------
        float or numpy.ndarray
            Shortening times EA [N*mm].
        """
        place = share * self.run
        greater = numpy.maximum if isinstance(share, numpy.ndarray) else max
        carried = sum(_carried_over(load, place, greater) for load in self.loads)
        tied = self.pull * self.run * greater(0.0, share - self.height)
        return ((self.lift * place - carried) * self.rise + tied * self.run) / self.run


def _carried(load, place):
    start, end, amount = load
    if end - start <= _SAME:
        return amount if start <= place else 0.0
    return amount * (min(max(place, start), end) - start)


def _carried_over(load, place, greater):
    """What `_carried` adds up to over the plan from the eave to a place."""
    start, end, amount = load
    beyond = lambda x, edge: greater(x - edge, 0.0)  # noqa: E731
    if end - start <= _SAME:
        return amount * (beyond(place, start) - max(-start, 0.0))
    return (
        amount / 2 * (beyond(place, start) ** 2 - beyond(place, end) ** 2 - max(-start, 0.0) ** 2 + max(-end, 0.0) ** 2)
    )


class _Unit:
    """A rafter with a run of `_RUN` and a bending stiffness of 1, solved as a beam from the end of its overhang to the ridge.

    Rafters of one slope whose loads are in proportion share it, so it keeps what it was asked.
    """

    def __init__(self, slope, loads, pull, height):
        slant = math.hypot(1.0, slope)
        self.length, self.tail = _RUN * slant, max(0.0, -min([start for start, _, _ in loads], default=0.0)) * slant
        square, end_of_all = [], self.tail + self.length
        for start, end, amount in loads:
            a, b = self.tail + start * slant, self.tail + end * slant
            if end - start <= _SAME:
                square.append(PointLoad(min(a, end_of_all), amount / slant))
            else:
                square.append(LineLoad(a, min(b, end_of_all), amount / slant**2))
        if pull:
            square.append(PointLoad(self.tail + height * self.length, pull * slope / slant))
        supports = [Support(self.tail), Support(end_of_all)]
        self.solution = solve(Beam(end_of_all, 1.0, supports, square))
        self._values = {}

    def greatest(self, what):
        """Size and share of the run of the greatest moment or shear, or of the sag between eave and ridge."""
        if what not in self._values:
            pieces = self.solution.pieces
            if what == "deflection":
                pieces = [one for one in pieces if one.start >= self.tail - _SAME]
            found = getattr(find_extremes(pieces), what)
            self._values[what] = abs(found.value), max(0.0, (found.position - self.tail) / self.length)
        return self._values[what]

    def at(self, what, share):
        """Moment or sag at shares of the run: one, or a tuple of them as an array."""
        if (what, share) not in self._values:
            places = self.tail + numpy.asarray(share) * self.length
            self._values[what, share] = getattr(self.solution, what)(places if places.ndim else float(places))
        return self._values[what, share]


_unit = lru_cache(maxsize=256)(_Unit)


def solve_rafter(*, run, rise, loads, lift, pull=0.0, height_fraction=0.0):
    """Solve one rafter of a pair.

    Parameters
    ----------
    run : float
        Plan distance from eave to ridge [mm].
    rise : float
        Height of the ridge above the eave [mm].
    loads : tuple of tuple of float
        Start, end and amount on plan; below 0 on the overhang; a force where start and end are one [mm, N/mm or N].
    lift : float
        What the wall gives upward [N].
    pull : float
        Pull of its tie; 0 on a ridge beam [N].
    height_fraction : float
        Height of the tie as a share of the rise [-].

    Returns
    -------
    Rafter
        The rafter, solved [-].

    Examples
    --------
    >>> found = solve_rafter(run=12.0, rise=6.0, loads=((0.0, 12.0, 60.0),), lift=720.0, pull=720.0)
    >>> [round(number, 6) for number in found.greatest_moment]  # w (L/2)^2 / 8 in the middle
    [1080.0, 0.5]
    >>> round(found.greatest_push, 3)
    965.981
    """
    positive("run", run, "for example 12*ft")
    positive("rise", rise, "for example 6*ft")
    below_ridge(height_fraction)
    shrunk = _RUN / run
    # a force stands for as much as a load along the run that is shrunk with it
    even = [amount * (shrunk if end - start <= _SAME else 1.0) for start, end, amount in loads]
    scale = max(map(abs, even), default=0.0) or 1.0
    shape = tuple(
        (round(start * shrunk, _PLACES), round(end * shrunk, _PLACES), round(amount / scale, _DIGITS))
        for (start, end, _), amount in zip(loads, even)
    )
    bends = round(pull * shrunk / scale, _DIGITS) if height_fraction else 0.0
    unit = _unit(round(rise / run, _DIGITS), shape, bends, height_fraction)
    return Rafter(run, rise, tuple(loads), lift, pull, height_fraction, scale, unit)


@dataclass(frozen=True)
class PairMoves:
    """How a pair moves: both eaves to the right, and its ridge to the right and up [mm]; and what bends and shortens it."""

    left: float
    right: float
    ridge: tuple[float, float]
    rafters: tuple[Rafter, Rafter]
    axial_stiffness: float
    bending_stiffness: float

    @property
    def spread(self):
        """By how much the eaves part [mm]."""
        return self.right - self.left

    def points(self, side, shares):
        """Return how the points of one rafter move from where they stood halfway between the eaves, as if it were the left one.

        Parameters
        ----------
        side : int
            0 for the left rafter, 1 for the right one, seen in a mirror [-].
        shares : iterable of float
            Shares of its run from the eave [-].

        Returns
        -------
        list of tuple of float
            Plan distance from the eave, height, move right, move up [mm].
        """
        one, sign, middle = self.rafters[side], (1.0, -1.0)[side], (self.left + self.right) / 2
        eave, across, up = (
            sign * ((self.left, self.right)[side] - middle),
            sign * (self.ridge[0] - middle),
            self.ridge[1],
        )
        cosine, sine = one.run / one.length, one.rise / one.length
        sag, shares = one.sag_at(tuple(shares)) / self.bending_stiffness, numpy.asarray(shares)
        along = (shares * one.shortening_to(1.0) - one.shortening_to(shares)) / self.axial_stiffness
        move = (1 - shares) * eave + shares * across + sag * sine + along * cosine
        rows = (shares * one.run, shares * one.rise, move, shares * up - sag * cosine + along * sine)
        return list(zip(*(row.tolist() for row in rows)))


def pair_moves(left, right, *, axial_stiffness, bending_stiffness, tie_axial_stiffness=None, ridge_drop=0.0):
    """Return how a tied pair moves, or one on a ridge beam; its left wall keeps its place where a tie holds it.

    Parameters
    ----------
    left, right : Rafter
        Both rafters [-].
    axial_stiffness : float
        E A of a rafter [N].
    bending_stiffness : float
        E I of a rafter [N*mm2].
    tie_axial_stiffness : float or None
        E A of the tie; None where a ridge beam holds the pair [N].
    ridge_drop : float
        How far that ridge beam sags [mm].

    Returns
    -------
    PairMoves
        The moves [mm].

    Examples
    --------
    >>> half = dict(run=3600.0, rise=1800.0, loads=((0.0, 3600.0, 1.0),), lift=3600.0, pull=3600.0)
    >>> one = solve_rafter(**half)
    >>> moved = pair_moves(one, one, axial_stiffness=6e7, bending_stiffness=4e11, tie_axial_stiffness=3e7)
    >>> round(moved.spread, 6)  # 3600 N over 7200 mm
    0.864
    """
    both = (left, right)
    cosines, sines = [one.run / one.length for one in both], [one.rise / one.length for one in both]
    short = [one.shortening_to(1.0) / axial_stiffness for one in both]
    if tie_axial_stiffness is None:
        ends = [(lost - ridge_drop * sine) / cosine for lost, sine, cosine in zip(short, sines, cosines)]
        return PairMoves(ends[0], -ends[1], (0.0, -ridge_drop), both, axial_stiffness, bending_stiffness)
    height = left.height
    opens = left.pull * (left.run + right.run) * (1 - height) / tie_axial_stiffness
    for one, cosine, sine, lost in zip(both, cosines, sines, short):
        along = height * lost - one.shortening_to(height) / axial_stiffness
        opens += one.sag_at(height) / bending_stiffness * sine + along * cosine
    spread = float(opens / (1 - height))
    # the ridge stands where both shortened rafters meet
    far = -spread * cosines[1] - short[1]
    turn = cosines[0] * sines[1] + cosines[1] * sines[0]
    across = (-short[0] * sines[1] - far * sines[0]) / turn
    up = (cosines[0] * far - cosines[1] * short[0]) / turn
    return PairMoves(0.0, spread, (across, up), both, axial_stiffness, bending_stiffness)
