"""Members of every kind as a rulebook is asked about them: one file a topic; beams are in `structlib.rules.check`."""

from structlib.rules.members.asking import NotCovered, Partly, ask, found_by_kind
from structlib.rules.members.posts import (
    OFF_MIDDLE,
    LeastPad,
    PadMember,
    PlateMember,
    PostMember,
    Push,
    carried_by_plies,
)

__all__ = [
    "OFF_MIDDLE",
    "LeastPad",
    "NotCovered",
    "PadMember",
    "Partly",
    "PlateMember",
    "PostMember",
    "Push",
    "ask",
    "carried_by_plies",
    "found_by_kind",
]
