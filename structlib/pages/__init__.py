"""What a notebook calls to show and to ask."""
