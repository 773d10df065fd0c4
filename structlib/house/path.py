"""The way of the load, from the ridge to the soil: what every part of a house receives, adds and hands on, by type.

Loads stay apart by type (dead, live, roof live, snow) and carry no factor. Joists and beams are solved, never
shared out by halves: where they are continuous, or one end hangs over, the statics says who gets what. Nothing is
judged here; `structlib.house.judging` does that, under a rulebook.
"""

from dataclasses import dataclass
from graphlib import CycleError, TopologicalSorter

import numpy

from structlib.ground.loads import LOAD_TYPES, LoadsByType
from structlib.ground.refusals import BadInput, check_choice
from structlib.ground.showing import show
from structlib.ground.units import ft
from structlib.house.influence import influence
from structlib.house.pieces import area_load, piece_of
from structlib.house.plan import SOIL, Beam, Level, Load, Opening, Pad, Post, Wall, check_house, with_changes

_SAME = 1e-3  # mm; two places closer than this are one


@dataclass(frozen=True)
class Share:
    """A load on its way, by type: on a point [N], along a line [N/mm] or over a rectangle [MPa] of the plan [mm]."""

    source: str
    to: str
    amount: tuple[float, float, float, float]
    x: float
    y: float
    x_end: float
    y_end: float

    @property
    def loads(self):
        """The load by type, as dense as the share is: N, N/mm or MPa."""
        return LoadsByType(dict(zip(LOAD_TYPES, self.amount)))

    @property
    def extent(self):
        """What the amount is multiplied by for its sum: 1, mm or mm2."""
        return ((self.x_end - self.x) or 1.0) * ((self.y_end - self.y) or 1.0)

    @property
    def sum_and_moments(self):
        """By type: the sum [N] and its moments about both axes of the plan [N*mm]; an array of 3 by 4."""
        total = numpy.array(self.amount) * self.extent
        return numpy.array([total, total * (self.x + self.x_end) / 2, total * (self.y + self.y_end) / 2])


@dataclass(frozen=True)
class Element:
    """One part on the load's way: the part, what it receives, what begins in it, and what it hands on.

    ``spans`` are the places of its supports along its own axis [mm], span by span; empty where it does not span.
    """

    part: object
    kind: str
    received: tuple[Share, ...]
    own: tuple[Share, ...]
    gives: tuple[Share, ...]
    spans: tuple[tuple[float, ...], ...] = ()

    @property
    def name(self):
        """The name of the part."""
        return self.part.name

    def total(self):
        """Return everything that it hands on, by type.

        Returns
        -------
        structlib.ground.loads.LoadsByType
            The sums [N].
        """
        total = sum((share.sum_and_moments[0] for share in self.gives), numpy.zeros(4))
        return LoadsByType(dict(zip(LOAD_TYPES, map(float, total))))


@dataclass(frozen=True)
class Path:
    """Every element of a house in the order of the load, from the top down."""

    house: object
    elements: tuple[Element, ...]

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
        for one in self.elements:
            if one.name == name:
                return one
        raise BadInput(f"nothing on the load's way is called {name!r}; there are "
                       + ", ".join(one.name for one in self.elements))

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
            raise BadInput(f"{self.house.name} has no opening; write [[openings]] as in a demo house")
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
            raise BadInput(f"{self.house.name} has no beam; write [[beams]] as in a demo house")
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
        if not start - _SAME <= at <= end + _SAME:
            raise BadInput(f"{name} reaches from {_text(start)} to {_text(end)} along it, got {_text(at)}")
        return min(max(at, start), end - _SAME)

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


