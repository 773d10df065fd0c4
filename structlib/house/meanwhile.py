"""A wall of a house is out: temporary walls beside it catch the joists. The way of the load then, and what is asked of each.

Demands only, by type and without a factor: nothing here sizes or chooses what holds a house meanwhile.
"""

from dataclasses import dataclass, replace
from functools import cached_property

from structlib.ground.refusals import BadInput, check_number
from structlib.ground.units import ft
from structlib.house.lines import naming_lines
from structlib.house.path import Path, follow
from structlib.house.plan import SOIL, Level, Wall
from structlib.house.shares import SAME, text_of
from structlib.house.wall_pieces import in_pieces, named_under
from structlib.mechanics.beams import Beam, LineLoad, PointLoad, Support, solve
from structlib.mechanics.patterns import solve_arrangements, stretches
from structlib.mechanics.shoring import Landed

FARTHEST = 5 * ft  # a temporary wall stands beside the wall that comes out, with room to work between


@dataclass(frozen=True)
class WallOut:
    """The way of the load before, and while a wall is out; the levels caught, and the temporary walls that catch them."""

    wall: str
    before: Path
    out: Path
    caught: tuple[str, ...]
    temporary: tuple[str, ...]

    def joists(self, at, **one):
        """Return the joists that reach to where the wall was, at a place along it.

        Parameters
        ----------
        at : float
            The place [mm].
        **one : any
            ``spacing`` and ``member`` of one joist, as for `joists_at` [any].

        Returns
        -------
        tuple of JoistDemand
            One for each side, or one in one piece over both [-].
        """
        found = (joist for level in self.caught for joist in joists_at(self.out, level, at, **one))
        return tuple(joist for joist in found if set(joist.holders) & set(self.temporary))


@dataclass(frozen=True)
class JoistDemand:
    """One joist with what is always on it, and each load that comes and goes by itself [N, mm].

    ``holders`` name what holds it, from the left, and ``start`` is its left end across the house. Walls are taken to hold
    it down too, so that an uplift shows as a negative push.
    """

    holders: tuple[str, ...]
    spacing: float
    start: float
    beam: Beam
    passing: tuple
    member: object = None

    @cached_property
    def envelope(self):
        """The joist under every arrangement of what comes and goes [-]."""
        return solve_arrangements(self.beam, self.passing)

    @cached_property
    def full(self):
        """The joist with everything on it at once, solved [-]."""
        if "envelope" in vars(self):  # then it is a sum of what is solved already
            return self.envelope.case((True,) * len(self.passing))
        return solve(replace(self.beam, loads=(*self.beam.loads, *(load for group in self.passing for load in group))))

    @property
    def empty(self):
        """The joist with nothing on it but what is always there, solved [-]."""
        return self.envelope.always

    @property
    def greatest_moment(self):
        """The greatest moment of any arrangement, either way [N*mm]."""
        return max(self.envelope.sagging.value, -self.envelope.hogging.value)

    def push(self, holder, solution):
        """Return what one solution asks of a holder.

        Parameters
        ----------
        holder : str
            Its name [-].
        solution : structlib.mechanics.beams.Solution
            Such as ``full`` or ``empty`` [-].

        Returns
        -------
        float
            Push on each mm of wall; negative where it must hold the joists down [N/mm].
        """
        return solution.reactions[self.holders.index(holder)].force / self.spacing

    def most(self, holder):
        """Return the greatest push on a holder, with what comes and goes where it asks most.

        Parameters
        ----------
        holder : str
            Its name [-].

        Returns
        -------
        float
            Push on each mm of wall [N/mm].
        """
        return self.envelope.greatest_reaction(self.holders.index(holder)).value / self.spacing

    def least(self, holder):
        """Return the least push on a holder, with what comes and goes where it lifts most.

        Parameters
        ----------
        holder : str
            Its name [-].

        Returns
        -------
        float
            Push on each mm of wall; negative where it must hold the joists down [N/mm].
        """
        return self.envelope.least_reaction(self.holders.index(holder)).value / self.spacing

    def landed(self, place, push):
        """Return what a temporary wall asks of this joist when it stands across it, with nobody on that floor.

        Parameters
        ----------
        place : float
            Where the temporary wall stands across the house [mm].
        push : float
            What comes down on each mm of it [N/mm].

        Returns
        -------
        structlib.mechanics.shoring.Landed
            Moments and shears beside those of the floor's own load; no strength is looked at [N*mm, N].
        """
        at = place - self.start
        if not -SAME <= at <= self.beam.length + SAME:
            raise BadInput(f"the joist does not reach {text_of(place)} across the house; take the one under that place")
        load = PointLoad(min(max(at, 0.0), self.beam.length), push * self.spacing)
        peaks, own = solve(replace(self.beam, loads=(*self.beam.loads, load))).extremes, self.full.extremes
        return Landed(*(abs(peak.value) for peak in (peaks.moment, peaks.shear, own.moment, own.shear)))


