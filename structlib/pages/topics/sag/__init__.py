"""The topic of why a floor sags and bounces."""

from structlib.pages.topics.sag import derivations, exercises, myths, predictions

__all__ = ["derivations", "exercises", "myths", "predictions"]
