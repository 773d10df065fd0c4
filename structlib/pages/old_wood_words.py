"""The words of the old-wood page: titles, reasons, ranges and sizes, ready to print."""

from structlib.ground.showing import show
from structlib.pages import verdict
from structlib.pages.old_wood_case import beyond
from structlib.pictures.drawings.old_wood import Cut, Reason
from structlib.rules.us import notches


def range_text(numbers, dimension, system):
    """Write the least and the greatest of several values, or the one where both read alike.

    Parameters
    ----------
    numbers : sequence of float
        Values [by dimension].
    dimension : str
        What they are [-].
    system : str
        'us' or 'metric' [-].

    Returns
    -------
    str
        The text [-].

    Examples
    --------
    >>> range_text([0.37, 1.63], "ratio", "us")
    '37 % to 163 %'
    """
    low, high = min(numbers), max(numbers)
    ends = [show(value, dimension, system) for value in (low, high)]
    return ends[0] if ends[0] == ends[1] else f"{ends[0]} to {ends[1]}"


def ranges(used):
    """Write both ends of the range as sentences, and shorter ones for a film.

    Parameters
    ----------
    used : tuple of Used
        The least and the greatest share [-].

    Returns
    -------
    tuple of tuple of str
        The sentences, and the short ones [-].
    """
    best, worst = used
    if best == worst:
        return (f"{best.wood}: {show(best.share, 'ratio')} used ({best.governs})",), (
            f"{show(best.share, 'ratio')} used ({best.governs})",
        )
    long = tuple(
        f"{word}: {one.wood}, {show(one.share, 'ratio')} used ({one.governs})"
        for word, one in (("Best", best), ("Worst graded", worst))
    )
    return long, tuple(
        f"{word} wood: {show(one.share, 'ratio')} used" for word, one in (("Best", best), ("Worst", worst))
    )


def title(case, judged, gates):
    """Say the message of the picture in one line.

    Parameters
    ----------
    case : structlib.pages.old_wood_case.OldWoodCase
        The joist worked out [-].
    judged : tuple of structlib.pages.verdict.Judged or structlib.rules.check.Check
        Every question of the page [-].
    gates : tuple of str
        Gates that withdraw the verdicts [-].

    Returns
    -------
    str
        The title [-].
    """
    return verdict.headline(judged, gates, lambda first: _message(case))


def _message(case):
    if case.refused:
        return "The code refuses this cut, whatever the wood"
    best, worst = case.used
    low, high = show(best.share, "ratio"), show(worst.share, "ratio")
    if best == worst:
        return f"{low} used, if it is this wood: {best.governs} asks most"
    if best.share > 1:
        return f"Even the best wood would need more: {low} to {high} used"
    decides = "the wood decides" if worst.share > 1 else "by the wood"
    return f"{low} to {high} used down to {case.lowest_grade}: {decides}"


def size_text(values, section, system):
    """Write the measured size of the member.

    Parameters
    ----------
    values : dict
        Values of the controls [any].
    section : structlib.ground.measured_sections.MeasuredSection
        Its section [-].
    system : str
        'us' or 'metric' [-].

    Returns
    -------
    str
        The text [-].
    """
    show_size = lambda value: show(value, "section length", system)  # noqa: E731
    plies = int(values["plies"])
    if section.shape == "half round":
        logs = "half log" if plies == 1 else f"{plies} half logs"
        return f"{logs}, {show_size(section.width)}"
    if section.shape == "round":
        size = f"{show_size(section.depth)} round"
    else:
        size = f"{show_size(section.width)} x {show_size(section.depth)}"
    return size if plies == 1 else f"{plies} of {size}"


def heading(values, place, system):
    """Say which cut it is and where.

    Parameters
    ----------
    values : dict
        Values of the controls [any].
    place : float
        Its middle, from the left [mm].
    system : str
        'us' or 'metric' [-].

    Returns
    -------
    str
        The text [-].
    """
    if values["cut"] == "none":
        return "Enlarged: no cut"
    words = {"notch top": "a notch in the top", "notch bottom": "a notch in the bottom"}.get(
        values["cut"], "a hole"
    )
    return f"Enlarged: {words}, {show(place, 'length', system)} from the left"


