"""Seats beside the bench: joists over a beam, jack studs, pockets, tight rooms, slopes and fasteners."""

from math import floor, pi
from textwrap import wrap

import numpy

from structlib.ground.lumber import find_material
from structlib.ground.refusals import BadInput, OutsideRule
from structlib.ground.showing import show
from structlib.ground.sizes import dressed_size
from structlib.ground.units import ft, inch, lb, plf
from structlib.pages.kit.door import hold
from structlib.pages.kit.show import Table, start_values
from structlib.pages.topics.seat.connections import pattern_words
from structlib.pages.topics.seat.page import SeatPage
from structlib.pictures.drawings.between_walls import BetweenWallsView, draw_between_walls
from structlib.pictures.drawings.joists_on_beam import Meeting, MeetingsView, draw_joists_on_beam
from structlib.rules.choice import RULEBOOK

_ROOMS = ("bearing", "column_strength", "dowels", "factors", "fastening", "nailing_patterns", "seats")
bearing, column_strength, dowels, factors, fastening, nailing_patterns, seats = map(RULEBOOK.room, _ROOMS)
_GAP = 0.25 * inch


def joist_seats(ply_width: float = 1.5 * inch, gap: float = _GAP, system: str = "us"):
    """Compare the seat that each joist gets over a beam of one to four plies, in line and side by side.

    ``ply_width``, ``gap`` [mm].

    Examples
    --------
    >>> joist_seats().rows[1][2]
    '1 1/2 in'
    """
    plies = numpy.arange(1, 5)
    touching = seats.joists_over_beam(ply_width=ply_width, plies=plies, meeting="butted")
    apart = seats.joists_over_beam(ply_width=ply_width, plies=plies, meeting="butted", gap=gap)
    lapped = seats.joists_over_beam(ply_width=ply_width, plies=plies, meeting="lapped")

    def told(found, row):
        return "" if found.enough[row] else ": too short"

    rows = []
    for row, count in enumerate(plies):
        rows.append(
            (
                str(count),
                show(count * ply_width, "section length", system),
                *(
                    f"{show(found.each[row], 'section length', system)}{told(found, row)}"
                    for found in (touching, apart, lapped)
                ),
            )
        )
    caption = (
        f"Seat of each joist. The code asks for {show(apart.needed, 'section length', system)}. "
        f"The gap here is {show(gap, 'section length', system)}."
    )
    return Table(("plies", "beam is wide", "in line, touching", "in line, with the gap", "side by side"), rows, caption)


def area_factors(away: float = 12 * inch, system: str = "us"):
    """List the bearing area factor of a short seat at a beam's end, and away from it.

    ``away`` [mm].

    Examples
    --------
    >>> area_factors().rows[1]
    ('1 1/2 in', '1.000', '1.250')
    """
    lengths = numpy.array([1.0, 1.5, 3.0, 4.5, 6.0]) * inch
    at_end, inside = (
        bearing.bearing_area_factor(bearing_length=lengths, distance_to_end=distance) for distance in (0.0, away)
    )
    rows = [
        (show(length, "section length", system), f"{one:.3f}", f"{other:.3f}")
        for length, one, other in zip(lengths, at_end, inside)
    ]
    return Table(("seat", "at the end", f"{show(away, 'section length', system)} from the end"), rows)


def jack_counts(
    wood: tuple[str, ...] = ("Spruce-Pine-Fir", "No.1/No.2"), plies: tuple[int, ...] = (2, 3, 4), system: str = "us"
):
    """Count the jack studs under a beam's end, over its push.

    Examples
    --------
    >>> jack_counts().rows[3][:2]
    ('4,000 lb', '3 (needs 3.14 in)')
    """
    if len(wood) != 2:
        raise BadInput("the wood must be a species and a grade; for example ('Hem-Fir', 'No.2')")
    material = find_material(*wood)
    pushes = numpy.array([1000, 2000, 3000, 4000, 5000, 6000, 8000]) * lb
    columns = [
        seats.jack_studs(reaction=pushes, width=count * 1.5 * inch, bearing_value=material.bearing) for count in plies
    ]
    rows = [
        (
            show(push, "force", system),
            *(
                f"{int(found.count[row])} (needs {show(found.seat_needed[row], 'small length', system)})"
                for found in columns
            ),
        )
        for row, push in enumerate(pushes)
    ]
    caption = (
        f"Jack studs of 1 1/2 in below {material.name}, {show(material.bearing, 'stress', system)} "
        f"({material.verified}). The studs themselves are columns."
    )
    return Table(("push of that end", *(f"{count} plies" for count in plies)), rows, caption)


