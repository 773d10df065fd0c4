"""Notches and holes in sawn joists: what the code lets be cut, and what the cut leaves.

The code's limits (IRC R502.8.1, R802.7.1) are distances and shares of the depth: a cut is within them or it is
not. The section that is left is mechanics (`structlib.ground.cut_sections`); what a notched end can give is a rule
again (`structlib.rules.us.notched_ends`).
"""

import math
from dataclasses import dataclass

from structlib.ground.refusals import BadInput, OutsideRule, check_choice
from structlib.ground.showing import show
from structlib.ground.units import ft, inch, lb, psi  # noqa: F401 (some: in examples)
from structlib.rules.check import Check
from structlib.rules.keyed import KeyedNumbers
from structlib.rules.members import Hole, Notch
from structlib.rules.us.factors import nominal_of
from structlib.rules.us.one_number import check_one_number, inches_text, length_text

KINDS = ("sawn", "lvl", "glulam", "i-joist", "truss", "engineered")
FACES = ("top", "bottom")

_KIND_OF = {
    "depth of the notch": "notch depth",
    "length of the notch": "notch length",
    "outside the middle third": "notch place",
    "tension side": "notch face",
    "diameter of the hole": "hole width",
    "wood above and below": "hole edge",
    "wood to the next cut": "hole gap",
}
_LIMITS = KeyedNumbers("us_cuts")
_CLAUSE = "IRC 2021 R502.8.1"
_WHY_ENGINEERED = (
    "may be cut only as its maker's instructions or a design professional say (IRC R502.8.2); "
    "these limits are for sawn lumber"
)


@dataclass(frozen=True)
class Joist:
    """The sawn member that is cut: span between supports, width of one piece and depth [mm], and its kind."""

    span: float
    width: float
    depth: float
    kind: str = "sawn"


def cut_limit(key):
    """Return one number of the limits on notches and holes, in library units.

    Parameters
    ----------
    key : str
        Key of the row, such as 'hole_edge_distance' [-].

    Returns
    -------
    float
        The number [by row].

    Examples
    --------
    >>> cut_limit("notch_depth_divisor")
    6.0
    """
    return _LIMITS.number(key)


def limit_verified(key):
    """Return how well one number of the limits is known.

    Parameters
    ----------
    key : str
        Key of the row [-].

    Returns
    -------
    str
        Its ``verified`` word [-].

    Examples
    --------
    >>> limit_verified("end_notch_shear_power")
    'transcribed'
    """
    return _LIMITS.verified(key)


def check_joist(joist):
    """Refuse a member that the limits do not cover.

    Parameters
    ----------
    joist : Joist
        The member [-].

    Returns
    -------
    Joist
        The member, unchanged [-].

    Raises
    ------
    OutsideRule
        When it is an engineered member.

    Notes
    -----
    IRC R502.8.2: trusses, structural composite lumber, glued laminated timber and I-joists only as the maker
    or a design professional says.

    Examples
    --------
    >>> check_joist(Joist(12*ft, 1.75*inch, 9.5*inch, kind="lvl"))
    Traceback (most recent call last):
    ...
    structlib.ground.refusals.OutsideRule: an LVL may be cut only as its maker's instructions or a design \
professional say (IRC R502.8.2); these limits are for sawn lumber
    """
    if not isinstance(joist, Joist):
        raise BadInput(
            f"a joist must be a Joist, got {type(joist).__name__}; for example Joist(12*ft, 1.5*inch, 9.25*inch)"
        )
    check_choice("kind of member", joist.kind, KINDS)
    if joist.kind != "sawn":
        name = {
            "lvl": "an LVL",
            "glulam": "a glulam beam",
            "i-joist": "an I-joist",
            "truss": "a truss",
            "engineered": "an engineered member",
        }[joist.kind]
        raise OutsideRule(f"{name} {_WHY_ENGINEERED}")
    check_one_number("span", joist.span, low=1 * ft, high=60 * ft, shown=length_text, hint="for example 12*ft")
    check_one_number(
        "width", joist.width, low=0.5 * inch, high=36 * inch, shown=inches_text, hint="for example 1.5*inch"
    )
    check_one_number(
        "depth", joist.depth, low=2 * inch, high=48 * inch, shown=inches_text, hint="for example 9.25*inch"
    )
    return joist


