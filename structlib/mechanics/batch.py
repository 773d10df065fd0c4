"""Many beams at once: continuous beams on simple supports, thousands in one call.

The moments over the supports come from the three-moment equation, one elimination for all beams
together; the diagrams then follow span by span. It is another road than the solver for one beam, so
each checks the other. The work is done in chunks of some thousands of beams, which stay in the
processor's own memory: half to two thirds of the time of one large array.
"""

from typing import NamedTuple

import numpy as np

from structlib.ground.refusals import BadInput, check_number
from structlib.mechanics.beam_model import GREATEST_LOAD, GREATEST_STIFFNESS, LONGEST, SHORTEST, length_text

CHUNK = 8000  # pieces of beams worked on together


class SpanPoint(NamedTuple):
    """A point load in the same span of every beam.

    Parameters
    ----------
    span : int
        Which span, 0 the leftmost [-].
    position : float or numpy.ndarray
        Distance from the left support of that span, one value or one for each beam [mm].
    force : float or numpy.ndarray
        The load, downward positive, one value or one for each beam [N].

    Examples
    --------
    >>> SpanPoint(span=0, position=1500.0, force=4000.0).force
    4000.0
    """

    span: int
    position: object
    force: object


class Overhang(NamedTuple):
    """A free end beyond the first or the last support of every beam.

    Parameters
    ----------
    length : float or numpy.ndarray
        Distance from the support to the tip, one value or one for each beam [mm].
    line_load : float or numpy.ndarray
        Load per length on the overhang, downward positive [N/mm].
    tip_load : float or numpy.ndarray
        Load at the tip, downward positive [N].

    Examples
    --------
    >>> Overhang(length=600.0, line_load=5.0).tip_load
    0.0
    """

    length: object
    line_load: object = 0.0
    tip_load: object = 0.0


class ManyBeams(NamedTuple):
    """What many solved beams answer: one row for each beam; positions from the left end of the beam.

    Parameters
    ----------
    reactions : numpy.ndarray
        Push of each support, upward positive, shape (beams, supports) [N].
    greatest_moment : numpy.ndarray
        Greatest moment, the most sagging [N*mm].
    greatest_moment_position : numpy.ndarray
        Where it stands [mm].
    least_moment : numpy.ndarray
        Least moment, the most hogging [N*mm].
    least_moment_position : numpy.ndarray
        Where it stands [mm].
    greatest_shear : numpy.ndarray
        Shear greatest in size, without its sign [N].
    greatest_deflection : numpy.ndarray
        Greatest deflection, the lowest place [mm].
    greatest_deflection_position : numpy.ndarray
        Where it stands [mm].
    least_deflection : numpy.ndarray
        Least deflection, the highest place [mm].
    least_deflection_position : numpy.ndarray
        Where it stands [mm].

    Examples
    --------
    >>> ManyBeams(*10 * [np.zeros(3)]).greatest_shear.size
    3
    """

    reactions: np.ndarray
    greatest_moment: np.ndarray
    greatest_moment_position: np.ndarray
    least_moment: np.ndarray
    least_moment_position: np.ndarray
    greatest_shear: np.ndarray
    greatest_deflection: np.ndarray
    greatest_deflection_position: np.ndarray
    least_deflection: np.ndarray
    least_deflection_position: np.ndarray


