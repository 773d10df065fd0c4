"""Tables of notebook 12 about one old joist: sizes, logs, cuts, and what is not known of it."""

from functools import lru_cache

from structlib.ground.cut_sections import (
    drilled_inertia,
    drilled_section_modulus,
    notched_inertia,
    notched_section_modulus,
)
from structlib.ground.measured_sections import measured_section
from structlib.ground.showing import show
from structlib.ground.sizes import stock_sizes
from structlib.ground.units import ft, inch, psf
from structlib.house.old_floor import compared
from structlib.house.unknown_wood import Unknown, measured_unknowns, unknown_range
from structlib.mechanics import formulas
from structlib.mechanics.round_taper import tapered_log
from structlib.pages.kit.door import hold
from structlib.pages.kit.show import Table
from structlib.rules.choice import RULEBOOK
from structlib.rules.members import MeasuredJoist

#: The joist of the notebook, an invented one: measured size, span, spacing and loads.
JOIST = dict(width=2 * inch, depth=7.5 * inch)
FLOOR = dict(span=13 * ft, spacing=16 * inch, dead=10 * psf, live=30 * psf)


def true_sizes():
    """Compare full-sawn joists, as old houses have them, with today's of the same name."""
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
    """Compare shapes that come out of an 8 in log with a full 8x8."""
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
    """Show where a log that gets thinner is bent most, and which even log sags as much."""
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
    """Show what is left at a notch and at a hole."""
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


def old_joist(
    species: str = "",
    grade: str = "",
    width: float = JOIST["width"],
    depth: float = JOIST["depth"],
    span: float = FLOOR["span"],
    live: float = FLOOR["live"],
):
    """Compare the notebook's joist, or one like it, with every wood that it may be of.

    ``width``, ``depth``, ``span`` [mm]; ``live`` [MPa].

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
    """Show how far the answer moves when one unknown alone moves, the widest first."""
    found = _unknown_joist()
    ends = {
        "species": "every species",
        "grade": "Select Structural to No.2",
        "width": "1 7/8 to 2 1/8 in",
        "depth": "7 1/4 to 7 3/4 in",
        "span": "12 ft 9 in to 13 ft 3 in",
        "load": "30 to 40 psf live",
    }
    rows = [(one.name, ends[one.name], show(one.least, "ratio"), show(one.greatest, "ratio")) for one in found.swings]
    rows.append(("all of them", "", show(found.least.answer, "ratio"), show(found.greatest.answer, "ratio")))
    return Table(("what is not known", "from, to", "least used", "most used"), rows)


def printed_examples():
    """Rework a printed example by an older rule: how deep a notched end must stay.

    Gives [as the row says].

    Examples
    --------
    >>> [round(value, 1) for value in printed_examples().values()]
    [15.2, 250.0]
    """
    push = formulas.simple_point_left_reaction(point_load=30.36e3, span=8000.0, load_position=4000.0)
    power = RULEBOOK.room("notches").cut_limit("older_end_notch_shear_power")
    depth = RULEBOOK.room("notched_ends").remaining_depth_for(
        shear=push, shear_value=0.85, width=150.0, depth=350.0, power=power
    )
    return {
        "push of a 150 x 350 mm beam, 8 m, 30.36 kN in the middle": push / 1000,
        "depth that its notched end must keep, older rule": depth,
    }


hold(globals())
