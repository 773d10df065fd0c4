"""What a solved beam answers: reactions, and shear, moment, slope and deflection anywhere along it.

Between two neighbouring places where something changes (a support, a load, a step in stiffness)
the beam is one piece, and all four quantities are polynomials that are known exactly.
"""

from bisect import bisect_left, bisect_right
from dataclasses import dataclass
from functools import cached_property
from math import sqrt
from operator import itemgetter
from typing import NamedTuple

import numpy as np

from structlib.ground.refusals import BadInput, check_choice, check_number
from structlib.mechanics.beam_model import SAME_SPOT, Beam, length_text


class Reaction(NamedTuple):
    """What one support gives to the beam.

    Parameters
    ----------
    position : float
        Where the support stands, from the left end of the beam [mm].
    force : float
        Push of the support, upward positive [N].
    moment : float
        Couple from a fixed support, which steps the moment diagram up by its amount [N*mm].
    lifted : bool
        True where the beam has risen off a support that cannot pull [-].

    Examples
    --------
    >>> Reaction(0.0, 5000.0, 0.0, False).force
    5000.0
    """

    position: float
    force: float
    moment: float
    lifted: bool


class Extreme(NamedTuple):
    """A greatest or least value and where it stands.

    Parameters
    ----------
    value : float
        The value [unit of the quantity].
    position : float
        Distance from the left end of the beam [mm].

    Examples
    --------
    >>> Extreme(9.0, 3.0).position
    3.0
    """

    value: float
    position: float


def most(*extremes):
    """The extreme that is greatest in size, whatever its sign; the first of equals.

    Parameters
    ----------
    *extremes : Extreme
        The extremes to compare, of one quantity [-].

    Returns
    -------
    Extreme
        The one farthest from zero [-].

    Raises
    ------
    BadInput
        When there is nothing to compare, or something that is not an extreme.

    Examples
    --------
    >>> most(Extreme(9.0, 3.0), Extreme(-16.0, 8.0)).value
    -16.0
    """
    if not extremes or not all(isinstance(extreme, Extreme) for extreme in extremes):
        raise BadInput("most() compares records of type Extreme, for example most(e.least_slope)")
    return max(extremes, key=lambda extreme: abs(extreme.value))


class Extremes(NamedTuple):
    """Greatest and least of each quantity along a beam.

    Parameters
    ----------
    greatest_shear : Extreme
        Greatest shear, at a jump counted on both sides [N].
    least_shear : Extreme
        Least (most negative) shear, at a jump counted on both sides [N].
    greatest_moment : Extreme
        Greatest moment, the most sagging [N*mm].
    least_moment : Extreme
        Least moment, the most hogging [N*mm].
    greatest_slope : Extreme
        Greatest slope, the steepest going down to the right [-].
    least_slope : Extreme
        Least slope, the steepest going up to the right [-].
    greatest_deflection : Extreme
        Greatest deflection, the lowest place [mm].
    least_deflection : Extreme
        Least deflection, the highest place [mm].

    Examples
    --------
    >>> nothing = Extreme(0.0, 0.0)
    >>> Extremes(nothing, Extreme(-5.0, 8.0), *6 * [nothing]).shear
    Extreme(value=-5.0, position=8.0)
    """

    greatest_shear: Extreme
    least_shear: Extreme
    greatest_moment: Extreme
    least_moment: Extreme
    greatest_slope: Extreme
    least_slope: Extreme
    greatest_deflection: Extreme
    least_deflection: Extreme

    @property
    def shear(self):
        """The shear greatest in size [N]."""
        return most(self.greatest_shear, self.least_shear)

    @property
    def moment(self):
        """The moment greatest in size [N*mm]."""
        return most(self.greatest_moment, self.least_moment)

    @property
    def slope(self):
        """The slope greatest in size [-]."""
        return most(self.greatest_slope, self.least_slope)

    @property
    def deflection(self):
        """The deflection greatest in size [mm]."""
        return most(self.greatest_deflection, self.least_deflection)


