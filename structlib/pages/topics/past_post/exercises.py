"""Questions of notebook 10: what happens past the post?"""

from structlib.ground.units import ft, inch, lb, plf
from structlib.mechanics import formulas
from structlib.mechanics.continuous import two_span_inflection_places
from structlib.mechanics.overhang import (
    overhang_tip_back_reaction,
    overhang_tip_moment,
    overhang_tip_near_reaction,
)
from structlib.mechanics.splices import plies_at
from structlib.mechanics.tapered import tapered_uniform_stress_place
from structlib.pages.kit.questions.question import Mistake, Question, asks
from structlib.pages.kit.questions.wording import any_unit, carried, say, say_length, whole
from structlib.rules.choice import RULEBOOK

_hold_down = RULEBOOK.room("uplift").hold_down_demand


def _tip_load(draw):
    """Draw a load on a tip, a span and an overhang, in whole feet."""
    load = draw.randrange(600, 4001, 100) * lb
    return load, draw.randrange(8, 17) * ft, draw.randrange(2, 6) * ft


@asks("10", "far_end_lifts", "A load past the post: how hard does the far end pull?")
def _far_end_lifts(draw):
    load, span, overhang = _tip_load(draw)
    given = dict(point_load=load, span=span, overhang=overhang)
    answer, near = -overhang_tip_back_reaction(**given), overhang_tip_near_reaction(**given)
    return Question(
        prompt=(
            f"A beam spans {say_length(span)} and runs {say_length(overhang)} past its right post. A post from above puts"
            f" {say(load, 'force')} on the tip. Leave out all other load. How much must hold the left end down?"
            f" {any_unit('pounds (lb)', 'at least')}"
        ),
        dimension="force",
        side="at least",
        answer=answer,
        mistakes=(
            Mistake(
                near,
                "the near post",
                "That is what the near post carries. The far end only holds the balance.",
            ),
            Mistake(load, "the whole load", "The far end has the longer lever, so it needs less than the load."),
            Mistake(
                load * span / overhang,
                "levers upside down",
                "You divided by the short lever. Divide by the span.",
            ),
            Mistake(
                load * overhang / (span + overhang),
                "whole beam as lever",
                "You divided by the whole beam. Turn about the near post; the lever behind it is the span.",
            ),
            Mistake(load / 2, "half and half", "Half and half is for a load in the middle of a span."),
        ),
        hints=(
            "Turn about the near post. The load turns one way, the hold-down the other.",
            "R × L = P × ____.",
            f"R = {say(load, 'force')} × {say_length(overhang)} / {say_length(span)}.",
        ),
        solution=(
            f"Turning about the near post: R × {say_length(span)} = {say(load, 'force')} × {say_length(overhang)}.\n\n"
            f"R = {say(load, 'force')} × {say_length(overhang)} / {say_length(span)} ="
            f" **{say(answer, 'force')}**, downward on the beam."
        ),
        numbers={"load": load, "span": span, "overhang": overhang},
    )


@asks("10", "near_post", "A load past the post: what does the near post carry?")
def _near_post(draw):
    load, span, overhang = _tip_load(draw)
    given = dict(point_load=load, span=span, overhang=overhang)
    answer = overhang_tip_near_reaction(**given)
    far = -overhang_tip_back_reaction(**given)
    (pull,) = carried([(far, "force")], lambda shown: shown + load, "force")
    return Question(
        prompt=(
            f"A beam spans {say_length(span)} and runs {say_length(overhang)} past its right post. A post from above puts"
            f" {say(load, 'force')} on the tip. Leave out all other load. What does the right post carry?"
            f" {any_unit('pounds (lb)')}"
        ),
        dimension="force",
        answer=answer,
        mistakes=(
            Mistake(load, "just the load", "It also carries what the far end pulls down."),
            Mistake(far, "the far end", "That is the pull at the far end."),
            Mistake(
                load * span / (span + overhang),
                "turned upside down",
                "You made it less than the load. The beam is a seesaw; its pivot carries both sides.",
            ),
            Mistake(
                load * (span - overhang) / span,
                "subtracted",
                "You took the pull off. The hold-down pulls the beam down, so the post carries it too.",
            ),
            Mistake(2 * load, "doubled", "Twice the load is right only where the overhang is as long as the span."),
        ),
        hints=(
            "The near post carries the load, and the pull of the far end.",
            "R = P × (L + ____) / L.",
            f"R = {say(load, 'force')} × ({say_length(span)} + {say_length(overhang)}) / {say_length(span)}.",
        ),
        solution=(
            f"The far end pulls down with {pull}.\n\nThe near post carries that and the load: {pull} +"
            f" {say(load, 'force')} = **{say(answer, 'force')}**."
        ),
        numbers={"load": load, "span": span, "overhang": overhang},
    )


