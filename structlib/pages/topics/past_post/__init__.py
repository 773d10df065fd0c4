"""The topic of what happens past the post."""

from structlib.pages.topics.past_post import derivations, exercises, myths, predictions

__all__ = ["derivations", "exercises", "myths", "predictions"]
