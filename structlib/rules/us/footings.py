"""Footings: from the load of a post or a wall to the soil, the code's table, and why a slab is no footing.

Soil values are presumptive. What a slab, a stone wall or an old pad may carry is not judged here: the demand
is shown, and the sentence says who judges it.
"""

from dataclasses import dataclass
from functools import cache

import numpy

from structlib.ground.asked_back import asked_back
from structlib.ground.refusals import BadInput, OutsideRule, check_choice, is_symbolic
from structlib.ground.roots import square_root
from structlib.ground.showing import show
from structlib.ground.tables import in_library_units, table_row, table_rows
from structlib.ground.units import ft, inch, lb, pcf, plf, psf  # noqa: F401 (some: in examples)
from structlib.rules.check import Check, least_verified
from structlib.rules.us import factors
from structlib.rules.us.inputs import anywhere, check_amount
from structlib.rules.us.one_number import check_one_count, check_one_number, inches_text, length_text, psf_text

SPREADS = {"1:2": 0.5, "45 degrees": 1.0}
_WIDEST = 20 * ft
# how far the footing table is stepped from its 32 ft house: a limit of this library, not of the code
_HOUSES = (20 * ft, 44 * ft)


@dataclass(frozen=True)
class Soil:
    """A class of soil and what a footing may press on it where no soil report says otherwise [MPa]."""

    name: str
    pressure: float
    description: str
    groups: str
    clause: str
    verified: str
    note: str


@dataclass(frozen=True)
class TableFooting:
    """A footing read from the code's table: least width and thickness [mm], and what the table assumes."""

    width: float
    thickness: float
    house_width: float
    clause: str
    basis: str
    verified: str


@dataclass(frozen=True)
class SpreadDemand:
    """What a load asks of something that these rules do not judge: shown, with no verdict.

    ``spread_length`` and ``spread_width`` are the sides of the area that the load has spread to [mm],
    ``pressure`` the pressure on it [MPa]; ``shear_length`` [mm] and ``shear_stress`` [MPa] the perimeter
    around the plate and the shear along it, zero where not asked. ``gate`` says who must judge it."""

    spread_length: float
    spread_width: float
    pressure: float
    shear_length: float
    shear_stress: float
    sentence: str
    gate: str


@cache
def soil_names():
    """List the classes of soil.

    Returns
    -------
    tuple of str
        Names, softest first [-].

    Examples
    --------
    >>> soil_names()[0]
    'clay or silt'
    """
    return tuple(row["soil"] for row in table_rows("us_soil_bearing"))


def find_soil(name):
    """Return a class of soil with its presumptive bearing.

    Parameters
    ----------
    name : str
        Name of the class [-].

    Returns
    -------
    Soil
        The class [-].

    Notes
    -----
    IRC Table R401.4.1. Fill, peat and anything likely to bear less than 1500 psf wants a soil investigation.

    Examples
    --------
    >>> round(find_soil("clay or silt").pressure / psf)
    1500
    """
    return _soils()[check_choice("soil", name, soil_names())]


@cache
def _soils():
    return {
        row["soil"]: Soil(
            row["soil"],
            in_library_units(row, "pressure_psf"),
            row["description"],
            row["groups"],
            row["source"],
            row["verified"],
            row["note"],
        )
        for row in table_rows("us_soil_bearing")
    }


@cache
def concrete_weight():
    """Return the weight of concrete that the footings are worked out with.

    Returns
    -------
    float
        Weight of reinforced concrete, the heavier of the two in the data [N/mm3].

    Examples
    --------
    >>> round(concrete_weight() / pcf)
    150
    """
    return in_library_units(
        table_row("dead_loads", category="density", item="concrete reinforced, stone aggregate"), "value"
    )


