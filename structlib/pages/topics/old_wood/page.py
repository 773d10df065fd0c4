"""What can old wood do? One old joist as measured, beside every wood that it might be, and its cuts."""

from dataclasses import dataclass
from functools import lru_cache

import numpy

from structlib.ground.lumber import materials
from structlib.ground.refusals import OutsideRule
from structlib.ground.showing import show
from structlib.ground.units import ft, inch, psf
from structlib.house.judging import Judged, judge_element
from structlib.house.measured import Cut, MeasuredJoists, cut_member
from structlib.house.old_floor import first_frequency, one_floor
from structlib.house.path import follow
from structlib.pages.kit import verdict
from structlib.pages.kit.controls import Box, Page, Pick, Shown, Slide
from structlib.pages.kit.door import hold
from structlib.pages.kit.verdict import CAUTION
from structlib.pages.topics.old_wood import words
from structlib.pictures.drawings.old_wood import OldWoodView, draw_old_wood
from structlib.rules.check import Rulebook
from structlib.rules.choice import RULEBOOK
from structlib.rules.members import Compared, CutLimits, CutMember, NotCovered, acting, ask

_SHAPES = (
    ("sawn rectangle", "sawn"),
    ("round log", "round"),
    ("log with two flat sides", "flat sides"),
    ("half a log, flat face up", "half round"),
    ("hewn, corners gone by 1 in", "hewn"),
)
_WOODS = (
    ("not known", "any"),
    ("Douglas Fir-Larch, any grade", "Douglas Fir-Larch"),
    ("Southern Pine, any grade", "Southern Pine"),
    ("Hem-Fir, any grade", "Hem-Fir"),
    ("Eastern White Pine, any grade", "Eastern White Pine"),
    ("Spruce-Pine-Fir, any grade", "Spruce-Pine-Fir"),
    ("any wood of No.2", "No.2"),
)
_CUTS = (
    ("none", "none"),
    ("a notch in the top", "notch top"),
    ("a notch in the bottom", "notch bottom"),
    ("a hole at mid-depth", "hole middle"),
    ("a hole, 2 in of wood below it", "hole 2"),
    ("a hole, 1 in of wood below it", "hole 1"),
)
_KINDS = (("sawn or hewn", "sawn"), ("engineered, or a truss", "engineered"))
_STATES = (
    ("sound, as far as seen", "sound"),
    ("a crack across the grain", "crack"),
    ("rot or insects at an end", "rot"),
    ("large knots or splits: maybe no grade", "no grade"),
)
_WANE = 1 * inch  # the corner that a hewn timber of the page lacks
_UNKNOWN = "not known: the wood decides"


@dataclass(frozen=True)
class OldWoodResult:
    """The floor as judged, its joist beside every wood (None where nothing is listed or no rule is), and its cut.

    ``refused`` is the sentence of a rulebook that lists nothing for this wood, ``not_judged`` those of what it has no
    rule for. ``frequency`` has the slowest and the fastest [Hz], None without a wood.
    """

    judged: Judged
    member: CutMember
    compared: Compared | None
    limits: CutLimits | None
    frequency: tuple | None
    refused: str
    not_judged: tuple
    conditions: tuple

    @property
    def joist(self):
        """The joist as measured [-]."""
        return self.member.joist

    @property
    def section(self):
        """Its section [-]."""
        return self.joist.section

    @property
    def cut(self):
        """Its notch or hole; None where there is none [-]."""
        return self.member.cut

    @property
    def on_the_cut(self):
        """The code's limits on the cut, and whether each is kept [-]."""
        return tuple(one for one in self.judged.checks if one.kind in words.LIMITS)

    @property
    def years(self):
        """The question of sag after years; None where it is not asked, or is more than the span [-]."""
        found = self.compared and self.compared.question("sag after years")
        return found if found and numpy.max(found.asked) <= self.member.span else None

    @property
    def checks(self):
        """Every check of the page, each for the wood of which it asks most [-]."""
        return tuple(one for one in self.judged.checks if one.kind != "sag after years" or self.years)

    @property
    def gates(self):
        """Reasons to stop and call: they withdraw every verdict [-]."""
        more = (self.refused,) if self.refused and self.joist.graded else ()
        return (*self.judged.gates, *more)


