"""The yield modes of a dowel-type joint and their reduction terms (NDS 2018 12.3.1)."""

from structlib.ground.refusals import OutsideRule, check_choice
from structlib.ground.roots import pi_for, square_root
from structlib.ground.units import inch
from structlib.rules.us.dowels.bearing_strength import is_thin
from structlib.rules.us.dowels.pieces import _check_angle
from structlib.rules.us.dowels.records import _check_fastener
from structlib.rules.us.dowels.words import _SIZE_SLACK, MODES, _one_number, _scalar
from structlib.rules.us.inputs import check_amount, check_size


def reduction_small(*, diameter):
    """Return the reduction term K_D of a thin fastener, the same for every mode.

    Parameters
    ----------
    diameter : float
        Diameter that bends, under 1/4 in [mm].

    Returns
    -------
    float
        K_D [-].

    Raises
    ------
    OutsideRule
        When the diameter is 1/4 in or more.

    Notes
    -----
    NDS 2018 Table 12.3.1B.

    Examples
    --------
    >>> reduction_small(diameter=0.162 * inch), round(reduction_small(diameter=0.192 * inch), 6)
    (2.2, 2.42)
    """
    _one_number("diameter", diameter)
    if not is_thin(diameter):
        raise OutsideRule(
            f"K_D is for fasteners thinner than 1/4 in, got {diameter / inch:g} in; thicker ones have a "
            "term for each mode"
        )
    if diameter <= _scalar("reduction_small_low_diameter") * (1 + _SIZE_SLACK):
        return _scalar("reduction_small_low")
    return _scalar("reduction_small_slope") * diameter / inch + _scalar("reduction_small_constant")


def reduction_by_angle(*, angle):
    """Return K_theta, which lowers the value of thick fasteners where the load crosses the grain.

    Parameters
    ----------
    angle : float, numpy.ndarray or sympy expression
        Greatest angle between load and grain in any member [rad].

    Returns
    -------
    float, numpy.ndarray or sympy expression
        K_theta, 1 along the grain and 1.25 across it [-].

    Notes
    -----
    NDS 2018 Table 12.3.1B.

    Examples
    --------
    >>> from structlib.ground.units import deg
    >>> round(reduction_by_angle(angle=90 * deg), 6)
    1.25
    """
    _check_angle(angle)
    return 1 + _scalar("reduction_angle") * angle / (pi_for(angle) / 2)


def reduction_terms(fastener, *, angle):
    """Return the reduction term R_d of each mode, by which the yield value is brought down to a design value.

    Parameters
    ----------
    fastener : Fastener
        The fastener [-].
    angle : float
        Greatest angle between load and grain in any member [rad].

    Returns
    -------
    dict
        Mode to R_d [-].

    Notes
    -----
    NDS 2018 Table 12.3.1B; small lag screws (root under 1/4 in) take K_D x K_theta.

    Examples
    --------
    >>> from structlib.rules.us.dowels.fasteners import bolt
    >>> reduction_terms(bolt(0.5 * inch), angle=0.0)["IV"]
    3.2
    """
    _check_fastener(fastener)
    turned = reduction_by_angle(angle=angle)
    if is_thin(fastener.diameter):
        return dict.fromkeys(MODES["single"], reduction_small(diameter=fastener.diameter))
    if is_thin(fastener.bending_diameter):
        return dict.fromkeys(MODES["single"], reduction_small(diameter=fastener.bending_diameter) * turned)
    first, second, others = (_scalar(key) * turned for key in ("reduction_I", "reduction_II", "reduction_III_IV"))
    return {"Im": first, "Is": first, "II": second, "IIIm": others, "IIIs": others, "IV": others}


def mode_I(*, diameter, length, bearing, reduction):
    """Return the value of mode Im or Is: one member crushes along the whole fastener.

    Parameters
    ----------
    diameter : float, numpy.ndarray or sympy expression
        Diameter of the fastener [mm].
    length : float, numpy.ndarray or sympy expression
        Bearing length in that member [mm].
    bearing : float, numpy.ndarray or sympy expression
        Dowel bearing strength of that member [MPa].
    reduction : float, numpy.ndarray or sympy expression
        Reduction term R_d [-].

    Returns
    -------
    float, numpy.ndarray or sympy expression
        Value by shear plane (of Im: by fastener) [N].

    Notes
    -----
    NDS 2018 Eq. 12.3-1, 12.3-2, 12.3-7, 12.3-8.

    Examples
    --------
    >>> mode_I(diameter=12.0, length=40.0, bearing=20.0, reduction=4.0)
    2400.0
    """
    _check_yield_inputs(diameter=diameter, lengths=(length,), stresses=(bearing,), reduction=reduction)
    return diameter * length * bearing / reduction


