"""What a beam sits on, and each of its seats apart: what it receives by type, and what is asked of it."""

from dataclasses import dataclass, replace

import numpy

from structlib.ground.loads import LOAD_TYPES
from structlib.ground.lumber import find_material
from structlib.house.influence import influence
from structlib.house.pieces import piece_of
from structlib.house.plan import Beam, Opening, Post, Wall
from structlib.house.shares import Element, along, on_axis
from structlib.mechanics.beams import LineLoad, PointLoad
from structlib.rules.check import NOT_WRITTEN, Seat
from structlib.rules.members import Push, seat_of

_SAME = 1e-3  # mm


@dataclass(frozen=True)
class Detail:
    """A place where one part rests on another, named after the part that rests: an end of a beam, a post's plate."""

    name: str
    of: object
    on: object


def seats_under(path, element, axis, number):
    """Return the seats of one member of a beam: on the studs or the plate of an opening, or half of a post beside another.

    Parameters
    ----------
    path : structlib.house.path.Path
        The path [-].
    element : structlib.house.shares.Element
        The beam [-].
    axis : structlib.house.plan.Wall or structlib.house.plan.Beam
        On whose line it lies [-].
    number : int
        Which member, from 0: a span, or all that is in one piece [-].

    Returns
    -------
    tuple of structlib.rules.check.Seat
        One a support, from the left; never longer than the post or the wall that it is on [-].

    Examples
    --------
    >>> from structlib.house.file import demo_house
    >>> from structlib.house.path import follow
    >>> path = follow(demo_house())
    >>> [one.below for one in seats_under(path, path.element("kitchen opening"), path.axis("kitchen opening"), 0)]
    ['post', 'post']
    """
    part, last = element.part, len(element.spans) - 1
    inner = len(element.spans[number]) - 2
    on = [path.element(share.to).part for share in element.gives[number : number + inner + 2]]
    if isinstance(part, Opening):
        written = (part.left_seat, part.right_seat)
        return tuple(_in_opening(part, axis, min(length, room_on(below, part))) for length, below in zip(written, on))
    shared = (0 < number, *[False] * inner, number < last)
    return tuple(
        _seat_on(below, min(part.seat, room_on(below, part)) / (2 if half else 1)) for half, below in zip(shared, on)
    )


def joist_seats(path, level, gives):
    """Return the seats of the joists of a level on what holds them at one place along the house.

    Parameters
    ----------
    path : structlib.house.path.Path
        The path [-].
    level : structlib.house.plan.Level
        The level [-].
    gives : iterable of structlib.house.shares.Share
        What the level hands on there [-].

    Returns
    -------
    dict of structlib.rules.check.Seat
        By the place across the house; `NOT_WRITTEN` where the level has no seat, in a hanger on the side of a beam [mm, -].

    Examples
    --------
    >>> from structlib.house.file import demo_house
    >>> from structlib.house.path import follow
    >>> path = follow(demo_house(), {"upper floor": {"seat": 76.2}})
    >>> floor = path.element("upper floor")
    >>> [one.below for one in joist_seats(path, floor.part, floor.gives).values()]
    ['plate', 'plate', 'plate']
    """
    if level.seat is None:
        return {share.x: NOT_WRITTEN for share in gives}
    found = {}
    for share in gives:
        below = path.element(share.to).part
        hung = isinstance(below, Beam) and below.position == "flush"
        length = min(level.seat, room_on(below, level))
        found[share.x] = Seat(length, "hanger") if hung else _seat_on(below, length)
    return found


def _in_opening(opening, wall, length):
    drawn = "studs" if opening.posts is not None else "masonry" if wall.made_of == "masonry" else "plate"
    on = drawn if opening.sits_on == "as drawn" else opening.sits_on
    return _on_plate(length, wall.plate) if on == "plate" else Seat(length, "post" if on == "studs" else on)


def _seat_on(below, length):
    if isinstance(below, Wall):
        return Seat(length, "masonry") if below.made_of == "masonry" else _on_plate(length, below.plate)
    if isinstance(below, Beam) and below.steel is not None:
        return Seat(length, "steel")
    if isinstance(below, Beam) and below.chosen is not None:
        return _on_plate(length, below.chosen, below.name)  # across the grain of that beam
    wide = piece_of(below.wood).depth if isinstance(below, Post) and below.wood is not None else None
    return Seat(length, "post", width=wide)  # a post's depth lies across the beam


