"""Every check of a wood post, as records: compression, end grain, slenderness, load off the middle, plate.

The formulas are in column_stability, the strength and its arrays in column_strength, steel posts in
steel_columns; their names are found here too.
"""

from dataclasses import dataclass
from functools import lru_cache

from structlib.ground.refusals import BadInput, OutsideRule, check_choice
from structlib.ground.sections import rectangle_section_modulus
from structlib.ground.tables import in_library_units, table_rows
from structlib.ground.units import ft, inch  # noqa: F401 (ft: used in the examples)
from structlib.mechanics.columns import eccentric_moment
from structlib.rules.check import Check, Combination, Factor, least_verified
from structlib.rules.us import bearing, bending, factors
from structlib.rules.us.column_stability import (  # noqa: F401
    bent_column_share,
    column_stability_factor,
    critical_column_value,
    ratio_for_factor,
)
from structlib.rules.us.column_strength import (  # noqa: F401
    FASTENINGS,
    Column,
    ColumnCapacity,
    capacity_of,
    check_column,
    column_capacity,
    compression_size_factor,
    crushing_value,
    fewest_plies,
    held_length,
    shape_constant,
)
from structlib.rules.us.inputs import check_member_length
from structlib.rules.us.one_number import check_one_number

WAYS = ("depth", "width")
STAGES = ("in service", "while building")
_HUGE = 1e9  # MPa; stands for the endless buckling value of a column that is held all along


@dataclass(frozen=True)
class ColumnDemand:
    """What one combination asks of a column.

    ``axial`` is the push along it [N]; ``eccentricity`` how far off the middle it presses [mm], in the
    direction ``way``: 'depth', or 'width' across the plies.
    """

    combination: Combination
    axial: float
    eccentricity: float = 0.0
    way: str = "depth"


@dataclass(frozen=True)
class BuiltUpFastening:
    """The fastening on which the strength of a built-up column stands: conditions to verify, never a product.

    Distances in mm as (least, greatest). ``rows`` is the least and the greatest number of rows that fit.
    ``length`` is the least length of a nail; for bolts, all plies together.
    """

    fastening: str
    diameter: float
    length: float
    end_distance: tuple[float, float]
    along_row: tuple[float, float]
    between_rows: tuple[float, float]
    edge_distance: tuple[float, float]
    rows: tuple[int, int]
    conditions: tuple[str, ...]
    clause: str
    verified: str


def column_checks(column, demands):
    """Return every check of one post, each for the combination that asks most.

    Parameters
    ----------
    column : Column
        The post [-].
    demands : iterable of ColumnDemand
        What each combination asks of it [-].

    Returns
    -------
    tuple of structlib.rules.check.Check
        Compression, bowing each way (shown beside it), end grain, the metal plate, slenderness each way, and
        bending with compression where a load is off the middle [-].

    Raises
    ------
    OutsideRule
        When the post is too slender or of a size that its values do not cover, or the load is off the middle
        across plies.

    Notes
    -----
    NDS 2018 3.6, 3.7, 3.9, 3.10.1, 15.3, 15.4. The post's own weight is not added. Loads push; wind and
    other side loads are not here.

    Examples
    --------
    >>> from structlib.ground.lumber import find_material
    >>> from structlib.ground.units import lb
    >>> from structlib.rules.us.book import RULEBOOK
    >>> post = Column(find_material("Douglas Fir-Larch", "No.2"), 1.5*inch, 5.5*inch, 8*ft, plies=3)
    >>> live = RULEBOOK.combinations({"live"})[1]
    >>> found = column_checks(post, [ColumnDemand(live, 9000 * lb)])
    >>> [(one.name, round(one.share, 2)) for one in found][:2]
    [('compression', 0.73), ('bowing along the depth', 0.35)]
    """
    check_column(column)
    demands = _checked_demands(demands)
    by_time = {one.combination.time_factor: _capacity_once(column, one.combination.time_factor) for one in demands}

    def worst(share):
        return max(demands, key=lambda one: share(one, by_time[one.combination.time_factor]))

    most = worst(lambda one, found: one.axial / found.load)
    found = by_time[most.combination.time_factor]
    checks = [
        _compression(column, most, found),
        _bowing(column, most, found, "depth"),
        _bowing(column, most, found, "width"),
        *_end_grain(column, most, found),
    ]
    checks += [slenderness_check(column, way=way) for way in WAYS]
    bent = [one for one in demands if one.eccentricity]
    if bent:
        checks.append(
            max(
                (_bent(column, one, by_time[one.combination.time_factor]) for one in bent),
                key=lambda check: check.share,
            )
        )
    return tuple(checks)