def wall_out(house, wall, distance, *, start=None, end=None):
    """Take a wall of a house out, or a stretch of it, with a temporary wall on each side from which joists come.

    Parameters
    ----------
    house : structlib.house.plan.House
        The house [-].
    wall : str
        The name of the wall [-].
    distance : float
        From the middle of the wall to the middle of each temporary wall [mm].
    start, end : float or None
        From where to where along the wall it comes out; its own end where None [mm].

    Returns
    -------
    WallOut
        Both ways of the load; what stood on the wall stands on the ends of the joists. Of a stretch, ``before`` has the wall
        in pieces already, and ``wall`` is the piece that comes out [-].

    Examples
    --------
    >>> from structlib.ground.units import plf
    >>> from structlib.house.file import demo_house
    >>> found = wall_out(demo_house(), "middle wall", 2 * ft)
    >>> [round(found.out.line_on(name, 5 * ft)["live"] / plf) for name in found.temporary]  # (165 + 120) x 11 / 9
    [348, 372]
    """
    check_number("distance", distance, low=0.5 * ft, high=FARTHEST, shown=text_of, hint="for example 2*ft")
    old = house.part(wall)
    with naming_lines(house):
        if not isinstance(old, Wall) or old.runs != "along":
            raise BadInput(
                f"{wall} is no wall along the house; temporary walls are worked out beside one that joists rest on"
            ).about(wall, "runs")
        if start is not None or end is not None:
            stretch = (old.start if start is None else start, old.end if end is None else end)
            house = in_pieces(house, old, *stretch)
        return _taken_out(house, house.part(wall), distance)


def _taken_out(house, old, distance):
    before, wall = follow(house), old.name
    caught = _caught(house, old)
    _check_points(before, old)
    start, end = max(old.start, caught.start), min(old.end, caught.end)
    sides = _sides(house, caught, old, distance, (start, end))
    below = _stands_on(house, old)
    temporary = tuple(
        replace(old, name=f"temporary wall {side} of {wall}", on=below, at=old.at + way * distance, start=start, end=end,
                weight=0.0, made_of="studs", plate=None)
        for side, way in sides
    )  # fmt: skip
    pieces = _pieces(house, caught, old, distance, sides, temporary, (start, end))
    beside = _beside(house, caught, old, (start, end))
    stays = ()
    if any(wall in named_under(one) for one in house.parts() if one is not caught):
        # what stood on the wall stands on the joists' ends: it is kept as a line without height or weight
        on = tuple(one.name for one in pieces)
        stays = (replace(old, on=on, start=start, end=end, height=0.0, weight=0.0),)
    out = _put_together(house, caught, old, (*pieces, *beside), (*stays, *temporary))
    return WallOut(wall, before, follow(out), tuple(one.name for one in pieces), tuple(one.name for one in temporary))


