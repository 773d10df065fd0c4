"""The topic of when plies share."""

from structlib.pages.topics.shared_plies import derivations, exercises, myths, predictions

__all__ = ["derivations", "exercises", "myths", "predictions"]