@lru_cache(maxsize=256)
def _capacity_once(column, time_factor):
    return capacity_of(column, time_factor=time_factor)


def _checked_demands(demands):
    listed = None if isinstance(demands, (str, bytes, dict)) else demands
    try:
        listed = tuple(listed)
    except TypeError:
        listed = ()
    if not listed or not all(isinstance(one, ColumnDemand) for one in listed):
        raise BadInput(
            f"demands must be a list of ColumnDemand records, got {demands!r}; for example "
            "[ColumnDemand(combination, 9000*lb)]"
        )
    for one in listed:
        if not isinstance(one.combination, Combination):
            raise BadInput(
                f"a demand needs a combination of the rulebook, got {type(one.combination).__name__}; for "
                "example RULEBOOK.combinations({'live'})[1]"
            )
        check_one_number("push along the post", one.axial, low=0.0, high=1e9, hint="for example 9000*lb")
        check_one_number("eccentricity", one.eccentricity, low=0.0, high=1000.0, hint="for example 1*inch")
        check_choice("way of the eccentricity", one.way, WAYS)
    return listed


def _stress(column, demand):
    return demand.axial / column.area


def _numbers(column, demand, found, *more):
    return (
        ("P", demand.axial, "force"),
        ("A", column.area, "area"),
        ("f_c", _stress(column, demand), "stress"),
        ("F_c*", found.crushing_value, "stress"),
        *more,
    )


def _clause(column):
    return "NDS 2018 3.7.1" if column.plies == 1 else "NDS 2018 3.7.1, 15.3.2"


def _compression(column, demand, found):
    told = {
        "depth": "it would bow along its depth first",
        "width": "it would bow across its width first",
        "separate plies": "its plies, each for itself, carry more than they do together",
    }[found.governs]
    stress = _stress(column, demand)
    return Check(
        name="compression",
        kind="compression",
        sentence=f"the post is pressed along the grain; {told}",
        asked=stress,
        given=found.value,
        share=stress / found.value,
        dimension="stress",
        position=0.0,
        where="all along the post",
        combination=demand.combination.name,
        clause=_clause(column),
        formula="f_c = P / A <= F_c' = F_c* C_P",
        substitute=_numbers(column, demand, found, ("F_c'", found.value, "stress")),
        factors=found.factors,
        verified=found.verified,
    )


def _bowing(column, demand, found, way):
    factor = found.factor_depth if way == "depth" else found.factor_width
    given, stress = found.crushing_value * factor, _stress(column, demand)
    plies = way == "width" and column.plies > 1
    name = "bowing along the depth" if way == "depth" else f"bowing across the {'plies' if plies else 'width'}"
    length, across = _length_and_size(column, found, way)
    used = (
        Factor(
            "C_P",
            factor,
            "bowing this way alone",
            _clause(column),
            factors.verified("column_stability_coefficient"),
        ),
    )
    if plies:
        key = f"builtup_factor_{column.fastening}"
        used += (
            Factor(
                "K_f",
                factors.scalar(key),
                f"plies {column.fastening} (inside C_P)",
                "NDS 2018 15.3.2.4",
                factors.verified(key),
            ),
        )
    return Check(
        name=name,
        kind=f"bowing, {way}",
        sentence="what it would carry if it could bow this way only",
        asked=stress,
        given=given,
        share=stress / given,
        dimension="stress",
        position=0.0,
        where="at mid-height",
        combination=demand.combination.name,
        clause=_clause(column),
        formula="f_c = P / A <= F_c* C_P, F_cE = 0.822 E_min' / (l_e/d)^2",
        substitute=_numbers(column, demand, found, ("l_e", length, "length"), ("d", across, "section length")),
        factors=used,
        verified=found.verified,
        decides=False,
    )


