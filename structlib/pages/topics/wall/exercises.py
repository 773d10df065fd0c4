"""Questions of notebook 02: what does this wall carry?"""

import math

from structlib.ground import loads
from structlib.ground.units import ft, inch, psf
from structlib.mechanics import formulas
from structlib.pages.kit.questions.question import Mistake, Question, asks
from structlib.pages.kit.questions.wording import any_unit, carried, say, say_length, say_line_load, whole


def _area_load(value):
    return say(value, "area load")


def _span(draw, low, high):
    """Draw a span in half feet."""
    return draw.randrange(2 * low, 2 * high + 1) / 2 * ft


def _floor_loads(draw):
    """Draw a dead and a live load of a floor."""
    return draw.choice((8, 10, 12, 15)) * psf, draw.choice((20, 30, 40)) * psf


@asks("02", "tributary_width", "How wide a strip does the wall carry?")
def _tributary_width(draw):
    left = _span(draw, 8, 16)
    right = left + draw.choice((-3, -2, -1.5, 1.5, 2, 3, 4)) * ft
    answer = loads.tributary_width_cut(left_span=left, right_span=right)
    return Question(
        prompt=(
            f"A wall stands between two floors. Joists span {say_length(left)} on the left and {say_length(right)} on"
            " the right. They are cut over the wall. How wide a strip of floor does the wall carry?"
            f" {any_unit('feet (ft)')}"
        ),
        dimension="length",
        answer=answer,
        mistakes=(
            Mistake(
                left + right,
                "half span forgotten",
                "You gave the wall both whole spans. Each joist has two ends. The wall gets one of them: half.",
            ),
            Mistake(
                left / 2,
                "one side only",
                "That is half of the left span. The right side lands on the wall too.",
            ),
            Mistake(
                right / 2,
                "one side only",
                "That is half of the right span. The left side lands on the wall too.",
            ),
            Mistake(left, "one whole span", "That is the whole left span. Take half from each side."),
            Mistake(right, "one whole span", "That is the whole right span. Take half from each side."),
            Mistake((left + right) / 4, "halved twice", "You halved twice. Half of each span is enough."),
        ),
        hints=(
            "A cut joist hands half of its load to each end.",
            "Width = ____ / 2 + ____ / 2.",
            f"Width = {say_length(left)} / 2 + {say_length(right)} / 2.",
        ),
        solution=(
            f"From the left: half of {say_length(left)}, which is {say_length(left / 2)}.\n\n"
            f"From the right: half of {say_length(right)}, which is {say_length(right / 2)}.\n\n"
            f"Together: {say_length(left / 2)} + {say_length(right / 2)} = **{say_length(answer)}**."
        ),
        numbers={"left": left, "right": right},
    )


@asks("02", "line_load", "From a floor to pounds per foot of wall")
def _line_load(draw):
    span = _span(draw, 9, 18)
    dead, live = _floor_loads(draw)
    width = loads.tributary_width_cut(left_span=span)
    answer = loads.line_load(dead + live, tributary_width=width)
    parts = [(loads.line_load(load, tributary_width=width), "line load") for load in (dead, live)]
    dead_line, live_line = carried(parts, lambda one, other: one + other, "line load")
    return Question(
        prompt=(
            f"Floor joists span {say_length(span)} from an outside wall to a beam. The floor weighs"
            f" {_area_load(dead)} dead and carries {_area_load(live)} live. What does one foot of the"
            " outside wall carry from this floor, dead and live together?"
            f" {any_unit('pounds per foot (plf)')}"
        ),
        dimension="line load",
        answer=answer,
        mistakes=(
            Mistake(
                2 * answer,
                "half span forgotten",
                "You gave the wall the whole span. The beam at the other end takes half of it.",
            ),
            Mistake(
                loads.line_load(live, tributary_width=width),
                "live load only",
                "That is the live load alone. The floor's own weight is there too.",
            ),
            Mistake(
                loads.line_load(dead, tributary_width=width),
                "dead load only",
                "That is the dead load alone. People and things come on top.",
            ),
            Mistake(
                2 * loads.line_load(live, tributary_width=width),
                "live load only, on the whole span",
                "Two slips: the dead load is missing, and the wall carries half the span.",
            ),
            Mistake(answer / 2, "halved twice", "You halved twice. Half the span is enough."),
            Mistake(
                (dead + live) * ft,
                "load per square foot",
                "That is the load on one square foot. Multiply by the width carried.",
            ),
            Mistake(
                (dead + live) * span * span / 8 / ft,
                "moment formula",
                "That looks like w L² / 8. A wall asks for load times width.",
            ),
        ),
        hints=(
            "First the width of floor that the wall carries. Then load times width.",
            "Line load = (dead + ____) × span / ____.",
            f"({_area_load(dead)} + {_area_load(live)}) × {say_length(span)} / 2.",
        ),
        solution=(
            f"The wall carries half the span: {say_length(width)}.\n\nDead: {_area_load(dead)} ×"
            f" {say_length(width)} = {dead_line}.\n\nLive: {_area_load(live)} × {say_length(width)} ="
            f" {live_line}.\n\nTogether: {dead_line} + {live_line} = **{say_line_load(answer)}**. Keep the"
            f" two"
            " apart in your notes."
        ),
        numbers={"span": span, "dead": dead, "live": live},
    )


