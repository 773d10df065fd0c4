"""Reads the answers that carry no unit: counts, ratios and single words."""

import re

from structlib.ground.reading import SPELLINGS, THOUSANDS, WRITTEN_OUT
from structlib.ground.refusals import BadInput

_GREATEST = 1e12
_NUMBER = rf"[+-]?(?:{THOUSANDS}|\d+)?(?:\.\d*)?(?:[eE][+-]?\d{{1,3}})?"
_COUNTED = "ply plies joist joists board boards piece pieces pcs stud studs jack jacks times fold x".split()
_UNITS = {*re.findall("[a-z]+", " ".join(" ".join(units) for units in (*SPELLINGS.values(), WRITTEN_OUT)))}
_PARTS = set("per cent half third quarter fifth less hundred thousand dozen twice and or".split())
_SPOKEN = (
    "zero one two three four five six seven eight nine ten eleven twelve thirteen fourteen "
    "fifteen sixteen seventeen eighteen nineteen twenty"
).split()
COMMA = "{!r} has a comma that can be read in two ways; write decimals with a point, for example 1.5"
"""What is answered to a number that may have a decimal comma."""
_DENIALS = set("not no nor neither never cannot except but isnt doesnt dont wont".split())
_SAME_WORD = {"deflection": "sag", "stiffness": "sag", "crushing": "bearing", "moment": "bending"}


def read_number(text):
    """Read a plain number, with commas between thousands and a point before decimals.

    Examples
    --------
    >>> read_number("1,250.5")
    1250.5
    """
    text = text.strip().replace("−", "-")
    if re.fullmatch(r"[+-]?(?:0+|\d+(?=,\d{1,2}$)),\d+", text):
        raise BadInput(COMMA.format(text))
    if not (re.fullmatch(_NUMBER, text, re.ASCII) and re.search(r"\d", text.lower().split("e")[0])):
        raise BadInput(f"{text!r} is not a number; write one, for example 1.5")
    number = float(text.replace(",", ""))
    if not abs(number) < _GREATEST:
        raise BadInput(f"{text!r} is too large a number to be meant; write one like 1.5")
    return number


def _without_words(text, said):
    """Take off the words behind a number that name what was asked; a unit or a denial stays."""
    words = text.split()
    heard = {*_COUNTED, *re.findall("[a-z]+", said.lower())} - _DENIALS - _PARTS - {*_SPOKEN}
    while len(words) > 1 and (last := words[-1].strip(".!")) in heard:
        if last in _UNITS and not words[-2].isalpha():  # behind a number "in" is a unit, behind a word not
            break
        words = words[:-1]
    return " ".join(words)


def read_count(text, said=""):
    """Read a whole number of things: ``3``, ``3 plies``, ``three``, ``17 joists``.

    Examples
    --------
    >>> read_count("three plies"), read_count("17")
    (3, 17)
    """
    plain = _without_words(text.lower().replace("-ply", " ply"), said)
    if plain in _SPOKEN:
        return _SPOKEN.index(plain)
    try:
        number = read_number(plain)
    except BadInput as refusal:
        if "," in plain:
            raise refusal
        raise BadInput(f"a count is asked, a whole number without a unit, for example 3; got {text!r}") from None
    if number != int(number):
        raise BadInput(f"a count is a whole number, nobody can buy {text.strip()}; round it the right way")
    return int(number)


def read_ratio(text, said=""):
    """Read how many times: ``8``, ``8x``, ``8 times stiffer``, ``800 %``, ``8:1``, ``8 to 1``.

    Examples
    --------
    >>> read_ratio("8x"), read_ratio("150 %"), read_ratio("3:2")
    (8.0, 1.5, 1.5)
    """
    plain = _without_words(text.lower().replace("×", "x"), said)
    if re.search(r"\d,\d", plain):  # no ratio here runs into thousands
        raise BadInput(COMMA.format(text.strip()))
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
        raise BadInput(f"a ratio is asked, a number without a unit, for example 1.5 or 150 %; got {text!r}") from None


def read_word(text, choices):
    """Read which of the choices a short text names.

    Examples
    --------
    >>> read_word("It is Shear.", ("bending", "shear"))
    'shear'
    >>> read_word("a collar tie", ("rafter tie", "between", "collar tie"))
    'collar tie'
    """
    plain = re.sub(r"['’]s\b", "", text.lower()).replace("'", "").replace("’", "")
    words = [_SAME_WORD.get(word, word) for word in re.findall(r"\w+", plain)]
    # a choice of two words is meant by both, or by the one that no other choice has
    parts = {choice: choice.split() for choice in choices}
    own = {c: [w for w in parts[c] if sum(w in other for other in parts.values()) == 1] for c in choices}
    named = [choice for choice in choices if any(_same(word, mine) for word in words for mine in own[choice])]
    if len(named) != 1 or _DENIALS.intersection(words):
        raise BadInput(f"answer with one of these: {', '.join(choices[:-1])} or {choices[-1]}")
    return named[0]


def _same(word, choice):
    return word.removesuffix("s") == choice.removesuffix("s")
