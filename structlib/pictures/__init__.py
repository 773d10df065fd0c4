"""One description of a picture, two renderers: SVG for the live page, matplotlib for stills."""
