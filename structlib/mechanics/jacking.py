"""What a jack is asked for when it lifts a member that sags: force against lift, in straight pieces.

A jack first touches the member as it hangs. From there every bit of lift needs force, in proportion, until
the member rises off one of its old supports. Then it needs less force for the next bit, or none at all.

Only the springing part of a sag answers to force. What crept into the wood in years stays in its shape:
lifting it out means bending the member the other way. How fast one lifts changes nothing in this, and how slowly
wood gives way is outside these formulas.
"""

from dataclasses import replace
from functools import lru_cache
from typing import NamedTuple

from structlib.ground.refusals import BadInput, check_number, is_symbolic
from structlib.mechanics import formulas
from structlib.mechanics.beams import Beam, Support, solve

MOST_STEPS = 40  # a beam has a few supports; each rises or comes back a time or two
SAME = 1e-9  # two kinks of a curve that lie this near (as a share of the lift) are one


# A simple span under an even load, with the jack at its middle: formulas


def midspan_jack_force(*, lift, span, bending_stiffness):
    """Force of a jack at the middle of a simple span, as long as its ends rest on their walls.

    Parameters
    ----------
    lift : float or numpy.ndarray or sympy.Expr
        Lift of the middle from where it hangs [mm].
    span : float or numpy.ndarray or sympy.Expr
        Span of the member [mm].
    bending_stiffness : float or numpy.ndarray or sympy.Expr
        Modulus times second moment of the member [N*mm^2].

    Returns
    -------
    float or numpy.ndarray or sympy.Expr
        Force of the jack [N].

    Examples
    --------
    >>> midspan_jack_force(lift=2.0, span=2.0, bending_stiffness=3.0)
    36.0
    """
    _check_lift(lift)
    unit = formulas.simple_midspan_point_deflection(point_load=1, span=span, bending_stiffness=bending_stiffness)
    return lift / unit


def midspan_jack_moment(*, lift, line_load, span, bending_stiffness):
    """Moment over a jack at the middle of a simple span, as long as its ends rest on their walls.

    Parameters
    ----------
    lift : float or numpy.ndarray or sympy.Expr
        Lift of the middle from where it hangs [mm].
    line_load : float or numpy.ndarray or sympy.Expr
        Even load on the member [N/mm].
    span : float or numpy.ndarray or sympy.Expr
        Span of the member [mm].
    bending_stiffness : float or numpy.ndarray or sympy.Expr
        Modulus times second moment of the member [N*mm^2].

    Returns
    -------
    float or numpy.ndarray or sympy.Expr
        Moment, sagging positive; negative once the jack bends the member the other way [N*mm].

    Examples
    --------
    >>> midspan_jack_moment(lift=0.0, line_load=8.0, span=4.0, bending_stiffness=1.0)
    16.0
    """
    force = midspan_jack_force(lift=lift, span=span, bending_stiffness=bending_stiffness)
    relieved = formulas.simple_midspan_point_moment(point_load=force, span=span)
    return formulas.simple_uniform_moment(line_load=line_load, span=span) - relieved


def midspan_lift_off(*, line_load, span, bending_stiffness):
    """Lift of the middle at which a simple span under an even load rises off both its walls.

    From there the whole load hangs on the jack.

    Parameters
    ----------
    line_load : float or numpy.ndarray or sympy.Expr
        Even load on the member [N/mm].
    span : float or numpy.ndarray or sympy.Expr
        Span of the member [mm].
    bending_stiffness : float or numpy.ndarray or sympy.Expr
        Modulus times second moment of the member [N*mm^2].

    Returns
    -------
    float or numpy.ndarray or sympy.Expr
        The lift, 1.6 times the springing sag under that load [mm].

    Examples
    --------
    >>> midspan_lift_off(line_load=3.0, span=2.0, bending_stiffness=1.0)
    1.0
    """
    whole = 2 * formulas.simple_uniform_reaction(line_load=line_load, span=span)
    return formulas.simple_midspan_point_deflection(point_load=whole, span=span, bending_stiffness=bending_stiffness)


