"""What holds it meanwhile? What is asked of temporary walls while a wall is out. Demands, and no design."""

from functools import lru_cache

from structlib.ground.sections import rectangle_inertia, rectangle_section_modulus
from structlib.ground.showing import show
from structlib.ground.tables import table_rows
from structlib.ground.units import ft, inch, plf, psf
from structlib.mechanics import formulas, shoring
from structlib.mechanics.beams import solve
from structlib.pages import verdict
from structlib.pages.beam_page import CAUTION
from structlib.pages.controls import Box, Page, Pick, Shown, Slide, Steps
from structlib.pages.door import hold
from structlib.pages.show import Table
from structlib.pages.woods import pieces
from structlib.pictures.drawings.meanwhile import MeanwhileView, TemporaryWall, draw_meanwhile
from structlib.rules.us.footings import post_on_slab

_WAYS = (
    ("middle: cut joists", "cut"),
    ("middle: in one piece", "continuous"),
    ("outside wall", "outside"),
)
_BELOW = (
    ("joists across it", "across"),
    ("a joist along it", "along"),
    ("a slab", "slab"),
)
_SPACINGS = (("12 in", 12 * inch), ("16 in", 16 * inch), ("19.2 in", 19.2 * inch), ("24 in", 24 * inch))
_WOOD = "fir"
_SLAB = 4 * inch  # the slab of the examples; nobody has measured the reader's
STRIP = 4 * ft  # a stretch of temporary wall, for saying how much comes together in one place

GATE = (
    "What holds the house meanwhile is a design of its own, by a licensed engineer, with a drawing of "
    "its own. "
    "Only what is asked of it is shown here; no shoring is sized or chosen."
)