def net_pressure(*, soil_pressure, thickness, weight_density):
    """Return what is left of the soil's bearing after the footing's own weight.

    Parameters
    ----------
    soil_pressure : float, numpy.ndarray or sympy expression
        Bearing of the soil [MPa].
    thickness : float, numpy.ndarray or sympy expression
        Thickness of the footing [mm].
    weight_density : float, numpy.ndarray or sympy expression
        Weight of the footing [N/mm3].

    Returns
    -------
    float, numpy.ndarray or sympy expression
        Bearing left for the load [MPa].

    Notes
    -----
    Soil that the footing takes the place of is not credited, which is on the careful side.

    Examples
    --------
    >>> net_pressure(soil_pressure=2000.0, thickness=1.0, weight_density=150.0)
    1850.0
    """
    check_amount("soil pressure", soil_pressure, hint="for example 2000*psf")
    check_amount("thickness", thickness, zero=True, hint="for example 12*inch")
    check_amount("weight density", weight_density, zero=True, hint="for example 150*pcf")
    net = soil_pressure - weight_density * thickness
    if not is_symbolic(net) and anywhere(net <= 0):
        raise BadInput("the footing alone weighs as much as the soil bears; make it thinner, for example 12*inch")
    return net


def pad_area(*, load, net_pressure):
    """Return the area that a load needs on the soil.

    Parameters
    ----------
    load : float, numpy.ndarray or sympy expression
        Load of the post [N].
    net_pressure : float, numpy.ndarray or sympy expression
        Bearing left after the footing's own weight [MPa].

    Returns
    -------
    float, numpy.ndarray or sympy expression
        Area [mm2].

    Examples
    --------
    >>> pad_area(load=15000.0, net_pressure=1500.0)
    10.0
    """
    check_amount("load", load, zero=True, hint="for example 10000*lb")
    check_amount("net pressure", net_pressure, hint="for example 1850*psf")
    return load / net_pressure


def pad_side(*, load, soil_pressure, thickness, weight_density=None):
    """Return the side of a square pad whose load and own weight use the soil's bearing exactly.

    Parameters
    ----------
    load : float, numpy.ndarray or sympy expression
        Load of the post [N].
    soil_pressure : float, numpy.ndarray or sympy expression
        Bearing of the soil [MPa].
    thickness : float, numpy.ndarray or sympy expression
        Thickness of the pad [mm].
    weight_density : float, numpy.ndarray or sympy expression or None
        Weight of the pad; None for concrete [N/mm3].

    Returns
    -------
    float, numpy.ndarray or sympy expression
        Side [mm].

    Examples
    --------
    >>> round(pad_side(load=15000*lb, soil_pressure=2000*psf, thickness=12*inch) / ft, 3)
    2.847
    """
    density = concrete_weight() if weight_density is None else weight_density
    net = net_pressure(soil_pressure=soil_pressure, thickness=thickness, weight_density=density)
    return square_root(pad_area(load=load, net_pressure=net))


def wall_footing_width(*, line_load, soil_pressure, thickness, weight_density=None):
    """Return the width of a footing under a wall whose load and own weight use the soil's bearing exactly.

    Parameters
    ----------
    line_load : float, numpy.ndarray or sympy expression
        Load of the wall [N/mm].
    soil_pressure : float, numpy.ndarray or sympy expression
        Bearing of the soil [MPa].
    thickness : float, numpy.ndarray or sympy expression
        Thickness of the footing [mm].
    weight_density : float, numpy.ndarray or sympy expression or None
        Weight of the footing; None for concrete [N/mm3].

    Returns
    -------
    float, numpy.ndarray or sympy expression
        Width; the code's least (12 in) is not in it [mm].

    Examples
    --------
    >>> round(wall_footing_width(line_load=2000*plf, soil_pressure=1500*psf, thickness=8*inch) / inch, 2)
    17.14
    """
    check_amount("line load", line_load, zero=True, hint="for example 2000*plf")
    density = concrete_weight() if weight_density is None else weight_density
    return line_load / net_pressure(soil_pressure=soil_pressure, thickness=thickness, weight_density=density)


