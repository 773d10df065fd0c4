"""What a nail holds when it is pulled straight out (NDS 2018 12.2)."""

from structlib.rules.us.dowels.pieces import _check_gravity
from structlib.rules.us.dowels.words import _scalar
from structlib.rules.us.inputs import check_size


def nail_withdrawal(*, specific_gravity, diameter):
    """Return the withdrawal value of a smooth nail in the side grain of dry wood, by length in the wood.

    Parameters
    ----------
    specific_gravity : float, numpy.ndarray or sympy expression
        Specific gravity of the wood that holds the point [-].
    diameter : float, numpy.ndarray or sympy expression
        Diameter of the nail [mm].

    Returns
    -------
    float, numpy.ndarray or sympy expression
        Reference value by length [N/mm].

    Raises
    ------
    OutsideRule
        When the wood is outside the table.

    Notes
    -----
    NDS 2018 12.2.3. Nails in end grain do not count in withdrawal at all, and wood that dries
    after nailing keeps only a quarter: dry wood only.

    Examples
    --------
    >>> from structlib.ground.units import inch, lb
    >>> round(nail_withdrawal(specific_gravity=0.5, diameter=0.162 * inch) / (lb / inch), 1)
    39.5
    """
    _check_gravity(specific_gravity)
    check_size("diameter", diameter)
    return _scalar("nail_withdrawal") * specific_gravity ** _scalar("nail_withdrawal_power") * diameter
