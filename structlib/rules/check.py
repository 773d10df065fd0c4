"""The records in which every rulebook asks and answers, and what a rulebook must offer.

A check is one record: what is asked, what can be given, the share used, the clause, and the
formula with numbers put in. A page, a brief, an exercise or a film takes everything that it
says about strength from that record.
"""

import math
from dataclasses import dataclass, field
from functools import cached_property
from typing import Any, Protocol, runtime_checkable

from structlib.ground.refusals import BadInput, check_choice
from structlib.ground.tables import VERIFIED_WORDS

#: How well a number is known, from the best to the least. A result is as well known as its worst input.
VERIFIED_ORDER = VERIFIED_WORDS

#: What counts where nobody said how a number is known.
LEAST_KNOWN = VERIFIED_ORDER[-1]

#: Load types that come and go. Dead load stays.
VARIABLE_TYPES = ("live", "roof live", "snow")

#: What an end of a beam may rest on, and where its load may come in.
SEATS = ("plate", "post", "steel", "masonry", "hanger")
LOADED_ON = ("top", "side")

#: What was done to a piece of wood against rot or fire.
TREATMENTS = ("none", "preservative", "fire retardant")


def least_verified(words):
    """Return the least well known of several ``verified`` words.

    Parameters
    ----------
    words : iterable of str
        Words from VERIFIED_ORDER; empty words are passed over [-].

    Returns
    -------
    str
        The word that comes last in VERIFIED_ORDER; the last of all when there is none: nothing is known then [-].

    Examples
    --------
    >>> least_verified(["seen", "recalled", "computed"])
    'recalled'
    >>> least_verified([]) == VERIFIED_ORDER[-1]
    True
    """
    known = [_RANK[check_choice("verified word", word, _RANK)] for word in words if word]
    return VERIFIED_ORDER[max(known)] if known else LEAST_KNOWN


_RANK = {word: number for number, word in enumerate(VERIFIED_ORDER)}


@dataclass(frozen=True)
class Combination:
    """Loads of several types that act together, each with its factor, as a rulebook combines them."""

    name: str
    factors: tuple[tuple[str, float], ...]
    time_factor: float
    time_name: str
    clause: str
    verified: str

    def factor(self, load_type):
        """Return the factor on one load type.

        Parameters
        ----------
        load_type : str
            'dead', 'live', 'roof live' or 'snow' [-].

        Returns
        -------
        float
            The factor; zero when the type is not in the combination [-].

        Examples
        --------
        >>> Combination("D + L", (("dead", 1.0), ("live", 1.0)), 1.0, "ten years", "2.4.1", "recalled").factor("snow")
        0.0
        """
        for kind, factor in self.factors:
            if kind == load_type:
                return factor
        return 0.0


@dataclass(frozen=True)
class Seat:
    """What one end of a beam rests on.

    ``below`` is 'plate' (wood loaded across its grain), 'post' (end grain), 'steel', 'masonry' or
    'hanger'. ``below_bearing`` is the crushing value of a wood plate, MPa, with its name; a plate without one is
    not named, and a rulebook takes its weakest listed wood for it. ``width`` is where what is below is narrower
    than the beam [mm]; None where it is not.
    """

    length: float
    below: str = "plate"
    below_bearing: float | None = None
    below_name: str = ""
    below_verified: str = LEAST_KNOWN
    width: float | None = None


#: A seat of which nothing is written: the span ends at the middle of what is below, and no check of a seat is answered.
NOT_WRITTEN = Seat(0.0, "not written")


class OfPlies:
    """What follows from the plies and the material of a member in bending; worked out once, for members do not change."""

    @cached_property
    def width(self):
        """Width of all plies together [mm]."""
        return self.ply_width * self.plies

    @cached_property
    def area(self):
        """Area of the cross-section [mm2]."""
        from structlib.ground.sections import rectangle_area

        return rectangle_area(width=self.width, depth=self.depth)

    @cached_property
    def section_modulus(self):
        """Section modulus about the strong axis [mm3]."""
        from structlib.ground.sections import rectangle_section_modulus

        return rectangle_section_modulus(width=self.width, depth=self.depth)

    @cached_property
    def inertia(self):
        """Second moment of area about the strong axis [mm4]."""
        from structlib.ground.sections import rectangle_inertia

        return rectangle_inertia(width=self.width, depth=self.depth)

    @cached_property
    def bending_stiffness(self):
        """Modulus of elasticity of dry wood times second moment of area [N*mm2]."""
        return self.material.modulus * self.inertia

    @cached_property
    def shear_stiffness(self):
        """Shear modulus times shear area; None where the modulus of elasticity holds the shear part [N]."""
        from structlib.mechanics.formulas import rectangle_shear_stiffness

        if self.material.shear_modulus is None:
            return None
        return rectangle_shear_stiffness(shear_modulus=self.material.shear_modulus, area=self.area)

    @cached_property
    def weight_per_length(self):
        """Own weight of all plies together [N/mm]."""
        return self.material.weight_density * self.area


