"""Snow on a roof: worked examples, properties, places where curves meet, refusals."""

import math
import re

import numpy
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from tests_tally import record_published

from structlib.ground.refusals import BadInput, NotAsked, OutsideRule
from structlib.ground.tables import table_rows
from structlib.ground.units import deg, ft, inch, pcf, psf
from structlib.rules.us import snow
from structlib.rules.us.snow import (
    BASIS,
    EDITION,
    drift_height,
    exposure_factor,
    flat_roof_snow,
    ground_snow,
    minimum_low_slope_snow,
    roof_snow,
    slope_factor,
    sloped_roof_snow,
    snow_density,
    snow_depth_load,
    step_drift,
    thermal_change,
    thermal_factor,
    unbalanced_gable,
)

WELL_INSULATED = {"r_value": 40, "vented": False}


def ground(pg_psf):
    return ground_snow(pg_psf * psf, edition=EDITION, basis=BASIS)


def curve(rise, thermal, surface):
    """Slope factor, with the insulation that lets a warm slippery roof shed."""
    extra = WELL_INSULATED if thermal <= 1.0 and surface == "slippery" else {}
    return slope_factor(rise=rise, thermal=thermal, surface=surface, **extra)


def half_of_last_place(value):
    text = f"{value!r}".rstrip("0")
    return 0.5 * 10.0 ** -len(text.partition(".")[2])


# ---- the numbers worked out by hand -----------------------------------------------------------------------

POINTS = [row for row in table_rows("us_snow_checks") if row["group"] == "Cs point"]


@pytest.mark.parametrize("row", POINTS, ids=[row["item"] for row in POINTS])
def test_slope_factor_at_common_slopes(row):
    rise, thermal, surface = re.match(r"(\d+):12, Ct ([\d.]+), (\w+)", row["item"]).groups()
    found = curve(float(rise), float(thermal), surface)
    allowed = 0.0005
    assert abs(found - row["value"]) <= allowed + 1e-12
    angle = float(re.search(r"slope ([\d.]+) deg", row["note"]).group(1))
    assert math.degrees(math.atan(float(rise) / 12)) == pytest.approx(angle, abs=0.005)
    record_published("snow", row["verified"], abs(found - row["value"]) / allowed, row["item"])


EXAMPLES = {
    "worked example A": dict(pg=40, width=24, rise=6, thermal=1.1),
    "worked example B": dict(pg=30, width=28, rise=4, thermal=1.0),
    "worked example C": dict(pg=70, width=26, rise=7, thermal=1.1),
}


@pytest.mark.parametrize("name", EXAMPLES)
def test_worked_example(name):
    given_ = EXAMPLES[name]
    rows = [row for row in table_rows("us_snow_checks") if row["group"] == name]
    note = f"pg {given_['pg']} psf, W {given_['width']} ft, {given_['rise']}:12, Ce 1.0, Ct {given_['thermal']}"
    assert all(note in row["note"] for row in rows)
    snow_there = ground(given_["pg"])
    flat = flat_roof_snow(snow_there, exposure=1.0, thermal=given_["thermal"])
    factor = slope_factor(rise=given_["rise"], thermal=given_["thermal"], surface="other")
    balanced = sloped_roof_snow(flat_snow=flat, slope_factor=factor)
    gable = unbalanced_gable(
        snow_there,
        rise=given_["rise"],
        eave_to_ridge=given_["width"] * ft,
        simple_rafters=True,
        balanced=balanced,
    )
    found = {
        "slope": math.degrees(math.atan(given_["rise"] / 12)),
        "run per unit rise": 12 / given_["rise"],
        "flat roof snow": flat / psf,
        "slope factor": factor,
        "balanced snow": balanced / psf,
        "density": snow_density(snow_there) / pcf,
        "drift height": drift_height(snow_there, fetch=given_["width"] * ft) / ft,
        "windward": gable.windward / psf,
        "leeward surcharge intensity": gable.surcharge / psf,
        "leeward surcharge length from ridge": gable.surcharge_length / ft,
        "leeward near ridge, total": (gable.leeward + gable.surcharge) / psf,
        "leeward beyond": gable.leeward / psf,
    }
    assert set(found) == {row["item"] for row in rows}
    for row in rows:
        allowed = half_of_last_place(row["value"])
        off = abs(found[row["item"]] - row["value"])
        assert off <= allowed + 1e-9, (row["item"], found[row["item"]], row["value"])
        record_published("snow", row["verified"], off / allowed, f"{name} {row['item']}")


