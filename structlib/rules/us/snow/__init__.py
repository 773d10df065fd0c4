"""Snow on a roof (ASCE 7-16 chapter 7), and roof live load (IRC R301.6), on plan.

A ground snow load counts for nothing without its edition and basis, so every rule here takes a
``GroundSnow``. Not here: snow that slides from a higher roof, drifts at parapets and in valleys, ice at
eaves, curved and sawtooth roofs.
"""

from structlib.rules.us.snow.balanced import (
    EXPOSURES,
    RISK_CATEGORIES,
    ROUGHNESSES,
    SURFACES,
    THERMAL_CONDITIONS,
    exposure_factor,
    flat_roof_snow,
    minimum_low_slope_snow,
    roof_snow,
    slope_factor,
    sloped_roof_snow,
    thermal_change,
    thermal_factor,
)
from structlib.rules.us.snow.ground_loads import BASIS, EDITION, GroundSnow, ground_snow, snow_density, snow_depth_load
from structlib.rules.us.snow.moved import GableSnow, StepDrift, drift_height, step_drift, unbalanced_gable
