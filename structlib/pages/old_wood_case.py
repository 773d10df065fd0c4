"""One old joist of the page worked out: its woods as shares, its cut, what is left there, what may be cut."""

from dataclasses import dataclass, replace

from structlib.ground.measured_sections import MeasuredSection, measured_section
from structlib.ground.sections import round_inertia
from structlib.ground.tables import table_row
from structlib.ground.units import inch
from structlib.mechanics import formulas, vibration
from structlib.mechanics.round_taper import tapered_log
from structlib.rules.us import notches
from structlib.rules.us.old_joists import GRADES, compared_woods

WANE = 1 * inch  # the corner that a hewn timber of the page lacks


@dataclass(frozen=True)
class Used:
    """The greatest share of one wood, the cut counted, and what it is [-]."""

    share: float
    governs: str
    wood: str


@dataclass(frozen=True)
class AtCut:
    """One check at the cut: its name, what is asked, what each wood gives, its dimension and its rule."""

    name: str
    asked: float
    given: tuple
    dimension: str
    rule: str

    @property
    def shares(self):
        """What is asked over what each wood gives [-]."""
        return tuple(self.asked / one for one in self.given)


@dataclass(frozen=True)
class OldWoodCase:
    """Everything that page and picture need. Lengths in mm.

    ``shares`` has one record a wood, the best first; ``none_of_it`` tells that the wood asked for has no
    values in this size, or may make no grade: then nothing that a wood gives is shown, no other wood's either. ``used`` are the least and the greatest share of any
    wood, the cut counted. ``allowed``, ``limit`` and ``greatest_hole`` are the code's limits as drawn.
    """

    section: MeasuredSection
    right_depth: float
    wane: float
    shares: tuple
    none_of_it: bool
    frequency: tuple
    cut: object
    place: float
    checks: tuple
    at_cut: tuple
    used: tuple
    allowed: tuple
    limit: tuple | None
    greatest_hole: float

    @property
    def lowest_grade(self):
        """The lowest grade compared: the range ends there, and wood below it has no published values [-]."""
        return max((one.wood.grade for one in self.shares), key=GRADES.index)

    @property
    def refused(self):
        """Whether the cut is beyond one of the code's limits."""
        return any(beyond(check) for check in self.checks)


def beyond(check):
    """Tell whether a limit is overstepped, by more than rounding.

    Parameters
    ----------
    check : structlib.rules.check.Check
        The check [-].

    Returns
    -------
    bool
        True when more is asked than given [-].

    Examples
    --------
    >>> from types import SimpleNamespace
    >>> beyond(SimpleNamespace(share=1.0)), beyond(SimpleNamespace(share=1.01))
    (False, True)
    """
    return check.share > 1 + 1e-9


def work_out(values):
    """Work out one old joist from the values of the page.

    Parameters
    ----------
    values : dict
        Values of the controls of `OldWoodPage` [any].

    Returns
    -------
    OldWoodCase
        Woods, cut, limits [-].

    Examples
    --------
    >>> from structlib.pages.old_wood_page import OldWoodPage
    >>> from structlib.pages.show import start_values
    >>> case = work_out(start_values(OldWoodPage()))
    >>> round(case.used[0].share, 2), case.used[0].governs, case.refused
    (0.44, 'sag', False)
    """
    span, plies = values["span"], int(values["plies"])
    wane = min(WANE, values["width"] / 3, values["depth"] / 3) if values["shape"] == "hewn" else 0.0
    section = measured_section(values["shape"], width=_width(values), depth=values["depth"], wane=wane)
    loads = dict(span=span, spacing=values["spacing"], dead=values["dead"], live=values["live"], plies=plies)
    every = compared_woods(section, **loads)
    woods = tuple(one for one in every if _is_meant(one.wood, values["wood"]))
    taper = values["taper"] if values["shape"] == "round" else 0.0
    shares = tuple(_tapered(one, section, taper, loads) for one in woods or every)
    shares = tuple(sorted(shares, key=lambda one: one.greatest))
    stiffness = [_stiffness(one, section, taper, loads) for one in shares]
    frequency = tuple(
        vibration.simple_span_frequency(
            bending_stiffness=ei, line_weight=values["dead"] * values["spacing"], span=span
        )
        for ei in (min(stiffness), max(stiffness))
    )
    cut = _cut(values, section.depth)
    at_cut = _left_at_cut(values, section, cut, shares, loads)
    allowed, limit, greatest_hole = _allowed(values, section)
    return OldWoodCase(
        section=section,
        right_depth=section.depth - taper,
        wane=wane,
        shares=shares,
        none_of_it=not woods or values["state"] == "no grade",
        frequency=frequency,
        cut=cut,
        place=_place(values, cut),
        checks=_checks(values, section, cut),
        at_cut=at_cut,
        used=_used(shares, at_cut),
        allowed=allowed,
        limit=limit,
        greatest_hole=greatest_hole,
    )


