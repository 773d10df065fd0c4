"""What each published span table assumes, as a record; and the printed cells it can be held against.

A record can be changed with ``dataclasses.replace``: change one assumption and make the table again.
"""

import re
from dataclasses import dataclass
from functools import cache
from numbers import Real

from structlib.ground.records import measured
from structlib.ground.refusals import BadInput, OutsideRule, check_choice, check_number
from structlib.ground.showing import show
from structlib.ground.sizes import nominal_size
from structlib.ground.tables import in_library_units, table_rows
from structlib.ground.units import ft, inch, psf
from structlib.rules.us import factors
from structlib.rules.us.inputs import check_words, check_yes_or_no
from structlib.rules.us.one_number import inches_text

#: Design values of today; any other word is a set of data/us_span_table_design_values.csv.
CURRENT = "current"


@dataclass(frozen=True, kw_only=True)
class TableBasis:
    """The assumptions behind one span table.

    Parameters
    ----------
    name : str
        Name of the basis [-].
    table : str
        The published table [-].
    edition : str
        Its edition [-].
    member : str
        ``floor joist``, ``ceiling joist`` or ``rafter`` [-].
    live : float
        Live, roof live or snow load, 1 to 500 psf [MPa].
    dead : float
        Dead load, 0 to 500 psf [MPa].
    deflection_divisor : float
        n of the limit span/n on the deflection under live load, 60 to 2000 [-].
    time_factor : float
        Load duration factor, 0.9 to 2 [-].
    repetitive : bool
        Whether the repetitive member factor is used; not for spacings over 24 in [-].
    design_values : str
        ``current`` or the name of an older set [-].
    species : tuple of str
        Species the table lists [-].
    grades : tuple of str
        Grades the table lists, best first [-].
    sizes : tuple of str
        Nominal sizes the table lists [-].
    spacings : tuple of float
        Spacings the table lists, center to center [mm].
    greatest_span : float
        Spans over it get a note in place of a number; None for no such limit [mm].
    total_limit : str
        Row of the deflection table with the limit under all load that the table leaves out [-].
    source : str
        Where the assumptions come from [-].
    verified : str
        How they are known [-].
    note : str
        What else is to be known [-].

    Raises
    ------
    OutsideRule
        When the repetitive member factor is asked for members too far apart.

    Examples
    --------
    >>> basis = find_basis("R502.3.1(2) dead 10")
    >>> round(basis.live / psf), basis.deflection_divisor, basis.repetitive
    (40, 360.0, True)
    """

    name: str = measured("text", "name")
    table: str = measured("text", "published table")
    edition: str = measured("text", "edition")
    member: str = measured("text", "member")
    live: float = measured("area load", "live load")
    dead: float = measured("area load", "dead load")
    deflection_divisor: float = measured("text", "deflection under live load at most span over")
    time_factor: float = measured("text", "load duration factor")
    repetitive: bool = measured("text", "repetitive member factor used")
    design_values: str = measured("text", "design values")
    species: tuple[str, ...]
    grades: tuple[str, ...]
    sizes: tuple[str, ...]
    spacings: tuple[float, ...]
    greatest_span: float | None = measured("length", "greatest span printed", default=None)
    total_limit: str = measured("text", "limit under all load, left out", default="")
    source: str = measured("text", "source", default="the reader's own")
    verified: str = measured("text", "how it is known", default="common practice")
    note: str = measured("text", "note", default="")

    def __post_init__(self):
        _check_one_each(self)
        _check_loads(self.live, self.dead)
        check_number("deflection divisor", self.deflection_divisor, low=60, high=2000, hint="for example 360")
        check_number("load duration factor", self.time_factor, low=0.9, high=2, hint="for example 1.0")
        check_yes_or_no("repetitive", self.repetitive)
        check_choice("design values", self.design_values, design_value_sets())
        for word in ("species", "grades", "sizes"):
            if not check_words(word, getattr(self, word)):
                raise BadInput(f"{word} must not be empty; for example {_EXAMPLES[word]}")
        for size in self.sizes:
            _check_thin(size)
        if not isinstance(self.spacings, (tuple, list)):
            raise BadInput(
                f"spacings must be a group of lengths, got {self.spacings!r}; for example (16*inch, 24*inch)"
            )
        check_number(
            "spacings",
            self.spacings,
            low=1.5 * inch,
            high=120 * inch,
            shown=inches_text,
            hint="for example (16*inch, 24*inch)",
        )
        if self.greatest_span is not None:
            check_number(
                "greatest span", self.greatest_span, low=ft, high=100 * ft, shown=inches_text, hint="for example 26*ft"
            )
        widest = factors.length("repetitive_member_greatest_spacing")
        if self.repetitive and max(self.spacings) > widest * (1 + 1e-9):
            raise OutsideRule(
                f"the repetitive member factor holds for spacings up to {inches_text(widest)} "
                f"(NDS 4.3.9), got {inches_text(max(self.spacings))}; for wider ones make the "
                "basis with repetitive=False"
            )


_EXAMPLES = {"species": "('Hem-Fir',)", "grades": "('No.2',)", "sizes": "('2x10',)"}


