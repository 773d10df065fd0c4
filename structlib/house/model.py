"""A house as data: what comes down on one wall, and the opening to be made in it. Read and written as a file.

The file is TOML, with lengths and loads written as people write them. Nothing is guessed: a number
without its unit, an unknown word or a missing field is answered with one sentence that names the place.
"""

import json
import os
import tempfile
import tomllib
from dataclasses import dataclass, fields, replace
from pathlib import Path

from structlib.ground.refusals import BadInput, check_choice, check_number
from structlib.ground.reading import read, read_area_load, read_length
from structlib.ground.showing import show
from structlib.ground.tables import data_folder
from structlib.ground.units import ft, inch, psf
from structlib.house.inputs import (
    check_list,
    check_one_number,
    check_record,
    check_whole_number,
    check_yes_or_no,
)

KINDS = ("floor", "ceiling", "roof")
JOISTS = ("cut", "continuous")
POSITIONS = ("dropped", "flush")
RIDGES = ("board", "beam")
_LONGEST_NAME = 200


@dataclass(frozen=True)
class Layer:
    """One layer of a floor, ceiling or roof, and its weight on the surface that it lies on [MPa]."""

    name: str
    weight: float


@dataclass(frozen=True)
class Joists:
    """The joists or rafters of a level: wood, nominal size, spacing [mm], and plies of each."""

    species: str
    grade: str
    size: str
    spacing: float
    plies: int = 1


@dataclass(frozen=True)
class WallUnder:
    """A wall that stands between one level and the next below, and its weight: height [mm], face load [MPa]."""

    height: float
    weight: float


@dataclass(frozen=True)
class Level:
    """One level that comes down on the wall. Spans in mm, loads in MPa of plan.

    ``slope`` is (rise, run) of a roof; its layers are weighed on the slope. ``ridge`` tells whether the
    top of the rafters leans on a ridge 'board' (the walls carry all) or a ridge 'beam' (half goes there).
    ``lands`` is False for a level that passes over the wall and leaves its load elsewhere, as a roof that
    stands on the outside walls does.
    """

    name: str
    kind: str
    left_span: float
    right_span: float
    joists: str = "cut"
    joist: Joists | None = None
    layers: tuple[Layer, ...] = ()
    live: float = 0.0
    roof_live: float = 0.0
    snow: float = 0.0
    slope: tuple[float, float] = (0.0, 12.0)
    overhang: float = 0.0
    ridge: str = "board"
    wall_under: WallUnder | None = None
    lands: bool = True


@dataclass(frozen=True)
class Opening:
    """The opening to be made, and the space there is for a beam. Lengths in mm."""

    clear_width: float
    height: float
    wall_thickness: float
    greatest_depth: float
    greatest_width: float
    position: str
    left_seat: float
    right_seat: float
    plate_species: str
    plate_grade: str


@dataclass(frozen=True)
class House:
    """What comes down on one wall, from the top, and the opening to be made under it."""

    name: str
    levels: tuple[Level, ...]
    opening: Opening
    invented: bool = False
    note: str = ""


def demo_house(name="alder_lane"):
    """Return one of the invented houses that come with the workbook.

    Parameters
    ----------
    name : str
        File name without its ending [-].

    Returns
    -------
    House
        The house [-].

    Raises
    ------
    BadInput
        When there is no such house; the names are listed.

    Examples
    --------
    >>> demo_house().name
    'Alder Lane'
    """
    folder = data_folder() / "houses"
    check_choice("demo house", name, sorted(path.stem for path in folder.glob("*.toml")))
    return read_house(folder / f"{name}.toml")