class MeanwhilePage(Page):
    """The bench of a wall that is out: how the joists run, where the temporary wall stands, what lands where.

    Parameters
    ----------
    system : str
        Units of the reader: 'us' or 'metric' [-].
    """

    def __init__(self, system="us"):
        self.system = system
        self.numbers = lru_cache(maxsize=64)(self._numbers)

    def controls(self, values):
        depths = tuple(depth for depth, *_ in pieces(_WOOD))
        return (
            Slide("span", "Joist span", "length", 6 * ft, 20 * ft, 3 * inch, 12 * ft),
            Steps("depth", "Joist depth", "section length", depths, 9.25 * inch),
            Slide("plies", "Joist plies", "count", 1, 3, 1, 1),
            Pick("way", "Wall out", _WAYS, "cut"),
            Slide("offset", "Distance", "length", 1 * ft, 5 * ft, 1 * inch, 2 * ft),
            Box("dead", "Dead load", "area load", 1 * psf, 100 * psf, 10 * psf),
            Box("live", "Live load", "area load", 0.0, 100 * psf, 40 * psf),
            Box("above", "On joist ends", "line load", 0.0, 5000 * plf, 0.0),
            Pick("spacing", "Joists every", _SPACINGS, 16 * inch),
            Pick("below", "Stands on", _BELOW, "across"),
        )

    def _numbers(self, items):
        """Everything asked, for one joist (N, N*mm) or on each mm of wall (N/mm), from values as pairs."""
        values = dict(items)
        span, offset, way, spacing = (values[name] for name in ("span", "offset", "way", "spacing"))
        depth, ply_width, name, material = min(
            pieces(_WOOD), key=lambda piece: abs(piece[0] - values["depth"])
        )
        size = dict(width=ply_width * int(values["plies"]), depth=depth)
        stiffness = formulas.bending_stiffness(modulus=material.modulus, inertia=rectangle_inertia(**size))
        full, dead = values["dead"] + values["live"], values["dead"]
        # what stands on the ends is shared by the two ends of cut joists
        end_load = values["above"] / 2 if way == "cut" else values["above"]
        found = demands(way=way, span=span, offset=offset, load=full, end_load=end_load)
        least = demands(way=way, span=span, offset=offset, load=dead, end_load=end_load)
        solution = solve(
            shoring.joists_while_out(
                way=way,
                span=span,
                offset=offset,
                line_load=full * spacing,
                end_load=end_load * spacing,
                bending_stiffness=stiffness,
            )
        )
        modulus = rectangle_section_modulus(**size)
        in_span = formulas.simple_uniform_moment(line_load=full * spacing, span=span)
        over_wall = formulas.two_span_uniform_support_moment(line_load=full * spacing, span=span)
        today = max(in_span, abs(over_wall)) if way == "continuous" else in_span
        # people need not stand everywhere: on some stretches only, they ask more of a wall or a joist
        worst = shoring.asked_by_patterns(
            way=way,
            span=span,
            offset=offset,
            lasting=dead * spacing,
            passing=values["live"] * spacing,
            end_load=end_load * spacing,
            bending_stiffness=stiffness,
        )
        most, least_far = worst.most / spacing, worst.far / spacing
        peak = max(worst.sagging, -worst.hogging)
        return {
            **found,
            "least": least["far"],
            "most": most,
            "least_far": least_far,
            "least_temporary": worst.least / spacing,
            "uplift": max(0.0, -found["far"], -least["far"], -least_far),
            "name": f"{name}" if values["plies"] == 1 else f"{int(values['plies'])}-{name}",
            "solution": solution,
            "today": today,
            "over": worst.hogging,
            "peak": peak,
            "stress": peak / modulus,
            "today_stress": today / modulus,
            "moves": solution.deflection(span),
            "lifts": shoring.tip_load_that_lifts_the_far_end(line_load=dead, span=span, offset=offset),
            "landed": shoring.landed_on_joist(
                span=span,
                position=offset,
                landed=most * spacing,
                load_meanwhile=dead * spacing,
                design_load=full * spacing,
            ),
            "along": most / (full * spacing),
            "strip": most * STRIP,
        }

    def compute(self, values, before=None, frame="page"):
        now = self.numbers(tuple(values.items()))
        ghost = self.numbers(tuple(before.items())) if before else None
        wood = min(pieces(_WOOD), key=lambda piece: abs(piece[0] - values["depth"]))[3]
        return Shown(
            self.scene(values, now, before, ghost, frame),
            ("what is asked meanwhile", "demand", "compare"),
            self.rows(values, now),
            self.notes(values),
            self.gates(values, now),
            known=((f"E of {wood.name}", wood.verified), ("loads", verdict.ENTERED)),
        )

    def gates(self, values, now):
        """Return the reasons to stop and call an engineer; there is always one.

        Parameters
        ----------
        values : dict
            Values of the controls [any].
        now : dict
            What `numbers` worked out [any].

        Returns
        -------
        tuple of str
            One sentence a gate [-].
        """
        gates = [GATE]
        if now["uplift"] > 0:
            gates.append(
                "The joists want to rise off the wall that stays. A lever without a hold-down tips: an "
                "engineer "
                "decides before anything moves."
            )
        if values["above"] > 0:
            gates.append(
                "Something stands on the joist ends. Whether they may carry it as levers, or it must be "
                "held on "
                "its own, is the engineer's first question."
            )
        if values["below"] == "slab":
            gates.append(
                "A slab is a floor, not a footing. What is under it, nobody has seen: for the engineer "
                "to judge."
            )
        return tuple(gates)

    def rows(self, values, now):
        """Return every demand as a row of text.

        Parameters
        ----------
        values : dict
            Values of the controls [any].
        now : dict
            What `numbers` worked out [any].

        Returns
        -------
        tuple of tuple of str
            What, demand, beside what [-].
        """
        per_foot = lambda value: show(value, "line load", self.system)  # noqa: E731
        moment = lambda value: show(abs(value), "moment", self.system)  # noqa: E731
        stress = lambda value: show(value, "stress", self.system)  # noqa: E731
        landed, way = now["landed"], values["way"]
        today = {"cut": "half of each span", "continuous": "10/8 of a span", "outside": "half the span"}[way]
        stays = "far wall" if way == "outside" else "each outside wall"
        laid_out = lambda share: f"{_times(share)} what it was laid out for"  # noqa: E731
        rows = [
            ("the wall that is out had", per_foot(now["wall"]), today),
            (
                "each temporary wall" if now["count"] == 2 else "the temporary wall",
                per_foot(now["each"]),
                "" if way == "continuous" else f"{_times(now['lever'])} its side's share",
            ),
            ("all temporary walls", per_foot(now["together"]), f"{_times(now['ratio'])} the wall's"),
            (f"{stays} keeps", per_foot(now["far"]), _lift_word(now["far"])),
            (f"{stays} keeps, floor empty", per_foot(now["least"]), _lift_word(now["least"])),
            (
                f"{stays} keeps, people at the worst places",
                per_foot(now["least_far"]),
                _lift_word(now["least_far"]),
            ),
        ]
        if way == "continuous":
            # cut joists ask most of a temporary wall with people everywhere
            rows[2:2] = [
                ("one of them, people at the worst places", per_foot(now["most"]), "this is followed down"),
                (
                    "the same, people on the other side only",
                    per_foot(now["least_temporary"]),
                    "the joists rise off it" if now["least_temporary"] < 0 else "",
                ),
            ]
        if way != "continuous":
            needed = 2 * now["lifts"] if way == "cut" else now["lifts"]
            rows.append(
                ("load on the ends that lifts the far end", per_foot(max(0.0, needed)), "floor empty")
            )
        rows += [
            ("moment in a joist over it", moment(now["over"]), "its top is stretched"),
            ("greatest moment in a joist", moment(now["peak"]), f"today {moment(now['today'])}"),
            (
                f"bending stress in a {now['name']}",
                stress(now["stress"]),
                f"today {stress(now['today_stress'])}",
            ),
            (
                "joists move where the wall was",
                show(abs(now["moves"]), "small length", self.system),
                ("down" if now["moves"] >= 0 else "up") + ", springing part",
            ),
        ]
        if values["below"] == "across":
            rows += [
                (
                    "moment in a joist below",
                    moment(landed.moment),
                    f"{laid_out(landed.moment_share)}, nobody on that floor",
                ),
                ("push at its end", show(landed.shear, "force", self.system), laid_out(landed.shear_share)),
            ]
        elif values["below"] == "along":
            rows.append(("on one joist below, along it", per_foot(now["most"]), laid_out(now["along"])))
        else:
            demand = _on_slab(now["strip"], 12 * inch)
            side = lambda value: show(value, "section length", self.system)  # noqa: E731
            rows.append(
                (
                    f"under a {side(_SLAB)} slab, if that came down on {side(12 * inch)} square",
                    show(demand.pressure, "area load", self.system, 0 if self.system == "us" else None),
                    "no soil is judged",
                )
            )
        strip = f"on {show(STRIP, 'length', self.system)} of temporary wall"
        rows.insert(
            -1 if values["below"] == "slab" else len(rows),
            (strip, show(now["strip"], "force", self.system), ""),
        )
        return tuple(rows)

    def notes(self, values):
        """Return what must be said below the numbers.

        Parameters
        ----------
        values : dict
            Values of the controls [any].

        Returns
        -------
        tuple of str
            One sentence a note [-].
        """
        notes = []
        if values["way"] == "continuous":
            notes.append(
                "The two temporary walls stand near each other, so it matters where people are: with people "
                "on one side only, the wall there gets far more, and the joists may rise off the other."
            )
        else:
            notes.append("The far end is drawn as if the wall there could hold the joist down. Most cannot.")
        if values["below"] == "across":
            notes.append(
                "The floor below is taken as the same floor: same span and spacing, laid out for the "
                "same loads, "
                "with a wall under the one that comes out. Nobody is on it: people there come on top. "
                "A share below 1 is no permission: shear, "
                "seats, the wall "
                "below and the state of the wood are not in it."
            )
        material = pieces(_WOOD)[0][3]
        notes += [
            f"E for the shape: {material.species} {material.grade}, {material.verified}. Pushes do not "
            "depend on it, "
            "except that all joists are alike.",
            CAUTION,
        ]
        return tuple(notes)

    def scene(self, values, now, before=None, ghost=None, frame="page"):
        """Draw the floor while the wall is out.

        Parameters
        ----------
        values : dict
            Values of the controls [any].
        now : dict
            What `numbers` worked out [any].
        before : dict or None
            Values before the last change [any].
        ghost : dict or None
            Their numbers [any].
        frame : str
            Shape of the picture: 'page', 'wide' or 'tall' [-].

        Returns
        -------
        structlib.pictures.scene.Scene
            The picture [-].
        """
        system, way, span = self.system, values["way"], values["span"]
        per_foot = lambda value: show(value, "line load", system)  # noqa: E731
        length = span if way == "outside" else 2 * span
        same = before is not None and before["way"] == way and before["span"] == span
        x, sag = _shape(now["solution"], way, span)
        name = "temporary: "
        # cut joists ask most with people everywhere; joists in one piece with people on some stretches only
        by_patterns = way == "continuous" and now["most"] > now["each"] * (1 + 1e-9)
        push = f"up to {per_foot(now['most'])}" if by_patterns else per_foot(now["each"])
        moved = show(abs(now["moves"]), "small length", system)
        area = show(values["dead"] + values["live"], "area load", system)
        view = MeanwhileView(
            title=_title(values, now, per_foot),
            length=length,
            out=span,
            depth=values["depth"],
            cut=way != "continuous",
            far=(0.0,) if way == "outside" else (0.0, length),
            walls=tuple(TemporaryWall(place, name + push) for place in _places(values)),
            far_text=_far_text(way, now, per_foot, frame),
            uplift=now["uplift"] > 0,
            floor_text=f"floor {area}",
            above_text=f"on the ends {per_foot(values['above'])}" if values["above"] else "",
            before_text=f"the wall that is out had {per_foot(now['wall'])}",
            together_text=_together(now, per_foot, by_patterns),
            below=values["below"],
            below_text=_below_text(values, now, system),
            x=x,
            sag=sag,
            sag_text=f"{moved} {'down' if now['moves'] >= 0 else 'up'} at the wall",
            previous=_places(before) if same and _places(before) != _places(values) else (),
            previous_sag=_shape(ghost["solution"], way, span)[1] if same else (),
            note="Thick arrows: demands, people at the worst places for each."
            if by_patterns
            else "Arrows are demands. What holds them is an engineer's design.",
        )
        return draw_meanwhile(view, frame)


