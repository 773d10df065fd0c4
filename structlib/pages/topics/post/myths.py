"""Myth of notebook 06."""

from structlib.ground.lumber import find_material
from structlib.ground.showing import show
from structlib.ground.units import ft, lb
from structlib.pages.kit.cards import card
from structlib.pages.topics.post.cases import post
from structlib.rules.choice import RULEBOOK

columns = RULEBOOK.room("columns")


def the_subfloor_spreads_it():
    """Answer: the subfloor spreads the load of a post.

    Examples
    --------
    >>> "134 %" in the_subfloor_spreads_it()
    True
    """
    load = 6000 * lb
    demand = [columns.ColumnDemand(RULEBOOK.combinations({"live"})[1], load)]
    plate = columns.plate_check(post("2x4", 2, 8 * ft), demand, find_material("Spruce-Pine-Fir", "No.1/No.2"))
    return card(
        "The subfloor spreads the load of a post.",
        f"wood under a post is pressed from the side. {show(load, 'force')} from two 2x4 press "
        f"{show(plate.asked, 'stress')} on "
        f"a spruce plate that gives {show(plate.given, 'stress')}: {show(plate.share, 'ratio')}. A "
        "board under it spreads no "
        "farther than it is thick. Solid blocks must carry the load on, end grain on end grain.",
    )
