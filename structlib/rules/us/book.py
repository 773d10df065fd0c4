"""The United States rulebook for beams: every check in full for one member, and as arrays for a rack."""

from functools import lru_cache

import numpy

from structlib.ground.refusals import OutsideRule, check_choice
from structlib.rules.check import VARIABLE_TYPES, Check, Combination, least_verified
from structlib.rules.members import seat_of
from structlib.rules.us import bearing, bending, deflection, factors, service, shear
from structlib.rules.us.contract import Members
from structlib.rules.us.deflection import sag_divisors
from structlib.rules.us.inputs import check_words
from structlib.rules.us.stability import beam_stability_factor


class UnitedStates(Members):
    """NDS 2018 allowable stress, IRC 2021 limits, ASCE 7-16 combinations."""

    name = "United States"
    edition = "NDS 2018, IRC 2021, ASCE 7-16"

    def combinations(self, load_types):
        """Return the gravity combinations for the load types present, each with its time factor.

        Parameters
        ----------
        load_types : iterable of str
            Types that act on the member [-].

        Returns
        -------
        tuple of structlib.rules.check.Combination
            Dead load alone, and every combination that adds something to it [-].

        Notes
        -----
        ASCE 7-16 2.4.1; the shortest-lasting load sets the time factor (NDS 2018 2.3.2).

        Examples
        --------
        >>> [c.name for c in UnitedStates().combinations(["dead", "live"])]
        ['D', 'D + L']
        """
        words = check_words("load types", load_types)
        return _combinations(frozenset(check_choice("load type", word, ("dead",) + VARIABLE_TYPES) for word in words))

    def beam_checks(self, member, demands, use):
        """Return every check of one beam: bending, shear, bearing on both faces, seats, sag.

        Parameters
        ----------
        member : structlib.rules.check.BeamMember
            The beam [-].
        demands : tuple of structlib.rules.check.BeamDemand
            What each combination asks [-].
        use : structlib.rules.check.BeamUse
            What the beam carries, which sets the sag limits [-].

        Returns
        -------
        tuple of structlib.rules.check.Check
            One check a question, each for the combination that asks most [-].

        Raises
        ------
        OutsideRule
            When the member is outside the rules.

        Examples
        --------
        >>> from structlib.ground.lumber import find_material
        >>> from structlib.ground.units import ft, inch, plf
        >>> from structlib.house.beam import BeamChoice, BeamJob, TypedLoad, check_beam
        >>> from structlib.mechanics.beams import LineLoad
        >>> from structlib.rules.check import Seat
        >>> load = TypedLoad("live", LineLoad(0.0, 135 * inch, 100 * plf))
        >>> job = BeamJob(11 * ft, Seat(3 * inch), Seat(3 * inch), (load,), unbraced_length=0.0)
        >>> wood = find_material("Hem-Fir", "No.2")
        >>> found = check_beam(job, BeamChoice(wood, 1.5 * inch, 9.25 * inch, 2), UnitedStates())
        >>> checks = UnitedStates().beam_checks(found.member, found.demands, job.use)
        >>> checks[0].name, round(checks[0].given / wood.bending, 2)  # C_F 1.1, two plies share nothing
        ('bending', 1.1)
        """
        bending.refuse_unknown_material(member.material)
        checks = [_bending_check(member, demands)]
        shears = [(demand, shear.design_shear(demand, member)) for demand in demands]
        for end in ("left", "right"):
            checks.append(_shear_check(member, shears, end))
        for end, which in (("left", 0), ("right", -1)):
            seat = seat_of(member, end, position=0.0 if end == "left" else demands[0].span)
            checks.extend(
                bearing.seat_checks(seat, [(one.combination, one.solution.reactions[which].force) for one in demands])
            )
        checks.extend(deflection.sag_checks(member, demands, use))
        return tuple(checks)

    def leaves_out_load_near_seat(self, *, below, loaded_on):
        """Tell whether load within a depth of a seat may be left out of the shear there.

        Parameters
        ----------
        below : str
            What the end rests on: 'plate', 'post', 'steel', 'masonry' or 'hanger' [-].
        loaded_on : str
            Where the load comes in: 'top' or 'side' [-].

        Returns
        -------
        bool
            True only for full bearing below and load on top (NDS 2018 3.4.3.1) [-].

        Examples
        --------
        >>> UnitedStates().leaves_out_load_near_seat(below="hanger", loaded_on="top")
        False
        """
        return shear.loads_near_support_may_be_left_out(below=below, loaded_on=loaded_on)

    def modulus_factor(self, material, *, wet):
        """Return what the modulus of elasticity is multiplied by in service.

        Parameters
        ----------
        material : structlib.ground.lumber.Material
            The wood [-].
        wet : bool
            True where the wood stays above 19 % moisture in use [-].

        Returns
        -------
        float
            Wet service factor on the modulus; 1.0 when dry [-].

        Raises
        ------
        OutsideRule
            For LVL in wet service.

        Examples
        --------
        >>> from structlib.ground.lumber import find_material
        >>> UnitedStates().modulus_factor(find_material("Hem-Fir", "No.2"), wet=True)
        0.9
        """
        return bending.wet_factor(material, value="modulus", wet=wet)

    def in_service(self, material, *, incised, treatment):
        """Return a wood with the values that it has as it is put in: see `service.in_service`.

        Parameters
        ----------
        material : structlib.ground.lumber.Material
            The wood [-].
        incised : bool
            True where small cuts were made into it to let preservative in [-].
        treatment : str
            'none', 'preservative' or 'fire retardant' [-].

        Returns
        -------
        structlib.ground.lumber.Material
            The wood [-].

        Raises
        ------
        OutsideRule
            Where no factors are published for it.

        Examples
        --------
        >>> from structlib.ground.lumber import find_material
        >>> UnitedStates().in_service(find_material("Hem-Fir", "No.2"), incised=True, treatment="none").name
        'Hem-Fir No.2, incised'
        """
        return service.in_service(material, incised=incised, treatment=treatment)

    def prepare(self, rack):
        """Return the strengths of every candidate of a rack, before time, moisture and bracing.

        Parameters
        ----------
        rack : structlib.house.sizing.Rack
            The candidates [-].

        Returns
        -------
        dict of numpy.ndarray
            Strength columns, one value a candidate; columns ``wet ...`` are wet service factors [MPa, -].

        Notes
        -----
        A candidate that the rules do not cover, such as a Stud grade 2x10, has no strength and is never
        chosen; `beam_checks` refuses it with the reason.

        Examples
        --------
        >>> from structlib.ground.lumber import find_material
        >>> from structlib.ground.units import inch
        >>> from structlib.house.sizing import build_rack
        >>> wood = find_material("Hem-Fir", "No.2")
        >>> rack = build_rack([(wood, 1.5 * inch, 9.25 * inch)], plies=(2, 3))
        >>> [round(float(value / wood.bending), 3) for value in UnitedStates().prepare(rack)["bending"]]
        [1.1, 1.265]
        """
        count = len(rack.depth)
        base, volume = numpy.empty(count), numpy.ones(count)
        shear_value, crush, stability_modulus = numpy.empty(count), numpy.empty(count), numpy.empty(count)
        wet = {value: numpy.zeros(count) for value in ("bending", "shear", "bearing", "modulus")}
        for number, material in enumerate(rack.materials):
            rows = rack.rows_of(number)
            bending.refuse_unknown_material(material)
            size = _size_or_nothing(material, rack.ply_width[rows], rack.depth[rows])
            repeats = bending.repetitive_factor(material, sharing_members=rack.plies[rows])
            is_lvl = material.kind == "lvl"
            # a volume factor over 1 raises the bending value before bracing, as a size factor does
            raised = numpy.where(size > 0, numpy.maximum(size, 1.0), 0.0) if is_lvl else size
            base[rows] = material.bending * repeats * raised
            volume[rows] = numpy.minimum(size, 1.0) if is_lvl else 1.0
            for value, column in wet.items():
                column[rows] = 0.0 if is_lvl else bending.wet_factor(material, value=value, wet=True)
            shear_value[rows], crush[rows] = material.shear, material.bearing
            stability_modulus[rows] = material.modulus_stability
        return {
            "bending": base,
            "volume": volume,
            "shear": shear_value,
            "bearing": crush,
            "modulus_stability": stability_modulus,
            **{f"wet {value}": column for value, column in wet.items()},
        }

    def beam_shares(self, rack, strengths, demand, use):
        """Return the share used by every candidate for one combination, as arrays.

        Parameters
        ----------
        rack : structlib.house.sizing.Rack
            The candidates [-].
        strengths : dict of numpy.ndarray
            What `prepare` returned for this rack [MPa].
        demand : structlib.house.sizing.RackDemand
            What the combination asks of each candidate [-].
        use : structlib.rules.check.BeamUse
            What the beam carries [-].

        Returns
        -------
        dict of numpy.ndarray
            Share by check name [-].

        Examples
        --------
        >>> from structlib.ground.lumber import find_material
        >>> from structlib.ground.units import ft, inch, plf
        >>> from structlib.house.beam import BeamJob, TypedLoad
        >>> from structlib.mechanics.beams import LineLoad
        >>> from structlib.rules.check import Seat
        >>> load = TypedLoad("live", LineLoad(0.0, 135 * inch, 100 * plf))
        >>> job = BeamJob(11 * ft, Seat(3 * inch), Seat(3 * inch), (load,), unbraced_length=0.0)
        >>> from structlib.house.sizing import build_rack, rack_demand
        >>> rack = build_rack([(find_material("Hem-Fir", "No.2"), 1.5 * inch, 9.25 * inch)], plies=(2, 4))
        >>> book = UnitedStates()
        >>> demand = rack_demand(job, rack, book.combinations(["live"])[-1], book)
        >>> shares = book.beam_shares(rack, book.prepare(rack), demand, job.use)["sag under live load"]
        >>> round(float(shares[0] / shares[1]), 6)  # twice the plies, half the sag
        2.0
        """
        time = demand.combination.time_factor
        moist = {
            value: strengths[f"wet {value}"] if demand.wet else 1.0
            for value in ("bending", "shear", "bearing", "modulus")
        }
        starred = strengths["bending"] * time * moist["bending"]
        covered = starred > 0
        stability = beam_stability_factor(
            unbraced_length=demand.unbraced_length,
            depth=rack.depth,
            width=rack.width,
            bending_value=numpy.where(covered, starred, 1.0),
            case=_stability_case(demand),
            modulus_stability=strengths["modulus_stability"] * numpy.where(covered, moist["modulus"], 1.0),
        )
        value = starred * numpy.minimum(strengths["volume"], stability)
        with numpy.errstate(divide="ignore"):
            shares = {"bending": demand.moment / (rack.section_modulus * value)}
            shares["shear"] = 1.5 * demand.shear / (rack.area * strengths["shear"] * time * moist["shear"])
        crush, seats = numpy.zeros(len(rack.depth)), numpy.zeros(len(rack.depth))
        for seat, reaction in ((demand.left, demand.left_reaction), (demand.right, demand.right_reaction)):
            if seat.below == "hanger":
                continue
            weaker = strengths["bearing"]
            plate = bearing.plate_below(seat)
            if plate is not None:
                weaker = numpy.minimum(weaker, plate[0])
            with numpy.errstate(divide="ignore"):
                crush = numpy.maximum(crush, reaction / (rack.width * seat.length) / (weaker * moist["bearing"]))
            seats = numpy.maximum(seats, factors.least_seat(seat.below)[0] / seat.length)
        shares["bearing"], shares["seat length"] = crush, seats
        live_divisor, total_divisor, _ = sag_divisors(use)
        shares["sag under live load"] = demand.variable_deflection * live_divisor / demand.span
        shares["sag under all load"] = demand.total_deflection * total_divisor / demand.span
        if use.creep_decides:
            after_years = deflection.long_term_deflection(
                lasting=demand.lasting_deflection,
                passing=demand.total_deflection - demand.lasting_deflection,
                creep_factor=deflection.creep_factor(wet=demand.wet),
            )
            shares["sag after years"] = after_years * total_divisor / demand.span
        return shares


