"""One step of the path for each kind of part: what it receives and adds, brought to what it rests on."""

import numpy

from structlib.ground.refusals import BadInput
from structlib.ground.units import ft  # noqa: F401 (used in the examples)
from structlib.house.influence import influence
from structlib.house.pieces import piece_of
from structlib.house.plan import SOIL, Beam, Level, Load, Opening, Pad, Post, Wall
from structlib.house.roofs import pair_of, surfaces
from structlib.house.shares import SAME, Element, Share, along, in_line, on_axis, text_of


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


def _level(level, parts, received):
    lines = _lines_under(level, parts)
    places = sorted(lines)
    left, right = places[0] - level.left_overhang, places[-1] + level.right_overhang
    for share in received:
        if not left - SAME <= share.x <= right + SAME:
            raise BadInput(
                f"{share.source} stands on {level.name} by name, at {text_of(share.x)} across the house, and its "
                f"joists reach from {text_of(left)} to {text_of(right)}"
            ).about(share.source, "x")
    own, gives, stretches = [], [], []
    for start, end in _stretches(level, lines, received):
        holders = {x: _holder(level, lines[x], x, start, end) for x in places}
        on_joist = [(share.amount, share.x, share.x) for share in received if share.y <= start and share.y_end >= end]
        for amount, left, right in surfaces(level, places):
            own.append(Share(level.name, level.name, tuple(amount), left, start, right, end))
            on_joist.append((amount, left, right))
        for x, force in zip(places, _forces(places, level.joists, on_joist)):
            gives.append(Share(level.name, holders[x], tuple(map(float, force)), x, start, x, end))
        stretches.append((start, end, on_joist))
    pair = pair_of(level, places, parts, stretches)
    return Element(level, "level", received, tuple(own), tuple(gives), _spans(places, level.joists), pair)


def _lines_under(level, parts):
    """The walls and beams that a level rests on, by their place across the house."""
    lines = {}
    for name in level.on:
        if name == SOIL or not isinstance(parts[name], (Wall, Beam)) or parts[name].runs != "along":
            raise BadInput(
                f"{level.name} rests on {name!r}; joists rest on walls and beams that run along the house"
            ).about(level.name, "on")
        at = next((x for x in lines if abs(x - parts[name].at) < SAME), parts[name].at)
        lines.setdefault(at, []).append(parts[name])
    roof = level.kind == "roof"
    most = len(lines) if not roof else 2 if level.ridge == "board" else 3  # a ridge beam stands between two walls
    if not 2 <= len(lines) <= most:
        asked = (
            "at least two walls or beams"
            if not roof
            else "exactly two walls"
            if most == 2
            else ("a ridge beam and one wall or two")
        )
        raise BadInput(
            f"{level.name} must rest on {asked} that stand apart, got {', '.join(level.on) or 'none'}"
        ).about(level.name, "on")
    return lines


def _stretches(level, lines, received):
    """The level cut along the house wherever what is under or on it begins or ends."""
    marks = {level.start, level.end}
    for one in (*(line for row in lines.values() for line in row), *received):
        ends = (one.start, one.end) if isinstance(one, (Wall, Beam)) else (one.y, one.y_end)
        marks |= {y for y in ends if level.start < y < level.end}
    for share in received:
        if share.y < level.start - SAME or share.y_end > level.end + SAME:
            raise BadInput(
                f"{share.source} stands on {level.name} and reaches past its end at "
                f"{text_of(share.y if share.y < level.start else share.y_end)} along the house"
            ).about(share.source, "y")
    ordered = sorted(marks)
    return [(a, b) for a, b in zip(ordered, ordered[1:]) if b - a > SAME]


def _holder(level, line, x, start, end):
    found = [one.name for one in line if one.start - SAME <= start and one.end + SAME >= end]
    if len(found) == 1:
        return found[0]
    where = f"{text_of(x)} across the house, from {text_of(start)} to {text_of(end)} along it"
    if not found:
        raise BadInput(
            f"{level.name} has nothing under it at {where}; draw a wall or a beam there, or end the level"
        ).about(level.name, "on")
    raise BadInput(f"{level.name} rests on {' and '.join(found)} at once at {where}; let one of them end there").about(
        level.name, "on"
    )


def _wall(wall, parts, received):
    below = [parts[name] for name in wall.on if name != SOIL]
    openings = parts.openings_in(wall.name)
    _check_openings(wall, openings)
    over = [(*seats_of(one), one) for one in openings]
    marks = {wall.start, wall.end} | {y for first, last, _ in over for y in (first, last)}
    marks |= {y for one in below if isinstance(one, (Wall, Beam, Level)) for y in (one.start, one.end)}
    lines = [share for share in received if share.x != share.x_end or share.y != share.y_end]
    marks |= {y for share in lines for y in along(wall, share)}
    ordered = sorted(y for y in marks if wall.start - SAME <= y <= wall.end + SAME)
    own, gives = [], []
    for a, b in zip(ordered, ordered[1:]):
        if b - a <= SAME:
            continue
        opening = next((one for first, last, one in over if first - SAME <= a and b <= last + SAME), None)
        weight = wall.weight * (wall.height if opening is None else opening.wall_above)
        amount = sum(
            (numpy.array(s.amount) for s in lines if _covers(along(wall, s), a, b)),
            numpy.array([weight, 0, 0, 0]),
        )
        own.append(on_axis(wall, wall.name, wall.name, (weight, 0.0, 0.0, 0.0), a, b))
        holders = (opening.name,) if opening else _line_below(wall, below, a, b)
        gives += [on_axis(wall, wall.name, to, amount / len(holders), a, b) for to in holders]
    for share in received:
        if share not in lines:
            gives.append(_point_through(wall, share, over, below))
    return Element(wall, "wall", received, tuple(own), tuple(gives))


