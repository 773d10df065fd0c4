"""Rafter ties, collar ties, ridges and heel joints (IRC 2021 R802), and bolted joints in rafters (NDS 2018).

What the code lists is looked up and never stretched; what a joint is asked for is worked out beside it. How
a pair of rafters stands is in ``structlib.mechanics.frames``.
"""

import math
from dataclasses import dataclass
from functools import lru_cache

import numpy

from structlib.ground.refusals import BadInput, OutsideRule
from structlib.ground.tables import in_library_units, table_row, table_rows
from structlib.ground.units import ft, inch, psf
from structlib.mechanics.fastener_groups import fastener_forces, greatest_fastener_force, group_centre
from structlib.mechanics.frames import (
    rafter_thrust,
    raised_tie_bending_factor,
    raised_tie_factor,
    raised_tie_greatest_factor,
)
from structlib.rules.check import Check, least_verified
from structlib.rules.us import factors
from structlib.rules.us.combined import tension_value
from structlib.rules.us.dowels import MODE_WORDS, adjusted_value, geometry_factor, lateral_value
from structlib.rules.us.inputs import check_yes_or_no
from structlib.rules.us.one_number import check_one_number, inches_text, length_text
from structlib.rules.us.snow import BASIS, GroundSnow

#: The layout of the heel joint table that the cells at hand have.
HEEL_EDITION = "IRC 2009 to 2015 layout"

#: What each kind of tie does and does not do, for the reader.
TIE_WORDS = {
    "rafter tie": "in the lowest third: holds the two walls from being pushed apart",
    "between": "in the middle third: the code counts it neither as a rafter tie nor as a collar tie; "
    "what it does must be worked out, and the joint at the wall needs another answer",
    "collar tie": "in the upper third: keeps the rafters together at the ridge when wind lifts the "
    "roof; it does not hold the walls from being pushed apart",
}

_TABLE = "us_roof_tie_rules"
_SLACK = 1e-9
_FRACTION = {"low": 0.0, "high": 0.95, "hint": "0 at the wall plate, 1/3 at a third of the height"}


@dataclass(frozen=True)
class TieAdjustment:
    """What raising a tie does, by the code's table and by statics; plain numbers.

    ``span_factor`` multiplies the span of the rafter table, ``joint_factor`` the nails of the heel joint;
    both are None where the code has no number. ``exact_joint_factor`` is 1 / (1 - a), ``moment_at_tie``
    and ``greatest_moment`` are multiples of the moment of the rafter with its tie at the plate.
    ``row`` says which row of the table was taken.
    """

    height_fraction: float
    span_factor: float | None
    joint_factor: float | None
    exact_joint_factor: float
    moment_at_tie: float
    greatest_moment: float
    row: str
    verified: str


@dataclass(frozen=True)
class RidgeAnswer:
    """Whether the ridge must be a beam, and why; ``reasons`` are for the reader."""

    beam_needed: bool
    reasons: tuple[str, ...]
    clause: str
    verified: str


@dataclass(frozen=True)
class HeelCell:
    """One cell of the heel joint table, and the row and column it stands in.

    ``rise`` in 12; ``spacing`` and ``building_span`` [mm]; ``ground_snow`` [MPa]. ``exact`` is False where a
    harder cell was taken because the case lies between two.
    """

    nails: int
    rise: float
    spacing: float
    ground_snow: float
    building_span: float
    exact: bool
    edition: str
    source: str
    verified: str


@dataclass(frozen=True)
class HeelComparison:
    """The heel joint table beside a thrust calculation: how many cells agree, and by how much others do not.

    ``differences`` are (rise, spacing in, ground snow psf, span ft, printed, worked out) of cells that
    differ.
    """

    cells: int
    same: int
    worst: int
    snow_cells: int
    snow_same: int
    differences: tuple[tuple, ...]


@dataclass(frozen=True)
class HeelNails:
    """Nails that a heel joint needs by calculation.

    ``demand`` [N] on the joint, ``value`` [N] of one nail as adjusted, ``mode`` in which it yields.
    """

    nails: int
    demand: float
    value: float
    mode: str
    factors: tuple
    verified: str


@dataclass(frozen=True)
class HeelLoad:
    """What one heel joint of the fitted model is pushed with: ``load`` [MPa] on plan and ``thrust`` [N]."""

    load: float
    thrust: float
    nails: int


