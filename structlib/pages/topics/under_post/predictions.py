"""Prediction of notebook 07."""

from structlib.ground.showing import show
from structlib.ground.units import inch, lb
from structlib.pages.kit.prediction import Prediction
from structlib.rules.choice import RULEBOOK

footings = RULEBOOK.room("footings")


def softer_soil():
    """Ask what half the bearing of the soil does to the side of the pad.

    Examples
    --------
    >>> softer_soil().right
    '1.41 times as long'
    """
    firm, soft = footings.find_soil("gravel or sandy gravel"), footings.find_soil("clay or silt")
    sides = [
        footings.pad_side(load=10000 * lb, soil_pressure=soil.pressure, thickness=0 * inch) for soil in (firm, soft)
    ]
    words = {1.0: "the same", 1.41: "1.41 times as long", 2.0: "2 times as long", 4.0: "4 times as long"}
    return Prediction(
        f"A pad on gravel ({show(firm.pressure, 'area load')}) is moved to clay "
        f"({show(soft.pressure, 'area load')}). Leave out "
        "its weight. How long is its side now?",
        tuple(words.values()),
        words[round(sides[1] / sides[0], 2)],
        "Half the bearing asks for twice the area, and area is side times side: "
        f"{show(sides[0], 'section length')} become "
        f"{show(sides[1], 'section length')}.",
    )
