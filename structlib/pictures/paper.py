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
from matplotlib.backends.backend_pdf import PdfPages
from matplotlib.backends.backend_svg import FigureCanvasSVG
from matplotlib.figure import Figure
from matplotlib.lines import Line2D
from matplotlib.patches import Circle, PathPatch
from matplotlib.path import Path
from matplotlib.text import Text

from structlib.ground.refusals import BadInput, check_choice, check_number
from structlib.pictures.labels import Label
from structlib.pictures.scene import runs
from structlib.pictures.style import THEMES, colour, role_style
from structlib.pictures.template_pages import TemplatePage

FONTS = ["DejaVu Sans", "sans-serif"]
DPI = 100
_ALIGN = {"start": "left", "middle": "center", "end": "right"}
_SETTINGS = {"svg.hashsalt": "structlib", "svg.fonttype": "path", "path.simplify": False}


def figure_of(scene, size=(1920, 1080), theme="light", transparent=False):
    """Render a scene as a matplotlib figure that fills a picture size, in the middle.

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
        raise BadInput(f"size must be a width and a height in pixels, for example (1920, 1080), got {size!r}") from None
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
    path = _checked_path(path, (".png", ".svg"), overwrite)
    figure = figure_of(scene, size, theme, transparent)
    return _whole_or_not(path, overwrite, lambda file: _write(figure, file, path.suffix.lower(), scene))


def template_pdf(pages, path=None, *, overwrite=False):
    """Save the pages of a drilling template as a PDF in true size, whole or not at all; in a folder for files that need not
    last where no path is given.

    Examples
    --------
    >>> import tempfile
    >>> from structlib.pictures.template_pages import drilling_pages
    >>> folder = tempfile.TemporaryDirectory()
    >>> sizes = dict(diameter=12.7, depth=235.0, start=0.0, end=200.0, shares=[("bolts", 0.64)], gates=())
    >>> template_pdf(drilling_pages([(50.0, 60.0)], title="end", **sizes), folder.name + "/end.pdf").name
    'end.pdf'
    >>> folder.cleanup()
    """
    pages = tuple(pages) if isinstance(pages, (tuple, list)) else ()
    if not pages or not all(isinstance(page, TemplatePage) for page in pages):
        raise BadInput("a template in pages is what drilling_pages returns; nothing was written")
    path = _checked_path(FilePath(tempfile.mkdtemp()) / "template.pdf" if path is None else path, (".pdf",), overwrite)

    def write(file):
        about = {"Title": "Drilling template in true size", "CreationDate": None, "Producer": None}
        with PdfPages(file, metadata=about) as pdf:
            for page in pages:
                pdf.savefig(_template_figure(page))

    return _whole_or_not(path, overwrite, write)


def _template_figure(page):
    """A page of a template as a figure of the paper's size, one unit of its axes being a millimetre."""
    figure = Figure(figsize=(page.width / 25.4, page.height / 25.4))
    axes = figure.add_axes((0, 0, 1, 1))
    axes.set_xlim(0, page.width)
    axes.set_ylim(0, page.height)
    axes.set_axis_off()
    points = 72 / 25.4
    for stroke in page.strokes:
        xs, ys = zip(*stroke.points)
        dash = (0, (8, 5)) if stroke.dashed else "-"
        axes.add_artist(Line2D(xs, ys, color="black", linewidth=stroke.width * points, linestyle=dash))
    for x, y, radius in page.holes:
        axes.add_artist(Circle((x, y), radius, fill=False, edgecolor="black", linewidth=0.3 * points))
    for words in page.words:
        axes.add_artist(
            Text(
                words.x,
                words.y,
                words.text,
                color="0.8" if words.grey else "black",
                zorder=0 if words.grey else 3,
                fontsize=words.size * points,
                fontfamily=FONTS,
                parse_math=False,
                horizontalalignment=words.anchor,
                verticalalignment="baseline",
            )
        )
    return figure


def _checked_path(path, endings, overwrite):
    if not isinstance(path, (str, FilePath)):
        raise BadInput(f"the path of a picture must be text, got {type(path).__name__}; for example 'beam.png'")
    if overwrite is not True and overwrite is not False:
        raise BadInput(f"overwrite must be True or False, got {overwrite!r}")
    path = FilePath(path)
    check_choice("ending of the file", path.suffix.lower(), endings)
    if not path.parent.is_dir():
        raise BadInput(f"the folder {str(path.parent)!r} does not exist; make it first or choose another")
    if path.exists() and not overwrite:
        raise BadInput(f"{path.name!r} exists already; choose another name or give overwrite=True")
    return path


def _whole_or_not(path, overwrite, write):
    """Write to a draft beside the file, and put it in its place when it is complete."""
    handle, draft = tempfile.mkstemp(dir=path.parent, prefix=f".{path.stem}-", suffix=path.suffix.lower())
    try:
        with os.fdopen(handle, "wb") as file:
            write(file)
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
        FigureCanvasSVG(figure).print_svg(text, metadata={"Date": None, "Title": scene.title, "Description": scene.alt})
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
