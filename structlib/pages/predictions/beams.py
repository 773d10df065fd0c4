"""Predictions of notebooks 01 to 04."""

from structlib.ground import sections
from structlib.ground.lumber import find_material
from structlib.ground.showing import show
from structlib.ground.units import ft, inch, psf
from structlib.house.file import demo_house
from structlib.house.influence import influence
from structlib.house.pieces import area_load, joist_weight
from structlib.house.plan import Joists
from structlib.mechanics import formulas
from structlib.pages.myths import two_against_one

from .prediction import Prediction

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
    strength = (sections.rectangle_section_modulus(width=1.0, depth=2.0)
                / sections.rectangle_section_modulus(width=2.0, depth=1.0))
    return Prediction(
        "You have one amount of wood. You make the beam twice as deep and half as wide. How much stiffer is it?",
        tuple(_TIMES.values()), _whole_times(after / before),
        f"Twice the depth alone would give 8 times; half the width takes half of that away. Strength grows less: "
        f"{strength:.0f} times.")


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
        ("two 2x8", "one 2x10"), "two 2x8" if strength > 1 else "one 2x10",
        f"Two 2x8 have {100 * (strength - 1):.0f} % more bending strength and {100 * stiffness:.0f} % of the stiffness. "
        "Depth wins for the same amount of wood; two 2x8 are more wood.")


def cut_or_continuous():
    """Ask what a joist in one piece over a middle wall does to the load on it.

    Examples
    --------
    >>> cut_or_continuous().right
    'a quarter more'
    """
    cut, through = (influence((0.0, 12 * ft, 24 * ft), joints, 0.0, 24 * ft)[1] for joints in ("cut", "continuous"))
    ratio = through / cut
    words = {1.0: "the same", 1.25: "a quarter more", 1.5: "half more", 0.75: "a quarter less"}
    return Prediction(
        "Two equal joist spans meet over a wall. In one house the joists are cut over it, in the other they run through "
        "in one piece. What does the wall carry in the second house?",
        tuple(words.values()), words[round(ratio, 6)],
        f"The piece that runs through is stiff over the wall, so it leans on it: {ratio:.2f} times the load. "
        "The two outside walls get less.")


def deeper_joists_heavier_wall():
    """Ask how much deeper joists add to what a wall carries.

    Examples
    --------
    >>> deeper_joists_heavier_wall().right
    'a little: 1 to 3 %'
    """
    thin, thick = (joist_weight(Joists(species="Hem-Fir", grade="No.2", size=size, spacing=16 * inch))
                   for size in ("2x8", "2x12"))
    level = demo_house().part("upper floor")
    total = sum(area_load(level, level.slope))
    more = (thick - thin) / total
    choices = {"a little: 1 to 3 %": (0.01, 0.03), "about 10 %": (0.08, 0.12), "about 50 %": (0.4, 0.6)}
    right = next(name for name, (low, high) in choices.items() if low <= more <= high)
    return Prediction(
        "You change the floor's joists from 2x8 to 2x12. How much more does the wall under them carry?",
        tuple(choices), right,
        f"The joists themselves weigh {thin / psf:.1f} psf and then {thick / psf:.1f} psf, of some {total / psf:.0f} psf in "
        f"all: {100 * more:.1f} % more. Spans and what people put on the floor make the load, not the joists.")


def twice_the_opening():
    """Ask what twice the opening does to the sag of the beam over it.

    Examples
    --------
    >>> twice_the_opening().right
    '16 times'
    """
    sag = [formulas.simple_uniform_deflection(line_load=1.0, span=span, bending_stiffness=1.0) for span in (1.0, 2.0)]
    moment = [formulas.simple_uniform_moment(line_load=1.0, span=span) for span in (1.0, 2.0)]
    return Prediction(
        "You make the opening twice as wide and keep the same beam and the same load on every foot. How much more does "
        "it sag?", tuple(_TIMES.values()), _whole_times(sag[1] / sag[0]),
        f"Sag grows with the span multiplied by itself four times. The moment grows {moment[1] / moment[0]:.0f} times, the push on each seat "
        "only 2 times.")


def plate_or_beam():
    """Ask which face is crushed first where a fir beam sits on a spruce plate.

    Examples
    --------
    >>> plate_or_beam().right
    'the plate below'
    """
    beam, plate = find_material("Douglas Fir-Larch", "No.2"), find_material("Spruce-Pine-Fir", "No.1/No.2")
    right = "the plate below" if plate.bearing < beam.bearing else "the beam"
    return Prediction(
        "A Douglas Fir beam sits on a spruce wall plate. One face is crushed across its grain before the other. Which?",
        ("the beam", "the plate below", "both at once"), right,
        f"The same push presses on both faces, and {show(plate.bearing, 'stress')} is less than "
        f"{show(beam.bearing, 'stress')}. Check the beam, and then what it sits on.")


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
        "left support take?", tuple(words.values()), words[share],
        f"Turn about the other support: the load's lever is {100 * share:.0f} % of the span, so that is the left support's "
        "share.")


def middle_post_out():
    """Ask what taking out a middle post does to the moment in the beam.

    Examples
    --------
    >>> middle_post_out().right
    '4 times'
    """
    before = -formulas.two_span_uniform_support_moment(line_load=1.0, span=1.0)
    after = formulas.simple_uniform_moment(line_load=1.0, span=2.0)
    sag = (formulas.simple_uniform_deflection(line_load=1.0, span=2.0, bending_stiffness=1.0)
           / formulas.two_span_uniform_deflection(line_load=1.0, span=1.0, bending_stiffness=1.0))
    return Prediction(
        "A beam in one piece runs over a middle post, with two equal spans. The post is taken out. How much greater is the "
        "greatest moment now?", tuple(_TIMES.values()), _whole_times(after / before),
        f"And it is not even the worst: the sag grows {sag:.1f} times. Twice the span is not twice the beam.")
