"""What a question is: a pure function of a kind and a seed, with the wrong answers worked out too."""

import math
import operator
import random
from dataclasses import dataclass, field, replace
from functools import lru_cache

from structlib.ground.reading import read
from structlib.ground.refusals import BadInput, check_choice
from structlib.pages.kit.questions.wording import say

HAND_TOLERANCE = 0.02
"""How far an answer worked by hand may lie from the computed one [-]."""

LARGEST_SEED = 999_999

_builders = {}
_kinds = {}


@dataclass(frozen=True)
class Mistake:
    """A wrong answer that a known slip leads to."""

    value: float | str
    name: str
    message: str


@dataclass(frozen=True)
class Question:
    """One exercise with its numbers, its answer and the wrong answers people give.

    ``stock`` [answer's unit].
    """

    prompt: str
    dimension: str
    answer: float | int | str
    mistakes: tuple
    hints: tuple
    solution: str
    numbers: dict = field(hash=False)
    tolerance: float = HAND_TOLERANCE
    side: str = "value"
    stock: tuple = ()
    choices: tuple = ()
    kind: str = ""
    notebook: str = ""
    title: str = ""
    seed: int = 0


def asks(notebook, kind, title, family=None):
    """Register a builder of questions for a notebook.

    The decorated function takes a ``random.Random`` and returns a `Question`; kind, notebook,
    title and seed are filled in afterwards.
    """

    def register(builder):
        if kind in _builders:
            raise ValueError(f"two questions are both called {kind!r}")
        _builders[kind] = (builder, notebook, title, family or kind)
        _kinds.setdefault(notebook, []).append(kind)
        return builder

    return register


def kinds(notebook=None):
    """List the kinds of question, all of them or those of one notebook.

    Examples
    --------
    >>> from structlib.pages.topics import every  # the questions of every topic
    >>> kinds("01")[0]
    'section_modulus'
    """
    if notebook is None:
        return {number: tuple(found) for number, found in sorted(_kinds.items())}
    return tuple(_kinds[check_choice("notebook", notebook, sorted(_kinds))])


def make_question(kind, seed):
    """Make the question that a kind and a seed stand for, the same one every time.

    Examples
    --------
    >>> from structlib.pages.topics import every  # the questions of every topic
    >>> make_question("section_modulus", 1) == make_question("section_modulus", 1)
    True
    """
    check_choice("kind", kind, list(_builders))
    seed = check_seed(seed)
    builder, notebook, title, family = _builders[kind]
    question = builder(random.Random(f"{family}-{seed}"))
    question = replace(question, kind=kind, notebook=notebook, title=title, seed=seed)
    return replace(question, mistakes=settle(question))


def check_seed(seed):
    """Refuse a seed that is not a whole number from 0 to 999999.

    Examples
    --------
    >>> check_seed(12)
    12
    """
    try:
        number = operator.index(seed)
    except TypeError:
        number = -1
    if isinstance(seed, bool) or not 0 <= number <= LARGEST_SEED:
        raise BadInput(f"seed must be a whole number from 0 to {LARGEST_SEED}, got {seed!r}; for example 12")
    return number


def settle(question):
    """Keep only the mistakes that can be told apart from the answer and from each other.

    A mistake near the right answer is dropped: the right answer is never turned away. Two mistakes
    that give the same number are merged, and the message then names both.
    """
    kept = []
    for mistake in question.mistakes:
        # Twice the tolerance: a rounded slip must not be taken for a rounded right answer.
        if is_near(mistake.value, question.answer, 2 * question.tolerance) or any(
            is_near(mistake.value, size, question.tolerance) for size in next_stock(question)
        ):
            continue
        twin = next((i for i, m in enumerate(kept) if is_near(mistake.value, m.value, question.tolerance)), None)
        if twin is None:
            kept.append(mistake)
        else:
            kept[twin] = _merged(kept[twin], mistake)
    return tuple(kept)


def _merged(first, second):
    return Mistake(first.value, f"{first.name}, or {second.name}", f"{first.message} Or else: {second.message}")


def is_near(value, target, tolerance):
    """Tell whether a value lies within a share of a target; words and counts must be equal.

    ``target`` [same unit as value].

    Examples
    --------
    >>> is_near(101, 100, 0.02), is_near(103, 100, 0.02), is_near("shear", "bending", 0)
    (True, False, False)
    """
    if isinstance(target, str) or tolerance == 0:
        return value == target
    return abs(value - target) <= tolerance * abs(target) * (1 + 1e-9)


def next_stock(question):
    """List the stock sizes that come next on the careful side of a limit, one for each step.

    Gives [answer's unit].

    Examples
    --------
    >>> from structlib.pages.topics import every  # the questions of every topic
    >>> [round(size / 25.4) for size in next_stock(make_question("pad_side_asked", 1))]
    [44, 44, 48]
    """
    rounds = math.ceil if question.side == "at least" else math.floor
    steps = ((step, rounds(round(question.answer / step, 9))) for step in question.stock)
    return tuple(step * count for step, count in steps if count)


@lru_cache(maxsize=64)
def _edge(answer, dimension, careful):
    """How far to the careless side a limit still counts, because its shown number is rounded."""
    number, _, unit = say(answer, dimension).partition(" ")
    shown = (number, f"{float(number.replace(',', '')):.3g}")  # three figures are asked for
    return min(careful * answer, *(careful * read(f"{text} {unit}", dimension) for text in shown))


def is_right(question, value):
    """Tell whether an answer counts: a limit is never passed by more than the rounding of the shown number.

    ``value`` [answer's unit].

    Examples
    --------
    >>> from structlib.pages.topics import every  # the questions of every topic
    >>> pad = make_question("pad_side_asked", 1)  # at least 43.82 in
    >>> [is_right(pad, inches * 25.4) for inches in (43, 43.8, 44.5, 47, 48)]
    [False, True, True, False, True]
    """
    near = is_near(value, question.answer, question.tolerance)
    if question.side == "value" or question.tolerance == 0:
        return near
    careful = 1 if question.side == "at least" else -1
    edge = _edge(question.answer, question.dimension, careful)
    kept = careful * value >= edge - 1e-9 * abs(edge)
    return (near and kept) or any(is_near(value, size, 1e-6) for size in next_stock(question))
