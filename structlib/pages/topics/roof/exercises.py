"""Questions of notebook 08: what keeps the roof from spreading?"""

from structlib.ground.units import ft, psf
from structlib.mechanics import frames
from structlib.pages.kit.questions.question import Mistake, Question, asks
from structlib.pages.kit.questions.wording import any_unit, carried, one_word, say, say_length, times
from structlib.rules.choice import RULEBOOK

roof_ties = RULEBOOK.room("roof_ties")

_HEIGHTS = ((5, "one fifth"), (4, "one quarter"), (3, "one third"), (2, "one half"))


def _roof(draw):
    """Draw a load on plan, a width and a rise in 12; numbers in whole feet and pounds."""
    return (
        draw.randrange(30, 71, 5) * psf,
        draw.randrange(16, 33, 2) * ft,
        draw.choice((3, 4, 5, 6, 8, 9, 12)),
    )


def _told(load, width, rise):
    gable = f"A gable roof is {say_length(width)} wide and rises {rise} in 12."
    return f"{gable} It carries {say(load, 'area load')} on plan."


@asks("08", "eave_push", "How hard do the rafters push outward?")
def _eave_push(draw):
    load, width, rise_in_12 = _roof(draw)
    rise = width / 2 * rise_in_12 / 12
    answer = frames.rafter_thrust(line_load=load, building_span=width, rise=rise)
    return Question(
        prompt=(
            f"{_told(load, width, rise_in_12)} Ties hold it at the eaves. How hard does it push outward, "
            f"on every foot "
            f"of wall? {any_unit('pounds per foot (plf)')}"
        ),
        dimension="line load",
        answer=answer,
        mistakes=(
            Mistake(
                4 * answer,
                "divided by 2 h",
                "You divided by 2 h. It is 8 h: half of the turning is used up by the load itself.",
            ),
            Mistake(answer / 2, "half the push", "You halved it. Each eave gets the whole push, one each way."),
            Mistake(2 * answer, "both eaves added", "You added both eaves. They are one pull in one tie."),
            Mistake(load * width / 2, "the lift of the wall", "That is what the wall lifts. The push is sideways."),
            Mistake(
                frames.rafter_thrust(line_load=load, building_span=width, rise=width * rise_in_12 / 12),
                "rise over the whole width",
                "You let it rise over the whole width. The ridge stands in the middle.",
            ),
        ),
        hints=(
            "Look at one rafter alone, and turn about the ridge.",
            "push = w × L² / (8 × ____).",
            f"push = {say(load, 'area load')} × ({say_length(width)})² / (8 × {say_length(rise)}).",
        ),
        solution=(
            f"The rise is {say_length(width)} / 2 × {rise_in_12} / 12 = {say_length(rise)}.\n\npush = w L² / (8 h) ="
            f" {say(load, 'area load')} × ({say_length(width)})² / (8 × {say_length(rise)}) = "
            f"**{say(answer, 'line load')}**."
        ),
        numbers={"load": load, "width": width, "rise": rise_in_12},
    )


@asks("08", "raised_tie_pull", "What is a raised tie pulled with?")
def _raised_tie_pull(draw):
    load, width, rise_in_12 = _roof(draw)
    rise, spacing = width / 2 * rise_in_12 / 12, draw.choice((16, 24)) / 12 * ft
    part, word = draw.choice(_HEIGHTS)
    given = dict(line_load=load * spacing, building_span=width, rise=rise)
    answer = frames.tie_force(**given, height_fraction=1 / part)
    level = frames.rafter_thrust(**given)
    (push,) = carried([(level, "force")], lambda shown: shown * part / (part - 1), "force")
    return Question(
        prompt=(
            f"{_told(load, width, rise_in_12)} Rafters stand every {say(spacing, 'section length')}. Each "
            f"pair has a tie,"
            f" {word} of the rise above the eaves. How hard is one tie pulled? {any_unit('pounds (lb)')}"
        ),
        dimension="force",
        answer=answer,
        mistakes=(
            Mistake(level, "tie at the eave", "That is the pull at the eave. A raised tie has a shorter lever."),
            Mistake(
                level * (1 - 1 / part),
                "times instead of over",
                "You multiplied by what is left. Divide by it: higher pulls more.",
            ),
            Mistake(
                level * part,
                "lever below the tie",
                "Your lever is the part below the tie. Take the part above it.",
            ),
            Mistake(
                answer / (spacing / ft),
                "spacing forgotten",
                "That is one foot of roof. A pair carries its spacing.",
            ),
            Mistake(answer / 2, "halved", "You halved it. One tie holds both rafters."),
        ),
        hints=(
            "First the push at the eave. Then think of the lever up to the ridge.",
            "pull = push / (1 − ____).",
            f"pull = {push} / (1 − 1/{part}).",
        ),
        solution=(
            f"At the eave it would be {push}.\n\nThe lever to the ridge is only "
            f"{part - 1}/{part} of the rise."
            f"\n\npull = {push} / ({part - 1}/{part}) = **{say(answer, 'force')}**."
        ),
        numbers={"load": load, "width": width, "rise": rise_in_12, "spacing": spacing, "part": part},
    )


