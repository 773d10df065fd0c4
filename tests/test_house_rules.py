"""The rules of the house: imports, files, docstrings, tables and notebooks."""

import ast
import doctest
import re
import statistics
import subprocess
import sys
import tomllib
import warnings
from functools import cache
from pathlib import Path

import nbformat
import pytest

from structlib.ground.tables import VERIFIED_WORDS, read_table

ROOT = Path(__file__).resolve().parents[1]
PACKAGE = ROOT / "structlib"
MODULES = sorted(PACKAGE.rglob("*.py"))
NOTEBOOKS = sorted((ROOT / "notebooks").glob("*.ipynb"))


def _short(path):
    return path.relative_to(ROOT).as_posix()


def _tree(path):
    return _parsed(path.read_text(encoding="utf-8"), _short(path))


@cache  # several rules read every module; none of them changes what it reads
def _parsed(text, name):
    return ast.parse(text, filename=name)


def _fail_with(title, complaints):
    """One message that lists every complaint, each with its place."""
    assert not complaints, f"{title}:\n  " + "\n  ".join(complaints)


# ---- imports run downward only ----

FLOORS = {"ground": 0, "mechanics": 1, "rules": 2, "house": 3, "pictures": 3, "pages": 4}
WIDGET_ROOM = "structlib/pages/kit/bench.py"
SERVER_ROOM, SHOW_ROOM = "structlib/pages/server.py", "structlib/pages/kit/show.py"
FILE_ROOM = "structlib/house/file.py"
PAPER_ROOM, FILE_ROOM = "structlib/pictures/paper.py", "structlib/house/file.py"


@cache
def _imports(path):
    return tuple(_found_imports(path))


def _found_imports(path):
    """Every import of a module, those inside functions too: (full name, line, inside a function?)."""
    package = list(path.relative_to(ROOT).parts[:-1])
    inside = set()
    tree = _tree(path)
    for node in ast.walk(tree):
        if isinstance(node, (ast.FunctionDef, ast.AsyncFunctionDef, ast.Lambda)):
            inside.update(map(id, ast.walk(node)))
    for node in ast.walk(tree):
        if isinstance(node, ast.Import):
            for name in node.names:
                yield name.name, node.lineno, id(node) in inside
        elif isinstance(node, ast.ImportFrom):
            base = package[: len(package) - node.level + 1] if node.level else []
            base += node.module.split(".") if node.module else []
            for name in node.names:
                yield ".".join([*base, name.name]), node.lineno, id(node) in inside


def _room(dotted):
    parts = dotted.split(".")
    return parts[1] if len(parts) > 1 and parts[0] == "structlib" and parts[1] in FLOORS else None


def test_every_module_stands_in_a_room():
    strays = [
        _short(path)
        for path in MODULES
        if path.parent == PACKAGE
        and path.name not in ("__init__.py", "__main__.py")
        or path.parent != PACKAGE
        and path.relative_to(PACKAGE).parts[0] not in FLOORS
    ]
    _fail_with("modules outside the rooms " + ", ".join(FLOORS), strays)


def test_imports_run_downward_only():
    complaints = []
    for path in MODULES:
        own = path.relative_to(PACKAGE).parts[0]
        for name, line, _ in _imports(path):
            if name.split(".")[0] != "structlib":
                continue
            room = _room(name)
            if own not in FLOORS:
                complaints.append(f"{_short(path)}:{line} imports {name}: the package itself imports nothing")
            elif room is None:
                complaints.append(f"{_short(path)}:{line} imports {name}: name room and module instead")
            elif room != own and FLOORS[room] >= FLOORS[own]:
                complaints.append(f"{_short(path)}:{line} imports {name}: {room} does not stand below {own}")
    _fail_with("imports that do not run downward", complaints)


