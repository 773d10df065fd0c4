"""What is asked of a roof: its rafters, what ties them, its ridge; and the gates of a roof that nothing holds."""

from structlib.house.roofs import NOTHING


def rafters(path, element, rulebook):
    """Return what is asked of the rafters of a roof and of what holds them.

    Parameters
    ----------
    path : structlib.house.path.Path
        The path [-].
    element : structlib.house.shares.Element
        The roof [-].
    rulebook : structlib.rules.check.Rulebook
        The rules [-].

    Returns
    -------
    tuple of list
        Members with their demands, gates, notes [-].

    Examples
    --------
    >>> from structlib.house.file import demo_house
    >>> from structlib.house.path import follow
    >>> from structlib.rules.choice import RULEBOOK
    >>> path = follow(demo_house(), {"roof": {"tied_by": ""}})
    >>> rafters(path, path.element("roof"), RULEBOOK)[1][0][:58]
    'Nothing that is written holds the rafters of roof together'
    """
    level, pair = element.part, element.pair
    gates = []
    if pair is not None and pair.held_by == NOTHING:
        gates.append(f"Nothing that is written holds the rafters of {level.name} together: they push {' and '.join(level.on)} "
                     "apart. Write a tie, the level whose joists tie them, or a ridge beam; its push stands.")
    return [], gates, [f"{level.name} is judged on the page of the roof, with its thrust"]
