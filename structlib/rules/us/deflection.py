"""Sag: the code's limit on live load, and the total with and without the creep of the years."""

from structlib.ground.refusals import check_choice, check_number
from structlib.rules.us import factors
from structlib.rules.us.inputs import check_amount, check_yes_or_no


def long_term_deflection(*, lasting, passing, creep_factor):
    """Return the sag after years: the lasting part grows, the passing part does not.

    Parameters
    ----------
    lasting : float, numpy.ndarray or sympy expression
        Sag at once from the loads that stay [mm].
    passing : float, numpy.ndarray or sympy expression
        Sag at once from the loads that come and go [mm].
    creep_factor : float, numpy.ndarray or sympy expression
        Creep factor: 1.5 for wood that is dry in use, 2.0 for green or wet wood [-].

    Returns
    -------
    float, numpy.ndarray or sympy expression
        Sag after years under load [mm].

    Raises
    ------
    BadInput
        When an input is not a finite number in its range.

    Notes
    -----
    NDS 2018 3.5.2.

    Examples
    --------
    >>> long_term_deflection(lasting=4.0, passing=6.0, creep_factor=1.5)
    12.0
    """
    for name, sag in (("lasting sag", lasting), ("passing sag", passing)):
        check_number(
            name, sag, low=-60_000.0, high=60_000.0, shown=lambda mm: f"{mm:g} mm", hint="for example 4.0"
        )
    check_amount("creep factor", creep_factor, hint="for example 1.5")
    return creep_factor * lasting + passing


def creep_factor(*, wet):
    """Return the creep factor for load that stays for years.

    Parameters
    ----------
    wet : bool
        True for green lumber or wet service [-].

    Returns
    -------
    float
        Creep factor [-].

    Raises
    ------
    BadInput
        When ``wet`` is neither True nor False.

    Notes
    -----
    NDS 2018 3.5.2.

    Examples
    --------
    >>> creep_factor(wet=False)
    1.5
    """
    return factors.scalar("creep_wet" if check_yes_or_no("wet", wet) else "creep_dry")


def limit_divisor(use):
    """Return n of the limit span/n for live load on a kind of member, with its clause.

    Parameters
    ----------
    use : str
        What the member is, a row of the deflection table, such as 'floor' [-].

    Returns
    -------
    tuple of (float, str, str)
        The divisor, its clause and how it is known [-].

    Raises
    ------
    BadInput
        When the use is not in the table; the nearest are named.

    Notes
    -----
    IRC 2021 Table R301.7.

    Examples
    --------
    >>> limit_divisor("floor")[0]
    360.0
    """
    rows = factors.deflection_rows()
    check_choice("use of the member", use, rows)
    row = rows[use]
    return row["divisor"], row["clause"], row["verified"]
