"""Beams and joists that run on, past a support or over several, as a rulebook is asked about them."""

from dataclasses import dataclass
from typing import Any

from structlib.rules.check import BeamUse, Check, Combination, OfPlies, Seat


@dataclass(frozen=True)
class ContinuousMember(OfPlies):
    """A beam or joist in one piece that runs past a support or over several. Lengths in mm, places from its left end.

    ``seats`` are one a support, or none where seats are no question. ``top_braces`` and ``bottom_braces`` are the
    greatest distances between braces of its two edges, zero where one is held all along: the bottom edge is pressed
    near a support. ``repetitive`` is True for joists that share a floor, None for the plies themselves.
    """

    material: Any
    ply_width: float
    depth: float
    plies: int
    supports: tuple[float, ...]
    seats: tuple[Seat, ...]
    length: float
    top_braces: float
    bottom_braces: float
    repetitive: bool | None = None
    wet: bool = False
    use: BeamUse = BeamUse()
    called = "beam or joist that runs on"  # in the sentence of a rulebook that has no rule for it

    @property
    def stretches(self):
        """Its spans and overhangs from left to right: start, end, and whether it is a span [mm]."""
        places = (0.0, *self.supports, self.length)
        inner = range(1, len(places) - 2)
        return tuple((a, b, n in inner) for n, (a, b) in enumerate(zip(places, places[1:])) if b - a > 1e-3)


@dataclass(frozen=True)
class Comes:
    """Load that comes and goes by itself: where it stands [mm], and what it comes from where that is one thing."""

    start: float
    end: float
    source: str = ""

    @property
    def is_point(self):
        """Whether it stands at one place, as a post does."""
        return self.end - self.start <= 1e-3


@dataclass(frozen=True)
class RunningDemand:
    """What one combination asks over all arrangements of what comes and goes.

    ``all_load`` and ``passing`` are envelopes (`structlib.mechanics.patterns.Envelope`) of all load with its factors
    and of what comes and goes alone, ``passing`` None where nothing does. ``comes`` names their groups in order.
    """

    combination: Combination
    all_load: Any
    passing: Any
    comes: tuple[Comes, ...]

    @property
    def dead(self):
        """The beam under what is always on it, with its factor."""
        return self.all_load.always


@dataclass(frozen=True)
class ArrangedCheck(Check):
    """A check that says under which arrangement it asks most: for each group of its demand, whether it is there."""

    on: tuple[bool, ...] = ()


@dataclass(frozen=True)
class HoldDown:
    """What must hold a member down at one support [N]: with all the dead load that helps, and with the share counted.

    ``under`` and ``counted_under`` name the loads of each, ``book`` the publication of the clause.
    """

    support: int
    plain: float
    under: str
    counted: float
    counted_under: str
    share: float
    book: str
    clause: str
    verified: str

    @property
    def most(self):
        """The greater of the two [N]."""
        return max(self.plain, self.counted)