@asks("10", "hold_down_against_dead", "How much hold-down is left when the floor's own weight helps?")
def _hold_down_against_dead(draw):
    span, overhang = draw.randrange(10, 17) * ft, draw.randrange(2, 5) * ft
    dead = draw.randrange(20, 61, 5) * plf
    # the post is made heavy enough that something is always left to hold down
    press = formulas.simple_uniform_reaction(line_load=dead, span=span)
    least = 1.5 * press * span / overhang / lb
    load = (int(least / 100) + draw.randrange(2, 15)) * 100 * lb
    lift = -overhang_tip_back_reaction(point_load=load, span=span, overhang=overhang)
    answer = _hold_down(dead_push=press, passing_push=-lift)
    lifts, presses = carried([(lift, "force"), (press, "force")], lambda up, down: up - 0.6 * down, "force")
    return Question(
        prompt=(
            f"A beam spans {say_length(span)} and runs {say_length(overhang)} past its right post. Live load through a post puts"
            f" {say(load, 'force')} on the tip. Dead load of {say(dead, 'line load')} lies on the span only. Count 0.6 of the"
            f" dead load. What must hold the left end down? {any_unit('pounds (lb)', 'at least')}"
        ),
        dimension="force",
        side="at least",
        answer=answer,
        mistakes=(
            Mistake(lift, "dead load left out", "That is the lift alone. Part of the dead load helps."),
            Mistake(
                lift - press,
                "all of the dead load counted",
                "You counted all of the dead load. Only 0.6 of it may be counted where it helps.",
            ),
            Mistake(
                lift + 0.6 * press,
                "added",
                "You added the dead load. It presses the left end down, and helps.",
            ),
            Mistake(
                lift - 1.2 * press,
                "half span forgotten",
                "You put the load of the whole span on one support. Each gets half.",
            ),
            Mistake(
                lift + press,
                "all of it added",
                "You added all of the dead load. It helps, and only 0.6 counts.",
            ),
        ),
        hints=(
            "First the lift from the tip, then the push from the dead load on the span.",
            "hold-down = P a / L − 0.6 × ____.",
            f"hold-down = {lifts} − 0.6 × {presses}.",
        ),
        solution=(
            f"The tip lifts with {say(load, 'force')} × {say_length(overhang)} / {say_length(span)} ="
            f" {lifts}.\n\n"
            f"The dead load presses with {say(dead, 'line load')} × {say_length(span)} / 2 = {presses}.\n\n"
            f"Hold-down = {lifts} − 0.6 × {presses} = **{say(answer, 'force')}**."
        ),
        numbers={"load": load, "span": span, "overhang": overhang, "dead": dead},
    )


