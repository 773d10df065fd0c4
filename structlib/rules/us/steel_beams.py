"""Steel beams by allowable strength (AISC 360-16): every check of one, shear, seats and sag."""

from math import sqrt

from structlib.ground.refusals import BadInput, OutsideRule
from structlib.ground.units import ft, inch, kip  # noqa: F401  the examples use them
from structlib.rules.check import Check, Factor, least_verified
from structlib.rules.us.bearing import bearing_stress, plate_below
from structlib.rules.us.inputs import check_amount
from structlib.rules.us.one_number import check_one_number
from structlib.rules.us.steel_moments import (  # noqa: F401  for callers
    SteelMoment,
    brace_lengths,
    steel_moment,
)
from structlib.rules.us.steel_sections import (
    check_steel_section,
    check_yield,
    lean_parts,
    steel_fact,
    steel_fact_known,
    steel_factor,
    steel_known,
    steel_shape,  # noqa: F401  the examples use it
)


def steel_shear(section):
    """Return the allowable shear of a steel beam.

    Parameters
    ----------
    section : SteelSection
        A rolled shape or a plate [-].

    Returns
    -------
    tuple of (float, str)
        Allowable shear and its clause [N, -].

    Raises
    ------
    OutsideRule
        When the web is too lean to yield in shear.

    Notes
    -----
    AISC 360-16 G2.1(a) for rolled shapes, G2.1(b) where the web is leaner; G4 (the whole plate as web,
    safety factor 1.67) for plates that are not lean.

    Examples
    --------
    >>> round(steel_shear(steel_shape("W8x18"))[0] / kip, 1)
    37.4
    """
    check_steel_section(section)
    modulus, strength = steel_fact("modulus"), section.yield_strength
    nominal = steel_factor("shear_yield_share") * strength * section.depth * section.web
    if section.kind == "plate":
        lean = section.depth / section.web
        most = steel_factor("web_plain") * sqrt(steel_factor("web_bar_factor") * modulus / strength)
        if lean > most:
            raise OutsideRule(
                f"{section.name} would buckle before it is sheared: d/t {lean:.1f} over {most:.1f}; take a "
                "thicker plate"
            )
        return nominal / steel_factor("shear_safety"), "AISC 360-16 G4"
    ratio = lean_parts(section)["web"][0]
    root = sqrt(modulus / strength)
    if ratio <= steel_factor("web_rolled") * root:
        return nominal / steel_factor("shear_safety_rolled"), "AISC 360-16 G2.1(a)"
    greatest = steel_factor("web_plain") * sqrt(steel_factor("web_plate_factor")) * root
    if ratio > greatest:
        raise OutsideRule(
            f"the web of {section.name} would buckle before it is sheared: h/tw {ratio:.1f} over "
            f"{greatest:.1f} (AISC 360-16 G2.1(b)); take a thicker web"
        )
    return nominal / steel_factor("shear_safety"), "AISC 360-16 G2.1(b)"


def plastic_modulus_needed(*, moment, yield_strength, resistance=None):
    """Return the plastic section modulus that a moment asks for, held all along.

    Parameters
    ----------
    moment : float
        Moment; a factored one when a resistance factor is given [N*mm].
    yield_strength : float
        Yield strength [MPa].
    resistance : float
        Resistance factor of the factored method, such as 0.9; None for allowable strength, 1 / 1.67 [-].

    Returns
    -------
    float
        Plastic section modulus [mm3].

    Notes
    -----
    AISC 360-16 F1, Eq F2-1.

    Examples
    --------
    >>> from structlib.ground.units import ksi
    >>> round(plastic_modulus_needed(moment=77 * kip * ft, yield_strength=50 * ksi,
    ...     resistance=0.9) / inch**3, 2)
    20.53
    """
    check_amount("moment", moment, zero=True, hint="for example 50*kip*ft")
    strength = check_yield(yield_strength, usual=None)
    if resistance is not None:
        check_one_number("resistance factor", resistance, low=0.5, high=1.0, hint="for example 0.9")
        return moment / (resistance * strength)
    return moment * steel_factor("bending_safety") / strength