def no_bottom_notch(joist):
    """Tell whether a member is too thick to be notched on its tension side, away from the ends.

    Parameters
    ----------
    joist : Joist
        The member [-].

    Returns
    -------
    bool
        True from 4 in nominal on (IRC 2021 R502.8.1) [-].

    Examples
    --------
    >>> no_bottom_notch(Joist(12*ft, 1.5*inch, 9.25*inch)), no_bottom_notch(Joist(12*ft, 3.5*inch, 9.25*inch))
    (False, True)
    """
    return float(nominal_of(joist.width)) >= cut_limit("tension_notch_nominal_thickness") / inch


def notch_checks(joist, notch):
    """Return the code's limits on one notch.

    Parameters
    ----------
    joist : Joist
        The member that is cut [-].
    notch : Notch
        The notch [-].

    Returns
    -------
    tuple of structlib.rules.check.Check
        Depth, length (away from the ends), middle third and tension side, each with what is asked and allowed
        [mm].

    Raises
    ------
    OutsideRule
        When the member is engineered.

    Notes
    -----
    IRC 2021 R502.8.1, R802.7.1; NDS 2018 4.4.3. The length limit is written for notches away from the ends;
    an end notch is asked for its depth, and that it stays out of the middle third.
    Gravity load on a simple span is taken: the bottom is the tension
    side.

    Examples
    --------
    >>> joist = Joist(12*ft, 1.5*inch, 9.25*inch)
    >>> [(one.name, round(one.share, 2)) for one in notch_checks(joist, Notch(2*ft, 2*ft + 3*inch, 1.5*inch))]
    [('depth of the notch', 0.97), ('length of the notch', 0.97), ('outside the middle third', 0.0)]
    """
    check_joist(joist)
    at_end = _check_notch(joist, notch)
    word = "end_notch_depth_divisor" if at_end else "notch_depth_divisor"
    deepest = joist.depth / cut_limit(word)
    letter = f"d / {cut_limit(word):g}"
    middle = (notch.start + notch.end) / 2
    depth_words = "a notch at an end" if at_end else "a notch away from the ends"
    found = [
        _check(
            "depth of the notch",
            f"{depth_words} is no deeper than {letter}",
            notch.depth,
            deepest,
            middle,
            f"notch <= {letter}",
            joist,
            word,
        )
    ]
    if at_end:
        # no length is written for an end notch, but none may reach into the middle third
        return (*found, _middle_third(joist, notch))
    longest = joist.depth / cut_limit("notch_length_divisor")
    found.append(
        _check(
            "length of the notch",
            "a notch is no longer than a third of the member's depth",
            notch.end - notch.start,
            longest,
            middle,
            "length <= d / 3",
            joist,
            "notch_length_divisor",
        )
    )
    found.append(_middle_third(joist, notch))
    thick = cut_limit("tension_notch_nominal_thickness") / inch
    if notch.face == "bottom" and no_bottom_notch(joist):
        found.append(
            _check(
                "tension side",
                f"members {thick:g} in nominal and thicker are not notched on the tension side but at their ends",
                notch.depth,
                0.0,
                middle,
                "no notch",
                joist,
                "tension_notch_nominal_thickness",
            )
        )
    return tuple(found)


def _middle_third(joist, notch):
    """How much of a notch lies in the middle third of the span; nothing is allowed."""
    parts = cut_limit("notch_free_thirds")
    low, high = joist.span * (parts - 1) / parts / 2, joist.span * (parts + 1) / parts / 2
    return _check(
        "outside the middle third",
        "no notch in the middle third of the span",
        max(0.0, min(notch.end, high) - max(notch.start, low)),
        0.0,
        (notch.start + notch.end) / 2,
        "none of the notch between L/3 and 2L/3",
        joist,
        "notch_free_thirds",
    )


