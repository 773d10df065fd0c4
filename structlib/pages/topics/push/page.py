"""How does a beam push back? Load, shear, moment, slope and sag of one beam, above each other."""

from functools import lru_cache

from structlib.ground.sections import rectangle_inertia
from structlib.ground.showing import show
from structlib.ground.units import ft, inch, kip, plf
from structlib.mechanics import formulas
from structlib.mechanics.beams import Beam, LineLoad, PointLoad, Support, solve
from structlib.pages.kit import verdict
from structlib.pages.kit.controls import Box, Page, Pick, Shown, Slide, Steps
from structlib.pages.kit.door import hold
from structlib.pages.kit.show import Table
from structlib.pages.kit.verdict import CAUTION
from structlib.pages.kit.woods import pieces
from structlib.pictures.drawings import (
    BeamCurve,
    BeamCurvesView,
    BeamSupport,
    CurvePoint,
    CurveSpread,
    draw_beam_curves,
)

_KINDS = (
    ("one span", "one"),
    ("two equal spans", "two"),
    ("one span, a quarter more past the right support", "over"),
)
_WOOD = "fir"


class PushPage(Page):
    """The bench of statics: the reader sets a beam and its loads, and four curves answer."""

    def __init__(self, system: str = "us"):
        self.system = system
        self.solved = lru_cache(maxsize=64)(self._solved)

    def controls(self, values):
        depths = tuple(depth for depth, *_ in pieces(_WOOD))
        return (
            Slide("span", "Span", "length", 3 * ft, 20 * ft, 3 * inch, 12 * ft),
            Steps("depth", "Depth", "section length", depths, 9.25 * inch),
            Slide("plies", "Plies", "count", 1, 5, 1, 2),
            Pick("kind", "Supports", _KINDS, "one"),
            Box("load", "Even load", "line load", 0.0, 2000 * plf, 100 * plf),
            Box("point", "One more load", "force", 0.0, 20 * kip, 0.0),
            Box("place", "It stands at", "length", 0.0, 40 * ft, 6 * ft),
        )

    def beam(self, values):
        """Return the beam that a set of values describes."""
        span, kind = values["span"], values["kind"]
        length = {"one": span, "two": 2 * span, "over": 1.25 * span}[kind]
        supports = [Support(0.0), Support(span)] + ([Support(length)] if kind == "two" else [])
        loads = [LineLoad(0.0, length, values["load"])] if values["load"] else []
        if values["point"]:
            loads.append(PointLoad(min(values["place"], length), values["point"]))
        depth, ply_width, _, material = min(pieces(_WOOD), key=lambda piece: abs(piece[0] - values["depth"]))
        stiffness = formulas.bending_stiffness(
            modulus=material.modulus,
            inertia=rectangle_inertia(width=ply_width * int(values["plies"]), depth=depth),
        )
        return Beam(length, stiffness, supports, loads)

    def _solved(self, items):
        return solve(self.beam(dict(items)))

    def compute(self, values, before=None, frame="page"):
        solution = self.solved(tuple(values.items()))
        ghost = self.solved(tuple(before.items())) if before else None
        wood = min(pieces(_WOOD), key=lambda piece: abs(piece[0] - values["depth"]))[3]
        return Shown(
            self.scene(values, solution, ghost, frame),
            ("", "most", "where, from the left end"),
            self.rows(solution),
            self.notes(values, solution),
            known=((f"E of {wood.name}", wood.verified), ("loads", verdict.ENTERED)),
        )

    def rows(self, solution):
        """Return reactions and extremes as rows of text."""
        place = lambda x: show(x, "length", self.system)  # noqa: E731
        rows = [
            (
                f"push of support {number}" + (" (it holds the beam down)" if reaction.force < 0 else ""),
                show(reaction.force, "force", self.system),
                place(reaction.position),
            )
            for number, reaction in enumerate(solution.reactions, 1)
        ]
        peak = solution.extremes
        rows += [
            ("shear", show(abs(peak.shear.value), "force", self.system), place(peak.shear.position)),
            (
                "moment that sags the beam",
                show(peak.greatest_moment.value, "moment", self.system),
                place(peak.greatest_moment.position),
            ),
            (
                "moment that bends it the other way",
                show(max(0.0, -peak.least_moment.value), "moment", self.system),
                place(peak.least_moment.position) if peak.least_moment.value < -1e-6 else "",
            ),
            ("slope", show(abs(peak.slope.value), "angle", self.system, 2), place(peak.slope.position)),
            (
                "sag",
                show(peak.greatest_deflection.value, "small length", self.system),
                place(peak.greatest_deflection.position),
            ),
        ]
        return tuple(rows)

    def notes(self, values, solution):
        """Return what must be said below the numbers."""
        total = values["load"] * solution.beam.length + values["point"]
        pushed = sum(reaction.force for reaction in solution.reactions)
        notes = [
            f"Sum check: the loads are {show(total, 'force', self.system)}, the supports push "
            f"{show(pushed, 'force', self.system)}."
        ]
        if values["point"] and values["place"] > solution.beam.length:
            notes.append("The load would stand past the end of the beam, so it stands at its end.")
        notes.append("The beam's own weight is left out here. " + CAUTION)
        return tuple(notes)

    def scene(self, values, solution, ghost, frame="page"):
        """Draw the beam and its four curves."""
        system, length = self.system, solution.beam.length
        (x, shear, moment, slope, sag), peak = _rows(solution), solution.extremes
        curves = (
            BeamCurve("shear", x, shear, "", show(abs(peak.shear.value), "force", system)),
            BeamCurve("moment", x, moment, "", show(abs(peak.moment.value), "moment", system)),
            BeamCurve(
                "slope",
                x,
                slope,
                "",
                show(abs(peak.slope.value), "angle", system, 2),
                positive_down=True,
            ),
            BeamCurve(
                "deflection",
                x,
                sag,
                "",
                show(abs(peak.deflection.value), "small length", system),
                positive_down=True,
            ),
        )
        loads = ()
        if values["load"]:
            loads = (
                CurveSpread(0.0, length, values["load"], values["load"], show(values["load"], "line load", system)),
            )
        place = min(values["place"], length)
        points_at = (CurvePoint(place, show(values["point"], "force", system)),) if values["point"] else ()
        supports = tuple(
            BeamSupport(
                reaction.position,
                "pinned" if number == 0 else "roller",
                show(reaction.force, "force", system),
            )
            for number, reaction in enumerate(solution.reactions)
        )
        return draw_beam_curves(
            BeamCurvesView(
                title=_title(solution, system),
                length=length,
                length_text=show(length, "length", system),
                supports=supports,
                curves=curves,
                point_loads=points_at,
                spread_loads=loads,
                load_full=max(values["load"], 1e-9) if loads else 0.0,
                previous=() if ghost is None else _curves_of(ghost, length),
            ),
            frame,
        )


