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


def uneven_tie_moment(*, near_load, far_load, building_span, height_fraction):
    """Return the moment in one rafter at the tie when the two sides carry different loads.

    Parameters
    ----------
    near_load : float, numpy.ndarray or sympy expression
        Load on the plan of this rafter [N/mm].
    far_load : float, numpy.ndarray or sympy expression
        Load on the plan of the other rafter [N/mm].
    building_span : float, numpy.ndarray or sympy expression
        Distance between the two eave supports [mm].
    height_fraction : float, numpy.ndarray or sympy expression
        Height a of the tie above the eave as a share of the rise [-].

    Returns
    -------
    float, numpy.ndarray or sympy expression
        Moment at the tie, positive when the rafter sags [N*mm].

    Examples
    --------
    >>> uneven_tie_moment(near_load=50.0, far_load=50.0, building_span=24.0, height_fraction=0.5)
    2700.0
    """
    reaction = uneven_eave_reaction(near_load=near_load, far_load=far_load, building_span=building_span)
    distance = below_ridge(height_fraction) * building_span / 2
    return reaction * distance - near_load * distance**2 / 2


def three_hinged_reactions(*, span, crown, rise, left_force, left_place, right_force, right_place):
    """Return what holds up a frame of two stiff halves with three hinges: two feet and a crown.

    The feet are level and do not give way. Each half carries one upright force, the sum of what stands on it.
    About one foot the other foot's lift follows; about the crown, on one half alone, follows the push.

    Parameters
    ----------
    span : float, numpy.ndarray or sympy expression
        Distance between the two feet [mm].
    crown : float, numpy.ndarray or sympy expression
        Horizontal distance of the crown hinge from the left foot [mm].
    rise : float, numpy.ndarray or sympy expression
        Height of the crown above the feet [mm].
    left_force : float, numpy.ndarray or sympy expression
        Downward force on the left half [N].
    left_place : float, numpy.ndarray or sympy expression
        Horizontal distance of that force from the left foot, at most ``crown`` [mm].
    right_force : float, numpy.ndarray or sympy expression
        Downward force on the right half [N].
    right_place : float, numpy.ndarray or sympy expression
        Horizontal distance of that force from the right foot, at most ``span - crown`` [mm].

    Returns
    -------
    dict
        ``left`` and ``right``, the lift of the feet; ``thrust``, the push of each foot inward;
        ``crown_shear``, what the left half passes down to the right one [N].

    Examples
    --------
    >>> found = three_hinged_reactions(span=24.0, crown=12.0, rise=6.0, left_force=600.0, left_place=6.0,
    ...                                right_force=600.0, right_place=6.0)
    >>> found["left"], found["thrust"], found["crown_shear"]
    (600.0, 600.0, 0.0)
    """
    positive("span", span, _SPAN)
    positive("crown", crown, "for example 12*ft")
    positive("span beyond the crown", span - crown, "the crown hinge stands between the feet")
    positive("rise", rise, "for example 6*ft")
    for side, force, place, half in (("left", left_force, left_place, crown),
                                     ("right", right_force, right_place, span - crown)):  # fmt: skip
        not_negative(f"{side} force", force, "for example 600*lb")
        not_negative(f"{side} place", place, "for example 6*ft")
        not_negative(f"distance of the {side} force from the crown", half - place,
                     "each force stands on its own half")  # fmt: skip
    left = (left_force * (span - left_place) + right_force * right_place) / span
    right = left_force + right_force - left
    thrust = (left * crown - left_force * (crown - left_place)) / rise
    return {"left": left, "right": right, "thrust": thrust, "crown_shear": left_force - left}


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
