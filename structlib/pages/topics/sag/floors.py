"""Tables of notebook 13 about a whole old floor: sag, bounce, a new beam, heavy things, signs."""

from structlib.ground.lumber import find_material
from structlib.ground.measured_sections import measured_section
from structlib.ground.sections import rectangle_inertia
from structlib.ground.showing import show
from structlib.ground.units import ft, inch, lb, psf, psi
from structlib.house.mid_beam import beam_line_load, with_mid_beam
from structlib.house.patch_loads import feet_on_two_joists, find_heavy_thing, patch_on_joists, tile_load
from structlib.house.sag import read_sag, sag_parts
from structlib.house.triage import triage
from structlib.mechanics import formulas, vibration
from structlib.pages.kit.door import hold
from structlib.pages.kit.show import Picture, Table
from structlib.pages.topics.old_wood.tables import FLOOR, JOIST, old_joist
from structlib.pictures.drawings.sag_lines import SagLinesView, draw_sag_lines
from structlib.rules.choice import BOUNCE, RULEBOOK

#: Heights of an invented floor on a grid: four lines, 16 in apart, every 26 in, in eighths of an inch.
_PLACES = tuple(number * 26 * inch for number in range(7))
_EIGHTHS = (
    (0, -3, -5, -6, -6, -4, -1),
    (0, -3, -6, -7, -7, -4, -2),
    (0, -4, -6, -8, -7, -5, -2),
    (0, -2, -4, -5, -5, -4, -2),
)


def reading():
    """Read the invented grid of heights."""
    return read_sag(
        _PLACES, [[eighth / 8 * inch for eighth in line] for line in _EIGHTHS], line_spacing=FLOOR["spacing"]
    )


def _line_words(line):
    return f"{line.number}: {show(line.sag, 'section length')}, L/{line.ratio:.0f}"


def sag_picture(frame: str = "page"):
    """Draw the invented grid of heights, line by line."""
    found = reading()
    return Picture(draw_sag_lines(SagLinesView(
        title=f"Line {found.worst.number} sags most: span/{found.worst.ratio:.0f}",
        places=_PLACES,
        sags=tuple(line.sags for line in found.lines),
        words=tuple(_line_words(line) for line in found.lines),
        worst=found.worst.number,
        note="An invented floor of 13 ft, heights read on a grid.",
    ), frame))  # fmt: skip


def sag_table():
    """Show sag and L/n of every line of the grid, and the tilt apart from it."""
    found = reading()
    rows = [
        (
            f"line {line.number}",
            show(-heights[-1] / 8 * inch, "section length"),
            show(line.sag, "section length"),
            f"L/{line.ratio:.0f}",
        )
        for line, heights in zip(found.lines, _EIGHTHS)
    ]
    falls = f"{1000 * found.tilt_along:.1f} in 1000 along the joists"
    tilt = f"All of the floor falls {falls}. That is tilt, and no sag."
    return Table(("line", "far end lower by", "sag", "as a ratio"), rows, tilt)


def _dead_sag(wood):
    section = measured_section("sawn", **JOIST)
    return formulas.simple_uniform_deflection(
        line_load=FLOOR["dead"] * FLOOR["spacing"],
        span=FLOOR["span"],
        bending_stiffness=wood.modulus * section.inertia,
    )


def sag_parts_of_the_floor():
    """Split the sag of the worst line, over every wood that the joist may be of.

    Gives [mm].
    """
    sags, creep = [_dead_sag(wood) for wood in old_joist().woods], RULEBOOK.room("deflection").creep_factor
    return sag_parts(
        measured=reading().worst.sag,
        stiff_sag=min(sags),
        soft_sag=max(sags),
        least_creep=creep(wet=False),
        most_creep=creep(wet=True),
    )


def sag_split():
    """Show the sag of the worst line as elastic, creep, and what neither explains."""
    parts = sag_parts_of_the_floor()
    size = lambda value: show(value, "small length")  # noqa: E731
    rows = [("measured", size(parts.measured), size(parts.measured), "the worst line")]
    rows += [
        (name, size(part.least), size(part.most), words)
        for name, part, words in (
            ("elastic", parts.elastic, "bent by the weight that is there today"),
            ("creep", parts.creep, "what years add to it"),
            ("neither explains", parts.unexplained, "laid crooked, cut, settled, overloaded once, or rotten"),
            ("comes back", parts.comes_back, "by elastic theory, if all weight were lifted off"),
            ("stays", parts.stays, "by elastic theory"),
        )
    ]
    return Table(("part", "least", "most", "what it is"), rows)


