"""Questions of notebook 14: what holds it meanwhile?"""

from structlib.ground.units import ft, inch, plf, psf
from structlib.mechanics import formulas, jacking, shoring
from structlib.pages.kit.questions.question import Mistake, Question, asks
from structlib.pages.kit.questions.wording import any_unit, carried, one_word, say, say_length, times


@asks("14", "temporary_wall", "What does the temporary wall carry?")
def _temporary_wall(draw):
    span, offset = draw.randrange(9, 17) * ft, draw.choice((2, 3)) * ft
    load = draw.randrange(30, 71, 5) * psf
    given = dict(line_load=load, span=span, offset=offset, tip_load=0.0)
    answer, share = (
        shoring.temporary_wall_reaction(**given),
        shoring.wall_share(line_load=load, span=span, tip_load=0.0),
    )
    (had,) = carried([(share, "line load")], lambda shown: shown * span / (span - offset), "line load")
    return Question(
        prompt=(
            f"Joists of {say_length(span)} end on a middle wall and carry {say(load, 'area load')}. The wall "
            "comes out. A"
            f" temporary wall stands {say_length(offset)} from it, on one side. What does it carry?"
            f" {any_unit('pounds per foot (plf)')}"
        ),
        dimension="line load",
        answer=answer,
        mistakes=(
            Mistake(share, "lever forgotten", "That is what the wall had. The temporary wall has a shorter lever."),
            Mistake(
                share * (span - offset) / span,
                "lever upside down",
                "You made it less. A shorter lever needs more push, not less.",
            ),
            Mistake(
                load * (span - offset) / 2,
                "overhang forgotten",
                "You took half the inner span. The part past the temporary wall hangs on it too.",
            ),
            Mistake(
                2 * answer,
                "both sides at once",
                "You counted both sides. Each side has a temporary wall of its own.",
            ),
        ),
        hints=(
            "Take the turning about the far wall, with and without the wall.",
            "R = (w × L / 2) × L / ____.",
            f"R = {had} × {say_length(span)} / {say_length(span - offset)}.",
        ),
        solution=(
            f"The wall had {say(load, 'area load')} × {say_length(span)} / 2 = {had} "
            "from this side."
            f"\n\nThe lever shrinks from {say_length(span)} to {say_length(span - offset)}.\n\nR = "
            f"{had} × {say_length(span)} / {say_length(span - offset)} = **{say(answer, 'line load')}**."
        ),
        numbers={"span": span, "offset": offset, "load": load},
    )


@asks("14", "what_stays_on_the_outside_wall", "What is left on the wall that stays?")
def _far_wall(draw):
    span, offset = draw.randrange(9, 17) * ft, draw.choice((2, 3)) * ft
    load = draw.randrange(30, 71, 5) * psf
    given = dict(line_load=load, span=span, offset=offset, tip_load=0.0)
    answer, push = shoring.far_wall_reaction(**given), shoring.temporary_wall_reaction(**given)
    whole, pushes = carried(
        [(load * span, "line load"), (push, "line load")], lambda one, other: one - other, "line load"
    )
    return Question(
        prompt=(
            f"Joists of {say_length(span)} carry {say(load, 'area load')}. Their inner wall is out. A "
            "temporary wall holds them"
            f" {say_length(offset)} from where it was. What is left on the outside wall? "
            f"{any_unit('pounds per foot (plf)')}"
        ),
        dimension="line load",
        answer=answer,
        mistakes=(
            Mistake(load * span / 2, "as before", "That is what it had before. The lever takes some of it away."),
            Mistake(
                push,
                "the temporary wall's",
                "That is the push of the temporary wall. You want the other one.",
            ),
            Mistake(
                load * (span - offset) / 2,
                "overhang forgotten",
                "You forgot the part past the temporary wall. It tips load off the outside wall.",
            ),
            Mistake(load * span, "all of it", "That is the whole load. The temporary wall has most of it."),
        ),
        hints=(
            "First find the push of the temporary wall. Then up and down must balance.",
            "far wall = w × L − ____.",
            f"far wall = {whole} − {pushes}.",
        ),
        solution=(
            f"The whole load is {whole}. The temporary wall has {pushes}."
            f"\n\nThe rest is {whole} − {pushes} = **{say(answer, 'line load')}**."
        ),
        numbers={"span": span, "offset": offset, "load": load},
    )


