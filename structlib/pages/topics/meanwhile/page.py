"""What holds it meanwhile? What is asked of temporary walls while a wall is out. Demands, and no design."""

from dataclasses import dataclass
from functools import cached_property, lru_cache

import numpy

from structlib.ground.refusals import OutsideRule
from structlib.ground.showing import show
from structlib.ground.units import ft, inch, plf, psf
from structlib.house.bays import floor_on_a_wall
from structlib.house.meanwhile import JoistDemand, WallOut, joists_at, wall_out
from structlib.mechanics import shoring
from structlib.pages.kit import verdict
from structlib.pages.kit.controls import Box, Page, Pick, Shown, Slide, Steps
from structlib.pages.kit.door import hold
from structlib.pages.kit.verdict import CAUTION
from structlib.pages.kit.woods import SPACINGS, pieces
from structlib.pictures.drawings.meanwhile import MeanwhileView, TemporaryWall, draw_meanwhile
from structlib.rules.check import BeamMember, Rulebook, Seat
from structlib.rules.choice import RULEBOOK
from structlib.rules.members import ask

_WAYS = (
    ("middle: cut joists", "cut"),
    ("middle: in one piece", "continuous"),
    ("outside wall", "outside"),
)
_BELOW = (
    ("joists across it", "across"),
    ("a joist along it", "along"),
    ("a slab", "slab"),
)
_WOOD = "fir"
SLAB = 4 * inch  # the slab of the examples; nobody has measured the reader's
_AT = 1 * ft  # a place along the small house, which is alike everywhere
STRIP = 4 * ft  # a stretch of temporary wall, for saying how much comes together in one place

GATE = (
    "What holds the house meanwhile is a design of its own, by a licensed engineer, with a drawing of its own. "
    "Only what is asked of it is shown here; no shoring is sized or chosen."
)


@dataclass(frozen=True)
class Asked:
    """What is asked while the wall is out [N/mm of wall]: the way of the load, one joist of it, and one before and below.

    ``joist`` is the one at the left of the wall, or in one piece over it. ``today`` is the same joist with the wall in
    place, ``landed`` what a joist of the floor below gets, ``design`` the load of one joist [N/mm].
    """

    found: WallOut
    joist: JoistDemand
    today: JoistDemand
    landed: shoring.Landed
    name: str
    design: float

    @property
    def temporary(self):
        """Name of the left one of the temporary walls."""
        return self.found.temporary[0]

    @property
    def stays(self):
        """Name of the wall that stays at the left."""
        return self.joist.holders[0]

    @cached_property
    def wall(self):
        """What the wall had."""
        return self.found.before.line_on(self.found.wall, _AT).sum_for_equilibrium_only()

    @cached_property
    def each(self):
        """What one temporary wall has, with people everywhere."""
        return self.found.out.line_on(self.temporary, _AT).sum_for_equilibrium_only()

    @property
    def count(self):
        """How many temporary walls there are."""
        return len(self.found.temporary)

    @cached_property
    def together(self):
        """What all temporary walls have, with people everywhere."""
        return sum(self.found.out.line_on(name, _AT).sum_for_equilibrium_only() for name in self.found.temporary)

    @cached_property
    def ratio(self):
        """What they have together, over what the wall had [-]."""
        return self.together / self.wall

    @cached_property
    def most(self):
        """What one temporary wall has, with people where they ask most of it."""
        return self.joist.most(self.temporary)

    @cached_property
    def far(self):
        """What the wall that stays keeps, with people everywhere."""
        return self.joist.push(self.stays, self.joist.full)

    @cached_property
    def far_empty(self):
        """What the wall that stays keeps, with nobody there."""
        return self.joist.push(self.stays, self.joist.empty)

    @cached_property
    def far_least(self):
        """What the wall that stays keeps, with people where they lift most."""
        return self.joist.least(self.stays)

    @cached_property
    def uplift(self):
        """What must hold the joists down on the wall that stays; 0 where nothing must."""
        return max(0.0, -self.far, -self.far_empty, -self.far_least)

    @property
    def moves(self):
        """How far the joists move where the wall was, downward positive [mm]."""
        return self.joist.full.deflection(-self.joist.start)

    @cached_property
    def shape(self):
        """Places over the whole drawn floor, and the joists' shape there; cut joists are alike on both sides [mm]."""
        span = -self.joist.start
        places = numpy.linspace(0.0, span * self.count, 97)
        cut = self.count == 2 and self.joist.beam.length < 1.5 * span
        along = numpy.minimum(places, 2 * span - places) if cut else places
        return tuple(map(float, places)), tuple(map(float, self.joist.full.deflection(along)))

    @property
    def along(self):
        """What lands on one joist along a temporary wall, over its own load [-]."""
        return self.most / self.design

    @property
    def strip(self):
        """What comes down on a stretch of temporary wall [N]."""
        return self.most * STRIP


