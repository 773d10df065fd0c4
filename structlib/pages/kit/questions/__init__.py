"""Exercises with fresh numbers: asked from a seed, judged with the reason, solved step by step.

A topic adds its own questions in its folder, with the decorator `asks`.
"""

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
