"""Tables of notebook 10: what runs past, over or without a post; joints, steps and tapers."""

from dataclasses import replace

from structlib.ground.refusals import BadInput
from structlib.ground.sections import rectangle_inertia, rectangle_section_modulus
from structlib.ground.showing import show
from structlib.ground.units import ft, inch, lb
from structlib.mechanics import formulas
from structlib.mechanics.beams import Beam, Couple, LineLoad, PointLoad, Support, solve
from structlib.mechanics.continuous import three_span_inflection_places, two_span_inflection_places
from structlib.mechanics.patterns import solve_arrangements, span_loads, stretches
from structlib.mechanics.splices import plies_at, zero_moment_places
from structlib.mechanics.tapered import TaperedMember, tapered_simple
from structlib.pages.kit.door import hold
from structlib.pages.kit.show import Table
from structlib.pages.kit.woods import wood
from structlib.rules.choice import RULEBOOK

#: A force smaller than this is the dust of rounding.
DUST = 0.05 * lb


def stretch_name(start: float, places: tuple[float, ...], letters: str = "ABCD"):
    """Name a span or an overhang by the letters of its supports.

    ``start``, ``places`` [mm].

    Examples
    --------
    >>> stretch_name(0.0, (0.0, 3600.0)), stretch_name(3600.0, (0.0, 3600.0))
    ('on A–B', 'past B')
    """
    number = max(k for k, place in enumerate(places) if place <= start + 1e-6)
    if number + 1 == len(places):
        return f"past {letters[number]}"
    return f"on {letters[number]}–{letters[number + 1]}"


def without_dust(value: float):
    """Give zero where only rounding is left, so that no minus stands before a zero.

    ``value`` [N or N*mm]; gives [same unit as value].

    Examples
    --------
    >>> without_dust(-1e-9), without_dust(-40.0)
    (0.0, -40.0)
    """
    return 0.0 if abs(value) < DUST else value


def _moment(value):
    """A moment as a table shows it; the dust of adding up must not bring a half down."""
    return show(value * (1 + 1e-12), "moment")


def post_out_ratios():
    """Compare two equal spans in one piece with the same beam when its middle post is gone.

    Examples
    --------
    >>> [round(ratio, 1) for ratio in post_out_ratios()]
    [4.0, 38.5]
    """
    moment = formulas.simple_uniform_moment(line_load=1.0, span=2.0)
    sag = formulas.simple_uniform_deflection(line_load=1.0, span=2.0, bending_stiffness=1.0)
    return (
        moment / -formulas.two_span_uniform_support_moment(line_load=1.0, span=1.0),
        sag / formulas.two_span_uniform_deflection(line_load=1.0, span=1.0, bending_stiffness=1.0),
    )


def middle_post_taken_out(*, line_load: float, span: float, bending_stiffness: float):
    """Set three beams side by side: cut over the post, in one piece over it, and without it.

    ``line_load`` [N/mm]; ``span`` [mm]; ``bending_stiffness`` [N*mm2].

    Examples
    --------
    >>> from structlib.ground.units import plf
    >>> table = middle_post_taken_out(line_load=300 * plf, span=12 * ft, bending_stiffness=1e12)
    >>> table.rows[0]
    ('greatest moment', '5,400 lb-ft', '5,400 lb-ft', '21,600 lb-ft', '4.0 and 4.0 times')
    """
    even, stiff = dict(line_load=line_load, span=span), dict(bending_stiffness=bending_stiffness)
    long = dict(line_load=line_load, span=2 * span)
    rows = (
        (
            "greatest moment",
            "moment",
            formulas.simple_uniform_moment(**even),
            -formulas.two_span_uniform_support_moment(**even),
            formulas.simple_uniform_moment(**long),
        ),
        (
            "greatest sag",
            "small length",
            formulas.simple_uniform_deflection(**even, **stiff),
            formulas.two_span_uniform_deflection(**even, **stiff),
            formulas.simple_uniform_deflection(**long, **stiff),
        ),
        (
            "push of an end",
            "force",
            formulas.simple_uniform_reaction(**even),
            formulas.two_span_uniform_end_reaction(**even),
            formulas.simple_uniform_reaction(**long),
        ),
        (
            "push of the middle post",
            "force",
            2 * formulas.simple_uniform_reaction(**even),
            formulas.two_span_uniform_middle_reaction(**even),
            None,
        ),
    )
    return Table(
        ("", "cut over the post", "one piece over it", "post taken out", "against cut, and one piece"),
        [
            (
                name,
                show(cut, kind),
                show(whole, kind),
                "gone" if out is None else show(out, kind),
                "" if out is None else f"{out / cut:.1f} and {out / whole:.1f} times",
            )
            for name, kind, cut, whole, out in rows
        ],
    )


