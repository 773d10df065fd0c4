"""Nails of the tie's joint on the page of the roof: the larger of the code's table and the calculation."""

from structlib.ground.lumber import find_material
from structlib.ground.refusals import OutsideRule
from structlib.rules.us import dowels, roof_ties, snow

_NAIL = "16d common"


def worked_out(now, *, tie_wood, tie_width):
    """Return the nails of one joint by calculation, for the combination that needs most.

    Parameters
    ----------
    now : dict
        What the page of the roof worked out, for even snow or for snow on one side [any].
    tie_wood : tuple of str
        Species and grade of the tie [-].
    tie_width : float
        Thickness of the tie [mm].

    Returns
    -------
    structlib.rules.us.roof_ties.HeelNails
        The count [-].
    """
    rafter, tie = now["rafter"], find_material(*tie_wood)
    gravity = rafter.material.specific_gravity or tie.specific_gravity
    found = [
        roof_ties.heel_joint_nails(
            thrust=now["thrust"] * area_load / now["area_load"],
            fastener=dowels.nail(_NAIL),
            rafter=dowels.wood_piece(thickness=rafter.plies * rafter.ply_width, specific_gravity=gravity),
            tie=dowels.wood_piece(thickness=tie_width, specific_gravity=tie.specific_gravity),
            time_factor=combination.time_factor,
            height_fraction=now["height"],
        )
        for combination, area_load in now["areas"]
        if area_load > 0
    ]
    return max(found, key=lambda one: one.nails)


def nails_row(cases, *, tie_wood, tie_width):
    """Return the row of the joint: the larger of table and calculation, or no count where one is missing.

    Parameters
    ----------
    cases : list of dict
        What the page of the roof worked out: even snow first, then snow on one side if asked [any].
    tie_wood : tuple of str
        Species and grade of the tie [-].
    tie_width : float
        Thickness of the tie [mm].

    Returns
    -------
    tuple of (tuple of str, str)
        What, asked, can give, share, loads and rule; and how well the count is known, empty without one [-].
    """
    values, name = cases[0]["values"], f"{_NAIL} nails, each joint of the tie"
    try:
        found = [worked_out(case, tie_wood=tie_wood, tie_width=tie_width) for case in cases]
    except OutsideRule as refused:
        return (name, "no count", "", "", str(refused)), ""
    most = max(found, key=lambda one: one.nails)
    alone = f"by calculation alone {most.nails} (NDS 2018 12.3; {most.verified})"
    if values["snow"] and not values["ground"]:
        told = f"type the ground snow, by which the code's table goes; {alone}"
        return (name, "no count", "", "", told), most.verified
    try:
        cell = roof_ties.heel_table_nails(
            rise=values["rise"],
            spacing=values["spacing"],
            ground_snow=snow.ground_snow(values["ground"], edition=snow.EDITION, basis=snow.BASIS),
            building_span=cases[0]["span"],
            edition=roof_ties.HEEL_EDITION,
        )
        count = roof_ties.heel_count(cell, most, height_fraction=cases[0]["height"])
    except OutsideRule as refused:
        return (name, "no count", "", "", f"{refused}; {alone}"), most.verified
    return (name, str(count.nails), "", "", count.words), count.verified
