"""A tie bolted to a rafter: bolts, distances, and the wood left at the holes (NDS 2018)."""

import math
from dataclasses import replace

import numpy

from structlib.ground.refusals import BadInput
from structlib.ground.tables import in_library_units, table_row
from structlib.ground.units import inch
from structlib.mechanics.fastener_groups import fastener_forces, greatest_fastener_force, group_centre
from structlib.rules.check import Check, least_verified
from structlib.rules.us.combined import tension_value
from structlib.rules.us.dowels import MODE_WORDS, adjusted_value, geometry_factor, lateral_value
from structlib.rules.us.inputs import check_yes_or_no
from structlib.rules.us.one_number import check_one_number, inches_text
from structlib.rules.us.roof_ties.numbers import _SLACK, _number, _verified


def bolted_rafter_joint(
    *,
    pull,
    fastener,
    places,
    tie,
    rafter,
    tie_material,
    tie_depth,
    tie_end,
    rafter_edge,
    time_factor,
    shear="single",
    off_center=0.0,
    moisture="dry",
    wet=False,
    combination="",
):
    """Check bolts that join a tie to a rafter: each bolt, its distances, and the tie at the holes.

    Parameters
    ----------
    pull : float
        Force along the tie [N].
    fastener : structlib.rules.us.dowels.Fastener
        The bolt [-].
    places : iterable of tuple of float
        Places of the bolts: along the tie from its end inward, and across it from mid-depth [mm].
    tie : structlib.rules.us.dowels.JoinedPiece
        The tie, as the side member in single shear; its grain runs along the pull [-].
    rafter : structlib.rules.us.dowels.JoinedPiece
        The rafter, as the main member; ``angle`` is that between the pull and its grain, the slope [-].
    tie_material : structlib.ground.lumber.Material
        Wood of the tie, for its pull at the holes [-].
    tie_depth : float
        Depth of the tie [mm].
    tie_end : float
        Distance from the end of the tie to ``along = 0`` of the places [mm].
    rafter_edge : float
        Least distance from a bolt to the edge of the rafter that the pull presses toward [mm].
    time_factor : float
        Load duration factor C_D [-].
    shear : str
        ``single``, or ``double`` for a tie of two pieces outside the rafter, each as ``tie`` [-].
    off_center : float
        How far the pull runs from the middle of the bolts, across the tie [mm].
    moisture : str
        ``dry``, ``wet in service`` or ``wet when built`` [-].
    wet : bool
        Wet service of the tie [-].
    combination : str
        Name of the load combination [-].

    Returns
    -------
    tuple of structlib.rules.check.Check
        The bolt that takes most, its distances, the net section of the tie [N, mm, MPa].

    Raises
    ------
    OutsideRule
        When a distance is under the least, bolts stand in one line along the pull, or a rule does not cover
        the case.

    Notes
    -----
    NDS 2018 3.1.2 (net section; staggered bolts closer than 4 diameters count as one section), 3.8.1, 12.3,
    12.5.1. How an old rafter lost section to a bolt hole where it bends is not here; nor are
    tear-out of a row (Appendix E), splits, rot and old holes.

    Examples
    --------
    >>> from structlib.ground.lumber import find_material
    >>> from structlib.ground.units import deg, lb
    >>> from structlib.rules.us.dowels import bolt, wood_piece
    >>> fir = find_material("Douglas Fir-Larch", "No.2")
    >>> found = bolted_rafter_joint(pull=500*lb, fastener=bolt(0.5*inch), places=[(0.0, 0.0)],
    ...     tie=wood_piece(thickness=1.5*inch, specific_gravity=0.5),
    ...     rafter=wood_piece(thickness=1.5*inch, specific_gravity=0.5, angle=26.57*deg),
    ...     tie_material=fir, tie_depth=5.5*inch, tie_end=3.5*inch, rafter_edge=2.75*inch, time_factor=1.15)
    >>> [one.name for one in found][0], round(found[0].share, 2)
    ('the bolt that takes most', 1.04)
    """
    check_one_number("pull", pull, low=0.0, high=1e7, low_allowed=False, hint="for example 900*lb")
    check_one_number("off center", off_center, low=-3000.0, high=3000.0, shown=inches_text)
    check_yes_or_no("wet", wet)
    if getattr(fastener, "kind", "") != "bolt":
        raise BadInput("this joint is of bolts; make one with bolt(0.5*inch), for nails ask heel_joint_nails")
    for name, value in (("tie depth", tie_depth), ("tie end", tie_end), ("rafter edge", rafter_edge)):
        check_one_number(
            name,
            value,
            low=0.0,
            high=3000.0,
            low_allowed=False,
            shown=inches_text,
            hint="for example 5.5*inch",
        )
    places = _checked_places(places, tie_depth, fastener)
    found = lateral_value(fastener, shear=shear, main=rafter, side=tie)
    distances = _distances(places, tie_depth, tie_end)
    # the bolts bear lengthwise in the tie; in the rafter the part across the grain presses toward an edge
    geometry, checks = geometry_factor(fastener, distances, load="parallel, tension")
    _, edge_checks = geometry_factor(fastener, {"edge": rafter_edge}, load="perpendicular")
    checks = [
        replace(one, name=f"{one.name} of the tie") if asked == "edge" else one for asked, one in zip(distances, checks)
    ]
    edge_checks = [replace(one, name=f"{one.name} of the rafter") for one in edge_checks]
    value, used = adjusted_value(
        found,
        fastener,
        time_factor=time_factor,
        moisture=moisture,
        geometry=geometry,
        in_line=_most_in_line(places),
    )
    middle_x, middle_y = group_centre(places)
    forces = fastener_forces(places, force_x=-pull, at=(middle_x, middle_y + off_center))
    most = greatest_fastener_force(forces)[0]
    bolts = Check(
        name="the bolt that takes most",
        kind="fastener",
        sentence="each bolt takes its part of the pull across the joint",
        asked=float(most),
        given=float(value),
        share=float(most / value),
        dimension="force",
        position=0.0,
        where=f"mode {found.mode}: {MODE_WORDS[found.mode]}",
        combination=combination,
        clause="NDS 2018 12.3.1, Table 11.3.1",
        formula="F_most <= Z' = Z * C_D * C_M * C_g * C_delta",
        substitute=(
            ("F", pull, "force"),
            ("n", float(len(places)), "count"),
            ("F_most", float(most), "force"),
            ("Z", found.value, "force"),
            ("Z'", float(value), "force"),
        ),
        factors=used,
        verified=least_verified([found.verified, *(one.verified for one in used)]),
    )
    pieces = 2 if shear == "double" else 1
    net = net_section_check(
        pull=pull / pieces,
        material=tie_material,
        width=tie.thickness,
        depth=tie_depth,
        diameter=fastener.diameter,
        places=places,
        time_factor=time_factor,
        wet=wet,
        combination=combination,
    )
    return (bolts, *checks, *edge_checks, net)


