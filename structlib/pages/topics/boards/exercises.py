"""Questions of notebook 01: why depth beats width."""

import math
from operator import attrgetter

from structlib.ground import sections
from structlib.ground.units import inch
from structlib.pages.kit.questions.question import Mistake, Question, asks
from structlib.pages.kit.questions.wording import STOCK, any_unit, board, carried, say, say_size, times, whole

_DRY = "A dry board is smaller than its name. Take the dressed size, or measure it."


def _two_sizes(draw):
    """Draw a shallow and a deep board."""
    shallow, deep = sorted(draw.sample(range(len(STOCK)), 2))
    return board(STOCK[shallow]), board(STOCK[deep])


@asks("01", "section_modulus", "Section modulus of a real board")
def _section_modulus(draw):
    size, plies = board(draw.choice(STOCK)), draw.choice((1, 1, 2, 3))
    section = size.plies(plies)
    b, d, answer = section.width, section.depth, section.section_modulus
    if plies == 1:
        wood = f"A dry {size.name} stands on edge."
    else:
        wood = f"{plies} dry {size.name}s stand on edge, side by side."
    return Question(
        prompt=(f"{wood} What is the section modulus S about the strong axis? {any_unit('cubic inches (in³)')}"),
        dimension="section modulus",
        answer=answer,
        mistakes=(
            Mistake(
                size.as_named(plies).section_modulus,
                "nominal size",
                f"You took the size in the name. {_DRY}",
            ),
            Mistake(
                sections.rectangle_section_modulus(width=d, depth=b),
                "width and depth swapped",
                "You squared the width. On edge it is the depth that is squared.",
            ),
            Mistake(
                size.plies().section_modulus,
                "one ply only",
                "That is one ply. All the plies work side by side.",
            ),
            Mistake(6 * answer, "the 6 forgotten", "You stopped at width times depth squared. Divide by 6."),
            Mistake(answer / 2, "12 instead of 6", "The 12 belongs to the moment of inertia. For S divide by 6."),
            Mistake(answer / d * inch, "depth not squared", "You took the depth once. It counts twice."),
            Mistake(section.area * inch, "area", "That is the area. S is width times depth squared, over 6."),
            Mistake(
                section.inertia / inch,
                "moment of inertia",
                "That is width times depth cubed over 12. It measures stiffness. S measures strength.",
            ),
        ),
        hints=(
            "S measures strength in bending. Width counts once. Depth counts twice.",
            "S = width × ____² / ____. Take the dressed size.",
            f"S = {say_size(b)} × ({say_size(d)})² / 6.",
        ),
        solution=(
            f"A dry {size.name} is {say_size(size.width)} wide and {say_size(d)} deep.\n\n"
            f"Plies: {plies}. Width in all: b = {plies} × {say_size(size.width)} = {say_size(b)}.\n\n"
            f"S = b × d² / 6 = {say_size(b)} × ({say_size(d)})² / 6 = **{say(answer, 'section modulus')}**."
        ),
        numbers={"width": size.width, "depth": d, "plies": plies},
    )


@asks("01", "stiffer_by_depth", "How much stiffer is the deeper board?")
def _stiffer_by_depth(draw):
    shallow, deep = _two_sizes(draw)
    r = deep.depth / shallow.depth
    answer = deep.plies().inertia / shallow.plies().inertia
    (ratio,) = carried([(r, "number")], lambda shown: shown**3, "ratio")
    return Question(
        prompt=(
            f"A dry {deep.name} and a dry {shallow.name} of the same wood stand on edge over the same span."
            f" How many times stiffer is the {deep.name}? {times()}"
        ),
        dimension="ratio",
        answer=answer,
        mistakes=(
            Mistake(
                r,
                "depth not cubed",
                "That is how many times deeper it is. Stiffness grows with the cube of depth.",
            ),
            Mistake(
                r**2,
                "strength instead of stiffness",
                "You squared the depths. That is strength. Stiffness takes depth three times.",
            ),
            Mistake(
                deep.as_named().inertia / shallow.as_named().inertia,
                "nominal size",
                f"You took the sizes in the names. {_DRY}",
            ),
            Mistake(1 / answer, "upside down", "You divided the shallow one by the deep one. Turn it round."),
            Mistake(
                answer - 1,
                "how much more",
                "That is how much is added. How many times counts the first one too.",
            ),
            Mistake(3 * r, "times 3 instead of cubed", "Cubed means r × r × r, not 3 × r."),
            Mistake(r**4, "one power too many", "You took the depth four times. Three is enough."),
        ),
        hints=(
            "The widths are equal, so they cancel. Only the depths matter.",
            "Times stiffer = (deep / shallow) to the power ____.",
            f"({say_size(deep.depth)} / {say_size(shallow.depth)})³.",
        ),
        solution=(
            f"Depth against depth: {say_size(deep.depth)} / {say_size(shallow.depth)} = {ratio}.\n\n"
            "Stiffness goes with I = b × d³ / 12. The width and the 12 cancel.\n\n"
            f"{ratio} × {ratio} × {ratio} = **{say(answer, 'ratio')}**."
        ),
        numbers={"deep": deep.depth, "shallow": shallow.depth},
    )


