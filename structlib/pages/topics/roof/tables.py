"""What holds a roof, beside the bench, as tables: ties and collar ties, headroom, and formulas beside a solver."""

import numpy

from structlib.ground.showing import show
from structlib.mechanics import frames, frames_spread
from structlib.mechanics.plane_frame import solve_frame
from structlib.mechanics.rafter_pair import rafter_pair
from structlib.pages.kit.door import hold
from structlib.pages.kit.show import Picture, Table
from structlib.pages.topics.roof.example import DEAD, RISE, SNOW, SPACING, SPAN, pair, stiffness
from structlib.pictures.drawings.headroom import HeadroomCurve, HeadroomView, draw_headroom
from structlib.rules.choice import RULEBOOK

roof_ties = RULEBOOK.room("roof_ties")


def _solved(rise=RISE, **more):
    line = (DEAD + SNOW) * SPACING
    given = {"left_load": line, "right_load": line, **stiffness("2x8"), **more}
    given.setdefault("tie_axial_stiffness", stiffness("2x6")["axial_stiffness"])
    return solve_frame(rafter_pair(building_span=SPAN, rise=rise, **given))


def _bending(solved):
    names = [name for name in solved.frame.bars if "rafter" in name]
    return max(abs(solved.greatest_moment(name)[0]) for name in names)


def _parted(solved):
    return solved.move("right")[0] - solved.move("left")[0]


def collar_tie(system: str = "us"):
    """Show what a collar tie does under weight: with a tie at the eaves, and alone.

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


def what_ties_are_called(system: str = "us"):
    """List what a tie counts as by its height, in the words of the rules.

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


def headroom(
    building_span: float = SPAN, rise: float = RISE, load: float = DEAD + SNOW, frame: str = "page", system: str = "us"
):
    """Draw the headroom a raised tie gains against the pull and the bending it costs.

    ``building_span``, ``rise`` [mm]; ``load`` [MPa].

    Examples
    --------
    >>> "1,080 lb" in repr(headroom()) and "2,400 lb-ft" in repr(headroom())
    True
    """
    heights = numpy.linspace(0.0, 0.6, 61)
    third = 1 / 3
    heights = numpy.sort(numpy.append(heights, third))
    alike = {"line_load": load * SPACING, "building_span": building_span}
    thrust = frames.rafter_thrust(**alike, rise=rise)
    simple = frames.simple_rafter_moment(**alike)
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


def formula_beside_frame(height_fraction: float = 0.25, system: str = "us"):
    """Answer one raised tie twice: by the derived formulas, and by a frame solver that does not know them.

    Examples
    --------
    >>> formula_beside_frame().rows[0]
    ('pull in the tie', '960 lb', '960 lb')
    """
    solved = _solved(height_fraction=height_fraction)
    alike, stiff = pair(), stiffness("2x8")
    bent = frames_spread.spread_by_bending(
        **alike, rise=RISE, height_fraction=height_fraction, bending_stiffness=stiff["bending_stiffness"]
    )
    bent += frames_spread.spread_by_tie(
        **alike,
        rise=RISE,
        height_fraction=height_fraction,
        axial_stiffness=stiffness("2x6")["axial_stiffness"],
        joint_slip=0.0,
    )
    pairs = (
        (
            "pull in the tie",
            frames.tie_force(**alike, rise=RISE, height_fraction=height_fraction),
            solved.axial("tie", 0.5),
            "force",
        ),
        (
            "bending at the tie",
            frames.simple_rafter_moment(**alike) * frames.raised_tie_bending_factor(height_fraction=height_fraction),
            solved.moment("left rafter 1", 1.0),
            "moment",
        ),
        (
            "most bending",
            frames.simple_rafter_moment(**alike) * frames.raised_tie_greatest_factor(height_fraction=height_fraction),
            _bending(solved),
            "moment",
        ),
        ("eaves part by", bent, _parted(solved), "small length"),
    )
    return Table(
        ("", "by the formula", "by the solver"),
        [(name, show(one, kind, system), show(float(other), kind, system)) for name, one, other, kind in pairs],
        "The solver also counts that the rafters shorten along themselves.",
    )


def printed_numbers():
    """Give our own numbers for the printed ones of this notebook, by their names in
    data/published_checks.csv.

    Gives [-].

    Examples
    --------
    >>> [round(number, 3) for number in printed_numbers().values()]
    [0.671, 0.756, 0.833, 0.905]
    """
    return {
        f"rafter span factor with a tie {word} up": float(
            frames.raised_tie_bending_factor(height_fraction=1 / part) ** -0.5
        )
        for part, word in ((3, "one third"), (4, "one quarter"), (5, "one fifth"), (6, "one sixth"))
    }


hold(globals())
