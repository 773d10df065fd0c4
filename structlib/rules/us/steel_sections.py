"""The factors of the steel rules, and which shapes are compact."""

from math import sqrt

from structlib.ground.refusals import BadInput, OutsideRule
from structlib.ground.steel import (  # noqa: F401  for callers
    SteelSection,
    check_yield,
    flat_plate,
    shape_names,
    steel_fact,
    steel_fact_known,
    steel_shape,
)
from structlib.rules.keyed import KeyedNumbers
from structlib.rules.us.inputs import check_size

_FACTORS = KeyedNumbers("us_steel_factors")


def steel_factor(key):
    """Return one factor of the steel rules in the library's own units.

    Parameters
    ----------
    key : str
        Key of a row in data/us_steel_factors.csv [-].

    Returns
    -------
    float
        The value [by row].

    Examples
    --------
    >>> steel_factor("bending_safety")
    1.67
    """
    return _FACTORS.number(key)


def steel_known(*keys):
    """Return how well the least known of several factors is known.

    Parameters
    ----------
    *keys : str
        Keys of rows in data/us_steel_factors.csv [-].

    Returns
    -------
    str
        A word such as ``seen`` [-].

    Examples
    --------
    >>> steel_known("bending_safety")
    'seen'
    """
    return _FACTORS.verified(*keys)


def lean_parts(section):
    """Return how lean the flange and the web are, beside what the rule for compact shapes allows.

    Parameters
    ----------
    section : SteelSection
        A rolled shape [-].

    Returns
    -------
    dict
        ``flange`` and ``web`` to (ratio, greatest); the web between its fillets [-].

    Notes
    -----
    AISC 360-16 Table B4.1b.

    Examples
    --------
    >>> [round(number, 2) for number in lean_parts(steel_shape("W8x18"))["flange"]]
    [7.95, 9.15]
    """
    check_steel_section(section)
    if section.kind != "shape":
        raise BadInput("flange and web are asked of a rolled shape, got a plate; for example steel_shape('W8x18')")
    root = sqrt(steel_fact("modulus") / section.yield_strength)
    return {
        "flange": (section.flange_width / (2 * section.flange), steel_factor("flange_compact") * root),
        "web": (section.web_ratio, steel_factor("web_compact") * root),
    }


def check_not_slender(section):
    """Refuse a shape whose flange buckles while still elastic or whose web is not compact.

    Parameters
    ----------
    section : SteelSection
        A rolled shape or a plate [-].

    Returns
    -------
    SteelSection
        The section, unchanged [-].

    Raises
    ------
    OutsideRule
        When a part of the shape is too lean.

    Notes
    -----
    AISC 360-16 Table B4.1b. Every shape listed passes: flanges that are not compact go by F3; slender ones
    (F3.2(b)) and webs that are not compact (F4, F5) are left out.

    Examples
    --------
    >>> check_not_slender(steel_shape("W8x31")).name
    'W8x31'
    """
    check_steel_section(section)
    if section.kind == "plate":
        return section
    greatest = {
        "flange": steel_factor("flange_noncompact") * sqrt(steel_fact("modulus") / section.yield_strength),
        "web": lean_parts(section)["web"][1],
    }
    for part, (ratio, _) in lean_parts(section).items():
        if ratio > greatest[part]:
            raise OutsideRule(
                f"the {part} of {section.name} is too lean for the rules here: {ratio:.2f} over "
                f"{greatest[part]:.2f} (AISC 360-16 Table B4.1b); take a heavier shape, for example W8x18"
            )
    return section


def check_steel_section(section):
    """Refuse anything but a steel section.

    Parameters
    ----------
    section : SteelSection
        What ``steel_shape`` or ``flat_plate`` returned [-].

    Returns
    -------
    SteelSection
        The section, unchanged [-].

    Examples
    --------
    >>> check_steel_section("W8x18")
    Traceback (most recent call last):
    ...
    structlib.ground.refusals.BadInput: a steel section is made by steel_shape or flat_plate, got str
    """
    if not isinstance(section, SteelSection):
        raise BadInput(f"a steel section is made by steel_shape or flat_plate, got {type(section).__name__}")
    check_size("depth", section.depth)
    return section
