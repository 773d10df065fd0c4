"""Cases of notebook 07: steel posts, adjustable ones among them, as tables."""

from structlib.ground.showing import show
from structlib.ground.units import ft, inch, kip, ksi, lb  # noqa: F401 (some: in examples)
from structlib.pages.kit.door import hold
from structlib.pages.kit.show import Table
from structlib.pages.topics.post.cases import LIVE, told
from structlib.rules.choice import RULEBOOK

steel_columns = RULEBOOK.room("steel_columns")


def steel_posts(load: float, height: float = 7 * ft):
    """List what steel posts carry, pressed in the middle.

    ``load`` [N]; ``height`` [mm].

    Examples
    --------
    >>> steel_posts(12000 * lb).rows[0][-1]
    '36 %'
    """
    rows = []
    for name in ("NPS 3 std", "NPS 3-1/2 std", "NPS 4 std", "HSS 3x3x1/8", "HSS 3x3x1/4"):
        one = steel_columns.steel_post(name)
        found = steel_columns.steel_capacity(one, height=height)
        check = steel_columns.steel_check(one, axial=load, height=height, combination=LIVE)
        rows.append(
            (
                name,
                f"{one.yield_strength / ksi:.0f} ksi",
                f"{found.slenderness:.0f}",
                show(found.load, "force"),
                show(check.share, "ratio"),
            )
        )
    return Table(
        ("steel post", "yield", "K L / r", "carries", "share"), rows,
        f"{show(load, 'force')} in the middle, {show(height, 'length')} tall; {check.clause}; cap and base apart",
    )  # fmt: skip


def adjustable_posts():
    """Tell which adjustable steel posts may stay, and on what conditions.

    Examples
    --------
    >>> adjustable_posts().rows[0][1].startswith("refused: a telescoping post")
    True
    """
    kinds = (
        ("two tubes that slide, 3 in", 2, 3.0 * inch),
        ("one piece, 2 3/8 in pipe", 1, 2.375 * inch),
        ("one piece, 3 1/2 in pipe", 1, 3.5 * inch),
    )
    rows = []
    for name, pieces, outside in kinds:
        found = told(steel_columns.permanent_post_conditions, pieces=pieces, outside=outside)
        rows.append((name, f"refused: {found}" if isinstance(found, str) else "may stay if: " + "; ".join(found)))
    return Table(("adjustable post", "to stay"), rows)


def printed_pipes():
    """Work printed loads of steel pipes again, by the older rule behind them.

    Gives [kip].

    Examples
    --------
    >>> [round(value, 1) for value in printed_pipes().values()]
    [54.2, 43.0, 23.1]
    """
    listed = steel_columns.steel_post("NPS 4 std", nominal_wall=True, yield_strength=36 * ksi)
    worked = steel_columns.pipe_of_size(outside=4.5 * inch, wall=0.237 * inch, yield_strength=36 * ksi)
    cases = (
        ("NPS 4 standard pipe, 8 ft, by the rule of 1989", listed, 8 * ft),
        ("pipe of 4.5 by 0.237 in, 12 ft, by the rule of 1989", worked, 12 * ft),
        ("pipe of 4.5 by 0.237 in, 18 ft, by the rule of 1989", worked, 18 * ft),
    )
    return {
        name: float(steel_columns.steel_capacity(pipe, height=height, method=steel_columns.METHODS[-1]).load / kip)
        for name, pipe, height in cases
    }


hold(globals())
