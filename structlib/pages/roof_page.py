"""What keeps the roof from spreading? A section through a pair of rafters, its push, and what holds it."""

from dataclasses import replace
from functools import lru_cache

import numpy

from structlib.ground.lumber import find_material
from structlib.ground.refusals import OutsideRule
from structlib.ground.sections import rectangle_area, rectangle_inertia
from structlib.ground.showing import show
from structlib.ground.units import ft, inch, lb, psf
from structlib.house.beam import BeamChoice, BeamJob, TypedLoad, check_beam
from structlib.mechanics import frames, frames_along, frames_uneven
from structlib.mechanics.beams import LineLoad
from structlib.mechanics.plane_frame import solve_frame
from structlib.mechanics.rafter_pair import rafter_pair
from structlib.pages import roof_joint, roof_one_side, roof_snow, verdict
from structlib.pages.beam_page import CAUTION
from structlib.pages.controls import Box, Page, Pick, Shown, Slide, Steps
from structlib.pages.door import hold
from structlib.pages.woods import WOODS, pieces
from structlib.pictures.drawings.roof import RoofPair, RoofStat, RoofView, draw_roof
from structlib.rules.check import BeamUse, Check, Seat, least_verified
from structlib.rules.us import combined, deflection, roof_ties
from structlib.rules.choice import RULEBOOK

RAFTERS, RIDGE = "rafters", "ridge"
_SETS = (("the rafters", RAFTERS), ("the ridge beam (or board)", RIDGE))
_HOLDS = (
    ("a tie at the eaves", "tie"),
    ("a raised tie", "raised tie"),
    ("a ridge beam on posts", "ridge beam"),
    ("nothing", "nothing"),
)
_SPACINGS = tuple((f"{inches:g} in", inches * inch) for inches in (12, 16, 19.2, 24))
#: The member that the sliders do not set: rafters beside a ridge beam, a tie, a ridge board.
_OTHER = ("Douglas Fir-Larch", "No.2")
_TIE = (1.5 * inch, 5.5 * inch)
_BOARD_WIDTH = 0.75 * inch
_SEAT = 3 * inch
# a push from which on the arrow grows no longer
_FULL_ARROW = 2500 * lb
_STEEP = "rafter steeper than 3:12, no finished ceiling"
_FLAT = "any other structural member"


