"""What is asked of a roof: its rafters, what ties them, its ridge board, its joints; and the gates of a roof.

Every combination is asked of both rafters; two that are asked the same are one member.
"""

from structlib.ground.loads import LOAD_TYPES
from structlib.ground.refusals import NotAsked, OutsideRule
from structlib.ground.showing import show
from structlib.house.one_slope import slope_rafters
from structlib.house.pieces import piece_of
from structlib.house.rafters import pair_loads
from structlib.house.roofs import JOISTS, NOTHING, RIDGE_BEAM, TIE
from structlib.rules.check import VARIABLE_TYPES
from structlib.rules.members import (
    Pull,
    RafterDemand,
    RafterMember,
    RidgeBoardMember,
    TieJointMember,
    TieMember,
    ask,
)  # fmt: skip

_SAME = 1e-3  # mm


def rafters(path, element, rulebook):
    """Return what is asked of the rafters of a roof and of what holds them.

    Parameters
    ----------
    path : structlib.house.path.Path
        The path [-].
    element : structlib.house.shares.Element
        The roof [-].
    rulebook : structlib.rules.check.Rulebook
        The rules [-].

    Returns
    -------
    tuple of list
        Members with their demands, gates, notes [-].

    Examples
    --------
    >>> from structlib.house.file import demo_house
    >>> from structlib.house.path import follow
    >>> from structlib.rules.choice import RULEBOOK
    >>> path = follow(demo_house(), {"roof": {"tied_by": ""}})
    >>> rafters(path, path.element("roof"), RULEBOOK)[1][0][:58]
    'Nothing that is written holds the rafters of roof together'
    """
    level, pair = element.part, element.pair
    if pair is None:
        if level.joist is None:
            return [], [], [f"the rafters of {level.name} are not written; what they bring down stands"]
        told = f"{level.name} has one slope or none: its rafters are judged as simple beams, and their seats are not judged"
        return slope_rafters(element, rulebook), [], [told]
    if pair.held_by == NOTHING:
        gate = (
            f"Nothing that is written holds the rafters of {level.name} together: they push {' and '.join(level.on)} "
            "apart. Write a tie, the level whose joists tie them, or a ridge beam; its push stands."
        )
        return [], [gate], []
    gates, notes = _gates(pair, rulebook), _one_slope_notes(element, rulebook)
    if level.joist is None:
        return (
            [],
            gates,
            [*notes, f"the rafters of {level.name} are not written; their push and what they bring down stand"],
        )
    asked = _rafters(level, pair, rulebook)
    first = asked[0][0]
    if level.ridge_board is not None:
        board = level.ridge_board
        asked.append(
            (RidgeBoardMember(board.thickness, board.depth, first.depth, max(one.rise for one, _ in asked)), ())
        )
    if pair.held_by in (TIE, JOISTS):
        more, told = _tie(path, level, pair, first, rulebook)
        asked, notes = [*asked, *more], [*notes, *told]
    return asked, gates, notes


def _gates(pair, rulebook):
    """What the rulebook says of the slope and of the height of a tie; a ridge beam answers both."""
    if pair.held_by not in (TIE, JOISTS):
        return []
    try:
        flattest = 12 * pair.rise / max(pair.ridge - pair.left, pair.right - pair.ridge)
        return list(ask(rulebook, "roof_gates", flattest, pair.height))
    except OutsideRule:
        return []  # a rulebook without such a rule is told of by the members that it does not cover


def _rafters(level, pair, rulebook):
    """Both rafters with what every combination asks; of stretches along the house, the one that asks most of each."""
    joist = level.joist
    piece = piece_of(joist)
    stiffness = piece.bending_stiffness
    present = {
        kind
        for one in pair.stretches
        for amounts, *_ in one.loads
        for kind, amount in zip(LOAD_TYPES, amounts)
        if amount
    }
    found = {}
    for stretch in pair.stretches:
        demands, loads = [], pair_loads(pair, stretch, joist.spacing)
        for one in rulebook.combinations(present):
            passing = {kind: one.factor(kind) for kind in VARIABLE_TYPES if one.factor(kind) and kind in present}
            both = loads.under(one.factor)
            alone = loads.under(lambda kind: passing.get(kind, 0.0)) if passing else (None, None)
            left = _demand(one, both[0], alone[0], tuple(passing), stiffness)
            same = both[0] is both[1] and alone[0] is alone[1]
            demands.append((left, left if same else _demand(one, both[1], alone[1], tuple(passing), stiffness)))
        for asked, rafter in zip(zip(*demands), both):
            member = RafterMember(
                piece.material,
                piece.ply_width,
                piece.depth,
                piece.plies,
                rafter.length,
                12 * rafter.rise / rafter.run,
                joist.spacing,
            )
            found[member, asked] = None
    return list(found)


def _demand(combination, rafter, passing_alone, passing, stiffness):
    sag, place = passing_alone.greatest_sag if passing else (0.0, 0.5)
    return RafterDemand(
        combination,
        rafter.greatest_push,
        *rafter.greatest_moment,
        *rafter.greatest_shear,
        passing,
        sag / stiffness,
        place,
    )


