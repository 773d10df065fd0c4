"""Rafters, their ties and joints, and ridge boards as a rulebook is asked about them; and the snow it asks of a roof."""

from dataclasses import dataclass
from typing import Any

from structlib.rules.check import Combination, OfPlies

#: The question of a rafter that may be refused while its others are answered.
STRENGTH = "bending and compression"


@dataclass(frozen=True)
class RafterMember(OfPlies):
    """A rafter: its wood, one ply [mm], plies, its length on the slope from eave to ridge [mm], its rise in 12, spacing [mm].

    Its pressed edge and its narrow way are held by the sheathing.
    """

    material: Any
    ply_width: float
    depth: float
    plies: int
    length: float
    rise: float
    spacing: float


@dataclass(frozen=True)
class RafterDemand:
    """What one combination asks of a rafter; every place is a share of the plan distance from eave to ridge.

    ``axial`` is pressed positive [N]; ``moment`` [N*mm] and ``shear`` [N] are sizes. ``sag`` is square to the slope [mm],
    under the loads of the combination that come and go, by ``passing`` name.
    """

    combination: Combination
    axial: float
    moment: float
    moment_at: float
    shear: float
    shear_at: float
    passing: tuple[str, ...]
    sag: float
    sag_at: float


@dataclass(frozen=True)
class TieMember(OfPlies):
    """A tie between two rafters: its wood, one ply [mm], plies, its nominal size, its height as a share of the rise, spacing [mm]."""

    material: Any
    ply_width: float
    depth: float
    plies: int
    nominal: str
    height: float
    spacing: float


@dataclass(frozen=True)
class Pull:
    """What one combination pulls a tie and each of its joints with [N]."""

    combination: Combination
    force: float


@dataclass(frozen=True)
class RidgeBoardMember:
    """A ridge board, which the rafters lean on: its thickness and depth, the depth of the rafters [mm], their rise in 12."""

    width: float
    depth: float
    rafter_depth: float
    rise: float


@dataclass(frozen=True)
class TieJointMember:
    """Where a tie meets a rafter: both, the distance between the walls [mm], and how many nails hold it, if that is known.

    ``ground_snow`` is the snow on the ground [MPa], None where it is not written; ``snowy`` tells that the roof bears snow.
    """

    rafter: RafterMember
    tie: TieMember
    building_span: float
    snowy: bool
    ground_snow: float | None = None
    nails: int | None = None


@dataclass(frozen=True)
class JointNails:
    """Nails that a joint of a tie needs, of which ``fastener``; None where the rule gives no count, and why in ``told``."""

    nails: int | None
    fastener: str
    told: str
    verified: str


@dataclass(frozen=True)
class RoofSnow:
    """The even snow that a rulebook asks of a roof for a snow on the ground [MPa], how it comes to it, and by what."""

    load: float
    told: str
    standard: str
    verified: str


@dataclass(frozen=True)
class BlownSnow:
    """Snow that wind has moved to one slope: on that slope and on the other [MPa]; clause, and what it stands on."""

    leeward: float
    windward: float
    clause: str
    basis: str
    verified: str


@dataclass(frozen=True)
class BlownSnowRule:
    """When a rulebook asks for snow on one slope alone: rise in 12, clause, and which ground snow it means, as a sentence."""

    least_rise: float
    greatest_rise: float
    clause: str
    asks: str
    ground: str