def follow(house, changes=None):
    """Follow every load of a house down to the soil.

    Parameters
    ----------
    house : structlib.house.plan.House
        The house [-].
    changes : dict or None
        Fields of parts that differ from the house, by the part's name: a choice, or what was found on site [any].

    Returns
    -------
    Path
        Every element, from the top down, with what it receives and hands on by type [-].

    Raises
    ------
    BadInput
        When a load has no way down: the sentence says where.

    Examples
    --------
    >>> from structlib.ground.units import plf
    >>> from structlib.house.file import demo_house
    >>> path = follow(demo_house())
    >>> round(path.line_on("middle wall", 10 * ft)["live"] / plf)
    600
    """
    house = check_house(with_changes(house, changes or {}))
    parts = _all_parts(house)
    received, elements = {name: [] for name in parts}, []
    for name in _in_order(house, parts):
        one = _STEPS[type(parts[name])](parts[name], parts, tuple(received[name]))
        elements.append(one)
        for share in one.gives:
            if share.to != SOIL:
                received[share.to].append(share)
    return Path(house, tuple(elements))


# ---- what there is, and in which order it is met ----


def _all_parts(house):
    """Parts by name; the studs under both ends of an opening are posts of their own."""
    parts = {one.name: one for one in house.parts()}
    for one in house.openings:
        wall = parts.get(one.wall)
        if not isinstance(wall, Wall):
            raise BadInput(f"{one.name} is an opening in {one.wall!r}, and no wall is called that")
        for side, at, on in zip(("left", "right"), seats_of(one), (one.left_on, one.right_on)):
            x, y = (wall.at, at) if wall.runs == "along" else (at, wall.at)
            on = on or _under_wall(wall, at, parts, one.name)
            name = f"{one.name}, {side} post"
            if name in parts:
                raise BadInput(f"{name!r} is what the studs under {one.name} are called; give the other part of that name "
                               "another one")
            parts[name] = Post(name=name, on=on, x=x, y=y, height=one.height, wood=one.posts, plate=wall.plate)
    return parts


def seats_of(opening):
    """Return the middles of both seats of an opening's beam, along its wall.

    Parameters
    ----------
    opening : structlib.house.plan.Opening
        The opening [-].

    Returns
    -------
    tuple of (float, float)
        Left and right [mm].

    Examples
    --------
    >>> from structlib.house.file import demo_house
    >>> [round(at / ft, 3) for at in seats_of(demo_house().openings[0])]
    [14.0, 22.375]
    """
    end = opening.start + opening.clear_width
    return opening.start - opening.left_seat / 2, end + opening.right_seat / 2


def _under_wall(wall, at, parts, who):
    """What a wall rests on at one place, for a post that stands in it."""
    for name in wall.on:
        below = parts.get(name)
        holds = isinstance(below, (Wall, Beam)) and _in_line(wall, below) and below.start - _SAME <= at <= below.end + _SAME
        if holds or isinstance(below, Level):
            return name
    if SOIL in wall.on:
        return SOIL
    raise BadInput(f"{who} has nothing under its post at {_text(at)} along {wall.name}; name what {wall.name} rests on there")


def _in_order(house, parts):
    below = {}
    for name, part in parts.items():
        if isinstance(part, Opening):
            rests = (f"{name}, left post", f"{name}, right post")
        else:
            rests = _rests_on(part)
        for one in rests:
            if one != SOIL and one not in parts:
                raise BadInput(f"{name} rests on {one!r}, and nothing in the house is called that")
        below[name] = [one for one in rests if one != SOIL]
    for one in house.openings:
        below[one.wall].append(one.name)
    above = {name: [] for name in parts}
    for name, rests in below.items():
        for one in rests:
            above[one].append(name)
    try:
        return tuple(TopologicalSorter(above).static_order())
    except CycleError as error:
        raise BadInput("the house rests on itself: " + " under ".join(error.args[1])) from None


def _rests_on(part):
    if isinstance(part, Pad):
        return (SOIL,)
    return (part.on,) if isinstance(part, (Post, Load)) else part.on


# ---- one step for each kind of part ----


