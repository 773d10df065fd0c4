"""Nails, bolts and lag screws across the joint (NDS 2018 chapter 12): what one carries and how it yields.

The wood crushes under the fastener, or the fastener bends, or both: each way is one formula, and the
lowest governs. Published numbers stand in data/us_fasteners_*.csv.
"""

from .bearing_strength import (  # noqa: F401
    as_tabulated,
    bearing_strength_across,
    bearing_strength_along,
    bearing_strength_small,
    bearing_strength_steel,
    is_thin,
    piece_bearing_strength,
)
from .distances import (  # noqa: F401
    geometry_factor,
    least_distances,
)
from .fasteners import (  # noqa: F401
    bolt,
    lag_screw,
    nail,
    nail_names,
    nail_of_size,
)
from .pieces import (  # noqa: F401
    steel_plate,
    wood_piece,
)
from .reach import (  # noqa: F401
    bearing_length_in_main,
    penetration,
    table_penetration_factor,
)
from .records import (  # noqa: F401
    Fastener,
    JoinedPiece,
    LateralValue,
)
from .value import (  # noqa: F401
    adjusted_value,
    group_action_factor,
    lateral_check,
    lateral_value,
    wet_factor,
)
from .withdrawal import (  # noqa: F401
    lag_withdrawal,
    nail_withdrawal,
)
from .words import (  # noqa: F401
    DISTANCES,
    LOAD_DIRECTIONS,
    MODE_WORDS,
    MODES,
    MOISTURE,
)
from .yielding import (  # noqa: F401
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
