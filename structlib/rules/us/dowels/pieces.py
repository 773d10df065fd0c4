"""The pieces that a fastener joins."""

import numpy

from structlib.ground.refusals import BadInput, OutsideRule, check_choice, check_number, is_symbolic
from structlib.ground.units import deg
from structlib.rules.us.dowels.records import JoinedPiece
from structlib.rules.us.dowels.words import _one_number, _scalar
from structlib.rules.us.inputs import anywhere


def wood_piece(*, thickness, specific_gravity, angle=0.0):
    """Return a wood member of a joint.

    Parameters
    ----------
    thickness : float
        Thickness along the fastener [mm].
    specific_gravity : float
        Specific gravity, 0.31 to 0.73; for LVL the equivalent one in the maker's report [-].
    angle : float
        Angle between the load and the grain, 0 to 90 deg [rad].

    Returns
    -------
    JoinedPiece
        The member [-].

    Raises
    ------
    OutsideRule
        When the wood is lighter or denser than the table goes.

    Notes
    -----
    NDS 2018 Table 12.3.3.

    Examples
    --------
    >>> from structlib.ground.units import inch
    >>> wood_piece(thickness=1.5 * inch, specific_gravity=0.5, angle=90 * deg).specific_gravity
    0.5
    """
    _one_number("thickness", thickness)
    _check_gravity(specific_gravity)
    _check_angle(angle)
    return JoinedPiece(thickness=thickness, specific_gravity=specific_gravity, angle=angle)


def steel_plate(*, thickness, steel="A36"):
    """Return a steel side plate, or a plate between two members.

    Parameters
    ----------
    thickness : float
        Thickness [mm].
    steel : str
        ``A36`` (hot-rolled plate) or ``A653 grade 33`` (cold-formed sheet) [-].

    Returns
    -------
    JoinedPiece
        The plate [-].

    Examples
    --------
    >>> from structlib.ground.units import inch
    >>> steel_plate(thickness=0.25 * inch).steel
    'A36'
    """
    _one_number("thickness", thickness)
    check_choice("steel", steel, _STEELS)
    return JoinedPiece(thickness=thickness, steel=steel)


_STEELS = {
    "A36": ("tensile_strength_A36", "hot rolled"),
    "A653 grade 33": ("tensile_strength_A653_33", "cold formed"),
}


def _check_gravity(value):
    if value is None:
        raise BadInput(
            "the specific gravity is not given; for LVL take the equivalent one in the maker's report, for example 0.5"
        )
    check_number("specific gravity", value, low=0.0, high=5.0, low_allowed=False, hint="for example 0.5")
    if is_symbolic(value):
        return
    low, high = _scalar("specific_gravity_least"), _scalar("specific_gravity_greatest")
    if anywhere((numpy.asarray(value) < low) | (numpy.asarray(value) > high)):
        raise OutsideRule(
            f"dowel bearing strengths are published for specific gravities of {low:g} to {high:g}, "
            f"got {value}; for example 0.5 for Douglas Fir-Larch"
        )


def _check_angle(angle):
    check_number(
        "angle of load to grain",
        angle,
        low=0.0,
        high=90 * deg * (1 + 1e-12),
        shown=lambda a: f"{a / deg:g} deg",
        hint="for example 90*deg, across the grain",
    )
