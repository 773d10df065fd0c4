"""Things people say, each answered with a number that the library computes on the spot."""

from .beams import (
    area_is_what_counts,
    depth_always_wins,
    feet_for_inches,
    flat_is_the_same_board,
    half_and_half_always,
    only_what_is_above_it,
    two_against_one,
)
from .meanwhile import slow_jacking_brings_it_back, temporary_wall_carries_the_same, the_floor_below_takes_it
from .old_wood import (
    a_third_of_the_length,
    jack_it_straight_again,
    old_growth_is_always_stronger,
    passing_the_limit_feels_solid,
)
from .past_post import only_the_post_below, twice_the_span_twice_the_beam, worst_at_the_middle
from .post import the_slab_will_do, the_subfloor_spreads_it
from .roof import a_bigger_ridge_board_carries, collar_ties_stop_spreading, only_the_top_matters, steep_roofs_push_more
from .seats import deeper_needs_less_seat, jacks_are_for_nailing
from .shared_plies import nailing_two_makes_one_deep_beam, sistering_gives_more_than_the_sum
