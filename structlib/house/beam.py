"""One beam from its loads to its verdict, under any rulebook."""

from dataclasses import dataclass, field
from typing import Any

from structlib.ground.refusals import BadInput, OutsideRule, check_choice, check_number
from structlib.ground.units import ft, inch, psi
from structlib.house.inputs import (
    check_list,
    check_material,
    check_one_number,
    check_record,
    check_whole_number,
    check_yes_or_no,
)
from structlib.house.plies import PlyJoint, ply_layout
from structlib.mechanics.beams import Beam, LineLoad, PointLoad, Support, combined, solve_each
from structlib.rules.check import (
    LOADED_ON,
    SEATS,
    TREATMENTS,
    VARIABLE_TYPES,
    BeamDemand,
    BeamMember,
    BeamUse,
    OfPlies,
    Seat,
    governing,
)

ON_MASONRY = (
    "A beam on masonry: whether the wall under the seat can take the push is for an engineer. "
    "Only what is asked of it is shown here."
)


@dataclass(frozen=True)
class TypedLoad:
    """One load on a beam and the type it is of: 'dead', 'live', 'roof live' or 'snow'."""

    load_type: str
    load: Any


@dataclass(frozen=True)
class BeamJob:
    """An opening to be spanned: what the beam carries and what it sits on, before a beam is chosen.

    Lengths in mm. ``loads`` are placed from the left end of the design span, which runs from the middle
    of one seat to the middle of the other. Own weight is added for each beam, and never listed here.
    Loads push down; one that lifts is refused. ``wet`` is where the beam stands, ``incised`` and ``treatment``
    what was done to the wood that is put in. ``ply_joint`` is how the plies of a beam loaded from its side
    are joined (`structlib.house.plies.PlyJoint`). ``stops`` are reasons of the reader to stop and call.
    ``unbraced_length`` is the greatest distance between what holds the compressed edge, 0 where it is held all along;
    where nobody says, nothing holds it between the seats. ``seat_width`` is how wide that is on which it sits; None
    where it is as wide as the beam.
    """

    clear_width: float
    left: Seat
    right: Seat
    loads: tuple[TypedLoad, ...] = ()
    unbraced_length: float | None = None
    loaded_on: str = "top"
    wet: bool = False
    use: BeamUse = field(default_factory=BeamUse)
    incised: bool = False
    treatment: str = "none"
    ply_joint: PlyJoint | None = None
    stops: tuple[str, ...] = ()
    seat_width: float | None = None

    @property
    def gates(self):
        """Reasons to stop and call: no beam for this job has a verdict while there is one [-]."""
        on_masonry = "masonry" in (self.left.below, self.right.below)
        return self.stops + ((ON_MASONRY,) if on_masonry else ())

    @property
    def unbraced(self):
        """Greatest distance between what holds the compressed edge; the whole span where nobody told [mm]."""
        return self.span if self.unbraced_length is None else self.unbraced_length

    @property
    def span(self):
        """Design span: clear width and half of each seat [mm]."""
        return design_span(clear_width=self.clear_width, left_seat=self.left.length, right_seat=self.right.length)


@dataclass(frozen=True)
class BeamChoice(OfPlies):
    """A beam that could be put in: material, width of one ply, depth (mm) and number of plies."""

    material: Any
    ply_width: float
    depth: float
    plies: int
    name: str = ""

    @property
    def weight(self):
        """Weight by length, as a beam with steel in it has one too [N/mm]."""
        return self.weight_per_length


@dataclass(frozen=True)
class BeamResult:
    """A job, a choice, every check, the solved beam of each combination, and why no verdict stands, if so."""

    job: BeamJob
    choice: BeamChoice
    member: BeamMember
    demands: tuple[BeamDemand, ...]
    checks: tuple
    withheld: str = ""
    ply_layout: Any = None

    @property
    def gates(self):
        """Reasons to stop and call, of the job and of this beam in it [-]."""
        sentence = f"No verdict: {self.withheld}." if self.withheld else ""
        return self.job.gates + ((sentence,) if sentence else ())

    @property
    def governs(self):
        """The check with the greatest share."""
        return governing(self.checks)

    @property
    def share(self):
        """The greatest share used [-]."""
        return self.governs.share

    def check(self, name):
        """Return one check by its name.

        Parameters
        ----------
        name : str
            Name of the check, such as 'bending' [-].

        Returns
        -------
        structlib.rules.check.Check
            The check [-].
        """
        for check in self.checks:
            if check.name == name:
                return check
        raise BadInput(f"there is no check {name!r}; this beam has " + ", ".join(c.name for c in self.checks))


