"""What happens past the post? Overhangs, two and three spans, and a middle post taken out."""

from dataclasses import dataclass, replace
from functools import lru_cache
from math import ceil
from typing import Any

from structlib.ground.refusals import OutsideRule
from structlib.ground.sections import rectangle_area, rectangle_inertia, rectangle_section_modulus
from structlib.ground.showing import show
from structlib.ground.units import ft, inch, kip, lb, plf
from structlib.mechanics import formulas
from structlib.mechanics.beams import Beam, LineLoad, PointLoad, Support, solve
from structlib.mechanics.patterns import Envelope, solve_arrangements, span_loads, stretches
from structlib.pages import verdict
from structlib.pages.beam_page import CAUTION
from structlib.pages.comes_down import comes_down, comes_down_pick, titled, without_load
from structlib.pages.controls import Box, Page, Pick, Shown, Slide, Steps
from structlib.pages.door import hold
from structlib.pages.meanwhile_page import GATE as MEANWHILE
from structlib.pages.past_post_tables import DUST, post_out_ratios, stretch_name, without_dust
from structlib.pages.woods import WOODS, pieces
from structlib.pictures.drawings.past_post import PastPostView, PostBelow, draw_past_post
from structlib.rules.check import least_verified
from structlib.rules.us import bearing, bending, deflection, factors
from structlib.rules.choice import RULEBOOK
from structlib.rules.us.uplift import CLAUSE, dead_that_counts, hold_down_demand

_KINDS = (
    ("past a post", "over"),
    ("past a foundation wall", "wall"),
    ("two spans", "two"),
    ("three spans", "three"),
    ("the middle post taken out", "out"),
)
_PAST = ("over", "wall")
_LOADS = ("dead", "live", "post_dead", "post_live")
_DRAWN = (
    ("where it works most", "most"),
    ("where a support lifts", "lift"),
    ("everywhere", "all"),
)
_LETTERS = {"over": "AB", "wall": "AB", "two": "ABC", "three": "ABCD", "out": "AC"}
_SPANS = {"over": 1, "wall": 1, "two": 2, "three": 3, "out": 2}
_LONGEST_SPAN, _LONGEST_OVERHANG = 16 * ft, 6 * ft

#: Name of the group of load that comes through the post above.
_ABOVE = "in the post above"

BEYOND_THE_WALL = (
    "A post or wall from above stands past the foundation wall; prescriptive tables of cantilevered "
    "floors (IRC R502.3.3, recalled) are not in this library, so an engineer designs it and only what is "
    "asked is shown."
)
BEYOND_THE_POST = (
    "A post from above stands past the last post below; prescriptive tables do not cover that, so an "
    "engineer designs it and only what is asked is shown."
)
#: Said wherever a long beam is taken as one piece.
LONG_PIECES = (
    "Sawn plies in one piece are seldom sold longer than about 20 ft (common practice). A longer beam "
    "has joints in its plies, and a ply that is cut carries nothing at the cut: see Joints, and where they "
    "may be."
)


@dataclass(frozen=True)
class _State:
    """Everything worked out for one set of values."""

    kind: str
    section: dict
    material: Any
    name: str
    supports: tuple
    length: float
    groups: tuple
    all_load: Any
    live_only: Any
    dead_only: Any
    checks: tuple


@dataclass(frozen=True)
class _Row:
    """One check: what is asked and given, for which arrangement."""

    name: str
    asked: float
    given: float | None
    dimension: str
    on: tuple | None
    where: str
    verified: str
    factors: tuple = ()
    refused: str = ""

    @property
    def decides(self):
        return self.given is not None

    @property
    def share(self):
        return 0.0 if self.given is None else self.asked / self.given


