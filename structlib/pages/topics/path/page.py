"""Start here: one load followed from the ridge of an invented house to the soil."""

from dataclasses import dataclass, replace
from functools import lru_cache

from structlib.ground.showing import show
from structlib.ground.units import ft, inch
from structlib.house.bays import bays
from structlib.house.file import demo_house
from structlib.house.judging import Answer, judge_element
from structlib.house.path import follow
from structlib.house.pieces import piece_of
from structlib.house.takedown import take_down
from structlib.pages.kit import verdict
from structlib.pages.kit.comes_down import comes_down, comes_down_pick, titled
from structlib.pages.kit.controls import Page, Pick, Shown, Slide, Steps
from structlib.pages.kit.door import hold
from structlib.pages.kit.verdict import CAUTION, beam_evidence
from structlib.pages.kit.woods import UNKNOWN, WOODS, pieces, wood
from structlib.pictures.drawings import LoadPathView, Station, draw_load_path
from structlib.rules.check import Rulebook
from structlib.rules.choice import RULEBOOK
from structlib.rules.members import NotCovered, ask


@dataclass(frozen=True)
class PathNumbers:
    """The numbers along the path: the beam as judged, its line load [N/mm], the load of a middle post [N], the soil.

    ``check`` is the one that governs the beam, under its own name; None where nothing was judged. ``soil`` is None where
    the rulebook presumes no bearing, or nobody knows it, and ``silent`` says why.
    """

    beam: Answer
    check: object
    name: str
    line: float
    post: float
    soil: object
    silent: tuple
    gates: tuple

    @property
    def area(self):
        """Soil over which the post must be spread; None where no pressure is presumed [mm2]."""
        return self.soil and self.post / self.soil.pressure


