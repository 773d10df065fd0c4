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
from structlib.mechanics import frames, frames_along
from structlib.mechanics.beams import LineLoad
from structlib.mechanics.plane_frame import solve_frame
from structlib.mechanics.rafter_pair import rafter_pair
from structlib.pages.beam_page import CAUTION
from structlib.pages.controls import Box, Pick, Shown, Slide, Steps
from structlib.pages.woods import WOODS, pieces
from structlib.pictures.drawings.roof import RoofPair, RoofStat, RoofView, draw_roof
from structlib.rules.check import BeamUse, Check, Seat, governing, least_verified
from structlib.rules.us import combined, deflection, dowels, roof_ties
from structlib.rules.us.book import RULEBOOK

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
_NAIL = "16d common"


class RoofPage:
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
        """Describe what can be moved: span, depth and plies first.

        Parameters
        ----------
        values : dict
            Current values; the depths follow the wood chosen [any].

        Returns
        -------
        tuple
            Controls in the order in which they stand on the page [-].
        """
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
        }
        now["pair"] = {"line_load": now["line_load"], "building_span": 2 * half}
        now["thrust"] = frames.rafter_thrust(**now["pair"], rise=rise)
        now["pull"] = frames.tie_force(**now["pair"], rise=rise, height_fraction=height)
        now["moment"], now["moment_at"] = _greatest_moment(now)
        now["solved"] = None if values["holds"] == "nothing" else _solve(now, now["line_load"])
        now["ridge"] = self._ridge_beam(now) if sets_ridge and values["holds"] == "ridge beam" else None
        now["checks"] = self._checks(now)
        now["governs"] = governing(now["checks"]) if any(c.decides for c in now["checks"]) else None
        return now

    def _ridge_beam(self, now):
        values = now["values"]
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
        """Answer one set of values: the picture, its numbers, notes and gates.

        Parameters
        ----------
        values : dict
            Values of the controls [any].
        before : dict or None
            The values before the last change, drawn as a ghost [any].
        frame : str
            Shape of the picture: 'page', 'wide' (16:9) or 'tall' (9:16) [-].

        Returns
        -------
        structlib.pages.controls.Shown
            What the page shows [-].
        """
        now = self.numbers(tuple(values.items()))
        ghost = self.numbers(tuple(before.items())) if before else None
        gates = self.gates(now)
        return Shown(
            self.scene(now, ghost, gates, frame),
            ("what", "asked", "can give", "share", "loads and rule"),
            self.rows(now, gates),
            self.notes(now),
            gates,
        )

    def rows(self, now, gates=()):
        """Return what is asked and what can be given, as rows of text.

        Parameters
        ----------
        now : dict
            What `numbers` worked out [any].
        gates : tuple of str
            Gates that withdraw the verdicts; what is asked stays [-].

        Returns
        -------
        tuple of tuple of str
            What, asked, can give, share, loads and rule [-].
        """
        say, most = self._say, now["most"].name
        asked = lambda what, value, rule=most: (what, value, "", "", rule)  # noqa: E731
        rows = [asked("load on plan", say(now["area_load"], "area load"))]
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
        for check in now["checks"]:
            first = check is now["governs"] and not now["left_out"]
            told = show(check.share, "ratio") + (" governs" if first else "")
            if not check.decides:
                told = show(check.share, "ratio") + " (for information)"
            rows.append(
                (
                    check.name,
                    show(check.asked, check.dimension, self.system),
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

    def _more_rows(self, now, gates):
        """Nails of the joint and the code's factors, where there is a tie; posts, where there is a beam."""
        if now["ridge"] is not None:
            push = max(d.solution.reactions[0].force for d in now["ridge"].demands)
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
            told = str(_nails(now))
            rows.append(
                (
                    f"{_NAIL} nails, each joint of the tie",
                    told,
                    "",
                    "",
                    "NDS 2018 12.3, wood to wood, computed",
                )
            )
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
                f"{show(now['span'], 'length', self.system)}, and the slider House width waits."
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
                "The tie is a 2x6 of Douglas Fir-Larch No.2. Slip of its joints is left out of the spread."
            )
        if now["checks"]:
            known = least_verified(check.verified for check in now["checks"])
            notes.append(f"At best these numbers are as well known as the weakest of them: {known}.")
        notes.append(
            "Weight and snow only: wind, which lifts, is not here. "
            "Overhangs, which take a little of the push away, are left out. Snow on one side is in a "
            "table below."
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
        told = first is not None and not gates and not now["left_out"]
        if told and not sets_ridge and first.kind != "tie":
            mark = (first.position, f"{_short(first)} {show(first.share, 'ratio')}")
        view = RoofView(
            title=_title(now, gates, system),
            pair=_pair(now),
            rafter_depth=now["rafter"].depth,
            ridge_width=ridge[0],
            ridge_depth=ridge[1],
            load_text=f"{now['most'].name}: {show(now['area_load'], 'area load', system)} on plan",
            push=min(1.0, now["thrust"] / _FULL_ARROW),
            stats=_stats(now, system),
            width_text=show(now["span"], "length", system),
            shape=_shape(now),
            moment=_moments(now),
            mark=mark,
            exaggeration=40.0,
            note=_note(now, system),
            previous=None if ghost is None else _pair(ghost),
            post=beam,
        )
        return draw_roof(view, frame)


# ---- statics of the page ------------------------------------------------------------------------------


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


def _solve(now, line_load):
    """The pair as a frame: one rafter of the page, a 2x6 tie."""
    rafter = now["rafter"]
    size = {"width": rafter.plies * rafter.ply_width, "depth": rafter.depth}
    modulus = rafter.material.modulus
    return solve_frame(
        rafter_pair(
            building_span=now["span"],
            rise=now["rise"],
            left_load=line_load,
            right_load=line_load,
            axial_stiffness=modulus * rectangle_area(**size),
            bending_stiffness=modulus * rectangle_inertia(**size),
            held_by="tie" if now["holds"] in ("tie", "raised tie") else "ridge beam",
            height_fraction=now["height"],
            tie_axial_stiffness=find_material(*_OTHER, "2x6").modulus * _TIE[0] * _TIE[1],
        )
    )


def _points(now, solved, count=16):
    """Points of the left rafter from eave to ridge: x, y, move right, move up."""
    names = [name for name in solved.frame.bars if name.startswith("left rafter")]
    middle = -(solved.move("left")[0] + solved.move("right")[0]) / 2  # the picture keeps its middle
    found = []
    for name in names:
        bar = solved.frame.bars[name]
        start, (right, up) = solved.frame.joints[bar.start], solved.frame.run(name)
        for share in numpy.linspace(0.0, 1.0, count + 1):
            x, y = solved.shape(name, float(share))
            found.append((start.x + share * right, start.y + share * up, float(x) + middle, float(y)))
    return found


def _ridge_sag(now):
    """How far the ridge beam sags under everything, where one is set by the sliders."""
    return now["ridge"].check("sag under all load").asked if now["ridge"] is not None else 0.0


def _shape(now):
    if now["solved"] is None or now["line_load"] <= 0:
        return ()
    sag = _ridge_sag(now)
    half, rise = now["half"], now["rise"]
    return tuple(
        (x, y, right - sag * rise / half * (1 - x / half), up - sag * x / half)
        for x, y, right, up in _points(now, now["solved"])
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


def _moments(now):
    """Bending along a rafter as shares of its greatest."""
    if now["holds"] == "nothing" or now["moment"] <= 0:
        return ()
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
            depth=rafter.depth,
            length=frames.slope_length(building_span=now["span"], rise=now["rise"]),
            axial=_push_along(now, line_load),
            moment=now["moment"] * line_load / now["line_load"],
            combination=combination.name,
            time_factor=combination.time_factor,
            sharing_members=3,
        )
    return [_at(max(found, key=lambda check: check.share), now["moment_at"], "bending")] if found else []


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
    first, last = points[0], points[-1]
    part = values[key] / now["area_load"] if now["area_load"] else 0.0
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
            f"{clause}, slope length/{divisor:.0f}",
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


def _nails(now):
    """Nails of one joint by calculation, for the combination that needs most, or why there is no count."""
    rafter, tie = now["rafter"], find_material(*_OTHER)
    gravity = rafter.material.specific_gravity or tie.specific_gravity
    try:
        return max(
            roof_ties.heel_joint_nails(
                thrust=now["thrust"] * area_load / now["area_load"],
                fastener=dowels.nail(_NAIL),
                rafter=dowels.wood_piece(thickness=rafter.plies * rafter.ply_width, specific_gravity=gravity),
                tie=dowels.wood_piece(thickness=_TIE[0], specific_gravity=tie.specific_gravity),
                time_factor=combination.time_factor,
                height_fraction=now["height"],
            ).nails
            for combination, area_load in now["areas"]
            if area_load > 0
        )
    except OutsideRule as refused:
        return f"no count: {refused}"


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


def _short(check):
    return _SHORT.get(check.kind, check.name)


def _stats(now, system):
    def stat(word, value, dimension, role):
        return RoofStat(word, show(value, dimension, system), role)

    holds = now["holds"]
    if holds == "nothing":
        return (
            stat("push at each eave", now["thrust"], "force", "force"),
            RoofStat("held by", "nothing", "governs"),
            RoofStat("eaves part by", "without end", "moved"),
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
    at_eave = "push at each eave" if holds == "tie" else "push, tie at the eave"
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
    if gates:
        return "Stop and call first: only what is asked is shown"
    first = now["governs"]
    if now["left_out"]:
        return "A rule does not cover these rafters: see the notes"
    if first is None:
        return "Nothing weighs on this roof, so nothing pushes"
    who = "the ridge beam" if now["ridge"] is not None else "the rafters"
    if now["values"]["sets"] == RIDGE and now["ridge"] is None:
        who = "the ridge board"
    if first.kind == "tie":
        who = "the tie"
    name = {"bending and compression": "bending"}.get(first.name, first.name)
    name = name.split(",")[0].replace(" of the rafter", "").replace(" in the rafter", "")
    name = "pull" if first.kind == "tie" else name
    return f"{show(first.share, 'ratio')} used: {name} governs {who}"
