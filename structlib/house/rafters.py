"""The rafters of a roof under a combination of its loads: both solved, from what the path brings to the pair."""

from structlib.ground.loads import LOAD_TYPES
from structlib.house.roofs import JOISTS, RIDGE_BEAM, TIE
from structlib.mechanics.rafters import solve_rafter

_SAME = 1e-3  # mm
_ALIKE = 1e-12  # both sides of a pair that is the same left and right: rounding


def rafters_under(pair, stretch, spacing, factor_of):
    """Solve both rafters of a pair under loads of every type, each with a factor.

    Parameters
    ----------
    pair : structlib.house.roofs.Pair
        The pair; something holds it [-].
    stretch : structlib.house.roofs.Stretch
        Its loads [-].
    spacing : float
        Spacing of the rafters [mm].
    factor_of : callable
        The factor of a load type, such as `Combination.factor` [-].

    Returns
    -------
    tuple of structlib.mechanics.rafters.Rafter
        The left one and the right one [-].

    Examples
    --------
    >>> from structlib.ground.units import ft, inch, lb, psf
    >>> from structlib.house.plan import Level, Tie
    >>> from structlib.house.roofs import pair_of, surfaces
    >>> tie = Tie(species="Hem-Fir", grade="No.2", size="2x6")
    >>> roof = Level(name="roof", kind="roof", on=("a", "b"), start=0.0, end=30 * ft, slope=(6.0, 12.0), snow=30 * psf,
    ...              roof_live=0.0, tie=tie)
    >>> pair = pair_of(roof, [0.0, 24 * ft], {}, [(0.0, 30 * ft, surfaces(roof, [0.0, 24 * ft]))])
    >>> left, right = rafters_under(pair, pair.stretches[0], 16 * inch, lambda kind: 1.0)
    >>> round(left.greatest_moment[0] / (lb * ft)), left == right  # 40 plf x 12 ft x 12 ft / 8
    (720, True)
    """
    factors = [factor_of(kind) for kind in LOAD_TYPES]
    total = lambda amounts: sum(one * factor for one, factor in zip(amounts, factors))  # noqa: E731
    loads = [(total(amounts) * spacing, start, end) for amounts, start, end in stretch.loads]
    pull = 0.0
    if pair.held_by in (TIE, JOISTS):
        pull = total(stretch.thrust) * spacing / (1 - pair.height)
    sides = (
        tuple((start - pair.left, end - pair.left, one) for one, start, end in loads if start + end <= 2 * pair.ridge),
        tuple((pair.right - end, pair.right - start, one) for one, start, end in loads if start + end > 2 * pair.ridge),
    )
    span, found = pair.right - pair.left, []
    runs = ((*sides, pair.ridge - pair.left), (*sides[::-1], pair.right - pair.ridge))
    alike = len(sides[0]) == len(sides[1]) and _close(runs[0][2], runs[1][2]) and all(
        _close(here, there) for one, other in zip(*sides) for here, there in zip(one, other))
    for own, other, run in runs[:1] if alike else runs:
        if pair.held_by == RIDGE_BEAM:
            lift = sum(force * (run - place) for force, place in map(_resultant, own)) / run
        else:
            lift = sum(force * (span - place) for force, place in map(_resultant, own)) / span
            lift += sum(force * place for force, place in map(_resultant, other)) / span
        found.append(solve_rafter(run=run, rise=pair.rise, loads=own, lift=lift, pull=pull, height_fraction=pair.height))
    return tuple(found) * (2 if alike else 1)


def _close(one, other):
    return abs(one - other) <= _ALIKE * (1 + abs(one))


def _resultant(load):
    start, end, amount = load
    return amount * (end - start) if end - start > _SAME else amount, (start + end) / 2
