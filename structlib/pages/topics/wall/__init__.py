"""The topic of what a wall carries."""

from structlib.pages.topics.wall import derivations, exercises, myths, predictions

__all__ = ["derivations", "exercises", "myths", "predictions"]
