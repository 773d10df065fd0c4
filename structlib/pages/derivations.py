"""Derivations a step at a time, each ending in the very function that runs.

A derivation is a list of steps: one sentence to hear, one equation to see. At its end the derived
expression is compared with what the library's own function answers to the same symbols. If the two
differ, there is no derivation, only an error.
"""

from dataclasses import dataclass

from structlib.ground import loads, sections
from structlib.ground.refusals import BadInput, check_number
from structlib.ground.showing import show
from structlib.mechanics import formulas


class NotProved(ArithmeticError):
    """The derived expression and the function of the library differ."""


@dataclass(frozen=True)
class Step:
    """One step of a derivation.

    Parameters
    ----------
    sentence : str
        What happens, in words [-].
    equation : sympy.Expr
        The same in symbols [-].
    """

    sentence: str
    equation: object


@dataclass(frozen=True)
class Ending:
    """The last line of a derivation and the function that computes the same.

    Parameters
    ----------
    function : str
        Name of the function, from the room it lives in [-].
    equation : sympy.Eq
        Symbol on the left, derived expression on the right [-].
    dimension : str
        What the result is [-].
    inputs : dict
        Input name to its symbol and its dimension [-].
    """

    function: str
    equation: object
    dimension: str
    inputs: dict


@dataclass(frozen=True)
class Derivation:
    """A way from what is known to a formula of the library.

    Parameters
    ----------
    title : str
        The question answered [-].
    steps : tuple of Step
        The way, in order [-].
    endings : tuple of Ending
        Where it arrives [-].
    proved : bool
        Always True: an ending that differs from its function raises `NotProved` [-].
    """

    title: str
    steps: tuple
    endings: tuple
    proved: bool

    @property
    def ends_in(self):
        """Names of the functions it ends in [-]."""
        return tuple(dict.fromkeys(ending.function for ending in self.endings))


def prove(derived, of_library, function):
    """Make sure that a derived expression and the answer of a function are the same.

    Parameters
    ----------
    derived : sympy.Expr
        What the derivation found [any].
    of_library : sympy.Expr
        What the function answers to the same symbols [same unit as derived].
    function : str
        Name of the function, for the message [-].

    Returns
    -------
    bool
        True [-].

    Raises
    ------
    NotProved
        When the two differ.
    """
    import sympy

    difference = sympy.simplify(derived - of_library)
    if difference != 0:
        raise NotProved(f"the derivation and {function} differ by {difference}")
    return True


def section_of_a_rectangle():
    """Derive moment of inertia and section modulus of a rectangle from thin layers.

    Returns
    -------
    Derivation
        It ends in ``rectangle_inertia`` and ``rectangle_section_modulus`` [-].

    Examples
    --------
    >>> section_of_a_rectangle().proved
    True
    """
    from sympy import Eq, Integral, Symbol, integrate, symbols

    b, d, y = symbols("b d y", positive=True)
    inertia, modulus, twice = Symbol("I"), Symbol("S"), Symbol(r"\frac{I_{2d}}{I_d}")
    derived_inertia = integrate(b * y**2, (y, -d / 2, d / 2))
    derived_modulus = derived_inertia / (d / 2)
    steps = (
        Step(
            "Cut the board into thin layers. A layer at height y has the area b times dy.",
            Eq(Symbol("dA"), b * Symbol("dy")),
        ),
        Step(
            "A layer far from the middle resists bending more. It counts with the square of its height.",
            Eq(inertia, Integral(b * y**2, (y, -d / 2, d / 2))),
        ),
        Step("Add up all the layers, from the bottom edge to the top edge.", Eq(inertia, derived_inertia)),
        Step(
            "Twice the depth, same width: eight times as stiff.",
            Eq(twice, derived_inertia.subs(d, 2 * d) / derived_inertia),
        ),
        Step(
            "The outer edge is stressed most. It lies half the depth from the middle. Divide by that"
            " distance.",
            Eq(modulus, derived_modulus),
        ),
    )
    found = {"width": b, "depth": d}
    inputs = {"width": (b, "section length"), "depth": (d, "section length")}
    return _derivation(
        "Why does depth count more than width?",
        steps,
        (sections.rectangle_inertia, found, derived_inertia, inertia, "inertia", inputs),
        (sections.rectangle_section_modulus, found, derived_modulus, modulus, "section modulus", inputs),
    )


