"""What people say of the page of boards."""

from structlib.ground import sections
from structlib.ground.sizes import dressed_size
from structlib.pages.kit.cards import card


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
    return (
        sections.rectangle_section_modulus(**two) / sections.rectangle_section_modulus(**one),
        sections.rectangle_inertia(**two) / sections.rectangle_inertia(**one),
    )


def area_is_what_counts():
    """Answer: two 2x6 are as much wood as a 2x12, so they do the same.

    Examples
    --------
    >>> "2.09 times the strength and 4.28 times the stiffness" in area_is_what_counts()
    True
    """
    strength, stiffness = (1 / ratio for ratio in two_against_one("2x6", "2x12"))
    return card(
        "Two 2x6 side by side do what one 2x12 does; it is the same wood.",
        f"nearly the same wood, but the 2x12 has {strength:.2f} times the strength and {stiffness:.2f} times the "
        "stiffness.",
    )


def depth_always_wins():
    """Answer: a double 2x8 is nowhere near a 2x10.

    Examples
    --------
    >>> "96 % of its stiffness and 123 % of its strength" in depth_always_wins()
    True
    """
    strength, stiffness = two_against_one("2x8", "2x10")
    return card(
        "A double 2x8 is nowhere near a 2x10; depth always wins.",
        f"a double 2x8 has {100 * stiffness:.0f} % of its stiffness and {100 * strength:.0f} % of its strength. "
        "Depth wins only for the same amount of wood.",
    )


def flat_is_the_same_board():
    """Answer: the same board has the same strength, however it lies.

    Examples
    --------
    >>> "6.2 times the strength and 38 times the stiffness" in flat_is_the_same_board()
    True
    """
    board = dressed_size("2x10")
    size = dict(width=board.width, depth=board.depth)
    return card(
        "It is the same board, so it does not matter which way it lies.",
        f"a 2x10 on edge has {sections.edge_to_flat_strength(**size):.1f} times the strength and "
        f"{sections.edge_to_flat_stiffness(**size):.0f} times the stiffness of the same board lying flat.",
    )
