"""Which rule answers for which kind of member: the one place where the rooms of this rulebook are put together."""

from structlib.rules.check import BeamMember, BeamUse
from structlib.rules.members import PadMember, PlateMember, PostMember, found_by_kind
from structlib.rules.us import columns, footings


def checks(book, member, demands):
    """Return every check of one member, found by its kind.

    Parameters
    ----------
    book : structlib.rules.check.Rulebook
        The rulebook whose beam rules are used [-].
    member : object
        A member as `structlib.rules.check` and `structlib.rules.members` describe it [-].
    demands : tuple
        What each combination asks of it [-].

    Returns
    -------
    tuple of structlib.rules.check.Check
        The checks [-].

    Raises
    ------
    NotCovered
        When this rulebook has no rule for that kind of member.

    Examples
    --------
    >>> from structlib.ground.units import inch, kip
    >>> from structlib.rules.members import Push
    >>> from structlib.rules.us.book import RULEBOOK
    >>> pad = PadMember(side=40 * inch, base=4.5 * inch, soil="clay or silt")
    >>> found = checks(RULEBOOK, pad, (Push(RULEBOOK.combinations({"live"})[1], 10 * kip),))
    >>> found[0].name, round(found[0].share, 2)
    ('soil pressure', 0.75)
    """
    rules = {BeamMember: lambda beam, asked: book.beam_checks(beam, asked, beam.use or BeamUse()), **_RULES}
    return found_by_kind(rules, book.name, member, demands)


def _column(post):
    return columns.Column(
        post.material,
        post.ply_width,
        post.depth,
        post.height,
        plies=post.plies,
        fastening=post.fastening,
        held_width=post.held_width,
    )


def _pushes(demands):
    return tuple(columns.ColumnDemand(one.combination, one.axial) for one in demands)


def _post(post, demands):
    return columns.column_checks(_column(post), _pushes(demands))


def _plate(plate, demands):
    return (columns.plate_check(_column(plate.post), _pushes(demands), plate.material),)


def _pad(pad, demands):
    most = max(demands, key=lambda one: one.axial)
    return footings.pad_checks(
        load=most.axial,
        side=pad.side,
        base=pad.base,
        soil=footings.find_soil(pad.soil),
        thickness=footings.pad_thickness(side=pad.side, base=pad.base),
        combination=most.combination.name,
    )


_RULES = {PostMember: _post, PlateMember: _plate, PadMember: _pad}
