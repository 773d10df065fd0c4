"""Old joists and cuts in them: every wood compared at once, the code's limits on a cut, and what is left there."""

from functools import cache, lru_cache

from structlib.ground.refusals import OutsideRule
from structlib.ground.tables import table_row
from structlib.ground.units import inch, psf
from structlib.rules.check import VARIABLE_TYPES, least_verified
from structlib.rules.members import (
    AT_CUT,
    Compared,
    CutLimits,
    CutMember,
    MeasuredJoist,
    Notch,
    Partly,
    Question,
    Sharing,
    acting,
)
from structlib.rules.us import bending, deflection, factors, notched_ends, notches, old_joists

_NO_GRADE = (
    "Wood with large knots or long splits may be below the lowest grade listed. There no number is published and none "
    "is shown: only a grader can tell."
)
_LIMITS = (
    "notch_depth_divisor",
    "notch_length_divisor",
    "hole_diameter_divisor",
    "hole_edge_distance",
    "notch_free_thirds",
)


class OldWood:
    """Answers about joists and old wood: what every wood gives that one may be of, how its size counts, how far it is cut."""

    def sharing(self):
        """Return how far apart three or more joists may stand and still share their load (NDS 2018 4.3.9).

        Returns
        -------
        structlib.rules.members.Sharing
            The spacing, its clause, and how well it is known [mm, -].

        Examples
        --------
        >>> round(OldWood().sharing().spacing / inch, 6)
        24.0
        """
        key = "repetitive_member_greatest_spacing"
        return Sharing(factors.length(key), "NDS 2018 4.3.9", factors.verified(key))

    def compared_woods(self, member, demands):
        """Compare a joist as measured, or the wood left at its cut, with every wood that it may be of (NDS 2018 4.3, 3.4).

        Parameters
        ----------
        member : structlib.rules.members.MeasuredJoist or structlib.rules.members.CutMember
            The joist, or its cut [-].
        demands : tuple of structlib.rules.members.MeasuredDemand or structlib.rules.members.CutDemand
            What each combination asks [-].

        Returns
        -------
        structlib.rules.members.Compared
            The woods, and every question as arrays; `OutsideRule` is raised where no wood meant has values [-].

        Examples
        --------
        >>> from structlib.ground.measured_sections import measured_section
        >>> from structlib.ground.units import ft, psi
        >>> from structlib.rules.members import MeasuredDemand
        >>> from structlib.rules.us.book import RULEBOOK
        >>> joist = MeasuredJoist(measured_section("sawn", width=2*inch, depth=8*inch), 16*inch, species="Hem-Fir")
        >>> asked = (MeasuredDemand(RULEBOOK.combinations(["live"])[1], 13*ft, 900*psi, 40*psi, 9e4, 3e4),)
        >>> found = RULEBOOK.compared_woods(joist, asked)
        >>> [wood.grade for wood in found.woods], [round(float(one), 2) for one in found.question("bending").shares]
        (['Select Structural', 'No.1', 'No.2', 'No.3'], [0.51, 0.73, 0.84, 1.42])
        """
        return (_at_cut if isinstance(member, CutMember) else _whole)(member, tuple(demands))

    def size_on_bending(self, material, width, depth):
        """Return what the size of a piece does to the bending value listed for its wood (NDS 2018 4.3.6, 8.3.6).

        Parameters
        ----------
        material : structlib.ground.lumber.Material
            The wood [-].
        width, depth : float
            Size of one piece [mm].

        Returns
        -------
        float
            The factor [-].

        Examples
        --------
        >>> from structlib.ground.lumber import find_material
        >>> OldWood().size_on_bending(find_material("Hem-Fir", "No.2"), 1.5 * inch, 7.25 * inch)
        1.2
        """
        return float(bending.size_factor(material, width=width, depth=depth)[0])

    def cut_limits(self, member):
        """Return how far a sawn joist may be cut, and where (IRC 2021 R502.8.1).

        Parameters
        ----------
        member : structlib.rules.members.CutMember
            The joist with its cut, or with none yet [-].

        Returns
        -------
        structlib.rules.members.CutLimits
            The limits; `OutsideRule` is raised for an engineered member [mm].

        Examples
        --------
        >>> from structlib.ground.measured_sections import measured_section
        >>> from structlib.ground.units import ft
        >>> joist = MeasuredJoist(measured_section("sawn", width=2*inch, depth=9*inch), 16*inch)
        >>> found = OldWood().cut_limits(CutMember(joist, 12*ft, None))
        >>> [round(one / inch, 2) for one in (found.notch_depth, found.notch_length, found.hole_width, found.hole_edge)]
        [1.5, 3.0, 3.0, 2.0]
        """
        joist, cut = notches.check_joist(_sawn(member)), member.cut
        depth, span, least = joist.depth, joist.span, notches.cut_limit("hole_edge_distance")
        deep, long, wide = (
            depth / notches.cut_limit(f"{one}_divisor") for one in ("notch_depth", "notch_length", "hole_diameter")
        )
        known = _limits_known()
        band = ((0.0, span, least, depth - least),) if depth > 2 * least else ()
        if not isinstance(cut, Notch):
            return CutLimits(deep, long, wide, least, known, band)
        if any(member.ends):
            greatest = Notch(cut.start, cut.end, depth / notches.cut_limit("end_notch_depth_divisor"), cut.face)
            return CutLimits(deep, long, wide, least, known, (), greatest.box(depth))
        if cut.face == "bottom" and notches.no_bottom_notch(joist):
            return CutLimits(deep, long, wide, least, known)
        start, end = max(0.0, cut.middle - long / 2), min(span, cut.middle + long / 2)
        _, _, *heights = Notch(start, end, deep, cut.face).box(depth)
        boxes = tuple((*third, *heights) for third in ((0.0, span / 3), (2 * span / 3, span)))
        inside = end > span / 3 and start < 2 * span / 3
        return CutLimits(deep, long, wide, least, known, boxes, None if inside else (start, end, *heights))

    def measured_conditions(self, joist, live):
        """Say what the values of an old joist stand on, and for which rooms its live load is (NDS 2018 4.3.9, IRC R301.5).

        Parameters
        ----------
        joist : structlib.rules.members.MeasuredJoist
            The joist [-].
        live : float
            Live load of its floor [MPa].

        Returns
        -------
        tuple of str
            One sentence a condition [-].

        Examples
        --------
        >>> from structlib.ground.measured_sections import measured_section
        >>> joist = MeasuredJoist(measured_section("sawn", width=2*inch, depth=9*inch), 32*inch)
        >>> OldWood().measured_conditions(joist, 40 * psf), len(OldWood().measured_conditions(joist, 30 * psf))
        ((), 1)
        """
        found, nearest = [], factors.length("repetitive_member_greatest_spacing")
        try:
            timber = all(wood.kind == "timber" for wood in _values(joist).woods)
        except OutsideRule:
            timber = True
        if joist.spacing <= nearest * (1 + 1e-9) and not timber:
            found.append(
                f"Joists no more than {nearest / inch:g} in apart count as helped by their neighbours through the floor: "
                f"{100 * (factors.scalar('repetitive_member_factor') - 1):.0f} % more in bending (NDS 2018 4.3.9). A loose "
                "floor, or fewer than three joists, does not give that."
            )
        rooms, sleeping = (
            table_row("us_live_loads", rulebook="IRC", use=use)["area_load_psf"]
            for use in ("rooms other than sleeping rooms", "sleeping rooms")
        )
        if live < rooms * psf * (1 - 1e-9):
            found.append(
                f"Under {rooms:g} psf of live load is for sleeping rooms ({sleeping:g} psf) and attics; other rooms of a house "
                f"ask {rooms:g} psf (IRC Table R301.5)."
            )
        return tuple(found)


