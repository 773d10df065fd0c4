"""The joists of an old floor as measured, and a notch or a hole found in them, as a house file holds them."""

from dataclasses import dataclass
from functools import lru_cache

from structlib.ground.measured_sections import SHAPES, measured_section
from structlib.ground.refusals import BadInput
from structlib.ground.units import ft, inch, psf
from structlib.house.fields import Record, of
from structlib.rules.members import CutMember, Hole, MeasuredJoist, Notch

CUTS = ("notch in the top", "notch in the bottom", "hole")
MADE = ("sawn", "engineered")
STATES = ("sound", "crack", "rot", "no grade")


@dataclass(frozen=True, kw_only=True)
class Cut(Record):
    """A notch or a hole: its middle from the middle of the left support, its depth or diameter [mm].

    A notch has a ``length``. A hole has wood ``below`` it, and lies at mid-depth where that is left out.
    """

    what: str = of("choice", '"notch in the top"', choices=CUTS)
    place: float = of("length", '"3 ft"', high=40 * ft)
    size: float = of("section length", '"1 1/4 in"', low=0.25 * inch, high=24 * inch)
    length: float | None = of("section length", '"2 1/2 in"', low=0.25 * inch, high=40 * ft, default=None)
    below: float | None = of("section length", '"2 in"', high=24 * inch, default=None)


@dataclass(frozen=True, kw_only=True)
class MeasuredJoists(Record):
    """The joists of an old floor as measured [mm], and what they weigh on its plan [MPa]; 0 psf where a layer has it in it.

    Their wood may not be known, so their weight has to be said; ``species`` and ``grade`` are left out where nobody knows
    them. ``wane`` is what the corners of hewn timber lack, ``taper`` how much thinner a round log is at its right end.
    """

    width: float = of("section length", '"2 in"', low=1 * inch, high=24 * inch)
    depth: float = of("section length", '"7 1/2 in"', low=2 * inch, high=24 * inch)
    spacing: float = of("section length", '"16 in"', low=4 * inch, high=96 * inch)
    weight: float = of("area load", '"2 psf"', high=50 * psf)
    plies: int = of("count", "1", low=1, high=4, default=1)
    shape: str = of("choice", '"round"', choices=SHAPES, default="sawn")
    wane: float = of("section length", '"1 in"', high=6 * inch, default=0.0)
    taper: float = of("section length", '"1 in"', high=12 * inch, default=0.0)
    species: str = of("text", '"Hem-Fir"', default="")
    grade: str = of("text", '"No.2"', default="")
    made: str = of("choice", '"sawn"', choices=MADE, default="sawn")
    state: str = of("choice", '"sound"', choices=STATES, default="sound")
    cut: Cut | None = of("record", "{ what = ... }", record=Cut, default=None)


def check_measured(level):
    """Refuse measured joists that contradict themselves or their level.

    Parameters
    ----------
    level : structlib.house.plan.Level
        The level; its joists were measured [-].

    Returns
    -------
    structlib.house.plan.Level
        The level, unchanged [-].

    Examples
    --------
    >>> from structlib.house.plan import Level
    >>> logs = MeasuredJoists(width=200.0, depth=200.0, spacing=400.0, weight=0.0, taper=20.0)
    >>> check_measured(Level(name="floor", kind="floor", on=(), start=0.0, end=1.0, live=0.0, measured=logs))
    Traceback (most recent call last):
    ...
    structlib.ground.refusals.BadInput: the joists of floor are sawn; a taper belongs to shape = "round"
    """
    joists, cut, where = level.measured, level.measured.cut, f"the joists of {level.name}"
    if level.kind == "roof":
        raise BadInput(f"{level.name} is a roof; measured joists belong to a floor or a ceiling").about(
            level.name, "measured"
        )
    if level.joist is not None:
        raise BadInput(f"{where} are given twice, as joist and as measured; leave one of them out").about(
            level.name, "joist"
        )
    fault = ""
    for name, shape in (("wane", "hewn"), ("taper", "round")):
        if getattr(joists, name) and joists.shape != shape:
            fault = f'{where} are {joists.shape}; a {name} belongs to shape = "{shape}"'
    if joists.taper > 0.75 * joists.depth:
        fault = f"{where} get thinner by more than three quarters of their depth; measure both ends again"
    if cut is not None and (cut.length is None) is not (cut.what == "hole"):
        fault = f"{where}: a notch has a length, and a hole has none; write it with the notch"
    if cut is not None and cut.below is not None and cut.what != "hole":
        fault = f"{where}: wood below belongs to a hole; leave it out of a notch"
    if cut is not None and (
        cut.size > 0.95 * joists.depth or (cut.below or 0.0) + cut.size > joists.depth * (1 + 1e-9)
    ):
        fault = f"{where}: the cut is as deep as the joist; measure both again"
    if fault:
        raise BadInput(fault).about(level.name, "measured")
    return level


