"""What one fastener carries across its shank, its factors, and its check."""

from structlib.ground.refusals import BadInput, OutsideRule, check_choice, check_number
from structlib.ground.tables import table_rows
from structlib.ground.units import inch, lb  # noqa: F401 (for the examples)
from structlib.rules.check import Factor, least_verified
from structlib.rules.us.dowels.bearing_strength import is_thin, piece_bearing_strength
from structlib.rules.us.dowels.reach import _check_joint, bearing_length_in_main
from structlib.rules.us.dowels.records import LateralValue, _check_count, _check_fastener
from structlib.rules.us.dowels.words import MODES, MOISTURE, _scalar, _verified
from structlib.rules.us.dowels.yielding import reduction_terms, yield_modes


def lateral_value(fastener, *, main, side, shear="single"):
    """Return what one fastener carries across the joint, and the mode in which it yields.

    Parameters
    ----------
    fastener : Fastener
        The fastener [-].
    main : JoinedPiece
        Member that holds the point; in double shear the middle one [-].
    side : JoinedPiece
        Member under the head; in double shear the thinner of the two outer ones [-].
    shear : str
        ``single`` (two members) or ``double`` (three members, bolts only) [-].

    Returns
    -------
    LateralValue
        Reference value Z before any adjustment [-].

    Raises
    ------
    OutsideRule
        When the fastener does not reach far enough, or the case is outside the rule.

    Notes
    -----
    NDS 2018 12.3.1. Through the side grain, members in contact, fastener square to the face.

    Examples
    --------
    >>> from structlib.rules.us.dowels.fasteners import nail
    >>> from structlib.rules.us.dowels.pieces import wood_piece
    >>> fir = wood_piece(thickness=3.5 * inch, specific_gravity=0.5)
    >>> plate = wood_piece(thickness=1.5 * inch, specific_gravity=0.5)
    >>> found = lateral_value(nail("16d common"), main=fir, side=plate)
    >>> round(found.value / lb), found.mode
    (141, 'IV')
    """
    _check_joint(fastener, main, side)
    check_choice("shear", shear, MODES)
    if main.steel and side.steel:
        raise OutsideRule("at least one member must be wood; steel to steel goes by the steel rules")
    if main.steel and shear == "single":
        raise OutsideRule("in single shear the main member must be wood; give the steel as the side member")
    if shear == "double" and fastener.kind != "bolt":
        raise OutsideRule(
            f"double shear is here for bolts, which go through all members, got a {fastener.name}; "
            "count one shear plane"
        )
    strengths = {
        "main_bearing": piece_bearing_strength(main, diameter=fastener.diameter),
        "side_bearing": piece_bearing_strength(side, diameter=fastener.diameter),
    }
    lengths = {
        "main_length": bearing_length_in_main(fastener, main=main, side=side),
        "side_length": side.thickness,
    }
    modes = yield_modes(
        diameter=fastener.bending_diameter,
        bending_yield=fastener.bending_yield,
        shear=shear,
        reductions=reduction_terms(fastener, angle=max(main.angle, side.angle)),
        **strengths,
        **lengths,
    )
    mode = min(modes, key=modes.get)
    return LateralValue(
        value=modes[mode],
        mode=mode,
        modes=tuple(modes.items()),
        **strengths,
        **lengths,
        verified=least_verified([fastener.verified, _verified("bearing_small_coefficient")]),
    )


def moisture_factor(fastener, *, moisture):
    """Return the wet service factor on a lateral value.

    Parameters
    ----------
    fastener : Fastener
        The fastener [-].
    moisture : str
        ``dry`` (19 percent or less, always), ``wet in service``, or ``wet when built`` (dries later) [-].

    Returns
    -------
    tuple of (float, str)
        C_M and how it is known [-].

    Notes
    -----
    NDS 2018 Table 11.3.3.

    Examples
    --------
    >>> from structlib.rules.us.dowels.fasteners import bolt
    >>> moisture_factor(bolt(0.5 * inch), moisture="wet when built")[0]
    0.4
    """
    _check_fastener(fastener)
    check_choice("moisture", moisture, MOISTURE)
    if moisture == "dry":
        return 1.0, _verified("wet_in_service")
    size = "small" if is_thin(fastener.diameter) else "large"
    key = "wet_in_service" if moisture == "wet in service" else f"wet_when_built_{size}"
    return _scalar(key), _verified(key)


