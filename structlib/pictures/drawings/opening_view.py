"""What the drawing of an opening is told: numbers in mm and N, texts ready to print."""

from dataclasses import dataclass

from structlib.ground.refusals import BadInput, check_choice, check_number
from structlib.pictures.drawings import parts

# in the order in which their readings stand below the opening, from left to right
KINDS = ("bearing", "shear", "bending", "sag", "stability")


@dataclass(frozen=True)
class LoadBand:
    """A load spread along the beam, drawn as a band of arrows.

    Parameters
    ----------
    label : str
        Name and size in the reader's units, for example ``"snow 300 lb/ft"`` [-].
    intensity : float or tuple of tuple
        Load per length, or pairs of place [mm] and load per length along the beam [N/mm].
    """

    label: str
    intensity: object


@dataclass(frozen=True)
class PointLoad:
    """A load at one place of the beam.

    Parameters
    ----------
    label : str
        Name and size in the reader's units, for example ``"post 3,200 lb"`` [-].
    x : float
        Its place along the beam [mm].
    """

    label: str
    x: float


@dataclass(frozen=True)
class Mark:
    """One check, drawn on the member where it comes nearest its limit.

    Parameters
    ----------
    kind : str
        ``"bending"``, ``"shear"``, ``"bearing"``, ``"sag"`` or ``"stability"`` [-].
    x : float
        Its place along the beam [mm].
    share : float
        The share of what may be asked that is used, 1 = all of it [-].
    sentence : str
        What happens there, in the words of the trade [-].
    governs : bool
        Whether this check governs [-].
    """

    kind: str
    x: float
    share: float
    sentence: str = ""
    governs: bool = False


@dataclass(frozen=True)
class PreviousBeam:
    """The beam before the last change, drawn as a ghost.

    Parameters
    ----------
    beam_depth : float
        Its depth [mm].
    sag_x : tuple of float
        Places along it [mm].
    sag_y : tuple of float
        Its sag, positive down [mm].
    """

    beam_depth: float
    sag_x: tuple
    sag_y: tuple


@dataclass(frozen=True)
class OpeningView:
    """All that the drawing of an opening shows; texts are ready to print.

    Places along the beam count from ``x_start`` right of the beam's outer left end.

    Parameters
    ----------
    title : str
        The message, about 80 letters at most [-].
    clear_width : float
        Clear width between the jacks [mm].
    left_seat : float
        Length of the beam on its left support [mm].
    right_seat : float
        Length of the beam on its right support [mm].
    beam_depth : float
        Depth of the beam [mm].
    opening_height : float
        Height from the floor to the underside of the beam [mm].
    plies : int
        Number of plies [-].
    ply_width : float
        Width of one ply [mm].
    material_kind : str
        ``"sawn"``, ``"lvl"``, ``"timber"`` or ``"steel"`` [-].
    section_name : str
        Name of the section, for example ``"2-2x10"`` [-].
    width_text : str
        Total width, for example ``"3 in"`` [-].
    depth_text : str
        Depth, for example ``"9 1/4 in"`` [-].
    clear_width_text : str
        Clear width, for example ``"8'-0\\" clear"`` [-].
    flush : bool
        True: joists hang on the sides of the beam; False: joists sit on top [-].
    left_jacks : int
        Number of jack studs on the left [-].
    right_jacks : int
        Number of jack studs on the right [-].
    jack_thickness : float
        Thickness of one jack stud [mm].
    joist_depth : float
        Depth of the joists, 0 for none drawn [mm].
    joist_spacing : float
        Spacing of the joists [mm].
    loads : tuple of LoadBand
        Spread loads, the topmost first [-].
    point_loads : tuple of PointLoad
        Loads at one place [-].
    load_full : float or None
        Load that a full-length arrow stands for; None lets the total fill it [N/mm].
    load_full_text : str
        What a full arrow stands for, for example ``"full arrow 800 lb/ft"`` [-].
    sag_x : tuple of float
        Places of the deflected shape [mm].
    sag_y : tuple of float
        Sag, positive down [mm].
    exaggeration : float
        Factor by which sag is drawn; a smaller round one is used and printed if it does not fit [-].
    sag_text : str
        True sag, for example ``"true sag 0.32 in = L/450"`` [-].
    sag_limit : float
        Accepted sag, 0 for no limit line [mm].
    sag_limit_text : str
        Name of the limit, for example ``"limit L/360"`` [-].
    previous : PreviousBeam or None
        The state before the last change [-].
    marks : tuple of Mark
        Checks, each drawn where it is nearest its limit [-].
    shear_x : tuple of float
        Places of the shear diagram [mm].
    shear_y : tuple of float
        Shear [N].
    shear_text : str
        Its peak, for example ``"1,840 lb"`` [-].
    moment_x : tuple of float
        Places of the moment diagram [mm].
    moment_y : tuple of float
        Moment, positive sagging [N*mm].
    moment_text : str
        Its peak, for example ``"3,680 lb-ft"`` [-].
    shear_full : float
        Shear that fills the diagram, 0 lets the peak fill it [N].
    moment_full : float
        Moment that fills the diagram, 0 lets the peak fill it [N*mm].
    camera_width : float
        Length that the picture always has room for, so that the scale stays fixed [mm].
    camera_depth : float
        Beam depth that the picture always has room for [mm].
    x_start : float or None
        Where x = 0 lies from the outer left end; None is the middle of the left seat [mm].
    """

    title: str
    clear_width: float
    left_seat: float
    right_seat: float
    beam_depth: float
    opening_height: float
    plies: int
    ply_width: float
    material_kind: str
    section_name: str
    width_text: str
    depth_text: str
    clear_width_text: str
    flush: bool = False
    left_jacks: int = 1
    right_jacks: int = 1
    jack_thickness: float = 38.1
    joist_depth: float = 0.0
    joist_spacing: float = 406.4
    loads: tuple = ()
    point_loads: tuple = ()
    load_full: float | None = None
    load_full_text: str = ""
    sag_x: tuple = ()
    sag_y: tuple = ()
    exaggeration: float = 40.0
    sag_text: str = ""
    sag_limit: float = 0.0
    sag_limit_text: str = ""
    previous: PreviousBeam | None = None
    marks: tuple = ()
    shear_x: tuple = ()
    shear_y: tuple = ()
    shear_text: str = ""
    moment_x: tuple = ()
    moment_y: tuple = ()
    moment_text: str = ""
    shear_full: float = 0.0
    moment_full: float = 0.0
    camera_width: float = 0.0
    camera_depth: float = 0.0
    x_start: float | None = None


