"""From layers to an area load, from a slope to plan, from an area to a line, with load types kept apart."""

from collections.abc import Mapping
from dataclasses import dataclass

from structlib.ground.records import measured
from structlib.ground.refusals import BadInput, check_choice, check_number, refuse_list
from structlib.ground.roots import square_root
from structlib.ground.showing import show
from structlib.ground.units import ft, pcf, psf

LOAD_TYPES = ("dead", "live", "roof live", "snow")

_LONGEST = 200 * ft


def _area_load(name, value):
    return check_number(
        name, value, low=0, high=5000 * psf, shown=lambda load: show(load, "area load"), hint="for example 10*psf"
    )


def _length(name, value, *, zero=True):
    refuse_list(name, value)
    return check_number(
        name,
        value,
        low=0,
        high=_LONGEST,
        low_allowed=zero,
        shown=lambda length: show(length, "length"),
        hint="for example 12*ft",
    )


@dataclass(frozen=True)
class Layer:
    """One layer of a floor, wall, ceiling or roof.

    Parameters
    ----------
    name : str
        What it is, in the reader's words [-].
    area_load : float
        Its weight on the area it covers; 0 to 5000 psf [MPa].
    source : str
        Where the weight comes from [-].
    verified : str
        How it is known [-].

    Examples
    --------
    >>> Layer("plaster on wood lath", 8*psf).name
    'plaster on wood lath'
    """

    name: str = measured("text", "layer")
    area_load: float = measured("area load", "weight on the area it covers")
    source: str = measured("text", "where the weight comes from", default="")
    verified: str = measured("text", "how it is known", default="")

    def __post_init__(self):
        if not isinstance(self.name, str) or not self.name.strip():
            raise BadInput(f"a layer needs a name, got {self.name!r}; for example 'plaster on wood lath'")
        _area_load(f"weight of {self.name}", self.area_load)


class Layers(tuple):
    """Layers on one another, all of them dead load on the same area.

    Parameters
    ----------
    layers : iterable of Layer
        The layers [-].

    Examples
    --------
    >>> floor = Layers([Layer("two wood floors", 6*psf), Layer("plaster on wood lath", 8*psf)])
    >>> round(floor.area_load / psf, 6)
    14.0
    """

    __slots__ = ()

    def __new__(cls, layers):
        try:
            found = tuple(layers)
        except TypeError:
            found = (layers,)
        for layer in found:
            if not isinstance(layer, Layer):
                raise BadInput(
                    f"layers must be a list of Layer, got {type(layer).__name__}; "
                    f"for example Layers([Layer('subfloor', 3*psf)])"
                )
        if not found:
            raise BadInput("layers must hold at least one Layer, got an empty list")
        return super().__new__(cls, found)

    @property
    def area_load(self):
        """Weight of all layers on their area [MPa]."""
        return sum(layer.area_load for layer in self)


def sheet_load(*, thickness, weight_density):
    """Weight on its area of a sheet, board or plank layer of one thickness.

    Parameters
    ----------
    thickness : float
        Thickness, 0 to 10 ft [mm].
    weight_density : float
        Weight of the material, 0 to 1000 lb/ft3 [N/mm3].

    Returns
    -------
    float
        Area load [MPa].

    Examples
    --------
    >>> from structlib.ground.units import inch
    >>> round(sheet_load(thickness=1.5*inch, weight_density=50*pcf) / psf, 4)
    6.25
    """
    check_number(
        "thickness",
        thickness,
        low=0,
        high=10 * ft,
        shown=lambda length: show(length, "section length"),
        hint="for example 0.75*inch",
    )
    check_number(
        "weight density",
        weight_density,
        low=0,
        high=1000 * pcf,
        shown=lambda weight: show(weight, "weight density"),
        hint="for example 34*pcf",
    )
    return thickness * weight_density


def slope_to_plan(area_load, *, rise, run=12):
    """Turn a dead load on the slope of a roof into the load on plan: divide by the cosine.

    Snow and roof live load are on plan already and do not come through here.

    Parameters
    ----------
    area_load : float
        Load on the area of the slope; 0 to 5000 psf [MPa].
    rise : float
        Rise of the roof in ``run``, 0 to 60 [same unit as run].
    run : float
        Run of the roof, more than 0 to 60 [same unit as rise].

    Returns
    -------
    float
        Load on the area in plan [MPa].

    Examples
    --------
    >>> round(slope_to_plan(12.8*psf, rise=6) / psf, 2)
    14.31
    """
    return _area_load("area load", area_load) * _slope_length(rise, run) / run