def _level(level, parts, received):
    lines = _lines_under(level, parts)
    places = sorted(lines)
    left, right = places[0] - level.left_overhang, places[-1] + level.right_overhang
    for share in received:
        if not left - _SAME <= share.x <= right + _SAME:
            raise BadInput(f"{share.source} stands on {level.name} by name, at {_text(share.x)} across the house, and its "
                           f"joists reach from {_text(left)} to {_text(right)}")
    own, gives = [], []
    for start, end in _stretches(level, lines, received):
        holders = {x: _holder(level, lines[x], x, start, end) for x in places}
        on_joist = [(share.amount, share.x, share.x) for share in received if share.y <= start and share.y_end >= end]
        for amount, left, right in _surfaces(level, places):
            own.append(Share(level.name, level.name, tuple(amount), left, start, right, end))
            on_joist.append((amount, left, right))
        for x, force in zip(places, _forces(places, level.joists, on_joist, level.name)):
            gives.append(Share(level.name, holders[x], tuple(map(float, force)), x, start, x, end))
    return Element(level, "level", received, tuple(own), tuple(gives), _spans(places, level.joists))


def _lines_under(level, parts):
    """The walls and beams that a level rests on, by their place across the house."""
    lines = {}
    for name in level.on:
        if name == SOIL or not isinstance(parts[name], (Wall, Beam)) or parts[name].runs != "along":
            raise BadInput(f"{level.name} rests on {name!r}; joists rest on walls and beams that run along the house")
        at = next((x for x in lines if abs(x - parts[name].at) < _SAME), parts[name].at)
        lines.setdefault(at, []).append(parts[name])
    roof = level.kind == "roof"
    most = len(lines) if not roof else 2 if level.ridge == "board" else 3  # a ridge beam stands between two walls
    if not 2 <= len(lines) <= most:
        asked = "at least two walls or beams" if not roof else "exactly two walls" if most == 2 else (
            "a ridge beam and one wall or two")
        raise BadInput(f"{level.name} must rest on {asked} that stand apart, got {', '.join(level.on) or 'none'}")
    return lines


def _stretches(level, lines, received):
    """The level cut along the house wherever what is under or on it begins or ends."""
    marks = {level.start, level.end}
    for one in (*(line for row in lines.values() for line in row), *received):
        ends = (one.start, one.end) if isinstance(one, (Wall, Beam)) else (one.y, one.y_end)
        marks |= {y for y in ends if level.start < y < level.end}
    for share in received:
        if share.y < level.start - _SAME or share.y_end > level.end + _SAME:
            raise BadInput(f"{share.source} stands on {level.name} and reaches past its end at "
                           f"{_text(share.y if share.y < level.start else share.y_end)} along the house")
    ordered = sorted(marks)
    return [(a, b) for a, b in zip(ordered, ordered[1:]) if b - a > _SAME]


def _holder(level, line, x, start, end):
    found = [one.name for one in line if one.start - _SAME <= start and one.end + _SAME >= end]
    if len(found) == 1:
        return found[0]
    where = f"{_text(x)} across the house, from {_text(start)} to {_text(end)} along it"
    if not found:
        raise BadInput(f"{level.name} has nothing under it at {where}; draw a wall or a beam there, or end the level")
    raise BadInput(f"{level.name} rests on {' and '.join(found)} at once at {where}; let one of them end there")


def _surfaces(level, places):
    """Loads by type over the plan of a level, with the ends of each part: (amount, left, right)."""
    left, right = places[0] - level.left_overhang, places[-1] + level.right_overhang
    if level.kind != "roof" or not level.slope[0]:
        return [(area_load(level, level.slope), left, right)]
    if level.ridge == "beam" and len(places) == 2:
        return [(area_load(level, level.slope), left, right)]  # one slope, from a wall up to the ridge beam
    ridge = places[1] if level.ridge == "beam" else level.ridge_at
    ridge = (places[0] + places[-1]) / 2 if ridge is None else ridge
    if not places[0] < ridge < places[-1]:
        raise BadInput(f"the ridge of {level.name} must stand between its walls, got {_text(ridge)} across the house")
    rise, run = level.slope
    other = rise * (ridge - places[0]) / (places[-1] - ridge)  # the other side falls from the same ridge
    return [(area_load(level, (rise, run)), left, ridge), (area_load(level, (other, run)), ridge, right)]


