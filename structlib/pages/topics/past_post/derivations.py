"""Derivations of notebook 10: uplift behind an overhang, a middle post taken out, the weak spot of a taper."""

from structlib.mechanics import formulas, overhang, tapered
from structlib.pages.kit.proofs import Step, derivation, prove, same_as


def overhang_uplift():
    """Derive what one load on the tip of an overhang does at both supports, from turning alone.

    Examples
    --------
    >>> overhang_uplift().proved
    True
    """
    from sympy import Eq, Symbol, solve, symbols

    P, L, a = symbols("P L a", positive=True)
    back, near = symbols(r"R_{\text{back}} R_{\text{near}}")
    M = Symbol(r"M_{\text{near}}")
    found_back = solve(Eq(back * L + P * a, 0), back)[0]
    found_near = solve(Eq(found_back + near, P), near)[0]
    moment = found_back * L
    given = {"point_load": P, "span": L, "overhang": a}
    steps = (
        Step("A load stands on the tip, past the near post. Turn about the near post.", Eq(back * L + P * a, 0)),
        Step(
            "Both turn the beam the same way, so the back support must pull. That is uplift.",
            Eq(back, found_back),
        ),
        Step("The pushes together hold the load.", Eq(back + near, P)),
        Step(
            "So the near post carries more than the load that stands past it.",
            Eq(near, same_as(found_near, overhang.overhang_tip_near_reaction, given)),
        ),
        Step("The pull times the span bends the beam over the near post.", Eq(M, moment)),
        Step(
            "An overhang of a quarter of the span lifts with a quarter of the load.",
            Eq(back, found_back.subs(a, L / 4)),
        ),
    )
    inputs = {"point_load": (P, "force"), "span": (L, "length"), "overhang": (a, "length")}
    return derivation(
        "Why does the far end lift?",
        steps,
        (overhang.overhang_tip_back_reaction, given, found_back, back, "force", inputs),
        (overhang.overhang_tip_near_reaction, given, found_near, near, "force", inputs),
        (
            overhang.overhang_tip_moment,
            {"point_load": P, "overhang": a},
            moment,
            M,
            "moment",
            {"point_load": (P, "force"), "overhang": (a, "length")},
        ),
    )


def post_taken_out():
    """Derive the sag of two equal spans in one piece, and how much greater it is without the middle post."""
    from sympy import Eq, Function, Symbol, expand, factor, integrate, simplify, solve, sqrt, symbols

    w, L, EI, x = symbols("w L EI x", positive=True)
    tilt = Symbol("theta_0")
    M = Function("M")(x)
    ratio = Symbol(r"\frac{y_{\text{out}}}{y_{\text{two}}}")
    end = formulas.two_span_uniform_end_reaction(line_load=w, span=L)
    moment = expand(end * x - w * x**2 / 2)
    slope = integrate(-moment / EI, x) + tilt
    sag = integrate(slope, x)
    found_tilt = solve(Eq(sag.subs(x, L), 0), tilt)[0]
    slope, sag = slope.subs(tilt, found_tilt), sag.subs(tilt, found_tilt)
    prove(slope.subs(x, L), 0, "the level tangent over the middle post")
    flat = simplify(48 * EI * slope / w)
    place = L * (1 + sqrt(33)) / 16
    prove(slope.subs(x, place), 0, "the place of the greatest sag")
    greatest = simplify(sag.subs(x, place))
    out = formulas.simple_uniform_deflection(line_load=w, span=2 * L, bending_stiffness=EI)
    times = simplify(out / greatest)
    given = {"line_load": w, "span": L, "bending_stiffness": EI}
    steps = (
        Step("Two spans in one piece. The end pushes three eighths of one span's load.", Eq(Symbol("R"), end)),
        Step("From the end on, this is the moment.", Eq(M, moment)),
        Step(
            "Add up twice. The constant follows from no sag at the middle post.",
            Eq(Symbol("theta_0"), found_tilt),
        ),
        Step("The slope is zero over the middle post, and once in the span.", Eq(factor(flat), 0)),
        Step("There the sag is greatest.", Eq(Symbol("x"), place)),
        Step("This is the sag with the post in.", Eq(Symbol(r"y_{\text{two}}"), greatest)),
        Step(
            "Without the post, one simple span of twice the length is left.",
            Eq(Symbol(r"y_{\text{out}}"), out),
        ),
        Step("Load, length and stiffness drop out of the comparison.", Eq(ratio, times)),
        Step("In figures.", Eq(ratio, times.evalf(3))),
    )
    inputs = {"line_load": (w, "line load"), "span": (L, "length"), "bending_stiffness": (EI, "stiffness")}
    return derivation(
        "What does a middle post do against sag?",
        steps,
        (
            formulas.two_span_uniform_deflection,
            given,
            greatest,
            Symbol(r"y_{\text{two}}"),
            "small length",
            inputs,
        ),
    )


def weak_spot_of_a_taper():
    """Derive where a tapered simple beam is stressed most: not where the moment is greatest."""
    from sympy import Eq, Function, Symbol, fraction, solve, symbols, together

    w, L, b, x = symbols("w L b x", positive=True)
    shallow, deep = symbols("d_0 d_1", positive=True)
    depth, stress = Function("d")(x), Function("f")(x)
    moment = formulas.simple_uniform_moment_at(line_load=w, span=L, position=x)
    at_place = shallow + (deep - shallow) * x / L
    found_stress = 6 * moment / (b * at_place**2)
    top = fraction(together(found_stress.diff(x)))[0]
    place = next(root for root in solve(top, x) if root.subs({shallow: 1, deep: 2, L: 3}) == 1)
    given = {"span": L, "start_depth": shallow, "end_depth": deep}
    steps = (
        Step("The beam gets deeper from left to right.", Eq(depth, at_place)),
        Step("An even load bends it most at the middle.", Eq(Function("M")(x), moment)),
        Step("Stress is moment over section modulus.", Eq(stress, 6 * Function("M")(x) / (b * depth**2))),
        Step("Where the stress is greatest, it neither grows nor falls.", Eq(stress.diff(x), 0)),
        Step(
            "That gives the place. The shallow end draws it near.",
            Eq(x, same_as(place, tapered.tapered_uniform_stress_place, given)),
        ),
        Step("Equal depths give the middle, as they should.", Eq(Symbol("x"), place.subs(deep, shallow))),
        Step(
            "Twice as deep on the right: a third of the span from the left.",
            Eq(Symbol("x"), place.subs(deep, 2 * shallow)),
        ),
    )
    inputs = {
        "span": (L, "length"),
        "start_depth": (shallow, "section length"),
        "end_depth": (deep, "section length"),
    }
    return derivation(
        "Where is a tapered beam stressed most?",
        steps,
        (tapered.tapered_uniform_stress_place, given, place, Symbol("x"), "length", inputs),
    )