class RoofPage(Page):
    """The bench of the roof: a pair of rafters under a load on plan, and four ways to hold it.

    Parameters
    ----------
    system : str
        Units of the reader: 'us' or 'metric' [-].
    rulebook : structlib.rules.check.Rulebook
        The rules to judge by [-].
    """

    def __init__(self, system="us", rulebook=RULEBOOK):
        self.system, self.rulebook = system, rulebook
        self.numbers = lru_cache(maxsize=64)(self._numbers)

    def controls(self, values):
        depths = tuple(depth for depth, *_ in pieces(values.get("wood", "fir")))
        woods = tuple((one.label, one.key) for one in WOODS if one.kind != "timber")
        load = dict(dimension="area load", low=0.0)
        return (
            Slide("span", "Span, on plan", "length", 6 * ft, 16 * ft, 3 * inch, 12 * ft),
            Steps("depth", "Depth", "section length", depths, max(d for d in depths if d <= 7.5 * inch)),
            Slide("plies", "Plies", "count", 1, 4, 1, 1),
            Pick("sets", "Sliders set", _SETS, RAFTERS),
            Pick("holds", "Held by", _HOLDS, "tie"),
            Slide("height", "Height of raised tie", "ratio", 0.05, 0.8, 0.01, 0.25),
            Slide("rise", "Rise in 12", "count", 2, 12, 1, 6),
            Slide("width", "House width", "length", 12 * ft, 32 * ft, 6 * inch, 24 * ft),
            Pick("spacing", "Rafters every", _SPACINGS, 16 * inch),
            Box("dead", "Dead, on plan", high=60 * psf, default=15 * psf, **load),
            Box("snow", "Roof snow", high=120 * psf, default=30 * psf, **load),
            Box("ground", "Ground snow", high=160 * psf, default=40 * psf, **load),
            Pick("exposed", "Around the roof", roof_snow.EXPOSURES, "partially exposed"),
            Pick("below", "Below the roof", roof_snow.BELOW, "heated"),
            Box("roof_live", "Roof live", high=40 * psf, default=20 * psf, **load),
            Pick("wood", "Wood", woods, "fir"),
        )

    # ---- working it out ---------------------------------------------------------------------------

    def _numbers(self, items):
        """Everything that is drawn and told, from the values as a tuple of pairs."""
        values = dict(items)
        sets_ridge = values["sets"] == RIDGE
        half = values["width"] / 2 if sets_ridge else values["span"]
        rise = half * values["rise"] / 12
        depth, ply_width, name, wood = min(
            pieces(values["wood"]), key=lambda piece: abs(piece[0] - values["depth"])
        )
        chosen = BeamChoice(wood, ply_width, depth, int(values["plies"]), f"{int(values['plies'])}-{name}")
        rafter = (
            BeamChoice(find_material(*_OTHER, "2x8"), 1.5 * inch, 7.25 * inch, 1, "1-2x8")
            if sets_ridge
            else chosen
        )
        combinations = self.rulebook.combinations(
            {kind for kind, key in (("snow", "snow"), ("roof live", "roof_live")) if values[key]}
        )
        areas = [(one, _area_load(one, values)) for one in combinations]
        most, area_load = max(areas, key=lambda pair: pair[1])
        height = values["height"] if values["holds"] == "raised tie" else 0.0
        now = {
            "values": values,
            "half": half,
            "rise": rise,
            "chosen": chosen,
            "rafter": rafter,
            "height": height,
            "holds": values["holds"],
            "most": most,
            "area_load": area_load,
            "areas": areas,
            "line_load": area_load * values["spacing"],
            "span": 2 * half,
            "left_out": [],
            "question": roof_snow.question(values, self.system),
        }
        now["pair"] = {"line_load": now["line_load"], "building_span": 2 * half}
        now["thrust"] = frames.rafter_thrust(**now["pair"], rise=rise)
        now["pull"] = frames.tie_force(**now["pair"], rise=rise, height_fraction=height)
        now["moment"], now["moment_at"] = _greatest_moment(now)
        now["solved"] = None if values["holds"] == "nothing" else _solve(now, now["line_load"])
        now["ridge"] = self._ridge_beam(now) if sets_ridge and values["holds"] == "ridge beam" else None
        even = self._checks(now)
        now["side"], now["no_side"] = self._one_side(now)
        now["checks"] = (*even, *(now["side"]["checks"] if now["side"] else ()))
        now["governs"] = verdict.worst(now["checks"])
        return now

    def _one_side(self, now):
        """The same roof with the ground snow on one slope alone, and why not where the rule gives none.

        It has the entries of the even case, those of the loaded rafter; the frame's LEFT rafter is loaded.
        """
        values, spacing, mark = now["values"], now["values"]["spacing"], roof_one_side.MARK
        blown, why = roof_one_side.blown_snow(
            ground=values["ground"], roof_snow=values["snow"], rise=values["rise"], half=now["half"]
        )
        if blown is None:
            return None, why
        # every combination with snow lasts as long, so the one that counts most of it asks most
        most = max((one for one, _ in now["areas"]), key=lambda one: one.factor("snow"))
        near, far = (_area_load(most, values | {"snow": load}) for load in (blown.leeward, blown.windward))
        loads = {"left_load": near * spacing, "right_load": far * spacing, "building_span": now["span"]}
        pull = lambda height: frames_uneven.uneven_tie_force(  # noqa: E731
            **loads, rise=now["rise"], height_fraction=height
        )
        side = now | {
            "blown": blown,
            "most": most,
            "areas": [(most, near)],
            "area_load": near,
            "far_load": far,
            "line_load": near * spacing,
            "thrust": pull(0.0),
            "pull": pull(now["height"]),
            "ridge_shear": frames_uneven.ridge_shear(**loads),
            "ridge_load": frames.ridge_beam_load(line_load=(near + far) / 2, building_span=now["span"]),
            "left_out": [],
            "checks": (),
        }
        if now["solved"] is None:
            return side, ""
        side["solved"] = _solve(now, near * spacing, far * spacing)
        passing = (most.factor("snow") * spacing * load for load in (blown.leeward, blown.windward))
        side["snow_alone"] = _solve(now, *passing)
        side["moment"], side["moment_at"] = roof_one_side.greatest_bending(side["solved"])
        mean = (blown.leeward + blown.windward) / 2
        if now["ridge"] is not None:
            side["ridge"] = self._ridge_beam(now, snow=mean)
        # a ridge beam feels the mean of both sides, and a ridge board neither
        if values["sets"] == RAFTERS or (now["ridge"] is not None and mean > values["snow"]):
            side["checks"] = tuple(
                replace(one, name=one.name + mark, verified=least_verified([one.verified, blown.verified]))
                for one in self._checks(side)
                if one.combination in (most.name, "snow")  # the others are asked by the even case too
            )
        told = {reason for _, reason in now["left_out"]}
        now["left_out"] += [(name + mark, why) for name, why in side["left_out"] if why not in told]
        return side, ""

    def _ridge_beam(self, now, snow=None):
        values = now["values"] if snow is None else now["values"] | {"snow": snow}
        span = values["span"]
        job = BeamJob(
            span - _SEAT,
            Seat(_SEAT, "post"),
            Seat(_SEAT, "post"),
            tuple(
                TypedLoad(
                    kind,
                    LineLoad(
                        0.0, span, frames.ridge_beam_load(line_load=values[key], building_span=now["span"])
                    ),
                )
                for kind, key in (("dead", "dead"), ("snow", "snow"), ("roof live", "roof_live"))
                if values[key]
            ),
            unbraced_length=values["spacing"],
            # rafters often hang on its sides; then no load near the post may be left out
            loaded_on="side",
            use=BeamUse(_FLAT),
        )
        return check_beam(job, now["chosen"], self.rulebook)

    def _checks(self, now):
        """Checks of what the sliders set, and of the tie; what a rule refuses is kept as a sentence."""
        values = now["values"]
        if values["sets"] == RIDGE:
            if now["ridge"] is not None:
                return tuple(_merged(now["ridge"].checks))
            if values["holds"] == "nothing":
                return ()
            width = now["chosen"].plies * now["chosen"].ply_width
            return roof_ties.ridge_board_checks(
                board_width=width,
                board_depth=now["chosen"].depth,
                rafter_depth=now["rafter"].depth,
                rise=values["rise"],
            )
        if values["holds"] == "nothing":
            return ()
        checks = []
        for name, ask in (
            ("bending and compression", _rafter_strength),
            ("shear in the rafter", _rafter_shear),
            ("sag of the rafter", _rafter_sag),
            ("pull in a 2x6 tie", _tie_pull),
        ):
            try:
                checks += ask(now)
            except OutsideRule as refused:
                now["left_out"].append((name, str(refused)))
        return tuple(checks)

    def gates(self, now):
        """Return the reasons to stop and call an engineer before anything is chosen here.

        Parameters
        ----------
        now : dict
            What `numbers` worked out [any].

        Returns
        -------
        tuple of str
            One sentence a gate; empty when none [-].
        """
        holds = now["holds"]
        if holds == "ridge beam":
            return ()
        if holds == "nothing":
            return (
                "Nothing holds these rafters, so they can slide apart: a hinged pair without a tie is a "
                "mechanism. "
                "Only its push is shown.",
            )
        if holds == "raised tie" and roof_ties.tie_kind(height_fraction=now["height"]) != "rafter tie":
            return (
                f"A tie {show(now['height'], 'ratio')} of the way up is above the lowest third. The code "
                f"has no number "
                "for it: it is engineered. Only what statics asks is shown.",
            )
        needed = roof_ties.ridge_beam_needed(rise=now["values"]["rise"], tie_height_fraction=now["height"])
        if needed.beam_needed:
            return (
                f"The ridge must be a beam here: {'; '.join(needed.reasons)}. Only what is asked is shown.",
            )
        return ()

    def compute(self, values, before=None, frame="page"):
        now = self.numbers(tuple(values.items()))
        ghost = self.numbers(tuple(before.items())) if before else None
        gates = self.gates(now)
        questions = (now["question"],) * bool(now["question"])
        return Shown(
            self.scene(now, ghost, gates, frame),
            ("what", "asked", "can give", "share", "loads and rule"),
            self.rows(now, gates or questions),
            self.notes(now),
            gates,
            questions,
            known=self.known(now),
        )

    def known(self, now):
        """List all that the page used, each with how well it is known.

        Parameters
        ----------
        now : dict
            What `numbers` worked out [any].

        Returns
        -------
        tuple of (str, str)
            What, and how it is known [-].
        """
        woods = [now["chosen"].material, now["rafter"].material]
        more = []
        if now["holds"] in ("tie", "raised tie"):
            woods.append(find_material(*_OTHER, "2x6"))
            known = _nails(now)[1] if now["area_load"] > 0 and not self.gates(now) else ""
            more += [("nails of the tie's joint", known)] if known else []
        if now["holds"] == "raised tie" and not self.gates(now):
            code = roof_ties.raised_tie_adjustment(height_fraction=now["height"])
            more.append(("the code's factors of a raised tie", code.verified))
        more += [(one.name, one.verified) for one in woods]
        more += [(f"loads {one.name}", one.verified) for one, _ in now["areas"]]
        if now["side"] is not None:
            more.append(("snow on one side", now["side"]["blown"].verified))
        return verdict.evidence(now["checks"], *more, ("loads", verdict.ENTERED))

    def rows(self, now, gates=()):
        """Return what is asked and what can be given, as rows of text.

        Parameters
        ----------
        now : dict
            What `numbers` worked out [any].
        gates : tuple of str
            Gates, or the question, that withdraw the verdicts; what is asked stays [-].

        Returns
        -------
        tuple of tuple of str
            What, asked, can give, share, loads and rule [-].
        """
        say, most = self._say, now["most"].name
        asked = lambda what, value, rule=most: (what, value, "", "", rule)  # noqa: E731
        rows = [asked("load on plan", say(now["area_load"], "area load"))]
        rows += roof_snow.asked_row(now["values"], self.system)
        holds = now["holds"]
        if holds == "ridge beam":
            ridge = frames.ridge_beam_load(line_load=now["area_load"], building_span=now["span"])
            rows += [
                asked("push at each eave", say(0.0, "force"), "the ridge beam carries, so nothing pushes"),
                asked(
                    "load along the ridge",
                    say(ridge, "line load"),
                    f"{most}; w L / 2, its own weight left out",
                ),
                asked(
                    "an end post, per foot of ridge span",
                    say(frames.ridge_post_load(ridge_load=ridge, spans=1 * ft), "force"),
                    "half of the span",
                ),
            ]
        else:
            word = (
                "push at each eave, a pair"
                if holds != "raised tie"
                else "push at the eave, were the tie there"
            )
            rows += [
                asked(word, say(now["thrust"], "force"), f"{most}; w L² / (8 h)"),
                asked(
                    "the same, by length of wall", say(now["thrust"] / now["values"]["spacing"], "line load")
                ),
            ]
        if holds in ("tie", "raised tie"):
            rows.append(asked("pull in the tie", say(now["pull"], "force"), f"{most}; the push / (1 - a)"))
        if holds != "nothing":
            rows.append(
                asked("greatest bending in a rafter", say(now["moment"], "moment"), f"{most}; {_where(now)}")
            )
            rows.append(asked("eaves part by", say(_spread(now), "small length"), _spread_from(now)))
        rows += self._one_side_rows(now)
        for check in now["checks"]:
            told = verdict.share_text(check, now["checks"])
            if now["left_out"]:
                told = told.removesuffix(" governs")  # what has no answer might
            rows.append(
                (
                    check.name,
                    # a sum of shares is a verdict, also where it stands under "asked"
                    "" if gates and check.dimension == "ratio" else say(check.asked, check.dimension),
                    "" if gates else show(check.given, check.dimension, self.system),
                    "" if gates else told,
                    f"{check.combination}; {check.clause.split(' (')[0]}".removeprefix("; "),
                )
            )
        rows += [
            (name, "", "", "" if gates else "no answer", "the rule does not cover it; see the notes")
            for name, _ in now["left_out"]
        ]
        return tuple(rows + self._more_rows(now, gates))

    def _one_side_rows(self, now):
        """What snow on one side asks, or why the rule gives none."""
        side = now["side"]
        if side is not None:
            rows = roof_one_side.demand_rows(side, self.system)
            if side["solved"] is not None:
                spread = self._say(_spread(side), "small length")
                rows.append(("one side: eaves part by", spread, "", "", _spread_from(now)))
            return rows
        return [("snow on one side", "not asked", "", "", now["no_side"])] if now["no_side"] else []

    def _more_rows(self, now, gates):
        """Nails of the joint and the code's factors, where there is a tie; posts, where there is a beam."""
        if now["ridge"] is not None:
            cases = [case["ridge"] for case in (now, now["side"]) if case is not None]
            push = max(demand.solution.reactions[0].force for one in cases for demand in one.demands)
            return [
                ("load on an end post", self._say(push, "force"), "", "", "own weight of the beam in it"),
                (
                    "load on a middle post, two such spans",
                    self._say(2 * push, "force"),
                    "",
                    "",
                    "simple spans; a beam in one piece gives it more",
                ),
            ]
        if now["holds"] not in ("tie", "raised tie"):
            return []
        rows = []
        if not gates and now["area_load"] > 0:
            rows.append(_nails(now)[0])
        if now["holds"] == "raised tie" and not gates:
            code = roof_ties.raised_tie_adjustment(height_fraction=now["height"])
            rows += [
                (
                    "code: span of the rafter table, times",
                    f"{code.span_factor:g}",
                    "",
                    "",
                    "IRC 2021 R802.4.1 note a",
                ),
                (
                    "code: nails of the heel table, times",
                    f"{code.joint_factor:g}",
                    "",
                    "",
                    f"IRC 2021 R802.5.2; {code.verified}",
                ),
            ]
        return rows

    def notes(self, now):
        """Return what must be said below the numbers.

        Parameters
        ----------
        now : dict
            What `numbers` worked out [any].

        Returns
        -------
        tuple of str
            One sentence a note [-].
        """
        values, notes = now["values"], []
        if values["sets"] == RAFTERS:
            notes.append(
                f"The sliders set the rafters: the house is twice their span wide, "
                f"{show(now['span'], 'length', self.system)}. "
                + (
                    "The slider House width waits."
                    if now["holds"] == "raised tie"
                    else "The sliders House width and Height of raised tie wait."
                )
            )
            if now["holds"] == "ridge beam":
                notes.append("The ridge beam is drawn, not sized: let the sliders set the ridge beam.")
        elif now["holds"] != "ridge beam":
            notes.append(
                "There is no ridge beam here, so the sliders set a ridge board; choose a ridge beam under "
                "Held by."
            )
        else:
            notes.append(
                "The sliders set the ridge beam; span is from post to post. The rafters drawn are 2x8 fir."
            )
        if now["height"] and now["height"] < frames.TIE_GOVERNS_FROM:
            more = frames.raised_tie_greatest_factor(height_fraction=now["height"])
            at_tie = frames.raised_tie_bending_factor(height_fraction=now["height"])
            notes.append(
                f"Bending at the tie is {at_tie:.2f} times that of a tie at the eaves; between tie and "
                f"ridge it is "
                f"{more:.2f} times. The code's factor goes by the first."
            )
        notes += [f"No answer to {name}: {refused}." for name, refused in now["left_out"]]
        if now["holds"] in ("tie", "raised tie"):
            notes.append(
                "The tie is a 2x6 of Douglas Fir-Larch No.2, checked for its pull alone. A ceiling on it bends it "
                "too, and a lap in it passes the whole pull on. Slip of its joints is left out of the spread."
            )
        if now["side"] is not None:
            blown = now["side"]["blown"]
            notes.append(
                f"Snow on one side is judged apart ({blown.clause}, {blown.verified}): the whole ground snow on "
                "one slope, none on the other, for rafters in one piece from eave to ridge. A pair with a raised "
                "tie is taken as such, which is our choice. The ground snow must be that of ASCE 7-16; a number "
                "of ASCE 7-22 is another one. Roof snow and ground snow are boxes of their own: work the first "
                "out from the second, as below."
            )
        elif values["snow"] and values["rise"] <= 7:
            notes.append(
                "Ground snow is 0, so these shares take the snow as even on both slopes. ASCE 7-16 7.6.1 also "
                "asks for all of the ground snow on one slope alone, from 1/2 in 12 to 7 in 12. That bends one "
                "rafter more."
            )
        notes.append(
            "Weight and snow only: wind, which lifts, is not here. "
            "Overhangs, which take a little of the push away, are left out."
        )
        notes.append(CAUTION)
        return tuple(notes)

    def _say(self, value, dimension):
        return show(value, dimension, self.system)

    # ---- drawing ----------------------------------------------------------------------------------

    def scene(self, now, ghost, gates=(), frame="page"):
        """Draw the section through the roof.

        Parameters
        ----------
        now : dict
            What `numbers` worked out [any].
        ghost : dict or None
            The same before the last change [any].
        gates : tuple of str
            Gates that withdraw the verdicts [-].
        frame : str
            Shape of the picture: 'page', 'wide' or 'tall' [-].

        Returns
        -------
        structlib.pictures.scene.Scene
            The picture [-].
        """
        system, chosen, beam = self.system, now["chosen"], now["holds"] == "ridge beam"
        sets_ridge = now["values"]["sets"] == RIDGE
        if sets_ridge:
            ridge = (chosen.plies * chosen.ply_width, chosen.depth)
        else:
            ridge = (3 * inch, 9.25 * inch) if beam else (_BOARD_WIDTH, now["rafter"].depth)
        first = now["governs"]
        mark = None
        told = first is not None and not (gates or now["question"] or now["left_out"])
        # the case that governs is the one that is drawn
        one_side = told and now["side"] is not None and first in now["side"]["checks"]
        seen = now["side"] if one_side else now
        if told and not sets_ridge and first.kind != "tie":
            mark = (first.position, f"{_short(first)} {show(first.share, 'ratio')}")
        view = RoofView(
            title=_title(now, gates, system),
            pair=_pair(now),
            rafter_depth=now["rafter"].depth,
            ridge_width=ridge[0],
            ridge_depth=ridge[1],
            load_text=_load_text(seen, system, one_side),
            push=min(1.0, max(now["thrust"], seen["thrust"]) / _FULL_ARROW),
            stats=_one_side_stats(now, system) if one_side else _stats(now, system),
            width_text=show(now["span"], "length", system),
            # the frame has its left rafter loaded, the picture its right one
            shape=_shape(seen, "right" if one_side else "left"),
            right_shape=_shape(seen) if one_side else (),
            loaded="right" if one_side else "both",
            moment=_moments(seen, one_side),
            mark=mark,
            exaggeration=40.0,
            note=_note(now, system),
            previous=None if ghost is None else _pair(ghost),
            post=beam,
        )
        return draw_roof(view, frame)


