"""One span of a beam on the load's way, before its wood is chosen: what it carries, what it sits on, what holds its edge."""

from structlib.ground.showing import show
from structlib.house.asked_roof import roof_on_ridge
from structlib.house.beam import BeamJob, TypedLoad
from structlib.house.pieces import piece_of
from structlib.house.plan import SOIL, Wall, Wood
from structlib.house.plies import PLY_JOINTS
from structlib.house.seats import clear_spans, ends_of, on_span
from structlib.house.shares import along
from structlib.rules.check import BeamUse

_SAME = 1e-3  # mm
_RIDGE = "any other structural member"  # for sag: neither a floor nor a ceiling is on it


def beam_job(path, name, number=0):
    """Return what one span of a beam carries and what it sits on.

    Parameters
    ----------
    path : structlib.house.path.Path
        The path [-].
    name : str
        The beam or the opening [-].
    number : int
        Which span, from 0 [-].

    Returns
    -------
    structlib.house.beam.BeamJob
        The job [-].

    Examples
    --------
    >>> from structlib.ground.units import ft
    >>> from structlib.house.file import demo_house
    >>> from structlib.house.path import follow
    >>> round(beam_job(follow(demo_house()), "kitchen opening").span / ft, 3)
    8.375
    """
    element, axis = path.element(name), path.axis(name)
    part, ends, seats = element.part, ends_of(element, number), clear_spans(path, element)[number]
    as_put_in = {}
    if isinstance(part.chosen, Wood):
        as_put_in = dict(wet=part.chosen.wet, incised=part.chosen.incised, treatment=part.chosen.treatment)
    loads = (TypedLoad(*one) for share in element.received for one in on_span(along(axis, share), share.amount, ends))
    # rafters often hang on the sides of a ridge beam; then no load near its posts may be left out
    roof = roof_on_ridge(path, element)
    return BeamJob(
        ends[1][0] - ends[0][0] - (seats[0].length + seats[1].length) / 2, *seats, tuple(loads),
        unbraced_length=held_every(part, roof), loaded_on="side" if roof or part.position == "flush" else "top",
        use=use_of(roof), ply_joint=PLY_JOINTS.get(part.joined), seat_width=axis.thickness if isinstance(axis, Wall) else None,
        **as_put_in,
    )  # fmt: skip


def held_every(part, roof=None):
    """Return how far apart the compressed edge of a beam is held: rafters do so on a ridge beam.

    Parameters
    ----------
    part : structlib.house.plan.Beam or structlib.house.plan.Opening
        The beam [-].
    roof : structlib.house.plan.Level or None
        The roof whose ridge it is [-].

    Returns
    -------
    float
        The distance [mm].

    Examples
    --------
    >>> from structlib.house.file import demo_house
    >>> round(held_every(demo_house().part("main beam")) / 25.4)
    16
    """
    return roof.joist.spacing if roof and roof.joist else part.held_every


def use_of(roof):
    """Return what a beam carries, for its sag limits: a roof where it is a ridge beam, else a floor.

    Parameters
    ----------
    roof : structlib.house.plan.Level or None
        The roof whose ridge it is [-].

    Returns
    -------
    structlib.rules.check.BeamUse
        The use [-].

    Examples
    --------
    >>> use_of(None).supports
    'floor'
    """
    return BeamUse(_RIDGE) if roof else BeamUse()


def on_masonry(path, element):
    """Return the gates of a beam that sits on masonry.

    Parameters
    ----------
    path : structlib.house.path.Path
        The path [-].
    element : structlib.house.shares.Element
        The beam [-].

    Returns
    -------
    dict of str
        One sentence by the name of each wall; that of an opening holds at both its ends [-].

    Examples
    --------
    >>> from structlib.house.file import demo_house
    >>> from structlib.house.path import follow
    >>> path = follow(demo_house())
    >>> list(on_masonry(path, path.element("main beam")))
    ['north foundation', 'south foundation']
    """
    return {
        one.name: f"{element.name} sits on masonry: whether {one.name} can take the push is for an engineer."
        for one in _below(path, element)
        if isinstance(one, Wall) and one.made_of == "masonry"
    }


def _below(path, element):
    """What a beam sits on: what takes its load on, and the wall of an opening."""
    axis = path.axis(element.name)
    below = [path.element(share.to).part for share in element.gives if share.to != SOIL]
    return [*below, axis] if isinstance(axis, Wall) else below


def gates_of_places(path, element):
    """Return the gates of a beam that belong to one place: it sits on masonry there, or is wider than what is below.

    Parameters
    ----------
    path : structlib.house.path.Path
        The path [-].
    element : structlib.house.shares.Element
        The beam [-].

    Returns
    -------
    dict of list of str
        By the name of what is below; by the wall of an opening what holds at both its ends [-].

    Examples
    --------
    >>> from structlib.house.file import demo_house
    >>> from structlib.house.path import follow
    >>> path = follow(demo_house())
    >>> [len(told) for told in gates_of_places(path, path.element("main beam")).values()]
    [1, 0, 0, 0, 1]
    """
    axis, wood = path.axis(element.name), element.part.chosen
    width = 0.0 if wood is None else piece_of(wood).width
    masonry, found = on_masonry(path, element), {}
    for one in _below(path, element):
        gates = found[one.name] = [masonry[one.name]] if one.name in masonry else []
        if one is axis and width > axis.thickness + _SAME:
            gates.append(
                f"{element.name} is {show(width, 'section length')} wide, wider than what it sits on "
                f"({show(axis.thickness, 'section length')}): how the outer plies come down is for an engineer."
            )
        if one in path.house.posts and one.wood is not None and width > piece_of(one.wood).depth + _SAME:
            gates.append(
                "The beam is wider than the post is deep, so at least one ply hangs past the post and has no seat "
                f"there ({element.name} on {one.name}). A post ply under every beam ply, or a cap that an "
                "engineer chooses. Only what is asked is shown here."
            )
    return found
