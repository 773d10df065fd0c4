"""Joists of a floor, old joists as measured, and the cut in one: what a rulebook is asked about each, over all woods at once."""

from dataclasses import dataclass, field, replace
from functools import cached_property
from typing import Any

import numpy

from structlib.ground.measured_sections import MeasuredSection
from structlib.rules.check import VARIABLE_TYPES, BeamMember, Check, Combination
from structlib.rules.members.asking import NotCovered, ask

_AT_AN_END = 1e-6  # mm
#: Kinds of question about the wood that is left at a cut.
AT_CUT = ("bending at the cut", "shear at the cut", "push on a notched end")


@dataclass(frozen=True)
class JoistMember(BeamMember):
    """A joist of a floor or a ceiling: a beam whose neighbours share its load through what lies on them, and holds it."""

    unbraced_length: float = field(default=0.0, kw_only=True)
    repetitive: bool | None = True


@dataclass(frozen=True)
class Sharing:
    """How far apart joists may stand and still help each other through what lies on them [mm], by which clause."""

    spacing: float
    clause: str
    verified: str


def shares_up_to(rulebook):
    """Return how far apart joists may stand and still count as helped by their neighbours.

    Parameters
    ----------
    rulebook : structlib.rules.check.Rulebook
        The rules [-].

    Returns
    -------
    float
        Spacing; 0 where the rulebook has no such rule, for then nothing of it is counted [mm].

    Examples
    --------
    >>> from structlib.rules.choice import RULEBOOK
    >>> round(shares_up_to(RULEBOOK) / 25.4)
    24
    """
    try:
        return ask(rulebook, "sharing").spacing
    except NotCovered:
        return 0.0


@dataclass(frozen=True)
class Notch:
    """A notch from ``start`` to ``end``, ``depth`` deep [mm], cut into the 'top' or the 'bottom'.

    It is at an end when it reaches the left or right end of the member. Places are from the left support.
    """

    start: float
    end: float
    depth: float
    face: str = "top"

    @property
    def middle(self):
        """The middle of its length [mm]."""
        return (self.start + self.end) / 2

    def box(self, depth):
        """Return where it lies in a member of a depth: start, end, and from which height to which.

        Parameters
        ----------
        depth : float
            Depth of the member [mm].

        Returns
        -------
        tuple of (float, float, float, float)
            Start, end, low, high [mm].

        Examples
        --------
        >>> Notch(100.0, 160.0, 30.0).box(190.0)
        (100.0, 160.0, 160.0, 190.0)
        """
        low, high = (depth - self.depth, depth) if self.face == "top" else (0.0, self.depth)
        return self.start, self.end, low, high


@dataclass(frozen=True)
class Hole:
    """A round hole: its middle along the span and above the bottom edge, and its diameter [mm]."""

    place: float
    height: float
    diameter: float

    @property
    def middle(self):
        """Its middle along the span [mm]."""
        return self.place

    def box(self, depth):
        """Return where it lies in a member: start, end, and from which height to which.

        Parameters
        ----------
        depth : float
            Depth of the member [mm].

        Returns
        -------
        tuple of (float, float, float, float)
            Start, end, low, high [mm].

        Examples
        --------
        >>> Hole(500.0, 95.0, 40.0).box(190.0)
        (480.0, 520.0, 75.0, 115.0)
        """
        half = self.diameter / 2
        return self.place - half, self.place + half, self.height - half, self.height + half


@dataclass(frozen=True)
class MeasuredJoist:
    """An old joist as measured: one piece of it, how far apart the joists are [mm], pieces side by side, and its wood.

    ``species`` and ``grade`` are empty where they are not known: then it may be any. ``graded`` is False where it may
    make no grade at all. A round log is ``taper`` thinner at its right end [mm].
    """

    section: MeasuredSection
    spacing: float
    plies: int = 1
    species: str = ""
    grade: str = ""
    graded: bool = True
    taper: float = 0.0
    supports: str = "floor"


@dataclass(frozen=True)
class MeasuredDemand:
    """What one combination asks of a measured joist: greatest stresses [MPa], and sags for a modulus of 1 MPa [N/mm].

    ``passing_sag`` is under what comes and goes, ``lasting_sag`` under what stays; over the modulus of a wood they are
    its sags [mm].
    """

    combination: Combination
    span: float
    bending_stress: float
    shear_stress: float
    passing_sag: float
    lasting_sag: float


@dataclass(frozen=True)
class CutMember:
    """A joist with its cut: the joist, its span [mm], a notch or a hole (None for none), and 'sawn' or 'engineered'."""

    joist: MeasuredJoist
    span: float
    cut: Any
    made: str = "sawn"

    @property
    def ends(self):
        """Which ends of the joist a notch reaches: left, right."""
        if not isinstance(self.cut, Notch):
            return False, False
        return self.cut.start <= _AT_AN_END, self.cut.end >= self.span - _AT_AN_END


