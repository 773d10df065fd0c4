"""Which beams stay below 100 % in the checks listed: the rack sized at once, shown as tables."""

from dataclasses import replace

from structlib.ground.loads import LoadsByType
from structlib.ground.lumber import find_material
from structlib.ground.showing import show
from structlib.ground.units import inch, lb, psi
from structlib.house.beam import BeamChoice, BeamJob, TypedLoad, check_beam
from structlib.house.path import follow
from structlib.house.plies import NOT_CHOSEN, doubt
from structlib.house.sizing import build_rack, give_way, limit_widths, size_beams
from structlib.house.takedown import take_down
from structlib.mechanics import formulas
from structlib.mechanics.beams import LineLoad, PointLoad
from structlib.pages.kit.comes_down import comes_down
from structlib.pages.kit.door import hold
from structlib.pages.kit.show import Table, start_values
from structlib.pages.topics.beam.page import BeamPage
from structlib.rules.check import Seat
from structlib.rules.choice import RULEBOOK

SAWN = ("hem-fir", "spf", "fir", "southern pine")
LVL = ("lvl 1.9", "lvl 2.0")


def stock_of(page: BeamPage, keys: tuple[str, ...]):
    """Return everything that can be bought of several woods, and the names of the sizes.

    Gives [mm, mm].
    """
    stock, names = [], {}
    for key in keys:
        for depth, ply_width, name, material in page.pieces(key):
            stock.append((material, ply_width, depth))
            names[id(material), depth] = name
    return stock, names


def below_full(
    page: BeamPage,
    keys: tuple[str, ...] | None = None,
    count: int = 8,
    greatest_depth: float | None = None,
    greatest_width: float | None = None,
    plies: tuple[int, ...] = (1, 2, 3, 4),
    **changes,
):
    """List the beams that stay below 100 % in the checks listed, least wood first.

    ``greatest_depth``, ``greatest_width`` [mm].
    """
    values = start_values(page, **changes)
    job, stock, names = _offered(page, keys, values, changes)
    if job.gates:
        return Table(("asked", "of the beam on the page"), _asked(page, values), _stopped(job.gates))
    rack = build_rack(
        stock,
        plies=plies,
        greatest_depth=greatest_depth or page.opening.greatest_depth,
        greatest_width=greatest_width or page.opening.greatest_width,
    )
    sizing = size_beams(job, rack, page.rulebook)
    rows = sizing.passing()
    found = [_row(page, job, sizing, row, names) for row in rows[:count]]
    told = [f"{len(rows)} of {len(rack.depth)} candidates are below 100 % in the checks listed; least wood first."]
    return Table(_HEAD, found, "\n".join([*told, *_remarks(values, sizing.names, sizing.withheld)]))


_HEAD = ("beam", "wood", "share used", "governs", "section", "weight of one ply", "doubtful")


def _offered(page, keys, values, changes):
    """The job, the stock and its names; a wood that is told among the changes is the only one offered."""
    if keys is None:
        keys = (changes["wood"],) if "wood" in changes else SAWN + LVL
    return page.job(values), *stock_of(page, keys)


def _row(page, job, sizing, row, names):
    """One candidate, checked in full, as text."""
    choice = sizing.rack.choice(row)
    result = check_beam(job, choice, page.rulebook)
    return (
        f"{choice.plies}-{names[id(choice.material), choice.depth]}",
        choice.material.name,
        show(result.share, "ratio"),
        result.governs.name,
        show(choice.plies * choice.ply_width * choice.depth, "area", page.system),
        show(float(sizing.piece_weight[row]), "weight", page.system),
        doubt(choice, page.rulebook),
    )


def _asked(page, values):
    """What stays when every candidate is withdrawn: what is asked, by the beam that the page describes."""
    shown = page.compute(values)
    return [(row[0], row[1]) for row in shown.rows if row[1]]


def _stopped(gates):
    return "\n".join(("Stop and call first: no beam is listed.", *gates))


def _remarks(values, checks, withheld=()):
    """What the table must say besides: the checks, what was not looked at, and who has no verdict."""
    told = [f"Checks listed: {', '.join(checks)}."]
    told += [f"No verdict on {sum(one == why for one in withheld)}: {why}." for why in dict.fromkeys(withheld) if why]
    remark = comes_down(values)[1]
    return told + ([f"{remark[0].upper()}{remark[1:]}."] if remark else [])


