"""Tables of the notebook on temporary walls: what lands below, the order of work, public rules, a worked case."""

from structlib.ground.showing import show
from structlib.ground.tables import table_rows
from structlib.ground.units import ft, inch, plf  # noqa: F401 (plf: in an example)
from structlib.pages.kit.door import hold
from structlib.pages.kit.show import Table, start_values
from structlib.pages.topics.meanwhile.page import SLAB, STRIP, MeanwhilePage, times


def asked_of(page: MeanwhilePage | None = None, **changes):
    """Return what is asked while the wall is out, for the page's first values with some changed.

    Examples
    --------
    >>> round(asked_of(span=12 * ft, offset=2 * ft).each / plf, 6)
    360.0
    """
    page = page or MeanwhilePage()
    return page.asked(tuple(start_values(page, **changes).items()))


def cautions_table():
    """List the public rules that such work meets, with how well each is known here.

    Examples
    --------
    >>> {row[1] for row in cautions_table().rows if "eighth" in row[2]}
    {'no rule known to us'}
    """
    told = lambda rule: "no rule known to us" if rule == "none" else rule  # noqa: E731
    rows = [(row["topic"], told(row["rule"]), row["what"], row["verified"]) for row in table_rows("meanwhile_cautions")]
    return Table(("about", "rule", "what it says, in our words", "how we know"), rows)


def order_table():
    """List the order of work around a wall that comes out, and who answers for each step.

    Examples
    --------
    >>> len(order_table().rows)
    10
    """
    rows = [(str(int(row["number"])), row["step"], row["who"], row["why"]) for row in table_rows("meanwhile_order")]
    return Table(("", "step", "who answers for it", "why"), rows)


def lands_below(*, system: str = "us", **changes):
    """Follow one temporary wall down: on joists across, on joists along, on a slab.

    Examples
    --------
    >>> lands_below().rows[0][2]
    '0.78 x the design moment'
    """
    page = MeanwhilePage(system)
    now = asked_of(page, **changes)
    landed, side = now.landed, lambda value: show(value, "section length", system)
    rows = [
        ("joists across it, floor empty", show(landed.moment, "moment", system) + " in each",
         f"{times(landed.moment_share)} the design moment"),
        ("the same joists, at their nearer end", show(landed.shear, "force", system),
         f"{times(landed.shear_share)} the design push"),
        ("one joist along it", show(now.most, "line load", system), f"{times(now.along)} the design load"),
        (f"any {show(STRIP, 'length', system)} of it", show(now.strip, "force", system), "as one force"),
    ]  # fmt: skip
    for plate in (6 * inch, 12 * inch, 24 * inch):
        pressure, told = page.under_slab(now.strip, plate, "no soil and no slab is judged")
        rows.append((f"that force on {side(plate)} square of a {side(SLAB)} slab", f"{pressure} under the slab", told))
    return Table(("where it lands", "what is asked", "compare"), rows)


def worked_case():
    """Put a worked case of our own beside the library: a wall with 12 ft cut joists at 50 psf, 2 ft away.

    Examples
    --------
    >>> worked_case().rows[1][2]
    '360 plf'
    """
    now = asked_of()
    over = -now.joist.full.moment(now.joist.beam.supports[1].position) / now.joist.spacing
    return Table(
        ("", "by hand (computed, not published)", "by the library"),
        [
            ("the wall, from one side", "50 x 12 / 2 = 300 plf", show(now.wall / 2, "line load")),
            ("the temporary wall", "300 x 12 / 10 = 360 plf", show(now.each, "line load")),
            ("the wall that stays", "600 - 360 = 240 plf", show(now.far, "line load")),
            (
                "moment over the temporary wall, in 1 ft of floor",
                "50 x 2 x 2 / 2 = 100 lb-ft",
                show(over * ft, "moment"),
            ),
        ],
    )


hold(globals())
