"""What a floor asks of its old joists as measured, and of the wood left at a cut; and a small house of one such floor."""

from structlib.ground.cut_sections import drilled_section_modulus, notched_section_modulus
from structlib.ground.refusals import OutsideRule
from structlib.ground.sections import round_inertia
from structlib.ground.units import ft, inch  # noqa: F401 (inch: in examples)
from structlib.house.beam import TypedLoad
from structlib.house.plan import SOIL, House, Layer, Level, Wall
from structlib.mechanics import formulas, vibration
from structlib.mechanics.beams import Beam, LineLoad, PointLoad, Support, solve
from structlib.mechanics.round_taper import tapered_log
from structlib.rules.check import VARIABLE_TYPES
from structlib.rules.members import CutDemand, MeasuredDemand, Notch, ask

_FLOOR_LENGTH = 8 * ft


def one_floor(joists, *, span, dead, live):
    """Return a house of one floor of measured joists between two walls.

    Parameters
    ----------
    joists : structlib.house.measured.MeasuredJoists
        The joists [-].
    span : float
        From the middle of one wall to the middle of the other [mm].
    dead : float
        Weight of the floor, its joists with it [MPa].
    live : float
        Live load [MPa].

    Returns
    -------
    structlib.house.plan.House
        The house; its level is "floor" [-].

    Examples
    --------
    >>> from structlib.ground.units import lb, psf
    >>> from structlib.house.measured import MeasuredJoists
    >>> from structlib.house.path import follow
    >>> joists = MeasuredJoists(width=2 * inch, depth=8 * inch, spacing=16 * inch, weight=0.0)
    >>> house = one_floor(joists, span=12 * ft, dead=10 * psf, live=30 * psf)
    >>> round(follow(house).element("left wall").total()["live"] / lb)  # 8 ft of wall, half of 12 ft, 30 psf
    1440
    """
    walls = [
        Wall(name=name, on=(SOIL,), at=at, start=0.0, end=_FLOOR_LENGTH, height=8 * ft, weight=0.0)
        for name, at in (("left wall", 0.0), ("right wall", span))
    ]
    floor = Level(
        name="floor",
        kind="floor",
        on=("left wall", "right wall"),
        start=0.0,
        end=_FLOOR_LENGTH,
        measured=joists,
        layers=(Layer(name="all of it", weight=dead),),
        live=live,
    )
    return House(name="one old floor", levels=(floor,), walls=tuple(walls))


class _Solved:
    """A joist of a modulus of 1 MPa on its span, solved once for every set of factors that is asked for."""

    def __init__(self, joist, span, loads):
        self.span, self.loads, self.found = span, loads, {}
        self.stiffness = joist.section.inertia * joist.plies

    def under(self, combination, types):
        """Solve it under the loads of some types with their factors."""
        factors = tuple(combination.factor(kind) if kind in types else 0.0 for kind in ("dead", *VARIABLE_TYPES))
        if factors not in self.found:
            by_type = dict(zip(("dead", *VARIABLE_TYPES), factors))
            put = [_times(one.load, by_type[one.load_type]) for one in self.loads if by_type[one.load_type]]
            self.found[factors] = solve(Beam(self.span, self.stiffness, (Support(0.0), Support(self.span)), tuple(put)))
        return self.found[factors]


def _times(load, factor):
    if isinstance(load, PointLoad):
        return PointLoad(load.position, load.force * factor)
    return LineLoad(load.start, load.end, load.intensity * factor)


