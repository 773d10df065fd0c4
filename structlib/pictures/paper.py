"""Scene to matplotlib, for stills and film: the same outlines and texts at the same places.

The only room that imports matplotlib. It uses figure objects, never the global state.
"""

import io
import os
import re
import tempfile
from pathlib import Path as FilePath

import matplotlib
from matplotlib.backends.backend_agg import FigureCanvasAgg
from matplotlib.backends.backend_svg import FigureCanvasSVG
from matplotlib.figure import Figure
from matplotlib.patches import PathPatch
from matplotlib.path import Path
from matplotlib.text import Text

from structlib.ground.refusals import BadInput, check_choice, check_number
from structlib.pictures.labels import Label
from structlib.pictures.scene import runs
from structlib.pictures.style import THEMES, colour, role_style

FONTS = ["DejaVu Sans", "sans-serif"]
DPI = 100
_ALIGN = {"start": "left", "middle": "center", "end": "right"}
_SETTINGS = {"svg.hashsalt": "structlib", "svg.fonttype": "path", "path.simplify": False}


def figure_of(scene, size=(1920, 1080), theme="light", transparent=False):
    """Render a scene as a matplotlib figure that fills a picture size, in the middle.

    Parameters
    ----------
    scene : Scene
        The picture [-].
    size : tuple of int
        Width and height of the figure in pixels [-].
    theme : str
        ``"light"`` or ``"dark"`` [-].
    transparent : bool
        True leaves the paper unpainted [-].

    Returns
    -------
    matplotlib.figure.Figure
        The figure; its axes have the coordinates of the scene [-].

    Raises
    ------
    BadInput
        When the size or the theme makes no sense.

    Examples
    --------
    >>> from structlib.pictures.scene import Line, Scene
    >>> figure = figure_of(Scene(90, 60, (Line(((0, 5), (9, 5)), "ink"),), "a line", "", "a line"))
    >>> figure.axes[0].get_xlim() == (0.0, 90.0)
    True
    """
    check_choice("theme", theme, THEMES)
    width, height = _checked_size(size)
    back = (0, 0, 0, 0) if transparent else colour("paper", theme)
    figure = Figure(figsize=(width / DPI, height / DPI), dpi=DPI, facecolor=back)
    scale = min(width / scene.width, height / scene.height)
    wide, high = scale * scene.width / width, scale * scene.height / height
    axes = figure.add_axes(((1 - wide) / 2, (1 - high) / 2, wide, high))
    axes.set_xlim(0, scene.width)
    axes.set_ylim(scene.height, 0)
    axes.set_axis_off()
    points = scale * 72 / DPI
    for order, item in enumerate(runs(scene)):
        if type(item) is Label:
            axes.add_artist(_text(item, points, theme, order))
        elif not (transparent and item.role == "paper"):
            axes.add_artist(_patch(item, points, theme, order))
    return figure


def _checked_size(size):
    try:
        width, height = size
    except (TypeError, ValueError):
        raise BadInput(
            f"size must be a width and a height in pixels, for example (1920, 1080), got {size!r}"
        ) from None
    for name, pixels in (("width", width), ("height", height)):
        check_number(
            f"{name} of the picture",
            pixels,
            low=64,
            high=8192,
            shown=lambda n: f"{n:g} pixels",
            hint="for example (1920, 1080)",
        )
        if pixels != int(pixels):
            raise BadInput(f"{name} of the picture must be a whole number of pixels, got {pixels!r}")
    return int(width), int(height)


def _patch(run, points, theme, order):
    style = role_style(run.role)
    vertices, codes = [], []
    for outline, closed in run.outlines:
        vertices += outline
        codes += [Path.MOVETO] + [Path.LINETO] * (len(outline) - 1)
        if closed:
            vertices.append(outline[0])
            codes.append(Path.CLOSEPOLY)
    fill = colour(style.fill, theme) if style.fill and run.kind != "line" else "none"
    edge = colour(style.stroke, theme) if style.stroke else "none"
    patch = PathPatch(
        Path(vertices, codes),
        facecolor=fill,
        edgecolor=edge,
        linewidth=style.width * points,
        joinstyle="round",
        capstyle="butt" if style.dash else "round",
        zorder=order,
    )
    if style.dash:
        # matplotlib counts dashes in line widths
        patch.set_linestyle((0, tuple(length / style.width for length in style.dash)))
    patch.set_gid(run.role)
    return patch