def crept_part(*, measured_sag, springing_sag):
    """The part of a measured sag that does not spring back: what is left without the springing part.

    Parameters
    ----------
    measured_sag : float or numpy.ndarray or sympy.Expr
        Sag found with a string and a rule [mm].
    springing_sag : float or numpy.ndarray or sympy.Expr
        Sag that the load on the member causes today, by the usual formula [mm].

    Returns
    -------
    float or numpy.ndarray or sympy.Expr
        Creep, crooked wood and settled ends together, or 0 when all of it springs [mm].

    Examples
    --------
    >>> crept_part(measured_sag=30.0, springing_sag=12.0), crept_part(measured_sag=8.0, springing_sag=12.0)
    (18.0, 0.0)
    """
    _check_lift(measured_sag, "measured sag")
    _check_lift(springing_sag, "springing sag")
    left = measured_sag - springing_sag
    if is_symbolic(left):
        return left
    return abs(left) * (left > 0)  # works for an array too


def _check_lift(value, name="lift"):
    check_number(name, value, low=0, high=formulas.LIMIT, hint="for example 0.5*inch, and 0 or more")


# Any beam on any supports, with the jack anywhere


class JackStep(NamedTuple):
    """One kink of the curve of force against lift.

    Parameters
    ----------
    lift : float
        Lift from where the member hung [mm].
    force : float
        Force of the jack [N].
    reactions : tuple of float
        Push of each old support [N].
    lifted : tuple of int
        Numbers of the supports that the member has risen off, from 0 at the left [-].

    Examples
    --------
    >>> JackStep(0.0, 0.0, (500.0, 500.0), ()).force
    0.0
    """

    lift: float
    force: float
    reactions: tuple
    lifted: tuple


class JackCurve(NamedTuple):
    """Force of a jack against lift: straight between its steps.

    Parameters
    ----------
    steps : tuple of JackStep
        The kinks, from the first touch to the greatest lift [-].
    hangs : bool
        True when at the last step the member hangs on the jack alone, and no more lift has a meaning [-].

    Examples
    --------
    >>> JackCurve((JackStep(0.0, 0.0, (), ()), JackStep(2.0, 600.0, (), ())), False).force(1.0)
    300.0
    """

    steps: tuple
    hangs: bool

    def force(self, lift):
        """Force of the jack at a lift.

        Parameters
        ----------
        lift : float
            Lift from where the member hung; beyond a member that hangs, its whole load [mm].

        Returns
        -------
        float
            The force [N].
        """
        return self._at(lift, lambda step: step.force)

    def reaction(self, number, lift):
        """Push of an old support at a lift.

        Parameters
        ----------
        number : int
            Number of the support, from 0 at the left [-].
        lift : float
            Lift from where the member hung [mm].

        Returns
        -------
        float
            The push [N].
        """
        return self._at(lift, lambda step: step.reactions[number])

    @property
    def first_off(self):
        """The step at which the member first rises off an old support; None where it does so nowhere [-]."""
        return next((step for step in self.steps if step.lifted and step.lift > 1e-9), None)

    def hangs_at(self, lift):
        """Tell whether the member hangs on the jack alone at a lift.

        Parameters
        ----------
        lift : float
            Lift from where the member hung [mm].

        Returns
        -------
        bool
            True where it does [-].
        """
        return self.hangs and lift >= self.steps[-1].lift

    def lift_off(self, number):
        """Lift at which the member first rises off a support.

        Parameters
        ----------
        number : int
            Number of the support, from 0 at the left [-].

        Returns
        -------
        float or None
            The lift; None when it rests there all the way [mm].
        """
        return next((step.lift for step in self.steps if number in step.lifted), None)

    def _at(self, lift, value):
        last = self.steps[-1].lift
        high = formulas.LIMIT if self.hangs else last * (1 + 1e-12)
        check_number("lift", lift, low=0, high=high, hint="the curve ends there; ask for a greater most_lift")
        for a, b in zip(self.steps, self.steps[1:]):
            if lift <= b.lift:
                if b.lift == a.lift:
                    return value(b)
                return value(a) + (value(b) - value(a)) * (lift - a.lift) / (b.lift - a.lift)
        return value(self.steps[-1])