@lru_cache(maxsize=None)
def _row(key):
    return table_row(_TABLE, key=key)


def _number(key):
    return in_library_units(_row(key), "value")


def _verified(*keys):
    return least_verified(_row(key)["verified"] for key in keys)


# ---- ties -------------------------------------------------------------------------------------------------


def tie_kind(*, height_fraction):
    """Tell what a tie between two rafters counts as, from its height.

    Parameters
    ----------
    height_fraction : float
        Height of the tie above the plate over the height of the ridge above it [-].

    Returns
    -------
    str
        ``rafter tie``, ``between`` or ``collar tie``; TIE_WORDS says what each does [-].

    Raises
    ------
    BadInput
        When the height is not a number from 0 to 0.95.

    Notes
    -----
    IRC 2021 R802.5.2 (lowest third), R802.4.6 (upper third).

    Examples
    --------
    >>> [tie_kind(height_fraction=a) for a in (0.3, 0.5, 0.8)]
    ['rafter tie', 'between', 'collar tie']
    """
    check_one_number("height fraction of the tie", height_fraction, **_FRACTION)
    if height_fraction <= _lowest_third() * (1 + _SLACK):
        return "rafter tie"
    upper = 1 - 1 / _number("collar_tie_height_divisor")
    return "collar tie" if height_fraction >= upper * (1 - _SLACK) else "between"


def _lowest_third():
    return 1 / _number("rafter_tie_height_divisor")


def raised_tie_adjustment(*, height_fraction):
    """Return what the code asks for a tie above the plate, beside what statics says.

    Parameters
    ----------
    height_fraction : float
        Height of the tie H_C over the height of the ridge H_R, both above the plate; up to one third [-].

    Returns
    -------
    TieAdjustment
        Factors of the table row for this height, or for the next higher one [-].

    Raises
    ------
    BadInput
        When the height is not a number from 0 to 0.95.
    OutsideRule
        When the tie stands above the lowest third: then it is engineered; `raised_tie_demand` shows
        the demand.

    Notes
    -----
    IRC 2021 R802.5.2 and table notes. The printed span factors are 1 / sqrt of the moment AT the tie; below
    0.293 of the height the greatest moment stands above the tie and is larger, which the table leaves out.

    Examples
    --------
    >>> found = raised_tie_adjustment(height_fraction=1/4)
    >>> found.span_factor, found.joint_factor, round(found.moment_at_tie, 3), round(found.greatest_moment, 3)
    (0.76, 1.33, 1.75, 1.778)
    """
    check_one_number("height fraction of the tie", height_fraction, **_FRACTION)
    limit = _lowest_third()
    if height_fraction > limit * (1 + _SLACK):
        raise OutsideRule(
            f"a tie at {height_fraction:.2f} of the height is above the lowest third, where the code has "
            "no factors: the joint and the rafter are engineered, or the ridge becomes a beam; "
            "raised_tie_demand shows what is asked of them"
        )
    if height_fraction == 0:
        return TieAdjustment(
            0.0, 1.0, 1.0, 1.0, *_statics(0.0)[1:], "tie at the plate: no adjustment", "seen"
        )
    span, joint = _tie_row("rafter span", height_fraction), _tie_row("heel joint", height_fraction)
    rows = f"rafter span 1/{span['height_divisor']:g}, heel joint 1/{joint['height_divisor']:g}"
    return TieAdjustment(
        height_fraction,
        span["value"],
        joint["value"],
        *_statics(height_fraction),
        rows,
        least_verified([span["verified"], joint["verified"]]),
    )


def raised_tie_demand(*, height_fraction):
    """Return what statics asks of a raised tie at any height, with no verdict and no factor of the code.

    Parameters
    ----------
    height_fraction : float
        Height of the tie over the height of the ridge, both above the plate; 0 to 0.95 [-].

    Returns
    -------
    TieAdjustment
        Multiples of the tie force and of the moment; ``span_factor`` and ``joint_factor`` are None [-].

    Raises
    ------
    BadInput
        When the height is not a number from 0 to 0.95.

    Examples
    --------
    >>> found = raised_tie_demand(height_fraction=0.5)
    >>> found.exact_joint_factor, found.greatest_moment
    (2.0, 3.0)
    """
    check_one_number("height fraction of the tie", height_fraction, **_FRACTION)
    above = height_fraction > _lowest_third() * (1 + _SLACK)
    row = "above the lowest third: engineered" if above else "statics, no row of the table"
    return TieAdjustment(height_fraction, None, None, *_statics(height_fraction), row, "computed")


