"""Tables of notebook 09: sisters by length, stacks by nails, a flitch beam with its bolts, side loads,
steel."""

import re

from structlib.ground.lumber import find_material
from structlib.ground.refusals import OutsideRule
from structlib.ground.showing import show
from structlib.ground.tables import table_value
from structlib.ground.units import ft, inch, kip, ksi, lb, plf, psi
from structlib.house.alternatives import (
    FLITCH_FROM_THE_SIDE,
    Space,
    alternatives,
    check_flitch,
    example_flitch,
    example_job,
    lay_out_flitch,
)
from structlib.house.beam import BeamChoice, BeamJob, TypedLoad, check_beam
from structlib.mechanics import formulas
from structlib.mechanics.beams import LineLoad
from structlib.mechanics.composite import (
    fastener_efficiency,
    joined_share,
    joined_stress,
    own_stress,
    partly_joined_stiffness,
    stack,
)
from structlib.mechanics.composite import Part
from structlib.pages.connection_tables import pattern_words
from structlib.pages.door import hold
from structlib.house.shared_plies import GROUP_ARM
from structlib.pages.shared_plies_page import UnlikePliesPage
from structlib.pages.show import Table, start_values
from structlib.pages.woods import pieces
from structlib.pictures.template import drilling_template
from structlib.pictures.template_pages import drilling_pages
from structlib.rules.check import Seat, governing, least_verified
from structlib.rules.choice import RULEBOOK
from structlib.rules.us.dowels import nail
from structlib.rules.us.fastening import fasteners_per_foot, load_to_pass, nothing_passes, ply_fastening
from structlib.rules.us.flitch import Flitch, plate_pieces, splice_note, wood_alone_share
from structlib.rules.us.steel_beams import steel_moment
from structlib.rules.us.steel_sections import shape_names, steel_shape

#: Force on one 16d nail by slip of the seam, an order of magnitude [N/mm].
NAIL_SLIP_MODULUS = table_value("joint_slip", "nail_16d")

_BOLT = 0.5 * inch


def sister_table(lengths=(1.0, 0.8, 0.6, 0.4), **changes):
    """Set sisters of several lengths beside each other.

    Parameters
    ----------
    lengths : iterable of float
        Lengths as parts of the span; 1 for the full length [-].
    **changes : any
        Values of the bench's controls by name, such as span and load [any].

    Returns
    -------
    structlib.pages.show.Table
        Sag, stresses and end forces by length [-].

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
        alone = own_stress(case.parts[0], moment=case.cut_moment, stiffness=case.alone)
        rows.append(
            (
                f"{show(length, 'ratio')} of the span",
                show(max(case.sag), "small length"),
                old,
                show(alone, "stress"),
                *(show(abs(force), "force") for force in case.group_forces),
            )
        )
    return Table(
        ("sister", "sag", "old, at mid-span", "old, past its end", "outer group", "inner group"),
        rows,
        f"a 9 1/4 in LVL ply on two old 2x10; end groups {show(GROUP_ARM, 'section length')} apart",
    )


def stack_table(spacings=(12 * inch, 6 * inch, 3 * inch), span=12 * ft, moment=3000 * lb * ft):
    """Set two 2x6 stacked loose, nailed and joined beside each other.

    Parameters
    ----------
    spacings : iterable of float
        Spacings of the nails in each of two lines [mm].
    span : float
        Span [mm].
    moment : float
        Moment on both [N*mm].

    Returns
    -------
    structlib.pages.show.Table
        How far they act as one, stiffness and edge stress [-].

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
        rows.append(
            (words, show(joined, "ratio"), f"{stiffness / alone:.2f} x", f"{alone / stiffness:.2f} x")
        )
    return Table(
        ("seam", "acts as one", "stiffness, times one board", "sag, times one board"),
        rows,
        f"two 2x6 laid on one another over {show(span, 'length')}; one nail slips 1 mm under 1,000 N "
        f"(recalled)",
    )