def jack_curve(beam, *, jack_position, most_lift):
    """Follow a jack from its first touch: its force, and every support that the member rises off.

    Parameters
    ----------
    beam : structlib.mechanics.beams.Beam
        The member as it hangs today, with its loads, on supports that it may rise off. How they have sunk is
        given as their settlement [-].
    jack_position : float
        Where the jack stands, from the left end; not on a support [mm].
    most_lift : float
        How far the curve goes, unless the member hangs on the jack before [mm].

    Returns
    -------
    JackCurve
        Force against lift, exact, in straight pieces [-].

    Notes
    -----
    Between two kinks every push is a straight line in the lift, so two solutions of the beam give it. The next
    kink is where the first push comes to nothing, or where a raised part comes back to its support.

    Examples
    --------
    A simple span with the jack at its middle carries half of its load when the jack has 0.8 of the
    springing sag.

    >>> from structlib.mechanics.beams import LineLoad
    >>> beam = Beam(4000.0, 1e12, [Support(0.0), Support(4000.0)], [LineLoad(0.0, 4000.0, 3.0)])
    >>> curve = jack_curve(beam, jack_position=2000.0, most_lift=50.0)
    >>> [(round(step.lift, 6), round(step.force, 6), step.lifted) for step in curve.steps]
    [(0.0, 0.0, ()), (16.0, 12000.0, (0, 1))]
    """
    _check_jack(beam, jack_position, most_lift)
    today = _resting(beam)
    hung = today.deflection(float(jack_position))
    lifted = frozenset(i for i, r in enumerate(today.reactions) if r.lifted)
    lift, steps = 0.0, []
    for _ in range(MOST_STEPS):
        line = _straight(beam, jack_position, hung, lifted)
        steps.append(_step(line, lift, lifted, len(beam.supports)))
        event, changed = _next_kink(line, lifted, lift, most_lift)
        if changed is None:
            steps.append(_step(line, event, lifted, len(beam.supports)))
            return JackCurve(_distinct(steps), False)
        lifted, lift = lifted ^ changed, event
        if len(beam.supports) - len(lifted) == 0:
            end = _step(line, lift, lifted, len(beam.supports))
            return JackCurve(_distinct([*steps, end]), True)
    raise BadInput("the member kept rising off its supports and coming back; give it fewer supports")


def jacked(beam, *, jack_position, lift):
    """Solve the member while a jack holds it at a lift.

    Parameters
    ----------
    beam : structlib.mechanics.beams.Beam
        The member as it hangs today, as for `jack_curve` [-].
    jack_position : float
        Where the jack stands, from the left end; not on a support [mm].
    lift : float
        Lift from where the member hung [mm].

    Returns
    -------
    structlib.mechanics.beams.Solution
        The solved member; its last support is the jack. What crept into its shape is not in the
        deflections [-].

    Examples
    --------
    >>> from structlib.mechanics.beams import LineLoad
    >>> beam = Beam(4000.0, 1e12, [Support(0.0), Support(4000.0)], [LineLoad(0.0, 4000.0, 3.0)])
    >>> round(jacked(beam, jack_position=2000.0, lift=8.0).reactions[-1].force, 6)
    6000.0
    """
    _check_jack(beam, jack_position, max(lift, 1.0) if isinstance(lift, (int, float)) else lift)
    _check_lift(lift)
    today, jack_position = _resting(beam), float(jack_position)
    hung = today.deflection(jack_position)
    jack = Support(jack_position, settlement=hung - lift, can_lift=True)
    return solve(_on(beam, [*today.beam.supports, jack]))


class Held(NamedTuple):
    """A member on its jack: solved, the old supports that it is off, and how far it was raised since it hangs [mm]."""

    solution: object
    lifted: tuple
    raised: float


def held_at(beam, *, jack_position, curve, lift):
    """Solve the member at a lift, also where it hangs on the jack alone.

    Parameters
    ----------
    beam : structlib.mechanics.beams.Beam
        The member as it hangs today, as for `jack_curve` [-].
    jack_position : float
        Where the jack stands [mm].
    curve : JackCurve
        What `jack_curve` answered for them [-].
    lift : float
        Lift from where the member hung [mm].

    Returns
    -------
    Held
        The solved member. One that hangs is solved a hair before, where its pushes are next to nothing [-, mm].

    Examples
    --------
    >>> from structlib.mechanics.beams import LineLoad
    >>> beam = Beam(4000.0, 1e12, [Support(0.0), Support(4000.0)], [LineLoad(0.0, 4000.0, 3.0)])
    >>> curve = jack_curve(beam, jack_position=2000.0, most_lift=50.0)
    >>> found = held_at(beam, jack_position=2000.0, curve=curve, lift=20.0)
    >>> round(found.solution.moment(2000.0) / 1e6, 3), found.lifted, round(found.raised, 3)  # -w L^2 / 8
    (-6.0, (0, 1), 4.0)
    """
    last = curve.steps[-1]
    if curve.hangs_at(lift):
        before = jacked(beam, jack_position=jack_position, lift=last.lift * (1 - 1e-7))
        return Held(before, last.lifted, lift - last.lift)
    solution = jacked(beam, jack_position=jack_position, lift=lift)
    return Held(solution, tuple(i for i, one in enumerate(solution.reactions[:-1]) if one.lifted), 0.0)


