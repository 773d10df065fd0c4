"""A house in plan: what stands where, what it is made of, and what each thing rests on.

Everything lies on one grid: x runs across the house, y along it, both in mm. Joists and rafters span across;
walls and beams run along (or across, where it is said). A level, a wall, a beam, a post and a load each name
what they rest on; a wall's words end at the soil. Ranges stand once, beside each field.
"""

from dataclasses import dataclass, fields, replace
from functools import cached_property

from structlib.ground.refusals import BadInput, check_choice
from structlib.ground.units import ft, inch, kip, psf
from structlib.house.fields import Record, of
from structlib.house.inputs import check_record
from structlib.house.lines import naming_lines
from structlib.house.made_of import Board, FlitchBeam, MadeOf, SteelBeam, Tie, refuse_two_choices
from structlib.house.measured import MeasuredJoists, check_measured
from structlib.rules.check import TREATMENTS

KINDS = ("floor", "ceiling", "roof")
JOINTS = ("cut", "continuous")
POSITIONS = ("dropped", "flush")
RIDGES = ("board", "beam")
RUNS = ("along", "across")
MADE_OF = ("studs", "masonry")
FASTENINGS = ("nailed", "bolted")
SITS_ON = ("as drawn", "studs", "plate")
#: How the plies of a beam that is loaded from its side are joined; what each is made of stands in `structlib.house.plies`.
JOINED = ("not chosen", "10d", "16d", "bolts")
SOIL = "soil"
_SITE = 200 * ft


def _where(example, **more):
    return of("length", example, low=-_SITE, high=_SITE, **more)


def _area_load(example, high, **more):
    return of("area load", example, high=high, **more)


def _force(example):
    return of("weight", example, high=1000 * kip, default=0.0)


@dataclass(frozen=True, kw_only=True)
class Layer(Record):
    """One layer of a floor, ceiling or roof, and its weight on the surface that it lies on [MPa]."""

    name: str = of("text", '"subfloor"')
    weight: float = _area_load('"3 psf"', 200 * psf)


@dataclass(frozen=True, kw_only=True)
class Joists(Record):
    """The joists or rafters of a level: wood, nominal size, spacing [mm], and plies of each.

    ``weighed`` is false where a layer of the level has their weight in it already.
    """

    species: str = of("text", '"Hem-Fir"')
    grade: str = of("text", '"No.2"')
    size: str = of("text", '"2x10"')
    spacing: float = of("section length", '"16 in"', low=4 * inch, high=48 * inch)
    plies: int = of("count", "1", low=1, high=4, default=1)
    weighed: bool = of("yes or no", "false", default=True)


@dataclass(frozen=True, kw_only=True)
class Wood(Record):
    """What a beam or a post is made of: species, grade and nominal size of a ply, the plies, and the wood as it is put in.

    ``wet`` is wood that stays above 19 % moisture in use; ``incised`` and ``treatment`` are what was done to it.
    """

    species: str = of("text", '"Hem-Fir"')
    grade: str = of("text", '"No.2"')
    size: str = of("text", '"2x10"')
    plies: int = of("count", "3", low=1, high=6, default=1)
    wet: bool = of("yes or no", "true", default=False)
    incised: bool = of("yes or no", "true", default=False)
    treatment: str = of("choice", '"preservative"', choices=TREATMENTS, default="none")


@dataclass(frozen=True, kw_only=True)
class Plate(Record):
    """The wood of a plate, which a beam or a post presses across its grain."""

    species: str = of("text", '"Spruce-Pine-Fir"')
    grade: str = of("text", '"No.1/No.2"')


