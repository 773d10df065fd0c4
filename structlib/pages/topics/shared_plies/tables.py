"""Tables of notebook 11: sisters by length, stacks by nails, side loads, steel, four ways; those of flitch beams beside."""

from structlib.ground.showing import show
from structlib.ground.steel import shape_names, steel_shape
from structlib.ground.tables import table_value
from structlib.ground.units import ft, inch, kip, ksi, lb, pcf, plf, psf, psi
from structlib.house.alternatives import Space, alternatives
from structlib.house.beam import BeamChoice, BeamJob, check_beam
from structlib.house.shared_plies import GROUP_ARM
from structlib.house.with_steel import example_flitch, example_job  # noqa: F401  the notebook's own
from structlib.mechanics import formulas
from structlib.mechanics.composite import (
    Part,
    fastener_efficiency,
    joined_share,
    joined_stress,
    loose_stiffness,
    partly_joined_stiffness,
    shares_by_stiffness,
    stack,
)
from structlib.pages.kit.door import hold
from structlib.pages.kit.show import Table, start_values
from structlib.pages.kit.woods import pieces
from structlib.pages.topics.shared_plies.page import UnlikePliesPage
from structlib.rules.check import least_verified
from structlib.rules.choice import RULEBOOK
from structlib.rules.members import Flitch

#: Force on one 16d nail by slip of the seam, an order of magnitude [N/mm].
NAIL_SLIP_MODULUS = table_value("joint_slip", "nail_16d")


def sister_table(lengths: tuple[float, ...] = (1.0, 0.8, 0.6, 0.4), **changes):
    """Set sisters of several lengths beside each other.

    Examples
    --------
    >>> [row[0] for row in sister_table((1.0, 0.6)).rows]
    ['full length', '60 % of the span']
    """
    page, rows = UnlikePliesPage(), []
    for length in lengths:
        kind = {"arrangement": "sister"} if length == 1 else {"arrangement": "partial", "length": length}
        case = page.case(tuple(start_values(page, **kind, **changes).items()))
        old = show(max(abs(edge) for edge in case.stresses[0]), "stress")
        if length == 1:
            rows.append(("full length", show(max(case.sag), "small length"), old, "-", "-", "-"))
            continue
        rows.append(
            (
                f"{show(length, 'ratio')} of the span",
                show(max(case.sag), "small length"),
                old,
                show(case.stress_past_the_end, "stress"),
                *(show(abs(force), "force") for force in case.group_forces),
            )
        )
    return Table(
        ("sister", "sag", "old, at mid-span", "old, past its end", "outer group", "inner group"),
        rows,
        f"a 9 1/4 in LVL ply on two old 2x10; end groups {show(GROUP_ARM, 'section length')} apart",
    )


def stack_table(
    spacings: tuple[float, ...] = (12 * inch, 6 * inch, 3 * inch), span: float = 12 * ft, moment: float = 3000 * lb * ft
):
    """Set two 2x6 stacked loose, nailed and joined beside each other.

    ``spacings``, ``span`` [mm]; ``moment`` [N*mm].

    Examples
    --------
    >>> table = stack_table()
    >>> table.rows[0][2], table.rows[-1][2]
    ('2.00 x', '8.00 x')
    """
    one = pieces("fir")[1]
    top, bottom = stack([(one[3].modulus, one[1], one[0])] * 2)
    alone = top.bending_stiffness
    seams = [("loose", 0.0)]
    for spacing in spacings:
        efficiency = fastener_efficiency(
            axial_stiffness=top.axial_stiffness,
            spacing=spacing / 2,
            slip_modulus=NAIL_SLIP_MODULUS,
            span=span,
        )
        words = f"two lines of nails, every {show(spacing, 'section length')}"
        seams.append((words, joined_share(top, bottom, efficiency=efficiency)))
    seams.append(("joined, no slip at all", 1.0))
    rows = []
    for words, joined in seams:
        stiffness = partly_joined_stiffness([top, bottom], joined=joined)
        rows.append((words, show(joined, "ratio"), f"{stiffness / alone:.2f} x", f"{alone / stiffness:.2f} x"))
    return Table(
        ("seam", "acts as one", "stiffness, times one board", "sag, times one board"),
        rows,
        f"two 2x6 laid on one another over {show(span, 'length')}; one nail slips 1 mm under 1,000 N (recalled)",
    )


def steel_table(
    names: tuple[str, ...] = ("W8x18", "W8x24", "W10x22"),
    braces: tuple[float, ...] = (0.0, 4 * ft, 8 * ft, 12 * ft, 16 * ft),
):
    """List what steel beams carry in bending, by the distance between their braces.

    ``braces`` [mm].

    Examples
    --------
    >>> steel_table(("W8x18",), (0.0,)).rows[0]
    ('W8x18', '42.4')
    """
    shapes = [steel_shape(name) for name in names]
    steel_moment = RULEBOOK.room("steel_beams").steel_moment
    found = [[steel_moment(one, unbraced_length=length) for length in braces] for one in shapes]
    rows = [
        (one.name, *(f"{moment.allowed / (kip * ft):.1f}" for moment in moments)) for one, moments in zip(shapes, found)
    ]
    yields = " and ".join(f"{strength / ksi:.0f}" for strength in sorted({s.yield_strength for s in shapes}))
    known = least_verified([moment.verified for moments in found for moment in moments])
    clauses = " and ".join(dict.fromkeys(moment.clause for moments in found for moment in moments))
    head = ("held all along" if length == 0 else f"every {show(length, 'length')}" for length in braces)
    return Table(
        ("shape", *head),
        rows,
        f"allowable moment in kip-ft (1,000 lb-ft), by the distance between braces; {yields} ksi steel, the "
        f"same moment all along (C_b = 1), {clauses}, {known}",
    )


