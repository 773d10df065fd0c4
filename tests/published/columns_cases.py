"""How each case on posts and footings is put to the library: its own inputs in, every expected key out.

Single cases go by their name, the rows of a whole table by their topic. No expected value stands here.
"""

from casebook import register

from structlib.ground.lumber import find_material
from structlib.ground.sections import rectangle_area, rectangle_section_modulus
from structlib.ground.sizes import stock_sizes
from structlib.ground.units import ft, inch, kip, ksi, lb, pcf, psf, psi
from structlib.mechanics import columns as mechanics
from structlib.mechanics import formulas
from structlib.rules.us import factors, footings, steel_columns
from structlib.rules.us.column_stability import (
    bent_column_share,
    column_stability_factor,
    critical_column_value,
    ratio_for_factor,
)
from structlib.rules.us.columns import Column, built_up_fastening, column_capacity, shortest_common_nail
from structlib.rules.us.dowels import nail

CASES, TABLES = {}, {}
case, table = register(CASES), register(TABLES)


def find_root(function, low, high):
    """The place between two others at which a rising or falling function is zero."""
    rising = function(low) < 0
    for _ in range(200):
        middle = (low + high) / 2
        low, high = (middle, high) if (function(middle) < 0) == rising else (low, middle)
    return low


def older_factor(length, size, Fc, E, KcE, c):
    """C_P of the older form, in which K_cE E stands where today 0.822 E_min' does."""
    modulus = KcE * E / factors.scalar("column_stability_coefficient")
    ratio = mechanics.slenderness(effective_length=length, across=size)
    return float(
        column_stability_factor(ratio=critical_column_value(modulus_stability=modulus, slenderness=ratio) / Fc, shape=c)
    )


@case("CP-01")
def _(b, h, Fc, E, KcE, c):
    found = {}
    for feet in (6, 8, 10):
        factor = older_factor(12.0 * feet, b, Fc, E, KcE, c)
        found |= {f"CP_{feet}": factor, f"P_{feet}": factor * Fc * b * h / 1000}
    return found


@case("CP-02")
def _(b, h, Fc, E, KcE, c):
    return {
        key: older_factor(length, b, Fc, E, KcE, c) * Fc * b * h / 1000
        for key, length in (("P_2p5", 2500.0), ("P_3p5", 3500.0), ("P_4p5", 4500.0))
    }


def _longest_and_thinnest(b, P, Fc, E, L2, KcE, c):
    factor = P / (Fc * b**2)
    longest = b * (KcE * E / (Fc * ratio_for_factor(factor=factor, shape=c))) ** 0.5
    assert abs(older_factor(longest, b, Fc, E, KcE, c) - factor) < 1e-9
    least = find_root(lambda side: older_factor(float(L2), side, Fc, E, KcE, c) * Fc * side**2 - P, b / 10, b * 10)
    return {"CP": factor, "Lmax": longest, "b_min": least}


for name in ("CP-03", "CP-04", "CP-05", "CP-06"):
    CASES[name] = _longest_and_thinnest


@case("CP-10")
def _(Fc, CF, Emin, d, A, CD, c):
    wood = find_material("Douglas Fir-Larch", "No.1")
    assert (round(wood.compression / psi), round(wood.modulus_stability / psi)) == (Fc, Emin)
    return {
        f"P_{feet}": column_capacity(wood, ply_width=d * inch, depth=d * inch, height=feet * ft, time_factor=CD).load
        / lb
        for feet in (3, 6, 9, 12)
    }


@case("BU-01")
def _(Fc, CF, Emin, d1, d2, l, c, Kf):  # noqa: E741 - the case's own name
    wood = find_material("Douglas Fir-Larch", "No.2")
    assert (round(wood.compression / psi), round(wood.modulus_stability / psi)) == (Fc, Emin)
    found = column_capacity(wood, ply_width=d2 * inch / 3, depth=d1 * inch, height=l * inch, plies=3, time_factor=1.0)
    solid = column_stability_factor(ratio=found.critical_width / found.crushing_value, shape=c)
    return {
        "CP_strong": found.factor_depth,
        "CP_weak_no_Kf": float(solid),
        "CP_weak": found.factor_width,
        "P": found.load / lb,
    }


@case("BU-03")
def _(Kf_nail, Kf_bolt):
    wood = find_material("Douglas Fir-Larch", "No.2")
    weak = {
        way: column_capacity(
            wood,
            ply_width=1.5 * inch,
            depth=5.5 * inch,
            height=8 * ft,
            plies=3,
            time_factor=1.0,
            fastening=way,
        ).factor_width
        for way in ("nailed", "bolted")
    }
    return {"ratio": weak["bolted"] / weak["nailed"]}


