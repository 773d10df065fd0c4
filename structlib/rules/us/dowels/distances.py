"""Spacing, edge and end distances, and what is left where they are short (NDS 2018 12.5)."""

import numpy

from structlib.ground.refusals import BadInput, OutsideRule, check_choice, check_number
from structlib.ground.tables import table_row, table_rows
from structlib.ground.units import inch
from structlib.rules.check import Check
from structlib.rules.us.dowels.bearing_strength import is_thin
from structlib.rules.us.dowels.records import _check_fastener
from structlib.rules.us.dowels.words import _SIZE_SLACK, DISTANCES, LOAD_DIRECTIONS
from structlib.rules.us.inputs import check_size, check_yes_or_no


def least_distances(fastener, *, load, slenderness=None, softwood=True, prebored=False, staggered=False):
    """Return the distances that a fastener wants to ends, edges and its neighbours.

    Parameters
    ----------
    fastener : Fastener
        The fastener [-].
    load : str
        ``parallel, compression`` (pushed away from the end), ``parallel, tension`` (pulled toward the end) or
        ``perpendicular`` to the grain [-].
    slenderness : float
        For bolts: the lesser of the bearing lengths over the diameter; the distance between rows loaded
        across the grain goes by it and is left out without it [-].
    softwood : bool
        Softwood or hardwood [-].
    prebored : bool
        Whether nails go into bored holes [-].
    staggered : bool
        Whether neighbouring rows are staggered [-].

    Returns
    -------
    dict
        ``end``, ``edge``, ``unloaded edge``, ``in a row`` and ``between rows`` to (full, least, clause,
        verified). From full on the whole value counts; below least the rule does not go. For bolts and lag
        screws a row runs in the direction of the load, for nails along the grain [mm, mm, -, -].

    Notes
    -----
    NDS 2018 Tables 12.5.1A to 12.5.1D; for fasteners under 1/4 in the guidance of Commentary C12.1.6.6.

    Examples
    --------
    >>> from structlib.rules.us.dowels.fasteners import nail
    >>> wants = least_distances(nail("16d common"), load="perpendicular")
    >>> round(wants["end"][0] / inch, 2)
    2.43
    """
    _check_fastener(fastener)
    check_choice("load", load, LOAD_DIRECTIONS)
    for name, value in (("softwood", softwood), ("prebored", prebored), ("staggered", staggered)):
        check_yes_or_no(name, value)
    if is_thin(fastener.diameter):
        return _nail_distances(fastener, load, prebored, staggered)
    return _bolt_distances(fastener, load, slenderness, softwood)


def _nail_distances(fastener, load, prebored, staggered):
    bored = ", prebored" if prebored else ""
    away = "compression" if load == "parallel, compression" else "tension"
    # Rows run along the grain. A load across it runs from row to row, so more is asked between them.
    if load == "perpendicular":
        across = ("between rows", "in line" + bored) if staggered else ("in a row", "perpendicular" + bored)
    else:
        across = ("between rows", "staggered" if staggered else "in line" + bored)
    rows = {
        "end": ("end", away + bored),
        "edge": ("edge", "any"),
        "unloaded edge": ("edge", "any"),
        "in a row": ("in a row", "parallel" + bored),
        "between rows": across,
    }
    return {name: _distance(fastener, _spacing_row("nail", *key)) for name, key in rows.items()}


def _bolt_distances(fastener, load, slenderness, softwood):
    along = load != "perpendicular"
    wood = (", softwood" if softwood else ", hardwood") if load == "parallel, tension" else ""
    direction = "parallel" if along else "perpendicular"
    edge = "parallel" if along else "perpendicular, loaded edge"
    far = "parallel" if along else "perpendicular, unloaded edge"
    rows = {
        "end": ("end", load + wood),
        "edge": ("edge", edge),
        "unloaded edge": ("edge", far),
        "in a row": ("in a row", direction),
    }
    wants = {name: _distance(fastener, _spacing_row("bolt", *key)) for name, key in rows.items()}
    if along:
        wants["between rows"] = _distance(fastener, _spacing_row("bolt", "between rows", "parallel"))
    elif slenderness is not None:
        wants["between rows"] = _across_rows(fastener, slenderness)
    return wants


