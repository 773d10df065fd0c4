"""Rafter pairs built for the frame solver: what holds them is a choice, and what nothing holds is refused."""

from itertools import pairwise

import numpy

from structlib.ground.refusals import check_choice, check_number
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
