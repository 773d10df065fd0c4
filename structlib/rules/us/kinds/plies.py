"""Pieces that share a load: plies and their fasteners, steel beams, beams of unlike pieces."""

from dataclasses import replace
from functools import cache, lru_cache

from structlib.ground.steel import SteelSection
from structlib.mechanics.fastener_groups import fastener_flow
from structlib.rules.check import Check, least_verified
from structlib.rules.members.plies import (
    Fastening,
    JointMember,
    Nailing,
    PlyJointMember,
    SharedBeamMember,
    SteelBeamMember,
)
from structlib.rules.us import (
    bending,
    deflection,
    dowels,
    factors,
    fastening,
    flitch,
    nailing_patterns,
    shear,
    steel_beams,
)
from structlib.rules.us.kinds.flitches import holes_take


class Plies:
    """Answers about fasteners between pieces, and one slender ply."""

    def joined_plies(self, joint, crossings):
        """Lay out the fasteners of plies loaded from one side, for the combination that asks most (NDS 2018 12.3).

        Parameters
        ----------
        joint : structlib.rules.members.PlyJointMember
            The plies and what fastens them [-].
        crossings : tuple of structlib.rules.members.Crossing
            What hangs on one side, a combination each [N/mm].

        Returns
        -------
        structlib.rules.us.fastening.PlyFastening or None
            The layout; None where nothing has to pass [-].

        Examples
        --------
        >>> Plies().joined_plies(PlyJointMember(None, 38.0, 235.0, 2, None), ())
        """
        layouts = [
            fastening.ply_fastening(
                plies=int(joint.plies),
                ply_width=joint.ply_width,
                depth=joint.depth,
                side_load=one.line_load,
                specific_gravity=joint.material.specific_gravity,
                fastener=_fastener(joint.fasteners),
                rows=joint.fasteners.lines,
                staggered=joint.fasteners.staggered,
                time_factor=one.combination.time_factor,
                moisture=_moisture(joint),
                combination=one.combination.name,
            )
            for one in crossings
            if one.line_load
        ]
        return min(layouts, key=lambda one: one.spacing_needed, default=None)

    def fastening(self, joint, crossing):
        """Return what one fastener passes between two pieces and how far apart they stand (NDS 2018 12.3).

        Parameters
        ----------
        joint : structlib.rules.members.JointMember
            The pieces and the fasteners between them [-].
        crossing : structlib.rules.members.Crossing
            The load that has to pass along it [N/mm].

        Returns
        -------
        structlib.rules.members.Fastening
            Value, mode, spacing along each line, clause [N, mm].

        Examples
        --------
        >>> from structlib.ground.units import inch, lb, plf
        >>> from structlib.rules.members import Crossing, Fasteners
        >>> joint = JointMember(Fasteners("nail", "16d common"), 1.5 * inch, 1.5 * inch, 0.5, 0.5)
        >>> found = Plies().fastening(joint, Crossing(None, line_load=100 * plf))
        >>> round(found.value / lb), round(found.spacing / inch, 1), found.mode
        (141, 16.9, 'IV')
        """
        time = crossing.combination.time_factor if crossing.combination else 1.0
        found, value, used = _one_fastener(joint, time)
        spacing = fastening.spacing_in_practice(value=value, load=crossing.line_load, lines=joint.fasteners.lines)
        return Fastening(value, found.mode, spacing, "NDS 2018 12.3", found.verified, used)

    def usual_nailing(self):
        """Return the usual nailing of plies, where nothing or next to nothing has to pass between them.

        Returns
        -------
        structlib.rules.members.Nailing
            Nail, spacing, lines, and where it is from [mm].

        Examples
        --------
        >>> Plies().usual_nailing().nail
        '16d common'
        """
        one = nailing_patterns.usual_pattern()
        return Nailing(one.name, one.nail, one.spacing, one.lines, one.verified)

    def slender_ply(self, width, depth):
        """Tell how one ply alone has to be held against rolling over; empty where it has not (NDS 2018 4.4.1.2).

        Parameters
        ----------
        width, depth : float
            Its size [mm].

        Returns
        -------
        str
            What is held, and the clause [-].

        Notes
        -----
        Over twice as deep as wide the ends are held, over four times the edge in compression too.

        Examples
        --------
        >>> Plies().slender_ply(38.1, 235.0), Plies().slender_ply(140.0, 235.0)
        ('its ends and top edge are held (NDS 4.4.1.2, seen)', '')
        """
        slender = depth / width
        if slender <= factors.scalar("depth_to_breadth_2"):
            return ""
        held = "ends and top edge are" if slender > factors.scalar("depth_to_breadth_4") else "ends are"
        return f"its {held} held (NDS 4.4.1.2, {factors.verified('depth_to_breadth_4')})"


