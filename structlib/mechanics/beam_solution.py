"""What a solved beam answers: reactions, and shear, moment, slope and deflection anywhere along it.

Between two neighbouring places where something changes (a support, a load, a step in stiffness)
the beam is one piece, and all four quantities are polynomials that are known exactly.
"""

from bisect import bisect_left, bisect_right
from dataclasses import dataclass, replace
from functools import cached_property
from typing import NamedTuple

import numpy as np

from structlib.ground.refusals import BadInput, check_choice, check_number
from structlib.mechanics.beam_extremes import find_extremes
from structlib.mechanics.beam_model import SAME_SPOT, Beam, Couple, LineLoad, PointLoad, length_text


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

    Examples
    --------
    >>> Points(*5 * [np.zeros(3)]).x.size
    3
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
    shear_spread : float
        EI over the shear stiffness; zero where shear makes no sag of its own [mm^2].

    Examples
    --------
    >>> Piece(0.0, 800.0, 2e12, *10 * [0.0]).end
    800.0
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
    shear_spread: float = 0.0


# The four polynomials of a piece; t runs from its left end. Floats and arrays pass through.
# V' = -w, M' = V, EI * slope' = -(M + spread * w), deflection' = slope: where shear makes sag of its own,
# the slope is that of the beam's axis, which steps at a point load, and the load itself curves the axis.


def _shear(piece, t):
    return piece.shear - t * (piece.load + t * piece.load_rate / 2)


def _moment(piece, t):
    return piece.moment + t * (piece.shear - t * (piece.load / 2 + t * piece.load_rate / 6))


def _slope(piece, t):
    moment, shear = _curving(piece)
    inner = shear / 2 - t * (piece.load / 6 + t * piece.load_rate / 24)
    return piece.slope - t * (moment + t * inner) / piece.bending_stiffness


def _deflection(piece, t):
    moment, shear = _curving(piece)
    inner = shear / 6 - t * (piece.load / 24 + t * piece.load_rate / 120)
    return piece.deflection + t * (piece.slope - t * (moment / 2 + t * inner) / piece.bending_stiffness)


def moment_and_deflection(piece, t):
    """Return moment and deflection within a piece; its fields and places may be arrays.

    Parameters
    ----------
    piece : Piece
        The piece [-].
    t : float or numpy.ndarray
        Places from its left end [mm].

    Returns
    -------
    tuple of float or numpy.ndarray
        Moment and deflection [N*mm, mm].

    Examples
    --------
    >>> moment_and_deflection(Piece(0.0, 800.0, 2e12, 0.0, 0.0, 5.0, *7 * [0.0]), 400.0)[0]
    2000.0
    """
    return _moment(piece, t), _deflection(piece, t)


def _curving(piece):
    """Moment and shear at the left end with what the load adds to the curve of the axis."""
    return (
        piece.moment + piece.shear_spread * piece.load,
        piece.shear + piece.shear_spread * piece.load_rate,
    )


def _cut(piece, start, end):
    """The part of a piece that lies between two places, as a piece of its own."""
    if piece.start >= start and piece.end <= end:
        return piece
    a, b = max(start, piece.start), min(end, piece.end)
    ends = [
        [polynomial(piece, x - piece.start) for polynomial in (_shear, _moment, _slope, _deflection)] for x in (a, b)
    ]
    load = piece.load + piece.load_rate * (a - piece.start)
    return piece._replace(start=a, end=b, load=load, **dict(zip(_AT_START, ends[0])), **dict(zip(_AT_END, ends[1])))


