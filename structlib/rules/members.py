"""Members other than beams as a rulebook is asked about them, and what is asked of each."""

from dataclasses import dataclass
from typing import Any

from structlib.ground.refusals import OutsideRule
from structlib.rules.check import Combination


class NotCovered(OutsideRule):
    """A rulebook has no rule for this kind of member; what is asked of it stays."""


@dataclass(frozen=True)
class Push:
    """What one combination presses on a member with [N]."""

    combination: Combination
    axial: float


@dataclass(frozen=True)
class PostMember:
    """A post: its wood, one ply [mm], how many, its height [mm], and the distance between braces across its plies [mm].

    ``held_width`` is None for the whole height, and 0 where it is held all along.
    """

    material: Any
    ply_width: float
    depth: float
    height: float
    plies: int = 1
    fastening: str = "nailed"
    held_width: float | None = None


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