@asks("02", "slope_to_plan", "From the slope to the plan")
def _slope_to_plan(draw):
    on_slope = draw.choice((8, 9, 10, 11, 12, 14, 15)) * psf
    rise = draw.choice((6, 7, 8, 9, 10, 12, 14))
    answer = loads.slope_to_plan(on_slope, rise=rise)
    longer = answer / on_slope
    (long,) = carried([(12 * longer, "number")], lambda shown: on_slope * shown / 12, "area load")
    return Question(
        prompt=(
            f"A roof rises {rise} in 12. Its layers weigh {_area_load(on_slope)}, measured along the slope."
            f" How much is that on a square foot of plan? {any_unit('pounds per square foot (psf)')}"
        ),
        dimension="area load",
        answer=answer,
        mistakes=(
            Mistake(
                on_slope,
                "slope forgotten",
                "You left it as it was. Above one foot of plan lies more than one foot of roof.",
            ),
            Mistake(
                on_slope / longer,
                "divided instead of multiplied",
                "You made it less. The slope is longer than the plan, so there is more roof, not less.",
            ),
            Mistake(
                on_slope * longer**2,
                "slope counted twice",
                "You went from slope to plan twice. Once is enough.",
            ),
            Mistake(
                on_slope * rise / 12,
                "rise over run",
                "You multiplied by rise over run. Use slope length over run.",
            ),
            Mistake(
                on_slope * (1 + rise / 12),
                "rise and run added",
                "You added rise and run. The slope is the long side: root of 12² plus rise².",
            ),
            Mistake(
                on_slope * 12 / rise,
                "run over rise",
                "You divided by the steepness. Use slope length over run.",
            ),
        ),
        hints=(
            "Above one foot of plan lies a longer piece of roof. How much longer?",
            "Plan load = slope load × root of (12² + ____²) / ____.",
            f"{_area_load(on_slope)} × root of (12² + {rise}²) / 12.",
        ),
        solution=(
            f"For 12 in of run the roof is root of (12² + {rise}²) = {long} in long.\n\n"
            f"{_area_load(on_slope)} × {long} / 12 = **{_area_load(answer)}** on plan.\n\n"
            "Snow and live load are given on plan already. Leave those as they are."
        ),
        numbers={"on_slope": on_slope, "rise": rise},
    )


