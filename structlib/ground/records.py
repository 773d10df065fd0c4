"""Result records that say once what dimension each field has, so that any page can show it."""

import dataclasses

from structlib.ground.refusals import check_choice
from structlib.ground.showing import DIMENSIONS


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
    >>> dataclasses.fields(Seat)[0].metadata["dimension"]
    'force'
    """
    check_choice("dimension", dimension, (*DIMENSIONS, "text"))
    return dataclasses.field(metadata={"dimension": dimension, "meaning": meaning}, **field_options)
