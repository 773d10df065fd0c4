"""What a beam of a house may be made of beside plain wood, a flitch or a rolled steel shape; and the tie and board of a roof."""

from dataclasses import dataclass

from structlib.ground.refusals import BadInput
from structlib.ground.units import ft, inch
from structlib.house.fields import Record, of


@dataclass(frozen=True, kw_only=True)
class Board(Record):
    """A ridge board, which rafters lean on and which carries nothing: its dressed size [mm]."""

    thickness: float = of("section length", '"3/4 in"', low=0.5 * inch, high=8 * inch)
    depth: float = of("section length", '"9 1/4 in"', low=3 * inch, high=24 * inch)


@dataclass(frozen=True, kw_only=True)
class Tie(Record):
    """What ties a pair of rafters: its wood and plies, its height as a share of the rise, and every how much [mm].

    ``spacing`` is that of the rafters where it is not written.
    """

    species: str = of("text", '"Hem-Fir"')
    grade: str = of("text", '"No.2"')
    size: str = of("text", '"2x6"')
    plies: int = of("count", "1", low=1, high=4, default=1)
    height: float = of("ratio", '"25 %"', high=0.8, default=0.0)
    spacing: float | None = of("section length", '"16 in"', low=4 * inch, high=48 * inch, default=None)


@dataclass(frozen=True, kw_only=True)
class FlitchBeam(Record):
    """A flitch beam: wood plies, half on each side of a steel plate, and the bolts through all of it. Lengths in mm.

    ``plate_bears`` is a plate that stands on a steel seat of its own; else the end bolts bring its load to the wood.
    """

    species: str = of("text", '"Hem-Fir"')
    grade: str = of("text", '"No.2"')
    size: str = of("text", '"2x10"')
    plies: int = of("count", "2", low=2, high=6, default=2)
    thickness: float = of("section length", '"1/2 in"', low=inch / 8, high=2 * inch)
    depth: float = of("section length", '"9 in"', low=0.5 * inch, high=24 * inch)
    bolts: float = of("section length", '"1/2 in"', low=0.25 * inch, high=1 * inch)
    plate_bears: bool = of("yes or no", "true", default=False)


@dataclass(frozen=True, kw_only=True)
class SteelBeam(Record):
    """A rolled steel beam by its listed name, and how far apart its upper flange is held sideways, 0 all along [mm].

    Joists on a flange hold it only where they are fastened to it, so that distance is always written.
    """

    shape: str = of("text", '"W8x18"')
    braced: float = of("length", '"4 ft"', high=40 * ft)


class MadeOf:
    """What a beam is made of: wood, a flitch or steel, each in a field of its own."""

    _WORDS = ("wood", "flitch", "steel")

    @property
    def chosen(self):
        """The one that is written; None where nothing is chosen yet."""
        return next((getattr(self, word) for word in self._WORDS if getattr(self, word) is not None), None)

    @property
    def chosen_in(self):
        """The fields that are written [-]."""
        return tuple(word for word in self._WORDS if getattr(self, word) is not None)


def refuse_two_choices(beams):
    """Refuse a beam that is written as two things at once.

    Parameters
    ----------
    beams : iterable of MadeOf
        Beams and openings of a house [-].

    Examples
    --------
    >>> refuse_two_choices(())
    """
    for one in beams:
        if len(one.chosen_in) > 1:
            fault = BadInput(f"{one.name} is written as {' and as '.join(one.chosen_in)}; leave one of them")
            raise fault.about(one.name, one.chosen_in[1])
