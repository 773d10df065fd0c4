"""Where does it come down? One beam end, the post under it, the plate, the pad and the soil."""

from dataclasses import dataclass, replace
from functools import cached_property, lru_cache
from math import ceil

from structlib.ground.loads import LoadsByType
from structlib.ground.refusals import OutsideRule
from structlib.ground.showing import show
from structlib.ground.units import ft, inch, lb, plf
from structlib.house.asked import post_member
from structlib.house.bays import bays, one_bay_empty
from structlib.house.file import demo_house
from structlib.house.judging import Answer, judge_element
from structlib.house.path import follow
from structlib.house.plan import House, Post
from structlib.pages.kit import verdict
from structlib.pages.kit.comes_down import comes_down, comes_down_pick, titled, without_load
from structlib.pages.kit.controls import Box, Page, Pick, Shown, Slide, Steps
from structlib.pages.kit.door import hold
from structlib.pages.kit.verdict import CAUTION, beam_evidence
from structlib.pages.kit.woods import IN_USE, PLATES, in_use, in_use_notes, pieces, wood
from structlib.pages.topics.post import words
from structlib.pictures.drawings.post import PostCurve, PostView, PreviousPost, draw_post
from structlib.rules.check import Rulebook
from structlib.rules.choice import RULEBOOK
from structlib.rules.members import OFF_MIDDLE, PadMember, Push, ask, carried_by_height, carried_by_plies

_BEAM_WOOD = "fir"
_TALLEST = 12 * ft
_HEIGHTS = tuple(1 * ft + step * ((_TALLEST - 1 * ft) / 44) for step in range(45))  # of the curves
_PLATE = 1.5 * inch
_PAD_DRAWN = 12 * inch  # in the picture alone, where no rule says how thick
_LOADS = (("dead", "dead"), ("live", "live"), ("roof live", "roof_live"), ("snow", "snow"))
_POST_WOODS = tuple((wood(key).label.split(",")[0], key) for key in ("hem-fir", "spf", "fir", "southern pine"))
_SIZES = (("2x4, solid 4x4", "4"), ("2x6, solid 4x6", "6"), ("2x8, solid 4x8", "8"))
_MADE = (("plies, nailed", "nailed"), ("plies, bolted", "bolted"), ("one solid 4x", "solid"))
_HELD = (("held at its ends", "none"), ("held at mid-height", "middle"), ("held all along (wall)", "all"))
_ENDS = (("one beam end", 1), ("two beam ends", 2))
_STANDS_ON = (
    ("Spruce-Pine-Fir plate", "spf"),
    ("Hem-Fir plate", "hem-fir"),
    ("Douglas Fir plate", "fir"),
    ("steel base on the pad", "steel"),
)
UNKNOWN = "unknown"
#: What the curves of the picture depend on.
_OF_CURVES = ("post_wood", "size", "made", "held", "moisture", "incised", "treatment")
#: Top of the load axis for each size of post; it stays while sliders move.
_GREATEST = {"4": 24_000 * lb, "6": 40_000 * lb, "8": 60_000 * lb}


@dataclass(frozen=True)
class PostResult:
    """A beam end, the post under it and the pad: all that the page shows, before it is put into words.

    ``most`` is the push of which compression asks most, ``greatest`` the greatest. ``above`` is the check that
    governs the beam above. ``refused`` is the sentence of a rule that does not cover the post, ``unbent`` of one that
    does not cover the load off its middle; ``not_judged`` are members without a rule: name, asked, sentence.
    ``carries`` [N], ``least_pad`` and ``held_top`` are None where the rulebook has no rule, and ``silent`` says so.
    """

    beam: Answer
    column: object
    most: Push
    greatest: Push
    above: object
    beam_seat: object
    post: tuple
    plate: object
    on_plate: bool
    soil_pressure: object
    pad: tuple
    soil: object
    base: float
    refused: str
    unbent: str
    not_judged: tuple
    carries: object
    fewest: object
    least_pad: object
    held_top: object
    silent: tuple
    gates: tuple

    @property
    def axial(self):
        """The push of which compression asks most [N]."""
        return self.most.axial

    @cached_property
    def checks(self):
        """Every check of the page, from the beam down [-]."""
        found = (self.above, self.beam_seat, *self.post, self.plate, self.soil_pressure, *self.pad)
        return tuple(check for check in found if check is not None)

    @cached_property
    def governs(self):
        """The deciding check with the greatest share [-]."""
        return verdict.worst(self.checks)


