"""Roof live load beside snow: which of the two asks more."""

from dataclasses import dataclass

from structlib.ground.tables import in_library_units, table_rows
from structlib.ground.units import ft
from structlib.rules.us import factors
from structlib.rules.us.one_number import check_one_number, psf_text
from structlib.rules.us.snow.ground_loads import _GREATEST_GROUND_SNOW, _SLACK, _one_slope


@dataclass(frozen=True)
class RoofLoadChoice:
    """Roof live load beside snow: which is larger, and which asks more of wood.

    ``roof_live`` and ``snow`` [MPa] on plan; ``larger`` names the larger; ``asks_more`` names the one whose
    sum with the dead load, over its load duration factor, is larger. ``live_over_time`` and
    ``snow_over_time`` [MPa] are those two sums.
    """

    roof_live: float
    snow: float
    larger: str
    asks_more: str
    live_over_time: float
    snow_over_time: float


def roof_live_load(*, rise, tributary_area, run=12):
    """Return the least roof live load on plan: people and material during work on the roof.

    Parameters
    ----------
    rise : float
        Rise of the roof in ``run`` [same unit as run].
    tributary_area : float
        Area in plan that the member carries [mm2].
    run : float
        Run of the roof [same unit as rise].

    Returns
    -------
    tuple of (float, str, str)
        Load on plan, its clause, and how it is known [MPa, -, -].

    Notes
    -----
    IRC 2021 Table R301.6. It acts in place of snow, not with it.

    Examples
    --------
    >>> from structlib.ground.units import psf
    >>> round(roof_live_load(rise=3, tributary_area=16*ft**2)[0] / psf, 6)
    20.0
    """
    _one_slope(rise, run)
    check_one_number(
        "tributary area",
        tributary_area,
        low=0.0,
        high=1e6 * ft**2,
        low_allowed=False,
        shown=lambda a: f"{a / ft**2:g} ft2",
        hint="for example 32*ft**2",
    )
    steep, area = 12.0 * rise / run, tributary_area / ft**2
    for row in table_rows("us_roof_live_loads"):  # the rows leave no gap: every slope and area has one
        flat_enough = row["rise_max"] is None or steep < row["rise_max"] * (1 - _SLACK)
        small_enough = row["area_max_ft2"] is None or area <= row["area_max_ft2"] * (1 + _SLACK)
        if flat_enough and small_enough:
            break
    return in_library_units(row, "area_load_psf"), row["source"], row["verified"]


def roof_live_or_snow(*, roof_live, snow, dead=0.0):
    """Set roof live load beside snow: they do not add, and wood bears the short one better.

    Parameters
    ----------
    roof_live : float
        Roof live load on plan [MPa].
    snow : float
        Roof snow on plan [MPa].
    dead : float
        Dead load on plan [MPa].

    Returns
    -------
    RoofLoadChoice
        Both, which is larger, and which asks more of wood [MPa, -].

    Notes
    -----
    ASCE 7-16 2.4.1: D + L_r or D + S. NDS 2018 Table 2.3.2: load duration 1.25 and 1.15. A sag goes by the
    larger load, whatever its duration.

    Examples
    --------
    >>> from structlib.ground.units import psf
    >>> found = roof_live_or_snow(roof_live=20*psf, snow=19*psf, dead=10*psf)
    >>> found.larger, found.asks_more
    ('roof live', 'snow')
    """
    for name, load in (("roof live load", roof_live), ("roof snow", snow), ("dead load", dead)):
        check_one_number(name, load, low=0.0, high=_GREATEST_GROUND_SNOW, shown=psf_text)
    live_time, snow_time = (factors.time_factor(["dead", word])[0] for word in ("roof live", "snow"))
    live_over, snow_over = (dead + roof_live) / live_time, (dead + snow) / snow_time
    return RoofLoadChoice(
        roof_live=roof_live,
        snow=snow,
        larger="roof live" if roof_live > snow else "snow",
        asks_more="roof live" if live_over > snow_over else "snow",
        live_over_time=live_over,
        snow_over_time=snow_over,
    )
