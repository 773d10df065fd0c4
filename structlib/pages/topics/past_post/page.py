"""What happens past the post? Overhangs, two and three spans, and a middle post taken out."""

from functools import lru_cache
from math import ceil

from structlib.ground.loads import LoadsByType
from structlib.ground.refusals import OutsideRule
from structlib.ground.showing import show
from structlib.ground.units import ft, inch, kip, lb, plf
from structlib.house.bays import one_piece
from structlib.house.judging import judge_element
from structlib.house.path import follow
from structlib.pages.kit import verdict
from structlib.pages.kit.comes_down import comes_down, comes_down_pick, titled, without_load
from structlib.pages.kit.controls import Box, Page, Pick, Shown, Slide, Steps
from structlib.pages.kit.door import hold
from structlib.pages.kit.verdict import CAUTION
from structlib.pages.kit.woods import WOODS, pieces, wood
from structlib.pages.topics.meanwhile.page import GATE as MEANWHILE
from structlib.pages.topics.past_post.result import LETTERS, PastPostResult, listed
from structlib.pages.topics.past_post.tables import DUST, post_out_ratios, without_dust
from structlib.pictures.drawings.past_post import PastPostView, PostBelow, draw_past_post
from structlib.rules.check import Rulebook, Seat
from structlib.rules.choice import RULEBOOK
from structlib.rules.members import BEAM_FACE, Push, SeatMember, ask

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
#: By kind: the spans between the first support and the last.
_SPANS = {"over": 1, "wall": 1, "two": 2, "three": 3, "out": 2}
_LONGEST_SPAN, _LONGEST_OVERHANG = 16 * ft, 6 * ft

