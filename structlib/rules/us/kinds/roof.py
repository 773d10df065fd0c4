"""Rafters, ties, their joints and ridge boards: the rules by kind, and what this rulebook answers of a roof."""

from dataclasses import replace
from fractions import Fraction
from functools import lru_cache

import numpy

from structlib.ground.refusals import OutsideRule
from structlib.ground.showing import show
from structlib.mechanics.formulas.stress import rectangle_shear_stress
from structlib.rules.check import Check, Factor, least_verified
from structlib.rules.keyed import KeyedNumbers
from structlib.rules.members import (
    STRENGTH,
    BlownSnow,
    BlownSnowRule,
    JointNails,
    Partly,
    RafterMember,
    RidgeBoardMember,
    RoofSnow,
    TieJointMember,
    TieMember,
)  # fmt: skip
from structlib.rules.us import combined, deflection, dowels, factors, roof_ties, shear, snow

_NAIL = "16d common"
_STEEP, _FLAT = "rafter steeper than 3:12, no finished ceiling", "any other structural member"
_STEEP_FROM = 3  # in 12: the row's own words
_SNOW = KeyedNumbers("us_snow_numbers")


@lru_cache(maxsize=64)
def _ground(load):
    return snow.ground_snow(load, edition=snow.EDITION, basis=snow.BASIS, source="typed by the reader")


