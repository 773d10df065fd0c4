"""Pieces that share a load as a rulebook is asked about them: plies, a plate between them, steel, and their fasteners."""

from dataclasses import dataclass, field
from functools import cached_property
from math import pi
from typing import Any

from structlib.ground.records import measured
from structlib.ground.refusals import BadInput, check_one_number
from structlib.ground.showing import show
from structlib.ground.steel import SteelSection, flat_plate, steel_fact
from structlib.ground.units import inch
from structlib.mechanics.composite import Part, shares_by_stiffness
from structlib.mechanics.formulas import rectangle_shear_stiffness
from structlib.rules.check import LEAST_KNOWN, BeamUse, Combination, Seat


@dataclass(frozen=True)
class Fasteners:
    """Fasteners that somebody chose: 'nail' with its trade size or 'bolt' with its diameter [mm], and how they stand.

    ``lines`` run along the beam, each shifted by half a spacing beside the next where they are ``staggered``. A joint
    is judged with a ``spacing`` [mm] along each line, or with a ``count`` of fasteners in all.
    """

    kind: str
    size: Any
    lines: int = 1
    staggered: bool = False
    spacing: float | None = None
    count: int | None = None


@dataclass(frozen=True)
class Crossing:
    """What one combination brings to a joint: a load along it [N/mm] and a force [N]; for plies, what hangs on one side."""

    combination: Combination
    line_load: float = 0.0
    force: float = 0.0


@dataclass(frozen=True)
class PlyJointMember:
    """Like plies of a beam and what fastens them for a load from one side. Lengths in mm."""

    material: Any
    ply_width: float
    depth: float
    plies: int
    fasteners: Fasteners
    wet: bool = False


@dataclass(frozen=True)
class JointMember:
    """Fasteners from a side piece into a main piece: thickness of both [mm], specific gravities, load to grain [rad]."""

    fasteners: Fasteners
    main_thickness: float
    side_thickness: float
    main_gravity: float
    side_gravity: float
    angle: float = pi / 2
    wet: bool = False


@dataclass(frozen=True)
class Fastening:
    """What one fastener of a joint passes in service [N], how it gives way, and how far apart they stand [mm]."""

    value: float
    mode: str
    spacing: float
    clause: str
    verified: str = LEAST_KNOWN
    factors: tuple = ()


@dataclass(frozen=True)
class Nailing:
    """The usual nailing of plies where nothing has to pass: nail, spacing along each line [mm], lines, where it is from."""

    name: str
    nail: str
    spacing: float
    lines: int
    verified: str = LEAST_KNOWN


@dataclass(frozen=True, kw_only=True)
class Flitch:
    """Wood plies, half of them on each side, with one steel plate in the middle.

    Parameters
    ----------
    wood : structlib.ground.lumber.Material
        Wood of the plies [-].
    ply_width : float
        Width of one ply [mm].
    depth : float
        Depth of the plies [mm].
    plies : int
        Number of wood plies: 2, 4 or 6 [-].
    plate_thickness : float
        Thickness of the plate [mm].
    plate_depth : float
        Depth of the plate, not over that of the wood [mm].
    yield_strength : float
        Yield strength of the plate; 36 ksi when None [MPa].

    Examples
    --------
    >>> from structlib.ground.lumber import find_material
    >>> beam = Flitch(wood=find_material("Douglas Fir-Larch", "No.2"), ply_width=1.5 * inch,
    ...     depth=9.25 * inch,
    ...               plies=2, plate_thickness=0.5 * inch, plate_depth=9.25 * inch)
    >>> round(beam.steel_share, 4)
    0.7513
    """

    wood: Any
    ply_width: float = measured("section length", "width of one ply")
    depth: float = measured("section length", "depth of the wood")
    plies: int = measured("count", "wood plies")
    plate_thickness: float = measured("section length", "thickness of the plate")
    plate_depth: float = measured("section length", "depth of the plate")
    yield_strength: float | None = None

    def __post_init__(self):
        from structlib.ground.material import Material

        if not isinstance(self.wood, Material):
            raise BadInput(
                f"the wood is a material of the data files, got {type(self.wood).__name__}; for example "
                "find_material('Douglas Fir-Larch', 'No.2')"
            )
        limits = {"low": 0.5 * inch, "shown": _inches}
        check_one_number("ply width", self.ply_width, high=8 * inch, hint="for example 1.5*inch", **limits)
        check_one_number("depth", self.depth, high=24 * inch, hint="for example 9.25*inch", **limits)
        check_one_number("wood plies", self.plies, low=2, high=6, hint="half on each side, for example 2")
        if self.plies % 2:
            raise BadInput(f"wood plies must be 2, 4 or 6, half on each side of the plate, got {self.plies}")
        check_one_number("plate depth", self.plate_depth, high=24 * inch, hint="for example 9*inch", **limits)
        if self.plate_depth > self.depth * (1 + 1e-9):
            raise BadInput(
                f"the plate is not deeper than the wood, {_inches(self.depth)}, got "
                f"{_inches(self.plate_depth)}; for example plate_depth=9*inch between 2x10s"
            )
        self.plate  # noqa: B018  refuses a thickness that makes no sense

    @cached_property
    def plate(self):
        """The plate as a steel section [-]."""
        return flat_plate(thickness=self.plate_thickness, depth=self.plate_depth, yield_strength=self.yield_strength)

    @property
    def parts(self):
        """All wood together, and the plate, as parts that sag alike [-]."""
        wood = Part(modulus=self.wood.modulus, width=self.ply_width * self.plies, depth=self.depth)
        steel = Part(modulus=steel_fact("modulus"), width=self.plate_thickness, depth=self.plate_depth)
        return wood, steel

    @property
    def steel_share(self):
        """Share of the load that goes to the plate [-]."""
        return shares_by_stiffness(self.parts)[1]

    @property
    def bending_stiffness(self):
        """E I of wood and plate together [N*mm2]."""
        return sum(part.bending_stiffness for part in self.parts)

    @property
    def shear_stiffness(self):
        """What the wood gives to shear under its share of the load; None where its E holds that [N]."""
        if self.wood.shear_modulus is None:
            return None
        area = self.ply_width * self.plies * self.depth
        return rectangle_shear_stiffness(shear_modulus=self.wood.shear_modulus, area=area) / (1 - self.steel_share)

    @property
    def width(self):
        """Width of wood and plate together [mm]."""
        return self.ply_width * self.plies + self.plate_thickness

    @property
    def weight(self):
        """Weight by length of wood and plate together [N/mm]."""
        return self.wood.weight_density * self.ply_width * self.plies * self.depth + self.plate.weight