def test_each_library_from_outside_stays_in_its_room():
    """numpy anywhere; sympy, matplotlib, widgets and the server each in the one room that needs them."""
    complaints = []
    for path in MODULES:
        for name, line, inside in _imports(path):
            top = name.split(".")[0]
            allowed = {
                "structlib": True,
                "numpy": True,
                "sympy": inside,
                "matplotlib": _short(path) == PAPER_ROOM,
                "ipywidgets": _short(path) == WIDGET_ROOM,
                "jupyter_server": inside and _short(path) == SERVER_ROOM,
                "IPython": inside and _short(path) == SHOW_ROOM,
                "tomlkit": inside and _short(path) == FILE_ROOM,
            }.get(top, top in sys.stdlib_module_names)
            if not allowed:
                complaints.append(f"{_short(path)}:{line} imports {name}" + ("" if inside else " at its top"))
    _fail_with("imports in the wrong room", complaints)


def test_no_module_is_imported_behind_the_rules_back():
    complaints = []
    for path in MODULES:
        for node in ast.walk(_tree(path)):
            called = node.func if isinstance(node, ast.Call) else None
            word = getattr(called, "id", getattr(called, "attr", ""))
            if word in ("import_module", "__import__", "exec", "eval"):
                complaints.append(f"{_short(path)}:{node.lineno} calls {word}()")
            if isinstance(node, ast.ImportFrom) and any(name.name == "*" for name in node.names):
                complaints.append(f"{_short(path)}:{node.lineno} imports *")
    _fail_with("imports that cannot be read in the source", complaints)


def _dotted(path):
    parts = list(path.relative_to(ROOT).with_suffix("").parts)
    return ".".join(parts[:-1] if parts[-1] == "__init__" else parts)


@pytest.mark.parametrize(
    "rooms",
    [(), ("ground",), ("ground", "mechanics", "rules", "house")],
    ids=["structlib", "ground", "ground to house"],
)
def test_heavy_libraries_wait_for_the_room_that_needs_them(rooms):
    names = ["structlib"] + [_dotted(path) for path in MODULES if path.relative_to(PACKAGE).parts[0] in rooms]
    heavy = ("sympy", "matplotlib", "ipywidgets", "scipy", "IPython", "jupyter_server")
    code = (
        f"import sys\nfor name in {names!r}: __import__(name)\n"
        f"print(*sorted(name for name in {heavy!r} if name in sys.modules))"
    )
    run = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, cwd=ROOT, timeout=100)
    assert run.returncode == 0, run.stderr
    assert run.stdout.split() == [], f"loaded with {rooms or 'structlib'}: {run.stdout}"


# ---- what stands where ----

TOP_LEVEL = {"README.md", "DEVELOPERS.md", "LICENSE", "pyproject.toml", "notebooks", "structlib", "tests", "data"}


def _git_files():
    """Files of the checkout, new ones included, those that git ignores left out; None outside a checkout."""
    if not (ROOT / ".git").exists():
        return None
    try:
        command = ["git", "ls-files", "-z", "--cached", "--others", "--exclude-standard"]
        run = subprocess.run(command, cwd=ROOT, capture_output=True, timeout=60, check=True)
    except (OSError, subprocess.CalledProcessError):
        return None
    return [ROOT / name for name in run.stdout.decode().split("\0") if name and (ROOT / name).is_file()]


def _files():
    found = _git_files()
    if found is None:  # an unpacked archive, perhaps with a build or an environment in it
        left_out = {
            ".venv",
            "__pycache__",
            "build",
            "dist",
            ".git",
            ".hypothesis",
            ".pytest_cache",
            ".ipynb_checkpoints",
            "structlib.egg-info",
        }
        found = [
            path for path in ROOT.rglob("*") if path.is_file() and left_out.isdisjoint(path.relative_to(ROOT).parts)
        ]
    return found


def test_the_top_level_holds_what_it_should():
    found = {path.relative_to(ROOT).parts[0] for path in _files()}
    found = {name for name in found if not name.startswith(".")}
    assert found == TOP_LEVEL, f"too many: {sorted(found - TOP_LEVEL)}; missing: {sorted(TOP_LEVEL - found)}"


