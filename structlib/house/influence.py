"""What each support of a joist or a beam gets of a load: half of nothing is assumed, the statics says it."""

from functools import lru_cache

from structlib.mechanics.beams import Beam, LineLoad, PointLoad, Support, solve

_SAME = 1e-3  # mm; a stretch shorter than this is a place


@lru_cache(maxsize=4096)
def influence(places, joints, start, end):
    """Tell what each support gets of a load of 1 for each mm of a stretch, or of 1 at a place.

    Parameters
    ----------
    places : tuple of float
        The supports, in order [mm].
    joints : str
        'cut' over the inner supports, or 'continuous' [-].
    start, end : float
        The stretch; a place where both are the same [mm].

    Returns
    -------
    tuple of float
        For each support [mm for a stretch, - at a place].

    Examples
    --------
    >>> [round(part, 6) for part in influence((0.0, 10.0, 20.0), "continuous", 0.0, 20.0)]
    [3.75, 12.5, 3.75]
    """
    point = end - start <= _SAME
    if joints == "continuous" and len(places) > 2:
        first, last = min(places[0], start), max(places[-1], end)
        load = PointLoad(start - first, 1.0) if point else LineLoad(start - first, end - first, 1.0)
        beam = Beam(last - first, 1.0, [Support(at - first) for at in places], [load])
        return tuple(reaction.force for reaction in solve(beam).reactions)
    found = [0.0] * len(places)
    for index, (left, right) in enumerate(zip(places, places[1:])):
        low = start if index == 0 else max(start, left)
        high = end if index == len(places) - 2 else min(end, right)
        if point:
            inside = (left <= start or index == 0) and (start < right or index == len(places) - 2)
            size, middle = (1.0, start) if inside else (0.0, left)
        else:
            size, middle = max(high - low, 0.0), (low + high) / 2
        found[index + 1] += size * (middle - left) / (right - left)
        found[index] += size * (right - middle) / (right - left)
    return tuple(found)
