"""Sheets to print: the questions for the class, the key for the teacher, from the same seeds."""

from structlib.ground.refusals import BadInput
from structlib.pages.kit.questions.question import make_question
from structlib.pages.kit.questions.wording import say

_TERMS = "Exercise numbers are invented. They teach a method and prove no building."


def answer_sheet(kind, seeds):
    """Write questions with room for answers, as Markdown."""
    questions = _questions(kind, seeds)
    parts = [f"# {questions[0].title}", "Name: ______________________  Date: ____________", _TERMS]
    for number, question in enumerate(questions, start=1):
        parts += [
            f"## {number}. Seed {question.seed}",
            question.prompt,
            "Work:\n\n\n",
            "Answer: ______________________",
        ]
    return "\n\n".join(parts) + "\n"


def answer_key(kind, seeds):
    """Write the answers, the worked ways and the known slips, as Markdown."""
    questions = _questions(kind, seeds)
    parts = [f"# Key: {questions[0].title}", _TERMS]
    for number, question in enumerate(questions, start=1):
        parts += [
            f"## {number}. Seed {question.seed}: {say(question.answer, question.dimension)}",
            question.solution,
        ]
        slips = [f"- {say(m.value, question.dimension)}: {m.name}" for m in question.mistakes]
        if slips:
            parts += ["Slips to look for:", "\n".join(slips)]
    return "\n\n".join(parts) + "\n"


def _questions(kind, seeds):
    try:
        seeds = list(seeds)
    except TypeError:
        raise BadInput(f"seeds must be a list of whole numbers, got {seeds!r}; for example [1, 2, 3]") from None
    if not seeds:
        raise BadInput("a sheet needs at least one seed; for example [1, 2, 3]")
    return [make_question(kind, seed) for seed in seeds]
