"""The records of a dowel-type joint: a fastener, a joined piece, a value."""

from dataclasses import dataclass

import numpy

from structlib.ground.records import measured
from structlib.ground.refusals import BadInput, check_number, is_symbolic
from structlib.ground.units import inch  # noqa: F401 (for the examples)


@dataclass(frozen=True, kw_only=True)
class Fastener:
    """One nail, bolt or lag screw.

    Parameters
    ----------
    kind : str
        ``nail``, ``bolt`` or ``lag screw`` [-].
    name : str
        Name to show [-].
    diameter : float
        Nominal diameter, or that of a nail's shank [mm].
    bending_diameter : float
        Diameter that bends: the root of the thread of a lag screw, else the diameter [mm].
    bending_yield : float
        Bending yield strength F_yb [MPa].
    length : float
        Length under the head; None for a bolt, which goes through [mm].
    tip : float
        Tapered tip [mm].
    source : str
        Where the numbers come from [-].
    verified : str
        How they are known [-].

    Examples
    --------
    >>> from structlib.rules.us.dowels import nail
    >>> round(nail("16d common").diameter / inch, 3)
    0.162
    """

    kind: str = measured("text", "kind of fastener")
    name: str = measured("text", "fastener")
    diameter: float = measured("small length", "diameter")
    bending_diameter: float = measured("small length", "diameter that bends")
    bending_yield: float = measured("stress", "bending yield strength")
    length: float | None = measured("small length", "length", default=None)
    tip: float = measured("small length", "tapered tip", default=0.0)
    source: str = measured("text", "source", default="")
    verified: str = measured("text", "how it is known", default="recalled")


@dataclass(frozen=True, kw_only=True)
class JoinedPiece:
    """One member of a joint, as the fastener feels it; made by ``wood_piece`` or ``steel_plate``.

    Parameters
    ----------
    thickness : float
        Thickness along the fastener [mm].
    specific_gravity : float
        Specific gravity of wood; None for steel [-].
    angle : float
        Angle between the load and the grain; 0 for steel [rad].
    steel : str
        ``A36``, ``A653 grade 33``, or empty for wood [-].

    Examples
    --------
    >>> from structlib.rules.us.dowels import wood_piece
    >>> wood_piece(thickness=1.5 * inch, specific_gravity=0.5).steel
    ''
    """

    thickness: float = measured("section length", "thickness")
    specific_gravity: float | None = measured("text", "specific gravity", default=None)
    angle: float = measured("angle", "angle of load to grain", default=0.0)
    steel: str = measured("text", "steel", default="")


@dataclass(frozen=True, kw_only=True)
class LateralValue:
    """What one fastener carries across the joint before adjustment, and which way it yields.

    Parameters
    ----------
    value : float
        Reference lateral value Z, the lowest of the modes [N].
    mode : str
        Name of that mode [-].
    modes : tuple of tuple
        Every mode with its value [-, N].
    main_length : float
        Bearing length in the main member [mm].
    side_length : float
        Bearing length in the side member [mm].
    main_bearing : float
        Dowel bearing strength of the main member [MPa].
    side_bearing : float
        Dowel bearing strength of the side member [MPa].
    verified : str
        How the numbers are known [-].

    Examples
    --------
    >>> from structlib.rules.us.dowels import bolt, lateral_value, wood_piece
    >>> pine = wood_piece(thickness=1.5 * inch, specific_gravity=0.55)
    >>> lateral_value(bolt(0.5 * inch), main=pine, side=pine).mode
    'II'
    """

    value: float = measured("force", "reference lateral value Z")
    mode: str = measured("text", "mode that governs")
    modes: tuple = ()
    main_length: float = measured("small length", "bearing length in the main member")
    side_length: float = measured("small length", "bearing length in the side member")
    main_bearing: float = measured("stress", "dowel bearing strength, main member")
    side_bearing: float = measured("stress", "dowel bearing strength, side member")
    verified: str = measured("text", "how it is known", default="computed")


def _check_piece(piece):
    if not isinstance(piece, JoinedPiece):
        raise BadInput(f"a member of a joint is made by wood_piece or steel_plate, got {type(piece).__name__}")


def _check_fastener(fastener):
    if not isinstance(fastener, Fastener):
        raise BadInput(
            f"a fastener is made by nail, bolt or lag_screw, got {type(fastener).__name__}; "
            "for example nail('16d common')"
        )


def _check_count(name, value):
    check_number(name, value, low=1, high=1000, hint="for example 2")
    if is_symbolic(value) or numpy.ndim(value) or value % 1:
        raise BadInput(f"{name} must be a whole number from 1 on, got {value!r}; for example 2")
