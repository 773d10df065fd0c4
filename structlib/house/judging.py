"""What a rulebook says of every element on the load's way: members, demands, checks; and the gates that withdraw them."""

from dataclasses import dataclass

from structlib.ground.loads import LOAD_TYPES
from structlib.ground.refusals import BadInput, OutsideRule, check_choice
from structlib.ground.showing import show
from structlib.house.asked import ASKED
from structlib.house.beam_jobs import gates_of_places
from structlib.house.influence import influence
from structlib.house.plan import Beam, Level, Opening, Post
from structlib.house.seats import beam_ends, clear_spans, plate_under, seat_asked
from structlib.house.shares import along
from structlib.rules.check import BeamDemand, BeamMember, governing, least_verified
from structlib.rules.members import ContinuousMember, NotCovered, Partly, Push, ask

_SAME = 1e-3  # mm
_NOTHING = 1e-3  # N or N/mm: less is rounding


@dataclass(frozen=True)
class Answer:
    """What a rulebook says of one member: its demands and checks, and the sentence of what no rule covers, if any.

    ``left_out`` names the question that was refused while others were answered; empty where none or all were.
    """

    member: object
    demands: tuple
    checks: tuple = ()
    refused: str = ""
    left_out: str = ""


@dataclass(frozen=True)
class Judged:
    """An element as a rulebook sees it: its members with demands and checks, in the order of the load.

    ``notes`` say what is not asked at all. ``gates`` are reasons to stop and call: they withdraw every verdict;
    ``lifts`` are those of them that say what lifts. A seat or a plate has the part that it belongs to as its ``whole``.
    """

    element: object
    answers: tuple[Answer, ...]
    notes: tuple[str, ...] = ()
    gates: tuple[str, ...] = ()
    lifts: tuple[str, ...] = ()
    whole: object = None

    @property
    def members(self):
        """Its members, in the order of the load."""
        return tuple(one.member for one in self.answers)

    @property
    def checks(self):
        """Every check of every member."""
        return tuple(check for one in self.answers for check in one.checks)

    @property
    def refused(self):
        """Sentences of what is not judged; what is asked stays."""
        return tuple(dict.fromkeys((*self.notes, *(one.refused for one in self.answers if one.refused))))

    @property
    def governs(self):
        """The check with the greatest share; None where nothing was judged."""
        return governing(self.checks) if any(check.decides for check in self.checks) else None

    @property
    def evidence(self):
        """The least well known of everything that was used; the last word of all where nothing was judged."""
        words = [check.verified for check in self.checks]
        return least_verified([*words, *(one.verified for check in self.checks for one in check.factors)])


def judge(path, rulebook):
    """Judge every element of a path under one rulebook.

    Parameters
    ----------
    path : structlib.house.path.Path
        The path, as `follow` answers [-].
    rulebook : structlib.rules.check.Rulebook
        The rules [-].

    Returns
    -------
    dict of Judged
        By the name of the element, in the order of the load; elements without a rule here are left out. Each seat of
        a beam follows it under a name of its own, and so does the plate under a post [-].

    Examples
    --------
    >>> from structlib.house.file import demo_house
    >>> from structlib.house.path import follow
    >>> from structlib.rules.choice import RULEBOOK
    >>> judge(follow(demo_house()), RULEBOOK)["south post"].governs.name
    'least size of a free-standing column'
    """
    found = {}
    for element in path.elements:
        rule = ASKED.get(type(element.part))
        if rule is not None:
            found[element.name] = judge_element(path, element.name, rulebook)
            found |= {one.element.name: one for one in _details(path, found[element.name], rulebook)}
    return found