def read_house(path):
    """Read a house from a file.

    Parameters
    ----------
    path : str or pathlib.Path
        A TOML file laid out like the demo house [-].

    Returns
    -------
    House
        The house [-].

    Raises
    ------
    BadInput
        When the file is missing, is not TOML, or a field cannot be read; the sentence names the field.

    Examples
    --------
    >>> read_house("no-such-house.toml")
    Traceback (most recent call last):
    ...
    structlib.ground.refusals.BadInput: there is no file no-such-house.toml; give the path of a house file, for example a copy of the demo house
    """
    path = _path(path)
    try:
        data = tomllib.loads(path.read_text(encoding="utf-8-sig"))  # some editors put a mark at the start
    except FileNotFoundError:
        raise BadInput(
            f"there is no file {path.name}; give the path of a house file, for example a copy of the "
            "demo house"
        ) from None
    except (OSError, UnicodeDecodeError):
        raise BadInput(
            f"{path.name} cannot be read as text; give a house file, for example a copy of the demo house"
        ) from None
    except tomllib.TOMLDecodeError as error:
        raise BadInput(
            f"{path.name} is not laid out as TOML: {error}; look at the demo house for an example"
        ) from None
    except RecursionError:
        raise BadInput(
            f"{path.name} has groups within groups beyond all measure; look at the demo house for an example"
        ) from None
    return house_from_data(data)


def _path(path):
    if not isinstance(path, (str, os.PathLike)) or "\0" in str(path) or not Path(path).name:
        raise BadInput(f"the path of a house file must be text, got {path!r}; for example 'my-house.toml'")
    if len(Path(path).name) > _LONGEST_NAME:
        raise BadInput(
            f"the name of a house file must have at most {_LONGEST_NAME} letters, "
            f"got {len(Path(path).name)}; "
            "for example 'my-house.toml'"
        )
    return Path(path)


def house_from_data(data):
    """Build a house from the plain data of a file.

    Parameters
    ----------
    data : dict
        Names and texts as a house file holds them [-].

    Returns
    -------
    House
        The house [-].

    Raises
    ------
    BadInput
        When a field is missing, unknown, or cannot be read.

    Examples
    --------
    >>> house_from_data({})
    Traceback (most recent call last):
    ...
    structlib.ground.refusals.BadInput: the house has no 'name'; write it as in the demo house, for example name = "Alder Lane"
    """
    _known(data, {"name", "levels", "opening", "invented", "note"}, "the house")
    name = _need(data, "name", "the house", 'name = "Alder Lane"')
    rows = _need(data, "levels", "the house", "[[levels]]")
    if not isinstance(rows, list) or not rows:
        raise BadInput(
            "the house needs at least one level that comes down on the wall; write [[levels]] as in the "
            "demo house"
        )
    levels = tuple(_level(row, number) for number, row in enumerate(rows, 1))
    return House(
        str(name),
        levels,
        _opening(_need(data, "opening", "the house", "[opening]")),
        _yes_or_no(data.get("invented", False), "invented of the house"),
        str(data.get("note", "")),
    )


def _known(row, names, place):
    if not isinstance(row, dict):
        raise BadInput(
            f"{place} must be a group of fields, got {row!r}; look at the demo house for an example"
        )
    for name in row:
        if name not in names:
            check_choice(f"field of {place}", name, sorted(names))


def _need(row, name, place, example):
    if name not in row:
        raise BadInput(f"{place} has no {name!r}; write it as in the demo house, for example {example}")
    return row[name]


def _read(row, name, place, reader, example, *, low, high, shown, default=None):
    if name not in row and default is not None:
        return default
    text = _need(row, name, place, f'{name} = "{example}"')
    try:
        value = reader(text)
    except BadInput as error:
        raise BadInput(f"{name} of {place}: {error}") from None
    return check_number(
        f"{name} of {place}", value, low=low, high=high, shown=shown, hint=f"for example {example}"
    )


def _length(row, name, place, example, *, low, high, default=None):
    return _read(
        row,
        name,
        place,
        read_length,
        example,
        low=low,
        high=high,
        shown=lambda mm: show(mm, "length"),
        default=default,
    )


def _area_load(row, name, place, example, *, high, default=None):
    return _read(
        row,
        name,
        place,
        read_area_load,
        example,
        low=0.0,
        high=high,
        shown=lambda mpa: show(mpa, "area load"),
        default=default,
    )


