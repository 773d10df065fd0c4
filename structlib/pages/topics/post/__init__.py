"""The topic of posts, and what is under them."""

from structlib.pages.topics.post import derivations, exercises, myths, one_house, predictions

__all__ = ["derivations", "exercises", "myths", "one_house", "predictions"]
