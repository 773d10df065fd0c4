"""Predictions of notebook 11."""

from structlib.ground.showing import show
from structlib.ground.steel import steel_shape
from structlib.ground.units import ft, inch
from structlib.house.with_steel import example_flitch
from structlib.mechanics.composite import joined_stiffness, loose_stiffness, stack
from structlib.pages.kit.prediction import Prediction
from structlib.rules.choice import RULEBOOK

_SHARES = {"about a seventh": 1 / 7, "about half": 1 / 2, "about three quarters": 3 / 4, "all of it": 1.0}


def _nearest(share, choices):
    return min(choices, key=lambda word: abs(choices[word] - share))


def half_an_inch_of_steel():
    """Ask which share of the load a half-inch plate takes between two 2x10.

    Examples
    --------
    >>> half_an_inch_of_steel().right
    'about three quarters'
    """
    beam = example_flitch()
    return Prediction(
        "A steel plate half an inch thick is bolted between two 2x10. It is a seventh of the width. Which "
        "share of "
        "the load does it take?",
        tuple(_SHARES),
        _nearest(beam.steel_share, _SHARES),
        f"It takes {show(beam.steel_share, 'ratio')}. Steel is about 18 times as stiff as this wood, so "
        f"half an inch "
        "of it counts as 9 inches of wood.",
    )


def a_beam_on_a_beam():
    """Ask how stiff a board laid on a like board is, both loose.

    Examples
    --------
    >>> a_beam_on_a_beam().right
    'twice'
    """
    layers = stack([(1.0, 1.0, 1.0)] * 2)
    loose = loose_stiffness(layers) / layers[0].bending_stiffness
    joined = joined_stiffness(layers) / layers[0].bending_stiffness
    words = {"the same": 1.0, "twice": 2.0, "four times": 4.0, "eight times": 8.0}
    return Prediction(
        "You lay a 2x6 on edge on top of another 2x6 and leave it loose. How stiff are both, against one?",
        tuple(words),
        _nearest(loose, words),
        f"Loose boards slip and only add up: {loose:.0f} times. Joined without any slip they would be "
        f"{joined:.0f} times as stiff.",
    )


def no_braces_on_the_flange():
    """Ask what a steel beam loses when its pushed flange is held at the ends only.

    Examples
    --------
    >>> no_braces_on_the_flange().right
    'about half'
    """
    shape = steel_shape("W8x18")
    moment = RULEBOOK.room("steel_beams").steel_moment
    held, free = (moment(shape, unbraced_length=length).allowed for length in (0.0, 16 * ft))
    words = {"nothing, steel is steel": 0.0, "about a tenth": 0.1, "about half": 0.5}
    deep = show(shape.depth, "section length")
    return Prediction(
        f"A W8x18 is {deep} deep and spans 16 ft. Nothing holds its upper flange sideways between the "
        f"ends. How much "
        "of its bending strength is gone?",
        tuple(words),
        _nearest(1 - free / held, words),
        f"{show(1 - free / held, 'ratio')} is gone: the pushed flange, {shape.flange_width / inch:.2f} in "
        f"wide, rolls "
        "over sideways before the steel yields.",
    )
