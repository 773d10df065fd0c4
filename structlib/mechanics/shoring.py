"""What temporary walls are asked to carry while a wall is out: statics only, demands only.

Joists rest on the wall that comes out. Before that, a temporary wall is put beside it, at a distance.
The joists then reach past the temporary wall to where the wall was: they have become levers, and the
temporary wall carries more than the wall did. Nothing here sizes or chooses what holds it.

Three ways the joists may run: ``cut`` (each side ends on the wall), ``continuous`` (in one piece over the
wall), ``outside`` (an outside wall, with the temporary wall inside). Loads may be those on one joist (N/mm
and N) or those on each millimetre of wall; the answers are then for one joist or for each millimetre too.
"""

from typing import NamedTuple

from structlib.ground.refusals import BadInput, check_choice, check_number, is_symbolic
from structlib.mechanics import formulas
from structlib.mechanics.beams import Beam, LineLoad, PointLoad, Support, solve
from structlib.mechanics.overhang import overhang_tip_moment
from structlib.mechanics.patterns import solve_arrangements, span_loads

WAYS = ("cut", "continuous", "outside")


def _check_place(span, offset):
    """Refuse a temporary wall that does not stand between the wall and the far end of the joists."""
    hint = "for example 12*ft for the joists and 2*ft for the distance"
    check_number("span", span, low=0, high=formulas.LIMIT, low_allowed=False, hint=hint)
    check_number("offset", offset, low=0, high=formulas.LIMIT, hint=hint)
    if not is_symbolic(span) and not is_symbolic(offset):
        room = span - offset
        check_number("span less offset", room, low=0, high=formulas.LIMIT, low_allowed=False, hint=hint)


def _check_loads(**loads):
    for name, load in loads.items():
        check_number(
            name, load, low=0, high=formulas.LIMIT, hint="loads act downward here; 0 where there is none"
        )


def lever_factor(*, span, offset):
    """How many times what the wall took from this side lands on a temporary wall beside it.

    Parameters
    ----------
    span : float or numpy.ndarray or sympy.Expr
        Span of the joists, from the far wall to the wall that comes out [any].
    offset : float or numpy.ndarray or sympy.Expr
        Distance of the temporary wall from that wall [same unit as span].

    Returns
    -------
    float or numpy.ndarray or sympy.Expr
        The factor, 1 or more [-].

    Raises
    ------
    BadInput
        When a value is not a number, or the temporary wall does not stand under the span.

    Notes
    -----
    Turning about the far wall: the same load, caught with a shorter lever. It holds for an even load
    and for a
    load at the tip alike, because the wall would have caught both at the tip.

    Examples
    --------
    >>> lever_factor(span=12.0, offset=2.0)
    1.2
    """
    _check_place(span, offset)
    return span / (span - offset)


def wall_share(*, line_load, span, tip_load):
    """What the wall takes from one side before it comes out: half the span and what stands on the ends.

    Parameters
    ----------
    line_load : float or numpy.ndarray or sympy.Expr
        Even load along the joist [N/mm].
    span : float or numpy.ndarray or sympy.Expr
        Span of the joists [mm].
    tip_load : float or numpy.ndarray or sympy.Expr
        Load that stands on the end of the joist over the wall; 0 where it is held separately [N].

    Returns
    -------
    float or numpy.ndarray or sympy.Expr
        Push of the wall [N].

    Raises
    ------
    BadInput
        When a value is not a number or is negative.

    Examples
    --------
    >>> wall_share(line_load=50.0, span=12.0, tip_load=100.0)
    400.0
    """
    _check_loads(line_load=line_load, tip_load=tip_load)
    return formulas.simple_uniform_reaction(line_load=line_load, span=span) + tip_load


