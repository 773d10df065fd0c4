"""Myths of notebook 11."""

from structlib.ground.showing import show
from structlib.ground.units import ft, inch
from structlib.mechanics.composite import (
    fastener_efficiency,
    joined_share,
    joined_stiffness,
    partly_joined_stiffness,
    stack,
)
from structlib.pages.kit.cards import card
from structlib.pages.kit.woods import pieces
from structlib.pages.topics.shared_plies.tables import NAIL_SLIP_MODULUS, two_sisters_against_their_sum


def sistering_gives_more_than_the_sum():
    """Answer: two joists nailed together are more than the sum of both.

    Examples
    --------
    >>> "1.62 times the new one, and that is the sum" in sistering_gives_more_than_the_sum()
    True
    """
    both, share = two_sisters_against_their_sum()
    return card(
        "Sister a joist, and the pair is stronger than both together.",
        f"a tired joist with E of 1.0 million psi beside a new one of 1.6 million is {both:.2f} times the "
        f"new one, "
        f"and that is the sum, not more. The new one takes {show(share, 'ratio')} of the load. How "
        f"much the old one still bears, E does not tell.",
    )


def nailing_two_makes_one_deep_beam():
    """Answer: nail a beam on top of a beam, and you have one deep beam.

    Examples
    --------
    >>> "a nail every 3 in" in nailing_two_makes_one_deep_beam()
    True
    """
    one = pieces("fir")[1]
    top, bottom = stack([(one[3].modulus, one[1], one[0])] * 2)
    spacing = 3 * inch
    efficiency = fastener_efficiency(
        axial_stiffness=top.axial_stiffness, spacing=spacing, slip_modulus=NAIL_SLIP_MODULUS, span=12 * ft
    )
    joined = joined_share(top, bottom, efficiency=efficiency)
    found = partly_joined_stiffness([top, bottom], joined=joined) / top.bending_stiffness
    whole = joined_stiffness([top, bottom]) / top.bending_stiffness
    return card(
        "Nail one beam on top of the other, and they work as one deep beam.",
        f"with a nail every {show(spacing, 'section length')} along 12 ft, two stacked 2x6 are about "
        f"{found:.1f} times as "
        f"stiff as one. One deep board would be {whole:.0f} times. Nails give way, and the stack slips.",
    )
