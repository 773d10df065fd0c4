"""What a prediction is: a question, its choices, the right one and why."""

from dataclasses import dataclass


@dataclass(frozen=True)
class Prediction:
    """A question with choices, which of them turns out right, and the reason."""

    question: str
    choices: tuple[str, ...]
    right: str
    because: str
