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
from .meanwhile import far_end_of_the_lever, lift_all_of_the_sag, temporary_wall_further_in
from .old_wood import log_against_square, longer_floor_same_limit, notch_or_hole, tub_along_or_across
from .past_post import (
    what_the_post_did,
    where_the_taper_is_weak,
    which_way_the_back_goes,
    worst_arrangement,
)
from .post import softer_soil, twice_the_height, which_way_first
from .prediction import Prediction
from .roof import colder_roof, collar_under_weight, steeper_or_flatter, tie_a_third_up
from .seats import deeper_or_wider, how_short_to_tilt_it_in, joists_meet_on_two_plies
from .shared_plies import a_beam_on_a_beam, half_an_inch_of_steel, no_braces_on_the_flange
