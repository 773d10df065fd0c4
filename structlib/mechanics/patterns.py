"""Load that comes and goes: every arrangement of it over the spans, and the most that each can ask.

Dead load is on the beam always. Live load may stand on any span and not on the next. With n groups of
load that come and go there are 2**n arrangements; each is solved exactly, so nothing is left to a rule
of thumb such as 'every other span'.
"""

from dataclasses import dataclass, replace
from itertools import product
from typing import NamedTuple

from structlib.ground.refusals import BadInput
from structlib.mechanics.beam_extremes import find_extremes
from structlib.mechanics.beam_model import SAME_SPOT, LineLoad
from structlib.mechanics.beams import solve

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
    """Every arrangement of the load that comes and goes, solved, and what they ask at most.

    Parameters
    ----------
    cases : tuple of (tuple of bool, structlib.mechanics.beams.Solution)
        Which groups are on, and the beam solved for them [-].

    Examples
    --------
    >>> from structlib.mechanics.beams import Beam, Support
    >>> supports = (Support(0.0), Support(4000.0), Support(8000.0))
    >>> empty = Beam(8000.0, 2e12, supports)
    >>> found = solve_arrangements(empty, span_loads(supports, 8000.0, 5.0))
    >>> len(found.cases)
    4
    """

    cases: tuple

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
        for found, solution in self.cases:
            if found == tuple(on):
                return solution
        raise BadInput(
            f"there is no arrangement {on!r}; each names {len(self.cases[0][0])} groups as True or False"
        )

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
        return _most(self._reactions(support), 1)

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
        return _most(self._reactions(support), -1)

    @property
    def sagging(self):
        """The greatest moment that sags the beam; zero where none does."""
        return _most(self._extremes("greatest_moment"), 1)

    @property
    def hogging(self):
        """The greatest moment that bends the beam the other way, negative; zero where none does."""
        return _most(self._extremes("least_moment"), -1)

    @property
    def drop(self):
        """The greatest deflection downward."""
        return _most(self._extremes("greatest_deflection"), 1)

    @property
    def rise(self):
        """The greatest deflection upward, negative; zero where nothing rises."""
        return _most(self._extremes("least_deflection"), -1)

    @property
    def shear(self):
        """The greatest shear, whichever way it goes; its value has no sign."""
        return _most(
            [Asked(abs(asked.value), asked.position, asked.on) for asked in self._extremes("shear")], 1
        )

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
        found = []
        for on, solution in self.cases:
            inside = [
                piece
                for piece in solution.pieces
                if piece.start >= start - SAME_SPOT and piece.end <= end + SAME_SPOT
            ]
            if not inside:
                raise BadInput(
                    f"no stretch of the beam runs from {start:g} mm to {end:g} mm; see stretches()"
                )
            peak = find_extremes(inside).deflection
            found.append(Asked(peak.value, peak.position, on))
        greatest = _most([Asked(abs(one.value), one.position, one.on) for one in found], 1)
        return next(one for one in found if one.on == greatest.on)

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
        import numpy

        rows = numpy.array([solution.moment(numpy.asarray(x, dtype=float)) for _, solution in self.cases])
        return rows.min(axis=0), rows.max(axis=0)

    def _reactions(self, number):
        sides = []
        for on, solution in self.cases:
            in_order = sorted(solution.reactions, key=lambda reaction: reaction.position)
            sides.append(Asked(in_order[number].force, in_order[number].position, on))
        return sides

    def _extremes(self, name):
        found = [(on, getattr(solution.extremes, name)) for on, solution in self.cases]
        return [Asked(extreme.value, extreme.position, on) for on, extreme in found]


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
    cases = []
    for on in arrangements(len(groups)):
        more = tuple(load for group, wanted in zip(groups, on) if wanted for load in group)
        cases.append((on, solve(replace(beam, loads=beam.loads + more))))
    return Envelope(tuple(cases))


def superposed_moment(envelope, on, x):
    """Add up single groups to the moment of an arrangement; it must agree where no support lifts off.

    Parameters
    ----------
    envelope : Envelope
        Every arrangement, solved [-].
    on : tuple of bool
        Which groups are on [-].
    x : float or numpy.ndarray
        Places from the left end [mm].

    Returns
    -------
    float or numpy.ndarray
        Moment [N*mm].

    Examples
    --------
    >>> from structlib.mechanics.beams import Beam, Support
    >>> supports = (Support(0.0), Support(4000.0), Support(8000.0))
    >>> found = solve_arrangements(Beam(8000.0, 2e12, supports), span_loads(supports, 8000.0, 5.0))
    >>> round(superposed_moment(found, (True, True), 4000.0) / 1e6, 6)  # w L^2 / 8 the other way
    -10.0
    """
    nothing = (False,) * len(on)
    always = envelope.case(nothing).moment(x)
    total = always
    for number, wanted in enumerate(on):
        if wanted:
            alone = nothing[:number] + (True,) + nothing[number + 1 :]
            total = total + (envelope.case(alone).moment(x) - always)
    return total
