"""The roof beside the bench: snow, ties and ridges, headroom, a dormer, joints, and layers added, as
tables."""

import math

import numpy

from structlib.ground.lumber import find_material
from structlib.ground.refusals import NotAsked
from structlib.ground.sections import rectangle_area, rectangle_inertia
from structlib.ground.showing import show
from structlib.ground.tables import in_library_units, table_row
from structlib.ground.units import ft, inch, psf
from structlib.ground.sizes import dressed_size
from structlib.mechanics import frames, frames_along, frames_spread, frames_uneven
from structlib.mechanics.beams import Beam, LineLoad, PointLoad, Support, solve
from structlib.mechanics.plane_frame import solve_frame
from structlib.mechanics.rafter_pair import rafter_pair
from structlib.pages.door import hold
from structlib.pages.show import Picture, Table
from structlib.pictures.drawings.dormer import DormerView, draw_dormer
from structlib.pictures.drawings.headroom import HeadroomCurve, HeadroomView, draw_headroom
from structlib.rules.choice import RULEBOOK
from structlib.rules.members import RafterDemand, RafterMember

dowels, footings, layers, roof_ties, snow = map(RULEBOOK.room, ("dowels", "footings", "layers", "roof_ties", "snow"))

#: The invented house of these tables: 24 ft wide, 6 in 12, rafters every 16 in, 15 psf dead, 30 psf snow.
SPAN, RISE, SPACING, DEAD, SNOW = 24 * ft, 6 * ft, 16 * inch, 15 * psf, 30 * psf
_WOOD = ("Douglas Fir-Larch", "No.2")
_SNOW = RULEBOOK.combinations({"snow"})[-1]
_TIME = _SNOW.time_factor


def _pair(load=DEAD + SNOW, span=SPAN):
    return {"line_load": load * SPACING, "building_span": span}


def _stiffness(nominal):
    size, wood = dressed_size(nominal), find_material(*_WOOD, nominal)
    box = {"width": size.width, "depth": size.depth}
    return {
        "axial_stiffness": wood.modulus * rectangle_area(**box),
        "bending_stiffness": wood.modulus * rectangle_inertia(**box),
    }


def _solved(load=DEAD + SNOW, rise=RISE, **more):
    line = load * SPACING
    given = {"left_load": line, "right_load": line, **_stiffness("2x8"), **more}
    given.setdefault("tie_axial_stiffness", _stiffness("2x6")["axial_stiffness"])
    return solve_frame(rafter_pair(building_span=SPAN, rise=rise, **given))


def _up(length):
    """The next whole inch."""
    return math.ceil(length / inch - 1e-9) * inch


def _bending(solved):
    names = [name for name in solved.frame.bars if "rafter" in name]
    return max(abs(solved.greatest_moment(name)[0]) for name in names)


def _parted(solved):
    return solved.move("right")[0] - solved.move("left")[0]


# ---- snow -----------------------------------------------------------------------------------------------


