"""Refusals for inputs that are one number or one whole number: no list, no symbol."""

from structlib.ground.refusals import BadInput, check_one_number  # noqa: F401  for callers
from structlib.ground.showing import show


def check_one_count(name, value, *, low, high, hint=""):
    """Refuse anything but one whole number between two limits.

    Parameters
    ----------
    name : str
        What is counted [-].
    value : int
        The count [-].
    low : int
        Least accepted [-].
    high : int
        Greatest accepted [-].
    hint : str
        An example for the message [-].

    Returns
    -------
    int
        The count as an int [-].

    Examples
    --------
    >>> check_one_count("plies", 3.0, low=1, high=5)
    3
    """
    check_one_number(name, value, low=low, high=high, hint=hint)
    if value % 1:
        raise BadInput(
            f"{name} must be a whole number from {low} to {high}, got {value!r}" + (f"; {hint}" if hint else "")
        )
    return int(value)


def length_text(value):
    """Write a length for a message, in feet and inches.

    Parameters
    ----------
    value : float
        Length [mm].

    Returns
    -------
    str
        The text [-].

    Examples
    --------
    >>> length_text(8 * 304.8)
    '8 ft'
    """
    return show(value, "length")


def psf_text(value):
    """Write a load by area for a message, in psf.

    Parameters
    ----------
    value : float
        Load [MPa].

    Returns
    -------
    str
        The text [-].

    Examples
    --------
    >>> from structlib.ground.units import psf
    >>> psf_text(40 * psf)
    '40 psf'
    """
    return show(value, "area load")


def inches_text(value):
    """Write a section length for a message, in inches.

    Parameters
    ----------
    value : float
        Length [mm].

    Returns
    -------
    str
        The text [-].

    Examples
    --------
    >>> inches_text(3.5 * 25.4)
    '3 1/2 in'
    """
    return show(value, "section length")
