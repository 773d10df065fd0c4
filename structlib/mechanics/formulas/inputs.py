"""Refusals of bad input, for every formula of this folder."""

import numpy as np

from structlib.ground.refusals import BadInput, check_number, is_symbolic

LIMIT = 1e20  # only a guard against nonsense: no unit in use gives a larger number here


def _check_positive(**numbers):
    for name, value in numbers.items():
        _check_kind(name, value)
        hint = "lengths and stiffnesses are positive"
        check_number(name, value, low=0, high=LIMIT, low_allowed=False, hint=hint)


def _check_not_negative(**numbers):
    for name, value in numbers.items():
        _check_kind(name, value)
        check_number(name, value, low=0, high=LIMIT, hint="0 where there is none")


def _check_load(**numbers):
    for name, value in numbers.items():
        _check_kind(name, value)
        check_number(name, value, low=-LIMIT, high=LIMIT, hint="downward is positive, uplift negative")


def _check_kind(name, value):
    """Refuse lists, and numpy whole numbers, whose fourth power can overflow without a word."""
    whole = isinstance(value, (np.ndarray, np.integer)) and value.dtype.kind in "iu"
    if whole or isinstance(value, (list, tuple)):
        accepted = f"{name} must be a number or a numpy array of decimals"
        raise BadInput(f"{accepted}, got {type(value).__name__}; for example numpy.array([3600.0])")


def _check_between(name, value, low, high):
    """Refuse a place outside its stretch; a symbol anywhere leaves the question open."""
    if is_symbolic(value) or is_symbolic(low) or is_symbolic(high):
        return
    _check_kind(name, value)
    check_number(name, value, low=-LIMIT, high=LIMIT, hint="measured along the member")
    if isinstance(value, float) and isinstance(high, float) and low <= value <= high:
        return  # the usual case, before any array is made
    slack = 1e-9 * np.asarray(high)  # positions computed in feet and inches miss by a rounding
    if np.any(np.asarray(value) < low - slack) or np.any(np.asarray(value) > high + slack):
        accepted = f"{name} must be between {np.max(low):g} and {np.min(high):g}"
        raise BadInput(f"{accepted}, got {value}; it is measured along the member")