def _wall(wall, parts, received):
    below = [parts[name] for name in wall.on if name != SOIL]
    openings = sorted((one for one in parts.values() if isinstance(one, Opening) and one.wall == wall.name),
                      key=lambda one: one.start)
    _check_openings(wall, openings)
    over = [(*seats_of(one), one) for one in openings]
    marks = {wall.start, wall.end} | {y for first, last, _ in over for y in (first, last)}
    marks |= {y for one in below if isinstance(one, (Wall, Beam)) for y in (one.start, one.end)}
    lines = [share for share in received if share.x != share.x_end or share.y != share.y_end]
    marks |= {y for share in lines for y in along(wall, share)}
    ordered = sorted(y for y in marks if wall.start - _SAME <= y <= wall.end + _SAME)
    own, gives = [], []
    for a, b in zip(ordered, ordered[1:]):
        if b - a <= _SAME:
            continue
        opening = next((one for first, last, one in over if first - _SAME <= a and b <= last + _SAME), None)
        weight = wall.weight * (wall.height if opening is None else opening.wall_above)
        amount = sum((numpy.array(s.amount) for s in lines if _covers(along(wall, s), a, b)), numpy.array([weight, 0, 0, 0]))
        own.append(_on_axis(wall, wall.name, wall.name, (weight, 0.0, 0.0, 0.0), a, b))
        to = opening.name if opening else _line_below(wall, below, a, b)
        gives.append(_on_axis(wall, wall.name, to, tuple(amount), a, b))
    for share in received:
        if share not in lines:
            gives.append(_point_through(wall, share, over, below))
    return Element(wall, "wall", received, tuple(own), tuple(gives))


def _check_openings(wall, openings):
    last = wall.start
    for one in openings:
        first, end = one.start - one.left_seat, one.start + one.clear_width + one.right_seat
        if first < last - _SAME or end > wall.end + _SAME:
            raise BadInput(f"{one.name} with its seats reaches from {_text(first)} to {_text(end)} along {wall.name}, "
                           f"and there is room from {_text(last)} to {_text(wall.end)}")
        if one.height + one.wall_above > wall.height + _SAME:
            raise BadInput(f"{one.name} is {_text(one.height)} high with {_text(one.wall_above)} of wall above its beam; "
                           f"{wall.name} is {_text(wall.height)} high")
        last = end


def _line_below(wall, below, a, b):
    """What holds a wall between two places along it."""
    found = []
    for one in below:
        if isinstance(one, Level):
            if wall.runs != "along":
                raise BadInput(f"{wall.name} runs across the house on {one.name}; give it a wall or a beam below it")
            found.append(one.name)
        elif isinstance(one, (Wall, Beam)) and _in_line(wall, one) and one.start - _SAME <= a and b <= one.end + _SAME:
            found.append(one.name)
    if len(found) == 1 or (found and a == b) or (not found and SOIL in wall.on):  # where two meet, the first takes a point
        return found[0] if found else SOIL
    what = f"rests on {' and '.join(found)} at once" if found else "has nothing under it"
    raise BadInput(f"{wall.name} {what} from {_text(a)} to {_text(b)} along it; what is under a wall must be in line with it")


def _point_through(wall, share, over, below):
    """A point load on a wall: over an opening its beam takes it; masonry hands it on; studs need a post."""
    at = along(wall, share)[0]
    for first, last, opening in over:
        if first - _SAME <= at <= last + _SAME:
            return _on_axis(wall, wall.name, opening.name, share.amount, at, at)
    if wall.made_of == "masonry":
        to = _line_below(wall, below, at, at)
        return _on_axis(wall, wall.name, to, share.amount, at, at)
    raise BadInput(f"{share.source} comes down on {wall.name} at {_text(at)} along it, where no post takes it on; "
                   "add a post below it and name it in 'on'")