def _tie(path, level, pair, rafter, rulebook):
    """The tie, or the joists that tie, with their pull, and the joint at each of its ends."""
    floor = path.house.part(level.tied_by) if level.tied_by else None
    wood = floor.joist if floor else level.tie
    if wood is None:
        return [], [f"the joists of {floor.name}, which tie {level.name}, are not written; their pull stands"]
    piece = piece_of(wood)
    tie = TieMember(
        piece.material,
        piece.ply_width,
        piece.depth,
        piece.plies,
        wood.size,
        pair.height,
        wood.spacing or rafter.spacing,
    )
    most = max((stretch.thrust for stretch in pair.stretches), key=sum)
    pull = {kind: amount / (1 - pair.height) * tie.spacing for kind, amount in zip(LOAD_TYPES, most) if amount}
    pulls = tuple(
        Pull(one, sum(one.factor(kind) * amount for kind, amount in pull.items()))
        for one in rulebook.combinations(set(pull))
    )
    notes = (
        [
            f"the joists of {floor.name} are judged with {level.name} for their pull alone; a lap in them passes the whole "
            "pull on, and their own load bends them too"
        ]
        if floor
        else []
    )
    if abs(pair.right + pair.left - 2 * pair.ridge) > _SAME:
        notes.append(f"the ridge of {level.name} is not in the middle, so the joints of its tie are not counted here")
        return [(tie, pulls)], notes
    joint = TieJointMember(
        rafter, tie, pair.right - pair.left, bool(level.snow or level.right_snow), level.ground_snow, level.tie_nails
    )
    return [(tie, pulls), (joint, pulls)], notes


def roof_on_ridge(path, element):
    """Return the roof whose ridge beam an element is.

    Parameters
    ----------
    path : structlib.house.path.Path
        The path [-].
    element : structlib.house.shares.Element
        A beam, or the beam over an opening [-].

    Returns
    -------
    structlib.house.plan.Level or None
        The roof; None where it is no ridge beam [-].

    Examples
    --------
    >>> from structlib.house.file import demo_house
    >>> from structlib.house.path import follow
    >>> path = follow(demo_house())
    >>> roof_on_ridge(path, path.element("main beam"))
    """
    for name in dict.fromkeys(share.source for share in element.received):
        above = path.element(name)
        if above.pair is not None and above.pair.held_by == RIDGE_BEAM:
            if abs(path.axis(element.name).at - above.pair.ridge) < _SAME:
                return above.part
    return None


def one_slope_snow(element, rulebook):
    """Return the changes of a roof that put its snow on one slope alone, as the rulebook asks, and what it says.

    Parameters
    ----------
    element : structlib.house.shares.Element
        The roof; its snow and the snow on the ground are written [-].
    rulebook : structlib.rules.check.Rulebook
        The rules; a rule that asks for none, or that is missing, is raised [-].

    Returns
    -------
    tuple of (tuple of dict, structlib.rules.members.BlownSnow)
        Fields of the level for snow on the left slope and for snow on the right one [MPa], and the loads [-].

    Examples
    --------
    >>> from structlib.ground.units import psf
    >>> from structlib.house.file import demo_house
    >>> from structlib.house.path import follow
    >>> from structlib.rules.choice import RULEBOOK
    >>> snowy = {"snow": 30 * psf, "ground_snow": 40 * psf, "slope": (6.0, 12.0)}
    >>> left, right = one_slope_snow(follow(demo_house(), {"roof": snowy}).element("roof"), RULEBOOK)[0]
    >>> round(left["snow"] / psf), left["right_snow"], round(right["right_snow"] / psf)
    (40, 0.0, 40)
    """
    level, pair = element.part, element.pair
    half = pair.ridge - pair.left
    if abs(pair.right - pair.ridge - half) > _SAME:
        raise OutsideRule(
            f"the ridge of {level.name} is not in the middle, and each slope would have a case of its own"
        )
    found = ask(rulebook, "blown_snow", level.ground_snow, level.snow, 12 * pair.rise / half, half)
    return (
        {"snow": found.leeward, "right_snow": found.windward},
        {"snow": found.windward, "right_snow": found.leeward},
    ), found


def _one_slope_notes(element, rulebook):
    """A roof under even snow is told what it is asked beside that: another house to follow."""
    level = element.part
    if not (level.snow and level.ground_snow) or level.right_snow is not None:
        return []
    try:
        found = one_slope_snow(element, rulebook)[1]
    except NotAsked:
        return []
    except OutsideRule as refused:
        return [f"snow on one slope of {level.name} alone is not judged: {refused}"]
    return [
        f"{level.name} is judged here under even snow; {show(found.leeward, 'area load')} on one slope and "
        f"{show(found.windward, 'area load')} on the other is a case of its own: write it as snow and right_snow"
    ]