def mode_II(*, diameter, main_length, side_length, main_bearing, side_bearing, reduction):
    """Return the value of mode II: the straight fastener tilts and crushes both members.

    Parameters
    ----------
    diameter : float, numpy.ndarray or sympy expression
        Diameter of the fastener [mm].
    main_length : float, numpy.ndarray or sympy expression
        Bearing length in the main member [mm].
    side_length : float, numpy.ndarray or sympy expression
        Bearing length in the side member [mm].
    main_bearing : float, numpy.ndarray or sympy expression
        Dowel bearing strength of the main member [MPa].
    side_bearing : float, numpy.ndarray or sympy expression
        Dowel bearing strength of the side member [MPa].
    reduction : float, numpy.ndarray or sympy expression
        Reduction term R_d [-].

    Returns
    -------
    float, numpy.ndarray or sympy expression
        Value by shear plane [N].

    Notes
    -----
    NDS 2018 Eq. 12.3-3.

    Examples
    --------
    >>> round(mode_II(diameter=12.0, main_length=40.0, side_length=40.0, main_bearing=20.0, side_bearing=20.0,
    ...               reduction=4.0), 2)
    994.11
    """
    _check_yield_inputs(
        diameter=diameter,
        lengths=(main_length, side_length),
        stresses=(main_bearing, side_bearing),
        reduction=reduction,
    )
    strengths, lengths = main_bearing / side_bearing, main_length / side_length
    under_root = strengths + 2 * strengths**2 * (1 + lengths + lengths**2) + lengths**2 * strengths**3
    k1 = (square_root(under_root) - strengths * (1 + lengths)) / (1 + strengths)
    return k1 * diameter * side_length * side_bearing / reduction


def mode_III_main(*, diameter, main_length, main_bearing, side_bearing, bending_yield, reduction):
    """Return the value of mode IIIm: the fastener bends in the side member and crushes the main member.

    Parameters
    ----------
    diameter : float, numpy.ndarray or sympy expression
        Diameter of the fastener [mm].
    main_length : float, numpy.ndarray or sympy expression
        Bearing length in the main member [mm].
    main_bearing : float, numpy.ndarray or sympy expression
        Dowel bearing strength of the main member [MPa].
    side_bearing : float, numpy.ndarray or sympy expression
        Dowel bearing strength of the side member [MPa].
    bending_yield : float, numpy.ndarray or sympy expression
        Bending yield strength of the fastener [MPa].
    reduction : float, numpy.ndarray or sympy expression
        Reduction term R_d [-].

    Returns
    -------
    float, numpy.ndarray or sympy expression
        Value by shear plane [N].

    Notes
    -----
    NDS 2018 Eq. 12.3-4.

    Examples
    --------
    >>> round(mode_III_main(diameter=12.0, main_length=40.0, main_bearing=20.0, side_bearing=20.0,
    ...                     bending_yield=300.0, reduction=4.0), 2)
    1270.75
    """
    _check_yield_inputs(
        diameter=diameter,
        lengths=(main_length,),
        stresses=(main_bearing, side_bearing, bending_yield),
        reduction=reduction,
    )
    strengths = main_bearing / side_bearing
    bent = 2 * bending_yield * (1 + 2 * strengths) * diameter**2 / (3 * main_bearing * main_length**2)
    k2 = -1 + square_root(2 * (1 + strengths) + bent)
    return k2 * diameter * main_length * main_bearing / ((1 + 2 * strengths) * reduction)


def mode_III_side(*, diameter, side_length, main_bearing, side_bearing, bending_yield, reduction):
    """Return the value of mode IIIs: the fastener bends in the main member and crushes the side member.

    Parameters
    ----------
    diameter : float, numpy.ndarray or sympy expression
        Diameter of the fastener [mm].
    side_length : float, numpy.ndarray or sympy expression
        Bearing length in the side member [mm].
    main_bearing : float, numpy.ndarray or sympy expression
        Dowel bearing strength of the main member [MPa].
    side_bearing : float, numpy.ndarray or sympy expression
        Dowel bearing strength of the side member [MPa].
    bending_yield : float, numpy.ndarray or sympy expression
        Bending yield strength of the fastener [MPa].
    reduction : float, numpy.ndarray or sympy expression
        Reduction term R_d [-].

    Returns
    -------
    float, numpy.ndarray or sympy expression
        Value by shear plane [N].

    Notes
    -----
    NDS 2018 Eq. 12.3-5 and 12.3-9.

    Examples
    --------
    >>> round(mode_III_side(diameter=12.0, side_length=40.0, main_bearing=20.0, side_bearing=20.0,
    ...                     bending_yield=300.0, reduction=4.0), 2)
    1270.75
    """
    _check_yield_inputs(
        diameter=diameter,
        lengths=(side_length,),
        stresses=(main_bearing, side_bearing, bending_yield),
        reduction=reduction,
    )
    strengths = main_bearing / side_bearing
    bent = 2 * bending_yield * (2 + strengths) * diameter**2 / (3 * main_bearing * side_length**2)
    k3 = -1 + square_root(2 * (1 + strengths) / strengths + bent)
    return k3 * diameter * side_length * main_bearing / ((2 + strengths) * reduction)


