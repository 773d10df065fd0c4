"""Questions of notebook 06: where does it come down?"""

from structlib.ground.asked_back import first_listed
from structlib.ground.lumber import find_material
from structlib.ground.units import ft, inch, lb
from structlib.mechanics import formulas
from structlib.mechanics.beams import Beam, PointLoad, Support, solve
from structlib.mechanics.columns import euler_load, slenderness
from structlib.pages.kit.questions.question import Mistake, Question, asks
from structlib.pages.kit.questions.wording import any_unit, board, carried, say, say_length, say_size, times, whole
from structlib.pages.topics.post.cases import post
from structlib.rules.choice import RULEBOOK

columns = RULEBOOK.room("columns")


@asks("06", "taller_post", "A taller post: what is left of its buckling load?")
def _taller_post(draw):
    before, after = draw.choice(
        (
            (6, 8),
            (6, 9),
            (7, 9),
            (7, 10),
            (8, 10),
            (8, 12),
            (9, 12),
            (6, 12),
            (10, 14),
            (9, 16),
            (8, 14),
            (7, 12),
        )
    )
    loads = [euler_load(bending_stiffness=1.0, effective_length=float(height)) for height in (before, after)]
    ratio, answer = after / before, loads[1] / loads[0]
    return Question(
        prompt=(
            f"A slender post is {before} ft tall and free to turn at both ends. It is replaced by the "
            "same post,"
            f" {after} ft tall. How many times its old buckling load is its new one? {times()}"
        ),
        dimension="ratio",
        answer=answer,
        mistakes=(
            Mistake(1 / ratio, "not squared", "The height counts twice. Square the ratio of the heights."),
            Mistake(1 / answer, "upside down", "Turn it round: the taller post carries less."),
            Mistake(1 / ratio**3, "cubed", "You cubed it. The height stands squared under the line."),
            Mistake(
                1 / ratio**4,
                "to the fourth power",
                "The fourth power is for sag. Buckling goes by the square.",
            ),
        ),
        hints=(
            "Euler: the height stands under the line, squared.",
            "ratio = (H before / H after) to the power ____.",
            f"ratio = ({before} / {after})².",
        ),
        solution=f"P = π² E I / H².\n\nSo the ratio is ({before} / {after})² = **{say(answer, 'ratio')}**.",
        numbers={"before": before, "after": after},
    )


@asks("06", "weak_way", "How slender is a post, the weak way?")
def _weak_way(draw):
    piece = board(draw.choice(("2x6", "2x8")))
    plies, height = draw.choice((2, 3)), draw.randrange(7, 13) * ft
    held = draw.choice((True, False))
    width = plies * piece.width
    free = height / 2 if held else height
    answer = slenderness(effective_length=free, across=width)
    other = slenderness(effective_length=height, across=piece.depth)
    told = "It is held at mid-height the weak way, too." if held else "Nothing holds it between its ends."
    return Question(
        prompt=(
            f"A post of {plies} dry {piece.name} plies, each {say_size(piece.width)} by {say_size(piece.depth)}, is"
            f" {say_length(height)} tall. {told} Across the plies, how many times its thickness is its free "
            f"length? {times()}"
        ),
        dimension="ratio",
        answer=answer,
        mistakes=(
            Mistake(other, "the other way", "That is along the depth. Take the thickness of the plies together."),
            Mistake(plies * answer, "one ply only", "You took one ply. The plies together bow as one post."),
            Mistake(
                answer * 2 if held else answer / 2,
                "brace forgotten" if held else "a brace that is not there",
                "It is held at mid-height: half of the height is free."
                if held
                else "Nothing holds it at mid-height. The whole height is free.",
            ),
            Mistake(answer / 12, "feet over inches (x12)", "You divided feet by inches. Bring both to inches."),
            Mistake(
                free / (plies * 2 * inch),
                "nominal thickness",
                "A 2x ply is 1 1/2 in thick, not 2 in. Use the dressed size.",
            ),
        ),
        hints=(
            "Free length: the distance between what holds it that way.",
            f"ratio = free length / ({plies} × ____).",
            f"ratio = {free / inch:g} in / {width / inch:g} in.",
        ),
        solution=(
            f"Free length: {free / inch:g} in. Thickness: {plies} × 1 1/2 in = {width / inch:g} in."
            f"\n\n{free / inch:g} / {width / inch:g} = **{say(answer, 'ratio')}** as long as thick."
        ),
        numbers={"plies": plies, "height": height, "held": held},
    )


