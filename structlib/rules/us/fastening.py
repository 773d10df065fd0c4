"""How the plies of a built-up beam are fastened together, and what its hangers and ends must be held for.

Plies share a load only if they sag together. Load on top reaches each of them; load that hangs on one side
reaches the outer ply only, and fasteners must pass the rest inward. What a hanger, clip or strap must hold
is given as a force to look up in its maker's table: no product is chosen here.
"""

from dataclasses import dataclass
from math import floor

import numpy

from structlib.ground.records import measured
from structlib.ground.refusals import BadInput, OutsideRule, check_choice, check_number, is_symbolic
from structlib.ground.tables import in_library_units, table_row
from structlib.ground.units import inch, lb, plf
from structlib.mechanics.fastener_groups import fastener_flow, fastener_spacing
from structlib.mechanics.line_loads import (  # noqa: F401  for callers
    check_plies,
    load_to_pass,
    loads_between_plies,
    nothing_passes,
)
from structlib.rules.check import Check, least_verified
from structlib.rules.us.dowels import (
    Fastener,
    adjusted_value,
    geometry_factor,
    is_thin,
    lateral_value,
    least_distances,
    wood_piece,
)
from structlib.rules.us.inputs import check_amount, check_size, check_words, check_yes_or_no

_MOST_LOAD = 1e5


@dataclass(frozen=True, kw_only=True)
class PlyFastening:
    """Fasteners that make the plies of a beam share a load from the side.

    Parameters
    ----------
    load_between : float
        Greatest load that must pass from one ply to the next [N/mm].
    value : float
        Adjusted value of one fastener [N].
    mode : str
        Yield mode that governs it [-].
    rows : int
        Lines of fasteners along the beam [-].
    spacing_needed : float
        Spacing along each line at which they just carry that load [mm].
    spacing : float
        Spacing to use, rounded down to whole inches [mm].
    edge_distance : float
        From the edges of the beam to the outer lines [mm].
    line_gap : float
        Distance between neighbouring lines; zero for one line [mm].
    end_distance : float
        Least distance from the end of a ply to the first fastener [mm].
    fasteners_per_length : float
        Fasteners in all lines by length of beam, between each two plies [1/mm].
    conditions : tuple of str
        What has to be so on site [-].
    checks : tuple of structlib.rules.check.Check
        Load passed and distances, as checks [-].
    verified : str
        How the numbers are known [-].

    Examples
    --------
    >>> from structlib.rules.us.dowels import nail
    >>> found = ply_fastening(plies=2, ply_width=1.5*inch, depth=9.25*inch, side_load=400*plf,
    ...                       specific_gravity=0.5, fastener=nail("10d common"), rows=3)
    >>> found.mode
    'IV'
    """

    load_between: float = measured("line load", "load to pass to the next ply")
    value: float = measured("force", "adjusted value of one fastener")
    mode: str = measured("text", "yield mode")
    rows: int = measured("count", "lines of fasteners")
    spacing_needed: float = measured("small length", "spacing at which they just carry it")
    spacing: float = measured("section length", "spacing along each line")
    edge_distance: float = measured("small length", "outer lines from the edges")
    line_gap: float = measured("small length", "between neighbouring lines")
    end_distance: float = measured("small length", "first fastener from the end, at least")
    fasteners_per_length: float = 0.0
    conditions: tuple = ()
    checks: tuple = ()
    verified: str = measured("text", "how it is known", default="recalled")


@dataclass(frozen=True, kw_only=True)
class ConnectionDemand:
    """What a hanger, cap, clip or strap must hold: forces to look up, never a product.

    Parameters
    ----------
    kind : str
        What connects [-].
    down : float
        Greatest push down [N].
    down_combination : str
        Combination of loads that gives it [-].
    up : float
        Greatest pull up; zero when there is none [N].
    up_combination : str
        Combination that gives it [-].
    sentence : str
        What to look up and to verify [-].

    Examples
    --------
    >>> connection_demand("hanger", {"D + L": 2000 * lb}).up
    0.0
    """

    kind: str = measured("text", "what connects")
    down: float = measured("force", "greatest push down")
    down_combination: str = measured("text", "in combination")
    up: float = measured("force", "greatest pull up")
    up_combination: str = measured("text", "in combination")
    sentence: str = measured("text", "what to look up")


