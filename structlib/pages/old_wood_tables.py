"""Tables of notebook 10: sizes, logs, unknowns, sag, bounce, a new beam, heavy things, signs."""

from functools import lru_cache

from structlib.ground.cut_sections import drilled_inertia, drilled_section_modulus, notched_inertia, notched_section_modulus
from structlib.ground.lumber import find_material, stock_sizes
from structlib.ground.measured_sections import measured_section
from structlib.ground.showing import show
from structlib.ground.units import ft, inch, lb, psf
from structlib.house.mid_beam import beam_line_load, with_mid_beam
from structlib.house.old_floor import compared
from structlib.house.patch_loads import feet_on_two_joists, find_heavy_thing, patch_on_joists, tile_load
from structlib.house.sag import read_sag, sag_parts
from structlib.house.triage import triage
from structlib.house.unknown_wood import Unknown, measured_unknowns, unknown_range
from structlib.mechanics import formulas, vibration
from structlib.mechanics.round_taper import tapered_log
from structlib.pages.door import hold
from structlib.pages.show import Picture, Table
from structlib.pictures.drawings.sag_lines import SagLinesView, draw_sag_lines
from structlib.rules.choice import BOUNCE, RULEBOOK
from structlib.rules.members import MeasuredJoist

#: The joist of the notebook, an invented one: measured size, span, spacing and loads.
JOIST = dict(width=2 * inch, depth=7.5 * inch)
FLOOR = dict(span=13 * ft, spacing=16 * inch, dead=10 * psf, live=30 * psf)

#: Heights of an invented floor on a grid: four lines, 16 in apart, every 26 in, in eighths of an inch.
_PLACES = tuple(number * 26 * inch for number in range(7))
_EIGHTHS = (
    (0, -3, -5, -6, -6, -4, -1),
    (0, -3, -6, -7, -7, -4, -2),
    (0, -4, -6, -8, -7, -5, -2),
    (0, -2, -4, -5, -5, -4, -2),
)


def true_sizes():
    """Compare full-sawn joists, as old houses have them, with today's of the same name.

    Returns
    -------
    Table
        Sizes, and how many times as strong and as stiff the old one is, of the same wood [-].
    """
    today = {one.nominal: one for one in stock_sizes("dimension", 2)}
    rows = []
    for name in ("2x6", "2x8", "2x10"):
        deep = float(name[2:]) * inch
        old, new = measured_section("sawn", width=2 * inch, depth=deep), today[name]
        new = measured_section("sawn", width=new.width, depth=new.depth)
        rows.append((
            name, f"{show(old.width, 'section length')} x {show(old.depth, 'section length')}",
            f"{show(new.width, 'section length')} x {show(new.depth, 'section length')}",
            f"{old.section_modulus / new.section_modulus:.2f}", f"{old.inertia / new.inertia:.2f}",
        ))  # fmt: skip
    return Table(("name", "full-sawn", "today, dry", "strength, times", "stiffness, times"), rows)


def log_shapes():
    """Compare shapes that come out of an 8 in log with a full 8x8.

    Returns
    -------
    Table
        Wood, strength and stiffness as shares of the 8x8 [-].
    """
    size = 8 * inch
    square = measured_section("sawn", width=size, depth=size)
    shapes = (
        ("8 in round log", measured_section("round", width=size, depth=size)),
        ("its two sides flat, 6 in apart", measured_section("flat sides", width=6 * inch, depth=size)),
        ("the square sawn out of it", measured_section("sawn", width=size / 2**0.5, depth=size / 2**0.5)),
        ("half of it, flat face up", measured_section("half round", width=size, depth=size / 2)),
        ("8x8 hewn, corners gone by 1 in", measured_section("hewn", width=size, depth=size, wane=1 * inch)),
    )
    rows = [
        (
            name,
            *(
                show(getattr(one, part) / getattr(square, part), "ratio")
                for part in ("area", "section_modulus", "inertia")
            ),
        )
        for name, one in shapes
    ]
    return Table(("shape", "wood", "strength", "stiffness"), rows, "As shares of a full 8x8:")


def tapered_logs():
    """Show where a log that gets thinner is bent most, and which even log sags as much.

    Returns
    -------
    Table
        Ends, place of the greatest stress, and the even diameter of the same sag [-].
    """
    rows = []
    for start, end in ((8, 8), (8, 7), (8, 6), (8, 5)):
        log = tapered_log(
            start_diameter=start * inch,
            end_diameter=end * inch,
            span=FLOOR["span"],
            line_load=1.0,
            modulus=9000.0,
        )
        even = tapered_log(
            start_diameter=start * inch,
            end_diameter=start * inch,
            span=FLOOR["span"],
            line_load=1.0,
            modulus=9000.0,
        )
        rows.append(
            (
                f"{start} in to {end} in",
                show(log.stress_place, "length", precision=1),
                f"{log.stress / even.stress:.2f}",
                f"{log.same_as / inch:.2f} in",
            )
        )
    return Table(("thick end to thin end", "bent most at", "stress, times", "sags like an even log of"), rows)