def demands(*, way, span, offset, load, end_load):
    """What is asked on each length of wall, while one wall is out.

    Parameters
    ----------
    way : str
        'cut', 'continuous' or 'outside' [-].
    span : float
        Span of the joists on one side [mm].
    offset : float
        Distance of the temporary wall from the wall that is out [mm].
    load : float
        Load on the floor [MPa].
    end_load : float
        Load that stands on the joist ends (one side), or in the middle of joists in one piece [N/mm].

    Returns
    -------
    dict
        Push of the wall before; of each temporary wall, how many, together and that over the wall's;
        of the wall that
        stays; moment over the temporary wall [N/mm, -, N].

    Examples
    --------
    >>> found = demands(way="cut", span=12 * ft, offset=2 * ft, load=50 * psf, end_load=0.0)
    >>> round(found["each"] / plf, 6), round(found["ratio"], 6)
    (360.0, 1.2)
    """
    if way == "continuous":
        given = dict(line_load=load, span=span, offset=offset, middle_load=end_load)
        wall = formulas.two_span_uniform_middle_reaction(line_load=load, span=span) + end_load
        each, far, moment, count = (
            shoring.continuous_temporary_wall_reaction(**given),
            shoring.continuous_far_wall_reaction(**given),
            shoring.continuous_moment_over_temporary_wall(**given),
            2,
        )
    else:
        given = dict(line_load=load, span=span, offset=offset, tip_load=end_load)
        count = 2 if way == "cut" else 1
        wall = count * shoring.wall_share(line_load=load, span=span, tip_load=end_load)
        each, far = shoring.temporary_wall_reaction(**given), shoring.far_wall_reaction(**given)
        moment = shoring.moment_over_temporary_wall(line_load=load, offset=offset, tip_load=end_load)
    return {
        "wall": wall,
        "each": each,
        "count": count,
        "together": count * each,
        "ratio": count * each / wall,
        "lever": shoring.lever_factor(span=span, offset=offset),
        "far": far,
        "moment": moment,
    }