def test_worked_example_d_the_narrow_roof():
    (row,) = [row for row in table_rows("us_snow_checks") if row["group"] == "worked example D"]
    found = unbalanced_gable(ground(40), rise=6, eave_to_ridge=16 * ft, simple_rafters=True)
    assert found.leeward / psf == pytest.approx(row["value"], abs=1e-9)
    assert found.windward == found.surcharge == found.surcharge_length == 0
    record_published("snow", row["verified"], 0.0, row["item"])


def test_exposure_factors_are_those_of_the_transcribed_table():
    printed = {"B": (0.9, 1.0, 1.2), "C": (0.9, 1.0, 1.1), "D": (0.8, 0.9, 1.0)}
    for roughness, values in printed.items():
        found = [exposure_factor(roughness=roughness, exposure=word) for word in snow.EXPOSURES]
        assert tuple(one.value for one in found) == values
        assert {one.verified for one in found} == {"transcribed"}


def test_factors_say_how_they_are_known():
    assert {thermal_factor(word).verified for word in snow.THERMAL_CONDITIONS} == {"seen"}
    assert unbalanced_gable(ground(40), rise=6, eave_to_ridge=16 * ft, simple_rafters=True).verified == "seen"


# ---- an independent second way ----------------------------------------------------------------------------


def by_hand_drift(pg, lu):
    """The drift height by logarithms, in ft and psf."""
    return 0.43 * math.exp(math.log(lu) / 3 + math.log(pg + 10) / 4) - 1.5


@settings(max_examples=50)
@given(st.floats(5, 100), st.floats(20, 600))
def test_drift_height_by_logarithms(pg, lu):
    assert drift_height(ground(pg), fetch=lu * ft) / ft == pytest.approx(by_hand_drift(pg, lu), rel=1e-9)


@pytest.mark.parametrize("length", [0.5, 12, 19.9, 20])
def test_a_fetch_under_20_ft_counts_as_20_ft(length):
    """40 psf: 0.43 x 20^(1/3) x 50^(1/4) - 1.5 = 1.604 ft; it was refused."""
    assert drift_height(ground(40), fetch=length * ft) / ft == pytest.approx(1.604, abs=5e-4)
    both = drift_height(ground(40), fetch=numpy.array([length, 100.0]) * ft) / ft
    assert both == pytest.approx([by_hand_drift(40, 20), by_hand_drift(40, 100)])
    assert step_drift(ground(40), upper_length=length * ft, clear_height=9 * ft).height / ft == pytest.approx(
        1.604, abs=5e-4
    )
    gable = unbalanced_gable(ground(40), rise=6, eave_to_ridge=length * ft, simple_rafters=False, balanced=30.8 * psf)
    # 1.604 ft of 19.2 pcf over the root of 2
    assert gable.surcharge / psf == pytest.approx(1.604 * 19.2 / 2**0.5, abs=0.02)
    assert gable.windward / psf == pytest.approx(0.3 * 30.8)


def test_roof_snow_is_the_larger_of_the_balanced_and_the_least_of_a_low_slope():
    """40 psf, C_t 1.1, 12 in 12: 30.8 x (70 - 45) / (70 - 37.5); 20 psf at 2 in 12: 14, and 20 at least."""
    steep, clause, _ = roof_snow(ground(40), rise=12, exposure=1.0, thermal=1.1)
    assert steep / psf == pytest.approx(30.8 * 25 / 32.5) and "7.4-1" in clause
    flat, clause, _ = roof_snow(ground(20), rise=2, exposure=1.0, thermal=1.0)
    assert flat / psf == pytest.approx(20) and "7.3.4" in clause
    assert roof_snow(ground(20), rise=4, exposure=1.0, thermal=1.0)[0] / psf == pytest.approx(14)