def reasons(checks, system):
    """Write each limit on the cut: what is there, and what is the most or the least.

    Parameters
    ----------
    checks : iterable of structlib.rules.check.Check
        The code's limits [-].
    system : str
        'us' or 'metric' [-].

    Returns
    -------
    tuple of structlib.pictures.drawings.old_wood.Reason
        One a limit [-].
    """
    found = []
    for check in checks:
        asked, limit = (show(value, "section length", system) for value in (check.asked, check.given))
        text, short = {
            "depth of the notch": (f"deep: {asked}, at most {limit}", f"deep {asked}, at most {limit}"),
            "length of the notch": (
                f"long: {asked}, at most {limit}, a third of the depth",
                f"long {asked}, at most {limit}",
            ),
            "outside the middle third": (
                ("in the middle third of the span, where no notch may be", "in the middle third")
                if check.asked > 1e-9
                else ("outside the middle third of the span", "outside the middle third")
            ),
            "tension side": ("on the tension side of a member 4 in thick or more", "on the tension side"),
            "diameter of the hole": (
                f"wide: {asked}, at most {limit}, a third of the depth",
                f"wide {asked}, at most {limit}",
            ),
            "wood above and below": (
                f"wood left to the nearer edge: {limit}, at least {asked}",
                f"edge {limit}, at least {asked}",
            ),
        }[check.name]
        if check.name == "depth of the notch":
            part = "a quarter" if check.formula.endswith("4") else "a sixth"
            text += f", {part} of the depth"
        found.append(Reason(text, short, beyond(check)))
    return tuple(found)


def may_be_cut(values, section, gates, system):
    """Say what the code would let be cut where nothing is; and that an engineered member is its maker's.

    Parameters
    ----------
    values : dict
        Values of the controls [any].
    section : structlib.ground.measured_sections.MeasuredSection
        The section [-].
    gates : tuple of str
        Gates; where one stands nothing is said [-].
    system : str
        'us' or 'metric' [-].

    Returns
    -------
    tuple of structlib.pictures.drawings.old_wood.Reason
        What may be cut [-].
    """
    if values["kind"] != "sawn" and values["cut"] != "none":
        return (Reason("an engineered member is cut only as its maker says", "only as its maker says", True),)
    if gates or values["cut"] != "none" or section.shape != "sawn":
        return ()
    size = lambda value: show(value, "section length", system)  # noqa: E731
    depth = section.depth
    notch, long = (
        depth / notches.cut_limit("notch_depth_divisor"),
        depth / notches.cut_limit("notch_length_divisor"),
    )
    hole = depth / notches.cut_limit("hole_diameter_divisor")
    least = notches.cut_limit("hole_edge_distance")
    found = [
        Reason(
            f"a notch may be {size(notch)} deep and {size(long)} long, in the outer thirds",
            f"notch {size(notch)} x {size(long)}",
        )
    ]
    if depth > 2 * least:
        found.append(
            Reason(
                f"a hole may be {size(min(hole, depth - 2 * least))} wide, {size(least)} from the edges",
                f"hole {size(min(hole, depth - 2 * least))} wide",
            )
        )
    return tuple(found)


def drawn_cut(cut, depth):
    """Turn a notch or hole into what is drawn.

    Parameters
    ----------
    cut : structlib.rules.us.notches.Notch or structlib.rules.us.notches.Hole or None
        The cut [-].
    depth : float
        Depth of the member [mm].

    Returns
    -------
    structlib.pictures.drawings.old_wood.Cut
        Its box [mm].
    """
    if cut is None:
        return Cut()
    if isinstance(cut, notches.Notch):
        low, high = (depth - cut.depth, depth) if cut.face == "top" else (0.0, cut.depth)
        return Cut("notch", cut.start, cut.end, low, high)
    half = cut.diameter / 2
    return Cut("hole", cut.place - half, cut.place + half, cut.height - half, cut.height + half)
