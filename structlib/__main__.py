"""Prints an index of the public functions and records by room, one line each: ``python -m structlib notch``."""

import ast
import sys
from pathlib import Path

ROOMS = ("ground", "mechanics", "rules", "house", "pictures", "pages")


def entries(room):
    """List what a room offers: module, name, and the first sentence of its docstring."""
    here = Path(__file__).parent
    for path in sorted((here / room).rglob("*.py")):
        module = ".".join(path.relative_to(here).with_suffix("").parts).removesuffix(".__init__")
        for node in ast.parse(path.read_text(encoding="utf-8")).body:
            told = ast.get_docstring(node) if isinstance(node, (ast.FunctionDef, ast.ClassDef)) else None
            if told and not node.name.startswith("_"):
                yield module, node.name, " ".join(told.split("\n\n")[0].split())


def main(words):
    """Print the index; with words, only the lines that hold all of them."""
    for room in ROOMS:
        found = [f"  {module}.{name}  {told}" for module, name, told in entries(room)]
        found = [line for line in found if all(word.lower() in line.lower().replace("_", " ") for word in words)]
        if found:
            print(room, *found, sep="\n")


if __name__ == "__main__":
    main(sys.argv[1:])
