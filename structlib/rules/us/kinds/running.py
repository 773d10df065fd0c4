"""Beams and joists that run on: bending both ways, shear, sag of spans and tips, bearing at each seat, hold-down."""

from structlib.ground.refusals import OutsideRule
from structlib.mechanics.formulas import bending_stress, rectangle_shear_stress
from structlib.rules.check import Factor, least_verified
from structlib.rules.members import ArrangedCheck, ContinuousMember, HoldDown, Partly, SeatMember
from structlib.rules.us import bearing, bending, deflection, factors, shear, uplift

_NOTHING = 1.0  # N*mm: a smaller moment is rounding
_SEATS = ("first", "second", "third", "fourth", "fifth", "sixth")


class Running:
    """Answers about members that run on."""

    def hold_downs(self, member, demands):
        """Return what must hold a member down where it lifts under some arrangement (ASCE 7-16 2.4.1).

        Parameters
        ----------
        member : structlib.rules.members.ContinuousMember
            The member [-].
        demands : tuple of structlib.rules.members.RunningDemand
            What each combination asks [-].

        Returns
        -------
        tuple of structlib.rules.members.HoldDown
            One a support, from the left; zero where nothing lifts [N].

        Examples
        --------
        >>> from structlib.mechanics.beams import Beam, LineLoad, PointLoad, Support
        >>> from structlib.mechanics.patterns import solve_arrangements
        >>> from structlib.rules.check import Combination
        >>> from structlib.rules.members import RunningDemand
        >>> bare = Beam(5000.0, 1e12, (Support(0.0), Support(4000.0)))
        >>> dead = Beam(5000.0, 1e12, bare.supports, (LineLoad(0.0, 4000.0, 0.5),))  # presses each end with 1,000 N
        >>> post = ((PointLoad(5000.0, 3600.0),),)  # lifts the left end with 900 N
        >>> both = Combination("D + L", (("dead", 1.0), ("live", 1.0)), 1.0, "", "", "seen")
        >>> demand = RunningDemand(both, solve_arrangements(dead, post), solve_arrangements(bare, post), ())
        >>> [(one.plain, round(one.counted)) for one in Running().hold_downs(None, (demand,))]
        [(0.0, 300), (0.0, 0)]
        """
        share, known = uplift.dead_that_counts()
        found = []
        for number in range(len(demands[0].dead.reactions)):
            plain = [(max(0.0, -one.all_load.least_reaction(number).value), one.combination.name) for one in demands]
            counted = [
                (
                    uplift.hold_down_demand(
                        dead_push=one.dead.reactions[number].force,
                        passing_push=one.passing.least_reaction(number).value if one.passing else 0.0,
                    ),
                    f"{share:g} {one.combination.name}",
                )
                for one in demands
            ]
            most = [max(reversed(rows), key=lambda row: row[0]) for rows in (plain, counted)]
            found.append(HoldDown(number, *most[0], *most[1], share, uplift.BOOK, uplift.CLAUSE, known))
        return tuple(found)


def _widest(demands):
    """Demands that no other holds: with the same dead load and no less of anything that comes and goes."""

    def holds(one, other):
        return one.factor("dead") == other.factor("dead") and all(
            one.factor(kind) >= factor for kind, factor in other.factors if kind != "dead"
        )

    kept = []
    for one in demands:
        if not any(
            holds(other.combination, one.combination) for other in demands if other is not one and other not in kept
        ):
            kept.append(one)
    return kept


def _bending(member, demands, name, peak_of, braces):
    """Bending one way under the combination that asks most; None where nothing bends it so."""
    peaks = [(one, peak_of(one.all_load)) for one in demands]
    lead, most = max(peaks, key=lambda pair: abs(pair[1].value) / pair[0].combination.time_factor)
    found = []
    for one, peak in peaks:
        # a shorter load is worth less than in proportion, since braces count for less: so this one cannot ask more
        worth = min(1.0, one.combination.time_factor / lead.combination.time_factor)
        if abs(peak.value) < _NOTHING or one is not lead and abs(peak.value) <= worth * abs(most.value):
            continue
        given, used = bending.bending_value(
            member.material, width=member.width, depth=member.depth, plies=member.plies, ply_width=member.ply_width,
            unbraced_length=braces, time_factor=one.combination.time_factor, wet=member.wet,
            sharing_members=3 if member.repetitive else (1 if member.repetitive is False else None), case="not listed",
        )  # fmt: skip
        stress = bending_stress(moment=abs(peak.value), section_modulus=member.section_modulus)
        found.append(_check(
            name, "bending", "the wood at the edge that is stretched gives way here", stress, float(given), peak,
            one.combination, "NDS 2018 3.3.1", "f_b = M / S <= F_b' = F_b * factors", member, used,
            (("M", abs(peak.value), "moment"), ("S", member.section_modulus, "section modulus"), ("f_b", stress, "stress"),
             ("F_b", member.material.bending, "stress"), ("F_b'", float(given), "stress")),
        ))  # fmt: skip
    return _worst(found)


