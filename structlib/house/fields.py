"""How the fields of a house are described once: kind, range, example. Reading, writing and checking all use it."""

import dataclasses
import math
from dataclasses import MISSING
from functools import cache

from structlib.ground.reading import read
from structlib.ground.refusals import BadInput, check_choice, check_number
from structlib.ground.showing import show
from structlib.house.inputs import (
    check_list,
    check_one_number,
    check_record,
    check_whole_number,
    check_yes_or_no,
)

_LONGEST_TEXT = 10_000
_SLACK = 1e-9  # mm, N or MPa: an end of a range read from feet is that end


def of(kind, example, *, low=0.0, high=None, choices=(), record=None, default=MISSING):
    """Describe one field: what it holds, how it is written, and where its range ends.

    Parameters
    ----------
    kind : str
        'text', 'names', 'choice', 'yes or no', 'count', 'slope', 'record', 'records', or a dimension [-].
    example : str
        How it is written in a house file [-].
    low, high : float
        Ends of the range, both accepted [same unit as the field].
    choices : tuple of str
        Words accepted [-].
    record : type
        What a 'record' or 'records' field holds [-].
    default : any
        What holds where it is not written; a field without one must be written [any].

    Returns
    -------
    dataclasses.Field
        The field [-].

    Examples
    --------
    >>> of("length", "12 ft", high=12000.0).metadata["example"]
    '12 ft'
    """
    about = dict(kind=kind, example=example, low=low, high=high, choices=choices, record=record)
    return dataclasses.field(default=default, metadata=about)


def read_record(record, row, place):
    """Build a record from the plain data of a file; every fault names its place.

    Parameters
    ----------
    record : type
        The record, such as Level [-].
    row : dict
        Its fields as a file holds them [-].
    place : str
        How a message names it [-].

    Returns
    -------
    Record
        The record [-].

    Examples
    --------
    >>> from structlib.house.plan import Layer
    >>> read_record(Layer, {"name": "planks", "weight": "3 psf"}, "the layer").name
    'planks'
    """
    if not isinstance(row, dict):
        raise BadInput(f"{place} must be a group of fields, got {row!r}; look at a demo house for an example")
    fields = {one.name: one for one in dataclasses.fields(record)}
    for name in row:
        check_choice(f"field of {place}", name, sorted(fields))
    values = {}
    for name, one in fields.items():
        if name in row:
            try:
                values[name] = _read_field(one, row[name], f"{name} of {place}")
                _check_field(one.metadata, values[name], name, place)
            except BadInput as error:
                error.keys = (name, *error.keys)
                raise
        elif one.default is MISSING:
            raise BadInput(f"{place} has no {name!r}; write it, for example {name} = {one.metadata['example']}")
    return record(**values)


def _read_field(one, text, place):
    about, kind = one.metadata, one.metadata["kind"]
    if kind == "record":
        return read_record(about["record"], text, place)
    if kind in ("records", "names"):
        rows = check_list(place, text, about["example"])
        return tuple(rows) if kind == "names" else tuple(_rows(about["record"], rows, place))
    if kind == "slope":
        return _slope(text, place)
    if kind in ("text", "choice", "yes or no", "count"):
        return text
    try:
        return read(text, kind, allow_negative=about["low"] < 0)
    except BadInput as error:
        raise BadInput(f"{place}: {error}") from None


def _rows(record, rows, place):
    for number, row in enumerate(rows):
        try:
            yield read_record(record, row, _place(row, number + 1, place))
        except BadInput as error:
            error.keys = (number, *error.keys)
            raise


def _place(row, number, place):
    """How a row of a list is named: by its own name where it has one."""
    name = row.get("name") if isinstance(row, dict) else None
    word, _, whole = place.partition(" of ")
    of_what = "" if whole == "the house" else f" of {whole}"
    return f"{word.removesuffix('s')} {repr(name) if isinstance(name, str) else number}{of_what}"


def _slope(text, place):
    words = str(text).replace(":", " in ").split(" in ")
    try:
        rise, run = (float(word) for word in words)
    except ValueError:
        raise BadInput(f'{place} must be written as rise in run, got {text!r}; for example "6 in 12"') from None
    return rise, run


