"""Joints in a beam: where a moment asks nothing of them, and how many plies run through a section."""

from structlib.ground.refusals import BadInput, check_number
from structlib.mechanics.beam_model import LONGEST, SAME_SPOT, length_text


def zero_moment_places(solution):
    """Find where the moment of a solved beam passes through zero, its ends and free tips left out.

    Parameters
    ----------
    solution : structlib.mechanics.beams.Solution
        The solved beam [-].

    Returns
    -------
    tuple of float
        Places from the left end where sagging turns into hogging or back [mm].

    Examples
    --------
    >>> from structlib.mechanics.beams import Beam, LineLoad, Support, solve
    >>> supports = [Support(0.0), Support(4000.0), Support(8000.0)]
    >>> both = solve(Beam(8000.0, 2e12, supports, [LineLoad(0.0, 8000.0, 5.0)]))
    >>> [round(place, 6) for place in zero_moment_places(both)]
    [3000.0, 5000.0]
    """
    import numpy

    found, length = [], solution.beam.length
    greatest = max(abs(solution.extremes.moment.value), 1e-12)
    for piece in solution.pieces:
        reach = piece.end - piece.start
        # the moment of a piece as a polynomial of the share of its length, so that no power is huge
        shape = [
            -piece.load_rate * reach**3 / 6,
            -piece.load * reach**2 / 2,
            piece.shear * reach,
            piece.moment,
        ]
        if max(abs(part) for part in shape) <= 1e-9 * greatest:
            continue  # nothing bends this piece anywhere
        for root in numpy.roots(numpy.trim_zeros(shape, "f")):
            if abs(root.imag) < 1e-9 and -1e-9 <= root.real <= 1 + 1e-9:
                found.append(piece.start + float(root.real) * reach)
    places = []
    for place in sorted(found):
        near = 1e-4 * length
        inside = near < place < length - near
        if inside and not any(abs(place - other) < near for other in places):
            before, after = solution.moment(place - near), solution.moment(place + near)
            if before * after < 0:
                places.append(place)
    return tuple(places)


def plies_at(position, splices, *, near=0.0):
    """Count the plies of a built-up beam that run through a section; a ply that is cut there counts as nothing.

    Parameters
    ----------
    position : float
        The section, from the left end of the beam [mm].
    splices : tuple of tuple of float
        For each ply the places where it is cut; an empty tuple for a ply in one piece [mm].
    near : float
        How far to either side of its joint a cut ply is left out. Zero counts it out at the joint alone; how long
        it takes to load a ply again through its fasteners is for the connection's design [mm].

    Returns
    -------
    int
        Plies that run through [-].

    Examples
    --------
    >>> plies_at(3600.0, ((), (3600.0,), (1800.0,)))
    2
    """
    hint = "positions run in mm from the left end of the beam"
    check_number("position", position, low=0.0, high=LONGEST, shown=length_text, hint=hint)
    check_number("length left out beside a joint", near, low=0.0, high=LONGEST, shown=length_text, hint="0 for none")
    if not isinstance(splices, (list, tuple)) or not splices:
        raise BadInput(
            "splices must list each ply, with an empty tuple for one in one piece; for example ((), (3600.0,))"
        )
    whole = 0
    for ply in splices:
        if not isinstance(ply, (list, tuple)):
            raise BadInput(
                f"the places of a ply's joints must be a tuple, got {type(ply).__name__}; for example (3600.0,)"
            )
        for place in ply:
            check_number("place of a joint", place, low=0.0, high=LONGEST, shown=length_text, hint=hint)
        whole += all(abs(place - position) > near + SAME_SPOT for place in ply)
    return whole
