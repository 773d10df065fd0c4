"""Questions of notebook 04: how big must the beam be?"""

from structlib.ground import sections
from structlib.ground.units import ft, inch, plf, psi
from structlib.mechanics import formulas
from structlib.pages.kit.questions.question import Mistake, Question, asks
from structlib.pages.kit.questions.wording import (
    SEAT_STEPS,
    any_unit,
    board,
    carried,
    one_word,
    say,
    say_length,
    say_line_load,
)
from structlib.rules.choice import RULEBOOK

_MADE_UP = "The values are made up for this exercise."


def _beam(draw):
    """Draw a line load and a span in half feet."""
    load = draw.randrange(100, 501, 10) * plf
    span = draw.randrange(2 * 6, 2 * 16 + 1) / 2 * ft
    return load, span


@asks("04", "end_reaction", "What does each end of the beam push down with?")
def _end_reaction(draw):
    load, span = _beam(draw)
    answer = formulas.simple_uniform_reaction(line_load=load, span=span)
    moment = formulas.simple_uniform_moment(line_load=load, span=span)
    return Question(
        prompt=(
            f"A simple beam spans {say_length(span)} and carries {say_line_load(load)} all along, its own weight"
            f" included. What does each end support carry? {any_unit('pounds (lb)')}"
        ),
        dimension="force",
        answer=answer,
        mistakes=(
            Mistake(2 * answer, "half span forgotten", "That is the whole load. Two ends share it."),
            Mistake(answer / 2, "halved twice", "You halved twice. Each of the two ends takes half."),
            Mistake(
                moment / ft,
                "moment formula",
                "You used w L² / 8. That is the moment. An end takes w L / 2.",
            ),
            Mistake(
                12 * answer,
                "span in inches (x12)",
                "You took the span in inches. The load is per foot, so take feet.",
            ),
            Mistake(
                24 * answer,
                "span in inches (x12), and half span forgotten",
                "Two slips: take the span in feet, and give each end half.",
            ),
            Mistake(
                1.25 * 2 * answer,
                "middle support",
                "That is a middle support of two spans. This beam has one span.",
            ),
        ),
        hints=(
            "Add up all the load. Two ends share it alike.",
            "R = w × ____ / ____.",
            f"R = {say_line_load(load)} × {say_length(span)} / 2.",
        ),
        solution=(
            f"All the load: {say_line_load(load)} × {say_length(span)} = {say(2 * answer, 'force')}.\n\n"
            f"Each end takes half: {say(2 * answer, 'force')} / 2 = **{say(answer, 'force')}**."
        ),
        numbers={"load": load, "span": span},
    )


@asks("04", "greatest_moment", "The greatest moment in the beam")
def _greatest_moment(draw):
    load, span = _beam(draw)
    answer = formulas.simple_uniform_moment(line_load=load, span=span)
    reaction = formulas.simple_uniform_reaction(line_load=load, span=span)
    return Question(
        prompt=(
            f"A simple beam spans {say_length(span)} and carries {say_line_load(load)} all along. "
            f"What is the greatest bending moment? {any_unit('pound-feet (lb-ft)')}"
        ),
        dimension="moment",
        answer=answer,
        mistakes=(
            Mistake(
                12 * answer,
                "pound-inches written as pound-feet (x12)",
                "The number is in pound-inches. Divide by 12, or name the unit lb-in.",
            ),
            Mistake(
                answer / 12,
                "divided by 12",
                "You divided by 12. Pounds per foot times feet times feet gives pound-feet already.",
            ),
            Mistake(
                144 * answer,
                "span in inches (x144)",
                "You took the span in inches, squared. The load is per foot, so take feet.",
            ),
            Mistake(8 * answer, "the 8 forgotten", "You stopped at w L². Divide by 8."),
            Mistake(
                formulas.simple_uniform_moment(line_load=load, span=span / 2),
                "half the span",
                "You put half the span into the formula. The 8 has taken care of that. L is the whole span.",
            ),
            Mistake(
                -formulas.cantilever_uniform_moment(line_load=load, length=span),
                "cantilever",
                "You divided by 2. That is a beam held at one end only.",
            ),
            Mistake(
                -formulas.fixed_uniform_wall_moment(line_load=load, span=span),
                "fixed ends",
                "You divided by 12. That is a beam held stiff at both ends. These ends are free to turn.",
            ),
            Mistake(
                formulas.simple_midspan_point_moment(point_load=2 * reaction, span=span),
                "all load at the middle",
                "You divided by 4. That is for one load at the middle. This one is spread.",
            ),
            Mistake(reaction * ft, "reaction", "That is w L / 2, the push of one end. The moment is w L² / 8."),
            Mistake(answer / span * ft, "span not squared", "You took the span once. It counts twice."),
        ),
        hints=(
            "The moment is greatest at the middle. It grows with the square of the span.",
            "M = w × ____² / ____.",
            f"M = {say_line_load(load)} × ({say_length(span)})² / 8.",
        ),
        solution=(
            f"M = w × L² / 8 = {say_line_load(load)} × ({say_length(span)})² / 8 = "
            f"**{say(answer, 'moment')}**.\n\n"
            "Twice the span would give four times this."
        ),
        numbers={"load": load, "span": span},
    )