def _checks(values, section, cut):
    """The code's limits on the cut; none where there is no cut or the member is engineered."""
    if cut is None or values["kind"] != "sawn":
        return ()
    joist = notches.Joist(values["span"], section.width, section.depth)
    return (notches.notch_checks if isinstance(cut, notches.Notch) else notches.hole_checks)(joist, cut)


def _width(values):
    """Width as measured; a log is never wider than it is deep."""
    return min(values["width"], values["depth"]) if values["shape"] == "flat sides" else values["width"]


def _is_meant(wood, key):
    if key == "any":
        return True
    return wood.grade in ("No.2", "No.1/No.2") if key == "No.2" else wood.species == key


def _tapered(one, section, taper, loads):
    """Shares of a log that gets thinner to the right: stress and sag at their own worst places."""
    if not taper:
        return one
    size = dict(
        start_diameter=section.depth,
        end_diameter=section.depth - taper,
        span=loads["span"],
        modulus=one.wood.modulus,
    )
    passing = loads["live"] * loads["spacing"] / loads["plies"]
    whole = (loads["dead"] + loads["live"]) * loads["spacing"] / loads["plies"]
    log, live = tapered_log(line_load=whole, **size), tapered_log(line_load=passing, **size)
    thin = (section.depth / (section.depth - taper)) ** 2  # the thin end has less area for shear
    return replace(
        one,
        bending=log.stress / one.bending_value,
        bending_stress=log.stress,
        shear=one.shear * thin,
        shear_stress=one.shear_stress * thin,
        sag=one.sag * live.deflection / one.live_sag,
        live_sag=live.deflection,
        ratio=loads["span"] / live.deflection,
    )


def _stiffness(one, section, taper, loads):
    if not taper:
        inertia = section.inertia
    else:
        log = tapered_log(
            start_diameter=section.depth,
            end_diameter=section.depth - taper,
            span=loads["span"],
            line_load=1.0,
            modulus=one.wood.modulus,
        )
        inertia = round_inertia(diameter=log.same_as)
    return formulas.bending_stiffness(modulus=one.wood.modulus, inertia=inertia * loads["plies"])


def _cut(values, depth):
    """The notch or hole as measured, kept on the joist; None where there is none."""
    if values["cut"] == "none":
        return None
    span, place = values["span"], min(values["place"], values["span"])
    size = min(values["size"], 0.9 * depth)
    if values["cut"].startswith("notch"):
        length = min(values["length"], span)
        start = min(max(place - length / 2, 0.0), span - length)
        return notches.Notch(start, start + length, size, values["cut"].split()[1])
    below = values["cut"].split()[1]
    height = depth / 2 if below == "middle" else float(below) * inch + size / 2
    return notches.Hole(place, min(height, depth - size / 2), size)


def _place(values, cut):
    if isinstance(cut, notches.Notch):
        return (cut.start + cut.end) / 2
    return min(values["place"], values["span"])