def _check_openings(wall, openings):
    last = wall.start
    for one in openings:
        first, end = one.start - one.left_seat, one.start + one.clear_width + one.right_seat
        if first < last - SAME or end > wall.end + SAME:
            raise BadInput(
                f"{one.name} with its seats reaches from {text_of(first)} to {text_of(end)} along {wall.name}, "
                f"and there is room from {text_of(last)} to {text_of(wall.end)}"
            ).about(one.name, "start")
        if one.height + one.wall_above > wall.height + SAME:
            raise BadInput(
                f"{one.name} is {text_of(one.height)} high with {text_of(one.wall_above)} of wall above its beam; "
                f"{wall.name} is {text_of(wall.height)} high"
            ).about(one.name, "height")
        last = end


def _line_below(wall, below, a, b):
    """What holds a wall between two places along it; where the joists of two levels end under it, each takes half."""
    found, levels = [], sum(isinstance(one, Level) for one in below)
    for one in below:
        if isinstance(one, Level):
            if wall.runs != "along":
                raise BadInput(
                    f"{wall.name} runs across the house on {one.name}; give it a wall or a beam below it"
                ).about(wall.name, "runs")
            if levels == 1 or one.start - SAME <= a and b <= one.end + SAME:
                found.append(one.name)
        elif isinstance(one, (Wall, Beam)) and in_line(wall, one) and one.start - SAME <= a and b <= one.end + SAME:
            found.append(one.name)
    if len(found) == levels == 2:
        return tuple(found)
    if len(found) == 1 or (found and a == b) or (not found and SOIL in wall.on):
        return (found[0] if found else SOIL,)  # where two meet, the first takes a point
    what = f"rests on {' and '.join(found)} at once" if found else "has nothing under it"
    raise BadInput(
        f"{wall.name} {what} from {text_of(a)} to {text_of(b)} along it; what is under a wall must be in line with it"
    ).about(wall.name, "on")


def _point_through(wall, share, over, below):
    """A point load on a wall: over an opening its beam takes it; masonry hands it on; studs need a post."""
    at = along(wall, share)[0]
    for first, last, opening in over:
        if first - SAME <= at <= last + SAME:
            return on_axis(wall, wall.name, opening.name, share.amount, at, at)
    if wall.made_of == "masonry":
        to = _line_below(wall, below, at, at)[0]
        return on_axis(wall, wall.name, to, share.amount, at, at)
    raise BadInput(
        f"{share.source} comes down on {wall.name} at {text_of(at)} along it, where no post takes it on; "
        "add a post below it and name it in 'on'"
    ).about(share.source, "on")


def _opening(opening, parts, received):
    wall, places = parts[opening.wall], seats_of(opening)
    names = (f"{opening.name}, left post", f"{opening.name}, right post")
    return _spanning(opening, "beam", wall, places, names, "cut", places, received)


def _beam(beam, parts, received):
    places, names = [], []
    for name in beam.on:
        places.append(_support_place(beam, parts[name] if name != SOIL else None))
        names.append(name)
    ordered = sorted(zip(places, names))
    places, names = [place for place, _ in ordered], [name for _, name in ordered]
    if len(places) < 2 or any(b - a < SAME for a, b in zip(places, places[1:])):
        raise BadInput(
            f"{beam.name} must rest on at least two things that stand apart, got {', '.join(beam.on) or 'none'}"
        ).about(beam.name, "on")
    return _spanning(beam, "beam", beam, places, names, beam.joints, (beam.start, beam.end), received)


def _support_place(beam, part):
    """Where along a beam the thing stands that it rests on."""
    if isinstance(part, Post):
        line, at = (part.x, part.y) if beam.runs == "along" else (part.y, part.x)
        fits = abs(line - beam.at) < SAME
    elif isinstance(part, (Wall, Beam)):
        at, fits = part.at, part.runs != beam.runs and part.start - SAME <= beam.at <= part.end + SAME
    else:
        raise BadInput(f"{beam.name} must rest on posts, walls or beams").about(beam.name, "on")
    if not fits or not beam.start - SAME <= at <= beam.end + SAME:
        raise BadInput(
            f"{beam.name} rests on {part.name}, which does not stand under it; see their places in the plan"
        ).about(beam.name, "on")
    return at


