"""How big must the beam be? One opening, one beam, every check, drawn where it governs."""

from dataclasses import dataclass, field, replace
from functools import lru_cache

from structlib.ground.loads import LoadsByType
from structlib.ground.lumber import Material
from structlib.ground.refusals import OutsideRule
from structlib.ground.showing import show
from structlib.ground.units import ft, inch, lb, plf
from structlib.house.bays import one_opening
from structlib.house.beam import BeamChoice, BeamJob
from structlib.house.beam_jobs import beam_job, on_masonry
from structlib.house.file import demo_house
from structlib.house.judging import Answer, judge_element
from structlib.house.path import follow
from structlib.house.pieces import GivenWood, piece_of
from structlib.house.plan import House, Load
from structlib.house.plies import PLY_JOINTS, ply_layout
from structlib.house.shares import along
from structlib.pages.kit import verdict
from structlib.pages.kit.comes_down import comes_down, comes_down_pick, titled, without_load
from structlib.pages.kit.controls import Box, Page, Pick, Shown, Slide, Steps
from structlib.pages.kit.door import hold
from structlib.pages.kit.verdict import SEAT_NOT_KNOWN, beam_evidence
from structlib.pages.kit.woods import IN_USE, PLATES, SITS_ON, UNKNOWN, WOODS, in_use, pieces, wood
from structlib.pages.topics.beam import words
from structlib.pages.topics.beam.words import OWN, TWO_PEOPLE
from structlib.pictures.drawings.opening import LoadBand, OpeningView, PointLoad, draw_opening
from structlib.rules.check import Rulebook
from structlib.rules.choice import RULEBOOK

_BRACES = (
    ("by joists, every 16 in", "joists"),
    ("at mid-span", "middle"),
    ("at the ends only", "ends"),
    ("all along", "all"),
    ("not known: as if at the ends only", UNKNOWN),
)
_JOINTS = (("not chosen yet", UNKNOWN), *((joint.name, key) for key, joint in PLY_JOINTS.items()))
_JOINED = {key: key for key in PLY_JOINTS}
_LOADS = ("dead", "live", "roof_live", "snow")
_POINT = "what stands on the beam"
SEVERAL = (
    "More than one post or beam comes down on this opening: this page takes one. Follow the house as a whole, and ask the "
    "engineer. Only what is asked is shown."
)
_POSITIONS = (("dropped: joists sit on it", "dropped"), ("flush: joists hang on its sides", "flush"))


@dataclass(frozen=True)
class OpeningResult:
    """The beam over an opening as judged: its job, its piece, what is asked and found, its gates, how its plies are joined.

    ``stands`` is what a post on it brings, by type [N], and ``stands_at`` how far from the left edge of the opening [mm].
    """

    job: BeamJob
    choice: BeamChoice
    answer: Answer
    gates: tuple
    ply_layout: object = None
    stands: dict = field(default_factory=dict)
    stands_at: float = 0.0

    @property
    def member(self):
        """The beam as the rulebook sees it."""
        return self.answer.member

    @property
    def demands(self):
        """What each combination asks of it."""
        return self.answer.demands

    @property
    def checks(self):
        """Every check of it."""
        return self.answer.checks

    @property
    def governs(self):
        """The check that governs; None where nothing was judged."""
        return verdict.worst(self.checks)


