"""Cases of the notebook on posts, as tables: each number is the library's answer, asked here once."""

from dataclasses import replace
from math import ceil

from structlib.ground.lumber import find_material
from structlib.ground.refusals import OutsideRule
from structlib.ground.showing import show
from structlib.ground.sizes import dressed_size
from structlib.ground.units import ft, inch, lb, psi
from structlib.mechanics import formulas
from structlib.pages.kit.door import hold
from structlib.pages.kit.show import Table
from structlib.rules.check import governing
from structlib.rules.choice import RULEBOOK

columns, fastening = map(RULEBOOK.room, ("columns", "fastening"))
_HEIGHTS = tuple(feet * ft for feet in (6, 7, 8, 9, 10, 12))
#: What a post is asked to carry here, unless it is said otherwise.
LIVE = RULEBOOK.combinations({"live"})[1]


def post(
    size: str = "2x6", plies: int = 3, height: float = 8 * ft, species: str = "Hem-Fir", grade: str = "No.2", **more
):
    """Return a post of stock lumber.

    ``height`` [mm].

    Examples
    --------
    >>> post("2x6", 3).width / inch
    4.5
    """
    piece = dressed_size(size)
    return columns.Column(find_material(species, grade, size), piece.width, piece.depth, height, plies, **more)


def told(ask, *arguments, **named):
    """Return an answer, or the sentence of the rule that does not cover the case."""
    try:
        return ask(*arguments, **named)
    except OutsideRule as refusal:
        return str(refusal)


def stepped_up(length: float, step: float = 0.5 * inch):
    """Return a length that is asked for, to the next step up.

    ``length``, ``step`` [mm]; gives [mm].
    """
    return ceil(length / step - 1e-6) * step


def carries(column):
    """Tell what a post carries under live load, and the way that it bows first."""
    found = told(columns.capacity_of, column, time_factor=LIVE.time_factor)
    if isinstance(found, str):
        return "too slender"
    way = {"depth": "depth", "width": "across", "separate plies": "plies apart"}[found.governs]
    return f"{show(found.load, 'force')}, {way}"


