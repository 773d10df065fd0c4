"""What a wood post carries along the grain: solid, or of two to five plies (NDS 2018 3.7, 15.3)."""

from dataclasses import dataclass
from typing import Any

import numpy

from structlib.ground.asked_back import first_listed
from structlib.ground.material import check_design_values
from structlib.ground.refusals import BadInput, OutsideRule, check_choice, check_number, is_symbolic
from structlib.ground.showing import show
from structlib.ground.tables import table_rows
from structlib.ground.units import ft, inch
from structlib.mechanics.columns import effective_length, slenderness
from structlib.rules.check import Factor, least_verified
from structlib.rules.us import factors
from structlib.rules.us.bending import (
    check_time_factor,
    refuse_unknown_material,
    size_factor,
    wet_factor,
    wet_key,
    wet_verified,
)
from structlib.rules.us.column_stability import column_stability_factor, critical_column_value
from structlib.rules.us.inputs import at_most, check_yes_or_no
from structlib.rules.us.one_number import check_one_count, check_one_number, inches_text, length_text

FASTENINGS = ("nailed", "bolted")
_TALLEST = 60 * ft
_MOST_PLIES = 5
_SIZE = {
    "low": 0.0,
    "high": 3000.0,
    "low_allowed": False,
    "shown": inches_text,
    "hint": "for example 1.5*inch",
}


@dataclass(frozen=True)
class Column:
    """A post: material, one ply, how many, how tall, and what holds it from bowing.

    Lengths in mm. ``ply_width`` by ``depth`` is one ply, or the whole of a solid post; the depth is the
    larger. ``held_depth`` is the greatest distance between points that keep it from bowing in the direction
    of its depth, ``held_width`` the same across its width or plies: None for the whole height, 0 where it is
    held all along. ``end_factor`` is K of the effective length, 1 for ends free to turn.
    """

    material: Any
    ply_width: float
    depth: float
    height: float
    plies: int = 1
    fastening: str = "nailed"
    held_depth: float | None = None
    held_width: float | None = None
    end_factor: float = 1.0
    wet: bool = False

    @property
    def width(self):
        """Width of all plies together [mm]."""
        return self.ply_width * self.plies

    @property
    def area(self):
        """Area of the cross-section [mm2]."""
        return self.width * self.depth


@dataclass(frozen=True)
class ColumnCapacity:
    """What a column carries, with all that made it; arrays where heights or plies were arrays.

    ``load`` [N] is the value [MPa] times the area [mm2]; ``crushing_value`` [MPa] is the value without
    buckling. ``slenderness_depth`` and ``slenderness_width`` are effective length over size, by the direction
    of bowing; ``factor_depth`` and ``factor_width`` the column stability factors, with K_f inside the latter.
    ``critical_depth`` and ``critical_width`` [MPa] are the buckling values F_cE (infinite where held all
    along).
    ``separate`` [N] is what the plies would carry each for itself; zero where that is outside the rule.
    ``governs`` is 'depth', 'width', 'separate plies' or 'outside the rule'.
    """

    load: Any
    value: Any
    crushing_value: float
    area: Any
    slenderness_depth: Any
    slenderness_width: Any
    critical_depth: Any
    critical_width: Any
    factor_depth: Any
    factor_width: Any
    separate: Any
    governs: Any
    factors: tuple[Factor, ...]
    verified: str


def shape_constant(material):
    """Return c of the column stability factor, and how it is known.

    Parameters
    ----------
    material : structlib.ground.lumber.Material
        The wood [-].

    Returns
    -------
    tuple of (float, str)
        c, and its ``verified`` word [-].

    Notes
    -----
    NDS 2018 3.7.1.5.

    Examples
    --------
    >>> from structlib.ground.lumber import find_material, lvl
    >>> shape_constant(find_material("Hem-Fir", "No.2"))[0], shape_constant(lvl("2.0E-2900Fb"))[0]
    (0.8, 0.9)
    """
    refuse_unknown_material(material)
    key = "column_stability_c_engineered" if material.kind == "lvl" else "column_stability_c_sawn"
    return factors.scalar(key), factors.verified(key)


