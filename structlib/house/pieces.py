"""Wood and steel by name and size, as a house describes it: the piece that is meant, and what a level of it weighs."""

from dataclasses import dataclass
from functools import lru_cache
from typing import Any

from structlib.ground.engineered import lvl
from structlib.ground.loads import slope_to_plan
from structlib.ground.lumber import find_material
from structlib.ground.refusals import BadInput, check_choice
from structlib.ground.sizes import dressed_size, stock_sizes
from structlib.ground.steel import steel_shape
from structlib.house.beam import BeamChoice
from structlib.house.fields import of
from structlib.house.plan import FlitchBeam, SteelBeam, Wood
from structlib.rules.members import Flitch


@dataclass(frozen=True, kw_only=True)
class GivenWood(Wood):
    """Wood with values that stand in no table here: those of a maker's report, or the least of several woods."""

    material: Any = of("given", "")


@lru_cache(maxsize=256)
def piece_of(wood):
    """Return the beam or post that is meant by the words of a house.

    Parameters
    ----------
    wood : structlib.house.plan.Wood, FlitchBeam or SteelBeam
        The words of the house [-].

    Returns
    -------
    structlib.house.beam.BeamChoice, structlib.rules.members.Flitch or structlib.ground.steel.SteelSection
        What is meant: each has a width and depth [mm] and a weight [N/mm].

    Examples
    --------
    >>> from structlib.house.plan import Wood
    >>> piece_of(Wood(species="Hem-Fir", grade="No.2", size="2x10", plies=3)).name
    '3-2x10'
    """
    if isinstance(wood, SteelBeam):
        return steel_shape(wood.shape)
    if isinstance(wood, FlitchBeam):
        one = _sawn_or_lvl(wood)
        return Flitch(
            wood=one.material, ply_width=one.ply_width, depth=one.depth, plies=wood.plies,
            plate_thickness=wood.thickness, plate_depth=wood.depth,
        )  # fmt: skip
    return _sawn_or_lvl(wood)


def _sawn_or_lvl(wood):
    if wood.species == "LVL":
        pieces = {one.nominal: one for one in stock_sizes("lvl")}
        piece = pieces[check_choice("size of LVL", wood.size, pieces)]
    else:
        piece = dressed_size(wood.size)
    if isinstance(wood, GivenWood):
        material = wood.material
    else:
        material = lvl(wood.grade) if wood.species == "LVL" else find_material(wood.species, wood.grade, wood.size)
    return BeamChoice(material, piece.width, piece.depth, wood.plies, f"{wood.plies}-{wood.size}")


@lru_cache(maxsize=64)
def joist_weight(joist):
    """Return the weight of a level's joists, spread over its surface.

    Parameters
    ----------
    joist : structlib.house.plan.Joists
        Wood, size, spacing and plies [-].

    Returns
    -------
    float
        Area load [MPa].

    Examples
    --------
    >>> from structlib.ground.units import inch, psf
    >>> from structlib.house.plan import Joists
    >>> round(joist_weight(Joists(species="Hem-Fir", grade="No.2", size="2x10", spacing=16 * inch)) / psf, 2)
    2.11
    """
    material, piece = find_material(joist.species, joist.grade, joist.size), dressed_size(joist.size)
    return material.weight_density * piece.width * piece.depth * joist.plies / joist.spacing


def area_load(level, slope):
    """Return the load of a level by type, on plan.

    Parameters
    ----------
    level : structlib.house.plan.Level
        The level [-].
    slope : tuple of (float, float)
        Rise and run of the part meant; what lies on it is brought to plan by 1/cos [-].

    Returns
    -------
    tuple of float
        Dead, live, roof live and snow [MPa].

    Examples
    --------
    >>> from structlib.ground.units import psf
    >>> from structlib.house.file import demo_house
    >>> round(area_load(demo_house().part("upper floor"), (0, 12))[1] / psf)
    30
    """
    dead = sum(layer.weight for layer in level.layers)
    try:
        dead += joist_weight(level.joist) if level.joist and level.joist.weighed else 0.0
    except BadInput as error:
        raise error.about(level.name, "joist") from None
    dead += level.measured.weight if level.measured else 0.0
    if slope[0]:
        dead = slope_to_plan(dead, rise=slope[0], run=slope[1])
    return dead, level.live or 0.0, level.roof_live or 0.0, level.snow or 0.0
