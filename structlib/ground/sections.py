"""Area, section modulus and moment of inertia of boards, plies, stacks and round timber."""

from dataclasses import dataclass

from structlib.ground.records import measured
from structlib.ground.refusals import BadInput, check_number, is_symbolic, refuse_list
from structlib.ground.roots import pi_for
from structlib.ground.showing import show
from structlib.ground.units import ft

_GREATEST_SIZE = 10 * ft
_MOST_BOARDS = 10


def check_section_size(name, value):
    """Refuse anything but a size of a section: above zero, 10 ft at most.

    Parameters
    ----------
    name : str
        What it is, for the message [-].
    value : float, numpy.ndarray or sympy expression
        The size [mm].

    Returns
    -------
    float, numpy.ndarray or sympy expression
        The size, unchanged [mm].

    Examples
    --------
    >>> check_section_size("depth", 235.0)
    235.0
    """
    if type(value) is float and 0 < value <= _GREATEST_SIZE:
        return value  # the usual case, before anything else is asked
    refuse_list(name, value)
    return check_number(
        name,
        value,
        low=0,
        high=_GREATEST_SIZE,
        low_allowed=False,
        shown=lambda size: show(size, "section length"),
        hint="for example 9.25*inch for 9 1/4 in",
    )


def _count(name, value):
    check_number(name, value, low=1, high=_MOST_BOARDS, hint="for example 2")
    if not is_symbolic(value) and not _all_whole(value):
        raise BadInput(f"{name} must be a whole number between 1 and {_MOST_BOARDS}, got {value}; for example 2")
    return value


def _all_whole(value):
    import numpy

    return bool(numpy.all(numpy.asarray(value, dtype=float) % 1 == 0))


def rectangle_area(*, width, depth):
    """Area of a rectangle.

    Parameters
    ----------
    width : float
        Width, across the load; more than 0, at most 10 ft [mm].
    depth : float
        Depth, along the load; more than 0, at most 10 ft [mm].

    Returns
    -------
    float
        Area [mm2].

    Examples
    --------
    >>> from structlib.ground.units import inch
    >>> round(rectangle_area(width=1.5*inch, depth=9.25*inch) / inch**2, 3)
    13.875
    """
    return check_section_size("width", width) * check_section_size("depth", depth)


def rectangle_section_modulus(*, width, depth):
    """Section modulus of a rectangle, b d^2 / 6: what bending strength goes by.

    Parameters
    ----------
    width : float
        Width, across the load; more than 0, at most 10 ft [mm].
    depth : float
        Depth, along the load; more than 0, at most 10 ft [mm].

    Returns
    -------
    float
        Section modulus [mm3].

    Examples
    --------
    >>> from structlib.ground.units import inch
    >>> round(rectangle_section_modulus(width=1.5*inch, depth=9.25*inch) / inch**3, 3)
    21.391
    """
    return check_section_size("width", width) * check_section_size("depth", depth) ** 2 / 6


def rectangle_inertia(*, width, depth):
    """Moment of inertia of a rectangle, b d^3 / 12: what stiffness goes by.

    Parameters
    ----------
    width : float
        Width, across the load; more than 0, at most 10 ft [mm].
    depth : float
        Depth, along the load; more than 0, at most 10 ft [mm].

    Returns
    -------
    float
        Moment of inertia [mm4].

    Examples
    --------
    >>> from structlib.ground.units import inch
    >>> round(rectangle_inertia(width=1.5*inch, depth=9.25*inch) / inch**4, 3)
    98.932
    """
    return check_section_size("width", width) * check_section_size("depth", depth) ** 3 / 12


def plies_width(*, ply_width, plies):
    """Width of like plies side by side.

    Parameters
    ----------
    ply_width : float
        Width of one ply; more than 0, at most 10 ft [mm].
    plies : int
        Number of plies, 1 to 10 [-].

    Returns
    -------
    float
        Width of them all [mm].

    Examples
    --------
    >>> from structlib.ground.units import inch
    >>> round(plies_width(ply_width=1.75*inch, plies=3) / inch, 2)
    5.25
    """
    return check_section_size("ply width", ply_width) * _count("plies", plies)


def edge_to_flat_strength(*, width, depth):
    """How many times stronger in bending a board is on edge than laid flat: d / b.

    Parameters
    ----------
    width : float
        Thickness of the board; more than 0, at most 10 ft [mm].
    depth : float
        Width of its wide face; more than 0, at most 10 ft [mm].

    Returns
    -------
    float
        Ratio of section moduli [-].

    Examples
    --------
    >>> from structlib.ground.units import inch
    >>> round(edge_to_flat_strength(width=1.5*inch, depth=9.25*inch), 2)
    6.17
    """
    return rectangle_section_modulus(width=width, depth=depth) / rectangle_section_modulus(width=depth, depth=width)


