"""The topic of the way of a load through a house."""