def net_section_check(*, pull, material, width, depth, diameter, places, time_factor, wet=False, combination=""):
    """Check a pulled piece of wood where bolt holes take away part of its section.

    Parameters
    ----------
    pull : float
        Force along the grain [N].
    material : structlib.ground.lumber.Material
        The wood [-].
    width : float
        Thickness of the piece, along the bolts [mm].
    depth : float
        Depth of the piece [mm].
    diameter : float
        Diameter of the bolts; the holes are 1/16 in larger [mm].
    places : iterable of tuple of float
        Places of the bolts: along the grain, and across from mid-depth [mm].
    time_factor : float
        Load duration factor C_D [-].
    wet : bool
        Wet service [-].
    combination : str
        Name of the load combination [-].

    Returns
    -------
    structlib.rules.check.Check
        Stress on the net section against the tension value [MPa].

    Raises
    ------
    OutsideRule
        When the piece is of no size that the tension values cover.

    Notes
    -----
    NDS 2018 3.1.2, 3.8.1, recalled.

    Examples
    --------
    >>> from structlib.ground.lumber import find_material
    >>> from structlib.ground.units import lb, psi
    >>> fir = find_material("Douglas Fir-Larch", "No.2")
    >>> found = net_section_check(pull=2000*lb, material=fir, width=1.5*inch, depth=5.5*inch,
    ...     diameter=0.5*inch, places=[(0.0, -1.0*inch), (0.0, 1.0*inch)], time_factor=1.15)
    >>> round(found.asked / psi, 1), round(found.share, 3)
    (304.8, 0.355)
    """
    check_one_number("pull", pull, low=0.0, high=1e7, hint="for example 900*lb")
    check_one_number("diameter", diameter, low=0.0, high=1.5 * inch, low_allowed=False, shown=inches_text)
    allowed, used = tension_value(material, width=width, depth=depth, time_factor=time_factor, wet=wet)
    listed = _listed_places(places)
    holes = _holes_in_section(listed, diameter)
    hole = diameter + _number("bolt_hole_over")
    net = width * (depth - holes * hole)
    if net <= 0:
        raise BadInput(f"{holes} holes of {inches_text(hole)} leave nothing of a piece {inches_text(depth)} deep")
    stress = pull / net
    return Check(
        name="the tie at the holes",
        kind="tension",
        sentence="what is left beside the holes carries the whole pull",
        asked=float(stress),
        given=float(allowed),
        share=float(stress / allowed),
        dimension="stress",
        position=0.0,
        where=f"{holes} hole{'s' if holes > 1 else ''} in one section",
        combination=combination,
        clause="NDS 2018 3.1.2, 3.8.1",
        formula="f_t = T / (b (d - n D_hole)) <= F_t'",
        substitute=(
            ("T", pull, "force"),
            ("b", width, "section length"),
            ("d", depth, "section length"),
            ("n", float(holes), "count"),
            ("D_hole", hole, "small length"),
            ("F_t'", allowed, "stress"),
        ),
        factors=used,
        verified=least_verified([material.verified, _verified("bolt_hole_over"), *(one.verified for one in used)]),
    )


