"""Members whose depth changes steadily from one end to the other: where they are stressed most, how far they bend.

Depth d(x) = d0 + (d1 - d0) x / L, width constant. Stress is moment over section modulus, so the place of the
greatest stress is not that of the greatest moment. It has a closed form even under an even load and one point load
together, because the highest power cancels. Deflection is the integral of unit moment times curvature, taken with
48 Gauss points on each piece; for depths that differ up to 10 times its error is below 1e-9 of the deflection.

Plane sections stay nearly plane in a gentle taper only. A taper steeper than 1 in 4, or deeper than 10 times, is
refused: a limit of this library, with no source.
"""

from dataclasses import dataclass
from functools import lru_cache
from typing import NamedTuple

import numpy

from structlib.ground.asked_back import asked_back
from structlib.ground.refusals import BadInput, OutsideRule, check_number
from structlib.ground.sections import rectangle_inertia, rectangle_section_modulus
from structlib.mechanics.beam_model import LONGEST, SHORTEST, length_text

STEEPEST, DEEPEST = 0.25, 10.0
_POINTS = 48
_LIMIT = 1e20


class TaperedAnswer(NamedTuple):
    """What a tapered member answers to its load.

    Parameters
    ----------
    stress : float
        Greatest bending stress, without a sign [MPa].
    stress_place : float
        Where it is, from the start [mm].
    moment : float
        Greatest moment, without a sign [N*mm].
    moment_place : float
        Where it is, from the start [mm].
    deflection : float
        Greatest deflection, downward positive [mm].
    deflection_place : float
        Where it is, from the start [mm].

    Examples
    --------
    >>> TaperedAnswer(7.0, 1200.0, 3e6, 1800.0, 5.0, 1700.0).stress_place
    1200.0
    """

    stress: float
    stress_place: float
    moment: float
    moment_place: float
    deflection: float
    deflection_place: float


@dataclass(frozen=True)
class TaperedMember:
    """A rectangular member whose depth changes steadily along its length.

    Parameters
    ----------
    length : float
        Length from start to end [mm].
    width : float
        Width, the same all along [mm].
    start_depth : float
        Depth at the start [mm].
    end_depth : float
        Depth at the end [mm].
    modulus : float
        Modulus of elasticity [MPa].

    Raises
    ------
    OutsideRule
        When the taper is too strong for the bending of plane sections.

    Examples
    --------
    >>> TaperedMember(3600.0, 38.0, 300.0, 150.0, 10_000.0).depth_at(1800.0)
    225.0
    """

    length: float
    width: float
    start_depth: float
    end_depth: float
    modulus: float

    def __post_init__(self):
        shown = dict(shown=length_text)
        check_number("length", self.length, low=SHORTEST, high=LONGEST, hint="for example 12*ft", **shown)
        for name, size in (
            ("width", self.width),
            ("depth at the start", self.start_depth),
            ("depth at the end", self.end_depth),
        ):
            check_number(name, size, low=SHORTEST, high=3000.0, hint="for example 9.25*inch", **shown)
        check_number("modulus", self.modulus, low=0, high=1e6, low_allowed=False, hint="for example 1.6e6*psi")
        for size in (self.length, self.width, self.start_depth, self.end_depth, self.modulus):
            if not isinstance(size, (int, float)):
                raise BadInput(
                    f"a tapered member has plain numbers as sizes, got {type(size).__name__}; for example 3600.0"
                )
        deep, shallow = max(self.start_depth, self.end_depth), min(self.start_depth, self.end_depth)
        if deep > DEEPEST * shallow * (1 + 1e-9) or deep - shallow > STEEPEST * self.length * (1 + 1e-9):
            raise OutsideRule(
                f"a taper from {shallow:g} mm to {deep:g} mm over {length_text(self.length)} is too strong: plane sections "
                f"stay plane only in a gentle one, here at most 1 in {1 / STEEPEST:g} and {DEEPEST:g} times"
            )

    @property
    def rate(self):
        """How much the depth grows along the member, by the length; negative where it gets shallower [-]."""
        return (self.end_depth - self.start_depth) / self.length

    def depth_at(self, x):
        """Depth at a place.

        Parameters
        ----------
        x : float or numpy.ndarray
            Distance from the start [mm].

        Returns
        -------
        float or numpy.ndarray
            Depth [mm].
        """
        return self.start_depth + self.rate * x

    def section_modulus_at(self, x):
        """Section modulus at a place.

        Parameters
        ----------
        x : float or numpy.ndarray
            Distance from the start [mm].

        Returns
        -------
        float or numpy.ndarray
            Section modulus [mm3].
        """
        return rectangle_section_modulus(width=self.width, depth=self.depth_at(x))

    def stiffness_at(self, x):
        """Bending stiffness EI at a place.

        Parameters
        ----------
        x : float or numpy.ndarray
            Distance from the start [mm].

        Returns
        -------
        float or numpy.ndarray
            Modulus times second moment of area [N*mm2].
        """
        return self.modulus * rectangle_inertia(width=self.width, depth=self.depth_at(x))


