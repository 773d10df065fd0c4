"""Load that comes and goes: every arrangement of it over the spans, and the most that each can ask.

Dead load is on the beam always. Live load may stand on any span and not on the next. With n groups of
load that come and go there are 2**n arrangements; all of them count, so nothing is left to a rule
of thumb such as 'every other span'.
"""

from dataclasses import dataclass, replace
from functools import cached_property
from itertools import product
from typing import NamedTuple

import numpy

from structlib.ground.refusals import BadInput
from structlib.mechanics.beam_extremes import find_extremes
from structlib.mechanics.beam_model import SAME_SPOT, Beam, LineLoad, PointLoad
from structlib.mechanics.beams import solve
from structlib.mechanics.beam_solution import Piece, Reaction, Solution

MOST_GROUPS = 8  # 256 arrangements; a beam of a house has three spans, two overhangs and a post or two


class Asked(NamedTuple):
    """The most, or the least, that any arrangement asks of one thing.

    Parameters
    ----------
    value : float
        Reaction, moment or deflection [N, N*mm or mm].
    position : float
        Where it is, from the left end of the beam [mm].
    on : tuple of bool
        Which groups of load are on the beam then [-].

    Examples
    --------
    >>> Asked(-900.0, 0.0, (False, True)).on
    (False, True)
    """

    value: float
    position: float
    on: tuple


