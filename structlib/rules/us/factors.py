"""The numbers of the United States rules, looked up in data/ by the words the rules use.

No published number stands in code: every one is a row of a table with its source.
"""

from functools import cache, lru_cache

import numpy

from structlib.ground.refusals import BadInput, OutsideRule, check_choice
from structlib.ground.tables import table_rows
from structlib.ground.units import inch
from structlib.rules.check import least_verified
from structlib.rules.us.inputs import check_size, check_words

#: Shortest-lasting first: the first type present sets the time factor.
_TIME_KEYS = (
    ("roof live", "load_duration_roof_live"),
    ("snow", "load_duration_snow"),
    ("live", "load_duration_live"),
    ("dead", "load_duration_dead"),
)


@cache
def _scalars():
    return {row["key"]: row for row in table_rows("us_factors")}


def _row(key):
    rows = _scalars()
    if not (isinstance(key, str) and key in rows):
        check_choice("factor", key, rows)
    return rows[key]


def scalar(key):
    """Return one plain number of the rules.

    Parameters
    ----------
    key : str
        Key of a row in data/us_factors.csv [-].

    Returns
    -------
    float
        The number [-].

    Examples
    --------
    >>> scalar("creep_dry")
    1.5
    """
    return _row(key)["value"]


def length(key):
    """Return one length of the rules.

    Parameters
    ----------
    key : str
        Key of a row in data/us_factors.csv whose unit is in [-].

    Returns
    -------
    float
        The length [mm].

    Examples
    --------
    >>> round(length("bearing_area_greatest_length") / inch, 6)
    6.0
    """
    row = _row(key)
    if row["unit"] != "in":
        raise BadInput(
            f"factor {key!r} is in {row['unit']!r}, not a length in inches; "
            "for example 'bearing_area_greatest_length' is one"
        )
    return row["value"] * inch


def verified(key):
    """Return how well one number of the rules is known.

    Parameters
    ----------
    key : str
        Key of a row in data/us_factors.csv [-].

    Returns
    -------
    str
        The row's ``verified`` word [-].

    Examples
    --------
    >>> verified("creep_dry")
    'seen'
    """
    return _row(key)["verified"]


def time_factor(load_types):
    """Return the load duration factor of loads that act together, and its name.

    Parameters
    ----------
    load_types : iterable of str
        Types in the combination [-].

    Returns
    -------
    tuple of (float, str)
        The factor of the shortest-lasting load, and what it stands for [-].

    Notes
    -----
    NDS 2018 2.3.2 and Table 2.3.2.

    Examples
    --------
    >>> time_factor(["dead", "snow"])
    (1.15, 'two months')
    """
    present = set(check_words("load types", load_types))
    for load_type, key in _TIME_KEYS:
        if load_type in present:
            return scalar(key), _scalars()[key]["meaning"]
    raise BadInput(f"a combination needs at least one load type, for example 'dead', got {sorted(present)}")


@cache
def combination_rows():
    """Return the gravity combinations as name, factors, clause and verified word.

    Returns
    -------
    tuple of dict
        Rows of data/us_load_combinations.csv; factors as (load type, factor) pairs [-].

    Notes
    -----
    ASCE 7-16 2.4.1, allowable stress.

    Examples
    --------
    >>> combination_rows()[1]["factors"]
    (('dead', 1.0), ('live', 1.0))
    """
    rows = []
    for row in table_rows("us_load_combinations"):
        pairs = tuple(
            (word, float(row[word.replace(" ", "_")]))
            for word in ("dead", "live", "roof live", "snow")
            if row[word.replace(" ", "_")]
        )
        rows.append({"name": row["name"], "factors": pairs, "clause": row["source"], "verified": row["verified"]})
    return tuple(rows)


def effective_length_rows(case):
    """Return the pieces of the effective length rule for one kind of span and load.

    Parameters
    ----------
    case : str
        Span and load, such as 'single span, uniform' [-].

    Returns
    -------
    tuple of dict
        Each piece: from and to which ratio of length to depth, and its two coefficients [-].

    Notes
    -----
    NDS 2018 Table 3.3.3. Listed cases hold at any ratio; the note for cases not listed ('not listed') has a
    third piece for ratios over 14.3.

    Examples
    --------
    >>> effective_length_rows("single span, uniform")[0]["length_factor"]
    2.06
    """
    pieces = _effective_length_pieces()
    return pieces[check_choice("span and load", case, pieces)]