class PostPage(Page):
    """The bench of the post: the same beam end feeds it that the three sliders describe."""

    def __init__(self, house: House | None = None, rulebook: Rulebook = RULEBOOK, system: str = "us"):
        self.house = demo_house() if house is None else house
        self.rulebook, self.system = rulebook, system
        self.followed = None  # the last path: what a change does not touch is taken over from it
        path = follow(self.house)
        self.total = path.line_on(
            *(path.first_bay() if self.house.beams else (path.opening().name, path.opening().middle))
        )
        self.soils = {one.name: one for one in self._told([], ask, rulebook, "soils") or ()}
        self.result = lru_cache(maxsize=64)(self._result)
        self.curves = lru_cache(maxsize=32)(self._curves)

    def controls(self, values):
        depths = tuple(depth for depth, *_ in pieces(_BEAM_WOOD))
        load = dict(dimension="line load", low=0.0, high=3000 * plf)
        soils = (*((name, name) for name in self.soils), ("not known, or fill", UNKNOWN))
        return (
            Slide("span", "Beam span", "length", 4 * ft, 16 * ft, 3 * inch, 7 * ft),
            Steps("depth", "Beam depth", "section length", depths, depths[-1]),
            Slide("plies", "Plies", "count", 1, 5, 1, 4),
            comes_down_pick(),
            Box("dead", "Dead load on beam", default=self.total["dead"], **load),
            Box("live", "Live load on beam", default=self.total["live"], **load),
            Box("roof_live", "Roof live on beam", default=self.total["roof live"], **load),
            Box("snow", "Snow on beam", default=self.total["snow"], **load),
            Pick("ends", "Post holds", _ENDS, 2),
            Slide("post_plies", "Post plies", "count", 1, 5, 1, 3),
            Slide("height", "Post height", "length", 4 * ft, _TALLEST, 3 * inch, 7 * ft),
            Pick("post_wood", "Post wood", _POST_WOODS, "hem-fir"),
            Pick("size", "Post size", _SIZES, "8"),
            Pick("made", "Post made of", _MADE, "nailed"),
            Pick("held", "Weak way", _HELD, "none"),
            Box("eccentricity", "Load off middle", "section length", 0.0, 3 * inch, 0.0),
            Pick("plate", "Post stands on", _STANDS_ON, "steel"),
            Pick("blocks", "Below that plate", words.BLOCKS, UNKNOWN),
            Slide("pad", "Pad side", "section length", 12 * inch, 48 * inch, 1 * inch, 46 * inch),
            Pick("soil", "Soil", soils, soils[0][1]),
            *IN_USE,
        )

    def post(self, values):
        """The post that a set of values describes, in the words of a house."""
        solid, height = values["made"] == "solid", values["height"]
        size, plies = f"{4 if solid else 2}x{values['size']}", 1 if solid else int(values["post_plies"])
        return Post(
            name="post", on="pad", x=0.0, y=0.0, height=height,
            wood=wood(values["post_wood"]).words(size, plies, **in_use(values)),
            plate=PLATES.get(values.get("plate")),
            fastening="bolted" if values["made"] == "bolted" else "nailed",
            held_width={"none": None, "middle": height / 2, "all": 0.0}[values["held"]],
            off_middle=values.get("eccentricity", 0.0),
        )  # fmt: skip

    def path(self, values):
        """The way of the load that a set of values describes; its parts are "beam", "post" and "pad"."""
        size = min(pieces(_BEAM_WOOD), key=lambda piece: abs(piece[0] - values["depth"]))[2]
        line = LoadsByType({kind: values[key] for kind, key in _LOADS})
        # an unknown soil is a gate; what presses on it is shown as on the softest
        soil = values["soil"] if values["soil"] != UNKNOWN else next(iter(self.soils), "")
        house = bays(line, span=values["span"], wood=wood(_BEAM_WOOD).words(size, int(values["plies"])),
                     post=self.post(values), pad_side=values["pad"], soil=soil, count=values["ends"])  # fmt: skip
        self.followed = follow(house, before=self.followed)
        return self.followed

    @staticmethod
    def _told(silent, answer, *asked):
        """An answer that a rulebook may give beside its checks; None where it has none, and why."""
        try:
            return answer(*asked)
        except OutsideRule as refusal:
            silent.append(str(refusal))
            return None

    def _result(self, items):
        values = dict(items)
        path = self.path(values)
        column = post_member(path.element("post").part, self.rulebook)  # refused here where no rule covers its wood
        beam, post, pad = (judge_element(path, name, self.rulebook) for name in ("beam", "post", "pad"))
        above, below = beam.answers[0], post.answers[0]
        checks = below.checks
        greatest = max(below.demands, key=lambda one: one.axial)
        named = next((check.combination for check in checks if check.kind == "compression"), None)
        most = next((one for one in below.demands if one.combination.name == named), greatest)
        slender = below.refused if below.left_out != OFF_MIDDLE else ""
        pads = [check for answer in pad.answers for check in answer.checks]
        seats = [one for one in above.checks if one.kind == "bearing"]
        worst, silent = verdict.worst(above.checks), []
        carries, fewest = self._told(silent, carried_by_plies, self.rulebook, column, most) or (None, None)
        return PostResult(
            beam=above, column=column, most=most, greatest=greatest,
            above=worst and replace(worst, name=f"beam above, {worst.name}"),
            beam_seat=replace(verdict.worst(seats), name="beam crushed on the post") if seats else None,
            post=checks,
            plate=next((check for answer in post.answers[1:] for check in answer.checks), None),
            on_plate=len(post.answers) > 1,
            soil_pressure=next((replace(one, name="soil under the pad") for one in pads if one.dimension == "area load"), None),
            # the page makes the pad as thick as its reach asks, so that is no question here
            pad=tuple(one for one in pads if one.dimension != "area load" and one.kind != "pad thickness"),
            soil=self.soils.get(pad.answers[0].member.soil) if pad.answers else None,
            base=min(column.width, column.depth),
            refused=slender, unbent=below.refused if not slender else "",
            not_judged=tuple(
                (name, greatest.axial, answer.refused)
                for name, answers in (("beam above", beam.answers), ("plate under the post", post.answers[1:]),
                                      ("pad", pad.answers))
                for answer in answers if answer.refused
            ),
            carries=carries, fewest=fewest,
            least_pad=self._told(silent, ask, self.rulebook, "least_pad", pad.answers[0].member, greatest) if pad.answers else None,
            held_top=self._told(silent, ask, self.rulebook, "held_top", greatest),
            silent=tuple(silent),
            gates=tuple(dict.fromkeys((*beam.gates, *post.gates, *pad.gates))),
        )  # fmt: skip

    def _curves(self, key):
        """What one to five plies, or the solid post, carry: name, heights of the picture, loads."""
        *chosen, time_factor = key
        values, found = dict(zip(_OF_CURVES, chosen), height=8 * ft), []
        solid = values["made"] == "solid"
        for count in (1,) if solid else (1, 2, 3, 4, 5):
            post = post_member(self.post({**values, "post_plies": count}), self.rulebook)
            loads = carried_by_height(self.rulebook, post, _HEIGHTS, time_factor, middle=values["held"] == "middle")
            found.append((f"4x{values['size']}" if solid else str(count), _HEIGHTS, loads))
        return tuple(found)

    def compute(self, values, before=None, frame="page"):
        result = self.result(tuple(values.items()))
        ghost = self.result(tuple(before.items())) if before else None
        gates = self.gates(values, result)
        withdrawn = gates or without_load(values, [key for _, key in _LOADS])
        return Shown(
            self.scene(values, result, ghost, withdrawn, frame),
            ("check", "asked", "can give", "share", "loads and rule"),
            self.rows(values, result, withdrawn),
            self.notes(values, result, gates),
            gates,
            known=self.known(result),
        )

    def known(self, result):
        """All that the page used, each with how well it is known."""
        soil, material = result.soil, result.column.material
        more = ((f"soil, {soil.name}", soil.verified),) if soil else ()
        return (*more, (material.name, material.verified), *beam_evidence(result.beam, result.checks))

    def gates(self, values, result):
        """Reasons to stop and call an engineer before anything is chosen here."""
        gates = [*comes_down(values)[0]]
        if values["soil"] == UNKNOWN:
            gates.append(words.soil_not_known(result.soil))
        gates += result.gates
        if values["plate"] != "steel" and values["blocks"] == "joists":
            gates.append(words.NO_BLOCKS)
        return tuple(gates)

    def rows(self, values, result, gates=()):
        """The checks as rows of text, from the beam end down to the soil: name, asked, can give, share, loads and clause."""
        system, push = self.system, result.greatest
        load = show(push.axial, "force", system)
        told = f"{result.most.combination.name}, own weight of beam and post in it"
        rows = [("load on the post", load, "", "", told)]
        rows += [(name, show(asked, "force", system), "", "not judged", why) for name, asked, why in result.not_judged]
        rows += [self._row(check, result, gates) for check in (result.above, result.beam_seat) if check]
        if result.refused:
            rows.append(("post", show(result.axial, "force", system), "", "not judged", result.refused))
        rows += [self._row(check, result, gates) for check in result.post]
        if result.unbent:
            off = show(values["eccentricity"], "section length", system)
            rows.append((OFF_MIDDLE, off, "", "not judged", result.unbent))
        rows += [self._row(result.plate, result, gates)] if result.plate else []
        if result.on_plate:
            rows.append(("solid blocks below that plate", load, "", "", words.BLOCKS_WANTED))
        rows += [self._row(check, result, gates) for check in (result.soil_pressure, *result.pad) if check]
        rows += self._pad_rows(values, result, gates)
        if values["made"] != "solid" and not gates and result.carries is not None:
            rows.append(self._fewest(result))
        if result.held_top:
            held = result.held_top
            told = f"common practice; {held.clause}"
            rows.append(("hold the top sideways for", show(held.force, "force", system), "", "", told))
        return tuple(rows)

    def _row(self, check, result, gates):
        share = "" if gates else verdict.share_text(check, [result.governs])
        given = "" if gates else show(check.given, check.dimension, self.system)
        asked = (
            verdict.used(check.asked).removesuffix(" used")
            if check.dimension == "ratio"
            else show(check.asked, check.dimension, self.system)
        )
        if gates and check.dimension == "ratio":
            asked = ""  # a sum of shares is a verdict, also where it stands under "asked"
        return (
            check.name,
            asked,
            given,
            share,
            f"{check.combination}; {check.clause.split(' (')[0]}",
        )

    def _pad_rows(self, values, result, gates):
        least, system = result.least_pad, self.system
        if least is None:
            return []
        thick = _side(least.thickness, system)
        rows = [("pad thickness, plain concrete", thick, "", "", f"reach past the post; {least.clause}")]
        if not gates:
            presumed = show(result.soil.pressure, "area load", system)
            rows.append(("pad side asked, this soil", _side(least.side, system), _side(values["pad"], system), "",
                         f"{presumed} presumed; {result.soil.clause.split(' (')[0]}"))  # fmt: skip
        return rows

    def _other_soils(self, values, result):
        told = []
        for name, soil in self.soils.items():
            if name != result.soil.name:
                side = ask(
                    self.rulebook, "least_pad", PadMember(values["pad"], result.base, name), result.greatest
                ).side
                told.append(f"{_side(side, self.system)} on {show(soil.pressure, 'area load', self.system)}")
        return f"Pad side asked on other soils: {', '.join(told)}."

    def _fewest(self, result):
        fewest = "more than 5" if result.fewest is None else str(result.fewest)
        return ("fewest plies for this load", fewest, str(result.column.plies), "", "in the middle; compression alone")

    def notes(self, values, result, gates):
        """What must be said below the numbers, one sentence a note."""
        column = result.column
        notes = list(in_use_notes(values, column.material, "The foot of this post is near soil", self.rulebook))
        notes += [
            f"Not judged: {one}." for one in dict.fromkeys((*(why for *_, why in result.not_judged), *result.silent))
        ]
        if result.refused:
            notes.append(f"Not judged: {result.refused}.")
        if result.unbent:
            notes.append(f"Load off the middle not judged: {result.unbent}.")
        notes += self._told([], ask, self.rulebook, "conditions", column) or ()
        if values["made"] == "solid":
            notes.append("A solid post has no plies; the slider of the post plies does nothing now.")
        if result.least_pad and not gates:
            notes.append(self._other_soils(values, result))
        push, off = one_bay_empty(result.beam, column.width)
        if values["ends"] == 2 and off > 0:
            notes.append(
                "Both beam ends are taken as full at once. With one of them empty of all but its dead load, "
                f"{show(push, 'force', self.system)} stand {show(off, 'small length', self.system)} off the "
                "middle, along the beam and so across the post's width. That is not judged here: ask the engineer."
            )
        notes.append(
            f"Values of {column.material.name}: {column.material.source}, {column.material.verified}. "
            "Soil values are presumed."
        )
        notes.append(CAUTION)
        return tuple(notes)

    def scene(self, values, result, ghost, gates=(), frame="page"):
        """Draw the post and its curves, with each check where it comes nearest its limit."""
        system, column, member = self.system, result.column, result.beam.member
        greatest = _GREATEST[values["size"]]
        key = tuple(values[name] for name in _OF_CURVES)
        curves = ()
        if not gates and result.carries is not None:
            curves = tuple(
                PostCurve(*curve, values["made"] == "solid" or curve[0] == str(column.plies))
                for curve in self.curves((*key, result.most.combination.time_factor))
            )
        view = PostView(
            title=titled(words.title(result, gates, system), values, gates) + words.blocks_asked(values, gates),
            plies=column.plies,
            ply_width=column.ply_width,
            post_depth=column.depth,
            height=column.height,
            height_text=f"post {show(column.height, 'length', system)} tall",
            beam_plies=member.plies,
            beam_ply_width=member.ply_width,
            beam_depth=member.depth,
            ends=values["ends"],
            plate_thickness=_PLATE if result.on_plate else 0.0,
            pad_side=values["pad"],
            pad_thickness=result.least_pad.thickness if result.least_pad else _PAD_DRAWN,
            held=values["held"],
            bows=words.bows(result, values),
            eccentricity=values["eccentricity"],
            load_text=show(result.axial, "force", system),
            pressure_text=show(result.soil_pressure.asked, "area load", system) if result.soil_pressure else "",
            marks=() if gates else words.marks(result),
            curves=curves,
            load=result.axial,
            carried_text=words.carried(result, gates, system),
            asked_text=f"asked {show(result.axial, 'force', system)}",
            greatest_load=greatest,
            greatest_height=_TALLEST,
            load_ticks=words.load_ticks(greatest, system),
            height_ticks=words.height_ticks(system),
            load_unit="lb" if system == "us" else "kN",
            note=words.note(values, result, gates),
            previous=None if ghost is None else PreviousPost(ghost.column.width, ghost.column.height, ghost.axial),
        )
        return draw_post(view, frame)


def _side(value, system):
    """A length that is asked for, to the next half inch or centimetre up."""
    step = 0.5 * inch if system == "us" else 10.0
    return show(ceil(value / step - 1e-6) * step, "section length", system, 2 if system == "us" else None)


hold(globals())