@dataclass(frozen=True, kw_only=True)
class Level(Record):
    """One roof, ceiling or floor between the walls and beams that it rests on. Lengths in mm, loads in MPa of plan.

    ``on`` names them, from left to right. Its joists are new ones (``joist``) or old ones as
    ``measured``. ``seat`` is how far a new joist lies on each of what holds it; where it is not written, no seat is judged. Layers of a roof are weighed on its slope. The rafters of a roof lean on
    a ridge 'board', which carries nothing (``ridge_at`` where it is not in the middle), or on a ridge 'beam', named
    in ``on``. With a board they push their walls apart: a ``tie``, or the joists of the level ``tied_by``, holds them.
    ``right_snow`` is the snow right of the ridge where it is not the same, ``ground_snow`` what it all comes from;
    ``tie_nails`` hold each joint of a tie.
    """

    name: str = of("text", '"upper floor"')
    kind: str = of("choice", '"floor"', choices=KINDS)
    on: tuple[str, ...] = of("names", '["west wall", "middle wall", "east wall"]')
    start: float = _where('"0 ft"')
    end: float = _where('"28 ft"')
    joists: str = of("choice", '"cut"', choices=JOINTS, default="cut")
    joist: Joists | None = of("record", "{ species = ... }", record=Joists, default=None)
    seat: float | None = of("section length", '"3 1/2 in"', low=0.5 * inch, high=24 * inch, default=None)
    measured: MeasuredJoists | None = of("record", "{ width = ... }", record=MeasuredJoists, default=None)
    layers: tuple[Layer, ...] = of("records", "[[levels.layers]]", record=Layer, default=())
    live: float | None = _area_load('"40 psf"', 300 * psf, default=None)
    roof_live: float | None = _area_load('"20 psf"', 100 * psf, default=None)
    snow: float | None = _area_load('"30 psf"', 300 * psf, default=None)
    left_overhang: float = of("length", '"1 ft"', high=6 * ft, default=0.0)
    right_overhang: float = of("length", '"1 ft"', high=6 * ft, default=0.0)
    slope: tuple[float, float] = of("slope", '"8 in 12"', default=(0.0, 12.0))
    ridge: str = of("choice", '"board"', choices=RIDGES, default="board")
    ridge_at: float | None = _where('"12 ft"', default=None)
    right_snow: float | None = _area_load('"0 psf"', 300 * psf, default=None)
    tie: Tie | None = of("record", "{ species = ... }", record=Tie, default=None)
    tied_by: str = of("text", '"attic floor"', default="")
    tie_nails: int | None = of("count", "8", low=1, high=60, default=None)
    ridge_board: Board | None = of("record", "{ thickness = ... }", record=Board, default=None)
    ground_snow: float | None = _area_load('"40 psf"', 400 * psf, default=None)


@dataclass(frozen=True, kw_only=True)
class Opening(MadeOf, Record):
    """An opening to be made in a wall, the beam over it, and the room there is for one. Lengths in mm.

    ``start`` is its clear edge on the wall's own axis. ``wall_above`` is the height of wall that stays over the
    beam. ``posts`` are the studs under its ends; they rest on what the wall rests on, unless ``left_on`` or
    ``right_on`` says otherwise. The beam ``sits_on`` those studs; where none are written, on the plate or the masonry
    of its wall, unless 'studs' or 'plate' says otherwise. Its top edge is ``held_every`` so much, 0 for all along; joists
    on it hold it every 16 in. ``joined`` are the fasteners between plies that are loaded from the side.
    """

    name: str = of("text", '"kitchen opening"')
    wall: str = of("text", '"middle wall"')
    start: float = _where('"6 ft"')
    clear_width: float = of("length", '"8 ft"', low=1 * ft, high=40 * ft)
    height: float = of("length", '"6 ft 10 in"', low=1 * ft, high=20 * ft)
    wall_above: float = of("length", '"0 in"', high=20 * ft)
    left_seat: float = of("section length", '"3 in"', low=0.5 * inch, high=24 * inch)
    right_seat: float = of("section length", '"3 in"', low=0.5 * inch, high=24 * inch)
    position: str = of("choice", '"dropped"', choices=POSITIONS, default="dropped")
    greatest_depth: float = of("section length", '"12 in"', low=3 * inch, high=48 * inch, default=18 * inch)
    greatest_width: float = of("section length", '"7 in"', low=1.5 * inch, high=24 * inch, default=7 * inch)
    beam: Wood | None = of("record", "{ species = ... }", record=Wood, default=None)
    flitch: FlitchBeam | None = of("record", "{ species = ... }", record=FlitchBeam, default=None)
    steel: SteelBeam | None = of("record", '{ shape = "W8x18", ... }', record=SteelBeam, default=None)
    posts: Wood | None = of("record", "{ species = ... }", record=Wood, default=None)
    sits_on: str = of("choice", '"studs"', choices=SITS_ON, default="as drawn")
    held_every: float = of("length", '"16 in"', high=40 * ft, default=16 * inch)
    joined: str = of("choice", '"10d"', choices=JOINED, default="not chosen")
    left_on: str = of("text", '"cellar post"', default="")
    right_on: str = of("text", '"cellar post"', default="")
    _WORDS = ("beam", "flitch", "steel")

    @property
    def middle(self):
        """The middle of the clear width, along its wall [mm]."""
        return self.start + self.clear_width / 2