@asks("01", "edge_or_flat", "On edge against lying flat")
def _edge_or_flat(draw):
    size, quality = board(draw.choice(STOCK)), draw.choice(("stiffer", "stronger"))
    stiffness = sections.edge_to_flat_stiffness(width=size.width, depth=size.depth)
    strength = sections.edge_to_flat_strength(width=size.width, depth=size.depth)
    answer, other = (stiffness, strength) if quality == "stiffer" else (strength, stiffness)
    r, power = size.depth / size.width, 2 if quality == "stiffer" else 1
    (ratio,) = carried([(r, "number")], lambda shown: shown**power, "ratio")
    as_named = size.as_named().depth / size.as_named().width
    told = quality if quality == "stiffer" else "stronger in bending"
    letter = "I = b × d³ / 12" if quality == "stiffer" else "S = b × d² / 6"
    return Question(
        prompt=(f"A dry {size.name} can stand on edge or lie flat. How many times {told} is it on edge? {times()}"),
        dimension="ratio",
        answer=answer,
        mistakes=(
            Mistake(
                other,
                "strength and stiffness mixed up",
                "Turned on edge, strength grows with depth over width. Stiffness grows with its square.",
            ),
            Mistake(as_named**power, "nominal size", f"You took the size in the name. {_DRY}"),
            Mistake(
                r**3,
                "width forgotten",
                "You cubed depth over width. But the board on edge is also narrower.",
            ),
            Mistake(
                r**2,
                "width forgotten",
                "You squared depth over width. But the board on edge is also narrower.",
            ),
            Mistake(1 / answer, "upside down", "You divided flat by edge. Turn it round."),
        ),
        hints=(
            "Write it twice: once on edge, once flat. Then divide.",
            f"{letter}. On edge d is the big side. Flat, d is the ____ side.",
            f"On edge: b = {say_size(size.width)}, d = {say_size(size.depth)}. Flat: the other way round.",
        ),
        solution=(
            f"Depth over width: {say_size(size.depth)} / {say_size(size.width)} = {ratio}.\n\n"
            f"Take {letter} on edge, and again with b and d changed over.\n\n"
            + (
                f"Most of it cancels. What is left is {ratio} × {ratio} = **{say(answer, 'ratio')}**."
                if power == 2
                else f"Most of it cancels. What is left is depth over width: {say_size(size.depth)} /"
                f" {say_size(size.width)} = **{say(answer, 'ratio')}**."
            )
            + f"\n\nThat is how many times {told} it is on edge."
        ),
        numbers={"width": size.width, "depth": size.depth},
    )


# thin boards, how many, one deep board: pairs that people really compare
_PAIRS = (
    ("2x6", 2, "2x8"),
    ("2x6", 2, "2x10"),
    ("2x6", 2, "2x12"),
    ("2x8", 2, "2x10"),
    ("2x8", 2, "2x12"),
    ("2x10", 2, "2x12"),
    ("2x6", 3, "2x10"),
    ("2x8", 3, "2x12"),
    ("2x4", 2, "2x6"),
    ("2x4", 3, "2x8"),
)


