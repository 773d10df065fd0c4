"""What does it sit on? One end of a beam: which face is crushed first, and how long its seat must be."""

from dataclasses import dataclass, replace
from functools import cached_property, lru_cache

from structlib.ground.loads import LOAD_TYPES, LoadsByType
from structlib.ground.refusals import OutsideRule
from structlib.ground.showing import show
from structlib.ground.units import ft, inch, lb, plf
from structlib.house.bays import one_opening
from structlib.house.file import demo_house
from structlib.house.judging import Answer, judge_element
from structlib.house.path import follow
from structlib.house.plan import Opening
from structlib.pages.kit import verdict
from structlib.pages.kit.comes_down import comes_down, comes_down_pick, titled, without_load
from structlib.pages.kit.controls import Box, Page, Pick, Shown, Slide, Steps
from structlib.pages.kit.door import hold
from structlib.pages.kit.verdict import CAUTION, SEAT_NOT_KNOWN, beam_evidence
from structlib.pages.kit.woods import PLATES, SITS_ON, UNKNOWN, WOODS, pieces, wood
from structlib.pictures.drawings.seat import STUD, Face, PreviousSeat, SeatView, draw_seat
from structlib.rules.check import Rulebook
from structlib.rules.choice import RULEBOOK
from structlib.rules.members import BEAM_FACE, LEAST_SEAT, PLATE_FACE, Push, ask

_WOODS = ("hem-fir", "spf", "fir", "southern pine", "lvl 2.0")
_LOADS = {kind: kind.replace(" ", "_") for kind in LOAD_TYPES}  # names of the controls
# a push from which on the arrow grows no longer
_FULL_ARROW = 12000 * lb


@dataclass(frozen=True)
class SeatResult:
    """A beam and its left seat: all that the page shows, before it is put into words.

    ``push`` is the greatest of its combinations. ``lengths`` are the seats at which the beam's and the plate's face are
    used up [mm], ``jacks`` the studs for the beam's face, ``area`` the bearing area factor; None or empty where the
    rulebook has no rule, and ``silent`` says so.
    """

    beam: Answer
    seat: Answer
    push: Push
    lengths: tuple
    jacks: object
    area: object
    silent: tuple
    gates: tuple

    @property
    def length(self):
        """Length of the seat [mm]."""
        return self.seat.member.seat.length

    @cached_property
    def whole(self):
        """The check that governs the beam, for information; None where nothing of it was judged."""
        first = verdict.worst(self.beam.checks)
        return first and replace(first, name=f"the whole beam, {first.name}", decides=False)

    def check(self, kind):
        """Return the check of the seat of one kind."""
        return next((one for one in self.seat.checks if one.kind == kind), None)

    @cached_property
    def governs(self):
        """The check of the seat that uses the greatest share; None where nothing was judged."""
        return verdict.worst(self.checks)

    @cached_property
    def checks(self):
        """Every check of the page: those of the seat, and the one that governs the beam, for information [-]."""
        mine = {PLATE_FACE: None, BEAM_FACE: None, LEAST_SEAT: None, **{one.kind: one for one in self.seat.checks}}
        return tuple(one for one in (*mine.values(), self.whole) if one is not None)


