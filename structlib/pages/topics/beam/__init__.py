"""The topic of how big a beam must be."""

from structlib.pages.topics.beam import derivations, exercises, myths, predictions

__all__ = ["derivations", "exercises", "myths", "predictions"]