def tributary_line_load():
    """Derive the load on a foot of wall from the balance of one joist.

    Returns
    -------
    Derivation
        It ends in ``simple_uniform_reaction`` and ``tributary_width_cut`` [-].
    """
    from sympy import Eq, solve, symbols

    p, s, L = symbols("p s L", positive=True)
    on_joist, push, on_wall, width = symbols(r"w R w_{\text{wall}} B", positive=True)
    found_push = solve(Eq(push * L, on_joist * L * L / 2), push)[0]
    found_wall = found_push.subs(on_joist, p * s) / s
    steps = (
        Step(
            "One joist carries a strip of floor. The strip is as wide as the joist spacing.",
            Eq(on_joist, p * s),
        ),
        Step(
            "Take the turning about one end. The whole load acts at the middle of the span. The far wall"
            " pushes back.",
            Eq(push * L, on_joist * L * (L / 2), evaluate=False),
        ),
        Step("So each end carries half.", Eq(push, found_push)),
        Step(
            "The wall gets one such push every joist spacing. Divide by the spacing.", Eq(on_wall, push / s)
        ),
        Step(
            "The spacing cancels. The wall carries the area load times half the span.",
            Eq(on_wall, found_wall),
        ),
        Step("So the wall carries a strip of floor, half a span wide.", Eq(width, found_wall / p)),
    )
    return _derivation(
        "Why does a wall carry half the span?",
        steps,
        (
            formulas.simple_uniform_reaction,
            {"line_load": p, "span": L},
            found_wall,
            on_wall,
            "line load",
            {"area_load": (p, "area load"), "span": (L, "length")},
        ),
        (
            loads.tributary_width_cut,
            {"left_span": L},
            found_wall / p,
            width,
            "length",
            {"span": (L, "length")},
        ),
    )


