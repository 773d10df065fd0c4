"""Exercises with fresh numbers: asked from a seed, judged with the reason, solved step by step.

Another notebook adds its own questions in a module beside these, with the decorator `asks`.
"""

from . import (  # noqa: F401 - importing them registers their questions  # noqa: F401 - the questions of notebook 06
    beam,
    depth,
    meanwhile,  # noqa: F401 - the questions of notebook 11
    old_wood,  # noqa: F401 - the questions of notebook 10
    one_house,
    past_post,  # noqa: F401 - the questions of notebook 08
    post,
    push,
    roof,  # noqa: F401 - the questions of notebook 07
    seats,  # noqa: F401 - the questions of notebook 05
    shared_plies,  # noqa: F401 - the questions of notebook 09
    wall,
)
from .judging import Verdict, judge
from .progress import Progress, Try, load_progress, save_progress
from .question import Mistake, Question, asks, kinds, make_question
from .sheets import answer_key, answer_sheet

__all__ = [
    "Mistake",
    "Progress",
    "Question",
    "Try",
    "Verdict",
    "answer_key",
    "answer_sheet",
    "asks",
    "judge",
    "kinds",
    "load_progress",
    "make_question",
    "save_progress",
]