def solve_many(*, spans, bending_stiffness, line_loads, point_loads=(), left_overhang=None, right_overhang=None):
    """Solve many continuous beams on simple supports, all with the same number of spans.

    Parameters
    ----------
    spans : numpy.ndarray
        Span lengths, shape (beams, spans), or (beams,) for single spans [mm].
    bending_stiffness : float or numpy.ndarray
        EI: one value, one for each beam, or shape (beams, spans) [N*mm^2].
    line_loads : float or numpy.ndarray
        Uniform load, downward positive: one value, one for each beam, or (beams, spans) [N/mm].
    point_loads : sequence of SpanPoint
        Point loads within spans [-].
    left_overhang : Overhang or None
        A free end to the left, of the stiffness of the first span [-].
    right_overhang : Overhang or None
        A free end to the right, of the stiffness of the last span [-].

    Returns
    -------
    ManyBeams
        Reactions and extremes, one row for each beam [-].

    Examples
    --------
    >>> many = solve_many(spans=np.array([3000.0, 4000.0]), bending_stiffness=2e12, line_loads=5.0)
    >>> many.greatest_moment.tolist()
    [5625000.0, 10000000.0]
    """
    inputs = _checked(spans, bending_stiffness, line_loads, point_loads, left_overhang, right_overhang)
    beams = inputs["spans"].shape[1]
    step = max(1, CHUNK // _piece_count(inputs))
    results = []
    with np.errstate(divide="ignore", invalid="ignore", over="ignore"):  # places that do not exist are masked
        for first in range(0, beams, step):
            results.append(_solve_chunk(_slice(inputs, slice(first, first + step))))
    return ManyBeams(*(np.concatenate(column) for column in zip(*results)))


# ---- input ----


def _checked(spans, bending_stiffness, line_loads, point_loads, left_overhang, right_overhang):
    """Everything as arrays of shape (spans, beams) or (beams,), after every check."""
    hint = "lengths are in mm, for example 12*ft"
    check_number("spans", spans, low=SHORTEST, high=LONGEST, shown=length_text, hint=hint)
    spans = np.asarray(spans, dtype=float)
    if spans.ndim == 0 or spans.ndim > 2:
        raise BadInput(f"spans must have the shape (beams, spans) or (beams,), got {spans.ndim} dimensions")
    if spans.ndim == 1:
        spans = spans[:, None]
    beams, count = spans.shape
    hint = "for example modulus * inertia in MPa and mm^4"
    limits = {"low": 0, "high": GREATEST_STIFFNESS, "low_allowed": False}
    check_number("bending stiffness", bending_stiffness, **limits, hint=hint)
    load = {"low": -GREATEST_LOAD, "high": GREATEST_LOAD, "hint": "downward is positive"}
    check_number("line loads", line_loads, **load)
    inputs = {
        "spans": np.ascontiguousarray(spans.T),
        "stiffness": _by_span("bending stiffness", bending_stiffness, beams, count),
        "loads": _by_span("line loads", line_loads, beams, count),
        "points": [[] for _ in range(count)],
    }
    if isinstance(point_loads, SpanPoint) or not isinstance(point_loads, (list, tuple)):
        raise BadInput("point_loads must be a list of SpanPoint, for example [SpanPoint(0, 1500.0, 4000.0)]")
    for point in point_loads:
        if not isinstance(point, SpanPoint):
            raise BadInput(f"point_loads must hold SpanPoint, got {type(point).__name__}")
        if isinstance(point.span, bool) or point.span not in range(count):
            raise BadInput(f"a point load is in span {point.span!r}, but spans run from 0 to {count - 1}")
        span = int(point.span)
        check_number("point load position", point.position, low=0, high=LONGEST, shown=length_text)
        check_number("point load", point.force, **load)
        position = _by_beam("point load position", point.position, beams)
        beyond = position > spans[:, span] * (1 + 1e-12)
        if beyond.any():
            got = f"{length_text(position[beyond][0])} in a span of {length_text(spans[beyond, span][0])}"
            raise BadInput(f"a point load must stand within its span, got {got}")
        position = np.minimum(position, spans[:, span])
        inputs["points"][span].append((position, _by_beam("point load", point.force, beams)))
    for name, overhang in (("left", left_overhang), ("right", right_overhang)):
        inputs[name] = None if overhang is None else _checked_overhang(name, overhang, beams, load)
    return inputs


def _checked_overhang(name, overhang, beams, load):
    if not isinstance(overhang, Overhang):
        got = type(overhang).__name__
        raise BadInput(f"{name}_overhang must be an Overhang, got {got}; for example Overhang(600.0, 5.0)")
    check_number(f"{name} overhang length", overhang.length, low=0, high=LONGEST, shown=length_text)
    check_number(f"{name} overhang line load", overhang.line_load, **load)
    check_number(f"{name} overhang tip load", overhang.tip_load, **load)
    return tuple(_by_beam(f"{name} overhang", value, beams) for value in overhang)


def _by_beam(name, value, beams):
    values = np.asarray(value, dtype=float)
    if values.shape not in ((), (1,), (beams,)):
        raise BadInput(f"{name} must be one value or one for each of {beams} beams, got shape {values.shape}")
    return np.broadcast_to(values, (beams,))


def _by_span(name, value, beams, count):
    values = np.asarray(value, dtype=float)
    if values.ndim == 1 and values.shape[0] in (1, beams):
        values = values[:, None]
    if values.shape not in ((), (1, 1), (beams, 1), (beams, count)):
        accepted = f"one value, one for each of {beams} beams, or the shape ({beams}, {count})"
        raise BadInput(f"{name} must be {accepted}, got shape {np.shape(value)}")
    return np.broadcast_to(values, (beams, count)).T


def _piece_count(inputs):
    count = sum(1 + len(points) for points in inputs["points"])
    return count + (inputs["left"] is not None) + (inputs["right"] is not None)


def _slice(inputs, part):
    chunk = {name: inputs[name][:, part] for name in ("spans", "stiffness", "loads")}
    chunk["points"] = [[(x[part], p[part]) for x, p in points] for points in inputs["points"]]
    for name in ("left", "right"):
        chunk[name] = None if inputs[name] is None else tuple(value[part] for value in inputs[name])
    return chunk


# ---- the three-moment equation ----


def _solve_chunk(chunk):
    spans, stiffness, loads = chunk["spans"], chunk["stiffness"], chunk["loads"]
    left_slopes, right_slopes, left_shears, right_shears = _simple_spans(chunk)
    moments = _support_moments(chunk, left_slopes, right_slopes)
    passed = (moments[1:] - moments[:-1]) / spans  # shear that the support moments add to a span
    flex = spans / (6 * stiffness)
    slopes = left_slopes + flex * (2 * moments[:-1] + moments[1:])
    last_slope = -right_slopes[-1] - flex[-1] * (moments[-2] + 2 * moments[-1])

    reactions = np.zeros((len(spans) + 1, spans.shape[1]))
    reactions[:-1] += left_shears + passed
    reactions[1:] -= right_shears + passed
    offset = 0.0 if chunk["left"] is None else chunk["left"][0]
    pieces = []
    if chunk["left"] is not None:
        length, load, tip = chunk["left"]
        reactions[0] += tip + load * length
        pieces.append(_left_overhang_piece(length, load, tip, stiffness[0], slopes[0]))
    for s, length in enumerate(spans):
        start = (moments[s], left_shears[s] + passed[s], slopes[s], moments[s + 1])
        pieces += _span_pieces(length, stiffness[s], loads[s], chunk["points"][s], start, offset)
        offset = offset + length
    if chunk["right"] is not None:
        length, load, tip = chunk["right"]
        reactions[-1] += tip + load * length
        zero = np.zeros_like(length)
        shear = tip + load * length
        piece = (offset + zero, length, stiffness[-1], load, shear, moments[-1], last_slope, zero)
        pieces.append((*piece, zero, _end(*piece)[1]))
    return (reactions.T, *_extremes(*(np.stack(field) for field in zip(*pieces))))


def _simple_spans(chunk):
    """End slopes (both counted positive for sagging) and end shears of each span as a simple span."""
    spans, stiffness, loads = chunk["spans"], chunk["stiffness"], chunk["loads"]
    half = loads * spans / 2
    left_shears, right_shears = half.copy(), -half
    left_slopes = loads * spans**3 / (24 * stiffness)
    right_slopes = left_slopes.copy()
    for s, points in enumerate(chunk["points"]):
        for a, force in points:
            length = spans[s]
            b = length - a
            share = force / length
            left_shears[s] += share * b
            right_shears[s] -= share * a
            bent = share * a * b / (6 * stiffness[s])
            left_slopes[s] += bent * (length + b)
            right_slopes[s] += bent * (length + a)
    return left_slopes, right_slopes, left_shears, right_shears


def _support_moments(chunk, left_slopes, right_slopes):
    """Moments over all supports: known at the outer ones, by the three-moment equation between."""
    spans, stiffness = chunk["spans"], chunk["stiffness"]
    count = len(spans)
    moments = np.zeros((count + 1, spans.shape[1]))
    for name, end in (("left", 0), ("right", -1)):
        if chunk[name] is not None:
            length, load, tip = chunk[name]
            moments[end] = -length * (tip + load * length / 2)
    if count == 1:
        return moments
    flex = spans / (6 * stiffness)
    diagonal = 2 * (flex[:-1] + flex[1:])
    given = -(right_slopes[:-1] + left_slopes[1:])
    given[0] -= flex[0] * moments[0]
    given[-1] -= flex[-1] * moments[-1]
    for i in range(1, count - 1):  # eliminate downwards; the diagonal always outweighs its row
        factor = flex[i] / diagonal[i - 1]
        diagonal[i] -= factor * flex[i]
        given[i] -= factor * given[i - 1]
    moments[count - 1] = given[-1] / diagonal[-1]
    for i in range(count - 3, -1, -1):
        moments[i + 1] = (given[i] - flex[i + 1] * moments[i + 2]) / diagonal[i]
    return moments


# ---- the pieces between supports and point loads, each with one polynomial ----


def _span_pieces(length, ei, load, points, start, offset):
    """The pieces of one span: start, length, EI, load; shear, moment, slope, deflection there; and at its
    end the moment and deflection, which at a support are known without the rounding gathered on the way.
    """
    moment, shear, slope, last_moment = start
    sink = np.zeros_like(length)
    at = np.zeros_like(length)
    stops, forces = _ordered(points)
    pieces = []
    for stop, force in zip((*stops, length), (*forces, None)):
        h = stop - at
        piece = (offset + at, h, ei, load, shear, moment, slope, sink)
        if force is None:
            pieces.append((*piece, last_moment, np.zeros_like(length)))
        else:
            end_moment, end_sink = _end(*piece)
            pieces.append((*piece, end_moment, end_sink))
            slope = slope - h * (moment + h * (shear / 2 - h * load / 6)) / ei
            moment, sink = end_moment, end_sink
            shear = shear - h * load - force
            at = stop
    return pieces


def _end(_, h, ei, load, shear, moment, slope, sink):
    """Moment and deflection at the right end of a piece."""
    end_moment = moment + h * (shear - h * load / 2)
    return end_moment, sink + h * (slope - h * (moment / 2 + h * (shear / 6 - h * load / 24)) / ei)


def _ordered(points):
    """Positions and forces of the point loads of a span, from left to right in every beam."""
    if len(points) < 2:
        return [x for x, _ in points], [p for _, p in points]
    stops, forces = np.stack([x for x, _ in points]), np.stack([p for _, p in points])
    order = np.argsort(stops, axis=0, kind="stable")
    return np.take_along_axis(stops, order, axis=0), np.take_along_axis(forces, order, axis=0)


def _left_overhang_piece(length, load, tip, ei, support_slope):
    """The left overhang, walked back from the known slope at its support to its tip."""
    slope = support_slope - length**2 * (tip / 2 + load * length / 6) / ei
    sink = -length * (slope + length**2 * (tip / 6 + load * length / 24) / ei)
    zero = np.zeros_like(length)
    end_moment = -length * (tip + load * length / 2)
    return zero, length, ei, load, -tip, zero, slope, sink, end_moment, zero


# ---- extremes of all pieces of all beams; arrays have the shape (pieces, beams) ----


def _extremes(start, h, ei, load, shear, moment, slope, sink, end_moment, end_sink):
    end_shear = shear - load * h
    peak = shear / load  # where the shear is zero
    peak = np.where((peak > 0) & (peak < h), peak, 0.0)
    peak_moment = moment + peak * (shear - peak * load / 2)
    values = np.concatenate([moment, peak_moment, end_moment])
    places = np.concatenate([start, start + peak, start + h])
    greatest_moment, least_moment = _greatest_and_least(values, places)
    greatest_shear = np.maximum(abs(shear), abs(end_shear)).max(axis=0)

    sinks, places = _deflection_candidates(start, h, ei, load, shear, moment, slope, sink)
    sinks, places = np.concatenate([sinks, end_sink]), np.concatenate([places, start + h])
    greatest_deflection, least_deflection = _greatest_and_least(sinks, places)
    return *greatest_moment, *least_moment, greatest_shear, *greatest_deflection, *least_deflection


def _greatest_and_least(values, places):
    found = []
    for index in (values.argmax(axis=0), values.argmin(axis=0)):
        found.append(tuple(np.take_along_axis(table, index[None], axis=0)[0] for table in (values, places)))
    return found


def _deflection_candidates(start, h, ei, load, shear, moment, slope, sink):
    """Deflections at the left end of each piece and wherever the slope is zero."""
    first, second = _moment_zeros(h, load, shear, moment)
    edges = np.stack([np.zeros_like(h), first, second, h])
    curve = (slope * ei, -moment, -shear / 2, load / 6)  # EI times the slope
    slopes = curve[0] + edges * (curve[1] + edges * (curve[2] + edges * curve[3]))
    # Between two zeros of the moment the slope only rises or only falls, so it has one zero at most.
    where = np.nonzero(slopes[:-1] * slopes[1:] < 0)
    stretch, piece, beam = where
    here = piece, beam
    low, high = edges[stretch, piece, beam], edges[stretch + 1, piece, beam]
    rising = slopes[stretch + 1, piece, beam] > 0
    t = _zeros_between(low, high, rising, [np.broadcast_to(c, h.shape)[here] for c in curve])

    turns = np.broadcast_to(sink, slopes[:-1].shape).copy()
    turn_places = np.broadcast_to(start, slopes[:-1].shape).copy()
    fields = (field[here] for field in (ei, load, shear, moment, slope, sink))
    turns[where] = _end(None, t, *fields)[1]
    turn_places[where] = start[here] + t
    beams = h.shape[1]
    return turns.reshape(-1, beams), turn_places.reshape(-1, beams)


def _moment_zeros(h, load, shear, moment):
    """The two places where the moment of a piece is zero, in order; 0 stands for one outside the piece."""
    root = np.sqrt(shear * shear + 2 * load * moment)
    q = shear + np.where(shear < 0, -root, root)  # the form that loses no digits
    one, other = q / load, -2 * moment / q
    one = np.where((one > 0) & (one < h), one, 0.0)
    other = np.where((other > 0) & (other < h), other, 0.0)
    return np.minimum(one, other), np.maximum(one, other)


def _zeros_between(low, high, rising, curve):
    """One zero for each bracket: Newton, kept inside."""
    c0, c1, c2, c3 = curve
    t = (low + high) / 2
    near_enough = 1e-13 * high
    for _ in range(60):
        value = c0 + t * (c1 + t * (c2 + t * c3))
        beyond = (value > 0) == rising
        high = np.where(beyond, t, high)
        low = np.where(beyond, low, t)
        following = t - value / (c1 + t * (2 * c2 + t * 3 * c3))
        following = np.where((following >= low) & (following <= high), following, (low + high) / 2)
        settled = abs(following - t) <= near_enough
        t = following
        if settled.all():
            break
    return t