# ---- statics of the page ------------------------------------------------------------------------------


def _in_words(combination):
    """The name of a combination with its letters as words, for a picture that must stand alone."""
    words = {"D": "dead", "Lr": "roof live", "L": "live", "S": "snow"}
    return " ".join(words.get(part, part) for part in combination.split(" "))


def _area_load(combination, values):
    """Load on plan of one combination."""
    return sum(
        combination.factor(kind) * values[key]
        for kind, key in (("dead", "dead"), ("snow", "snow"), ("roof live", "roof_live"))
    )


def _greatest_moment(now):
    """The greatest moment in a rafter, and its place as a share of the plan distance from the eave."""
    simple = frames.simple_rafter_moment(**now["pair"])
    height = now["height"]
    if now["holds"] != "raised tie":
        return simple, 0.5
    place = height if height > frames.TIE_GOVERNS_FROM else 1 - 1 / (2 * (1 - height))
    return simple * frames.raised_tie_greatest_factor(height_fraction=height), place


def _solve(now, left_load, right_load=None):
    """The pair as a frame: one rafter of the page, a 2x6 tie; the same load on both sides unless told."""
    rafter = now["rafter"]
    size = {"width": rafter.plies * rafter.ply_width, "depth": rafter.depth}
    modulus = rafter.material.modulus
    return solve_frame(
        rafter_pair(
            building_span=now["span"],
            rise=now["rise"],
            left_load=left_load,
            right_load=left_load if right_load is None else right_load,
            axial_stiffness=modulus * rectangle_area(**size),
            bending_stiffness=modulus * rectangle_inertia(**size),
            held_by="tie" if now["holds"] in ("tie", "raised tie") else "ridge beam",
            height_fraction=now["height"],
            tie_axial_stiffness=find_material(*_OTHER, "2x6").modulus * _TIE[0] * _TIE[1],
        )
    )