def compression_size_factor(material, *, width, depth):
    """Return the size factor on compression along the grain.

    Parameters
    ----------
    material : structlib.ground.lumber.Material
        The wood [-].
    width : float
        Smaller size of one piece [mm].
    depth : float
        Larger size of the piece [mm].

    Returns
    -------
    tuple of (float, str, str)
        The factor, its clause, and how it is known [-].

    Raises
    ------
    OutsideRule
        When the piece is not of a size that the material's values cover.

    Notes
    -----
    NDS Supplement 2018 Tables 4A and 4B. Timbers and LVL take none on compression.

    Examples
    --------
    >>> from structlib.ground.lumber import find_material
    >>> compression_size_factor(find_material("Douglas Fir-Larch", "No.2"), width=3.5*inch, depth=3.5*inch)[0]
    1.15
    """
    check_one_number("smaller size", width, **_SIZE)
    check_one_number("larger size", depth, **_SIZE)
    size_factor(material, width=width, depth=depth)  # refuses the sizes that the values do not cover
    if material.kind in ("timber", "lvl"):
        return 1.0, "none on compression (NDS 2018 4.3.6, 8.3)", "recalled"
    wide, thick = float(factors.nominal_of(depth)), float(factors.nominal_of(width))
    for row in table_rows("us_size_factor"):
        if (row["factor"], row["property"], row["size_factor_group"]) == (
            "size",
            "Fc",
            material.size_factor_group,
        ):
            widest = numpy.inf if row["width_max"] is None else row["width_max"]
            if row["width_min"] <= wide <= widest and row["thickness_min"] <= thick <= row["thickness_max"]:
                return row["value"], row["source"], row["verified"]
    raise OutsideRule(
        f"{material.name} has no size factor on compression for a piece {width / inch:g} in by "
        f"{depth / inch:g} in; its values hold for lumber 2 in to 4 in thick, for example a 2x6"
    )


def crushing_value(material, *, width, depth, time_factor, wet=False):
    """Return the compression value F_c* with every factor but the stability factor.

    Parameters
    ----------
    material : structlib.ground.lumber.Material
        The wood [-].
    width : float
        Smaller size of one piece [mm].
    depth : float
        Larger size of the piece [mm].
    time_factor : float
        Load duration factor C_D of the combination [-].
    wet : bool
        Wet service [-].

    Returns
    -------
    tuple of (float, tuple of Factor)
        The value and its factors [MPa, -].

    Raises
    ------
    OutsideRule
        When a factor is asked outside its rule.

    Notes
    -----
    NDS 2018 Table 4.3.1, 8.3.1. The relief of the wet factor for low values (750 psi) is not taken; leaving
    it out is on the careful side.

    Examples
    --------
    >>> from structlib.ground.lumber import find_material
    >>> from structlib.ground.units import psi
    >>> fir = find_material("Douglas Fir-Larch", "No.1")
    >>> round(crushing_value(fir, width=3.5*inch, depth=3.5*inch, time_factor=1.0)[0] / psi)
    1725
    """
    refuse_unknown_material(material)
    if material.compression is None:
        raise BadInput(
            f"{material.name} has no compression value along the grain; enter Fc from the maker's "
            "report, for example user_lvl(..., compression=2500*psi)"
        )
    check_number("load duration factor", time_factor, low=0.5, high=2.0, hint="for example 1.15 for snow")
    check_time_factor(material, time_factor)
    size, clause, size_known = compression_size_factor(material, width=width, depth=depth)
    wet_value, wet_known = compression_wet_factor(material, wet=wet)
    used = (
        Factor(
            "C_D",
            time_factor,
            "how long the load lasts",
            "NDS 2018 Table 2.3.2",
            factors.verified("load_duration_live"),
        ),
        Factor("C_M", wet_value, "wet or dry in use", "NDS Supplement 2018", wet_known),
        Factor("C_F", size, "size of the piece", clause, size_known),
    )
    return material.compression * time_factor * wet_value * size, used


def compression_wet_factor(material, *, wet):
    """Return the wet service factor on compression along the grain, and how it is known.

    Parameters
    ----------
    material : structlib.ground.lumber.Material
        The wood [-].
    wet : bool
        True where the wood stays above 19 % moisture in use [-].

    Returns
    -------
    tuple of (float, str)
        The factor, 1.0 when dry, and its ``verified`` word [-].

    Raises
    ------
    OutsideRule
        For LVL in wet service.

    Examples
    --------
    >>> from structlib.ground.lumber import find_material
    >>> compression_wet_factor(find_material("Hem-Fir", "No.2"), wet=True)[0]
    0.8
    """
    wet_factor(material, value="modulus", wet=wet)  # refuses what is no material, and wet LVL
    if not wet:
        return 1.0, "seen"
    key = wet_key(material, "compression")
    return factors.scalar(key), factors.verified(key)