def pad_checks(*, load, side, thickness, soil, base, combination="all loads"):
    """Return the checks of a square plain-concrete pad under a post.

    Parameters
    ----------
    load : float
        Load of the post [N].
    side : float
        Side of the pad [mm].
    thickness : float
        Thickness of the pad [mm].
    soil : Soil
        What it stands on [-].
    base : float
        Side of the post, pier or plate on the pad [mm].
    combination : str
        Which loads these are [-].

    Returns
    -------
    tuple of structlib.rules.check.Check
        Soil pressure, reach past the base (not over the thickness, not under 2 in), least thickness and width
        [MPa, mm].

    Notes
    -----
    IRC R401.4.1, R403.1.1, for footings under walls and piers. A pad that reaches farther than it is thick
    bends and wants steel, which is for an engineer. Depth: at least 12 in into undisturbed ground and below
    frost.

    Examples
    --------
    >>> found = pad_checks(load=10000*lb, side=32*inch, thickness=14*inch, base=4*inch,
    ...     soil=find_soil("clay or silt"))
    >>> [(one.name, round(one.share, 2)) for one in found][:2]
    [('soil pressure', 1.05), ('reach past the base', 1.0)]
    """
    _check_soil(soil)
    check_one_number("load", load, low=0.0, high=1e8, hint="for example 10000*lb")
    check_one_number("side of the pad", side, low=4 * inch, high=_WIDEST, shown=length_text, hint="for example 32*inch")
    check_one_number("thickness", thickness, low=1 * inch, high=6 * ft, shown=length_text, hint="for example 12*inch")
    check_one_number(
        "base",
        base,
        low=1 * inch,
        high=side,
        shown=length_text,
        hint="what stands on the pad is no wider than the pad",
    )
    pressure = load / side**2 + concrete_weight() * thickness
    reach, least_reach = (side - base) / 2, factors.length("pad_projection_least")
    concrete = table_row("dead_loads", category="density", item="concrete reinforced, stone aggregate")["verified"]

    def check(name, kind, sentence, asked, given, dimension, clause, formula, substitute, known):
        return Check(
            name=name,
            kind=kind,
            sentence=sentence,
            asked=asked,
            given=given,
            share=asked / given if given > 0 else float("inf"),
            dimension=dimension,
            position=0.0,
            where="under the pad" if kind == "soil" else "at the edge of the pad",
            combination=combination,
            clause=clause,
            formula=formula,
            substitute=substitute,
            verified=least_verified(known),
        )

    thin, narrow = factors.length("footing_least_thickness"), factors.length("footing_least_width")
    size = (
        ("a", side, "section length"),
        ("t", thickness, "section length"),
        ("base", base, "section length"),
    )
    return (
        check(
            "soil pressure",
            "soil",
            "the pad and its load press on the soil",
            pressure,
            soil.pressure,
            "area load",
            "IRC R401.4.1",
            "q = P / a^2 + concrete * t <= q_soil",
            (
                ("P", load, "force"),
                *size[:2],
                ("concrete", concrete_weight(), "weight density"),
                ("q", pressure, "area load"),
            ),
            [soil.verified, concrete],
        ),
        check(
            "reach past the base",
            "pad thickness",
            "plain concrete that reaches farther than it is thick would crack across",
            reach,
            thickness,
            "section length",
            "IRC R403.1.1",
            "(a - base) / 2 <= t",
            size,
            [factors.verified("pad_projection_least")],
        ),
        check(
            "least reach",
            "pad",
            "the pad shows all around what stands on it",
            least_reach,
            reach,
            "section length",
            "IRC R403.1.1",
            "least reach <= (a - base) / 2",
            size,
            [factors.verified("pad_projection_least")],
        ),
        check(
            "least thickness",
            "pad thickness",
            "the code's least, whatever the load",
            thin,
            thickness,
            "section length",
            "IRC R403.1.1",
            "least thickness <= t",
            size,
            [factors.verified("footing_least_thickness")],
        ),
        check(
            "least width",
            "pad",
            "the code's least, whatever the load",
            narrow,
            side,
            "section length",
            "IRC R403.1.1",
            "least width <= a",
            size,
            [factors.verified("footing_least_width")],
        ),
    )


