"""Questions of notebook 12: what can old wood do?"""

from structlib.ground.cut_sections import notched_inertia, notched_section_modulus
from structlib.ground.units import ft, inch, plf, psi
from structlib.mechanics import formulas, vibration
from structlib.pages.kit.questions.question import Mistake, Question, asks
from structlib.pages.kit.questions.wording import any_unit, say, say_length, say_size, times
from structlib.rules.choice import RULEBOOK

deflection, notched_ends, notches = (RULEBOOK.room(name) for name in ("deflection", "notched_ends", "notches"))
_NOTCH_STEPS = (inch / 16, inch / 8)


@asks("12", "strength_left_at_a_notch", "What does a notch leave?")
def _strength_left(draw):
    depth = draw.randrange(12, 41) * 0.25 * inch
    notch = draw.randrange(2, 9) * depth / 24
    notch = round(notch / inch * 8) / 8 * inch
    size = dict(width=2 * inch, depth=depth)
    answer = notched_section_modulus(notch=notch, **size) / notched_section_modulus(notch=0.0 * inch, **size)
    stiff = notched_inertia(notch=notch, **size) / notched_inertia(notch=0.0 * inch, **size)
    return Question(
        prompt=(
            f"A joist is {say_size(depth)} deep. A notch takes {say_size(notch)} off its depth. What share of its "
            f"bending"
            f" strength is left there? {times()}"
        ),
        dimension="ratio",
        answer=answer,
        mistakes=(
            Mistake(
                1 - notch / depth,
                "not squared",
                "Strength goes with the depth squared. You took the depth once.",
            ),
            Mistake(stiff, "cubed", "Cubed is the stiffness. Strength goes with the depth squared."),
            Mistake(1 - answer, "what is gone", "That is what is gone. You want what is left."),
            Mistake(
                1 - (notch / depth) ** 2,
                "notch squared",
                "Subtract the notch first, then square what is left.",
            ),
        ),
        hints=(
            "The wood left is a shallower board of the same width.",
            "share = ((d − n) / ____)².",
            f"share = ({say_size(depth - notch)} / {say_size(depth)})².",
        ),
        solution=(
            f"{say_size(depth - notch)} of {say_size(depth)} are left.\n\nStrength goes with the square: "
            f"({say_size(depth - notch)} / {say_size(depth)})² = **{say(answer, 'ratio')}** of what it was."
        ),
        numbers={"depth": depth, "notch": notch},
    )


@asks("12", "deepest_notch", "How deep may a notch be?")
def _deepest_notch(draw):
    depth = draw.randrange(16, 49) * 0.25 * inch
    at_end = draw.random() < 0.5
    sixth = depth / notches.cut_limit("notch_depth_divisor")
    quarter = depth / notches.cut_limit("end_notch_depth_divisor")
    third = depth / notches.cut_limit("notch_length_divisor")
    answer, other = (quarter, sixth) if at_end else (sixth, quarter)
    where = "at its end" if at_end else "in an outer third of its span, away from the ends"
    return Question(
        prompt=(
            f"A sawn joist is {say_size(depth)} deep. It wants a notch {where}. How deep may the notch be by "
            f"the code?"
            f" {any_unit('inches (in)', 'at most', _NOTCH_STEPS)}"
        ),
        dimension="small length",
        side="at most",
        stock=_NOTCH_STEPS,
        answer=answer,
        mistakes=(
            Mistake(
                other,
                "the other limit",
                "That is the limit away from the ends. This notch is at the end."
                if at_end
                else "That is the limit at an end. This notch is away from the ends.",
            ),
            Mistake(
                third,
                "limit for the length",
                "A third of the depth is how long a notch, or how wide a hole, may be.",
            ),
            Mistake(
                depth - answer,
                "what is left",
                "That is the depth left below the notch. The notch is the rest.",
            ),
            Mistake(depth / 2, "half", "Half of the depth is far beyond any limit."),
        ),
        hints=(
            "Two limits: one for notches at an end, one for those away from the ends.",
            "deepest = depth / ____.",
            f"deepest = {say_size(depth)} / {4 if at_end else 6}.",
        ),
        solution=(
            f"{'At an end: a quarter' if at_end else 'Away from the ends: a sixth'} of the "
            f"depth.\n\n{say_size(depth)} /"
            f" {4 if at_end else 6} = **{say(answer, 'small length')}**."
        ),
        numbers={"depth": depth, "at_end": at_end},
    )


@asks("12", "sag_after_years", "How far has it sagged after years?")
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


@asks("12", "slower_when_longer", "A longer span: how much slower does it swing?")
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


@asks("12", "push_on_a_notched_end", "How much may a notched end push?")
def _notched_end(draw):
    depth = draw.choice((7.25, 8.0, 9.25, 10.0, 11.25)) * inch
    width, value = draw.choice((1.5, 2.0)) * inch, draw.choice((135, 150, 175, 180)) * psi
    # a quarter of the least depth is 1.81 in: no end notch beyond the code's limit is asked about
    notch = draw.choice((1.0, 1.5, 1.75)) * inch
    given = dict(shear_value=value, width=width, depth=depth)
    answer = notched_ends.tension_notch_shear(remaining=depth - notch, **given)
    older = notched_ends.tension_notch_shear(remaining=depth - notch, power=1, **given)
    full = notched_ends.tension_notch_shear(remaining=depth, **given)
    return Question(
        prompt=(
            f"A joist is {say_size(width)} wide and {say_size(depth)} deep. Its end is notched {say_size(notch)} "
            f"from below. The"
            f" wood takes {say(value, 'stress')} in shear. How much may that end push on its seat?"
            f" {any_unit('pounds (lb)', 'at most')}"
        ),
        dimension="force",
        side="at most",
        answer=answer,
        mistakes=(
            Mistake(full, "notch forgotten", "That is the end without a notch."),
            Mistake(
                full * (depth - notch) / depth,
                "only the depth left",
                "You took only the depth left. A notch from below splits: the depth ratio comes in squared once more.",
            ),
            Mistake(older, "an older rule", "You took the depth ratio once. Today it is squared."),
            Mistake(1.5 * answer, "2/3 forgotten", "You forgot 2/3: shear is not even over the depth."),
            Mistake(
                full * (depth - notch) ** 4 / depth**4,
                "one power too many",
                "That is one power too many: 3 in all.",
            ),
        ),
        hints=(
            "The wood left carries 2/3 of its area times the value. Then the split takes its part.",
            "V = 2/3 × F × b × d left × (d left / ____)².",
            f"V = 2/3 × {say(value, 'stress')} × {say_size(width)} × {say_size(depth - notch)} × "
            f"({say_size(depth - notch)} /"
            f" {say_size(depth)})².",
        ),
        solution=(
            f"The depth left is {say_size(depth - notch)}. Whole, the end gives {say(full, 'force')}.\n\nThe "
            f"depth ratio to the"
            f" third power is left of it.\n\nV = 2/3 × {say(value, 'stress')} ×"
            f" {say_size(width)} × {say_size(depth - notch)} × ({say_size(depth - notch)} /"
            f" {say_size(depth)})² = **{say(answer, 'force')}**."
        ),
        numbers={"width": width, "depth": depth, "notch": notch, "value": value},
    )


@asks("12", "beam_under_the_middle", "What does a new beam under the middle get?")
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
