"""Old plies and something new beside, on or between them, under one even load: what each takes, and what is asked of it."""

from dataclasses import dataclass, field, replace
from functools import cached_property
from typing import Any

import numpy

from structlib.ground.refusals import OutsideRule
from structlib.ground.steel import steel_fact
from structlib.ground.units import inch
from structlib.mechanics import formulas
from structlib.mechanics.beams import Beam, LineLoad, Support, solve
from structlib.mechanics.composite import (
    Part,
    end_group_forces,
    end_slip,
    loose_stiffness,
    own_stress,
    partly_joined_stiffness,
    partly_joined_stress,
    seam_flow,
    seam_force,
    shares_by_stiffness,
    stack,
    stepped_stiffness,
)
from structlib.rules.check import BeamDemand
from structlib.rules.members import (
    Crossing,
    Fasteners,
    Flitch,
    FlitchMember,
    JointMember,
    SharedBeamMember,
    SharedDemand,
    SharedPiece,
    ask,
)

#: Distance between the two groups of fasteners at each end of a partial sister.
GROUP_ARM = 16 * inch

BOLT = 0.5 * inch
_NAIL = Fasteners("nail", "16d common")
_PLACES = 33  # where the sag is worked out for a picture


@dataclass(frozen=True)
class SharedJob:
    """What is put together: 'sister', 'partial' (its middle part only), 'stack' or 'flitch'; span [mm] and load [N/mm].

    ``old`` and ``new`` are pieces (`structlib.house.beam.BeamChoice`), ``plate`` is thickness and depth of a steel plate
    [mm]. ``joined`` is how far a stack acts as one, ``length`` the part of the span that a partial sister covers.
    """

    kind: str
    span: float
    load: float
    old: Any
    new: Any = None
    plate: tuple = ()
    joined: float = 0.0
    length: float = 1.0
    from_side: bool = False


@dataclass(frozen=True)
class SharedLoad:
    """What a job comes to; forces in N, lengths in mm, stresses in MPa. Two parts: the old plies, and what is new."""

    job: SharedJob
    parts: tuple
    stiffness: float
    shares: tuple  # (name, share of the moment)
    stresses: tuple  # of each part: (upper edge, lower edge)
    shape: Any  # the solved beam
    slip: float = 0.0
    helped: tuple = ()
    groups: tuple = ()
    cut_moment: float = 0.0
    group_forces: tuple = ()
    flitch: Flitch | None = None
    x: tuple = field(default=(), repr=False)
    sag: tuple = field(default=(), repr=False)

    @property
    def alone(self):
        """E I of the old plies alone [N*mm2]."""
        return self.parts[0].bending_stiffness

    @property
    def moment(self):
        """Greatest moment on all pieces together [N*mm]."""
        return formulas.simple_uniform_moment(line_load=self.job.load, span=self.job.span)

    @property
    def shear(self):
        """Push of each end [N]."""
        return formulas.simple_uniform_reaction(line_load=self.job.load, span=self.job.span)

    @property
    def stress_past_the_end(self):
        """Edge stress of the old plies where a partial sister ends [MPa]."""
        return own_stress(self.parts[0], moment=self.cut_moment, stiffness=self.alone)

    @cached_property
    def crossing(self):
        """Load that passes between old plies and new piece, from where it lands to where stiffness takes it [N/mm].

        On top it lands on each piece by its width. On one side it lands on the old ply there.
        """
        new, (old, added) = dict(self.shares)["new"], self.parts
        if self.job.from_side:
            return self.job.load * (1 - (1 - new) / self.job.old.plies)
        return self.job.load * abs(new - added.width / (old.width + added.width))

    @property
    def flow(self):
        """Force along the seam of a stack at its ends, if nothing slipped [N/mm]."""
        return seam_flow((self.parts[1], self.parts[0]), above=1, shear=self.shear)


@dataclass(frozen=True)
class SharedAnswer:
    """What a rulebook says of a shared load: checks, what was asked and is not judged with the reason, fasteners, bolts.

    ``unjudged`` holds (name, asked, dimension, sentence).
    """

    checks: tuple = ()
    unjudged: tuple = ()
    fastening: Any = None
    bolts: Any = None


