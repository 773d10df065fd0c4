"""Rules of Canada: what the National Building Code's Part 9 asks of house floors."""
