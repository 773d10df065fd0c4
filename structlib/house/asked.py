"""What is asked of each kind of part on the load's way: its members with the demands on them, gates, and notes."""

from dataclasses import replace
from itertools import product

from structlib.ground.loads import LOAD_TYPES
from structlib.ground.lumber import find_material
from structlib.ground.refusals import OutsideRule
from structlib.ground.showing import show
from structlib.house.asked_beams import beam_member, told_of
from structlib.house.asked_roof import rafters, roof_on_ridge
from structlib.house.beam import BeamJob, TypedLoad, demands_on
from structlib.house.beam_jobs import beam_job, gates_of_places, held_every, use_of
from structlib.house.measured import cut_member, stops
from structlib.house.old_floor import asked_of_measured
from structlib.house.pieces import area_load, piece_of
from structlib.house.plan import Beam, Level, Opening, Pad, Post, Wall, Wood
from structlib.house.plies import ply_layout
from structlib.house.running import clipped, running_demands
from structlib.house.seats import clear_spans, joist_seats, room_on
from structlib.house.shares import along
from structlib.house.steps import seats_of
from structlib.mechanics.beams import LineLoad, PointLoad
from structlib.rules.check import BeamUse
from structlib.rules.members import (
    ContinuousMember,
    JoistMember,
    PadMember,
    PlateMember,
    PostMember,
    Push,
    shares_up_to,
)  # fmt: skip

_SAME = 1e-3  # mm
_NOTHING = 1e-3  # N or N/mm: less is rounding
_ROUNDING = 1e-9  # of a length


def _put_in(wood, rulebook):
    """The piece that is meant, with the values that the wood has as it is put in."""
    piece = piece_of(wood)
    if not isinstance(wood, Wood) or not wood.incised and wood.treatment == "none":
        return piece
    return replace(piece, material=rulebook.in_service(piece.material, incised=wood.incised, treatment=wood.treatment))


# ---- beams and joists: one member a span ----


def _beam(path, element, rulebook, arranged=False):
    part, axis, wood = element.part, path.axis(element.name), element.part.chosen
    gates, notes = told_of(part)
    gates += [gate for told in gates_of_places(path, element).values() for gate in told]
    gates += _stands_past(path, element, lambda share: along(axis, share), (Post, Wall))
    if wood is None:
        return (
            [],
            gates,
            [f"the wood of {element.name} is not chosen; what is asked of it stays, without its own weight"],
        )
    notes += _room(path, element, axis, piece_of(wood))
    try:
        piece = _put_in(wood, rulebook)
    except OutsideRule as error:
        return [], gates, [*notes, str(error)]
    asked, seats = [], clear_spans(path, element)
    for number, places in enumerate(element.spans):
        if number not in seats:
            notes.append(
                f"the seats of {element.name} leave no clear span between {show(places[0], 'length')} and "
                f"{show(places[-1], 'length')} along it"
            )
            continue
        reach, over = _reach(element, number)
        if not (arranged or _runs_on(places, reach)):
            one, withheld = _single_span(path, element, number, piece, rulebook)
            asked.append(one)
            gates += withheld
        elif not isinstance(wood, Wood):
            notes.append(
                f"{element.name} goes on past its posts or in one piece over them; the checks here of a beam with steel "
                "in it are for single spans, and what is asked of it stays"
            )
        else:
            asked.append(_one_piece(path, element, piece, reach, over, (places, seats[number]), rulebook))
            if part.position == "flush" and piece.plies > 1:
                gates.append(f"No verdict: {_RUNS_ON} ({element.name}).")
    return asked, gates, notes


def _reach(element, number):
    """From where to where one member of a beam reaches, and how much of what stands over each end of it is its own."""
    part, places, last = element.part, element.spans[number], len(element.spans) - 1
    ends = seats_of(part) if isinstance(part, Opening) else (part.start, part.end)
    reach = (places[0] if number else ends[0], places[-1] if number < last else ends[1])
    return reach, (0.5 if number else 1.0, 0.5 if number < last else 1.0)


