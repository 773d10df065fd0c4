"""Start here: one load followed from the ridge of an invented house to the soil."""

from dataclasses import replace
from functools import lru_cache

from structlib.ground.showing import show
from structlib.ground.units import ft, inch
from structlib.house.beam import BeamChoice, BeamJob, TypedLoad, check_beam
from structlib.house.file import demo_house
from structlib.house.bays import bays
from structlib.house.path import follow
from structlib.house.takedown import take_down
from structlib.mechanics.beams import LineLoad
from structlib.pages import verdict
from structlib.pages.beam_page import CAUTION, beam_evidence
from structlib.pages.comes_down import comes_down, comes_down_pick, titled
from structlib.pages.controls import Page, Pick, Shown, Slide, Steps
from structlib.pages.door import hold
from structlib.pages.woods import WOODS, pieces, wood
from structlib.pictures.drawings import LoadPathView, Station, draw_load_path
from structlib.rules.check import Seat
from structlib.rules.members import ask
from structlib.rules.choice import RULEBOOK

_SEAT = 5.5 * inch


class PathPage(Page):
    """The bench of the start page: the main beam of an invented house, and the numbers along the path.

    Parameters
    ----------
    system : str
        Units of the reader: 'us' or 'metric' [-].
    rulebook : structlib.rules.check.Rulebook
        The rules to judge by [-].
    """

    def __init__(self, system="us", rulebook=RULEBOOK):
        self.system, self.rulebook = system, rulebook
        self.house = demo_house()
        path = follow(self.house)
        self.down = take_down(path, *path.first_bay())
        self.soils = {one.name: one for one in ask(rulebook, "soils")}
        self.result = lru_cache(maxsize=64)(self._result)

    def controls(self, values):
        depths = tuple(depth for depth, *_ in pieces(values.get("wood", "fir")))
        return (
            Slide("span", "Span, post to post", "length", 4 * ft, 14 * ft, 3 * inch, 7 * ft),
            Steps("depth", "Depth", "section length", depths, max(d for d in depths if d <= 12 * inch)),
            Slide("plies", "Plies", "count", 1, 5, 1, 4),
            comes_down_pick(),
            Pick("wood", "Wood", tuple((one.label, one.key) for one in WOODS), "fir"),
            Pick("soil", "Soil", tuple((name, name) for name in self.soils), next(iter(self.soils))),
        )

    def _result(self, items):
        values = dict(items)
        span = values["span"]
        depth, ply_width, name, material = min(
            pieces(values["wood"]), key=lambda piece: abs(piece[0] - values["depth"])
        )
        seat = Seat(_SEAT, "post")
        loads = tuple(
            TypedLoad(kind, LineLoad(0.0, span, load)) for kind, load in self.down.total.items() if load
        )
        job = BeamJob(span - _SEAT, seat, seat, loads, unbraced_length=16 * inch)
        return check_beam(
            job,
            BeamChoice(material, ply_width, depth, int(values["plies"]), f"{int(values['plies'])}-{name}"),
            self.rulebook,
        )

    def _post(self, values, choice):
        """What a middle post brings to its pad, by type: the path of a beam in two bays, with the post of the house."""
        house = bays(self.down.total, span=values["span"], post=self.house.posts[0],
                     wood=wood(values["wood"]).words(choice.name.split("-", 1)[1], choice.plies), pad_side=self.house.pads[0].side, soil="")
        return follow(house).element("pad").total()

    def numbers(self, values):
        """Return the numbers along the path.

        Parameters
        ----------
        values : dict
            Values of the controls [any].

        Returns
        -------
        dict
            Line load on the beam, load on a middle post, soil pressure and area asked [N/mm, N, MPa, mm2].
        """
        result = self.result(tuple(values.items()))
        line = self.down.total.sum_for_equilibrium_only() + result.member.weight_per_length
        post = self._post(values, result.choice).sum_for_equilibrium_only()
        pressure = self.soils[values["soil"]].pressure
        check = replace(result.governs, name=f"main beam, {result.governs.name}")
        return {
            "result": result,
            "check": check,
            "line": line,
            "post": post,
            "pressure": pressure,
            "area": post / pressure,
        }

    def compute(self, values, before=None, frame="page"):
        now, gates = self.numbers(values), comes_down(values)[0]
        rows = [
            (
                share.name,
                show(share.line.sum_for_equilibrium_only(), "line load", self.system),
                show(share.running.sum_for_equilibrium_only(), "line load", self.system),
            )
            for share in self.down.shares
            if share.line.sum_for_equilibrium_only()
        ]
        check = now["check"]
        rows += [
            ("main beam with its own weight", "", show(now["line"], "line load", self.system)),
            *(
                []
                if gates
                else [
                    (
                        f"its share used ({now['result'].governs.name})",
                        "",
                        verdict.share_text(check, (check,)),
                    )
                ]
            ),
            ("middle post", "", show(now["post"], "force", self.system)),
            (
                "soil under its footing",
                "",
                f"{_square(now['area'], self.system)} at "
                f"{show(now['pressure'], 'area load', self.system)}",
            ),
        ]
        clause = self.soils[values["soil"]].clause.split(" (")[0]
        notes = (
            "The roof stands on the outside walls; what comes down here is the middle of the house.",
            f"The footing is only asked for here, not designed; soil values are presumptive ({clause}).",
            f"The house is invented: {self.house.name}. {CAUTION}",
        )
        return Shown(
            self.scene(values, now, frame),
            ("station", "adds", "so far"),
            tuple(rows),
            notes,
            gates,
            known=(("soil", self.soils[values["soil"]].verified), *beam_evidence(now["result"], (now["check"],))),
        )

    def scene(self, values, now, frame="page"):
        """Draw the house in section, with the path of the load.

        Parameters
        ----------
        values : dict
            Values of the controls [any].
        now : dict
            What `numbers` worked out [any].
        frame : str
            Shape of the picture: 'page', 'wide' or 'tall' [-].

        Returns
        -------
        structlib.pictures.scene.Scene
            The picture [-].
        """
        system = self.system
        line = lambda value: show(value, "line load", system)  # noqa: E731
        _, attic, upper, ground = self.down.shares
        member = now["result"].member
        stations = (
            Station("attic floor", "attic floor brings", line(attic.line.sum_for_equilibrium_only())),
            Station("upper wall", "wall below it", line(attic.running.sum_for_equilibrium_only())),
            Station("upper floor", "upper floor brings", line(upper.line.sum_for_equilibrium_only())),
            Station("lower wall", "wall below it", line(upper.running.sum_for_equilibrium_only())),
            Station("ground floor", "ground floor brings", line(ground.line.sum_for_equilibrium_only())),
            Station("beam", "main beam", line(now["line"])),
            Station("post", "middle post", show(now["post"], "force", system)),
            Station("soil", "soil must spread it over", _square(now["area"], system)),
        )
        gates = comes_down(values)[0]
        title = verdict.headline(
            (now["check"],),
            gates,
            lambda first: f"The middle post brings {show(now['post'], 'force', system)} to the soil",
            stop="Stop and call first: more comes down than is followed here",
        )
        view = LoadPathView(
            title=titled(title, values, gates),
            stations=stations,
            beam_name=f"main beam {now['result'].choice.name}",
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
