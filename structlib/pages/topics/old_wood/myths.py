"""Myths of notebook 12."""

from structlib.ground.showing import show
from structlib.ground.units import ft, inch
from structlib.mechanics import vibration
from structlib.pages.kit.cards import card
from structlib.pages.topics.old_wood.floors import reading, sag_parts_of_the_floor
from structlib.pages.topics.old_wood.tables import old_joist
from structlib.rules.choice import RULEBOOK


def old_growth_is_always_stronger():
    """Answer: old wood is always stronger than the tables say.

    Examples
    --------
    >>> "No.3" in old_growth_is_always_stronger()
    True
    """
    found = old_joist()
    order = found.best_first()
    best, worst = (
        f"{show(float(found.greatest[one]), 'ratio')} as {found.woods[one].name}" for one in (order[0], order[-1])
    )
    return card(
        "Old growth is always stronger.",
        f"the same 2 in x 7 1/2 in joist uses {best}, and {worst}. Old houses have both, and knots and splits "
        f"do not care for "
        "age. No stamp: so it is a range.",
    )


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


def a_third_of_the_length():
    """Answer: a notch may be a third of the joist's length.

    Examples
    --------
    >>> "2 1/2 in" in a_third_of_the_length()
    True
    """
    longest = 7.5 * inch / RULEBOOK.room("notches").cut_limit("notch_length_divisor")
    return card(
        "A notch may be a third of the joist long.",
        f"a third of its depth. In a joist 7 1/2 in deep that is {show(longest, 'section length')}, and not "
        f"{show(13 * ft / 3, 'length')} of a 13 ft span.",
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