@dataclass(frozen=True)
class BeamMember(OfPlies):
    """A beam as a rulebook sees it: material, section, ends, bracing and conditions.

    Lengths in mm. ``unbraced_length`` is the greatest distance along the compressed edge without a
    brace against rolling sideways; zero when it is held all along. ``loaded_on`` is 'top' or 'side'.
    ``repetitive`` overrides the count of plies for joists that share a floor; ``use`` is a `BeamUse`.
    """

    material: Any
    ply_width: float
    depth: float
    plies: int
    left: Seat
    right: Seat
    unbraced_length: float = field(kw_only=True)
    loaded_on: str = "top"
    repetitive: bool | None = None
    wet: bool = False
    use: Any = None


@dataclass(frozen=True)
class BeamUse:
    """What a beam carries, which sets its sag limits.

    ``supports`` is a row of the rulebook's deflection table, such as 'floor'. The divisors ask for a
    stricter limit than the code's. ``creep_decides`` lets the sag after years govern as well.
    """

    supports: str = "floor"
    live_divisor: float | None = None
    total_divisor: float | None = None
    creep_decides: bool = False


@dataclass(frozen=True)
class BeamDemand:
    """What one combination asks of a beam: solutions of the same beam, ready to be read.

    ``solution`` has all loads with their factors, ``variable`` only those that come and go,
    ``lasting`` only those that stay. ``left_face`` and ``right_face`` are the inner edges of the
    seats, mm from the left end. ``top_loads`` are (start, end, intensity, end intensity) of the
    distributed part, used where a rule leaves out load close to a support. ``evenly_loaded`` tells that
    nothing but even load is on the beam, all along its span.
    """

    combination: Combination
    solution: Any
    variable: Any
    lasting: Any
    span: float
    left_face: float
    right_face: float
    top_loads: tuple[tuple[float, float, float, float], ...] = ()
    evenly_loaded: bool = False


@dataclass(frozen=True)
class Factor:
    """One number that adjusts a reference value: its symbol, its value, why, and the clause."""

    symbol: str
    value: float
    reason: str
    clause: str
    verified: str = LEAST_KNOWN


@dataclass(frozen=True)
class Check:
    """One question put to one member: asked, given, the share used, where, and by which clause.

    ``asked`` and ``given`` have the dimension named; ``position`` is in mm from the left end.
    ``substitute`` holds (symbol, value, dimension) for every symbol of the formula, so that any page
    can put the reader's own units in. ``decides`` is False for a figure shown beside the limits
    (it informs, and never governs).
    """

    name: str
    kind: str
    sentence: str
    asked: float
    given: float
    share: float
    dimension: str
    position: float
    where: str
    combination: str
    clause: str
    formula: str
    substitute: tuple[tuple[str, float, str], ...] = ()
    factors: tuple[Factor, ...] = ()
    verified: str = LEAST_KNOWN
    decides: bool = True


