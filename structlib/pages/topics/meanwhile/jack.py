"""What does a jack ask? Its force against its lift, until the old support lets go."""

from dataclasses import dataclass
from functools import lru_cache

import numpy

from structlib.ground.showing import show
from structlib.ground.units import ft, inch, plf
from structlib.mechanics import formulas, jacking
from structlib.mechanics.beams import Beam, LineLoad, Support, solve
from structlib.pages.kit import verdict
from structlib.pages.kit.controls import Box, Page, Pick, Shown, Slide, Steps
from structlib.pages.kit.door import hold
from structlib.pages.kit.verdict import CAUTION
from structlib.pages.kit.woods import pieces
from structlib.pictures.drawings.jack import JackView, draw_jack
from structlib.rules.check import BeamMember, Seat

_KINDS = (("one span", "one"), ("two spans, old post", "two"))
_WOOD = "fir"
WIDEST = 3 * inch
_TICKS = {
    "us": ((0.0, "lift 0"), *((n * inch, f"{n} in") for n in (1, 2, 3))),
    "metric": ((0.0, "lift 0"), *((float(n), f"{n} mm") for n in (25, 50, 75))),
}
NEAREST = 6 * inch  # a jack needs this much room beside a post that still stands

GATE = (
    "Jacking moves a house's load by hand. Jacks, what they stand on and how far they go are for a "
    "licensed engineer; "
    "only what is asked is shown here."
)
HABIT = (
    "Lifting rates that are said in the trade are habit. No code or standard known to us gives one, and "
    "none is in "
    "these numbers."
)


@dataclass(frozen=True)
class Jacking:
    """A member on its jack [N, mm]: as it hangs today, its curve, and solved at the lift and with all of the sag lifted."""

    member: BeamMember
    beam: Beam
    jack: float
    today: object
    curve: jacking.JackCurve
    lift: float
    sag: float
    held: jacking.Held
    full: jacking.Held

    @property
    def whole(self):
        """The whole load on the member [N]."""
        return sum(load.intensity * (load.end - load.start) for load in self.beam.loads)

    @property
    def springing(self):
        """The part of the sag at the jack that springs [mm]."""
        return max(0.0, self.today.deflection(self.jack))

    @property
    def crept(self):
        """The rest of the measured sag [mm]."""
        return jacking.crept_part(measured_sag=self.sag, springing_sag=self.springing)

    def force(self, lift):
        """Return the force of the jack at a lift.

        ``lift`` [mm]; gives [N].
        """
        return max(0.0, self.curve.force(lift))

    @property
    def moments(self):
        """Moments at the jack: today, at the lift, and with all of the sag lifted [N*mm]."""
        return tuple(one.moment(self.jack) for one in (self.today, self.held.solution, self.full.solution))


