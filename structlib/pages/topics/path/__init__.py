"""The topic of the way of a load through a house."""

from structlib.pages.topics.path import derivations

__all__ = ["derivations"]
