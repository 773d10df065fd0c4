"""The door through which a notebook calls: an argument of another kind than its annotation says is answered there.

A module of tables ends with ``hold(globals())``. What a signature promises to take is then what is taken, and
numbers of numpy go on as plain ones; what a number may be is asked behind the door, by the rule that uses it.
"""

import functools
import inspect
from dataclasses import is_dataclass
from types import NoneType, UnionType
from typing import get_args, get_origin

from structlib.ground.refusals import BadInput
from structlib.house.inputs import check_list, check_one_number, check_record, check_whole_number, check_yes_or_no

_LARGEST, _LEAST = 1e15, 1e-9  # in mm, N and MPa: nothing on site is larger, or smaller without being zero
_EXAMPLES = {str: "'a word'", dict: "{'span': 3000.0}"}


def hold(names):
    """Hold every public function and class of a module, given as its ``globals()``, to its annotations; no records."""
    for name, one in list(names.items()):
        if name.startswith("_") or getattr(one, "__module__", None) != names["__name__"]:
            continue
        if inspect.isfunction(one):
            names[name] = held(one)
        elif inspect.isclass(one) and not is_dataclass(one) and inspect.isfunction(vars(one).get("__init__")):
            one.__init__ = held(one.__init__)


def held(function):
    """Return a function that answers an argument of another kind than its annotation says with one sentence.

    Examples
    --------
    >>> def half(span: float):
    ...     return span / 2
    >>> held(half)("12 ft")
    Traceback (most recent call last):
    ...
    structlib.ground.refusals.BadInput: span must be between -1e+15 and 1e+15, got '12 ft', which is not a number
    """
    signature = inspect.signature(function)
    asked = {
        name: (name.replace("_", " "), one.annotation, one.default)
        for name, one in signature.parameters.items() if one.annotation is not one.empty
    }  # fmt: skip
    names = [one.name for one in signature.parameters.values() if one.kind is one.POSITIONAL_OR_KEYWORD]

    def taken(name, value):
        words, kind, default = asked.get(name, ("", None, value))
        return value if value is default else _taken(words, value, kind)

    @functools.wraps(function)
    def behind(*args, **given):
        named = {name: taken(name, value) for name, value in given.items()}
        return function(*map(taken, names, args), *args[len(names) :], **named)

    return behind


def _taken(name, value, kind):
    """Return a value as its kind asks; refuse another kind."""
    if isinstance(kind, UnionType):
        if value is None and NoneType in get_args(kind):
            return None
        kinds = tuple(one for one in get_args(kind) if one is not NoneType)
        if len(kinds) > 1:
            return check_record(name, value, kinds, _EXAMPLES[str])
        kind = kinds[0]
    if get_origin(kind) is tuple:
        values = check_list(name, value, "(1, 2)")
        return tuple(_taken(f"{name}, item {number}", one, get_args(kind)[0]) for number, one in enumerate(values, 1))
    if kind is float:
        return _number(name, value)
    if kind is int:
        return check_whole_number(name, value, low=-(10**6), high=10**6)
    if kind is bool:
        return check_yes_or_no(name, value)
    return check_record(name, value, kind, _EXAMPLES.get(kind, f"one made with {kind.__name__}(...)"))


def _number(name, value):
    value = float(check_one_number(name, value, low=-_LARGEST, high=_LARGEST, shown=lambda v: f"{v:g}"))
    if 0.0 < abs(value) < _LEAST:
        raise BadInput(f"{name} must be zero or more than {_LEAST:g}, got {value:g}; lengths are in mm")
    return value