def steel_beam_checks(section, demands, *, unbraced_length, left, right, divisors):
    """Return every check of a simple steel beam: bending, shear, seats of wood below, sag.

    Parameters
    ----------
    section : SteelSection
        A rolled shape, or a plate [-].
    demands : tuple of BeamDemand
        The beam solved for each combination [-].
    unbraced_length : float
        Greatest distance between braces of the pushed edge [mm].
    left : structlib.rules.check.Seat
        What the left end rests on [-].
    right : structlib.rules.check.Seat
        What the right end rests on [-].
    divisors : tuple of float
        n of span / n for load that comes and goes, and for all load [-].

    Returns
    -------
    tuple of Check
        The checks, each for the combination that asks most [-].

    Raises
    ------
    OutsideRule
        When the section is outside the rules.

    Notes
    -----
    AISC 360-16 F2, F3, F11, G2. How the web bears the push of the seat (J10) needs the fillet, and is not
    checked.

    Examples
    --------
    >>> steel_beam_checks(steel_shape("W8x18"), (), unbraced_length=0.0, left=None, right=None,
    ...     divisors=(360, 240))
    Traceback (most recent call last):
    ...
    structlib.ground.refusals.BadInput: demands must hold at least one solved combination
    """
    check_steel_section(section)
    if not demands:
        raise BadInput("demands must hold at least one solved combination")
    moment = steel_moment(section, unbraced_length=unbraced_length)
    shear, shear_clause = steel_shear(section)
    bent = max(demands, key=lambda one: abs(one.solution.extremes.moment.value))
    pushed = max(demands, key=lambda one: abs(one.solution.extremes.shear.value))
    peak, cut = bent.solution.extremes.moment, pushed.solution.extremes.shear
    braced = Factor("L_b", unbraced_length / ft, f"feet between braces: the beam {moment.state}", moment.clause)
    checks = [
        Check(
            name="bending",
            kind="bending",
            sentence=f"pushed past this the steel {moment.state}",
            asked=abs(peak.value),
            given=moment.allowed,
            share=abs(peak.value) / moment.allowed,
            dimension="moment",
            position=peak.position,
            where="where the moment peaks",
            combination=bent.combination.name,
            clause=moment.clause,
            formula=f"M <= M_n / 1.67, {moment.formula}",
            substitute=(("M", abs(peak.value), "moment"), ("M_n", moment.nominal, "moment")),
            factors=(braced,),
            verified=moment.verified,
        ),
        Check(
            name="shear",
            kind="shear",
            sentence="the web is sheared through",
            asked=abs(cut.value),
            given=shear,
            share=abs(cut.value) / shear,
            dimension="force",
            position=cut.position,
            where="at the end",
            combination=pushed.combination.name,
            clause=shear_clause,
            formula="V <= 0.6 F_y d t_w / safety",
            substitute=(
                ("V", abs(cut.value), "force"),
                ("F_y", section.yield_strength, "stress"),
                ("d", section.depth, "section length"),
                ("t_w", section.web, "section length"),
            ),
            verified=least_verified([section.verified, steel_known("shear_yield_share", "shear_safety_rolled")]),
        ),
    ]
    checks += _seat_checks(section, demands, left, right)
    return tuple(checks + _sag_checks(section, demands, divisors))


# ---- parts ------------------------------------------------------------------------------------------------


def _seat_checks(section, demands, left, right):
    """Wood below a flange is crushed like wood below a beam; other seats are the engineer's."""
    checks = []
    for end, seat, place in (("left", left, 0), ("right", right, -1)):
        plate = plate_below(seat)
        if plate is None:
            continue
        given, name, known = plate
        worst = max(demands, key=lambda one: one.solution.reactions[place].force)
        reaction = worst.solution.reactions[place].force
        stress = bearing_stress(reaction=reaction, width=section.flange_width, bearing_length=seat.length)
        checks.append(
            Check(
                name=f"bearing, {end} seat, {name}",
                kind="bearing",
                sentence="the wood below is crushed by the flange",
                asked=stress,
                given=given,
                share=stress / given,
                dimension="stress",
                position=seat.length / 2 if place == 0 else demands[0].span - seat.length / 2,
                where=f"at the {end} seat",
                combination=worst.combination.name,
                clause="NDS 2018 3.10.2",
                formula="f = R / (b * seat) <= F_perp'",
                substitute=(
                    ("R", reaction, "force"),
                    ("b", section.flange_width, "section length"),
                    ("seat", seat.length, "section length"),
                ),
                verified=least_verified([section.verified, known]),
            )
        )
    return checks


def _sag_checks(section, demands, divisors):
    live, total = divisors
    checks = []
    cases = [("live", "sag under live load", live, [d for d in demands if d.variable is not None], "variable")]
    cases.append(("total", "sag under all load", total, list(demands), "solution"))
    for _, name, divisor, listed, field_name in cases:
        if not listed:
            continue
        worst = max(listed, key=lambda one: abs(getattr(one, field_name).extremes.deflection.value))
        peak = getattr(worst, field_name).extremes.deflection
        limit = worst.span / divisor
        checks.append(
            Check(
                name=name,
                kind="sag",
                sentence="the low point hangs this far down; steel does not creep",
                asked=abs(peak.value),
                given=limit,
                share=abs(peak.value) / limit,
                dimension="small length",
                position=peak.position,
                where="at the low point",
                combination=worst.combination.name,
                clause="IRC R301.7",
                formula=f"sag <= span / {divisor:.0f}",
                substitute=(("sag", abs(peak.value), "small length"), ("span", worst.span, "length")),
                verified=least_verified([section.verified, steel_fact_known("modulus")]),
            )
        )
    return checks
