"""When do plies share the load? A sister, a beam on a beam, a plate between: who takes what, and the stress."""

from dataclasses import dataclass, replace
from functools import lru_cache

import numpy

from structlib.ground.refusals import OutsideRule
from structlib.ground.showing import show
from structlib.ground.units import ft, inch, ksi, plf, psi
from structlib.house.alternatives import FLITCH_FROM_THE_SIDE
from structlib.mechanics import formulas
from structlib.mechanics.beams import Beam, LineLoad, Support, solve
from structlib.mechanics.composite import (
    Part,
    end_group_forces,
    end_slip,
    joined_stiffness,
    loose_stiffness,
    own_stress,
    partly_joined_stiffness,
    partly_joined_stress,
    seam_flow,
    seam_force,
    shares_by_stiffness,
    stack,
    stepped_stiffness,
)
from structlib.pages.beam_page import CAUTION
from structlib.pages.connection_tables import pattern_words
from structlib.pages.controls import Box, Page, Pick, Shown, Slide, Steps
from structlib.pages.woods import pieces
from structlib.pictures.drawings.shared_plies import Piece, SharedPliesView, draw_shared_plies
from structlib.rules.us.bending import bending_value
from structlib.rules.us.deflection import creep_factor, limit_divisor
from structlib.rules.us.dowels import adjusted_value, lateral_value, nail, wood_piece
from structlib.rules.us.factors import verified
from structlib.rules.us.fastening import nothing_passes, spacing_in_practice
from structlib.rules.us.flitch import (
    Flitch,
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
from structlib.rules.us.steel_sections import steel_factor

#: Distance between the two groups of fasteners at each end of a partial sister.
GROUP_ARM = 16 * inch
_BOLT = 0.5 * inch

ARRANGEMENTS = (
    ("a sister, full length", "sister"),
    ("a sister, middle part only", "partial"),
    ("a beam laid on the beam", "stack"),
    ("a steel plate between", "flitch"),
)
_PARTNERS = (("the same lumber", "fir"), ("LVL 2.0E, generic", "lvl 2.0"))
_LANDS = (("on top of every piece", "top"), ("on one side only", "side"))
_PLATES = tuple(eighths * inch / 8 for eighths in (1, 2, 3, 4, 5, 6))
_PLATE_DEPTHS = tuple(quarters * inch / 4 for quarters in range(20, 46))
_OLD_WOOD = "fir"
_FULL_WOOD = 2000 * psi
_FULL_STEEL = 24 * ksi


@dataclass(frozen=True)
class Case:
    """What one set of values comes to; forces in N, lengths in mm, stresses in MPa."""

    kind: str
    old: tuple  # (depth, ply width, name, material)
    new: tuple | None
    plies: int
    parts: tuple  # composite parts: old, new
    stiffness: float
    alone: float  # stiffness of the old plies alone
    shares: tuple  # (name, share of the moment)
    stresses: tuple  # for each part (upper edge, lower edge)
    moment: float
    shear: float
    x: tuple
    sag: tuple
    end_slope: float
    joined: float = 1.0
    slip: float = 0.0
    helped: tuple = ()
    groups: tuple = ()
    cut_moment: float = 0.0
    group_forces: tuple = ()
    flitch: Flitch | None = None


class UnlikePliesPage(Page):
    """The bench of shared load: old plies, something new beside, on or between them, and what each takes.

    Parameters
    ----------
    system : str
        Units of the reader: 'us' or 'metric' [-].
    """

    def __init__(self, system="us"):
        self.system = system
        self.case = lru_cache(maxsize=64)(self._case)

    def controls(self, values):
        partner = values.get("partner", "lvl 2.0")
        kind = values.get("arrangement", "sister")
        new_depths = _PLATE_DEPTHS if kind == "flitch" else _depths(partner, 11.875 * inch)
        return (
            Slide("span", "Span", "length", 4 * ft, 20 * ft, 3 * inch, 12 * ft),
            Steps(
                "depth", "Depth, old plies", "section length", _depths(_OLD_WOOD, 11.25 * inch), 9.25 * inch
            ),
            Slide("plies", "Plies, old", "count", 1, 4, 1, 2),
            Pick("arrangement", "New piece", ARRANGEMENTS, "sister"),
            Pick("partner", "Made of", _PARTNERS, "lvl 2.0"),
            Steps("new_depth", "Depth, new piece", "section length", new_depths, 9.25 * inch),
            Steps("plate", "Plate thickness", "section length", _PLATES, 0.5 * inch),
            Slide("slip", "Slip of the stack", "ratio", 0.0, 1.0, 0.05, 1.0),
            Slide("length", "Sister, part of span", "ratio", 0.3, 0.95, 0.05, 0.6),
            Box("load", "Load", "line load", 1 * plf, 1000 * plf, 300 * plf),
            Pick("lands", "Load lands", _LANDS, "top"),
        )

    # ---- numbers -------------------------------------------------------------------------------------------

    def _case(self, items):
        values = dict(items)
        kind, span, load = values["arrangement"], values["span"], values["load"]
        old = _piece(_OLD_WOOD, values["depth"])
        plies = int(values["plies"])
        base = Part(modulus=old[3].modulus, width=plies * old[1], depth=old[0])
        moment = formulas.simple_uniform_moment(line_load=load, span=span)
        shear = formulas.simple_uniform_reaction(line_load=load, span=span)
        common = dict(
            kind=kind, old=old, plies=plies, alone=base.bending_stiffness, moment=moment, shear=shear
        )
        if kind == "stack":
            return self._stacked(values, common, base)
        if kind == "flitch":
            beam = Flitch(
                wood=old[3],
                ply_width=old[1],
                depth=old[0],
                plies=max(2, plies - plies % 2),
                plate_thickness=values["plate"],
                plate_depth=min(values["new_depth"], old[0]),
            )
            added = Part(modulus=steel_factor("modulus"), width=values["plate"], depth=beam.plate_depth)
            common |= {"flitch": beam, "new": None}
        else:
            new = _piece(values["partner"], values["new_depth"])
            added = Part(modulus=new[3].modulus, width=new[1], depth=new[0])
            common["new"] = new
        both = (base, added)
        stiffness = loose_stiffness(both)
        shares = shares_by_stiffness(both)
        stresses = []
        for part in both:
            edge = own_stress(part, moment=moment, stiffness=stiffness)
            stresses.append((-edge, edge))
        common |= {
            "parts": both,
            "stiffness": stiffness,
            "shares": tuple(zip(("old", "new"), shares)),
            "stresses": tuple(stresses),
        }
        slides = _slides(common["new"], shares[1])
        if kind != "partial":
            return Case(**common, **_shape(span, load, stiffness, slides))
        start = span * (1 - values["length"]) / 2
        pieces_ = stepped_stiffness(
            span=span, start=start, end=span - start, outside=base.bending_stiffness, inside=stiffness
        )
        inner = min(start + GROUP_ARM, span / 2)
        at = dict(line_load=load, span=span)
        outer_force, inner_force = end_group_forces(
            moment=shares[1] * formulas.simple_uniform_moment_at(**at, position=inner),
            shear=shares[1] * formulas.simple_uniform_shear_at(**at, position=inner),
            arm=inner - start,
        )
        return Case(
            **common,
            **_shape(span, load, pieces_, slides),
            helped=(start, span - start),
            groups=(start + 0.02 * span, inner, span - inner, span - start - 0.02 * span),
            cut_moment=formulas.simple_uniform_moment_at(**at, position=start),
            group_forces=(outer_force, inner_force),
        )

    def _stacked(self, values, common, base):
        new = _piece(values["partner"], values["new_depth"])
        joined = 1 - values["slip"]
        top, bottom = stack([(new[3].modulus, base.width, new[0]), (base.modulus, base.width, base.depth)])
        moment = common["moment"]
        stiffness = partly_joined_stiffness([top, bottom], joined=joined)
        gap = bottom.centre - top.centre
        couple = seam_force(top, bottom, moment=moment, joined=joined) * gap / moment
        upper, lower = partly_joined_stress(top, bottom, moment=moment, joined=joined)
        share = top.bending_stiffness / (top.bending_stiffness + bottom.bending_stiffness)
        wide = (new[0], base.width, *new[2:])
        shape = _shape(values["span"], values["load"], stiffness, _slides(wide, share))
        return Case(
            **common,
            **shape,
            new=new,
            parts=(bottom, top),
            stiffness=stiffness,
            shares=(
                ("old", bottom.bending_stiffness / stiffness),
                ("new", top.bending_stiffness / stiffness),
                ("both as one", couple),
            ),
            stresses=(lower, upper),
            joined=joined,
            slip=end_slip(gap=gap, end_slope=shape["end_slope"], joined=joined),
        )

    def compute(self, values, before=None, frame="page"):
        case = self.case(tuple(values.items()))
        ghost = self.case(tuple(before.items())) if before else None
        gates = self.gates(values, case)
        return Shown(
            self.scene(values, case, ghost, frame),
            ("check", "asked", "can give", "share", "rule"),
            self.rows(values, case, gates),
            self.notes(values, case),
            gates,
        )

    def gates(self, values, case):
        """Return the reasons to stop and call an engineer before anything is chosen here.

        Parameters
        ----------
        values : dict
            Values of the controls [any].
        case : Case
            What the values come to [-].

        Returns
        -------
        tuple of str
            One sentence a gate; empty when none [-].
        """
        gates = []
        if case.kind == "stack" and case.joined > 0:
            gates.append(
                "A beam on a beam that is to act as one: no slider decides how little it slips. An engineer "
                "designs the fasteners; only what is asked is shown."
            )
        if case.kind == "flitch" and values["lands"] == "side":
            gates.append(FLITCH_FROM_THE_SIDE)
        if case.kind == "flitch" and case.plies % 2:
            gates.append(
                "A plate with more wood on one side than on the other: the bolts twist the beam. That is for "
                "an engineer; only what is asked is shown."
            )
        return tuple(gates)

    def rows(self, values, case, gates=()):
        """Return what is asked of each piece, and what it can give.

        Parameters
        ----------
        values : dict
            Values of the controls [any].
        case : Case
            What the values come to [-].
        gates : tuple of str
            Gates that withdraw the verdicts; what is asked stays [-].

        Returns
        -------
        tuple of tuple of str
            Question, asked, can give, share, rule [-].
        """
        wood_lost, plate_lost = _holes_take(case)
        at_hole = ", at a bolt hole" if wood_lost else ""
        rows = [
            self._bending_row(f"bending, old plies{at_hole}", case, 0, case.old, case.plies, gates, wood_lost)
        ]
        if case.kind == "flitch":
            check = plate_check(case.flitch, moment=case.moment)
            # the page's wood may have an odd number of plies; the stress is that of the page's own pieces
            edge = max(abs(one) for one in case.stresses[1]) / (1 - plate_lost)
            rule = f"{check.clause}, recalled"
            rows.append(self._row(f"bending, plate{at_hole}", edge, check.given, "stress", rule, gates))
            if at_hole:
                grown = edge * creep_growth(case.flitch, creep_factor=creep_factor(wet=False))
                rows.append(
                    self._row(
                        "the plate, if all the load stays for years",
                        grown,
                        check.given,
                        "stress",
                        f"E of the wood over {creep_factor(wet=False):g}, NDS 2018 3.5.2, {verified('creep_dry')}",
                        gates,
                    )
                )
        else:
            rows.append(self._bending_row("bending, new piece", case, 1, case.new, 1, gates))
        if case.kind == "partial":
            stress = own_stress(case.parts[0], moment=case.cut_moment, stiffness=case.alone)
            rows.append(
                self._row(
                    "old plies, past the sister's end",
                    stress,
                    _bending_given(case.old, case.plies),
                    "stress",
                    "NDS 2018 3.3",
                    gates,
                )
            )
            # a short sister has no room for the usual arm
            arm = case.groups[1] - case.helped[0]
            for name, force in zip(("outer", "inner"), case.group_forces):
                word = "lifts the sister" if force > 0 else "pushes it down"
                rows.append(
                    (
                        f"{name} fastener group, each end",
                        show(abs(force), "force", self.system),
                        "",
                        "",
                        f"{word}; groups {show(arm, 'section length', self.system)} apart; statics",
                    )
                )
            new = case.new[3]
            known = "" if new.verified == "seen" else f", {new.verified}"
            rows.append(
                self._row(
                    "shear in the sister between the end groups",
                    formulas.rectangle_shear_stress(
                        shear=abs(case.group_forces[0]), width=case.new[1], depth=case.new[0]
                    ),
                    new.shear,
                    "stress",
                    f"the outer group's force; NDS 2018 3.4.2{known}",
                    gates,
                )
            )
        sag, limit = max(case.sag), values["span"] / limit_divisor("floor")[0]
        rows.append(self._row("sag", sag, limit, "small length", "IRC R301.7, floor, live load", gates))
        ratio = case.stiffness / case.alone
        rows.append(
            (
                "stiffness, times the old plies",
                f"{ratio:.2f} x",
                "",
                "",
                "the sum of E I; more where a seam is joined",
            )
        )
        rows += self._joint_rows(values, case, gates)
        return tuple(rows)

    def _row(self, name, asked, given, dimension, rule, gates):
        told = lambda value: show(value, dimension, self.system)  # noqa: E731
        if gates:
            return (name, told(asked), "", "", rule)
        return (name, told(asked), told(given), show(asked / given, "ratio"), rule)

    def _bending_row(self, name, case, number, piece, plies, gates, lost=0.0):
        asked = max(abs(edge) for edge in case.stresses[number]) / (1 - lost)
        known = "" if piece[3].verified == "seen" else f", {piece[3].verified}"
        return self._row(name, asked, _bending_given(piece, plies), "stress", f"NDS 2018 3.3{known}", gates)

    def _joint_rows(self, values, case, gates):
        system, load = self.system, values["load"]
        if case.kind == "stack":
            top_first = (case.parts[1], case.parts[0])
            flow = seam_flow(top_first, above=1, shear=case.shear)
            one = _nail_along()
            return (
                (
                    "slip at each end",
                    show(case.slip, "small length", system, 3 if system == "us" else 2),
                    "",
                    "",
                    "from the slope at the end",
                ),
                (
                    "force along the seam, if nothing slipped",
                    show(flow, "line load", system),
                    "",
                    "",
                    f"V Q / I at the ends: {flow / one * ft:.0f} 16d common nails in each foot, and they "
                    f"give way",
                ),
            )
        if case.kind == "flitch":
            return self._bolt_rows(values, case, gates)
        crossing = load * _crossing(case, values["lands"])
        return (
            (
                "load to pass between the pieces",
                show(crossing, "line load", system),
                "",
                "",
                _nails_told(crossing, load, case, system),
            ),
        )

    def _bolt_rows(self, values, case, gates):
        system, beam = self.system, case.flitch
        if case.plies % 2:
            return (("bolts", "", "", "", "worked out for 2 or 4 plies, half on each side of the plate"),)
        diameter = _BOLT
        try:
            value, found, _ = bolt_through_plate(beam, bolt_diameter=diameter)
            bolts = flitch_bolts(
                beam,
                length=values["span"],
                line_load=values["load"],
                reaction=case.shear,
                bolt_diameter=diameter,
            )
            past, counts = end_bolt_shear(beam, bolts, shear_value=beam.wood.shear)
        except OutsideRule as refusal:
            return (("bolts, 1/2 in", "", "", "refused", str(refusal)),)
        return (
            (
                "load into the plate along the beam",
                show(bolts.line_load, "line load", system),
                "" if gates else show(value / bolts.spacing, "line load", system),
                "" if gates else show(bolts.line_load * bolts.spacing / value, "ratio"),
                f"1/2 in bolts every {show(bolts.spacing, 'section length', system)}, mode {found.mode}; "
                f"NDS 2018 12.3, {found.verified}",
            ),
            (
                "load out of the plate at each end",
                show(bolts.reaction, "force", system),
                "" if gates else show(bolts.end_bolts * value, "force", system),
                "" if gates else show(bolts.reaction / (bolts.end_bolts * value), "ratio"),
                f"{bolts.end_bolts} bolts in each end group, or the plate stands on a steel seat",
            ),
            self._row(
                "shear at the end bolts, plate not on a seat",
                case.shear,
                past,
                "force",
                f"only the {show(counts, 'section length', system)} below the highest bolt count; "
                "NDS 2018 3.4.3.3, recalled",
                gates,
            ),
        )

    def notes(self, values, case):
        """Return what must be said below the numbers.

        Parameters
        ----------
        values : dict
            Values of the controls [any].
        case : Case
            What the values come to [-].

        Returns
        -------
        tuple of str
            One sentence a note [-].
        """
        notes = [
            f"Old plies: {case.old[3].name} ({case.old[3].verified}), sound and dry, held sideways all "
            "along. Own weight is left out. Shear and seats are checks of their own.",
        ]
        if case.new is not None and case.new[3].kind == "lvl":
            notes.append("LVL values are generic and recalled; the maker's report governs.")
        if case.kind == "flitch":
            notes.append(
                "The plate's stress is held to 0.60 Fy of A36 (recalled). It counts as held sideways by "
                "the bolts. Where a line of bolts fits, a 1/2 in hole is taken off wood and plate where the "
                "moment peaks. With the years wood creeps and hands more to the plate: one row takes all the "
                "load as load that stays, which is the most it can be."
            )
            if values["new_depth"] > case.old[0] * (1 + 1e-9):
                notes.append("The plate is cut to the depth of the wood.")
        if case.kind == "sister" and abs(case.new[0] - case.old[0]) > 1e-6 * case.old[0]:
            notes.append(
                "Both tops are level, so only one of the pieces reaches the seat. How the other end is "
                "carried is not worked out here; without that the shares do not hold."
            )
        if case.kind == "partial":
            notes.append(
                "Between the two groups of an end, the sister carries the outer group's force as shear. The "
                "row counts its whole depth; bolts away from the edge that they push towards leave less."
            )
            notes.append(
                "The sister helps only between its fastener groups. A tight fit and stiff fasteners are "
                "taken for granted here; give in them lets the old plies sag more."
            )
        if values["lands"] == "side" and case.kind in ("stack",):
            notes.append("A stack is loaded on its top here.")
        notes.append(CAUTION)
        return tuple(notes)

    # ---- picture -------------------------------------------------------------------------------------------

    def scene(self, values, case, ghost, frame="page"):
        """Draw the section, the stresses, the shares and the sag.

        Parameters
        ----------
        values : dict
            Values of the controls [any].
        case : Case
            What the values come to [-].
        ghost : Case or None
            The same before the last change [-].
        frame : str
            Shape of the picture: 'page', 'wide' or 'tall' [-].

        Returns
        -------
        structlib.pictures.scene.Scene
            The picture [-].
        """
        system = self.system
        steel = case.kind == "flitch"
        full = [_full(_FULL_WOOD, case.stresses[:1] if steel else case.stresses)]
        full.append(_full(_FULL_STEEL, case.stresses[1:]) if steel else full[0])
        told = [show(one, "stress", system) for one in full]
        view = SharedPliesView(
            title=_title(case),
            pieces=_drawn(case, full, system),
            shares=tuple((_share_text(name, share, case), share) for name, share in case.shares),
            span=values["span"],
            x=case.x,
            sag=case.sag,
            sag_text=f"sags {show(max(case.sag), 'small length', system)}",
            camera_depth=(24 if case.kind == "stack" else 12) * inch,
            camera_width=8 * inch,
            stress_scale_text=f"wood {told[0]}, steel {told[1]}" if steel else told[0],
            note=f"{show(values['load'], 'line load', system)} over "
            f"{show(values['span'], 'length', system)}; own weight left out.",
            lands="top" if case.kind == "stack" else values["lands"],
            stacked=case.kind == "stack",
            slip=case.slip,
            end_text=_end_text(case, system),
            helped=case.helped,
            groups=case.groups,
            previous_sag=() if ghost is None else ghost.sag,
            previous_share=None if ghost is None or ghost.kind != case.kind else ghost.shares[0][1],
        )
        return draw_shared_plies(view, frame)


# ---- parts of the page -------------------------------------------------------------------------------------


def _depths(key, greatest):
    return tuple(depth for depth, *_ in pieces(key) if 5 * inch < depth <= greatest * (1 + 1e-9))


def _piece(key, depth):
    return min(pieces(key), key=lambda piece: abs(piece[0] - depth))


def _slides(piece, share):
    """Shear stiffness of all, where LVL sags by shear under its share as if alone; None without LVL."""
    if piece is None or piece[3].shear_modulus is None:
        return None
    area = piece[0] * piece[1]
    return formulas.rectangle_shear_stiffness(shear_modulus=piece[3].shear_modulus, area=area) / share


def _shape(span, load, stiffness, slides=None):
    """Places and sag of the simple beam, stepped or not, and how far its ends turn by bending."""
    beam = Beam(span, stiffness, (Support(0.0), Support(span)), (LineLoad(0.0, span, load),))
    bent, solution = solve(beam), solve(replace(beam, shear_stiffness=slides))
    x = numpy.linspace(0.0, span, 33)
    return {
        "x": tuple(float(place) for place in x),
        "sag": tuple(float(value) for value in solution.deflection(x)),
        "end_slope": abs(float(bent.slope(0.0))),
    }


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
    """The bending value of like plies under floor load, held sideways all along; not as repeated members."""
    depth, ply_width, _, material = piece
    value, _ = bending_value(
        material,
        width=plies * ply_width,
        depth=depth,
        plies=plies,
        ply_width=ply_width,
        unbraced_length=0.0,
        time_factor=1.0,
        sharing_members=1,
    )
    return float(value)


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
    value, found = _nail_across(case)
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


def _nail_across(case):
    """A 16d common nail from the new piece into the old ply, pushed across the grain."""
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


def _full(usual, stresses):
    """Stress that fills half a diagram: the usual one, doubled until all fit."""
    most = max(abs(edge) for pair in stresses for edge in pair)
    full = usual
    while full < most:
        full *= 2
    return full


def _drawn(case, full, system):
    stressed = [
        ((height[0], edges[0] / limit), (height[1], edges[1] / limit))
        for height, edges, limit in zip(_heights(case), case.stresses, full)
    ]
    texts = [_stress_text(edges, system) for edges in case.stresses]
    old_boxes, new_boxes = _boxes(case)
    names = _names(case, system)
    tags = {"stack": ("below", "above"), "flitch": ("wood", "steel")}.get(case.kind, ("old", "new"))
    kind = "steel" if case.kind == "flitch" else "lvl" if case.new[3].kind == "lvl" else "sawn"
    return (
        Piece(names[0], tags[0], old_boxes, "sawn", stressed[0], texts[0]),
        Piece(names[1], tags[1], new_boxes, kind, stressed[1], texts[1]),
    )


def _names(case, system):
    words = ("below", "above") if case.kind == "stack" else ("old", "new")
    many = f"{case.plies}-" if case.plies > 1 else ""
    old = f"{words[0]}: {many}{case.old[2]}"
    if case.kind == "flitch":
        return old, f"plate {show(case.parts[1].width, 'section length', system)}"
    if case.new[3].kind != "lvl":
        return old, f"{words[1]}: {many if case.kind == 'stack' else ''}{case.new[2]}"
    return old, f"{words[1]}: LVL {show(case.new[0], 'section length', system).removesuffix(' in')}"


def _heights(case):
    """Upper and lower edge of the old and of the new piece, below the top of the section."""
    old, new = case.parts
    if case.kind == "stack":
        return (new.depth, new.depth + old.depth), (0.0, new.depth)
    if case.kind == "flitch":
        inset = (old.depth - new.depth) / 2
        return (0.0, old.depth), (inset, inset + new.depth)
    return (0.0, old.depth), (0.0, new.depth)


def _boxes(case):
    old_high, new_high = _heights(case)
    one, gap = case.old[1], 0.06 * inch

    def row(count, start, wide, high):
        return tuple(
            (start + k * (wide + gap), high[0], start + k * (wide + gap) + wide, high[1])
            for k in range(count)
        )

    if case.kind == "stack":
        return row(case.plies, 0.0, one, old_high), row(case.plies, 0.0, one, new_high)
    if case.kind == "flitch":
        left = case.plies // 2 or 1
        first = row(left, 0.0, one, old_high)
        plate = row(1, first[-1][2] + gap, case.parts[1].width, new_high)
        return first + row(case.plies - left, plate[0][2] + gap, one, old_high), plate
    first = row(case.plies, 0.0, one, old_high)
    return first, row(1, first[-1][2] + gap, case.new[1], new_high)


def _stress_text(edges, system):
    upper, lower = edges
    if abs(upper + lower) <= 1e-9 * max(abs(upper), abs(lower)):
        return f"edges {show(abs(lower), 'stress', system)}"
    signed = lambda one: f"{'−' if one < 0 else '+'}{show(abs(one), 'stress', system)}"  # noqa: E731
    return f"{signed(upper).rsplit(' ', 1)[0]} / {signed(lower)}"


def _share_text(name, share, case):
    words = {"flitch": {"old": "wood", "new": "plate"}, "stack": {"old": "below", "new": "above"}}
    return f"{words.get(case.kind, {}).get(name, name)} {show(share, 'ratio')}"


def _end_text(case, system):
    if case.kind == "stack":
        return f"ends slip {show(case.slip, 'small length', system, 3 if system == 'us' else 2)}"
    if case.kind == "partial":
        return f"end groups {show(max(abs(f) for f in case.group_forces), 'force', system)}"
    return ""


def _title(case):
    share, ratio = dict(case.shares)["new"], case.stiffness / case.alone
    if case.kind == "flitch":
        taken = show(share, "ratio")
        return f"The plate takes {taken} of the load because it is stiff, not because it is strong"
    if case.kind == "stack":
        if case.joined == 0:
            return f"Laid loose, two beams only add up: {ratio:.2f} times the old one's stiffness"
        if case.joined == 1:
            return f"Stacked: {ratio:.2f} times the old one's stiffness, if nothing slips at all"
        ends = joined_stiffness((case.parts[1], case.parts[0])) / case.alone
        return f"Stacked: {ratio:.2f} times the old one's stiffness; {ends:.2f} times if nothing slipped"
    if case.kind == "partial":
        part = case.cut_moment / case.moment
        return f"Where the sister ends, the old plies carry {show(part, 'ratio')} of the moment alone"
    return f"The new piece takes {show(share, 'ratio')}: load goes by stiffness, not by count"
