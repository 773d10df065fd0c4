"""Questions of notebook 07: what is under the post?"""

from structlib.ground.units import ft, inch, lb, pcf
from structlib.pages.kit.questions.question import Mistake, Question, asks
from structlib.pages.kit.questions.wording import any_unit, carried, say, say_size
from structlib.rules.choice import RULEBOOK

footings = RULEBOOK.room("footings")
_PAD_STEPS = (inch, 2 * inch, 6 * inch)


@asks("07", "pad_side_asked", "How wide must the pad be?")
def _pad_side_asked(draw):
    load = draw.randrange(4000, 20001, 500) * lb
    soil = footings.find_soil(draw.choice(footings.soil_names()[:3]))
    answer = footings.pad_side(load=load, soil_pressure=soil.pressure, thickness=0.0)
    square_feet = (load / soil.pressure / ft**2, "number")
    (area,) = carried([square_feet], lambda shown: shown**0.5 * ft, "small length")
    round_pad = (load / soil.pressure / 0.7853981633974483) ** 0.5
    return Question(
        prompt=(
            f"A post brings {say(load, 'force')} to a square pad. The soil bears "
            f"{say(soil.pressure, 'area load')}. Leave out"
            f" the weight of the pad. How long is its side at least?"
            f" {any_unit('inches (in)', 'at least', _PAD_STEPS)}"
        ),
        dimension="small length",
        side="at least",
        stock=_PAD_STEPS,
        answer=answer,
        mistakes=(
            Mistake(
                answer / 12,
                "feet written as inches (x12)",
                "The number is in feet. Multiply by 12, or name the unit ft.",
            ),
            Mistake(
                load / soil.pressure / ft,
                "root forgotten",
                "That is the area in square feet. Take its root for the side.",
            ),
            Mistake(
                round_pad,
                "a round pad",
                "That is the diameter of a round pad. A square one has a shorter side.",
            ),
            Mistake(answer / 2**0.5, "half the load", "You put half of the load on it. The post brings all of it."),
        ),
        hints=(
            "Area = load / pressure. The side is its root.",
            "a = √(P / ____).",
            f"a = √({say(load, 'force')} / {say(soil.pressure, 'area load')}), in feet, times 12.",
        ),
        solution=(
            f"Area = {say(load, 'force')} / {say(soil.pressure, 'area load')} = {area} ft²."
            "\n\nIts root is the side in feet. In inches it is 12 times as many.\n\n"
            f"a = 12 × √({area}) = **{say(answer, 'small length')}**."
        ),
        numbers={"load": load, "soil": soil.pressure},
    )


@asks("07", "pad_presses", "How hard does a pad press on the soil?")
def _pad_presses(draw):
    load, side = draw.randrange(6000, 20001, 500) * lb, draw.randrange(24, 49, 2) * inch
    thick = draw.choice((8, 10, 12, 14, 16)) * inch
    checks = footings.pad_checks(
        load=load,
        side=side,
        thickness=thick,
        soil=footings.find_soil(footings.soil_names()[0]),
        base=4 * inch,
    )
    answer, own = checks[0].asked, footings.concrete_weight() * thick
    in_feet = [f"({length / inch:g}/12 ft)" for length in (side, thick)]
    pressed, weight = carried(
        [(answer - own, "area load"), (own, "area load")], lambda one, other: one + other, "area load"
    )
    return Question(
        prompt=(
            f"A post brings {say(load, 'force')} to a pad {say_size(side)} square and {say_size(thick)} "
            "thick. Concrete weighs"
            f" {footings.concrete_weight() / pcf:.0f} lb a cubic foot. With the weight of the pad in "
            "it, how hard is the soil"
            f" pressed? {any_unit('pounds per square foot (psf)')}"
        ),
        dimension="area load",
        answer=answer,
        mistakes=(
            Mistake(
                answer - own,
                "weight of the pad forgotten",
                "The pad itself stands on the soil, too. Add its weight.",
            ),
            Mistake(
                load / side**2 - own,
                "weight taken off",
                "You took the pad's weight off. It comes on top of the load.",
            ),
            Mistake(
                (answer) / 144,
                "square inches (x144)",
                "You have pounds per square inch. A square foot has 144 of them.",
            ),
            Mistake(
                load / (side * ft) + own,
                "side instead of area",
                "You divided by the side. Divide by the side times itself.",
            ),
            Mistake(
                load / side**2 + 12 * own,
                "thickness in inches (x12)",
                "The thickness of the pad must be in feet there.",
            ),
        ),
        hints=(
            "Two things press: the load over the area, and the pad's own weight.",
            "q = P / a² + 150 × ____.",
            f"q = {say(load, 'force')} / {in_feet[0]}² + 150 lb/ft³ × {in_feet[1]}.",
        ),
        solution=(
            f"The load: {say(load, 'force')} / {in_feet[0]}² = {pressed}."
            f"\n\nThe pad: 150 lb/ft³ × {in_feet[1]} = {weight}.\n\nq = {pressed} + {weight} ="
            f" **{say(answer, 'area load')}**."
        ),
        numbers={"load": load, "side": side, "thick": thick},
    )