def asked_of_measured(joist, span, loads, rulebook, cut=None):
    """Work out what every combination asks of a measured joist, and of the wood left at its cut.

    Parameters
    ----------
    joist : structlib.rules.members.MeasuredJoist
        The joist [-].
    span : float
        Simple span [mm].
    loads : tuple of structlib.house.beam.TypedLoad
        What is on it, by type [N, N/mm].
    rulebook : structlib.rules.check.Rulebook
        The rules, which combine the loads [-].
    cut : structlib.rules.members.CutMember or None
        Its cut; None for none. What a cut leaves of a log is not asked [-].

    Returns
    -------
    list of (member, tuple)
        The joist with what is asked of it, then the cut with what is asked there [-].

    Raises
    ------
    OutsideRule
        When a log that gets thinner carries more than an even load.

    Examples
    --------
    >>> from structlib.ground.measured_sections import measured_section
    >>> from structlib.ground.units import plf, psi
    >>> from structlib.rules.choice import RULEBOOK
    >>> from structlib.rules.members import MeasuredJoist
    >>> joist = MeasuredJoist(measured_section("sawn", width=2*inch, depth=8*inch), 16*inch)
    >>> load = TypedLoad("live", LineLoad(0.0, 12*ft, 40*plf))
    >>> [(_, demands)] = asked_of_measured(joist, 12*ft, (load,), RULEBOOK)
    >>> round(demands[-1].bending_stress / psi)  # 720 lb-ft on 21.33 in3
    405
    """
    solved, combinations = _Solved(joist, span, loads), rulebook.combinations({one.load_type for one in loads})
    every = ("dead", *VARIABLE_TYPES)
    whole = _whole if not joist.taper else _tapered
    asked = [
        (joist, tuple(whole(joist, span, one, lambda types, one=one: solved.under(one, types)) for one in combinations))
    ]
    if cut is not None and cut.cut is not None and joist.section.shape == "sawn":
        asked.append((cut, tuple(_at_cut(cut, one, solved.under(one, every)) for one in combinations)))
    return asked


def _whole(joist, span, combination, under):
    section = joist.section
    most = under(("dead", *VARIABLE_TYPES)).extremes
    passing = any(combination.factor(kind) for kind in VARIABLE_TYPES)
    return MeasuredDemand(
        combination, span,
        bending_stress=abs(most.moment.value) / (section.section_modulus * joist.plies),
        shear_stress=abs(most.shear.value) / (section.area * joist.plies) * section.shear_ratio,
        passing_sag=abs(under(VARIABLE_TYPES).extremes.deflection.value) if passing else 0.0,
        lasting_sag=abs(under(("dead",)).extremes.deflection.value),
    )  # fmt: skip


def _tapered(joist, span, combination, under):
    """The same of a log that gets thinner to the right, under an even load: stress and sag at their own worst places."""
    lines = {}
    for name, types in (("all", ("dead", *VARIABLE_TYPES)), ("passing", VARIABLE_TYPES), ("lasting", ("dead",))):
        beam = under(types).beam
        if any(isinstance(one, PointLoad) or one.start > 1e-3 or one.end < span - 1e-3 for one in beam.loads):
            raise OutsideRule(
                "a log that gets thinner is worked out under an even load only, and more stands on this one; "
                "what comes down on it stays"
            )
        lines[name] = sum(one.intensity for one in beam.loads) / joist.plies
    section, log = joist.section, _log(joist, span)
    thin = section.depth - joist.taper  # the thin end has less area for shear
    return MeasuredDemand(
        combination, span,
        bending_stress=log.stress * lines["all"],
        shear_stress=lines["all"] * span / 2 / section.area * section.shear_ratio * (section.depth / thin) ** 2,
        passing_sag=log.deflection * lines["passing"],
        lasting_sag=log.deflection * lines["lasting"],
    )  # fmt: skip


def _log(joist, span):
    depth = joist.section.depth
    return tapered_log(start_diameter=depth, end_diameter=depth - joist.taper, span=span, line_load=1.0, modulus=1.0)


def _at_cut(member, combination, solution):
    joist, cut, span = member.joist, member.cut, member.span
    size = dict(width=joist.section.width * joist.plies, depth=joist.section.depth)
    start, end, low, high = cut.box(size["depth"])
    if isinstance(cut, Notch):
        modulus = notched_section_modulus(notch=cut.depth, **size)
        # loads that press down make the moment rise to its peak and fall from there
        at = min(max(solution.extremes.moment.position, start), end)
    else:
        modulus = drilled_section_modulus(diameter=cut.diameter, offset=abs(cut.height - size["depth"] / 2), **size)
        at = cut.place
    # the depth that is left, as if the cut ran on to the support
    push = max(abs(solution.shear(max(start, 0.0), "left")), abs(solution.shear(min(end, span), "right")))
    pushes = [one.force for one, notched in zip(solution.reactions, member.ends) if notched and cut.face == "bottom"]
    return CutDemand(
        combination,
        bending_stress=abs(solution.moment(at)) / modulus,
        shear_stress=formulas.rectangle_shear_stress(
            shear=push, width=size["width"], depth=size["depth"] - (high - low)
        ),
        end_push=max(pushes, default=0.0),
    )


