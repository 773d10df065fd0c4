"""Small invented houses for the tests: one wall in the middle, and whatever comes down on it."""

from structlib.ground.units import ft, psf
from structlib.house.plan import House, Layer, Level, Wall

LENGTH = 20 * ft


def wall(name, at, on=("soil",), **more):
    return Wall(**{"name": name, "on": on, "at": at, "start": 0.0, "end": LENGTH, "height": 8 * ft, "weight": 0.0, **more})


def level(name, on, kind="floor", **more):
    loads = dict(snow=30 * psf, roof_live=0.0) if kind == "roof" else dict(live=40 * psf)
    layers = (Layer(name="all of it", weight=10 * psf),)
    return Level(**{"name": name, "kind": kind, "on": tuple(on), "start": 0.0, "end": LENGTH, "layers": layers, **loads, **more})


def around_a_wall(left, right, **more):
    """A floor or roof on a wall at 0 and on walls at ``-left`` and ``right``; a span of 0 is not there."""
    walls = [wall("left", -left)] * bool(left) + [wall("middle", 0.0)] + [wall("right", right)] * bool(right)
    name = "roof" if more.get("kind") == "roof" else "floor"
    return House(name="small", levels=(level(name, [one.name for one in walls], **more),), walls=tuple(walls))
