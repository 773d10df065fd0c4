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
from structlib.mechanics.beam_model import SAME_SPOT, Beam, LineLoad
from structlib.mechanics.beam_solution import Piece, moment_and_deflection
from structlib.mechanics.beams import combined, solve, solve_each

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
    at. Where a support may lift off, or has sunk, nothing adds up, and every arrangement is solved.

    Parameters
    ----------
    beam : structlib.mechanics.beams.Beam
        The beam with what is always on it [-].
    groups : tuple of tuple
        Loads that come and go, group by group [-].
    parts : tuple of structlib.mechanics.beams.Solution
        The beam under what is always on it, then under each group alone, as `solve_each` gives them; empty where they
        do not add up [-].

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
        """
        on = tuple(on)
        if on not in self._solved:
            if len(on) != len(self.groups) or not set(on) <= {True, False}:
                raise BadInput(f"there is no arrangement {on!r}; each names {len(self.groups)} groups as True or False")
            there = [(part, 1.0) for part, wanted in zip(self.parts, (True, *on)) if wanted]
            more = (load for group, wanted in zip(self.groups, on) if wanted for load in group)
            self._solved[on] = combined(there) if there else solve(replace(self.beam, loads=(*self.beam.loads, *more)))
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
        if self._adds_up:
            always, *ends = (
                [v for piece in part.pieces for v in (piece.shear, piece.end_shear)] for part in self.parts
            )
            found = []
            for at, row in zip(always, zip(*ends)):
                for way in (1, -1):
                    on = tuple([way * v > _DUST * abs(at) for v in row])
                    found.append(Asked(abs(at + sum([v for v, there in zip(row, on) if there])), 0.0, on))
            cases = (_most(found, 1).on,)
        else:
            cases = self._patterns
        peaks = [(on, self.case(on).extremes.shear) for on in cases]
        return _most([Asked(abs(peak.value), peak.position, on) for on, peak in peaks], 1)

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
        """
        reach = (start, end)
        if not _inside(self.always, reach):
            raise BadInput(f"no stretch of the beam runs from {start:g} mm to {end:g} mm; see stretches()")
        known = {}

        def peaks(solution):
            if id(solution) not in known:
                known[id(solution)] = find_extremes(_inside(solution, reach))
            return known[id(solution)]

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
        always, *effects = self.along(x)[0]
        effects = numpy.array(effects).reshape(-1, len(x))
        return always + effects.clip(max=0.0).sum(axis=0), always + effects.clip(min=0.0).sum(axis=0)

    def along(self, x):
        """Give moment and deflection of every part at places along the beam: of what is always on it, then of each group.

        Parameters
        ----------
        x : numpy.ndarray
            Places from the left end [mm].

        Returns
        -------
        tuple of numpy.ndarray
            A row a part, of moments and of deflections [N*mm, mm].
        """
        pieces = self.parts[0].pieces
        index = numpy.searchsorted([piece.start for piece in pieces[1:]], x, side="right")
        table = numpy.array([part.pieces for part in self.parts])[:, index].transpose(2, 0, 1)
        return moment_and_deflection(Piece._make(table), x - table[0])

    # ---- which arrangements can be the worst ----

    @cached_property
    def _solved(self):
        return {}

    @cached_property
    def _adds_up(self):
        """Whether loads that come and go are there, and no support may lift off."""
        return bool(self.parts) and any(self.groups)

    def without(self, nothing):
        """Give the envelope of what comes and goes alone.

        Parameters
        ----------
        nothing : structlib.mechanics.beams.Solution
            The beam with nothing on it, in the same pieces [-].

        Returns
        -------
        Envelope
            The envelope; what was found of the groups is not looked for again [-].
        """
        alone = Envelope(nothing.beam, self.groups, (nothing, *self.parts[1:]))
        if self._adds_up:
            alone.__dict__["_signs"] = self._signs
        return alone

    @cached_property
    def _signs(self):
        """By quantity: the least that counts, and for each piece and either way the arrangements worst somewhere in it."""
        found = {}
        pieces = list(zip(*(part.pieces for part in self.parts[1:])))
        at = [
            [moment_and_deflection(one, share * (one.end - one.start)) for one in same for share in _ALONG]
            for same in pieces
        ]
        for number, name in enumerate(("moment", "deflection")):
            values = [[one[number] for one in row] for row in at]
            dust = _DUST * max(max(map(abs, row)) for row in values)
            # samples of one place stand a group apart
            places = [[row[k :: len(_ALONG)] for k in range(len(_ALONG))] for row in values]
            found[name] = (
                dust,
                [tuple({tuple([way * v > dust for v in one]) for one in row} for way in (1, -1)) for row in places],
            )
        return found

    @property
    def _patterns(self):
        """Arrangements to try where the signs of the groups tell nothing."""
        return ((False,) * len(self.groups),) if self.parts else arrangements(len(self.groups))

    @cached_property
    def _reactions(self):
        return {}

    def _reaction(self, number, way):
        if (number, way) not in self._reactions:
            self._reactions[number, way] = self._found_reaction(number, way)
        return self._reactions[number, way]

    def _found_reaction(self, number, way):
        places = [support.position for support in self.beam.supports]
        which = sorted(range(len(places)), key=places.__getitem__)[number]
        if not self.parts:
            return _most([Asked(one.reactions[which].force, places[which], on) for on, one in self.cases], way)
        always, *forces = [part.reactions[which].force for part in self.parts]
        dust = _DUST * max(map(abs, forces), default=0.0)
        on = tuple(way * force > dust for force in forces) if forces else (False,) * len(self.groups)
        return Asked(always + sum(force for force, there in zip(forces, on) if there), places[which], on)

    def _worst(self, quantity, way, peak, reach=None):
        """The worst peak of all arrangements: of those that are worst somewhere, and of those worst where these peak."""
        if self._adds_up:
            dust, by_piece = self._signs[quantity]
            pieces = self.parts[0].pieces
            waiting = set().union(
                *(worst[way < 0] for piece, worst in zip(pieces, by_piece) if reach is None or _within(piece, reach))
            )
        else:
            waiting = set(self._patterns)
        found, several = {}, len(waiting) > 1
        while waiting:
            on = waiting.pop()
            extreme = peak(self.case(on))
            found[on] = Asked(extreme.value, extreme.position, on)
            if several and self._adds_up:
                there = tuple(way * getattr(part, quantity)(extreme.position) > dust for part in self.parts[1:])
                if there not in found:
                    waiting.add(there)
        return _most(list(found.values()), way)