class MeanwhilePage(Page):
    """The bench of a wall that is out: how the joists run, where the temporary wall stands, what lands where."""

    def __init__(self, system: str = "us", rulebook: Rulebook = RULEBOOK):
        self.system, self.rulebook = system, rulebook
        self.asked = lru_cache(maxsize=64)(self._asked)

    def controls(self, values):
        depths = tuple(depth for depth, *_ in pieces(_WOOD))
        return (
            Slide("span", "Joist span", "length", 6 * ft, 20 * ft, 3 * inch, 12 * ft),
            Steps("depth", "Joist depth", "section length", depths, 9.25 * inch),
            Slide("plies", "Plies", "count", 1, 3, 1, 1),
            Pick("way", "Wall out", _WAYS, "cut"),
            Slide("offset", "Distance", "length", 1 * ft, 5 * ft, 1 * inch, 2 * ft),
            Box("dead", "Dead load", "area load", 1 * psf, 100 * psf, 10 * psf),
            Box("live", "Live load", "area load", 0.0, 100 * psf, 40 * psf),
            Box("above", "On joist ends", "line load", 0.0, 5000 * plf, 0.0),
            Pick("spacing", "Joists every", SPACINGS, 16 * inch),
            Pick("below", "Stands on", _BELOW, "across"),
        )

    def _asked(self, items):
        """What is asked by values as pairs: a small house is followed with its wall out."""
        values = dict(items)
        spacing, offset = values["spacing"], values["offset"]
        depth, ply_width, name, material = min(pieces(_WOOD), key=lambda piece: abs(piece[0] - values["depth"]))
        plies, seat = int(values["plies"]), Seat(1.5 * inch, "post")
        one = dict(
            spacing=spacing, member=BeamMember(material, ply_width, depth, plies, seat, seat, unbraced_length=0.0)
        )
        floor = dict(
            span=values["span"], sides=1 if values["way"] == "outside" else 2, dead=values["dead"], live=values["live"]
        )
        house = floor_on_a_wall(
            **floor, joists="continuous" if values["way"] == "continuous" else "cut", above=values["above"]
        )
        found = wall_out(house, "wall", offset)
        joist, today = (
            joists_at(path, level, _AT, **one)[0]
            for path, level in ((found.out, found.caught[0]), (found.before, "floor"))
        )
        # the floor below is the same floor, its joists cut over a wall under the one that comes out
        below = today
        if values["way"] == "continuous":
            below = joists_at(found.before, "floor", _AT, cut=True, **one)[0]
        return Asked(
            found=found,
            joist=joist,
            today=today,
            landed=below.landed(-offset, joist.most(found.temporary[0])),
            name=name if plies == 1 else f"{plies}-{name}",
            design=(values["dead"] + values["live"]) * spacing,
        )

    def compute(self, values, before=None, frame="page"):
        now = self.asked(tuple(values.items()))
        ghost = self.asked(tuple(before.items())) if before else None
        wood = now.joist.member.material
        return Shown(
            self.scene(values, now, before, ghost, frame),
            ("what is asked meanwhile", "demand", "compare"),
            self.rows(values, now),
            self.notes(values),
            self.gates(values, now),
            known=((f"E of {wood.name}", wood.verified), ("loads", verdict.ENTERED)),
        )

    def gates(self, values, now):
        """Return the reasons to stop and call an engineer; there is always one."""
        gates = [GATE]
        if now.uplift > 0:
            gates.append(
                "The joists want to rise off the wall that stays. A lever without a hold-down tips: an engineer "
                "decides before anything moves."
            )
        if values["above"] > 0:
            gates.append(
                "Something stands on the joist ends. Whether they may carry it as levers, or it must be held on "
                "its own, is the engineer's first question."
            )
        if values["below"] == "slab":
            gates.append(
                "A slab is a floor, not a footing. What is under it, nobody has seen: for the engineer to judge."
            )
        return tuple(gates)

    def rows(self, values, now):
        """Return every demand as a row of text."""
        landed = self._landed_rows(values, now)
        strip = (
            f"on {show(STRIP, 'length', self.system)} of temporary wall",
            show(now.strip, "force", self.system),
            "",
        )
        last = (strip, *landed) if values["below"] == "slab" else (*landed, strip)
        return (*self._wall_rows(values, now), *self._joist_rows(now), *last)

    def _wall_rows(self, values, now):
        per_foot, way = (lambda value: show(value, "line load", self.system)), values["way"]
        today = {"cut": "half of each span", "continuous": "10/8 of a span", "outside": "half the span"}[way]
        stays = "far wall" if way == "outside" else "each outside wall"
        lever = "" if way == "continuous" else f"{times(now.ratio)} its side's share"
        rows = [
            ("the wall that is out had", per_foot(now.wall), today),
            ("each temporary wall" if now.count == 2 else "the temporary wall", per_foot(now.each), lever),
        ]
        if way == "continuous":
            # cut joists ask most of a temporary wall with people everywhere
            least = now.joist.least(now.temporary)
            rises = "the joists rise off it" if least < 0 else ""
            rows += [
                ("one of them, people at the worst places", per_foot(now.most), "this is followed down"),
                ("the same, people on the other side only", per_foot(least), rises),
            ]
        rows.append(("all temporary walls", per_foot(now.together), f"{times(now.ratio)} the wall's"))
        for where, push in (
            ("", now.far),
            (", floor empty", now.far_empty),
            (", people at the worst places", now.far_least),
        ):
            rows.append((f"{stays} keeps{where}", per_foot(push), "uplift: it must be held down" if push < 0 else ""))
        if way != "continuous":
            lifts = now.count * shoring.tip_load_that_lifts_the_far_end(
                line_load=values["dead"], span=values["span"], offset=values["offset"]
            )
            rows.append(("load on the ends that lifts the far end", per_foot(max(0.0, lifts)), "floor empty"))
        return rows

    def _joist_rows(self, now):
        moment = lambda value: show(abs(value), "moment", self.system)  # noqa: E731
        stress = lambda value: show(abs(value) / now.joist.member.section_modulus, "stress", self.system)  # noqa: E731
        most, today = now.joist.greatest_moment, now.today.full.extremes.moment.value
        return (
            ("moment in a joist over it", moment(now.joist.envelope.hogging.value), "its top is stretched"),
            ("greatest moment in a joist", moment(most), f"today {moment(today)}"),
            (f"bending stress in a {now.name}", stress(most), f"today {stress(today)}"),
            (
                "joists move where the wall was",
                show(abs(now.moves), "small length", self.system),
                ("down" if now.moves >= 0 else "up") + ", springing part",
            ),
        )

    def _landed_rows(self, values, now):
        landed, laid_out = now.landed, lambda share: f"{times(share)} what it was laid out for"
        if values["below"] == "across":
            return (
                (
                    "moment in a joist below",
                    show(landed.moment, "moment", self.system),
                    f"{laid_out(landed.moment_share)}, nobody on that floor",
                ),
                ("push at its end", show(landed.shear, "force", self.system), laid_out(landed.shear_share)),
            )
        if values["below"] == "along":
            return (("on one joist below, along it", show(now.most, "line load", self.system), laid_out(now.along)),)
        side = lambda value: show(value, "section length", self.system)  # noqa: E731
        told = f"under a {side(SLAB)} slab, if that came down on {side(12 * inch)} square"
        return ((told, *self.under_slab(now.strip, 12 * inch, "no soil is judged")),)

    def under_slab(self, load, plate, told):
        """Return what a load asks of the soil under the slab of the examples, or why this rulebook does not say.

        ``load``, ``plate`` [N, mm].
        """
        try:
            pressure = ask(self.rulebook, "slab_pressure", load, plate, SLAB)
        except OutsideRule as refusal:
            return "", f"Not judged: {refusal}"
        return show(pressure, "area load", self.system, 0 if self.system == "us" else None), told

    def notes(self, values):
        """Return what must be said below the numbers."""
        notes = []
        if values["way"] == "continuous":
            notes.append(
                "The two temporary walls stand near each other, so it matters where people are: with people "
                "on one side only, the wall there gets far more, and the joists may rise off the other."
            )
        else:
            notes.append("The far end is drawn as if the wall there could hold the joist down. Most cannot.")
        if values["below"] == "across":
            notes.append(
                "The floor below is taken as the same floor: same span and spacing, laid out for the same loads, "
                "with a wall under the one that comes out. Nobody is on it: people there come on top. "
                "A share below 1 is no permission: shear, seats, the wall below and the state of the wood are not in it."
            )
        material = pieces(_WOOD)[0][3]
        notes += [
            f"E for the shape: {material.species} {material.grade}, {material.verified}. Pushes do not depend on it, "
            "except that all joists are alike.",
            CAUTION,
        ]
        return tuple(notes)

    def scene(self, values, now, before=None, ghost=None, frame="page"):
        """Draw the floor while the wall is out."""
        system, way, span = self.system, values["way"], values["span"]
        per_foot = lambda value: show(value, "line load", system)  # noqa: E731
        length = span if way == "outside" else 2 * span
        same = before is not None and before["way"] == way and before["span"] == span
        x, sag = now.shape
        # cut joists ask most with people everywhere; joists in one piece with people on some stretches only
        by_patterns = way == "continuous" and now.most > now.each * (1 + 1e-9)
        push = f"up to {per_foot(now.most)}" if by_patterns else per_foot(now.each)
        view = MeanwhileView(
            title=_title(values, now, per_foot),
            length=length,
            out=span,
            depth=values["depth"],
            cut=way != "continuous",
            far=(0.0,) if way == "outside" else (0.0, length),
            walls=tuple(TemporaryWall(place, f"temporary: {push}") for place in _places(values)),
            far_text=_far_text(way, now, per_foot, frame),
            uplift=now.uplift > 0,
            floor_text=f"floor {show(values['dead'] + values['live'], 'area load', system)}",
            above_text=f"on the ends {per_foot(values['above'])}" if values["above"] else "",
            before_text=f"the wall that is out had {per_foot(now.wall)}",
            together_text=_together(now, per_foot, by_patterns),
            below=values["below"],
            below_text=_below_text(values, now, system),
            x=x,
            sag=sag,
            sag_text=f"{show(abs(now.moves), 'small length', system)} {'down' if now.moves >= 0 else 'up'} at the wall",
            previous=_places(before) if same and _places(before) != _places(values) else (),
            previous_sag=ghost.shape[1] if same else (),
            note="Thick arrows: demands, people at the worst places for each."
            if by_patterns
            else "Arrows are demands. What holds them is an engineer's design.",
        )
        return draw_meanwhile(view, frame)