def design_span(*, clear_width, left_seat, right_seat):
    """Return the design span of a simple beam: clear width and half of each seat.

    Parameters
    ----------
    clear_width : float, numpy.ndarray or sympy expression
        Distance between the inner edges of the seats [mm].
    left_seat : float, numpy.ndarray or sympy expression
        Length of the left seat [mm].
    right_seat : float, numpy.ndarray or sympy expression
        Length of the right seat [mm].

    Returns
    -------
    float, numpy.ndarray or sympy expression
        Design span [mm].

    Notes
    -----
    Half of the seat that is *needed* would do; half of the whole seat given is used here, which makes the span a
    little longer and the answer a little more careful.

    Examples
    --------
    >>> design_span(clear_width=144.0, left_seat=3.0, right_seat=3.0)
    147.0
    """
    for name, length in (("clear width", clear_width), ("left seat", left_seat), ("right seat", right_seat)):
        check_number(name, length, low=0.0, high=60_000.0, shown=lambda mm: f"{mm:g} mm", hint="for example 12*ft")
    return clear_width + left_seat / 2 + right_seat / 2


def check_job(job):
    """Refuse a job whose numbers make no sense.

    Parameters
    ----------
    job : BeamJob
        The opening and its loads [-].

    Returns
    -------
    BeamJob
        The job, unchanged [-].

    Raises
    ------
    OutsideRule
        When a load lifts the beam.

    Examples
    --------
    >>> check_job(BeamJob(12 * ft, Seat(3 * inch), Seat(3 * inch))).loaded_on
    'top'
    """
    check_record("job", job, BeamJob, "BeamJob(12*ft, Seat(3*inch), Seat(3*inch))")
    check_one_number(
        "opening width",
        job.clear_width,
        low=1 * ft,
        high=40 * ft,
        shown=_feet,
        hint="did you mean inches?" if _is_big(job.clear_width, 40 * ft) else "for example 12 ft",
    )
    for name, seat in (("left seat", job.left), ("right seat", job.right)):
        _check_seat(name, seat)
    _check_seat_width("the seats", job.seat_width)
    check_one_number(
        "distance between braces",
        0.0 if job.unbraced_length is None else job.unbraced_length,
        low=0.0,
        high=40 * ft,
        shown=_feet,
        hint="0 when the edge is held all along",
    )
    check_choice("where the load comes in", job.loaded_on, LOADED_ON)
    check_yes_or_no("wet", job.wet)
    check_yes_or_no("incised", job.incised)
    check_choice("treatment", job.treatment, TREATMENTS)
    check_list("stops", job.stops, "('A truss ends here.',)")
    if job.ply_joint is not None:
        check_record("how the plies are joined", job.ply_joint, PlyJoint, "PLY_JOINTS['10d']")
    check_record("use", job.use, BeamUse, "BeamUse('floor')")
    check_yes_or_no("creep_decides", job.use.creep_decides)
    for typed in check_list("loads", job.loads, "(TypedLoad('live', LineLoad(0.0, 3600.0, 7.0)),)"):
        _check_load(typed)
    return job


def _check_seat(name, seat):
    check_record(name, seat, Seat, "Seat(3*inch)")
    check_one_number(name, seat.length, low=0.5 * inch, high=24 * inch, shown=_inches, hint="for example 3 in")
    check_choice(f"what the {name} rests on", seat.below, SEATS)
    _check_seat_width(f"what is below the {name}", seat.width)
    if seat.below_bearing is not None:
        check_one_number(
            f"bearing value below the {name}",
            seat.below_bearing,
            low=0.0,
            high=10_000 * psi,
            low_allowed=False,
            shown=lambda mpa: f"{mpa / psi:g} psi",
            hint="for example 425 psi",
        )


def _check_seat_width(name, width):
    if width is not None:
        check_one_number(
            f"width of {name}", width, low=0.5 * inch, high=48 * inch, shown=_inches, hint="for example 5.5 in"
        )


