"""The seat of one end of a beam as a rulebook is asked about it; what presses on it is a `Push`."""

from dataclasses import dataclass
from typing import Any

from structlib.rules.check import Seat

#: Kinds of the checks of a seat: the beam's own face, the face of a wood plate below it, and the least of the code.
BEAM_FACE, PLATE_FACE, LEAST_SEAT = SEAT_KINDS = ("bearing", "plate bearing", "seat")


@dataclass(frozen=True)
class SeatMember:
    """One end of a beam on its seat: the beam's wood as it is put in, the width of all plies [mm], and the seat.

    ``end`` is 'left' or 'right', or which of several, ``position`` how far from the beam's left end it is [mm], and
    ``to_end`` how far the seat is from the nearer end.
    """

    material: Any
    width: float
    seat: Seat
    wet: bool = False
    end: str = "left"
    position: float = 0.0
    to_end: float = 0.0


def seat_of(beam, end, position=0.0):
    """Return one end of a beam as a seat of its own.

    Parameters
    ----------
    beam : structlib.rules.check.BeamMember
        The beam [-].
    end : str
        'left' or 'right' [-].
    position : float
        How far from the beam's left end it is [mm].

    Returns
    -------
    SeatMember
        The seat [-].

    Examples
    --------
    >>> from structlib.ground.lumber import find_material
    >>> from structlib.rules.check import BeamMember
    >>> beam = BeamMember(find_material("Hem-Fir", "No.2"), 38.0, 235.0, 2, Seat(76.0), Seat(38.0), unbraced_length=0.0)
    >>> seat_of(beam, "right").seat.length
    38.0
    """
    return SeatMember(beam.material, beam.width, beam.left if end == "left" else beam.right, beam.wet, end, position)