def _points(now, solved, count=16, rafter="left"):
    """Points of a rafter from eave to ridge, as if it were the left one: x, y, move right, move up."""
    names = [name for name in solved.frame.bars if name.startswith(f"{rafter} rafter")]
    middle = -(solved.move("left")[0] + solved.move("right")[0]) / 2  # the picture keeps its middle
    found = []
    for name in names:
        bar = solved.frame.bars[name]
        start, (right, up) = solved.frame.joints[bar.start], solved.frame.run(name)
        for share in numpy.linspace(0.0, 1.0, count + 1):
            x, y = solved.shape(name, float(share))
            place, move = start.x + share * right, float(x) + middle
            if rafter == "right":  # seen in a mirror
                place, move = now["span"] - place, -move
            found.append((place, start.y + share * up, move, float(y)))
    return found


def _ridge_sag(now):
    """How far the ridge beam sags under everything, where one is set by the sliders."""
    return now["ridge"].check("sag under all load").asked if now["ridge"] is not None else 0.0


def _shape(now, rafter="left"):
    if now["solved"] is None or now["line_load"] <= 0:
        return ()
    sag = _ridge_sag(now)
    half, rise = now["half"], now["rise"]
    return tuple(
        (x, y, right - sag * rise / half * (1 - x / half), up - sag * x / half)
        for x, y, right, up in _points(now, now["solved"], rafter=rafter)
    )