def share_load(job):
    """Find who takes what of one even load.

    Parameters
    ----------
    job : SharedJob
        What is put together [-].

    Returns
    -------
    SharedLoad
        Shares, stresses, sag, and the forces of fasteners that statics gives [N, mm, MPa].

    Examples
    --------
    >>> from structlib.ground.lumber import find_material
    >>> from structlib.ground.units import ft, plf
    >>> from structlib.house.beam import BeamChoice
    >>> wood = find_material("Douglas Fir-Larch", "No.2")
    >>> old, new = (BeamChoice(wood, 1.5 * inch, 9.25 * inch, plies) for plies in (2, 1))
    >>> [round(share, 3) for _, share in share_load(SharedJob("sister", 12 * ft, 300 * plf, old, new)).shares]
    [0.667, 0.333]
    """
    base = Part(modulus=job.old.material.modulus, width=job.old.width, depth=job.old.depth)
    if job.kind == "stack":
        return _stacked(job, base)
    flitch = None
    if job.kind == "flitch":
        thickness, depth = job.plate[0], min(job.plate[1], job.old.depth)
        even = max(2, job.old.plies - job.old.plies % 2)
        flitch = Flitch(wood=job.old.material, ply_width=job.old.ply_width, depth=job.old.depth, plies=even,
                        plate_thickness=thickness, plate_depth=depth)  # fmt: skip
        added = Part(modulus=steel_fact("modulus"), width=thickness, depth=depth)
    else:
        added = Part(modulus=job.new.material.modulus, width=job.new.ply_width, depth=job.new.depth)
    both = (base, added)
    stiffness, shares = loose_stiffness(both), shares_by_stiffness(both)
    moment = formulas.simple_uniform_moment(line_load=job.load, span=job.span)
    edges = [own_stress(part, moment=moment, stiffness=stiffness) for part in both]
    found = dict(job=job, parts=both, stiffness=stiffness, shares=tuple(zip(("old", "new"), shares)),
                 stresses=tuple((-edge, edge) for edge in edges), flitch=flitch)  # fmt: skip
    slides = _slides(job.new, shares[1])
    if job.kind != "partial":
        return SharedLoad(**found, **_shape(job, stiffness, slides))
    return SharedLoad(**found, **_partial(job, base.bending_stiffness, stiffness, shares[1], slides))


def _partial(job, outside, inside, share, slides):
    """Where the sister ends, and the two groups of fasteners at each end that bring it its share."""
    span, start = job.span, job.span * (1 - job.length) / 2
    pieces = stepped_stiffness(span=span, start=start, end=span - start, outside=outside, inside=inside)
    inner = min(start + GROUP_ARM, span / 2)
    at = dict(line_load=job.load, span=span)
    return dict(
        **_shape(job, pieces, slides),
        helped=(start, span - start),
        groups=(start + 0.02 * span, inner, span - inner, span - start - 0.02 * span),
        cut_moment=formulas.simple_uniform_moment_at(**at, position=start),
        group_forces=end_group_forces(
            moment=share * formulas.simple_uniform_moment_at(**at, position=inner),
            shear=share * formulas.simple_uniform_shear_at(**at, position=inner),
            arm=inner - start,
        ),
    )


def _stacked(job, base):
    new = job.new
    top, bottom = stack([(new.material.modulus, base.width, new.depth), (base.modulus, base.width, base.depth)])
    moment = formulas.simple_uniform_moment(line_load=job.load, span=job.span)
    stiffness = partly_joined_stiffness([top, bottom], joined=job.joined)
    gap = bottom.centre - top.centre
    couple = seam_force(top, bottom, moment=moment, joined=job.joined) * gap / moment
    upper, lower = partly_joined_stress(top, bottom, moment=moment, joined=job.joined)
    share = top.bending_stiffness / (top.bending_stiffness + bottom.bending_stiffness)
    slides = _slides(replace(new, ply_width=base.width), share)
    at = dict(line_load=job.load, span=job.span, bending_stiffness=stiffness)
    return SharedLoad(
        job=job,
        parts=(bottom, top),
        stiffness=stiffness,
        shares=(
            ("old", bottom.bending_stiffness / stiffness),
            ("new", top.bending_stiffness / stiffness),
            ("both as one", couple),
        ),
        stresses=(lower, upper),
        slip=end_slip(gap=gap, end_slope=formulas.simple_uniform_slope_at(**at, position=0.0), joined=job.joined),
        **_shape(job, stiffness, slides),
    )


