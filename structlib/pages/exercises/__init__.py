"""Exercises with fresh numbers: asked from a seed, judged with the reason, solved step by step.

Another notebook adds its own questions in a module beside these, with the decorator `asks`.
"""

from . import depth, wall, push, beam  # noqa: F401 - importing them registers their questions
from . import seats  # noqa: F401 - the questions of notebook 05
from . import meanwhile  # noqa: F401 - the questions of notebook 11
from . import old_wood  # noqa: F401 - the questions of notebook 10
from . import past_post  # noqa: F401 - the questions of notebook 08
from . import post, one_house  # noqa: F401 - the questions of notebook 06
from . import roof  # noqa: F401 - the questions of notebook 07
from . import shared_plies  # noqa: F401 - the questions of notebook 09
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
