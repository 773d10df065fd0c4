"""The drawings of the notebooks: a view (numbers and finished texts) in, a scene out.

No drawing computes structure and none knows a widget. ``draw_opening`` shows a beam over an
opening, ``draw_boards`` two boards side by side, ``draw_house_section`` what a wall carries,
``draw_load_path`` a whole house from ridge to soil, ``draw_beam_curves`` a beam and its four diagrams.
"""

from structlib.pictures.drawings.beam_curves import (
    BeamCurve,
    BeamCurvesView,
    BeamSupport,
    CurvePoint,
    CurveSpread,
    draw_beam_curves,
)
from structlib.pictures.drawings.boards import Board, BoardsView, draw_boards
from structlib.pictures.drawings.house_section import HouseLevel, HouseSectionView, draw_house_section
from structlib.pictures.drawings.load_path import LoadPathView, Station, draw_load_path
from structlib.pictures.drawings.opening import (
    LoadBand,
    Mark,
    OpeningView,
    PointLoad,
    PreviousBeam,
    draw_opening,
)

__all__ = [
    "BeamCurve",
    "BeamCurvesView",
    "BeamSupport",
    "CurvePoint",
    "CurveSpread",
    "draw_beam_curves",
    "Board",
    "BoardsView",
    "draw_boards",
    "HouseLevel",
    "HouseSectionView",
    "draw_house_section",
    "LoadPathView",
    "Station",
    "draw_load_path",
    "LoadBand",
    "Mark",
    "OpeningView",
    "PointLoad",
    "PreviousBeam",
    "draw_opening",
]
