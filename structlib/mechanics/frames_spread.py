"""How far the eaves move apart: because the tie gives, and because the rafters bend below it.

The same pair as in ``frames``. Every formula here is the sum of force times stretch for a unit push outward
at
both eaves; the shortening of the rafters along themselves, some hundredths of an inch in a house, is left out
(``plane_frame`` counts it). Plain arithmetic for floats, numpy arrays and sympy symbols, in consistent units.
"""

from structlib.mechanics.frames import (
    not_negative,
    pair_checked,
    positive,
    raised_tie_factor,
    slope_length,
    tie_force,
)


def spread_by_bending(*, line_load, building_span, rise, height_fraction, bending_stiffness):
    """Return how far the eaves part because the rafters bend: w h b^2 s (a + 5 a^2 - a^3) / (12 E I).

    b is half the building span and s the length of a rafter along its slope. A tie at the eave (a = 0) lets
    nothing part. Under a raised tie the lower end of each rafter is free to swing out, and bends.

    Parameters
    ----------
    line_load : float, numpy.ndarray or sympy expression
        Load on the plan, per horizontal length of a pair [N/mm].
    building_span : float, numpy.ndarray or sympy expression
        Distance between the two eave supports [mm].
    rise : float, numpy.ndarray or sympy expression
        Height of the ridge above the eave supports [mm].
    height_fraction : float, numpy.ndarray or sympy expression
        Height a of the tie above the eave as a share of the rise [-].
    bending_stiffness : float, numpy.ndarray or sympy expression
        E I of one rafter [N*mm2].

    Returns
    -------
    float, numpy.ndarray or sympy expression
        Growth of the distance between the two eaves [mm].

    Examples
    --------
    >>> spread_by_bending(line_load=12.0, building_span=8.0, rise=3.0, height_fraction=0.5,
    ...                   bending_stiffness=1000.0)
    0.39
    """
    pair_checked(line_load=line_load, building_span=building_span, rise=rise,
                 height_fraction=height_fraction)  # fmt: skip
    positive("bending stiffness", bending_stiffness, "for example 1.6e6*psi * 98.9*inch**4")
    length = slope_length(building_span=building_span, rise=rise)
    shape = height_fraction + 5 * height_fraction**2 - height_fraction**3
    return line_load * rise * (building_span / 2) ** 2 * length * shape / (12 * bending_stiffness)


def spread_by_tie(*, line_load, building_span, rise, height_fraction, axial_stiffness, joint_slip):
    """Return how far the eaves part because the tie stretches and its two joints slip.

    The tie opens by its stretch and twice the slip of a joint; at the eave, farther from the ridge, the same
    turning opens 1 / (1 - a) times as much.

    Parameters
    ----------
    line_load : float, numpy.ndarray or sympy expression
        Load on the plan, per horizontal length of a pair [N/mm].
    building_span : float, numpy.ndarray or sympy expression
        Distance between the two eave supports [mm].
    rise : float, numpy.ndarray or sympy expression
        Height of the ridge above the eave supports [mm].
    height_fraction : float, numpy.ndarray or sympy expression
        Height a of the tie above the eave as a share of the rise [-].
    axial_stiffness : float, numpy.ndarray or sympy expression
        E A of the tie [N].
    joint_slip : float, numpy.ndarray or sympy expression
        How far each of the two joints slips under this load [mm].

    Returns
    -------
    float, numpy.ndarray or sympy expression
        Growth of the distance between the two eaves [mm].

    Examples
    --------
    >>> round(spread_by_tie(line_load=50.0, building_span=24.0, rise=6.0, height_fraction=0.5,
    ...                     axial_stiffness=1e5, joint_slip=0.01), 6)
    0.328
    """
    pull = tie_force(line_load=line_load, building_span=building_span, rise=rise,
                     height_fraction=height_fraction)  # fmt: skip
    positive("axial stiffness", axial_stiffness, "for example 1.6e6*psi * 8.25*inch**2")
    not_negative("joint slip", joint_slip, "for example 1/32*inch; 0 when it is left out")
    stretch = pull * building_span * (1 - height_fraction) / axial_stiffness
    return eave_swing(height_fraction=height_fraction, opening_at_tie=stretch + 2 * joint_slip)


def stiff_peak_moment(*, line_load, building_span):
    """Return the moment a stiff peak has to carry when nothing else holds the pair: w L^2 / 8.

    The walls give lift only, so the two rafters with their stiff peak are one bent beam as long as the
    building is wide. Nothing of the slope helps. No common nailed ridge carries such a moment.

    Parameters
    ----------
    line_load : float, numpy.ndarray or sympy expression
        Load on the plan, per horizontal length of a pair [N/mm].
    building_span : float, numpy.ndarray or sympy expression
        Distance between the two eave supports [mm].

    Returns
    -------
    float, numpy.ndarray or sympy expression
        Moment at the peak, four times that of a rafter with its tie at the eave [N*mm].

    Examples
    --------
    >>> stiff_peak_moment(line_load=50.0, building_span=24.0)
    3600.0
    """
    pair_checked(line_load=line_load, building_span=building_span)
    return line_load * building_span**2 / 8


def stiff_peak_spread(*, line_load, building_span, rise, bending_stiffness):
    """Return how far the eaves part when only a stiff peak holds them: 5 w h b^2 s / (12 E I).

    Parameters
    ----------
    line_load : float, numpy.ndarray or sympy expression
        Load on the plan, per horizontal length of a pair [N/mm].
    building_span : float, numpy.ndarray or sympy expression
        Distance between the two eave supports [mm].
    rise : float, numpy.ndarray or sympy expression
        Height of the ridge above the eave supports [mm].
    bending_stiffness : float, numpy.ndarray or sympy expression
        E I of one rafter; the peak itself is taken as perfectly stiff [N*mm2].

    Returns
    -------
    float, numpy.ndarray or sympy expression
        Growth of the distance between the two eaves [mm].

    Examples
    --------
    >>> stiff_peak_spread(line_load=12.0, building_span=8.0, rise=3.0, bending_stiffness=1000.0)
    1.2
    """
    pair_checked(line_load=line_load, building_span=building_span, rise=rise)
    positive("bending stiffness", bending_stiffness, "for example 1.6e6*psi * 98.9*inch**4")
    length = slope_length(building_span=building_span, rise=rise)
    return 5 * line_load * rise * (building_span / 2) ** 2 * length / (12 * bending_stiffness)


def eave_swing(*, height_fraction, opening_at_tie):
    """Return how much the eaves part when the ends of the tie part by a given amount: 1 / (1 - a) times it.

    Parameters
    ----------
    height_fraction : float, numpy.ndarray or sympy expression
        Height a of the tie above the eave as a share of the rise [-].
    opening_at_tie : float, numpy.ndarray or sympy expression
        Growth of the distance between the two rafters at the tie [mm].

    Returns
    -------
    float, numpy.ndarray or sympy expression
        Growth of the distance between the two eaves, the rafters kept straight [mm].

    Examples
    --------
    >>> eave_swing(height_fraction=0.5, opening_at_tie=2.0)
    4.0
    """
    not_negative("opening at the tie", opening_at_tie, "for example 1/8*inch")
    return opening_at_tie * raised_tie_factor(height_fraction=height_fraction)