@asks("08", "steeper_push", "A steeper roof: how much does the push change?")
def _steeper_push(draw):
    before, after = draw.choice(
        ((3, 4), (3, 6), (4, 6), (4, 8), (5, 8), (6, 8), (6, 9), (6, 12), (8, 12), (9, 12), (12, 6))
    )
    push = [frames.rafter_thrust(line_load=1.0, building_span=24.0, rise=float(rise)) for rise in (before, after)]
    answer = push[1] / push[0]
    return Question(
        prompt=(
            f"A roof rises {before} in 12. Another one rises {after} in 12, over the same house, with the "
            f"same load on plan."
            f" How many times as hard does the second one push at the eaves? {times()}"
        ),
        dimension="ratio",
        answer=answer,
        mistakes=(
            Mistake(1 / answer, "upside down", "Turn it round: the steeper roof pushes less."),
            Mistake(answer**2, "squared", "You squared it. The rise counts once, as a lever."),
            Mistake(1.0, "no change", "The load is the same. But its lever is not."),
            Mistake(
                ((144 + after**2) / (144 + before**2)) ** 0.5,
                "by slope length",
                "That is how much longer the rafter is. The load was given on plan.",
            ),
        ),
        hints=(
            "The rise is the lever that the push has.",
            "times = rise before / ____.",
            f"times = {before} / {after}.",
        ),
        solution=f"push = w L² / (8 h). Only h changes.\n\n{before} / {after} = **{say(answer, 'ratio')}**.",
        numbers={"before": before, "after": after},
    )


_KINDS = ("rafter tie", "between", "collar tie")


@asks("08", "name_of_the_tie", "What does this tie count as?")
def _name_of_the_tie(draw):
    rise = draw.randrange(4, 13)
    inches = draw.randrange(0, int(12 * rise * 0.9), 2)
    # a tie within two inches of a third would ask about rounding, not about roofs
    while min(abs(inches - 4 * rise), abs(inches - 8 * rise)) < 2:
        inches += 2
    answer = roof_ties.tie_kind(height_fraction=inches / (12 * rise))
    told = {
        "rafter tie": "It holds the walls only in the lowest third.",
        "between": "Between the thirds the code counts it as neither.",
        "collar tie": "A collar tie stands in the upper third. It holds the ridge, not the walls.",
    }
    where = "at the eaves" if inches == 0 else f"{say(inches / 12 * ft, 'length')} above the eaves"
    return Question(
        prompt=(
            f"The ridge stands {say_length(rise * ft)} above the eaves. A board joins the two rafters {where}. "
            f"What does the"
            " code count it as: a rafter tie that holds the walls, a collar tie, or something between? "
            + one_word(_KINDS)
        ),
        dimension="word",
        answer=answer,
        mistakes=tuple(
            Mistake(other, f"taken as {other}", f"{told[other]} This one is {inches} in up of {12 * rise} in.")
            for other in _KINDS
            if other != answer
        ),
        hints=(
            "Divide the height by the rise.",
            f"share = {inches} in / ____.",
            f"share = {inches} / {12 * rise} = {say(inches / (12 * rise), 'number')}. Compare with 1/3 and 2/3.",
        ),
        solution=f"{inches} / {12 * rise} = {say(inches / (12 * rise), 'number')}.\n\n{told[answer]}\n\n**{answer}**.",
        numbers={"rise": rise, "inches": inches},
        tolerance=0,
        choices=_KINDS,
    )
