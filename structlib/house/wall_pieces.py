"""A wall of a house as up to three walls in line, so that a stretch of it can be taken out; nothing moves by that."""

from dataclasses import replace

from structlib.ground.refusals import BadInput, check_number
from structlib.ground.units import ft  # noqa: F401 (used in the examples)
from structlib.house.plan import Beam, Load, Opening, Post
from structlib.house.shares import SAME, text_of
from structlib.house.steps import seats_of


def in_pieces(house, wall, start, end):
    """Return the house with a wall along it as the stretch in question, which keeps its name, and what stays beside it.

    Parameters
    ----------
    house : structlib.house.plan.House
        The house [-].
    wall : structlib.house.plan.Wall
        The wall [-].
    start, end : float
        The stretch along the wall [mm].

    Returns
    -------
    structlib.house.plan.House
        The house; what named the wall names the pieces that are under it [-].

    Examples
    --------
    >>> from structlib.house.file import demo_house
    >>> house = demo_house()
    >>> cut = in_pieces(house, house.part("middle wall"), 12 * ft, 24 * ft)
    >>> [one.name for one in cut.walls if one.name.startswith("middle wall")]
    ['middle wall, before', 'middle wall', 'middle wall, beyond']
    """
    for name, value in (("start", start), ("end", end)):
        check_number(name, value, low=wall.start, high=wall.end, shown=text_of, hint="a place along the wall, as 12*ft")
    if end - start <= SAME:
        raise BadInput(f"the stretch of {wall.name} ends where it starts or before; give an end beyond its start")
    pieces = [
        replace(wall, name=name, start=a, end=b)
        for name, a, b in (
            (f"{wall.name}, before", wall.start, start),
            (wall.name, start, end),
            (f"{wall.name}, beyond", end, wall.end),
        )
        if b - a > SAME
    ]

    def one_over(part, a, b):
        """The piece under all of what lies from one place to another."""
        found = [one.name for one in pieces if one.start - SAME <= a and b <= one.end + SAME]
        if not found:
            raise BadInput(
                f"{part.name} reaches from {text_of(a)} to {text_of(b)} along {wall.name}, over an end of what comes out of it; "
                "give a stretch that holds all of it, or nothing of it"
            ).about(part.name)
        return found[0]

    def over(part):
        """What a part rests on, by the pieces."""
        if isinstance(part, Opening):
            line = house.part(part.wall)
            ends = [at if line.runs == "along" else line.at for at in seats_of(part)]
            under = dict(zip(("left_on", "right_on"), ends))
            new = {key: one_over(part, y, y) for key, y in under.items() if getattr(part, key) == wall.name}
            if part.wall == wall.name:
                last = part.start + part.clear_width + part.right_seat
                new["wall"] = one_over(part, part.start - part.left_seat, last)
            return replace(part, **new) if new else part
        if wall.name not in named_under(part):
            return part
        if isinstance(part, (Post, Load)):
            return replace(part, on=one_over(part, part.y, part.y + getattr(part, "length", 0.0)))
        if isinstance(part, Beam):  # it comes down on the wall at one place
            under = (one_over(part, part.at, part.at),)
        else:
            under = tuple(one.name for one in pieces if one.start < part.end - SAME and one.end > part.start + SAME)
        return replace(part, on=tuple(name for old in part.on for name in (under if old == wall.name else (old,))))

    walls = [new for one in house.walls for new in (pieces if one is wall else (over(one),))]
    lists = {name: tuple(map(over, getattr(house, name))) for name in ("levels", "openings", "beams", "posts", "loads")}
    return replace(house, walls=tuple(walls), **lists).read_from(house.source)


def named_under(part):
    """Return the names of what a part rests on.

    Parameters
    ----------
    part : object
        A part of a house [-].

    Returns
    -------
    tuple of str
        The names [-].

    Examples
    --------
    >>> from structlib.house.file import demo_house
    >>> named_under(demo_house().part("north post"))
    ('north pad',)
    """
    on = getattr(part, "on", ())
    return (on,) if isinstance(on, str) else on
