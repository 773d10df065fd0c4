"""The index that ``python -m structlib`` prints: every public name once, with its sentence, found by a plain word."""

import ast
import subprocess
import sys
from pathlib import Path

from structlib.__main__ import ROOMS, main

ROOT = Path(__file__).resolve().parents[1] / "structlib"


def _asked(*words):
    ended = subprocess.run([sys.executable, "-m", "structlib", *words], capture_output=True, text=True, check=True)
    return ended.stdout


def test_a_newcomer_finds_a_notch_and_a_dressed_size_by_their_words():
    assert "notch_checks  Return the code's limits on one notch." in _asked("notch")
    assert "pad_side" not in _asked("notch")
    assert "ground.sizes.dressed_size" in _asked("dressed", "size").splitlines()[1]


def test_every_public_function_and_record_with_a_docstring_is_listed_under_its_room(capsys):
    main([])
    lines = capsys.readouterr().out.splitlines()
    assert [line for line in lines if not line.startswith(" ")] == list(ROOMS)
    listed = {line.split()[0] for line in lines if line.startswith(" ")}
    for path in ROOT.rglob("*.py"):
        module = ".".join(path.relative_to(ROOT).with_suffix("").parts)
        for node in ast.parse(path.read_text(encoding="utf-8")).body:
            if (
                isinstance(node, (ast.FunctionDef, ast.ClassDef))
                and not node.name.startswith("_")
                and module != "__main__"
            ):
                assert f"{module}.{node.name}" in listed or not ast.get_docstring(node), (module, node.name)