def snow_steps(
    ground=40 * psf,
    rise=6,
    thermal="cold ventilated roof",
    exposure="partially exposed",
    width=SPAN,
    system="us",
):
    """Follow the snow from the ground to the roof, a factor at a time.

    Parameters
    ----------
    ground : float
        Ground snow load, of the edition and on the basis of the rulebook [MPa].
    rise : float
        Rise of the roof in 12 [-].
    thermal : str
        Thermal condition of the roof [-].
    exposure : str
        Exposure of the roof [-].
    width : float
        Width of the house [mm].
    system : str
        Units of the reader: 'us' or 'metric' [-].

    Returns
    -------
    structlib.pages.show.Table
        One row a step [-].

    Examples
    --------
    >>> [row[2] for row in snow_steps().rows]
    ['40 psf', '28 psf', '30.8 psf', '30.8 psf', '40 psf and 0 psf']
    """
    found = snow.ground_snow(ground, edition=snow.EDITION, basis=snow.BASIS)
    open_air = snow.exposure_factor(roughness="B", exposure=exposure)
    warm = snow.thermal_factor(thermal)
    say = lambda load: show(load, "area load", system)  # noqa: E731
    share = table_row("us_snow_numbers", key="flat_roof_share")
    curve = table_row("us_snow_slope_curves", roof="warm", surface="other")
    flat_warm = snow.flat_roof_snow(found, exposure=open_air.value, thermal=1.0)
    flat = snow.flat_roof_snow(found, exposure=open_air.value, thermal=warm.value)
    slope = float(snow.slope_factor(rise=rise, thermal=warm.value, surface="other"))
    sloped = snow.sloped_roof_snow(flat_snow=flat, slope_factor=slope)
    rows = [
        ("on the ground, p_g", "edition and basis first", say(ground), f"{snow.EDITION}, {snow.BASIS}"),
        (
            "on a flat roof, as if heated",
            f"0.7, C_e {open_air.value:g}",
            say(flat_warm),
            f"Eq. 7.3-1, {share['verified']}; Table 7.3-1, {open_air.verified}",
        ),
        (f"on this roof: {thermal}", f"C_t {warm.value:g}", say(flat), f"Table 7.3-2; {warm.verified}"),
        (f"down its slope, {rise:g} in 12", f"C_s {slope:.2f}", say(sloped), f"Fig. 7.4-1; {curve['verified']}"),
    ]
    try:
        one_side = snow.unbalanced_gable(
            found, rise=rise, eave_to_ridge=width / 2, simple_rafters=True, balanced=sloped
        )
        rows.append(
            (
                "blown to one side",
                "lee slope and the other",
                f"{say(one_side.leeward)} and {say(one_side.windward)}",
                f"7.6.1; {one_side.verified}",
            )
        )
    except NotAsked as refused:
        rows.append(("blown to one side", "", "not asked", str(refused)))
    return Table(("snow", "factor", "load on plan", "from"), rows)


def colder_roof(ground=40 * psf, system="us"):
    """Set the snow before and after insulation beside each other: less heat leaks out, less snow melts.

    Parameters
    ----------
    ground : float
        Ground snow load, of the edition and on the basis of the rulebook [MPa].
    system : str
        Units of the reader: 'us' or 'metric' [-].

    Returns
    -------
    structlib.pages.show.Table
        One row a quantity [-].

    Examples
    --------
    >>> colder_roof().rows[0]
    ('snow on the roof', '28 psf', '30.8 psf', '+10 %')
    """
    found = snow.ground_snow(ground, edition=snow.EDITION, basis=snow.BASIS)
    before, after, _ = snow.thermal_change(found, before="heated", after="cold ventilated roof", exposure=1.0)
    cold = snow.thermal_factor("cold ventilated roof")
    rows = []
    for name, dimension, ask in (
        ("snow on the roof", "area load", lambda load: load),
        (
            "push at each eave, with the dead load",
            "force",
            lambda load: frames.rafter_thrust(**_pair(DEAD + load), rise=RISE),
        ),
        (
            "bending in a rafter, with the dead load",
            "moment",
            lambda load: frames.simple_rafter_moment(**_pair(DEAD + load)),
        ),
    ):
        one, other = ask(before), ask(after)
        change = f"{100 * (other / one - 1):+.0f} %"
        rows.append((name, show(one, dimension, system), show(other, dimension, system), change))
    return Table(
        ("", "heated below", "insulated and ventilated", "change"),
        rows,
        f"C_t 1.0 before and {cold.value:g} after ({cold.clause.split(' (')[0]}, {cold.verified}).",
    )


