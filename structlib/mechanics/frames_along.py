"""Moment and push along a rafter of a tied pair, below the tie and above it.

The same pair and the same measures as in ``frames``: plan distances from the eave below the tie, from the
ridge above it. The same arithmetic for floats, numpy arrays and sympy symbols, in any consistent units.
"""

import numpy

from structlib.ground.refusals import check_number, is_symbolic, refuse_list
from structlib.mechanics.frames import pair_checked, slope_length, tie_force


def moment_below_tie(*, line_load, building_span, distance):
    """Return the moment in the rafter below the tie: w (L/2) x - w x^2 / 2.

    Parameters
    ----------
    line_load : float, numpy.ndarray or sympy expression
        Load on the plan, per horizontal length of a pair [N/mm].
    building_span : float, numpy.ndarray or sympy expression
        Distance between the two eave supports [mm].
    distance : float, numpy.ndarray or sympy expression
        Plan distance from the eave, up to the tie at most [mm].

    Returns
    -------
    float, numpy.ndarray or sympy expression
        Moment, positive when the rafter sags [N*mm].

    Examples
    --------
    >>> moment_below_tie(line_load=50.0, building_span=24.0, distance=4.0)
    2000.0
    """
    pair_checked(line_load=line_load, building_span=building_span)
    _within_half(distance, building_span)
    return line_load * building_span / 2 * distance - line_load * distance**2 / 2


def compression_above_tie(*, line_load, building_span, rise, height_fraction, distance_from_ridge):
    """Return the push along the rafter above the tie: T cos(slope) + w z sin(slope).

    At the ridge it is T cos(slope); with the tie at the eave, z = L/2 gives the push at the heel.

    Parameters
    ----------
    line_load : float, numpy.ndarray or sympy expression
        Load on the plan, per horizontal length of a pair [N/mm].
    building_span : float, numpy.ndarray or sympy expression
        Distance between the two eave supports [mm].
    rise : float, numpy.ndarray or sympy expression
        Height of the ridge above the eave supports [mm].
    height_fraction : float, numpy.ndarray or sympy expression
        Height a of the tie above the eave as a share of the rise [-].
    distance_from_ridge : float, numpy.ndarray or sympy expression
        Plan distance z from the ridge, down to the tie at most [mm].

    Returns
    -------
    float, numpy.ndarray or sympy expression
        Compression along the rafter [N].

    Examples
    --------
    >>> push = dict(line_load=52.0, building_span=24.0, rise=5.0, height_fraction=0.0)
    >>> [round(compression_above_tie(**push, distance_from_ridge=z), 3) for z in (12.0, 0.0)]
    [931.2, 691.2]
    """
    pull = tie_force(line_load=line_load, building_span=building_span, rise=rise,
                     height_fraction=height_fraction)  # fmt: skip
    _within_half(distance_from_ridge, building_span)
    length = slope_length(building_span=building_span, rise=rise)
    return (pull * (building_span / 2) + line_load * distance_from_ridge * rise) / length


def _within_half(distance, building_span):
    refuse_list("plan distance", distance)
    if is_symbolic(distance) or is_symbolic(building_span):
        return
    farthest = float(numpy.max(building_span)) / 2
    check_number("plan distance", distance, low=0, high=farthest * (1 + 1e-12),
                 hint="counted on the plan, from 0 to half the building span")  # fmt: skip
