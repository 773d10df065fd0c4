"""Published numbers read from the data files; a malformed row is refused by file and line.

A data file is a CSV whose comment lines (starting with #) say what it is. Two of them are read:
``# key: a, b`` names the columns that together tell rows apart, ``# numbers: c, d`` the columns that hold
numbers. The last part of a number column's name is its unit (``Fb_psi``, ``depth_in``); a name of one word,
or one that ends in a word of `PLAIN_ENDINGS`, is a plain number; for ``value`` the row names its unit in a
column ``unit``. Any other ending is refused: a misspelt unit would be read as MPa. Every row has ``source``
and ``verified``.
"""

import csv
import math
from functools import cache, lru_cache
from pathlib import Path
from types import MappingProxyType

from structlib.ground import units as u
from structlib.ground.refusals import BadInput, check_choice

#: How a number is known, from the best to the least.
VERIFIED_WORDS = (
    "seen",
    "transcribed",
    "recalled-agrees",
    "back-solved",
    "computed",
    "recalled",
    "common practice",
)

UNITS = {
    "psi": u.psi,
    "psf": u.psf,
    "pcf": u.pcf,
    "plf": u.plf,
    "lb": u.lb,
    "kip": u.kip,
    "in": u.inch,
    "in2": u.inch**2,
    "in3": u.inch**3,
    "in4": u.inch**4,
    "in6": u.inch**6,
    "ft": u.ft,
    "ft2": u.ft**2,
    "gal": 231 * u.inch**3,
    "mm": u.mm,
    "m": u.m,
    "MPa": u.MPa,
    "kPa": u.kPa,
    "kN": u.kN,
    "deg": u.deg,
    "-": 1.0,
    "percent": 1.0,
}

#: Last words of the names of plain numbers.
PLAIN_ENDINGS = frozenset(
    "min max from to factor divisor coefficient exponent ratio gravity studs live thickness width 1 2 3 4".split()
)


def data_folder():
    """Find the folder of the data files: inside the installed package, or beside it in a checkout.

    Returns
    -------
    pathlib.Path
        The folder [-].

    Examples
    --------
    >>> (data_folder() / "us_factors.csv").is_file()
    True
    """
    package = Path(__file__).resolve().parents[1]
    installed = package / "data"
    return installed if installed.is_dir() else package.parent / "data"


def table_rows(name):
    """Read one published table, once.

    Parameters
    ----------
    name : str
        Name of the data file without ``.csv`` [-].

    Returns
    -------
    tuple of mapping
        The rows in the file's order, numbers still in the units of the publication [-].

    Examples
    --------
    >>> len(table_rows("lumber_dimension"))
    64
    """
    return _rows_of(name if isinstance(name, str) else repr(name))


@cache
def _rows_of(name):
    check_choice("table", name, sorted(path.stem for path in data_folder().glob("*.csv")))
    return read_table(data_folder() / f"{name}.csv")


def read_table(path):
    """Read a data file and refuse it at the first malformed row.

    Parameters
    ----------
    path : pathlib.Path
        The CSV file [-].

    Returns
    -------
    tuple of mapping
        Read-only rows; number columns are floats, or None where the cell is empty [-].

    Examples
    --------
    >>> read_table(data_folder() / "lvl_depths.csv")[0]["depth_in"]
    5.5
    """
    path = Path(path)
    numbered = _lines(path)
    comments = [text[1:].strip() for _, text in numbered if text.startswith("#")]
    key, numbers = _declared(path, comments, "key"), _declared(path, comments, "numbers")
    body = [(line, text) for line, text in numbered if text.strip() and not text.startswith("#")]
    if not body:
        raise BadInput(f"{path.name} has no header row")
    header = next(csv.reader([body[0][1]]))
    if len(set(header)) != len(header):
        raise BadInput(f"{path.name} line {body[0][0]}: a column is named twice in the header")
    for column in (*key, *numbers, "source", "verified"):
        if column not in header:
            raise BadInput(f"{path.name} line {body[0][0]}: the column {column!r} is missing")
    for column in numbers:
        _check_unit(f"{path.name} line {body[0][0]}", column)
    rows, used = [], {}
    for line, text in body[1:]:
        row = _checked(f"{path.name} line {line}", header, next(csv.reader([text])), numbers)
        this = tuple(row[column] for column in key)
        if this in used:
            words = ", ".join(map(str, this))
            raise BadInput(f"{path.name} line {line}: {words} is already on line {used[this]}")
        used[this] = line
        rows.append(MappingProxyType(row))
    return tuple(rows)