def _statics(height_fraction):
    return (
        float(raised_tie_factor(height_fraction=height_fraction)),
        float(raised_tie_bending_factor(height_fraction=height_fraction)),
        float(raised_tie_greatest_factor(height_fraction=height_fraction)),
    )


def _tie_row(adjusts, height_fraction):
    """The row of the lowest listed tie that is as high or higher: the careful side between two rows."""
    rows = [row for row in table_rows("us_raised_ties") if row["adjusts"] == adjusts]
    fitting = [row for row in rows if 1 / row["height_divisor"] >= height_fraction * (1 - _SLACK)]
    return max(fitting, key=lambda row: row["height_divisor"])


def rafter_tie_checks(*, width, depth, spacing):
    """Return the checks of the least size and greatest spacing of rafter ties.

    Parameters
    ----------
    width : float
        Thickness of the tie [mm].
    depth : float
        Depth of the tie [mm].
    spacing : float
        Spacing of the ties along the roof [mm].

    Returns
    -------
    tuple of structlib.rules.check.Check
        Thickness, depth, spacing [mm].

    Raises
    ------
    BadInput
        When a length is not a number above zero.

    Notes
    -----
    IRC 2021 R802.5.2.2: 2x4 and 24 in. Whether such a tie carries its pull is another question.

    Examples
    --------
    >>> [round(one.share, 2) for one in rafter_tie_checks(width=1.5*inch, depth=5.5*inch, spacing=16*inch)]
    [1.0, 0.64, 0.67]
    """
    _check_piece(width, depth, spacing)
    return (
        _at_least(
            "thickness of the rafter tie",
            factors.dressed_of(_number("rafter_tie_thickness")),
            width,
            "rafter_tie_thickness",
        ),
        _at_least(
            "depth of the rafter tie",
            factors.dressed_of(_number("rafter_tie_depth")),
            depth,
            "rafter_tie_depth",
        ),
        _at_most("spacing of the rafter ties", spacing, _number("rafter_tie_spacing"), "rafter_tie_spacing"),
    )


def collar_tie_checks(*, width, depth, spacing, height_fraction):
    """Return the checks of collar ties, which hold the ridge together and never the walls.

    Parameters
    ----------
    width : float
        Thickness of the collar tie [mm].
    depth : float
        Depth of the collar tie [mm].
    spacing : float
        Spacing along the roof [mm].
    height_fraction : float
        Height of the tie over the height of the ridge, both above the plate; from two thirds up [-].

    Returns
    -------
    tuple of structlib.rules.check.Check
        Thickness, depth, spacing [mm].

    Raises
    ------
    BadInput
        When an input is not a number in its range.
    OutsideRule
        When the tie stands below the upper third, where it is no collar tie.

    Notes
    -----
    IRC 2021 R802.4.6: 1x4 and 4 ft, or a ridge strap instead.

    Examples
    --------
    >>> found = collar_tie_checks(width=0.75*inch, depth=3.5*inch, spacing=48*inch, height_fraction=0.7)
    >>> [round(one.share, 2) for one in found]
    [1.0, 1.0, 1.0]
    """
    _check_piece(width, depth, spacing)
    kind = tie_kind(height_fraction=height_fraction)
    if kind != "collar tie":
        raise OutsideRule(
            f"a tie at {height_fraction:.2f} of the height is no collar tie, which stands in the upper "
            f"third; {TIE_WORDS[kind]}"
        )
    return (
        _at_least(
            "thickness of the collar tie",
            _dressed(_number("collar_tie_thickness")),
            width,
            "collar_tie_thickness",
        ),
        _at_least(
            "depth of the collar tie",
            factors.dressed_of(_number("collar_tie_depth")),
            depth,
            "collar_tie_depth",
        ),
        _at_most("spacing of the collar ties", spacing, _number("collar_tie_spacing"), "collar_tie_spacing"),
    )


# ---- the ridge --------------------------------------------------------------------------------------------