def _opening(opening, parts, received):
    wall, places = parts[opening.wall], seats_of(opening)
    names = (f"{opening.name}, left post", f"{opening.name}, right post")
    return _spanning(opening, "beam", wall, places, names, "cut", opening.beam, places, received)


def _beam(beam, parts, received):
    places, names = [], []
    for name in beam.on:
        places.append(_support_place(beam, parts[name] if name != SOIL else None))
        names.append(name)
    ordered = sorted(zip(places, names))
    places, names = [place for place, _ in ordered], [name for _, name in ordered]
    if len(places) < 2 or any(b - a < _SAME for a, b in zip(places, places[1:])):
        raise BadInput(f"{beam.name} must rest on at least two things that stand apart, got {', '.join(beam.on) or 'none'}")
    return _spanning(beam, "beam", beam, places, names, beam.joints, beam.wood, (beam.start, beam.end), received)


def _support_place(beam, part):
    """Where along a beam the thing stands that it rests on."""
    if isinstance(part, Post):
        line, at = (part.x, part.y) if beam.runs == "along" else (part.y, part.x)
        fits = abs(line - beam.at) < _SAME
    elif isinstance(part, (Wall, Beam)):
        at, fits = part.at, part.runs != beam.runs and part.start - _SAME <= beam.at <= part.end + _SAME
    else:
        raise BadInput(f"{beam.name} must rest on posts, walls or beams")
    if not fits or not beam.start - _SAME <= at <= beam.end + _SAME:
        raise BadInput(f"{beam.name} rests on {part.name}, which does not stand under it; see their places in the plan")
    return at


def _spanning(part, kind, axis, places, names, joints, wood, ends, received):
    """A beam: its own weight and what it received, brought to its supports."""
    own = []
    if wood is not None:
        piece = piece_of(wood)
        weight = piece.material.weight_density * piece.ply_width * piece.depth * piece.plies
        own.append(_on_axis(axis, part.name, part.name, (weight, 0.0, 0.0, 0.0), *ends))
    loads = []
    for share in (*received, *own):
        first, last = along(axis, share)
        if first < ends[0] - _SAME or last > ends[1] + _SAME:
            raise BadInput(f"{share.source} comes down beyond the end of {part.name}, at {_text(last)} along it")
        loads.append((share.amount, first, last))
    forces = _forces(places, joints, loads, part.name)
    gives = tuple(_on_axis(axis, part.name, name, tuple(force), at, at) for name, at, force in zip(names, places, forces))
    return Element(part, kind, received, tuple(own), gives, _spans(places, joints))


def _post(post, parts, received):
    own = []
    if post.wood is not None:
        piece = piece_of(post.wood)
        weight = piece.material.weight_density * piece.ply_width * piece.depth * piece.plies * post.height
        own.append(Share(post.name, post.name, (weight, 0.0, 0.0, 0.0), post.x, post.y, post.x, post.y))
    for share in received:
        if abs(share.x - post.x) > _SAME or abs(share.y - post.y) > _SAME:
            raise BadInput(f"{share.source} comes down {_text(max(abs(share.x - post.x), abs(share.y - post.y)))} "
                           f"beside {post.name}, which rests under it by name")
    return _handed_down(post, "post", received, own, parts)


def _load(load, parts, received):
    amount = (load.dead, load.live, load.roof_live, load.snow)
    if load.length:
        below = parts.get(load.on)
        line = parts[below.wall] if isinstance(below, Opening) else below
        if not isinstance(line, (Level, Wall, Beam)):
            raise BadInput(f"{load.name} is spread over {_text(load.length)}, so it must rest on a level, a wall or a beam")
        _check_over(load, below, parts, load.length)
        across = getattr(line, "runs", "along") == "across"
        ends = (load.x + load.length, load.y) if across else (load.x, load.y + load.length)
        spread = tuple(one / load.length for one in amount)
        own, given = (Share(load.name, to, spread, load.x, load.y, *ends) for to in (load.name, load.on))
        return Element(load, "load", received, (own,), (given,))
    return _handed_down(load, "load", received, [Share(load.name, load.name, amount, load.x, load.y, load.x, load.y)], parts)


