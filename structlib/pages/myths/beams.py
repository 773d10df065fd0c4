"""Myths of notebooks 01 to 04."""

from structlib.ground import sections
from structlib.ground.showing import show
from structlib.ground.sizes import dressed_size
from structlib.ground.units import ft, inch, psf
from structlib.house.file import demo_house
from structlib.house.influence import influence
from structlib.house.path import follow
from structlib.house.takedown import widths_on
from structlib.mechanics import formulas
from structlib.rules.choice import RULEBOOK
from structlib.rules.members import SharedBeamMember, SharedDemand, SharedPiece

from .card import card


def two_against_one(small, big):
    """Compare two small boards side by side with one big board.

    Examples
    --------
    >>> [round(ratio, 2) for ratio in two_against_one("2x8", "2x10")]
    [1.23, 0.96]
    """
    small, big = dressed_size(small), dressed_size(big)
    two = dict(width=2 * small.width, depth=small.depth)
    one = dict(width=big.width, depth=big.depth)
    return (sections.rectangle_section_modulus(**two) / sections.rectangle_section_modulus(**one),
            sections.rectangle_inertia(**two) / sections.rectangle_inertia(**one))


def area_is_what_counts():
    """Answer: two 2x6 are as much wood as a 2x12, so they do the same.

    Examples
    --------
    >>> "2.09 times the strength and 4.28 times the stiffness" in area_is_what_counts()
    True
    """
    strength, stiffness = (1 / ratio for ratio in two_against_one("2x6", "2x12"))
    return card("Two 2x6 side by side do what one 2x12 does; it is the same wood.",
                 f"nearly the same wood, but the 2x12 has {strength:.2f} times the strength and {stiffness:.2f} times the "
                 "stiffness.")


def depth_always_wins():
    """Answer: a double 2x8 is nowhere near a 2x10.

    Examples
    --------
    >>> "96 % of its stiffness and 123 % of its strength" in depth_always_wins()
    True
    """
    strength, stiffness = two_against_one("2x8", "2x10")
    return card("A double 2x8 is nowhere near a 2x10; depth always wins.",
                 f"a double 2x8 has {100 * stiffness:.0f} % of its stiffness and {100 * strength:.0f} % of its strength. "
                 "Depth wins only for the same amount of wood.")


def flat_is_the_same_board():
    """Answer: the same board has the same strength, however it lies.

    Examples
    --------
    >>> "6.2 times the strength and 38 times the stiffness" in flat_is_the_same_board()
    True
    """
    board = dressed_size("2x10")
    size = dict(width=board.width, depth=board.depth)
    return card("It is the same board, so it does not matter which way it lies.",
                 f"a 2x10 on edge has {sections.edge_to_flat_strength(**size):.1f} times the strength and "
                 f"{sections.edge_to_flat_stiffness(**size):.0f} times the stiffness of the same board lying flat.")


def only_what_is_above_it():
    """Answer: a wall only carries what stands straight above it.

    Examples
    --------
    >>> "12 ft of floor" in only_what_is_above_it()
    True
    """
    path = follow(demo_house())
    width = sum(widths_on(path.element("upper floor"), path.axis("kitchen opening").at))
    share = next(one for one in path.element("upper floor").gives if one.to == "middle wall")
    total = share.loads.sum_for_equilibrium_only()
    strip = total * (4.5 * inch) / width
    return card("A wall only carries what is straight above its own thickness.",
                 f"the wall of the demo house holds up {show(width, 'length')} of floor at one level: {show(total, 'line load')}, "
                 f"where the strip above its own thickness would be {show(strip, 'line load')}.")


def half_and_half_always():
    """Answer: a middle support always takes half of each side.

    Examples
    --------
    >>> "1.25 times" in half_and_half_always()
    True
    """
    cut, through = (influence((0.0, 12 * ft, 24 * ft), joints, 0.0, 24 * ft)[1] for joints in ("cut", "continuous"))
    return card("Half and half, always: the middle wall takes half of each span.",
                 f"when the joists run through in one piece it takes {through / cut:.2f} times that.")


def feet_for_inches():
    """Answer: the span in feet may equal the depth in inches for a double beam.

    Examples
    --------
    >>> "3 of 3 ask too much" in feet_for_inches()
    True
    """
    from structlib.ground.lumber import find_material

    wood = find_material("Spruce-Pine-Fir", "No.1/No.2")
    parts, over, combination = [], 0, RULEBOOK.combinations({"live"})[-1]
    for nominal, span in (("2x8", 8 * ft), ("2x10", 10 * ft), ("2x12", 12 * ft)):
        board = dressed_size(nominal)
        load = 50 * psf * 6 * ft
        stress = formulas.bending_stress(
            moment=formulas.simple_uniform_moment(line_load=load, span=span),
            section_modulus=sections.rectangle_section_modulus(width=2 * board.width, depth=board.depth))
        pair = SharedBeamMember((SharedPiece(f"2-{nominal}", wood, board.width, board.depth, 2),))
        [bent] = RULEBOOK.checks(pair, (SharedDemand(combination, (stress,), span, span / 2),))
        over += bent.share > 1
        parts.append(f"2-{nominal} at {span / ft:.0f} ft asks {show(stress, 'stress')} of {show(bent.given, 'stress')}")
    return card("For a double beam, the span in feet may be the depth in inches.",
                 "with 12 ft joists on one side at 50 psf, in Spruce-Pine-Fir No.2: " + "; ".join(parts)
                 + f". {over} of {len(parts)} ask too much. A rule of thumb is a guess to test.")