def _check_jack(beam, jack_position, most_lift):
    if not isinstance(beam, Beam):
        raise BadInput(f"jack_curve() takes a Beam, got {type(beam).__name__}; see structlib.mechanics.beams.Beam")
    if any(support.kind != "pinned" for support in beam.supports):
        raise BadInput("a jacked member must rest on plain supports, not built in and not on springs")
    check_number(
        "place of the jack",
        jack_position,
        low=0,
        high=beam.length,
        hint="in mm from the left end of the beam",
    )
    if any(abs(support.position - jack_position) < 1.0 for support in beam.supports):
        raise BadInput("the jack stands on a support; move it beside, for example by 12*inch")
    check_number("most lift", most_lift, low=0, high=1e4, low_allowed=False, hint="for example 2*inch")


@lru_cache(maxsize=64)
def _resting(beam):
    """The member as it hangs today, on supports that it may rise off."""
    return solve(_on(beam, [Support(s.position, settlement=s.settlement, can_lift=True) for s in beam.supports]))


def _on(beam, supports):
    return replace(beam, supports=supports)


def _straight(beam, jack_position, hung, lifted):
    """Pushes and gaps as straight lines in the lift: (jack, {support: push}, {lifted support: gap})."""
    kept = [i for i in range(len(beam.supports)) if i not in lifted]
    found = []
    for lift in (0.0, 1.0):
        supports = [Support(beam.supports[i].position, settlement=beam.supports[i].settlement) for i in kept]
        supports.append(Support(float(jack_position), settlement=hung - lift))
        solution = solve(_on(beam, supports))
        pushes = [reaction.force for reaction in solution.reactions]
        gaps = [beam.supports[i].settlement - solution.deflection(beam.supports[i].position) for i in sorted(lifted)]
        found.append((pushes[-1], pushes[:-1], gaps))
    (jack, pushes, gaps), (jack1, pushes1, gaps1) = found
    total = sum(pushes) + jack
    return (
        (jack, jack1 - jack),
        {i: (a, b - a) for i, a, b in zip(kept, pushes, pushes1)},
        {i: (a, b - a) for i, a, b in zip(sorted(lifted), gaps, gaps1)},
        abs(total),
    )


def _step(line, lift, lifted, count):
    (jack, rate), pushes, _, _ = line
    values = tuple(0.0 if i in lifted or i not in pushes else pushes[i][0] + pushes[i][1] * lift for i in range(count))
    return JackStep(lift, jack + rate * lift, values, tuple(sorted(lifted)))


def _next_kink(line, lifted, lift, most_lift):
    """The next lift at which a support lets go or is touched again, and which ones do so together."""
    _, pushes, gaps, total = line
    slight = 1e-12 * max(total, 1e-9)
    times = {}
    for i, (push, rate) in pushes.items():
        if rate < -slight:
            times[i] = max(lift, -push / rate)
    for i, (gap, rate) in gaps.items():
        # a gap that opens, or stays as it is but for rounding, is no coming back
        if rate < -1e-9 and gap + rate * lift > 1e-9:
            times[i] = max(lift, -gap / rate)
    first = min(times.values(), default=most_lift)
    if first >= most_lift:
        return most_lift, None
    together = frozenset(i for i, when in times.items() if when - first <= SAME * max(first, 1e-6))
    return first, together


def _distinct(steps):
    """Steps without doubles: of those at one lift, the last, which knows what has been let go."""
    kept = []
    for step in steps:
        if kept and step.lift - kept[-1].lift <= SAME * max(step.lift, 1e-6):
            kept.pop()
        kept.append(step)
    return tuple(kept)
