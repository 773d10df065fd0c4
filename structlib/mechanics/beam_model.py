"""A beam as plain records: what holds it, what loads it, what it is made of. Every record checks itself."""

from copy import copy
from dataclasses import dataclass

from structlib.ground.refusals import BadInput, check_choice, check_number, is_symbolic
from structlib.ground.units import ft

SHORTEST = 1.0  # mm; anything shorter was written in another unit
LONGEST = 60_000.0  # mm; longer than any beam of a house, and than the slip of feet for inches
SAME_SPOT = 1e-6  # mm; places closer than this differ by the rounding of feet and inches only
GREATEST_LOAD = 1e12  # N, N/mm or N*mm; a guard against nonsense
GREATEST_STIFFNESS = 1e20  # N*mm^2 or N/mm

SUPPORT_KINDS = ("pinned", "fixed", "spring")


def length_text(value):
    """A length as a reader knows it, for messages.

    Parameters
    ----------
    value : float
        The length [mm].

    Returns
    -------
    str
        The length in mm, or in metres and feet from 1 m on [-].

    Examples
    --------
    >>> length_text(3657.6)
    '3.6576 m (12 ft)'
    """
    if abs(value) < 1000:
        return f"{value:.6g} mm"
    return f"{value / 1000:.6g} m ({value / ft:.4g} ft)"


@dataclass(frozen=True)
class Support:
    """What holds a beam at one place.

    Parameters
    ----------
    position : float
        Distance from the left end of the beam [mm].
    kind : str
        'pinned' (stops sinking), 'fixed' (stops sinking and turning) or 'spring' (gives under load) [-].
    stiffness : float or None
        For a spring, the force that sinks it by 1 mm [N/mm].
    settlement : float
        How far the support has sunk, downward positive [mm].
    can_lift : bool
        True where the beam only rests on the support, so that it can push but never pull [-].

    Examples
    --------
    >>> Support(3600.0, kind="spring", stiffness=500.0).stiffness
    500.0
    """

    position: float
    kind: str = "pinned"
    stiffness: float | None = None
    settlement: float = 0.0
    can_lift: bool = False

    def __post_init__(self):
        _check_place(self, "position", "support position")
        if not isinstance(self.kind, str) or self.kind not in SUPPORT_KINDS:
            check_choice("support kind", self.kind, SUPPORT_KINDS)
        if type(self.settlement) is not float or self.settlement:
            settlement = _one_number("settlement", self.settlement, -LONGEST, LONGEST, "mm")
            object.__setattr__(self, "settlement", settlement)
        if self.kind == "spring":
            hint = "a spring support needs its stiffness, for example stiffness=500*lb/inch"
            stiffness = _one_number(
                "spring stiffness", self.stiffness, 0, GREATEST_STIFFNESS, "N/mm", hint, low_allowed=False
            )
            object.__setattr__(self, "stiffness", stiffness)
        elif self.stiffness is not None:
            raise BadInput(f"only a spring has a stiffness, got a {self.kind} support; try kind='spring'")
        if self.can_lift is not False:
            if self.can_lift is not True:
                raise BadInput(f"can_lift must be True or False, got {self.can_lift!r}")
            if self.kind == "fixed":
                raise BadInput("a fixed support cannot lift, because it is built in; try kind='pinned'")


@dataclass(frozen=True)
class PointLoad:
    """A load at one place, such as a post standing on the beam.

    Parameters
    ----------
    position : float
        Distance from the left end of the beam [mm].
    force : float
        The load, downward positive [N].

    Examples
    --------
    >>> PointLoad(1800.0, 5000.0).force
    5000.0
    """

    position: float
    force: float

    def __post_init__(self):
        _check_place(self, "position", "load position")
        _check_load(self, "force", "N")


@dataclass(frozen=True)
class Couple:
    """A turning effect at one place, which steps the moment diagram up by its amount.

    Parameters
    ----------
    position : float
        Distance from the left end of the beam [mm].
    moment : float
        The step, upward positive [N*mm].

    Examples
    --------
    >>> Couple(1800.0, 2e6).moment
    2000000.0
    """

    position: float
    moment: float

    def __post_init__(self):
        _check_place(self, "position", "couple position")
        _check_load(self, "moment", "N*mm")


@dataclass(frozen=True)
class LineLoad:
    """A load spread over a stretch, even or changing steadily from one end to the other.

    Parameters
    ----------
    start : float
        Where the load begins, from the left end of the beam [mm].
    end : float
        Where the load ends, from the left end of the beam [mm].
    intensity : float
        The load per length (at the start when it changes), downward positive [N/mm].
    end_intensity : float or None
        The load per length at the end, when it differs from the start [N/mm].

    Examples
    --------
    >>> LineLoad(0.0, 3600.0, 7.0).intensity
    7.0
    """

    start: float
    end: float
    intensity: float
    end_intensity: float | None = None

    def __post_init__(self):
        _check_place(self, "start", "start of the load")
        _check_place(self, "end", "end of the load")
        _check_load(self, "intensity", "N/mm")
        if self.end_intensity is not None:
            _check_load(self, "end_intensity", "N/mm")
        if self.end - self.start <= SAME_SPOT:
            where = f"from {length_text(self.start)} to {length_text(self.end)}"
            raise BadInput(f"a line load must end to the right of its start, got {where}; try a PointLoad")


