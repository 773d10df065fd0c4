"""Greatest and least values along a beam, exactly: no sampling, so no peak is missed between samples."""

from math import sqrt
from operator import itemgetter
from typing import NamedTuple

from structlib.ground.refusals import BadInput


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

    Examples
    --------
    >>> most(Extreme(9.0, 3.0), Extreme(-16.0, 8.0)).value
    -16.0
    """
    found = None
    for extreme in extremes:
        if not isinstance(extreme, Extreme):
            found = None
            break
        if found is None or abs(extreme[0]) > abs(found[0]):
            found = extreme
    if found is None:
        raise BadInput("most() compares records of type Extreme, for example most(e.least_slope)")
    return found


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


def find_extremes(pieces):
    """Compare every place where a quantity can be greatest: ends of pieces, and zeros of its derivative.

    Parameters
    ----------
    pieces : tuple of Piece
        The pieces of a solved beam, from left to right [-].

    Returns
    -------
    Extremes
        Greatest and least shear, moment, slope and deflection [-].

    Examples
    --------
    >>> find_extremes([(0.0, 800.0, 2e12, 0.0, 0.0, 5.0, *4 * [0.0], 4000.0, 0.0, 0.0, 0.0)]).moment
    Extreme(value=4000.0, position=800.0)
    """
    shears, moments, slopes, deflections = [], [], [], []
    for piece in pieces:
        start, end, ei, load, rate, v0, m0, s0, y0, v1, m1, s1, y1, spread = piece
        turns = _shear_turns(piece, shears, moments)
        if spread and load or spread and rate:  # the load curves the axis too, as if the moment were greater
            end_moment = m1 + spread * (load + rate * (end - start))
            curving = v0 + spread * rate, m0 + spread * load, s0, y0, v1, end_moment, s1, y1
            piece = (start, end, ei, load, rate, *curving, spread)
            turns = _shear_turns(piece, [], [])
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
            shears.append((shear - load * t / 2, start + t))
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
    start, end, ei, load, rate, shear, moment, slope, _, _, end_moment, *_ = piece
    flats = []
    a, at_a = 0.0, moment
    for b, at_b in (*turns, (end - start, end_moment)):
        if at_a < 0 < at_b or at_b < 0 < at_a:  # between zeros of the shear it only rises or falls
            t = _zero_between(a, b, at_a, at_b, (moment, shear, -load / 2, -rate / 6, 0.0))
            value = slope - t * (moment + t * (shear / 2 - t * (load / 6 + t * rate / 24))) / ei
            slopes.append((value, start + t))
            flats.append((t, value))
        a, at_a = b, at_b
    return flats


def _slope_turns(piece, flats, deflections):
    """Note the deflection where the slope is zero."""
    start, end, ei, load, rate, shear, moment, slope, y, _, _, end_slope, *_ = piece
    a, at_a = 0.0, slope
    for b, at_b in (*flats, (end - start, end_slope)):
        if at_a < 0 < at_b or at_b < 0 < at_a:  # between zeros of the moment it only rises or falls
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