def temporary_wall_reaction(*, line_load, span, offset, tip_load):
    """What a temporary wall carries from joists that end where the wall was.

    Parameters
    ----------
    line_load : float or numpy.ndarray or sympy.Expr
        Even load along the joist [N/mm].
    span : float or numpy.ndarray or sympy.Expr
        Span of the joists, from the far wall to the wall that is out [mm].
    offset : float or numpy.ndarray or sympy.Expr
        Distance of the temporary wall from the wall that is out [mm].
    tip_load : float or numpy.ndarray or sympy.Expr
        Load that stands on the end of the joist where the wall was; 0 where it is held separately [N].

    Returns
    -------
    float or numpy.ndarray or sympy.Expr
        Push of the temporary wall [N].

    Raises
    ------
    BadInput
        When a value is not a number or negative, or the temporary wall does not stand under the span.

    Examples
    --------
    12 ft joists at 50 psf, the temporary wall 2 ft from the wall: 360 plf where the wall had 300 plf.

    >>> temporary_wall_reaction(line_load=50.0, span=12.0, offset=2.0, tip_load=0.0)
    360.0
    """
    share = wall_share(line_load=line_load, span=span, tip_load=tip_load)
    return share * lever_factor(span=span, offset=offset)


def far_wall_reaction(*, line_load, span, offset, tip_load):
    """What is left on the far wall; negative where the joists want to rise off it.

    Parameters
    ----------
    line_load : float or numpy.ndarray or sympy.Expr
        Even load along the joist [N/mm].
    span : float or numpy.ndarray or sympy.Expr
        Span of the joists, from the far wall to the wall that is out [mm].
    offset : float or numpy.ndarray or sympy.Expr
        Distance of the temporary wall from the wall that is out [mm].
    tip_load : float or numpy.ndarray or sympy.Expr
        Load that stands on the end of the joist where the wall was [N].

    Returns
    -------
    float or numpy.ndarray or sympy.Expr
        Push of the far wall; negative means that something must hold the joists down there [N].

    Raises
    ------
    BadInput
        When a value is not a number or negative, or the temporary wall does not stand under the span.

    Examples
    --------
    >>> far_wall_reaction(line_load=50.0, span=12.0, offset=2.0, tip_load=0.0)
    240.0
    >>> far_wall_reaction(line_load=50.0, span=12.0, offset=2.0, tip_load=1500.0)
    -60.0
    """
    push = temporary_wall_reaction(line_load=line_load, span=span, offset=offset, tip_load=tip_load)
    return line_load * span + tip_load - push


def moment_over_temporary_wall(*, line_load, offset, tip_load):
    """Moment in the joist over the temporary wall, from the lever that reaches past it.

    Parameters
    ----------
    line_load : float or numpy.ndarray or sympy.Expr
        Even load along the joist [N/mm].
    offset : float or numpy.ndarray or sympy.Expr
        Distance of the temporary wall from the wall that is out [mm].
    tip_load : float or numpy.ndarray or sympy.Expr
        Load that stands on the end of the joist where the wall was [N].

    Returns
    -------
    float or numpy.ndarray or sympy.Expr
        Moment, sagging positive, so this one is negative: the top of the joist is stretched [N*mm].

    Raises
    ------
    BadInput
        When a value is not a number or is negative.

    Examples
    --------
    >>> moment_over_temporary_wall(line_load=50.0, offset=2.0, tip_load=0.0)
    -100.0
    """
    _check_loads(line_load=line_load, offset=offset, tip_load=tip_load)
    return formulas.overhang_uniform_support_moment(
        line_load=line_load, overhang=offset
    ) + overhang_tip_moment(point_load=tip_load, overhang=offset)


def tip_load_that_lifts_the_far_end(*, line_load, span, offset):
    """The load on the joist ends at which the far end of the joists carries nothing more.

    Parameters
    ----------
    line_load : float or numpy.ndarray or sympy.Expr
        Even load along the joist; take the least there can be, dead load alone [N/mm].
    span : float or numpy.ndarray or sympy.Expr
        Span of the joists, from the far wall to the wall that is out [mm].
    offset : float or numpy.ndarray or sympy.Expr
        Distance of the temporary wall from the wall that is out, more than 0 [mm].

    Returns
    -------
    float or numpy.ndarray or sympy.Expr
        The load; more than this lifts the far end, and 0 or less says that it lifts by itself [N].

    Raises
    ------
    BadInput
        When a value is not a number or negative, or the temporary wall does not stand under the span.

    Examples
    --------
    >>> tip_load_that_lifts_the_far_end(line_load=50.0, span=12.0, offset=2.0)
    1200.0
    """
    _check_place(span, offset)
    _check_loads(line_load=line_load)
    check_number("offset", offset, low=0, high=formulas.LIMIT, low_allowed=False, hint="for example 2*ft")
    return line_load * span * (span - 2 * offset) / (2 * offset)


