"""How big must the beam be? One opening, one beam, every check, drawn where it governs."""

from dataclasses import replace
from functools import lru_cache

from structlib.ground.lumber import find_material
from structlib.ground.showing import show
from structlib.ground.units import ft, inch, lb, plf
from structlib.house.beam import BeamChoice, BeamJob, TypedLoad, check_beam
from structlib.house.file import demo_house
from structlib.house.path import follow
from structlib.house.plies import PLY_JOINTS, doubt
from structlib.mechanics.beams import LineLoad
from structlib.pages import verdict
from structlib.pages.comes_down import comes_down, comes_down_pick, titled, without_load
from structlib.pages.controls import Box, Page, Pick, Shown, Slide, Steps
from structlib.pages.door import hold
from structlib.pages.woods import IN_USE, UNKNOWN, WOODS, in_use, in_use_notes, pieces
from structlib.pictures.drawings.opening_view import KINDS
from structlib.pictures.drawings.opening import LoadBand, Mark, OpeningView, PreviousBeam, draw_opening
from structlib.rules.check import Seat
from structlib.rules.choice import RULEBOOK

CAUTION = (
    "This page teaches and prepares. A licensed engineer, the local code and the permit decide what is built."
)

#: Key of the reader's own LVL among the woods of a page.
OWN = "own lvl"

#: What two people carry with care; a fact of the trade, with no source.
TWO_PEOPLE = 200 * lb

_BELOW = (
    ("plate of Spruce-Pine-Fir", "spf"),
    ("plate of Hem-Fir", "hem-fir"),
    ("plate of Douglas Fir-Larch", "fir"),
    ("plate, its wood not known", "plate"),
    ("end grain of jack studs", "post"),
    ("masonry", "masonry"),
    ("not looked yet", UNKNOWN),
)
_PLATES = {
    "spf": ("Spruce-Pine-Fir", "No.1/No.2"),
    "hem-fir": ("Hem-Fir", "No.2"),
    "fir": ("Douglas Fir-Larch", "No.2"),
}
_BRACES = (
    ("by joists, every 16 in", "joists"),
    ("at mid-span", "middle"),
    ("at the ends only", "ends"),
    ("all along", "all"),
    ("not known: as if at the ends only", UNKNOWN),
)
_JOINED = (("not chosen yet", UNKNOWN), *((joint.name, key) for key, joint in PLY_JOINTS.items()))
_LOADS = ("dead", "live", "roof_live", "snow")
SEAT_NOT_KNOWN = (
    "What the beam sits on was not looked at: find it before anything is chosen. Only what is asked is shown."
)
_POSITIONS = (("dropped: joists sit on it", "dropped"), ("flush: joists hang on its sides", "flush"))


