"""A pair of rafters as the load meets it: where it stands, what holds it, and the push that its loads bring, by type."""

from dataclasses import dataclass
from functools import lru_cache

import numpy

from structlib.ground.loads import LOAD_TYPES, LoadsByType
from structlib.ground.refusals import BadInput
from structlib.house.pieces import area_load
from structlib.house.plan import Level
from structlib.house.shares import SAME, text_of
from structlib.mechanics.frames_uneven import thrust_of_force

#: What may hold a pair of rafters.
RIDGE_BEAM, TIE, JOISTS, NOTHING, NOT_NEEDED = "ridge beam", "tie", "joists", "nothing", "no push"


_thrust_of_force = lru_cache(maxsize=256)(thrust_of_force)


@dataclass(frozen=True)
class Stretch:
    """A pair of rafters between two places along the house [mm]: its loads and its push, by type, for each mm of wall.

    ``loads`` are (amounts, start, end) across the house: over a stretch [MPa], or at one place [N/mm]. ``thrust`` is
    the push of each eave outward [N/mm], with nothing but a tie at the eaves to hold it; zero on a ridge beam.
    """

    start: float
    end: float
    loads: tuple
    thrust: tuple[float, float, float, float]


@dataclass(frozen=True)
class Pair:
    """Rafters on two walls: the places of both eaves and of the ridge across the house, the rise [mm], what holds them.

    ``height`` is that of a tie as a share of the rise; it, and ``tied_by``, belong to a tie or to joists.
    """

    left: float
    ridge: float
    right: float
    rise: float
    held_by: str
    height: float
    stretches: tuple[Stretch, ...] = ()


@dataclass(frozen=True)
class Thrust:
    """What a pair of rafters pushes with, by type: for each mm of wall [N/mm], and each pair [N]; and the pull of its tie.

    ``line`` is what each eave asks of a tie there; zero on a ridge beam, and where nothing leans. ``pull`` is that of a
    tie at its own height for each mm of wall [N/mm]. ``per_pair`` and ``per_tie`` [N] are None where no spacing is written.
    """

    held_by: str
    height: float
    line: LoadsByType
    per_pair: LoadsByType | None
    pull: LoadsByType
    per_tie: LoadsByType | None


def surfaces(level, places):
    """Return the loads of a level over its plan, slope by slope.

    Parameters
    ----------
    level : structlib.house.plan.Level
        The level [-].
    places : list of float
        The lines that it rests on, across the house, from left to right [mm].

    Returns
    -------
    list of tuple
        Dead, live, roof live and snow, left end and right end [MPa, mm].

    Examples
    --------
    >>> from structlib.ground.units import ft, psf
    >>> roof = Level(name="roof", kind="roof", on=("a", "b"), start=0.0, end=9000.0, slope=(6.0, 12.0), snow=30 * psf,
    ...              roof_live=0.0, right_snow=0.0)
    >>> [(round(amount[3] / psf), left, right) for amount, left, right in surfaces(roof, [0.0, 8000.0])]
    [(30, 0.0, 4000.0), (0, 4000.0, 8000.0)]
    """
    left, right = places[0] - level.left_overhang, places[-1] + level.right_overhang
    if not level.slope[0] or level.ridge == "beam" and len(places) == 2:  # flat, or one slope up to the ridge beam
        if level.right_snow is not None:
            raise BadInput(f"{level.name} has one slope or none, so leave right_snow out").about(
                level.name, "right_snow"
            )
        return [(area_load(level, level.slope), left, right)]
    ridge = ridge_of(level, places)
    rise, run = level.slope
    other = rise * (ridge - places[0]) / (places[-1] - ridge)  # the other side falls from the same ridge
    near, far = area_load(level, (rise, run)), area_load(level, (other, run))
    far = far if level.right_snow is None else (*far[:3], level.right_snow)
    return [(near, left, ridge), (far, ridge, right)]


def ridge_of(level, places):
    """Return where the ridge of a roof with two slopes stands.

    Parameters
    ----------
    level : structlib.house.plan.Level
        The roof [-].
    places : list of float
        The lines that it rests on, across the house, from left to right [mm].

    Returns
    -------
    float
        Its place across the house [mm].

    Examples
    --------
    >>> roof = Level(name="roof", kind="roof", on=("a", "b"), start=0.0, end=9000.0, snow=0.0, roof_live=0.0)
    >>> ridge_of(roof, [0.0, 8000.0])
    4000.0
    """
    ridge = places[1] if level.ridge == "beam" else level.ridge_at
    ridge = (places[0] + places[-1]) / 2 if ridge is None else ridge
    if not places[0] < ridge < places[-1]:
        raise BadInput(
            f"the ridge of {level.name} must stand between its walls, got {text_of(ridge)} across the house"
        ).about(level.name, "ridge_at")
    return ridge