@asks("01", "many_or_deep", "Several thin boards against one deep board")
def _many_or_deep(draw):
    (thin, plies, deep), quality = draw.choice(_PAIRS), draw.choice(("stiffness", "bending strength"))
    thin, deep = board(thin), board(deep)
    stiffness = thin.plies(plies).inertia / deep.plies().inertia
    strength = thin.plies(plies).section_modulus / deep.plies().section_modulus
    answer, other = (stiffness, strength) if quality == "stiffness" else (strength, stiffness)
    power, dimension = (3, "inertia") if quality == "stiffness" else (2, "section modulus")
    measure = attrgetter(dimension.replace(" ", "_"))
    one, whole_one = carried(
        [(measure(thin.plies()), dimension), (measure(deep.plies()), dimension)],
        lambda thin_one, deep_one: plies * thin_one / deep_one,
        "ratio",
    )
    return Question(
        prompt=(
            f"{plies} dry {thin.name}s stand on edge, side by side. Beside them stands one dry {deep.name}."
            f" What share of the {deep.name}'s {quality} do the {plies} boards have together? {times()}"
        ),
        dimension="ratio",
        answer=answer,
        mistakes=(
            Mistake(
                other,
                "strength and stiffness mixed up",
                "Strength goes with depth squared. Stiffness goes with depth cubed. You took the other one.",
            ),
            Mistake(
                plies * thin.depth / deep.depth,
                "area",
                "You compared the wood. Depth counts more than once.",
            ),
            Mistake(answer / plies, "one board only", f"That is one {thin.name}. There are {plies}."),
            Mistake(
                measure(thin.as_named(plies)) / measure(deep.as_named()),
                "nominal size",
                f"You took the sizes in the names. {_DRY}",
            ),
            Mistake(1 / answer, "upside down", f"You measured the {deep.name} by the others. Turn it round."),
            Mistake(
                (plies * thin.depth / deep.depth) ** power,
                "boards stacked",
                "You stacked the depths. Side by side, each board bends on its own depth. Add them up.",
            ),
        ),
        hints=(
            "Side by side, boards simply add up. They do not become one deep board.",
            f"Share = {plies} × (thin depth / deep depth) to the power ____.",
            f"{plies} × ({say_size(thin.depth)} / {say_size(deep.depth)}) to the power {power}.",
        ),
        solution=(
            f"One {thin.name} has {one}. One {deep.name} has {whole_one}.\n\n"
            f"Share: {plies} × {one} / {whole_one} = **{say(answer, 'ratio')}**.\n\n"
            f"For strength the share is {strength:.2f}. For stiffness it is {stiffness:.2f}."
            ' So "stronger" needs the question: in what?'
        ),
        numbers={"thin": thin.depth, "deep": deep.depth, "plies": plies},
    )


@asks("01", "plies_to_match", "Plies needed to match a deeper one")
def _plies_to_match(draw):
    shallow, deep = _two_sizes(draw)
    wanted = draw.choice((1, 2))
    r = deep.depth / shallow.depth
    exact = deep.plies(wanted).inertia / shallow.plies().inertia
    answer = _up(exact)
    (ratio,) = carried([(r, "number")], lambda shown: wanted * shown**3, "number")
    beam = f"one dry {deep.name}" if wanted == 1 else f"{wanted} dry {deep.name}s side by side"
    named = deep.as_named(wanted).inertia / shallow.as_named().inertia
    return Question(
        prompt=(
            f"How many dry {shallow.name}s, side by side on edge, are at least as stiff as {beam}? "
            f"Same wood, same span. {whole('boards')}"
        ),
        dimension="count",
        side="at least",
        answer=answer,
        tolerance=0,
        mistakes=(
            Mistake(
                answer - 1,
                "rounded down",
                f"{exact:.2f} boards are needed. One fewer is not enough. Round up.",
            ),
            Mistake(
                _up(wanted * r),
                "depth not cubed",
                "You compared the depths once. Stiffness takes the depth three times.",
            ),
            Mistake(
                _up(wanted * r**2),
                "strength instead of stiffness",
                "You squared the depths. That matches strength. Stiffness takes the cube.",
            ),
            Mistake(_up(named), "nominal size", f"You took the sizes in the names. {_DRY}"),
            Mistake(_up(exact / wanted), "one ply only", f"That matches one {deep.name}. There are {wanted}."),
            Mistake(
                answer + 1,
                "one too many",
                f"{exact:.2f} boards are needed. The next whole number is enough.",
            ),
        ),
        hints=(
            "Boards side by side add up. Ask how many times stiffer the deep beam is.",
            f"Boards = {wanted} × (deep depth / shallow depth)³, then round ____.",
            f"{wanted} × ({say_size(deep.depth)} / {say_size(shallow.depth)})³, rounded up.",
        ),
        solution=(
            f"Depth against depth: {say_size(deep.depth)} / {say_size(shallow.depth)} = {ratio}.\n\n"
            f"Cubed, times {wanted} for {beam}: {wanted} × {ratio}³ = {say(exact, 'number')}. Round up.\n\n"
            f"**{answer} boards**."
        ),
        numbers={"deep": deep.depth, "shallow": shallow.depth, "plies": wanted},
    )


def _up(exact):
    # The small step back keeps a whole number whole when the last bit of the arithmetic is off.
    return math.ceil(exact - 1e-9)
