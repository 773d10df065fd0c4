"""Reads the answers that carry no unit: counts, ratios and single words."""

import re

from structlib.ground.refusals import BadInput

_GREATEST = 1e12
_NUMBER = r"[+-]?(?:\d{1,3}(?:,\d{3})+|\d+)?(?:\.\d*)?(?:[eE][+-]?\d{1,3})?"
_COUNTED = "ply plies joist joists board boards piece pieces pcs stud studs jack jacks".split()
_SPOKEN = (
    "zero one two three four five six seven eight nine ten eleven twelve thirteen fourteen "
    "fifteen sixteen seventeen eighteen nineteen twenty"
).split()
_DENIALS = set("not no nor neither never cannot except but isnt doesnt dont wont".split())
_SAME_WORD = {"deflection": "sag", "stiffness": "sag", "crushing": "bearing", "moment": "bending"}


def read_number(text):
    """Read a plain number, with commas between thousands and a point before decimals.

    Parameters
    ----------
    text : str
        What was typed [-].

    Returns
    -------
    float
        The number [-].

    Raises
    ------
    BadInput
        When it is not one plain number.

    Examples
    --------
    >>> read_number("1,250.5")
    1250.5
    """
    text = text.strip().replace("−", "-")
    if re.fullmatch(r"[+-]?\d+,\d{1,2}", text):
        raise BadInput(f"{text!r} can be read in two ways; write decimals with a point, for example 1.5")
    if not (re.fullmatch(_NUMBER, text, re.ASCII) and re.search(r"\d", text.lower().split("e")[0])):
        raise BadInput(f"{text!r} is not a number; write one, for example 1.5")
    number = float(text.replace(",", ""))
    if not abs(number) < _GREATEST:
        raise BadInput(f"{text!r} is too large a number to be meant; write one like 1.5")
    return number


def read_count(text):
    """Read a whole number of things: ``3``, ``3 plies``, ``three``, ``17 joists``.

    Parameters
    ----------
    text : str
        What was typed [-].

    Returns
    -------
    int
        The count [-].

    Raises
    ------
    BadInput
        When it is not a whole number, or a unit stands behind it.

    Examples
    --------
    >>> read_count("three plies"), read_count("17")
    (3, 17)
    """
    words = text.lower().replace("-ply", " ply").split()
    if len(words) > 1 and words[-1].strip(".") in _COUNTED:
        words = words[:-1]
    plain = " ".join(words)
    if plain in _SPOKEN:
        return _SPOKEN.index(plain)
    try:
        number = read_number(plain)
    except BadInput:
        raise BadInput(
            f"a count is asked, a whole number without a unit, for example 3; got {text!r}"
        ) from None
    if number != int(number):
        raise BadInput(f"a count is a whole number, nobody can buy {text.strip()}; round it the right way")
    return int(number)


def read_ratio(text):
    """Read how many times: ``8``, ``8x``, ``8 times``, ``800 %``, ``8:1``, ``8 to 1``.

    Parameters
    ----------
    text : str
        What was typed [-].

    Returns
    -------
    float
        The ratio [-].

    Raises
    ------
    BadInput
        When it is no ratio, or a unit stands behind it.

    Examples
    --------
    >>> read_ratio("8x"), read_ratio("150 %"), read_ratio("3:2")
    (8.0, 1.5, 1.5)
    """
    plain = text.lower().replace("×", "x").strip()
    parts = re.split(r"\s*(?::|/|\bto\b)\s*", plain)
    if len(parts) == 2 and all(parts):
        top, bottom = (_read_times(part, text) for part in parts)
        if bottom == 0:
            raise BadInput(f"{text.strip()!r} divides by zero; write a ratio such as 3:2")
        return top / bottom
    return _read_times(plain, text)


def _read_times(plain, text):
    percent = re.sub(r"\s*(%|per ?cent)$", "", plain)
    times = re.sub(r"^x\s*|\s*(x|times|[- ]?fold)$", "", plain)
    try:
        return read_number(percent) / 100 if percent != plain else read_number(times)
    except BadInput:
        raise BadInput(
            f"a ratio is asked, a number without a unit, for example 1.5 or 150 %; got {text!r}"
        ) from None


def read_word(text, choices):
    """Read which of the choices a short text names.

    Parameters
    ----------
    text : str
        What was typed [-].
    choices : tuple of str
        The words that may be answered [-].

    Returns
    -------
    str
        One of the choices [-].

    Raises
    ------
    BadInput
        When none or several are named, or the text denies one.

    Examples
    --------
    >>> read_word("It is Shear.", ("bending", "shear"))
    'shear'
    """
    words = re.findall(r"\w+", text.lower().replace("'", "").replace("’", ""))
    meant = {_SAME_WORD.get(word, word) for word in words}
    named = [choice for choice in choices if choice in meant]
    if len(named) != 1 or _DENIALS.intersection(words):
        raise BadInput(f"answer with one word: {', '.join(choices[:-1])} or {choices[-1]}")
    return named[0]
