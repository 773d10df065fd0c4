"""Questions of notebook 09: what carries the ridge, and the snow?"""

from structlib.ground.tables import table_row
from structlib.ground.units import ft, psf
from structlib.mechanics import frames, frames_spread
from structlib.mechanics.formulas import simple_uniform_moment
from structlib.pages.kit.questions.question import Mistake, Question, asks
from structlib.pages.kit.questions.wording import any_unit, carried, say, say_length
from structlib.rules.choice import RULEBOOK

snow = RULEBOOK.room("snow")


def _roof(draw):
    """Draw a load on plan and a width; numbers in whole feet and pounds."""
    return draw.randrange(30, 71, 5) * psf, draw.randrange(16, 33, 2) * ft


@asks("09", "ridge_end_post", "What does the post under a ridge beam carry?")
def _ridge_end_post(draw):
    load, width = _roof(draw)
    span = draw.randrange(8, 17) * ft
    ends = draw.choice((1, 2))
    line = frames.ridge_beam_load(line_load=load, building_span=width)
    answer = frames.ridge_post_load(ridge_load=line, spans=ends * span)
    which = "an end post" if ends == 1 else "a middle post, where two such spans end"
    return Question(
        prompt=(
            f"A gable roof is {say_length(width)} wide and carries {say(load, 'area load')} on plan. A ridge "
            f"beam spans"
            f" {say_length(span)} from post to post. Leave its own weight out. What does {which} carry? "
            f"{any_unit('pounds (lb)')}"
        ),
        dimension="force",
        answer=answer,
        mistakes=(
            Mistake(2 * answer, "whole width", "You gave the ridge all of the width. The walls keep half."),
            Mistake(
                answer / 2,
                "a quarter of the width",
                "You gave the ridge what one wall gets. The ridge gets twice that.",
            ),
            Mistake(
                line * span * (2 if ends == 1 else 0.5),
                "ends mixed up",
                "Count the spans that end on this post.",
            ),
            Mistake(
                load * span * width / 8 * ends,
                "an eighth",
                "An eighth belongs to bending. A post gets half a span.",
            ),
            Mistake(line * 1 * ft, "one foot only", "That is the load on one foot of ridge."),
        ),
        hints=(
            "Half of the roof lands on the ridge. Half of each span lands on a post.",
            "post = w × (L / 2) × ____ / 2.",
            f"post = {say(line, 'line load')} × {say_length(ends * span)} / 2.",
        ),
        solution=(
            f"Along the ridge: {say(load, 'area load')} × {say_length(width)} / 2 = {say(line, 'line load')}.\n\n"
            f"Half of {say_length(ends * span)} ends on this post.\n\npost = "
            f"{say(line, 'line load')} × {say_length(ends * span)} / 2 = **{say(answer, 'force')}**."
        ),
        numbers={"load": load, "width": width, "span": span, "ends": ends},
    )


@asks("09", "peak_without_tie", "A stiff peak and no tie: what moment?")
def _peak_without_tie(draw):
    load, width = _roof(draw)
    spacing = draw.choice((16, 24)) / 12 * ft
    given = dict(line_load=load * spacing, building_span=width)
    answer = frames_spread.stiff_peak_moment(**given)
    (pair,) = carried([(load * spacing, "line load")], lambda shown: shown * width**2 / 8, "moment")
    return Question(
        prompt=(
            f"A gable roof is {say_length(width)} wide and carries {say(load, 'area load')} on plan. Rafters "
            f"stand every"
            f" {say(spacing, 'section length')}. There is no tie and no ridge beam. Someone wants to "
            f"stiffen the peak."
            f" What moment would it have to carry, at each pair? {any_unit('pound-feet (lb-ft)')}"
        ),
        dimension="moment",
        answer=answer,
        mistakes=(
            Mistake(
                answer / 4,
                "moment of one rafter",
                "That is a rafter with a tie. Without one, the span is the whole width.",
            ),
            Mistake(8 * answer, "the 8 forgotten", "You stopped at w L². Divide by 8."),
            Mistake(answer / 2, "shared by two", "Both rafters meet in one joint. It carries the whole moment."),
            Mistake(
                answer / (spacing / ft),
                "spacing forgotten",
                "That is one foot of roof. A pair carries its spacing.",
            ),
            Mistake(
                12 * answer,
                "pound-inches written as pound-feet (x12)",
                "The number is in pound-inches. Divide by 12, or name the unit lb-in.",
            ),
        ),
        hints=(
            "The two rafters are then one bent beam, as long as the house is wide.",
            "M = w × ____² / 8.",
            f"M = {pair} × ({say_length(width)})² / 8.",
        ),
        solution=(
            f"A pair carries {say(load, 'area load')} × {say(spacing, 'section length')} = "
            f"{pair}."
            f"\n\nM = w L² / 8 = {pair} × ({say_length(width)})² / 8 ="
            f" **{say(answer, 'moment')}**.\n\nSuch a peak is engineered. No nailed "
            f"ridge carries it."
        ),
        numbers={"load": load, "width": width, "spacing": spacing},
    )