def slope_parts(area_load, *, rise, run=12):
    """Split a vertical load on a slope into the part along the slope and the part square to it.

    Parameters
    ----------
    area_load : float
        Vertical load on the area of the slope; 0 to 5000 psf [MPa].
    rise : float
        Rise of the roof in ``run``, 0 to 60 [same unit as run].
    run : float
        Run of the roof, more than 0 to 60 [same unit as rise].

    Returns
    -------
    tuple of float
        Load along the slope and load square to it, both on the area of the slope [MPa].

    Examples
    --------
    >>> along, square = slope_parts(6.25*psf, rise=1, run=3**0.5)
    >>> round(along / psf, 3), round(square / psf, 2)
    (3.125, 5.41)
    """
    length = _slope_length(rise, run)
    _area_load("area load", area_load)
    return area_load * rise / length, area_load * run / length


def _slope_length(rise, run):
    hint = "for example rise 6 in run 12"
    check_number("rise", rise, low=0, high=60, hint=hint)
    check_number("run", run, low=0, high=60, low_allowed=False, hint=hint)
    return square_root(rise**2 + run**2)


def tributary_width_cut(*, left_span, right_span=0):
    """Width of floor that a beam carries where the joists are cut over it: half of each span.

    Parameters
    ----------
    left_span : float
        Joist span on one side, 0 to 200 ft [mm].
    right_span : float
        Joist span on the other side, 0 to 200 ft; 0 where there is none [mm].

    Returns
    -------
    float
        Tributary width [mm].

    Examples
    --------
    >>> round(tributary_width_cut(left_span=14*ft, right_span=10*ft) / ft, 6)
    12.0
    """
    return (_length("left span", left_span) + _length("right span", right_span)) / 2


def tributary_width_wall(*, span, overhang=0, far_overhang=None):
    """Width of roof or floor that an end wall or header carries, with what hangs out beyond it.

    With the same overhang at both ends it is half the span plus the overhang. In general it is
    ((span + overhang)^2 - far_overhang^2) / (2 span), by moments about the far support.

    Parameters
    ----------
    span : float
        Span between the supports in plan, more than 0 to 200 ft [mm].
    overhang : float
        Overhang in plan beyond this wall, 0 to 200 ft [mm].
    far_overhang : float
        Overhang in plan beyond the far support; None for the same as here [mm].

    Returns
    -------
    float
        Tributary width [mm].

    Examples
    --------
    >>> round(tributary_width_wall(span=12*ft, overhang=1*ft) / ft, 6)
    7.0
    >>> round(tributary_width_wall(span=12*ft, overhang=3*ft, far_overhang=0) / ft, 6)
    9.375
    """
    _length("span", span, zero=False)
    _length("overhang", overhang)
    far_overhang = overhang if far_overhang is None else _length("far overhang", far_overhang)
    return ((span + overhang) ** 2 - far_overhang**2) / (2 * span)


def middle_width_two_equal_spans(*, span):
    """Width of floor that the middle beam carries under joists that run on over it, two equal spans.

    It is 5/4 of the span: a quarter more than the half-and-half share. Unequal spans need the solver.

    Parameters
    ----------
    span : float
        Either span, more than 0 to 200 ft [mm].

    Returns
    -------
    float
        Width that the middle beam carries [mm].

    Examples
    --------
    >>> round(middle_width_two_equal_spans(span=12*ft) / ft, 6)
    15.0
    """
    return 5 * _length("span", span, zero=False) / 4


def tributary_area(*, length, width):
    """Area of floor or roof that a member carries.

    Parameters
    ----------
    length : float
        Length of the member, 0 to 200 ft [mm].
    width : float
        Its tributary width, 0 to 200 ft [mm].

    Returns
    -------
    float
        Tributary area [mm2].

    Examples
    --------
    >>> round(tributary_area(length=20*ft, width=10*ft) / ft**2, 6)
    200.0
    """
    return _length("length", length) * _length("width", width)


