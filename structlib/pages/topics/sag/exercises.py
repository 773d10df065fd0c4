"""Questions of notebook 13: why does it sag and bounce?"""

from structlib.ground.units import ft, inch, plf
from structlib.mechanics import formulas, vibration
from structlib.pages.kit.questions.question import Mistake, Question, asks
from structlib.pages.kit.questions.wording import any_unit, say, say_length, times
from structlib.rules.choice import RULEBOOK

deflection = RULEBOOK.room("deflection")


@asks("13", "sag_after_years", "How far has it sagged after years?")
def _sag_after_years(draw):
    lasting, passing = draw.randrange(10, 61, 2) / 100 * inch, draw.randrange(10, 61, 2) / 100 * inch
    wet = draw.random() < 0.5
    factor = deflection.creep_factor(wet=wet)
    answer = deflection.long_term_deflection(lasting=lasting, passing=passing, creep_factor=factor)
    wood = "was laid green" if wet else "was laid dry and stayed dry"
    other = deflection.creep_factor(wet=not wet)
    return Question(
        prompt=(
            f"A floor {wood}. Its own weight bent it {say(lasting, 'small length')} at once. People bend it "
            f"another"
            f" {say(passing, 'small length')}. How far is it down after years, with people on it? "
            f"{any_unit('inches (in)')}"
        ),
        dimension="small length",
        answer=answer,
        mistakes=(
            Mistake(
                lasting + passing,
                "creep forgotten",
                "That is the sag of the first day. Years add to the lasting part.",
            ),
            Mistake(
                factor * (lasting + passing),
                "people creep too",
                "You let the people's part grow too. They come and go; only the weight that stays makes creep.",
            ),
            Mistake(
                other * lasting + passing,
                "the other wood",
                "That is the factor of wood laid dry. This one was green."
                if wet
                else "That is the factor of green wood. This one was dry.",
            ),
            Mistake(factor * lasting, "people forgotten", "The people stand on it too. Add their part."),
        ),
        hints=(
            "Only the weight that stays makes creep.",
            "after years = ____ × lasting + passing.",
            f"after years = {factor:g} × {say(lasting, 'small length')} + {say(passing, 'small length')}.",
        ),
        solution=(
            f"{'Green' if wet else 'Dry'} wood: factor {factor:g}.\n\n{factor:g} × "
            f"{say(lasting, 'small length')} ="
            f" {say(factor * lasting, 'small length')}.\n\nWith people:"
            f" {say(factor * lasting, 'small length')} + {say(passing, 'small length')} ="
            f" **{say(answer, 'small length')}**."
        ),
        numbers={"lasting": lasting, "passing": passing, "wet": wet},
    )


@asks("13", "slower_when_longer", "A longer span: how much slower does it swing?")
def _slower(draw):
    short, long = draw.choice(((8, 10), (8, 12), (9, 12), (10, 12), (10, 14), (10, 15), (12, 15), (12, 16), (14, 18)))
    one, other = (
        vibration.simple_span_frequency(bending_stiffness=1.0, line_weight=1.0, span=float(span))
        for span in (short, long)
    )
    answer, ratio = other / one, short / long
    return Question(
        prompt=(
            f"A joist spans {short} ft and swings at its first frequency. The same joist, with the same "
            f"floor, spans"
            f" {long} ft. What is its frequency, as a share of the old one? {times()}"
        ),
        dimension="ratio",
        answer=answer,
        mistakes=(
            Mistake(ratio, "goes with the span", "Frequency falls with the span squared. You took the span once."),
            Mistake(
                ratio**4,
                "fourth power",
                "The fourth power is the sag. Frequency goes with the root of its inverse.",
            ),
            Mistake(1 / answer, "upside down", "Turn it round: the longer floor swings more slowly."),
            Mistake(ratio**0.5, "root", "You took a root of the span. It comes in squared."),
        ),
        hints=(
            "The span stands under the root with its fourth power.",
            "ratio = (L short / L long) to the power ____.",
            f"ratio = ({short} / {long})².",
        ),
        solution=f"Frequency goes with 1/L².\n\n({short} / {long})² = **{say(answer, 'ratio')}**.",
        numbers={"short": short, "long": long},
    )


@asks("13", "beam_under_the_middle", "What does a new beam under the middle get?")
def _beam_under(draw):
    span, load = draw.randrange(12, 21, 2) * ft, draw.randrange(40, 121, 5) * plf
    answer = formulas.two_span_uniform_middle_reaction(line_load=load, span=span / 2)
    return Question(
        prompt=(
            f"A joist spans {say_length(span)} and carries {say(load, 'line load')}. It is lifted straight, and "
            f"a new beam comes"
            f" under its middle. The joist runs through. What does it put on the beam? "
            f"{any_unit('pounds (lb)')}"
        ),
        dimension="force",
        answer=answer,
        mistakes=(
            Mistake(
                load * span / 2,
                "as if cut",
                "Half is for a joist that is cut over the beam. This one runs through.",
            ),
            Mistake(load * span, "all of it", "The two walls keep some of it."),
            Mistake(2 * answer, "whole span put in", "You put the whole span in. Each span is half of it now."),
            Mistake(
                0.375 * load * span / 2,
                "an outside wall's",
                "That is what an outside wall keeps. The beam in the middle gets the most.",
            ),
        ),
        hints=(
            "Two equal spans in one piece: the middle takes more than half of all.",
            "R = 10/8 × w × ____.",
            f"R = 10/8 × {say(load, 'line load')} × {say_length(span / 2)}.",
        ),
        solution=(
            f"Each span is {say_length(span / 2)} now.\n\nR = 1.25 × {say(load, 'line load')} × "
            f"{say_length(span / 2)} ="
            f" **{say(answer, 'force')}**."
        ),
        numbers={"span": span, "load": load},
    )