def cuts():
    """Show what is left at a notch and at a hole.

    Returns
    -------
    Table
        Strength and stiffness left, as shares [-].
    """
    size = dict(width=1.0, depth=6.0)
    whole = (size["depth"] ** 2 / 6, size["depth"] ** 3 / 12)
    rows = [
        (name, show(strength / whole[0], "ratio"), show(stiffness / whole[1], "ratio"))
        for name, strength, stiffness in (
            (
                "notch, a sixth of the depth",
                notched_section_modulus(notch=1.0, **size),
                notched_inertia(notch=1.0, **size),
            ),
            (
                "notch, a quarter",
                notched_section_modulus(notch=1.5, **size),
                notched_inertia(notch=1.5, **size),
            ),
            (
                "hole, a third, at mid-depth",
                drilled_section_modulus(diameter=2.0, **size),
                drilled_inertia(diameter=2.0, **size),
            ),
        )
    ]
    return Table(("cut", "strength left there", "stiffness left there"), rows)


def old_joist(species="", grade="", width=JOIST["width"], depth=JOIST["depth"], span=FLOOR["span"], live=FLOOR["live"]):
    """Compare the notebook's joist, or one like it, with every wood that it may be of.

    Parameters
    ----------
    species, grade : str
        What is known of its wood; empty where nothing is [-].
    width, depth : float
        Its size [mm].
    span : float
        Its span [mm].
    live : float
        Live load of its floor [MPa].

    Returns
    -------
    structlib.rules.members.Compared
        Woods and shares [-].

    Examples
    --------
    >>> round(float(old_joist("Hem-Fir", "No.2").greatest[0]), 2)
    0.67
    """
    joist = MeasuredJoist(measured_section("sawn", width=width, depth=depth), FLOOR["spacing"], 1, species, grade)
    return compared(joist, span=span, dead=FLOOR["dead"], live=live, rulebook=RULEBOOK)


@lru_cache(maxsize=1)
def _unknown_joist():
    """The range of the notebook's joist over wood, sizes, span and load."""
    grades = ("Select Structural", "No.1", "No.2")
    named = {(wood.species, grade) for wood in old_joist().woods for grade in wood.grade.split("/")}
    species = tuple(
        name for name in dict.fromkeys(wood.species for wood in old_joist().woods)
        if all((name, grade) in named for grade in grades)
    )  # fmt: skip

    def used(species, grade, width, depth, span, load):
        return float(old_joist(species, grade, width, depth, span, load).greatest[0])

    sizes = measured_unknowns(
        jumps=dict.fromkeys(("width", "depth"), RULEBOOK.room("old_joists").size_jumps()),
        width=(1.875 * inch, 2.125 * inch),
        depth=(7.25 * inch, 7.75 * inch),
        span=(12.75 * ft, 13.25 * ft),
        load=(30 * psf, 40 * psf),
    )
    chosen = (Unknown("species", species, species.index("Hem-Fir")), Unknown("grade", grades, 2), *sizes)
    return unknown_range(used, chosen)


def unknowns():
    """Show how far the answer moves when one unknown alone moves, the widest first.

    Returns
    -------
    Table
        Unknown, least and greatest share used [-].
    """
    found = _unknown_joist()
    ends = {
        "species": "every species",
        "grade": "Select Structural to No.2",
        "width": "1 7/8 to 2 1/8 in",
        "depth": "7 1/4 to 7 3/4 in",
        "span": "12 ft 9 in to 13 ft 3 in",
        "load": "30 to 40 psf live",
    }
    rows = [
        (one.name, ends[one.name], show(one.least, "ratio"), show(one.greatest, "ratio"))
        for one in found.swings
    ]
    rows.append(("all of them", "", show(found.least.answer, "ratio"), show(found.greatest.answer, "ratio")))
    return Table(("what is not known", "from, to", "least used", "most used"), rows)


def reading():
    """Read the invented grid of heights.

    Returns
    -------
    structlib.house.sag.SagReading
        Sag by line and tilt [-].
    """
    return read_sag(
        _PLACES, [[eighth / 8 * inch for eighth in line] for line in _EIGHTHS], line_spacing=FLOOR["spacing"]
    )


