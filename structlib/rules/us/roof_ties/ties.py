"""Rafter ties, raised ties and collar ties (IRC 2021 R802.5.2, R802.4.6)."""

from dataclasses import dataclass

from structlib.ground.refusals import OutsideRule
from structlib.ground.tables import table_rows
from structlib.ground.units import inch  # noqa: F401 (for the examples)
from structlib.mechanics.frames import (
    raised_tie_bending_factor,
    raised_tie_factor,
    raised_tie_greatest_factor,
)
from structlib.rules.check import least_verified
from structlib.rules.us import factors
from structlib.rules.us.one_number import check_one_number
from structlib.rules.us.roof_ties.numbers import _FRACTION, _SLACK, _at_least, _at_most, _check_piece, _number

#: What each kind of tie does and does not do, for the reader.
TIE_WORDS = {
    "rafter tie": "in the lowest third: holds the two walls from being pushed apart",
    "between": "in the middle third: the code counts it neither as a rafter tie nor as a collar tie; "
    "what it does must be worked out, and the joint at the wall needs another answer",
    "collar tie": "in the upper third: keeps the rafters together at the ridge when wind lifts the "
    "roof; it does not hold the walls from being pushed apart",
}


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
    OutsideRule
        When the tie stands above the lowest third: then it is engineered; `raised_tie_demand` shows the
        demand.

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
        return TieAdjustment(0.0, 1.0, 1.0, 1.0, *_statics(0.0)[1:], "tie at the plate: no adjustment", "computed")
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
