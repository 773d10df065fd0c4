"""Pieces that carry together: side by side, stacked loose, joined, half joined, and over part of the length.

Heights run down from the top of the section, so a sagging moment (positive) pulls the lower parts: stresses
are positive in pull. Every formula is plain arithmetic that floats, arrays and sympy symbols pass through.
"""

from dataclasses import dataclass

from structlib.ground.refusals import BadInput, check_number, is_symbolic
from structlib.ground.roots import pi_for
from structlib.ground.sections import rectangle_area, rectangle_inertia
from structlib.mechanics.fastener_groups import shear_flow

_MOST = 1e18


@dataclass(frozen=True, kw_only=True)
class Part:
    """One rectangle of a section that is made of several.

    Parameters
    ----------
    modulus : float
        Modulus of elasticity [MPa].
    width : float
        Width across the load [mm].
    depth : float
        Depth along the load [mm].
    centre : float
        How far its middle lies below the top of the section; may be left out for parts side by side [mm].

    Examples
    --------
    >>> Part(modulus=10000.0, width=40.0, depth=200.0).axial_stiffness
    80000000.0
    """

    modulus: float
    width: float
    depth: float
    centre: float = 0.0

    def __post_init__(self):
        _positive("modulus of elasticity", self.modulus, "for example 1.6e6*psi")
        rectangle_area(width=self.width, depth=self.depth)
        _any("place of a part", self.centre, "mm below the top of the section")

    @property
    def axial_stiffness(self):
        """Modulus times area, E A [N]."""
        return self.modulus * rectangle_area(width=self.width, depth=self.depth)

    @property
    def bending_stiffness(self):
        """Modulus times the second moment of area about its own middle, E I [N*mm2]."""
        return self.modulus * rectangle_inertia(width=self.width, depth=self.depth)


def stack(layers):
    """Lay parts one on another, from the top down.

    Parameters
    ----------
    layers : iterable of tuple
        (modulus, width, depth) of each layer [MPa, mm, mm].

    Returns
    -------
    tuple of Part
        The layers, each at its height [-].

    Examples
    --------
    >>> [part.centre for part in stack([(9000.0, 40.0, 90.0), (9000.0, 40.0, 140.0)])]
    [45.0, 160.0]
    """
    parts, top = [], 0
    for layer in _listed("layers", layers):
        try:
            modulus, width, depth = layer
        except (TypeError, ValueError):
            raise BadInput(
                f"a layer is (modulus, width, depth), got {layer!r}; for example (1.6e6*psi, 1.5*inch, 9.25*inch)"
            ) from None
        parts.append(Part(modulus=modulus, width=width, depth=depth, centre=top + depth / 2))
        top = top + depth
    return tuple(parts)


def loose_stiffness(parts):
    """Bending stiffness of parts that sag alike and do not hold one another: the plain sum of E I.

    Parameters
    ----------
    parts : iterable of Part
        Plies side by side, or layers that slip freely [-].

    Returns
    -------
    float, numpy.ndarray or sympy expression
        Sum of E I [N*mm2].

    Examples
    --------
    >>> loose_stiffness([Part(modulus=10.0, width=1.0, depth=12.0), Part(modulus=20.0, width=1.0,
    ...     depth=12.0)])
    4320.0
    """
    return sum(part.bending_stiffness for part in _parts(parts))


def shares_by_stiffness(parts):
    """Return the share of the load on each part, when all sag alike: each takes its part of the sum of E I.

    Parameters
    ----------
    parts : iterable of Part
        Plies side by side, or layers that slip freely [-].

    Returns
    -------
    tuple of float
        The shares; together 1 [-].

    Examples
    --------
    >>> shares_by_stiffness([Part(modulus=10.0, width=1.0, depth=12.0), Part(modulus=30.0, width=1.0,
    ...     depth=12.0)])
    (0.25, 0.75)
    """
    parts = _parts(parts)
    whole = loose_stiffness(parts)
    return tuple(share_of(part, stiffness=whole) for part in parts)


def share_of(part, *, stiffness):
    """Return the share of the load on one part, when all sag alike: its E I over the sum of E I.

    Parameters
    ----------
    part : Part
        The part [-].
    stiffness : float
        Bending stiffness of all parts together, loose [N*mm2].

    Returns
    -------
    float, numpy.ndarray or sympy expression
        Its share [-].

    Examples
    --------
    >>> share_of(Part(modulus=10.0, width=1.0, depth=12.0), stiffness=5760.0)
    0.25
    """
    _parts([part])
    _positive("bending stiffness", stiffness, "the sum of E I")
    return part.bending_stiffness / stiffness


