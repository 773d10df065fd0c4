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