@asks("02", "level_by_level", "A wall under a roof and two floors")
def _level_by_level(draw):
    house = draw.randrange(22, 34, 2) * ft
    roof_dead, snow = draw.choice((12, 15, 17)) * psf, draw.choice((20, 25, 30, 40)) * psf
    attic_dead, attic_live = draw.choice((8, 10)) * psf, draw.choice((10, 20)) * psf
    floor_dead, floor_live = draw.choice((10, 12, 15)) * psf, draw.choice((30, 40)) * psf
    wall = draw.choice((8, 10, 12)) * psf
    height = draw.choice((8, 9)) * ft
    roof_width, floor_width = loads.tributary_width_cut(left_span=house), loads.tributary_width_cut(left_span=house / 2)
    dead_parts = (
        ("roof", loads.line_load(roof_dead, tributary_width=roof_width)),
        ("attic floor", loads.line_load(attic_dead, tributary_width=floor_width)),
        ("upper floor", loads.line_load(floor_dead, tributary_width=floor_width)),
        ("upper wall", loads.line_load(wall, tributary_width=height)),
    )
    other_parts = (
        ("snow on the roof", loads.line_load(snow, tributary_width=roof_width)),
        ("attic", loads.line_load(attic_live, tributary_width=floor_width)),
        ("upper floor", loads.line_load(floor_live, tributary_width=floor_width)),
    )
    dead, other = sum(part for _, part in dead_parts), sum(part for _, part in other_parts)
    answer = dead + other
    roof = dead_parts[0][1] + other_parts[0][1]
    floors = answer - roof - dead_parts[3][1]
    return Question(
        prompt=(
            f"The house is invented. It is {say_length(house)} wide. The roof spans from eave wall to eave wall."
            f" Both floors span {say_length(house / 2)}, from the eave wall to a middle wall, and are cut there."
            f" On plan:\n\n- Roof: {_area_load(roof_dead)} dead, {_area_load(snow)} snow.\n- Attic floor:"
            f" {_area_load(attic_dead)} dead, {_area_load(attic_live)} live.\n- Upper floor:"
            f" {_area_load(floor_dead)} dead, {_area_load(floor_live)} live.\n- Upper eave wall:"
            f" {_area_load(wall)} dead, {say_length(height)} high.\n\nKeep dead apart from snow and live. Then"
            " add everything up, with nothing taken off. What lands on the top of the lower eave wall?"
            f" {any_unit('pounds per foot (plf)')}"
        ),
        dimension="line load",
        answer=answer,
        mistakes=(
            Mistake(answer - dead_parts[3][1], "upper wall forgotten", "The upper wall's own weight is missing."),
            Mistake(dead, "dead load only", "That is the dead load alone. Snow and live come on top."),
            Mistake(
                other,
                "dead load forgotten",
                "That is snow and live alone. The house itself weighs something too.",
            ),
            Mistake(roof, "roof only", "That is the roof alone. Two floors and a wall land there too."),
            Mistake(answer - roof, "roof forgotten", "The roof is missing. It lands on the eave wall."),
            Mistake(
                answer + floors,
                "half span forgotten for the floors",
                "You gave the eave wall the whole floor span. The middle wall takes half of it.",
            ),
            Mistake(
                answer + roof,
                "half span forgotten for the roof",
                "You gave one eave wall the whole roof. The other eave wall takes half.",
            ),
            Mistake(
                answer + floors + roof,
                "half span forgotten",
                "You used whole spans. Each end of a span takes half.",
            ),
            Mistake(
                answer - roof / 2,
                "roof taken as narrow as the floors",
                "The roof has no middle support. Its half span is twice that of the floors.",
            ),
            Mistake(answer - other_parts[0][1], "snow forgotten", "The snow is missing."),
        ),
        hints=(
            "Go level by level, from the roof down. For each: load times half of its own span.",
            "Roof: half of ____. Floors: half of ____. Wall: weight × ____.",
            (
                f"Roof: half of {say_length(house)}. Floors: half of {say_length(house / 2)}. Wall:"
                f" {_area_load(wall)} × {say_length(height)}."
            ),
        ),
        solution=(
            f"The roof lands with {say_length(roof_width)}. Each floor lands with"
            f" {say_length(floor_width)}.\n\n"
            f"Dead: {_parts(dead_parts)}. In all: {_sum(dead_parts)} = {say_line_load(dead)}.\n\n"
            f"Snow and live: {_parts(other_parts)}. In all: {_sum(other_parts)} = {say_line_load(other)}.\n\n"
            f"Together: {say_line_load(dead)} + {say_line_load(other)} = **{say_line_load(answer)}**.\n\n"
            "A rulebook may count less than all of it at once. That comes after, and only with the parts kept"
            " apart."
        ),
        numbers={
            "house": house,
            "roof_dead": roof_dead,
            "snow": snow,
            "attic_dead": attic_dead,
            "attic_live": attic_live,
            "floor_dead": floor_dead,
            "floor_live": floor_live,
            "wall": wall,
            "height": height,
        },
    )


def _parts(parts):
    return ", ".join(f"{name} {say_line_load(load)}" for name, load in parts)


def _sum(parts):
    return " + ".join(say_line_load(load) for _, load in parts)


