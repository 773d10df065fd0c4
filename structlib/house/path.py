"""The way of the load, from the ridge to the soil: what every part of a house receives, adds and hands on, by type.

Loads stay apart by type (dead, live, roof live, snow) and carry no factor. Joists and beams are solved, never
shared out by halves: where they are continuous, or one end hangs over, the statics says who gets what. Nothing is
judged here; `structlib.house.judging` does that, under a rulebook.
"""

from dataclasses import dataclass, field
from functools import cached_property, lru_cache
from graphlib import CycleError, TopologicalSorter

import numpy

from structlib.ground.loads import LOAD_TYPES, LoadsByType
from structlib.ground.refusals import BadInput, check_choice
from structlib.ground.units import ft  # noqa: F401 (used in the examples)
from structlib.house.lines import naming_lines
from structlib.house.parts import Parts
from structlib.house.plan import SOIL, Beam, Level, Load, Opening, Pad, Post, Wall, check_house, with_changes
from structlib.house.roofs import thrust_of
from structlib.house.shares import SAME, Element, along, in_line, text_of
from structlib.house.steps import STEPS, seats_of


@dataclass(frozen=True)
class Path:
    """Every element of a house in the order of the load, from the top down.

    ``seen`` is by element what its step looked at, so that `follow` can take it over after a change.
    """

    house: object
    elements: tuple[Element, ...]
    seen: dict = field(default_factory=dict, compare=False, repr=False)

    def element(self, name):
        """Return one element by its name.

        Parameters
        ----------
        name : str
            The part's name [-].

        Returns
        -------
        Element
            The element; the names are listed where there is none [-].
        """
        if isinstance(name, str) and name in self.by_name:
            return self.by_name[name]
        raise BadInput(f"nothing on the load's way is called {name!r}; there are {', '.join(self.by_name)}")

    @cached_property
    def by_name(self):
        """Its elements by their names."""
        return {one.name: one for one in self.elements}

    @property
    def into_the_soil(self):
        """What reaches the soil, share by share."""
        return tuple(share for one in self.elements for share in one.gives if share.to == SOIL)

    def axis(self, name):
        """Return the wall or beam on whose line an element lies.

        Parameters
        ----------
        name : str
            The element's name [-].

        Returns
        -------
        structlib.house.plan.Wall or structlib.house.plan.Beam
            The part [-].
        """
        part = self.element(name).part
        return self.house.part(part.wall) if isinstance(part, Opening) else part

    def opening(self, name=None):
        """Return one opening of the house.

        Parameters
        ----------
        name : str or None
            Its name; the first one when None [-].

        Returns
        -------
        structlib.house.plan.Opening
            The opening; a house without any is asked for one [-].
        """
        if not self.house.openings:
            with naming_lines(self.house):
                raise BadInput(f"{self.house.name} has no opening; write [[openings]] as in a demo house").about(
                    self.house.name
                )
        names = [one.name for one in self.house.openings]
        return self.house.openings[0 if name is None else names.index(check_choice("opening", name, names))]

    def first_bay(self):
        """Return the first beam and the middle of its first span along it.

        Returns
        -------
        tuple of (str, float)
            Name and place [-, mm].
        """
        beam = next((one for one in self.elements if isinstance(one.part, Beam)), None)
        if beam is None:
            with naming_lines(self.house):
                raise BadInput(f"{self.house.name} has no beam; write [[beams]] as in a demo house").about(
                    self.house.name
                )
        return beam.name, (beam.spans[0][0] + beam.spans[0][1]) / 2

    def place_on(self, name, at):
        """Return a place along an element, for its stretches: each holds its own start, and the last one its end too.

        Parameters
        ----------
        name : str
            The element [-].
        at : float
            The place; one beyond the element is refused [mm].

        Returns
        -------
        float
            The place, at the far end just inside it [mm].
        """
        part, axis = self.element(name).part, self.axis(name)
        start, end = seats_of(part) if isinstance(part, Opening) else (axis.start, axis.end)
        if not start - SAME <= at <= end + SAME:
            raise BadInput(f"{name} reaches from {text_of(start)} to {text_of(end)} along it, got {text_of(at)}")
        return min(max(at, start), end - SAME)

    def line_on(self, name, at):
        """Return what comes down on a wall, a beam or an opening at one place along it, by type.

        Parameters
        ----------
        name : str
            The element [-].
        at : float
            The place [mm].

        Returns
        -------
        structlib.ground.loads.LoadsByType
            The line load [N/mm].
        """
        axis, amount, at = self.axis(name), numpy.zeros(4), self.place_on(name, at)
        for share in self.element(name).received:
            start, end = along(axis, share)
            if start <= at < end:
                amount = amount + share.amount
        return LoadsByType(dict(zip(LOAD_TYPES, map(float, amount))))

    def thrust(self, name, at=None):
        """Return what the rafters of a roof push with, by type, and the pull of what ties them.

        Parameters
        ----------
        name : str
            The roof [-].
        at : float or None
            The place along the house; where it pushes most when None [mm].

        Returns
        -------
        structlib.house.roofs.Thrust
            For each mm of wall and for each pair; zero on a ridge beam [N/mm, N].
        """
        element = self.element(name)
        tied_by = getattr(element.part, "tied_by", "")
        return thrust_of(element, self.house.part(tied_by) if tied_by else None, at)


