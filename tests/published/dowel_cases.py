"""How each published fastener value is put to the library; no expected value stands here."""

from casebook import register

from structlib.ground.sections import rectangle_inertia
from structlib.ground.units import deg, inch, lb, psi
from structlib.mechanics.fastener_groups import fastener_flow, fastener_spacing, shear_flow
from structlib.rules.us import dowels

CASES = {}
case = register(CASES)

#: Which member's grain the load crosses, by the heading of the published column.
CROSSED = {"any": (0, 0), "Z_par": (0, 0), "Zs_perp": (0, 90), "Zm_perp": (90, 0), "Z_perp": (90, 90)}


def pieces(G, tm, ts, direction, steel=False):
    main_angle, side_angle = CROSSED[direction]
    main = dowels.wood_piece(thickness=tm * inch, specific_gravity=G, angle=main_angle * deg)
    if steel:
        return main, dowels.steel_plate(thickness=ts * inch)
    return main, dowels.wood_piece(thickness=ts * inch, specific_gravity=G, angle=side_angle * deg)


def fastener_of(kind, D):
    """Long enough for the printed tables: 10 diameters (nails) or 8 (lag screws) in the main member."""
    if kind == "bolt":
        return dowels.bolt(D * inch)
    if kind == "lag":
        return dowels.lag_screw(D * inch, length=20 * inch)
    return dowels.nail_of_size(diameter=D * inch, length=20 * inch)


@case("Z")
def _(kind, D, shear, G, direction, tm, ts, steel):
    deep = {"nail": 10 * D, "lag": 8 * D}.get(kind, tm)
    main, side = pieces(G, deep, ts, direction, steel)
    found = dowels.lateral_value(fastener_of(kind, D), main=main, side=side, shear=shear)
    return found.value / lb, found.mode


@case("Fe")
def _(G, D, angle):
    piece = dowels.wood_piece(thickness=1.5 * inch, specific_gravity=G, angle=angle * deg)
    return dowels.piece_bearing_strength(piece, diameter=D * inch) / psi, ""


@case("Fyb")
def _(D):
    return dowels.nail_of_size(diameter=D * inch, length=3 * inch).bending_yield / psi, ""


def nail_value(D, G, ts, length=20.0):
    main, side = pieces(G, 3.5, ts, "any")
    return dowels.lateral_value(dowels.nail_of_size(diameter=D * inch, length=length * inch), main=main, side=side)


@case("DW-01")
def _(D, ts, p, G, Fyb, p2, CD):
    one = dowels.nail_of_size(diameter=D * inch, length=(ts + p) * inch)
    assert abs(one.bending_yield / psi - Fyb) < 1e-6
    main, side = pieces(G, 3.5, ts, "any")
    found = dowels.lateral_value(one, main=main, side=side)
    share = dowels.table_penetration_factor(one, p2 * inch)
    adjusted, _ = dowels.adjusted_value(found, one, time_factor=CD)
    return {"Z": found.value / lb, "factor": share, "Zadj": adjusted * share / lb}


@case("DW-02")
def _(D, ts, Fyb):
    return {key: nail_value(D, G, ts).value / lb for key, G in (("SP", 0.55), ("SPF", 0.42), ("HF", 0.43))}


def bolts(sizes, tm, ts, G):
    found = {}
    for word, direction in (("par", "Z_par"), ("perp", "Z_perp")):
        for name, D in sizes:
            main, side = pieces(G, tm, ts, direction)
            found[f"{word}_{name}"] = dowels.lateral_value(dowels.bolt(D * inch), main=main, side=side).value / lb
    return found


@case("DW-04")
def _(t, G, Fyb):
    return bolts((("12", 0.5), ("58", 0.625), ("34", 0.75)), t, t, G)


@case("DW-05")
def _(tm, ts, G, Fyb):
    return bolts((("12", 0.5), ("58", 0.625)), tm, ts, G)


@case("DW-09")
def _():
    return {
        "hot": dowels.bearing_strength_steel(tensile_strength=58000 * psi, made="hot rolled") / psi,
        "cold": dowels.bearing_strength_steel(tensile_strength=45000 * psi, made="cold formed") / psi,
    }


@case("DW-10")
def _(G, ts, p, D1, D2):
    short = dowels.nail_of_size(diameter=D1 * inch, length=(ts + p) * inch)
    whole = nail_value(D1, G, ts).value / lb
    share = dowels.table_penetration_factor(short, p * inch)
    return {
        "Z148": whole,
        "factor": share,
        "Z_red": whole * share,
        "Z192": nail_value(D2, G, ts).value / lb,
        "Z148_eq_125": nail_value(D1, G, ts, length=ts + p).value / lb,
    }


@case("MP-03")
def _(Q, I, F):
    def spacing(shear):
        return fastener_spacing(value=F, flow=shear_flow(shear=shear, first_moment=Q, inertia=I), lines=2)

    return {"s200": spacing(200.0), "s300": spacing(300.0)}


@case("MP-04")
def _(F, s):
    # 260 x 310 mm outside: flange boards 260 x 25 mm lie over two webs 50 mm thick and 260 mm high
    inertia = rectangle_inertia(width=260.0, depth=310.0) - rectangle_inertia(width=160.0, depth=260.0)
    first = 260.0 * 25.0 * (310.0 - 25.0) / 2
    flow = fastener_flow(value=F, spacing=s, lines=2)
    return {
        "I": inertia,
        "Q": first,
        "V": flow / shear_flow(shear=1.0, first_moment=first, inertia=inertia) / 1000,
    }
