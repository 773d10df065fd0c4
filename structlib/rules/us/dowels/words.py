"""Words and numbers that the rooms of dowel-type fasteners share."""

import numpy

from structlib.ground.refusals import BadInput, is_symbolic
from structlib.rules.keyed import KeyedNumbers
from structlib.rules.us.inputs import check_size

MODES = {"single": ("Im", "Is", "II", "IIIm", "IIIs", "IV"), "double": ("Im", "Is", "IIIs", "IV")}
#: What happens in each mode, for the reader.
MODE_WORDS = {
    "Im": "the wood of the main member crushes along the whole fastener",
    "Is": "the side member crushes along the whole fastener",
    "II": "the fastener stays straight and tilts, and both members crush",
    "IIIm": "the fastener bends once, in the side member's face, and the main member crushes",
    "IIIs": "the fastener bends once, in the main member, and the side member crushes",
    "IV": "the fastener bends twice, once in each member",
}
MOISTURE = ("dry", "wet in service", "wet when built")
LOAD_DIRECTIONS = ("parallel, compression", "parallel, tension", "perpendicular")
DISTANCES = ("end", "edge", "unloaded edge", "in a row", "between rows")
_FACTORS = KeyedNumbers("us_fasteners_factors")
_scalar, _verified = _FACTORS.number, _FACTORS.verified
_SIZE_SLACK = 1e-9  # diameters come from inches; a rounding must not change the band


def _inches(length):
    from structlib.ground.showing import show

    return show(length, "section length")


def _one_number(name, value):
    check_size(name, value)
    if is_symbolic(value) or numpy.ndim(value):
        raise BadInput(f"{name} must be one number, got {type(value).__name__}; for example 0.5*inch")