def _spanning(part, kind, axis, places, names, joints, ends, received):
    """A beam: its own weight and what it received, brought to its supports."""
    own = []
    if part.chosen is not None:
        weight = _piece(part.chosen, part, part.chosen_in[0]).weight
        own.append(on_axis(axis, part.name, part.name, (weight, 0.0, 0.0, 0.0), *ends))
    loads = []
    for share in (*received, *own):
        first, last = along(axis, share)
        if first < ends[0] - SAME or last > ends[1] + SAME:
            raise BadInput(
                f"{share.source} comes down beyond the end of {part.name}, at {text_of(last)} along it"
            ).about(share.source)
        loads.append((share.amount, first, last))
    forces = _forces(places, joints, loads)
    gives = tuple(
        on_axis(axis, part.name, name, tuple(force), at, at) for name, at, force in zip(names, places, forces)
    )
    return Element(part, kind, received, tuple(own), gives, _spans(places, joints))


def _piece(wood, part, field):
    try:
        return piece_of(wood)
    except BadInput as error:
        raise error.about(part.name, field) from None


def _post(post, parts, received):
    own = []
    if post.wood is not None:
        piece = _piece(post.wood, post, "wood")
        weight = piece.weight * post.height
        own.append(Share(post.name, post.name, (weight, 0.0, 0.0, 0.0), post.x, post.y, post.x, post.y))
    for share in received:
        if abs(share.x - post.x) > SAME or abs(share.y - post.y) > SAME:
            raise BadInput(
                f"{share.source} comes down {text_of(max(abs(share.x - post.x), abs(share.y - post.y)))} "
                f"beside {post.name}, which rests under it by name"
            ).about(share.source, "on")
    return _handed_down(post, "post", received, own, parts)


def _load(load, parts, received):
    amount = (load.dead, load.live, load.roof_live, load.snow)
    if load.length:
        below = parts.get(load.on)
        line = parts[below.wall] if isinstance(below, Opening) else below
        if not isinstance(line, (Level, Wall, Beam)):
            raise BadInput(
                f"{load.name} is spread over {text_of(load.length)}, so it must rest on a level, a wall or a beam"
            ).about(load.name, "on")
        _check_over(load, below, parts, load.length)
        across = getattr(line, "runs", "along") == "across"
        ends = (load.x + load.length, load.y) if across else (load.x, load.y + load.length)
        spread = tuple(one / load.length for one in amount)
        own, given = (Share(load.name, to, spread, load.x, load.y, *ends) for to in (load.name, load.on))
        return Element(load, "load", received, (own,), (given,))
    return _handed_down(
        load, "load", received, [Share(load.name, load.name, amount, load.x, load.y, load.x, load.y)], parts
    )


def _pad(pad, parts, received):
    for share in received:
        if abs(share.x - pad.x) > pad.side / 2 or abs(share.y - pad.y) > pad.side / 2:
            fault = BadInput(f"{share.source} comes down beside {pad.name}; move the pad under it")
            raise fault.about(pad.name, "x" if abs(share.x - pad.x) > pad.side / 2 else "y")
    return Element(
        pad,
        "pad",
        received,
        (),
        tuple(Share(pad.name, SOIL, s.amount, s.x, s.y, s.x_end, s.y_end) for s in received),
    )


def _check_over(part, below, parts, length=0.0):
    """A post or a load stands over the wall, the beam or the opening that it names, with all its length."""
    line = parts[below.wall] if isinstance(below, Opening) else below
    if not isinstance(line, (Wall, Beam)):
        return
    start, end = seats_of(below) if isinstance(below, Opening) else (line.start, line.end)
    axis, across = (part.y, part.x) if line.runs == "along" else (part.x, part.y)
    if abs(across - line.at) > SAME or axis < start - SAME or axis + length > end + SAME:
        raise BadInput(
            f"{part.name} rests on {below.name} by name, and does not stand over it; see their places"
        ).about(part.name, "on")


def _handed_down(part, kind, received, own, parts):
    """A post, or something heavy: all of it goes down at its own place."""
    below = parts.get(part.on)
    if isinstance(below, Level):
        raise BadInput(
            f"{part.name} stops at {below.name}, on joists or boards; name the post, the beam or the wall that "
            "takes it on below the floor"
        ).about(part.name, "on")
    if not (part.on == SOIL or isinstance(below, (Wall, Beam, Post, Pad, Opening))):
        raise BadInput(f"{part.name} rests on {part.on!r}, which carries no post").about(part.name, "on")
    _check_over(part, below, parts)
    amount = sum((numpy.array(share.amount) for share in (*received, *own)), numpy.zeros(4))
    gives = (Share(part.name, part.on, tuple(map(float, amount)), part.x, part.y, part.x, part.y),)
    return Element(part, kind, received, tuple(own), gives)


#: The step of each kind of part.
STEPS = {Level: _level, Wall: _wall, Opening: _opening, Beam: _beam, Post: _post, Pad: _pad, Load: _load}


# ---- statics along one axis ----


def _forces(places, joints, loads):
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


def _covers(stretch, a, b):
    return stretch[0] - SAME <= a and b <= stretch[1] + SAME