BEYOND_THE_WALL = (
    "A post or wall from above stands past the foundation wall; prescriptive tables of cantilevered "
    "floors are not in this library, so an engineer designs it and only what is asked is shown."
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


class PastPostPage(Page):
    """The bench of beams that run on: past a post, over one, over two, and with one taken out."""

    def __init__(self, system: str = "us", rulebook: Rulebook = RULEBOOK):
        self.system, self.rulebook = system, rulebook
        self.result = lru_cache(maxsize=64)(self._result)

    def controls(self, values):
        depths = tuple(depth for depth, *_ in pieces(values.get("wood", "fir")))
        load = dict(dimension="line load", low=0.0, high=2000 * plf)
        post = dict(dimension="force", low=0.0, high=20 * kip)
        return (
            Slide("span", "Span, each", "length", 6 * ft, _LONGEST_SPAN, 3 * inch, 12 * ft),
            Steps("depth", "Depth", "section length", depths, min(depths, key=lambda d: abs(d - 11.25 * inch))),
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

    # ---- the way of the load ----

    def path(self, values):
        """Return the way of the load that a set of values describes: a beam in one piece on its posts."""
        kind, span = values["kind"], values["span"]
        step = 2 if kind == "out" else 1
        above = {"dead": values["post_dead"], "live": values["post_live"]}
        return follow(one_piece(
            LoadsByType({"dead": values["dead"], "live": values["live"]}),
            posts={letter: step * number * span for number, letter in enumerate(LETTERS[kind])},
            length=_SPANS[kind] * span + (values["overhang"] if kind in _PAST else 0.0),
            wood=wood(values["wood"]).words(_size(values)[2], int(values["plies"])),
            above=LoadsByType(above) if kind in _PAST and any(above.values()) else None,
        ))  # fmt: skip

    def _result(self, items):
        values, silent = dict(items), []
        judged = judge_element(self.path(values), "beam", self.rulebook, arranged=True)
        member, demands = judged.members[0], judged.answers[0].demands
        pushes = []
        for number in range(len(member.supports)):
            most = max((one.all_load.greatest_reaction(number) for one in demands), key=lambda asked: asked.value)
            least = min((one.all_load.least_reaction(number) for one in demands), key=lambda asked: asked.value)
            pushes.append((most, least))
        first = max(range(len(pushes)), key=lambda number: pushes[number][0].value * (1 - 1e-9 * number))
        push = pushes[first][0].value
        greatest = max(demands, key=lambda one: one.all_load.greatest_reaction(first).value)
        seat = SeatMember(member.material, member.width, Seat(3 * inch, "post"), member.wet)
        lengths = self._told(silent, "bearing_lengths", seat, Push(greatest.combination, push))
        return PastPostResult(
            values["kind"], f"{int(values['plies'])}-{_size(values)[2]}", judged, greatest, tuple(pushes),
            self._told(silent, "hold_downs", member, demands), first, lengths and lengths[0], tuple(silent),
        )  # fmt: skip

    def _told(self, silent, *asked):
        """An answer that a rulebook may give beside its checks; None where it has none, and why."""
        try:
            return ask(self.rulebook, *asked)
        except OutsideRule as refusal:
            silent.append(str(refusal))
            return None

    # ---- what is shown ----

    def compute(self, values, before=None, frame="page"):
        result = self.result(_key(values))
        ghost = None if before is None else (self.result(_key(before)), before["drawn"])
        gates = self.gates(values, result)
        withdrawn = gates or without_load(values, _LOADS if result.kind in _PAST else _LOADS[:2])
        return Shown(
            self.scene(values, result, ghost, withdrawn, frame),
            ("what", "asked", "can give", "share", "when, and by which rule"),
            self.rows(result, withdrawn),
            self.notes(values, result),
            gates,
            known=self.known(result),
        )

    def known(self, result):
        """List all that the page used, each with how well it is known."""
        material, down = result.member.material, result.downs and result.downs[0]
        more = ((f"{down.share:g} of the dead load", down.verified),) if down else ()
        return verdict.evidence(result.checks, (material.name, material.verified), *more, ("loads", verdict.ENTERED))

    def gates(self, values, result):
        """Return the reasons to stop and call an engineer before anything is chosen here."""
        gates = [*comes_down(values)[0], *([MEANWHILE] if result.kind == "out" else [])]
        lifting = result.lifting
        if lifting:
            thing, verb, what = (
                ("Support", "lifts", "it") if len(lifting) == 1 else ("Supports", "lift", "each of them")
            )
            when = "under some arrangement of the load"
            if not any(least.value < -DUST for _, least in result.pushes):
                when = f"when only {result.downs[0].share:g} of the dead load is counted"
            gates.append(
                f"{thing} {listed(lifting)} {verb} {when}, so something must hold {what} down, with up to "
                f"{show(result.most_down, 'force', self.system)}; that connection, and what it hangs on, is for an "
                "engineer."
            )
        if set(result.judged.gates) - set(result.judged.lifts):  # what stands past the last support
            gates.append(BEYOND_THE_WALL if result.kind == "wall" else BEYOND_THE_POST)
        return tuple(gates)

    def rows(self, result, gates=()):
        """Return pushes, hold-downs and checks as rows of text."""
        rows = self._demand_rows(result)
        say = self._say
        for check in result.checks:
            limit = check.formula.partition("<= ")[2] if check.kind == "sag" else check.combination
            rows.append((
                check.name, say(check.asked, check.dimension),
                "" if gates else say(check.given, check.dimension),
                "" if gates else verdict.share_text(check, result.checks),
                f"{limit}; {check.clause.split(' (')[0]}; live {result.where(check.on)}",
            ))  # fmt: skip
        if result.answer.refused:
            rows.append(
                (self._unjudged(result)[0], "", "" if gates else "refused" if result.checks else "not judged", "", "")
            )
        if result.seat is not None:
            clause = next((one.clause for one in result.answer.checks if one.kind == BEAM_FACE), "")
            rows.append((
                f"seat on {result.letters[result.first]}, long enough for the beam",
                # to the next sixteenth up, so that it is long enough as it is read
                say(ceil(result.seat / inch * 16 - 1e-6) / 16 * inch, "section length"), "", "",
                f"{clause}; the post or plate below is a check of its own",
            ))  # fmt: skip
        return tuple(rows)

    def _demand_rows(self, result):
        say, rows = self._say, []
        for letter, (most, least) in zip(result.letters, result.pushes):
            rows.append((f"push of {letter}, most", say(most.value, "force"), "", "", f"live {result.where(most.on)}"))
            word = "least" if least.value >= -DUST else "least (it lifts)"
            rows.append(
                (
                    f"push of {letter}, {word}",
                    say(without_dust(least.value), "force"),
                    "",
                    "",
                    f"live {result.where(least.on)}",
                )
            )
        for down in result.downs or ():
            if down.most > DUST:
                what = f"hold down {result.letters[down.support]}"
                rows.append(
                    (
                        f"{what}, {down.under}",
                        say(without_dust(down.plain), "force"),
                        "",
                        "",
                        "all of the dead load helps",
                    )
                )
                rows.append(
                    (
                        f"{what}, {down.counted_under}",
                        say(down.counted, "force"),
                        "",
                        "",
                        f"{down.clause}, {down.verified}",
                    )
                )
        sagging, hogging = result.most.all_load.sagging, result.most.all_load.hogging
        rows.append(("moment that sags it", say(sagging.value, "moment"), "", "", f"live {result.where(sagging.on)}"))
        rows.append(
            (
                "moment the other way",
                say(without_dust(-hogging.value), "moment"),
                "",
                "",
                f"live {result.where(hogging.on)}",
            )
        )
        return rows

    def _say(self, value, kind):
        return show(value, kind, self.system)

    @staticmethod
    def _unjudged(result):
        """Names of the questions that no rule covers here."""
        return (result.answer.left_out or "bending, shear and sag",) if result.answer.refused else ()

    def notes(self, values, result):
        """Return what must be said below the numbers."""
        refused = [result.answer.refused] if result.answer.refused else []
        notes = [f"Not judged: {sentence}." for sentence in (*refused, *result.silent)]
        notes.append(
            f"All {2 ** len(result.groups)} arrangements of the live load count. Dead load and the beam's own "
            "weight are always there. Supports are taken to hold the beam down where it lifts. That needs a connector."
        )
        pressed = "The bottom edge is taken as unbraced over a whole span where it is pressed"
        if result.kind in _PAST:
            tip = next((one.factors[0] for one in result.checks if one.kind == "sag" and one.factors), None)
            counts = f"For the tip the limit counts twice the overhang ({tip.clause}, {tip.verified}). " if tip else ""
            notes.append(f"{counts}{pressed}.")
        elif result.kind == "out":
            notes.append(
                "The two end supports now get what three had. Their posts and footings are checks of their own, before "
                "anything is taken out."
            )
        else:
            notes.append(f"One piece from end to end. {pressed}, near a post.")
        long = result.kind not in _PAST and result.member.length > 20 * ft * (1 + 1e-9)
        if long and result.member.material.kind not in ("lvl", "timber"):
            notes.append(LONG_PIECES)
        if result.kind not in _PAST and values["post_dead"] + values["post_live"] > 0:
            notes.append("The post above stands on an overhang only; here it is left out.")
        if result.downs:
            down = result.downs[0]
            notes.append(
                f"The {down.share:g} of the dead load and the load combinations are those of {down.book}, {down.verified}."
            )
        return (*notes, CAUTION)

    # ---- the picture ----

    def scene(self, values, result, ghost, gates=(), frame="page"):
        """Draw the beam, its loads, its deflected shape and its moments."""
        say, member, all_load = self._say, result.member, result.most.all_load
        on = result.drawn(values["drawn"])
        x, sag, moment, least, most = result.curve(on)
        peak = all_load.case(on).extremes.deflection.value
        sagging, hogging = all_load.sagging.value, -all_load.hogging.value
        full = _round_up(max(sagging, hogging, 1.0), 1e3 * lb * ft if self.system == "us" else 1e6)
        view = PastPostView(
            title=titled(self._title(result, gates), values, gates),
            length=member.length,
            depth=member.depth,
            material_kind={"lvl": "lvl", "timber": "timber"}.get(member.material.kind, "sawn"),
            supports=self._posts(result),
            measures=self._measures(values, result),
            stretches=tuple(
                (
                    start,
                    end,
                    any(
                        there and not one.is_point and abs(one.start - start) < 1.0
                        for one, there in zip(result.most.comes, on)
                    ),
                )
                for start, end, _ in member.stretches
            ),
            load_text=_load_text(result, values, on, say),
            tip_text=self._tip(values, result, on),
            x=tuple(x.tolist()),
            sag=tuple(sag.tolist()),
            sag_text=say(abs(peak), "small length"),
            moment=tuple(moment.tolist()),
            most=tuple(most.tolist()),
            least=tuple(least.tolist()),
            moment_text=f"Moment: sags it {say(sagging, 'moment')} at most"
            + (f", the other way {say(hogging, 'moment')}" if hogging > lb * ft else ""),
            moment_full=full,
            moment_full_text=say(full, "moment"),
            camera_length=_SPANS[result.kind] * _LONGEST_SPAN + (_LONGEST_OVERHANG if result.kind in _PAST else 0.0),
            exaggeration=200.0,
            previous=_previous(result, ghost),
        )
        return draw_past_post(view, frame)

    def _measures(self, values, result):
        span_text = self._say(values["span"], "length")
        if result.kind == "out":
            return ((0.0, result.member.length, self._say(result.member.length, "length")),)
        first = (0.0, values["span"], f"{span_text} each" if result.kind in ("two", "three") else span_text)
        if result.kind not in _PAST:
            return (first,)
        return first, (values["span"], result.member.length, self._say(values["overhang"], "length"))

    def _tip(self, values, result, on):
        if result.kind not in _PAST:
            return ""
        passing = any(there and one.is_point for one, there in zip(result.most.comes, on))
        there = values["post_dead"] + (values["post_live"] if passing else 0.0)
        return f"post {self._say(there, 'force')}" if there else ""

    def _posts(self, result):
        posts = []
        for number, (letter, (most, least)) in enumerate(zip(result.letters, result.pushes)):
            down = result.hold_down(number)
            lifts = down > DUST
            word = ("hold" if result.kind == "three" else "hold down") if lifts else "least"
            text = f"{word} {self._say(down if lifts else without_dust(least.value), 'force')}"
            kind = "wall" if result.kind == "wall" and number == 1 else "post"
            posts.append(
                PostBelow(result.member.supports[number], letter, kind, self._say(most.value, "force"), text, lifts)
            )
        if result.kind == "out":
            posts.insert(1, PostBelow(result.member.length / 2, "B", "gone"))
        return tuple(posts)

    def _title(self, result, gates):
        lifting = result.lifting
        if lifting:
            verb, what = ("lifts", "it") if len(lifting) == 1 else ("lift", "each")
            up_to = "" if len(lifting) == 1 else "up to "
            down = f"{up_to}{self._say(result.most_down, 'force')} must hold {what} down"
            return f"Stop and call first: {listed(lifting)} {verb}, and {down}"
        stop = verdict.STOP
        if result.kind == "out":
            moment, sag = post_out_ratios()
            stop = f"Stop and call first: {moment:.0f} times the moment, {sag:.1f} times the sag"
        asked = result.pushes[result.first][0]
        told = (
            f"{result.letters[result.first]} carries {self._say(asked.value, 'force')}, with live load "
            f"{result.where(asked.on)}"
        )
        return verdict.headline(result.checks, gates, lambda first: told, unjudged=self._unjudged(result), stop=stop)


def _size(values):
    """The piece of the chosen wood that is nearest in depth."""
    return min(pieces(values["wood"]), key=lambda piece: abs(piece[0] - values["depth"]))


def _key(values):
    """What the numbers hang on: all but which arrangement is drawn."""
    return tuple((name, value) for name, value in values.items() if name != "drawn")


def _load_text(result, values, on, say):
    spans = [(name, there) for name, one, there in zip(result.groups, result.most.comes, on) if not one.is_point]
    loaded = [name for name, there in spans if there]
    where = "nowhere" if not loaded else "everywhere" if len(loaded) == len(spans) else ", ".join(loaded)
    return f"live {say(values['live'], 'line load')}: {where}; dead {say(values['dead'], 'line load')}"


def _previous(result, ghost):
    """The shape before the last change; another beam altogether is no "before"."""
    if ghost is None or ghost[0].kind != result.kind:
        return None
    before, drawn = ghost
    x, sag, moment, *_ = before.curve(before.drawn(drawn))
    keep = x <= result.member.length * (1 + 1e-9)
    return tuple(tuple(row[keep].tolist()) for row in (x, sag, moment)) if keep.sum() > 1 else None


def _round_up(value, unit):
    """The next 1, 2 or 5 times a power of ten in a unit, so that a scale moves in steps."""
    step = 0.1 * unit
    while True:
        for times in (1, 2, 5):
            if times * step >= value:
                return times * step
        step *= 10


hold(globals())
