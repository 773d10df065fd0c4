"""How far, how heavy, how wide apart, how deep: what one beam or joist just takes under a rulebook, by any of its checks."""

import math
from dataclasses import replace

from structlib.ground.asked_back import asked_back
from structlib.ground.refusals import BadInput, OutsideRule
from structlib.ground.units import ft, inch  # noqa: F401 (used in the examples)
from structlib.house.beam import check_job, demands_on
from structlib.mechanics.beams import LineLoad
from structlib.rules.check import governing
from structlib.rules.members import shares_up_to

_SPANS = (1 * ft, 40 * ft)  # clear widths that a job may have
_DEEPEST = 48 * inch  # the deepest that a beam may be
_TIMES = (1e-3, 1e3)


def governs(job, member, rulebook, kind=""):
    """Return the check with the greatest share of a member, of all that decide or of those of one kind.

    Parameters
    ----------
    job : structlib.house.beam.BeamJob
        The span and its loads [-].
    member : structlib.rules.check.BeamMember, or another member on two seats
        The beam or joist [-].
    rulebook : structlib.rules.check.Rulebook
        The rules [-].
    kind : str
        Kind of check, such as 'bending' or 'shear'; empty for all [-].

    Returns
    -------
    structlib.rules.check.Check
        The check [-].

    Raises
    ------
    OutsideRule
        When the rulebook asks no such question of the member, or covers no such member.

    Examples
    --------
    >>> round(governs(*_example(), kind="bending").share, 3)
    0.501
    """
    checks = rulebook.checks(member, demands_on(job, member, rulebook))
    found = [one for one in checks if one.kind == kind or not kind]
    if not found:
        kinds = ", ".join(dict.fromkeys(one.kind for one in checks))
        raise OutsideRule(f"{rulebook.name} has no check of {kind} here; its checks are {kinds}")
    return governing(found)


def at_span(job, clear_width):
    """Return the job at another clear width, each load at the same share of the span.

    Parameters
    ----------
    job : structlib.house.beam.BeamJob
        The job [-].
    clear_width : float
        Between the inner edges of the seats [mm].

    Returns
    -------
    structlib.house.beam.BeamJob
        The job [-].

    Examples
    --------
    >>> round(at_span(_example()[0], 10 * ft).loads[0].load.end / inch, 6)
    123.0
    """
    other = replace(job, clear_width=clear_width)
    times = other.span / job.span

    def moved(load):
        if isinstance(load, LineLoad):
            return replace(load, start=load.start * times, end=load.end * times)
        return replace(load, position=load.position * times)

    return replace(other, loads=tuple(replace(one, load=moved(one.load)) for one in job.loads))


def times_loaded(job, times):
    """Return the job with every load as many times as heavy.

    Parameters
    ----------
    job : structlib.house.beam.BeamJob
        The job [-].
    times : float
        How many times [-].

    Returns
    -------
    structlib.house.beam.BeamJob
        The job; own weight is no load of it, and stays [-].

    Examples
    --------
    >>> from structlib.ground.units import plf
    >>> times_loaded(_example()[0], 2.0).loads[0].load.intensity / plf
    200.0
    """

    def heavier(load):
        if isinstance(load, LineLoad):
            end = None if load.end_intensity is None else load.end_intensity * times
            return replace(load, intensity=load.intensity * times, end_intensity=end)
        return replace(load, force=load.force * times)

    return replace(job, loads=tuple(replace(one, load=heavier(one.load)) for one in job.loads))


def longest_span(job, member, rulebook, *, kind="", limit=1.0):
    """Return the greatest clear width at which a member keeps to a share of a check.

    Parameters
    ----------
    job : structlib.house.beam.BeamJob
        The loads, each at its share of the span [-].
    member : structlib.rules.check.BeamMember, or another member on two seats
        The beam or joist [-].
    rulebook : structlib.rules.check.Rulebook
        The rules [-].
    kind : str
        Kind of check; empty for the one that governs [-].
    limit : float
        Share that may be used [-].

    Returns
    -------
    float
        Clear width between the seats [mm].

    Raises
    ------
    OutsideRule
        When no width from 1 to 40 ft sets the limit.

    Examples
    --------
    >>> round(longest_span(*_example(), kind="bending") / ft, 2)
    15.64
    """
    governs(check_job(job), member, rulebook, kind)  # what is wrong as it stands is said at once
    return asked_back(
        lambda width: _share(at_span(job, width), member, rulebook, kind), low=_SPANS[0], high=_SPANS[1], limit=limit,
        **_sentences("clear width from 1 ft to 40 ft", kind))  # fmt: skip