@dataclass(frozen=True)
class Envelope:
    """Every arrangement of the load that comes and goes, and what they ask at most.

    What is always on the beam and each group alone are solved once; arrangements are their sums. At a place the worst
    one is told by the sign of what each group does there, so only arrangements that are worst somewhere are looked
    at. Where a support may lift off nothing adds up, and every arrangement is solved.

    Parameters
    ----------
    beam : structlib.mechanics.beams.Beam
        The beam with what is always on it [-].
    groups : tuple of tuple
        Loads that come and go, group by group [-].
    parts : tuple of structlib.mechanics.beams.Solution
        The beam under what is always on it, then under each group alone, all in the same pieces; empty where a support
        may lift off [-].

    Examples
    --------
    >>> from structlib.mechanics.beams import Beam, Support
    >>> supports = (Support(0.0), Support(4000.0), Support(8000.0))
    >>> empty = Beam(8000.0, 2e12, supports)
    >>> found = solve_arrangements(empty, span_loads(supports, 8000.0, 5.0))
    >>> len(found.cases)
    4
    """

    beam: Beam
    groups: tuple
    parts: tuple

    @property
    def cases(self):
        """Every arrangement: which groups are on, and the beam solved for them."""
        return tuple((on, self.case(on)) for on in arrangements(len(self.groups)))

    def case(self, on):
        """Give the solved beam of one arrangement.

        Parameters
        ----------
        on : tuple of bool
            Which groups are on [-].

        Returns
        -------
        structlib.mechanics.beams.Solution
            The solved beam [-].

        Raises
        ------
        BadInput
            When there is no such arrangement.
        """
        on = tuple(on)
        if on not in self._solved:
            if len(on) != len(self.groups) or not set(on) <= {True, False}:
                raise BadInput(
                    f"there is no arrangement {on!r}; each names {len(self.groups)} groups as True or False"
                )
            more = tuple(load for group, wanted in zip(self.groups, on) if wanted for load in group)
            beam = replace(self.beam, loads=self.beam.loads + more) if more else self.beam
            there = [part for part, wanted in zip(self.parts, (True, *on)) if wanted]
            self._solved[on] = superposed(beam, there) if there else solve(beam)
        return self._solved[on]

    @property
    def always(self):
        """The beam under what is always on it."""
        return self.case((False,) * len(self.groups))

    def greatest_reaction(self, support):
        """Give the most that one support pushes.

        Parameters
        ----------
        support : int
            Number of the support from the left, 0 first [-].

        Returns
        -------
        Asked
            Push, place, arrangement [N, mm, -].
        """
        return self._reaction(support, 1)

    def least_reaction(self, support):
        """Give the least that one support pushes; negative where the beam lifts.

        Parameters
        ----------
        support : int
            Number of the support from the left, 0 first [-].

        Returns
        -------
        Asked
            Push, place, arrangement [N, mm, -].
        """
        return self._reaction(support, -1)

    @cached_property
    def sagging(self):
        """The greatest moment that sags the beam; zero where none does."""
        return self._worst("moment", 1, lambda solution: solution.extremes.greatest_moment)

    @cached_property
    def hogging(self):
        """The greatest moment that bends the beam the other way, negative; zero where none does."""
        return self._worst("moment", -1, lambda solution: solution.extremes.least_moment)

    @property
    def drop(self):
        """The greatest deflection downward."""
        return self._worst("deflection", 1, lambda solution: solution.extremes.greatest_deflection)

    @property
    def rise(self):
        """The greatest deflection upward, negative; zero where nothing rises."""
        return self._worst("deflection", -1, lambda solution: solution.extremes.least_deflection)

    @cached_property
    def shear(self):
        """The greatest shear, whichever way it goes; its value has no sign."""
        rows = [[v for piece in part.pieces for v in (piece.shear, piece.end_shear)] for part in self.parts[1:]]
        effects = numpy.array(rows)
        found = []
        for on in {*self._patterns(effects, 1), *self._patterns(effects, -1)}:
            peak = self.case(on).extremes.shear
            found.append(Asked(abs(peak.value), peak.position, on))
        return _most(found, 1)

    def deflection_between(self, start, end):
        """Give the greatest deflection of one stretch, whichever way it goes.

        Parameters
        ----------
        start : float
            Left end of the stretch [mm].
        end : float
            Right end of the stretch [mm].

        Returns
        -------
        Asked
            Deflection, downward positive, its place and arrangement [mm, mm, -].

        Raises
        ------
        BadInput
            When nothing of the beam lies between the two places.
        """
        reach = (start, end)
        if not _inside(self.always, reach):
            raise BadInput(f"no stretch of the beam runs from {start:g} mm to {end:g} mm; see stretches()")

        def peaks(solution):
            return find_extremes(_inside(solution, reach))

        down = self._worst("deflection", 1, lambda solution: peaks(solution).greatest_deflection, reach)
        up = self._worst("deflection", -1, lambda solution: peaks(solution).least_deflection, reach)
        greatest = _most([down._replace(value=abs(down.value)), up._replace(value=abs(up.value))], 1)
        return up if abs(up.value) == greatest.value and up.on == greatest.on else down

    def moments(self, x):
        """Give the least and the greatest moment at places along the beam, over all arrangements.

        Parameters
        ----------
        x : numpy.ndarray
            Places from the left end [mm].

        Returns
        -------
        tuple of numpy.ndarray
            Least and greatest moment at each place [N*mm].
        """
        x = numpy.asarray(x, dtype=float)
        if not self.parts:
            rows = numpy.array([solution.moment(x) for _, solution in self.cases])
            return rows.min(axis=0), rows.max(axis=0)
        always, effects = self.parts[0].moment(x), self._effects("moment", x)
        return always + effects.clip(max=0.0).sum(axis=0), always + effects.clip(min=0.0).sum(axis=0)

    # ---- which arrangements can be the worst ----

    @cached_property
    def _solved(self):
        return {}

    @cached_property
    def _samples(self):
        """Places along the beam at which the groups are looked at: a row of them in every piece."""
        pieces = (self.parts[0] if self.parts else self.always).pieces
        return numpy.concatenate([piece.start + (piece.end - piece.start) * _ALONG for piece in pieces])

    def _effects(self, quantity, x):
        rows = [getattr(part, quantity)(x) for part in self.parts[1:]]
        return numpy.array(rows).reshape(len(self.groups), len(x))

    @cached_property
    def _sampled(self):
        return {name: self._effects(name, self._samples) for name in ("moment", "deflection")}

    def _patterns(self, effects, way):
        """Arrangements that are worst at one of several places, from what each group does there."""
        if not self.parts:
            return arrangements(len(self.groups))
        if not self.groups:
            return ((),)
        helps = way * effects > 1e-9 * numpy.abs(effects).max()
        return set(map(tuple, helps.T.tolist()))

    def _reaction(self, number, way):
        in_order = sorted(range(len(self.beam.supports)), key=lambda n: self.beam.supports[n].position)
        which = in_order[number]
        effects = numpy.array([[part.reactions[which].force] for part in self.parts[1:]])
        found = []
        for on in self._patterns(effects, way):
            push = self.case(on).reactions[which]
            found.append(Asked(push.force, push.position, on))
        return _most(found, way)

    def _worst(self, quantity, way, peak, reach=None):
        """The worst peak of all arrangements: of those that are worst somewhere, and of those worst where these peak."""
        effects = numpy.empty((0, 0))
        if self.parts and self.groups:
            effects = self._sampled[quantity]
            if reach is not None:
                effects = effects[:, (self._samples >= reach[0]) & (self._samples <= reach[1])]
        waiting, found = list(self._patterns(effects, way)), {}
        while waiting:
            on = waiting.pop()
            if on in found:
                continue
            extreme = peak(self.case(on))
            found[on] = Asked(extreme.value, extreme.position, on)
            if self.parts and self.groups:
                there = numpy.array([[getattr(part, quantity)(extreme.position)] for part in self.parts[1:]])
                waiting += self._patterns(there, way)
        return _most(list(found.values()), way)