def _level(row, number):
    place = f"level {number}"
    _known(
        row,
        {
            "name",
            "kind",
            "left_span",
            "right_span",
            "joists",
            "joist",
            "layers",
            "live",
            "roof_live",
            "snow",
            "slope",
            "overhang",
            "ridge",
            "wall_under",
            "lands",
        },
        place,
    )
    name = str(_need(row, "name", place, 'name = "upper floor"'))
    place = f"level {number} ({name})"
    kind = check_choice(f"kind of {place}", _need(row, "kind", place, 'kind = "floor"'), KINDS)
    layers = []
    for layer in check_list(f"layers of {place}", row.get("layers", []), "[[levels.layers]]"):
        _known(layer, {"name", "weight"}, f"a layer of {place}")
        label = str(_need(layer, "name", f"a layer of {place}", 'name = "subfloor"'))
        layers.append(
            Layer(label, _area_load(layer, "weight", f"layer {label!r} of {place}", "3 psf", high=200 * psf))
        )
    wall = row.get("wall_under")
    if wall is not None:
        _known(wall, {"height", "weight"}, f"wall under {place}")
        wall = WallUnder(
            _length(wall, "height", f"wall under {place}", "8 ft", low=0.0, high=20 * ft),
            _area_load(wall, "weight", f"wall under {place}", "8 psf", high=150 * psf),
        )
    level = Level(
        name,
        kind,
        left_span=_length(row, "left_span", place, "12 ft", low=0.0, high=40 * ft, default=0.0),
        right_span=_length(row, "right_span", place, "12 ft", low=0.0, high=40 * ft, default=0.0),
        joists=check_choice(f"joists of {place}", row.get("joists", "cut"), JOISTS),
        joist=_joists(row["joist"], place) if "joist" in row else None,
        layers=tuple(layers),
        live=_area_load(row, "live", place, "40 psf", high=300 * psf, default=0.0),
        roof_live=_area_load(row, "roof_live", place, "20 psf", high=100 * psf, default=0.0),
        snow=_area_load(row, "snow", place, "30 psf", high=300 * psf, default=0.0),
        slope=_slope(row.get("slope", "0 in 12"), place),
        overhang=_length(row, "overhang", place, "1 ft", low=0.0, high=4 * ft, default=0.0),
        ridge=check_choice(f"ridge of {place}", row.get("ridge", "board"), RIDGES),
        wall_under=wall,
        lands=_yes_or_no(row.get("lands", True), f"lands of {place}"),
    )
    return check_level(level, place)


def check_level(level, place="the level"):
    """Refuse a level that does not hang together.

    Parameters
    ----------
    level : Level
        The level [-].
    place : str
        How the message names it [-].

    Returns
    -------
    Level
        The level, unchanged [-].

    Raises
    ------
    BadInput
        When a field is of the wrong kind or out of range, when it has no span at all, or continuous joists
        without two spans.

    Examples
    --------
    >>> check_level(Level("attic", "floor", 12 * ft, 0.0)).joists
    'cut'
    """
    check_record(place, level, Level, "Level('attic', 'floor', 12*ft, 0.0)")
    _check_fields(level, place)
    if level.left_span + level.right_span <= 0:
        raise BadInput(
            f"{place} reaches to neither side of the wall; give left_span or right_span, for example 12 ft"
        )
    if level.joists == "continuous" and (level.left_span <= 0 or level.right_span <= 0):
        raise BadInput(
            f"{place} has continuous joists but one span only; joists that end on the wall are 'cut'"
        )
    if level.kind != "roof" and (level.overhang or level.snow or level.roof_live):
        raise BadInput(
            f"{place} is a {level.kind}; overhang, snow and roof_live belong to a level of kind 'roof'"
        )
    if level.kind == "roof" and level.live:
        raise BadInput(
            f'{place} is a roof; write roof_live or snow, not live, for example roof_live = "20 psf"'
        )
    return level