class Points(NamedTuple):
    """A beam's diagrams as rows of numbers for drawing; a jump gives two points at one position.

    Parameters
    ----------
    x : numpy.ndarray
        Positions from the left end of the beam [mm].
    shear : numpy.ndarray
        Shear at each position [N].
    moment : numpy.ndarray
        Moment at each position [N*mm].
    slope : numpy.ndarray
        Slope at each position [-].
    deflection : numpy.ndarray
        Deflection at each position [mm].
    """

    x: np.ndarray
    shear: np.ndarray
    moment: np.ndarray
    slope: np.ndarray
    deflection: np.ndarray


class Piece(NamedTuple):
    """A stretch of beam between two changes, and what is known at its two ends.

    Parameters
    ----------
    start : float
        Left end, from the left end of the beam [mm].
    end : float
        Right end, from the left end of the beam [mm].
    bending_stiffness : float
        EI of the piece [N*mm^2].
    load : float
        Load per length at the left end [N/mm].
    load_rate : float
        How much the load per length grows with each mm to the right [N/mm^2].
    shear : float
        Shear just inside the left end [N].
    moment : float
        Moment just inside the left end [N*mm].
    slope : float
        Slope just inside the left end [-].
    deflection : float
        Deflection at the left end [mm].
    end_shear : float
        Shear just inside the right end [N].
    end_moment : float
        Moment just inside the right end [N*mm].
    end_slope : float
        Slope just inside the right end [-].
    end_deflection : float
        Deflection at the right end [mm].
    """

    start: float
    end: float
    bending_stiffness: float
    load: float
    load_rate: float
    shear: float
    moment: float
    slope: float
    deflection: float
    end_shear: float
    end_moment: float
    end_slope: float
    end_deflection: float


# The four polynomials of a piece; t runs from its left end. Floats and arrays pass through.
# V' = -w, M' = V, EI * slope' = -M, deflection' = slope.


def _shear(piece, t):
    return piece.shear - t * (piece.load + t * piece.load_rate / 2)


def _moment(piece, t):
    return piece.moment + t * (piece.shear - t * (piece.load / 2 + t * piece.load_rate / 6))


def _slope(piece, t):
    inner = piece.shear / 2 - t * (piece.load / 6 + t * piece.load_rate / 24)
    return piece.slope - t * (piece.moment + t * inner) / piece.bending_stiffness


def _deflection(piece, t):
    inner = piece.shear / 6 - t * (piece.load / 24 + t * piece.load_rate / 120)
    return piece.deflection + t * (piece.slope - t * (piece.moment / 2 + t * inner) / piece.bending_stiffness)