def column_capacity(
    material,
    *,
    ply_width,
    depth,
    height,
    time_factor,
    plies=1,
    fastening="nailed",
    held_depth=None,
    held_width=None,
    end_factor=1.0,
    wet=False,
):
    """Return what a post carries along the grain, for one height and ply count or for arrays of them.

    Parameters
    ----------
    material : structlib.ground.lumber.Material
        The wood [-].
    ply_width : float
        Width of one ply, or of a solid post [mm].
    depth : float
        Depth of the plies, or the larger size of a solid post [mm].
    height : float or numpy.ndarray
        Clear height of the post [mm].
    time_factor : float
        Load duration factor C_D of the combination [-].
    plies : int or numpy.ndarray
        Plies side by side, 1 to 5 [-].
    fastening : str
        'nailed' or 'bolted', by the schedule of `built_up_fastening`; not used for one ply [-].
    held_depth : float or None
        Greatest distance between points that hold it from bowing along its depth; None for the whole height,
        0 where it is held all along [mm].
    held_width : float or None
        The same across its width or plies [mm].
    end_factor : float
        K of the effective length, 0.65 to 2.4; 1 for ends free to turn [-].
    wet : bool
        Wet service [-].

    Returns
    -------
    ColumnCapacity
        The load carried and all that made it [N, MPa, -].

    Raises
    ------
    OutsideRule
        When a single post is more slender than 50, or its plies are too thin to be built up.

    Notes
    -----
    NDS 2018 3.7.1; 15.3.2 for plies: K_f where they bow across the plies, 1.0 the other way, and never taken
    below the plies each for itself where those are within a slenderness of 50. One post too slender is
    refused; in an array it carries zero, so that nothing outside the rule is ever chosen.

    Examples
    --------
    >>> from structlib.ground.lumber import find_material
    >>> from structlib.ground.units import lb
    >>> fir = find_material("Douglas Fir-Larch", "No.2")
    >>> found = column_capacity(fir, ply_width=1.5*inch, depth=5.5*inch, height=8*ft, plies=3,
    ...     time_factor=1.0)
    >>> round(found.load / lb), found.governs
    (12384, 'width')
    """
    value, used = crushing_value(material, width=ply_width, depth=depth, time_factor=time_factor, wet=wet)
    height, plies = _checked_run(height, plies)
    check_choice("fastening", fastening, FASTENINGS)
    _check_plies_thick(ply_width, plies)
    modulus = material.modulus_stability * wet_factor(material, value="modulus", wet=wet)
    shape, shape_known = shape_constant(material)
    length_depth = held_length("held_depth", held_depth, height, end_factor)
    length_width = held_length("held_width", held_width, height, end_factor)
    width, area = ply_width * plies, ply_width * plies * depth
    share = numpy.where(plies > 1, factors.scalar(f"builtup_factor_{fastening}"), 1.0)

    def bows(length, across):
        ratio = slenderness(effective_length=length, across=across)
        buckling = critical_column_value(modulus_stability=modulus, slenderness=numpy.maximum(ratio, 1e-3))
        return ratio, buckling, column_stability_factor(ratio=buckling / value, shape=shape)

    slender_depth, critical_depth, factor_depth = bows(length_depth, depth)
    across = slender_width, critical_width, factor_width = bows(length_width, width)
    # one ply bows across itself as the whole does
    slender_ply, _, factor_ply = across if numpy.ndim(plies) == 0 and plies == 1 else bows(length_width, ply_width)
    factor_depth = factor_depth * factors.scalar("builtup_factor_depth")
    # held all along, nothing bows that way, and K_f with it has nothing to reduce
    factor_width = numpy.where(length_width > 0, share * factor_width, 1.0)
    limit = factors.scalar("column_slenderness_greatest")
    within = at_most(slender_depth, limit) & at_most(slender_width, limit)
    together = numpy.where(within, numpy.minimum(factor_depth, factor_width), 0.0)
    alone = numpy.where(
        at_most(slender_ply, limit) & at_most(slender_depth, limit) & (plies > 1),
        numpy.minimum(factor_depth, factor_ply),
        0.0,
    )
    best = numpy.maximum(together, alone)
    governs = numpy.where(
        best == 0,
        "outside the rule",
        numpy.where(alone > together, "separate plies", numpy.where(factor_depth <= factor_width, "depth", "width")),
    )
    single = numpy.ndim(best) == 0
    if single and best == 0:
        _refuse_slender(slender_depth, slender_width, limit)
    wet_known = wet_verified(material, value="modulus", wet=wet)
    known = [
        material.verified,
        material.stability_verified,
        shape_known,
        wet_known,
        factors.verified("column_stability_coefficient"),
        *(factor.verified for factor in used),
    ]
    if numpy.any(plies > 1):
        known.append(factors.verified(f"builtup_factor_{fastening}"))
    out = (
        (lambda number: number.item() if isinstance(number, (numpy.ndarray, numpy.generic)) else number)
        if single
        else (lambda number: numpy.broadcast_to(number, numpy.shape(best)))
    )
    clause = "NDS 2018 3.7.1, 15.3.2" if numpy.any(plies > 1) else "NDS 2018 3.7.1"
    used = (
        *used,
        Factor("C_P", out(best), "how slender it is", clause, factors.verified("column_stability_coefficient")),
    )
    return ColumnCapacity(
        load=out(best * value * area),
        value=out(best * value),
        crushing_value=float(value),
        area=out(area),
        slenderness_depth=out(slender_depth),
        slenderness_width=out(slender_width),
        critical_depth=out(numpy.where(length_depth > 0, critical_depth, numpy.inf)),
        critical_width=out(numpy.where(length_width > 0, critical_width, numpy.inf)),
        factor_depth=out(factor_depth),
        factor_width=out(factor_width),
        separate=out(alone * value * area),
        governs=out(governs),
        factors=used,
        verified=least_verified(known),
    )


