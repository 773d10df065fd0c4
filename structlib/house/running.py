"""What is asked of a beam or joist that runs on, past a support or over several: envelopes over all arrangements.

Dead load is always there. All that comes and goes on one span or overhang is one group of load, and every load at one
place, such as a post, is another. The groups come and go by themselves.
"""

from structlib.ground.loads import LOAD_TYPES
from structlib.mechanics.beams import Beam, LineLoad, PointLoad, Support, combined, solve_each
from structlib.mechanics.patterns import Envelope
from structlib.rules.check import VARIABLE_TYPES
from structlib.rules.members import Comes, RunningDemand

_SAME = 1e-3  # mm


def clipped(source, amounts, stretch, ends, over=(1.0, 1.0)):
    """Return a load on what lies between two places along it, counted from the first of them.

    Parameters
    ----------
    source : str
        What it comes from [-].
    amounts : iterable of float
        By type [N/mm, or N at one place].
    stretch : tuple of (float, float)
        Where it stands; one place where both are the same [mm].
    ends : tuple of (float, float)
        The part of the axis that is meant [mm].
    over : tuple of (float, float)
        How much of a load right over each end belongs here; the rest is the neighbor's [-].

    Returns
    -------
    list of tuple
        One (source, amounts, start, end), or nothing where it stands elsewhere [-].

    Examples
    --------
    >>> clipped("floor", (0.0, 7.0, 0.0, 0.0), (0.0, 9000.0), (3000.0, 6000.0))
    [('floor', (0.0, 7.0, 0.0, 0.0), 0.0, 3000.0)]
    """
    (start, end), (first, last) = stretch, ends
    if end - start <= _SAME:
        share = next((part for at, part in zip(ends, over) if abs(start - at) <= _SAME), 1.0)
        inside = first - _SAME <= start <= last + _SAME
        at = min(max(start, first), last) - first
        return [(source, tuple(share * one for one in amounts), at, at)] if inside else []
    start, end = max(start, first), min(end, last)
    return [(source, tuple(amounts), start - first, end - first)] if end - start > _SAME else []


def running_demands(member, loads, rulebook):
    """Return what each combination asks of a member that runs on, over all arrangements of what comes and goes.

    Parameters
    ----------
    member : structlib.rules.members.ContinuousMember
        The member [-].
    loads : iterable of tuple
        All that is on it, with its own weight, as `clipped` gives it: (source, amounts by type, start, end) [N/mm or N].
    rulebook : structlib.rules.check.Rulebook
        The rules, which combine the loads [-].

    Returns
    -------
    tuple of structlib.rules.members.RunningDemand
        One a combination [-].

    Examples
    --------
    >>> from structlib.ground.lumber import find_material
    >>> from structlib.rules.choice import RULEBOOK
    >>> from structlib.rules.members import ContinuousMember
    >>> wood = find_material("Hem-Fir", "No.2")
    >>> beam = ContinuousMember(wood, 38.0, 235.0, 2, (0.0, 4000.0, 8000.0), (), 8000.0, 0.0, 0.0)
    >>> floor = ("floor", (0.0, 5.0, 0.0, 0.0), 0.0, 8000.0)
    >>> both = running_demands(beam, [floor], RULEBOOK)[-1]
    >>> round(both.all_load.least_reaction(0).value), both.all_load.least_reaction(0).on  # w L / 16, and it lifts
    (-1250, (False, True))
    """
    always, comes, passing = _apart(member, loads)
    lowered = rulebook.modulus_factor(member.material, wet=member.wet)
    slides = member.shear_stiffness
    kinds = [kind for kind in VARIABLE_TYPES if any(kind in one for one in passing)]
    cases = {(number, kind): tuple(group[kind]) for number, group in enumerate(passing) for kind in group}
    beam = Beam(
        member.length,
        member.bending_stiffness * lowered,
        tuple(Support(at) for at in member.supports),
        (*always, *(load for case in cases.values() for load in case)),
        shear_stiffness=None if slides is None else slides * lowered,
    )
    first, *apart = solve_each(beam, (tuple(always), *cases.values()))
    apart, nothing, demands = dict(zip(cases, apart)), combined([(first, 0.0)]), []
    for one in rulebook.combinations({"dead", *kinds}):
        dead = combined([(first, one.factor("dead"))])
        if not any(one.factor(kind) for kind in kinds):
            empty = Envelope(dead.beam, ((),) * len(passing), (dead,))
            demands.append(RunningDemand(one, empty, None, comes))
            continue
        parts = tuple(
            combined([(apart[number, kind], one.factor(kind)) for kind in group])
            for number, group in enumerate(passing)
        )
        groups = tuple(part.beam.loads for part in parts)
        asked = Envelope(dead.beam, groups, (dead, *parts))
        demands.append(RunningDemand(one, asked, asked.without(nothing), comes))
    return tuple(demands)


def _apart(member, loads):
    """The dead load; what comes and goes by itself; and the loads of each by type, in the same order."""
    always, groups = [], {}
    for source, amounts, start, end in loads:
        for kind, amount in zip(LOAD_TYPES, amounts):
            if not amount:
                continue
            if end - start <= _SAME:
                rows = [(Comes(start, end, source), PointLoad(float(start), float(amount)))]
            else:
                rows = [
                    (Comes(a, b), LineLoad(max(a, start), min(b, end), float(amount)))
                    for a, b, _ in member.stretches
                    if min(b, end) - max(a, start) > _SAME
                ]
            for group, load in rows:
                if kind == "dead":
                    always.append(load)
                else:
                    groups.setdefault(group, {}).setdefault(kind, []).append(load)
    comes = tuple(sorted(groups, key=lambda one: (one.is_point, one.start, one.source)))
    return always, comes, [groups[one] for one in comes]
