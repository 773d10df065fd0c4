"""Views of the load path and of the beam with its diagrams, for the tests of the pictures."""

import numpy as np

from structlib.pictures.drawings import (
    BeamCurve,
    BeamCurvesView,
    BeamSupport,
    CurvePoint,
    CurveSpread,
    LoadPathView,
    Station,
)

PATH = LoadPathView(
    "A load starts on the ridge and ends in the soil",
    (
        Station("roof", "snow on the roof", "30 psf"),
        Station("ridge", "ridge post", "820 lb"),
        Station("attic floor", "attic floor", "+ 405 lb/ft"),
        Station("upper floor", "upper floor", "+ 640 lb/ft"),
        Station("lower wall", "wall below", "1,045 lb/ft"),
        Station("beam", "main beam", "1,480 lb/ft"),
        Station("post", "post", "11,840 lb"),
        Station("soil", "soil under footing", "1,480 psf"),
    ),
    "main beam 3-2x12",
    2438.4,
    285.75,
    3,
    38.1,
    "8 ft span",
    "4 1/2 x 11 1/4 in",
)


def beam_lines(place, length=4000.0, load=4000.0):
    """Shear, moment, slope and deflection of a simple beam with one load, by the textbook (EI = 1e12)."""
    a, b, x = place, length - place, np.linspace(0, length, 81)
    left = x <= a
    shear = np.where(left, load * b / length, -load * a / length)
    moment = np.where(left, load * b * x / length, load * a * (length - x) / length)
    scale = load / (6 * 1e12 * length)
    slope = scale * np.where(left, b * (length**2 - b**2 - 3 * x**2), -a * (length**2 - a**2 - 3 * (length - x) ** 2))
    drop = scale * np.where(
        left,
        b * x * (length**2 - b**2 - x**2),
        a * (length - x) * (length**2 - a**2 - (length - x) ** 2),
    )
    return tuple((tuple(x), tuple(y)) for y in (shear, moment, slope, drop))


def curves_view(place=1500.0, before=None, **changes):
    """A beam with a load at a place, and as a ghost the same beam with the load at the place before."""
    names = (("shear", "lb"), ("moment", "lb-ft"), ("slope", "%"), ("deflection", "in"))
    curves = tuple(
        BeamCurve(name, *line, unit, f"{1000 + k},5 {unit}", positive_down=k > 1)
        for k, ((name, unit), line) in enumerate(zip(names, beam_lines(place)))
    )
    values = dict(
        title="The beam pushes back with what was put on it",
        length=4000.0,
        length_text="13 ft 1 in",
        supports=(BeamSupport(0.0, "pinned", "560 lb"), BeamSupport(4000.0, "roller", "340 lb")),
        curves=curves,
        point_loads=(CurvePoint(place, "900 lb"),),
        spread_loads=(CurveSpread(0.0, 4000.0, 0.1, 0.1, "7 lb/ft"),),
        previous=beam_lines(before) if before else (),
    )
    return BeamCurvesView(**{**values, **changes})
