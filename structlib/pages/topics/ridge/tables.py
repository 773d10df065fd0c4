"""The ridge beside the bench, as tables: a board or a beam, and a peak made stiff."""

import math

from structlib.ground.showing import show
from structlib.ground.units import ft, inch, psf
from structlib.mechanics import frames, frames_spread
from structlib.pages.kit.door import hold
from structlib.pages.kit.show import Table
from structlib.pages.topics.roof.example import DEAD, RISE, SNOW, SPAN, pair, stiffness
from structlib.rules.choice import RULEBOOK

footings, snow = map(RULEBOOK.room, ("footings", "snow"))


def _up(length):
    """The next whole inch."""
    return math.ceil(length / inch - 1e-9) * inch


def board_or_beam(ridge_span: float = 12 * ft, system: str = "us"):
    """Set a ridge board beside a ridge beam: what each carries, and what it needs below.

    ``ridge_span`` [mm].

    Examples
    --------
    >>> board_or_beam().rows[1]
    ('load along it', 'none', '540 plf')
    """
    line = frames.ridge_beam_load(line_load=DEAD + SNOW, building_span=SPAN)
    end = frames.ridge_post_load(ridge_load=line, spans=ridge_span)
    middle = frames.ridge_post_load(ridge_load=line, spans=2 * ridge_span)
    soil = footings.find_soil("clay or silt")
    side, thickness = footings.plain_pad(load=middle, soil=soil, base=5.5 * inch)
    push = frames.rafter_thrust(**pair(), rise=RISE)
    moment = line * ridge_span**2 / 8
    say = lambda value, kind: show(value, kind, system)  # noqa: E731
    rows = [
        ("what it is", "something to lean on", "a beam on posts"),
        ("load along it", "none", say(line, "line load")),
        ("push at each eave, a pair", say(push, "force"), "none"),
        ("bending in it", "none", say(moment, "moment")),
        ("under it", "nothing", f"end posts {say(end, 'force')}, middle post {say(middle, 'force')}"),
        (
            "under a middle post",
            "nothing",
            f"a way straight down, and a pad {say(_up(side), 'section length')} square and "
            f"{say(_up(thickness), 'section length')} thick on clay",
        ),
        ("the walls need", "a tie at every pair", "no tie; seats cut level"),
    ]
    caption = (
        f"{say(SPAN, 'length')} wide under {say(DEAD + SNOW, 'area load')}; ridge beam over "
        f"{say(ridge_span, 'length')}. Its own weight is left out."
    )
    return Table(("", "ridge board", "ridge beam"), rows, caption)


def stiff_peak(system: str = "us"):
    """Say what a stiffened peak would have to carry when there is no tie, beside a rafter with one.

    Examples
    --------
    >>> stiff_peak().rows[0][1]
    '4,320 lb-ft'
    """
    alike = pair()
    moment = frames_spread.stiff_peak_moment(**alike)
    spread = frames_spread.stiff_peak_spread(
        **alike, rise=RISE, bending_stiffness=stiffness("2x8")["bending_stiffness"]
    )
    rows = [
        ("moment at the peak, w L² / 8", show(moment, "moment", system)),
        (
            "a rafter with its tie at the eaves, for comparison",
            show(frames.simple_rafter_moment(**alike), "moment", system),
        ),
        ("the eaves would part by, peak perfectly stiff, rafters 2x8", show(spread, "small length", system)),
    ]
    gate = (
        "Stop and call first: a peak that carries a moment is an engineered frame. "
        "No plate, strap or plywood is "
        "sized here. Only the demand is shown."
    )
    return Table(("without any tie", "asked"), rows, gate)


def printed_numbers():
    """Give our own numbers for the printed ones of this notebook, by their names in data/published_checks.csv.

    Gives [psf].

    Examples
    --------
    >>> [round(number, 3) for number in printed_numbers().values()]
    [8.064]
    """
    shed = snow.ground_snow(15 * psf, edition=snow.EDITION, basis=snow.BASIS)
    flat = snow.flat_roof_snow(shed, exposure=0.8, thermal=1.2, importance=0.8)
    return {"flat roof snow of an unheated shed": float(flat / psf)}


hold(globals())
