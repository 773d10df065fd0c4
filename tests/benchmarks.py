"""How fast the library is beside its peers, measured in turns so that a busy machine slows all of them alike.

    python tests/benchmarks.py              about a minute
    python tests/benchmarks.py --browser    a slider in JupyterLab too, two minutes more (needs chromium)
    python tests/benchmarks.py --moves      only what a move of a slider costs, in beam solves: some seconds

Every number is the median of several rounds; a peer's is given as a ratio to the library's. Before
anything is timed, all routes solve the case and must agree.
"""

import argparse
import importlib
import inspect
import itertools
import os
import platform
import statistics
import subprocess
import sys
import tempfile
import time
import tracemalloc
from dataclasses import dataclass
from pathlib import Path

import numpy

ROOT = Path(__file__).resolve().parents[1]
sys.path[:0] = [str(ROOT), str(ROOT / "tests" / "browser")]

MODULUS, INERTIA = 10_000, 200_000_000  # MPa and mm4
STIFFNESS = MODULUS * INERTIA
COUNTS = (10_000, 100_000, 300_000)


# ---- measuring ----


def seconds(action, repeats):
    """Time of one call, from several in a row."""
    start = time.perf_counter()
    for _ in range(repeats):
        action()
    return (time.perf_counter() - start) / repeats


def in_turns(routes, rounds=5, least=0.02):
    """Median time of each route; they run one after the other, round by round."""
    repeats = {name: max(1, round(least / max(seconds(action, 1), 1e-7))) for name, action in routes.items()}
    found = {name: [] for name in routes}
    for _ in range(rounds):
        for name, action in routes.items():
            found[name].append(seconds(action, min(repeats[name], 2000)))
    return {name: statistics.median(times) for name, times in found.items()}


def shown(value):
    """A time with the prefix that suits it."""
    for unit, size in (("s", 1.0), ("ms", 1e-3), ("us", 1e-6)):
        if value >= size:
            return f"{value / size:.3g} {unit}"
    return f"{value / 1e-9:.3g} ns"


def heading(text):
    print(f"\n{text}", flush=True)


def row(*cells, widths=(46, 8, 12, 14, 14, 14)):
    print("  " + "".join(str(cell).ljust(width) for cell, width in zip(cells, widths)).rstrip(), flush=True)


# ---- one beam: the library, sympy's Beam, PyNite, plain finite elements in numpy ----