class Roofs:
    """Answers about a roof: its snow, what must hold its rafters, and the nails of a tie."""

    def roof_snow(self, ground, rise, exposed, below):
        """Return the even snow that is asked of a roof for a snow on the ground (ASCE 7-16 7.3, 7.4).

        Parameters
        ----------
        ground : float
            Ground snow load, allowable-stress basis [MPa].
        rise : float
            Rise in 12 [-].
        exposed : str
            'sheltered', 'partially exposed' or 'fully exposed' [-].
        below : str
            'heated', 'cold ventilated roof' or 'unheated' [-].

        Returns
        -------
        structlib.rules.members.RoofSnow
            The load on plan, and how [MPa].

        Examples
        --------
        >>> from structlib.ground.units import psf
        >>> round(Roofs().roof_snow(40 * psf, 6, "partially exposed", "heated").load / psf, 6)
        28.0
        """
        # the roughness with the greatest factors; a surface that holds its snow
        wind, warmth = snow.exposure_factor(roughness="B", exposure=exposed), snow.thermal_factor(below)
        load, clause, rule = snow.roof_snow(_ground(ground), rise=rise, exposure=wind.value, thermal=warmth.value)
        known = least_verified([rule, wind.verified, warmth.verified])
        told = f"{clause}, {known}; C_e {wind.value:g}, C_t {warmth.value:g}"
        return RoofSnow(load, told, snow.EDITION, known)

    def blown_snow(self, ground, roof_snow, rise, half):
        """Return the snow on either slope when wind has cleared one of them (ASCE 7-16 7.6.1).

        Parameters
        ----------
        ground, roof_snow : float
            Ground snow of ASCE 7-16, allowable-stress basis, and the even snow on the roof [MPa].
        rise : float
            Rise in 12 [-].
        half : float
            Plan distance from eave to ridge [mm].

        Returns
        -------
        structlib.rules.members.BlownSnow
            Both loads; `NotAsked` is raised where the rule asks for none [MPa].

        Examples
        --------
        >>> from structlib.ground.units import ft, psf
        >>> found = Roofs().blown_snow(40 * psf, 30 * psf, 6, 12 * ft)
        >>> round(found.leeward / psf, 6), found.windward
        (40.0, 0.0)
        """
        return _blown_snow(ground, roof_snow, rise, half)

    def blown_snow_rule(self):
        """Return when snow on one slope alone is asked for (ASCE 7-16 7.6.1).

        Returns
        -------
        structlib.rules.members.BlownSnowRule
            Rise in 12 from and to, clause, and the ground snow that is meant [-].

        Examples
        --------
        >>> Roofs().blown_snow_rule().asks[:61]
        'ASCE 7-16 7.6.1 also asks for all of the ground snow on one s'
        """
        least, greatest = _SNOW.number("unbalanced_rise_least"), _SNOW.number("unbalanced_rise_greatest")
        clause = f"{snow.EDITION} 7.6.1"
        return BlownSnowRule(
            least, greatest, clause,
            f"{clause} also asks for all of the ground snow on one slope alone, from {Fraction(least)} in 12 to "
            f"{Fraction(greatest)} in 12.",
            f"The ground snow must be that of {snow.EDITION}; a number of ASCE 7-22 is another one.",
        )  # fmt: skip

    def roof_gates(self, rise, height):
        """Say why the ridge of a pair must be a beam, or why its tie is for an engineer (IRC 2021 R802.3, R802.5.2).

        Parameters
        ----------
        rise : float
            Rise in 12 [-].
        height : float
            Height of the tie as a share of the rise [-].

        Returns
        -------
        tuple of str
            One sentence a gate [-].

        Examples
        --------
        >>> Roofs().roof_gates(6, 0.0), Roofs().roof_gates(2, 0.0)[0][:55]
        ((), 'The ridge must be a beam here: the slope is under 3 in ')
        """
        return _roof_gates(rise, height)

    def raised_tie(self, height):
        """Return what a tie above the plate does to spans and nails that are read from tables (IRC 2021 R802.5.2).

        Parameters
        ----------
        height : float
            Height of the tie as a share of the rise, up to one third [-].

        Returns
        -------
        tuple of structlib.rules.check.Factor
            On the span of the rafter table and on the nails of the heel table [-].

        Examples
        --------
        >>> [one.value for one in Roofs().raised_tie(0.25)]
        [0.76, 1.33]
        """
        found = roof_ties.raised_tie_adjustment(height_fraction=height)
        return (
            Factor(
                "span of the rafter table", found.span_factor, found.row, "IRC 2021 R802.4.1 note a", found.verified
            ),
            Factor("nails of the heel table", found.joint_factor, found.row, "IRC 2021 R802.5.2", found.verified),
        )

    def joint_nails(self, joint, pulls):
        """Return the nails of each joint of a tie: the larger of table and calculation (IRC 2021 R802.5.2, NDS 2018 12.3).

        Parameters
        ----------
        joint : structlib.rules.members.TieJointMember
            The joint [-].
        pulls : iterable of structlib.rules.members.Pull
            What each combination pulls it with [N].

        Returns
        -------
        structlib.rules.members.JointNails
            The count, or why there is none [-].

        Examples
        --------
        >>> from structlib.ground.lumber import find_material
        >>> from structlib.ground.units import ft, inch, lb, psf
        >>> from structlib.rules.members import Pull
        >>> from structlib.rules.us.book import RULEBOOK
        >>> fir = find_material("Douglas Fir-Larch", "No.2")
        >>> rafter = RafterMember(fir, 1.5 * inch, 7.25 * inch, 1, 13.4 * ft, 6.0, 16 * inch)
        >>> tie = TieMember(fir, 1.5 * inch, 5.5 * inch, 1, "2x6", 0.0, 16 * inch)
        >>> joint = TieJointMember(rafter, tie, 24 * ft, True, 40 * psf)
        >>> RULEBOOK.joint_nails(joint, [Pull(RULEBOOK.combinations({"snow"})[1], 720 * lb)]).told[:22]
        "9 by the code's table "
        """
        try:
            found = [_worked_out(joint, pull) for pull in _asking(pulls, "force") if pull.force > 0]
        except OutsideRule as refused:
            return JointNails(None, _NAIL, str(refused), "")
        if not found:
            return JointNails(0, _NAIL, "nothing pulls", "computed")
        most = max(found, key=lambda one: one.nails)
        alone = f"by calculation alone {most.nails} ({roof_ties.NAIL_CLAUSE}; {most.verified})"
        if joint.snowy and not joint.ground_snow:
            return JointNails(
                None, _NAIL, f"type the ground snow, by which the code's table goes; {alone}", most.verified
            )
        try:
            cell = roof_ties.heel_table_nails(
                rise=joint.rafter.rise, spacing=joint.tie.spacing, ground_snow=_ground(joint.ground_snow or 0.0),
                building_span=joint.building_span, edition=roof_ties.HEEL_EDITION,
            )  # fmt: skip
            count = roof_ties.heel_count(cell, most, height_fraction=joint.tie.height)
        except OutsideRule as refused:
            return JointNails(None, _NAIL, f"{refused}; {alone}", most.verified)
        return JointNails(count.nails, _NAIL, count.words, count.verified)


