"""A beam in one bay or two with a post under its end, on its own: the small house that the pages of posts follow."""

from structlib.ground.loads import LOAD_TYPES
from structlib.house.plan import Beam, House, Load, Pad, Post


def bays(line, *, span, wood, post, height, pad_side, soil, count=2):
    """Return a house of one beam on posts, loaded evenly: what a line load brings to one of them.

    Parameters
    ----------
    line : structlib.ground.loads.LoadsByType
        What comes down on the beam, without its own weight [N/mm].
    span : float
        From the middle of one post to the middle of the next [mm].
    wood, post : structlib.house.plan.Wood
        What the beam and the post are made of [-].
    height : float
        Height of the post [mm].
    pad_side : float
        Side of its pad [mm].
    soil : str
        The soil as the code names it; empty where it is not known [-].
    count : int
        Beam ends on the post: 1 or 2 [-].

    Returns
    -------
    structlib.house.plan.House
        The house; its parts are "beam", "post" and "pad", and the posts beyond are not looked at [-].

    Examples
    --------
    >>> from structlib.ground.loads import LoadsByType
    >>> from structlib.ground.units import ft, inch, lb, plf
    >>> from structlib.house.path import follow
    >>> from structlib.house.plan import Wood
    >>> fir = Wood(species="Douglas Fir-Larch", grade="No.2", size="2x12", plies=4)
    >>> house = bays(LoadsByType({"live": 1000 * plf}), span=7 * ft, wood=fir, post=fir, height=7 * ft,
    ...              pad_side=36 * inch, soil="clay or silt")
    >>> round(follow(house).element("pad").total()["live"] / lb)
    7000
    """
    places = [number * span for number in range(count + 1)]
    names = ["far post", "post", "next post"][: count + 1]
    posts = [
        Post(
            name=name,
            on="pad" if name == "post" else "soil",
            x=0.0,
            y=y,
            height=height,
            wood=post if name == "post" else None,
        )
        for name, y in zip(names, places)
    ]
    amounts = {kind.replace(" ", "_"): line[kind] * places[-1] for kind in LOAD_TYPES}
    return House(
        name="one beam",
        loads=(Load(name="from above", on="beam", x=0.0, y=0.0, length=places[-1], **amounts),),
        beams=(Beam(name="beam", on=tuple(names), at=0.0, start=0.0, end=places[-1], wood=wood),),
        posts=tuple(posts),
        pads=(Pad(name="pad", x=0.0, y=span, side=pad_side, soil=soil),),
    )
