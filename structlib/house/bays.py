"""Small houses that pages follow: one beam in bays on a post, or over an opening; a floor on the wall that comes out."""

from dataclasses import replace

from structlib.ground.loads import LOAD_TYPES
from structlib.ground.units import ft, inch
from structlib.house.pieces import piece_of
from structlib.house.plan import SOIL, Beam, House, Layer, Level, Load, Pad, Post, Wall
from structlib.house.steps import seats_of

_LONG = 20 * ft  # of a floor that is looked at by the foot


def bays(line, *, span, wood, post, pad_side, soil, count=2):
    """Return a house of one beam on posts, loaded evenly, or of two: what a line load brings to one post.

    Parameters
    ----------
    line : structlib.ground.loads.LoadsByType
        What comes down on each beam, without its own weight [N/mm].
    span : float
        From the middle of one post to the middle of the next [mm].
    wood : structlib.house.plan.Wood
        What each beam is made of [-].
    post : structlib.house.plan.Post
        The post: height, wood, plate and what holds it; its name and place are given here [-].
    pad_side : float
        Side of its pad [mm].
    soil : str
        The soil as the code names it; empty where it is not known [-].
    count : int
        Beam ends on the post, which share it: 1 or 2 [-].

    Returns
    -------
    structlib.house.plan.House
        The house; its parts are "beam", "post" and "pad". The beam and the post beyond are not looked at [-].

    Examples
    --------
    >>> from structlib.ground.loads import LoadsByType
    >>> from structlib.ground.units import ft, inch, lb, plf
    >>> from structlib.house.path import follow
    >>> from structlib.house.plan import Wood
    >>> fir = Wood(species="Douglas Fir-Larch", grade="No.2", size="2x12", plies=4)
    >>> post = Post(name="post", on="pad", x=0.0, y=0.0, height=7 * ft, wood=fir)
    >>> house = bays(LoadsByType({"live": 1000 * plf}), span=7 * ft, wood=fir, post=post,
    ...              pad_side=36 * inch, soil="clay or silt")
    >>> round(follow(house).element("pad").total()["live"] / lb)
    7000
    """
    posts = [replace(post, name="post", on="pad", x=0.0, y=span)]
    piece = piece_of(post.wood)
    seat = piece.ply_width * piece.plies / count
    beams, loads = [], []
    amounts = {kind.replace(" ", "_"): line[kind] * span for kind in LOAD_TYPES}
    for name, far, start in (("beam", "far post", 0.0), ("next beam", "next post", span))[:count]:
        at = 0.0 if name == "beam" else 2 * span
        posts.append(Post(name=far, on="soil", x=0.0, y=at, height=post.height))
        beams.append(Beam(name=name, on=("post", far), at=0.0, start=start, end=start + span, wood=wood, seat=seat))
        loads.append(Load(name=f"on {name}", on=name, x=0.0, y=start, length=span, **amounts))
    return House(
        name="one beam",
        loads=tuple(loads),
        beams=tuple(beams),
        posts=tuple(posts),
        pads=(Pad(name="pad", x=0.0, y=span, side=pad_side, soil=soil),),
    )


def one_opening(line, opening, *, plate=None, made_of="studs", thickness=3 * ft, heavy=()):
    """Return a house of one opening in a wall, loaded evenly from seat to seat, and by something heavy at one place.

    Parameters
    ----------
    line : structlib.ground.loads.LoadsByType
        What comes down on its beam, without the beam's own weight [N/mm].
    opening : structlib.house.plan.Opening
        The opening and its beam; its name, wall and place are given here [-].
    plate : structlib.house.plan.Plate or None
        The plate of the wall [-].
    made_of : str
        'studs' or 'masonry' [-].
    thickness : float
        Thickness of the wall [mm].
    heavy : iterable of structlib.house.plan.Load
        What stands on the beam; the y of each counts from the left edge of the opening, and the rest of its place is
        given here [-].

    Returns
    -------
    structlib.house.plan.House
        The house; the opening is called "beam" and the wall "wall" [-].

    Examples
    --------
    >>> from structlib.ground.loads import LoadsByType
    >>> from structlib.ground.units import ft, inch, lb, plf
    >>> from structlib.house.path import follow
    >>> from structlib.house.plan import Opening
    >>> opening = Opening(name="", wall="", start=0.0, clear_width=7.75 * ft, height=7 * ft, wall_above=0.0,
    ...                   left_seat=3 * inch, right_seat=3 * inch)
    >>> path = follow(one_opening(LoadsByType({"live": 1000 * plf}), opening))
    >>> round(path.element("beam, left post").total()["live"] / lb)
    4000
    """
    end = opening.left_seat + opening.clear_width + opening.right_seat
    height = max(opening.height + opening.wall_above, 8 * ft)
    wall = Wall(
        name="wall",
        on=("soil",),
        at=0.0,
        start=0.0,
        end=end,
        height=height,
        weight=0.0,
        plate=plate,
        made_of=made_of,
        thickness=thickness,
    )
    opening = replace(opening, name="beam", wall="wall", start=opening.left_seat)
    first, last = seats_of(opening)
    amounts = {kind.replace(" ", "_"): line[kind] * (last - first) for kind in LOAD_TYPES}
    loads = [Load(name="on the beam", on="beam", x=0.0, y=first, length=last - first, **amounts)]
    loads += [replace(one, on="beam", x=0.0, y=opening.start + one.y) for one in heavy]
    return House(name="one opening", loads=tuple(loads), walls=(wall,), openings=(opening,))


