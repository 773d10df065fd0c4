"""Cases of the notebook on posts, as tables: each number is the library's answer, asked here once."""

from dataclasses import replace
from math import ceil

from structlib.ground.lumber import find_material
from structlib.ground.refusals import OutsideRule
from structlib.ground.showing import show
from structlib.ground.units import ft, inch, ksi, lb, plf, psf, psi  # noqa: F401 (some: in examples)
from structlib.house.beam import BeamChoice, BeamJob, TypedLoad, check_beam
from structlib.ground.sizes import dressed_size
from structlib.mechanics import formulas
from structlib.mechanics.beams import Beam, LineLoad, PointLoad, Support, solve
from structlib.pages.door import hold
from structlib.pages.show import Table
from structlib.rules.check import Seat, governing
from structlib.rules.us import columns, footings, header_tables, steel_columns
from structlib.rules.choice import RULEBOOK
from structlib.rules.us.fastening import beam_end_restraint, connection_demand, post_top_restraint
from structlib.rules.us.seats import jack_studs

_HEIGHTS = tuple(feet * ft for feet in (6, 7, 8, 9, 10, 12))
_OVER = "too slender"


def post(size="2x6", plies=3, height=8 * ft, species="Hem-Fir", grade="No.2", **more):
    """Return a post of stock lumber.

    Parameters
    ----------
    size : str
        Nominal size of a ply, or of a solid post [-].
    plies : int
        Plies side by side, 1 for a solid post [-].
    height : float
        Height [mm].
    species : str
        Species [-].
    grade : str
        Grade [-].
    **more : any
        Fields of `structlib.rules.us.columns.Column`, such as ``held_width`` [any].

    Returns
    -------
    structlib.rules.us.columns.Column
        The post [-].

    Examples
    --------
    >>> post("2x6", 3).width / inch
    4.5
    """
    piece = dressed_size(size)
    return columns.Column(
        find_material(species, grade, size), piece.width, piece.depth, height, plies, **more
    )


def concrete():
    """Return the weight of concrete that the pads are worked out with.

    Returns
    -------
    float
        Weight by volume [N/mm3].

    Examples
    --------
    >>> from structlib.ground.units import pcf
    >>> round(concrete() / pcf)
    150
    """
    return footings.concrete_weight()


def _up(length, step=0.5 * inch):
    """A length that is asked for, to the next step up."""
    return ceil(length / step - 1e-6) * step


def _live():
    return RULEBOOK.combinations({"live"})[1]


def _told(ask, *arguments, **named):
    """The answer, or the sentence of the rule that does not cover the case."""
    try:
        return ask(*arguments, **named)
    except OutsideRule as refusal:
        return str(refusal)


def _carries(column):
    found = _told(columns.capacity_of, column, time_factor=_live().time_factor)
    if isinstance(found, str):
        return _OVER
    way = {"depth": "depth", "width": "across", "separate plies": "plies apart"}[found.governs]
    return f"{show(found.load, 'force')}, {way}"


def plies_by_height(held_width=None):
    """List what posts of 2x6 plies and solid posts carry by height, and the way that each bows first.

    Parameters
    ----------
    held_width : float or None
        Distance between what holds the weak way; None for nothing, 0 for a wall all along [mm].

    Returns
    -------
    structlib.pages.show.Table
        Height, then 2 to 5 nailed plies, a 4x6 and a 6x6 [-].

    Examples
    --------
    >>> plies_by_height().rows[2][:3]
    ('8 ft', '3,505 lb, across', '10,533 lb, across')
    """
    posts = [post("2x6", plies, held_width=held_width) for plies in (2, 3, 4, 5)]
    posts += [
        post("4x6", 1, held_width=held_width),
        post("6x6", 1, species="Douglas Fir-Larch", grade="No.1", held_width=held_width),
    ]
    rows = [
        (show(height, "length"), *(_carries(replace(one, height=height)) for one in posts))
        for height in _HEIGHTS
    ]
    head = ("height", "2 plies", "3 plies", "4 plies", "5 plies", "solid 4x6", "solid 6x6, fir No.1")
    return Table(
        head, rows, "2x6 of Hem-Fir No.2, nailed; live load; bows first: across its plies, or along its depth"
    )