class SeatPage(Page):
    """The bench of the seat: one end of a beam, close up, and the two faces that press on each other."""

    def __init__(self, system: str = "us", rulebook: Rulebook = RULEBOOK):
        self.system, self.rulebook = system, rulebook
        self.house = demo_house()
        path = follow(self.house)
        self.total = path.line_on(path.opening().name, path.opening().middle)
        self.result = lru_cache(maxsize=64)(self._result)

    def controls(self, values):
        depths = tuple(depth for depth, *_ in pieces(values.get("wood", "fir")))
        woods = tuple((one.label, one.key) for one in WOODS if one.key in _WOODS)
        load = dict(dimension="line load", low=0.0, high=3000 * plf)
        return (
            Slide("span", "Span, clear", "length", 3 * ft, 20 * ft, 3 * inch, 10 * ft),
            Steps("depth", "Depth", "section length", depths, max(d for d in depths if d <= 9.5 * inch)),
            Slide("plies", "Plies", "count", 1, 5, 1, 3),
            comes_down_pick(),
            Pick("wood", "Wood", woods, "fir"),
            Box("dead", "Dead load", default=self.total["dead"], **load),
            Box("live", "Live load", default=self.total["live"], **load),
            Box("roof_live", "Roof live load", default=self.total["roof live"], **load),
            Box("snow", "Snow load", default=self.total["snow"], **load),
            Slide("seat", "Seat length", "section length", 0.5 * inch, 12 * inch, 0.25 * inch, 3 * inch),
            Pick("below", "Sits on", SITS_ON, "spf"),
        )

    def path(self, values):
        """Return the way of the load that a set of values describes: one beam over an opening, and its two seats."""
        below, length = values["below"], values["seat"]
        size = min(pieces(values["wood"]), key=lambda piece: abs(piece[0] - values["depth"]))[2]
        opening = Opening(
            name="", wall="", start=0.0, clear_width=values["span"], height=1 * ft, wall_above=0.0, left_seat=length,
            right_seat=length,
            beam=wood(values["wood"]).words(size, int(values["plies"])), greatest_depth=48 * inch, greatest_width=24 * inch,
            sits_on="studs" if below == "post" else "as drawn",
        )  # fmt: skip
        line = LoadsByType({kind: values[name] for kind, name in _LOADS.items()})
        made_of = "masonry" if below == "masonry" else "studs"
        return follow(one_opening(line, opening, plate=PLATES.get(below), made_of=made_of))

    def _result(self, items):
        values, silent = dict(items), []
        judged = judge_element(self.path(values), "beam, left seat", self.rulebook)
        seat = judged.answers[0]
        push = max(seat.demands, key=lambda one: one.axial)

        def told(answer, *asked):
            try:
                return ask(self.rulebook, answer, *asked)
            except OutsideRule as refusal:
                return silent.append(str(refusal))

        stops = comes_down(values)[0] + ((SEAT_NOT_KNOWN,) if values["below"] == UNKNOWN else ())
        lengths, jacks = told("bearing_lengths", seat.member, push) or (), told("jack_studs", seat.member, push)
        area = told("area_factor", seat.member)
        return SeatResult(
            judged.whole.answers[0], seat, push, lengths, jacks, area, tuple(silent), stops + judged.gates
        )

    def compute(self, values, before=None, frame="page"):
        now = self.result(tuple(values.items()))
        ghost = self.result(tuple(before.items())) if before else None
        withdrawn = now.gates or without_load(values, _LOADS.values())
        return Shown(
            self.scene(values, now, ghost, withdrawn, frame),
            ("what", "asked", "can give", "share", "loads and rule"),
            self.rows(now, withdrawn),
            self.notes(now),
            now.gates,
            known=beam_evidence(now.beam, now.checks),
        )

    def rows(self, now, gates=()):
        """Return what the seat is asked and what it can give, as rows of text."""
        system, push = self.system, show(now.push.axial, "force", self.system)
        own = show(now.beam.member.weight_per_length, "line load", system)
        rows = [("push on the seat", push, "", "", f"{now.push.combination.name}; own weight of {own} in it")]
        rows += [
            (name, push, "", "not judged", one.refused)
            for name, one in (("seat", now.seat), ("whole beam", now.beam))
            if one.refused
        ]
        rows += self._judged("crushing the beam", now.check(BEAM_FACE), now, gates)
        rows += self._judged("crushing the plate", now.check(PLATE_FACE), now, gates)
        rows += [
            (f"seat length for {face}", show(length, "small length", system), "", "", "R / (b F)")
            for face, length in zip(("the beam's face", "the plate below"), now.lengths)
        ]
        if now.area is not None:
            rows.append(
                (
                    "bearing area factor",
                    f"{now.area.value:.2f}",
                    "",
                    "",
                    f"1 at a beam's end: no wood beyond it to help; {now.area.clause}",
                )
            )
        rows += self._judged("least seat of the code here", now.check(LEAST_SEAT), now, gates)
        rows += self._judged(now.whole and now.whole.name, now.whole, now, gates)
        if now.jacks is not None and not gates:
            rows.append(
                (
                    "jack studs for the beam's face",
                    str(now.jacks.count),
                    "",
                    "",
                    f"seat of {show(now.jacks.seat_given, 'section length', system)}; {now.jacks.clause}",
                )
            )
        return tuple(rows)

    def _judged(self, name, check, now, gates):
        if check is None:
            return []
        asked, given = (show(one, check.dimension, self.system) for one in (check.asked, check.given))
        told = ("", "") if gates else (given, verdict.share_text(check, now.checks))
        return [(name, asked, *told, f"{check.combination}; {check.clause.split(' (')[0]}")]

    def notes(self, now):
        """Return what must be said below the numbers."""
        material, plate = now.beam.member.material, now.check(PLATE_FACE)
        notes = [
            "Only the seat is judged here. Of the whole beam, held along its top every 16 in by joists, the row for "
            "information shows the check that governs; all of them are in notebook 04.",
            *(f"Not judged: {one}." for one in dict.fromkeys((now.seat.refused, now.beam.refused, *now.silent)) if one),
            f"Design values of {material.name}: {material.source}, {material.verified}.",
        ]
        if plate is not None:
            notes.append(f"Value of the {plate.where.split(', ')[-1]}: {plate.verified}.")
        if now.seat.member.seat.below == "post":
            notes.append(
                "End grain is far stronger than the beam's face, so the beam is crushed first. The studs "
                "below are columns, and a check of their own."
            )
        if material.kind == "lvl":
            notes.append("LVL values here are generic; enter those of the maker's evaluation report.")
        notes.append(CAUTION)
        return tuple(notes)

    def scene(self, values, now, ghost, gates=(), frame="page"):
        """Draw the end of the beam on its seat, and its contact area from above."""
        system, member = self.system, now.beam.member
        longest, least = max(now.lengths, default=None), now.check(LEAST_SEAT)
        view = SeatView(
            title=titled(_title(now, gates, system), values, gates),
            seat=now.length,
            depth=member.depth,
            plies=member.plies,
            ply_width=member.ply_width,
            material_kind="lvl" if member.material.kind == "lvl" else "sawn",
            below=now.seat.member.seat.below,
            push=min(now.push.axial / _FULL_ARROW, 1.0),
            push_text=show(now.push.axial, "force", system),
            seat_text=show(now.length, "section length", system),
            width_text=show(member.width, "section length", system),
            area_text=show(now.length * member.width, "area", system),
            depth_text=show(member.depth, "section length", system),
            faces=_faces(now, gates, system),
            needed=longest,
            needed_text="" if longest is None else show(longest, "small length", system),
            least=least and least.asked,
            least_text=show(least.asked, "section length", system) if least else "",
            full_text=show(STUD, "section length", system),
            stopped=bool(gates),
            previous=None if ghost is None or ghost is now else _ghost(ghost),
        )
        return draw_seat(view, frame)