class JackPage(Page):
    """The bench of a jack: a member that sags, a lift, and what that asks of jack and member."""

    def __init__(self, system: str = "us"):
        self.system = system
        self.asked = lru_cache(maxsize=64)(self._asked)

    def controls(self, values):
        depths = tuple(depth for depth, *_ in pieces(_WOOD))
        return (
            Slide("span", "Span", "length", 6 * ft, 20 * ft, 3 * inch, 14 * ft),
            Steps("depth", "Depth", "section length", depths, 9.25 * inch),
            Slide("plies", "Plies", "count", 1, 5, 1, 3),
            Slide("lift", "Lift", "small length", 0.0, WIDEST, 0.05 * inch, 0.5 * inch),
            Pick("kind", "Member", _KINDS, "one"),
            Slide("aside", "Jack aside by", "length", 0.0, 2 * ft, 1 * inch, 0.0),
            Box("load", "Even load", "line load", 1 * plf, 2000 * plf, 300 * plf),
            Box("sag", "Measured sag", "small length", 0.0, 6 * inch, 1.5 * inch),
        )

    def beam(self, values):
        """Return the member and the place of the jack.

        Gives [-, mm].
        """
        span, two = values["span"], values["kind"] == "two"
        length = 2 * span if two else span
        supports = [Support(0.0), Support(span)] + ([Support(length)] if two else [])
        jack = span + max(values["aside"], NEAREST) if two else span / 2 + values["aside"]
        return Beam(
            length, self.member(values).bending_stiffness, supports, [LineLoad(0.0, length, values["load"])]
        ), jack

    @staticmethod
    def member(values):
        """Return the piece of wood that is lifted."""
        depth, ply_width, _, material = min(pieces(_WOOD), key=lambda piece: abs(piece[0] - values["depth"]))
        seat = Seat(1.5 * inch, "post")
        return BeamMember(
            material, ply_width, depth, int(values["plies"]), seat, seat, unbraced_length=0.0
        )  # joists on it hold it

    def _asked(self, items):
        values = dict(items)
        (beam, jack), lift, sag = self.beam(values), values["lift"], values["sag"]
        curve = jacking.jack_curve(beam, jack_position=jack, most_lift=max(WIDEST, sag) * 1.01)
        held, full = (jacking.held_at(beam, jack_position=jack, curve=curve, lift=one) for one in (lift, sag))
        return Jacking(self.member(values), beam, jack, solve(beam), curve, lift, sag, held, full)

    def compute(self, values, before=None, frame="page"):
        now = self.asked(tuple(values.items()))
        ghost = self.asked(tuple(before.items())) if before else None
        wood = now.member.material
        return Shown(
            self.scene(values, now, ghost, frame),
            ("what is asked", "demand", "compare"),
            self.rows(values, now),
            self.notes(values, now),
            (GATE,),
            known=((f"E of {wood.name}", wood.verified), ("load and sag", verdict.ENTERED)),
        )

    def rows(self, values, now):
        """Return what is asked as rows of text."""
        small = lambda value: show(value, "small length", self.system)  # noqa: E731
        force = lambda value: show(value, "force", self.system)  # noqa: E731
        lift, sag, off = values["lift"], values["sag"], now.curve.first_off
        at_lift, full = now.force(lift), now.force(sag)
        if off is None:
            lets_go = ("first old support that lets go", "none on this chart", "")
        else:
            lets_go = (
                f"{_support_word(values, off.lifted)} go at a lift of",
                small(off.lift),
                f"jack {force(off.force)}",
            )
        hangs = "the member hangs on the jack alone" if now.curve.hangs_at(sag) else _share(full, now.whole)
        return (
            ("sag that springs, at the jack", small(now.springing), f"measured {small(sag)}"),
            ("sag that crept in, or was never straight", small(now.crept), "the rest"),
            (f"jack at a lift of {small(lift)}", force(at_lift), _share(at_lift, now.whole)),
            lets_go,
            ("jack, lifted by the whole measured sag", force(full), hangs),
            *self._moment_rows(now),
        )

    def _moment_rows(self, now):
        moment = lambda value: (show(value, "moment", self.system), _way_round(value))  # noqa: E731
        stress = lambda value: show(abs(value) / now.member.section_modulus, "stress", self.system)  # noqa: E731
        today, at_lift, full = now.moments
        return (
            ("moment at the jack today", *moment(today)),
            (f"moment at a lift of {show(now.lift, 'small length', self.system)}", *moment(at_lift)),
            ("moment, lifted by the whole measured sag", *moment(full)),
            ("bending stress then, at the jack", stress(full), f"today {stress(today)} there"),
        )

    def notes(self, values, now):
        """Return what must be said below the numbers."""
        notes = []
        if values["sag"] < now.springing:
            notes.append("The measured sag is less than this load would spring: load, wood or size are other than set.")
        if values["kind"] == "two" and values["aside"] < NEAREST:
            side = show(NEAREST, "length", self.system)
            notes.append(f"The old post still stands, so the jack is taken {side} from it.")
        material = pieces(_WOOD)[0][3]
        notes += [
            "Only this member and the load set here resist. Floors, walls and pipes that are fastened to it "
            "resist too, and ask more of the jack.",
            HABIT,
            f"E of {material.species} {material.grade}, {material.verified}. Old wood may be stiffer or "
            "softer; force "
            "and springing part go with it.",
            CAUTION,
        ]
        return tuple(notes)

    def scene(self, values, now, ghost=None, frame="page"):
        """Draw the member on its jack, and force against lift."""
        system, beam = self.system, now.beam
        small = lambda value: show(value, "small length", system)  # noqa: E731
        charted = lambda value: small(value) + ("" if value <= WIDEST else ", off chart")  # noqa: E731
        places, shape, before, crept = _shapes(now)
        off, force = now.curve.first_off, now.force(values["lift"])
        view = JackView(
            title=_title(values, now, system),
            length=beam.length,
            supports=tuple(support.position for support in beam.supports),
            lifted=now.held.lifted,
            jack=now.jack,
            x=tuple(map(float, places)),
            shape=tuple(map(float, shape)),
            shape_before=tuple(map(float, before)),
            lifts=tuple(step.lift for step in now.curve.steps),
            forces=tuple(step.force for step in now.curve.steps),
            whole=now.whole,
            whole_text=show(now.whole, "force", system),
            widest=WIDEST,
            ticks=_TICKS[system],
            lift=values["lift"],
            force=force,
            force_text=f"lift {small(values['lift'])}: {show(force, 'force', system)}",
            springing=now.springing,
            springing_text=f"springs {charted(now.springing)}",
            measured=values["sag"],
            measured_text=f"measured {charted(values['sag'])}",
            kink_text="no old support lets go here"
            if off is None
            else f"{_support_word(values, off.lifted)} go at {small(off.lift)}",
            full_text=_full_text(now, system, frame),
            previous=_curve_before(now, ghost),
            drops=tuple(float(numpy.interp(support.position, places, crept)) for support in beam.supports),
        )
        return draw_jack(view, frame)


