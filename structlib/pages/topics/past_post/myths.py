"""Myths of notebook 10."""

from structlib.ground.showing import show
from structlib.ground.units import ft, lb
from structlib.mechanics import formulas
from structlib.mechanics.overhang import overhang_tip_back_reaction, overhang_tip_near_reaction
from structlib.mechanics.tapered import tapered_uniform_stress_place
from structlib.pages.kit.cards import card


def only_the_post_below():
    """Answer: an overhang is just extra floor; it only loads the post below it.

    Examples
    --------
    >>> "lifts the far end with 500 lb" in only_the_post_below()
    True
    """
    given = dict(point_load=2000 * lb, span=12 * ft, overhang=3 * ft)
    back, near = overhang_tip_back_reaction(**given), overhang_tip_near_reaction(**given)
    return card(
        "An overhang is just extra floor: it only loads the post below it.",
        f"a post with 2,000 lb, 3 ft past the last post of a 12 ft span, lifts the far end with "
        f"{show(-back, 'force')} and presses on the near post with {show(near, 'force')}.",
    )


def twice_the_span_twice_the_beam():
    """Answer: take the middle post out and double the beam.

    Examples
    --------
    >>> "16 times the sag if it was cut over the post, 38.5 times if it ran through" in twice_the_span_twice_the_beam()
    True
    """
    long = dict(line_load=1.0, span=2.0)
    moment = formulas.simple_uniform_moment(**long) / formulas.simple_uniform_moment(line_load=1.0, span=1.0)
    sag = formulas.simple_uniform_deflection(**long, bending_stiffness=1.0)
    cut = sag / formulas.simple_uniform_deflection(line_load=1.0, span=1.0, bending_stiffness=1.0)
    whole = sag / formulas.two_span_uniform_deflection(line_load=1.0, span=1.0, bending_stiffness=1.0)
    return card(
        "Twice the span needs twice the beam.",
        f"without the middle post the same beam has {moment:.0f} times the moment, and {cut:.0f} times the sag if it "
        f"was cut over the post, {whole:.1f} times if it ran through. Twice the plies take half of that back.",
    )


def worst_at_the_middle():
    """Answer: a beam always breaks at the middle.

    Examples
    --------
    >>> "4 ft from the shallow end" in worst_at_the_middle()
    True
    """
    place = tapered_uniform_stress_place(span=12 * ft, start_depth=6.0, end_depth=12.0)
    return card(
        "A beam is always worst off at the middle.",
        f"a 12 ft beam that is twice as deep at one end is stressed most {show(place, 'length')} from the shallow end, "
        "and a beam in one piece over a post most over that post.",
    )