def fewest_plies(
    material,
    *,
    load,
    time_factor,
    ply_width,
    depth,
    height,
    fastening="nailed",
    held_depth=None,
    held_width=None,
    end_factor=1.0,
    wet=False,
):
    """Return the fewest plies, up to five, that carry a load at a height.

    Parameters
    ----------
    material : structlib.ground.lumber.Material
        The wood [-].
    load : float
        Load along the post [N].
    time_factor : float
        Load duration factor C_D of the combination [-].
    ply_width : float
        Width of one ply [mm].
    depth : float
        Depth of the plies [mm].
    height : float
        Clear height of the post [mm].
    fastening : str
        'nailed' or 'bolted' [-].
    held_depth : float or None
        Distance between points that hold it along its depth; None for the whole height [mm].
    held_width : float or None
        Distance between points that hold it across its width [mm].
    end_factor : float
        K of the effective length [-].
    wet : bool
        Wet service [-].

    Returns
    -------
    int
        Plies [-].

    Raises
    ------
    OutsideRule
        When five plies are not enough.

    Examples
    --------
    >>> from structlib.ground.lumber import find_material
    >>> from structlib.ground.units import lb
    >>> fir = find_material("Douglas Fir-Larch", "No.2")
    >>> fewest_plies(fir, load=9000*lb, time_factor=1.0, ply_width=1.5*inch, depth=5.5*inch, height=8*ft)
    3
    """
    check_one_number("load", load, low=0.0, high=1e9, hint="for example 6000*lb")
    check_one_number("height", height, low=1.0, high=_TALLEST, hint="for example 8*ft")
    carried = column_capacity(
        material,
        ply_width=ply_width,
        depth=depth,
        height=height,
        plies=numpy.arange(1, _MOST_PLIES + 1),
        time_factor=time_factor,
        fastening=fastening,
        held_depth=held_depth,
        held_width=held_width,
        end_factor=end_factor,
        wet=wet,
    ).load
    return first_listed(
        lambda plies: 1 + load - carried[plies - 1],
        range(1, _MOST_PLIES + 1),
        never=f"not even {_MOST_PLIES} plies carry {show(load, 'force')} at this height; take deeper "
        "plies, hold them closer, or a solid or steel post",
    )


def check_column(column):
    """Refuse a column whose sizes or words make no sense.

    Parameters
    ----------
    column : Column
        The post [-].

    Returns
    -------
    Column
        The post, unchanged [-].

    Examples
    --------
    >>> from structlib.ground.lumber import find_material
    >>> check_column(Column(find_material("Hem-Fir", "No.2"), 1.5*inch, 3.5*inch, 8*ft, 3)).plies
    3
    """
    if not isinstance(column, Column):
        raise BadInput(
            f"a column must be a Column, got {type(column).__name__}; for example "
            "Column(wood, 1.5*inch, 5.5*inch, 8*ft, plies=3)"
        )
    refuse_unknown_material(column.material)
    check_one_number("ply width", column.ply_width, **_SIZE)
    check_one_number("depth", column.depth, **_SIZE)
    check_one_number("height", column.height, low=1.0, high=_TALLEST, hint="for example 8*ft")
    check_one_count("plies", column.plies, low=1, high=5, hint="for example 3")
    check_choice("fastening", column.fastening, FASTENINGS)
    check_yes_or_no("wet", column.wet)
    check_design_values(column.material, "bending", "compression", "modulus", "modulus_stability")
    return column