@dataclass(frozen=True)
class Solution:
    """A solved beam. At a jump the value just right of it is given, unless ``side='left'`` is asked.

    Parameters
    ----------
    beam : Beam
        The beam that was solved [-].
    reactions : tuple of Reaction
        What each support gives, in the order in which the beam lists them [-].
    pieces : tuple of Piece
        The stretches from left to right, each with its exact polynomials [-].

    Examples
    --------
    >>> from structlib.mechanics.beams import Beam, LineLoad, Support, solve
    >>> supports = [Support(0.0), Support(4000.0)]
    >>> solution = solve(Beam(4000.0, 2e12, supports, [LineLoad(0.0, 4000.0, 5.0)]))
    >>> solution.moment(2000.0)
    10000000.0
    """

    beam: Beam
    reactions: tuple
    pieces: tuple

    def shear(self, x, side="right"):
        """Shear at one or many positions.

        Parameters
        ----------
        x : float or numpy.ndarray
            Distance from the left end of the beam [mm].
        side : str
            'right' or 'left': which side of a jump [-].

        Returns
        -------
        float or numpy.ndarray
            Shear, positive when the left part is pushed up [N].

        Raises
        ------
        BadInput
            When a position is not a number or lies off the beam.
        """
        return self._value(x, side, _shear, "end_shear")

    def moment(self, x, side="right"):
        """Moment at one or many positions.

        Parameters
        ----------
        x : float or numpy.ndarray
            Distance from the left end of the beam [mm].
        side : str
            'right' or 'left': which side of a jump [-].

        Returns
        -------
        float or numpy.ndarray
            Moment, sagging positive [N*mm].

        Raises
        ------
        BadInput
            When a position is not a number or lies off the beam.
        """
        return self._value(x, side, _moment, "end_moment")

    def slope(self, x, side="right"):
        """Slope at one or many positions.

        Parameters
        ----------
        x : float or numpy.ndarray
            Distance from the left end of the beam [mm].
        side : str
            'right' or 'left': which side of a hinge [-].

        Returns
        -------
        float or numpy.ndarray
            Slope, positive where the beam goes down to the right [-].

        Raises
        ------
        BadInput
            When a position is not a number or lies off the beam.
        """
        return self._value(x, side, _slope, "end_slope")

    def deflection(self, x, side="right"):
        """Deflection at one or many positions.

        Parameters
        ----------
        x : float or numpy.ndarray
            Distance from the left end of the beam [mm].
        side : str
            'right' or 'left'; deflection never jumps, so both agree [-].

        Returns
        -------
        float or numpy.ndarray
            Deflection, downward positive [mm].

        Raises
        ------
        BadInput
            When a position is not a number or lies off the beam.
        """
        return self._value(x, side, _deflection, "end_deflection")

    def points(self, count=200):
        """Rows of numbers for drawing, with every jump and every extreme among them.

        Parameters
        ----------
        count : int
            About how many points, 2 to 100,000 [-].

        Returns
        -------
        Points
            Positions and the four quantities [-].

        Raises
        ------
        BadInput
            When the count is not a number within its limits.

        Examples
        --------
        >>> from structlib.mechanics.beams import Beam, PointLoad, Support, solve
        >>> beam = Beam(4000.0, 2e12, [Support(0.0), Support(4000.0)], [PointLoad(1000.0, 800.0)])
        >>> solve(beam).points(5).shear.tolist()[:3]
        [600.0, 600.0, -200.0]
        """
        check_number("number of points", count, low=2, high=100_000, hint="for example 200")
        peaks = [extreme.position for extreme in self.extremes]
        rows = []
        for piece in self.pieces:
            share = count * (piece.end - piece.start) / self.beam.length
            x = np.linspace(piece.start, piece.end, max(2, round(share) + 1))
            inside = [peak for peak in peaks if piece.start < peak < piece.end]
            if inside:
                x = np.union1d(x, inside)
            t = x - piece.start
            row = np.array([x, _shear(piece, t), _moment(piece, t), _slope(piece, t), _deflection(piece, t)])
            row[1:, -1] = piece[-4:]
            rows.append(row)
        return Points(*np.concatenate(rows, axis=1))

    @cached_property
    def extremes(self):
        """Greatest and least shear, moment, slope and deflection, found when first asked for."""
        return _find_extremes(self.pieces)

    @cached_property
    def _starts(self):
        return [piece.start for piece in self.pieces]

    @cached_property
    def _table(self):
        return np.array(self.pieces).T

    def _value(self, x, side, polynomial, end_field):
        if side != "right" and side != "left":
            check_choice("side", side, ("left", "right"))
        length = self.beam.length
        if not (type(x) is float and 0.0 <= x <= length):
            hint = "positions run in mm from the left end of the beam"
            check_number("x", x, low=-SAME_SPOT, high=length + SAME_SPOT, shown=length_text, hint=hint)
            if not isinstance(x, (int, float)):
                x = np.clip(np.asarray(x, dtype=float), 0.0, length)
                return self._values(x, side, polynomial, end_field)
            x = min(max(float(x), 0.0), length)
        find = bisect_right if side == "right" else bisect_left
        piece = self.pieces[max(find(self._starts, x) - 1, 0)]
        if x == piece.end:  # what is known there exactly, not what the polynomial rounds to
            return getattr(piece, end_field)
        return polynomial(piece, x - piece.start)

    def _values(self, x, side, polynomial, end_field):
        """The same for an array: one piece record whose fields are arrays."""
        index = np.maximum(np.searchsorted(self._starts, x, side=side) - 1, 0)
        piece = Piece(*self._table[:, index])
        return np.where(x == piece.end, getattr(piece, end_field), polynomial(piece, x - piece.start))


