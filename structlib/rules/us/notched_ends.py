"""What the end of a joist can give where a notch is cut into it (NDS 3.4.3.2)."""

from structlib.ground.cut_sections import check_within
from structlib.ground.refusals import OutsideRule, check_number
from structlib.ground.sections import check_section_size
from structlib.ground.units import inch, lb, psi  # noqa: F401 (in examples)
from structlib.rules.us.one_number import check_one_number


def tension_notch_shear(*, shear_value, width, depth, remaining, power=2):
    """End reaction that a notch on the tension side leaves, (2/3) Fv b dn (dn/d)^2.

    Parameters
    ----------
    shear_value : float
        Shear value of the wood with its factors [MPa].
    width : float
        Width of the member [mm].
    depth : float
        Full depth [mm].
    remaining : float
        Depth left at the notch, at most the full depth [mm].
    power : int
        Power of dn/d: 2 today, 1 in an older rule [-].

    Returns
    -------
    float
        Shear that the notched end can give [N].

    Notes
    -----
    NDS 2018 Eq. 3.4-3 for power 2. Power 1 is an older rule, seen in a worked problem.

    Examples
    --------
    >>> round(tension_notch_shear(shear_value=180*psi, width=1.5*inch, depth=9.25*inch,
    ...     remaining=6.9375*inch) / lb, 1)
    702.4
    """
    _check_end_notch(shear_value, width, depth, remaining)
    check_number("power", power, low=1, high=2, hint="2 today, 1 in an older rule")
    return 2 * shear_value * width * remaining * (remaining / depth) ** power / 3


def _check_end_notch(shear_value, width, depth, remaining):
    check_number("shear value", shear_value, low=0, high=100, low_allowed=False, hint="for example 180*psi")
    for name, size in (("width", width), ("depth", depth), ("depth left", remaining)):
        check_section_size(name, size)
    check_within("depth left", remaining, depth, "the full depth")


def remaining_depth_for(*, shear, shear_value, width, depth, power=2):
    """Depth that must be left at a tension-side end notch for a given shear.

    Parameters
    ----------
    shear : float
        End reaction [N].
    shear_value : float
        Shear value of the wood with its factors [MPa].
    width : float
        Width of the member [mm].
    depth : float
        Full depth [mm].
    power : int
        Power of dn/d: 2 today, 1 in an older rule [-].

    Returns
    -------
    float
        Least depth left [mm].

    Raises
    ------
    OutsideRule
        When even the full depth is not enough.

    Examples
    --------
    >>> round(remaining_depth_for(shear=15180.0, shear_value=0.85, width=150.0, depth=350.0, power=1), 1)
    250.0
    """
    check_one_number("shear", shear, low=0.0, high=1e8, low_allowed=False)
    check_one_number("shear value", shear_value, low=0.0, high=100.0, low_allowed=False)
    check_section_size("width", width)
    check_section_size("depth", depth)
    check_number("power", power, low=1, high=2, hint="2 today, 1 in an older rule")
    left = (3 * shear * depth**power / (2 * shear_value * width)) ** (1 / (power + 1))
    if left > depth:
        raise OutsideRule("the full depth is not enough for this shear, so no notch leaves enough")
    return left