@asks("04", "required_modulus", "The section modulus that is needed")
def _required_modulus(draw):
    load, span = _beam(draw)
    stress = draw.randrange(800, 1501, 50) * psi
    moment = formulas.simple_uniform_moment(line_load=load, span=span)
    # stress = moment / S, so S = moment / stress: the same function, asked the other way round
    answer = formulas.bending_stress(moment=moment, section_modulus=stress)
    (pound_feet,) = carried([(moment, "moment")], lambda shown: shown / stress, "section modulus")
    pound_inches = f"{12 * float(pound_feet.removesuffix(' lb-ft').replace(',', '')):,.10g} lb-in"
    return Question(
        prompt=(
            f"A simple beam spans {say_length(span)} and carries {say_line_load(load)} all along. Its wood may be"
            f" stressed to {say(stress, 'stress')} in bending, all factors included. {_MADE_UP} How much"
            f" section modulus is needed? {any_unit('cubic inches (in³)', 'at least')}"
        ),
        dimension="section modulus",
        side="at least",
        answer=answer,
        mistakes=(
            Mistake(
                answer / 12,
                "feet and inches mixed (x12)",
                "The moment was in pound-feet, the stress in pounds per square inch. Multiply the moment by 12.",
            ),
            Mistake(
                12 * answer,
                "times 12 twice",
                "You multiplied by 12 twice. Once turns pound-feet into pound-inches.",
            ),
            Mistake(8 * answer, "the 8 forgotten", "You took w L² for the moment. Divide by 8."),
            Mistake(
                8 * answer / 12,
                "the 8 forgotten, feet and inches mixed",
                "Two slips: divide w L² by 8, and turn pound-feet into pound-inches.",
            ),
            Mistake(answer / 4, "half the span", "You put half the span into w L² / 8. L is the whole span."),
            Mistake(4 * answer, "cantilever", "You divided w L² by 2. A beam on two supports takes 8."),
            Mistake(
                answer / 6,
                "the 6 of a rectangle",
                "You divided by 6. That 6 is inside S already. S is moment over stress.",
            ),
            Mistake(
                6 * answer,
                "width times depth squared",
                "That is width times depth squared. S is a sixth of it.",
            ),
        ),
        hints=(
            "First the moment. Then moment over stress. Keep one kind of length.",
            "M = w L² / ____. S = ____ × M / stress, with M in lb-ft and S in in³.",
            f"S = {pound_inches} / {say(stress, 'stress')}.",
        ),
        solution=(
            f"M = w × L² / 8 = {say_line_load(load)} × ({say_length(span)})² / 8 = {pound_feet}.\n\n"
            f"In pound-inches: 12 × {pound_feet.removesuffix(' lb-ft')} = {pound_inches}.\n\n"
            f"S = M / stress = {pound_inches} / {say(stress, 'stress')} ="
            f" **{say(answer, 'section modulus')}**."
        ),
        numbers={"load": load, "span": span, "stress": stress},
    )