def simple_beam():
    """Derive shear, moment, slope and deflection of a simple span by adding up, four times.

    Returns
    -------
    Derivation
        It ends in ``simple_uniform_moment`` and ``simple_uniform_deflection`` [-].
    """
    from sympy import Eq, Function, Symbol, expand, integrate, solve, symbols

    w, L, EI, x = symbols("w L EI x", positive=True)
    push, tilt, start = symbols("R theta_0 y_0")
    V, M, theta, y = (Function(name)(x) for name in ("V", "M", "theta", "y"))

    shear = push - w * x
    moment = integrate(shear, x)
    found_push = solve(Eq(moment.subs(x, L), 0), push)[0]
    shear, moment = shear.subs(push, found_push), expand(moment.subs(push, found_push))
    top = solve(Eq(shear, 0), x)[0]
    greatest_moment = moment.subs(x, top)
    slope = integrate(-moment / EI, x) + tilt
    sag = integrate(slope, x) + start
    constants = solve([sag.subs(x, 0), sag.subs(x, L)], [tilt, start])
    slope, sag = slope.subs(constants), sag.subs(constants)
    greatest_sag = sag.subs(x, top)
    found = {"line_load": w, "span": L}
    stiff = found | {"bending_stiffness": EI}
    along = {
        name: _same_as(derived, function, arguments | {"position": x})
        for name, derived, function, arguments in (
            ("shear", shear, formulas.simple_uniform_shear_at, found),
            ("moment", moment, formulas.simple_uniform_moment_at, found),
            ("slope", slope, formulas.simple_uniform_slope_at, stiff),
            ("sag", sag, formulas.simple_uniform_deflection_at, stiff),
        )
    }
    steps = (
        Step("Every bit of load takes away some shear.", Eq(V.diff(x), -w)),
        Step("Add up from the left end. There the support pushes up.", Eq(V, push - w * x)),
        Step("Shear adds up to moment.", Eq(M.diff(x), V)),
        Step(
            "A simple end is free to turn. No moment at either end, and that gives the push.",
            Eq(push, found_push),
        ),
        Step("So this is the moment along the span.", Eq(M, along["moment"])),
        Step("Where the shear is zero, the moment is greatest. That is the middle.", Eq(Symbol("x"), top)),
        Step("The greatest moment.", Eq(Symbol("M"), greatest_moment)),
        Step("Moment bends the beam. A stiff beam bends less.", Eq(EI * y.diff(x, 2), -M)),
        Step(
            "Add up once: the slope. One constant is open.",
            Eq(theta, expand(integrate(-moment / EI, x)) + tilt),
        ),
        Step(
            "Add up again: the sag. It is zero at both ends, and that fixes the constant.",
            Eq(tilt, constants[tilt]),
        ),
        Step("The line that the beam sags to.", Eq(y, along["sag"])),
        Step("The greatest sag, at the middle.", Eq(Symbol("y"), greatest_sag)),
    )
    inputs = {"line_load": (w, "line load"), "span": (L, "length")}
    return _derivation(
        "How far does a simple beam sag?",
        steps,
        (formulas.simple_uniform_moment, found, greatest_moment, Symbol("M"), "moment", inputs),
        (
            formulas.simple_uniform_deflection,
            stiff,
            greatest_sag,
            Symbol("y"),
            "small length",
            inputs | {"bending_stiffness": (EI, "stiffness")},
        ),
    )


def required_section():
    """Derive the section modulus and the depth that a load and a span ask for.

    Returns
    -------
    Derivation
        It ends in ``bending_stress`` [-].
    """
    from sympy import Eq, UnevaluatedExpr, solve, sqrt, symbols

    w, L, f, b, d = symbols("w L f b d", positive=True)
    M, S = symbols("M S", positive=True)
    moment = formulas.simple_uniform_moment(line_load=w, span=L)
    found_modulus = moment / f
    modulus = sections.rectangle_section_modulus(width=b, depth=d)
    found_depth = solve(Eq(modulus, found_modulus), d)[0]
    square = found_depth**2
    root = sqrt(UnevaluatedExpr(square))  # unevaluated, so that it prints as one root
    steps = (
        Step("The load bends the beam most at the middle.", Eq(M, moment)),
        Step(
            "The stress at the edge is moment over section modulus.",
            Eq(f, formulas.bending_stress(moment=M, section_modulus=S)),
        ),
        Step("Turn it round. This much section modulus is needed.", Eq(S, M / f)),
        Step("Put the moment in. Twice the span asks for four times the section.", Eq(S, found_modulus)),
        Step("A rectangle gives this much.", Eq(S, modulus)),
        Step("Set the two equal and ask for the depth, squared.", Eq(d**2, square)),
        Step("Take the root. Twice the span asks for twice the depth.", Eq(d, root)),
    )
    stress = {
        "modulus": formulas.bending_stress(moment=moment, section_modulus=found_modulus),
        "depth": formulas.bending_stress(
            moment=moment, section_modulus=sections.rectangle_section_modulus(width=b, depth=root.doit())
        ),
    }
    for found in stress.values():
        prove(f, found, "bending_stress")
    name = _name(formulas.bending_stress)
    inputs = {"line_load": (w, "line load"), "span": (L, "length"), "stress": (f, "stress")}
    endings = (
        Ending(name, Eq(S, found_modulus), "section modulus", inputs),
        Ending(name, Eq(d, root), "section length", inputs | {"width": (b, "section length")}),
    )
    return Derivation("How deep must the beam be?", steps, endings, True)


