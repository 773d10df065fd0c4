"""The roof snow of the page beside the ground snow it comes from: do the two numbers agree?"""

from structlib.ground.showing import show
from structlib.rules.check import least_verified
from structlib.rules.us import snow

EXPOSURES = (
    ("houses or trees", "partially exposed"),
    ("taller ones close by", "sheltered"),
    ("open to all winds", "fully exposed"),
)
BELOW = (
    ("a heated house", "heated"),
    ("vented, R 25 or more", "cold ventilated roof"),
    ("no heat", "unheated"),
)
# a load that the page shows, rounded to three digits, may be typed back
_ROUNDING = 0.005


def asked_snow(values):
    """Return the roof snow that the standard makes of the ground snow, and how, or None without ground snow.

    Parameters
    ----------
    values : dict
        Values of the controls of the roof page [any].

    Returns
    -------
    tuple of (float, str) or None
        Load on plan, and its factors, clause and how it is known [MPa, -].

    Examples
    --------
    >>> from structlib.ground.units import psf
    >>> page = {"ground": 40 * psf, "rise": 6, "exposed": "partially exposed", "below": "heated"}
    >>> load, how = asked_snow(page)
    >>> round(load / psf, 6), how.split("; ")[1]
    (28.0, 'C_e 1, C_t 1')
    """
    if not values["ground"]:
        return None
    ground = snow.ground_snow(values["ground"], edition=snow.EDITION, basis=snow.BASIS)
    # the roughness with the greatest factors; a surface that holds its snow
    wind = snow.exposure_factor(roughness="B", exposure=values["exposed"])
    warmth = snow.thermal_factor(values["below"])
    load, clause, rule = snow.roof_snow(
        ground, rise=values["rise"], exposure=wind.value, thermal=warmth.value
    )
    known = least_verified([rule, wind.verified, warmth.verified])
    return load, f"{clause}, {known}; C_e {wind.value:g}, C_t {warmth.value:g}"


def question(values, system):
    """Return the question that stands instead of every share where the roof snow is too small, or "".

    Parameters
    ----------
    values : dict
        Values of the controls of the roof page [any].
    system : str
        Units of the reader: 'us' or 'metric' [-].

    Returns
    -------
    str
        The question [-].

    Examples
    --------
    >>> from structlib.ground.units import psf
    >>> page = {"ground": 40 * psf, "rise": 6, "exposed": "partially exposed", "below": "heated"}
    >>> question(page | {"snow": 30 * psf}, "us")
    ''
    >>> question(page | {"snow": 5 * psf}, "us")[:77]
    'Which snow is right? 5 psf on the roof is less than the 28 psf that ASCE 7-16'
    """
    asked = asked_snow(values)
    if asked is None or values["snow"] >= asked[0] * (1 - _ROUNDING):
        return ""
    told = lambda load: show(load, "area load", system)  # noqa: E731
    return (
        f"Which snow is right? {told(values['snow'])} on the roof is less than the {told(asked[0])} that "
        f"{snow.EDITION} makes of {told(values['ground'])} on the ground. No share is shown until the two "
        "agree: ask the building department for both. Where no snow is asked for, type 0 for both. A slippery roof "
        "may keep less; that is for an engineer."
    )


def asked_row(values, system):
    """Return the row that sets the roof snow beside what the ground snow asks, or none without ground snow.

    Parameters
    ----------
    values : dict
        Values of the controls of the roof page [any].
    system : str
        Units of the reader: 'us' or 'metric' [-].

    Returns
    -------
    list of tuple of str
        What, asked, can give, share, loads and rule [-].
    """
    asked = asked_snow(values)
    if asked is None:
        return []
    load, how = asked
    return [("roof snow, at least", show(load, "area load", system), "", "", how)]