@lru_cache(maxsize=64)
def _roof_gates(rise, height):
    if roof_ties.tie_kind(height_fraction=height) != "rafter tie":
        return (
            f"A tie {show(height, 'ratio')} of the way up is above the lowest third. The code has no number for it: "
            "it is engineered. Only what statics asks is shown.",
        )
    needed = roof_ties.ridge_beam_needed(rise=rise, tie_height_fraction=height)
    if needed.beam_needed:
        return (f"The ridge must be a beam here: {'; '.join(needed.reasons)}. Only what is asked is shown.",)
    return ()


@lru_cache(maxsize=64)
def _blown_snow(ground, roof_snow, rise, half):
    found = snow.unbalanced_gable(
        _ground(ground), rise=rise, eave_to_ridge=half, simple_rafters=True, balanced=roof_snow
    )
    if found.surcharge:
        raise OutsideRule(
            "a roof this wide gets a drift behind its ridge, which is not followed along the rafters here"
        )
    return BlownSnow(found.leeward, found.windward, found.clause, snow.BASIS, found.verified)


_tension_value = lru_cache(maxsize=64)(combined.tension_value)


def _worked_out(joint, pull):
    if roof_ties.tie_kind(height_fraction=joint.tie.height) != "rafter tie":
        raise OutsideRule("a tie above the lowest third has a joint that is engineered")
    gravity = joint.rafter.material.specific_gravity or joint.tie.material.specific_gravity
    one = _one_nail(
        joint.rafter.width,
        gravity,
        joint.tie.ply_width,
        joint.tie.material.specific_gravity,
        pull.combination.time_factor,
    )
    return replace(one, demand=pull.force, nails=max(1, int(numpy.ceil(pull.force / one.value - 1e-9))))


@lru_cache(maxsize=64)
def _one_nail(thick, gravity, tie_thick, tie_gravity, time_factor):
    """One nail as it is counted, whatever it is asked."""
    rafter = dowels.wood_piece(thickness=thick, specific_gravity=gravity)
    tie = dowels.wood_piece(thickness=tie_thick, specific_gravity=tie_gravity)
    return roof_ties.heel_joint_nails(
        thrust=1.0, fastener=dowels.nail(_NAIL), rafter=rafter, tie=tie, time_factor=time_factor
    )


def _asking(demands, *names):
    """Demands that may govern: none of which another asks as much or more, each over its time factor.

    A strength never falls faster than its time factor, so what asks less over it never has the greater share.
    """
    scaled = [(one, [getattr(one, name) / one.combination.time_factor for name in names]) for one in demands]
    kept = []
    for number, (one, asked) in enumerate(scaled):
        others = [more for index, (_, more) in enumerate(scaled) if index < number or more != asked and index > number]
        if not any(all(theirs >= ours for theirs, ours in zip(other, asked)) for other in others):
            kept.append(one)
    return kept


def _rafter(rafter, demands):
    others = (_rafter_shear(rafter, demands), _rafter_sag(rafter, demands))
    try:
        return (*_rafter_strength(rafter, demands), *others)
    except OutsideRule as refusal:
        raise Partly(str(refusal), others, STRENGTH) from None


def _rafter_strength(rafter, demands):
    """Bending and compression together, for the combination that asks most."""
    close = rafter.spacing <= factors.length("repetitive_member_greatest_spacing") * (1 + 1e-9)
    found = []
    pressed = all(one.axial >= 0 for one in demands)
    for one in _asking(demands, "axial", "moment") if pressed else demands:
        if one.moment <= 0:
            continue
        for check in combined.rafter_checks(
            rafter.material, width=rafter.width, plies=rafter.plies, depth=rafter.depth, length=rafter.length, axial=one.axial,
            moment=one.moment, combination=one.combination.name, time_factor=one.combination.time_factor,
            sharing_members=factors.scalar("repetitive_member_least_count") if close else 1,
        ):  # fmt: skip
            found.append(replace(check, position=one.moment_at, kind="bending"))
    if not found:
        return ()
    worst = max(found, key=lambda check: check.share)
    if not numpy.isfinite(worst.share):
        raise OutsideRule(
            "the push along the rafter is more than that at which it bows out of its line, so it would "
            "not hold, and no share can be named; a deeper rafter pushes that further away"
        )
    return (worst,)


