"""An over-spanned floor, and a new beam under the middle of it.

The joists go from one long span to two short ones. If they run through, they hog over the new beam: their top
edge is pulled where it never was, and the beam takes 5/8 of the load and not half. If they are cut over it,
each half is a simple span.
"""

from dataclasses import dataclass

from structlib.ground.refusals import BadInput, check_choice
from structlib.ground.showing import show
from structlib.ground.units import ft, plf  # noqa: F401 (plf: in examples)
from structlib.house.inputs import check_one_number, check_yes_or_no
from structlib.mechanics.beams import Beam, LineLoad, Support, solve

WAYS = ("run through", "cut")
LIVE_ON = ("both halves", "one half")


@dataclass(frozen=True)
class Span:
    """What one joist does: greatest sagging and hogging moment (both as positive numbers) [N*mm], greatest
    sag [mm], what each end takes and what the middle takes [N]."""

    sagging: float
    hogging: float
    sag: float
    end: float
    middle: float
    solution: object


@dataclass(frozen=True)
class MidBeam:
    """One joist before and after a beam comes under its middle."""

    before: Span
    after: Span


def with_mid_beam(
    *, span, lasting, passing, bending_stiffness, joists="run through", snug=False, live_on="both halves"
):
    """What a new beam at mid-span does to one joist of an over-spanned floor.

    Parameters
    ----------
    span : float
        Span of the joist today, 4 to 60 ft [mm].
    lasting : float
        Load on the joist that stays, such as its own and the floor's weight [N/mm].
    passing : float
        Load that comes and goes, such as people [N/mm].
    bending_stiffness : float
        EI of the joist [N*mm2].
    joists : str
        'run through' over the new beam, or 'cut' over it [-].
    snug : bool
        True: the beam is set just touching, and takes only what is added later (the passing load). False: the
        joist is first lifted back straight, as far as it will come, and the beam takes its part of all [-].
    live_on : str
        Where the passing load is once the beam is in: on 'both halves', or on 'one half' only, the left one.
        Before the beam it is everywhere [-].

    Returns
    -------
    MidBeam
        Before and after [-].

    Examples
    --------
    >>> found = with_mid_beam(span=16*ft, lasting=13*plf, passing=53*plf, bending_stiffness=4.5e11)
    >>> half = with_mid_beam(span=16*ft, lasting=13*plf, passing=53*plf, bending_stiffness=4.5e11,
    ...                      live_on="one half")
    >>> round(half.after.sagging / found.after.sagging, 2)
    1.29
    >>> round(found.after.sag / found.before.sag, 3), round(found.before.sagging / found.after.hogging, 6)
    (0.026, 4.0)
    """
    check_one_number(
        "span", span, low=4 * ft, high=60 * ft, shown=lambda mm: show(mm, "length"), hint="for example 16*ft"
    )
    for name, load in (("lasting load", lasting), ("passing load", passing)):
        check_one_number(name, load, low=0.0, high=1000.0, hint="for example 20*plf")
    check_one_number("bending stiffness", bending_stiffness, low=0.0, high=1e18, low_allowed=False)
    check_choice("joists", joists, WAYS)
    check_yes_or_no("snug", snug)
    check_choice("where the live load is", live_on, LIVE_ON)
    if lasting + passing <= 0:
        raise BadInput("there must be some load on the joist, for example lasting=13*plf")
    before = _one_span(span, lasting + passing, bending_stiffness)
    reach = span if live_on == "both halves" else span / 2
    loads = [LineLoad(0.0, span, lasting), LineLoad(0.0, reach, passing)]
    if not snug:
        return MidBeam(before, _two_spans(span, loads, bending_stiffness, joists))
    if joists == "cut":
        raise BadInput("a joist cannot be cut over a beam that is only snug; say joists='run through'")
    # the sag of the lasting load is there already, so the beam stands that much lower
    sunk = _one_span(span, lasting, bending_stiffness).sag if lasting > 0 else 0.0
    return MidBeam(before, _two_spans(span, loads, bending_stiffness, joists, settlement=sunk))


def _one_span(span, load, stiffness):
    solved = solve(Beam(span, stiffness, [Support(0.0), Support(span)], [LineLoad(0.0, span, load)]))
    return Span(
        solved.extremes.greatest_moment.value,
        0.0,
        solved.extremes.greatest_deflection.value,
        solved.reactions[0].force,
        0.0,
        solved,
    )


def _two_spans(span, loads, stiffness, joists, settlement=0.0):
    half = span / 2
    supports = [Support(0.0), Support(half, settlement=settlement), Support(span)]
    hinges = (half,) if joists == "cut" else ()
    solved = solve(Beam(span, stiffness, supports, loads, hinges))
    found = solved.extremes
    return Span(
        found.greatest_moment.value,
        max(0.0, -found.least_moment.value),
        found.greatest_deflection.value,
        solved.reactions[0].force,
        solved.reactions[1].force,
        solved,
    )


def beam_line_load(middle, *, spacing):
    """Line load on the new beam from what each joist puts on it.

    Parameters
    ----------
    middle : float
        What one joist puts on the beam [N].
    spacing : float
        Spacing of the joists [mm].

    Returns
    -------
    float
        Load on the beam [N/mm].

    Examples
    --------
    >>> beam_line_load(1600.0, spacing=400.0)
    4.0
    """
    check_one_number("load of one joist", middle, low=0.0, high=1e8)
    check_one_number("spacing", spacing, low=0.0, high=10 * ft, low_allowed=False, hint="for example 16*inch")
    return middle / spacing
