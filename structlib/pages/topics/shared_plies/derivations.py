"""Derivations of notebook 11: shares by stiffness, and stacks loose and joined."""

from structlib.mechanics import composite
from structlib.pages.kit.proofs import Step, derivation


def shares_of_unlike_plies():
    """Derive which share of the load and which stress a plate takes between plies of wood.

    Examples
    --------
    >>> shares_of_unlike_plies().proved
    True
    """
    from sympy import Eq, Rational, Symbol, simplify, solve, symbols

    wood_modulus, steel_modulus, wide, thick, deep, moment = symbols("E_w E_s b t d M", positive=True)
    curve, wood_moment, steel_moment = symbols(r"\kappa M_w M_s", positive=True)
    wood, steel = wide * deep**3 / 12, thick * deep**3 / 12
    by_wood, by_steel = wood_modulus * wood * curve, steel_modulus * steel * curve
    found_curve = solve(Eq(moment, by_wood + by_steel), curve)[0]
    whole = simplify(moment / found_curve)
    share = simplify(by_steel.subs(curve, found_curve) / moment)
    stress = simplify(steel_modulus * deep / 2 * found_curve)
    n = Symbol("n", positive=True)
    steps = (
        Step(
            "Wood and plate sag alike. So they have the same curve at every place.",
            Eq(Symbol(r"\kappa_w"), Symbol(r"\kappa_s")),
        ),
        Step(
            "To bend the wood that far takes a moment. It grows with E and with I.",
            Eq(wood_moment, by_wood),
        ),
        Step("The plate asks for its own moment, by its own E and I.", Eq(steel_moment, by_steel)),
        Step("Together they carry the moment of the beam.", Eq(moment, by_wood + by_steel)),
        Step(
            "What multiplies the curve is the stiffness of both. It is the sum of E I.",
            Eq(Symbol("EI"), whole),
        ),
        Step("The plate's part of the moment is its part of the sum.", Eq(Symbol("s"), share)),
        Step(
            "With like depths the depth cancels. Write n for how much stiffer steel is.",
            Eq(Symbol("s"), simplify(share.subs(steel_modulus, n * wood_modulus))),
        ),
        Step(
            "The edge of the plate is stretched by the curve, half a depth away.",
            Eq(Symbol(r"\sigma_s"), stress),
        ),
    )
    parts = (
        composite.Part(modulus=wood_modulus, width=wide, depth=deep),
        composite.Part(modulus=steel_modulus, width=thick, depth=deep),
    )
    sizes = {
        "modulus_of_wood": (wood_modulus, "stress"),
        "modulus_of_steel": (steel_modulus, "stress"),
        "width_of_wood": (wide, "section length"),
        "thickness_of_plate": (thick, "section length"),
        "depth": (deep, "section length"),
    }
    derived = Rational(1, 12) * deep**3 * (wood_modulus * wide + steel_modulus * thick)
    return derivation(
        "Why does the plate take so much of the load?",
        steps,
        (composite.loose_stiffness, {"parts": parts}, whole, Symbol("EI"), "stiffness", sizes),
        (
            composite.share_of,
            {"part": parts[1], "stiffness": derived},
            share,
            Symbol("s"),
            "ratio",
            sizes,
        ),
        (
            composite.own_stress,
            {"part": parts[1], "moment": moment, "stiffness": derived},
            stress,
            Symbol(r"\sigma_s"),
            "stress",
            sizes | {"moment": (moment, "moment")},
        ),
    )


def stacked_boards():
    """Derive what two like boards, one on the other, are worth loose and joined.

    Examples
    --------
    >>> stacked_boards().proved
    True
    """
    from sympy import Eq, Integral, Symbol, integrate, simplify, symbols

    modulus, wide, deep, y = symbols("E b h y", positive=True)
    one = integrate(wide * y**2, (y, -deep / 2, deep / 2))
    loose = 2 * modulus * one
    joined = modulus * integrate(wide * y**2, (y, -deep, deep))
    steps = (
        Step(
            "One board bends about its own middle.",
            Eq(Symbol("I_1"), Integral(wide * y**2, (y, -deep / 2, deep / 2))),
        ),
        Step("Add up its layers.", Eq(Symbol("I_1"), one)),
        Step(
            "Loose: each board still bends about its own middle. The two only add up.",
            Eq(Symbol(r"EI_{\text{loose}}"), loose),
        ),
        Step(
            "Joined: both bend about the seam between them. The layers reach twice as far.",
            Eq(
                Symbol(r"EI_{\text{joined}}"),
                modulus * Integral(wide * y**2, (y, -deep, deep)),
            ),
        ),
        Step("Add up again.", Eq(Symbol(r"EI_{\text{joined}}"), joined)),
        Step(
            "Joined against loose: four times as stiff. No nail pattern gets there, for nails give way.",
            Eq(Symbol(r"\frac{EI_{\text{joined}}}{EI_{\text{loose}}}"), simplify(joined / loose)),
        ),
    )
    layers = composite.stack([(modulus, wide, deep), (modulus, wide, deep)])
    sizes = {
        "modulus": (modulus, "stress"),
        "width": (wide, "section length"),
        "depth": (deep, "section length"),
    }
    return derivation(
        "Why are two stacked boards not one deep board?",
        steps,
        (
            composite.loose_stiffness,
            {"parts": layers},
            loose,
            Symbol(r"EI_{\text{loose}}"),
            "stiffness",
            sizes,
        ),
        (
            composite.joined_stiffness,
            {"parts": layers},
            joined,
            Symbol(r"EI_{\text{joined}}"),
            "stiffness",
            sizes,
        ),
    )
