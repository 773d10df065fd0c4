"""When do plies share the load? A sister, a beam on a beam, a plate between: who takes what, and the stress."""

from dataclasses import dataclass, replace
from functools import lru_cache

import numpy

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
    seam_force,
    shares_by_stiffness,
    stack,
    stepped_stiffness,
)
from structlib.pages import verdict
from structlib.pages.beam_page import CAUTION
from structlib.pages.controls import Box, Page, Pick, Shown, Slide, Steps
from structlib.pages.door import hold
from structlib.pages.shared_plies_checks import Question, nail_across, questions
from structlib.pages.woods import pieces
from structlib.pictures.drawings.shared_plies import Piece, SharedPliesView, draw_shared_plies
from structlib.rules.us.dowels import nail
from structlib.rules.us.flitch import Flitch
from structlib.ground.steel import steel_fact, steel_fact_known

#: Distance between the two groups of fasteners at each end of a partial sister.
GROUP_ARM = 16 * inch

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
        self.asked = lru_cache(maxsize=64)(self._asked)

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
            added = Part(modulus=steel_fact("modulus"), width=values["plate"], depth=beam.plate_depth)
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

    def _asked(self, items):
        return tuple(questions(dict(items), self.case(items), self.system))

    def compute(self, values, before=None, frame="page"):
        case = self.case(tuple(values.items()))
        ghost = self.case(tuple(before.items())) if before else None
        gates = self.gates(values, case)
        return Shown(
            self.scene(values, case, ghost, frame, gates),
            ("check", "asked", "can give", "share", "rule"),
            self.rows(values, case, gates),
            self.notes(values, case),
            gates,
            known=self.known(values, case),
        )

    def known(self, values, case):
        """List all that the page used, each with how well it is known.

        Parameters
        ----------
        values : dict
            Values of the controls [any].
        case : Case
            What the values come to [-].

        Returns
        -------
        tuple of (str, str)
            What, and how it is known [-].
        """
        more = [(case.old[3].name, case.old[3].verified), ("load", verdict.ENTERED)]
        if case.new is not None:
            more.append((case.new[3].name, case.new[3].verified))
        if case.kind == "flitch":
            more.append(("E of steel", steel_fact_known("modulus")))
        else:
            one = nail("16d common") if case.kind == "stack" else nail_across(case)[1]
            more.append(("a 16d common nail", one.verified))
        return verdict.evidence(self.checks(values), *more)

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
        items, checks = self.asked(tuple(values.items())), self.checks(values)
        return tuple(self._row(one, checks, gates) if isinstance(one, Question) else one for one in items)

    def checks(self, values):
        """Return every question of the page that has a limit, as `structlib.pages.verdict` takes it.

        Parameters
        ----------
        values : dict
            Values of the controls [any].

        Returns
        -------
        tuple of structlib.pages.shared_plies_checks.Question
            The questions [-].
        """
        return tuple(one for one in self.asked(tuple(values.items())) if isinstance(one, Question))

    def _row(self, one, checks, gates):
        told = lambda value: show(value, one.dimension, self.system)  # noqa: E731
        if one.given is None:
            return (one.name, "", "", "refused", one.rule)
        if gates:
            return (one.name, told(one.asked), "", "", one.rule)
        return (one.name, told(one.asked), told(one.given), verdict.share_text(one, checks), one.rule)

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

    def scene(self, values, case, ghost, frame="page", gates=()):
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
        gates : tuple of str
            Gates that withdraw the verdicts [-].

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
            title=self._title(values, case, gates),
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


    def _title(self, values, case, gates):
        """What the picture teaches, and the check that governs; where a gate stands, the first alone."""
        if gates:
            return f"Stop and call first. {_message(case)}"
        checks = self.checks(values)
        unjudged = tuple(one.name for one in checks if one.given is None)
        return verdict.headline(checks, (), lambda first: _message(case), unjudged=unjudged)


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


def _message(case):
    share, ratio = dict(case.shares)["new"], case.stiffness / case.alone
    if case.kind == "flitch":
        taken = show(share, "ratio")
        return f"The plate takes {taken}: load goes by stiffness, not by strength"
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


hold(globals())
