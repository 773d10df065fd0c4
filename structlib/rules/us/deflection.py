"""Sag: the code's limit on live load, and the total with and without the creep of the years."""

import numpy

from structlib.ground.refusals import BadInput, check_choice, check_number, is_symbolic
from structlib.rules.check import Check, least_verified
from structlib.rules.us import factors
from structlib.rules.us.bending import wet_factor, wet_verified
from structlib.rules.us.inputs import check_amount, check_yes_or_no


def long_term_deflection(*, lasting, passing, creep_factor):
    """Return the sag after years: the lasting part grows, the passing part does not.

    Parameters
    ----------
    lasting : float, numpy.ndarray or sympy expression
        Sag at once from the loads that stay [mm].
    passing : float, numpy.ndarray or sympy expression
        Sag at once from the loads that come and go [mm].
    creep_factor : float, numpy.ndarray or sympy expression
        Creep factor: 1.5 for wood that is dry in use, 2.0 for green or wet wood [-].

    Returns
    -------
    float, numpy.ndarray or sympy expression
        Sag after years under load [mm].

    Notes
    -----
    NDS 2018 3.5.2.

    Examples
    --------
    >>> long_term_deflection(lasting=4.0, passing=6.0, creep_factor=1.5)
    12.0
    """
    for name, sag in (("lasting sag", lasting), ("passing sag", passing)):
        check_number(name, sag, low=-60_000.0, high=60_000.0, shown=lambda mm: f"{mm:g} mm", hint="for example 4.0")
    check_amount("creep factor", creep_factor, hint="for example 1.5")
    return creep_factor * lasting + passing


def creep_factor(*, wet):
    """Return the creep factor for load that stays for years.

    Parameters
    ----------
    wet : bool
        True for green lumber or wet service [-].

    Returns
    -------
    float
        Creep factor [-].

    Notes
    -----
    NDS 2018 3.5.2.

    Examples
    --------
    >>> creep_factor(wet=False)
    1.5
    """
    return factors.scalar("creep_wet" if check_yes_or_no("wet", wet) else "creep_dry")


#: A ceiling of which nobody told the finish takes the stricter limit.
_FINISH_NOT_TOLD = "ceiling with plaster or stucco"


def limit_divisor(use):
    """Return n of the limit span/n for live load on a kind of member, with its clause.

    Parameters
    ----------
    use : str
        What the member is, a row of the deflection table, such as 'floor'; 'ceiling' where its finish is not told [-].

    Returns
    -------
    tuple of (float, str, str)
        The divisor, its clause and how it is known [-].

    Notes
    -----
    IRC 2021 Table R301.7.

    Examples
    --------
    >>> limit_divisor("floor")[0]
    360.0
    """
    rows = factors.deflection_rows()
    use = _FINISH_NOT_TOLD if use == "ceiling" else use
    check_choice("use of the member", use, rows)
    row = rows[use]
    return row["divisor"], row["clause"], row["verified"]


_UNDER_VENEER = "lintel under masonry veneer"


def sag_divisors(use):
    """Return n of span/n for live and for total load, and the clauses.

    Parameters
    ----------
    use : structlib.rules.check.BeamUse
        What the beam carries [-].

    Returns
    -------
    tuple of (float, float, dict)
        Live divisor, total divisor, and clause and verified word of each [-].

    Notes
    -----
    Live: IRC 2021 Table R301.7. Total: IBC 2018 Table 1604.3 (dead plus live, floor members), which also
    allows half of the dead load here; all of it is kept. Under masonry veneer the limit of Table R301.7 holds
    for all load, because the veneer that must not crack is itself dead load (IRC R703.8.2). A stricter
    divisor may be asked.

    Examples
    --------
    >>> from structlib.rules.check import BeamUse
    >>> sag_divisors(BeamUse())[:2]
    (360.0, 240.0)
    """
    live, live_clause, live_verified = limit_divisor(use.supports)
    total, total_clause, total_verified = factors.total_limit()
    if use.supports == _UNDER_VENEER:
        total, total_clause, total_verified = (
            live,
            f"{live_clause}, R703.8.2: the veneer's weight counts",
            "recalled",
        )
    if use.live_divisor is not None:
        asked = _one_divisor(
            "live sag divisor",
            use.live_divisor,
            low=live,
            high=2000,
            hint=f"the code's own is {live:.0f}; only a stricter one is accepted, for example 480",
        )
        if asked != live:
            live, live_clause = float(asked), f"asked by the reader (stricter than {live_clause})"
    if use.total_divisor is not None:
        asked = _one_divisor(
            "total sag divisor",
            use.total_divisor,
            low=total,
            high=2000,
            hint=f"the code's own is {total:.0f}; only a stricter one is accepted, for example 360",
        )
        if asked != total:
            total, total_clause = float(asked), f"asked by the reader (stricter than {total_clause})"
    return live, total, {"live": (live_clause, live_verified), "total": (total_clause, total_verified)}


