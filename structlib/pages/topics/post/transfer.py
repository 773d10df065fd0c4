"""Cases of the notebook on posts: a post on a beam, a post on an old header, and a stair opening, as tables."""

from structlib.ground.lumber import find_material
from structlib.ground.showing import show
from structlib.ground.sizes import dressed_size
from structlib.ground.units import ft, inch, lb, plf, psf  # noqa: F401 (some: in examples)
from structlib.house.beam import BeamChoice, BeamJob, TypedLoad, check_beam
from structlib.mechanics.beams import Beam, LineLoad, PointLoad, Support, solve
from structlib.pages.kit.door import hold
from structlib.pages.kit.show import Table
from structlib.pages.topics.post.cases import LIVE, carries, columns, post, stepped_up, told
from structlib.rules.check import Seat
from structlib.rules.choice import RULEBOOK

footings, header_tables, seats = map(RULEBOOK.room, ("footings", "header_tables", "seats"))


def _plies(load):
    wood, piece = find_material("Hem-Fir", "No.2", "2x6"), dressed_size("2x6")
    found = told(
        columns.fewest_plies,
        wood,
        load=load,
        time_factor=LIVE.time_factor,
        ply_width=piece.width,
        depth=piece.depth,
        height=8 * ft,
    )
    return found if isinstance(found, str) else str(found)


def _one_floor_table():
    """The newest of the code's tables for a header under one floor alone."""
    return next(one for one in header_tables.header_bases() if one.supports == "one floor only")


def transfer_beam(load: float, span: float, place: float):
    """Put a post on a beam over two posts, and find what each of them gets.

    ``load`` [N]; ``span``, ``place`` [mm].

    Examples
    --------
    >>> [row[1] for row in transfer_beam(12000 * lb, 10 * ft, 3 * ft).rows]
    ['8,400 lb', '3,600 lb', '12,000 lb', '0 lb', '25,200 lb-ft', '3', '3']
    """
    solution = solve(Beam(span, 1e12, (Support(0.0), Support(span)), (PointLoad(place, load),)))
    left, right = (reaction.force for reaction in solution.reactions)
    rows = (
        ("left post", show(left, "force")),
        ("right post", show(right, "force")),
        ("both together", show(left + right, "force")),
        ("load less both", show(load - left - right, "force")),
        ("moment in the transfer beam", show(solution.extremes.greatest_moment.value, "moment")),
        ("left post, fewest 2x6 plies at 8 ft", _plies(left)),
        ("right post, fewest 2x6 plies at 8 ft", _plies(right)),
    )
    return Table(
        ("", "value"),
        rows,
        f"{show(load, 'force')} at {show(place, 'length')} on a {show(span, 'length')} beam; its own weight left out",
    )


def _under_the_header(pushes, choice):
    """What stands under both ends of a header for each push, and what a table of headers gives: rows."""
    studs = [
        seats.jack_studs(
            reaction=push, width=choice.ply_width * choice.plies, bearing_value=choice.material.bearing
        ).count
        for push in pushes
    ]
    rows = [
        ("push on each side", *(show(push, "force") for push in pushes)),
        ("jack studs each end", *map(str, studs)),
    ]
    rows.append(
        (
            "what those studs carry, 7 ft, in a wall",
            *(carries(post("2x4", min(n, 5), 7 * ft, held_width=0.0)).rsplit(", ", 1)[0] for n in studs),
        )
    )
    soil = footings.find_soil(footings.soil_names()[0])
    sides = [footings.plain_pad(load=push, soil=soil, base=1.5 * inch)[0] for push in pushes]
    rows.append(
        ("pad side below, 1,500 psf", *(show(stepped_up(side), "section length", precision=2) for side in sides))
    )
    # a table of headers has no column for a post; what it gives for the floor alone stands beside it
    cell = header_tables.header_span(_one_floor_table(), choice.name, building_width=24 * ft)
    rows.append(
        (
            "may span, by the code's table made again, one floor, house 24 ft wide",
            "{} ft {} in".format(*header_tables.as_printed(cell.span).split("-")),
            "has no column for a post",
        )
    )
    return rows


