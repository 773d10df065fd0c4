"""Cases of notebook 07: pads, footings, slabs and walls under a post, as tables."""

from structlib.ground.showing import show
from structlib.ground.units import ft, inch, lb, plf  # noqa: F401 (some: in examples)
from structlib.pages.kit.door import hold
from structlib.pages.kit.show import Table
from structlib.pages.topics.post.cases import stepped_up, told
from structlib.rules.choice import RULEBOOK

footings = RULEBOOK.room("footings")


def concrete():
    """Return the weight of concrete that the pads are worked out with.

    Gives [N/mm3].

    Examples
    --------
    >>> from structlib.ground.units import pcf
    >>> round(concrete() / pcf)
    150
    """
    return footings.concrete_weight()


def pads_by_soil(load: float, base: float = 5.5 * inch):
    """List the smallest plain pad under a post for each class of soil.

    ``load`` [N]; ``base`` [mm].

    Examples
    --------
    >>> pads_by_soil(10000 * lb, 3.5 * inch).rows[0][2]
    '33 1/2 in'
    """
    rows = []
    for name in footings.soil_names():
        soil = footings.find_soil(name)
        side = stepped_up(footings.plain_pad(load=load, soil=soil, base=base)[0])
        thick = stepped_up(footings.pad_thickness(side=side, base=base))
        rows.append(
            (
                name,
                show(soil.pressure, "area load"),
                show(side, "section length", precision=2),
                show(thick, "section length", precision=2),
                show(footings.concrete_weight() * side**2 * thick, "force"),
            )
        )
    checks = footings.pad_checks(load=load, side=side, thickness=thick, base=base, soil=soil)
    clauses = ", ".join(dict.fromkeys(one.clause for one in checks))
    return Table(
        ("soil", "presumed bearing", "pad side", "thickness", "pad weighs"), rows,
        f"{show(load, 'force')}; plain concrete, no wider past the post than thick; {clauses}",
    )  # fmt: skip


def wall_footings(line_load: float):
    """List the width of a footing under a wall for each class of soil, and what the code's table asks.

    ``line_load`` [N/mm].

    Examples
    --------
    >>> wall_footings(2000 * plf).rows[0][1]
    '17 1/4 in'
    """
    rows = []
    for name in footings.soil_names()[:3]:
        soil = footings.find_soil(name)
        width = footings.wall_footing_width(line_load=line_load, soil_pressure=soil.pressure, thickness=8 * inch)
        rows.append(
            (
                f"{name}, {show(soil.pressure, 'area load')}",
                show(stepped_up(max(width, 12 * inch), 0.25 * inch), "section length", precision=4),
            )
        )
    table = footings.table_footing(construction="light frame", stories=2, foundation="basement")
    rows.append(("the code's table, two stories, basement", show(table.width, "section length")))
    caption = f"{show(line_load, 'line load')}, footing 8 in thick, not under 12 in wide. The table: {table.basis}."
    return Table(("under a wall", "width"), rows, caption)


def slab_under_a_post(load: float, plate: float = 6 * inch, slab: float = 4 * inch):
    """Show what a slab is asked by a post: refused for one that stays, else a demand without verdict.

    ``load`` [N]; ``plate``, ``slab`` [mm].

    Examples
    --------
    >>> slab_under_a_post(12000 * lb).rows[1][1]
    '8,816 psf under the slab, 75 psi of shear around the plate'
    """
    given = dict(load=load, plate=plate, slab_thickness=slab)
    demand = footings.post_on_slab(**given, permanent=False)
    rows = (
        ("a post that stays", "refused: " + told(footings.post_on_slab, **given, permanent=True)),
        (
            "a post for the time of the work",
            f"{show(demand.pressure, 'area load')} under the slab, "
            f"{show(demand.shear_stress, 'stress')} of shear around the plate",
        ),
        ("and who judges that", demand.gate),
    )
    return Table(
        ("on the slab", ""),
        rows,
        f"{show(load, 'force')} on a {show(plate, 'section length')} plate, {show(slab, 'section length')} of slab",
    )


def stone_wall(load: float, plate: float = 12 * inch, thickness: float = 18 * inch):
    """Show how the pressure of a post spreads down a stone or rubble wall.

    ``load`` [N]; ``plate``, ``thickness`` [mm].

    Examples
    --------
    >>> stone_wall(10000 * lb).rows[3][1]
    '952 psf'
    """
    rows, given = [], dict(load=load, plate=plate, wall_thickness=thickness)
    for depth in (0.0, 2 * ft, 4 * ft, 6 * ft):
        asked = (
            footings.pad_on_stone_wall(**given, depth=depth),
            footings.pad_on_stone_wall(**given, depth=depth, spread="45 degrees"),
            footings.pad_on_stone_wall(**given, depth=depth, distance_to_end=0.5 * ft),
        )
        rows.append((show(depth, "length"), *(show(one.pressure, "area load") for one in asked)))
    return Table(
        ("below the pad", "spread 1:2", "spread 45 degrees", "1:2, an opening 6 in away"), rows,
        f"{show(load, 'force')}; a demand, shown without a verdict",
    )  # fmt: skip


hold(globals())