def _one_divisor(name, value, *, low, high, hint):
    check_number(name, value, low=low, high=high, hint=hint)
    if numpy.ndim(value) or is_symbolic(value):
        raise BadInput(f"{name} must be one number, got {type(value).__name__}; for example 480")
    return float(value)


def sag_checks(member, demands, use):
    """Return the sag checks of one beam: live load, all load, and after years.

    Parameters
    ----------
    member : structlib.rules.check.BeamMember
        The beam [-].
    demands : tuple of structlib.rules.check.BeamDemand
        What each combination asks [-].
    use : structlib.rules.check.BeamUse
        What the beam carries, which sets the limits [-].

    Returns
    -------
    list of structlib.rules.check.Check
        One a limit; the one after years decides only where that is asked [-].

    Notes
    -----
    `sag_divisors`; NDS 2018 3.5. The solved beams have the sag of shear in them where the wood has a G.

    Examples
    --------
    >>> from structlib.ground.lumber import lvl
    >>> from structlib.ground.units import ft, inch, plf
    >>> from structlib.house.beam import BeamChoice, BeamJob, TypedLoad, check_beam
    >>> from structlib.mechanics.beams import LineLoad
    >>> from structlib.rules.check import BeamUse, Seat
    >>> from structlib.rules.us.book import RULEBOOK
    >>> job = BeamJob(93 * inch, Seat(3 * inch), Seat(3 * inch), (
    ...     TypedLoad("live", LineLoad(0.0, 96 * inch, 1000 * plf)),), unbraced_length=0.0)
    >>> beam = check_beam(job, BeamChoice(lvl("2.0E-2900Fb"), 1.75 * inch, 11.875 * inch, 2), RULEBOOK)
    >>> round(sag_checks(beam.member, beam.demands, BeamUse())[0].asked / inch, 3)  # 0.094 from bending alone
    0.117
    """
    live, total, clauses = sag_divisors(use)
    creep = creep_factor(wet=member.wet)
    modulus = member.material.modulus * wet_factor(member.material, value="modulus", wet=member.wet)
    known = wet_verified(member.material, value="modulus", wet=member.wet)
    span, slides = demands[0].span, ()
    if member.shear_stiffness is not None:
        slides = (("G", member.material.shear_modulus, "stress"),)
        known = least_verified([known, factors.verified("lvl_modulus_over_shear_modulus")])

    def sag(
        kind,
        name,
        sentence,
        value,
        position,
        divisor,
        combination,
        clause,
        verified,
        formula,
        more=(),
        decides=True,
    ):
        limit = span / divisor
        return Check(
            name=name,
            kind="sag",
            sentence=sentence,
            asked=value,
            given=limit,
            share=value / limit,
            dimension="small length",
            position=position,
            where="at the low point",
            combination=combination,
            clause=clause,
            formula=formula,
            substitute=more
            + (
                ("sag", value, "small length"),
                ("span", span, "length"),
                ("limit", limit, "small length"),
                ("E", modulus, "stress"),
                ("I", member.inertia, "inertia"),
            )
            + slides,
            verified=least_verified([verified, member.material.verified, known]),
            decides=decides,
        )

    checks = []
    # A combination is named when it has load that comes and goes; dead load alone is judged only as part of the total.
    passing = [d for d in demands if d.variable is not None]
    if passing:
        worst = max(passing, key=lambda d: abs(d.variable.extremes.deflection.value))
        peak = worst.variable.extremes.deflection
        checks.append(
            sag(
                "live",
                "sag under live load",
                "the low point drops this much when people or snow arrive",
                abs(peak.value),
                peak.position,
                live,
                worst.combination.name,
                clauses["live"][0],
                clauses["live"][1],
                f"sag(live) <= span / {live:.0f}",
            )
        )
    worst = max(demands, key=lambda d: abs(d.solution.extremes.deflection.value))
    peak = worst.solution.extremes.deflection
    checks.append(
        sag(
            "total",
            "sag under all load",
            "the low point hangs this far down on the first day",
            abs(peak.value),
            peak.position,
            total,
            worst.combination.name,
            clauses["total"][0],
            clauses["total"][1],
            f"sag(all) <= span / {total:.0f}",
        )
    )

    def after_years(demand):
        place = demand.solution.extremes.deflection.position
        lasting = demand.lasting.deflection(place)
        return long_term_deflection(
            lasting=lasting, passing=demand.solution.deflection(place) - lasting, creep_factor=creep
        )

    worst, sagged = max(((one, abs(after_years(one))) for one in demands), key=lambda one: one[1])
    checks.append(
        sag(
            "years",
            "sag after years",
            "wood creeps: the dead load's share of the sag grows",
            sagged,
            worst.solution.extremes.deflection.position,
            total,
            worst.combination.name,
            "NDS 2018 3.5.2 beside " + clauses["total"][0],
            "recalled",
            f"K_cr * sag(dead) + sag(live) beside span / {total:.0f}",
            (("K_cr", creep, "ratio"),),
            decides=use.creep_decides,
        )
    )
    return checks
