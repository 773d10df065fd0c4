"""What the drawing of an opening is told: numbers in mm and N, texts ready to print."""

from dataclasses import dataclass

from structlib.ground.refusals import BadInput, check_choice, check_number
from structlib.pictures.drawings import parts

# in the order in which their readings stand below the opening, from left to right
KINDS = ("bearing", "shear", "bending", "sag", "stability")


@dataclass(frozen=True)
class LoadBand:
    """A load spread along the beam, drawn as a band of arrows.

    ``intensity`` [N/mm].
    """

    label: str
    intensity: object


@dataclass(frozen=True)
class PointLoad:
    """A load at one place of the beam.

    ``x`` [mm].
    """

    label: str
    x: float


@dataclass(frozen=True)
class Mark:
    """One check, drawn on the member where it comes nearest its limit.

    ``x`` [mm].
    """

    kind: str
    x: float
    share: float
    sentence: str = ""
    governs: bool = False


@dataclass(frozen=True)
class PreviousBeam:
    """The beam before the last change, drawn as a ghost.

    ``beam_depth``, ``sag_x``, ``sag_y`` [mm].
    """

    beam_depth: float
    sag_x: tuple
    sag_y: tuple


@dataclass(frozen=True)
class OpeningView:
    """All that the drawing of an opening shows; texts are ready to print.

    Places along the beam count from ``x_start`` right of the beam's outer left end.

    ``clear_width``, ``left_seat``, ``right_seat``, ``beam_depth``, ``opening_height``, ``ply_width``,
    ``jack_thickness``, ``joist_depth``, ``joist_spacing``, ``sag_x``, ``sag_y``, ``sag_limit``, ``shear_x``,
    ``moment_x``, ``camera_width``, ``camera_depth``, ``x_start`` [mm]; ``load_full`` [N/mm]; ``shear_y``,
    ``shear_full`` [N]; ``moment_y``, ``moment_full`` [N*mm].
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
    check_number("exaggeration", view.exaggeration, low=0, high=1000, low_allowed=False, hint="for example 40")
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
        raise BadInput(f"each check has one place in the picture; give the worst of each, got {', '.join(kinds)}")
    for load in view.loads:
        for _, intensity in profile(load, 0, 1):
            check_number(f"load {load.label!r}", intensity, low=0, high=1e5, hint="loads press down, in N/mm")


def profile(load, start, end):
    """Give a load as pairs of place and load per length.

    ``start``, ``end`` [mm]; gives [N/mm].

    Examples
    --------
    >>> profile(LoadBand("snow", 4.5), 0.0, 100.0)
    ((0.0, 4.5), (100.0, 4.5))
    """
    if isinstance(load.intensity, (int, float)):
        return ((start, load.intensity), (end, load.intensity))
    pairs = tuple((float(x), float(w)) for x, w in load.intensity)
    if len(pairs) < 2 or any(b[0] < a[0] for a, b in zip(pairs, pairs[1:])):
        raise BadInput(f"load {load.label!r} needs at least two pairs of place and load per length, from left to right")
    return pairs
