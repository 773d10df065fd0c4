"""One folder a topic: its page, tables, exercises, derivations, predictions and myths."""
