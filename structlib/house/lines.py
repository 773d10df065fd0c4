"""Where a house was read: its file is kept with it, so that a fault found later still names its line."""

import re
import tomllib
from contextlib import contextmanager
from dataclasses import dataclass

from structlib.ground.refusals import BadInput


@dataclass(frozen=True)
class Source:
    """The text of a house file and how a message names it."""

    name: str
    text: str

    def named(self, error):
        """Return a fault with the line that it is about before its sentence.

        Parameters
        ----------
        error : BadInput
            The fault; it says its keys in the file, or its part and field [-].

        Returns
        -------
        BadInput
            The same fault, by file and line; by file alone where no line can be told [-].

        Examples
        --------
        >>> text = '[[walls]]\\nname = "east"\\non = []'
        >>> str(Source("my.toml", text).named(BadInput("east floats").about("east", "on")))
        'line 3 of my.toml: east floats'
        """
        keys = error.keys or self._keys_of(error.part, error.field)
        line = line_of(self.text, keys) if keys else 0
        return BadInput(f"line {line} of {self.name}: {error}" if line else f"{self.name}: {error}")

    def _keys_of(self, part, field):
        """Keys of a part by its name; the studs under an opening are found at the opening; a house at its own name."""
        if not part:
            return ()
        data = tomllib.loads(self.text)
        names = {f"the {group}": (group,) for group in data}  # a group without a name of its own
        names |= {
            row.get("name"): (group, number)
            for group, rows in data.items()
            if isinstance(rows, list)
            for number, row in enumerate(rows)
            if isinstance(row, dict)
        }
        opening, _, side = part.rpartition(", ")  # the studs under an opening are told of in it
        told = {"on": f"{side.partition(' ')[0]}_on", "wood": "posts"}.get(field, field)
        for name, key in ((part, field), (opening, told)):
            if name in names:
                return (*names[name], key)
        return ("name",) if part == data.get("name") else ()


@contextmanager
def naming_lines(house):
    """Within it, a fault of a part of the house names the line of its file, where it was read from one.

    Parameters
    ----------
    house : structlib.house.plan.House
        The house [-].

    Returns
    -------
    contextlib.AbstractContextManager
        What 'with' takes [-].

    Examples
    --------
    >>> from structlib.house.file import demo_house
    >>> with naming_lines(demo_house()):
    ...     raise BadInput("it leans").about("middle wall", "at")
    Traceback (most recent call last):
    ...
    structlib.ground.refusals.BadInput: line 127 of alder_lane.toml: it leans
    """
    try:
        yield
    except BadInput as error:
        if house.source is None or not error.part:
            raise
        raise house.source.named(error) from None


def line_of(text, keys):
    """Return the line on which a field stands.

    Parameters
    ----------
    text : str
        The file [-].
    keys : tuple of (str or int)
        Its keys, such as ('levels', 1, 'live') [-].

    Returns
    -------
    int
        The line; that of its group where it is not written, 0 where that cannot be told either [-].

    Examples
    --------
    >>> line_of('name = "x"\\n[[levels]]\\nlive = "40"', ("levels", 0, "live"))
    3
    """
    counts, open_group, best = {}, (), 0
    for number, line in enumerate(text.splitlines(), 1):
        words = line.split("#")[0].strip()
        if words.startswith("["):
            key = tuple(words.strip("[] ").split("."))
            if words.startswith("[["):
                counts[key] = counts.get(key, -1) + 1
                for other in [one for one in counts if one[: len(key)] == key and one != key]:
                    del counts[other]
            open_group = tuple(
                part for i in range(len(key)) for part in (key[i], counts.get(key[: i + 1])) if part is not None
            )
            if open_group == keys[: len(open_group)]:
                best = number
        elif words and open_group == keys[: len(open_group)] and len(keys) > len(open_group):
            if re.split(r"[=.]", words)[0].strip(" '\"") == keys[len(open_group)]:
                return number
    return best