def _lines(path):
    try:
        text = path.read_text(encoding="utf-8")
    except (OSError, UnicodeDecodeError) as trouble:
        raise BadInput(f"the data file {path.name} cannot be read: {type(trouble).__name__}") from None
    return list(enumerate(text.splitlines(), start=1))


def _declared(path, comments, word):
    for comment in comments:
        if comment.startswith(word + ":"):
            return [column.strip() for column in comment[len(word) + 1 :].split(",") if column.strip()]
    raise BadInput(f"{path.name} has no comment line '# {word}: ...' that names its columns")


def _check_unit(place, column):
    """Refuse a column of numbers whose name ends in what is neither a unit nor a plain number's word."""
    first, _, ending = column.rpartition("_")
    if not column.isidentifier() or (first and ending not in UNITS and ending not in PLAIN_ENDINGS):
        raise BadInput(
            f"{place}: the column {column!r} ends in {ending!r}, which is no unit known here; accepted are "
            + ", ".join(UNITS)
        )


def _checked(place, header, cells, numbers):
    if len(cells) != len(header):
        raise BadInput(f"{place}: {len(cells)} cells where {len(header)} are named in the header")
    row = {column: cell.strip() for column, cell in zip(header, cells)}
    if not row["source"]:
        raise BadInput(f"{place}: the source is missing")
    for column in header:
        if column.startswith("verified"):
            word = row[column]
            if word not in VERIFIED_WORDS and (word or column == "verified"):
                raise BadInput(f"{place}: {column} is {word!r}; accepted are {', '.join(VERIFIED_WORDS)}")
    if "unit" in row and row["unit"] not in UNITS:
        raise BadInput(f"{place}: the unit {row['unit']!r} is not known; accepted are {', '.join(UNITS)}")
    for column in numbers:
        row[column] = _number(place, column, row[column])
    return row


def _number(place, column, cell):
    if not cell:
        return None
    try:
        value = float(cell)
    except ValueError:
        value = math.nan
    if not math.isfinite(value):
        raise BadInput(f"{place}: {column} is {cell!r}, which is not a number")
    return value


def in_library_units(row, column):
    """Convert one cell from the unit of the publication to the library's own units.

    Parameters
    ----------
    row : mapping
        A row of a table [-].
    column : str
        A number column, whose name ends in its unit or whose unit stands in the column ``unit`` [-].

    Returns
    -------
    float
        The value in mm, N, MPa; None where the cell is empty [by column].

    Examples
    --------
    >>> round(in_library_units(table_rows("lvl_depths")[0], "depth_in"), 1)
    139.7
    """
    check_choice("column", column, row)
    value = row[column]
    if isinstance(value, str):
        raise BadInput(f"the column {column!r} holds words, not numbers")
    unit = row["unit"] if column == "value" and "unit" in row else column.rpartition("_")[2]
    return None if value is None else value * UNITS.get(unit, 1.0)


def table_value(name, key):
    """Look up one number by its key, in the library's own units.

    Parameters
    ----------
    name : str
        A table with the columns ``key``, ``value`` and ``unit`` [-].
    key : str
        The key of the row [-].

    Returns
    -------
    float
        The value in mm, N, MPa or as a plain number [by row].

    Examples
    --------
    >>> table_value("us_factors", "load_duration_snow")
    1.15
    """
    return in_library_units(table_row(name, key=key), "value")


def table_row(name, /, **cells):
    """Find the one row of a table whose cells are as given.

    Parameters
    ----------
    name : str
        Name of the table [-].
    **cells : object
        Column names with the cell wanted in each [-].

    Returns
    -------
    mapping
        The row, with its source and how it is verified [-].

    Examples
    --------
    >>> table_row("us_factors", key="load_duration_snow")["verified"]
    'seen'
    """
    if all(isinstance(cell, (str, float)) for cell in cells.values()):
        return _kept_row(name, tuple(cells.items()))
    return _only_row(name, cells.items())


@lru_cache(maxsize=1024)
def _kept_row(name, cells):
    return _only_row(name, cells)


def _only_row(name, cells):
    rows = list(table_rows(name))
    for column, cell in cells:
        check_choice(f"column of {name}", column, rows[0])
        found = [row for row in rows if row[column] == cell]
        if not found:
            check_choice(column, cell, dict.fromkeys(str(row[column]) for row in rows))
        rows = found
    if len(rows) != 1:
        raise BadInput(f"{len(rows)} rows of {name} are {dict(cells)}; name more columns to tell them apart")
    return rows[0]