@asks("02", "middle_wall", "Joists that run through over a wall")
def _middle_wall(draw):
    span = _span(draw, 9, 16)
    dead, live = _floor_loads(draw)
    load = dead + live
    answer = formulas.two_span_uniform_middle_reaction(line_load=load, span=span)
    end = formulas.two_span_uniform_end_reaction(line_load=load, span=span)
    cut = 2 * formulas.simple_uniform_reaction(line_load=load, span=span)
    (as_cut,) = carried([(cut, "line load")], lambda shown: 1.25 * shown, "line load")
    return Question(
        prompt=(
            f"Joists run through over a middle wall, in one piece. Both spans are {say_length(span)}. "
            f"The floor carries {_area_load(dead)} dead and {_area_load(live)} live, everywhere. "
            f"What does one foot of the middle wall carry? {any_unit('pounds per foot (plf)')}"
        ),
        dimension="line load",
        answer=answer,
        mistakes=(
            Mistake(
                cut,
                "taken as cut joists",
                "That is right for cut joists. A joist in one piece leans harder on the middle wall.",
            ),
            Mistake(answer / 2, "one side only", "Two spans land on the middle wall. You counted one."),
            Mistake(
                cut / 2,
                "one side, taken as cut joists",
                "Half a span lands there from each side, and a quarter more.",
            ),
            Mistake(
                2 * cut,
                "half span forgotten",
                "You gave the middle wall everything. The end walls carry some of it.",
            ),
            Mistake(
                2 * answer,
                "the quarter put on both whole spans",
                "One quarter more than one span, not than two.",
            ),
            Mistake(end, "end wall", "That is what an end wall carries. The middle wall carries far more."),
            Mistake(2 * end, "end share used for the middle", "Three eighths is the share of an end wall."),
            Mistake(
                formulas.two_span_uniform_middle_reaction(line_load=live, span=span),
                "live load only",
                "The dead load is missing.",
            ),
            Mistake(
                cut * live / load,
                "live load only, taken as cut joists",
                "Two slips: the dead load is missing, and a joist in one piece leans harder on the middle.",
            ),
            Mistake(
                2 * cut / 3,
                "one third each",
                "Three supports do not share alike. The middle one carries most.",
            ),
        ),
        hints=(
            "Two half spans land on the middle wall. A joist in one piece adds a quarter.",
            "Wall load = ____ × (dead + live) × span.",
            f"1.25 × ({_area_load(dead)} + {_area_load(live)}) × {say_length(span)}.",
        ),
        solution=(
            f"Cut joists would bring half a span from each side: {as_cut}.\n\n"
            "Joists in one piece bring a quarter more, when both spans are equal and equally loaded.\n\n"
            f"1.25 × {as_cut} = **{say_line_load(answer)}**.\n\n"
            f"Each end wall gets less: {say_line_load(end)}."
        ),
        numbers={"span": span, "dead": dead, "live": live},
    )


@asks("02", "joist_count", "How many joists?")
def _joist_count(draw):
    spacing = draw.choice((12, 16, 16, 24))
    length = draw.randrange(12 * 12, 36 * 12 + 1, 4)  # whole inches
    spaces = math.ceil(length / spacing)
    answer = spaces + 1
    return Question(
        prompt=(
            f"A floor is {say_length(length * inch)} long, from the first joist to the last one. "
            f"No space between joists may be more than {spacing} in. "
            f"How many joists are there, with no doubles? {whole('joists')}"
        ),
        dimension="count",
        side="at least",
        answer=answer,
        tolerance=0,
        mistakes=(
            Mistake(spaces, "the +1 forgotten", "You counted spaces. There is one joist more than spaces."),
            Mistake(
                length // spacing,
                "rounded down, and the +1 forgotten",
                "Round the spaces up. Then add the joist at the start.",
            ),
            Mistake(answer + 1, "one too many", "You added one twice. One joist more than spaces is enough."),
            Mistake(
                length // 12 + 1,
                "one joist a foot",
                f"That is one joist every 12 in. Here they stand {spacing} in apart.",
            ),
        ),
        hints=(
            "Count the spaces first. Three spaces need four joists.",
            "Joists = length / ____, rounded up, plus ____.",
            f"{length} in / {spacing} in, rounded up, plus 1.",
        ),
        solution=(
            f"The length is {length} in. {length} / {spacing} = {length / spacing:.2f} spaces.\n\n"
            f"Round up: {spaces} spaces.\n\n"
            f"One joist more than spaces: **{answer} joists**."
        ),
        numbers={"length": length * inch, "spacing": spacing * inch},
    )