@dataclass(frozen=True, kw_only=True)
class Restraint:
    """What keeps a member from rolling or kicking out: a sideways force and a condition to verify on site.

    Parameters
    ----------
    name : str
        What is held [-].
    force : float
        Sideways force to hold it for [N].
    needed : bool
        Whether the rule asks for it [-].
    condition : str
        What to verify [-].
    clause : str
        Where the condition comes from [-].
    verified : str
        How it is known [-].

    Examples
    --------
    >>> post_top_restraint(axial=10000 * lb).needed
    True
    """

    name: str = measured("text", "what is held")
    force: float = measured("force", "sideways force to hold it for")
    needed: bool = True
    condition: str = measured("text", "what to verify")
    clause: str = measured("text", "clause")
    verified: str = measured("text", "how it is known")


def ply_fastening(
    *,
    plies,
    ply_width,
    depth,
    side_load,
    specific_gravity,
    fastener,
    rows,
    other_side_load=0.0,
    staggered=False,
    time_factor=1.0,
    moisture="dry",
    combination="",
):
    """Lay out the fasteners between the plies of a beam loaded from the side, or refuse what does not fit.

    Parameters
    ----------
    plies : int
        Like plies, 2 to 5 [-].
    ply_width : float
        Thickness of one ply [mm].
    depth : float
        Depth of the beam [mm].
    side_load : float
        Load that hangs on the near side [N/mm].
    specific_gravity : float
        Specific gravity of the plies; for LVL the equivalent one in the maker's report [-].
    fastener : structlib.rules.us.dowels.Fastener
        A nail driven ply to ply, a lag screw, or a bolt through all plies [-].
    rows : int
        Lines of fasteners along the beam, 1 to 8 [-].
    other_side_load : float
        Load that hangs on the far side [N/mm].
    staggered : bool
        Whether neighbouring lines are shifted by half a spacing; bolts in more than one line must be [-].
    time_factor : float
        Load duration factor C_D [-].
    moisture : str
        ``dry``, ``wet in service`` or ``wet when built`` [-].
    combination : str
        Name of the load combination [-].

    Returns
    -------
    PlyFastening
        The layout [-].

    Raises
    ------
    OutsideRule
        When the lines do not fit the depth, the fasteners would stand too close, or a rule does not cover the
        case.

    Notes
    -----
    Statics, with the fastener's value by NDS 2018 12.3 across the grain and distances by 12.5.1 (bolts) or
    Commentary C12.1.6.6 (nails). Each two neighbouring plies count as one shear plane.

    Examples
    --------
    >>> from structlib.rules.us.dowels import nail
    >>> found = ply_fastening(plies=3, ply_width=1.5*inch, depth=11.25*inch, side_load=600*plf,
    ...                       specific_gravity=0.5, fastener=nail("10d common"), rows=3)
    >>> round(found.load_between / plf), round(found.spacing / inch)
    (400, 10)
    """
    _check_layout(plies, ply_width, depth, rows, staggered, fastener)
    for name, load in (("side load", side_load), ("load on the other side", other_side_load)):
        check_number(name, load, low=0.0, high=_MOST_LOAD, shown=_plf, hint="for example 400*plf")
    between = loads_between_plies([side_load] + [0.0] * (plies - 2) + [other_side_load])
    load = max(abs(one) for one in between)
    if nothing_passes(load, side_load + other_side_load):
        raise BadInput(
            "no load has to pass between these plies; see nailing_patterns.usual_pattern for nailing that "
            "only holds them together"
        )
    piece = wood_piece(thickness=ply_width, specific_gravity=specific_gravity, angle=numpy.pi / 2)
    found = lateral_value(fastener, main=piece, side=piece)
    value, used = adjusted_value(found, fastener, time_factor=time_factor, moisture=moisture)
    wants = _wants(fastener, found, rows, staggered)
    gap = _line_gap(fastener, depth, rows, wants)
    needed = fastener_spacing(value=value, flow=load, lines=rows)
    most = spacing_in_practice(value=value, load=load, lines=rows)
    spacing = _spacing_to_use(fastener, needed, most, rows, staggered, wants)
    _check_one_in_line(fastener, spacing, gap, rows)
    checks = (
        _passing_check(load, value, rows, spacing, found, used, combination),
        *_distance_checks(
            fastener,
            edge=_edge(depth, gap, rows),
            spacing=spacing,
            gap=gap,
            rows=rows,
            staggered=staggered,
            found=found,
        ),
    )
    return PlyFastening(
        load_between=load,
        value=value,
        mode=found.mode,
        rows=rows,
        spacing_needed=needed,
        spacing=spacing,
        edge_distance=_edge(depth, gap, rows),
        line_gap=gap,
        end_distance=wants["end"][0],
        fasteners_per_length=rows / spacing,
        checks=checks,
        conditions=_ply_conditions(fastener, plies, staggered),
        verified=least_verified(
            [check.verified for check in checks]
            + ["common practice"] * bool(spacing < needed - _scalar("rounding_of_spacing"))
        ),
    )