def one_side_snow(ground=40 * psf, system="us"):
    """Compare balanced snow with snow on one slope only: push, ridge, and the walls.

    Parameters
    ----------
    ground : float
        Ground snow load, of the edition and on the basis of the rulebook [MPa].
    system : str
        Units of the reader: 'us' or 'metric' [-].

    Returns
    -------
    structlib.pages.show.Table
        One row a quantity [-].

    Examples
    --------
    >>> one_side_snow().rows[2]
    ('upright force across the ridge joint', '0 lb', '160 lb')
    """
    found = snow.ground_snow(ground, edition=snow.EDITION, basis=snow.BASIS)
    even = snow.flat_roof_snow(found, exposure=1.0, thermal=1.1)
    blown = snow.unbalanced_gable(found, rise=6, eave_to_ridge=SPAN / 2, simple_rafters=True)
    cases = [
        ((DEAD + left) * SPACING, (DEAD + right) * SPACING)
        for left, right in ((even, even), (blown.leeward, blown.windward))
    ]
    rows = []
    for name, dimension, ask in (
        (
            "pull in the tie",
            "force",
            lambda left, right: frames_uneven.uneven_tie_force(
                left_load=left, right_load=right, building_span=SPAN, rise=RISE
            ),
        ),
        (
            "load on the wall of the loaded side",
            "force",
            lambda left, right: frames_uneven.uneven_eave_reaction(
                near_load=left, far_load=right, building_span=SPAN
            ),
        ),
        (
            "upright force across the ridge joint",
            "force",
            lambda left, right: frames_uneven.ridge_shear(
                left_load=left, right_load=right, building_span=SPAN
            ),
        ),
        (
            "bending in the loaded rafter",
            "moment",
            lambda left, right: frames.simple_rafter_moment(line_load=left, building_span=SPAN),
        ),
    ):
        rows.append((name, *(show(ask(*case), dimension, system) for case in cases)))
    caption = f"A pair of rafters every 16 in, with {show(DEAD, 'area load', system)} dead load."
    return Table(("", "balanced", "all on one side"), rows, caption)


# ---- ties and ridges ------------------------------------------------------------------------------------


def collar_tie(system="us"):
    """Show what a collar tie does under weight: with a tie at the eaves, and alone.

    Parameters
    ----------
    system : str
        Units of the reader: 'us' or 'metric' [-].

    Returns
    -------
    structlib.pages.show.Table
        One row an arrangement, solved as a frame [-].

    Examples
    --------
    >>> collar_tie().rows[1][1:3]
    ('1,016 lb', 'pressed with 985 lb')
    """
    height = 0.7
    cases = (
        ("tie at the eaves", {}, "tie", None),
        ("tie at the eaves, and a collar tie", {"collar_fraction": height}, "tie", "collar"),
        ("collar tie alone, doing a tie's work", {"height_fraction": height}, None, "tie"),
    )
    rows = []
    for name, more, low, high in cases:
        solved = _solved(**more)
        upper = solved.axial(high, 0.5) if high else None
        word = "" if upper is None else ("pulled with " if upper > 0 else "pressed with ")
        rows.append(
            (
                name,
                show(solved.axial(low, 0.5), "force", system) if low else "none",
                "none" if upper is None else word + show(abs(upper), "force", system),
                show(_bending(solved), "moment", system),
                show(_parted(solved), "small length", system),
            )
        )
    caption = (
        f"Rafters 2x8, {show(SPAN, 'length', system)} wide, 6 in 12, under "
        f"{show(DEAD + SNOW, 'area load', system)}; the collar tie 70 % of the way up. Slip of "
        f"joints left out."
    )
    return Table(
        ("held by", "pull at the eaves", "force in the collar tie", "most bending", "eaves part by"),
        rows,
        caption,
    )


def what_ties_are_called(system="us"):
    """List what a tie counts as by its height, in the words of the rules.

    Parameters
    ----------
    system : str
        Units of the reader: 'us' or 'metric' [-].

    Returns
    -------
    structlib.pages.show.Table
        One row a height [-].

    Examples
    --------
    >>> [row[1] for row in what_ties_are_called().rows]
    ['rafter tie', 'rafter tie', 'between', 'collar tie']
    """
    rows = []
    for height in (0.0, 1 / 3, 0.5, 0.75):
        kind = roof_ties.tie_kind(height_fraction=height)
        asked = roof_ties.raised_tie_demand(height_fraction=height)
        rows.append(
            (
                show(height, "ratio", system),
                kind,
                roof_ties.TIE_WORDS[kind],
                f"{asked.exact_joint_factor:.2f}×",
                f"{asked.greatest_moment:.2f}×",
            )
        )
    return Table(("height of the tie", "it is a", "what it does", "its pull", "bending"), rows)