def nailed_or_bolted():
    """Compare three 2x6 plies nailed, bolted, and held all along by a wall.

    Returns
    -------
    structlib.pages.show.Table
        Height, nailed, bolted, in a wall [-].

    Examples
    --------
    >>> nailed_or_bolted().rows[2][:3]
    ('8 ft', '10,533 lb, across', '13,166 lb, across')
    """
    rows = []
    for height in _HEIGHTS:
        free = [post("2x6", 3, height, fastening=how) for how in ("nailed", "bolted")]
        rows.append((show(height, "length"), *map(_carries, (*free, post("2x6", 3, height, held_width=0.0)))))
    return Table(
        ("height", "nailed", "bolted", "nailed, in a wall"), rows, "three 2x6 of Hem-Fir No.2, live load"
    )


def both_ways(column):
    """Show both ways in which a post may bow: its length over its size, and what is left of its strength.

    Parameters
    ----------
    column : structlib.rules.us.columns.Column
        The post [-].

    Returns
    -------
    structlib.pages.show.Table
        Way, effective length, size, slenderness, share of the crushing strength [-].

    Examples
    --------
    >>> both_ways(post("2x6", 2, 8 * ft)).rows[1][3:]
    ('32.0', '15 %')
    """
    found = columns.capacity_of(column, time_factor=_live().time_factor)
    rows = [
        (
            name,
            show(ratio * size, "length"),
            show(size, "section length"),
            f"{ratio:.1f}",
            show(factor, "ratio"),
        )
        for name, size, ratio, factor in (
            ("along its depth", column.depth, found.slenderness_depth, found.factor_depth),
            ("across its width", column.width, found.slenderness_width, found.factor_width),
        )
    ]
    return Table(
        ("bowing", "free length", "size that way", "length / size", "of its crushing strength"), rows
    )


def off_the_middle(column, load):
    """Show what a load off the middle asks of a post.

    Parameters
    ----------
    column : structlib.rules.us.columns.Column
        The post [-].
    load : float
        Load on it [N].

    Returns
    -------
    structlib.pages.show.Table
        Distance off the middle, share used [-].

    Examples
    --------
    >>> [row[1] for row in off_the_middle(post("2x6", 3, 8 * ft), 6000 * lb).rows]
    ['57 %', '57 %', '68 %', '85 %', 'not judged']
    """
    rows = []
    for distance in (0.0, 0.5 * inch, 1 * inch, 1.5 * inch):
        checks = columns.column_checks(column, [columns.ColumnDemand(_live(), load, distance)])
        worst = governing(checks)
        rows.append((show(distance, "section length"), show(worst.share, "ratio"), worst.name))
    across = _told(columns.column_checks, column, [columns.ColumnDemand(_live(), load, 1 * inch, "width")])
    if isinstance(across, str):
        rows.append(("1 in, across the plies", "not judged", across))
    return Table(
        ("off the middle", "share", "check"),
        rows,
        f"{show(load, 'force')} on the post, pushed off along its depth",
    )


def split_by_a_floor(load, plies=3):
    """Compare a post that runs through a floor with one that a floor cuts in two.

    Parameters
    ----------
    load : float
        Load on the post [N].
    plies : int
        Plies of 2x6 of the post and of the squash blocks [-].

    Returns
    -------
    structlib.pages.show.Table
        What carries the load past the floor, asked, can give, share [-].

    Examples
    --------
    >>> [row[3] for row in split_by_a_floor(9000 * lb).rows]
    ['25 %', '86 %', '26 %', '86 %']
    """
    whole, demand = post("2x6", plies), [columns.ColumnDemand(_live(), load)]
    blocks = post("2x6", plies, 9.25 * inch)
    plate = find_material("Spruce-Pine-Fir", "No.1/No.2")
    end = next(check for check in columns.column_checks(whole, demand) if check.name == "end grain")
    block = next(check for check in columns.column_checks(blocks, demand) if check.name == "compression")
    across = columns.plate_check(whole, demand, plate)
    told = (
        ("the post runs through: end grain on end grain", end),
        ("the post stops on the floor's sole plate", across),
        ("squash blocks beside the joists, one a ply", block),
        ("the plates above and below those blocks", across),
    )
    rows = [
        (
            name,
            show(check.asked, "stress"),
            show(check.given, "stress"),
            show(check.share, "ratio"),
            check.clause,
        )
        for name, check in told
    ]
    return Table(
        ("at the floor", "asked", "can give", "share", "rule"), rows, f"{show(load, 'force')} through a floor"
    )