def _single_span(path, element, number, piece, rulebook):
    """One span of a beam between two seats with what is asked of it; a gate where its plies are not joined for that."""
    made_of, job = element.part.chosen, beam_job(path, element.name, number)
    member = beam_member(made_of, piece, job)
    asked = member, demands_on(job, member, rulebook)
    if not isinstance(made_of, Wood) or roof_on_ridge(path, element):
        return asked, []
    withheld = ply_layout(replace(job, seat_width=None), piece, rulebook)[0]
    return asked, [f"No verdict: {withheld} ({element.name})."] if withheld else []


def _one_piece(path, element, piece, reach, over, on, rulebook):
    """A beam in one piece on its places and seats, and what is asked over every arrangement of what comes and goes."""
    (places, seats), axis, roof = on, path.axis(element.name), roof_on_ridge(path, element)
    loads = [
        one
        for share in (*element.received, *element.own)
        for one in clipped(share.source, share.amount, along(axis, share), reach, over)
    ]
    braces = held_every(element.part, roof)
    member = _running(piece, places, reach, seats, braces, use=use_of(roof), wet=element.part.chosen.wet)
    return member, running_demands(member, loads, rulebook)


def _room(path, element, axis, piece):
    """Notes where the beam is deeper, wider or higher than there is room, or its seat longer than what is below."""
    part, notes = element.part, []
    for most, size, word in ((part.greatest_depth, piece.depth, "deep"), (part.greatest_width, piece.width, "wide")):
        if size > most + _SAME:
            notes.append(
                f"there is room for a beam {show(most, 'section length')} {word} at {element.name}, and this one is "
                f"{show(size, 'section length')} {word}"
            )
    if isinstance(part, Opening) and part.position == "dropped":
        tall = part.height + piece.depth + part.wall_above
        if tall > axis.height + _SAME:
            notes.append(
                f"{element.name}, its beam and the wall above are {show(tall, 'length')} high, and {axis.name} is "
                f"{show(axis.height, 'length')} high: it does not fit"
            )
    written = (part.left_seat, part.right_seat) if isinstance(part, Opening) else [part.seat] * len(element.gives)
    for share, seat in zip(element.gives, written):
        room = room_on(path.element(share.to).part, part)
        if seat > room + _SAME:
            notes.append(
                f"the seat of {element.name} is written as {show(seat, 'section length')}, and {share.to} has "
                f"{show(room, 'section length')}: it is judged with that"
            )
    return notes


def _runs_on(places, reach):
    """Whether what lies on these supports goes on over one, or past the first or last."""
    return len(places) > 2 or reach[0] < places[0] - _SAME or reach[1] > places[-1] + _SAME


_FLOOR = BeamUse()


def _running(piece, places, reach, seats, top_braces, *, use=_FLOOR, **more):
    """A member in one piece from end to end; its bottom edge is held at its supports alone."""
    inside = [reach[0], *places, reach[1]]
    return ContinuousMember(
        piece.material,
        piece.ply_width,
        piece.depth,
        piece.plies,
        tuple(at - reach[0] for at in places),
        tuple(seats),
        reach[1] - reach[0],
        top_braces,
        max(b - a for a, b in zip(inside, inside[1:])),
        use=use,
        **more,
    )


def _stands_past(path, element, stretch, kinds):
    """A gate for every post or wall that stands past the last support of what carries it."""
    first, last = element.spans[0][0], element.spans[-1][-1]
    past = [
        share.source
        for share in element.received
        if (stretch(share)[0] < first - _SAME or stretch(share)[1] > last + _SAME)
        and isinstance(path.element(share.source).part, kinds)
    ]
    return [
        f"{name} stands on {element.name} past its last support: printed tables do not cover that, so an engineer "
        "designs it and only what is asked is shown."
        for name in dict.fromkeys(past)
    ]


#: Why plies of a beam that goes on past a support have no verdict where they are loaded from the side.
_RUNS_ON = "plies loaded from the side of a beam that goes on over its supports: how they are joined is for an engineer"