class BeamPage(Page):
    """The bench of the main job: an opening in a house, and a beam to carry what comes down on it.

    Parameters
    ----------
    house : structlib.house.plan.House or None
        The house; the invented demo house when None [-].
    rulebook : structlib.rules.check.Rulebook
        The rules to judge by [-].
    system : str
        Units of the reader: 'us' or 'metric' [-].
    own_lvl : structlib.ground.lumber.Material or None
        LVL with the values of the maker's report, made by `user_lvl`; offered first among the woods [-].
    opening : str or None
        Name of the opening in the house; the first one when None [-].
    """

    def __init__(self, house=None, rulebook=RULEBOOK, system="us", own_lvl=None, opening=None):
        self.house = demo_house() if house is None else house
        self.rulebook, self.system, self.own_lvl = rulebook, system, own_lvl
        path = follow(self.house)
        self.opening = path.opening(opening)
        self.wall = path.axis(self.opening.name)
        self.total = path.line_on(self.opening.name, self.opening.middle)
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
            Pick("braced", "Top held", _BRACES, "joists"),
            Pick("position", "Position", _POSITIONS, opening.position),
            *self._seat_boxes(),
            Pick("below", "Sits on", _BELOW, self._plate()),
            Pick("joined", "Plies joined", _JOINED, UNKNOWN),
            *IN_USE,
        )

    def pieces(self, key):
        """Return every size of one of the woods that this page offers.

        Parameters
        ----------
        key : str
            Key of the wood; OWN for the reader's own LVL [-].

        Returns
        -------
        tuple of tuple
            Depth, ply width, name, material [mm, mm, -, -].
        """
        if key == OWN and self.own_lvl is not None:
            return tuple((depth, width, name, self.own_lvl) for depth, width, name, _ in pieces("lvl 2.0"))
        return pieces(key, self.rulebook)

    def _seat_boxes(self):
        """One box for both seats, or one for each end where the house has two lengths."""
        opening, ends = self.opening, dict(dimension="section length", low=0.5 * inch, high=16 * inch)
        if opening.left_seat == opening.right_seat:
            return (Box("seat", "Seat, each end", default=opening.left_seat, **ends),)
        return (Box("seat", "Seat, left end", default=opening.left_seat, **ends),
                Box("right_seat", "Seat, right end", default=opening.right_seat, **ends))

    def _plate(self):
        """What the house says of the wall among what is offered; a plate of unknown wood where it says nothing."""
        if self.wall.made_of == "masonry":
            return "masonry"
        plate = self.wall.plate
        return next((key for key, names in _PLATES.items() if plate and names[0] == plate.species), "plate")

    def job(self, values):
        """Return the opening that a set of values describes.

        Parameters
        ----------
        values : dict
            Values of the controls [any].

        Returns
        -------
        structlib.house.beam.BeamJob
            The opening and its loads [-].
        """
        left, right = values["seat"], values.get("right_seat", values["seat"])
        span = values["span"] + (left + right) / 2
        below = values["below"]
        if below in _PLATES:
            wood = find_material(*_PLATES[below])
            seat = Seat(left, "plate", wood.bearing, f"plate of {wood.species}", wood.verified)
        else:
            seat = Seat(left, "plate" if below == UNKNOWN else below)
        loads = tuple(
            TypedLoad(load_type, LineLoad(0.0, span, values[name]))
            for load_type, name in (
                ("dead", "dead"),
                ("live", "live"),
                ("roof live", "roof_live"),
                ("snow", "snow"),
            )
            if values[name]
        )
        unbraced = {"joists": 16 * inch, "middle": span / 2, "all": 0.0}.get(values["braced"], span)
        return BeamJob(
            values["span"],
            seat,
            replace(seat, length=right),
            loads,
            unbraced_length=unbraced,
            loaded_on="side" if values["position"] == "flush" else "top",
            **in_use(values),
            ply_joint=PLY_JOINTS.get(values["joined"]),
            seat_width=self.wall.thickness,
            stops=comes_down(values)[0] + ((SEAT_NOT_KNOWN,) if below == UNKNOWN else ()),
        )

    def _result(self, items):
        values = dict(items)
        depth, ply_width, name, material = min(
            self.pieces(values["wood"]), key=lambda piece: abs(piece[0] - values["depth"])
        )
        choice = BeamChoice(
            material, ply_width, depth, int(values["plies"]), f"{int(values['plies'])}-{name}"
        )
        return check_beam(self.job(values), choice, self.rulebook)

    def compute(self, values, before=None, frame="page"):
        result = self.result(tuple(values.items()))
        ghost = self.result(tuple(before.items())) if before else None
        gates = self.gates(values, result)
        withdrawn = gates or without_load(values, _LOADS)
        return Shown(
            self.scene(values, result, ghost, withdrawn, frame),
            ("check", "asked", "can give", "share", "loads and rule"),
            self.rows(result, withdrawn),
            self.notes(values, result),
            gates,
            known=beam_evidence(result, result.checks),
        )

    def gates(self, values, result):
        """Return the reasons to stop and call an engineer before anything is chosen here.

        Parameters
        ----------
        values : dict
            Values of the controls [any].
        result : structlib.house.beam.BeamResult
            The beam as checked [-].

        Returns
        -------
        tuple of str
            One sentence a gate; empty when none [-].
        """
        return result.gates

    def rows(self, result, gates=()):
        """Return the checks as rows of text.

        Parameters
        ----------
        result : structlib.house.beam.BeamResult
            The beam as checked [-].
        gates : tuple of str
            Gates that withdraw the verdicts; what is asked stays [-].

        Returns
        -------
        tuple of tuple of str
            Name, asked, can give, share, where and clause [-].
        """
        rows, checks = [], _merged(result.checks)
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
        solution = _greatest(result).solution
        left, right = solution.reactions[0].force, solution.reactions[-1].force
        ends = show(left, "force", self.system)
        if show(right, "force", self.system) != ends:
            ends += f" and {show(right, 'force', self.system)}"
        rows.append(
            ("push on each seat", ends, "", "", f"{_greatest(result).combination.name}, own weight in it")
        )
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

    def notes(self, values, result):
        """Return what must be said below the numbers.

        Parameters
        ----------
        values : dict
            Values of the controls [any].
        result : structlib.house.beam.BeamResult
            The beam as checked [-].

        Returns
        -------
        tuple of str
            One sentence a note [-].
        """
        member = result.member
        where = "Wood on masonry or near soil" if values["below"] == "masonry" else ""
        notes = list(in_use_notes(values, member.material, where, self.rulebook))
        greatest = self.opening.greatest_depth
        if values["position"] == "dropped" and member.depth > greatest * (1 + 1e-9):
            notes.append(
                f"The opening leaves {show(greatest, 'section length', self.system)} for the beam; this one is "
                f"{show(member.depth, 'section length', self.system)} deep."
            )
        length = result.job.clear_width + result.job.left.length + result.job.right.length
        if member.weight_per_length / member.plies * length > TWO_PEOPLE:
            notes.append(f"One ply is heavier than two people carry (common practice: about {show(TWO_PEOPLE, 'weight', self.system)}).")
        if values["position"] == "flush":
            notes.append(
                "Flush: the joists hang on the sides, so shear is taken in full, and the hangers must pass the "
                "load on; that is for the drawings."
            )
        if result.ply_layout is not None:
            layout = result.ply_layout
            notes.append(
                f"Plies joined by {result.job.ply_joint.name}, every "
                f"{show(layout.spacing, 'section length', self.system)} along each line: "
                f"{show(layout.load_between, 'line load', self.system)} pass from ply to ply, as if all hung on "
                f"one side ({layout.verified})."
            )
        if doubt(result.choice, self.rulebook):
            notes.append(f"Doubtful: {doubt(result.choice, self.rulebook)}.")
        repeated = [one for check in result.checks for one in check.factors if one.symbol == "C_r" and one.value > 1]
        if repeated:
            notes.append(
                f"Three or more plies of one beam count as members that share: the bending value has the "
                f"repetitive-member factor {repeated[0].value:g} in it ({repeated[0].clause})."
            )
        if result.job.left.below == "post":
            notes.append(
                "On end grain the beam's own face governs; the posts below are a check of their own."
            )
        if member.material.kind == "lvl":
            if values["wood"] != OWN:
                notes.append(
                    "LVL values here are generic and recalled; enter those of the maker's evaluation report."
                )
        notes.append(
            f"Design values of {member.material.name}: {member.material.source}, {member.material.verified}."
        )
        notes.append(CAUTION)
        return tuple(notes)

    def scene(self, values, result, ghost, gates=(), frame="page"):
        """Draw the opening, the beam in it, and each check where it comes nearest its limit.

        Parameters
        ----------
        values : dict
            Values of the controls [any].
        result : structlib.house.beam.BeamResult
            The beam as checked [-].
        ghost : structlib.house.beam.BeamResult or None
            The beam before the last change [-].
        gates : tuple of str
            Gates that withdraw the verdicts [-].
        frame : str
            Shape of the picture: 'page', 'wide' or 'tall' [-].

        Returns
        -------
        structlib.pictures.scene.Scene
            The picture [-].
        """
        system, member, job = self.system, result.member, result.job
        demand = _greatest(result)
        points = demand.solution.points(48)
        sag = _sag(result)
        load, hangs = _hangs(result, sag.name if sag else "")
        sags = sag.asked if sag else max(map(abs, hangs.deflection))
        peak = demand.solution.extremes
        greatest_shear = max(abs(peak.shear.value), 1e-9)
        view = OpeningView(
            title=titled(_title(result, gates), values, gates),
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
            clear_width_text=_clear(show(job.clear_width, "length", system)),
            flush=values["position"] == "flush",
            left_jacks=_jacks(job.left.length),
            right_jacks=_jacks(job.right.length),
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
            load_full=2000 * plf,
            load_full_text=f"full arrow {show(2000 * plf, 'line load', system)}",
            sag_x=tuple(hangs.x),
            sag_y=tuple(hangs.deflection),
            exaggeration=40.0,
            sag_text=f"true sag under {load} {show(sags, 'small length', system)} = {_span_over(job.span, sags)}",
            sag_limit=sag.given if sag else 0.0,
            sag_limit_text=f"limit {_span_over(job.span, sag.given)}, {load}" if sag else "",
            previous=None if ghost is None else _ghost(ghost, sag.name if sag else ""),
            marks=() if gates else _marks(result),
            shear_x=tuple(points.x),
            shear_y=tuple(points.shear),
            shear_text=show(greatest_shear, "force", system),
            moment_x=tuple(points.x),
            moment_y=tuple(points.moment),
            moment_text=show(abs(peak.moment.value), "moment", system),
            camera_width=16 * ft,
            camera_depth=18 * inch,
        )
        return draw_opening(view, frame)