def board_or_beam(ridge_span=12 * ft, system="us"):
    """Set a ridge board beside a ridge beam: what each carries, and what it needs below.

    Parameters
    ----------
    ridge_span : float
        Span of the ridge beam from post to post [mm].
    system : str
        Units of the reader: 'us' or 'metric' [-].

    Returns
    -------
    structlib.pages.show.Table
        One row a question [-].

    Examples
    --------
    >>> board_or_beam().rows[1]
    ('load along it', 'none', '540 plf')
    """
    line = frames.ridge_beam_load(line_load=DEAD + SNOW, building_span=SPAN)
    end = frames.ridge_post_load(ridge_load=line, spans=ridge_span)
    middle = frames.ridge_post_load(ridge_load=line, spans=2 * ridge_span)
    soil = footings.find_soil("clay or silt")
    side, thickness = footings.plain_pad(load=middle, soil=soil, base=5.5 * inch)
    push = frames.rafter_thrust(**_pair(), rise=RISE)
    moment = line * ridge_span**2 / 8
    say = lambda value, kind: show(value, kind, system)  # noqa: E731
    rows = [
        ("what it is", "something to lean on", "a beam on posts"),
        ("load along it", "none", say(line, "line load")),
        ("push at each eave, a pair", say(push, "force"), "none"),
        ("bending in it", "none", say(moment, "moment")),
        ("under it", "nothing", f"end posts {say(end, 'force')}, middle post {say(middle, 'force')}"),
        (
            "under a middle post",
            "nothing",
            f"a way straight down, and a pad {say(_up(side), 'section length')} square and "
            f"{say(_up(thickness), 'section length')} thick on clay",
        ),
        ("the walls need", "a tie at every pair", "no tie; seats cut level"),
    ]
    caption = (
        f"{say(SPAN, 'length')} wide under {say(DEAD + SNOW, 'area load')}; ridge beam over "
        f"{say(ridge_span, 'length')}. Its own weight is left out."
    )
    return Table(("", "ridge board", "ridge beam"), rows, caption)


def headroom(building_span=SPAN, rise=RISE, load=DEAD + SNOW, frame="page", system="us"):
    """Draw the headroom a raised tie gains against the pull and the bending it costs.

    Parameters
    ----------
    building_span : float
        Distance between the walls [mm].
    rise : float
        Height of the ridge above them [mm].
    load : float
        Load on plan [MPa].
    frame : str
        Shape of the picture: 'page', 'wide' or 'tall' [-].
    system : str
        Units of the reader: 'us' or 'metric' [-].

    Returns
    -------
    structlib.pages.show.Picture
        The picture [-].

    Examples
    --------
    >>> "1,080 lb" in repr(headroom()) and "2,400 lb-ft" in repr(headroom())
    True
    """
    heights = numpy.linspace(0.0, 0.6, 61)
    third = 1 / 3
    heights = numpy.sort(numpy.append(heights, third))
    pair = {"line_load": load * SPACING, "building_span": building_span}
    thrust = frames.rafter_thrust(**pair, rise=rise)
    simple = frames.simple_rafter_moment(**pair)
    pull_at = thrust * frames.raised_tie_factor(height_fraction=third)
    bend_at = simple * frames.raised_tie_greatest_factor(height_fraction=third)
    curves = (
        HeadroomCurve(
            "bending in a rafter",
            "moved",
            tuple(frames.raised_tie_greatest_factor(height_fraction=heights)),
            show(bend_at, "moment", system),
        ),
        HeadroomCurve(
            "pull in the tie",
            "force",
            tuple(frames.raised_tie_factor(height_fraction=heights)),
            show(pull_at, "force", system),
        ),
    )
    ticks = tuple(
        (share, show(share * rise, "length", system, precision=2 if system == "us" else 2))
        for share in (0.0, 0.25, 0.5)
    )
    note = (
        f"At the eaves: pull {show(thrust, 'force', system)}, bending {show(simple, 'moment', system)}, "
        "for a pair every "
        f"{show(SPACING, 'section length', system)}."
    )
    view = HeadroomView(
        "Every foot of headroom costs bending first, then pull",
        tuple(heights),
        curves,
        third,
        ticks,
        4.0,
        note,
    )
    return Picture(draw_headroom(view, frame))


