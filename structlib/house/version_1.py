"""House files of version 1: one wall, the levels above it, and one opening. They are read as a house in plan.

Version 1 knew no places: the wall in question stands at 0 across the house, and its length is taken as the opening
with 4 ft of wall at either side. Supports that it did not name are walls without weight.
"""

import dataclasses

from structlib.ground.refusals import BadInput
from structlib.ground.units import ft
from structlib.house.fields import of, read_record
from structlib.house.plan import SOIL, House, Level, Opening, Wall

_ASIDE = 4 * ft


@dataclasses.dataclass(frozen=True, kw_only=True)
class _WallUnder:
    height: float = of("length", '"8 ft"', high=20 * ft)
    weight: float = of("area load", '"8 psf"', high=0.01)


def _copied(record, *names):
    """Fields of a version 2 record that were there already, for a record of version 1."""
    found = {one.name: one for one in dataclasses.fields(record) if one.name in names}
    return [
        (
            name,
            found[name].type,
            dataclasses.field(default=found[name].default, metadata=found[name].metadata),
        )
        for name in names
    ]


_Level = dataclasses.make_dataclass("_Level", [
    *_copied(Level, "name", "kind", "joists", "joist", "layers", "live", "roof_live", "snow", "slope", "ridge"),
    ("left_span", float, of("length", '"12 ft"', high=40 * ft, default=0.0)),
    ("right_span", float, of("length", '"12 ft"', high=40 * ft, default=0.0)),
    ("overhang", float, of("length", '"1 ft"', high=4 * ft, default=0.0)),
    ("wall_under", _WallUnder, of("record", "{ height = ... }", record=_WallUnder, default=None)),
    ("lands", bool, of("yes or no", "true", default=True)),
], frozen=True, kw_only=True)  # fmt: skip

_Opening = dataclasses.make_dataclass("_Opening", [
    *_copied(Opening, "clear_width", "height", "left_seat", "right_seat", "position", "greatest_depth", "greatest_width"),
    *_copied(Wall, "thickness", "plate"),
], frozen=True, kw_only=True)  # fmt: skip

_House = dataclasses.make_dataclass("_House", [
    *_copied(House, "name", "invented", "note"),
    ("levels", tuple, of("records", "[[levels]]", record=_Level)),
    ("opening", _Opening, of("record", "[opening]", record=_Opening)),
], frozen=True, kw_only=True)  # fmt: skip


def is_version_1(data):
    """Tell whether the data of a file are of version 1: it had one opening, and no walls.

    Parameters
    ----------
    data : dict
        The data of the file [-].

    Returns
    -------
    bool
        True for version 1 [-].

    Examples
    --------
    >>> is_version_1({"opening": {}})
    True
    """
    return "opening" in data and "walls" not in data


def upgraded(data):
    """Build a house in plan from the data of a file of version 1; what it left out counted as nothing, and does here.

    Parameters
    ----------
    data : dict
        The data of the file [-].

    Returns
    -------
    structlib.house.plan.House
        The house [-].

    Examples
    --------
    >>> floor = {"name": "floor", "kind": "floor", "left_span": "12 ft", "live": "40 psf"}
    >>> upgraded({"name": "a", "levels": [floor], "opening": {"clear_width": "6 ft"}}).levels[0].on
    ('left support of floor', 'the wall')
    """
    row = dict(data.get("opening") or {})
    row = {"height": "6 ft 10 in", "left_seat": "3 in", "right_seat": "3 in", **row}
    if "wall_thickness" in row:
        row["thickness"] = row.pop("wall_thickness")
    old = read_record(_House, {**data, "opening": row}, "the house")
    length = old.opening.clear_width + 2 * _ASIDE
    levels, walls = [], []
    rows = [one for one in old.levels if one.lands or one.wall_under]
    if not any(one.lands for one in rows):
        raise BadInput("no level of the house comes down on the wall; leave lands out for one that does")
    under = {one.name: f"wall under {one.name}" for one in rows}
    stack = [(under[one.name], one.wall_under or _WallUnder(height=0.0, weight=0.0)) for one in rows]
    room = _WallUnder(height=old.opening.height + old.opening.greatest_depth, weight=0.0)
    if rows[-1].wall_under:
        stack.append(("the wall", room))
    else:
        under[rows[-1].name] = "the wall"
        stack[-1] = ("the wall", room)
    for (name, size), below in zip(stack, [*(name for name, _ in stack[1:]), SOIL]):
        walls.append(
            Wall(
                name=name,
                on=(below,),
                at=0.0,
                start=0.0,
                end=length,
                height=size.height,
                weight=size.weight,
                plate=old.opening.plate,
                thickness=old.opening.thickness,
            )
        )
    under = {one.name: under[one.name] for one in rows if one.lands}
    for one in old.levels:
        made, stand = _level(one, under.get(one.name), length)
        levels += made
        walls += stand
    return House(
        name=old.name,
        invented=old.invented,
        note=old.note,
        levels=tuple(levels),
        walls=tuple(walls),
        openings=(_opening(old.opening),),
    )