# Written so that this file does not find itself.
NOT_IN_A_FILE = {
    "a path of one machine": r"(?<![\w.])/(?:home|Users|root|tmp|work|opt|mnt)/\w|\b[A-Z]:\\\\?Users",
    "an address of a registry": r"p[y]pi\.|pythonh[o]sted|artif[a]ctory|index[-_]ur[l]"
    r"|extra[-_]ind[e]x|/simp[l]e/|registry\.np[m]",
    "an unfinished place": r"\bTO[D]O\b|\bFIX[M]E\b|\bXX[X]\b|NotImplemented[E]rror",
}


def test_no_machine_no_registry_nothing_unfinished():
    complaints = []
    for path in _files():
        try:
            text = path.read_text(encoding="utf-8")
        except UnicodeDecodeError:
            continue  # a picture
        for what, pattern in NOT_IN_A_FILE.items():
            for found in re.finditer(pattern, text):
                line = text.count("\n", 0, found.start()) + 1
                complaints.append(f"{_short(path)}:{line} holds {what}: {found.group()!r}")
    _fail_with("what no file may hold", complaints)


# ---- README ----


def _readme_commands():
    text = (ROOT / "README.md").read_text(encoding="utf-8")
    blocks = re.findall(r"```(?:bash|sh)\n(.*?)```", text, re.S)
    return [line for block in blocks for line in block.splitlines() if line.strip()]


def test_the_readme_gives_two_commands():
    opens, tests = _readme_commands()[:2]
    assert "jupyter" in opens and "install" in opens
    assert "install" in tests and "[test]" in tests and "bin/pytest" in tests
    for command in _readme_commands():
        opened = re.search(r"notebooks/\S*", command)
        assert not opened or (ROOT / opened.group()).exists(), f"what is opened does not exist: {command}"


def test_the_checks_run_the_command_of_the_readme():
    """The script that runs the checks takes the first line of README.md with bin/pytest in it."""
    text = (ROOT / "README.md").read_text(encoding="utf-8")
    first = next(line for line in text.splitlines() if "bin/pytest" in line)
    assert first == _readme_commands()[1]
    assert "bin/pytest" in (ROOT / ".ci" / "run").read_text(encoding="utf-8")


@pytest.mark.parametrize("name", ["README.md", "DEVELOPERS.md", "data/README.md"])
def test_every_link_of_a_page_leads_somewhere(name):
    path = ROOT / name
    text = path.read_text(encoding="utf-8")
    assert len(text) > 500, f"{name} is empty"
    links = [link.split("#")[0] for link in re.findall(r"\]\(([^)\s]+)\)", text)]
    gone = [link for link in links if link and "://" not in link and not (path.parent / link).exists()]
    _fail_with(f"links of {name} that lead nowhere", gone)


# ---- docstrings ----

NO_DOCSTRING_RULE = {WIDGET_ROOM, SERVER_ROOM, "structlib/__main__.py"}

#: Docstrings still to be brought in line, as "file name"; to be kept empty.
PENDING = ()

BRACKET = re.compile(r"\[[^\[\]]+\]\.?$")


def _sections(docstring):
    """Text of each underlined section of a docstring, by its title."""
    lines, found, title = docstring.splitlines(), {}, None
    for line, below in zip(lines, [*lines[1:], ""]):
        if line and not line.startswith(" ") and re.fullmatch(r"-{3,}", below.strip()):
            title = line.strip()
            found[title] = []
        elif title and not re.fullmatch(r"-{3,}", line.strip()):
            found[title].append(line)
    return found


def _entries(lines):
    """Heads of a section with the text below each."""
    entries = []
    for line in lines:
        if line.strip() and not line.startswith(" "):
            entries.append((line.strip(), []))
        elif line.strip() and entries:
            entries[-1][1].append(line.strip())
    return [(head, " ".join(text)) for head, text in entries]


