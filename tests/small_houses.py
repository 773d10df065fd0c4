"""Small invented houses for the tests: one wall in the middle, and whatever comes down on it."""

from types import SimpleNamespace

from structlib.ground.units import ft, psf
from structlib.house.bays import floor_on_a_wall
from structlib.house.meanwhile import wall_out
from structlib.house.plan import House, Layer, Level, Wall

LENGTH = 20 * ft


def wall(name, at, on=("soil",), **more):
    return Wall(
        **{"name": name, "on": on, "at": at, "start": 0.0, "end": LENGTH, "height": 8 * ft, "weight": 0.0, **more}
    )


def level(name, on, kind="floor", **more):
    loads = dict(snow=30 * psf, roof_live=0.0) if kind == "roof" else dict(live=40 * psf)
    layers = (Layer(name="all of it", weight=10 * psf),)
    return Level(
        **{"name": name, "kind": kind, "on": tuple(on), "start": 0.0, "end": LENGTH, "layers": layers, **loads, **more}
    )


def around_a_wall(left, right, **more):
    """A floor or roof on a wall at 0 and on walls at ``-left`` and ``right``; a span of 0 is not there."""
    walls = [wall("left", -left)] * bool(left) + [wall("middle", 0.0)] + [wall("right", right)] * bool(right)
    name = "roof" if more.get("kind") == "roof" else "floor"
    return House(name="small", levels=(level(name, [one.name for one in walls], **more),), walls=tuple(walls))


def joist_out(*, way, span, offset, lasting=0.0, passing=0.0, end_load=0.0, stiffness=1e12):
    """One joist while the wall at its right end (or under its middle) is out; loads on it [N/mm, N], walls it stands on."""
    every = 10_000.0  # of floor for one joist, so that any load on it is one that a floor may have
    sides, joists = {"cut": (2, "cut"), "continuous": (2, "continuous"), "outside": (1, "cut")}[way]
    above = end_load / every * (2 if way == "cut" else 1)
    house = floor_on_a_wall(
        span=span, sides=sides, joists=joists, dead=lasting / every, live=passing / every, above=above
    )
    found = wall_out(house, "wall", offset)
    joist = found.joists(0.0, spacing=every, member=SimpleNamespace(bending_stiffness=stiffness))[0]
    return SimpleNamespace(
        joist=joist,
        wall=found.before.line_on("wall", 0.0).sum_for_equilibrium_only() * every,
        full=[one.force for one in joist.full.reactions],
        most=[joist.most(one) * every for one in joist.holders],
        least=[joist.least(one) * every for one in joist.holders],
    )