def flitch_table(beam=None, job=None, plate_bears=False):
    """List the checks of a flitch beam.

    Parameters
    ----------
    beam : structlib.rules.us.flitch.Flitch
        The beam; the example when None [-].
    job : structlib.house.beam.BeamJob
        The opening; the example when None [-].
    plate_bears : bool
        Whether the plate stands on a steel seat [-].

    Returns
    -------
    structlib.pages.show.Table
        Asked, can give, share and clause [-].

    Examples
    --------
    >>> flitch_table().rows[0][0]
    'bending, wood at a bolt hole'
    """
    beam, job = beam or example_flitch(), job or example_job()
    every = check_flitch(job, beam, RULEBOOK, plate_bears=plate_bears)
    withdrawn = sorted({one.sentence for one in every if one.kind == "shear" and not one.decides})
    checks = [one for one in every if one.decides]
    checks = [one for one in checks if "right" not in one.name]
    worst = governing(checks)
    rows = [
        (
            check.name,
            show(check.asked, check.dimension),
            show(check.given, check.dimension),
            show(check.share, "ratio") + (" governs" if check is worst else ""),
            f"{check.clause.split(' (')[0]}, {check.verified}",
        )
        for check in checks
    ]
    return Table(
        ("check", "asked", "can give", "share", "rule"),
        rows,
        f"the plate takes {show(beam.steel_share, 'ratio')} of the bending; both ends alike, the left one "
        f"shown; 1/2 in bolts" + "".join(f"; {why}" for why in withdrawn),
    )


def _example_bolts(beam=None, job=None, plate_bears=False):
    beam, job = beam or example_flitch(), job or example_job()
    bolts = lay_out_flitch(job, beam, RULEBOOK, bolt_diameter=_BOLT, plate_bears=plate_bears)
    length = job.clear_width + job.left.length + job.right.length
    return beam, bolts, length


def bolts_table(beam=None, job=None, plate_bears=False):
    """List what the bolts of a flitch beam pass on, and how they stand.

    Parameters
    ----------
    beam : structlib.rules.us.flitch.Flitch
        The beam; the example when None [-].
    job : structlib.house.beam.BeamJob
        The opening; the example when None [-].
    plate_bears : bool
        Whether the plate stands on a steel seat [-].

    Returns
    -------
    structlib.pages.show.Table
        Names and values [-].

    Examples
    --------
    >>> [row[0] for row in bolts_table().rows][:2]
    ['load into the plate along the beam', 'load out of the plate at each end']
    """
    beam, bolts, length = _example_bolts(beam, job, plate_bears)
    rows = [
        ("load into the plate along the beam", show(bolts.line_load, "line load")),
        ("load out of the plate at each end", show(bolts.reaction, "force")),
        ("one 1/2 in bolt passes", f"{show(bolts.value, 'force')} (yield mode {bolts.mode})"),
        (
            "spacing that would just do",
            show(bolts.spacing_needed, "section length")
            if bolts.spacing_needed < 2 * bolts.spacing
            else "more than twice what is used",
        ),
        ("spacing in the template, two lines in turn", show(bolts.spacing, "section length")),
        (
            "each end group",
            f"{bolts.end_bolts} bolts, {show(bolts.end_step, 'section length')} apart",
        ),
        ("lines from the edges", show(bolts.edge_distance, "section length")),
        ("holes in all", str(len(bolts.holes))),
    ]
    rows += [
        (
            check.name,
            f"{show(check.given, 'section length')}, asked {show(check.asked, 'section length')}",
        )
        for check in bolts.checks
        if check.kind == "distance"
    ]
    rows += [(f"to verify {number}", words) for number, words in enumerate(bolts.conditions, 1)]
    return Table(
        ("what", "value"),
        rows,
        "1/2 in bolts by NDS 2018 12.3 and 12.5 (recalled); no point loads on the beam",
    )