@asks("04", "live_sag", "The sag under live load")
def _live_sag(draw):
    size, plies = board(draw.choice(("2x8", "2x10", "2x12"))), draw.choice((2, 3))
    span = draw.randrange(2 * 8, 2 * 14 + 1) / 2 * ft
    live, dead = draw.randrange(120, 321, 20) * plf, draw.randrange(50, 151, 10) * plf
    modulus = draw.randrange(12, 19) * 1e5 * psi
    inertia, named = size.plies(plies).inertia, size.as_named(plies).inertia
    lying = sections.rectangle_inertia(width=size.depth, depth=plies * size.width)

    def sag(load, of=inertia):
        stiffness = formulas.bending_stiffness(modulus=modulus, inertia=of)
        return formulas.simple_uniform_deflection(line_load=load, span=span, bending_stiffness=stiffness)

    answer, limit = sag(live), span / 360
    even, thick = carried(
        [(live / plf / 12, "number"), (inertia, "inertia")],
        lambda load, of: sag(12 * load * plf, of),
        "small length",
    )
    compared = "less" if answer < limit else "more"
    return Question(
        prompt=(
            f"A beam of {plies} dry {size.name}s spans {say_length(span)}. It carries {say_line_load(live)} live"
            f" and {say_line_load(dead)} dead. E is {modulus / psi / 1e6:.1f} million psi. {_MADE_UP} The sag"
            " under live load alone is to be compared with the span over 360. How far does the beam sag"
            f" under live load? {any_unit('inches (in)')}"
        ),
        dimension="small length",
        answer=answer,
        mistakes=(
            Mistake(
                sag(live + dead),
                "total load instead of live",
                "You took live and dead together. Here the live load alone counts.",
            ),
            Mistake(sag(dead), "dead load instead of live", "You took the dead load. The live load is asked."),
            Mistake(
                sag(live, inertia / plies),
                "one ply only",
                f"You took one ply. {plies} plies share the load.",
            ),
            Mistake(
                sag(live, named),
                "nominal size",
                "You took the size in the name. A dry board is smaller than its name.",
            ),
            Mistake(
                sag(live, lying),
                "width and depth swapped",
                "You cubed the width. On edge it is the depth that is cubed.",
            ),
            Mistake(answer / 5, "the 5 forgotten", "The formula starts with 5. You left it out."),
            Mistake(
                12 * answer,
                "load per foot with inches (x12)",
                "You took the span in inches but the load per foot. Divide the load by 12.",
            ),
            Mistake(
                answer / 12,
                "inches taken for feet",
                "You divided by 12 once too often. Count in inches throughout.",
            ),
            Mistake(
                answer / 1728,
                "the 1728 forgotten",
                "Load per foot and span in feet: multiply by 1,728 to get inches.",
            ),
            Mistake(
                formulas.simple_midspan_point_deflection(
                    point_load=live * span, span=span, bending_stiffness=modulus * inertia
                ),
                "all load at the middle",
                "You used P L³ / 48 E I. That is for one load at the middle.",
            ),
            Mistake(limit, "the limit", "That is the span over 360: what is allowed, not what happens."),
            Mistake(answer / 16, "half the span", "You took half the span. L is the whole span."),
        ),
        hints=(
            "Live load only. First the moment of inertia of all plies, then the sag.",
            "Sag = 5 w ____⁴ / (384 E ____). Everything in inches and pounds.",
            (f"w = {even} lb/in, L = {span / inch:.0f} in, E = {say(modulus, 'stress')}, I = {thick}."),
        ),
        solution=(
            f"I = {plies} × {say_length(size.width)} × ({say_length(size.depth)})³ / 12 = {thick}.\n\nLive"
            f" load:"
            f" {live / plf:.0f} / 12 = {even} lb/in. Span: {span / inch:.0f} in.\n\nSag = 5 w L⁴ / (384 E I)"
            f" = 5 × {even} lb/in × ({span / inch:.0f} in)⁴ / (384 × {say(modulus, 'stress')} × {thick})"
            f" = **{say(answer, 'small length')}**.\n\nThe span over 360 is {span / inch:.0f} in / 360 ="
            f" {say(limit, 'small length')}. The beam sags {compared} than that."
        ),
        numbers={
            "span": span,
            "live": live,
            "dead": dead,
            "modulus": modulus,
            "width": size.width,
            "depth": size.depth,
            "plies": plies,
        },
    )


