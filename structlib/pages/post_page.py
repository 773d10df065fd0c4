"""Where does it come down? One beam end, the post under it, the plate, the pad and the soil."""

from dataclasses import dataclass, replace
from functools import lru_cache
from math import ceil

import numpy

from structlib.ground.lumber import find_material
from structlib.ground.refusals import OutsideRule
from structlib.ground.showing import show
from structlib.ground.units import ft, inch, lb, plf
from structlib.house.beam import BeamChoice, BeamJob, TypedLoad, check_beam
from structlib.house.file import demo_house
from structlib.house.path import follow
from structlib.ground.sizes import dressed_size
from structlib.mechanics.beams import LineLoad
from structlib.pages import post_words as words
from structlib.pages import verdict
from structlib.pages.beam_page import CAUTION, beam_evidence
from structlib.pages.comes_down import comes_down, comes_down_pick, titled, without_load
from structlib.pages.controls import Box, Page, Pick, Shown, Slide, Steps
from structlib.pages.door import hold
from structlib.pages.woods import IN_USE, in_use, in_use_notes, pieces, wood
from structlib.pictures.drawings.post import PostCurve, PostView, PreviousPost, draw_post
from structlib.rules.check import Seat
from structlib.rules.us import columns, footings
from structlib.rules.us.book import RULEBOOK
from structlib.rules.us.fastening import post_top_restraint
from structlib.rules.us.service import in_service

