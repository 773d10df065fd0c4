"""A tub, a tank or a piano as what it is to the floor: a patch of load on the few joists under it.

Each joist takes the strip of the patch that is nearer to it than to its neighbours. The floor boards share a
little more than that, which is left out.
"""

from dataclasses import dataclass

import numpy

from structlib.ground.refusals import BadInput, check_choice
from structlib.ground.showing import show
from structlib.ground.tables import in_library_units, table_row, table_rows
from structlib.ground.units import ft, inch, lb, pcf
from structlib.house.inputs import check_one_number
from structlib.mechanics.beams import Beam, LineLoad, PointLoad, Support, solve

DIRECTIONS = ("along the joists", "across the joists")

#: The US gallon is 231 cubic inches by definition [mm3].
GALLON = 231 * inch**3


@dataclass(frozen=True)
class HeavyThing:
    """Something heavy: its full weight [N], its outline [mm], and how its weight is known."""

    name: str
    weight: float
    length: float
    width: float
    verified: str

    @property
    def pressure(self):
        """Weight over its outline [MPa]."""
        return self.weight / (self.length * self.width)


@dataclass(frozen=True)
class JoistUnder:
    """One joist under the patch: where it runs from the patch's middle [mm], the part of the weight it takes
    [N], the moment of that alone, of patch and lasting load, and of the design load [N*mm]."""

    offset: float
    weight: float
    patch_moment: float
    moment: float
    design_moment: float

    @property
    def share(self):
        """Moment over the moment of the design load [-]."""
        return self.moment / self.design_moment


def water_weight():
    """Weight of water.

    Returns
    -------
    float
        Weight [N/mm3].

    Examples
    --------
    >>> round(water_weight() * GALLON / lb, 2)
    8.34
    """
    return table_row("dead_loads", category="density", item="water")["value"] * pcf


def heavy_things():
    """List the heavy things of the data file.

    Returns
    -------
    tuple of str
        Their names [-].

    Examples
    --------
    >>> heavy_things()[0]
    'cast-iron tub'
    """
    return tuple(row["thing"] for row in table_rows("heavy_things"))


def find_heavy_thing(name):
    """Find a heavy thing by its name: full of water, with its people.

    Parameters
    ----------
    name : str
        Name in the data file [-].

    Returns
    -------
    HeavyThing
        Weight and outline [-].

    Examples
    --------
    >>> tub = find_heavy_thing("cast-iron tub")
    >>> round(tub.weight / lb), round(tub.pressure / (lb / ft**2))
    (880, 70)
    """
    check_choice("heavy thing", name, heavy_things())
    row = table_row("heavy_things", thing=name)
    weight = (
        in_library_units(row, "empty_lb")
        + in_library_units(row, "people_lb")
        + row["water_gal"] * GALLON * water_weight()
    )
    return HeavyThing(
        name, weight, in_library_units(row, "length_ft"), in_library_units(row, "width_ft"), row["verified"]
    )


def tile_load(*, mortar="1/2 in mortar"):
    """Weight of a ceramic or quarry tile floor on its mortar bed.

    Parameters
    ----------
    mortar : str
        '1/2 in mortar' or '1 in mortar' [-].

    Returns
    -------
    float
        Weight by area [MPa].

    Examples
    --------
    >>> round(tile_load() / (lb / ft**2))
    16
    """
    check_choice("mortar bed", mortar, ("1/2 in mortar", "1 in mortar"))
    return table_row("dead_loads", category="floor", item=f"ceramic or quarry tile 3/4 in on {mortar}")["value"] * (
        lb / ft**2
    )


def patch_on_joists(thing, *, span, spacing, lasting, design, place, direction="across the joists", offset=0.0):
    """What each joist under a patch takes, and how that compares with the design load.

    Parameters
    ----------
    thing : HeavyThing
        The patch [-].
    span : float
        Span of the joists [mm].
    spacing : float
        Spacing of the joists [mm].
    lasting : float
        Load of the floor itself, by area [MPa].
    design : float
        Load that the floor was designed for, lasting and live together, by area [MPa].
    place : float
        Middle of the patch along the joists, from the left support [mm].
    direction : str
        How its long side lies: 'along the joists' or 'across the joists' [-].
    offset : float
        How far the middle of the patch is from the nearest joist, across the joists [mm].

    Returns
    -------
    tuple of JoistUnder
        The joists that take any of it, from one side to the other [-].

    Examples
    --------
    >>> tub = find_heavy_thing("cast-iron tub")
    >>> psf = lb / ft**2
    >>> under = patch_on_joists(tub, span=12*ft, spacing=16*inch, lasting=10*psf, design=50*psf, place=6*ft)
    >>> len(under), round(sum(one.weight for one in under) / tub.weight, 9)
    (5, 1.0)
    """
    _check_patch(thing, span, spacing, lasting, design, place, direction)
    check_one_number("offset", offset, low=-spacing / 2, high=spacing / 2)
    along, across = thing.length, thing.width
    if direction == "across the joists":
        along, across = across, along
    if place - along / 2 < -1e-6 or place + along / 2 > span + 1e-6:
        raise BadInput(
            f"the {thing.name} does not fit on the span there: it is {show(along, 'length')} long along "
            f"the joists, and its middle stands {show(place, 'length')} from the support"
        )
    reach = int(numpy.ceil((across / 2 + abs(offset)) / spacing)) + 1
    found = []
    for number in range(-reach, reach + 1):
        at = number * spacing - offset  # this joist from the middle of the patch
        strip = min(across / 2, at + spacing / 2) - max(-across / 2, at - spacing / 2)
        if strip > 1e-9:
            found.append(_joist(at, thing.weight * strip / across, place, along, span, spacing, lasting, design))
    return tuple(found)