def _check_fields(level, place):
    for field_name, word, choices in (
        ("kind", level.kind, KINDS),
        ("joists", level.joists, JOISTS),
        ("ridge", level.ridge, RIDGES),
    ):
        check_choice(f"{field_name} of {place}", word, choices)
    for name, most in (("left_span", 40 * ft), ("right_span", 40 * ft), ("overhang", 4 * ft)):
        _check_length(f"{name} of {place}", getattr(level, name), low=0.0, high=most)
    for name, most in (("live", 300 * psf), ("roof_live", 100 * psf), ("snow", 300 * psf)):
        _check_area_load(f"{name} of {place}", getattr(level, name), high=most)
    _checked_slope(level.slope, place)
    check_yes_or_no(f"lands of {place}", level.lands)
    for layer in check_list(f"layers of {place}", level.layers, "(Layer('subfloor', 3*psf),)"):
        check_record(f"a layer of {place}", layer, Layer, "Layer('subfloor', 3*psf)")
        _check_area_load(f"layer {layer.name!r} of {place}", layer.weight, high=200 * psf)
    if level.joist is not None:
        joist = check_record(
            f"joist of {place}", level.joist, Joists, "Joists('Hem-Fir', 'No.2', '2x10', 16*inch)"
        )
        _check_length(f"spacing of the joists of {place}", joist.spacing, low=4 * inch, high=48 * inch)
        check_whole_number(
            f"plies of the joists of {place}", joist.plies, low=1, high=4, hint="for example 1"
        )
    if level.wall_under is not None:
        wall = check_record(f"wall under {place}", level.wall_under, WallUnder, "WallUnder(8*ft, 8*psf)")
        _check_length(f"height of the wall under {place}", wall.height, low=0.0, high=20 * ft)
        _check_area_load(f"weight of the wall under {place}", wall.weight, high=150 * psf)


def _check_length(name, value, *, low, high):
    check_one_number(
        name, value, low=low, high=high, shown=lambda mm: show(mm, "length"), hint="for example 12*ft"
    )


def _check_area_load(name, value, *, high):
    check_one_number(
        name, value, low=0.0, high=high, shown=lambda mpa: show(mpa, "area load"), hint="for example 10*psf"
    )


def _joists(row, place):
    place = f"joist of {place}"
    _known(row, {"species", "grade", "size", "spacing", "plies"}, place)
    plies = check_whole_number(f"plies of {place}", row.get("plies", 1), low=1, high=4, hint="for example 1")
    return Joists(
        str(_need(row, "species", place, 'species = "Hem-Fir"')),
        str(_need(row, "grade", place, 'grade = "No.2"')),
        str(_need(row, "size", place, 'size = "2x10"')),
        _length(row, "spacing", place, "16 in", low=4 * inch, high=48 * inch),
        plies,
    )


def _yes_or_no(value, place):
    return check_yes_or_no(place, value)


def _slope(text, place):
    words = str(text).replace(":", " in ").split(" in ")
    try:
        rise, run = (float(word) for word in words)
    except ValueError:
        raise BadInput(
            f'slope of {place} must be written as rise in run, got {text!r}; for example "6 in 12"'
        ) from None
    return _checked_slope((rise, run), place)


def _checked_slope(slope, place):
    if not isinstance(slope, (tuple, list)) or len(slope) != 2:
        raise BadInput(f"slope of {place} must be (rise, run), got {slope!r}; for example (6, 12)")
    rise, run = slope
    check_one_number(
        f"run of the slope of {place}",
        run,
        low=0.0,
        high=1000.0,
        low_allowed=False,
        hint="for example 6 in 12",
    )
    check_one_number(
        f"rise of the slope of {place}", rise, low=0.0, high=2.0 * run, hint="for example 6 in 12"
    )
    return rise, run


