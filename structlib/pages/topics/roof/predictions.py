"""Predictions of notebook 08."""

from structlib.ground.showing import show
from structlib.mechanics import frames
from structlib.pages.kit.prediction import Prediction
from structlib.pages.topics.roof.example import DEAD, RISE, SNOW, SPACING, SPAN
from structlib.pages.topics.roof.tables import collar_tie


def tie_a_third_up():
    """Ask what a rafter bends with when its tie is raised by a third of the height.

    Examples
    --------
    >>> tie_a_third_up().right
    'more than twice as much'
    """
    bend = frames.raised_tie_greatest_factor(height_fraction=1 / 3)
    pull = frames.raised_tie_factor(height_fraction=1 / 3)
    choices = ("the same", "a third more", "half as much again", "more than twice as much")
    right = choices[3] if bend > 2 else choices[2] if bend > 1.4 else choices[1]
    return Prediction(
        "A tie at the eaves is raised by a third of the height. How much more do the rafters bend?",
        choices,
        right,
        f"{bend:.2f} times as much, and the tie is pulled {pull:.2f} times as hard. Below the tie the "
        f"rafter hangs out alone.",
    )


def collar_under_weight():
    """Ask what a collar tie feels under the weight of snow when a tie stands at the eaves.

    Examples
    --------
    >>> collar_under_weight().right
    'it is pressed'
    """
    _, with_collar, alone = collar_tie().rows
    choices = ("it is pulled", "nothing", "it is pressed")
    right = choices[2] if with_collar[2].startswith("pressed") else choices[0]
    thrust = frames.rafter_thrust(line_load=(DEAD + SNOW) * SPACING, building_span=SPAN, rise=RISE)
    return Prediction(
        "There is a tie at the eaves, and a collar tie high up. Snow lies on the roof. What happens in the collar tie?",
        choices,
        right,
        f"The rafters sag and squeeze it: {with_collar[2]}. The tie below is then pulled with "
        f"{with_collar[1]}, not "
        f"{show(thrust, 'force')}. Without the tie below, the collar is {alone[2]}.",
    )
