"""How each case on composite and steel beams is put to the library: its inputs in, every key out.

No expected value stands here.
"""

from casebook import register

from structlib.ground import sections
from structlib.ground.sizes import stock_sizes
from structlib.ground.units import ft, inch, kip, kN, ksi, lb, m, pcf, plf, psf, psi
from structlib.mechanics import formulas
from structlib.mechanics.composite import (
    Part,
    joined_stiffness,
    joined_stress,
    loose_stiffness,
    own_stress,
    shares_by_stiffness,
)
from structlib.rules.us.steel_beams import brace_lengths, plastic_modulus_needed, steel_moment, steel_shear
from structlib.rules.us.steel_sections import SteelSection, lean_parts, steel_shape

CASES = {}
case = register(CASES)


@case("FL-02")
def _(w, L, I, yw, ys, n):  # noqa: E741  the names are those of the case
    moment = formulas.simple_uniform_moment(line_load=w * plf, span=L * ft)
    inertia = I * inch**4
    wood = formulas.bending_stress(moment=moment, section_modulus=inertia / (yw * inch))
    same_height = formulas.bending_stress(moment=moment, section_modulus=inertia / (ys * inch))
    return {"fw": wood / psi, "fs": n * same_height / psi}


@case("FL-04")
def _(b, d, bs, t, n, Fw, Fs):
    wood = Part(modulus=1.0, width=b, depth=d, centre=t + d / 2)
    top = Part(modulus=n, width=bs, depth=t, centre=t / 2)
    bottom = Part(modulus=n, width=bs, depth=t, centre=t + d + t / 2)
    parts = [top, wood, bottom]
    one = 1e6
    in_wood = joined_stress(parts, modulus=1.0, height=t + d, moment=one)
    in_steel = joined_stress(parts, modulus=n, height=d + 2 * t, moment=one)
    bare = own_stress(wood, moment=one, stiffness=wood.bending_stiffness)
    by_wood, by_steel = one * Fw / in_wood, one * Fs / in_steel
    shown = kN * m
    return {
        "M_bare": one * Fw / bare / shown,
        "M_wood": by_wood / shown,
        "M_steel": by_steel / shown,
        "M_reinf": min(by_wood, by_steel) / shown,
    }


@case("FL-06")
def _(bw, d, t, n, P, a, Fw, Fs):
    wood = Part(modulus=1.0, width=bw * inch, depth=d * inch)
    steel = Part(modulus=n, width=t * inch, depth=d * inch)
    stiffness = loose_stiffness([wood, steel])
    moment = P * kip * a * ft
    in_wood, in_steel = (own_stress(part, moment=moment, stiffness=stiffness) for part in (wood, steel))
    return {
        "fw": in_wood / psi,
        "fs": in_steel / psi,
        "P_max": P * min(Fw * psi / in_wood, Fs * psi / in_steel),
    }


@case("FL-07")
def _(Ew, Iw, Es, t, d):
    # the wood is given by its second moment of area: a ply as deep as the plate and as wide as makes that
    width = Iw * inch**4 / (sections.rectangle_inertia(width=inch, depth=d * inch)) * inch
    parts = [
        Part(modulus=Ew * psi, width=width, depth=d * inch),
        Part(modulus=Es * psi, width=t * inch, depth=d * inch),
    ]
    return {"EI": loose_stiffness(parts) / (lb * inch**2), "share": shares_by_stiffness(parts)[1]}


@case("FL-09")
def _(n):
    # layout of the case's note: 75 mm wide; plastic 120 mm and twice 40 mm; aluminium 3 mm thick
    middle = 106.0
    plastic = [(120.0, 0.0), (40.0, 83.0), (40.0, -83.0)]
    metal = [(3.0, 61.5), (3.0, -61.5), (3.0, 104.5), (3.0, -104.5)]

    def parts(layers, modulus):
        return [Part(modulus=modulus, width=75.0, depth=deep, centre=middle + off) for deep, off in layers]

    whole = parts(plastic, 1.0) + parts(metal, n)
    moment = 1e6
    return {
        "I_plastic": joined_stiffness(parts(plastic, 1.0)),
        "I_alu": joined_stiffness(parts(metal, 1.0)) * n,
        "I_T": joined_stiffness(whole),
        "s_alu": joined_stress(whole, modulus=n, height=2 * middle, moment=moment),
        "s_pl": joined_stress(whole, modulus=1.0, height=2 * middle - 3.0, moment=moment),
    }