@dataclass(frozen=True)
class Case:
    """A beam on simple supports, in whole mm, N and N/mm, so that sympy gets exact numbers."""

    name: str
    spans: tuple
    overhang: int = 0
    lines: tuple = ()  # (start, end, load)
    points: tuple = ()  # (place, load)

    @property
    def supports(self):
        return tuple(itertools.accumulate(self.spans, initial=0))

    @property
    def length(self):
        return sum(self.spans) + self.overhang

    @property
    def middles(self):
        return tuple(place + span // 2 for place, span in zip(self.supports, self.spans))


def uniform(count):
    return Case("uniform load", (4000,) * count, lines=((0, 4000 * count, 5),))


def mixed(count):
    length = 4000 * count
    points = tuple((4000 * i + 1500, 9000) for i in range(count))
    return Case(
        "mixed: uniform, part of it more, point loads",
        (4000,) * count,
        lines=((0, length, 5), (length - 2000, length, 3)),
        points=points,
    )


def patches(count):
    some = tuple((4000 * i + 1000, 4000 * i + 3000, 8) for i in range(0, count, 2))
    return Case("patch load in every other span", (4000,) * count, lines=((0, 4000 * count, 2), *some))


def overhang(count):
    length = 4000 * count + 1200
    return Case(
        "overhang with a load at its tip", (4000,) * count, 1200, lines=((0, length, 5),), points=((length, 3000),)
    )


def unequal(count):
    spans = tuple(itertools.islice(itertools.cycle((3000, 4600, 3400)), count))
    return Case("unequal spans, uniform load", spans, lines=((0, sum(spans), 5),))


CASES = [
    (uniform, (1, 3, 10)),
    (mixed, (1, 3, 10)),
    (patches, (2, 4, 10)),
    (overhang, (1, 3, 10)),
    (unequal, (3, 6, 10)),
]


def by_library(case):
    """Reactions, and moment and deflection in the middle of each span."""
    from structlib.mechanics.beams import Beam, LineLoad, PointLoad, Support, solve

    loads = [LineLoad(start, end, load) for start, end, load in case.lines]
    loads += [PointLoad(place, load) for place, load in case.points]
    solution = solve(Beam(case.length, STIFFNESS, [Support(place) for place in case.supports], loads))
    return (
        [reaction.force for reaction in solution.reactions],
        [solution.moment(x) for x in case.middles],
        [solution.deflection(x) for x in case.middles],
    )


def by_sympy(case):
    """The same by sympy's Beam class, exact numbers in."""
    import sympy
    from sympy.physics.continuum_mechanics.beam import Beam

    beam = Beam(sympy.Integer(case.length), sympy.Integer(STIFFNESS), sympy.Integer(1))
    pushes = sympy.symbols(f"r0:{len(case.supports)}")
    for push, place in zip(pushes, case.supports):
        beam.apply_load(push, place, -1)
    for start, end, load in case.lines:
        beam.apply_load(sympy.Integer(load), start, 0, end=end)
    for place, load in case.points:
        beam.apply_load(sympy.Integer(load), place, -1)
    beam.bc_deflection = [(place, 0) for place in case.supports]
    beam.solve_for_reaction_loads(*pushes)
    moment, deflection = beam.bending_moment(), beam.deflection()
    return (
        [-float(beam.reaction_loads[push]) for push in pushes],
        [float(moment.subs(beam.variable, x)) for x in case.middles],
        [float(deflection.subs(beam.variable, x)) for x in case.middles],
    )


def by_pynite(case):
    """The same by PyNite's space frame, with its quickest options."""
    from Pynite import FEModel3D

    model = FEModel3D()
    places = sorted({*case.supports, case.length})
    for place in places:
        model.add_node(f"n{place}", place, 0, 0)
    model.add_material("wood", MODULUS, MODULUS / 16, 0.3, 0.0)
    model.add_section("section", 1e4, 1e8, INERTIA, 1e8)
    model.add_member("beam", f"n{places[0]}", f"n{places[-1]}", "wood", "section")
    for place in case.supports:
        model.def_support(f"n{place}", place == 0, True, True, place == 0, True, False)
    for start, end, load in case.lines:
        model.add_member_dist_load("beam", "Fy", -load, -load, start, end)
    for place, load in case.points:
        model.add_member_pt_load("beam", "Fy", -load, place)
    model.analyze_linear(check_statics=False, sparse=len(places) > 8)
    beam = model.members["beam"]
    return (
        [model.nodes[f"n{place}"].RxnFY["Combo 1"] for place in case.supports],
        [-beam.moment("Mz", x) for x in case.middles],
        [-beam.deflection("dy", x) for x in case.middles],
    )


def by_elements(case):
    """The same by plain finite elements: two-node beams between all places of interest, one dense solve."""
    places = numpy.array(
        sorted(
            {
                0,
                case.length,
                *case.supports,
                *case.middles,
                *(x for x, _ in case.points),
                *(x for line in case.lines for x in line[:2]),
            }
        ),
        dtype=float,
    )
    h, middle, count = numpy.diff(places), (places[1:] + places[:-1]) / 2, len(places)
    line = numpy.zeros(count - 1)
    for start, end, load in case.lines:
        line += load * ((start < middle) & (middle < end))
    element = _element_stiffness(h, STIFFNESS)
    even = numpy.stack([-line * h / 2, -line * h**2 / 12, -line * h / 2, line * h**2 / 12], axis=1)
    numbers = 2 * numpy.arange(count - 1)[:, None] + numpy.arange(4)
    whole, force = numpy.zeros((2 * count, 2 * count)), numpy.zeros(2 * count)
    numpy.add.at(whole, (numbers[:, :, None], numbers[:, None, :]), element)
    numpy.add.at(force, numbers, even)
    for place, load in case.points:
        force[2 * numpy.searchsorted(places, place)] -= load
    held = 2 * numpy.searchsorted(places, case.supports)
    free = numpy.setdiff1d(numpy.arange(2 * count), held)
    moved = numpy.zeros(2 * count)
    moved[free] = numpy.linalg.solve(whole[numpy.ix_(free, free)], force[free])
    ends = numpy.einsum("eij,ej->ei", element, moved[numbers]) - even
    at = numpy.searchsorted(places, case.middles)
    return ((whole @ moved - force)[held].tolist(), (-ends[at, 1]).tolist(), (-moved[2 * at]).tolist())


def _element_stiffness(h, stiffness):
    k = numpy.empty((*h.shape, 4, 4))
    k[..., 0, 0] = k[..., 2, 2] = 12
    k[..., 0, 2] = k[..., 2, 0] = -12
    k[..., 0, 1] = k[..., 1, 0] = k[..., 0, 3] = k[..., 3, 0] = 6 * h
    k[..., 1, 2] = k[..., 2, 1] = k[..., 2, 3] = k[..., 3, 2] = -6 * h
    k[..., 1, 1] = k[..., 3, 3] = 4 * h**2
    k[..., 1, 3] = k[..., 3, 1] = 2 * h**2
    return k * (stiffness / h**3)[..., None, None]


PEERS = {"sympy Beam": by_sympy, "PyNite": by_pynite, "numpy elements": by_elements}


def agree(first, second, close=1e-6):
    """Stop when two routes differ by more than a millionth of the greatest value of a kind."""
    for ours, theirs in zip(first, second):
        apart = numpy.max(numpy.abs(numpy.subtract(ours, theirs)))
        if not apart <= close * numpy.max(numpy.abs(ours)):
            raise SystemExit(f"the routes differ: {ours} and {theirs}")


def one_beam():
    heading(
        "one beam: reactions, and moment and deflection in the middle of each span "
        "(peers: how many times the library's time)"
    )
    row("case", "spans", "library", *PEERS)
    for make, counts in CASES:
        for count in counts:
            case = make(count)
            ours = by_library(case)
            for peer in PEERS.values():
                agree(ours, peer(case))
            routes = {"library": lambda case=case: by_library(case)}
            routes.update({name: lambda peer=peer, case=case: peer(case) for name, peer in PEERS.items()})
            found = in_turns(routes, least=0.01)
            row(
                case.name,
                count,
                shown(found["library"]),
                *(f"{found[name] / found['library']:.3g} x" for name in PEERS),
            )


# ---- many beams ----


def _many(count):
    chance = numpy.random.default_rng(1)
    return {
        "spans": chance.uniform(2000, 6000, (count, 2)),
        "load": chance.uniform(2, 12, count),
        "place": chance.uniform(0.2, 0.8, count),
        "force": chance.uniform(0, 20_000, count),
    }


def many_by_library(beams):
    from structlib.mechanics.batch import SpanPoint, solve_many

    point = SpanPoint(0, beams["place"] * beams["spans"][:, 0], beams["force"])
    return solve_many(
        spans=beams["spans"], bending_stiffness=float(STIFFNESS), line_loads=beams["load"], point_loads=[point]
    )


def many_by_elements(beams):
    """Reactions alone, from one stacked solve: three elements a beam, no diagrams and no extremes."""
    first, second = beams["spans"].T
    place = beams["place"] * first
    h = numpy.stack([place, first - place, second], axis=1)
    element = _element_stiffness(h, float(STIFFNESS))
    load = beams["load"][:, None]
    even = numpy.stack([-load * h / 2, -load * h**2 / 12, -load * h / 2, load * h**2 / 12], axis=2)
    whole, force = numpy.zeros((len(h), 8, 8)), numpy.zeros((len(h), 8))
    for number in range(3):
        at = slice(2 * number, 2 * number + 4)
        whole[:, at, at] += element[:, number]
        force[:, at] += even[:, number]
    force[:, 2] -= beams["force"]
    free, held = [1, 2, 3, 5, 7], [0, 4, 6]
    moved = numpy.linalg.solve(whole[:, free][:, :, free], force[:, free, None])[:, :, 0]
    return numpy.einsum("bij,bj->bi", whole[:, held][:, :, free], moved) - force[:, held]


def _one_of(beams, number):
    first, second = (int(span) for span in beams["spans"][number])
    place = int(beams["place"][number] * first)
    return Case(
        "",
        (first, second),
        lines=((0, first + second, int(beams["load"][number])),),
        points=((place, int(beams["force"][number])),),
    )


def many_beams():
    heading(
        "many beams of two spans: reactions and all extremes (numpy: reactions alone; "
        "the last two: 20 beams, scaled up)"
    )
    widths = (46, 8, 12, 14, 14, 14, 14)
    row("beams", "", "library", "a beam", "numpy stacked", "one by one", "PyNite", widths=widths)
    for count in COUNTS:
        beams = _many(count)
        agree([many_by_library(beams).reactions], [many_by_elements(beams)])
        few = [_one_of(beams, number) for number in range(20)]
        found = in_turns(
            {
                "library": lambda: many_by_library(beams),
                "numpy": lambda: many_by_elements(beams),
                "loop": lambda: [by_library(case) for case in few],
                "pynite": lambda: [by_pynite(case) for case in few],
            },
            rounds=3,
            least=0.0,
        )
        ours, scale = found["library"], count / len(few)
        row(
            f"{count:,}",
            "",
            shown(ours),
            shown(ours / count),
            f"{found['numpy'] / ours:.3g} x",
            f"{found['loop'] * scale / ours:.3g} x",
            f"{found['pynite'] * scale / ours:.4g} x",
            widths=widths,
        )


# ---- sizing ----


def _rack(count):
    """Made-up sizes and LVL grades, as many as asked for."""
    from structlib.ground.engineered import user_lvl
    from structlib.ground.units import inch, psi
    from structlib.house.sizing import build_rack

    stock = []
    for number in range(count // 5000):
        wood = user_lvl(
            bending=(2000 + 10 * number) * psi,
            shear=285 * psi,
            bearing=750 * psi,
            modulus=2.0e6 * psi,
            depth_exponent=0.136,
            name=f"invented {number}",
            source="invented for timing",
        )
        stock += [
            (wood, width * inch, depth * inch)
            for width in numpy.linspace(1.0, 3.4, 25)
            for depth in numpy.linspace(5.5, 18.0, 50)
        ]
    return stock, build_rack(stock, plies=(1, 2, 3, 4))


def _job():
    from structlib.ground.units import inch, plf, psi
    from structlib.house.beam import BeamJob, TypedLoad
    from structlib.mechanics.beams import LineLoad
    from structlib.rules.check import Seat

    seat, clear = Seat(3 * inch, "plate", 425 * psi, "plate", "seen"), 117 * inch
    loads = (("dead", 400 * plf), ("live", 600 * plf), ("snow", 200 * plf))
    return BeamJob(
        clear,
        seat,
        seat,
        tuple(TypedLoad(kind, LineLoad(0.0, clear + seat.length, load)) for kind, load in loads),
        unbraced_length=0.0,
    )


def bare_numpy(rack, span, line):
    """The least that sizing could be: three formulas on the columns, no rulebook, no loads by type."""
    bending = line * span**2 / 8 / rack.section_modulus / 20.0
    shear = 1.5 * line * span / 2 / rack.area / 2.0
    sag = 5 * line * span**4 / (384 * rack.stiffness) / (span / 360)
    return numpy.maximum(numpy.maximum(bending, shear), sag)


def sizing():
    from structlib.house.beam import check_beam
    from structlib.house.sizing import build_rack, size_beams
    from structlib.rules.choice import RULEBOOK

    heading(
        "sizing: share and governing check of every candidate, three types of load "
        "(bare: three formulas; one by one: full records of 40, scaled up)"
    )
    widths = (16, 2, 12, 12, 12, 14, 14, 14)
    names = ("rack", "strengths", "sizing", "a candidate", "bare numpy", "one by one")
    row("candidates", "", *names, widths=widths)
    job = _job()
    for count in COUNTS:
        stock, rack = _rack(count)
        strengths = RULEBOOK.prepare(rack)
        sized = size_beams(job, rack, RULEBOOK, strengths)
        few = [rack.choice(number) for number in range(0, count, count // 40)]
        full = [check_beam(job, choice, RULEBOOK).share for choice in few]
        agree([sized.share[:: count // 40]], [full], close=1e-9)
        found = in_turns(
            {
                "sizing": lambda: size_beams(job, rack, RULEBOOK, strengths),
                "bare": lambda: bare_numpy(rack, job.span, 20.0),
                "loop": lambda: [check_beam(job, choice, RULEBOOK) for choice in few],
                "rack": lambda: build_rack(stock, plies=(1, 2, 3, 4)),
                "prepare": lambda: RULEBOOK.prepare(rack),
            },
            rounds=3,
            least=0.0,
        )
        ours, scale = found["sizing"], count / len(few)
        row(
            f"{count:,}",
            "",
            shown(found["rack"]),
            shown(found["prepare"]),
            shown(ours),
            shown(ours / count),
            f"{found['bare'] / ours:.3g} x",
            f"{found['loop'] * scale / ours:.4g} x",
            widths=widths,
        )


def span_tables():
    try:
        from structlib.rules.us.span_table_bases import table_bases
        from structlib.rules.us.span_tables import make_table
    except ImportError:
        return
    heading("span tables: a whole table made anew")
    bases = table_bases()
    routes = {basis.name: lambda basis=basis: make_table(basis) for basis in bases}
    found = in_turns(routes, rounds=3, least=0.0)
    cells = {basis.name: sum(len(line) - 3 for line in make_table(basis)[1:]) for basis in bases}
    for name in (min(found, key=found.get), max(found, key=found.get)):
        row(name, "", shown(found[name]), f"{cells[name]} cells", shown(found[name] / cells[name]) + " each")
    row(f"all {len(bases)} tables", "", shown(sum(found.values())), f"{sum(cells.values())} cells")


# ---- imports and memory, each in a Python of its own ----


def _modules(room, *, without=()):
    folder = ROOT / "structlib" / room
    found = [
        ".".join(path.relative_to(ROOT).with_suffix("").parts).removesuffix(".__init__")
        for path in sorted(folder.rglob("*.py"))
    ]
    return [name for name in found if name not in without and not name.endswith("pages.server")]


def _statements():
    widgets, proofs = "structlib.pages.kit.bench", "structlib.pages.topics.every"
    paper = "structlib.pictures.paper"
    chosen = {"nothing": [], "numpy": ["numpy"], "structlib": ["structlib"]}
    chosen.update({room: _modules(room) for room in ("ground", "mechanics", "rules", "house")})
    chosen["pictures, without paper"] = _modules("pictures", without=(paper,))
    chosen["pictures.paper (matplotlib)"] = [paper]
    # the exercises, the myths and the pages of a notebook, without its widgets and its derivations
    chosen["pages, without the next two"] = _modules("pages", without=(widgets, proofs))
    chosen["pages.bench (ipywidgets)"] = [widgets]
    chosen["pages.topics"] = [proofs]
    chosen["what notebook 04 imports"] = [
        widgets,
        proofs,
        "structlib.pages.topics.beam.page",
        "structlib.pages.topics.beam.choices",
    ]
    chosen.update({name: [name] for name in ("sympy", "matplotlib.figure", "ipywidgets")})
    return chosen


# The greatest memory is read from Linux, which counts anew for a new program; "nan" elsewhere.
_CHILD = """
import pathlib, sys, time
start = time.perf_counter()
for name in sys.argv[1:]:
    __import__(name)
spent, status = time.perf_counter() - start, pathlib.Path("/proc/self/status")
lines = status.read_text().splitlines() if status.exists() else []
print(spent, next((line.split()[1] for line in lines if line.startswith("VmHWM")), "nan"))
"""


def _child(names):
    command = [sys.executable, "-c", _CHILD, *names]
    run = subprocess.run(command, cwd=ROOT, stdout=subprocess.PIPE, text=True, check=True)
    spent, memory = run.stdout.split()
    return float(spent), float(memory) / 1024


def imports():
    heading("imports, each in a new Python, five rounds: time, and greatest memory of the process")
    chosen = _statements()
    found = {name: [] for name in chosen}
    for _ in range(5):
        for name, modules in chosen.items():
            found[name].append(_child(modules))
    for name, runs in found.items():
        spent, memory = (statistics.median(column) for column in zip(*runs))
        row(name, "", shown(spent) if name != "nothing" else "-", f"{memory:.0f} MB")


def memory():
    from structlib.house.sizing import size_beams
    from structlib.rules.choice import RULEBOOK

    heading("greatest memory taken by one call, beyond its inputs")
    case, beams, (_, rack), job = mixed(10), _many(COUNTS[-1]), _rack(COUNTS[-1]), _job()
    for name, action in (
        ("one beam of ten spans", lambda: by_library(case)),
        ("the same by numpy elements", lambda: by_elements(case)),
        (f"{COUNTS[-1]:,} beams", lambda: many_by_library(beams)),
        ("the same by numpy stacked", lambda: many_by_elements(beams)),
        (f"sizing of {COUNTS[-1]:,} candidates", lambda: size_beams(job, rack, RULEBOOK)),
    ):
        action()
        tracemalloc.start()
        action()
        greatest = tracemalloc.get_traced_memory()[1]
        tracemalloc.stop()
        row(name, "", f"{greatest / 1e6:.3g} MB")


# ---- pictures ----


def _pages():
    for path in sorted((ROOT / "structlib" / "pages" / "topics").glob("*/*.py")):
        module = importlib.import_module(f"structlib.pages.topics.{path.parent.name}.{path.stem}")
        for name, kind in inspect.getmembers(module, inspect.isclass):
            if kind.__module__ == module.__name__ and hasattr(kind, "controls"):
                yield name, kind()


def pictures():
    from matplotlib.backends.backend_agg import FigureCanvasAgg

    from structlib.pages.kit.show import start_values
    from structlib.pictures import paper, svg

    heading("a page's answer to one move (values never seen before), and its picture")
    row("page", "", "computed", "as SVG", "size", "by matplotlib")
    for name, page in _pages():
        values, number = start_values(page), itertools.count()
        scene = page.compute(values).scene

        def answered(page=page, values=values, number=number):
            # a new span each time, so that nothing is remembered; the move before is drawn as a ghost
            span = values["span"] + 1e-3 * next(number)
            return page.compute({**values, "span": span}, {**values, "span": span + 300.0})

        def on_paper(scene=scene):
            FigureCanvasAgg(paper.figure_of(scene, (720, 720))).draw()

        def on_page(scene=scene):
            return svg.svg_of(scene)

        found = in_turns({"computed": answered, "svg": on_page, "paper": on_paper})
        row(
            name,
            "",
            shown(found["computed"]),
            shown(found["svg"]),
            f"{len(on_page()) / 1000:.1f} kB",
            f"{found['paper'] / found['svg']:.3g} x",
        )


# ---- a move of a slider, in beam solves ----

MOVES = 30


def _one_solve():
    from structlib.mechanics.beams import Beam, LineLoad, Support, solve

    solved = solve(Beam(4000.0, 1e12, [Support(0.0), Support(4000.0)], [LineLoad(0.0, 4000.0, 7.0)]))
    return solved.extremes.moment, solved.extremes.deflection


def spent(action, found):
    """Add the processor time of one call to those found; what other work takes of the machine is not in it."""
    start = time.thread_time()
    answer = action()
    found.append(time.thread_time() - start)
    return answer


def _warm_solve(solves):
    """Add the time of one solve among several: the first ones bring the code back that other work pushed out."""
    _one_solve()
    for _ in range(5):
        spent(_one_solve, solves)


def _moved(page, values):
    """Values along the first slider of a page, from its low end to its high one."""
    from structlib.pages.kit.controls import Slide

    slide = next(one for one in page.controls(values) if isinstance(one, Slide))
    steps = round((slide.high - slide.low) / slide.step)
    places = sorted({round(steps * number / (MOVES - 1)) for number in range(MOVES)})
    whole = int if slide.dimension == "count" else float
    return [{**values, slide.name: whole(slide.low + slide.step * place)} for place in places]


def _move_times(page):
    """Median times of computing, of drawing and of one solve between the moves."""
    from structlib.ground.refusals import Refusal
    from structlib.pages.kit.show import start_values

    module, drawing, drawn, whole, solves = sys.modules[type(page).__module__], [], [], [], []
    draws = {name: one for name, one in vars(module).items() if name.startswith("draw_")}
    for name, one in draws.items():
        setattr(module, name, lambda *given, one=one, **named: spent(lambda: one(*given, **named), drawing))
    before = start_values(page)
    try:
        for values in _moved(page, before):
            drawing.clear()
            try:
                spent(lambda values=values, before=before: page.compute(values, before), whole)
            except Refusal:  # a place where a rule refuses to answer shows its sentence and no picture
                continue
            drawn.append(sum(drawing))
            _warm_solve(solves)
            before = values
    finally:
        for name, one in draws.items():
            setattr(module, name, one)
    drawing, solve = statistics.median(drawn), statistics.median(solves)
    return statistics.median(whole) - drawing, drawing, solve


def moves():
    from structlib.house.file import demo_house
    from structlib.house.judging import judge
    from structlib.house.path import follow
    from structlib.pages.kit.show import start_values
    from structlib.rules.choice import RULEBOOK

    heading(
        f"one move of a page's first slider, {MOVES} in a row with the move before as ghost: processor time as a multiple "
        "of one beam solve with its extremes, warm (asked: 40 and 10 at most)"
    )
    row("page", "", "computing", "drawing", "one solve")
    for name, page in _pages():
        page.compute(start_values(page))
        computing, drawing, solve = _move_times(page)
        row(name, "", f"{computing / solve:.1f} x", f"{drawing / solve:.1f} x", shown(solve))
    heading("the demo house, in the same measure")
    house, number = demo_house(), itertools.count()
    path = follow(house)
    pad, level = house.pads[0], next(one for one in house.levels if one.kind == "floor")

    def change(part, field):
        # a new value each time, so that nothing is remembered
        return {part.name: {field: getattr(part, field) * (1 + 1e-6 * next(number))}}

    for name, action in (
        ("follow", lambda: follow(house)),
        ("follow again, a pad wider", lambda: follow(house, change(pad, "side"), before=path)),
        ("follow again, more on a floor", lambda: follow(house, change(level, "live"), before=path)),
        ("judge all of it", lambda: judge(path, RULEBOOK)),
    ):
        times, solves = [], []
        for _ in range(MOVES):
            spent(action, times)
            _warm_solve(solves)
        times, solve = statistics.median(times), statistics.median(solves)
        row(name, "", f"{times / solve:.1f} x", shown(times))


# ---- the browser ----

PRESSES, WARM_UP = 60, 5

# Times are taken in the page: from the key press to the new picture in the document, and to the next frame.
WATCH = """name => {
    const bench = document.querySelector('.sl-bench'), times = [];
    const handle = bench.querySelector(`.sl-slider-${name} .noUi-handle`);
    let pressed = null;
    handle.addEventListener('keydown', event => { pressed = event.timeStamp; }, true);
    new MutationObserver(() => {
        if (pressed === null) return;
        const start = pressed, changed = performance.now();
        pressed = null;
        requestAnimationFrame(() => times.push([changed - start, performance.now() - start]));
    }).observe(bench.querySelector('.sl-picture'), {childList: true, subtree: true});
    window.benchTimes = times;
    handle.focus();
}"""


def _press_keys(page, name):
    handle = page.locator(f".sl-bench .sl-slider-{name} .noUi-handle").first
    handle.scroll_into_view_if_needed()
    page.evaluate(WATCH, name)
    key = "ArrowRight"
    for number in range(PRESSES + WARM_UP):
        now, low, high = (float(handle.get_attribute(f"aria-value{word}")) for word in ("now", "min", "max"))
        key = "ArrowLeft" if now >= high else "ArrowRight" if now <= low else key
        page.keyboard.press(key)
        page.wait_for_function("count => window.benchTimes.length >= count", arg=number + 1, timeout=5000)
        page.wait_for_timeout(60)
    return page.evaluate("() => window.benchTimes")[WARM_UP:]


def browser():
    import lab
    from playwright.sync_api import sync_playwright

    heading(
        f"a slider in JupyterLab, {PRESSES} key presses: to the new picture, and to the next frame "
        "(median and 95th percentile)"
    )
    if lab.chromium() is None:
        print("  chromium is not installed; left out")
        return
    # the kernels of the notebooks, and the server, find the library of this checkout
    os.environ["PYTHONPATH"] = os.pathsep.join([str(ROOT), *filter(None, [os.environ.get("PYTHONPATH")])])
    row("notebook", "", "slider", "picture", "", "frame", widths=(34, 2, 10, 28, 0, 14))
    with tempfile.TemporaryDirectory() as folder, lab.running_lab(folder) as address, sync_playwright() as playwright:
        started = playwright.chromium.launch(executable_path=lab.chromium(), args=lab.CHROMIUM_FLAGS)
        try:
            for path in sorted(lab.NOTEBOOKS.glob("*.ipynb")):
                if "Bench(" not in path.read_text(encoding="utf-8"):
                    continue
                page = started.new_page(viewport={"width": 1600, "height": 1000})
                lab.open_and_run(page, address, path.name)
                for name in ("span", "depth", "plies"):
                    cells = []
                    for column in zip(*_press_keys(page, name)):
                        cells += [
                            f"{statistics.median(column):.1f} ms",
                            f"{statistics.quantiles(column, n=20)[-1]:.1f} ms",
                        ]
                    row(path.stem, "", name, *cells, widths=(34, 2, 10, 12, 16, 12, 12))
                page.close()
        finally:
            started.close()


def main():
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("--browser", action="store_true", help="measure the sliders in JupyterLab too")
    parser.add_argument("--moves", action="store_true", help="measure only what a move of a slider costs")
    wanted = parser.parse_args()
    started = time.perf_counter()
    load = getattr(os, "getloadavg", lambda: (0.0,))
    print(
        f"Python {platform.python_version()}, numpy {numpy.__version__}, {os.cpu_count()} cores, "
        f"{platform.machine()}; load of the machine before: {load()[0]:.2f}"
    )
    for part in (
        (moves,) if wanted.moves else (imports, one_beam, many_beams, sizing, span_tables, memory, pictures, moves)
    ):
        part()
    if wanted.browser:
        browser()
    print(f"\nall of it: {time.perf_counter() - started:.0f} s; load of the machine after: {load()[0]:.2f}")


if __name__ == "__main__":
    main()
