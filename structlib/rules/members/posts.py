"""Posts, plates and pads as a rulebook is asked about them, and what is asked of each."""

from dataclasses import dataclass, replace
from functools import lru_cache
from typing import Any

import numpy

from structlib.ground.units import inch
from structlib.rules.check import Combination, OfPlies
from structlib.rules.members.asking import ask

_THICKEST_PLY = 2 * inch  # what is thicker is a solid post, not a ply
#: The question of a post that may be refused while its others are answered.
OFF_MIDDLE = "load off the middle"


@dataclass(frozen=True)
class Push:
    """What one combination presses on a member with [N], and how far off its middle, along its depth [mm]."""

    combination: Combination
    axial: float
    off_middle: float = 0.0


@dataclass(frozen=True)
class PostMember(OfPlies):
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


@dataclass(frozen=True)
class PlateMember:
    """A plate or a beam that a post presses across its grain, and how it is called."""

    post: PostMember
    material: Any
    name: str = "plate"


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
    >>> from structlib.rules.choice import RULEBOOK
    >>> post = PostMember(find_material("Douglas Fir-Larch", "No.2"), 1.5 * inch, 5.5 * inch, 8 * ft)
    >>> carried_by_plies(RULEBOOK, post, Push(RULEBOOK.combinations({"live"})[1], 9 * kip))[1]
    3
    """
    loads = _loads_by_plies(rulebook, replace(post, plies=1), push.combination.time_factor, most)
    return loads[post.plies - 1], next((plies for plies, load in enumerate(loads, 1) if load >= push.axial), None)


@lru_cache(maxsize=256)
def _loads_by_plies(rulebook, post, time_factor, most):
    counts = numpy.arange(1, most + 1) if post.ply_width <= _THICKEST_PLY else numpy.array([1])
    return tuple(map(float, ask(rulebook, "capacity", replace(post, plies=counts), (post.height,), time_factor)))


def carried_by_height(rulebook, post, heights, time_factor, *, middle=False):
    """Return what a post carries in its middle by its height; zero where no rule covers it.

    Parameters
    ----------
    rulebook : structlib.rules.check.Rulebook
        The rulebook, asked for its 'capacity' [-].
    post : PostMember
        The post; its own height does not count [-].
    heights : tuple of float
        Heights to ask for [mm].
    time_factor : float
        Load duration factor of the combination [-].
    middle : bool
        Whether a brace holds it across its plies at half of each height [-].

    Returns
    -------
    tuple of float
        Loads [N].

    Examples
    --------
    >>> from structlib.ground.lumber import find_material
    >>> from structlib.ground.units import ft, inch, kip
    >>> from structlib.rules.choice import RULEBOOK
    >>> post = PostMember(find_material("Douglas Fir-Larch", "No.2"), 1.5 * inch, 5.5 * inch, 8 * ft, plies=3)
    >>> [round(load / kip, 1) for load in carried_by_height(RULEBOOK, post, (8 * ft, 10 * ft), 1.0)]
    [12.4, 8.8]
    """
    if not middle:
        return tuple(map(float, ask(rulebook, "capacity", post, heights, time_factor)))
    # a brace at mid-height stands elsewhere for every height, so each height is asked apart
    return tuple(
        float(ask(rulebook, "capacity", replace(post, held_width=one / 2), (one,), time_factor)[0]) for one in heights
    )
