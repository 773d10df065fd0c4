"""Loads carried down to one wall, level by level and type by type, with a check that nothing is lost."""

from dataclasses import dataclass

from structlib.ground.loads import LoadsByType, slope_to_plan
from structlib.ground.lumber import find_material, nominal_size, stock_sizes
from structlib.ground.refusals import BadInput, check_choice
from structlib.ground.units import inch
from structlib.house.inputs import check_list, check_one_number, check_record, check_whole_number
from structlib.house.model import Joists, check_level
from structlib.mechanics.beams import Beam, LineLoad, Support, solve


@dataclass(frozen=True)
class LevelShare:
    """What one level brings to the wall.

    ``area`` is its load by type [MPa of plan]; ``left_width`` and ``right_width`` the widths of floor whose
    load lands on the wall [mm]; ``line`` their load on the wall by type [N/mm]; ``wall`` the weight of the wall
    that stands under this level [N/mm]; ``running`` the sum from the top down to here [N/mm].
    ``entered`` and ``elsewhere`` are what the level holds in all and what goes to other supports [N/mm].
    """

    name: str
    kind: str
    joists: str
    area: LoadsByType
    left_width: float
    right_width: float
    line: LoadsByType
    wall: float
    running: LoadsByType
    entered: float
    elsewhere: float


@dataclass(frozen=True)
class TakeDown:
    """Every level's share, the total on the wall by type [N/mm], and what the sum check leaves over [N/mm]."""

    shares: tuple[LevelShare, ...]
    total: LoadsByType
    left_over: float


def joist_weight(joist):
    """Return the weight of a level's joists, spread over its plan.

    Parameters
    ----------
    joist : structlib.house.model.Joists
        Wood, size, spacing and plies [-].

    Returns
    -------
    float
        Area load [MPa].

    Raises
    ------
    BadInput
        When the wood or the size is not known (the nearest are named), or a number is out of range.

    Examples
    --------
    >>> from structlib.ground.units import inch, psf
    >>> from structlib.house.model import Joists
    >>> round(joist_weight(Joists("Hem-Fir", "No.2", "2x10", 16 * inch)) / psf, 2)
    2.11
    """
    check_record("joist", joist, Joists, "Joists('Hem-Fir', 'No.2', '2x10', 16*inch)")
    check_one_number(
        "spacing of the joists",
        joist.spacing,
        low=4 * inch,
        high=48 * inch,
        shown=lambda mm: f"{mm / inch:g} in",
        hint="for example 16 in",
    )
    check_whole_number("plies of the joists", joist.plies, low=1, high=4, hint="for example 1")
    material = find_material(joist.species, joist.grade, joist.size)
    piece = dressed_size(joist.size)
    return material.weight_density * piece.width * piece.depth * joist.plies / joist.spacing


def dressed_size(nominal):
    """Return the dressed size of a piece of lumber from its nominal size.

    Parameters
    ----------
    nominal : str
        Nominal size, such as '2x10' [-].

    Returns
    -------
    structlib.ground.lumber.Stock
        The size [-].

    Raises
    ------
    BadInput
        When there is no such size; the nearest are named.

    Examples
    --------
    >>> dressed_size("2x10").depth / 25.4
    9.25
    """
    check_record("size", nominal, str, "'2x10'")
    thickness, _ = nominal_size(nominal)
    pieces = {
        piece.nominal: piece
        for piece in stock_sizes("timber" if thickness >= 5 else "dimension", special_order=True)
    }
    return pieces[check_choice("size", nominal, pieces)]


def area_loads(level):
    """Return the load of one level by type, on plan.

    Parameters
    ----------
    level : structlib.house.model.Level
        The level [-].

    Returns
    -------
    structlib.ground.loads.LoadsByType
        Area load by type; what lies on a slope is brought to plan by 1/cos [MPa].

    Examples
    --------
    >>> from structlib.ground.units import psf
    >>> from structlib.house.model import demo_house
    >>> round(area_loads(demo_house().levels[1])["live"] / psf)
    20
    """
    check_level(level)
    dead = sum(layer.weight for layer in level.layers)
    if level.joist is not None:
        dead += joist_weight(level.joist)
    rise, run = level.slope
    if rise:
        dead = slope_to_plan(dead, rise=rise, run=run)
    return LoadsByType({"dead": dead, "live": level.live, "roof live": level.roof_live, "snow": level.snow})