@asks("09", "ridge_bends", "What bends a ridge beam?")
def _ridge_bends(draw):
    load, width = _roof(draw)
    span = draw.randrange(8, 17) * ft
    line = frames.ridge_beam_load(line_load=load, building_span=width)
    answer = simple_uniform_moment(line_load=line, span=span)
    return Question(
        prompt=(
            f"A gable roof is {say_length(width)} wide and carries {say(load, 'area load')} on plan. A ridge beam "
            f"spans {say_length(span)} between two posts. Leave its own weight out. What is the greatest moment in it? "
            f"{any_unit('pound-feet (lb-ft)')}"
        ),
        dimension="moment",
        answer=answer,
        mistakes=(
            Mistake(2 * answer, "whole width", "You gave the ridge all of the width. The walls keep half."),
            Mistake(answer / 2, "a quarter of the width", "You gave it what one wall gets. The ridge gets twice that."),
            Mistake(8 * answer, "the 8 forgotten", "You stopped at w s². Divide by 8."),
            Mistake(
                simple_uniform_moment(line_load=line, span=width),
                "width as the span",
                "You took the width of the house. The beam spans along the ridge, from post to post.",
            ),
            Mistake(
                12 * answer,
                "pound-inches written as pound-feet (x12)",
                "The number is in pound-inches. Divide by 12, or name the unit lb-in.",
            ),
        ),
        hints=(
            "First the load on a foot of ridge: half of the width.",
            "M = w × ____² / 8.",
            f"M = {say(line, 'line load')} × ({say_length(span)})² / 8.",
        ),
        solution=(
            f"Along the ridge: {say(load, 'area load')} × {say_length(width)} / 2 = {say(line, 'line load')}.\n\n"
            f"M = w s² / 8 = {say(line, 'line load')} × ({say_length(span)})² / 8 = **{say(answer, 'moment')}**."
        ),
        numbers={"load": load, "width": width, "span": span},
    )


_AROUND = ("partially exposed", "sheltered", "fully exposed")
_BELOW = ("cold ventilated roof", "unheated")


@asks("09", "snow_comes_up", "From the ground to a flat roof: how much snow?")
def _snow_comes_up(draw):
    amount = draw.randrange(25, 81, 5) * psf
    ground = snow.ground_snow(amount, edition=snow.EDITION, basis=snow.BASIS)
    open_air = snow.exposure_factor(roughness="B", exposure=draw.choice(_AROUND)).value
    warm = snow.thermal_factor(draw.choice(_BELOW)).value
    share = table_row("us_snow_numbers", key="flat_roof_share")["value"]
    answer = snow.flat_roof_snow(ground, exposure=open_air, thermal=warm)
    told = say(amount, "area load")
    return Question(
        prompt=(
            f"The ground snow is {told} ({snow.EDITION}). For the wind C_e = {open_air:g}, for warmth C_t = {warm:g}, "
            f"and the house is a common one, I_s = 1. How much snow does a flat roof carry, before any least load is "
            f"looked at? {any_unit('pounds per square foot (psf)')}"
        ),
        dimension="area load",
        answer=answer,
        mistakes=(
            Mistake(answer / share, f"the {share:g} forgotten", f"A roof holds less than the ground. Take {share:g}."),
            Mistake(answer / warm, "C_t forgotten", "You left out the warmth from below. A cold roof keeps more."),
            Mistake(answer / open_air, "C_e forgotten", "You left out the wind."),
            Mistake(answer / warm**2, "divided by C_t", "You divided by C_t. A colder roof carries more, so multiply."),
            Mistake(amount, "ground snow", "That is the snow on the ground."),
        ),
        hints=(
            "Three factors stand between the ground and a flat roof.",
            f"p_f = {share:g} × C_e × ____ × p_g.",
            f"p_f = {share:g} × {open_air:g} × {warm:g} × {told}.",
        ),
        solution=f"{share:g} × {open_air:g} × {warm:g} × {told} = **{say(answer, 'area load')}**.",
        numbers={"ground": amount, "exposure": open_air, "thermal": warm},
    )
