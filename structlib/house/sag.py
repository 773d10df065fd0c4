"""Sag as measured: a grid of heights becomes sag by line, apart from the tilt of the whole floor.

A sag is then split by what elastic theory and the creep factor say: what the load of today bends, what years
have added, and what would come back. It is a range, because the wood is not known; and what comes back is
what elastic theory gives, no promise.
"""

import math
from dataclasses import dataclass

import numpy

from structlib.ground.refusals import BadInput
from structlib.ground.showing import show
from structlib.ground.units import ft, inch
from structlib.house.inputs import check_one_number

_DEEPEST = 24 * inch


@dataclass(frozen=True)
class SagLine:
    """One line of heights: its length, its greatest sag below the straight line between its ends, and where.

    ``ratio`` is n of L/n; infinite where the line does not sag. Lengths in mm.
    """

    number: int
    length: float
    sag: float
    place: float
    ratio: float
    sags: tuple


@dataclass(frozen=True)
class SagReading:
    """What a grid of heights says: every line, the worst of them, and the tilt of the whole floor.

    ``tilt_along`` and ``tilt_across`` are falls per length of the plane that fits best, downward positive
    [-]. ``out_of_plane`` is the greatest distance of a point below that plane [mm].
    """

    lines: tuple
    worst: SagLine
    tilt_along: float
    tilt_across: float
    out_of_plane: float


def read_sag(places, heights, *, line_spacing=1 * ft):
    """Read sag and tilt from heights measured on lines along the joists.

    Parameters
    ----------
    places : sequence of float
        Places along each line, from its start, rising; three at least, the first and last at the supports
        [mm].
    heights : sequence of sequence of float
        Heights, one row a line, one number a place; up is positive, from any level mark [mm].
    line_spacing : float
        Distance from line to line [mm].

    Returns
    -------
    SagReading
        Sag by line, the worst, and the tilt [-].

    Examples
    --------
    >>> reading = read_sag([0.0, 6*ft, 12*ft], [[0.0, -0.5*inch, -0.2*inch]])
    >>> round(reading.worst.sag / inch, 2), round(reading.worst.ratio)
    (0.4, 360)
    """
    x, z = _grid(places, heights)
    check_one_number(
        "distance from line to line",
        line_spacing,
        low=0.0,
        high=60 * ft,
        low_allowed=False,
        shown=lambda value: show(value, "length"),
        hint="for example 16*inch",
    )
    lines = tuple(_line(number, x, row) for number, row in enumerate(z, start=1))
    along, across, level = _plane(x, z, line_spacing)
    fitted = level + along * x[None, :] + across * (numpy.arange(len(z)) * line_spacing)[:, None]
    worst = min(lines, key=lambda line: line.ratio)
    return SagReading(lines, worst, -along, -across, float(numpy.max(fitted - z)))


def _grid(places, heights):
    try:
        x, z = numpy.array(places, dtype=float), numpy.array(heights, dtype=float)
    except (TypeError, ValueError):
        raise BadInput(
            "places and heights must be numbers, every line as long as the places; for example "
            "[0.0, 1800.0, 3600.0] and [[0.0, -9.0, -2.0]]"
        ) from None
    if x.ndim != 1 or len(x) < 3:
        raise BadInput(f"a line needs three places at least, got {x.size}: its two ends and one between")
    if z.ndim != 2 or z.shape[1] != len(x) or not len(z):
        raise BadInput(f"heights must be one row a line with {len(x)} numbers each, got the shape {z.shape}")
    if not (numpy.isfinite(x).all() and numpy.isfinite(z).all()):
        raise BadInput("every place and height must be a finite number; leave out a line that was not measured")
    if numpy.any(numpy.diff(x) <= 0):
        raise BadInput("places must rise from one end of the line to the other")
    if x[-1] - x[0] > 60 * ft or numpy.ptp(z) > 24 * inch:
        raise BadInput("a line is at most 60 ft long and heights differ by at most 24 in; were units mixed up?")
    return x, z