def widths_on_wall(level):
    """Return how much of a level's width, left and right, lands on the wall.

    Parameters
    ----------
    level : structlib.house.model.Level
        The level [-].

    Returns
    -------
    tuple of (float, float)
        Width on the left and on the right [mm].

    Raises
    ------
    BadInput
        When the level does not hang together, or has an overhang and spans on both sides.

    Notes
    -----
    Cut joists: half of each span. Continuous joists: from the two-span beam, which brings more than half.
    Rafters on a ridge board push all of their load to the wall; on a ridge beam half of it. An overhang
    beyond the wall adds to the side it is on, and by leverage takes from the far end of the same member.

    Examples
    --------
    >>> from structlib.ground.units import ft
    >>> from structlib.house.model import Level
    >>> [round(width / ft, 6) for width in widths_on_wall(Level("upper floor", "floor", 12 * ft, 14 * ft))]
    [6.0, 7.0]
    """
    check_level(level)
    left, right = level.left_span, level.right_span
    if not level.lands:
        return 0.0, 0.0
    if level.joists == "continuous":
        return _continuous_widths(left, right)
    if level.kind != "roof" or not level.overhang:
        share = 1.0 if level.kind == "roof" and level.ridge == "board" else 0.5
        return share * left, share * right
    if left and right:
        raise BadInput(
            "a roof with an overhang lies on one side of its wall; give left_span or right_span, not both"
        )
    span, over = left or right, level.overhang
    inner = span + over if level.ridge == "board" else (span + over) ** 2 / (2 * span)
    return (inner - over, over) if left else (over, inner - over)


def _continuous_widths(left, right):
    """Widths for a joist in one piece over the wall; each side loaded in turn, stiffness the same all along."""
    length = left + right
    supports = (Support(0.0), Support(left), Support(length))

    def middle(start, end):
        return solve(Beam(length, 1.0, supports, (LineLoad(start, end, 1.0),))).reactions[1].force

    return middle(0.0, left), middle(left, length)


def take_down(levels):
    """Carry the loads of several levels down to the wall under them.

    Parameters
    ----------
    levels : iterable of structlib.house.model.Level
        Levels from the top down [-].

    Returns
    -------
    TakeDown
        Share of each level, the total by type, and what the sum check leaves over [-].

    Raises
    ------
    BadInput
        When a level cannot be brought down.

    Notes
    -----
    What enters every level equals what reaches the wall and what goes to the other supports; the difference is
    reported, and is zero but for rounding.

    Examples
    --------
    >>> from structlib.ground.units import plf
    >>> from structlib.house.model import demo_house
    >>> round(take_down(demo_house().levels).total["live"] / plf)
    600
    """
    shares, running, left_over = [], LoadsByType({}), 0.0
    for level in check_list("levels", levels, "demo_house().levels"):
        area = area_loads(level)
        left_width, right_width = widths_on_wall(level)
        line = area.scale(left_width + right_width)
        wall = level.wall_under.height * level.wall_under.weight if level.wall_under else 0.0
        running = running + line + LoadsByType({"dead": wall})
        reach = level.left_span + level.right_span + level.overhang
        entered = area.sum_for_equilibrium_only() * reach
        elsewhere = _elsewhere(level, area.sum_for_equilibrium_only())
        left_over += entered - line.sum_for_equilibrium_only() - elsewhere
        shares.append(
            LevelShare(
                level.name,
                level.kind,
                level.joists,
                area,
                left_width,
                right_width,
                line,
                wall,
                running,
                entered,
                elsewhere,
            )
        )
    return TakeDown(tuple(shares), running, left_over)


def _elsewhere(level, area_load):
    """What a level gives to its other supports, worked out on its own: from the far ends, not by difference."""
    total = 0.0
    if not level.lands:
        return area_load * (level.left_span + level.right_span + level.overhang)
    if level.joists == "continuous":
        length = level.left_span + level.right_span
        supports = (Support(0.0), Support(level.left_span), Support(length))
        reactions = solve(Beam(length, 1.0, supports, (LineLoad(0.0, length, area_load),))).reactions
        return reactions[0].force + reactions[2].force
    for span in (level.left_span, level.right_span):
        if not span:
            continue
        if level.kind == "roof" and level.ridge == "board":
            continue  # the other half of the pair stands on its own wall; nothing is left for the ridge
        over = level.overhang if level.kind == "roof" else 0.0
        # moments about the wall: the far end holds the span's load less the leverage of the overhang
        total += area_load * (span**2 - over**2) / (2 * span)
    return total