@dataclass(frozen=True, kw_only=True)
class Wall(Record):
    """A wall that stands on something: its line, its size [mm], its weight per face [MPa], what it is made of."""

    name: str = of("text", '"middle wall"')
    on: tuple[str, ...] = of("names", '["soil"]')
    at: float = _where('"12 ft"')
    start: float = _where('"0 ft"')
    end: float = _where('"28 ft"')
    height: float = of("length", '"8 ft"', high=30 * ft)
    weight: float = _area_load('"8 psf"', 400 * psf)
    runs: str = of("choice", '"along"', choices=RUNS, default="along")
    thickness: float = of("section length", '"4 1/2 in"', low=2 * inch, high=36 * inch, default=4.5 * inch)
    made_of: str = of("choice", '"studs"', choices=MADE_OF, default="studs")
    plate: Plate | None = of("record", "{ species = ... }", record=Plate, default=None)


@dataclass(frozen=True, kw_only=True)
class Beam(MadeOf, Record):
    """A beam on posts or in walls: its line [mm], what it rests on, whether it is cut over them, its wood.

    ``held_every`` and ``joined`` are as for the beam over an opening.
    """

    name: str = of("text", '"main beam"')
    on: tuple[str, ...] = of("names", '["north post", "south post"]')
    at: float = _where('"12 ft"')
    start: float = _where('"0 ft"')
    end: float = _where('"14 ft"')
    runs: str = of("choice", '"along"', choices=RUNS, default="along")
    joints: str = of("choice", '"cut"', choices=JOINTS, default="cut")
    wood: Wood | None = of("record", "{ species = ... }", record=Wood, default=None)
    flitch: FlitchBeam | None = of("record", "{ species = ... }", record=FlitchBeam, default=None)
    steel: SteelBeam | None = of("record", '{ shape = "W8x18", ... }', record=SteelBeam, default=None)
    seat: float = of("section length", '"3 in"', low=0.5 * inch, high=24 * inch, default=3 * inch)
    position: str = of("choice", '"dropped"', choices=POSITIONS, default="dropped")
    greatest_depth: float = of("section length", '"12 in"', low=3 * inch, high=48 * inch, default=18 * inch)
    greatest_width: float = of("section length", '"7 in"', low=1.5 * inch, high=24 * inch, default=7 * inch)
    held_every: float = of("length", '"16 in"', high=40 * ft, default=16 * inch)
    joined: str = of("choice", '"10d"', choices=JOINED, default="not chosen")


@dataclass(frozen=True, kw_only=True)
class Post(Record):
    """A post at one place of the plan [mm]: its height, its wood, and what it stands on.

    ``held_width`` is the distance between what holds it across its plies, 0 where a wall holds it all along; left
    out, it is the height. ``off_middle`` is how far off its middle, along its depth, it is pressed.
    """

    name: str = of("text", '"north post"')
    on: str = of("text", '"north pad"')
    x: float = _where('"12 ft"')
    y: float = _where('"0 ft"')
    height: float = of("length", '"7 ft"', low=0.5 * ft, high=30 * ft)
    wood: Wood | None = of("record", "{ species = ... }", record=Wood, default=None)
    plate: Plate | None = of("record", "{ species = ... }", record=Plate, default=None)
    fastening: str = of("choice", '"nailed"', choices=FASTENINGS, default="nailed")
    held_width: float | None = of("length", '"4 ft"', high=30 * ft, default=None)
    off_middle: float = of("section length", '"1 in"', high=12 * inch, default=0.0)


@dataclass(frozen=True, kw_only=True)
class Pad(Record):
    """A square pad of plain concrete on the soil: its middle and its side [mm], and the soil as the code names it."""

    name: str = of("text", '"north pad"')
    x: float = _where('"12 ft"')
    y: float = _where('"0 ft"')
    side: float = of("section length", '"36 in"', low=6 * inch, high=10 * ft)
    soil: str = of("text", '"clay or silt"', default="")


