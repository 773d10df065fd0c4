"""Rafter pairs built for the frame solver: what holds them is a choice, and what nothing holds is refused."""

from itertools import pairwise

import numpy

from structlib.ground.refusals import BadInput, check_choice, check_number
from structlib.mechanics.frames import below_ridge, not_negative, positive
from structlib.mechanics.plane_frame import Bar, Joint, PlaneFrame

_AT_THE_EAVE = 1e-3  # a tie no higher than this share of the rise is taken as one at the eave
HOLDS = ("tie", "ridge beam", "stiff peak", "walls", "nothing")


def rafter_pair(
    *,
    building_span,
    rise,
    left_load,
    right_load,
    axial_stiffness,
    bending_stiffness,
    held_by="tie",
    height_fraction=0.0,
    tie_axial_stiffness=None,
    tie_slip_stiffness=numpy.inf,
    collar_fraction=None,
):
    """Build a pair of rafters on two walls as a frame.

    The left wall keeps its place, the right one gives no sideways hold (except ``held_by="walls"``), so that
    its movement is the spread. Joints are named ``left``, ``right``, ``ridge``, ``left tie``, ``right tie``,
    ``left collar``, ``right collar``; bars ``left rafter 1`` and so on from the eave up, ``tie``, ``collar``.

    Parameters
    ----------
    building_span : float
        Distance between the two eave supports [mm].
    rise : float
        Height of the ridge above the eave supports [mm].
    left_load : float
        Load on the plan of the left rafter [N/mm].
    right_load : float
        Load on the plan of the right rafter [N/mm].
    axial_stiffness : float
        E A of a rafter [N].
    bending_stiffness : float
        E I of a rafter [N*mm2].
    held_by : str
        ``"tie"``, ``"ridge beam"``, ``"stiff peak"``, ``"walls"`` (both walls pinned) or ``"nothing"`` [-].
    height_fraction : float
        Height of the tie above the eave as a share of the rise, up to 0.001 taken as 0; only for a tie [-].
    tie_axial_stiffness : float, optional
        E A of the tie; as the rafters when left out [N].
    tie_slip_stiffness : float
        Stiffness of each of the tie's two joints, infinite for joints that do not slip [N/mm].
    collar_fraction : float, optional
        Height of a collar tie as a share of the rise, above the tie; none when left out [-].

    Returns
    -------
    PlaneFrame
        The frame, ready for ``solve_frame``, which refuses ``"nothing"`` as a mechanism [-].

    Examples
    --------
    >>> from structlib.mechanics.plane_frame import solve_frame
    >>> pair = rafter_pair(building_span=7200.0, rise=1800.0, left_load=1.0, right_load=1.0,
    ...                    axial_stiffness=6e7, bending_stiffness=4e11)
    >>> round(solve_frame(pair).axial("tie", 0.5), 6)
    3600.0
    """
    check_choice("what holds the pair", held_by, HOLDS)
    positive("building span", building_span, "for example 24*ft")
    positive("rise", rise, "for example 6*ft")
    not_negative("left load", left_load, "for example 100*plf")
    not_negative("right load", right_load, "for example 100*plf")
    below_ridge(height_fraction)
    levels = {}
    if held_by == "tie" and height_fraction > _AT_THE_EAVE:
        levels["tie"] = height_fraction
    if collar_fraction is not None:
        lowest = height_fraction if held_by == "tie" else 0.0
        check_number(
            "height fraction of the collar",
            collar_fraction,
            low=lowest,
            high=0.98,
            low_allowed=False,
            hint="it stands above the tie, in the upper third",
        )
        levels["collar"] = collar_fraction
    joints = {
        "left": Joint(0.0, 0.0, "xy"),
        "right": Joint(building_span, 0.0, "xy" if held_by == "walls" else "y"),
        "ridge": Joint(building_span / 2, rise, "xy" if held_by == "ridge beam" else ""),
    }
    if held_by == "ridge beam":  # the beam holds the ridge, so both eaves may slide
        joints["left"] = Joint(0.0, 0.0, "y")
    bars = {}
    peak_hinges = {"left": "", "right": ""} if held_by == "stiff peak" else {"left": "", "right": "end"}
    for side, load in (("left", left_load), ("right", right_load)):
        names, from_left = [side], side == "left"
        for level, share in levels.items():
            place = building_span / 2 * (share if from_left else 2 - share)
            joints[f"{side} {level}"] = Joint(place, rise * share)
            names.append(f"{side} {level}")
        names.append("ridge")
        for number, (lower, upper) in enumerate(pairwise(names), 1):
            bars[f"{side} rafter {number}"] = Bar(
                lower,
                upper,
                axial_stiffness=axial_stiffness,
                bending_stiffness=bending_stiffness,
                hinges=peak_hinges[side] if upper == "ridge" else "",
                plan_load=load,
            )
    tie = tie_axial_stiffness or axial_stiffness
    if held_by == "tie":
        ends = ("left tie", "right tie") if "tie" in levels else ("left", "right")
        bars["tie"] = Bar(
            *ends,
            axial_stiffness=tie,
            bending_stiffness=bending_stiffness,
            hinges="both",
            slip_start=tie_slip_stiffness,
            slip_end=tie_slip_stiffness,
        )
    if "collar" in levels:
        bars["collar"] = Bar(
            "left collar",
            "right collar",
            axial_stiffness=tie,
            bending_stiffness=bending_stiffness,
            hinges="both",
        )
    return PlaneFrame(joints, bars)


