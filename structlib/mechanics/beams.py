"""One exact solver for any straight beam: any supports, any loads, hinges, steps in stiffness.

How it works. The beam is cut at its joints: ends, supports and hinges. Each span between two joints
is first a simple span of its own, whose end slopes come from its loads by exact integration. Then
the unknown moments at the joints, and the unknown deflections of joints that can sink, are found from
two conditions: neighbouring spans meet at the same slope, and a joint that nothing holds takes no
force. Moments as unknowns keep the equations well behaved even for 1 mm beside 10 m, where the usual
stiffness equations lose digits. At last each piece of each span gets its exact polynomial.

Plain floats are used because for one beam they are about ten times faster than numpy.
"""

from itertools import combinations

from structlib.ground.refusals import BadInput
from structlib.mechanics.beam_extremes import Extreme, Extremes, most
from structlib.mechanics.beam_joints import joint_state
from structlib.mechanics.beam_model import (
    SAME_SPOT,
    Beam,
    Couple,
    LineLoad,
    PointLoad,
    Support,
    length_text,
)
from structlib.mechanics.beam_solution import Piece, Points, Reaction, Solution, combined

__all__ = [
    "Beam", "Couple", "Extreme", "Extremes", "LineLoad", "Piece", "PointLoad", "Points", "Reaction",
    "Solution", "Support", "combined", "most", "solve", "solve_each",
]  # fmt: skip

MOST_TRIED_SUPPORTS = 12  # supports that can lift, of which every combination is tried in a hard case


def solve(beam):
    """Solve a beam exactly for its reactions, shear, moment, slope and deflection.

    Parameters
    ----------
    beam : Beam
        The beam with its supports and loads [-].

    Returns
    -------
    Solution
        Reactions, and methods for shear, moment, slope, deflection and their extremes [-].

    Examples
    --------
    >>> post = Support(4000.0)
    >>> beam = Beam(8000.0, 2e12, [Support(0.0), post, Support(8000.0)], [LineLoad(0.0, 8000.0, 5.0)])
    >>> [round(reaction.force, 3) for reaction in solve(beam).reactions]
    [7500.0, 25000.0, 7500.0]
    """
    if not isinstance(beam, Beam):
        example = "solve(Beam(4000.0, 2e12, supports, loads))"
        raise BadInput(f"solve() takes a Beam, got {type(beam).__name__}; for example {example}")
    return _solved(beam, *_cut(beam))


def solve_each(beam, cases):
    """Solve a beam for several sets of its loads, all cut at the same places, so that `combined` can add them up.

    Parameters
    ----------
    beam : Beam
        The beam with the loads of every set [-].
    cases : iterable of tuple
        The loads of each set; every one of them is on the beam [-].

    Returns
    -------
    tuple of Solution
        One a set [-].

    Examples
    --------
    >>> even, post = LineLoad(0.0, 4000.0, 5.0), PointLoad(1000.0, 800.0)
    >>> beam = Beam(4000.0, 2e12, [Support(0.0), Support(4000.0)], [even, post])
    >>> [round(one.reactions[0].force) for one in solve_each(beam, ((even,), (post,)))]
    [10000, 600]
    """
    cut = _cut(beam)
    return tuple(_solved(beam.under(tuple(loads)), *cut) for loads in cases)


def _cut(beam):
    places, index = _places(beam)
    return places, index, _joints(beam, index)


def _solved(beam, places, index, joints):
    forces, couples, intensity, rate, stiffness = _loads_by_piece(beam, places, index)
    spans = [
        _simple_span(places, first, last, forces, couples, intensity, rate, stiffness)
        for (first, _, _), (last, _, _) in zip(joints, joints[1:])
    ]
    if beam.shear_stiffness is not None:
        spans = [
            _gives_to_shear(span, sum(couples[first : last + (last == len(places) - 1)]), beam.shear_stiffness)
            for span, (first, _, _), (last, _, _) in zip(spans, joints, joints[1:])
        ]
    lifted, state = _settle(beam, joints, spans)
    given = 0.0 if beam.shear_stiffness is None else 1 / beam.shear_stiffness
    pieces = _pieces(places, joints, spans, state, (forces, couples, intensity, rate, stiffness), given)
    return Solution(beam, _reactions(beam, joints, state, lifted), pieces)


