"""The topic of what a beam sits on."""

from structlib.pages.topics.seat import derivations, exercises, myths, predictions

__all__ = ["derivations", "exercises", "myths", "predictions"]
