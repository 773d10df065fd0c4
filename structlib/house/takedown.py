"""What comes down on one wall or beam, level by level, read off the path; with a check that nothing is lost."""

from dataclasses import dataclass, replace

from structlib.ground.loads import LOAD_TYPES, LoadsByType
from structlib.house.influence import influence
from structlib.house.plan import Level
from structlib.house.shares import along


@dataclass(frozen=True)
class LevelShare:
    """What one level brings to a wall at one place along it.

    ``area`` is its load by type [MPa of plan]; ``left_width`` and ``right_width`` the widths of it whose load lands
    on the wall [mm]; ``line`` its load on the wall by type [N/mm]; ``wall`` the weight of the wall that stands under
    this level [N/mm]; ``running`` the sum from the top down to here [N/mm]. ``entered`` and ``elsewhere`` are what
    the level holds in all and what goes to other supports [N/mm].
    """

    name: str
    kind: str
    joists: str
    area: LoadsByType
    left_width: float
    right_width: float
    line: LoadsByType
    wall: float
    running: LoadsByType
    entered: float
    elsewhere: float


@dataclass(frozen=True)
class TakeDown:
    """Every level's share, the total on the wall by type [N/mm], and what the sum check leaves over [N/mm].

    ``others`` are what no level brings, by name: a wall that holds none, something heavy spread along [N/mm].
    """

    shares: tuple[LevelShare, ...]
    total: LoadsByType
    left_over: float
    others: tuple[tuple[str, LoadsByType], ...] = ()


def take_down(path, name, at):
    """Tell what comes down on one wall, beam or opening at one place along it, level by level.

    Parameters
    ----------
    path : structlib.house.path.Path
        The house, followed [-].
    name : str
        The wall, beam or opening; its own weight is not in it [-].
    at : float
        The place along it [mm].

    Returns
    -------
    TakeDown
        Share of each level from the top down, the total by type, and what the sum check leaves over [-].

    Examples
    --------
    >>> from structlib.ground.units import ft, plf
    >>> from structlib.house.file import demo_house
    >>> from structlib.house.path import follow
    >>> round(take_down(follow(demo_house()), "main beam", 3 * ft).total["live"] / plf)
    1080
    """
    found, others, at = {}, {}, path.place_on(name, at)
    order = [one.name for one in path.house.levels]
    _gather(path, name, at, order, found, others)
    shares, running, left_over = [], LoadsByType(), 0.0
    last = max((order.index(one) for one in found), default=-1)
    for level in path.house.levels[: last + 1]:
        if not level.start <= at < level.end:
            continue  # it lies beside this place
        line, wall, x = found.get(level.name, (LoadsByType(), 0.0, None))
        share = _share(path.element(level.name), level, line, wall, x, at)
        running = running + line + LoadsByType({"dead": wall})
        left_over += share.entered - line.sum_for_equilibrium_only() - share.elsewhere
        shares.append(replace(share, running=running))
    return TakeDown(tuple(shares), sum(others.values(), running), left_over, tuple(others.items()))


def _gather(path, name, at, order, found, others):
    """Collect, by level, what it brings here: its load by type, the walls under it, and where across the house."""
    for share in path.element(name).received:
        start, end = along(path.axis(name), share)
        if not start <= at < end:
            continue
        source, above = path.element(share.source), {}
        if isinstance(source.part, Level):
            above[source.name] = (share.loads, 0.0, share.x)
        elif source.kind == "wall":
            _gather(path, source.name, at, order, above, others)
            own = sum(
                one.amount[0] for one in source.own if along(source.part, one)[0] <= at < along(source.part, one)[1]
            )
            if above:  # it stands under the lowest of what it holds
                line, wall, x = above[lowest := max(above, key=order.index)]
                above[lowest] = (line, wall + own, x)
            elif own:
                others[source.name] = LoadsByType({"dead": own})
        else:
            others[source.name] = share.loads
        for level, (line, wall, x) in above.items():
            before = found.get(level, (LoadsByType(), 0.0, x))
            found[level] = (before[0] + line, before[1] + wall, x)


def _share(element, level, line, wall, x, at):
    """One level's row, without the running sum."""
    here = lambda shares: [one for one in shares if one.y <= at < one.y_end]  # noqa: E731
    own = here(element.own)
    walls_on = sum(sum(one.amount) for one in here(element.received))
    entered = walls_on + sum(sum(one.amount) * (one.x_end - one.x) for one in own)
    given = sum(sum(one.amount) for one in here(element.gives))
    widths = (0.0, 0.0) if x is None else widths_on(element, x)
    area = LoadsByType(dict(zip(LOAD_TYPES, own[0].amount)))
    return LevelShare(
        level.name,
        level.kind,
        level.joists,
        area,
        *widths,
        line,
        wall,
        LoadsByType(),
        entered,
        given - line.sum_for_equilibrium_only(),
    )


def widths_on(element, x):
    """Return how much of a level's width, to the left and to the right of a wall, lands on that wall.

    Parameters
    ----------
    element : structlib.house.path.Element
        The level [-].
    x : float
        Where the wall stands across the house [mm].

    Returns
    -------
    tuple of (float, float)
        Width on the left and on the right [mm].

    Notes
    -----
    Cut joists bring half of each span, continuous ones more, and an overhang takes from the far end by leverage:
    it is the statics of the path itself.

    Examples
    --------
    >>> from structlib.ground.units import ft
    >>> from structlib.house.file import demo_house
    >>> from structlib.house.path import follow
    >>> [round(width / ft, 3) for width in widths_on(follow(demo_house()).element("upper floor"), 11 * ft)]
    [5.5, 6.5]
    """
    places = tuple(sorted({at for span in element.spans for at in span}))
    which = min(range(len(places)), key=lambda index: abs(places[index] - x))
    left, right = min(one.x for one in element.own), max(one.x_end for one in element.own)
    found = []
    for start, end in ((left, places[which]), (places[which], right)):
        found.append(influence(places, element.part.joists, start, end)[which] if end - start > 1e-3 else 0.0)
    return tuple(found)