class PathPage(Page):
    """The bench of the start page: the main beam of an invented house, and the numbers along the path."""

    def __init__(self, system: str = "us", rulebook: Rulebook = RULEBOOK):
        self.system, self.rulebook = system, rulebook
        self.house = demo_house()
        path = follow(self.house)
        self.down = take_down(path, *path.first_bay())
        self.soils, self.no_soils = {}, ()
        try:
            self.soils = {one.name: one for one in ask(rulebook, "soils")}
        except NotCovered as none:
            self.no_soils = (str(none),)
        self.result = lru_cache(maxsize=64)(self._result)

    def controls(self, values):
        depths = tuple(depth for depth, *_ in pieces(values.get("wood", "fir")))
        soils = tuple((name, name) for name in self.soils) or (("not known", UNKNOWN),)
        return (
            Slide("span", "Span, post to post", "length", 4 * ft, 14 * ft, 3 * inch, 7 * ft),
            Steps("depth", "Depth", "section length", depths, max(d for d in depths if d <= 12 * inch)),
            Slide("plies", "Plies", "count", 1, 5, 1, 4),
            comes_down_pick(),
            Pick("wood", "Wood", tuple((one.label, one.key) for one in WOODS), "fir"),
            Pick("soil", "Soil", soils, soils[0][1]),
        )

    def path(self, values):
        """Return the way of the load that a set of values describes: the main beam in two bays, a middle post, its pad."""
        size = min(pieces(values["wood"]), key=lambda piece: abs(piece[0] - values["depth"]))[2]
        beam = wood(values["wood"]).words(size, int(values["plies"]))
        return follow(
            bays(
                self.down.total,
                span=values["span"],
                post=self.house.posts[0],
                wood=beam,
                pad_side=self.house.pads[0].side,
                soil="",
            )
        )

    def _result(self, items):
        values = dict(items)
        path = self.path(values)
        judged, element = judge_element(path, "beam", self.rulebook), path.element("beam")
        beam, worst = judged.answers[0], judged.governs
        silent = (*self.no_soils, *((beam.refused,) if beam.refused else ()))
        return PathNumbers(
            beam=beam, check=worst and replace(worst, name=f"main beam, {worst.name}"), name=piece_of(element.part.wood).name,
            line=sum(sum(share.amount) for share in (*element.received, *element.own)),
            post=path.element("pad").total().sum_for_equilibrium_only(), soil=self.soils.get(values["soil"]), silent=silent,
            gates=(*comes_down(values)[0], *judged.gates),
        )  # fmt: skip

    def compute(self, values, before=None, frame="page"):
        now = self.result(tuple(values.items()))
        rows = [
            (
                share.name,
                show(share.line.sum_for_equilibrium_only(), "line load", self.system),
                show(share.running.sum_for_equilibrium_only(), "line load", self.system),
            )
            for share in self.down.shares
            if share.line.sum_for_equilibrium_only()
        ]
        rows.append(("main beam with its own weight", "", show(now.line, "line load", self.system)))
        if now.check and not now.gates:
            told = verdict.share_text(now.check, (now.check,))
            rows.append((f"its share used ({verdict.worst(now.beam.checks).name})", "", told))
        rows.append(("middle post", "", show(now.post, "force", self.system)))
        notes = ["The roof stands on the outside walls; what comes down here is the middle of the house."]
        if now.soil:
            rows.append(
                (
                    "soil under its footing",
                    "",
                    f"{_square(now.area, self.system)} at {show(now.soil.pressure, 'area load', self.system)}",
                )
            )
            notes.append(
                "The footing is only asked for here, not designed; soil values are presumptive "
                f"({now.soil.clause.split(' (')[0]})."
            )
        notes += [f"Not judged: {one}." for one in now.silent]
        notes.append(f"The house is invented: {self.house.name}. {CAUTION}")
        soil = (("soil", now.soil.verified),) if now.soil else ()
        return Shown(
            self.scene(values, now, frame),
            ("station", "adds", "so far"),
            tuple(rows),
            tuple(notes),
            now.gates,
            known=(*soil, *beam_evidence(now.beam, (now.check,) if now.check else ())),
        )

    def scene(self, values, now, frame="page"):
        """Draw the house in section, with the path of the load."""
        system = self.system
        line = lambda value: show(value, "line load", system)  # noqa: E731
        _, attic, upper, ground = self.down.shares
        member = now.beam.member
        stations = (
            Station("attic floor", "attic floor brings", line(attic.line.sum_for_equilibrium_only())),
            Station("upper wall", "wall below it", line(attic.running.sum_for_equilibrium_only())),
            Station("upper floor", "upper floor brings", line(upper.line.sum_for_equilibrium_only())),
            Station("lower wall", "wall below it", line(upper.running.sum_for_equilibrium_only())),
            Station("ground floor", "ground floor brings", line(ground.line.sum_for_equilibrium_only())),
            Station("beam", "main beam", line(now.line)),
            Station("post", "middle post", show(now.post, "force", system)),
            Station("soil", "soil must spread it over", _square(now.area, system) if now.soil else "not judged"),
        )
        title = verdict.headline(
            (now.check,) if now.check else (),
            now.gates,
            lambda first: f"The middle post brings {show(now.post, 'force', system)} to the soil",
            stop="Stop and call first: more comes down than is followed here"
            if comes_down(values)[0]
            else verdict.STOP,
        )
        view = LoadPathView(
            title=titled(title, values, now.gates),
            stations=stations,
            beam_name=f"main beam {now.name}",
            beam_span=values["span"],
            beam_depth=member.depth,
            beam_plies=member.plies,
            beam_ply_width=member.ply_width,
            span_text=f"{show(values['span'], 'length', system)} span",
            size_text=f"{show(member.width, 'section length', system)} x {show(member.depth, 'section length', system)}",
            material_kind={"lvl": "lvl", "timber": "timber"}.get(member.material.kind, "sawn"),
        )
        return draw_load_path(view, frame)


def _square(area, system):
    return f"{area / ft**2:.1f} ft²" if system == "us" else f"{area / 1e6:.2f} m²"


hold(globals())