class BeamPage(Page):
    """The bench of the main job: an opening in a house, and a beam to carry what comes down on it."""

    def __init__(
        self,
        house: House | None = None,
        rulebook: Rulebook = RULEBOOK,
        system: str = "us",
        own_lvl: Material | None = None,
        opening: str | None = None,
    ):
        self.house = demo_house() if house is None else house
        self.rulebook, self.system, self.own_lvl = rulebook, system, own_lvl
        path = follow(self.house)
        self.opening = path.opening(opening)
        self.wall = path.axis(self.opening.name)
        self.total = path.line_on(self.opening.name, self.opening.middle)
        self.point, self.several = self._point(path)
        self.result = lru_cache(maxsize=64)(self._result)

    def controls(self, values):
        opening = self.opening
        key = values.get("wood", "fir")
        depths = tuple(depth for depth, *_ in self.pieces(key))
        woods = tuple((one.label, one.key) for one in WOODS) + (("not known: weakest listed", UNKNOWN),)
        if self.own_lvl is not None:
            woods = ((self.own_lvl.name, OWN), *woods)
        load = dict(dimension="line load", low=0.0, high=5000 * plf)
        return (
            Slide("span", "Span, clear", "length", 3 * ft, 20 * ft, 3 * inch, opening.clear_width),
            Steps(
                "depth",
                "Depth",
                "section length",
                depths,
                max((d for d in depths if d <= opening.greatest_depth), default=depths[0]),
            ),
            Slide("plies", "Plies", "count", 1, 5, 1, 4),
            comes_down_pick(),
            Pick("wood", "Wood", woods, "fir"),
            Box("dead", "Dead load", default=self.total["dead"], **load),
            Box("live", "Live load", default=self.total["live"], **load),
            Box("roof_live", "Roof live load", default=self.total["roof live"], **load),
            Box("snow", "Snow load", default=self.total["snow"], **load),
            Pick("braced", "Top held", _BRACES, self._held()),
            Pick("position", "Position", _POSITIONS, opening.position),
            *self._seat_boxes(),
            Pick("below", "Sits on", SITS_ON, self._plate()),
            Pick("joined", "Plies joined", _JOINTS, _JOINED.get(opening.joined, UNKNOWN)),
            *IN_USE,
            *(
                Box(f"point_{one}", f"Post on it, {one.replace('_', ' ')}", "force", 0.0, 40_000 * lb, self.point[one])
                for one in _LOADS
            ),
            Slide("point_at", "That post stands at", "ratio", 0.0, 1.0, 0.05, self.point["at"]),
        )

    def pieces(self, key):
        """Return every size of one of the woods that this page offers.

        Gives [mm, mm, -, -].
        """
        if key == OWN and self.own_lvl is not None:
            return tuple((depth, width, name, self.own_lvl) for depth, width, name, _ in pieces("lvl 2.0"))
        return pieces(key, self.rulebook)

    def _point(self, path):
        """What the house brings at one place of the opening, by type and place; and whether it brings more than one."""
        points = [one for one in path.element(self.opening.name).received if one.extent == 1.0]
        if not points:
            return {**dict.fromkeys(_LOADS, 0.0), "at": 0.5}, False
        at = (along(self.wall, points[0])[0] - self.opening.start) / self.opening.clear_width
        return {**dict(zip(_LOADS, points[0].amount)), "at": min(max(at, 0.0), 1.0)}, len(points) > 1

    def _seat_boxes(self):
        """One box for both seats, or one for each end where the house has two lengths."""
        opening, ends = self.opening, dict(dimension="section length", low=0.5 * inch, high=16 * inch)
        if opening.left_seat == opening.right_seat:
            return (Box("seat", "Seat, each end", default=opening.left_seat, **ends),)
        return (
            Box("seat", "Seat, left end", default=opening.left_seat, **ends),
            Box("right_seat", "Seat, right end", default=opening.right_seat, **ends),
        )

    def _held(self):
        """What the house says of the top edge, among what is offered: never held closer than it is."""
        every, half = self.opening.held_every, self.opening.clear_width / 2
        return "all" if not every else "joists" if every <= 16 * inch else "middle" if every <= half else "ends"

    def _plate(self):
        """What the house says of the wall among what is offered; a plate of unknown wood where it says nothing."""
        if self.wall.made_of == "masonry":
            return "masonry"
        plate = self.wall.plate
        return next((key for key, names in PLATES.items() if plate and names.species == plate.species), "plate")

    def path(self, values):
        """Return the way of the load that a set of values describes: what comes down, the beam, and its two seats."""
        clear, below, left = values["span"], values["below"], values["seat"]
        right = values.get("right_seat", left)
        held = {"joists": 16 * inch, "middle": (clear + (left + right) / 2) / 2, "all": 0.0}
        opening = replace(
            self.opening, clear_width=clear, left_seat=left, right_seat=right, beam=self._wood(values), flitch=None, steel=None,
            posts=None, wall_above=0.0,
            sits_on="studs" if below == "post" else "as drawn", position=values["position"], left_on="", right_on="",
            joined=_JOINED.get(values["joined"], "not chosen"), held_every=held.get(values["braced"], clear + (left + right) / 2),
        )  # fmt: skip
        heavy = {kind.replace(" ", "_"): force for kind, force in _stands(values).items()}
        stands = (Load(name=_POINT, on="beam", x=0.0, y=clear * values["point_at"], **heavy),) if heavy else ()
        line = LoadsByType({one.replace("_", " "): values[one] for one in _LOADS})
        return follow(
            one_opening(
                line,
                opening,
                plate=PLATES.get(below),
                made_of="masonry" if below == "masonry" else "studs",
                thickness=self.wall.thickness,
                heavy=stands,
            )
        )

    def _wood(self, values):
        """The beam in the words of a house; a wood that stands in no table brings its own values."""
        key, plies = values["wood"], int(values["plies"])
        _, _, size, material = min(self.pieces(key), key=lambda piece: abs(piece[0] - values["depth"]))
        if key in (OWN, UNKNOWN):
            species = "LVL" if material.kind == "lvl" else material.species
            return GivenWood(species=species, grade="", size=size, plies=plies, material=material, **in_use(values))
        return wood(key).words(size, plies, **in_use(values))

    def job(self, values):
        """Return the opening that a set of values describes, before a beam is chosen."""
        return self._job(values, self.path(values))

    def _job(self, values, path):
        return replace(beam_job(path, "beam"), stops=self._stops(values))

    def _stops(self, values):
        above = "none" if values["above"] == "post" and _stands(values) else values["above"]
        more = (SEVERAL,) if self.several else ()
        return comes_down({"above": above})[0] + more + ((SEAT_NOT_KNOWN,) if values["below"] == UNKNOWN else ())

    def _result(self, items):
        values = dict(items)
        path = self.path(values)
        job, judged = self._job(values, path), judge_element(path, "beam", self.rulebook)
        if not judged.answers:
            raise OutsideRule(judged.refused[-1])
        choice = piece_of(path.element("beam").part.beam)
        place = on_masonry(path, path.element("beam")).values()  # the job says that in its own words
        gates = job.gates + tuple(one for one in judged.gates if one not in place)
        return OpeningResult(
            job,
            choice,
            judged.answers[0],
            gates,
            ply_layout(job, choice, self.rulebook)[1],
            _stands(values),
            values["point_at"] * values["span"],
        )

    def compute(self, values, before=None, frame="page"):
        result = self.result(tuple(values.items()))
        ghost = self.result(tuple(before.items())) if before else None
        withdrawn = result.gates or without_load(values, (*_LOADS, *(f"point_{one}" for one in _LOADS)))
        return Shown(
            self.scene(values, result, ghost, withdrawn, frame),
            ("check", "asked", "can give", "share", "loads and rule"),
            self.rows(result, withdrawn),
            words.notes(self, values, result),
            result.gates,
            known=beam_evidence(result, result.checks),
        )

    def rows(self, result, gates=()):
        """Return the checks as rows of text."""
        rows, checks = [], words.merged(result.checks)
        for check in checks:
            rows.append(
                (
                    check.name,
                    show(check.asked, check.dimension, self.system),
                    "" if gates else show(check.given, check.dimension, self.system),
                    "" if gates else verdict.share_text(check, checks),
                    f"{check.combination}; {check.clause.split(' (')[0]}",
                )
            )
        if result.answer.refused:
            moment = show(abs(words.greatest(result).solution.extremes.moment.value), "moment", self.system)
            rows.append(("beam", moment, "", "not judged", result.answer.refused))
        if force := sum(result.stands.values()):
            by_type = ", ".join(f"{kind} {show(one, 'force', self.system)}" for kind, one in result.stands.items())
            place = show(result.stands_at, "length", self.system)
            rows.append(
                (
                    "post on the beam",
                    show(force, "force", self.system),
                    "",
                    "",
                    f"{by_type}, without factors; {place} from the left edge of the opening",
                )
            )
        solution = words.greatest(result).solution
        left, right = solution.reactions[0].force, solution.reactions[-1].force
        ends = show(left, "force", self.system)
        if show(right, "force", self.system) != ends:
            ends += f" and {show(right, 'force', self.system)}"
        rows.append(("push on each seat", ends, "", "", f"{words.greatest(result).combination.name}, own weight in it"))
        length = result.job.clear_width + result.job.left.length + result.job.right.length
        one = result.member.weight_per_length / result.member.plies * length
        rows.append(
            (
                "weight of one ply",
                show(one, "weight", self.system),
                "",
                "",
                f"two people carry up to about {show(TWO_PEOPLE, 'weight', self.system)} (common practice)",
            )
        )
        return tuple(rows)

    def scene(self, values, result, ghost, gates=(), frame="page"):
        """Draw the opening, the beam in it, and each check where it comes nearest its limit."""
        system, member, job = self.system, result.member, result.job
        demand = words.greatest(result)
        points = demand.solution.points(48)
        sag = words.drawn_sag(result)
        load, hangs = words.hangs(result, sag.name if sag else "")
        sags = sag.asked if sag else max(map(abs, hangs.deflection))
        peak = demand.solution.extremes
        greatest_shear = max(abs(peak.shear.value), 1e-9)
        view = OpeningView(
            title=titled(words.title(result, gates), values, gates),
            clear_width=job.clear_width,
            left_seat=job.left.length,
            right_seat=job.right.length,
            beam_depth=member.depth,
            opening_height=self.opening.height,
            plies=member.plies,
            ply_width=member.ply_width,
            material_kind={"lvl": "lvl", "timber": "timber"}.get(member.material.kind, "sawn"),
            section_name=result.choice.name,
            width_text=show(member.width, "section length", system),
            depth_text=show(member.depth, "section length", system),
            clear_width_text=words.clear(show(job.clear_width, "length", system)),
            flush=values["position"] == "flush",
            left_jacks=words.jacks(job.left.length),
            right_jacks=words.jacks(job.right.length),
            joist_depth=9.25 * inch,
            joist_spacing=16 * inch,
            loads=tuple(
                LoadBand(f"{name} {show(values[key], 'line load', system)}", values[key])
                for name, key in (
                    ("snow", "snow"),
                    ("roof live", "roof_live"),
                    ("live", "live"),
                    ("dead", "dead"),
                )
                if values[key]
            ),
            point_loads=tuple(
                PointLoad(f"post {show(sum(one.values()), 'force', system)}", result.stands_at + job.left.length / 2)
                for one in (result.stands,)
                if one
            ),
            load_full=2000 * plf,
            load_full_text=f"full arrow {show(2000 * plf, 'line load', system)}",
            sag_x=tuple(hangs.x.tolist()),
            sag_y=tuple(hangs.deflection.tolist()),
            exaggeration=40.0,
            sag_text=f"true sag under {load} {show(sags, 'small length', system)} = {words.span_over(job.span, sags)}",
            sag_limit=sag.given if sag else 0.0,
            sag_limit_text=f"limit {words.span_over(job.span, sag.given)}, {load}" if sag else "",
            previous=None if ghost is None else words.ghost(ghost, sag.name if sag else ""),
            marks=() if gates else words.marks(result),
            shear_x=tuple(points.x.tolist()),
            shear_y=tuple(points.shear.tolist()),
            shear_text=show(greatest_shear, "force", system),
            moment_x=tuple(points.x.tolist()),
            moment_y=tuple(points.moment.tolist()),
            moment_text=show(abs(peak.moment.value), "moment", system),
            camera_width=16 * ft,
            camera_depth=18 * inch,
        )
        return draw_opening(view, frame)


def _stands(values):
    """What the post on the beam brings, by the types that there are [N]."""
    return {one.replace("_", " "): values[f"point_{one}"] for one in _LOADS if values[f"point_{one}"]}


hold(globals())