def _on_plate(length, wood, name=""):
    """On wood across its grain; a plate of which nobody told the wood is left to the rulebook."""
    if wood is None:
        return Seat(length, "plate")
    # values across the grain are alike for every size; some woods are listed by size all the same
    wood = find_material(wood.species, wood.grade, getattr(wood, "size", "2x6"))
    return Seat(length, "plate", wood.bearing, name or f"plate of {wood.species}", wood.verified)


def room_on(below, part):
    """Return the longest seat that there is on what is below; studs under an opening stand side by side along it.

    Parameters
    ----------
    below : object
        What the beam rests on [-].
    part : structlib.house.plan.Beam or structlib.house.plan.Opening
        The beam [-].

    Returns
    -------
    float
        Length; infinite where its size is not known [mm].

    Examples
    --------
    >>> from structlib.house.file import demo_house
    >>> house = demo_house()
    >>> round(room_on(house.part("north post"), house.part("main beam")) / 25.4, 2)
    7.25
    """
    if isinstance(below, Wall):
        return below.thickness
    made_of = below.chosen if isinstance(below, Beam) else below.wood if isinstance(below, Post) else None
    if made_of is None:
        return float("inf")
    piece = piece_of(made_of)
    return piece.width if isinstance(part, Opening) or isinstance(below, Beam) else max(piece.width, piece.depth)


def on_span(stretch, amounts, ends):
    """Place a share on one span, from its left end; what lies outside the span is left out.

    Parameters
    ----------
    stretch : tuple of (float, float)
        Start and end along the beam, the same at a place [mm].
    amounts : iterable of float
        By type [N/mm, or N at a place].
    ends : tuple of tuple
        Both supports, and how much of what stands right over each presses this span's seat [mm, -].

    Returns
    -------
    list of tuple
        Type and load [-].

    Examples
    --------
    >>> on_span((1000.0, 1000.0), (50.0, 0.0, 0.0, 0.0), ((0.0, 1.0), (4000.0, 1.0)))
    [('dead', PointLoad(position=1000.0, force=50.0))]
    """
    start, end = stretch
    (left, _), (right, _) = ends
    found = []
    for kind, amount in zip(LOAD_TYPES, amounts):
        if not amount:
            continue
        if end - start <= _SAME:
            over = next((part for at, part in ends if abs(start - at) <= _SAME), 1.0)
            if left - _SAME <= start <= right + _SAME:
                found.append((kind, PointLoad(min(max(start, left), right) - left, float(amount) * over)))
        elif min(end, right) - max(start, left) > _SAME:
            found.append((kind, LineLoad(max(start, left) - left, min(end, right) - left, float(amount))))
    return found


def ends_of(element, number):
    """Return both supports of one span, and how much of a point load right over each presses this span's seat.

    Parameters
    ----------
    element : structlib.house.shares.Element
        The beam [-].
    number : int
        Which span, from 0 [-].

    Returns
    -------
    tuple of tuple
        Place and part of each [mm, -].

    Examples
    --------
    >>> from structlib.house.file import demo_house
    >>> from structlib.house.path import follow
    >>> [part for _, part in ends_of(follow(demo_house()).element("main beam"), 0)]
    [1.0, 0.5]
    """
    left, right = element.spans[number]
    return (left, 0.5 if number else 1.0), (right, 1.0 if number == len(element.spans) - 1 else 0.5)