def _shear(member, demands):
    found = []
    for one in demands:
        peak = one.all_load.shear
        stress = rectangle_shear_stress(shear=peak.value, width=member.width, depth=member.depth)
        given, used = shear.shear_value(member.material, time_factor=one.combination.time_factor, wet=member.wet)
        found.append(_check(
            "shear, the whole push counts", "shear", "the fibres slide along each other beside a support", stress, given, peak,
            one.combination, "NDS 2018 3.4.2", "f_v = 3 V / (2 b d) <= F_v' = F_v * C_D * C_M", member, used,
            (("V", peak.value, "force"), ("b", member.width, "section length"), ("d", member.depth, "section length"),
             ("f_v", stress, "stress"), ("F_v", member.material.shear, "stress"), ("F_v'", given, "stress")),
        ))  # fmt: skip
    return _worst(found)


def _check(name, kind, sentence, asked, given, peak, combination, clause, formula, member, used, numbers):
    return ArrangedCheck(
        name=name, kind=kind, sentence=sentence, asked=asked, given=given, share=asked / given, dimension="stress",
        position=peak.position, where="", combination=combination.name, clause=clause, formula=formula, substitute=numbers,
        factors=used, verified=least_verified([member.material.verified, combination.verified,
                                               *(one.verified for one in used)]), on=peak.on,
    )  # fmt: skip


def _worst(checks):
    return max(checks, key=lambda one: (one.share, one.asked), default=None)


def _sags(member, demands):
    """Sag of the spans and of the overhangs, of each the one that uses most of its limit."""
    demands = _widest(demands)
    live, total, clauses = deflection.sag_divisors(member.use)
    tip = Factor(
        "times the overhang",
        factors.scalar("overhang_counts_times"),
        "the length of an overhang counts so often",
        "IBC 1604.3",
        factors.verified("overhang_counts_times"),
    )
    for name, is_span, used in (("sag of a span", True, ()), ("sag of the tip", False, (tip,))):
        counts = used[0].value if used else 1.0
        parts = [(a, b) for a, b, inner in member.stretches if inner is is_span]
        for load, divisor, which, envelopes in (
            ("live load", live, "live", [(one, one.passing) for one in demands if one.passing is not None]),
            ("all load", total, "total", [(one, one.all_load) for one in demands]),
        ):
            found = []
            for a, b in parts:
                for one, envelope in envelopes:
                    asked, limit = envelope.deflection_between(a, b), counts * (b - a) / divisor
                    found.append((abs(asked.value) / limit, asked, limit, one.combination, (a, b)))
            if found:
                first = max(one[0] for one in found) * (1 - 1e-9)
                yield _sag(
                    member, name, load, next(one for one in found if one[0] >= first), used, divisor, clauses[which]
                )


def _sag(member, name, load, worst, used, divisor, clause):
    share, asked, limit, combination, (start, end) = worst
    over = f"{used[0].value:.0f} x overhang" if used else "span"
    return ArrangedCheck(
        name=f"{name}, {load}{' (up)' if asked.value < 0 else ''}", kind="sag",
        sentence=f"{'it rises' if asked.value < 0 else 'it drops'} this much here", asked=abs(asked.value), given=limit,
        share=share, dimension="small length", position=asked.position, where=f"from {start:.0f} to {end:.0f} mm along it",
        combination=combination.name, clause=clause[0], formula=f"sag <= {over}/{divisor:.0f}",
        substitute=(("sag", abs(asked.value), "small length"), ("limit", limit, "small length"), ("E", member.material.modulus, "stress"),
                    ("I", member.inertia, "inertia")),
        factors=used, verified=least_verified([clause[1], member.material.verified, *(one.verified for one in used)]), on=asked.on,
    )  # fmt: skip


def _seats(member, demands):
    demands = _widest(demands)
    for number, (place, seat) in enumerate(zip(member.supports, member.seats)):
        name = _SEATS[number] if number < len(_SEATS) else f"{number + 1}th"
        to_end = max(min(place, member.length - place) - seat.length / 2, 0.0)
        one = SeatMember(member.material, member.width, seat, member.wet, name, place, to_end)
        pushes = [(demand.combination, max(demand.all_load.greatest_reaction(number).value, 0.0)) for demand in demands]
        yield from bearing.seat_checks(one, pushes)


def _running(member, demands):
    bending.refuse_unknown_material(member.material)
    found, refused = [], {}
    for name, peak_of, braces in (
        ("bending, sagging", lambda envelope: envelope.sagging, member.top_braces),
        ("bending, the other way", lambda envelope: envelope.hogging, member.bottom_braces),
    ):
        try:
            found.append(_bending(member, demands, name, peak_of, braces))
        except OutsideRule as refusal:
            refused[name] = str(refusal)
    checks = (
        *(one for one in found if one is not None),
        _shear(member, demands),
        *_sags(member, demands),
        *_seats(member, demands),
    )
    if refused:
        raise Partly("; ".join(dict.fromkeys(refused.values())), checks, " and ".join(refused))
    return checks


#: By kind of member.
RULES = {ContinuousMember: _running}
