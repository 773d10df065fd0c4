"""Nails, bolts and lag screws across the joint (NDS 2018 chapter 12): what one carries and how it yields.

The wood crushes under the fastener, or the fastener bends, or both: each way is one formula, and the
lowest governs. Published numbers stand in data/us_fasteners_*.csv.
"""

from dataclasses import dataclass
from functools import lru_cache

import numpy

from structlib.ground.records import measured
from structlib.ground.refusals import BadInput, OutsideRule, check_choice, check_number, is_symbolic
from structlib.ground.roots import pi_for, square_root
from structlib.ground.tables import in_library_units, table_row, table_rows
from structlib.ground.units import deg, inch, lb
from structlib.rules.check import Check, Factor, least_verified
from structlib.rules.us.bearing import bearing_value_at_angle
from structlib.rules.us.inputs import check_amount, check_size, check_yes_or_no

MODES = {"single": ("Im", "Is", "II", "IIIm", "IIIs", "IV"), "double": ("Im", "Is", "IIIs", "IV")}

#: What happens in each mode, for the reader.
MODE_WORDS = {
    "Im": "the wood of the main member crushes along the whole fastener",
    "Is": "the side member crushes along the whole fastener",
    "II": "the fastener stays straight and tilts, and both members crush",
    "IIIm": "the fastener bends once, in the side member's face, and the main member crushes",
    "IIIs": "the fastener bends once, in the main member, and the side member crushes",
    "IV": "the fastener bends twice, once in each member",
}

MOISTURE = ("dry", "wet in service", "wet when built")
LOAD_DIRECTIONS = ("parallel, compression", "parallel, tension", "perpendicular")
DISTANCES = ("end", "edge", "unloaded edge", "in a row", "between rows")

_TABLE = "us_fasteners_factors"
_SIZE_SLACK = 1e-9  # diameters come from inches; a rounding must not change the band


@dataclass(frozen=True, kw_only=True)
class Fastener:
    """One nail, bolt or lag screw.

    Parameters
    ----------
    kind : str
        ``nail``, ``bolt`` or ``lag screw`` [-].
    name : str
        Name to show [-].
    diameter : float
        Nominal diameter, or that of a nail's shank [mm].
    bending_diameter : float
        Diameter that bends: the root of the thread of a lag screw, else the diameter [mm].
    bending_yield : float
        Bending yield strength F_yb [MPa].
    length : float
        Length under the head; None for a bolt, which goes through [mm].
    tip : float
        Tapered tip [mm].
    source : str
        Where the numbers come from [-].
    verified : str
        How they are known [-].

    Examples
    --------
    >>> round(nail("16d common").diameter / inch, 3)
    0.162
    """

    kind: str = measured("text", "kind of fastener")
    name: str = measured("text", "fastener")
    diameter: float = measured("small length", "diameter")
    bending_diameter: float = measured("small length", "diameter that bends")
    bending_yield: float = measured("stress", "bending yield strength")
    length: float | None = measured("small length", "length", default=None)
    tip: float = measured("small length", "tapered tip", default=0.0)
    source: str = measured("text", "source", default="")
    verified: str = measured("text", "how it is known", default="recalled")


@dataclass(frozen=True, kw_only=True)
class JoinedPiece:
    """One member of a joint, as the fastener feels it; made by ``wood_piece`` or ``steel_plate``.

    Parameters
    ----------
    thickness : float
        Thickness along the fastener [mm].
    specific_gravity : float
        Specific gravity of wood; None for steel [-].
    angle : float
        Angle between the load and the grain; 0 for steel [rad].
    steel : str
        ``A36``, ``A653 grade 33``, or empty for wood [-].

    Examples
    --------
    >>> wood_piece(thickness=1.5 * inch, specific_gravity=0.5).steel
    ''
    """

    thickness: float = measured("section length", "thickness")
    specific_gravity: float | None = measured("text", "specific gravity", default=None)
    angle: float = measured("angle", "angle of load to grain", default=0.0)
    steel: str = measured("text", "steel", default="")


@dataclass(frozen=True, kw_only=True)
class LateralValue:
    """What one fastener carries across the joint before adjustment, and which way it yields.

    Parameters
    ----------
    value : float
        Reference lateral value Z, the lowest of the modes [N].
    mode : str
        Name of that mode [-].
    modes : tuple of tuple
        Every mode with its value [-, N].
    main_length : float
        Bearing length in the main member [mm].
    side_length : float
        Bearing length in the side member [mm].
    main_bearing : float
        Dowel bearing strength of the main member [MPa].
    side_bearing : float
        Dowel bearing strength of the side member [MPa].
    verified : str
        How the numbers are known [-].

    Examples
    --------
    >>> pine = wood_piece(thickness=1.5 * inch, specific_gravity=0.55)
    >>> lateral_value(bolt(0.5 * inch), main=pine, side=pine).mode
    'II'
    """

    value: float = measured("force", "reference lateral value Z")
    mode: str = measured("text", "mode that governs")
    modes: tuple = ()
    main_length: float = measured("small length", "bearing length in the main member")
    side_length: float = measured("small length", "bearing length in the side member")
    main_bearing: float = measured("stress", "dowel bearing strength, main member")
    side_bearing: float = measured("stress", "dowel bearing strength, side member")
    verified: str = measured("text", "how it is known", default="computed")


@lru_cache(maxsize=None)
def _scalar(key):
    return in_library_units(table_row(_TABLE, key=key), "value")