#: Shares of a piece at which the groups are looked at.
_ALONG = (0.0, 0.2, 0.5, 0.8, 1.0)
_DUST = 1e-9  # less of the greatest is rounding


def _inside(solution, reach):
    return [piece for piece in solution.pieces if _within(piece, reach)]


def _within(piece, reach):
    return piece.start >= reach[0] - SAME_SPOT and piece.end <= reach[1] + SAME_SPOT


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

    Examples
    --------
    >>> from structlib.mechanics.beams import Beam, Support
    >>> supports = (Support(0.0), Support(4000.0), Support(8000.0))
    >>> found = solve_arrangements(Beam(8000.0, 2e12, supports), span_loads(supports, 8000.0, 5.0))
    >>> round(found.least_reaction(0).value), found.least_reaction(0).on  # w L / 16, and it lifts
    (-1250, (False, True))
    """
    if not isinstance(groups, (list, tuple)) or not all(isinstance(group, (list, tuple)) for group in groups):
        raise BadInput("groups must be a tuple of tuples of loads, for example span_loads(supports, length, 5.0)")
    groups = tuple(map(tuple, groups))
    if any(support.can_lift or support.settlement for support in beam.supports):
        return Envelope(beam, groups, ())
    whole = replace(beam, loads=(*beam.loads, *(load for group in groups for load in group)))
    return Envelope(beam, groups, solve_each(whole, (beam.loads, *groups)))
