"""Outside rules/ nothing names a country, a code or a body that writes one, and no check is found by its English name.

What is excepted is listed with its reason, and counted: the list may only grow shorter.
"""

import ast
import json
import re
from collections import Counter
from pathlib import Path

ROOT = Path(__file__).resolve().parents[1]
PACKAGE = ROOT / "structlib"
MODULES = sorted(path for path in PACKAGE.rglob("*.py") if PACKAGE / "rules" not in path.parents)
NOTEBOOKS = sorted((ROOT / "notebooks").glob("*.ipynb"))

CODES = "NDS|IRC|IBC|IEBC|ASCE|AISC|AISI|ACI|CSA|NBCC?|Eurocode|CFR|SDPWS|PS ?20|R[35678]\\d\\d(?:\\.\\d+)*"
BODIES = "AWC|ANSI|ASTM|APA|OSHA|NFPA|ICC|ICBO|BOCA|NLGA|WWPA|WCLIB|SPIB|NIST|ISO|CEN"
COUNTRIES = "United States|U\\.S\\.|USA?|Americas?|Americans?|Canada|Canadians?|Ontario|Europe|European|British|Britain"
NAMED = re.compile(rf"\b(?:{CODES}|{BODIES}|{COUNTRIES})\b|\brules\.(?:us|ca)\b")

#: Module, words around the name, why it may stand: (none of them is a rule that a member is asked by).
EXCEPTIONS = (
    ("ground/reading.py", "US units", "a system of units"),
    ("ground/showing.py", "(US, metric)", "a system of units"),
    ("house/patch_loads.py", "US gallon", "a unit by its own name"),
    ("pages/kit/show.py", "seen in NDS Supplement Table 1B", "prints the source that a row of data names"),
)


def _short(path):
    return path.relative_to(PACKAGE).as_posix()


def names_in(text):
    """Every forbidden name in a text, in its order."""
    return [found.group() for found in NAMED.finditer(text)]


def names_of(path):
    text = path.read_text(encoding="utf-8")
    for module, words, _ in EXCEPTIONS:
        if module == _short(path):
            text = text.replace(words, "")
    return names_in(text)


def found_by_name(tree):
    """Lines on which a check is looked for by an English name: ``x.name == "..."`` or ``x.check("...")``."""
    lines = []
    for node in ast.walk(tree):
        if isinstance(node, ast.Compare):
            sides = [node.left, *node.comparators]
            named = any(isinstance(side, ast.Attribute) and side.attr == "name" for side in sides)
            lines += [node.lineno] * (named and any(_literal(side) for side in sides))
        elif (
            isinstance(node, ast.Call) and isinstance(node.func, ast.Attribute) and node.args and _literal(node.args[0])
        ):
            asks = node.func.attr == "check"
            starts = node.func.attr in ("startswith", "endswith") and (
                isinstance(node.func.value, ast.Attribute) and node.func.value.attr == "name"
            )
            lines += [node.lineno] * (asks or starts)
    return sorted(lines)


def _literal(node):
    if isinstance(node, (ast.Tuple, ast.List, ast.Set)):
        return bool(node.elts) and all(_literal(one) for one in node.elts)
    return isinstance(node, ast.Constant) and isinstance(node.value, str) and any(map(str.isalpha, node.value))


def test_the_counting_finds_what_it_should():
    assert names_in("by NDS 2018 3.7 and IRC Table R301.5, from structlib.rules.us import x") == [
        "NDS",
        "IRC",
        "R301.5",
        "rules.us",
    ]
    assert names_in("system='us', bus, MIRCE, an sdi of rusty USages, rules.usage") == []
    source = 'a.name == "x"; b.name in ("x", "y"); r.check("x"); c.name.startswith("x"); c.kind == "x"; a.name == b; check("x")'
    assert found_by_name(ast.parse(source)) == [1, 1, 1, 1]


def test_every_exception_is_still_needed():
    for module, words, reason in EXCEPTIONS:
        text = (PACKAGE / module).read_text(encoding="utf-8")
        assert text.count(words) == 1 and names_in(words) and reason, (module, words)
    assert len(EXCEPTIONS) == 4


def test_no_module_outside_the_rules_names_a_country_or_a_code():
    assert {_short(path): names for path in MODULES if (names := names_of(path))} == {}


def test_no_notebook_s_code_names_a_country_or_a_code():
    code, text = Counter(), Counter()
    for path in NOTEBOOKS:
        for cell in json.loads(path.read_text(encoding="utf-8"))["cells"]:
            (code if cell["cell_type"] == "code" else text)[path.name] += len(names_in("".join(cell["source"])))
    print(f"names of countries and codes in the text of notebooks: {text.total()}", dict(+text))
    assert not +code


def test_no_check_is_found_by_its_english_name():
    found = {_short(path): found_by_name(ast.parse(path.read_text(encoding="utf-8"))) for path in MODULES}
    assert {name: lines for name, lines in found.items() if lines} == {}