def check_view(view):
    """Refuse an opening that cannot be drawn.

    Parameters
    ----------
    view : OpeningView
        What is to be shown [-].

    Returns
    -------
    None
        Nothing; it only refuses [-].

    Raises
    ------
    BadInput
        When a length, count or word makes no sense, or a check comes twice.

    Examples
    --------
    >>> check_view(OpeningView("An opening", 2438.4, 76.2, 76.2, 235.0, 2057.4, 2, 38.1, "sawn", "2-2x10",
    ...                        "3 in", "9 1/4 in", "8 ft clear"))
    """
    for name in (
        "clear_width",
        "left_seat",
        "right_seat",
        "beam_depth",
        "opening_height",
        "ply_width",
        "jack_thickness",
        "joist_spacing",
    ):
        parts.check_length(name.replace("_", " "), getattr(view, name))
    for name in ("joist_depth", "sag_limit", "camera_width", "camera_depth"):
        parts.check_length(name.replace("_", " "), getattr(view, name), low_allowed=True)
    check_number("plies", view.plies, low=1, high=8, hint="for example 2")
    for side in ("left", "right"):
        check_number(f"{side} jacks", getattr(view, f"{side}_jacks"), low=0, high=8, hint="for example 2")
    check_number(
        "exaggeration", view.exaggeration, low=0, high=1000, low_allowed=False, hint="for example 40"
    )
    check_choice("material kind", view.material_kind, parts.MATERIALS)
    for name in ("sag", "shear", "moment"):
        xs, ys = getattr(view, f"{name}_x"), getattr(view, f"{name}_y")
        if len(xs) or len(ys):
            parts.check_pairs(name, xs, ys)
    if view.previous:
        parts.check_length("depth of the previous beam", view.previous.beam_depth)
        parts.check_pairs("previous sag", view.previous.sag_x, view.previous.sag_y)
    for mark in view.marks:
        check_choice("mark", mark.kind, KINDS)
        check_number(f"share of {mark.kind}", mark.share, low=0, high=1e4, hint="1 means all of it is used")
    kinds = [mark.kind for mark in view.marks]
    if len(set(kinds)) < len(kinds):
        raise BadInput(
            f"each check has one place in the picture; give the worst of each, got {', '.join(kinds)}"
        )
    for load in view.loads:
        for _, intensity in profile(load, 0, 1):
            check_number(f"load {load.label!r}", intensity, low=0, high=1e5, hint="loads press down, in N/mm")


def profile(load, start, end):
    """Give a load as pairs of place and load per length.

    Parameters
    ----------
    load : LoadBand
        The load [-].
    start : float
        Where an even load begins [mm].
    end : float
        Where an even load ends [mm].

    Returns
    -------
    tuple of tuple
        Places [mm] and loads per length [N/mm].

    Raises
    ------
    BadInput
        When there are fewer than two pairs, or they are out of order.

    Examples
    --------
    >>> profile(LoadBand("snow", 4.5), 0.0, 100.0)
    ((0.0, 4.5), (100.0, 4.5))
    """
    if isinstance(load.intensity, (int, float)):
        return ((start, load.intensity), (end, load.intensity))
    pairs = tuple((float(x), float(w)) for x, w in load.intensity)
    if len(pairs) < 2 or any(b[0] < a[0] for a, b in zip(pairs, pairs[1:])):
        raise BadInput(
            f"load {load.label!r} needs at least two pairs of place and load per length, "
            "from left to right"
        )
    return pairs