@asks("06", "plies_on_a_plate", "How many plies keep the plate from being crushed?")
def _plies_on_a_plate(draw):
    name = draw.choice(("2x4", "2x6"))
    species, grade = draw.choice((("Hem-Fir", "No.2"), ("Spruce-Pine-Fir", "No.1/No.2"), ("Douglas Fir-Larch", "No.2")))
    piece, plate = board(name), find_material(species, grade)
    one = piece.width * piece.depth * plate.bearing  # what one ply may press
    load = draw.randrange(int(1.1 * one / lb), int(4.9 * one / lb), 50) * lb
    answer = first_listed(lambda plies: _plate_share(name, plies, load, plate), (1, 2, 3, 4, 5))
    (ply,) = carried([(one, "force")], lambda shown: load / shown, "number")
    by_name = next(plies for plies in range(1, 9) if load <= plies * 2 * int(name[2:]) * inch**2 * plate.bearing)
    return Question(
        prompt=(
            f"A post of dry {name} plies, each {say_size(piece.width)} by {say_size(piece.depth)}, brings "
            f"{say(load, 'force')} to a"
            f" plate of {species}. Across its grain the plate gives {say(plate.bearing, 'stress')}. "
            "Take no bonus for a short"
            f" seat. How many plies keep the plate from being crushed? {whole('plies')}"
        ),
        dimension="count",
        side="at least",
        answer=answer,
        tolerance=0,
        mistakes=(
            Mistake(answer - 1, "rounded down", "With one ply less the plate is pressed too hard. Round up."),
            Mistake(by_name, "nominal size", f"A dry {name} is smaller than its name. Use the dressed size."),
            Mistake(answer + 1, "one too many", "One ply less is seat enough. Round up only once."),
        ),
        hints=(
            "Each ply brings its own end as seat.",
            "plies = load / (area of one ply × ____), rounded up.",
            f"plies = {say(load, 'force')} / ({piece.width / inch:g} in × {piece.depth / inch:g} in ×"
            f" {say(plate.bearing, 'stress')}).",
        ),
        solution=(
            f"One ply may press {ply}.\n\n{say(load, 'force')} / {ply} = {say(load / one, 'number')}."
            f"\n\nRounded up: **{answer}** plies."
        ),
        numbers={"load": load, "depth": piece.depth, "value": plate.bearing},
    )


def _plate_share(name, plies, load, plate):
    demand = [columns.ColumnDemand(RULEBOOK.combinations({"live"})[1], load)]
    return columns.plate_check(post(name, plies), demand, plate).share


@asks("06", "two_on_a_beam", "Two posts come down on one transfer beam")
def _two_on_a_beam(draw):
    span = draw.randrange(9, 17)
    first, second = draw.randrange(2, span // 2), draw.randrange(span // 2 + 1, span - 1)
    loads = [draw.randrange(1500, 6001, 250) * lb for _ in range(2)]
    beam = Beam(span * ft, 1e12, (Support(0.0), Support(span * ft)),
                (PointLoad(first * ft, loads[0]), PointLoad(second * ft, loads[1])))  # fmt: skip
    answer = solve(beam).reactions[0].force
    right = sum(loads) - answer
    nearer = formulas.simple_point_left_reaction(point_load=loads[0], span=span * ft, load_position=first * ft)
    return Question(
        prompt=(
            f"A transfer beam spans {span} ft between two posts. {say(loads[0], 'force')} come down "
            f"{first} ft from its left"
            f" end, and {say(loads[1], 'force')} come down {second} ft from it. Leave out its own weight."
            f" What does the left post carry? {any_unit('pounds (lb)')}"
        ),
        dimension="force",
        answer=answer,
        mistakes=(
            Mistake(
                right,
                "levers swapped",
                "That is the right post. Take each load's distance from the other end.",
            ),
            Mistake(
                sum(loads) / 2,
                "half and half",
                "Half and half is right only when the loads stand evenly about the middle.",
            ),
            Mistake(nearer, "one load forgotten", "The load that is farther away brings something, too."),
            Mistake(sum(loads), "all of it", "That is all that comes down. The right post takes some of it."),
        ),
        hints=(
            "Turn about the right end: each load times its distance from there.",
            "R = (P₁ × ____ + P₂ × b₂) / L.",
            f"R = ({say(loads[0], 'force')} × {span - first} ft + {say(loads[1], 'force')} × "
            f"{span - second} ft) / {span} ft.",
        ),
        solution=(
            f"From the right end the loads stand {span - first} ft and {span - second} ft away.\n\n"
            f"R × {span} ft = {say(loads[0], 'force')} × {span - first} ft + {say(loads[1], 'force')} × "
            f"{span - second} ft."
            f"\n\nR = ({say(loads[0], 'force')} × {span - first} ft + {say(loads[1], 'force')} × "
            f"{span - second} ft) / {span} ft = **{say(answer, 'force')}**. The right post has the rest,"
            f" {say(right, 'force')}."
        ),
        numbers={"span": span, "first": first, "second": second, "loads": tuple(loads)},
    )