@lru_cache(maxsize=16)
def _combinations(types):
    found = []
    for row in factors.combination_rows():
        if {name for name, _ in row["factors"]} <= types | {"dead"}:
            time_factor, time_name = factors.time_factor(name for name, _ in row["factors"])
            found.append(
                Combination(row["name"], row["factors"], time_factor, time_name, row["clause"], row["verified"])
            )
    return tuple(found)


def _size_or_nothing(material, ply_width, depth):
    """Size factor of each piece; zero for one that the rules do not cover."""
    try:
        return bending.size_factor(material, width=ply_width, depth=depth)[0] * numpy.ones(len(depth))
    except OutsideRule:
        found = numpy.zeros(len(depth))
    for row in range(len(depth)):
        try:
            found[row] = bending.size_factor(material, width=float(ply_width[row]), depth=float(depth[row]))[0]
        except OutsideRule:
            continue
    return found


def _stability_case(demand):
    """Row of the effective length table: only an evenly loaded beam is the one it lists as uniform."""
    return "single span, uniform" if demand.evenly_loaded else "not listed"


def _bent(member, demand):
    """Share, peak of the moment, bending value and its factors under one combination."""
    peak = demand.solution.extremes.moment
    value, used = bending.bending_value(
        member.material,
        width=member.width,
        depth=member.depth,
        plies=member.plies,
        ply_width=member.ply_width,
        unbraced_length=member.unbraced_length,
        time_factor=demand.combination.time_factor,
        wet=member.wet,
        sharing_members=3 if member.repetitive else (1 if member.repetitive is False else None),
        case=_stability_case(demand),
    )
    return abs(peak.value) / member.section_modulus / float(value), peak, float(value), used


