"""Every public function and record is reached from a notebook or a documented example, or is listed with its reason."""

import ast
import json
import re
from collections import defaultdict
from functools import cache
from pathlib import Path

ROOT = Path(__file__).parent.parent
DEFINED = (ast.FunctionDef, ast.ClassDef)
EXEMPT_MODULES = {
    "structlib.mechanics.batch": "many beams at once: the batch solver that a rack is measured against",
    "structlib.rules.us.span_table_bases": "the published span tables, made again",
    "structlib.rules.us.span_tables": "the published span tables, made again",
    "structlib.rules.us.header_bases": "the published header tables, made again",
    "structlib.rules.us.header_tables": "the published header tables, made again",
}
EXEMPT = {}


@cache
def code():
    """Read every module of the library as a tree, by its name."""
    return {
        ".".join(path.relative_to(ROOT).with_suffix("").parts).removesuffix(".__init__"): ast.parse(path.read_text())
        for path in sorted((ROOT / "structlib").rglob("*.py"))
    }


def names_in(node):
    """List every name that a piece of code uses; docstrings do not count."""
    found = set()
    for inner in ast.walk(node):
        if isinstance(inner, ast.Name):
            found.add(inner.id)
        elif isinstance(inner, ast.Attribute):
            found.add(inner.attr)
        elif isinstance(inner, ast.alias):
            found |= {inner.name.split(".")[-1], inner.asname or ""}
    return found


def first_names():
    """List the names that stand in code cells of notebooks, in the README and in the guide for developers."""
    found = set()
    for path in (ROOT / "notebooks").glob("*.ipynb"):
        cells = [cell for cell in json.loads(path.read_text())["cells"] if cell["cell_type"] == "code"]
        found = found.union(*(names_in(ast.parse("".join(cell["source"]))) for cell in cells))
    return found.union(*(re.findall(r"\w+", (ROOT / page).read_text()) for page in ("README.md", "DEVELOPERS.md")))


def uses():
    """Tell, for each name, which names follow from it: what its body uses, and what its module does when it is read."""
    following = defaultdict(set)
    for tree in code().values():
        bodies = [node for node in tree.body if isinstance(node, DEFINED)]
        rest = [node for node in tree.body if not isinstance(node, (*DEFINED, ast.Import, ast.ImportFrom))]
        at_once = set().union(*map(names_in, rest)) | {node.name for node in bodies if node.decorator_list}
        at_once -= {node.name for node in bodies if isinstance(node, ast.ClassDef)} - set().union(*map(names_in, rest))
        for node in bodies:
            following[node.name] |= names_in(node) | at_once
        for name in (name.id for node in rest for name in ast.walk(node) if isinstance(name, ast.Name)):
            if name not in {node.name for node in bodies}:
                following[name] |= at_once
        for alias in (alias for node in tree.body if isinstance(node, ast.ImportFrom) for alias in node.names):
            if alias.asname:
                following[alias.asname].add(alias.name)
    return following


def reached(start):
    """Walk from the names of a start to all that follow from them."""
    following, seen, left = uses(), set(), set(start)
    while left:
        name = left.pop()
        seen.add(name)
        left |= following.get(name, set()) - seen
    return seen


def public():
    """List every public function and record with its module."""
    return {
        (module, node.name)
        for module, tree in code().items()
        for node in tree.body
        if isinstance(node, DEFINED) and not node.name.startswith("_")
    }
