"""What keeps the roof from spreading? A section through a pair of rafters, its push, and what holds it."""

from dataclasses import dataclass, replace
from functools import lru_cache

from structlib.ground.loads import LoadsByType
from structlib.ground.refusals import NotAsked, OutsideRule
from structlib.ground.units import ft, inch, lb, psf
from structlib.house.asked_roof import one_slope_snow
from structlib.house.judging import Answer, Judged, judge_element
from structlib.house.pairs import pair_house
from structlib.house.path import follow
from structlib.house.pieces import piece_of
from structlib.house.plan import Board, Joists, Tie, Wood
from structlib.house.rafters import pair_loads
from structlib.house.roofs import RIDGE_BEAM
from structlib.mechanics.rafters import pair_moves
from structlib.pages.kit import verdict
from structlib.pages.kit.controls import Box, Page, Pick, Shown, Slide, Steps
from structlib.pages.kit.door import hold
from structlib.pages.kit.woods import SPACINGS, WOODS, pieces, wood
from structlib.pages.topics.roof import words
from structlib.pages.topics.roof.words import MARK, RAFTERS, RIDGE
from structlib.pictures.drawings.roof import RoofPair, RoofView, draw_roof
from structlib.rules.check import BeamMember, Combination, Rulebook, least_verified, uses_more
from structlib.rules.choice import RULEBOOK
from structlib.rules.members import RafterMember, RidgeBoardMember, TieJointMember, TieMember, ask

_SETS = (("the rafters", RAFTERS), ("the ridge beam (or board)", RIDGE))
_HOLDS = (
    ("a tie at the eaves", "tie"),
    ("a raised tie", "raised tie"),
    ("a ridge beam on posts", "ridge beam"),
    ("nothing", "nothing"),
)
_EXPOSURES = (
    ("houses or trees", "partially exposed"),
    ("taller ones close by", "sheltered"),
    ("open to all winds", "fully exposed"),
)
_BELOW = (("a heated house", "heated"), ("vented, R 25 or more", "cold ventilated roof"), ("no heat", "unheated"))
#: The member that the sliders do not set: rafters beside a ridge beam, a tie, a ridge board.
_OTHER = {"species": "Douglas Fir-Larch", "grade": "No.2"}
_BOARD_WIDTH = 0.75 * inch
_LENGTH = 12 * ft  # of a roof whose ridge beam the sliders do not set
_LOADS = (("dead", "dead"), ("snow", "snow"), ("roof live", "roof_live"))
# a push from which on the arrow grows no longer
_FULL_ARROW = 2500 * lb


@dataclass(frozen=True)
class RoofCase:
    """The roof under one snow: its members as judged, and the pair under the combination that asks most.

    ``load`` and ``far_load`` are on plan, left and right of the ridge [MPa]; ``thrust`` of a pair and ``pull`` of a tie
    [N]; ``ridge_line`` along a ridge beam [N/mm]. ``rafters`` and ``moves`` are None of a pair that nothing holds.
    """

    roof: Judged
    ridge: Answer | None
    most: Combination
    load: float
    far_load: float
    thrust: float
    pull: float
    ridge_line: float
    ridge_shear: float
    rafters: tuple | None
    moves: object

    @property
    def moment(self):
        """Greatest moment in the left rafter, and its place as a share of the run [N*mm, -]."""
        return self.rafters[0].greatest_moment

    def answers(self, kind):
        """What was answered of members of one kind; the left rafter first."""
        return [one for one in self.roof.answers if isinstance(one.member, kind)]


@dataclass(frozen=True)
class RoofResult:
    """All that the page shows, before it is put into words.

    ``checks`` are of even snow, ``side_checks`` of snow on one slope alone, with ``blown`` and ``side``, or ``no_side`` says
    why there is none. ``left_out`` are questions that a rule refused, ``not_judged`` members without one, by name.
    """

    values: dict
    half: float
    chosen: object
    rafter: object
    even: RoofCase
    side: RoofCase | None
    blown: object
    no_side: str
    checks: tuple
    side_checks: tuple
    left_out: tuple
    not_judged: tuple
    asked_snow: object
    blown_rule: object
    nails: object
    raised: tuple
    gates: tuple
    silent: tuple

    @property
    def holds(self):
        """What holds the pair: 'tie', 'raised tie', 'ridge beam' or 'nothing' [-]."""
        return self.values["holds"]

    @property
    def rise(self):
        """Height of the ridge above the eaves [mm]."""
        return self.half * self.values["rise"] / 12

    @property
    def height(self):
        """Height of a raised tie as a share of the rise [-]."""
        return self.values["height"] if self.holds == "raised tie" else 0.0

    @property
    def all_checks(self):
        """Checks of both cases [-]."""
        return self.checks + self.side_checks

    @property
    def governs(self):
        """The deciding check with the greatest share [-]."""
        return verdict.worst(self.all_checks)

    @property
    def cases(self):
        """Even snow, and snow on one slope where it is asked [-]."""
        return (self.even,) if self.side is None else (self.even, self.side)


