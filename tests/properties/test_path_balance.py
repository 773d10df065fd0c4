"""What enters a house reaches the soil: sum and moments about both axes, by type, against the plan integrated apart.

The houses are drawn at random: spans, joints, overhangs, ridges, openings, beams in a row, walls out of line, posts on
beams, point loads. Nothing of the library's own statics is used for what enters.
"""

import math
import random

import numpy
import pytest

from structlib.ground.lumber import find_material
from structlib.ground.units import ft, inch, lb, pcf, plf, psf
from structlib.house.path import follow
from structlib.house.plan import (
    Beam,
    FlitchBeam,
    House,
    Joists,
    Layer,
    Level,
    Load,
    Opening,
    Pad,
    Post,
    SteelBeam,
    Wall,
    Wood,
)  # fmt: skip

SIZES = {"2x8": (1.5, 7.25), "2x10": (1.5, 9.25), "2x12": (1.5, 11.25), "4x6": (3.5, 5.5)}


def weight_of(wood):
    """Weight of a beam or post for each mm: of wood from its dressed size, of a steel shape from its name [N/mm]."""
    if isinstance(wood, SteelBeam):
        return float(wood.shape.split("x")[1]) * plf
    plate = 490 * pcf * wood.thickness * wood.depth if isinstance(wood, FlitchBeam) else 0.0
    width, depth = (side * inch for side in SIZES[wood.size])
    density = find_material(wood.species, wood.grade, wood.size).weight_density
    return density * width * depth * wood.plies + plate


STEEL = SteelBeam(shape="W12x26", braced=0.0)
FLITCH = FlitchBeam(
    species="Hem-Fir", grade="No.2", size="2x10", thickness=0.5 * inch, depth=9 * inch, bolts=0.5 * inch
)


def one_of(first, name, value, other_name, other):
    return {name: value} if first else {other_name: other}