def least_seats(system: str = "us"):
    """List the code's least seats and, marked as such, what the trade does.

    Examples
    --------
    >>> [row[:2] for row in least_seats().rows]
    [('wood', '1 1/2 in'), ('metal', '1 1/2 in'), ('masonry or concrete', '3 in')]
    """
    rows = []
    for name, below in (("wood", "plate"), ("metal", "steel"), ("masonry or concrete", "masonry")):
        least = seats.seat_minimum(below)
        length = show(least.length, "section length", system)
        rows.append((name, length, f"{least.clause}, {least.verified}", least.practice))
    return Table(("on", "code's least", "rule", "common practice, no rule"), rows)


def pockets(left_behind: float = 4 * inch, system: str = "us"):
    """List the seat in a pocket cut into masonry walls, beside the code's least, and what to verify. Only the demand is told.

    ``left_behind`` [mm].

    Examples
    --------
    >>> pockets().rows[0]
    ('8 in', '4 in', '3 1/2 in', '3 in')
    """
    rows = []
    for wall in (8 * inch, 10 * inch, 12 * inch, 16 * inch):
        pocket = seats.masonry_pocket(wall_thickness=wall, left_behind=left_behind)
        rows.append(
            tuple(
                show(length, "section length", system)
                for length in (wall, pocket.depth, pocket.seat, pocket.check.asked)
            )
        )
    told = f"Stop and call first: {seats.GATE}. To verify on site: {'; '.join(pocket.conditions)}."
    caption = "\n".join(wrap(told, 100))
    return Table(("wall", "pocket cut", "seat left in it", "code's least"), rows, caption)


def swinging_in(
    clear_width: float = 12 * ft, depth: float = 9.25 * inch, width: float = 4.5 * inch, system: str = "us"
):
    """Compare ways to get a beam in between two walls: how long it may be, and the seats it is left with.

    ``clear_width``, ``depth``, ``width`` [mm].

    Examples
    --------
    >>> swinging_in().rows[0][1:]
    ('11 ft 11 11/16 in', '2 7/8 in', '2 7/8 in')
    """
    ledges = dict(near_ledge=3 * inch, far_ledge=3 * inch)
    holes = dict(near_pocket=8 * inch, far_pocket=4 * inch)
    clear = factors.length("masonry_pocket_clearance")
    ways = (
        ("one end lifted; two jack studs put under each end", depth, ledges),
        ("swung in level; two jack studs put under each end", width, ledges),
        ("one end lifted, by hand with 1/2 in of play; the same studs", depth, ledges | {"play": 0.5 * inch}),
        ("one end lifted into a pocket 8 in deep, then slid into one of 4 in", depth, holes),
        (
            "one end lifted into a pocket 4 in deep, the other on two jack studs",
            depth,
            {"near_pocket": 4 * inch, "far_ledge": 3 * inch},
        ),
    )
    rows = []
    for name, across, given in ways:
        # an end may reach the back of its pocket on the way in, but must not stay there
        left = {key: value - clear if key == "far_pocket" else value for key, value in given.items()}
        beam = seats.swing_in(clear_width=clear_width, across=across, **left)
        too_deep = 0.0
        if "near_pocket" in given:
            too_deep = max(0.0, beam.near_overlap + clear - given["near_pocket"])
        rows.append(
            (
                name,
                show(_down(beam.length - too_deep, system), "length", system),
                show(beam.near_seat - too_deep, "section length", system),
                show(beam.far_seat, "section length", system),
            )
        )
    caption = (
        f"Walls {show(clear_width, 'length', system)} apart, beam {show(depth, 'section length', system)} "
        "deep and "
        f"{show(width, 'section length', system)} wide. Geometry only. An end in a pocket keeps the "
        f"{show(clear, 'section length', system)} of clear space behind it that the code asks for "
        f"({seats.CLEARANCE_CLAUSE}, {factors.verified('masonry_pocket_clearance')}). The longest beam is rounded down."
    )
    return Table(("way", "longest beam", "seat, first end", "seat, other end"), rows, caption)


