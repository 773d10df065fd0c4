"""What can old wood do? One old joist as measured, beside every wood that it might be, and its cuts."""

from functools import lru_cache

from structlib.ground.lumber import materials
from structlib.ground.showing import show
from structlib.ground.units import ft, inch, psf
from structlib.pages import old_wood_words as words
from structlib.pages import verdict
from structlib.pages.beam_page import CAUTION
from structlib.pages.controls import Box, Page, Pick, Shown, Slide
from structlib.pages.door import hold
from structlib.pages.old_wood_case import beyond, work_out
from structlib.pictures.drawings.old_wood import OldWoodView, draw_old_wood
from structlib.rules.check import least_verified
from structlib.rules.us import notches
from structlib.rules.us.deflection import creep_factor, limit_divisor, long_term_deflection
from structlib.rules.us.factors import total_limit, verified

_SHAPES = (
    ("sawn rectangle", "sawn"),
    ("round log", "round"),
    ("log with two flat sides", "flat sides"),
    ("half a log, flat face up", "half round"),
    ("hewn, corners gone by 1 in", "hewn"),
)
_WOODS = (
    ("not known", "any"),
    ("Douglas Fir-Larch, any grade", "Douglas Fir-Larch"),
    ("Southern Pine, any grade", "Southern Pine"),
    ("Hem-Fir, any grade", "Hem-Fir"),
    ("Eastern White Pine, any grade", "Eastern White Pine"),
    ("Spruce-Pine-Fir, any grade", "Spruce-Pine-Fir"),
    ("any wood of No.2", "No.2"),
)
_CUTS = (
    ("none", "none"),
    ("a notch in the top", "notch top"),
    ("a notch in the bottom", "notch bottom"),
    ("a hole at mid-depth", "hole middle"),
    ("a hole, 2 in of wood below it", "hole 2"),
    ("a hole, 1 in of wood below it", "hole 1"),
)
_KINDS = (("sawn or hewn", "sawn"), ("engineered, or a truss", "engineered"))
_STATES = (
    ("sound, as far as seen", "sound"),
    ("a crack across the grain", "crack"),
    ("rot or insects at an end", "rot"),
    ("large knots or splits: maybe no grade", "no grade"),
)

_GATES = {
    "engineered": "An engineered member is cut only as its maker or a design professional says. No limit "
    "here is for it.",
    "crack": "A crack across the grain means that the wood is breaking. Keep load and people off it, and "
    "call a structural engineer.",
    "rot": "Rot or insects at an end leave an unknown amount of wood. Have that end looked at by an engineer "
    "first.",
    "no grade": "Wood with large knots or long splits may be below the lowest grade, No.3. There no number is "
    "published and none is shown: only a grader can tell.",
}


_CUT_LOG = (
    "What a cut leaves of a log or of a hewn timber is not worked out here, and the limits are those of sawn "
    "lumber. An engineer looks at it; only what is asked is shown."
)