# ---- the beam cut into pieces ----


def _places(beam):
    """All places where something changes, left to right, and the number of the place of each position."""
    firm = {0.0, beam.length}
    firm.update([support.position for support in beam.supports])
    firm.update(beam.hinges)
    found = set(firm)
    for load in beam.loads:
        if type(load) is LineLoad:
            found.add(load.start)
            found.add(load.end)
        else:
            found.add(load.position)
    if type(beam.bending_stiffness) is tuple:
        found.update([end for end, _ in beam.bending_stiffness])
    ordered = sorted(found)
    places, index = [], {}
    for x in ordered:
        if places and x - places[-1] <= SAME_SPOT:  # the same place up to rounding; a joint stays put
            if x in firm and (places[-1] not in firm or x == beam.length):
                places[-1] = x
        else:
            places.append(x)
        index[x] = len(places) - 1
    return places, index


def _loads_by_piece(beam, places, index):
    """Forces and couples at each place; load, its rate of change and stiffness of each piece."""
    count = len(places)
    forces, couples = [0.0] * count, [0.0] * count
    intensity, rate = [0.0] * (count - 1), [0.0] * (count - 1)
    for load in beam.loads:
        kind = type(load)
        if kind is PointLoad:
            forces[index[load.position]] += load.force
        elif kind is Couple:
            couples[index[load.position]] += load.moment
        else:
            first, last = index[load.start], index[load.end]
            begin = load.intensity
            grows = 0.0
            if load.end_intensity is not None and load.end_intensity != begin:
                grows = (load.end_intensity - begin) / (load.end - load.start)
            for j in range(first, last):
                intensity[j] += begin + grows * (places[j] - places[first])
                rate[j] += grows
    if type(beam.bending_stiffness) is not tuple:
        return forces, couples, intensity, rate, [beam.bending_stiffness] * (count - 1)
    stiffness, first = [], 0
    for end, ei in beam.bending_stiffness:
        stiffness += [ei] * (index[end] - first)
        first = index[end]
    return forces, couples, intensity, rate, stiffness


def _joints(beam, index):
    """Ends, supports and hinges from left to right: (place, number of its support or None, hinge?)."""
    held = {index[support.position]: i for i, support in enumerate(beam.supports)}
    hinges = {index[x] for x in beam.hinges}
    numbers = sorted({0, index[beam.length], *held, *hinges})
    return [(place, held.get(place), place in hinges) for place in numbers]


def _simple_span(places, first, last, forces, couples, intensity, rate, stiffness):
    """A span as a simple span of its own: what its loads and end moments do to its ends.

    Returns its length; its end slopes from unit end moments (``near`` from the moment at the same end
    on the left, ``cross`` from the other end, ``far`` at the same end on the right); the end slopes
    from its loads; and the shears at its two ends from its loads.
    """
    start, length = places[first], places[last] - places[first]
    shear = moment = 0.0  # from the loads alone, before the left support pushes back
    for j in range(first, last):
        h = places[j + 1] - places[j]
        w, r = intensity[j], rate[j]
        shear -= forces[j]
        moment += couples[j] + h * (shear - h * (w / 2 + h * r / 6))
        shear -= h * (w + h * r / 2)
    if last == len(places) - 1:  # what stands on the right end of the beam belongs to its last span
        shear -= forces[last]
        moment += couples[last]
    left_push = -moment / length
    right_shear = shear + left_push

    # Now the moment is known, and each end slope is an integral of it times a straight line over EI.
    # All terms of the three unit slopes are positive, so no digits are lost in a stepped beam.
    near = cross = far = left_slope = right_slope = moment = 0.0
    shear = left_push
    for j in range(first, last):
        h = places[j + 1] - places[j]
        ei, w, r = stiffness[j], intensity[j], rate[j]
        shear -= forces[j]
        moment += couples[j]
        a, c = (places[j] - start) / length, (places[last] - places[j + 1]) / length
        b, d = a + h / length, c + h / length  # a to b counts from the left end, d to c from the right
        far += h * (a * a + a * b + b * b) / (3 * ei)
        near += h * (d * d + d * c + c * c) / (3 * ei)
        cross += h * (2 * (a * d + b * c) + a * c + b * d) / (6 * ei)
        bent = h * (moment + h * (shear / 2 - h * (w / 6 + h * r / 24))) / ei
        bent_t = h * (moment / 2 + h * (shear / 3 - h * (w / 8 + h * r / 30))) / ei * h / length
        right_slope += a * bent + bent_t
        left_slope += d * bent - bent_t
        moment += h * (shear - h * (w / 2 + h * r / 6))
        shear -= h * (w + h * r / 2)
    return length, near, cross, far, left_slope, right_slope, left_push, right_shear


