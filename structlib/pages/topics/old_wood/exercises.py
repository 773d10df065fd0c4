"""Questions of notebook 12: what can old wood do?"""

from structlib.ground.cut_sections import notched_inertia, notched_section_modulus
from structlib.ground.units import inch, psi
from structlib.pages.kit.questions.question import Mistake, Question, asks
from structlib.pages.kit.questions.wording import any_unit, say, say_size, times
from structlib.rules.choice import RULEBOOK

notched_ends, notches = (RULEBOOK.room(name) for name in ("notched_ends", "notches"))
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