def stiff_peak(system="us"):
    """Say what a stiffened peak would have to carry when there is no tie, beside a rafter with one.

    Parameters
    ----------
    system : str
        Units of the reader: 'us' or 'metric' [-].

    Returns
    -------
    structlib.pages.show.Table
        One row a quantity; the gate stands above [-].

    Examples
    --------
    >>> stiff_peak().rows[0][1]
    '4,320 lb-ft'
    """
    pair = _pair()
    moment = frames_spread.stiff_peak_moment(**pair)
    spread = frames_spread.stiff_peak_spread(
        **pair, rise=RISE, bending_stiffness=_stiffness("2x8")["bending_stiffness"]
    )
    rows = [
        ("moment at the peak, w L² / 8", show(moment, "moment", system)),
        (
            "a rafter with its tie at the eaves, for comparison",
            show(frames.simple_rafter_moment(**pair), "moment", system),
        ),
        ("the eaves would part by, peak perfectly stiff, rafters 2x8", show(spread, "small length", system)),
    ]
    gate = (
        "Stop and call first: a peak that carries a moment is an engineered frame. "
        "No plate, strap or plywood is "
        "sized here. Only the demand is shown."
    )
    return Table(("without any tie", "asked"), rows, gate)


# ---- a dormer, joints, layers ---------------------------------------------------------------------------


def dormer(rafters_cut=3, below=2 * ft, above=4 * ft, nominal="2x8", system="us"):
    """Plan a dormer: what its headers carry, and what that asks of the rafters beside it, built now or later.

    Parameters
    ----------
    rafters_cut : int
        Rafters that the opening will cut [-].
    below : float
        Plan distance from the wall to the lower header [mm].
    above : float
        Plan distance from the upper header to the ridge [mm].
    nominal : str
        Size of the rafters [-].
    system : str
        Units of the reader: 'us' or 'metric' [-].

    Returns
    -------
    structlib.pages.show.Table
        One row a question: today, with the opening, with the trimmers doubled [-].

    Examples
    --------
    >>> dormer().rows[0]
    ('opening between trimmers', '', '5 ft 4 in', '5 ft 4 in')
    """
    half, load = SPAN / 2, DEAD + SNOW
    opening = (rafters_cut + 1) * SPACING
    size, wood = dressed_size(nominal), find_material(*_WOOD, nominal)
    slope = frames.slope_length(building_span=SPAN, rise=RISE)
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
    push = frames_along.compression_above_tie(
        **_pair(), rise=RISE, height_fraction=0.0, distance_from_ridge=half
    )
    shares = []
    for moment, plies, times in (
        (moments[0], 1, 1.0),
        (moments[1], 1, 1 + rafters_cut / 2),
        (moments[1], 2, 1 + rafters_cut / 2),
    ):
        # rafters side by side help each other; a trimmer stands alone beside its opening
        member = RafterMember(wood, size.width, size.depth, plies, slope, RISE / half * 12, SPACING if times == 1 else opening)
        demand = RafterDemand(_SNOW, push * times, moment, 0.5, 0.0, 0.0, (), 0.0, 0.0)
        check = next(one for one in RULEBOOK.checks(member, (demand,)) if one.kind == "bending")
        shares.append(show(check.share, "ratio", system))
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
    return Table(
        ("", "a rafter today", "opening, single trimmers", "opening, trimmers doubled"), rows, caption
    )