@case("CB-01")
def _(d, L, Fc, Fb, E, e, KcE, c):
    area = rectangle_area(width=float(d), depth=float(d))
    modulus = rectangle_section_modulus(width=float(d), depth=float(d))
    pressed = area * Fc * older_factor(float(L), d, Fc, E, KcE, c)

    def over(load):  # the case adds the shares of compression and bending, with no growth of the moment
        bent = formulas.bending_stress(
            moment=mechanics.eccentric_moment(load=load, eccentricity=e), section_modulus=modulus
        )
        return load / pressed + bent / Fb - 1

    return {"P": find_root(over, 1.0, pressed) / 1000}


@case("CB-03")
def _(P, w, L, A, S, Fc_star, FcE, Fb, CFb, Cr, CD, c):
    pressed = P / A
    moment = formulas.simple_uniform_moment(line_load=w / 12, span=L * 12.0)
    bent = formulas.bending_stress(moment=moment, section_modulus=S)
    factor = float(column_stability_factor(ratio=FcE / Fc_star, shape=c))
    share = bent_column_share(
        compression_stress=pressed,
        compression_value=factor * Fc_star,
        bending_stress=bent,
        bending_value=Fb * CFb * Cr * CD,
        critical_value=FcE,
    )
    return {"fc": pressed, "fb": bent, "CP": factor, "ratio": share}


@case("FT-02")
def _(P, q, t, g):
    net = footings.net_pressure(soil_pressure=q * psf, thickness=t * ft, weight_density=g * pcf)
    side = footings.pad_side(load=P * lb, soil_pressure=q * psf, thickness=t * ft, weight_density=g * pcf)
    return {
        "net": net / psf,
        "A": footings.pad_area(load=P * lb, net_pressure=net) / ft**2,
        "side": side / ft,
    }


@case("FT-03")
def _(P, plate, t):
    found = footings.post_on_slab(load=P * lb, plate=plate * inch, slab_thickness=t * inch, permanent=False)
    return {"side": found.spread_length / inch, "q": found.pressure / psf}


@table("built-up column table")
def _(species, grade, nominal, plies, height, fastening, time):
    piece = next(one for one in stock_sizes("dimension") if one.nominal == nominal)
    found = column_capacity(
        find_material(species, grade, nominal),
        ply_width=piece.width,
        depth=piece.depth,
        height=height * ft,
        plies=plies,
        time_factor=time,
        fastening=fastening,
    )
    whole = found.crushing_value * found.area
    return {
        "Fc_star_psi": found.crushing_value / psi,
        "FcE1_psi": found.critical_depth / psi,
        "FcE2_psi": found.critical_width / psi,
        "Cp1": found.factor_depth,
        "Cp2": found.factor_width,
        "P_axis1_lb": found.factor_depth * whole / lb,
        "P_axis2_lb": found.factor_width * whole / lb,
        "P_allow_lb": found.load / lb,
    }


@table("built-up column nails")
def _(plies):
    post = Column(find_material("Hem-Fir", "No.2"), 1.5 * inch, 7.25 * inch, 8 * ft, plies=plies)
    layout, one = built_up_fastening(post), nail(shortest_common_nail(post))
    return {
        "length": layout.length / inch,
        "nail_length": one.length / inch,
        "nail_diameter": layout.diameter / inch,
        "row_least": layout.along_row[0] / inch,
        "row_greatest": layout.along_row[1] / inch,
        "end_least": layout.end_distance[0] / inch,
        "end_greatest": layout.end_distance[1] / inch,
    }


@case("ST-201")
def _(A, r, height):
    allowed = {
        Fy: steel_columns.steel_capacity(
            steel_columns.SteelPost("as printed", "tube", 0.0, A * inch**2, r * inch, Fy * ksi, "transcribed"),
            height=height * ft,
        ).load
        for Fy in (46, 50)
    }
    factored = {Fy: 0.9 * factors.scalar("steel_column_safety") * load / kip for Fy, load in allowed.items()}
    return {"phi_Pn_46": factored[46], "phi_Pn_50": factored[50], "allowed_50": allowed[50] / kip}


@table("steel column")
def _(section, height, Fy, method, outside=None, wall=None):
    old = method == "AISC 1989"
    post = (
        steel_columns.steel_post(section, nominal_wall=old, yield_strength=Fy * ksi)
        if section
        else steel_columns.pipe_of_size(outside=outside * inch, wall=wall * inch, yield_strength=Fy * ksi)
    )
    found = steel_columns.steel_capacity(post, height=height * ft, method=method)
    # the table of today's formula lists the critical stress, before the safety factor
    stress = found.stress * (1 if old else factors.scalar("steel_column_safety"))
    return {
        "KL_over_r": found.slenderness,
        "F": stress / ksi,
        "P": found.load / kip,
        "P_recomputed": found.load / kip,
    }