def random_house(seed):
    draw = random.Random(seed)
    far = lambda low, high: draw.uniform(low, high) * ft  # noqa: E731
    wood = lambda size: Wood(species="Hem-Fir", grade="No.2", size=size, plies=draw.randint(1, 4))  # noqa: E731
    x = [0.0, far(8, 16), 0.0]
    x[2] = x[1] + far(8, 16)
    length, south, north = far(20, 40), far(-5, 5), 0.0
    start, end = south + north, south + length
    layer = (Layer(name="layers", weight=draw.uniform(5, 20) * psf),)
    _walls, levels = [], []
    ridge = draw.choice(("board", "beam"))
    storey_walls = []
    for storey in ("upper", "lower"):
        row = [
            Wall(
                name=f"{side} {storey}",
                on=(f"{side} {'lower' if storey == 'upper' else 'base'}",),
                at=at,
                start=start,
                end=end,
                height=far(7, 9),
                weight=draw.uniform(0, 15) * psf,
            )
            for side, at in zip(("west", "middle", "east"), x)
        ]
        storey_walls.append(row)
    if draw.random() < 0.4:  # the upper middle wall stands out of line, on the floor
        out = storey_walls[0][1]
        storey_walls[0][1] = Wall(**{**out.__dict__, "at": x[1] + far(-3, 3), "on": ("upper floor",)})
    joists = lambda: draw.choice(("cut", "continuous"))  # noqa: E731
    on_roof = ("west upper", "middle upper", "east upper") if ridge == "beam" else ("west upper", "east upper")
    levels.append(
        Level(
            name="roof",
            kind="roof",
            on=on_roof,
            start=start,
            end=end,
            ridge=ridge,
            layers=layer,
            slope=(draw.choice((3, 6, 12)), 12.0),
            roof_live=20 * psf,
            snow=draw.uniform(0, 60) * psf,
            ridge_at=x[1] if ridge == "board" else None,
            right_snow=draw.choice((None, 0.0, 45 * psf)),
            tied_by="attic" if ridge == "board" and draw.random() < 0.5 else "",
            left_overhang=far(0, 2),
            right_overhang=far(0, 2),
        )
    )
    for name, storey, live in (("attic", "upper", 20), ("upper floor", "lower", 30)):
        levels.append(
            Level(
                name=name,
                kind="floor",
                on=tuple(f"{side} {storey}" for side in ("west", "middle", "east")),
                start=start,
                end=end,
                joists=joists(),
                layers=layer,
                live=live * psf,
                joist=Joists(species="Hem-Fir", grade="No.2", size="2x8", spacing=16 * inch),
            )
        )
    base = [
        Wall(
            name=f"{side} base",
            on=("soil",),
            at=at,
            start=start,
            end=end,
            height=far(2, 8),
            weight=100 * psf,
            made_of="masonry",
        )
        for side, at in (("west", x[0]), ("east", x[2]))
    ]
    ends = [
        Wall(
            name=name,
            on=("soil",),
            runs="across",
            at=at,
            start=x[0],
            end=x[2],
            height=far(2, 8),
            weight=100 * psf,
            made_of="masonry",
        )
        for name, at in (("south base", start), ("north base", end))
    ]
    places = sorted(start + share * (end - start) for share in (draw.uniform(0.2, 0.4), draw.uniform(0.6, 0.8)))
    posts = [
        Post(name=f"post {number}", on=f"pad {number}", x=x[1], y=y, height=far(6, 9), wood=wood("4x6"))
        for number, y in enumerate(places)
    ]
    pads = [Pad(name=f"pad {number}", x=x[1], y=y, side=36 * inch) for number, y in enumerate(places)]
    main = Beam(
        name="middle base",
        on=("south base", "post 0", "post 1", "north base"),
        at=x[1],
        start=start,
        end=end,
        joints=joists(),
        **one_of(seed % 3 == 1, "steel", STEEL, "wood", wood("2x12")),
    )
    opening = Opening(
        name="opening",
        wall="middle lower",
        start=start + far(2, 6),
        clear_width=far(3, 9),
        height=6 * ft,
        wall_above=far(0, 1),
        left_seat=draw.uniform(1.5, 6) * inch,
        right_seat=draw.uniform(1.5, 6) * inch,
        posts=wood("2x8"),
        **one_of(seed % 4 == 1, "flitch", FLITCH, "beam", wood("2x10")),
    )
    over = Post(
        name="post on the opening",
        on="middle lower",
        x=x[1],
        y=opening.start + 0.4 * opening.clear_width,
        height=4 * ft,
        wood=wood("4x6"),
    )
    loads = (
        Load(
            name="tub",
            on="post on the opening",
            x=over.x,
            y=over.y,
            dead=draw.uniform(0, 900) * lb,
            live=500 * lb,
            snow=draw.uniform(0, 400) * lb,
        ),
        Load(name="tank", on="middle base", x=x[1], y=draw.uniform(start, end), dead=700 * lb),
    )
    return House(
        name="random",
        levels=tuple(levels),
        walls=tuple((*storey_walls[0], *storey_walls[1], *base, *ends)),
        openings=(opening,),
        beams=(main,),
        posts=(over, *posts),
        pads=tuple(pads),
        loads=loads,
    )


def entered(house):
    """Sum and moments of everything, by type, integrated over the plan: an array of 3 by 4."""
    total = numpy.zeros((3, 4))

    def add(amount, x, y):
        for kind, value in enumerate(amount):
            total[:, kind] += value * numpy.array([1.0, x, y])

    at = {wall.name: wall.at for wall in (*house.walls, *house.beams)}
    for level in house.levels:
        places = [at[name] for name in level.on]
        left, right = min(places) - level.left_overhang, max(places) + level.right_overhang
        ridge = level.ridge_at if level.ridge_at is not None else sorted(places)[1]
        dead = sum(layer.weight for layer in level.layers)
        if level.joist:
            density = find_material("Hem-Fir", "No.2", "2x8").weight_density
            dead += density * 1.5 * inch * 7.25 * inch * level.joist.plies / level.joist.spacing
        rise = (ridge - min(places)) * level.slope[0] / level.slope[1]
        for a, b, run in ((left, ridge, ridge - min(places)), (ridge, right, max(places) - ridge)):
            area = (b - a) * (level.end - level.start)
            on_plan = dead * math.hypot(rise, run) / run
            snow = level.snow if a == left or level.right_snow is None else level.right_snow
            amount = [area * load for load in (on_plan, level.live or 0, level.roof_live or 0, snow or 0)]
            add(amount, (a + b) / 2, (level.start + level.end) / 2)
    for wall in house.walls:
        gaps = [one for one in house.openings if one.wall == wall.name]
        whole = [(wall.start, wall.end, wall.height)]
        for one in gaps:  # between the middles of its seats only the wall above the beam is left
            a, b = one.start - one.left_seat / 2, one.start + one.clear_width + one.right_seat / 2
            whole += [(a, b, one.wall_above - wall.height)]
        for a, b, height in whole:
            middle = (wall.at, (a + b) / 2) if wall.runs == "along" else ((a + b) / 2, wall.at)
            add([wall.weight * height * (b - a), 0, 0, 0], *middle)
    for beam in house.beams:
        add(
            [weight_of(beam.wood or beam.steel) * (beam.end - beam.start), 0, 0, 0],
            beam.at,
            (beam.start + beam.end) / 2,
        )
    for one in house.openings:
        wall = house.part(one.wall)
        a, b = one.start - one.left_seat / 2, one.start + one.clear_width + one.right_seat / 2
        add([weight_of(one.beam or one.flitch) * (b - a), 0, 0, 0], wall.at, (a + b) / 2)
        for y in (a, b):
            add([weight_of(one.posts) * one.height, 0, 0, 0], wall.at, y)
    for post in house.posts:
        add([weight_of(post.wood) * post.height, 0, 0, 0], post.x, post.y)
    for one in house.loads:
        add([one.dead, one.live, one.roof_live, one.snow], one.x, one.y)
    return total


