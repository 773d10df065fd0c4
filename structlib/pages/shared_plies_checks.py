"""What the page of shared plies asks: of each piece, of a sister's ends, of nails and bolts, and the sag."""

from dataclasses import dataclass

from structlib.ground.refusals import OutsideRule
from structlib.ground.showing import show
from structlib.ground.units import ft, inch
from structlib.mechanics import formulas
from structlib.mechanics.composite import own_stress, seam_flow
from structlib.pages.connection_tables import pattern_words
from structlib.rules.check import least_verified
from structlib.rules.us.bending import bending_value
from structlib.rules.us.deflection import creep_factor, limit_divisor
from structlib.rules.us.dowels import adjusted_value, lateral_value, nail, wood_piece
from structlib.rules.us.factors import verified
from structlib.rules.us.fastening import nothing_passes, spacing_in_practice
from structlib.rules.us.flitch import (
    bolt_through_plate,
    creep_growth,
    end_bolt_shear,
    flitch_bolts,
    hole_line,
    hole_loss,
    plate_check,
    plate_hole_loss,
)
from structlib.rules.us.nailing_patterns import usual_pattern

_BOLT = 0.5 * inch


@dataclass(frozen=True)
class Question:
    """One question with a limit: what is asked and given, by which rule, how it is known.

    ``given`` is None where the rule does not cover the case; ``rule`` then says why.
    """

    name: str
    asked: float
    given: float | None
    dimension: str
    rule: str
    verified: str
    factors: tuple = ()

    @property
    def decides(self):
        """Whether there is an answer at all; each that there is decides."""
        return self.given is not None

    @property
    def share(self):
        """What is asked over what is given; nothing where there is no answer [-]."""
        return 0.0 if self.given is None else self.asked / self.given


def questions(values, case, system):
    """Return all that the page asks, in the order of its rows.

    Parameters
    ----------
    values : dict
        Values of the controls [any].
    case : structlib.pages.shared_plies_page.Case
        What the values come to [-].
    system : str
        Units of the reader: 'us' or 'metric' [-].

    Returns
    -------
    list of Question or tuple of str
        Questions with a limit, and rows of what is only asked [-].
    """
    wood_lost, plate_lost = _holes_take(case)
    at_hole = ", at a bolt hole" if wood_lost else ""
    found = [_bending(f"bending, old plies{at_hole}", case, 0, case.old, case.plies, wood_lost)]
    if case.kind == "flitch":
        found += _plate(case, at_hole, plate_lost)
    else:
        found.append(_bending("bending, new piece", case, 1, case.new, 1))
    if case.kind == "partial":
        found += _past_the_end(case, system)
    divisor, _, known = limit_divisor("floor")
    known = least_verified([known, *(one[3].verified for one in (case.old, case.new) if one)])
    limit, rule = values["span"] / divisor, "IRC R301.7, floor, live load"
    found.append(Question("sag", max(case.sag), limit, "small length", rule, known))
    ratio = case.stiffness / case.alone
    found.append(
        (
            "stiffness, times the old plies",
            f"{ratio:.2f} x",
            "",
            "",
            "the sum of E I; more where a seam is joined",
        )
    )
    if case.kind == "stack":
        return found + _seam(case, system)
    return found + (_bolts(values, case, system) if case.kind == "flitch" else _nails(values, case, system))


def _bending(name, case, number, piece, plies, lost=0.0):
    asked = max(abs(edge) for edge in case.stresses[number]) / (1 - lost)
    return _bent(name, asked, piece, plies)


def _bent(name, asked, piece, plies):
    given, factors = _bending_given(piece, plies)
    word = piece[3].verified
    known = "" if word == "seen" else f", {word}"
    return Question(name, asked, given, "stress", f"NDS 2018 3.3{known}", word, factors)


def _plate(case, at_hole, lost):
    check = plate_check(case.flitch, moment=case.moment)
    # the page's wood may have an odd number of plies; the stress is that of the page's own pieces
    edge = max(abs(one) for one in case.stresses[1]) / (1 - lost)
    rule = f"{check.clause}, recalled"
    found = [Question(f"bending, plate{at_hole}", edge, check.given, "stress", rule, check.verified)]
    if at_hole:
        creep = creep_factor(wet=False)
        grown = edge * creep_growth(case.flitch, creep_factor=creep)
        rule = f"E of the wood over {creep:g}, NDS 2018 3.5.2, {verified('creep_dry')}"
        known = least_verified([check.verified, verified("creep_dry")])
        name = "the plate, if all the load stays for years"
        found.append(Question(name, grown, check.given, "stress", rule, known))
    return found


def _past_the_end(case, system):
    """The old plies where they are alone, the groups of fasteners, and the shear between them."""
    stress = own_stress(case.parts[0], moment=case.cut_moment, stiffness=case.alone)
    found = [_bent("old plies, past the sister's end", stress, case.old, case.plies)]
    # a short sister has no room for the usual arm
    arm = show(case.groups[1] - case.helped[0], "section length", system)
    for name, force in zip(("outer", "inner"), case.group_forces):
        word = "lifts the sister" if force > 0 else "pushes it down"
        told = show(abs(force), "force", system)
        rule = f"{word}; groups {arm} apart; statics"
        found.append((f"{name} fastener group, each end", told, "", "", rule))
    new = case.new[3]
    known = "" if new.verified == "seen" else f", {new.verified}"
    size = dict(width=case.new[1], depth=case.new[0])
    stress = formulas.rectangle_shear_stress(shear=abs(case.group_forces[0]), **size)
    rule = f"the outer group's force; NDS 2018 3.4.2{known}"
    name = "shear in the sister between the end groups"
    return [*found, Question(name, stress, new.shear, "stress", rule, new.verified)]