def middle_support():
    """Derive the push of the middle support of two equal spans by taking it away and back.

    Returns
    -------
    Derivation
        It ends in ``two_span_uniform_middle_reaction`` and ``middle_width_two_equal_spans`` [-].
    """
    from sympy import Eq, Symbol, solve, symbols

    w, L, EI = symbols("w L EI", positive=True)
    middle, width = symbols(r"R_{\text{middle}} B", positive=True)
    sag = formulas.simple_uniform_deflection(line_load=w, span=2 * L, bending_stiffness=EI)
    lift = formulas.simple_midspan_point_deflection(point_load=middle, span=2 * L, bending_stiffness=EI)
    push = solve(Eq(sag, lift), middle)[0]
    share = 2 * formulas.simple_uniform_reaction(line_load=w, span=L)
    steps = (
        Step(
            "Take the middle support away. One long span is left, and it sags.",
            Eq(Symbol(r"y_{\text{down}}"), sag),
        ),
        Step("Push it up again at the middle, with one force.", Eq(Symbol(r"y_{\text{up}}"), lift)),
        Step("A support does not give way. The two must cancel.", Eq(sag, lift)),
        Step("The stiffness drops out. This is the push of the middle support.", Eq(middle, push)),
        Step(
            "Cut over the support, the joists would bring half of each span, one span in all.",
            Eq(Symbol(r"R_{\text{cut}}"), share),
        ),
        Step(
            "Run through, they bring a quarter more.", Eq(middle / Symbol(r"R_{\text{cut}}"), push / share)
        ),
        Step(
            "So the middle wall carries a strip of floor, one span and a quarter wide.", Eq(width, push / w)
        ),
    )
    return _derivation(
        "Why does a middle support carry a quarter more?",
        steps,
        (
            formulas.two_span_uniform_middle_reaction,
            {"line_load": w, "span": L},
            push,
            middle,
            "force",
            {"line_load": (w, "line load"), "span": (L, "length")},
        ),
        (
            loads.middle_width_two_equal_spans,
            {"span": L},
            push / w,
            width,
            "length",
            {"span": (L, "length")},
        ),
    )


def point_load():
    """Derive pushes, moment and sag of a simple span under one load at any place.

    Returns
    -------
    Derivation
        It ends in ``simple_point_moment`` and ``simple_point_deflection_left_of_load`` [-].
    """
    from sympy import Eq, Function, Symbol, integrate, solve, symbols

    P, L, EI, x, a = symbols("P L EI x a", positive=True)
    left, right = symbols(r"R_{\text{left}} R_{\text{right}}", positive=True)
    tilt, tilt_right, start_right = symbols("theta_0 theta_1 y_1")
    M, y = Function("M")(x), Function("y")(x)
    pushes = solve([Eq(left * L, P * (L - a)), Eq(left + right, P)], [left, right])
    moment_left = pushes[left] * x
    moment_right = pushes[left] * x - P * (x - a)
    found = {"point_load": P, "span": L, "load_position": a}
    peak = _same_as(moment_left.subs(x, a), formulas.simple_point_moment, found)
    slope_left = integrate(-moment_left / EI, x) + tilt
    slope_right = integrate(-moment_right / EI, x) + tilt_right
    sag_left = integrate(slope_left, x)
    sag_right = integrate(slope_right, x) + start_right
    constants = solve([Eq(slope_left.subs(x, a), slope_right.subs(x, a)), Eq(sag_left.subs(x, a), sag_right.subs(x, a)),
                       Eq(sag_right.subs(x, L), 0)], [tilt, tilt_right, start_right])
    sag = sag_left.subs(constants)
    push = _same_as(pushes[left], formulas.simple_point_left_reaction, found)
    prove(constants[tilt], P * a * (L - a) * (2 * L - a) / (6 * L * EI), "the constant as written")
    along = _same_as(sag, formulas.simple_point_deflection_left_of_load,
                     found | {"bending_stiffness": EI, "position": x})
    steps = (
        Step("Take the turning about the right end. The load's lever is what lies beyond it.",
             Eq(left * L, P * (L - a))),
        Step("So the nearer support takes more.", Eq(left, push)),
        Step("The two pushes together hold the load.", Eq(right, pushes[right].factor())),
        Step("Left of the load only the left support pushes.", Eq(M, push * x)),
        Step("The moment grows up to the load, and falls after it. This is its peak.", Eq(Symbol("M"), peak)),
        Step("In the middle of the span the peak is greatest of all.", Eq(Symbol("M"), peak.subs(a, L / 2))),
        Step("Moment bends the beam, on either side of the load.", Eq(EI * y.diff(x, 2), -M)),
        Step("Add up twice. The two sides meet at the load, at one height and one slope. That fixes the constants.",
             Eq(tilt, P * a * (L - a) * (2 * L - a) / (6 * L * EI))),
        Step("The line that the beam sags to, left of the load.", Eq(y, along)),
    )
    inputs = {"point_load": (P, "force"), "span": (L, "length"), "load_position": (a, "length")}
    return _derivation(
        "What does one load do?",
        steps,
        (formulas.simple_point_left_reaction, found, push, left, "force", inputs),
        (formulas.simple_point_moment, found, peak, Symbol("M"), "moment", inputs),
        (formulas.simple_point_deflection_left_of_load, found | {"bending_stiffness": EI, "position": x}, sag,
         Symbol("y"), "small length", inputs | {"bending_stiffness": (EI, "stiffness"), "position": (x, "length")}),
    )