def holes_table(beam=None, job=None, plate_bears=False):
    """List every hole of the drilling template.

    Parameters
    ----------
    beam : structlib.rules.us.flitch.Flitch
        The beam; the example when None [-].
    job : structlib.house.beam.BeamJob
        The opening; the example when None [-].
    plate_bears : bool
        Whether the plate stands on a steel seat [-].

    Returns
    -------
    structlib.pages.show.Table
        Number, distance from the left end, height, group [-].

    Examples
    --------
    >>> holes_table().rows[0]
    ('1', '2 in', '2 5/16 in', 'left end')
    """
    _, bolts, _ = _example_bolts(beam, job, plate_bears)
    rows = [
        (
            str(number),
            show(hole.along, "length", precision=16),
            show(hole.up, "section length"),
            hole.group,
        )
        for number, hole in enumerate(bolts.holes, 1)
    ]
    return Table(("hole", "from the left end", "above the lower edge", "group"), rows)


class TemplateSheet:
    """A drilling template as a notebook shows it: in true size where the screen keeps it.

    Parameters
    ----------
    text : str
        SVG of `drilling_template` [-].
    alt : str
        What it shows, in words [-].
    """

    def __init__(self, text, alt):
        self.text, self.alt = text, alt

    def _repr_html_(self):
        return f'<div style="overflow-x:auto">{self.text}</div>'

    def __repr__(self):
        return self.alt


def template_sheet(start=0.0, end=16 * inch, beam=None, job=None, plate_bears=False, drawing=""):
    """Draw the drilling template of a stretch of the flitch beam, in true size.

    Parameters
    ----------
    start : float
        Where the stretch begins, from the left end [mm].
    end : float
        Where it ends [mm].
    beam : structlib.rules.us.flitch.Flitch
        The beam; the example when None [-].
    job : structlib.house.beam.BeamJob
        The opening; the example when None [-].
    plate_bears : bool
        Whether the plate stands on a steel seat [-].
    drawing : str
        Number of the engineer's drawing; without it a sheet says that it is not for drilling [-].

    Returns
    -------
    TemplateSheet
        The template; its text can be saved with ``save_template`` [-].

    Raises
    ------
    OutsideRule
        When a share is above 1, or a gate stands; the end bolts of a plate without a steel seat often are.

    Examples
    --------
    >>> template_sheet(plate_bears=True)
    drilling template, true size, from 0 in to 1 ft 4 in: 2 holes for 1/2 in bolts, and a 4 in ruler
    """
    holes, sizes = _drilled(start, end, beam, job, plate_bears, drawing)
    count = sum(start <= x <= end for x, _ in holes)
    words = (
        f"from {show(start, 'length')} to {show(end, 'length')}: {count} "
        f"hole{'' if count == 1 else 's'} for 1/2 in bolts"
    )
    return TemplateSheet(
        drilling_template(holes, **sizes), f"drilling template, true size, {words}, and a 4 in ruler"
    )


def template_pages(start=0.0, end=16 * inch, beam=None, job=None, plate_bears=False, drawing=""):
    """Lay the drilling template of a stretch of the flitch beam out on letter paper, in true size.

    Parameters
    ----------
    start : float
        Where the stretch begins, from the left end [mm].
    end : float
        Where it ends [mm].
    beam : structlib.rules.us.flitch.Flitch
        The beam; the example when None [-].
    job : structlib.house.beam.BeamJob
        The opening; the example when None [-].
    plate_bears : bool
        Whether the plate stands on a steel seat [-].
    drawing : str
        Number of the engineer's drawing; without it a sheet says that it is not for drilling [-].

    Returns
    -------
    tuple of structlib.pictures.template_pages.TemplatePage
        The pages; ``paper.template_pdf`` saves them [-].

    Raises
    ------
    OutsideRule
        When a share is above 1, or a gate stands; the end bolts of a plate without a steel seat often are.

    Examples
    --------
    >>> len(template_pages(end=24 * inch, plate_bears=True))
    4
    """
    holes, sizes = _drilled(start, end, beam, job, plate_bears, drawing)
    return drilling_pages(holes, **sizes)