# ---- fasteners ----


@cache
def _made(kind, size):
    return dowels.nail(size) if kind == "nail" else dowels.bolt(size)


def _fastener(fasteners):
    return _made(fasteners.kind, fasteners.size)


def _moisture(member):
    return "wet in service" if member.wet else "dry"


@lru_cache(maxsize=256)
def _one_fastener(joint, time_factor):
    one = _fastener(joint.fasteners)
    main, side = (
        dowels.wood_piece(thickness=thickness, specific_gravity=gravity, angle=joint.angle)
        for thickness, gravity in (
            (joint.main_thickness, joint.main_gravity),
            (joint.side_thickness, joint.side_gravity),
        )
    )
    found = dowels.lateral_value(one, main=main, side=side)
    return found, *dowels.adjusted_value(found, one, time_factor=time_factor, moisture=_moisture(joint))


def _ply_joint(joint, crossings):
    found = Plies().joined_plies(joint, crossings)
    return () if found is None else found.checks


def _joint(joint, crossings):
    """A joint as it stands: the load along it by the spacing, a force by the count."""
    fasteners, checks = joint.fasteners, []
    for asked_of, dimension, stands in (
        ("line_load", "line load", fasteners.spacing),
        ("force", "force", fasteners.count),
    ):
        if stands is None:
            continue
        found = []
        for one in crossings:
            reference, value, used = _one_fastener(joint, one.combination.time_factor)
            along = dimension == "line load"
            given = fastener_flow(value=value, spacing=stands, lines=fasteners.lines) if along else stands * value
            found.append((getattr(one, asked_of), given, one, reference, used))
        asked, given, one, reference, used = max(found, key=lambda row: row[0] / row[1])
        checks.append(Check(
            name="load passed by the fasteners", kind="fasteners", sentence="the load must cross the fasteners to reach the other piece",
            asked=asked, given=given, share=asked / given, dimension=dimension, position=0.0,
            where=f"between the pieces, mode {reference.mode}", combination=one.combination.name, clause="NDS 2018 12.3",
            formula="w <= lines * Z' / s" if dimension == "line load" else "P <= n Z'", factors=used,
            verified=least_verified([reference.verified, *(factor.verified for factor in used)]),
        ))  # fmt: skip
    return tuple(checks)


# ---- steel beams, and beams of unlike pieces ----


def _steel(member, demands):
    live, total, _ = deflection.sag_divisors(member.use)
    return steel_beams.steel_beam_checks(
        member.section,
        demands,
        unbraced_length=member.unbraced_length,
        left=member.left,
        right=member.right,
        divisors=(live, total),
    )


def _shared_beam(member, demands):
    """Bending and shear of each piece under its own stress, the plate after years too, and the sag of all."""
    checks, wood_lost, plate_lost = [], *holes_take(member.flitch, member.bolt_diameter)
    for number, piece in enumerate(member.pieces):
        steel = isinstance(piece.material, SteelSection)
        lost = plate_lost if steel else wood_lost
        asked = [(one.edges[number] / (1 - lost), one) for one in demands if one.edges[number] is not None]
        if asked:
            checks.append(_edge(piece, asked, ", at a bolt hole" if lost else "", member.flitch if steel else None))
            if steel and lost:
                checks.append(_after_years(checks[-1], member.flitch))
        shears = [(one.shears[number], one) for one in demands if one.shears and one.shears[number] is not None]
        if shears:
            checks.append(_sheared(piece, shears))
    return (*checks, *_sag(member, demands))


