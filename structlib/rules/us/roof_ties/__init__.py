"""Rafter ties, collar ties, ridges and heel joints (IRC 2021 R802), and bolted joints in rafters (NDS 2018).

What the code lists is looked up and never stretched; what a joint is asked for is worked out beside it. How
a pair of rafters stands is in ``structlib.mechanics.frames``.
"""

from structlib.rules.us.roof_ties.bolted_joints import bolted_rafter_joint, net_section_check
from structlib.rules.us.roof_ties.heel_joints import (
    HEEL_EDITION,
    NAIL_CLAUSE,
    HeelCell,
    HeelCount,
    HeelNails,
    heel_count,
    heel_joint_nails,
    heel_table_nails,
)
from structlib.rules.us.roof_ties.ridges import RidgeAnswer, ridge_beam_needed, ridge_board_checks
from structlib.rules.us.roof_ties.ties import (
    TIE_WORDS,
    TieAdjustment,
    rafter_tie_checks,
    raised_tie_adjustment,
    raised_tie_demand,
    tie_kind,
)