class OldWoodPage(Page):
    """The bench of one old joist: its measured size, the woods that it may be of, and one notch or hole.

    Parameters
    ----------
    system : str
        Units of the reader: 'us' or 'metric' [-].
    """

    def __init__(self, system="us"):
        self.system = system
        self.case = lru_cache(maxsize=64)(self._case)

    def controls(self, values):
        return (
            Slide("span", "Span", "length", 6 * ft, 20 * ft, 3 * inch, 13 * ft),
            Slide("depth", "Depth, measured", "section length", 3 * inch, 14 * inch, 0.25 * inch, 7.5 * inch),
            Slide("plies", "Pieces", "count", 1, 3, 1, 1),
            Slide(
                "width", "Width, measured", "section length", 1.5 * inch, 10 * inch, 0.125 * inch, 2 * inch
            ),
            Pick("shape", "Shape", _SHAPES, "sawn"),
            Slide("taper", "Log thins by", "section length", 0.0, 2 * inch, 0.25 * inch, 0.0),
            Pick("wood", "Wood", _WOODS, "any"),
            Pick("cut", "Cut", _CUTS, "notch top"),
            Slide("place", "Cut at", "length", 0.0, 20 * ft, 1 * inch, 3 * ft),
            Slide("size", "Size of cut", "section length", 0.25 * inch, 6 * inch, 0.125 * inch, 1.25 * inch),
            Box("length", "Length of notch", "section length", 0.25 * inch, 24 * inch, 2.5 * inch),
            Pick("kind", "Member", _KINDS, "sawn"),
            Pick("state", "The wood is", _STATES, "sound"),
            Box("spacing", "Joists every", "section length", 8 * inch, 48 * inch, 16 * inch),
            Box("dead", "Dead load", "area load", 1 * psf, 100 * psf, 10 * psf),
            Box("live", "Live load", "area load", 1 * psf, 200 * psf, 30 * psf),
        )

    def _case(self, items):
        """The joist worked out from the values as a tuple of pairs."""
        return work_out(dict(items))

    def compute(self, values, before=None, frame="page"):
        now = self.case(tuple(values.items()))
        ghost = self.case(tuple(before.items())) if before else None
        gates = self.gates(values)
        return Shown(
            self.scene(values, now, before, ghost, gates, frame),
            ("check", "asked", "can give", "share", "rule"),
            self.rows(values, now, gates),
            self.notes(values, now),
            gates,
            known=verdict.evidence(self.judged(values, now), ("loads", verdict.ENTERED)),
        )

    def judged(self, values, now):
        """Return every question of the page, each for the wood of which it asks most.

        Parameters
        ----------
        values : dict
            Values of the controls [any].
        now : structlib.pages.old_wood_case.OldWoodCase
            The joist worked out [-].

        Returns
        -------
        tuple of structlib.pages.verdict.Judged or structlib.rules.check.Check
            The questions [-].
        """
        known = least_verified(one.verified for one in now.shares)
        found = [
            verdict.Judged(name, max(getattr(one, key) for one in now.shares), known)
            for name, key in (("bending", "bending"), ("shear at the ends", "shear"), ("sag", "sag"))
        ]
        found += [verdict.Judged(one.name, max(one.shares), least_verified([known, "computed"])) for one in now.at_cut]
        found += now.checks
        years = _after_years(values, [one.live_sag for one in now.shares])
        if years:
            share = max(years) * total_limit()[0] / values["span"]
            found.append(verdict.Judged("sag after years", share, "recalled", decides=False))
        return tuple(found)

    def gates(self, values):
        """Return the reasons to stop and call an engineer before anything else.

        Parameters
        ----------
        values : dict
            Values of the controls [any].

        Returns
        -------
        tuple of str
            One sentence a gate; empty when none [-].
        """
        gates = [_GATES[values[name]] for name in ("kind", "state") if values[name] in _GATES]
        if values["shape"] != "sawn" and values["cut"] != "none":
            gates.append(_CUT_LOG)
        if values["state"] != "no grade" and self.case(tuple(values.items())).none_of_it:
            name = next(label for label, key in _WOODS if key == values["wood"]).removesuffix(", any grade")
            gates.append(
                f"No values for {name} in this size are in this library, and those of another wood do not "
                "stand in for it. What it can give, a grader or an engineer says."
            )
        return tuple(gates)

    def rows(self, values, now, gates=()):
        """Return the checks as rows of text, each as a range over the woods.

        Parameters
        ----------
        values : dict
            Values of the controls [any].
        now : structlib.pages.old_wood_case.OldWoodCase
            The joist worked out [-].
        gates : tuple of str
            Gates that withdraw the verdicts; what is asked stays [-].

        Returns
        -------
        tuple of tuple of str
            Name, asked, can give, share, rule [-].
        """
        shares, system = now.shares, self.system

        def row(name, asked, given, used, dimension, rule):
            verdict = (
                ("", "")
                if gates
                else (words.range_text(given, dimension, system), words.range_text(used, "ratio", system))
            )
            return (name, words.range_text(asked, dimension, system), *verdict, rule)

        def stiff(row):
            """What a wood's stiffness makes; without a wood there is none."""
            return (row[0], "not known: the wood decides", "", "", row[4]) if now.none_of_it else row

        each = lambda name: [getattr(one, name) for one in shares]  # noqa: E731
        divisor = limit_divisor("floor")[0]
        rows = [
            row(
                "bending",
                each("bending_stress"),
                each("bending_value"),
                each("bending"),
                "stress",
                "dead + live; NDS 2018 4.3",
            ),
            row(
                "shear at the ends",
                each("shear_stress"),
                each("shear_value"),
                each("shear"),
                "stress",
                "dead + live; NDS 2018 3.4.2",
            ),
            stiff(
                row(
                    "sag under live load",
                    each("live_sag"),
                    [values["span"] / divisor],
                    each("sag"),
                    "small length",
                    f"live; span/{divisor:g}",
                )
            ),
            stiff(self._years_row(values, each("live_sag"), row)),
        ]
        rows += [
            row(one.name, [one.asked], one.given, one.shares, one.dimension, one.rule) for one in now.at_cut
        ]
        for check in now.checks:
            rows.append(self._limit_row(check, gates))
        if values["cut"] != "none" and values["kind"] != "sawn":
            rows.append(("cutting this member", "", "", "" if gates else "refused", "IRC R502.8.2"))
        low, high = now.frequency
        rows.append(
            stiff(
                (
                    "first frequency, empty floor",
                    f"{low:.1f} to {high:.1f} Hz" if high > 1.005 * low else f"{low:.1f} Hz",
                    "",
                    "",
                    "no limit here",
                )
            )
        )
        return tuple(rows)

    def _years_row(self, values, live_sags, row):
        """Sag after years beside span/240, for information: the weight that stays makes the wood creep."""
        creep, divisor = creep_factor(wet=False), total_limit()[0]
        after = _after_years(values, live_sags)
        if not after:
            return ("sag after years", "more than the span", "", "", "so much that no number holds")
        limit = values["span"] / divisor
        rule = f"{creep:g} x dead + live; span/{divisor:g}"
        told = row("sag after years", after, [limit], [one / limit for one in after], "small length", rule)
        share = f"{told[3]} (for information)" if told[3] else ""
        return (*told[:3], share, told[4])

    def _limit_row(self, check, gates):
        if check.given <= 0:
            asked = show(check.asked, check.dimension, self.system) if check.asked > 1e-9 else "none"
            verdict = ("none", "within" if check.share == 0 else "refused")
            name = {
                "outside the middle third": "notch in the middle third",
                "tension side": "notch on the tension side",
            }.get(check.name, check.name)
            return (name, asked, *(("", "") if gates else verdict), check.clause)
        verdict = (
            show(check.given, check.dimension, self.system),
            show(check.share, "ratio") + (" refused" if beyond(check) else ""),
        )
        return (
            check.name,
            show(check.asked, check.dimension, self.system),
            *(("", "") if gates else verdict),
            check.clause,
        )

    def notes(self, values, now):
        """Return what must be said below the numbers.

        Parameters
        ----------
        values : dict
            Values of the controls [any].
        now : structlib.pages.old_wood_case.OldWoodCase
            The joist worked out [-].

        Returns
        -------
        tuple of str
            One sentence a note [-].
        """
        shares, notes = now.shares, []
        if len(shares) > 1 and not now.none_of_it:
            notes.append(
                f"{len(shares)} woods and grades compared. Old wood has no stamp: which of them it is, a "
                f"grader or "
                "an engineer says."
            )
        if not now.none_of_it:
            notes.append(
                f"The range ends at {now.lowest_grade}. For wood below it no number is shown here: only a "
                "grader can tell."
            )
            missing = sorted({wood.species for wood in materials("dimension")} - {one.wood.species for one in shares})
            if missing and values["wood"] in ("any", "No.2"):
                notes.append(f"Not in the range, for lack of values in this size: {', '.join(missing)}.")
        if values["shape"] not in ("sawn", "hewn"):
            notes.append(
                "A log is compared here with sawn lumber of the same outer size. Logs have rules of their "
                "own, and so "
                "do cuts in them."
            )
        if values["width"] > values["depth"] and values["shape"] == "flat sides":
            notes.append("A log is no wider than it is deep, so this one is taken as round.")
        if values["taper"] and values["shape"] != "round":
            notes.append("Only the round log gets thinner here, to the right.")
        if values["spacing"] <= 24 * inch * (1 + 1e-9) and any(one.wood.kind != "timber" for one in shares):
            notes.append(
                "Joists no more than 24 in apart count as helped by their neighbours through the floor: 15 % "
                "more in bending (NDS 2018 4.3.9). A loose floor, or fewer than three joists, does not give "
                "that."
            )
        if values["plies"] > 1:
            notes.append(
                "Pieces side by side count as fastened to one another, sound alike and loaded alike."
            )
        notes.append(
            "The share of sag is that of the live load alone. Sag after years has the weight that stays in "
            f"it, with the creep of wood that was dry (NDS 2018 3.5.2, {verified('creep_dry')}); it decides "
            "nothing here."
        )
        if values["live"] < 40 * psf * (1 - 1e-9):
            notes.append(
                "Under 40 psf of live load is for sleeping rooms (30 psf) and attics; other rooms of a house "
                "ask 40 psf (IRC Table R301.5)."
            )
        if any(beyond(check) for check in now.checks) and not self.gates(values):
            notes.append(
                "A cut beyond the code's limits is not to be made. Where one exists, an engineer designs "
                "the repair."
            )
        if now.cut is not None and isinstance(now.cut, notches.Notch):
            notes.append(
                "The corner of a notch splits wood sooner than the numbers say: they count only the wood "
                "left."
            )
        known = sorted({one.verified for one in shares} - {"seen"})
        if now.none_of_it:
            notes.append("Design values: none that would hold for it. Limits on cuts: seen.")
        elif known:
            notes.append(f"Design values: NDS Supplement 2018, {' and '.join(known)}. Limits on cuts: seen.")
        notes.append(CAUTION)
        return tuple(notes)

    def scene(self, values, now, before=None, ghost=None, gates=(), frame="page"):
        """Draw the joist, its cut and the range.

        Parameters
        ----------
        values : dict
            Values of the controls [any].
        now : structlib.pages.old_wood_case.OldWoodCase
            The joist worked out [-].
        before : dict or None
            Values before the last change [any].
        ghost : structlib.pages.old_wood_case.OldWoodCase or None
            The joist before [-].
        gates : tuple of str
            Gates that withdraw the verdicts [-].
        frame : str
            Shape of the picture: 'page', 'wide' or 'tall' [-].

        Returns
        -------
        structlib.pictures.scene.Scene
            The picture [-].
        """
        system, section = self.system, now.section
        checks = () if gates else now.checks
        ranges, short = ((), ()) if gates else words.ranges(now.used)
        view = OldWoodView(
            title=words.title(now, self.judged(values, now), gates),
            span=values["span"],
            span_text=show(values["span"], "length", system),
            depth=section.depth,
            right_depth=now.right_depth,
            width=section.width,
            wane=now.wane,
            shape=section.shape,
            size_text=words.size_text(values, section, system),
            place=now.place,
            cut=words.drawn_cut(now.cut, section.depth),
            heading=words.heading(values, now.place, system),
            reasons=words.reasons(checks, system) or words.may_be_cut(values, section, gates, system),
            ranges=ranges,
            short_ranges=short,
            allowed=() if gates else now.allowed,
            limit=None if gates else now.limit,
            greatest_hole=0.0 if gates else now.greatest_hole,
            refused=any(beyond(check) for check in checks)
            or (values["kind"] != "sawn" and values["cut"] != "none"),
            middle_third=values["kind"] == "sawn",
            note=f"Joists every {show(values['spacing'], 'section length', system)}, "
            f"{show(values['dead'] + values['live'], 'area load', system)}."
            + ("" if gates else f" Below {now.lowest_grade} only a grader can tell."),
            previous=None
            if ghost is None or before == values
            else (
                before["span"],
                ghost.section.depth,
                ghost.right_depth,
                words.drawn_cut(ghost.cut, ghost.section.depth),
            ),
        )
        return draw_old_wood(view, frame)


def _after_years(values, live_sags):
    """Sag after years for each sag under the live load, as the weight that stays makes the wood creep.

    None where the sag is more than the span, so much that no number holds.
    """
    if max(live_sags) * (values["dead"] + values["live"]) / values["live"] > values["span"]:
        return []
    creep = creep_factor(wet=False)
    lasting = values["dead"] / values["live"]
    return [
        long_term_deflection(lasting=live * lasting, passing=live, creep_factor=creep) for live in live_sags
    ]


hold(globals())