def group_action_factor(fastener, *, in_line):
    """Return the group action factor C_g, or refuse: fasteners in line with the load do not share it evenly.

    Parameters
    ----------
    fastener : Fastener
        The fastener [-].
    in_line : int
        Fasteners in one row along the direction of the load [-].

    Returns
    -------
    float
        1.0 where nothing is lost [-].

    Raises
    ------
    OutsideRule
        When bolts or lag screws stand in line: the formula for their uneven shares is not in this library.

    Notes
    -----
    NDS 2018 11.3.6: 1.0 under 1/4 in, and for a row of one.

    Examples
    --------
    >>> from structlib.rules.us.dowels.fasteners import nail
    >>> group_action_factor(nail("16d common"), in_line=6)
    1.0
    """
    _check_fastener(fastener)
    _check_count("fasteners in line with the load", in_line)
    if is_thin(fastener.diameter) or in_line == 1:
        return 1.0
    raise OutsideRule(
        f"{in_line} of a {fastener.name} in line with the load do not share it evenly, and the group action "
        "factor for that is not in this library; put one in each row, for example staggered"
    )


def adjusted_value(found, fastener, *, time_factor=1.0, moisture="dry", geometry=1.0, in_line=1):
    """Return the design value of one fastener in its place, with the factors that were used.

    Parameters
    ----------
    found : LateralValue
        Reference value [-].
    fastener : Fastener
        The fastener [-].
    time_factor : float
        Load duration factor C_D, 0.9 to 1.6 [-].
    moisture : str
        ``dry``, ``wet in service`` or ``wet when built`` [-].
    geometry : float
        Geometry factor C_delta, 0.5 to 1 [-].
    in_line : int
        Fasteners in one row along the direction of the load [-].

    Returns
    -------
    tuple of (float, tuple of structlib.rules.check.Factor)
        Adjusted value Z' and its factors [N, -].

    Raises
    ------
    OutsideRule
        When bolts stand in line.

    Notes
    -----
    NDS 2018 Table 11.3.1. Wood at ordinary temperature, through the side grain.

    Examples
    --------
    >>> from structlib.rules.us.dowels.fasteners import nail
    >>> from structlib.rules.us.dowels.pieces import wood_piece
    >>> fir = wood_piece(thickness=1.5 * inch, specific_gravity=0.5)
    >>> spike = nail("16d common")
    >>> found = lateral_value(spike, main=fir, side=fir)
    >>> round(adjusted_value(found, spike, time_factor=1.15)[0] / lb)
    162
    """
    if not isinstance(found, LateralValue):
        raise BadInput(f"a reference value is what lateral_value returns, got {type(found).__name__}")
    check_number(
        "load duration factor",
        time_factor,
        low=0.9,
        high=_scalar("time_factor_greatest"),
        hint="for example 1.15 for snow; impact does not count for fasteners",
    )
    check_number("geometry factor", geometry, low=0.5, high=1.0, hint="for example 1.0 at full distances")
    wet, wet_known = moisture_factor(fastener, moisture=moisture)
    together = group_action_factor(fastener, in_line=in_line)
    known = least_verified(row["verified"] for row in table_rows("us_fasteners_spacing"))
    used = (
        Factor(
            "C_D",
            time_factor,
            "how long the load lasts",
            "NDS 2018 11.3.2",
            _verified("time_factor_greatest"),
        ),
        Factor("C_M", wet, f"wood: {moisture}", "NDS 2018 Table 11.3.3", wet_known),
        Factor("C_g", together, "fasteners in line share unevenly", "NDS 2018 11.3.6", _verified("one_row_ratio")),
        Factor("C_delta", geometry, "distances to ends and each other", "NDS 2018 12.5.1", known),
    )
    return found.value * time_factor * wet * together * geometry, used