@runtime_checkable
class Rulebook(Protocol):
    """What a folder of rules must offer. A second rulebook fits by offering the same."""

    name: str
    edition: str

    def combinations(self, load_types) -> tuple[Combination, ...]:
        """Return the load combinations that matter for the load types present.

        Parameters
        ----------
        load_types : iterable of str
            Types that act on the member [-].

        Returns
        -------
        tuple of Combination
            The combinations, each with its factors [-].
        """

    def beam_checks(self, member: BeamMember, demands: tuple[BeamDemand, ...], use) -> tuple[Check, ...]:
        """Return every check of one beam, in full.

        Parameters
        ----------
        member : BeamMember
            The beam [-].
        demands : tuple of BeamDemand
            What each combination asks [-].
        use : BeamUse
            What the beam carries, which sets the sag limits [-].

        Returns
        -------
        tuple of Check
            One check a question, each for the combination that asks most [-].
        """

    def checks(self, member, demands) -> tuple[Check, ...]:
        """Return every check of one member of any kind, found by its kind; `NotCovered` where there is no rule.

        Parameters
        ----------
        member : object
            A `BeamMember`, or a member of `structlib.rules.members` [-].
        demands : tuple
            What each combination asks: `BeamDemand`, or `Push` [-].

        Returns
        -------
        tuple of Check
            One check a question, each for the combination that asks most [-].
        """

    def leaves_out_load_near_seat(self, *, below: str, loaded_on: str) -> bool:
        """Tell whether load within a depth of a seat may be left out of the shear there.

        Parameters
        ----------
        below : str
            What the end rests on, such as 'plate' [-].
        loaded_on : str
            Where the load comes in: 'top' or 'side' [-].

        Returns
        -------
        bool
            True where it may [-].
        """

    def modulus_factor(self, material, *, wet: bool) -> float:
        """Return what the modulus of elasticity is multiplied by in service; every sag uses it.

        Parameters
        ----------
        material : structlib.ground.lumber.Material
            The wood [-].
        wet : bool
            True where the wood stays wet in use [-].

        Returns
        -------
        float
            The factor; 1.0 when dry [-].
        """

    def in_service(self, material, *, incised: bool, treatment: str):
        """Return a wood with the values that it has as it is put in.

        Parameters
        ----------
        material : structlib.ground.lumber.Material
            The wood [-].
        incised : bool
            True where small cuts were made into it to let preservative in [-].
        treatment : str
            One of TREATMENTS [-].

        Returns
        -------
        structlib.ground.lumber.Material
            The wood [-].
        """

    def prepare(self, rack) -> dict:
        """Return the strengths of every candidate of a rack, before time and bracing.

        Parameters
        ----------
        rack : structlib.house.sizing.Rack
            The candidates [-].

        Returns
        -------
        dict of numpy.ndarray
            Strength columns, one value a candidate; their names are the rulebook's own [any].
        """

    def beam_shares(self, rack, strengths, demand, use) -> dict:
        """Return the share used by each candidate of a rack, as arrays, for one combination.

        Parameters
        ----------
        rack : structlib.house.sizing.Rack
            The candidates [-].
        strengths : dict of numpy.ndarray
            What `prepare` returned for this rack [any].
        demand : structlib.house.sizing.RackDemand
            What the combination asks of each candidate [-].
        use : BeamUse
            What the beam carries, which sets the sag limits [-].

        Returns
        -------
        dict of numpy.ndarray
            Share by the name of the check [-].
        """


#: What two shares may differ by and still be equal: rounding, which is no reason to name the other end of a beam.
_ROUNDING = 1e-9


def uses_more(share, other):
    """Tell whether a share is greater than another by more than rounding; one that is not a number is beyond any.

    Parameters
    ----------
    share, other : float
        Shares used [-].

    Returns
    -------
    bool
        True where it is [-].

    Examples
    --------
    >>> uses_more(0.75, 0.5), uses_more(0.1 + 0.2, 0.3), uses_more(math.nan, math.inf)
    (True, False, False)
    """
    if share != share:
        return other < math.inf
    return share > other and not math.isclose(share, other, rel_tol=_ROUNDING)


def governing(checks):
    """Return the check with the greatest share among those that decide.

    Parameters
    ----------
    checks : iterable of Check
        Checks of one member [-].

    Returns
    -------
    Check
        The one that governs; the first of those equal up to rounding. A share that is not a number governs before any
        other [-].

    Examples
    --------
    >>> a = Check("bending", "bending", "", 1, 2, 0.5, "stress", 0, "", "", "", "")
    >>> b = Check("sag", "sag", "", 3, 4, 0.75, "small length", 0, "", "", "", "")
    >>> governing([a, b]).name
    'sag'
    """
    most = None
    for check in checks:
        if check.decides and (most is None or uses_more(check.share, most.share)):
            most = check
    if most is None:
        raise BadInput("no check decides, so none governs; give the checks of one member, for example result.checks")
    return most
