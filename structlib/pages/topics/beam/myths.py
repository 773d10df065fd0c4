"""What people say of the page of beam."""

from structlib.ground import sections
from structlib.ground.showing import show
from structlib.ground.sizes import dressed_size
from structlib.ground.units import ft, psf
from structlib.mechanics import formulas
from structlib.pages.kit.cards import card
from structlib.rules.choice import RULEBOOK
from structlib.rules.members import SharedBeamMember, SharedDemand, SharedPiece


def feet_for_inches():
    """Answer: the span in feet may equal the depth in inches for a double beam.

    Examples
    --------
    >>> "3 of 3 ask too much" in feet_for_inches()
    True
    """
    from structlib.ground.lumber import find_material

    wood = find_material("Spruce-Pine-Fir", "No.1/No.2")
    parts, over, combination = [], 0, RULEBOOK.combinations({"live"})[-1]
    for nominal, span in (("2x8", 8 * ft), ("2x10", 10 * ft), ("2x12", 12 * ft)):
        board = dressed_size(nominal)
        load = 50 * psf * 6 * ft
        stress = formulas.bending_stress(
            moment=formulas.simple_uniform_moment(line_load=load, span=span),
            section_modulus=sections.rectangle_section_modulus(width=2 * board.width, depth=board.depth),
        )
        pair = SharedBeamMember((SharedPiece(f"2-{nominal}", wood, board.width, board.depth, 2),))
        [bent] = RULEBOOK.checks(pair, (SharedDemand(combination, (stress,), span, span / 2),))
        over += bent.share > 1
        parts.append(f"2-{nominal} at {span / ft:.0f} ft asks {show(stress, 'stress')} of {show(bent.given, 'stress')}")
    return card(
        "For a double beam, the span in feet may be the depth in inches.",
        "with 12 ft joists on one side at 50 psf, in Spruce-Pine-Fir No.2: "
        + "; ".join(parts)
        + f". {over} of {len(parts)} ask too much. A rule of thumb is a guess to test.",
    )