class PastPostPage(Page):
    """The bench of beams that run on: past a post, over one, over two, and with one taken out.

    Parameters
    ----------
    system : str
        Units of the reader: 'us' or 'metric' [-].
    """

    def __init__(self, system="us"):
        self.system = system
        self.state = lru_cache(maxsize=64)(self._state)

    def controls(self, values):
        depths = tuple(depth for depth, *_ in pieces(values.get("wood", "fir")))
        load = dict(dimension="line load", low=0.0, high=2000 * plf)
        post = dict(dimension="force", low=0.0, high=20 * kip)
        return (
            Slide("span", "Span, each", "length", 6 * ft, _LONGEST_SPAN, 3 * inch, 12 * ft),
            Steps(
                "depth", "Depth", "section length", depths, min(depths, key=lambda d: abs(d - 11.25 * inch))
            ),
            Slide("plies", "Plies", "count", 1, 5, 1, 3),
            comes_down_pick(),
            Pick("kind", "The beam", _KINDS, "over"),
            Slide("overhang", "Past the post", "length", 0.5 * ft, _LONGEST_OVERHANG, 3 * inch, 3 * ft),
            Box("post_dead", "Post above, dead", default=500 * lb, **post),
            Box("post_live", "Post above, live", default=1500 * lb, **post),
            Box("dead", "Dead load", default=60 * plf, **load),
            Box("live", "Live load", default=240 * plf, **load),
            Pick("wood", "Wood", tuple((one.label, one.key) for one in WOODS), "fir"),
            Pick("drawn", "Draw live", _DRAWN, "most"),
        )

    # ---- what is worked out ----

    def _state(self, items):
        values = dict(items)
        kind, span = values["kind"], values["span"]
        depth, ply_width, nominal, material = min(
            pieces(values["wood"]), key=lambda piece: abs(piece[0] - values["depth"])
        )
        plies = int(values["plies"])
        size = dict(width=ply_width * plies, depth=depth)
        section = dict(
            plies=plies,
            ply_width=ply_width,
            **size,
            area=rectangle_area(**size),
            modulus=rectangle_section_modulus(**size),
            inertia=rectangle_inertia(**size),
        )
        length = _SPANS[kind] * span + (values["overhang"] if kind in _PAST else 0.0)
        places = {
            "over": (0.0, span),
            "wall": (0.0, span),
            "two": (0.0, span, 2 * span),
            "three": (0.0, span, 2 * span, 3 * span),
            "out": (0.0, 2 * span),
        }[kind]
        supports = tuple(Support(place) for place in places)
        stiffness = formulas.bending_stiffness(modulus=material.modulus, inertia=section["inertia"])
        always = [LineLoad(0.0, length, values["dead"] + material.weight_density * section["area"])]
        if kind in _PAST and values["post_dead"]:
            always.append(PointLoad(length, values["post_dead"]))
        names, groups = [], []
        if values["live"]:
            groups += span_loads(supports, length, values["live"])
            names += [stretch_name(start, places, _LETTERS[kind]) for start, _ in stretches(supports, length)]
        if kind in _PAST and values["post_live"]:
            groups.append((PointLoad(length, values["post_live"]),))
            names.append(_ABOVE)
        slides = None
        if material.shear_modulus is not None:
            slides = formulas.rectangle_shear_stiffness(
                shear_modulus=material.shear_modulus, area=section["area"]
            )
        bare = Beam(length, stiffness, supports, shear_stiffness=slides)
        dead = replace(bare, loads=tuple(always))
        state = _State(
            kind,
            section,
            material,
            f"{plies}-{nominal}",
            supports,
            length,
            tuple(names),
            solve_arrangements(dead, tuple(groups)),
            solve_arrangements(bare, tuple(groups)),
            solve(dead),
            (),
        )
        return replace(state, checks=tuple(self._checks(state, values)))

    def _checks(self, state, values):
        """Bending both ways, shear, and sag of spans and of the overhang."""
        section, material = state.section, state.material
        load_types = ["dead", "live"] if state.groups else ["dead"]
        combinations = RULEBOOK.combinations(load_types)
        longest = 2 * values["span"] if state.kind == "out" else values["span"]
        ways = (
            ("bending, sagging", lambda e: e.sagging, 16 * inch),
            ("bending, the other way", lambda e: e.hogging, longest),
        )
        for name, peak_of, unbraced in ways:
            found = []
            for combination in combinations:
                asked = peak_of(self._under(state, combination))
                if abs(asked.value) < 1.0:
                    continue
                try:
                    given, used = bending.bending_value(
                        material,
                        width=section["width"],
                        depth=section["depth"],
                        plies=section["plies"],
                        ply_width=section["ply_width"],
                        unbraced_length=unbraced,
                        time_factor=combination.time_factor,
                        case="not listed",
                    )
                    given, refused = float(given), ""
                except OutsideRule as error:
                    given, used, refused = None, (), str(error)
                stress = formulas.bending_stress(moment=abs(asked.value), section_modulus=section["modulus"])
                found.append(
                    _Row(
                        name,
                        stress,
                        given,
                        "stress",
                        self._full(state, asked.on),
                        f"{combination.name}; NDS 2018 3.3.1",
                        least_verified([material.verified, combination.verified]),
                        used,
                        refused,
                    )
                )
            if found:
                yield max(found, key=lambda row: (row.share, row.asked))
        found = []
        for combination in combinations:
            asked = self._under(state, combination).shear
            stress = formulas.rectangle_shear_stress(
                shear=asked.value, width=section["width"], depth=section["depth"]
            )
            found.append(
                _Row(
                    "shear, the whole push counts",
                    stress,
                    material.shear * combination.time_factor,
                    "stress",
                    self._full(state, asked.on),
                    f"{combination.name}; NDS 2018 3.4.2",
                    least_verified([material.verified, combination.verified]),
                )
            )
        yield max(found, key=lambda row: row.share)
        yield from self._sags(state, values)

    def _sags(self, state, values):
        live_n, *live_rule = deflection.limit_divisor("floor")
        all_n, *all_rule = factors.total_limit()
        parts = stretches(state.supports, state.length)
        spans = parts[:-1] if state.kind in _PAST else parts
        places = [("sag of a span", spans, 1)] + (
            [("sag of the tip", parts[-1:], 2)] if state.kind in _PAST else []
        )
        for name, stretch, times in places:
            for load, envelope, divisor, (clause, known) in (
                ("live load", state.live_only, live_n, live_rule),
                ("all load", state.all_load, all_n, all_rule),
            ):
                if load == "live load" and not state.groups:
                    continue
                asked, reach = max(
                    ((envelope.deflection_between(*one), one[1] - one[0]) for one in stretch),
                    key=lambda pair: abs(pair[0].value) * (1 + 1e-9 * (pair[0].position < state.length / 2)),
                )
                way = " (up)" if asked.value < 0 else ""
                over = f"2 x overhang/{divisor:.0f}" if times == 2 else f"span/{divisor:.0f}"
                yield _Row(
                    f"{name}, {load}{way}",
                    abs(asked.value),
                    times * reach / divisor,
                    "small length",
                    asked.on,
                    f"{over}; {clause.split(' (')[0]}",
                    # twice the overhang for the tip is from memory, as the notes say
                    least_verified([known, state.material.verified, "recalled" if times == 2 else ""]),
                )

    def _under(self, state, combination):
        """The envelope of a combination: with the live load, or the dead load alone."""
        if combination.factor("live"):
            return state.all_load
        return _alone(state.dead_only)

    def _full(self, state, on):
        """An arrangement named by all groups, also when it comes from the dead load alone."""
        return on if len(on) == len(state.groups) else (False,) * len(state.groups)

    def hold_downs(self, values):
        """Return what must hold each support down.

        Parameters
        ----------
        values : dict
            Values of the controls [any].

        Returns
        -------
        tuple of (str, float, float)
            Letter, demand under D + L, and with 0.6 of the dead load counted [-, N, N].
        """
        return _hold_downs(self.state(_key(values)))

    # ---- what is shown ----

    def compute(self, values, before=None, frame="page"):
        state = self.state(_key(values))
        ghost = None if before is None else (self.state(_key(before)), before["drawn"])
        gates = self.gates(values, state)
        withdrawn = gates or without_load(values, _LOADS if state.kind in _PAST else _LOADS[:2])
        return Shown(
            self.scene(values, state, ghost, withdrawn, frame),
            ("what", "asked", "can give", "share", "when, and by which rule"),
            self.rows(state, withdrawn),
            self.notes(values, state),
            gates,
            known=self.known(state),
        )

    def known(self, state):
        """List all that the page used, each with how well it is known.

        Parameters
        ----------
        state : object
            What was worked out for the values [-].

        Returns
        -------
        tuple of (str, str)
            What, and how it is known [-].
        """
        material, (_, uplift) = state.material, dead_that_counts()
        more = (material.name, material.verified), ("0.6 of the dead load", uplift), ("loads", verdict.ENTERED)
        return verdict.evidence(state.checks, *more)

    def gates(self, values, state):
        """Return the reasons to stop and call an engineer before anything is chosen here.

        Parameters
        ----------
        values : dict
            Values of the controls [any].
        state : object
            What was worked out for the values [-].

        Returns
        -------
        tuple of str
            One sentence a gate; empty when none [-].
        """
        gates = [*comes_down(values)[0], *([MEANWHILE] if state.kind == "out" else [])]
        lifting, most = _lifting(state)
        if lifting:
            thing, verb, what = (
                ("Support", "lifts", "it") if len(lifting) == 1 else ("Supports", "lift", "each of them")
            )
            when = "under some arrangement of the load"
            if not any(plain > DUST for _, plain, _ in _hold_downs(state)):
                when = "when only 0.6 of the dead load is counted"
            gates.append(
                f"{thing} {_listed(lifting)} {verb} {when}, so something must hold {what} down, with up to "
                f"{show(most, 'force', self.system)}; that connection, and what it hangs on, is for an "
                "engineer."
            )
        if state.kind in _PAST and values["post_dead"] + values["post_live"] > 0:
            gates.append(BEYOND_THE_WALL if state.kind == "wall" else BEYOND_THE_POST)
        return tuple(gates)

    def rows(self, state, gates=()):
        """Return pushes, hold-downs and checks as rows of text.

        Parameters
        ----------
        state : object
            What was worked out for the values [-].
        gates : tuple of str
            Gates that withdraw the verdicts; what is asked stays [-].

        Returns
        -------
        tuple of tuple of str
            What, asked, can give, share, when and rule [-].
        """
        say = lambda value, kind: show(value, kind, self.system)  # noqa: E731
        rows = []
        for number, support in enumerate(state.supports):
            most, least = state.all_load.greatest_reaction(number), state.all_load.least_reaction(number)
            letter = _letters(state)[number]
            rows.append(
                (
                    f"push of {letter}, most",
                    say(most.value, "force"),
                    "",
                    "",
                    f"live {_where(state, most.on)}",
                )
            )
            word = "least" if least.value >= -DUST else "least (it lifts)"
            rows.append(
                (
                    f"push of {letter}, {word}",
                    say(without_dust(least.value), "force"),
                    "",
                    "",
                    f"live {_where(state, least.on)}",
                )
            )
        for letter, plain, reduced in _hold_downs(state):
            if max(plain, reduced) > DUST:
                share, known = dead_that_counts()
                rows.append(
                    (
                        f"hold down {letter}, D + L",
                        say(without_dust(plain), "force"),
                        "",
                        "",
                        "all of the dead load helps",
                    )
                )
                rows.append(
                    (
                        f"hold down {letter}, {share} D + L",
                        say(reduced, "force"),
                        "",
                        "",
                        f"{CLAUSE}, {known}",
                    )
                )
        sagging, hogging = state.all_load.sagging, state.all_load.hogging
        rows.append(
            ("moment that sags it", say(sagging.value, "moment"), "", "", f"live {_where(state, sagging.on)}")
        )
        rows.append(
            (
                "moment the other way",
                say(without_dust(-hogging.value), "moment"),
                "",
                "",
                f"live {_where(state, hogging.on)}",
            )
        )
        for row in state.checks:
            given = share = ""
            if row.given is None:
                given = "refused"
            elif not gates:
                given = say(row.given, row.dimension)
                share = verdict.share_text(row, state.checks)
            rows.append(
                (
                    row.name,
                    say(row.asked, row.dimension),
                    "" if gates else given,
                    share,
                    row.where if row.on is None else f"{row.where}; live {_where(state, row.on)}",
                )
            )
        number = max(range(len(state.supports)), key=lambda n: state.all_load.greatest_reaction(n).value)
        push = state.all_load.greatest_reaction(number).value
        seat = bearing.bearing_length_needed(
            reaction=push, width=state.section["width"], bearing_value=state.material.bearing
        )
        rows.append(
            (
                f"seat on {_letters(state)[number]}, long enough for the beam",
                # to the next sixteenth up, so that it is long enough as it is read
                say(ceil(seat / inch * 16 - 1e-6) / 16 * inch, "section length"),
                "",
                "",
                "NDS 2018 3.10.2; the post or plate below is a check of its own",
            )
        )
        return tuple(rows)

    def notes(self, values, state):
        """Return what must be said below the numbers.

        Parameters
        ----------
        values : dict
            Values of the controls [any].
        state : object
            What was worked out for the values [-].

        Returns
        -------
        tuple of str
            One sentence a note [-].
        """
        notes = [row.refused for row in state.checks if row.refused]
        notes.append(
            f"All {len(state.all_load.cases)} arrangements of the live load were solved. Dead load and the beam's own "
            "weight are always there. Supports are taken to hold the beam down where it lifts. That needs a connector."
        )
        if state.kind in _PAST:
            notes.append(
                "For the tip the limit counts twice the overhang (IBC 1604.3, recalled). The bottom edge is taken as "
                "unbraced over a whole span where it is pressed."
            )
        elif state.kind == "out":
            notes.append(
                "The two end supports now get what three had. Their posts and footings are checks of their own, before "
                "anything is taken out."
            )
        else:
            notes.append(
                "One piece from end to end. The bottom edge is taken as unbraced over a whole span where it is pressed, "
                "near a post."
            )
        long = state.kind not in _PAST and state.length > 20 * ft * (1 + 1e-9)
        if long and state.material.kind not in ("lvl", "timber"):
            notes.append(LONG_PIECES)
        if state.kind not in _PAST and values["post_dead"] + values["post_live"] > 0:
            notes.append("The post above stands on an overhang only; here it is left out.")
        share, known = dead_that_counts()
        notes.append(f"The {share:g} of the dead load and the load combinations are those of ASCE 7-16, {known}.")
        notes.append(CAUTION)
        return tuple(notes)

    def scene(self, values, state, ghost, gates=(), frame="page"):
        """Draw the beam, its loads, its deflected shape and its moments.

        Parameters
        ----------
        values : dict
            Values of the controls [any].
        state : object
            What was worked out for the values [-].
        ghost : tuple or None
            What was worked out before the last change, and which arrangement was drawn [-].
        gates : tuple of str
            Gates that withdraw the verdicts [-].
        frame : str
            Shape of the picture: 'page', 'wide' or 'tall' [-].

        Returns
        -------
        structlib.pictures.scene.Scene
            The picture [-].
        """
        import numpy

        say = lambda value, kind: show(value, kind, self.system)  # noqa: E731
        on = _drawn(state, values["drawn"])
        solution = state.all_load.case(on)
        points = solution.points(80)
        x = numpy.unique(
            numpy.concatenate([points.x, [state.all_load.sagging.position, state.all_load.hogging.position]])
        )
        least, most = state.all_load.moments(x)
        sagging, hogging = state.all_load.sagging.value, -state.all_load.hogging.value
        full = _round_up(max(sagging, hogging, 1.0), 1e3 * lb * ft if self.system == "us" else 1e6)
        peak = solution.extremes.deflection.value
        loaded = [name for name, there in zip(state.groups, on) if there]
        places = tuple(support.position for support in state.supports)
        cut = tuple(
            (start, end, stretch_name(start, places, _letters(state)) in loaded)
            for start, end in stretches(state.supports, state.length)
        )
        tip = ""
        if state.kind in _PAST:
            there = values["post_dead"] + (values["post_live"] if _ABOVE in loaded else 0.0)
            tip = f"post {say(there, 'force')}" if there else ""
        span_text = say(values["span"], "length")
        measures = [
            (0.0, values["span"], f"{span_text} each" if state.kind in ("two", "three") else span_text)
        ]
        if state.kind == "out":
            measures = [(0.0, state.length, say(state.length, "length"))]
        elif state.kind in _PAST:
            measures.append((values["span"], state.length, say(values["overhang"], "length")))
        previous = None
        if ghost is not None and ghost[0].kind == state.kind:  # another beam altogether is no "before"
            before, drawn = ghost
            old = before.all_load.case(_drawn(before, drawn)).points(80)
            keep = old.x <= state.length * (1 + 1e-9)
            if keep.sum() > 1:
                previous = (tuple(old.x[keep]), tuple(old.deflection[keep]), tuple(old.moment[keep]))
        view = PastPostView(
            title=titled(self._title(values, state, gates), values, gates),
            length=state.length,
            depth=state.section["depth"],
            material_kind={"lvl": "lvl", "timber": "timber"}.get(state.material.kind, "sawn"),
            supports=self._posts(state),
            measures=tuple(measures),
            stretches=cut,
            load_text=_load_text(state, values, loaded, say),
            tip_text=tip,
            x=tuple(x),
            sag=tuple(solution.deflection(x)),
            sag_text=say(abs(peak), "small length"),
            moment=tuple(solution.moment(x)),
            most=tuple(most),
            least=tuple(least),
            moment_text=f"Moment: sags it {say(sagging, 'moment')} at most"
            + (f", the other way {say(hogging, 'moment')}" if hogging > lb * ft else ""),
            moment_full=full,
            moment_full_text=say(full, "moment"),
            camera_length=_SPANS[state.kind] * _LONGEST_SPAN
            + (_LONGEST_OVERHANG if state.kind in _PAST else 0.0),
            exaggeration=200.0,
            previous=previous,
        )
        return draw_past_post(view, frame)

    def _posts(self, state):
        downs = {letter: max(plain, reduced) for letter, plain, reduced in _hold_downs(state)}
        posts = []
        for number, letter in enumerate(_letters(state)):
            most = state.all_load.greatest_reaction(number).value
            least = state.all_load.least_reaction(number).value
            lifts = downs[letter] > DUST
            word = ("hold" if state.kind == "three" else "hold down") if lifts else "least"
            text = f"{word} {show(downs[letter] if lifts else without_dust(least), 'force', self.system)}"
            kind = "wall" if state.kind == "wall" and number == 1 else "post"
            posts.append(
                PostBelow(
                    state.supports[number].position,
                    letter,
                    kind,
                    show(most, "force", self.system),
                    text,
                    lifts,
                )
            )
        if state.kind == "out":
            posts.insert(1, PostBelow(state.length / 2, "B", "gone"))
        return tuple(posts)

    def _title(self, values, state, gates):
        lifting, most = _lifting(state)
        if lifting:
            verb, what = ("lifts", "it") if len(lifting) == 1 else ("lift", "each")
            up_to = "" if len(lifting) == 1 else "up to "
            down = f"{up_to}{show(most, 'force', self.system)} must hold {what} down"
            return f"Stop and call first: {_listed(lifting)} {verb}, and {down}"
        stop = verdict.STOP
        if state.kind == "out":
            moment, sag = post_out_ratios()
            stop = f"Stop and call first: {moment:.0f} times the moment, {sag:.1f} times the sag"
        unjudged = tuple(row.name for row in state.checks if row.given is None)
        words = lambda first: self._pushes_most(state)  # noqa: E731
        return verdict.headline(state.checks, gates, words, unjudged=unjudged, stop=stop)

    def _pushes_most(self, state):
        """The support that carries most, in words."""
        number = max(
            range(len(state.supports)),
            key=lambda n: state.all_load.greatest_reaction(n).value * (1 - 1e-9 * n),
        )
        asked = state.all_load.greatest_reaction(number)
        where = _where(state, asked.on)
        return f"{_letters(state)[number]} carries {show(asked.value, 'force', self.system)}, with live load {where}"