class RoofPage(Page):
    """The bench of the roof: a pair of rafters under a load on plan, and four ways to hold it."""

    def __init__(self, system: str = "us", rulebook: Rulebook = RULEBOOK):
        self.system, self.rulebook = system, rulebook
        self.result = lru_cache(maxsize=64)(self._result)
        self.ask = lru_cache(maxsize=256)(lambda answer, *asked: ask(rulebook, answer, *asked))
        self.blown_rule = self._told([], "blown_snow_rule")

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
            Pick("spacing", "Rafters every", SPACINGS, 16 * inch),
            Box("dead", "Dead, on plan", high=60 * psf, default=15 * psf, **load),
            Box("snow", "Roof snow", high=120 * psf, default=30 * psf, **load),
            Box("ground", "Ground snow", high=160 * psf, default=40 * psf, **load),
            Pick("exposed", "Around the roof", _EXPOSURES, "partially exposed"),
            Pick("below", "Below the roof", _BELOW, "heated"),
            Box("roof_live", "Roof live", high=40 * psf, default=20 * psf, **load),
            Pick("wood", "Wood", woods, "fir"),
        )

    # ---- working it out ---------------------------------------------------------------------------

    def house(self, values):
        """Return the roof that a set of values describes, as a house of its own."""
        size = min(pieces(values["wood"]), key=lambda piece: abs(piece[0] - values["depth"]))[2]
        chosen, sets_ridge = wood(values["wood"]).words(size, int(values["plies"])), values["sets"] == RIDGE
        rafter = Wood(**_OTHER, size="2x8") if sets_ridge else chosen
        beam, tied = values["holds"] == "ridge beam", values["holds"] in ("tie", "raised tie")
        piece = piece_of(chosen)
        return pair_house(
            LoadsByType({kind: values[key] for kind, key in _LOADS}),
            span=values["width"] if sets_ridge else 2 * values["span"],
            rise=values["rise"],
            length=values["span"] if sets_ridge and beam else _LENGTH,
            rafter=Joists(species=rafter.species, grade=rafter.grade, size=rafter.size, plies=rafter.plies,
                          spacing=values["spacing"], weighed=False),
            tie=Tie(**_OTHER, size="2x6", height=values["height"] if values["holds"] == "raised tie" else 0.0) if tied else None,
            on_ridge_beam=beam,
            ridge_wood=chosen if sets_ridge and beam else None,
            ridge_board=Board(thickness=piece.width, depth=piece.depth) if sets_ridge and not beam else None,
            ground_snow=values["ground"] or None,
        )  # fmt: skip

    def _told(self, silent, answer, *asked):
        """An answer that a rulebook may give beside its checks; None where it has none, and why."""
        try:
            return self.ask(answer, *asked)
        except OutsideRule as refusal:
            silent.append(str(refusal))
            return None

    def _case(self, values, house, changes=None, of_snow=False):
        """The roof of a house under its snow; ``of_snow`` looks at combinations with snow alone, and at the one with most of it."""
        path = follow(house, changes)
        wanted = lambda asked: _wanted(asked, values["sets"], of_snow)  # noqa: E731
        roof, level = judge_element(path, "roof", self.rulebook, wanted), path.house.part("roof")
        pair, spacing = roof.element.pair, level.joist.spacing
        near, far = (
            {kind: amount for kind, amount in zip(LoadsByType({}), stretch[0])} for stretch in pair.stretches[0].loads
        )
        present = {kind for kind in near if near[kind] or far[kind]}
        total = lambda one, loads: sum(one.factor(kind) * load for kind, load in loads.items())  # noqa: E731
        weigh = (lambda one: one.factor("snow")) if of_snow else (lambda one: total(one, near))
        most = max(self.rulebook.combinations(present), key=weigh)
        push, ridge = path.thrust("roof"), None
        rafters = pair_loads(pair, pair.stretches[0], spacing).under(most.factor)
        beam = pair.held_by == RIDGE_BEAM
        if beam and path.house.part("ridge beam").wood is not None:
            ridge = judge_element(path, "ridge beam", self.rulebook, wanted).answers[0]
        return RoofCase(
            roof=roof, ridge=ridge, most=most, load=total(most, near), far_load=total(most, far),
            thrust=total(most, push.per_pair), pull=total(most, push.per_tie) if push.per_tie else 0.0,
            ridge_line=total(most, path.line_on("ridge beam", level.end / 2)) if beam else 0.0,
            ridge_shear=rafters[0].on_ridge, rafters=rafters if level.tie or beam else None,
            moves=self._moves(level, rafters, ridge) if level.tie or beam else None,
        )  # fmt: skip

    @staticmethod
    def _moves(level, rafters, ridge):
        piece = piece_of(level.joist)
        along = piece.material.modulus * piece.width * piece.depth
        tie = level.tie and piece_of(level.tie)
        drop = max(abs(one.solution.extremes.deflection.value) for one in ridge.demands) if ridge else 0.0
        return pair_moves(
            *rafters,
            axial_stiffness=along,
            bending_stiffness=along * piece.depth**2 / 12,
            ridge_drop=drop,
            tie_axial_stiffness=tie and tie.material.modulus * tie.width * tie.depth,
        )

    def _side(self, values, house, even, silent):
        """The same roof with its snow on the left slope alone: the case, the loads, and why there is none."""
        level = even.roof.element.part
        if not (level.ground_snow and level.snow):
            return None, None, ""
        try:
            (left, _), blown = one_slope_snow(even.roof.element, self.rulebook)
        except NotAsked as refused:
            return None, None, str(refused)
        except OutsideRule as refused:
            silent.append(str(refused))
            return None, None, ""
        return self._case(values, house, {"roof": {**left, "roof_live": 0.0}}, of_snow=True), blown, ""

    def _result(self, items):
        """Everything that is drawn and told, from the values as a tuple of pairs."""
        values, silent = dict(items), []
        house = self.house(values)
        even = self._case(values, house)
        side, blown, no_side = self._side(values, house, even, silent)
        answers = _set_by_sliders(even, values)
        side_checks = ()
        # a ridge beam feels the mean of both sides, and a ridge board neither
        if side is not None and (
            values["sets"] == RAFTERS or even.ridge and (blown.leeward + blown.windward) / 2 > values["snow"]
        ):
            side_answers = _set_by_sliders(side, values)
            snowy = {"snow", *(asked.combination.name for one in side_answers for asked in one.demands)}
            side_checks = tuple(
                replace(one, name=one.name + MARK, verified=least_verified([one.verified, blown.verified]))
                for one in _merged(side_answers) if one.combination in snowy  # the others are asked by the even case too
            )  # fmt: skip
            told = {one.refused for one in answers}
            answers += [
                replace(one, left_out=one.left_out + MARK)
                for one in side_answers
                if one.left_out and one.refused not in told
            ]
        ground, rise, beam = values["ground"], values["rise"], values["holds"] == "ridge beam"
        tied = not beam and values["holds"] != "nothing" and not even.roof.gates
        joints = [one for case in (even, side) if case for one in case.answers(TieJointMember)]
        pulls = tuple(pull for one in joints for pull in one.demands)
        if not beam and values["holds"] != "nothing":
            self._told(silent, "roof_gates", rise, 0.0)
        return RoofResult(
            values=values, half=(values["width"] / 2 if values["sets"] == RIDGE else values["span"]),
            chosen=piece_of(wood(values["wood"]).words(min(pieces(values["wood"]), key=lambda one: abs(one[0] - values["depth"]))[2],
                                                       int(values["plies"]))),
            rafter=piece_of(even.roof.element.part.joist), even=even, side=side, blown=blown, no_side=no_side,
            checks=tuple(_merged([one for one in answers if not one.left_out.endswith(MARK)])), side_checks=side_checks,
            left_out=tuple((one.left_out, one.refused) for one in answers if one.left_out),
            not_judged=tuple((words.KINDS[type(one.member)], one) for one in answers if one.refused and not one.left_out),
            asked_snow=self._told(silent, "roof_snow", ground, rise, values["exposed"], values["below"]) if ground else None,
            blown_rule=self.blown_rule,
            nails=self._told(silent, "joint_nails", joints[0].member, pulls) if tied and even.load > 0 else None,
            raised=(self._told(silent, "raised_tie", values["height"]) or ()) if tied and values["holds"] == "raised tie" else (),
            gates=(words.NOTHING_HOLDS,) if values["holds"] == "nothing" else even.roof.gates,
            silent=tuple(dict.fromkeys(silent)),
        )  # fmt: skip

    def compute(self, values, before=None, frame="page"):
        result = self.result(tuple(values.items()))
        ghost = self.result(tuple(before.items())) if before else None
        questions = words.questions(result, self.system)
        return Shown(
            self.scene(result, ghost, frame),
            ("what", "asked", "can give", "share", "loads and rule"),
            words.rows(result, self.system, result.gates or questions),
            words.notes(result, self.system),
            result.gates,
            questions,
            known=self.known(result),
        )

    def known(self, result):
        """List all that the page used, each with how well it is known."""
        used, more = [result.chosen.material, result.rafter.material], []
        used += [one.member.material for one in result.even.answers(TieMember)]
        if result.nails is not None and result.nails.verified:
            more.append(("nails of the tie's joint", result.nails.verified))
        if result.raised:
            more.append(("the code's factors of a raised tie", least_verified([one.verified for one in result.raised])))
        more += [(one.name, one.verified) for one in used]
        present = {kind for kind, key in _LOADS if result.values[key]}
        more += [(f"loads {one.name}", one.verified) for one in self.rulebook.combinations(present)]
        if result.side is not None:
            more.append(("snow on one side", result.blown.verified))
        return verdict.evidence(result.all_checks, *more, ("loads", verdict.ENTERED))

    # ---- drawing ----------------------------------------------------------------------------------

    def scene(self, result, ghost, frame="page"):
        """Draw the section through the roof."""
        system, chosen, beam = self.system, result.chosen, result.holds == "ridge beam"
        sets_ridge = result.values["sets"] == RIDGE
        if sets_ridge:
            ridge = (chosen.width, chosen.depth)
        else:
            ridge = (3 * inch, 9.25 * inch) if beam else (_BOARD_WIDTH, result.rafter.depth)
        first, mark = result.governs, None
        withheld = result.gates or words.questions(result, system) or result.left_out or result.not_judged
        told = first is not None and not withheld
        # the case that governs is the one that is drawn
        one_side = told and first in result.side_checks
        seen = result.side if one_side else result.even
        if told and not sets_ridge and first.kind != "tie":
            mark = (first.position, words.mark(first))
        view = RoofView(
            title=words.title(result, system),
            pair=_pair(result),
            rafter_depth=result.rafter.depth,
            ridge_width=ridge[0],
            ridge_depth=ridge[1],
            load_text=words.load_text(seen, system, one_side),
            push=min(1.0, max(result.even.thrust, seen.thrust) / _FULL_ARROW),
            stats=words.one_side_stats(result, system) if one_side else words.stats(result, system),
            width_text=words.width(result, system),
            # the pair has its left rafter loaded, the picture its right one
            shape=_shape(seen, 1 if one_side else 0),
            right_shape=_shape(seen, 0) if one_side else (),
            loaded="right" if one_side else "both",
            moment=_moments(seen, result.height),
            mark=mark,
            exaggeration=40.0,
            note=words.note(result, system),
            previous=None if ghost is None else _pair(ghost),
            post=beam,
        )
        return draw_roof(view, frame)


