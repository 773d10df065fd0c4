"""When do plies share the load? A sister, a beam on a beam, a plate between: who takes what, and the stress."""

from functools import lru_cache

from structlib.ground.showing import show
from structlib.ground.steel import steel_fact_known
from structlib.ground.units import ft, inch, ksi, plf, psi
from structlib.house.beam import BeamChoice
from structlib.house.shared_plies import SharedJob, judge_shared, share_load
from structlib.house.with_steel import FLITCH_FROM_THE_SIDE
from structlib.mechanics.composite import joined_stiffness
from structlib.mechanics.line_loads import nothing_passes
from structlib.pages.kit import verdict
from structlib.pages.kit.controls import Box, Page, Pick, Shown, Slide, Steps
from structlib.pages.kit.door import hold
from structlib.pages.kit.verdict import CAUTION
from structlib.pages.kit.woods import pieces
from structlib.pages.topics.seat.connections import pattern_words, usual_nailing
from structlib.pictures.drawings.shared_plies import Piece, SharedPliesView, draw_shared_plies
from structlib.rules.check import Rulebook
from structlib.rules.choice import RULEBOOK

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


class UnlikePliesPage(Page):
    """The bench of shared load: old plies, something new beside, on or between them, and what each takes."""

    def __init__(self, rulebook: Rulebook = RULEBOOK, system: str = "us"):
        self.rulebook, self.system = rulebook, system
        self.case = lru_cache(maxsize=64)(self._case)
        self.answer = lru_cache(maxsize=64)(self._answer)

    def controls(self, values):
        partner = values.get("partner", "lvl 2.0")
        kind = values.get("arrangement", "sister")
        new_depths = _PLATE_DEPTHS if kind == "flitch" else _depths(partner, 11.875 * inch)
        return (
            Slide("span", "Span", "length", 4 * ft, 20 * ft, 3 * inch, 12 * ft),
            Steps("depth", "Depth, old plies", "section length", _depths(_OLD_WOOD, 11.25 * inch), 9.25 * inch),
            Slide("plies", "Plies", "count", 1, 4, 1, 2),
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
        kind, plies = values["arrangement"], int(values["plies"])
        return share_load(SharedJob(
            kind, values["span"], values["load"], _piece(_OLD_WOOD, values["depth"], plies),
            new=None if kind == "flitch" else _piece(values["partner"], values["new_depth"], 1),
            plate=(values["plate"], values["new_depth"]), joined=1 - values["slip"], length=values["length"],
            from_side=values["lands"] == "side",
        ))  # fmt: skip

    def _answer(self, items):
        return judge_shared(self.case(items), self.rulebook)

    def compute(self, values, before=None, frame="page"):
        items = tuple(values.items())
        case, answer = self.case(items), self.answer(items)
        ghost = self.case(tuple(before.items())) if before else None
        gates = _gates(case)
        return Shown(
            self.scene(case, answer, ghost, frame, gates),
            ("check", "asked", "can give", "share", "rule"),
            self.rows(case, answer, gates),
            _notes(case, answer),
            gates,
            known=_known(case, answer),
        )

    def rows(self, case, answer, gates=()):
        """Return what is asked of each piece, and what it can give."""
        told = lambda value, dimension: show(value, dimension, self.system)  # noqa: E731
        rows = []
        for one in answer.checks:
            given, share = (
                ("", "") if gates else (told(one.given, one.dimension), verdict.share_text(one, answer.checks))
            )
            rows.append((one.name, told(one.asked, one.dimension), given, share, self._rule(one, answer)))
        # a gate withdraws verdicts; that there is none is no verdict
        rows += [
            (name, told(asked, what), "", "" if gates else "not judged", "") for name, asked, what, _ in answer.unjudged
        ]
        rows.append(("stiffness, times the old plies", f"{case.stiffness / case.alone:.2f} x", "", "",
                     "the sum of E I; more where a seam is joined"))  # fmt: skip
        return (*rows, *self._by_statics(case, answer))

    def _rule(self, check, answer):
        words = check.clause if check.verified == "seen" else f"{check.clause}, {check.verified}"
        if check.kind != "bolts":
            return words
        layout = answer.bolts
        if check.dimension == "force":
            return f"{layout.end_bolts} bolts in each end group, or the plate stands on a steel seat"
        return f"1/2 in bolts every {show(layout.spacing, 'section length', self.system)}, mode {layout.mode}; {words}"

    def _by_statics(self, case, answer):
        """Rows of what is asked of fasteners: the ends of a short sister, a seam, or from piece to piece."""
        told = lambda value, dimension: show(value, dimension, self.system)  # noqa: E731
        if case.job.kind == "flitch":
            odd = case.job.old.plies % 2
            return [("bolts", "", "", "", "worked out for 2 or 4 plies, half on each side of the plate")] if odd else []
        if case.job.kind == "stack":
            nails = "how many nails pass it is not judged"
            if answer.fastening:
                nails = (
                    f"{case.flow / answer.fastening.value * ft:.0f} 16d common nails in each foot, and they give way"
                )
            slip = show(case.slip, "small length", self.system, 3 if self.system == "us" else 2)
            return [
                ("slip at each end", slip, "", "", "from the slope at the end"),
                (
                    "force along the seam, if nothing slipped",
                    told(case.flow, "line load"),
                    "",
                    "",
                    f"V Q / I at the ends: {nails}",
                ),
            ]
        rows = []
        if case.groups:  # a short sister has no room for the usual arm
            arm = told(case.groups[1] - case.helped[0], "section length")
            for name, force in zip(("outer", "inner"), case.group_forces):
                word = "lifts the sister" if force > 0 else "pushes it down"
                rows.append((f"{name} fastener group, each end", told(abs(force), "force"), "", "",
                             f"{word}; groups {arm} apart; statics"))  # fmt: skip
        crossing = told(case.crossing, "line load")
        return [*rows, ("load to pass between the pieces", crossing, "", "", self._nails(case, answer.fastening))]

    def _nails(self, case, found):
        """The nails that pass a load between the pieces, and the pattern that is usual beside them."""
        usual = usual_nailing(self.rulebook)
        pattern = pattern_words(self.system, self.rulebook)
        if nothing_passes(case.crossing, case.job.load):
            return "nothing has to pass" + (f"; {pattern} only holds the pieces together" if usual else "")
        if found is None:
            return "statics; which nails pass it is not judged"
        rule = f"yield mode {found.mode}, {found.clause}, {found.verified}"
        if usual and case.crossing / found.value < usual.lines / usual.spacing:
            rule += f"; {pattern} is closer"
        if case.crossing * ft >= found.value:
            return f"{case.crossing / found.value * ft:.1f} 16d common nails in each foot: {rule}"
        # under one a foot, the distance between two says more: whole inches, or tens of millimetres
        step = inch if self.system == "us" else 10.0
        return f"one 16d common nail every {show(found.spacing // step * step, 'length', self.system)}: {rule}"

    # ---- picture -------------------------------------------------------------------------------------------

    def scene(self, case, answer, ghost, frame="page", gates=()):
        """Draw the section, the stresses, the shares and the sag."""
        system, job, stacked = self.system, case.job, case.job.kind == "stack"
        steel = job.kind == "flitch"
        full = [_full(_FULL_WOOD, case.stresses[:1] if steel else case.stresses)]
        full.append(_full(_FULL_STEEL, case.stresses[1:]) if steel else full[0])
        told = [show(one, "stress", system) for one in full]
        unjudged = tuple(dict.fromkeys(name.split(",")[0] for name, *_ in answer.unjudged))
        title = f"Stop and call first. {_message(case)}" if gates else verdict.headline(
            answer.checks, (), lambda first: _message(case), unjudged=unjudged)  # fmt: skip
        view = SharedPliesView(
            title=title,
            pieces=_drawn(case, full, system),
            shares=tuple((_share_text(name, share, case), share) for name, share in case.shares),
            span=job.span,
            x=case.x,
            sag=case.sag,
            sag_text=f"sags {show(max(case.sag), 'small length', system)}",
            camera_depth=(24 if stacked else 12) * inch,
            camera_width=8 * inch,
            stress_scale_text=f"wood {told[0]}, steel {told[1]}" if steel else told[0],
            note=f"{show(job.load, 'line load', system)} over {show(job.span, 'length', system)}; own weight left out.",
            lands="side" if job.from_side and not stacked else "top",
            stacked=stacked,
            slip=case.slip,
            end_text=_end_text(case, system),
            helped=case.helped,
            groups=case.groups,
            previous_sag=() if ghost is None else ghost.sag,
            previous_share=None if ghost is None or ghost.job.kind != job.kind else ghost.shares[0][1],
        )
        return draw_shared_plies(view, frame)


# ---- parts of the page -------------------------------------------------------------------------------------


def _depths(key, greatest):
    return tuple(depth for depth, *_ in pieces(key) if 5 * inch < depth <= greatest * (1 + 1e-9))


def _piece(key, depth, plies):
    depth, ply_width, name, material = min(pieces(key), key=lambda piece: abs(piece[0] - depth))
    return BeamChoice(material, ply_width, depth, plies, name)


def _gates(case):
    """Reasons to stop and call an engineer before anything is chosen here."""
    gates, flitch = [], case.job.kind == "flitch"
    if case.job.kind == "stack" and case.job.joined > 0:
        gates.append(
            "A beam on a beam that is to act as one: no slider decides how little it slips. An engineer "
            "designs the fasteners; only what is asked is shown."
        )
    if flitch and case.job.from_side:
        gates.append(FLITCH_FROM_THE_SIDE)
    if flitch and case.job.old.plies % 2:
        gates.append(
            "A plate with more wood on one side than on the other: the bolts twist the beam. That is for "
            "an engineer; only what is asked is shown."
        )
    return tuple(gates)


def _known(case, answer):
    """All that the page used, each with how well it is known."""
    used = [(one.material.name, one.material.verified) for one in (case.job.old, case.job.new) if one is not None]
    if case.flitch is not None:
        used.append(("E of steel", steel_fact_known("modulus")))
    if answer.fastening is not None:
        used.append(("a 16d common nail", answer.fastening.verified))
    return verdict.evidence(answer.checks, ("load", verdict.ENTERED), *used)


def _notes(case, answer):
    """What must be said below the numbers."""
    kind, old, new = case.job.kind, case.job.old, case.job.new
    notes = [
        f"Old plies: {old.material.name} ({old.material.verified}), sound and dry, held sideways all "
        "along. Own weight is left out. Shear and seats are checks of their own.",
    ]
    if new is not None and new.material.kind == "lvl":
        notes.append("LVL values are generic and recalled; the maker's report governs.")
    if kind == "flitch":
        notes.append(
            "The plate counts as held sideways by the bolts. Where a line of bolts fits, a 1/2 in hole is taken off "
            "wood and plate where the moment peaks. With the years wood creeps and hands more to the plate: one row "
            "takes all the load as load that stays, which is the most it can be."
        )
        if case.job.plate[1] > old.depth * (1 + 1e-9):
            notes.append("The plate is cut to the depth of the wood.")
    if kind == "sister" and abs(new.depth - old.depth) > 1e-6 * old.depth:
        notes.append(
            "Both tops are level, so only one of the pieces reaches the seat. How the other end is "
            "carried is not worked out here; without that the shares do not hold."
        )
    if kind == "partial":
        notes.append(
            "Between the two groups of an end, the sister carries the outer group's force as shear. The "
            "row counts its whole depth; bolts away from the edge that they push towards leave less."
        )
        notes.append(
            "The sister helps only between its fastener groups. A tight fit and stiff fasteners are "
            "taken for granted here; give in them lets the old plies sag more."
        )
    if kind == "stack" and case.job.from_side:
        notes.append("A stack is loaded on its top here.")
    notes += [f"Not judged: {why}." for why in dict.fromkeys(why for *_, why in answer.unjudged)]
    return (*notes, CAUTION)


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
    tags = {"stack": ("below", "above"), "flitch": ("wood", "steel")}.get(case.job.kind, ("old", "new"))
    kind = "steel" if case.job.kind == "flitch" else "lvl" if case.job.new.material.kind == "lvl" else "sawn"
    return (
        Piece(names[0], tags[0], old_boxes, "sawn", stressed[0], texts[0]),
        Piece(names[1], tags[1], new_boxes, kind, stressed[1], texts[1]),
    )


def _names(case, system):
    words = ("below", "above") if case.job.kind == "stack" else ("old", "new")
    many = f"{case.job.old.plies}-" if case.job.old.plies > 1 else ""
    old = f"{words[0]}: {many}{case.job.old.name}"
    if case.job.kind == "flitch":
        return old, f"plate {show(case.parts[1].width, 'section length', system)}"
    if case.job.new.material.kind != "lvl":
        return old, f"{words[1]}: {many if case.job.kind == 'stack' else ''}{case.job.new.name}"
    return old, f"{words[1]}: LVL {show(case.job.new.depth, 'section length', system).removesuffix(' in')}"


def _heights(case):
    """Upper and lower edge of the old and of the new piece, below the top of the section."""
    old, new = case.parts
    if case.job.kind == "stack":
        return (new.depth, new.depth + old.depth), (0.0, new.depth)
    if case.job.kind == "flitch":
        inset = (old.depth - new.depth) / 2
        return (0.0, old.depth), (inset, inset + new.depth)
    return (0.0, old.depth), (0.0, new.depth)


def _boxes(case):
    old_high, new_high = _heights(case)
    one, gap = case.job.old.ply_width, 0.06 * inch

    def row(count, start, wide, high):
        return tuple(
            (start + k * (wide + gap), high[0], start + k * (wide + gap) + wide, high[1]) for k in range(count)
        )

    if case.job.kind == "stack":
        return row(case.job.old.plies, 0.0, one, old_high), row(case.job.old.plies, 0.0, one, new_high)
    if case.job.kind == "flitch":
        left = case.job.old.plies // 2 or 1
        first = row(left, 0.0, one, old_high)
        plate = row(1, first[-1][2] + gap, case.parts[1].width, new_high)
        return first + row(case.job.old.plies - left, plate[0][2] + gap, one, old_high), plate
    first = row(case.job.old.plies, 0.0, one, old_high)
    return first, row(1, first[-1][2] + gap, case.job.new.ply_width, new_high)


def _stress_text(edges, system):
    upper, lower = edges
    if abs(upper + lower) <= 1e-9 * max(abs(upper), abs(lower)):
        return f"edges {show(abs(lower), 'stress', system)}"
    signed = lambda one: f"{'−' if one < 0 else '+'}{show(abs(one), 'stress', system)}"  # noqa: E731
    return f"{signed(upper).rsplit(' ', 1)[0]} / {signed(lower)}"


def _share_text(name, share, case):
    words = {"flitch": {"old": "wood", "new": "plate"}, "stack": {"old": "below", "new": "above"}}
    return f"{words.get(case.job.kind, {}).get(name, name)} {show(share, 'ratio')}"


def _end_text(case, system):
    if case.job.kind == "stack":
        return f"ends slip {show(case.slip, 'small length', system, 3 if system == 'us' else 2)}"
    if case.job.kind == "partial":
        return f"end groups {show(max(abs(f) for f in case.group_forces), 'force', system)}"
    return ""


def _message(case):
    share, ratio = dict(case.shares)["new"], case.stiffness / case.alone
    if case.job.kind == "flitch":
        taken = show(share, "ratio")
        return f"The plate takes {taken}: load goes by stiffness, not by strength"
    if case.job.kind == "stack":
        if case.job.joined == 0:
            return f"Laid loose, two beams only add up: {ratio:.2f} times the old one's stiffness"
        if case.job.joined == 1:
            return f"Stacked: {ratio:.2f} times the old one's stiffness, if nothing slips at all"
        ends = joined_stiffness((case.parts[1], case.parts[0])) / case.alone
        return f"Stacked: {ratio:.2f} times the old one's stiffness; {ends:.2f} times if nothing slipped"
    if case.job.kind == "partial":
        part = case.cut_moment / case.moment
        return f"Where the sister ends, the old plies carry {show(part, 'ratio')} of the moment alone"
    return f"The new piece takes {show(share, 'ratio')}: load goes by stiffness, not by count"


hold(globals())