def live_load_arrangements(*, spans: int, span: float, dead: float, live: float):
    """Compare live load everywhere with the arrangement that asks most.

    ``span`` [mm]; ``dead``, ``live`` [N/mm].

    Examples
    --------
    >>> from structlib.ground.units import plf
    >>> print(live_load_arrangements(spans=2, span=12 * ft, dead=60 * plf, live=240 * plf).rows[0])
    ('push of A, most', '1,350 lb', '1,530 lb', 'live on A–B')
    """
    if spans not in (2, 3):
        raise BadInput(f"this table has two or three spans, got {spans!r}; for example spans=2")
    length = spans * span
    supports = tuple(Support(number * span) for number in range(spans + 1))
    names = tuple(stretch_name(start, tuple(s.position for s in supports)) for start, _ in stretches(supports, length))
    found = solve_arrangements(
        Beam(length, 1e12, supports, (LineLoad(0.0, length, dead),)), span_loads(supports, length, live)
    )
    everywhere = found.case((True,) * spans)

    def when(asked):
        there = [name for name, on in zip(names, asked.on) if on]
        return "live everywhere" if len(there) == spans else "live " + " and ".join(there) if there else "no live load"

    rows = []
    for number, letter in ((0, "A"), (1, "B")):
        for word, asked in (
            ("most", found.greatest_reaction(number)),
            ("least", found.least_reaction(number)),
        ):
            rows.append(
                (
                    f"push of {letter}, {word}",
                    show(everywhere.reactions[number].force, "force"),
                    show(asked.value, "force"),
                    when(asked),
                )
            )
    peak = everywhere.extremes
    rows.append(
        (
            "moment that sags it",
            _moment(peak.greatest_moment.value),
            _moment(found.sagging.value),
            when(found.sagging),
        )
    )
    rows.append(
        (
            "moment the other way",
            _moment(-peak.least_moment.value),
            _moment(-found.hogging.value),
            when(found.hogging),
        )
    )
    return Table(("", "live load everywhere", "over every arrangement", "which"), rows)


def past_the_wall(
    *,
    span: float,
    dead: float,
    live: float,
    post_dead: float,
    post_live: float,
    overhangs: tuple[float, ...] = (1 * ft, 2 * ft, 3 * ft, 4 * ft),
):
    """Let a floor run past a foundation wall with a post from above on its tip, further and further.

    ``span``, ``overhangs`` [mm]; ``dead``, ``live`` [N/mm]; ``post_dead``, ``post_live`` [N].

    Examples
    --------
    >>> past_the_wall(span=12 * ft, dead=0.0, live=0.0, post_dead=0.0, post_live=1200 * lb).rows[1]
    ('2 ft', '2,400 lb-ft', '1,400 lb', '200 lb', '200 lb')
    """
    rows = []
    for overhang in overhangs:
        length, supports = span + overhang, (Support(0.0), Support(span))
        bare = Beam(length, 1e12, supports)
        groups = span_loads(supports, length, live) + ((PointLoad(length, post_live),),)
        steady = replace(bare, loads=(LineLoad(0.0, length, dead), PointLoad(length, post_dead)))
        both, passing = solve_arrangements(steady, groups), solve_arrangements(bare, groups)
        rows.append(
            (
                show(overhang, "length"),
                show(-both.hogging.value, "moment"),
                show(both.greatest_reaction(1).value, "force"),
                show(max(0.0, -both.least_reaction(0).value), "force"),
                show(
                    RULEBOOK.room("uplift").hold_down_demand(
                        dead_push=solve(steady).reactions[0].force,
                        passing_push=passing.least_reaction(0).value,
                    ),
                    "force",
                ),
            )
        )
    return Table(
        ("past the wall", "moment over it", "push of the wall", "hold down, D + L", "hold down, 0.6 D + L"),
        rows,
    )