def _down(length, system):
    """A length as it can be cut: down to a whole 1/16 in, or millimetre."""
    step = inch / 16 if system == "us" else 1.0
    return floor(length / step + 1e-9) * step


def at_an_angle(species: str = "Spruce-Pine-Fir", grade: str = "No.1/No.2", size: str = "2x6", system: str = "us"):
    """List the bearing value of a rafter's seat cut over the slope of the roof.

    Notes
    -----
    The load is upright and the grain follows the roof. So the angle between load and grain is 90 degrees
    less the slope, not the slope itself.

    Examples
    --------
    >>> at_an_angle().rows[1]
    ('rafter at 4 in 12', '71.6 deg', '455 psi', '107 %')
    """
    wood = find_material(species, grade, size)
    board = dressed_size(size)
    along, _ = column_strength.crushing_value(wood, width=board.width, depth=board.depth, time_factor=1.0)
    rows = []
    steps = [("level beam", 0.0)] + [(f"rafter at {rise} in 12", numpy.arctan2(rise, 12)) for rise in (4, 6, 8, 12)]
    for name, slope in (*steps, ("end grain of a post", pi / 2)):
        value = bearing.bearing_value_at_angle(
            along=along, across=wood.bearing, sine=float(numpy.cos(slope)), cosine=float(numpy.sin(slope))
        )
        rows.append(
            (
                name,
                show(pi / 2 - slope, "angle", system),
                show(value, "stress", system),
                show(value / wood.bearing, "ratio", system),
            )
        )
    caption = f"{wood.name} {size}, values {wood.verified}; load of ten years; {bearing.AT_AN_ANGLE_CLAUSE}."
    return Table(("seat", "load to grain", "bearing value", "of that across the grain"), rows, caption)


def nailing_on_top():
    """List nailing patterns for a beam whose load comes down on all plies alike.

    Examples
    --------
    >>> nailing_on_top().rows[2][1:3]
    ('16d common', '12 in')
    """
    rows = [
        (
            one.name,
            one.nail,
            show(one.spacing, "section length"),
            str(one.lines),
            one.pattern,
            one.verified,
        )
        for one in nailing_patterns.top_loaded_patterns()
    ]
    caption = "Load on top, every ply on its post: the nails only hold the plies together."
    return Table(("pattern", "nail", "spacing", "lines", "how they stand", "known"), rows, caption)


def nailing_from_the_side(
    side_load: float = 400 * plf, size: str = "2x10", nail: str = "16d common", lines: int = 3, system: str = "us"
):
    """Work out the nails of beams whose load hangs on one side only.

    ``side_load`` [N/mm].

    Examples
    --------
    >>> nailing_from_the_side().rows[0][:2]
    ('2', '200 plf')
    """
    wood, board = find_material("Douglas Fir-Larch", "No.2", size), dressed_size(size)
    rows = []
    for plies in (2, 3, 4):
        crossing = fastening.load_to_pass(side_load=side_load, plies=plies)
        passed = show(crossing, "line load", system)
        if fastening.nothing_passes(crossing, side_load):
            rows.append((str(plies), passed, "", "nothing has to pass", pattern_words(system)))
            continue
        try:
            found = fastening.ply_fastening(
                plies=plies,
                ply_width=board.width,
                depth=board.depth,
                side_load=side_load,
                specific_gravity=wood.specific_gravity,
                fastener=dowels.nail(nail),
                rows=lines,
            )
        except OutsideRule as refusal:
            rows.append((str(plies), passed, "", "", str(refusal)))
            continue
        rows.append(
            (
                str(plies),
                passed,
                show(found.value, "force", system),
                f"{found.rows} lines, every {show(found.spacing, 'section length', system)}",
                f"{found.conditions[-2]}; {found.verified}",
            )
        )
    hung = show(side_load, "line load", system)
    caption = f"{size} plies of {wood.name}, {hung} hanging on one side, {nail} nails."
    return Table(("plies", "to pass to the next ply", "one nail", "nails", "to verify"), rows, caption)