def _signature(function, method):
    given = function.args
    names = [argument.arg for argument in (*given.posonlyargs, *given.args)]
    static = any(getattr(mark, "id", "") == "staticmethod" for mark in function.decorator_list)
    if method and not static:
        names = names[1:]
    names += [f"*{given.vararg.arg}"] if given.vararg else []
    names += [argument.arg for argument in given.kwonlyargs]
    return names + ([f"**{given.kwarg.arg}"] if given.kwarg else [])


def _own_nodes(function):
    """The nodes of a function without those of functions inside it."""
    waiting = list(ast.iter_child_nodes(function))
    while waiting:
        node = waiting.pop()
        yield node
        if not isinstance(node, (ast.FunctionDef, ast.AsyncFunctionDef, ast.Lambda, ast.ClassDef)):
            waiting += ast.iter_child_nodes(node)


def _gives_something(function):
    return any(
        isinstance(node, ast.Return)
        and node.value is not None
        and not (isinstance(node.value, ast.Constant) and node.value.value is None)
        or isinstance(node, (ast.Yield, ast.YieldFrom))
        for node in _own_nodes(function)
    )


def _documented_names(entries):
    return [name.strip() for head, _ in entries for name in head.split(" :")[0].split(",")]


def _check_entries(where, entries):
    for head, text in entries:
        if not text:
            yield f"{where}: {head!r} has no description"
        elif not BRACKET.search(text):
            yield f"{where}: the description of {head!r} does not end with a unit in brackets"


def _check_parameters(where, sections, names):
    entries = _entries(sections.get("Parameters", []))
    documented = _documented_names(entries)
    if documented != names:
        yield f"{where}: Parameters are {documented}, the signature has {names}"
    yield from _check_entries(where, entries)


#: Rooms where one sentence is enough, with units where a number goes in or out.
BRIEF_ROOMS = ("pages", "pictures")


def _check_brief(where, sections, brief):
    for title in ("Parameters", "Returns", "Raises") if brief else ():
        if title in sections:
            yield f"{where}: {title}: one sentence is enough here, with units where a number goes in or out"
    if "BadInput" in _documented_names(_entries(sections.get("Raises", []))):
        yield f"{where}: Raises names BadInput, which any bad argument gets; name what a caller would handle"


def _check_function(path, function, owner=""):
    where = f"{_short(path)}:{function.lineno} {owner}{function.name}"
    docstring = ast.get_docstring(function)
    if not docstring:
        yield f"{where}: no docstring"
        return
    sections = _sections(docstring)
    brief = path.relative_to(PACKAGE).parts[0] in BRIEF_ROOMS
    names = _signature(function, method=bool(owner))
    yield from _check_brief(where, sections, brief)
    if not brief:
        yield from _check_parameters(where, sections, names)
        answers = _entries(sections.get("Returns", sections.get("Yields", [])))
        marks = {getattr(mark, "id", "") for mark in function.decorator_list}
        if _gives_something(function) and not answers and not marks & {"property", "cached_property"}:
            yield f"{where}: gives something back, and has no Returns"
        yield from _check_entries(where, answers)
    examples = doctest.DocTestParser().get_examples(docstring)
    if not examples and not owner and not brief:
        yield f"{where}: no example"
    # a name, or a line about the function instead of what it answers, tests nothing
    used = re.compile(rf"\b{function.name}\b(?!\.__)")
    if examples and not any(used.search(example.source) for example in examples):
        yield f"{where}: the example does not use it"


def _fields(kind):
    named = [
        node.target.id for node in kind.body if isinstance(node, ast.AnnAssign) and isinstance(node.target, ast.Name)
    ]
    return [name for name in named if not name.startswith("_")]


PAGE_OFFERS = ("controls", "compute")