class OldWoodPage(Page):
    """The bench of one old joist: its measured size, the woods that it may be of, and one notch or hole."""

    def __init__(self, rulebook: Rulebook = RULEBOOK, system: str = "us"):
        self.rulebook, self.system = rulebook, system
        self.result = lru_cache(maxsize=64)(self._result)

    def controls(self, values):
        return (
            Slide("span", "Span", "length", 6 * ft, 20 * ft, 3 * inch, 13 * ft),
            Slide("depth", "Depth, measured", "section length", 3 * inch, 14 * inch, 0.25 * inch, 7.5 * inch),
            Slide("plies", "Plies", "count", 1, 3, 1, 1),
            Slide("width", "Width, measured", "section length", 1.5 * inch, 10 * inch, 0.125 * inch, 2 * inch),
            Pick("shape", "Shape", _SHAPES, "sawn"),
            Slide("taper", "Log thins by", "section length", 0.0, 2 * inch, 0.25 * inch, 0.0),
            Pick("wood", "Wood", _WOODS, "any"),
            Pick("cut", "Cut", _CUTS, "notch top"),
            Slide("place", "Cut at", "length", 0.0, 20 * ft, 1 * inch, 3 * ft),
            Slide("size", "Size of cut", "section length", 0.25 * inch, 6 * inch, 0.125 * inch, 1.25 * inch),
            Box("length", "Length of notch", "section length", 0.25 * inch, 24 * inch, 2.5 * inch),
            Pick("kind", "Member", _KINDS, "sawn"),
            Pick("state", "The wood is", _STATES, "sound"),
            Box("spacing", "Joists every", "section length", 8 * inch, 48 * inch, 16 * inch),
            Box("dead", "Dead load", "area load", 1 * psf, 100 * psf, 10 * psf),
            Box("live", "Live load", "area load", 1 * psf, 200 * psf, 30 * psf),
        )

    def joists(self, values):
        """Return the joists that a set of values describes, in the words of a house."""
        shape, width, depth, wood = (values[name] for name in ("shape", "width", "depth", "wood"))
        return MeasuredJoists(
            width=min(width, depth) if shape == "flat sides" else width,  # a log is never wider than it is deep
            depth=depth, spacing=values["spacing"], weight=0.0, plies=int(values["plies"]), shape=shape,
            wane=min(_WANE, width / 3, depth / 3) if shape == "hewn" else 0.0,
            taper=values["taper"] if shape == "round" else 0.0,
            species="" if wood in ("any", "No.2") else wood, grade="No.2" if wood == "No.2" else "",
            made=values["kind"], state=values["state"], cut=_cut(values),
        )  # fmt: skip

    def _result(self, items):
        values = dict(items)
        span, dead, live = values["span"], values["dead"], values["live"]
        house = one_floor(self.joists(values), span=span, dead=dead, live=live)
        judged, member = (
            judge_element(follow(house), "floor", self.rulebook),
            cut_member(house.levels[0].measured, span),
        )
        silent, compared, refused = [one.refused for one in judged.answers if one.refused], None, ""
        try:
            first, *more = (ask(self.rulebook, "compared_woods", one.member, one.demands) for one in judged.answers)
            compared = first.with_questions(*more)
        except NotCovered as none:
            silent.append(str(none))
        except OutsideRule as none:
            refused = str(none)
        moduli = compared and [wood.modulus for wood in compared.woods]
        limits = self._told(silent, "cut_limits", member)
        conditions = self._told(silent, "measured_conditions", member.joist, live) or ()
        return OldWoodResult(
            judged, member, compared, limits,
            moduli and tuple(first_frequency(member.joist, span=span, weight=dead, modulus=one)
                             for one in (min(moduli), max(moduli))),
            refused, tuple(one for one in dict.fromkeys(silent) if one != refused), conditions,
        )  # fmt: skip

    def _told(self, silent, answer, *asked):
        """An answer that a rulebook may give beside its checks; None where it has none, and why."""
        try:
            return ask(self.rulebook, answer, *asked)
        except NotCovered as none:
            silent.append(str(none))
        except OutsideRule:  # a log, or an engineered member: said in a gate or a note
            pass
        return None

    def compute(self, values, before=None, frame="page"):
        now = self.result(tuple(values.items()))
        ghost = self.result(tuple(before.items())) if before and before != values else None
        return Shown(
            self.scene(values, now, ghost, frame),
            ("check", "asked", "can give", "share", "rule"),
            self.rows(values, now),
            self.notes(values, now),
            now.gates,
            known=verdict.evidence(
                now.checks, ("loads", verdict.ENTERED), *(() if now.checks else (("what is asked", "computed"),))
            ),
        )

    def rows(self, values, now):
        """Return the checks as rows of text, each as a range over the woods."""
        rows = (
            self._demands(now) if now.compared is None else [self._question(now, one) for one in now.compared.questions]
        )
        rows += [self._limit_row(check, now.gates) for check in now.on_the_cut]
        if now.cut is not None and values["kind"] != "sawn":
            rows.append(("cutting this member", "", "", "" if now.gates else "refused", "only as its maker says"))
        told = _UNKNOWN
        if now.frequency:
            low, high = now.frequency
            told = f"{low:.1f} to {high:.1f} Hz" if high > 1.005 * low else f"{low:.1f} Hz"
        return (*rows, ("first frequency, empty floor", told, "", "", "no limit here"))

    def _question(self, now, one):
        """One question for all woods."""
        texts = lambda numbers, dimension: words.range_text(numbers, dimension, self.system)  # noqa: E731
        if one.kind == "sag after years" and now.years is None:
            return (one.name, "more than the span", "", "", "so much that no number holds")
        share = texts(one.shares, "ratio") + ("" if one.decides else " (for information)")
        return (
            one.name,
            texts(one.asked, one.dimension),
            *(("", "") if now.gates else (texts(one.given, one.dimension), share)),
            f"{one.loads}; {one.limit or one.clause}",
        )

    def _demands(self, now):
        """What is asked where no wood is listed, or no rule compares them: each under the combination that asks most."""
        share, rows = "" if now.gates else "not judged", []

        def row(name, demands, field, dimension):
            most = max(demands, key=lambda one: getattr(one, field))
            rows.append((name, show(getattr(most, field), dimension, self.system), "", share, acting(most.combination)))

        whole, *cut = (one.demands for one in now.judged.answers)
        row("bending", whole, "bending_stress", "stress")
        row("shear at the ends", whole, "shear_stress", "stress")
        rows += [(name, _UNKNOWN, "", "", "") for name in ("sag under live load", "sag after years")]
        for demands in cut:
            row("bending in the wood left at the cut", demands, "bending_stress", "stress")
            if demands[0].end_push:
                row("push on the notched end", demands, "end_push", "force")
            else:
                row("shear in the wood left at the cut", demands, "shear_stress", "stress")
        return rows

    def _limit_row(self, check, gates):
        told = lambda value: show(value, check.dimension, self.system)  # noqa: E731
        if check.given <= 0:
            asked = told(check.asked) if check.asked > 1e-9 else "none"
            answer = ("none", "within" if check.share == 0 else "refused")
        else:
            asked = told(check.asked)
            answer = (told(check.given), show(check.share, "ratio") + (" refused" if words.beyond(check) else ""))
        name = {"notch place": "notch in the middle third", "notch face": "notch on the tension side"}.get(
            check.kind, check.name
        )
        return (name, asked, *(("", "") if gates else answer), check.clause)

    def notes(self, values, now):
        """Return what must be said below the numbers."""
        notes, compared = [f"Not judged: {one}." for one in now.not_judged], now.compared
        if compared is not None:
            if len(compared.woods) > 1:
                notes.append(
                    f"{len(compared.woods)} woods and grades compared. Old wood has no stamp: which of them it is, a "
                    "grader or an engineer says."
                )
            notes.append(
                f"The range ends at {compared.lowest_grade}. For wood below it no number is shown here: only a grader "
                "can tell."
            )
            missing = sorted(
                {wood.species for wood in materials("dimension")} - {one.species for one in compared.woods}
            )
            if missing and values["wood"] in ("any", "No.2"):
                notes.append(f"Not in the range, for lack of values in this size: {', '.join(missing)}.")
        notes += words.of_shape(values)
        notes.append(
            "The span runs from the middle of one support to the middle of the other; the clear span between them is less."
        )
        notes += now.conditions
        if values["plies"] > 1:
            notes.append("Pieces side by side count as fastened to one another, sound alike and loaded alike.")
        years = compared and compared.question("sag after years")
        if years:
            notes.append(
                "The share of sag is that of the live load alone. Sag after years has the weight that stays in it, with "
                f"the creep of wood that was dry ({years.clause}); it decides nothing here."
            )
        if any(words.beyond(check) for check in now.on_the_cut) and not now.gates:
            notes.append(
                "A cut beyond the code's limits is not to be made. Where one exists, an engineer designs the repair."
            )
        if values["cut"].startswith("notch"):
            notes.append(
                "The corner of a notch splits wood sooner than the numbers say: they count only the wood left."
            )
        if compared is not None or now.refused:
            notes.append(words.values_known(compared, now.limits))
        return (*notes, CAUTION)

    def scene(self, values, now, ghost=None, frame="page"):
        """Draw the joist, its cut and the range."""
        system, section, limits = self.system, now.section, now.limits
        place = now.cut.middle if now.cut is not None else min(values["place"], values["span"])
        checks = () if now.gates else now.on_the_cut
        ranges, short = words.ranges(now.compared) if now.compared and not now.gates else ((), ())
        allowed = limits if limits is not None and not now.gates else None
        lowest = f" Below {now.compared.lowest_grade} only a grader can tell." if ranges else ""
        return draw_old_wood(OldWoodView(
            title=words.title(now),
            span=values["span"],
            span_text=show(values["span"], "length", system),
            depth=section.depth,
            right_depth=section.depth - now.joist.taper,
            width=section.width,
            wane=now.judged.element.part.measured.wane,
            shape=section.shape,
            size_text=words.size_text(section, now.joist.plies, system),
            place=place,
            cut=words.drawn_cut(now.cut, section.depth),
            heading=words.heading(values, place, system),
            reasons=words.reasons(checks, section.depth, system) or words.may_be_cut(values, section, allowed, system),
            ranges=ranges,
            short_ranges=short,
            allowed=allowed.boxes if allowed else (),
            limit=allowed and allowed.notch_box,
            greatest_hole=allowed.hole_width if allowed and not values["cut"].startswith("notch") else 0.0,
            refused=any(words.beyond(check) for check in checks) or (values["kind"] != "sawn" and now.cut is not None),
            middle_third=limits is not None,
            note=f"Joists every {show(values['spacing'], 'section length', system)}, "
            f"{show(values['dead'] + values['live'], 'area load', system)}.{lowest}",
            previous=ghost and (ghost.member.span, ghost.section.depth, ghost.section.depth - ghost.joist.taper,
                                words.drawn_cut(ghost.cut, ghost.section.depth)),
        ), frame)  # fmt: skip


def _cut(values):
    """The notch or hole as measured, kept on the joist, in the words of a house; None where there is none."""
    what, _, where = values["cut"].partition(" ")
    if what == "none":
        return None
    depth = values["depth"]
    size, place = min(values["size"], 0.9 * depth), min(values["place"], values["span"])
    if what == "notch":
        return Cut(what=f"notch in the {where}", place=place, size=size, length=values["length"])
    return Cut(
        what="hole", place=place, size=size, below=None if where == "middle" else min(float(where) * inch, depth - size)
    )


hold(globals())