def balloon_wall():
    """Show what posts in a tall wall carry with the floor that braces them, and without it.

    Returns
    -------
    structlib.pages.show.Table
        Post, with the floor at 9 ft, without it [-].

    Examples
    --------
    >>> balloon_wall().rows[0]
    ('2 plies 2x4', '3,989 lb, depth', 'too slender')
    """
    rows = []
    for size, plies in (("2x4", 2), ("2x4", 3), ("2x6", 2), ("2x6", 3)):
        shared = dict(size=size, plies=plies, height=18 * ft, held_width=0.0)
        rows.append(
            (f"{plies} plies {size}", _carries(post(**shared, held_depth=9 * ft)), _carries(post(**shared)))
        )
    return Table(
        ("post in an 18 ft wall", "a floor holds it at 9 ft", "that floor cut back for a stair"),
        rows,
        "Hem-Fir No.2, live load; lath and boards hold it the other way all along",
    )


def _plies(load):
    wood, piece = find_material("Hem-Fir", "No.2", "2x6"), dressed_size("2x6")
    found = _told(
        columns.fewest_plies,
        wood,
        load=load,
        time_factor=_live().time_factor,
        ply_width=piece.width,
        depth=piece.depth,
        height=8 * ft,
    )
    return found if isinstance(found, str) else str(found)


def transfer_beam(load, span, place):
    """Put a post on a beam over two posts, and find what each of them gets.

    Parameters
    ----------
    load : float
        Load of the upper post [N].
    span : float
        Distance between the two posts [mm].
    place : float
        Place of the upper post from the left one [mm].

    Returns
    -------
    structlib.pages.show.Table
        Reactions, their sum against the load, and the moment in the beam [-].

    Raises
    ------
    BadInput
        When the post stands off the beam.

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


def post_on_a_header(*, dead, live, width=4 * ft, size="2x10", plies=2):
    """Re-check an existing opening when a new post comes to stand on the middle of its header.

    Parameters
    ----------
    dead : float
        Dead load of the new post [N].
    live : float
        Live load of the new post [N].
    width : float
        Clear width of the opening [mm].
    size : str
        Nominal size of one ply of the header [-].
    plies : int
        Plies of the header [-].

    Returns
    -------
    structlib.pages.show.Table
        Each check before and after, the jack studs, their load, and the pad under them [-].

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
    studs = [
        jack_studs(reaction=push, width=piece.width * plies, bearing_value=wood.bearing).count
        for push in pushes
    ]
    rows += [
        ("push on each side", *(show(push, "force") for push in pushes)),
        ("jack studs each end", *map(str, studs)),
    ]
    rows.append(
        (
            "what those studs carry, 7 ft, in a wall",
            *(_carries(post("2x4", min(n, 5), 7 * ft, held_width=0.0)).rsplit(", ", 1)[0] for n in studs),
        )
    )
    soil = footings.find_soil(footings.soil_names()[0])
    sides = [footings.plain_pad(load=push, soil=soil, base=1.5 * inch)[0] for push in pushes]
    rows.append(("pad side below, 1,500 psf", *(show(_up(side), "section length", precision=2) for side in sides)))
    # a table of headers has no column for a post; what it gives for the floor alone stands beside it
    cell = header_tables.header_span(
        header_tables.find_header_basis("R602.7(2) one floor"), f"{plies}-{size}", building_width=24 * ft
    )
    rows.append(
        (
            "may span, by the code's table made again, one floor, house 24 ft wide",
            "{} ft {} in".format(*header_tables.as_printed(cell.span).split("-")),
            "has no column for a post",
        )
    )
    head = ("over the old opening", "before", "with the post on it")
    return Table(
        head,
        rows,
        f"{plies}-{size} Hem-Fir No.2 over {show(width, 'length')}; the post brings "
        f"{show(dead + live, 'force')}",
    )


