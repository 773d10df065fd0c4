"""The topic of what holds it meanwhile."""

from structlib.pages.topics.meanwhile import derivations, exercises, myths, predictions

__all__ = ["derivations", "exercises", "myths", "predictions"]
