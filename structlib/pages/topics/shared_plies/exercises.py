"""Questions of notebook 11: when do plies share the load?"""

from structlib.ground.steel import flat_plate
from structlib.ground.units import ft, inch, lb, plf, psi
from structlib.mechanics.composite import (
    Part,
    end_group_forces,
    joined_stiffness,
    loose_stiffness,
    shares_by_stiffness,
    stack,
)
from structlib.mechanics.line_loads import load_to_pass
from structlib.pages.kit.questions.question import Mistake, Question, asks
from structlib.pages.kit.questions.wording import any_unit, board, carried, say, times

_STEEL = 29e6 * psi
_WOOD_WEIGHT = 34.0
_STEEL_WEIGHT = 490.0


@asks("11", "plate_share", "Which share does the plate take?")
def _plate_share(draw):
    plies, eighths = draw.choice((2, 4)), draw.choice((2, 3, 4, 5, 6))
    modulus = draw.choice((1.2e6, 1.3e6, 1.4e6, 1.6e6, 1.7e6)) * psi
    one, thick = board(draw.choice(("2x8", "2x10", "2x12"))), eighths * inch / 8
    wood = Part(modulus=modulus, width=plies * one.width, depth=one.depth)
    steel = Part(modulus=_STEEL, width=thick, depth=one.depth)
    answer = shares_by_stiffness([wood, steel])[1]
    ratio, wide = _STEEL / modulus, plies * one.width
    (counts,) = carried([(ratio * thick, "small length")], lambda shown: shown / (shown + wide), "ratio")
    return Question(
        prompt=(
            f"A flitch beam has {plies} plies of {one.name} with E of {say(modulus, 'stress')}. The steel "
            f"plate"
            f" between them is {say(thick, 'section length')} thick and as deep as the wood. Steel has E of"
            f" 29,000,000 psi. Which share of the load does the plate take? {times()}"
        ),
        dimension="ratio",
        answer=answer,
        mistakes=(
            Mistake(1 - answer, "the wood's share", "That is the share of the wood. The plate takes the rest."),
            Mistake(
                thick / (thick + wide),
                "thickness alone",
                "You shared by thickness. Steel is stiffer: multiply its thickness by the modular ratio.",
            ),
            Mistake(
                ratio / (ratio + 1),
                "moduli alone",
                "You shared by E alone. There is much more wood than steel: count the widths too.",
            ),
            Mistake(
                ratio * thick / wide,
                "over the wood, not over the sum",
                "You divided by the wood alone. Divide by wood and steel together.",
            ),
            Mistake(
                ratio * thick / (ratio * thick + one.width),
                "one ply only",
                "You took one ply of wood. All plies are there.",
            ),
        ),
        hints=(
            "All bend alike, so each takes load by its E I. Like depths cancel.",
            "share = n × t / (n × t + ____), with n = E of steel / E of wood.",
            f"n = {say(ratio, 'number')}; t = {say(thick, 'section length')}; wood {say(wide, 'section length')} wide.",
        ),
        solution=(
            f"n = 29,000,000 psi / {say(modulus, 'stress')} = {say(ratio, 'number')}.\n\nThe plate counts as"
            f" 29,000,000 psi / {say(modulus, 'stress')} × {say(thick, 'section length')} = {counts} of wood,"
            f" beside {say(wide, 'section length')}.\n\nshare = {counts} / ({counts} +"
            f" {say(wide, 'section length')}) = **{say(answer, 'ratio')}**."
        ),
        numbers={"plies": plies, "thick": thick, "modulus": modulus},
    )


@asks("11", "joined_stack", "A stack of boards: joined against loose")
def _joined_stack(draw):
    count, name = draw.choice((2, 3, 4)), draw.choice(("2x4", "2x6", "2x8", "2x10", "2x12"))
    one = board(name)
    layers = stack([(1.0, one.width, one.depth)] * count)
    answer = joined_stiffness(layers) / loose_stiffness(layers)
    return Question(
        prompt=(
            f"{count} boards {name} stand on edge, one on top of the other. First they slip freely. Then "
            f"they are"
            f" joined so that nothing slips. How many times as stiff as loose is the joined stack? {times()}"
        ),
        dimension="ratio",
        answer=answer,
        mistakes=(
            Mistake(
                float(count),
                "strength, not stiffness",
                "That is the gain in strength. Stiffness goes by the next power.",
            ),
            Mistake(
                float(count**3),
                "against one board",
                "That is the joined stack against one board. Against the loose stack it is less.",
            ),
            Mistake(1 / answer, "upside down", "Turn it round: the joined stack is the stiffer one."),
            Mistake(1.0, "no gain", "Joining makes one deep board of them. That is much stiffer."),
        ),
        hints=(
            "Loose boards add up. A joined stack is one board as deep as all of them.",
            "ratio = N³ / ____, with N the number of boards.",
            f"ratio = {count}³ / {count}.",
        ),
        solution=(
            f"Loose: {count} × I of one board.\n\nJoined: one board {count} times as deep, {count}³ ="
            f" {count**3} times I of one board.\n\n{count**3} / {count} = **{say(answer, 'ratio')}**."
        ),
        numbers={"count": count},
    )