def _check_load(typed):
    check_record("load", typed, TypedLoad, "TypedLoad('live', LineLoad(0.0, 3600.0, 7.0))")
    check_choice("load type", typed.load_type, ("dead",) + VARIABLE_TYPES)
    load = check_record("a load of a beam job", typed.load, (LineLoad, PointLoad), "LineLoad(0.0, 3600.0, 7.0)")
    amounts = (load.force,) if isinstance(load, PointLoad) else (load.intensity, load.end_intensity or 0.0)
    if min(amounts) < 0:
        raise OutsideRule(
            f"a {typed.load_type} load lifts the beam, and these checks cover loads that push down only; "
            "uplift needs its own checks and an engineer"
        )


def evenly_loaded(job):
    """Tell whether every load of a job is even and runs all along the span.

    Parameters
    ----------
    job : BeamJob
        The opening and its loads [-].

    Returns
    -------
    bool
        True when nothing but even load is on the beam [-].

    Examples
    --------
    >>> post = TypedLoad("live", PointLoad(900.0, 4000.0))
    >>> evenly_loaded(BeamJob(12 * ft, Seat(3 * inch), Seat(3 * inch), (post,)))
    False
    """
    span, rounding = job.span, 1e-3

    def even(load):
        return (
            isinstance(load, LineLoad)
            and load.start <= rounding
            and load.end >= span - rounding
            and load.end_intensity in (None, load.intensity)
        )

    return all(even(typed.load) for typed in job.loads)


def check_choice_of_beam(choice):
    """Refuse a beam whose size or ply count makes no sense.

    Parameters
    ----------
    choice : BeamChoice
        The beam [-].

    Returns
    -------
    BeamChoice
        The beam, unchanged [-].

    Examples
    --------
    >>> check_choice_of_beam(BeamChoice(None, 1.5 * inch, 9.25 * inch, 2)).plies
    2
    """
    check_record("beam", choice, BeamChoice, "BeamChoice(wood, 1.5*inch, 9.25*inch, 2)")
    check_whole_number("plies", choice.plies, low=1, high=6, hint="for example 2")
    check_one_number(
        "width of one ply",
        choice.ply_width,
        low=0.5 * inch,
        high=24 * inch,
        shown=_inches,
        hint="for example 1.5 in",
    )
    check_one_number("depth", choice.depth, low=1.0 * inch, high=48 * inch, shown=_inches, hint="for example 9.25 in")
    return choice


def check_beam(job, choice, rulebook):
    """Check one beam in one opening under one rulebook, in full.

    Parameters
    ----------
    job : BeamJob
        The opening and its loads [-].
    choice : BeamChoice
        The beam to try [-].
    rulebook : structlib.rules.check.Rulebook
        The rules to judge by [-].

    Returns
    -------
    BeamResult
        Every check, and the solved beam for each combination [-].

    Raises
    ------
    OutsideRule
        When the rulebook does not cover the beam, or a load lifts it.

    Examples
    --------
    >>> from structlib.ground.lumber import find_material
    >>> from structlib.ground.units import plf
    >>> from structlib.rules.choice import RULEBOOK
    >>> job = BeamJob(11 * ft, Seat(3 * inch), Seat(3 * inch), (
    ...     TypedLoad("live", LineLoad(0.0, 135 * inch, 100 * plf)),), unbraced_length=0.0)
    >>> result = check_beam(job, BeamChoice(find_material("Hem-Fir", "No.2"), 1.5*inch, 9.25*inch, 2), RULEBOOK)
    >>> result.governs.name
    'bending'
    """
    check_job(job)
    check_choice_of_beam(choice)
    check_material(choice.material)
    member = BeamMember(
        material=as_put_in(job, choice.material, rulebook),
        ply_width=choice.ply_width,
        depth=choice.depth,
        plies=int(choice.plies),
        left=job.left,
        right=job.right,
        unbraced_length=job.unbraced,
        loaded_on=job.loaded_on,
        wet=job.wet,
    )
    demands = demands_on(job, member, rulebook)
    checks = rulebook.beam_checks(member, demands, job.use)
    return BeamResult(job, choice, member, demands, checks, *ply_layout(job, choice, rulebook))


