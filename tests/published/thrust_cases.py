"""How each published case on rafter thrust is put to the library: its inputs in, every expected key out."""

from casebook import register

from structlib.ground.units import ft, lb, plf, psf
from structlib.mechanics import frames
from structlib.mechanics.plane_frame import solve_frame
from structlib.mechanics.rafter_pair import rafter_pair

CASES = {}
case = register(CASES)


@case("RT-02")
def _():
    return {f"m{part}": frames.raised_tie_factor(height_fraction=1 / part) for part in (3, 4, 5, 6, 10)}


@case("RT-04")
def _(w, L):
    pair = solve_frame(rafter_pair(
        building_span=L * ft, rise=6 * ft, left_load=w * plf, right_load=w * plf, held_by="ridge beam",
        axial_stiffness=6e7, bending_stiffness=4e11,
    ))  # fmt: skip
    ridge = frames.ridge_beam_load(line_load=w * psf, building_span=L * ft) / plf
    return {
        "ridge": ridge,
        "wall": pair.reactions["left"].up / lb,  # of a strip one foot wide
        "thrust": pair.reactions["ridge"].right / lb,
    }


@case("TH-01")
def _(w, L):
    return {
        f"t{rise}": frames.rafter_thrust(line_load=w * psf, building_span=L * ft, rise=rise / 12 * L / 2 * ft) / plf
        for rise in (3, 6, 12)
    }