@dataclass(frozen=True)
class Beam:
    """A straight beam: its length, its stiffness, what holds it and what loads it.

    Ends without a support are free, so an overhang or a cantilever needs nothing special.

    Parameters
    ----------
    length : float
        Length from end to end, 1 mm to 60 m [mm].
    bending_stiffness : float or tuple of (float, float)
        EI of the whole beam, or (end position, EI) of each stretch from left to right [N*mm^2].
    supports : tuple of Support
        What holds the beam, in any order [-].
    loads : tuple of PointLoad, Couple or LineLoad
        What loads the beam, in any order [-].
    hinges : tuple of float
        Places where the beam is joined without stiffness, such as a splice [mm].
    shear_stiffness : float or None
        G times the shear area of the whole beam; None where shear makes no sag of its own [N].

    Examples
    --------
    >>> beam = Beam(4000.0, 2e12, [Support(0.0), Support(4000.0)], [LineLoad(0.0, 4000.0, 5.0)])
    >>> len(beam.supports)
    2
    """

    length: float
    bending_stiffness: float | tuple
    supports: tuple
    loads: tuple = ()
    hinges: tuple = ()
    shear_stiffness: float | None = None

    def __post_init__(self):
        length = self.length
        if not (type(length) is float and SHORTEST <= length <= LONGEST):
            hint = "did you mean inches?" if _is_more(length, LONGEST) else "for example 12*ft or 3600.0"
            length = _one_number("beam length", length, SHORTEST, LONGEST, length_text, hint)
            object.__setattr__(self, "length", length)
        ei = self.bending_stiffness
        if not (type(ei) is float and 0 < ei <= GREATEST_STIFFNESS):
            object.__setattr__(self, "bending_stiffness", _checked_stiffness(ei, length))
        for name, kinds, example in (
            ("supports", (Support,), "[Support(0.0), Support(3600.0)]"),
            ("loads", (PointLoad, Couple, LineLoad), "[LineLoad(0.0, 3600.0, 7.0)]"),
        ):
            object.__setattr__(self, name, _checked_tuple(name, getattr(self, name), kinds, example))
        _check_on_beam(self.supports, self.loads, length)
        if type(self.hinges) is not tuple or self.hinges:
            object.__setattr__(self, "hinges", _checked_hinges(self.hinges, self))
        if self.shear_stiffness is not None:
            hint = "for example shear modulus * 5/6 of the area; None for bending alone"
            limits = (0, GREATEST_STIFFNESS, "N", hint, False)
            stiffness = _one_number("shear stiffness", self.shear_stiffness, *limits)
            object.__setattr__(self, "shear_stiffness", stiffness)

    def stiffness_pieces(self):
        """Stretches of equal stiffness from left to right.

        Returns
        -------
        tuple of (float, float)
            Where each stretch ends and its EI [mm, N*mm^2].

        Examples
        --------
        >>> Beam(4000.0, 2e12, [Support(0.0, kind="fixed")]).stiffness_pieces()
        ((4000.0, 2000000000000.0),)
        """
        if isinstance(self.bending_stiffness, tuple):
            return self.bending_stiffness
        return ((self.length, self.bending_stiffness),)

    def under(self, loads):
        """Return the same beam under some of its loads, or under them times a factor: they lie on it, and it is as it was.

        Parameters
        ----------
        loads : tuple of PointLoad, Couple or LineLoad
            The loads, at places of loads that the beam was made with [-].

        Returns
        -------
        Beam
            The beam [-].

        Examples
        --------
        >>> beam = Beam(4000.0, 2e12, [Support(0.0), Support(4000.0)], [PointLoad(900.0, 5.0)])
        >>> beam.under((PointLoad(900.0, 7.0),)).loads[0].force
        7.0
        """
        same = copy(self)
        object.__setattr__(same, "loads", loads)
        return same


def _check_place(record, field, name):
    value = getattr(record, field)
    if type(value) is float and 0.0 <= value <= LONGEST:
        return
    hint = "positions run in mm from the left end of the beam"
    object.__setattr__(record, field, _one_number(name, value, 0.0, LONGEST, length_text, hint))