def joists_at(path, level, at, spacing=None, member=None, cut=False):
    """Return the joists of a level at one place along the house, each with what lies and stands on it.

    Parameters
    ----------
    path : structlib.house.path.Path
        The way of the load [-].
    level : str
        The level [-].
    at : float
        The place along the house [mm].
    spacing : float or None
        Distance between joists; that of the level's own joists when None, and 1 mm of floor where it has none [mm].
    member : structlib.rules.check.BeamMember or None
        One joist, for how far it moves and its stress; pushes and moments do not ask for it [-].
    cut : bool
        Whether joists in one piece are taken as if they were cut over each support [-].

    Returns
    -------
    tuple of JoistDemand
        One for each span of cut joists, one for joists in one piece [-].

    Examples
    --------
    >>> from structlib.ground.units import lb
    >>> from structlib.house.file import demo_house
    >>> joist = joists_at(follow(demo_house()), "ground floor", 3 * ft)[0]
    >>> round(joist.full.reactions[0].force / lb)  # 11 ft / 2 x 16 in x (9.1 + 40) psf
    360
    """
    element = path.element(level)
    if not isinstance(element.part, Level):
        raise BadInput(f"{level} is no floor, ceiling or roof; only those have joists")
    gives = sorted((one for one in element.gives if one.y <= at < one.y_end), key=lambda one: one.x)
    if not gives:
        raise BadInput(
            f"{level} reaches from {text_of(element.part.start)} to {text_of(element.part.end)} along the house, got "
            f"{text_of(at)}"
        )
    if spacing is None:
        spacing = element.part.joist.spacing if element.part.joist else 1.0
    places, holders = [one.x for one in gives], [one.to for one in gives]
    left, right = places[0] - element.part.left_overhang, places[-1] + element.part.right_overhang
    spans, found = tuple(zip(places, places[1:])) if cut else element.spans, []
    for number, span in enumerate(spans):
        ends = (left if number == 0 else span[0], right if number == len(spans) - 1 else span[-1])
        over = tuple(holders[places.index(one)] for one in span)
        found.append(_joist(element, at, spans, span, over, ends, spacing, member))
    return tuple(found)


# ---- the house while the wall is out ----


def _caught(house, wall):
    """The level whose joists a temporary wall would catch: the lowest of those that rest on the wall."""
    resting = [one for one in house.levels if wall.name in one.on]
    if not resting:
        raise BadInput(
            f"no joists rest on {wall.name}; what keeps it up or needs it, only a look on site can tell"
        ).about(wall.name)
    if resting[-1].kind == "roof":
        raise BadInput(
            f"only rafters rest on {wall.name}: they push outwards too, so what holds them meanwhile is not worked out here"
        ).about(resting[-1].name, "on")
    return resting[-1]


def _check_points(before, wall):
    """Refuse what presses on the wall, or on an opening in it, at one place: it must be held on its own."""
    gone = {wall.name, *(one.name for one in before.house.openings if one.wall == wall.name)}
    for name in gone:
        for share in before.element(name).received:
            if share.source not in gone and share.x == share.x_end and share.y == share.y_end:
                raise BadInput(
                    f"{share.source} presses on {name} at one place, and joists cannot hold it there while {wall.name} is "
                    "out; what holds it meanwhile is for an engineer"
                ).about(share.source, "on")


def _lines(house, level, stretch):
    """What a level rests on over a stretch of the house: (place, name)."""
    start, end = stretch
    found = (house.part(name) for name in level.on)
    return [(one.at, one.name) for one in found if one.start < end - SAME and one.end > start + SAME]


def _sides(house, caught, wall, distance, stretch):
    """The sides of the wall from which joists come, with room for a temporary wall: (word, direction)."""
    sides = []
    for word, way in (("left", -1), ("right", 1)):
        away = [
            (way * (at - wall.at), name) for at, name in _lines(house, caught, stretch) if way * (at - wall.at) > SAME
        ]
        if not away:
            continue
        room, nearest = min(away)
        if room <= distance + SAME:
            raise BadInput(
                f"{nearest} is {text_of(room)} from {wall.name}, so a temporary wall {text_of(distance)} from it does not "
                "stand between the two; take a shorter distance"
            ).about(nearest, "at")
        sides.append((word, way))
    return sides


def _stands_on(house, wall):
    """What a temporary wall beside a wall stands on: the soil, or the floors that meet over what the wall stands on."""
    if SOIL in wall.on:
        return (SOIL,)
    names = {one.name for one in house.levels}
    floors = [name for name in wall.on if name in names]
    floors += [one.name for one in house.levels if one.name not in floors and set(one.on) & set(wall.on)]
    if not floors:
        raise BadInput(
            f"no floor is written under {wall.name}; write the level on which a temporary wall beside it would stand"
        ).about(wall.name, "on")
    return tuple(floors)