def four_ways_table(middle: float = 11.25 * inch, left: float = None, right: float = None, job: BeamJob = None):
    """Span the opening in sawn lumber, LVL, flitch and steel, within the depth at each end.

    ``middle``, ``left``, ``right`` [mm].

    Examples
    --------
    >>> [row[0] for row in four_ways_table().rows]
    ['sawn', 'LVL', 'flitch', 'steel']
    """
    job = job or example_job()
    space = Space(middle=middle, left=left, right=right)

    def stock(key):
        return [(material, width, depth) for depth, width, _, material in pieces(key)]

    mixed = [
        Flitch(
            wood=material,
            ply_width=width,
            depth=depth,
            plies=2,
            plate_thickness=thick * inch / 8,
            plate_depth=depth - 0.25 * inch,
        )
        for depth, width, _, material in pieces("fir")
        if depth > 5 * inch
        for thick in (2, 3, 4, 6)
    ]
    found = alternatives(
        job,
        space=space,
        sawn=stock("fir"),
        lvl=stock("lvl 2.0"),
        flitches=mixed,
        steel=[steel_shape(name) for name in shape_names("W")],
        rulebook=RULEBOOK,
    )
    rows = [
        (
            one.family,
            one.name,
            show(one.depth, "section length"),
            show(one.share, "ratio") + (", over" if one.share > 1 else f", {one.withheld}" if one.withheld else ""),
            one.governs,
            show(one.weight, "weight"),
            show(one.piece_weight, "weight"),
        )
        for one in found
    ]
    if job.gates:
        return _only_asked(job, stock("fir")[-1])
    left = [one.family for one in found if one.below_full]
    return Table(
        ("family", "beam", "depth", "share", "what governs", "weight", "heaviest piece"),
        rows,
        f"left at 100 % or below in bending, shear, bearing, seat length, bolts and sag: "
        f"{', '.join(left) or 'none'}; "
        f"{show(job.clear_width, 'length')} clear; room for {show(space.depth, 'section length')} of "
        "depth at the shallowest place; nothing notched; all held sideways all along; a steel seat for a plate "
        f"and ties to the steel are not in it; values {' and '.join(sorted({one.verified for one in found}))}",
    )


def _only_asked(job, piece):
    """What is asked of one beam where a gate withdraws every candidate."""
    material, width, depth = piece
    result = check_beam(job, BeamChoice(material, width, depth, 2), RULEBOOK)
    push = max(one.solution.reactions[0].force for one in result.demands)
    rows = [("push on the left seat", show(push, "force"))]
    rows += [(one.name, show(one.asked, one.dimension)) for one in result.checks if one.kind != "seat"]
    return Table(
        ("asked", "of two plies of the deepest piece"),
        rows,
        "\n".join(("Stop and call first: no beam is listed.", *result.gates)),
    )


def printed_layers():
    """Work the printed five-layer strip: plastic and aluminium, 1 kN m, with the functions of the bench.

    Gives [MPa].

    Examples
    --------
    >>> round(printed_layers()["stress in its aluminium"], 2)
    12.14
    """
    middle, ratio = 106.0, 25.0
    layers = [(1.0, 120.0, 0.0), (1.0, 40.0, 83.0), (1.0, 40.0, -83.0)]
    layers += [(ratio, 3.0, off) for off in (61.5, -61.5, 104.5, -104.5)]
    whole = [Part(modulus=n, width=75.0, depth=deep, centre=middle + off) for n, deep, off in layers]
    return {
        "stress in the plastic of a strip in seven layers": joined_stress(
            whole, modulus=1.0, height=2 * middle - 3.0, moment=1e6
        ),
        "stress in its aluminium": joined_stress(whole, modulus=ratio, height=2 * middle, moment=1e6),
    }


def printed_steel_beam():
    """Work the printed steel beam: 20 ft, a 4 in slab, by the factored method.

    Gives [plf, in3].

    Examples
    --------
    >>> round(printed_steel_beam()["plastic modulus asked of a 20 ft steel beam"], 2)
    20.53
    """
    dead = (150 * pcf * 4 * inch + 20 * psf) * 10 * ft + 50 * plf
    load = 1.2 * dead + 1.6 * 40 * psf * 10 * ft
    moment = formulas.simple_uniform_moment(line_load=load, span=20 * ft)
    needed = RULEBOOK.room("steel_beams").plastic_modulus_needed(moment=moment, yield_strength=50 * ksi, resistance=0.9)
    return {
        "factored load of a 20 ft steel beam": load / plf,
        "plastic modulus asked of a 20 ft steel beam": needed / inch**3,
    }


def two_sisters_against_their_sum(old_modulus: float = 1.0e6 * psi):
    """Sister a tired joist with a new one of the same size, and compare it with the sum of both.

    ``old_modulus`` [MPa].

    Examples
    --------
    >>> [round(number, 3) for number in two_sisters_against_their_sum()]
    [1.625, 0.615]
    """
    new = Part(modulus=1.6e6 * psi, width=1.5 * inch, depth=9.25 * inch)
    old = Part(modulus=old_modulus, width=1.5 * inch, depth=9.25 * inch)
    return loose_stiffness([old, new]) / new.bending_stiffness, shares_by_stiffness([old, new])[1]


hold(globals())