@lru_cache(maxsize=256)
def measured_member(joists, kind="floor"):
    """Return measured joists as a rulebook is asked about them.

    Parameters
    ----------
    joists : MeasuredJoists
        The joists [-].
    kind : str
        Kind of their level, which sets the limit of sag [-].

    Returns
    -------
    structlib.rules.members.MeasuredJoist
        The member [-].

    Examples
    --------
    >>> one = measured_member(MeasuredJoists(width=2*inch, depth=8*inch, spacing=16*inch, weight=0.0))
    >>> round(one.section.section_modulus / inch**3, 2)
    21.33
    """
    section = measured_section(joists.shape, width=joists.width, depth=joists.depth, wane=joists.wane)
    return MeasuredJoist(
        section,
        joists.spacing,
        joists.plies,
        joists.species,
        joists.grade,
        joists.state != "no grade",
        joists.taper,
        kind,
    )


def cut_member(joists, span, kind="floor"):
    """Return the cut in measured joists as a rulebook is asked about it.

    Parameters
    ----------
    joists : MeasuredJoists
        The joists [-].
    span : float
        Their span [mm].
    kind : str
        Kind of their level [-].

    Returns
    -------
    structlib.rules.members.CutMember
        The member; its cut is None where there is none [mm].

    Examples
    --------
    >>> hole = Cut(what="hole", place=3 * ft, size=2 * inch, below=2 * inch)
    >>> cut_member(MeasuredJoists(width=2*inch, depth=8*inch, spacing=16*inch, weight=0.0, cut=hole), 12 * ft).cut.middle / ft
    3.0
    """
    joist, cut = measured_member(joists, kind), joists.cut
    if cut is None:
        found = None
    elif cut.what == "hole":
        height = joist.section.depth / 2 if cut.below is None else cut.below + cut.size / 2
        found = Hole(min(cut.place, span), height, cut.size)
    else:
        length = min(cut.length, span)
        start = min(max(cut.place - length / 2, 0.0), span - length)
        found = Notch(start, start + length, cut.size, cut.what.rpartition(" ")[2])
    return CutMember(joist, span, found, joists.made)


#: What is found on an old joist, and why it is for an engineer first.
_STOPS = {
    "engineered": "An engineered member is cut only as its maker or a design professional says. No limit here is for it.",
    "crack": "A crack across the grain means that the wood is breaking. Keep load and people off it, and call a structural "
    "engineer.",
    "rot": "Rot or insects at an end leave an unknown amount of wood. Have that end looked at by an engineer first.",
    "no grade": "Wood with large knots or long splits may be below the lowest grade that is listed. There no number is "
    "published and none is shown: only a grader can tell.",
    "cut log": "What a cut leaves of a log or of a hewn timber is not worked out here, and the limits are those of sawn "
    "lumber. An engineer looks at it; only what is asked is shown.",
}


def stops(joists):
    """List the reasons to stop and call an engineer before anything is said of measured joists.

    Parameters
    ----------
    joists : MeasuredJoists
        The joists [-].

    Returns
    -------
    tuple of str
        One sentence a reason [-].

    Examples
    --------
    >>> len(stops(MeasuredJoists(width=2*inch, depth=8*inch, spacing=16*inch, weight=0.0, state="crack")))
    1
    """
    found = [joists.made, joists.state]
    if joists.cut is not None and joists.shape != "sawn":
        found.append("cut log")
    return tuple(_STOPS[one] for one in found if one in _STOPS)