@dataclass(frozen=True)
class FlitchMember:
    """A flitch beam on its seats, the diameter of its bolts [mm], and whether the plate stands on a steel seat of its own.

    Its demands are those of wood and plate together.
    """

    beam: Flitch
    left: Seat | None
    right: Seat | None
    bolt_diameter: float = 0.5 * inch
    plate_bears: bool = False
    unbraced_length: float = 0.0
    loaded_on: str = "top"
    use: Any = field(default_factory=BeamUse)
    wet: bool = False

    @property
    def material(self):
        """The wood."""
        return self.beam.wood

    @property
    def bending_stiffness(self):
        """E I of wood and plate together [N*mm2]."""
        return self.beam.bending_stiffness

    @property
    def shear_stiffness(self):
        """What the wood gives to shear under its share of the load; None where its E holds that [N]."""
        return self.beam.shear_stiffness

    @property
    def weight_per_length(self):
        """Own weight of wood and plate together [N/mm]."""
        return self.beam.weight


@dataclass(frozen=True)
class SteelBeamMember:
    """A steel beam on its seats; ``unbraced_length`` is the greatest distance between braces of the pushed edge [mm]."""

    section: SteelSection
    left: Seat | None
    right: Seat | None
    unbraced_length: float = 0.0
    use: Any = field(default_factory=BeamUse)
    material: Any = None
    wet: bool = False
    shear_stiffness: float | None = None

    @property
    def bending_stiffness(self):
        """E I [N*mm2]."""
        return self.section.bending_stiffness

    @property
    def weight_per_length(self):
        """Own weight [N/mm]."""
        return self.section.weight


@dataclass(frozen=True)
class SharedPiece:
    """Like plies of a beam whose pieces are unlike: what they are, their wood, size of one [mm], and how many."""

    name: str
    material: Any
    ply_width: float
    depth: float
    plies: int = 1


@dataclass(frozen=True)
class SharedBeamMember:
    """A beam of unlike pieces that sag alike, and its flitch where one of them is a plate bolted between the others."""

    pieces: tuple[SharedPiece, ...]
    flitch: Flitch | None = None
    bolt_diameter: float | None = None
    use: Any = field(default_factory=BeamUse)


@dataclass(frozen=True)
class SharedDemand:
    """What one combination asks of each piece of a beam: greatest edge and shear stress [MPa], sag and span [mm].

    ``position`` is where the edges are stretched most. A stress is None where it is not asked.
    """

    combination: Combination
    edges: tuple[float | None, ...]
    span: float
    position: float
    sag: float | None = None
    shears: tuple[float | None, ...] = ()


def _inches(size):
    return show(size, "section length")