def _check_class(path, kind):
    where = f"{_short(path)}:{kind.lineno} {kind.name}"
    docstring = ast.get_docstring(kind)
    if not docstring:
        yield f"{where}: no docstring"
        return
    sections = _sections(docstring)
    brief = path.relative_to(PACKAGE).parts[0] in BRIEF_ROOMS
    yield from _check_brief(where, sections, brief)
    start = next((node for node in kind.body if getattr(node, "name", "") in ("__init__", "__new__")), None)
    if start is not None and not brief:
        yield from _check_parameters(where, sections, _signature(start, method=True))
    elif "Parameters" in sections:
        yield from _check_parameters(where, sections, _fields(kind))
    # what every page offers is described once, at the class that they share
    shared = PAGE_OFFERS if any(getattr(base, "id", "") == "Page" for base in kind.bases) else ()
    for node in kind.body:
        if isinstance(node, ast.FunctionDef) and not node.name.startswith("_") and node.name not in shared:
            yield from _check_function(path, node, f"{kind.name}.")


def docstring_complaints(path):
    """What is wrong with the docstrings of one module."""
    tree = _tree(path)
    if not ast.get_docstring(tree):
        yield f"{_short(path)}: the module has no docstring"
    for node in tree.body:
        if isinstance(node, ast.FunctionDef) and not node.name.startswith("_"):
            yield from _check_function(path, node)
        elif isinstance(node, ast.ClassDef) and not node.name.startswith("_"):
            yield from _check_class(path, node)


def _name_of(complaint):
    """Where a complaint belongs, without the line number, which moves: 'file function'."""
    file, rest = complaint.split(":", 1)
    return f"{file} {rest.split(' ')[1].rstrip(':')}"


DESCRIBED = [path for path in MODULES if _short(path) not in NO_DOCSTRING_RULE]


@pytest.mark.parametrize("path", DESCRIBED, ids=_short)
def test_docstrings_name_every_argument_with_its_unit(path):
    found = list(docstring_complaints(path))
    waiting = [complaint for complaint in found if _name_of(complaint) in PENDING]
    if waiting:
        warnings.warn("PENDING: " + "; ".join(waiting), stacklevel=1)
    _fail_with("docstrings", [complaint for complaint in found if complaint not in waiting])


def test_nothing_is_pending_that_is_done():
    open_still = {_name_of(complaint) for path in MODULES for complaint in docstring_complaints(path)}
    _fail_with("in line now, take it off PENDING", [name for name in PENDING if name not in open_still])


def test_the_docstring_rule_finds_what_it_should(tmp_path, monkeypatch):
    """The rule itself, on a module with one of each fault."""
    room = tmp_path / "structlib" / "ground"
    room.mkdir(parents=True)
    module = room / "faulty.py"
    head = 'def f(a, *, b):\n    """One line.\n\n    Parameters\n    ----------\n'
    good = "    a : float\n        A length [mm].\n    b : float\n        A load [N].\n"
    returns = "\n    Returns\n    -------\n    float\n        The product [N*mm].\n"
    end = returns + '\n    Examples\n    --------\n    >>> f(1, b=2)\n    2\n    """\n    return a * b\n'
    monkeypatch.setattr(sys.modules[__name__], "ROOT", tmp_path)
    monkeypatch.setattr(sys.modules[__name__], "PACKAGE", tmp_path / "structlib")
    start = '"""A module."""\n\n\n'
    for text, fault in (
        (head + good + end, None),
        (head + good.replace(" [mm]", "") + end, "does not end with a unit"),
        (head + good.replace("b : float", "c : float") + end, "the signature has ['a', 'b']"),
        (head + good + end.replace(" [N*mm]", ""), "does not end with a unit"),
        (head + good + end.replace(returns, ""), "has no Returns"),
        (head + good + end.replace(">>> f(1, b=2)", "f(1, b=2)"), "no example"),
        (head + good + end.replace(">>> f(1, b=2)", ">>> f.__name__"), "does not use it"),
        ("def f(a):\n    return a\n", "no docstring"),
    ):
        module.write_text(start + text, encoding="utf-8")
        found = list(docstring_complaints(module))
        assert len(found) == (fault is not None) and all(fault in one for one in found), (fault, found)


