"""Predictions of the page of push."""

from structlib.mechanics import formulas
from structlib.pages.kit.prediction import Prediction

_TIMES = {1: "the same", 2: "2 times", 4: "4 times", 8: "8 times", 16: "16 times"}


def _whole_times(ratio):
    return _TIMES[round(ratio)]


def off_the_middle():
    """Ask what share of one load the nearer support takes when it stands at a quarter of the span.

    Examples
    --------
    >>> off_the_middle().right
    'three quarters'
    """
    share = formulas.simple_point_left_reaction(point_load=1.0, span=4.0, load_position=1.0)
    words = {0.5: "half", 0.75: "three quarters", 1.0: "all of it", 0.25: "a quarter"}
    return Prediction(
        "One heavy load stands on a simple beam, at a quarter of its span from the left support. How much of it does the "
        "left support take?",
        tuple(words.values()),
        words[share],
        f"Turn about the other support: the load's lever is {100 * share:.0f} % of the span, so that is the left support's "
        "share.",
    )


def middle_post_out():
    """Ask what taking out a middle post does to the moment in the beam.

    Examples
    --------
    >>> middle_post_out().right
    '4 times'
    """
    before = -formulas.two_span_uniform_support_moment(line_load=1.0, span=1.0)
    after = formulas.simple_uniform_moment(line_load=1.0, span=2.0)
    return Prediction(
        "A beam in one piece runs over a middle post, with two equal spans. The post is taken out. How much greater is the "
        "greatest moment now?",
        tuple(_TIMES.values()),
        _whole_times(after / before),
        "And it is not even the worst: the sag grows more. Twice the span is not twice the beam.",
    )
