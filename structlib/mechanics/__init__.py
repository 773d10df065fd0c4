"""What is true everywhere: statics and elastic bending, with no code clause in it."""
