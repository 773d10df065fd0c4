"""Floors that do not annoy: the vibration span of house joists (NBC Note A-9.23.4.2.(2)).

The criterion limits how far one joist gives under 1 kN, and lets neighbours help by what ties them. It holds
for sawn joists 38 mm wide, of one simple span, with the subfloors and spacings of its table, and for nothing
else.
"""

import math
from dataclasses import dataclass

from structlib.ground.refusals import BadInput, OutsideRule, check_choice, check_number, is_symbolic
from structlib.ground.tables import table_rows
from structlib.rules.check import least_verified
from structlib.rules.keyed import KeyedNumbers

TIED = (
    "strapping",
    "bridging",
    "strapping and bridging",
    "furring",
    "furring and bridging",
    "concrete topping",
)
SUBFLOORS = (15.5, 19.0)
SPACINGS = (300.0, 400.0, 600.0)
FIXINGS = ("nailed", "glued")

_CLAUSE = "NBC 2020 Div. B Note A-9.23.4.2.(2)"
_number = KeyedNumbers("ca_vibration_numbers").number


@dataclass(frozen=True)
class VibrationSpan:
    """The longest span that meets the criterion [mm], and what made it.

    ``bare_span`` is the span at which one joist alone gives 2 mm under 1 kN, ``helped`` how many times longer
    the neighbours let it be, and ``short`` tells that the 3 m limit on that help decides.
    """

    span: float
    bare_span: float
    helped: float
    short: bool
    clause: str
    verified: str


def bare_span(*, bending_stiffness):
    """Span at which one joist alone sags 2 mm under 1 kN at mid-span.

    Parameters
    ----------
    bending_stiffness : float
        EI of the joist, without any help of the floor [N*mm2].

    Returns
    -------
    float
        Span [mm].

    Notes
    -----
    NBC 2020 Note A-9.23.4.2.(2): P L^3 / (48 EI) = 2 mm at P = 1 kN.

    Examples
    --------
    >>> round(bare_span(bending_stiffness=11000 * 38 * 235**3 / 12))
    3514
    """
    check_number(
        "bending stiffness",
        bending_stiffness,
        low=0,
        high=1e20,
        low_allowed=False,
        hint="for example 11000 * 38 * 235**3 / 12",
    )
    cube = 48 * _number("point_sag") * bending_stiffness / _number("point_load")
    return cube ** (1 / 3)


def vibration_span(*, modulus, width, depth, spacing, subfloor, tied, fixing="nailed"):
    """Longest span of sawn floor joists that meets the criterion.

    Parameters
    ----------
    modulus : float
        Modulus of elasticity of the wood [MPa].
    width : float
        Width of one joist; the rule is for 38 mm [mm].
    depth : float
        Depth of the joist, 89 to 286 [mm].
    spacing : float
        300, 400 or 600 on center [mm].
    subfloor : float
        Thickness of the panel subfloor: 15.5 or 19.0 [mm].
    tied : str
        What ties the joists to each other: 'strapping' (a ceiling board fixed directly to them counts as
        that), 'bridging', 'strapping and bridging', 'furring', 'furring and bridging' or 'concrete topping'
        [-].
    fixing : str
        Subfloor 'nailed', or 'glued' (nailed and glued on site) [-].

    Returns
    -------
    VibrationSpan
        The span and what made it [mm].

    Raises
    ------
    OutsideRule
        When the joist, spacing or subfloor is not one of the rule's.

    Notes
    -----
    NBC 2020 Note A-9.23.4.2.(2). The form of the equation, ln K = A - B ln(Si/S184) + G, was recalled and
    agrees with printed spans; its constants were read. They are printed to two digits: the span tables, made
    with more, give up to 3 cm more for bridging alone.

    Examples
    --------
    >>> found = vibration_span(modulus=12500, width=38, depth=235, spacing=400, subfloor=15.5,
    ...     tied="strapping")
    >>> round(found.span / 1000, 2)
    4.34
    """
    check_choice("tie between joists", tied, TIED)
    check_choice("fixing of the subfloor", fixing, FIXINGS)
    _one_size("modulus", modulus, 1000, 30000, "for example 11000")
    _one_size("joist width", width, 1, 1000, "for example 38")
    _one_size("joist depth", depth, 1, 2000, "for example 235")
    _refuse_outside(width, depth, spacing, subfloor)
    bare = bare_span(bending_stiffness=modulus * width * depth**3 / 12)
    standard, short_span = bare * _number("standard_depth") / depth, _number("short_span")
    a, b = _row("A", tied=tied, subfloor_mm=subfloor, spacing_mm=spacing), _row("B", tied=tied)
    over = _row("G", fixing="nailed" if fixing == "nailed" else "glued over 3 m")
    helped = math.exp(a["value"] - b["value"] * math.log(bare / standard) + over["value"])
    short = bare * helped <= short_span
    if short:
        up_to = _row("G", fixing="nailed" if fixing == "nailed" else "glued up to 3 m")
        # the help K3 that gives exactly 3 m: ln K3 = A - B ln((3 m / K3) / S184) + G, solved for K3
        helped = math.exp(
            (a["value"] - b["value"] * math.log(short_span / standard) + up_to["value"]) / (1 - b["value"])
        )
        over = up_to
    known = least_verified([a["verified"], b["verified"], over["verified"], "recalled-agrees"])
    return VibrationSpan(bare * helped, bare, helped, short, _CLAUSE, known)


