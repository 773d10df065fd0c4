"""Nails, bolts and lag screws, by name or by size."""

from structlib.ground.refusals import OutsideRule, check_choice
from structlib.ground.tables import in_library_units, table_row, table_rows
from structlib.ground.units import inch
from structlib.rules.check import least_verified
from structlib.rules.us.dowels.records import Fastener
from structlib.rules.us.dowels.words import _SIZE_SLACK, _inches, _one_number, _scalar


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
    known = ", ".join(_inches(in_library_units(row, "diameter_in")) for row in table_rows("us_fasteners_lags"))
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