def spacing_in_practice(*, value, load, lines=1):
    """Return the spacing along a line at which fasteners pass a load, never wider than practice sets them.

    Parameters
    ----------
    value : float
        What one fastener carries [N].
    load : float
        Load to pass, zero where nothing is asked [N/mm].
    lines : int
        Lines of fasteners side by side that share it [-].

    Returns
    -------
    float
        The spacing, at most 24 in [mm].

    Examples
    --------
    >>> spacing_in_practice(value=500.0, load=5.0, lines=2)
    200.0
    >>> round(spacing_in_practice(value=500.0, load=1e-15) / inch)
    24
    """
    check_amount("load to pass", load, zero=True, hint="for example 400*plf")
    most = _scalar("greatest_ply_spacing")
    return min(fastener_spacing(value=value, flow=load, lines=lines), most) if load > 0 else most


def connection_demand(kind, reactions):
    """Gather what a hanger, post cap, clip or strap must hold, over all load combinations.

    Parameters
    ----------
    kind : str
        ``hanger``, ``post cap``, ``post base``, ``clip`` or ``strap`` [-].
    reactions : dict
        Name of each combination to the reaction there, upward push on the beam positive, pull negative [N].

    Returns
    -------
    ConnectionDemand
        The forces to look up in the maker's table [-].

    Examples
    --------
    >>> demand = connection_demand("post cap", {"D + L": 3000 * lb, "D + 0.6 W": -400 * lb})
    >>> round(demand.down / lb), round(demand.up / lb)
    (3000, 400)
    """
    check_choice("what connects", kind, ("hanger", "post cap", "post base", "clip", "strap"))
    if not isinstance(reactions, dict) or not reactions:
        raise BadInput(
            f"reactions must name at least one combination, got {reactions!r}; for example {{'D + L': 2000*lb}}"
        )
    check_words("names of combinations", reactions)
    for name, force in reactions.items():
        check_number(f"reaction in {name}", force, low=-1e9, high=1e9, shown=_pounds, hint="for example 2000*lb")
        if is_symbolic(force) or numpy.ndim(force):
            raise BadInput(f"reaction in {name} must be one number, got {type(force).__name__}; for example 2000*lb")
    most, least = max(reactions, key=reactions.get), min(reactions, key=reactions.get)
    down, up = max(reactions[most], 0.0), max(-reactions[least], 0.0)
    words = [f"{down / lb:,.0f} lb down"] * bool(down > 0) + [f"{up / lb:,.0f} lb up"] * bool(up > 0)
    sentence = (
        f"the {kind} must be listed by its maker for at least {' and '.join(words)}, for this wood, every"
        " hole filled, and the time factor of that combination not counted twice"
        if words
        else (f"no force on the {kind} in these combinations; it still keeps the members in place")
    )
    return ConnectionDemand(
        kind=kind,
        down=down,
        down_combination=most if down else "none",
        up=up,
        up_combination=least if up else "none",
        sentence=sentence,
    )


