"""How each worked example read since is put to the library: its own inputs in, every expected key out.

No expected value stands here. Examples of steel read with these are among the composite cases. Left out, because the
library has no such rule: resistances and load factors by Canada's O86 and NBC (a stud, a joist, three beams, bearing,
decking, load duration, a load combination), tear-out of a row of bolts along the load (NDS Appendix E; such rows are
refused), and a square tube of 12 by 10 in with slender walls (AISC 360 E7; not a post of the table).
"""

from casebook import register

from structlib.ground.engineered import user_lvl
from structlib.ground.lumber import find_material
from structlib.ground.sections import rectangle_area, rectangle_inertia, rectangle_section_modulus
from structlib.ground.units import ft, inch, kPa, lb, m, pcf, psf, psi
from structlib.mechanics import formulas
from structlib.rules.us import bending, dowels, snow, stability
from structlib.rules.us.column_stability import column_stability_factor
from structlib.rules.us.columns import column_capacity

CASES = {}
case = register(CASES)


@case("NDS-01")
def _(b, d, lu, Fb, Emin):
    wood = find_material("Douglas Fir-Larch", "Select Structural")
    assert (round(wood.bending / psi), round(wood.modulus_stability / psi)) == (Fb, Emin)
    named = "single span, point load at midspan"
    le = stability.beam_effective_length(unbraced_length=float(lu), depth=d, case=named)
    slender = stability.slenderness_ratio(effective_length=le, depth=d, width=b)
    factor = stability.beam_stability_factor(
        unbraced_length=float(lu), depth=d, width=b, bending_value=Fb, modulus_stability=Emin, case=named
    )
    return {
        "A": rectangle_area(width=b, depth=d),
        "S": rectangle_section_modulus(width=b, depth=d),
        "I": rectangle_inertia(width=b, depth=d),
        "le": float(le),
        "RB": float(slender),
        "FbE": float(stability.critical_buckling_value(modulus_stability=Emin, slenderness=slender)),
        "CL": float(factor),
        "Fb_adj": float(factor) * Fb,
    }


@case("NDS-05")
def _(b, d, s, dead, live, older_shear, older_shear_factor, seat):
    """Each span from what one foot of span asks: moment goes by its square, sag over span by its cube."""
    wood = find_material("Hem-Fir", "No.1")
    size = dict(width=b * inch, depth=d * inch)
    modulus, inertia = rectangle_section_modulus(**size), rectangle_inertia(**size)
    value = wood.bending * float(bending.size_factor(wood, **size)[0])
    value *= float(bending.repetitive_factor(wood, sharing_members=3))
    whole, part = (load * psf * s * inch for load in (dead + live, live))
    end = formulas.simple_uniform_reaction(line_load=whole, span=1.0)
    one = formulas.rectangle_shear_stress(shear=1.0, **size)
    seated = wood.bearing * b * inch * seat * inch

    def by_sag(load):
        sag = formulas.simple_uniform_deflection(line_load=load, span=1.0, bending_stiffness=wood.modulus * inertia)
        return (1 / (360 * sag)) ** (1 / 3) / ft

    return {
        "S": modulus / inch**3,
        "I": inertia / inch**4,
        "Fb": value / psi,
        "bending": (value * modulus / formulas.simple_uniform_moment(line_load=whole, span=1.0)) ** 0.5 / ft,
        "shear": older_shear * older_shear_factor * psi / one / end / ft,
        "bearing": seated / end / ft,
        "sag_live": by_sag(part),
        "sag_all": by_sag(whole),
    }


@case("NDS-07")
def _(Fc, CF, Emin, l, c):  # noqa: E741 - the case's own name
    wood = find_material("Douglas Fir-Larch", "No.1")
    assert (round(wood.compression / psi), round(wood.modulus_stability / psi)) == (Fc, Emin)
    found = column_capacity(wood, ply_width=1.5 * inch, depth=5.5 * inch, height=l * inch, plies=3, time_factor=1.0)
    assert abs(found.crushing_value / psi - Fc * CF) < 1e-6
    solid = column_stability_factor(ratio=found.critical_width / found.crushing_value, shape=c)
    return {"CP_weak": found.factor_width, "CP_weak_no_Kf": float(solid)}


@case("NDS-09")
def _(E):
    planks = user_lvl(
        bending=2900 * psi, shear=285 * psi, bearing=750 * psi, modulus=E * psi, depth_exponent=0.1,
        name="LVL as printed", source="stress table of one maker",
    )  # fmt: skip
    return {"Emin": planks.modulus_stability / psi}


@case("JP-11")
def _(D, L, ts, G):
    value = dowels.nail_withdrawal(specific_gravity=G, diameter=D * inch) / (lb / inch)
    return {"W": value, "W_total": value * (L - ts)}


@case("JP-15")
def _(D, L, ts, tm, G, Fyb):
    nail = dowels.nail_of_size(diameter=D * inch, length=L * inch)
    assert abs(nail.bending_yield / psi - Fyb) < 1e-6
    main, side = (dowels.wood_piece(thickness=thick * inch, specific_gravity=G) for thick in (tm, ts))
    found = dowels.lateral_value(nail, main=main, side=side)
    return {"Z": found.value / lb, "IIIs": float(found.mode == "IIIs")}


def _ground(pg):
    return snow.ground_snow(pg * psf, edition=snow.EDITION, basis=snow.BASIS)


@case("LS-01")
def _(pg, Ce, Ct, Is, rise):
    return {
        "pf": snow.flat_roof_snow(_ground(pg), exposure=Ce, thermal=Ct, importance=Is) / psf,
        "pm": snow.minimum_low_slope_snow(_ground(pg), rise=rise, importance=Is) / psf,
    }


@case("LS-03")
def _(pg, Is, lu, hc):
    found = snow.step_drift(_ground(pg), upper_length=lu * ft, clear_height=hc * ft, importance=Is)
    high, dense = found.height / ft, found.density / pcf
    assert abs(found.greatest_load / psf - high * dense) < 1e-9
    return {
        "gamma": dense,
        "hd": high,
        "w": found.width / ft,
        "pd": round(high, 1) * round(dense),
    }


def _simple(load, span):
    """Moment and end reaction of an even load, in kN m and kN, from kN/m and m."""
    return {
        "w": load,
        "M": formulas.simple_uniform_moment(line_load=load, span=span),
        "V": formulas.simple_uniform_reaction(line_load=load, span=span),
    }


def _sag_at_unit(load, span):
    """Sag in mm at a bending stiffness of 1 N mm2; kN/m are N/mm."""
    return formulas.simple_uniform_deflection(line_load=load, span=span * m, bending_stiffness=1.0)


@case("CA-03")
def _(wD, wL, kD, kL, L, limit_all, limit_live):
    asked = {
        "EI_all": _sag_at_unit(wD + wL, L) * limit_all / (L * m),
        "EI_live": _sag_at_unit(wL, L) * limit_live / (L * m),
    }
    return _simple(kD * wD + kL * wL, L) | asked


@case("CA-07")
def _(D, Lq, kD, kL, s, L, E, I, limit):  # noqa: E741 - the case's own name
    line = (D * kPa + Lq * kPa) * s * m
    return _simple((kD * D + kL * Lq) * s, L) | {"sag": _sag_at_unit(line, L) / (E * I), "limit": L * m / limit}


@case("CA-13")
def _(b, d, E):
    return {"EI": E * rectangle_inertia(width=b, depth=d)}