def where_the_moment_is_zero(*, span: float, dead: float, live: float):
    """Show where the moment of two and three spans is zero, and how far those places wander with the live load.

    ``span`` [mm]; ``dead``, ``live`` [N/mm].

    Examples
    --------
    >>> from structlib.ground.units import plf
    >>> where_the_moment_is_zero(span=12 * ft, dead=60 * plf, live=240 * plf).rows[0][1]
    '9 ft, 15 ft'
    """
    rows = []
    for spans, places in (
        (2, two_span_inflection_places(span=span)),
        (3, three_span_inflection_places(span=span)),
    ):
        length = spans * span
        supports = tuple(Support(number * span) for number in range(spans + 1))
        found = solve_arrangements(
            Beam(length, 1e12, supports, (LineLoad(0.0, length, dead),)), span_loads(supports, length, live)
        )
        first = [[place for place in zero_moment_places(solution) if place < span] for _, solution in found.cases]
        near, far = min(p[0] for p in first if p), max(p[-1] for p in first if p)
        rows.append(
            (
                f"{spans} spans of {show(span, 'length')}",
                ", ".join(show(place, "length", precision=1) for place in places),
                f"{show(near, 'length', precision=1)} to {show(far, 'length', precision=1)}",
            )
        )
    return Table(("", "zero moment under even load", "the first one wanders, with the live load"), rows)


def plies_along(splices, *, span: float, line_load: float, places: tuple[float, ...]):
    """Count the plies of a beam over two spans at several sections, beside the moment there.

    ``splices``, ``span``, ``places`` [mm]; ``line_load`` [N/mm].

    Examples
    --------
    >>> from structlib.ground.units import plf
    >>> plies_along(((12 * ft,), (), ()), span=12 * ft, line_load=300 * plf, places=(12 * ft,)).rows
    (('12 ft', '2 of 3', '5,400 lb-ft', '2,700 lb-ft'),)
    """
    supports = (Support(0.0), Support(span), Support(2 * span))
    solution = solve(Beam(2 * span, 1e12, supports, (LineLoad(0.0, 2 * span, line_load),)))
    rows = []
    for place in places:
        whole, moment = plies_at(place, splices), abs(solution.moment(place))
        each = show(without_dust(moment / whole), "moment") if whole else "nothing runs through"
        rows.append((show(place, "length"), f"{whole} of {len(splices)}", show(without_dust(moment), "moment"), each))
    return Table(("section", "plies", "moment, without sign", "for each ply"), rows)


def joints_right_through(*, span: float, dead: float, live: float):
    """Cut a beam over two equal spans right through at one place, and ask what every live load arrangement does.

    A joint through all plies turns like a hinge, wherever it is.

    ``span`` [mm]; ``dead``, ``live`` [N/mm].

    Examples
    --------
    >>> from structlib.ground.units import plf
    >>> joints_right_through(span=12 * ft, dead=60 * plf, live=240 * plf).rows[1]
    ('over the post', '5,400 lb-ft', '0 lb-ft', '1.55 times')
    """
    length, supports = 2 * span, (Support(0.0), Support(span), Support(2 * span))
    found = []
    for name, hinges in (
        ("none, one piece", ()),
        ("over the post", (span,)),
        ("at the zero-moment place, 3/4 of the span", (0.75 * span,)),
        ("at mid-span", (0.5 * span,)),
    ):
        beam = Beam(length, 1e12, supports, (LineLoad(0.0, length, dead),), hinges)
        found.append((name, solve_arrangements(beam, span_loads(supports, length, live))))
    whole = found[0][1].drop.value
    return Table(
        ("joint through all plies", "sags it, at most", "the other way, at most", "sag, beside one piece"),
        [
            (
                name,
                _moment(without_dust(one.sagging.value)),
                _moment(without_dust(-one.hogging.value)),
                f"{one.drop.value / whole:.2f} times",
            )
            for name, one in found
        ],
    )