def _one_size(name, value, low, high, hint):
    if is_symbolic(value) or getattr(value, "ndim", 0) or isinstance(value, (list, tuple)):
        raise BadInput(f"{name} must be one number, got {type(value).__name__}; {hint}")
    check_number(name, value, low=low, high=high, shown=lambda mm: f"{mm:g}", hint=hint)


def _refuse_outside(width, depth, spacing, subfloor):
    wide, least, most = _number("joist_width"), _number("least_depth"), _number("greatest_depth")
    if abs(width - wide) > 0.5 or not least - 0.5 <= depth <= most + 0.5:
        raise OutsideRule(
            f"the vibration rule is for sawn joists {wide:g} mm wide and {least:g} to {most:g} mm deep, got "
            f"{width:g} mm by {depth:g} mm; "
            "for other members look at the frequency, or ask an engineer"
        )
    for name, value, accepted in (("spacing", spacing, SPACINGS), ("subfloor", subfloor, SUBFLOORS)):
        if value not in accepted:
            raise OutsideRule(
                f"the vibration rule has no values for a {name} of {value!r} mm; "
                f"it has {', '.join(f'{one:g}' for one in accepted)}"
            )


def _row(constant, **cells):
    for row in table_rows("ca_vibration"):
        if row["constant"] == constant and all(row[name] == cell for name, cell in cells.items()):
            return row
    raise OutsideRule(f"the vibration rule has no constant {constant} for {cells}")


def point_load_limit(*, span):
    """Sag under 1 kN at mid-span that a floor of joists may show, by its span.

    Parameters
    ----------
    span : float
        Span of the floor, 1 m to 20 m [mm].

    Returns
    -------
    float
        Sag limit [mm].

    Notes
    -----
    From memory of the criterion behind NBC Note A-9.23.4.2.: 2 mm below 3 m, 8/L^1.3 up to 5.5 m, 2.55/L^0.63
    up to 9.9 m, 0.6 mm beyond (L in metres). It is the sag of the whole floor, in which neighbours help.
    Recalled.

    Examples
    --------
    >>> round(point_load_limit(span=4000.0), 3)
    1.32
    """
    _one_size("span", span, 1000, 20000, "for example 4000.0")
    metres = span / 1000
    if span < _number("limit_short_to"):
        return _number("limit_short")
    if span < _number("limit_middle_to"):
        return _number("limit_middle") / metres ** _number("limit_middle_power")
    if span < _number("limit_long_to"):
        return _number("limit_long") / metres ** _number("limit_long_power")
    return _number("limit_longest")
