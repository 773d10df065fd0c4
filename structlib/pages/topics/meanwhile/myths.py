"""Myths of notebook 14."""

from structlib.ground.showing import show
from structlib.ground.units import ft, inch, plf
from structlib.mechanics import formulas, jacking
from structlib.pages.kit.cards import card
from structlib.pages.topics.meanwhile.tables import asked_of


def temporary_wall_carries_the_same():
    """Answer: the temporary wall carries what the wall did.

    Examples
    --------
    >>> "360 plf and not 300 plf" in temporary_wall_carries_the_same()
    True
    """
    near = asked_of(span=12 * ft, offset=2 * ft)
    far = asked_of(span=12 * ft, offset=4 * ft)
    return card(
        "The temporary wall carries just what the wall did.",
        f"12 ft joists at 50 psf, 2 ft away from the wall: {show(near.each, 'line load')} and not "
        f"{show(near.wall / 2, 'line load')}. At 4 ft it is {show(far.each, 'line load')}.",
    )


def slow_jacking_brings_it_back():
    """Answer: jacked slowly enough, a beam takes its old shape again.

    Examples
    --------
    >>> "0.55 in" in slow_jacking_brings_it_back()
    True
    """
    beam = dict(line_load=300 * plf, span=14 * ft, bending_stiffness=_three_two_by_tens())
    springs, off = formulas.simple_uniform_deflection(**beam), jacking.midspan_lift_off(**beam)
    moment = jacking.midspan_jack_moment(lift=off, **beam)
    crept = jacking.crept_part(measured_sag=1.5 * inch, springing_sag=springs)
    return card(
        "Jacked slowly enough, a beam takes its old shape again.",
        f"of 1.5 in of sag in a 3-2x10, {show(springs, 'small length')} spring back under 300 plf, and "
        f"{show(crept, 'small length')} do not. At {show(off, 'small length')} of lift both ends are "
        "off their walls, "
        f"with {show(moment, 'moment')} over the jack. The formula has no speed in it.",
    )


def _three_two_by_tens():
    from structlib.ground.sections import rectangle_inertia
    from structlib.pages.kit.woods import pieces

    depth, width, _, material = next(piece for piece in pieces("fir") if piece[2] == "2x10")
    return formulas.bending_stiffness(modulus=material.modulus, inertia=rectangle_inertia(width=3 * width, depth=depth))


def the_floor_below_takes_it():
    """Answer: a temporary wall may stand anywhere on the floor below.

    Examples
    --------
    >>> "5.4 times" in the_floor_below_takes_it()
    True
    """
    now, far = asked_of(), asked_of(offset=5 * ft)
    return card(
        "A floor holds a temporary wall, wherever it stands.",
        f"along one joist it brings {now.along:.1f} times that joist's design load. Across the "
        "joists, 5 ft from the "
        f"wall below, it asks {far.landed.moment_share:.2f} times their design moment.",
    )
