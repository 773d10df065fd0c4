"""Myths of notebook 12."""

from structlib.ground.showing import show
from structlib.ground.units import ft, inch
from structlib.pages.kit.cards import card
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