# Joists in one piece over the wall that is out, with a temporary wall on either side at the same distance


def continuous_moment_over_temporary_wall(*, line_load, span, offset, middle_load):
    """Moment over each of two temporary walls, under joists in one piece over the wall that is out.

    Parameters
    ----------
    line_load : float or numpy.ndarray or sympy.Expr
        Even load along the joist [N/mm].
    span : float or numpy.ndarray or sympy.Expr
        Span on either side of the wall that is out [mm].
    offset : float or numpy.ndarray or sympy.Expr
        Distance of each temporary wall from the wall that is out [mm].
    middle_load : float or numpy.ndarray or sympy.Expr
        Load that stands on the joist where the wall was; 0 where it is held separately [N].

    Returns
    -------
    float or numpy.ndarray or sympy.Expr
        Moment, sagging positive, so this one is negative [N*mm].

    Raises
    ------
    BadInput
        When a value is not a number or negative, or a temporary wall does not stand under its span.

    Notes
    -----
    Three moments at a temporary wall, with outer span a, middle span b, and the same moment M at both:
    M (2 a + 3 b) = -w (a^3 + b^3) / 4 - 3 P b^2 / 8.

    Examples
    --------
    >>> continuous_moment_over_temporary_wall(line_load=1.0, span=12.0, offset=2.0, middle_load=0.0)
    -8.3125
    """
    _check_place(span, offset)
    _check_loads(line_load=line_load, middle_load=middle_load)
    outer, middle = span - offset, 2 * offset
    turning = line_load * (outer**3 + middle**3) / 4 + 3 * middle_load * middle**2 / 8
    return -turning / (2 * outer + 3 * middle)


def continuous_far_wall_reaction(*, line_load, span, offset, middle_load):
    """What is left on each far wall, under joists in one piece over the wall that is out.

    Parameters
    ----------
    line_load : float or numpy.ndarray or sympy.Expr
        Even load along the joist [N/mm].
    span : float or numpy.ndarray or sympy.Expr
        Span on either side of the wall that is out [mm].
    offset : float or numpy.ndarray or sympy.Expr
        Distance of each temporary wall from the wall that is out [mm].
    middle_load : float or numpy.ndarray or sympy.Expr
        Load that stands on the joist where the wall was [N].

    Returns
    -------
    float or numpy.ndarray or sympy.Expr
        Push of the far wall; negative means that something must hold the joists down there [N].

    Raises
    ------
    BadInput
        When a value is not a number or negative, or a temporary wall does not stand under its span.

    Examples
    --------
    >>> continuous_far_wall_reaction(line_load=1.0, span=12.0, offset=2.0, middle_load=0.0)
    4.16875
    """
    given = dict(line_load=line_load, span=span, offset=offset, middle_load=middle_load)
    outer = span - offset
    return line_load * outer / 2 + continuous_moment_over_temporary_wall(**given) / outer


def continuous_temporary_wall_reaction(*, line_load, span, offset, middle_load):
    """What each of two temporary walls carries, under joists in one piece over the wall that is out.

    Parameters
    ----------
    line_load : float or numpy.ndarray or sympy.Expr
        Even load along the joist [N/mm].
    span : float or numpy.ndarray or sympy.Expr
        Span on either side of the wall that is out [mm].
    offset : float or numpy.ndarray or sympy.Expr
        Distance of each temporary wall from the wall that is out [mm].
    middle_load : float or numpy.ndarray or sympy.Expr
        Load that stands on the joist where the wall was [N].

    Returns
    -------
    float or numpy.ndarray or sympy.Expr
        Push of one temporary wall [N].

    Raises
    ------
    BadInput
        When a value is not a number or negative, or a temporary wall does not stand under its span.

    Examples
    --------
    >>> continuous_temporary_wall_reaction(line_load=1.0, span=12.0, offset=2.0, middle_load=0.0)
    7.83125
    """
    given = dict(line_load=line_load, span=span, offset=offset, middle_load=middle_load)
    return line_load * span + middle_load / 2 - continuous_far_wall_reaction(**given)


