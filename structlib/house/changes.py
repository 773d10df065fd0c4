"""What a change of a house moves: the same house followed twice, part by part."""

from dataclasses import dataclass

from structlib.ground.loads import LOAD_TYPES, LoadsByType

_SAME = 1e-9  # of the load: less is rounding


@dataclass(frozen=True)
class Difference:
    """One part of a house, and what it hands on before and after a change, by type [N]; None where it is not there."""

    name: str
    before: LoadsByType | None
    after: LoadsByType | None


def differences(before, after):
    """Return every part that hands on something else after a change of its house.

    Parameters
    ----------
    before, after : structlib.house.path.Path
        The house as it was, and as it is changed or found on site, both followed [-].

    Returns
    -------
    tuple of Difference
        In the order of the load after the change; parts that are gone come last [-].

    Examples
    --------
    >>> from structlib.ground.units import lb
    >>> from structlib.house.file import demo_house
    >>> from structlib.house.path import follow
    >>> found = differences(follow(demo_house()), follow(demo_house(), {"upper floor": {"joists": "continuous"}}))
    >>> [one.name for one in found if one.name.endswith("pad")]
    ['north pad', 'middle pad', 'south pad']
    >>> wall = next(one for one in found if one.name == "middle wall")
    >>> round((wall.after["live"] - wall.before["live"]) / lb)  # spans of 11 and 13 ft: a quarter more than the halves
    2590
    """
    was = {one.name: one.total() for one in before.elements}
    now = {one.name: one.total() for one in after.elements}
    names = (*now, *(name for name in was if name not in now))
    found = (Difference(name, was.get(name), now.get(name)) for name in names)
    return tuple(one for one in found if not _alike(one.before, one.after))


def _alike(one, other):
    if one is None or other is None:
        return False
    return all(abs(one[kind] - other[kind]) <= _SAME * max(abs(one[kind]), 1.0) for kind in LOAD_TYPES)