def _verified(*keys):
    return least_verified(table_row(_TABLE, key=key)["verified"] for key in keys)


# ---- the fasteners ----------------------------------------------------------------------------------------


def nail_names():
    """List the nails of the data file.

    Returns
    -------
    tuple of str
        Names, such as ``16d common`` [-].

    Examples
    --------
    >>> "10d box" in nail_names()
    True
    """
    return tuple(row["nail"] for row in table_rows("us_fasteners_nails"))


def nail(name):
    """Return a nail of the data file by name.

    Parameters
    ----------
    name : str
        Pennyweight and kind, for example ``16d common`` [-].

    Returns
    -------
    Fastener
        The nail [-].

    Raises
    ------
    BadInput
        When the name is not known; the nearest are named.
    OutsideRule
        When the nail is thinner or thicker than the table of yield strengths goes.

    Examples
    --------
    >>> nail("8d common").kind
    'nail'
    """
    check_choice("nail", name, nail_names())
    row = table_row("us_fasteners_nails", nail=name)
    measured_one = nail_of_size(
        diameter=in_library_units(row, "diameter_in"),
        length=in_library_units(row, "length_in"),
        name=f"{name} nail",
    )
    return Fastener(
        **{
            **vars(measured_one),
            "source": row["source"],
            "verified": least_verified([measured_one.verified, row["verified"]]),
        }
    )


def nail_of_size(*, diameter, length, name="nail"):
    """Return a smooth steel wire nail of a measured size; its yield strength goes by its diameter.

    Parameters
    ----------
    diameter : float
        Shank diameter, 0.099 in to 0.273 in [mm].
    length : float
        Length under the head [mm].
    name : str
        Name to show [-].

    Returns
    -------
    Fastener
        The nail [-].

    Raises
    ------
    BadInput
        When a size is not a finite number above zero.
    OutsideRule
        When the diameter is outside the table of yield strengths.

    Notes
    -----
    NDS 2018 Table I1.

    Examples
    --------
    >>> from structlib.ground.units import ksi
    >>> round(nail_of_size(diameter=0.162 * inch, length=3.5 * inch).bending_yield / ksi)
    90
    """
    _one_number("diameter", diameter)
    _one_number("length", length)
    row = _yield_row("nail", diameter)
    return Fastener(
        kind="nail",
        name=name,
        diameter=diameter,
        bending_diameter=diameter,
        length=length,
        bending_yield=in_library_units(row, "Fyb_psi"),
        tip=_scalar("nail_tip") * diameter,
        source=row["source"],
        verified=row["verified"],
    )


def bolt(diameter):
    """Return a bolt with a full-diameter shank, in a hole as the standard asks (1/32 in to 1/16 in over).

    Parameters
    ----------
    diameter : float
        Diameter, 1/4 in to 1 in [mm].

    Returns
    -------
    Fastener
        The bolt [-].

    Raises
    ------
    BadInput
        When the diameter is not a finite number above zero.
    OutsideRule
        When the diameter is outside the rule.

    Notes
    -----
    NDS 2018 Table I1 and 12.1.3.

    Examples
    --------
    >>> bolt(0.5 * inch).name
    '1/2 in bolt'
    """
    return _thick_fastener("bolt", diameter, bending_diameter=diameter, length=None, tip=0.0)


def lag_screw(diameter, *, length):
    """Return a reduced-body lag screw: its thread's root is what bends.

    Parameters
    ----------
    diameter : float
        Nominal diameter, one of 1/4, 5/16, 3/8, 1/2, 5/8 and 3/4 in [mm].
    length : float
        Length under the head [mm].

    Returns
    -------
    Fastener
        The lag screw [-].

    Raises
    ------
    BadInput
        When a size is not a finite number above zero.
    OutsideRule
        When there is no lag screw of that diameter in the data file.

    Notes
    -----
    NDS 2018 Appendix L Table L2, Table I1.

    Examples
    --------
    >>> round(lag_screw(0.5 * inch, length=6 * inch).bending_diameter / inch, 3)
    0.371
    """
    _one_number("diameter", diameter)
    _one_number("length", length)
    for row in table_rows("us_fasteners_lags"):
        if abs(in_library_units(row, "diameter_in") - diameter) < 1e-6 * inch:
            return _thick_fastener(
                "lag screw",
                diameter,
                length=length,
                tip=in_library_units(row, "tip_in"),
                bending_diameter=in_library_units(row, "root_diameter_in"),
            )
    known = ", ".join(
        _inches(in_library_units(row, "diameter_in")) for row in table_rows("us_fasteners_lags")
    )
    raise OutsideRule(f"there is no lag screw {diameter / inch:g} in thick in the table; it has {known}")


def _thick_fastener(kind, diameter, *, bending_diameter, length, tip):
    _one_number("diameter", diameter)
    row = _yield_row(kind, diameter)
    return Fastener(
        kind=kind,
        name=f"{_inches(diameter)} {kind}",
        diameter=diameter,
        length=length,
        tip=tip,
        bending_diameter=bending_diameter,
        bending_yield=in_library_units(row, "Fyb_psi"),
        source=row["source"],
        verified=row["verified"],
    )


