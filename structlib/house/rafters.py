"""The rafters of a roof under combinations of its loads: both solved, from what the path brings to the pair."""

from dataclasses import dataclass
from operator import mul

from structlib.ground.loads import LOAD_TYPES
from structlib.house.roofs import JOISTS, RIDGE_BEAM, TIE
from structlib.mechanics.rafters import solve_rafter

_SAME = 1e-3  # mm
_ALIKE = 1e-12  # both sides of a pair that is the same left and right: rounding


@dataclass(frozen=True)
class PairLoads:
    """What stands on both rafters of a pair, by type: worked out once, and combined as often as it is asked.

    ``sides`` are, left and right, the run [mm], loads (start, end, amounts) from the eave [mm, N/mm or N], and the lift of
    the wall by type [N]; ``pull`` that of the tie by type [N]. ``alike`` tells that right is as left, which stands alone then.
    """

    rise: float
    height: float
    sides: tuple
    pull: tuple
    alike: bool

    def under(self, factor_of):
        """Solve both rafters under every type with a factor.

        Parameters
        ----------
        factor_of : callable
            The factor of a load type, such as `Combination.factor` [-].

        Returns
        -------
        tuple of structlib.mechanics.rafters.Rafter
            The left one and the right one [-].
        """
        factors = [factor_of(kind) for kind in LOAD_TYPES]
        pull = _total(factors, self.pull)
        found = tuple(
            solve_rafter(run=run, rise=self.rise, lift=_total(factors, lift), pull=pull, height_fraction=self.height,
                         loads=tuple((start, end, _total(factors, amounts)) for start, end, amounts in loads))
            for run, loads, lift in self.sides
        )  # fmt: skip
        return found * (2 if self.alike else 1)


def pair_loads(pair, stretch, spacing):
    """Return what stands on both rafters of a pair.

    Parameters
    ----------
    pair : structlib.house.roofs.Pair
        The pair [-].
    stretch : structlib.house.roofs.Stretch
        Its loads [-].
    spacing : float
        Spacing of the rafters [mm].

    Returns
    -------
    PairLoads
        Loads, lift and pull by type [-].

    Examples
    --------
    >>> from structlib.ground.units import ft, inch, lb, psf
    >>> from structlib.house.plan import Level, Tie
    >>> from structlib.house.roofs import pair_of, surfaces
    >>> tie = Tie(species="Hem-Fir", grade="No.2", size="2x6")
    >>> roof = Level(name="roof", kind="roof", on=("a", "b"), start=0.0, end=30 * ft, slope=(6.0, 12.0), snow=30 * psf,
    ...              roof_live=0.0, tie=tie)
    >>> pair = pair_of(roof, [0.0, 24 * ft], {}, [(0.0, 30 * ft, surfaces(roof, [0.0, 24 * ft]))])
    >>> left, right = pair_loads(pair, pair.stretches[0], 16 * inch).under(lambda kind: 1.0)
    >>> round(left.greatest_moment[0] / (lb * ft)), left == right  # 40 plf x 12 ft x 12 ft / 8
    (720, True)
    """
    loads = [(tuple(float(one) * spacing for one in amounts), start, end) for amounts, start, end in stretch.loads]
    left = tuple(
        (start - pair.left, end - pair.left, one) for one, start, end in loads if start + end <= 2 * pair.ridge
    )
    right = tuple(
        (pair.right - end, pair.right - start, one) for one, start, end in loads if start + end > 2 * pair.ridge
    )
    runs, sides = (pair.ridge - pair.left, pair.right - pair.ridge), []
    alike = _alike(left, right, runs)
    for own, other, run in ((left, right, runs[0]), (right, left, runs[1]))[: 1 if alike else 2]:
        # the wall's lift is turned about the ridge beam, or about the other eave
        arm = run if pair.held_by == RIDGE_BEAM else pair.right - pair.left
        parts = [(force * (arm - place) / arm, amounts) for force, place, amounts in map(_resultant, own)]
        if pair.held_by != RIDGE_BEAM:
            parts += [(force * place / arm, amounts) for force, place, amounts in map(_resultant, other)]
        sides.append(
            (run, own, tuple(sum(part * amounts[kind] for part, amounts in parts) for kind in range(len(LOAD_TYPES))))
        )
    held = pair.held_by in (TIE, JOISTS)
    pull = tuple(one * spacing / (1 - pair.height) if held else 0.0 for one in stretch.thrust)
    return PairLoads(
        pair.rise,
        pair.height,
        tuple(sides),
        pull,
        alike,
    )


def _alike(left, right, runs):
    return (
        _close(*runs)
        and len(left) == len(right)
        and all(
            _close(here, there)
            for one, other in zip(left, right)
            for here, there in zip((*one[:2], *one[2]), (*other[:2], *other[2]))
        )
    )


def _total(factors, amounts):
    return sum(map(mul, factors, amounts))


def _close(one, other):
    return abs(one - other) <= _ALIKE * (1 + abs(one))


def _resultant(load):
    """What a load comes to for one of its amount: length or one, and where it stands."""
    start, end, amounts = load
    return end - start if end - start > _SAME else 1.0, (start + end) / 2, amounts