def follow(house, changes=None, before=None):
    """Follow every load of a house down to the soil.

    Parameters
    ----------
    house : structlib.house.plan.House
        The house [-].
    changes : dict or None
        Fields of parts that differ from the house, by the part's name: a choice, or what was found on site [any].
    before : Path or None
        The path before the change, of any house: elements whose part, loads and neighbours are the same are taken over
        from it, so that only what a change touches is followed again. What comes out is the same [-].

    Returns
    -------
    Path
        Every element, from the top down, with what it receives and hands on by type [-].

    Examples
    --------
    >>> from structlib.ground.units import plf
    >>> from structlib.house.file import demo_house
    >>> path = follow(demo_house())
    >>> round(path.line_on("middle wall", 10 * ft)["live"] / plf)
    600
    """
    house = check_house(with_changes(house, changes or {}))
    with naming_lines(house):
        return _followed(house, before)


def _followed(house, before):
    plain = _all_parts(house)
    parts, received, elements, seen = Parts(plain), {name: [] for name in plain}, [], {}
    known = {} if before is None else {one.name: one for one in before.elements}
    for name in _in_order(house, plain):
        part, came, one = plain[name], tuple(received[name]), known.get(name)
        if one is not None and one.part == part and one.received == came and parts.still(before.seen[name]):
            seen[name] = before.seen[name]
        else:
            parts.seen = seen[name] = {}
            try:
                one = STEPS[type(part)](part, parts, came)
            except BadInput as error:
                raise error.about(name) from None
        elements.append(one)
        for share in one.gives:
            if share.to != SOIL:
                received[share.to].append(share)
    return Path(house, tuple(elements), seen)


# ---- what there is, and in which order it is met ----


def _all_parts(house):
    """Parts by name; the studs under both ends of an opening are posts of their own."""
    parts = {one.name: one for one in house.parts()}
    for one in house.openings:
        wall = parts.get(one.wall)
        if not isinstance(wall, Wall):
            fault = BadInput(f"{one.name} is an opening in {one.wall!r}, and no wall is called that")
            raise fault.about(one.name, "wall")
        for side, at, on in zip(("left", "right"), seats_of(one), (one.left_on, one.right_on)):
            x, y = (wall.at, at) if wall.runs == "along" else (at, wall.at)
            on = on or _under_wall(wall, at, parts, one.name)
            name = f"{one.name}, {side} post"
            if name in parts:
                raise BadInput(
                    f"{name!r} is what the studs under {one.name} are called; give the other part of that name "
                    "another one"
                ).about(name, "name")
            parts[name] = Post(name=name, on=on, x=x, y=y, height=one.height, wood=one.posts, plate=wall.plate)
    return parts


def _under_wall(wall, at, parts, who):
    """What a wall rests on at one place, for a post that stands in it."""
    for name in wall.on:
        below = parts.get(name)
        holds = (
            isinstance(below, (Wall, Beam)) and in_line(wall, below) and below.start - SAME <= at <= below.end + SAME
        )
        if holds or isinstance(below, Level):
            return name
    if SOIL in wall.on:
        return SOIL
    raise BadInput(
        f"{who} has nothing under its post at {text_of(at)} along {wall.name}; name what {wall.name} rests on there"
    ).about(wall.name, "on")


def _in_order(house, parts):
    below = {}
    for name, part in parts.items():
        if isinstance(part, Opening):
            rests = (f"{name}, left post", f"{name}, right post")
        else:
            rests = _rests_on(part)
        for one in rests:
            if one != SOIL and one not in parts:
                raise BadInput(f"{name} rests on {one!r}, and nothing in the house is called that").about(name, "on")
        below[name] = [one for one in rests if one != SOIL]
    for one in house.openings:
        below[one.wall].append(one.name)
    return _sorted(tuple((name, tuple(rests)) for name, rests in below.items()))


@lru_cache(maxsize=64)
def _sorted(below):
    """The names of parts from the top down, each with what it rests on."""
    above = {name: [] for name, _ in below}
    for name, rests in below:
        for one in rests:
            above[one].append(name)
    try:
        return tuple(TopologicalSorter(above).static_order())
    except CycleError as error:
        fault = BadInput("the house rests on itself: " + " under ".join(error.args[1]))
        raise fault.about(error.args[1][0], "on") from None


def _rests_on(part):
    if isinstance(part, Pad):
        return (SOIL,)
    return (part.on,) if isinstance(part, (Post, Load)) else part.on
