"""The topic of what old wood can do."""

from structlib.pages.topics.old_wood import derivations, exercises, myths, predictions

__all__ = ["derivations", "exercises", "myths", "predictions"]
