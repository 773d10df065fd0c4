"""The words of the old-wood page: titles, reasons, ranges and sizes, ready to print."""

import numpy

from structlib.ground.showing import show
from structlib.pages.kit import verdict
from structlib.pictures.drawings.old_wood import Cut, Reason
from structlib.rules.members import AT_CUT, Notch


def range_text(numbers, dimension, system):
    """Write the least and the greatest of several values, or the one where both read alike.

    ``numbers`` [by dimension].

    Examples
    --------
    >>> range_text([0.37, 1.63], "ratio", "us")
    '37 % to 163 %'
    """
    if numpy.ndim(numbers) == 0:
        return show(float(numbers), dimension, system)
    low, high = (show(float(end(numbers)), dimension, system) for end in (numpy.min, numpy.max))
    return low if low == high else f"{low} to {high}"


def beyond(check):
    """Tell whether a limit is overstepped, by more than rounding.

    Examples
    --------
    >>> from types import SimpleNamespace
    >>> beyond(SimpleNamespace(share=1.0)), beyond(SimpleNamespace(share=1.01))
    (False, True)
    """
    return check.share > 1 + 1e-9


def ends(compared):
    """Return the least and the greatest share that any of the woods uses, the cut counted: share, what governs, wood."""
    shares = compared.greatest
    found = []
    for wood in (int(shares.argmin()), int(shares.argmax())):
        kind, named = compared.governs(wood), compared.woods[wood]
        found.append((float(shares[wood]), "at the cut" if kind in AT_CUT else kind, f"{named.species} {named.grade}"))
    return tuple(found)


def ranges(compared):
    """Write both ends of the range as sentences, and shorter ones for a film."""
    best, worst = ends(compared)
    if best == worst:
        used = f"{show(best[0], 'ratio')} used ({best[1]})"
        return (f"{best[2]}: {used}",), (used,)
    long = tuple(
        f"{word}: {wood}, {show(share, 'ratio')} used ({governs})"
        for word, (share, governs, wood) in (("Best", best), ("Worst graded", worst))
    )
    return long, tuple(f"{word} wood: {show(one[0], 'ratio')} used" for word, one in (("Best", best), ("Worst", worst)))


def title(now):
    """Say the message of the picture in one line."""
    unjudged = () if now.compared or now.gates else ("the joist", *(("the cut",) if now.cut is not None else ()))
    return verdict.headline(now.checks, now.gates, lambda first: _message(now), unjudged=unjudged)


def _message(now):
    if any(beyond(check) for check in now.on_the_cut):
        return "The code refuses this cut, whatever the wood"
    if now.compared is None:
        return "What is asked of this joist"
    best, worst = ends(now.compared)
    low, high = show(best[0], "ratio"), show(worst[0], "ratio")
    if best == worst:
        return f"{low} used, if it is this wood: {best[1]} asks most"
    if best[0] > 1:
        return f"Even the best wood would need more: {low} to {high} used"
    decides = "the wood decides" if worst[0] > 1 else "by the wood"
    return f"{low} to {high} used down to {now.compared.lowest_grade}: {decides}"


def values_known(compared, limits):
    """Say where design values and limits come from, and how they are known."""
    cuts = f" Limits on cuts: {limits.verified}." if limits else ""
    if compared is None:
        return f"Design values: none that would hold for it.{cuts}"
    known = sorted({*compared.known} - {"seen"}) or ["seen"]
    sources = sorted({wood.source.split(" (")[0] for wood in compared.woods})
    return f"Design values: {', '.join(sources)}; {' and '.join(known)}.{cuts}"


def of_shape(values):
    """Say what the shape of the joist leaves out."""
    found = []
    if values["shape"] not in ("sawn", "hewn"):
        found.append(
            "A log is compared here with sawn lumber of the same outer size. Logs have rules of their own, and so do "
            "cuts in them."
        )
    if values["width"] > values["depth"] and values["shape"] == "flat sides":
        found.append("A log is no wider than it is deep, so this one is taken as round.")
    if values["taper"] and values["shape"] != "round":
        found.append("Only the round log gets thinner here, to the right.")
    return tuple(found)


def size_text(section, plies, system):
    """Write the measured size of the member."""
    width, depth = (show(value, "section length", system) for value in (section.width, section.depth))
    if section.shape == "half round":
        return f"{'half log' if plies == 1 else f'{plies} half logs'}, {width}"
    size = f"{depth} round" if section.shape == "round" else f"{width} x {depth}"
    return size if plies == 1 else f"{plies} of {size}"


def heading(values, place, system):
    """Say which cut it is and where.

    ``place`` [mm].
    """
    if values["cut"] == "none":
        return "Enlarged: no cut"
    words = {"notch top": "a notch in the top", "notch bottom": "a notch in the bottom"}.get(values["cut"], "a hole")
    return f"Enlarged: {words}, {show(place, 'length', system)} from the left"


#: How a limit on a cut is said, long and short, by the kind of its check; {part} is its share of the depth.
LIMITS = {
    "notch depth": ("deep: {asked}, at most {limit}, {part} of the depth", "deep {asked}, at most {limit}"),
    "notch length": ("long: {asked}, at most {limit}, {part} of the depth", "long {asked}, at most {limit}"),
    "notch place": ("in the middle third of the span, where no notch may be", "in the middle third"),
    "notch face": ("on the tension side, where a member this thick has no notch", "on the tension side"),
    "hole width": ("wide: {asked}, at most {limit}, {part} of the depth", "wide {asked}, at most {limit}"),
    "hole edge": ("wood left to the nearer edge: {limit}, at least {asked}", "edge {limit}, at least {asked}"),
}
_KEPT = {"notch place": ("outside the middle third of the span", "outside the middle third")}
_PARTS = {3: "a third", 4: "a quarter", 5: "a fifth", 6: "a sixth"}


def reasons(checks, depth, system):
    """Write each limit on the cut: what is there, and what is the most or the least.

    ``depth`` [mm].
    """
    found = []
    for check in checks:
        said = _KEPT[check.kind] if check.kind in _KEPT and check.asked <= 1e-9 else LIMITS[check.kind]
        part = round(depth / check.given, 6) if check.given > 0 else 0
        told = dict(
            asked=show(check.asked, "section length", system),
            limit=show(check.given, "section length", system),
            part=_PARTS.get(part, f"1/{part:g}"),
        )
        found.append(Reason(*(text.format(**told) for text in said), beyond(check)))
    return tuple(found)


def may_be_cut(values, section, limits, system):
    """Say what the code would let be cut where nothing is; and that an engineered member is its maker's."""
    if values["kind"] != "sawn" and values["cut"] != "none":
        return (Reason("an engineered member is cut only as its maker says", "only as its maker says", True),)
    if limits is None or values["cut"] != "none":
        return ()
    size = lambda value: show(value, "section length", system)  # noqa: E731
    notch, long, edge = (size(one) for one in (limits.notch_depth, limits.notch_length, limits.hole_edge))
    found = [Reason(f"a notch may be {notch} deep and {long} long, in the outer thirds", f"notch {notch} x {long}")]
    if section.depth > 2 * limits.hole_edge:
        hole = size(min(limits.hole_width, section.depth - 2 * limits.hole_edge))
        found.append(Reason(f"a hole may be {hole} wide, {edge} from the edges", f"hole {hole} wide"))
    return tuple(found)


def drawn_cut(cut, depth):
    """Turn a notch or hole into what is drawn.

    ``depth`` [mm]; gives [mm].
    """
    return Cut() if cut is None else Cut("notch" if isinstance(cut, Notch) else "hole", *cut.box(depth))