def tapered_uniform_stress_place(*, span, start_depth, end_depth):
    """Where a tapered simple span under an even load is stressed most in bending.

    Parameters
    ----------
    span : float or numpy.ndarray or sympy.Expr
        Distance between the supports [mm].
    start_depth : float or numpy.ndarray or sympy.Expr
        Depth at the left support [mm].
    end_depth : float or numpy.ndarray or sympy.Expr
        Depth at the right support [mm].

    Returns
    -------
    float or numpy.ndarray or sympy.Expr
        Distance from the left support; the shallow end is the nearer one [mm].

    Examples
    --------
    >>> tapered_uniform_stress_place(span=12.0, start_depth=5.0, end_depth=10.0)
    4.0
    """
    _check_sizes(span=span, start_depth=start_depth, end_depth=end_depth)
    return span * start_depth / (start_depth + end_depth)


def _check_sizes(**sizes):
    for name, size in sizes.items():
        check_number(
            name.replace("_", " "),
            size,
            low=0,
            high=_LIMIT,
            low_allowed=False,
            hint="a member needs some depth everywhere",
        )


def _check_loads(member, line_load, point_load, load_position):
    if not isinstance(member, TaperedMember):
        raise BadInput(f"member must be a TaperedMember, got {type(member).__name__}")
    hint = "downward is positive; loads that lift are not covered here"
    check_number("line load", line_load, low=0, high=1e12, hint=hint)
    check_number("point load", point_load, low=0, high=1e12, hint=hint)
    if line_load == 0 and point_load == 0:
        raise BadInput("a tapered member needs a load to answer to, for example line_load=40*psf * 16*inch")
    if point_load and load_position is None:
        raise BadInput("a point load needs its place, for example load_position=1200.0")
    place = 0.0 if load_position is None else load_position
    check_number("load position", place, low=0, high=member.length, shown=length_text, hint="from the start")
    return place


def tapered_simple(member, *, line_load=0.0, point_load=0.0, load_position=None):
    """Answer a tapered member on two supports at its ends.

    Parameters
    ----------
    member : TaperedMember
        The member [-].
    line_load : float
        Even load all along, downward [N/mm].
    point_load : float
        One load, downward [N].
    load_position : float or None
        Where that load stands, from the start [mm].

    Returns
    -------
    TaperedAnswer
        Greatest stress, moment and deflection, each with its place [-].

    Examples
    --------
    >>> member = TaperedMember(3600.0, 38.0, 140.0, 280.0, 10_000.0)
    >>> found = tapered_simple(member, line_load=1.0)
    >>> found.moment_place, round(found.stress_place)
    (1800.0, 1200)
    """
    place, length = _check_loads(member, line_load, point_load, load_position), member.length
    left = line_load * length / 2 + point_load * (length - place) / length
    # moment on either side of the point load as (from, to, A, B, C) of A + B x + C x^2
    pieces = (
        (0.0, place, 0.0, left, -line_load / 2),
        (place, length, point_load * place, left - point_load, -line_load / 2),
    )
    cuts = (0.0, place, length)

    def moment(x):
        return left * x - line_load * x**2 / 2 - point_load * numpy.maximum(x - place, 0.0)

    def slope(x):
        start = _integral(lambda t: (1 - t / length) * moment(t) / member.stiffness_at(t), cuts)
        return start - _integral(lambda t: moment(t) / member.stiffness_at(t), _up_to(cuts, x))

    def sag(x):
        def unit(t):
            return numpy.where(t < x, t * (length - x), x * (length - t)) / length

        return _integral(lambda t: unit(t) * moment(t) / member.stiffness_at(t), sorted({*cuts, x}))

    # the slope falls all the way, because the moment sags the member everywhere
    lowest = asked_back(lambda x: 1 - slope(x), low=0.0, high=length) if left else 0.0
    return TaperedAnswer(*_greatest_stress(member, pieces), *_greatest_moment(pieces), sag(lowest), lowest)


def _greatest_stress(member, pieces):
    """Greatest stress and its place. Stationary where M' d = 2 d' M; with M = A + B x + C x^2 the squares cancel."""
    rate, start = member.rate, member.start_depth
    best = (0.0, 0.0)
    for begin, end, a, b, c in pieces:
        if end <= begin:
            continue
        places = [begin, end]
        below = 2 * c * start - rate * b
        if below:
            x = (2 * rate * a - b * start) / below
            if begin < x < end:
                places.append(x)
        for x in places:
            stress = abs(a + b * x + c * x**2) / member.section_modulus_at(x)
            if stress > best[0] * (1 + 1e-12):
                best = (stress, x)
    return best


def _greatest_moment(pieces):
    best = (0.0, 0.0)
    for begin, end, a, b, c in pieces:
        places = [begin, end] + ([-b / (2 * c)] if c and begin < -b / (2 * c) < end else [])
        for x in places:
            size = abs(a + b * x + c * x**2)
            if size > best[0] * (1 + 1e-12):
                best = (size, x)
    return best


@lru_cache(maxsize=1)
def _gauss():
    return numpy.polynomial.legendre.leggauss(_POINTS)


def _integral(function, cuts):
    """Integral over pieces on which the function is smooth, with 48 Gauss points each."""
    nodes, weights = _gauss()
    total = 0.0
    for start, end in zip(cuts, cuts[1:]):
        if end > start:
            half = (end - start) / 2
            total += half * float(numpy.sum(weights * function(start + half * (nodes + 1))))
    return total


def _up_to(cuts, x):
    return [cut for cut in cuts if cut < x] + [x]
