"""What a bench can be asked to change, described without any widget."""

import math
from abc import ABC, abstractmethod
from dataclasses import dataclass, field
from typing import Any

from structlib.ground.reading import read
from structlib.ground.refusals import BadInput, check_choice
from structlib.ground.showing import show
from structlib.house.inputs import check_one_number, check_record
from structlib.pages.kit.verdict import weakest


@dataclass(frozen=True)
class Slide:
    """A slider over an even range, with a typed box. Values in the library's own units."""

    name: str
    label: str
    dimension: str
    low: float
    high: float
    step: float
    default: float
    hint: str = ""

    def text(self, value, system):
        """Write a value as the typed box shows it."""
        return show(value, self.dimension, system)

    def value(self, text, system):
        """Read the typed box; refuse what is out of range."""
        if self.dimension == "count":
            value = _whole_number(self.label, text)
        else:
            value = read(text, self.dimension)
        return self.checked(value, system)

    def checked(self, value, system):
        """Refuse a value that is out of range."""
        value = _in_range(self, value, system)
        return _whole_number(self.label, value) if self.dimension == "count" else value


@dataclass(frozen=True)
class Steps:
    """A slider over listed values, such as the depths a yard keeps, with a typed box that takes the nearest."""

    name: str
    label: str
    dimension: str
    values: tuple[float, ...]
    default: float

    def text(self, value, system):
        """Write a value as the typed box shows it."""
        return show(value, self.dimension, system)

    def value(self, text, system):
        """Read the typed box and take the nearest listed value; refuse what is far outside the list."""
        value = _whole_number(self.label, text) if self.dimension == "count" else read(text, self.dimension)
        return self.nearest(self._near_the_list(value, system))

    def checked(self, value, system):
        """Refuse a value that is not listed: a number given in a call is never changed unseen."""
        nearest = self.nearest(self._near_the_list(value, system))
        if not math.isclose(value, nearest, rel_tol=1e-6):
            got, offered = (show(v, self.dimension, system) for v in (value, nearest))
            raise BadInput(f"{self.label.lower()} {got} is not on the list; the nearest is {offered}")
        return nearest

    def _near_the_list(self, value, system):
        low, high = 0.5 * self.values[0], 1.5 * self.values[-1]
        return _in_range(self, value, system, low, high)

    def nearest(self, value):
        """Return the listed value nearest to one given."""
        return min(self.values, key=lambda listed: abs(listed - value))


@dataclass(frozen=True)
class Pick:
    """A choice from a list of (text, value)."""

    name: str
    label: str
    options: tuple[tuple[str, Any], ...]
    default: Any

    def checked(self, value, system):
        """Refuse what is not on the list."""

        def shown(listed):
            texts = [text for text, one in self.options if one == listed]
            return repr(listed) if isinstance(listed, str) else f"{listed:g} ({texts[0]})"

        return check_choice(self.label.lower(), value, [listed for _, listed in self.options], shown)


@dataclass(frozen=True)
class Box:
    """A typed box alone, for numbers that need no slider."""

    name: str
    label: str
    dimension: str
    low: float
    high: float
    default: float

    def text(self, value, system):
        """Write a value as the box shows it."""
        return show(value, self.dimension, system)

    def value(self, text, system):
        """Read the box; refuse what is out of range."""
        return self.checked(read(text, self.dimension), system)

    def checked(self, value, system):
        """Refuse a value that is out of range."""
        return _in_range(self, value, system)


@dataclass(frozen=True)
class Switch:
    """A yes or no."""

    name: str
    label: str
    default: bool

    def checked(self, value, system):
        """Refuse what is neither yes nor no."""
        if value is not True and value is not False:
            raise BadInput(f"{self.label.lower()} must be True or False, got {value!r}")
        return value


@dataclass(frozen=True)
class Shown:
    """What a page shows for one set of values: the picture, its numbers as rows of text, notes below it.

    ``rows`` are (what, value) or longer; ``head`` names the columns. ``gates`` are reasons to stop and call,
    which stand first on the page; ``questions`` are about what was entered, and withdraw the verdicts until
    they are answered. ``known`` lists all that was used, each with how well it is known, as
    `structlib.pages.kit.verdict.evidence` gives it.
    """

    scene: Any
    head: tuple[str, ...]
    rows: tuple[tuple[str, ...], ...]
    notes: tuple[str, ...] = ()
    gates: tuple[str, ...] = ()
    questions: tuple[str, ...] = ()
    known: tuple[tuple[str, str], ...] = field(kw_only=True)

    @property
    def evidence(self):
        """The sentence on the weakest evidence of all that the page used."""
        return weakest(self.known)


class Page(ABC):
    """What every page offers: what can be moved, and what it shows for one set of values. Both are pure."""

    def __init__(self, system="us"):
        self.system = system

    @abstractmethod
    def controls(self, values):
        """Describe what can be moved: span, depth and plies first."""

    @abstractmethod
    def compute(self, values, before=None, frame="page"):
        """Answer one set of values: the picture, its numbers as rows of text, notes and gates."""


def start_values(page, system=None, **changes):
    """Return the values with which a page starts, some of them changed; every one is checked here."""
    check_record("page", page, Page, "BeamPage()")
    system = page.system if system is None else check_choice("system", system, ("us", "metric"))
    controls = page.controls({})
    unknown = set(changes) - {control.name for control in controls}
    if unknown:
        names = ", ".join(control.name for control in controls)
        raise BadInput(f"this page has no control {sorted(unknown)[0]!r}; it has {names}")
    values = {}
    for control in controls:
        if not isinstance(control, Steps):
            values[control.name] = control.checked(changes.get(control.name, control.default), system)
    for control in page.controls(values):  # the depths listed may depend on the wood chosen
        if isinstance(control, Steps):
            start = changes.get(control.name, control.nearest(control.default))
            values[control.name] = control.checked(start, system)
    return {control.name: values[control.name] for control in controls}


def _in_range(control, value, system, low=None, high=None):
    """Return a single number within a control's range as a float."""
    low, high = (control.low, control.high) if low is None else (low, high)
    example = min(max(control.default, low), high)  # a default may come from a house

    def shown(one):
        plain = control.dimension == "count" or abs(one) > 1e12
        return f"{one:g}" if plain else show(one, control.dimension, system)

    hint = getattr(control, "hint", "") or f"for example {shown(example)}"
    check_one_number(control.label.lower(), value, low=low, high=high, shown=shown, hint=hint)
    return float(value)


def _whole_number(label, text):
    try:
        value = float(str(text).strip())
        whole = int(value)
    except (ValueError, OverflowError):  # no number, nan, or without end
        value, whole = None, 0
    if value != whole:
        got = repr(text) if len(str(text)) <= 20 else repr(str(text)[:20] + "...")
        raise BadInput(f"{label.lower()} must be a whole number, got {got}; for example 2")
    return whole