def _opening(row):
    place = "the opening"
    _known(
        row,
        {
            "clear_width",
            "height",
            "wall_thickness",
            "greatest_depth",
            "greatest_width",
            "position",
            "left_seat",
            "right_seat",
            "plate",
        },
        place,
    )
    plate = row.get("plate", {"species": "Spruce-Pine-Fir", "grade": "No.1/No.2"})
    _known(plate, {"species", "grade"}, "the plate of the opening")
    return Opening(
        clear_width=_length(row, "clear_width", place, "12 ft", low=1 * ft, high=40 * ft),
        height=_length(row, "height", place, "6 ft 10 in", low=1 * ft, high=20 * ft, default=82 * inch),
        wall_thickness=_length(
            row, "wall_thickness", place, "4 1/2 in", low=2 * inch, high=24 * inch, default=4.5 * inch
        ),
        greatest_depth=_length(
            row, "greatest_depth", place, "12 in", low=3 * inch, high=48 * inch, default=18 * inch
        ),
        greatest_width=_length(
            row, "greatest_width", place, "7 in", low=1.5 * inch, high=24 * inch, default=7 * inch
        ),
        position=check_choice("position of the beam", row.get("position", "dropped"), POSITIONS),
        left_seat=_length(row, "left_seat", place, "3 in", low=0.5 * inch, high=24 * inch, default=3 * inch),
        right_seat=_length(
            row, "right_seat", place, "3 in", low=0.5 * inch, high=24 * inch, default=3 * inch
        ),
        plate_species=str(_need(plate, "species", "the plate of the opening", 'species = "Spruce-Pine-Fir"')),
        plate_grade=str(_need(plate, "grade", "the plate of the opening", 'grade = "No.1/No.2"')),
    )


def write_house(house, path, *, overwrite=False):
    """Write a house to a file, whole or not at all.

    Parameters
    ----------
    house : House
        The house [-].
    path : str or pathlib.Path
        Where to write it [-].
    overwrite : bool
        True to replace a file that is there already [-].

    Returns
    -------
    pathlib.Path
        Where it was written [-].

    Raises
    ------
    BadInput
        When a file is there already and ``overwrite`` is False, when the house could not be read back, or
        when nothing can be written there.

    Examples
    --------
    >>> import tempfile, pathlib
    >>> with tempfile.TemporaryDirectory() as folder:
    ...     path = write_house(demo_house(), pathlib.Path(folder) / "mine.toml")
    ...     read_house(path) == demo_house()
    True
    """
    path = _path(path)
    check_yes_or_no("overwrite", overwrite)
    text = _readable_text(house)
    if path.is_dir() or not path.parent.is_dir():
        raise BadInput(
            f"{path.name} cannot be written there: a house file needs a folder that exists and a name of its "
            "own, for example 'my-house.toml'"
        )
    if path.exists() and not overwrite:
        raise BadInput(
            f"{path.name} is there already and was left as it is; choose another name, or say overwrite=True"
        )
    try:
        handle, name = tempfile.mkstemp(dir=path.parent, prefix="house-", suffix=".part")
        try:
            with os.fdopen(handle, "wb") as file:
                file.write(text)
            os.replace(name, path)
        except BaseException:
            Path(name).unlink(missing_ok=True)
            raise
    except OSError as error:
        raise BadInput(f"{path.name} cannot be written: {error.strerror}; choose another place") from None
    return path


def _readable_text(house):
    """The file's bytes, once they are known to be readable; a house that is not is refused, not lost."""
    check_record("house", house, House, "demo_house()")
    check_record("opening", house.opening, Opening, "demo_house().opening")
    for number, level in enumerate(check_list("levels", house.levels, "demo_house().levels"), 1):
        check_level(level, f"level {number}")
    for name in (
        "clear_width",
        "height",
        "wall_thickness",
        "greatest_depth",
        "greatest_width",
        "left_seat",
        "right_seat",
    ):
        _check_length(f"{name} of the opening", getattr(house.opening, name), low=0.0, high=40 * ft)
    text = _as_toml(house)
    try:
        house_from_data(tomllib.loads(text))
        return text.encode("utf-8")
    except UnicodeEncodeError:
        raise BadInput(
            "the house holds a broken character that no file can keep; write its names anew, for example "
            "'Alder Lane'"
        ) from None