@asks("11", "sister_end", "The end of a short sister")
def _sister_end(draw):
    moment = draw.randrange(1000, 5001, 100) * lb * ft
    share, arm = draw.choice((0.3, 0.35, 0.4, 0.5, 0.6)), draw.choice((12, 16, 18, 24)) * inch
    answer = end_group_forces(moment=share * moment, shear=0.0, arm=arm)[0]
    return Question(
        prompt=(
            f"A short sister takes {100 * share:.0f} % of the moment between its fastener groups. At the inner "
            f"group the"
            f" beam's moment is {say(moment, 'moment')}. The two groups at that end are "
            f"{say(arm, 'section length')}"
            f" apart. What force does the outer group carry? {any_unit('pounds (lb)')}"
        ),
        dimension="force",
        answer=answer,
        mistakes=(
            Mistake(answer / share, "the whole moment", "You took the whole moment. The sister has a share of it."),
            Mistake(
                answer / 12,
                "feet over inches (/12)",
                "The moment is in pound-feet and the arm in inches. Bring both to one unit.",
            ),
            Mistake(
                answer * (1 - share) / share,
                "the old joist's share",
                "That is the share of the old joist. Take the sister's.",
            ),
            Mistake(
                answer / 2,
                "halved",
                "The two groups make one couple. Each carries the whole moment over the arm.",
            ),
            Mistake(
                share * moment * (arm / ft) / ft,
                "times the arm",
                "You multiplied by the arm. A couple's force is moment over arm.",
            ),
        ),
        hints=(
            "The groups hand the sister its moment as a couple: two forces, one arm.",
            "F = share × M / ____.",
            f"F = {share:g} × {say(moment, 'moment')} / ({arm / inch:g}/12 ft).",
        ),
        solution=(
            f"The sister's moment: {share:g} × {say(moment, 'moment')} = "
            f"{say(share * moment, 'moment')}.\n\nThe arm is"
            f" {arm / inch:g}/12 ft.\n\nF = {say(share * moment, 'moment')} / ({arm / inch:g}/12 ft) ="
            f" **{say(answer, 'force')}**."
        ),
        numbers={"moment": moment, "share": share, "arm": arm},
    )


@asks("11", "plate_weight", "Can you carry the plate?")
def _plate_weight(draw):
    eighths, deep = draw.choice((2, 3, 4, 5, 6)), draw.choice((7.0, 9.0, 11.0)) * inch
    feet, pieces = draw.randrange(8, 17), draw.choice((1, 2))
    thick = eighths * inch / 8
    answer = flat_plate(thickness=thick, depth=deep).weight * feet * ft / pieces
    area = say(thick * deep, "area")
    word = "in one piece" if pieces == 1 else "in two like pieces"
    return Question(
        prompt=(
            f"A steel plate {say(thick, 'section length')} thick, {say(deep, 'section length')} deep and "
            f"{feet} ft long"
            f" comes {word}. Steel weighs 490 lb in a cubic foot. What does one piece weigh?"
            f" {any_unit('pounds (lb)')}"
        ),
        dimension="force",
        answer=answer,
        mistakes=(
            Mistake(
                2 * answer if pieces == 2 else answer / 2,
                "pieces miscounted",
                "Count the pieces again: the weight asked for is that of one piece.",
            ),
            Mistake(
                answer * _WOOD_WEIGHT / _STEEL_WEIGHT,
                "the weight of wood",
                "That is a board of this size. Steel weighs over fourteen times as much.",
            ),
            Mistake(
                12 * answer,
                "inches taken for feet (x12)",
                "One of the sides is still in inches. Divide it by 12.",
            ),
            Mistake(
                144 * answer,
                "square inches taken for square feet (x144)",
                "Thickness and depth are in inches. Divide their product by 144.",
            ),
        ),
        hints=(
            "Volume in cubic feet, times what a cubic foot weighs.",
            "W = t × d / ____ × length × 490, with t and d in inches.",
            f"W = {thick / inch:g} × {deep / inch:g} / 144 × {feet / pieces:g} × 490.",
        ),
        solution=(
            f"The end of the plate: {thick / inch:g} in × {deep / inch:g} in = {area}. Over 144 that is in"
            f" square feet.\n\nOne piece is {feet / pieces:g} ft long.\n\nW = {area.removesuffix(' in²')}"
            f" / 144"
            f" × {feet / pieces:g} × 490 = **{say(answer, 'force')}**."
        ),
        numbers={"thick": thick, "deep": deep, "feet": feet, "pieces": pieces},
    )


@asks("11", "side_load", "Load on one side: what must cross?")
def _side_load(draw):
    load, plies = draw.randrange(200, 1001, 20) * plf, draw.choice((2, 3, 4))
    answer = load_to_pass(side_load=load, plies=plies)
    (keeps,) = carried([(load / plies, "line load")], lambda shown: load - shown, "line load")
    return Question(
        prompt=(
            f"Joists hang on one side of a beam of {plies} like plies and bring {say(load, 'line load')}. "
            f"All plies sag"
            f" alike. How much load must pass out of the loaded ply? {any_unit('pounds per foot (plf)')}"
        ),
        dimension="line load",
        answer=answer,
        mistakes=(
            Mistake(load / plies, "what stays", "That is what stays in the loaded ply. The rest must cross."),
            Mistake(load, "all of it", "The loaded ply keeps its own share. Subtract it."),
            Mistake(load / 2, "half", "Half is right for two plies only."),
            Mistake(
                load * plies / (plies + 1),
                "one ply too many",
                "You counted one ply too many.",
            ),
        ),
        hints=(
            "Each ply keeps a like share.",
            "w × (n − 1) / ____, with n the number of plies.",
            f"{say(load, 'line load')} × {plies - 1} / {plies}.",
        ),
        solution=(
            f"Each ply keeps {say(load, 'line load')} / {plies} = {keeps}.\n\nThe rest goes out through the"
            f" fasteners: {say(load, 'line load')} − {keeps} = **{say(answer, 'line load')}** must cross."
        ),
        numbers={"load": load, "plies": plies},
    )