def _gives_to_shear(span, couples, shear_stiffness):
    """The same span with shear: its ends turn by V / (G A) more, so that the axis still meets its joints.

    A push that grows along the span leaves the end turns as they are; end moments and couples do not.
    """
    length, near, cross, far, left_slope, right_slope, left_push, right_shear = span
    give = 1 / (shear_stiffness * length)
    turned = left_slope + give * couples, right_slope - give * couples
    return length, near + give, cross - give, far + give, *turned, left_push, right_shear


# ---- which supports carry ----


def _settle(beam, joints, spans):
    """Find which supports the beam lifts off, and the state of the joints then."""
    loose = _loose_part(beam, ())
    if loose:
        raise BadInput(_loose_sentence(loose, beam))
    state = joint_state(beam, joints, spans, ())
    resting = [i for i, support in enumerate(beam.supports) if support.can_lift]
    if not resting:
        return (), state
    lifted, seen = frozenset(), set()
    while lifted not in seen:
        seen.add(lifted)
        wrong = _wrongly_placed(beam, joints, state, lifted, resting)
        if wrong is None:
            return lifted, state
        lifted = lifted ^ {wrong}
        if _loose_part(beam, lifted):
            break
        state = joint_state(beam, joints, spans, lifted)
    return _settle_by_trial(beam, joints, spans, resting)


def _settle_by_trial(beam, joints, spans, resting):
    """Try every combination of lifted supports; at most one can be right."""
    if len(resting) > MOST_TRIED_SUPPORTS:
        accepted = f"at most {MOST_TRIED_SUPPORTS} supports may lift here, got {len(resting)}"
        raise BadInput(f"the beam did not settle on its supports: {accepted}; hold some down")
    for count in range(len(resting) + 1):
        for lifted in combinations(resting, count):
            if not _loose_part(beam, lifted):
                state = joint_state(beam, joints, spans, lifted)
                if _wrongly_placed(beam, joints, state, lifted, resting) is None:
                    return lifted, state
    raise BadInput(
        "the beam tips over: it rises off supports that cannot pull until too few are left; "
        "hold one down (can_lift=False) or add a support"
    )


def _wrongly_placed(beam, joints, state, lifted, resting):
    """The support most at fault: a lifted one that the beam has sunk through, else one that pulls."""
    _, sinks, forces, _ = state
    rounding = 1e-10 * max(map(abs, forces))
    slight = 1e-10 * max(map(abs, sinks))
    worst, fault = None, 0.0
    for joint, (_, i, _) in enumerate(joints):
        if i in lifted:
            through = sinks[joint] - beam.supports[i].settlement
            if through > slight and through > fault:
                worst, fault = i, through
    if worst is not None:
        return worst
    for joint, (_, i, _) in enumerate(joints):
        if i in resting and i not in lifted:
            pull = -forces[joint]
            if pull > rounding and pull > fault:
                worst, fault = i, pull
    return worst


