"""Myths of notebook 09: ridge boards."""

from structlib.ground.showing import show
from structlib.ground.units import ft
from structlib.mechanics import frames
from structlib.pages.kit.cards import card
from structlib.pages.topics.roof.example import DEAD, SNOW, SPAN


def a_bigger_ridge_board_carries():
    """Answer: with a big ridge board you can take the ties out.

    Examples
    --------
    >>> "540 plf" in a_bigger_ridge_board_carries() and "6,480 lb" in a_bigger_ridge_board_carries()
    True
    """
    line = frames.ridge_beam_load(line_load=DEAD + SNOW, building_span=SPAN)
    post = frames.ridge_post_load(ridge_load=line, spans=24 * ft)
    return card(
        "With a thicker ridge board the ties can go.",
        f"a ridge that carries takes {show(line, 'line load')}, and a middle post under two spans "
        f"of 12 ft takes "
        f"{show(post, 'force')} straight down. Without posts it is still a board.",
    )
