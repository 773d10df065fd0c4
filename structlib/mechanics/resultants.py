"""Totals of loads spread along a member."""


def load_between(loads, *, start, end):
    """Return the distributed load that falls between two places of a beam.

    Parameters
    ----------
    loads : iterable of tuple
        (start, end, intensity, end intensity) of each distributed load [mm, mm, N/mm, N/mm].
    start : float
        Left place [mm].
    end : float
        Right place [mm].

    Returns
    -------
    float
        Total of the load between the two places [N].

    Examples
    --------
    >>> load_between([(0.0, 100.0, 2.0, 2.0)], start=90.0, end=110.0)
    20.0
    """
    total = 0.0
    for load_start, load_end, intensity, end_intensity in loads:
        left, right = max(start, load_start), min(end, load_end)
        if right <= left:
            continue
        steepness = (end_intensity - intensity) / (load_end - load_start)
        middle = (left + right) / 2
        total += (intensity + steepness * (middle - load_start)) * (right - left)
    return total