def steel_posts(load, height=7 * ft):
    """List what steel posts carry, pressed in the middle.

    Parameters
    ----------
    load : float
        Load on the post [N].
    height : float
        Height [mm].

    Returns
    -------
    structlib.pages.show.Table
        Section, steel, slenderness, load carried, share [-].

    Examples
    --------
    >>> steel_posts(12000 * lb).rows[0][-1]
    '36 %'
    """
    rows = []
    for name in ("NPS 3 std", "NPS 3-1/2 std", "NPS 4 std", "HSS 3x3x1/8", "HSS 3x3x1/4"):
        one = steel_columns.steel_post(name)
        found = steel_columns.steel_capacity(one, height=height)
        check = steel_columns.steel_check(one, axial=load, height=height, combination=_live())
        rows.append(
            (
                name,
                f"{one.yield_strength / ksi:.0f} ksi",
                f"{found.slenderness:.0f}",
                show(found.load, "force"),
                show(check.share, "ratio"),
            )
        )
    return Table(
        ("steel post", "yield", "K L / r", "carries", "share"), rows,
        f"{show(load, 'force')} in the middle, {show(height, 'length')} tall; AISC 360-16 E3; cap and "
        "base apart",
    )  # fmt: skip


def adjustable_posts():
    """Tell which adjustable steel posts may stay, and on what conditions.

    Returns
    -------
    structlib.pages.show.Table
        Post, and what must be so, or why it is refused [-].

    Examples
    --------
    >>> adjustable_posts().rows[0][1].startswith("refused: a telescoping post")
    True
    """
    kinds = (
        ("two tubes that slide, 3 in", 2, 3.0 * inch),
        ("one piece, 2 3/8 in pipe", 1, 2.375 * inch),
        ("one piece, 3 1/2 in pipe", 1, 3.5 * inch),
    )
    rows = []
    for name, pieces, outside in kinds:
        found = _told(steel_columns.permanent_post_conditions, pieces=pieces, outside=outside)
        rows.append(
            (name, f"refused: {found}" if isinstance(found, str) else "may stay if: " + "; ".join(found))
        )
    return Table(("adjustable post", "to stay"), rows)


def pads_by_soil(load, base=5.5 * inch):
    """List the smallest plain pad under a post for each class of soil.

    Parameters
    ----------
    load : float
        Load of the post [N].
    base : float
        Side of the post or its base [mm].

    Returns
    -------
    structlib.pages.show.Table
        Soil, presumed bearing, side, thickness, weight of the pad [-].

    Examples
    --------
    >>> pads_by_soil(10000 * lb, 3.5 * inch).rows[0][2]
    '33 1/2 in'
    """
    rows = []
    for name in footings.soil_names():
        soil = footings.find_soil(name)
        side = _up(footings.plain_pad(load=load, soil=soil, base=base)[0])
        thick = _up(footings.pad_thickness(side=side, base=base))
        rows.append(
            (
                name,
                show(soil.pressure, "area load"),
                show(side, "section length", precision=2),
                show(thick, "section length", precision=2),
                show(footings.concrete_weight() * side**2 * thick, "force"),
            )
        )
    return Table(
        ("soil", "presumed bearing", "pad side", "thickness", "pad weighs"), rows,
        f"{show(load, 'force')}; plain concrete, no wider past the post than thick; IRC R401.4.1, R403.1.1",
    )  # fmt: skip