def _seam(case, system):
    flow = seam_flow((case.parts[1], case.parts[0]), above=1, shear=case.shear)
    nails = f"{flow / _nail_along() * ft:.0f} 16d common nails in each foot"
    slip = show(case.slip, "small length", system, 3 if system == "us" else 2)
    told, rule = show(flow, "line load", system), f"V Q / I at the ends: {nails}, and they give way"
    return [
        ("slip at each end", slip, "", "", "from the slope at the end"),
        ("force along the seam, if nothing slipped", told, "", "", rule),
    ]


def _nails(values, case, system):
    crossing = values["load"] * _crossing(case, values["lands"])
    told = _nails_told(crossing, values["load"], case, system)
    return [("load to pass between the pieces", show(crossing, "line load", system), "", "", told)]


def _bolts(values, case, system):
    beam, load = case.flitch, values["load"]
    if case.plies % 2:
        return [("bolts", "", "", "", "worked out for 2 or 4 plies, half on each side of the plate")]
    try:
        value, mode, used = bolt_through_plate(beam, bolt_diameter=_BOLT)
        asked = dict(length=values["span"], line_load=load, reaction=case.shear, bolt_diameter=_BOLT)
        bolts = flitch_bolts(beam, **asked)
        past, counts = end_bolt_shear(beam, bolts, shear_value=beam.wood.shear)
    except OutsideRule as refusal:
        return [Question("bolts, 1/2 in", 0.0, None, "force", str(refusal), "recalled")]
    every, below = (show(one, "section length", system) for one in (bolts.spacing, counts))
    return [
        Question(
            "load into the plate along the beam",
            bolts.line_load,
            value / bolts.spacing,
            "line load",
            f"1/2 in bolts every {every}, mode {mode.mode}; NDS 2018 12.3, {mode.verified}",
            bolts.verified,
            used,
        ),
        Question(
            "load out of the plate at each end",
            bolts.reaction,
            bolts.end_bolts * value,
            "force",
            f"{bolts.end_bolts} bolts in each end group, or the plate stands on a steel seat",
            bolts.verified,
        ),
        Question(
            "shear at the end bolts, no steel seat",
            case.shear,
            past,
            "force",
            f"only the {below} below the highest bolt count; NDS 2018 3.4.3.3, recalled",
            least_verified([beam.wood.verified, "recalled"]),
        ),
    ]


def _holes_take(case):
    """What a 1/2 in bolt hole takes off the bending strength of wood and plate; nothing where none is laid
    out."""
    if case.kind != "flitch" or case.plies % 2:
        return 0.0, 0.0
    try:
        hole = dict(edge_distance=hole_line(case.flitch, bolt_diameter=_BOLT), bolt_diameter=_BOLT)
    except OutsideRule:
        return 0.0, 0.0
    return hole_loss(case.flitch, **hole), plate_hole_loss(case.flitch, **hole)


def _bending_given(piece, plies):
    """The bending value of like plies under floor load, and its factors: held sideways, not as repeated members."""
    depth, ply_width, _, material = piece
    value, used = bending_value(
        material,
        width=plies * ply_width,
        depth=depth,
        plies=plies,
        ply_width=ply_width,
        unbraced_length=0.0,
        time_factor=1.0,
        sharing_members=1,
    )
    return float(value), used


def _crossing(case, lands):
    """Share of the load that must cross between the pieces, from where it lands to where stiffness takes it.

    On top it lands on each piece by its width. On one side it lands on the old ply there.
    """
    new = dict(case.shares)["new"]
    if lands == "side":
        return 1 - (1 - new) / case.plies
    old, added = case.parts
    return abs(new - added.width / (old.width + added.width))


def _nails_told(crossing, load, case, system):
    """The nails that pass a load between the pieces, and the pattern that is usual beside them."""
    if nothing_passes(crossing, load):
        return f"nothing has to pass; {pattern_words(system)} only holds the pieces together"
    value, found = nail_across(case)
    rule = f"yield mode {found.mode}, NDS 2018 12.3, {found.verified}"
    usual = usual_pattern()
    if crossing / value < usual.lines / usual.spacing:
        rule += f"; {pattern_words(system)} is closer"
    if crossing * ft >= value:
        return f"{crossing / value * ft:.1f} 16d common nails in each foot: {rule}"
    # under one a foot, the distance between two says more: whole inches, or tens of millimetres
    step = inch if system == "us" else 10.0
    apart = spacing_in_practice(value=value, load=crossing) // step * step
    return f"one 16d common nail every {show(apart, 'length', system)}: {rule}"


def nail_across(case):
    """Return what a 16d common nail passes from the new piece into the old ply, pushed across the grain.

    Parameters
    ----------
    case : structlib.pages.shared_plies_page.Case
        What the values come to [-].

    Returns
    -------
    tuple
        Its value in service, and the reference value with its yield mode [N, -].
    """
    old = wood_piece(thickness=case.old[1], specific_gravity=case.old[3].specific_gravity)
    new = case.new[3].specific_gravity or case.old[3].specific_gravity
    side = wood_piece(thickness=case.new[1], specific_gravity=new)
    one = nail("16d common")
    found = lateral_value(one, main=old, side=side)
    return adjusted_value(found, one)[0], found


def _nail_along():
    """A 16d common nail in a seam between two boards that lie on one another, 1 1/2 in of it in the upper."""
    wood = wood_piece(thickness=1.5 * inch, specific_gravity=0.5)
    deep = wood_piece(thickness=5.5 * inch, specific_gravity=0.5)
    one = nail("16d common")
    return adjusted_value(lateral_value(one, main=deep, side=wood), one)[0]
