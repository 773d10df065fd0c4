"""Beams that have a formula: one function, one formula, in arithmetic that anything passes through.

Called with floats a function answers one beam; called with numpy arrays it answers a whole rack of
lumber; called with sympy symbols it prints itself. The units named are those used inside this
library; every formula here is true in any consistent system (pounds and inches, newtons and metres).

Downward loads, upward reactions, sagging moments and downward deflections are positive.
Positions run from the left, unless a function says otherwise. All members here are uniform,
straight and elastic, and only bending is counted unless a function says otherwise.
"""

from structlib.mechanics.formulas.cantilever import (
    cantilever_uniform_moment,
)
from structlib.mechanics.formulas.inputs import LIMIT
from structlib.mechanics.formulas.overhang import (
    overhang_uniform_support_moment,
)
from structlib.mechanics.formulas.propped import (
    fixed_uniform_wall_moment,
    propped_uniform_deflection,
    propped_uniform_deflection_at,
    propped_uniform_greatest_deflection_place,
    propped_uniform_prop_reaction,
    propped_uniform_span_moment,
    propped_uniform_wall_moment,
    propped_uniform_wall_reaction,
    two_span_uniform_deflection,
    two_span_uniform_end_reaction,
    two_span_uniform_middle_reaction,
    two_span_uniform_span_moment,
    two_span_uniform_support_moment,
)
from structlib.mechanics.formulas.simple_point import (
    simple_midspan_point_deflection,
    simple_midspan_point_moment,
    simple_point_deflection_left_of_load,
    simple_point_left_reaction,
    simple_point_moment,
    simple_point_right_reaction,
)
from structlib.mechanics.formulas.simple_uniform import (
    simple_uniform_deflection,
    simple_uniform_deflection_at,
    simple_uniform_moment,
    simple_uniform_moment_at,
    simple_uniform_reaction,
    simple_uniform_shear_at,
    simple_uniform_slope_at,
)
from structlib.mechanics.formulas.stress import (
    bending_stiffness,
    bending_stress,
    rectangle_shear_stiffness,
    rectangle_shear_stress,
)