def judge_element(path, name, rulebook, wanted=None, arranged=False):
    """Judge one element of a path under one rulebook.

    Parameters
    ----------
    path : structlib.house.path.Path
        The path [-].
    name : str
        The element, or a seat or a plate by the name that `judge` gives it [-].
    rulebook : structlib.rules.check.Rulebook
        The rules [-].
    wanted : callable or None
        Picks out of the (member, demands) those to ask of, under which of their demands; all when None [-].
    arranged : bool
        True to ask a beam over all arrangements of what comes and goes, as one that runs on, also over a single span [-].

    Returns
    -------
    Judged
        Members, demands, checks, gates, and sentences of what no rule covers [-].

    Examples
    --------
    >>> from structlib.house.file import demo_house
    >>> from structlib.house.path import follow
    >>> from structlib.rules.choice import RULEBOOK
    >>> judge_element(follow(demo_house()), "kitchen opening", RULEBOOK).refused[0][:30]
    'the wood of kitchen opening is'
    """
    whole = name if name in path.by_name else _owner(path, name)
    element = path.element(whole)
    if whole != name:
        return _detail(path, name, judge_element(path, whole, rulebook), rulebook)
    try:
        how = {"arranged": True} if arranged else {}
        asked, gates, notes = ASKED[type(element.part)](path, element, rulebook, **how)
    except BadInput as error:
        asked, gates, notes = [], [], [_not_read(path.house, element.name, error)]
    except OutsideRule as none:  # a rule that stops before anything is solved
        asked, gates, notes = [], [], [str(none)]
    asked = wanted(asked) if wanted else asked
    running = len(asked) == 1 and isinstance(asked[0][0], ContinuousMember) and isinstance(element.part, Beam)
    lifts = _running_lifts(element, asked[0][1]) if running else _lifts(path, element, rulebook)
    answers = tuple(_answer(rulebook, *one, path.house, element.name) for one in asked)
    if not lifts and any(_lifted(one.demands) for one in answers):
        lifts = (f"{element.name} is lifted: it must be held down, and that is for an engineer.",)
    lifts = lifts or _held_down(element, asked, rulebook)
    return Judged(element, answers, tuple(notes), tuple(dict.fromkeys((*lifts, *gates))), tuple(lifts))


def _owner(path, name):
    """Which part a seat or a plate belongs to, by its name; the name itself where it is no part of any."""
    return max((one.name for one in path.elements if name.startswith(f"{one.name}, ")), key=len, default=name)


def _detail(path, name, judged, rulebook):
    others = []
    for one in _details(path, judged, rulebook):
        if one.element.name == name:
            return one
        others.append(one.element.name)
    check_choice(f"part of {judged.element.name}", name, others)


def _details(path, judged, rulebook):
    """The seats of a beam, or the plates under a post, each judged apart; a gate of another place is not theirs."""
    element = judged.element
    if isinstance(element.part, Post):
        for one in judged.answers[1:]:
            yield Judged(plate_under(element, one.member), (one,), judged.notes, judged.gates, whole=judged)
    elif isinstance(element.part, (Beam, Opening)):
        solved = dict(zip(clear_spans(path, element), judged.answers)) if judged.answers else {}
        of_places = gates_of_places(path, element)
        for seat, number, side in beam_ends(path, element):
            one = solved.get(number)
            apart = one is not None and isinstance(
                one.member, BeamMember
            )  # a flitch or steel beam is judged with its seats
            asked = (
                ()
                if not apart
                else (_answer(rulebook, *seat_asked(one.member, one.demands, side), path.house, element.name),)
            )
            told = () if one is None or apart else (f"the seats of {element.name} are judged with the beam",)
            here = {seat.part.on.name, path.axis(element.name).name}
            elsewhere = {gate for place, gates in of_places.items() if place not in here for gate in gates}
            gates = tuple(gate for gate in judged.gates if gate not in elsewhere)
            yield Judged(seat, asked, (*judged.notes, *told), gates, whole=judged)


def _answer(rulebook, member, demands, house, name):
    if _lifted(demands):
        return Answer(
            member,
            demands,
            (),
            f"{name} is lifted at one end or all over, and the checks here are for parts that "
            "are pressed down; what is asked of it stays",
        )
    try:
        return Answer(member, demands, tuple(rulebook.checks(member, demands)))
    except Partly as some:
        return Answer(member, demands, tuple(some.checks), str(some), some.left_out)
    except OutsideRule as none:
        return Answer(member, demands, (), str(none))
    except BadInput as error:  # one part that no rule can read leaves the others their verdicts
        return Answer(member, demands, (), _not_read(house, name, error))