@cache
def _limits_known():
    return least_verified(notches.limit_verified(one) for one in _LIMITS)


def _values(joist):
    if not joist.graded:
        raise OutsideRule(_NO_GRADE)
    return old_joists.wood_values(
        joist.section, spacing=joist.spacing, plies=joist.plies, species=joist.species, grade=joist.grade
    )


def _most(demands, asked):
    """The combination that asks most of a stress: what lasts longer gives less."""
    return max(reversed(demands), key=lambda one: asked(one) / one.combination.time_factor)


def _stress(kind, name, demands, asked, values, clause, verified):
    """A stress against a value of each wood, under the combination that asks most."""
    most = _most(demands, asked)
    return Question(
        kind,
        name,
        asked(most),
        values * most.combination.time_factor,
        "stress",
        acting(most.combination),
        most.combination.name,
        clause,
        verified,
    )


@lru_cache(maxsize=256)
def _whole(joist, demands):
    values = _values(joist)
    known, modulus = values.least_known, values.modulus
    divisor, clause, known_limit = deflection.limit_divisor(joist.supports)
    total, _, known_total = factors.total_limit()
    creep = deflection.creep_factor(wet=False)
    live = max(demands, key=lambda one: one.passing_sag)
    years = max(demands, key=lambda one: creep * one.lasting_sag + one.passing_sag)
    passing = acting(live.combination, VARIABLE_TYPES)
    known_years = least_verified((known, known_total, factors.verified("creep_dry")))
    return Compared(values.woods, values.verified, (
        _stress("bending", "bending", demands, lambda one: one.bending_stress, values.bending, "NDS 2018 4.3", known),
        _stress("shear", "shear at the ends", demands, lambda one: one.shear_stress, values.shear, "NDS 2018 3.4.2", known),
        Question("sag", "sag under live load", live.passing_sag / modulus, live.span / divisor, "small length", passing,
                 live.combination.name, clause, least_verified((known, known_limit)), f"span/{divisor:g}"),
        Question("sag after years", "sag after years", (creep * years.lasting_sag + years.passing_sag) / modulus,
                 years.span / total, "small length", f"{creep:g} x {acting(years.combination)}", years.combination.name,
                 f"NDS 2018 3.5.2, {factors.verified('creep_dry')}", known_years, f"span/{total:g}", False),
    ), values.lowest_grade)  # fmt: skip