def _spread(now):
    """How far the eaves part; a sagging ridge beam pushes both out as it comes down."""
    solved = now["solved"]
    bent = solved.move("right")[0] - solved.move("left")[0]
    return bent + 2 * _ridge_sag(now) * now["rise"] / now["half"]


def _spread_from(now):
    if now["holds"] == "tie":
        return "the tie stretches"
    if now["holds"] == "raised tie":
        return "the rafters bend below the tie"
    return (
        "the ridge beam sags" if now["ridge"] is not None else "the rafters shorten; the ridge kept in place"
    )


def _moments(now, one_side=False):
    """Bending along a rafter as shares of its greatest."""
    if now["holds"] == "nothing" or now["moment"] <= 0:
        return ()
    if one_side:
        return tuple((at, value / now["moment"]) for at, value in roof_one_side.bending_along(now["solved"]))
    half, height = now["half"], now["height"]
    places = sorted({*(i / 24 for i in range(25)), height})
    found = []
    for share in places:
        if share <= height and now["holds"] == "raised tie":
            value = frames_along.moment_below_tie(**now["pair"], distance=share * half)
        else:
            value = frames_along.moment_above_tie(
                **now["pair"], height_fraction=height, distance_from_ridge=(1 - share) * half
            )
        found.append((share, value / now["moment"]))
    return tuple(found)