def two_spans():
    """Derive shear and moment of two equal spans from the push of the middle support.

    Returns
    -------
    Derivation
        It ends in ``two_span_uniform_end_reaction``, ``_support_moment`` and ``_span_moment`` [-].
    """
    from sympy import Eq, Function, Symbol, expand, integrate, solve, symbols

    w, L, x = symbols("w L x", positive=True)
    end, middle = symbols(r"R_{\text{end}} R_{\text{middle}}", positive=True)
    V, M = Function("V")(x), Function("M")(x)
    push = formulas.two_span_uniform_middle_reaction(line_load=w, span=L)
    found_end = solve(Eq(2 * end + push, 2 * w * L), end)[0]
    shear = found_end - w * x
    moment = expand(integrate(shear, x))
    top = solve(Eq(shear, 0), x)[0]
    over_support, in_span = moment.subs(x, L), moment.subs(x, top)
    found = {"line_load": w, "span": L}
    steps = (
        Step("The middle support pushes this much (notebook 02 shows why).", Eq(middle, push)),
        Step("The two ends share what is left.", Eq(end, found_end)),
        Step("From the end on, load takes shear away.", Eq(V, shear)),
        Step("Shear adds up to moment.", Eq(M, moment)),
        Step("The shear is zero not in the middle of the span, but nearer the end.", Eq(Symbol("x"), top)),
        Step("There the moment that sags the beam is greatest.", Eq(Symbol(r"M_{\text{span}}"), in_span)),
        Step("Over the middle support the beam is bent the other way, and more.",
             Eq(Symbol(r"M_{\text{support}}"), over_support)),
    )
    inputs = {"line_load": (w, "line load"), "span": (L, "length")}
    return _derivation(
        "What changes when the beam runs on over a support?",
        steps,
        (formulas.two_span_uniform_end_reaction, found, found_end, end, "force", inputs),
        (formulas.two_span_uniform_support_moment, found, over_support, Symbol(r"M_{\text{support}}"), "moment", inputs),
        (formulas.two_span_uniform_span_moment, found, in_span, Symbol(r"M_{\text{span}}"), "moment", inputs),
    )