#: Shares of a piece at which the groups are looked at.
_ALONG = numpy.linspace(0.03, 0.97, 9)


def _inside(solution, reach):
    return [piece for piece in solution.pieces
            if piece.start >= reach[0] - SAME_SPOT and piece.end <= reach[1] + SAME_SPOT]


def superposed(beam, parts, factors=None):
    """Add up solutions of one beam in the same pieces, each with its factor; true where no support lifts off.

    Parameters
    ----------
    beam : structlib.mechanics.beams.Beam
        The beam with the loads of the sum [-].
    parts : sequence of structlib.mechanics.beams.Solution
        The solutions [-].
    factors : sequence of float or None
        One a solution; 1 each when None [-].

    Returns
    -------
    structlib.mechanics.beams.Solution
        The sum [-].

    Examples
    --------
    >>> from structlib.mechanics.beams import Beam, PointLoad, Support
    >>> one = solve(Beam(4000.0, 2e12, (Support(0.0), Support(4000.0)), (PointLoad(1000.0, 800.0),)))
    >>> superposed(one.beam, [one, one], [1.0, 0.5]).moment(1000.0)
    900000.0
    """
    factors = [1.0] * len(parts) if factors is None else factors
    if len(parts) == 1 and factors[0] == 1.0:
        return Solution(beam, parts[0].reactions, parts[0].pieces)
    terms = list(zip(factors, parts))
    reactions = tuple(
        Reaction(same[0].position, sum(f * one.force for f, one in zip(factors, same)),
                 sum(f * one.moment for f, one in zip(factors, same)), False)
        for same in zip(*(part.reactions for part in parts))
    )
    table = sum(factor * part.quantities for factor, part in terms)
    pieces = tuple(
        Piece._make((one.start, one.end, one.bending_stiffness, *row, one.shear_spread))
        for one, row in zip(parts[0].pieces, table.tolist())
    )
    return Solution(beam, reactions, pieces)


def _most(asked, way):
    """The greatest (way 1) or least (way -1); of equal ones the fewest groups, leftmost first, so dust moves nothing."""
    best = max(way * one.value for one in asked)
    enough = best - 1e-9 * max(abs(one.value) for one in asked)
    return min(
        (one for one in asked if way * one.value >= enough),
        key=lambda one: (sum(one.on), [not there for there in one.on]),
    )


def stretches(supports, length):
    """List what load can stand on by itself: the spans between supports, and the overhangs.

    Parameters
    ----------
    supports : tuple of structlib.mechanics.beams.Support
        What holds the beam [-].
    length : float
        Length of the beam from end to end [mm].

    Returns
    -------
    tuple of (float, float)
        Start and end of each stretch, from left to right [mm].

    Examples
    --------
    >>> from structlib.mechanics.beams import Beam, Support
    >>> stretches((Support(0.0), Support(3600.0)), 4500.0)
    ((0.0, 3600.0), (3600.0, 4500.0))
    """
    places = sorted({0.0, float(length), *(support.position for support in supports)})
    return tuple((start, end) for start, end in zip(places, places[1:]) if end - start > SAME_SPOT)


