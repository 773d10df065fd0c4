"""Tables of a flitch beam for notebook 11: its checks, its bolts, its holes in true size, its plate in pieces."""

import re

from structlib.ground.showing import show
from structlib.ground.units import inch
from structlib.house.beam import BeamJob
from structlib.house.with_steel import FLITCH_FROM_THE_SIDE, check_flitch, example_flitch, example_job, lay_out_flitch
from structlib.mechanics import formulas
from structlib.mechanics.composite import own_stress
from structlib.pages.kit.door import hold
from structlib.pages.kit.show import Table
from structlib.pictures.template import drilling_template
from structlib.pictures.template_pages import drilling_pages
from structlib.rules.check import governing
from structlib.rules.choice import RULEBOOK
from structlib.rules.members import Flitch, SharedBeamMember, SharedDemand, SharedPiece

_BOLT = 0.5 * inch
_ALL_ALONG = ("bending", "sag")  # kinds of checks that stand at no end


def flitch_table(beam: Flitch = None, job: BeamJob = None, plate_bears: bool = False):
    """List the checks of a flitch beam.

    Examples
    --------
    >>> flitch_table().rows[0][0]
    'bending, wood at a bolt hole'
    """
    beam, job = beam or example_flitch(), job or example_job()
    every = check_flitch(job, beam, RULEBOOK, plate_bears=plate_bears)
    withdrawn = sorted({one.sentence for one in every if one.kind == "shear" and not one.decides})
    # both ends alike: what stands at the right one is left out
    checks = [one for one in every if one.decides and (one.kind in _ALL_ALONG or one.position < job.span / 2)]
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


def bolts_table(beam: Flitch = None, job: BeamJob = None, plate_bears: bool = False):
    """List what the bolts of a flitch beam pass on, and how they stand.

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
        f"1/2 in bolts by {'; '.join(dict.fromkeys(one.clause for one in bolts.checks))} ({bolts.verified}); no point loads "
        "on the beam",
    )


def holes_table(beam: Flitch = None, job: BeamJob = None, plate_bears: bool = False):
    """List every hole of the drilling template.

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
    """A drilling template as a notebook shows it: in true size where the screen keeps it."""

    def __init__(self, text: str, alt: str):
        self.text, self.alt = text, alt

    def _repr_html_(self):
        return f'<div style="overflow-x:auto">{self.text}</div>'

    def __repr__(self):
        return self.alt


def template_sheet(
    start: float = 0.0,
    end: float = 16 * inch,
    beam: Flitch = None,
    job: BeamJob = None,
    plate_bears: bool = False,
    drawing: str = "",
):
    """Draw the drilling template of a stretch of the flitch beam, in true size.

    ``start``, ``end`` [mm].

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
    return TemplateSheet(drilling_template(holes, **sizes), f"drilling template, true size, {words}, and a 4 in ruler")


def template_pages(
    start: float = 0.0,
    end: float = 16 * inch,
    beam: Flitch = None,
    job: BeamJob = None,
    plate_bears: bool = False,
    drawing: str = "",
):
    """Lay the drilling template of a stretch of the flitch beam out on letter paper, in true size.

    ``start``, ``end`` [mm].

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


def plate_pieces_table(beam: Flitch = None, job: BeamJob = None):
    """List what the plate weighs in one, two and three pieces.

    Examples
    --------
    >>> [row[2] for row in plate_pieces_table().rows]
    ['191 lb', '96 lb', '64 lb']
    """
    job = job or example_job()
    beam, _, length = _example_bolts(beam, job)
    load = sum(typed.load.intensity for typed in job.loads) + beam.weight
    flitch, rows = RULEBOOK.room("flitch"), []
    for count in (1, 2, 3):
        one = flitch.plate_pieces(beam, length=length, pieces=count)[0]
        # the plate begins at the outer edge of the seat, the span at its middle
        alone = show(_wood_alone(beam, job, load, one.end - job.left.length / 2), "ratio") if count > 1 else "-"
        rows.append((
            str(count), show(one.end - one.start, "length"), show(one.weight, "weight"), alone, flitch.splice_note(count),
        ))  # fmt: skip
    head = ("pieces", "length of each", "weight of each", "wood alone at the first cut", "what the cut does")
    return Table(head, rows, f"{beam.plate.name}; share of the wood's own bending value where the plate is cut")


def _wood_alone(beam, job, load, place):
    """How much of the wood's own bending value an even load uses where the plate is cut."""
    moment = formulas.simple_uniform_moment_at(line_load=load, span=job.span, position=place)
    wood = beam.parts[0]
    stress = own_stress(wood, moment=moment, stiffness=wood.bending_stiffness)
    member = SharedBeamMember((SharedPiece("wood alone", beam.wood, beam.ply_width, beam.depth, beam.plies),))
    everything = RULEBOOK.combinations({"live"})[-1]
    return governing(RULEBOOK.checks(member, (SharedDemand(everything, (stress,), job.span, place),))).share


hold(globals())