def _places(values):
    span, offset = values["span"], values["offset"]
    return (span - offset,) if values["way"] == "outside" else (span - offset, span + offset)


def _shape(solution, way, span):
    """The joists' shape over the whole drawn floor; cut joists are alike on both sides."""
    points = solution.points(48)
    x, sag = tuple(map(float, points.x)), tuple(map(float, points.deflection))
    if way == "cut":
        x, sag = x + tuple(2 * span - place for place in reversed(x)), sag + tuple(reversed(sag))
    # one row of places for any offset, so that the shape before can be laid on it
    import numpy

    places = tuple(float(v) for v in numpy.linspace(0.0, x[-1], 97))
    return places, tuple(float(v) for v in numpy.interp(places, x, sag))


def _times(ratio):
    return f"{ratio:.2f} x" if ratio < 9.95 else f"{ratio:.1f} x"


def _lift_word(push):
    return "uplift: it must be held down" if push < 0 else ""


def _title(values, now, per_foot):
    if now["uplift"] > 0:
        return f"The joists tip: {per_foot(now['uplift'])} must hold them down at the far end"
    if values["way"] == "continuous":
        return f"Two temporary walls carry {now['ratio']:.2f} times what the one wall had"
    who = "Each temporary wall" if now["count"] == 2 else "The temporary wall"
    return f"{who} carries {now['ratio']:.2f} times what the wall took from that side"