@lru_cache(maxsize=256)
def _at_cut(member, demands):
    """What is left at a cut of a sawn rectangle, for each wood: bending, shear, and the push of an end notched below."""
    joist, cut = member.joist, member.cut
    values = _values(joist)
    known = least_verified((values.least_known, "computed"))  # what is left is mechanics
    found = [
        _stress(
            AT_CUT[0],
            "bending in the wood left at the cut",
            demands,
            lambda one: one.bending_stress,
            values.bending,
            "M / S of what is left",
            known,
        )
    ]
    if not (any(member.ends) and cut.face == "bottom"):
        found.append(
            _stress(
                AT_CUT[1],
                "shear in the wood left at the cut",
                demands,
                lambda one: one.shear_stress,
                values.shear,
                "1.5 V / A of what is left",
                known,
            )
        )
    else:
        most = _most(demands, lambda one: one.end_push)
        section, rule = joist.section, notches.limit_verified("end_notch_shear_power")
        given = notched_ends.tension_notch_shear(
            shear_value=values.shear * most.combination.time_factor, width=section.width * joist.plies, depth=section.depth,
            remaining=section.depth - cut.depth,
        )  # fmt: skip
        found.append(
            Question(
                AT_CUT[2],
                "push on the notched end",
                most.end_push,
                given,
                "force",
                acting(most.combination),
                most.combination.name,
                f"NDS 2018 3.4.3.2 ({rule})",
                least_verified((known, rule)),
            )
        )
    return Compared(values.woods, values.verified, tuple(found), values.lowest_grade)


def _sawn(member):
    section = member.joist.section
    if member.made == "sawn" and section.shape != "sawn":
        raise OutsideRule(
            "the limits on notches and holes are those of sawn lumber; a cut in a log or in hewn timber is for "
            "an engineer"
        )
    return notches.Joist(member.span, section.width, section.depth, member.made)


def _measured(joist, demands):
    return _whole(joist, tuple(demands)).checks(demands[0].span / 2)


def _cut(member, demands):
    joist = _sawn(member)
    limits = (notches.notch_checks if isinstance(member.cut, Notch) else notches.hole_checks)(joist, member.cut)
    try:
        return (*limits, *_at_cut(member, tuple(demands)).checks(member.cut.middle))
    except OutsideRule as refusal:
        raise Partly(str(refusal), limits, "the wood left at the cut") from None


#: By kind of member.
RULES = {MeasuredJoist: _measured, CutMember: _cut}