def _check_one_each(basis):
    """A table has one load and one limit; arrays and symbols, which formulas take, are refused here."""
    for word in ("live", "dead", "deflection_divisor", "time_factor", "greatest_span"):
        value = getattr(basis, word)
        if value is None and word == "greatest_span":
            continue
        if isinstance(value, bool) or not isinstance(value, Real):
            raise BadInput(f"{word.replace('_', ' ')} must be one number, got {value!r}; for example {_ONE[word]}")


_ONE = {"live": "40*psf", "dead": "10*psf", "deflection_divisor": "360", "time_factor": "1.0", "greatest_span": "26*ft"}


def _check_loads(live, dead):
    for name, value, low in (("live load", live, 1.0), ("dead load", dead, 0.0)):
        check_number(
            name,
            value,
            low=low * psf,
            high=500 * psf,
            hint="for example 40*psf",
            shown=lambda load: show(load, "area load"),
        )


def _check_thin(size):
    if nominal_size(size)[0] != 2:
        raise OutsideRule(f"these span tables are for lumber 2 in thick, got {size}; for example 2x10")


def table_bases():
    """List the bases of the published span tables of joists and rafters.

    Returns
    -------
    tuple of TableBasis
        The bases in the order of the data file [-].

    Examples
    --------
    >>> [basis.name for basis in table_bases()][:2]
    ['R502.3.1(1) dead 10', 'R502.3.1(2) dead 10']
    """
    return tuple(_bases().values())


def find_basis(name):
    """Find the basis of a published span table by its name.

    Parameters
    ----------
    name : str
        Name of the basis [-].

    Returns
    -------
    TableBasis
        The assumptions of that table [-].

    Examples
    --------
    >>> find_basis("IBC 2308.7.2(2) dead 10").time_factor
    1.25
    """
    return _bases()[check_choice("span table", name, _bases())]


@cache
def _bases():
    return {row["basis"]: _basis(row) for row in table_rows("us_span_table_bases")}


def _basis(row):
    listed = {
        word: tuple(part.strip() for part in row[word].split(";"))
        for word in ("species", "grades", "sizes", "spacings_in")
    }
    return TableBasis(
        name=row["basis"],
        table=row["table"],
        edition=row["edition"],
        member=row["member"],
        live=in_library_units(row, "live_psf"),
        dead=in_library_units(row, "dead_psf"),
        deflection_divisor=row["deflection_divisor"],
        time_factor=factors.scalar(row["time"]),
        repetitive=row["repetitive"] == "yes",
        design_values=row["design_values"],
        species=listed["species"],
        grades=listed["grades"],
        sizes=listed["sizes"],
        spacings=tuple(float(part) * inch for part in listed["spacings_in"]),
        greatest_span=in_library_units(row, "greatest_span_ft"),
        total_limit=row["total_limit"],
        source=row["source"],
        verified=row["verified"],
        note=row["note"],
    )


@cache
def design_value_sets():
    """List the sets of design values that a basis may name.

    Returns
    -------
    tuple of str
        ``current`` first [-].

    Examples
    --------
    >>> design_value_sets()
    ('current', 'older')
    """
    older = dict.fromkeys(row["design_values"] for row in table_rows("us_span_table_design_values"))
    return (CURRENT, *older)


def printed_cells(basis):
    """List the printed cells at hand of one published table.

    Parameters
    ----------
    basis : TableBasis
        The table [-].

    Returns
    -------
    tuple of mapping
        Rows of data/us_span_table_cells.csv, each with source, verified word and note; none for a basis of
        the reader's own [-].

    Examples
    --------
    >>> cell = printed_cells(find_basis("R802.5.1(1)"))[0]
    >>> cell["species"], cell["size"], cell["printed"], cell["verified"]
    ('Douglas Fir-Larch', '2x6', '20-8', 'seen')
    """
    refuse_no_basis(basis)
    return tuple(row for row in table_rows("us_span_table_cells") if row["basis"] == basis.name)


def printed_length(text):
    """Read a length as span tables print it, feet and inches with a dash.

    Parameters
    ----------
    text : str
        For example ``13-9`` [-].

    Returns
    -------
    float
        The length [mm].

    Examples
    --------
    >>> round(printed_length("13-9") / inch, 6)
    165.0
    """
    match = re.fullmatch(r"([0-9]{1,2})-([0-9]|1[01])", text) if isinstance(text, str) else None
    if not match:
        raise BadInput(f"{text!r} is not a length in feet and inches; write for example 13-9")
    return int(match[1]) * ft + int(match[2]) * inch


def refuse_no_basis(basis):
    """Refuse anything that is not a basis of a span table.

    Parameters
    ----------
    basis : TableBasis
        What should be one [-].

    Returns
    -------
    TableBasis
        The basis, unchanged [-].

    Examples
    --------
    >>> refuse_no_basis(find_basis("R802.5.1(1)")).member
    'ceiling joist'
    """
    if not isinstance(basis, TableBasis):
        raise BadInput(
            f"a span table needs a basis, got {type(basis).__name__}; for example find_basis('R502.3.1(2) dead 10')"
        )
    return basis
