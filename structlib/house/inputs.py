"""What the house room refuses before it works: numbers that are none, lists, records of another kind."""

from structlib.ground.material import Material, check_design_values
from structlib.ground.refusals import BadInput, check_one_number


def check_whole_number(name, value, *, low, high, hint=""):
    """Refuse anything but one whole number between two limits.

    Parameters
    ----------
    name : str
        What the number is, in the reader's words [-].
    value : int
        The number [-].
    low : int
        Least accepted value [-].
    high : int
        Greatest accepted value [-].
    hint : str
        A closing example for the message [-].

    Returns
    -------
    int
        The value as an int [-].

    Examples
    --------
    >>> check_whole_number("plies", 3, low=1, high=6)
    3
    """
    check_one_number(name, value, low=low, high=high, hint=hint)
    if value != int(value):
        raise BadInput(
            f"{name} must be a whole number between {low} and {high}, got {value}" + (f"; {hint}" if hint else "")
        )
    return int(value)


def check_record(name, value, kind, example):
    """Refuse anything that is not a record of the kind asked for.

    Parameters
    ----------
    name : str
        What the record is, in the reader's words [-].
    value : object
        What was given [-].
    kind : type
        The kind of record, or a tuple of kinds [-].
    example : str
        How one is made, for the message [-].

    Returns
    -------
    object
        The value, unchanged [-].

    Examples
    --------
    >>> check_record("name", "Alder Lane", str, "'Alder Lane'")
    'Alder Lane'
    """
    if not isinstance(value, kind):
        kinds = kind if isinstance(kind, tuple) else (kind,)
        raise BadInput(
            f"{name} must be a {' or a '.join(one.__name__ for one in kinds)}, got {type(value).__name__}; "
            f"for example {example}"
        )
    return value


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
    >>> check_yes_or_no("wet", True)
    True
    """
    if value is True or value is False:
        return value
    raise BadInput(f"{name} must be true or false, got {value!r}; for example true")


def check_list(name, value, example):
    """Return a list of things; text, numbers and other things that are no list are refused.

    Parameters
    ----------
    name : str
        What the list is, in the reader's words [-].
    value : iterable
        The list [-].
    example : str
        What one looks like, for the message [-].

    Returns
    -------
    tuple
        Its items [-].

    Examples
    --------
    >>> check_list("plies", [2, 3], "(2, 3)")
    (2, 3)
    """
    if not isinstance(value, (str, bytes, dict)):
        try:
            return tuple(value)
        except TypeError:
            pass
    raise BadInput(f"{name} must be a list, got {type(value).__name__}; for example {example}")


def check_material(material):
    """Refuse a wood that is no material, or whose values are no numbers above zero.

    Parameters
    ----------
    material : structlib.ground.lumber.Material
        The wood [-].

    Returns
    -------
    structlib.ground.lumber.Material
        The wood, unchanged [-].

    Examples
    --------
    >>> from structlib.ground.lumber import find_material
    >>> check_material(find_material("Hem-Fir", "No.2")).grade
    'No.2'
    """
    check_record("material", material, Material, "find_material('Hem-Fir', 'No.2')")
    return check_design_values(
        material, "bending", "shear", "bearing", "modulus", "modulus_stability", "weight_density"
    )
