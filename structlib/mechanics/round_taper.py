"""A log that is thicker at one end: its diameter along the length, its worst place and its sag.

The taper is even. Stress and sag under an even load on a simple span come from direct integration, since the
thin end bends more than the thick one.
"""

from dataclasses import dataclass

import numpy

from structlib.ground.refusals import BadInput, check_number
from structlib.ground.sections import round_inertia, round_section_modulus

_LIMIT = 1e20
_SLICES = 2000  # even, for Simpson's rule


def _positive(**numbers):
    for name, value in numbers.items():
        if numpy.ndim(value):
            raise BadInput(f"{name.replace('_', ' ')} must be one number, got a list; for example 200.0")
        check_number(
            name.replace("_", " "),
            value,
            low=0,
            high=_LIMIT,
            low_allowed=False,
            hint="lengths, loads and stiffnesses are positive",
        )


def tapered_diameter(*, start_diameter, end_diameter, span, position):
    """Diameter of an evenly tapered log at one place.

    Parameters
    ----------
    start_diameter : float
        Diameter at the left support [mm].
    end_diameter : float
        Diameter at the right support [mm].
    span : float
        Span between the supports [mm].
    position : float or numpy.ndarray
        Place from the left support, 0 to the span [mm].

    Returns
    -------
    float or numpy.ndarray
        Diameter there [mm].

    Examples
    --------
    >>> tapered_diameter(start_diameter=200.0, end_diameter=160.0, span=4000.0, position=1000.0)
    190.0
    """
    check_number("start diameter", start_diameter, low=0, high=_LIMIT, low_allowed=False)
    check_number("end diameter", end_diameter, low=0, high=_LIMIT, low_allowed=False)
    check_number("span", span, low=0, high=_LIMIT, low_allowed=False)
    check_number("position", position, low=0, high=_LIMIT if hasattr(span, "free_symbols") else span * (1 + 1e-12))
    return start_diameter + (end_diameter - start_diameter) * position / span


@dataclass(frozen=True)
class TaperedLog:
    """What an even load does to a tapered log on a simple span.

    ``stress`` is the greatest bending stress [MPa] and ``stress_place`` where it is [mm]; ``deflection`` the
    greatest sag and ``deflection_place`` where; ``same_as`` the even diameter that would sag as much [mm].
    """

    stress: float
    stress_place: float
    deflection: float
    deflection_place: float
    same_as: float


def tapered_log(*, start_diameter, end_diameter, span, line_load, modulus):
    """Greatest bending stress and greatest sag of an evenly tapered log under an even load.

    Parameters
    ----------
    start_diameter : float
        Diameter at the left support [mm].
    end_diameter : float
        Diameter at the right support [mm].
    span : float
        Simple span [mm].
    line_load : float
        Even load [N/mm].
    modulus : float
        Modulus of elasticity [MPa].

    Returns
    -------
    TaperedLog
        Stress and sag with their places [MPa, mm].

    Examples
    --------
    >>> log = tapered_log(start_diameter=200.0, end_diameter=160.0, span=4000.0, line_load=1.5,
    ...     modulus=9000.0)
    >>> round(log.stress, 2), round(log.deflection, 2), round(log.stress_place)
    (5.39, 10.98, 2330)
    """
    _positive(
        start_diameter=start_diameter,
        end_diameter=end_diameter,
        span=span,
        line_load=line_load,
        modulus=modulus,
    )
    place = numpy.linspace(0.0, span, _SLICES + 1)
    diameter = tapered_diameter(start_diameter=start_diameter, end_diameter=end_diameter, span=span, position=place)
    moment = line_load * place * (span - place) / 2
    stress = moment / round_section_modulus(diameter=diameter)
    bent = moment / (modulus * round_inertia(diameter=diameter))  # curvature at each place
    sunk = _summed(_summed(bent, place), place)
    sag = sunk[-1] * place / span - sunk  # turned back until both ends lie on their supports
    worst = int(numpy.argmax(stress))
    lowest = int(numpy.argmax(sag))
    even = 5 * line_load * span**4 / (384 * modulus * float(sag[lowest]))  # inertia that sags as much
    unit = float(round_inertia(diameter=1.0))
    return TaperedLog(
        float(stress[worst]),
        float(place[worst]),
        float(sag[lowest]),
        float(place[lowest]),
        (even / unit) ** 0.25,
    )


def _summed(values, place):
    """Running integral, by parabolas through three neighbouring values."""
    step = place[1] - place[0]
    pairs = step / 12 * (5 * values[:-2] + 8 * values[1:-1] - values[2:])
    last = step / 12 * (5 * values[-1] + 8 * values[-2] - values[-3])
    return numpy.concatenate(([0.0], numpy.cumsum(numpy.concatenate((pairs, [last])))))
