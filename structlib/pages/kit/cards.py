"""How a myth is answered: what they say, and the number against it."""


def card(claim, answer):
    """Put what is said and the number against it under each other.

    Examples
    --------
    >>> print(card("Two is more than three.", "3 - 2 = 1."))
    They say: Two is more than three.
    The number: 3 - 2 = 1.
    """
    return f"They say: {claim}\nThe number: {answer}"
