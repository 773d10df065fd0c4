"""What a derivation is: steps to hear and to see, proved at its end against the function that runs."""

import sys
from dataclasses import dataclass

from structlib.ground.refusals import BadInput, check_number
from structlib.ground.showing import show
from structlib.pages.kit.door import hold


class NotProved(ArithmeticError):
    """The derived expression and the function of the library differ."""


@dataclass(frozen=True)
class Step:
    """One step of a derivation."""

    sentence: str
    equation: object


@dataclass(frozen=True)
class Ending:
    """The last line of a derivation and the function that computes the same."""

    function: str
    equation: object
    dimension: str
    inputs: dict


@dataclass(frozen=True)
class Derivation:
    """A way from what is known to a formula of the library."""

    title: str
    steps: tuple
    endings: tuple
    proved: bool

    @property
    def ends_in(self):
        """Names of the functions it ends in [-]."""
        return tuple(dict.fromkeys(ending.function for ending in self.endings))

    def _repr_markdown_(self):
        return to_markdown(self)


class Formulas(str):
    """Text with formulas, which shows itself as the last line of a cell."""

    def _repr_markdown_(self):
        return str(self)


def prove(derived, of_library, function: str):
    """Make sure that a derived expression and the answer of a function are the same.

    ``of_library`` [same unit as derived].
    """
    import sympy

    difference = sympy.simplify(derived - of_library)
    if difference != 0:
        raise NotProved(f"the derivation and {function} differ by {difference}")
    return True


def dimension_check():
    """Check with units alone that the sag formula gives a length, and that a slip would show.

    Examples
    --------
    >>> dimension_check()[0]
    'w L^4 / (E I) leaves: inch'
    """
    from sympy.physics.units import inch, pound

    load, length, modulus, inertia = pound / inch, inch, pound / inch**2, inch**4
    tries = (
        ("w L^4 / (E I)", load * length**4 / (modulus * inertia)),
        ("w L^2 / 8", load * length**2),
        ("w L^3 / (E I), a slip", load * length**3 / (modulus * inertia)),
    )
    return [f"{name} leaves: {left if left != 1 else 'no unit at all'}" for name, left in tries]


def derivation(title: str, steps: tuple[Step, ...], *endings):
    """Prove every ending against its function and put the derivation together."""
    from sympy import Eq

    proved = []
    for function, arguments, derived, symbol, dimension, inputs in endings:
        prove(derived, function(**arguments), function.__name__)
        proved.append(Ending(name_of(function), Eq(symbol, derived), dimension, inputs))
    return Derivation(title, steps, tuple(proved), True)


def same_as(derived, function, arguments: dict):
    """Prove a derived expression and give it back in the form the function has.

    Gives [same unit as derived].
    """
    of_library = function(**arguments)
    prove(derived, of_library, function.__name__)
    return of_library


def name_of(function):
    """Name a function with the room it lives in.

    Examples
    --------
    >>> from structlib.ground import loads
    >>> name_of(loads.line_load)
    'ground.loads.line_load'
    """
    module = function.__module__
    folder = module.rpartition(".")[0]
    if getattr(sys.modules[folder], function.__name__, None) is function:
        module = folder  # a room of several files is called by its folder
    return f"{module.removeprefix('structlib.')}.{function.__name__}"


# The order in which people write the symbols of a product: w L², not L² w.
_WRITTEN_FIRST = ("R", "P", "p", "w", "M", "b", "d", "L", "a", "x", "EI")


def _latex(expression):
    """Print an expression in the order in which people write it.

    sympy sorts by name. So the symbols are given names that sort as wanted, and are printed as
    they were.
    """
    from sympy import Symbol, latex

    def place(symbol):
        letter = symbol.name.split("_")[0]
        listed = letter in _WRITTEN_FIRST
        return (_WRITTEN_FIRST.index(letter) if listed else len(_WRITTEN_FIRST), symbol.name)

    ordered = sorted(expression.atoms(Symbol), key=place)
    renamed = {old: Symbol(f"a{n:02d}", **old.assumptions0) for n, old in enumerate(ordered)}
    return latex(expression.xreplace(renamed), symbol_names={new: latex(old) for old, new in renamed.items()})


def steps_as_latex(derivation: Derivation):
    r"""Give each step as a sentence and a formula in LaTeX.

    Examples
    --------
    >>> from structlib.pages.topics.boards.derivations import section_of_a_rectangle
    >>> steps_as_latex(section_of_a_rectangle())[2][1]
    'I = \\frac{b d^{3}}{12}'
    """
    return [(step.sentence, _latex(step.equation)) for step in derivation.steps]


def to_markdown(derivation: Derivation):
    """Give the whole derivation as one Markdown text, formulas between double dollar signs."""
    lines = [f"**{derivation.title}**"]
    for number, (sentence, formula) in enumerate(steps_as_latex(derivation), start=1):
        lines += [f"{number}. {sentence}", f"$${formula}$$"]
    names = derivation.ends_in
    ends = " and ".join(f"`{name}`" for name in names)
    told = {1: "computes. It was", 2: "compute. Both were"}.get(len(names), "compute. All were")
    lines.append(f"This is what {ends} {told} compared symbol by symbol.")
    return "\n\n".join(lines)


def with_numbers(derivation: Derivation, values: dict, system: str = "us"):
    """Put the reader's numbers into the last line of a derivation."""
    known = {name: entry for ending in derivation.endings for name, entry in ending.inputs.items()}
    for name, value in values.items():
        if name not in known:
            raise BadInput(f"{name!r} does not occur in this derivation; it takes {', '.join(known)}")
        check_number(name, value, low=0, high=1e15, low_allowed=False, hint="lengths and loads are more than zero")
    given = [ending for ending in derivation.endings if set(ending.inputs) <= set(values)]
    if not given:
        needed = ", ".join(derivation.endings[0].inputs)
        raise BadInput(f"numbers are needed for {needed}; got {', '.join(values) or 'none'}")
    return Formulas("\n\n".join(_line(ending, values, system) for ending in given))


def _line(ending, values, system):
    inputs = ending.inputs.items()
    result = ending.equation.rhs.subs({symbol: values[name] for name, (symbol, _) in inputs}).doit()
    told = ", ".join(
        f"${_latex(symbol)}$ = {show(values[name], dimension, system)}" for name, (symbol, dimension) in inputs
    )
    answer = show(float(result), ending.dimension, system)
    return f"${_latex(ending.equation)}$ with {told}: ${_latex(ending.equation.lhs)}$ = **{answer}**"


hold(globals())