def edge_to_flat_stiffness(*, width, depth):
    """How many times stiffer a board is on edge than laid flat: (d / b)^2.

    Parameters
    ----------
    width : float
        Thickness of the board; more than 0, at most 10 ft [mm].
    depth : float
        Width of its wide face; more than 0, at most 10 ft [mm].

    Returns
    -------
    float
        Ratio of moments of inertia [-].

    Examples
    --------
    >>> from structlib.ground.units import inch
    >>> round(edge_to_flat_stiffness(width=1.5*inch, depth=9.25*inch), 1)
    38.0
    """
    return rectangle_inertia(width=width, depth=depth) / rectangle_inertia(width=depth, depth=width)


def round_area(*, diameter):
    """Area of a round timber.

    Parameters
    ----------
    diameter : float
        Diameter; more than 0, at most 10 ft [mm].

    Returns
    -------
    float
        Area [mm2].

    Examples
    --------
    >>> from structlib.ground.units import inch
    >>> round(round_area(diameter=8*inch) / inch**2, 2)
    50.27
    """
    return pi_for(diameter) * check_section_size("diameter", diameter) ** 2 / 4


def round_section_modulus(*, diameter):
    """Section modulus of a round timber, pi d^3 / 32.

    Parameters
    ----------
    diameter : float
        Diameter; more than 0, at most 10 ft [mm].

    Returns
    -------
    float
        Section modulus [mm3].

    Examples
    --------
    >>> from structlib.ground.units import inch
    >>> round(round_section_modulus(diameter=8*inch) / inch**3, 2)
    50.27
    """
    return pi_for(diameter) * check_section_size("diameter", diameter) ** 3 / 32


def round_inertia(*, diameter):
    """Moment of inertia of a round timber, pi d^4 / 64.

    Parameters
    ----------
    diameter : float
        Diameter; more than 0, at most 10 ft [mm].

    Returns
    -------
    float
        Moment of inertia [mm4].

    Examples
    --------
    >>> from structlib.ground.units import inch
    >>> round(round_inertia(diameter=8*inch) / inch**4, 2)
    201.06
    """
    return pi_for(diameter) * check_section_size("diameter", diameter) ** 4 / 64


@dataclass(frozen=True, kw_only=True)
class Section:
    """A member's cross section: like plies side by side, on edge.

    Parameters
    ----------
    ply_width : float or numpy.ndarray
        Width of one ply; more than 0, at most 10 ft [mm].
    depth : float or numpy.ndarray
        Depth; more than 0, at most 10 ft [mm].
    plies : int or numpy.ndarray
        Number of plies, 1 to 10 [-].

    Examples
    --------
    >>> from structlib.ground.units import inch
    >>> beam = Section(ply_width=1.75*inch, depth=9.25*inch, plies=3)
    >>> round(beam.width / inch, 2), round(beam.inertia / inch**4, 1)
    (5.25, 346.3)
    """

    ply_width: float = measured("section length", "width of one ply")
    depth: float = measured("section length", "depth")
    plies: int = measured("count", "plies side by side", default=1)

    def __post_init__(self):
        check_section_size("ply width", self.ply_width)
        check_section_size("depth", self.depth)
        _count("plies", self.plies)

    @property
    def width(self):
        """Width of all plies [mm]."""
        return plies_width(ply_width=self.ply_width, plies=self.plies)

    @property
    def area(self):
        """Area of all plies, which is also the volume per length [mm2]."""
        return rectangle_area(width=self.width, depth=self.depth)

    @property
    def section_modulus(self):
        """Section modulus of all plies [mm3]."""
        return rectangle_section_modulus(width=self.width, depth=self.depth)

    @property
    def inertia(self):
        """Moment of inertia of all plies [mm4]."""
        return rectangle_inertia(width=self.width, depth=self.depth)

    def weight_per_length(self, weight_density):
        """Own weight as a line load.

        Parameters
        ----------
        weight_density : float
            Weight of the wood or other material; 0 to 1000 lb/ft3 [N/mm3].

        Returns
        -------
        float
            Own weight [N/mm].

        Examples
        --------
        >>> from structlib.ground.units import inch
        >>> from structlib.ground.units import pcf, plf
        >>> round(Section(ply_width=1.75*inch, depth=9.25*inch).weight_per_length(42*pcf) / plf, 2)
        4.72
        """
        check_number(
            "weight density",
            weight_density,
            low=0,
            high=1.6e-4,
            shown=lambda value: show(value, "weight density"),
            hint="for example 34*pcf",
        )
        return self.area * weight_density