@cache
def _effective_length_pieces():
    pieces = {}
    for row in sorted(table_rows("us_effective_length"), key=lambda row: row["load"]):
        to_ratio = row["slenderness_max"]
        pieces[row["load"]] = (
            *pieces.get(row["load"], ()),
            {
                "from_ratio": row["slenderness_min"],
                "to_ratio": float("inf") if to_ratio in ("", None) else to_ratio,
                "length_factor": row["length_coefficient"],
                "depth_factor": row["depth_coefficient"],
            },
        )
    return pieces


@cache
def deflection_rows():
    """Return the sag limits on live load by what the member carries.

    Returns
    -------
    dict
        Divisor, clause and verified word by member [-].

    Notes
    -----
    IRC 2021 Table R301.7, members measured along a span.

    Examples
    --------
    >>> deflection_rows()["floor"]["divisor"]
    360.0
    """
    return {
        row["member"]: {"divisor": row["divisor"], "clause": row["source"], "verified": row["verified"]}
        for row in table_rows("us_deflection_limits")
        if row["rulebook"] == "IRC" and row["of"] == "span"
    }


@cache
def total_limit():
    """Return the divisor for sag under dead and live load together.

    Returns
    -------
    tuple of (float, str, str)
        Divisor, clause, verified word [-].

    Notes
    -----
    IBC 2018 Table 1604.3, floor members. The IRC limits live load only.

    Examples
    --------
    >>> total_limit()[0]
    240.0
    """
    for row in table_rows("us_deflection_limits"):
        if row["member"] == "floor member" and row["loads"] == "dead and live":
            return row["divisor"], row["source"], row["verified"]
    raise BadInput("data/us_deflection_limits.csv has no row for a floor member under dead and live load")


def least_seat(below):
    """Return the least seat the code asks for, whatever the load.

    Parameters
    ----------
    below : str
        'plate', 'post', 'steel' or 'masonry' [-].

    Returns
    -------
    tuple of (float, str, str)
        Seat length, clause, verified word [mm, -, -].

    Notes
    -----
    IRC R502.6.

    Examples
    --------
    >>> round(least_seat("masonry")[0] / inch, 6)
    3.0
    """
    check_choice("what the beam sits on", below, ("plate", "post", "steel", "masonry"))
    key = "masonry_or_concrete" if below == "masonry" else "wood_or_metal"
    for row in table_rows("us_bearing_minimums"):
        if row["key"] == key:
            return row["value"] * inch, row["source"], row["verified"]
    raise BadInput(f"data/us_bearing_minimums.csv has no row {key!r}")


@cache
def _dressed_depths():
    """Nominal width by dressed width, ascending, mm."""
    pairs = {
        row["nominal_width"]: row["dry_width_in"] * inch
        for row in table_rows("sizes_ps20")
        if row["design_basis"] == "dry"
    }
    return tuple(sorted((dressed, nominal) for nominal, dressed in pairs.items()))


@cache
def _nominal_sizes():
    """The greatest dressed width of each nominal one [mm], and the nominal ones; the last for all beyond."""
    table = _dressed_depths()
    edges = numpy.array([edge for edge, _ in table]) * (1 + 1e-9)
    return edges, numpy.array([name for _, name in table] + [table[-1][1]], dtype=float)


def nominal_of(dressed):
    """Return the nominal inch size whose dressed size is at least the size given.

    Parameters
    ----------
    dressed : float or numpy.ndarray
        Actual width or depth of sawn lumber [mm].

    Returns
    -------
    numpy.ndarray
        Nominal size, in inches [-].

    Notes
    -----
    An old board between two of today's sizes takes the larger, which has the smaller size factor.

    Examples
    --------
    >>> float(nominal_of(9.25 * inch)), float(nominal_of(8.0 * inch))
    (10.0, 10.0)
    """
    check_size("size of a piece", dressed)
    edges, names = _nominal_sizes()
    return names[numpy.searchsorted(edges, dressed)]


def dressed_sizes():
    """List the dressed sizes of sawn lumber.

    Returns
    -------
    tuple of float
        Actual sizes, rising [mm].

    Examples
    --------
    >>> round(dressed_sizes()[0] / inch, 6)
    1.5
    """
    return tuple(sorted(dressed for dressed, _ in _dressed_depths()))