def dormer_plan(rafters_cut=3, below=2 * ft, above=4 * ft, nominal="2x8", frame="page", system="us"):
    """Draw the opening of `dormer` from above: cut rafters, headers, and the second ply of each trimmer.

    Parameters
    ----------
    rafters_cut : int
        Rafters that the opening will cut, 1 to 5 [-].
    below : float
        Plan distance from the wall to the lower header [mm].
    above : float
        Plan distance from the upper header to the ridge [mm].
    nominal : str
        Size of the rafters [-].
    frame : str
        Shape of the picture: 'page', 'wide' or 'tall' [-].
    system : str
        Units of the reader: 'us' or 'metric' [-].

    Returns
    -------
    structlib.pages.show.Picture
        The picture [-].

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


def slipping_joints(system="us"):
    """Show how far the eaves part when the joints of a tie slip, beside what the rafters bend.

    Parameters
    ----------
    system : str
        Units of the reader: 'us' or 'metric' [-].

    Returns
    -------
    structlib.pages.show.Table
        One row a height of the tie [-].

    Examples
    --------
    >>> slipping_joints().rows[0]
    ('at the eaves', '0.00 in', '0.14 in', '0.27 in')
    """
    rows = []
    for height, name in ((0.0, "at the eaves"), (0.25, "a quarter up"), (1 / 3, "a third up")):
        given = {**_pair(), "rise": RISE, "height_fraction": height}
        bent = frames_spread.spread_by_bending(
            **given, bending_stiffness=_stiffness("2x8")["bending_stiffness"]
        )
        told = [show(bent, "small length", system)]
        for slip in (1 / 16 * inch, 1 / 8 * inch):
            opened = frames_spread.spread_by_tie(
                **given, axial_stiffness=_stiffness("2x6")["axial_stiffness"], joint_slip=slip
            )
            told.append(show(bent + opened, "small length", system))
        rows.append((name, *told))
    slips = [show(part * inch, "section length", system) for part in (1 / 16, 1 / 8)]
    head = ("tie", "rafters bend alone", *(f"and each joint slips {slip}" for slip in slips))
    caption = (
        "How far the eaves part. How much a nailed joint slips is not worked out here: try what you see."
    )
    return Table(head, rows, caption)


def heel_nails(ground=30 * psf, building_span=SPAN, system="us"):
    """Set the nails of the heel joint by the code's table beside a calculation, over the slope.

    Parameters
    ----------
    ground : float
        Ground snow load, of the edition and on the basis of the rulebook [MPa].
    building_span : float
        Distance between the walls [mm].
    system : str
        Units of the reader: 'us' or 'metric' [-].

    Returns
    -------
    structlib.pages.show.Table
        One row a slope [-].

    Examples
    --------
    >>> heel_nails().rows[0][:3]
    ('3 in 12', '992 lb', '11')
    """
    found = snow.ground_snow(ground, edition=snow.EDITION, basis=snow.BASIS)
    wood = find_material(*_WOOD)
    piece = dowels.wood_piece(thickness=1.5 * inch, specific_gravity=wood.specific_gravity)
    # the loads that the table seems to have been made with
    dead, share = (
        in_library_units(table_row("us_roof_tie_rules", key=key), "value")
        for key in ("heel_model_dead", "heel_model_snow_share")
    )
    rows = []
    for rise in (3, 4, 5, 7, 9, 12):
        asked = dict(rise=rise, spacing=SPACING, ground_snow=found, building_span=building_span)
        cell = roof_ties.heel_table_nails(**asked, edition=roof_ties.HEEL_EDITION)
        thrust = frames.rafter_thrust(
            line_load=(dead + share * ground) * SPACING,
            building_span=building_span,
            rise=rise / 12 * building_span / 2,
        )
        ours = roof_ties.heel_joint_nails(
            thrust=thrust, fastener=dowels.nail("16d common"), rafter=piece, tie=piece, time_factor=_TIME
        )
        count = roof_ties.heel_count(cell, ours)
        rows.append(
            (
                f"{rise} in 12",
                show(thrust, "force", system),
                str(count.by_table),
                str(count.by_calculation),
                str(count.nails),
                ""
                if cell.exact
                else f"cell of {cell.rise:g} in 12, {show(cell.building_span, 'length', system)}",
            )
        )
    caption = (
        f"16d common, {show(building_span, 'length', system)} wide, every 16 in, ground snow "
        f"{show(ground, 'area load', system)}; thrust from {show(dead, 'area load', system)} dead and "
        f"{share:g} of it. Table: {roof_ties.HEEL_EDITION}, "
        f"every cell recalled. Computed: {roof_ties.NAIL_CLAUSE.rpartition(' ')[0]} yield of one nail, both pieces 1 1/2 in of fir."
    )
    by = ("nails by the table", "nails computed", "to plan with")
    return Table(("slope", "thrust of a pair", *by, "the table's cell"), rows, caption)


def bolted_joint(diameter=0.5 * inch, bolts=2, system="us"):
    """Check a raised tie bolted to old rafters: the bolts, their distances, and the tie at its holes.

    Parameters
    ----------
    diameter : float
        Diameter of the bolts [mm].
    bolts : int
        One, or two set on a slant [-].
    system : str
        Units of the reader: 'us' or 'metric' [-].

    Returns
    -------
    structlib.pages.show.Table
        One row a check [-].

    Examples
    --------
    >>> bolted_joint().rows[0][0]
    'the bolt that takes most'
    """
    height = 0.25
    wood = find_material(*_WOOD, "2x6")
    pull = frames.tie_force(**_pair(), rise=RISE, height_fraction=height)
    places = [(0.0, 0.0)] if bolts == 1 else [(0.0, -1.25 * inch), (4 * diameter, 1.25 * inch)]
    piece = dict(thickness=1.5 * inch, specific_gravity=wood.specific_gravity)
    checks = roof_ties.bolted_rafter_joint(
        pull=pull,
        fastener=dowels.bolt(diameter),
        places=places,
        tie=dowels.wood_piece(**piece),
        rafter=dowels.wood_piece(**piece, angle=math.atan2(RISE, SPAN / 2)),
        tie_material=wood,
        tie_depth=5.5 * inch,
        tie_end=7 * diameter,
        rafter_edge=2.75 * inch,
        time_factor=_TIME,
        combination=_SNOW.name,
    )
    # the last distance is that of the rafter, the others are those of the tie
    edges = {id(checks[-2]): " of the rafter"}
    rows = [
        (
            check.name + (edges.get(id(check), " of the tie") if check.name == "distance, edge" else ""),
            show(check.asked, check.dimension, system),
            show(check.given, check.dimension, system),
            show(check.share, "ratio", system),
            check.clause,
        )
        for check in checks
    ]
    caption = (
        f"{'One bolt' if bolts == 1 else 'Two bolts'} of {show(diameter, 'section length', system)}, "
        "a 2x6 tie a quarter of the way up, pull "
        f"{show(pull, 'force', system)}. What the hole takes from the old rafter, splits and rot "
        f"are not here."
    )
    return Table(("check", "asked", "can give", "share", "rule"), rows, caption)


def layers_added(*, trigger, trigger_source, system="us"):
    """Say by how much added layers change the load on what stays, beside a trigger from the reader's own
    code.

    Parameters
    ----------
    trigger : float
        Share of change from which the local code asks for a check [-].
    trigger_source : str
        Where the reader has it from [-].
    system : str
        Units of the reader: 'us' or 'metric' [-].

    Returns
    -------
    structlib.pages.show.Table
        One row a member [-].

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
        layers.Layer("second layer of shingles", 2 * psf),
        layers.Layer("insulation and board", 2.2 * psf),
        layers.Layer("old ceiling taken out", -2 * psf),
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
    return Table(
        ("member", "before", "after", "change", f"trigger of {100 * trigger:g} %", "from"), rows, caption
    )