def stepped_and_tapered(*, span: float, line_load: float, wood_key: str = "fir"):
    """Compare an even beam, one with a ply over the middle half only, and one that tapers; same wood, even load.

    ``span`` [mm]; ``line_load`` [N/mm].

    Examples
    --------
    >>> from structlib.ground.units import plf
    >>> [row[2] for row in stepped_and_tapered(span=12 * ft, line_load=200 * plf).rows]
    ['6 ft', '3 ft', '4 ft']
    """
    modulus, width, depth = wood(wood_key).material("2x10").modulus, 1.5 * inch, 9.25 * inch
    supports, load = (Support(0.0), Support(span)), (LineLoad(0.0, span, line_load),)
    one = dict(depth=depth)

    def ei(plies):
        return modulus * rectangle_inertia(width=plies * width, **one)

    def stress(solution, place, plies):
        return formulas.bending_stress(
            moment=solution.moment(place),
            section_modulus=rectangle_section_modulus(width=plies * width, **one),
        )

    even = solve(Beam(span, ei(3), supports, load))
    stepped = solve(Beam(span, ((span / 4, ei(2)), (3 * span / 4, ei(3)), (span, ei(2))), supports, load))
    # the step has the two plies of its outer side; the middle has three
    step_stress, place = max((stress(stepped, span / 4, 2), span / 4), (stress(stepped, span / 2, 3), span / 2))
    taper = tapered_simple(TaperedMember(span, 3 * width, 2 * depth / 3, 4 * depth / 3, modulus), line_load=line_load)
    rows = (
        ("3-2x10, even", stress(even, span / 2, 3), span / 2, even.extremes.deflection.value),
        ("2-2x10, a third ply over the middle half", step_stress, place, stepped.extremes.deflection.value),
        (
            "3 plies that taper from 2/3 to 4/3 of the depth",
            taper.stress,
            taper.stress_place,
            taper.deflection,
        ),
    )
    return Table(
        ("", "greatest bending stress", "from the left (shallow) end", "sag"),
        [
            (name, show(most, "stress"), show(where, "length"), show(sag, "small length"))
            for name, most, where, sag in rows
        ],
    )


def printed_spans():
    """Solve the printed cases of continuous beams, by their names in data/published_checks.csv.

    Gives [as the row says].

    Examples
    --------
    >>> round(printed_spans()["middle support of two equal spans, share of wL"], 3)
    1.25
    """
    two = tuple(Support(1000.0 * number) for number in range(3))
    five = tuple(Support(1000.0 * number) for number in range(6))
    pair = solve(Beam(2000.0, 1e9, two, (LineLoad(0.0, 2000.0, 1.0),)))
    row = solve(Beam(5000.0, 1e9, five, (LineLoad(0.0, 5000.0, 1.0),)))
    uneven = solve(
        Beam(
            11_000.0,
            1e12,
            (Support(0.0), Support(4000.0), Support(8000.0), Support(11_000.0)),
            (Couple(2000.0, 8e6), LineLoad(4000.0, 8000.0, 2.0), PointLoad(9000.0, 6000.0)),
        )
    )

    def span_peak(number):
        """Greatest sagging moment in one of the five spans, where the shear is zero."""
        start = 1000.0 * number
        place = start + row.shear(start)  # load of 1 N/mm: as many mm as newtons
        return row.moment(place) / 1e6

    return {
        "middle support of two equal spans, share of wL": pair.reactions[1].force / 1e3,
        "place of the greatest sagging moment of two equal spans, share of L": pair.extremes.greatest_moment.position
        / 1e3,
        "moment in the first of five equal spans, share of wL2": span_peak(0),
        "moment in the second of five equal spans, share of wL2": span_peak(1),
        "moment in the third of five equal spans, share of wL2": span_peak(2),
        "moment over the second support of three uneven spans, in kN m": uneven.moment(4000.0) / 1e6,
        "moment over the third support of three uneven spans, in kN m": uneven.moment(8000.0) / 1e6,
    }


hold(globals())
