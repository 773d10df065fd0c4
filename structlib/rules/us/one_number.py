"""Refusals for inputs that are one number or one whole number: no list, no symbol."""

from structlib.ground.refusals import BadInput, check_number, is_symbolic
from structlib.ground.showing import show


def check_one_number(name, value, *, low, high, hint="", low_allowed=True, shown=str):
    """Refuse anything but one finite number between two limits.

    Parameters
    ----------
    name : str
        What the number is, in the reader's words [-].
    value : float
        The number [any].
    low : float
        Least accepted value [same unit as value].
    high : float
        Greatest accepted value [same unit as value].
    hint : str
        An example for the message [-].
    low_allowed : bool
        Whether ``low`` itself is accepted [-].
    shown : callable
        Turns a value into text with its unit [-].

    Returns
    -------
    float
        The value, unchanged [same unit as value].

    Raises
    ------
    BadInput
        When it is no such number.

    Examples
    --------
    >>> check_one_number("plies", 3, low=1, high=5)
    3
    """
    if is_symbolic(value) or isinstance(value, (list, tuple, dict, set)) or getattr(value, "ndim", 0):
        raise BadInput(
            f"{name} must be one number, got {type(value).__name__}" + (f"; {hint}" if hint else "")
        )
    return check_number(name, value, low=low, high=high, hint=hint, low_allowed=low_allowed, shown=shown)


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

    Raises
    ------
    BadInput
        When it is no such number.

    Examples
    --------
    >>> check_one_count("plies", 3.0, low=1, high=5)
    3
    """
    check_one_number(name, value, low=low, high=high, hint=hint)
    if value % 1:
        raise BadInput(
            f"{name} must be a whole number from {low} to {high}, got {value!r}"
            + (f"; {hint}" if hint else "")
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