def beam_end_restraint(*, depth, width, moment):
    """Return what keeps a beam's end from rolling over on its seat.

    Parameters
    ----------
    depth : float
        Depth of the beam [mm].
    width : float
        Width of all plies together [mm].
    moment : float
        Greatest bending moment in the beam, its size [N*mm].

    Returns
    -------
    Restraint
        A sideways force by the practice of bracing design, and the condition to verify [-].

    Notes
    -----
    NDS 2018 3.3.3 and 4.4.1: a beam not deeper than wide needs no hold; others are held at the ends. The
    force is 2 percent of the push in the upper half of the section, 3 M / (2 d): common practice.

    Examples
    --------
    >>> from structlib.ground.units import ft
    >>> held = beam_end_restraint(depth=9.25 * inch, width=3 * inch, moment=5000 * lb * ft)
    >>> held.needed, round(held.force / lb)
    (True, 195)
    """
    check_size("depth", depth)
    check_size("width", width)
    check_amount("moment", moment, zero=True, hint="for example 5000*lb*ft, its size without a sign")
    needed = bool(depth > width)
    push = 1.5 * moment / depth
    condition = (
        "full-depth blocking, a rim board, a saddle or a cap at each end, so that the end cannot turn about"
        " the length of the beam"
        if needed
        else "no hold against rolling is asked for; the end is still tied down"
    )
    return Restraint(
        name="end of the beam against rolling",
        force=_bracing_share() * push if needed else 0.0,
        needed=needed,
        condition=condition,
        clause="NDS 2018 3.3.3, 4.4.1; IRC R502.7, R502.9",
        verified=_held_verified(),
    )


def post_top_restraint(*, axial):
    """Return what keeps the top of a post from kicking out sideways.

    Parameters
    ----------
    axial : float
        Push down the post [N].

    Returns
    -------
    Restraint
        A sideways force by the practice of bracing design, and the condition to verify [-].

    Notes
    -----
    IRC R502.9 asks for a positive connection of posts and beams against uplift and sideways movement; it
    names no force. 2 percent of the push is common practice.

    Examples
    --------
    >>> round(post_top_restraint(axial=10000 * lb).force / lb)
    200
    """
    check_amount("push down the post", axial, zero=True, hint="for example 10000*lb, its size without a sign")
    return Restraint(
        name="top of the post against kicking out",
        force=_bracing_share() * axial,
        needed=True,
        condition=(
            "a cap, straps or plates fixed to post and beam both ways, and the beam itself held by "
            "the floor or by blocking; the foot is held too"
        ),
        clause="IRC R502.9, R407.3",
        verified=_held_verified(),
    )


# ---- parts of the layout ----------------------------------------------------------------------------------


def _wants(fastener, found, rows, staggered):
    slender = None
    if not _by_nail_rule(fastener):
        slender = min(found.main_length, found.side_length) / fastener.diameter
    return least_distances(fastener, load="perpendicular", slenderness=slender, staggered=staggered and rows > 1)


def _by_nail_rule(fastener):
    """Thin fasteners: their rows run along the beam; those of bolts run with the load, down."""
    return is_thin(fastener.diameter)


def _line_gap(fastener, depth, rows, wants):
    """Distance between lines that are spread evenly over the depth; refused where they do not fit."""
    edge = wants["edge"][0]
    least = _least_gap(fastener, wants)
    room = depth - 2 * edge
    wanted = (rows - 1) * least
    if room < wanted - 1e-9 * depth or room < 0:
        most = 0 if room < 0 else floor(room / least + 1e-9) + 1
        raise OutsideRule(
            f"{rows} lines of {fastener.name} need {(2 * edge + wanted) / inch:.2f} in of depth "
            f"({edge / inch:.2f} in at each edge, {least / inch:.2f} in apart), the beam has "
            f"{depth / inch:.2f} in; {most} would fit"
        )
    if rows == 1:
        return 0.0
    # Each line in the middle of its strip of the depth, unless edges or neighbours ask for another place.
    return max(least, min(room / (rows - 1), depth / rows))


def _least_gap(fastener, wants):
    return wants["between rows"][0] if _by_nail_rule(fastener) else wants["in a row"][1]


def _edge(depth, gap, rows):
    return (depth - gap * (rows - 1)) / 2


def _spacing_to_use(fastener, needed, most, rows, staggered, wants):
    step = _scalar("rounding_of_spacing")
    spacing = floor(most / step + 1e-9) * step
    least = _least_spacing(fastener, rows, staggered, wants)
    if spacing < least <= needed:
        spacing = least  # whole inches would be too close, the exact least is not
    if spacing < least - 1e-9 * least:
        raise OutsideRule(
            f"{rows} lines of {fastener.name} would have to stand {needed / inch:.2f} in apart, closer than "
            f"the {least / inch:.2f} in at which the wood may split; take more lines, a stronger fastener, "
            "or bring the load in on top"
        )
    return spacing