def _push_along(now, line_load):
    """The greatest push along a rafter under a load."""
    if "far_load" in now:
        return roof_one_side.greatest_push(now["solved"]) * line_load / now["line_load"]
    pair = {"line_load": line_load, "building_span": now["span"], "rise": now["rise"]}
    foot = frames_along.compression_below_tie(**pair, distance=0.0)
    if now["holds"] == "ridge beam":
        return foot / 2  # the wall lifts a quarter of the load, and the ridge beam the rest
    above = frames_along.compression_above_tie(
        **pair, height_fraction=now["height"], distance_from_ridge=(1 - now["height"]) * now["half"]
    )
    return max(foot, above)


# ---- checks of the rafter and the tie ------------------------------------------------------------------


def _rafter_strength(now):
    """Bending and compression together, for the combination that asks most."""
    rafter, found = now["rafter"], []
    for combination, area_load in now["areas"]:
        line_load = area_load * now["values"]["spacing"]
        if line_load <= 0:
            continue
        found += combined.rafter_checks(
            rafter.material,
            width=rafter.plies * rafter.ply_width,
            plies=rafter.plies,
            depth=rafter.depth,
            length=frames.slope_length(building_span=now["span"], rise=now["rise"]),
            axial=_push_along(now, line_load),
            moment=now["moment"] * line_load / now["line_load"],
            combination=combination.name,
            time_factor=combination.time_factor,
            sharing_members=3,
        )
    if not found:
        return []
    worst = max(found, key=lambda check: check.share)
    if not numpy.isfinite(worst.share):
        raise OutsideRule(
            "the push along the rafter is more than that at which it bows out of its line, so it would "
            "not hold, and no share can be named; a deeper rafter pushes that further away"
        )
    return [_at(worst, now["moment_at"], "bending")]


