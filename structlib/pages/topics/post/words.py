"""What the page of the post says: titles, marks, ticks; no structure is computed here."""

from math import isfinite

from structlib.ground.showing import show
from structlib.ground.units import ft, inch, kN, lb, m
from structlib.pages.kit import verdict
from structlib.pictures.drawings.post import PostMark
from structlib.rules.check import uses_more

BLOCKS = (
    ("not looked yet", "unknown"),
    ("solid blocks", "blocks"),
    ("joists or boards only", "joists"),
)
BLOCKS_WANTED = "through the floor, under every ply, down to what the post stands on; common practice"
NO_BLOCKS = (
    "The post ends on a floor's plate with no solid blocks below: the floor would be crushed, and joists are "
    "not made for that. An engineer says what goes under it. Only what is asked is shown here."
)


def soil_not_known(soil):
    """Say that what the soil bears must be looked at."""
    clause = f" ({soil.clause.split(' (')[0]})" if soil else ""
    return (
        f"The soil is not known, or is fill: what it bears must be looked at on site{clause}. Only what is asked of post, "
        "plate and soil is shown here."
    )


def blocks_asked(values, gates):
    """Say beside the title that nobody looked below the plate on which a post ends."""
    if gates or values["plate"] == "steel" or values["blocks"] != "unknown":
        return ""
    return "; blocks below: not looked yet"


def bows(result, values):
    """Tell which way the post would bow first."""
    if result.refused:
        return "width" if values["held"] != "all" else "depth"
    bowing = [check for check in reversed(result.post) if check.kind.startswith("bowing")]
    if values["held"] == "all" or not bowing:
        return "depth" if values["held"] == "all" else "width"
    return "depth" if max(bowing, key=lambda one: one.share).kind.endswith("depth") else "width"


def marks(result):
    """Return one mark a place: the worst deciding check there."""
    worst = {}
    for check in result.checks:
        place, word = _place(check, result)
        if check.decides and (place not in worst or uses_more(check.share, worst[place][0].share)):
            worst[place] = (check, word)
    marks = []
    for place, (check, word) in worst.items():
        share = verdict.used(check.share).removesuffix(" used")
        told = "too slender" if result.refused and place == "middle" else f"{word} {share}"
        # a post that cannot be judged is the message, whatever the other checks say
        first = place == "middle" if result.refused else check is result.governs
        marks.append(PostMark(place, told, first))
    return tuple(marks)


def _place(check, result):
    """Where a check is marked in the picture, and the word for it there."""
    if check is result.above:
        return "top", "beam"
    if check is result.beam_seat:
        return "top", "seat"
    if check is result.plate:
        return "plate", "plate"
    if check is result.soil_pressure:
        return "soil", "soil"
    if check in result.pad:
        return "soil", "pad"
    if check.kind == "end grain":
        return "plate", "end grain"
    return "middle", {"slenderness": "slender", "size": "size"}.get(check.kind, "post")


def named(column):
    """Name a post."""
    return (
        "The solid post"
        if column.plies == 1 and column.ply_width > 2 * inch
        else ("1 ply" if column.plies == 1 else f"{column.plies} plies")
    )


def carried(result, gates, system):
    """Say what the post carries."""
    name = named(result.column).replace("The solid post", "solid")
    if gates:
        return "no verdict here"
    if result.refused:
        return f"{name}: too slender"
    if result.carries is None:
        return f"{name}: no rule for what it carries"
    return f"{name}: 100 % at {show(result.carries, 'force', system)}"


def title(result, gates, system):
    """Say the message of the picture."""
    unjudged = (*(("load off the middle",) if result.unbent else ()), *(name for name, *_ in result.not_judged))
    words = lambda first: _message(result, first, system)  # noqa: E731
    return verdict.headline(result.checks, gates, words, unjudged=unjudged)


def _message(result, check, system):
    """What the picture says of the check that governs."""
    column = result.column
    name, one = named(column), column.plies == 1
    height, load = show(column.height, "length", system), show(result.axial, "force", system)
    if check is None:
        return f"{load} come down on the post"
    used = verdict.used(check.share)
    if result.refused:
        word = {"size": "least size", "slenderness": "slenderness"}.get(check.kind, check.name)
        return f"{name} at {height}: too slender to be judged; {word} {used}"
    for part, word in (
        (result.above, f"The beam above governs, not the post: {check.name.removeprefix('beam above, ')}"),
        (result.beam_seat, "The seat governs, not the post:"),
        (result.plate, "The plate governs, not the post:"),
        (result.soil_pressure, "The soil governs, not the post:"),
    ):
        if check is part:
            return f"{word} {used}"
    if check.kind == "size":
        return f"A post that stands free has a least size: {used}"
    if check in result.pad:
        return f"The pad's {check.name} governs: {used}"
    if check.kind == "slenderness":
        return f"How slender it is governs, whatever the load: {used}"
    if not isfinite(check.share):
        return f"{name} bow{'s' if one else ''} out under {load} off the middle"
    if check.share > 1:
        verb = "is" if one else "are"
        gives = "it gives" if one else "they give"
        return f"{name} {verb} asked {check.share:.2f} times what {gives}"
    return f"{name} carr{'ies' if one else 'y'} {load} at {height}: {used}"


def note(values, result, gates=()):
    """Say how to read the picture."""
    if result.refused:
        return "Too slender: over 50 times as long as thick between what holds it."
    if result.unbent:
        return "The load off the middle is outside the rule here; see the notes."
    held = {
        "none": "Nothing holds the weak way between its ends.",
        "middle": "Wedges: the weak way is held at mid-height.",
        "all": "Hatched: the wall holds the weak way all along.",
    }[values["held"]]
    return f"Number on a line: plies. {held}" if values["made"] != "solid" and not gates else held


def load_ticks(greatest, system):
    """Return the ticks of the load axis.

    ``greatest`` [N]; gives [N, -].
    """
    if system == "us":
        step = greatest / 4
        return tuple((k * step, f"{k * step / lb:,.0f}") for k in range(5))
    step = 25 * kN if greatest < 150 * kN else 50 * kN
    return tuple((k * step, f"{k * step / kN:.0f}") for k in range(int(greatest / step) + 1))


def height_ticks(system):
    """Return the ticks of the height axis.

    Gives [mm, -].
    """
    if system == "us":
        return tuple((k * ft, "0" if not k else f"{k} ft") for k in (0, 4, 8, 12))
    return tuple((k * m, "0" if not k else f"{k} m") for k in (0, 1, 2, 3))