def heaviest_load(job, member, rulebook, *, kind="", limit=1.0):
    """Return how many times its loads a member takes before it reaches a share of a check.

    Parameters
    ----------
    job : structlib.house.beam.BeamJob
        The span and its loads; own weight does not grow with them [-].
    member : structlib.rules.check.BeamMember, or another member on two seats
        The beam or joist [-].
    rulebook : structlib.rules.check.Rulebook
        The rules [-].
    kind : str
        Kind of check; empty for the one that governs [-].
    limit : float
        Share that may be used [-].

    Returns
    -------
    float
        Times the loads of the job [-].

    Raises
    ------
    OutsideRule
        When no load from a thousandth to a thousand times sets the limit.

    Examples
    --------
    >>> round(heaviest_load(*_example(), kind="bending"), 3)
    2.051
    """
    governs(check_job(job), member, rulebook, kind)  # what is wrong as it stands is said at once
    return asked_back(
        lambda times: _share(times_loaded(job, times), member, rulebook, kind), low=_TIMES[0], high=_TIMES[1],
        limit=limit, **_sentences("load from a thousandth to a thousand times this one", kind))  # fmt: skip


def widest_spacing(job, member, rulebook, *, spacing, kind="", limit=1.0):
    """Return how far apart joists may stand before one of them reaches a share of a check.

    Parameters
    ----------
    job : structlib.house.beam.BeamJob
        The span and the loads of one joist at the spacing given [-].
    member : structlib.rules.check.BeamMember, or another member on two seats
        One joist [-].
    rulebook : structlib.rules.check.Rulebook
        The rules [-].
    spacing : float
        Spacing that the loads are for [mm].
    kind : str
        Kind of check; empty for the one that governs [-].
    limit : float
        Share that may be used [-].

    Returns
    -------
    float
        Spacing; joists help each other only as far apart as the rulebook says, and farther apart each is asked alone.
        Whether boards reach so far is not asked [mm].

    Raises
    ------
    OutsideRule
        When no spacing sets the limit.

    Examples
    --------
    >>> round(widest_spacing(*_example(), spacing=16 * inch, kind="bending") / inch, 1)
    32.8
    """
    far = shares_up_to(rulebook) if member.repetitive else math.inf
    apart = spacing * heaviest_load(job, member, rulebook, kind=kind, limit=limit)
    if apart <= far:
        return apart
    alone = replace(member, repetitive=None)
    return max(far, spacing * heaviest_load(job, alone, rulebook, kind=kind, limit=limit))


def least_depth(job, member, rulebook, *, kind="", limit=1.0):
    """Return the least depth at which a member of one width keeps to a share of a check.

    Parameters
    ----------
    job : structlib.house.beam.BeamJob
        The span and its loads [-].
    member : structlib.rules.check.BeamMember
        The beam or joist; its depth is what is asked [-].
    rulebook : structlib.rules.check.Rulebook
        The rules; they must cover every depth tried [-].
    kind : str
        Kind of check; empty for the one that governs [-].
    limit : float
        Share that may be used [-].

    Returns
    -------
    float
        Depth, not one that is sold [mm].

    Raises
    ------
    OutsideRule
        When no depth from the width of a ply to 48 in sets the limit, or the rulebook does not cover such
        depths.

    Examples
    --------
    >>> from structlib.ground.engineered import lvl
    >>> job, member, rulebook = _example()
    >>> round(least_depth(job, replace(member, material=lvl("2.0E-2900Fb")), rulebook, kind="bending") / inch, 2)
    3.68
    """
    governs(check_job(job), member, rulebook, kind)
    return asked_back(
        lambda depth: _share(job, replace(member, depth=depth), rulebook, kind), low=member.ply_width, high=_DEEPEST,
        limit=limit, **_sentences("depth from a ply's own width to 48 in", kind))  # fmt: skip


def _share(job, member, rulebook, kind):
    """The share; what is beyond any number that a rule reads is beyond every limit."""
    try:
        return governs(job, member, rulebook, kind).share
    except BadInput:
        return math.inf


def _sentences(what, kind):
    check = f"the check of {kind}" if kind else "the checks"
    return dict(never=f"no {what} keeps to the limit of {check}: it takes a shorter span, less load or more wood",
                always=f"every {what} keeps to the limit of {check}, so it sets none")  # fmt: skip


def _example():
    """The job, the joists and the rules of the examples: two 2x10 over 11 ft under 100 plf."""
    from structlib.ground.lumber import find_material
    from structlib.ground.units import plf
    from structlib.house.beam import BeamJob, TypedLoad
    from structlib.rules.check import BeamMember, Seat
    from structlib.rules.choice import RULEBOOK

    seat = Seat(3 * inch)
    job = BeamJob(11 * ft, seat, seat, (TypedLoad("live", LineLoad(0.0, 135 * inch, 100 * plf)),), unbraced_length=0.0)
    return (
        job,
        BeamMember(find_material("Hem-Fir", "No.2"), 1.5 * inch, 9.25 * inch, 2, seat, seat, unbraced_length=0.0),
        RULEBOOK,
    )