def bounce():
    """Show four floors that all meet L/360 exactly, and how slowly each swings."""
    rows = []
    for feet in (8, 12, 16, 20):
        live = feet * ft / 360
        dead = live * 10 / 40  # sag goes with load
        rows.append(
            (
                f"{feet} ft",
                show(live, "small length"),
                "L/360",
                f"{vibration.frequency_from_sag(sag=dead):.1f} Hz",
            )
        )
    return Table(("span", "sag under 40 psf", "as a ratio", "first frequency, 10 psf"), rows)


def frequencies():
    """First frequency of the notebook's joist: empty, with a heavier floor, and with a person in the middle."""
    section = measured_section("sawn", **JOIST)
    moduli = [wood.modulus for wood in old_joist().woods]
    ends = [modulus * section.inertia for modulus in (min(moduli), max(moduli))]
    weight = FLOOR["dead"] * FLOOR["spacing"]
    tile = tile_load() * FLOOR["spacing"]
    rows = []
    for name, even, point in (
        ("floor of 10 psf", weight, 0.0),
        ("the same with tile", weight + tile, 0.0),
        ("10 psf, and 180 lb in the middle of one joist", weight, 180 * lb),
    ):
        swings = [
            vibration.midspan_weight_frequency(
                bending_stiffness=ei, line_weight=even, point_weight=point, span=FLOOR["span"]
            )
            for ei in ends
        ]
        rows.append((name, *(f"{one:.1f} Hz" for one in swings)))
    return Table(("one joist with", "softest wood", "stiffest wood"), rows)


def joists_on_a_beam(
    spans: tuple[float, ...] = (8 * ft, 10 * ft, 12 * ft, 14 * ft), joist_span: float = 13 * ft, system: str = "us"
):
    """Let joists swing on a beam that swings too, for beams of several spans.

    ``spans``, ``joist_span`` [mm].
    """
    one = 1.5 * inch, 9.25 * inch
    stiffness = 1.3e6 * psi * rectangle_inertia(width=one[0], depth=one[1])
    floor = 10 * psf
    joists = vibration.simple_span_frequency(
        bending_stiffness=stiffness, line_weight=floor * 16 * inch, span=joist_span
    )
    rows = []
    for span in spans:
        beam = vibration.simple_span_frequency(
            bending_stiffness=3 * stiffness, line_weight=floor * joist_span, span=span
        )
        both = vibration.frequency_in_series(upper=joists, lower=beam)
        rows.append((show(span, "length", system), *(f"{swings:.1f} Hz" for swings in (joists, beam, both))))
    head = ("span of the beam", "joists on walls", "beam alone", "joists on the beam")
    return Table(head, rows, f"2x10 joists of {show(joist_span, 'length', system)} every 16 in on a beam of three 2x10, floor of "
                             "10 psf, E 1.3 million psi. Computed, not published; together up to a fifth too low, the careful side.")  # fmt: skip


#: A printed joist of the span tables that count bounce: E back-solved from many cells [MPa], sizes [mm].
_PRINTED = dict(modulus=12500.0, width=38.0, depth=235.0, spacing=400.0, subfloor=15.5)


def vibration_spans():
    """Spans of one joist by the published criterion of bounce, for what ties the joists, beside its span by L/360."""
    inertia = _PRINTED["width"] * _PRINTED["depth"] ** 3 / 12
    load = 1.9e-3 * _PRINTED["spacing"]
    by_sag = (384 * _PRINTED["modulus"] * inertia / (5 * load * 360)) ** (1 / 3)
    rows = [
        (tied, f"{BOUNCE.vibration_span(tied=tied, **_PRINTED).span / 1000:.2f} m", f"{by_sag / 1000:.2f} m")
        for tied in ("strapping", "bridging", "strapping and bridging")
    ]
    return Table(("joists tied by", "vibration lets it span", "L/360 would"), rows)


