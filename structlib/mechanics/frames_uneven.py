"""Rafter pairs and three-hinged frames whose two sides carry different loads.

Snow lies on one side, or one side has been given a second roofing. The same pair as in ``frames``: hinged at
the ridge, standing on walls that give no sideways hold, one tie; here with a load of its own on each side.
Plain arithmetic for floats, numpy arrays and sympy symbols, in any consistent units.
"""

from structlib.mechanics.frames import below_ridge, not_negative, positive

_SPAN, _LOAD = "for example 24*ft", "for example 100*plf"


def uneven_eave_reaction(*, near_load, far_load, building_span):
    """Return what one wall carries of a pair loaded differently left and right: L (3 w_near + w_far) / 8.

    Parameters
    ----------
    near_load : float, numpy.ndarray or sympy expression
        Load on the plan of the rafter that stands on this wall [N/mm].
    far_load : float, numpy.ndarray or sympy expression
        Load on the plan of the other rafter [N/mm].
    building_span : float, numpy.ndarray or sympy expression
        Distance between the two eave supports [mm].

    Returns
    -------
    float, numpy.ndarray or sympy expression
        Upward reaction of the wall [N].

    Examples
    --------
    >>> uneven_eave_reaction(near_load=50.0, far_load=10.0, building_span=24.0)
    480.0
    """
    _two_sides(near_load, far_load, building_span)
    return building_span * (3 * near_load + far_load) / 8


def uneven_tie_force(*, left_load, right_load, building_span, rise, height_fraction=0.0):
    """Return the pull in the tie: the thrust of the mean of both sides, (w_l + w_r) L^2 / (16 h (1 - a)).

    Parameters
    ----------
    left_load : float, numpy.ndarray or sympy expression
        Load on the plan of the left rafter [N/mm].
    right_load : float, numpy.ndarray or sympy expression
        Load on the plan of the right rafter [N/mm].
    building_span : float, numpy.ndarray or sympy expression
        Distance between the two eave supports [mm].
    rise : float, numpy.ndarray or sympy expression
        Height of the ridge above the eave supports [mm].
    height_fraction : float, numpy.ndarray or sympy expression
        Height a of the tie above the eave as a share of the rise [-].

    Returns
    -------
    float, numpy.ndarray or sympy expression
        Pull in the tie [N].

    Examples
    --------
    >>> uneven_tie_force(left_load=50.0, right_load=10.0, building_span=24.0, rise=6.0)
    360.0
    """
    _two_sides(left_load, right_load, building_span)
    positive("rise", rise, "for example 6*ft")
    below_ridge(height_fraction)
    return (left_load + right_load) * building_span**2 / (16 * rise * (1 - height_fraction))


def ridge_shear(*, left_load, right_load, building_span):
    """Return the upright force the ridge joint passes across: L (w_left - w_right) / 8.

    With the same load on both sides it is zero; the joint then only presses. Positive: the left rafter leans
    down on the right one. The height of the tie does not matter.

    Parameters
    ----------
    left_load : float, numpy.ndarray or sympy expression
        Load on the plan of the left rafter [N/mm].
    right_load : float, numpy.ndarray or sympy expression
        Load on the plan of the right rafter [N/mm].
    building_span : float, numpy.ndarray or sympy expression
        Distance between the two eave supports [mm].

    Returns
    -------
    float, numpy.ndarray or sympy expression
        Force passed from the left rafter down to the right one [N].

    Examples
    --------
    >>> ridge_shear(left_load=50.0, right_load=10.0, building_span=24.0)
    120.0
    """
    _two_sides(left_load, right_load, building_span)
    return building_span * (left_load - right_load) / 8


def thrust_of_force(*, span, crown, rise, place):
    """Return the push of both feet of a pair for one upright force of 1 anywhere over it: an influence line.

    Straight from each foot up to the crown, and on past the foot: what stands on an overhang takes push away. With a
    tie at a share a of the rise, the tie is pulled by 1 / (1 - a) times as much.

    Parameters
    ----------
    span : float
        Distance between the two feet, which are level [mm].
    crown : float
        Horizontal distance of the crown from the left foot [mm].
    rise : float
        Height of the crown above the feet [mm].
    place : float
        Horizontal distance of the force from the left foot; below 0 and beyond ``span`` it is on an overhang [mm].

    Returns
    -------
    float
        Push of each foot outward, for each N of the force [-].

    Examples
    --------
    >>> [thrust_of_force(span=24.0, crown=12.0, rise=6.0, place=x) for x in (-2.0, 0.0, 6.0, 12.0, 18.0)]
    [-0.16666666666666666, 0.0, 0.5, 1.0, 0.5]
    """
    positive("crown", crown, "for example 12*ft")
    positive("span beyond the crown", span - crown, "the crown hinge stands between the feet")
    positive("rise", rise, "for example 6*ft")
    lever = place * (span - crown) if place <= crown else (span - place) * crown
    return lever / (span * rise)


def _two_sides(one_load, other_load, building_span):
    not_negative("line load", one_load, _LOAD)
    not_negative("line load", other_load, _LOAD)
    positive("building span", building_span, _SPAN)