def _across_rows(fastener, slenderness):
    """Distance between rows of bolts across the grain: it grows in proportion between two slendernesses."""
    check_number("slenderness", slenderness, low=0.0, high=200.0, low_allowed=False, hint="for example 3.0")
    short, long = (
        row
        for row in table_rows("us_fasteners_spacing")
        if (row["fastener"], row["distance"], row["case"]) == ("bolt", "between rows", "perpendicular")
    )
    diameters = float(numpy.interp(slenderness, [short["ratio_max"], long["ratio_min"]], [short["full"], long["full"]]))
    wanted = diameters * fastener.diameter
    return wanted, wanted, short["source"], short["verified"]


def _spacing_row(kind, distance, case):
    return table_row("us_fasteners_spacing", fastener=kind, distance=distance, case=case)


def _distance(fastener, row):
    return row["full"] * fastener.diameter, row["least"] * fastener.diameter, row["source"], row["verified"]


def geometry_factor(fastener, distances, *, load, slenderness=None, softwood=True, prebored=False, staggered=False):
    """Return the geometry factor of a fastener from its distances, or refuse those that are too short.

    Parameters
    ----------
    fastener : Fastener
        The fastener [-].
    distances : dict
        Any of ``end``, ``edge``, ``unloaded edge``, ``in a row`` and ``between rows`` to the distance there
        is [mm].
    load : str
        ``parallel, compression``, ``parallel, tension`` or ``perpendicular`` to the grain [-].
    slenderness : float
        For bolts: the lesser of the bearing lengths over the diameter [-].
    softwood : bool
        Softwood or hardwood [-].
    prebored : bool
        Whether nails go into bored holes [-].
    staggered : bool
        Whether neighbouring rows are staggered [-].

    Returns
    -------
    tuple of (float, tuple of structlib.rules.check.Check)
        C_delta, the least of all, and one check for each distance [-].

    Raises
    ------
    OutsideRule
        When a distance is less than the least that the rule accepts.

    Notes
    -----
    NDS 2018 12.5.1: in proportion between the least distance and the full one; 1.0 under 1/4 in.

    Examples
    --------
    >>> from structlib.rules.us.dowels.fasteners import bolt
    >>> half = geometry_factor(bolt(0.5 * inch), {"end": 1.75 * inch}, load="parallel, tension")
    >>> round(half[0], 6)
    0.5
    """
    wants = least_distances(
        fastener,
        load=load,
        slenderness=slenderness,
        softwood=softwood,
        prebored=prebored,
        staggered=staggered,
    )
    if not isinstance(distances, dict) or not distances:
        raise BadInput(f"distances must name at least one distance, got {distances!r}; for example {{'end': 4*inch}}")
    factor, checks = 1.0, []
    for name, there in distances.items():
        check_choice("distance", name, DISTANCES)
        check_size(f"distance {name}", there)
        if name not in wants:
            raise BadInput(
                "the distance between rows of bolts loaded across the grain goes by their slenderness; give "
                "the lesser bearing length over the diameter, for example slenderness=3.0"
            )
        full, least, clause, verified = wants[name]
        if there < least * (1 - _SIZE_SLACK):
            raise OutsideRule(
                f"the distance {name!r} of a {fastener.name} must be at least {least / inch:.2f} in, got "
                f"{there / inch:.2f} in; move it, or take a thinner one"
            )
        if not is_thin(fastener.diameter) and there < full * (1 - _SIZE_SLACK):
            factor = min(factor, there / full)
        checks.append(
            Check(
                name=f"distance, {name}",
                kind="distance",
                sentence="the wood splits where a fastener sits too close",
                asked=least,
                given=there,
                share=least / there,
                dimension="small length",
                position=0.0,
                where=name,
                combination="any",
                clause=clause,
                formula="least distance <= distance",
                substitute=(("least distance", least, "small length"), ("distance", there, "small length")),
                verified=verified,
            )
        )
    return factor, tuple(checks)