def beam_ends(path, element):
    """Return every end of a beam as an element of its own: what it receives by type, and what it rests on.

    Parameters
    ----------
    path : structlib.house.path.Path
        The path [-].
    element : structlib.house.shares.Element
        The beam [-].

    Returns
    -------
    list of tuple
        Element, which span, 'left' or 'right'; none for a beam in one piece over its supports, or with overhangs [-].

    Examples
    --------
    >>> from structlib.house.file import demo_house
    >>> from structlib.house.path import follow
    >>> path = follow(demo_house())
    >>> [one.name for one, _, _ in beam_ends(path, path.element("kitchen opening"))]
    ['kitchen opening, left seat', 'kitchen opening, right seat']
    """
    if any(len(span) > 2 for span in element.spans) or not _within(element, path.axis(element.name)):
        return []
    axis, found, several = path.axis(element.name), [], len(element.spans) > 1
    for number in range(len(element.spans)):
        ends = (left, _), (right, _) = ends_of(element, number)
        pushes = numpy.zeros((2, len(LOAD_TYPES)))
        for share in (*element.received, *element.own):
            for kind, load in on_span(along(axis, share), share.amount, ends):
                point = isinstance(load, PointLoad)
                start, end = (load.position, load.position) if point else (load.start, load.end)
                parts = influence((0.0, right - left), "cut", start, end)
                size = load.force if point else load.intensity
                pushes[:, LOAD_TYPES.index(kind)] += size * numpy.array(parts)
        for side, at, push, gives in zip(("left", "right"), (left, right), pushes, element.gives[number:]):
            name = f"{element.name}, {side} seat" + (f" of span {number + 1}" if several else "")
            detail = Detail(name, element.part, path.element(gives.to).part)
            shares = (on_axis(axis, element.name, name, push, at, at), on_axis(axis, name, gives.to, push, at, at))
            found.append((Element(detail, "seat", shares[:1], (), shares[1:]), number, side))
    return found


def _within(element, axis):
    """Whether nothing of the beam, nor of what is on it, reaches past its outer supports."""
    reach = [along(axis, share) for share in (*element.received, *element.own)]
    first, last = element.spans[0][0], element.spans[-1][-1]
    return all(start >= first - _SAME and end <= last + _SAME for start, end in reach)


def clear_spans(path, element):
    """Return the seats of every member of a beam whose spans they leave a clear width.

    Parameters
    ----------
    path : structlib.house.path.Path
        The path [-].
    element : structlib.house.shares.Element
        The beam [-].

    Returns
    -------
    dict of tuple
        By the number of the member: its seats from the left [-].

    Examples
    --------
    >>> from structlib.house.file import demo_house
    >>> from structlib.house.path import follow
    >>> path = follow(demo_house())
    >>> list(clear_spans(path, path.element("main beam")))
    [0, 1, 2, 3]
    """
    axis = path.axis(element.name)
    found = {number: seats_under(path, element, axis, number) for number in range(len(element.spans))}
    return {number: seats for number, seats in found.items() if _clear(element.spans[number], seats)}


def _clear(places, seats):
    return all(b - a > (one.length + two.length) / 2 for a, b, one, two in zip(places, places[1:], seats, seats[1:]))


def seat_asked(member, demands, side):
    """Return one seat of a solved span, and what each combination presses on it with.

    Parameters
    ----------
    member : structlib.rules.check.BeamMember
        The beam over that span [-].
    demands : tuple of structlib.rules.check.BeamDemand
        What each combination asks of it [-].
    side : str
        'left' or 'right' [-].

    Returns
    -------
    tuple of (structlib.rules.members.SeatMember, tuple of structlib.rules.members.Push)
        Seat and pushes [N].

    Examples
    --------
    >>> from structlib.house.file import demo_house
    >>> from structlib.house.judging import judge_element
    >>> from structlib.house.path import follow
    >>> from structlib.rules.choice import RULEBOOK
    >>> beam = judge_element(follow(demo_house()), "main beam", RULEBOOK).answers[0]
    >>> seat_asked(beam.member, beam.demands, "left")[0].seat.below
    'masonry'
    """
    which = 0 if side == "left" else -1
    pushes = tuple(Push(one.combination, one.solution.reactions[which].force) for one in demands)
    return seat_of(member, side, 0.0 if side == "left" else demands[0].span), pushes


def plate_under(element, plate):
    """Return what a post presses across its grain as an element of its own: it receives all that the post hands on.

    Parameters
    ----------
    element : structlib.house.shares.Element
        The post [-].
    plate : structlib.rules.members.PlateMember
        The plate, or the beam below [-].

    Returns
    -------
    structlib.house.shares.Element
        The plate [-].

    Examples
    --------
    >>> from structlib.house.file import demo_house
    >>> from structlib.house.path import follow
    >>> from structlib.rules.members import PlateMember
    >>> plate_under(follow(demo_house()).element("south post"), PlateMember(None, None)).name
    'south post, plate'
    """
    name = f"{element.name}, {plate.name}"
    received = tuple(replace(share, to=name) for share in element.gives)
    return Element(
        Detail(name, element.part, plate),
        "plate",
        received,
        (),
        tuple(replace(one, source=name) for one in element.gives),
    )
