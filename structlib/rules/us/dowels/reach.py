"""How far a fastener reaches into the main member, and whether that is enough."""

from structlib.ground.refusals import BadInput, OutsideRule
from structlib.ground.units import inch
from structlib.rules.us.dowels.records import _check_fastener, _check_piece
from structlib.rules.us.dowels.words import _SIZE_SLACK, _inches, _one_number, _scalar


def penetration(fastener, *, main, side):
    """Return how deep a fastener reaches into the main member.

    Parameters
    ----------
    fastener : Fastener
        The fastener [-].
    main : JoinedPiece
        Member that holds the point [-].
    side : JoinedPiece
        Member under the head [-].

    Returns
    -------
    float
        Penetration: of a nail with its tip, of a lag screw without it; of a bolt the whole thickness [mm].

    Notes
    -----
    NDS 2018 12.3.5.

    Examples
    --------
    >>> from structlib.rules.us.dowels.fasteners import nail
    >>> from structlib.rules.us.dowels.pieces import wood_piece
    >>> stud = wood_piece(thickness=1.5 * inch, specific_gravity=0.5)
    >>> round(penetration(nail("10d box"), main=stud, side=stud) / inch, 2)
    1.5
    """
    _check_joint(fastener, main, side)
    if fastener.length is None:
        return main.thickness
    reach = fastener.length - side.thickness - (fastener.tip if fastener.kind == "lag screw" else 0.0)
    if reach <= 0:
        raise BadInput(
            f"a {fastener.name} {_inches(fastener.length)} long does not reach through a side member "
            f"{_inches(side.thickness)} thick; take a longer one"
        )
    return min(reach, main.thickness)


def bearing_length_in_main(fastener, *, main, side):
    """Return the length over which a fastener bears on the main member, refused where it is too short.

    Parameters
    ----------
    fastener : Fastener
        The fastener [-].
    main : JoinedPiece
        Member that holds the point [-].
    side : JoinedPiece
        Member under the head [-].

    Returns
    -------
    float
        Bearing length [mm].

    Raises
    ------
    OutsideRule
        When a nail reaches less than 6 diameters in, or a lag screw less than 4.

    Notes
    -----
    NDS 2018 12.3.5.3: of the tapered tip (2 diameters on a nail) half does not count.

    Examples
    --------
    >>> from structlib.rules.us.dowels.fasteners import nail
    >>> from structlib.rules.us.dowels.pieces import wood_piece
    >>> plate = wood_piece(thickness=2.0 * inch, specific_gravity=0.55)
    >>> post = wood_piece(thickness=3.5 * inch, specific_gravity=0.55)
    >>> round(bearing_length_in_main(nail("12d common"), main=post, side=plate) / inch, 3)
    1.102
    """
    deep = penetration(fastener, main=main, side=side)
    if fastener.kind == "bolt":
        return deep
    _check_deep_enough(fastener, deep)
    whole = min(fastener.length - side.thickness, main.thickness)
    tip_begins = fastener.length - side.thickness - fastener.tip
    return whole - max(0.0, whole - tip_begins) / 2


def _check_deep_enough(fastener, deep):
    name = "nail" if fastener.kind == "nail" else "lag"
    least = _scalar(f"{name}_least_penetration")
    if deep < least * fastener.diameter * (1 - _SIZE_SLACK):
        raise OutsideRule(
            f"a {fastener.name} must reach {least:g} diameters ({least * fastener.diameter / inch:.2f} in) "
            f"into the main member, got {deep / inch:.2f} in; take a longer or thinner one"
        )


def table_penetration_factor(fastener, deep):
    """Return the factor on a value of a printed table, where the fastener reaches less deep than there.

    Parameters
    ----------
    fastener : Fastener
        A nail or a lag screw [-].
    deep : float
        Penetration into the main member [mm].

    Returns
    -------
    float
        p / 10 D for nails, p / 8 D for lag screws, at most 1. Values by the yield modes do not take it [-].

    Raises
    ------
    OutsideRule
        When the fastener does not reach far enough to count at all.

    Notes
    -----
    NDS 2018 footnotes of Tables 12J and 12N.

    Examples
    --------
    >>> from structlib.rules.us.dowels.fasteners import nail
    >>> round(table_penetration_factor(nail("16d common"), 1.25 * inch), 4)
    0.7716
    """
    _check_fastener(fastener)
    _one_number("penetration", deep)
    if fastener.kind == "bolt":
        return 1.0
    _check_deep_enough(fastener, deep)
    full = _scalar(f"{'nail' if fastener.kind == 'nail' else 'lag'}_full_penetration")
    return min(1.0, deep / (full * fastener.diameter))


def _check_joint(fastener, main, side):
    _check_fastener(fastener)
    _check_piece(main)
    _check_piece(side)