def dropped_or_flush(page: BeamPage, joist_depth: float = 9.25 * inch, **changes):
    """Compare sawn with LVL, dropped below the joists with flush among them.

    ``joist_depth`` [mm].
    """
    rows, remarks = [], {}
    for position, depth in (("dropped", page.opening.greatest_depth), ("flush", joist_depth)):
        for name, keys in (("sawn", SAWN), ("LVL", LVL)):
            table = below_full(
                page, keys, count=1, greatest_depth=depth, plies=(1, 2, 3, 4, 5), **{**changes, "position": position}
            )
            if table.head != _HEAD:
                return table
            *best, _, _, doubtful = table.rows[0] if table.rows else ("none", "", "", "", "", "", "")
            room = f"up to {show(depth, 'section length', page.system)} deep"
            rows.append((position, name, room, *best, doubtful))
            told, *others = table.caption.splitlines()
            remarks |= dict.fromkeys(line.replace("No verdict", f"{position}, {name}: no verdict") for line in others)
    head = ("position", "made of", "room", "least wood below 100 %", "wood", "share used", "governs", "doubtful")
    return Table(head, rows, "\n".join(remarks))


def giving_way(page: BeamPage, keys: tuple[str, ...] | None = None, plies: tuple[int, ...] = (1, 2, 3, 4), **changes):
    """Show the width of floor at which one choice gives way to the next."""
    system, opening = page.system, page.opening
    down = take_down(follow(page.house), opening.name, opening.middle)
    here = [share for share in down.shares if share.left_width or share.right_width]
    area = sum((share.area for share in here), LoadsByType({}))
    walls = sum(share.wall for share in here)
    values = start_values(page, **changes)
    base, stock, names = _offered(page, keys, values, changes)
    if base.gates:
        return Table(("asked", "of the beam on the page"), _asked(page, values), _stopped(base.gates))

    stands = tuple(one for one in base.loads if isinstance(one.load, PointLoad))  # whatever the width of floor

    def job_at(width):
        line = area.scale(width) + LoadsByType({"dead": walls})
        return replace(
            base,
            loads=(*(TypedLoad(kind, LineLoad(0.0, base.span, load)) for kind, load in line.items() if load), *stands),
        )

    rack = build_rack(stock, plies=plies, greatest_depth=opening.greatest_depth, greatest_width=opening.greatest_width)
    limit, which, checks = limit_widths(job_at, rack, page.rulebook)
    rows = []
    for row, narrow, wide in give_way(limit, rack.area):
        choice = rack.choice(row)
        rows.append(
            (
                _down(narrow, system),
                _down(wide, system),
                f"{choice.plies}-{names[id(choice.material), choice.depth]}",
                choice.material.name,
                show(choice.plies * choice.ply_width * choice.depth, "area", system),
                checks[which[row]],
                "one slender ply" if doubt(choice, page.rulebook) else "",
            )
        )
    told = ["Width of floor, left and right together, that lands on the beam at every level."]
    if base.loaded_on == "side":
        told.append(f"Plies are left out: {NOT_CHOSEN}, at one load.")
    if any(row[-1] for row in rows):
        told.append("One slender ply rolls over unless it is held, and no second ply helps at a knot: doubtful.")
    return Table(
        ("from a width of", "to", "least wood", "wood", "section", "then this stops it", "doubtful"),
        rows,
        "\n".join(told + _remarks(values, checks)),
    )


def _down(width, system):
    """A width rounded down to a whole inch or centimetre, so that the beam named is not over."""
    step = inch if system == "us" else 10.0
    return show(int(width / step + 1e-9) * step, "length", system)


def printed_example():
    """Work a printed example with the page's own rules: a 4x8 over 8 ft with a load at mid-span.

    Gives [psi and in].

    Notes
    -----
    The example leaves the beam's own weight out, so its part is taken off again.

    Examples
    --------
    >>> round(printed_example()["bending stress of a 4x8 over 8 ft with 2000 lb at midspan"])
    1565
    """
    span, wood = 96 * inch, find_material("Douglas Fir-Larch", "No.1")
    seat = Seat(0.5 * inch, "hanger")
    job = BeamJob(
        span - 0.5 * inch,
        seat,
        seat,
        (
            TypedLoad("dead", PointLoad(span / 2, 400 * lb)),
            TypedLoad("roof live", PointLoad(span / 2, 1600 * lb)),
        ),
        unbraced_length=0.0,
    )
    result = check_beam(job, BeamChoice(wood, 3.5 * inch, 7.25 * inch, 1), RULEBOOK)
    bending, shear, sag = (
        next(one for one in result.checks if one.kind == kind) for kind in ("bending", "shear", "sag")
    )
    own = result.member.weight_per_length
    own_bending = formulas.bending_stress(
        moment=formulas.simple_uniform_moment(line_load=own, span=span),
        section_modulus=result.member.section_modulus,
    )
    own_shear = formulas.rectangle_shear_stress(
        shear=formulas.simple_uniform_reaction(line_load=own, span=span), width=3.5 * inch, depth=7.25 * inch
    )
    return {
        "bending stress of a 4x8 over 8 ft with 2000 lb at midspan": (bending.asked - own_bending) / psi,
        "shear stress of the same beam": (shear.asked - own_shear) / psi,
        "adjusted bending value of the same beam": bending.given / psi,
        "sag of the same beam under its roof live load": sag.asked / inch,
    }


hold(globals())