@dataclass(frozen=True)
class CutDemand:
    """What one combination asks of the wood left at a cut: stresses [MPa], and the push of an end notched from below [N]."""

    combination: Combination
    bending_stress: float
    shear_stress: float
    end_push: float = 0.0


@dataclass(frozen=True)
class CutLimits:
    """How far a sawn joist may be cut [mm], away from its ends; and the same as boxes: start, end, low, high.

    ``boxes`` are where a cut may lie, ``notch_box`` the greatest notch around the one that is there, None where none
    may be, ``hole_width`` the widest hole.
    """

    notch_depth: float
    notch_length: float
    hole_width: float
    hole_edge: float
    verified: str
    boxes: tuple = ()
    notch_box: tuple | None = None


@dataclass(frozen=True)
class Question:
    """One question put to a joist for every wood that it may be of: what is asked, and what each wood gives, as arrays.

    ``loads`` names what acts, ``limit`` the limit in words where the clause alone does not say it; ``verified`` is the
    least well known of all that was used.
    """

    kind: str
    name: str
    asked: Any
    given: Any
    dimension: str
    loads: str
    combination: str
    clause: str
    verified: str
    limit: str = ""
    decides: bool = True

    @cached_property
    def shares(self):
        """What is asked over what each wood gives [-]."""
        return self.asked / self.given


@dataclass(frozen=True)
class Compared:
    """A joist compared with every wood that it may be of: the woods, how the values of each are known, and the questions.

    ``lowest_grade`` is the lowest one listed: below it nothing is said.
    """

    woods: tuple
    known: tuple
    questions: tuple
    lowest_grade: str

    def question(self, kind):
        """Return one question by its kind; None where it is not asked.

        Parameters
        ----------
        kind : str
            Such as 'bending' [-].

        Returns
        -------
        Question or None
            The question [-].
        """
        return next((one for one in self.questions if one.kind == kind), None)

    @cached_property
    def deciding(self):
        """Shares of the questions that decide: a row a question, a column a wood [-]."""
        return numpy.array([one.shares for one in self.questions if one.decides])

    @cached_property
    def greatest(self):
        """The greatest share of each wood [-]."""
        return self.deciding.max(axis=0)

    def governs(self, wood):
        """Return the kind of question that asks most of one wood.

        Parameters
        ----------
        wood : int
            Its place in the list [-].

        Returns
        -------
        str
            The kind [-].
        """
        kinds = [one.kind for one in self.questions if one.decides]
        return kinds[int(numpy.argmax(self.deciding[:, wood]))]

    def best_first(self):
        """Return the places of the woods in the list, from the one that is used least.

        Returns
        -------
        tuple of int
            The places [-].
        """
        return tuple(map(int, numpy.argsort(self.greatest, kind="stable")))

    def with_questions(self, *others):
        """Return the same woods with the questions of other comparisons added.

        Parameters
        ----------
        *others : Compared
            Of the same joist, such as that of its cut [-].

        Returns
        -------
        Compared
            All of them [-].
        """
        return replace(self, questions=(*self.questions, *(one for other in others for one in other.questions)))

    def checks(self, position):
        """Return each question as a check of the wood of which it asks most: what is not known counts as the weakest.

        Parameters
        ----------
        position : float
            Where on the joist [mm].

        Returns
        -------
        tuple of structlib.rules.check.Check
            The checks [-].
        """
        found = []
        for one in self.questions:
            worst = int(numpy.argmax(one.shares))
            asked, given = (float(side[worst] if numpy.ndim(side) else side) for side in (one.asked, one.given))
            found.append(Check(
                one.name, one.kind, f"the most that any wood it may be of is asked: {self.woods[worst].name}", asked, given,
                asked / given, one.dimension, position, f"if it is {self.woods[worst].name}", one.combination,
                one.clause, one.limit or "asked <= given", verified=one.verified, decides=one.decides,
            ))  # fmt: skip
        return tuple(found)


def acting(combination, types=("dead", *VARIABLE_TYPES)):
    """Name the loads of a combination with their factors.

    Parameters
    ----------
    combination : structlib.rules.check.Combination
        The combination [-].
    types : tuple of str
        Types that are meant [-].

    Returns
    -------
    str
        The words [-].

    Examples
    --------
    >>> acting(Combination("a", (("dead", 1.25), ("live", 1.0)), 1.0, "any", "", "seen"))
    '1.25 x dead + live'
    """
    factors = {kind: combination.factor(kind) for kind in types}
    return " + ".join(kind if one == 1 else f"{one:g} x {kind}" for kind, one in factors.items() if one)
