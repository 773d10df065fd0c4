"""Sections of the wood that a notch or a hole leaves: strength and stiffness of what remains, as mechanics counts it."""

import numpy

from structlib.ground.refusals import BadInput, check_number, is_symbolic
from structlib.ground.sections import check_section_size
from structlib.ground.showing import show
from structlib.ground.units import inch


def check_within(name, value, limit, than):
    """Refuse a part of a size that is greater than the whole of it.

    Parameters
    ----------
    name : str
        What the part is, for the message [-].
    value : float, numpy.ndarray or sympy expression
        The part [mm].
    limit : float, numpy.ndarray or sympy expression
        The most that it may be [mm].
    than : str
        What that is, for the message [-].

    Examples
    --------
    >>> check_within("notch", 9.0, 6.0, "the depth")
    Traceback (most recent call last):
    ...
    structlib.ground.refusals.BadInput: notch must be at most the depth, got 3/8 in
    """
    if is_symbolic(value) or is_symbolic(limit):
        return
    check_number(name, value, low=0, high=120 * inch, shown=lambda size: show(size, "section length"))
    if numpy.any(numpy.asarray(value) > numpy.asarray(limit) * (1 + 1e-9)):
        raise BadInput(f"{name} must be at most {than}, got {show(float(numpy.max(value)), 'section length')}")


def notched_section_modulus(*, width, depth, notch):
    """Section modulus of the wood left at a notch, b (d - n)^2 / 6.

    Parameters
    ----------
    width : float
        Width of the member [mm].
    depth : float
        Depth of the member [mm].
    notch : float
        Depth of the notch, 0 to less than the depth [mm].

    Returns
    -------
    float
        Section modulus at the notch [mm3].

    Notes
    -----
    The sharp corner of a notch splits wood at less than this says; the formula counts only the wood left.

    Examples
    --------
    >>> round(notched_section_modulus(width=1.0, depth=6.0, notch=1.0) / (6.0**2 / 6), 3)
    0.694
    """
    check_section_size("width", width)
    check_section_size("depth", depth)
    check_within("notch", notch, depth, "the depth")
    return width * (depth - notch) ** 2 / 6


def notched_inertia(*, width, depth, notch):
    """Moment of inertia of the wood left at a notch, b (d - n)^3 / 12.

    Parameters
    ----------
    width : float
        Width of the member [mm].
    depth : float
        Depth of the member [mm].
    notch : float
        Depth of the notch, 0 to less than the depth [mm].

    Returns
    -------
    float
        Moment of inertia at the notch [mm4].

    Examples
    --------
    >>> round(notched_inertia(width=1.0, depth=6.0, notch=1.0) / (6.0**3 / 12), 3)
    0.579
    """
    check_section_size("width", width)
    check_section_size("depth", depth)
    check_within("notch", notch, depth, "the depth")
    return width * (depth - notch) ** 3 / 12


def drilled_inertia(*, width, depth, diameter, offset=0.0):
    """Moment of inertia of the wood left at a hole, about the middle of what is left.

    Parameters
    ----------
    width : float
        Width of the member [mm].
    depth : float
        Depth of the member [mm].
    diameter : float
        Diameter of the hole [mm].
    offset : float
        How far the middle of the hole is from mid-depth, up or down [mm].

    Returns
    -------
    float
        Moment of inertia at the hole [mm4].

    Examples
    --------
    >>> round(drilled_inertia(width=1.0, depth=6.0, diameter=2.0) / (6.0**3 / 12), 3)
    0.963
    """
    shift = _drilled_shift(depth, diameter, offset, width)
    gone = width * diameter**3 / 12 + width * diameter * offset**2
    return width * depth**3 / 12 - gone - width * (depth - diameter) * shift**2


def drilled_section_modulus(*, width, depth, diameter, offset=0.0):
    """Least section modulus of the wood left at a hole.

    Parameters
    ----------
    width : float
        Width of the member [mm].
    depth : float
        Depth of the member [mm].
    diameter : float
        Diameter of the hole [mm].
    offset : float
        How far the middle of the hole is from mid-depth; 0 or more, the hole on one side [mm].

    Returns
    -------
    float
        Section modulus at the edge with the greatest stress [mm3].

    Examples
    --------
    >>> round(drilled_section_modulus(width=1.0, depth=6.0, diameter=2.0) / (6.0**2 / 6), 3)
    0.963
    """
    shift = _drilled_shift(depth, diameter, offset, width)
    inertia = drilled_inertia(width=width, depth=depth, diameter=diameter, offset=offset)
    return inertia / (depth / 2 + shift)


def _drilled_shift(depth, diameter, offset, width):
    """How far the middle of the wood left moves away from the hole."""
    check_section_size("width", width)
    check_section_size("depth", depth)
    check_number(
        "offset",
        offset,
        low=0,
        high=60 * inch,
        shown=lambda size: show(size, "section length"),
        hint="how far from mid-depth, on either side",
    )
    check_within("hole and twice its offset", diameter + 2 * offset, depth, "the depth, or it cuts an edge")
    return diameter * offset / (depth - diameter)
