"""Uplift: what a support must hold down, with only part of the dead load counted where it helps."""

from functools import lru_cache

import numpy

from structlib.ground.refusals import check_number
from structlib.ground.tables import table_row

BOOK = "ASCE 7-16"
CLAUSE = f"{BOOK} 2.4.1 (0.6 D)"


@lru_cache(maxsize=1)
def dead_that_counts():
    """Return the share of the dead load that may be counted against uplift, and how well it is known.

    Returns
    -------
    tuple of (float, str)
        The share and its verified word [-].

    Examples
    --------
    >>> dead_that_counts()
    (0.6, 'transcribed')
    """
    row = table_row("us_uplift", key="dead_against_uplift")
    return row["value"], row["verified"]


def hold_down_demand(*, dead_push, passing_push):
    """Return what must hold a support down: what lifts it, less 0.6 of the dead load that presses on it.

    Parameters
    ----------
    dead_push : float or numpy.ndarray
        Push of the support under dead load alone; negative where the dead load itself lifts [N].
    passing_push : float or numpy.ndarray
        Push of the support under load that comes and goes alone, arranged to lift most; negative where it lifts [N].

    Returns
    -------
    float or numpy.ndarray
        Force that holds the beam down; zero where nothing is needed [N].

    Notes
    -----
    ASCE 7-16 2.4.1: combination 7 counts 0.6 of the dead load against wind. It is used here for lift by
    live load too, where combination 2 (D + L) would count all of it; that is on the careful side. Dead load that
    lifts counts in full.

    Examples
    --------
    >>> hold_down_demand(dead_push=500.0, passing_push=-800.0)
    500.0
    """
    for name, push in (("dead push", dead_push), ("passing push", passing_push)):
        check_number(name, push, low=-1e9, high=1e9, shown=lambda force: f"{force:g} N", hint="upward is positive")
    share, _ = dead_that_counts()
    helps = numpy.where(numpy.asarray(dead_push) > 0, share, 1.0) * dead_push
    needed = numpy.maximum(0.0, -(helps + numpy.minimum(passing_push, 0.0)))
    return float(needed) if numpy.ndim(needed) == 0 else needed