def _end_grain(column, demand, found):
    stress, value = _stress(column, demand), found.crushing_value
    share = factors.scalar("end_grain_plate_share")
    used = tuple(factor for factor in found.factors if factor.symbol != "C_P")
    known = least_verified([column.material.verified, *(factor.verified for factor in used)])
    shared = dict(
        asked=stress,
        dimension="stress",
        position=0.0,
        where="at the ends, post on post or on steel",
        combination=demand.combination.name,
        clause="NDS 2018 3.10.1",
        factors=used,
        substitute=_numbers(column, demand, found),
    )
    return (
        Check(
            name="end grain",
            kind="end grain",
            sentence="the end of the post is crushed along the grain",
            given=value,
            share=stress / value,
            formula="f_c = P / A <= F_c*",
            verified=known,
            **shared,
        ),
        Check(
            name="metal plate at the ends",
            kind="metal plate",
            decides=False,
            given=share * value,
            sentence="over this the end grain wants a metal plate, so that fibres do not push into fibres",
            share=stress / (share * value),
            formula=f"f_c = P / A beside {share:g} F_c*",
            verified=least_verified([known, factors.verified("end_grain_plate_share")]),
            **shared,
        ),
    )


def _length_and_size(column, found, way):
    across = column.depth if way == "depth" else column.width
    ratio = found.slenderness_depth if way == "depth" else found.slenderness_width
    return ratio * across, across


def slenderness_check(column, *, way, stage="in service"):
    """Return the slenderness of a post in one direction against its limit.

    Parameters
    ----------
    column : Column
        The post [-].
    way : str
        Direction of bowing: 'depth' or 'width' [-].
    stage : str
        'in service', or 'while building': a post may be more slender until what braces it is up [-].

    Returns
    -------
    structlib.rules.check.Check
        Effective length against the longest that the limit allows [mm].

    Notes
    -----
    NDS 2018 3.7.1.4: l_e/d not over 50; 75 during construction. The second says only that it may stand for
    that time; what it carries then is not asked here.

    Examples
    --------
    >>> from structlib.ground.lumber import find_material
    >>> post = Column(find_material("Hem-Fir", "No.2"), 1.5*inch, 3.5*inch, 8*ft)
    >>> for stage in ("in service", "while building"):
    ...     print(round(slenderness_check(post, way="width", stage=stage).share, 2))
    1.28
    0.85
    """
    check_column(column)
    check_choice("way", way, WAYS)
    check_choice("stage", stage, STAGES)
    key = "column_slenderness_greatest" + ("" if stage == "in service" else "_building")
    limit = factors.scalar(key)
    across = column.depth if way == "depth" else column.width
    held = column.held_depth if way == "depth" else column.held_width
    length = float(held_length("held length", held, float(column.height), column.end_factor))
    given = limit * across
    return Check(
        name=f"slenderness along the {way}" if way == "depth" else "slenderness across the width",
        kind="slenderness",
        sentence="a post more slender than this is not judged at all",
        asked=length,
        given=given,
        share=length / given,
        dimension="length",
        position=0.0,
        where=f"effective length, {stage}",
        combination="any",
        clause="NDS 2018 3.7.1.4",
        formula=f"l_e <= {limit:g} d",
        substitute=(("l_e", length, "length"), ("d", across, "section length")),
        verified=factors.verified(key),
        decides=stage == "in service",
    )


