"""What each published table of headers and girders assumes, and its printed cells at hand."""

from dataclasses import dataclass
from functools import cache

from structlib.ground.refusals import BadInput, check_choice
from structlib.ground.tables import in_library_units, table_rows
from structlib.ground.units import ft, psf


@dataclass(frozen=True)
class HeaderBasis:
    """What one column group of a published header table assumes. Lengths in mm, loads in MPa and N/mm.

    ``floor_share`` is the part of the building width that each floor brings; ``shares`` the table's own
    factor on bending by plies; ``combined`` tells whether bending is asked of three quarters of floor and
    snow load too; ``total_divisor`` is None where the table has no sag limit. ``unknown_snows`` are printed
    columns that no set of loads at hand gives."""

    name: str
    table: str
    edition: str
    supports: str
    widths: tuple[float, ...]
    snows: tuple[float, ...]
    unknown_snows: tuple[float, ...]
    sizes: tuple[str, ...]
    species: str
    grade: str
    shares: tuple[float, ...]
    roof_dead: float
    overhang: float
    snow_per_width: float
    snow_constant: float
    snow_over_width: float
    floor_dead: float
    floor_live: float
    floor_share: float
    floors: int
    wall: float
    combined: bool
    total_divisor: float | None
    bearing: float
    source: str
    verified: str
    note: str


@cache
def header_bases():
    """List every header table at hand.

    Returns
    -------
    tuple of HeaderBasis
        The bases in the order of the data file [-].

    Examples
    --------
    >>> [basis.name for basis in header_bases()][:2]
    ['R602.7(1) roof', 'R602.7(1) center-bearing floor']
    """
    return tuple(_basis(row) for row in table_rows("us_header_bases"))


def _basis(row):
    value = lambda column: in_library_units(row, column)  # noqa: E731

    def listed(column, unit):
        return tuple(float(word) * unit for word in row[column].split(";") if word.strip())

    return HeaderBasis(
        row["basis"],
        row["table"],
        row["edition"],
        row["supports"],
        listed("building_widths_ft", ft),
        listed("ground_snows_psf", psf),
        listed("unknown_snows_psf", psf),
        tuple(word.strip() for word in row["sizes"].split(";")),
        row["species"],
        row["grade"],
        tuple(row[f"repetitive_{plies}"] for plies in (1, 2, 3, 4)),
        value("roof_dead_psf"),
        value("overhang_ft"),
        row["snow_per_width"],
        value("snow_constant_ft"),
        value("snow_over_width_ft2"),
        value("floor_dead_psf"),
        value("floor_live_psf"),
        1 / row["floor_width_divisor"],
        int(row["floors"]),
        value("wall_plf"),
        row["combined"] == "yes",
        row["total_divisor"],
        value("bearing_psi"),
        row["source"],
        row["verified"],
        row["note"],
    )


def find_header_basis(name):
    """Return one header table by its name.

    Parameters
    ----------
    name : str
        Name, for example ``R602.7(1) roof`` [-].

    Returns
    -------
    HeaderBasis
        The basis [-].

    Examples
    --------
    >>> find_header_basis("R602.7(2) one floor").supports
    'one floor only'
    """
    named = {basis.name: basis for basis in header_bases()}
    return named[check_choice("header table", name, named)]


def header_cells(basis):
    """Return the printed cells at hand of one header table.

    Parameters
    ----------
    basis : HeaderBasis
        The table [-].

    Returns
    -------
    tuple of mapping
        Rows of data/us_header_spans.csv [-].

    Examples
    --------
    >>> len(header_cells(find_header_basis("R602.7(2) one floor")))
    6
    """
    check_basis(basis)
    return tuple(row for row in table_rows("us_header_spans") if row["basis"] == basis.name)


def check_basis(basis):
    """Refuse anything but a header table.

    Parameters
    ----------
    basis : HeaderBasis
        What ``find_header_basis`` returned [-].

    Returns
    -------
    HeaderBasis
        The basis, unchanged [-].

    Examples
    --------
    >>> check_basis(find_header_basis("R602.7(1) roof")).edition
    'IRC 2018/2021'
    """
    if not isinstance(basis, HeaderBasis):
        raise BadInput(
            f"a header table must come from find_header_basis, got {type(basis).__name__}; for example "
            "find_header_basis('R602.7(1) roof')"
        )
    return basis