@pytest.mark.parametrize("block", range(10))
def test_what_enters_a_house_reaches_the_soil(block):
    for seed in range(100 * block, 100 * block + 100):
        house = random_house(seed)
        path = follow(house)
        out = sum(share.sum_and_moments for share in path.into_the_soil)
        asked = entered(house)
        scale = numpy.abs(asked[0]).max()
        reach = max(abs(one.end) for one in house.walls) + max(abs(one.at) for one in house.walls)
        assert numpy.abs(out[0] - asked[0]).max() < 1e-9 * scale, seed
        assert numpy.abs(out[1:] - asked[1:]).max() < 1e-9 * scale * reach, seed
        for one in path.elements:  # and so does each part on the way
            took = sum((share.sum_and_moments for share in (*one.received, *one.own)), numpy.zeros((3, 4)))
            gave = sum((share.sum_and_moments for share in one.gives), numpy.zeros((3, 4)))
            assert numpy.abs(took - gave).max() < 1e-9 * scale * reach, (seed, one.name)


def halves(house):
    """Of a roof on a ridge board: for each half, its plan from its eave to the ridge, and its load turned about the ridge."""
    roof, at = house.levels[0], {wall.name: wall.at for wall in house.walls}
    (left, right), ridge = sorted(at[name] for name in roof.on), roof.ridge_at
    dead, rise = sum(layer.weight for layer in roof.layers), (ridge - left) * roof.slope[0] / roof.slope[1]
    for run, over, snow in (
        (ridge - left, roof.left_overhang, roof.snow),
        (right - ridge, roof.right_overhang, roof.snow if roof.right_snow is None else roof.right_snow),
    ):
        loads = numpy.array([dead * math.hypot(rise, run) / run, 0.0, roof.roof_live, snow])
        strips = (numpy.arange(400) + 0.5) / 400 * (run + over)  # strips along the house, each with its own lever
        yield run, rise, loads * float((strips * (run + over) / 400).sum())


@pytest.mark.parametrize("block", range(5))
def test_the_push_of_both_eaves_balances_and_turns_nothing_about_the_ridge(block):
    pushing = 0
    for seed in range(40 * block, 40 * block + 40):
        house = random_house(seed)
        path, middle = follow(house), (house.levels[0].start + house.levels[0].end) / 2
        found = path.thrust("roof", middle)
        if house.levels[0].ridge == "beam":
            assert not any(found.line.values())
            continue
        lifts = {share.to: numpy.array(share.amount) for share in path.element("roof").gives}
        pushes = []
        for wall, (run, rise, turned) in zip(house.levels[0].on, halves(house)):
            pushes.append((lifts[wall] * run - turned) / rise)  # what keeps this half from turning about the ridge
        scale = max(map(abs, pushes[0]))
        assert numpy.abs(pushes[0] - pushes[1]).max() < 1e-9 * scale, seed
        assert numpy.abs(pushes[0] - list(found.line.values())).max() < 1e-9 * scale, seed
        assert found.held_by == ("joists" if house.levels[0].tied_by else "nothing")
        pushing += scale > 0
    assert pushing > 10
