"""What a notebook asks of one beam or joist without a bench: limits asked back, spans apart, joists on a beam."""

from dataclasses import replace

from structlib.ground.lumber import find_material
from structlib.ground.refusals import OutsideRule
from structlib.ground.sections import rectangle_inertia
from structlib.ground.showing import show
from structlib.ground.sizes import dressed_size
from structlib.ground.units import ft, inch, plf, psf, psi
from structlib.house.asked_back import (
    at_span,
    governs,
    heaviest_load,
    least_depth,
    longest_span,
    widest_spacing,
)  # fmt: skip
from structlib.house.beam import BeamJob, TypedLoad
from structlib.mechanics.beams import Beam, LineLoad, Support, solve
from structlib.pages.kit.door import hold
from structlib.pages.kit.show import Table, start_values
from structlib.pages.topics.beam.page import BeamPage
from structlib.rules.check import BeamMember, BeamUse, Rulebook, Seat
from structlib.rules.choice import RULEBOOK
from structlib.rules.members import shares_up_to


def limits_of(page: BeamPage, **changes):
    """Ask each check of the beam on the page back: what span, load or depth it would just take."""
    values = start_values(page, **changes)
    result, book = page.result(tuple(values.items())), page.rulebook
    if result.gates:
        return Table(("asked", "of the beam on the page"), page.rows(result, result.gates), "\n".join(result.gates))
    job, member = result.job, replace(result.member, use=result.job.use)
    rows = []
    for kind in dict.fromkeys(one.kind for one in result.checks if one.decides):
        asked = dict(kind=kind)
        rows.append((
            kind, show(governs(job, member, book, kind).share, "ratio"),
            _or_reason(lambda: show(longest_span(job, member, book, **asked), "length", page.system, _fine(page.system))),
            _or_reason(lambda: f"{heaviest_load(job, member, book, **asked):.2f} times"),
            _or_reason(lambda: show(least_depth(job, member, book, **asked), "section length", page.system)),
        ))  # fmt: skip
    head = ("check", "share used", "longest clear span", "heaviest load", "least depth, not a size that is sold")
    return Table(
        head,
        rows,
        f"{result.choice.name} {member.material.name}; one number is asked back at a time, the rest stays. The least span and load, and the greatest depth, hold for all.",
    )


def _fine(system):
    return 1 if system == "us" else None


def _or_reason(ask):
    try:
        return ask()
    except OutsideRule:
        return "not by this"


def joists_by_size(
    sizes: tuple[str, ...] = ("2x6", "2x8", "2x10", "2x12"),
    species: str = "Hem-Fir",
    grade: str = "No.2",
    span: float = 13 * ft,
    rulebook: Rulebook = RULEBOOK,
):
    """Ask joists of several sizes back: how far one reaches 16 in apart, and how far apart they may stand.

    ``span`` [mm].
    """
    seat, spacing, rows = Seat(3.5 * inch, "post"), 16 * inch, []
    job = _floor_job(span, seat, spacing)
    for size in sizes:
        piece, wood = dressed_size(size), find_material(species, grade, size)
        joist = BeamMember(
            wood, piece.width, piece.depth, 1, seat, seat, unbraced_length=0.0, repetitive=True, use=BeamUse("floor")
        )
        far = longest_span(job, joist, rulebook)
        apart = widest_spacing(job, joist, rulebook, spacing=spacing)
        rows.append((size, show(far, "length", precision=1), governs(at_span(job, far), joist, rulebook).name,
                     show(apart, "section length", precision=1)))  # fmt: skip
    head = ("joist", "longest clear span at 16 in", "what stops it", f"widest spacing at {show(span, 'length')}")
    shares = (
        f"Joists farther apart than {show(shares_up_to(rulebook), 'section length')} help each other no more: beyond it each "
        "is asked alone."
    )
    return Table(
        head,
        rows,
        f"{species} {grade}, dry, 40 psf live and 10 psf dead; held against rolling by the floor. {shares}",
    )


def _floor_job(span, seat, spacing):
    """One joist under a floor of 40 psf and 10 psf; its own weight comes besides."""
    whole = span + seat.length
    lines = (("dead", 10 * psf), ("live", 40 * psf))
    return BeamJob(
        span,
        seat,
        seat,
        tuple(TypedLoad(kind, LineLoad(0.0, whole, load * spacing)) for kind, load in lines),
        unbraced_length=0.0,
    )


def each_span(system: str = "us"):
    """Solve a beam in one piece over two unlike spans, and read shear, moment and sag of each span apart."""
    places = (0.0, 12 * ft, 20 * ft)
    stiffness = 1.6e6 * psi * 2 * rectangle_inertia(width=1.5 * inch, depth=9.25 * inch)
    solution = solve(Beam(places[-1], stiffness, tuple(map(Support, places)), (LineLoad(0.0, places[1], 100 * plf),)))
    rows = []
    for name, start, end in (
        ("left span, 12 ft", *places[:2]),
        ("right span, 8 ft", *places[1:]),
        ("the whole beam", 0.0, places[-1]),
    ):
        one = solution.extremes_between(start, end)
        rows.append((name, *(show(value.value, kind, system) for value, kind in (
            (one.shear, "force"), (one.greatest_moment, "moment"), (one.least_moment, "moment"),
            (one.greatest_deflection, "small length"), (one.least_deflection, "small length")))))  # fmt: skip
    head = ("where", "greatest shear", "greatest sagging moment", "greatest hogging moment", "lowest", "highest")
    return Table(
        head, rows, "Two 2x10 in one piece over 12 ft and 8 ft: 100 plf on the long span, nothing on the short one."
    )


hold(globals())