def _span_over(span, sag):
    return f"span/{span / sag:.0f}" if sag > span / 100000 else "span/100000 or less"


def _clear(text):
    """The clear width with its word where there is room beside the picture for both."""
    return f"{text} clear" if len(text) <= 10 else text


def _jacks(seat):
    return max(1, min(5, int(seat / (1.5 * inch) + 1e-6)))


def _greatest(result):
    return max(result.demands, key=lambda demand: abs(demand.solution.extremes.moment.value))


def _sag(result):
    """The sag check that governs among those that decide: the one to draw, with its own limit; None without one."""
    return verdict.worst(check for check in result.checks if check.kind == "sag")


def _hangs(result, name):
    """Which load a sag check is of, and the beam's shape under it; all load where no such check was made."""
    check = next((one for one in result.checks if one.name == name), None)
    demand = _greatest(result)
    if check is not None:
        demand = next(one for one in result.demands if one.combination.name == check.combination)
    live = check is not None and name == "sag under live load"
    return "live load" if live else "all load", (demand.variable if live else demand.solution).points(48)


def _ghost(result, name):
    """The beam before, hanging under the same kind of load as the beam now."""
    _, points = _hangs(result, name)
    return PreviousBeam(result.member.depth, tuple(points.x), tuple(points.deflection))