def _rafter_shear(now):
    """Shear where the wall, or the tie, takes hold; nothing left out near the seat."""
    rafter, found = now["rafter"], []
    area = rectangle_area(width=rafter.plies * rafter.ply_width, depth=rafter.depth)
    for combination, area_load in now["areas"]:
        shear = _greatest_shear(now) * area_load / now["area_load"] if area_load else 0.0
        given, stress = rafter.material.shear * combination.time_factor, 1.5 * shear / area
        found.append(
            Check(
                "shear in the rafter",
                "shear",
                "the fibres slide along each other",
                stress,
                given,
                stress / given,
                "stress",
                0.0 if now["holds"] != "raised tie" else now["height"],
                "",
                combination.name,
                "NDS 2018 3.4.2",
                "f_v = 3 V / (2 b d) <= F_v C_D",
                verified=rafter.material.verified,
            )
        )
    return [max(found, key=lambda check: check.share)]


def _greatest_shear(now):
    """The greatest force square to a rafter, anywhere along it."""
    solved = now["solved"]
    names = [name for name in solved.frame.bars if name.startswith("left rafter")]
    return max(abs(solved.shear(name, share)) for name in names for share in (0.0, 1.0))


def _rafter_sag(now):
    """Sag square to the rafter from the straight line between eave and ridge, under what comes and goes."""
    values = now["values"]
    kind, key = max((("snow", "snow"), ("roof live", "roof_live")), key=lambda pair: values[pair[1]])
    length = frames.slope_length(building_span=now["span"], rise=now["rise"])
    use = _STEEP if values["rise"] > 3 else _FLAT
    divisor, clause, verified = deflection.limit_divisor(use)
    points = _points(now, now["solved"])
    part = values[key] / now["area_load"] if now["area_load"] else 0.0
    if "snow_alone" in now:
        kind, points, part = "snow", _points(now, now["snow_alone"]), 1.0
    first, last = points[0], points[-1]
    sine, cosine = now["rise"] / length, now["half"] / length

    def square(point, share):
        right = point[2] - (1 - share) * first[2] - share * last[2]
        up = point[3] - (1 - share) * first[3] - share * last[3]
        return abs(right * sine - up * cosine)

    sag, place = max(
        (square(point, point[0] / now["half"]) * part, point[0] / now["half"]) for point in points
    )
    limit = length / divisor
    return [
        Check(
            "sag of the rafter",
            "sag",
            "the rafter sags between eave and ridge",
            sag,
            limit,
            sag / limit,
            "small length",
            place,
            "",
            kind,
            f"{clause}, slope length/{divisor:.0f}" + (", no ceiling on it" if use == _STEEP else ""),
            "sag <= length / n",
            verified=least_verified([verified, now["rafter"].material.verified]),
        )
    ]


def _tie_pull(now):
    """The pull in a 2x6 tie against its tension value, holes and joints left out."""
    if now["holds"] not in ("tie", "raised tie"):
        return []
    wood, found = find_material(*_OTHER, "2x6"), []
    for combination, area_load in now["areas"]:
        value, used = combined.tension_value(
            wood, width=_TIE[0], depth=_TIE[1], time_factor=combination.time_factor
        )
        stress = now["pull"] * (area_load / now["area_load"] if area_load else 0.0) / (_TIE[0] * _TIE[1])
        found.append(
            Check(
                "pull in a 2x6 tie",
                "tie",
                "the tie is pulled",
                stress,
                value,
                stress / value,
                "stress",
                now["height"],
                "",
                combination.name,
                "NDS 2018 3.8.1",
                "f_t = T / A <= F_t'",
                verified=least_verified([wood.verified, *(one.verified for one in used)]),
            )
        )
    return [max(found, key=lambda check: check.share)]


def _at(check, place, kind):
    return replace(check, position=place, kind=kind)


def _merged(checks):
    """Left and right of the same question as one row: the end that uses more."""
    best = {}
    for check in checks:
        key = check.name.replace("left", "").replace("right", "")
        if key not in best or check.share > best[key].share:
            best[key] = check
    return best.values()


# ---- words --------------------------------------------------------------------------------------------


def _pair(now):
    return RoofPair(now["half"], now["rise"], now["holds"], now["height"])


def _where(now):
    if now["holds"] != "raised tie":
        return "in its middle; w (L/2)² / 8"
    return "at the tie" if now["height"] > frames.TIE_GOVERNS_FROM else "between tie and ridge"


_SHORT = {"bending": "bending", "shear": "shear", "sag": "sag"}


def _nails(now):
    """The row of the tie's joint, and how well its count is known."""
    cases = [case for case in (now, now["side"]) if case is not None]
    return roof_joint.nails_row(cases, tie_wood=_OTHER, tie_width=_TIE[0])


def _short(check):
    return _SHORT.get(check.kind, check.name)


