"""United States rules: NDS 2018 allowable stress, IRC 2021 limits, ASCE 7-16 combinations."""