@asks("14", "load_that_tips", "How much on the joist ends lifts the far end?")
def _load_that_tips(draw):
    span, offset = draw.randrange(9, 17) * ft, draw.choice((2, 3)) * ft
    load = draw.randrange(8, 21) * psf
    given = dict(line_load=load, span=span, offset=offset)
    answer = shoring.tip_load_that_lifts_the_far_end(**given)
    return Question(
        prompt=(
            f"An outside wall comes out under joists of {say_length(span)}. The temporary wall stands "
            f"{say_length(offset)} inside."
            f" The empty floor weighs {say(load, 'area load')}. How much may stand on the joist "
            "tips before the far end lifts?"
            f" {any_unit('pounds per foot (plf)', 'at most')}"
        ),
        dimension="line load",
        side="at most",
        answer=answer,
        mistakes=(
            Mistake(
                2 * answer,
                "half forgotten",
                "You forgot the half. The weight turns with half its own length.",
            ),
            Mistake(
                load * (span - offset) ** 2 / (2 * offset),
                "overhang's weight forgotten",
                "You left out the floor past the temporary wall. It helps to tip.",
            ),
            Mistake(
                load * span * (span - 2 * offset) / (2 * (span - offset)),
                "wrong lever",
                "You divided by the inner span. The load on the tips has the short lever.",
            ),
            Mistake(
                load * span,
                "whole weight",
                "That is the weight of the floor. A lever asks for another number.",
            ),
        ),
        hints=(
            "Take the turning about the temporary wall. At the limit the far wall gives nothing.",
            "P × d = w × L × (L / 2 − ____).",
            f"P × {say_length(offset)} = {say(load * span, 'line load')} × {say_length(span / 2 - offset)}.",
        ),
        solution=(
            f"The floor weighs {say(load * span, 'line load')}. Its middle is "
            f"{say_length(span / 2 - offset)} from the temporary"
            f" wall.\n\nThe tips are {say_length(offset)} from it.\n\nP = "
            f"{say(load * span, 'line load')} × {say_length(span / 2 - offset)} / {say_length(offset)} ="
            f" **{say(answer, 'line load')}**."
        ),
        numbers={"span": span, "offset": offset, "load": load},
    )


@asks("14", "does_it_rise", "Does the far end rise?")
def _does_it_rise(draw):
    span, offset = draw.randrange(9, 17) * ft, draw.choice((2, 3, 4)) * ft
    load = draw.randrange(8, 21) * psf
    limit = shoring.tip_load_that_lifts_the_far_end(line_load=load, span=span, offset=offset)
    tip = round(limit / plf * draw.choice((0.4, 0.6, 1.5, 2.0)) / 10 + 1) * 10 * plf
    far = shoring.far_wall_reaction(line_load=load, span=span, offset=offset, tip_load=tip)
    answer, other = ("rises", "stays") if far < 0 else ("stays", "rises")
    message = (
        "The load on the tips has the short lever, but it is large. Compare both turnings."
        if answer == "rises"
        else "The floor's own weight still turns the other way with more. Compare both turnings."
    )
    return Question(
        prompt=(
            f"Joists of {say_length(span)} weigh {say(load, 'area load')} with their floor. A temporary wall "
            "stands"
            f" {say_length(offset)} from their inner end. On that end stand {say(tip, 'line load')}. Does "
            "the far end rise or"
            f" stay? {one_word(('rises', 'stays'))}"
        ),
        dimension="word",
        answer=answer,
        mistakes=(Mistake(other, "the other way", message),),
        hints=(
            "Compare two turnings about the temporary wall.",
            "tips: P × d. Floor: w × L × (L / 2 − ____).",
            f"tips: {say(tip, 'line load')} × {say_length(offset)}. Floor: {say(load * span, 'line load')} ×"
            f" {say_length(span / 2 - offset)}.",
        ),
        solution=(
            f"It turns round at {say(limit, 'line load')} on the tips. Here there are "
            f"{say(tip, 'line load')}."
            f"\n\nThe far end **{answer}**."
        ),
        numbers={"span": span, "offset": offset, "load": load, "tip": tip},
        tolerance=0,
        choices=("rises", "stays"),
    )


