"""Questions of notebook 03: how does a beam push back?"""

from structlib.ground.units import ft, lb, plf
from structlib.mechanics import formulas
from structlib.pages.kit.questions.question import Mistake, Question, asks
from structlib.pages.kit.questions.wording import any_unit, carried, say, say_length, times


def _one_load(draw):
    """Draw a load, a span, and a place nearer the left end, in whole feet."""
    load = draw.randrange(400, 4001, 100) * lb
    span = draw.randrange(9, 19)
    place = draw.randrange(2, span // 2) if span // 2 > 2 else 2
    return load, span * ft, place * ft


@asks("03", "nearer_support", "One load off the middle: which support takes what?")
def _nearer_support(draw):
    load, span, place = _one_load(draw)
    answer = formulas.simple_point_left_reaction(point_load=load, span=span, load_position=place)
    other = formulas.simple_point_right_reaction(point_load=load, span=span, load_position=place)
    return Question(
        prompt=(
            f"A simple beam spans {say_length(span)}. One load of {say(load, 'force')} stands {say_length(place)} from the left"
            f" support. Leave out the beam's own weight. What does the left support carry? {any_unit('pounds (lb)')}"
        ),
        dimension="force",
        answer=answer,
        mistakes=(
            Mistake(other, "levers swapped", "That is the right support. The nearer support takes more."),
            Mistake(load / 2, "half and half", "Half and half is right only for a load in the middle."),
            Mistake(load, "all of it", "That is the whole load. The right support takes some of it."),
            Mistake(
                load * place / (span - place),
                "lever of the wrong span",
                "You divided by what lies beyond the load. Divide by the whole span.",
            ),
            Mistake(answer / 2, "halved", "You halved the share. The lever has seen to that already."),
        ),
        hints=(
            "Take the turning about the other support.",
            "R = P × ____ / L.",
            f"R = {say(load, 'force')} × {say_length(span - place)} / {say_length(span)}.",
        ),
        solution=(
            f"Turning about the right support: the load's lever is {say_length(span)} − {say_length(place)} ="
            f" {say_length(span - place)}.\n\nR × {say_length(span)} = {say(load, 'force')} ×"
            f" {say_length(span - place)}.\n\nR = {say(load, 'force')} × {say_length(span - place)} /"
            f" {say_length(span)} = **{say(answer, 'force')}**."
        ),
        numbers={"load": load, "span": span, "place": place},
    )


@asks("03", "moment_under_load", "The moment under one load")
def _moment_under_load(draw):
    load, span, place = _one_load(draw)
    answer = formulas.simple_point_moment(point_load=load, span=span, load_position=place)
    push = formulas.simple_point_left_reaction(point_load=load, span=span, load_position=place)
    (push,) = carried([(push, "force")], lambda shown: shown * place, "moment")
    middle = formulas.simple_midspan_point_moment(point_load=load, span=span)
    return Question(
        prompt=(
            f"A simple beam spans {say_length(span)}. One load of {say(load, 'force')} stands {say_length(place)} from the left"
            f" support. Leave out the beam's own weight. What is the greatest moment? {any_unit('pound-feet (lb-ft)')}"
        ),
        dimension="moment",
        answer=answer,
        mistakes=(
            Mistake(middle, "load in the middle", "P L / 4 is for a load in the middle. This one stands off it."),
            Mistake(
                12 * answer,
                "pound-inches written as pound-feet (x12)",
                "The number is in pound-inches. Divide by 12, or name the unit lb-in.",
            ),
            Mistake(
                load * place,
                "whole load times its place",
                "You took the whole load. Only the support's push times its lever makes the moment.",
            ),
            Mistake(
                load * place / 2,
                "half the load times its place",
                "You gave the support half the load. It takes more or less by its lever.",
            ),
            Mistake(load * span / 8, "the formula of an even load", "W L / 8 is for a load spread evenly."),
        ),
        hints=(
            "First the push of the left support, then its lever up to the load.",
            "M = R × ____, with R = P × b / L.",
            f"M = {say(load, 'force')} × {say_length(place)} × {say_length(span - place)} / {say_length(span)}.",
        ),
        solution=(
            f"The left support pushes {say(load, 'force')} × {say_length(span - place)} /"
            f" {say_length(span)} ="
            f" {push}.\n\nIts lever up to the load is {say_length(place)}.\n\nM = {push} ×"
            f" {say_length(place)} = **{say(answer, 'moment')}**."
        ),
        numbers={"load": load, "span": span, "place": place},
    )


@asks("03", "shear_on_the_way", "How much shear is left on the way to the middle?")
def _shear_on_the_way(draw):
    load, span = draw.randrange(100, 501, 10) * plf, draw.randrange(10, 21) * ft
    place = draw.randrange(1, int(span / ft) // 2) * ft
    answer = formulas.simple_uniform_shear_at(line_load=load, span=span, position=place)
    end = formulas.simple_uniform_reaction(line_load=load, span=span)
    return Question(
        prompt=(
            f"A simple beam spans {say_length(span)} and carries {say(load, 'line load')} all along. How much shear is there"
            f" {say_length(place)} from the left support? {any_unit('pounds (lb)')}"
        ),
        dimension="force",
        answer=answer,
        mistakes=(
            Mistake(
                end,
                "shear at the support",
                "That is the shear at the support. Some load has come off on the way.",
            ),
            Mistake(
                load * place,
                "load passed",
                "That is the load you have passed. Subtract it from the support's push.",
            ),
            Mistake(
                2 * end - load * place,
                "half span forgotten",
                "You started with the whole load. A support has half.",
            ),
            Mistake(end + load * place, "added", "You added the load passed. Load takes shear away."),
            Mistake(
                end - load * place / 2,
                "half of the load passed",
                "You took off only half of the load passed.",
            ),
        ),
        hints=(
            "Start with the push of the support.",
            "V = w × L / 2 − w × ____.",
            f"V = {say(end, 'force')} − {say(load, 'line load')} × {say_length(place)}.",
        ),
        solution=(
            f"The support pushes {say(end, 'force')}.\n\nOn the way {say(load, 'line load')} × {say_length(place)} ="
            f" {say(load * place, 'force')} come off.\n\nV = {say(end, 'force')} −"
            f" {say(load * place, 'force')} = **{say(answer, 'force')}**."
        ),
        numbers={"load": load, "span": span, "place": place},
    )


@asks("03", "over_the_support", "The moment over a middle support")
def _over_the_support(draw):
    load, span = draw.randrange(100, 501, 10) * plf, draw.randrange(8, 17) * ft
    answer = -formulas.two_span_uniform_support_moment(line_load=load, span=span)
    in_span = formulas.two_span_uniform_span_moment(line_load=load, span=span)
    return Question(
        prompt=(
            f"A beam in one piece runs over three supports. Both spans are {say_length(span)}, with {say(load, 'line load')} all"
            f" along. How great is the moment over the middle support? Give its size, without a sign."
            f" {any_unit('pound-feet (lb-ft)')}"
        ),
        dimension="moment",
        answer=answer,
        mistakes=(
            Mistake(
                in_span,
                "moment in the span",
                "That is the moment in the spans. Over the support it is greater.",
            ),
            Mistake(4 * answer, "one long span", "You took both spans as one. The middle support is there."),
            Mistake(
                12 * answer,
                "pound-inches written as pound-feet (x12)",
                "The number is in pound-inches. Divide by 12, or name the unit lb-in.",
            ),
            Mistake(8 * answer, "the 8 forgotten", "You stopped at w L². Divide by 8."),
            Mistake(8 * answer / 12, "fixed ends", "w L² / 12 is for ends held from turning. Here it is w L² / 8."),
        ),
        hints=(
            "It is as great as in the middle of one simple span.",
            "M = w × L² / ____.",
            f"M = {say(load, 'line load')} × ({say_length(span)})² / 8.",
        ),
        solution=(
            f"M = w L² / 8 = {say(load, 'line load')} × ({say_length(span)})² / 8 ="
            f" **{say(answer, 'moment')}**, and it bends"
            " the beam the other way."
        ),
        numbers={"load": load, "span": span},
    )


@asks("03", "longer_span", "A longer span: how much more sag?")
def _longer_span(draw):
    before, after = draw.choice(
        ((8, 10), (8, 12), (10, 12), (10, 14), (10, 15), (12, 15), (12, 16), (12, 18), (14, 16))
    )
    sag = [
        formulas.simple_uniform_deflection(line_load=1.0, span=float(span), bending_stiffness=1.0)
        for span in (before, after)
    ]
    ratio, answer = after / before, sag[1] / sag[0]
    return Question(
        prompt=(
            f"A simple beam spans {before} ft. It is replaced by the same beam over {after} ft, with the same load on every"
            f" foot. How many times as much does it sag? {times()}"
        ),
        dimension="ratio",
        answer=answer,
        mistakes=(
            Mistake(
                ratio,
                "grows with the span",
                "Sag does not grow like the span. It grows with its fourth power.",
            ),
            Mistake(ratio**2, "squared", "Squared is the moment. Sag grows with the fourth power."),
            Mistake(
                ratio**3,
                "cubed",
                "Cubed is for one load that stays the same. Here the load grows with the span.",
            ),
            Mistake(1 / answer, "upside down", "Turn it round: the longer span sags more."),
        ),
        hints=(
            "The span comes into the sag four times.",
            "ratio = (L after / L before) to the power ____.",
            f"ratio = ({after} / {before})⁴.",
        ),
        solution=f"The sag grows with L⁴.\n\n({after} / {before})⁴ = **{say(answer, 'ratio')}**.",
        numbers={"before": before, "after": after},
    )
