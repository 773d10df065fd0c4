"""Whatever a reader puts into a call that stands in a notebook: it works, or it is answered with one sentence."""

import ast
import dataclasses
import inspect
import json
import math
import warnings
from pathlib import Path

import numpy as np
import pytest

from structlib.ground.refusals import BadInput, OutsideRule
from structlib.pages.kit import show

NOTEBOOKS = Path(__file__).resolve().parents[1] / "notebooks"
#: What no argument of a call may answer with anything but a sentence, unless it takes it.
NASTY = (
    math.nan,
    math.inf,
    -1.0,
    1e-300,
    1e300,
    "",
    "12 ft",
    None,
    True,
    [],
    (1.0, 2.0),
    {},
    np.float64(2.5),
    np.int64(3),
    np.float32("nan"),
    np.array([1.0, 2.0]),
    object(),
)


def _code(path):
    cells = json.loads(path.read_text(encoding="utf-8"))["cells"]
    return "\n".join("".join(cell["source"]) for cell in cells if cell["cell_type"] == "code")


def _calls(path):
    """Every call of the library in a notebook, with its arguments worked out: (function, args, kwargs)."""
    names, found = {}, {}
    tree = ast.parse(_code(path))

    def value(node):
        return eval(compile(ast.Expression(node), path.name, "eval"), names)

    for statement in tree.body:
        if isinstance(statement, (ast.Import, ast.ImportFrom, ast.Assign)):
            exec(compile(ast.Module([statement], []), path.name, "exec"), names)
        for node in ast.walk(statement):
            if isinstance(node, ast.Call) and not isinstance(node.func, ast.Call):
                try:
                    function = value(node.func)
                    if not (getattr(function, "__module__", "") or "").startswith("structlib"):
                        continue
                    names["_given"] = lambda *args, **given: (args, given)
                    asked = ast.Call(ast.Name("_given", ast.Load()), node.args, node.keywords)
                    found[ast.unparse(node)] = (function, *value(ast.fix_missing_locations(asked)))
                except NameError:  # a name of a loop: what is called there is called with the library's own numbers
                    continue
    return found


#: What was tried in this run already: each function once for every set of arguments that a notebook gives it.
_TRIED = set()


def _fresh_calls(path):
    for text, (function, args, given) in _calls(path).items():
        kind = (function, len(args), frozenset(given))
        if inspect.signature(function).parameters and kind not in _TRIED:
            _TRIED.add(kind)
            yield text, function, args, given


def _arguments(function, args, given):
    """Every argument by name, those left to their default among them; a page's controls when it takes any."""
    parameters = inspect.signature(function).parameters
    bound = inspect.signature(function).bind(*args, **given)
    bound.apply_defaults()
    plain = {
        name: value
        for name, value in bound.arguments.items()
        if parameters[name].kind not in (inspect.Parameter.VAR_KEYWORD, inspect.Parameter.VAR_POSITIONAL)
    }
    return plain, bound


def _with(bound, name, value):
    changed = inspect.BoundArguments(bound.signature, dict(bound.arguments))
    changed.arguments[name] = value
    return changed


def _spoilt(value):
    """What may stand in the place of an argument: anything, and a record with any one of its fields spoilt."""
    yield from NASTY
    yield from _records(value)


def _records(value, deep=3):
    own_room = type(value).__module__.split(".")[1:2]
    if deep and dataclasses.is_dataclass(value) and own_room in (["ground"], ["rules"], ["house"]):
        for field in dataclasses.fields(value):
            own = getattr(value, field.name)
            inner = own[-1] if isinstance(own, tuple) and own else own
            changed = [(*own[:-1], one) if inner is not own else one for one in _records(inner, deep - 1)]
            for bad in (*NASTY[:8], *changed) if field.init else ():
                try:
                    yield dataclasses.replace(value, **{field.name: bad})
                except (BadInput, OutsideRule):
                    pass


def _answer(function, bound):
    with warnings.catch_warnings():
        warnings.simplefilter("ignore")
        answer = function(*bound.args, **bound.kwargs)
        return repr(answer)


@pytest.mark.parametrize("path", sorted(NOTEBOOKS.glob("*.ipynb")), ids=lambda path: path.stem)
def test_a_call_works_or_is_answered_with_a_sentence(path):
    raw = []
    for text, function, args, given in _fresh_calls(path):
        plain, bound = _arguments(function, args, given)
        for name, value in plain.items():
            for bad in _spoilt(value):
                try:
                    _answer(function, _with(bound, name, bad))
                except (BadInput, OutsideRule) as refusal:
                    if len(str(refusal)) < 15:
                        raw.append(f"{text} with {name}={bad!r}: {refusal}")
                except Exception as error:
                    raw.append(f"{text} with {name}={bad!r}: {type(error).__name__}: {error}")
    assert not raw, f"{len(raw)} raw errors:\n" + "\n".join(raw)


def test_a_published_number_is_never_compared_with_what_is_no_number():
    for ours in (math.nan, math.inf, -math.inf, None, "30.66", np.float32("nan"), np.array([30.66, 1.0])):
        with pytest.raises(BadInput):
            show.published("section modulus of a 4x8", ours)
    assert "ours 30.66" in show.published("section modulus of a 4x8", np.float64(30.6615))