def held_ends(system: str = "us", **changes):
    """List what connects the end of the bench's beam must hold: a demand in force, never a product.

    Examples
    --------
    >>> held_ends().rows[0][:2]
    ('hanger, if it hung instead', '5,301 lb down')
    """
    page = SeatPage(system)
    now = page.result(tuple(start_values(page, **changes).items()))
    reactions = {one.combination.name: one.axial for one in now.seat.demands}
    moment = max(abs(one.solution.extremes.moment.value) for one in now.beam.demands)
    rows = []
    for name, kind in (("hanger, if it hung instead", "hanger"), ("post cap below it", "post cap")):
        demand = fastening.connection_demand(kind, reactions)
        rows.append((name, f"{show(demand.down, 'force', system)} down", demand.down_combination, demand.sentence))
    member = now.beam.member
    held = fastening.beam_end_restraint(depth=member.depth, width=member.width, moment=moment)
    rows.append(
        (
            "clip or blocking against rolling",
            f"{show(held.force, 'force', system)} sideways",
            held.clause,
            f"{held.condition}; the force is {held.verified}",
        )
    )
    top = fastening.post_top_restraint(axial=max(reactions.values()))
    rows.append(
        (
            "top of the post against kicking out",
            f"{show(top.force, 'force', system)} sideways",
            top.clause,
            f"{top.condition}; the force is {top.verified}",
        )
    )
    return Table(("what holds", "at least", "loads and rule", "to verify"), rows)


def joist_picture(ply_width: float = 1.5 * inch, gap: float = _GAP, system: str = "us"):
    """Draw two joists in line over beams of two, three and four plies.

    ``ply_width``, ``gap`` [mm].

    Examples
    --------
    >>> joist_picture().title
    'With a gap of 1/4 in, joists in line need 3 plies'
    """
    meetings = []
    for plies in (2, 3, 4):
        found = seats.joists_over_beam(ply_width=ply_width, plies=plies, meeting="butted", gap=gap)
        meetings.append(Meeting(plies, found.each, show(found.each, "section length", system), found.enough))
    gap_text = show(gap, "section length", system)
    view = MeetingsView(
        title=f"With a gap of {gap_text}, joists in line need {found.plies_needed} plies",
        meetings=tuple(meetings),
        ply_width=ply_width,
        gap=gap,
        gap_text=gap_text,
        least_text=show(found.needed, "section length", system),
    )
    return draw_joists_on_beam(view)


def swing_picture(
    clear_width: float = 12 * ft, depth: float = 9.25 * inch, ledge: float = 3 * inch, system: str = "us"
):
    """Draw a beam on its way in between two walls, and the seats it is left with on jack studs.

    ``clear_width``, ``depth``, ``ledge`` [mm].

    Examples
    --------
    >>> swing_picture().title
    'Tilted in, it is 5/16 in short of the room: 2 7/8 in of seat remains'
    """
    beam = seats.swing_in(clear_width=clear_width, across=depth, near_ledge=ledge, far_ledge=ledge)
    seat = show(beam.near_seat, "section length", system)
    short = show(clear_width - beam.length, "section length", system)
    return draw_between_walls(
        BetweenWallsView(
            title=f"Tilted in, it is {short} short of the room: {seat} of seat remains",
            clear_width=clear_width,
            depth=depth,
            length=beam.length,
            ledge=ledge,
            seat=beam.near_seat,
            clear_width_text=show(clear_width, "length", system),
            length_text=show(beam.length, "length", system),
            seat_text=seat,
            ledge_text=f"{show(ledge, 'section length', system)} of jack studs",
        )
    )


hold(globals())