def dressed_of(nominal):
    """Return the dressed size of sawn lumber from its nominal size.

    Parameters
    ----------
    nominal : int
        Nominal size, in inches [-].

    Returns
    -------
    float
        Actual size [mm].

    Examples
    --------
    >>> round(dressed_of(10) / inch, 6)
    9.25
    """
    for dressed, name in _dressed_depths():
        if name == nominal:
            return dressed
    names = ", ".join(f"{name:g}" for _, name in _dressed_depths())
    raise BadInput(f"nominal size {nominal!r} is not known; published are {names}")


def tabulated_size_factor(material, *, width, depth):
    """Return the tabulated size factor on bending of dimension lumber.

    Parameters
    ----------
    material : structlib.ground.lumber.Material
        Dimension lumber or Southern Pine [-].
    width : float or numpy.ndarray
        Width of one piece [mm].
    depth : float or numpy.ndarray
        Depth of the piece [mm].

    Returns
    -------
    tuple of (float or numpy.ndarray, str, str)
        Factor, clause, verified word [-].

    Raises
    ------
    OutsideRule
        When a piece is of no size that the table covers: thinner than 2 in or thicker than 4 in nominal, or
        deeper than the table goes for its grade.

    Notes
    -----
    NDS Supplement 2018 Tables 4A and 4B adjustment factors.

    Examples
    --------
    >>> from structlib.ground.lumber import find_material
    >>> fir = find_material("Douglas Fir-Larch", "No.2")
    >>> float(tabulated_size_factor(fir, width=1.5 * inch, depth=7.25 * inch)[0])
    1.2
    """
    plain = isinstance(width, float) and isinstance(depth, float)
    found = (_size_found if plain else _size_found.__wrapped__)(material.size_factor_group, width, depth)
    if numpy.isnan(found[0]).any():
        raise OutsideRule(_no_size_factor(material, width, depth, found[0]))
    return found


@lru_cache(maxsize=1024)
def _size_found(group, width, depth):
    """The factor, nan where the table has none; its clause and how it is known."""
    wide, thick = nominal_of(depth), nominal_of(width)
    plain = numpy.ndim(wide) == 0 and numpy.ndim(thick) == 0
    found, clause, known = (
        _by_names(group, float(wide), float(thick)) if plain else _by_names.__wrapped__(group, wide, thick)
    )
    # the names run from 2 in nominal up, so a thin board would pass for one
    found = numpy.where(numpy.minimum(width, depth) < _dressed_depths()[0][0] * (1 - 1e-9), numpy.nan, found)
    return (float(found) if numpy.ndim(found) == 0 else found), clause, known


@lru_cache(maxsize=1024)
def _by_names(group, wide, thick):
    """The same from the nominal sizes, which are few."""
    found, words, clause = numpy.full(numpy.shape(wide), numpy.nan), [], ""
    for row in _size_rows(group):
        greatest = row["width_max"] if row["width_max"] not in ("", None) else float("inf")
        hit = (
            (wide >= row["width_min"])
            & (wide <= greatest)
            & (thick >= row["thickness_min"])
            & (thick <= row["thickness_max"])
        )
        found = numpy.where(hit, row["value"], found)
        if numpy.any(hit):
            words.append(row["verified"])
            clause = row["source"]
    return found, clause, least_verified(words)


def _no_size_factor(material, width, depth, found):
    """One sentence on the first piece that the table does not cover, and what it does cover."""
    width, depth, found = numpy.broadcast_arrays(width, depth, found)
    first = int(numpy.flatnonzero(numpy.isnan(found))[0])
    w, d = width.flat[first] / inch, depth.flat[first] / inch
    rows = _size_rows(material.size_factor_group)
    if not rows:
        return (
            f"{material.name} has no size factor in the table for lumber 2 in to 4 in thick, got {w:g} in by {d:g} in"
        )
    deepest = max(row["width_max"] if row["width_max"] not in ("", None) else float("inf") for row in rows)
    wide = "" if deepest == float("inf") else f" and at most {deepest:g} in wide"
    example = "2x10" if deepest >= 10 else f"2x{deepest:g}"
    return (
        f"{material.name} has no size factor for a piece {w:g} in by {d:g} in; its values hold for pieces that "
        "are "
        f"nominally 2 in to 4 in thick{wide}, for example a {example}"
    )


@cache
def _size_rows(group):
    return tuple(
        row
        for row in table_rows("us_size_factor")
        if row["factor"] == "size" and row["property"] == "Fb" and row["size_factor_group"] == group
    )