def formula_beside_frame(height_fraction=0.25, system="us"):
    """Answer one raised tie twice: by the derived formulas, and by a frame solver that does not know them.

    Parameters
    ----------
    height_fraction : float
        Height of the tie as a share of the rise [-].
    system : str
        Units of the reader: 'us' or 'metric' [-].

    Returns
    -------
    structlib.pages.show.Table
        What, by formula, by the solver [-].

    Examples
    --------
    >>> formula_beside_frame().rows[0]
    ('pull in the tie', '960 lb', '960 lb')
    """
    solved = _solved(height_fraction=height_fraction)
    pair, stiff = _pair(), _stiffness("2x8")
    bent = frames_spread.spread_by_bending(
        **pair, rise=RISE, height_fraction=height_fraction, bending_stiffness=stiff["bending_stiffness"]
    )
    bent += frames_spread.spread_by_tie(
        **pair,
        rise=RISE,
        height_fraction=height_fraction,
        axial_stiffness=_stiffness("2x6")["axial_stiffness"],
        joint_slip=0.0,
    )
    pairs = (
        (
            "pull in the tie",
            frames.tie_force(**pair, rise=RISE, height_fraction=height_fraction),
            solved.axial("tie", 0.5),
            "force",
        ),
        (
            "bending at the tie",
            frames.simple_rafter_moment(**pair)
            * frames.raised_tie_bending_factor(height_fraction=height_fraction),
            solved.moment("left rafter 1", 1.0),
            "moment",
        ),
        (
            "most bending",
            frames.simple_rafter_moment(**pair)
            * frames.raised_tie_greatest_factor(height_fraction=height_fraction),
            _bending(solved),
            "moment",
        ),
        ("eaves part by", bent, _parted(solved), "small length"),
    )
    return Table(
        ("", "by the formula", "by the solver"),
        [
            (name, show(one, kind, system), show(float(other), kind, system))
            for name, one, other, kind in pairs
        ],
        "The solver also counts that the rafters shorten along themselves.",
    )