# The same as a beam, for the whole shape and every moment


def joists_while_out(*, way, span, offset, line_load, end_load, bending_stiffness):
    """Describe the joists as a beam while the wall is out and temporary walls hold them.

    Parameters
    ----------
    way : str
        'cut', 'continuous' or 'outside'. Cut joists and an outside wall: one side, the far wall at the
        left end
        and the wall that is out at the right end. Continuous: both sides [-].
    span : float
        Span on one side of the wall that is out [mm].
    offset : float
        Distance of the temporary wall from the wall that is out [mm].
    line_load : float
        Even load along the joist [N/mm].
    end_load : float
        Load that stands on the joist where the wall was: on this joist's end, or in the middle of one
        that runs
        over it [N].
    bending_stiffness : float
        Modulus times second moment of one joist [N*mm^2].

    Returns
    -------
    structlib.mechanics.beams.Beam
        The beam. Its far wall is taken to hold it down too, so that an uplift shows as a negative push [-].

    Raises
    ------
    BadInput
        When the way is unknown, or a value is not a number in its range.

    Examples
    --------
    >>> beam = joists_while_out(way="cut", span=3600.0, offset=600.0, line_load=1.0, end_load=0.0,
    ...                         bending_stiffness=1e12)
    >>> [reaction.force for reaction in solve(beam).reactions]
    [1440.0, 2160.0]
    """
    check_choice("way the joists run", way, WAYS)
    _check_place(span, offset)
    check_number("offset", offset, low=0, high=formulas.LIMIT, low_allowed=False, hint="for example 2*ft")
    _check_loads(line_load=line_load, end_load=end_load)
    span, offset = float(span), float(offset)
    length = 2 * span if way == "continuous" else span
    places = [0.0, span - offset] + ([span + offset, length] if way == "continuous" else [])
    loads = [LineLoad(0.0, length, float(line_load))] if line_load else []
    if end_load:
        loads.append(PointLoad(span, float(end_load)))
    return Beam(length, bending_stiffness, [Support(place) for place in places], loads)


class Patterned(NamedTuple):
    """What is asked at most and at least, when people stand where they ask most of each.

    Parameters
    ----------
    most : float
        Greatest push of a temporary wall [N].
    least : float
        Least push of a temporary wall; negative where the joists rise off it [N].
    far : float
        Least push of a wall that stays; negative where it must hold the joists down [N].
    sagging : float
        Greatest moment that sags a joist [N*mm].
    hogging : float
        Greatest moment that stretches its top, negative [N*mm].

    Examples
    --------
    >>> Patterned(3.0, 1.0, -0.5, 2.0, -1.0).far
    -0.5
    """

    most: float
    least: float
    far: float
    sagging: float
    hogging: float