def _places(values):
    span, offset = values["span"], values["offset"]
    return (span - offset,) if values["way"] == "outside" else (span - offset, span + offset)


def times(ratio: float):
    """Write how many times something is."""
    return f"{ratio:.2f} x" if ratio < 9.95 else f"{ratio:.1f} x"


def _title(values, now, per_foot):
    if now.uplift > 0:
        return f"The joists tip: {per_foot(now.uplift)} must hold them down at the far end"
    if values["way"] == "continuous":
        return f"Two temporary walls carry {now.ratio:.2f} times what the one wall had"
    who = "Each temporary wall" if now.count == 2 else "The temporary wall"
    return f"{who} carries {now.ratio:.2f} times what the wall took from that side"


def _far_text(way, now, per_foot, frame):
    who = "far wall" if way == "outside" else "outside walls"
    if now.uplift > 0:
        empty = -now.far_empty >= now.uplift * (1 - 1e-9)
        held = f"hold down {per_foot(now.uplift)}"
        return held if frame == "wide" else f"{who}: {held}" + (" (empty floor)" if empty else "")
    if frame == "wide":
        return f"{who}: {per_foot(now.far)}"
    told = "the wall at the far end keeps" if way == "outside" else f"{who} that stay keep"
    return f"{told} {per_foot(now.far)}"


def _together(now, per_foot, by_patterns=False):
    if now.count == 1:
        return f"the temporary wall has {now.ratio:.2f} times that"
    if by_patterns:
        return f"people everywhere: both {per_foot(now.together)}, {now.ratio:.2f} times that"
    return f"both together {per_foot(now.together)}, {now.ratio:.2f} times that"


def _below_text(values, now, system):
    if values["below"] == "across":
        return f"below: a joist is asked {now.landed.moment_share:.2f} x its design moment"
    if values["below"] == "along":
        return f"below: one joist may get {now.along:.1f} x its design load"
    return f"below: {show(now.strip, 'force', system)} on {show(STRIP, 'length', system)} of slab"


hold(globals())