def span_loads(supports, length, intensity):
    """Make one even load that can stand on each stretch of a beam by itself.

    Parameters
    ----------
    supports : tuple of structlib.mechanics.beams.Support
        What holds the beam [-].
    length : float
        Length of the beam from end to end [mm].
    intensity : float
        Load per length, downward positive [N/mm].

    Returns
    -------
    tuple of tuple of structlib.mechanics.beams.LineLoad
        One group a stretch, from left to right [-].

    Examples
    --------
    >>> from structlib.mechanics.beams import Beam, Support
    >>> span_loads((Support(0.0), Support(3600.0)), 4500.0, 2.0)[1][0].end
    4500.0
    """
    return tuple((LineLoad(start, end, intensity),) for start, end in stretches(supports, length))


def arrangements(groups):
    """List every way in which groups of load can be on or off, all off first.

    Parameters
    ----------
    groups : int
        Number of groups, 0 to 8 [-].

    Returns
    -------
    tuple of tuple of bool
        For each arrangement which groups are on [-].

    Raises
    ------
    BadInput
        When there are too many groups to try every arrangement.

    Examples
    --------
    >>> arrangements(2)
    ((False, False), (False, True), (True, False), (True, True))
    """
    if isinstance(groups, bool) or not isinstance(groups, int) or not 0 <= groups <= MOST_GROUPS:
        raise BadInput(
            f"groups of load that come and go must be a whole number from 0 to {MOST_GROUPS}, got {groups!r}; "
            "for example 3 for three spans"
        )
    return tuple(product((False, True), repeat=groups))


def solve_arrangements(beam, groups):
    """Solve a beam under its own loads and every arrangement of groups that come and go.

    Parameters
    ----------
    beam : structlib.mechanics.beams.Beam
        The beam with the loads that are always on it [-].
    groups : tuple of tuple
        Loads that come and go; the loads of one group come and go together [-].

    Returns
    -------
    Envelope
        Every arrangement, solved [-].

    Raises
    ------
    BadInput
        When there are too many groups, or a load does not fit the beam.

    Examples
    --------
    >>> from structlib.mechanics.beams import Beam, Support
    >>> supports = (Support(0.0), Support(4000.0), Support(8000.0))
    >>> found = solve_arrangements(Beam(8000.0, 2e12, supports), span_loads(supports, 8000.0, 5.0))
    >>> round(found.least_reaction(0).value), found.least_reaction(0).on  # w L / 16, and it lifts
    (-1250, (False, True))
    """
    if not isinstance(groups, (list, tuple)) or not all(isinstance(group, (list, tuple)) for group in groups):
        raise BadInput(
            "groups must be a tuple of tuples of loads, for example span_loads(supports, length, 5.0)"
        )
    if any(support.can_lift for support in beam.supports):
        return Envelope(beam, tuple(groups), ())
    return Envelope(beam, tuple(groups), solve_apart(beam, groups))


def solve_apart(beam, groups):
    """Solve a beam under its own loads, and under each group of loads alone, all in the same pieces.

    Parameters
    ----------
    beam : structlib.mechanics.beams.Beam
        The beam with the loads that are always on it [-].
    groups : tuple of tuple
        Loads that come and go [-].

    Returns
    -------
    tuple of structlib.mechanics.beams.Solution
        The solutions, the beam's own loads first [-].

    Examples
    --------
    >>> from structlib.mechanics.beams import Beam, PointLoad, Support
    >>> beam = Beam(4000.0, 2e12, (Support(0.0), Support(4000.0)))
    >>> [len(one.pieces) for one in solve_apart(beam, ((PointLoad(1000.0, 800.0),), (PointLoad(3000.0, 500.0),)))]
    [3, 3, 3]
    """
    places = {place for load in (*beam.loads, *(load for group in groups for load in group))
              for place in ((load.start, load.end) if isinstance(load, LineLoad) else (load.position,))}
    marks = tuple(PointLoad(place, 0.0) for place in places)  # nothing stands there, and every solution is cut there
    firm = tuple(replace(one, settlement=0.0) if one.settlement else one for one in beam.supports)
    return (solve(replace(beam, loads=beam.loads + marks)),
            *(solve(replace(beam, supports=firm, loads=tuple(group) + marks)) for group in groups))
