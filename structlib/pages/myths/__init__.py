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
from .seats import deeper_needs_less_seat, jacks_are_for_nailing
from .meanwhile import slow_jacking_brings_it_back, temporary_wall_carries_the_same, the_floor_below_takes_it
from .past_post import only_the_post_below, twice_the_span_twice_the_beam, worst_at_the_middle
from .post import the_slab_will_do, the_subfloor_spreads_it