def pad_thickness(*, side, base):
    """Return the least thickness of a plain pad, so that it reaches no farther than it is thick.

    Parameters
    ----------
    side : float
        Side of the pad [mm].
    base : float
        Side of the post, pier or plate on it [mm].

    Returns
    -------
    float
        Thickness, 6 in or more [mm].

    Notes
    -----
    IRC R403.1.1.

    Examples
    --------
    >>> round(pad_thickness(side=32*inch, base=4*inch) / inch, 9)
    14.0
    """
    check_one_number("side of the pad", side, low=4 * inch, high=_WIDEST, shown=length_text, hint="for example 32*inch")
    check_one_number(
        "base",
        base,
        low=1 * inch,
        high=side,
        shown=length_text,
        hint="what stands on the pad is no wider than the pad",
    )
    return max((side - base) / 2, factors.length("footing_least_thickness"))


def plain_pad(*, load, soil, base):
    """Return side and thickness of the smallest plain pad that keeps to the soil and to its own thickness.

    Parameters
    ----------
    load : float
        Load of the post [N].
    soil : Soil
        What it stands on [-].
    base : float
        Side of the post, pier or plate on it [mm].

    Returns
    -------
    tuple of (float, float)
        Side and thickness, not rounded; never under the code's least [mm].

    Raises
    ------
    OutsideRule
        When so thick a pad would use up the soil by its own weight.

    Notes
    -----
    A wider pad must be thicker, and a thicker one weighs more, so the two are found together.

    Examples
    --------
    >>> side, thickness = plain_pad(load=10000*lb, soil=find_soil("clay or silt"), base=3.5*inch)
    >>> round(side / inch, 1), round(thickness / inch, 1)
    (33.1, 14.8)
    """
    _check_soil(soil)
    check_one_number("load", load, low=0.0, high=1e8, hint="for example 10000*lb")
    check_one_number("base", base, low=1 * inch, high=6 * ft, shown=length_text, hint="for example 3.5*inch")
    least = max(factors.length("footing_least_width"), base + 2 * factors.length("pad_projection_least"))

    thinnest, density = factors.length("footing_least_thickness"), concrete_weight()

    def carries(side):
        thickness = numpy.maximum((side - base) / 2, thinnest)
        return (soil.pressure - density * thickness) * side**2

    if carries(least) >= load:
        return least, pad_thickness(side=least, base=base)
    # what it carries grows with the side until the thickness weighs a third of the soil's bearing
    sides = numpy.linspace(least, _WIDEST, 2000)
    side = asked_back(
        lambda side: 1 + load - carries(side),
        low=least,
        high=max(float(sides[numpy.argmax(carries(sides))]), least + 1.0),
        never=f"no plain pad carries {show(load, 'force')} on {soil.name}: its own weight uses up the soil; a "
        "reinforced pad is for an engineer",
    )
    return side, pad_thickness(side=side, base=base)


