"""Derivations a step at a time, each ending in the very function that runs.

A derivation is a list of steps: one sentence to hear, one equation to see. At its end the derived
expression is compared with what the library's own function answers to the same symbols. If the two
differ, there is no derivation, only an error.

Another notebook adds its own derivations in a module beside these, and a line here.
"""

from .beams import (
    middle_support,
    point_load,
    required_section,
    section_of_a_rectangle,
    simple_beam,
    tributary_line_load,
    two_spans,
)
from .meanwhile import jack_until_the_ends_let_go, temporary_wall
from .old_wood import first_frequency, sag_after_years, what_a_notch_leaves
from .past_post import overhang_uplift, post_taken_out, weak_spot_of_a_taper
from .post import euler_column, pad_side
from .proof import (
    Derivation,
    Ending,
    NotProved,
    Step,
    dimension_check,
    prove,
    steps_as_latex,
    to_markdown,
    with_numbers,
)
from .roof import rafter_thrust, raised_tie
from .seats import seat_length
from .shared_plies import shares_of_unlike_plies, stacked_boards