def ridge_board_checks(*, board_width, board_depth, rafter_depth, rise, run=12):
    """Return the checks of a ridge board: thick enough, and as deep as the cut ends of the rafters.

    Parameters
    ----------
    board_width : float
        Thickness of the ridge board [mm].
    board_depth : float
        Depth of the ridge board [mm].
    rafter_depth : float
        Depth of the rafters, square to their length [mm].
    rise : float
        Rise of the roof in ``run`` [same unit as run].
    run : float
        Run of the roof [same unit as rise].

    Returns
    -------
    tuple of structlib.rules.check.Check
        Thickness, depth [mm].

    Raises
    ------
    BadInput
        When an input is not a number in its range.

    Notes
    -----
    IRC 2021 R802.3. A ridge board carries no load: it gives the rafters something to lean on.

    Examples
    --------
    >>> found = ridge_board_checks(board_width=0.75*inch, board_depth=7.25*inch, rafter_depth=5.5*inch,
    ...     rise=12)
    >>> [round(one.share, 3) for one in found]
    [1.0, 1.073]
    """
    for name, value in (
        ("board width", board_width),
        ("board depth", board_depth),
        ("rafter depth", rafter_depth),
    ):
        check_one_number(
            name,
            value,
            low=0.0,
            high=3000.0,
            low_allowed=False,
            shown=inches_text,
            hint="for example 7.25*inch",
        )
    _check_slope(rise, run)
    cut = rafter_depth * math.hypot(rise, run) / run
    return (
        _at_least(
            "thickness of the ridge board",
            _dressed(_number("ridge_board_thickness")),
            board_width,
            "ridge_board_thickness",
        ),
        _at_least("depth of the ridge board", cut, board_depth, "ridge_board_thickness"),
    )


def ridge_beam_needed(*, rise, tie_height_fraction, run=12):
    """Tell whether the ridge must be a beam that carries load, rather than a board.

    Parameters
    ----------
    rise : float
        Rise of the roof in ``run`` [same unit as run].
    tie_height_fraction : float or None
        Height of joists or rafter ties over the height of the ridge; None where there are none [-].
    run : float
        Run of the roof [same unit as rise].

    Returns
    -------
    RidgeAnswer
        The answer with its reasons [-].

    Raises
    ------
    BadInput
        When an input is not a number in its range.

    Notes
    -----
    IRC 2021 R802.3, R802.4.4, R802.5.2, recalled.

    Examples
    --------
    >>> ridge_beam_needed(rise=6, tie_height_fraction=0.0).beam_needed
    False
    >>> ridge_beam_needed(rise=6, tie_height_fraction=None).reasons[0]
    'no ceiling joist or rafter tie holds the walls'
    """
    _check_slope(rise, run)
    reasons, least = [], _number("ridge_beam_rise")
    if 12.0 * rise / run < least * (1 - _SLACK):
        reasons.append(f"the slope is under {least:g} in 12")
    if tie_height_fraction is None:
        reasons.append("no ceiling joist or rafter tie holds the walls")
    elif tie_kind(height_fraction=tie_height_fraction) != "rafter tie":
        reasons.append("the ties stand above the lowest third of the height")
    return RidgeAnswer(
        bool(reasons), tuple(reasons), _row("ridge_beam_rise")["source"], _verified("ridge_beam_rise")
    )


# ---- the heel joint, by table -----------------------------------------------------------------------------


