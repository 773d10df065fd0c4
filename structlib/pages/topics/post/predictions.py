"""Predictions of notebook 06."""

from structlib.ground.showing import show
from structlib.ground.units import ft
from structlib.mechanics.columns import euler_load
from structlib.pages.kit.prediction import Prediction
from structlib.pages.topics.post.cases import post
from structlib.rules.choice import RULEBOOK

columns = RULEBOOK.room("columns")


def twice_the_height():
    """Ask what twice the height leaves of the load at which a slender post bows out.

    Examples
    --------
    >>> twice_the_height().right
    'a quarter'
    """
    low, high = (euler_load(bending_stiffness=1.0, effective_length=height) for height in (1.0, 2.0))
    words = {1.0: "all of it", 0.5: "half", 0.25: "a quarter", 0.125: "an eighth"}
    return Prediction(
        "A slender post bows out sideways under a certain load. You make the same post twice as tall. "
        "How much of that load "
        "is left?",
        tuple(words.values()),
        words[high / low],
        "The height counts twice. That is also why one brace at mid-height is worth so much: it leaves "
        "half of the height, "
        f"and {low / high:.0f} times the load.",
    )


def which_way_first():
    """Ask which way three plies of 2x6 bow first.

    Examples
    --------
    >>> which_way_first().right
    'across the plies'
    """
    found = columns.capacity_of(post("2x6", 3, 8 * ft), time_factor=1.0)
    walled = columns.capacity_of(post("2x6", 3, 8 * ft, held_width=0.0), time_factor=1.0)
    words = {"width": "across the plies", "depth": "along their depth"}
    return Prediction(
        "Three 2x6 are nailed together into a post 8 ft tall, 4 1/2 in by 5 1/2 in. Nothing holds it "
        "between its ends. Which "
        "way does it bow first?",
        tuple(words.values()),
        words[found.governs],
        "It is thinner that way, and nails do not make one piece of three. It carries "
        f"{show(found.load, 'force')}. In a wall "
        f"that holds it that way all along it would carry {show(walled.load, 'force')}.",
    )
