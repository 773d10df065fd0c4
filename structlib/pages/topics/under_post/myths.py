"""Myth of notebook 07."""

from structlib.ground.refusals import OutsideRule
from structlib.ground.sections import round_area
from structlib.ground.showing import show
from structlib.ground.units import inch, lb
from structlib.pages.kit.cards import card
from structlib.rules.choice import RULEBOOK

footings = RULEBOOK.room("footings")


def the_slab_will_do():
    """Answer: concrete is strong, so the slab will do.

    Examples
    --------
    >>> "31 in square" in the_slab_will_do(), "698 lb" in the_slab_will_do()
    (True, True)
    """
    load, soft, sand = (
        10000 * lb,
        footings.find_soil("clay or silt"),
        footings.find_soil("sand or sand with silt or clay"),
    )
    side = footings.pad_side(load=load, soil_pressure=soft.pressure, thickness=0.0)
    tube = round_area(diameter=8 * inch) * sand.pressure
    try:
        footings.post_on_slab(load=load, plate=6 * inch, slab_thickness=4 * inch, permanent=True)
        answer = "a slab may carry it"
    except OutsideRule:
        answer = "a post that stays is refused on a slab here"
    return card(
        "Concrete is strong, so the slab will do.",
        f"the concrete is not the question, the soil is. {show(load, 'force')} on "
        f"{show(soft.pressure, 'area load')} need "
        f"{side / inch:.0f} in square before the pad's own weight. An 8 in tube on "
        f"{show(sand.pressure, 'area load')} carries "
        f"{show(tube, 'force')}. So {answer}.",
    )