@asks("10", "moment_past_the_post", "The moment over the near post")
def _moment_past_the_post(draw):
    load, span, overhang = _tip_load(draw)
    even = draw.randrange(50, 301, 10) * plf
    tip = -overhang_tip_moment(point_load=load, overhang=overhang)
    spread = -formulas.overhang_uniform_support_moment(line_load=even, overhang=overhang)
    answer = tip + spread
    return Question(
        prompt=(
            f"A beam runs {say_length(overhang)} past its post. The tip carries {say(load, 'force')}, and the overhang carries"
            f" {say(even, 'line load')} all along. How great is the moment over the post? Give its size, without a sign."
            f" {any_unit('pound-feet (lb-ft)')}"
        ),
        dimension="moment",
        answer=answer,
        mistakes=(
            Mistake(tip, "floor load left out", "You left out the even load on the overhang."),
            Mistake(spread, "tip load left out", "You left out the load on the tip."),
            Mistake(
                tip + 2 * spread,
                "the 2 forgotten",
                "The even load acts at the middle of the overhang: w a² / 2.",
            ),
            Mistake(
                tip + spread / 4,
                "the formula of a simple span",
                "w a² / 8 is for a span between two supports. Past the post it is w a² / 2.",
            ),
            Mistake(
                12 * answer,
                "pound-inches written as pound-feet (x12)",
                "The number is in pound-inches. Divide by 12, or name the unit lb-in.",
            ),
        ),
        hints=(
            "Each load times its lever from the post.",
            "M = P × a + w × a² / ____.",
            f"M = {say(load, 'force')} × {say_length(overhang)} + {say(even, 'line load')} × ({say_length(overhang)})² / 2.",
        ),
        solution=(
            f"The tip: {say(load, 'force')} × {say_length(overhang)} = {say(tip, 'moment')}.\n\n"
            f"The even load: {say(even, 'line load')} × ({say_length(overhang)})² / 2 ="
            f" {say(spread, 'moment')}.\n\nM = {say(tip, 'moment')} + {say(spread, 'moment')} ="
            f" **{say(answer, 'moment')}**, and it bends the beam the other way."
        ),
        numbers={"load": load, "overhang": overhang, "even": even},
    )


@asks("10", "post_taken_out_moment", "The middle post is gone: what is the moment now?")
def _post_taken_out_moment(draw):
    span, load = draw.randrange(6, 15) * ft, draw.randrange(100, 501, 10) * plf
    answer = formulas.simple_uniform_moment(line_load=load, span=2 * span)
    before = formulas.simple_uniform_moment(line_load=load, span=span)
    return Question(
        prompt=(
            f"A beam runs over a middle post. Both spans are {say_length(span)}, with {say(load, 'line load')} all along. The"
            f" middle post is taken out. What is the greatest moment now? {any_unit('pound-feet (lb-ft)')}"
        ),
        dimension="moment",
        answer=answer,
        mistakes=(
            Mistake(before, "span not doubled", "You kept the old span. Both spans are one now."),
            Mistake(
                2 * before,
                "only doubled",
                "The moment grows with the square of the span: four times, not twice.",
            ),
            Mistake(
                16 * before,
                "the sag's power",
                "Sixteen times is the sag of a beam that was cut. The moment grows four times.",
            ),
            Mistake(8 * answer, "the 8 forgotten", "You stopped at w L². Divide by 8."),
            Mistake(
                12 * answer,
                "pound-inches written as pound-feet (x12)",
                "The number is in pound-inches. Divide by 12, or name the unit lb-in.",
            ),
        ),
        hints=(
            "Without the post there is one simple span.",
            "M = w × (2 L)² / ____.",
            f"M = {say(load, 'line load')} × ({say_length(2 * span)})² / 8.",
        ),
        solution=(
            f"The span is {say_length(2 * span)} now.\n\nM = {say(load, 'line load')} ×"
            f" ({say_length(2 * span)})² / 8 = **{say(answer, 'moment')}**, four times that before."
        ),
        numbers={"load": load, "span": span},
    )


@asks("10", "plies_that_run_through", "How many plies run through this section?")
def _plies_that_run_through(draw):
    plies = draw.randrange(3, 6)
    at, span = draw.randrange(1, plies), draw.randrange(8, 15)
    other = draw.randrange(0, plies - at)
    elsewhere = plies - at - other
    splices = ((span * ft,),) * at + ((0.75 * span * ft,),) * other + ((),) * elsewhere
    answer = plies_at(span * ft, splices)
    verb = "is" if at == 1 else "are"
    more = (
        f" Of the others, {other} {'is' if other == 1 else 'are'} cut in the span, {say_length(0.25 * span * ft)} before it."
        if other
        else ""
    )
    return Question(
        prompt=(
            f"A beam of {plies} plies runs over a post, {span} ft from its end. Over the post {at} of the plies {verb} cut."
            f"{more} How many plies run through over the post? {whole('plies')}"
        ),
        dimension="count",
        answer=answer,
        mistakes=(
            Mistake(plies, "joints ignored", "A ply that is cut carries nothing at the cut."),
            Mistake(at, "the cut ones counted", "Those are the cut ones. Count the others."),
            Mistake(answer - 1, "one too few", "You left out a ply that is whole over the post."),
            Mistake(answer + 1, "one too many", "One of those you counted is cut over the post."),
            Mistake(
                elsewhere,
                "joints elsewhere counted",
                "A joint in the span leaves the ply whole over the post.",
            ),
        ),
        hints=(
            "Look at this section only.",
            "plies that run through = all plies − ____.",
            f"plies that run through = {plies} − {at}.",
        ),
        solution=f"{at} of {plies} plies are cut here.\n\nWhat runs through: {plies} − {at} = **{answer}**.",
        tolerance=0,
        numbers={"plies": plies, "at": at},
    )


