"""Why does depth beat width? One board compared with another, to one scale."""

from functools import lru_cache

from structlib.ground.lumber import find_material
from structlib.ground.sections import rectangle_area, rectangle_inertia, rectangle_section_modulus
from structlib.ground.showing import show
from structlib.ground.sizes import dressed_size
from structlib.ground.units import ft, inch, plf
from structlib.mechanics import formulas
from structlib.pages.kit import verdict
from structlib.pages.kit.controls import Box, Page, Pick, Shown, Slide
from structlib.pages.kit.door import hold
from structlib.pages.kit.verdict import CAUTION
from structlib.pictures.drawings.boards import Board, BoardsView, draw_boards

_REFERENCES = tuple((f"one {size}", size) for size in ("2x4", "2x6", "2x8", "2x10", "2x12"))
_WAYS = (
    ("the same wood, reshaped", "same"),
    ("1 1/2 in plies, as sold", "sold"),
    ("1 1/2 in plies, laid flat", "flat"),
)


class BoardsPage(Page):
    """The bench of depth against width: a reference board on the left, the reader's on the right."""

    def __init__(self, system: str = "us"):
        self.system = system
        self.wood = find_material("Douglas Fir-Larch", "No.2")
        self.numbers = lru_cache(maxsize=64)(self._numbers)

    def controls(self, values):
        return (
            Slide("span", "Span", "length", 4 * ft, 20 * ft, 3 * inch, 12 * ft),
            Slide("depth", "Depth", "section length", 1 * inch, 16 * inch, 0.25 * inch, 7.25 * inch),
            Slide("plies", "Plies", "count", 1, 6, 1, 1),
            Pick("reference", "Beside", _REFERENCES, "2x8"),
            Pick("way", "Made of", _WAYS, "same"),
            Box("load", "Load", "line load", 1 * plf, 2000 * plf, 50 * plf),
        )

    def _numbers(self, items):
        """Sizes, wood, strength, stiffness and sag of both, from the values as a tuple of pairs."""
        values = dict(items)
        size = dressed_size(values["reference"])
        plies, depth = int(values["plies"]), values["depth"]
        if values["way"] == "same":
            ply_width = rectangle_area(width=size.width, depth=size.depth) / (plies * depth)
        else:
            ply_width = 1.5 * inch
        if values["way"] == "flat":
            # each board lies on its wide face, loose on the next: the plies only add
            one = dict(width=depth, depth=ply_width)
            strength = plies * rectangle_section_modulus(**one)
            stiffness = plies * rectangle_inertia(**one)
            area = plies * rectangle_area(**one)
        else:
            whole = dict(width=plies * ply_width, depth=depth)
            strength, stiffness = rectangle_section_modulus(**whole), rectangle_inertia(**whole)
            area = rectangle_area(**whole)
        beside = dict(width=size.width, depth=size.depth)
        return {
            "size": size,
            "plies": plies,
            "depth": depth,
            "ply_width": ply_width,
            "wood": area / rectangle_area(**beside),
            "strength": strength / rectangle_section_modulus(**beside),
            "stiffness": stiffness / rectangle_inertia(**beside),
            "section_modulus": (rectangle_section_modulus(**beside), strength),
            "inertia": (rectangle_inertia(**beside), stiffness),
            "area": (rectangle_area(**beside), area),
            "sag": tuple(
                formulas.simple_uniform_deflection(
                    line_load=values["load"],
                    span=values["span"],
                    bending_stiffness=self.wood.modulus * inertia,
                )
                for inertia in (rectangle_inertia(**beside), stiffness)
            ),
        }

    def compute(self, values, before=None, frame="page"):
        now = self.numbers(tuple(values.items()))
        ghost = self.numbers(tuple(before.items())) if before else None
        return Shown(
            self.scene(values, now, ghost, frame),
            ("", f"one {values['reference']}", "yours", "yours / reference"),
            self.rows(now),
            self.notes(values),
            known=((f"E of {self.wood.name}", self.wood.verified), ("load", verdict.ENTERED)),
        )

    def rows(self, now):
        """Return both boards and their ratio as rows of text."""

        def row(name, pair, dimension):
            return (
                name,
                show(pair[0], dimension, self.system),
                show(pair[1], dimension, self.system),
                _times(pair[1] / pair[0]),
            )

        return (
            row("wood: area of the section", now["area"], "area"),
            row("strength: section modulus S", now["section_modulus"], "section modulus"),
            row("stiffness: second moment I", now["inertia"], "inertia"),
            row("sag at mid-span", now["sag"], "small length"),
        )

    def notes(self, values):
        """Return what must be said below the numbers."""
        stiffness = show(self.wood.modulus, "stress", self.system)
        return (
            f"Both carry {show(values['load'], 'line load', self.system)} and bend as wood of E = {stiffness} "
            f"({self.wood.name}, {self.wood.verified}). Compare shapes here; a real beam has more checks.",
            CAUTION,
        )

    def scene(self, values, now, ghost, frame="page"):
        """Draw both boards and how far each sags."""
        system, span = self.system, values["span"]
        places = tuple(span * i / 24 for i in range(25))

        def shape(sag):
            # the shape of an even load, scaled to its mid-span sag
            whole = formulas.simple_uniform_deflection(line_load=1.0, span=span, bending_stiffness=1.0)
            return tuple(
                sag
                * formulas.simple_uniform_deflection_at(line_load=1.0, span=span, bending_stiffness=1.0, position=x)
                / whole
                for x in places
            )

        size = now["size"]
        reference = Board(
            f"one {size.nominal}",
            1,
            size.width,
            size.depth,
            show(size.width, "section length", system),
            show(size.depth, "section length", system),
        )
        view = BoardsView(
            title=_title(now),
            reference=reference,
            current=_board(values, now, system),
            wood_text=f"wood {_times(now['wood'])}",
            strength_text=f"strength {_times(now['strength'])}",
            stiffness_text=f"stiffness {_times(now['stiffness'])}",
            span=span,
            span_text=show(span, "length", system),
            x=places,
            reference_sag=shape(now["sag"][0]),
            current_sag=shape(now["sag"][1]),
            reference_sag_text=show(now["sag"][0], "small length", system),
            current_sag_text=show(now["sag"][1], "small length", system),
            exaggeration=20.0,
            previous=None if ghost is None else _board(values, ghost, system),
            previous_sag=() if ghost is None else shape(ghost["sag"][1]),
            note=f"Same span, same load of {show(values['load'], 'line load', system)}, same wood.",
            camera_depth=16 * inch,
        )
        return draw_boards(view, frame)


def _board(values, numbers, system):
    plies, ply_width, depth = numbers["plies"], numbers["ply_width"], numbers["depth"]
    if values["way"] == "flat":
        name = "laid flat" if plies == 1 else f"{plies} laid flat"
        return Board(
            name,
            1,
            depth,
            plies * ply_width,
            show(depth, "section length", system),
            show(plies * ply_width, "section length", system),
        )
    return Board(
        "yours" if plies == 1 else f"yours, {plies} plies",
        plies,
        ply_width,
        depth,
        show(plies * ply_width, "section length", system),
        show(depth, "section length", system),
    )


def _times(ratio):
    return f"{ratio:.2f} x" if ratio < 9.95 else f"{ratio:.1f} x"


def _title(now):
    wood = "the same wood" if abs(now["wood"] - 1) < 0.005 else f"{_times(now['wood'])} the wood"
    return f"{_times(now['stiffness'])} as stiff, {_times(now['strength'])} as strong, with {wood}"


hold(globals())