def _drilled(start, end, beam, job, plate_bears, drawing):
    """Holes of the beam, and what a template of one stretch is told: its checks and its gates among it."""
    job = job or example_job()
    beam, bolts, _ = _example_bolts(beam, job, plate_bears)
    checks = (*check_flitch(job, beam, RULEBOOK, plate_bears=plate_bears, bolt_diameter=_BOLT), *bolts.checks)
    gates = [one.sentence for one in checks if one.kind == "shear" and not one.decides]
    if job.loaded_on == "side":
        gates.append(FLITCH_FROM_THE_SIDE)
    if "masonry" in (job.left.below, job.right.below):
        gates.append("a beam on masonry: whether the wall can take the push is for an engineer")
    # both ends alike: the one that uses more, under one name
    shares = {}
    for one in (check for check in checks if check.decides):
        name = re.sub(r",? (left|right)( end| seat)?", "", one.name)
        shares[name] = max(one.share, shares.get(name, 0.0))
    return [(hole.along, hole.up) for hole in bolts.holes], {
        "diameter": _BOLT,
        "depth": beam.depth,
        "plate_depth": beam.plate_depth,
        "start": start,
        "end": end,
        "title": f"Flitch beam, {show(start, 'length')} to {show(end, 'length')} from the left end, "
        "1/2 in bolts" + (", plate on a steel seat" if plate_bears else ""),
        "shares": tuple(shares.items()),
        "gates": tuple(gates),
        "drawing": drawing,
    }


def plate_pieces_table(beam=None, job=None):
    """List what the plate weighs in one, two and three pieces.

    Parameters
    ----------
    beam : structlib.rules.us.flitch.Flitch
        The beam; the example when None [-].
    job : structlib.house.beam.BeamJob
        The opening; the example when None [-].

    Returns
    -------
    structlib.pages.show.Table
        Pieces, length and weight of each, what a cut does [-].

    Examples
    --------
    >>> [row[2] for row in plate_pieces_table().rows]
    ['191 lb', '96 lb', '64 lb']
    """
    job = job or example_job()
    beam, _, length = _example_bolts(beam, job)
    checks = {check.name: check for check in check_flitch(job, beam, RULEBOOK)}
    load = sum(typed.load.intensity for typed in job.loads) + beam.weight
    rows = []
    for count in (1, 2, 3):
        one = plate_pieces(beam, length=length, pieces=count)[0]
        alone = "-"
        if count > 1:
            # the plate begins at the outer edge of the seat, the span at its middle
            moment = formulas.simple_uniform_moment_at(
                line_load=load, span=job.span, position=one.end - job.left.length / 2
            )
            given = checks["bending, wood at a bolt hole"].given
            alone = show(wood_alone_share(beam, moment=moment, allowed_stress=given), "ratio")
        rows.append(
            (
                str(count),
                show(one.end - one.start, "length"),
                show(one.weight, "weight"),
                alone,
                splice_note(count),
            )
        )
    head = ("pieces", "length of each", "weight of each", "wood alone at the first cut", "what the cut does")
    return Table(
        head, rows, f"{beam.plate.name}; share of the wood's own bending value where the plate is cut"
    )


def side_load_table(load=600 * plf, plies=(2, 3, 4)):
    """List the nails of beams that are loaded on one side only.

    Parameters
    ----------
    load : float
        Load on the one side [N/mm].
    plies : iterable of int
        Numbers of 2x10 plies [-].

    Returns
    -------
    structlib.pages.show.Table
        Load to pass, spacing, nails per foot [-].

    Examples
    --------
    >>> [row[1] for row in side_load_table().rows]
    ['300 plf', '400 plf', '450 plf']
    """
    rows = []
    for count in plies:
        passing = load_to_pass(side_load=load, plies=count)
        crossing = show(passing, "line load")
        if nothing_passes(passing, load):
            rows.append((f"{count}-2x10", crossing, "nothing has to pass", pattern_words()))
            continue
        try:
            found = ply_fastening(
                plies=count,
                ply_width=1.5 * inch,
                depth=9.25 * inch,
                side_load=load,
                specific_gravity=0.5,
                fastener=nail("10d common"),
                rows=3,
            )
            answer = (show(found.spacing, "section length"), f"{fasteners_per_foot(found):.1f}")
        except OutsideRule as refusal:
            answer = ("refused", str(refusal))
        rows.append((f"{count}-2x10", crossing, *answer))
    return Table(
        ("beam", "load to pass", "spacing in three lines", "nails in each foot"),
        rows,
        f"{show(load, 'line load')} on one side; 10d common nails in Douglas Fir-Larch, NDS 2018 12.3 "
        f"(recalled)",
    )


