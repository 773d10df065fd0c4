"""Predictions of notebook 12."""

from structlib.ground.cut_sections import drilled_section_modulus, notched_section_modulus
from structlib.ground.measured_sections import measured_section
from structlib.ground.showing import show
from structlib.ground.units import ft, inch, psf
from structlib.house.patch_loads import find_heavy_thing, patch_on_joists
from structlib.mechanics import vibration
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


def longer_floor_same_limit():
    """Ask how a floor that just meets L/360 swings when its span grows from 10 ft to 20 ft.

    Examples
    --------
    >>> longer_floor_same_limit().right
    'more slowly'
    """
    short, long = (vibration.frequency_from_sag(sag=span / 360 * 10 / 40) for span in (10 * ft, 20 * ft))
    return Prediction(
        "Two floors, of 10 ft and of 20 ft. Each is just stiff enough: span/360 under 40 psf. Each weighs "
        "10 psf. How does "
        "the longer one swing?",
        ("just as fast", "more slowly", "faster"),
        "more slowly" if long < 0.99 * short else "just as fast",
        f"{long:.1f} Hz against {short:.1f} Hz. The same ratio is twice the sag, and the frequency falls "
        f"with the root of it.",
    )


def tub_along_or_across():
    """Ask which way to turn a tub for the joists under it.

    Examples
    --------
    >>> tub_along_or_across().right
    'across them'
    """
    tub = find_heavy_thing("cast-iron tub")
    shares = {}
    for words, direction in (("along them", "along the joists"), ("across them", "across the joists")):
        under = patch_on_joists(
            tub,
            span=13 * ft,
            spacing=16 * inch,
            lasting=10 * psf,
            design=40 * psf,
            place=6.5 * ft,
            direction=direction,
        )
        shares[words] = max(one.share for one in under)
    return Prediction(
        "A full cast-iron tub, in the middle of 13 ft joists. Should its long side lie along the joists or "
        "across them, for "
        "the joist that gets most?",
        (*shares, "it is the same"),
        min(shares, key=shares.get),
        f"Across, the worst joist uses {show(shares['across them'], 'ratio')} of its design moment. Along, "
        f"{show(shares['along them'], 'ratio')}: fewer joists share it.",
    )
