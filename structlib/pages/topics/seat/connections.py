"""How a nail, a lag screw and a bolt give way across a joint, and the distances each wants, as tables."""

from math import pi

from structlib.ground.lumber import find_material
from structlib.ground.showing import show
from structlib.ground.units import inch
from structlib.pages.kit.door import hold
from structlib.pages.kit.show import Table
from structlib.rules.check import Rulebook, least_verified
from structlib.rules.choice import RULEBOOK
from structlib.rules.members import Crossing, Fasteners, JointMember, NotCovered, ask


def _fasteners(dowels):
    return (
        dowels.nail("10d common"),
        dowels.nail("16d common"),
        dowels.lag_screw(0.375 * inch, length=4 * inch),
        dowels.bolt(0.5 * inch),
    )


def _joint(ply_width, dowels):
    """A thick main member with one ply on its side, loaded across the grain of both, and its wood."""
    wood = find_material("Douglas Fir-Larch", "No.2")
    given = dict(specific_gravity=wood.specific_gravity, angle=pi / 2)
    main = dowels.wood_piece(thickness=2 * ply_width, **given)
    return wood, main, dowels.wood_piece(thickness=ply_width, **given)


def usual_nailing(rulebook: Rulebook = RULEBOOK):
    """Return the usual nailing of plies where nothing has to pass; None where the rulebook has none.

    Examples
    --------
    >>> usual_nailing().lines
    2
    """
    try:
        return ask(rulebook, "usual_nailing")
    except NotCovered:
        return None


def pattern_words(system: str = "us", rulebook: Rulebook = RULEBOOK):
    """Name the usual nailing of plies where nothing, or next to nothing, has to pass between them.

    Examples
    --------
    >>> pattern_words()
    'the usual pattern: 16d common in 2 lines, every 12 in (trade advice, pairs of 16d, seen)'
    """
    one = usual_nailing(rulebook)
    if one is None:
        return ""
    apart = show(one.spacing, "section length", system)
    return f"the usual pattern: {one.nail} in {one.lines} lines, every {apart} ({one.name}, {one.verified})"


def ways_to_give_way(ply_width: float = 1.5 * inch, system: str = "us", rulebook: Rulebook = RULEBOOK):
    """Compare what one nail, lag screw and bolt pass from a side ply to the plies behind it, and how they yield.

    ``ply_width`` [mm].

    Examples
    --------
    >>> [row[0] for row in ways_to_give_way().rows]
    ['10d common nail', '16d common nail', '3/8 in lag screw', '1/2 in bolt']
    >>> ways_to_give_way().rows[3][2]
    'the fastener bends once, in the main member, and the side member crushes (IIIs)'
    """
    dowels = rulebook.room("dowels")
    wood, main, side = _joint(ply_width, dowels)
    rows, known = [], []
    for fastener in _fasteners(dowels):
        found = dowels.lateral_value(fastener, main=main, side=side)
        known.append(found.verified)
        hardest, most = max(found.modes, key=lambda mode: mode[1])
        rows.append(
            (
                fastener.name,
                show(found.value, "force", system),
                f"{dowels.MODE_WORDS[found.mode]} ({found.mode})",
                f"{show(most, 'force', system)} ({hardest})",
            )
        )
    like = JointMember(Fasteners("bolt", 0.5 * inch), main.thickness, ply_width, *[wood.specific_gravity] * 2)
    clause = ask(rulebook, "fastening", like, Crossing(None)).clause
    caption = (
        f"One fastener, {show(ply_width, 'section length', system)} of {wood.name} on the side, load across the "
        f"grain, ten years of load. Yield equations of {clause}, {least_verified(known)}."
    )
    return Table(("fastener", "passes", "it gives way when", "its hardest way would take"), rows, caption)


def distances_wanted(ply_width: float = 1.5 * inch, system: str = "us", rulebook: Rulebook = RULEBOOK):
    """List how far a nail, a lag screw and a bolt stand from ends, edges and each other, load across the grain.

    ``ply_width`` [mm].

    Examples
    --------
    >>> distances_wanted().rows[3][:3]
    ('1/2 in bolt', '2 in', '2 in')
    """
    dowels = rulebook.room("dowels")
    _, main, side = _joint(ply_width, dowels)
    rows = []
    for fastener in _fasteners(dowels):
        found = dowels.lateral_value(fastener, main=main, side=side)
        slender = None
        if not dowels.is_thin(fastener.diameter):
            slender = min(found.main_length, found.side_length) / fastener.diameter
        wants = dowels.least_distances(fastener, load="perpendicular", slenderness=slender)
        full = {
            name: show(wants[name][0], "section length", system) for name in ("end", "edge", "in a row", "between rows")
        }
        word = "guidance, no rule: " if dowels.is_thin(fastener.diameter) else ""
        rows.append((fastener.name, *full.values(), f"{word}{wants['end'][2]}, {wants['end'][3]}"))
    head = ("fastener", "end", "loaded edge", "in a row", "between rows", "known")
    return Table(head, rows, "Least distances for the whole value. For bolts and lags a row runs with the load.")


hold(globals())