def asked_by_patterns(*, way, span, offset, lasting, passing, end_load, bending_stiffness):
    """Let the load that comes and goes stand on any stretch between supports, or past one, and not on others.

    Parameters
    ----------
    way : str
        As for `joists_while_out` [-].
    span : float
        Span on one side of the wall that is out [mm].
    offset : float
        Distance of the temporary wall from the wall that is out [mm].
    lasting : float
        Even load that is always there, on one joist [N/mm].
    passing : float
        Even load that comes and goes, on one joist [N/mm].
    end_load : float
        Load where the wall was, as for `joists_while_out`; always there [N].
    bending_stiffness : float
        Modulus times second moment of one joist [N*mm2].

    Returns
    -------
    Patterned
        Pushes and moments; walls are taken to hold down too, so that an uplift shows as a negative push [-].

    Raises
    ------
    BadInput
        As for `joists_while_out`.

    Examples
    --------
    A 12 ft joist, 2 ft past the temporary wall, 10 on each foot always and 40 that comes and goes: with
    people on the end only, the far wall keeps 10 x 12 x 4 / 10 - 40 x 2 x 1 / 10 = 40.

    >>> found = asked_by_patterns(way="cut", span=12.0, offset=2.0, lasting=10.0, passing=40.0, end_load=0.0,
    ...     bending_stiffness=1e6)
    >>> round(found.most, 6), round(found.far, 6)
    (360.0, 40.0)
    """
    _check_loads(passing=passing)
    beam = joists_while_out(
        way=way,
        span=span,
        offset=offset,
        line_load=lasting,
        end_load=end_load,
        bending_stiffness=bending_stiffness,
    )
    groups = span_loads(beam.supports, beam.length, float(passing)) if passing else ()
    found = solve_arrangements(beam, groups)
    count = len(beam.supports)
    far = (0, count - 1) if way == "continuous" else (0,)
    temporary = (1, 2) if way == "continuous" else (1,)
    return Patterned(
        max(found.greatest_reaction(number).value for number in temporary),
        min(found.least_reaction(number).value for number in temporary),
        min(found.least_reaction(number).value for number in far),
        found.sagging.value,
        found.hogging.value,
    )


class Landed(NamedTuple):
    """What a temporary wall asks of one joist of the floor it stands on.

    Parameters
    ----------
    moment : float
        Greatest moment with the temporary wall on it [N*mm].
    shear : float
        Greatest shear with it [N].
    own_moment : float
        Greatest moment that the floor was laid out for: its design load alone [N*mm].
    own_shear : float
        Greatest shear from its design load alone [N].

    Examples
    --------
    >>> Landed(3.0, 2.0, 1.5, 1.0).moment_share
    2.0
    """

    moment: float
    shear: float
    own_moment: float
    own_shear: float

    @property
    def moment_share(self):
        """Moment asked, over that of the design load alone."""
        return self.moment / self.own_moment

    @property
    def shear_share(self):
        """Shear asked, over that of the design load alone."""
        return self.shear / self.own_shear


def landed_on_joist(*, span, position, landed, load_meanwhile, design_load):
    """Put the temporary wall on a joist that runs across it, and compare with that joist's own design load.

    Parameters
    ----------
    span : float
        Span of the joist below, a simple one [mm].
    position : float
        Where the temporary wall stands, from one end of the joist [mm].
    landed : float
        Load that lands on this one joist [N].
    load_meanwhile : float
        What else lies on that floor in the meantime, on this joist [N/mm].
    design_load : float
        What that floor was laid out for, on this joist, dead and live [N/mm].

    Returns
    -------
    Landed
        Moments and shears asked; no strength is looked at [N*mm, N].

    Raises
    ------
    BadInput
        When a value is not a number in its range, or the wall stands off the joist.

    Examples
    --------
    A load of half the joist's design load, in the middle of an otherwise empty joist, asks as much as
    all of it.

    >>> landed_on_joist(
    ...     span=4e3, position=2e3, landed=2000.0, load_meanwhile=0.0, design_load=1.0
    ... ).moment_share
    1.0
    """
    hint = "for example 2*ft from the wall below, under 12*ft joists"
    check_number("span", span, low=1.0, high=60_000.0, hint=hint)
    check_number("place of the temporary wall", position, low=0, high=span, hint=hint)
    _check_loads(landed=landed, load_meanwhile=load_meanwhile)
    check_number(
        "design load", design_load, low=0, high=formulas.LIMIT, low_allowed=False, hint="dead and live"
    )
    if not landed and not load_meanwhile:
        raise BadInput("nothing lands on the joist: landed and load_meanwhile are both 0; give one of them")
    span = float(span)
    loads = [LineLoad(0.0, span, float(load_meanwhile))] if load_meanwhile else []
    if landed:
        loads.append(PointLoad(float(position), float(landed)))
    peaks = solve(Beam(span, 1e12, [Support(0.0), Support(span)], loads)).extremes
    return Landed(
        peaks.moment.value,
        abs(peaks.shear.value),
        formulas.simple_uniform_moment(line_load=design_load, span=span),
        formulas.simple_uniform_reaction(line_load=design_load, span=span),
    )