_BEAM_WOOD = "fir"
_TALLEST = 12 * ft
_PLATE = 1.5 * inch
_LOADS = (("dead", "dead"), ("live", "live"), ("roof live", "roof_live"), ("snow", "snow"))
_POST_WOODS = tuple(
    (wood(key).label.split(",")[0], key) for key in ("hem-fir", "spf", "fir", "southern pine")
)
_SIZES = (("2x4, solid 4x4", "4"), ("2x6, solid 4x6", "6"), ("2x8, solid 4x8", "8"))
_MADE = (("plies, nailed", "nailed"), ("plies, bolted", "bolted"), ("one solid 4x", "solid"))
_HELD = (("held at its ends", "none"), ("held at mid-height", "middle"), ("held all along (wall)", "all"))
_ENDS = (("one beam end", 1), ("two beam ends", 2))
_PLATES = {
    "spf": ("Spruce-Pine-Fir", "No.1/No.2"),
    "hem-fir": ("Hem-Fir", "No.2"),
    "fir": ("Douglas Fir-Larch", "No.2"),
}
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

    ``refused`` is the sentence of a column rule that does not cover the post; the checks then are those that
    can still be asked. ``axial`` [N] belongs to ``combination``. ``above`` is the check that governs the beam
    above; ``least`` the code's least size, where the post stands free; ``pad`` what the code asks of the pad.
    """

    beam: object
    column: columns.Column
    axial: float
    combination: object
    greatest: float
    above: object
    beam_seat: object
    post: tuple
    least: object
    plate: object
    soil_pressure: object
    pad: tuple
    soil: object
    refused: str
    unbent: str

    @property
    def checks(self):
        """Every check of the page, from the beam down [-]."""
        found = (self.above, self.beam_seat, *self.post, self.least, self.plate, self.soil_pressure, *self.pad)
        return tuple(check for check in found if check is not None)

    @property
    def governs(self):
        """The deciding check with the greatest share [-]."""
        return verdict.worst(self.checks)


class PostPage(Page):
    """The bench of the post: the same beam end feeds it that the three sliders describe.

    Parameters
    ----------
    house : structlib.house.plan.House or None
        The house whose wall the beam carries; the invented demo house when None [-].
    rulebook : structlib.rules.check.Rulebook
        The rules that combine the loads [-].
    system : str
        Units of the reader: 'us' or 'metric' [-].
    """

    def __init__(self, house=None, rulebook=RULEBOOK, system="us"):
        self.house = demo_house() if house is None else house
        self.rulebook, self.system = rulebook, system
        path = follow(self.house)
        self.total = path.line_on(*(path.first_bay() if self.house.beams else (path.opening().name, path.opening().middle)))
        self.result = lru_cache(maxsize=64)(self._result)
        self.curves = lru_cache(maxsize=32)(self._curves)

    def controls(self, values):
        depths = tuple(depth for depth, *_ in pieces(_BEAM_WOOD))
        load = dict(dimension="line load", low=0.0, high=3000 * plf)
        soils = tuple((name, name) for name in footings.soil_names())
        return (
            Slide("span", "Beam span", "length", 4 * ft, 16 * ft, 3 * inch, 7 * ft),
            Steps("depth", "Beam depth", "section length", depths, depths[-1]),
            Slide("plies", "Beam plies", "count", 1, 5, 1, 4),
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
            Pick("soil", "Soil", (*soils, ("not known, or fill", UNKNOWN)), soils[0][0]),
            *IN_USE,
        )

    def column(self, values):
        """Return the post that a set of values describes.

        Parameters
        ----------
        values : dict
            Values of the controls [any].

        Returns
        -------
        structlib.rules.us.columns.Column
            The post [-].
        """
        solid = values["made"] == "solid"
        name = f"{4 if solid else 2}x{values['size']}"
        piece, height = dressed_size(name), values["height"]
        facts = in_use(values)
        wet = facts.pop("wet")
        return columns.Column(
            in_service(wood(values["post_wood"]).material(name), **facts),
            piece.width,
            piece.depth,
            height,
            plies=1 if solid else int(values["post_plies"]),
            fastening="bolted" if values["made"] == "bolted" else "nailed",
            held_width={"none": None, "middle": height / 2, "all": 0.0}[values["held"]],
            wet=wet,
        )

    def beam(self, values, column):
        """Return the beam above, checked: it sits on the post, or on half of it beside another beam end.

        Parameters
        ----------
        values : dict
            Values of the controls [any].
        column : structlib.rules.us.columns.Column
            The post [-].

        Returns
        -------
        structlib.house.beam.BeamResult
            The beam, solved for every combination of loads [-].
        """
        depth, ply_width, name, material = min(
            pieces(_BEAM_WOOD), key=lambda piece: abs(piece[0] - values["depth"])
        )
        seat, span, plies = Seat(column.width / values["ends"], "post"), values["span"], int(values["plies"])
        loads = tuple(
            TypedLoad(kind, LineLoad(0.0, span, values[key])) for kind, key in _LOADS if values[key]
        )
        job = BeamJob(span - seat.length, seat, seat, loads, unbraced_length=16 * inch)
        return check_beam(
            job, BeamChoice(material, ply_width, depth, plies, f"{plies}-{name}"), self.rulebook
        )

    def _result(self, items):
        values = dict(items)
        column = self.column(values)
        beam = self.beam(values, column)
        own = column.material.weight_density * column.area * column.height
        demands = [
            columns.ColumnDemand(
                one.combination,
                values["ends"] * one.solution.reactions[-1].force + own * one.combination.factor("dead"),
                values["eccentricity"],
            )
            for one in beam.demands
        ]
        post, refused, unbent = _post_checks(column, demands)
        greatest = max(demands, key=lambda one: one.axial)
        named = next((check.combination for check in post if check.name == "compression"), None)
        most = next((one for one in demands if one.combination.name == named), greatest)
        plate = None
        if values["plate"] != "steel":
            # the post may stand at an end of the plate: no help from neighboring fibres is counted
            plate = columns.plate_check(
                column, demands, find_material(*_PLATES[values["plate"]]), wet=column.wet
            )
        soil = footings.find_soil(values["soil"] if values["soil"] != UNKNOWN else footings.soil_names()[0])
        base = min(column.width, column.depth)
        pad = footings.pad_checks(
            load=greatest.axial,
            side=values["pad"],
            thickness=footings.pad_thickness(side=values["pad"], base=base),
            soil=soil,
            base=base,
            combination=greatest.combination.name,
        )
        return PostResult(
            beam,
            column,
            most.axial,
            most.combination,
            greatest.axial,
            replace(beam.governs, name=f"beam above, {beam.governs.name}"),
            replace(_on_the_post(beam, column), name="beam crushed on the post"),
            post,
            columns.least_size_check(column) if values["held"] == "none" else None,
            plate,
            replace(pad[0], name="soil under the pad"),
            # the page makes the pad as thick as its reach asks, so that is no question here
            tuple(one for one in pad if one.name in ("least reach", "least width")),
            soil,
            refused,
            unbent,
        )

    def _curves(self, key):
        """What one to five plies, or the solid post, carry: name, heights of the picture, loads."""
        *chosen, time_factor = key
        values = dict(zip(_OF_CURVES, chosen), height=8 * ft)
        size, made, held = values["size"], values["made"], values["held"]
        heights = numpy.linspace(1 * ft, _TALLEST, 45)
        found = []
        for count in (1,) if made == "solid" else (1, 2, 3, 4, 5):
            column = self.column({**values, "post_plies": count})
            if held == "middle":
                # a brace at mid-height stands elsewhere for every height, so each height is asked apart
                loads = [_carries(column, numpy.array([one]), time_factor, one / 2)[0] for one in heights]
            else:
                loads = _carries(column, heights, time_factor, column.held_width)
            found.append(
                (f"4x{size}" if made == "solid" else str(count), tuple(heights), tuple(map(float, loads)))
            )
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
            self.notes(values, result),
            gates,
            known=self.known(result),
        )

    def known(self, result):
        """List all that the page used, each with how well it is known.

        Parameters
        ----------
        result : PostResult
            The post as checked [-].

        Returns
        -------
        tuple of (str, str)
            What, and how it is known [-].
        """
        soil, wood = result.soil, result.column.material
        more = (f"soil, {soil.name}", soil.verified), (wood.name, wood.verified)
        return (*more, *beam_evidence(result.beam, result.checks))

    def gates(self, values, result):
        """Return the reasons to stop and call an engineer before anything is chosen here.

        Parameters
        ----------
        values : dict
            Values of the controls [any].
        result : PostResult
            The post as checked [-].

        Returns
        -------
        tuple of str
            One sentence a gate; empty when none [-].
        """
        gates = [*comes_down(values)[0]]
        if values["soil"] == UNKNOWN:
            gates.append(words.SOIL_NOT_KNOWN)
        if result.beam.member.width > result.column.depth * (1 + 1e-9):
            gates.append(words.HANGS_PAST)
        if values["plate"] != "steel" and values["blocks"] == "joists":
            gates.append(words.NO_BLOCKS)
        return tuple(gates)

    def rows(self, values, result, gates=()):
        """Return the checks as rows of text, from the beam end down to the soil.

        Parameters
        ----------
        values : dict
            Values of the controls [any].
        result : PostResult
            The post as checked [-].
        gates : tuple of str
            Gates that withdraw the verdicts; what is asked stays [-].

        Returns
        -------
        tuple of tuple of str
            Name, asked, can give, share, loads and clause [-].
        """
        system = self.system
        rows = [
            (
                "load on the post",
                show(result.greatest, "force", system),
                "",
                "",
                f"{result.combination.name}, own weight of beam and post in it",
            ),
            self._row(result.above, result, gates),
            self._row(result.beam_seat, result, gates),
        ]
        if result.refused:
            rows.append(("post", show(result.axial, "force", system), "", "not judged", result.refused))
        rows += [self._row(check, result, gates) for check in result.post]
        if result.unbent:
            rows.append(
                (
                    "load off the middle",
                    show(values["eccentricity"], "section length", system),
                    "",
                    "not judged",
                    result.unbent,
                )
            )
        rows += [self._row(check, result, gates) for check in (result.least, result.plate) if check is not None]
        if result.plate is not None:
            asked = show(result.greatest, "force", system)
            rows.append(("solid blocks below that plate", asked, "", "", words.BLOCKS_WANTED))
        rows += [self._row(check, result, gates) for check in (result.soil_pressure, *result.pad)]
        rows += self._pad_rows(values, result, gates)
        if values["made"] != "solid" and not gates:
            rows.append(self._fewest(values, result))
        held = post_top_restraint(axial=result.greatest)
        rows.append(
            (
                "hold the top sideways for",
                show(held.force, "force", system),
                "",
                "",
                f"common practice; {held.clause}",
            )
        )
        return tuple(rows)

    def _row(self, check, result, gates):
        share = "" if gates else verdict.share_text(check, result.checks)
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
        base = min(result.column.width, result.column.depth)
        thick = footings.pad_thickness(side=values["pad"], base=base)
        rows = [
            (
                "pad thickness, plain concrete",
                _side(thick, self.system),
                "",
                "",
                "reach past the post; IRC R403.1.1",
            )
        ]
        if gates:
            return rows
        rows.append(
            (
                "pad side asked, this soil",
                _needed(result, thick, result.soil, self.system),
                _side(values["pad"], self.system),
                "",
                f"{show(result.soil.pressure, 'area load', self.system)} presumed; "
                f"{result.soil.clause.split(' (')[0]}",
            )
        )
        return rows

    def _other_soils(self, values, result):
        thick = footings.pad_thickness(
            side=values["pad"], base=min(result.column.width, result.column.depth)
        )
        others = [footings.find_soil(name) for name in footings.soil_names() if name != result.soil.name]
        told = ", ".join(
            f"{_needed(result, thick, one, self.system)} on {show(one.pressure, 'area load', self.system)}"
            for one in others
        )
        return f"Pad side asked on other soils: {told}."

    def _fewest(self, values, result):
        column = result.column
        try:
            count = str(
                columns.fewest_plies(
                    column.material,
                    load=result.axial,
                    time_factor=result.combination.time_factor,
                    ply_width=column.ply_width,
                    depth=column.depth,
                    height=column.height,
                    fastening=column.fastening,
                    held_width=column.held_width,
                    wet=column.wet,
                )
            )
        except OutsideRule:
            count = "more than 5"
        return (
            "fewest plies for this load",
            count,
            str(column.plies),
            "",
            "in the middle; compression alone",
        )

    def notes(self, values, result):
        """Return what must be said below the numbers.

        Parameters
        ----------
        values : dict
            Values of the controls [any].
        result : PostResult
            The post as checked [-].

        Returns
        -------
        tuple of str
            One sentence a note [-].
        """
        column = result.column
        notes = list(in_use_notes(values, column.material, "The foot of this post is near soil"))
        if result.refused:
            notes.append(f"Not judged: {result.refused}.")
        if result.unbent:
            notes.append(f"Load off the middle not judged: {result.unbent}.")
        if column.plies > 1:
            notes.append(
                f"A built-up post: its plies must be {column.fastening} by NDS 15.3.3 or 15.3.4, and every ply "
                "must bear at both ends. See Connections below."
            )
        if values["made"] == "solid":
            notes.append("A solid post has no plies; the slider of the post plies does nothing now.")
        if not self.gates(values, result):
            notes.append(self._other_soils(values, result))
        push, off = _one_side_loaded(result)
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
        """Draw the post and its curves, with each check where it comes nearest its limit.

        Parameters
        ----------
        values : dict
            Values of the controls [any].
        result : PostResult
            The post as checked [-].
        ghost : PostResult or None
            The post before the last change [-].
        gates : tuple of str
            Gates that withdraw the verdicts [-].
        frame : str
            Shape of the picture: 'page', 'wide' or 'tall' [-].

        Returns
        -------
        structlib.pictures.scene.Scene
            The picture [-].
        """
        system, column, member = self.system, result.column, result.beam.member
        base = min(column.width, column.depth)
        greatest = _GREATEST[values["size"]]
        key = tuple(values[name] for name in _OF_CURVES)
        curves = tuple(
            PostCurve(*curve, values["made"] == "solid" or curve[0] == str(column.plies))
            for curve in self.curves((*key, result.combination.time_factor))
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
            plate_thickness=0.0 if result.plate is None else _PLATE,
            pad_side=values["pad"],
            pad_thickness=footings.pad_thickness(side=values["pad"], base=base),
            held=values["held"],
            bows=words.bows(result, values),
            eccentricity=values["eccentricity"],
            load_text=show(result.axial, "force", system),
            pressure_text=show(result.soil_pressure.asked, "area load", system),
            marks=() if gates else words.marks(result),
            curves=() if gates else curves,
            load=result.axial,
            carried_text=words.carried(result, gates, system),
            asked_text=f"asked {show(result.axial, 'force', system)}",
            greatest_load=greatest,
            greatest_height=_TALLEST,
            load_ticks=words.load_ticks(greatest, system),
            height_ticks=words.height_ticks(system),
            load_unit="lb" if system == "us" else "kN",
            note=words.note(values, result, gates),
            previous=None
            if ghost is None
            else PreviousPost(ghost.column.width, ghost.column.height, ghost.axial),
        )
        return draw_post(view, frame)


def _post_checks(column, demands):
    """The checks of the post, and the sentences of the rules that do not cover it."""
    try:
        return columns.column_checks(column, demands), "", ""
    except OutsideRule as refusal:
        sentence = str(refusal)
    straight = [columns.ColumnDemand(one.combination, one.axial) for one in demands]
    try:
        return columns.column_checks(column, straight), "", sentence
    except OutsideRule as refusal:
        slender = tuple(columns.slenderness_check(column, way=way) for way in columns.WAYS)
        return slender, str(refusal), ""


def _on_the_post(beam, column):
    """The crushing of the beam on the post; where the beam is wider than the post is deep, on that part."""
    check = max((one for one in beam.checks if one.kind == "bearing"), key=lambda one: one.share)
    over = max(1.0, beam.member.width / column.depth)
    return replace(check, asked=check.asked * over, share=check.share * over)


def _one_side_loaded(result):
    """Push on the post, and how far off its middle, when one of two beam ends brings its dead load only."""
    pushes = [one.solution.reactions[-1].force for one in result.beam.demands]
    full, empty = max(pushes), min(pushes)
    return full + empty, (full - empty) * result.column.width / 4 / (full + empty)


def _carries(column, heights, time_factor, held_width):
    return columns.column_capacity(
        column.material,
        ply_width=column.ply_width,
        depth=column.depth,
        height=heights,
        plies=column.plies,
        time_factor=time_factor,
        fastening=column.fastening,
        held_width=held_width,
        wet=column.wet,
    ).load


def _needed(result, thickness, soil, system):
    """Side of a pad of this thickness whose load and own weight use the soil's bearing, 12 in or more."""
    side = footings.pad_side(load=result.greatest, soil_pressure=soil.pressure, thickness=thickness)
    return _side(max(side, 12 * inch), system)


def _side(value, system):
    """A length that is asked for, to the next half inch or centimetre up."""
    step = 0.5 * inch if system == "us" else 10.0
    return show(ceil(value / step - 1e-6) * step, "section length", system, 2 if system == "us" else None)


hold(globals())