def line_load(area_load, *, tributary_width):
    """Load per length on a member from the area load on its tributary width (or joist spacing).

    Parameters
    ----------
    area_load : float
        Area load, 0 to 5000 psf [MPa].
    tributary_width : float
        Tributary width or spacing, 0 to 200 ft [mm].

    Returns
    -------
    float
        Line load [N/mm].

    Examples
    --------
    >>> from structlib.ground.units import plf
    >>> round(line_load(50*psf, tributary_width=9*ft) / plf, 6)
    450.0
    """
    return _area_load("area load", area_load) * _length("tributary width", tributary_width)


class LoadsByType(Mapping):
    """One value for each load type, kept apart until a rulebook combines them with its own factors.

    All four types are always there; one that is not given is 0. It cannot be changed once made.

    Parameters
    ----------
    values : mapping
        Load types (``dead``, ``live``, ``roof live``, ``snow``) with their values, all in one unit [any].

    Examples
    --------
    >>> floor = LoadsByType({"dead": 10, "live": 40})
    >>> dict(floor + LoadsByType({"snow": 30}))
    {'dead': 10.0, 'live': 40.0, 'roof live': 0.0, 'snow': 30.0}
    >>> floor.scale(2)["live"]
    80
    """

    __slots__ = ("_values",)

    def __init__(self, values=()):
        try:
            given = dict(values)
        except (TypeError, ValueError):
            raise BadInput(
                f"loads by type must be a mapping, got {type(values).__name__}; "
                "for example LoadsByType({'dead': 10*psf, 'live': 40*psf})"
            ) from None
        for kind, value in given.items():
            if kind not in LOAD_TYPES:
                check_choice("load type", kind, LOAD_TYPES)
            check_number(f"{kind} load", value, low=-1e15, high=1e15)
        object.__setattr__(self, "_values", {kind: given.get(kind, 0.0) for kind in LOAD_TYPES})

    def __setattr__(self, name, value):
        raise AttributeError("loads by type cannot be changed; make new ones")

    def __getitem__(self, kind):
        return self._values[check_choice("load type", kind, self._values)]

    def __contains__(self, kind):
        return kind in LOAD_TYPES

    def __iter__(self):
        return iter(LOAD_TYPES)

    def __len__(self):
        return len(LOAD_TYPES)

    def __repr__(self):
        return f"LoadsByType({self._values})"

    def __reduce__(self):
        return LoadsByType, (dict(self._values),)

    def __add__(self, other):
        if not isinstance(other, LoadsByType):
            return NotImplemented
        return LoadsByType({kind: self[kind] + other[kind] for kind in LOAD_TYPES})

    def __radd__(self, other):
        # lets sum() add a list of these, which starts at the number 0
        return self if isinstance(other, int) and other == 0 else NotImplemented

    def scale(self, factor):
        """Multiply every type by the same number.

        Parameters
        ----------
        factor : float
            The number, for example a share or a length [any].

        Returns
        -------
        LoadsByType
            The scaled loads [unit of the values times unit of factor].

        Examples
        --------
        >>> LoadsByType({"dead": 10}).scale(0.5)["dead"]
        5.0
        """
        check_number("factor", factor, low=-1e15, high=1e15)
        return self.map(lambda value: value * factor)

    def map(self, function):
        """Do the same to the value of every type, for example turn area loads into line loads.

        Parameters
        ----------
        function : callable
            Takes one value and gives one value [-].

        Returns
        -------
        LoadsByType
            The new loads [as the function gives].

        Examples
        --------
        >>> from structlib.ground.units import plf
        >>> from structlib.ground.units import inch
        >>> floor = LoadsByType({"dead": 10*psf, "live": 40*psf})
        >>> joist = floor.map(lambda load: line_load(load, tributary_width=16*inch))
        >>> round(joist["live"] / plf, 2)
        53.33
        """
        return LoadsByType({kind: function(self[kind]) for kind in LOAD_TYPES})

    def sum_for_equilibrium_only(self):
        """Add up all types, to check that what goes in comes out; no member is checked with this sum.

        Returns
        -------
        float
            The sum of all types [unit of the values].

        Examples
        --------
        >>> LoadsByType({"dead": 10, "live": 40}).sum_for_equilibrium_only()
        50.0
        """
        return sum(self._values.values())