def pair_of(level, places, parts, stretches):
    """Return the pair of rafters of a level, with its push by type; None where nothing leans.

    Parameters
    ----------
    level : structlib.house.plan.Level
        The level [-].
    places : list of float
        The lines that it rests on, across the house, from left to right [mm].
    parts : dict
        Every part of the house by its name [-].
    stretches : list of tuple
        Start, end, and the loads over both rafters as (amounts, start, end) [mm, MPa or N/mm].

    Returns
    -------
    Pair or None
        The pair [-].

    Examples
    --------
    >>> from structlib.ground.units import ft, plf, psf
    >>> roof = Level(name="roof", kind="roof", on=("a", "b"), start=0.0, end=30 * ft, slope=(6.0, 12.0), snow=30 * psf,
    ...              roof_live=0.0)
    >>> pair = pair_of(roof, [0.0, 24 * ft], {}, [(0.0, 30 * ft, surfaces(roof, [0.0, 24 * ft]))])
    >>> pair.held_by, round(pair.stretches[0].thrust[3] / plf)  # 30 psf x 24 ft x 24 ft / (8 x 6 ft)
    ('nothing', 360)
    """
    if level.kind != "roof" or not level.slope[0] or level.ridge == "beam" and len(places) == 2:
        if level.tie or level.tied_by:
            fault = BadInput(f"{level.name} has one slope or none and does not push, so leave its tie out")
            raise fault.about(level.name, "tie" if level.tie else "tied_by")
        return None
    left, right, ridge = places[0], places[-1], ridge_of(level, places)
    rise = (ridge - left) * level.slope[0] / level.slope[1]
    if level.tied_by:
        _check_tied_by(level, parts)
    held_by = RIDGE_BEAM if level.ridge == "beam" else TIE if level.tie else JOISTS if level.tied_by else NOTHING

    def push(amount, start, end):
        if held_by == RIDGE_BEAM:
            return numpy.zeros(4)
        cuts = [start, *([ridge] if start < ridge < end else []), end]
        of_one = sum(
            ((b - a) or 1.0)
            * _thrust_of_force(span=right - left, crown=ridge - left, rise=rise, place=(a + b) / 2 - left)
            for a, b in zip(cuts, cuts[1:])
        )
        return numpy.array(amount) * of_one

    found = tuple(
        Stretch(start, end, tuple(loads), tuple(map(float, sum(push(*load) for load in loads))))
        for start, end, loads in stretches
    )
    return Pair(left, ridge, right, rise, held_by, level.tie.height if level.tie else 0.0, found)


def _check_tied_by(level, parts):
    """Joists tie a pair where they lie on the walls of both its eaves, all along it."""
    floor = parts.get(level.tied_by)
    if not isinstance(floor, Level) or floor.kind == "roof":
        fault = BadInput(f"{level.name} is tied by {level.tied_by!r}, and no floor or ceiling is called that")
        raise fault.about(level.name, "tied_by")
    if not set(level.on) <= set(floor.on):
        fault = BadInput(f"{level.name} is tied by {floor.name}, whose joists do not lie on {' and '.join(level.on)}")
        raise fault.about(level.name, "tied_by")
    if floor.start > level.start + SAME or floor.end < level.end - SAME:
        raise BadInput(
            f"{level.name} is tied by {floor.name}, which reaches from {text_of(floor.start)} to {text_of(floor.end)} "
            f"along the house; the roof reaches from {text_of(level.start)} to {text_of(level.end)}"
        ).about(level.name, "tied_by")


def thrust_of(element, tied_by=None, at=None):
    """Return the push of a roof, and the pull of what ties it.

    Parameters
    ----------
    element : structlib.house.shares.Element
        The roof on the way of the load [-].
    tied_by : structlib.house.plan.Level or None
        The level whose joists tie it, for their spacing [-].
    at : float or None
        The place along the house; where it pushes most when None [mm].

    Returns
    -------
    Thrust
        Push and pull by type [N/mm, N].

    Examples
    --------
    >>> from structlib.ground.units import plf
    >>> from structlib.house.file import demo_house
    >>> from structlib.house.path import follow
    >>> found = thrust_of(follow(demo_house()).element("roof"))
    >>> found.held_by, round(found.line["roof live"] / plf)  # 20 psf x 24 ft x 24 ft / (8 x 8 ft)
    ('joists', 180)
    """
    level, pair = element.part, element.pair
    if level.kind != "roof":
        raise BadInput(f"{element.name} is a {level.kind}, and only a roof pushes; name a level of kind roof")
    line = lambda amounts: LoadsByType(dict(zip(LOAD_TYPES, amounts)))  # noqa: E731
    if pair is None:
        return Thrust(NOT_NEEDED, 0.0, line([0.0] * 4), None, line([0.0] * 4), None)
    if at is None:
        most = max(pair.stretches, key=lambda one: sum(one.thrust))
    else:
        most = next((one for one in pair.stretches if one.start - SAME <= at <= one.end + SAME), None)
        if most is None:
            raise BadInput(
                f"{element.name} reaches from {text_of(level.start)} to {text_of(level.end)} along the house, "
                f"got {text_of(at)}"
            )
    push = line(most.thrust)
    pull = push.scale(1 / (1 - pair.height) if pair.held_by in (TIE, JOISTS) else 0.0)
    spacing = level.joist and level.joist.spacing
    every = tied_by.joist and tied_by.joist.spacing if tied_by else level.tie and level.tie.spacing or spacing
    held = pair.held_by in (TIE, JOISTS)
    return Thrust(
        pair.held_by,
        pair.height,
        push,
        push.scale(spacing) if spacing else None,
        pull,
        pull.scale(every) if every and held else None,
    )