def _yield_row(kind, diameter):
    rows = [row for row in table_rows("us_fasteners_yield") if row["kind"] == kind]
    for row in rows:
        low, high = in_library_units(row, "diameter_over_in"), in_library_units(row, "diameter_to_in")
        if diameter > low and (high is None or diameter <= high * (1 + _SIZE_SLACK)):
            return row
    least, most = rows[0]["diameter_over_in"], rows[-1]["diameter_to_in"]
    example = "0.148*inch" if kind == "nail" else "0.5*inch"
    raise OutsideRule(
        f"a {kind} {diameter / inch:g} in thick is outside the table of yield strengths, which goes from "
        f"{least:.3g} in to {most:g} in; for example {example}"
    )


def _inches(length):
    from structlib.ground.showing import show

    return show(length, "section length")


def _one_number(name, value):
    check_size(name, value)
    if is_symbolic(value) or numpy.ndim(value):
        raise BadInput(f"{name} must be one number, got {type(value).__name__}; for example 0.5*inch")


# ---- the members ------------------------------------------------------------------------------------------


def wood_piece(*, thickness, specific_gravity, angle=0.0):
    """Return a wood member of a joint.

    Parameters
    ----------
    thickness : float
        Thickness along the fastener [mm].
    specific_gravity : float
        Specific gravity, 0.31 to 0.73; for LVL the equivalent one in the maker's report [-].
    angle : float
        Angle between the load and the grain, 0 to 90 deg [rad].

    Returns
    -------
    JoinedPiece
        The member [-].

    Raises
    ------
    BadInput
        When an input is not a finite number in its range.
    OutsideRule
        When the wood is lighter or denser than the table goes.

    Notes
    -----
    NDS 2018 Table 12.3.3.

    Examples
    --------
    >>> wood_piece(thickness=1.5 * inch, specific_gravity=0.5, angle=90 * deg).specific_gravity
    0.5
    """
    _one_number("thickness", thickness)
    _check_gravity(specific_gravity)
    _check_angle(angle)
    return JoinedPiece(thickness=thickness, specific_gravity=specific_gravity, angle=angle)


def steel_plate(*, thickness, steel="A36"):
    """Return a steel side plate, or a plate between two members.

    Parameters
    ----------
    thickness : float
        Thickness [mm].
    steel : str
        ``A36`` (hot-rolled plate) or ``A653 grade 33`` (cold-formed sheet) [-].

    Returns
    -------
    JoinedPiece
        The plate [-].

    Raises
    ------
    BadInput
        When the thickness is not a finite number above zero or the steel is not known.

    Examples
    --------
    >>> steel_plate(thickness=0.25 * inch).steel
    'A36'
    """
    _one_number("thickness", thickness)
    check_choice("steel", steel, _STEELS)
    return JoinedPiece(thickness=thickness, steel=steel)


_STEELS = {
    "A36": ("tensile_strength_A36", "hot rolled"),
    "A653 grade 33": ("tensile_strength_A653_33", "cold formed"),
}


def _check_gravity(value):
    if value is None:
        raise BadInput(
            "the specific gravity is not given; for LVL take the equivalent one in the maker's report, "
            "for example 0.5"
        )
    check_number("specific gravity", value, low=0.0, high=5.0, low_allowed=False, hint="for example 0.5")
    if is_symbolic(value):
        return
    low, high = _scalar("specific_gravity_least"), _scalar("specific_gravity_greatest")
    if numpy.any(numpy.asarray(value) < low) or numpy.any(numpy.asarray(value) > high):
        raise OutsideRule(
            f"dowel bearing strengths are published for specific gravities of {low:g} to {high:g}, "
            f"got {value}; for example 0.5 for Douglas Fir-Larch"
        )


def _check_angle(angle):
    check_number(
        "angle of load to grain",
        angle,
        low=0.0,
        high=90 * deg * (1 + 1e-12),
        shown=lambda a: f"{a / deg:g} deg",
        hint="for example 90*deg, across the grain",
    )


# ---- dowel bearing strength -------------------------------------------------------------------------------


def bearing_strength_small(*, specific_gravity):
    """Return the dowel bearing strength of wood under a fastener thinner than 1/4 in, at any grain angle.

    Parameters
    ----------
    specific_gravity : float, numpy.ndarray or sympy expression
        Specific gravity of the wood [-].

    Returns
    -------
    float, numpy.ndarray or sympy expression
        Dowel bearing strength, not rounded [MPa].

    Raises
    ------
    BadInput
        When it is not a finite number above zero.
    OutsideRule
        When it is outside the table.

    Notes
    -----
    NDS 2018 Table 12.3.3 footnote 2.

    Examples
    --------
    >>> from structlib.ground.units import psi
    >>> round(bearing_strength_small(specific_gravity=0.5) / psi)
    4637
    """
    _check_gravity(specific_gravity)
    return _scalar("bearing_small_coefficient") * specific_gravity ** _scalar("bearing_small_power")


def bearing_strength_along(*, specific_gravity):
    """Return the dowel bearing strength of wood along the grain, under a fastener of 1/4 in or more.

    Parameters
    ----------
    specific_gravity : float, numpy.ndarray or sympy expression
        Specific gravity of the wood [-].

    Returns
    -------
    float, numpy.ndarray or sympy expression
        Dowel bearing strength, not rounded [MPa].

    Raises
    ------
    BadInput
        When it is not a finite number above zero.
    OutsideRule
        When it is outside the table.

    Notes
    -----
    NDS 2018 Table 12.3.3 footnote 2.

    Examples
    --------
    >>> from structlib.ground.units import psi
    >>> round(bearing_strength_along(specific_gravity=0.5) / psi)
    5600
    """
    _check_gravity(specific_gravity)
    return _scalar("bearing_along_coefficient") * specific_gravity