def _bent(column, demand, found):
    depthwise = demand.way == "depth"
    if not depthwise:
        _refuse_across(column)
    value, used = bending.bending_value(
        column.material,
        # nails slip: against rolling sideways each ply counts by itself, on the careful side
        width=column.ply_width,
        depth=column.depth,
        plies=1,
        ply_width=column.ply_width,
        # a load off the middle along the depth can roll the post sideways between what holds its width
        unbraced_length=_unheld(column) if depthwise else 0.0,
        time_factor=demand.combination.time_factor,
        wet=column.wet,
        sharing_members=1,
        case="single span, equal end moments",
    )
    stress, moment = (
        _stress(column, demand),
        eccentric_moment(load=demand.axial, eccentricity=demand.eccentricity),
    )
    across, along = (column.depth, column.width) if depthwise else (column.width, column.depth)
    modulus = rectangle_section_modulus(width=along, depth=across)
    critical = min(found.critical_depth if depthwise else found.critical_width, _HUGE)
    share = bent_column_share(
        compression_stress=stress,
        compression_value=found.value,
        bending_stress=0.0,
        bending_value=float(value),
        critical_value=critical,
        off_center_stress=moment / modulus,
    )
    return Check(
        name="bending and compression",
        kind="combined",
        asked=share,
        given=1.0,
        share=share,
        dimension="ratio",
        sentence="the load is off the middle: one side of the post is pressed by it twice",
        position=0.0,
        where=f"at mid-height, load off the middle by the {demand.way}",
        combination=demand.combination.name,
        clause="NDS 2018 3.9.2, 15.4.1",
        formula="(f_c / F_c')^2 + f_e (1 + 0.234 f_c / F_cE) / (F_b' (1 - f_c / F_cE)) <= 1, f_e = P e / S",
        substitute=_numbers(
            column,
            demand,
            found,
            ("F_c'", found.value, "stress"),
            ("e", demand.eccentricity, "small length"),
            ("S", modulus, "section modulus"),
            ("f_e", moment / modulus, "stress"),
            ("F_b'", float(value), "stress"),
            ("F_cE", critical, "stress"),
        ),
        factors=used,
        verified=least_verified(
            [
                found.verified,
                factors.verified("column_eccentric_growth"),
                *(factor.verified for factor in used),
            ]
        ),
    )


def _unheld(column):
    return float(column.height if column.held_width is None else min(column.held_width, column.height))


def _refuse_across(column):
    if column.plies > 1:
        raise OutsideRule(
            "a load off the middle across the plies asks the fasteners to make one piece of them, which "
            "these "
            "rules do not give; center the load, turn the post, or take a solid one"
        )
    square = abs(column.depth - column.width) <= 1e-6 * column.depth
    if column.material.kind in ("lvl", "timber") and not square:
        raise OutsideRule(
            f"{column.material.name} has other bending values on its flat, which are not in the data; center "
            "the load or turn the post"
        )


def plate_check(column, demands, plate, *, distance_to_end=0.0, wet=False):
    """Return the check of the wood plate on which a post stands: its fibres are crushed from the side.

    Parameters
    ----------
    column : Column
        The post; its width lies along the plate [-].
    demands : iterable of ColumnDemand
        What each combination asks of it [-].
    plate : structlib.ground.lumber.Material
        Wood of the plate [-].
    distance_to_end : float
        From the post to the nearer end of the plate [mm].
    wet : bool
        Whether the plate stays wet in use [-].

    Returns
    -------
    structlib.rules.check.Check
        Bearing across the grain of the plate; how long the load lasts does not matter to it [MPa].

    Notes
    -----
    NDS 2018 3.10.2, 3.10.4.

    Examples
    --------
    >>> from structlib.ground.lumber import find_material
    >>> from structlib.ground.units import lb
    >>> from structlib.rules.us.book import RULEBOOK
    >>> fir = find_material("Hem-Fir", "No.2")
    >>> demand = ColumnDemand(RULEBOOK.combinations({"live"})[1], 9000 * lb)
    >>> round(plate_check(Column(fir, 1.5*inch, 3.5*inch, 8*ft, plies=3), [demand], fir).share, 2)
    1.41
    """
    check_column(column)
    bending.refuse_unknown_material(plate)
    check_member_length("distance to the end of the plate", distance_to_end)
    most = max(_checked_demands(demands), key=lambda one: one.axial)
    on_bearing = bending.wet_factor(plate, value="bearing", wet=wet)
    area_factor = float(bearing.bearing_area_factor(bearing_length=column.width, distance_to_end=distance_to_end))
    stress = float(bearing.bearing_stress(reaction=most.axial, width=column.depth, bearing_length=column.width))
    given = plate.bearing * on_bearing * area_factor
    known = bending.wet_verified(plate, value="bearing", wet=wet)
    return Check(
        name="plate under the post",
        kind="bearing",
        sentence="the post pushes into the side of the plate's fibres",
        asked=stress,
        given=given,
        share=stress / given,
        dimension="stress",
        position=0.0,
        where="at the foot of the post",
        combination=most.combination.name,
        clause="NDS 2018 3.10.2, 3.10.4",
        formula="f = P / (width * depth) <= F_perp' = F_perp * factors",
        substitute=(
            ("P", most.axial, "force"),
            ("width", column.width, "section length"),
            ("depth", column.depth, "section length"),
            ("f", stress, "stress"),
            ("F_perp'", given, "stress"),
        ),
        factors=(
            Factor(
                "C_b",
                area_factor,
                "short seat away from the end",
                "NDS 2018 3.10.4",
                factors.verified("bearing_area_added_length"),
            ),
            Factor("C_M", on_bearing, "wet or dry in use", "NDS Supplement 2018", known),
        ),
        verified=least_verified([plate.verified, known]),
    )


