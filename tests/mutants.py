"""Small mistakes put into the rules one at a time, to see whether a test notices.

    python tests/mutants.py --count 60 --seed 1 rules/us/columns.py rules/us/stability.py

Constants, comparisons and operators are changed in a copy of the project; a named CSV file of data/ has one
number changed. A mutant that lives is printed with its line: a test is missing, or the change means nothing."""

import argparse
import ast
import csv
import io
import os
import random
import shutil
import sys
import tempfile
from pathlib import Path

ROOT = Path(__file__).resolve().parents[1]
TESTS = (
    "tests/test_rule_edges.py tests/published/test_columns_cases.py tests/published/test_worked_cases.py "
    "tests/test_columns.py tests/test_rules_factors.py tests/test_rules_checks.py"
).split()
COMPARED = {ast.Lt: ast.LtE, ast.LtE: ast.Lt, ast.Gt: ast.GtE, ast.GtE: ast.Gt, ast.Eq: ast.NotEq}
WORKED = {ast.Add: ast.Sub, ast.Sub: ast.Add, ast.Mult: ast.Div, ast.Div: ast.Mult, ast.Pow: ast.Mult}


def places(tree):
    """Every node that can be changed, with what it becomes."""
    texts = {id(node.value) for node in ast.walk(tree) if isinstance(node, ast.Expr)}
    for node in ast.walk(tree):
        if isinstance(node, ast.Constant) and type(node.value) in (int, float) and id(node) not in texts:
            for value in {node.value * 1.1 + 0.1 * (node.value == 0), node.value * 0.9} - {node.value}:
                yield node, "value", value
        elif isinstance(node, ast.Compare) and type(node.ops[0]) in COMPARED:
            yield node, "ops", [COMPARED[type(node.ops[0])](), *node.ops[1:]]
        elif isinstance(node, ast.BinOp) and type(node.op) in WORKED:
            yield node, "op", WORKED[type(node.op)]()


def python_mutants(path, draw):
    """Source texts with one change each, in a drawn order, and a line that tells of it."""
    source = path.read_text(encoding="utf-8")
    for at in draw.sample(range(count := len(list(places(ast.parse(source))))), count):
        tree = ast.parse(source)
        node, name, new = list(places(tree))[at]
        before = ast.unparse(node)
        setattr(node, name, new)
        yield ast.unparse(tree), f"{path.name}:{node.lineno}: {before}  ->  {ast.unparse(node)}"


def data_mutants(path, draw):
    """A table with one number changed by a tenth, in a drawn order, and a line that tells of it."""
    lines = path.read_text(encoding="utf-8").splitlines()
    start = next(i for i, line in enumerate(lines) if not line.startswith("#"))
    rows = list(csv.reader(lines[start:]))
    cells = [(r, c) for r in range(1, len(rows)) for c, cell in enumerate(rows[r]) if _number(cell)]
    for r, c in draw.sample(cells, len(cells)):
        changed = [list(row) for row in rows]
        changed[r][c] = f"{float(rows[r][c]) * draw.choice((0.9, 1.1)):.10g}"
        out = io.StringIO()
        csv.writer(out, lineterminator="\n").writerows(changed)
        text = "\n".join(lines[:start]) + "\n" + out.getvalue()
        yield text, f"{path.name}: {rows[r][0]} {rows[0][c]}: {rows[r][c]}  ->  {changed[r][c]}"


def _number(cell):
    try:
        return float(cell) != 0
    except ValueError:
        return False


def noticed(project, tests):
    """Run the tests in a child that has not imported the project yet; true when one fails."""
    child = os.fork()
    if child == 0:
        os.chdir(project)
        sys.path.insert(0, str(project))
        sys.stdout = sys.stderr = open(os.devnull, "w", encoding="utf-8")
        import pytest

        left_out = ["-k", "not themselves and not symbols"]  # slow, and of formulas alone
        os._exit(pytest.main(["-xq", "-p", "no:cacheprovider", "-p", "no:xdist", *tests, *left_out]) != 0)
    return os.waitpid(child, 0)[1] != 0


def main():
    """Make the mutants, run them, print those that live."""
    words = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    words.add_argument("files", nargs="+", help="below structlib/, or a CSV file of data/")
    words.add_argument("--count", type=int, default=60)
    words.add_argument("--seed", type=int, default=1)
    words.add_argument("--tests", nargs="*", default=TESTS)
    asked = words.parse_args()
    draw = random.Random(asked.seed)
    import hypothesis  # noqa: E401, F401 - once, for all children

    with tempfile.TemporaryDirectory() as copy:
        for part in ("structlib", "data", "tests", "pyproject.toml"):
            source = ROOT / part
            (shutil.copytree if source.is_dir() else shutil.copy)(source, Path(copy) / part)
        if noticed(Path(copy), asked.tests):
            sys.exit("the tests fail without any change")
        alive = ran = 0
        for name in asked.files:
            path = Path(copy) / ("data" if name.endswith(".csv") else "structlib") / name
            text = path.read_text(encoding="utf-8")
            mutants = (data_mutants if name.endswith(".csv") else python_mutants)(path, draw)
            for changed, told in (found for found, _ in zip(mutants, range(asked.count // len(asked.files)))):
                path.write_text(changed, encoding="utf-8")
                lives = not noticed(Path(copy), asked.tests)
                ran, alive = ran + 1, alive + lives
                print("lives:" if lives else "noticed:", told, flush=True)
            path.write_text(text, encoding="utf-8")
    print(f"{ran} mutants, {alive} live")


if __name__ == "__main__":
    main()
