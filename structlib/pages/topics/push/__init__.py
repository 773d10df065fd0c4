"""The topic of how a beam pushes back."""

from structlib.pages.topics.push import derivations, exercises, predictions

__all__ = ["derivations", "exercises", "predictions"]