def _load_text(now, system, one_side=False):
    load = show(now["area_load"], "area load", system)
    if one_side:
        return f"left {show(now['far_load'], 'area load', system)} (dead), right {load}"
    return f"{_in_words(now['most'].name)}: {load} on plan"


def _one_side_stats(now, system):
    """Each number in the case that asks most of it, with the case in its word."""

    def most(word, ask, dimension, role):
        even, one = ask(now), ask(now["side"])
        case = "one side" if one > even else "even load"
        return RoofStat(f"{word}, {case}", show(max(even, one), dimension, system), role)

    bend = most("bending", lambda case: case["moment"], "moment", "moment")
    spread = most("eaves part", _spread, "small length", "moved")
    at_eave = "push" if now["holds"] == "tie" else "push if tied"
    if now["holds"] == "ridge beam":
        even = frames.ridge_beam_load(line_load=now["area_load"], building_span=now["span"])
        return (
            RoofStat("push at each eave", show(0.0, "force", system), "force"),
            most("ridge load", lambda case: case.get("ridge_load", even), "line load", "force"),
            bend,
            spread,
        )
    return (
        most(at_eave, lambda case: case["thrust"], "force", "force"),
        most("tie pull", lambda case: case["pull"], "force", "force"),
        bend,
        spread,
    )


def _stats(now, system):
    def stat(word, value, dimension, role):
        return RoofStat(word, show(value, dimension, system), role)

    holds = now["holds"]
    if holds == "nothing":
        return (
            stat("push at each eave", now["thrust"], "force", "force"),
            RoofStat("held by", "nothing", "governs"),
            RoofStat("eaves part by", "no limit", "moved"),
        )
    bend = stat("most bending, a rafter", now["moment"], "moment", "moment")
    spread = stat("eaves part by", _spread(now), "small length", "moved")
    if holds == "ridge beam":
        ridge = frames.ridge_beam_load(line_load=now["area_load"], building_span=now["span"])
        return (
            stat("push at each eave", 0.0, "force", "force"),
            stat("load along the ridge", ridge, "line load", "force"),
            bend,
            spread,
        )
    at_eave = "push at each eave" if holds == "tie" else "push if tied at eaves"
    return (
        stat(at_eave, now["thrust"], "force", "force"),
        stat("pull in the tie", now["pull"], "force", "force"),
        bend,
        spread,
    )


def _note(now, system):
    chosen = now["chosen"]
    every = show(now["values"]["spacing"], "section length", system)
    slope = f"rise {now['values']['rise']:.0f} in 12"
    if now["values"]["sets"] == RAFTERS:
        return f"Rafters {chosen.name} every {every}, {slope}."
    thing = "Ridge beam" if now["holds"] == "ridge beam" else "Ridge board"
    span = f" over {show(now['values']['span'], 'length', system)}" if now["holds"] == "ridge beam" else ""
    return f"{thing} {chosen.name}{span}; rafters 2x8 every {every}, {slope}."


def _title(now, gates, system):
    stop = verdict.STOP
    if now["question"] and not gates:
        roof, ground = (show(now["values"][key], "area load", system) for key in ("snow", "ground"))
        stop = f"Which snow is right: {roof} on the roof, or {ground} on the ground?"
    unjudged = tuple(name for name, _ in now["left_out"])
    words = lambda first: _message(now, first, system)  # noqa: E731
    return verdict.headline(now["checks"], gates or now["question"], words, unjudged=unjudged, stop=stop)


def _message(now, first, system):
    if now["left_out"]:
        return "A rule does not cover these rafters"
    if first is None:
        return "Nothing weighs on this roof, so nothing pushes"
    used, holds = verdict.used(first.share), now["values"]["holds"]
    if first.name.endswith(roof_one_side.MARK):
        return _one_side_title(now["side"], first, used, system)
    pull = show(now["pull"], "force", system)
    if first.kind == "tie":
        return f"The tie is pulled with {pull}: {used}"
    if now["ridge"] is not None:
        name = first.name.split(",")[0]
        return f"{used}: {name} governs the ridge beam"
    if now["values"]["sets"] == RIDGE:
        return f"The ridge board's depth governs: {used}"
    if holds == "ridge beam":
        return f"No push: the ridge carries. Rafters {used}"
    if holds == "raised tie":
        return f"The raised tie pulls {pull}; rafters {used}"
    return f"Each eave is pushed by {show(now['thrust'], 'force', system)}; rafters {used}"


def _one_side_title(side, first, used, system):
    if first.kind == "tie":
        return f"Snow on one side pulls the tie with {show(side['pull'], 'force', system)}: {used}"
    if side["ridge"] is not None:
        return f"Snow on one side: {first.name.split(',')[0]} governs the ridge beam, {used}"
    what = {"sag": "makes its rafter sag most", "shear": "asks its rafter for most shear"}
    return f"Snow on one side {what.get(first.kind, 'bends its rafter most')}: {used}"


hold(globals())