def _pad(pad, parts, received):
    for share in received:
        if abs(share.x - pad.x) > pad.side / 2 or abs(share.y - pad.y) > pad.side / 2:
            raise BadInput(f"{share.source} comes down beside {pad.name}; move the pad under it")
    return Element(pad, "pad", received, (), tuple(
        Share(pad.name, SOIL, s.amount, s.x, s.y, s.x_end, s.y_end) for s in received))


def _check_over(part, below, parts, length=0.0):
    """A post or a load stands over the wall, the beam or the opening that it names, with all its length."""
    line = parts[below.wall] if isinstance(below, Opening) else below
    if not isinstance(line, (Wall, Beam)):
        return
    start, end = seats_of(below) if isinstance(below, Opening) else (line.start, line.end)
    axis, across = (part.y, part.x) if line.runs == "along" else (part.x, part.y)
    if abs(across - line.at) > _SAME or axis < start - _SAME or axis + length > end + _SAME:
        raise BadInput(f"{part.name} rests on {below.name} by name, and does not stand over it; see their places")


def _handed_down(part, kind, received, own, parts):
    """A post, or something heavy: all of it goes down at its own place."""
    below = parts.get(part.on)
    if isinstance(below, Level):
        raise BadInput(f"{part.name} stops at {below.name}, on joists or boards; name the post, the beam or the wall that "
                       "takes it on below the floor")
    if not (part.on == SOIL or isinstance(below, (Wall, Beam, Post, Pad, Opening))):
        raise BadInput(f"{part.name} rests on {part.on!r}, which carries no post")
    _check_over(part, below, parts)
    amount = sum((numpy.array(share.amount) for share in (*received, *own)), numpy.zeros(4))
    gives = (Share(part.name, part.on, tuple(map(float, amount)), part.x, part.y, part.x, part.y),)
    return Element(part, kind, received, tuple(own), gives)


_STEPS = {Level: _level, Wall: _wall, Opening: _opening, Beam: _beam, Post: _post, Pad: _pad, Load: _load}


# ---- statics along one axis ----


def _forces(places, joints, loads, who):
    """What each support gets, by type: an array for each, from loads as (amount, start, end) along the axis."""
    total = [numpy.zeros(4) for _ in places]
    for amount, start, end in loads:
        if not any(amount):
            continue
        for index, part in enumerate(influence(tuple(places), joints, start, end)):
            total[index] = total[index] + numpy.array(amount) * part
    return total


def _spans(places, joints):
    places = tuple(places)
    return (places,) if joints == "continuous" else tuple(zip(places, places[1:]))


def along(axis, share):
    """Tell where a share begins and ends along a wall or a beam.

    Parameters
    ----------
    axis : structlib.house.plan.Wall or structlib.house.plan.Beam
        On whose line it lies [-].
    share : Share
        The share [-].

    Returns
    -------
    tuple of (float, float)
        Start and end [mm].

    Examples
    --------
    >>> from structlib.house.file import demo_house
    >>> along(demo_house().part("main beam"), Share("a", "b", (1.0, 0.0, 0.0, 0.0), 0.0, 5.0, 0.0, 9.0))
    (5.0, 9.0)
    """
    return (share.y, share.y_end) if axis.runs == "along" else (share.x, share.x_end)


def _on_axis(axis, source, to, amount, start, end):
    """A share on the line of a wall or a beam."""
    if axis.runs == "along":
        return Share(source, to, tuple(map(float, amount)), axis.at, start, axis.at, end)
    return Share(source, to, tuple(map(float, amount)), start, axis.at, end, axis.at)


def _covers(stretch, a, b):
    return stretch[0] - _SAME <= a and b <= stretch[1] + _SAME


def _in_line(one, other):
    return one.runs == other.runs and abs(one.at - other.at) < _SAME


def _text(length):
    return show(length, "length")
