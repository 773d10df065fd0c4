"""Judges an answer: reads it with its unit, says how far off it is, and names the slip."""

import re
from dataclasses import dataclass

from structlib.ground.reading import read
from structlib.ground.refusals import BadInput
from structlib.pages.kit.questions.bare import COMMA, read_count, read_ratio, read_word
from structlib.pages.kit.questions.question import HAND_TOLERANCE, Mistake, is_near, is_right
from structlib.pages.kit.questions.wording import say

_GENERIC = (
    (-1, "sign slip", "The size is right, the sign is not."),
    (12, "factor 12", "It is 12 times too large. Look for feet taken as inches."),
    (1 / 12, "factor 12", "It is 12 times too small. Look for inches taken as feet."),
    (144, "factor 144", "It is 144 times too large. Look for square feet and square inches."),
    (1 / 144, "factor 144", "It is 144 times too small. Look for square inches and square feet."),
    (1728, "factor 1728", "It is 1,728 times too large. Look for cubic feet and cubic inches."),
    (1 / 1728, "factor 1728", "It is 1,728 times too small. Look for cubic inches and cubic feet."),
    (2, "factor 2", "It is just twice the answer. Look for a half that is missing."),
    (1 / 2, "factor 2", "It is just half of the answer. Look for a half too many."),
)
_GREATEST = 1e20
_POWERS_OF_TEN = tuple(10.0**power for power in range(-9, 10) if power)


@dataclass(frozen=True)
class Verdict:
    """What is said about an answer."""

    right: bool
    read_as: str
    message: str
    mistake: str = ""
    asks: bool = False


def judge(question, answer_text):
    """Judge an answer as it was typed.

    Examples
    --------
    >>> from structlib.pages.kit.questions import make_question
    >>> judge(make_question("plies_to_match", 3), "2.5 boards").asks
    True
    """
    try:
        given = _read(question, answer_text)
        read_as = say(given, question.dimension)
    except BadInput as refusal:
        return Verdict(False, "", _sentence(str(refusal)), asks=True)
    if is_right(question, given):
        return Verdict(True, read_as, _praise(question, given, read_as))
    mistake = _named(question, given) or _generic(question, given)
    parts = ["Not yet.", f"You answered {read_as}{_off(question, given)}."]
    if mistake:
        parts += [f"It looks like this slip: {mistake.name}.", mistake.message]
    elif _is_measured(question) and is_near(given, question.answer, 3 * HAND_TOLERANCE):
        parts.append("That is close, but more than rounding. Keep three figures on the way.")
    else:
        parts.append("No slip I know leads there. Open a hint, and go step by step.")
    return Verdict(False, read_as, " ".join(parts), mistake.name if mistake else "")


def _read(question, answer_text):
    if answer_text is None or not str(answer_text).strip():
        raise BadInput("nothing is written yet; write your answer, and do not be afraid to guess")
    text = str(answer_text).strip()
    if len(text) > 60:
        raise BadInput("that is too long for an answer; write one number with its unit, or one word")
    if question.dimension == "word":
        return read_word(text, question.choices)
    if question.dimension == "count":
        return read_count(text, question.prompt)
    if question.dimension == "ratio":
        return read_ratio(text, question.prompt)
    if question.dimension in ("length", "small length") and re.search(r"\d,\d", text):
        raise BadInput(COMMA.format(text))  # no length here runs into thousands
    value = read(text, question.dimension, allow_negative=True)
    if abs(value) > _GREATEST:
        raise BadInput("that number is too large to be meant; look at it again")
    return value


def _sentence(text):
    text = text[:1].upper() + text[1:]
    return text if text.endswith((".", "?")) else f"{text}."


def _is_measured(question):
    return question.tolerance > 0


def _praise(question, given, read_as):
    if not _is_measured(question):
        return f"Right: {read_as}."
    percent = 100 * abs(given / question.answer - 1)
    exact = say(question.answer, question.dimension)
    if question.side != "value":
        return f"Right: {read_as}. The limit is {question.side} {exact}, and this keeps it."
    apart = "no difference" if percent < 0.05 else f"{percent:.1f} % apart"
    return f"Right: {read_as}. The computed answer is {exact}, {apart}; within {100 * question.tolerance:.0f} % counts."


def _off(question, given):
    if isinstance(question.answer, str):
        return ""
    percent = 100 * (given - question.answer) / abs(question.answer)
    size = abs(percent)
    if size > 100_000:
        told = "more than 100,000 %"
    else:
        told = f"{size:.1f} %" if size < 10 else f"{size:,.0f} %"
    return f", {told} too {'high' if percent > 0 else 'low'}"


def _named(question, given):
    fitting = [m for m in question.mistakes if is_near(given, m.value, question.tolerance)]
    if len(fitting) > 1:
        return min(fitting, key=lambda m: abs(given / m.value - 1))
    return fitting[0] if fitting else None


def _generic(question, given):
    if not _is_measured(question):
        return None
    if question.side != "value" and is_near(given, question.answer, question.tolerance):
        how = "a least value: round up" if question.side == "at least" else "a greatest value: round down"
        return Mistake(given, "rounded past the limit", f"The limit is {how}.")
    if question.dimension == "ratio" and is_near(given, 100 * question.answer, question.tolerance):
        return Mistake(given, "per cent sign missing", "If you mean per cent, write the sign behind it.")
    for factor, name, message in _GENERIC:
        if is_near(given, factor * question.answer, question.tolerance):
            return Mistake(given, name, message)
    for power in _POWERS_OF_TEN:
        if is_near(given, power * question.answer, question.tolerance):
            return Mistake(given, "power of ten", "The figures are right, the decimal point is not. Move it.")
    return None