def _slides(piece, share):
    """Shear stiffness of all, where LVL sags by shear under its share as if alone; None without LVL."""
    if piece is None or piece.material.shear_modulus is None:
        return None
    area = piece.depth * piece.ply_width
    return formulas.rectangle_shear_stiffness(shear_modulus=piece.material.shear_modulus, area=area) / share


def _shape(job, stiffness, slides):
    """Places and sag of the simple beam, stepped or not."""
    supports, loads = (Support(0.0), Support(job.span)), (LineLoad(0.0, job.span, job.load),)
    shape = solve(Beam(job.span, stiffness, supports, loads, shear_stiffness=slides))
    x = numpy.linspace(0.0, job.span, _PLACES)
    return {"shape": shape, "x": tuple(x.tolist()), "sag": tuple(shape.deflection(x).tolist())}


# ---- under a rulebook ----


def judge_shared(found, rulebook):
    """Ask a rulebook about every piece, the sag, and what fastens the pieces; the load counts as one that comes and goes.

    Parameters
    ----------
    found : SharedLoad
        Who takes what [-].
    rulebook : structlib.rules.check.Rulebook
        The rules [-].

    Returns
    -------
    SharedAnswer
        Checks, what is asked and not judged, and what the fasteners pass [-].

    Examples
    --------
    >>> from structlib.ground.lumber import find_material
    >>> from structlib.ground.units import ft, plf
    >>> from structlib.house.beam import BeamChoice
    >>> from structlib.rules.choice import RULEBOOK
    >>> wood = find_material("Douglas Fir-Larch", "No.2")
    >>> old, new = (BeamChoice(wood, 1.5 * inch, 9.25 * inch, plies) for plies in (2, 1))
    >>> found = judge_shared(share_load(SharedJob("sister", 12 * ft, 300 * plf, old, new)), RULEBOOK)
    >>> [check.name for check in found.checks]
    ['bending, old plies', 'bending, new piece', 'sag']
    """
    combinations = [one for one in rulebook.combinations({"live"}) if one.factor("live")]
    checks, unjudged, answers = (), (), {}
    member = shared_member(found)
    demands = tuple(_demand(found, one) for one in combinations)
    try:
        checks = rulebook.checks(member, demands)
    except OutsideRule as none:
        unjudged = tuple((*row, str(none)) for row in _asked(member, demands))
    crossings = tuple(_crossing(found, one) for one in combinations)
    most = max(one.line_load for one in crossings)
    if found.job.kind != "flitch":
        try:
            answers["fastening"] = _fastening(found, rulebook, crossings)
        except OutsideRule as none:
            unjudged += (("fasteners between the pieces", most, "line load", str(none)),)
    elif found.job.old.plies % 2 == 0:
        try:
            answers["bolts"] = _bolts(found, rulebook, combinations)
        except OutsideRule as none:
            unjudged += (
                ("load into the plate along the beam", found.flitch.steel_share * most, "line load", str(none)),
            )
        else:
            checks += tuple(
                replace(one, name=f"{one.name}, no steel seat") if one.kind == "shear" else one
                for one in answers["bolts"].checks
                if one.kind in ("bolts", "shear")
            )
    return SharedAnswer(checks, unjudged, **answers)