def capacity_of(column, *, time_factor):
    """Return what one column carries under loads of one duration.

    Parameters
    ----------
    column : Column
        The post [-].
    time_factor : float
        Load duration factor C_D [-].

    Returns
    -------
    ColumnCapacity
        The load carried and all that made it [N, MPa, -].

    Raises
    ------
    OutsideRule
        When it is too slender, or of a size that the values do not cover.

    Examples
    --------
    >>> from structlib.ground.lumber import find_material
    >>> from structlib.ground.units import lb
    >>> post = Column(find_material("Douglas Fir-Larch", "No.1"), 3.5*inch, 3.5*inch, 9*ft)
    >>> round(capacity_of(post, time_factor=1.0).load / lb)
    6068
    """
    check_column(column)
    return column_capacity(
        column.material,
        ply_width=column.ply_width,
        depth=column.depth,
        height=column.height,
        plies=column.plies,
        time_factor=time_factor,
        fastening=column.fastening,
        held_depth=column.held_depth,
        held_width=column.held_width,
        end_factor=column.end_factor,
        wet=column.wet,
    )


def _checked_run(height, plies):
    """Heights and ply counts as arrays of numbers in their range."""
    for name, value in (("height", height), ("plies", plies)):
        if is_symbolic(value):
            raise BadInput(f"{name} must be a number, got the symbol {value}; for example 3")
    check_number(
        "height",
        height,
        low=0.0,
        high=_TALLEST,
        low_allowed=False,
        shown=length_text,
        hint="for example 8*ft",
    )
    low, high = factors.scalar("builtup_plies_least") - 1, factors.scalar("builtup_plies_greatest")
    check_number("plies", plies, low=low, high=high, hint="for example 3")
    height, plies = numpy.asarray(height, dtype=float), numpy.asarray(plies, dtype=float)
    if numpy.any(plies % 1):
        raise BadInput(f"plies must be a whole number from 1 to {high:g}, got {plies!r}; for example 3")
    try:
        numpy.broadcast_shapes(height.shape, plies.shape)
    except ValueError:
        raise BadInput(
            f"heights and plies do not fit together: {height.shape} against {plies.shape}; give one of them "
            "as one number, or as many of each"
        ) from None
    return height, plies


def _check_plies_thick(ply_width, plies):
    least = factors.length("builtup_ply_least")
    if numpy.any(plies > 1) and ply_width < least * (1 - 1e-9):
        raise OutsideRule(
            f"plies of a built-up column are {least / inch:g} in thick or more (NDS 2018 15.3.1), "
            f"got {ply_width / inch:g} in"
        )


def held_length(name, held, height, end_factor):
    """Return the effective length one way: the whole height, or the longest piece between braces.

    Parameters
    ----------
    name : str
        Which way, for the message [-].
    held : float or None
        Greatest distance between points that hold the post; None for the whole height [mm].
    height : float or numpy.ndarray
        Clear height of the post [mm].
    end_factor : float
        K of the effective length [-].

    Returns
    -------
    float or numpy.ndarray
        Effective length [mm].

    Notes
    -----
    A brace lets the post turn, so a piece between braces takes no relief from fixed ends.

    Examples
    --------
    >>> float(held_length("held_width", 4 * ft, 10 * ft, 0.65)) / ft
    4.0
    """
    low, high = factors.scalar("column_end_factor_least"), factors.scalar("column_end_factor_greatest")
    check_one_number("end factor", end_factor, low=low, high=high, hint="1 for ends free to turn")
    if held is None:
        return effective_length(length=height, end_factor=end_factor)
    check_one_number(
        name, held, low=0.0, high=_TALLEST, shown=length_text, hint="for example 4*ft; 0 when held all along"
    )
    return effective_length(length=numpy.minimum(float(held), height), end_factor=max(end_factor, 1.0))


def _refuse_slender(slender_depth, slender_width, limit):
    worst = max(float(slender_depth), float(slender_width))
    way = "along its depth" if slender_depth >= slender_width else "across its width"
    raise OutsideRule(
        f"the post is too slender to be judged: its slenderness {way} is {worst:.0f} and the rule (NDS 2018 "
        f"3.7.1.4) stops at {limit:.0f}; hold it closer, or take a thicker post or more plies"
    )