def post_on_a_header(*, dead: float, live: float, width: float = 4 * ft, size: str = "2x10", plies: int = 2):
    """Re-check an existing opening when a new post comes to stand on the middle of its header.

    ``dead``, ``live`` [N]; ``width`` [mm].

    Examples
    --------
    >>> table = post_on_a_header(dead=2000 * lb, live=4000 * lb)
    >>> [row for row in table.rows if row[0] == "jack studs each end"]
    [('jack studs each end', '1', '3')]
    """
    wood, piece = find_material("Hem-Fir", "No.2", size), dressed_size(size)
    seat, span = Seat(1.5 * inch, "post"), width + 1.5 * inch
    old = (
        TypedLoad("dead", LineLoad(0.0, span, 150 * plf)),
        TypedLoad("live", LineLoad(0.0, span, 240 * plf)),
    )
    new = (TypedLoad("dead", PointLoad(span / 2, dead)), TypedLoad("live", PointLoad(span / 2, live)))
    choice = BeamChoice(wood, piece.width, piece.depth, plies, f"{plies}-{size}")
    jobs = [BeamJob(width, seat, seat, loads, unbraced_length=16 * inch) for loads in (old, old + new)]
    before, after = (check_beam(job, choice, RULEBOOK) for job in jobs)
    rows = []
    for kind, name in (
        ("bending", "bending"),
        ("shear", "shear"),
        ("bearing", "crushing on one jack stud"),
        ("sag", "sag"),
    ):
        shares = [max(one.share for one in result.checks if one.kind == kind) for result in (before, after)]
        rows.append((f"header, {name}", *(show(share, "ratio") for share in shares)))
    pushes = [max(one.solution.reactions[0].force for one in result.demands) for result in (before, after)]
    rows += _under_the_header(pushes, choice)
    head = ("over the old opening", "before", "with the post on it")
    return Table(
        head,
        rows,
        f"{plies}-{size} Hem-Fir No.2 over {show(width, 'length')}; the post brings {show(dead + live, 'force')}",
    )


def _around_the_stair(joist_span, wide, long, dead, live):
    """Loads on the header and on a trimmer, and both as checked."""
    wood, piece = find_material("Hem-Fir", "No.2", "2x10"), dressed_size("2x10")
    tail, strip = joist_span - wide, 16 * inch / 2
    seat = Seat(1.5 * inch, "post")

    def lines(span, widths):
        return tuple(
            TypedLoad(kind, LineLoad(0.0, span, area * widths)) for kind, area in (("dead", dead), ("live", live))
        )

    header_loads = lines(long, tail / 2)
    choice = BeamChoice(wood, piece.width, piece.depth, 2, "2-2x10")
    # the trimmer's own weight is added with its checks; the header's reaches it here
    own = wood.weight_density * choice.plies * choice.ply_width * choice.depth
    on_trimmer = tuple(
        TypedLoad(one.load_type, PointLoad(tail, (one.load.intensity + more) * long / 2))
        for one, more in zip(header_loads, (own, 0.0))
    )
    header = check_beam(
        BeamJob(long - seat.length, seat, seat, header_loads, unbraced_length=0.0, loaded_on="side"), choice, RULEBOOK
    )
    trimmer = check_beam(
        BeamJob(joist_span - seat.length, seat, seat, (*lines(joist_span, strip), *on_trimmer), unbraced_length=0.0),
        choice,
        RULEBOOK,
    )
    return header_loads, on_trimmer, header, trimmer


def stair_opening(
    *,
    joist_span: float = 14 * ft,
    wide: float = 10 * ft,
    long: float = 3.5 * ft,
    dead: float = 12 * psf,
    live: float = 40 * psf,
):
    """Follow the load around an opening in a floor: tail joists, header, trimmers, walls.

    ``joist_span``, ``wide``, ``long`` [mm]; ``dead``, ``live`` [MPa].

    Examples
    --------
    >>> [row[1] for row in stair_opening().rows[:2]]
    ['104 plf', '192 lb']
    """
    header_loads, on_trimmer, header, trimmer = _around_the_stair(joist_span, wide, long, dead, live)

    def worst(result):
        # the seats are 1 1/2 in, the least, and so use all of that rule; strength and sag are asked here
        check = max((one for one in result.checks if one.kind != "seat"), key=lambda one: one.share)
        name = "crushing at its seat" if check.kind == "bearing" else check.name
        return f"{show(check.share, 'ratio')} ({name})"

    near, far = (trimmer.demands[-1].solution.reactions[k].force for k in (0, -1))
    rows = (
        (
            "tail joists bring to the header",
            show(sum(one.load.intensity for one in header_loads), "line load"),
        ),
        (
            "header brings to each trimmer, its own weight too",
            show(sum(one.load.force for one in on_trimmer), "force"),
        ),
        ("header 2-2x10, share", worst(header)),
        ("trimmer 2-2x10, share", worst(trimmer)),
        ("trimmer to the wall at the tail joists", show(near, "force")),
        ("trimmer to the wall at the stair", show(far, "force")),
    )
    around = f"opening {show(wide, 'length')} along the joists, {show(long, 'length')} across"
    loads = f"{show(dead, 'area load')} dead, {show(live, 'area load')} live"
    caption = (
        f"{around}; joists of 2x10 Hem-Fir No.2 over {show(joist_span, 'length')}; {loads}. "
        "Header and trimmers weigh too; their weight is in. Their seats are 1 1/2 in, all of the code's least. "
        "Not in: the stair that hangs on the header, a wall or rail beside it."
    )
    return Table(("around the stair opening", ""), rows, caption)


hold(globals())
