"""Snow on the roof beside the bench, as tables: from the ground to the roof, over insulation, and moved by the wind."""

from structlib.ground.refusals import NotAsked
from structlib.ground.showing import show
from structlib.ground.tables import table_row
from structlib.ground.units import ft, psf
from structlib.mechanics import frames, frames_uneven
from structlib.pages.kit.door import hold
from structlib.pages.kit.show import Table
from structlib.pages.topics.roof.example import DEAD, RISE, SPACING, SPAN, pair
from structlib.rules.check import least_verified
from structlib.rules.choice import RULEBOOK

snow = RULEBOOK.room("snow")
_UPPER = (20 * ft, 40 * ft, 100 * ft)


def snow_steps(
    ground: float = 40 * psf,
    rise: float = 6,
    thermal: str = "cold ventilated roof",
    exposure: str = "partially exposed",
    width: float = SPAN,
    system: str = "us",
):
    """Follow the snow from the ground to the roof, a factor at a time.

    ``ground`` [MPa]; ``width`` [mm].

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


def colder_roof(ground: float = 40 * psf, system: str = "us"):
    """Set the snow before and after insulation beside each other: less heat leaks out, less snow melts.

    ``ground`` [MPa].

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
            lambda load: frames.rafter_thrust(**pair(DEAD + load), rise=RISE),
        ),
        (
            "bending in a rafter, with the dead load",
            "moment",
            lambda load: frames.simple_rafter_moment(**pair(DEAD + load)),
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


def one_side_snow(ground: float = 40 * psf, system: str = "us"):
    """Compare balanced snow with snow on one slope only: push, ridge, and the walls.

    ``ground`` [MPa].

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
            lambda left, right: frames_uneven.uneven_eave_reaction(near_load=left, far_load=right, building_span=SPAN),
        ),
        (
            "upright force across the ridge joint",
            "force",
            lambda left, right: frames_uneven.ridge_shear(left_load=left, right_load=right, building_span=SPAN),
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


def blown_from_above(
    ground: float = 40 * psf, clear_height: float = 9 * ft, upper_lengths: tuple = _UPPER, system: str = "us"
):
    """Show how much snow the wind heaps on a lower roof against a higher wall, by the length of the higher roof.

    ``ground`` [MPa]; ``clear_height``, ``upper_lengths`` [mm].

    Examples
    --------
    >>> blown_from_above().rows[2]
    ('100 ft', '3 ft 9 11/16 in', '73.1 psf', '15 ft 2 3/4 in')
    """
    found = snow.ground_snow(ground, edition=snow.EDITION, basis=snow.BASIS)
    drifts = [
        (length, snow.step_drift(found, upper_length=length, clear_height=clear_height)) for length in upper_lengths
    ]
    rows = [
        (
            show(length, "length", system),
            show(one.height, "length", system),
            show(one.greatest_load, "area load", system),
            show(one.width, "length", system),
        )
        for length, one in drifts
    ]
    caption = (
        f"On top of the even snow of the lower roof, under a wall of {show(clear_height, 'length', system)} above that "
        f"snow; ground snow {show(ground, 'area load', system)}. A triangle: most at the wall, nothing where it ends. "
        f"{snow.EDITION} 7.7.1, {least_verified([one.verified for _, one in drifts])}."
    )
    return Table(
        ("higher roof, along the wind", "height of the drift", "more snow at the wall", "it ends after"), rows, caption
    )


hold(globals())
