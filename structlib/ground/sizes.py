"""Sizes that can be bought, from the size standard and from trade stock, and sizes measured on site."""

import re
from dataclasses import dataclass
from functools import cache

from structlib.ground.records import measured
from structlib.ground.refusals import BadInput, check_choice
from structlib.ground.showing import show
from structlib.ground.tables import in_library_units, table_rows
from structlib.ground.units import inch


def nominal_size(text):
    """Read a nominal lumber size.

    Parameters
    ----------
    text : str
        For example ``2x10`` [-].

    Returns
    -------
    tuple of int
        Nominal thickness and nominal depth [nominal inches].

    Examples
    --------
    >>> nominal_size("2x10")
    (2, 10)
    """
    pattern = r"\s*([1-9][0-9]?)\s*[xX\u00d7]\s*([1-9][0-9]?)\s*"
    match = re.fullmatch(pattern, text) if isinstance(text, str) else None
    if not match:
        got = repr(text) if isinstance(text, str) else f"a {type(text).__name__}"
        raise BadInput(f"{got} is not a nominal size; write for example 2x10")
    return int(match[1]), int(match[2])


@dataclass(frozen=True, kw_only=True)
class Stock:
    """A size that can be bought, or that was measured.

    Parameters
    ----------
    nominal : str
        Name of the size [-].
    width : float
        True width of one ply [mm].
    depth : float
        True depth [mm].
    kind : str
        ``dimension``, ``timber``, ``lvl`` or ``measured`` [-].
    source : str
        Where the size comes from [-].
    verified : str
        How it is known [-].
    availability : str
        ``stock``, ``special order`` or ``in place`` [-].

    Examples
    --------
    >>> [one.nominal for one in stock_sizes("dimension", thickness=2)]
    ['2x4', '2x6', '2x8', '2x10', '2x12']
    """

    nominal: str = measured("text", "size")
    width: float = measured("section length", "width")
    depth: float = measured("section length", "depth")
    kind: str = measured("text", "kind of size")
    source: str = measured("text", "source")
    verified: str = measured("text", "how it is known")
    availability: str = measured("text", "availability")


def stock_sizes(kind, thickness=None, *, special_order=False):
    """List the sizes of a kind of material, shallow ones first.

    Parameters
    ----------
    kind : str
        ``dimension``, ``southern pine``, ``timber`` or ``lvl`` [-].
    thickness : int
        Nominal thickness, for example 2; None for all; not for LVL, which comes in 1 3/4 in plies
        [nominal inches].
    special_order : bool
        Whether to list sizes too that a yard does not keep [-].

    Returns
    -------
    tuple of Stock
        The sizes; timbers with their green size [-].

    Examples
    --------
    >>> [one.nominal for one in stock_sizes("lvl")][-2:]
    ['1 3/4 x 16 LVL', '1 3/4 x 18 LVL']
    """
    check_choice("kind", kind, ("dimension", "southern pine", "timber", "lvl"))
    sizes = _lvl_sizes() if kind == "lvl" else _sawn_sizes("timber" if kind == "timber" else "dimension")
    if thickness is not None:
        known = dict.fromkeys(number for number, _ in sizes)
        if isinstance(thickness, bool) or thickness not in known:
            raise BadInput(
                f"{kind} has no thickness {thickness!r}; published are "
                f"{', '.join(f'{number:g}' for number in known)} in"
            )
    wanted = [one for number, one in sizes if thickness is None or number == thickness]
    return tuple(one for one in wanted if special_order or one.availability == "stock")


def dressed_size(nominal):
    """Return the dressed size of a piece from its name.

    Parameters
    ----------
    nominal : str
        Nominal size, such as '2x10' [-].

    Returns
    -------
    Stock
        The size [-].

    Examples
    --------
    >>> dressed_size("2x10").depth / 25.4
    9.25
    """
    thickness, _ = nominal_size(nominal)
    rows = stock_sizes("timber" if thickness >= 5 else "dimension", special_order=True)
    pieces = {piece.nominal: piece for piece in rows}
    return pieces[check_choice("size", nominal, pieces)]


@cache
def _sawn_sizes(kind):
    return [
        (
            row["nominal_thickness"],
            Stock(
                nominal=row["nominal"],
                width=in_library_units(row, f"{row['design_basis']}_thickness_in"),
                depth=in_library_units(row, f"{row['design_basis']}_width_in"),
                kind=kind,
                source=row["source"],
                verified=row["verified"],
                availability=row["availability"],
            ),
        )
        for row in table_rows("sizes_ps20")
        if row["kind"] == kind
    ]


@cache
def _lvl_sizes():
    return [
        (
            row["ply_width_in"],
            Stock(
                nominal=f"{_inch_name(row['ply_width_in'])} x {_inch_name(row['depth_in'])} LVL",
                width=in_library_units(row, "ply_width_in"),
                depth=in_library_units(row, "depth_in"),
                kind="lvl",
                source=row["source"],
                verified=row["verified"],
                availability=row["availability"],
            ),
        )
        for row in table_rows("lvl_depths")
    ]


def _inch_name(inches):
    return show(inches * inch, "section length").removesuffix(" in")
