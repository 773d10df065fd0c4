"""Predictions of notebook 12."""

from structlib.ground.cut_sections import drilled_section_modulus, notched_section_modulus
from structlib.ground.measured_sections import measured_section
from structlib.ground.showing import show
from structlib.ground.units import inch
from structlib.pages.kit.prediction import Prediction


def log_against_square():
    """Ask how strong an 8 in log is beside a full 8x8.

    Examples
    --------
    >>> log_against_square().right
    'about 60 %'
    """
    size = 8 * inch
    square, log, half = (
        measured_section(shape, width=size, depth=depth)
        for shape, depth in (("sawn", size), ("round", size), ("half round", size / 2))
    )
    share = log.section_modulus / square.section_modulus
    choices = {0.4: "about 40 %", 0.6: "about 60 %", 0.8: "about 80 %"}
    return Prediction(
        "An 8 in round log beside a full 8x8 of the same wood. How strong is the log in bending?",
        tuple(choices.values()),
        choices[min(choices, key=lambda one: abs(one - share))],
        f"It has {show(log.area / square.area, 'ratio')} of the wood and {show(share, 'ratio')} of the "
        f"strength. The corners "
        f"that it lacks are far from the middle, where wood counts most. Split in two, each half has only "
        f"{show(half.section_modulus / square.section_modulus, 'ratio')}.",
    )


def notch_or_hole():
    """Ask which takes more strength: a notch of a sixth of the depth, or a hole of a third.

    Examples
    --------
    >>> notch_or_hole().right
    'the notch'
    """
    size = dict(width=1.0, depth=6.0)
    whole = notched_section_modulus(notch=0.0, **size)
    notch = notched_section_modulus(notch=1.0, **size) / whole
    hole = drilled_section_modulus(diameter=2.0, **size) / whole
    return Prediction(
        "A notch a sixth of the depth, in the top edge. Or a hole a third of the depth wide, at mid-depth. "
        "Which takes "
        "more bending strength?",
        ("the notch", "the hole", "both the same"),
        "the notch" if notch < hole else "the hole",
        f"The notch leaves {show(notch, 'ratio')}, the hole {show(hole, 'ratio')}. The outer edges do the "
        f"work; the middle "
        "hardly helps in bending.",
    )