def table_footing(
    *, construction, stories, foundation, ground_snow=30 * psf, soil_pressure=2000 * psf, house_width=32 * ft
):
    """Return the code's least footing under an outside wall, read from its table.

    Parameters
    ----------
    construction : str
        'light frame' or 'solid masonry or concrete' [-].
    stories : int
        1 to 3 [-].
    foundation : str
        'slab on grade', 'crawl space' or 'basement' [-].
    ground_snow : float
        Ground snow; only 30 psf is at hand, and less reads the same [MPa].
    soil_pressure : float
        Bearing of the soil; only 2000 psf is at hand [MPa].
    house_width : float
        Width of the house, 20 to 44 ft; the table is for 32 ft [mm].

    Returns
    -------
    TableFooting
        Width, thickness and what the table assumes [mm].

    Raises
    ------
    OutsideRule
        When the snow or soil is one whose cells are not at hand, or the width is far from the table's.

    Notes
    -----
    IRC 2015/2018 Tables R403.1(1) and R403.1(3). For each 2 ft of house width: 2 in of width and 1 in of
    thickness, never under 6 in thick or 12 in wide; a part of a step counts whole where it adds, and not at
    all where it takes away.

    Examples
    --------
    >>> footing = table_footing(construction="light frame", stories=2, foundation="basement")
    >>> round(footing.width / inch, 6), round(footing.thickness / inch, 6)
    (17.0, 6.0)
    """
    rows = table_rows("us_footings")
    check_choice("construction", construction, dict.fromkeys(row["construction"] for row in rows))
    check_choice("foundation", foundation, dict.fromkeys(row["foundation"] for row in rows))
    stories = check_one_count("stories", stories, low=1, high=3, hint="for example 2")
    check_one_number("ground snow", ground_snow, low=0.0, high=300 * psf, shown=psf_text, hint="for example 30*psf")
    check_one_number(
        "soil pressure", soil_pressure, low=0.0, high=20000 * psf, shown=psf_text, hint="for example 2000*psf"
    )
    check_one_number("house width", house_width, low=1 * ft, high=200 * ft, shown=length_text, hint="for example 32*ft")
    row = next(
        row
        for row in rows
        if (row["construction"], row["stories"], row["foundation"]) == (construction, stories, foundation)
    )
    snow, soil = in_library_units(row, "ground_snow_psf"), in_library_units(row, "soil_psf")
    if ground_snow > snow * (1 + 1e-9):
        raise OutsideRule(
            f"only the footings for {psf_text(snow)} of ground snow are at hand, got {psf_text(ground_snow)}; look "
            "it up in "
            f"{row['table']}, or work the width out from the load"
        )
    if abs(soil_pressure - soil) > 1e-6 * soil:
        raise OutsideRule(
            f"only the footings on soil of {psf_text(soil)} are at hand, got {psf_text(soil_pressure)}; look it up "
            "in "
            f"{row['table']}, or work the width out from the load"
        )
    if not _HOUSES[0] <= house_width * (1 + 1e-9) or not house_width <= _HOUSES[1] * (1 + 1e-9):
        raise OutsideRule(
            f"the table is for a house 32 ft wide; {length_text(house_width)} is too far from it to step "
            f"there ({length_text(_HOUSES[0])} to {length_text(_HOUSES[1])} is accepted); work the width out "
            "from the load"
        )
    middle = in_library_units(row, "house_width_ft")
    steps = numpy.ceil((house_width - middle) / factors.length("footing_step_house_width") - 1e-9)
    width = in_library_units(row, "width_in") + steps * factors.length("footing_step_width")
    thickness = in_library_units(row, "thickness_in") + steps * factors.length("footing_step_thickness")
    basis = (
        f"{row['table']}, {row['edition']}: {psf_text(snow)} ground snow, {psf_text(soil)} soil, a house "
        f"{length_text(middle)} wide "
        "with a center bearing wall that carries half of the attic and the floors"
    )
    return TableFooting(
        float(max(width, factors.length("footing_least_width"))),
        float(max(thickness, factors.length("footing_least_thickness"))),
        house_width,
        row["table"],
        basis,
        row["verified"],
    )