def _least_spacing(fastener, rows, staggered, wants):
    """Least spacing along a line; bolts of two staggered lines have a neighbour at half of it."""
    if _by_nail_rule(fastener):
        return wants["in a row"][0]
    return wants["between rows"][0] * (2 if staggered and rows > 1 else 1)


def _check_one_in_line(fastener, spacing, gap, rows):
    """Staggered bolts too near each other, seen along the load, count as one row and share unevenly."""
    if _by_nail_rule(fastener) or rows == 1:
        return
    if spacing / 2 < gap / _scalar("one_row_ratio"):
        raise OutsideRule(
            f"{fastener.name}s staggered by {spacing / 2 / inch:.1f} in with lines {gap / inch:.1f} in apart "
            "count as one row in line with the load, and the group action factor for that is not in this "
            "library; take fewer lines or a stronger fastener"
        )


def _passing_check(load, value, rows, spacing, found, used, combination):
    given = fastener_flow(value=value, spacing=spacing, lines=rows)
    return Check(
        name="load passed between the plies",
        kind="ply fastening",
        sentence="load that hangs on one side must cross the fasteners to reach the other plies",
        asked=load,
        given=given,
        share=load / given,
        dimension="line load",
        position=0.0,
        where=f"between the outer plies, mode {found.mode}",
        combination=combination,
        clause="statics; NDS 2018 12.3.1, Table 11.3.1",
        formula="w (n - 1) / n <= rows * Z' / s",
        substitute=(
            ("w (n - 1) / n", load, "line load"),
            ("rows", float(rows), "count"),
            ("Z'", value, "force"),
            ("s", spacing, "small length"),
        ),
        factors=used,
        verified=least_verified([found.verified] + [factor.verified for factor in used]),
    )


def _distance_checks(fastener, *, edge, spacing, gap, rows, staggered, found):
    distances = {"edge": edge}
    if _by_nail_rule(fastener):
        distances["in a row"] = spacing
        if rows > 1:
            distances["between rows"] = gap
    else:
        distances["between rows"] = spacing / 2 if rows > 1 else spacing
    slender = min(found.main_length, found.side_length) / fastener.diameter
    return geometry_factor(
        fastener, distances, load="perpendicular", slenderness=slender, staggered=staggered and rows > 1
    )[1]


def _ply_conditions(fastener, plies, staggered):
    shared = [
        ("all plies of one wood, size and depth, each in one length from support to support or jointed over one"),
        "every ply rests on every support",
    ]
    if fastener.kind == "bolt":
        shared.append("bolts through all plies, with washers, snug; no two in line with the load")
    else:
        shared.append(
            "driven from the loaded face into the next ply"
            if plies == 2
            else "the same pattern between each two plies, driven as each ply is added"
        )
    if staggered:
        shared.append("neighbouring lines shifted by half a spacing")
    shared.append("engineered plies: the maker's own fastening table governs")
    return tuple(shared)


def _check_layout(plies, ply_width, depth, rows, staggered, fastener):
    check_plies(plies)
    check_size("ply width", ply_width)
    check_size("depth", depth)
    check_number("lines of fasteners", rows, low=1, high=8, hint="for example 2")
    if numpy.ndim(rows) or is_symbolic(rows) or rows % 1:
        raise BadInput(f"lines of fasteners must be a whole number from 1 to 8, got {rows!r}; for example 2")
    check_yes_or_no("staggered", staggered)
    if not isinstance(fastener, Fastener):
        raise BadInput(
            f"a fastener is made by nail, bolt or lag_screw, got {type(fastener).__name__}; "
            "for example nail('16d common')"
        )
    if not _by_nail_rule(fastener) and (rows > 2 or rows > 1 and not staggered):
        raise OutsideRule(
            f"{rows} lines of {fastener.name}s would stand in line with the load, where they do not share "
            "it evenly, and the group action factor for that is not in this library; take one line, or "
            "two that are staggered"
        )


def _scalar(key):
    return in_library_units(table_row("us_fasteners_factors", key=key), "value")


def _bracing_share():
    return _scalar("bracing_share")


def _held_verified():
    return least_verified(["recalled", table_row("us_fasteners_factors", key="bracing_share")["verified"]])


def _plf(load):
    return f"{load / plf:g} plf"


def _pounds(force):
    return f"{force / lb:g} lb"
