"""What a bench can be asked to change, described without any widget."""

from abc import ABC, abstractmethod
from dataclasses import dataclass
from typing import Any

from structlib.ground.reading import read
from structlib.ground.refusals import BadInput, check_choice, check_number
from structlib.ground.showing import show


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
        check_number(
            self.label.lower(),
            value,
            low=self.low,
            high=self.high,
            shown=lambda v: show(v, self.dimension, system),
            hint=self.hint or f"for example {show(self.default, self.dimension, system)}",
        )
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
        return self.checked(value, system)

    def checked(self, value, system):
        """Take the nearest listed value; refuse what is far outside the list."""
        shown = lambda v: show(v, self.dimension, system)  # noqa: E731
        check_number(
            self.label.lower(),
            value,
            low=0.5 * self.values[0],
            high=1.5 * self.values[-1],
            shown=shown,
            hint=f"for example {shown(self.default)}",
        )
        return self.nearest(value)

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
        return check_choice(self.label.lower(), value, [listed for _, listed in self.options])


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
        return check_number(
            self.label.lower(),
            value,
            low=self.low,
            high=self.high,
            shown=lambda v: show(v, self.dimension, system),
            hint=f"for example {show(self.default, self.dimension, system)}",
        )


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
    which stand first on the page.
    """

    scene: Any
    head: tuple[str, ...]
    rows: tuple[tuple[str, ...], ...]
    notes: tuple[str, ...] = ()
    gates: tuple[str, ...] = ()


class Page(ABC):
    """What every page offers: what can be moved, and what it shows for one set of values. Both are pure.

    Parameters
    ----------
    system : str
        Units of the reader: 'us' or 'metric' [-].
    """

    def __init__(self, system="us"):
        self.system = system

    @abstractmethod
    def controls(self, values):
        """Describe what can be moved: span, depth and plies first.

        Parameters
        ----------
        values : dict
            Current values; what is offered may follow them [any].

        Returns
        -------
        tuple
            Controls in the order in which they stand on the page [-].
        """

    @abstractmethod
    def compute(self, values, before=None, frame="page"):
        """Answer one set of values: the picture, its numbers as rows of text, notes and gates.

        Parameters
        ----------
        values : dict
            Values of the controls [any].
        before : dict or None
            The values before the last change, drawn as a ghost; the rows do not depend on them [any].
        frame : str
            Shape of the picture: 'page', 'wide' (16:9) or 'tall' (9:16) [-].

        Returns
        -------
        Shown
            What the page shows; where a gate stands, no verdict does [-].

        Raises
        ------
        BadInput
            When a value makes no sense; the bench shows the sentence.
        OutsideRule
            When a rule does not cover the case.
        """


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
