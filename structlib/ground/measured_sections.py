"""Sections of old members as measured: logs flattened or split, and timber with its corners gone.

Every shape is upright: load runs down its depth. Formulas are written with roots and angles that numbers,
arrays and sympy symbols all pass through. `measured_section` gathers them under the name of a shape.
"""

import math
from dataclasses import dataclass

import numpy

from structlib.ground.refusals import BadInput, check_choice, check_number, is_symbolic
from structlib.ground.roots import pi_for, square_root
from structlib.ground.sections import check_section_size, rectangle_area, rectangle_inertia, round_area, round_inertia
from structlib.ground.showing import show
from structlib.ground.units import ft

SHAPES = ("sawn", "round", "flat sides", "half round", "hewn")

_GREATEST_SIZE = 10 * ft


def _at_most(name, value, limit, than):
    """Refuse a size beyond another one of the same section."""
    if is_symbolic(value) or is_symbolic(limit):
        return
    if numpy.any(numpy.asarray(value) > numpy.asarray(limit) * (1 + 1e-9)):
        worst = show(float(numpy.max(value)), "section length")
        raise BadInput(f"{name} must be at most {than}, got {worst}; measure both again")


def arc_sine(value):
    """Angle whose sine is a number, an array or a symbol.

    Parameters
    ----------
    value : float or numpy.ndarray or sympy.Expr
        Sine, -1 to 1 [-].

    Returns
    -------
    float or numpy.ndarray or sympy.Expr
        Angle, exact when symbolic [rad].

    Examples
    --------
    >>> round(arc_sine(0.5), 4)
    0.5236
    """
    if is_symbolic(value):
        import sympy

        return sympy.asin(value)
    check_number("sine", value, low=-1 - 1e-12, high=1 + 1e-12, hint="for example 0.5")
    if isinstance(value, (int, float)):
        return math.asin(min(1.0, max(-1.0, value)))
    return numpy.arcsin(numpy.clip(value, -1.0, 1.0))


def half_round_area(*, diameter):
    """Area of half a log, split along its middle.

    Parameters
    ----------
    diameter : float
        Diameter of the whole log, which is the width of the flat face; more than 0, at most 10 ft [mm].

    Returns
    -------
    float
        Area [mm2].

    Examples
    --------
    >>> from structlib.ground.units import inch
    >>> round(half_round_area(diameter=10*inch) / inch**2, 2)
    39.27
    """
    return round_area(diameter=diameter) / 2


def half_round_centroid(*, diameter):
    """How far the middle of the area of half a log lies from its flat face, 2 D / (3 pi).

    Parameters
    ----------
    diameter : float
        Diameter of the whole log; more than 0, at most 10 ft [mm].

    Returns
    -------
    float
        Distance from the flat face [mm].

    Examples
    --------
    >>> from structlib.ground.units import inch
    >>> round(half_round_centroid(diameter=10*inch) / inch, 3)
    2.122
    """
    return 2 * check_section_size("diameter", diameter) / (3 * pi_for(diameter))


def half_round_inertia(*, diameter):
    """Moment of inertia of half a log, flat face up or down, (pi/8 - 8/(9 pi)) r^4.

    Parameters
    ----------
    diameter : float
        Diameter of the whole log; more than 0, at most 10 ft [mm].

    Returns
    -------
    float
        Moment of inertia [mm4].

    Examples
    --------
    >>> from structlib.ground.units import inch
    >>> round(half_round_inertia(diameter=10*inch) / inch**4, 2)
    68.6
    """
    shift = half_round_centroid(diameter=diameter)
    return round_inertia(diameter=diameter) / 2 - half_round_area(diameter=diameter) * shift**2


def flat_sided_area(*, diameter, width):
    """Area of a log with two upright flat sides.

    Parameters
    ----------
    diameter : float
        Diameter of the log, which is its depth; more than 0, at most 10 ft [mm].
    width : float
        Width between the flat sides; more than 0, at most the diameter [mm].

    Returns
    -------
    float
        Area [mm2].

    Examples
    --------
    >>> from structlib.ground.units import inch
    >>> round(flat_sided_area(diameter=8*inch, width=5*inch) / inch**2, 2)
    37.22
    """
    _check_flat_sides(diameter, width)
    half_depth = square_root(diameter**2 - width**2) / 2  # half the height of a flat side
    return width * half_depth + diameter**2 / 2 * arc_sine(width / diameter)


def flat_sided_inertia(*, diameter, width):
    """Moment of inertia of a log with two upright flat sides.

    Parameters
    ----------
    diameter : float
        Diameter of the log, which is its depth; more than 0, at most 10 ft [mm].
    width : float
        Width between the flat sides; more than 0, at most the diameter [mm].

    Returns
    -------
    float
        Moment of inertia [mm4].

    Notes
    -----
    The sum of upright slices (2/3) (r^2 - x^2)^(3/2) dx from one flat side to the other.

    Examples
    --------
    >>> from structlib.ground.units import inch
    >>> round(flat_sided_inertia(diameter=8*inch, width=5*inch) / inch**4, 1)
    174.2
    """
    _check_flat_sides(diameter, width)
    half_depth = square_root(diameter**2 - width**2) / 2
    return (
        width * half_depth**3 / 6
        + diameter**2 * width * half_depth / 16
        + diameter**4 * arc_sine(width / diameter) / 32
    )