def write_record(record):
    """Give the plain data of a record as a file holds it; fields at their default are left out.

    Parameters
    ----------
    record : Record
        The record [-].

    Returns
    -------
    dict
        Its fields as text and plain values [-].

    Examples
    --------
    >>> from structlib.ground.units import psf
    >>> from structlib.house.plan import Layer
    >>> write_record(Layer(name="planks", weight=3 * psf))
    {'name': 'planks', 'weight': '3 psf'}
    """
    row = {}
    for one in dataclasses.fields(record):
        value = getattr(record, one.name)
        if one.default is not MISSING and value == one.default:
            continue
        row[one.name] = _written(one.metadata["kind"], value)
    return row


def _written(kind, value):
    if kind == "record":
        return write_record(value)
    if kind == "records":
        return [write_record(one) for one in value]
    if kind == "names":
        return list(value)
    if kind == "slope":
        return f"{value[0]!r} in {value[1]!r}"
    if kind in ("text", "choice", "yes or no", "count"):
        return value
    return exact_text(value, kind)


def exact_text(value, dimension):
    """Write a value as people write it where that says it exactly, else with all its digits.

    Parameters
    ----------
    value : float
        The value [mm, N or MPa].
    dimension : str
        'length', 'section length', 'area load' or 'weight' [-].

    Returns
    -------
    str
        Text that reads back as the same value [-].

    Examples
    --------
    >>> exact_text(3048.0, "length"), exact_text(3048.1, "length")
    ('10 ft', '3048.1 mm')
    """
    text = show(value, dimension)
    if abs(read(text, dimension, allow_negative=True) - value) <= 1e-12 * abs(value):
        return text
    unit, size = {"area load": ("kPa", 1e-3), "weight": ("N", 1.0), "ratio": ("", 1.0)}.get(dimension, ("mm", 1.0))
    return f"{float(value) / size!r} {unit}"


class Record:
    """A part of a house: every field is checked once, when it is made or changed."""

    def __post_init__(self):
        place = getattr(self, "name", None) or f"the {type(self).__name__.lower()}"
        for name, about, default, low, high in _described(type(self)):
            value = getattr(self, name)
            if value is not default and not (type(value) is float and low <= value <= high):
                _check_field(about, value, name, place)


@cache
def _described(kind):
    """Name, description, default of each field, and the range in which any plain number is accepted at once."""
    found = []
    for one in dataclasses.fields(kind):
        about = one.metadata
        number = about["high"] is not None and about["kind"] != "count"
        low, high = (about["low"] - _SLACK, about["high"] + _SLACK) if number else (math.inf, -math.inf)
        found.append((one.name, about, one.default, low, high))
    return tuple(found)


def _check_field(about, value, name, place):
    kind = about["kind"]
    if kind in ("record", "records", "names"):
        rows = (value,) if kind == "record" else check_list(f"{name} of {place}", value, about["example"])
        for one in rows:
            check_record(f"{name} of {place}", one, str if kind == "names" else about["record"], about["example"])
    elif kind == "choice":
        check_choice(f"{name} of {place}", value, about["choices"])
    elif kind == "yes or no":
        check_yes_or_no(f"{name} of {place}", value)
    elif kind == "given":
        pass  # values that no file holds; whoever uses them checks them
    elif kind == "text":
        _check_text(value, f"{name} of {place}", about["example"])
    elif kind == "slope":
        hint = f"for example {about['example']}"
        if not isinstance(value, (tuple, list)) or len(value) != 2:
            raise BadInput(f"{name} of {place} must be (rise, run), got {value!r}; for example (6, 12)")
        check_number(f"run in {name} of {place}", value[1], low=0.0, high=1000.0, hint=hint, low_allowed=False)
        check_number(f"rise in {name} of {place}", value[0], low=0.0, high=2.0 * value[1], hint=hint)
    elif kind == "count":
        hint = f"for example {about['example']}"
        check_whole_number(f"{name} of {place}", value, low=about["low"], high=about["high"], hint=hint)
    elif not (type(value) is float and about["low"] - _SLACK <= value <= about["high"] + _SLACK):
        shown, hint = lambda amount: show(amount, kind), f"for example {about['example']}"
        check_one_number(f"{name} of {place}", value, low=about["low"], high=about["high"], shown=shown, hint=hint)


def _check_text(value, place, hint):
    if not isinstance(value, str):
        raise BadInput(f"{place} must be text, got {value!r}; for example {hint}")
    if len(value) > _LONGEST_TEXT:
        raise BadInput(f"{place} must have at most {_LONGEST_TEXT:,} letters, got {len(value):,}; for example {hint}")
    try:
        value.encode("utf-8")
    except UnicodeEncodeError:
        raise BadInput(
            f"{place} holds a broken character that no file can keep; write it anew, for example {hint}"
        ) from None