@dataclass(frozen=True, kw_only=True)
class Load(Record):
    """Something heavy at one place of the plan [mm], by type [N], and what it rests on.

    With a ``length`` it is spread evenly from its place along what it rests on, or across the joists of a level.
    """

    name: str = of("text", '"water heater"')
    on: str = of("text", '"main beam"')
    x: float = _where('"12 ft"')
    y: float = _where('"4 ft"')
    dead: float = _force('"400 lb"')
    live: float = _force('"400 lb"')
    roof_live: float = _force('"400 lb"')
    snow: float = _force('"400 lb"')
    length: float = of("length", '"5 ft"', high=200 * ft, default=0.0)


@dataclass(frozen=True, kw_only=True)
class House(Record):
    """A house: its levels from the top, and everything that their loads pass on the way to the soil."""

    name: str = of("text", '"Alder Lane"')
    levels: tuple[Level, ...] = of("records", "[[levels]]", record=Level, default=())
    walls: tuple[Wall, ...] = of("records", "[[walls]]", record=Wall, default=())
    openings: tuple[Opening, ...] = of("records", "[[openings]]", record=Opening, default=())
    beams: tuple[Beam, ...] = of("records", "[[beams]]", record=Beam, default=())
    posts: tuple[Post, ...] = of("records", "[[posts]]", record=Post, default=())
    pads: tuple[Pad, ...] = of("records", "[[pads]]", record=Pad, default=())
    loads: tuple[Load, ...] = of("records", "[[loads]]", record=Load, default=())
    invented: bool = of("yes or no", "true", default=False)
    note: str = of("text", '"..."', default="")
    source = None  # the file that it was read from; no field, so that a house is equal to one made by hand

    def read_from(self, source):
        """Return the house, which now knows the file that it was read from.

        Parameters
        ----------
        source : structlib.house.lines.Source or None
            The file; None for a house made by hand [-].

        Returns
        -------
        House
            The house [-].
        """
        object.__setattr__(self, "source", source)
        return self

    def parts(self):
        """Return everything that has a name and a place, from the top down.

        Returns
        -------
        tuple
            The parts [-].
        """
        return (*self.levels, *self.loads, *self.walls, *self.openings, *self.beams, *self.posts, *self.pads)

    def part(self, name):
        """Return one part by its name.

        Parameters
        ----------
        name : str
            The name [-].

        Returns
        -------
        object
            The part; the nearest names are offered where there is none [-].
        """
        return self._by_name[check_choice("part of the house", name, self._by_name)]

    @cached_property
    def _by_name(self):
        return {one.name: one for one in self.parts()}


def check_house(house):
    """Refuse a house that does not hang together; return it unchanged.

    Parameters
    ----------
    house : House
        The house [-].

    Returns
    -------
    House
        The house [-].

    Examples
    --------
    >>> from structlib.house.file import demo_house
    >>> check_house(demo_house()).name
    'Alder Lane'
    """
    check_record("house", house, House, "demo_house()")
    with naming_lines(house):
        _check_house(house)
    return house


def _check_house(house):
    if not house.levels and not house.loads:
        raise BadInput("the house needs at least one level; write [[levels]] as in a demo house").about(house.name)
    seen = {SOIL}
    for one in house.parts():
        if one.name in seen or not one.name.strip():
            fault = BadInput(f"the name {one.name!r} is empty or used twice; give every part a name of its own")
            raise fault.about(one.name, "name")
        seen.add(one.name)
    for level in house.levels:
        _check_level(level)
    refuse_two_choices((*house.openings, *house.beams))
    for one in (*house.walls, *house.beams, *house.levels):
        if one.end <= one.start:
            fault = BadInput(f"{one.name} ends where it starts or before; write an end beyond its start")
            raise fault.about(one.name, "end")