@settings(max_examples=50)
@given(st.floats(10, 100), st.floats(20.5, 60), st.floats(0.5, 7))
def test_the_surcharge_holds_two_thirds_of_the_drift_triangle(pg, width, rise):
    """hd gamma / sqrt(S) over 8 hd sqrt(S) / 3 is 8/3 gamma hd^2, whatever the slope."""
    found = unbalanced_gable(
        ground(pg), rise=rise, eave_to_ridge=width * ft, simple_rafters=True, balanced=0.7 * pg * psf
    )
    height, density = by_hand_drift(pg, width), min(0.13 * pg + 14, 30)
    weight = found.surcharge / psf * found.surcharge_length / ft
    assert weight == pytest.approx(8 / 3 * density * height**2, rel=1e-9)


def test_flat_roof_snow_takes_symbols():
    import sympy

    pg, ce, ct = sympy.symbols("p_g C_e C_t", positive=True)
    found = flat_roof_snow(ground_snow(pg, edition=EDITION, basis=BASIS), exposure=ce, thermal=ct)
    assert sympy.simplify(found / (ce * ct * pg)) == pytest.approx(0.7)


# ---- properties -------------------------------------------------------------------------------------------

ROOFS = [(thermal, surface) for thermal in (1.0, 1.1, 1.2, 1.3) for surface in snow.SURFACES]


@settings(max_examples=60)
@given(st.floats(0, 59), st.floats(0, 1), st.sampled_from(ROOFS))
def test_a_steeper_roof_never_keeps_more_snow(rise, more, roof):
    lower, upper = curve(rise, *roof), curve(rise + more, *roof)
    assert 0 <= upper <= lower <= 1


@pytest.mark.parametrize("roof", ROOFS)
@pytest.mark.parametrize("degrees", [5, 10, 15, 30, 37.5, 45, 70])
def test_the_slope_factor_has_no_step_where_its_pieces_meet(roof, degrees):
    rises = [12 * math.tan(math.radians(degrees + off)) for off in (-1e-7, 1e-7)]
    assert curve(rises[0], *roof) == pytest.approx(curve(rises[1], *roof), abs=1e-7)


@pytest.mark.parametrize("surface, start", [("slippery", 5), ("other", 30)])
def test_the_warm_curve_leaves_one_at_its_start_and_is_zero_at_70_deg(surface, start):
    at = lambda degrees: curve(12 * math.tan(math.radians(degrees)), 1.0, surface)  # noqa: E731
    assert at(start) == pytest.approx(1, abs=1e-12)
    assert at(start + 1) < 1
    assert at(70) == pytest.approx(0, abs=1e-12)
    assert at(75) == 0


def test_a_colder_roof_keeps_at_least_as_much_and_a_slippery_one_at_most_as_much():
    rises = numpy.linspace(0, 40, 81)
    for surface in snow.SURFACES:
        warm, cool, cold = (curve(rises, thermal, surface) for thermal in (1.0, 1.1, 1.2))
        assert (warm <= cool + 1e-12).all() and (cool <= cold + 1e-12).all()
    for thermal in (1.0, 1.1, 1.2):
        assert (curve(rises, thermal, "slippery") <= curve(rises, thermal, "other") + 1e-12).all()


def test_an_array_of_slopes_is_each_slope_alone():
    rises = [2.0, 6.0, 9.0, 14.0]
    together = slope_factor(rise=numpy.array(rises), thermal=1.1, surface="other")
    assert list(together) == [slope_factor(rise=one, thermal=1.1, surface="other") for one in rises]