def _line(number, x, row):
    length = float(x[-1] - x[0])
    chord = row[0] + (row[-1] - row[0]) * (x - x[0]) / length
    sags = chord - row
    lowest = int(numpy.argmax(sags))
    sag = float(sags[lowest])
    return SagLine(
        number,
        length,
        sag,
        float(x[lowest] - x[0]),
        length / sag if sag > 1e-9 else math.inf,
        tuple(float(one) for one in sags),
    )


def _plane(x, z, spacing):
    """The plane that fits all heights best: rise along the lines, rise across them, and its height."""
    across = numpy.repeat(numpy.arange(len(z)) * spacing, len(x))
    along = numpy.tile(x, len(z))
    columns = [along, numpy.ones_like(along)] + ([across] if len(z) > 1 else [])
    solved = numpy.linalg.lstsq(numpy.column_stack(columns), z.ravel(), rcond=None)[0]
    return float(solved[0]), float(solved[2]) if len(z) > 1 else 0.0, float(solved[1])


@dataclass(frozen=True)
class SagPart:
    """A part of a sag as a range, least to most [mm]."""

    least: float
    most: float


@dataclass(frozen=True)
class SagParts:
    """A sag by what makes it. ``elastic`` is bent by the load that stays, ``creep`` what years add to it;
    ``comes_back`` is what elastic theory gives back at once if that load is lifted off, ``stays`` what it
    does not. ``unexplained`` is measured less elastic and creep: what neither explains.
    """

    measured: float
    elastic: SagPart
    creep: SagPart
    comes_back: SagPart
    stays: SagPart
    unexplained: SagPart


def sag_parts(*, measured, stiff_sag, soft_sag, least_creep, most_creep):
    """Split a measured sag into elastic, creep and unexplained parts, each as a range.

    Parameters
    ----------
    measured : float
        Sag as measured, with nothing but the load that stays on the floor [mm].
    stiff_sag : float
        Elastic sag of that load with the stiffest wood thought possible [mm].
    soft_sag : float
        The same with the softest [mm].
    least_creep : float
        Least creep factor on the lasting part; 1.5 for wood that was dry [-].
    most_creep : float
        Greatest; 2.0 for wood that was green or wet [-].

    Returns
    -------
    SagParts
        The parts as ranges [mm].

    Examples
    --------
    >>> parts = sag_parts(measured=20.0, stiff_sag=4.0, soft_sag=6.0, least_creep=1.5, most_creep=2.0)
    >>> parts.creep, parts.unexplained
    (SagPart(least=2.0, most=6.0), SagPart(least=8.0, most=14.0))
    """
    for name, value in (
        ("measured sag", measured),
        ("sag of the stiffest wood", stiff_sag),
        ("sag of the softest wood", soft_sag),
    ):
        check_one_number(
            name,
            value,
            low=0.0,
            high=_DEEPEST,
            shown=lambda mm: show(mm, "section length"),
            hint="for example 0.5*inch",
        )
    for name, value in (("least creep factor", least_creep), ("greatest creep factor", most_creep)):
        check_one_number(name, value, low=1.0, high=5.0, hint="for example 1.5")
    if stiff_sag > soft_sag or least_creep > most_creep:
        raise BadInput("a range runs from least to most: the stiffest wood sags least, and dry wood creeps least")
    least, most = stiff_sag * least_creep, soft_sag * most_creep
    return SagParts(
        measured=measured,
        elastic=SagPart(stiff_sag, soft_sag),
        creep=SagPart(stiff_sag * (least_creep - 1), soft_sag * (most_creep - 1)),
        comes_back=SagPart(min(stiff_sag, measured), min(soft_sag, measured)),
        stays=SagPart(max(0.0, measured - soft_sag), max(0.0, measured - stiff_sag)),
        unexplained=SagPart(measured - most, measured - least),
    )
