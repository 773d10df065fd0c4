"""The topic of what keeps a roof from spreading."""

from structlib.pages.topics.roof import derivations, exercises, myths, predictions

__all__ = ["derivations", "exercises", "myths", "predictions"]
