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
PUBLISHED = "a published case stands on it (tests/published)"
EXEMPT = {
    "Layers": PUBLISHED,
    "sheet_load": PUBLISHED,
    "slope_parts": PUBLISHED,
    "tributary_area": PUBLISHED,
    "tributary_width_wall": PUBLISHED,
    "point_load_limit": PUBLISHED,
    "table_penetration_factor": PUBLISHED,
    "nail_withdrawal": PUBLISHED,
    "JointLoad": "loads on joints: how the plane frame is held against finite elements",
    "all_of": "how tests walk over a room of every topic",
}


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


def registered(node):
    """Tell whether a private function is handed to a list by a decorator with arguments, such as a kind of question."""
    private = isinstance(node, ast.FunctionDef) and node.name.startswith("_")
    return private and any(isinstance(one, ast.Call) for one in node.decorator_list)


def first_names():
    """List the names in code that notebooks run or print, in README and DEVELOPERS, and what hands itself to a list."""
    found = set()
    for path in (ROOT / "notebooks").glob("*.ipynb"):
        for cell in json.loads(path.read_text())["cells"]:
            text = "".join(cell["source"])
            pieces = [text] if cell["cell_type"] == "code" else re.findall(r"```python\n(.*?)```", text, flags=re.S)
            found = found.union(*(names_in(ast.parse(piece)) for piece in pieces))
    found = found.union(*(re.findall(r"\w+", (ROOT / page).read_text()) for page in ("README.md", "DEVELOPERS.md")))
    return found | {node.name for tree in code().values() for node in tree.body if registered(node)}


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


def test_every_public_name_is_reached_or_is_listed_with_its_reason():
    start = first_names()
    apart = {name for module, name in public() if module in EXEMPT_MODULES}
    seen = reached(start | apart | set(EXEMPT))
    left = {(module, name) for module, name in public() if name not in seen}
    assert not left, "nothing that is shown reaches these: delete them, make them private, or show them"


def test_what_is_exempt_is_there_and_is_not_reached():
    seen, names = reached(first_names()), {name for _, name in public()}
    assert not [name for name in EXEMPT if name not in names or name in seen]
    assert not [module for module in EXEMPT_MODULES if module not in code()]
    whole = [m for m in EXEMPT_MODULES if {name for module, name in public() if module == m} <= seen]
    assert not whole, "every name of these modules is reached: they need no exemption"


NAMED_TWICE = {
    "Beam": "a beam of a house in plan, and the beam that the solver takes",
    "Layer": "a layer of a house in plan, and a layer with its source",
    "check_yes_or_no": "a house file writes true, a call writes True",
    "length_text": "the solver tells metres and feet, a rule tells feet and inches",
}
ONE_NAME = ("ground", "mechanics", "rules.us", "rules.members", "house")


def test_no_public_name_of_the_core_means_two_things():
    modules = defaultdict(list)
    for module, name in public():
        if module.startswith(tuple(f"structlib.{room}." for room in ONE_NAME)) or module == "structlib.rules.members":
            modules[name].append(module)
    assert {name: found for name, found in modules.items() if len(found) > 1}.keys() == NAMED_TWICE.keys()
