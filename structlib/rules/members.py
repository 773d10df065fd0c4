"""Members other than beams as a rulebook is asked about them, and what is asked of each."""

from dataclasses import dataclass, replace
from typing import Any

import numpy

from structlib.ground.refusals import OutsideRule
from structlib.ground.units import inch
from structlib.rules.check import Combination


_THICKEST_PLY = 2 * inch  # what is thicker is a solid post, not a ply
#: The question of a post that may be refused while its others are answered.
OFF_MIDDLE = "load off the middle"


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


@dataclass(frozen=True)
class Push:
    """What one combination presses on a member with [N], and how far off its middle, along its depth [mm]."""

    combination: Combination
    axial: float
    off_middle: float = 0.0


@dataclass(frozen=True)
class PostMember:
    """A post: its wood, one ply [mm], how many, its height [mm], and the distance between braces across its plies [mm].

    ``held_width`` is None for the whole height, and 0 where it is held all along. ``stands_free`` is True of a post
    that stands in no wall; ``wet`` where the wood stays wet in use.
    """

    material: Any
    ply_width: float
    depth: float
    height: float
    plies: int = 1
    fastening: str = "nailed"
    held_width: float | None = None
    stands_free: bool = False
    wet: bool = False

    @property
    def width(self):
        """Width of all plies together [mm]."""
        return self.ply_width * self.plies

    @property
    def area(self):
        """Area of the cross-section [mm2]."""
        return self.width * self.depth


@dataclass(frozen=True)
class PlateMember:
    """A plate or a beam that a post presses across its grain."""

    post: PostMember
    material: Any


@dataclass(frozen=True)
class PadMember:
    """A square pad of plain concrete [mm], the narrower side of what stands on it [mm], and the soil by its name."""

    side: float
    base: float
    soil: str


@dataclass(frozen=True)
class LeastPad:
    """The least side a pad may have for its load, and its least thickness at the side that it has [mm]."""

    side: float
    thickness: float
    clause: str


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
    structlib.rules.members.NotCovered: the rulebook of nowhere has no rule for a int here; what is asked of it stays
    """
    rule = rules.get(type(member))
    if rule is None:
        kind = type(member).__name__.removesuffix("Member").lower()
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
        (what keeps the top of a post in its place), 'conditions' (what its strength stands on), 'wood_in_use' (what wet
        service and treatment do) [-].
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
    >>> from structlib.rules.us.book import RULEBOOK
    >>> ask(RULEBOOK, "soils")[0].name
    'clay or silt'
    """
    rule = getattr(rulebook, answer, None)
    if rule is None:
        what = answer.replace("_", " ")
        raise NotCovered(f"the rulebook of {rulebook.name} has no rule for the {what} here; what is asked stays")
    return rule(*asked)


def carried_by_plies(rulebook, post, push, most=5):
    """Return what a post carries in its middle, and the fewest plies that carry a push.

    Parameters
    ----------
    rulebook : structlib.rules.check.Rulebook
        The rulebook, asked for its 'capacity' [-].
    post : PostMember
        The post; one of a single thick ply is tried as it is [-].
    push : Push
        The push [N].
    most : int
        Plies to try [-].

    Returns
    -------
    tuple of (float, int or None)
        Load of the post as it is, and plies; None where not even the most carry the push [N, -].

    Examples
    --------
    >>> from structlib.ground.lumber import find_material
    >>> from structlib.ground.units import ft, inch, kip
    >>> from structlib.rules.us.book import RULEBOOK
    >>> post = PostMember(find_material("Douglas Fir-Larch", "No.2"), 1.5 * inch, 5.5 * inch, 8 * ft)
    >>> carried_by_plies(RULEBOOK, post, Push(RULEBOOK.combinations({"live"})[1], 9 * kip))[1]
    3
    """
    counts = numpy.arange(1, most + 1) if post.ply_width <= _THICKEST_PLY else numpy.array([1])
    loads = ask(rulebook, "capacity", replace(post, plies=counts), (post.height,), push.combination.time_factor)
    enough = counts[loads >= push.axial]
    return float(loads[post.plies - 1]), int(enough[0]) if len(enough) else None