def _check_load(record, field, unit):
    value = getattr(record, field)
    if type(value) is float and -GREATEST_LOAD <= value <= GREATEST_LOAD:
        return
    name = field.replace("_", " ")
    hint = "downward is positive, for example 40*psf * 16*inch"
    object.__setattr__(record, field, _one_number(name, value, -GREATEST_LOAD, GREATEST_LOAD, unit, hint))


def _one_number(name, value, low, high, unit, hint="", low_allowed=True):
    """The value as a plain float, or a refusal; arrays and symbols have no place in a single beam."""
    if is_symbolic(value):
        if value.free_symbols:
            raise BadInput(f"{name} must be a number, got the symbol {value}; mechanics.formulas takes symbols")
        value = float(value)
    if isinstance(value, (list, tuple, dict, set)) or getattr(value, "ndim", 0):
        raise BadInput(f"{name} must be one number, got {type(value).__name__}; batch.py takes many beams")
    shown = unit if callable(unit) else lambda number: f"{number:g} {unit}"
    limits = {"low": low, "high": high, "low_allowed": low_allowed}
    return float(check_number(name, value, **limits, shown=shown, hint=hint))


def _is_more(value, limit):
    return isinstance(value, (int, float)) and value > limit


def _checked_stiffness(value, length):
    hint = "for example modulus * inertia in MPa and mm^4"
    if not isinstance(value, (list, tuple)):
        limits = (0, GREATEST_STIFFNESS, "N*mm^2", hint, False)
        return _one_number("bending stiffness", value, *limits)
    pieces, start = [], 0.0
    for piece in value:
        if not isinstance(piece, (list, tuple)) or len(piece) != 2:
            raise BadInput(f"stiffness pieces are pairs (end position, EI), got {piece!r}")
        end = _one_number("end of a stiffness piece", piece[0], 0, LONGEST, length_text)
        ei = _one_number("bending stiffness", piece[1], 0, GREATEST_STIFFNESS, "N*mm^2", hint, False)
        if end - start <= SAME_SPOT:
            raise BadInput(f"stiffness pieces must run from left to right, got an end at {length_text(end)}")
        pieces.append((end, ei))
        start = end
    if abs(start - length) > SAME_SPOT:
        ends = f"got {length_text(start)} on a beam of {length_text(length)}"
        raise BadInput(f"the last stiffness piece must end where the beam ends, {ends}")
    pieces[-1] = (length, pieces[-1][1])
    return tuple(pieces)


def _checked_tuple(name, items, kinds, example):
    if not isinstance(items, (list, tuple)):
        raise BadInput(f"{name} must be a list, got {type(items).__name__}; for example {example}")
    for item in items:
        if type(item) not in kinds:
            accepted = ", ".join(kind.__name__ for kind in kinds)
            raise BadInput(f"{name} may hold {accepted}, got {type(item).__name__}; for example {example}")
    return tuple(items)


def _check_on_beam(supports, loads, length):
    limit = length + SAME_SPOT
    for load in loads:
        right = load.end if type(load) is LineLoad else load.position
        if right > limit:
            _refuse_off_beam(f"a {type(load).__name__}", right, length)
    for i, support in enumerate(supports):
        if support.position > limit:
            _refuse_off_beam("a Support", support.position, length)
        for other in supports[:i]:
            if abs(other.position - support.position) <= SAME_SPOT:
                where = length_text(support.position)
                raise BadInput(f"two supports stand at the same spot, {where}; keep one of them")


def _refuse_off_beam(what, place, length):
    reach = f"reaches {length_text(place)} on a beam of {length_text(length)}"
    raise BadInput(f"{what} {reach}; positions run from the left end of the beam")


def _checked_hinges(hinges, beam):
    length = beam.length
    if not isinstance(hinges, (list, tuple)):
        got = type(hinges).__name__
        raise BadInput(f"hinges must be a list of positions, got {got}; for example [2400.0]")
    hint = "positions run in mm from the left end of the beam"
    places = sorted(_one_number("hinge position", h, 0, LONGEST, length_text, hint) for h in hinges)
    for i, place in enumerate(places):
        if not SAME_SPOT < place < length - SAME_SPOT:
            where = f"got {length_text(place)} on a beam of {length_text(length)}"
            raise BadInput(f"a hinge must lie between the ends of the beam, {where}; an end is free anyway")
        if i and place - places[i - 1] <= SAME_SPOT:
            raise BadInput(f"two hinges lie at the same spot, {length_text(place)}; keep one of them")
        for load in beam.loads:
            if type(load) is Couple and abs(load.position - place) <= SAME_SPOT:
                where = length_text(place)
                raise BadInput(f"a couple cannot act on a hinge, at {where}; move it to one side of it")
        for support in beam.supports:
            if support.kind == "fixed" and abs(support.position - place) <= SAME_SPOT:
                where = length_text(place)
                raise BadInput(f"a hinge undoes the fixed support at {where}; try kind='pinned' without it")
    return tuple(places)
