"""Predictions of notebook 13."""

from structlib.ground.showing import show
from structlib.ground.units import ft, inch, psf
from structlib.house.patch_loads import find_heavy_thing, patch_on_joists
from structlib.mechanics import vibration
from structlib.pages.kit.prediction import Prediction


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