def steel_table(names=("W8x18", "W8x24", "W10x22"), braces=(0.0, 4 * ft, 8 * ft, 12 * ft, 16 * ft)):
    """List what steel beams carry in bending, by the distance between their braces.

    Parameters
    ----------
    names : iterable of str
        Shapes [-].
    braces : iterable of float
        Unbraced lengths [mm].

    Returns
    -------
    structlib.pages.show.Table
        Allowable moments [-].

    Examples
    --------
    >>> steel_table(("W8x18",), (0.0,)).rows[0]
    ('W8x18', '42.4')
    """
    shapes = [steel_shape(name) for name in names]
    found = [[steel_moment(one, unbraced_length=length) for length in braces] for one in shapes]
    rows = [
        (one.name, *(f"{moment.allowed / (kip * ft):.1f}" for moment in moments))
        for one, moments in zip(shapes, found)
    ]
    yields = " and ".join(f"{strength / ksi:.0f}" for strength in sorted({s.yield_strength for s in shapes}))
    known = least_verified([moment.verified for moments in found for moment in moments])
    head = ("held all along" if length == 0 else f"every {show(length, 'length')}" for length in braces)
    return Table(
        ("shape", *head),
        rows,
        f"allowable moment in kip-ft (1,000 lb-ft), by the distance between braces; {yields} ksi steel, the "
        f"same moment all along (C_b = 1), AISC 360-16 F2, {known}",
    )


def four_ways_table(middle=11.25 * inch, left=None, right=None, job=None):
    """Span the opening in sawn lumber, LVL, flitch and steel, within the depth at each end.

    Parameters
    ----------
    middle : float
        Greatest depth between the seats [mm].
    left : float
        Greatest depth over the left seat; as in the middle when None [mm].
    right : float
        Greatest depth over the right seat; as in the middle when None [mm].
    job : structlib.house.beam.BeamJob
        The opening; the example when None [-].

    Returns
    -------
    structlib.pages.show.Table
        One row a family: the lightest below 100 %, or the one least over; what is asked where a gate stands [-].

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
            show(one.share, "ratio")
            + (", over" if one.share > 1 else f", {one.withheld}" if one.withheld else ""),
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

    Returns
    -------
    dict
        Results by their names in data/published_checks.csv [MPa].

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

    Returns
    -------
    dict
        Results by their names in data/published_checks.csv [plf, in3].

    Examples
    --------
    >>> round(printed_steel_beam()["plastic modulus asked of a 20 ft steel beam"], 2)
    20.53
    """
    from structlib.ground.units import ksi, pcf, psf
    from structlib.rules.us.steel_beams import plastic_modulus_needed

    dead = (150 * pcf * 4 * inch + 20 * psf) * 10 * ft + 50 * plf
    load = 1.2 * dead + 1.6 * 40 * psf * 10 * ft
    moment = formulas.simple_uniform_moment(line_load=load, span=20 * ft)
    needed = plastic_modulus_needed(moment=moment, yield_strength=50 * ksi, resistance=0.9)
    return {
        "factored load of a 20 ft steel beam": load / plf,
        "plastic modulus asked of a 20 ft steel beam": needed / inch**3,
    }


def two_sisters_against_their_sum(old_modulus=1.0e6 * psi):
    """Sister a tired joist with a new one of the same size, and compare it with the sum of both.

    Parameters
    ----------
    old_modulus : float
        Modulus of elasticity left in the old joist [MPa].

    Returns
    -------
    tuple of float
        Stiffness of both over the new one alone, and the share of the new one [-].

    Examples
    --------
    >>> [round(number, 3) for number in two_sisters_against_their_sum()]
    [1.625, 0.615]
    """
    from structlib.mechanics.composite import loose_stiffness, shares_by_stiffness

    new = Part(modulus=1.6e6 * psi, width=1.5 * inch, depth=9.25 * inch)
    old = Part(modulus=old_modulus, width=1.5 * inch, depth=9.25 * inch)
    return loose_stiffness([old, new]) / new.bending_stiffness, shares_by_stiffness([old, new])[1]


hold(globals())