@case("ST-02")
def _():
    # the numbers stand in the statement: 20 ft, 10 ft tributary, 4 in slab, 20 psf, 50 plf, 40 psf live
    dead = (150 * pcf * 4 * inch + 20 * psf) * 10 * ft + 50 * plf
    load = 1.2 * dead + 1.6 * 40 * psf * 10 * ft
    moment = formulas.simple_uniform_moment(line_load=load, span=20 * ft)
    needed = plastic_modulus_needed(moment=moment, yield_strength=50 * ksi, resistance=0.9)
    return {"wu": load / plf, "Mu": moment / (kip * ft), "Z": needed / inch**3}


@case("ST-03")
def _():
    names = ("W8x18", "W8x24", "W10x22", "W12x26")
    return {name: steel_moment(steel_shape(name), unbraced_length=0.0).allowed / (kip * ft) for name in names}


@case("ST-04")
def _():
    shape = steel_shape("W10x15")
    nominal = {feet: steel_moment(shape, unbraced_length=feet * ft).nominal for feet in (0, 6, 20)}
    return {f"phi_Mn_{feet}": 0.9 * moment / (kip * ft) for feet, moment in nominal.items()}


def _printed_shape(Fy, Z, S, **more):
    """A shape that has the printed properties, and whatever else about the parts that are not asked."""
    whole = {"J": 1.0, "rts": 1.0, "ho": 20.0, "ry": 1.0, "b_2t": 5.0, "h_tw": 20.0, "tw": 1.0, **more}
    return SteelSection(
        name="as printed",
        kind="shape",
        depth=whole.get("d", whole["ho"] + 1) * inch,
        flange_width=2 * whole["b_2t"] * inch,
        web=whole["tw"] * inch,
        flange=inch,
        section_modulus=S * inch**3,
        plastic_modulus=Z * inch**3,
        weak_inertia=inch**4,
        weak_radius=whole["ry"] * inch,
        web_ratio=whole["h_tw"],
        torsion_constant=whole["J"] * inch**4,
        warping_constant=(whole["rts"] ** 2 * S) ** 2 * inch**6,
        yield_strength=Fy * ksi,
    )


def _printed_moment(Lb=0.0, Cb=1.0, **printed):
    shape = _printed_shape(**printed)
    found = steel_moment(shape, unbraced_length=Lb * ft, moment_shape=Cb)
    low, high = (length / ft for length in brace_lengths(shape))
    return {
        "Mn": found.nominal / (kip * ft),
        "allowed": found.allowed / (kip * ft),
        "Lp": low,
        "Lr": high,
    }


for _name in ("ST-05", "ST-06", "ST-07", "ST-08"):
    case(_name)(_printed_moment)


@case("ST-09")
def _():
    shapes = [steel_shape(name) for name in ("W10x12", "W8x31", "W8x10", "W6x15", "W6x8.5")]
    held = {one.name: steel_moment(one, unbraced_length=0.0).nominal for one in shapes}
    return {one.name: 100 * held[one.name] / (one.yield_strength * one.plastic_modulus) for one in shapes}


@case("ST-10")
def _(Fy, Z, d, tw, h_tw, L):
    shape = _printed_shape(Fy=Fy, Z=Z, S=Z, d=d, tw=tw, h_tw=h_tw)
    counted = (1 + 0.75 + 0.75) / 3  # of the whole load, in equal parts
    moment = steel_moment(shape, unbraced_length=0.0).allowed
    return {
        "P_bending": 4 * moment / (L * ft) / counted / kip,
        "P_shear": 2 * steel_shear(shape)[0] / counted / kip,
    }


@case("ST-11")
def _(Fy, b_2t, h_tw):
    parts = lean_parts(_printed_shape(Fy=Fy, Z=1.0, S=1.0, b_2t=b_2t, h_tw=h_tw))
    found = {f"{part}_limit": greatest for part, (_, greatest) in parts.items()}
    return found | {f"{part}_compact": ratio <= greatest for part, (ratio, greatest) in parts.items()}


def _sizes(names):
    found = {}
    stock = {one.nominal: one for kind in ("dimension", "timber") for one in stock_sizes(kind, special_order=True)}
    for name in names:
        sides = {"width": stock[name].width, "depth": stock[name].depth}
        found[f"A_{name}"] = sections.rectangle_area(**sides) / inch**2
        found[f"S_{name}"] = sections.rectangle_section_modulus(**sides) / inch**3
        found[f"I_{name}"] = sections.rectangle_inertia(**sides) / inch**4
    return found


@case("SP-01")
def _():
    return _sizes(("2x4", "2x6", "4x4", "4x8"))


@case("SP-03")
def _():
    return _sizes(("2x8", "2x10", "2x12", "8x10"))


@case("SP-04")
def _(b, d):
    sides = {"width": b * inch, "depth": d * inch}
    return {
        "A": sections.rectangle_area(**sides) / inch**2,
        "I": sections.rectangle_inertia(**sides) / inch**4,
        "S": sections.rectangle_section_modulus(**sides) / inch**3,
    }
