"""Questions to commit to before the answer is shown. Every number in an answer is computed by the library."""

from .beams import (
    cut_or_continuous,
    deeper_joists_heavier_wall,
    middle_post_out,
    off_the_middle,
    plate_or_beam,
    same_wood_twice_as_deep,
    twice_the_opening,
    two_small_or_one_big,
)
from .prediction import Prediction