def wall_footings(line_load):
    """List the width of a footing under a wall for each class of soil, and what the code's table asks.

    Parameters
    ----------
    line_load : float
        Load of the wall [N/mm].

    Returns
    -------
    structlib.pages.show.Table
        Soil or table, width [-].

    Examples
    --------
    >>> wall_footings(2000 * plf).rows[0][1]
    '17 1/4 in'
    """
    rows = []
    for name in footings.soil_names()[:3]:
        soil = footings.find_soil(name)
        width = footings.wall_footing_width(
            line_load=line_load, soil_pressure=soil.pressure, thickness=8 * inch
        )
        rows.append(
            (
                f"{name}, {show(soil.pressure, 'area load')}",
                show(_up(max(width, 12 * inch), 0.25 * inch), "section length", precision=4),
            )
        )
    table = footings.table_footing(construction="light frame", stories=2, foundation="basement")
    rows.append(("the code's table, two stories, basement", show(table.width, "section length")))
    told = (
        f"{show(line_load, 'line load')}, footing 8 in thick, not under 12 in wide. The table: {table.basis}."
    )
    return Table(("under a wall", "width"), rows, told)


def slab_under_a_post(load, plate=6 * inch, slab=4 * inch):
    """Show what a slab is asked by a post: refused for one that stays, else a demand without verdict.

    Parameters
    ----------
    load : float
        Load of the post [N].
    plate : float
        Side of the plate under it [mm].
    slab : float
        Thickness of the slab [mm].

    Returns
    -------
    structlib.pages.show.Table
        Post, and what is said [-].

    Examples
    --------
    >>> slab_under_a_post(12000 * lb).rows[1][1]
    '8,816 psf under the slab, 75 psi of shear around the plate'
    """
    given = dict(load=load, plate=plate, slab_thickness=slab)
    demand = footings.post_on_slab(**given, permanent=False)
    rows = (
        ("a post that stays", "refused: " + _told(footings.post_on_slab, **given, permanent=True)),
        (
            "a post for the time of the work",
            f"{show(demand.pressure, 'area load')} under the slab, "
            f"{show(demand.shear_stress, 'stress')} of shear around the plate",
        ),
        ("and who judges that", demand.gate),
    )
    return Table(
        ("on the slab", ""),
        rows,
        f"{show(load, 'force')} on a {show(plate, 'section length')} plate, "
        f"{show(slab, 'section length')} of slab",
    )


def stone_wall(load, plate=12 * inch, thickness=18 * inch):
    """Show how the pressure of a post spreads down a stone or rubble wall.

    Parameters
    ----------
    load : float
        Load of the post or beam end [N].
    plate : float
        Length of the pad along the wall [mm].
    thickness : float
        Thickness of the wall [mm].

    Returns
    -------
    structlib.pages.show.Table
        Depth, pressure when spread 1:2 and at 45 degrees, and near an opening; the gate last [-].

    Examples
    --------
    >>> stone_wall(10000 * lb).rows[3][1]
    '952 psf'
    """
    rows, given = [], dict(load=load, plate=plate, wall_thickness=thickness)
    for depth in (0.0, 2 * ft, 4 * ft, 6 * ft):
        asked = (
            footings.pad_on_stone_wall(**given, depth=depth),
            footings.pad_on_stone_wall(**given, depth=depth, spread="45 degrees"),
            footings.pad_on_stone_wall(**given, depth=depth, distance_to_end=0.5 * ft),
        )
        rows.append((show(depth, "length"), *(show(one.pressure, "area load") for one in asked)))
    return Table(
        ("below the pad", "spread 1:2", "spread 45 degrees", "1:2, an opening 6 in away"), rows,
        f"{show(load, 'force')}; a demand, shown without a verdict",
    )  # fmt: skip