def least_size_check(column):
    """Return the least size of a wood column that stands free, whatever its load.

    Parameters
    ----------
    column : Column
        The post [-].

    Returns
    -------
    structlib.rules.check.Check
        Its smaller size against that of the least column; shown for posts inside walls too, where it does not
        apply [mm].

    Notes
    -----
    IRC R407.3: 4x4 nominal; restrained at the bottom.

    Examples
    --------
    >>> from structlib.ground.lumber import find_material
    >>> post = Column(find_material("Hem-Fir", "No.2"), 1.5*inch, 5.5*inch, 8*ft, plies=2)
    >>> round(least_size_check(post).share, 3)
    1.167
    """
    check_column(column)
    least, has = factors.dressed_of(factors.scalar("free_post_least_wood")), min(column.width, column.depth)
    return Check(
        name="least size of a free-standing column",
        kind="size",
        asked=least,
        given=has,
        share=least / has,
        sentence="a column that stands free is at least this thick, and held at its foot",
        dimension="section length",
        position=0.0,
        where="its smaller size",
        combination="any",
        clause="IRC R407.3",
        formula="least size <= size",
        substitute=(("least size", least, "section length"), ("size", has, "section length")),
        verified=factors.verified("free_post_least_wood"),
    )


def built_up_fastening(column, *, diameter=None):
    """Return the fastening that the strength of a built-up column stands on, as conditions to verify.

    Parameters
    ----------
    column : Column
        The post, of two to five plies [-].
    diameter : float or None
        Shank of the nail or bolt; None for the shortest common nail that is long enough [mm].

    Returns
    -------
    BuiltUpFastening
        Distances, rows, least length and conditions [mm, -].

    Raises
    ------
    OutsideRule
        When it is one solid piece, no common nail is long enough, or the fastener is so thick that its
        distances leave no room.

    Notes
    -----
    NDS 2018 15.3.3 (nails), 15.3.4 (bolts).

    Examples
    --------
    >>> from structlib.ground.lumber import find_material
    >>> post = Column(find_material("Hem-Fir", "No.2"), 1.5*inch, 5.5*inch, 8*ft, plies=3)
    >>> nailing = built_up_fastening(post)
    >>> round(nailing.length / inch, 3), [round(d / inch, 2) for d in nailing.along_row], nailing.rows
    (4.125, [4.14, 9.0], (2, 2))
    """
    check_column(column)
    if column.plies == 1:
        raise OutsideRule("one solid piece has no plies to fasten; a built-up column has two to five")
    nailed = column.fastening == "nailed"
    whole = column.ply_width * column.plies
    last = factors.scalar("builtup_nail_last_ply")
    length = whole - (1 - last) * column.ply_width if nailed else whole
    if diameter is None:
        diameter = _shortest_nail(length)["diameter"] if nailed else _ask_bolt()
    check_one_number("diameter of the fastener", diameter, low=1.0, high=inch, hint="for example 0.148*inch")
    kind = "nail" if nailed else "bolt"
    end = _range(kind, "end", diameter)
    between = _range(kind, "between_rows", diameter)
    edge = _range("nail", "edge", diameter) if nailed else between
    along = (
        factors.scalar(f"builtup_{kind}_row_least") * diameter,
        factors.scalar("builtup_row_greatest_plies") * column.ply_width,
    )
    least_rows = 2 if column.depth > factors.scalar("builtup_two_rows_depth") * column.ply_width * (1 + 1e-9) else 1
    fits = [
        rows
        for rows in range(least_rows, 30)
        if 2 * edge[0] + (rows - 1) * between[0] <= column.depth * (1 + 1e-9)
        and column.depth <= (2 * edge[1] + (rows - 1) * between[1]) * (1 + 1e-9)
    ]
    if not fits or along[0] > along[1] * (1 + 1e-9):
        raise OutsideRule(
            f"a {kind} {diameter / inch:.3g} in thick leaves no room for its own distances in plies "
            f"{column.ply_width / inch:g} in by {column.depth / inch:g} in; take a thinner one"
        )
    return BuiltUpFastening(
        column.fastening,
        diameter,
        length,
        end,
        along,
        between,
        edge,
        (fits[0], fits[-1]),
        _conditions(nailed, fits[0]),
        "NDS 2018 15.3.1, 15.3.3" if nailed else "NDS 2018 15.3.1, 15.3.4",
        "recalled",
    )