def test_a_warm_slippery_roof_without_insulation_takes_the_other_curve():
    other = slope_factor(rise=8, thermal=1.0, surface="other")
    for r_value, vented, sheds in (
        (29.9, False, False),
        (30, False, True),
        (19.9, True, False),
        (20, True, True),
    ):
        found = slope_factor(rise=8, thermal=1.0, surface="slippery", r_value=r_value, vented=vented)
        assert (found < other) is sheds


@settings(max_examples=50)
@given(st.floats(0, 100), st.floats(0, 5), st.sampled_from([0.8, 1.0, 1.1, 1.2]))
def test_more_ground_snow_is_never_less_on_the_roof(pg, more, importance):
    first, second = ground(pg), ground(pg + more)
    for load in (
        lambda one: flat_roof_snow(one, exposure=1.0, thermal=1.1, importance=importance),
        lambda one: minimum_low_slope_snow(one, rise=1, importance=importance),
        snow_density,
        lambda one: (
            unbalanced_gable(one, rise=5, eave_to_ridge=15 * ft, simple_rafters=True, importance=importance).leeward
        ),
    ):
        assert load(first) <= load(second) * (1 + 1e-12)


def test_the_least_low_slope_snow_has_no_step_at_20_psf():
    values = [minimum_low_slope_snow(ground(pg), rise=1) / psf for pg in (15, 20 - 1e-9, 20, 20 + 1e-9, 60)]
    assert values == pytest.approx([15, 20, 20, 20, 20])


def test_density_stops_at_30_pcf():
    assert snow_density(ground(16 / 0.13)) / pcf == pytest.approx(30)
    assert snow_density(ground(200)) / pcf == pytest.approx(30)


def test_insulating_an_old_roof_adds_snow():
    words = list(snow.THERMAL_CONDITIONS)
    values = [thermal_factor(word).value for word in words]
    assert values == sorted(values) and len(set(values)) == len(values)
    before, after, change = thermal_change(ground(40), before="heated", after="cold ventilated roof", exposure=1.0)
    assert after > before and change == pytest.approx(after / before - 1)


def test_the_narrow_roof_rule_ends_at_20_ft():
    narrow = unbalanced_gable(ground(40), rise=6, eave_to_ridge=20 * ft, simple_rafters=True)
    wide = unbalanced_gable(ground(40), rise=6, eave_to_ridge=20.01 * ft, simple_rafters=True, balanced=30.8 * psf)
    assert (narrow.windward, narrow.surcharge) == (0, 0)
    assert wide.windward / psf == pytest.approx(0.3 * 30.8) and wide.surcharge > 0


def test_depth_times_density():
    assert snow_depth_load(depth=24 * inch, density=20 * pcf) / psf == pytest.approx(40)


# ---- refusals ---------------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    "edition, basis, words",
    [
        ("ASCE 7-22", "reliability-targeted", "another basis"),
        ("ASCE 7-22", BASIS, "another basis"),
        ("ASCE 7-2022", BASIS, "another basis"),
        ("ASCE 7-05", BASIS, "which edition is in force"),
        (EDITION, "strength-level", "does not fit"),
    ],
)
def test_ground_snow_of_another_basis_is_refused(edition, basis, words):
    with pytest.raises(OutsideRule, match=words):
        ground_snow(40 * psf, edition=edition, basis=basis)


@pytest.mark.parametrize("missing", [{"edition": EDITION}, {"basis": BASIS}, {}])
def test_edition_and_basis_have_no_default(missing):
    with pytest.raises(TypeError):
        ground_snow(40 * psf, **missing)


@pytest.mark.parametrize("word", ["", " ", None, 7])
def test_an_empty_edition_or_basis_is_refused(word):
    with pytest.raises(BadInput, match="must be given"):
        ground_snow(40 * psf, edition=word, basis=BASIS)
    with pytest.raises(BadInput, match="must be given"):
        ground_snow(40 * psf, edition=EDITION, basis=word)


