"""Predictions of notebook 14."""

from structlib.ground.showing import show
from structlib.ground.units import ft, plf, psf
from structlib.mechanics import formulas, jacking, shoring
from structlib.pages.kit.prediction import Prediction
from structlib.pages.topics.meanwhile.tables import asked_of


def temporary_wall_further_in():
    """Ask what a temporary wall carries when it stands a sixth of the span away from the wall.

    Examples
    --------
    >>> temporary_wall_further_in().right
    'a fifth more'
    """
    names = {-1: "a sixth less", 0: "the same", 1: "a fifth more", 2: "twice as much"}
    found = asked_of(span=12 * ft, offset=2 * ft)
    right = names[1] if abs(found.ratio - 1.2) < 1e-9 else "something else"
    return Prediction(
        "A wall with cut 12 ft joists on both sides comes out. A temporary wall stands on each side, 2 "
        "ft from it. "
        "What do the two carry together, compared with the wall?",
        tuple(names.values()),
        right,
        f"The wall had {show(found.wall, 'line load')}. The two have "
        f"{show(found.together, 'line load')}. "
        "They catch the joists with a shorter lever. And the outside walls get less.",
    )


def far_end_of_the_lever():
    """Ask what the far end of the joists does when a heavy outside wall stands on their tips.

    Examples
    --------
    >>> far_end_of_the_lever().right
    'it wants to rise'
    """
    given = dict(line_load=10 * psf, span=12 * ft, offset=3 * ft, tip_load=600 * plf)
    far = shoring.far_wall_reaction(**given)
    limit = shoring.tip_load_that_lifts_the_far_end(line_load=10 * psf, span=12 * ft, offset=3 * ft)
    return Prediction(
        "An outside wall comes out. It leaves 600 plf standing on the tips of 12 ft joists. The "
        "temporary wall stands "
        "3 ft inside, and the floor is empty. What does the far end of the joists do?",
        ("it carries more", "it carries the same", "it wants to rise"),
        "it wants to rise" if far < 0 else "it carries more",
        f"The joists are a lever. Already {show(limit, 'line load')} on the tips would lift the far end "
        "of this empty "
        f"floor. At 600 plf something must hold it down with {show(-far, 'line load')}.",
    )


def lift_all_of_the_sag():
    """Ask what happens when a beam is jacked at its middle by its whole measured sag, most of it creep.

    Examples
    --------
    >>> lift_all_of_the_sag().right
    'its ends come off the walls'
    """
    beam = dict(line_load=300 * plf, span=14 * ft, bending_stiffness=1.36e12)
    springs = formulas.simple_uniform_deflection(**beam)
    off = jacking.midspan_lift_off(**beam)
    return Prediction(
        "A beam has sagged for a century. 2 parts of its sag spring back, 3 parts crept in. You jack "
        "its middle up by the "
        "whole sag. What happens?",
        ("it is straight again", "it is straight, but stiff to lift", "its ends come off the walls"),
        "its ends come off the walls" if 2.5 * springs > off else "it is straight again",
        f"The ends let go at {off / springs:.1f} times the springing sag. The whole sag is 2.5 times. "
        "From there the whole "
        "load hangs on the jack, and the beam bends over it like a hump.",
    )