# ---- data ----


@pytest.mark.parametrize("path", sorted((ROOT / "data").rglob("*.csv")), ids=_short)
def test_every_row_of_data_has_a_source_and_says_how_it_is_known(path):
    rows = read_table(path)
    assert rows, f"{_short(path)} has no rows"
    for row in rows:
        assert row["source"].strip() and row["verified"] in VERIFIED_WORDS, dict(row)


def test_every_house_says_that_it_is_invented():
    houses = sorted((ROOT / "data").rglob("*.toml"))
    assert houses, "there is no house in data/houses"
    for path in houses:
        assert path.parent == ROOT / "data" / "houses", f"{_short(path)} does not stand in data/houses"
        house = tomllib.loads(path.read_text(encoding="utf-8"))
        assert house.get("invented") is True, f"{_short(path)} must say invented = true"


def test_the_list_of_tables_is_complete():
    text = (ROOT / "data" / "README.md").read_text(encoding="utf-8")
    _fail_with(
        "tables that data/README.md does not name",
        [path.name for path in sorted((ROOT / "data").glob("*.csv")) if path.stem not in text],
    )


# ---- notebooks ----

COMPARED = "nbval-check-output"
HEADINGS = ["The thing in the house", "Predict", "See", "Why", "Check", "Try", "On site", "Cautions"]
START_PAGE = "00"

each_notebook = pytest.mark.parametrize("path", NOTEBOOKS, ids=lambda path: path.stem)


def _notebook(path):
    return nbformat.read(path, as_version=4)


def _code(notebook):
    return [cell for cell in notebook.cells if cell.cell_type == "code"]


def _text(notebook):
    return "\n\n".join(cell.source for cell in notebook.cells if cell.cell_type == "markdown")


def _is_start_page(path):
    return path.name.startswith(START_PAGE)


def test_there_are_notebooks():
    assert NOTEBOOKS


@each_notebook
def test_notebook_is_valid_and_lean(path):
    notebook = _notebook(path)
    nbformat.validate(notebook)
    complaints, counts = [], []
    for number, cell in enumerate(notebook.cells):
        if cell.cell_type != "code":
            continue
        counts.append(cell.execution_count)
        compared = COMPARED in cell.metadata.get("tags", [])
        if compared and not cell.outputs:
            complaints.append(f"cell {number} is compared, and has no output to compare with")
        if not compared and cell.outputs:
            complaints.append(f"cell {number} keeps an output that nothing compares")
        if any(output.output_type == "error" for output in cell.outputs):
            complaints.append(f"cell {number} keeps an error")
        if "execution" in cell.metadata:
            complaints.append(f"cell {number} keeps its run times")
    if counts != list(range(1, len(counts) + 1)):
        complaints.append(f"the cells were not run from top to bottom: {counts}")
    if "widgets" in notebook.metadata:
        complaints.append("the state of the widgets is kept")
    _fail_with(f"{path.name}; python tests/refresh_notebooks.py mends most of it", complaints)


@each_notebook
def test_notebook_asks_a_question_and_follows_the_order(path):
    notebook = _notebook(path)
    first = notebook.cells[0]
    title = first.source.splitlines()[0]
    assert first.cell_type == "markdown", "the first cell is the title"
    assert re.match(rf"# {path.name[:2]} · ", title), f"the title is {title!r}"
    if _is_start_page(path):
        return
    assert title.endswith("?"), f"the title asks nothing: {title!r}"
    headings = re.findall(r"^## (.+?)\s*$", _text(notebook), re.M)
    found = [heading for heading in headings if heading in HEADINGS]
    assert found == HEADINGS, f"headings in their order are {found}; all: {headings}"


@each_notebook
def test_notebook_code_is_short(path):
    cells = _code(_notebook(path))
    lengths = [sum(bool(line.strip()) for line in cell.source.splitlines()) for cell in cells]
    assert statistics.median(lengths) <= 4 and max(lengths) <= 20, lengths