def floor_on_a_wall(*, span, sides, joists, dead, live, above):
    """Return a house of one floor that rests on a wall, without joists of its own: every load is written.

    Parameters
    ----------
    span : float
        Of the joists on each side, from the middle of the wall to the middle of the next [mm].
    sides : int
        Sides from which joists come: 1 for an outside wall, 2 for one in the middle [-].
    joists : str
        'cut' over the wall, or 'continuous' [-].
    dead, live : float
        On the floor [MPa].
    above : float
        What else stands on the wall [N/mm].

    Returns
    -------
    structlib.house.plan.House
        The house; its parts are "floor", "wall", "left wall", "right wall" and "above" [-].

    Examples
    --------
    >>> from structlib.ground.units import plf, psf
    >>> from structlib.house.path import follow
    >>> house = floor_on_a_wall(span=12 * ft, sides=2, joists="continuous", dead=10 * psf, live=40 * psf, above=0.0)
    >>> round(follow(house).line_on("wall", 1 * ft)["live"] / plf)
    600
    """
    shared = dict(start=0.0, end=_LONG)
    places = {"left wall": -span, "wall": 0.0, "right wall": span}
    names = tuple(places)[: sides + 1]
    floor = Level(
        name="floor",
        kind="floor",
        on=names,
        joists=joists if sides == 2 else "cut",
        live=live,
        layers=(Layer(name="all of it", weight=dead),),
        **shared,
    )
    walls = tuple(Wall(name=name, on=(SOIL,), at=places[name], height=8 * ft, weight=0.0, **shared) for name in names)
    loads = (Load(name="above", on="wall", x=0.0, y=0.0, dead=above * _LONG, length=_LONG),) if above else ()
    return House(name="one floor", levels=(floor,), walls=walls, loads=loads)


def one_bay_empty(beam, width):
    """Return what a post gets, and how far off its middle, when the beam on one side brings its lasting load only.

    Parameters
    ----------
    beam : structlib.house.judging.Answer
        The beam in one bay, as `judge_element` answers; one like it ends on the other half of the post [-].
    width : float
        Width of the post along the beams [mm].

    Returns
    -------
    tuple of (float, float)
        Push and distance off the middle [N, mm].

    Examples
    --------
    >>> from structlib.ground.loads import LoadsByType
    >>> from structlib.ground.units import ft, inch, plf
    >>> from structlib.house.judging import judge_element
    >>> from structlib.house.path import follow
    >>> from structlib.house.plan import Wood
    >>> from structlib.rules.choice import RULEBOOK
    >>> fir = Wood(species="Douglas Fir-Larch", grade="No.2", size="2x12", plies=4)
    >>> post = Post(name="post", on="pad", x=0.0, y=0.0, height=7 * ft, wood=fir)
    >>> house = bays(LoadsByType({"dead": 200 * plf}), span=7 * ft, wood=fir, post=post, pad_side=36 * inch, soil="")
    >>> one_bay_empty(judge_element(follow(house), "beam", RULEBOOK).answers[0], 6 * inch)[1]  # nothing comes and goes
    0.0
    """
    pushes = [one.solution.reactions[-1].force for one in beam.demands]
    full, empty = max(pushes), min(pushes)
    return full + empty, (full - empty) * width / 4 / (full + empty)


def one_piece(line, *, posts, length, wood, above=None):
    """Return a house of one beam in one piece over posts in a row, loaded evenly, perhaps with a post on its right end.

    Parameters
    ----------
    line : structlib.ground.loads.LoadsByType
        What comes down all along the beam, without its own weight [N/mm].
    posts : dict of float
        Names of the posts and their places from the left end of the beam [mm].
    length : float
        The beam from end to end [mm].
    wood : structlib.house.plan.Wood
        What it is made of [-].
    above : structlib.ground.loads.LoadsByType or None
        What a post brings that stands on the right end [N].

    Returns
    -------
    structlib.house.plan.House
        The house; its parts are "beam", the posts by their names, and "post above" [-].

    Examples
    --------
    >>> from structlib.ground.loads import LoadsByType
    >>> from structlib.ground.units import ft, lb, plf
    >>> from structlib.house.path import follow
    >>> from structlib.house.plan import Wood
    >>> fir = Wood(species="Douglas Fir-Larch", grade="No.2", size="2x12", plies=3)
    >>> house = one_piece(LoadsByType({"live": 104 * plf}), posts={"A": 0.0, "B": 12 * ft}, length=15 * ft, wood=fir,
    ...                   above=LoadsByType({"live": 800 * lb}))
    >>> round(follow(house).element("A").total()["live"] / lb)  # 1,560 x 4.5 / 12 less 800 x 3 / 12
    385
    """
    spread = {kind.replace(" ", "_"): line[kind] * length for kind in LOAD_TYPES}
    loads = [Load(name="on the beam", on="beam", x=0.0, y=0.0, length=length, **spread)]
    below = [Post(name=name, on="soil", x=0.0, y=at, height=8 * ft) for name, at in posts.items()]
    if above is not None:
        below.append(Post(name="post above", on="beam", x=0.0, y=length, height=8 * ft))
        pushes = {kind.replace(" ", "_"): above[kind] for kind in LOAD_TYPES}
        loads.append(Load(name="in the post above", on="post above", x=0.0, y=length, **pushes))
    beam = Beam(
        name="beam",
        on=tuple(posts),
        at=0.0,
        start=0.0,
        end=length,
        joints="continuous",
        wood=wood,
        greatest_depth=48 * inch,
        greatest_width=24 * inch,
    )
    return House(name="one beam", loads=tuple(loads), beams=(beam,), posts=tuple(below))