def _line_words(line):
    return f"{line.number}: {show(line.sag, 'section length')}, L/{line.ratio:.0f}"


def sag_picture(frame="page"):
    """Draw the invented grid of heights, line by line.

    Parameters
    ----------
    frame : str
        'page', 'wide' or 'tall' [-].

    Returns
    -------
    structlib.pages.show.Picture
        The picture [-].
    """
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
    """Show sag and L/n of every line of the grid, and the tilt apart from it.

    Returns
    -------
    Table
        Line, fall from end to end, sag, L/n [-].
    """
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

    Returns
    -------
    structlib.house.sag.SagParts
        The parts as ranges [mm].
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
    """Show the sag of the worst line as elastic, creep, and what neither explains.

    Returns
    -------
    Table
        Part, least, most, meaning [-].
    """
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
    """Show four floors that all meet L/360 exactly, and how slowly each swings.

    Returns
    -------
    Table
        Span, live sag, first frequency [-].
    """
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
    """First frequency of the notebook's joist: empty, with a heavier floor, and with a person in the middle.

    Returns
    -------
    Table
        Case, slowest and fastest wood [-].
    """
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


#: A printed joist of the span tables that count bounce: E back-solved from many cells [MPa], sizes [mm].
_PRINTED = dict(modulus=12500.0, width=38.0, depth=235.0, spacing=400.0, subfloor=15.5)


def vibration_spans():
    """Spans of one joist by the published criterion of bounce, for what ties the joists, beside its span by L/360.

    Returns
    -------
    Table
        Tie, span by vibration, span by sag [-].
    """
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

    Returns
    -------
    float
        Span [m].

    Examples
    --------
    >>> round(printed_joist_span(), 2)
    4.34
    """
    return BOUNCE.vibration_span(tied="strapping", **_PRINTED).span / 1000


def printed_examples():
    """Rework the printed examples: an end notch by an older rule, and a joist span that vibration decides.

    Returns
    -------
    dict
        Row of ``data/published_checks.csv`` to our number, in the unit of that row [as the row says].

    Examples
    --------
    >>> [round(value, 1) for value in printed_examples().values()]
    [15.2, 250.0, 4.3]
    """
    push = formulas.simple_point_left_reaction(point_load=30.36e3, span=8000.0, load_position=4000.0)
    notches = RULEBOOK.room("notches")
    power = notches.cut_limit("older_end_notch_shear_power")
    depth = notches.remaining_depth_for(shear=push, shear_value=0.85, width=150.0, depth=350.0, power=power)
    return {
        "push of a 150 x 350 mm beam, 8 m, 30.36 kN in the middle": push / 1000,
        "depth that its notched end must keep, older rule": depth,
        "span of a 38 x 235 joist at 400 mm, tied by strapping": printed_joist_span(),
    }


def new_beam():
    """Show what a beam under the middle of an over-spanned floor does to one joist, and what the beam gets.

    Returns
    -------
    Table
        Way, moments, sag, load on the beam [-].
    """
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
    """Compare heavy things with the design load of the joists under them.

    Returns
    -------
    Table
        Thing, how it lies, heaviest joist, share of its design moment [-].
    """
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


def signs_table(seen):
    """Sort signs into what to look at, outside causes first.

    Parameters
    ----------
    seen : sequence of str
        Signs that are there [-].

    Returns
    -------
    Table
        Where from, cause, what points to it, what to look at [-].
    """
    found = triage(seen)
    return Table(
        ("from", "may be", "points to it", "look next"),
        [(lead.side, lead.cause, lead.points_to_it, lead.look_next) for lead in found.leads],
    )


def gates_of(seen):
    """List the gates of signs: what means stop and call.

    Parameters
    ----------
    seen : sequence of str
        Signs that are there [-].

    Returns
    -------
    str
        One sentence a line; a line that says so when there is none [-].

    Examples
    --------
    >>> gates_of(["bouncy floor"])
    'No gate for these signs by themselves.'
    """
    return "\n".join(triage(seen).gates) or "No gate for these signs by themselves."


def range_of_woods():
    """Show the notebook's joist as each end of the range of woods.

    Returns
    -------
    Table
        Wood, share used, what governs [-].
    """
    found = old_joist()
    order = found.best_first()
    picked = (order[0], order[len(order) // 2], order[-1])
    return Table(
        ("compared with", "used", "governs"),
        [
            (f"{word}: {found.woods[one].name}", show(float(found.greatest[one]), "ratio"), found.governs(one))
            for word, one in zip(("best", "middle", "worst"), picked)
        ],
    )


hold(globals())