def _not_read(house, name, error):
    """Why a part cannot be judged, with the line of its file."""
    return f"{name} cannot be judged: {house.source.named(error.about(name)) if house.source else error}"


def _lifted(demands):
    return any(push < -_NOTHING for one in demands for push in _presses(one))


def _presses(demand):
    if isinstance(demand, Push):
        return (demand.axial,)
    # a member that runs on is held down where it lifts, and a gate says so; rafters and ties press on nothing here
    return [one.force for one in demand.solution.reactions] if isinstance(demand, BeamDemand) else ()


def _held_down(element, asked, rulebook):
    """A gate where a rulebook counts less of the dead load and a member that runs on lifts then."""
    level = isinstance(element.part, Level)
    if level and not (element.part.left_overhang or element.part.right_overhang):
        return ()  # walls above and nails hold the ends of joists between two plates
    for member, demands in asked:
        if not isinstance(member, ContinuousMember):
            continue
        try:
            downs = ask(rulebook, "hold_downs", member, demands)
        except NotCovered:
            continue
        most = max(downs, key=lambda one: one.most)
        if most.most > _NOTHING:
            return (
                f"{element.name} lifts off its support at {show(member.supports[most.support], 'length')} from its left end "
                f"when only {most.share:g} of the dead load is counted, with up to {show(most.most, 'force')}: it must be "
                "held down, and that is for an engineer.",
            )
    return ()


def _running_lifts(element, demands):
    """The same gate for a beam in one piece, read off its envelopes."""
    for number, share in enumerate(element.gives):
        for one in demands:
            least = one.all_load.least_reaction(number)
            if least.value < -_NOTHING:
                how = "" if all(least.on) else ", with what comes and goes only where it lifts"
                return (
                    f"{element.name} lifts off {share.to} under {one.combination.name}{how}: it must be held down, and that "
                    "is for an engineer.",
                )
    return ()


def _lifts(path, element, rulebook):
    """A gate where any combination lifts what the element hands on, or would with its loads only where they lift."""
    for share in element.gives:
        for amounts, how in (
            (share.amount, ""),
            (_least(path, element, share), ", with what comes and goes only where it lifts"),
        ):
            if min(amounts) >= 0:
                continue  # nothing lifts, and no factor turns a load round
            present = {kind for kind, amount in zip(LOAD_TYPES, amounts) if amount}
            for one in rulebook.combinations(present):
                if sum(one.factor(kind) * amount for kind, amount in zip(LOAD_TYPES, amounts)) < -_NOTHING:
                    return (
                        f"{element.name} lifts off {share.to} under {one.name}{how}: it must be held down, and that is "
                        "for an engineer.",
                    )
    return ()


def _least(path, element, share):
    """What a joist or beam hands on where live load, roof live load and snow lie only on the parts that lift.

    Joists without an overhang are left as they are: walls above and nails hold their ends between two plates.
    """
    part, level = element.part, isinstance(element.part, Level)
    if not element.spans or level and not (part.left_overhang or part.right_overhang):
        return share.amount
    places = tuple(sorted({at for span in element.spans for at in span}))
    stretch = (lambda one: (one.x, one.x_end)) if level else (lambda one: along(path.axis(element.name), one))
    which = min(range(len(places)), key=lambda index: abs(places[index] - stretch(share)[0]))
    joints = "cut" if isinstance(part, Opening) else part.joists if level else part.joints
    least = [0.0] * len(LOAD_TYPES)
    for one in (*element.received, *element.own):
        if level and not (one.y <= share.y + _SAME and one.y_end >= share.y_end - _SAME):
            continue
        start, end = stretch(one)
        cuts = [start, *(at for at in places if start < at < end), end]
        for a, b in zip(cuts, cuts[1:]):
            given = influence(places, joints, a, b)[which]
            for number, (kind, amount) in enumerate(zip(LOAD_TYPES, one.amount)):
                if kind == "dead" or amount * given < 0:
                    least[number] += amount * given
    return least