def _bending_check(member, demands):
    found = [_bent(member, demand) for demand in demands]
    demand, (share, peak, given, used) = max(zip(demands, found), key=lambda one: one[1][0])
    stress = abs(peak.value) / member.section_modulus
    return Check(
        name="bending",
        kind="bending",
        sentence="the wood at the bottom edge is stretched most here",
        asked=stress,
        given=given,
        share=share,
        dimension="stress",
        position=peak.position,
        where="at the peak of the moment",
        combination=demand.combination.name,
        clause="NDS 2018 3.3.1",
        formula="f_b = M / S <= F_b' = F_b * factors",
        substitute=(
            ("M", abs(peak.value), "moment"),
            ("S", member.section_modulus, "section modulus"),
            ("f_b", stress, "stress"),
            ("F_b", member.material.bending, "stress"),
            ("F_b'", given, "stress"),
        ),
        factors=used,
        verified=least_verified([member.material.verified] + [f.verified for f in used]),
    )


def _shear_check(member, shears, end):
    which = 0 if end == "left" else 1
    # what asks most is the greatest push for what the wood gives as long as it lasts
    demand, found = max(shears, key=lambda one: abs(one[1][which][0]) / one[0].combination.time_factor)
    force, position, left_out = found[which]
    given, used = shear.shear_value(member.material, time_factor=demand.combination.time_factor, wet=member.wet)
    stress = 1.5 * abs(force) / member.area
    reason = "load within a depth of the seat left out" if left_out else "the whole push of the seat counts"
    return Check(
        name=f"shear, {end} end",
        kind="shear",
        sentence="the fibres slide along each other near the end",
        asked=stress,
        given=given,
        share=stress / given,
        dimension="stress",
        position=position,
        where=f"near the {end} seat ({reason})",
        combination=demand.combination.name,
        clause="NDS 2018 3.4.2" + (", 3.4.3.1" if left_out else ""),
        formula="f_v = 3 V / (2 b d) <= F_v' = F_v * C_D * C_M",
        substitute=(
            ("V", abs(force), "force"),
            ("b", member.width, "section length"),
            ("d", member.depth, "section length"),
            ("f_v", stress, "stress"),
            ("F_v", member.material.shear, "stress"),
            ("F_v'", given, "stress"),
        ),
        factors=used,
        verified=least_verified([member.material.verified, used[-1].verified]),
    )


RULEBOOK = UnitedStates()