def with_level(house, number, **changes):
    """Return the house with one level changed.

    Parameters
    ----------
    house : House
        The house [-].
    number : int
        Place of the level from the top, counted from zero [-].
    **changes : any
        Fields of the level and their new values [any].

    Returns
    -------
    House
        A new house; the old one is untouched [-].

    Raises
    ------
    BadInput
        When there is no such level or field, or the level does not hang together with the change.

    Examples
    --------
    >>> with_level(demo_house(), 0, left_span=9 * ft).levels[0].left_span / ft
    9.0
    """
    check_record("house", house, House, "demo_house()")
    levels = list(house.levels)
    check_whole_number("level number", number, low=0, high=len(levels) - 1, hint="0 is the uppermost")
    for name in changes:
        check_choice("field of a level", name, [one.name for one in fields(Level)])
    levels[number] = check_level(replace(levels[number], **changes))
    return replace(house, levels=tuple(levels))


def _as_toml(house):
    quoted = _quoted
    lines = [
        f"name = {quoted(house.name)}",
        f"invented = {'true' if house.invented else 'false'}",
        f"note = {quoted(house.note)}",
    ]
    for level in house.levels:
        lines += [
            "",
            "[[levels]]",
            f"name = {quoted(level.name)}",
            f"kind = {quoted(level.kind)}",
            f"left_span = {_mm(level.left_span)}",
            f"right_span = {_mm(level.right_span)}",
            f"joists = {quoted(level.joists)}",
            f"live = {_kpa(level.live)}",
            f"roof_live = {_kpa(level.roof_live)}",
            f"snow = {_kpa(level.snow)}",
            f"slope = {quoted(f'{float(level.slope[0])!r} in {float(level.slope[1])!r}')}",
            f"overhang = {_mm(level.overhang)}",
            f"ridge = {quoted(level.ridge)}",
            f"lands = {'true' if level.lands else 'false'}",
        ]
        if level.joist is not None:
            j = level.joist
            lines.append(
                f"joist = {{ species = {quoted(j.species)}, grade = {quoted(j.grade)}, size = {quoted(j.size)}, "
                f"spacing = {_mm(j.spacing)}, plies = {int(j.plies)} }}"
            )
        if level.wall_under is not None:
            lines.append(
                f"wall_under = {{ height = {_mm(level.wall_under.height)}, "
                f"weight = {_kpa(level.wall_under.weight)} }}"
            )
        for layer in level.layers:
            lines += ["[[levels.layers]]", f"name = {quoted(layer.name)}", f"weight = {_kpa(layer.weight)}"]
    o = house.opening
    lines += ["", "[opening]"]
    lines += [
        f"{name} = {_mm(getattr(o, name))}"
        for name in (
            "clear_width",
            "height",
            "wall_thickness",
            "greatest_depth",
            "greatest_width",
            "left_seat",
            "right_seat",
        )
    ]
    lines += [
        f"position = {quoted(o.position)}",
        f"plate = {{ species = {quoted(o.plate_species)}, grade = {quoted(o.plate_grade)} }}",
    ]
    return "\n".join(lines) + "\n"


def _quoted(text):
    """Text as a TOML basic string: as JSON writes it, but for the control character JSON leaves bare."""
    return json.dumps(str(text), ensure_ascii=False).replace("\x7f", "\\u007f")


def _mm(value):
    return _as_text(value, "length", f"{float(value)!r} mm")


def _kpa(value):
    return _as_text(value, "area load", f"{float(value) / psf!r} psf")


def _as_text(value, dimension, exact):
    """A value as people write it when that says it exactly, else with all its digits."""
    text = show(value, dimension)
    return f'"{text}"' if abs(read(text, dimension) - value) <= 1e-12 * abs(value) else f'"{exact}"'
