"""Work on a roof that stands, as tables and a plan: a dormer built later, and layers added."""

from structlib.ground.lumber import find_material
from structlib.ground.showing import show
from structlib.ground.sizes import dressed_size
from structlib.ground.units import ft, psf
from structlib.mechanics import frames, frames_along
from structlib.mechanics.beams import Beam, LineLoad, PointLoad, Support, solve
from structlib.pages.kit.door import hold
from structlib.pages.kit.show import Picture, Table
from structlib.pages.topics.roof.example import DEAD, RISE, SNOW, SPACING, SPAN, UNDER_SNOW, WOOD, pair
from structlib.pictures.drawings.dormer import DormerView, draw_dormer
from structlib.rules.choice import RULEBOOK
from structlib.rules.members import RafterDemand, RafterMember

layers, snow = map(RULEBOOK.room, ("layers", "snow"))


def _share_of(nominal, plies, spacing, moment, push):
    """How much of a rafter bending and the push along it use."""
    size, wood = dressed_size(nominal), find_material(*WOOD, nominal)
    slope = frames.slope_length(building_span=SPAN, rise=RISE)
    member = RafterMember(wood, size.width, size.depth, plies, slope, 24 * RISE / SPAN, spacing)
    demand = RafterDemand(UNDER_SNOW, push, moment, 0.5, 0.0, 0.0, (), 0.0, 0.0)
    return next(one.share for one in RULEBOOK.checks(member, (demand,)) if one.kind == "bending")


def dormer(
    rafters_cut: int = 3, below: float = 2 * ft, above: float = 4 * ft, nominal: str = "2x8", system: str = "us"
):
    """Plan a dormer: what its headers carry, and what that asks of the rafters beside it, built now or later.

    ``below``, ``above`` [mm].

    Examples
    --------
    >>> dormer().rows[0]
    ('opening between trimmers', '', '5 ft 4 in', '5 ft 4 in')
    """
    half, load = SPAN / 2, DEAD + SNOW
    opening = (rafters_cut + 1) * SPACING
    tails = {"lower": below, "upper": above}
    headers = {name: load * tail / 2 for name, tail in tails.items()}  # half of each tail hangs on its header
    pushes = {name: line * opening / 2 for name, line in headers.items()}
    # a trimmer keeps the half strip on its far side; what lies between the trimmers comes by the headers
    line = load * SPACING
    today = Beam(half, 1.0, (Support(0.0), Support(half)), (LineLoad(0.0, half, line),))
    later = Beam(
        half,
        1.0,
        (Support(0.0), Support(half)),
        (
            LineLoad(0.0, half, line / 2),
            PointLoad(below, pushes["lower"]),
            PointLoad(half - above, pushes["upper"]),
        ),
    )
    moments = [abs(solve(one).extremes.moment.value) for one in (today, later)]
    push = frames_along.compression_above_tie(**pair(), rise=RISE, height_fraction=0.0, distance_from_ridge=half)
    later_push = push * (1 + rafters_cut / 2)
    # rafters side by side help each other; a trimmer stands alone beside its opening
    shares = [
        show(_share_of(nominal, plies, spacing, moment, push), "ratio", system)
        for moment, plies, spacing, push in (
            (moments[0], 1, SPACING, push), (moments[1], 1, opening, later_push), (moments[1], 2, opening, later_push),
        )
    ]  # fmt: skip
    say = lambda value, kind: show(value, kind, system)  # noqa: E731
    heads = [f"lower {say(headers['lower'], 'line load')}, upper {say(headers['upper'], 'line load')}"] * 2
    hung = [f"{say(pushes['lower'], 'force')} and {say(pushes['upper'], 'force')}"] * 2
    rows = [
        ("opening between trimmers", "", *[say(opening, "length")] * 2),
        ("load along the headers", "", *heads),
        ("each header hangs on each trimmer with", "", *hung),
        ("bending in a rafter or trimmer", say(moments[0], "moment"), *[say(moments[1], "moment")] * 2),
        ("bending and compression, share used", *shares),
    ]
    caption = (
        f"{rafters_cut} of the {nominal} rafters cut; headers {say(below, 'length')} from the wall and "
        f"{say(above, 'length')} from the ridge. The push of the cut rafters is given to the trimmers. "
        "The walls of the dormer, its own roof and its hangers are not in it, nor what holds the feet of the cut rafters: "
        "plan that with the engineer."
    )
    return Table(("", "a rafter today", "opening, single trimmers", "opening, trimmers doubled"), rows, caption)


def dormer_plan(
    rafters_cut: int = 3,
    below: float = 2 * ft,
    above: float = 4 * ft,
    nominal: str = "2x8",
    frame: str = "page",
    system: str = "us",
):
    """Draw the opening of `dormer` from above: cut rafters, headers, and the second ply of each trimmer.

    ``below``, ``above`` [mm].

    Examples
    --------
    >>> "upper header 90 plf, lower header 45 plf" in repr(dormer_plan()).lower()
    True
    """
    rows = {row[0]: row for row in dormer(rafters_cut, below, above, nominal, system).rows}
    lower, upper = rows["load along the headers"][2].split(", ")
    shares = rows["bending and compression, share used"]
    view = DormerView(
        title=f"Trimmers: {shares[2]} used single, {shares[3]} doubled",
        half_span=SPAN / 2,
        spacing=SPACING,
        rafters_cut=rafters_cut,
        below=below,
        above=above,
        width_text=rows["opening between trimmers"][2],
        lower_text=lower.removeprefix("lower "),
        upper_text=upper.removeprefix("upper "),
        trimmer_text=f"{shares[2]} used when single, {shares[3]} when doubled",
        note="To scale, seen from above. Dashed: the opening, cut later. Orange edge: what goes in now.",
    )
    return Picture(draw_dormer(view, frame))


def layers_added(*, trigger: float, trigger_source: str, system: str = "us"):
    """Say by how much added layers change the load on what stays, beside a trigger from the reader's own
    code.

    Examples
    --------
    >>> layers_added(trigger=0.05, trigger_source="an example").rows[0][:4]
    ('rafter', '60 plf', '66.9 plf', '+11.6 %')
    """
    found = snow.ground_snow(40 * psf, edition=snow.EDITION, basis=snow.BASIS)
    before, after, _ = snow.thermal_change(found, before="heated", after="cold ventilated roof", exposure=1.0)
    # the roof of these tables carries 30 psf; a colder one carries more in the same proportion
    colder = SNOW * after / before
    half = SPAN / 2
    members = [
        layers.KeptMember("rafter", DEAD * SPACING, SNOW * SPACING, SPACING, colder * SPACING),
        layers.KeptMember("ridge beam", DEAD * half, SNOW * half, half, colder * half),
    ]
    added = [
        layers.AddedLayer("second layer of shingles", 2 * psf),
        layers.AddedLayer("insulation and board", 2.2 * psf),
        layers.AddedLayer("old ceiling taken out", -2 * psf),
    ]
    rows = [
        (
            change.name,
            show(change.before, "line load", system),
            show(change.after, "line load", system),
            f"{100 * change.change:+.1f} %",
            "above the trigger: ask" if change.above else "below the trigger",
            change.trigger_source,
        )
        for change in layers.layer_changes(members, added, trigger=trigger, trigger_source=trigger_source)
    ]
    caption = (
        "Added: "
        + ", ".join(f"{one.name} {show(one.area_load, 'area load', system)}" for one in added)
        + ". Snow grows too, because the roof gets colder. Weights are examples of this page."
    )
    return Table(("member", "before", "after", "change", f"trigger of {100 * trigger:g} %", "from"), rows, caption)


hold(globals())