@each_notebook
def test_notebook_has_a_bench_and_a_derivation(path):
    code = "\n".join(cell.source for cell in _code(_notebook(path)))
    assert "Bench(" in code, "no bench"
    assert re.search(r"\bderivations\.\w+\(", code), "no derivation"
    if not _is_start_page(path):
        assert "Predict(" in code, "no question to commit to"
        assert re.search(rf'Practice\("{path.name[:2]}"', code), "no practice"
    for node in ast.walk(ast.parse(code)):
        assert not isinstance(node, (ast.FunctionDef, ast.ClassDef)), "notebooks define nothing"


@each_notebook
def test_notebook_says_that_it_replaces_nobody(path):
    text = " ".join(_text(_notebook(path)).split())
    assert re.search(r"does not replace (?:a|the) licensed engineer", text)


# A word that judges a structure, and the phrases with it that judge none.
VERDICT = re.compile(r"\b(?:un)?safe(?:ly|r|st)?\b|\bapprov(?:ed|es|al)\b|\bguarante\w+", re.I)
NO_VERDICT = ("safety",)


def _verdicts(text):
    for found in VERDICT.finditer(text):
        around = text[max(0, found.start() - 40) : found.end() + 40].replace("\n", " ")
        if not any(phrase in around for phrase in NO_VERDICT):
            yield around


@each_notebook
def test_notebook_passes_no_verdict(path):
    notebook = _notebook(path)
    outputs = [output for cell in _code(notebook) for output in cell.outputs]
    shown = "\n".join(output.get("text", "") or str(output.get("data", "")) for output in outputs)
    _fail_with("words that pass a verdict", list(_verdicts(_text(notebook) + "\n" + shown)))


def test_the_library_passes_no_verdict():
    """No text that a page could show calls a structure one thing or the other."""
    complaints = []
    for path in MODULES:
        for node in ast.walk(_tree(path)):
            if isinstance(node, ast.Constant) and isinstance(node.value, str):
                place = f"{_short(path)}:{node.lineno}"
                complaints += [f"{place} ...{around}..." for around in _verdicts(node.value)]
    _fail_with("words that pass a verdict", complaints)


def _page_classes_of(path):
    """The page classes that a notebook imports, with the module of each."""
    for cell in _code(_notebook(path)):
        for node in ast.walk(ast.parse(cell.source)):
            if isinstance(node, ast.ImportFrom) and (node.module or "").startswith("structlib.pages"):
                yield from ((node.module, name.name) for name in node.names if name.name.endswith("Page"))


@each_notebook
def test_the_three_sliders_come_first_on_every_bench(path):
    from importlib import import_module

    from structlib.pages.kit.controls import Slide, Steps

    pages = list(_page_classes_of(path))
    assert pages or _is_start_page(path), "a bench needs a page"
    for module, name in pages:
        first = getattr(import_module(module), name)().controls({})[:3]
        assert [control.name for control in first] == ["span", "depth", "plies"], name
        assert all(isinstance(control, (Slide, Steps)) for control in first), name


def test_every_bench_stands_in_a_notebook():
    used = {name for path in NOTEBOOKS for _, name in _page_classes_of(path)}
    classes = [
        node for path in PACKAGE.glob("pages/*_page.py") for node in _tree(path).body if isinstance(node, ast.ClassDef)
    ]
    pages = {kind.name for kind in classes if any(getattr(item, "name", "") == "controls" for item in kind.body)}
    assert pages <= used, f"no notebook shows {sorted(pages - used)}"


# ---- lint and format ----


@pytest.mark.parametrize("what", [("check", "."), ("format", "--check", ".")], ids=lambda what: what[0])
def test_ruff_has_nothing_to_say(what):
    ended = subprocess.run([sys.executable, "-m", "ruff", *what], cwd=ROOT, capture_output=True, text=True, check=False)
    assert ended.returncode == 0, ended.stdout + ended.stderr