def _merged(checks):
    """Left and right of the same question as one row: the end that uses more."""
    best, order = {}, []
    for check in checks:
        key = check.name.replace("left", "").replace("right", "")
        if key not in best:
            order.append(key)
        if key not in best or check.share > best[key].share:
            best[key] = check
    return [best[key] for key in order]


def _marks(result):
    """The worst check of each kind. A seat that is too short is marked where it is crushed: at the seat."""
    worst = {}
    for check in result.checks:
        kind = {"seat": "bearing"}.get(check.kind, check.kind)
        # the small allowance keeps a mark on its side when both ends use the same up to rounding
        if check.decides and kind in KINDS and (kind not in worst or check.share > worst[kind].share * (1 + 1e-9)):
            worst[kind] = check
    return tuple(
        Mark(kind, check.position, check.share, check.sentence, check is result.governs)
        for kind, check in worst.items()
    )


_ASKS = {
    "bending": "Bending",
    "shear": "Shear",
    "bearing": "Crushing at the seat",
    "seat": "Seat length",
    "sag": "Sag",
}


def _title(result, gates):
    def words(first):
        word = _ASKS.get(first.kind, first.kind.capitalize())
        if first.share > 1.0:
            return f"{word} asks {first.share:.2f} times what this beam can give"
        return f"{word} governs: {verdict.used(first.share)}"

    return verdict.headline(_merged(result.checks), gates, words)


def beam_evidence(result, checks):
    """List what a page used of one checked beam, each with how well it is known.

    Parameters
    ----------
    result : structlib.house.beam.BeamResult or structlib.house.judging.Answer
        The beam as checked [-].
    checks : iterable of structlib.rules.check.Check
        Those of its checks that the page shows [-].

    Returns
    -------
    tuple of (str, str)
        Checks, factors, load combinations, wood; and the loads, as entered [-].
    """
    combinations = ((f"loads {one.combination.name}", one.combination.verified) for one in result.demands)
    material = result.member.material
    loads = (("loads", verdict.ENTERED),)
    return verdict.evidence(checks, *combinations, (material.name, material.verified), *loads)


hold(globals())