def printed_joist_span():
    """Span of the printed joist with strapping by the vibration criterion.

    Gives [m].

    Examples
    --------
    >>> round(printed_joist_span(), 2)
    4.34
    """
    return BOUNCE.vibration_span(tied="strapping", **_PRINTED).span / 1000


def printed_examples():
    """Rework a printed example: a joist span that vibration decides.

    Gives [as the row says].

    Examples
    --------
    >>> [round(value, 2) for value in printed_examples().values()]
    [4.34]
    """
    return {"span of a 38 x 235 joist at 400 mm, tied by strapping": printed_joist_span()}


def new_beam():
    """Show what a beam under the middle of an over-spanned floor does to one joist, and what the beam gets."""
    section = measured_section("sawn", **JOIST)
    wood = find_material("Hem-Fir", "No.2")
    loads = dict(
        span=FLOOR["span"],
        lasting=FLOOR["dead"] * FLOOR["spacing"],
        passing=FLOOR["live"] * FLOOR["spacing"],
        bending_stiffness=wood.modulus * section.inertia,
    )
    through, half, cut, snug = (
        with_mid_beam(**loads),
        with_mid_beam(**loads, live_on="one half"),
        with_mid_beam(**loads, joists="cut"),
        with_mid_beam(**loads, snug=True),
    )
    rows = [
        (
            name,
            show(one.sagging, "moment"),
            show(one.hogging, "moment"),
            show(one.sag, "small length"),
            show(beam_line_load(one.middle, spacing=FLOOR["spacing"]), "line load") if one.middle else "",
        )
        for name, one in (
            ("today, one span", through.before),
            ("beam, joists run through", through.after),
            ("the same, people on one half only", half.after),
            ("beam, joists cut on it", cut.after),
            ("beam only snug, not lifted", snug.after),
        )
    ]
    return Table(("what holds it", "sagging moment", "hogging moment", "sag", "the beam gets"), rows)


def heavy_load():
    """Compare heavy things with the design load of the joists under them."""
    design = FLOOR["dead"] + FLOOR["live"]
    rows = []
    for name, directions in (
        ("cast-iron tub", ("across the joists", "along the joists")),
        ("fish tank 225 gal", ("across the joists", "along the joists")),
    ):
        thing = find_heavy_thing(name)
        for direction in directions:
            under = patch_on_joists(
                thing,
                span=FLOOR["span"],
                spacing=FLOOR["spacing"],
                lasting=FLOOR["dead"],
                design=design,
                place=FLOOR["span"] / 2,
                direction=direction,
            )
            worst = max(under, key=lambda one: one.moment)
            rows.append(
                (
                    f"{name}, {show(thing.weight, 'force')}",
                    direction,
                    show(worst.weight, "force"),
                    show(worst.share, "ratio"),
                )
            )
        if name == "cast-iron tub":
            rows.append(_tub_on_feet(thing, design))
    tile = (FLOOR["dead"] + tile_load() + FLOOR["live"]) / design
    rows.append(
        (
            f"tile on mortar, {show(tile_load(), 'area load')}",
            "all over, with people",
            "",
            show(tile, "ratio"),
        )
    )
    return Table(("what", "how it lies", "on one joist", "of the design moment"), rows)


def _tub_on_feet(tub, design):
    """The row of a tub across the joists whose four feet land on two of them, 6 in inside its outline."""
    one = feet_on_two_joists(
        tub,
        span=FLOOR["span"],
        spacing=FLOOR["spacing"],
        lasting=FLOOR["dead"],
        design=design,
        place=FLOOR["span"] / 2,
    )
    return (
        f"cast-iron tub on four feet, {show(tub.weight, 'force')}",
        "across, two feet on each of two joists",
        show(one.weight, "force"),
        show(one.share, "ratio"),
    )


def signs_table(seen: tuple[str, ...]):
    """Sort signs into what to look at, outside causes first."""
    found = triage(seen)
    return Table(
        ("from", "may be", "points to it", "look next"),
        [(lead.side, lead.cause, lead.points_to_it, lead.look_next) for lead in found.leads],
    )


def gates_of(seen: tuple[str, ...]):
    """List the gates of signs: what means stop and call.

    Examples
    --------
    >>> gates_of(["bouncy floor"])
    'No gate for these signs by themselves.'
    """
    return "\n".join(triage(seen).gates) or "No gate for these signs by themselves."


hold(globals())