def _worst(asked):
    return max(asked, key=lambda row: row[0] / row[1].combination.time_factor)


def _piece_check(kind, name, asked, given, clause, demand, verified, factors=()):
    return Check(
        name=name, kind=kind, sentence="each piece has its own share of the load, and its own stress", asked=asked, given=given,
        share=asked / given, dimension="stress", position=demand.position, where="where the edges are stretched most",
        combination=demand.combination.name, clause=clause, formula="f <= F'", factors=factors, verified=verified,
    )  # fmt: skip


def _edge(piece, asked, at_hole, beam):
    """Bending of a piece at its edge: wood held sideways, not as repeated members; or the plate."""
    stress, demand = _worst(asked)
    name = f"bending, {piece.name}{at_hole}"
    if beam is not None:
        given, clause, known = flitch.plate_stress_limit(beam)
        known = least_verified([known, beam.wood.verified, "recalled" if at_hole else ""])
        return _piece_check("bending", name, stress, given, clause, demand, known)
    given, used = _bending_given(piece, demand.combination.time_factor)
    known = least_verified([piece.material.verified, *(one.verified for one in used), "recalled" if at_hole else ""])
    return _piece_check("bending", name, stress, given, "NDS 2018 3.3", demand, known, used)


@lru_cache(maxsize=256)
def _bending_given(piece, time_factor):
    value, used = bending.bending_value(
        piece.material,
        width=piece.plies * piece.ply_width,
        depth=piece.depth,
        plies=piece.plies,
        ply_width=piece.ply_width,
        unbraced_length=0.0,
        time_factor=time_factor,
        sharing_members=1,
    )
    return float(value), used


def _after_years(check, beam):
    """The plate where all the load stays, so that the wood has crept under all of it."""
    creep = deflection.creep_factor(wet=False)
    asked = check.asked * flitch.creep_growth(beam, creep_factor=creep)
    known = factors.verified("creep_dry")
    return replace(
        check, name="the plate, if all the load stays for years", asked=asked, share=asked / check.given,
        clause=f"E of the wood over {creep:g}, NDS 2018 3.5.2", verified=least_verified([check.verified, known]),
    )  # fmt: skip


def _sheared(piece, shears):
    stress, demand = _worst(shears)
    given, _ = shear.shear_value(piece.material, time_factor=demand.combination.time_factor)
    known = piece.material.verified
    return _piece_check("shear", f"shear in {piece.name}", stress, given, "NDS 2018 3.4.2", demand, known)


def _sag(member, demands):
    asked = [one for one in demands if one.sag is not None]
    if not asked:
        return ()
    divisor, _, clauses = deflection.sag_divisors(member.use)
    clause, known = clauses["live"]
    worst = max(asked, key=lambda one: one.sag)
    limit = worst.span / divisor
    woods = [piece.material.verified for piece in member.pieces if not isinstance(piece.material, SteelSection)]
    return (Check(
        name="sag", kind="sag", sentence="the low point hangs this far down", asked=worst.sag, given=limit,
        share=worst.sag / limit, dimension="small length", position=worst.position, where="at the low point",
        combination=worst.combination.name, clause=f"{clause}, {member.use.supports}, live load",
        formula=f"sag <= span / {divisor:.0f}", verified=least_verified([known, *woods]),
    ),)  # fmt: skip


#: By kind of member.
RULES = {
    PlyJointMember: _ply_joint,
    JointMember: _joint,
    SteelBeamMember: _steel,
    SharedBeamMember: _shared_beam,
}