def _left_at_cut(values, section, cut, shares, loads):
    """Bending in the wood left at the cut, and shear at a notched end, for a sawn rectangle."""
    if cut is None or values["kind"] != "sawn" or section.shape != "sawn":
        return ()
    size = dict(width=section.width * loads["plies"], depth=section.depth)
    whole, span = (loads["dead"] + loads["live"]) * loads["spacing"], loads["span"]
    found = []
    if isinstance(cut, notches.Notch):
        modulus = notches.notched_section_modulus(notch=cut.depth, **size)
        at = min(max(span / 2, cut.start), cut.end)  # where the moment over the notch is greatest
    else:
        offset = abs(cut.height - section.depth / 2)
        modulus = notches.drilled_section_modulus(diameter=cut.diameter, offset=offset, **size)
        at = cut.place
    moment = formulas.simple_uniform_moment_at(line_load=whole, span=span, position=at)
    stress = formulas.bending_stress(moment=moment, section_modulus=modulus)
    given = tuple(one.bending_value for one in shares)
    found.append(
        AtCut("bending in the wood left at the cut", stress, given, "stress", "dead + live; M / S of what is left")
    )
    at_end = isinstance(cut, notches.Notch) and (cut.start <= 0 or cut.end >= span)
    if not (at_end and cut.face == "bottom"):
        gone, edges = (
            (cut.depth, (cut.start, cut.end))
            if isinstance(cut, notches.Notch)
            else (cut.diameter, (cut.place - cut.diameter / 2, cut.place + cut.diameter / 2))
        )
        # the depth that is left, as if the cut ran on to the support
        push = max(
            abs(formulas.simple_uniform_shear_at(line_load=whole, span=span, position=min(max(x, 0.0), span)))
            for x in edges
        )
        found.append(
            AtCut(
                "shear in the wood left at the cut",
                formulas.rectangle_shear_stress(
                    shear=push, width=size["width"], depth=section.depth - gone
                ),
                tuple(one.wood.shear for one in shares),
                "stress",
                "dead + live; 1.5 V / A of what is left",
            )
        )
    if at_end and cut.face == "bottom":
        push = formulas.simple_uniform_reaction(line_load=whole, span=span)
        left = section.depth - cut.depth
        given = tuple(
            notches.tension_notch_shear(shear_value=one.wood.shear, remaining=left, **size) for one in shares
        )
        known = table_row("us_cuts", key="end_notch_shear_power")["verified"]
        rule = f"dead + live; NDS 2018 3.4.3.2 ({known})"
        found.append(AtCut("push on the notched end", push, given, "force", rule))
    return tuple(found)


def _used(shares, at_cut):
    """The least and the greatest share that any of the woods uses."""
    found = []
    for number, wood in enumerate(shares):
        asked = {"bending": wood.bending, "shear": wood.shear, "sag": wood.sag}
        asked |= {"at the cut": max(one.shares[number] for one in at_cut)} if at_cut else {}
        governs = max(asked, key=asked.get)
        found.append(Used(asked[governs], governs, f"{wood.wood.species} {wood.wood.grade}"))
    return min(found, key=lambda one: one.share), max(found, key=lambda one: one.share)


def _allowed(values, section):
    """The boxes in which a cut may lie, the greatest notch around this one, and the widest hole.

    None for logs and hewn timber: the limits are those of sawn lumber.
    """
    if values["kind"] != "sawn" or section.shape != "sawn":
        return (), None, 0.0
    span, depth, least = values["span"], section.depth, notches.cut_limit("hole_edge_distance")
    thirds = ((0.0, span / 3), (2 * span / 3, span))
    band = ((0.0, span, least, depth - least),) if depth > 2 * least else ()
    deep, half = (
        depth / notches.cut_limit("notch_depth_divisor"),
        depth / notches.cut_limit("notch_length_divisor") / 2,
    )
    cut = _cut(values, depth)
    if not isinstance(cut, notches.Notch):
        return band, None, depth / notches.cut_limit("hole_diameter_divisor")
    at_end = cut.start <= 1e-6 or cut.end >= span - 1e-6
    if at_end:
        deep = depth / notches.cut_limit("end_notch_depth_divisor")
        low, high = (depth - deep, depth) if cut.face == "top" else (0.0, deep)
        return (), (cut.start, cut.end, low, high), 0.0
    checks = notches.notch_checks(notches.Joist(span, section.width, depth), cut)
    if any(check.name == "tension side" for check in checks):
        return (), None, 0.0
    low, high = (depth - deep, depth) if cut.face == "top" else (0.0, deep)
    middle = (cut.start + cut.end) / 2
    start, end = max(0.0, middle - half), min(span, middle + half)
    inside = end > span / 3 and start < 2 * span / 3
    boxes = tuple((start, end, low, high) for start, end in thirds)
    return boxes, None if inside else (start, end, low, high), 0.0