def _joists(path, element, rulebook):
    level = element.part
    if level.kind == "roof":
        return rafters(path, element, rulebook)
    if level.joist is None and level.measured is None:
        return (
            [],
            [],
            [f"the joists of {level.name} are not written; what they bring down stands without their weight"],
        )
    gates, measured = _stands_past(path, element, lambda share: (share.x, share.x_end), Wall), level.measured
    gates += [] if measured is None else stops(measured)
    notes = [_SEATS_NOT_WRITTEN.format(level.name)] if measured is None and level.seat is None else []
    last, over_y = len(element.spans) - 1, lambda shares, y: tuple(one for one in shares if one.y < y < one.y_end)
    # what stands on the joists, and what holds them, is alike from one place along the house to the next
    stands = {
        (over_y(element.received, y), tuple(joist_seats(path, level, over_y(element.gives, y)).items())): None
        for y in {(one.y + one.y_end) / 2: None for one in element.gives}
    }
    spacing = (level.joist or measured).spacing
    even = [
        amount * spacing for amount in area_load(level, level.slope)
    ]  # with the joist's own weight, where it is known
    asked = []
    for (number, places), (on, seats) in product(enumerate(element.spans), stands):
        reach = (
            places[0] - (0.0 if number else level.left_overhang),
            places[-1] + (0.0 if number < last else level.right_overhang),
        )
        over = (0.5 if number else 1.0, 0.5 if number < last else 1.0)
        # a wall or something long across the joists is a point load on each
        loads = clipped(level.name, even, reach, reach)
        for one in on:
            loads += clipped(one.source, [amount * spacing for amount in one.amount], (one.x, one.x), reach, over)
        if measured is None:
            asked.append(_joist(level, places, reach, loads, dict(seats), rulebook))
            continue
        if _runs_on(places, reach):
            return (
                [],
                gates,
                [
                    f"the measured joists of {level.name} go on past a support; the checks of old joists are for single "
                    "spans, and what is asked of them stays"
                ],
            )
        try:
            cut = cut_member(measured, places[1] - places[0], level.kind)
            asked += asked_of_measured(cut.joist, cut.span, _typed(loads), rulebook, cut)
        except OutsideRule as refusal:
            return [], gates, [f"{level.name}: {refusal}"]
    return asked, gates, notes


def _typed(loads, own=0.0):
    """Loads on one span, by type, without the member's own weight, which the solver adds [N/mm or N]."""
    found = []
    for _, amounts, start, end in loads:
        if end > start:
            amounts = [amounts[0] - own, *amounts[1:]]
        found += [
            TypedLoad(kind, LineLoad(start, end, amount) if end > start else PointLoad(start, amount))
            for kind, amount in zip(LOAD_TYPES, amounts)
            if amount > 0
        ]
    return tuple(found)


#: What is told of a level whose seats nobody wrote.
_SEATS_NOT_WRITTEN = (
    "the seat of the joists of {} is not written, so no seat of theirs is judged; they span between the middles of what they "
    "sit on"
)


def _joist(level, places, reach, loads, seats, rulebook):
    """One joist of a level, and what each combination asks of it."""
    joist, use, seats = (
        level.joist,
        BeamUse("floor" if level.kind == "floor" else "ceiling"),
        [seats[at] for at in places],
    )
    piece = piece_of(Wood(species=joist.species, grade=joist.grade, size=joist.size, plies=joist.plies))
    repetitive = joist.spacing <= shares_up_to(rulebook) * (1 + _ROUNDING) or None
    if _runs_on(places, reach):
        member = _running(piece, places, reach, seats, 0.0, repetitive=repetitive, use=use)
        return member, running_demands(member, loads, rulebook)
    member = JoistMember(
        piece.material, piece.ply_width, piece.depth, piece.plies, *seats, use=use, repetitive=repetitive
    )
    clear = places[1] - places[0] - (seats[0].length + seats[1].length) / 2
    job = BeamJob(clear, *seats, _typed(loads, member.weight_per_length), 0.0)
    return member, demands_on(job, member, rulebook)


