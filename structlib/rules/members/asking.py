"""How a rulebook is asked about a member of any kind, and how it says that it has no rule."""

import re

from structlib.ground.refusals import OutsideRule


class NotCovered(OutsideRule):
    """A rulebook has no rule for this kind of member; what is asked of it stays."""


class Partly(OutsideRule):
    """A rule refuses one question of a member; the others are answered.

    Parameters
    ----------
    sentence : str
        Why [-].
    checks : tuple of structlib.rules.check.Check
        Answers to what can still be asked [-].
    left_out : str
        Name of the question refused [-].
    """

    def __init__(self, sentence, checks, left_out):
        super().__init__(sentence)
        self.checks, self.left_out = checks, left_out


def found_by_kind(rules, name, member, demands):
    """Answer with the checks of the rule for this kind of member.

    Parameters
    ----------
    rules : dict
        Rules by the kind of member [-].
    name : str
        Name of the rulebook, for the refusal [-].
    member : object
        The member [-].
    demands : tuple
        What each combination asks of it [-].

    Returns
    -------
    tuple of structlib.rules.check.Check
        The checks [-].

    Raises
    ------
    NotCovered
        When there is no rule for that kind.

    Examples
    --------
    >>> found_by_kind({}, "nowhere", 5, ())
    Traceback (most recent call last):
    ...
    structlib.rules.members.asking.NotCovered: the rulebook of nowhere has no rule for a int here; what is asked of it stays
    """
    rule = rules.get(type(member))
    if rule is None:
        kind = (
            getattr(member, "called", "")
            or re.sub(r"(?<!^)(?=[A-Z])", " ", type(member).__name__.removesuffix("Member")).lower()
        )
        raise NotCovered(f"the rulebook of {name} has no rule for a {kind} here; what is asked of it stays")
    return rule(member, demands)


def ask(rulebook, answer, *asked):
    """Ask a rulebook for one of the answers that it may give beside its checks.

    Parameters
    ----------
    rulebook : structlib.rules.check.Rulebook
        The rulebook [-].
    answer : str
        'soils' (presumed bearing by class), 'capacity' (what a post carries, by height), 'least_pad', 'held_top'
        (what keeps the top of a post in its place), 'bearing_lengths' (of a seat, by face), 'jack_studs', 'area_factor' (of a
        seat), 'slab_pressure' (under a slab, for a time), 'conditions' (what its
        strength stands on), 'wood_in_use' (what wet service and treatment do), 'joined_plies' (fasteners of plies loaded
        from one side), 'fastening' (what one fastener passes, and how far apart they stand), 'usual_nailing',
        'slender_ply' (how one ply alone is held), 'plate_bolts' (of a flitch), 'compared_woods' (an old joist beside
        every wood that it may be of), 'cut_limits' (how far a joist may be cut), 'measured_conditions' (what the values
        of an old joist stand on), 'sharing' (how far apart joists still help each other), 'size_on_bending' (what the size of a piece does to its bending value) [-].
    *asked : any
        What the answer is about, as the rulebook's method takes it [any].

    Returns
    -------
    any
        The answer [any].

    Raises
    ------
    NotCovered
        When the rulebook gives no such answer.

    Examples
    --------
    >>> from structlib.rules.choice import RULEBOOK
    >>> ask(RULEBOOK, "soils")[0].name
    'clay or silt'
    """
    rule = getattr(rulebook, answer, None)
    if rule is None:
        what = answer.replace("_", " ")
        raise NotCovered(f"the rulebook of {rulebook.name} has no rule for the {what} here; what is asked stays")
    return rule(*asked)
