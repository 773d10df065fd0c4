"""The door through which a notebook calls: an argument of another kind than its docstring says is answered there.

A module of tables ends with ``hold(globals())``. What a docstring promises to take is then what is taken, and
numbers of numpy go on as plain ones; what a number may be is asked behind the door, by the rule that uses it.
"""

import functools
import inspect
import os
import pydoc
import re

from structlib.ground.refusals import BadInput
from structlib.house.inputs import check_list, check_one_number, check_record, check_whole_number, check_yes_or_no

_LARGEST, _LEAST = 1e15, 1e-9  # in mm, N and MPa: nothing on site is larger, or smaller without being zero
_LISTS = re.compile(r"(?:tuple|list|iterable|sequence) of (.+)")


def hold(names):
    """Hold every public function and class of a module to its docstring.

    Parameters
    ----------
    names : dict
        ``globals()`` of the module [-].
    """
    for name, one in list(names.items()):
        if name.startswith("_") or getattr(one, "__module__", None) != names["__name__"]:
            continue
        if inspect.isfunction(one):
            names[name] = held(one, one.__doc__)
        elif inspect.isclass(one) and inspect.isfunction(vars(one).get("__init__")):
            one.__init__ = held(one.__init__, one.__doc__)


def held(function, docstring):
    """Return a function that answers an argument of another kind than its docstring says with one sentence.

    Parameters
    ----------
    function : callable
        The function [-].
    docstring : str
        Where its arguments are described, one ``name : kind`` a line [-].

    Returns
    -------
    callable
        The same function behind the door [-].

    Examples
    --------
    >>> def half(span):
    ...     "span : float"
    ...     return span / 2
    >>> held(half, half.__doc__)("12 ft")
    Traceback (most recent call last):
    ...
    structlib.ground.refusals.BadInput: span must be between -1e+15 and 1e+15, got '12 ft', which is not a number
    """
    described = inspect.cleandoc(docstring or "").partition("\nReturns\n")[0]
    signature = inspect.signature(function)
    asked = {
        name: (name.replace("_", " "), kind, signature.parameters[name].default)
        for name, kind in re.findall(r"^(\w+) : (.+)$", described, re.M) if name in signature.parameters
    }

    names = [one.name for one in signature.parameters.values() if one.kind is one.POSITIONAL_OR_KEYWORD]

    def taken(name, value):
        words, kind, default = asked.get(name, ("", "", value))
        return value if value is default else _taken(words, value, kind, function.__globals__)

    @functools.wraps(function)
    def behind(*args, **given):
        named = {name: taken(name, value) for name, value in given.items()}
        return function(*map(taken, names, args), *args[len(names):], **named)

    return behind


def _taken(name, value, kind, known):
    """Return a value as its kind asks; refuse another kind."""
    kinds, of_many = _read(kind)
    if value is None and "None" in kinds:
        return None
    kinds = [one for one in kinds if one != "None"]
    if of_many:
        values = check_list(name, value, "(1, 2)")
        return tuple(_taken(f"{name}, item {number}", one, of_many, known)
                     for number, one in enumerate(values, 1))
    if kinds == ["float"]:
        return _number(name, value)
    if kinds == ["int"]:
        return check_whole_number(name, value, low=-10**6, high=10**6)
    if kinds == ["bool"]:
        return check_yes_or_no(name, value)
    if kinds == ["str"]:
        return check_record(name, value, str, "'a word'")
    if kinds in (["str", "os.PathLike"], ["str", "pathlib.Path"]):
        return check_record(name, value, (str, os.PathLike), "'beam.png'")
    record = _located(kinds[0]) if kinds[0].startswith("structlib.") else known.get(kinds[0])
    if len(kinds) == 1 and inspect.isclass(record):
        return check_record(name, value, record, f"one made with {record.__name__}(...)")
    if kinds == ["dict"]:
        return check_record(name, value, dict, "{'span': 3000.0}")
    return value


@functools.lru_cache(maxsize=1024)
def _read(kind):
    """The kinds that a docstring names, and of what a list is."""
    of_many = _LISTS.fullmatch(kind)
    return tuple(kind.split(" or ")), of_many and of_many[1]


@functools.lru_cache(maxsize=1024)
def _located(name):
    return pydoc.locate(name)


def _number(name, value):
    value = float(check_one_number(name, value, low=-_LARGEST, high=_LARGEST, shown=lambda v: f"{v:g}"))
    if 0.0 < abs(value) < _LEAST:
        raise BadInput(f"{name} must be zero or more than {_LEAST:g}, got {value:g}; lengths are in mm")
    return value