def _pieces(house, caught, wall, distance, sides, temporary, stretch):
    """The caught level along the wall, on its temporary walls: one piece, or two where its joists are cut over the wall."""
    start, end = stretch
    lines = [(at, name) for at, name in _lines(house, caught, stretch) if abs(at - wall.at) > SAME]
    lines += [(one.at, one.name) for one in temporary]
    names = lambda keep: tuple(name for at, name in sorted(lines) if keep(at))  # noqa: E731
    if len(sides) == 1:
        side = f"{'right' if sides[0][0] == 'left' else 'left'}_overhang"
        more = {side: getattr(caught, side) + distance}
        return (replace(caught, start=start, end=end, on=names(lambda at: True), **more),)
    if caught.joists == "continuous":
        return (replace(caught, start=start, end=end, on=names(lambda at: True)),)
    part = lambda side, **more: replace(caught, name=f"{caught.name}, {side} part", start=start, end=end, **more)  # noqa: E731
    return (
        part("left", on=names(lambda at: at < wall.at), right_overhang=distance),
        part("right", on=names(lambda at: at > wall.at), left_overhang=distance),
    )


def _beside(house, caught, wall, stretch):
    """The caught level before and beyond the wall, where something else holds it."""
    rest = (("before", caught.start, stretch[0]), ("beyond", stretch[1], caught.end))
    return tuple(
        replace(caught, name=f"{caught.name}, {word} {wall.name}", start=a, end=b,
                on=tuple(name for _, name in _lines(house, caught, (a, b))))
        for word, a, b in rest if b - a > SAME
    )  # fmt: skip


def _put_together(house, caught, wall, pieces, new_walls):
    """The house with the level in its pieces, the new walls, and everything that stood on the level moved along."""
    at = {one.name: one.at for one in (*house.walls, *house.beams, *new_walls)}
    reach = {
        one.name: (min(at[n] for n in one.on) - one.left_overhang, max(at[n] for n in one.on) + one.right_overhang)
        for one in pieces
    }

    def under(x, start, end):
        return tuple(
            one.name for one in pieces
            if reach[one.name][0] - SAME <= x <= reach[one.name][1] + SAME and one.start < end - SAME and one.end > start + SAME
        )  # fmt: skip

    def wall_on(one):
        if caught.name not in one.on:
            return one
        return replace(one, on=(*(name for name in one.on if name != caught.name), *under(one.at, one.start, one.end)))

    def load_on(one):
        found = under(one.x, one.y, one.y + max(one.length, 2 * SAME)) if one.on == caught.name else (one.on,)
        if len(found) != 1:
            raise BadInput(
                f"{one.name} stands where {caught.name} is held in two ways meanwhile; write it as two loads"
            ).about(one.name, "y")
        return replace(one, on=found[0])

    levels = [new for one in house.levels for new in (pieces if one is caught else (one,))]
    walls = tuple(wall_on(one) for one in house.walls if one is not wall)
    return replace(
        house,
        levels=tuple(levels),
        walls=(*walls, *new_walls),
        loads=tuple(map(load_on, house.loads)),
        openings=tuple(one for one in house.openings if one.wall != wall.name),
    )


# ---- one joist ----


def _joist(element, at, spans, span, holders, ends, spacing, member):
    """One joist over one span, or over several in one piece, with what lies on it at a place along the house."""
    start, end = ends
    supports = tuple(Support(float(one - start)) for one in span)
    lasting, passing = [], []
    for share in (*element.own, *element.received):
        if not share.y <= at < share.y_end:
            continue
        dead, *rest = (amount * spacing for amount in share.amount)
        low, high = max(share.x, start) - start, min(share.x_end, end) - start
        if share.x_end - share.x <= SAME:
            part = _part_of(share.x, spans, ends)
            low = min(max(low, 0.0), end - start)
            lasting += [PointLoad(low, dead * part)] * bool(dead * part)
            passing += [(PointLoad(low, sum(rest) * part),)] * bool(sum(rest) * part)
        elif high - low > SAME:
            lasting += [LineLoad(low, high, dead)] * bool(dead)
            lines = ((max(a, low), min(b, high)) for a, b in stretches(supports, end - start))
            passing += [(LineLoad(a, b, sum(rest)),) for a, b in lines if sum(rest) and b - a > SAME]
    stiffness = member.bending_stiffness if member else 1e12
    return JoistDemand(
        holders, spacing, start, Beam(end - start, stiffness, supports, tuple(lasting)), tuple(passing), member
    )


def _part_of(x, spans, ends):
    """How much of something at one place a joist takes: half where the next one is cut over the same support."""
    if not ends[0] - SAME <= x <= ends[1] + SAME:
        return 0.0
    shared = (one[0] for one in spans[1:])
    return 0.5 if any(abs(x - one) <= SAME for one in shared) else 1.0