def own_stress(part, *, moment, stiffness):
    """Return the stress at the edges of a part that bends about its own middle: E (d / 2) M / (sum of E I).

    Parameters
    ----------
    part : Part
        The part [-].
    moment : float
        Moment on all parts together [N*mm].
    stiffness : float
        Bending stiffness of all of them together [N*mm2].

    Returns
    -------
    float, numpy.ndarray or sympy expression
        Pull at its lower edge, push at its upper edge [MPa].

    Examples
    --------
    >>> own_stress(Part(modulus=10.0, width=1.0, depth=12.0), moment=72.0, stiffness=1440.0)
    3.0
    """
    _parts([part])
    _any("moment", moment, "for example 5000*lb*ft")
    _positive("bending stiffness", stiffness, "the sum of E I")
    return part.modulus * (part.depth / 2) * moment / stiffness


def neutral_axis(parts):
    """Return where joined parts are neither pulled nor pushed: the centre of E A.

    Parameters
    ----------
    parts : iterable of Part
        Parts of one section, each at its height [-].

    Returns
    -------
    float, numpy.ndarray or sympy expression
        Distance below the top of the section [mm].

    Examples
    --------
    >>> neutral_axis(stack([(10.0, 6.0, 4.0), (30.0, 6.0, 4.0)]))
    5.0
    """
    parts = _parts(parts)
    return sum(part.axial_stiffness * part.centre for part in parts) / sum(part.axial_stiffness for part in parts)


def joined_stiffness(parts):
    """Bending stiffness of parts joined without any slip: own E I, and E A times distance squared.

    Parameters
    ----------
    parts : iterable of Part
        Parts of one section, each at its height [-].

    Returns
    -------
    float, numpy.ndarray or sympy expression
        E I of the whole [N*mm2].

    Examples
    --------
    >>> joined_stiffness(stack([(1.0, 12.0, 5.0), (1.0, 12.0, 5.0)]))
    1000.0
    """
    parts = _parts(parts)
    axis = neutral_axis(parts)
    return loose_stiffness(parts) + sum(part.axial_stiffness * (part.centre - axis) ** 2 for part in parts)


def joined_stress(parts, *, modulus, height, moment):
    """Return the stress at one height of joined parts: E (y - y0) M / (E I).

    Parameters
    ----------
    parts : iterable of Part
        Parts joined without slip, each at its height [-].
    modulus : float
        Modulus of the material at that height [MPa].
    height : float
        Distance below the top of the section [mm].
    moment : float
        Moment on the whole section [N*mm].

    Returns
    -------
    float, numpy.ndarray or sympy expression
        Stress, pull positive [MPa].

    Examples
    --------
    >>> joined_stress(stack([(1.0, 12.0, 5.0), (1.0, 12.0, 5.0)]), modulus=1.0, height=10.0, moment=200.0)
    1.0
    """
    _positive("modulus of elasticity", modulus, "for example 1.6e6*psi")
    _any("height", height, "mm below the top")
    _any("moment", moment, "for example 5000*lb*ft")
    parts = _parts(parts)
    return modulus * (height - neutral_axis(parts)) * moment / joined_stiffness(parts)


def seam_flow(parts, *, above, shear):
    """Return the force by length that a seam must carry to keep joined parts from slipping: V Q / I.

    Parameters
    ----------
    parts : iterable of Part
        Parts joined without slip, each at its height [-].
    above : int
        How many of the first parts lie on the one side of the seam [-].
    shear : float
        Size of the shear in the beam there [N].

    Returns
    -------
    float, numpy.ndarray or sympy expression
        Force by length along the seam [N/mm].

    Examples
    --------
    >>> seam_flow(stack([(1.0, 12.0, 5.0), (1.0, 12.0, 5.0)]), above=1, shear=20.0)
    3.0
    """
    parts = _parts(parts)
    if isinstance(above, bool) or above not in range(1, len(parts)):
        raise BadInput(
            f"above must be a whole number of parts from 1 to {len(parts) - 1}, got {above!r}; for example 1"
        )
    axis = neutral_axis(parts)
    # Both sides of the seam have the same first moment; the sign only tells which side was taken.
    first = sum(part.axial_stiffness * (axis - part.centre) for part in parts[:above])
    if not is_symbolic(first):
        first = abs(first)
    return shear_flow(shear=shear, first_moment=first, inertia=joined_stiffness(parts))


