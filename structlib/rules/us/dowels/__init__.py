"""Nails, bolts and lag screws across the joint (NDS 2018 chapter 12): what one carries and how it yields.

The wood crushes under the fastener, or the fastener bends, or both: each way is one formula, and the
lowest governs. Published numbers stand in data/us_fasteners_*.csv.
"""

from structlib.rules.us.dowels.bearing_strength import (
    as_tabulated,
    bearing_strength_across,
    bearing_strength_along,
    bearing_strength_small,
    bearing_strength_steel,
    is_thin,
    piece_bearing_strength,
)
from structlib.rules.us.dowels.distances import geometry_factor, least_distances
from structlib.rules.us.dowels.fasteners import bolt, lag_screw, nail, nail_names, nail_of_size
from structlib.rules.us.dowels.pieces import steel_plate, wood_piece
from structlib.rules.us.dowels.reach import bearing_length_in_main, penetration, table_penetration_factor
from structlib.rules.us.dowels.records import Fastener, JoinedPiece, LateralValue
from structlib.rules.us.dowels.value import (
    adjusted_value,
    group_action_factor,
    lateral_value,
    moisture_factor,
)
from structlib.rules.us.dowels.withdrawal import nail_withdrawal
from structlib.rules.us.dowels.words import DISTANCES, LOAD_DIRECTIONS, MODE_WORDS, MODES, MOISTURE
from structlib.rules.us.dowels.yielding import (
    mode_I,
    mode_II,
    mode_III_main,
    mode_III_side,
    mode_IV,
    reduction_by_angle,
    reduction_small,
    reduction_terms,
    yield_modes,
)
