"""What people say of the page of wall."""

from structlib.ground.showing import show
from structlib.ground.units import ft, inch
from structlib.house.file import demo_house
from structlib.house.influence import influence
from structlib.house.path import follow
from structlib.house.takedown import widths_on
from structlib.pages.kit.cards import card


def only_what_is_above_it():
    """Answer: a wall only carries what stands straight above it.

    Examples
    --------
    >>> "12 ft of floor" in only_what_is_above_it()
    True
    """
    path = follow(demo_house())
    width = sum(widths_on(path.element("upper floor"), path.axis("kitchen opening").at))
    share = next(one for one in path.element("upper floor").gives if one.to == "middle wall")
    total = share.loads.sum_for_equilibrium_only()
    strip = total * (4.5 * inch) / width
    return card(
        "A wall only carries what is straight above its own thickness.",
        f"the wall of the demo house holds up {show(width, 'length')} of floor at one level: {show(total, 'line load')}, "
        f"where the strip above its own thickness would be {show(strip, 'line load')}.",
    )


def half_and_half_always():
    """Answer: a middle support always takes half of each side.

    Examples
    --------
    >>> "1.25 times" in half_and_half_always()
    True
    """
    cut, through = (influence((0.0, 12 * ft, 24 * ft), joints, 0.0, 24 * ft)[1] for joints in ("cut", "continuous"))
    return card(
        "Half and half, always: the middle wall takes half of each span.",
        f"when the joists run through in one piece it takes {through / cut:.2f} times that.",
    )
