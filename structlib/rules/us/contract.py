"""Which rule answers for which kind of member: the one place where the rooms of this rulebook are put together."""

from structlib.ground.refusals import BadInput
from structlib.rules.check import BeamMember, BeamUse
from structlib.rules.members import FlitchMember, JoistMember, NotCovered, found_by_kind
from structlib.rules.us import (
    bearing,
    bending,
    column_strength,
    columns,
    combined,
    deflection,
    dowels,
    factors,
    fastening,
    flitch,
    footings,
    header_tables,
    layers,
    nailing_patterns,
    notched_ends,
    notches,
    old_joists,
    roof_ties,
    seats,
    snow,
    steel_beams,
    steel_columns,
    steel_sections,
    uplift,
)  # fmt: skip
from structlib.rules.us.kinds import flitches, old_wood, plies, posts, roof, running
from structlib.rules.us.kinds import seats as seat_kinds

_RULES = {**old_wood.RULES, **posts.RULES, **plies.RULES, **seat_kinds.RULES, **running.RULES, **roof.RULES}
_ROOMS = {
    one.__name__.rpartition(".")[2]: one
    for one in (bearing, bending, column_strength, columns, combined, deflection, dowels, factors, fastening, flitch,
                footings, header_tables, layers, nailing_patterns, notched_ends, notches, old_joists, roof_ties, seats, snow, steel_beams,
                steel_columns, steel_sections, uplift)
}  # fmt: skip


class Members(
    flitches.Flitches, old_wood.OldWood, posts.Posts, plies.Plies, seat_kinds.Seats, running.Running, roof.Roofs
):
    """What this rulebook says of members of every kind, and the answers that it gives beside its checks."""

    def checks(self, member, demands):
        """Return every check of one member of any kind, found by its kind.

        Parameters
        ----------
        member : object
            A `BeamMember`, or a member of `structlib.rules.members` [-].
        demands : tuple
            What each combination asks of it [-].

        Returns
        -------
        tuple of structlib.rules.check.Check
            The checks; `NotCovered` is raised where there is no rule, `Partly` where one question has none [-].

        Examples
        --------
        >>> from structlib.rules.members.posts import PadMember
        >>> from structlib.ground.units import inch, kip
        >>> from structlib.rules.members import Push
        >>> from structlib.rules.us.book import RULEBOOK
        >>> pad = PadMember(side=40 * inch, base=4.5 * inch, soil="clay or silt")
        >>> found = RULEBOOK.checks(pad, (Push(RULEBOOK.combinations({"live"})[1], 10 * kip),))
        >>> found[0].name, round(found[0].share, 2)
        ('soil pressure', 0.75)
        >>> RULEBOOK.checks("a chimney", ())
        Traceback (most recent call last):
        ...
        structlib.rules.members.asking.NotCovered: the rulebook of United States has no rule for a str here; what is asked of it stays
        """
        of_beam = lambda beam, asked: self.beam_checks(beam, asked, beam.use or BeamUse())  # noqa: E731
        rules = {
            BeamMember: of_beam,
            JoistMember: of_beam,
            FlitchMember: lambda beam, asked: flitches.flitch_checks(beam, asked, self.beam_checks),
            **_RULES,
        }
        return found_by_kind(rules, self.name, member, demands)

    def room(self, name):
        """Return one room of this rulebook: the rules of one topic, in a file of the same name in every rulebook.

        Parameters
        ----------
        name : str
            The file's name, such as 'footings' [-].

        Returns
        -------
        module
            The room; `NotCovered` is raised where this rulebook has none of that name [-].

        Examples
        --------
        >>> Members().room("footings").pad_side.__name__
        'pad_side'
        """
        if not isinstance(name, str):
            raise BadInput(f"a room of rules must be named by a word such as 'footings', got {name!r}")
        if name not in _ROOMS:
            raise NotCovered(f"the rulebook of {self.name} has no rules of {name.replace('_', ' ')}")
        return _ROOMS[name]
