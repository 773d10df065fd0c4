"""Predictions of notebook 10."""

from structlib.ground.showing import show
from structlib.ground.units import ft, lb, plf
from structlib.mechanics import formulas
from structlib.mechanics.beams import Beam, LineLoad, Support
from structlib.mechanics.overhang import overhang_tip_back_reaction, overhang_tip_near_reaction
from structlib.mechanics.patterns import solve_arrangements, span_loads
from structlib.mechanics.tapered import tapered_uniform_stress_place
from structlib.pages.kit.prediction import Prediction


def which_way_the_back_goes():
    """Ask what a load on the tip of an overhang does to the far support.

    Examples
    --------
    >>> which_way_the_back_goes().right
    'it lifts the beam off'
    """
    given = dict(point_load=1000 * lb, span=12 * ft, overhang=3 * ft)
    back, near = overhang_tip_back_reaction(**given), overhang_tip_near_reaction(**given)
    choices = ("nothing: it stands past the post", "it presses a little", "it lifts the beam off")
    right = choices[2] if back < 0 else choices[1] if back > 0 else choices[0]
    return Prediction(
        "A beam spans 12 ft and runs 3 ft past its right post. A post with 1,000 lb is set on the tip. What does that do at "
        "the far left support?",
        choices,
        right,
        f"The beam turns about the right post like a seesaw. The left end lifts with {show(-back, 'force')}, and the right "
        f"post carries {show(near, 'force')}, more than the load itself.",
    )


def worst_arrangement():
    """Ask which spans must be loaded so that the first of three spans is bent most.

    Examples
    --------
    >>> worst_arrangement().right
    'the first and the third span'
    """
    span, length = 12 * ft, 36 * ft
    supports = tuple(Support(number * span) for number in range(4))
    found = solve_arrangements(
        Beam(length, 1e12, supports, (LineLoad(0.0, length, 60 * plf),)),
        span_loads(supports, length, 240 * plf),
    )
    names = {
        (True, True, True): "all three spans",
        (True, False, False): "the first span only",
        (True, False, True): "the first and the third span",
        (True, True, False): "the first and the second span",
    }
    everywhere = found.case((True, True, True)).extremes.greatest_moment.value
    on = max(names, key=lambda on: found.case(on).extremes.greatest_moment.value)
    return Prediction(
        "A beam in one piece runs over three equal spans. People may stand on any span, or not. Where must they stand to "
        "sag the first span most?",
        tuple(names.values()),
        names[on],
        f"Load on the middle span lifts its neighbors. With it empty the moment is "
        f"{100 * (found.sagging.value / everywhere - 1):.0f} % greater than with all three spans full (60 plf dead, "
        "240 plf live).",
    )


def what_the_post_did():
    """Ask how much more a beam in one piece sags once its middle post is gone.

    Examples
    --------
    >>> what_the_post_did().right
    'about 38 times'
    """
    before = formulas.two_span_uniform_deflection(line_load=1.0, span=1.0, bending_stiffness=1.0)
    cut = formulas.simple_uniform_deflection(line_load=1.0, span=1.0, bending_stiffness=1.0)
    after = formulas.simple_uniform_deflection(line_load=1.0, span=2.0, bending_stiffness=1.0)
    choices = {"2 times": 2, "4 times": 4, "16 times": 16, "about 38 times": 38.5}
    right = min(choices, key=lambda name: abs(choices[name] - after / before))
    return Prediction(
        "A beam in one piece runs over a middle post. The post is taken out, and the load stays. How much more does the "
        "beam sag?",
        tuple(choices),
        right,
        f"{after / before:.1f} times. If the beam had been cut over the post it would be {after / cut:.0f} times: one piece "
        "over a post is stiffer than two pieces, so there is more to lose.",
    )


def where_the_taper_is_weak():
    """Ask where a tapered beam is stressed most.

    Examples
    --------
    >>> where_the_taper_is_weak().right
    'a third of the span from the shallow end'
    """
    place = tapered_uniform_stress_place(span=12.0, start_depth=1.0, end_depth=2.0) / 12.0
    choices = {
        "at the middle": 1 / 2,
        "a third of the span from the shallow end": 1 / 3,
        "at the shallow end": 0.0,
        "a third of the span from the deep end": 2 / 3,
    }
    right = min(choices, key=lambda name: abs(choices[name] - place))
    return Prediction(
        "A beam is twice as deep at its right end as at its left end. The load is even. Where is it stressed most in "
        "bending?",
        tuple(choices),
        right,
        "The moment is greatest at the middle, but there the beam is deeper already. At the shallow end there is no moment. "
        "The worst place lies between.",
    )
