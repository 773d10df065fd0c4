"""What several line loads on one beam come to."""


def greatest_line_load(loads):
    """Return the greatest sum of line loads anywhere on a beam.

    Parameters
    ----------
    loads : iterable of tuple
        (start, end, intensity, end intensity) of each load [mm, mm, N/mm, N/mm].

    Returns
    -------
    float
        The greatest sum; between ends of loads it is straight, so the ends are enough [N/mm].

    Examples
    --------
    >>> greatest_line_load([(0.0, 1000.0, 2.0, 2.0), (500.0, 1000.0, 0.0, 3.0)])
    5.0
    """
    loads, greatest = tuple(loads), 0.0
    places = sorted({place for start, end, _, _ in loads for place in (start, end)})
    for left, right in zip(places, places[1:]):
        over = [one for one in loads if one[0] <= left and one[1] >= right]
        for place in (left, right):
            total = sum(
                low + (high - low) * (place - start) / (end - start) for start, end, low, high in over
            )
            greatest = max(greatest, total)
    return greatest