def as_put_in(job, material, rulebook):
    """Return the wood of a beam with the values that it has in this job.

    Parameters
    ----------
    job : BeamJob
        The opening; incised and treatment count [-].
    material : structlib.ground.lumber.Material
        The wood [-].
    rulebook : structlib.rules.check.Rulebook
        The rules [-].

    Returns
    -------
    structlib.ground.lumber.Material
        The wood, unchanged where nothing was done to it [-].

    Raises
    ------
    OutsideRule
        When the rulebook does not cover such wood.

    Examples
    --------
    >>> from structlib.ground.lumber import find_material
    >>> from structlib.rules.choice import RULEBOOK
    >>> job = BeamJob(12 * ft, Seat(3 * inch), Seat(3 * inch), incised=True)
    >>> as_put_in(job, find_material("Hem-Fir", "No.2"), RULEBOOK).name
    'Hem-Fir No.2, incised'
    """
    if not job.incised and job.treatment == "none":
        return material
    return rulebook.in_service(material, incised=job.incised, treatment=job.treatment)


def demands_on(job, member, rulebook):
    """Solve a beam for every combination of a rulebook.

    Parameters
    ----------
    job : BeamJob
        The opening and its loads [-].
    member : structlib.rules.check.BeamMember, or a flitch or steel beam of structlib.rules.members
        The beam; one without wood has None for its material [-].
    rulebook : structlib.rules.check.Rulebook
        The rules, which combine the loads [-].

    Returns
    -------
    tuple of structlib.rules.check.BeamDemand
        One record a combination [-].

    Examples
    --------
    >>> from structlib.ground.lumber import find_material
    >>> from structlib.ground.units import plf
    >>> from structlib.rules.choice import RULEBOOK
    >>> job = BeamJob(11 * ft, Seat(3 * inch), Seat(3 * inch), (
    ...     TypedLoad("live", LineLoad(0.0, 135 * inch, 100 * plf)),), unbraced_length=0.0)
    >>> wood = find_material("Hem-Fir", "No.2")
    >>> member = BeamMember(wood, 1.5 * inch, 9.25 * inch, 2, job.left, job.right, unbraced_length=0.0)
    >>> [demand.combination.name for demand in demands_on(job, member, RULEBOOK)]
    ['D', 'D + L']
    """
    span, own = job.span, member.weight_per_length
    lowered = 1.0 if member.material is None else rulebook.modulus_factor(member.material, wet=member.wet)
    stiffness, slides = member.bending_stiffness * lowered, member.shear_stiffness
    slides = None if slides is None else slides * lowered
    by_type = {"dead": [LineLoad(0.0, span, own)] if own else []}
    for typed in job.loads:
        by_type.setdefault(typed.load_type, []).append(typed.load)
    beam = Beam(
        span,
        stiffness,
        (Support(0.0), Support(span)),
        [load for loads in by_type.values() for load in loads],
        shear_stiffness=slides,
    )
    # what each type does alone is worked out once; a combination adds it up with its factors
    alone = dict(zip(by_type, solve_each(beam, by_type.values())))
    demands, even = [], evenly_loaded(job)
    for combination in rulebook.combinations(by_type):
        parts = [(kind, combination.factor(kind)) for kind in by_type if combination.factor(kind)]
        passing = [(alone[kind], factor) for kind, factor in parts if kind != "dead"]
        lasting = combined([(alone["dead"], combination.factor("dead"))])
        demands.append(
            BeamDemand(
                combination,
                combined([(alone[kind], factor) for kind, factor in parts]) if passing else lasting,
                combined(passing) if passing else None,
                lasting,
                span,
                left_face=job.left.length / 2,
                right_face=span - job.right.length / 2,
                top_loads=tuple(
                    (
                        load.start,
                        load.end,
                        load.intensity * factor,
                        (load.intensity if load.end_intensity is None else load.end_intensity) * factor,
                    )
                    for kind, factor in parts
                    for load in by_type[kind]
                    if isinstance(load, LineLoad)
                ),
                evenly_loaded=even,
            )
        )
    return tuple(demands)


def _is_big(value, limit):
    return isinstance(value, (int, float)) and value > limit


def _feet(value):
    return f"{value / ft:g} ft"


def _inches(value):
    return f"{value / inch:g} in"