def bearing_strength_across(*, specific_gravity, diameter):
    """Return the dowel bearing strength of wood across the grain, under a fastener of 1/4 in or more.

    Parameters
    ----------
    specific_gravity : float, numpy.ndarray or sympy expression
        Specific gravity of the wood [-].
    diameter : float, numpy.ndarray or sympy expression
        Nominal diameter [mm].

    Returns
    -------
    float, numpy.ndarray or sympy expression
        Dowel bearing strength, not rounded [MPa].

    Raises
    ------
    BadInput
        When an input is not a finite number above zero.
    OutsideRule
        When the specific gravity is outside the table.

    Notes
    -----
    NDS 2018 Table 12.3.3 footnote 2. The diameter in the formula is in inches.

    Examples
    --------
    >>> from structlib.ground.units import psi
    >>> round(bearing_strength_across(specific_gravity=0.5, diameter=0.5 * inch) / psi)
    3158
    """
    _check_gravity(specific_gravity)
    check_size("diameter", diameter)
    coefficient, power = _scalar("bearing_across_coefficient"), _scalar("bearing_across_power")
    return coefficient * specific_gravity**power / square_root(diameter / inch)


def bearing_strength_steel(*, tensile_strength, made):
    """Return the dowel bearing strength of steel.

    Parameters
    ----------
    tensile_strength : float, numpy.ndarray or sympy expression
        Least tensile strength F_u [MPa].
    made : str
        ``hot rolled`` or ``cold formed`` [-].

    Returns
    -------
    float, numpy.ndarray or sympy expression
        Dowel bearing strength [MPa].

    Raises
    ------
    BadInput
        When the strength is not a finite number above zero or the word is not known.

    Notes
    -----
    NDS 2018 Appendix I.2.

    Examples
    --------
    >>> from structlib.ground.units import psi
    >>> round(bearing_strength_steel(tensile_strength=58000 * psi, made="hot rolled") / psi)
    87000
    """
    check_amount("tensile strength", tensile_strength, hint="for example 58000*psi")
    check_choice("made", made, ("hot rolled", "cold formed"))
    return _scalar(f"bearing_steel_{made.replace(' ', '_')}") * tensile_strength


def as_tabulated(strength):
    """Round a dowel bearing strength of wood as the table does, to 50 psi.

    Parameters
    ----------
    strength : float or numpy.ndarray
        Dowel bearing strength [MPa].

    Returns
    -------
    float or numpy.ndarray
        The same, rounded [MPa].

    Raises
    ------
    BadInput
        When it is not a finite number above zero.

    Examples
    --------
    >>> from structlib.ground.units import psi
    >>> round(as_tabulated(3158 * psi) / psi)
    3150
    """
    check_amount("dowel bearing strength", strength, hint="for example 5600*psi")
    step = _scalar("bearing_rounding")
    return numpy.floor(strength / step + 0.5) * step


def piece_bearing_strength(piece, *, diameter):
    """Return the dowel bearing strength of one member, as the standard's table has it.

    Parameters
    ----------
    piece : JoinedPiece
        The member [-].
    diameter : float
        Nominal diameter of the fastener [mm].

    Returns
    -------
    float
        Dowel bearing strength; wood rounded to 50 psi along and across the grain [MPa].

    Raises
    ------
    BadInput
        When the member or the diameter is no such thing.
    OutsideRule
        When the wood is outside the table.

    Notes
    -----
    NDS 2018 Table 12.3.3 and 12.3.4; under 1/4 in the angle does not count.

    Examples
    --------
    >>> from structlib.ground.units import psi
    >>> post = wood_piece(thickness=3.5 * inch, specific_gravity=0.5, angle=90 * deg)
    >>> round(piece_bearing_strength(post, diameter=0.5 * inch) / psi)
    3150
    """
    _check_piece(piece)
    check_size("diameter", diameter)
    if piece.steel:
        strength, made = _STEELS[piece.steel]
        return bearing_strength_steel(tensile_strength=_scalar(strength), made=made)
    if is_thin(diameter):
        return float(as_tabulated(bearing_strength_small(specific_gravity=piece.specific_gravity)))
    along = float(as_tabulated(bearing_strength_along(specific_gravity=piece.specific_gravity)))
    across = float(
        as_tabulated(bearing_strength_across(specific_gravity=piece.specific_gravity, diameter=diameter))
    )
    return bearing_value_at_angle(
        along=along, across=across, sine=float(numpy.sin(piece.angle)), cosine=float(numpy.cos(piece.angle))
    )


def is_thin(diameter):
    """Tell whether a fastener is thinner than 1/4 in, so that the rules for nails hold.

    Parameters
    ----------
    diameter : float
        Diameter [mm].

    Returns
    -------
    bool
        True under 1/4 in [-].

    Raises
    ------
    BadInput
        When the diameter is not a finite number above zero.

    Examples
    --------
    >>> is_thin(0.162 * inch), is_thin(0.25 * inch)
    (True, False)
    """
    _one_number("diameter", diameter)
    return diameter < _scalar("small_diameter") * (1 - _SIZE_SLACK)


def _check_piece(piece):
    if not isinstance(piece, JoinedPiece):
        raise BadInput(
            f"a member of a joint is made by wood_piece or steel_plate, got {type(piece).__name__}"
        )


def _check_fastener(fastener):
    if not isinstance(fastener, Fastener):
        raise BadInput(
            f"a fastener is made by nail, bolt or lag_screw, got {type(fastener).__name__}; "
            "for example nail('16d common')"
        )