def dimension_check():
    """Check with units alone that the sag formula gives a length, and that a slip would show.

    Returns
    -------
    list of str
        One line a formula: what its units leave over [-].

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


def _derivation(title, steps, *endings):
    """Prove every ending against its function and put the derivation together."""
    from sympy import Eq

    proved = []
    for function, arguments, derived, symbol, dimension, inputs in endings:
        prove(derived, function(**arguments), function.__name__)
        proved.append(Ending(_name(function), Eq(symbol, derived), dimension, inputs))
    return Derivation(title, steps, tuple(proved), True)


def _same_as(derived, function, arguments):
    """Prove a derived expression and give it back in the form the function has."""
    of_library = function(**arguments)
    prove(derived, of_library, function.__name__)
    return of_library


def _name(function):
    room = function.__module__.removeprefix("structlib.")
    return f"{room}.{function.__name__}"


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
    return latex(
        expression.xreplace(renamed), symbol_names={new: latex(old) for old, new in renamed.items()}
    )


def steps_as_latex(derivation):
    """Give each step as a sentence and a formula in LaTeX.

    Parameters
    ----------
    derivation : Derivation
        The derivation to show [-].

    Returns
    -------
    list of tuple of str
        Sentence and formula, in order [-].

    Examples
    --------
    >>> steps_as_latex(section_of_a_rectangle())[2][1]
    'I = \\\\frac{b d^{3}}{12}'
    """
    return [(step.sentence, _latex(step.equation)) for step in derivation.steps]


def to_markdown(derivation):
    """Give the whole derivation as one Markdown text, formulas between double dollar signs.

    Parameters
    ----------
    derivation : Derivation
        The derivation to show [-].

    Returns
    -------
    str
        The text, the same every time [-].
    """
    lines = [f"**{derivation.title}**"]
    for number, (sentence, formula) in enumerate(steps_as_latex(derivation), start=1):
        lines += [f"{number}. {sentence}", f"$${formula}$$"]
    names = derivation.ends_in
    ends = " and ".join(f"`{name}`" for name in names)
    told = {1: "computes. It was", 2: "compute. Both were"}.get(len(names), "compute. All were")
    lines.append(f"This is what {ends} {told} compared symbol by symbol.")
    return "\n\n".join(lines)


def with_numbers(derivation, values, system="us"):
    """Put the reader's numbers into the last line of a derivation.

    Parameters
    ----------
    derivation : Derivation
        The derivation [-].
    values : dict
        Input names to numbers, in internal units, such as ``{"line_load": 40*plf, "span": 12*ft}`` [any].
    system : str
        Whose units to show, ``"us"`` or ``"metric"`` [-].

    Returns
    -------
    str
        One line for every ending whose inputs are all given, as Markdown [-].

    Raises
    ------
    BadInput
        When an input is missing or unknown, or a number makes no sense.
    """
    known = {name: entry for ending in derivation.endings for name, entry in ending.inputs.items()}
    for name, value in values.items():
        if name not in known:
            raise BadInput(f"{name!r} does not occur in this derivation; it takes {', '.join(known)}")
        check_number(
            name, value, low=0, high=1e15, low_allowed=False, hint="lengths and loads are more than zero"
        )
    given = [ending for ending in derivation.endings if set(ending.inputs) <= set(values)]
    if not given:
        needed = ", ".join(derivation.endings[0].inputs)
        raise BadInput(f"numbers are needed for {needed}; got {', '.join(values) or 'none'}")
    return "\n\n".join(_line(ending, values, system) for ending in given)


def _line(ending, values, system):
    inputs = ending.inputs.items()
    result = ending.equation.rhs.subs({symbol: values[name] for name, (symbol, _) in inputs}).doit()
    told = ", ".join(
        f"${_latex(symbol)}$ = {show(values[name], dimension, system)}"
        for name, (symbol, dimension) in inputs
    )
    answer = show(float(result), ending.dimension, system)
    return f"${_latex(ending.equation)}$ with {told}: ${_latex(ending.equation.lhs)}$ = **{answer}**"
