"""Nails of a heel joint: the code's table, what it rests on, and the count worked out."""

import math
from dataclasses import dataclass
from functools import cache

from structlib.ground.refusals import BadInput, OutsideRule
from structlib.ground.tables import in_library_units, table_row, table_rows
from structlib.ground.units import ft, inch, psf
from structlib.mechanics.frames import raised_tie_factor
from structlib.rules.check import least_verified
from structlib.rules.us.dowels import adjusted_value, lateral_value
from structlib.rules.us.one_number import check_one_number, inches_text, length_text
from structlib.rules.us.roof_ties.numbers import _SLACK, _check_spacing, _check_span
from structlib.rules.us.roof_ties.ties import raised_tie_adjustment, tie_kind
from structlib.rules.us.snow import GroundSnow

#: The layout of the heel joint table that the cells at hand have.
HEEL_EDITION = "IRC 2009 to 2015 layout"
#: The rule by which the nails of a joint are worked out.
NAIL_CLAUSE = "NDS 2018 12.3"


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
class HeelCount:
    """Nails of a heel joint to plan with: the larger of the code's table and the calculation, both named.

    ``by_table`` has the code's factor for a raised tie in it; ``words`` name both, their edition and rule,
    and how they are known.
    """

    nails: int
    by_table: int
    by_calculation: int
    words: str
    verified: str


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
    row = _row_of(*wanted.items())
    asked = (rise, spacing / inch, building_span / ft)
    listed = (wanted["rise"], wanted["spacing_in"], wanted["span_ft"])
    same_snow = pg / psf <= _listed("ground_snow_psf")[0] or math.isclose(pg / psf, wanted["ground_snow_psf"])
    return HeelCell(
        nails=int(row["nails"]),
        rise=wanted["rise"],
        spacing=row["spacing_in here"],
        ground_snow=row["ground_snow_psf here"],
        building_span=row["span_ft here"],
        exact=same_snow and all(math.isclose(a, b) for a, b in zip(asked, listed, strict=True)),
        edition=HEEL_EDITION,
        source=row["source"],
        verified=row["verified"],
    )


@cache
def _row_of(*wanted):
    """One cell's row of the table, with its lengths and its load in our units beside them."""
    row = table_row("us_heel_nails", **dict(wanted))
    return {
        **row,
        **{f"{key} here": in_library_units(row, key) for key in ("spacing_in", "ground_snow_psf", "span_ft")},
    }


@cache
def _listed(column):
    """The numbers of a column of the table, least first."""
    return sorted({row[column] for row in table_rows("us_heel_nails")})


def _next(column, value, *, text, down=False):
    """The listed number on the harder side: the flatter slope, else the next larger; outside is refused."""
    listed = _listed(column)
    fits = [one for one in listed if (one <= value * (1 + _SLACK) if down else one >= value * (1 - _SLACK))]
    if not fits:
        edge = f"starts at {listed[0]:g}" if down else f"ends at {listed[-1]:g}"
        raise OutsideRule(f"{text} is outside the heel joint table, which {edge}; the joint is engineered there")
    return fits[-1] if down else fits[0]


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


def heel_count(cell, worked_out, *, height_fraction=0.0):
    """Return the count to plan a heel joint with: the larger of the code's table and the calculation.

    Parameters
    ----------
    cell : HeelCell
        The table's cell, for a tie at the plate [-].
    worked_out : HeelNails
        The count by calculation, for the tie where it is [-].
    height_fraction : float
        Height of the tie over that of the ridge, up to one third; it raises the table's count [-].

    Returns
    -------
    HeelCount
        The larger count, and both by name [-].

    Raises
    ------
    OutsideRule
        When the tie stands above the lowest third, where the code has no factor.

    Notes
    -----
    IRC 2021 R802.5.2 for the table and its factor, NDS 2018 12.3.1 for the calculation.

    Examples
    --------
    >>> cell = HeelCell(7, 5.0, 406.4, 0.00144, 8534.4, False, HEEL_EDITION, "IRC", "recalled")
    >>> found = heel_count(cell, HeelNails(6, 4270.0, 722.0, "IV", (), "computed"), height_fraction=0.25)
    >>> found.nails, found.by_table, found.by_calculation
    (10, 10, 6)
    """
    factor = raised_tie_adjustment(height_fraction=height_fraction)
    by_table = math.ceil(cell.nails * factor.joint_factor - 1e-9)
    raised = f", times {factor.joint_factor:g} for the raised tie" if height_fraction else ""
    return HeelCount(
        nails=max(by_table, worked_out.nails),
        by_table=by_table,
        by_calculation=worked_out.nails,
        words=f"{by_table} by the code's table ({cell.edition}{raised}; {cell.verified}), "
        f"{worked_out.nails} by calculation ({NAIL_CLAUSE}; {worked_out.verified}): the larger counts",
        verified=least_verified([cell.verified, worked_out.verified, factor.verified]),
    )


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
