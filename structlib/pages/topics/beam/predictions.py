"""Predictions of the page of beam."""

from structlib.ground.lumber import find_material
from structlib.ground.showing import show
from structlib.mechanics import formulas
from structlib.pages.kit.prediction import Prediction

_TIMES = {1: "the same", 2: "2 times", 4: "4 times", 8: "8 times", 16: "16 times"}


def _whole_times(ratio):
    return _TIMES[round(ratio)]


def twice_the_opening():
    """Ask what twice the opening does to the sag of the beam over it.

    Examples
    --------
    >>> twice_the_opening().right
    '16 times'
    """
    sag = [formulas.simple_uniform_deflection(line_load=1.0, span=span, bending_stiffness=1.0) for span in (1.0, 2.0)]
    moment = [formulas.simple_uniform_moment(line_load=1.0, span=span) for span in (1.0, 2.0)]
    return Prediction(
        "You make the opening twice as wide and keep the same beam and the same load on every foot. How much more does "
        "it sag?",
        tuple(_TIMES.values()),
        _whole_times(sag[1] / sag[0]),
        f"Sag grows with the span multiplied by itself four times. The moment grows {moment[1] / moment[0]:.0f} times, the push on each seat "
        "only 2 times.",
    )


def plate_or_beam():
    """Ask which face is crushed first where a fir beam sits on a spruce plate.

    Examples
    --------
    >>> plate_or_beam().right
    'the plate below'
    """
    beam, plate = find_material("Douglas Fir-Larch", "No.2"), find_material("Spruce-Pine-Fir", "No.1/No.2")
    right = "the plate below" if plate.bearing < beam.bearing else "the beam"
    return Prediction(
        "A Douglas Fir beam sits on a spruce wall plate. One face is crushed across its grain before the other. Which?",
        ("the beam", "the plate below", "both at once"),
        right,
        f"The same push presses on both faces, and {show(plate.bearing, 'stress')} is less than "
        f"{show(beam.bearing, 'stress')}. Check the beam, and then what it sits on.",
    )