@pytest.mark.parametrize("value", [math.nan, math.inf, -1 * psf, "40 psf", None, 40, [], True])
def test_a_ground_snow_that_is_no_load_is_refused(value):
    with pytest.raises(BadInput):
        ground_snow(value, edition=EDITION, basis=BASIS)


def test_a_bare_number_is_no_ground_snow():
    for ask in (
        lambda: flat_roof_snow(40 * psf, exposure=1.0, thermal=1.0),
        lambda: snow_density(40 * psf),
        lambda: unbalanced_gable(40 * psf, rise=6, eave_to_ridge=16 * ft, simple_rafters=True),
    ):
        with pytest.raises(BadInput, match="edition and basis"):
            ask()


def test_a_ground_snow_made_past_the_door_is_refused():
    smuggled = snow.GroundSnow(64 * psf, "ASCE 7-22", "reliability-targeted")
    with pytest.raises(OutsideRule):
        flat_roof_snow(smuggled, exposure=1.0, thermal=1.0)


@pytest.mark.parametrize("rise", [0, 0.49, 7.01, 12])
def test_unbalanced_snow_outside_its_slopes_is_not_asked(rise):
    with pytest.raises(NotAsked, match="in 12 to 7 in 12"):
        unbalanced_gable(ground(40), rise=rise, eave_to_ridge=16 * ft, simple_rafters=True)


@pytest.mark.parametrize("rise", [0.5, 7])
def test_unbalanced_snow_at_the_ends_of_its_slopes_is_given(rise):
    assert unbalanced_gable(ground(40), rise=rise, eave_to_ridge=16 * ft, simple_rafters=True).leeward > 0


def refused(ask, kind=BadInput):
    with pytest.raises(kind):
        ask()


BAD = [math.nan, math.inf, -1, "6", None, [], True, 1e9]


@pytest.mark.parametrize("bad", BAD)
def test_bad_inputs_are_refused(bad):
    here = ground(40)
    refused(lambda: slope_factor(rise=bad, thermal=1.0, surface="other"))
    refused(lambda: slope_factor(rise=6, thermal=bad, surface="other"))
    refused(lambda: slope_factor(rise=6, thermal=1.0, surface="slippery", r_value=bad, vented=True))
    refused(lambda: flat_roof_snow(here, exposure=bad, thermal=1.0))
    refused(lambda: flat_roof_snow(here, exposure=1.0, thermal=bad))
    refused(lambda: drift_height(here, fetch=bad))
    refused(lambda: unbalanced_gable(here, rise=bad, eave_to_ridge=16 * ft, simple_rafters=True))
    refused(lambda: unbalanced_gable(here, rise=6, eave_to_ridge=bad, simple_rafters=True))
    refused(lambda: minimum_low_slope_snow(here, rise=bad))
    refused(lambda: snow_depth_load(depth=bad, density=20 * pcf))
    refused(lambda: step_drift(here, upper_length=bad, clear_height=9 * ft))


@pytest.mark.parametrize("word", ["", "A", None, 3, "fully  exposed"])
def test_unknown_words_are_refused(word):
    refused(lambda: exposure_factor(roughness=word, exposure="sheltered"))
    refused(lambda: exposure_factor(roughness="B", exposure=word))
    refused(lambda: thermal_factor(word))
    refused(lambda: slope_factor(rise=6, thermal=1.0, surface=word))


def test_what_the_rules_do_not_cover_is_refused_with_the_reason():
    refused(lambda: slope_factor(rise=6, thermal=1.05, surface="other"), OutsideRule)
    refused(lambda: minimum_low_slope_snow(ground(40), rise=12 * math.tan(15 * deg)), NotAsked)
    refused(lambda: step_drift(ground(40), upper_length=100 * ft, clear_height=2 * ft), OutsideRule)
    with pytest.raises(BadInput, match="give balanced"):
        unbalanced_gable(ground(40), rise=6, eave_to_ridge=24 * ft, simple_rafters=True)
    with pytest.raises(BadInput, match="r_value and vented"):
        slope_factor(rise=6, thermal=1.0, surface="slippery")