def dropped_tie_pair(
    *,
    building_span,
    rise,
    load,
    wall_height,
    drop,
    axial_stiffness,
    bending_stiffness,
    wall_bending_stiffness,
):
    """Build a pair whose tie, a floor, lies BELOW the eaves, so that the walls between bend outward.

    The studs stand on pins, run past the floor and end under the rafters; the floor is held sideways by the
    rest of the house. Each stud is a beam over the floor's edge: the eave pushes its free upper end.

    Parameters
    ----------
    building_span : float
        Distance between the two eave supports [mm].
    rise : float
        Height of the ridge above the eaves [mm].
    load : float
        Load on the plan of both rafters [N/mm].
    wall_height : float
        Height of the eaves above the foot of the studs [mm].
    drop : float
        How far below the eaves the floor lies; less than ``wall_height`` [mm].
    axial_stiffness : float
        E A of rafters, studs and floor [N].
    bending_stiffness : float
        E I of a rafter [N*mm2].
    wall_bending_stiffness : float
        E I of the studs that belong to one pair [N*mm2].

    Returns
    -------
    PlaneFrame
        The frame, with bars ``left stud 1`` (foot to floor), ``left stud 2`` (floor to eave) and ``tie`` [-].

    Examples
    --------
    >>> from structlib.mechanics.plane_frame import solve_frame
    >>> pair = dropped_tie_pair(building_span=7200.0, rise=1800.0, load=1.0, wall_height=3600.0, drop=900.0,
    ...                         axial_stiffness=6e7, bending_stiffness=4e11, wall_bending_stiffness=1e11)
    >>> round(solve_frame(pair).axial("tie", 0.5), 3)
    4800.0
    """
    positive("building span", building_span, "for example 24*ft")
    positive("rise", rise, "for example 6*ft")
    not_negative("load", load, "for example 100*plf")
    positive("wall height", wall_height, "for example 12*ft")
    positive("drop", drop, "for example 3*ft")
    if not drop < wall_height:
        raise BadInput("drop must be less than the wall height: the floor lies between foot and eave")
    joints = {"ridge": Joint(building_span / 2, rise)}
    bars = {}
    for side, place in (("left", 0.0), ("right", building_span)):
        joints[f"{side} foot"] = Joint(place, -wall_height, "xy")
        joints[f"{side} floor"] = Joint(place, -drop, "x" if side == "left" else "")
        joints[side] = Joint(place, 0.0)
        for number, (low, high) in enumerate(((f"{side} foot", f"{side} floor"), (f"{side} floor", side)), 1):
            bars[f"{side} stud {number}"] = Bar(
                low, high, axial_stiffness=axial_stiffness, bending_stiffness=wall_bending_stiffness
            )
        bars[f"{side} rafter 1"] = Bar(
            side,
            "ridge",
            axial_stiffness=axial_stiffness,
            plan_load=load,
            bending_stiffness=bending_stiffness,
            hinges="both",
        )
    bars["tie"] = Bar(
        "left floor",
        "right floor",
        axial_stiffness=axial_stiffness,
        bending_stiffness=bending_stiffness,
        hinges="both",
    )
    return PlaneFrame(joints, bars)