def _find_extremes(pieces):
    """Every place where a quantity can be greatest: ends of pieces, and zeros of its derivative."""
    shears, moments, slopes, deflections = [], [], [], []
    for piece in pieces:
        start, end, _, _, _, v0, m0, s0, y0, v1, m1, s1, y1 = piece
        turns = _shear_turns(piece, shears, moments)
        flats = _moment_turns(piece, turns, slopes)
        _slope_turns(piece, flats, deflections)
        shears += (v0, start), (v1, end)
        moments += (m0, start), (m1, end)
        slopes += (s0, start), (s1, end)
        deflections += (y0, start), (y1, end)
    found = []
    for candidates in (shears, moments, slopes, deflections):
        found.append(Extreme._make(max(candidates, key=_VALUE)))
        found.append(Extreme._make(min(candidates, key=_VALUE)))
    return Extremes._make(found)


_VALUE = itemgetter(0)


def _shear_turns(piece, shears, moments):
    """Note the shear where the load is zero and the moment where the shear is; return (t, moment) there."""
    start, end, _, load, rate, shear, moment, *_ = piece
    h = end - start
    if not rate:
        zeros = (shear / load,) if load else ()
    else:
        t = -load / rate
        if 0 < t < h:
            shears.append((shear + load * t / 2, start + t))
        # shear - load t - rate t^2 / 2 = 0, in the form that loses no digits
        inside = load * load + 2 * rate * shear
        if inside < 0:
            return ()
        q = load + sqrt(inside) if load >= 0 else load - sqrt(inside)
        zeros = sorted((-q / rate, 2 * shear / q)) if q else ()
    turns = []
    for t in zeros:
        if 0 < t < h:
            value = moment + t * (shear - t * (load / 2 + t * rate / 6))
            moments.append((value, start + t))
            turns.append((t, value))
    return turns


def _moment_turns(piece, turns, slopes):
    """Note the slope where the moment is zero; return those places as (t, slope)."""
    start, end, ei, load, rate, shear, moment, slope, _, _, end_moment, _, _ = piece
    flats = []
    a, at_a = 0.0, moment
    for b, at_b in (*turns, (end - start, end_moment)):
        if at_a * at_b < 0:  # between two zeros of the shear the moment only rises or only falls
            t = _zero_between(a, b, at_a, at_b, (moment, shear, -load / 2, -rate / 6, 0.0))
            value = slope - t * (moment + t * (shear / 2 - t * (load / 6 + t * rate / 24))) / ei
            slopes.append((value, start + t))
            flats.append((t, value))
        a, at_a = b, at_b
    return flats


def _slope_turns(piece, flats, deflections):
    """Note the deflection where the slope is zero."""
    start, end, ei, load, rate, shear, moment, slope, y, _, _, end_slope, _ = piece
    a, at_a = 0.0, slope
    for b, at_b in (*flats, (end - start, end_slope)):
        if at_a * at_b < 0:  # between two zeros of the moment the slope only rises or only falls
            t = _zero_between(a, b, at_a, at_b, (slope * ei, -moment, -shear / 2, load / 6, rate / 24))
            inner = moment / 2 + t * (shear / 6 - t * (load / 24 + t * rate / 120))
            deflections.append((y + t * (slope - t * inner / ei), start + t))
        a, at_a = b, at_b


def _zero_between(a, b, at_a, at_b, polynomial):
    """The zero of a polynomial between two places where its signs differ: Newton, kept inside."""
    c0, c1, c2, c3, c4 = polynomial
    rising = at_b > at_a
    near_enough = 1e-13 * b
    t = a + (b - a) * at_a / (at_a - at_b)
    for _ in range(60):
        value = c0 + t * (c1 + t * (c2 + t * (c3 + t * c4)))
        if (value > 0) == rising:
            b = t
        else:
            a = t
        tangent = c1 + t * (2 * c2 + t * (3 * c3 + t * 4 * c4))
        step = value / tangent if tangent else 0.0
        following = t - step
        if not a <= following <= b:
            following = (a + b) / 2
        if abs(following - t) <= near_enough:
            return following
        t = following
    return t
