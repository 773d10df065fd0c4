"""Myths of notebook 08: steep roofs, collar ties, lifted ties."""

from structlib.ground.showing import show
from structlib.ground.units import ft, psf
from structlib.mechanics import frames
from structlib.pages.kit.cards import card
from structlib.pages.topics.roof.example import DEAD, RISE, SNOW, SPACING, SPAN
from structlib.rules.choice import RULEBOOK

roof_ties = RULEBOOK.room("roof_ties")


def steep_roofs_push_more():
    """Answer: steep roofs push more.

    Examples
    --------
    >>> "with 1,200 plf, 6 in 12 with 600 plf, 12 in 12 with 300 plf" in steep_roofs_push_more()
    True
    """
    told = [
        f"{rise} in 12 {'pushes with ' if rise == 3 else 'with '}"
        + show(frames.rafter_thrust(line_load=50 * psf, building_span=24 * ft, rise=rise * ft), "line load")
        for rise in (3, 6, 12)
    ]
    return card(
        "Steep roofs push the walls out more.",
        f"on a house 24 ft wide under 50 psf on plan, {', '.join(told)}. A flat roof has the short lever.",
    )


def collar_ties_stop_spreading():
    """Answer: collar ties keep the walls from spreading.

    Examples
    --------
    >>> "2,880 lb instead of 720 lb" in collar_ties_stop_spreading()
    True
    """
    asked = roof_ties.raised_tie_demand(height_fraction=0.75)
    thrust = frames.rafter_thrust(line_load=(DEAD + SNOW) * SPACING, building_span=SPAN, rise=RISE)
    return card(
        "Collar ties keep the walls from spreading.",
        f"three quarters of the way up, a tie would be pulled with "
        f"{show(asked.exact_joint_factor * thrust, 'force')} instead of {show(thrust, 'force')}, "
        f"and the rafters would "
        f"bend {asked.greatest_moment:.2f} times as much. A collar tie is for the ridge in "
        f"wind.",
    )


def only_the_top_matters(height_fraction=0.25):
    """Answer: raising the ties a little costs a little.

    Examples
    --------
    >>> "33 % more pull and 78 % more bending" in only_the_top_matters()
    True
    """
    pull = frames.raised_tie_factor(height_fraction=height_fraction) - 1
    bend = frames.raised_tie_greatest_factor(height_fraction=height_fraction) - 1
    gained = show(height_fraction * RISE, "length", precision=2)
    return card(
        "Lifting the ties a little costs a little.",
        f"{gained} of headroom, a quarter of the rise, costs {100 * pull:.0f} % more pull and "
        f"{100 * bend:.0f} % more bending in every rafter.",
    )