def _check_level(level):
    roof = level.kind == "roof"
    for name in ("roof_live", "snow") if roof else ("live",):
        if getattr(level, name) is None:
            fault = BadInput(f'{level.name} has no {name}; where there is none, write {name} = "0 psf"')
            raise fault.about(level.name)
    of_roofs = (
        "roof_live",
        "snow",
        "ridge_at",
        "right_snow",
        "tie",
        "tied_by",
        "tie_nails",
        "ridge_board",
        "ground_snow",
    )
    for name in ("live",) if roof else of_roofs:
        if getattr(level, name) not in (None, ""):
            fault = BadInput(f"{level.name} is a {level.kind}; {name} does not belong to it")
            raise fault.about(level.name, name)
    if roof and level.joists == "continuous":
        fault = BadInput(f"{level.name} is a roof; its rafters are cut at the ridge, so leave joists out")
        raise fault.about(level.name, "joists")
    if level.ridge == "beam" and level.ridge_at is not None:
        raise BadInput(f"{level.name} leans on a ridge beam, which has a place of its own; leave ridge_at out").about(
            level.name, "ridge_at"
        )
    if level.tie and level.tied_by or level.ridge == "beam" and (level.tie or level.tied_by):
        holder = "its ridge beam" if level.ridge == "beam" else f"the joists of {level.tied_by}"
        field = "tie" if level.tie else "tied_by"
        raise BadInput(f"the rafters of {level.name} are held by {holder}; leave {field} out").about(level.name, field)
    for name in ("tie_nails", "ridge_board") if level.ridge == "beam" else ():
        if getattr(level, name) is not None:
            raise BadInput(f"{level.name} leans on a ridge beam; leave {name} out").about(level.name, name)
    if not roof and level.slope[0]:
        raise BadInput(f"{level.name} is a {level.kind}; a slope belongs to a roof").about(level.name, "slope")
    if level.seat is not None and (roof or level.measured is not None):
        what = "rafters" if roof else "joists as measured"
        raise BadInput(f"the seats of {what} are not judged; leave seat of {level.name} out").about(level.name, "seat")
    if level.measured is not None:
        check_measured(level)


def stretched(house, at, *, left=1.0, right=1.0):
    """Return the house made wider or narrower on each side of a line along it, everything in proportion.

    Parameters
    ----------
    house : House
        The house [-].
    at : float
        The line that stays where it is, across the house [mm].
    left, right : float
        By how many times each side grows [-].

    Returns
    -------
    House
        A new house; the old one is untouched [-].

    Examples
    --------
    >>> from structlib.house.file import demo_house
    >>> stretched(demo_house(), 11 * ft, right=2.0).part("east lower wall").at / ft
    37.0
    """
    moved = lambda x: x if x is None else at + (x - at) * (left if x < at else right)  # noqa: E731

    def of_part(one):
        if isinstance(one, (Wall, Beam)):
            names = ("at",) if one.runs == "along" else ("start", "end")
        elif isinstance(one, Opening):
            names = ("start",) if house.part(one.wall).runs == "across" else ()
        else:
            names = {Level: ("ridge_at",), Post: ("x",), Pad: ("x",), Load: ("x",)}[type(one)]
        new = {name: moved(getattr(one, name)) for name in names}
        return replace(one, **new) if any(value != getattr(one, name) for name, value in new.items()) else one

    lists = {name: tuple(map(of_part, rows)) for name, rows in _lists(house).items()}
    return replace(house, **lists).read_from(house.source)


def _lists(house):
    """The parts of a house by the name of their list."""
    return {one.name: getattr(house, one.name) for one in fields(House) if one.metadata["kind"] == "records"}


def with_changes(house, changes):
    """Return the house with fields of some of its parts changed, as a choice or a finding on site changes them.

    Parameters
    ----------
    house : House
        The house [-].
    changes : dict
        By the name of a part: its new fields, as a dict [any].

    Returns
    -------
    House
        A new house; the old one is untouched [-].

    Examples
    --------
    >>> from structlib.house.file import demo_house
    >>> with_changes(demo_house(), {"upper floor": {"live": 40 * psf}}).part("upper floor").live / psf
    40.0
    """
    for name, values in changes.items():
        part = house.part(name)
        for field_name in values:
            check_choice(f"field of {name}", field_name, [one.name for one in fields(part)])
        changed = {
            key: tuple(replace(one, **values) if one is part else one for one in rows)
            for key, rows in _lists(house).items()
            if part in rows
        }
        house = replace(house, **changed).read_from(house.source)
    return house