@asks("04", "bearing_length", "How long must the seat be?")
def _bearing_length(draw):
    load, span = _beam(draw)
    plies = draw.choice((2, 3))
    size = board("2x10")
    crushing = draw.choice((400, 450, 500, 550, 600, 650)) * psi
    reaction = formulas.simple_uniform_reaction(line_load=load, span=span)
    width = size.plies(plies).width
    answer = RULEBOOK.room("bearing").bearing_length_needed(reaction=reaction, width=width, bearing_value=crushing)
    push = say(reaction, "force")
    (area,) = carried([(reaction / crushing, "area")], lambda shown: shown / width, "small length")
    return Question(
        prompt=(
            f"A beam of {plies} plies, each {say_length(size.width)} thick, spans {say_length(span)} and carries"
            f" {say_line_load(load)} all along. Its wood may be pressed to {say(crushing, 'stress')} across"
            f" the grain. {_MADE_UP} How long a seat does each end need?"
            f" {any_unit('inches (in)', 'at least', SEAT_STEPS)}"
        ),
        dimension="small length",
        side="at least",
        stock=SEAT_STEPS,
        answer=answer,
        mistakes=(
            Mistake(2 * answer, "half span forgotten", "You set the whole load on one end. Each end takes half."),
            Mistake(plies * answer, "one ply only", f"You took one ply. {plies} plies sit on the seat."),
            Mistake(
                2 * plies * answer,
                "one ply only, and half span forgotten",
                "Two slips: all plies sit on the seat, and each end takes half the load.",
            ),
            Mistake(
                answer * width / size.as_named(plies).width,
                "nominal size",
                "You took the thickness in the name. A dry ply is thinner.",
            ),
            Mistake(
                answer * width / inch,
                "width forgotten",
                "That is the area of the seat. Divide by the width of the beam.",
            ),
            Mistake(
                144 * answer,
                "pounds per square foot (x144)",
                "You mixed square feet and square inches. 144 stands between them.",
            ),
            Mistake(
                answer / 144,
                "pounds per square foot (x144)",
                "You divided by 144. With psi and inches there is nothing to convert.",
            ),
            Mistake(
                answer / 12,
                "answer in feet (x12)",
                "You divided by 12. With psi and inches the seat comes out in inches.",
            ),
            Mistake(
                12 * answer,
                "span in inches (x12)",
                "You took the span in inches, but the load is per foot.",
            ),
        ),
        hints=(
            "First the push of one end. Then the area it needs. Then divide by the width.",
            "Length = (w L / ____) / (width × ____).",
            (f"Push = {say(reaction, 'force')}. Width = {say_length(width)}. Pressure = {say(crushing, 'stress')}."),
        ),
        solution=(
            f"Push of one end: {say_line_load(load)} × {say_length(span)} / 2 = {push}.\n\nArea needed:"
            f" {push} / {say(crushing, 'stress')} = {area}.\n\nThe beam is {say_length(width)} wide."
            f" Length = {area} / {say_length(width)} = **{say(answer, 'small length')}**.\n\nA code also sets"
            " a least length. Look it up, and take the longer one."
        ),
        numbers={"load": load, "span": span, "plies": plies, "thickness": size.width, "crushing": crushing},
    )


_CHECKS = ("bending", "shear", "bearing", "sag")
_HOW_TO_SHARE = "Divide what is asked by what can be given. The greatest share governs."


@asks("04", "what_governs", "Which check governs?")
def _what_governs(draw):
    can_give = {
        "bending": draw.randrange(900, 1501, 50),
        "shear": draw.randrange(135, 181, 5),
        "bearing": draw.randrange(400, 651, 25),
        "sag": draw.choice((0.40, 0.45, 0.50, 0.55, 0.60)),
    }
    shares = draw.sample(range(35, 96, 6), 4)
    asked = {check: can_give[check] * share / 100 for check, share in zip(_CHECKS, shares, strict=True)}
    asked = {check: round(value, 2) if check == "sag" else round(value) for check, value in asked.items()}
    used = {check: asked[check] / can_give[check] for check in _CHECKS}
    ranked = sorted(_CHECKS, key=used.get, reverse=True)
    answer = ranked[0]
    digits = {check: ".2f" if check == "sag" else ",d" for check in _CHECKS}
    unit = {check: "in" if check == "sag" else "psi" for check in _CHECKS}
    pair = {c: (format(asked[c], digits[c]), format(can_give[c], digits[c])) for c in _CHECKS}
    listed = "; ".join(f"{c} {pair[c][0]} of {pair[c][1]} {unit[c]}" for c in _CHECKS)
    return Question(
        prompt=(
            f"Four checks of one beam, what is asked of what can be given: {listed}. {_MADE_UP} "
            f"Which check governs? {one_word(_CHECKS)}"
        ),
        dimension="word",
        answer=answer,
        tolerance=0,
        choices=_CHECKS,
        mistakes=tuple(Mistake(check, *_why_not(check, ranked, used, asked)) for check in ranked[1:]),
        hints=(
            "Numbers with different limits cannot be compared as they are. Make shares of them.",
            "Share = what is ____ / what can be ____. The greatest one governs.",
            f"Bending: {' / '.join(pair['bending'])}. Do the same for the other three.",
        ),
        solution=(
            "\n\n".join(f"{c.capitalize()}: {' / '.join(pair[c])} = {say(used[c], 'ratio')}." for c in _CHECKS)
            + f"\n\nThe greatest share governs: **{answer}**."
        ),
        numbers={
            **{f"{c} asked": asked[c] for c in _CHECKS},
            **{f"{c} given": can_give[c] for c in _CHECKS},
        },
    )


def _why_not(check, ranked, used, asked):
    uses = f"{check.capitalize()} uses {100 * used[check]:.0f} %. Another check uses more."
    if check == ranked[-1]:
        return "least share", f"{uses} You took the one with the most in hand. {_HOW_TO_SHARE}"
    if asked[check] == max(asked.values()):
        return "greatest number", f"{uses} You took the greatest number. {_HOW_TO_SHARE}"
    return "not the greatest share", f"{uses} {_HOW_TO_SHARE}"