def _check_flat_sides(diameter, width):
    check_section_size("diameter", diameter)
    _at_most(
        "width between the flat sides",
        check_section_size("width between the flat sides", width),
        diameter,
        "the diameter of the log",
    )


def hewn_area(*, width, depth, wane):
    """Area of a rectangle with its four corners gone at 45 degrees.

    Parameters
    ----------
    width : float
        Width over all; more than 0, at most 10 ft [mm].
    depth : float
        Depth over all; more than 0, at most 10 ft [mm].
    wane : float
        Leg of the missing corner, from 0 to half of the lesser size [mm].

    Returns
    -------
    float
        Area [mm2].

    Examples
    --------
    >>> hewn_area(width=6.0, depth=8.0, wane=1.0)
    46.0
    """
    _check_wane(width, depth, wane)
    return rectangle_area(width=width, depth=depth) - 2 * wane**2


def hewn_inertia(*, width, depth, wane):
    """Moment of inertia of a rectangle with its four corners gone at 45 degrees.

    Parameters
    ----------
    width : float
        Width over all; more than 0, at most 10 ft [mm].
    depth : float
        Depth over all; more than 0, at most 10 ft [mm].
    wane : float
        Leg of the missing corner, from 0 to half of the lesser size [mm].

    Returns
    -------
    float
        Moment of inertia [mm4].

    Examples
    --------
    >>> round(hewn_inertia(width=6.0, depth=8.0, wane=1.0), 3)
    229.0
    """
    _check_wane(width, depth, wane)
    one_corner = wane**4 / 36 + wane**2 / 2 * (depth / 2 - wane / 3) ** 2
    return rectangle_inertia(width=width, depth=depth) - 4 * one_corner


def _check_wane(width, depth, wane, name="missing corner"):
    check_section_size("width", width)
    check_section_size("depth", depth)
    check_number(
        name,
        wane,
        low=0,
        high=_GREATEST_SIZE,
        shown=lambda size: show(size, "section length"),
        hint="for example 1*inch",
    )
    for other in (width, depth):
        _at_most(name, wane, other / 2, "half of the width and half of the depth")


@dataclass(frozen=True)
class MeasuredSection:
    """One member's section as measured, ready for bending, sag and shear.

    ``to_bottom`` and ``to_top`` are the distances from the middle of the area to the two edges [mm].
    ``shear_ratio`` is the greatest shear stress over the average one, V/A [-].
    """

    shape: str
    width: float
    depth: float
    area: float
    inertia: float
    to_bottom: float
    to_top: float
    shear_ratio: float

    @property
    def section_modulus(self):
        """Section modulus at the edge with the greatest stress [mm3]."""
        return self.inertia / max(self.to_bottom, self.to_top)


def measured_section(shape, *, width, depth, wane=0.0):
    """Area, inertia and edges of a member from its shape and its two sizes over all.

    Parameters
    ----------
    shape : str
        'sawn', 'round' (depth is the diameter), 'flat sides' (a log of that depth with two upright flat sides
        ``width`` apart), 'half round' (half a log, flat face up; depth is half of its diameter) or 'hewn'
        (a rectangle with its corners gone) [-].
    width : float
        Width over all; passed over for 'round' and 'half round' [mm].
    depth : float
        Depth over all; more than 0, at most 10 ft [mm].
    wane : float
        Leg of the missing corners of 'hewn', from 0 to half of the lesser size [mm].

    Returns
    -------
    MeasuredSection
        The section [-].

    Examples
    --------
    >>> from structlib.ground.units import inch
    >>> half = measured_section("half round", width=10*inch, depth=5*inch)
    >>> round(half.section_modulus / inch**3, 2), round(half.to_bottom / inch, 2)
    (23.84, 2.88)
    """
    check_choice("shape", shape, SHAPES)
    check_section_size("depth", depth)
    if shape in ("round", "half round"):
        diameter = depth if shape == "round" else 2 * depth
        return _of_log(shape, diameter)
    check_section_size("width", width)
    if shape == "flat sides":
        area = flat_sided_area(diameter=depth, width=width)
        inertia = flat_sided_inertia(diameter=depth, width=width)
        above = width * depth**2 / 8 - width**3 / 24  # first moment of the upper half
    else:
        wane = wane if shape == "hewn" else 0.0
        area = hewn_area(width=width, depth=depth, wane=wane)
        inertia = hewn_inertia(width=width, depth=depth, wane=wane)
        above = width * depth**2 / 8 - wane**2 * (depth / 2 - wane / 3)
    return MeasuredSection(shape, width, depth, area, inertia, depth / 2, depth / 2, area * above / (inertia * width))


def _of_log(shape, diameter):
    if shape == "round":
        return MeasuredSection(
            shape,
            diameter,
            diameter,
            round_area(diameter=diameter),
            round_inertia(diameter=diameter),
            diameter / 2,
            diameter / 2,
            4 / 3,
        )
    radius, area = diameter / 2, half_round_area(diameter=diameter)
    inertia, down = half_round_inertia(diameter=diameter), half_round_centroid(diameter=diameter)
    half_chord = square_root(radius**2 - down**2)
    # first moment, about the middle of the area, of what lies beyond it
    beyond = 2 / 3 * half_chord**3 - down * (radius**2 * (math.pi / 2 - arc_sine(down / radius)) - down * half_chord)
    return MeasuredSection(
        shape,
        diameter,
        radius,
        area,
        inertia,
        radius - down,
        down,
        area * beyond / (inertia * 2 * half_chord),
    )
