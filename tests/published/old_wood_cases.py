"""How each case on notches and floor vibration is put to the library: inputs in, every expected key out.

Single cases go by their name, the rows of a whole table by their topic. No expected value stands here.
"""

from casebook import register

from structlib.ground.units import inch, lb, psi
from structlib.mechanics import formulas
from structlib.mechanics.vibration import simple_span_frequency
from structlib.rules.ca.vibration import point_load_limit, vibration_span
from structlib.rules.us import notched_ends, notches

CASES, TABLES = {}, {}
case = register(CASES)


@case("NT-02")
def _(P, b, d, Fv):
    shear = formulas.simple_point_left_reaction(point_load=P * 1000.0, span=8000.0, load_position=4000.0)
    left = notched_ends.remaining_depth_for(
        shear=shear,
        shear_value=Fv,
        width=float(b),
        depth=float(d),
        power=notches.cut_limit("older_end_notch_shear_power"),
    )
    return {"V": shear / 1000, "dn": left}


@case("NT-03")
def _(b, d, dn, Fv):
    full = notched_ends.tension_notch_shear(shear_value=Fv * psi, width=b * inch, depth=d * inch, remaining=d * inch)
    cut = notched_ends.tension_notch_shear(shear_value=Fv * psi, width=b * inch, depth=d * inch, remaining=dn * inch)
    return {"V_full": full / lb, "V_notch": cut / lb, "ratio": cut / full}


@case("VB-01")
def _(EI, L, W):
    return {
        "f": simple_span_frequency(bending_stiffness=EI * lb * inch**2, line_weight=W * lb / (L * inch), span=L * inch)
    }


@case("VB-04")
def _():
    metres = {"l29": 2.9, "l4": 4.0, "l55": 5.5, "l7": 7.0, "l99": 9.9}
    return {key: point_load_limit(span=1000 * span) for key, span in metres.items()}


def _span(E, depth, spacing, tied):
    found = vibration_span(modulus=E, width=38.0, depth=float(depth), spacing=spacing, subfloor=15.5, tied=tied)
    return {"span": round(found.span / 1000, 2)}  # printed to the centimetre


TABLES["joist span governed by vibration"] = _span
