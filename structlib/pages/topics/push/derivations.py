"""Derivations of the page of push."""

from structlib.mechanics import formulas
from structlib.pages.kit.proofs import Step, derivation, prove, same_as


def simple_beam():
    """Derive shear, moment, slope and deflection of a simple span by adding up, four times."""
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
        name: same_as(derived, function, arguments | {"position": x})
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
    return derivation(
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


def point_load():
    """Derive pushes, moment and sag of a simple span under one load at any place."""
    from sympy import Eq, Function, Symbol, integrate, solve, symbols

    P, L, EI, x, a = symbols("P L EI x a", positive=True)
    left, right = symbols(r"R_{\text{left}} R_{\text{right}}", positive=True)
    tilt, tilt_right, start_right = symbols("theta_0 theta_1 y_1")
    M, y = Function("M")(x), Function("y")(x)
    pushes = solve([Eq(left * L, P * (L - a)), Eq(left + right, P)], [left, right])
    moment_left = pushes[left] * x
    moment_right = pushes[left] * x - P * (x - a)
    found = {"point_load": P, "span": L, "load_position": a}
    peak = same_as(moment_left.subs(x, a), formulas.simple_point_moment, found)
    slope_left = integrate(-moment_left / EI, x) + tilt
    slope_right = integrate(-moment_right / EI, x) + tilt_right
    sag_left = integrate(slope_left, x)
    sag_right = integrate(slope_right, x) + start_right
    constants = solve(
        [
            Eq(slope_left.subs(x, a), slope_right.subs(x, a)),
            Eq(sag_left.subs(x, a), sag_right.subs(x, a)),
            Eq(sag_right.subs(x, L), 0),
        ],
        [tilt, tilt_right, start_right],
    )
    sag = sag_left.subs(constants)
    push = same_as(pushes[left], formulas.simple_point_left_reaction, found)
    prove(constants[tilt], P * a * (L - a) * (2 * L - a) / (6 * L * EI), "the constant as written")
    along = same_as(
        sag, formulas.simple_point_deflection_left_of_load, found | {"bending_stiffness": EI, "position": x}
    )
    steps = (
        Step(
            "Take the turning about the right end. The load's lever is what lies beyond it.", Eq(left * L, P * (L - a))
        ),
        Step("So the nearer support takes more.", Eq(left, push)),
        Step("The two pushes together hold the load.", Eq(right, pushes[right].factor())),
        Step("Left of the load only the left support pushes.", Eq(M, push * x)),
        Step("The moment grows up to the load, and falls after it. This is its peak.", Eq(Symbol("M"), peak)),
        Step("In the middle of the span the peak is greatest of all.", Eq(Symbol("M"), peak.subs(a, L / 2))),
        Step("Moment bends the beam, on either side of the load.", Eq(EI * y.diff(x, 2), -M)),
        Step(
            "Add up twice. The two sides meet at the load, at one height and one slope. That fixes the constants.",
            Eq(tilt, P * a * (L - a) * (2 * L - a) / (6 * L * EI)),
        ),
        Step("The line that the beam sags to, left of the load.", Eq(y, along)),
    )
    inputs = {"point_load": (P, "force"), "span": (L, "length"), "load_position": (a, "length")}
    return derivation(
        "What does one load do?",
        steps,
        (formulas.simple_point_left_reaction, found, push, left, "force", inputs),
        (formulas.simple_point_moment, found, peak, Symbol("M"), "moment", inputs),
        (
            formulas.simple_point_deflection_left_of_load,
            found | {"bending_stiffness": EI, "position": x},
            sag,
            Symbol("y"),
            "small length",
            inputs | {"bending_stiffness": (EI, "stiffness"), "position": (x, "length")},
        ),
    )


def two_spans():
    """Derive shear and moment of two equal spans from the push of the middle support."""
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
        Step(
            "Over the middle support the beam is bent the other way, and more.",
            Eq(Symbol(r"M_{\text{support}}"), over_support),
        ),
    )
    inputs = {"line_load": (w, "line load"), "span": (L, "length")}
    return derivation(
        "What changes when the beam runs on over a support?",
        steps,
        (formulas.two_span_uniform_end_reaction, found, found_end, end, "force", inputs),
        (
            formulas.two_span_uniform_support_moment,
            found,
            over_support,
            Symbol(r"M_{\text{support}}"),
            "moment",
            inputs,
        ),
        (formulas.two_span_uniform_span_moment, found, in_span, Symbol(r"M_{\text{span}}"), "moment", inputs),
    )
