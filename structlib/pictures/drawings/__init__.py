"""The drawings of the notebooks: a view (numbers and finished texts) in, a scene out.

No drawing computes structure and none knows a widget. ``draw_opening`` shows a beam over an
opening, ``draw_boards`` two boards side by side, ``draw_house_section`` what a wall carries.
"""

from structlib.pictures.drawings.boards import Board, BoardsView, draw_boards
from structlib.pictures.drawings.house_section import HouseLevel, HouseSectionView, draw_house_section
from structlib.pictures.drawings.opening import (
    LoadBand,
    Mark,
    OpeningView,
    PointLoad,
    PreviousBeam,
    draw_opening,
)

__all__ = [
    "Board",
    "BoardsView",
    "draw_boards",
    "HouseLevel",
    "HouseSectionView",
    "draw_house_section",
    "LoadBand",
    "Mark",
    "OpeningView",
    "PointLoad",
    "PreviousBeam",
    "draw_opening",
]
