"""A roof of one pair of slopes on two walls, on its own: the small house that the page of the roof follows."""

import math

from structlib.ground.units import ft, inch
from structlib.house.plan import SOIL, Beam, House, Layer, Level, Post, Wall

_WALL = 8 * ft
_SEAT = 3 * inch


def pair_house(
    loads,
    *,
    span,
    rise,
    length,
    rafter,
    tie=None,
    on_ridge_beam=False,
    ridge_wood=None,
    ridge_board=None,
    ground_snow=None,
):
    """Return a house that is a roof alone: its rafters on two walls, and a tie, a ridge beam on two posts, or nothing.

    Parameters
    ----------
    loads : structlib.ground.loads.LoadsByType
        Loads on plan, the weight of the rafters in them [MPa].
    span : float
        From wall to wall [mm].
    rise : float
        Rise in 12 [-].
    length : float
        Length of the roof, and span of its ridge beam from post to post [mm].
    rafter : structlib.house.plan.Joists
        The rafters; their weight is in the loads, so ``weighed`` is false [-].
    tie : structlib.house.plan.Tie or None
        What ties each pair [-].
    on_ridge_beam : bool
        Whether a ridge beam holds the rafters [-].
    ridge_wood : structlib.house.plan.Wood or None
        What that beam is made of, if it is chosen [-].
    ridge_board : structlib.house.plan.Board or None
        The ridge board, if its size counts [-].
    ground_snow : float or None
        The snow on the ground that the snow on the roof comes from [MPa].

    Returns
    -------
    structlib.house.plan.House
        The house; its parts are "roof", "left wall", "right wall", and "ridge beam" on "post" and "far post" [-].

    Examples
    --------
    >>> from structlib.ground.loads import LoadsByType
    >>> from structlib.ground.units import lb, psf
    >>> from structlib.house.path import follow
    >>> from structlib.house.plan import Joists
    >>> rafter = Joists(species="Hem-Fir", grade="No.2", size="2x8", spacing=16 * inch, weighed=False)
    >>> house = pair_house(LoadsByType({"dead": 15 * psf, "snow": 30 * psf}), span=24 * ft, rise=6, length=12 * ft, rafter=rafter)
    >>> {kind: round(push / lb) for kind, push in follow(house).thrust("roof").per_pair.items() if push}
    {'dead': 240, 'snow': 480}
    """
    on = ("left wall", "ridge beam", "right wall") if on_ridge_beam else ("left wall", "right wall")
    roof = Level(
        name="roof", kind="roof", on=on, start=0.0, end=length, slope=(float(rise), 12.0), snow=loads["snow"],
        roof_live=loads["roof live"], ground_snow=ground_snow, joist=rafter, tie=tie, ridge_board=ridge_board,
        ridge="beam" if on_ridge_beam else "board",
        layers=(Layer(name="all that stays", weight=loads["dead"] * 12 / math.hypot(12, rise)),),
    )  # fmt: skip
    walls = tuple(
        Wall(name=name, on=(SOIL,), at=at, start=0.0, end=length, height=_WALL, weight=0.0)
        for name, at in (("left wall", 0.0), ("right wall", span))
    )
    if not on_ridge_beam:
        return House(name="one roof", levels=(roof,), walls=walls)
    beam = Beam(
        name="ridge beam", on=("post", "far post"), at=span / 2, start=0.0, end=length, wood=ridge_wood, seat=_SEAT
    )
    posts = tuple(
        Post(name=name, on=SOIL, x=span / 2, y=y, height=_WALL + span / 2 * rise / 12)
        for name, y in (("post", 0.0), ("far post", length))
    )
    return House(name="one roof", levels=(roof,), walls=walls, beams=(beam,), posts=posts)