def _key(values):
    """What the numbers hang on: all but which arrangement is drawn."""
    return tuple((name, value) for name, value in values.items() if name != "drawn")


def _alone(solution):
    """One solved beam as an envelope of its own."""
    return Envelope(solution.beam, (), (solution,))


def _letters(state):
    return _LETTERS[state.kind]


def _where(state, on):
    """An arrangement in words."""
    there = [name for name, wanted in zip(state.groups, on) if wanted]
    if not there:
        return "nowhere"
    if len(there) == len(state.groups):
        return "everywhere"
    return _listed(there)


def _listed(words):
    return " and ".join(words) if len(words) < 3 else ", ".join(words[:-1]) + " and " + words[-1]


def _load_text(state, values, loaded, say):
    spans = [name for name in loaded if name != _ABOVE]
    where = ", ".join(spans) if spans else "nowhere"
    if spans and len(spans) == len([name for name in state.groups if name != _ABOVE]):
        where = "everywhere"
    return f"live {say(values['live'], 'line load')}: {where}; dead {say(values['dead'], 'line load')}"


def _hold_downs(state):
    found = []
    for number, letter in enumerate(_letters(state)):
        dead = sorted(state.dead_only.reactions, key=lambda reaction: reaction.position)[number].force
        passing = state.live_only.least_reaction(number).value
        plain = max(0.0, -state.all_load.least_reaction(number).value)
        found.append((letter, plain, hold_down_demand(dead_push=dead, passing_push=passing)))
    return tuple(found)


def _lifting(state):
    """Letters of the supports that lift under any arrangement, and the greatest hold-down asked."""
    downs = {letter: max(plain, reduced) for letter, plain, reduced in _hold_downs(state)}
    return [letter for letter, down in downs.items() if down > DUST], max(downs.values())


def _drawn(state, drawn):
    """Which arrangement the picture shows."""
    if drawn == "all":
        return (True,) * len(state.groups)
    if drawn == "lift":
        found = [state.all_load.least_reaction(number) for number in range(len(state.supports))]
        return min(found, key=lambda asked: asked.value).on
    return verdict.worst(state.checks).on


def _round_up(value, unit):
    """The next 1, 2 or 5 times a power of ten in a unit, so that a scale moves in steps."""
    step = 0.1 * unit
    while True:
        for times in (1, 2, 5):
            if times * step >= value:
                return times * step
        step *= 10


hold(globals())
