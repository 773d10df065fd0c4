"""What the page of the beam says: its title, its marks, the sag that it draws, its notes."""

from structlib.ground.showing import show
from structlib.ground.units import inch, lb
from structlib.house.plies import doubt
from structlib.pages.kit import verdict
from structlib.pages.kit.verdict import CAUTION
from structlib.pages.kit.woods import in_use_notes
from structlib.pictures.drawings.opening import Mark, PreviousBeam
from structlib.pictures.drawings.opening_view import KINDS
from structlib.rules.check import uses_more
from structlib.rules.members import BEAM_FACE, LEAST_SEAT, PLATE_FACE

#: Key of the reader's own LVL among the woods of a page.
OWN = "own lvl"
#: What two people carry with care; a fact of the trade, with no source.
TWO_PEOPLE = 200 * lb


def notes(page, values, result):
    """Return what must be said below the numbers."""
    return (*_of_the_place(page, values, result), *_of_the_beam(page, values, result), CAUTION)


def _of_the_place(page, values, result):
    member = result.member
    where = "Wood on masonry or near soil" if values["below"] == "masonry" else ""
    notes = list(in_use_notes(values, member.material, where, page.rulebook))
    greatest = page.opening.greatest_depth
    if values["position"] == "dropped" and member.depth > greatest * (1 + 1e-9):
        notes.append(
            f"The opening leaves {show(greatest, 'section length', page.system)} for the beam; this one is "
            f"{show(member.depth, 'section length', page.system)} deep."
        )
    length = result.job.clear_width + result.job.left.length + result.job.right.length
    if member.weight_per_length / member.plies * length > TWO_PEOPLE:
        notes.append(
            f"One ply is heavier than two people carry (common practice: about {show(TWO_PEOPLE, 'weight', page.system)})."
        )
    if values["position"] == "flush":
        notes.append(
            "Flush: the joists hang on the sides, so shear is taken in full, and the hangers must pass the "
            "load on; that is for the drawings."
        )
    if result.stands:
        notes.append(
            "A post stands on the beam: solid wood under it must press on every ply, and the beam must be kept from "
            "rolling there. How its load goes on below the seats is not on this page: see notebooks 06 and 07."
        )
    if result.answer.refused:
        notes.append(f"Not judged: {result.answer.refused}.")
    return notes


def _of_the_beam(page, values, result):
    notes = []
    if result.ply_layout is not None:
        layout = result.ply_layout
        notes.append(
            f"Plies joined by {result.job.ply_joint.name}, every "
            f"{show(layout.spacing, 'section length', page.system)} along each line: "
            f"{show(layout.load_between, 'line load', page.system)} pass from ply to ply, as if all hung on "
            f"one side ({layout.verified})."
        )
    if doubt(result.choice, page.rulebook):
        notes.append(f"Doubtful: {doubt(result.choice, page.rulebook)}.")
    repeated = [one for check in result.checks for one in check.factors if one.symbol == "C_r" and one.value > 1]
    if repeated:
        notes.append(
            f"Three or more plies of one beam count as members that share: the bending value has the "
            f"repetitive-member factor {repeated[0].value:g} in it ({repeated[0].clause})."
        )
    if result.job.left.below == "post":
        notes.append("On end grain the beam's own face governs; the posts below are a check of their own.")
    if result.member.material.kind == "lvl" and values["wood"] != OWN:
        notes.append("LVL values here are generic and recalled; enter those of the maker's evaluation report.")
    notes.append(
        f"Design values of {result.member.material.name}: {result.member.material.source}, {result.member.material.verified}."
    )
    return notes


def span_over(span, sag):
    """Write a sag as a part of the span.

    ``span``, ``sag`` [mm].
    """
    return f"span/{span / sag:.0f}" if sag > span / 100000 else "span/100000 or less"


def clear(text):
    """Write the clear width with its word where there is room beside the picture for both."""
    return f"{text} clear" if len(text) <= 10 else text


def jacks(seat):
    """Count the jack studs that are drawn under a seat.

    ``seat`` [mm].
    """
    return max(1, min(5, int(seat / (1.5 * inch) + 1e-6)))


def greatest(result):
    """Return what the combination with the greatest moment asks."""
    return max(result.demands, key=lambda demand: abs(demand.solution.extremes.moment.value))


def drawn_sag(result):
    """Return the sag check that governs among those that decide: the one to draw, with its own limit."""
    return verdict.worst(check for check in result.checks if check.kind == "sag")


def hangs(result, name):
    """Tell which load a sag check is of, and the shape under it; all load where no such check was made.

    Gives [-, mm].
    """
    check = next((one for one in result.checks if one.name == name), None)
    demand = greatest(result)
    if check is not None:
        demand = next(one for one in result.demands if one.combination.name == check.combination)
    live = check is not None and name == "sag under live load"
    return "live load" if live else "all load", (demand.variable if live else demand.solution).points(48)


def ghost(result, name):
    """Return the beam before, hanging under the same kind of load as the beam now."""
    _, points = hangs(result, name)
    return PreviousBeam(result.member.depth, tuple(points.x.tolist()), tuple(points.deflection.tolist()))


def merged(checks):
    """Take left and right of the same question as one: the end that uses more."""
    best, order = {}, []
    for check in checks:
        key = check.name.replace("left", "").replace("right", "")
        if key not in best:
            order.append(key)
        if key not in best or uses_more(check.share, best[key].share):
            best[key] = check
    return [best[key] for key in order]


def marks(result):
    """Return the worst check of each kind. A seat that is too short is marked where it is crushed: at the seat."""
    worst = {}
    for check in result.checks:
        kind = {LEAST_SEAT: BEAM_FACE, PLATE_FACE: BEAM_FACE}.get(check.kind, check.kind)
        if check.decides and kind in KINDS and (kind not in worst or uses_more(check.share, worst[kind].share)):
            worst[kind] = check
    return tuple(
        Mark(kind, check.position, check.share, check.sentence, check is result.governs)
        for kind, check in worst.items()
    )


_ASKS = {
    "bending": "Bending",
    "shear": "Shear",
    BEAM_FACE: "Crushing at the seat",
    PLATE_FACE: "Crushing at the seat",
    LEAST_SEAT: "Seat length",
    "sag": "Sag",
}


def title(result, gates):
    """Word the title of the page."""

    def words(first):
        if first is None:
            return "What comes down on the beam"
        word = _ASKS.get(first.kind, first.kind.capitalize())
        if first.share > 1.0:
            return f"{word} asks {first.share:.2f} times what this beam can give"
        return f"{word} governs: {verdict.used(first.share)}"

    unjudged = ("the beam",) if result.answer.refused else ()
    return verdict.headline(merged(result.checks), gates, words, unjudged=unjudged)
