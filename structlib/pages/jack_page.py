"""What does a jack ask? Its force against its lift, until the old support lets go."""

from functools import lru_cache

from structlib.ground.sections import rectangle_inertia, rectangle_section_modulus
from structlib.ground.showing import show
from structlib.ground.units import ft, inch, plf
from structlib.mechanics import formulas, jacking
from structlib.mechanics.beams import Beam, LineLoad, Support, solve
from structlib.pages import verdict
from structlib.pages.beam_page import CAUTION
from structlib.pages.controls import Box, Page, Pick, Shown, Slide, Steps
from structlib.pages.door import hold
from structlib.pages.woods import pieces
from structlib.pictures.drawings.jack import JackView, draw_jack

_KINDS = (("one span", "one"), ("two spans, old post", "two"))
_WOOD = "fir"
WIDEST = 3 * inch
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


class JackPage(Page):
    """The bench of a jack: a member that sags, a lift, and what that asks of jack and member.

    Parameters
    ----------
    system : str
        Units of the reader: 'us' or 'metric' [-].
    """

    def __init__(self, system="us"):
        self.system = system
        self.numbers = lru_cache(maxsize=64)(self._numbers)

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

        Parameters
        ----------
        values : dict
            Values of the controls [any].

        Returns
        -------
        tuple
            The member as it hangs today, and the place of the jack from its left end [-, mm].
        """
        span, two = values["span"], values["kind"] == "two"
        length = 2 * span if two else span
        depth, ply_width, _, material = min(pieces(_WOOD), key=lambda piece: abs(piece[0] - values["depth"]))
        stiffness = formulas.bending_stiffness(
            modulus=material.modulus,
            inertia=rectangle_inertia(width=ply_width * int(values["plies"]), depth=depth),
        )
        supports = [Support(0.0), Support(span)] + ([Support(length)] if two else [])
        jack = span + max(values["aside"], NEAREST) if two else span / 2 + values["aside"]
        return Beam(length, stiffness, supports, [LineLoad(0.0, length, values["load"])]), jack

    def _numbers(self, items):
        values = dict(items)
        beam, jack = self.beam(values)
        today = solve(beam)
        curve = jacking.jack_curve(beam, jack_position=jack, most_lift=max(WIDEST, values["sag"]) * 1.01)
        springing = max(0.0, today.deflection(jack))
        modulus = rectangle_section_modulus(
            width=1.5 * inch * int(values["plies"]),
            depth=min(pieces(_WOOD), key=lambda piece: abs(piece[0] - values["depth"]))[0],
        )
        return {
            "beam": beam,
            "jack": jack,
            "today": today,
            "curve": curve,
            "whole": values["load"] * beam.length,
            "springing": springing,
            "crept": jacking.crept_part(measured_sag=values["sag"], springing_sag=springing),
            "force": max(0.0, curve.force(values["lift"])),
            "full_force": max(0.0, curve.force(values["sag"])),
            "off": _first_off(curve),
            "held": _held(beam, jack, curve, values["lift"]),
            "moment": _held(beam, jack, curve, values["lift"])[0].moment(jack),
            "full_moment": _held(beam, jack, curve, values["sag"])[0].moment(jack),
            "modulus": modulus,
        }

    def compute(self, values, before=None, frame="page"):
        now = self.numbers(tuple(values.items()))
        ghost = self.numbers(tuple(before.items())) if before else None
        wood = min(pieces(_WOOD), key=lambda piece: abs(piece[0] - values["depth"]))[3]
        return Shown(
            self.scene(values, now, ghost, frame),
            ("what is asked", "demand", "compare"),
            self.rows(values, now),
            self.notes(values, now),
            (GATE,),
            known=((f"E of {wood.name}", wood.verified), ("load and sag", verdict.ENTERED)),
        )

    def rows(self, values, now):
        """Return what is asked as rows of text.

        Parameters
        ----------
        values : dict
            Values of the controls [any].
        now : dict
            What `numbers` worked out [any].

        Returns
        -------
        tuple of tuple of str
            What, demand, beside what [-].
        """
        small = lambda value: show(value, "small length", self.system)  # noqa: E731
        force = lambda value: show(value, "force", self.system)  # noqa: E731
        moment = lambda value: show(value, "moment", self.system)  # noqa: E731
        today = now["today"].moment(now["jack"])
        off = now["off"]
        rows = [
            ("sag that springs, at the jack", small(now["springing"]), f"measured {small(values['sag'])}"),
            ("sag that crept in, or was never straight", small(now["crept"]), "the rest"),
            (
                f"jack at a lift of {small(values['lift'])}",
                force(now["force"]),
                _share(now["force"], now["whole"]),
            ),
        ]
        if off is None:
            rows.append(("first old support that lets go", "none on this chart", ""))
        else:
            rows.append(
                (f"{_support_word(values, off[1])} go at a lift of", small(off[0]), f"jack {force(off[2])}")
            )
        full = force(now["full_force"])
        hangs = now["curve"].hangs and values["sag"] >= now["curve"].steps[-1].lift
        rows += [
            (
                "jack, lifted by the whole measured sag",
                full,
                "the member hangs on the jack alone" if hangs else _share(now["full_force"], now["whole"]),
            ),
            ("moment at the jack today", moment(today), _way_round(today)),
            (
                f"moment at a lift of {small(values['lift'])}",
                moment(now["moment"]),
                _way_round(now["moment"]),
            ),
            (
                "moment, lifted by the whole measured sag",
                moment(now["full_moment"]),
                _way_round(now["full_moment"]),
            ),
            (
                "bending stress then, at the jack",
                show(abs(now["full_moment"]) / now["modulus"], "stress", self.system),
                f"today {show(abs(today) / now['modulus'], 'stress', self.system)} there",
            ),
        ]
        return tuple(rows)

    def notes(self, values, now):
        """Return what must be said below the numbers.

        Parameters
        ----------
        values : dict
            Values of the controls [any].
        now : dict
            What `numbers` worked out [any].

        Returns
        -------
        tuple of str
            One sentence a note [-].
        """
        notes = []
        if values["sag"] < now["springing"]:
            notes.append(
                "The measured sag is less than this load would spring: load, wood or size are other than set."
            )
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
        """Draw the member on its jack, and force against lift.

        Parameters
        ----------
        values : dict
            Values of the controls [any].
        now : dict
            What `numbers` worked out [any].
        ghost : dict or None
            The same before the last change [any].
        frame : str
            Shape of the picture: 'page', 'wide' or 'tall' [-].

        Returns
        -------
        structlib.pictures.scene.Scene
            The picture [-].
        """
        import numpy

        system, beam = self.system, now["beam"]
        small = lambda value: show(value, "small length", system)  # noqa: E731
        places = numpy.unique(numpy.append(numpy.linspace(0.0, beam.length, 61), now["jack"]))
        today = now["today"].deflection(places)
        # what crept in is drawn as one smooth bow, with the measured part of it at the jack;
        # an old post sank with it
        bow = lambda x: now["crept"] * numpy.sin(numpy.pi * x / beam.length)  # noqa: E731
        crept = bow(places) / numpy.sin(numpy.pi * now["jack"] / beam.length)
        solution, lifted, extra = now["held"]
        shape = solution.deflection(places) + crept - extra
        curve = now["curve"]
        ticks = ((0.0, "lift 0"), *((n * inch, f"{n} in") for n in (1, 2, 3)))
        if system == "metric":
            ticks = ((0.0, "lift 0"), *((float(n), f"{n} mm") for n in (25, 50, 75)))
        off = now["off"]
        lets = (
            "no old support lets go here"
            if off is None
            else f"{_support_word(values, off[1])} go at {small(off[0])}"
        )
        view = JackView(
            title=_title(values, now, system),
            length=beam.length,
            supports=tuple(support.position for support in beam.supports),
            lifted=lifted,
            jack=now["jack"],
            x=tuple(map(float, places)),
            shape=tuple(map(float, shape)),
            shape_before=tuple(map(float, today + crept)),
            lifts=tuple(step.lift for step in curve.steps),
            forces=tuple(step.force for step in curve.steps),
            whole=now["whole"],
            whole_text=show(now["whole"], "force", system),
            widest=WIDEST,
            ticks=ticks,
            lift=values["lift"],
            force=now["force"],
            force_text=f"lift {small(values['lift'])}: {show(now['force'], 'force', system)}",
            springing=now["springing"],
            springing_text=f"springs {small(now['springing'])}"
            + ("" if now["springing"] <= WIDEST else ", off chart"),
            measured=values["sag"],
            measured_text=f"measured {small(values['sag'])}"
            + ("" if values["sag"] <= WIDEST else ", off chart"),
            kink_text=lets,
            full_text=_full_text(now, system, frame),
            previous=()
            if ghost is None or ghost["curve"].steps == curve.steps
            else (
                tuple(step.lift for step in ghost["curve"].steps),
                tuple(min(step.force / ghost["whole"], 1.0) * now["whole"] for step in ghost["curve"].steps),
            ),
            drops=tuple(float(numpy.interp(support.position, places, crept)) for support in beam.supports),
        )
        return draw_jack(view, frame)


def _held(beam, jack, curve, lift):
    """The member at a lift, the supports it is off, and how far the hanging member has been raised since."""
    last, extra = curve.steps[-1], 0.0
    if curve.hangs and lift >= last.lift:
        extra = lift - last.lift
        # a hair before it hangs, where the beam still stands; its pushes there are next to nothing
        return jacking.jacked(beam, jack_position=jack, lift=last.lift * (1 - 1e-7)), last.lifted, extra
    solution = jacking.jacked(beam, jack_position=jack, lift=lift)
    return solution, tuple(i for i, r in enumerate(solution.reactions[:-1]) if r.lifted), extra


def _first_off(curve):
    """Lift, support and force where the first old support lets go; None where none does."""
    for step in curve.steps:
        if step.lifted and step.lift > 1e-9:
            return step.lift, step.lifted, step.force
    return None


def _support_word(values, lifted):
    if values["kind"] == "two" and 1 in lifted:
        return "the old post lets"
    return (
        "both ends let" if len(lifted) > 1 else ("the left end lets" if 0 in lifted else "the right end lets")
    )


def _share(force, whole):
    return f"{show(force / whole, 'ratio')} of the whole load"


def _way_round(moment):
    return "sags" if moment > 0 else "bends up, over the jack" if moment < 0 else ""


def _full_text(now, system, frame):
    moment = f"moment {show(now['full_moment'], 'moment', system)}"
    if frame == "wide":
        return f"all up: {moment}"
    today = now["today"].moment(now["jack"])
    if now["full_moment"] >= 0:
        return f"all of the sag lifted: {moment}, still sagging"
    beside = "bent back" if today > 0 else f"{now['full_moment'] / today:.2f} x today's"
    return f"all of the sag lifted: {moment}, {beside}"


def _title(values, now, system):
    off, small = now["off"], show(values["lift"], "small length", system)
    if now["curve"].hangs and values["lift"] >= now["curve"].steps[-1].lift:
        return "The whole load hangs on the jack, and both ends are off their walls"
    if off is not None and values["lift"] >= off[0]:
        return (
            f"Lifted by {small}: {_support_word(values, off[1])} go at {show(off[0], 'small length', system)}"
        )
    return f"A lift of {small} asks {_share(now['force'], now['whole'])}"


def lifted_level():
    """Lift the middle of a simple beam level with its ends, and name what is asked as the printed table does.

    A beam whose middle is held level is two equal spans, so the table of two spans must say the same.

    Returns
    -------
    dict
        Shares of w L and w L^2 of one half, by their names in data/published_checks.csv [-].

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