def steep_against_flat(load=50 * psf, system="us"):
    """Compare the push of one house under one load on plan at three slopes.

    Parameters
    ----------
    load : float
        Load on plan [MPa].
    system : str
        Units of the reader: 'us' or 'metric' [-].

    Returns
    -------
    structlib.pages.show.Table
        One row a slope [-].

    Examples
    --------
    >>> [row[1] for row in steep_against_flat().rows]
    ['1,200 plf', '600 plf', '300 plf']
    """
    rows = []
    for rise in (3, 6, 12):
        push = frames.rafter_thrust(line_load=load, building_span=SPAN, rise=rise * ft)
        rows.append((f"{rise} in 12", show(push, "line load", system)))
    return Table(("slope", "push along each wall"), rows)


def printed_numbers():
    """Give our own numbers for the printed ones of this notebook, by their names in
    data/published_checks.csv.

    Returns
    -------
    dict
        Span factors of raised ties [-], and the snow on a flat roof [psf].

    Examples
    --------
    >>> [round(number, 3) for number in printed_numbers().values()]
    [0.671, 0.756, 0.833, 0.905, 8.064]
    """
    found = {
        f"rafter span factor with a tie {word} up": float(
            frames.raised_tie_bending_factor(height_fraction=1 / part) ** -0.5
        )
        for part, word in ((3, "one third"), (4, "one quarter"), (5, "one fifth"), (6, "one sixth"))
    }
    shed = snow.ground_snow(15 * psf, edition=snow.EDITION, basis=snow.BASIS)
    flat = snow.flat_roof_snow(shed, exposure=0.8, thermal=1.2, importance=0.8)
    return {**found, "flat roof snow of an unheated shed": float(flat / psf)}


hold(globals())