def _faces(now, gates, system):
    """Both faces as the picture tells them; where a gate stands, what presses on each and no share."""
    told = (
        ("beam pressed by" if gates else "crushing the beam", now.check(BEAM_FACE)),
        ("crushing the plate", now.check(PLATE_FACE)),
    )
    if gates:
        return tuple(Face(word, show(one.asked, "stress", system), 0.0, False) for word, one in told if one)
    return tuple(
        Face(word, show(one.share, "ratio"), one.share, one is now.governs or _alike(now)) for word, one in told if one
    )


def _alike(now):
    plate, beam = now.check(PLATE_FACE), now.check(BEAM_FACE)
    return plate is not None and now.governs.kind != LEAST_SEAT and abs(plate.share - beam.share) < 1e-9 * beam.share


def _ghost(now):
    member = now.beam.member
    return PreviousSeat(now.length, member.depth, member.width)


def _title(now, gates, system):
    unjudged = ("the seat",) if now.seat.refused else ()
    return verdict.headline(now.checks, gates, lambda first: _message(now, first, system), unjudged=unjudged)


def _message(now, first, system):
    if first is None:
        return f"The seat is pushed with {show(now.push.axial, 'force', system)}"
    used = verdict.used(first.share)
    if first.kind == LEAST_SEAT:
        if first.share > 1 + 1e-9:
            least = show(first.asked, "section length", system)
            return f"Too short: the code asks for {least} of seat, whatever the load; {used}"
        return f"The code's least seat governs: {used}"
    word = "The beam" if first.kind == BEAM_FACE else "The plate"
    if _alike(now):
        return f"Beam and plate are used alike: both {used}"
    if first.share > 1 + 1e-9:
        return f"{word} is asked {first.share:.2f} times what it gives"
    return f"{word} would be crushed first: {used}"


hold(globals())