@asks("14", "ends_let_go", "At which lift do the ends let go?")
def _ends_let_go(draw):
    # any beam: the springing sag is given, so that no section has to be drawn up
    sag = draw.randrange(20, 91, 5) / 100 * inch
    unit = formulas.simple_uniform_deflection(line_load=1.0, span=1.0, bending_stiffness=1.0)
    answer = jacking.midspan_lift_off(line_load=1.0, span=1.0, bending_stiffness=1.0) * sag / unit
    return Question(
        prompt=(
            f"A simple beam springs down {say(sag, 'small length')} under its even load. A jack lifts "
            "its middle from"
            f" there. How far may it go before the whole load hangs on it?"
            f" {any_unit('inches (in)', 'at most')}"
        ),
        dimension="small length",
        side="at most",
        answer=answer,
        mistakes=(
            Mistake(sag, "straight again", "There the middle is level, and the ends still carry 3/8 of the load."),
            Mistake(
                sag * 0.8,
                "half the load",
                "There the jack has half of the load. It must have all of it.",
            ),
            Mistake(2 * sag, "twice", "It is not twice. Compare a load in the middle with one spread out."),
            Mistake(sag / 1.6, "upside down", "Turn it round: the lift is more than the springing sag."),
        ),
        hints=(
            "The jack must push with the whole load. How far does that lift the middle?",
            "ratio = (w L⁴ / 48 EI) / (____ w L⁴ / 384 EI).",
            f"ratio = 384 / (48 × 5), times {say(sag, 'small length')}.",
        ),
        solution=(
            "One load W in the middle moves it by W L³ / 48 EI. Spread out it is 5 W L³ / 384 "
            "EI.\n\n384 / 240 = 1.6.\n\n"
            f"1.6 × {say(sag, 'small length')} = **{say(answer, 'small length')}**."
        ),
        numbers={"sag": sag},
    )


@asks("14", "jack_share", "Which share of the load is on the jack?")
def _jack_share(draw):
    sag = draw.randrange(30, 91, 10) / 100 * inch
    part = draw.choice((4, 5, 6, 7, 8, 9, 10, 11, 12))
    lift = sag * part / 10
    whole = jacking.midspan_lift_off(line_load=1.0, span=1.0, bending_stiffness=1.0) / (
        formulas.simple_uniform_deflection(line_load=1.0, span=1.0, bending_stiffness=1.0)
    )
    answer = lift / (whole * sag)
    return Question(
        prompt=(
            f"A simple beam springs down {say(sag, 'small length')} under its even load. A jack has "
            "lifted its middle by"
            f" {say(lift, 'small length')}. How many times the whole load is on the jack? {times()}"
        ),
        dimension="ratio",
        answer=answer,
        mistakes=(
            Mistake(
                lift / sag,
                "against the springing sag",
                "You took the sag as the end. It ends at 1.6 times the sag.",
            ),
            Mistake(answer * 1.6**2, "1.6 the wrong way", "You multiplied by 1.6. Divide by it."),
            Mistake(answer / 2, "halved", "You halved it. There is one jack, and it has all of this."),
            Mistake(2 * answer, "against half the load", "You compared with half the load. Take the whole load."),
        ),
        hints=(
            "The force grows in step with the lift. At 1.6 times the sag it is the whole load.",
            "share = lift / (____ × sag).",
            f"share = {say(lift, 'small length')} / (1.6 × {say(sag, 'small length')}).",
        ),
        solution=(
            f"The whole load hangs on the jack at 1.6 × {say(sag, 'small length')} = "
            f"{say(1.6 * sag, 'small length')}."
            f"\n\nThe share: {say(lift, 'small length')} / {say(1.6 * sag, 'small length')} ="
            f" **{say(answer, 'ratio')}**."
        ),
        numbers={"sag": sag, "lift": lift},
    )