_AT_START, _AT_END = Piece._fields[5:9], Piece._fields[9:13]


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

        Examples
        --------
        >>> from structlib.mechanics.beams import Beam, PointLoad, Support, solve
        >>> beam = Beam(4000.0, 2e12, [Support(0.0), Support(4000.0)], [PointLoad(1000.0, 800.0)])
        >>> solve(beam).shear(1000.0), solve(beam).shear(1000.0, side="left")
        (-200.0, 600.0)
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

        Examples
        --------
        >>> from structlib.mechanics.beams import Beam, PointLoad, Support, solve
        >>> beam = Beam(4000.0, 2e12, [Support(0.0), Support(4000.0)], [PointLoad(1000.0, 800.0)])
        >>> solve(beam).moment(1000.0)
        600000.0
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

        Examples
        --------
        >>> from structlib.mechanics.beams import Beam, PointLoad, Support, solve
        >>> beam = Beam(4000.0, 2e12, [Support(0.0), Support(4000.0)], [PointLoad(1000.0, 800.0)])
        >>> round(1e6 * solve(beam).slope(0.0), 3)
        350.0
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

        Examples
        --------
        >>> from structlib.mechanics.beams import Beam, PointLoad, Support, solve
        >>> beam = Beam(4000.0, 2e12, [Support(0.0), Support(4000.0)], [PointLoad(1000.0, 800.0)])
        >>> round(solve(beam).deflection(1000.0), 6)
        0.3
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
                x = np.array(sorted({*x.tolist(), *inside}))
            t = x - piece.start
            row = np.array([x, _shear(piece, t), _moment(piece, t), _slope(piece, t), _deflection(piece, t)])
            row[1:, -1] = piece.end_shear, piece.end_moment, piece.end_slope, piece.end_deflection
            rows.append(row)
        return Points(*np.concatenate(rows, axis=1))

    @cached_property
    def extremes(self):
        """Greatest and least shear, moment, slope and deflection, found when first asked for."""
        return find_extremes(self.pieces)

    def extremes_between(self, start, end):
        """Greatest and least shear, moment, slope and deflection between two places, such as two supports.

        Parameters
        ----------
        start : float
            Where to begin, from the left end of the beam [mm].
        end : float
            Where to end, to the right of it [mm].

        Returns
        -------
        Extremes
            The same as ``extremes``, of this part alone; at a jump at its ends, the values inside it [-].

        Examples
        --------
        >>> from structlib.mechanics.beams import Beam, LineLoad, Support, solve
        >>> beam = Beam(8000.0, 2e12, [Support(0.0), Support(4000.0), Support(8000.0)], [LineLoad(0.0, 4000.0, 5.0)])
        >>> round(solve(beam).extremes_between(4000.0, 8000.0).least_moment.value)
        -5000000
        """
        length, hint = self.beam.length, "positions run in mm from the left end of the beam"
        check_number("start", start, low=0.0, high=length, shown=length_text, hint=hint)
        check_number("end", end, low=start, high=length, shown=length_text, hint=hint, low_allowed=False)
        return find_extremes(
            [_cut(piece, start, end) for piece in self.pieces if piece.start < end and piece.end > start]
        )

    @cached_property
    def _loaded(self):
        """A row a piece of all that grows with the load."""
        return np.array([piece[3:13] for piece in self.pieces])

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


def combined(parts):
    """Add up solutions of one beam, each times a factor: what its loads do together is what each does alone, added.

    Parameters
    ----------
    parts : iterable of (Solution, float)
        Solutions as `solve_each` gives them, and their factors [-].

    Returns
    -------
    Solution
        The beam under all of it [-].

    Examples
    --------
    >>> from structlib.mechanics.beams import Beam, LineLoad, PointLoad, Support, solve_each
    >>> even, post = LineLoad(0.0, 4000.0, 5.0), PointLoad(1000.0, 800.0)
    >>> beam = Beam(4000.0, 2e12, [Support(0.0), Support(4000.0)], [even, post])
    >>> one, other = solve_each(beam, ((even,), (post,)))
    >>> round(combined([(one, 1.0), (other, 0.75)]).reactions[0].force)
    10450
    """
    parts = tuple(parts)
    if not parts or not all(_cut_alike(parts[0][0], one) for one, _ in parts[1:]):
        raise BadInput("only solutions of one beam can be added up; take them from one call of solve_each()")
    beam = parts[0][0].beam
    if any(support.can_lift or support.settlement for support in beam.supports):
        raise BadInput(
            "a beam whose supports lift or sink is solved for all its loads at once; what each does does not add up"
        )
    if len(parts) == 1 and parts[0][1] == 1.0:
        return parts[0][0]
    solutions, factors = zip(*parts)
    rows = sum([factor * one._loaded for one, factor in parts]).tolist()
    pieces = [Piece._make((*one[:3], *row, one.shear_spread)) for one, row in zip(solutions[0].pieces, rows)]
    reactions = tuple(
        Reaction(
            same[0].position,
            sum([factor * one.force for factor, one in zip(factors, same)]),
            sum([factor * one.moment for factor, one in zip(factors, same)]),
            False,
        )
        for same in zip(*(one.reactions for one in solutions))
    )
    loads = tuple(_times(load, factor) for one, factor in parts for load in one.beam.loads)
    return Solution(beam.under(loads), reactions, tuple(pieces))


def _cut_alike(one, other):
    """Whether two solutions can be added up: the same supports, and the same pieces."""
    alike = one.beam.supports == other.beam.supports and len(one.pieces) == len(other.pieces)
    return alike and all(a[:3] == b[:3] and a.shear_spread == b.shear_spread for a, b in zip(one.pieces, other.pieces))


def _times(load, factor):
    if factor == 1.0:
        return load
    names = _AMOUNTS[type(load)]
    return replace(load, **{name: getattr(load, name) * factor for name in names if getattr(load, name) is not None})


_AMOUNTS = {PointLoad: ("force",), Couple: ("moment",), LineLoad: ("intensity", "end_intensity")}