def even_loads(span, spacing, dead, live):
    """Return the even loads of a floor on one joist, by type.

    Parameters
    ----------
    span : float
        Span [mm].
    spacing : float
        Spacing on center [mm].
    dead : float
        Weight of the floor, its joists with it [MPa].
    live : float
        Live load [MPa].

    Returns
    -------
    tuple of structlib.house.beam.TypedLoad
        The loads [N/mm].

    Examples
    --------
    >>> from structlib.ground.units import plf, psf
    >>> [round(one.load.intensity / plf, 1) for one in even_loads(12 * ft, 16 * inch, 10 * psf, 30 * psf)]
    [13.3, 40.0]
    """
    return tuple(
        TypedLoad(kind, LineLoad(0.0, span, amount * spacing)) for kind, amount in (("dead", dead), ("live", live))
    )


def compared(joist, *, span, dead, live, rulebook):
    """Compare one measured joist with every wood that it may be of.

    Parameters
    ----------
    joist : structlib.rules.members.MeasuredJoist
        The joist [-].
    span : float
        Simple span [mm].
    dead : float
        Weight of the floor, its joists with it [MPa].
    live : float
        Live load [MPa].
    rulebook : structlib.rules.check.Rulebook
        The rules [-].

    Returns
    -------
    structlib.rules.members.Compared
        Woods, and shares as arrays [-].

    Examples
    --------
    >>> from structlib.ground.measured_sections import measured_section
    >>> from structlib.ground.units import psf
    >>> from structlib.rules.choice import RULEBOOK
    >>> from structlib.rules.members import MeasuredJoist
    >>> joist = MeasuredJoist(measured_section("sawn", width=2*inch, depth=8*inch), 16*inch)
    >>> found = compared(joist, span=13*ft, dead=10*psf, live=30*psf, rulebook=RULEBOOK)
    >>> [(found.woods[one].name, round(float(found.greatest[one]), 2)) for one in (found.best_first()[0], found.best_first()[-1])]
    [('Douglas Fir-Larch Select Structural', 0.37), ('Northern Species No.3', 1.43)]
    """
    return ask(
        rulebook,
        "compared_woods",
        *asked_of_measured(joist, span, even_loads(span, joist.spacing, dead, live), rulebook)[0],
    )


def first_frequency(joist, *, span, weight, modulus):
    """Return the first frequency of one joist of an empty floor.

    Parameters
    ----------
    joist : structlib.rules.members.MeasuredJoist
        The joist [-].
    span : float
        Simple span [mm].
    weight : float
        Weight of the floor, its joists with it [MPa].
    modulus : float
        Modulus of elasticity of its wood [MPa].

    Returns
    -------
    float
        Frequency [Hz].

    Examples
    --------
    >>> from structlib.ground.measured_sections import measured_section
    >>> from structlib.ground.units import psf
    >>> from structlib.rules.members import MeasuredJoist
    >>> joist = MeasuredJoist(measured_section("sawn", width=2*inch, depth=8*inch), 16*inch)
    >>> round(first_frequency(joist, span=13*ft, weight=10*psf, modulus=9000.0), 1)
    12.7
    """
    inertia = round_inertia(diameter=_log(joist, span).same_as) if joist.taper else joist.section.inertia
    stiffness = formulas.bending_stiffness(modulus=modulus, inertia=inertia * joist.plies)
    return vibration.simple_span_frequency(bending_stiffness=stiffness, line_weight=weight * joist.spacing, span=span)
