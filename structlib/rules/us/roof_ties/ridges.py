"""Ridge boards, and when the ridge must be a beam (IRC 2021 R802.3, R802.4.4)."""

import math
from dataclasses import dataclass

from structlib.ground.units import inch  # noqa: F401 (for the examples)
from structlib.rules.us.one_number import check_one_number, inches_text
from structlib.rules.us.roof_ties.numbers import _SLACK, _at_least, _check_slope, _dressed, _number, _row, _verified
from structlib.rules.us.roof_ties.ties import tie_kind


@dataclass(frozen=True)
class RidgeAnswer:
    """Whether the ridge must be a beam, and why; ``reasons`` are for the reader."""

    beam_needed: bool
    reasons: tuple[str, ...]
    clause: str
    verified: str


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

    Notes
    -----
    IRC 2021 R802.3, R802.4.4, R802.5.2.

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
    return RidgeAnswer(bool(reasons), tuple(reasons), _row("ridge_beam_rise")["source"], _verified("ridge_beam_rise"))
