"""Myths of notebook 13."""

from structlib.ground.showing import show
from structlib.ground.units import ft
from structlib.mechanics import vibration
from structlib.pages.kit.cards import card
from structlib.pages.topics.sag.floors import reading, sag_parts_of_the_floor


def passing_the_limit_feels_solid():
    """Answer: a floor that passes L/360 feels solid.

    Examples
    --------
    >>> "8.6 Hz" in passing_the_limit_feels_solid()
    True
    """
    slow, fast = (vibration.frequency_from_sag(sag=span / 360 * 10 / 40) for span in (20 * ft, 8 * ft))
    return card(
        "It passes L/360, so it feels solid.",
        f"two floors that pass it by exactly nothing swing at {fast:.1f} Hz over 8 ft and at {slow:.1f} Hz "
        f"over 20 ft. The "
        "limit was made for plaster. It knows no feet.",
    )


def jack_it_straight_again():
    """Answer: take the load off, and an old floor comes back level.

    Examples
    --------
    >>> "come back" in jack_it_straight_again()
    True
    """
    parts, sag = sag_parts_of_the_floor(), reading().worst.sag
    return card(
        "With the load off, an old floor comes back level.",
        f"of {show(sag, 'small length')} measured, elastic theory lets "
        f"{show(parts.comes_back.least, 'small length')} to "
        f"{show(parts.comes_back.most, 'small length')} come back, if all weight were lifted off. The rest "
        f"has crept in, or "
        "was never elastic.",
    )