def mode_IV(*, diameter, main_bearing, side_bearing, bending_yield, reduction):
    """Return the value of mode IV: the fastener bends in both members; how thick they are does not count.

    Parameters
    ----------
    diameter : float, numpy.ndarray or sympy expression
        Diameter of the fastener [mm].
    main_bearing : float, numpy.ndarray or sympy expression
        Dowel bearing strength of the main member [MPa].
    side_bearing : float, numpy.ndarray or sympy expression
        Dowel bearing strength of the side member [MPa].
    bending_yield : float, numpy.ndarray or sympy expression
        Bending yield strength of the fastener [MPa].
    reduction : float, numpy.ndarray or sympy expression
        Reduction term R_d [-].

    Returns
    -------
    float, numpy.ndarray or sympy expression
        Value by shear plane [N].

    Notes
    -----
    NDS 2018 Eq. 12.3-6 and 12.3-10.

    Examples
    --------
    >>> round(mode_IV(diameter=12.0, main_bearing=20.0, side_bearing=20.0, bending_yield=300.0,
    ...               reduction=4.0), 2)
    1609.97
    """
    _check_yield_inputs(
        diameter=diameter,
        lengths=(),
        stresses=(main_bearing, side_bearing, bending_yield),
        reduction=reduction,
    )
    strengths = main_bearing / side_bearing
    return diameter**2 / reduction * square_root(2 * main_bearing * bending_yield / (3 * (1 + strengths)))


def _check_yield_inputs(*, diameter, lengths, stresses, reduction):
    check_size("diameter", diameter)
    for length in lengths:
        check_size("bearing length", length)
    for stress in stresses:
        check_amount("strength", stress, hint="for example 5600*psi")
    check_amount("reduction term", reduction, hint="for example 3.2")


def yield_modes(
    *,
    diameter,
    main_length,
    side_length,
    main_bearing,
    side_bearing,
    bending_yield,
    reductions,
    shear="single",
):
    """Return the value of one fastener in every yield mode.

    Parameters
    ----------
    diameter : float, numpy.ndarray or sympy expression
        Diameter of the fastener [mm].
    main_length : float, numpy.ndarray or sympy expression
        Bearing length in the main member (in double shear: the middle one) [mm].
    side_length : float, numpy.ndarray or sympy expression
        Bearing length in the side member (in double shear: the lesser of the two) [mm].
    main_bearing : float, numpy.ndarray or sympy expression
        Dowel bearing strength of the main member [MPa].
    side_bearing : float, numpy.ndarray or sympy expression
        Dowel bearing strength of the side member [MPa].
    bending_yield : float, numpy.ndarray or sympy expression
        Bending yield strength of the fastener [MPa].
    reductions : dict
        Mode to its reduction term R_d [-].
    shear : str
        ``single`` (two members) or ``double`` (three members) [-].

    Returns
    -------
    dict
        Mode to its value; in double shear both planes together [N].

    Notes
    -----
    NDS 2018 Table 12.3.1A.

    Examples
    --------
    >>> from structlib.rules.us.dowels.fasteners import bolt
    >>> one = yield_modes(diameter=12.0, main_length=40.0, side_length=40.0, main_bearing=20.0,
    ...                   side_bearing=20.0, bending_yield=300.0,
    ...                   reductions=reduction_terms(bolt(0.5 * inch), angle=0.0))
    >>> min(one, key=one.get)
    'II'
    """
    check_choice("shear", shear, MODES)
    planes = 1 if shear == "single" else 2
    strengths = {"diameter": diameter, "main_bearing": main_bearing, "side_bearing": side_bearing}
    bent = {**strengths, "bending_yield": bending_yield}
    formulas = {
        "Im": lambda r: mode_I(diameter=diameter, length=main_length, bearing=main_bearing, reduction=r),
        "Is": (lambda r: planes * mode_I(diameter=diameter, length=side_length, bearing=side_bearing, reduction=r)),
        "II": lambda r: mode_II(**strengths, main_length=main_length, side_length=side_length, reduction=r),
        "IIIm": lambda r: mode_III_main(**bent, main_length=main_length, reduction=r),
        "IIIs": lambda r: planes * mode_III_side(**bent, side_length=side_length, reduction=r),
        "IV": lambda r: planes * mode_IV(**bent, reduction=r),
    }
    return {mode: formulas[mode](reductions[mode]) for mode in MODES[shear]}