def _opening(old):
    """The opening of version 1, in the wall that it did not name."""
    same = ("clear_width", "height", "left_seat", "right_seat", "position", "greatest_depth", "greatest_width")
    return Opening(
        name="the opening", wall="the wall", start=_ASIDE, wall_above=0.0, **{name: getattr(old, name) for name in same}
    )


def _level(old, middle, length):
    """A level and the walls that version 1 did not name, which hold what does not come down on the wall."""
    roof = old.kind == "roof"
    same = {name: getattr(old, name) for name in ("kind", "joist", "layers", "slope", "ridge")}
    same |= dict(start=0.0, end=length, joists=old.joists)
    same |= dict(roof_live=old.roof_live or 0.0, snow=old.snow or 0.0) if roof else dict(live=old.live or 0.0)
    left, right = old.left_span, old.right_span
    strange = ("live",) if roof else ("overhang", "snow", "roof_live")
    for name in [name for name in strange if getattr(old, name)]:
        raise BadInput(f"{old.name} is a {old.kind}; {name} does not belong to it").about(old.name, name)
    if roof and old.joists == "continuous":
        fault = BadInput(f"{old.name} is a roof; its rafters are cut at the ridge, so leave joists out")
        raise fault.about(old.name, "joists")
    if left + right <= 0:
        raise BadInput(
            f"{old.name} reaches to neither side of the wall; give left_span or right_span, for example 12 ft"
        ).about(old.name)
    if old.joists == "continuous" and not (left and right):
        raise BadInput(
            f"{old.name} has continuous joists but one span only; joists that end on the wall are 'cut'"
        ).about(old.name)
    far = lambda at, side: Wall(
        name=f"{side} support of {old.name}",
        on=(SOIL,),
        at=at,
        start=0.0,
        end=length,  # noqa: E731
        height=0.0,
        weight=0.0,
    )
    if not middle or not roof:
        stand = ([far(-left, "left")] if left or not middle else []) + (
            [far(right, "right")] if right or not middle else []
        )
        names = [one.name for one in stand if one.at < 0.0 or not middle and one.at <= 0.0]
        names += ([middle] if middle else []) + [one.name for one in stand if one.name not in names]
        return [Level(name=old.name, on=tuple(names), right_overhang=old.overhang, **same)], stand
    if left and right and old.overhang:
        raise BadInput(
            f"{old.name} has an overhang, so it lies on one side of its wall; give left_span or right_span"
        ).about(old.name)
    levels, stand = [], []
    reach, over = (
        (2.0, old.overhang) if old.ridge == "board" else (1.0, 0.0)
    )  # a pair has its other half beyond the ridge
    for side, span, sign in (("left", left, -1.0), ("right", right, 1.0)):
        if span:
            stand.append(far(sign * reach * span, side))
            ends = (old.overhang, over) if side == "right" else (over, old.overhang)
            name = old.name if not (left and right) else f"{old.name}, {side}"
            names = (middle, stand[-1].name) if side == "right" else (stand[-1].name, middle)
            levels.append(Level(name=name, on=names, left_overhang=ends[0], right_overhang=ends[1], **same))
    return levels, stand