def stair_opening(*, joist_span=14 * ft, wide=10 * ft, long=3.5 * ft, dead=12 * psf, live=40 * psf):
    """Follow the load around an opening in a floor: tail joists, header, trimmers, walls.

    Parameters
    ----------
    joist_span : float
        Span of the joists and of the trimmers [mm].
    wide : float
        How far the opening reaches along the joists, from one wall [mm].
    long : float
        Width of the opening, the span of the header [mm].
    dead : float
        Dead load of the floor [MPa].
    live : float
        Live load of the floor [MPa].

    Returns
    -------
    structlib.pages.show.Table
        Load on the header, its push on each trimmer, shares of both, and where the trimmer brings it [-].

    Examples
    --------
    >>> [row[1] for row in stair_opening().rows[:2]]
    ['104 plf', '192 lb']
    """
    wood, piece = find_material("Hem-Fir", "No.2", "2x10"), dressed_size("2x10")
    tail, strip = joist_span - wide, 16 * inch / 2
    seat = Seat(1.5 * inch, "post")

    def lines(span, widths):
        return tuple(
            TypedLoad(kind, LineLoad(0.0, span, area * widths))
            for kind, area in (("dead", dead), ("live", live))
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
        BeamJob(long - seat.length, seat, seat, header_loads, loaded_on="side"), choice, RULEBOOK
    )
    trimmer = check_beam(
        BeamJob(joist_span - seat.length, seat, seat, (*lines(joist_span, strip), *on_trimmer)),
        choice,
        RULEBOOK,
    )

    def worst(result):
        # the seats are 1 1/2 in, the least, and so use all of that rule; strength and sag are asked here
        check = max((one for one in result.checks if one.kind != "seat"), key=lambda one: one.share)
        name = "crushing at its seat" if check.name.startswith("bearing") else check.name
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
    told = (
        f"{around}; joists of 2x10 Hem-Fir No.2 over {show(joist_span, 'length')}; {loads}. "
        "Header and trimmers weigh too; their weight is in. Their seats are 1 1/2 in, all of the code's least. "
        "Not in: the stair that hangs on the header, a wall or rail beside it."
    )
    return Table(
        ("around the stair opening", ""),
        rows,
        told,
    )


def fastening_of_plies(plies=3):
    """List the nails or bolts on which the strength of a built-up post stands.

    Parameters
    ----------
    plies : int
        Plies of 2x6, 2 to 5 [-].

    Returns
    -------
    structlib.pages.show.Table
        Distance or count, nailed, bolted [-].

    Examples
    --------
    >>> fastening_of_plies(3).rows[0][1]
    '30d common, 4 1/8 in long or longer'
    """
    nailed = post("2x6", plies)
    nails = columns.built_up_fastening(nailed)
    bolts = columns.built_up_fastening(post("2x6", plies, fastening="bolted"), diameter=0.5 * inch)
    between = lambda pair: f"{pair[0] / inch:.2g} to {pair[1] / inch:.2g} in"  # noqa: E731
    counted = lambda pair: f"{pair[0]}" if pair[0] == pair[1] else f"{pair[0]} to {pair[1]}"  # noqa: E731
    rows = [
        (
            "which",
            f"{columns.shortest_common_nail(nailed)}, {show(nails.length, 'section length')} long or longer",
            f"1/2 in bolts through {bolts.length / inch:.1f} in",
        ),
        ("rows along the post", counted(nails.rows), counted(bolts.rows)),
        *(
            (name, between(getattr(nails, field)), between(getattr(bolts, field)))
            for name, field in (
                ("from the ends", "end_distance"),
                ("along a row", "along_row"),
                ("between rows", "between_rows"),
                ("from the edge", "edge_distance"),
            )
        ),
        ("rule, recalled", nails.clause, bolts.clause),
    ]
    return Table(("three plies of 2x6" if plies == 3 else f"{plies} plies of 2x6", "nailed", "bolted"), rows)


def fastening_conditions(fastening="nailed"):
    """List what must be so for a built-up post to count as one.

    Parameters
    ----------
    fastening : str
        'nailed' or 'bolted' [-].

    Returns
    -------
    structlib.pages.show.Table
        One condition a row [-].
    """
    given = {} if fastening == "nailed" else {"diameter": 0.5 * inch}
    found = columns.built_up_fastening(post("2x6", 3, fastening=fastening), **given)
    return Table((f"to verify, plies {fastening}",), [(one,) for one in found.conditions])


