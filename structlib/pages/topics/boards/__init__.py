"""The topic of depth against width."""

from structlib.pages.topics.boards import derivations, exercises, myths, predictions

__all__ = ["derivations", "exercises", "myths", "predictions"]