def hole_checks(joist, hole, others=()):
    """Return the code's limits on one hole.

    Parameters
    ----------
    joist : Joist
        The member that is bored [-].
    hole : Hole
        The hole [-].
    others : iterable of Hole or Notch
        The other cuts of the same member [-].

    Returns
    -------
    tuple of structlib.rules.check.Check
        Diameter, distance from the edges, and distance from the nearest other cut [mm].

    Raises
    ------
    OutsideRule
        When the member is engineered.

    Notes
    -----
    IRC 2021 R502.8.1, R802.7.1. Distances are of wood that is left, from edge to edge.

    Examples
    --------
    >>> joist = Joist(12*ft, 1.5*inch, 9.25*inch)
    >>> [(one.name, round(one.share, 2)) for one in hole_checks(joist, Hole(6*ft, 4.625*inch, 3*inch))]
    [('diameter of the hole', 0.97), ('wood above and below', 0.64)]
    """
    check_joist(joist)
    _check_hole(joist, hole)
    widest, least = joist.depth / cut_limit("hole_diameter_divisor"), cut_limit("hole_edge_distance")
    left = min(hole.height, joist.depth - hole.height) - hole.diameter / 2
    found = [
        _check(
            "diameter of the hole",
            "a hole is no wider than a third of the depth",
            hole.diameter,
            widest,
            hole.place,
            "hole <= d / 3",
            joist,
            "hole_diameter_divisor",
        ),
        _check(
            "wood above and below",
            "2 in of wood is left above and below the hole",
            least,
            left,
            hole.place,
            "2 in <= wood left",
            joist,
            "hole_edge_distance",
        ),
    ]
    gaps = [_gap(joist, hole, other) for other in others]
    if gaps:
        found.append(
            _check(
                "wood to the next cut",
                "2 in of wood is left to the next hole or notch",
                least,
                min(gaps),
                hole.place,
                "2 in <= wood left",
                joist,
                "hole_edge_distance",
            )
        )
    return tuple(found)


def _gap(joist, hole, other):
    """Wood between a hole and another cut, edge to edge; zero or less where they meet."""
    if isinstance(other, Hole):
        _check_hole(joist, other)
        between = math.hypot(hole.place - other.place, hole.height - other.height)
        return between - (hole.diameter + other.diameter) / 2
    _check_notch(joist, other)
    low, high = (joist.depth - other.depth, joist.depth) if other.face == "top" else (0.0, other.depth)
    along = max(other.start - hole.place, 0.0, hole.place - other.end)
    upward = max(low - hole.height, 0.0, hole.height - high)
    return math.hypot(along, upward) - hole.diameter / 2


def _check(name, sentence, asked, given, place, formula, joist, key):
    # a forbidden cut has nothing given: any bit of it is too much
    share = asked / given if given > 0 else (0.0 if asked <= 1e-9 else math.inf)
    return Check(
        name=name,
        kind=_KIND_OF[name],
        sentence=sentence,
        asked=asked,
        given=given,
        share=share,
        dimension="section length",
        position=place,
        where="at the cut",
        combination="no load",
        clause=_CLAUSE,
        formula=formula,
        substitute=(("d", joist.depth, "section length"),),
        verified=_LIMITS.verified(key),
    )


def _check_notch(joist, notch):
    """Refuse a notch off the member; tell whether it is at an end."""
    if not isinstance(notch, Notch):
        raise BadInput(
            f"a notch must be a Notch, got {type(notch).__name__}; for example Notch(24*inch, 27*inch, 1.5*inch)"
        )
    check_choice("face", notch.face, FACES)
    check_one_number("start of the notch", notch.start, low=0.0, high=joist.span, shown=length_text)
    check_one_number("end of the notch", notch.end, low=0.0, high=joist.span * (1 + 1e-12), shown=length_text)
    check_one_number(
        "depth of the notch",
        notch.depth,
        low=0.0,
        high=joist.depth * (1 - 1e-9),
        low_allowed=False,
        shown=inches_text,
        hint="a notch is less deep than the member",
    )
    if notch.end <= notch.start:
        raise BadInput(
            f"a notch must end beyond its start, got {show(notch.start, 'length')} to {show(notch.end, 'length')}"
        )
    return notch.start <= 1e-6 or notch.end >= joist.span - 1e-6


def _check_hole(joist, hole):
    if not isinstance(hole, Hole):
        raise BadInput(f"a hole must be a Hole, got {type(hole).__name__}; for example Hole(6*ft, 4.625*inch, 2*inch)")
    check_one_number("place of the hole", hole.place, low=0.0, high=joist.span, shown=length_text)
    check_one_number(
        "diameter of the hole",
        hole.diameter,
        low=0.0,
        high=joist.depth * (1 - 1e-9),
        low_allowed=False,
        shown=inches_text,
        hint="a hole is narrower than the member is deep",
    )
    check_one_number(
        "height of the hole",
        hole.height,
        low=0.0,
        high=joist.depth,
        shown=inches_text,
        hint="measured from the bottom edge to the middle of the hole",
    )
