"""Line loads on a beam: what several come to, and what passes from ply to ply where they hang on one side.

Plies share a load only if they sag together: load on top reaches each of them, load from a side the outer ply only.
"""

import numpy

from structlib.ground.refusals import BadInput, check_number, is_symbolic
from structlib.ground.units import plf

_MOST_PLIES = 5
_MOST_LOAD = 1e5


def greatest_line_load(loads):
    """Return the greatest sum of line loads anywhere on a beam.

    Parameters
    ----------
    loads : iterable of tuple
        (start, end, intensity, end intensity) of each load [mm, mm, N/mm, N/mm].

    Returns
    -------
    float
        The greatest sum; between ends of loads it is straight, so the ends are enough [N/mm].

    Examples
    --------
    >>> greatest_line_load([(0.0, 1000.0, 2.0, 2.0), (500.0, 1000.0, 0.0, 3.0)])
    5.0
    """
    loads, greatest = tuple(loads), 0.0
    places = sorted({place for start, end, _, _ in loads for place in (start, end)})
    for left, right in zip(places, places[1:]):
        over = [one for one in loads if one[0] <= left and one[1] >= right]
        for place in (left, right):
            total = sum(low + (high - low) * (place - start) / (end - start) for start, end, low, high in over)
            greatest = max(greatest, total)
    return greatest


def loads_between_plies(ply_loads):
    """Return the load that passes from each ply to the next when all plies sag together.

    Like plies that sag together carry equal parts, the mean of what arrives. So what has arrived on the first
    k plies, less k equal parts, passes on between ply k and ply k + 1.

    Parameters
    ----------
    ply_loads : iterable of float
        Load that arrives on each ply, from one face of the beam to the other [N/mm].

    Returns
    -------
    tuple of float
        Load passed between neighbours, positive away from the first ply [N/mm].

    Examples
    --------
    >>> loads_between_plies([9.0, 0.0, 0.0])
    (6.0, 3.0)
    >>> loads_between_plies([3.0, 3.0, 3.0])
    (0.0, 0.0)
    """
    loads = _listed_loads(ply_loads)
    part = sum(loads) / len(loads)
    passed, arrived = [], 0
    for count, load in enumerate(loads[:-1], start=1):
        arrived = arrived + load
        passed.append(arrived - count * part)
    return tuple(passed)


def load_to_pass(*, side_load, plies):
    """Return the load that must pass out of the loaded ply when all hangs on one side: (n - 1) / n of it.

    Parameters
    ----------
    side_load : float, numpy.ndarray or sympy expression
        Load that hangs on one side of the beam [N/mm].
    plies : int
        Like plies of the beam, n [-].

    Returns
    -------
    float, numpy.ndarray or sympy expression
        Load to pass to the second ply [N/mm].

    Notes
    -----
    Statics: the loaded ply keeps one part of n. See ``loads_between_plies`` for load from both sides.

    Examples
    --------
    >>> load_to_pass(side_load=900.0, plies=3)
    600.0
    """
    check_number("side load", side_load, low=0.0, high=_MOST_LOAD, hint="for example 400*plf")
    if not is_symbolic(plies):
        check_plies(plies)
    return side_load * (plies - 1) / plies


def nothing_passes(load, whole):
    """Tell whether the load that must cross a seam is nothing but the rounding of a balance.

    Parameters
    ----------
    load : float
        Load to pass [N/mm].
    whole : float
        All the load on the pieces [N/mm].

    Returns
    -------
    bool
        True where nothing has to pass [-].

    Examples
    --------
    >>> nothing_passes(1e-16, 5.0), nothing_passes(0.1, 5.0)
    (True, False)
    """
    return load <= 1e-9 * whole


def check_plies(plies):
    """Refuse a number of plies that is no whole number from 2 to 5.

    Parameters
    ----------
    plies : int or numpy.ndarray
        Number of like plies [-].

    Examples
    --------
    >>> check_plies(2)
    """
    check_number("plies", plies, low=2, high=_MOST_PLIES, hint="for example 2")
    if numpy.any(numpy.asarray(plies) % 1):
        raise BadInput(f"plies must be a whole number from 2 to {_MOST_PLIES}, got {plies!r}; for example 2")


def _listed_loads(ply_loads):
    if isinstance(ply_loads, (str, bytes)):
        raise BadInput(f"loads must be a list of numbers, got {ply_loads!r}; for example [400*plf, 0]")
    try:
        loads = list(ply_loads)
    except TypeError:
        raise BadInput(
            f"loads must be a list of numbers, got {type(ply_loads).__name__}; for example [400*plf, 0]"
        ) from None
    check_number("plies", len(loads), low=2, high=_MOST_PLIES, hint="give the load on each, for example [400*plf, 0]")
    for load in loads:
        check_number("load on a ply", load, low=-_MOST_LOAD, high=_MOST_LOAD, shown=_plf, hint="for example 400*plf")
    return loads


def _plf(load):
    return f"{load / plf:g} plf"