def plies_by_height(held_width: float | None = None):
    """List what posts of 2x6 plies and solid posts carry by height, and the way that each bows first.

    ``held_width`` [mm].

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
    rows = [(show(height, "length"), *(carries(replace(one, height=height)) for one in posts)) for height in _HEIGHTS]
    head = ("height", "2 plies", "3 plies", "4 plies", "5 plies", "solid 4x6", "solid 6x6, fir No.1")
    return Table(head, rows, "2x6 of Hem-Fir No.2, nailed; live load; bows first: across its plies, or along its depth")


def nailed_or_bolted():
    """Compare three 2x6 plies nailed, bolted, and held all along by a wall.

    Examples
    --------
    >>> nailed_or_bolted().rows[2][:3]
    ('8 ft', '10,533 lb, across', '13,166 lb, across')
    """
    rows = []
    for height in _HEIGHTS:
        free = [post("2x6", 3, height, fastening=how) for how in ("nailed", "bolted")]
        rows.append((show(height, "length"), *map(carries, (*free, post("2x6", 3, height, held_width=0.0)))))
    return Table(("height", "nailed", "bolted", "nailed, in a wall"), rows, "three 2x6 of Hem-Fir No.2, live load")


def both_ways(column):
    """Show both ways in which a post may bow: its length over its size, and what is left of its strength.

    Examples
    --------
    >>> both_ways(post("2x6", 2, 8 * ft)).rows[1][3:]
    ('32.0', '15 %')
    """
    found = columns.capacity_of(column, time_factor=LIVE.time_factor)
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
    return Table(("bowing", "free length", "size that way", "length / size", "of its crushing strength"), rows)


def off_the_middle(column, load: float):
    """Show what a load off the middle asks of a post.

    ``load`` [N].

    Examples
    --------
    >>> [row[1] for row in off_the_middle(post("2x6", 3, 8 * ft), 6000 * lb).rows]
    ['57 %', '57 %', '68 %', '85 %', 'not judged']
    """
    rows = []
    for distance in (0.0, 0.5 * inch, 1 * inch, 1.5 * inch):
        checks = columns.column_checks(column, [columns.ColumnDemand(LIVE, load, distance)])
        worst = governing(checks)
        rows.append((show(distance, "section length"), show(worst.share, "ratio"), worst.name))
    across = told(columns.column_checks, column, [columns.ColumnDemand(LIVE, load, 1 * inch, "width")])
    if isinstance(across, str):
        rows.append(("1 in, across the plies", "not judged", across))
    told_below = f"{show(load, 'force')} on the post, pushed off along its depth"
    return Table(("off the middle", "share", "check"), rows, told_below)


def split_by_a_floor(load: float, plies: int = 3):
    """Compare a post that runs through a floor with one that a floor cuts in two.

    ``load`` [N].

    Examples
    --------
    >>> [row[3] for row in split_by_a_floor(9000 * lb).rows]
    ['25 %', '86 %', '26 %', '86 %']
    """
    whole, demand = post("2x6", plies), [columns.ColumnDemand(LIVE, load)]
    blocks = post("2x6", plies, 9.25 * inch)
    plate = find_material("Spruce-Pine-Fir", "No.1/No.2")
    end = next(check for check in columns.column_checks(whole, demand) if check.kind == "end grain")
    block = next(check for check in columns.column_checks(blocks, demand) if check.kind == "compression")
    across = columns.plate_check(whole, demand, plate)
    cases = (
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
        for name, check in cases
    ]
    return Table(("at the floor", "asked", "can give", "share", "rule"), rows, f"{show(load, 'force')} through a floor")


def balloon_wall():
    """Show what posts in a tall wall carry with the floor that braces them, and without it.

    Examples
    --------
    >>> balloon_wall().rows[0]
    ('2 plies 2x4', '3,989 lb, depth', 'too slender')
    """
    rows = []
    for size, plies in (("2x4", 2), ("2x4", 3), ("2x6", 2), ("2x6", 3)):
        shared = dict(size=size, plies=plies, height=18 * ft, held_width=0.0)
        rows.append((f"{plies} plies {size}", carries(post(**shared, held_depth=9 * ft)), carries(post(**shared))))
    return Table(
        ("post in an 18 ft wall", "a floor holds it at 9 ft", "that floor cut back for a stair"), rows,
        "Hem-Fir No.2, live load; lath and boards hold it the other way all along",
    )  # fmt: skip


def fastening_of_plies(plies: int = 3):
    """List the nails or bolts on which the strength of a built-up post stands, and what must be so beside them.

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
        ("to verify", "; ".join(nails.conditions), "; ".join(bolts.conditions)),
    ]
    return Table(("three plies of 2x6" if plies == 3 else f"{plies} plies of 2x6", "nailed", "bolted"), rows)


def top_and_foot(dead: float, live: float, span: float = 7 * ft):
    """List what must hold the top and the foot of a post: forces to look up, never a product.

    ``dead``, ``live`` [N]; ``span`` [mm].

    Examples
    --------
    >>> top_and_foot(4000 * lb, 8000 * lb).rows[0][1]
    '12,000 lb down'
    """
    reactions = {"D": dead, "D + L": dead + live}
    cap, foot = fastening.connection_demand("post cap", reactions), fastening.connection_demand("post base", reactions)
    held = fastening.post_top_restraint(axial=dead + live)
    moment = formulas.simple_uniform_moment(line_load=(dead + live) / span, span=span)
    roll = fastening.beam_end_restraint(depth=11.25 * inch, width=6 * inch, moment=moment)
    clip = fastening.connection_demand("clip", {"sideways, common practice": held.force})
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


def printed_columns():
    """Work the printed examples of wood columns again.

    Gives [-, in].

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
