"""How the library says no: one clear sentence, what was wrong, what is accepted, an example."""

import math
from numbers import Real


class Refusal(ValueError):
    """A no in one clear sentence; a notebook shows that sentence alone, without the way through the code."""

    def _render_traceback_(self):
        return [str(self)]


class BadInput(Refusal):
    """The input cannot be read or makes no sense; the message is one sentence for the reader.

    A fault of a house says where it is: ``keys`` in its file, or the ``part`` and its ``field``.
    """

    keys, part, field = (), "", ""

    def about(self, part, field="name"):
        """Say which part of a house a fault is about; what was said before stands.

        Parameters
        ----------
        part : str
            Name of the part [-].
        field : str
            Its field; its name where the whole part is meant [-].

        Returns
        -------
        BadInput
            The same fault [-].

        Examples
        --------
        >>> BadInput("it leans").about("west wall", "at").field
        'at'
        """
        if not self.part:
            self.part, self.field = part, field
        return self


class OutsideRule(Refusal):
    """A rule was asked about a case that it does not cover; it is refused, never extrapolated."""


class NotAsked(OutsideRule):
    """The rule asks for nothing in this case, so there is no number; that is an answer, not a gap."""


def is_symbolic(value):
    """Tell whether a value is a sympy expression, without importing sympy.

    Parameters
    ----------
    value : object
        Anything [-].

    Returns
    -------
    bool
        True for a sympy symbol or expression [-].

    Examples
    --------
    >>> is_symbolic(3.0)
    False
    """
    return hasattr(value, "free_symbols")


def check_number(name, value, *, low, high, shown=str, hint="", low_allowed=True):
    """Refuse anything but a finite number (or array of numbers) between two limits.

    Sympy expressions pass through unchecked, so that a formula can print itself.

    Parameters
    ----------
    name : str
        What the number is, in the reader's words [-].
    value : float or numpy.ndarray
        The number or numbers to check [any].
    low : float
        Least accepted value [same unit as value].
    high : float
        Greatest accepted value [same unit as value].
    shown : callable
        Turns a value into text with its unit [-].
    hint : str
        A closing question or example for the message [-].
    low_allowed : bool
        Whether ``low`` itself is accepted [-].

    Returns
    -------
    float or numpy.ndarray
        The value, unchanged [same unit as value].

    Examples
    --------
    >>> check_number("plies", 3, low=1, high=6)
    3
    >>> check_number("plies", 0, low=1, high=6, hint="for example 2")
    Traceback (most recent call last):
    ...
    structlib.ground.refusals.BadInput: plies must be between 1 and 6, got 0; for example 2
    """
    if (isinstance(value, float) or type(value) is int) and low <= value <= high and (low_allowed or value > low):
        return value  # the usual case, before any message is composed
    if is_symbolic(value):
        return value
    tail = f"; {hint}" if hint else ""
    accepted = f"{name} must be {'between' if low_allowed else 'more than'} {shown(low)}"
    accepted += f" and {shown(high)}" if low_allowed else f" and at most {shown(high)}"
    if isinstance(value, (bool, str, bytes)) or value is None:
        raise BadInput(f"{accepted}, got {value!r}, which is not a number{tail}")
    if isinstance(value, (int, float)):
        fine = math.isfinite(value) and value <= high and (value >= low if low_allowed else value > low)
        if not fine:
            got = shown(value) if math.isfinite(value) else repr(value)
            raise BadInput(f"{accepted}, got {got}{tail}")
        return value
    return _check_array(name, value, low, high, shown, tail, accepted, low_allowed)


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

    Examples
    --------
    >>> check_one_number("width", 3.5, low=1, high=6)
    3.5
    """
    if type(value) is float and low <= value <= high and (low_allowed or value > low):
        return value  # the usual case, before anything else is asked
    if is_symbolic(value) or isinstance(value, (list, tuple, dict, set)) or getattr(value, "ndim", 0):
        raise BadInput(f"{name} must be one number, got {type(value).__name__}" + (f"; {hint}" if hint else ""))
    return check_number(name, value, low=low, high=high, hint=hint, low_allowed=low_allowed, shown=shown)


def _check_array(name, value, low, high, shown, tail, accepted, low_allowed):
    import numpy

    try:
        if numpy.asarray(value).dtype.kind in "bcmMSU":  # numpy would make numbers of these
            raise TypeError
        numbers = numpy.asarray(value, dtype=float)
    except (TypeError, ValueError, OverflowError):
        raise BadInput(f"{accepted}, got {type(value).__name__}, which is not a number{tail}") from None
    if numbers.size == 0:
        raise BadInput(f"{accepted}, got an empty list{tail}")
    over_low = numbers >= low if low_allowed else numbers > low
    bad = ~(numpy.isfinite(numbers) & over_low & (numbers <= high))
    if bad.any():
        worst = float(numbers[bad].flat[0])
        got = shown(worst) if math.isfinite(worst) else repr(worst)
        raise BadInput(f"{accepted}, got {got}{tail}")
    return value


def refuse_list(name, value):
    """Refuse a list or tuple where a formula reckons with a number or an array.

    Parameters
    ----------
    name : str
        What the number is, in the reader's words [-].
    value : object
        What was given [-].

    Examples
    --------
    >>> refuse_list("span", 3600.0)
    """
    if isinstance(value, (list, tuple)):
        raise BadInput(f"{name} must be one number or an array, got a {type(value).__name__}")


def check_choice(name, value, choices, shown=repr):
    """Refuse what is not one of the choices, and offer the nearest ones.

    Parameters
    ----------
    name : str
        What is chosen, in the reader's words [-].
    value : str or float
        The word or number given [any].
    choices : iterable of str or float
        The words or numbers accepted [any].
    shown : callable
        Turns a choice into text for the message [-].

    Returns
    -------
    str or float
        The choice, as it is listed [any].

    Examples
    --------
    >>> check_choice("grade", "No.2", ["No.1", "No.2"])
    'No.2'
    >>> check_choice("species", "Hem Fir", ["Hem-Fir", "Southern Pine"])
    Traceback (most recent call last):
    ...
    structlib.ground.refusals.BadInput: species 'Hem Fir' is not known; did you mean 'Hem-Fir'?
    >>> check_choice("beam ends", 3, [1, 2])
    Traceback (most recent call last):
    ...
    structlib.ground.refusals.BadInput: beam ends 3 is not known; accepted are 1, 2
    """
    if isinstance(value, str) and isinstance(choices, (tuple, list, dict)) and value in choices:
        return value
    return _near_choice(name, value, list(choices), shown)


def _near_choice(name, value, choices, shown):
    import difflib

    if isinstance(value, str) and value in choices:
        return value
    for choice in choices:
        if _same_number(value, choice):
            return choice
    words = [choice for choice in choices if isinstance(choice, str)]
    near = difflib.get_close_matches(str(value), words, n=len(words) or 1, cutoff=0.5)
    near = sorted(near, key=lambda one: not one.endswith(str(value)))[:3]  # '1' is '01' before it is '14'
    if near:
        ask = "did you mean " + " or ".join(shown(n) for n in near) + "?"
    else:
        ask = "accepted are " + ", ".join(shown(c) for c in choices[:12])
    raise BadInput(f"{name} {value!r} is not known; {ask}")


def _same_number(value, choice):
    both = all(isinstance(one, Real) and not isinstance(one, bool) for one in (value, choice))
    return both and math.isclose(value, choice, rel_tol=1e-9)
