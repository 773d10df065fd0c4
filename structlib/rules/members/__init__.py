"""Members of every kind as a rulebook is asked about them: one file a topic; beams are in `structlib.rules.check`."""

from structlib.rules.members.asking import NotCovered, Partly, ask, found_by_kind
from structlib.rules.members.plies import (
    Crossing,
    Fastening,
    Fasteners,
    Flitch,
    FlitchMember,
    JointMember,
    Nailing,
    PlyJointMember,
    SharedBeamMember,
    SharedDemand,
    SharedPiece,
    SteelBeamMember,
)
from structlib.rules.members.posts import (
    OFF_MIDDLE,
    LeastPad,
    PadMember,
    PlateMember,
    PostMember,
    Push,
    carried_by_plies,
)
from structlib.rules.members.seats import BEAM_FACE, LEAST_SEAT, PLATE_FACE, SEAT_KINDS, SeatMember, seat_of

__all__ = [
    "BEAM_FACE",
    "LEAST_SEAT",
    "PLATE_FACE",
    "SEAT_KINDS",
    "SeatMember",
    "seat_of",
    "OFF_MIDDLE",
    "Crossing",
    "Fastening",
    "Fasteners",
    "Flitch",
    "FlitchMember",
    "JointMember",
    "LeastPad",
    "Nailing",
    "NotCovered",
    "PadMember",
    "Partly",
    "PlateMember",
    "PlyJointMember",
    "PostMember",
    "Push",
    "SharedBeamMember",
    "SharedDemand",
    "SharedPiece",
    "SteelBeamMember",
    "ask",
    "carried_by_plies",
    "found_by_kind",
]
