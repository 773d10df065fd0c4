"""Myths of notebook 05: what does it sit on?"""

from structlib.ground.showing import show
from structlib.ground.units import inch, lb, psi
from structlib.pages.kit.cards import card
from structlib.rules.choice import RULEBOOK

seats = RULEBOOK.room("seats")


def jacks_are_for_nailing():
    """Answer: jack studs are only there to nail the door to.

    Examples
    --------
    >>> "needs 3.14 in of seat: 3 jack studs" in jacks_are_for_nailing()
    True
    """
    push, width, value = 4000 * lb, 3 * inch, 425 * psi
    found = seats.jack_studs(reaction=push, width=width, bearing_value=value)
    return card(
        "Jack studs are only there for nailing the door.",
        f"a header {show(width, 'section length')} wide that pushes with {show(push, 'force')} on wood of "
        f"{show(value, 'stress')} needs {show(found.seat_needed, 'small length')} of seat: {found.count} "
        "jack studs of "
        "1 1/2 in at each end.",
    )


def deeper_needs_less_seat():
    """Answer: a deeper beam is stronger, so it needs less seat.

    Examples
    --------
    >>> "2.77 in of seat at 9 1/4 in of depth and 2.78 in at 11 1/4 in" in deeper_needs_less_seat()
    True
    """
    # the page stands above the myths in the house; it is only needed when the card is asked for
    from structlib.pages.kit.show import start_values
    from structlib.pages.topics.seat.page import SeatPage

    page, told = SeatPage(), []
    for depth in (9.25 * inch, 11.25 * inch):
        now = page.result(tuple(start_values(page, depth=depth).items()))
        told.append((show(max(now.lengths), "small length"), show(depth, "section length")))
    (first, shallow), (second, deep) = told
    return card(
        "A deeper beam is stronger, so it can do with less seat.",
        f"the beam of the bench needs {first} of seat at {shallow} of depth and {second} at {deep}. The "
        "deeper one "
        "weighs more, and its depth is not in contact with anything.",
    )