def _far_text(way, now, per_foot, frame):
    who = "far wall" if way == "outside" else "outside walls"
    if now["uplift"] > 0:
        return (
            f"hold down {per_foot(now['uplift'])}"
            if frame == "wide"
            else f"{who}: hold down {per_foot(now['uplift'])} (empty floor)"
            if -now["least"] >= max(-now["far"], -now["least_far"]) * (1 - 1e-9)
            else f"{who}: hold down {per_foot(now['uplift'])}"
        )
    return (
        f"{who}: {per_foot(now['far'])}"
        if frame == "wide"
        else f"{who} that stay keep {per_foot(now['far'])}"
        if way != "outside"
        else f"the wall at the far end keeps {per_foot(now['far'])}"
    )


def _together(now, per_foot, by_patterns=False):
    if now["count"] == 1:
        return f"the temporary wall has {now['ratio']:.2f} times that"
    if by_patterns:
        return f"people everywhere: both {per_foot(now['together'])}, {now['ratio']:.2f} times that"
    return f"both together {per_foot(now['together'])}, {now['ratio']:.2f} times that"


def _below_text(values, now, system):
    if values["below"] == "across":
        return f"below: a joist is asked {now['landed'].moment_share:.2f} x its design moment"
    if values["below"] == "along":
        return f"below: one joist may get {now['along']:.1f} x its design load"
    return f"below: {show(now['strip'], 'force', system)} on {show(STRIP, 'length', system)} of slab"


def _on_slab(load, plate):
    return post_on_slab(load=load, plate=plate, slab_thickness=_SLAB, permanent=False)


