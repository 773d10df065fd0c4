"""How fast a floor swings: the first frequency of a simple span, its load, and its sag.

Mass is given by its weight, and gravity turns it into mass. Every formula is true in any consistent system;
inside this library that is newtons, millimetres and seconds, with gravity 9806.65 mm/s2.
"""

from structlib.ground.refusals import check_number, is_symbolic
from structlib.ground.roots import pi_for, square_root

#: Standard gravity [mm/s2].
GRAVITY = 9806.65

_LIMIT = 1e20


def _positive(**numbers):
    for name, value in numbers.items():
        check_number(
            name.replace("_", " "),
            value,
            low=0,
            high=_LIMIT,
            low_allowed=False,
            hint="weights, lengths and stiffnesses are positive",
        )


def _pi(*values):
    return pi_for(next((value for value in values if is_symbolic(value)), 1.0))


def simple_span_frequency(*, bending_stiffness, line_weight, span, gravity=GRAVITY):
    """First frequency of a simple span whose weight is spread evenly, (pi/2) sqrt(EI / (m L^4)).

    Parameters
    ----------
    bending_stiffness : float or numpy.ndarray
        EI of the member [N*mm2].
    line_weight : float or numpy.ndarray
        Weight that swings with the member, its own and that of the floor on it [N/mm].
    span : float or numpy.ndarray
        Span between its two supports [mm].
    gravity : float
        Gravity, which turns weight into mass [mm/s2].

    Returns
    -------
    float or numpy.ndarray
        Swings in a second [Hz].

    Examples
    --------
    >>> from structlib.ground.units import ft, inch, plf, psi
    >>> beam = dict(bending_stiffness=1.6e6*psi * 98.93*inch**4, line_weight=40/3*plf, span=15*ft)
    >>> round(simple_span_frequency(**beam), 1)
    11.4
    """
    _positive(bending_stiffness=bending_stiffness, line_weight=line_weight, span=span, gravity=gravity)
    pi = _pi(bending_stiffness, line_weight, span, gravity)
    return pi / 2 * square_root(bending_stiffness * gravity / (line_weight * span**4))


def frequency_from_sag(*, sag, gravity=GRAVITY):
    """First frequency of a simple span from the sag under its own even weight: about 0.18 sqrt(g / sag).

    Parameters
    ----------
    sag : float or numpy.ndarray
        Elastic sag at mid-span under the even weight that swings [mm].
    gravity : float
        Gravity [mm/s2].

    Returns
    -------
    float or numpy.ndarray
        Swings in a second [Hz].

    Notes
    -----
    From sag = 5 w L^4 / (384 EI): the factor is (pi/2) sqrt(5/384) = 0.1792, usually written 0.18.

    Examples
    --------
    >>> round(frequency_from_sag(sag=2.44), 1)
    11.4
    """
    _positive(sag=sag, gravity=gravity)
    return _pi(sag, gravity) / 2 * square_root(5 * gravity / (384 * sag))


def frequency_in_series(*, upper, lower):
    """First frequency of what swings on something that swings: joists on their beam, 1/f^2 = 1/f_joist^2 + 1/f_beam^2.

    Parameters
    ----------
    upper : float or numpy.ndarray
        First frequency of the joists on supports that do not give [Hz].
    lower : float or numpy.ndarray
        First frequency of the beam alone with the weight that the joists bring to it [Hz].

    Returns
    -------
    float or numpy.ndarray
        Swings in a second of both together [Hz].

    Notes
    -----
    Sags add up, and a frequency goes with one over the root of its sag. It is exact for one weight on two springs
    in series. A floor's weight is spread, and joists that only tip bring less than half of it to the beam: there it comes
    out up to a fifth too low, on the careful side.

    Examples
    --------
    >>> round(frequency_in_series(upper=12.0, lower=9.0), 6)
    7.2
    """
    _positive(upper=upper, lower=lower)
    return upper * lower / square_root(upper**2 + lower**2)


def midspan_weight_frequency(*, bending_stiffness, line_weight, point_weight, span, gravity=GRAVITY):
    """First frequency of a simple span with an even weight and one more weight at mid-span, by Rayleigh.

    The member is taken to swing in half a sine wave. Then stiffness is pi^4 EI / (2 L^3), and half of the
    even weight moves with mid-span. Without the point weight this is exact; with it, slightly too high (0.8 %
    at most, when the member itself weighs nothing).

    Parameters
    ----------
    bending_stiffness : float or numpy.ndarray
        EI of the member [N*mm2].
    line_weight : float or numpy.ndarray
        Weight that is spread evenly; more than zero [N/mm].
    point_weight : float or numpy.ndarray
        Weight at mid-span, zero or more [N].
    span : float or numpy.ndarray
        Span between its two supports [mm].
    gravity : float
        Gravity [mm/s2].

    Returns
    -------
    float or numpy.ndarray
        Swings in a second [Hz].

    Examples
    --------
    >>> from structlib.ground.units import ft, inch, lb, plf, psi
    >>> beam = dict(bending_stiffness=1.6e6*psi * 98.93*inch**4, line_weight=40/3*plf, span=15*ft)
    >>> round(midspan_weight_frequency(**beam, point_weight=200*lb), 2)
    6.56
    """
    _positive(bending_stiffness=bending_stiffness, line_weight=line_weight, span=span, gravity=gravity)
    check_number("point weight", point_weight, low=0, high=_LIMIT, hint="0 where there is none")
    pi = _pi(bending_stiffness, line_weight, point_weight, span, gravity)
    stiffness = pi**4 * bending_stiffness / (2 * span**3)
    mass = (line_weight * span / 2 + point_weight) / gravity
    return square_root(stiffness / mass) / (2 * pi)
