"""What goes on inside a beam of a house: shear, moment and sag at any place, and their extremes within one span."""

from dataclasses import dataclass
from typing import Any, NamedTuple

from structlib.ground.loads import LOAD_TYPES
from structlib.ground.refusals import BadInput, check_choice
from structlib.ground.units import ft, lb  # noqa: F401 (used in the examples)
from structlib.house.pieces import piece_of
from structlib.house.plan import Opening, Wood
from structlib.house.running import clipped
from structlib.house.shares import along, text_of
from structlib.house.steps import seats_of
from structlib.mechanics.beam_extremes import Extremes, find_extremes
from structlib.mechanics.beams import Beam, LineLoad, PointLoad, Support, solve
from structlib.rules.check import BeamMember

_SAME = 1e-3  # mm


class Inside(NamedTuple):
    """Shear [N], moment [N*mm] and sag [mm] of a beam at one place; the sag is None where its wood is not chosen."""

    shear: float
    moment: float
    sag: float | None


@dataclass(frozen=True)
class BeamOfHouse:
    """A beam of a house, solved for its loads with a factor each; places run along the beam's own axis [mm]."""

    name: str
    solutions: tuple[tuple[float, Any], ...]
    spans: tuple[tuple[float, float], ...]
    stiff: bool

    def at(self, place):
        """Return what goes on at one place.

        Parameters
        ----------
        place : float
            Where, along the beam's axis; right of a jump [mm].

        Returns
        -------
        Inside
            Shear, moment and sag [N, N*mm, mm].
        """
        for start, solution in reversed(self.solutions):
            x = place - start
            if -_SAME <= x <= solution.beam.length + _SAME:
                x = min(max(x, 0.0), solution.beam.length)
                return Inside(solution.shear(x), solution.moment(x), solution.deflection(x) if self.stiff else None)
        first, last = self.solutions[0][0], self.solutions[-1][0] + self.solutions[-1][1].beam.length
        raise BadInput(f"{self.name} reaches from {text_of(first)} to {text_of(last)} along it, got {text_of(place)}")

    def within(self, number):
        """Return the extremes within one span.

        Parameters
        ----------
        number : int
            Which span, 1 for the first [-].

        Returns
        -------
        structlib.mechanics.beam_extremes.Extremes
            Greatest and least shear, moment, slope and sag, with their places along the beam's axis; without chosen wood
            slope and sag are those of an EI of 1 [N, N*mm, -, mm].
        """
        check_choice(f"span of {self.name}", number, range(1, len(self.spans) + 1))
        left, right = self.spans[number - 1]
        for start, solution in self.solutions:
            pieces = [
                one for one in solution.pieces if one.start + start >= left - _SAME and one.end + start <= right + _SAME
            ]
            if pieces:
                found = find_extremes(pieces)
                return Extremes._make(one._replace(position=one.position + start) for one in found)
        raise BadInput(f"nothing of {self.name} lies in its span {number}")


def inside(path, name, factors):
    """Solve one beam of a house, of dry wood, for its loads, each type with its factor, all of them everywhere.

    Parameters
    ----------
    path : structlib.house.path.Path
        The path [-].
    name : str
        A beam, or an opening with its beam [-].
    factors : dict of float, or structlib.rules.check.Combination
        Factor by type of load, such as {"dead": 1.0, "live": 1.0}, or a combination of a rulebook [-].

    Returns
    -------
    BeamOfHouse
        The beam, to be read at a place or within a span [-].

    Examples
    --------
    >>> from structlib.house.file import demo_house
    >>> from structlib.house.path import follow
    >>> beam = inside(follow(demo_house()), "main beam", {"dead": 1.0, "live": 1.0})
    >>> second = beam.within(2).greatest_moment
    >>> abs(beam.at(second.position).moment - second.value) < 1.0
    True
    """
    element = path.element(name)
    if not element.spans or element.kind != "beam":
        raise BadInput(f"{name} is no beam; name a beam, or an opening with its beam")
    if hasattr(factors, "factors"):
        factors = dict(factors.factors)
    for kind in factors:
        check_choice("type of load", kind, LOAD_TYPES)
    part, axis = element.part, path.axis(name)
    ends = seats_of(part) if isinstance(part, Opening) else (part.start, part.end)
    wood, stiffness, slides, last = part.chosen, 1.0, None, len(element.spans) - 1
    if isinstance(wood, Wood):  # without steel in it, and dry
        piece = piece_of(wood)
        member = BeamMember(piece.material, piece.ply_width, piece.depth, piece.plies, None, None, unbraced_length=0.0)
        stiffness, slides = member.bending_stiffness, member.shear_stiffness
    solutions = []
    for number, places in enumerate(element.spans):
        reach = (places[0] if number else ends[0], places[-1] if number < last else ends[1])
        over = (0.5 if number else 1.0, 0.5 if number < last else 1.0)
        loads = [
            load
            for share in (*element.received, *element.own)
            for row in clipped(share.source, share.amount, along(axis, share), reach, over)
            for load in _factored(row, factors)
        ]
        supports = tuple(Support(at - reach[0]) for at in places)
        solutions.append(
            (reach[0], solve(Beam(reach[1] - reach[0], stiffness, supports, tuple(loads), shear_stiffness=slides)))
        )
    spans = tuple(pair for places in element.spans for pair in zip(places, places[1:]))
    return BeamOfHouse(name, tuple(solutions), spans, isinstance(wood, Wood))


def _factored(row, factors):
    _, amounts, start, end = row
    amount = sum(factors.get(kind, 0.0) * one for kind, one in zip(LOAD_TYPES, amounts))
    if not amount:
        return []
    return [LineLoad(start, end, amount) if end - start > _SAME else PointLoad(start, amount)]