# ---- posts and pads: everything above presses along one line ----


def _pushes(element, rulebook, off_middle=0.0):
    total = dict(element.total())
    present = {kind for kind, amount in total.items() if amount}
    return tuple(
        Push(one, float(sum(one.factor(kind) * amount for kind, amount in total.items())), off_middle)
        for one in rulebook.combinations(present)
    )


def post_member(post, rulebook, free=True):
    """Return a post of a house as a rulebook is asked about it.

    Parameters
    ----------
    post : structlib.house.plan.Post
        The post; its wood is chosen [-].
    rulebook : structlib.rules.check.Rulebook
        The rules, which say what its wood can give as it is put in [-].
    free : bool
        Whether it stands in no wall [-].

    Returns
    -------
    structlib.rules.members.PostMember
        The member [-].

    Examples
    --------
    >>> from structlib.house.file import demo_house
    >>> from structlib.rules.choice import RULEBOOK
    >>> round(post_member(demo_house().posts[0], RULEBOOK).width, 1)  # three plies of 38.1 mm
    114.3
    """
    piece = _put_in(post.wood, rulebook)
    return PostMember(
        piece.material,
        piece.ply_width,
        piece.depth,
        post.height,
        piece.plies,
        post.fastening,
        post.held_width,
        free and post.held_width is None,
        post.wood.wet,
    )


def _post(path, element, rulebook):
    post, gates = element.part, []
    if post.on == "soil":
        gates.append(
            f"{post.name} comes down on the footing of a wall, or on soil: what spreads it there must be looked "
            "at on site, and is for an engineer."
        )
    if post.wood is None:
        return [], gates, [f"the wood of {post.name} is not chosen; what is asked of it stays, without its own weight"]
    below = next((one for one in path.house.parts() if one.name == post.on), None)
    if isinstance(below, Wall) and below.made_of == "masonry":
        gates.append(f"{post.name} stands on masonry: whether {below.name} can take the push is for an engineer.")
    try:
        # the studs under an opening are no posts of the house: they stand in its wall
        member = post_member(post, rulebook, free=post in path.house.posts)
    except OutsideRule as error:
        return [], gates, [str(error)]
    pushes = _pushes(element, rulebook, post.off_middle)
    asked = [(member, pushes)]
    pressed = below.chosen if isinstance(below, (Beam, Opening)) else None
    if isinstance(pressed, Wood):
        asked.append((PlateMember(member, piece_of(pressed).material, below.name), pushes))
    if post.plate is not None:
        asked.append((PlateMember(member, find_material(post.plate.species, post.plate.grade)), pushes))
    return asked, gates, []


def _pad(path, element, rulebook):
    pad, notes = element.part, []
    if not pad.soil:
        return (
            [],
            [
                f"The soil under {pad.name} is not known, or is fill: what it bears must be looked at on site. Only "
                "what is asked of it is shown."
            ],
            notes,
        )
    for share in element.received:
        off = max(abs(share.x - pad.x), abs(share.y - pad.y))
        if off > 1.0:
            gate = (
                f"{share.source} stands {show(off, 'section length')} off the middle of {pad.name}: the soil is pressed "
                "unevenly, and that is for an engineer."
            )
            return [], [gate], notes
    above = [path.element(share.source).part for share in element.received]
    if not above or any(getattr(one, "wood", None) is None for one in above):
        return (
            [],
            [],
            [
                f"what stands on {pad.name} is not a post of known size, so how far the pad reaches past it cannot be "
                "told; what is asked of it stays"
            ],
        )
    pieces = [piece_of(one.wood) for one in above]
    base = min(min(one.ply_width * one.plies, one.depth) for one in pieces)
    if base > pad.side:
        return [], [], [f"{pad.name} is narrower than what stands on it; make it wider"]
    return [(PadMember(pad.side, base, pad.soil), _pushes(element, rulebook))], [], notes


#: By kind of part: (members with demands, gates, notes).
ASKED = {Level: _joists, Opening: _beam, Beam: _beam, Post: _post, Pad: _pad}
