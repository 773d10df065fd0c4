"""Snow on one slope alone: what the wind leaves of a roof's snow, and a pair of rafters under it.

The pair is solved with its LEFT rafter loaded; which side a picture loads is the picture's own choice.
"""

import numpy

from structlib.ground.refusals import NotAsked
from structlib.ground.showing import show
from structlib.rules.us import snow

#: Ends the name of every check of this case.
MARK = ", one side"


def blown_snow(*, ground, roof_snow, rise, half):
    """Return the snow on either slope when the wind has cleared one of them, or why there is none.

    Parameters
    ----------
    ground : float
        Ground snow load of ASCE 7-16, allowable-stress basis; 0 leaves the case out [MPa].
    roof_snow : float
        Even snow on the roof; 0 is a roof without snow [MPa].
    rise : float
        Rise of the roof in 12 [-].
    half : float
        Plan distance from eave to ridge [mm].

    Returns
    -------
    tuple of (structlib.rules.us.snow.GableSnow or None, str)
        The loads, and what the rule says where it asks for none [MPa, -].

    Examples
    --------
    >>> from structlib.ground.units import ft, psf
    >>> found, _ = blown_snow(ground=40 * psf, roof_snow=30 * psf, rise=6, half=12 * ft)
    >>> round(found.leeward / psf, 6), found.windward
    (40.0, 0.0)
    >>> blown_snow(ground=40 * psf, roof_snow=30 * psf, rise=8, half=12 * ft)[1][:60]
    'unbalanced snow is asked on slopes of 0.5 in 12 to 7 in 12, '
    """
    if not (ground and roof_snow):
        return None, ""
    found = snow.ground_snow(ground, edition=snow.EDITION, basis=snow.BASIS, source="typed by the reader")
    try:
        return snow.unbalanced_gable(found, rise=rise, eave_to_ridge=half, simple_rafters=True), ""
    except NotAsked as refused:
        return None, str(refused)


def _rafter(solved, side="left"):
    return [name for name in solved.frame.bars if name.startswith(f"{side} rafter")]


def greatest_push(solved):
    """Return the greatest push along the loaded rafter.

    Parameters
    ----------
    solved : structlib.mechanics.frame_solution.FrameSolution
        The pair, its left rafter loaded [-].

    Returns
    -------
    float
        Compression along the rafter [N].

    Examples
    --------
    >>> from structlib.mechanics.plane_frame import solve_frame
    >>> from structlib.mechanics.rafter_pair import rafter_pair
    >>> pair = rafter_pair(building_span=8000.0, rise=3000.0, left_load=1.0, right_load=0.0,
    ...                    axial_stiffness=6e7, bending_stiffness=4e11)
    >>> round(greatest_push(solve_frame(pair)))  # 3000 N up and 1333 N across, on a slope of 3 in 4
    2867
    """
    return max(-float(solved.axial(name, share)) for name in _rafter(solved) for share in (0.0, 1.0))


def bending_along(solved, count=24):
    """Return the moment along the loaded rafter.

    Parameters
    ----------
    solved : structlib.mechanics.frame_solution.FrameSolution
        The pair, its left rafter loaded [-].
    count : int
        Number of steps along each of its pieces [-].

    Returns
    -------
    list of (float, float)
        Share of the plan distance from eave to ridge, and moment, positive when it sags [-, N*mm].

    Examples
    --------
    >>> from structlib.mechanics.plane_frame import solve_frame
    >>> from structlib.mechanics.rafter_pair import rafter_pair
    >>> pair = rafter_pair(building_span=8000.0, rise=3000.0, left_load=1.0, right_load=0.0,
    ...                    axial_stiffness=6e7, bending_stiffness=4e11)
    >>> [(share, round(moment)) for share, moment in bending_along(solve_frame(pair), count=2)]
    [(0.0, 0), (0.5, 2000000), (1.0, 0)]
    """
    half, found = solved.frame.joints["ridge"].x, {}
    for name in _rafter(solved):
        start, (right, _) = solved.frame.joints[solved.frame.bars[name].start], solved.frame.run(name)
        for share in numpy.linspace(0.0, 1.0, count + 1):
            place = (start.x + float(share) * right) / half
            found[round(place, 9)] = float(solved.moment(name, float(share)))
    return sorted(found.items())


def greatest_bending(solved):
    """Return the greatest moment in the loaded rafter, and its place.

    Parameters
    ----------
    solved : structlib.mechanics.frame_solution.FrameSolution
        The pair, its left rafter loaded [-].

    Returns
    -------
    tuple of (float, float)
        Size of the moment, and share of the plan distance from the eave [N*mm, -].

    Examples
    --------
    >>> from structlib.mechanics.plane_frame import solve_frame
    >>> from structlib.mechanics.rafter_pair import rafter_pair
    >>> pair = rafter_pair(building_span=8000.0, rise=3000.0, left_load=1.0, right_load=0.0,
    ...                    axial_stiffness=6e7, bending_stiffness=4e11)
    >>> [round(number, 6) for number in greatest_bending(solve_frame(pair))]
    [2000000.0, 0.5]
    """
    half, found = solved.frame.joints["ridge"].x, []
    for name in _rafter(solved):
        moment, share = solved.greatest_moment(name)
        start, (right, _) = solved.frame.joints[solved.frame.bars[name].start], solved.frame.run(name)
        found.append((abs(moment), (start.x + share * right) / half))
    return max(found)


def demand_rows(side, system):
    """Return what snow on one side asks, as rows of text.

    Parameters
    ----------
    side : dict
        The case as the page of the roof worked it out [any].
    system : str
        Units of the reader: 'us' or 'metric' [-].

    Returns
    -------
    list of tuple of str
        What, asked, can give, share, loads and rule [-].
    """
    say = lambda value, dimension: show(value, dimension, system)  # noqa: E731
    name, blown = side["most"].name, side["blown"]
    both = f"{say(side['area_load'], 'area load')} and {say(side['far_load'], 'area load')}"
    clause = blown.clause.split(" and ")[0]
    rule = f"{name}; {clause}, {blown.verified}; the whole {snow.BASIS}"
    # short names: the first column of the table does not wrap
    rows = [("snow on one side, and the other", both, "", "", rule)]
    ask = lambda what, value, how: rows.append((f"one side: {what}", value, "", "", how))  # noqa: E731
    if side["holds"] == "ridge beam":
        ask("load along the ridge", say(side["ridge_load"], "line load"), "a quarter of L times both, added")
    else:
        word = "pull in the tie" if side["holds"] != "nothing" else "push at each eave"
        ask(word, say(side["pull"], "force"), "as under the mean of both sides")
        ask("upright force at the ridge", say(side["ridge_shear"], "force"), "L (w - w') / 8, a pair")
    if side["solved"] is not None:
        ask("bending, loaded rafter", say(side["moment"], "moment"), f"{name}; of the pair as a frame")
    return rows