# ---- tables of the notebook ----


def cautions_table():
    """List the public rules that such work meets, with how well each is known here.

    Returns
    -------
    structlib.pages.show.Table
        Topic, rule, what it is about, how it is known [-].

    Examples
    --------
    >>> cautions_table().rows[0][1]
    'OSHA 29 CFR 1926.850(a)'
    """
    rows = [
        (
            row["topic"],
            "no rule known to us" if row["rule"] == "none" else row["rule"],
            row["what"],
            row["verified"],
        )
        for row in table_rows("meanwhile_cautions")
    ]
    return Table(("about", "rule", "what it says, in our words", "how we know"), rows)


def order_table():
    """List the order of work around a wall that comes out, and who answers for each step.

    Returns
    -------
    structlib.pages.show.Table
        Number, step, who, why [-].

    Examples
    --------
    >>> len(order_table().rows)
    10
    """
    rows = [
        (str(int(row["number"])), row["step"], row["who"], row["why"])
        for row in table_rows("meanwhile_order")
    ]
    return Table(("", "step", "who answers for it", "why"), rows)


def lands_below(*, system="us", **changes):
    """Follow one temporary wall down: on joists across, on joists along, on a slab.

    Parameters
    ----------
    system : str
        Units of the reader: 'us' or 'metric' [-].
    **changes : any
        Values of controls of MeanwhilePage by name, in the library's own units [any].

    Returns
    -------
    structlib.pages.show.Table
        Where, what is asked, beside what [-].

    Examples
    --------
    >>> lands_below().rows[0][2]
    '0.78 x the design moment'
    """
    from structlib.pages.show import start_values

    page = MeanwhilePage(system)
    now = page.numbers(tuple(start_values(page, **changes).items()))
    landed = now["landed"]
    rows = [
        (
            "joists across it, floor empty",
            show(landed.moment, "moment", system) + " in each",
            f"{_times(landed.moment_share)} the design moment",
        ),
        (
            "the same joists, at their nearer end",
            show(landed.shear, "force", system),
            f"{_times(landed.shear_share)} the design push",
        ),
        (
            "one joist along it",
            show(now["most"], "line load", system),
            f"{_times(now['along'])} the design load",
        ),
        (f"any {show(STRIP, 'length', system)} of it", show(now["strip"], "force", system), "as one force"),
    ]
    slab = show(_SLAB, "section length", system)
    for plate in (6 * inch, 12 * inch, 24 * inch):
        demand = _on_slab(now["strip"], plate)
        rows.append(
            (
                f"that force on {show(plate, 'section length', system)} square of a {slab} slab",
                show(demand.pressure, "area load", system, 0 if system == "us" else None) + " under the slab",
                "no soil and no slab is judged",
            )
        )
    return Table(("where it lands", "what is asked", "compare"), rows)


def worked_case():
    """Put a worked case of our own beside the library: a wall with 12 ft cut joists at 50 psf, 2 ft away.

    Returns
    -------
    structlib.pages.show.Table
        What, hand arithmetic, the library's number [-].

    Examples
    --------
    >>> worked_case().rows[1][2]
    '360 plf'
    """
    found = demands(way="cut", span=12 * ft, offset=2 * ft, load=50 * psf, end_load=0.0)
    return Table(
        ("", "by hand (computed, not published)", "by the library"),
        [
            ("the wall, from one side", "50 x 12 / 2 = 300 plf", show(found["wall"] / 2, "line load")),
            ("the temporary wall", "300 x 12 / 10 = 360 plf", show(found["each"], "line load")),
            ("the wall that stays", "600 - 360 = 240 plf", show(found["far"], "line load")),
            (
                "moment over the temporary wall, in 1 ft of floor",
                "50 x 2 x 2 / 2 = 100 lb-ft",
                show(-found["moment"] * ft, "moment"),
            ),
        ],
    )


hold(globals())