def _loose_part(beam, lifted):
    """A part between hinges that nothing stops from moving: (start, end, places that hold it), or None.

    A part is held by two places or by one fixed support. A held part then holds its neighbours
    at their hinge, so holding spreads from part to part.
    """
    held = [(s.position, s.kind == "fixed") for i, s in enumerate(beam.supports) if i not in lifted]
    if not beam.hinges:
        if len(held) > 1 or any(fixed for _, fixed in held):
            return None
        return 0.0, beam.length, len(held)
    edges = (0.0, *beam.hinges, beam.length)
    parts = []
    for a, b in zip(edges, edges[1:]):
        inside = [(x, fixed) for x, fixed in held if a - SAME_SPOT <= x <= b + SAME_SPOT]
        parts.append([a, b, inside])
    waiting = parts
    while waiting:
        firm = [part for part in waiting if len(part[2]) > 1 or any(fixed for _, fixed in part[2])]
        if not firm:
            a, b, inside = min(waiting, key=lambda part: len(part[2]))
            return a, b, len(inside)
        waiting = [part for part in waiting if part not in firm]
        for a, b, _ in firm:
            for part in waiting:
                for hinge in {a, b} & {part[0], part[1]}:
                    if all(abs(x - hinge) > SAME_SPOT for x, _ in part[2]):
                        part[2].append((hinge, False))
    return None


def _loose_sentence(loose, beam):
    a, b, count = loose
    if not beam.supports:
        return "the beam cannot stand: it has no support; add two supports, or one of kind 'fixed'"
    part = f"its part from {length_text(a)} to {length_text(b)}" if beam.hinges else "it"
    places = ("is held nowhere", "is held at one place only and can turn about it")[count]
    return f"the beam cannot stand: {part} {places}; add a support there, or make one of kind 'fixed'"


# ---- the answer ----


def _pieces(places, joints, spans, state, loads, given):
    """The exact polynomial of each piece, span by span; ``given`` is how much a unit of shear tilts the axis."""
    moments, sinks, _, _ = state
    forces, couples, intensity, rate, stiffness = loads
    pieces = []
    end_of_beam = len(places) - 1
    for s, (length, near, cross, far, left_slope, right_slope, left_shear, _) in enumerate(spans):
        first, last = joints[s][0], joints[s + 1][0]
        moment, end_moment = moments[s]
        tilt = (sinks[s + 1] - sinks[s]) / length
        shear = left_shear + (end_moment - moment) / length
        slope = tilt + near * moment + cross * end_moment + left_slope + given * shear
        sink = sinks[s]
        end_slope = tilt - cross * moment - far * end_moment - right_slope
        if last == end_of_beam:
            end_moment -= couples[last]  # just inside the end, before the couple that stands on it
        for j in range(first, last):
            start, end = places[j], places[j + 1]
            h = end - start
            ei, w, r = stiffness[j], intensity[j], rate[j]
            spread = given * ei
            shear -= forces[j]
            slope -= given * forces[j]
            moment += couples[j]
            before = (start, end, ei, w, r, shear, moment, slope, sink)
            m, v = moment + spread * w, shear + spread * r
            sink += h * (slope - h * (m / 2 + h * (v / 6 - h * (w / 24 + h * r / 120))) / ei)
            slope -= h * (m + h * (v / 2 - h * (w / 6 + h * r / 24))) / ei
            moment += h * (shear - h * (w / 2 + h * r / 6))
            shear -= h * (w + h * r / 2)
            if j == last - 1:  # known there without the rounding gathered on the way
                moment, slope, sink = end_moment, end_slope + given * shear, sinks[s + 1]
            pieces.append(Piece._make((*before, shear, moment, slope, sink, spread)))
    return tuple(pieces)


def _reactions(beam, joints, state, lifted):
    _, _, forces, turns = state
    found = [None] * len(beam.supports)
    for (_, i, _), force, turn in zip(joints, forces, turns):
        if i is not None:
            support = beam.supports[i]
            if i in lifted:
                found[i] = Reaction(support.position, 0.0, 0.0, True)
            else:
                found[i] = Reaction(support.position, force, turn if support.kind == "fixed" else 0.0, False)
    return tuple(found)