def top_and_foot(dead, live, span=7 * ft):
    """List what must hold the top and the foot of a post: forces to look up, never a product.

    Parameters
    ----------
    dead : float
        Dead load on the post [N].
    live : float
        Live load on the post [N].
    span : float
        Span of the two beams of 4-2x12 that end on the post [mm].

    Returns
    -------
    structlib.pages.show.Table
        Where, force, condition [-].

    Examples
    --------
    >>> top_and_foot(4000 * lb, 8000 * lb).rows[0][1]
    '12,000 lb down'
    """
    reactions = {"D": dead, "D + L": dead + live}
    cap, foot = connection_demand("post cap", reactions), connection_demand("post base", reactions)
    held = post_top_restraint(axial=dead + live)
    moment = formulas.simple_uniform_moment(line_load=(dead + live) / span, span=span)
    roll = beam_end_restraint(depth=11.25 * inch, width=6 * inch, moment=moment)
    clip = connection_demand("clip", {"sideways, common practice": held.force})
    rows = (
        ("cap at the top", f"{show(cap.down, 'force')} down", cap.sentence),
        ("clip or strap, top, both ways", f"{show(held.force, 'force')} sideways", held.condition),
        (
            "each clip, if one holds it all",
            show(clip.down, "force"),
            "the listed load of a clip for that way of pull",
        ),
        ("end of each beam, against rolling", f"{show(roll.force, 'force')} sideways", roll.condition),
        (
            "base at the foot",
            f"{show(foot.down, 'force')} down",
            "the foot is held too; wind and uplift are not here",
        ),
    )
    return Table(("where", "force", "what to verify"), rows)


def stood_on_a_plate(load):
    """Show what a subfloor or plate under a post is pressed with, for posts of one load and growing feet.

    Parameters
    ----------
    load : float
        Load of the post [N].

    Returns
    -------
    structlib.pages.show.Table
        Post, pressure on the plate, what the plate gives, share [-].

    Examples
    --------
    >>> stood_on_a_plate(6000 * lb).rows[0][-1]
    '134 %'
    """
    plate, rows = find_material("Spruce-Pine-Fir", "No.1/No.2"), []
    for size, plies in (("2x4", 2), ("2x4", 3), ("2x6", 2), ("2x6", 3), ("2x6", 4)):
        one = columns.plate_check(post(size, plies), [columns.ColumnDemand(_live(), load)], plate)
        rows.append(
            (
                f"{plies} plies {size}",
                show(one.asked, "stress"),
                show(one.given, "stress"),
                show(one.share, "ratio"),
            )
        )
    return Table(
        ("post", "presses", "plate gives", "share"),
        rows,
        f"{show(load, 'force')} on a plate of Spruce-Pine-Fir",
    )


def printed_columns():
    """Work the printed examples of wood columns again.

    Returns
    -------
    dict
        Values by their names in data/published_checks.csv [-, in].

    Notes
    -----
    The examples take F_cE = 0.3 E / (L/d)^2, an older form with its own factor on E.

    Examples
    --------
    >>> [round(value, 4) for value in printed_columns().values()][:3]
    [0.6621, 0.4464, 0.305]
    """
    found = {}
    for feet in (6, 8, 10):
        ratio = 0.3 * 1.3e6 * psi / (feet * ft / (3.5 * inch)) ** 2 / (1000 * psi)
        found[f"C_P of a 3.5 x 7.25 in column, {feet} ft"] = float(
            columns.column_stability_factor(ratio=ratio, shape=0.8)
        )
    factor = 40000 * lb / (5.5 * inch) ** 2 / (1700 * psi)
    found["C_P asked of a 5.5 in square post by 40 kip"] = factor
    ratio = columns.ratio_for_factor(factor=factor, shape=0.8)
    found["longest such post"] = 5.5 * (0.3 * 1.4e6 * psi / (1700 * psi * ratio)) ** 0.5
    return found


hold(globals())