def heel_table_nails(*, rise, spacing, ground_snow, building_span, edition):
    """Look up the nails of a heel joint; between two cells the harder one is taken, and none is stretched.

    Parameters
    ----------
    rise : float
        Rise of the roof in 12, from 3 up [-].
    spacing : float
        Spacing of the rafters, up to 24 in [mm].
    ground_snow : structlib.rules.us.snow.GroundSnow
        Ground snow load with its basis, up to 70 psf; up to 20 psf stands for roof live load too [MPa].
    building_span : float
        Span of the roof from wall to wall, up to 36 ft [mm].
    edition : str
        Edition of the table: ``IRC 2009 to 2015 layout`` [-].

    Returns
    -------
    HeelCell
        Count of 16d common nails and the cell it stands in [-].

    Raises
    ------
    BadInput
        When an input is not a number in its range, or the ground snow has no basis.
    OutsideRule
        When the case lies outside the table, or another edition is asked for.

    Notes
    -----
    IRC Table R802.5.1(9), since 2018 R802.5.2. Every cell here is recalled, none was seen.

    Examples
    --------
    >>> from structlib.rules.us.snow import ground_snow
    >>> snow = ground_snow(30*psf, edition="ASCE 7-16", basis="allowable-stress ground snow of ASCE 7-16")
    >>> found = heel_table_nails(rise=6, spacing=16*inch, ground_snow=snow, building_span=24*ft,
    ...     edition=HEEL_EDITION)
    >>> found.nails, found.rise, found.exact
    (7, 5.0, False)
    """
    if edition != HEEL_EDITION:
        raise OutsideRule(
            f"the cells at hand are of the {HEEL_EDITION}, got edition {edition!r}; look the joint up in "
            f"the edition in force, or ask with edition={HEEL_EDITION!r}"
        )
    pg = _checked_snow(ground_snow)
    check_one_number("rise", rise, low=0.0, high=60, low_allowed=False, hint="for example 6, in 12")
    _check_spacing(spacing)
    _check_span(building_span)
    wanted = {
        "rise": _next("rise", rise, down=True, text=f"a slope of {rise:g} in 12"),
        "spacing_in": _next("spacing_in", spacing / inch, text=f"a spacing of {inches_text(spacing)}"),
        "ground_snow_psf": _next("ground_snow_psf", pg / psf, text=f"a ground snow of {pg / psf:g} psf"),
        "span_ft": _next("span_ft", building_span / ft, text=f"a span of {length_text(building_span)}"),
    }
    row = table_row("us_heel_nails", **wanted)
    asked = (rise, spacing / inch, building_span / ft)
    listed = (wanted["rise"], wanted["spacing_in"], wanted["span_ft"])
    same_snow = pg / psf <= 20 or math.isclose(pg / psf, wanted["ground_snow_psf"])
    return HeelCell(
        nails=int(row["nails"]),
        rise=wanted["rise"],
        spacing=in_library_units(row, "spacing_in"),
        ground_snow=in_library_units(row, "ground_snow_psf"),
        building_span=in_library_units(row, "span_ft"),
        exact=same_snow and all(math.isclose(a, b) for a, b in zip(asked, listed, strict=True)),
        edition=HEEL_EDITION,
        source=row["source"],
        verified=row["verified"],
    )


def _next(column, value, *, text, down=False):
    """The listed number on the harder side: the flatter slope, else the next larger; outside is refused."""
    listed = sorted({row[column] for row in table_rows("us_heel_nails")})
    fits = [one for one in listed if (one <= value * (1 + _SLACK) if down else one >= value * (1 - _SLACK))]
    if not fits:
        edge = f"starts at {listed[0]:g}" if down else f"ends at {listed[-1]:g}"
        raise OutsideRule(
            f"{text} is outside the heel joint table, which {edge}; the joint is engineered there"
        )
    return fits[-1] if down else fits[0]


def heel_model(*, rise, spacing, ground_snow, building_span, nail_value=None):
    """Work out the nails of a heel joint as the table seems to have been made: a fit, not a rule.

    Parameters
    ----------
    rise : float
        Rise of the roof in 12 [-].
    spacing : float
        Spacing of the rafters [mm].
    ground_snow : structlib.rules.us.snow.GroundSnow
        Ground snow load [MPa].
    building_span : float
        Span of the roof from wall to wall, more than twice the overhang [mm].
    nail_value : float or None
        Value of one nail; that of the fit when None [N].

    Returns
    -------
    HeelLoad
        Load on plan, thrust of a pair, nails [MPa, N, -].

    Raises
    ------
    BadInput
        When an input is not a number in its range.

    Notes
    -----
    Thrust of a pair with an overhang o on either side, w (L^2 - 4 o^2) / (8 h): the overhangs balance part of
    it. Fitted: dead 10 psf; snow 0.7 p_g or roof live 20 psf, whichever is more; o = 2 ft; 110 lb a nail.

    Examples
    --------
    >>> from structlib.ground.units import lb
    >>> from structlib.rules.us.snow import ground_snow
    >>> snow = ground_snow(50*psf, edition="ASCE 7-16", basis="allowable-stress ground snow of ASCE 7-16")
    >>> found = heel_model(rise=4, spacing=16*inch, ground_snow=snow, building_span=28*ft)
    >>> found.nails, round(found.load / psf, 6), round(found.thrust / lb, 1)
    (12, 45.0, 1234.3)
    """
    pg = _checked_snow(ground_snow)
    check_one_number("rise", rise, low=0.0, high=60, low_allowed=False, hint="for example 6, in 12")
    _check_spacing(spacing)
    _check_span(building_span)
    value = _number("heel_model_nail") if nail_value is None else nail_value
    check_one_number("nail value", value, low=0.0, high=1e5, low_allowed=False, hint="for example 141*lb")
    across = 2 * _number("heel_model_overhang")
    if building_span <= across:
        raise BadInput(
            f"the span must be more than the two overhangs, {length_text(across)}, got "
            f"{length_text(building_span)}; for example 24*ft"
        )
    load = _number("heel_model_dead") + max(
        _number("heel_model_snow_share") * pg, _number("heel_model_roof_live")
    )
    height = building_span / 2 * rise / 12
    # an overhang on both sides takes away as much as a pair that spans the two of them would push
    thrust = rafter_thrust(
        line_load=load * spacing, building_span=building_span, rise=height
    ) - rafter_thrust(line_load=load * spacing, building_span=across, rise=height)
    nails = max(int(_number("heel_least_nails")), math.ceil(thrust / value - 1e-9))
    return HeelLoad(load, float(thrust), nails)