def fastener_efficiency(*, axial_stiffness, spacing, slip_modulus, span):
    """Return how well fasteners that give hold a layer: gamma of mechanically jointed beams, 0 loose to 1
    fast.

    Parameters
    ----------
    axial_stiffness : float
        E A of the layer that they hold [N].
    spacing : float
        Spacing of the fasteners along the seam, over the number of lines [mm].
    slip_modulus : float
        Force on one fastener by slip of the seam [N/mm].
    span : float
        Span of the simple beam [mm].

    Returns
    -------
    float, numpy.ndarray or sympy expression
        gamma = 1 / (1 + pi^2 E A s / (K span^2)) [-].

    Notes
    -----
    EN 1995-1-1:2004 Annex B, equation B.5; recalled. It is exact for a simple beam under load in the shape of
    half a sine wave, and near for even load.

    Examples
    --------
    >>> round(fastener_efficiency(axial_stiffness=8e7, spacing=100.0, slip_modulus=1000.0, span=4000.0), 4)
    0.1685
    """
    _positive("axial stiffness", axial_stiffness, "modulus times area")
    _positive("spacing", spacing, "for example 4*inch")
    _positive("slip modulus", slip_modulus, "N per mm of slip, for example 1000.0")
    _positive("span", span, "for example 12*ft")
    pi = pi_for(span)
    return 1 / (1 + pi**2 * axial_stiffness * spacing / (slip_modulus * span**2))


def joined_share(top, bottom, *, efficiency):
    """Return how far two layers act as one, from the efficiency of their fasteners.

    Parameters
    ----------
    top : Part
        Layer to which the efficiency belongs [-].
    bottom : Part
        The other layer [-].
    efficiency : float
        gamma, 0 to 1 [-].

    Returns
    -------
    float, numpy.ndarray or sympy expression
        0 where they are loose, 1 where they are one [-].

    Notes
    -----
    EN 1995-1-1:2004 Annex B (B.1, B.6) for two layers, solved for the part of the gap in stiffness that is
    won; recalled.

    Examples
    --------
    >>> layers = stack([(9000.0, 40.0, 90.0), (9000.0, 40.0, 90.0)])
    >>> round(joined_share(*layers, efficiency=0.5), 4)
    0.6667
    """
    _parts([top, bottom])
    check_number("efficiency", efficiency, low=0, high=1, hint="0 is loose, 1 is joined")
    first, second = top.axial_stiffness, bottom.axial_stiffness
    return efficiency * (first + second) / (efficiency * first + second)


def partly_joined_stiffness(parts, *, joined):
    """Bending stiffness between loose and joined, by the share of the gap that is won.

    Parameters
    ----------
    parts : iterable of Part
        Layers, each at its height [-].
    joined : float
        0 where they slip freely, 1 where nothing slips [-].

    Returns
    -------
    float, numpy.ndarray or sympy expression
        E I of the whole [N*mm2].

    Examples
    --------
    >>> layers = stack([(1.0, 12.0, 5.0), (1.0, 12.0, 5.0)])
    >>> [partly_joined_stiffness(layers, joined=share) for share in (0.0, 0.5, 1.0)]
    [250.0, 625.0, 1000.0]
    """
    _joined(joined)
    parts = _parts(parts)
    loose = loose_stiffness(parts)
    return loose + joined * (joined_stiffness(parts) - loose)


def seam_force(top, bottom, *, moment, joined):
    """Return the push in the upper and pull in the lower of two layers, which the seam has passed on.

    Parameters
    ----------
    top : Part
        Upper layer [-].
    bottom : Part
        Lower layer [-].
    moment : float
        Moment on both [N*mm].
    joined : float
        0 where they slip freely, 1 where nothing slips [-].

    Returns
    -------
    float, numpy.ndarray or sympy expression
        Push in the upper layer, equal to the pull in the lower [N].

    Examples
    --------
    >>> seam_force(*stack([(1.0, 12.0, 5.0), (1.0, 12.0, 5.0)]), moment=200.0, joined=1.0)
    30.0
    """
    _any("moment", moment, "for example 5000*lb*ft")
    first, second = top.axial_stiffness, bottom.axial_stiffness
    gap = bottom.centre - top.centre
    curvature = moment / partly_joined_stiffness([top, bottom], joined=joined)
    return joined * first * second / (first + second) * gap * curvature


