"""The topic of what carries the ridge, and the snow."""

from structlib.pages.topics.ridge import derivations, exercises, myths, predictions

__all__ = ["derivations", "exercises", "myths", "predictions"]