def compare_heel_table(*, nail_value=None):
    """Set every cell of the heel joint table beside the fitted model, or beside it with another nail.

    Parameters
    ----------
    nail_value : float or None
        Value of one nail; that of the fit when None [N].

    Returns
    -------
    HeelComparison
        Counts, the worst difference in nails, and the cells that differ [-].

    Raises
    ------
    BadInput
        When the nail value is not a number above zero.

    Notes
    -----
    The cells under snow all come out of the fit. Under 20 psf, the column that also stands for roof live
    load, some differ by one nail; no simple load was found that gives them all. A 16d common nail is worth
    more today (162 lb in Douglas fir under snow) than the 110 lb of the fit, so a count of nails by
    calculation comes out lower than the table.

    Examples
    --------
    >>> found = compare_heel_table()
    >>> found.cells, found.same, found.worst, found.snow_cells, found.snow_same
    (288, 274, 1, 216, 216)
    """
    cells, differences, snow_cells, snow_same = 0, [], 0, 0
    for row in table_rows("us_heel_nails"):
        found = heel_model(
            rise=row["rise"],
            spacing=in_library_units(row, "spacing_in"),
            ground_snow=GroundSnow(in_library_units(row, "ground_snow_psf"), "ASCE 7-16", BASIS),
            building_span=in_library_units(row, "span_ft"),
            nail_value=nail_value,
        ).nails
        cells += 1
        snowy = row["ground_snow_psf"] > 20
        snow_cells += snowy
        snow_same += snowy and found == row["nails"]
        if found != row["nails"]:
            where = (row["rise"], row["spacing_in"], row["ground_snow_psf"], row["span_ft"])
            differences.append((*where, int(row["nails"]), found))
    worst = max((abs(one[4] - one[5]) for one in differences), default=0)
    return HeelComparison(cells, cells - len(differences), worst, snow_cells, snow_same, tuple(differences))


# ---- the heel joint, by calculation -----------------------------------------------------------------------


def heel_joint_nails(*, thrust, fastener, rafter, tie, time_factor, height_fraction=0.0, moisture="dry"):
    """Return how many nails a heel joint needs for a thrust, from the yield of one nail.

    Parameters
    ----------
    thrust : float
        Thrust of the pair with its tie at the plate [N].
    fastener : structlib.rules.us.dowels.Fastener
        The nail [-].
    rafter : structlib.rules.us.dowels.JoinedPiece
        The piece that holds the point [-].
    tie : structlib.rules.us.dowels.JoinedPiece
        The piece under the head [-].
    time_factor : float
        Load duration factor C_D [-].
    height_fraction : float
        Height of the tie over that of the ridge; the pull is 1 / (1 - a) times the thrust [-].
    moisture : str
        ``dry``, ``wet in service`` or ``wet when built`` [-].

    Returns
    -------
    HeelNails
        Count, demand, value of one nail [-, N, N].

    Raises
    ------
    BadInput
        When an input is no such thing.
    OutsideRule
        When the nail does not reach far enough, or a piece is outside the rule; or the tie stands above the
        lowest third, where a count of nails is no answer of the code.

    Notes
    -----
    NDS 2018 12.3.1, Table 11.3.1. Room for the nails, without splitting, is another question.

    Examples
    --------
    >>> from structlib.ground.units import lb
    >>> from structlib.rules.us.dowels import nail, wood_piece
    >>> fir = wood_piece(thickness=1.5 * inch, specific_gravity=0.5)
    >>> found = heel_joint_nails(thrust=960*lb, fastener=nail("16d common"), rafter=fir, tie=fir,
    ...     time_factor=1.15)
    >>> found.nails, round(found.value / lb)
    (6, 162)
    """
    check_one_number("thrust", thrust, low=0.0, high=1e7, hint="for example 960*lb")
    if tie_kind(height_fraction=height_fraction) != "rafter tie":
        raise OutsideRule(
            f"a tie at {height_fraction:.2f} of the height is above the lowest third: its joint is "
            "engineered; raised_tie_demand shows what is asked of it"
        )
    found = lateral_value(fastener, main=rafter, side=tie)
    value, used = adjusted_value(found, fastener, time_factor=time_factor, moisture=moisture)
    demand = float(thrust * raised_tie_factor(height_fraction=height_fraction))
    return HeelNails(
        nails=max(1, math.ceil(demand / value - 1e-9)) if demand else 0,
        demand=demand,
        value=float(value),
        mode=found.mode,
        factors=used,
        verified=least_verified([found.verified, *(one.verified for one in used)]),
    )