def _text(label, points, theme, order):
    # a dollar sign is a dollar sign here, never the start of a formula
    return Text(
        label.x,
        label.y,
        label.text,
        color=colour(label.role, theme),
        fontsize=label.size * points,
        fontfamily=FONTS,
        fontweight="bold" if label.bold else "normal",
        parse_math=False,
        horizontalalignment=_ALIGN[label.anchor],
        verticalalignment="baseline",
        zorder=order,
    )


def still(scene, path, size=(1920, 1080), theme="light", transparent=False, overwrite=False):
    """Save a scene as a still for film or print; the same scene gives the same bytes.

    Parameters
    ----------
    scene : Scene
        The picture [-].
    path : str or os.PathLike
        File to write, ending in ``.png`` or ``.svg`` [-].
    size : tuple of int
        Width and height in pixels, for example (1920, 1080) or (1080, 1920) [-].
    theme : str
        ``"light"`` or ``"dark"`` [-].
    transparent : bool
        True leaves the paper unpainted [-].
    overwrite : bool
        True replaces a file that is there; False refuses [-].

    Returns
    -------
    pathlib.Path
        The file written [-].

    Raises
    ------
    BadInput
        When the ending is another one, the folder is missing, or a file is there already.

    Examples
    --------
    >>> import tempfile
    >>> from structlib.pictures.scene import Line, Scene
    >>> folder = tempfile.TemporaryDirectory()
    >>> scene = Scene(90, 60, (Line(((0, 5), (9, 5)), "ink"),), "a line", "", "a line")
    >>> still(scene, folder.name + "/line.png", size=(320, 180)).name
    'line.png'
    >>> folder.cleanup()
    """
    path = FilePath(path)
    ending = check_choice("ending of the file", path.suffix.lower(), (".png", ".svg"))
    if not path.parent.is_dir():
        raise BadInput(f"the folder {str(path.parent)!r} does not exist; make it first or choose another")
    if path.exists() and not overwrite:
        raise BadInput(f"{path.name!r} exists already; choose another name or give overwrite=True")
    figure = figure_of(scene, size, theme, transparent)
    handle, draft = tempfile.mkstemp(dir=path.parent, prefix=f".{path.stem}-", suffix=ending)
    try:
        with os.fdopen(handle, "wb") as file:
            _write(figure, file, ending, scene)
        _settle(draft, path, overwrite)
    finally:
        if os.path.exists(draft):
            os.unlink(draft)
    return path


def _write(figure, file, ending, scene):
    with matplotlib.rc_context(_SETTINGS):
        if ending == ".png":
            FigureCanvasAgg(figure).print_png(file, metadata={"Software": None, "Title": scene.title})
            return
        text = io.StringIO()
        FigureCanvasSVG(figure).print_svg(
            text, metadata={"Date": None, "Title": scene.title, "Description": scene.alt}
        )
    # matplotlib gives the size in points; a film wants it in pixels
    width, height = figure.get_size_inches() * DPI
    size = f'width="{width:.0f}" height="{height:.0f}"'
    file.write(re.sub(r'width="[\d.]+pt" height="[\d.]+pt"', size, text.getvalue(), count=1).encode())


def _settle(draft, path, overwrite):
    # readable like any new file, not only by the owner as drafts are
    mask = os.umask(0)
    os.umask(mask)
    os.chmod(draft, 0o666 & ~mask)
    if overwrite:
        os.replace(draft, path)
        return
    try:
        os.link(draft, path)
    except FileExistsError:
        raise BadInput(f"{path.name!r} exists already; choose another name or give overwrite=True") from None
    except OSError:
        # a disk without hard links: the check above has to do
        os.replace(draft, path)