def shared_member(found):
    """Return the pieces as a rulebook is asked about them; of a partial sister, also where it ends.

    Parameters
    ----------
    found : SharedLoad
        Who takes what [-].

    Returns
    -------
    structlib.rules.members.SharedBeamMember
        The pieces [-].

    Examples
    --------
    >>> from structlib.ground.lumber import find_material
    >>> from structlib.ground.units import ft, plf
    >>> from structlib.house.beam import BeamChoice
    >>> old = BeamChoice(find_material("Hem-Fir", "No.2"), 1.5 * inch, 9.25 * inch, 2)
    >>> found = share_load(SharedJob("flitch", 12 * ft, 300 * plf, old, plate=(0.5 * inch, 9 * inch)))
    >>> [piece.name for piece in shared_member(found).pieces]
    ['old plies', 'plate']
    """
    old, new, flitch = found.job.old, found.job.new, found.flitch
    pieces = [SharedPiece("old plies", old.material, old.ply_width, old.depth, old.plies)]
    if flitch is not None:
        pieces.append(SharedPiece("plate", flitch.plate, flitch.plate_thickness, flitch.plate_depth))
        return SharedBeamMember(tuple(pieces), flitch, None if old.plies % 2 else BOLT)
    pieces.append(SharedPiece("new piece", new.material, new.ply_width, new.depth))
    if found.groups:
        pieces.append(replace(pieces[0], name="old plies, past the sister's end"))
        pieces.append(replace(pieces[1], name="the sister between the end groups"))
    return SharedBeamMember(tuple(pieces))


def _demand(found, combination):
    factor, job = combination.factor("live"), found.job
    edges = [factor * max(abs(edge) for edge in pair) for pair in found.stresses]
    shears = ()
    if found.groups:
        sister = dict(width=job.new.ply_width, depth=job.new.depth)
        edges += [factor * found.stress_past_the_end, None]
        shears = (
            None,
            None,
            None,
            factor * formulas.rectangle_shear_stress(shear=abs(found.group_forces[0]), **sister),
        )
    return SharedDemand(combination, tuple(edges), job.span, job.span / 2, factor * max(found.sag), shears)


def _asked(member, demands):
    """What is asked of each piece where no rule answers: name, the most that any combination asks, dimension."""
    for number, piece in enumerate(member.pieces):
        edges = [one.edges[number] for one in demands if one.edges[number] is not None]
        if edges:
            yield f"bending, {piece.name}", max(edges), "stress"
        shears = [one.shears[number] for one in demands if one.shears and one.shears[number] is not None]
        if shears:
            yield f"shear in {piece.name}", max(shears), "stress"
    yield "sag", max(one.sag for one in demands), "small length"


def _crossing(found, combination):
    """What the fasteners pass: across the pieces, or along the seam of a stack; of a flitch, all that lands on it."""
    load = {"stack": lambda: found.flow, "flitch": lambda: found.job.load}.get(found.job.kind, lambda: found.crossing)()
    return Crossing(combination, line_load=combination.factor("live") * load)


def _fastening(found, rulebook, crossings):
    """A 16d nail from the new piece into the old ply, across the grain; or in a seam, 1 1/2 in of it in the upper board."""
    old, new = found.job.old, found.job.new
    gravity = old.material.specific_gravity
    joint = JointMember(_NAIL, old.ply_width, new.ply_width, gravity, new.material.specific_gravity or gravity)
    if found.job.kind == "stack":
        joint = JointMember(_NAIL, 5.5 * inch, 1.5 * inch, 0.5, 0.5)
    most = max(crossings, key=lambda one: one.line_load / one.combination.time_factor)
    return ask(rulebook, "fastening", joint, most)


def _bolts(found, rulebook, combinations):
    span = found.job.span
    demands = []
    for one in combinations:
        factor = one.factor("live")
        load = LineLoad(0.0, span, factor * found.job.load)
        solved = found.shape if factor == 1.0 else solve(replace(found.shape.beam, loads=(load,)))
        top = ((0.0, span, load.intensity, load.intensity),)
        demands.append(BeamDemand(one, solved, solved, None, span, 0.0, span, top, True))
    return ask(rulebook, "plate_bolts", FlitchMember(found.flitch, None, None, BOLT), tuple(demands))
