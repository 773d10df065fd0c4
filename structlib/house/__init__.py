"""Members tied into one load path: the house as data, the take-down, the sizing."""