def _check_patch(thing, span, spacing, lasting, design, place, direction):
    if not isinstance(thing, HeavyThing):
        raise BadInput(
            f"a patch must be a HeavyThing, got {type(thing).__name__}; for example find_heavy_thing('cast-iron tub')"
        )
    check_choice("direction", direction, DIRECTIONS)
    check_one_number("span", span, low=2 * ft, high=60 * ft, shown=lambda mm: show(mm, "length"))
    check_one_number("spacing", spacing, low=4 * inch, high=48 * inch, shown=lambda mm: show(mm, "section length"))
    check_one_number("lasting load", lasting, low=0.0, high=0.1)
    check_one_number("design load", design, low=0.0, high=0.1, low_allowed=False)
    check_one_number("place", place, low=0.0, high=span)


def feet_on_two_joists(thing, *, span, spacing, lasting, design, place, direction="across the joists", inset=6 * inch):
    """What each of two joists takes when a heavy thing stands on four feet, two of them on each joist.

    Parameters
    ----------
    thing : HeavyThing
        What stands there [-].
    span : float
        Span of the joists [mm].
    spacing : float
        Spacing of the joists [mm].
    lasting : float
        Load of the floor itself, by area [MPa].
    design : float
        Load that the floor was designed for, lasting and live together, by area [MPa].
    place : float
        Middle of the thing along the joists, from the left support [mm].
    direction : str
        How its long side lies: 'along the joists' or 'across the joists' [-].
    inset : float
        How far each foot stands inside the outline, both ways [mm].

    Returns
    -------
    JoistUnder
        Either of the two joists; ``offset`` is half of the distance between the feet across them [-].

    Notes
    -----
    The worst that feet can do: each pair lands right on one joist, and the boards share nothing.

    Examples
    --------
    >>> tub = find_heavy_thing("cast-iron tub")
    >>> psf = lb / ft**2
    >>> one = feet_on_two_joists(tub, span=12*ft, spacing=16*inch, lasting=10*psf, design=50*psf, place=6*ft)
    >>> round(one.weight / tub.weight, 9), round(one.share, 2)
    (0.5, 1.16)
    """
    _check_patch(thing, span, spacing, lasting, design, place, direction)
    along, across = thing.length, thing.width
    if direction == "across the joists":
        along, across = across, along
    check_one_number(
        "inset of the feet",
        inset,
        low=0.0,
        high=min(along, across) / 2,
        shown=lambda mm: show(mm, "section length"),
        hint="for example 6*inch",
    )
    feet = [place - along / 2 + inset, place + along / 2 - inset]
    if feet[0] < 0 or feet[1] > span:
        raise BadInput(
            f"a foot of the {thing.name} is off the span: its middle stands {show(place, 'length')} from the support"
        )
    on_one = [PointLoad(foot, thing.weight / 4) for foot in feet]
    return _joist_under(across / 2 - inset, thing.weight / 2, on_one, span, spacing, lasting, design)


def _joist(at, weight, place, along, span, spacing, lasting, design):
    patch = LineLoad(max(0.0, place - along / 2), min(span, place + along / 2), weight / along)
    return _joist_under(at, weight, [patch], span, spacing, lasting, design)


def _joist_under(at, weight, patch, span, spacing, lasting, design):
    floor = [LineLoad(0.0, span, lasting * spacing)] if lasting > 0 else []
    ends = [Support(0.0), Support(span)]

    def moment(loads):
        return solve(Beam(span, 1e12, ends, loads)).extremes.greatest_moment.value

    return JoistUnder(at, weight, moment(patch), moment([*patch, *floor]), design * spacing * span**2 / 8)
