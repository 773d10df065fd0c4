"""Predictions of notebook 09."""

from structlib.ground.showing import show
from structlib.ground.units import psf
from structlib.mechanics import frames
from structlib.pages.kit.prediction import Prediction
from structlib.pages.topics.roof.example import DEAD, SNOW, SPAN
from structlib.rules.choice import RULEBOOK

snow = RULEBOOK.room("snow")


def share_of_the_ridge():
    """Ask how much of the roof a ridge beam carries.

    Examples
    --------
    >>> share_of_the_ridge().right
    'half of it'
    """
    line = frames.ridge_beam_load(line_load=DEAD + SNOW, building_span=SPAN)
    whole = (DEAD + SNOW) * SPAN
    parts = {1 / 4: "a quarter of it", 1 / 3: "a third of it", 1 / 2: "half of it"}
    return Prediction(
        "A ridge beam stands on posts. Two outside walls hold the eaves. How much of the roof comes down on the ridge?",
        tuple(parts.values()),
        parts[round(line / whole, 6)],
        f"{show(line, 'line load')} of {show(whole, 'line load')}. Every rafter rests with one end on a wall, and "
        "with the other on the ridge. Two of them meet there.",
    )


def colder_roof():
    """Ask what insulation does to the snow on an old roof.

    Examples
    --------
    >>> colder_roof().right
    'it carries more snow'
    """
    ground = snow.ground_snow(40 * psf, edition=snow.EDITION, basis=snow.BASIS)
    before, after, change = snow.thermal_change(ground, before="heated", after="cold ventilated roof", exposure=1.0)
    choices = ("it carries less snow", "the snow stays the same", "it carries more snow")
    return Prediction(
        "An attic gets insulation and ventilation. What does that do to the snow on the roof?",
        choices,
        choices[(change > 0) - (change < 0) + 1],
        f"Less heat leaks out, so less snow melts: {show(before, 'area load')} before, "
        f"{show(after, 'area load')} after.",
    )
