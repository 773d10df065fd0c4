"""What the text of a notebook asks the reader to type can be typed in that notebook."""

import ast
import builtins
import json
import re
from pathlib import Path

import pytest

NOTEBOOKS = sorted((Path(__file__).resolve().parents[1] / "notebooks").glob("*.ipynb"))


def _names_made(tree):
    """Names that a piece of code imports or gives a value."""
    made = set()
    for node in ast.walk(tree):
        if isinstance(node, ast.Name) and isinstance(node.ctx, ast.Store):
            made.add(node.id)
        elif isinstance(node, (ast.Import, ast.ImportFrom)):
            made |= {(one.asname or one.name).split(".")[0] for one in node.names}
    return made


def _code_in(text):
    """Calls that stand in a text: blocks of Python, and short pieces between back-quotes."""
    fenced = re.compile(r"```python\n(.*?)```", re.S)
    for code in (*fenced.findall(text), *re.findall(r"`([^`\n]+)`", fenced.sub("", text))):
        try:
            tree = ast.parse(code)
        except SyntaxError:
            continue
        if any(isinstance(node, ast.Call) for node in ast.walk(tree)):
            yield code, tree


@pytest.mark.parametrize("path", NOTEBOOKS, ids=[path.stem[:2] for path in NOTEBOOKS])
def test_every_call_in_the_text_finds_its_names(path):
    cells = json.loads(path.read_text(encoding="utf-8"))["cells"]
    sources = [(cell["cell_type"], "".join(cell["source"])) for cell in cells]
    made = set(dir(builtins))
    for kind, text in sources:
        made |= _names_made(ast.parse(text)) if kind == "code" else set()
    for kind, text in sources:
        for code, tree in _code_in(text) if kind == "markdown" else ():
            asked = {node.id for node in ast.walk(tree) if isinstance(node, ast.Name)}
            assert asked <= made | _names_made(tree), (code, asked - made)