@asks("10", "zero_moment_place", "Where is a joint asked for nothing?")
def _zero_moment_place(draw):
    span = draw.randrange(12, 61, 2) * ft / 2
    answer = two_span_inflection_places(span=span)[0]
    return Question(
        prompt=(
            f"A beam in one piece runs over a middle post. Both spans are {say_length(span)}, with an even load all along. How far"
            f" from the left end is the moment of the first span zero again? {any_unit('feet (ft)')}"
        ),
        dimension="length",
        answer=answer,
        mistakes=(
            Mistake(span / 2, "the middle", "The middle of the span is bent. Look nearer the post."),
            Mistake(span, "the post", "Over the post the moment is greatest, not zero."),
            Mistake(
                span / 4,
                "from the post",
                "That is how far before the post it lies. The question asks from the end.",
            ),
            Mistake(
                3 * span / 8,
                "the place of the greatest moment",
                "There the moment is greatest. It is zero twice as far from the end.",
            ),
        ),
        hints=(
            "The end pushes 3/8 of w L. The moment is R x − w x² / 2.",
            "3/8 × w L x = w x² / ____.",
            f"x = 3/4 × {say_length(span)}.",
        ),
        solution=(
            "3/8 w L x − w x² / 2 = 0 gives x = 3/4 L.\n\n"
            f"x = 3/4 × {say_length(span)} = **{say_length(answer)}**. It wanders when the load does."
        ),
        numbers={"span": span},
    )


@asks("10", "taper_weak_spot", "Where is a tapered beam stressed most?")
def _taper_weak_spot(draw):
    span = draw.randrange(8, 21) * ft
    shallow = draw.randrange(4, 9) * inch
    deep = shallow + draw.randrange(3, 9) * inch
    answer = tapered_uniform_stress_place(span=span, start_depth=shallow, end_depth=deep)
    return Question(
        prompt=(
            f"A simple beam spans {say_length(span)} under an even load. It is {say(shallow, 'section length')} deep at the left"
            f" end and {say(deep, 'section length')} at the right, and tapers evenly between. How far from the left end is it"
            f" stressed most in bending? {any_unit('feet (ft)')}"
        ),
        dimension="length",
        answer=answer,
        mistakes=(
            Mistake(
                span / 2,
                "the middle",
                "There the moment is greatest, but the beam is deeper than further left.",
            ),
            Mistake(span * deep / (shallow + deep), "from the deep end", "That is measured from the deep end."),
            Mistake(span * shallow / deep, "divided by the deep end", "Divide by both depths together."),
            Mistake(
                span * (deep - shallow) / (shallow + deep),
                "difference instead of depth",
                "The shallow depth stands above the line, not the difference.",
            ),
        ),
        hints=(
            "Stress is moment over section modulus, and both change along the beam.",
            "x = L × shallow / (shallow + ____).",
            f"x = {say_length(span)} × {say(shallow, 'section length')} / ({say(shallow, 'section length')} + {say(deep, 'section length')}).",
        ),
        solution=(
            f"x = L d₀ / (d₀ + d₁) = {say_length(span)} × {say(shallow, 'section length')} /"
            f" ({say(shallow, 'section length')} + {say(deep, 'section length')}) = **{say_length(answer)}**"
            " from the shallow end."
        ),
        numbers={"span": span, "shallow": shallow, "deep": deep},
    )