def _curves_of(solution, length):
    """The four curves of the state before, as far as they fit on the beam of now."""
    x, *curves = _rows(solution)
    keep = sum(place <= length + 1e-6 for place in x)
    return tuple((x[:keep], values[:keep]) for values in curves)


def _rows(solution):
    """Places and the four curves, as plain numbers."""
    return [tuple(row.tolist()) for row in solution.points(60)]


def _title(solution, system):
    pushes = [reaction.force for reaction in solution.reactions]
    words = ", ".join(show(push, "force", system) for push in pushes)
    return f"The supports push back with {words}"


def two_equal_spans():
    """Solve two equal spans of one under one load per length, and name the results as the printed table does.

    Examples
    --------
    >>> two_equal_spans()["middle support of two equal spans, share of wL"]
    1.25
    """
    beam = Beam(2000.0, 1.0, (Support(0.0), Support(1000.0), Support(2000.0)), (LineLoad(0.0, 2000.0, 0.001),))
    solution, whole = solve(beam), 1.0 * 1000.0
    return {
        "end support of two equal spans, share of wL": solution.reactions[0].force,
        "middle support of two equal spans, share of wL": solution.reactions[1].force,
        "moment over it, share of wL2": -solution.extremes.least_moment.value / whole,
        "moment in its spans, share of wL2": solution.extremes.greatest_moment.value / whole,
    }


def formula_beside_solver(*, point_load: float, span: float, load_position: float, bending_stiffness: float):
    """Put one load on a simple beam, and answer it twice: by the derived formulas and by the solver of the bench.

    ``point_load`` [N]; ``span``, ``load_position`` [mm]; ``bending_stiffness`` [N*mm2].

    Examples
    --------
    >>> from structlib.ground.units import lb
    >>> table = formula_beside_solver(point_load=1000 * lb, span=12 * ft, load_position=3 * ft, bending_stiffness=1e12)
    >>> table.rows[0]
    ('push of the left support', '750 lb', '750 lb')
    """
    given = dict(point_load=point_load, span=span, load_position=load_position)
    solution = solve(
        Beam(span, bending_stiffness, (Support(0.0), Support(span)), (PointLoad(load_position, point_load),))
    )
    sag = formulas.simple_point_deflection_left_of_load(
        **given, bending_stiffness=bending_stiffness, position=load_position
    )
    pairs = (
        (
            "push of the left support",
            formulas.simple_point_left_reaction(**given),
            solution.reactions[0].force,
            "force",
        ),
        ("moment under the load", formulas.simple_point_moment(**given), solution.moment(load_position), "moment"),
        ("sag under the load", sag, solution.deflection(load_position), "small length"),
    )
    return Table(
        ("", "by the formula", "by the bench"),
        [(name, show(one, kind), show(other, kind)) for name, one, other, kind in pairs],
    )


hold(globals())
