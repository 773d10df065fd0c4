"""How each case on snow is put to the library: its own inputs in, every expected key out.

No expected value stands here.
"""

from casebook import register

from structlib.ground.units import ft, pcf, psf
from structlib.rules.us import snow

CASES = {}
case = register(CASES)


def ground(pg):
    return snow.ground_snow(pg * psf, edition=snow.EDITION, basis=snow.BASIS)


@case("SN-01")
def _(pg, Ce, Ct, I):  # noqa: E741 - the case's own name
    flat = snow.flat_roof_snow(ground(pg), exposure=Ce, thermal=Ct, importance=I) / psf
    least = snow.minimum_low_slope_snow(ground(pg), rise=0, importance=I) / psf
    return {"pf": flat, "p_min": least, "governs": max(flat, least)}


@case("SN-03")
def _(Ce, Ct, Is):
    return {
        f"p{pg}": snow.flat_roof_snow(ground(pg), exposure=Ce, thermal=Ct, importance=Is) / psf for pg in (30, 40, 50)
    }


@case("SN-05")
def _(lu, pg):
    # the case gives no step; the wall stands well above the drift
    found = snow.step_drift(ground(pg), upper_length=lu * ft, clear_height=12 * ft)
    return {
        "hd": found.height / ft,
        "gamma": found.density / pcf,
        "pd": found.greatest_load / psf,
        "w": found.width / ft,
    }


@case("SN-07")
def _(pg):
    found = snow.unbalanced_gable(ground(pg), rise=6, eave_to_ridge=20 * ft, simple_rafters=True)
    assert found.surcharge == 0
    return {"leeward": found.leeward / psf, "windward": found.windward / psf}
