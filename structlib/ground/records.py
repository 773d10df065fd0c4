"""Result records that say once what dimension each field has, so that any page can show it."""

import dataclasses

from structlib.ground.refusals import BadInput, check_choice
from structlib.ground.showing import DIMENSIONS, show


def measured(dimension, meaning, **field_options):
    """Declare a dataclass field with its dimension and its meaning.

    Parameters
    ----------
    dimension : str
        A dimension that can be shown (``length``, ``force`` ...), or ``text`` for words [-].
    meaning : str
        What the field is, in the reader's words [-].
    **field_options : object
        Passed on to the dataclass field, for example a default [-].

    Returns
    -------
    dataclasses.Field
        The field, to be used as the value of a dataclass attribute [-].

    Examples
    --------
    >>> @dataclasses.dataclass(frozen=True)
    ... class Seat:
    ...     reaction: float = measured("force", "reaction at the left support")
    >>> shown_fields(Seat(reaction=6672.33))
    [('reaction', 'reaction at the left support', '1,500 lb')]
    """
    check_choice("dimension", dimension, (*DIMENSIONS, "text"))
    return dataclasses.field(metadata={"dimension": dimension, "meaning": meaning}, **field_options)


def shown_fields(record, system="us"):
    """List the declared fields of a record as a page would show them.

    Parameters
    ----------
    record : object
        A dataclass instance with fields made by ``measured`` [-].
    system : str
        ``us`` or ``metric`` [-].

    Returns
    -------
    list of tuple
        Name, meaning and text of each declared field; an empty value reads ``not given`` [-].

    Examples
    --------
    >>> shown_fields("a beam")
    Traceback (most recent call last):
    ...
    structlib.ground.refusals.BadInput: a record to be shown must be a dataclass instance, got str
    """
    if not dataclasses.is_dataclass(record) or isinstance(record, type):
        raise BadInput(f"a record to be shown must be a dataclass instance, got {type(record).__name__}")
    check_choice("system", system, ("us", "metric"))
    shown = []
    for field in dataclasses.fields(record):
        if "dimension" in field.metadata:
            text = _text_of(getattr(record, field.name), field.metadata["dimension"], system)
            shown.append((field.name, field.metadata["meaning"], text))
    return shown


def _text_of(value, dimension, system):
    if value is None:
        return "not given"
    return str(value) if dimension == "text" else show(value, dimension, system)