# ---- reduction terms --------------------------------------------------------------------------------------


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
    BadInput
        When the diameter is not a finite number above zero.
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

    Raises
    ------
    BadInput
        When the angle is not between 0 and 90 deg.

    Notes
    -----
    NDS 2018 Table 12.3.1B.

    Examples
    --------
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

    Raises
    ------
    BadInput
        When the fastener or the angle is no such thing.

    Notes
    -----
    NDS 2018 Table 12.3.1B; small lag screws (root under 1/4 in) take K_D x K_theta.

    Examples
    --------
    >>> reduction_terms(bolt(0.5 * inch), angle=0.0)["IV"]
    3.2
    """
    _check_fastener(fastener)
    turned = reduction_by_angle(angle=angle)
    if is_thin(fastener.diameter):
        return dict.fromkeys(MODES["single"], reduction_small(diameter=fastener.diameter))
    if is_thin(fastener.bending_diameter):
        return dict.fromkeys(MODES["single"], reduction_small(diameter=fastener.bending_diameter) * turned)
    first, second, others = (
        _scalar(key) * turned for key in ("reduction_I", "reduction_II", "reduction_III_IV")
    )
    return {"Im": first, "Is": first, "II": second, "IIIm": others, "IIIs": others, "IV": others}


# ---- the yield modes --------------------------------------------------------------------------------------


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

    Raises
    ------
    BadInput
        When an input is not a finite number above zero.

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

    Raises
    ------
    BadInput
        When an input is not a finite number above zero.

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

    Raises
    ------
    BadInput
        When an input is not a finite number above zero.

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

    Raises
    ------
    BadInput
        When an input is not a finite number above zero.

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

    Raises
    ------
    BadInput
        When an input is not a finite number above zero.

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

    Raises
    ------
    BadInput
        When an input is not a finite number above zero or the word is not known.

    Notes
    -----
    NDS 2018 Table 12.3.1A.

    Examples
    --------
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
        "Is": (
            lambda r: planes
            * mode_I(diameter=diameter, length=side_length, bearing=side_bearing, reduction=r)
        ),
        "II": lambda r: mode_II(**strengths, main_length=main_length, side_length=side_length, reduction=r),
        "IIIm": lambda r: mode_III_main(**bent, main_length=main_length, reduction=r),
        "IIIs": lambda r: planes * mode_III_side(**bent, side_length=side_length, reduction=r),
        "IV": lambda r: planes * mode_IV(**bent, reduction=r),
    }
    return {mode: formulas[mode](reductions[mode]) for mode in MODES[shear]}


# ---- how far in -------------------------------------------------------------------------------------------


def penetration(fastener, *, main, side):
    """Return how deep a fastener reaches into the main member.

    Parameters
    ----------
    fastener : Fastener
        The fastener [-].
    main : JoinedPiece
        Member that holds the point [-].
    side : JoinedPiece
        Member under the head [-].

    Returns
    -------
    float
        Penetration: of a nail with its tip, of a lag screw without it; of a bolt the whole thickness [mm].

    Raises
    ------
    BadInput
        When an input is no such thing, or the fastener does not reach through the side member.

    Notes
    -----
    NDS 2018 12.3.5.

    Examples
    --------
    >>> stud = wood_piece(thickness=1.5 * inch, specific_gravity=0.5)
    >>> round(penetration(nail("10d box"), main=stud, side=stud) / inch, 2)
    1.5
    """
    _check_joint(fastener, main, side)
    if fastener.length is None:
        return main.thickness
    reach = fastener.length - side.thickness - (fastener.tip if fastener.kind == "lag screw" else 0.0)
    if reach <= 0:
        raise BadInput(
            f"a {fastener.name} {_inches(fastener.length)} long does not reach through a side member "
            f"{_inches(side.thickness)} thick; take a longer one"
        )
    return min(reach, main.thickness)


def bearing_length_in_main(fastener, *, main, side):
    """Return the length over which a fastener bears on the main member, refused where it is too short.

    Parameters
    ----------
    fastener : Fastener
        The fastener [-].
    main : JoinedPiece
        Member that holds the point [-].
    side : JoinedPiece
        Member under the head [-].

    Returns
    -------
    float
        Bearing length [mm].

    Raises
    ------
    BadInput
        When an input is no such thing.
    OutsideRule
        When a nail reaches less than 6 diameters in, or a lag screw less than 4.

    Notes
    -----
    NDS 2018 12.3.5.3: where a nail's penetration is under 10 diameters its tip (2 diameters) does not count.

    Examples
    --------
    >>> plate = wood_piece(thickness=2.0 * inch, specific_gravity=0.55)
    >>> post = wood_piece(thickness=3.5 * inch, specific_gravity=0.55)
    >>> round(bearing_length_in_main(nail("12d common"), main=post, side=plate) / inch, 3)
    0.954
    """
    deep = penetration(fastener, main=main, side=side)
    if fastener.kind == "bolt":
        return deep
    _check_deep_enough(fastener, deep)
    if fastener.kind == "lag screw" or deep >= _scalar("nail_full_penetration") * fastener.diameter * (
        1 - _SIZE_SLACK
    ):
        return deep
    return min(main.thickness, fastener.length - side.thickness - fastener.tip)


def _check_deep_enough(fastener, deep):
    name = "nail" if fastener.kind == "nail" else "lag"
    least = _scalar(f"{name}_least_penetration")
    if deep < least * fastener.diameter * (1 - _SIZE_SLACK):
        raise OutsideRule(
            f"a {fastener.name} must reach {least:g} diameters ({least * fastener.diameter / inch:.2f} in) "
            f"into the main member, got {deep / inch:.2f} in; take a longer or thinner one"
        )


def table_penetration_factor(fastener, deep):
    """Return the factor on a value of a printed table, where the fastener reaches less deep than there.

    Parameters
    ----------
    fastener : Fastener
        A nail or a lag screw [-].
    deep : float
        Penetration into the main member [mm].

    Returns
    -------
    float
        p / 10 D for nails, p / 8 D for lag screws, at most 1. Values by the yield modes do not take it [-].

    Raises
    ------
    BadInput
        When an input is no such thing.
    OutsideRule
        When the fastener does not reach far enough to count at all.

    Notes
    -----
    NDS 2018 footnotes of Tables 12J and 12N.

    Examples
    --------
    >>> round(table_penetration_factor(nail("16d common"), 1.25 * inch), 4)
    0.7716
    """
    _check_fastener(fastener)
    _one_number("penetration", deep)
    if fastener.kind == "bolt":
        return 1.0
    _check_deep_enough(fastener, deep)
    full = _scalar(f"{'nail' if fastener.kind == 'nail' else 'lag'}_full_penetration")
    return min(1.0, deep / (full * fastener.diameter))


def _check_joint(fastener, main, side):
    _check_fastener(fastener)
    _check_piece(main)
    _check_piece(side)


# ---- one fastener's value ---------------------------------------------------------------------------------


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
    BadInput
        When an input is no such thing.
    OutsideRule
        When the fastener does not reach far enough, or the case is outside the rule.

    Notes
    -----
    NDS 2018 12.3.1. Through the side grain, members in contact, fastener square to the face.

    Examples
    --------
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


def wet_factor(fastener, *, moisture):
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

    Raises
    ------
    BadInput
        When an input is no such thing.

    Notes
    -----
    NDS 2018 Table 11.3.3.

    Examples
    --------
    >>> wet_factor(bolt(0.5 * inch), moisture="wet when built")[0]
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
    BadInput
        When the count is not a whole number from 1 on.
    OutsideRule
        When bolts or lag screws stand in line: the formula for their uneven shares is not in this library.

    Notes
    -----
    NDS 2018 11.3.6: 1.0 under 1/4 in, and for a row of one.

    Examples
    --------
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
    BadInput
        When an input is not a number in its range.
    OutsideRule
        When bolts stand in line.

    Notes
    -----
    NDS 2018 Table 11.3.1. Wood at ordinary temperature, through the side grain.

    Examples
    --------
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
    wet, wet_known = wet_factor(fastener, moisture=moisture)
    together = group_action_factor(fastener, in_line=in_line)
    used = (
        Factor(
            "C_D",
            time_factor,
            "how long the load lasts",
            "NDS 2018 11.3.2",
            _verified("time_factor_greatest"),
        ),
        Factor("C_M", wet, f"wood: {moisture}", "NDS 2018 Table 11.3.3", wet_known),
        Factor("C_g", together, "fasteners in line share unevenly", "NDS 2018 11.3.6", "recalled"),
        Factor("C_delta", geometry, "distances to ends and each other", "NDS 2018 12.5.1", "recalled"),
    )
    return found.value * time_factor * wet * together * geometry, used


def lateral_check(
    *,
    name,
    force,
    fastener,
    main,
    side,
    shear="single",
    fasteners=1,
    in_line=1,
    time_factor=1.0,
    moisture="dry",
    geometry=1.0,
    combination="",
):
    """Check a group of like fasteners that share a force evenly.

    Parameters
    ----------
    name : str
        What is fastened, in the reader's words [-].
    force : float
        Force on the whole group [N].
    fastener : Fastener
        The fastener [-].
    main : JoinedPiece
        Member that holds the point; in double shear the middle one [-].
    side : JoinedPiece
        Member under the head [-].
    shear : str
        ``single`` or ``double`` [-].
    fasteners : int
        How many share the force [-].
    in_line : int
        How many stand in one row along the direction of the load [-].
    time_factor : float
        Load duration factor C_D [-].
    moisture : str
        ``dry``, ``wet in service`` or ``wet when built`` [-].
    geometry : float
        Geometry factor C_delta [-].
    combination : str
        Name of the load combination [-].

    Returns
    -------
    structlib.rules.check.Check
        Force on one fastener asked, adjusted value given [-].

    Raises
    ------
    BadInput
        When an input is no such thing.
    OutsideRule
        When a rule does not cover the case.

    Examples
    --------
    >>> fir = wood_piece(thickness=1.5 * inch, specific_gravity=0.5)
    >>> check = lateral_check(name="joist to ledger", force=300 * lb, fastener=nail("16d common"), main=fir,
    ...                       side=fir, fasteners=3)
    >>> round(check.share, 2), check.where
    (0.71, 'mode IV: the fastener bends twice, once in each member')
    """
    check_amount("force", force, zero=True, hint="for example 300*lb, its size without a sign")
    _check_count("fasteners", fasteners)
    found = lateral_value(fastener, main=main, side=side, shear=shear)
    given, used = adjusted_value(
        found, fastener, time_factor=time_factor, moisture=moisture, geometry=geometry, in_line=in_line
    )
    asked = force / fasteners
    return Check(
        name=name,
        kind="fastener",
        sentence=f"each {fastener.name} takes its part of the push across the joint",
        asked=asked,
        given=given,
        share=asked / given,
        dimension="force",
        position=0.0,
        where=f"mode {found.mode}: {MODE_WORDS[found.mode]}",
        combination=combination,
        clause="NDS 2018 12.3.1, Table 11.3.1",
        formula="F / n <= Z' = Z * C_D * C_M * C_g * C_delta",
        substitute=(
            ("F", force, "force"),
            ("n", float(fasteners), "count"),
            ("Z", found.value, "force"),
            ("Z'", given, "force"),
        ),
        factors=used,
        verified=least_verified([found.verified] + [factor.verified for factor in used]),
    )


def _check_count(name, value):
    check_number(name, value, low=1, high=1000, hint="for example 2")
    if is_symbolic(value) or numpy.ndim(value) or value % 1:
        raise BadInput(f"{name} must be a whole number from 1 on, got {value!r}; for example 2")


# ---- distances --------------------------------------------------------------------------------------------


def least_distances(fastener, *, load, slenderness=None, softwood=True, prebored=False, staggered=False):
    """Return the distances that a fastener wants to ends, edges and its neighbours.

    Parameters
    ----------
    fastener : Fastener
        The fastener [-].
    load : str
        ``parallel, compression`` (pushed away from the end), ``parallel, tension`` (pulled toward the end) or
        ``perpendicular`` to the grain [-].
    slenderness : float
        For bolts: the lesser of the bearing lengths over the diameter; the distance between rows loaded
        across the grain goes by it and is left out without it [-].
    softwood : bool
        Softwood or hardwood [-].
    prebored : bool
        Whether nails go into bored holes [-].
    staggered : bool
        Whether neighbouring rows are staggered [-].

    Returns
    -------
    dict
        ``end``, ``edge``, ``unloaded edge``, ``in a row`` and ``between rows`` to (full, least, clause,
        verified). From full on the whole value counts; below least the rule does not go. For bolts and lag
        screws a row runs in the direction of the load, for nails along the grain [mm, mm, -, -].

    Raises
    ------
    BadInput
        When an input is no such thing.

    Notes
    -----
    NDS 2018 Tables 12.5.1A to 12.5.1D; for fasteners under 1/4 in the guidance of Commentary C12.1.6.6.

    Examples
    --------
    >>> wants = least_distances(nail("16d common"), load="perpendicular")
    >>> round(wants["end"][0] / inch, 2)
    2.43
    """
    _check_fastener(fastener)
    check_choice("load", load, LOAD_DIRECTIONS)
    for name, value in (("softwood", softwood), ("prebored", prebored), ("staggered", staggered)):
        check_yes_or_no(name, value)
    if is_thin(fastener.diameter):
        return _nail_distances(fastener, load, prebored, staggered)
    return _bolt_distances(fastener, load, slenderness, softwood)


def _nail_distances(fastener, load, prebored, staggered):
    bored = ", prebored" if prebored else ""
    away = "compression" if load == "parallel, compression" else "tension"
    # Rows run along the grain. A load across it runs from row to row, so more is asked between them.
    if load == "perpendicular":
        across = ("between rows", "in line" + bored) if staggered else ("in a row", "perpendicular" + bored)
    else:
        across = ("between rows", "staggered" if staggered else "in line" + bored)
    rows = {
        "end": ("end", away + bored),
        "edge": ("edge", "any"),
        "unloaded edge": ("edge", "any"),
        "in a row": ("in a row", "parallel" + bored),
        "between rows": across,
    }
    return {name: _distance(fastener, _spacing_row("nail", *key)) for name, key in rows.items()}


def _bolt_distances(fastener, load, slenderness, softwood):
    along = load != "perpendicular"
    wood = (", softwood" if softwood else ", hardwood") if load == "parallel, tension" else ""
    direction = "parallel" if along else "perpendicular"
    edge = "parallel" if along else "perpendicular, loaded edge"
    far = "parallel" if along else "perpendicular, unloaded edge"
    rows = {
        "end": ("end", load + wood),
        "edge": ("edge", edge),
        "unloaded edge": ("edge", far),
        "in a row": ("in a row", direction),
    }
    wants = {name: _distance(fastener, _spacing_row("bolt", *key)) for name, key in rows.items()}
    if along:
        wants["between rows"] = _distance(fastener, _spacing_row("bolt", "between rows", "parallel"))
    elif slenderness is not None:
        wants["between rows"] = _across_rows(fastener, slenderness)
    return wants


def _across_rows(fastener, slenderness):
    """Distance between rows of bolts across the grain: it grows in proportion between two slendernesses."""
    check_number("slenderness", slenderness, low=0.0, high=200.0, low_allowed=False, hint="for example 3.0")
    short, long = (
        row
        for row in table_rows("us_fasteners_spacing")
        if (row["fastener"], row["distance"], row["case"]) == ("bolt", "between rows", "perpendicular")
    )
    diameters = float(
        numpy.interp(slenderness, [short["ratio_max"], long["ratio_min"]], [short["full"], long["full"]])
    )
    wanted = diameters * fastener.diameter
    return wanted, wanted, short["source"], short["verified"]


def _spacing_row(kind, distance, case):
    return table_row("us_fasteners_spacing", fastener=kind, distance=distance, case=case)


def _distance(fastener, row):
    return row["full"] * fastener.diameter, row["least"] * fastener.diameter, row["source"], row["verified"]


def geometry_factor(
    fastener, distances, *, load, slenderness=None, softwood=True, prebored=False, staggered=False
):
    """Return the geometry factor of a fastener from its distances, or refuse those that are too short.

    Parameters
    ----------
    fastener : Fastener
        The fastener [-].
    distances : dict
        Any of ``end``, ``edge``, ``unloaded edge``, ``in a row`` and ``between rows`` to the distance there
        is [mm].
    load : str
        ``parallel, compression``, ``parallel, tension`` or ``perpendicular`` to the grain [-].
    slenderness : float
        For bolts: the lesser of the bearing lengths over the diameter [-].
    softwood : bool
        Softwood or hardwood [-].
    prebored : bool
        Whether nails go into bored holes [-].
    staggered : bool
        Whether neighbouring rows are staggered [-].

    Returns
    -------
    tuple of (float, tuple of structlib.rules.check.Check)
        C_delta, the least of all, and one check for each distance [-].

    Raises
    ------
    BadInput
        When an input is no such thing.
    OutsideRule
        When a distance is less than the least that the rule accepts.

    Notes
    -----
    NDS 2018 12.5.1: in proportion between the least distance and the full one; 1.0 under 1/4 in.

    Examples
    --------
    >>> half = geometry_factor(bolt(0.5 * inch), {"end": 1.75 * inch}, load="parallel, tension")
    >>> round(half[0], 6)
    0.5
    """
    wants = least_distances(
        fastener,
        load=load,
        slenderness=slenderness,
        softwood=softwood,
        prebored=prebored,
        staggered=staggered,
    )
    if not isinstance(distances, dict) or not distances:
        raise BadInput(
            f"distances must name at least one distance, got {distances!r}; for example {{'end': 4*inch}}"
        )
    factor, checks = 1.0, []
    for name, there in distances.items():
        check_choice("distance", name, DISTANCES)
        check_size(f"distance {name}", there)
        if name not in wants:
            raise BadInput(
                "the distance between rows of bolts loaded across the grain goes by their slenderness; give "
                "the lesser bearing length over the diameter, for example slenderness=3.0"
            )
        full, least, clause, verified = wants[name]
        if there < least * (1 - _SIZE_SLACK):
            raise OutsideRule(
                f"the distance {name!r} of a {fastener.name} must be at least {least / inch:.2f} in, got "
                f"{there / inch:.2f} in; move it, or take a thinner one"
            )
        if not is_thin(fastener.diameter) and there < full * (1 - _SIZE_SLACK):
            factor = min(factor, there / full)
        checks.append(
            Check(
                name=f"distance, {name}",
                kind="distance",
                sentence="the wood splits where a fastener sits too close",
                asked=least,
                given=there,
                share=least / there,
                dimension="small length",
                position=0.0,
                where=name,
                combination="any",
                clause=clause,
                formula="least distance <= distance",
                substitute=(("least distance", least, "small length"), ("distance", there, "small length")),
                verified=verified,
            )
        )
    return factor, tuple(checks)


# ---- pulled straight out ----------------------------------------------------------------------------------


def nail_withdrawal(*, specific_gravity, diameter):
    """Return the withdrawal value of a smooth nail in the side grain of dry wood, by length in the wood.

    Parameters
    ----------
    specific_gravity : float, numpy.ndarray or sympy expression
        Specific gravity of the wood that holds the point [-].
    diameter : float, numpy.ndarray or sympy expression
        Diameter of the nail [mm].

    Returns
    -------
    float, numpy.ndarray or sympy expression
        Reference value by length [N/mm].

    Raises
    ------
    BadInput
        When an input is not a finite number above zero.
    OutsideRule
        When the wood is outside the table.

    Notes
    -----
    NDS 2018 12.2.3, recalled. Nails in end grain do not count in withdrawal at all, and wood that dries
    after nailing keeps only a quarter: dry wood only.

    Examples
    --------
    >>> round(nail_withdrawal(specific_gravity=0.5, diameter=0.162 * inch) / (lb / inch), 1)
    39.5
    """
    _check_gravity(specific_gravity)
    check_size("diameter", diameter)
    return _scalar("nail_withdrawal") * specific_gravity ** _scalar("nail_withdrawal_power") * diameter


def lag_withdrawal(*, specific_gravity, diameter):
    """Return the withdrawal value of a lag screw in the side of wood, by length of thread in the wood.

    Parameters
    ----------
    specific_gravity : float, numpy.ndarray or sympy expression
        Specific gravity of the wood that holds the thread [-].
    diameter : float, numpy.ndarray or sympy expression
        Nominal diameter [mm].

    Returns
    -------
    float, numpy.ndarray or sympy expression
        Reference value by length [N/mm].

    Raises
    ------
    BadInput
        When an input is not a finite number above zero.
    OutsideRule
        When the wood is outside the table.

    Notes
    -----
    NDS 2018 12.2.1, recalled; the formula has the diameter in inches. The screw itself may be weaker.

    Examples
    --------
    >>> round(lag_withdrawal(specific_gravity=0.5, diameter=0.5 * inch) / (lb / inch))
    378
    """
    _check_gravity(specific_gravity)
    check_size("diameter", diameter)
    by_length = _scalar("lag_withdrawal") * lb / inch
    return (
        by_length
        * specific_gravity ** _scalar("lag_withdrawal_power_G")
        * (diameter / inch) ** _scalar("lag_withdrawal_power_D")
    )
