"""Predictions of the page of boards."""

from structlib.ground import sections
from structlib.pages.kit.prediction import Prediction
from structlib.pages.topics.boards.myths import two_against_one

_TIMES = {1: "the same", 2: "2 times", 4: "4 times", 8: "8 times", 16: "16 times"}


def _whole_times(ratio):
    return _TIMES[round(ratio)]


def same_wood_twice_as_deep():
    """Ask what one amount of wood gains in stiffness when it is made twice as deep and half as wide.

    Examples
    --------
    >>> same_wood_twice_as_deep().right
    '4 times'
    """
    before = sections.rectangle_inertia(width=2.0, depth=1.0)
    after = sections.rectangle_inertia(width=1.0, depth=2.0)
    strength = sections.rectangle_section_modulus(width=1.0, depth=2.0) / sections.rectangle_section_modulus(
        width=2.0, depth=1.0
    )
    return Prediction(
        "You have one amount of wood. You make the beam twice as deep and half as wide. How much stiffer is it?",
        tuple(_TIMES.values()),
        _whole_times(after / before),
        f"Twice the depth alone would give 8 times; half the width takes half of that away. Strength grows less: "
        f"{strength:.0f} times.",
    )


def two_small_or_one_big():
    """Ask which is stronger in bending: two 2x8 side by side or one 2x10.

    Examples
    --------
    >>> two_small_or_one_big().right
    'two 2x8'
    """
    strength, stiffness = two_against_one("2x8", "2x10")
    return Prediction(
        "Depth beats width. So which is stronger in bending: two 2x8 side by side, or one 2x10?",
        ("two 2x8", "one 2x10"),
        "two 2x8" if strength > 1 else "one 2x10",
        f"Two 2x8 have {100 * (strength - 1):.0f} % more bending strength and {100 * stiffness:.0f} % of the stiffness. "
        "Depth wins for the same amount of wood; two 2x8 are more wood.",
    )
