"""Between which limits the formulas of these rules may be asked: wide, so that any units fit, but finite."""

import numpy

from structlib.ground.refusals import BadInput, check_number, is_symbolic

_MOST = 1e18  # only a guard against nonsense: a stiffness in N*mm2 reaches 1e15 in a house


def at_most(value, end):
    """Tell whether a value lies within the end of a rule, the rounding of feet and inches aside.

    Parameters
    ----------
    value : float or numpy.ndarray
        The value [consistent].
    end : float or numpy.ndarray
        Where the rule ends [same unit].

    Returns
    -------
    bool or numpy.ndarray
        Whether it is no more [-].

    Examples
    --------
    >>> at_most(175 * 25.4 / (3.5 * 25.4), 50), at_most(50.001, 50)
    (True, False)
    """
    return value <= end * (1 + 1e-9)


def anywhere(found):
    """Tell whether a comparison of numbers or arrays holds anywhere.

    Parameters
    ----------
    found : bool or numpy.ndarray
        The comparison [-].

    Returns
    -------
    bool
        Whether it does [-].

    Examples
    --------
    >>> anywhere(3 > 2)
    True
    """
    return bool(found) if isinstance(found, (bool, numpy.bool_)) else bool(numpy.any(found))


def check_size(name, value, *, zero=False):
    """Refuse a width, depth or seat that is not a finite number above zero.

    Parameters
    ----------
    name : str
        What it is, in the reader's words [-].
    value : float, numpy.ndarray or sympy expression
        The size [consistent].
    zero : bool
        Whether zero is accepted [-].

    Returns
    -------
    float, numpy.ndarray or sympy expression
        The value, unchanged [consistent].

    Examples
    --------
    >>> check_size("depth", 235.0)
    235.0
    """
    return check_number(name, value, low=0.0, high=3000.0, low_allowed=zero, shown=_mm, hint="for example 9.25*inch")


def check_member_length(name, value, *, zero=True):
    """Refuse a length along a member that is not a finite number up to 60 m.

    Parameters
    ----------
    name : str
        What it is, in the reader's words [-].
    value : float, numpy.ndarray or sympy expression
        The length [consistent].
    zero : bool
        Whether zero is accepted [-].

    Returns
    -------
    float, numpy.ndarray or sympy expression
        The value, unchanged [consistent].

    Examples
    --------
    >>> check_member_length("distance between braces", 0.0)
    0.0
    """
    return check_number(name, value, low=0.0, high=60_000.0, low_allowed=zero, shown=_mm, hint="for example 12*ft")


def check_amount(name, value, *, zero=False, hint="for example 900*psi"):
    """Refuse a stress, force, factor or sag that is not a finite number above zero.

    Parameters
    ----------
    name : str
        What it is, in the reader's words [-].
    value : float, numpy.ndarray or sympy expression
        The amount [consistent].
    zero : bool
        Whether zero is accepted [-].
    hint : str
        An example for the message [-].

    Returns
    -------
    float, numpy.ndarray or sympy expression
        The value, unchanged [consistent].

    Examples
    --------
    >>> check_amount("stress", 6.2)
    6.2
    """
    return check_number(name, value, low=0.0, high=_MOST, low_allowed=zero, shown=_plain, hint=hint)


def check_yes_or_no(name, value):
    """Refuse anything but True or False.

    Parameters
    ----------
    name : str
        What is asked, in the reader's words [-].
    value : bool
        The answer [-].

    Returns
    -------
    bool
        The value, unchanged [-].

    Examples
    --------
    >>> check_yes_or_no("wet", False)
    False
    """
    if value is True or value is False:
        return value
    raise BadInput(f"{name} must be True or False, got {value!r}")


def check_words(name, words):
    """Return several words as a list; one word alone, or no list at all, is refused.

    Parameters
    ----------
    name : str
        What the words are [-].
    words : iterable of str
        The words [-].

    Returns
    -------
    list of str
        The words [-].

    Examples
    --------
    >>> check_words("load types", ("dead", "live"))
    ['dead', 'live']
    """
    listed = None if isinstance(words, (str, bytes)) else _listed(words)
    if listed is None or not all(isinstance(word, str) for word in listed):
        raise BadInput(f"{name} must be a list of words, got {words!r}; for example ['dead', 'live']")
    return listed


def check_unit_circle(*, sine, cosine):
    """Refuse a sine and a cosine that do not belong to one angle.

    Parameters
    ----------
    sine : float, numpy.ndarray or sympy expression
        Sine of the angle [-].
    cosine : float, numpy.ndarray or sympy expression
        Cosine of the angle [-].

    Examples
    --------
    >>> check_unit_circle(sine=0.6, cosine=0.8)
    """
    for name, value in (("sine", sine), ("cosine", cosine)):
        check_number(name, value, low=-1.0, high=1.0, hint="for example 0.5")
    if is_symbolic(sine) or is_symbolic(cosine):
        return
    if numpy.any(numpy.abs(numpy.square(sine) + numpy.square(cosine) - 1.0) > 1e-6):
        raise BadInput(
            f"sine and cosine must belong to one angle, so that their squares add up to 1, got {sine!r} and "
            f"{cosine!r}; for example 0.6 and 0.8"
        )


def _listed(words):
    try:
        return list(words)
    except TypeError:
        return None


def _mm(value):
    return f"{value:g} mm"


def _plain(value):
    return f"{value:g}"
