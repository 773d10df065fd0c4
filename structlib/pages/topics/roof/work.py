"""The joints of a tie beside the bench, as tables: their slip, their nails, their bolts."""

import math

from structlib.ground.lumber import find_material
from structlib.ground.showing import show
from structlib.ground.tables import in_library_units, table_row
from structlib.ground.units import inch, psf
from structlib.mechanics import frames, frames_spread
from structlib.pages.kit.door import hold
from structlib.pages.kit.show import Table
from structlib.pages.topics.roof.example import RISE, SPACING, SPAN, UNDER_SNOW, WOOD, pair, stiffness
from structlib.rules.choice import RULEBOOK

dowels, roof_ties, snow = map(RULEBOOK.room, ("dowels", "roof_ties", "snow"))


def slipping_joints(system: str = "us"):
    """Show how far the eaves part when the joints of a tie slip, beside what the rafters bend.

    Examples
    --------
    >>> slipping_joints().rows[0]
    ('at the eaves', '0.00 in', '0.14 in', '0.27 in')
    """
    rows = []
    for height, name in ((0.0, "at the eaves"), (0.25, "a quarter up"), (1 / 3, "a third up")):
        given = {**pair(), "rise": RISE, "height_fraction": height}
        bent = frames_spread.spread_by_bending(**given, bending_stiffness=stiffness("2x8")["bending_stiffness"])
        told = [show(bent, "small length", system)]
        for slip in (1 / 16 * inch, 1 / 8 * inch):
            opened = frames_spread.spread_by_tie(
                **given, axial_stiffness=stiffness("2x6")["axial_stiffness"], joint_slip=slip
            )
            told.append(show(bent + opened, "small length", system))
        rows.append((name, *told))
    slips = [show(part * inch, "section length", system) for part in (1 / 16, 1 / 8)]
    head = ("tie", "rafters bend alone", *(f"and each joint slips {slip}" for slip in slips))
    caption = "How far the eaves part. How much a nailed joint slips is not worked out here: try what you see."
    return Table(head, rows, caption)


def heel_nails(ground: float = 30 * psf, building_span: float = SPAN, system: str = "us"):
    """Set the nails of the heel joint by the code's table beside a calculation, over the slope.

    ``ground`` [MPa]; ``building_span`` [mm].

    Examples
    --------
    >>> heel_nails().rows[0][:3]
    ('3 in 12', '992 lb', '11')
    """
    found = snow.ground_snow(ground, edition=snow.EDITION, basis=snow.BASIS)
    wood = find_material(*WOOD)
    piece = dowels.wood_piece(thickness=1.5 * inch, specific_gravity=wood.specific_gravity)
    # the loads that the table seems to have been made with
    dead, share = (
        in_library_units(table_row("us_roof_tie_rules", key=key), "value")
        for key in ("heel_model_dead", "heel_model_snow_share")
    )
    rows = []
    for rise in (3, 4, 5, 7, 9, 12):
        asked = dict(rise=rise, spacing=SPACING, ground_snow=found, building_span=building_span)
        cell = roof_ties.heel_table_nails(**asked, edition=roof_ties.HEEL_EDITION)
        thrust = frames.rafter_thrust(
            line_load=(dead + share * ground) * SPACING,
            building_span=building_span,
            rise=rise / 12 * building_span / 2,
        )
        ours = roof_ties.heel_joint_nails(
            thrust=thrust,
            fastener=dowels.nail("16d common"),
            rafter=piece,
            tie=piece,
            time_factor=UNDER_SNOW.time_factor,
        )
        count = roof_ties.heel_count(cell, ours)
        rows.append(
            (
                f"{rise} in 12",
                show(thrust, "force", system),
                str(count.by_table),
                str(count.by_calculation),
                str(count.nails),
                "" if cell.exact else f"cell of {cell.rise:g} in 12, {show(cell.building_span, 'length', system)}",
            )
        )
    caption = (
        f"16d common, {show(building_span, 'length', system)} wide, every 16 in, ground snow "
        f"{show(ground, 'area load', system)}; thrust from {show(dead, 'area load', system)} dead and "
        f"{share:g} of it. Table: {roof_ties.HEEL_EDITION}, "
        f"every cell recalled. Computed: {roof_ties.NAIL_CLAUSE.rpartition(' ')[0]} yield of one nail, both pieces 1 1/2 in of fir."
    )
    by = ("nails by the table", "nails computed", "to plan with")
    return Table(("slope", "thrust of a pair", *by, "the table's cell"), rows, caption)


def bolted_joint(diameter: float = 0.5 * inch, bolts: int = 2, system: str = "us"):
    """Check a raised tie bolted to old rafters: the bolts, their distances, and the tie at its holes.

    ``diameter`` [mm].

    Examples
    --------
    >>> bolted_joint().rows[0][0]
    'the bolt that takes most'
    """
    height = 0.25
    wood = find_material(*WOOD, "2x6")
    pull = frames.tie_force(**pair(), rise=RISE, height_fraction=height)
    places = [(0.0, 0.0)] if bolts == 1 else [(0.0, -1.25 * inch), (4 * diameter, 1.25 * inch)]
    piece = dict(thickness=1.5 * inch, specific_gravity=wood.specific_gravity)
    checks = roof_ties.bolted_rafter_joint(
        pull=pull,
        fastener=dowels.bolt(diameter),
        places=places,
        tie=dowels.wood_piece(**piece),
        rafter=dowels.wood_piece(**piece, angle=math.atan2(RISE, SPAN / 2)),
        tie_material=wood,
        tie_depth=5.5 * inch,
        tie_end=7 * diameter,
        rafter_edge=2.75 * inch,
        time_factor=UNDER_SNOW.time_factor,
        combination=UNDER_SNOW.name,
    )
    rows = [
        (
            check.name,
            show(check.asked, check.dimension, system),
            show(check.given, check.dimension, system),
            show(check.share, "ratio", system),
            check.clause,
        )
        for check in checks
    ]
    caption = (
        f"{'One bolt' if bolts == 1 else 'Two bolts'} of {show(diameter, 'section length', system)}, "
        "a 2x6 tie a quarter of the way up, pull "
        f"{show(pull, 'force', system)}. What the hole takes from the old rafter, splits and rot "
        f"are not here."
    )
    return Table(("check", "asked", "can give", "share", "rule"), rows, caption)


hold(globals())
