"""The topic of what is under a post: pads, footings, slabs, stone walls and steel posts."""

from structlib.pages.topics.under_post import derivations, exercises, myths, one_house, predictions

__all__ = ["derivations", "exercises", "myths", "one_house", "predictions"]