def partly_joined_stress(top, bottom, *, moment, joined):
    """Return the stresses at the edges of two layers that slip in part.

    Parameters
    ----------
    top : Part
        Upper layer [-].
    bottom : Part
        Lower layer [-].
    moment : float
        Moment on both [N*mm].
    joined : float
        0 where they slip freely, 1 where nothing slips [-].

    Returns
    -------
    tuple of tuple
        (upper edge, lower edge) of the upper layer, then of the lower; pull positive [MPa].

    Examples
    --------
    >>> partly_joined_stress(*stack([(1.0, 12.0, 5.0), (1.0, 12.0, 5.0)]), moment=200.0, joined=1.0)
    ((-1.0, 0.0), (0.0, 1.0))
    """
    force = seam_force(top, bottom, moment=moment, joined=joined)
    stiffness = partly_joined_stiffness([top, bottom], joined=joined)
    found = []
    for part, sign in ((top, -1), (bottom, 1)):
        along = sign * force * part.modulus / part.axial_stiffness
        bend = own_stress(part, moment=moment, stiffness=stiffness)
        found.append((along - bend, along + bend))
    return tuple(found)


def end_slip(*, gap, end_slope, joined):
    """Return how far one layer slides past the other at the end of a simple beam.

    Parameters
    ----------
    gap : float
        Distance between the middles of the two layers [mm].
    end_slope : float
        Size of the slope at the end [-].
    joined : float
        0 where they slip freely, 1 where nothing slips; the same all along [-].

    Returns
    -------
    float, numpy.ndarray or sympy expression
        Slip at the end [mm].

    Examples
    --------
    >>> end_slip(gap=100.0, end_slope=0.01, joined=0.0)
    1.0
    """
    _positive("gap", gap, "half of both depths")
    check_number("end slope", end_slope, low=0, high=1, hint="for example 0.01")
    _joined(joined)
    return (1 - joined) * gap * end_slope


def stepped_stiffness(*, span, start, end, outside, inside):
    """Return the stiffness of a beam helped over part of its span, as the beam solver takes it.

    Parameters
    ----------
    span : float
        Span [mm].
    start : float
        Where the help begins [mm].
    end : float
        Where it ends [mm].
    outside : float
        E I without help [N*mm2].
    inside : float
        E I with help [N*mm2].

    Returns
    -------
    tuple of tuple
        (end of the stretch, E I) from left to right [mm, N*mm2].

    Examples
    --------
    >>> stepped_stiffness(span=4000.0, start=1000.0, end=3000.0, outside=1e12, inside=2e12)
    ((1000.0, 1000000000000.0), (3000.0, 2000000000000.0), (4000.0, 1000000000000.0))
    """
    for name, value in (("span", span), ("stiffness", outside), ("stiffness", inside)):
        _positive(name, value, "for example 12*ft for a span")
    check_number("start of the help", start, low=0, high=span, hint="mm from the left end")
    check_number("end of the help", end, low=start, high=span, low_allowed=False, hint="mm from the left end")
    pieces = [(start, outside)] if start > 0 else []
    pieces.append((end, inside))
    if end < span:
        pieces.append((span, outside))
    return tuple(pieces)


def end_group_forces(*, moment, shear, arm):
    """Return what the two groups of fasteners at a cut-off end carry to bring a helper its moment and shear.

    Parameters
    ----------
    moment : float
        Moment in the helper just inside the inner group [N*mm].
    shear : float
        Shear in the helper there [N].
    arm : float
        Distance between the centres of the two groups, along the beam [mm].

    Returns
    -------
    tuple of float
        Force of the outer group (near the cut end) and of the inner group, on the helper, upward positive
        [N].

    Examples
    --------
    >>> end_group_forces(moment=600.0, shear=50.0, arm=3.0)
    (200.0, -150.0)
    """
    _any("moment", moment, "for example 2000*lb*ft")
    _any("shear", shear, "for example 500*lb")
    _positive("arm", arm, "for example 12*inch")
    outer = moment / arm
    return outer, shear - outer


def _parts(parts):
    listed = _listed("parts", parts)
    for part in listed:
        if not isinstance(part, Part):
            raise BadInput(
                f"a part is made by Part, got {type(part).__name__}; for example "
                "Part(modulus=1.6e6*psi, width=1.5*inch, depth=9.25*inch)"
            )
    return listed


def _listed(name, items):
    if isinstance(items, (str, bytes)):
        raise BadInput(f"{name} must be a list, got {items!r}; for example one for each ply")
    try:
        listed = list(items)
    except TypeError:
        raise BadInput(f"{name} must be a list, got {type(items).__name__}; for example one for each ply") from None
    if not listed:
        raise BadInput(f"{name} must hold at least one, got none; for example one for each ply")
    return listed


def _positive(name, value, hint):
    return check_number(name, value, low=0, high=_MOST, low_allowed=False, hint=hint)


def _any(name, value, hint):
    return check_number(name, value, low=-_MOST, high=_MOST, hint=hint)


def _joined(value):
    return check_number("joined share", value, low=0, high=1, hint="0 is loose, 1 is joined, 0.3 in between")