def _shapes(now):
    """Places along the member, its shape at the lift and today, and what of both crept in [mm]."""
    places = numpy.unique(numpy.append(numpy.linspace(0.0, now.beam.length, 61), now.jack))
    # what crept in is drawn as one smooth bow, with the measured part of it at the jack; an old post sank with it
    bow = lambda x: now.crept * numpy.sin(numpy.pi * x / now.beam.length)  # noqa: E731
    crept = bow(places) / numpy.sin(numpy.pi * now.jack / now.beam.length)
    shape = now.held.solution.deflection(places) + crept - now.held.raised
    return places, shape, now.today.deflection(places) + crept, crept


def _curve_before(now, ghost):
    """The curve before the last change, in shares of the load; empty where it is the same."""
    if ghost is None or ghost.curve.steps == now.curve.steps:
        return ()
    forces = (min(step.force / ghost.whole, 1.0) * now.whole for step in ghost.curve.steps)
    return tuple(step.lift for step in ghost.curve.steps), tuple(forces)


def _support_word(values, lifted):
    if values["kind"] == "two" and 1 in lifted:
        return "the old post lets"
    return "both ends let" if len(lifted) > 1 else ("the left end lets" if 0 in lifted else "the right end lets")


def _share(force, whole):
    return f"{show(force / whole, 'ratio')} of the whole load"


def _way_round(moment):
    return "sags" if moment > 0 else "bends up, over the jack" if moment < 0 else ""


def _full_text(now, system, frame):
    today, _, full = now.moments
    moment = f"moment {show(full, 'moment', system)}"
    if frame == "wide":
        return f"all up: {moment}"
    if full >= 0:
        return f"all of the sag lifted: {moment}, still sagging"
    beside = "bent back" if today > 0 else f"{full / today:.2f} x today's"
    return f"all of the sag lifted: {moment}, {beside}"


def _title(values, now, system):
    off, lift = now.curve.first_off, values["lift"]
    small = show(lift, "small length", system)
    if now.curve.hangs_at(lift):
        return "The whole load hangs on the jack, and both ends are off their walls"
    if off is not None and lift >= off.lift:
        return f"Lifted by {small}: {_support_word(values, off.lifted)} go at {show(off.lift, 'small length', system)}"
    return f"A lift of {small} asks {_share(now.force(lift), now.whole)}"


def lifted_level():
    """Lift the middle of a simple beam level with its ends, and name what is asked as the printed table does.

    A beam whose middle is held level is two equal spans, so the table of two spans must say the same.

    Examples
    --------
    >>> round(lifted_level()["middle support of two equal spans, share of wL"], 12)
    1.25
    """
    half, beam = 1000.0, dict(line_load=0.001, span=2000.0, bending_stiffness=1e6)
    level = formulas.simple_uniform_deflection(**beam)
    force = jacking.midspan_jack_force(lift=level, span=2 * half, bending_stiffness=1e6)
    return {
        "middle support of two equal spans, share of wL": force / (0.001 * half),
        "moment over it, share of wL2": -jacking.midspan_jack_moment(lift=level, **beam) / (0.001 * half**2),
    }


hold(globals())