def _range(kind, distance, diameter):
    return tuple(factors.scalar(f"builtup_{kind}_{distance}_{end}") * diameter for end in ("least", "greatest"))


def _ask_bolt():
    raise BadInput("the diameter of the bolts is missing; for example diameter=0.5*inch")


def _shortest_nail(length):
    common = [
        {
            "name": row["nail"],
            "length": in_library_units(row, "length_in"),
            "diameter": in_library_units(row, "diameter_in"),
        }
        for row in table_rows("us_fasteners_nails")
        if row["kind"] == "common"
    ]
    long_enough = [nail for nail in common if nail["length"] >= length * (1 - 1e-9)]
    if not long_enough:
        raise OutsideRule(
            f"no common nail is {length / inch:.3g} in long, so these plies cannot be nailed through; bolt "
            "them, or ask the engineer"
        )
    return min(long_enough, key=lambda nail: nail["length"])


def shortest_common_nail(column):
    """Return the shortest common nail that reaches deep enough into the last ply of a nailed column.

    Parameters
    ----------
    column : Column
        The post, of two to five plies [-].

    Returns
    -------
    str
        Name of the nail [-].

    Raises
    ------
    OutsideRule
        When it is one solid piece or no common nail is long enough.

    Notes
    -----
    NDS 2018 15.3.3: through all plies but the last, and three quarters of that.

    Examples
    --------
    >>> from structlib.ground.lumber import find_material
    >>> shortest_common_nail(Column(find_material("Hem-Fir", "No.2"), 1.5*inch, 5.5*inch, 8*ft, plies=2))
    '10d common'
    """
    check_column(column)
    if column.plies == 1:
        raise OutsideRule("one solid piece has no plies to fasten; a built-up column has two to five")
    last = factors.scalar("builtup_nail_last_ply")
    return _shortest_nail((column.plies - 1 + last) * column.ply_width)["name"]


def _conditions(nailed, rows):
    shared = (
        "two to five plies of one depth, each 1 1/2 in or thicker, faces touching",
        "every ply in one length, from bottom to top",
        "every ply cut square and bearing at both ends",
    )
    if not nailed:
        return (
            *shared,
            "a plate or washer under every head and nut; nuts snug",
            "bolts pass through all plies",
        )
    stagger = (
        "nails of the one row shifted to either side of it"
        if rows == 1
        else "where there are three rows or more, neighboring rows shifted by half a spacing"
    )
    return (
        *shared,
        "nails go through all plies, and at least three quarters into the last",
        "neighboring nails driven from opposite sides",
        stagger,
    )
