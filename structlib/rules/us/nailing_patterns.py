"""Nailing patterns of built-up beams that are loaded on top: they hold the plies together, no more."""

from dataclasses import dataclass
from functools import cache

from structlib.ground.records import measured
from structlib.ground.tables import in_library_units, table_rows


@dataclass(frozen=True, kw_only=True)
class NailingPattern:
    """A published or customary nailing of a beam loaded on top: it holds the plies together, no more.

    Parameters
    ----------
    name : str
        Which pattern [-].
    nail : str
        Nail [-].
    spacing : float
        Spacing along each line [mm].
    lines : int
        Lines along the beam [-].
    pattern : str
        How the nails stand [-].
    source : str
        Where it is from [-].
    verified : str
        How it is known [-].
    note : str
        What else is to be known [-].

    Examples
    --------
    >>> top_loaded_patterns()[0].nail
    '20d common'
    """

    name: str = measured("text", "pattern")
    nail: str = measured("text", "nail")
    spacing: float = measured("section length", "spacing along each line")
    lines: int = measured("count", "lines along the beam")
    pattern: str = measured("text", "how the nails stand")
    source: str = measured("text", "source")
    verified: str = measured("text", "how it is known")
    note: str = measured("text", "note", default="")


@cache
def top_loaded_patterns():
    """List nailing patterns for beams loaded on top, evenly on all plies.

    Returns
    -------
    tuple of NailingPattern
        The patterns, each with how it is known [-].

    Notes
    -----
    They only hold the plies together. All plies must rest on the posts, and the load must reach all of them.

    Examples
    --------
    >>> [one.verified for one in top_loaded_patterns()]
    ['seen', 'recalled', 'seen', 'seen']
    """
    return tuple(
        NailingPattern(
            name=row["pattern_name"],
            nail=row["nail"],
            spacing=in_library_units(row, "spacing_in"),
            lines=int(row["lines"]),
            pattern=row["pattern"],
            source=row["source"],
            verified=row["verified"],
            note=row["note"],
        )
        for row in table_rows("us_fasteners_schedules")
    )


def usual_pattern():
    """Return the pattern of `top_loaded_patterns` with the closest nails, to name where nothing is asked.

    Returns
    -------
    NailingPattern
        The pattern [-].

    Examples
    --------
    >>> usual_pattern().nail, round(usual_pattern().spacing, 1)
    ('16d common', 304.8)
    """
    return min(top_loaded_patterns(), key=lambda one: one.spacing / one.lines)