def _wanted(asked, sets, of_snow):
    """Of the members of a roof those that the page shows: what the sliders set, the tie and its joint; the left rafter."""
    first = next((one for one, _ in asked if isinstance(one, RafterMember)), None)
    shown = (RidgeBoardMember, BeamMember, TieJointMember) if sets == RIDGE else (TieMember, TieJointMember)
    return [
        (one, tuple(each for each in demands if each.combination.factor("snow")) if of_snow else demands)
        for one, demands in asked
        if isinstance(one, shown) or one is first and sets == RAFTERS
    ]


def _set_by_sliders(case, values):
    """What was answered of the members that the sliders set, and of the tie."""
    if values["sets"] == RIDGE:
        return [case.ridge] if case.ridge else case.answers(RidgeBoardMember)
    return case.answers(RafterMember) + case.answers(TieMember)


def _merged(answers):
    """Left and right of the same question as one check: the end that uses more."""
    best = {}
    for check in (check for one in answers for check in one.checks):
        key = check.name.replace("left", "").replace("right", "")
        if key not in best or uses_more(check.share, best[key].share):
            best[key] = check
    return best.values()


def _pair(result):
    return RoofPair(result.half, result.rise, result.holds, result.height)


@lru_cache(maxsize=64)
def _shares(height):
    """Places along a rafter that are drawn: closer where a tie bends it."""
    steps = [i / 16 for i in range(17)]
    return (
        (*(step * height for step in steps), *(height + step * (1 - height) for step in steps))
        if height
        else tuple(steps)
    )


def _shape(case, side):
    if case.moves is None or case.load <= 0:
        return ()
    return tuple(case.moves.points(side, _shares(case.rafters[0].height)))


def _moments(case, height):
    """Bending along a rafter as shares of its greatest."""
    if case.rafters is None or case.moment[0] <= 0:
        return ()
    places = tuple(sorted({*(i / 24 for i in range(25)), height}))
    return tuple(zip(places, (case.rafters[0].moment_at(places) / case.moment[0]).tolist()))


hold(globals())
