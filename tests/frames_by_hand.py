"""Frames by statics alone, apart from the library: three hinges, cuts along a tied rafter, free bodies."""

from typing import NamedTuple

import numpy

from structlib.mechanics.frame_solution import in_plane


def moment_above_tie(*, line_load, building_span, height_fraction, distance_from_ridge):
    lift = line_load * building_span / 2 * distance_from_ridge / (2 * (1 - height_fraction))
    return lift - line_load * distance_from_ridge**2 / 2


def compression_below_tie(*, line_load, building_span, rise, distance):
    return line_load * (building_span / 2 - distance) * rise / ((building_span / 2) ** 2 + rise**2) ** 0.5


def three_hinged_reactions(*, span, crown, rise, left_force, left_place, right_force, right_place):
    left = (left_force * (span - left_place) + right_force * right_place) / span
    right = left_force + right_force - left
    thrust = (left * crown - left_force * (crown - left_place)) / rise
    return {"left": left, "right": right, "thrust": thrust, "crown_shear": left_force - left}


class FreeBody(NamedTuple):
    """What is left over on a part that was cut free."""

    part: str
    right: float
    up: float
    turn: float


def free_bodies(solution):
    """Cut a solved frame into free bodies and sum the forces on each; every sum is zero in a true solution.

    The bodies are the whole frame, every joint, every bar, and the first half of every bar with the axial
    force, shear and moment of the cut on it. Nothing here knows of stiffness: it is statics alone.
    """
    frame = solution.frame
    first = next(iter(frame.joints.values()))
    outer = [(joint.x - first.x, joint.y - first.y, *_outer(solution, name)) for name, joint in frame.joints.items()]
    outer += [_resultant(frame, bar, 1.0, first) for bar in frame.bars]
    bodies = [_body("whole frame", outer)]
    for name in frame.joints:
        meeting = [
            (0.0, 0.0, *-in_plane(frame, bar, solution.end_forces[bar][3 * end : 3 * end + 3]))
            for bar, piece in frame.bars.items()
            for end, joint in enumerate((piece.start, piece.end))
            if joint == name
        ]
        bodies.append(_body(f"joint {name}", [*meeting, (0.0, 0.0, *_outer(solution, name))]))
    for bar, piece in frame.bars.items():
        right, up = frame.run(bar)
        start = frame.joints[piece.start]
        near = (0.0, 0.0, *in_plane(frame, bar, solution.end_forces[bar][:3]))
        far = (right, up, *in_plane(frame, bar, solution.end_forces[bar][3:]))
        bodies.append(_body(f"bar {bar}", [near, far, _resultant(frame, bar, 1.0, start)]))
        cut = (solution.axial(bar, 0.5), -solution.shear(bar, 0.5), solution.moment(bar, 0.5))
        half = (right / 2, up / 2, *in_plane(frame, bar, cut))
        bodies.append(_body(f"first half of {bar}", [near, half, _resultant(frame, bar, 0.5, start)]))
    return bodies


def _body(part, forces):
    forces = numpy.array(forces)
    turn = forces[:, 4] + forces[:, 0] * forces[:, 3] - forces[:, 1] * forces[:, 2]
    return FreeBody(part, float(forces[:, 2].sum()), float(forces[:, 3].sum()), float(turn.sum()))


def _outer(solution, name):
    """Loads and reactions on one joint: right, up, turn."""
    sums = numpy.zeros(3)
    for load in solution.frame.loads:
        if load.joint == name:
            sums += (load.right, -load.down, load.turn)
    if name in solution.reactions:
        reaction = solution.reactions[name]
        sums += (reaction.right, reaction.up, reaction.turn)
    return sums


def _resultant(frame, bar, share, about):
    """The load on the first share of a bar as one downward force at its middle."""
    piece = frame.bars[bar]
    start, (right, up) = frame.joints[piece.start], frame.run(bar)
    down = (piece.plan_load * abs(right) + piece.along_load * frame.length(bar)) * share
    return (start.x + right * share / 2 - about.x, start.y + up * share / 2 - about.y, 0.0, -down, 0.0)