# ---- bolts in old rafters ---------------------------------------------------------------------------------


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
    BadInput
        When an input is no such thing, or a hole lies outside the tie.
    OutsideRule
        When a distance is under the least, bolts stand in one line along the pull, or a rule does not cover
        the case.

    Notes
    -----
    NDS 2018 3.1.2 (net section; staggered bolts closer than 4 diameters count as one section), 3.8.1, 12.3,
    12.5.1, recalled. How an old rafter lost section to a bolt hole where it bends is not here; nor are
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


def net_section_check(
    *, pull, material, width, depth, diameter, places, time_factor, wet=False, combination=""
):
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
    BadInput
        When an input is no such thing, or the holes leave no section.
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
        raise BadInput(
            f"{holes} holes of {inches_text(hole)} leave nothing of a piece {inches_text(depth)} deep"
        )
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
        verified=least_verified(
            [material.verified, _verified("bolt_hole_over"), *(one.verified for one in used)]
        ),
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


# ---- small helpers ----------------------------------------------------------------------------------------


def _at_least(name, least, has, key):
    return _size_check(name, least, has, least / has, "least <= size", key)


def _at_most(name, has, most, key):
    return _size_check(name, has, most, has / most, "size <= most", key)


def _size_check(name, asked, given, share, formula, key):
    row = _row(key)
    symbols = formula.split(" <= ")
    return Check(
        name=name,
        kind="size",
        sentence=row["meaning"],
        asked=float(asked),
        given=float(given),
        share=float(share),
        dimension="section length",
        position=0.0,
        where=name,
        combination="any",
        clause=row["source"],
        formula=formula,
        substitute=(
            (symbols[0], float(asked), "section length"),
            (symbols[1], float(given), "section length"),
        ),
        verified=row["verified"],
    )


def _dressed(nominal):
    return _number("dressed_one_inch") if nominal == 1 else factors.dressed_of(nominal)


def _check_piece(width, depth, spacing):
    for name, value in (("width", width), ("depth", depth)):
        check_one_number(
            name,
            value,
            low=0.0,
            high=3000.0,
            low_allowed=False,
            shown=inches_text,
            hint="for example 1.5*inch",
        )
    _check_spacing(spacing)


def _check_spacing(spacing):
    check_one_number(
        "spacing",
        spacing,
        low=0.0,
        high=20 * ft,
        low_allowed=False,
        shown=inches_text,
        hint="for example 16*inch",
    )


def _check_span(span):
    check_one_number(
        "span", span, low=0.0, high=200 * ft, low_allowed=False, shown=length_text, hint="for example 24*ft"
    )


def _check_slope(rise, run):
    check_one_number("rise", rise, low=0.0, high=60, hint="for example rise 6 in run 12")
    check_one_number("run", run, low=0.0, high=60, low_allowed=False, hint="for example rise 6 in run 12")


def _checked_snow(ground_snow):
    if not isinstance(ground_snow, GroundSnow):
        raise BadInput(
            f"the ground snow load needs its edition and basis, got {type(ground_snow).__name__}; make "
            "it with ground_snow(40*psf, edition='ASCE 7-16', basis=...)"
        )
    return float(
        check_one_number(
            "ground snow load", ground_snow.value, low=0.0, high=400 * psf, shown=lambda p: f"{p / psf:g} psf"
        )
    )