def post_on_slab(*, load, plate, slab_thickness, permanent):
    """Show what a post asks of a slab; a post that stays is refused there.

    Parameters
    ----------
    load : float
        Load of the post [N].
    plate : float
        Side of the square plate under the post [mm].
    slab_thickness : float
        Thickness of the slab [mm].
    permanent : bool
        Whether the post stays [-].

    Returns
    -------
    SpreadDemand
        For a temporary post: pressure under the slab with the load spread at 45 degrees, and shear around the
        plate; a demand only [mm, MPa].

    Raises
    ------
    OutsideRule
        When the post is to stay: a slab is a floor, not a footing.

    Notes
    -----
    Geometry and statics. The perimeter of the shear stands half the slab's thickness from the plate.

    Examples
    --------
    >>> demand = post_on_slab(load=15000*lb, plate=6*inch, slab_thickness=4*inch, permanent=False)
    >>> round(demand.spread_length / inch, 6), round(demand.pressure / psf)
    (14.0, 11020)
    """
    _check_yes(permanent)
    _check_plate(load, plate)
    check_one_number(
        "slab thickness",
        slab_thickness,
        low=1 * inch,
        high=24 * inch,
        shown=inches_text,
        hint="for example 4*inch",
    )
    if permanent:
        raise OutsideRule(
            "a post that stays needs a footing: a slab is a floor, a few inches thick over soil that nobody "
            "checked, and would crack or punch through; ask the engineer for a pad that the soil can carry"
        )
    side = plate + 2 * slab_thickness
    around = 4 * (plate + slab_thickness)
    return SpreadDemand(
        side,
        side,
        load / side**2,
        around,
        load / (around * slab_thickness),
        "the load spreads at 45 degrees through the slab, and tries to punch a plug the shape of the plate through it",
        "for the time of the work only, and shown without a verdict: slab, soil and shoring are for the "
        "engineer to judge",
    )


def pad_on_stone_wall(*, load, plate, wall_thickness, depth, spread="1:2", distance_to_end=None):
    """Show what a post or beam end asks of a stone or rubble wall below it.

    Parameters
    ----------
    load : float
        Load of the post or beam end [N].
    plate : float
        Length of the plate or pad along the wall [mm].
    wall_thickness : float
        Thickness of the wall [mm].
    depth : float
        How far below the plate the pressure is asked, for example at the foot of the wall [mm].
    spread : str
        '1:2' (one sideways for two down), or '45 degrees' [-].
    distance_to_end : float or None
        From the nearer end of the plate to the end of the wall or an opening; None where it is far [mm].

    Returns
    -------
    SpreadDemand
        Pressure from this load at that depth; the wall's own weight and what stands on it come on top
        [mm, MPa].

    Notes
    -----
    Geometry and statics: the load spreads along the wall only, over its whole thickness, and as far to one
    side as to the other, so that the pressure can be even.

    Examples
    --------
    >>> demand = pad_on_stone_wall(load=10000*lb, plate=12*inch, wall_thickness=18*inch, depth=6*ft)
    >>> round(demand.spread_length / inch, 6), round(demand.pressure / psf)
    (84.0, 952)
    """
    check_choice("spread", spread, SPREADS)
    _check_plate(load, plate)
    check_one_number(
        "wall thickness",
        wall_thickness,
        low=4 * inch,
        high=4 * ft,
        shown=length_text,
        hint="for example 18*inch",
    )
    check_one_number("depth", depth, low=0.0, high=40 * ft, shown=length_text, hint="for example 6*ft")
    sideways = SPREADS[spread] * depth
    if distance_to_end is not None:
        check_one_number(
            "distance to the end",
            distance_to_end,
            low=0.0,
            high=200 * ft,
            shown=length_text,
            hint="for example 2*ft",
        )
        # an even pressure stands in balance only with its middle under the load: what an opening takes
        # away on one side is not counted on the other either
        sideways = min(sideways, distance_to_end)
    length = plate + 2 * sideways
    return SpreadDemand(
        length,
        wall_thickness,
        load / (length * wall_thickness),
        0.0,
        0.0,
        f"the load spreads {spread} along the wall as it goes down",
        "shown without a verdict: old stone is as good as its mortar, its voids and the soil under it, "
        "which an engineer must "
        "see; look for lean, bulges, washed-out joints and water first",
    )


def _check_soil(soil):
    if not isinstance(soil, Soil):
        raise BadInput(
            f"a soil must come from find_soil, got {type(soil).__name__}; for example find_soil('clay or silt')"
        )


def _check_plate(load, plate):
    check_one_number("load", load, low=0.0, high=1e8, hint="for example 10000*lb")
    check_one_number("plate", plate, low=1 * inch, high=10 * ft, shown=length_text, hint="for example 12*inch")


def _check_yes(permanent):
    if permanent is not True and permanent is not False:
        raise BadInput(f"permanent must be True or False, got {permanent!r}")
