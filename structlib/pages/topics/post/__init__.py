"""The topic of posts."""

from structlib.pages.topics.post import derivations, exercises, myths, predictions

__all__ = ["derivations", "exercises", "myths", "predictions"]