def _holes_in_section(places, diameter):
    """Most holes in one section; lines across closer along the grain than 4 diameters count together."""
    reach = _number("same_section_diameters") * diameter
    return max(
        len({round(y, 6) for x, y in places if start <= x < start + reach * (1 - _SLACK)})
        for start in {x for x, _ in places}
    )


def _most_in_line(places):
    """Most bolts in one row along the pull; two lines less apart than a quarter of their stagger are "
    "one row."""
    ratio = in_library_units(table_row("us_fasteners_factors", key="one_row_ratio"), "value")
    waiting, most = list(places), 0
    while waiting:
        row, found = [], [waiting.pop()]
        while found:
            x, y = found.pop()
            row.append((x, y))
            near = [one for one in waiting if abs(one[1] - y) <= max(abs(one[0] - x) / ratio - 1e-9, 1e-6)]
            waiting = [one for one in waiting if one not in near]
            found += near
        most = max(most, len({round(x, 6) for x, _ in row}))
    return most


def _distances(places, tie_depth, tie_end):
    found = {
        "end": tie_end + min(x for x, _ in places),
        "edge": tie_depth / 2 - max(abs(y) for _, y in places),
    }
    across = sorted({round(y, 6) for _, y in places})
    if len(across) > 1:
        found["between rows"] = min(b - a for a, b in zip(across, across[1:], strict=False))
    return found


def _listed_places(places):
    try:
        listed = [(float(x), float(y)) for x, y in places]
    except (TypeError, ValueError):
        raise BadInput(f"places must be pairs of numbers, got {places!r}; for example [(0.0, 0.0)]") from None
    if not listed or not numpy.isfinite(listed).all():
        raise BadInput("places must be at least one pair of finite numbers, for example [(0.0, 0.0)]")
    return listed


def _checked_places(places, tie_depth, fastener):
    listed = _listed_places(places)
    for x, y in listed:
        if x < 0 or abs(y) + fastener.diameter / 2 >= tie_depth / 2:
            raise BadInput(
                f"the bolt at {inches_text(x)} along and {inches_text(abs(y))} across lies outside the "
                "tie; count along from 0 and across from mid-depth, for example (0.0, 1*inch)"
            )
    for i, (x, y) in enumerate(listed):
        for other_x, other_y in listed[:i]:
            if math.hypot(x - other_x, y - other_y) < fastener.diameter:
                raise BadInput("two bolts stand in one place; move one of them, for example to (0.0, 1*inch)")
    return listed