def _rafter_shear(rafter, demands):
    """Shear where the wall, or the tie, takes hold; nothing left out near the seat."""
    one = _asking(demands, "shear")[0]
    stress = rectangle_shear_stress(shear=one.shear, width=rafter.width, depth=rafter.depth)
    given, used = shear.shear_value(rafter.material, time_factor=one.combination.time_factor)
    return Check(
        "shear in the rafter",
        "shear",
        "the fibres slide along each other",
        stress,
        given,
        stress / given,
        "stress",
        one.shear_at,
        "",
        one.combination.name,
        "NDS 2018 3.4.2",
        "f_v = 3 V / (2 b d) <= F_v C_D",
        factors=used,
        verified=rafter.material.verified,
    )


def _rafter_sag(rafter, demands):
    """Sag square to the rafter from the straight line between eave and ridge, under what comes and goes."""
    most = max(demands, key=lambda one: one.sag)
    use = _STEEP if rafter.rise > _STEEP_FROM else _FLAT
    divisor, clause, verified = deflection.limit_divisor(use)
    limit = rafter.length / divisor
    clause = f"{clause}, slope length/{divisor:.0f}" + (", no ceiling on it" if use == _STEEP else "")
    return Check(
        "sag of the rafter",
        "sag",
        "the rafter sags between eave and ridge",
        most.sag,
        limit,
        most.sag / limit,
        "small length",
        most.sag_at,
        "",
        " and ".join(most.passing),
        clause,
        "sag <= length / n",
        verified=least_verified([verified, rafter.material.verified]),
    )


def _tie(tie, demands):
    """The pull in a tie against its tension value, holes and joints left out; its least size and spacing where they fail."""
    one = _asking(demands, "force")[0]
    value, used = _tension_value(
        tie.material, width=tie.ply_width, depth=tie.depth, time_factor=one.combination.time_factor
    )
    stress = one.force / tie.area
    least = roof_ties.rafter_tie_checks(width=tie.width, depth=tie.depth, spacing=tie.spacing)
    return (
        *(one for one in least if one.share > 1 + 1e-9),  # a limit that is kept is no question of strength
        Check(
            f"pull in a {tie.nominal} tie",
            "tie",
            "the tie is pulled",
            stress,
            value,
            stress / value,
            "stress",
            tie.height,
            "",
            one.combination.name,
            "NDS 2018 3.8.1",
            "f_t = T / A <= F_t'",
            verified=least_verified([tie.material.verified, *(factor.verified for factor in used)]),
        ),
    )


def _ridge_board(board, demands):
    return roof_ties.ridge_board_checks(
        board_width=board.width, board_depth=board.depth, rafter_depth=board.rafter_depth, rise=board.rise
    )


def _joint(joint, demands):
    """Nails there against the count that is asked."""
    if joint.nails is None:
        raise OutsideRule("how many nails hold each joint of the tie is not written; what is asked of it stays")
    needed = Roofs().joint_nails(joint, demands)
    if needed.nails is None:
        raise OutsideRule(f"no count of nails: {needed.told}")
    ground = (("ground snow", joint.ground_snow, "area load"),) if joint.ground_snow else ()
    return (
        Check(
            f"{needed.fastener} nails, each joint of the tie",
            "nails",
            "each joint passes the whole pull on",
            float(needed.nails),
            float(joint.nails),
            needed.nails / joint.nails,
            "count",
            joint.tie.height,
            "",
            "any",
            needed.told,
            "needed <= there",
            ground,
            verified=needed.verified,
        ),
    )


#: By kind of member.
RULES = {RafterMember: _rafter, TieMember: _tie, RidgeBoardMember: _ridge_board, TieJointMember: _joint}
